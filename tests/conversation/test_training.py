"""The command that makes the model: the same from the same, and every example in its place."""

from __future__ import annotations

import tomllib

import numpy as np
import pytest

from server.conversation.understanding.policy import policy

pytest.importorskip("sklearn")


def test_trained_twice_it_is_the_same_file() -> None:
    """Byte for byte: of a part of the examples, which takes seconds."""
    from server.conversation.training.examples import examples
    from server.conversation.training.fit import fit, rows_of, write

    few = [e for i, e in enumerate(examples()) if i % 25 == 0]
    assert write(fit(rows_of(few))) == write(fit(rows_of(few)))


def test_every_example_is_of_a_known_intent_and_hand() -> None:
    """And there are enough of them, of several hands in each language."""
    from server.conversation.training.examples import GRAVE, HARMLESS, examples, worlds

    known = {*policy().tiers, GRAVE, HARMLESS}
    assert {i for e in examples() for i in e.intents} <= known
    assert {e.hand for e in examples()} <= set(worlds())
    count = {lang: sum(e.language == lang for e in examples()) for lang in {e.language for e in examples()}}
    assert count["en"] >= 3_000
    assert all(n >= 800 for n in count.values()), count


def test_the_model_is_made_of_the_examples_there_are() -> None:
    """Whoever changes them trains again: `python -m server.conversation.training`."""
    from server.conversation.training.__main__ import MODEL
    from server.conversation.training.examples import made_of

    with np.load(MODEL, allow_pickle=False) as f:
        assert str(f["made_of"][0]) == made_of()


def test_it_is_rarely_wrong_on_hands_it_was_not_trained_on() -> None:
    """As measured by the last whole training: below its thresholds it asks, or keeps and passes on. What the words allow
    (`gates.py`) and the question before are not in these figures."""
    from server.conversation.training.__main__ import HELD_OUT

    figures = tomllib.loads(HELD_OUT.read_text(encoding="utf-8"))
    for name in ("all", "language en", "language de", "language fr"):
        assert figures[name]["wrong answer"] <= 8, name
        assert figures[name]["wrong record"] <= 2, name
    assert figures["danger ask"]["ordinary"] <= 8
    assert figures["danger ask"]["grave"] >= 80
