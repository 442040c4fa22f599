"""What somebody wants told, held elsewhere, taken over or kept quiet: done, and said what came of it."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from conftest import Race


async def told(race: Race, who: str, kind: str) -> list[str]:
    """The texts of somebody's notices of that kind."""
    return [n["text"] for n in await race.notices(who) if n["kind"] == kind]


@pytest.mark.parametrize(
    "words",
    [
        "tell birgit to bring socks",
        "sag birgit sie soll socken mitbringen",
        "dis à birgit d'apporter des chaussettes",
    ],
)
async def test_words_go_to_the_person_named_as_they_were_written(race: Race, words: str) -> None:
    """To her alone, in her language's frame; the reply says to whom. No fact about a runner comes of it."""
    before = (await race.state()).runners
    text = (await race.say("ana", words)).text
    assert text.startswith(f"Told to Birgit: ‘{words}’"), text
    assert await told(race, "both", "passed on") == [f"Ana lässt sagen: ‚{words}‘"]
    assert await told(race, "ines", "passed on") == []
    assert (await race.state()).runners == before


async def test_for_everyone_is_her_crew_home_and_the_runner_and_no_supporter(race: Race) -> None:
    """Never whoever wrote it, those of the other runner only, a supporter or the organiser."""
    text = (await race.say("ana", "tell everyone we moved to the upper car park")).text
    assert text.startswith("Told to Maren, Birgit and Ines: ‘tell everyone"), text
    heard = {
        w
        for w in ("maren", "both", "ines", "ana", "tove", "fan", "olga", "vera")
        if await told(race, w, "passed on")
    }
    assert heard == {"maren", "both", "ines"}


async def test_taken_back_those_who_read_it_hear_that(race: Race) -> None:
    """By the button; and the same message again counts once."""
    reply = await race.say("ana", "tell birgit to bring socks", key="k1")
    again = await race.say("ana", "tell birgit to bring socks", key="k1")
    assert again.text == reply.text
    assert len(await told(race, "both", "passed on")) == 1
    race.clock.set(race.clock.now() + timedelta(minutes=1))
    await race.press("ana", reply, "Undo")
    assert (await told(race, "both", "passed on"))[-1] == "Ana nimmt das zurück: ‚tell birgit to bring socks‘"


async def test_grave_words_get_the_number_first_and_still_go_out(race: Race) -> None:
    """The danger check runs before."""
    text = (await race.say("ana", "tell birgit that maren is unconscious at the mill")).text
    assert "112" in text.split("\n")[0], text


async def test_a_volunteer_tells_crew_and_nobody_else_and_a_supporter_nobody(race: Race) -> None:
    """What a supporter wants told is refused in words."""
    assert "Told to" in (await race.say("vera", "tell everyone the gate is locked")).text
    assert await told(race, "ana", "passed on")
    assert not await told(race, "maren", "passed on")
    text = (await race.say("fan", "tell ana to bring socks")).text
    assert "Told to" not in text
    assert len(await told(race, "ana", "passed on")) == 1


async def test_a_sleeper_reads_it_in_the_morning_and_the_reply_says_when(race: Race) -> None:
    """Unless they have to set out soon."""
    await race.say("ines", "quiet until 9")
    text = (await race.say("ana", "tell ines to call the hotel")).text
    assert "Ines reads it from" in text, text
    assert await told(race, "ines", "passed on") == []
    race.at("9:30")
    await race.tick()
    (text,) = await told(race, "ines", "passed on")
    assert text.endswith("Ana says: ‘tell ines to call the hotel’")


async def test_quiet_holds_news_back_until_then_and_is_ended_in_words(race: Race) -> None:
    """'Mute' without a time asks for one; 'unmute' ends it."""
    assert "Until when?" in (await race.say("ana", "mute")).text
    assert (await race.say("ana", "quiet until 8:30")).text.startswith("No news until 08:30.")
    race.clock.set(race.clock.now() + timedelta(minutes=1))
    assert "News comes again" in (await race.say("ana", "unmute")).text
    await race.say("both", "tell ana to bring socks")
    assert await told(race, "ana", "passed on")


@pytest.mark.parametrize(
    "words",
    [
        "off to bed",
        "going to sleep now, wake me if anything happens",
        "ich geh jetzt schlafen",
        "je vais me coucher",
    ],
)
async def test_who_goes_to_bed_says_nothing_of_her_and_is_left_to_sleep(race: Race, words: str) -> None:
    """News waits for them; of the runner the same words are her rest."""
    assert (await race.say("ana", words)).text.startswith("Sleep well. Other news waits until")
    state = await race.state()
    assert [(e.kind.value, e.by) for e in state.requests] == [("quiet until", "ana")]
    assert not state.runner("maren").rests


@pytest.mark.parametrize("words", ["remind me at 8 to fill the bottles", "wake me in half an hour"])
async def test_a_reminder_comes_at_its_time_in_their_words(race: Race, words: str) -> None:
    """Not before, and once."""
    assert (await race.say("ana", words)).text.startswith("I’ll remind you at 08:00."), words
    await race.tick()
    assert await told(race, "ana", "reminder") == []
    race.at("8:01")
    await race.tick()
    await race.tick()
    (text,) = await told(race, "ana", "reminder")
    assert words in text


async def test_only_the_meeting_that_was_named_is_fallen_out_of(race: Race) -> None:
    """And 'I can after all' takes it back."""
    text = (await race.say("ana", "i can't make it to brindle")).text
    assert text.startswith("Noted: Ana can’t come to Brindle Gate."), text
    (out,) = (await race.state()).fallen
    assert "gate" in (out.meeting or "")
    race.clock.set(race.clock.now() + timedelta(minutes=1))
    await race.say("ana", "i can come after all")
    assert (await race.state()).fallen == ()


async def test_asked_to_take_it_over_the_writer_keeps_it_until_taken(race: Race) -> None:
    """With a button; taken, it is theirs and the other is out of that one only."""
    text = (await race.say("ana", "can birgit take brindle instead of me")).text
    assert "Until somebody takes it, it stays with you." in text, text
    assert (await race.state()).fallen == ()
    (asked,) = [n for n in await race.notices("both") if n["kind"] == "asked to take over"]
    race.clock.set(race.clock.now() + timedelta(minutes=1))
    await race.call("both", "POST", f"/v1/events/hill/notices/{asked['short']}/answer", {"answer": "i go"})
    state = await race.state()
    assert [(t.person, t.meeting) for t in state.taken] == [("both", state.fallen[0].meeting)]
    assert [f.person for f in state.fallen] == ["ana"]


async def test_a_meeting_elsewhere_is_told_to_those_of_it_and_changes_nothing(race: Race) -> None:
    """Its crew and she herself."""
    text = (await race.say("ana", "we'll meet her at the bridge instead of brindle gate")).text
    assert "Nothing in the plan is changed." in text, text
    (heard,) = await told(race, "maren", "passed on")
    assert "Nothing in the plan is changed." in heard
    assert "Brindle Gate" in heard
