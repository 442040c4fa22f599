"""Long messages: read to a limit, kept whole, and no call for help lost at their end; none takes for ever."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import ModuleType

import pytest

from server.conversation.understanding import Distress, Kept, Reported, Several, understand
from server.facts.entry import Kind


def _world() -> ModuleType:
    spec = importlib.util.spec_from_file_location("world_long", Path(__file__).parent / "world.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


CTX = _world().crew_of_maren()
CHAT = "We had soup and a sleep in the car and the view was nice. "


@pytest.mark.parametrize(
    "filler", ["so ok ", "ok and ", "she is ", "sie ist ", "a ", "214 in 1450, ", "x" * 40]
)
def test_no_repetition_takes_for_ever(filler: str) -> None:
    """'so ok so ok …' used to double the work with each 'ok': it would not come back in a lifetime."""
    assert understand((filler * 4_000)[:3_900], CTX) is not None


def test_a_long_message_is_read_at_its_beginning_and_kept_whole() -> None:
    """The report stands first, a diary after it: the report is made and every word stays with it."""
    text = "In at Brindle 14:50. " + CHAT * 60
    meant = understand(text, CTX)
    said, *besides = meant.parts if isinstance(meant, Several) else (meant,)
    assert isinstance(said, Reported)
    assert [(r.kind, r.point) for r in said.reports] == [(Kind.IN, "brindle")]
    assert text in [said.reports[0].words, *(k.words for k in besides if isinstance(k, Kept))]


@pytest.mark.parametrize("cry", ["She needs help!", "She is unconscious.", "Sie braucht Hilfe!"])
def test_a_call_for_help_at_the_end_of_a_long_message_is_heard(cry: str) -> None:
    """Past what is read for anything else; with where she was seen, and all the words."""
    text = "In at Brindle 14:50. " + CHAT * 60 + cry
    meant = understand(text, CTX)
    assert isinstance(meant, Distress)
    assert meant.words == text
    assert [(r.kind, r.point) for r in meant.reports] == [(Kind.IN, "brindle")]
