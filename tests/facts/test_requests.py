"""Whom words go to, and until when somebody wants no news."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from server.event.model import MeetingPlan, Part, PartKind, Person
from server.facts.entry import EVERYBODY, Entry, Kind
from server.facts.fold import fold
from server.facts.requests import addressees, help_open, quiet_until, reminders
from server.facts.state import RaceState

WHO = (
    ("maren", PartKind.RUNNER), ("ana", PartKind.CREW), ("tom", PartKind.PACER), ("ines", PartKind.SAFETY_CONTACT),
    ("olga", PartKind.ORGANISER), ("vera", PartKind.VOLUNTEER), ("finn", PartKind.SUPPORTER),
)  # fmt: skip


@pytest.fixture
def people(event: Any) -> Any:
    """One person of every part."""
    return replace(
        event,
        people=tuple(Person(w, w.capitalize()) for w, _ in WHO),
        parts=tuple(
            Part(w, k, None if k in (PartKind.ORGANISER, PartKind.VOLUNTEER) else "maren") for w, k in WHO
        ),
    )


def said(
    make: Any, by: str, to: str | None, kind: Kind = Kind.PASSED_ON, clock: str = "6:00", **more: Any
) -> Entry:
    """Words of somebody."""
    found: Entry = make(kind, clock, by=by, to=to, runner=None, words="bring socks", **more)
    return found


@pytest.mark.parametrize(
    ("by", "to", "hear"),
    [
        ("ana", EVERYBODY, {"maren", "tom", "ines"}),
        ("olga", EVERYBODY, {"maren", "ana", "tom", "ines", "vera"}),
        ("vera", EVERYBODY, {"ana", "tom"}),
        ("finn", EVERYBODY, set()),
        ("ana", "olga", {"olga"}),
        ("ana", "finn", set()),
        ("ana", "ana", set()),
        ("vera", "maren", set()),
        ("finn", "ana", set()),
    ],
)
def test_whom_words_go_to(people: Any, entry: Any, by: str, to: str, hear: set[str]) -> None:
    """By what the writer and the others are; never to a supporter, never back."""
    assert set(addressees(said(entry, by, to), people, RaceState(()))) == hear


def test_quiet_is_by_the_last_word_and_ends_by_itself(people: Any, entry: Any, clock: Any) -> None:
    """A later 'until now' ends it; taken back, the one before holds again."""
    long = said(entry, "ana", None, Kind.QUIET, "6:00", until=clock("9:00"))
    over = said(entry, "ana", None, Kind.QUIET, "7:00", until=clock("7:00"), id="over")
    back = entry(Kind.TAKEN_BACK, "7:10", about="over", by="ana", runner=None)
    now = clock("8:00")
    assert quiet_until(fold([long], people, now), "ana", now) == clock("9:00")
    assert quiet_until(fold([long], people, now), "tom", now) is None
    assert quiet_until(fold([long, over], people, now), "ana", now) is None
    assert quiet_until(fold([back, over, long], people, now), "ana", now) == clock("9:00")
    assert quiet_until(fold([long], people, clock("9:00")), "ana", clock("9:00")) is None


@pytest.mark.parametrize(
    ("kind", "about", "hear"),
    [
        (Kind.MEET_ELSEWHERE, "m1", {"maren", "tom", "jo"}),
        (Kind.MEET_ELSEWHERE, "m2", {"maren", "tom"}),
        (Kind.MEET_ELSEWHERE, "m9", set()),
        (Kind.MEET_ELSEWHERE, None, {"maren", "tom", "ines"}),
        (Kind.PASSED_ON, "m1", {"maren", "tom", "ines"}),
    ],
)
def test_of_a_meeting_those_who_go_there_hear(
    people: Any, entry: Any, kind: Kind, about: str | None, hear: set[str]
) -> None:
    """Its crew, the pacers who join and leave there, and she; of no meeting, all of hers."""
    meetings = (
        MeetingPlan("m1", "mill", "maren", crew=("ana", "tom"), pacer_joins="jo"),
        MeetingPlan("m2", "moss", "maren", crew=("ana",), pacer_leaves="tom"),
    )
    event = replace(people, meetings=meetings)
    assert set(addressees(said(entry, "ana", EVERYBODY, kind, about=about), event, RaceState(()))) == hear


def test_a_picture_goes_to_the_organisers_while_help_is_open(people: Any, entry: Any, clock: Any) -> None:
    """Of a runner of theirs; without a picture, or once the call is closed, it does not."""
    call = entry(Kind.ASKED_FOR_HELP, "5:30", id="call")
    open_, quiet = fold([call], people, clock("6:00")), fold([], people, clock("6:00"))
    shown, words = (said(entry, "ana", EVERYBODY, picture=x) for x in ("p1", None))
    assert help_open(shown, people, open_)
    assert not help_open(shown, people, quiet)
    assert help_open(said(entry, "olga", EVERYBODY), people, open_)  # theirs are all runners
    assert not help_open(said(entry, "nobody", EVERYBODY), people, open_)
    assert "olga" in addressees(shown, people, open_)
    assert "olga" not in addressees(shown, people, quiet)
    assert "olga" not in addressees(words, people, open_)


def test_reminders_still_to_come(people: Any, entry: Any, clock: Any) -> None:
    """A person's own, with a time that lies ahead."""
    rows = [
        said(entry, "ana", None, Kind.REMIND, "5:00", until=clock("7:00"), id="ahead"),
        said(entry, "ana", None, Kind.REMIND, "5:01", until=clock("6:00"), id="now"),
        said(entry, "tom", None, Kind.REMIND, "5:02", until=clock("7:00"), id="his"),
        said(entry, "ana", None, Kind.REMIND, "5:03", about="maren", point="mill", edge="in", id="wish"),
        said(entry, "ana", None, Kind.QUIET, "5:04", until=clock("7:00"), id="quiet"),
    ]
    race = fold(rows, people, clock("6:00"))
    assert reminders(race, "ana", clock("6:00")) == (("ahead", clock("7:00")),)
