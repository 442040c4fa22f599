"""What people ask of their own part: whether they are needed at a place, what to know before their telephone is deaf, where
else to park, what there is to eat for them; and who would fetch her, or looks for her."""

from __future__ import annotations

from server.conversation import unknown
from server.conversation.telling import answers, plan_answers, standing, things
from server.conversation.telling.answer import PersonThere
from server.conversation.telling.say import lines
from server.conversation.understanding import Asked
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.event.model import PartKind

_GO = frozenset({PartKind.CREW, PartKind.PACER})


def own_meeting(visit: Visit, runner: str) -> str | None:
    """The point of the next meeting that this person is down for; None where there is none."""
    if not visit.kinds & _GO:
        return None
    coming = visit.view.next(visit.event.id, runner)
    return next((m.values.point for m in coming.meetings if m.mine and not m.values.lost), None)


async def needed(visit: Visit, asked: Asked) -> Reply:
    """'Am I needed there at all': whether they are down for it, who is, and where they go instead."""
    runner = asked.runner or ""
    own = unknown.own_next(visit)
    if asked.point is None:
        first = visit.s("needed-next" if own and visit.kinds & _GO else "needed-nowhere")
        return visit.reply(lines(first, own))
    told = visit.view.next(visit.event.id, runner, asked.point)
    place = visit.point_name(runner, asked.point)
    here = [m for m in told.meetings if m.values.point == asked.point]
    mine = [m for m in here if m.mine and visit.kinds & _GO]
    if mine:
        return visit.reply(
            lines(visit.s("needed-yes", place=place), things.say_leave(visit.say, told, asked.point))
        )
    names = tuple(dict.fromkeys(n for m in here for n in (*m.crew, *(p for o in m.others for p in o.people))))
    who = visit.say.all(names) if names else "none"
    return visit.reply(lines(visit.s("needed-no", place=place, crew=who), own))


async def silent(visit: Visit, asked: Asked) -> Reply:
    """Before they have no signal: the last that is known, their next meeting, and when it closes."""
    runner = asked.runner or ""
    where = visit.view.where(visit.event.id, runner)
    told = visit.view.next(visit.event.id, runner)
    point = asked.point or own_meeting(visit, runner)
    known = answers.say_where(visit.say, where).split("\n")[0]
    meeting = _without_ground(things.say_meeting(visit.say, told), known)
    return visit.reply(lines(known, meeting, _closes(visit, runner, point)))


def _without_ground(meeting: str, known: str) -> str:
    """The meeting without the lines that say once more what was last known."""
    return lines(*(x for x in meeting.split("\n")[:8] if x not in known))


def _closes(visit: Visit, runner: str, point: str | None) -> str:
    limits = visit.view.cut_offs(visit.event.id, runner)
    if point is None or all(c.point != point for c in limits.cut_offs):
        return ""
    place = visit.point_name(runner, point)
    return plan_answers.say_cut_offs(visit.say, limits, point, place).split("\n")[0]


async def parking(visit: Visit, asked: Asked) -> Reply:
    """Where crew park by the plan, and that it knows no other place."""
    runner = asked.runner or ""
    point = asked.point or visit.context().point or own_meeting(visit, runner)
    here = next((p for r in visit.event.runners for p in r.points if p.id == point), None)
    known = (
        visit.s("parking-known", place=here.name, parking=here.parking)
        if here is not None and here.parking
        else ""
    )
    return visit.reply(lines(visit.s("parking-else-unknown", **_control(visit)), known))


async def crew_food(visit: Visit, _asked: Asked) -> Reply:
    """Nothing is known of what crew eat; hers is not theirs."""
    return visit.reply(visit.s("crew-food-unknown"))


async def fetch(visit: Visit, asked: Asked) -> Reply:
    """Who would fetch her from a place: nobody is written down for it; who is nearest by the plan, and whom to ring."""
    runner, control = asked.runner or "", _control(visit)
    there = visit.runner(runner)
    if asked.point is None or there is None:
        return visit.reply(lines(visit.s("fetch-unknown", **control), *_on_the_way(visit)))
    place = visit.point_name(runner, asked.point)
    ids = [p.id for p in there.points]
    access = next((p.crew_access for p in there.points if p.id == asked.point), False)
    first = visit.s("fetch-access" if access else "fetch-no-access", place=place)
    ahead = [p.name for p in there.points[ids.index(asked.point) :] if p.crew_access]
    people = [p for p in _people(visit) if p.at_name in ahead or p.bound_for in ahead]
    near = min((ahead.index(_place(p, ahead)) for p in people), default=None)
    nearest = [p for p in people if near is not None and ahead.index(_place(p, ahead)) == near]
    who = [_line(visit, p) for p in nearest if p.name != there.name]
    told = (visit.s("fetch-nearest"), *who) if who else ()
    return visit.reply(lines(first, *told, visit.s("fetch-unknown", **control)))


def _place(one: PersonThere, ahead: list[str]) -> str:
    return one.at_name if one.at_name in ahead else one.bound_for


async def on_spot(visit: Visit, asked: Asked) -> Reply:
    """Who is where and may look for her; of an open alarm who has it first."""
    told = visit.view.facts(visit.event.id, asked.runner or "")
    people = _people(visit)
    there = tuple(_line(visit, p) for p in people if p.at_name)
    bound = tuple(_line(visit, p) for p in people if not p.at_name)
    first = lines(*there) if there else lines(visit.s("on-spot-nobody"), *bound)
    known = visit.s("on-spot-search-unknown", **_control(visit))
    if not told.alarms:
        return visit.reply(lines(first, known))
    control = visit.event.race_control
    alarm = standing.say_told(visit.say, told, control, visit.event.emergency_number).split("\n")[0]
    return visit.reply(lines(first, alarm, known))


def _people(visit: Visit) -> list[PersonThere]:
    try:
        told = visit.view.people(visit.event.id)
    except Refused:
        return []
    runners = {r.name for r in visit.event.runners}
    return [p for p in told.people if p.name not in runners and (p.at_name or p.bound_for)]


def _on_the_way(visit: Visit) -> tuple[str, ...]:
    return tuple(_line(visit, p) for p in _people(visit) if p.at_name)


def _line(visit: Visit, one: PersonThere) -> str:
    values = {"name": one.name, "phone": one.phone or "none"}
    if one.at_name:
        since = visit.say.when(one.since) if one.since is not None else "none"
        return visit.s("near-there", place=one.at_name, since=since, **values)
    return visit.s("near-bound", place=one.bound_for, **values)


def _control(visit: Visit) -> dict[str, str | int]:
    control = visit.event.race_control
    return {"name": control.name, "phone": control.phone}
