"""The stop log by chat: two taps, amounts, words; who is shown it."""

from __future__ import annotations

import pytest

from server.facts.stop_log import Item
from tests.bot.conftest import Race


async def _logged(race: Race) -> list[tuple[Item, float | None, str]]:
    """What counts of the log now."""
    state = await race.state()
    return [(x.item, x.amount, x.words) for e in state.runner("maren").log for x in e.logged]


async def test_two_taps_after_she_is_in(race: Race) -> None:
    """'Log the stop', 'Drank' is kept; '500 ml' says how much in its place; undo takes it back."""
    race.at("08:45")
    noted = await race.say("ana", "maren in at moor cross 8:44")
    offer = await race.press("ana", noted, "Log the stop")
    drank = await race.press("ana", offer, "Drank")
    assert await _logged(race) == [(Item.DRANK, None, "")]
    more = await race.press("ana", drank, "drank 500 ml")
    assert await _logged(race) == [(Item.DRANK, 500.0, "")]
    assert "Logged for Maren: drank 500 ml." in more.text
    peed = await race.press("ana", more, "Peed")
    await race.press("ana", peed, "Undo")
    assert await _logged(race) == [(Item.DRANK, 500.0, "")]


async def test_the_other_things_are_offered_where_no_place_is_known(race: Race) -> None:
    """Asked for between two points: after the amount the next thing is one tap away, as at a stop."""
    race.at("08:45")
    offer = await race.press("ana", await race.say("ana", "log"), "Log the stop")
    more = await race.press("ana", await race.press("ana", offer, "Drank"), "drank 500 ml")
    eaten = await race.press("ana", await race.press("ana", more, "Ate"), "nothing eaten")
    assert "nothing eaten" in eaten.text
    told = (await race.say("ana", "handover")).text
    assert "drank 500 ml; nothing eaten; no painkiller logged" in told


async def test_how_much_in_words(race: Race) -> None:
    """After 'Ate' the next words are what it was."""
    race.at("08:45")
    noted = await race.say("ana", "maren in at moor cross 8:44")
    offer = await race.press("ana", noted, "Log the stop")
    await race.press("ana", offer, "Drank")
    await race.say("ana", "400")
    assert await _logged(race) == [(Item.DRANK, 400.0, "")]


async def test_all_of_it_in_words(race: Race) -> None:
    """Free words are three things of the log, and are told when it is asked for."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    said = await race.say("ana", "drank 500, ate half a banana, no ibu")
    assert "drank 500 ml" in said.text
    assert len(await _logged(race)) == 3
    told = (await race.say("ana", "log")).text
    assert "Log since 08:45: drank 500 ml; ate half banana; no painkiller, 08:45." in told


async def test_a_medic_says_so_first(race: Race) -> None:
    """A volunteer sees nothing of it until they say that they are a medic; her crew see that they did."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    await race.say("ana", "drank 500, no ibu")
    asked = await race.say("vera", "log")
    assert "500" not in asked.text
    shown = await race.press("vera", asked, "I am a medic")
    assert "drank 500 ml" in shown.text
    assert "Vera was shown this as a medic" in (await race.say("ana", "log")).text


async def test_a_medic_says_so_in_words(race: Race) -> None:
    """As good as the button: shown, and kept that they said it."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    await race.say("ana", "drank 500, no ibu")
    assert "drank 500 ml" in (await race.say("vera", "I am a medic, what has she taken")).text
    assert "Vera was shown this as a medic" in (await race.say("ana", "log")).text


@pytest.mark.parametrize("line", ["500 getrunken", "bu 500", "500 ml"])
async def test_a_line_of_the_log_is_no_call_for_help(race: Race, line: str) -> None:
    """'getrunken' is like 'ertrunken' to a model: nobody is given the emergency number for a bottle drunk."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    said = await race.say("ana", line)
    assert await _logged(race) == [(Item.DRANK, 500.0, "")]
    assert "112" not in said.text
    assert "no painkiller logged" in (await race.say("ana", "log")).text


async def test_a_supporter_is_shown_nothing(race: Race) -> None:
    """Whoever only follows her race."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    await race.say("ana", "drank 500, no ibu")
    assert "500" not in (await race.say("fan", "log")).text


async def test_a_question_is_no_fact(race: Race) -> None:
    """Asked without a question mark it is answered from the log; a 'peed' that nobody said would quiet a caution."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    for asked in (
        "when did she last pee",
        "has maren peed",
        "has she had any ibuprofen",
        "hat sie schon gepinkelt",
    ):
        await race.say("ana", asked)
    assert await _logged(race) == []


async def test_what_came_up_again_was_neither_eaten_nor_drunk(race: Race) -> None:
    """It is kept as words of how she is."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    await race.say("ana", "she drank 500 but threw up")
    await race.say("ana", "threw up everything she ate")
    assert await _logged(race) == []


async def test_what_others_had_is_not_in_her_log(race: Race) -> None:
    """Crew eat too, and so does a runner nobody knows."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    await race.say("ana", "I ate a sandwich and slept an hour")
    await race.say("ana", "wilma ate 2 gels")
    assert await _logged(race) == []


async def test_dark_pee_is_no_question_about_the_dark(race: Race) -> None:
    """It is in the log, as words of how she is, which the others are told."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    said = await race.say("ana", "peed dark brown")
    assert [x for x, _, _ in await _logged(race)] == [Item.PEED], said.text


async def test_all_of_a_list_that_sounds_like_danger(race: Race) -> None:
    """'Nicht gepinkelt' had the rest of the line read as a question for the cards, and thrown away."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    await race.say("ana", "hat 500 getrunken, halbe banane gegessen, kein ibu, nicht gepinkelt")
    assert [(x, n) for x, n, _ in await _logged(race)] == [
        (Item.DRANK, 500.0),
        (Item.ATE, None),
        (Item.PAINKILLER, None),
        (Item.PEED, None),
    ]


@pytest.mark.parametrize(
    "words", ["handover", "Übergabe", "passation", "what does the next shift need to know"]
)
async def test_handing_over_is_the_log(race: Race, words: str) -> None:
    """Whoever comes next wants what was logged, and no word passed on."""
    race.at("08:45")
    await race.say("ana", "drank 500, ate half a banana")
    assert "drank 500 ml" in (await race.say("ana", words)).text
    assert not await race.entries("passed on")
