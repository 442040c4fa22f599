"""Sending through the real library to a real HTTP server that fails in every way there is."""

from __future__ import annotations

import asyncio
import io
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from matplotlib.figure import Figure

from bot.channels.base import Delivery, Incoming, Reply, Sent
from bot.channels.telegram import Telegram, api
from server.conversation.telling.message import Button
from tests.channels import standin as at
from tests.channels.conftest import PATIENT
from tests.channels.standin import StandIn

pytestmark = pytest.mark.filterwarnings("ignore:.*retry_after.*")

PLAIN = Delivery("d-1", "41", "Leave by 02:10 for Skelter Mill.")

FAILING = {
    "429": (at.refused(429, "Too Many Requests: retry after 7", retry_after=7), Sent.LATER),
    "403 blocked": (at.refused(403, "Forbidden: bot was blocked by the user"), Sent.GONE),
    "403 deleted account": (at.refused(403, "Forbidden: user is deactivated"), Sent.GONE),
    "400": (at.refused(400, "Bad Request: chat not found"), Sent.NEVER),
    "400 migrated": (at.refused(400, "Bad Request: upgraded", migrate_to_chat_id=-100777), Sent.MOVED),
    "401": (at.refused(401, "Unauthorized"), Sent.WRONG_SETTINGS),
    "404": (at.refused(404, "Not Found"), Sent.WRONG_SETTINGS),
    "409": (at.refused(409, "Conflict: terminated"), Sent.WRONG_SETTINGS),
    "500": (at.refused(500, "Internal Server Error"), Sent.UNKNOWN),
    "502 a page": (at.bad_gateway, Sent.UNKNOWN),
    "503": (at.refused(503, "Service Unavailable"), Sent.UNKNOWN),
    "200 a page": (at.not_json, Sent.UNKNOWN),
    "200 not ok": (at.not_ok, Sent.UNKNOWN),
    "200 another shape": (at.another_shape, Sent.UNKNOWN),
    "lost reply": (at.lost_reply, Sent.UNKNOWN),
}


@pytest.mark.parametrize("case", FAILING)
async def test_a_failing_send_has_its_outcome(telegram: Telegram, standin: StandIn, case: str) -> None:
    """The outcome is that of the table, and the library does not try again by itself."""
    answer, means = FAILING[case]
    standin.script("sendMessage", answer)
    outcome = await telegram.deliver(PLAIN)
    assert outcome.sent is means, outcome
    assert len(standin.sent) <= 1
    assert at.TOKEN not in outcome.detail


async def test_an_answer_that_does_not_come_is_unknown(
    make_telegram: Callable[..., Telegram], standin: StandIn
) -> None:
    """Telegram has it and says nothing: connecting may take its time, the answer may not."""
    arrived, go_on = asyncio.Event(), asyncio.Event()
    standin.script("sendMessage", at.held(arrived, go_on))
    outcome = await make_telegram(timeouts=replace(PATIENT, answer_s=0.2)).deliver(PLAIN)
    go_on.set()
    assert outcome.sent is Sent.UNKNOWN, outcome


async def test_asked_for_time_is_handed_on(telegram: Telegram, standin: StandIn) -> None:
    """429 says how long; the outbox waits, not the channel."""
    standin.script("sendMessage", FAILING["429"][0])
    assert (await telegram.deliver(PLAIN)).retry_after == timedelta(seconds=7)


async def test_a_moved_group_has_its_new_address(telegram: Telegram, standin: StandIn) -> None:
    """A group turned supergroup answers with its new id."""
    standin.migrated["41"] = -100777
    assert (await telegram.deliver(PLAIN)).new_address == "-100777"


async def test_nobody_listening_is_not_sent(make_telegram: Callable[..., Telegram], unused_port: int) -> None:
    """A refused connection is surely not sent."""
    channel = make_telegram(base_url=f"http://127.0.0.1:{unused_port}")
    assert (await channel.deliver(PLAIN)).sent is Sent.NOT_SENT


@pytest.mark.parametrize("base_url", ["nonsense", "ftp://127.0.0.1"])
async def test_a_wrong_address_of_the_api_is_a_wrong_setting(
    make_telegram: Callable[..., Telegram], base_url: str
) -> None:
    """What can't be asked at all is for somebody to mend."""
    assert (await make_telegram(base_url=base_url).deliver(PLAIN)).sent is Sent.WRONG_SETTINGS


async def test_a_proxy_of_the_environment_is_not_used(
    make_telegram: Callable[..., Telegram], standin: StandIn, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The library's HTTP client would send even loopback through it."""
    monkeypatch.setenv("HTTP_PROXY", "http://127.0.0.1:9")
    monkeypatch.setenv("ALL_PROXY", "http://127.0.0.1:9")
    assert (await make_telegram().deliver(PLAIN)).sent is Sent.ACCEPTED


async def test_a_message_arrives_with_its_buttons(telegram: Telegram, standin: StandIn) -> None:
    """Accepted: text and buttons as given, and Telegram's id as the reference."""
    rows = ((Button("On our way", "n|7|on"), Button("Can't", "n|7|cant")), (Button("Kit?", "q|bring"),))
    outcome = await telegram.deliver(Delivery("d-1", "41", "Leave by 02:10.", rows, short=7))
    (call,) = standin.sent
    assert (outcome.sent, outcome.ref) == (Sent.ACCEPTED, str(call.message_id))
    assert (call.chat, call.text) == ("41", "Leave by 02:10.")
    shown = [
        [(b["text"], b["callback_data"]) for b in row]
        for row in call.params["reply_markup"]["inline_keyboard"]
    ]
    assert shown == [[(b.label, b.data) for b in row] for row in rows]
    assert call.params["link_preview_options"] == {"is_disabled": True}


async def test_a_long_text_goes_in_parts(telegram: Telegram, standin: StandIn) -> None:
    """No part is longer than Telegram takes, lines stay whole, and the buttons are under the last."""
    lines = [f"line {i} \N{MOUNTAIN} {'x' * 80}" for i in range(120)]
    rows = ((Button("Yes", "n|7|yes"),),)
    assert (await telegram.deliver(Delivery("d-1", "41", "\n".join(lines), rows))).sent is Sent.ACCEPTED
    assert len(standin.sent) > 1
    assert [line for call in standin.sent for line in call.text.split("\n")] == lines
    assert all(len(call.text.encode("utf-16-le")) // 2 <= 4096 for call in standin.sent)
    assert ["reply_markup" in call.params for call in standin.sent] == [False] * (len(standin.sent) - 1) + [
        True
    ]


@pytest.mark.parametrize(("case", "means"), [("429", Sent.UNKNOWN), ("403 blocked", Sent.GONE)])
async def test_a_long_text_that_breaks_off_may_be_a_repeat(
    telegram: Telegram, standin: StandIn, case: str, means: Sent
) -> None:
    """Its first part is there, so that 'later' would repeat it unmarked."""
    standin.script("sendMessage", at.fine, FAILING[case][0])
    outcome = await telegram.deliver(Delivery("d-1", "41", "word " * 1500))
    assert outcome.sent is means
    assert len(standin.sent) == 1


@pytest.fixture
def png() -> bytes:
    """A small real picture."""
    out = io.BytesIO()
    Figure(figsize=(1, 1)).savefig(out, format="png")
    return out.getvalue()


@pytest.fixture
def question() -> Incoming:
    """Somebody asked in their private chat."""
    return Incoming("telegram", "41", datetime(2027, 6, 19, 4, tzinfo=UTC), "41.101", "where", reply_to="41")


async def test_a_picture_carries_the_words(
    telegram: Telegram, standin: StandIn, png: bytes, question: Incoming
) -> None:
    """Words that fit stand under the picture, with the buttons."""
    reply = Reply("Between Mill and Chapel.", ((Button("Next", "q|next"),),), png, "a profile")
    assert (await telegram.reply(question, reply)).sent is Sent.ACCEPTED
    (call,) = standin.sent
    assert (call.method, call.text, call.files["photo"]) == ("sendPhoto", "Between Mill and Chapel.", png)
    assert "reply_markup" in call.params


async def test_words_too_long_for_a_picture_go_first(
    telegram: Telegram, standin: StandIn, png: bytes, question: Incoming
) -> None:
    """A caption holds 1024: longer words are a message of their own, the picture says its words in short."""
    reply = Reply("word " * 300, ((Button("Next", "q|next"),),), png, "alt " * 400)
    assert (await telegram.reply(question, reply)).sent is Sent.ACCEPTED
    assert [call.method for call in standin.sent] == ["sendMessage", "sendPhoto"]
    assert "reply_markup" in standin.sent[0].params
    assert standin.sent[1].text.endswith("…")
    assert len(standin.sent[1].text) <= 1024


NO_PICTURE = {
    "400": at.refused(400, "Bad Request: PHOTO_INVALID_DIMENSIONS"),
    "413": at.refused(413, "Request Entity Too Large"),
    "500": at.refused(500, "Internal Server Error"),
    "200 not ok": at.not_ok,
    "lost reply": at.lost_reply,
}


@pytest.mark.parametrize("case", NO_PICTURE)
async def test_a_picture_that_fails_does_not_cost_the_words(
    telegram: Telegram, standin: StandIn, png: bytes, question: Incoming, case: str
) -> None:
    """What must arrive is the words: refused or of unknown fate, the picture is left out, and they go alone."""
    standin.script("sendPhoto", NO_PICTURE[case])
    assert (await telegram.reply(question, Reply("At Mill.", (), png, "a profile"))).sent is Sent.ACCEPTED
    assert (standin.sent[-1].method, standin.sent[-1].text) == ("sendMessage", "At Mill.")


@pytest.mark.parametrize("case", ["429", "403 blocked", "400 migrated", "401"])
async def test_an_answer_about_the_chat_is_about_the_words_too(
    telegram: Telegram, standin: StandIn, png: bytes, question: Incoming, case: str
) -> None:
    """Later, gone, moved, wrong settings: the words are not tried behind the picture."""
    answer, means = FAILING[case]
    standin.script("sendPhoto", answer)
    assert (await telegram.reply(question, Reply("At Mill.", (), png, "a profile"))).sent is means
    assert standin.asked["sendMessage"] == 0


async def test_no_connection_free_is_not_sent(
    make_telegram: Callable[..., Telegram], standin: StandIn, monkeypatch: pytest.MonkeyPatch
) -> None:
    """All connections wait for an answer: the next message has surely not left."""
    monkeypatch.setattr(api, "SENDING_AT_ONCE", 1)
    channel = make_telegram(timeouts=replace(PATIENT, pool_s=0.05))
    arrived, go_on = asyncio.Event(), asyncio.Event()
    standin.script("sendMessage", at.held(arrived, go_on))
    first = asyncio.create_task(channel.deliver(PLAIN))
    await arrived.wait()
    assert (await channel.deliver(PLAIN)).sent is Sent.NOT_SENT
    go_on.set()
    assert (await first).sent is Sent.ACCEPTED
    assert len(standin.sent) == 1


async def test_a_picture_lost_after_long_words_is_told(
    telegram: Telegram, standin: StandIn, png: bytes, question: Incoming
) -> None:
    """The words are there; the record says that the picture is not."""
    standin.script("sendPhoto", at.refused(500, "Internal"))
    outcome = await telegram.reply(question, Reply("word " * 300, (), png, "alt"))
    assert outcome.sent is Sent.ACCEPTED
    assert "without its picture" in outcome.detail


async def test_a_picture_without_words_says_its_alternative(
    telegram: Telegram, standin: StandIn, png: bytes, question: Incoming
) -> None:
    """A picture always comes with its words."""
    await telegram.reply(question, Reply("", (), png, "a profile"))
    assert standin.sent[0].text == "a profile"


async def test_a_press_is_always_acknowledged(
    telegram: Telegram, standin: StandIn, question: Incoming
) -> None:
    """Also when there is nothing to say, and when Telegram calls the press too old."""
    press = replace(question, button="n|7|yes", message_key="q9001")
    standin.script("answerCallbackQuery", at.fine, at.refused(400, "Bad Request: query is too old"))
    assert (await telegram.reply(press, Reply(""))).sent is Sent.ACCEPTED
    assert (await telegram.reply(press, Reply("Noted."))).sent is Sent.ACCEPTED
    assert [c.params["callback_query_id"] for c in standin.calls] == [9001]
    assert [c.text for c in standin.sent] == ["Noted."]


async def test_an_answer_in_a_group_hangs_under_its_question(
    telegram: Telegram, standin: StandIn, question: Incoming
) -> None:
    """So that everybody sees whom it answers."""
    asked = replace(question, group=True, reply_to="-500", message_key="-500.101")
    await telegram.reply(asked, Reply("At Mill."))
    (call,) = standin.sent
    assert call.chat == "-500"
    assert call.params["reply_parameters"] == {"message_id": 101, "allow_sending_without_reply": True}


async def test_silence_sends_nothing(telegram: Telegram, standin: StandIn, question: Incoming) -> None:
    """An empty reply is no message."""
    assert (await telegram.reply(question, Reply(""))).sent is Sent.ACCEPTED
    assert standin.sent == []


@pytest.mark.parametrize("address", ["", "ana", "41x"])
async def test_an_address_that_is_no_chat_is_never_sent_to(
    telegram: Telegram, standin: StandIn, address: str
) -> None:
    """It is not asked about either."""
    assert (await telegram.deliver(Delivery("d-1", address, "text"))).sent is Sent.NEVER
    assert standin.sent == []


async def test_nothing_to_say_is_never_sent(telegram: Telegram) -> None:
    """Telegram refuses an empty message; so do we."""
    assert (await telegram.deliver(Delivery("d-1", "41", "  \n "))).sent is Sent.NEVER


async def test_a_photo_is_fetched_by_its_name_and_one_that_is_gone_is_none(
    telegram: Telegram, standin: StandIn
) -> None:
    """Through the same bot; one that can't be had stops nothing."""
    standin.files["photos/f1.jpg"] = b"a photo"
    assert await telegram.photo("f1") == b"a photo"
    assert await telegram.photo("f2") is None
