"""'Got her', 'she is with us': in hand while she is looked for or her race is over, else a sighting where crew stand."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING

import pytest

from server.facts.entry import Kind
from server.facts.state import Going

if TYPE_CHECKING:
    from conftest import Race


async def _kinds(race: Race, who: str) -> list[tuple[Kind, str | None, bool]]:
    """What somebody's words were kept as: kind, point, whether unconfirmed."""
    entries = await race.journal.entries(race.event.id)
    return [(e.kind, e.point, e.unconfirmed) for e in entries if e.by == who]


async def _open(race: Race) -> bool:
    return not (await race.say("olga", "who knows about maren")).text.startswith("No alarm is open")


@pytest.mark.parametrize("words", ["got her", "we've got her", "shes with us", "we have maren"])
async def test_with_no_alarm_it_is_a_sighting_where_they_stand(race: Race, words: str) -> None:
    """Ana stands at the gate: Maren is in there, and nobody at home reads that somebody 'has her in hand'."""
    race.at("09:40")
    await race.say("ana", "i am at brindle gate")
    race.at("09:50")
    told = await race.say("ana", words)
    assert told.text.startswith("Noted: Maren in at Brindle Gate, 09:50.")
    assert (await _kinds(race, "ana"))[-1] == (Kind.IN, "gate", False)


async def test_where_nobody_knows_where_they_stand_the_place_is_asked(race: Race) -> None:
    """Kept, and not counted until somebody stands for the place."""
    await race.say("ana", "got her")
    kind, point, waits = (await _kinds(race, "ana"))[-1]
    assert (kind, point is not None, waits) == (Kind.IN, True, True)


@pytest.mark.parametrize(
    ("who", "words"), [("ana", "got her"), ("both", "hab maren"), ("ana", "we have got her now")]
)
async def test_after_a_call_it_is_in_hand_and_ends_the_alarm(race: Race, who: str, words: str) -> None:
    """Said after the call: somebody has her."""
    await race.say("maren", "i am lost, help")
    await race.tick()  # type: ignore[misc]
    race.at("08:10")
    await race.say(who, words)
    await race.tick()  # type: ignore[misc]
    assert (await _kinds(race, who))[-1] == (Kind.IN_HAND, None, False)
    assert not await _open(race)


@pytest.mark.parametrize(
    ("who", "words", "asked", "yes"),
    [
        (
            "ana",
            "she is with us",
            "Maren is with you. Does she need no more help?",
            "yes",
        ),
        (
            "both",
            "maren ist bei uns",
            "Maren ist bei euch. Braucht sie keine Hilfe mehr?",
            "ja",
        ),
    ],
)
async def test_that_she_is_with_them_may_not_be_the_end_of_her_call(
    race: Race, who: str, words: str, asked: str, yes: str
) -> None:
    """Whoever asked for help may walk in and still need it: the alarm stays until they say that she does not."""
    await race.say("maren", "i am lost, help")
    await race.tick()  # type: ignore[misc]
    race.at("08:10")
    reply = await race.say(who, words)
    assert reply.text.startswith(asked)
    await race.tick()  # type: ignore[misc]
    assert (await _kinds(race, who))[-1] == (Kind.IN_HAND, None, True)
    assert await _open(race)
    await race.say(who, yes)
    await race.tick()  # type: ignore[misc]
    assert not await _open(race)


async def test_no_to_that_leaves_the_alarm_open_and_keeps_the_sighting(race: Race) -> None:
    """She is in at the gate, where Ana stands, and still needs help."""
    await race.say("ana", "i am at brindle gate")
    await race.say("maren", "help")
    await race.tick()  # type: ignore[misc]
    race.at("09:50")
    reply = await race.say("ana", "she's with us")
    assert reply.text.split("\n")[0] == "Noted: Maren in at Brindle Gate, 09:50."
    assert "Does she need no more help?" in reply.text
    await race.say("ana", "no")
    await race.tick()  # type: ignore[misc]
    assert await _open(race)
    state = (await race.state()).runner("maren")
    assert state.at_point("gate") is not None
    assert state.in_hand is None


@pytest.mark.parametrize("words", ["got her", "she is with us"])
async def test_after_an_overdue_alarm_it_is_in_hand(race: Race, words: str) -> None:
    """Nobody has heard of her for hours; now crew have her, and the search is over."""
    for _ in range(15):
        race.clock.set(race.clock.now() + timedelta(hours=1))
        await race.tick()  # type: ignore[misc]
        if await _open(race):
            break
    assert await _open(race)
    await race.say("ana", words)
    await race.tick()  # type: ignore[misc]
    assert (await _kinds(race, "ana"))[-1][0] is Kind.IN_HAND
    assert not await _open(race)


async def test_once_she_has_retired_it_is_in_hand(race: Race) -> None:
    """What crew who fetch her write."""
    await race.say("ana", "maren retired at moor cross, own choice")
    await race.say("ana", "yes")
    await race.say("ana", "got her")
    assert (await race.state()).runner("maren").going in (Going.IN_HAND, Going.CLOSED)


async def test_got_her_from_home_is_asked_about(race: Race) -> None:
    """At home it may be said of a voice on the telephone: the alarm stays until it is pressed that she is with somebody."""
    await race.say("maren", "i am lost, help")
    await race.tick()  # type: ignore[misc]
    race.at("08:10")
    said = await race.say("ines", "got her for maren")
    await race.tick()  # type: ignore[misc]
    assert (await _kinds(race, "ines"))[-1] == (Kind.IN_HAND, None, True)
    assert said.buttons
    assert await _open(race)
