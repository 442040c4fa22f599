"""Talk that sounds like danger is met with no number; danger beside words of talk is."""

from __future__ import annotations

import pytest

from server.conversation.understanding import Danger, read
from tests.bot import world


@pytest.mark.parametrize(
    "words",
    [
        "I am dying of boredom in this yard",
        "my phone is dying, two percent",
        "Notfall: kein Kaffee mehr im Kombi",
        "emergency: we are out of biscuits",
        "TEST TEST this is the radio drill: runner down at the ford, no real incident",
        "Übung: Rettungshubschrauber kommt gleich zur Vorführung, bitte keine Panik",
        "je meurs d'ennui sur ce parking",
    ],
)
def test_talk_that_sounds_like_danger_is_none(words: str) -> None:
    """No number and no question where words of danger stand in talk, as crew or volunteer."""
    assert read(words, world.crew_of_maren()).danger is Danger.NONE


@pytest.mark.parametrize(
    "words",
    [
        "she is dying, please",
        "this is not a drill, runner down at the ford",
        "Notfall: sie atmet kaum noch",
        "emergency at the mill, a lad has stopped breathing lol sorry shaking",
        "haha no seriously she hit her head and is confused",
    ],
)
def test_danger_beside_words_of_talk_is_danger(words: str) -> None:
    """'lol' and 'drill' take nothing from a grave sentence."""
    assert read(words, world.crew_of_maren()).danger is not Danger.NONE
