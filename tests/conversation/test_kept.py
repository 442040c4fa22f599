"""What was spoken of, as text and back."""

from __future__ import annotations

import dataclasses
import json
from collections import deque
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from server.conversation import kept
from server.conversation.dialogue import Handed, Memory
from server.conversation.understanding import (
    AskBack,
    Asked,
    Choice,
    MeantFor,
    Need,
    Question,
    Report,
    Reported,
    Unclear,
)
from server.conversation.values import Incoming, Photo, Trouble
from server.facts.entry import Fix, Kind, Retired

words = st.text(max_size=12)
moments = st.integers(0, 10**7).map(lambda s: datetime(2027, 1, 1, tzinfo=UTC) + timedelta(seconds=s))
spans = st.integers(0, 10_000).map(lambda s: timedelta(seconds=s))
reports = st.builds(
    Report,
    st.sampled_from(Kind),
    moments,
    st.none() | words,
    st.none() | words,
    st.none() | st.sampled_from(Retired),
    st.none() | spans,
    st.none() | moments,
    words,
    st.booleans(),
)
asked = st.builds(Asked, st.sampled_from(Question), st.none() | words, factor=st.none() | st.floats(0.5, 3.0))
reported = st.builds(Reported, st.tuples(reports) | st.tuples(reports, reports))
plain = asked | reported | st.builds(Unclear, words) | st.builds(MeantFor, st.tuples(words), words)
choices = st.lists(st.builds(Choice, words, plain), max_size=3).map(tuple)
backs = st.builds(AskBack, st.sampled_from(Need), choices, words, st.none() | words, st.just(()))
incoming = st.builds(
    Incoming,
    words,
    words,
    moments,
    words,
    words,
    words,
    st.none() | st.builds(Fix, st.floats(-90, 90), st.floats(-180, 180)),
    st.none() | st.builds(Photo, words, trouble=st.just(Trouble.LOST)),
)
handed = st.builds(Handed, words, moments, words, reports, st.booleans(), words, words, st.just((3, 5)))
memories = st.builds(
    Memory,
    event=st.none() | words,
    event_at=st.none() | moments,
    last=st.none() | asked,
    need=st.none() | st.sampled_from(Need),
    choices=choices | st.lists(st.builds(Choice, words, backs), max_size=2).map(tuple),
    waiting=st.none() | incoming,
    pending=st.none() | reports,
    code=words,
    handed=st.lists(handed, max_size=3),
    picked=st.lists(words, max_size=3).map(lambda p: deque(p, maxlen=20)),
)


@given(memories)
def test_there_and_back(memory: Memory) -> None:
    """Whatever can be spoken of comes back the same, each choice as the meaning it was."""
    text = kept.dump(memory)
    assert text == "" or kept.load(text) == memory


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{",
        "[]",
        "3",
        '{"_": "Nobody"}',
        '{"_": "Memory", "choices": [{"_": "Choice"}]}',
        '{"_": "Memory", "x": 1}',
    ],
)
def test_what_cannot_be_read_is_forgotten(text: str) -> None:
    """Another version wrote it: people are asked again, and nobody gets an error."""
    assert kept.load(text) == Memory()


def test_a_memory_too_long_to_be_kept_is_forgotten() -> None:
    """Whatever somebody sends, the table does not grow with it."""
    long = Memory(code="x" * (kept.LONGEST + 1))
    assert kept.dump(long) == ""


def test_every_field_is_kept() -> None:
    """A field added to the memory is written too, unless it is as usual."""
    shown: dict[str, Any] = json.loads(kept.dump(Memory(event="e", code="c")))
    assert shown == {"_": "Memory", "event": "e", "code": "c"}
    assert {f.name for f in dataclasses.fields(Memory)} >= {
        "choices",
        "pending",
        "handed",
        "waiting",
        "picked",
    }
