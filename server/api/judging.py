"""Whether a report that has just come in counts at once, or is kept as unconfirmed and asked about."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from server.api import answers
from server.api.picture import Picture
from server.api.who_may import May
from server.event.model import Part, PartKind
from server.facts.entry import Entry, Kind

_ASKED_ABOUT = "; "


def doubted(entry: Entry, picture: Picture, share: May, parts: Iterable[Part]) -> Entry:
    """The entry, marked unconfirmed with the reasons if its sender's word alone does not count or what it says
    can't be right. 'asked for help' is never marked: it counts at once."""
    if entry.kind is Kind.ASKED_FOR_HELP:
        return entry
    reasons = [*([entry.doubt] if entry.doubt else []), *_by_sender(entry, picture, share, parts)]
    return replace(entry, unconfirmed=entry.unconfirmed or bool(reasons), doubt=_ASKED_ABOUT.join(reasons))


def _by_sender(entry: Entry, picture: Picture, share: May, parts: Iterable[Part]) -> Iterable[str]:
    if share is May.SOME:
        yield "told by a supporter"
    posts = {p.point for p in parts if p.kind is PartKind.VOLUNTEER and p.point}
    others = any(p.kind is not PartKind.VOLUNTEER for p in parts)
    if posts and not others and entry.point is not None and entry.point not in posts:
        named = answers.point_name(picture.event, entry.runner or "", min(posts)) if entry.runner else ""
        yield f"told by a volunteer who stands at {named or min(posts)}"
