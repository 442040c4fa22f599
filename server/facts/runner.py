"""One runner's race walked entry by entry: from what counts to `RunnerState`."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from copy import copy
from dataclasses import dataclass, replace
from datetime import datetime

from server.event.model import CourseDef, PointKind, Runner
from server.facts.conflict_resolution import seen_order
from server.facts.entry import Entry, Fix, Kind, Retired
from server.facts.placing import KnownAt, Placed, Placer
from server.facts.points import PointReports, stamp, visits
from server.facts.state import (
    Going,
    Interval,
    LastKnown,
    NotYet,
    PlacedFix,
    PointTimes,
    Retirement,
    RunnerState,
    Stamp,
)
from server.facts.status import Step, after

WELL_PAST_KM = 0.5
"""How far a position must be past a point to say that she has left it (own choice: GPS drift in a car
park or round a hut reaches some 100 m; half a kilometre is none)."""

ON_THE_LINE_M = 200.0
"""A position farther off the line than this never says that she went on (own choice: parallel roads)."""

HEARD = frozenset(
    {
        Kind.IN,
        Kind.OUT,
        Kind.THROUGH,
        Kind.POSITION,
        Kind.RESTING,
        Kind.MOVING_AGAIN,
        Kind.ASKED_FOR_HELP,
        Kind.RETIRED,
        Kind.IN_HAND,
        Kind.HOW_SHE_IS,
    }
)
"""Kinds that say somebody, or something she carries, saw or heard her."""

MEANWHILE = HEARD | {Kind.HELP_WORD, Kind.NOT_HERE_YET, Kind.SWEEP_THROUGH, Kind.NOTE}
"""Kinds of use to those who answer a call for help."""

_PLACE = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})
_ONWARD = frozenset({Step.IN, Step.OUT, Step.THROUGH, Step.FINISH, Step.MOVING_AGAIN, Step.POSITION_ON})
_ON_COURSE_AFTER_ALL = _PLACE | {Kind.RESTING, Kind.MOVING_AGAIN, Kind.ASKED_FOR_HELP}
"""What says that she did start. A position does not: her tracker may lie at home."""
_STAYING = frozenset({Going.AT_POINT, Going.RESTING})
_PLAIN_STEPS = {
    Kind.POSITION: Step.POSITION,
    Kind.RESTING: Step.RESTING,
    Kind.MOVING_AGAIN: Step.MOVING_AGAIN,
    Kind.RETIRED: Step.RETIRED,
    Kind.IN_HAND: Step.IN_HAND,
    Kind.RACE_CONTROL_TOLD: Step.RACE_CONTROL_TOLD,
}
_LAST_IN_THE_SAME_MOMENT = {Kind.RETIRED: 4, Kind.IN_HAND: 5, Kind.RACE_CONTROL_TOLD: 6, Kind.STAND_DOWN: 7}


OPEN_ITEMS = 64
"""Once a walk has come so far past what is settled of it, all but the newest half of these is settled (own choice): a report
of earlier than that has the whole walk made again."""


@dataclass(frozen=True, slots=True, eq=False)
class Settled:
    """A walk up to a moment, as it stood there, with what it rests on: entries and reports of points before that moment."""

    upto: datetime
    entries: Sequence[Entry]
    reports: Sequence[_Item]
    walk: _Walk

    def goes_on(self, fresh: _Walk, left: Sequence[Entry], reports: Sequence[_Item]) -> _Walk | None:
        """Where what `fresh` would walk over begins as this walk did: one that has got as far."""
        same = (
            self.walk.rests_on() == fresh.rests_on()
            and _by(left, self.upto) == self.entries
            and [i for i in reports if i.at < self.upto] == self.reports
        )
        return self.walk.as_it_stands(fresh.seen) if same else None


def fold_runner(
    runner: Runner,
    course: CourseDef,
    start: datetime,
    entries: tuple[Entry, ...],
    now: datetime,
    place: Placer | None,
    settled: Settled | None = None,
) -> tuple[RunnerState, Settled | None]:
    """The state of one runner from the entries that count and concern her, in seen order; and what is settled of the walk,
    from which the next one may go on.

    A report the table refuses changes nothing, so it must not hide another report of the same moment:
    the walk is made again without it until every report that counts for a time is allowed.
    """
    known = {p.id for p in course.points}
    refused = [e for e in entries if e.kind in _PLACE and e.point not in known]
    left = [e for e in entries if e.kind not in _PLACE or e.point in known]
    while True:
        walk = _Walk(runner, course, start, place, visits(left))
        walk, so_far = _walked(walk, left, now, settled)
        again = [e for e in walk.refused if e.kind in _PLACE and walk.has_other_reports(e)]
        if not again:
            return walk.state(left, refused + walk.refused), so_far
        refused += again
        gone = {e.id for e in again}
        left = [e for e in left if e.id not in gone]


def _walked(
    walk: _Walk, left: Sequence[Entry], now: datetime, settled: Settled | None
) -> tuple[_Walk, Settled | None]:
    """The walk over everything, from what is settled of it where that still holds."""
    reports, ahead = walk.reports(now), left
    further = settled.goes_on(walk, left, reports) if settled is not None else None
    if settled is not None and further is not None:
        walk, ahead = further, left[len(settled.entries) :]
        items = [i for i in reports if i.at >= settled.upto]
    else:
        settled, items = None, reports
    items = sorted([*items, *(_item(e) for e in ahead if e.kind not in _PLACE)], key=_Item.order)
    if len(items) > OPEN_ITEMS:
        upto = items[-OPEN_ITEMS // 2].at
        walk.over(i for i in items if i.at < upto)
        before = [i for i in reports if i.at < upto]
        settled = Settled(upto, _by(left, upto), before, walk.as_it_stands(walk.seen))
        items = [i for i in items if i.at >= upto]
    walk.over(items)
    return walk, settled


def _by(entries: Sequence[Entry], moment: datetime) -> Sequence[Entry]:
    """Those seen before that moment, of entries in seen order."""
    return entries[: bisect_left(entries, moment, key=lambda e: e.seen_at)]


@dataclass(frozen=True, slots=True)
class _Item:
    """One thing to walk over. `at` may differ from the entry's seen time where two reports disagreed."""

    at: datetime
    rank: int
    index: int
    step: Step | None
    entry: Entry | None

    def order(self) -> tuple[object, ...]:
        """By time; in the same moment the natural order (in before out, the end of a race last)."""
        tie = seen_order(self.entry) if self.entry is not None else ()
        return (self.at, self.rank, self.index, self.step is Step.OUT, tie)


def _item(e: Entry) -> _Item:
    step = _PLAIN_STEPS.get(e.kind)
    if e.kind is Kind.RETIRED and e.how is Retired.DID_NOT_START:
        step = Step.DID_NOT_START
    rank = _LAST_IN_THE_SAME_MOMENT.get(e.kind, 2)
    if e.how is Retired.NOT_SAID:
        rank -= 1  # that it is over, before how
    return _Item(e.seen_at, rank, -1, step, e)


class _Walk:
    """The mutable middle of the fold: one pass over the items of one runner."""

    def __init__(
        self,
        runner: Runner,
        course: CourseDef,
        start: datetime,
        place: Placer | None,
        seen: dict[str, PointReports],
    ) -> None:
        self.runner, self.course, self.start, self.place = runner, course, start, place
        self.seen = seen
        self.index = {p.id: i for i, p in enumerate(course.points)}
        self.finish = next((p.id for p in course.points if p.finish), course.points[-1].id)
        self.going = Going.BEFORE_START
        self.times_of: set[str] = set()
        self.positions: list[PlacedFix] = []
        self.not_yet: list[NotYet] = []
        self.rests: list[Interval] = []
        self.rest_until: datetime | None = None
        self.rest_heard: datetime | None = None
        self.conditions: list[Entry] = []
        self.how_she_is: list[Entry] = []
        self.helps: list[Entry] = []
        self.helped: list[tuple[str, Stamp]] = []
        self.taken_back: list[Entry] = []
        self.confirmed: list[Entry] = []
        self.sweeps: list[tuple[str, Stamp]] = []
        self.retirement: Retirement | None = None
        self.retired_by: Entry | None = None
        self.in_hand: Stamp | None = None
        self.said_in_hand: Entry | None = None
        self.in_hand_heard: datetime | None = None
        self.told: Stamp | None = None
        self.told_about: str | None = None
        self.finished: Stamp | None = None
        self.crew_has_her: Stamp | None = None
        self.contact_lost: Stamp | None = None
        self.last: LastKnown | None = None
        self.before = KnownAt(0.0, start)
        self.stay_km: float | None = None
        self.furthest = -1
        self.refused: list[Entry] = []

    # -- what to walk over -------------------------------------------------------------------------

    def rests_on(self) -> tuple[object, ...]:
        """What the walk rests on beside what it goes over."""
        return self.runner, self.course, self.start, self.place

    def as_it_stands(self, seen: dict[str, PointReports]) -> _Walk:
        """A walk that goes on from here by itself, with these reports of points."""
        walk = copy(self)
        for name, value in vars(self).items():
            if isinstance(value, list | set):
                setattr(walk, name, value.copy())
        walk.seen = seen
        return walk

    def over(self, items: Iterable[_Item]) -> None:
        """Walk over these, which are in order."""
        for item in items:
            self._walk(item)

    def reports(self, now: datetime) -> list[_Item]:
        """Of each point what counts, and the start once it has come, in order."""
        items = [i for v in self.seen.values() for i in self._visit_items(v)]
        if now >= self.start:
            items.append(_Item(self.start, 0, -1, Step.START_TIME, None))
        return sorted(items, key=_Item.order)

    def _visit_items(self, visit: PointReports) -> list[_Item]:
        """The reports that count at one point; one item where the same report gives both times."""
        t = visit.times()
        i = self.index[visit.point]
        first = PointKind.START in self.course.points[i].kinds or i == 0
        into = Step.FINISH if visit.point == self.finish else (Step.AT_START if first else Step.IN)
        arrival = visit.arrivals[0] if visit.arrivals else None
        departure = visit.departures[0] if visit.departures else None
        items = []
        if arrival is not None and t.arrived is not None and (arrival is not departure or first):
            items.append(_Item(t.arrived.at, 1, i, into, arrival))
        if departure is not None and t.left is not None:
            through = arrival is departure and not first
            out = Step.FINISH if into is Step.FINISH else (Step.THROUGH if through else Step.OUT)
            items.append(_Item(t.left.at, 1, i, out, departure))
        return items

    def has_other_reports(self, e: Entry) -> bool:
        """Whether the same moment at the same point is told by another report as well."""
        v = self.seen[e.point or ""]
        return len(v.arrivals) + len(v.departures) > 1

    # -- one step ----------------------------------------------------------------------------------

    def _walk(self, item: _Item) -> None:
        e = item.entry
        if e is None:
            self.going = after(self.going, Step.START_TIME) or self.going
            return
        self._started_after_all(e, item)
        placed = self._place(e)
        if item.step is None:
            self._note(e)
        else:
            step = self._refine(item.step, e, placed)
            then = after(self.going, step)
            if then is None or (step is Step.DID_NOT_START and self.furthest > 0):
                self.refused.append(e)
                return
            self._apply(step, then, item, e)
        self._sight(e, item, placed)

    def _started_after_all(self, e: Entry, item: _Item) -> None:
        """'Did not start' is refused once she is seen on the course, and whoever was told of it hears so."""
        ended = self.retirement
        if ended is None or ended.how is not Retired.DID_NOT_START or e.kind not in _ON_COURSE_AFTER_ALL:
            return
        then = after(self.going, Step.STARTED_AFTER_ALL)
        if then is not None and item.at >= self.start:
            then = after(then, Step.START_TIME)
        fits = then is not None and (item.step is None or after(then, item.step) is not None)
        if then is None or self.retired_by is None or not fits:
            return
        self.refused.append(self.retired_by)
        if self.last is not None and self.last.entry == self.retired_by.id:
            self.last = None
        self.retirement = self.retired_by = self.told = self.in_hand = self.said_in_hand = None
        self.going = then

    def _refine(self, step: Step, e: Entry, placed: Placed | None) -> Step:
        """A position well past the place she was staying at says that she has gone on."""
        if step is not Step.POSITION or placed is None or placed.km is None or placed.ambiguous:
            return step
        if self.stay_km is None or not _on_the_line(e.fix, placed):
            return step
        return Step.POSITION_ON if placed.km > self.stay_km + WELL_PAST_KM else step

    def _apply(self, step: Step, then: Going, item: _Item, e: Entry) -> None:
        was, self.going = self.going, then
        if then not in _STAYING:
            self.stay_km = None
        if step in _ONWARD:
            self.in_hand = self.said_in_hand = None
            self._close_rest(item.at)
        if e.kind in _PLACE and e.point is not None:
            self._keep_times(e.point)
        match step:
            case Step.FINISH if was is not Going.FINISHED and self.finished is None:
                arrived = self.seen[self.finish].times().arrived
                self.finished = arrived or stamp(e)
            case Step.RESTING:
                self._open_rest(e)
            case Step.RETIRED | Step.DID_NOT_START:
                self._retire(was, e)
            case Step.IN_HAND:
                self._take_in_hand(was, e)
            case Step.RACE_CONTROL_TOLD:
                self.told, self.told_about = stamp(e), e.about
            case _:
                pass

    def _keep_times(self, point: str) -> None:
        """Both moments of a point are kept as soon as one report of it is allowed; `state` drops a moment
        whose own report was refused."""
        self.times_of.add(point)
        self.furthest = max(self.furthest, self.index[point])

    def _retire(self, was: Going, e: Entry) -> None:
        how = e.how or Retired.OWN_CHOICE
        if self.retirement is None or was not in (Going.RETIRED, Going.IN_HAND):
            self.retirement, self.retired_by = Retirement(how, e.point, stamp(e), e.words), e
            if self.told_about != e.id:
                self.told = None  # what race control heard before was about something else
        elif self.retirement.how is Retired.NOT_SAID and how is not Retired.DID_NOT_START:
            # How it ended was told after that it ended: nothing else changes, and nobody is told twice.
            self.retirement = replace(self.retirement, how=how)
        self._close_rest(e.seen_at)
        self._say_again()

    def _take_in_hand(self, was: Going, e: Entry) -> None:
        self.helped += [(h.id, stamp(e)) for h in self.helps]
        self.helps = []
        if was is Going.FINISHED:
            self.crew_has_her = self.crew_has_her or stamp(e)
            return
        if was is Going.CLOSED:
            return
        self.in_hand_heard = max(e.seen_at, self.in_hand_heard or e.seen_at)
        if self.in_hand is None:
            self.in_hand, self.said_in_hand = stamp(e), e
            self.in_hand_heard = e.seen_at
        if was.on_course:
            self.rest_heard = e.seen_at  # while she sits with somebody she gets no farther
            if not (self.rests and self.rests[-1].end is None):
                self.rests.append(Interval(e.seen_at, None))
        self._say_again()

    def _say_again(self) -> None:
        """Facts that still hold are put to the table again after the state they wait for has come."""
        if self.going is Going.RETIRED and self.in_hand is not None:
            self.going = after(self.going, Step.IN_HAND) or self.going
        if self.going is Going.IN_HAND and self.told is not None:
            self.going = after(self.going, Step.RACE_CONTROL_TOLD) or self.going

    def _open_rest(self, e: Entry) -> None:
        self.rest_until = e.until or (e.seen_at + e.amount if e.amount is not None else None)
        self.rest_heard = e.seen_at
        if self.going is Going.RESTING and not (self.rests and self.rests[-1].end is None):
            self.rests.append(Interval(e.seen_at, None))
        if e.words:
            self.how_she_is.append(e)

    def _close_rest(self, at: datetime) -> None:
        self.rest_until = self.rest_heard = None
        if self.rests and self.rests[-1].end is None:
            self.rests[-1] = Interval(self.rests[-1].start, max(at, self.rests[-1].start))

    def _note(self, e: Entry) -> None:
        """Entries that move no state."""
        match e.kind:
            case Kind.ASKED_FOR_HELP:
                self.helps.append(e)
            case Kind.TAKEN_BACK:
                self.taken_back.append(e)
            case Kind.CONFIRMED:
                self.confirmed.append(e)
            case Kind.STAND_DOWN:
                # One alarm for all calls that have come: it ends for all of them, and for none still under way.
                self.helps = [h for h in self.helps if h.received_at > e.received_at]
            case Kind.NOT_HERE_YET if e.point in self.index:
                self.not_yet.append(NotYet(e.point or "", stamp(e)))
            case Kind.SWEEP_THROUGH if e.point in self.index:
                self.sweeps.append((e.point or "", stamp(e)))
            case Kind.NOT_HERE_YET | Kind.SWEEP_THROUGH:
                self.refused.append(e)
            case Kind.CONDITION:
                self.conditions.append(e)
            case Kind.HOW_SHE_IS:
                self.how_she_is.append(e)
            case Kind.CONTACT_LOST:
                self.contact_lost = stamp(e)
            case _:
                pass

    # -- where she was seen ------------------------------------------------------------------------

    @property
    def _may_be_out(self) -> bool:
        return self.going.on_course or self.going is Going.RETIRED

    def _place(self, e: Entry) -> Placed | None:
        if e.fix is None or self.place is None or not self._may_be_out or e.kind not in HEARD:
            return None
        return self.place(self.course.id, e.fix, e.seen_at, self.before)

    def _sight(self, e: Entry, item: _Item, placed: Placed | None) -> None:
        """Keep what an allowed entry says of her place; an unconfirmed cry for help says nothing of it,
        and how she is may be written down long after she was seen."""
        if e.kind not in HEARD:
            return
        self.contact_lost = None
        if e.kind is Kind.HOW_SHE_IS or (e.unconfirmed and e.kind is Kind.ASKED_FOR_HELP):
            return
        if e.fix is not None and self._may_be_out:
            p = placed or Placed(None, 0.0)
            self.positions.append(PlacedFix(e.fix, stamp(e), p.km, p.off_m, p.ambiguous))
        km: float | None = None
        if e.point in self.index:
            km = self.course.points[self.index[e.point or ""]].km
            if km is not None:
                self._stay(km)
                self.before = KnownAt(km, item.at)
        elif placed is not None and placed.km is not None and not placed.ambiguous:
            km = placed.km
            if _on_the_line(e.fix, placed):
                self._know_from_fix(km, item.at)
        if e.point in self.index or e.fix is not None:
            self.last = LastKnown(e.id, e.kind.value, e.point, km, e.fix, item.at, e.by, e.received_at)

    def _stay(self, km: float) -> None:
        if self.going in _STAYING:
            self.stay_km = km

    def _know_from_fix(self, km: float, at: datetime) -> None:
        """A position is the prior of the next one, and implies the points well behind it."""
        self.before = KnownAt(km, at)
        if self.stay_km is None:
            self._stay(km)
        for p in self.course.points[self.furthest + 1 :]:
            if p.finish or p.km is None or p.km + WELL_PAST_KM > km:
                break
            self.furthest = self.index[p.id]

    # -- the result --------------------------------------------------------------------------------

    def state(self, entries: Iterable[Entry], refused: list[Entry]) -> RunnerState:
        """The frozen result."""
        bad = {e.id for e in refused}
        folded = [e for e in entries if e.id not in bad]
        mine = sorted(e.id for e in folded if e.runner == self.runner.id)
        heard = [e.received_at for e in folded if e.kind in HEARD]
        return RunnerState(
            runner=self.runner.id,
            start=self.start,
            going=self.going,
            times=self._point_times(bad),
            positions=tuple(self.positions),
            not_yet=tuple(self.not_yet),
            rests=tuple(self.rests),
            conditions=tuple(self.conditions),
            how_she_is=tuple(self.how_she_is),
            log=tuple(e for e in folded if e.logged),
            looked_back=tuple(e for e in folded if e.kind is Kind.LOOKED_BACK),
            log_shown=tuple(e for e in folded if e.kind is Kind.LOG_SHOWN),
            help_open=self.helps[0] if self.helps else None,
            retirement=self.retirement,
            in_hand=self.in_hand,
            race_control_knows=self.told,
            finished=self.finished,
            crew_has_her=self.crew_has_her,
            contact_lost=self.contact_lost,
            last_known=self.last,
            last_heard=max(heard, default=None),
            sweep_through=tuple(self.sweeps),
            folded=tuple(mine),
            refused=tuple(sorted(refused, key=seen_order)),
            helps_open=tuple(self.helps),
            helps_in_hand=tuple(self.helped),
            taken_back=tuple(self.taken_back),
            confirmed=tuple(self.confirmed),
            rest_until=self.rest_until,
            rest_heard=self.rest_heard,
            said_in_hand=self.said_in_hand,
            in_hand_heard=None if self.in_hand is None else self.in_hand_heard,
            calls=tuple(e for e in folded if e.kind is Kind.ASKED_FOR_HELP),
            meanwhile=self._meanwhile(folded),
        )

    def _meanwhile(self, folded: list[Entry]) -> tuple[Entry, ...]:
        if not self.helps:
            return ()
        since = min(h.received_at for h in self.helps)
        found = [e for e in folded if e.kind in MEANWHILE and e.received_at >= since]
        return tuple(sorted(found, key=lambda e: (e.received_at, seen_order(e))))

    def _point_times(self, refused: set[str]) -> tuple[PointTimes, ...]:
        """In running order, with the points that later ones imply; a refused report gives no time."""
        out: list[PointTimes] = []
        for i, p in enumerate(self.course.points):
            v = self.seen.get(p.id)
            if v is not None and p.id in self.times_of:
                v = PointReports(
                    p.id,
                    tuple(e for e in v.arrivals if e.id not in refused),
                    tuple(e for e in v.departures if e.id not in refused),
                )
                out.append(v.times())
            elif i < self.furthest or (i == self.furthest and p.id not in self.times_of):
                out.append(PointTimes(p.id, implied=True))
        return tuple(out)


def _on_the_line(fix: Fix | None, placed: Placed) -> bool:
    """Near enough to the line, as far as the fix knows itself (two standard deviations)."""
    accuracy_m = fix.accuracy_m if fix is not None and fix.accuracy_m is not None else 0.0
    return placed.off_m <= max(ON_THE_LINE_M, 2 * accuracy_m)
