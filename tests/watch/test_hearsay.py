"""Her race said to be over by another: kept with its words, asked about, in every alarm, put right if she is seen."""

from __future__ import annotations

from typing import Any

import pytest

from server.facts.entry import Kind, Retired, Source
from server.facts.hearsay import HEARSAY
from server.watch.hearsay import SEEN_SINCE
from server.watch.notice import NoticeKind, Urgency

K = NoticeKind
WORDS = "another runner told me she dropped out"
LENA = {"by": "lena", "source": Source.VOLUNTEER}


def told(owed: list[Any], kind: NoticeKind) -> list[str]:
    """Who is owed that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind)


def hears_it(night: Any, at: str = "18:00", **more: Any) -> str:
    """Jonas writes what another runner told him."""
    said = {"how": Retired.NOT_SAID, "unconfirmed": True, "doubt": HEARSAY, "words": WORDS}
    entry: str = night.report(Kind.RETIRED, at, "jonas", **said | more)
    return entry


def test_it_is_asked_at_once_of_all_who_could_know(night: Any) -> None:
    """Crew, pacer, home, organiser and she herself; nobody is told that she has retired."""
    night.report(Kind.OUT, "16:40", point="mill", **LENA)
    night.tick("16:40")
    hears_it(night)
    owed = night.tick("18:00")
    assert told(owed, K.UNCONFIRMED) == ["ana", "maren", "olga", "sasha", "tomas", "vera"]
    assert {n.urgency for n in owed if n.key.kind is K.UNCONFIRMED} == {Urgency.ACTION}
    assert {n.values.words for n in owed if n.key.kind is K.UNCONFIRMED} == {WORDS}
    assert told(owed, K.RETIRED) == []


def test_what_was_only_guessed_waits_for_its_writer(night: Any) -> None:
    """Words that may mean it are first asked about in the conversation."""
    hears_it(night, doubt="guessed")
    assert told(night.tick("18:01"), K.UNCONFIRMED) == []
    assert "sasha" in told(night.tick("18:02"), K.UNCONFIRMED)


def test_an_alarm_says_it_with_its_words(night: Any) -> None:
    """She is overdue all the same; the alarm begins its doubtful news with it, whoever reports what since."""
    night.report(Kind.OUT, "16:40", point="mill", **LENA)
    hears_it(night)
    for clock in ("18:10", "18:20", "18:30"):
        night.report(Kind.IN, clock, "vera", point="chapel", unconfirmed=True, doubt="guessed")
    later = [n for _, n in night.run("18:00", "30:00", lazily=True)]
    first = next(n for n in later if n.key.kind is K.OVERDUE)
    assert (first.values.unconfirmed[0].words, first.values.unconfirmed[0].hearsay) == (WORDS, True)


def test_she_turns_up_and_whoever_was_asked_hears_it(night: Any) -> None:
    """Seen at the chapel after it: told once to those asked, and nobody is asked any more."""
    night.report(Kind.OUT, "16:40", point="mill", **LENA)
    hears_it(night)
    night.tick("18:00")
    night.report(Kind.IN, "19:20", "ana", point="chapel")
    owed = [n for n in night.tick("19:20") if n.key.kind is K.CORRECTION]
    assert sorted(n.key.person for n in owed) == ["maren", "olga", "sasha", "tomas", "vera"]
    assert {n.values.was_kind for n in owed} == {SEEN_SINCE}
    later = [n for _, n in night.run("19:21", "22:00", lazily=True)]
    assert told(later, K.CORRECTION) == told(later, K.UNCONFIRMED) == []


def test_confirmed_it_is_a_retirement(night: Any) -> None:
    """Ana knows it from her: told as that, with the words of the first report."""
    entry = hears_it(night)
    night.tick("18:00")
    night.report(Kind.CONFIRMED, "18:05", "ana", about=entry)
    owed = night.tick("18:05")
    assert "sasha" in told(owed, K.RETIRED)
    assert {n.values.words for n in owed if n.key.kind is K.RETIRED} == {WORDS}
    assert told(owed, K.UNCONFIRMED) == []


@pytest.mark.parametrize(("seen", "open_still"), [("17:50", True), ("18:10", False)])
def test_only_a_later_sighting_overtakes_it(night: Any, seen: str, *, open_still: bool) -> None:
    """A report of before it that comes later says nothing against it."""
    hears_it(night)
    night.tick("18:00")
    night.report(
        Kind.IN, seen, "ana", point="mill", received=night.entries[0].received_at.replace(hour=18, minute=20)
    )
    owed = night.tick("18:20")
    assert (told(owed, K.CORRECTION) == []) is open_still
