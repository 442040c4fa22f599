"""The room's door: timetables that add up, goals inside their cut-offs, and plans that are refused."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.event.model import CutOff, Edge, Goal, Stretch, Target
from server.plan import OwnPace, PlanError, make_timetable
from server.plan.day import Weather
from server.plan.notes import saying
from server.plan.pace import Fade, Limits
from tests.plan.english import said, source

H = timedelta(hours=1)


OWN = saying("source-own-runs", count=14, distance_whole_km=300, longest_h=5)


def finish(hours: float) -> Target:
    """A finish-time target."""
    return Target(finish=timedelta(hours=hours))


def check_sound(table) -> None:
    """What must hold of every timetable: order in time and between goals, legs that add up, whole seconds."""
    for row in table.rows:
        assert row.arrive[Goal.A] <= row.arrive[Goal.B] <= row.arrive[Goal.C]
        for goal in Goal:
            assert row.leave[goal] - row.arrive[goal] == row.stop
            assert row.arrive[goal].microseconds == 0
    for before, after in zip(table.rows, table.rows[1:], strict=False):
        for goal in Goal:
            assert before.leave[goal] < after.arrive[goal]
        moving = after.arrive[Goal.B] - before.leave[Goal.B]
        parts = sum((s for _, s in after.factors), timedelta(0))
        assert abs(parts - moving) <= timedelta(seconds=len(after.factors) + 1)
    assert table.rows[0].arrive[Goal.B] == timedelta(0)


class TestAddsUp:
    """Rows and goals."""

    @pytest.mark.parametrize("hours", [20, 24, 29, 33.37])
    def test_to_the_second(self, demo_course, make_event, hours: float) -> None:
        """Goal B's last arrival is the target, and the rows in between are sound."""
        table = make_timetable(make_event(finish(hours), limit=None), "maren", demo_course)
        assert table.rows[-1].arrive[Goal.B] == timedelta(seconds=round(hours * 3600))
        check_sound(table)

    @given(seconds=st.integers(21 * 3600, 40 * 3600), stop=st.floats(0, 30))
    @settings(max_examples=15, deadline=None)
    def test_any_target_any_stops(
        self, demo_course, make_event, points_at, seconds: int, stop: float
    ) -> None:
        """Whatever the target and the stops, whole seconds add up."""
        points = points_at((0.0, 21.0, 61.0, 100.5, 161.0), round(stop))
        event = make_event(Target(finish=timedelta(seconds=seconds)), points=points, limit=None)
        table = make_timetable(event, "maren", demo_course)
        assert table.rows[-1].arrive[Goal.B].total_seconds() == seconds
        check_sound(table)

    @given(
        hours=st.floats(25, 34),
        walk=st.none() | st.floats(4.5, 8.0),
        climb=st.none() | st.floats(500, 1500),
        down=st.none() | st.floats(8, 16),
        stretches=st.lists(
            st.tuples(
                st.floats(0, 150),
                st.floats(0.1, 40),
                st.floats(0.9, 1.4),
                st.sampled_from(["", "bog", "road", "rocky"]),
            ),
            max_size=4,
        ),
    )
    @settings(max_examples=15, deadline=None)
    def test_any_runner_any_ground(
        self, demo_course, make_event, hours: float, walk, climb, down, stretches: list
    ) -> None:
        """Whatever her limits and the ground, there is a sound timetable or a reason in words; never
        anything else."""
        ground = tuple(Stretch(a, a + long, "", surface, factor=f) for a, long, f, surface in stretches)
        event = make_event(
            finish(hours),
            stretches=ground,
            limit=None,
            walk_kmh=walk,
            climb_rate_m_per_h=climb,
            downhill_kmh=down,
        )
        try:
            table = make_timetable(event, "maren", demo_course)
        except PlanError as error:
            table, reason = None, str(error.what)
        if table is None:
            assert "m/s" in reason
            return
        assert table.rows[-1].arrive[Goal.B] == timedelta(seconds=round(hours * 3600))
        check_sound(table)

    def test_pace_all_in(self, demo_course, make_event) -> None:
        """10:50 per km with all stops over 161 km is 29:04:10."""
        target = Target(pace_all_in=timedelta(minutes=10, seconds=50))
        table = make_timetable(make_event(target), "maren", demo_course)
        assert table.rows[-1].arrive[Goal.B] == timedelta(hours=29, minutes=4, seconds=10)

    def test_easy_pace_says_where_it_suits(self, demo_course, make_event) -> None:
        """Easy pace plus margin says that it suits 50 km and was scaled for distance and climb."""
        target = Target(easy_pace=timedelta(minutes=6, seconds=30), margin=timedelta(minutes=1))
        table = make_timetable(make_event(target), "maren", demo_course)
        assert any("suits a flat 50 km" in n and "5" in n for n in said(table.notes))

    def test_easy_pace_on_fifty_level_km_is_the_pace_itself(
        self, level_course, make_event, points_at
    ) -> None:
        """On the course it suits, nothing is scaled: 50 km at 6:30 plus 1:30 take 6:40 plus the stops."""
        target = Target(easy_pace=timedelta(minutes=6, seconds=30), margin=timedelta(minutes=1, seconds=30))
        event = make_event(target, points=points_at((0.0, 25.0, 50.0), 10.0))
        table = make_timetable(event, "maren", level_course)
        assert table.rows[-1].arrive[Goal.B] == timedelta(hours=6, minutes=50)

    def test_same_in_same_out(self, demo_course, make_event) -> None:
        """Made twice from the same event, the timetable is the same."""
        event = make_event(finish(29))
        assert make_timetable(event, "maren", demo_course) == make_timetable(event, "maren", demo_course)

    def test_fifty_km_on_the_level_slows(self, level_course, make_event, points_at) -> None:
        """On level ground without stops, later legs of one length take longer: the fade."""
        points = points_at((0.0, 10.0, 20.0, 30.0, 40.0, 50.0), 0.0)
        rows = make_timetable(make_event(finish(6), points=points), "maren", level_course).rows
        legs = np.diff([r.arrive[Goal.B].total_seconds() for r in rows])
        assert np.all(np.diff(legs) > 0)


class TestConditions:
    """What is visible in minutes."""

    def test_each_factor_is_a_row_entry(self, demo_course, make_event) -> None:
        """Surface, a named factor, night and altitude stand in the rows where they cost time, and only
        there."""
        stretch = Stretch(61.0, 74.0, "Moss edge", surface="bog", factor=1.05, factor_for="wet ground")
        table = make_timetable(make_event(finish(29), stretches=(stretch,)), "maren", demo_course)
        inside, outside = dict(table.row("p6").factors), dict(table.row("p3").factors)
        assert inside["surface: bog"] > timedelta(minutes=10)
        assert inside["wet ground"] > timedelta(minutes=2)
        assert "surface: bog" not in outside
        assert sum(
            (dict(r.factors).get("night", timedelta(0)) for r in table.rows), timedelta(0)
        ) > 10 * timedelta(minutes=1)

    def test_heat_costs_minutes_in_its_leg(self, demo_course, make_event) -> None:
        """A hot noon shows as minutes of heat, and the target still adds up."""
        event = make_event(finish(29))
        start = event.runner("maren").start
        weather = (Weather(start + 5 * H, start + 9 * H, 30.0, 55.0),)
        table = make_timetable(event, "maren", demo_course, weather=weather)
        assert sum((dict(r.factors).get("heat", timedelta(0)) for r in table.rows), timedelta(0)) > timedelta(
            minutes=8
        )
        check_sound(table)

    def test_unknown_surface_is_said(self, demo_course, make_event) -> None:
        """A surface nobody knows costs nothing and is named, with those that are known."""
        stretch = Stretch(10.0, 20.0, surface="marzipan")
        table = make_timetable(make_event(finish(29), stretches=(stretch,)), "maren", demo_course)
        assert any("‘marzipan’" in n and "known are" in n for n in said(table.notes))

    def test_where_walking_costs_no_time(self, demo_course, make_event) -> None:
        """The notes say on how many km walking costs no time, and where."""
        table = make_timetable(make_event(finish(29)), "maren", demo_course)
        assert any(n.startswith("walking costs no time on") for n in said(table.notes))

    def test_no_heights(self, bare_course, make_event, points_at) -> None:
        """A route without heights gives a plan that says what is missing."""
        table = make_timetable(
            make_event(finish(6), points=points_at((0.0, 25.0, 50.0))), "maren", bare_course
        )
        assert table.quality == "distance only"
        assert any("no heights" in n and "climbs" in n for n in said(table.notes))
        check_sound(table)

    def test_light_and_dark(self, demo_course, make_event) -> None:
        """A 29 h race from 05:30 meets one night, with sunset before dusk before dawn before sunrise."""
        table = make_timetable(make_event(finish(29)), "maren", demo_course)
        events = [m.event.value for m in table.light]
        assert events == ["sunset", "civil dusk", "civil dawn", "sunrise"]
        assert len(table.dark) == 1
        assert table.dark[0].from_km == pytest.approx(table.light[0].km, abs=0.5)

    def test_own_limits_shift_time(self, demo_course, make_event) -> None:
        """A low climb rate of her own moves time into the climbing legs of the same total."""
        free = make_timetable(make_event(finish(30)), "maren", demo_course)
        slow = make_timetable(make_event(finish(30), climb_rate_m_per_h=450.0), "maren", demo_course)
        climb = "p3"
        assert _moving(slow, climb) > _moving(free, climb) + timedelta(minutes=5)
        assert slow.rows[-1].arrive[Goal.B] == free.rows[-1].arrive[Goal.B]

    def test_own_data_are_named(self, demo_course, make_event) -> None:
        """A pace from her own runs names its source, its quality and narrows the goals."""
        own = OwnPace(Limits(fade=Fade(strength=0.8)), "own data", 0.08, OWN)
        table = make_timetable(make_event(finish(29)), "maren", demo_course, own=own)
        usual = make_timetable(make_event(finish(29)), "maren", demo_course)
        assert table.quality == "own data"
        assert "14 of her own runs" in source(table.source)
        assert table.rows[-1].arrive[Goal.A] > usual.rows[-1].arrive[Goal.A]


def _moving(table, point: str) -> timedelta:
    index = [r.point for r in table.rows].index(point)
    return table.rows[index].arrive[Goal.B] - table.rows[index - 1].leave[Goal.B]


class TestCutOffs:
    """No goal later than a cut-off."""

    @pytest.mark.parametrize("edge", [Edge.IN, Edge.OUT])
    @pytest.mark.parametrize("as_clock", [True, False])
    def test_c_is_pulled_in(self, demo_course, make_event, points_at, edge: Edge, as_clock: bool) -> None:
        """With a cut-off between B and C at one point, C keeps to it, to the second, and the notes say so."""
        plain = make_event(finish(29), limit=None)
        free = make_timetable(plain, "maren", demo_course)
        at = (free.row("p6").leave[Goal.B] + free.row("p6").arrive[Goal.C]) / 2
        at -= timedelta(microseconds=at.microseconds)
        rule = CutOff(edge, clock=plain.runner("maren").start + at) if as_clock else CutOff(edge, elapsed=at)
        points = plain.courses[0].points
        points = tuple(replace(p, cut_offs=(rule,)) if p.id == "p6" else p for p in points)
        table = make_timetable(make_event(finish(29), points=points, limit=None), "maren", demo_course)
        row = table.row("p6")
        late = row.arrive[Goal.C] if edge is Edge.IN else row.leave[Goal.C]
        assert at - timedelta(seconds=2) <= late <= at
        assert any("goal C" in n and "Point 6" in n for n in said(table.notes))
        check_sound(table)

    @given(
        shares=st.lists(st.floats(0.02, 0.98), min_size=3, max_size=3),
        edges=st.lists(st.booleans(), min_size=3, max_size=3),
    )
    @settings(max_examples=12, deadline=None)
    def test_no_goal_is_late_anywhere(self, demo_course, make_event, shares, edges) -> None:
        """With any three cut-offs between B and C, to the second, no goal of the timetable misses one."""
        plain = make_event(finish(29), limit=None)
        free = make_timetable(plain, "maren", demo_course)
        rules: dict[str, CutOff] = {}
        for name, share, is_in in zip(("p3", "p6", "p9"), shares, edges, strict=True):
            row = free.row(name)
            b, c = (row.arrive, row.arrive) if is_in else (row.leave, row.leave)
            at = timedelta(seconds=int((b[Goal.B] + (c[Goal.C] - b[Goal.B]) * share).total_seconds()))
            rules[name] = CutOff(Edge.IN if is_in else Edge.OUT, elapsed=at)
        points = tuple(
            replace(p, cut_offs=(rules[p.id],)) if p.id in rules else p for p in plain.courses[0].points
        )
        table = make_timetable(make_event(finish(29), points=points, limit=None), "maren", demo_course)
        for name, rule in rules.items():
            times = table.row(name).arrive if rule.edge is Edge.IN else table.row(name).leave
            assert all(times[g] <= rule.elapsed for g in Goal)
        check_sound(table)

    def test_b_past_a_cut_off_is_refused(self, demo_course, make_event) -> None:
        """A target past a cut-off names the point, by how much, and what would do."""
        points = make_event(finish(29)).courses[0].points
        points = tuple(
            replace(p, cut_offs=(CutOff(Edge.OUT, elapsed=timedelta(hours=8)),)) if p.id == "p5" else p
            for p in points
        )
        with pytest.raises(PlanError) as caught:
            make_timetable(make_event(finish(29), points=points), "maren", demo_course)
        assert "past the cut-off out of Point 5" in str(caught.value.what)
        assert caught.value.field == "runners.maren.target"
        assert "Aim for a finish in" in str(caught.value.remedy)

    def test_the_remedy_works(self, demo_course, make_event) -> None:
        """The finish time that the refusal names is a plan that is made, and a little later is refused
        again."""
        points = make_event(finish(29)).courses[0].points
        points = tuple(
            replace(p, cut_offs=(CutOff(Edge.OUT, elapsed=timedelta(hours=8.5)),)) if p.id == "p5" else p
            for p in points
        )
        with pytest.raises(PlanError) as caught:
            make_timetable(make_event(finish(29), points=points), "maren", demo_course)
        h, m = str(caught.value.remedy).split("finish in ")[1].split(" or")[0].split(":")
        aim = timedelta(hours=int(h), minutes=int(m))
        table = make_timetable(make_event(Target(finish=aim), points=points), "maren", demo_course)
        assert table.row("p5").leave[Goal.C] <= timedelta(hours=8.5)
        with pytest.raises(PlanError, match="past the cut-off"):
            make_timetable(
                make_event(Target(finish=aim + timedelta(minutes=4)), points=points), "maren", demo_course
            )

    def test_the_limit_counts_from_the_race(self, demo_course, make_event) -> None:
        """The race's own limit is a cut-off at the finish like any other."""
        with pytest.raises(PlanError, match="time limit"):
            make_timetable(make_event(finish(38)), "maren", demo_course)


GOOD = finish(29)
REFUSED = [
    ("nobody so named", {"runner": "nobody"}, "no runner 'nobody'", "runners"),
    (
        "two forms",
        {"target": Target(finish=29 * H, pace_all_in=timedelta(minutes=10))},
        "several forms of target",
        "target",
    ),
    ("no form", {"target": Target()}, "the target is empty", "target"),
    ("zero finish", {"target": Target(finish=timedelta(0))}, "no time to aim for", "target.finish"),
    ("negative finish", {"target": Target(finish=-29 * H)}, "no time to aim for", "target.finish"),
    (
        "negative pace",
        {"target": Target(pace_all_in=timedelta(minutes=-5))},
        "no time to aim for",
        "pace_all_in",
    ),
    (
        "pace of an hour",
        {"target": Target(pace_all_in=2 * H)},
        "slower than anybody walks",
        "target.pace_all_in",
    ),
    ("finish in a month", {"target": Target(finish=800 * H)}, "over 30 days", "target.finish"),
    ("finish in a week", {"target": Target(finish=190 * H)}, "slower than anybody walks", "target.finish"),
    (
        "easy pace alone",
        {"target": Target(easy_pace=timedelta(minutes=6))},
        "needs a margin",
        "target.margin",
    ),
    (
        "margin of an hour",
        {"target": Target(easy_pace=timedelta(minutes=6), margin=H)},
        "needs a margin",
        "target.margin",
    ),
    (
        "margin below zero",
        {"target": Target(easy_pace=timedelta(minutes=6), margin=timedelta(minutes=-1))},
        "needs a margin",
        "target.margin",
    ),
    ("nine hours", {"target": finish(9)}, "m/s uphill", "target"),
    ("thirteen hours", {"target": finish(13)}, "m/s on the level", "target"),
    ("own limits", {"target": finish(26), "climb_rate_m_per_h": 250.0}, "climb_m_per_h = 250", "target"),
    ("walks 30 km/h", {"walk_kmh": 30.0}, "outside 2 to 9.5", "walk_kmh"),
    ("climbs nothing", {"climb_rate_m_per_h": 0.0}, "outside 100 to 2500", "climb_m_per_h"),
    ("climbs a lift's rate", {"climb_rate_m_per_h": 9000.0}, "outside 100 to 2500", "climb_m_per_h"),
    ("down at nought", {"downhill_kmh": 0.5}, "outside 3 to 30", "downhill_kmh"),
    ("walk not a number", {"walk_kmh": float("nan")}, "outside 2 to 9.5", "walk_kmh"),
    ("stops eat it all", {"target": finish(29), "stop": 200.0}, "planned stops alone take", "target"),
    ("point past the end", {"km": (0.0, 50.0, 180.0)}, "the route ends at km 161", "points.p2.km"),
    ("points out of order", {"km": (0.0, 80.0, 50.0, 161.0)}, "does not come after", "points.p2.km"),
    ("one place twice at one km", {"km": (0.0, 80.0, 80.0, 161.0)}, "does not come after", "points.p2.km"),
    ("start before the start", {"km": (-1.0, 80.0, 161.0)}, "does not come after", "points.p0.km"),
    ("a start alone", {"km": (0.0,)}, "start and a finish", "points"),
    ("unplaced", {"km": (0.0, None, 161.0)}, "no km is known for Point 1", "points"),
    ("past the limit", {"target": finish(37)}, "past the race's time limit", "target"),
    (
        "a stretch of no time",
        {"stretches": (Stretch(10.0, 20.0, factor=0.0),)},
        "outside 0.5 to 5",
        "stretches[0]",
    ),
    (
        "a stretch of ten times",
        {"stretches": (Stretch(10.0, 20.0, factor=10.0),)},
        "outside 0.5 to 5",
        "stretches[0]",
    ),
    ("a stretch backwards", {"stretches": (Stretch(20.0, 10.0),)}, "has no length", "stretches[0].to_km"),
    ("cut-off before start", {"cut_off": timedelta(hours=-1)}, "before her start", "points.p3.cut_off"),
    (
        "cut-off nobody can meet",
        {"cut_off": timedelta(hours=1)},
        "past the cut-off in of",
        "points.p3.cut_off",
    ),
    (
        "limit nobody can meet",
        {"target": finish(37), "limit": timedelta(hours=1)},
        "past the race's time limit",
        "limit",
    ),
]


@pytest.mark.parametrize(("name", "change", "what", "field"), REFUSED, ids=[r[0] for r in REFUSED])
def test_refused(demo_course, make_event, points_at, name: str, change: dict, what: str, field: str) -> None:
    """Each of these plans is refused, with what is wrong, the field, and a remedy."""
    change = dict(change)
    km, stop, cut = change.pop("km", None), change.pop("stop", 6.0), change.pop("cut_off", None)
    points = points_at(km or (0.0, 21.0, 35.0, 61.0, 80.0, 87.0, 100.5, 114.0, 128.0, 144.5, 161.0), stop)
    if cut is not None:
        points = (*points[:3], replace(points[3], cut_offs=(CutOff(Edge.IN, elapsed=cut),)), *points[4:])
    runner = change.pop("runner", "maren")
    event = make_event(change.pop("target", GOOD), points=points, **change)
    with pytest.raises(PlanError) as caught:
        make_timetable(event, runner, demo_course)
    assert what in str(caught.value.what)
    assert field in caught.value.field
    assert len(str(caught.value.remedy)) > 10
    assert str(caught.value).startswith(caught.value.field)
