"""How entries are named: ids from (sender, key), keys from content, what counts as the same content. Pure."""

from __future__ import annotations

import hashlib
from dataclasses import replace
from datetime import UTC, datetime, timedelta

from server.facts.entry import Entry
from server.journal.codec import dump_entry

__all__ = ["content_hash", "content_key", "entry_id"]

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


def entry_id(sender: str, key: str) -> str:
    """The id an entry gets when it brings none: 'e-' and 20 hex digits of SHA-256 over sender and key."""
    return "e-" + hashlib.sha256(f"{sender}\0{key}".encode()).hexdigest()[:20]


def content_hash(entry: Entry) -> str:
    """SHA-256 over what the reporter said. Left out: what a resend or our own judgement changes (id, sent and
    received times, route, unconfirmed, doubt, spread)."""
    said = replace(
        entry,
        id="",
        sent_at=_EPOCH,
        received_at=_EPOCH,
        via="",
        unconfirmed=False,
        doubt="",
        seen_spread=timedelta(0),
        seen_at=entry.seen_at.astimezone(UTC),
        until=entry.until.astimezone(UTC) if entry.until else None,
    )
    return hashlib.sha256(dump_entry(said).encode()).hexdigest()


def content_key(entry: Entry) -> str:
    """The key of a report whose sender (a tracker) makes none: 'h-' and 32 hex digits of its content, so that
    the same report again counts once. The entry's own `key` does not matter."""
    return "h-" + content_hash(replace(entry, key=""))[:32]
