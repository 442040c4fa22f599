"""Leave by, be there from, wait until and the odds of several meetings, from joint paths."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from statistics import NormalDist
from typing import Any

import numpy as np
import pytest

from server.event.model import CrewAccess, Drive, Event, Goal, MeetingPlan, Rules
from server.facts.entry import Entry, Kind, Source
from server.facts.fold import fold
from server.plan.movements import OfferKind, TroubleKind, crew_plan, leave_by, tie
from server.plan.movements.joint import of_timetable, of_view
from server.plan.timetable import Row, Timetable

MINUTE = timedelta(minutes=1)
START = datetime(2027, 6, 19, 5, 0, tzinfo=UTC)
Views = Callable[..., Any]
Events = Callable[..., Event]


def drives_of(**minutes: float) -> tuple[Drive, ...]:
    """`start_mill=30` is a confirmed drive of 30 minutes."""
    return tuple(Drive(*k.split("_"), m, "ana") for k, m in minutes.items())


@pytest.mark.parametrize("sure", [0.97, 0.99])
@pytest.mark.parametrize("key", range(5))
def test_leave_by_holds_its_promise_exactly(view: Views, sure: float, key: int) -> None:
    """Leaving then, all are there first on at least that share of paths; six minutes later on fewer."""
    arrive = of_view("maren", view(key=key)).arrive_s[:, 0]
    leave, be_there = leave_by(arrive, sure, 40 * MINUTE)
    assert be_there - leave == 40 * MINUTE
    assert np.mean(arrive >= (leave + 40 * MINUTE).timestamp()) >= sure
    assert np.mean(arrive >= (be_there + 6 * MINUTE).timestamp()) < sure


def test_the_first_leave_by_adds_everything(event_of: Events, view: Views) -> None:
    """Mill: 30 min drive, 4 walk-in, 6 unloading; nobody walks out of a start where they met nobody."""
    v = crew_plan(event_of(), {}, {"maren": view()}).visit("m1")
    (ride,) = v.rides
    assert [(a.name, a.time / MINUTE) for a in ride.journey.addends] == [
        ("drive", 30), ("walk-in", 4), ("unloading", 6),
    ]  # fmt: skip
    assert v.leave_by == v.be_there - 40 * MINUTE
    assert v.be_there <= v.early <= v.likely <= v.late <= v.wait_until
    assert v.promised


def test_the_next_trip_walks_out_first(event_of: Events, view: Views) -> None:
    """From Mill to Chapel the crew walk back to the car before they drive."""
    (ride,) = crew_plan(event_of(), {}, {"maren": view()}).visit("m2").rides
    assert ride.after == "m1"
    assert [a.name for a in ride.journey.addends] == ["drive", "walk-out", "walk-in", "unloading"]
    assert ride.journey.whole == 44 * MINUTE


@pytest.mark.parametrize(("minutes", "promised"), [(30, True), (100, True), (175, False), (300, False)])
def test_a_long_drive_between_two_meetings(
    event_of: Events, view: Views, minutes: float, promised: bool
) -> None:
    """Mill to Chapel takes her 165 min and 14 are on foot: longer drives make the second a clash, with its odds,
    which agree with a count over the paths."""
    event = event_of(drives=drives_of(start_mill=30, mill_chapel=minutes))
    forecast = view()
    plan = crew_plan(event, {}, {"maren": forecast})
    assert plan.visit("m2").promised is promised
    clash = [t for t in plan.troubles if t.kind is TroubleKind.CLASH]
    assert bool(clash) is not promised
    if clash:
        arrive, leave = forecast.arrive, forecast.leave
        free = np.where(arrive[:, 0] <= plan.visit("m1").wait_until.timestamp(), leave[:, 0], np.nan)
        first = (arrive[:, 0] >= plan.visit("m1").be_there.timestamp()) & (
            free + (minutes + 14) * 60.0 <= arrive[:, 1]
        )
        assert clash[0].odds == pytest.approx(float(np.mean(first)), abs=0.04)
        assert clash[0].other == "m1"


def test_the_other_car_is_offered(event_of: Events, view: Views) -> None:
    """Vera and the red car stand idle at the start: they are offered for one of the two, with odds that keep it."""
    event = event_of(drives=drives_of(start_mill=30, mill_chapel=300, start_chapel=40))
    plan = crew_plan(event, {}, {"maren": view()})
    (offer,) = [o for o in plan.offers if o.kind is OfferKind.OTHER_CAR]
    assert (offer.car, offer.person) == ("red", "vera")
    assert offer.odds is not None
    assert offer.odds >= plan.visit(offer.meeting).sure
    assert not crew_plan(event_of(), {}, {"maren": view()}).offers


def test_a_late_runner_is_late_at_both(view: Views) -> None:
    """Margins alone let 'leave for the second' fall before she can have come; on joint paths waiting is safe."""
    p = of_view("maren", view(spread=0.2, legs=0.02))
    a, out, b = p.arrive_s[:, 0], p.leave_s[:, 0], p.arrive_s[:, 1]
    drive = 60 * 60.0
    margin = float(np.quantile(b, 0.03)) - drive
    assert margin < float(np.quantile(a, 0.97))
    found = tie(a, out, b, drive, 0.97, float(np.quantile(a, 0.03)), float(np.quantile(a, 0.97)))
    assert found is not None
    assert (found.p_both, found.bound_s) == (1.0, None)


@pytest.mark.parametrize("key", range(6))
def test_the_tie_is_what_a_plain_count_says(view: Views, key: int) -> None:
    """Two runners' independent races: odds and the last safe moment to wait, counted path by path."""
    one = of_view("maren", view(key=key, spread=0.15))
    two = of_view("jo", view(key=key + 50, spread=0.15, start=START + 120 * MINUTE))
    a, out, b = one.arrive_s[:, 0], one.leave_s[:, 0], two.arrive_s[:, 0]
    begin, end, travel = float(np.quantile(a, 0.03)), float(np.quantile(a, 0.97)), 45 * 60.0
    found = tie(a, out, b, travel, 0.97, begin, end)
    assert found is not None
    assert found.p_both == sum(y >= x + travel for x, y in zip(out, b, strict=True)) / len(a)
    if found.bound_s is not None:
        for t, safe in ((found.bound_s, True), (found.bound_s + 300.0, False)):
            still = [y >= t + travel for x, y in zip(a, b, strict=True) if x > t]
            assert (sum(still) / len(still) >= 0.97) is safe


def test_two_runners_are_independent_even_if_their_paths_come_sorted(view: Views) -> None:
    """Both forecasts number their paths from fast to slow; together they must not seem to be slow together."""
    one, two = of_view("maren", view(key=1, legs=0.001)), of_view("jo", view(key=2, legs=0.001))
    assert abs(float(np.corrcoef(one.arrive_s[:, 0], two.arrive_s[:, 0])[0, 1])) < 0.1
    again = of_view("maren", view(key=1, legs=0.001))
    assert np.array_equal(one.arrive_s, again.arrive_s)


def test_an_estimated_drive_is_never_used_for_a_leave_by(event_of: Events, view: Views) -> None:
    """The same minutes without a person behind them: no leave-by, nothing promised, an offer to confirm."""
    event = event_of(drives=(Drive("start", "mill", 30), *drives_of(mill_chapel=30)))
    plan = crew_plan(event, {}, {"maren": view()})
    v = plan.visit("m1")
    assert v.leave_by is None
    assert not v.promised
    assert [t.kind for t in plan.troubles] == [TroubleKind.ESTIMATED]
    assert any(o.kind is OfferKind.CONFIRM for o in plan.offers)
    assert all(r.leave_by is None for r in plan.people if r.meeting == "m1")


def test_a_pacer_signs_in_before_she_comes(event_of: Events, view: Views) -> None:
    """Sign-in of 15 minutes makes the leave-by 15 minutes earlier, and the promise 99%."""
    meeting = MeetingPlan("m1", "mill", "maren", ("ana",), "van", pacer_joins="tomas")
    plain = crew_plan(event_of(meetings=(meeting,)), {}, {"maren": view()}).visit("m1")
    signed = event_of(meetings=(meeting,), rules=Rules(pacer_sign_in=15 * MINUTE))
    v = crew_plan(signed, {}, {"maren": view()}).visit("m1")
    assert v.sure == plain.sure == 0.99
    assert v.leave_by == plain.leave_by - 15 * MINUTE  # type: ignore[operator]


def test_nobody_is_there_before_it_opens(event_of: Events, view: Views) -> None:
    """'No crew before' moves 'be there from', and lowers the odds of being first if she may come before."""
    rules = Rules(crew_not_before=START + 150 * MINUTE)
    plan = crew_plan(event_of(rules=rules), {}, {"maren": view()})
    v = plan.visit("m1")
    assert v.be_there == rules.crew_not_before
    assert 0.3 < v.p_first < 0.7
    assert not v.promised
    assert [t.said.kind for t in plan.troubles if t.meeting == "m1"] == ["move-opens"]


def entry(kind: Kind, at: datetime, point: str | None, by: str = "ana", **more: Any) -> Entry:
    """A report."""
    runner = more.pop("runner", "maren")
    name = f"{kind.value}{at}{point}"
    return Entry(name, "stile", runner, kind, at, at, at, by, Source.CREW, by, name, point=point, **more)


def test_on_the_night_what_is_over_is_left_out(event_of: Events, view: Views) -> None:
    """She has left Mill: that meeting is over, the van stands there, and nobody leaves before now."""
    event, now = event_of(), START + 170 * MINUTE
    race = fold([entry(Kind.OUT, START + 165 * MINUTE, "mill")], event, now)
    forecast = view(("chapel", "moss", "finish"), (160.0, 320.0, 480.0), start=START + 165 * MINUTE)
    plan = crew_plan(event, {}, {"maren": forecast}, now=now, race=race)
    assert [v.meeting for v in plan.visits] == ["m2"]
    assert plan.visit("m2").rides[0].from_place == "mill"
    late = crew_plan(event, {}, {"maren": forecast}, now=now + 120 * MINUTE, race=race)
    assert late.visit("m2").p_first < plan.visit("m2").p_first
    assert late.visit("m2").there >= now + 120 * MINUTE + 40 * MINUTE


def test_where_people_said_they_are_goes_before_the_plan(event_of: Events, view: Views) -> None:
    """Ana reports from Moss: the van is there, and the way to Chapel leads from Moss."""
    event, now = event_of(), START + 170 * MINUTE
    facts = [
        entry(Kind.OUT, START + 165 * MINUTE, "mill"),
        entry(Kind.CREW_THERE, START + 168 * MINUTE, "moss", person="ana", runner=None),
    ]
    forecast = view(("chapel", "moss", "finish"), (160.0, 320.0, 480.0), start=START + 165 * MINUTE)
    plan = crew_plan(event, {}, {"maren": forecast}, now=now, race=fold(facts, event, now))
    assert plan.visit("m2").rides[0].from_place == "moss"


def test_before_there_is_a_forecast_the_plan_gives_the_paths() -> None:
    """10%, 50% and 90% of the paths about a timetable are goals A, B and C; nobody overtakes herself."""
    goals = {Goal.A: 0.9, Goal.B: 1.0, Goal.C: 1.15}
    rows = tuple(
        Row(
            f"p{k}", 10.0 * k, 10.0, 0.0, 0.0, 5 * MINUTE,
            {g: timedelta(minutes=100 * k * f) for g, f in goals.items()},
            {g: timedelta(minutes=100 * k * f + 5) for g, f in goals.items()},
        )
        for k in range(6)
    )  # fmt: skip
    paths = of_timetable(Timetable("maren", START, rows, "", "cost model"))
    assert paths.points == tuple(f"p{k}" for k in range(1, 6))
    gone = paths.arrive_s - START.timestamp()
    for k in range(5):
        for goal, p in ((Goal.A, 0.1), (Goal.B, 0.5), (Goal.C, 0.9)):
            planned = rows[k + 1].arrive[goal].total_seconds()
            assert float(np.quantile(gone[:, k], p)) == pytest.approx(planned, rel=0.02)
    assert np.all(np.diff(paths.arrive_s, axis=1) > 0)
    assert np.all(paths.leave_s[:, :-1] < paths.arrive_s[:, 1:])
    assert NormalDist().inv_cdf(0.9) == pytest.approx(1.2815515655446004)


def test_access_that_closes_ends_the_wait(event_of: Events, view: Views) -> None:
    """Nobody waits past closing; odds count only what comes before it."""
    event = event_of()
    course = event.courses[0]
    shut = CrewAccess(closes=START + 155 * MINUTE)
    points = tuple(replace(p, access=shut) if p.id == "mill" else p for p in course.points)
    plan = crew_plan(replace(event, courses=(replace(course, points=points),)), {}, {"maren": view()})
    v = plan.visit("m1")
    assert v.wait_until <= START + 155 * MINUTE
    assert 0.4 < v.p_first < 0.75
    assert not v.promised


def _cars(event: Event, view: Views, meeting: str) -> set[tuple[str | None, tuple[str, ...]]]:
    return {(r.car, r.riders) for r in crew_plan(event, {}, {"maren": view()}).visit(meeting).rides}


def test_each_who_drives_a_car_of_theirs_comes_in_it(event_of: Events, view: Views) -> None:
    """Both cars stand at the start and the meeting names none: nobody leaves theirs behind, so that one that breaks down
    stops nobody else. Where a car is named, or only one may come, they share it."""
    both = (MeetingPlan("m1", "mill", "maren", ("ana", "vera")),)
    assert _cars(event_of(meetings=both), view, "m1") == {("van", ("ana",)), ("red", ("vera",))}
    named = (replace(both[0], car="van"),)
    assert _cars(event_of(meetings=named), view, "m1") == {("van", ("ana", "vera"))}
    one = Rules(vehicles_max=1)
    assert _cars(event_of(meetings=both, rules=one), view, "m1") == {("van", ("ana", "vera"))}
