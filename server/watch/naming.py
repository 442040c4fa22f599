"""Calls for help that did not say for which of their sender's runners: out for each until somebody says for whom, by
confirming the call for her (and, of the others, taking it back)."""

from __future__ import annotations

from server.facts.entry import NOT_NAMED
from server.watch.runner_context import Sight

__all__ = ["named_by", "not_named_by"]


def not_named_by(sight: Sight, call: str) -> str:
    """Who made a call for help without saying for whom, which nobody has said since; '' for any other call."""
    made = next((e for e in sight.state.helps_open if e.id == call and e.doubt == NOT_NAMED), None)
    return "" if made is None or _said(sight, call) else made.by


def named_by(sight: Sight, call: str) -> str:
    """Who has said, after such a call, that it was for her; '' while nobody has."""
    unnamed = any(e.id == call and e.doubt == NOT_NAMED for e in sight.state.helps_open)
    return _said(sight, call) if unnamed else ""


def _said(sight: Sight, call: str) -> str:
    return next((e.by for e in sight.state.confirmed if e.about == call), "")
