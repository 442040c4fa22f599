"""What was just noted is said to be wrong, in so few words that they name nothing: it no longer counts."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING

import pytest

from server.facts.entry import Kind
from tests.bot.conftest import START

if TYPE_CHECKING:
    from conftest import Race


@pytest.mark.parametrize("words", ["no", "nope", "nein"])
async def test_no_on_its_own_takes_back_what_was_just_noted(race: Race, words: str) -> None:
    """Nothing was asked: it can only be about the report told back last."""
    race.at("09:00")
    assert (await race.say("ana", "maren in at the gate")).text.startswith("Noted: Maren in at")
    race.at("09:02")
    assert (await race.say("ana", words)).text.startswith("Taken back: Maren in at")
    assert (await race.state()).runner("maren").at_point("gate") is None


async def test_no_long_after_or_after_a_question_takes_back_nothing(race: Race) -> None:
    """By then it is about something else."""
    race.at("09:00")
    await race.say("ana", "maren in at the gate")
    race.at("09:03")
    await race.say("ana", "when is she at the next point")
    assert "Taken back" not in (await race.say("ana", "no")).text
    race.at("09:50")
    assert "Taken back" not in (await race.say("ana", "no")).text
    assert (await race.state()).runner("maren").at_point("gate") is not None


async def test_no_takes_back_no_call_for_help(race: Race) -> None:
    """An alarm ends only by words that say so."""
    await race.say("ana", "she needs help")
    await race.say("ana", "no")
    kinds = [e.kind for e in await race.journal.entries("hill") if e.received_at > START + timedelta(hours=2)]
    assert Kind.TAKEN_BACK not in kinds


async def test_another_bib_than_ours(race: Race) -> None:
    """'241, not 214' names whom it was not: it is taken back and not noted of her again."""
    race.at("09:00")
    assert (await race.say("olga", "214 in at gate 8:59")).text.startswith("Noted: Maren in at")
    race.at("09:02")
    text = (await race.say("olga", "ah sorry. 241, not 214. reading upside down")).text
    assert text.startswith("Taken back: Maren in at")
    assert "Noted" not in text
    assert (await race.state()).runner("maren").at_point("gate") is None


@pytest.mark.parametrize("words", ["sorry 215 war das", "241 sorry", "pardon, c'était le 241"])
async def test_a_slip_of_the_bib_takes_it_back(race: Race, words: str) -> None:
    """One digit apart, or two changed round, with a word that puts it right."""
    race.at("09:00")
    await race.say("olga", "214 in at gate 8:59")
    race.at("09:02")
    assert (await race.say("olga", words)).text.startswith("Taken back: Maren in at"), words
    assert (await race.state()).runner("maren").at_point("gate") is None


async def test_a_volunteers_words_go_with_the_sighting(race: Race) -> None:
    """'Cold but talking' beside it is kept with it, and nobody reads that their part does not allow that."""
    race.at("09:00")
    words = "214 through here at 0855, no signal till now. walking, cold but talking"
    text = (await race.say("vera", words)).text
    assert "does not allow" not in text
    (through,) = await race.entries("through")
    assert through.words == words
