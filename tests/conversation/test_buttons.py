"""No two buttons under one text read alike: whoever presses at 3 a.m. reads the label and nothing else."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from server import sentences
from server.conversation.reported import _WAYS
from server.conversation.telling.message import Button, told_apart
from server.conversation.telling.notices import ANSWERS, label_key
from server.sentences import sentence

PLACE = {"place": "Mill", "runner": "Maren", "event": "The Round", "word": "word"}
TOGETHER: dict[str, tuple[str, ...]] = {
    "under an alarm": ("button-alarm-known", "button-alarm-tell"),
    "what is expected next": ("button-in", "button-through", "button-not-here-yet"),
    "after a report": ("button-undo", "button-out", *_WAYS.values()),
    "when": ("button-just-now", "button-ten-ago", "button-twenty-ago"),
    "judged": ("button-right", "button-wrong", "button-from-her"),
    "in danger": ("button-danger-yes", "button-danger-no"),
    "joining": ("button-join", "button-not-me"),
    "after an answer": (
        "button-next",
        "button-after",
        "button-bring",
        "button-where",
        "button-in",
        "button-out",
    ),
    "out of what": ("choice-left", "choice-left-plain", "choice-over", "choice-else"),
    "who is there": ("choice-crew", "choice-her"),
    "for whom": ("choice-both", "choice-all", "choice-else"),
}
"""Buttons that one reply may hold, by what it is about."""


def keys_of(language: str) -> set[str]:
    """The names of a language's sentences."""
    return set(sentences.keys(language))


def alike(labels: dict[str, str]) -> dict[str, list[str]]:
    """Labels that several sentences share."""
    by_label: dict[str, list[str]] = {}
    for key, label in labels.items():
        by_label.setdefault(label.casefold(), []).append(key)
    return {label: keys for label, keys in by_label.items() if len(keys) > 1}


@pytest.mark.parametrize("language", sentences.languages())
def test_no_two_meanings_read_alike(language: str) -> None:
    """Any two of what a sentence may have meant can be offered side by side."""
    meanings = {k: sentence(language, k) for k in keys_of("en") if k.startswith("meaning-")}
    assert len(meanings) > 60
    assert not alike(meanings)


@pytest.mark.parametrize("language", sentences.languages())
@pytest.mark.parametrize("about", list(TOGETHER))
def test_no_two_that_stand_together_read_alike(language: str, about: str) -> None:
    """What one reply offers reads apart in every language."""
    assert not alike({k: sentence(language, k, **PLACE) for k in dict.fromkeys(TOGETHER[about])})


@pytest.mark.parametrize("language", sentences.languages())
@pytest.mark.parametrize("kind", list(ANSWERS))
def test_no_two_answers_of_a_notice_read_alike(language: str, kind: str) -> None:
    """Neither do the answers under a notice, with what an alarm adds to them."""
    more = TOGETHER["under an alarm"]
    labels = {
        k: sentence(language, k, **PLACE) for k in (*(label_key(a, kind) for a in ANSWERS[kind]), *more)
    }
    assert not alike(labels)


LABELS = st.lists(st.sampled_from(["In at Camp", "In at Camp (2)", "Undo", "undo", ""]), max_size=8)


@given(st.lists(LABELS, max_size=4))
def test_whatever_is_offered_reads_apart(rows: list[list[str]]) -> None:
    """Any rows: the labels come out different, the first of each as it was, the data and the order kept."""
    made = tuple(tuple(Button(x, f"r|{i}|{j}") for j, x in enumerate(row)) for i, row in enumerate(rows))
    apart = told_apart(made)
    labels = [b.label for row in apart for b in row]
    assert len(set(labels)) == len(labels)
    assert [[b.data for b in row] for row in apart] == [[b.data for b in row] for row in made]
    before = [b.label for row in made for b in row]
    assert all(labels[before.index(x)] == x for x in before)
