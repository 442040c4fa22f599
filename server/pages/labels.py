"""The pages' own short words, in each language: Fluent files beside this module, English behind the others."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from importlib import resources

import structlog
from fluent.runtime import FluentBundle, FluentResource

FALLBACK = "en"
log = structlog.get_logger("pages")


@cache
def _bundle(language: str) -> FluentBundle:
    text = resources.files(__package__).joinpath(f"{language}.ftl").read_text(encoding="utf-8")
    bundle = FluentBundle([language], use_isolating=False)
    bundle.add_resource(FluentResource(text))
    return bundle


@cache
def languages() -> tuple[str, ...]:
    """The languages the pages are written in."""
    found = (f.name.removesuffix(".ftl") for f in resources.files(__package__).iterdir())
    return tuple(sorted(n for n in found if len(n) == 2))


def label(language: str, key: str, **values: str) -> str:
    """A word or sentence of the pages; KeyError for a key that even English lacks.

    A value that the call forgot leaves its name in the sentence and a line in the log: at night a board with half a
    sentence is worth more than none. `tests/pages/test_labels.py` holds every call to its values.
    """
    for chosen in (language, FALLBACK):
        if chosen in languages() and _bundle(chosen).has_message(key):
            pattern = _bundle(chosen).get_message(key).value
            if pattern is None:
                raise KeyError(f"{chosen}.ftl: {key} has no text")
            text, errors = _bundle(chosen).format_pattern(pattern, dict(values))
            if errors:
                log.error("label lacks a value", file=f"{chosen}.ftl", key=key, error=str(errors[0]))
            return str(text)
    raise KeyError(f"{FALLBACK}.ftl has no {key!r}")


def labels(language: str) -> Callable[..., str]:
    """`label` for one language, as templates call it."""

    def say(key: str, **values: str) -> str:
        return label(language, key, **values)

    return say
