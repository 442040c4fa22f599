"""Deliveries: leases before, at and after their end; every outcome; channels in turn; news joined."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from datetime import datetime, timedelta

import pytest

from server.event.model import Event
from server.journal import Delivery, DeliveryState, Journal, Outcome, leases
from server.journal.outcomes import AFTER, RANK, backoff
from server.watch.notice import Notice, NoticeKind, Urgency

SECOND = timedelta(seconds=1)
MINUTE = timedelta(minutes=1)
LEASE = timedelta(seconds=60)
Make = Callable[..., Notice]


async def one(journal: Journal, now: datetime, *channels: str) -> Delivery:
    """The only delivery that can be claimed."""
    [delivery] = await journal.claim(channels or ["telegram"], now, lease=LEASE)
    return delivery


@pytest.mark.parametrize(
    ("tries", "urgency", "seconds"),
    [
        (1, Urgency.ALARM, 2),
        (3, Urgency.ALARM, 8),
        (4, Urgency.ALARM, 15),
        (99, Urgency.ALARM, 15),
        (5, Urgency.ACTION, 32),
        (6, Urgency.ACTION, 60),
        (8, Urgency.NEWS, 256),
        (9, Urgency.NEWS, 300),
    ],
)
def test_backoff(tries: int, urgency: Urgency, seconds: int) -> None:
    """Doubles from two seconds up to its longest, the more urgent the shorter."""
    assert backoff(tries, RANK[urgency]) == seconds * SECOND


def test_every_outcome_has_a_row() -> None:
    """No outcome is without its consequence, and attempts count from 1."""
    assert set(AFTER) == set(Outcome)
    with pytest.raises(ValueError, match="count from 1"):
        backoff(0, 0)


async def test_sent(loaded: Journal, notice: Make, start: datetime) -> None:
    """What was sent is not sent again; text and reference are kept; sent is not reached."""
    await loaded.add_notices([notice()], start)
    claimed = await one(loaded, start)
    assert (claimed.tries, claimed.possible_repeat, claimed.delayed) == (1, False, False)
    assert claimed.lease_until == start + LEASE
    await loaded.keep_text(claimed.id, 1, "about to go")
    assert await loaded.report(
        claimed.id, Outcome.SENT, start + SECOND, tries=1, message_ref="77", text="Hello"
    )
    [made] = await loaded.made("long-stile")
    assert (made.sent_at, made.answered_at) == (start + SECOND, None)
    [delivery] = await loaded.deliveries("long-stile", 1)
    assert (delivery.state, delivery.text, delivery.message_ref) == (DeliveryState.SENT, "Hello", "77")
    assert await loaded.claim(["telegram"], start + timedelta(days=1)) == []


@pytest.mark.parametrize(("after", "free"), [(LEASE - SECOND, False), (LEASE, True), (LEASE + SECOND, True)])
async def test_a_lease_ends(
    loaded: Journal, notice: Make, start: datetime, after: timedelta, free: bool
) -> None:
    """A holder that says nothing holds until its lease ends, not at it; then it is a possible repeat."""
    await loaded.add_notices([notice()], start)
    await one(loaded, start)
    again = await loaded.claim(["telegram"], start + after)
    assert [(d.tries, d.possible_repeat) for d in again] == ([(2, True)] if free else [])
    if free:
        first, second = await loaded.attempts("long-stile", 1)
        assert (first.outcome, second.outcome) == (Outcome.UNKNOWN, None)


async def test_a_late_report_of_a_lost_lease(loaded: Journal, notice: Make, start: datetime) -> None:
    """The first holder's late 'not sent' changes nothing for the second; its late 'sent' is a fact."""
    await loaded.add_notices([notice()], start)
    first = await one(loaded, start)
    await one(loaded, start + LEASE)
    assert not await loaded.report(first.id, Outcome.NOT_SENT, start + LEASE, tries=1)
    [delivery] = await loaded.deliveries("long-stile")
    assert delivery.state is DeliveryState.ATTEMPTING
    assert await loaded.report(first.id, Outcome.SENT, start + LEASE, tries=1, message_ref="5")
    assert not await loaded.report(first.id, Outcome.NOT_SENT, start + LEASE, tries=2)
    [delivery] = await loaded.deliveries("long-stile")
    assert (delivery.state, delivery.message_ref) == (DeliveryState.SENT, "5")


@pytest.mark.parametrize(
    ("outcome", "state", "repeat", "wait"),
    [
        (Outcome.NOT_SENT, DeliveryState.QUEUED, False, 2 * SECOND),
        (Outcome.UNKNOWN, DeliveryState.UNKNOWN, True, 2 * SECOND),
        (Outcome.LATER, DeliveryState.QUEUED, False, 37 * SECOND),
    ],
)
async def test_sent_again(
    loaded: Journal, notice: Make, start: datetime, outcome: Outcome, state: DeliveryState, repeat: bool,
    wait: timedelta,
) -> None:  # fmt: skip
    """What may come through next time is tried again when due, not before; unknown is a possible repeat."""
    await loaded.add_notices([notice("tomas")], start)
    claimed = await one(loaded, start)
    retry_after = wait if outcome is Outcome.LATER else None
    await loaded.report(claimed.id, outcome, start, tries=1, retry_after=retry_after)
    assert [d.state for d in await loaded.deliveries("long-stile")] == [state]
    assert await loaded.next_due(["telegram"]) == start + wait
    assert await loaded.claim(["telegram"], start + wait - SECOND) == []
    again = await one(loaded, start + wait)
    assert (again.tries, again.possible_repeat) == (2, repeat)


async def test_a_busy_chat_waits_for_all(loaded: Journal, notice: Make, start: datetime) -> None:
    """Told to wait for one message, nothing else goes to that chat before, and other chats go on."""
    await loaded.add_notices([notice("ana", urgency=Urgency.ACTION)], start)
    claimed = await one(loaded, start)
    await loaded.report(claimed.id, Outcome.LATER, start, retry_after=MINUTE)
    await loaded.add_notices([notice("ana", 2), notice("tomas", 2)], start)
    assert [d.address for d in await loaded.claim(["telegram"], start + 30 * SECOND)] == ["333"]
    assert {d.address for d in await loaded.claim(["telegram"], start + MINUTE)} == {"111"}


@pytest.mark.parametrize(
    ("outcome", "state"),
    [(Outcome.BLOCKED, DeliveryState.FAILED), (Outcome.PERMANENT, DeliveryState.PERMANENT)],
)
async def test_next_channel(
    loaded: Journal, notice: Make, start: datetime, outcome: Outcome, state: DeliveryState
) -> None:
    """What can never be sent goes to the next channel at once; after the last the notice has failed."""
    await loaded.add_notices([notice("ana")], start)
    await loaded.report((await one(loaded, start)).id, outcome, start, tries=1)
    mail = await one(loaded, start, "email")
    assert mail.address == "ana@example.org"
    assert not (await loaded.notice("long-stile", 1)).failed
    await loaded.report(mail.id, outcome, start, tries=1)
    assert (await loaded.notice("long-stile", 1)).failed
    assert {d.state for d in await loaded.deliveries("long-stile")} == {state}


async def test_blocked_until_heard_from(loaded: Journal, notice: Make, start: datetime) -> None:
    """A blocked chat is passed over, also by what already waited for it, until its person writes again."""
    await loaded.add_notices([notice("ana", urgency=Urgency.ALARM), notice("ana", 2)], start)
    await loaded.report((await one(loaded, start)).id, Outcome.BLOCKED, start)
    assert await loaded.claim(["telegram"], start + SECOND) == []
    assert [d.made.short for d in await loaded.claim(["email"], start + SECOND)] == [1]
    assert [d.made.short for d in await loaded.claim(["email"], start + 2 * SECOND)] == [2]
    [made] = await loaded.add_notices([notice("ana", 3)], start)
    [delivery] = await loaded.deliveries("long-stile", made.short)
    assert delivery.channel == "email"
    await loaded.heard_from("telegram", "111", start)
    [made] = await loaded.add_notices([notice("ana", 4)], start)
    [delivery] = await loaded.deliveries("long-stile", made.short)
    assert delivery.channel == "telegram"


async def test_moved(loaded: Journal, notice: Make, start: datetime) -> None:
    """A chat that has moved keeps its person, and what waited goes to the new address at once."""
    await loaded.add_notices([notice("tomas")], start)
    await loaded.report((await one(loaded, start)).id, Outcome.MOVED, start, moved_to="-100333")
    assert (await one(loaded, start)).address == "-100333"
    assert await loaded.person_at("telegram", "-100333") == "tomas"
    assert await loaded.person_at("telegram", "333") is None


async def test_no_connection_tries_the_next_too(loaded: Journal, notice: Make, start: datetime) -> None:
    """After four attempts without a connection the next channel is tried beside it; once one is sent the
    other is not."""
    await loaded.add_notices([notice("ana")], start)
    now = start
    for _ in range(4):
        assert await loaded.claim(["email"], now) == []
        now += 10 * MINUTE
        await loaded.report((await one(loaded, now)).id, Outcome.NOT_SENT, now)
    await loaded.report((await one(loaded, now, "email")).id, Outcome.SENT, now)
    assert await loaded.claim(["telegram"], now + timedelta(hours=1)) == []


@pytest.mark.parametrize(
    ("after", "count"), [(5 * MINUTE - SECOND, 0), (5 * MINUTE, 1), (5 * MINUTE + SECOND, 1)]
)
async def test_silence_tries_the_next(
    loaded: Journal, notice: Make, start: datetime, after: timedelta, count: int
) -> None:
    """Sent but unanswered for five minutes goes to the next channel, once; news never does."""
    await loaded.add_notices([notice("ana", urgency=Urgency.ALARM, needs_answer=True)], start)
    await loaded.report((await one(loaded, start)).id, Outcome.SENT, start)
    await loaded.add_notices([notice("ana", 2)], start)
    assert await loaded.try_next_channels(start + after, 5 * MINUTE) == count
    assert await loaded.try_next_channels(start + after, 5 * MINUTE) == 0
    assert len(await loaded.claim(["email"], start + after)) == count


@pytest.mark.parametrize(("after", "delayed"), [(-SECOND, False), (0 * SECOND, False), (SECOND, True)])
async def test_past_use_by(
    loaded: Journal, notice: Make, start: datetime, after: timedelta, delayed: bool
) -> None:
    """A notice is still good at its use-by, and past it is handed out as delayed."""
    await loaded.add_notices([notice("tomas", use_by=start + MINUTE)], start)
    assert (await one(loaded, start + MINUTE + after)).delayed is delayed


async def test_not_fifteen_stale_ones(loaded: Journal, notice: Make, start: datetime) -> None:
    """Of fifteen past their use-by only the newest goes out, marked; alarms all do."""
    owed = [notice("ana", i, urgency=Urgency.ACTION, use_by=start + MINUTE) for i in range(1, 16)]
    owed.append(notice("ana", 99, NoticeKind.OVERDUE, urgency=Urgency.ALARM, use_by=start + MINUTE))
    for i, n in enumerate(owed):
        await loaded.add_notices([n], start + i * SECOND)
    late = start + 30 * MINUTE
    got = [d for i in range(3) for d in await loaded.claim(["telegram"], late + i * SECOND)]
    assert [(d.made.short, d.delayed) for d in got] == [(16, True), (15, True)]


async def test_order_and_spacing(loaded: Journal, notice: Make, start: datetime) -> None:
    """Alarms go first, one message a chat a second, other chats meanwhile."""
    await loaded.add_notices(
        [
            notice("ana", 1, urgency=Urgency.ACTION),
            notice("ana", 2, urgency=Urgency.ALARM),
            notice("tomas", 3, urgency=Urgency.ACTION),
        ],
        start,
    )
    assert [d.made.short for d in await loaded.claim(["telegram"], start)] == [2, 3]
    assert await loaded.claim(["telegram"], start + SECOND / 2) == []
    assert await loaded.next_due(["telegram"]) == start + SECOND
    assert [d.made.short for d in await loaded.claim(["telegram"], start + SECOND)] == [1]


async def test_news_is_joined(loaded: Journal, notice: Make, start: datetime) -> None:
    """News held for company waits till then, and goes with whatever news of that chat is due first."""
    hold = start + MINUTE
    await loaded.add_notices([notice("ana", 1, hold_until=hold), notice("tomas", 1, hold_until=hold)], start)
    assert await loaded.claim(["telegram"], hold - SECOND) == []
    await loaded.add_notices([notice("ana", 2)], start + 30 * SECOND)
    joined = await loaded.claim(["telegram"], start + 30 * SECOND)
    assert sorted(d.made.short for d in joined) == [1, 3]
    assert {d.address for d in joined} == {"111"}
    assert [d.address for d in await loaded.claim(["telegram"], hold)] == ["333"]


async def test_actions_of_one_minute_are_one_message(loaded: Journal, notice: Make, start: datetime) -> None:
    """What a person is to do differently, held for a minute, comes as one message, with the news that waits; the one
    that asks stands first, a second that asks comes by itself, and an alarm waits for nothing and takes nothing along."""
    hold, act = start + MINUTE, {"urgency": Urgency.ACTION}
    await loaded.add_notices(
        [
            notice("ana", 1, hold_until=hold, **act),
            notice("ana", 2, hold_until=hold),
            notice("ana", 3, hold_until=hold, **act),
        ],
        start,
    )
    assert await loaded.claim(["telegram"], hold - SECOND) == []
    joined = await loaded.claim(["telegram"], hold, spacing=SECOND)
    assert [d.made.short for d in joined] == [1, 3, 2]
    for d in joined:
        await loaded.report(d.id, Outcome.SENT, hold, tries=1)
    later = hold + 5 * SECOND
    await loaded.add_notices(
        [
            notice("ana", 4, hold_until=later + MINUTE, **act),
            notice("ana", 5, needs_answer=True, **act),
            notice("ana", 6, needs_answer=True, **act),
            notice("ana", 7, needs_answer=True, urgency=Urgency.ALARM),
        ],
        later,
    )
    got = [[d.made.short for d in await loaded.claim(["telegram"], later + i * SECOND)] for i in range(4)]
    assert got == [[7], [5, 4], [6], []]


async def test_a_message_holds_only_so_many_notices(loaded: Journal, notice: Make, start: datetime) -> None:
    """After an hour without us a dozen wait: five a message, so that no channel has to cut a message and part a mark
    from its notice; the one that asks stands first, and each goes once."""
    act = {"urgency": Urgency.ACTION}
    owed = [notice("ana", i, **act) for i in range(1, 12)]
    await loaded.add_notices([*owed, notice("ana", 12, needs_answer=True, **act)], start)
    got = [[d.made.short for d in await loaded.claim(["telegram"], start + i * SECOND)] for i in range(4)]
    assert [len(shorts) for shorts in got] == [5, 5, 2, 0]
    assert got[0][0] == 12
    assert sorted(short for shorts in got for short in shorts) == list(range(1, 13))


async def test_claims_at_once(
    make_database: Callable[[], str], event: Event, notice: Make, start: datetime
) -> None:
    """Two servers with five tasks each claim 60 deliveries: each is claimed once, none is left."""
    url = make_database()
    servers = [await Journal.open(url), await Journal.open(url)]
    await servers[0].store_event("t", {}, event, "ana", start)
    owed = []
    for i in range(60):
        person = ("ana", "jonas", "tomas")[i % 3]
        owed.append(notice(person, i, urgency=Urgency.ACTION))
    for person in ("ana", "jonas", "tomas"):
        await servers[0].bind(person, "telegram", f"chat-{person}", start)
    await servers[0].add_notices(owed, start)
    got: list[str] = []

    async def work(journal: Journal) -> None:
        while batch := await journal.claim(["telegram"], start, limit=10, spacing=timedelta(0)):
            got.extend(d.id for d in batch)

    for _ in range(3):
        await asyncio.gather(*(work(servers[i % 2]) for i in range(10)))
    assert len(got) == len(set(got)) == 60
    for journal in servers:
        await journal.close()


async def test_a_clock_put_back_keeps_no_chat_waiting(loaded: Journal, notice: Make, start: datetime) -> None:
    """By the old time a chat rests, a try is due again and a claim is held; an alarm must not lie so long."""
    await loaded.heartbeat("server", start + 60 * MINUTE)
    await loaded.add_notices([notice()], start + 60 * MINUTE)
    first = await one(loaded, start + 60 * MINUTE)
    await loaded.report(first.id, Outcome.LATER, start + 60 * MINUTE, tries=1, retry_after=30 * SECOND)
    await loaded.add_notices([notice(person="tomas")], start + 60 * MINUTE)
    await one(loaded, start + 60 * MINUTE)
    assert await loaded.claim(["telegram"], start) == []
    await loaded.heartbeat("server", start - SECOND)
    again = await loaded.claim(["telegram"], start)
    assert {(d.notice.key.person, d.possible_repeat) for d in again} == {("ana", False), ("tomas", True)}
    assert await loaded.last_heartbeats() == {"server": start - SECOND}


async def test_a_server_dies_while_it_sends(
    loaded: Journal, database_url: str, notice: Make, start: datetime
) -> None:
    """What it had claimed is claimed again at once, marked as a possible repeat; one who does not say through which
    server keeps it until the lease ends."""
    await loaded.add_notices([notice("ana"), notice("tomas")], start)
    other = await Journal.open(database_url)
    [hers] = await other.claim(["telegram"], start, 1, LEASE, server=await other.server())
    [apart] = await other.claim(["telegram"], start, 1, LEASE)
    later = start + timedelta(seconds=2)
    assert await loaded.claim(["telegram"], later, lease=LEASE) == []
    await other.close()
    [again] = await loaded.claim(["telegram"], later, lease=LEASE)
    assert (again.id, again.possible_repeat, again.tries) == (hers.id, True, 2)
    [rest] = await loaded.claim(["telegram"], start + LEASE, lease=LEASE)
    assert rest.id == apart.id


async def test_after_an_outage(loaded: Journal, notice: Make, start: datetime) -> None:
    """The alarm first, by itself; then what asks; then all the old news at once; not before its time what is new."""
    old = [notice("ana", episode=n) for n in range(1, 13)]
    asks = notice("ana", episode=20, urgency=Urgency.ACTION, needs_answer=True)
    alarm = notice("ana", episode=30, kind=NoticeKind.TEST_ALARM, urgency=Urgency.ALARM)
    await loaded.add_notices([*old, asks], start)
    back = start + leases.OLD
    await loaded.add_notices([alarm], back)
    batches = []
    for second in range(3):
        got = await loaded.claim(["telegram"], back + timedelta(seconds=second), lease=LEASE)
        batches.append([d.notice.key.episode for d in got])
    assert batches == [[30], [20], list(range(1, 13))]


async def test_news_of_today_is_no_digest(loaded: Journal, notice: Make, start: datetime) -> None:
    """A second younger than old: five in a message, as ever."""
    await loaded.add_notices([notice("ana", episode=n) for n in range(1, 13)], start)
    got = await loaded.claim(["telegram"], start + leases.OLD - timedelta(seconds=1), lease=LEASE)
    assert len(got) == 5
