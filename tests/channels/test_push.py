"""Web push: what a push service gets is sealed for one browser and signed by us; what its answer means for the address."""

from __future__ import annotations

import base64
import json
from collections.abc import AsyncIterator
from typing import Any

import http_ece
import pytest
from aiohttp import web
from aiohttp.test_utils import TestServer
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat
from py_vapid import Vapid02

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import Button, Delivery, Sent
from bot.channels.push import Push, make, new_key, public_key

SECRET = b"0123456789abcdef"
PEM = new_key()


def _b64(raw: bytes) -> str:
    return base64.urlsafe_b64encode(raw).rstrip(b"=").decode()


class Browser:
    """A browser's half of a subscription, which alone can read what was sealed for it."""

    def __init__(self, endpoint: str) -> None:
        self._key = ec.generate_private_key(ec.SECP256R1())
        point = self._key.public_key().public_bytes(Encoding.X962, PublicFormat.UncompressedPoint)
        self.address = json.dumps({"endpoint": endpoint, "p256dh": _b64(point), "auth": _b64(SECRET)})

    def read(self, body: bytes) -> dict[str, Any]:
        opened = http_ece.decrypt(body, private_key=self._key, auth_secret=SECRET, version="aes128gcm")
        read: dict[str, Any] = json.loads(opened)
        return read


class Service:
    """A push service on loopback: keeps what is posted to it, answers as told."""

    def __init__(self) -> None:
        self.got: list[tuple[dict[str, str], bytes]] = []
        self.status, self.headers = 201, dict[str, str]()

    async def take(self, request: web.Request) -> web.Response:
        self.got.append((dict(request.headers), await request.read()))
        return web.Response(status=self.status, headers=self.headers)


@pytest.fixture
async def service() -> AsyncIterator[tuple[Service, str]]:
    kept = Service()
    app = web.Application()
    app.router.add_post("/{box}", kept.take)
    server = TestServer(app)
    await server.start_server()
    yield kept, str(server.make_url("/box"))
    await server.close()


def _push() -> Push:
    return Push(PEM, "crew@example.org", anywhere=True)


def _owed(address: str, text: str = "Leave now for Mill.", *, urgent: bool = True) -> Delivery:
    return Delivery("d1", address, text, ((Button("On our way", "x:1"),),), 7, urgent, subject="Leave now")


async def test_the_browser_reads_what_was_sent_and_nobody_between(service: tuple[Service, str]) -> None:
    """Text, number and buttons arrive; on the way they are not to be seen; an alarm is urgent."""
    kept, url = service
    browser = Browser(url)
    outcome = await _push().deliver(_owed(browser.address))
    assert outcome.sent is Sent.ACCEPTED
    headers, body = kept.got[0]
    assert b"Leave" not in body
    said = browser.read(body)
    assert (said["text"], said["subject"], said["short"], said["urgent"]) == (
        "Leave now for Mill.",
        "Leave now",
        7,
        True,
    )
    assert said["buttons"] == [[{"label": "On our way", "data": "x:1"}]]
    assert headers["Urgency"] == "high"
    assert int(headers["TTL"]) > 0


async def test_it_is_signed_by_the_key_that_browsers_subscribe_with(service: tuple[Service, str]) -> None:
    """RFC 8292: an ES256 token for the push service's origin, by the public key on the page, that says whom to write to."""
    kept, url = service
    await _push().deliver(_owed(Browser(url).address))
    authorization = kept.got[0][0]["Authorization"]
    assert Vapid02.verify(authorization)
    fields = dict(f.split("=", 1) for f in authorization.removeprefix("vapid ").replace(" ", "").split(","))
    assert fields["k"] == public_key(PEM)
    claims = json.loads(base64.urlsafe_b64decode(fields["t"].split(".")[1] + "=="))
    assert claims["aud"] == url.removesuffix("/box")
    assert claims["sub"] == "mailto:crew@example.org"


@pytest.mark.parametrize(
    ("status", "means"),
    [
        (201, Sent.ACCEPTED), (404, Sent.GONE), (410, Sent.GONE), (403, Sent.GONE), (413, Sent.NEVER),
        (429, Sent.LATER), (500, Sent.UNKNOWN), (302, Sent.NEVER),
    ],
)  # fmt: skip
async def test_what_the_services_answer_means(service: tuple[Service, str], status: int, means: Sent) -> None:
    """A subscription that is gone takes nothing more, which blocks the address; a redirect is not followed."""
    kept, url = service
    kept.status, kept.headers = status, {"Location": url, "Retry-After": "30"} if status in (302, 429) else {}
    outcome = await _push().deliver(_owed(Browser(url).address))
    assert outcome.sent is means
    assert len(kept.got) == 1
    assert url not in outcome.detail


async def test_a_long_notice_is_cut_to_what_every_service_takes(service: tuple[Service, str]) -> None:
    """4096 bytes and no more (RFC 8291, section 4), however the text is written; the page has the whole."""
    kept, url = service
    browser = Browser(url)
    for text in ("Wort für Wort – " * 400, "\u5c71" * 4000, '"\\' * 3000):
        kept.got.clear()
        assert (await _push().deliver(_owed(browser.address, text))).sent is Sent.ACCEPTED
        body = kept.got[0][1]
        assert len(body) <= 4096
        assert browser.read(body)["text"].endswith("…")


@pytest.mark.parametrize(
    "address",
    ["", "nonsense", "{}", '{"endpoint":"https://push.example.org/x","p256dh":"AAAA","auth":"AAAA"}'],
)
async def test_what_is_no_subscription_is_never_sent(address: str) -> None:
    """And raises nothing: one bad address holds nobody up."""
    assert (await _push().deliver(_owed(address))).sent is Sent.NEVER


@pytest.mark.parametrize(
    "endpoint", ["http://push.example.org/x", "https://127.0.0.1/x", "https://[::1]/x", "https://localhost/x"]
)
async def test_nothing_is_sent_into_the_servers_own_network(endpoint: str) -> None:
    """Where to send, a browser has said: it may not make the server speak to what only the server reaches."""
    outcome = await Push(PEM, "crew@example.org", 2.0).deliver(_owed(Browser(endpoint).address))
    assert outcome.sent in (Sent.NEVER, Sent.NOT_SENT)


async def test_a_service_that_is_away_was_not_reached() -> None:
    """Nothing listens there: certainly not sent, so that it is tried again without a mark."""
    assert (await _push().deliver(_owed(Browser("http://127.0.0.1:9/x").address))).sent is Sent.NOT_SENT


@pytest.mark.parametrize("lacking", ["key", "contact"])
def test_settings_that_are_missing_are_named(lacking: str) -> None:
    """The channel does not start without them."""
    settings = {"key": PEM, "contact": "crew@example.org"}
    with pytest.raises(WrongSettingsError, match=lacking):
        make(settings | {lacking: ""})
