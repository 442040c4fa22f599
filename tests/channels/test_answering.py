"""A worker answers what people write: stored, asked, answered, done; whatever fails on the way."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from datetime import timedelta
from typing import Any

import aiohttp
import pytest

from bot.api_client import UnreachableError
from bot.channels.base import Incoming, Reply
from bot.channels.telegram import Telegram
from bot.conversing import Conversing
from bot.loops import answering
from bot.service_client import ServiceClient
from server.conversation.telling.message import event_mark
from server.journal import Status
from tests.channels import standin as at
from tests.channels.conftest import EVENT, LISTENS_ON, EchoDesk, Server, until
from tests.channels.standin import StandIn
from tests.channels.working import (
    MakeWorker,
    all_done,
    at_message,
    texts,
)


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


async def test_the_server_down_and_back(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """What is written meanwhile waits at Telegram, unconfirmed, and is answered when the server is back."""
    await make_worker(telegram, desk, LISTENS_ON)
    await standin.say("before")
    await until(lambda: len(texts(standin)) == 1)
    await until(lambda: standin.unconfirmed == [])
    await until(lambda: all_done(server))
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
    await until(lambda: len(texts(standin)) == 1)
    assert "NOTHING is noted" in texts(standin)[0]

    async def only_hers() -> bool:
        return await server.journal.waiting() == 1

    await until(only_hers)
    server.clock.advance(timedelta(seconds=61))
    await until(lambda: all_done(server))
    assert asked == 2


async def test_a_message_the_desk_fails_on_holds_no_later_one_up(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Written in one dead spot and read together: the first breaks the desk, the second may be a call for help."""
    failed = asyncio.Event()

    async def fail_once() -> None:
        if not failed.is_set():
            failed.set()
            raise RuntimeError("a fault")

    desk.gates["41"] = fail_once
    await standin.say("hard")
    await standin.say("help")
    await make_worker(telegram, desk)
    await until(lambda: "you said: help" in texts(standin))
    assert "you said: hard" not in texts(standin)


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
        lost = Conversing(ServiceClient(session, f"http://127.0.0.1:{unused_tcp_port_factory()}", token))
        there = Conversing(ServiceClient(session, server.url, token))
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
        assert "I keep your message and hand it over" in said
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


@pytest.mark.parametrize("lost", ["update_done", "converse"])
async def test_a_server_lost_for_a_moment_costs_nobody_a_lease(
    server: Server,
    standin: StandIn,
    telegram: Telegram,
    make_worker: MakeWorker,
    desk: EchoDesk,
    monkeypatch: pytest.MonkeyPatch,
    lost: str,
) -> None:
    """It goes while an update is worked on, or before it is said to be done: once it is back that person is answered, what
    they wrote after it too, and our clock has not gone on by a second."""
    away, really = True, ServiceClient.update_done

    async def done(*arguments: Any) -> None:
        if away and lost == "update_done":
            raise UnreachableError("lost")
        await really(*arguments)

    async def asked() -> None:
        if away and lost == "converse":
            raise UnreachableError("lost")

    desk.gates["41"] = asked
    monkeypatch.setattr(ServiceClient, "update_done", done)
    await make_worker(telegram, desk)
    await standin.say("one")
    await until(
        lambda: texts(standin) == ["you said: one"] or (lost == "converse" and standin.unconfirmed == [])
    )
    await standin.say("two")
    await until(lambda: standin.unconfirmed == [])
    away = False
    await until(lambda: "you said: two" in texts(standin))
    await until(lambda: all_done(server))
    assert texts(standin)[-2:] == ["you said: one", "you said: two"]


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
