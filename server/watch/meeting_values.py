"""What notices about meetings and sightings hold: times, windows, kit, where she was seen, the odds of a cut-off.

Values only: a notice (notice.py) is worded from them, in server/conversation/telling.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.facts.state import LastKnown
from server.facts.stop_log import LogSince
from server.forecast.outlook import Window


@dataclass(frozen=True, slots=True)
class OwnWay:
    """What of a meeting is different for those who come to it in another car, `car` by its key. As in
    `MeetingValues`."""

    people: tuple[str, ...]
    car: str
    leave_by: datetime | None
    wait_until: datetime
    drive: timedelta | None
    drive_confirmed: bool
    drive_from: str | None
    next_meeting: str | None = None
    p_both: float | None = None
    lost: str = ""
    p_comes: float | None = None
    stay: bool = False


@dataclass(frozen=True, slots=True)
class MeetingValues:
    """A meeting as it stands. `leave_by` is None where no confirmed drive is known.

    `drive` may be an estimate: then `drive_confirmed` is False and it sets nothing. `drive_from` is where
    the crew come from, `crew` who goes. `p_in_time` is the probability, which the times are set for, that
    the crew is there before she is. `p_both`: the odds that the same crew also makes `next_meeting`, if
    they stay here until she leaves (of two runners as if their races had nothing in common); `p_comes`: that she has
    come here by `wait_until`, where that is cut short for `next_meeting`. `wait_until` is never before she is likely there,
    unless the meeting is `lost`. `kit` is brought, `take_back` taken away from there. `stay`: she is missed, and crew stay
    there until she is heard of; `unseen`: since when nobody has seen her, where she is missed. `lost` says why
    the meeting can't be made ('' = it can), `was_leave_by` and `was_be_there` what this person was last told;
    `unreported_out` the point where she was seen in, and from which nobody has reported her out. Where several cars
    come, all this is of one of them, `ways` of the others; `own` and `parties` give each car's; `car` is then the key of
    a car that is not the meeting's own. `log`: what was logged of how she eats, drinks and is, in what crew are told before
    they go.
    """

    meeting: str
    point: str
    window: Window
    leave_by: datetime | None
    be_there: datetime
    wait_until: datetime
    drive: timedelta | None
    kit: tuple[str, ...]
    food: str
    if_missed: str
    no_signal: bool
    was: Window | None = None
    next_meeting: str | None = None
    drive_confirmed: bool = False
    drive_from: str | None = None
    crew: tuple[str, ...] = ()
    p_in_time: float = 0.97
    p_both: float | None = None
    lost: str = ""
    was_leave_by: datetime | None = None
    was_be_there: datetime | None = None
    stay: bool = False
    take_back: tuple[str, ...] = ()
    unreported_out: str | None = None
    ways: tuple[OwnWay, ...] = ()
    car: str = ""
    p_comes: float | None = None
    unseen: datetime | None = None
    log: LogSince | None = None

    @property
    def on_the_spot(self) -> bool:
        """Whether they are where she comes to, and have no way to go: a camp between two loops."""
        return self.leave_by is not None and self.leave_by == self.be_there

    def own(self, person: str) -> MeetingValues:
        """The meeting as it is for one of those who go, by the car they are in; itself for anybody else."""
        return next((m for m in self.parties() if person in m.crew), self)

    def parties(self) -> tuple[MeetingValues, ...]:
        """The meeting car by car: `crew` are those in it, `ways` is empty."""
        if not self.ways:
            return (self,)
        elsewhere = {p for w in self.ways for p in w.people}
        first = replace(self, crew=tuple(p for p in self.crew if p not in elsewhere), ways=())
        return (first, *(self._by(w) for w in self.ways))

    def _by(self, w: OwnWay) -> MeetingValues:
        return replace(
            self,
            crew=w.people,
            ways=(),
            car=w.car,
            leave_by=w.leave_by,
            wait_until=w.wait_until,
            drive=w.drive,
            drive_confirmed=w.drive_confirmed,
            drive_from=w.drive_from,
            next_meeting=w.next_meeting,
            p_both=w.p_both,
            lost=w.lost,
            p_comes=w.p_comes,
            stay=w.stay,
        )


@dataclass(frozen=True, slots=True)
class BriefValues:
    """Before crew leave signal: the next meetings, when to move on, what to do if nothing is heard."""

    meetings: tuple[MeetingValues, ...]
    signal_back_at: str | None


@dataclass(frozen=True, slots=True)
class SightingValues:
    """She is in, out, through or finished at a point; with what to have ready and what comes next."""

    point: str
    at: datetime
    told_by: str
    through: bool = False
    kit: tuple[str, ...] = ()
    food: str = ""
    planned_stop: timedelta | None = None
    next_window: Window | None = None
    next_meeting: MeetingValues | None = None
    take_back: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CutOffValues:
    """The odds of a cut-off have crossed a level; `latest_out` of the point before for 90%."""

    point: str
    edge: str
    cut_off: datetime
    odds: float
    level: float
    falling: bool
    latest_out_point: str | None = None
    latest_out: datetime | None = None


@dataclass(frozen=True, slots=True)
class BeforeDarkValues:
    """The dark may be there before her torch: `things` wait at `point`, held by `holders`; `dark` is from when, where she is
    as late as one time in ten. `give_at` is the last point before at which she is likely in the light and crew may be
    (None = none; without a window she is there now), `givers` the crew who meet her there."""

    point: str
    things: tuple[str, ...]
    dark: datetime
    window: Window
    holders: tuple[str, ...] = ()
    give_at: str | None = None
    give_window: Window | None = None
    givers: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LateValues:
    """Now is past the 90% time as it stood at the last fact heard: a question."""

    point: str
    window: Window
    last_known: LastKnown | None
