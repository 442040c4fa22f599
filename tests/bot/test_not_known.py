"""What nobody here knows is said plainly, with whom to ask; what somebody slept through is told; a call and a sighting."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from server.facts.entry import Kind

if TYPE_CHECKING:
    from conftest import Race

ASK_THERE = " Who is there may know; else ask Race control: +44 1632 960001."
FRAG_DORT = " Vielleicht weiß es jemand dort, sonst frag Race control: +44 1632 960001."


async def test_the_weather_is_not_known_and_who_does(race: Race) -> None:
    """Never her window alone, as if it were the answer; light and window after it."""
    told = (await race.say("ana", "how cold will it be at moor cross")).text.split("\n")
    assert (
        told[0] == "The plan does not say what the weather will be: ask the weather service or race control."
    )
    assert told[1].startswith("Maren at Moor Cross: about ")
    told = (await race.say("both", "regnet es heute nacht")).text.split("\n")
    assert told == ["Wie das Wetter wird, sagt der Plan nicht: frag den Wetterdienst oder die Rennleitung."]


async def test_what_may_be_left_there_is_for_the_rules(race: Race) -> None:
    """Asked by her: the rules first, then whether crew meet her there, and what they are down to take."""
    told = (await race.say("maren", "can I drop my poles at brindle gate")).text.split("\n")
    assert told[0].endswith("left or handed over there. Ask race control: Race control +44 1632 960001.")
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


@pytest.mark.parametrize(
    ("who", "text", "first", "then"),
    [
        (
            "ana",
            "is it worth bringing the dog to the finish",
            "The plan says nothing about ‘dog’ at Low Barn finish." + ASK_THERE,
            "Maren",
        ),
        (
            "ana",
            "is there a toilet at brindle gate",
            "The plan says nothing about ‘toilet’ at Brindle Gate." + ASK_THERE,
            "Brindle Gate",
        ),
        (
            "ana",
            "can we bring the dog",
            "The plan says nothing about ‘dog’. Somebody at the place may know.",
            "",
        ),
        (
            "ana",
            "is the pub open at brindle gate",
            "The plan says nothing about ‘pub’ at Brindle Gate." + ASK_THERE,
            "Brindle Gate",
        ),
        (
            "both",
            "lohnt es sich den hund ins ziel mitzubringen",
            "Über ‚hund‘ in Low Barn finish sagt der Plan nichts." + FRAG_DORT,
            "",
        ),
        (
            "both",
            "gibt es in brindle gate ein klo",
            "Über ‚klo‘ in Brindle Gate sagt der Plan nichts." + FRAG_DORT,
            "",
        ),
        (
            "both",
            "hat der laden in brindle gate offen",
            "Über ‚laden‘ in Brindle Gate sagt der Plan nichts." + FRAG_DORT,
            "",
        ),
    ],
)
async def test_of_what_the_plan_does_not_know_it_says_so_first(
    race: Race, who: str, text: str, first: str, then: str
) -> None:
    """A time of hers alone would read like the answer; with two runners it is said once, above both."""
    told = (await race.say(who, text)).text.split("\n")
    assert told[0] == first
    assert then in "\n".join(told[1:])
    assert told.count(first) == 1


@pytest.mark.parametrize(
    "text",
    ["when is maren at brindle gate", "do we bring the dry shirt to brindle gate", "wann ist maren im ziel"],
)
async def test_what_is_known_is_answered_straight_away(race: Race, text: str) -> None:
    """Also where no table knows the word but the lists do: 'shirt'."""
    told = (await race.say("ana", text)).text
    assert "plan" not in told.split("\n")[0].lower()


async def test_time_for_a_nap_is_time_left_and_leave_by(race_two_cars: Race) -> None:
    """In those words, in the first lines; where no leave-by is, that."""
    told = (await race_two_cars.say("ana", "do i have time for a nap before skelter mill")).text.split("\n")
    assert re.fullmatch(
        r"(\d+ h )?\d+ min until you must leave for Skelter Mill\. What that is enough for the plan does not say\.",
        told[0],
    )
    assert told[1].startswith("Leave by ")
    told = (
        await race_two_cars.say("both", "reicht die zeit noch für eine dusche vor brindle gate")
    ).text.split("\n")
    assert told[0].endswith("bis du nach Brindle Gate losmusst. Wofür das reicht, sagt der Plan nicht.")
    assert told[1].startswith("Fahr bis ")


async def test_where_no_leave_by_is_no_time_is_given(race: Race) -> None:
    """The drive to the gate is nobody's to stand for."""
    told = (await race.say("ana", "have we got time for a shower")).text.split("\n")
    assert told[0] == "There is no leave-by for Brindle Gate, so I can’t say how much time is left."


async def test_her_own_time_is_up_to_the_cut_offs(race: Race) -> None:
    """A runner who asks for a nap drives to no meeting."""
    told = (await race.say("maren", "do i have time for a nap before moor cross")).text.split("\n")
    assert told[0] == "Whether there is time for that the plan does not say. Your limits:"
    assert "Moor Cross" in told[1]
