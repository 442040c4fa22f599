"""What may wait for a person's morning, what their choice lets through, and what a list that was read is not told again."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from server.event.model import NoticeChoice, PartKind, Person, Sleep
from server.forecast.outlook import Window
from server.watch.news_values import WordValues
from server.watch.notice import (
    BriefValues,
    Made,
    MeetingValues,
    Notice,
    NoticeKey,
    NoticeKind,
    SightingValues,
    Urgency,
    Values,
)
from server.watch.odds import band
from server.watch.once import LISTING, once_only
from server.watch.quiet import asleep_until, chosen, quiet_since
from tests.watch.conftest import clock, make_event

K, A, U = NoticeKind, NoticeChoice, Urgency


@pytest.mark.parametrize(
    ("choice", "urgency", "own", "mine", "through"),
    [
        *((c, U.ALARM, False, False, True) for c in A),
        *((c, U.NEWS, True, False, True) for c in A),
        *((A.ALL, u, False, m, True) for u in (U.ACTION, U.NEWS) for m in (True, False)),
        *((A.MINE, u, False, m, m) for u in (U.ACTION, U.NEWS) for m in (True, False)),
        *((A.ALARMS, u, False, m, False) for u in (U.ACTION, U.NEWS) for m in (True, False)),
    ],
)
def test_what_a_person_s_choice_lets_through(
    choice: NoticeChoice, urgency: Urgency, *, own: bool, mine: bool, through: bool
) -> None:
    """Alarms and a person's own leave-now always; 'mine' what is theirs to do; 'alarms' nothing else."""
    person = Person("ana", "Ana", notices=choice)
    assert chosen(person, urgency, own=own, mine=mine) is through


NIGHT = ("22:00", "06:30")
LONDON: dict[str, Any] = {"time_zone": "Europe/London"}


@pytest.mark.parametrize(
    ("hours", "zone", "now", "span"),
    [
        (NIGHT, "UTC", "21:59:59", None),
        (NIGHT, "UTC", "22:00", ("22:00", "30:30")),
        (NIGHT, "UTC", "29:00", ("22:00", "30:30")),
        (NIGHT, "UTC", "30:29:59", ("22:00", "30:30")),
        (NIGHT, "UTC", "30:30", None),
        (("13:00", "15:00"), "UTC", "12:59:59", None),
        (("13:00", "15:00"), "UTC", "13:00", ("13:00", "15:00")),
        (("13:00", "15:00"), "UTC", "15:00", None),
        (("13:00", "15:00"), "UTC", "02:00", None),
        (NIGHT, "Europe/London", "21:00", ("21:00", "29:30")),
        (NIGHT, None, "21:00", ("21:00", "29:30")),
        (NIGHT, None, "20:59:59", None),
        (("", "06:30"), "UTC", "23:00", None),
        (("22:00", ""), "UTC", "23:00", None),
        (("22:00", "22:00"), "UTC", "23:00", None),
    ],
)
def test_quiet_hours_hold_in_the_person_s_own_zone(
    hours: tuple[str, str], zone: str | None, now: str, span: tuple[str, str] | None
) -> None:
    """From their beginning to their end, over midnight too; in the event's zone where they have none of their own; none
    where one end is left out, or both are one."""
    person = Person("ana", "Ana", quiet_from=hours[0], quiet_to=hours[1], time_zone=zone)
    event = make_event()
    found = (quiet_since(person, event, clock(now)), asleep_until(person, event, clock(now)))
    assert found == ((None, None) if span is None else (clock(span[0]), clock(span[1])))


def test_the_night_the_clocks_change_is_as_long_as_it_is() -> None:
    """22:00 to 06:30 in London on 31 October 2027, when summer time ends at 02:00: nine and a half hours."""
    person = Person("ana", "Ana", quiet_from="22:00", quiet_to="06:30")
    night = datetime(2027, 10, 31, 3, 0, tzinfo=UTC)
    event = make_event()
    assert quiet_since(person, event, night) == datetime(2027, 10, 30, 21, 0, tzinfo=UTC)
    assert asleep_until(person, event, night) == datetime(2027, 10, 31, 6, 30, tzinfo=UTC)
    assert asleep_until(person, event, datetime(2027, 10, 31, 6, 29, tzinfo=UTC)) is not None
    assert asleep_until(person, event, datetime(2027, 10, 31, 6, 30, tzinfo=UTC)) is None


@pytest.mark.parametrize(
    ("now", "span"),
    [
        ("16:59:59", None),
        ("17:00", ("17:00", "19:00")),
        ("18:30", ("17:00", "20:00")),
        ("19:30", ("18:00", "20:00")),
        ("20:00", None),
        ("22:30", ("22:00", "31:00")),
        ("30:45", ("22:00", "32:00")),
        ("31:30", ("30:00", "32:00")),
    ],
)
def test_a_sleep_meant_for_this_event_counts_beside_the_quiet_hours(
    now: str, span: tuple[str, str] | None
) -> None:
    """Of several that hold a moment the earliest beginning and the latest end; of another's part nothing."""
    event = make_event()
    sleeps = (
        Sleep(clock("17:00"), clock("19:00")),
        Sleep(clock("18:00"), clock("20:00")),
        Sleep(clock("30:00"), clock("32:00")),
        Sleep(clock("22:00"), clock("22:45")),
    )
    parts = tuple(replace(p, sleeps=sleeps) if p.person == "ana" else p for p in event.parts)
    event = replace(event, parts=parts)
    person = Person("ana", "Ana", quiet_from="22:00", quiet_to="07:00", time_zone="UTC")
    found = (quiet_since(person, event, clock(now)), asleep_until(person, event, clock(now)))
    assert found == ((None, None) if span is None else (clock(span[0]), clock(span[1])))
    assert asleep_until(replace(person, id="vera", quiet_from=""), event, clock("18:30")) is None


@pytest.mark.parametrize(
    ("odds", "was", "now"),
    [
        (0.80, 0, 0), (0.7999, 0, 1), (0.50, 0, 1), (0.4999, 0, 2), (0.20, 1, 2), (0.1999, 1, 3), (0.05, 0, 3),
        (0.80, 1, 1), (0.8499, 1, 1), (0.85, 1, 0), (0.5499, 2, 2), (0.55, 2, 1), (0.2499, 3, 3), (0.25, 3, 2),
        (0.85, 3, 0), (0.55, 3, 1), (0.60, 1, 1), (0.30, 2, 2), (0.10, 3, 3), (0.95, 0, 0),
    ],
)  # fmt: skip
def test_a_band_of_odds_is_left_downwards_at_its_level_and_upwards_past_it(
    odds: float, was: int, now: int
) -> None:
    """80, 50 and 20%; five points more to rise again, so that odds which waver are told once."""
    assert band(odds, was) == now


def meeting(**more: Any) -> MeetingValues:
    """What is listed of the meeting at the mill."""
    window = Window("mill", clock("16:00"), clock("16:30"), clock("17:00"))
    values = MeetingValues(
        "mill-maren",
        "mill",
        window,
        None,
        clock("16:00"),
        clock("17:00"),
        None,
        ("poles", "torch"),
        "soup",
        "drive on",
        no_signal=False,
        take_back=("jacket",),
    )
    return replace(values, **more)


def sighting(point: str = "mill", following: MeetingValues | None = None, **more: Any) -> SightingValues:
    """She is in at a point, or out of it."""
    base = SightingValues(point, clock("16:30"), "ana")
    return replace(base, **{"next_meeting": following, "kit": ("poles", "gel"), "food": "soup"} | more)


def told(
    values: Values,
    kind: NoticeKind = K.LEAVE_SOON,
    who: str = "ana",
    runner: str = "maren",
    *,
    sent: bool = True,
    age: float = 30,
    failed: bool = False,
) -> Made:
    """A notice made so many minutes ago."""
    at = NOW - timedelta(minutes=age)
    notice = Notice(NoticeKey("stile", runner, who, kind, "mill", 0), U.ACTION, at, None, False, values)
    return Made(notice, 1, at, sent_at=at if sent else None, failed=failed)


NOW = clock("15:30")
NOTHING: dict[str, Any] = {"kit": (), "take_back": (), "food": "", "if_missed": ""}


@pytest.mark.parametrize(
    ("before", "left"),
    [
        (told(meeting()), NOTHING),
        (told(meeting(kit=("poles",))), NOTHING | {"kit": ("torch",)}),
        (told(meeting(take_back=())), NOTHING | {"take_back": ("jacket",)}),
        (told(meeting(food="tea")), NOTHING | {"food": "soup"}),
        (told(meeting(if_missed="wait")), NOTHING | {"if_missed": "drive on"}),
        (told(meeting(meeting="moss-maren")), {}),
        (told(meeting(), who="jonas"), {}),
        (told(meeting(), runner="nils"), {}),
        (told(meeting(), kind=K.WINDOW_MOVED), {}),
        (told(meeting(), sent=False), {}),
        (told(meeting(), sent=False, age=9.9), NOTHING),
        (told(meeting(), sent=False, age=10), {}),
        (told(meeting(), sent=False, age=1, failed=True), {}),
        (told(meeting(), sent=True, failed=True), NOTHING),
        (told(BriefValues((meeting(), meeting(meeting="moss-maren")), None), K.BRIEF),
         {"kit": (), "take_back": ()}),
        (told(sighting(), K.ARRIVED), {"kit": ("torch",), "food": ""}),
        (told(sighting(take_back=("jacket",)), K.ARRIVED), {"kit": ("torch",), "food": "", "take_back": ()}),
        (told(sighting("chapel"), K.ARRIVED), {}),
        (told(sighting("start", meeting()), K.LEFT), {"kit": ("torch",), "food": ""}),
        (told(sighting("mill", None), K.LEFT), {}),
    ],
)  # fmt: skip
def test_of_a_meeting_only_what_is_new_is_listed(before: Made, left: dict[str, Any]) -> None:
    """What this person has been told of this meeting, once a channel took it or while it is on its way; of another's
    list, another meeting's or one that got nowhere nothing is left out."""
    found = once_only(make_event(), "maren", "ana", K.LEAVE_NOW, meeting(), [before], NOW)
    assert found == replace(meeting(), **left)


def test_what_is_left_of_two_lists_is_what_neither_had() -> None:
    """Read in two messages it is read; of a brief each meeting by itself."""
    both = [told(meeting(kit=("poles",), food="")), told(meeting(kit=("torch",), food="soup"))]
    event = make_event()
    assert once_only(event, "maren", "ana", K.LEAVE_NOW, meeting(), both, NOW) == replace(
        meeting(), **NOTHING
    )
    brief = BriefValues((meeting(), meeting(meeting="moss-maren")), "finish")
    found = once_only(event, "maren", "ana", K.BRIEF, brief, both, NOW)
    assert found == replace(brief, meetings=(replace(meeting(), **NOTHING), brief.meetings[1]))


@pytest.mark.parametrize(
    ("values", "kind", "left"),
    [
        (sighting(), K.ARRIVED, {"kit": ("gel",), "food": ""}),
        (sighting(food="tea"), K.ARRIVED, {"kit": ("gel",)}),
        (sighting(take_back=("jacket", "cup")), K.ARRIVED, {"kit": ("gel",), "food": "", "take_back": ("cup",)}),
        (sighting("chapel"), K.ARRIVED, {}),
        (sighting("start", meeting()), K.LEFT, {"kit": ("gel",), "food": ""}),
        (sighting("start", meeting(meeting="moss-maren")), K.LEFT, {}),
    ],
)  # fmt: skip
def test_a_sighting_lists_what_was_not_told_before(
    values: SightingValues, kind: NoticeKind, left: dict[str, Any]
) -> None:
    """In: of the meeting there; out: of the person's next, whatever the point is."""
    found = once_only(make_event(), "maren", "ana", kind, values, [told(meeting())], NOW)
    assert found == replace(values, **left)


def test_a_kind_that_lists_nothing_says_what_it_says() -> None:
    """A moved window, or words about her, are told whole; so is what somebody hears who does not go to the meeting."""
    event, before = make_event(), [told(meeting()), told(meeting(), who="vera")]
    assert once_only(event, "maren", "ana", K.WINDOW_MOVED, meeting(), before, NOW) == meeting()
    word = WordValues("e1", "fine", clock("16:00"), "ana", "moving")
    assert once_only(event, "maren", "ana", K.LEAVE_NOW, word, before, NOW) is word
    assert once_only(event, "maren", "vera", K.ARRIVED, sighting(), before, NOW) == sighting()
    assert {K.LEAVE_SOON, K.LEAVE_NOW, K.BE_THERE, K.WAKE_UP, K.BRIEF, K.ARRIVED, K.LEFT} == LISTING
    assert PartKind.CREW in {p.kind for p in event.parts_of("vera")}
