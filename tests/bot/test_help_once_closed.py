"""A call for help from the car park, an hour after her race was closed: through the bot, the API and the journal."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from server.facts.state import Going

if TYPE_CHECKING:
    from conftest import Race


async def _closed(race: Race, how: str) -> None:
    """Finished and in hand; or retired, in hand, and race control told."""
    race.at("14:00")
    if how == "finished":
        await race.say("olga", "maren in at finish 13:58")
    else:
        await race.say("olga", "maren retired at brindle gate 13:58 own choice")
    await race.tick()
    race.at("14:06")
    await race.say("ana", "we have maren")
    if how == "retired":
        await race.say("ines", "race control told about maren")
    await race.tick()
    assert (await race.state()).runner("maren").going is Going.CLOSED
    race.at("15:00")
    await race.tick()


async def _texts(race: Race, who: str) -> list[str]:
    return [str(n["text"]) for n in await race.notices(who)]


async def _last(race: Race, who: str) -> str:
    return str((await race.notices(who))[-1]["text"])


@pytest.mark.parametrize("how", ["finished", "retired"])
async def test_she_collapsed_in_the_car_park(race: Race, how: str) -> None:
    """Whom to call stands first, then who has been told; all of them have the alarm, and 'in hand' ends it."""
    await _closed(race, how)
    reply = (await race.say("ana", "help she collapsed in the car park")).text.split("\n")
    assert reply[0] == "Is she hurt? Call 112. Race control: +44 1632 960001."
    assert reply[1] == "Your words have gone to your crew and safety contact: Birgit, Ines and Olga."
    texts = [m for m in (await _texts(race, "ines")) if m.startswith(("ALARM", "KNOWN", "To read out"))][-3:]
    home, german, own = texts[0], await _last(race, "both"), await _last(race, "ana")
    assert [t.partition(" ")[0] for t in texts] == ["ALARM:", "KNOWN", "To"], "each a message of its own"
    assert home.startswith("ALARM: HELP IS NEEDED for Maren (bib 214).\n")
    assert "Ana, crew, reports 15:00 (16:00 your clock): ‘help she collapsed in the car park’" in home
    assert "that somebody had her. Ask Ana first where she is." in home
    assert german.startswith("ALARM: Maren (Nr. 214) BRAUCHT HILFE.\n")
    assert "Ihr Rennen war Sa 13:58 zu Ende: wo sie danach hinging, kann ich nicht ausrechnen." in german
    assert "you wrote Sat 14:06 (54 min ago) that somebody had her. Where is she now?" in own
    assert not any(word in text for text in (home, german) for word in ("ESTIMATE", "SCHÄTZUNG"))
    assert (await race.say("ines", "i have it")).text.startswith("It is yours.")
    race.at("15:10")
    told = (await race.say("ana", "we have maren")).text
    assert "Told to Birgit, Ines" in told
    assert (await _last(race, "ines")).startswith("STAND-DOWN: the alarm for Maren is over")
    assert (await race.state()).runner("maren").going is Going.CLOSED


@pytest.mark.parametrize("how", ["finished", "retired"])
async def test_her_own_help_and_its_undo(race: Race, how: str) -> None:
    """The runner's one word does it; 'undo' ends it for all, who are named."""
    await _closed(race, how)
    reply = (await race.say("maren", "help")).text.split("\n")
    assert reply[0] == "Are you hurt? Call 112. Race control: +44 1632 960001."
    assert reply[1] == "Your words have gone to your crew and safety contact: Ana, Birgit, Ines and Olga."
    assert (await race.say("olga", "who knows about maren")).text.startswith("Nobody has taken the alarm")
    undone = (await race.say("maren", "undo")).text
    assert undone.startswith("Taken back: ‘help’\nTold to Ana, Birgit, Ines")
    assert (await _last(race, "ines")).startswith("STAND-DOWN: the alarm for Maren is over")
    assert (await race.say("olga", "who knows about maren")).text.startswith("No alarm is open about Maren.")
