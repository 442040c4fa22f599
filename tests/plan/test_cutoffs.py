"""Latest times out, odds of cut-offs and changes of goal, over paths whose truth is known."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.event.model import CutOff, Edge, Goal, Target
from server.facts.fold import fold
from server.forecast.bridge import outlook
from server.plan import make_timetable
from server.plan.cutoffs import (
    CutOffOdds,
    DueTime,
    LatestOut,
    cut_off_odds,
    due_times,
    goal_changes,
    latest_out,
    odds_out_at,
    one_latest,
)

START = datetime(2027, 6, 19, 4, 30, tzinfo=UTC)


def paths(m: int = 4_000, level: float = 0.12, own: float = 0.05, seed: int = 1):
    """Out of one point at about 8 h, in at the next about 3 h later: a shared level and noise of the leg's
    own."""
    rng = np.random.default_rng(seed)
    shared = rng.normal(0.0, level, m)
    out = 8 * 3600.0 * np.exp(shared + rng.normal(0.0, 0.02, m))
    return out, out + 3 * 3600.0 * np.exp(shared + rng.normal(0.0, own, m))


class TestLatestOut:
    """The latest moment that still makes it."""

    def test_against_the_exact_answer(self) -> None:
        """With a leg whose length does not hang on how late she is, the answer is the cut-off less its 90%
        time."""
        out, later = paths(level=0.0)
        leg = later - out
        by = 12 * 3600.0
        found = latest_out(out, later, by)
        assert found == pytest.approx(by - float(np.quantile(leg, 0.9)), abs=60.0)

    def test_it_counts_that_a_late_runner_is_slower(self) -> None:
        """Where lateness is shared, a later exit means a longer leg: conditioned paths agree within 2
        points."""
        out, later = paths(m=60_000)
        at, by = 9 * 3600.0, 12.6 * 3600.0
        near = np.abs(out - at) < 240.0
        seen = float((later[near] - out[near] + at <= by).mean())
        assert odds_out_at(out, later, at, by) == pytest.approx(seen, abs=0.02)

    @given(by_h=st.floats(9.0, 16.0), odds=st.floats(0.5, 0.97))
    @settings(max_examples=60, deadline=None)
    def test_just_made_and_just_not(self, by_h: float, odds: float) -> None:
        """At the moment named the odds are met, two minutes later they are not."""
        out, later = paths(m=800)
        at = latest_out(out, later, by_h * 3600.0, odds=odds)
        assert at is not None
        assert odds_out_at(out, later, at, by_h * 3600.0) >= odds
        assert odds_out_at(out, later, at + 120.0, by_h * 3600.0) <= odds

    @given(by_h=st.floats(9.0, 14.0), more=st.floats(0.1, 2.0))
    @settings(max_examples=40, deadline=None)
    def test_order(self, by_h: float, more: float) -> None:
        """A later cut-off allows a later exit; higher odds an earlier one."""
        out, later = paths(m=400)
        first, second = (latest_out(out, later, h * 3600.0) for h in (by_h, by_h + more))
        safer = latest_out(out, later, by_h * 3600.0, odds=0.97)
        assert first is not None
        assert second is not None
        assert safer is not None
        assert safer <= first + 1.0
        assert first <= second + 1.0

    def test_not_even_at_once(self) -> None:
        """A cut-off nobody can make from there, or odds of stopping above what is asked, have no latest
        exit."""
        out, later = paths()
        assert latest_out(out, later, 1_800.0) is None
        assert latest_out(out, later, 12 * 3600.0, gets_there=0.85) is None

    @pytest.mark.parametrize("wrong", ["few", "unequal", "backwards", "posix"])
    def test_refuses_what_are_no_paths(self, wrong: str) -> None:
        """Too few paths, unequal ones, and ones that run backwards are errors, not answers."""
        out, later = paths(m=100)
        given_ = {
            "few": (out[:5], later[:5]),
            "unequal": (out[:50], later),
            "backwards": (later, out),
            "posix": (-out, later),
        }
        with pytest.raises(ValueError, match="latest_out needs"):
            latest_out(*given_[wrong], 12 * 3600.0)


@dataclass
class KnownView:
    """A view with known paths: three points, a tenth of runners stopping before the last."""

    out: np.ndarray
    later: np.ndarray
    now: datetime = START
    points: tuple[str, ...] = ("p5", "p6")

    def paths(self):
        """Arrivals are departures less five minutes."""
        leave = np.column_stack([self.out, self.later + 300.0]) + START.timestamp()
        arrive = np.column_stack([self.out - 300.0, self.later]) + START.timestamp()
        return arrive, leave

    def p_gets_there(self, point: str) -> float:
        """98 % and 95 %."""
        return {"p5": 0.98, "p6": 0.95}[point]

    def p_in_by(self, point: str, when: datetime) -> float:
        """Share of paths in, times getting there."""
        at = self.paths()[0][:, self.points.index(point)]
        return float((at <= when.timestamp()).mean()) * self.p_gets_there(point)

    def p_out_by(self, point: str, when: datetime) -> float:
        """Share of paths out, times getting there."""
        at = self.paths()[1][:, self.points.index(point)]
        return float((at <= when.timestamp()).mean()) * self.p_gets_there(point)

    def p_makes(self, point: str, when: datetime, out: bool) -> float:
        """As often as the paths say."""
        return self.p_out_by(point, when) if out else self.p_in_by(point, when)


def test_over_a_view() -> None:
    """Odds include stopping; each earlier point has its latest time out; out is harder than in."""
    view = KnownView(*paths())
    at = START + timedelta(hours=12)
    both = cut_off_odds(view, [DueTime("p6", e, at) for e in (Edge.IN, Edge.OUT)], START)  # type: ignore[arg-type]
    assert both[0].odds <= 0.95
    assert both[1].odds <= both[0].odds
    for found in both:
        assert [x.point for x in found.latest_out] == ["p5"]
        assert found.latest_out[0].at is not None
    assert both[1].latest_out[0].at < both[0].latest_out[0].at
    due = [DueTime("p6", Edge.IN, at)]
    strict = cut_off_odds(view, due, START, counting_stops=True)  # type: ignore[arg-type]
    assert strict[0].latest_out[0].at < both[0].latest_out[0].at
    never = cut_off_odds(view, due, START, 0.98, counting_stops=True)  # type: ignore[arg-type]
    assert never[0].latest_out[0].at is None


def test_over_a_view_of_somebody_long_overdue() -> None:
    """One path in four hundred that arrives before it has left, or few paths at all, cost no odds and raise nothing: the
    board of a race in which she is missed stands on them."""
    out, later = paths()
    due = [DueTime("p6", Edge.IN, START + timedelta(hours=12))]
    (sound,) = cut_off_odds(KnownView(out, later), due, START)  # type: ignore[arg-type]
    crossing = later.copy()
    crossing[7] = out[7] - 40.0
    (crossed,) = cut_off_odds(KnownView(out, crossing), due, START)  # type: ignore[arg-type]
    assert abs(crossed.latest_out[0].at - sound.latest_out[0].at) < timedelta(minutes=2)
    (few,) = cut_off_odds(KnownView(out[:12], later[:12]), due, START)  # type: ignore[arg-type]
    assert few.latest_out == ()


def test_due_times(make_event) -> None:
    """Clock and elapsed, in and out, the race's limit, and those the organiser moved, in running order."""
    base = make_event(Target(finish=timedelta(hours=29)), limit=timedelta(hours=36))
    rules = {
        "p3": (
            CutOff(Edge.IN, elapsed=timedelta(hours=7)),
            CutOff(Edge.OUT, clock=START + timedelta(hours=7.5)),
        ),
        "p6": (CutOff(Edge.OUT, elapsed=timedelta(hours=15)),),
    }
    points = tuple(replace(p, cut_offs=rules.get(p.id, ())) for p in base.courses[0].points)
    event = make_event(Target(finish=timedelta(hours=29)), points=points, limit=timedelta(hours=36))
    found = due_times(event, "maren")
    assert [(d.point, d.edge) for d in found] == [
        ("p3", Edge.IN), ("p3", Edge.OUT), ("p6", Edge.OUT), ("p12", Edge.IN),
    ]  # fmt: skip
    assert found[-1].at == START + timedelta(hours=36)
    later = START + timedelta(hours=16)
    moved = due_times(event, "maren", [("p6", "out", later), ("p9", "in", later + timedelta(hours=8))])
    assert {(d.point, d.edge): d.at for d in moved}[("p6", Edge.OUT)] == later
    assert ("p9", Edge.IN) in {(d.point, d.edge) for d in moved}


def test_goals_change_over(demo_course, make_event) -> None:
    """At each point A gives way to B and B to C later and later."""
    table = make_timetable(make_event(Target(finish=timedelta(hours=29))), "maren", demo_course)
    rng = np.random.default_rng(2)
    level = rng.normal(0.0, 0.13, 600)
    plan = np.array([r.leave[Goal.B].total_seconds() for r in table.rows[1:]])
    leave = plan[None, :] * np.exp(level)[:, None] * np.exp(rng.normal(0, 0.01, (600, len(plan))))
    leave = np.maximum.accumulate(leave, axis=1) + np.arange(len(plan))
    names = tuple(r.point for r in table.rows[1:])
    found = goal_changes(names, leave, leave[:, -1], table)
    by_point = {(c.point, c.goal): c.at for c in found}
    for name in names[:-1]:
        a, b, c = (by_point[(name, g)] for g in Goal)
        assert a is not None
        assert b is not None
        assert c is not None
        assert a < b < c
        assert b == pytest.approx(table.start + table.row(name).leave[Goal.B], abs=timedelta(minutes=45))


def test_who_keeps_to_a_goals_timetable_is_still_after_it(demo_course, make_event) -> None:
    """Where most who start as fast as goal A fade, the change-over is A's own time out, and not before it."""
    table = make_timetable(make_event(Target(finish=timedelta(hours=29))), "maren", demo_course)
    rng = np.random.default_rng(4)
    plan = np.array([r.leave[Goal.B].total_seconds() for r in table.rows[1:]])
    level = rng.normal(0.0, 0.13, 600)
    leave = plan[0] * np.exp(level)
    finish = plan[-1] * np.exp(0.5 * level + rng.normal(0.0, 0.02, 600))
    first = table.rows[1]
    a = next(c for c in goal_changes((first.point,), leave[:, None], finish, table) if c.goal is Goal.A)
    assert a.at == table.start + first.leave[Goal.A]


def test_over_the_real_forecast(demo_course, make_event) -> None:
    """On the forecast the server runs: odds fall from cut-off to cut-off, every earlier point has a latest time out,
    later for later points, and goals change over in order."""
    base = make_event(Target(finish=timedelta(hours=29)))
    hours = {"p5": 13.0, "p8": 23.0}
    points = tuple(
        replace(p, cut_offs=(CutOff(Edge.IN, elapsed=timedelta(hours=hours[p.id])),)) if p.id in hours else p
        for p in base.courses[0].points
    )
    event = make_event(Target(finish=timedelta(hours=29)), points=points)
    table = make_timetable(event, "maren", demo_course)
    state = fold([], event, START)
    view = outlook(event, state.runner("maren"), state, table, demo_course).at(START)
    found = cut_off_odds(view, due_times(event, "maren"), START)
    assert [f.due.point for f in found] == ["p5", "p8", "p12"]
    assert 1.0 >= found[0].odds >= found[1].odds >= found[2].odds > 0.2
    for f in found:
        at = [x.at for x in f.latest_out]
        assert None not in at
        assert at == sorted(at)
        assert at[-1] < f.due.at
    arrive, leave = (p - START.timestamp() for p in view.paths())
    changes = goal_changes(view.points, leave, arrive[:, -1], table)
    assert len(changes) == 3 * (len(view.points) - 1)


def test_one_latest_time_out_of_a_point() -> None:
    """Of two cut-offs the one that asks for the earlier is told, and none beside a point's own that is earlier still."""
    at = datetime(2027, 6, 19, 20, 0, tzinfo=UTC)

    def odds(point: str, hour: int, *out: tuple[str, int]) -> CutOffOdds:
        due = DueTime(point, Edge.IN, at + timedelta(hours=hour))
        return CutOffOdds(due, 0.5, tuple(LatestOut(p, at + timedelta(hours=h)) for p, h in out), 0.8)

    found = one_latest((odds("b", 3, ("a", 1)), odds("c", 9, ("a", 2), ("b", 5), ("x", 6))))
    assert [[o.point for o in c.latest_out] for c in found] == [["a"], ["x"]]
    assert found[0].if_going == pytest.approx(0.625)
