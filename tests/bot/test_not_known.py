"""What nobody here knows is said plainly, with whom to ask; what somebody slept through is told; a call and a sighting."""

from __future__ import annotations

from typing import TYPE_CHECKING

from server.facts.entry import Kind

if TYPE_CHECKING:
    from conftest import Race


async def test_the_weather_is_not_known_and_who_does(race: Race) -> None:
    """Never her window alone, as if it were the answer; light and window after it."""
    told = (await race.say("ana", "how cold will it be at moor cross")).text.split("\n")
    assert told[0] == "What the weather will be is not known to me: ask the weather service or race control."
    assert told[1].startswith("Maren at Moor Cross: likely ")
    told = (await race.say("both", "regnet es heute nacht")).text.split("\n")
    assert told == ["Wie das Wetter wird, weiß ich nicht: frag den Wetterdienst oder die Rennleitung."]


async def test_what_may_be_left_there_is_for_the_rules(race: Race) -> None:
    """Asked by her: the rules first, then whether crew meet her there, and what they are down to take."""
    told = (await race.say("maren", "can I drop my poles at brindle gate")).text.split("\n")
    assert told[0].endswith("that is for the race’s rules. Ask race control: Race control +44 1632 960001.")
    assert told[1] == "Crew meet her at Brindle Gate: Ana."
    told = (await race.say("maren", "can I leave my poles at moor cross")).text
    assert told.endswith("No crew meeting is planned at Moor Cross.")


async def test_who_slept_reads_what_was_sent_and_how_it_stands(race: Race) -> None:
    """Ana wrote last at 07:10 and slept: her messages since, the one that waits marked, then Maren and the next
    meeting. Asked again at once there is nothing new but what waits."""
    race.at("07:40")
    await race.say("maren", "i am lost")
    await race.tick()  # type: ignore[misc]
    race.at("08:30")
    await race.tick()  # type: ignore[misc]
    told = (await race.say("ana", "I fell asleep, did I miss anything")).text.split("\n")
    assert told[0].startswith("Since ")
    assert any("STILL WAITS FOR YOUR ANSWER" in line and "ASKED FOR HELP" in line for line in told)
    assert any("Maren" in line and "Last known" not in line for line in told[1:])
    assert any("Brindle Gate" in line for line in told)
    quiet = (await race.say("fan", "did i miss anything")).text
    assert quiet.startswith("Nothing was sent to you since ")


async def test_a_call_for_help_and_a_sighting_are_both_kept(race: Race) -> None:
    """'She needs help, in at Moor Cross 09:10': the alarm, and where she is."""
    race.at("09:12")
    reply = await race.say("ana", "she needs help, she fell badly. in at moor cross 09:10")
    await race.tick()  # type: ignore[misc]
    state = (await race.state()).runner("maren")
    assert state.help_open is not None
    assert reply.text.split("\n")[-1] == "Noted: Maren in at Moor Cross, 09:10."
    assert [e.kind for e in await race.journal.entries("hill") if e.by == "ana"][-2:] == [
        Kind.ASKED_FOR_HELP,
        Kind.IN,
    ]
    moor = state.at_point("moor")
    assert moor is not None
    assert moor.arrived is not None
