"""What somebody wants done: words for others, somebody else at their meeting, no news for a while, a reminder."""

from __future__ import annotations

from datetime import datetime, timedelta

from server.conversation import actions, asked, awaiting, light_left, stand_in
from server.conversation.telling import requests, things
from server.conversation.telling.say import lines
from server.conversation.understanding import Acknowledged, Asked, Question, Request, Requested
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import EVERYBODY, Kind

__all__ = ["requested", "to_bed"]

QUIET_MAX = timedelta(hours=12)
"""Longer than that nobody goes without news by one message (own choice)."""

SLEEP = timedelta(hours=6)
"""So long somebody sleeps who says that they go to bed, and not until when (own choice)."""


async def requested(visit: Visit, meant: Requested) -> Reply:
    """Done, and said what came of it; what can't be done here is said so, in the words it was asked in, with who can."""
    match meant.request:
        case Request.PASS_ON if meant.to:
            return await _told(visit, Kind.PASSED_ON, meant, meant.to)
        case Request.MEET_ELSEWHERE:
            reply = await _told(visit, Kind.MEET_ELSEWHERE, meant, EVERYBODY)
            return visit.reply(lines(reply.text, visit.s("elsewhere-unchanged")), reply.buttons)
        case Request.MUTE:
            return await _quiet(visit, meant)
        case Request.REMIND:
            return await _remind(visit, meant)
        case Request.LIGHT_LEFT:
            return await light_left.said(visit, meant)
        case Request.UNREMIND:
            return await _remind_no_more(visit)
        case Request.SWAP | Request.CANNOT_COME if meant.person is not None and meant.point is not None:
            return await stand_in.swap(visit, meant.words, meant.person, meant.point)
        case Request.SWAP if already := _goes_already(visit, meant):
            return visit.reply(already)
        case _:
            return await _not_here(visit, meant)


async def _told(visit: Visit, kind: Kind, meant: Requested, to: str) -> Reply:
    noted = await stand_in.keep(visit, kind, meant.words, to, meant.point)
    return visit.reply(
        lines(requests.say_sent(visit.say, noted, meant.words), stand_in.undo_line(visit)),
        visit.undo_button(noted.entry),
    )


async def _quiet(visit: Visit, meant: Requested) -> Reply:
    """No news until a time; without one: news again where none was wanted, else until when."""
    until = _when(visit, meant)
    if until is None:
        if visit.event.quiet_until is None:
            return visit.reply(visit.s("quiet-how-long"))
        await stand_in.keep(visit, Kind.QUIET, meant.words, until=visit.now)
        return visit.reply(visit.s("quiet-over"))
    until = min(until, visit.now + QUIET_MAX)
    noted = await stand_in.keep(visit, Kind.QUIET, meant.words, until=until)
    return visit.reply(requests.say_quiet(visit.say, until), visit.undo_button(noted.entry))


async def to_bed(visit: Visit, said: Acknowledged) -> Reply:
    """Somebody goes to sleep: that says nothing of her, and news that wakes nobody anyway waits until they are up."""
    asleep = said.at is not None and visit.now < said.at <= visit.now + QUIET_MAX
    until = said.at if said.at is not None and asleep else visit.now + SLEEP
    noted = await stand_in.keep(visit, Kind.QUIET, said.words, until=until)
    text = visit.s("to-bed", when=visit.say.when(until))
    leave = _leave_by(visit, None)
    return visit.reply(lines(text, leave), visit.undo_button(noted.entry))


async def _remind(visit: Visit, meant: Requested) -> Reply:
    until = _when(visit, meant)
    if meant.edge and (until is None or meant.amount is not None):
        return await awaiting.wished(visit, meant)
    if until is None:
        return visit.reply(lines(_leave_tells(visit, meant), visit.s("remind-when")))
    noted = await stand_in.keep(visit, Kind.REMIND, meant.words, until=until)
    return visit.reply(requests.say_reminder(visit.say, until), visit.undo_button(noted.entry))


async def _remind_no_more(visit: Visit) -> Reply:
    """Every reminder of theirs that is still to come is taken back, and every wish to hear of her at once."""
    open_ones = (*(entry for entry, _ in visit.event.reminders), *(a.entry for a in visit.event.awaited))
    for number, entry in enumerate(open_ones, start=1):
        await actions.take_back(entry, f"{visit.key(number)}.unremind")
    if not open_ones:
        return visit.reply(visit.s("remind-none"))
    times = [visit.say.when(at) for _, at in visit.event.reminders]
    over = visit.s("remind-over", when=visit.say.all(times)) if times else ""
    return visit.reply(lines(over, *(awaiting.open_one(visit, a, "await-over") for a in visit.event.awaited)))


def _leave_tells(visit: Visit, meant: Requested) -> str:
    """'Shout when it's time': of whoever goes to a meeting, that a message tells them when to leave, and by when that is."""
    leave = _leave_by(visit, meant.runner)
    return lines(visit.s("remind-leave"), leave) if leave else ""


def _leave_by(visit: Visit, runner: str | None) -> str:
    """By when the writer leaves for the next meeting of theirs; '' where there is none to leave for."""
    her = visit.runner(runner) or visit.context().runner(None)
    if her is None or PartKind.CREW not in visit.kinds:
        return ""
    try:
        told = visit.view.next(visit.event.id, her.id)
    except Refused:
        return ""
    mine = next(
        (m for m in told.meetings if m.mine and not m.values.lost and m.values.leave_by is not None), None
    )
    if mine is None or mine.there or mine.on_way_since is not None:
        return ""
    return things.say_leave(visit.say, told, mine.values.point).split("\n")[0]


def _goes_already(visit: Visit, meant: Requested) -> str:
    """'I'll do the mill' of who goes there anyway; '' of anybody else."""
    her = visit.runner(meant.runner) or visit.context().runner(None)
    if her is None or meant.point is None or meant.person is not None:
        return ""
    try:
        told = visit.view.next(visit.event.id, her.id)
    except Refused:
        return ""
    mine = (m for m in told.meetings if m.mine and not m.values.lost and m.values.point == meant.point)
    if next(mine, None) is None:
        return ""
    return lines(
        visit.s("goes-already", place=visit.point_name(her.id, meant.point)), _leave_by(visit, her.id)
    )


def _when(visit: Visit, meant: Requested) -> datetime | None:
    """The time said, or how long from when it was said; None for neither, or one that is over."""
    at = meant.until or (None if meant.amount is None else visit.sent_at + meant.amount)
    return at if at is not None and at > visit.now else None


async def _not_here(visit: Visit, meant: Requested) -> Reply:
    key = "request-race" if meant.request is Request.PASS_ON else "request-swap"
    text = visit.s(key, words=meant.words)
    if meant.person is not None:
        there = await asked.answer(visit, Asked(Question.PEOPLE, person=meant.person, words=meant.words))
        return visit.reply(lines(text, there.text))
    return visit.reply(lines(text, await stand_in.numbers(visit)))
