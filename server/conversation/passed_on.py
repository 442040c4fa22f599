"""What somebody said that is no confident check-in, question or request: kept word for word, passed on, and asked about."""

from __future__ import annotations

from dataclasses import replace

from server.conversation import (
    alarmed,
    asked,
    asking_back,
    button_payload,
    quoted,
    reported,
    requests,
    undoing,
)
from server.conversation.telling.message import Rows
from server.conversation.telling.say import lines
from server.conversation.understanding import (
    AskBack,
    Asked,
    Choice,
    Distress,
    Kept,
    Need,
    OtherRunner,
    Question,
    Report,
    Reported,
    Request,
    Requested,
    Small,
    Unclear,
)
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import EVERYBODY, Kind

_MAY_SAY = frozenset({PartKind.RUNNER, PartKind.CREW, PartKind.PACER, PartKind.VOLUNTEER, PartKind.ORGANISER})


async def kept(visit: Visit, meant: Kept, first: int = 0, *, apart: bool = False) -> Reply:
    """Keep the words as how she is, or as a note where they are about the writer, and ask whether she is in danger. `apart`:
    also while a call for help is open, which they are none of."""
    if not visit.kinds & _MAY_SAY:
        # They report nothing of her; what they have heard may still go to the others.
        said = await unclear(visit, Unclear(meant.words))
        home = PartKind.SAFETY_CONTACT in visit.kinds
        return visit.reply(said.text, (*_to_all(visit, meant.words), *said.buttons)) if home else said
    if not apart and any(r.on_it for r in visit.event.runners):
        # Somebody on an open call for help: their words go on to the others with it (while_open.pass_on).
        return visit.reply(visit.s("not-understood"))
    her = visit.runner(meant.runner) or visit.context().runner(None)
    if her is None:
        whose = visit.context().candidates()
        if len(whose) != 1:
            choices = tuple(Choice(r.id, replace(meant, runner=r.id)) for r in whose)
            return await asking_back.ask_back(visit, AskBack(Need.RUNNER, choices))
        her = whose[0]
    if PartKind.ORGANISER in visit.kinds and meant.of_her:
        # What the race has to say of her, and is no report: for all who wait for her.
        sent = await requests.requested(visit, Requested(Request.PASS_ON, meant.words, to=EVERYBODY))
        return _with_danger(visit, her.id, sent.text, sent)
    if not meant.of_her and (says := quoted.quoted(visit, meant.words)):
        return visit.reply(says)  # a question, of which the file says something, is no note
    kind = Kind.HOW_SHE_IS if meant.of_her else Kind.NOTE
    one = Report(kind, meant.seen_at, her.id, words=meant.words)
    noted = await reported.report(visit, Reported((one,)), first=first)
    if not meant.of_her:
        text = lines(visit.s("kept-note", words=meant.words), await _open_alarm(visit, her.id))
        return visit.reply(text, (*_to_all(visit, meant.words), *noted.buttons))
    told = noted.text.split("\n")[1:]
    text = lines(visit.s("kept", words=meant.words), *told, await _open_alarm(visit, her.id))
    return _with_danger(visit, her.id, text, noted)


def _to_all(visit: Visit, words: str) -> Rows:
    """A button that sends words to everybody."""
    every = Choice("all", Requested(Request.PASS_ON, words, to=EVERYBODY))
    visit.memory.choices, visit.memory.need = (every,), Need.WHO
    return button_payload.offer(visit, (visit.s("button-tell-all"),), (every,))


def _with_danger(visit: Visit, runner: str, text: str, reply: Reply) -> Reply:
    """A reply with its buttons; with 'is she in danger?' unless the words are far from it."""
    if visit.calm:
        return visit.reply(text, reply.buttons)
    return visit.reply(lines(text, _asks(visit)), (*danger_buttons(visit, runner), *reply.buttons))


def _asks(visit: Visit) -> str:
    number = visit.event.emergency_number
    return visit.s("ask-danger-own" if PartKind.RUNNER in visit.kinds else "ask-danger", emergency=number)


def danger_buttons(visit: Visit, runner: str | None) -> Rows:
    """'Yes, tell everyone' and 'no': one calls for help, the other says that nothing is to be done."""
    if runner is None:
        return ()
    visit.memory.danger = runner
    yes = visit.report_data(Kind.ASKED_FOR_HELP.value, "", runner)
    (no,) = button_payload.offer(visit, (visit.s("button-danger-no"),), (Choice("no", Small(thanks=True)),))
    return ((replace(no[0], label=visit.s("button-danger-yes"), data=yes), *no),)


def anybody_buttons(visit: Visit, words: str) -> Rows:
    """The same of words about whoever wrote them, or somebody with them: 'yes' sends these to everybody. It calls nobody to
    the runner."""
    yes = Choice("yes", Requested(Request.PASS_ON, words, to=EVERYBODY))
    visit.memory.choices = (yes, Choice("no", Small(thanks=True)))
    visit.memory.need = Need.WHO
    labels = (visit.s("button-danger-yes"), visit.s("button-danger-no"))
    (first,), (second,) = button_payload.offer(visit, labels, visit.memory.choices)
    return ((first, second),)


def cry_of(visit: Visit, runner: str) -> Distress:
    """The call for help of a pressed button."""
    return Distress("", visit.sent_at, runner, by_self=PartKind.RUNNER in visit.kinds)


async def unclear(visit: Visit, meant: Unclear, if_help: str = "") -> Reply:
    """Not understood; while an alarm is open its state and the numbers instead."""
    for runner in visit.context().candidates():
        if await alarmed.open_alarms(visit, runner.id):
            state = await asked.answer(visit, Asked(Question.TOLD, runner.id, words=meant.words))
            return visit.reply(lines(state.text, if_help), state.buttons)
    told = quoted.quoted(visit, meant.words)
    return visit.reply(lines(told or visit.s("not-understood"), if_help))


async def _open_alarm(visit: Visit, runner: str) -> str:
    """The state of the alarm about her, while one is open; else ''."""
    if not await alarmed.open_alarms(visit, runner):
        return ""
    return (await asked.answer(visit, Asked(Question.TOLD, runner))).text


async def other_runner(visit: Visit, meant: OtherRunner) -> Reply:
    """The last report was of somebody else: it is taken back, and made of her who is named."""
    last = visit.memory.handed[-1] if visit.memory.handed else None
    if last is None:
        return await undoing.undo_last(visit)
    if meant.writer and last.report.of_crew:
        return visit.reply(visit.s("kept-own"))
    gone = await undoing.undo_last(visit)
    if meant.writer and last.report.words:
        words = Kept(last.report.words, last.report.seen_at, None, of_her=False)
        own = await kept(visit, words, first=1, apart=True)
        event = visit.event
        control = {"name": event.race_control.name, "phone": event.race_control.phone}
        number = visit.s("grave-any", emergency=event.emergency_number, **control)
        return visit.reply(lines(number, gone.text, own.text), own.buttons)
    if meant.runner in (None, last.report.runner) or last.report.kind is Kind.ASKED_FOR_HELP:
        # Named is whom it was not: '241, not 214'.
        return gone
    anew = await reported.report(visit, Reported((replace(last.report, runner=meant.runner),)), first=1)
    return visit.reply(lines(gone.text, anew.text), anew.buttons)


def dangerous(visit: Visit, reply: Reply, runner: str | None) -> Reply:
    """The reply with the buttons that answer 'is she in danger?'."""
    her = runner or next((r.id for r in visit.context().candidates()), None)
    have = {b.data for row in reply.buttons for b in row}
    rows = tuple(r for r in danger_buttons(visit, her) if not any(b.data in have for b in r))
    return replace(reply, buttons=(*rows, *reply.buttons))
