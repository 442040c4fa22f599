"""What is known of a meeting somebody has fallen out of, and what notices about it hold. Values only."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from server.event.model import MeetingPlan
from server.facts.state import Fallen, Taken
from server.forecast.outlook import Window
from server.watch.meeting_values import MeetingValues


@dataclass(frozen=True, slots=True)
class Uncovered:
    """A meeting that somebody fell out of, `plan` as it was planned.

    `out` are all who do not come for it, those who were to ride with them too; `goes` who of the plan still does, `driver`
    who of them drives instead. `taken`: who comes in their place. `missing` is kit in cars that do not come (`kit_car`
    the key of the car it lies in), `no_pacer` the pacer who does not come and for whom nobody does.
    """

    plan: MeetingPlan
    fallen: tuple[Fallen, ...]
    out: tuple[str, ...] = ()
    goes: tuple[str, ...] = ()
    driver: str | None = None
    taken: Taken | None = None
    missing: tuple[str, ...] = ()
    kit_car: str = ""
    no_pacer: str | None = None

    @property
    def held(self) -> bool:
        """Whether somebody comes."""
        return bool(self.goes) or self.taken is not None

    @property
    def whole(self) -> bool:
        """Whether nothing is missing: somebody comes, with her kit and her pacer."""
        return self.held and not self.missing and self.no_pacer is None

    @property
    def stand(self) -> str:
        """How it stands, the same text for the same stand: who takes it over, else since which fact it is open."""
        lacks = "" if self.whole else "!"
        since = self.taken.stamp.entry if self.taken else self.fallen[0].stamp.entry
        return f"{'by' if self.taken else 'with' if self.goes else 'open'}:{since}{lacks}"


class Ear(StrEnum):
    """Whom a notice about an uncovered meeting is for: somebody who could take it over, the person who fell out, the runner,
    those who meet her before, those who go all the same, anybody else who hears of it; or of a pacer who is with her on
    foot and can't go on, everybody."""

    STAND_IN = "stand-in"
    FALLEN = "fallen"
    HER = "her"
    MEETS_HER = "meets her before"
    GOES = "goes"
    OTHERS = "others"
    ALONE = "alone"


@dataclass(frozen=True, slots=True)
class StandIn:
    """Somebody who could take a meeting over. `leave_by` needs a confirmed drive, `there` is when they could be there at the
    earliest. `p_meets`: the odds that she has not left by then; `gives_up` the ids of meetings they would miss for it."""

    person: str
    leave_by: datetime | None
    there: datetime | None
    drive: timedelta | None
    drive_confirmed: bool
    drive_from: str | None
    p_meets: float
    gives_up: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Out:
    """Who fell out and why, by whose word, in which words."""

    person: str
    why: str
    told_by: str
    words: str = ""


@dataclass(frozen=True, slots=True)
class UncoveredValues:
    """A meeting that somebody fell out of: still open, `by` somebody else now, or `back` as planned.

    `out`, `goes`, `driver`, `missing`, `kit_car`, `pacer` as in `Uncovered`; `kit` is everything she was to get there,
    `before` the point where she is met before it. `again`: nobody has taken it since it was told first. `meeting_now`: the
    meeting for the one who takes it over. `also`: later meetings of hers that are open besides, by their points and her
    windows there.
    """

    meeting: str
    point: str
    ear: Ear
    fallen: tuple[Out, ...]
    window: Window | None = None
    out: tuple[str, ...] = ()
    goes: tuple[str, ...] = ()
    driver: str | None = None
    stand_ins: tuple[StandIn, ...] = ()
    kit: tuple[str, ...] = ()
    food: str = ""
    missing: tuple[str, ...] = ()
    kit_car: str = ""
    pacer: str | None = None
    by: str | None = None
    before: str | None = None
    again: bool = False
    back: bool = False
    meeting_now: MeetingValues | None = None
    also: tuple[tuple[str, Window], ...] = ()
