"""Asking back where words may mean two things: what was clear is handed in, each other meaning is offered as a button."""

from __future__ import annotations

from dataclasses import replace

from server.conversation import button_payload, reported
from server.conversation.submit import hand_in
from server.conversation.telling.answer import RunnerHere
from server.conversation.telling.message import Press
from server.conversation.telling.say import lines
from server.conversation.understanding import AskBack, Choice, Need, Report, Reported, expected
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import Kind
from server.sentences import has


async def ask_back(visit: Visit, back: AskBack) -> Reply:
    """Hand in what was clear, ask about the rest, offer each way it may be meant."""
    clear = ""
    if back.also:
        clear = (await reported.report(visit, Reported(back.also))).text
    if back.need is Need.DROPPED and (over := _said_over(back)) is not None:
        return await _kept(visit, back, over, clear)
    visit.memory.choices, visit.memory.need = back.choices, back.need
    labels = tuple(_label(visit, back, c) for c in back.choices)
    return visit.reply(
        lines(clear, _question(visit, back)), button_payload.offer(visit, labels, back.choices)
    )


def _said_over(back: AskBack) -> Report | None:
    """The report that her race is over, of one runner, which the words may be."""
    found = (r for c in back.choices if isinstance(c.then, Reported) for r in c.then.reports)
    return next((r for r in found if r.runner is not None), None)


async def _kept(visit: Visit, back: AskBack, over: Report, clear: str) -> Reply:
    """Words that may say that her race is over are kept as that, not counted, while their writer is asked: whoever writes
    no more must not have said it in vain."""
    answer = await hand_in(visit, replace(over, guessed=True), visit.key())
    right = visit.judging(_over(visit), Press.CONFIRM, answer.entry)
    wrong = visit.judging("choice-else", Press.UNDO, answer.entry)
    return visit.reply(lines(clear, _question(visit, back)), ((right,), (wrong,)))


def whose(visit: Visit, said: Reported) -> AskBack | None:
    """The question which runner left, or ended her race, where the words before named none and several may be meant; None
    where it is known. Nobody's race is ended by a guess."""
    runners = visit.context().candidates()
    one = said.reports[0]
    if len(said.reports) != 1 or one.runner is not None or one.kind not in _OF_ONE or len(runners) < 2:
        return None
    return AskBack(Need.RUNNER, tuple(Choice(r.id, Reported((_of(one, r),))) for r in runners))


_OF_ONE = frozenset({Kind.OUT, Kind.RETIRED})


def _of(one: Report, runner: RunnerHere) -> Report:
    here = expected(runner, one.kind, None) if one.kind is Kind.OUT else runner.at
    point = one.point or here
    # Which point she left is only supposed where she was not known to be at one.
    supposed = one.kind is Kind.OUT and point != (one.point or runner.at)
    return replace(one, runner=runner.id, point=point, guessed=one.guessed or supposed)


def _question(visit: Visit, back: AskBack) -> str:
    match back.need:
        case Need.OUT:
            place = visit.point_name(None, back.point)
            return visit.s("ask-out", place=place) if place else visit.s("ask-out-nowhere")
        case Need.DROPPED:
            return visit.s("ask-dropped-own" if _runs(visit) else "ask-dropped", word=back.word)
        case Need.POINT:
            return visit.s("ask-point")
        case Need.WHO if _of_leaving(back):
            return visit.s("ask-who-left", place=visit.point_name(None, back.point))
        case Need.WHO:
            return visit.s("ask-who", place=visit.point_name(None, back.point))
        case Need.RUNNER:
            return visit.s("ask-runner")
        case Need.MEANING:
            return visit.s("ask-meaning", word=back.word)
        case Need.BIB:
            bibs = back.word.split(", ")
            return visit.s("ask-bib", bib=visit.say.all(bibs), count=len(back.choices))


def _runs(visit: Visit) -> bool:
    """Whether who reads it is she herself: of others it speaks as of her."""
    return PartKind.RUNNER in visit.kinds


def _over(visit: Visit) -> str:
    return "choice-over-own" if _runs(visit) else "choice-over"


def _of_leaving(back: AskBack) -> bool:
    """Whether it is asked who left a place, not who is there."""
    told = (c.then for c in back.choices if isinstance(c.then, Reported))
    return any(r.kind is Kind.CREW_LEFT for t in told for r in t.reports)


def _name_of(visit: Visit, choice: Choice) -> str:
    """The name of the runner whom a choice is about."""
    reports = choice.then.reports if isinstance(choice.then, Reported) else ()
    known = (visit.runner(r.runner) for r in reports)
    return next((r.name for r in known if r is not None), "")


_WHO_LABELS = {"crew": "choice-crew", "her": "choice-her"}
_LEFT_LABELS = {"crew": "choice-crew-left", "her": "choice-her-left"}


_OVER_LABELS = {"over": "choice-over", "else": "choice-else"}


def _label(visit: Visit, back: AskBack, choice: Choice) -> str:
    if choice.label == "left":
        place = visit.point_name(None, back.point)
        return visit.s("choice-left", place=place) if place else visit.s("choice-left-plain")
    if choice.label in _WHO_LABELS:
        labels = _LEFT_LABELS if _of_leaving(back) else _WHO_LABELS
        return visit.s(labels[choice.label], runner=_name_of(visit, choice))
    if choice.label in _OVER_LABELS:
        return visit.s(_OVER_LABELS[choice.label] if choice.label == "else" else _over(visit))
    if back.need is Need.MEANING:
        key = f"meaning-{choice.label.replace('_', '-')}"
        return visit.s(own if _runs(visit) and has(own := f"{key}-own") else key)
    runner = visit.runner(choice.label)
    if runner is not None:
        return visit.s("choice-runner", name=runner.name, bib=runner.bib or "none")
    return visit.point_label(None, choice.label)
