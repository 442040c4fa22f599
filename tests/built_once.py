"""What follows from an event file is worked out once a process, however many tests start a server on the same file.

It is the same for the same text and files, and nobody changes it; to work it out takes half a second, which is most of
what a test of one call costs. A test of what a server takes to work it out asks for `built_afresh` (tests/conftest.py).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from functools import lru_cache
from typing import Any

from server.api import building
from server.api.building import Built

really = building.build
_afresh = False


@lru_cache(maxsize=32)
def _once(
    text: str, files: tuple[tuple[str, bytes], ...], rest: tuple[Any, ...], named: tuple[tuple[str, Any], ...]
) -> Built:
    return really(text, dict(files), *rest, **dict(named))


def build(text: str, files: Mapping[str, bytes], *rest: Any, **named: Any) -> Built:
    """See `server.api.building.build`."""
    if _afresh:
        return really(text, files, *rest, **named)
    return _once(text, tuple(sorted(files.items())), rest, tuple(sorted(named.items())))


@contextmanager
def afresh() -> Iterator[None]:
    """Each build within is one of its own."""
    global _afresh
    _afresh = True
    try:
        yield
    finally:
        _afresh = False


building.build = build
