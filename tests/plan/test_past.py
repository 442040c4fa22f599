"""Times from a past race and from past results, and how likely a target is."""

from __future__ import annotations

from datetime import timedelta

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.event.model import Goal, PastRace, Target
from server.plan import OwnPace, PlanError, make_timetable
from server.plan.likely import Estimate, RunPower, odds_by_power, odds_of, verdict
from server.plan.notes import saying
from server.plan.pace import Limits
from server.plan.past import field_shape, from_past_race, read_results
from tests.plan.english import said, source

ANY = saying("source-costs")
OWN = saying("source-own-runs", count=3, distance_whole_km=60, longest_h=3)
H = timedelta(hours=1)


class TestPastRace:
    """Riegel with climb."""

    def test_same_race_same_time(self) -> None:
        """Over its own distance and climb a past race predicts itself."""
        found = from_past_race(PastRace("spring race", 50.0, 1_500.0, 7 * H), 50.0, 1_500.0)
        assert found.total == 7 * H

    def test_riegel(self) -> None:
        """Twice the distance on the level takes 2^1.06 times as long (Riegel 1981, from memory)."""
        found = from_past_race(PastRace("spring race", 50.0, 0.0, 5 * H), 100.0, 0.0)
        assert found.total.total_seconds() == pytest.approx(5 * 3600 * 2**1.06, abs=1)

    def test_climb_counts(self) -> None:
        """A thousand metres more of ascent count as ten kilometres more."""
        flat = from_past_race(PastRace("x", 50.0, 0.0, 5 * H), 60.0, 0.0)
        steep = from_past_race(PastRace("x", 50.0, 0.0, 5 * H), 50.0, 1_000.0)
        assert steep.total == flat.total

    def test_further_is_less_sure(self) -> None:
        """The band widens with each doubling of distance, and it is said."""
        near = from_past_race(PastRace("x", 80.0, 0.0, 10 * H), 100.0, 0.0)
        far = from_past_race(PastRace("x", 21.1, 0.0, 2 * H), 100.0, 0.0)
        assert far.spread > near.spread
        assert near.notes == ()
        assert len(far.notes) == 2
        low, high = far.sides
        assert low < far.total < high

    def test_the_exponent_is_in_doubt_past_what_it_was_fitted_on(self) -> None:
        """Ten hours stretched to a day: hopeful, said to be so, and wider than the same stretch within four hours."""
        within = from_past_race(PastRace("x", 10.0, 0.0, 0.75 * H), 20.0, 0.0)
        beyond = from_past_race(PastRace("x", 80.0, 0.0, 10 * H), 160.0, 0.0)
        assert beyond.spread > within.spread
        assert [n.kind for n in beyond.notes] == ["short-race"]
        assert within.notes == ()

    @pytest.mark.parametrize(
        "race",
        [
            PastRace("x", 0.0, 0.0, H),
            PastRace("x", -5.0, 0.0, H),
            PastRace("x", float("nan"), 0.0, H),
            PastRace("x", 50.0, -10.0, 5 * H),
            PastRace("x", 50.0, 0.0, timedelta(0)),
            PastRace("x", 50.0, 0.0, -5 * H),
            PastRace("x", 50.0, 0.0, timedelta(minutes=50)),
            PastRace("x", 50.0, 0.0, 300 * H),
        ],
    )
    def test_no_race_at_all(self, race: PastRace) -> None:
        """What nobody ran so is refused, by name."""
        with pytest.raises(PlanError) as caught:
            from_past_race(race, 100.0, 0.0)
        assert "past race 'x'" in caught.value.field


class TestOdds:
    """An unlikely target is called so."""

    def test_even_at_the_estimate(self) -> None:
        """At the estimated time the odds are even; at its sides 10 and 90 %."""
        estimate = Estimate(29 * H, 0.1, ANY)
        assert odds_of(estimate, 29 * H) == pytest.approx(0.5)
        low, high = estimate.sides
        assert odds_of(estimate, low) == pytest.approx(0.1, abs=0.001)
        assert odds_of(estimate, high) == pytest.approx(0.9, abs=0.001)

    @pytest.mark.parametrize(
        ("odds", "words"), [(0.5, ""), (0.2, ""), (0.12, "1 in 8"), (0.001, "under 1 in 200")]
    )
    def test_verdict(self, odds: float, words: str) -> None:
        """Under one in five the odds are named; else nothing is said."""
        found = verdict(odds, 24 * H, OWN)
        assert (found is None) == (words == "")
        if found is not None:
            assert words in said([found])[0]
            assert "24:00 is unlikely by 3 of her own runs" in said([found])[0]


class TestPower:
    """The odds by her own runs."""

    runs = (RunPower("a", 9.0, 5.0), RunPower("b", 9.4, 4.0), RunPower("c", 8.0, 6.0))

    def test_less_power_is_likelier(self) -> None:
        """The less power a target needs, the better its odds; at what she can do they are even."""
        able = max(r.w_kg * (29.0 / r.hours) ** -0.07 for r in self.runs)
        odds = [odds_by_power(self.runs, p, 29 * H, 0.1) for p in (able * 0.8, able, able * 1.2)]
        assert odds == sorted(odds, reverse=True)
        assert odds[1] == pytest.approx(0.5)

    def test_an_unlikely_target_is_called_so(self, demo_course, make_event) -> None:
        """Runs of little power make 24 h unlikely, and the timetable's first notes say the odds; a race she ran that
        makes it likely says nothing."""
        event = make_event(Target(finish=24 * H))
        own = OwnPace(Limits(), "own data", 0.1, OWN, powers=self.runs)
        slow = Estimate(34 * H, 0.1, saying("source-past-race", name="spring race", time_s=9 * 3600))
        table = make_timetable(
            event, "maren", demo_course, own=own, estimates=(slow, Estimate(23 * H, 0.1, ANY))
        )
        assert "24:00 is unlikely by spring race" in said(table.notes)[0]
        assert "24:00 is unlikely by 3 of her own runs" in said(table.notes)[1]
        assert sum("unlikely" in n for n in said(table.notes)) == 2
        assert any("alone would give 34:00, between 29:54 and 38:39" in n for n in said(table.notes))


def results(
    rng: np.random.Generator, shares: tuple[float, ...], runners: int = 60, spread: float = 0.01
) -> str:
    """Others' split times of a known shape."""
    lines = ["place,runner,Point 3,p6,Point 9,Point 12"]
    for k in range(runners):
        total = 29 * 3600 * np.exp(rng.normal(0, 0.12))
        noisy = np.maximum.accumulate(np.array(shares) * np.exp(rng.normal(0, spread, 3)))
        cells = [
            f"{int(s * total) // 3600}:{int(s * total) // 60 % 60:02d}:{int(s * total) % 60:02d}"
            for s in noisy
        ]
        if k % 9 == 0:
            cells[1] = ""
        lines.append(",".join([str(k + 1), f"runner {k}", *cells, f"{total:.0f}" if k % 7 else ""]))
    return "\n".join(lines)


class TestResults:
    """Past results of this race."""

    shares = (0.18, 0.42, 0.70)

    def test_shape_is_found(self, make_event) -> None:
        """The field's known shares come back within half a per cent."""
        points = make_event(Target(finish=29 * H)).courses[0].points
        ids, times = read_results(results(np.random.default_rng(1), self.shares), points)
        shape = field_shape(ids, times, 29 * H)
        assert shape.points == ("p3", "p6", "p9", "p12")
        assert shape.shares == pytest.approx((*self.shares, 1.0), abs=0.005)

    def test_those_near_in_time_weigh_more(self, make_event) -> None:
        """Twenty finishers at the target outweigh thirty of another shape who came in a seventh later."""
        points = make_event(Target(finish=29 * H)).courses[0].points
        rows = [f"{0.40 * t:.0f},{t:.0f}" for t in np.linspace(28.8, 29.2, 20) * 3600]
        rows += [f"{0.45 * t:.0f},{t:.0f}" for t in np.linspace(32.9, 33.1, 30) * 3600]
        shape = field_shape(*read_results("\n".join(["p6,p12", *rows]), points), 29 * H)
        assert shape.shares[0] == pytest.approx(0.40, abs=0.001)

    def test_the_timetable_follows_it(self, demo_course, make_event) -> None:
        """Arrivals at the points of the results are the field's shares of the target, to the minute."""
        event = make_event(Target(finish=29 * H))
        ids, times = read_results(results(np.random.default_rng(1), self.shares), event.courses[0].points)
        shape = field_shape(ids, times, 29 * H)
        table = make_timetable(event, "maren", demo_course, own=shape.own_pace())
        for point, share in zip(shape.points, shape.shares, strict=True):
            assert table.row(point).arrive[Goal.B] == pytest.approx(29 * H * share, abs=timedelta(minutes=1))
        assert table.quality == "past results"
        assert "past results" in source(table.source)
        for goals in zip(Goal, list(Goal)[1:], strict=False):
            assert all(r.arrive[goals[0]] <= r.arrive[goals[1]] for r in table.rows)

    def test_far_from_the_field_is_said(self, make_event) -> None:
        """Where nobody finished near the target, the shape says whose it is."""
        points = make_event(Target(finish=29 * H)).courses[0].points
        ids, times = read_results(results(np.random.default_rng(1), self.shares), points)
        assert any("few have finished near" in n for n in said(field_shape(ids, times, 60 * H).notes))

    @given(order=st.permutations(list(range(40))))
    @settings(max_examples=20, deadline=None)
    def test_order_of_rows_does_not_matter(self, make_event, order: list[int]) -> None:
        """The same runners in any order make the same shape."""
        points = make_event(Target(finish=29 * H)).courses[0].points
        lines = results(np.random.default_rng(3), self.shares, 40).split("\n")
        mixed = "\n".join([lines[0], *(lines[1:][k] for k in order)])
        shapes = [field_shape(*read_results(t, points), 29 * H) for t in ("\n".join(lines), mixed)]
        assert shapes[0] == shapes[1]

    @pytest.mark.parametrize(
        ("text", "field", "what"),
        [
            ("", "results.csv", "no runners"),
            ("Point 3,Point 12\n", "results.csv", "no runners"),
            ("a,b\n1,2\n", "line 1", "no column is named after the finish"),
            ("Point 3,Pint 12\n6:00,29:00\n", "line 1", "no column"),
            ("Point 3,Point 12\n6:00,29.5 h\n", "line 2, Point 12", "no elapsed time"),
            ("Point 3,Point 12\nsix,29:00\n", "line 2, Point 3", "no elapsed time"),
            ("Point 3,Point 12\n6:75,29:00\n", "line 2, Point 3", "no elapsed time"),
            ("Point 3,Point 12\n-6:00,29:00\n", "line 2, Point 3", "no elapsed time"),
            ("Point 3,Point 12\n6:00,5:00\n", "line 2", "earlier time"),
            ("Point 3,Point 12\n0,29:00\n", "line 2", "earlier time"),
            ('Point 3,"Point 12\n6:00,29:00\n', "results.csv", "no CSV"),
        ],
    )
    def test_bad_results(self, make_event, text: str, field: str, what: str) -> None:
        """Each of these tables is refused with its line, column and remedy."""
        points = make_event(Target(finish=29 * H)).courses[0].points
        with pytest.raises(PlanError) as caught:
            read_results(text, points)
        assert field in caught.value.field
        assert what in str(caught.value.what)
        assert caught.value.remedy

    def test_a_typing_mistake_gets_its_nearest_name(self, make_event) -> None:
        """A header that nearly names a point is asked about."""
        points = make_event(Target(finish=29 * H)).courses[0].points
        with pytest.raises(PlanError, match="is 'Pint 12' meant for 'point 12'"):
            read_results("Point 3,Pint 12\n6:00,29:00\n", points)

    def test_too_few(self, make_event) -> None:
        """Three finishers are no field."""
        points = make_event(Target(finish=29 * H)).courses[0].points
        text = "Point 3,Point 12\n" + "\n".join("6:00,29:00" for _ in range(3))
        with pytest.raises(PlanError, match="too few"):
            field_shape(*read_results(text, points), 29 * H)

    def test_results_of_another_course_are_refused(self, demo_course, make_event) -> None:
        """A shape that leaves no time for a leg is refused with the point."""
        event = make_event(Target(finish=29 * H))
        lines = ["Point 3,p6,Point 12"] + [f"5:00,5:{10 + k % 5}:00,29:{k % 60:02d}:00" for k in range(20)]
        ids, times = read_results("\n".join(lines), event.courses[0].points)
        with pytest.raises(PlanError, match="Point 6"):
            make_timetable(event, "maren", demo_course, own=field_shape(ids, times, 29 * H).own_pace())
