"""A worker delivers what is owed: sent, reported, and what follows from each outcome."""

from __future__ import annotations

import asyncio
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from bot.channels.base import Delivery, Outcome, Sent
from bot.channels.outgoing import OnlyOut
from bot.channels.telegram import Telegram
from bot.loops.delivering import as_one
from bot.loops.pace import Meter
from server.api.replies import ButtonOut, DeliveryOut
from server.watch.notice import Urgency
from tests.channels import standin as at
from tests.channels.conftest import EVENT, QUICK, EchoDesk, Server, until
from tests.channels.standin import StandIn
from tests.channels.working import (
    Broken,
    MakeWorker,
    membership,
    states,
    states_are,
    texts,
)


async def test_a_notice_is_sent_and_reported(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Worded by the server, sent once, and Telegram's id of it recorded."""
    short = await server.owe("ana")
    await make_worker(telegram, desk)

    async def sent() -> bool:
        (delivery,) = await server.journal.deliveries(EVENT, short)
        return delivery.state.value == "sent"

    await until(sent)
    (delivery,) = await server.journal.deliveries(EVENT, short)
    (call,) = standin.sent
    assert delivery.message_ref == str(call.message_id)
    assert delivery.text == call.text


async def test_a_lost_reply_is_repeated_and_marked(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Telegram had it, we did not hear so: it goes again, and says that it may be a repeat."""
    standin.script("sendMessage", at.lost_reply)
    short = await server.owe("ana")
    await make_worker(telegram, desk)
    await until(lambda: states_are(server, short, [("telegram", "unknown")]))
    server.clock.advance(timedelta(seconds=5))
    await until(lambda: len(texts(standin)) == 2)
    first, again = texts(standin)
    assert first != again
    assert first.splitlines()[-1] in again
    assert f"#{short}" in again or str(short) in again


@pytest.mark.filterwarnings("ignore:.*retry_after.*")
async def test_a_wait_that_is_asked_for_is_kept(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """429: not before the time Telegram names, and unmarked then, as nothing was sent."""
    standin.script("sendMessage", at.refused(429, "Too Many Requests", retry_after=30))
    short = await server.owe("ana")
    await make_worker(telegram, desk)

    async def waits() -> bool:
        (d,) = await server.journal.deliveries(EVENT, short)
        return d.tries == 1 and d.state.value == "queued"

    await until(waits)
    server.clock.advance(timedelta(seconds=29))
    await server.looked("claim")
    assert texts(standin) == []
    server.clock.advance(timedelta(seconds=1))
    await until(lambda: len(texts(standin)) == 1)
    (delivery,) = await server.journal.deliveries(EVENT, short)
    assert not delivery.possible_repeat


async def test_somebody_who_blocked_us_gets_it_by_mail(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """403: the next channel at once; and when they write again, Telegram is of use again."""
    standin.blocked.add("41")
    short = await server.owe("ana")
    await make_worker(telegram, desk)
    await until(lambda: states_are(server, short, [("telegram", "failed"), ("email", "queued")]))
    standin.blocked.clear()
    await standin.put(my_chat_member=membership("member"))
    server.clock.advance(timedelta(seconds=2))
    second = await until_owed(server, "ana", "telegram")
    await until(lambda: states_are(server, second, [("telegram", "sent")]))


async def until_owed(server: Server, person: str, channel: str) -> int:
    """Wait until the person's first address is that channel's, then owe them something."""

    async def first() -> bool:
        addresses = await server.journal.addresses(person)
        return addresses[0].channel == channel and addresses[0].blocked_at is None

    await until(first)
    return await server.owe(person, episode=2)


async def test_blocking_is_known_before_anything_is_sent(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Telegram says so in an update: what is owed from then on goes by mail without a try."""
    await standin.put(my_chat_member=membership("kicked"))
    await make_worker(telegram, desk)

    async def blocked() -> bool:
        return any(a.blocked_at for a in await server.journal.addresses("ana"))

    await until(blocked)
    short = await server.owe("ana")
    assert await states(server, short) == [("email", "queued")]
    assert standin.sent == []


async def test_a_moved_chat_is_followed(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """The new address is stored, and the notice goes there, unmarked."""
    standin.migrated["42"] = 4242
    short = await server.owe("jonas")
    await make_worker(telegram, desk)

    async def moved() -> bool:
        return await server.journal.person_at("telegram", "4242") == "jonas"

    await until(moved)
    server.clock.advance(timedelta(seconds=5))
    await until(lambda: states_are(server, short, [("telegram", "sent")]))
    (delivery,) = await server.journal.deliveries(EVENT, short)
    assert not delivery.possible_repeat
    assert len(texts(standin, "4242")) == 1


async def test_news_for_one_chat_is_one_message(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Claimed together, sent as one, reported one by one."""
    shorts = [await server.owe("ana", urgency=Urgency.NEWS, episode=i) for i in (1, 2, 3)]
    await make_worker(telegram, desk)
    for short in shorts:
        await until(lambda short=short: states_are(server, short, [("telegram", "sent")]))
    assert len(texts(standin)) == 1


def test_several_deliveries_as_one() -> None:
    """All texts, all buttons, the strongest marks, the first one's id."""

    def out(number: int, **more: Any) -> DeliveryOut:
        rows = ((ButtonOut(f"b{number}", f"n|{number}|ok"),),)
        base = DeliveryOut(
            f"d{number}", "41", f"text {number}", rows, number, False, False, 1, None, f"s{number}"
        )
        return replace(base, **more)

    one = as_one([out(1), out(2, may_repeat=True), out(3, urgent=True)])
    assert (one.id, one.address, one.subject, one.short) == ("d1", "41", "s1", 1)
    assert one.text == "text 1\n\ntext 2\n\ntext 3"
    assert [[b.data for b in row] for row in one.buttons] == [["n|1|ok"], ["n|2|ok"], ["n|3|ok"]]
    assert (one.urgent, one.may_repeat) == (True, True)


async def test_a_channel_with_a_fault_leaves_the_outcome_unknown(
    server: Server, standin: StandIn, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Nobody can say whether it was sent before it failed, so it is sent again, marked."""
    await server.journal.address_gone("telegram", "41", server.clock.now())
    short = await server.owe("ana")
    channel = Broken()
    await make_worker(channel, desk)
    await until(lambda: states_are(server, short, [("email", "unknown")]))
    channel.raises = None
    server.clock.advance(timedelta(seconds=10))
    await until(lambda: states_are(server, short, [("email", "sent")]))
    assert [d.may_repeat for d in channel.delivered] == [False, True]


class Slow(OnlyOut):
    """A channel that is slow with news, and takes alarms at once."""

    name = "telegram"

    def __init__(self) -> None:
        self.taken: list[Delivery] = []
        self.free = asyncio.Event()

    async def deliver(self, delivery: Delivery) -> Outcome:
        """For news it ends when it is told to."""
        self.taken.append(delivery)
        if not delivery.urgent:
            await self.free.wait()
        return Outcome(Sent.ACCEPTED)


async def test_an_alarm_waits_for_no_news_under_way(
    server: Server, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """A whole batch of news hangs at the channel, one of it to the very chat of the alarm: it goes out all the same."""
    await server.owe("ana")
    channel = Slow()
    await make_worker(channel, desk, replace(QUICK, batch=1))
    await until(lambda: len(channel.taken) == 1)
    server.clock.advance(timedelta(seconds=2))
    short = await server.owe("ana", episode=2, urgency=Urgency.ALARM)
    await until(lambda: states_are(server, short, [("telegram", "sent")]))
    assert [d.urgent for d in channel.taken] == [False, True]
    channel.free.set()


async def test_all_messages_together_are_spaced() -> None:
    """News waits for its turn, alarms go at once and push the news after them back."""
    meter = Meter(10.0)
    assert [round(meter.wait_s(urgent=False), 2) for _ in range(3)] == [0.0, 0.1, 0.2]
    assert [meter.wait_s(urgent=True) for _ in range(2)] == [0.0, 0.0]
    assert round(meter.wait_s(urgent=False), 2) == 0.5
