"""The stop log by chat: 'Log the stop', then a press a thing, kept at once, then how much; or the same in words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from server.conversation.submit import hand_in, log_in, names_in
from server.conversation.telling import stop_log as told
from server.conversation.telling.answer import NotedAnswer
from server.conversation.telling.message import Button, Press, Rows, data, event_mark, tag, untag
from server.conversation.telling.say import lines
from server.conversation.understanding import (
    UNDO_WITHIN,
    Asked,
    Kept,
    Question,
    Report,
    Reported,
    Several,
    Unclear,
    Understood,
)
from server.conversation.understanding.logged import amount_of, asks_for_log, only_of_the_log, says_medic
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import Kind
from server.facts.stop_log import Item, Level, Logged

_LOGS = frozenset({PartKind.RUNNER, PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT})
_LAYOUT = (
    (Item.ATE, Item.DRANK, Item.PEED),
    (Item.MOOD, Item.FEET, Item.PAINKILLER),
    (Item.SLEPT, Item.CHANGED),
)
_AMOUNTS = {Item.ATE: (20, 40, 60), Item.DRANK: (250, 500, 750), Item.SLEPT: (10, 20, 60)}
_LEVELS = {
    Item.ATE: (Level.NONE,),
    Item.DRANK: (Level.NONE,),
    Item.PEED: (Level.GOOD, Level.BAD, Level.NONE),
    Item.MOOD: (Level.GOOD, Level.SO_SO, Level.BAD),
    Item.FEET: (Level.GOOD, Level.SO_SO, Level.BAD),
    Item.PAINKILLER: (Level.NONE,),
    Item.SLEPT: (),
    Item.CHANGED: (),
}
_WORDS = {Item.PAINKILLER: told.DRUGS, Item.CHANGED: told.CHANGES}
_MORE_WITHIN = timedelta(minutes=10)
"""So long after a press the next words may say how much of it (own choice)."""


def may_log(visit: Visit) -> bool:
    """Whether they may log."""
    return bool(visit.kinds & _LOGS)


def offer_button(visit: Visit, runner: str, point: str | None) -> Rows:
    """The one button under a report that she is in."""
    return ((Button(visit.s("button-log-stop"), _data(visit, runner, point)),),) if may_log(visit) else ()


def _data(visit: Visit, runner: str, point: str | None, item: str = "", value: str = "") -> str:
    return data(Press.LOG, tag(point or ""), tag(runner), item, value, event_mark(visit.event.id))


async def pressed(visit: Visit, fields: tuple[str, ...]) -> Reply:
    """The reply to a button of the log; ValueError for one that says nothing we know."""
    point_tag, runner_tag, item, value, *_ = fields
    runner = untag(runner_tag, (r.id for r in visit.event.runners))
    here = visit.runner(runner)
    if here is None:
        return visit.reply(visit.s("error-not_found"))
    if value == "medic":
        return await _medic(visit, here.id)
    point = untag(point_tag, (p.id for p in here.points))
    if not item:
        place = visit.point_name(here.id, point)
        text = visit.s("log-offer", runner=here.name, place=place or "none")
        return visit.reply(text, _items(visit, here.id, point))
    one = _report(visit, here.id, point, _valued(visit, Item(item), value))
    return said_back(visit, one, await hand_in(visit, one, visit.key(0)), offer=True)


def _valued(visit: Visit, item: Item, value: str) -> Logged:
    """What a button says: 'n' and a number, 'l' and a level, 'w' and a word of ours; '' that it was at all."""
    kind, rest = value[:1], value[1:]
    match kind:
        case "n":
            return Logged(item, float(rest))
        case "l":
            return Logged(item, level=Level(rest))
        case "w":
            return Logged(item, words=visit.s(f"log-word-{rest}"))
        case _:
            return Logged(item)


def _report(visit: Visit, runner: str, point: str | None, *logged: Logged, words: str = "") -> Report:
    return Report(Kind.LOG, visit.sent_at, runner, point, words=words, logged=logged)


async def noted(visit: Visit, one: Report, number: int = 0) -> Reply:
    """Keep an entry of the log, and offer how much of it, the other things, and to take it back."""
    return said_back(visit, one, await hand_in(visit, one, visit.key(number)))


def said_back(visit: Visit, one: Report, answer: NotedAnswer, *, offer: bool = False) -> Reply:
    """What was kept, and what may follow; offer: whether also what else there is to log, where no place is known."""
    minutes = str(round(UNDO_WITHIN.total_seconds() / 60))
    what = told.log_line(visit.say, one.logged)
    runner, single = one.runner or answer.runner, one.logged[0]
    more = _more(visit, runner, one.point, single) if len(one.logged) == 1 and _open(single) else ()
    text = lines(
        visit.s("log-noted", runner=answer.runner_name, what=what),
        visit.s(f"log-more-{single.item.value}") if more else "",
        visit.s("noted-undo", minutes=minutes),
    )
    rest = _items(visit, runner, one.point) if one.point or offer else ()
    return visit.reply(text, (*more, *rest, *visit.undo_button(answer.entry)))


def _open(one: Logged) -> bool:
    """Whether nothing but the thing itself was said."""
    return one.amount is None and one.level is None and not one.words


def _items(visit: Visit, runner: str, point: str | None) -> Rows:
    return tuple(
        tuple(Button(visit.s(f"log-item-{i.value}"), _data(visit, runner, point, i.value)) for i in row)
        for row in _LAYOUT
    )


def _more(visit: Visit, runner: str, point: str | None, one: Logged) -> Rows:
    """How much, how, or what: a row of buttons."""
    values: Sequence[tuple[str, Logged]] = (
        *((f"n{n}", Logged(one.item, n)) for n in _AMOUNTS.get(one.item, ())),
        *((f"l{level.value}", Logged(one.item, level=level)) for level in _LEVELS[one.item]),
        *((f"w{w}", Logged(one.item, words=visit.s(f"log-word-{w}"))) for w in _WORDS.get(one.item, ())),
    )
    row = tuple(
        Button(told.logged_words(visit.say, said), _data(visit, runner, point, one.item.value, value))
        for value, said in values
    )
    return tuple(row[i : i + 3] for i in range(0, len(row), 3))


# -- in words ---------------------------------------------------------------------------------------------


def plain(visit: Visit, text: str) -> bool:
    """Whether the words are a line of the log and nothing else, so that no doubt about danger is left."""
    return may_log(visit) and log_in(visit, text)[1] and only_of_the_log(text, names_in(visit))


def meant(visit: Visit, text: str, read: Understood, *, plainly: bool = False) -> Understood | None:
    """What the words say of the log: a question for it, how much of what was pressed, or things to log; None where they
    are for the reader alone. `plainly`: they are `plain`."""
    if asks_for_log(text) or (says_medic(text) and not may_log(visit)):
        runner = visit.context().runner(None) or next(iter(visit.event.runners), None)
        return Asked(Question.LOG, runner.id if runner else None, words=text)
    if not may_log(visit):
        return None
    more = _how_much(visit, text, read)
    if more is not None:
        return Reported((more,))
    how = isinstance(read, Reported) and all(r.kind in (Kind.HOW_SHE_IS, Kind.NOTE) for r in read.reports)
    if not plainly and not _may_be_log(read):
        return None
    her = visit.context().runner(None)
    logged, whole = log_in(visit, text)
    if not logged or not whole:
        return None
    if any(one.level is Level.BAD for one in logged):
        return None if how else _how_she_is(visit, text)  # what is bad is told to the others
    named = next((r.runner for r in read.reports if r.runner), None) if isinstance(read, Reported) else None
    here = visit.runner(named) if named else her
    if here is None:
        return None
    return Reported((_report(visit, here.id, here.at, *logged, words=text),))


def how_she_is(visit: Visit, text: str, read: Understood) -> Understood | None:
    """Words of the log that sound like danger, as words of how she is, where the reader made a question or less of them:
    'peed dark brown' is none about the dark."""
    if not may_log(visit) or isinstance(read, Reported) or not _may_be_log(read):
        return None
    return _how_she_is(visit, text) if log_in(visit, text)[1] else None


def _may_be_log(read: Understood) -> bool:
    """Whether all that the reader made of the words is a question, how she is, or nothing sure."""
    return all(
        isinstance(p, Asked | Kept | Unclear)
        or (isinstance(p, Reported) and all(r.kind in (Kind.HOW_SHE_IS, Kind.NOTE) for r in p.reports))
        for p in (read.parts if isinstance(read, Several) else (read,))
    )


def _how_she_is(visit: Visit, text: str) -> Reported | None:
    her = visit.context().runner(None)
    return None if her is None else Reported((Report(Kind.HOW_SHE_IS, visit.sent_at, her.id, words=text),))


def _how_much(visit: Visit, text: str, read: Understood) -> Report | None:
    """Words right after a press that said no more than the thing: how much, or what of it."""
    last = _unsaid(visit)
    if last is None:
        return None
    one = last.logged[0]
    amount = amount_of(text, one.item)
    if amount is not None:
        return replace(last, logged=(Logged(one.item, amount),), words=text)
    if (
        isinstance(read, Kept | Unclear)
        and len(text.split()) <= 6
        and one.item not in (Item.DRANK, Item.SLEPT)
    ):
        return replace(last, logged=(Logged(one.item, words=text.strip()[:200]),), words=text)
    return None


def _unsaid(visit: Visit) -> Report | None:
    last = visit.memory.handed[-1] if visit.memory.handed else None
    if last is None or last.event != visit.event.id or visit.now - last.at > _MORE_WITHIN:
        return None
    one = last.report
    return one if one.kind is Kind.LOG and len(one.logged) == 1 and _open(one.logged[0]) else None


# -- asked for --------------------------------------------------------------------------------------------


async def answer(visit: Visit, asked: Asked) -> Reply:
    """The log in short; for who is neither crew nor safety contact, once they have said that they are a medic."""
    assert asked.runner is not None, "a question about a runner reaches the desk with one"
    found = visit.view.log(visit.event.id, asked.runner)
    text = told.say_log(visit.say, found)
    if not found.shown_to_asker and says_medic(asked.words):
        return await _medic(visit, asked.runner)
    if not found.shown_to_asker:
        medic = Button(visit.s("button-medic"), _data(visit, asked.runner, None, "", "medic"))
        return visit.reply(text, ((medic,),))
    here = visit.runner(asked.runner)
    return visit.reply(text, offer_button(visit, asked.runner, here.at if here else None))


async def _medic(visit: Visit, runner: str) -> Reply:
    """Shown on their word that they are a medic, which is kept first."""
    one = Report(Kind.LOG_SHOWN, visit.sent_at, runner)
    await hand_in(visit, one, visit.key())
    return visit.reply(told.say_log(visit.say, visit.view.log(visit.event.id, runner)))
