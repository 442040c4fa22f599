"""Calls about the asker: who am I, joining by invitation, one's own notices and answering them."""

from __future__ import annotations

import secrets
from datetime import timedelta

from server.api import auth
from server.api.ask import Ask, not_yours
from server.api.envelope import ApiError
from server.api.models import Answer, GroupChat, Join
from server.api.picture import Picture
from server.api.replies import ButtonOut, GroupBound, Joined, NoticeOut, Notices
from server.api.standing import due_at, own_by_now, stands_at
from server.api.who_may import Call, May, may
from server.event.model import Event, Person
from server.facts.entry import Entry, Kind, Source
from server.facts.state import Going
from server.journal import Invitation
from server.watch.climb import Stage, replay
from server.watch.notice import AlarmValues, Made, NoticeKind, UnnamedHelpValues
from server.watch.waiting import changeable, waiting
from server.wording.answer import AnsweredAnswer, EventHere, MeAnswer, PointHere, RunnerHere
from server.wording.message import Rows
from server.wording.notices import say_notice
from server.wording.reader import reader_in

DEVICE_DAYS = timedelta(days=120)
DEVICE = "device"


async def me(ask: Ask) -> MeAnswer:
    """GET /v1/me: who is asking, and the events they have a part in, those still running first."""
    person = ask.person
    parts = await ask.parts.journal.parts(person)
    known = await ask.parts.journal.person(person)
    events = [
        _event_here(await ask.parts.pictures.take(e, ask.now), person)
        for e in sorted({p.event for p in parts})
    ]
    events.sort(key=lambda e: (all(r.going in _OVER for r in e.runners), -e.starts.timestamp(), e.id))
    return MeAnswer(known or Person(person, person), tuple(events))


_OVER = frozenset(g.value for g in (Going.CLOSED, Going.FINISHED, Going.IN_HAND))


def _event_here(picture: Picture, person: str) -> EventHere:
    event = picture.event
    mine = event.parts_of(person)
    runners = tuple(
        _runner_here(picture, r.id, may(mine, Call.FACTS, r.id), person)
        for r in event.runners
        if any(p.runner in (None, r.id) for p in mine)
    )
    open_ones = waiting(picture.situation.made, picture.now)
    owed = (m for m in picture.situation.made if m.notice.key.person == person and m.short in open_ones)
    return EventHere(
        id=event.id,
        name=event.name,
        time_zone=event.time_zone,
        starts=event.starts,
        parts=mine,
        runners=runners,
        race_control=event.race_control,
        emergency_number=event.emergency_number,
        open_notices=tuple(m.short for m in owed),
        people=tuple((p.id, p.name) for p in event.people) if may(mine, Call.PHONES) is May.YES else (),
        rescue=event.rescue,
        stands=stands_at(picture, person),
    )


def _runner_here(picture: Picture, runner: str, share: May, person: str) -> RunnerHere:
    """A runner with her points; where she is only for those who may see what was reported."""
    event, state = picture.event, picture.state.runner(runner)
    r = event.runner(runner)
    points = tuple(
        PointHere(p.id, p.name, p.km or 0.0, p.also, p.crew_access, p.finish)
        for p in event.course_of(runner).points
    )
    if share is not May.YES:
        return RunnerHere(r.id, r.name, r.bib, state.start, points)
    reached = state.reached[-1] if state.reached else None
    at = reached if state.going is Going.AT_POINT else None
    due = due_at(picture, runner, person)
    own = own_by_now(picture, runner, person)
    return RunnerHere(r.id, r.name, r.bib, state.start, points, reached, at, state.going.value, due, own)


async def join(ask: Ask) -> Joined:
    """POST /v1/join: a preview of what a code opens, then binding this chat or device to its person."""
    sent = ask.sent(Join)
    if sent.channel == DEVICE:
        return await join_device(ask, sent.code, preview=sent.preview)
    await _refuse_other_channel(ask, sent.channel, sent.address)
    guesser = f"{sent.channel}:{sent.address}"
    if sent.preview:
        return _joined(await ask.parts.journal.preview(sent.code, guesser, ask.now), accepted=False)
    taken = await ask.parts.journal.redeem(sent.code, sent.channel, sent.address, guesser, ask.now)
    return _joined(taken, accepted=True)


async def join_device(ask: Ask, code: str, *, preview: bool) -> Joined:
    """A device or browser that joins by itself is given a token of its own, once."""
    guesser = auth.peer(ask.request, ask.parts)
    if preview:
        return _joined(await ask.parts.journal.preview(code, guesser, ask.now), accepted=False)
    device = "s-" + secrets.token_hex(12)
    taken = await ask.parts.journal.redeem(code, "web", device, guesser, ask.now)
    secret = await ask.parts.journal.issue_token(
        taken.person, device, [auth.PERSON], ask.now, ask.now + DEVICE_DAYS
    )
    return _joined(taken, accepted=True, token=secret)


async def _refuse_other_channel(ask: Ask, channel: str, address: str) -> None:
    who = await auth.caller(ask.request, ask.parts, ask.now)
    if not who.is_channel(channel):
        raise not_yours(None)
    if not address:
        raise ApiError(
            "invalid", "the address to bind is missing", "address", "Send who wrote, at the channel."
        )


def _joined(invitation: Invitation, *, accepted: bool, token: str = "") -> Joined:
    runners = tuple(sorted({p.runner for p in invitation.parts if p.runner}))
    return Joined(
        person=invitation.person,
        name=invitation.person_name,
        event=invitation.event,
        event_name=invitation.event_name,
        parts=invitation.parts,
        runner_names=runners,
        accepted=accepted,
        token=token,
    )


async def notices(ask: Ask) -> Notices:
    """GET …/notices: the asker's own, worded for them."""
    return Notices(notices_of(await ask.picture(), ask.person))


def notices_of(picture: Picture, person: str) -> tuple[NoticeOut, ...]:
    """A person's notices in one event, oldest first, worded for them."""
    open_ones = waiting(picture.situation.made, picture.now)
    again = changeable(picture.situation.made, picture.now)
    mine = (m for m in picture.situation.made if m.notice.key.person == person)
    return tuple(
        notice_out(m, picture.event, waits=m.short in open_ones, changes=m.short in again) for m in mine
    )


def notice_out(made: Made, event: Event, *, waits: bool, changes: bool = False) -> NoticeOut:
    """One notice in its person's words, as of when it was made; `waits`: an answer would still be about it;
    `changes`: another one would."""
    notice = made.notice
    message = say_notice(notice, event, reader_in(event, notice.key.person), made.made_at, short=made.short)
    return NoticeOut(
        short=made.short,
        event=event.id,
        kind=notice.key.kind.value,
        urgency=notice.urgency.value,
        text=message.text,
        buttons=buttons_out(message.buttons) if waits or changes or _may_be_judged(made) else (),
        made_at=made.made_at,
        needs_answer=waits,
        answered=made.answer,
        changeable=changes,
        answered_at=made.answered_at,
    )


def _may_be_judged(made: Made) -> bool:
    """A doubtful report asks 'right or wrong' without owing an answer, until it has one; whoever holds a call for help
    that named nobody may end it."""
    values = made.notice.values
    if isinstance(values, UnnamedHelpValues) and values.holder == made.notice.key.person:
        return not values.over
    return made.answered_at is None and made.notice.key.kind is NoticeKind.UNCONFIRMED


def buttons_out(rows: Rows) -> tuple[tuple[ButtonOut, ...], ...]:
    """Rows of buttons as they travel."""
    return tuple(tuple(ButtonOut(b.label, b.data) for b in row) for row in rows)


async def answer(ask: Ask) -> AnsweredAnswer:
    """POST …/notices/{short}/answer: the person is reached, in words or by a button."""
    return await _answer(ask, ask.event)


async def group(ask: Ask) -> GroupBound:
    """POST …/group: a channel says that its group chat is to be told what concerns all, or no longer."""
    sent, channel = ask.sent(GroupChat), ask.caller.channel
    if not channel:
        raise not_yours(Call.GROUP)
    if sent.tell:
        await ask.parts.journal.bind_group(ask.event, channel, sent.address, ask.person, ask.now)
    else:
        await ask.parts.journal.unbind_group(ask.event, channel, sent.address)
    return GroupBound(sent.tell, (await ask.parts.pictures.event(ask.event)).name)


async def answer_by_number(ask: Ask) -> AnsweredAnswer:
    """POST /v1/notices/{short}/answer: the same where only the number is known: the newest of that number."""
    short = _short(ask)
    found = []
    for event in sorted({p.event for p in await ask.parts.journal.parts(ask.person)}):
        made = await ask.parts.journal.made(event)
        found += [m for m in made if m.short == short and m.notice.key.person == ask.person]
    if not found:
        raise not_yours(Call.ANSWER)
    newest = max(found, key=lambda m: m.made_at)
    return await _answer(ask, newest.notice.key.event)


def _short(ask: Ask) -> int:
    text = ask.request.match_info["short"]
    if not text.isdecimal() or len(text) > 9:
        raise ApiError("invalid", "not the number of a notice", "short", "Use the number the notice shows.")
    return int(text)


async def _answer(ask: Ask, event: str) -> AnsweredAnswer:
    sent, short, person = ask.sent(Answer), _short(ask), ask.person
    made = next((m for m in await ask.parts.journal.made(event) if m.short == short), None)
    if made is None or made.notice.key.person != person:
        raise not_yours(Call.ANSWER)
    at = sent.sent_at or ask.now
    words = f"{sent.answer}: {sent.words}" if sent.words else sent.answer
    entry = _answer_entry(ask, made, sent, words)
    # The watch goes by the answer's own word; what was said around it stays with the entry.
    done = await ask.parts.journal.answer(event, short, person, sent.answer, at, entry)
    await ask.parts.ticker.after_entry(event)
    return await _answered(ask, event, done.made)


def _answer_entry(ask: Ask, made: Made, sent: Answer, words: str) -> Entry:
    at = sent.sent_at or ask.now
    return Entry(
        id="",
        event=made.notice.key.event,
        runner=made.notice.key.runner or None,
        kind=Kind.ANSWERED,
        seen_at=at,
        sent_at=at,
        received_at=ask.now,
        by=ask.person,
        source=Source.CREW,
        sender=ask.caller.sender,
        key=sent.key or "a-" + secrets.token_hex(12),
        via=ask.caller.channel or "api",
        about=made.notice.key.text(),
        person=ask.person,
        words=words,
    )


async def _answered(ask: Ask, event_id: str, made: Made) -> AnsweredAnswer:
    event = await ask.parts.pictures.event(event_id)
    holder, look_again = made.notice.key.person, None
    if isinstance(made.notice.values, AlarmValues):
        stand = replay(
            m for m in await ask.parts.journal.made(event_id) if _same_alarm(m, made.notice.values)
        )
        if stand.stage is Stage.HELD and stand.holder is not None and stand.since is not None:
            holder, look_again = stand.holder, stand.since + event.alarm.look_again
    name = next((p.name for p in event.people if p.id == holder), holder)
    return AnsweredAnswer(made.short, name, holder == ask.person, look_again, made.notice.key.kind.value)


def _same_alarm(made: Made, values: AlarmValues) -> bool:
    return isinstance(made.notice.values, AlarmValues) and made.notice.values.alarm == values.alarm
