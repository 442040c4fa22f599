"""At which step a mistake of the check is mended, and how in the words of the pages, where its remedy speaks of the file."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from server.event import Problem, Severity
from server.pages.labels import label

__all__ = ["MistakeShown", "told"]


@dataclass(frozen=True, slots=True)
class MistakeShown:
    """A mistake as a step shows it. `where`: the field of the file; `error` False for what may be meant; `key` False where
    `what` speaks of a key of the file, and the remedy alone says as much in the pages' words."""

    step: str
    error: bool
    what: str
    remedy: str
    where: str
    key: bool = True

    @property
    def said(self) -> str:
        """All of it, as a sentence or two."""
        return f"{self.what}. {self.remedy}" if self.key else self.remedy


_STEP_OF: Final = {
    "points": "points", "stretches": "points", "runners": "runner", "people": "people", "cars": "people",
    "places": "people", "drives": "meetings", "meetings": "meetings", "shares": "meetings", "if_then": "check",
}  # fmt: skip
_ANY: Final = ""
_MENDED: Final[tuple[tuple[frozenset[str], str, str | None, str], ...]] = tuple(
    (frozenset(f"wrong-{code}" for code in codes.split()), field, step, key)
    for codes, field, step, key in (
        ("no-emergency-number-given-112", _ANY, "course", "emergency"),
        ("nobody-knows-how-reach-race no-race-control", _ANY, "course", "control"),
        (_ANY, r"race_control\b.*", "course", "control"),
        ("no-runner", _ANY, "runner", "runner"),
        ("alarm-about-would-reach-nobody no-safety-contact", _ANY, "people", "contact"),
        ("nobody-call-race-control both-call-race-control", _ANY, "people", "calls"),
        ("ladder-but-no-way-reach ladder-but-others-cannot-telephone call-race-control-but-no", _ANY, "people", "phone"),
        ("no-people-named-plan-can not-among-people-nothing-can", _ANY, "people", "people"),
        ("nobody-reports-from-any-point", _ANY, "points", "reports"),
        ("no-crew-car-comes-how", _ANY, "course", "transport"),
        ("missing", r"event\.name", "course", "name"),
        (_ANY, r"event\.starts", "course", "starts"),
        ("missing", r"event\.time_zone", "course", "zone"),
        ("missing no-file", r"event\.route|route", "course", "route"),
        ("no-length-time", r"event\.limit", "course", "span"),
        ("missing no-number", r"points\..*\.km", "points", "km"),
        ("no-moment no-time-day text-no-time-of-day no-length-time no-date-time cut-off-no-time",
         r"points\..*\.cut_offs?\b.*", "points", "cut"),
        ("no-length-time", r"runners\..*", "runner", "span"),
        ("missing", r"runners\..*past_race.*", "runner", "past"),
        ("missing target-empty no-pace", r"runners\.[^.]+(?:\.target.*)?", "runner", "target"),
        ("nobody-confirmed-drive-from how-long-drive-from-takes no-drive-from-so-no", _ANY, "meetings", "confirm"),
        ("no-number", r"(?:cars|drives|points)\..*", None, "number"),
        (_ANY, r"runners\.[^.]+\.carries", "meetings", "kit"),
        (_ANY, r"runners\.[^.]+\.fuel", "runner", "fuel"),
    )
)  # fmt: skip
"""By code and field, each where one is given: the step, and the label 'setup-do-…' that says what to do there."""
_OF_KEYS: Final = frozenset({"wrong-missing"})


def told(problem: Problem, language: str) -> MistakeShown:
    """A mistake with its step and, where there is one, the remedy in the pages' own words."""
    step, key_said = _STEP_OF.get(problem.field.partition(".")[0], "course"), True
    remedy = "" if problem.remedy is None else problem.remedy.in_language(language)
    for codes, field, there, key in _MENDED:
        if (not codes or problem.what.code in codes) and (not field or re.fullmatch(field, problem.field)):
            step, remedy = there or step, label(language, f"setup-do-{key}")
            key_said = problem.what.code not in _OF_KEYS
            break
    return MistakeShown(
        step,
        problem.severity is Severity.ERROR,
        problem.what.in_language(language),
        remedy,
        problem.field,
        key_said,
    )
