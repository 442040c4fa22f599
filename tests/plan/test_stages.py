"""Races in stages: one runner, one course, a night between; what the plan, the crew and the forecast make of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.event.model import CutOff, Edge, Goal, Target
from server.facts.entry import Entry, Kind, Source
from server.facts.fold import fold
from server.forecast.bridge import outlook
from server.forecast.posterior import posterior
from server.forecast.stages import StageEnd, within
from server.forecast.values import KnownStop, Quality, Reference, Sighting
from server.paper.before import before_start
from server.plan import PlanError, make_timetable
from server.plan.cutoffs import goal_changes
from server.plan.movements.joint import of_timetable
from server.plan.pace import Stops, tired_hours

HOUR = timedelta(hours=1)
KM = (0.0, 20.0, 40.0, 60.0, 80.0, 100.0)


@pytest.fixture(scope="module")
def staged(make_event, points_at):
    """100 km of the demo's course in two stages: the second starts 24 h after the first, at km 60."""
    base = make_event(Target(finish=15 * HOUR), points=points_at(KM))
    points = tuple(
        replace(p, planned_stop=timedelta(0), next_stage=base.starts + 24 * HOUR) if p.km == 60.0 else p
        for p in base.courses[0].points
    )
    return replace(base, courses=(replace(base.courses[0], points=points),))


@pytest.fixture(scope="module")
def table(staged, demo_course):
    """Her timetable."""
    return make_timetable(staged, "maren", demo_course)


def test_the_target_is_the_sum_of_the_stages_and_the_clock_has_the_night(table) -> None:
    """15 h on the way, the second stage from 24 h on: whatever the goal, she leaves the camp when it starts."""
    camp = table.row("p3")
    assert {camp.leave[g] for g in Goal} == {24 * HOUR}
    assert camp.arrive[Goal.A] < camp.arrive[Goal.B] < camp.arrive[Goal.C] < 24 * HOUR
    night = camp.leave[Goal.B] - camp.arrive[Goal.B]
    assert table.rows[-1].arrive[Goal.B] - night == 15 * HOUR
    assert abs(camp.stop - night) <= timedelta(seconds=30)


def test_a_night_takes_fatigue_back(staged, table, demo_course, make_event, points_at) -> None:
    """The legs after it cost less for fade, and less time, than the same race without a night; those before it gain
    nothing (the same first power would have her slower there, so that only the share is compared)."""
    through = make_timetable(make_event(Target(finish=15 * HOUR), points=points_at(KM)), "maren", demo_course)
    rested, whole = (dict(t.row("p5").factors)["fade"] for t in (table, through))
    assert rested < 0.7 * whole
    assert any(n.kind == "rested" for n in table.notes)
    assert any(n.kind == "stages" for n in table.notes)
    assert not any(n.kind == "rested" for n in through.notes)


def test_a_long_sleep_within_one_race_does_the_same(demo_course, make_event, points_at) -> None:
    """Six hours planned at a point are a rest too; six minutes are not."""
    event = make_event(Target(finish=21 * HOUR), points=points_at(KM))
    points = tuple(replace(p, planned_stop=6 * HOUR) if p.km == 60.0 else p for p in event.courses[0].points)
    slept = make_timetable(
        replace(event, courses=(replace(event.courses[0], points=points),)), "maren", demo_course
    )
    assert [n.kind for n in slept.notes if n.kind in ("rested", "stages")] == ["rested"]
    assert slept.rows[-1].arrive[Goal.B] == 21 * HOUR


@pytest.mark.parametrize(("rest_h", "left_h"), [(2.9, 12.9), (4.0, 5.0), (8.0, 2.5), (400.0, 0.0)])
def test_hours_on_foot_after_a_rest(rest_h: float, left_h: float) -> None:
    """Ten hours, then a rest: half is left after each four hours of it; under three it counts as any stop (common
    practice, no source: the figures are this program's own)."""
    km = np.array([0.0, 10.0])
    stops = Stops(np.array([10.0]), np.array([rest_h * 3600.0]))
    starts = np.array([0.0, (10.0 + rest_h) * 3600.0])
    assert tired_hours(starts, km, stops, stops.seconds)[1] == pytest.approx(left_h, abs=1e-6)


def test_a_stage_that_she_can_not_end_in_time_is_refused(staged, demo_course) -> None:
    """The next stage starts 7 h after the first, which takes her longer: said, with the place."""
    points = tuple(
        replace(p, next_stage=staged.starts + 7 * HOUR) if p.next_stage else p
        for p in staged.courses[0].points
    )
    event = replace(staged, courses=(replace(staged.courses[0], points=points),))
    with pytest.raises(PlanError, match="past the start of the next stage at Point 3"):
        make_timetable(event, "maren", demo_course)


def test_paths_wait_for_the_next_stage(table) -> None:
    """Nobody leaves the camp before the next stage starts, and no night is stretched with a slow day."""
    paths = of_timetable(table)
    found = paths.at("p3")
    assert found is not None
    start = table.start.timestamp()
    assert np.all(found[1] >= start + 24 * 3600.0)
    assert np.mean(found[1] == start + 24 * 3600.0) > 0.99
    after = paths.at("p4")
    assert after is not None
    assert np.std(after[0]) < 3600.0


def test_no_goal_changes_over_at_the_end_of_a_stage(table) -> None:
    """When the next stage starts says nothing of goals A, B and C."""
    paths = of_timetable(table)
    leaves = np.column_stack([paths.at(p)[1] for p in ("p2", "p3", "p4")]) - table.start.timestamp()  # type: ignore[index]
    finish = paths.at("p5")[0] - table.start.timestamp()  # type: ignore[index]
    changes = goal_changes(("p2", "p3", "p4"), leaves, finish, table)
    assert {c.point for c in changes} == {"p2", "p4"}


def test_the_latest_out_is_of_the_same_stage(staged, table, demo_course) -> None:
    """For the limit at the finish no hour out of a point before the night is told: the night makes all alike."""
    event = replace(staged, limit=40 * HOUR)
    before = before_start(event, {"maren": table}, {"main": demo_course}, staged.starts)
    (finish,) = before.cut_offs("maren")
    assert [o.point for o in finish.latest_out] == ["p3", "p4"]
    (stage,) = before.stages("maren")
    assert (stage.point, stage.low) == ("p3", False)


class TestForecast:
    """The same race as the forecast sees it."""

    def _view(self, event, table, course, entries, hours: float):
        now = event.starts + timedelta(hours=hours)
        state = fold(entries, event, now)
        return outlook(event, state.runner("maren"), state, table, course).at(now)

    def _entry(self, event, kind: Kind, point: str, hours: float) -> Entry:
        at = event.starts + timedelta(hours=hours)
        name = f"{kind.value}-{point}"
        return Entry(
            id=name, event=event.id, kind=kind, seen_at=at, sent_at=at, received_at=at, by="ana", runner="maren",
            source=Source.CREW, sender="ana", key=name, point=point,
        )  # fmt: skip

    def test_nobody_is_expected_before_the_stage_starts(self, staged, table, demo_course) -> None:
        """Before the start: she is not at p4 before the second stage has begun, and the night does not widen it."""
        view = self._view(staged, table, demo_course, [], 0.0)
        window = view.window("p4")
        plan = table.start + table.row("p4").arrive[Goal.B]
        assert window.early > staged.starts + 25 * HOUR
        assert window.late - window.early < 3 * HOUR
        assert abs(window.likely - plan) < HOUR
        assert view.leaving("p3", 0.05) == staged.starts + 24 * HOUR

    @pytest.mark.parametrize("told_in", [True, False])
    def test_a_night_does_not_make_her_slow(self, staged, table, demo_course, told_in: bool) -> None:
        """On plan in every report, the night's arrival told or not: on the second day she is expected as planned."""
        hours = {p: table.row(p).arrive[Goal.B].total_seconds() / 3600.0 for p in ("p1", "p3", "p4", "p5")}
        entries = [self._entry(staged, Kind.THROUGH, "p1", hours["p1"])]
        if told_in:
            entries.append(self._entry(staged, Kind.IN, "p3", hours["p3"]))
            entries.append(self._entry(staged, Kind.OUT, "p3", 24.0))
        entries.append(self._entry(staged, Kind.IN, "p4", hours["p4"]))
        view = self._view(staged, table, demo_course, entries, hours["p4"] + 0.01)
        window = view.window("p5")
        assert abs(window.likely - (table.start + table.row("p5").arrive[Goal.B])) < 0.5 * HOUR
        assert window.late - window.early < 2 * HOUR

    def test_in_the_camp_at_night_she_leaves_in_the_morning(self, staged, table, demo_course) -> None:
        """Reported in at the camp, asked at midnight: leaving is when the next stage starts."""
        in_h = table.row("p3").arrive[Goal.B].total_seconds() / 3600.0
        view = self._view(staged, table, demo_course, [self._entry(staged, Kind.IN, "p3", in_h)], 18.0)
        assert view.leaving("p3", 0.5) - (staged.starts + 24 * HOUR) < timedelta(minutes=15)
        assert view.leaving("p3", 0.05) >= staged.starts + 24 * HOUR
        assert view.engine.probability_going() > 0.9

    def _limited(self, event, at_h: float):
        """The same race with a cut-off in at the camp, so many hours after the start."""
        cut = (CutOff(Edge.IN, elapsed=timedelta(hours=at_h)),)
        points = tuple(replace(p, cut_offs=cut) if p.next_stage else p for p in event.courses[0].points)
        return replace(event, courses=(replace(event.courses[0], points=points),))

    def test_the_limit_of_a_stage_reaches_its_windows_and_not_its_odds(
        self, staged, table, demo_course
    ) -> None:
        """An hour slow on the first 40 km, a cut-off at the camp a little after her likely time: her late edge there and
        before it is pulled in, no time is later than without, and the odds are what they were."""
        late_h = {p: table.row(p).arrive[Goal.B].total_seconds() / 3600.0 * 1.1 for p in ("p1", "p2")}
        entries = [self._entry(staged, Kind.THROUGH, p, h) for p, h in late_h.items()]
        now = late_h["p2"] + 0.01
        plain = self._view(staged, table, demo_course, entries, now)
        at = plain.arrival("p3", 0.6)
        limited = self._limited(staged, (at - staged.starts) / HOUR)
        told = self._view(limited, table, demo_course, entries, now)
        assert told.window("p3").late < at + timedelta(minutes=3) < plain.window("p3").late
        for point in ("p3", "p4", "p5"):
            assert told.arrival(point, 0.5) <= plain.arrival(point, 0.5)
            assert told.p_makes(point, at, False) == plain.p_makes(point, at, False)
            assert told.p_gets_there(point) == plain.p_gets_there(point)
        assert told.window("p4").early >= staged.starts + 24 * HOUR
        assert told.leaving("p3", 0.05) == staged.starts + 24 * HOUR

    def test_a_far_limit_changes_nothing_to_speak_of(self, staged, table, demo_course) -> None:
        """A cut-off hours after she is likely in leaves her windows where they were."""
        plain = self._view(staged, table, demo_course, [], 0.0)
        told = self._view(self._limited(staged, 23.0), table, demo_course, [], 0.0)
        for point in ("p1", "p3", "p5"):
            assert abs(told.window(point).late - plain.window(point).late) < timedelta(seconds=30)

    def test_the_last_stage_has_the_race_s_limit(self, staged, table, demo_course) -> None:
        """Out of the camp and slow: the limit at the finish pulls her late edge in, as in a race of one piece; before
        the camp it reaches the last stage too."""
        hours = table.row("p4").arrive[Goal.B].total_seconds() / 3600.0 + 0.7
        entries = [
            self._entry(staged, Kind.OUT, "p3", 24.0),
            self._entry(staged, Kind.THROUGH, "p4", hours),
        ]
        for facts, now in ((entries, hours + 0.01), ([], 0.0)):
            plain = self._view(staged, table, demo_course, facts, now)
            limit = plain.arrival("p5", 0.6) - staged.starts
            told = self._view(replace(staged, limit=limit), table, demo_course, facts, now)
            assert told.window("p5").late < staged.starts + limit + timedelta(minutes=10)
            assert told.window("p5").late < plain.window("p5").late


REFERENCE = Reference(
    km=np.array([10.0, 25.0, 40.0, 60.0]),
    elapsed_s=np.array([5000.0, 13000.0, 21000.0, 33000.0]),
    stop_s=np.zeros(4),
    quality=Quality.COST_MODEL,
    climb_m_per_km=30.0,
)


@settings(max_examples=40, deadline=None)
@given(
    first=st.floats(9000.0, 40000.0),
    last=st.floats(60000.0, 120000.0),
    seen=st.floats(4000.0, 8000.0) | st.none(),
)
def test_a_limit_makes_nothing_later_and_keeps_the_order(
    first: float, last: float, seen: float | None
) -> None:
    """Whatever the limits, reached or out of reach: every path stays in order, none is slower, odds stay as they are."""
    facts = [KnownStop(1, 50000.0)] + ([] if seen is None else [Sighting(0, seen, seen)])
    plain = posterior(REFERENCE, facts)
    told = within(plain, (StageEnd(1, first), StageEnd(3, last)))
    assert np.all(told.arrivals_s <= plain.arrivals_s + 1e-6)
    assert np.all(np.diff(told.arrivals_s, axis=1) > 0)
    assert np.all(told.departures_s >= told.arrivals_s)
    assert np.all(told.departures_s[:, :-1] <= told.arrivals_s[:, 1:])
    assert np.all(told.departures_s[:, 1 - told.track.first] >= 50000.0)
    assert told.plain_s is plain.plain_s
