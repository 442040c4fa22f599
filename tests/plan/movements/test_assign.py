"""The best assignment of cars and people: as good as a search through all of them."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator
from itertools import product
from typing import Any

import pytest

from server.event.model import Event, MeetingPlan
from server.plan.movements import assign, crew_plan
from server.plan.movements.assign import Helper, Task, ToAssign, Vehicle, best_assignment, worth


def every(question: ToAssign) -> Iterator[tuple[dict[str, list[str]], dict[str, str]]]:
    """Each way of giving each meeting to a car or none, and each person to a car or none."""
    cars = [v.id for v in question.vehicles]
    for served in product([None, *cars], repeat=len(question.tasks)):
        routes: dict[str, list[str]] = {c: [] for c in cars}
        for task, car in zip(question.tasks, served, strict=True):
            if car is not None:
                routes[car].append(task.id)
        for seated in product([None, *cars], repeat=len(question.helpers)):
            people = {h.id: c for h, c in zip(question.helpers, seated, strict=True) if c is not None}
            yield routes, people


def at_random(rng: random.Random) -> ToAssign:
    """A small question with every kind of limit."""
    names = ["t0", "t1", "t2", "t3"][: rng.randint(2, 4)]
    cars = ["a", "b"]
    who = ["x", "y", "z"][: rng.randint(1, 3)]
    tasks = tuple(
        Task(
            t,
            rng.choice(["r", "s"]),
            rng.choice([1.0, 2.0]),
            frozenset(w for w in who if rng.random() < 0.15),
            rng.choice([None, None, frozenset({"a"})]),
            rng.choice([None, None, 1]),
        )
        for t in names
    )
    odds: dict[tuple[str, str | None, str], float] = {}
    for car in cars:
        for j, t in enumerate(names):
            for before in [None, *names[:j]]:
                if rng.random() < 0.85:
                    odds[car, before, t] = round(rng.uniform(0.05, 1.0), 3)
    helpers = tuple(
        Helper(w, rng.random() < 0.7, rng.choice([None, None, frozenset({"b"})]), rng.choice([None, *cars]))
        for w in who
    )
    vehicles = tuple(Vehicle(c, rng.randint(1, 3)) for c in cars)
    return ToAssign(tasks, vehicles, helpers, odds, rng.choice([None, 1, 2]))


@pytest.mark.parametrize("seed", range(60))
def test_as_good_as_trying_everything(seed: int) -> None:
    """HiGHS finds an assignment that is allowed and worth what the best of all is."""
    question = at_random(random.Random(seed))
    best = max(w for routes, people in every(question) if (w := worth(question, routes, people)) is not None)
    found = best_assignment(question)
    assert found.worth == pytest.approx(best, abs=1e-7)
    again = worth(question, dict(found.routes), dict(found.people))
    assert again == pytest.approx(found.worth)


def test_two_cars_share_what_one_can_not_do() -> None:
    """Two meetings 10% of both for one car, 100% each alone: two cars with a driver each take one each."""
    odds = {("a", None, "t"): 1.0, ("a", None, "u"): 1.0, ("b", None, "u"): 1.0, ("a", "t", "u"): 0.1}
    helpers = (Helper("x", True), Helper("y", True))
    question = ToAssign((Task("t", "r"), Task("u", "r")), (Vehicle("a", 4), Vehicle("b", 4)), helpers, odds)
    found = best_assignment(question)
    assert (found.car_to("t"), found.car_to("u")) == ("a", "b")
    one = best_assignment(ToAssign(question.tasks, question.vehicles, helpers, odds, vehicles_max=1))
    assert one.car_to("u") == "a"
    alone = best_assignment(ToAssign(question.tasks, question.vehicles, (Helper("x", True),), odds))
    assert sum(len(t) for _, t in alone.routes) == 2
    assert alone.worth == pytest.approx(1.1, abs=1e-4)


def test_a_search_that_finds_nothing_in_time_is_only_said(
    event_of: Callable[..., Event], view: Callable[..., Any], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A machine too slow for the solver's seconds costs the offer of other cars, never the plan."""
    meetings = (
        MeetingPlan("m1", "mill", "maren", ("ana",), "van"),
        MeetingPlan("m2", "chapel", "maren", ("ana",), "van"),
    )
    tight = view(minutes=(150.0, 160.0, 480.0, 640.0))
    event = event_of(meetings=meetings)
    monkeypatch.setattr(assign, "SECONDS_MOST", 0.0)
    plan = crew_plan(event, {}, {"maren": tight})
    assert [n.kind for n in plan.notes if n.kind == "move-not-searched"] == ["move-not-searched"]
    assert plan.visits == crew_plan(event, {}, {"maren": tight}, other_cars=False).visits


def test_a_search_cut_short_says_that_there_may_be_better(
    event_of: Callable[..., Event], view: Callable[..., Any], monkeypatch: pytest.MonkeyPatch
) -> None:
    """An answer that the solver could not prove in time is offered, with a word that not everything was searched; one
    that it proved needs none."""
    meetings = (
        MeetingPlan("m1", "mill", "maren", ("ana",), "van"),
        MeetingPlan("m2", "chapel", "maren", ("ana",), "van"),
    )
    tight, event = view(minutes=(150.0, 160.0, 480.0, 640.0)), event_of(meetings=meetings)
    whole = crew_plan(event, {}, {"maren": tight})
    real = assign.milp

    def out_of_time(*given: Any, **more: Any) -> Any:
        found = real(*given, **more)
        found.status = 1
        return found

    monkeypatch.setattr(assign, "milp", out_of_time)
    part = crew_plan(event, {}, {"maren": tight})
    assert part.offers == whole.offers
    assert "move-searched-in-part" in {n.kind for n in part.notes}
    assert "move-searched-in-part" not in {n.kind for n in whole.notes}


@pytest.mark.parametrize("vehicles_max", [None, 2])
def test_eight_cars_and_twelve_meetings_are_searched_to_the_end(
    vehicles_max: int | None, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Two runners, eight cars, ten people, twelve meetings with ways between nearly all: the answer is proved the best.
    The test waits as long as a slow machine needs."""
    monkeypatch.setattr(assign, "SECONDS_MOST", 300.0)
    rng = random.Random(2)
    tasks = tuple(Task(f"t{i}", f"r{i % 2}", rng.choice([1.0, 2.0])) for i in range(12))
    cars = tuple(Vehicle(f"c{i}", rng.choice([2, 4, 5])) for i in range(8))
    people = tuple(Helper(f"h{i}", i < 8, None, f"c{i % 8}") for i in range(10))
    odds = {
        (c.id, before, t.id): round(rng.random(), 2)
        for c in cars
        for j, t in enumerate(tasks)
        for before in (None, *(x.id for x in tasks[:j]))
        if rng.random() < 0.85
    }
    found = best_assignment(ToAssign(tasks, cars, people, odds, vehicles_max))
    assert found.proven
    assert found.worth > 10.0


def test_nothing_to_do() -> None:
    """No ways at all: nobody goes anywhere."""
    assert best_assignment(ToAssign((Task("t", "r"),), (Vehicle("a", 4),), (), {})).worth == 0.0
