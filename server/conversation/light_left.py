"""Her torch left behind: told to everybody where it will be dark before she can have it, with what to do; a note by day."""

from __future__ import annotations

from server.conversation import reported, stand_in
from server.conversation.telling.answer import PointAnswer, RunnerHere
from server.conversation.telling.say import lines
from server.conversation.understanding import Report, Reported, Requested
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.facts.entry import EVERYBODY, Kind

__all__ = ["said"]


async def said(visit: Visit, meant: Requested) -> Reply:
    """It is no alarm, and what the dark needs: who meets her next brings one, race control is there for the rest."""
    her = visit.runner(meant.runner) or visit.context().runner(None)
    dark = _dark(visit, her) if her is not None else None
    if her is None or dark is None:
        note = Report(Kind.NOTE, visit.sent_at, her.id if her is not None else None, words=meant.words)
        return await reported.report(visit, Reported((note,)))
    noted = await stand_in.keep(visit, Kind.PASSED_ON, meant.words, EVERYBODY)
    names = visit.say.all(noted.told) if noted.told else "–"
    control = visit.event.race_control
    text = lines(
        visit.s("light-left", dark=visit.s("light-dark-at", place=dark.name), names=names),
        _meeting(visit, her),
        visit.s("light-carries", torch=her.torch) if her.torch else "",
        visit.s("light-control", name=control.name, phone=control.phone),
        stand_in.undo_line(visit),
    )
    return visit.reply(text, visit.undo_button(noted.entry))


def _dark(visit: Visit, her: RunnerHere) -> PointAnswer | None:
    """The first point ahead, up to the next where crew may meet her, at which it is dark when she is there."""
    try:
        points = visit.view.forecast(visit.event.id, her.id).points
    except Refused:
        return None
    ahead = [p for p in points if p.window is not None]
    until = next((i for i, p in enumerate(ahead) if p.crew_access), len(ahead) - 1)
    return next((p for p in ahead[: until + 1] if p.dark), None)


def _meeting(visit: Visit, her: RunnerHere) -> str:
    """Who meets her next, and where, whoever that is."""
    order = [p.id for p in her.points]
    ahead = her.points[order.index(her.reached) + 1 if her.reached in order else 0 :]
    for point in (p for p in ahead if p.crew_access):
        try:
            coming = visit.view.next(visit.event.id, her.id, point.id).meetings
        except Refused:
            return ""
        there = [m for m in coming if m.values.point == point.id and not m.values.lost]
        if there:
            crew = dict.fromkeys(name for m in there for name in m.crew)
            return visit.s("light-meet", place=point.name, crew=visit.say.all(crew))
    return ""
