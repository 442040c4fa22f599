"""One message in, one reply out. Finds out who writes and about which event, then hands on."""

from __future__ import annotations

from dataclasses import replace

from server.conversation import (
    alarmed,
    answered,
    asked,
    asking_back,
    bibs,
    button_payload,
    changing,
    corrections,
    distressed,
    follow,
    grouped,
    joining,
    letting_go,
    looking_back,
    multi_runner,
    open_question,
    passed_on,
    phones,
    photos,
    quoted,
    race_news,
    reported,
    requests,
    safety_numbers,
    stop_log,
    undoing,
    which_event,
    while_open,
    with_her,
)
from server.conversation.dialogue import Memory
from server.conversation.telling import replies
from server.conversation.telling.answer import MeAnswer
from server.conversation.telling.message import Button, Press, event_mark, read_data, told_apart, untag
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say, lines
from server.conversation.understanding import (
    Acknowledged,
    AskBack,
    Asked,
    Danger,
    Distress,
    Kept,
    MeantFor,
    Need,
    OtherRunner,
    Question,
    Reported,
    Request,
    Requested,
    Several,
    Small,
    Unclear,
    Understood,
    Undo,
    read,
    time_alone,
    understand,
)
from server.conversation.values import Incoming, Reply
from server.conversation.view import Refused, Snapshot, Told
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import RACE_LEVEL, Kind

_STRANGER = frozenset({"no_address", "not_yours"})


async def respond(view: Snapshot, incoming: Incoming, memory: Memory) -> Reply:
    """The reply to one message; silent where nothing is to be said. `memory` becomes that of the message after it.

    A coroutine that waits for nothing but the outcomes of its actions (server/conversation/actions.py)."""
    reply = await _replied(view, incoming, memory)
    return replace(reply, buttons=told_apart(reply.buttons))


async def _replied(view: Snapshot, incoming: Incoming, memory: Memory) -> Reply:
    if incoming.group and not incoming.addressed:
        return Reply("")
    me: Told[MeAnswer] | None = None
    try:
        try:
            me = Told(view.now, view.me())
        except Refused as error:
            if error.code not in _STRANGER:
                raise
            return await _newcomer(incoming, memory)
        code = joining.code_in(incoming.text) if incoming.text.startswith("/start") else None
        if code is not None:
            return await joining.preview(incoming, memory, code)
        if memory.code and (accept := joining.accepts(incoming)) is not None:
            return await joining.settle(incoming, memory, accept=accept)
        return await _known(view, incoming, memory, me)
    except Refused as error:
        return Reply(replies.say_error(_say_of(incoming, me), error.code, error.what))


async def press(view: Snapshot, incoming: Incoming, event_id: str) -> Reply:
    """The reply to a button pressed outside of any chat, about that event."""
    me = view.me()
    say = _say_of(incoming, Told(view.now, me))
    event = next((e for e in me.events if e.id == event_id), None)
    if event is None:
        return Reply(say.s("error-not_yours"))
    try:
        reply = await _pressed(Visit(view, incoming, Memory(), me, event, view.now))
        return replace(reply, buttons=told_apart(reply.buttons))
    except Refused as error:
        return Reply(replies.say_error(say, error.code, error.what))


async def _newcomer(incoming: Incoming, memory: Memory) -> Reply:
    if memory.code and (accept := joining.accepts(incoming)) is not None:
        return await joining.settle(incoming, memory, accept=accept)
    code = joining.code_in(incoming.text)
    if code is None:
        return joining.stranger(incoming.language)
    return await joining.preview(incoming, memory, code)


async def _known(view: Snapshot, incoming: Incoming, memory: Memory, me: Told[MeAnswer]) -> Reply:
    called = await _help_in(view, incoming, memory, me)
    if called is not None:
        return called
    chosen = which_event.chosen(incoming, memory, me)
    if chosen is None:
        if not me.data.events:
            return joining.stranger(me.data.person.language)
        return which_event.ask(view, incoming, memory, me)
    event, incoming = chosen
    text = incoming.text
    visit = Visit(view, incoming, memory, me.data, event, me.now)
    if incoming.group and (tell := grouped.asked(text)) is not None:
        return await grouped.settle(visit, incoming.reply_to, tell=tell)
    if incoming.button:
        return await _pressed(visit)
    if incoming.live_ended:
        return await phones.share_ended(visit, _whose(visit))
    if incoming.fix is not None:
        shared = await while_open.place(visit, incoming.fix)
        if shared is not None:
            return shared
        runner = _whose(visit)
        if runner is None:
            return visit.reply(visit.s("ask-runner"))
        return await phones.position(visit, incoming.fix, runner)
    if incoming.other and not text:
        return visit.reply(visit.s("other-unreadable"))
    if incoming.photo is not None and not incoming.photo.to_come:
        return await photos.taken(visit, incoming.photo)
    if incoming.photo is not None and not text:
        return Reply("")
    return await _said(visit, text)


async def _help_in(view: Snapshot, incoming: Incoming, memory: Memory, me: Told[MeAnswer]) -> Reply | None:
    """The reply to a call for help of somebody in several events, which waits for no question: it goes out in each
    that it may be about, with how to reach another; None for anything else."""
    with_photo = incoming.photo is not None and not incoming.photo.to_come
    if len(me.data.events) < 2 or incoming.button or with_photo or not incoming.text.strip():
        return None
    visits = [Visit(view, incoming, memory, me.data, e, me.now) for e in me.data.events]
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


async def _said(visit: Visit, text: str) -> Reply:
    pending = visit.memory.pending
    if pending is not None:
        at = time_alone(text, visit.sent_at, visit.event.time_zone)
        if at is not None:
            visit.memory.forget_offers()
            return await reported.report(visit, Reported((replace(pending, seen_at=at),)))
    whose = distressed.says_whose(visit, text) or await distressed.says_whose_again(visit, text)
    reading = read(_command(text), visit.context())
    plainly = stop_log.plain(visit, text)
    if plainly:
        reading = replace(reading, danger=Danger.NONE, calm=True, sure=False)
    visit.calm = reading.calm
    open_ = None if reading.danger is Danger.ALARM else open_question.answered(visit, text)
    alarm = reading.danger is Danger.ALARM
    back = looking_back.answers(visit, text, alarm=alarm)
    if back:
        visit.memory.forget_offers()
        return await looking_back.keep(visit, back, alarm=alarm)
    logs = stop_log.meant(visit, text, reading.meant, plainly=plainly) if not reading.danger.grave else None
    if reading.danger is Danger.ASK:
        logs = stop_log.how_she_is(visit, text, reading.meant)
    if reading.danger is not Danger.ALARM and not whose and not open_:
        # The whole of it is known words, so that a doubt about danger is none.
        undoes = isinstance(reading.meant, Undo)
        change = await follow.in_words(visit, text) or await changing.in_words(visit, text, undoes=undoes)
        if change is not None:
            visit.memory.forget_offers()
            return change
    times = reading.danger is not Danger.ALARM and any(c.isdigit() for c in text)
    meant = (
        whose
        or (corrections.by_its_time(visit, text) if times else None)
        or open_
        or logs
        or while_open.asked(visit, text)
        or letting_go.said(visit, text)
        or reading.meant
    )
    meant = open_question.taken(visit, text, alarmed.not_hers(visit, text) or meant)
    if not reading.danger.grave and photos.goes_with(visit.incoming.photo, meant):
        return Reply("")
    visit.memory.forget_offers()
    try:
        reply = await _meant(visit, await alarmed.whose_alarm(visit, meant))
    except Refused as error:
        on_it = error.code == "not_yours" and while_open.on_it(visit)
        if not on_it and reading.danger is Danger.NONE:
            raise
        # What their part may not report, whoever called for help still has to say to those who come; and nothing that is
        # refused keeps the numbers from whoever may need them.
        refused = visit.s("not-understood") if on_it else replies.say_error(visit.say, error.code, error.what)
        meant, reply = Unclear(""), visit.reply(refused)
    reply = bibs.named_as_left(visit, text, meant, reply)
    reply = await while_open.pass_on(visit, meant, text, reply)
    return safety_numbers.numbers_first(visit, meant, reading.danger, reply, sure=reading.sure)


async def _meant(visit: Visit, meant: Understood) -> Reply:
    match meant:
        case Distress():
            return await distressed.distress(visit, meant)
        case MeantFor():
            return await distressed.meant_for(visit, meant)
        case Asked():
            return await asked.answer(visit, meant)
        case Reported():
            return await _reported(visit, meant)
        case Several():
            return await _each(visit, _with_all_words(visit, meant))
        case AskBack():
            back = await multi_runner.answer(visit, meant) or await asking_back.ask_back(visit, meant)
            return quoted.before(visit, meant.word, back) if meant.need is Need.MEANING else back
        case Acknowledged():
            return await answered.in_words(visit, meant)
        case Undo():
            return await (
                corrections.undo_there(visit, meant)
                if meant.points
                else undoing.undo_last(visit, whole=meant.whole)
            )
        case Small():
            return visit.reply(visit.s("thanks" if meant.thanks else "nothing-to-say"))
        case Unclear():
            return await passed_on.unclear(visit, meant, _if_help(visit))
        case Kept():
            return await passed_on.kept(visit, meant)
        case Requested(request=Request.SWAP, person=None) if went := await answered.goes(visit, meant.words):
            return went
        case Requested():
            return await requests.requested(visit, meant)
        case OtherRunner():
            return await passed_on.other_runner(visit, meant)


def _if_help(visit: Visit) -> str:
    """Words of whoever is out there that nobody understood may have been a call for help."""
    if not visit.kinds & {PartKind.RUNNER, PartKind.PACER}:
        return ""
    return visit.s("not-understood-help", emergency=visit.event.emergency_number)


async def _reported(visit: Visit, meant: Reported) -> Reply:
    unknown = asking_back.whose(visit, meant)
    if unknown is not None:
        return await asking_back.ask_back(visit, unknown)
    meant = corrections.as_before(visit, meant)
    call = alarmed.false_call(visit, meant)
    if call is not None:
        return await undoing.undo(visit, call.entry)
    if meant.reports[0].kind in RACE_LEVEL and PartKind.ORGANISER not in visit.kinds:
        control = visit.event.race_control
        return visit.reply(visit.s("race-only-organiser", name=control.name, phone=control.phone))
    reply = (
        await race_news.report(visit, meant.reports[0])
        or await with_her.said(visit, meant)
        or await answered.not_yet(visit, meant)
        or await reported.report(visit, meant)
    )
    return await alarmed.still_open(visit, meant, reply)


async def _each(visit: Visit, meant: Several) -> Reply:
    """Every part of a message in one reply, what of it can't be done among them, with the buttons of all: what reads alike
    once, of the first part that has it."""
    replies_: list[Reply] = []
    refused: list[Refused] = []
    for visit.clause, part in enumerate(meant.parts):
        try:
            replies_.append(
                _not_done(visit, part) if isinstance(part, Unclear) else await _meant(visit, part)
            )
        except Refused as error:
            refused.append(error)
            replies_.append(visit.reply(replies.say_error(visit.say, error.code, error.what)))
    visit.clause = 0
    # Where something was answered, that a clause beside it was not understood is said of nothing.
    lost = visit.s("not-understood")
    replies_ = [r for r in replies_ if r.text != lost] or replies_[:1]
    if len(refused) == len(meant.parts):
        raise refused[0]
    # What two answers say in the same words is said once.
    text = lines(*dict.fromkeys(line for r in replies_ for line in r.text.split("\n")))
    buttons: list[tuple[Button, ...]] = []
    for row in (row for r in replies_ for row in r.buttons):
        had = {b.label for earlier in buttons for b in earlier}
        buttons += [new] if (new := tuple(b for b in row if b.label not in had)) else []
    return visit.reply(text, tuple(buttons))


def _with_all_words(visit: Visit, meant: Several) -> Several:
    """The same; of who reports where she was and may say no more of her, all the words go with that: 'through at 1:40.
    cold but talking'."""
    if visit.kinds - {PartKind.VOLUNTEER} or not any(isinstance(p, Reported) for p in meant.parts):
        return meant
    text = visit.incoming.text
    told = (
        Reported(tuple(replace(r, words=text) for r in p.reports)) if isinstance(p, Reported) else p
        for p in meant.parts
    )
    return Several(tuple(p for p in told if not isinstance(p, Kept)))


def _not_done(visit: Visit, part: Unclear) -> Reply:
    """A question beside others that nobody could make out: what the file says of it, else quoted back."""
    return visit.reply(quoted.quoted(visit, part.words) or visit.s("clause-not-done", words=part.words))


# -- buttons ----------------------------------------------------------------------------------------------


async def _pressed(visit: Visit) -> Reply:
    """The reply to a pressed button of somebody known."""
    read = read_data(visit.incoming.button)
    if read is None:
        return visit.reply(visit.s("not-understood"))
    press, fields = read
    try:
        return await _press(visit, press, fields)
    except (ValueError, IndexError, StopIteration):
        # A button of an older version, or one made by hand.
        return visit.reply(visit.s("button-old"))


async def _press(visit: Visit, press: Press, fields: tuple[str, ...]) -> Reply:
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
            return await _pressed_report(visit, fields)
        case Press.ASK:
            return await _pressed_ask(visit, fields)
        case Press.PICK:
            return await _picked(visit, fields)
        case Press.LOG:
            return await stop_log.pressed(visit, fields)
        case Press.CHANGE:
            return await changing.pressed(visit, fields)
        case Press.JOIN:
            return visit.reply(visit.s("nothing-to-say"))


async def _pressed_report(visit: Visit, fields: tuple[str, ...]) -> Reply:
    kind, point_tag, runner_tag, minutes, *_ = fields
    runner = untag(runner_tag, (r.id for r in visit.event.runners))
    here = visit.runner(runner)
    if here is None:
        return visit.reply(visit.s("error-not_found"))
    if kind == Kind.ASKED_FOR_HELP.value:
        return await distressed.distress(visit, passed_on.cry_of(visit, here.id))
    point = untag(point_tag, (p.id for p in here.points))
    visit.memory.forget_offers()
    one = reported.pressed_report(visit, kind, point, here.id, int(minutes))
    return await reported.report(visit, Reported((one,)))


async def _pressed_ask(visit: Visit, fields: tuple[str, ...]) -> Reply:
    word, point_tag, runner_tag, *_ = fields
    runner = untag(runner_tag, (r.id for r in visit.event.runners)) or _whose(visit)
    here = visit.runner(runner)
    point = untag(point_tag, (p.id for p in here.points)) if here else None
    return await asked.answer(visit, Asked(Question(word), runner, point))


async def _picked(visit: Visit, fields: tuple[str, ...]) -> Reply:
    """A choice as it was offered, with its words; else what its button carries."""
    if which_event.is_event(visit.incoming.button):
        return visit.reply(visit.s("event-chosen", event=visit.event.name))
    number, carries = int(fields[0]), fields[1:-1]
    if visit.incoming.button in visit.memory.picked:
        return visit.reply(visit.s("picked-before"))
    choices = visit.memory.choices
    offered = choices[number].then if number < len(choices) else None
    if offered is None or button_payload.fields_of(choices[number]) != carries:
        offered = button_payload.meant_by(carries, visit.event)
    else:
        visit.memory.choices = ()
    if offered is None:
        return visit.reply(visit.s("button-old"))
    if not isinstance(offered, Asked):
        # A question may be asked twice; a report counts once, however often its button is pressed.
        visit.memory.picked.append(visit.incoming.button)
    return await _meant(visit, offered)


def _say_of(incoming: Incoming, me: Told[MeAnswer] | None) -> Say:
    if me is None:
        return Say(Reader(incoming.language, "UTC", "UTC"), incoming.sent_at)
    return Say(Reader(me.data.person.language, "UTC", "UTC"), me.now)


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
