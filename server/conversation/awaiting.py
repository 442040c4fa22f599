"""'Wake me when she is in at the mill', or so long before: kept, told once when it is so or can't any more, seen and taken
back."""

from __future__ import annotations

from server.conversation import stand_in
from server.conversation.telling import answers
from server.conversation.telling.answer import PointAnswer, RunnerHere
from server.conversation.understanding import Requested
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.facts.awaiting import Awaited
from server.facts.entry import Kind
from server.facts.state import Going

__all__ = ["open_one", "wished"]


async def wished(visit: Visit, meant: Requested) -> Reply:
    """Keep the wish and say when that is likely; of what has been, or can't be any more, say that instead."""
    her = visit.runner(meant.runner) or visit.context().runner(None)
    if her is None:
        return visit.reply(visit.s("ask-runner"))
    mine = _next_of_mine(visit, her) if meant.amount is not None else None
    point = meant.point or mine or _where(visit, her, meant.edge)
    if point is None:
        return visit.reply(visit.s("remind-when"))
    place = visit.point_name(her.id, point)
    gone = _has_been(visit, her, point, meant.edge)
    if gone:
        return visit.reply(gone)
    if Going(her.going).race_over:
        return visit.reply(visit.s("await-race-over", runner=her.name, place=place))
    # Wished twice it is told once.
    same = (
        a.entry
        for a in visit.event.awaited
        if (a.runner, a.point, a.edge, a.before) == (her.id, point, meant.edge, meant.amount)
    )
    entry = next(same, None)
    if entry is None:
        noted = await stand_in.keep(
            visit, Kind.REMIND, meant.words, point=point, runner=her.id, edge=meant.edge, amount=meant.amount
        )
        entry = noted.entry
    there = _forecast(visit, her, point)
    window = visit.say.window(there.window) if there is not None and there.window is not None else "none"
    if meant.amount is not None and window != "none":
        length = visit.say.length(meant.amount)
        text = visit.s("await-before", runner=her.name, place=place, window=window, length=length)
        return visit.reply(text, visit.undo_button(entry))
    text = visit.s("await-set", runner=her.name, edge=meant.edge, place=place, window=window)
    return visit.reply(text, visit.undo_button(entry))


def open_one(visit: Visit, a: Awaited, key: str) -> str:
    """One wish that is open, in words."""
    her = visit.runner(a.runner)
    name = her.name if her is not None else ""
    return visit.s(key, runner=name, edge=a.edge, place=visit.point_name(a.runner, a.point))


def _where(visit: Visit, her: RunnerHere, edge: str) -> str | None:
    """Where no place is said: out of where she is; in where the writer waits for her, else at her next point."""
    if edge == "out" and her.at is not None:
        return her.at
    order = [p.id for p in her.points]
    ahead = order[order.index(her.reached) + 1 :] if her.reached in order else order
    mine = next((p for p in (her.own, visit.context().point) if p in ahead), None)
    return mine or next(iter(ahead), None)


def _next_of_mine(visit: Visit, her: RunnerHere) -> str | None:
    """Where the writer meets her next; None where that is nowhere."""
    try:
        told = visit.view.next(visit.event.id, her.id)
    except Refused:
        return None
    return next((m.values.point for m in told.meetings if m.mine and not m.values.lost), None)


def _has_been(visit: Visit, her: RunnerHere, point: str, edge: str) -> str:
    """That it has been, with when where the writer may know it; '' while it is still to come."""
    order = [p.id for p in her.points]
    reached = order.index(her.reached) if her.reached in order else -1
    here = order.index(point)
    if here > reached or (here == reached and edge == "out" and her.at == point):
        return ""
    try:
        stops = visit.view.facts(visit.event.id, her.id).stops
    except Refused:
        stops = ()
    stop = next((s for s in stops if s.point == point), None)
    if stop is None:
        return visit.s("await-past", runner=her.name, place=visit.point_name(her.id, point))
    kind, at = ("out", stop.left) if stop.left is not None else ("in", stop.arrived)
    if at is None:
        return visit.s("await-past", runner=her.name, place=stop.name)
    fact = visit.say.fact(kind, visit.say.place_of(stop.name, None))
    return visit.s("await-was", runner=her.name, fact=fact, when=visit.say.when(at))


def _forecast(visit: Visit, her: RunnerHere, point: str) -> PointAnswer | None:
    try:
        return answers.point_in(visit.view.forecast(visit.event.id, her.id), point)
    except Refused:
        return None
