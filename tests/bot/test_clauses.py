"""A message that says several things: each is done or told back, and what can't be done keeps nothing else from it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from server.conversation import respond
from server.conversation.understanding import Danger, Kept, Reading, Report, Reported, Several
from server.facts.entry import Kind
from tests.bot.conftest import START

if TYPE_CHECKING:
    from conftest import Race

COLD = Kept("she is shaking and slurring", START, "maren", of_her=True)
LOCKED = Kept("the upper gate is locked", START, "maren", of_her=False)
STOPPED = Reported((Report(Kind.HELD, START, None, words="they hold everybody at the gate"),))
"""What only race control may say."""


@pytest.fixture
def meant(monkeypatch: pytest.MonkeyPatch, request: pytest.FixtureRequest) -> Reading:
    """What the next message is read as."""
    reading: Reading = request.param
    monkeypatch.setattr(respond, "read", lambda _text, _ctx: reading)
    return reading


@pytest.mark.parametrize("meant", [Reading(Several((COLD, LOCKED, COLD)), Danger.ASK)], indirect=True)
async def test_every_part_is_an_entry_of_its_own(race: Race, meant: Reading) -> None:
    """Two that are kept do not take each other for the same message sent again; grave ones have the number."""
    reply = (await race.say("ana", "anything")).text
    assert "112" in reply.split("\n")[0]
    kept = [e for e in await race.journal.entries("hill") if e.by == "ana" and e.words]
    assert [e.words for e in kept][-3:] == [COLD.words, LOCKED.words, COLD.words]
    assert COLD.words in reply
    assert LOCKED.words in reply


@pytest.mark.parametrize("meant", [Reading(Several((STOPPED, COLD)), Danger.ASK)], indirect=True)
async def test_what_is_refused_keeps_nothing_else(race: Race, meant: Reading) -> None:
    """Crew may not say that runners are held: the other half is kept all the same, with the number."""
    reply = (await race.say("ana", "anything")).text
    assert "112" in reply.split("\n")[0]
    assert (await race.journal.entries("hill"))[-1].words == COLD.words


DULL = Reported((Report(Kind.HOW_SHE_IS, START, "maren", words="she seems a bit low", guessed=True),))


@pytest.mark.parametrize("meant", [Reading(Several((DULL, COLD)), Danger.NONE)], indirect=True)
async def test_every_part_keeps_its_buttons(race: Race, meant: Reading) -> None:
    """'Press below' has something to press, whatever else was asked before it; no two read alike."""
    reply = await race.say("ana", "anything")
    labels = [b.label for row in reply.buttons for b in row]
    assert {"Right", "Wrong", "Yes, tell everyone", "No"} <= set(labels)
    assert len(set(labels)) == len(labels)


async def test_words_of_each_report_are_told_back(race: Race) -> None:
    """Of several reports in a line too it is said what was kept."""
    reply = (await race.say("ana", "we are at the gate. her lips look blue")).text
    assert "her lips look blue" in reply
    assert "‘’" not in reply


async def test_a_supporters_sighting_is_told_back_with_the_question_beside_it(race: Race) -> None:
    """How she looked is theirs to say to nobody; that refuses neither the sighting nor the question."""
    race.at("08:10")
    text = (await race.say("fan", "saw her at moor cross 8:05, she looked great! where next")).text
    assert "does not allow" not in text.split("\n")[0]
    assert text.startswith("Noted")
