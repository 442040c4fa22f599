"""The stop log by chat: two taps, amounts, words; who is shown it; told before the next meeting."""

from __future__ import annotations

import pytest

from server.conversation.telling.say import Say
from server.conversation.telling.stop_log import say_since
from server.conversation.understanding.logged import amount_of, asks_for_log, logged_in
from server.facts.stop_log import Item, Level, Logged
from tests.bot.conftest import Race, race  # noqa: F401 - fixture


async def _logged(race: Race) -> list[tuple[Item, float | None, str]]:  # noqa: F811
    """What counts of the log now."""
    state = await race.state()
    return [(x.item, x.amount, x.words) for e in state.runner("maren").log for x in e.logged]


async def test_two_taps_after_she_is_in(race: Race) -> None:  # noqa: F811
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


async def test_how_much_in_words(race: Race) -> None:  # noqa: F811
    """After 'Ate' the next words are what it was."""
    race.at("08:45")
    noted = await race.say("ana", "maren in at moor cross 8:44")
    offer = await race.press("ana", noted, "Log the stop")
    await race.press("ana", offer, "Drank")
    await race.say("ana", "400")
    assert await _logged(race) == [(Item.DRANK, 400.0, "")]


async def test_all_of_it_in_words(race: Race) -> None:  # noqa: F811
    """Free words are three things of the log, and are told when it is asked for."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    said = await race.say("ana", "drank 500, ate half a banana, no ibu")
    assert "drank 500 ml" in said.text
    assert len(await _logged(race)) == 3
    told = (await race.say("ana", "log")).text
    assert "Log since 08:45: drank 500 ml, ate half banana, no painkiller (08:45)." in told


async def test_a_medic_says_so_first(race: Race) -> None:  # noqa: F811
    """A volunteer sees nothing of it until they say that they are a medic; her crew see that they did."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    await race.say("ana", "drank 500, no ibu")
    asked = await race.say("vera", "log")
    assert "500" not in asked.text
    shown = await race.press("vera", asked, "I am a medic")
    assert "drank 500 ml" in shown.text
    assert "Vera was shown this as a medic" in (await race.say("ana", "log")).text


@pytest.mark.parametrize("person", ["sam"])
async def test_a_supporter_is_shown_nothing(race: Race, person: str) -> None:  # noqa: F811
    """Whoever only follows her race."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    await race.say("ana", "drank 500, no ibu")
    assert "500" not in (await race.say(person, "log")).text


@pytest.mark.parametrize(
    ("text", "whole", "found"),
    [
        ("drank 500 ml", True, [Logged(Item.DRANK, 500.0)]),
        ("drank 2 bottles", True, [Logged(Item.DRANK, words="2 bottles")]),
        ("0,5 l getrunken und nichts gegessen", True,
         [Logged(Item.DRANK, 500.0), Logged(Item.ATE, level=Level.NONE)]),
        ("rien mangé, pas uriné", True,
         [Logged(Item.ATE, level=Level.NONE), Logged(Item.PEED, level=Level.NONE)]),
        ("took ibuprofen 400 mg", True, [Logged(Item.PAINKILLER, words="ibuprofen 400 mg")]),
        ("slept 20 min, changed socks", True, [Logged(Item.SLEPT, 20.0), Logged(Item.CHANGED, words="socks")]),
        ("she wants to eat", False, []),
        ("should she take ibuprofen?", False, []),
        ("food is ready", False, []),
        ("drank 500, nobody has seen her since", False, [Logged(Item.DRANK, 500.0)]),
    ],
)  # fmt: skip
def test_words(text: str, whole: bool, found: list[Logged]) -> None:
    """What is said of the log, and whether anything else is."""
    assert logged_in(text) == (tuple(found), whole)


def test_amounts_and_asking() -> None:
    """A small bare number is bottles, not millilitres; a log may be a tree."""
    assert amount_of("500", Item.DRANK) == 500
    assert amount_of("2", Item.DRANK) is None
    assert amount_of("30 g", Item.ATE) == 30
    assert amount_of("9000", Item.DRANK) is None
    assert asks_for_log("log")
    assert asks_for_log("I'm the medic, what has she taken")
    assert not asks_for_log("she sits on the log at the bridge")


def test_nothing_logged_says_nothing(say_now: Say) -> None:
    """No line in a notice where there is no log."""
    assert say_since(say_now, None) == ""


@pytest.fixture
def say_now() -> Say:
    """Sentences in English."""
    from datetime import UTC, datetime

    from server.conversation.telling.reader import Reader

    return Say(Reader("en", "UTC", "UTC"), datetime(2027, 6, 19, 9, tzinfo=UTC))
