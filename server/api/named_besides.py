"""A call for help that names another runner than its sender's own: 'help, Nora lies here' from Olle is about Nora."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Collection
from dataclasses import replace

from server.event.model import Event, Part
from server.facts.entry import Entry, Source

__all__ = ["besides", "call_for", "key_for"]

SHORT = 3
"""A name of fewer letters may well be another word (own choice)."""


def besides(event: Event, call: Entry, parts: Collection[Part]) -> tuple[str, ...]:
    """Runners whom the words name and for whom the call is not out; () where they name the runner it is out for, or a
    runner of the sender's own: the sender's words were understood with those in mind."""
    here = event.runner(call.runner) if call.runner is not None else None
    if here is None or _named(here.name, call.words):
        return ()
    theirs = {p.runner for p in parts} | {here.id}
    whole = None in {p.runner for p in parts}
    others = {p.name.casefold() for p in event.people if p.id not in {r.person for r in event.runners}}
    found = [r for r in event.runners if r.id != here.id and _named(r.name, call.words)]
    if whole or any(r.id in theirs or r.name.casefold() in others for r in found):
        return ()
    return tuple(r.id for r in found)


def _named(name: str, words: str) -> bool:
    """Whether the first name stands in the words, not as whose something is."""
    first = name.split()[0] if name.split() else ""
    return len(first) >= SHORT and bool(re.search(rf"\b{re.escape(first)}\b(?!['’]s)", words, re.IGNORECASE))


def call_for(call: Entry, runner: str) -> Entry:
    """The same call for her whom it names; whose it was stays its sender's."""
    return replace(call, id="", runner=runner, source=Source.SUPPORTER, key=key_for(call.id, runner))


def key_for(call: str, runner: str) -> str:
    """The key of the call of that id for another runner."""
    return "named-" + hashlib.sha256(f"{call} {runner}".encode()).hexdigest()[:40]
