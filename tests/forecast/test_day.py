"""Others' times of the day: what they change of a runner's windows, and that a wild feed does no harm."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from server.facts.entry import Kind
from server.facts.fold import fold
from server.facts.passages import Passage
from server.facts.state import Interval, PointTimes, RunnerState
from server.forecast.bridge import outlook, reference_of
from server.forecast.day import Followed, Strangers, day_of, seen_of_others
from server.forecast.in_event import EventOutlook
from server.forecast.kinds import of
from server.forecast.others import MOST, NEAREST, factors
from server.forecast.outlook import RATHER, DayLegs
from server.forecast.values import FloatArray
from tests.forecast.test_bridge import START, Built, built, entry, index

__all__ = ["built"]

ONE_START = frozenset({START})
SEEN = (("pell", 1.0), ("mill", 1.0))
"""Points at which she was seen, at so many times the planned time."""
EARLIER = timedelta(minutes=20)


def state(built: Built) -> RunnerState:
    """She, seen at two points as planned."""
    plan = reference_of(built.timetables["maren"], built.courses["main"])
    numbers = index(built)
    seen = [entry(Kind.IN, float(plan.elapsed_s[numbers[p]]) * f / 3600, p) for p, f in SEEN]
    return fold(seen, built.event, START + timedelta(hours=40), None).runner("maren")


def feed(
    built: Built, count: int, slow: dict[str, float], rng: np.random.Generator, sd: float = 0.03
) -> FloatArray:
    """(count, n) seconds at which others came, who take `slow` times as planned to those points, each with a level."""
    table = built.timetables["maren"]
    plan = reference_of(table, built.courses["main"])
    legs = np.diff(plan.elapsed_s, prepend=0.0)
    day = np.array([slow.get(r.point, 1.0) for r in table.rows[1:]])
    level = np.exp(rng.normal(-0.05, 0.05, (count, 1)))
    return np.cumsum(legs * day * level * np.exp(rng.normal(0.0, sd, (count, len(legs)))), axis=1)


def passages(built: Built, times: FloatArray) -> list[Passage]:
    """As a feed would have them."""
    ids = [r.point for r in built.timetables["maren"].rows[1:]]
    return [
        Passage(str(bib), p, START + timedelta(seconds=float(at)))
        for bib, row in enumerate(times)
        for p, at in zip(ids, row, strict=True)
        if np.isfinite(at)
    ]


def others_of(
    built: Built,
    fed: list[Passage],
    me: RunnerState,
    followed: Followed | None = None,
    starts: frozenset[datetime] = ONE_START,
    held: tuple[Interval, ...] = (),
) -> FloatArray | None:
    """What is taken of others' times."""
    table = built.timetables["maren"]
    return seen_of_others(Strangers.of(fed), followed or Followed(built.event), me, table, starts, held)


def forecast(built: Built, fed: list[Passage], me: RunnerState | None = None) -> EventOutlook:
    """Her forecast with others' passages."""
    me = me or state(built)
    event, table, course = built.event, built.timetables["maren"], built.courses["main"]
    found = others_of(built, fed, me)
    day = None if found is None else day_of(found, event, me, table, course)
    race = fold([], event, START, None)
    return outlook(event, me, race, table, course, day=day)


def ahead(built: Built, fed: list[Passage]) -> dict[str, float]:
    """Hours after the start of the middle time at each point ahead."""
    view = forecast(built, fed).at(START)
    return {p: (view.window(p).likely - START).total_seconds() / 3600 for p in view.points}


def test_a_leg_slow_for_others_is_slow_for_her(built: Built) -> None:
    """Thirty who took a seventh longer to the next point: her time there moves by most of that, that of a leg alone."""
    rng = np.random.default_rng(1)
    next_ = forecast(built, []).at(START).points[0]
    plain = ahead(built, [])
    told = ahead(built, passages(built, feed(built, 30, {next_: 1.15}, rng)))
    leg = plain[next_] - (state(built).times[-1].arrived.at - START).total_seconds() / 3600  # type: ignore[union-attr]
    assert 0.06 * leg < told[next_] - plain[next_] < 0.15 * leg
    day = forecast(built, passages(built, feed(built, 30, {next_: 1.15}, rng))).day
    assert day is not None
    assert day.others == 30
    assert day.logs[day.ids.index(next_)] == max(day.logs)


def test_few_others_change_nothing(built: Built) -> None:
    """Four say nothing; nor do those who have not been seen past her; nor anybody before she has been seen."""
    rng = np.random.default_rng(2)
    four = feed(built, 4, {}, rng) * 1.2
    assert ahead(built, passages(built, four)) == ahead(built, [])
    behind = feed(built, 40, {"pell": 1.2}, rng)
    behind[:, 2:] = np.nan
    assert ahead(built, passages(built, behind)) == ahead(built, [])
    unseen = fold([], built.event, START, None).runner("maren")
    assert forecast(built, passages(built, feed(built, 40, {}, rng)), unseen).day is None


def test_others_who_are_followed_count_as_when_she_was_last_seen(built: Built) -> None:
    """Of an event's own runners: nothing of what came after her last report, so that theirs do not have hers worked
    out anew; taken in one by one as all at once; and she is not among them."""
    plan = reference_of(built.timetables["maren"], built.courses["main"])
    ids = [r.point for r in built.timetables["maren"].rows[1:]]
    me = state(built)

    fast = plan.elapsed_s * float(plan.elapsed_s[1] / plan.elapsed_s[2]) / 3600

    def other(n: int, points: int) -> RunnerState:
        seen = [entry(Kind.IN, float(fast[i]) * (0.95 + n / 500), ids[i]) for i in range(points)]
        found = fold(seen, built.event, START + timedelta(hours=40), None).runner("maren")
        return replace(found, runner=str(n))

    def others(*states: RunnerState) -> FloatArray | None:
        followed = Followed(built.event)
        for some in (states, states):
            followed.take(some)
        return others_of(built, [], me, followed)

    far, near = [other(n, 6) for n in range(10)], [other(n, 3) for n in range(10)]
    assert others(me, *near[:4]) is None
    told = others(me, *near)
    assert told is not None
    assert len(told) == 10
    assert (told[np.isfinite(told)] <= float(plan.elapsed_s[1])).all()
    assert np.array_equal(others(me, *far), told, equal_nan=True)  # type: ignore[arg-type]
    grown = Followed(built.event)
    grown.take((me, *near))
    grown.take((me, *far))
    again = others_of(built, [], me, grown)
    assert np.array_equal(again, others(me, *far), equal_nan=True)  # type: ignore[arg-type]


def test_who_comes_after_her_crowds_out_nobody(built: Built) -> None:
    """Of a large field sixty were ahead of her, and 240 nearer in pace come later: the same at once and ten hours later."""
    ids = [r.point for r in built.timetables["maren"].rows[1:]]
    plan, me = reference_of(built.timetables["maren"], built.courses["main"]).elapsed_s, state(built)
    stamp = me.times[-1].arrived
    assert stamp is not None

    def other(n: int, hours: float) -> RunnerState:
        pace = 0.4 + n / 1000 if n < 60 else 1.0 + n / 10000
        came = ((p, START + timedelta(seconds=pace * s)) for p, s in zip(ids, plan.tolist(), strict=True))
        upto = stamp.at + timedelta(hours=hours)
        times = tuple(PointTimes(p, replace(stamp, at=at)) for p, at in came if at <= upto)
        return replace(me, runner=str(n), times=times)

    def others(hours: float) -> FloatArray | None:
        followed = Followed(built.event)
        followed.take((me, *(other(n, hours) for n in range(300))))
        return others_of(built, [], me, followed)

    at_once = others(0.0)
    assert at_once is not None
    assert len(at_once) == NEAREST
    assert np.array_equal(others(10.0), at_once, equal_nan=True)  # type: ignore[arg-type]


@pytest.mark.parametrize("alone", [False, True])
def test_a_hold_is_nobodys_slowness(built: Built, alone: bool) -> None:
    """Two hours for which all were held on the way, or she alone, change nothing that is said of the legs."""
    fed = feed(built, 30, {}, np.random.default_rng(5))
    me = state(built)
    hold = Interval(START + timedelta(hours=1), START + timedelta(hours=3))
    held = replace(me, held=(hold,), times=tuple(replace(t, arrived=replace(t.arrived, at=_later(t.arrived.at, hold)))
                                                 if t.arrived else t for t in me.times))  # fmt: skip
    later = np.where(fed > 3600.0, fed + 7200.0, fed)
    one, other = (
        others_of(built, passages(built, t), s, held=h)
        for t, s, h in ((fed, me, ()), (fed, held, ()) if alone else (later, held, (hold,)))
    )
    assert one is not None
    assert other is not None
    assert np.allclose(one, other, atol=1e-3)


def _later(at: datetime, hold: Interval) -> datetime:
    assert hold.end is not None
    return at + (hold.end - hold.start) if at > hold.start else at


def test_who_starts_in_another_wave_is_put_beside_her(built: Built) -> None:
    """Where starts are several and theirs is not said: an hour later on every clock says the same of every leg."""
    fed, me = feed(built, 30, {}, np.random.default_rng(6)), state(built)
    several = frozenset({START, START + timedelta(hours=1)})
    one, other = (others_of(built, passages(built, t), me, starts=several) for t in (fed, fed + 3600.0))
    assert one is not None
    assert other is not None
    assert np.allclose(np.sort(one, axis=0), np.sort(other, axis=0), atol=1e-3)


def _days_off(t: FloatArray, _: np.random.Generator) -> FloatArray:
    return t + 86400.0


def _an_hour_off(t: FloatArray, _: np.random.Generator) -> FloatArray:
    return t + 3600.0


def _one_clock_off(t: FloatArray, _: np.random.Generator) -> FloatArray:
    t[:, 2] += 3600.0
    return t


def _all_after_off(t: FloatArray, _: np.random.Generator) -> FloatArray:
    t[:, 2:] += 7200.0
    return t


def _noise(t: FloatArray, rng: np.random.Generator) -> FloatArray:
    return np.asarray(rng.uniform(1.0, 60 * 3600.0, t.shape))


def _backwards(t: FloatArray, _: np.random.Generator) -> FloatArray:
    return np.asarray(t[:, ::-1])


def _tenfold(t: FloatArray, _: np.random.Generator) -> FloatArray:
    t[:, 2:] = t[:, 1:2] + (t[:, 2:] - t[:, 1:2]) * 10
    return t


WILD: tuple[Callable[[FloatArray, np.random.Generator], FloatArray], ...] = (
    _days_off, _an_hour_off, _one_clock_off, _all_after_off, _noise, _backwards, _tenfold,
)  # fmt: skip


@pytest.mark.parametrize("wild", WILD)
def test_a_wild_feed_moves_no_alarm_far(
    built: Built, wild: Callable[[FloatArray, np.random.Generator], FloatArray]
) -> None:
    """Whatever others' times are, she is late, and overdue, by no more than three tenths of the time since she was seen."""
    me = state(built)
    last = me.times[-1].arrived
    assert last is not None
    fed = passages(built, wild(feed(built, 50, {}, np.random.default_rng(3)), np.random.default_rng(4)))
    plain, told = forecast(built, []), forecast(built, fed)
    for ask in (lambda o: o.late_time(), lambda o: ("", o.unheard_falls_under(0.002, last.at))):
        one, other = ask(plain), ask(told)
        assert one is not None
        assert other is not None
        assert other[1] - one[1] < 0.3 * (one[1] - last.at)


FEEDS = st.lists(st.sampled_from((-1.0, 1.0)), min_size=40, max_size=40)


@settings(max_examples=25)
@given(st.integers(1, 8), FEEDS)
@example(4, [-1.0] * 4 + [1.0] * 36)
@example(6, [-1.0] * 6 + [1.0] + [-1.0] * 33)
def test_no_factors_there_can_be_move_an_alarm_far(built: Built, seen: int, ways: list[float]) -> None:
    """Each leg bent as far as any may be, this way or that: late, and overdue by whichever comes first, are moved by no more
    than four tenths of the time since she was last seen (0.35 found)."""
    event, table, course = built.event, built.timetables["maren"], built.courses["main"]
    ids = tuple(r.point for r in table.rows[1:])
    plan = reference_of(table, course)
    reports = [entry(Kind.IN, float(plan.elapsed_s[i]) / 3600, ids[i]) for i in range(seen)]
    race = fold(reports, event, START + timedelta(hours=40), None)
    me = race.runner("maren")
    last = START + timedelta(seconds=float(plan.elapsed_s[seen - 1]))

    def when(day: DayLegs | None) -> tuple[datetime, datetime]:
        found = outlook(event, me, race, table, course, day=day)
        late = found.late_time()
        overdue = [t for t in (found.unheard_falls_under(0.002, last), found.ended_rather(RATHER, last)) if t]
        assert late is not None
        return late[1], min(overdue)

    bent = when(DayLegs(ids, tuple(MOST * w for w in ways[: len(ids)]), 50))
    for plain, told in zip(when(None), bent, strict=True):
        assert told - plain < 0.4 * (plain - last)


def test_a_point_whose_clock_is_off_is_left_out(built: Built) -> None:
    """An hour off at one point for all: as if nobody had been seen there; where it is right nothing is left out."""
    plan = reference_of(built.timetables["maren"], built.courses["main"])
    right = feed(built, 30, {}, np.random.default_rng(7))
    off, without = right.copy(), right.copy()
    off[:, 3] += 3600.0
    without[:, 3] = np.nan
    told = factors(of(plan), plan, off)
    assert np.array_equal(told, factors(of(plan), plan, without))
    assert not np.array_equal(told, factors(of(plan), plan, right))
