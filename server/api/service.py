"""Calls of channels: raw updates into the inbox and out to work on, deliveries out of the outbox and back."""

from __future__ import annotations

import base64
from collections import Counter
from dataclasses import replace
from datetime import timedelta
from enum import Enum, auto

from server.api.answer_links import mail_text
from server.api.ask import Ask, not_yours
from server.api.envelope import ApiError
from server.api.inbound import keep_updates
from server.api.models import (
    AddressNews,
    Alive,
    InboxDone,
    InboxNext,
    InboxStore,
    ListenLease,
    OutboxClaim,
    OutboxReport,
)
from server.api.parts import Parts
from server.api.person_view import buttons_out, photo_path
from server.api.replies import Claimed, DeliveryOut, Done, Held, RawUpdateOut, RawUpdates, Reported, Stored
from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import reader_in
from server.conversation.telling.say import Say
from server.event.model import Event
from server.journal import Delivery, Outcome
from server.watch.notice import NoticeKey, Urgency
from server.watch.situation import GROUP

_BY_WORD = {
    "accepted": Outcome.SENT,
    "sent": Outcome.SENT,
    "not sent": Outcome.NOT_SENT,
    "unknown": Outcome.UNKNOWN,
    "later": Outcome.LATER,
    "gone": Outcome.BLOCKED,
    "never": Outcome.PERMANENT,
    "moved": Outcome.MOVED,
    "wrong settings": Outcome.WRONG_SETTINGS,
}
"""The channel table's words for an outcome, and what the journal calls them."""


def _own(ask: Ask, channel: str) -> None:
    if not ask.caller.is_channel(channel):
        raise not_yours(None)


async def store(ask: Ask) -> Stored:
    """POST /v1/inbox: keep raw updates; once answered they are safe."""
    sent = ask.sent(InboxStore)
    _own(ask, sent.channel)
    new = await keep_updates(ask.parts, sent.channel, [(u.id, u.body) for u in sent.updates], ask.now)
    await ask.parts.journal.heartbeat(f"channel:{sent.channel}", ask.now, caught_up=sent.caught_up)
    if sent.caught_up:
        ask.parts.ticker.caught_up(sent.channel)
    return Stored(new)


async def next_updates(ask: Ask) -> RawUpdates:
    """POST /v1/inbox/next: updates to work on, leased for a minute."""
    sent = ask.sent(InboxNext)
    _own(ask, sent.channel)
    found = await ask.parts.journal.next_updates(sent.channel, ask.now, sent.limit, server=ask.caller.server)
    return RawUpdates(
        tuple(RawUpdateOut(u.id, str(u.update_id), u.body, u.received_at, u.tries) for u in found)
    )


async def update_done(ask: Ask) -> Done:
    """POST /v1/inbox/{update}/done: worked off, or why it could not be."""
    sent = ask.sent(InboxDone)
    _own(ask, sent.channel)
    update = ask.request.match_info["update"]
    if sent.back is not None:
        await ask.parts.journal.update_back(update, sent.back)
    elif sent.later:
        await ask.parts.journal.update_let_by(update)
    else:
        await ask.parts.journal.update_done(update, ask.now, sent.problem)
    return Done()


async def lease(ask: Ask) -> Held:
    """POST /v1/inbox/lease: be the one process that listens at a channel."""
    sent, journal = ask.sent(ListenLease), ask.parts.journal
    _own(ask, sent.channel)
    name = f"listen:{sent.channel}"
    if sent.give_back:
        await journal.give_back_lease(name, sent.holder)
        return Held(False)
    return Held(await journal.take_lease(name, sent.holder, ask.now, timedelta(seconds=sent.ttl_s)))


async def address_news(ask: Ask) -> Done:
    """POST /v1/addresses: an address is gone, back, or moved."""
    sent, journal = ask.sent(AddressNews), ask.parts.journal
    _own(ask, sent.channel)
    if sent.became == "gone":
        await journal.address_gone(sent.channel, sent.address, ask.now)
    elif sent.became == "back":
        await journal.heard_from(sent.channel, sent.address, ask.now)
    elif sent.new_address:
        await journal.address_moved(sent.channel, sent.address, sent.new_address)
    else:
        raise ApiError("invalid", "it has moved, but where to is missing", "new_address", "Name it.")
    return Done()


OUTGOING = "outgoing:"
"""The front of the heartbeat's name of a channel over which nothing comes in: its being down makes nobody's
silence count less."""


async def alive(ask: Ask) -> Done:
    """POST /v1/outbox/alive: the other side of an outgoing channel is up."""
    sent = ask.sent(Alive)
    _own(ask, sent.channel)
    gap = timedelta(seconds=sent.well_for_s)
    await ask.parts.journal.heartbeat(OUTGOING + sent.channel, ask.now, gap)
    return Done()


async def claim(ask: Ask) -> Claimed:
    """POST /v1/outbox/claim: deliveries that are due, worded; ours until the lease ends."""
    sent = ask.sent(OutboxClaim)
    _own(ask, sent.channel)
    lease, holder = timedelta(seconds=sent.lease_s), ask.caller.token.id
    taken = await ask.parts.journal.claim(
        [sent.channel],
        ask.now,
        sent.limit,
        lease,
        holder=holder,
        urgent=sent.urgent,
        server=ask.caller.server,
    )
    together = Counter(d.address for d in taken)
    shows = Shows.BYTES if sent.pictures else Shows.WORDS
    out = [await worded(ask.parts, d, in_lines=together[d.address] > LINES_FROM, shows=shows) for d in taken]
    return Claimed(tuple(out), await ask.parts.journal.next_due([sent.channel]))


async def _reads(parts: Parts, key: NoticeKey) -> str:
    """In whose language and clock a notice is worded: a group's in those of whoever had it bound."""
    if not key.person.startswith(GROUP):
        return key.person
    groups = await parts.journal.groups(key.event)
    return next((g.bound_by for g in groups if g.id == key.person), key.person)


LINES_FROM = 5
"""More notices than this in one message are old news, and come in a line each: the whole would be cut by its channel."""


class Shows(Enum):
    """What a channel makes of a picture: shows its bytes, fetches it from its path, or can only say where it is."""

    BYTES = auto()
    PATH = auto()
    WORDS = auto()


async def worded(
    parts: Parts, delivery: Delivery, *, in_lines: bool = False, shows: Shows = Shows.WORDS
) -> DeliveryOut:
    """A delivery in its person's words, or their first line; the text is kept with it before it goes out."""
    notice = delivery.notice
    event = await parts.pictures.event(notice.key.event)
    message = say_notice(
        notice,
        event,
        reader_in(event, await _reads(parts, notice.key)),
        parts.clock.now(),
        delayed=delivery.delayed,
        repeat=delivery.possible_repeat,
        short=delivery.made.short,
    )
    if in_lines:
        message = replace(message, text=message.text.strip().partition("\n")[0])
    photo, where = await _photo(parts, delivery, event, shows)
    if where:
        message = replace(message, text=f"{message.text}\n{where}")
    await parts.journal.keep_text(delivery.id, delivery.tries, message.text)
    return DeliveryOut(
        id=delivery.id,
        address=delivery.address,
        text=await mail_text(parts, delivery, event, message),
        buttons=buttons_out(message.buttons),
        short=delivery.made.short,
        urgent=notice.urgency is Urgency.ALARM,
        may_repeat=delivery.possible_repeat,
        tries=delivery.tries,
        lease_until=delivery.lease_until,
        subject=message.text.partition("\n")[0][:120],
        picture=photo,
    )


async def _photo(parts: Parts, delivery: Delivery, event: Event, shows: Shows) -> tuple[str, str]:
    """The picture that goes with a notice, as its channel shows it, else a line that says where it is."""
    path = photo_path(delivery.made)
    if not path or shows is Shows.PATH:
        return path, ""
    found = await parts.journal.picture(path.rpartition("/")[2]) if shows is Shows.BYTES else None
    if found is not None:
        return base64.b64encode(found[0]).decode(), ""
    base = parts.settings.public_url.rstrip("/")
    say = Say(reader_in(event, delivery.notice.key.person), parts.clock.now())
    return "", say.s("picture-where", page=f"{base}{path}" if base else "none")


async def report(ask: Ask) -> Reported:
    """POST /v1/outbox/{delivery}/report: what became of an attempt."""
    sent = ask.sent(OutboxReport)
    outcome = _BY_WORD.get(sent.outcome)
    if outcome is None:
        known = ", ".join(_BY_WORD)
        raise ApiError("invalid", f"'{sent.outcome}' is no outcome", "outcome", f"Use one of: {known}.")
    counted = await ask.parts.journal.report(
        ask.request.match_info["delivery"],
        outcome,
        ask.now,
        tries=sent.tries,
        detail=sent.detail,
        message_ref=sent.ref,
        retry_after=timedelta(seconds=sent.retry_after_s) if sent.retry_after_s is not None else None,
        moved_to=sent.new_address or None,
    )
    return Reported(counted)
