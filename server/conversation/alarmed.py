"""What ends a call for help, and what does not: a stand-down is about the alarm that is open, and the runner's own
word that she goes on leaves it open."""

from __future__ import annotations

from dataclasses import replace

from server.conversation.dialogue import Handed
from server.conversation.telling import standing
from server.conversation.telling.answer import AlarmHere, FactsAnswer
from server.conversation.telling.say import lines
from server.conversation.understanding import (
    UNDO_WITHIN,
    AskBack,
    Choice,
    Need,
    OtherRunner,
    Report,
    Reported,
    Understood,
    denies_her,
)
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import Kind

_WELL = frozenset({Kind.MOVING_AGAIN, Kind.HOW_SHE_IS, Kind.IN, Kind.OUT, Kind.THROUGH})
_SIGHTED = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})
_BELONGS = frozenset({PartKind.RUNNER, PartKind.PACER})


async def whose_alarm(visit: Visit, meant: Understood) -> Understood:
    """A stand-down that names nobody is about the runner whose alarm is open: one's own to take first, asked where
    several are; anything else as it was."""
    first = _stand_down(meant)
    if first is None or _named(visit, first):
        return meant
    open_ones = {r.id: found for r in visit.event.runners if (found := await open_alarms(visit, r.id))}
    held = [r for r, found in open_ones.items() if any(a.holder == visit.person.name for a in found)]
    about = held or list(open_ones)
    reports = [replace(first, runner=r) for r in about]
    if len(reports) == 1:
        return Reported((reports[0],))
    if reports:
        return AskBack(Need.RUNNER, tuple(Choice(r.runner or "", Reported((r,))) for r in reports))
    return meant


def _stand_down(meant: Understood) -> Report | None:
    if isinstance(meant, AskBack):
        return next((_stand_down(c.then) for c in meant.choices), None)
    if isinstance(meant, Reported) and len(meant.reports) == 1 and meant.reports[0].kind is Kind.STAND_DOWN:
        return meant.reports[0]
    return None


def _named(visit: Visit, one: Report) -> bool:
    """Whether the words name the runner: 'she' of the question before is no name to end an alarm by."""
    words = one.words.lower()
    return any(r.name.lower() in words or (r.bib and f"#{r.bib}" in words) for r in visit.event.runners)


async def open_alarms(visit: Visit, runner: str) -> tuple[AlarmHere, ...]:
    """The alarms about her that are open; () also for who may not know."""
    found = await facts(visit, runner)
    return () if found is None else found.alarms


async def state(visit: Visit) -> str:
    """How the open alarm about one of the writer's runners stands; '' where none is open."""
    for runner in visit.context().candidates():
        told = await facts(visit, runner.id)
        if told is not None and told.alarms:
            event = visit.event
            return standing.say_told(visit.say, told, event.race_control, event.emergency_number)
    return ""


async def facts(visit: Visit, runner: str) -> FactsAnswer | None:
    """What has been reported of her; None for who may not know."""
    try:
        return visit.view.facts(visit.event.id, runner)
    except Refused:
        return None


def own_call(visit: Visit) -> Handed | None:
    """The call for help that this person handed in last and has not taken back; None where there is none."""
    calls = [h for h in visit.memory.handed if h.report.kind is Kind.ASKED_FOR_HELP]
    mine = (h for h in reversed(calls) if h.event == visit.event.id)
    return next((h for h in mine if h.report.runner is not None), None)


def takes_back(visit: Visit) -> Handed | None:
    """Which entry 'undo' is about after a call for help: the call, where all said since is that she goes on, or words
    that went on to those on it: 'if nothing is wrong, write undo' is what was answered to each of them."""
    call = own_call(visit)
    if call is None:
        return None
    since = visit.memory.handed[visit.memory.handed.index(call) + 1 :]
    return call if all(h.report.kind in _SAID_SINCE for h in since) else None


_SAID_SINCE = frozenset({Kind.MOVING_AGAIN, Kind.HOW_SHE_IS, Kind.HELP_WORD})


def not_hers(visit: Visit, text: str) -> OtherRunner | None:
    """'Not Maren! A marshal': what this person called for help for a while ago was somebody else's trouble."""
    call = own_call(visit)
    lately = call is not None and call is visit.memory.handed[-1] and visit.now - call.at <= UNDO_WITHIN
    if not lately or visit.kinds & _BELONGS or not denies_her(text, visit.context()):
        return None
    return OtherRunner(text, writer=True)


def false_call(visit: Visit, said: Reported) -> Handed | None:
    """Her own call for help, where she who made it says that it was a false alarm; None for anything else."""
    return own_call(visit) if _stand_down(said) is not None and PartKind.RUNNER in visit.kinds else None


def asked_to_end(visit: Visit) -> Handed | None:
    """The stand-down, or 'she is with us', handed in last that still waits for a 'yes'."""
    last = visit.memory.handed[-1] if visit.memory.handed else None
    ends = last is not None and (last.report.kind is Kind.STAND_DOWN or last.report.with_us != "")
    return last if last is not None and last.unconfirmed and ends else None


async def still_open(visit: Visit, said: Reported, reply: Reply) -> Reply:
    """The reply to her own word that she goes on, with what of her call for help is still open; to others' sighting of her,
    with her call and how it ends: they have seen her, and nobody else may."""
    first = said.reports[0]
    hers = bool(visit.kinds & _BELONGS)
    if first.kind not in (_WELL if hers else _SIGHTED) or first.runner is None:
        return reply
    asked = [a for a in await open_alarms(visit, first.runner) if a.kind == Kind.ASKED_FOR_HELP.value]
    if not asked:
        return reply
    if not hers:
        name = next((r.name for r in visit.event.runners if r.id == first.runner), "")
        still = visit.s(
            "how-help", runner=name, when=visit.say.when(asked[0].raised_at), words=asked[0].words
        )
        return replace(reply, text=lines(reply.text, still, visit.s("alarm-help-seen", runner=name)))
    holder = next((a.holder for a in asked if a.holder), "")
    call = own_call(visit)
    text = lines(
        reply.text,
        visit.s("help-still-open", holder=holder or "none"),
        visit.s("help-was-nothing") if call is not None else "",
    )
    return replace(reply, text=text, buttons=reply.buttons if call is None else visit.undo_button(call.entry))
