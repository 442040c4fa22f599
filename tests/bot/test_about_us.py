"""What is asked of ourselves: what a word means, that a time was wrong, her pace; help offered, a reminder no longer wanted;
and words that are no report of her."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from server.facts.entry import Kind

if TYPE_CHECKING:
    from conftest import Race


async def told(race: Race, who: str, kind: str) -> list[str]:
    """The texts of somebody's notices of that kind."""
    return [n["text"] for n in await race.notices(who) if n["kind"] == kind]


@pytest.mark.parametrize(
    ("who", "words", "first"),
    [
        ("ana", "what does overdue mean", "‘Overdue’: "),
        ("ana", "held? what does held mean", "‘Held’: "),
        ("both", "was heißt überfällig", "„Überfällig“: "),
    ],
)
async def test_a_word_of_ours_is_explained(race: Race, who: str, words: str, first: str) -> None:
    """The word that is named, and no other."""
    text = (await race.say(who, words)).text
    assert text.startswith(first)
    assert "\n" not in text


async def test_of_no_word_the_most_asked_for_are_explained(race: Race) -> None:
    """Which one is meant is asked."""
    lines = (await race.say("ana", "what do you mean by frumious")).text.split("\n")
    assert lines[0].startswith("Which word do you mean?")
    assert len(lines) == 6


async def test_her_pace_is_of_the_times_that_were_reported(race: Race) -> None:
    """The last stretch first, then the whole with its stops."""
    race.at("09:12")
    await race.say("ana", "in at moor cross 09:10")
    lines = (await race.say("ana", "what pace is she doing")).text.split("\n")
    assert re.fullmatch(r"Skelter Mill to Moor Cross: [\d.]+ km in .+, \d+:\d\d min per km\.", lines[0])
    assert lines[1].startswith("Since the start, stops included: ")
    assert lines[2] == "Before, Low Barn start to Skelter Mill: 15.0 km in 2 h 2 min, 8:08 min per km."
    assert lines[-1] == "By the times that were reported; no tracker measures it."


async def test_a_complaint_is_answered_with_what_holds_now(race: Race) -> None:
    """And with how a time is put right; nothing is recorded of her."""
    race.at("09:12")
    await race.say("ana", "in at moor cross 09:10")
    before = (await race.state()).runners
    lines = (await race.say("ana", "that time was rubbish, you got it completely wrong")).text.split("\n")
    assert lines[0] == "Sorry about that. This is what holds now:"
    assert "Moor Cross" in lines[1]
    assert lines[-1].startswith("A time was wrong? Write the right one")
    assert (await race.state()).runners == before


async def test_help_that_is_offered_is_told_to_the_others(race: Race) -> None:
    """In the words it was offered in."""
    words = "happy to drive tonight if you need somebody"
    assert (await race.say("ana", words)).text.startswith("Told to ")
    assert await told(race, "ines", "passed on") == [f"Ana says: ‘{words}’"]


async def test_a_reminder_no_longer_wanted_does_not_come(race: Race) -> None:
    """Every one of theirs that is still to come; asked again, that there is none."""
    race.at("07:40")
    await race.say("ana", "remind me at 08:00 to move the car")
    text = (await race.say("ana", "cancel that reminder, no need for it any more")).text
    assert text.startswith("Cancelled: no reminder 08:00")
    race.at("08:05")
    await race.tick()  # type: ignore[misc]
    assert await told(race, "ana", "reminder") == []
    text = (await race.say("ana", "cancel my reminder")).text
    assert text == "I have no reminder for you that is still to come."


@pytest.mark.parametrize(
    "words", ["dont tell maren but i forgot her cake", "sag maren nix davon, ich hab den kuchen vergessen"]
)
async def test_what_is_not_to_be_told_is_told_to_nobody(race: Race, words: str) -> None:
    """Least of all to her."""
    await race.say("ana", words)
    for who in ("maren", "both", "ines"):
        assert await told(race, who, "passed on") == []


@pytest.mark.parametrize(
    ("who", "words"),
    [
        ("ana", "the dog is gone, he bit through the lead"),
        ("ana", "both cars have gone, who drives me back"),
        ("ana", "opa weg, ruhe im haus"),
        ("vera", "12 44 45 90 91 103 all in, more coming"),
        ("ana", "i brought two left shoes. two. left."),
    ],
)
async def test_of_a_thing_or_of_others_nothing_is_recorded_of_her(race: Race, who: str, words: str) -> None:
    """No time in or out, no end of her race, whoever it was said of."""
    before = (await race.state()).runner("maren").times
    await race.say(who, words)
    after = (await race.state()).runner("maren")
    assert after.times == before
    assert after.retirement is None
    moves = {Kind.IN, Kind.OUT, Kind.THROUGH, Kind.RETIRED, Kind.NOT_HERE_YET}
    assert not [e for e in after.unconfirmed if e.kind in moves]
