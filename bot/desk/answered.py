"""Answers to notices: by button or in words, and what an answer says about the runner besides."""

from __future__ import annotations

import re

from bot.api_client import ApiError, NoticeHere
from bot.channels.base import Reply
from bot.desk import alarmed, handing, reported, undoing
from bot.desk.visit import Visit
from bot.words import UNDO_WITHIN, Acknowledged, Report, Reported
from bot.words.tidy import tidy
from server.facts.entry import Kind
from server.watch.notice import NoticeKind
from server.wording import replies, standing
from server.wording.message import Rows, untag
from server.wording.notices import ANSWERS
from server.wording.say import lines

_ALARMS = frozenset(
    {
        NoticeKind.OVERDUE,
        NoticeKind.ASKED_FOR_HELP,
        NoticeKind.SWEEP,
        NoticeKind.HANDED_ON,
        NoticeKind.LOOK_AGAIN,
        NoticeKind.HELP_NOT_NAMED,
    }
)
_ALSO_A_REPORT = {"in hand": Kind.IN_HAND, "race control told": Kind.RACE_CONTROL_TOLD, "awake": Kind.AWAKE}
_CHANGES_ITS_MIND = ("i have it", "cannot")


_RIGHT = re.compile(
    r"^(?:yes |ja |ok )*(?:(?:that is |das ist |das )?(?:right|correct|richtig|stimmt))(?: so)?$"
)


def confirms(words: str) -> bool:
    """Whether the words say that what was asked about is right: 'right', 'that's correct', 'stimmt'."""
    return _RIGHT.search(tidy(words)) is not None


async def by_button(visit: Visit, fields: tuple[str, ...]) -> Reply:
    """A button under a notice: its number, the answer, point and runner."""
    short, answer, point_tag, runner_tag = (*fields, "", "", "", "")[:4]
    runner = untag(runner_tag, (r.id for r in visit.event.runners))
    points = {p.id for r in visit.event.runners for p in r.points}
    return await _answer(visit, int(short), Acknowledged(answer), runner, untag(point_tag, points))


async def settle(visit: Visit, short: int, answer: str) -> None:
    """Answer the notice that asked about an entry, once the entry itself is dealt with."""
    await visit.api.answer(visit.address, visit.event.id, short, answer, "", f"{visit.key()}.answer")


async def in_words(visit: Visit, said: Acknowledged) -> Reply:
    """'ok', 'I have it', 'not yet': goes to the notice it fits, the newest of those still open."""
    ending = alarmed.asked_to_end(visit)
    if ending is not None and said.answer in ("yes", "no"):
        # 'End the alarm?' was the last that was asked: its 'yes' takes no other notice.
        right = said.answer == "yes"
        return await (undoing.confirm if right else undoing.undo)(visit, ending.entry)
    offered = undoing.just_offered(visit, by_name=confirms(said.words))
    if offered is not None and (confirms(said.words) or said.answer == "yes") and said.at is None:
        return await undoing.confirm_said(visit, offered)
    if offered is not None and said.answer == "no":
        return await undoing.undo(visit, offered.entry)
    open_ones: tuple[NoticeHere, ...] = ()
    taking = said.answer in _CHANGES_ITS_MIND
    if visit.event.open_notices or taking:
        told = await visit.api.notices(visit.address, visit.event.id)
        open_ones = tuple(n for n in told.data.notices if n.needs_answer and not n.answered)
        if taking and not open_ones:
            # "Can't" may become "I have it" while the alarm is open, and the other way round.
            open_ones = tuple(n for n in told.data.notices if n.changeable and n.answered != said.answer)
    fitting = [n for n in open_ones if said.answer in ANSWERS.get(NoticeKind(n.kind), ())]
    plain = said.answer in ("ok", "yes", "i have it")
    chosen = fitting or (list(open_ones) if plain else [])
    if not chosen:
        return await _nothing_open(visit, said)
    return await _answer(visit, chosen[-1].short, said, None, None)


async def not_yet(visit: Visit, said: Reported) -> Reply | None:
    """'not here' with no place, from somebody who was asked 'has she been there?': the answer to that; else None."""
    one = said.reports[0]
    if (
        len(said.reports) > 1
        or one.kind is not Kind.NOT_HERE_YET
        or not one.guessed
        or not visit.event.open_notices
    ):
        return None
    told = await visit.api.notices(visit.address, visit.event.id)
    late = [
        n for n in told.data.notices if n.needs_answer and not n.answered and n.kind == NoticeKind.LATE.value
    ]
    if not late:
        return None
    # 'Here' is where they wait, also where the question was of a point before it.
    return await _answer(visit, late[-1].short, Acknowledged("not yet", one.words), one.runner, one.point)


async def _nothing_open(visit: Visit, said: Acknowledged) -> Reply:
    """No notice waits for that: it may be about the report handed in last, or say something by itself."""
    waiting = [h for h in visit.memory.handed if h.unconfirmed]
    if waiting and said.answer in ("yes", "no"):
        if said.answer == "yes":
            return await undoing.confirm_said(visit, waiting[-1])
        return await undoing.undo(visit, waiting[-1].entry)
    if said.at is not None:
        runner = visit.context().runner(None)
        expected = _next_of(visit, runner.id) if runner else None
        if runner is not None and expected is not None:
            one = Report(said.kind, said.at, runner.id, expected, words=said.words, guessed=True)
            return await reported.report(visit, Reported((one,)))
    if said.answer in _ALSO_A_REPORT:
        return await _also(visit, said.answer, None)
    if said.answer == "on our way":
        return await reported.on_the_road(visit, said.words)
    if said.answer == "ok" and alarmed.own_call(visit) is not None:
        # 'All good' of her who called for help is how she is.
        one = Report(Kind.HOW_SHE_IS, visit.sent_at, visit.memory.handed[-1].report.runner, words=said.words)
        how = Reported((one,))
        return await alarmed.still_open(visit, how, await reported.report(visit, how))
    return visit.reply(visit.s("answer-nothing-open"))


async def _answer(
    visit: Visit, short: int, said: Acknowledged, runner: str | None, point: str | None
) -> Reply:
    answer = said.answer
    told = await visit.api.answer(
        visit.address, visit.event.id, short, answer, said.words, f"{visit.key()}.answer"
    )
    kind = NoticeKind(told.data.kind) if told.data.kind else None
    taking = kind in _ALARMS and answer != "cannot"
    text = replies.say_answered(visit.say, told.data, alarm=taking)
    if taking and told.data.yours:
        text = lines(text, await _which(visit, runner))
    runner = runner or next(iter(visit.context().own_runners), None)
    runner = runner or next((r.id for r in visit.event.runners), None)
    if answer in _ALSO_A_REPORT:
        also = await _also(visit, answer, runner)
        return visit.reply(lines(text, also.text), also.buttons)
    if kind is NoticeKind.LATE and runner is not None:
        return await _late(visit, said, text, runner, point)
    if answer == "seen" and runner is not None:
        return visit.reply(lines(text, visit.s("answered-seen")), visit.report_buttons(runner))
    return visit.reply(text)


async def _which(visit: Visit, runner: str | None) -> str:
    """The alarms that this person now holds, of that runner or of any: nobody is left to guess what they took."""
    held = []
    for r in visit.event.runners:
        if runner is not None and r.id != runner:
            continue
        try:
            alarms = (await visit.api.facts(visit.address, visit.event.id, r.id)).data.alarms
        except ApiError:
            continue
        held += [standing.say_taken(visit.say, r.name, a) for a in alarms if a.holder == visit.person.name]
    return lines(*held)


async def _also(visit: Visit, answer: str, runner: str | None) -> Reply:
    runner = runner or next(iter(visit.context().own_runners), None)
    one = Report(_ALSO_A_REPORT[answer], visit.sent_at, runner)
    told = await handing.hand_in(visit, one, f"{visit.key()}.also")
    text = replies.say_noted(visit.say, told.data, "", UNDO_WITHIN)
    return visit.reply(text, visit.undo_button(told.data.entry))


def _next_of(visit: Visit, runner: str) -> str | None:
    """The point she is due at: of nobody heard of yet the first after the start."""
    here = visit.runner(runner)
    if here is None:
        return None
    ids = [p.id for p in here.points]
    reached = ids.index(here.reached) if here.reached in ids else 0
    return ids[reached + 1] if reached + 1 < len(ids) else None


async def _late(visit: Visit, said: Acknowledged, text: str, runner: str, point: str | None) -> Reply:
    """'Has she been there?' yes: when, if they have not said so; not yet: that is a fact of its own."""
    point = point or _next_of(visit, runner)
    if point is None:
        return visit.reply(text)
    if said.answer == "yes" and said.at is not None:
        one = Report(said.kind, said.at, runner, point, words=said.words)
        reply = await reported.report(visit, Reported((one,)))
        return visit.reply(lines(text, reply.text), reply.buttons)
    if said.answer == "not yet":
        one = Report(Kind.NOT_HERE_YET, visit.sent_at, runner, point)
        reply = await reported.report(visit, Reported((one,)))
        return visit.reply(lines(text, reply.text), reply.buttons)
    if said.answer == "yes":
        visit.memory.pending = Report(Kind.IN, visit.sent_at, runner, point)
        buttons: Rows = reported.minutes_ago(visit, "in", point, runner)
        return visit.reply(visit.s("answered-when"), buttons)
    return visit.reply(text)
