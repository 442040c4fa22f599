"""Whom words go to, and until when somebody wants no news."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from server.event.model import Part, PartKind, Person
from server.facts.entry import EVERYBODY, Entry, Kind
from server.facts.fold import fold
from server.facts.requests import addressees, quiet_until
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
