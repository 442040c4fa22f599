"""What must hold on any night: asked when it says, twice or once, restarted or not, the same is owed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from server.event.model import NoticeChoice
from server.facts.entry import Kind, Retired, Source
from server.watch.crew_whereabouts import on_road_until
from server.watch.evaluate import evaluate, evaluate_event, evaluate_runner
from server.watch.notice import (
    AlarmNewsValues,
    AlarmValues,
    Made,
    Notice,
    NoticeKind,
    StandDownValues,
    Urgency,
)
from server.watch.runner_context import Sight
from server.watch.table import TABLE, may_be_told

Act = tuple[int, str, str, str]
POINTS = ("mill", "chapel", "moss", "ridge", "barn", "finish")
WORDS = (
    "in",
    "in",
    "in",
    "out",
    "out",
    "not yet",
    "help",
    "retired",
    "in hand",
    "race control",
    "stand-down",
    "sweep",
    "held",
    "released",
    "undo",
    "answer",
    "answer",
    "answer",
    "cannot",
    "there",
    "left",
    "closed",
    "opened",
    "cut-off",
    "guess",
    "failed",
)
acts = st.lists(
    st.tuples(
        st.integers(60, 380),
        st.sampled_from(WORDS),
        st.sampled_from(POINTS),
        st.sampled_from(("ana", "vera", "sasha", "lena")),
    ),
    max_size=14,
)
FAST = settings(
    max_examples=5,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)


def act(night: Any, at: datetime, what: str, point: str, who: str) -> None:
    """Does one thing that happens in a night."""
    kinds = {
        "in": (Kind.IN, {}),
        "out": (Kind.OUT, {}),
        "not yet": (Kind.NOT_HERE_YET, {}),
        "help": (Kind.ASKED_FOR_HELP, {}),
        "retired": (Kind.RETIRED, {"how": Retired.OWN_CHOICE}),
        "in hand": (Kind.IN_HAND, {}),
        "race control": (Kind.RACE_CONTROL_TOLD, {}),
        "stand-down": (Kind.STAND_DOWN, {"point": None}),
        "sweep": (Kind.SWEEP_THROUGH, {}),
        "held": (Kind.HELD, {"runner": None, "point": None}),
        "released": (Kind.RELEASED, {"runner": None, "point": None}),
        "there": (Kind.CREW_THERE, {"runner": None}),
        "left": (Kind.CREW_LEFT, {"runner": None}),
        "closed": (Kind.ACCESS_CLOSED, {"runner": None}),
        "opened": (Kind.ACCESS_OPENED, {"runner": None}),
        "cut-off": (Kind.CUT_OFF_MOVED, {"runner": None, "until": at + timedelta(hours=2), "edge": "in"}),
        "guess": (Kind.OUT, {"unconfirmed": True, "doubt": "guessed"}),
    }
    if what in kinds:
        kind, more = kinds[what]
        night.report(kind, at, who, **({"point": point, "source": Source.VOLUNTEER} | more))
    elif what == "undo" and night.entries:
        night.report(Kind.TAKEN_BACK, at, who, about=night.entries[-1].id)
    elif what == "failed" and night.made:
        night.made[-1] = replace(night.made[-1], failed=True, sent_at=None)
    elif what in ("answer", "cannot"):
        waiting = [m for m in night.made if m.notice.needs_answer and m.answered_at is None]
        if waiting:
            key = waiting[-1].notice.key
            night.answer(key.kind, key.person, "i have it" if what == "answer" else "cannot", at)


def script(night: Any, plan: list[Act], start: datetime) -> dict[str, Callable[[Any], object]]:
    """The acts as a script, several in one minute one after another."""
    by_minute: dict[int, list[Act]] = {}
    for a in plan:
        by_minute.setdefault(a[0], []).append(a)
    out: dict[str, Callable[[Any], object]] = {}
    for minute, several in by_minute.items():
        when = start + timedelta(minutes=minute)

        def play(n: Any, when: datetime = when, several: list[Act] = several) -> None:
            for _, what, point, who in several:
                act(n, when, what, point, who)

        out[f"{15 + minute // 60}:{minute % 60:02d}"] = play
    return out


def quiet(night: Any) -> None:
    """Some sleep, some want to hear little."""
    people = {
        "vera": {"quiet_from": "22:00", "quiet_to": "06:00"},
        "jonas": {"notices": NoticeChoice.ALARMS},
        "sasha": {"quiet_from": "21:30", "quiet_to": "07:00", "notices": NoticeChoice.MINE},
        "ana": {"quiet_from": "19:00", "quiet_to": "20:15", "time_zone": "Europe/Berlin"},
    }
    night.event = replace(
        night.event, people=tuple(replace(p, **people.get(p.id, {})) for p in night.event.people)
    )


def played(
    new_night: Any, at: Any, plan: list[Act], *, lazily: bool
) -> tuple[Any, list[tuple[datetime, Notice]]]:
    """A night from five in the afternoon to half past nine, every minute or only when asked to."""
    night = new_night()
    quiet(night)
    log = night.run("17:00", "21:30", script(night, plan, at("15:00")), lazily=lazily)
    return night, [(t, n) for t, n in log if t <= at("21:30")]


@settings(FAST, max_examples=4)
@given(acts)
def test_asking_only_when_told_to_owes_the_same(new_night: Any, at: Any, plan: list[Act]) -> None:
    """Evaluating only at `ask_again` and when something happens owes what evaluating every minute owes, in
    the same minute."""
    _, each_minute = played(new_night, at, plan, lazily=False)
    _, when_asked = played(new_night, at, plan, lazily=True)
    assert [(t, n.key.text(), n.occasion) for t, n in when_asked] == [
        (t, n.key.text(), n.occasion) for t, n in each_minute
    ]


@FAST
@given(acts)
def test_what_any_night_must_hold(new_night: Any, at: Any, plan: list[Act]) -> None:
    """Twice owes nothing new; a restart owes the same; the order of what was made does not matter; keys are
    unique; nobody is told what their part may not know; nobody at the wheel is asked."""
    night = new_night()
    quiet(night)
    todo = script(night, plan, at("15:00"))
    moments = sorted({*(at(t) for t in todo), *(at("15:00") + timedelta(minutes=35 * i) for i in range(20))})
    acts_at = {at(t): a for t, a in todo.items()}
    for now in moments:
        if now in acts_at:
            acts_at[now](night)
        before = night.situation(now)
        first, again = evaluate(before, now), evaluate(night.situation(now), now)
        assert first == again
        runner, event = evaluate_runner(before, "maren", now), evaluate_event(before, now)
        assert first.owed == (*runner.owed, *event.owed)
        for n in first.owed:
            assert may_be_told(night.event, n.key.runner, n.key.person, n.key.kind)
            sight = Sight(
                before, now, night.event.runner("maren"), before.state.runner("maren"), (), before.made
            )
            assert not (n.needs_answer and on_road_until(sight, n.key.person))
        night.tick(now)
        after = night.situation(now)
        assert evaluate(after, now).owed == ()
        shuffled = replace(after, made=tuple(sorted(after.made, key=lambda m: (m.made_at, m.short))))
        assert evaluate(shuffled, now).owed == ()
        assert first.ask_again is None or first.ask_again > now
    keys = [m.notice.key.text() for m in night.made]
    assert len(keys) == len(set(keys))


@FAST
@given(acts)
def test_every_alarm_ends_in_one_stand_down_to_each_told(new_night: Any, at: Any, plan: list[Act]) -> None:
    """Whoever was told of an alarm that is over was told once that it is, and nobody else was."""
    night, _ = played(new_night, at, plan, lazily=True)
    told: dict[str, set[str]] = {}
    over: dict[str, list[str]] = {}
    for m in night.made:
        values = m.notice.values
        if isinstance(values, AlarmValues | AlarmNewsValues):
            told.setdefault(values.alarm, set()).add(m.notice.key.person)
        elif isinstance(values, StandDownValues):
            over.setdefault(values.alarm, []).append(m.notice.key.person)
    for alarm, people in over.items():
        assert sorted(people) == sorted(told[alarm])


@FAST
@given(acts)
def test_no_alarm_is_held_back(new_night: Any, at: Any, plan: list[Act]) -> None:
    """With and without quiet hours and choices the same alarms go to the same people."""
    loud, still = new_night(), new_night()
    quiet(still)
    for night in (loud, still):
        todo = [a for a in plan if a[1] not in ("answer", "cannot", "undo", "failed")]
        night.run("17:00", "22:00", script(night, todo, at("15:00")), lazily=True)

    def alarms(made: list[Made]) -> set[str]:
        loud = (m.notice for m in made if m.made_at <= at("22:00"))
        return {n.key.text() for n in loud if n.urgency is Urgency.ALARM}

    assert alarms(loud.made) == alarms(still.made)


def test_a_copy_owes_what_the_original_owed(night: Any, at: Any) -> None:
    """A restored backup is the same situation, so it owes the same, in the same words' values."""
    night.tick("15:05")
    night.report(Kind.IN, "16:40", "lena", point="mill")
    now = at("16:40")
    one = night.situation(now)
    two = replace(one, made=tuple(replace(m) for m in one.made))
    assert evaluate(one, now) == evaluate(two, now)
    assert [n.key.kind for n in evaluate(one, now).owed] != []


def test_an_unknown_runner_is_an_error(night: Any, at: Any) -> None:
    """Asked about somebody who is not in the event, it says so rather than owing nothing."""
    with pytest.raises(KeyError):
        evaluate_runner(night.situation(at("15:00")), "nobody", at("15:00"))


def test_kinds_not_seen_in_any_night_are_none() -> None:
    """The list of acts above is meant to reach every alarm kind."""
    assert {NoticeKind.OVERDUE, NoticeKind.SWEEP, NoticeKind.ASKED_FOR_HELP} <= set(TABLE)
