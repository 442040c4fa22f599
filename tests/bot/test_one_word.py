"""Requests in one word, in either language, whichever the writer reads."""

from __future__ import annotations

from dataclasses import replace

import pytest

from server.conversation.understanding import understand
from tests.bot import world


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
