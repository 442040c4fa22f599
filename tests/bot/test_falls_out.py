"""Somebody can't come, in their words: whose fact it is, what they are told first; never how she is."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING

import pytest

from server.facts.entry import Why

if TYPE_CHECKING:
    from conftest import Race

FELL_OUT = (
    ("ana", "my car broke down", Why.CAR, "You first: off the road"),
    ("ana", "we have a flat tyre", Why.CAR, "You first: off the road"),
    ("ana", "I can't drive", Why.DRIVER, "You first: stop where it is safe, and do not drive on."),
    ("ana", "I am too tired to drive", Why.DRIVER, "You first: stop where it is safe"),
    ("ana", "im falling asleep at the wheel", Why.DRIVER, "You first: stop where it is safe"),
    ("ana", "bin zu müde zum fahren", Why.DRIVER, "You first: stop where it is safe"),
    ("ana", "I can't make it", Why.NOT_SAID, "Noted: Ana can’t come."),
    ("ana", "I'm ill, I can't come", Why.OWN_SAFETY, "You first: hurt or ill, call 112"),
)


@pytest.mark.parametrize(("who", "words", "why", "first"), FELL_OUT)
async def test_it_is_about_the_writer_and_their_safety_comes_first(
    race: Race, who: str, words: str, why: Why, first: str
) -> None:
    """Kept as a fact about that person; nothing of it is recorded as hers."""
    before = (await race.state()).runner("maren")
    text = (await race.say(who, words)).text
    assert text.startswith(first), text
    state = await race.state()
    assert [(f.person, f.why) for f in state.fallen] == [(who, why)]
    after = state.runner("maren")
    assert (after.going, after.how_she_is, after.rests) == (before.going, before.how_she_is, before.rests)


@pytest.mark.parametrize("words", ["I feel sick", "mir ist schlecht"])
async def test_who_only_feels_ill_is_asked(race: Race, words: str) -> None:
    """They may come all the same: nobody is told that they do not, and whether they do is a press away."""
    reply = await race.say("ana", words)
    assert (await race.state()).fallen == ()
    assert "112" not in reply.text
    assert any("come" in b.label for row in reply.buttons for b in row), reply.buttons


async def test_taken_back_in_words_and_said_of_another(race: Race) -> None:
    """'Got it started again' ends it; of another by name it is theirs."""
    await race.say("ana", "my car broke down")
    race.clock.set(race.clock.now() + timedelta(minutes=3))
    await race.say("ana", "got it started again")
    assert (await race.state()).fallen == ()
    race.clock.set(race.clock.now() + timedelta(minutes=1))
    text = (await race.say("ines", "Ana’s car broke down")).text
    assert "Ana" in text, text
    assert [f.person for f in (await race.state()).fallen] == ["ana"]


@pytest.mark.parametrize(
    "words", ["she fell asleep", "she twisted her ankle", "who can drive?", "can you drive tonight?"]
)
async def test_what_is_of_her_or_asked_is_nobodys_falling_out(race: Race, words: str) -> None:
    """Nor is a question."""
    await race.say("ana", words)
    assert (await race.state()).fallen == ()
