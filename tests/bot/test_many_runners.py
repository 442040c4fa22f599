"""A call for help of somebody with a whole field and no runner of their own: nobody waits for the answer to 'which?'."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING, Any

import pytest

from bot.conversing import Conversing
from server.api.building import build
from server.facts.entry import Kind

if TYPE_CHECKING:
    from conftest import Race

MORE = ("Lene", "Ida", "Runa")


def _with_more(text: str) -> str:
    """Five runners instead of two, and a second organiser."""
    added = "".join(
        f'\n[[runners]]\nid = "{n.lower()}"\nname = "{n}"\nbib = "{300 + i}"\ntarget = {{ finish = "9:30" }}\n'
        for i, n in enumerate(MORE)
    )
    desk = '\n[[people]]\nid = "dora"\nname = "Dora"\nphone = "+44 1632 960020"\nparts = [{ kind = "organiser" }]\n'
    homes = ", ".join(f'{{ kind = "safety contact", runner = "{n.lower()}", ladder = 1 }}' for n in MORE)
    home = f'\n[[people]]\nid = "hugo"\nname = "Hugo"\nphone = "+44 1632 960021"\nparts = [{homes}]\n'
    return text + added + desk + home


@pytest.fixture
async def field(race: Race, event_text: str, event_files: dict[str, bytes]) -> Race:
    """The race at 07:30 with five runners."""
    text = _with_more(event_text)
    now = race.clock.now()
    await race.journal.store_event(text, event_files, build(text, event_files).event, "tests", now)
    code = await race.journal.invite("dora", race.event.id, "tests", now, timedelta(hours=1))
    await race.journal.redeem(code, "test", "dora", "tests", now)
    return race


async def _texts(race: Race, who: str) -> list[str]:
    return [n["text"] for n in await race.notices(who)]


async def _last(race: Race, who: str) -> str:
    return (await _texts(race, who))[-1]


async def _helps(race: Race) -> list[str | None]:
    entries = await race.journal.entries(race.event.id)
    return [e.runner for e in entries if e.kind is Kind.ASKED_FOR_HELP]


@pytest.mark.parametrize("who", ["olga", "vera"])
async def test_who_answers_for_the_race_is_told_at_once_and_the_sender_is_asked(
    field: Race, who: str
) -> None:
    """No runner's alarm is raised by a guess, and nobody waits: the organisers and those at home have it."""
    reply = await field.say(who, "she needs help, she collapsed")
    said = reply.text.split("\n")
    assert said[0] == "Is she hurt? Call 112. Race control: +44 1632 960001."
    assert "Dora" in said[1]
    assert "Ines" in said[1]
    assert said[2].startswith("You did not say which runner. Write her name or number now")
    labels = [b.label for row in reply.buttons for b in row]
    assert labels[:5] == ["Maren (214)", "Tove (87)", "Lene (300)", "Ida (301)", "Runa (302)"]
    assert await _helps(field) == [None]
    name = {"olga": "Olga", "vera": "Vera"}[who]
    for told in ("dora", "ines"):
        text = await _last(field, told)
        assert text.startswith(f"ALARM: CALL FOR HELP from {name}, NOT SAID FOR WHICH RUNNER.")
        assert "Words received: ‘she needs help, she collapsed’" in text
        assert "Answer ‘I have it’ and it is yours." in text
        assert "+44 1632 960001" in text
    assert all("CALL FOR HELP" not in t for t in await _texts(field, "fan"))


@pytest.mark.parametrize("how", ["button", "name", "number", "restarted"])
async def test_once_it_is_said_her_own_alarm_goes_out_and_all_hear_it(field: Race, how: str) -> None:
    """By button, name or bib, also after a restart: Tove's alarm, in the words of the call."""
    reply = await field.say("olga", "she needs help, she collapsed")
    field.at("07:31")
    if how == "restarted":
        field.desk = Conversing(field.api)
    if how in ("button", "restarted"):
        told = await field.press("olga", reply, "Tove")
    else:
        told = await field.say("olga", "it's Tove" if how == "name" else "87")
    assert told.text.startswith("For Tove: her own alarm is out.\nTold to ")
    assert await _helps(field) == [None, "tove"]
    await field.tick()  # type: ignore[misc]
    state = await field.state()
    call = state.runner("tove").help_open
    assert call is not None
    assert (call.words, call.by) == ("she needs help, she collapsed", "olga")
    home = await _texts(field, "ines")
    assert any(t.startswith("ALARM: HELP IS NEEDED for Tove (bib 87).") for t in home)
    assert any(
        t.startswith("Olga says now: the call for help is for Tove (bib 87). Her own alarm is out.")
        for t in home
    )
    assert not state.calls
    field.at("08:30")
    await field.tick()  # type: ignore[misc]
    assert sum(t.startswith("ALARM: CALL FOR HELP") for t in await _texts(field, "ines")) == 1


async def test_nobody_answers_and_it_goes_out_again(field: Race) -> None:
    """Every five minutes at first; once Dora has it Ines reads so, and Dora is asked again when it is time to look."""
    await field.say("olga", "she needs help")
    for minute in ("07:35", "07:40"):
        field.at(minute)
        await field.tick()  # type: ignore[misc]
    calls = [t for t in await _texts(field, "ines") if t.startswith("ALARM: CALL FOR HELP")]
    assert len(calls) == 3
    assert (await field.say("dora", "i have it")).text.startswith("It is yours")
    await field.tick()  # type: ignore[misc]
    assert "Dora has it and finds out who it is." in await _last(field, "ines")
    field.at("07:50")
    await field.tick()  # type: ignore[misc]
    assert (
        len([t for t in await _texts(field, "ines") if "Dora has it" not in t and "CALL FOR HELP" in t]) == 3
    )
    field.at("09:30")
    await field.tick()  # type: ignore[misc]
    assert "You have it: find out who it is." in await _last(field, "dora")


async def test_whoever_has_it_may_end_it(field: Race) -> None:
    """Dora rang and it was nothing: one deliberate press, and all read who said so."""
    await field.say("olga", "she needs help")
    await field.say("dora", "i have it")
    await field.tick()  # type: ignore[misc]
    assert (await _last(field, "dora")).split("\n")[0].startswith("ALARM: CALL FOR HELP from Olga")
    raw = await field.api._call("dora", "GET", f"/v1/events/{field.event.id}/notices", dict[str, Any])
    buttons = [b for n in raw.data["notices"] for row in n["buttons"] for b in row]
    (end,) = [b for b in buttons if b["label"].startswith("It was nothing")]
    await field.say("dora", button=end["data"])
    await field.tick()  # type: ignore[misc]
    assert (await _last(field, "ines")).startswith(
        "STAND-DOWN: the call for help from Olga has been taken back, by Dora."
    )
    assert not (await field.state()).calls


async def test_cannot_leaves_it_with_nobody(field: Race) -> None:
    """Who can't take it has not taken it: everybody is asked on."""
    await field.say("olga", "she needs help")
    await field.say("dora", "cannot")
    field.at("07:36")
    await field.tick()  # type: ignore[misc]
    assert len([t for t in await _texts(field, "ines") if t.startswith("ALARM: CALL FOR HELP")]) == 2


async def test_undo_ends_it_for_all_who_were_told(field: Race) -> None:
    """It was nothing: each of them reads that, and who said so."""
    await field.say("olga", "she needs help")
    assert (await field.say("olga", "undo")).text.startswith("Taken back: ‘she needs help’")
    await field.tick()  # type: ignore[misc]
    for who in ("dora", "ines"):
        assert (await _last(field, who)).startswith(
            "STAND-DOWN: the call for help from Olga has been taken back, by Olga."
        )


async def test_a_name_in_the_call_needs_none_of_this(field: Race) -> None:
    """'Lene needs help' is Lene's alarm."""
    reply = await field.say("olga", "lene needs help")
    assert "which runner" not in reply.text
    assert await _helps(field) == ["lene"]


async def test_two_or_three_runners_each_have_their_alarm(race: Race) -> None:
    """As before: with two, both alarms are out."""
    await race.say("olga", "she needs help")
    assert sorted(x or "" for x in await _helps(race)) == ["maren", "tove"]


async def test_whoever_called_hears_back_though_nobody_knows_for_whom(field: Race) -> None:
    """At five minutes that nobody has answered, with the number to call; then who finds out."""
    field.at("07:30")
    await field.say("olga", "she needs help, she collapsed")
    field.at("07:35")
    await field.tick()  # type: ignore[misc]
    back = [t for t in await _texts(field, "olga") if "call for help" in t]
    assert back[-1].startswith("NOBODY HAS ANSWERED, 5 min after your call for help: call 112 now.")
    await field.say("ines", "i have it")
    back = [t for t in await _texts(field, "olga") if "call for help" in t]
    assert back[-1].startswith("Ines HAS your call for help, since 07:35.")
