"""A cut-off that has moved, by the path of every other change of the plan: what it is for whom first, then it counts, then
it is undone. What is kept is the organiser's race-level fact, as when it is said in a chat: never the event file."""

from __future__ import annotations

import asyncio
from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from server.api import reports
from server.api.ask import Ask, Inside, not_yours
from server.api.models import Change, Correct, RaceFact
from server.api.snapshot import Picture, as_if
from server.api.who_may import Call, May
from server.conversation.telling.answer import ChangeAnswer, ChangedFor
from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import reader_in
from server.event.model import CutOff, Event
from server.event.replan import NotPossibleError
from server.facts.cut_offs import cut_offs_at
from server.facts.entry import Entry, Kind, Source
from server.facts.state import RaceState
from server.watch.evaluate import evaluate
from server.watch.notice import Notice, NoticeKind

__all__ = ["Limit", "limits", "moved", "moved_back", "new_time"]


@dataclass(frozen=True, slots=True)
class Limit:
    """A cut-off as it stands: at which point, in or out, when."""

    point: str
    edge: str
    at: datetime


def limits(event: Event, race: RaceState, runner: str) -> tuple[Limit, ...]:
    """Those ahead of her, in running order."""
    mine = race.runner(runner)
    points = event.course_of(runner).points
    order = [p.id for p in points]
    return tuple(
        Limit(p.id, edge.value, at)
        for p in points
        if not mine.past(p.id, order)
        for edge, at in cut_offs_at(race, p, mine)
    )


def new_time(typed: str, limit: Limit, zone: str) -> datetime | None:
    """A time of day as typed ('18:30'): the one nearest to when the cut-off is now. None for what is none."""
    try:
        clock = time.fromisoformat(typed.strip())
    except ValueError:
        return None
    day = limit.at.astimezone(ZoneInfo(zone)).date()
    days = (day + timedelta(days=n) for n in (-1, 0, 1))
    return min(
        (datetime.combine(d, clock.replace(tzinfo=None), ZoneInfo(zone)) for d in days),
        key=lambda at: abs(at - limit.at),
    )


async def moved(ask: Ask, sent: Change, picture: Picture, version: int) -> ChangeAnswer:
    """What it is for whom; without `dry_run` it counts. NotPossibleError for what can't be."""
    _may(ask)
    edge = _edge(sent, picture)
    if sent.until is None:
        raise NotPossibleError("no-time", "until")
    said = picture.state.said_of(f"cut-off:{sent.point}:{edge}")
    if (sent.point, edge, sent.until) in picture.state.cut_offs_moved:
        if said is not None and said.by == ask.person and not sent.dry_run:
            return ChangeAnswer(version, done=True, entry=said.id)  # its answer was lost on the way
        raise NotPossibleError("nothing-changes", "until")
    people = await asyncio.to_thread(_heard, picture, _entry(ask, sent, edge))
    if sent.dry_run:
        return ChangeAnswer(version, done=False, people=people)
    fact = RaceFact(kind=Kind.CUT_OFF_MOVED, point=sent.point, until=sent.until, edge=edge)  # type: ignore[arg-type]
    noted = await reports.race_fact(replace(ask, body=fact))
    return ChangeAnswer(version, True, people, told=tuple(p.name for p in people), entry=noted.entry)


async def moved_back(ask: Ask, entry: str, version: int) -> ChangeAnswer:
    """The entry that moved one is taken back; those who heard of it hear when it is now."""
    _may(ask)
    found = await ask.parts.journal.entry(entry)
    if found is None or found.event != ask.event or found.kind is not Kind.CUT_OFF_MOVED:
        raise NotPossibleError("not-last", "undo_entry")
    inside = replace(ask, request=Inside({"entry": entry}), body=Correct(key=f"undo.{entry}"[:100]))
    noted = await reports.take_back(inside)
    return ChangeAnswer(version, True, told=noted.told, entry=noted.entry)


def _may(ask: Ask) -> None:
    if ask.may(Call.RACE) is not May.YES:
        raise not_yours(Call.RACE)


def _edge(sent: Change, picture: Picture) -> str:
    """Which cut-off of the point is meant: the one there is, where nobody says."""
    event = picture.event
    there: list[CutOff] = [
        c for course in event.courses for p in course.points if p.id == sent.point for c in p.cut_offs
    ]
    edges = [c.edge.value for c in there]
    if sent.point is None or not edges or (sent.edge is not None and sent.edge not in edges):
        raise NotPossibleError("no-cut-off", "point")
    if not any(
        limit.point == sent.point for r in event.runners for limit in limits(event, picture.state, r.id)
    ):
        raise NotPossibleError("behind", "point")
    return sent.edge or edges[-1]


def _entry(ask: Ask, sent: Change, edge: str) -> Entry:
    """The fact as it would be, had it come in now."""
    return Entry(
        id="looked-at",
        event=ask.event,
        runner=None,
        kind=Kind.CUT_OFF_MOVED,
        seen_at=ask.now,
        sent_at=ask.now,
        received_at=ask.now,
        by=ask.person,
        source=Source.VOLUNTEER,
        sender="looked at",
        key="looked-at",
        via="looked at",
        point=sent.point,
        until=sent.until,
        edge=edge,
    )


def _heard(picture: Picture, entry: Entry) -> tuple[ChangedFor, ...]:
    """What each person would be told that they would not be otherwise, in their own order of urgency."""
    now = picture.now
    known = {_of(n) for n in evaluate(picture.situation, now).owed}
    new = [
        n for n in evaluate(as_if(picture, picture.built, entry).situation, now).owed if _of(n) not in known
    ]
    event, reader = picture.built.event, reader_in(picture.built.event, entry.by)
    found: dict[str, list[str]] = {}
    for n in new:
        if n.key.kind is not NoticeKind.CORRECTION and any(p.id == n.key.person for p in event.people):
            said = found.setdefault(n.key.person, [])
            text = say_notice(n, event, reader, now).text
            said += [text] if text not in said else []
    return tuple(ChangedFor(who, event.person(who).name, tuple(texts)) for who, texts in found.items())


def _of(notice: Notice) -> tuple[object, ...]:
    return notice.key.person, notice.key.kind, notice.key.runner, notice.occasion
