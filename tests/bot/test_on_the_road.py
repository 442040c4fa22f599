"""Crew about themselves, and what the runner wants told or asks of the way on foot."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from conftest import Race

HELD_UP = (
    "we are stuck behind a tractor, 20 min late",
    "running late",
)


@pytest.mark.parametrize("words", HELD_UP)
async def test_crew_held_up_read_whom_to_telephone(race: Race, words: str) -> None:
    """Kept as a note in their words, nothing said of her, the numbers of the others, and no word of haste."""
    before = (await race.state()).runner("maren")
    text = (await race.say("ana", words)).text
    assert text.startswith(f"Noted: ‘{words}’. I have told nobody: telephone whoever can be there for you.")
    assert "Ines (safety contact): +49 30 23125101" in text
    assert "Race control: +44 1632 960001" in text
    assert "Ana (" not in text
    assert "hurry" not in text
    assert [e.words for e in await race.entries("note")] == [words]  # type: ignore[attr-defined]
    after = (await race.state()).runner("maren")
    assert (after.going, after.at_point("moor")) == (before.going, before.at_point("moor"))
    assert (await race.say("ana", "undo")).text.startswith("Taken back")


async def test_crew_held_up_in_german(race: Race) -> None:
    """The same in German, without asking which runner."""
    text = (await race.say("both", "wir stehen im stau")).text
    assert text.startswith("Notiert: ‚wir stehen im stau‘. Ich habe niemandem Bescheid gesagt")
    assert "Ana (Crew): +44 1632 960011" in text


async def test_who_can_stand_in(race: Race) -> None:
    """Nothing is moved by it; who can be telephoned is named."""
    text = (await race.say("ana", "can ines take my meeting instead")).text
    assert text.startswith("I can’t change who goes where: agree it by telephone.")
    assert "Ines (safety contact): +49 30 23125101" in text


async def test_what_the_runner_wants_told(race: Race) -> None:
    """Kept as her words; who was told is named, else that nobody was."""
    text = (await race.say("maren", "tell ana to bring my jacket")).text
    assert "‘tell ana to bring my jacket’" in text
    assert ("Told to " in text) != ("Nobody has been sent it" in text)
    assert [e.words for e in await race.entries("passed on")] == ["tell ana to bring my jacket"]  # type: ignore[attr-defined]


async def test_the_runner_is_on_foot(race: Race) -> None:
    """How far it is for her is km on the course, never a drive; crew who ask still get the drive."""
    text = (await race.say("maren", "how far to the next point")).text
    assert text.startswith("To Moor Cross (at 30.0 km): about "), text
    assert "rive" not in text.split("\n")[0]
    assert (await race.say("maren", "how far to brindle gate")).text.startswith(
        "To Brindle Gate (at 45.0 km): about "
    )
    assert "Drive to Brindle Gate" in (await race.say("ana", "how far is the drive to brindle gate")).text
