"""Who drives to a place is told by who goes there, never by who stands there now."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from server.conversation.understanding import understand
from tests.bot import world

if TYPE_CHECKING:
    from conftest import Race


@pytest.mark.parametrize(
    ("text", "meaning"),
    [
        ("who drives to brindle", "who drives there brindle"),
        ("who's driving to kettle?", "who drives there kettle"),
        ("who takes the van to kettle", "who drives there kettle"),
        ("which car goes to brindle gate", "who drives there brindle"),
        ("is jonas driving to brindle", "who drives there brindle"),
        ("wer fährt nach brindle", "who drives there brindle"),
        ("wer faehrt denn zum kettle howe", "who drives there kettle"),
        ("welches auto fährt nach kettle", "who drives there kettle"),
        ("wer fährt", "who drives there"),
        ("whos at brindle", "people brindle"),
        ("wer ist in brindle", "people brindle"),
        ("wer fährt mit", "people"),
    ],
)
def test_driving_there_and_being_there_are_two_questions(text: str, meaning: str) -> None:
    """In both languages, whichever the writer reads."""
    for language in ("en", "de"):
        if language == "en" and text in ("wer fährt", "wer fährt mit"):
            continue
        assert world.brief(understand(text, replace(world.crew_of_maren(), language=language))) == meaning


async def test_who_drives_to_the_gate(race: Race) -> None:
    """Ana drives there in the van; that Birgit stands there now is another matter."""
    await race.say("both", "bin am brindle gate")
    told = (await race.say("ines", "who drives to brindle gate for maren")).text.split("\n")
    assert told[0].startswith("To Brindle Gate for Maren: Ana, blue van, from Skelter Mill. Be there from ")
    assert told[0].endswith("no leave-by, the drive is not confirmed.")
    assert not any("Birgit" in line for line in told)
    told = (await race.say("both", "wer fährt nach brindle gate")).text.split("\n")
    assert told[0].startswith("Nach Brindle Gate zu Maren: Ana, blue van, ab Skelter Mill.")
    assert any("Tove" in line and "Birgit" in line for line in told)


async def test_nobody_is_down_to_drive_where_no_meeting_is(race: Race) -> None:
    """Never somebody else's drive as if it were the answer; without a place the next meeting's."""
    none = (await race.say("ana", "who drives to moor cross")).text
    assert none.startswith("No meeting with Maren at Moor Cross is planned or still to come")
    assert (await race.say("ana", "who drives")).text.startswith("To Brindle Gate for Maren: Ana, blue van")


async def test_each_car_of_a_meeting_is_named(race_two_cars: Race) -> None:
    """Two cars come to the gate: both drivers, each with their own leave-by."""
    told = (await race_two_cars.say("ines", "who drives to brindle gate for maren")).text.split("\n")
    assert any("Ana" in line and "blue van" in line for line in told)
    assert any("Birgit (rotes Auto): leave by " in line for line in told)
