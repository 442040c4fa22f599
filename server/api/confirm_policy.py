"""Whether a report that has just come in counts at once, or is kept as unconfirmed and asked about."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from server.api.snapshot import Picture
from server.api.who_may import May
from server.event.model import Part, PartKind
from server.facts.entry import Entry, Kind
from server.facts.validation import Reason, doubt

OTHER_POST = "other-post"
"""A volunteer reports from a point where they do not stand; worded, like every Reason, as `doubt-…`."""


def doubted(entry: Entry, picture: Picture, share: May, parts: Iterable[Part]) -> Entry:
    """The entry, marked unconfirmed with the reasons if its sender's word alone does not count or what it says
    can't be right. 'asked for help' is never marked: it counts at once."""
    if entry.kind is Kind.ASKED_FOR_HELP:
        return entry
    found = [r.strip() for r in entry.doubt.split(";")] + [
        _impossible(entry, picture),
        *_by_sender(entry, share, parts),
    ]
    reasons = [r for r in dict.fromkeys(found) if r]
    return replace(entry, unconfirmed=entry.unconfirmed or bool(reasons), doubt="; ".join(reasons))


def _impossible(entry: Entry, picture: Picture) -> str:
    known = entry.runner is not None and any(r.id == entry.runner for r in picture.event.runners)
    course = picture.course(entry.runner) if known and entry.runner else None
    found = doubt(entry, picture.state, picture.event, picture.now, course)
    return found.reason.value if found else ""


def _by_sender(entry: Entry, share: May, parts: Iterable[Part]) -> Iterable[str]:
    if share is May.SOME:
        yield Reason.SUPPORTER.value
    mine = tuple(parts)
    posts = {p.point for p in mine if p.kind is PartKind.VOLUNTEER and p.point}
    only_there = all(p.kind is PartKind.VOLUNTEER for p in mine)
    if posts and only_there and entry.point is not None and entry.point not in posts:
        yield OTHER_POST
