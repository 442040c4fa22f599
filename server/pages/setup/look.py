"""A draft looked at: the check's own verdict, its mistakes by step, and as much of course and plan as it yields already."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from server.api.building import BuildError, Built, build
from server.course import Course, CourseError, build_course, read_gpx
from server.drafting.document import Document, UnusualError
from server.drafting.race import ROUTE
from server.event import Problem
from server.pages.setup.folder import RaceFolder
from server.pages.setup.mending import MistakeShown, told

__all__ = ["STEPS", "DraftLook", "look"]

STEPS: Final = ("course", "points", "runner", "people", "meetings", "check", "publish")
_PLANNED: Final = frozenset(
    {
        "event",
        "rules",
        "waves",
        "courses",
        "points",
        "stretches",
        "weather",
        "runners",
        "places",
        "driving",
    }
)
"""What a timetable needs: it is shown while people and meetings are still missing."""


_TABLES: Final = {
    "course": ("event", "race_control"),
    "points": ("points",),
    "runner": ("runners",),
    "people": ("people", "cars"),
    "meetings": ("meetings", "drives"),
}
"""What each step writes."""


@dataclass(frozen=True, slots=True, eq=False)
class DraftLook:
    """What a draft comes to. `doc` None: the text can't be changed here. `built`: the whole, where nothing stands in the
    way; `plan`: the same, or without people and meetings."""

    doc: Document | None
    course: Course | None
    built: Built | None
    plan: Built | None
    told: tuple[MistakeShown, ...]
    files: Mapping[str, bytes]

    def begun(self, step: str) -> bool:
        """Whether anything of a step stands in the draft: what is missing of one not begun is everything, and no count."""
        names = _TABLES.get(step)
        return self.doc is None or names is None or any(self.doc.tables(name) for name in names)

    def wrong(self, step: str) -> tuple[MistakeShown, ...]:
        """The mistakes and doubts that are mended at a step."""
        return tuple(t for t in self.told if t.step == step)

    def errors(self, step: str) -> int:
        """How many of them stand in the way."""
        return sum(t.error for t in self.wrong(step))


def look(draft: RaceFolder, language: str) -> DraftLook:
    """Check a draft as `stilepost check` does, sentences in a language."""
    return _look(draft.text, tuple(draft.files.items()), language)


@lru_cache(maxsize=4)
def _look(text: str, listed: tuple[tuple[str, bytes], ...], language: str) -> DraftLook:
    files = dict(listed)
    try:
        doc = Document(text)
    except UnusualError:
        doc = None
    built, problems = _built(text, files, language)
    plan = built
    if plan is None and doc is not None:
        plan, _ = _built(doc.only(_PLANNED), files, language)
    return DraftLook(doc, _course(doc, files), built, plan, tuple(told(p, language) for p in problems), files)


def _built(text: str, files: dict[str, bytes], language: str) -> tuple[Built | None, tuple[Problem, ...]]:
    try:
        built = build(text, files, language=language)
    except BuildError as error:
        return None, error.problems
    return built, built.warnings


def in_stages(doc: Document | None) -> bool:
    """Whether a stage ends at a point of the draft."""
    return doc is not None and any(p.get("next_stage") for p in doc.tables("points"))


def _course(doc: Document | None, files: dict[str, bytes]) -> Course | None:
    route = str(doc.table("event").get("route", ROUTE)) if doc is not None else ROUTE
    stated = doc.table("event").get("stated_km") if doc is not None else None
    try:
        length = float(stated) if isinstance(stated, int | float) else None
        return build_course(read_gpx(files[route], route, stages=in_stages(doc)), stated_km=length)
    except (KeyError, CourseError):
        return None
