"""A change of the plan that somebody asks for while the race is on, as a value. It says what is to be, never how the file
says it: `server.drafting.replan` puts it into the text of the event file. Frozen; pure."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from server.event.model import Event, MeetingPlan, PartKind

__all__ = ["NotPossibleError", "PlanChange", "What", "car_with", "in_place_of"]


class What(StrEnum):
    """What is changed."""

    WHO_GOES = "who goes"
    DRIVES = "drives"
    SKIP = "skip"
    MOVE = "move"
    ADD = "add"
    KIT = "kit"
    PERSON = "person"
    JUST_FINISH = "just finish"
    DRIVE_TIME = "drive time"
    CUT_OFF = "cut-off"


@dataclass(frozen=True, slots=True)
class PlanChange:
    """One change. Fields beyond `what` are set only where it calls for them.

    WHO_GOES: `meeting`, the whole `crew` and the `car` they come in (None: their own). DRIVES: `meeting`, `crew`: who
    drives there now, and in whose place where that is said (`in_place_of`). SKIP: `meeting`. MOVE: `meeting`,
    the `point` where she is met instead. ADD: `runner`, `point`, `crew`, `car`, `kit`. KIT: `meeting`, `kit` as it is to
    be, thing by thing. PERSON: `name`, `phone`, `part`, whether they drive (`drives`) and in which `car`, for one `runner`
    (None: all). JUST_FINISH: `runner`, whose target becomes the race's time limit. DRIVE_TIME: `meeting`,
    the place driven to it from (`start`), `minutes`, and `by`, who stands by them. CUT_OFF is a race-level fact and no
    part of the file: `server.api.moved_cut_off`.
    """

    what: What
    meeting: str | None = None
    runner: str | None = None
    point: str | None = None
    crew: tuple[str, ...] = ()
    car: str | None = None
    kit: tuple[str, ...] = ()
    name: str = ""
    phone: str = ""
    part: PartKind = PartKind.CREW
    drives: bool = False
    start: str | None = None
    minutes: float | None = None
    by: str = ""


class NotPossibleError(ValueError):
    """A change that can't be made of this event: `why` as a word that decides how it is said, `field` of the change."""

    def __init__(self, why: str, field: str) -> None:
        super().__init__(f"{why} ({field})")
        self.why, self.field = why, field


def car_with(event: Event, person: str) -> str | None:
    """The car somebody has of their own; None where the file gives them none."""
    return next((p.car for p in event.parts_of(person) if p.car is not None), None)


def in_place_of(event: Event, plan: MeetingPlan, person: str, other: str | None = None) -> PlanChange:
    """`person` goes to a meeting in the place of `other` (None: of whoever drives there), in their own car where they have
    one; who else goes still goes. A person who was to go already takes the wheel and nobody stays away but `other`."""
    out = other if other is not None else _driver(event, plan)
    kept = [who for who in plan.crew if who not in (out, person)]
    return PlanChange(
        What.WHO_GOES,
        meeting=plan.id,
        crew=(person, *kept),
        car=car_with(event, person) or plan.car,
    )


def _driver(event: Event, plan: MeetingPlan) -> str | None:
    """Who drives to a meeting: the first of its crew who is said to, else the first."""
    return next((who for who in plan.crew if who in event.drivers), next(iter(plan.crew), None))
