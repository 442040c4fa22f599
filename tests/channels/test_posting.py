"""Signed POSTs to a real HTTP server: the signature as its receiver checks it, and every answer's meaning."""

from __future__ import annotations

import asyncio
import hashlib
import hmac
import json
from collections.abc import AsyncIterator
from datetime import UTC, datetime, timedelta

import pytest
from aiohttp import web
from aiohttp.test_utils import TestServer
from hypothesis import given
from hypothesis import strategies as st

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import Delivery, Incoming, RawUpdate, Reply, Sent
from bot.channels.shorttext import TEXT_MAX, BadTextError, ShortText, envelope
from bot.channels.shorttext import make as make_text
from bot.channels.signing import Poster, of_status, sign, verify
from bot.channels.webhook import Webhook, make
from server.clock import SteppedClock
from server.conversation.telling.message import Button

NOW = datetime(2027, 6, 19, 2, 10, tzinfo=UTC)
SECRET = "sixteen letters or more"


class Receiver:
    """Somebody's machine: keeps what comes, answers as told."""

    def __init__(self) -> None:
        self.got: list[tuple[dict[str, str], bytes]] = []
        self.status = 200
        self.headers: dict[str, str] = {}
        self.go_on: asyncio.Event | None = None
        self.drop = False
        self.url = ""

    async def handle(self, request: web.Request) -> web.Response:
        """Take a POST."""
        self.got.append((dict(request.headers), await request.read()))
        if self.go_on is not None:
            await self.go_on.wait()
        if self.drop:
            assert request.transport is not None
            request.transport.abort()
        return web.Response(status=self.status, headers=self.headers)


@pytest.fixture
async def receiver() -> AsyncIterator[Receiver]:
    """A receiver, listening."""
    made = Receiver()
    app = web.Application()
    app.router.add_post("/in", made.handle)
    server = TestServer(app)
    await server.start_server()
    made.url = str(server.make_url("/in"))
    yield made
    await server.close()


@pytest.fixture
def webhook() -> Webhook:
    """A channel that waits long, however slow the machine is."""
    return Webhook(Poster(SECRET, timeout_s=60.0, answer_s=60.0), SteppedClock(NOW))


def delivery(url: str) -> Delivery:
    """A delivery to an address."""
    rows = ((Button("On our way", "n|7|on"),),)
    return Delivery(
        "long-7-1", url, "Leave by 02:10.", rows, short=7, urgent=True, may_repeat=True, subject="Go"
    )


async def test_a_receiver_can_check_the_signature(webhook: Webhook, receiver: Receiver) -> None:
    """As documented: HMAC-SHA256 of timestamp, full stop and body, in hex."""
    assert (await webhook.deliver(delivery(receiver.url))).sent is Sent.ACCEPTED
    ((headers, body),) = receiver.got
    stamp = headers["Stilepost-Timestamp"]
    computed = hmac.new(SECRET.encode(), stamp.encode() + b"." + body, hashlib.sha256).hexdigest()
    assert headers["Stilepost-Signature"] == f"v1={computed}"
    assert int(stamp) == NOW.timestamp()
    assert headers["Stilepost-Delivery"] == "long-7-1"
    assert json.loads(body) == {
        "delivery": "long-7-1", "short": 7, "subject": "Go", "text": "Leave by 02:10.", "alt": "", "urgent": True,
        "may_repeat": True, "buttons": [[{"label": "On our way", "data": "n|7|on"}]], "sent_at": NOW.isoformat(),
    }  # fmt: skip


@given(st.binary(max_size=50), st.integers(0, 50), st.integers(0, 255), st.integers(-900, 900))
def test_only_what_was_signed_verifies(body: bytes, place: int, byte: int, off_s: int) -> None:
    """Another body, secret or time does not, nor the right ones more than five minutes off."""
    stamp = int(NOW.timestamp())
    signature = sign(SECRET, stamp, body)
    assert verify(SECRET, str(stamp), body, signature, NOW + timedelta(seconds=off_s)) is (abs(off_s) <= 300)
    other = body[:place] + bytes([byte]) + body[place + 1 :]
    assert verify(SECRET, str(stamp), other, signature, NOW) is (other == body)
    assert not verify(SECRET + "x", str(stamp), body, signature, NOW)
    assert not verify(SECRET, str(stamp + 1), body, signature, NOW)


@pytest.mark.parametrize("stamp", ["", "x", "-1", "1e9", "٣", "9" * 40])
def test_a_timestamp_that_is_none_does_not_verify(stamp: str) -> None:
    """Whatever a stranger writes there, it is no and never an error."""
    assert not verify(SECRET, stamp, b"", "v1=0", NOW)


STATUSES = {
    200: Sent.ACCEPTED, 202: Sent.ACCEPTED, 204: Sent.ACCEPTED, 301: Sent.NEVER, 400: Sent.NEVER,
    401: Sent.WRONG_SETTINGS, 403: Sent.WRONG_SETTINGS, 404: Sent.NEVER, 408: Sent.UNKNOWN, 410: Sent.GONE,
    413: Sent.NEVER, 425: Sent.LATER, 429: Sent.LATER, 500: Sent.UNKNOWN, 502: Sent.UNKNOWN, 503: Sent.UNKNOWN,
    504: Sent.UNKNOWN,
}  # fmt: skip


@pytest.mark.parametrize("status", STATUSES)
async def test_a_status_has_its_outcome(webhook: Webhook, receiver: Receiver, status: int) -> None:
    """One attempt, no redirect followed."""
    receiver.status, receiver.headers = status, {"Location": receiver.url}
    assert (await webhook.deliver(delivery(receiver.url))).sent is STATUSES[status]
    assert len(receiver.got) == 1


@pytest.mark.parametrize(
    ("status", "header", "wait_s"),
    [
        (429, "90", 90),
        (503, "5", 5),
        (429, "Sat, 19 Jun 2027 02:11:00 GMT", 60),
        (503, "Sat, 19 Jun 2027 02:00:00 GMT", 0),
        (429, "soon", None),
    ],
)
def test_asked_for_time_is_read(status: int, header: str, wait_s: int | None) -> None:
    """Seconds or a date, after RFC 9110, 10.2.3."""
    outcome = of_status(status, header, NOW)
    assert outcome.sent is Sent.LATER
    assert outcome.retry_after == (None if wait_s is None else timedelta(seconds=wait_s))


async def test_nobody_listening_is_not_sent(webhook: Webhook, unused_port: int) -> None:
    """A refused connection."""
    assert (await webhook.deliver(delivery(f"http://127.0.0.1:{unused_port}/in"))).sent is Sent.NOT_SENT


async def test_a_lost_or_late_answer_is_unknown(webhook: Webhook, receiver: Receiver) -> None:
    """It came; what became of it nobody knows."""
    receiver.drop = True
    assert (await webhook.deliver(delivery(receiver.url))).sent is Sent.UNKNOWN
    assert len(receiver.got) == 1
    receiver.drop, receiver.go_on = False, asyncio.Event()
    impatient = Webhook(Poster(SECRET, timeout_s=60.0, answer_s=0.2), SteppedClock(NOW))
    assert (await impatient.deliver(delivery(receiver.url))).sent is Sent.UNKNOWN
    receiver.go_on.set()


@pytest.mark.parametrize(
    "address", ["", "ftp://x", "example.org/in", "http://", "http://[", "file:///etc/passwd"]
)
async def test_an_address_that_is_none_is_never_sent_to(webhook: Webhook, address: str) -> None:
    """And no error comes out of it."""
    assert (await webhook.deliver(delivery(address))).sent is Sent.NEVER


async def test_an_outcome_does_not_quote_the_address(webhook: Webhook, unused_port: int) -> None:
    """It may hold a key of the receiver's."""
    outcome = await webhook.deliver(delivery(f"http://127.0.0.1:{unused_port}/in?key=hush"))
    assert "hush" not in repr(outcome)
    assert SECRET not in repr(Poster(SECRET))


@pytest.mark.parametrize("settings", [{}, {"secret": "short"}, {"secret": SECRET, "timeout_s": "soon"}])
def test_wrong_settings_are_named(settings: dict[str, str]) -> None:
    """A secret one could guess is none."""
    with pytest.raises(WrongSettingsError, match=r"secret|timeout_s"):
        make(settings)


# Short texts -------------------------------------------------------------------------------------------------


def posted(**body: object) -> RawUpdate:
    """What is stored of a gateway's request."""
    return envelope("dev-1", json.dumps(body), NOW)


def read(update: RawUpdate) -> Incoming:
    """What it says."""
    (said,) = ShortText("", None).read(RawUpdate(update.id, update.body, NOW))
    return said


def test_a_short_text_is_read_whole() -> None:
    """Whose device, what, when, under the gateway's own key; it needs no confirming."""
    said = read(posted(id="m-17", text="in mill 0255", sent_at="2027-06-19T02:55:00+01:00"))
    assert said == Incoming(
        "text",
        "dev-1",
        datetime(2027, 6, 19, 1, 55, tzinfo=UTC),
        "m-17",
        text="in mill 0255",
        short_form=True,
    )


def test_a_text_without_a_time_was_sent_when_it_came() -> None:
    """The server's time of receipt."""
    assert read(posted(id="m-17", text="out")).sent_at == NOW


def test_the_same_text_again_counts_once() -> None:
    """By the gateway's id, or by its time and words; another device's is another."""
    first, again = posted(id="m-17", text="out"), posted(id="m-17", text="out", extra=1)
    assert first == again
    timed = {"text": "out", "sent_at": "2027-06-19T02:55:00Z"}
    assert posted(**timed) == posted(**timed)
    assert envelope("dev-2", json.dumps({"id": "m-17", "text": "out"}), NOW).id != first.id


def test_without_id_and_time_the_same_words_count_twice() -> None:
    """'out' at one point and 'out' at the next must not become one."""
    body = json.dumps({"text": "out"})
    assert envelope("dev-1", body, NOW).id != envelope("dev-1", body, NOW + timedelta(hours=1)).id


@pytest.mark.parametrize(
    ("body", "names"),
    [
        ("", "JSON"),
        ("[" * 100_000, "JSON"),
        ("[]", "object"),
        ("{}", "text"),
        ('{"text": " "}', "text"),
        ('{"text": 5.5}', "text"),
        (json.dumps({"text": "x" * (TEXT_MAX + 1)}), "text"),
        ('{"text": "out", "id": {}}', "id"),
        ('{"text": "out", "sent_at": "yesterday"}', "sent_at"),
        ('{"text": "out", "sent_at": "2027-06-19T02:55:00"}', "offset"),
    ],
)
def test_a_wrong_short_text_says_what_is_wrong(body: str, names: str) -> None:
    """The field, and what it should be."""
    with pytest.raises(BadTextError, match=names):
        envelope("dev-1", body, NOW)


async def test_answers_and_notices_go_to_the_gateway(receiver: Receiver) -> None:
    """Signed, to whom, and with an id that is the same when it is sent again."""
    channel = ShortText(receiver.url, Poster(SECRET), SteppedClock(NOW))
    said = read(posted(id="m-17", text="next"))
    assert (await channel.reply(said, Reply("Mill 02:35"))).sent is Sent.ACCEPTED
    assert (await channel.deliver(Delivery("d-1", "dev-1", "Leave by 02:10."))).sent is Sent.ACCEPTED
    assert (await channel.reply(said, Reply(""))).sent is Sent.ACCEPTED
    bodies = [json.loads(body) for _, body in receiver.got]
    assert bodies == [
        {"to": "dev-1", "text": "Mill 02:35", "delivery": "re-dev-1-m-17"},
        {"to": "dev-1", "text": "Leave by 02:10.", "delivery": "d-1"},
    ]
    headers, body = receiver.got[0]
    assert verify(SECRET, headers["Stilepost-Timestamp"], body, headers["Stilepost-Signature"], NOW)


async def test_a_gateway_that_only_hears_is_never_answered() -> None:
    """So that the person's next channel is tried."""
    outcome = await make_text({}).deliver(Delivery("d-1", "dev-1", "Leave by 02:10."))
    assert outcome.sent is Sent.NEVER


@pytest.mark.parametrize(
    "settings", [{"url": "x"}, {"url": "https://x"}, {"url": "https://x", "secret": "short"}]
)
def test_wrong_settings_of_a_gateway_are_named(settings: dict[str, str]) -> None:
    """Its address, or the secret."""
    with pytest.raises(WrongSettingsError, match="gateway"):
        make_text(settings)
