"""Requests in one word, in either language, whichever the writer reads."""

from __future__ import annotations

import importlib.util
import sys
from dataclasses import replace
from pathlib import Path
from types import ModuleType

import pytest

from bot.words import understand


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


@pytest.mark.parametrize(
    ("text", "meaning"),
    [
        ("Treffen", "meeting"),
        ("Treffpunkte", "meeting"),
        ("Ziele", "goals"),
        ("ziele?", "goals"),
        ("Zeiten", "plan"),
        ("Abfahrt", "leave"),
        ("Fahrer", "who drives there"),
        ("Packliste", "bring"),
        ("Wetter", "weather"),
        ("Crew", "people"),
        ("meetings", "meeting"),
        ("meets", "meeting"),
        ("goals", "goals"),
        ("targets", "goals"),
        ("times", "plan"),
        ("weather", "weather"),
        ("drivers", "who drives there"),
        ("people", "people"),
        # one word of the same letters that is something else
        ("Ziel", "finish"),
    ],
)
def test_a_request_may_be_one_word(text: str, meaning: str) -> None:
    """Whichever language the writer reads: one German word has no other word beside it to say that it is German."""
    for language in ("en", "de"):
        if language == "en" and text == "Ziel":
            continue
        assert world.brief(understand(text, replace(world.crew_of_maren(), language=language))) == meaning
