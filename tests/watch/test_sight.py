"""What every rule looks at: the grid, what was heard last, whether she is held or with somebody, who runs with her."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import PartKind
from server.facts.entry import Fix, Kind, Source
from server.facts.state import Interval
from server.watch.escalation import _said_km
from server.watch.notice import Made, Notice, NoticeKey, NoticeKind, TestAlarmValues, Urgency
from server.watch.runner_context import (
    ceil_to,
    fact_at,
    floor_to,
    on_grid,
    seen_at,
    seen_by_somebody,
    stewards,
    tried,
    with_us,
)
from server.watch.silence import blind, with_her
from tests.watch.conftest import START, clock, make_event
from tests.watch.test_bounds import sight

LENA: dict[str, Any] = {"by": "lena", "source": Source.VOLUNTEER}


@pytest.mark.parametrize(
    ("now", "floor", "ceil"),
    [
        ("17:00", "17:00", "17:00"),
        ("17:00:01", "17:00", "17:05"),
        ("17:04:59", "17:00", "17:05"),
        ("17:05", "17:05", "17:05"),
    ],
)
def test_the_grid_is_five_minutes_wide(now: str, floor: str, ceil: str) -> None:
    """What drifts with silence is judged on it, and looked at again on its next step."""
    assert (floor_to(clock(now)), ceil_to(clock(now))) == (clock(floor), clock(ceil))
    tick, wake = on_grid(clock(now))
    assert (tick, wake.at) == (clock(floor), clock(floor) + timedelta(minutes=5))


@pytest.mark.parametrize(
    ("kind", "more", "fact", "seen"),
    [
        (None, {}, "16:46", "16:46"),
        (Kind.NOT_HERE_YET, {"point": "chapel"}, "18:00", "16:46"),
        (Kind.IN, {"point": "chapel"}, "18:00", "18:00"),
        (Kind.POSITION, {"fix": Fix(54.0, -2.0)}, "18:00", "18:00"),
        (Kind.RESTING, {"point": "mill"}, "18:00", "18:00"),
        (Kind.IN_HAND, {}, "18:00", "18:00"),
        (Kind.HOW_SHE_IS, {"words": "fine"}, "16:46", "16:46"),
        (Kind.ASKED_FOR_HELP, {"unconfirmed": True}, "16:46", "16:46"),
        (Kind.IN, {"point": "chapel", "unconfirmed": True}, "16:46", "16:46"),
    ],
)
def test_silence_counts_from_the_last_fact(
    night: Any, kind: Kind | None, more: dict[str, Any], fact: str, seen: str
) -> None:
    """Whatever says where she is moves it; a 'not here yet' is a fact and no sighting; words and doubts are neither."""
    night.report(Kind.OUT, "16:46", point="mill", **LENA)
    if kind is not None:
        night.report(kind, "18:00", **LENA | more)
    state = sight(night, clock("18:30")).state
    assert (fact_at(state), seen_at(state)) == (clock(fact), clock(seen))


def test_before_anything_is_heard_silence_counts_from_her_start(night: Any) -> None:
    """Not from when we began to watch."""
    state = sight(night, clock("14:30")).state
    assert fact_at(state) == seen_at(state) == START


@pytest.mark.parametrize(
    ("now", "held"), [("15:59:59", False), ("16:00", True), ("16:29:59", True), ("16:30", False)]
)
def test_she_is_held_from_the_beginning_to_the_end_of_a_hold(night: Any, now: str, *, held: bool) -> None:
    """Until then 'late' pauses."""
    night.report(Kind.HELD, "15:50", "olga", runner=None, until=clock("16:30"))
    night.entries = [replace(e, seen_at=clock("16:00"), received_at=clock("15:50")) for e in night.entries]
    assert sight(night, clock(now)).held() is held


@pytest.mark.parametrize(
    ("now", "has_her"), [("16:40", True), ("17:39:59", True), ("17:40", False), ("19:00", False)]
)
def test_a_word_that_somebody_has_her_holds_for_an_hour(night: Any, now: str, *, has_her: bool) -> None:
    """Of one who goes on it says nothing after that; of one who has retired it holds until it is taken back."""
    night.report(Kind.IN_HAND, "16:40", "ana")
    assert with_us(sight(night, clock(now))) is has_her
    night.report(Kind.RETIRED, "16:40", "ana", point="mill")
    assert with_us(sight(night, clock(now)))


@pytest.mark.parametrize(
    ("since", "outages", "is_blind"),
    [
        ("10:00", (), False),
        (None, (), True),
        ("10:00", (("16:00", None),), True),
        ("10:00", (("17:00", None),), True),
        ("10:00", (("17:01", None),), False),
        ("10:00", (("16:00", "16:30"),), False),
        ("10:00", (("16:00", "16:30"), ("16:50", None)), True),
    ],
)
def test_nobody_is_judged_while_we_could_have_heard_nothing(
    night: Any, since: str | None, outages: tuple[tuple[str, str | None], ...], *, is_blind: bool
) -> None:
    """What waited is not yet read, or we are down now; an outage that is over is none."""
    night.watching_since = None if since is None else clock(since)
    night.outages = tuple(Interval(clock(a), None if b is None else clock(b)) for a, b in outages)
    assert blind(sight(night, clock("17:00"))) is is_blind


@pytest.mark.parametrize(
    ("seen", "paces", "joins", "leaves", "runs_with_her"),
    [
        ("chapel", ("moss", "finish"), None, None, False),
        ("moss", ("moss", "finish"), None, None, True),
        ("ridge", ("moss", "finish"), None, None, True),
        ("finish", ("moss", "finish"), None, None, False),
        ("moss", ("moss", "ridge"), None, None, True),
        ("ridge", ("moss", "ridge"), None, None, False),
        ("ridge", ("moss", None), None, None, True),
        ("chapel", (None, "finish"), "moss", None, False),
        ("moss", (None, "finish"), "moss", None, True),
        ("ridge", (None, None), "moss", "barn", True),
        ("barn", (None, None), "moss", "barn", False),
        ("ridge", (None, None), None, None, False),
        # The part says where they leave, a meeting where they join, and the other way round.
        ("moss", (None, "ridge"), "moss", None, True),
        ("ridge", (None, "ridge"), "moss", None, False),
        ("ridge", ("moss", None), None, "barn", True),
        ("barn", ("moss", None), None, "barn", False),
        # Left at the barn by the meeting, though their part goes on to the finish; joined again is with her again.
        ("barn", ("moss", "finish"), None, "barn", False),
        ("barn", ("moss", "ridge"), "barn", None, True),
        ("barn", ("moss", "barn"), "barn", None, True),
    ],
)
def test_a_pacer_is_with_her_from_where_they_join_to_where_they_leave(
    night: Any,
    seen: str,
    paces: tuple[str | None, str | None],
    joins: str | None,
    leaves: str | None,
    *,
    runs_with_her: bool,
) -> None:
    """By their part, or by the meetings at which they join her and leave her."""
    parts = tuple(
        replace(p, pace_from=paces[0], pace_to=paces[1]) if p.person == "tomas" else p
        for p in night.event.parts
    )
    plans = tuple(
        replace(
            m,
            pacer_joins="tomas" if m.point == joins else None,
            pacer_leaves="tomas" if m.point == leaves else None,
        )
        for m in night.event.meetings
    )
    night.event = replace(night.event, parts=parts, meetings=plans)
    night.report(Kind.IN, "25:00", point=seen, **LENA)
    assert with_her(sight(night, clock("25:01")), "tomas") is runs_with_her
    assert not with_her(sight(night, clock("25:01")), "piet")


@pytest.mark.parametrize(
    ("source", "kind", "more", "seen"),
    [
        (Source.VOLUNTEER, Kind.IN, {"point": "chapel"}, True),
        (Source.TRACKER, Kind.IN, {"point": "chapel"}, False),
        (Source.TRACKER, Kind.POSITION, {"fix": Fix(54.0, -2.0)}, False),
        (Source.RUNNER, Kind.POSITION, {"fix": Fix(54.0, -2.0)}, True),
        (Source.TRACKER, Kind.OUT, {"point": "mill"}, False),
    ],
)
def test_a_tracker_s_word_says_where_the_tracker_is(
    night: Any, source: Source, kind: Kind, more: dict[str, Any], *, seen: bool
) -> None:
    """Nobody has seen her by it."""
    night.report(kind, "18:00", "lena", source=source, **more)
    assert seen_by_somebody(sight(night, clock("18:01")).state, "e1") is seen


def test_trouble_with_ourselves_goes_to_organisers_else_home_else_nobody() -> None:
    """Never to both."""
    event = make_event()
    assert stewards(event) == ("olga",)
    rest = tuple(p for p in event.parts if p.kind is not PartKind.ORGANISER)
    assert stewards(replace(event, parts=rest)) == ("sasha",)
    assert stewards(replace(event, parts=tuple(p for p in rest if p.person != "sasha"))) == ()


@pytest.mark.parametrize(
    ("sent", "channels"), [((), ("telegram",)), ((False, False), ("telegram",)), ((False, True), ())]
)
def test_channels_tried_in_vain_are_named_only_where_nothing_got_through(
    sent: tuple[bool, ...], channels: tuple[str, ...]
) -> None:
    """Whoever a notice got to, and who did not answer, needs no other channel."""
    key = NoticeKey("stile", "", "ana", NoticeKind.TEST_ALARM, "", 0)
    notice = Notice(key, Urgency.ALARM, START, None, True, TestAlarmValues(START))
    made = [Made(notice, 1, START, sent_at=START if s else None) for s in sent]
    assert tried(make_event().person("ana"), made) == channels


@pytest.mark.parametrize(
    ("words", "km"),
    [
        ("help, fell at 57 km", 57.0),
        ("km 62,5, knee", 62.5),
        ("at mile 40 no", None),
        ("fell at 40 miles", 64.373760),
        ("lost, 5 miles after Moss", None),
        ("60 km to go", None),
        ("fell at 62 km broken leg", 62),
        ("bei 62 km gestürzt, Bein", 62),
        ("sprained ankle at 40 miles need help", 64.373760),
        ("broken leg, 60 km from home", None),
        ("just started bleeding badly, km 62", 62),
        ("can't finish, fell at 62 km. knee", 62),
        ("km 62, between Moss and Ridge", 62),
        ("lost 3 km past the bridge", None),
        ("lost 2 km from the road", None),
        ("500 km from home", None),
        ("no idea where", None),
    ],
)
def test_where_a_call_for_help_says_that_she_is(night: Any, words: str, km: float | None) -> None:
    """A distance along the course, not one from a place, and none that she has long left behind her."""
    night.report(Kind.IN, "25:00", point="moss", **LENA)
    found = _said_km(sight(night, clock("25:01")), words)
    assert found == (None if km is None else pytest.approx(km))
