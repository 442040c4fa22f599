"""What whoever holds a runner's link for followers is shown, and the link itself, which she gives and takes back.

A share of its own, less than any part's: points of hers that were reached half an hour ago or longer, to a quarter of an
hour. No position, no estimate, no name of anybody else, no meeting, no alarm. It is worked out from what had come in by
then, so that nothing newer can show through.
"""

from __future__ import annotations

import asyncio
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from server.api.ask import Ask
from server.api.models import Followers
from server.api.parts import Parts
from server.api.snapshot import Picture
from server.conversation.telling.answer import FollowersAnswer
from server.conversation.telling.times import nearest
from server.facts.entry import Entry, Kind
from server.facts.fold import fold
from server.facts.state import Going
from server.journal import TokenInfo

__all__ = ["DELAY", "PATH", "Followed", "Reached", "bound", "followed", "followers"]

PATH = "/follow"
DELAY: Final = timedelta(minutes=30)
"""What is shown is as old at least (own choice: by then she is elsewhere)."""
STEP: Final = timedelta(minutes=15)
LASTS: Final = timedelta(days=7)
"""A link holds so long after the start, or after it was given where that is later."""
_SCOPE = "follow:"


@dataclass(frozen=True, slots=True)
class Reached:
    """A point that she has reached, how far along it is (km) and when, to a quarter of an hour."""

    name: str
    km: float
    at: datetime


@dataclass(frozen=True, slots=True)
class Followed:
    """One runner's race for those who follow it: `reached` in running order, the whole course's `km`, the name of the `next`
    point ('' where none is said), and whether she has started, finished, or goes no further (`over`)."""

    event: str
    runner: str
    zone: str
    km: float
    reached: tuple[Reached, ...]
    next: str
    started: bool
    finished: bool
    over: bool


def _scope(event: str, runner: str) -> str:
    return f"{_SCOPE}{event}/{runner}"


def bound(token: TokenInfo) -> tuple[str, str] | None:
    """The event and runner a link is for; None for a token of another kind."""
    found = next((s for s in token.scopes if s.startswith(_SCOPE)), None)
    if found is None:
        return None
    event, _, runner = found.removeprefix(_SCOPE).rpartition("/")
    return event, runner


async def followers(ask: Ask) -> FollowersAnswer:
    """POST …/followers: a link is given (the one before ends), or taken back. Without `on`: whether one holds."""
    sent, parts = ask.sent(Followers), ask.parts
    event = (await ask.picture()).built.event
    scope = _scope(event.id, ask.runner)
    held = [
        t
        for t in await parts.journal.tokens()
        if scope in t.scopes and (t.expires_at is None or t.expires_at > ask.now)
    ]
    if sent.on is None:
        return FollowersAnswer(bool(held))
    for token in held:
        await parts.journal.revoke_token(token.id, ask.now)
    if not sent.on:
        return FollowersAnswer(False)
    until = max(ask.now, event.starts) + LASTS
    secret = await parts.journal.issue_token(None, f"followers of {ask.runner}", [scope], ask.now, until)
    return FollowersAnswer(True, f"{ask.site}{PATH}?t={secret}")


async def followed(parts: Parts, event: str, runner: str, now: datetime) -> Followed | None:
    """What a link shows; None where the runner is in the event no more."""
    picture = await parts.pictures.take_together(event, now)
    if all(r.id != runner for r in picture.built.event.runners):
        return None
    return await asyncio.to_thread(_followed, picture, runner, now - DELAY)


def _followed(picture: Picture, runner: str, then: datetime) -> Followed:
    event = picture.built.event
    mine = fold(_known(picture.entries, then), event, then).runner(runner)
    points = event.course_of(runner).points
    times = {t.point: t for t in mine.times if not t.implied}
    seen = [
        (n, p, stamp)
        for n, p in enumerate(points)
        if (t := times.get(p.id)) is not None and (stamp := t.arrived or t.left) is not None
    ]
    last = seen[-1][0] if seen else 0
    going = mine.going.on_course
    return Followed(
        event=event.name,
        runner=event.runner(runner).name,
        zone=event.time_zone,
        km=max((p.km or 0.0 for p in points), default=0.0),
        reached=tuple(Reached(p.name, p.km or 0.0, nearest(stamp.at, STEP)) for _, p, stamp in seen),
        next=points[last + 1].name if going and last + 1 < len(points) else "",
        started=mine.going is not Going.BEFORE_START,
        finished=mine.finished is not None,
        over=mine.going.race_over,
    )


def _known(entries: tuple[Entry, ...], then: datetime) -> tuple[Entry, ...]:
    """What had come in by then, but for positions: a place between points is nobody's who follows."""
    return tuple(e for e in entries if e.received_at <= then and e.kind is not Kind.POSITION)
