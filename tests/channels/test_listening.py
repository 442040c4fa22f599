"""Hearing from Telegram: stored before confirmed, whatever breaks; by asking and by being called."""

from __future__ import annotations

import asyncio
import json
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from dataclasses import replace

import aiohttp
import pytest
from aiohttp import web
from aiohttp.test_utils import TestServer

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import RawUpdate
from bot.channels.telegram import Telegram, make
from bot.channels.telegram.hook import PATH, SECRET_HEADER, telegram_webhook
from bot.channels.telegram.listening import Backoff, Hook
from tests.channels import standin as at
from tests.channels.conftest import PATIENT, WAIT_S, until
from tests.channels.standin import StandIn


class Store:
    """A store that keeps what it is given, or fails as often as asked."""

    def __init__(self, failures: int = 0) -> None:
        self.failures = failures
        self.kept: list[RawUpdate] = []
        self.quiet = 0
        self._changed = asyncio.Condition()

    async def __call__(self, updates: tuple[RawUpdate, ...]) -> None:
        if updates and self.failures:
            self.failures -= 1
            raise OSError("the server is down")
        async with self._changed:
            self.kept += updates
            self.quiet += not updates
            self._changed.notify_all()

    @property
    def texts(self) -> list[str]:
        """The words of what is kept."""
        return [json.loads(u.body)["message"]["text"] for u in self.kept]

    async def until(self, enough: Callable[[Store], bool]) -> None:
        """Wait until it is so."""
        async with asyncio.timeout(WAIT_S), self._changed:
            await self._changed.wait_for(lambda: enough(self))


@asynccontextmanager
async def listening(channel: Telegram, store: Store) -> AsyncIterator[asyncio.Task[None]]:
    """The channel listens as long as the block runs."""
    task = asyncio.create_task(channel.listen(store))
    try:
        yield task
    finally:
        task.cancel()
        await asyncio.gather(task, return_exceptions=True)


SECRET = "a-secret-of-ours"


@pytest.fixture
async def hooked() -> AsyncIterator[tuple[TestServer, Store]]:
    """A server with Telegram's path, and what it stores."""
    store = Store()
    app = web.Application()
    app.router.add_post(PATH, telegram_webhook(SECRET, store))
    server = TestServer(app)
    await server.start_server()
    yield server, store
    await server.close()


# Asking ------------------------------------------------------------------------------------------------------


async def test_updates_are_stored_in_order_and_then_confirmed(telegram: Telegram, standin: StandIn) -> None:
    """Confirmed means asked for with a higher offset; by then they are stored."""
    for word in ("one", "two", "three"):
        await standin.say(word)
    store = Store()
    async with listening(telegram, store):
        await store.until(lambda s: len(s.kept) == 3)
        await until(lambda: standin.unconfirmed == [])
    assert store.texts == ["one", "two", "three"]


async def test_what_could_not_be_stored_comes_again(telegram: Telegram, standin: StandIn) -> None:
    """While the server is down nothing is confirmed; when it is back nothing is missing."""
    ids = [await standin.say("one"), await standin.say("two")]
    store = Store(failures=3)
    async with listening(telegram, store):
        await until(lambda: store.failures == 0)
        assert standin.unconfirmed == ids
        await store.until(lambda s: len(s.kept) == 2)
    assert store.texts == ["one", "two"]


async def test_an_update_is_kept_as_it_came(telegram: Telegram, standin: StandIn) -> None:
    """Also with fields the library does not know, and one that it could not read at all."""
    await standin.put(message={"odd": True}, brand_new_kind={"deep": [1, {"x": None}]})
    await standin.say("after it")
    store = Store()
    async with listening(telegram, store):
        await store.until(lambda s: len(s.kept) == 2)
    body = json.loads(store.kept[0].body)
    assert body["brand_new_kind"] == {"deep": [1, {"x": None}]}
    assert store.kept[0].id == str(body["update_id"])


async def test_the_end_of_what_waited_is_told(telegram: Telegram, standin: StandIn) -> None:
    """Nobody is judged before it; it comes after the last that waited."""
    await standin.say("waited")
    store = Store()
    async with listening(telegram, store):
        await store.until(lambda s: s.quiet > 0)
        assert store.texts == ["waited"]


async def test_a_webhook_is_taken_down_but_what_waits_is_kept(telegram: Telegram, standin: StandIn) -> None:
    """A webhook bars asking; dropping what waits would drop check-ins."""
    standin.webhook = {"url": "https://old.example.org"}
    await standin.say("kept")
    store = Store()
    async with listening(telegram, store):
        await store.until(lambda s: s.texts == ["kept"])


BREAKING = {
    "429": at.refused(429, "Too Many Requests", retry_after=1),
    "500": at.refused(500, "Internal Server Error"),
    "502 a page": at.refused(502, "Bad Gateway"),
    "409": at.refused(409, "Conflict: terminated by other getUpdates request"),
    "400": at.refused(400, "Bad Request: strange"),
    "403": at.refused(403, "Forbidden: strange"),
    "200 a page": at.not_json,
    "200 not ok": at.not_ok,
    "200 another shape": at.another_shape,
    "lost reply": at.lost_reply,
}


@pytest.mark.parametrize("case", BREAKING)
@pytest.mark.filterwarnings("ignore:.*retry_after.*")
async def test_trouble_on_the_way_is_waited_out(telegram: Telegram, standin: StandIn, case: str) -> None:
    """Whatever one request comes to, the next gets what waits."""
    await standin.say("kept")
    standin.script("getUpdates", BREAKING[case])
    store = Store()
    async with listening(telegram, store):
        await store.until(lambda s: s.texts == ["kept"])


async def test_an_answer_that_does_not_come_is_asked_for_again(
    make_telegram: Callable[..., Telegram], standin: StandIn
) -> None:
    """Telegram hangs in the middle of a question: the next one gets what waits."""
    arrived, go_on = asyncio.Event(), asyncio.Event()
    standin.script("getUpdates", at.held(arrived, go_on))
    await standin.say("kept")
    store = Store()
    async with listening(make_telegram(timeouts=replace(PATIENT, answer_s=0.2)), store):
        await store.until(lambda s: "kept" in s.texts)
        go_on.set()


@pytest.mark.parametrize("method", ["getWebhookInfo", "setWebhook"])
@pytest.mark.parametrize("case", [c for c in BREAKING if c != "400"])
@pytest.mark.filterwarnings("ignore:.*retry_after.*")
async def test_trouble_with_the_webhook_is_waited_out(
    make_telegram: Callable[..., Telegram],
    standin: StandIn,
    hooked: tuple[TestServer, Store],
    method: str,
    case: str,
) -> None:
    """Whatever one request comes to, the webhook is set in the end, and only then is there a sign of life."""
    server, store = hooked
    standin.script(method, BREAKING[case])
    channel = make_telegram(hook=Hook(str(server.make_url(PATH)), SECRET, 0.02))
    async with listening(channel, store):
        await store.until(lambda s: s.quiet > 0)
    assert standin.webhook["secret_token"] == SECRET


async def test_a_webhook_telegram_refuses_is_a_wrong_setting(
    make_telegram: Callable[..., Telegram], standin: StandIn
) -> None:
    """An address without TLS, say: waiting would not help, and the secret is not shown."""
    standin.script(
        "setWebhook", at.refused(400, f"Bad Request: bad webhook: {SECRET}: HTTPS url must be provided")
    )
    channel = make_telegram(hook=Hook("http://crew.example.org", SECRET, 0.02))
    with pytest.raises(WrongSettingsError, match="public_url") as told:
        await asyncio.wait_for(channel.listen(Store()), WAIT_S)
    assert SECRET not in str(told.value)


async def test_telegram_away_and_back(make_telegram: Callable[..., Telegram], standin: StandIn) -> None:
    """Connections refused for a while: the loop goes on, and gives no sign of life meanwhile."""
    store, failures = Store(), Backoff(0.01, 0.05)
    async with listening(make_telegram(backoff=lambda: failures), store):
        await store.until(lambda s: s.quiet > 0)
        await standin.stop()
        await until(lambda: failures.failures > 0)
        before = store.quiet
        await until(lambda: failures.failures > 5)
        assert store.quiet == before
        await standin.__aenter__()
        await standin.say("back")
        await store.until(lambda s: s.texts == ["back"])


async def test_two_askers_lose_nothing(make_telegram: Callable[..., Telegram], standin: StandIn) -> None:
    """A second asker gets the first a Conflict; between them everything is stored, doubled or not."""
    store = Store()
    async with listening(make_telegram(), store), listening(make_telegram(), store):
        for i in range(20):
            await standin.say(f"word {i}")
            await asyncio.sleep(0.01)
        await store.until(lambda s: len(set(s.texts)) == 20)


async def test_a_wrong_token_is_told_at_once(make_telegram: Callable[..., Telegram]) -> None:
    """Waiting would not help."""
    channel = make_telegram(token="1234:wrong")
    with pytest.raises(WrongSettingsError, match="telegram_token"):
        await asyncio.wait_for(channel.listen(Store()), WAIT_S)


async def test_only_the_kinds_we_read_are_asked_for(telegram: Telegram, standin: StandIn) -> None:
    """Left out, Telegram would go on with whatever was asked for last."""
    asked: list[object] = []

    async def look(request: web.Request, _carry_out: Callable[[], object]) -> web.StreamResponse:
        asked.append(json.loads(str((await request.post())["allowed_updates"])))
        return web.json_response({"ok": True, "result": []})

    standin.script("getUpdates", look)
    store = Store()
    async with listening(telegram, store):
        await store.until(lambda s: s.quiet > 0)
    assert asked == [["message", "edited_message", "callback_query", "my_chat_member"]]


# Being called ------------------------------------------------------------------------------------------------


async def test_a_webhook_is_set_and_brings_updates(
    make_telegram: Callable[..., Telegram], standin: StandIn, hooked: tuple[TestServer, Store]
) -> None:
    """Set with the secret, the kinds we read and nothing dropped; what comes is stored before the answer."""
    server, store = hooked
    channel = make_telegram(hook=Hook(str(server.make_url(PATH)), SECRET, 0.02))
    await standin.say("waited")
    async with listening(channel, store):
        await until(lambda: bool(standin.webhook))
        assert store.quiet == 0
        assert await standin.push() == [200]
        await store.until(lambda s: s.quiet > 0)
    assert store.texts == ["waited"]
    assert json.loads(standin.webhook["allowed_updates"].replace("'", '"'))[0] == "message"
    assert standin.webhook.get("drop_pending_updates") in (None, "False")


async def test_a_webhook_somebody_took_down_is_set_again(
    make_telegram: Callable[..., Telegram], standin: StandIn, hooked: tuple[TestServer, Store]
) -> None:
    """It is looked at again and again."""
    server, store = hooked
    channel = make_telegram(hook=Hook(str(server.make_url(PATH)), SECRET, 0.02))
    async with listening(channel, store):
        await store.until(lambda s: s.quiet > 0)
        standin.webhook = {}
        await until(lambda: bool(standin.webhook))


async def test_an_update_that_cannot_be_stored_is_brought_again(
    make_telegram: Callable[..., Telegram], standin: StandIn, hooked: tuple[TestServer, Store]
) -> None:
    """Answered 503 until it is safe."""
    server, store = hooked
    store.failures = 2
    standin.webhook = {"url": str(server.make_url(PATH)), "secret_token": SECRET}
    await standin.say("kept")
    assert await standin.push() == [503, 503, 200]
    assert store.texts == ["kept"]


async def posted(server: TestServer, body: str, headers: dict[str, str]) -> int:
    """The status of a call of Telegram's path."""
    async with (
        aiohttp.ClientSession() as session,
        session.post(server.make_url(PATH), data=body, headers=headers) as answer,
    ):
        return answer.status


@pytest.mark.parametrize("shown", [None, "", "wrong", SECRET + "x", "ä"])
async def test_without_the_secret_nothing_is_stored(
    hooked: tuple[TestServer, Store], shown: str | None
) -> None:
    """Anybody may find the path; only Telegram knows the secret."""
    server, store = hooked
    headers = {} if shown is None else {SECRET_HEADER: shown}
    assert await posted(server, '{"update_id": 1}', headers) == 403
    assert store.kept == []


@pytest.mark.parametrize("body", ["", "{", "[]", "{}", '{"update_id": "x"}', "[" * 100_000])
async def test_what_is_no_update_is_refused(hooked: tuple[TestServer, Store], body: str) -> None:
    """400, and nothing stored."""
    server, store = hooked
    assert await posted(server, body, {SECRET_HEADER: SECRET}) == 400
    assert store.kept == []


def test_a_webhook_without_a_secret_is_refused() -> None:
    """It would let anybody write into the inbox."""
    with pytest.raises(ValueError, match="secret"):
        telegram_webhook("", Store())


@pytest.mark.parametrize(
    ("settings", "names"),
    [
        ({"token": ""}, "telegram_token"),
        ({"token": "no token"}, "telegram_token"),
        ({"token": "1:a", "webhook_url": "https://x"}, "telegram_webhook_secret"),
        ({"token": "1:a", "webhook_secret": "s"}, "public_url"),
        ({"token": "1:a", "webhook_secret": "short", "webhook_url": "https://x"}, "16 to 256"),
        ({"token": "1:a", "webhook_secret": "with a space or two", "webhook_url": "https://x"}, "16 to 256"),
        ({"token": "1:a", "poll_s": "soon"}, "poll_s"),
    ],
)
def test_wrong_settings_are_named(settings: dict[str, str], names: str) -> None:
    """Before anything is sent."""
    with pytest.raises(WrongSettingsError, match=names):
        make(settings)
