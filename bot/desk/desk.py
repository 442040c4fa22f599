"""The desk: one message in, one reply out. Finds out who writes and about which event, then hands on."""

from __future__ import annotations

from dataclasses import replace

import structlog

from bot.api_client import ApiClient, ApiError, Told, UnreachableError
from bot.channels.base import Incoming, Reply
from bot.desk import (
    alarmed,
    answered,
    asked,
    asking_back,
    carried,
    distressed,
    either,
    grave,
    grouped,
    joining,
    mended,
    phones,
    reported,
    undoing,
    which_event,
    with_her,
)
from bot.desk.memory import Memories, Memory
from bot.desk.visit import Visit
from bot.words import (
    Acknowledged,
    AskBack,
    Asked,
    Distress,
    MeantFor,
    Question,
    Reported,
    Several,
    Small,
    Unclear,
    Understood,
    Undo,
    understand,
)
from bot.words.tidy import tidy
from bot.words.times import find_time
from server.event.model import PartKind
from server.facts.entry import RACE_LEVEL
from server.wording import replies
from server.wording.answer import EventHere, MeAnswer
from server.wording.message import Press, event_mark, read_data, untag
from server.wording.reader import Reader
from server.wording.say import Say, lines

log = structlog.get_logger("desk")

_STRANGER = frozenset({"no_address", "not_yours"})


class Desk:
    """Answers messages of every channel through one server's API."""

    def __init__(self, api: ApiClient) -> None:
        self._api = api
        self._memories = Memories()

    async def handle(self, incoming: Incoming) -> Reply:
        """The reply to one message; silent where nothing is to be said. Raises nothing of the server's."""
        memory = self._memories.of(incoming.channel, incoming.address)
        if incoming.group and not incoming.addressed:
            return Reply("")
        try:
            return await self._handle(incoming, memory)
        except UnreachableError as error:
            log.warning("server unreachable", channel=incoming.channel, why=str(error))
            return self._unreachable(incoming, memory)
        except ApiError as error:
            log.info("server refused", channel=incoming.channel, code=error.code)
            return Reply(replies.say_error(_say_of(incoming, memory), error.code, error.what))

    async def _handle(self, incoming: Incoming, memory: Memory) -> Reply:
        try:
            memory.me = await self._api.me(incoming.address)
        except ApiError as error:
            if error.code not in _STRANGER:
                raise
            return await self._newcomer(incoming, memory)
        code = joining.code_in(incoming.text) if incoming.text.startswith("/start") else None
        if code is not None:
            return await joining.preview(self._api, incoming, memory, code)
        if memory.code and (accept := joining.accepts(incoming)) is not None:
            return await joining.settle(self._api, incoming, memory, accept=accept)
        return await self._known(incoming, memory, memory.me)

    async def _newcomer(self, incoming: Incoming, memory: Memory) -> Reply:
        memory.me = None
        if memory.code and (accept := joining.accepts(incoming)) is not None:
            return await joining.settle(self._api, incoming, memory, accept=accept)
        code = joining.code_in(incoming.text)
        if code is None:
            return joining.stranger(incoming.language)
        return await joining.preview(self._api, incoming, memory, code)

    async def _known(self, incoming: Incoming, memory: Memory, me: Told[MeAnswer]) -> Reply:
        called = await self._help_in(incoming, memory, me)
        if called is not None:
            return called
        chosen = which_event.chosen(incoming, memory, me)
        if chosen is None:
            if not me.data.events:
                return joining.stranger(me.data.person.language)
            return which_event.ask(incoming, memory, me)
        event, incoming = chosen
        text = incoming.text
        visit = Visit(self._api, incoming, memory, me.data, event, me.now)
        if incoming.group and (tell := grouped.asked(text)) is not None:
            return await grouped.settle(visit, incoming.reply_to, tell=tell)
        if incoming.button:
            return await self.pressed(visit)
        if incoming.live_ended:
            return await phones.share_ended(visit, _whose(visit))
        if incoming.fix is not None:
            runner = _whose(visit)
            if runner is None:
                return visit.reply(visit.s("ask-runner"))
            return await phones.position(visit, incoming.fix, runner)
        if incoming.other and not text:
            return visit.reply(visit.s("other-unreadable"))
        if incoming.photo is not None and not text:
            return visit.reply(visit.s("photo-kept", place=visit.some_place()))
        reply = await self._said(visit, text)
        if incoming.photo is None or reply.silent:
            return reply
        return replace(reply, text=lines(reply.text, visit.s("photo-words-only")))

    async def _help_in(self, incoming: Incoming, memory: Memory, me: Told[MeAnswer]) -> Reply | None:
        """The reply to a call for help of somebody in several events, which waits for no question: it goes out in each
        that it may be about, with how to reach another; None for anything else."""
        if len(me.data.events) < 2 or incoming.button or not incoming.text.strip():
            return None
        visits = [Visit(self._api, incoming, memory, me.data, e, me.now) for e in me.data.events]
        cries = {
            v.event.id: m
            for v in visits
            if isinstance(m := understand(_command(incoming.text), v.context()), Distress)
        }
        if not cries:
            return None
        about = which_event.called_in(incoming.text, memory, me, tuple(cries))
        calls = [v for v in visits if v.event.id in about]
        for visit in calls[1:]:
            visit.part = event_mark(visit.event.id)
        memory.forget_offers()
        replies_ = [await distressed.distress(v, cries[v.event.id]) for v in calls]
        memory.speaks_in(calls[0].event.id if len(calls) == 1 else None, me.now)
        return which_event.called(visits, calls, replies_)

    # -- text -------------------------------------------------------------------------------------------------

    async def _said(self, visit: Visit, text: str) -> Reply:
        pending = visit.memory.pending
        if pending is not None:
            time = find_time(tidy(text), visit.sent_at, visit.event.time_zone)
            if time is not None and not time.rest.strip("? "):
                visit.memory.forget_offers()
                return await reported.report(visit, Reported((replace(pending, seen_at=time.at),)))
        whose = distressed.says_whose(visit, text) or await distressed.says_whose_again(visit, text)
        meant = whose or understand(_command(text), visit.context())
        visit.memory.forget_offers()
        reply = await self._meant(visit, await alarmed.whose_alarm(visit, meant))
        return grave.numbers_first(visit, meant, text, reply)

    async def _meant(self, visit: Visit, meant: Understood) -> Reply:
        match meant:
            case Distress():
                return await distressed.distress(visit, meant)
            case MeantFor():
                return await distressed.meant_for(visit, meant)
            case Asked():
                return await asked.answer(visit, meant)
            case Reported():
                return await self._reported(visit, meant)
            case Several():
                return await self._each(visit, meant)
            case AskBack():
                return await either.answer(visit, meant) or await asking_back.ask_back(visit, meant)
            case Acknowledged():
                return await answered.in_words(visit, meant)
            case Undo():
                return await (mended.undo_there(visit, meant) if meant.points else undoing.undo_last(visit))
            case Small():
                return visit.reply(visit.s("thanks" if meant.thanks else "nothing-to-say"))
            case Unclear():
                return visit.reply(lines(visit.s("not-understood"), self._if_help(visit)))

    @staticmethod
    def _if_help(visit: Visit) -> str:
        """Words of whoever is out there that nobody understood may have been a call for help."""
        if not visit.kinds & {PartKind.RUNNER, PartKind.PACER}:
            return ""
        return visit.s("not-understood-help", emergency=visit.event.emergency_number)

    async def _reported(self, visit: Visit, meant: Reported) -> Reply:
        unknown = asking_back.whose(visit, meant)
        if unknown is not None:
            return await asking_back.ask_back(visit, unknown)
        meant = mended.as_before(visit, meant)
        call = alarmed.false_call(visit, meant)
        if call is not None:
            return await undoing.undo(visit, call.entry)
        if meant.reports[0].kind in RACE_LEVEL and PartKind.ORGANISER not in visit.kinds:
            control = visit.event.race_control
            return visit.reply(visit.s("race-only-organiser", name=control.name, phone=control.phone))
        reply = (
            await with_her.said(visit, meant)
            or await answered.not_yet(visit, meant)
            or await reported.report(visit, meant)
        )
        return await alarmed.still_open(visit, meant, reply)

    async def _each(self, visit: Visit, meant: Several) -> Reply:
        """Every part of a message in one reply; the buttons are those of the first part that has any."""
        replies_ = [await self._meant(visit, part) for part in meant.parts]
        # What two answers say in the same words is said once.
        text = lines(*dict.fromkeys(line for r in replies_ for line in r.text.split("\n")))
        return visit.reply(text, next((r.buttons for r in replies_ if r.buttons), ()))

    # -- buttons ----------------------------------------------------------------------------------------------

    async def pressed(self, visit: Visit) -> Reply:
        """The reply to a pressed button of somebody known."""
        read = read_data(visit.incoming.button)
        if read is None:
            return visit.reply(visit.s("not-understood"))
        press, fields = read
        try:
            return await self._press(visit, press, fields)
        except (ValueError, IndexError, StopIteration):
            # A button of an older version, or one made by hand.
            return visit.reply(visit.s("button-old"))

    async def _press(self, visit: Visit, press: Press, fields: tuple[str, ...]) -> Reply:
        match press:
            case Press.ANSWER:
                return await answered.by_button(visit, fields)
            case Press.CONFIRM | Press.UNDO:
                right = press is Press.CONFIRM
                asked = len(fields) > 1 and int(fields[1]) > 0
                if right:
                    reply = await undoing.confirm(visit, fields[0])
                else:
                    reply = await undoing.undo(visit, fields[0], judged=asked)
                if asked:
                    await answered.settle(visit, int(fields[1]), "right" if right else "wrong")
                return reply
            case Press.REPORT:
                return await self._pressed_report(visit, fields)
            case Press.ASK:
                return await self._pressed_ask(visit, fields)
            case Press.PICK:
                return await self._picked(visit, fields)
            case Press.JOIN:
                return visit.reply(visit.s("nothing-to-say"))

    async def _pressed_report(self, visit: Visit, fields: tuple[str, ...]) -> Reply:
        kind, point_tag, runner_tag, minutes, *_ = fields
        runner = untag(runner_tag, (r.id for r in visit.event.runners))
        here = visit.runner(runner)
        if here is None:
            return visit.reply(visit.s("error-not_found"))
        point = untag(point_tag, (p.id for p in here.points))
        visit.memory.forget_offers()
        one = reported.pressed_report(visit, kind, point, here.id, int(minutes))
        return await reported.report(visit, Reported((one,)))

    async def _pressed_ask(self, visit: Visit, fields: tuple[str, ...]) -> Reply:
        word, point_tag, runner_tag, *_ = fields
        runner = untag(runner_tag, (r.id for r in visit.event.runners)) or _whose(visit)
        here = visit.runner(runner)
        point = untag(point_tag, (p.id for p in here.points)) if here else None
        return await asked.answer(visit, Asked(Question(word), runner, point))

    async def _picked(self, visit: Visit, fields: tuple[str, ...]) -> Reply:
        """A choice as it was offered, with its words; else what its button carries."""
        if which_event.is_event(visit.incoming.button):
            return visit.reply(visit.s("event-chosen", event=visit.event.name))
        number, carries = int(fields[0]), fields[1:-1]
        if visit.incoming.button in visit.memory.picked:
            return visit.reply(visit.s("picked-before"))
        choices = visit.memory.choices
        offered = choices[number].then if number < len(choices) else None
        if offered is None or carried.fields_of(choices[number]) != carries:
            offered = carried.meant_by(carries, visit.event)
        else:
            visit.memory.choices = ()
        if offered is None:
            return visit.reply(visit.s("button-old"))
        if not isinstance(offered, Asked):
            # A question may be asked twice; a report counts once, however often its button is pressed.
            visit.memory.picked.append(visit.incoming.button)
        return await self._meant(visit, offered)

    # -- trouble ----------------------------------------------------------------------------------------------

    def _unreachable(self, incoming: Incoming, memory: Memory) -> Reply:
        """The server does not answer. Somebody in distress is still told whom to call."""
        say = _say_of(incoming, memory)
        if memory.me is not None and incoming.text and memory.me.data.events:
            event = _remembered(memory, memory.me.data)
            visit = Visit(self._api, incoming, memory, memory.me.data, event, memory.me.now)
            meant = understand(incoming.text, visit.context())
            if isinstance(meant, Distress):
                control = (event.race_control.name, event.race_control.phone)
                number = event.emergency_number
                text = replies.say_distress(say, control, number, None, by_self=meant.by_self)
                return Reply(text, again=True)
            key = "error-unreachable" if incoming.kept else "error-unreachable-not-kept"
            return grave.numbers_first(visit, meant, incoming.text, Reply(say.s(key), again=True))
        key = "error-unreachable" if incoming.kept else "error-unreachable-not-kept"
        return Reply(say.s(key), again=True)


def _say_of(incoming: Incoming, memory: Memory) -> Say:
    if memory.me is None:
        return Say(Reader(incoming.language or "en", "UTC", "UTC"), incoming.sent_at)
    person = memory.me.data.person
    return Say(Reader(person.language, "UTC", "UTC"), memory.me.now)


def _command(text: str) -> str:
    """A command of a menu as the sentence it stands for: '/next' is 'next', '/not_here_yet' three words."""
    if not text.startswith("/"):
        return text
    word, _, rest = text[1:].partition(" ")
    word = word.partition("@")[0].replace("_", " ")
    return f"{'what can i ask' if word in ('start', 'ask') else word} {rest}".strip()


def _whose(visit: Visit) -> str | None:
    """The runner a person without naming one speaks of: last asked about, their own, the only one."""
    runner = visit.context().runner(None)
    return runner.id if runner else next((r.id for r in visit.event.runners), None)


def _remembered(memory: Memory, me: MeAnswer) -> EventHere:
    return next((e for e in me.events if e.id == memory.event), me.events[0])
