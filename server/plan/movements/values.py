"""What crew movements are made of: ways and their addends, rides, visits, rows per person and car, troubles, offers."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from server.plan.notes import Saying, saying


@dataclass(frozen=True, slots=True)
class Addend:
    """One part of a time, by its name: 'road', 'night', 'walk-in'."""

    name: str
    time: timedelta


def part_of(addend: Addend) -> Saying:
    """An addend to be said: 'walk-in 5 min'."""
    return saying(f"move-part-{addend.name.replace(' ', '-')}", took_length_s=addend.time.total_seconds())


@dataclass(frozen=True, slots=True)
class CarWay:
    """The way by car from one place to another; its addends add up to `drive`.

    `drive` None: nothing is known of it. `confirmed`: a person stands by it, so that it may set a leave-by.
    `by` names them; `km` is set where the drive was estimated from a distance.
    """

    from_place: str
    to_place: str
    drive: timedelta | None
    confirmed: bool
    addends: tuple[Addend, ...] = ()
    by: str | None = None
    km: float | None = None


@dataclass(frozen=True, slots=True)
class Journey:
    """From where a car stands to the meeting: walk out to the car, drive (perhaps by way of a place), walk in,
    unload, sign in. No ways: the car is there already."""

    ways: tuple[CarWay, ...]
    on_foot: tuple[Addend, ...] = ()
    known: bool = True

    @property
    def drive(self) -> timedelta | None:
        """The time at the wheel; None where a part of it is not known."""
        drives = [w.drive for w in self.ways]
        if not self.known or None in drives:
            return None
        return sum((d for d in drives if d is not None), timedelta(0))

    @property
    def whole(self) -> timedelta | None:
        """Door to meeting; None where the drive is not known."""
        drive = self.drive
        return None if drive is None else drive + sum((a.time for a in self.on_foot), timedelta(0))

    @property
    def confirmed(self) -> bool:
        """Whether a person stands by every drive in it."""
        return self.known and all(w.confirmed and w.drive is not None for w in self.ways)

    @property
    def addends(self) -> tuple[Addend, ...]:
        """Everything it is made of, in order."""
        return (*(a for w in self.ways for a in w.addends), *self.on_foot)


@dataclass(frozen=True, slots=True)
class Ride:
    """A car on its way to a meeting. `after` is the meeting it comes from (None: its start, or by `now`).

    `from_place` is where it stands, `journey` the whole way from there. Where they go by way of a place, `leave_from` is
    that place, `last` the way from it, `to_via` the way to it; else `from_place`, `journey` and None. `leave_by` is the
    one that the notices tell: the time to leave `leave_from`, None without a confirmed drive. `there` and `gone` are
    this car's likely times (50%), `p_first` the odds that it is there before she is: it waits for no other.
    """

    car: str | None
    driver: str | None
    riders: tuple[str, ...]
    from_place: str | None
    journey: Journey
    after: str | None
    leave_by: datetime | None
    there: datetime
    gone: datetime
    p_first: float
    leave_from: str | None
    last: Journey
    to_via: Journey | None = None


@dataclass(frozen=True, slots=True)
class MeetingMovement:
    """A meeting as the movements have it. `there` and `gone` are the likely times (50%) of all its cars.

    `p_first`: odds that all who go are there before she is, the meetings before it waited out; `p_meets`: before
    she has left. `promised`: `p_first` reaches `sure` on confirmed drives, they stay until she is likely to have come,
    nobody has to be elsewhere, and no rule is broken.
    """

    meeting: str
    runner: str
    point: str
    early: datetime
    likely: datetime
    late: datetime
    be_there: datetime
    wait_until: datetime
    there: datetime
    gone: datetime
    rides: tuple[Ride, ...]
    crew: tuple[str, ...]
    sure: float
    p_first: float
    p_meets: float
    promised: bool
    if_missed: str = ""

    @property
    def leave_by(self) -> datetime | None:
        """The first of its cars' leave-bys; None if any car has none."""
        times = [r.leave_by for r in self.rides]
        return None if not times or None in times else min(t for t in times if t is not None)


class Role(StrEnum):
    """What a person does on the way to a meeting."""

    DRIVES = "drives"
    RIDES = "rides"
    PACES = "rides, then paces her"
    RUNS = "rides, then runs a share"
    WITH_CAR = "stays with the car"


@dataclass(frozen=True, slots=True)
class PersonRow:
    """One movement of one person: times as those of the visit, the leave-by that of the car they are in."""

    person: str
    meeting: str
    runner: str
    point: str
    role: Role
    car: str | None
    from_place: str | None
    leave_by: datetime | None
    be_there: datetime
    wait_until: datetime
    there: datetime
    gone: datetime
    promised: bool
    if_missed: str


@dataclass(frozen=True, slots=True)
class CarRow:
    """One movement of one car."""

    car: str
    meeting: str
    point: str
    driver: str | None
    riders: tuple[str, ...]
    from_place: str | None
    journey: Journey
    leave_by: datetime | None
    be_there: datetime
    there: datetime
    gone: datetime


class TroubleKind(StrEnum):
    """Why a movement is not what it should be."""

    CLASH = "can't both be made"
    SHORT = "odds below the promise"
    NO_WAY = "drive not known"
    ESTIMATED = "drive not confirmed"
    NO_DRIVER = "nobody drives"
    NO_SEAT = "too few seats"
    STRANDED = "not where the car is"
    ON_FOOT = "with her on foot then"
    AWAKE = "driver awake too long"
    ASLEEP = "driver means to sleep then"
    HAND_OVER = "hand-over without transport"
    FETCH = "pacer not fetched"
    RULE = "breaks a rule"
    PERMIT = "permit not said to be held"


@dataclass(frozen=True, slots=True)
class MovementTrouble:
    """A movement that will not work, or not surely: at which meeting, for whom, with what odds, and what to say.

    `odds` of a CLASH are those that both meetings are made, of a SHORT those of being there first.
    """

    kind: TroubleKind
    meeting: str
    said: Saying
    person: str | None = None
    car: str | None = None
    other: str | None = None
    odds: float | None = None
    hours: float | None = None


@dataclass(frozen=True, slots=True)
class Broken:
    """A rule of the race that the plan breaks: `rule` as the race has it, what breaks it, and what to do. The plan
    is refused."""

    rule: Saying
    meeting: str | None
    said: Saying
    remedy: Saying


class OfferKind(StrEnum):
    """What could be done about a trouble."""

    OTHER_CAR = "another car goes"
    SKIP = "leave this meeting out"
    SWAP_DRIVER = "another person drives"
    SLEEP = "sleep before"
    CONFIRM = "confirm the drive"


@dataclass(frozen=True, slots=True)
class Offer:
    """Something that would help: never done without a person's word. `odds` of being there first if it is done."""

    kind: OfferKind
    meeting: str
    said: Saying
    person: str | None = None
    car: str | None = None
    odds: float | None = None
    start: datetime | None = None
    end: datetime | None = None


APART = "move-two-runners"
"""The kind of note that says whose races the odds take as having nothing in common."""


@dataclass(frozen=True, slots=True)
class CrewPlan:
    """Every movement, in order of time; what breaks a rule (it is refused then), what will not work, what helps."""

    visits: tuple[MeetingMovement, ...]
    people: tuple[PersonRow, ...]
    cars: tuple[CarRow, ...]
    broken: tuple[Broken, ...] = ()
    troubles: tuple[MovementTrouble, ...] = ()
    offers: tuple[Offer, ...] = ()
    notes: tuple[Saying, ...] = ()

    def visit(self, meeting: str) -> MeetingMovement:
        """The visit of that meeting; KeyError if it is over or there is none."""
        for v in self.visits:
            if v.meeting == meeting:
                return v
        raise KeyError(meeting)
