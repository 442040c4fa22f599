"""Questions to which nobody here has the answer: said so plainly, whom to ask, and what is known all the same; and what
happened while somebody was not reading."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from server.conversation import quoted
from server.conversation.telling import answers, things
from server.conversation.telling.answer import PointHere
from server.conversation.telling.say import lines
from server.conversation.understanding import UNSAID, Asked, Question, asks_time_left, says
from server.conversation.values import Reply
from server.conversation.view import NoticeHere, Refused
from server.conversation.visit import Visit

SINCE_AT_MOST = timedelta(hours=12)
"""Whoever has not written for longer reads of so long (own choice: a night)."""
TOLD_MAX = 6
"""So many messages are named again, the newest; the others are in the chat above (own choice)."""


def beside(visit: Visit, asked: Asked, reply: Reply) -> Reply:
    """The reply with, before it, that the plan says nothing of what was named besides; as it is where it does name it."""
    said = reply.text.casefold()
    words = [w for w in asked.beside.split(", ") if w and w.casefold() not in said]
    says_so = asked.question is Question.LEAVE and asks_time_left(asked.words)
    if not words or reply.silent or says_so:
        return reply
    if asked.question is Question.ELSEWHERE:
        return reply
    if told := quoted.quoted(visit, asked.words):
        return replace(reply, text=lines(told, reply.text))
    named = ", ".join(words) if asked.beside != UNSAID else "none"
    return replace(reply, text=lines(visit.s("plan-says-nothing", words=named), reply.text))


async def weather(visit: Visit, asked: Asked) -> Reply:
    """Nothing is known of it; when she is there, and whether it is dark then, is."""
    first = visit.s("weather-unknown")
    runner = visit.runner(asked.runner) or visit.context().runner(None)
    if runner is None:
        return visit.reply(first)
    told = visit.view.forecast(visit.event.id, runner.id)
    p = answers.point_in(told, asked.point)
    if p is None or p.window is None:
        return visit.reply(first)
    dark = visit.s("bring-dark") if p.dark else ""
    return visit.reply(lines(first, answers.point_line(visit.say, told.runner_name, p), dark))


async def rivals(visit: Visit, asked: Asked) -> Reply:
    """Nothing is known of others; where she is stands below."""
    first = visit.s("rivals-unknown", **_control(visit))
    return await _with_where(visit, asked, first)


async def elsewhere(visit: Visit, asked: Asked) -> Reply:
    """What the file says of it in its writer's words; else that it is not in the file, and who may know it; of a place that
    is named where crew park, and when she is there."""
    of_parking = asked.point is not None and says(
        asked.words, "park"
    )  # where crew park is said below, and that it is no more
    if not of_parking and (told := quoted.quoted(visit, asked.words)):
        return await _with_where(visit, asked, told) if asked.point is not None else visit.reply(told)
    named = asked.beside if asked.beside not in ("", UNSAID) else "none"
    if asked.point is None:
        return visit.reply(visit.s("elsewhere-unknown", words=named))
    place = visit.point_name(asked.runner, asked.point)
    first = visit.s("elsewhere-unknown-at", words=named, place=place, **_control(visit))
    there = _point(visit, asked.point)
    parking = there.parking if there is not None and says(asked.words, "park") else ""
    known = visit.s("parking-known", place=place, parking=parking) if parking else ""
    return await _with_where(visit, asked, lines(first, known))


async def signal(visit: Visit, asked: Asked) -> Reply:
    """How the signal is by the file, of the place that is named, else of the next meeting; of a place of which it says
    nothing, who may know."""
    runner = visit.runner(asked.runner) or visit.context().runner(None)
    if runner is not None:
        meetings = visit.view.next(visit.event.id, runner.id, asked.point).meetings
        here = next((m for m in meetings if asked.point in (None, m.values.point)), None)
        if here is not None and here.values.no_signal:
            return visit.reply(visit.s("meeting-no-signal", place=here.name))
    there = _point(visit, asked.point)
    if there is None:
        return visit.reply(visit.s("signal-unknown"))
    key = "signal-known" if there.signal in ("none", "patchy") else "signal-unsaid"
    return visit.reply(visit.s(key, place=there.name, signal=there.signal, **_control(visit)))


def _point(visit: Visit, point: str | None) -> PointHere | None:
    return next((p for r in visit.event.runners for p in r.points if p.id == point), None)


async def why(visit: Visit, asked: Asked) -> Reply:
    """What times rest on, what their odds mean, and the last that is known of her."""
    runner = visit.runner(asked.runner) or visit.context().runner(None)
    if runner is None:
        return visit.reply(visit.s("why-times"))
    told = visit.view.where(visit.event.id, runner.id)
    return visit.reply(
        lines(
            visit.s("why-times"),
            answers.say_day(visit.say, told.fresh),
            answers.say_heard(visit.say, told.fresh, told.runner_name),
        )
    )


async def photo(visit: Visit, _asked: Asked) -> Reply:
    """How one is sent, and who sees it."""
    return visit.reply(visit.s("photo-how", place=visit.some_place()))


def _control(visit: Visit) -> dict[str, str | int]:
    control = visit.event.race_control
    return {"name": control.name, "phone": control.phone}


async def _with_where(visit: Visit, asked: Asked, first: str) -> Reply:
    runner = visit.runner(asked.runner) or visit.context().runner(None)
    if runner is None:
        return visit.reply(first)
    told = visit.view.forecast(visit.event.id, runner.id)
    p = answers.point_in(told, asked.point)
    if p is None or p.window is None:
        return visit.reply(first)
    return visit.reply(lines(first, answers.point_line(visit.say, told.runner_name, p)))


async def leave_there(visit: Visit, asked: Asked) -> Reply:
    """What may be left where is for the rules of the race; whether crew meet her there is known."""
    control = visit.event.race_control
    first = visit.s("leave-there-unknown", name=control.name, phone=control.phone)
    if asked.runner is None:
        return visit.reply(first)
    told = visit.view.next(visit.event.id, asked.runner)
    here = [m for m in told.meetings if asked.point in (None, m.values.point)][:1]
    place = visit.point_name(asked.runner, asked.point)
    if not here:
        return visit.reply(lines(first, visit.s("leave-there-no-crew", place=place) if place else ""))
    crew = visit.s("leave-there-crew", place=here[0].name, crew=visit.say.all(here[0].crew))
    try:
        kit = visit.view.kit(visit.event.id, asked.runner, here[0].values.point)
    except Refused:
        return visit.reply(lines(first, crew))  # a part that may not see the lists
    return visit.reply(lines(first, crew, things.say_take_back(visit.say, kit).split("\n")[0]))


async def catch_up(visit: Visit, _asked: Asked) -> Reply:
    """What this person was sent since they last wrote or answered, what of it still waits for them, and how it stands."""
    told = visit.view.notices(visit.event.id).notices
    heard = [n.answered_at for n in told if n.answered_at is not None]
    heard += [h.at for h in visit.memory.handed if h.event == visit.event.id]
    heard += [visit.memory.last_at] if visit.memory.last_at is not None else []
    since = max([*heard, visit.now - SINCE_AT_MOST])
    new = [n for n in told if (n.made_at is not None and n.made_at > since) or n.needs_answer]
    first = (
        visit.s("catch-up", when=visit.say.when(since), count=len(new))
        if new
        else visit.s("catch-up-nothing", when=visit.say.when(since))
    )
    return visit.reply(lines(first, *(_line(visit, n) for n in new[-TOLD_MAX:]), await _now(visit)))


def _line(visit: Visit, n: NoticeHere) -> str:
    text = n.text.split("\n")[0]
    when = visit.say.when(n.made_at) if n.made_at is not None else ""
    key = "catch-up-waits" if n.needs_answer else "catch-up-line"
    return visit.s(key, when=when, text=text, short=str(n.short))


def own_next(visit: Visit) -> str:
    """When to leave for their own next meeting, in one line; '' where they have none."""
    for runner in visit.context().candidates():
        try:
            coming = visit.view.next(visit.event.id, runner.id)
        except Refused:
            continue
        if any(m.mine for m in coming.meetings):
            return things.say_leave(visit.say, coming, None).split("\n")[0]
    return ""


async def _now(visit: Visit) -> str:
    """Of each of their runners the last that is known, and where the next meeting is."""
    mine = visit.context().candidates()
    found = []
    for runner in mine:
        try:
            where = visit.view.where(visit.event.id, runner.id)
            found.append(answers.say_where(visit.say, where).split("\n")[0])
            coming = visit.view.next(visit.event.id, runner.id)
        except Refused:
            continue
        if any(m.mine for m in coming.meetings):
            found.append(things.say_leave(visit.say, coming, None).split("\n")[0])
    return lines(*found)
