"""What the rules look at: one runner in one situation, with the few questions every rule asks.

Also the two things a rule may hand back: a `Draft` of a notice, and a `Wake`, a later moment at which time
alone may make it answer differently.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from typing import Any, TypeVar, cast

from server.event.model import Event, MeetingPlan, Part, PartKind, Person, Runner
from server.facts.entry import Source
from server.facts.state import Going, RaceState, RunnerState, Stamp
from server.forecast.outlook import DayLegs, Outlook, View
from server.watch.notice import (
    Answer,
    BriefValues,
    Made,
    MeetingValues,
    NoticeKind,
    SightingValues,
    UncoveredValues,
    Urgency,
    Values,
)
from server.watch.situation import Situation

__all__ = ["Draft", "Rule", "Sight", "Wake", "fact_at", "floor_to", "on_grid"]

T = TypeVar("T")

GRID = timedelta(minutes=5)
"""Figures that drift with silence (odds) are looked at on this grid, so that asking more often than
`ask_again` says changes nothing."""


@dataclass(frozen=True, slots=True)
class Wake:
    """Ask this rule again at `at`."""

    at: datetime


@dataclass(frozen=True, slots=True)
class Draft:
    """A notice that a rule holds to be owed; `evaluate` settles it with the tables.

    `occasion` tells this notice from others of the same kind to the same person about the same point.
    None = as the table says. `mine`: it concerns a meeting, an alarm or a duty of this very person.
    """

    kind: NoticeKind
    person: str
    point: str
    occasion: str
    owed_at: datetime
    values: Values
    facts: tuple[str, ...] = ()
    use_by: datetime | None = None
    needs_answer: bool | None = None
    buttons: tuple[Answer, ...] | None = None
    urgency: Urgency | None = None
    mine: bool = False
    lasting: bool = False


@dataclass(frozen=True, slots=True)
class Sight:
    """One runner, at `now`. `made` are the notices about her, those found in this very pass included.

    `view` is the forecast now; `fact_view` as it stood at the last fact, before silence said anything.
    Both are None for a runner without a forecast. `meetings` are in running order.
    """

    situation: Situation
    now: datetime
    runner: Runner
    state: RunnerState
    meetings: tuple[MeetingValues, ...]
    made: tuple[Made, ...]
    memo: dict[object, Any] = field(default_factory=dict, compare=False, repr=False)

    def once(self, key: object, find: Callable[[], T]) -> T:
        """What `find` gives, found once an evaluation. Only for what no new notice changes, or with the
        number of notices in the key."""
        if key not in self.memo:
            self.memo[key] = find()
        return cast(T, self.memo[key])

    @property
    def event(self) -> Event:
        """The event."""
        return self.situation.event

    @property
    def race(self) -> RaceState:
        """The race-level facts."""
        return self.situation.state

    @property
    def outlook(self) -> Outlook | None:
        """Her forecast, if there is one."""
        return self.situation.outlooks.get(self.runner.id)

    @property
    def fact_at(self) -> datetime:
        """The moment of the last thing that is fact about her; her start if nothing is."""
        return self.once("fact at", lambda: fact_at(self.state))

    @property
    def seen_at(self) -> datetime:
        """The moment of the last fact about her that is no 'not here yet'."""
        return self.once("seen at", lambda: seen_at(self.state))

    @property
    def fact_view(self) -> View | None:
        """The forecast as it stood at the last fact heard."""
        return self.outlook.at(self.fact_at) if self.outlook else None

    @property
    def seen_outlook(self) -> Outlook | None:
        """Her forecast as the sightings leave it: without anybody's 'not here yet', which tells that she is missed and
        must not make her being missed the rule."""
        if self.outlook is None:
            return None
        return self.outlook.untold() or self.outlook

    @property
    def seen_view(self) -> View | None:
        """That forecast as it stood at the last sighting."""
        return self.seen_outlook.at(self.seen_at) if self.seen_outlook else None

    def view_at(self, when: datetime) -> View | None:
        """The forecast at `when`, or at the last fact if that is later."""
        return self.outlook.at(max(when, self.fact_at)) if self.outlook else None

    def parts(self, *kinds: PartKind) -> tuple[Part, ...]:
        """Parts of those kinds that concern her."""
        return self.event.people_for(self.runner.id, *kinds)

    def people(self, *kinds: PartKind) -> tuple[str, ...]:
        """Ids of the people with those parts, each once, in the event's order."""
        return tuple(dict.fromkeys(p.person for p in self.parts(*kinds)))

    def person(self, person_id: str) -> Person:
        """A person of the event."""
        return self.event.person(person_id)

    def plan(self, meeting_id: str) -> MeetingPlan:
        """The plan of a meeting."""
        return self.event.meeting(meeting_id)

    def told(
        self,
        kind: NoticeKind,
        person: str | None = None,
        point: str | None = None,
        occasion: str | None = None,
    ) -> Iterator[Made]:
        """Notices made about her of that kind, in the order in which they were made."""
        for m in self.made:
            key = m.notice.key
            if (
                key.kind is kind
                and person in (None, key.person)
                and point in (None, key.point)
                and occasion in (None, m.notice.occasion)
            ):
                yield m

    def caller(self) -> str | None:
        """The one person who calls race control about her; None where they have no part in her race, and hear of nothing."""
        named = (p.person for p in self.event.people_for(self.runner.id, *PartKind) if p.calls_race_control)
        return next(named, None)

    def reached(self, point_id: str) -> bool:
        """Whether she is known to have been at that point, or at a later one."""
        if self.state.at_point(point_id) is not None:
            return True
        order = [p.id for p in self.event.course_of(self.runner.id).points]
        known = [order.index(t.point) for t in self.state.times if t.point in order]
        return bool(known) and point_id in order and order.index(point_id) <= max(known)

    def held(self) -> bool:
        """Whether she is held by the organiser now."""
        spans = [*self.race.held, *self.state.held]
        return any(s.start <= self.now and (s.end is None or self.now < s.end) for s in spans)

    def going(self) -> Going:
        """Where in her race she is."""
        return self.state.going


@dataclass(frozen=True, slots=True)
class _Remembering:
    """An outlook that answers each question once: rules ask the same ones, and views cost milliseconds."""

    real: Outlook
    views: dict[datetime, View]
    falls: dict[tuple[object, ...], datetime | None]
    late: list[tuple[str, datetime] | None]
    without: list[Outlook | None]

    @property
    def day(self) -> DayLegs | None:
        """See `Outlook.day`."""
        return self.real.day

    def at(self, now: datetime) -> View:
        """See `Outlook.at`."""
        if now not in self.views:
            self.views[now] = self.real.at(now)
        return self.views[now]

    def late_time(self) -> tuple[str, datetime] | None:
        """See `Outlook.late_time`."""
        if not self.late:
            self.late.append(self.real.late_time())
        return self.late[0]

    def unheard_falls_under(self, line: float, after: datetime) -> datetime | None:
        """See `Outlook.unheard_falls_under`."""
        key = (line, after.timestamp())
        if key not in self.falls:
            self.falls[key] = self.real.unheard_falls_under(line, after)
        return self.falls[key]

    def ended_rather(self, going: float, after: datetime) -> datetime | None:
        """See `Outlook.ended_rather`."""
        key = ("rather", going, after.timestamp())
        if key not in self.falls:
            self.falls[key] = self.real.ended_rather(going, after)
        return self.falls[key]

    def untold(self) -> Outlook | None:
        """See `Outlook.untold`."""
        if not self.without:
            found = self.real.untold()
            self.without.append(None if found is None else _Remembering(found, {}, {}, [], []))
        return self.without[0]


def remembering(outlooks: Mapping[str, Outlook], runner: str) -> dict[str, Outlook]:
    """One runner's outlook, remembering its answers; {} if she has none."""
    return {runner: _Remembering(outlooks[runner], {}, {}, [], [])} if runner in outlooks else {}


def stewards(event: Event) -> tuple[str, ...]:
    """Who hears of trouble with ourselves: the organisers, or where no person is one, the safety contacts."""
    for kind in (PartKind.ORGANISER, PartKind.SAFETY_CONTACT):
        found = dict.fromkeys(p.person for p in event.parts if p.kind is kind)
        if found:
            return tuple(found)
    return ()


def last_told(sight: Sight, who: str, meeting: str) -> MeetingValues | None:
    """What a person was last told about a meeting, in whatever notice; None if nothing."""
    last: MeetingValues | None = None
    for m in sight.made:
        if m.notice.key.person != who:
            continue
        found: tuple[MeetingValues | None, ...]
        match m.notice.values:
            case MeetingValues() as values:
                found = (values,)
            case BriefValues(meetings=several):
                found = several
            case SightingValues(next_meeting=values) | UncoveredValues(meeting_now=values):
                found = (values,)
            case _:
                found = ()
        last = next((v for v in found if v is not None and v.meeting == meeting), last)
    return last


def tried(person: Person, notices: Iterable[Made]) -> tuple[str, ...]:
    """The channels over which somebody was tried in vain; () for one whom a notice got to, who did not answer."""
    return () if any(m.sent_at is not None for m in notices) else person.channels


Rule = Callable[[Sight], Iterable[Draft | Wake]]
"""One reason for notices: looks at a runner, says what is owed and when to be asked again."""


WITH_US_HOLDS = timedelta(hours=1)
"""Somebody's word that they have her quiets her silence for so long, where nobody renews it and she has not retired (own
choice)."""


def with_us(sight: Sight) -> bool:
    """Whether somebody has her by now: then nobody misses her, and nobody is sent to meet her until she goes on."""
    ends = with_us_until(sight.state)
    return ends is not None and (sight.state.retirement is not None or sight.now < ends)


def with_us_until(state: RunnerState) -> datetime | None:
    """When the newest word that somebody has her is too old to go by; None where nobody has her."""
    if state.in_hand is None:
        return None
    return max(state.in_hand.at, state.in_hand_heard or state.in_hand.at) + WITH_US_HOLDS


def with_us_ends(sight: Sight) -> Iterator[Wake]:
    """The same, to be asked again then."""
    ends = with_us_until(sight.state)
    if ends is not None:
        yield Wake(ends)


def fact_at(state: RunnerState) -> datetime:
    """The moment of the last thing that is fact about her; her start if nothing is.

    Silence counts from here; a view at this moment holds every fact and no silence. How she is moves no time: it
    may be written long after she was seen, and would have silence move what only a fact may.
    """
    return max([seen_at(state), *(n.stamp.at for n in state.not_yet)])


def seen_at(state: RunnerState) -> datetime:
    """The moment of the last fact about her that is no 'not here yet'."""
    moments = [state.start]
    for t in state.times:
        moments += [s.at for s in (t.arrived, t.left) if s is not None]
    moments += [f.stamp.at for f in state.positions]
    moments += [at for r in state.rests for at in (r.start, r.end) if at is not None]
    moments += [] if state.rest_heard is None else [state.rest_heard]
    moments += [e.seen_at for e in state.conditions]
    if state.last_known is not None:
        moments.append(state.last_known.at)
    return max(moments)


def heard_at(sight: Sight, stamp: Stamp) -> datetime:
    """When we got the report of a stamp, as far as is known: one that was long under way is no delay of
    ours."""
    known = sight.state.last_known
    if known is not None and known.entry == stamp.entry:
        return max(stamp.at, known.received_at)
    return stamp.at


def stamps(state: RunnerState) -> Iterator[tuple[str, Stamp]]:
    """Every stamp of an arrival or departure, with its point."""
    for t in state.times:
        for s in (t.arrived, t.left):
            if s is not None:
                yield t.point, s


def seen_by_somebody(state: RunnerState, entry: str) -> bool:
    """Whether an entry is a sighting: not a tracker's word, which says where the tracker is, not how
    she is."""
    for f in state.positions:
        if f.stamp.entry == entry:
            return f.stamp.source is not Source.TRACKER
    return all(s.source is not Source.TRACKER for _, s in stamps(state) if s.entry == entry)


_EPOCH = datetime(2000, 1, 1, tzinfo=UTC)


def floor_to(when: datetime, step: timedelta = GRID) -> datetime:
    """The last whole step (5 min) not after `when`."""
    return _EPOCH + (when - _EPOCH) // step * step


def ceil_to(when: datetime, step: timedelta = GRID) -> datetime:
    """The first whole step (5 min) not before `when`."""
    return _EPOCH - (_EPOCH - when) // step * step


def on_grid(now: datetime) -> tuple[datetime, Wake]:
    """The grid moment that `now` belongs to, and the wake for the next."""
    tick = floor_to(now)
    return tick, Wake(tick + GRID)
