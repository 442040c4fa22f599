"""Two runners and one crew, and what ends a call for help: sentences in a world with two of one's own, and the desk."""

from __future__ import annotations

import importlib.util
import sys
from dataclasses import replace
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING

import pytest

from bot.words import Context, understand
from server.event.model import PartKind
from server.facts.state import Going

if TYPE_CHECKING:
    from conftest import Race


def _world() -> ModuleType:
    full = "tests_bot_world"
    if full not in sys.modules:
        spec = importlib.util.spec_from_file_location(full, Path(__file__).parent / "world.py")
        assert spec is not None
        assert spec.loader is not None
        module = importlib.util.module_from_spec(spec)
        sys.modules[full] = module
        spec.loader.exec_module(module)
    return sys.modules[full]


world = _world()


def _writer(part: str, language: str = "de") -> Context:
    """Somebody of that part for both runners; the runner herself has none but her own."""
    own = ("maren",) if part == "runner" else ("maren", "tove")
    ctx: Context = world.crew_of_maren()
    return replace(ctx, parts=frozenset({PartKind(part)}), own_runners=own, language=language)


@pytest.mark.parametrize(
    ("text", "part", "meaning"),
    [
        ("entwarnung", "safety contact", "ask runner"),
        ("alles gut, entwarnung", "safety contact", "ask runner"),
        ("Entwarnung für Maren", "safety contact", "stand-down - 15:10"),
        ("all good, stand down", "safety contact", "ask runner"),
        ("all clear for Maren", "safety contact", "stand-down - 15:10"),
        ("keine entwarnung", "safety contact", "unclear"),
        ("noch keine entwarnung", "safety contact", "unclear"),
        ("wieder auf dem weg, alles gut", "runner", "moving again - 15:10"),
        ("bin wieder auf der strecke", "runner", "moving again - 15:10"),
        ("weg wieder gefunden", "runner", "moving again - 15:10"),
        ("back on course all fine", "runner", "moving again - 15:10"),
        ("found the path again", "runner", "moving again - 15:10"),
        ("i can't find the path again", "runner", "distress"),
        ("finde den weg nicht wieder", "runner", "distress"),
        ("noch nicht wieder auf dem weg", "runner", "unclear"),
        ("still lost", "runner", "distress"),
    ],
)
def test_what_ends_a_call_for_help(text: str, part: str, meaning: str) -> None:
    """A stand-down and 'on the course again' are known in both languages, their opposites never taken for them."""
    assert world.brief(understand(text, _writer(part))) == meaning


async def test_a_stand_down_is_about_the_open_alarm(race: Race) -> None:
    """'Entwarnung' with two runners ends, once more asked, the alarm that is open, whoever was spoken of last."""
    race.at("07:40")
    await race.say("tove", "hab mich verlaufen")
    await race.tick()  # type: ignore[misc]
    await race.say("ines", "i have it")
    await race.say("ines", "where is maren")
    asked = await race.say("ines", "all good, stand down")
    assert asked.text == "End the alarm for Tove for everybody? It is still on: press ‘Right’ or write ‘yes’."
    assert (await race.state()).runner("tove").help_open is not None
    assert (await race.say("ines", "yes")).text.startswith("Confirmed.")
    assert [e.runner for e in await race.entries("stand-down")] == ["tove"]  # type: ignore[attr-defined]
    assert (await race.say("ines", "who knows about tove")).text.startswith("No alarm is open about Tove.")


async def test_going_on_leaves_the_call_for_help_open_until_it_is_taken_back(race: Race) -> None:
    """She says she is on the course again: noted, with how she is, and told that the alarm stays; 'undo' ends it,
    however late."""
    race.at("07:40")
    await race.say("maren", "i am lost")
    await race.tick()  # type: ignore[misc]
    race.at("08:00")
    told = (await race.say("maren", "back on course, all fine")).text.split("\n")
    assert any(x.startswith("The alarm about your call for help stays open all the same") for x in told)
    assert told[-1] == "If it was nothing, write ‘undo’: that takes your call for help back."
    assert len(await race.entries("how she is")) == 1
    assert (await race.say("ana", "who knows about this")).text.startswith("Nobody has taken the alarm")
    await race.say("maren", "undo")
    assert (await race.say("ana", "who knows about this")).text.startswith("No alarm is open about Maren.")
    assert (await race.state()).runner("maren").going is Going.MOVING


async def test_a_false_alarm_of_her_own_is_taken_back(race: Race) -> None:
    """A runner may not stand an alarm down, but her own call was hers to make: 'false alarm' takes it back."""
    await race.say("maren", "help")
    await race.tick()  # type: ignore[misc]
    await race.say("maren", "false alarm")
    assert (await race.say("ana", "who knows about this")).text.startswith("No alarm is open about Maren.")
