"""What the fold makes of the entries: where each runner is, in facts, and what is doubted or open."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from enum import StrEnum

from server.facts.entry import Entry, Fix, Retired, Source, Why


class Going(StrEnum):
    """Where in her race a runner is; the table in server/facts/fold.py says what leads where."""

    BEFORE_START = "before the start"
    MOVING = "moving"
    AT_POINT = "at a point"
    RESTING = "resting"
    RETIRED = "retired"
    IN_HAND = "retired, in hand"
    FINISHED = "finished"
    CLOSED = "closed"

    @property
    def on_course(self) -> bool:
        """Started, and as far as is known going on."""
        return self in (Going.MOVING, Going.AT_POINT, Going.RESTING)

    @property
    def race_over(self) -> bool:
        """She goes no further in the race; nobody may have her yet."""
        return self in (Going.RETIRED, Going.IN_HAND, Going.FINISHED, Going.CLOSED)

    @property
    def no_longer_watched(self) -> bool:
        """Her race is over and somebody has her, or had her at the finish."""
        return self in (Going.IN_HAND, Going.FINISHED, Going.CLOSED)


@dataclass(frozen=True, slots=True)
class Stamp:
    """A moment that is fact: when, how surely (one standard deviation), by whom, from which entry."""

    at: datetime
    spread: timedelta
    entry: str
    by: str
    source: Source


@dataclass(frozen=True, slots=True)
class PointTimes:
    """Arrival and departure at one point; `through` when she did not stay.

    `implied`: nobody reported her here, but a later point or position says that she was; no time is
    invented. `also_arrived`, `also_left`: reports of the same moment that do not count for the time.
    """

    point: str
    arrived: Stamp | None = None
    left: Stamp | None = None
    through: bool = False
    implied: bool = False
    also_arrived: tuple[Stamp, ...] = ()
    also_left: tuple[Stamp, ...] = ()


@dataclass(frozen=True, slots=True)
class PlacedFix:
    """A position put on the course line: km along it, metres off it; None km = not placeable."""

    fix: Fix
    stamp: Stamp
    km: float | None
    off_m: float
    ambiguous: bool = False


@dataclass(frozen=True, slots=True)
class NotYet:
    """An explicit 'not here yet' at a point."""

    point: str
    stamp: Stamp


@dataclass(frozen=True, slots=True)
class Retirement:
    """A race that ended early: how, where (point id or words), and the entry that says so, with its words."""

    how: Retired
    point: str | None
    stamp: Stamp
    words: str = ""


@dataclass(frozen=True, slots=True)
class LastKnown:
    """The last thing that is fact: place, time, who saw it. `km` along the course where known."""

    entry: str
    kind: str
    point: str | None
    km: float | None
    fix: Fix | None
    at: datetime
    by: str
    received_at: datetime


@dataclass(frozen=True, slots=True)
class Interval:
    """From `start` to `end`; an open end is None."""

    start: datetime
    end: datetime | None


@dataclass(frozen=True, slots=True)
class Hold:
    """Runners held by the organiser: everybody, or only those at `point`, or only `runner`."""

    start: datetime
    end: datetime | None
    point: str | None
    runner: str | None
    entry: str
    by: str = ""
    words: str = ""


@dataclass(frozen=True, slots=True)
class RunnerState:
    """All facts about one runner, folded by seen time. Unconfirmed entries are listed, never folded in.

    `refused`: confirmed entries that the table of what may follow what does not allow; they changed
    nothing. `helps_open`: every request for help not yet answered, `help_open` the first of them (one may
    be unconfirmed: it counts at once). `helps_in_hand`: each request that somebody who then had her answered, by its
    id, and who said so. `held`: when she herself was kept from going on. `rest_until`: how
    long the rest she is in was said to last; `rest_heard`: when it was last said that she rests. `said_in_hand`: the
    entry `in_hand` rests on; `in_hand_heard`: when it was said last. `taken_back`, `confirmed`: the entries that took back,
    or confirmed, something about her.
    `how_she_is`: what was written of how she is, the words of a rest among it. `log`: what says something of the stop log;
    `log_shown`: who was shown it as a medic; `looked_back`: answers to what was asked after the race.
    `calls`: every call for help that counts, answered or not; `meanwhile`: what has come in about her since the first
    that is open. `last_heard`: when we last had a report that somebody (or something) saw or heard her.
    """

    runner: str
    start: datetime
    going: Going
    times: tuple[PointTimes, ...]
    positions: tuple[PlacedFix, ...] = ()
    not_yet: tuple[NotYet, ...] = ()
    rests: tuple[Interval, ...] = ()
    conditions: tuple[Entry, ...] = ()
    how_she_is: tuple[Entry, ...] = ()
    log: tuple[Entry, ...] = ()
    log_shown: tuple[Entry, ...] = ()
    looked_back: tuple[Entry, ...] = ()
    help_open: Entry | None = None
    retirement: Retirement | None = None
    in_hand: Stamp | None = None
    race_control_knows: Stamp | None = None
    finished: Stamp | None = None
    crew_has_her: Stamp | None = None
    contact_lost: Stamp | None = None
    last_known: LastKnown | None = None
    last_heard: datetime | None = None
    sweep_through: tuple[tuple[str, Stamp], ...] = ()
    unconfirmed: tuple[Entry, ...] = ()
    future: tuple[Entry, ...] = ()
    folded: tuple[str, ...] = ()
    refused: tuple[Entry, ...] = ()
    helps_open: tuple[Entry, ...] = ()
    helps_in_hand: tuple[tuple[str, Stamp], ...] = ()
    taken_back: tuple[Entry, ...] = ()
    confirmed: tuple[Entry, ...] = ()
    held: tuple[Interval, ...] = ()
    rest_until: datetime | None = None
    rest_heard: datetime | None = None
    said_in_hand: Entry | None = None
    in_hand_heard: datetime | None = None
    calls: tuple[Entry, ...] = ()
    meanwhile: tuple[Entry, ...] = ()

    @property
    def reached(self) -> tuple[str, ...]:
        """Ids of the points she has certainly reached, in running order, reported or implied."""
        return tuple(t.point for t in self.times)

    def past(self, point_id: str, order: Sequence[str]) -> bool:
        """Whether nobody can meet her at a point of her course any more, whose points `order` has in running order: she has
        left it or is further on, or her race is over."""
        there = self.at_point(point_id)
        left = there is not None and (there.left is not None or there.through)
        reached = max((order.index(p) for p in self.reached if p in order), default=-1)
        return self.going.race_over or left or (point_id in order and order.index(point_id) < reached)

    def at_point(self, point_id: str) -> PointTimes | None:
        """What is known of her at a point, or None."""
        for t in self.times:
            if t.point == point_id:
                return t
        return None


@dataclass(frozen=True, slots=True)
class Fallen:
    """Somebody who can't come: to `meeting`, or (None) to any still to come; why, by whose word and in which words."""

    person: str
    meeting: str | None
    why: Why
    stamp: Stamp
    words: str = ""


@dataclass(frozen=True, slots=True)
class Taken:
    """Who has taken a meeting over from those who can't come; the first who said so holds it."""

    person: str
    meeting: str
    stamp: Stamp


@dataclass(frozen=True, slots=True)
class Received:
    """Of entries that count about one runner, or about none, when each came or was confirmed, by its id."""

    of: Mapping[str, datetime]
    last: datetime | None = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "last", max(self.of.values(), default=None))


@dataclass(frozen=True, slots=True)
class RaceState:
    """Race-level facts: delays, holds, moved cut-offs, closed access; and every runner's state.

    `held` are the holds that stop everybody, `holds` all of them. `conflicts`: pairs (entry that counts,
    entry of the same sender and key with other content). `said`: the entry that each race-level fact in force
    rests on, by `ended`, `start:RUNNER`, `cut-off:POINT:EDGE`, `access:POINT`. `future`, `unconfirmed`, `refused`: as for a
    runner, for entries about no one runner, or about one unknown to the event. `calls`: for help, for none of the many
    runners whom the caller may mean; `taken_back`: what takes such calls back. `fallen`, `taken`: who can't come to
    meetings, and who comes instead. `requests`: what people want told, in seen order.
    `received`: when the entries that count came, by their runner ('' for none).
    """

    runners: tuple[RunnerState, ...]
    held: tuple[Interval, ...] = ()
    ended_early: Stamp | None = None
    cut_offs_moved: tuple[tuple[str, str, datetime], ...] = ()
    access_closed: tuple[str, ...] = ()
    rerouted: tuple[Entry, ...] = ()
    crew_there: tuple[tuple[str, str, Stamp], ...] = ()
    crew_left: tuple[tuple[str, str, Stamp], ...] = ()
    drives_confirmed: tuple[Entry, ...] = ()
    answers: tuple[Entry, ...] = ()
    stand_downs: tuple[Entry, ...] = ()
    awake: tuple[tuple[str, datetime], ...] = ()
    conflicts: tuple[tuple[str, str], ...] = ()
    holds: tuple[Hold, ...] = ()
    future: tuple[Entry, ...] = ()
    unconfirmed: tuple[Entry, ...] = ()
    refused: tuple[Entry, ...] = ()
    said: tuple[tuple[str, Entry], ...] = ()
    calls: tuple[Entry, ...] = ()
    taken_back: tuple[Entry, ...] = ()
    fallen: tuple[Fallen, ...] = ()
    taken: tuple[Taken, ...] = ()
    requests: tuple[Entry, ...] = ()
    received: Mapping[str, Received] = field(default_factory=dict, compare=False)
    by_id: dict[str, RunnerState] = field(default_factory=dict, init=False, compare=False, repr=False)

    def received_at(self, facts: tuple[str, ...], runner: str) -> datetime | None:
        """When the last of these entries was received, or confirmed; without any, the last about that runner or all of
        them. None where nothing was."""
        near = [self.received[k] for k in dict.fromkeys((runner, "")) if k in self.received]
        if not facts:
            return max((r.last for r in near if r.last is not None), default=None)
        moments = [r.of[f] for f in facts for r in near if f in r.of]
        if len(moments) < len(set(facts)):
            moments += [r.of[f] for f in facts for r in self.received.values() if f in r.of]
        return max(moments, default=None)

    def said_of(self, fact: str) -> Entry | None:
        """The entry that a race-level fact rests on, None if there is none; `fact` as in `said`."""
        return next((e for key, e in self.said if key == fact), None)

    def runner(self, runner_id: str) -> RunnerState:
        """The state of that runner; KeyError if there is none."""
        if not self.by_id:
            self.by_id.update((r.runner, r) for r in self.runners)
        return self.by_id[runner_id]
