"""What people are told they can write is understood when they write it, in the language in which they are told."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from server import sentences
from server.conversation.understanding import Asked, Unclear, understand
from server.event.model import PartKind
from server.sentences import sentence
from tests.bot import world

# Who is told it, and in which sentence the examples stand.
SENTENCES = (
    ("usage-crew", PartKind.CREW),
    ("usage-report", PartKind.CREW),
    ("usage-volunteer", PartKind.VOLUNTEER),
    ("usage-runner", PartKind.RUNNER),
    ("usage-answer", PartKind.SAFETY_CONTACT),
    ("window-how", PartKind.CREW),
    ("noted-drive-from", PartKind.CREW),
    ("noted-undo", PartKind.CREW),
    ("undo-over", PartKind.CREW),
    ("photo-how", PartKind.CREW),
    ("photo-unseen", PartKind.CREW),
    ("distress-not-hurt", PartKind.RUNNER),
    ("my-race-old", PartKind.RUNNER),
    ("not-understood", PartKind.CREW),
    ("nothing-to-say", PartKind.CREW),
    ("cards-which", PartKind.CREW),
    ("wake-up-answer", PartKind.CREW),
    ("retired-tell-race-control", PartKind.CREW),
    ("finished-crew", PartKind.CREW),
    ("retired-not-in-hand", PartKind.CREW),
    ("alarm-answer", PartKind.SAFETY_CONTACT),
    ("alarm-held-you-now", PartKind.SAFETY_CONTACT),
    ("test-alarm", PartKind.CREW),
    ("unreported-out", PartKind.CREW),
    ("stay-until", PartKind.CREW),
    ("stands-do", PartKind.SAFETY_CONTACT),
    ("late-home-write", PartKind.SAFETY_CONTACT),
    ("cannot-come-back", PartKind.CREW),
    ("undo-none-there", PartKind.CREW),
    ("report-whole", PartKind.CREW),
    ("grave-help", PartKind.CREW),
    ("grave-help-own", PartKind.RUNNER),
    ("not-understood-help", PartKind.RUNNER),
    ("help-was-nothing", PartKind.RUNNER),
    ("alarm-help-ends", PartKind.SAFETY_CONTACT),
    ("now-asked", PartKind.CREW),
    ("duty-runner", PartKind.RUNNER),
    ("duty-crew", PartKind.CREW),
    ("duty-supporter", PartKind.SUPPORTER),
)
QUOTED = re.compile(r"[‘‚]([^’‘‚]+?)[’‘]")
CASES = [
    (language, key, part, example)
    for language in sentences.languages()
    for key, part in SENTENCES
    for example in QUOTED.findall(
        sentence(
            language,
            key,
            place="Wether Lathe",
            minutes="10",
            name="Race control",
            phone="1",
            when="03:00",
            runner="Maren",
            emergency="112",
            control="Race control",
        )
    )
]


def test_there_are_examples() -> None:
    """The search finds examples in every language, or the test below would hold of nothing."""
    for language in sentences.languages():
        assert len([c for c in CASES if c[0] == language]) >= 25


@pytest.mark.parametrize(("language", "key", "part", "example"), CASES)
def test_what_is_shown_is_understood(language: str, key: str, part: PartKind, example: str) -> None:
    """Nobody is told to write something that the bot then does not know."""
    ctx = world.volunteer_at("lathe") if part is PartKind.VOLUNTEER else world.at_the_lathe()
    ctx = replace(ctx, parts=frozenset({part}), language=language)
    asked = understand("wann ist sie in kettle" if language == "de" else "when is she at kettle", ctx)
    last = asked if isinstance(asked, Asked) else None
    assert not isinstance(understand(example, replace(ctx, last=last)), Unclear), example
