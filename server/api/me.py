"""Calls about the asker: who am I, joining by invitation, one's own notices and answering them."""

from __future__ import annotations

import asyncio
import secrets
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from server.api import auth, covering
from server.api.ask import Ask, not_yours
from server.api.envelope import ApiError
from server.api.models import Answer, GroupChat, Join
from server.api.parts import Parts
from server.api.person_view import PersonView, notices_of
from server.api.replies import GroupBound, Joined, Notices
from server.api.who_may import Call
from server.conversation.telling.answer import AnsweredAnswer, MeAnswer
from server.event.model import Person
from server.facts.entry import Entry, Kind, Source
from server.journal import Invitation
from server.watch.escalation_state import Stage, replay
from server.watch.notice import AlarmValues, Made

DEVICE_DAYS = timedelta(days=120)
DEVICE = "device"


async def me(ask: Ask) -> MeAnswer:
    """GET /v1/me: who is asking, and the events they have a part in, those still running first."""
    return await asyncio.to_thread((await view_of(ask.parts, ask.person, ask.now)).me)


async def view_of(
    parts: Parts, person: str | None, now: datetime, without: Callable[[Entry], bool] | None = None
) -> PersonView:
    """What that person may know now; of nobody known, nothing. `without`: as if those entries had not come."""
    if person is None:
        return PersonView(now, None, {})
    journal = parts.journal
    events = sorted({p.event for p in await journal.parts(person)})
    known = await journal.person(person) or Person(person, person)
    return PersonView(now, known, {e: await parts.pictures.take_soon(e, now, without) for e in events})


async def join(ask: Ask) -> Joined:
    """POST /v1/join: a preview of what a code opens, then binding this chat or device to its person."""
    sent = ask.sent(Join)
    if sent.channel == DEVICE:
        return await join_device(ask, sent.code, preview=sent.preview)
    await _refuse_other_channel(ask, sent.channel, sent.address)
    return await join_chat(ask, sent)


async def join_chat(ask: Ask, sent: Join) -> Joined:
    """Look at an invitation, or bind the address that sent it."""
    guesser = f"{sent.channel}:{sent.address}"
    if sent.preview:
        return await _joined(
            ask, await ask.parts.journal.preview(sent.code, guesser, ask.now), accepted=False
        )
    taken = await ask.parts.journal.redeem(sent.code, sent.channel, sent.address, guesser, ask.now)
    return await _joined(ask, taken, accepted=True)


async def join_device(ask: Ask, code: str, *, preview: bool) -> Joined:
    """A device or browser that joins by itself is given a token of its own, once."""
    guesser = auth.peer(ask.http, ask.parts)
    if preview:
        return await _joined(ask, await ask.parts.journal.preview(code, guesser, ask.now), accepted=False)
    device = "s-" + secrets.token_hex(12)
    taken = await ask.parts.journal.redeem(code, "web", device, guesser, ask.now)
    secret = await ask.parts.journal.issue_token(
        taken.person, device, [auth.PERSON], ask.now, ask.now + DEVICE_DAYS
    )
    return await _joined(ask, taken, accepted=True, token=secret)


async def _refuse_other_channel(ask: Ask, channel: str, address: str) -> None:
    who = await auth.caller(ask.http, ask.parts, ask.now)
    if not who.is_channel(channel):
        raise not_yours(None)
    if not address:
        raise ApiError(
            "invalid", "the address to bind is missing", "address", "Send who wrote, at the channel."
        )


async def _joined(ask: Ask, invitation: Invitation, *, accepted: bool, token: str = "") -> Joined:
    event = await ask.parts.pictures.event(invitation.event)
    names = {r.id: r.name for r in event.runners}
    runners = tuple(names.get(r, r) for r in sorted({p.runner for p in invitation.parts if p.runner}))
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
    return Notices(await asyncio.to_thread(notices_of, await ask.picture(), ask.person))


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
    timed = sent.sent_at is not None
    done = await ask.parts.journal.answer(event, short, person, sent.answer, at, entry, timed=timed)
    comes = covering.follows(made, sent.answer, entry, (await ask.parts.pictures.take(event, ask.now)).state)
    if comes is not None:
        comes = (await ask.parts.journal.append(comes)).entry
    new = await ask.parts.ticker.after_entry(event)
    answered = await _answered(ask, event, done.made)
    return answered if comes is None else await _with_cover(ask, answered, comes, new)


async def _with_cover(
    ask: Ask, answered: AnsweredAnswer, comes: Entry, new: Sequence[Made]
) -> AnsweredAnswer:
    """What the answer did to who comes to a meeting: whose it is now, who has heard of it."""
    picture = await ask.parts.pictures.take(comes.event, ask.now)
    held = covering.holder(picture, comes.about or "")
    told = {m.notice.key.person for m in new if comes.id in m.notice.facts and not m.failed} - {ask.person}
    people = tuple(p.name for p in picture.event.people if p.id in told)
    name = next((p.name for p in picture.event.people if p.id == held), "")
    return replace(answered, covers=comes.kind.value, told=people, holder=name, yours=held == ask.person)


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
