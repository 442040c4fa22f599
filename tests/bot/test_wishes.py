"""'Wake me when she is in at X': kept, told once, seen and taken back; never told of what has been."""

from __future__ import annotations

import re
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from conftest import Race


async def told(race: Race, who: str) -> list[str]:
    """What somebody was told of what they wished for."""
    return [n["text"] for n in await race.notices(who) if n["kind"] == "reminder"]


@pytest.mark.parametrize(
    "words",
    [
        "wake me when maren is in at moor cross",
        "weck mich wenn maren in moor cross ist",
        "préviens-moi quand maren arrive à moor cross",
    ],
)
async def test_a_wish_is_confirmed_with_when_that_is_likely_and_told_once(race: Race, words: str) -> None:
    """In the asker's words; a second report of the same tells nobody again."""
    text = (await race.say("ines", words)).text
    assert text.startswith(
        "I’ll tell you at once when Maren is in at Moor Cross, also at night: there about"
    ), text
    await race.tick()
    assert await told(race, "ines") == []
    race.at("08:40")
    await race.say("ana", "maren in at moor cross 0838")
    (one,) = await told(race, "ines")
    assert one.startswith("Maren in at Moor Cross, 08:38")
    assert "(reported by Ana)." in one
    assert words in one
    race.at("08:45")
    await race.say("olga", "maren in at moor cross 0839")
    await race.tick()
    assert len(await told(race, "ines")) == 1


async def test_out_is_not_in(race: Race) -> None:
    """'When she leaves' waits for that; where she is and no place is said, it is there."""
    race.at("08:40")
    await race.say("ana", "maren in at moor cross 0838")
    text = (await race.say("ines", "tell me when maren leaves")).text
    assert text.startswith("I’ll tell you at once when Maren is out of Moor Cross"), text
    assert await told(race, "ines") == []
    race.at("08:50")
    await race.say("ana", "maren out of moor cross 0849")
    assert (await told(race, "ines"))[0].startswith("Maren out of Moor Cross, 08:49")


async def test_what_can_not_be_any_more_is_told_too(race: Race) -> None:
    """She retired; or was reported farther on and never there."""
    await race.say("ines", "tell me when maren is in at brindle gate")
    race.at("08:40")
    await race.say("olga", "maren retired at moor cross, own choice")
    (over,) = await told(race, "ines")
    assert over.startswith("Maren’s race is over, before she was in at Brindle Gate."), over


async def test_passed_unseen(race: Race) -> None:
    """Reported at the next point, never at this one."""
    await race.say("ines", "tell me when maren is in at moor cross")
    race.at("10:40")
    await race.say("olga", "maren in at brindle gate 1038")
    (past,) = await told(race, "ines")
    assert past.startswith("Maren is past Moor Cross: nobody reported her there"), past


async def test_what_has_been_is_said_and_not_kept(race: Race) -> None:
    """With when."""
    text = (await race.say("ines", "wake me when maren is in at skelter mill")).text
    assert text.startswith("Maren is past that: "), text
    assert await race.entries("remind") == []  # type: ignore[attr-defined]


async def test_taken_back_nobody_is_told(race: Race) -> None:
    """By 'forget that', and with all others by 'cancel my wake up'; until then it is seen."""
    await race.say("ines", "wake me when maren is in at moor cross")
    (here,) = race_awaited(race, await race.call("ines", "GET", "/v1/me"))
    assert here["point"] == "moor"
    assert "taken back" in (await race.say("ines", "forget that")).text.lower()
    await race.say("ines", "tell me when maren leaves moor cross")
    gone = (await race.say("ines", "cancel my wake up")).text
    assert gone.startswith("Cancelled: no message when Maren is out of Moor Cross."), gone
    race.at("08:40")
    await race.say("ana", "maren in at moor cross 0838 out 0840")
    assert await told(race, "ines") == []


def race_awaited(race: Race, me: dict[str, object]) -> list[dict[str, str]]:
    """What somebody waits to hear of in this event."""
    events: list[dict[str, object]] = me["events"]  # type: ignore[assignment]
    found = next(e for e in events if e["id"] == race.event.id)
    return found["awaited"]  # type: ignore[return-value]


async def test_wished_twice_it_is_kept_once(race: Race) -> None:
    """Who is not sure that it was understood writes it again; taken back it is gone, not half of it."""
    await race.say("ines", "wake me when maren is in at moor cross")
    again = await race.say("ines", "wake me when maren is in at moor cross")
    assert "Moor Cross" in again.text
    await race.press("ines", again, "Undo")
    race.at("08:40")
    await race.say("ana", "maren in at moor cross 0838")
    assert await told(race, "ines") == []


@pytest.mark.parametrize(
    "words",
    [
        "I'm going to sleep, wake me 20 min before maren gets to moor cross",
        "wake me 20 min before maren is in at moor cross",
        "leg mich hin, weck mich 20 min bevor maren in moor cross ist",
        "je dors, réveille-moi 20 min avant que maren arrive à moor cross",
    ],
)
async def test_so_long_before_she_comes_is_by_her_window(race: Race, words: str) -> None:
    """And not so long from now: told once, before she may be there at the earliest, and not once more when she is."""
    text = (await race.say("ines", words)).text
    assert "I’ll wake you 20 min before Maren may be at Moor Cross at the earliest" in text, text
    early, *_ = re.findall(r"\((\d\d:\d\d) to \d\d:\d\d\)", text)
    due = datetime.strptime(early, "%H:%M") - timedelta(minutes=20)  # noqa: DTZ007 - a wall time
    race.at(f"{due - timedelta(minutes=6):%H:%M}")
    await race.tick()
    assert await told(race, "ines") == []
    race.at(f"{due + timedelta(minutes=5):%H:%M}")
    await race.tick()
    (one,) = await told(race, "ines")
    assert one.startswith("Maren at Moor Cross: "), one
    race.at(f"{due + timedelta(minutes=30):%H:%M}")
    await race.say("ana", "maren in at moor cross")
    assert len(await told(race, "ines")) == 1
