"""What the event file says besides meetings is answered; what concerns the writer is kept apart from her."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from conftest import Race


async def test_the_start_and_the_clock(race: Race) -> None:
    """When she started, and by whose clock; whoever lives by another reads both."""
    told = (await race.say("ana", "did they set off on time")).text
    assert told.startswith("Maren started ")
    told = (await race.say("ines", "is that your time or mine")).text
    assert told.startswith("Times here are by the clock of the race: it is now ")
    assert "your clock" in told
    told = (await race.say("both", "nach wessen uhr ist das")).text
    assert told.startswith("Die Zeiten hier sind nach der Uhr des Rennens")


async def test_the_points_to_come(race: Race) -> None:
    """All that she still has before her, or those after one; of one point how far it is."""
    told = (await race.say("ana", "which points are still to come")).text
    assert told.startswith("Still to come: ")
    assert "Moor Cross (" in told
    after = (await race.say("ana", "what comes after moor cross")).text.split("\n")[0]
    assert "Moor Cross" not in after
    assert "(" in after


async def test_the_rules_of_the_file_and_whom_to_ask_for_others(race: Race) -> None:
    """None of them is made up."""
    told = (await race.say("ana", "am i allowed to carry her pack")).text.split("\n")
    assert "race control" in told[0].lower()


async def test_what_i_have_of_you(race: Race) -> None:
    """The writer's own reports, and nobody else's."""
    race.at("09:12")
    await race.say("ana", "in at moor cross 09:10")
    told = (await race.say("ana", "what did i report for moor cross")).text
    assert told.startswith("I have from you: Maren in at Moor Cross, 09:10.")
    assert (await race.say("vera", "what did i report last")).text == "I have no report from you of that."


@pytest.mark.parametrize("text", ["birgit is slurring and her face hangs"])
async def test_danger_of_others_calls_nobody_to_her(race: Race, text: str) -> None:
    """The number first, not to drive on, and a button that sends the words to everybody; nothing is said of her."""
    reply = await race.say("ana", text)
    lines = reply.text.split("\n")
    assert lines[0].startswith("If you or anybody near you is in danger call ")
    assert "does not drive on" in lines[1]
    assert "Tell the others" not in [b.label for row in reply.buttons for b in row]
    told = await race.press("ana", reply, "Yes, tell everyone")
    assert text in told.text
    assert not await race.entries("asked for help")


async def test_whoever_asks_for_an_alarm_that_is_not_open_hears_whether_she_is_late(race: Race) -> None:
    """With the time from which on she would be."""
    told = (await race.say("ines", "is there an alarm about maren")).text.split("\n")
    assert told[0] == "No alarm is open about Maren."
    assert told[1].startswith(
        ("Maren is not late. She would be if nothing is heard from ", "Maren is late: ")
    )
