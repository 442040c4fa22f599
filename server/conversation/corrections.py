"""Reports put right: one's own at a point that is taken back or gets a new time; anybody's that words name by its time."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.conversation import undoing
from server.conversation.dialogue import Handed
from server.conversation.telling.answer import Counts, StopFact
from server.conversation.understanding import PutRight, Report, Reported, Undo, puts_right
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.facts.entry import Kind

_MOVES = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})


def _own(visit: Visit, points: tuple[str, ...], runner: str | None) -> list[Handed]:
    """This person's reports at one of these points, oldest first."""
    return [
        h
        for h in visit.memory.handed
        if h.event == visit.event.id and h.report.point in points and runner in (None, h.report.runner)
    ]


async def undo_there(visit: Visit, meant: Undo) -> Reply:
    """Take back the last of this person's reports there; where there is none, nothing else instead."""
    found = [h for h in _own(visit, meant.points, meant.runner) if meant.kind in (None, h.report.kind)]
    if found:
        return await undoing.undo(visit, found[-1].entry)
    place = visit.point_name(meant.runner, meant.points[0])
    return visit.reply(visit.s("undo-none-there", place=place))


def as_before(visit: Visit, said: Reported) -> Reported:
    """'Mill was 7:45' with the kind of what this person reported there; as it stands where they reported nothing."""
    return Reported(tuple(_of_its_kind(visit, r) if r.own_there else r for r in said.reports))


def _of_its_kind(visit: Visit, one: Report) -> Report:
    own = [h for h in _own(visit, (one.point or "",), one.runner) if h.report.kind in _MOVES]
    fitting = [h for h in own if one.guessed or h.report.kind is one.kind]
    if not fitting:
        return replace(one, corrects=False, own_there=False)
    return replace(one, kind=fitting[-1].report.kind, guessed=False)


_LATELY = timedelta(hours=3)
"""Bare minutes with no place are of a report of so late (own choice): the same minutes come again each hour."""
_NEAR = timedelta(hours=1)
"""A time put right that does not say which was wrong is of a report so near to it (own choice)."""


@dataclass(frozen=True, slots=True)
class _Counted:
    """A time of hers that counts, and the report by which it does."""

    runner: str
    point: str
    kind: Kind
    at: datetime
    by: Counts


def by_its_time(visit: Visit, text: str) -> Reported | None:
    """'43 she went, not 41': the report of her that counts with the time said to be wrong, whoever gave it, now with the
    one said to be right; None where the words put nothing right that is known here."""
    said = puts_right(text, visit.context())
    if said is None:
        return None
    found = [c for c in _known(visit, said.runner) if _is_meant(visit, said, c)]
    if not found or len({c.runner for c in found}) > 1:
        return None
    mine = [c for c in found if c.by.by == visit.person.id]
    one = max(mine or found, key=lambda c: c.at)
    right = said.right.nearest(one.at, visit.event.time_zone)
    if right == one.at:
        return None
    report = Report(
        one.kind, right, one.runner, one.point, words=text, was=one.at, corrects=True, instead=one.by.entry
    )
    return Reported((report,))


def _known(visit: Visit, runner: str | None) -> Iterator[_Counted]:
    """Her times that count, of the runner named, else of all who may be meant; for who may not see those, what they
    themselves reported."""
    runners = (runner,) if runner else tuple(r.id for r in visit.context().candidates())
    for one in runners:
        try:
            facts = visit.view.facts(visit.event.id, one)
        except Refused:
            yield from _own_of(visit, one)
            continue
        for stop in facts.stops:
            yield from _times_of(one, stop)


def _own_of(visit: Visit, runner: str) -> Iterator[_Counted]:
    for h in visit.memory.handed:
        r = h.report
        if (
            h.event == visit.event.id
            and r.runner == runner
            and r.kind in _MOVES
            and r.point
            and not h.unconfirmed
        ):
            yield _Counted(runner, r.point, r.kind, r.seen_at, Counts(h.entry, visit.person.id))


def _times_of(runner: str, stop: StopFact) -> Iterator[_Counted]:
    if stop.through and stop.arrived is not None and stop.came is not None:
        yield _Counted(runner, stop.point, Kind.THROUGH, stop.arrived, stop.came)
        return
    if stop.arrived is not None and stop.came is not None:
        yield _Counted(runner, stop.point, Kind.IN, stop.arrived, stop.came)
    if stop.left is not None and stop.went is not None:
        yield _Counted(runner, stop.point, Kind.OUT, stop.left, stop.went)


def _is_meant(visit: Visit, said: PutRight, one: _Counted) -> bool:
    if (said.points and one.point not in said.points) or (said.kinds and one.kind not in said.kinds):
        return False
    zone = visit.event.time_zone
    if said.wrong is None:
        return abs(said.right.nearest(one.at, zone) - one.at) <= _NEAR
    lately = said.wrong.hour is not None or bool(said.points) or visit.sent_at - one.at <= _LATELY
    return lately and said.wrong.is_of(one.at, zone)
