"""A worker between a real server and a stand-in Telegram: answers, deliveries, and whatever goes down meanwhile."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from dataclasses import replace
from datetime import timedelta
from typing import Any

import aiohttp
import pytest

from bot.api_client import ApiClient
from bot.channels.base import Delivery, Incoming, Outcome, Reply, Sent, StoreUpdates
from bot.channels.outgoing import OnlyOut
from bot.channels.telegram import Telegram
from bot.channels.telegram.listening import Backoff, Hook
from bot.desk import Desk as RealDesk
from bot.loops import answering
from bot.loops.delivering import as_one
from bot.worker import Worker
from server.api.hooks import TEXT_SCOPE
from server.api.replies import ButtonOut, DeliveryOut
from server.journal import Status
from server.watch.notice import Urgency
from server.wording.message import event_mark
from tests.channels import standin as at
from tests.channels.conftest import EVENT, LISTENS_ON, WAIT_S, EchoDesk, Server, until
from tests.channels.standin import StandIn

MakeWorker = Callable[..., Awaitable[Worker]]


def texts(standin: StandIn, chat: str = "41") -> list[str]:
    """What was sent to a chat."""
    return [call.text for call in standin.sent if call.chat == chat]


async def all_done(server: Server) -> bool:
    """Whether every stored update is worked off."""
    return await server.journal.waiting() == 0


@pytest.fixture
def desk() -> EchoDesk:
    """A desk that says back what it was asked."""
    return EchoDesk()


# Answering ---------------------------------------------------------------------------------------------------


async def test_a_message_is_stored_answered_and_done(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """From the chat to the inbox, to the desk, back to the chat; confirmed, and nothing left."""
    await standin.say("where is she")
    await standin.press("n|7|yes")
    await make_worker(telegram, desk)
    await until(lambda: len(texts(standin)) == 2)
    await until(lambda: all_done(server))
    assert texts(standin) == ["you said: where is she", "you said: n|7|yes"]
    assert standin.unconfirmed == []


async def test_a_doubled_update_is_answered_once(
    server: Server,
    standin: StandIn,
    make_telegram: Callable[..., Telegram],
    make_worker: MakeWorker,
    desk: EchoDesk,
) -> None:
    """Two workers that both listen would get it twice; the inbox has it once, and one of them answers."""
    await server.journal.store_updates("telegram", [(5001, at_message(5001, "once"))], server.clock.now())
    await standin.say("once")  # the same id, from Telegram again
    await make_worker(make_telegram(), desk)
    await make_worker(make_telegram(), desk)
    await until(lambda: standin.unconfirmed == [])
    await until(lambda: all_done(server))
    await server.looked("next_updates", 4)
    assert texts(standin) == ["you said: once"]


def at_message(update_id: int, text: str, user: int = 41) -> str:
    """The body of a stored update."""
    import json

    chat = {"id": user, "type": "private", "first_name": "x"}
    message = {"message_id": 101, "date": at.BEGINS_AT, "chat": chat, "from": at.person(user), "text": text}
    return json.dumps({"update_id": update_id, "message": message})


async def test_the_server_down_and_back(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """What is written meanwhile waits at Telegram, unconfirmed, and is answered when the server is back."""
    await make_worker(telegram, desk, LISTENS_ON)
    await standin.say("before")
    await until(lambda: len(texts(standin)) == 1)
    await until(lambda: standin.unconfirmed == [])
    await server.stop()
    ids = [await standin.say("meanwhile")]
    asked = len(standin.offsets)
    await until(lambda: len(standin.offsets) > asked + 2)
    assert standin.unconfirmed == ids
    await server.start()
    await until(lambda: texts(standin) == ["you said: before", "you said: meanwhile"])


@pytest.mark.parametrize("lost", [1, 2, 3])
async def test_an_answer_of_unknown_fate_is_given_again_and_marked(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk, lost: int
) -> None:
    """Telegram had it, we did not hear so: a few tries at once, each after the first marked, and then it is let be."""
    await standin.say("question")
    standin.script("sendMessage", *[at.lost_reply] * lost)
    await make_worker(telegram, desk)
    await until(lambda: texts(standin) and standin.unconfirmed == [])
    await until(lambda: all_done(server))
    first, *again = texts(standin)
    assert first == "you said: question"
    assert again == ["[may be a repeat] you said: question"] * min(lost, answering.QUICK_TRIES - 1)
    await server.looked("next_updates")
    assert len(texts(standin)) == 1 + len(again)


@pytest.mark.filterwarnings("ignore:.*retry_after.*")
async def test_an_answer_telegram_did_not_take_is_given_later(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """The update is left until its lease is over, worked again, and then answered, once."""
    await standin.say("question")
    standin.script("sendMessage", *[at.refused(429, "Too Many Requests", retry_after=3600)] * 3)
    await make_worker(telegram, desk)
    await until(lambda: standin.asked["sendMessage"] == 1)
    await server.looked("next_updates")
    assert await server.journal.waiting() == 1
    standin.no_script("sendMessage")
    server.clock.advance(timedelta(seconds=61))
    await until(lambda: all_done(server))
    assert texts(standin) == ["you said: question"]


async def test_a_desk_that_fails_is_asked_again_and_then_no_more(
    server: Server,
    standin: StandIn,
    telegram: Telegram,
    make_worker: MakeWorker,
    desk: EchoDesk,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A fault of ours is not the end of what somebody wrote; but it does not hold the inbox up for ever."""
    monkeypatch.setattr(answering, "TRIES_MAX", 2)
    asked = 0

    async def fail() -> None:
        nonlocal asked
        asked += 1
        raise RuntimeError("a fault")

    desk.gates["41"] = fail
    await standin.say("hard")
    await standin.say("easy", user=42)
    await make_worker(telegram, desk)
    await until(lambda: texts(standin, "42") == ["you said: easy"])

    async def only_hers() -> bool:
        return await server.journal.waiting() == 1

    await until(only_hers)
    server.clock.advance(timedelta(seconds=61))
    await until(lambda: all_done(server))
    assert asked == 2


async def test_an_unreadable_update_is_set_aside(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """What comes after it is answered all the same."""
    await standin.put(message={"odd": True})
    await standin.say("after it")
    await make_worker(telegram, desk)
    await until(lambda: texts(standin) == ["you said: after it"])
    await until(lambda: all_done(server))


async def test_a_slow_chat_holds_nobody_else_up_and_keeps_its_order(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Ana's first question takes long; Jonas is answered meanwhile, Ana's second after her first."""
    go_on = asyncio.Event()

    async def wait() -> None:
        await go_on.wait()

    desk.gates["41"] = wait
    await make_worker(telegram, desk)
    await standin.say("first")
    await until(lambda: standin.unconfirmed == [])
    await server.looked("next_updates")
    await standin.say("second")
    await standin.say("quick", user=42)
    await until(lambda: texts(standin, "42") == ["you said: quick"])
    assert texts(standin) == []
    go_on.set()
    await until(lambda: texts(standin) == ["you said: first", "you said: second"])


async def test_an_invitation_is_taken_in_the_chat(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker
) -> None:
    """With the real desk: the link's code, who you are, yes; then the chat is bound and has its menu."""
    code = await server.journal.invite("maren", EVENT, "test", server.clock.now(), timedelta(hours=1))
    await make_worker(telegram)
    await standin.say(f"/start {code}", user=43)
    await until(lambda: len(texts(standin, "43")) == 1)
    offered = next(call for call in standin.sent if call.chat == "43")
    assert "Maren" in offered.text
    assert await server.journal.person_at("telegram", "43") is None
    yes = offered.params["reply_markup"]["inline_keyboard"][0][0]["callback_data"]
    await standin.press(yes, user=43)
    await until(lambda: len(texts(standin, "43")) == 2)
    assert await server.journal.person_at("telegram", "43") == "maren"
    await until(
        lambda: 43 in [c.params["scope"].get("chat_id") for c in standin.calls if "scope" in c.params]
    )


async def test_a_report_in_the_chat_is_an_entry(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker
) -> None:
    """With the real desk, and counted once though it is worked off twice."""
    server.clock.set(server.clock.now() + timedelta(hours=4))
    body = at_message(6001, "in at mill").replace(str(at.BEGINS_AT), str(int(server.clock.now().timestamp())))
    await server.journal.store_updates("telegram", [(6001, body)], server.clock.now())
    await make_worker(telegram)
    await until(lambda: all_done(server))
    await server.journal.store_updates("telegram", [(6002, body)], server.clock.now())
    await until(lambda: all_done(server))
    (entry,) = await server.journal.entries(EVENT)
    assert (entry.kind.value, entry.point, entry.by) == ("in", "mill", "ana")
    assert (await server.journal.append(entry)).status is Status.SAME_AGAIN


async def test_what_is_said_while_the_server_is_lost_comes_true(
    server: Server,
    standin: StandIn,
    telegram: Telegram,
    make_worker: MakeWorker,
    unused_tcp_port_factory: Callable[[], int],
) -> None:
    """Nothing noted, kept, dealt with later, no need to send it again: said once, and then it happens, as of when
    it was sent."""
    server.clock.set(server.clock.now() + timedelta(hours=4))
    sent_at = server.clock.now()
    body = at_message(6001, "in at mill").replace(str(at.BEGINS_AT), str(int(sent_at.timestamp())))
    await server.journal.store_updates("telegram", [(6001, body)], sent_at)
    async with aiohttp.ClientSession() as session:
        token = await server.token("telegram")
        lost = RealDesk(ApiClient(session, f"http://127.0.0.1:{unused_tcp_port_factory()}", token))
        there = RealDesk(ApiClient(session, server.url, token))
        asked: list[bool] = []

        class Both:
            """The server is away until two minutes after."""

            async def handle(self, incoming: Incoming) -> Reply:
                away = server.clock.now() < sent_at + timedelta(seconds=120)
                asked.append(away)
                return await (lost if away else there).handle(incoming)

        await make_worker(telegram, Both())
        await until(lambda: len(texts(standin)) == 1)
        (said,) = texts(standin)
        assert "NOTHING is noted yet" in said
        assert "No need to send it again" in said
        assert not await server.journal.entries(EVENT)
        await until(lambda: len(asked) == answering.QUICK_TRIES)
        await server.looked("next_updates")
        server.clock.advance(timedelta(seconds=61))
        await until(lambda: len(asked) == 2 * answering.QUICK_TRIES)
        await server.looked("next_updates")
        assert len(texts(standin)) == 1
        server.clock.advance(timedelta(seconds=61))
        await until(lambda: len(texts(standin)) == 2)
        (entry,) = await server.journal.entries(EVENT)
        assert (entry.kind.value, entry.point, entry.seen_at) == ("in", "mill", sent_at)
        await until(lambda: all_done(server))


@pytest.mark.parametrize("which", [0, 1])
async def test_a_press_answers_the_event_it_hangs_under(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, which: int
) -> None:
    """Ana has a part in two events that are on, and a notice no. 1 in each: the button says which is meant."""
    await server.another_event("long-stile")
    events = (EVENT, "long-stile")
    for event in events:
        assert await server.owe("ana", event=event) == 1
    await make_worker(telegram)
    await until(lambda: len([c for c in standin.sent if c.chat == "41"]) >= 1)
    server.clock.advance(timedelta(seconds=5))

    async def sent() -> bool:
        return all([(await server.journal.deliveries(e, 1))[0].state.value == "sent" for e in events])

    await until(sent)
    shown = [b for c in standin.sent for row in c.params["reply_markup"]["inline_keyboard"] for b in row]
    (data,) = [b["callback_data"] for b in shown if b["callback_data"].endswith(event_mark(events[which]))]
    said = len(standin.sent)
    await standin.press(data)
    await until(lambda: len(standin.sent) > said)
    await until(lambda: all_done(server))
    answered = [bool(m.answered_at) for e in events for m in await server.journal.made(e)]
    assert answered == [which == 0, which == 1]


# Delivering --------------------------------------------------------------------------------------------------


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


async def states(server: Server, short: int) -> list[tuple[str, str]]:
    """Channel and state of each delivery of a notice."""
    return [(d.channel, d.state.value) for d in await server.journal.deliveries(EVENT, short)]


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


async def states_are(server: Server, short: int, wanted: list[tuple[str, str]]) -> bool:
    """Whether a notice's deliveries stand so."""
    return await states(server, short) == wanted


async def until_owed(server: Server, person: str, channel: str) -> int:
    """Wait until the person's first address is that channel's, then owe them something."""

    async def first() -> bool:
        addresses = await server.journal.addresses(person)
        return addresses[0].channel == channel and addresses[0].blocked_at is None

    await until(first)
    return await server.owe(person, episode=2)


def membership(status: str, user: int = 41) -> dict[str, Any]:
    """Our membership in a private chat, as Telegram tells it."""
    us = {"id": at.BOT_ID, "is_bot": True, "first_name": "us"}
    return {
        "chat": {"id": user, "type": "private", "first_name": "x"},
        "from": at.person(user),
        "date": at.BEGINS_AT,
        "old_chat_member": {"status": "member", "user": us},
        "new_chat_member": {
            "status": status,
            "user": us,
            **({"until_date": 0} if status == "kicked" else {}),
        },
    }


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


class Broken(OnlyOut):
    """A channel with a fault."""

    name = "email"
    check_every = timedelta(seconds=0.05)

    def __init__(self) -> None:
        self.up = True
        self.found_down = 0
        self.raises: Exception | None = RuntimeError("a fault")
        self.delivered: list[Delivery] = []

    async def deliver(self, delivery: Delivery) -> Outcome:
        """Fails, or says what it was told to."""
        self.delivered.append(delivery)
        if self.raises:
            raise self.raises
        return Outcome(Sent.ACCEPTED)

    async def check(self) -> bool:
        """As told."""
        self.found_down += not self.up
        return self.up


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


# Being up ----------------------------------------------------------------------------------------------------


async def test_the_server_knows_for_how_long_telegram_was_down(
    server: Server,
    standin: StandIn,
    make_telegram: Callable[..., Telegram],
    make_worker: MakeWorker,
    desk: EchoDesk,
) -> None:
    """Signs of life come only when Telegram has answered: the gap is the outage, and it counts as nobody."""
    failures = Backoff(0.01, 0.05)
    await make_worker(make_telegram(backoff=lambda: failures), desk)

    async def heard() -> bool:
        beats = await server.journal.last_heartbeats()
        return beats.get("channel:telegram") == server.clock.now()

    await until(heard)
    went = server.clock.now()
    await standin.stop()
    await until(lambda: failures.failures > 0)
    server.clock.advance(timedelta(minutes=40))
    await until(lambda: failures.failures > 5)
    (still,) = await server.journal.outages(went, server.clock.now())
    assert (still.component, still.start, still.end) == ("channel:telegram", went, None)
    await standin.__aenter__()
    await until(heard)
    (over,) = await server.journal.outages(went - timedelta(hours=1), server.clock.now())
    assert (over.start, over.end) == (went, server.clock.now())


async def test_a_mail_server_that_is_down_makes_nobody_deaf(
    server: Server, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Its outage is known by its own name, and no silence counts less for it."""
    channel = Broken()
    await make_worker(channel, desk)

    async def heard() -> bool:
        return "outgoing:email" in await server.journal.last_heartbeats()

    await until(heard)
    channel.up = False
    await until(lambda: channel.found_down)
    went = server.clock.now()
    server.clock.advance(timedelta(hours=1))
    (outage,) = await server.journal.outages(went, server.clock.now())
    assert (outage.component, outage.end) == ("outgoing:email", None)
    picture = await server.parts.pictures.take(EVENT, server.clock.now())
    assert picture.situation.outages == ()


async def test_nobody_is_judged_before_what_waited_is_read(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """The channel says when nothing waits any more; until then the server is catching up."""
    ticker = server.parts.ticker
    await ticker.tick(server.clock.now())
    assert ticker.catching_up is not None
    await standin.say("waited")
    await make_worker(telegram, desk)
    await until(lambda: len(texts(standin)) == 1)
    await until(lambda: ticker.catching_up is not None and not ticker.catching_up.channels)
    await until(lambda: all_done(server))
    await ticker.tick(server.clock.now())
    assert ticker.catching_up is None


async def test_one_listens_and_the_next_takes_over(
    server: Server,
    standin: StandIn,
    make_telegram: Callable[..., Telegram],
    make_worker: MakeWorker,
    desk: EchoDesk,
) -> None:
    """Two workers, one lease: never two askers; the second listens as soon as the first has ended."""
    first = await make_worker(make_telegram(), desk)
    await until(lambda: standin.offsets)
    await make_worker(make_telegram(), desk)
    await server.looked("take_lease", 3)
    await standin.say("one")
    await until(lambda: texts(standin) == ["you said: one"])
    assert standin.conflicts == 0
    first.stop()
    await standin.say("two")
    await until(lambda: texts(standin) == ["you said: one", "you said: two"])
    assert standin.conflicts == 0


async def test_who_has_lost_the_lease_stops_listening(
    server: Server,
    standin: StandIn,
    telegram: Telegram,
    make_worker: MakeWorker,
    desk: EchoDesk,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Another took it while this one was asleep: it asks no more."""
    ended: list[bool] = []
    listen = telegram.listen

    async def listens(store: StoreUpdates) -> None:
        try:
            await listen(store)
        finally:
            ended.append(True)

    monkeypatch.setattr(telegram, "listen", listens)
    await make_worker(telegram, desk)
    await until(lambda: standin.offsets)

    async def taken() -> bool:
        # It may renew in between, at any moment: then it holds on a little longer.
        server.clock.advance(timedelta(seconds=5))
        now = server.clock.now()
        return await server.journal.take_lease("listen:telegram", "another", now, timedelta(hours=9))

    await until(taken)
    await until(lambda: ended)
    asked = len(standin.offsets)
    await standin.say("unheard")
    await server.looked("take_lease")
    assert len(standin.offsets) == asked
    assert standin.unconfirmed != []


async def test_a_wrong_token_is_tried_again_without_harm(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Settings are wrong until somebody mends them; then everything goes on by itself."""
    right, standin.token = standin.token, "1:another"
    await standin.say("waits")
    short = await server.owe("jonas")
    await make_worker(telegram, desk)

    async def refused() -> bool:
        (d,) = await server.journal.deliveries(EVENT, short)
        return d.tries > 0 and d.state.value == "queued"

    await until(refused)
    assert standin.sent == []
    standin.token = right
    server.clock.advance(timedelta(minutes=1))
    await until(lambda: texts(standin) == ["you said: waits"])
    await until(lambda: states_are(server, short, [("telegram", "sent")]))


async def test_a_stop_lets_a_send_under_way_be_reported(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Ended in the middle of a send, it waits for Telegram's yes and records it."""
    arrived, go_on = asyncio.Event(), asyncio.Event()
    standin.script("sendMessage", at.held(arrived, go_on))
    short = await server.owe("ana")
    worker = await make_worker(telegram, desk)
    await asyncio.wait_for(arrived.wait(), WAIT_S)
    worker.stop()
    go_on.set()
    await until(lambda: states_are(server, short, [("telegram", "sent")]))


# What comes by the server's own doors ------------------------------------------------------------------------


async def test_a_webhook_brings_updates_to_the_desk(
    server: Server,
    standin: StandIn,
    make_telegram: Callable[..., Telegram],
    make_worker: MakeWorker,
    desk: EchoDesk,
) -> None:
    """Set by the channel, called by Telegram, stored by the server, answered by the worker."""
    hook = Hook(f"{server.url}/hooks/telegram", "a-secret-of-ours", 0.05)
    await make_worker(make_telegram(hook=hook), desk)
    await until(lambda: standin.webhook)
    await standin.say("by webhook")
    assert await standin.push() == [200]
    await until(lambda: texts(standin) == ["you said: by webhook"])
    await standin.say("again")
    standin.webhook["secret_token"] = "wrong"
    assert await standin.push(tries=1) == [403]


async def test_an_update_the_webhook_brings_twice_is_answered_once(
    server: Server,
    standin: StandIn,
    make_telegram: Callable[..., Telegram],
    make_worker: MakeWorker,
    desk: EchoDesk,
) -> None:
    """Telegram brings it again where it did not hear our 200; both are answered 200, the person once."""
    await make_worker(
        make_telegram(hook=Hook(f"{server.url}/hooks/telegram", "a-secret-of-ours", 0.05)), desk
    )
    await until(lambda: standin.webhook)
    body = at_message(7001, "once")
    headers = {"X-Telegram-Bot-Api-Secret-Token": "a-secret-of-ours"}
    async with aiohttp.ClientSession(headers=headers) as session:
        for _ in range(2):
            async with session.post(f"{server.url}/hooks/telegram", data=body) as answer:
                assert answer.status == 200
            await until(lambda: texts(standin) == ["you said: once"])
    await until(lambda: all_done(server))
    await server.looked("next_updates")
    assert texts(standin) == ["you said: once"]


async def test_a_group_that_became_a_supergroup_is_answered_there(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """The question came from the old group, the answer goes to the new one, at once."""
    group = {"id": -500, "type": "group", "title": "crew"}
    standin.migrated["-500"] = -100500
    await standin.put(message=standin.message(41, chat=group, text="/next"))
    await make_worker(telegram, desk)
    await until(lambda: texts(standin, "-100500") == ["you said: /next"])
    await until(lambda: all_done(server))
    assert texts(standin, "-500") == []


STRANGERS = {
    "hello": "a greeting",
    "/start": "the start of a chat",
    "where is Maren": "a question",
    "the short stile": "a guess at an event",
    "in at mill": "a report",
    "i have it": "an answer",
    "/start 0000AAAA1111": "a code of nobody's",
    "/start USED": "a code used up",
    "/start WITHDRAWN": "a code withdrawn",
    "/start OLD": "a code too old",
}
NOT_KNOWN = "This number or chat is not known here. If you have an invitation, send its code."
NOT_VALID = "That code is not valid: mistyped, used, or over. Ask whoever sent it for a new one."


async def worthless_codes(server: Server) -> dict[str, str]:
    """Codes that were good once."""
    journal, now, hour = server.journal, server.clock.now(), timedelta(hours=1)
    used = await journal.invite("maren", EVENT, "test", now, hour)
    await journal.redeem(used, "telegram", "99", "test", now)
    withdrawn = await journal.invite("tomas", EVENT, "test", now, hour)
    for made in await journal.invitations(EVENT):
        await journal.revoke_invitation(made.id, now)
    old = await journal.invite("ana", EVENT, "test", now - 2 * hour, hour)
    return {"USED": used, "WITHDRAWN": withdrawn, "OLD": old}


async def test_a_stranger_learns_nothing(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker
) -> None:
    """Not even that there is an event: one of two sentences, whatever is written or pressed; nothing is kept of it as a
    report, and nobody is bound."""
    codes = await worthless_codes(server)
    await make_worker(telegram)
    for user, words in enumerate(STRANGERS, 70):
        for name, code in codes.items():
            words = words.replace(name, code)
        await standin.say(words, user=user)
        await standin.press("j|yes", user=user)
        await standin.press("n|1|i have it||", user=user)
    for user, words in enumerate(STRANGERS, 70):
        await until(lambda user=user: len(texts(standin, str(user))) == 3)
        first, *presses = texts(standin, str(user))
        is_code = words.startswith("/start ")
        assert first == (NOT_VALID if is_code else NOT_KNOWN), STRANGERS[words]
        assert presses == [NOT_KNOWN, NOT_KNOWN], STRANGERS[words]
        assert await server.journal.person_at("telegram", str(user)) is None
    assert not await server.journal.entries(EVENT)


async def test_an_invitation_says_who_and_what_before_it_is_taken(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker
) -> None:
    """Looked at, withdrawn, then accepted: nothing is bound. The next one is refused by its reader, and still holds."""
    now = server.clock.now()
    code = await server.journal.invite("tomas", EVENT, "test", now, timedelta(hours=1))
    await make_worker(telegram)
    await standin.say(f"/start {code}", user=43)
    await until(lambda: len(texts(standin, "43")) == 1)
    assert texts(standin, "43")[0].startswith("You are Tomas. Part: ")
    assert "safety contact" in texts(standin, "43")[0]
    (made,) = await server.journal.invitations(EVENT)
    assert await server.journal.revoke_invitation(made.id, now)
    await standin.press("j|yes", user=43)
    await until(lambda: len(texts(standin, "43")) == 2)
    assert "not valid" in texts(standin, "43")[1]
    code = await server.journal.invite("tomas", EVENT, "test", now, timedelta(hours=1))
    await standin.say(code, user=43)
    await until(lambda: len(texts(standin, "43")) == 3)
    await standin.press("j|no", user=43)
    await until(lambda: len(texts(standin, "43")) == 4)
    assert await server.journal.person_at("telegram", "43") is None
    assert (await server.journal.preview(code, "test", now)).person == "tomas"


async def test_a_text_gateway_needs_its_devices_token(server: Server) -> None:
    """Stored for the person the token was made for; without one, or with another's, nothing is."""
    now = server.clock.now()
    secret = await server.journal.issue_token("ana", "satellite", [TEXT_SCOPE], now)
    other = await server.journal.issue_token("ana", "phone", [("person")], now)

    async def post(token: str | None, body: Any, *, in_query: bool = False) -> int:
        headers = {"Authorization": f"Bearer {token}"} if token and not in_query else {}
        url = f"{server.url}/hooks/text" + (f"?key={token}" if in_query else "")
        async with (
            aiohttp.ClientSession() as session,
            session.post(url, json=body, headers=headers) as answer,
        ):
            return answer.status

    assert await post(None, {"text": "in mill"}) == 401
    assert await post("nonsense-token", {"text": "in mill"}) == 401
    assert await post(other, {"text": "in mill"}) == 403
    assert await post(secret, {"text": ""}) == 422
    assert await server.journal.waiting("text") == 0
    assert await post(secret, {"id": "1", "text": "in mill"}) == 200
    assert await post(secret, {"id": "1", "text": "in mill"}, in_query=True) == 200
    assert await server.journal.waiting("text") == 1
    (update,) = await server.journal.next_updates("text", now)
    token = await server.journal.check_token(secret, now)
    assert token is not None
    assert await server.journal.person_at("text", token.id) == "ana"
    assert token.id in update.body
    assert secret not in update.body
