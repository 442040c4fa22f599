"""Words that say she may be in danger: passed on at once or kept with the numbers to call in front, never lost."""

from __future__ import annotations

import importlib.util
from dataclasses import replace
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING

import pytest

from server.conversation import respond
from server.conversation.understanding import Danger, Distress, Reported, danger_of, read, understand

if TYPE_CHECKING:
    from conftest import Race


def _load_world() -> ModuleType:
    spec = importlib.util.spec_from_file_location("world_grave", Path(__file__).parent / "world.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


WORLD = _load_world()
AT_ONCE = (
    "she cant breathe", "can't breathe", "she is struggling to breathe", "she is having a seizure", "she is fitting",
    "fitting", "she has collapsed", "she is unconscious", "bleeding badly", "her leg is bleeding heavily",
    "bleeding wont stop", "she has chest pain", "pain in her chest", "she passed out", "she can't breathe, what do we do?",
    "sie bekommt keine luft", "sie blutet stark", "sie hat einen krampfanfall", "sie hat brustschmerzen",
    "sie ist bewusstlos",
)  # fmt: skip
NOT_HELP = (
    "she fell and is bleeding", "not making sense", "she is confused", "no chest pain", "not bleeding badly",
    "new shoes are fitting well", "she passed out of the mill 1455", "blood blister on her heel", "is she bleeding badly?",
    "can she breathe ok?", "sie redet wirr", "keine brustschmerzen", "sie ist gestürzt und blutet",
)  # fmt: skip
GRAVE = (
    "she fell and is bleeding", "not making sense", "she is talking rubbish", "slurring her words", "she hit her head",
    "sie ist gestürzt und blutet", "sie redet wirr", "sie ist auf den kopf gefallen", "sie krampft",
)  # fmt: skip
NOT_GRAVE = (
    "blister on her heel", "she is tired", "eating well", "not bleeding any more", "no longer confused", "in at mill 1455",
    "sie ist müde",
)  # fmt: skip


@pytest.mark.parametrize("words", AT_ONCE)
def test_what_nobody_may_wait_with_is_a_call_for_help(words: str) -> None:
    """From crew and volunteers alike, on her behalf and not their own."""
    for ctx in (WORLD.crew_of_maren(), WORLD.volunteer_at("lathe")):
        meant = understand(words, ctx)
        assert isinstance(meant, Distress), (words, WORLD.brief(meant))
        assert not meant.by_self


@pytest.mark.parametrize("words", ["cant breathe", "chest pain", "ich bekomme keine luft", "i passed out"])
def test_of_herself_it_is_her_own_call(words: str) -> None:
    """The runner who writes it is told what to do herself."""
    meant = understand(words, WORLD.the_runner())
    assert isinstance(meant, Distress), (words, WORLD.brief(meant))
    assert meant.by_self


@pytest.mark.parametrize("words", NOT_HELP)
def test_other_words_raise_no_alarm(words: str) -> None:
    """Less, its opposite, or something quite different is no call for help."""
    assert not isinstance(understand(words, WORLD.crew_of_maren()), Distress), words


def test_grave_words_and_others() -> None:
    """Which words put the numbers first, and which do not."""
    ctx = WORLD.crew_of_maren()
    assert [w for w in GRAVE if danger_of(w, ctx) is Danger.NONE] == []
    assert [w for w in NOT_GRAVE if danger_of(w, ctx) is not Danger.NONE] == []


@pytest.mark.parametrize("words", ["she fell and is bleeding", "not making sense", "her head is bleeding"])
async def test_grave_words_are_kept_with_the_numbers_first(race: Race, words: str) -> None:
    """The first line says whom to call and who decides; the words are kept as how she is."""
    lines = (await race.say("ana", words)).text.split("\n")
    assert lines[0] == (
        "If she or anybody near you is in danger call 112 now. Race control: +44 1632 960001. "
        "Medics decide whether she goes on."
    )
    assert lines[1] == f"Noted how Maren is: ‘{words}’"
    assert lines[-1] == "If everybody is to be told at once, write ‘she needs help’."
    assert [e.words for e in await race.entries("how she is")] == [words]  # type: ignore[attr-defined]
    assert not await race.entries("asked for help")


async def test_grave_words_in_german(race: Race) -> None:
    """In German the same, also while the runner is still asked for."""
    asked = await race.say("both", "sie ist gestürzt und blutet")
    assert asked.text.startswith(
        "Ist sie oder sonst jemand in Gefahr, ruf jetzt 112 an. Race control: +44 1632 960001."
    )
    await race.press("both", asked, "Maren")
    assert [e.words for e in await race.entries("how she is")] == ["sie ist gestürzt und blutet"]  # type: ignore[attr-defined]


async def test_collapsed_is_passed_on_at_once_and_can_be_undone(race: Race) -> None:
    """Crew with her: passed on without a tap, taken back by one word within ten minutes."""
    reply = await race.say("ana", "she cant breathe")
    assert reply.text.startswith("Is she hurt? Call 112. Race control: +44 1632 960001.")
    assert "Ines" in reply.text
    assert (await race.state()).runner("maren").help_open is not None
    await race.say("ana", "undo")
    assert (await race.state()).runner("maren").help_open is None


async def test_with_the_server_gone_the_numbers_still_come_first(race: Race) -> None:
    """Nothing is noted then, and whom to call stands in front of that."""
    await race.say("ana", "next")
    await race.runner.cleanup()
    text = (await race.say("ana", "she fell and is bleeding")).text
    assert text.startswith("If she or anybody near you is in danger call 112 now.")
    assert "NOTHING is noted yet" in text


@pytest.mark.parametrize(
    ("text", "seen"),
    [
        ("she fell and is bleeding badly, in at brindle 14:48", "in brindle 14:48"),
        ("in at brindle 14:55, she is unconscious", "in brindle 14:55"),
        ("sie braucht hilfe, in brindle angekommen 14:50", "in brindle 14:50"),
        ("she needs help! out of lathe 14:40", "out lathe 14:40"),
        ("she needs help at brindle", ""),
        ("she needs help, we have her in the car", ""),
        ("she needs help, is she in at brindle", ""),
    ],
)
def test_a_call_for_help_keeps_where_she_was_seen(text: str, seen: str) -> None:
    """The call comes first; a clause of its own that names the place is a report besides. Nothing ends the call."""
    meant = understand(text, WORLD.crew_of_maren())
    assert isinstance(meant, Distress)
    assert " & ".join(WORLD.brief(Reported((r,))) for r in meant.reports) == seen


async def test_grave_words_answered_as_a_question_have_the_number_first(race: Race) -> None:
    """What is no question and sounds like danger: whatever it is answered with, whom to call stands before it; a question
    about something else by somebody who only slept has its answer first."""
    text = (
        await race.say("ana", "missed her call, all it said was i dont know which way, since then nothing")
    ).text
    assert "call 112 now" in text.split("\n")[0]
    asked = (await race.say("ana", "I fell asleep, did I miss anything")).text
    assert "112" not in asked.split("\n")[0]


async def test_who_lies_in_a_wreck_reads_the_number_first(race: Race) -> None:
    """That Ana can't come is not all that she says."""
    words = "come off the road by a wall, vans on its side, my arm is bad and i cant get the door open"
    reply = await race.say("ana", words)
    assert "112" in reply.text.split("\n")[0]
    assert "Yes, tell everyone" in [b.label for row in reply.buttons for b in row]
    stuck = await race.say("ana", "stuck in traffic by the wall, 20 min")
    assert "Yes, tell everyone" not in [b.label for row in stuck.buttons for b in row]


async def test_what_home_hears_of_her_is_kept_and_told(race: Race) -> None:
    """Words of the safety contact that sound grave reach whoever is with her, the number before and the question."""
    words = "A man answered Maren's phone. Says he found it on a rock. No sign of her anywhere he says"
    said = await race.say("ines", words)
    assert "call 112" in said.text.split("\n")[0]
    assert "did not understand" not in said.text
    assert "Yes, tell everyone" in str(said.buttons)
    assert [e.words for e in await race.entries("how she is")] == [words]  # type: ignore[attr-defined]


async def test_who_goes_to_sleep_hears_when_to_leave(race_two_cars: Race) -> None:
    """Beside until when it is quiet."""
    lines = (await race_two_cars.say("ana", "nap for 20 min")).text.split("\n")
    assert lines[0].startswith("Sleep well. Other news waits until Sat 05:23")
    assert lines[1].startswith("Leave by ")
    assert not await race_two_cars.entries("resting")


async def test_in_doubt_the_number_is_the_last_line(race: Race, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of an ordinary reply, which is given as ever; only once."""
    plain = (await race.say("ana", "where is she")).text.split("\n")
    monkeypatch.setattr(respond, "read", lambda text, ctx: replace(read(text, ctx), danger=Danger.DOUBT))
    doubted = (await race.say("ana", "where is she")).text.split("\n")
    assert doubted == [*plain, "Is somebody in danger? Then call 112."]
