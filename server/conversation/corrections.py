"""One's own reports at a point: the one that is taken back, and the one that a new time is for."""

from __future__ import annotations

from dataclasses import replace

from server.conversation import undoing
from server.conversation.dialogue import Handed
from server.conversation.understanding import Report, Reported, Undo
from server.conversation.values import Reply
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
