"""Answers to notices: by button or in words, and what an answer says about the runner besides."""

from __future__ import annotations

from dataclasses import replace

from server.conversation import actions, alarmed, letting_go, reported, requests, submit, undoing
from server.conversation.dialogue import Handed
from server.conversation.telling import replies, standing
from server.conversation.telling.message import Rows, untag
from server.conversation.telling.notices import ANSWERS
from server.conversation.telling.say import lines
from server.conversation.understanding import (
    UNDO_WITHIN,
    Acknowledged,
    Report,
    Reported,
    Request,
    Requested,
    says_right,
    why_not,
)
from server.conversation.values import Reply
from server.conversation.view import NoticeHere, Refused
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import Kind, Retired
from server.watch.notice import NoticeKind

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
_ALSO_A_REPORT = {
    "in hand": Kind.IN_HAND,
    "race control told": Kind.RACE_CONTROL_TOLD,
    "awake": Kind.AWAKE,
    "race over": Kind.RETIRED,
}
_COMES = frozenset({PartKind.CREW, PartKind.PACER})
_WHERE_SHE_IS = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})
_SEES_HER = frozenset({PartKind.CREW, PartKind.VOLUNTEER})
TO_BED = "to bed"
"""The answer of somebody who goes to sleep: it goes to no notice."""
_GOES_ON = "goes on"
_GOES = "i go"
_PLAIN_YES = ("yes", "ok", "i have it")
_CHANGES_ITS_MIND = ("i have it", "cannot")


async def by_button(visit: Visit, fields: tuple[str, ...]) -> Reply:
    """A button under a notice: its number, the answer, point and runner."""
    short, answer, point_tag, runner_tag = (*fields, "", "", "", "")[:4]
    runner = untag(runner_tag, (r.id for r in visit.event.runners))
    points = {p.id for r in visit.event.runners for p in r.points}
    return await _answer(visit, int(short), Acknowledged(answer), runner, untag(point_tag, points))


async def settle(visit: Visit, short: int, answer: str) -> None:
    """Answer the notice that asked about an entry, once the entry itself is dealt with."""
    await actions.answer(visit.event.id, short, answer, "", f"{visit.key()}.answer")


async def in_words(visit: Visit, said: Acknowledged) -> Reply:
    """'ok', 'I have it', 'not yet': goes to the notice it fits, the newest of those still open."""
    if said.answer == TO_BED:
        if PartKind.RUNNER in visit.kinds:
            # Of the runner it is her rest.
            own = next(iter(visit.context().own_runners), None)
            rest = Report(Kind.RESTING, visit.sent_at, own, words=said.words)
            return await reported.report(visit, Reported((rest,)))
        return await requests.to_bed(visit, said)
    ending = alarmed.asked_to_end(visit)
    if ending is not None and said.answer in ("yes", "no"):
        # 'End the alarm?' was the last that was asked: its 'yes' takes no other notice.
        right = said.answer == "yes"
        return await (undoing.confirm if right else undoing.undo)(visit, ending.entry)
    offered = undoing.just_offered(visit, by_name=says_right(said.words))
    if offered is not None and (says_right(said.words) or said.answer == "yes") and said.at is None:
        return await undoing.confirm_said(visit, offered)
    if offered is not None and said.answer == "no":
        return await undoing.undo(visit, offered.entry)
    if said.answer == "cannot" and letting_go.held(visit):
        given = await let_go(visit, said.words)
        if given is not None:
            return given
    open_ones: tuple[NoticeHere, ...] = ()
    taking = said.answer in _CHANGES_ITS_MIND
    if visit.event.open_notices or taking:
        told = visit.view.notices(visit.event.id)
        open_ones = tuple(n for n in told.notices if n.needs_answer and not n.answered)
        if taking and not open_ones:
            # "Can't" may become "I have it" while the alarm is open, and the other way round.
            open_ones = tuple(n for n in told.notices if n.changeable and n.answered != said.answer)
    if said.answer == "no" and any(n.kind == NoticeKind.LATE.value for n in open_ones[-1:]):
        # 'Has she been there?' No: not yet.
        said = replace(said, answer="not yet")
    fitting = [n for n in open_ones if said.answer in ANSWERS.get(NoticeKind(n.kind), ())]
    plain = said.answer in ("ok", "yes", "i have it")
    chosen = fitting or (list(open_ones) if plain else [])
    if not chosen:
        return await _nothing_open(visit, said)
    return await _answer(visit, chosen[-1].short, said, None, None)


async def goes(visit: Visit, words: str) -> Reply | None:
    """'I'll do the mill' to whoever was asked who goes there; None where nobody was."""
    told = visit.view.notices(visit.event.id).notices if visit.event.open_notices else ()
    asked_ = [n for n in told if n.needs_answer and not n.answered]
    asked_ = [n for n in asked_ if _GOES in ANSWERS.get(NoticeKind(n.kind), ())]
    return await _answer(visit, asked_[-1].short, Acknowledged(_GOES, words), None, None) if asked_ else None


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
    told = visit.view.notices(visit.event.id)
    late = [n for n in told.notices if n.needs_answer and not n.answered and n.kind == NoticeKind.LATE.value]
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
    if said.answer == "no" and (wrong := _just_noted(visit)) is not None:
        return await undoing.undo(visit, wrong.entry)
    if said.at is not None:
        runner = visit.context().runner(None)
        # 'Right, now she's off' of who is at a point leaves no doubt of which.
        off = runner is not None and said.kind is Kind.OUT and runner.at is not None
        point = (runner.at if off else _next_of(visit, runner.id)) if runner else None
        if runner is not None and point is not None:
            one = Report(said.kind, said.at, runner.id, point, words=said.words, guessed=not off)
            return await reported.report(visit, Reported((one,)))
    if said.answer in _ALSO_A_REPORT:
        return await _also(visit, said.answer, None)
    if said.answer == "cannot" and visit.kinds & _COMES:
        why = why_not(said.words, visit.context())
        one = Report(Kind.CANNOT_COME, visit.sent_at, words=said.words, of_crew=True, why=why)
        return await reported.report(visit, Reported((one,)))
    if said.answer == _GOES:
        return await requests.requested(visit, Requested(Request.SWAP, said.words))
    if said.answer == "on our way":
        return await reported.on_the_road(visit, said.words)
    if said.answer == "ok" and alarmed.own_call(visit) is not None:
        # 'All good' of her who called for help is how she is.
        one = Report(Kind.HOW_SHE_IS, visit.sent_at, visit.memory.handed[-1].report.runner, words=said.words)
        how = Reported((one,))
        return await alarmed.still_open(visit, how, await reported.report(visit, how))
    if said.answer in ("not yet", "nobody there") and visit.kinds & _SEES_HER:
        # Of somebody who waits it is a report, also where nobody asked.
        return await reported.report(visit, Reported((_not_here(visit, said),)))
    return visit.reply(lines(visit.s("answer-nothing-open"), await alarmed.state(visit)))


def _not_here(visit: Visit, said: Acknowledged) -> Report:
    """That she has not come: where the writer stands, else to where she is due."""
    her = visit.context().runner(None)
    stands = visit.event.stands
    point = stands or (_next_of(visit, her.id) if her is not None else None)
    kind, runner = Kind.NOT_HERE_YET, her.id if her is not None else None
    return Report(kind, visit.sent_at, runner, point, words=said.words, guessed=stands is None)


def _just_noted(visit: Visit) -> Handed | None:
    """This person's report that was told back last, with nothing asked since: 'no' on its own says that it is wrong. A call
    for help is taken back only by words that say so."""
    last = visit.memory.handed[-1] if visit.memory.handed else None
    if last is None or last.event != visit.event.id or visit.now - last.at > UNDO_WITHIN:
        return None
    asked_since = visit.memory.last_at is not None and visit.memory.last_at > last.at
    return None if asked_since or last.report.kind not in _WHERE_SHE_IS else last


async def _answer(
    visit: Visit, short: int, said: Acknowledged, runner: str | None, point: str | None
) -> Reply:
    answer = said.answer
    held = answer == "cannot" and bool(letting_go.held(visit))
    # What they do about it stands round 'I have it', and whoever called for help reads it.
    words = (visit.incoming.text or said.words) if answer == "i have it" else said.words
    told = await actions.answer(visit.event.id, short, answer, words, f"{visit.key()}.answer")
    kind = NoticeKind(told.kind) if told.kind else None
    taking = kind in _ALARMS and answer != "cannot"
    text = replies.say_answered(visit.say, told, answer, alarm=taking)
    if kind in _ALARMS and not taking:
        return visit.reply(visit.s("answered-gave-back") if held else _declined(visit, runner))
    if taking and told.yours:
        text = lines(text, await _which(visit, runner))
    if told.covers:
        return visit.reply(text)
    runner = runner or next(iter(visit.context().own_runners), None)
    runner = runner or next((r.id for r in visit.event.runners), None)
    if kind is NoticeKind.IN_HAND:
        # Whoever has her was asked whether they still do: 'yes' is that they do.
        answer = "in hand" if answer in _PLAIN_YES else answer
    if answer in _ALSO_A_REPORT or (kind is NoticeKind.IN_HAND and answer == _GOES_ON):
        how = Retired.NOT_SAID if kind is NoticeKind.IN_HAND else Retired.TIMED_OUT
        also = await _also(visit, answer, runner, point, how)
        return visit.reply(lines(text, also.text), also.buttons)
    if kind is NoticeKind.LATE and runner is not None:
        return await _late(visit, said, text, runner, point)
    if answer == "seen" and runner is not None:
        return visit.reply(lines(text, visit.s("answered-seen")), visit.report_buttons(runner))
    return visit.reply(text)


def _declined(visit: Visit, runner: str | None) -> str:
    """What becomes of an alarm that somebody can't take: who has it, or who is asked besides."""
    alarms = [
        a for r in visit.event.runners if runner in (None, r.id) for a in letting_go.alarms_of(visit, r.id)
    ]
    holder = next((a.holder for a in alarms if a.holder), "")
    if holder:
        return visit.s("answered-cannot-held", name=holder)
    others = dict.fromkeys(p.name for a in alarms for p in a.people if p.asked and p.answer != "cannot")
    others.pop(visit.person.name, None)
    return visit.s("answered-cannot-alarm", names=visit.say.all(tuple(others)) if others else "none")


async def let_go(visit: Visit, words: str) -> Reply | None:
    """Whoever has an alarm says that they can't see to it any more: it is given back; None where nothing can be."""
    told = visit.view.notices(visit.event.id)
    theirs = [n for n in told.notices if NoticeKind(n.kind) in _ALARMS and (n.needs_answer or n.changeable)]
    if not theirs:
        return None
    return await _answer(visit, theirs[-1].short, Acknowledged("cannot", words), None, None)


async def _which(visit: Visit, runner: str | None) -> str:
    """The alarms that this person now holds, of that runner or of any: nobody is left to guess what they took."""
    held = []
    for r in visit.event.runners:
        if runner is not None and r.id != runner:
            continue
        try:
            alarms = visit.view.facts(visit.event.id, r.id).alarms
        except Refused:
            continue
        held += [standing.say_taken(visit.say, r.name, a) for a in alarms if a.holder == visit.person.name]
    return lines(*held)


async def _also(
    visit: Visit,
    answer: str,
    runner: str | None,
    point: str | None = None,
    how: Retired = Retired.TIMED_OUT,
) -> Reply:
    runner = runner or next(iter(visit.context().own_runners), None)
    one = Report(_ALSO_A_REPORT.get(answer, Kind.MOVING_AGAIN), visit.sent_at, runner)
    if answer == "race over":
        one = replace(one, how=how, point=point)
    told = await submit.hand_in(visit, one, f"{visit.key()}.also")
    text = replies.say_noted(visit.say, told, "", UNDO_WITHIN)
    return visit.reply(text, visit.undo_button(told.entry))


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
        # They can only say so of where they are, whichever point the question was about.
        one = Report(Kind.NOT_HERE_YET, visit.sent_at, runner, visit.event.stands or point)
        reply = await reported.report(visit, Reported((one,)))
        return visit.reply(lines(text, reply.text), reply.buttons)
    if said.answer == "yes":
        visit.memory.pending = Report(Kind.IN, visit.sent_at, runner, point)
        buttons: Rows = reported.minutes_ago(visit, "in", point, runner)
        return visit.reply(visit.s("answered-when"), buttons)
    return visit.reply(text)
