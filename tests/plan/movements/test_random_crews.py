"""A hundred random crews: nothing promised that can't be done, nobody in two places, no rule broken."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from itertools import pairwise
from typing import Any

import numpy as np
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from server.event.model import Event, KitWeight, MeetingPlan
from server.facts.fold import fold
from server.plan.movements import CrewPlan, MeetingMovement, OfferKind, Role, crew_plan
from server.plan.movements.joint import Paths, of_view
from server.watch.crew_routes import members, parties, roads_of

Crew = Callable[[random.Random], tuple[Event, dict[str, Any]]]


Floats = np.ndarray[tuple[int], np.dtype[np.float64]]
PATHS = 2000


@dataclass
class Stay:
    """Where somebody is: at a point from, until, on each path (PATHS,)."""

    place: str
    there: Floats
    gone: Floats


class Oracle:
    """Walks all paths with plain arithmetic and the event's own figures; shares with the plan only the paths and the
    rows it gave."""

    def __init__(self, event: Event, views: dict[str, Any], plan: CrewPlan) -> None:
        self.event, self.plan = event, plan
        self.paths: dict[str, Paths] = {r: of_view(r, v) for r, v in views.items()}
        self.drive = {(d.from_place, d.to_place): d for d in event.drives}
        self.meeting: dict[str, MeetingPlan] = {m.id: m for m in event.meetings}
        self.first: dict[str, float] = {}

    def point(self, v: MeetingMovement) -> Any:
        return self.event.course_of(v.runner).point(v.point)

    def travel(self, v: MeetingMovement, start: str | None) -> float | None:
        """Seconds from `start` to the meeting, walk-out of a meeting there not counted; None where nobody knows."""
        if start is None:
            return None
        known = self.drive.get((start, v.point))
        back = self.drive.get((v.point, start))
        minutes = known.minutes if known is not None else None
        if minutes is None and back is not None and back.minutes is not None:
            minutes = back.minutes + 5.0
        if minutes is None:
            return None
        access = self.point(v).access
        foot = 0.0 if access is None else (access.walk_in + access.unloading).total_seconds()
        return minutes * 60.0 + foot

    def sign_in(self, v: MeetingMovement) -> float:
        joins = self.meeting[v.meeting].pacer_joins is not None
        return self.event.rules.pacer_sign_in.total_seconds() if joins else 0.0

    def walk(self) -> None:
        """Visit by visit: on how many paths all who come are there before she is."""
        where: dict[str, Stay] = {}
        cars: dict[str, Stay] = {}
        for v in self.plan.visits:
            found = self.paths[v.runner].at(v.point)
            assert found is not None
            arrive, out = found
            there = np.full(PATHS, v.be_there.timestamp())
            for ride in v.rides:
                key = ride.car or "~" + ride.riders[0] if ride.riders else "~" + v.meeting
                before = [s for s in (cars.get(key), *(where.get(w) for w in ride.riders)) if s is not None]
                last = cars.get(key)
                if last is not None and last.place == v.point:
                    there = np.maximum(there, last.there + self.sign_in(v))
                    continue
                walk_out = self.walk_out(last)
                needs = self.travel(v, ride.from_place)
                if ride.from_place != v.point:
                    for stay in before:
                        there = np.maximum(there, stay.gone + walk_out + (needs or 0.0) + self.sign_in(v))
            gone = self.gone(v, arrive, out, there)
            for ride in v.rides:
                key = ride.car or "~" + ride.riders[0] if ride.riders else "~" + v.meeting
                cars[key] = Stay(v.point, there, gone)
                for w in ride.riders:
                    where[w] = Stay(v.point, there, gone)
            leaves = self.meeting[v.meeting].pacer_leaves
            if leaves is not None:
                before_that = where[leaves].gone if leaves in where else gone
                where[leaves] = Stay(v.point, np.maximum(there, arrive), np.maximum(gone, before_that))
            access = self.point(v).access
            closes = np.inf if access is None or access.closes is None else access.closes.timestamp()
            self.first[v.meeting] = float(np.mean((there <= arrive) & (arrive <= closes)))

    def walk_out(self, last: Stay | None) -> float:
        if last is None:
            return 0.0
        for course in self.event.courses:
            for p in course.points:
                if p.id == last.place and p.access is not None:
                    return float(p.access.walk_in.total_seconds())
        return 0.0

    def gone(self, v: MeetingMovement, arrive: Floats, out: Floats, there: Floats) -> Floats:
        wait = v.wait_until.timestamp()
        too_late = there if self.point(v).reports else np.maximum(there, wait)
        leaves = np.where(out < there, too_late, np.where(arrive <= wait, out, wait))
        access = self.point(v).access
        if access is not None and access.closes is not None:
            leaves = np.minimum(leaves, access.closes.timestamp())
        return np.maximum(leaves, there)


def plan_for(crew: Crew, rng: random.Random) -> tuple[Event, dict[str, Any], CrewPlan]:
    """A crew and its plan, without the search for a better assignment: that changes nothing of the plan itself."""
    event, views = crew(rng)
    return event, views, crew_plan(event, {}, views, other_cars=False)


many = settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@many
@given(seed=st.integers(0, 2**32))
def test_a_hundred_random_crews(crew_at_random: Crew, seed: int) -> None:
    """No meeting is promised that the drives make impossible, nobody is in two places, no rule is broken."""
    event, views, plan = plan_for(crew_at_random, random.Random(seed))
    nothing_is_promised_in_vain(event, views, plan)
    nobody_is_in_two_places(event, plan)
    no_rule_is_broken(event, plan)
    nobody_waits_too_short(event, plan)


def nobody_waits_too_short(event: Event, plan: CrewPlan) -> None:
    """Crew wait until she is likely there, or longer, and never no time at all; where the place closes before, the plan
    breaks a rule (`no_rule_is_broken`)."""
    for v in plan.visits:
        access = event.course_of(v.runner).point(v.point).access
        closes = None if access is None else access.closes
        if closes is not None and closes < max(v.likely, v.be_there + timedelta(minutes=5)):
            continue
        assert v.wait_until >= v.likely
        assert v.wait_until > v.be_there


def nothing_is_promised_in_vain(event: Event, views: dict[str, Any], plan: CrewPlan) -> None:
    """Walked path by path by other code, every promised meeting is reached first with the probability promised, and
    every drive to it was given by hand and confirmed."""
    promised = [v for v in plan.visits if v.promised]
    if not promised:
        return
    oracle = Oracle(event, views, plan)
    oracle.walk()
    for v in promised:
        assert oracle.first[v.meeting] >= v.sure - 1e-9, v
        for ride in v.rides:
            if ride.from_place == v.point:
                continue
            drive = oracle.drive[ride.from_place or "", v.point]
            assert drive.confirmed_by is not None
            assert drive.minutes is not None
            assert ride.driver in ride.riders


def nobody_is_in_two_places(event: Event, plan: CrewPlan) -> None:
    """Each person and each car goes on from where they were, not before they are free, and never while on foot with
    a runner."""
    cars_at = {c.id: c.starts_at for c in event.cars}
    at: dict[str, str | None] = {}
    free: dict[str, Any] = {}
    pacing: set[str] = set()
    order = {m.id: m for m in event.meetings}
    for v in plan.visits:
        riders = [w for r in v.rides for w in r.riders]
        assert len(set(riders)) == len(riders)
        assert not pacing & set(riders)
        for r in v.rides:
            if r.car is not None:
                assert r.from_place == cars_at[r.car] or cars_at[r.car] is None
                cars_at[r.car] = v.point if r.riders else cars_at[r.car]
            for w in r.riders:
                assert at.get(w) in (None, r.from_place)
                if at.get(w) is not None and at[w] != v.point:
                    assert r.there - (r.journey.whole or r.there - r.there) >= free[w]
                at[w], free[w] = v.point, r.gone
        m = order[v.meeting]
        if m.pacer_joins in riders:
            pacing.add(m.pacer_joins or "")
            at.pop(m.pacer_joins or "", None)
        if m.pacer_leaves in pacing:
            pacing.discard(m.pacer_leaves or "")
            at[m.pacer_leaves or ""] = v.point
            free[m.pacer_leaves or ""] = max(v.gone, free[m.pacer_leaves or ""])
    for person in {r.person for r in plan.people}:
        rows = [r for r in plan.people if r.person == person]
        assert len({r.meeting for r in rows}) == len(rows)
        assert all(a.gone <= b.there or a.point == b.point for a, b in pairwise(rows))


def no_rule_is_broken(event: Event, plan: CrewPlan) -> None:
    """Every rule is looked up here in the event once more, at every meeting: what breaks one is named, with that rule
    and no other, and is not promised; the plan keeps the rest."""
    named = {(b.meeting, b.rule.kind) for b in plan.broken}
    for b in plan.broken:
        assert not plan.visit(b.meeting or "").promised
    found = {x for v in plan.visits for x in at_one_meeting(event, v)} | set(over_a_race(event, plan))
    counted = {x for x in named if x[1] not in ("rule-opens", "rule-crew-not-before")}
    assert counted == found
    meeting = {m.id: m for m in event.meetings}
    for v in plan.visits:
        access = event.course_of(v.runner).point(v.point).access
        opens = opening(event, v)
        assert not opens or v.be_there >= opens
        if (v.meeting, "rule-opens") in named or (v.meeting, "rule-crew-not-before") in named:
            assert opens is not None
            assert v.late < opens
        if v.promised and meeting[v.meeting].crew and access is not None and access.permit:
            assert {r.car for r in v.rides if r.riders} <= {c.id for c in event.cars if c.permits}


def opening(event: Event, v: MeetingMovement) -> datetime | None:
    """From when on crew may be there."""
    access = event.course_of(v.runner).point(v.point).access
    both = (event.rules.crew_not_before, access.opens if access else None)
    return max((x for x in both if x is not None), default=None)


def at_one_meeting(event: Event, v: MeetingMovement) -> Iterator[tuple[str, str]]:
    """The rules that one meeting breaks by itself."""
    m = next(m for m in event.meetings if m.id == v.meeting)
    access = event.course_of(v.runner).point(v.point).access
    most, came = event.rules.crew_people_max, [r for r in v.rides if r.riders]
    if access is None:
        if event.rules.outside_help_only_at_crew_points:
            yield v.meeting, "rule-help"
        return
    if most is not None and len(m.crew) > most:
        yield v.meeting, "rule-people"
    if access.people_max is not None and len(m.crew) > access.people_max:
        yield v.meeting, "rule-people-at"
    if access.cars_max is not None and len(came) > access.cars_max:
        yield v.meeting, "rule-cars-at"
    green = {c.id for c in event.cars if c.permits}
    if access.permit and v.crew and green and {r.car for r in came} - green:
        yield v.meeting, "rule-permit"
    opens = opening(event, v)
    if access.closes is not None and opens is not None and access.closes <= opens:
        yield v.meeting, "rule-not-before"
    elif access.closes is not None and v.likely > access.closes:
        yield v.meeting, "rule-closes"


def over_a_race(event: Event, plan: CrewPlan) -> Iterator[tuple[str, str]]:
    """The rules that one runner's meetings break together, at the meeting where it comes to that."""
    rules, meeting = event.rules, {m.id: m for m in event.meetings}
    for runner in event.runners:
        points = event.course_of(runner.id).points
        cars: set[str] = set()
        for v in (v for v in plan.visits if v.runner == runner.id):
            new = {r.car for r in v.rides if r.car} - cars
            if rules.vehicles_max is not None and new and len(cars | new) > rules.vehicles_max:
                yield v.meeting, "rule-vehicles"
            cars |= new
        pacing: set[str] = set()
        order = {p.id: i for i, p in enumerate(points)}
        for v in sorted((v for v in plan.visits if v.runner == runner.id), key=lambda v: order[v.point]):
            m, km = meeting[v.meeting], points[order[v.point]].km or 0
            pacing.discard(m.pacer_leaves or "")
            if m.pacer_joins is None:
                continue
            pacing.add(m.pacer_joins)
            if rules.pacer_from_km is not None and km < rules.pacer_from_km:
                yield v.meeting, "rule-pacer-from"
            if len(pacing) > rules.pacers_at_once:
                yield v.meeting, "rule-pacers"


def test_the_random_crews_are_worth_looking_at(crew_at_random: Crew) -> None:
    """Among a hundred of them many meetings are promised, many are not, and every kind of trouble comes up."""
    kinds: set[str] = set()
    rules: set[str] = set()
    promised = other = refused = 0
    for k in range(100):
        _, _, plan = plan_for(crew_at_random, random.Random(k))
        promised += sum(v.promised for v in plan.visits)
        other += sum(not v.promised for v in plan.visits)
        refused += bool(plan.broken)
        kinds |= {t.kind.name for t in plan.troubles}
        rules |= {b.rule.kind for b in plan.broken}
    assert promised >= 60, promised
    assert other >= 60
    assert 15 <= refused <= 85, refused
    wanted = {
        "CLASH",
        "SHORT",
        "NO_WAY",
        "ESTIMATED",
        "NO_DRIVER",
        "NO_SEAT",
        "STRANDED",
        "ON_FOOT",
        "AWAKE",
        "FETCH",
        "PERMIT",
        "RULE",
    }
    assert kinds >= wanted, wanted - kinds
    asked = {
        "rule-people", "rule-people-at", "rule-vehicles", "rule-help", "rule-closes", "rule-opens", "rule-cars-at",
        "rule-permit", "rule-pacer-from", "rule-pacers",
    }  # fmt: skip
    assert rules >= asked, asked - rules


def test_the_search_changes_nothing_but_the_offers(crew_at_random: Crew) -> None:
    """With the search for other cars the plan is the same plan, with offers; each car offered can do what it is
    offered for, and breaks no rule by it."""
    offered = 0
    for k in range(24):
        event, views, plan = plan_for(crew_at_random, random.Random(k))
        searched = crew_plan(event, {}, views)
        assert replace(searched, offers=(), notes=plan.notes) == replace(plan, offers=())
        others = [o for o in searched.offers if o.kind is OfferKind.OTHER_CAR]
        for o in others:
            assert o.car in {c.id for c in event.cars}
            assert o.odds is not None
            assert 0.0 < o.odds <= 1.0
        offered += bool(others)
    assert offered >= 2, offered


def test_safety_is_promised_at_99(crew_at_random: Crew) -> None:
    """A torch, warm layer or pacer raises what is promised, in every plan."""
    for k in range(10):
        event, _, plan = plan_for(crew_at_random, random.Random(k))
        meeting = {m.id: m for m in event.meetings}
        for v in plan.visits:
            m = meeting[v.meeting]
            safe = m.pacer_joins is not None or any(x.weight is KitWeight.SAFETY for x in m.kit)
            assert v.sure == (0.99 if safe else 0.97)
            assert not any(r.role is Role.RUNS for r in plan.people)
            assert np.isfinite(v.p_first)


@many
@given(seed=st.integers(0, 2**32))
def test_live_has_everybody_in_the_car_that_the_plan_has_them_in(crew_at_random: Crew, seed: int) -> None:
    """What people are told on the night rests on the same cars, places and drives: everybody who goes is in one party,
    once; those of a ride have its drive and its leave-by, by way of another place too; who is in no car has no way."""
    rng = random.Random(seed)
    event, views = crew_at_random(rng)
    event = by_way_of_places(event, rng)
    plan = crew_plan(event, {}, views, other_cars=False)
    meeting = {m.id: m for m in event.meetings}
    ordered = [meeting[v.meeting] for v in plan.visits]
    race = fold([], event, event.starts)
    found = parties(event, roads_of(event, race), ordered)
    for v in plan.visits:
        told = [who for p in found[v.meeting] for who in p.people]
        assert sorted(told) == sorted(members(event, meeting[v.meeting]))
        seated = {who: ride for ride in v.rides for who in ride.riders}
        for p in found[v.meeting]:
            for who in p.people:
                ride = seated.get(who)
                if ride is None:
                    assert not any(r.from_place for r in v.rides) or p.way.drive is None
                elif ride.leave_from is not None:
                    assert (p.way.from_place, p.way.drive) == (ride.leave_from, ride.last.drive)
                    assert p.way.confirmed == ride.last.confirmed
                    assert p.way.whole == ride.last.whole
                    assert (p.way.stands, p.way.through) == (
                        ride.from_place,
                        ride.journey.whole if ride.journey.confirmed else None,
                    )
                    whole = p.way.whole if p.way.confirmed else None
                    assert ride.leave_by == (None if whole is None else v.be_there - whole)


def by_way_of_places(event: Event, rng: random.Random) -> Event:
    """The event with crew who come from another place than their car stood at to some of the meetings."""
    places = ["base", "inn", *(p.id for c in event.courses for p in c.points)]
    meetings = (
        replace(m, from_place=rng.choice([None, "inn", *(x for x in places if x != m.point)]))
        for m in event.meetings
    )
    return replace(event, meetings=tuple(meetings))
