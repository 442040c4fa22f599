"""Taking a report back and saying that it is right: by button, by a word, for one entry or all of a message."""

from __future__ import annotations

from dataclasses import replace

from server.conversation import actions, alarmed
from server.conversation.dialogue import Handed
from server.conversation.telling import replies
from server.conversation.telling.say import lines
from server.conversation.understanding import UNDO_WITHIN
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.facts.entry import Kind


async def undo_last(visit: Visit, *, whole: bool = False) -> Reply:
    """Take back this person's last report, if it is not older than ten minutes; `whole`: all that its message reported of
    that runner."""
    minutes = str(round(UNDO_WITHIN.total_seconds() / 60))
    if not visit.memory.handed:
        return visit.reply(visit.s("undo-nothing", minutes=minutes))
    last = alarmed.takes_back(visit) or visit.memory.handed[-1]
    for number, h in enumerate(_of_the_same(visit, last) if whole else (), start=1):
        await actions.take_back(h.entry, f"{visit.key(number)}.undo", UNDO_WITHIN)
        visit.memory.handed.remove(h)
    return await undo(visit, last.entry)


def _of_the_same(visit: Visit, last: Handed) -> list[Handed]:
    """What else the message of a report reported of that runner."""
    hers = (h for h in visit.memory.handed if last.message and h.message == last.message and h != last)
    return [h for h in hers if h.report.runner == last.report.runner]


async def undo(visit: Visit, entry: str, *, judged: bool = False) -> Reply:
    """Take back one entry; later than ten minutes only what still waits to be confirmed, or a call for help. The server
    keeps to that by when it stored the entry: a button outlives this memory. `judged`: 'wrong' under a notice that
    asked about it, which has no such limit."""
    handed = next((h for h in visit.memory.handed if h.entry == entry), None)
    if handed is None:
        # 'Undo' of that her race is over, when how has been told since, is of both.
        handed = next(
            (h for h in visit.memory.handed if h.also == entry and h.report.kind is Kind.RETIRED), None
        )
        entry = entry if handed is None else handed.entry
    called = handed is not None and handed.report.kind is Kind.ASKED_FOR_HELP
    within = None if judged else UNDO_WITHIN
    try:
        answer = await actions.take_back(entry, f"{visit.key()}.undo", within)
    except Refused as error:
        if error.code != "too_late":
            raise
        return _too_late(visit, handed)
    told = answer.told
    if handed is not None:
        answer = replace(answer, kind=handed.report.kind, at=handed.report.seen_at)
        if handed.also:
            how = await actions.take_back(handed.also, f"{visit.key()}.undo.how")
            told = tuple(dict.fromkeys((*told, *how.told)))
    gone = {entry}
    for number, h in enumerate(_same_call(visit, handed) if called else (), start=1):
        await actions.take_back(h.entry, f"{visit.key(number)}.undo")
        gone.add(h.entry)
    visit.memory.handed = [h for h in visit.memory.handed if h.entry not in gone]
    text = replies.say_undone(visit.say, answer, handed.report.words if handed else "")
    return visit.reply(lines(text, _told_to(visit, told)))


def _too_late(visit: Visit, handed: Handed | None) -> Reply:
    place = visit.point_name(handed.report.runner, handed.report.point) if handed else visit.some_place()
    minutes = str(round(UNDO_WITHIN.total_seconds() / 60))
    return visit.reply(visit.s("undo-over", minutes=minutes, place=place or visit.s("place-nowhere")))


def _same_call(visit: Visit, call: Handed | None) -> list[Handed]:
    """The calls for the other runners that the same message made: it was nothing for any of them."""
    calls = (h for h in visit.memory.handed if h.report.kind is Kind.ASKED_FOR_HELP)
    return [h for h in calls if call is not None and h != call and h.message and h.message == call.message]


def _told_to(visit: Visit, people: tuple[str, ...]) -> str:
    return visit.s("noted-told", names=visit.say.all(people)) if people else ""


def just_offered(visit: Visit, *, by_name: bool) -> Handed | None:
    """The report that this person handed in last, where they were asked 'is that right?' within the last minutes.
    A bare 'yes' (not `by_name`) is about it only while no notice to them has come since."""
    last = visit.memory.handed[-1] if visit.memory.handed else None
    if last is None or not last.unconfirmed or last.event != visit.event.id:
        return None
    newest = by_name or set(visit.event.open_notices) <= set(last.open_notices)
    return last if newest and visit.now - last.at <= UNDO_WITHIN else None


async def confirm_said(visit: Visit, last: Handed) -> Reply:
    """'Right' in words: of a message that made several reports it is about all of them."""
    others = [h for h in visit.memory.handed if h.unconfirmed and h.message == last.message and h != last]
    for number, h in enumerate(others if last.message else (), start=1):
        await confirm(visit, h.entry, number)
    return await confirm(visit, last.entry)


async def confirm(visit: Visit, entry: str, number: int = 0) -> Reply:
    """It is right: it counts from now on."""
    told = (await actions.confirm(entry, f"{visit.key(number)}.confirm")).told
    visit.memory.handed = [
        replace(h, unconfirmed=False) if h.entry == entry else h for h in visit.memory.handed
    ]
    return visit.reply(lines(visit.s("confirmed"), _told_to(visit, told)), visit.undo_button(entry))
