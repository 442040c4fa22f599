"""At which step a mistake of the check is mended, and how in the words of the pages, where its remedy speaks of the file."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from server.conversation.telling.mistakes import problem_in
from server.event import Problem, Severity
from server.pages.labels import label

__all__ = ["Told", "told"]


@dataclass(frozen=True, slots=True)
class Told:
    """A mistake as a step shows it. `where`: the field of the file; `error` False for what may be meant."""

    step: str
    error: bool
    what: str
    remedy: str
    where: str


_STEP_OF: Final = {
    "points": "points", "stretches": "points", "runners": "runner", "people": "people", "cars": "people",
    "places": "people", "drives": "meetings", "meetings": "meetings", "shares": "meetings", "if_then": "check",
}  # fmt: skip
_MENDED: Final = tuple(
    (re.compile(pattern), step, key)
    for pattern, step, key in (
        (r": no emergency number", "course", "emergency"),
        (r": (?:nobody knows how to reach|there is no) race control|^race_control\b", "course", "control"),
        (r": there is no runner$", "runner", "runner"),
        (r"the ladder is empty$|has no safety contact$", "people", "contact"),
        (r": nobody is to call race control$|are both to call race control$", "people", "calls"),
        (r"is on the ladder, but|is to call race control, but", "people", "phone"),
        (r": no people are named|is not among the \[\[people\]\]", "people", "people"),
        (r": nobody reports from any point", "points", "reports"),
        (r": no crew car comes to", "course", "transport"),
        (r"^event\.name: .* is missing$", "course", "name"),
        (r"^event\.starts: ", "course", "starts"),
        (r"^event\.time_zone: .* is missing$", "course", "zone"),
        (r"^event\.route: .* is missing$|^route: there is no file", "course", "route"),
        (r"^event\.limit: .* is no length of time$", "course", "span"),
        (r"^points\..*\.km: .* is (?:missing|no number)", "points", "km"),
        (r"^points\..*\.cut_offs?\b.*: .* is no (?:moment|time of day|length of time|date)", "points", "cut"),
        (r"^runners\..*: .* is no length of time$", "runner", "span"),
        (r"^runners\..*past_race.*: .* is missing$", "runner", "past"),
        (r"^runners\.[^.]*(?:\.target)?: .*(?:target|pace).*(?:missing|empty|no )", "runner", "target"),
        (r"^runners\.[^.]+\.carries: ", "meetings", "kit"),
        (r": nobody has confirmed the drive|: how long the drive from", "meetings", "confirm"),
        (r"^(?:cars|drives|points)\..*: .* is no number", None, "number"),
    )
)
"""By field and English sentence of the check: the step, and the label 'setup-do-…' that says what to do there."""


def told(problem: Problem, language: str) -> Told:
    """A mistake with its step and, where there is one, the remedy in the pages' own words."""
    said = problem_in(problem, language)
    line = f"{problem.field}: {problem.what}"
    step, remedy = _STEP_OF.get(problem.field.partition(".")[0], "course"), said.remedy
    for pattern, there, key in _MENDED:
        if pattern.search(line):
            step, remedy = there or step, label(language, f"setup-do-{key}")
            break
    return Told(step, problem.severity is Severity.ERROR, said.what, remedy, problem.field)
