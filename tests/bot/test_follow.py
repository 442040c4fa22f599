"""The link for followers, asked for and taken back in words."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from conftest import Race


async def holds(race: Race) -> int:
    """How many links for followers hold."""
    return sum(any(s.startswith("follow:") for s in t.scopes) for t in await race.journal.tokens())


@pytest.mark.parametrize(
    ("ask", "end"),
    [
        ("give me a link for followers", "take the link back"),
        ("Gib mir bitte einen Link für Zuschauer", "nimm den Link zurück"),
        ("donne-moi un lien pour les supporters", "retire le lien"),
    ],
)
async def test_the_runner_gives_it_and_takes_it_back(race: Race, ask: str, end: str) -> None:
    given = await race.say("maren", ask)
    assert re.search(r"http\S+/follow\?t=\S{40,}", given.text), given.text
    assert await holds(race) == 1
    await race.say("maren", ask)
    assert await holds(race) == 1, "an earlier one ends"
    back = await race.say("maren", end)
    assert "http" not in back.text
    assert await holds(race) == 0


async def test_nobody_else_gives_or_takes_it(race: Race) -> None:
    await race.say("maren", "give me a link for followers")
    for who in ("ana", "ines", "fan"):
        for words in ("give me a link for followers", "take the link back"):
            reply = await race.say(who, words)
            assert reply.text == "Only the runner gives followers a link, or takes it back.", reply.text
    assert await holds(race) == 1


@pytest.mark.parametrize(
    "words", ["is there a link", "the link is broken", "follow her there", "take the bottles back"]
)
async def test_other_words_make_no_link(race: Race, words: str) -> None:
    await race.say("maren", words)
    assert await holds(race) == 0
