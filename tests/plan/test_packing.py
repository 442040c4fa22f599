"""Packing: each thing in a bag or a car, the race's list ticked by what is really in one, and dates to do things by."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from server.event.model import (
    CrewAccess,
    DropBag,
    Eaten,
    Event,
    FuelPlan,
    KitItem,
    MeetingPlan,
    Prepare,
    Target,
)
from server.plan import make_timetable
from server.plan.packing import kit_wrong, loads, required, to_do

JACKET = KitItem("orange rain jacket", grams=250)


@pytest.fixture
def event(make_event, points_at) -> Event:
    """A race over four points; she carries a jacket, has a bag at the second and meets a car at the third."""
    points = tuple(replace(p, access=CrewAccess()) for p in points_at((0.0, 10.0, 20.0, 30.0)))
    made = make_event(Target(finish=timedelta(hours=6)), points=points)
    bag = DropBag("p1", (KitItem("dry socks"),))
    runner = replace(made.runners[0], carries=(JACKET,), drop_bags=(bag,))
    kit = (KitItem("head torch", hours=8, car="van"), KitItem("poles"), KitItem("wet cap", take_back=True))
    meeting = MeetingPlan("m", "p2", runner.id, ("ana",), kit=kit)
    return replace(made, runners=(runner,), meetings=(meeting,))


def test_each_thing_is_in_one_bag_or_car(event: Event) -> None:
    """Her pack, the bag, the car; what nobody said a car for goes with the crew; what is taken back is not packed."""
    found = loads(event, "maren")
    assert [(x.bag, x.car, [p.item.name for p in x.things]) for x in found] == [
        ("", "", ["orange rain jacket"]),
        ("p1", "", ["dry socks"]),
        ("", "van", ["head torch"]),
        ("", "~ana", ["poles"]),
    ]
    assert (found[0].grams, found[0].unweighed, found[2].unweighed) == (250, 0, 1)


@pytest.mark.parametrize(
    ("wanted", "thing", "point"),
    [
        ("rain jacket", "orange rain jacket", ""),
        ("waterproof", "orange rain jacket", ""),  # by what it is for
        ("Rain  Jacket!", "orange rain jacket", ""),
        ("head torch", "head torch", "p2"),
        ("spare head torch", None, ""),  # one torch is not two
        ("two head torches", None, ""),
        ("jacket potato", None, ""),
        ("map", None, ""),
    ],
)
def test_the_race_s_list_is_ticked_by_what_is_in_hers(
    event: Event, wanted: str, thing: str | None, point: str
) -> None:
    """Every word of the race's has one like it in her thing, or both are for the same need."""
    rules = replace(event.rules, required_kit=(wanted,))
    (found,) = required(replace(event, rules=rules), "maren")
    assert (found.thing, found.point) == (thing, point)


def test_what_is_missing_from_the_start_is_warned_about(event: Event, bare_course) -> None:
    """In no list, or only from a later point: both are told with what to write."""
    rules = replace(event.rules, required_kit=("rain jacket", "whistle", "head torch"))
    asked = replace(event, rules=rules)
    kinds = [t.what.kind for t in kit_wrong(asked, make_timetable(asked, "maren", bare_course), bare_course)]
    assert kinds.count("kit-required") == 1
    assert kinds.count("kit-required-late") == 1


def test_to_do_has_dates(event: Event) -> None:
    """What the file asks for, lights tested and charged unasked, food bought; in the order of the dates."""
    runner = event.runners[0]
    fuel = (
        FuelPlan("p0", "", eats=(Eaten("gel", 1.0), Eaten("bar", 0.5))),
        FuelPlan("p1", "", eats=(Eaten("gel", 2.0),)),
    )
    carries = (replace(JACKET, prepare=(Prepare.BUY, Prepare.TEST)),)
    start = runner.start.date()
    asked = replace(event, runners=(replace(runner, fuel=fuel, carries=carries),))
    assert [(t.what, (start - t.by).days, t.things) for t in to_do(asked, "maren")] == [
        (Prepare.BUY, 14, ("orange rain jacket", "gel", "bar")),
        (Prepare.TEST, 7, ("orange rain jacket", "head torch")),
        (Prepare.CHARGE, 1, ("head torch",)),
    ]
    assert isinstance(to_do(asked, "maren")[0].by, date)


@pytest.mark.parametrize(
    ("given", "left_at"),
    [
        ((), "p2"),
        ((KitItem("Head torch, charged"),), None),  # another at the same stop
        ((KitItem("head torch battery"),), "p2"),  # a battery is no torch
        ((KitItem("spare head torch"),), "p2"),  # the spare is asked for besides
    ],
)
def test_required_things_that_crew_take_away(
    event: Event, level_course, given: tuple[KitItem, ...], left_at: str | None
) -> None:
    """The race asks for it all the way: a torch that crew take by day is missing until the finish."""
    torch = KitItem("head torch", hours=8)
    runner = replace(event.runners[0], carries=(torch,), drop_bags=())
    meeting = replace(event.meetings[0], kit=(*given, replace(torch, take_back=True)))
    rules = replace(event.rules, required_kit=("head torch",))
    event = replace(event, runners=(runner,), meetings=(meeting,), rules=rules)
    told = kit_wrong(event, make_timetable(event, "maren", level_course), level_course)
    taken = [t for t in told if t.what.kind == "kit-required-taken"]
    assert bool(taken) is (left_at is not None)


@pytest.mark.parametrize(
    ("carried", "taken", "told"),
    [
        ("whistle", "poles", True),  # handed to her at the next stop
        ("carbon poles", "poles", False),
        ("whistle", "wet socks", False),  # what she wears stands in no list
        ("whistle", "head torch", True),  # a light is in a list, or she has none
        ("head torch", "head torch", False),
    ],
)
def test_crew_take_back_what_she_has_not_got(
    event: Event, level_course, carried: str, taken: str, told: bool
) -> None:
    """Taken from her before she has it: crew would look for it on her, and she for it later."""
    runner = replace(event.runners[0], carries=(KitItem(carried),), drop_bags=())
    early = replace(event.meetings[0], id="e", point="p1", kit=(KitItem(taken, take_back=True),))
    event = replace(event, runners=(runner,), meetings=(early, event.meetings[0]))
    found = kit_wrong(event, make_timetable(event, "maren", level_course), level_course)
    assert ("kit-taken-none" in [t.what.kind for t in found]) is told


def test_two_torches_are_met_by_the_second(event: Event) -> None:
    """From where she has both; a line that says two of itself is enough."""
    asks = replace(event, rules=replace(event.rules, required_kit=("two head torches",)))
    (runner,) = asks.runners
    one = replace(asks, runners=(replace(runner, carries=(KitItem("waist lamp"),)),))
    assert [(r.thing, r.point) for r in required(one, "maren")] == [("head torch", "p2")]
    both = replace(asks, runners=(replace(runner, carries=(KitItem("two head torches"),)),))
    assert [(r.thing, r.point) for r in required(both, "maren")] == [("two head torches", "")]
