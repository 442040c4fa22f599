"""Fuel: published ranges (source in server/plan/fuel.py), amounts that add up, and what is never said."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from server.event.model import Eaten, FuelPlan, Goal, PointKind, Target
from server.plan import PlanError, make_timetable
from server.plan.fuel import CAUTIONS, RANGES, fuel_of, fuel_table, fuel_told
from server.sentences import keys, languages
from tests.plan.english import said as in_words

PLAN = FuelPlan("p0", "porridge bar every 40 min", 250.0, 45.0, 500.0, 400.0)


@pytest.fixture(scope="module")
def table(demo_course, make_event):
    """The demo's course in 29 h."""
    return make_timetable(make_event(Target(finish=timedelta(hours=29))), "maren", demo_course)


@pytest.fixture(scope="module")
def points(make_event):
    """Its points."""
    return make_event(Target(finish=timedelta(hours=29))).courses[0].points


@pytest.mark.parametrize(
    ("name", "low", "high", "source"),
    [
        ("kcal_per_h", 150, 400, "Tiller"),
        ("carbohydrate_g_per_h", 30, 50, "Tiller"),
        ("fluid_ml_per_h", 450, 750, "Tiller"),
    ],
)
def test_ranges_are_the_published_ones(name: str, low: float, high: float, source: str) -> None:
    """Tiller et al. 2019: 150 to 400 kcal/h, 30 to 50 g/h, 450 to 750 ml/h; the source stands beside them."""
    found = next(r for r in RANGES if r.name == name)
    assert (found.low, found.high) == (low, high)
    assert source in found.source


def test_legs_add_up_to_the_hours(table, points) -> None:
    """What is carried on all legs is the hourly amount times the hours on the move, rounded up a leg."""
    found = fuel_table([PLAN], points, table)
    moving = table.rows[-1].arrive[Goal.B] - sum((r.stop for r in table.rows), timedelta(0))
    kcal = sum(c.kcal or 0 for c in found.carry)
    assert 0 <= kcal - 250.0 * moving.total_seconds() / 3600.0 < len(found.carry)
    assert sum((c.takes for c in found.carry), timedelta(0)) == moving


def test_bottles_are_for_the_slow_day(table, points) -> None:
    """Bottles of half a litre suffice for goal C, not only for the target."""
    for c in fuel_table([PLAN], points, table).carry:
        assert c.bottles is not None
        assert c.bottles * 500 >= 500.0 * c.takes_at_most.total_seconds() / 3600.0 - 1e-6
        assert (c.bottles - 1) * 500 < 500.0 * c.takes_at_most.total_seconds() / 3600.0


def test_a_point_without_water_is_no_refill(table, points) -> None:
    """Past a point that is only a cut-off she carries through: one span, both legs' hours."""
    bare = tuple(replace(p, kinds=frozenset({PointKind.CUT_OFF})) if p.id == "p4" else p for p in points)
    spans = [(c.from_point, c.to_point) for c in fuel_table([PLAN], bare, table).carry]
    assert ("p3", "p5") in spans
    assert "p4" not in [a for a, _ in spans]


def test_drop_bags_last_until_the_next(table, points) -> None:
    """Each bag holds what is eaten until the next bag on a slow day; together they hold it all."""
    bagged = tuple(
        replace(p, kinds=p.kinds | {PointKind.DROP_BAG}) if p.id in {"p5", "p9"} else p for p in points
    )
    found = fuel_table([PLAN], bagged, table)
    assert [b.point for b in found.bags] == ["p0", "p5", "p9"]
    assert PLAN.kcal_per_h is not None
    slow = sum(c.takes_at_most.total_seconds() / 3600.0 * PLAN.kcal_per_h for c in found.carry)
    assert sum(b.kcal or 0 for b in found.bags) == pytest.approx(slow, abs=16)


def test_a_plan_holds_until_the_next_one(table, points) -> None:
    """From the point named on, the new amounts count."""
    later = replace(PLAN, from_point="p6", kcal_per_h=200.0, words="soup")
    found = {c.from_point: c for c in fuel_table([PLAN, later], points, table).carry}
    assert found["p5"].words == "porridge bar every 40 min"
    assert found["p6"].words == "soup"


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"fluid_ml_per_h": 900.0}, "above"),
        ({"fluid_ml_per_h": 300.0}, None),
        ({"fluid_ml_per_h": 0.0}, None),
        ({"kcal_per_h": 500.0}, "above"),
        ({"kcal_per_h": 100.0}, "below"),
        ({"carbohydrate_g_per_h": 80.0}, None),
        ({"carbohydrate_g_per_h": 95.0}, "above"),
        ({"carbohydrate_g_per_h": 20.0}, "below"),
        ({"sodium_mg_per_h": 0.0}, None),
    ],
)
def test_warnings(table, points, change: dict[str, float], said: str | None) -> None:
    """Fluid is warned about above its range only: nobody is told to drink more."""
    found = fuel_table([replace(PLAN, **change)], points, table, bottles=9).warnings
    found = tuple(in_words(found))
    assert (len(found) == 1 and said in found[0]) if said else found == ()


def test_cautions_defer_to_medics() -> None:
    """The cautions say drink to thirst and leave treatment to medics; no sentence tells to treat."""
    text = " ".join(in_words(CAUTIONS))
    assert "thirst" in text
    assert "medic" in text
    for word in ("take salt", "ibuprofen", "paracetamol", "dose"):
        assert word not in text.lower()


def test_a_plan_from_nowhere(table, points) -> None:
    """A point that is not there is refused with its field; amounts are the event file's to refuse."""
    with pytest.raises(PlanError) as caught:
        fuel_table([replace(PLAN, from_point="nowhere")], points, table)
    assert "runners.fuel[0].from" in caught.value.field


def test_whatever_is_outside_comes_with_what_to_do(table, points, make_event) -> None:
    """Each kind of doubt about her fuel has its remedy, in every language."""
    plans = (
        FuelPlan("p0", "", kcal_per_h=100, carbohydrate_g_per_h=60, fluid_ml_per_h=900, eats=(GEL,)),
        FuelPlan("p2", "", eats=(replace(GEL, caffeine_mg=250),)),
    )
    runner = replace(
        make_event(Target(finish=timedelta(hours=29))).runners[0], fuel=plans, bottles=1,
        trained_carbohydrate_g_per_h=40,
    )  # fmt: skip
    told = fuel_told(runner, points, table)
    assert {t.what.kind for t in told} == {
        "fuel-below", "fuel-above", "fuel-untrained", "fuel-apart", "fuel-caffeine-dose", "fuel-caffeine-day", "fuel-dry",
    }  # fmt: skip
    assert all(f"plan-{t.remedy.kind}" in keys(language) for t in told for language in languages())


def test_nothing_planned_nothing_claimed(table, points) -> None:
    """Without a fuel plan there are legs with times and no amounts."""
    found = fuel_table([], points, table)
    assert all(c.kcal is None and c.bottles is None for c in found.carry)


GEL = Eaten("gel", 1.0, kcal=100, carbohydrate_g=25, sodium_mg=50, caffeine_mg=50)
BAR = Eaten("bar", 0.5, kcal=200, carbohydrate_g=40)


def test_things_make_the_figures_that_are_not_written(table, points) -> None:
    """One gel and half a bar an hour are 45 g of carbohydrate; pieces are counted for the slow day, in every bag."""
    found = fuel_table([FuelPlan("p0", "", eats=(GEL, BAR))], points, table)
    first = found.carry[0]
    hours, slow = (t / timedelta(hours=1) for t in (first.takes, first.takes_at_most))
    assert first.carbohydrate_g == pytest.approx(45 * hours, abs=1)
    assert first.caffeine_mg == pytest.approx(50 * hours, abs=1)
    gels, bars = (dict(first.things)[n] for n in ("gel", "bar"))
    assert 0 <= gels - slow < 1
    assert 0 <= bars - slow / 2 < 1
    assert sum(dict(b.things)["gel"] for b in found.bags) >= sum(
        c.takes_at_most / timedelta(hours=1) for c in found.carry
    )
    written = fuel_table([FuelPlan("p0", "", carbohydrate_g_per_h=44, eats=(GEL, BAR))], points, table)
    assert written.carry[0].carbohydrate_g == pytest.approx(44 * hours, abs=1)


@pytest.mark.parametrize(
    ("plan", "trained", "bottles", "kinds"),
    [
        (FuelPlan("p0", "", carbohydrate_g_per_h=80), 60.0, 9, ["fuel-untrained"]),
        (FuelPlan("p0", "", carbohydrate_g_per_h=60), 60.0, 9, []),
        (FuelPlan("p0", "", carbohydrate_g_per_h=60, eats=(GEL, BAR)), None, 9, ["fuel-apart", "fuel-caffeine-day"]),
        (FuelPlan("p0", "", eats=(replace(GEL, per_h=0.1, caffeine_mg=250),)), None, 9,
         ["fuel-below", "fuel-below", "fuel-caffeine-dose", "fuel-caffeine-day"]),
        (FuelPlan("p0", "", caffeine_mg_per_h=15), None, 9, []),  # 360 mg in 24 hours
        (FuelPlan("p0", "", caffeine_mg_per_h=20), None, 9, ["fuel-caffeine-day"]),
        (FuelPlan("p0", "", fluid_ml_per_h=500), None, 9, []),
    ],
)  # fmt: skip
def test_more_than_was_trained_or_is_published(
    table, points, plan, trained, bottles: int, kinds: list[str]
) -> None:
    """Her own training and EFSA 2015 (200 mg at once, 400 mg a day) beside the ranges of the ISSN."""
    found = fuel_table([plan], points, table, bottles=bottles, trained_g_per_h=trained)
    assert [n.kind for n in found.warnings] == kinds


def test_too_much_caffeine_says_where_it_is_reached(table, points) -> None:
    """20 mg an hour of running are 400 mg after 20 hours: on the leg on which goal B is then."""
    (told,) = fuel_table([FuelPlan("p0", "", caffeine_mg_per_h=20)], points, table).warnings
    at, moved = 0, timedelta(0)
    while moved < timedelta(hours=20):
        here, there = table.rows[at : at + 2]
        moved, at = moved + there.arrive[Goal.B] - here.leave[Goal.B], at + 1
    names = {p.id: p.name for p in points}
    here, there = (names[table.rows[k].point] for k in (at - 1, at))
    assert f"between {here} and {there}" in next(iter(in_words([told])))


def test_bottles_that_do_not_last_ask_where_water_is(table, points, make_event) -> None:
    """More bottles to the next water than she carries: asked about with the hours; what she says she carries counts."""
    dry = tuple(
        replace(p, kinds=frozenset({PointKind.CUT_OFF}), access=None) if p.id == "p4" else p for p in points
    )
    plan = FuelPlan("p0", "", fluid_ml_per_h=700)
    (told, *_) = [n for n in fuel_table([plan], dry, table, bottles=3).warnings if n.kind == "fuel-dry"]
    assert "where is water on the way" in next(iter(in_words([told])))
    runner = replace(make_event(Target(finish=timedelta(hours=29))).runners[0], fuel=(plan,))
    many = fuel_of(replace(runner, bottles=20), dry, table)
    assert [n.kind for n in many.warnings] == []
    assert "fuel-dry" in [n.kind for n in fuel_of(replace(runner, bottles=2), dry, table).warnings]


def test_the_remedy_names_the_bottles_that_are_needed(table, points, make_event) -> None:
    """As many as the longest dry leg takes, in every line."""
    (runner,) = make_event(Target(finish=timedelta(hours=29))).runners
    runner = replace(runner, fuel=(replace(PLAN, fluid_ml_per_h=900.0),), bottles=1)
    told = [t for t in fuel_told(runner, points, table) if t.what.kind == "fuel-dry"]
    most = max(t.what.number("count") for t in told)
    assert {t.remedy.number("count") for t in told} == {most}
