"""The pages' own short words, in each language: `pages.ftl` in the folder of each (server/conversation/languages)."""

from __future__ import annotations

from collections.abc import Callable

import structlog

from server import sentences

log = structlog.get_logger("pages")


def label(language: str, key: str, **values: str) -> str:
    """A word or sentence of the pages; WordingError for a key that even the fallback lacks.

    A value that the call forgot leaves a gap in the sentence and a line in the log: at night a board with half a
    sentence is worth more than none. `tests/pages/test_labels.py` holds every call to its values.
    """
    text = sentences.label(language, key, **values)
    if sentences.GAP in text and not any(sentences.GAP in v for v in values.values()):
        log.error("label lacks a value", language=language, key=key)
    return text


def labels(language: str) -> Callable[..., str]:
    """`label` for one language, as templates call it."""

    def say(key: str, **values: str) -> str:
        return label(language, key, **values)

    return say
