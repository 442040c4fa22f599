"""While a call for help is open: what anybody with a part asks of it is answered, and what she, whoever called or whoever
has it writes goes to the others word for word."""

from __future__ import annotations

from typing import Any

import pytest

from server.facts.entry import Fix

Race = Any


async def _texts(race: Race, who: str) -> list[str]:
    return [str(n["text"]) for n in await race.notices(who)]


async def _called(race: Race, who: str = "maren", words: str = "help, broken ankle") -> str:
    race.at("07:30")
    return (await race.say(who, words)).text


ASKS = (
    ("what do i do now", "was soll ich tun"),
    ("what do i tell them", "was sage ich ihnen"),
    ("should i call 112", "soll ich 112 rufen"),
)


@pytest.mark.parametrize("who", ["maren", "ana", "both", "ines", "olga", "vera"])
@pytest.mark.parametrize("asks", ASKS)
async def test_there_always_is_an_answer(race: Race, who: str, asks: tuple[str, str]) -> None:
    """For everybody with a part, in both languages: never 'I did not understand', and the number to call is in it."""
    await _called(race)
    for words in asks:
        text = (await race.say(who, words)).text
        assert text.split("\n")[0].strip()
        assert not text.startswith(("Not understood", "I did not", "Das habe ich nicht", "No alarm")), text
        if asks is not ASKS[1]:
            assert "112" in text, text


async def test_what_each_is_to_do(race: Race) -> None:
    """She hears how it stands; who is asked, to take it; who has it, whom to ring and that what they write reaches her."""
    await _called(race)
    assert "call for help" in (await race.say("maren", "what do i do now")).text.split("\n")[0]
    assert (await race.say("ana", "what do i do now")).text.startswith("Nobody has the alarm about Maren")
    await race.say("ana", "i have it")
    mine = (await race.say("ana", "what do i do now")).text
    assert mine.startswith("YOU HAVE THE ALARM about Maren")
    assert "Ring Maren" in mine
    assert (await race.say("ines", "what now")).text.startswith("Ana has the alarm about Maren")
    assert (await race.say("maren", "what now")).text.startswith("Ana HAS your call for help")
    read = (await race.say("ana", "what do i tell them")).text
    assert "“This is about runner Maren" in read
    assert "broken ankle" in read


async def test_whether_to_call_is_answered_with_no_alarm_open(race: Race) -> None:
    """When in doubt, yes: nobody needs an alarm for that."""
    text = (await race.say("ana", "should i call 112?")).text
    assert text.startswith("Call 112 AT ONCE if she does not wake or breathe normally")
    assert "If you are not sure: call 112." in text
    own = (await race.say("maren", "should i call 112?")).text
    assert own.startswith("Call 112 AT ONCE if you can hardly breathe")
    assert " she " not in own


async def test_a_supporter_learns_nothing_of_an_alarm_by_asking(race: Race) -> None:
    """Unless they called themselves."""
    await _called(race)
    assert "broken ankle" not in (await race.say("fan", "what do i tell them")).text
    assert (await race.say("fan", "should i call 112")).text.startswith("Call 112 AT ONCE")
    answer = await race.call("fan", "GET", f"/v1/events/{race.event.id}/runners/maren/alarm")
    assert (answer["alarm"], answer["known"]) == ("", "No alarm is open about Maren.")


@pytest.mark.parametrize("words", ["still here nobody came", "xyzzy qwrt", "the red hut above the beck"])
async def test_her_words_go_on_whether_understood_or_not(race: Race, words: str) -> None:
    """Word for word to those on it, and she reads how it stands."""
    await _called(race)
    race.at("07:33")
    reply = (await race.say("maren", words)).text
    for who in ("ana", "ines", "olga"):
        assert any(words in t for t in (await _texts(race, who))[-2:]), (who, await _texts(race, who))
    assert "Not understood" not in reply
    assert "call for help" in reply


async def test_what_the_holder_writes_goes_to_her(race: Race) -> None:
    """Not understood by anything here, and just what she waits for."""
    await _called(race)
    await race.say("ana", "i have it")
    race.at("07:35")
    reply = (await race.say("ana", "quad bike is coming up the quarry track")).text
    assert "Maren" in reply
    assert any("quad bike is coming up the quarry track" in t for t in await _texts(race, "maren"))


async def test_a_place_shared_by_whoever_called_is_theirs(race: Race) -> None:
    """The caller beside her shares where they are: passed on as theirs, and never her position."""
    await _called(race, "ana", "maren needs help, she fell")
    race.at("07:34")
    text = (await race.say("ana", fix=Fix(54.6, -2.7))).text
    assert "Where you are has gone to" in text
    assert any(t.startswith("PLACE of Ana") for t in await _texts(race, "ines"))
    assert not (await race.state()).runner("maren").positions


async def test_a_second_cry_joins_and_says_who_has_it(race: Race) -> None:
    """No second alarm; the reply says how the first stands; whoever calls for her reads what to do beside her."""
    first = await _called(race, "ana", "maren needs help, she fell")
    assert "If you are with her: stay with her" in first
    race.at("07:33")
    again = (await race.say("maren", "help please")).text
    assert (
        "An alarm about it is open already: this has joined it. NOBODY HAS ANSWERED YET: call 112." in again
    )
    await race.say("ines", "i have it")
    race.at("07:36")
    assert "this has joined it. Ines has it." in (await race.say("maren", "help it hurts")).text
    alarms = [t for t in await _texts(race, "olga") if t.startswith("ALARM")]
    assert len(alarms) == 1
