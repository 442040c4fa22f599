"""A stand-in for Telegram's Bot API on loopback: a real HTTP server, scripted, for the real library to talk to.

It keeps to what Telegram's documentation says where our code leans on it: updates wait until asked for with a higher
offset; a second asker makes the first get 409; a webhook bars asking, is called with the secret, and is called again
until it answers 2xx; a blocked chat gives 403, a migrated group 400 with its new id. How one call fails is
scripted with `script`. Run it beside whatever is tested: `async with StandIn() as telegram`.
"""

from __future__ import annotations

import asyncio
import json
from collections import Counter, defaultdict, deque
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from typing import Any, Self

import aiohttp
from aiohttp import web

BOT_ID = 777000111
USERNAME = "stile_helper_bot"
TOKEN = f"{BOT_ID}:AAsecret-Token_of-the-stand-in"
BEGINS_AT = 1_815_000_000  # a POSIX second in 2027

Answer = Callable[[web.Request, Callable[[], Any]], Awaitable[web.StreamResponse]]
"""How a call ends: given the request and what carries the call out, the reply."""


@dataclass(frozen=True, slots=True)
class Call:
    """One call that was carried out: `params` as sent, nested values already read; `files` by field."""

    method: str
    params: dict[str, Any]
    files: dict[str, bytes] = field(default_factory=dict)
    message_id: int = 0

    @property
    def chat(self) -> str:
        """The chat it went to."""
        return str(self.params.get("chat_id", ""))

    @property
    def text(self) -> str:
        """The words: of a message or of a picture."""
        return str(self.params.get("text") or self.params.get("caption") or "")


# How a call may end ----------------------------------------------------------------------------------------


async def fine(_request: web.Request, carry_out: Callable[[], Any]) -> web.StreamResponse:
    """Carried out, and said so."""
    return web.json_response({"ok": True, "result": carry_out()})


def refused(status: int, description: str, **parameters: Any) -> Answer:
    """Not carried out, with a status and Telegram's form of an error."""

    async def answer(_request: web.Request, _carry_out: Callable[[], Any]) -> web.StreamResponse:
        body: dict[str, Any] = {"ok": False, "error_code": status, "description": description}
        if parameters:
            body["parameters"] = parameters
        return web.json_response(body, status=status)

    return answer


async def not_json(_request: web.Request, carry_out: Callable[[], Any]) -> web.StreamResponse:
    """Carried out, but answered with a page: a proxy's, say."""
    carry_out()
    return web.Response(text="<html>hello</html>", content_type="text/html")


async def bad_gateway(_request: web.Request, carry_out: Callable[[], Any]) -> web.StreamResponse:
    """Carried out, but the way back failed."""
    carry_out()
    return web.Response(status=502, text="<html>Bad Gateway</html>")


async def not_ok(_request: web.Request, _carry_out: Callable[[], Any]) -> web.StreamResponse:
    """200, yet 'ok' is false."""
    return web.json_response({"ok": False, "description": "strange"})


async def another_shape(_request: web.Request, carry_out: Callable[[], Any]) -> web.StreamResponse:
    """Carried out, with a result that is no message."""
    carry_out()
    return web.json_response({"ok": True, "result": ["?"]})


async def lost_reply(request: web.Request, carry_out: Callable[[], Any]) -> web.StreamResponse:
    """Carried out, and the connection cut before a word came back."""
    carry_out()
    assert request.transport is not None
    request.transport.abort()
    return web.Response()


def held(arrived: asyncio.Event, go_on: asyncio.Event) -> Answer:
    """Carried out; `arrived` is set, and the answer waits for `go_on`: a moment to kill somebody in."""

    async def answer(_request: web.Request, carry_out: Callable[[], Any]) -> web.StreamResponse:
        result = carry_out()
        arrived.set()
        await go_on.wait()
        return web.json_response({"ok": True, "result": result})

    return answer


class StandIn:
    """The stand-in. `sent` is every message and picture carried out, `calls` every other call;
    `asked` counts calls by method, carried out or not."""

    def __init__(self, token: str = TOKEN, port: int = 0) -> None:
        self.token = token
        self.port = port
        self.sent: list[Call] = []
        self.calls: list[Call] = []
        self.blocked: set[str] = set()
        self.migrated: dict[str, int] = {}
        self.webhook: dict[str, str] = {}
        self.files: dict[str, bytes] = {}
        self.offsets: list[int | None] = []
        self.conflicts = 0
        self.asked: Counter[str] = Counter()
        self._waiting: dict[int, dict[str, Any]] = {}
        self._next_update = 5000
        self._next_message = 100
        self._scripts: dict[str, deque[Answer]] = defaultdict(deque)
        self._new = asyncio.Condition()
        self._asking = 0
        self._runner: web.AppRunner | None = None

    # Life ----------------------------------------------------------------------------------------------

    async def __aenter__(self) -> Self:
        app = web.Application(client_max_size=20 * 2**20)
        app.router.add_post("/bot{token}/{method}", self._call)
        app.router.add_get("/file/bot{token}/{path:.+}", self._file)
        self._runner = web.AppRunner(app, shutdown_timeout=0.1, access_log=None)
        await self._runner.setup()
        site = web.TCPSite(self._runner, "127.0.0.1", self.port)
        await site.start()
        self.port = self._runner.addresses[0][1]
        return self

    async def __aexit__(self, *_: object) -> None:
        await self.stop()

    async def stop(self) -> None:
        """Go away: connections are refused from now on. `__aenter__` brings it back on the same port."""
        if self._runner is not None:
            runner, self._runner = self._runner, None
            async with self._new:
                self._asking += 1
                self._new.notify_all()
            await runner.cleanup()

    @property
    def base_url(self) -> str:
        """What the channel's `base_url` setting must be."""
        return f"http://127.0.0.1:{self.port}"

    # What people do ------------------------------------------------------------------------------------

    def script(self, method: str, *answers: Answer) -> None:
        """How the next calls of a method end, in order; afterwards they are fine again."""
        self._scripts[method].extend(answers)

    def no_script(self, method: str) -> None:
        """What was scripted for a method and has not happened does not happen any more."""
        self._scripts[method].clear()

    async def put(self, **update: Any) -> int:
        """An update of any kind happens; returns its id."""
        self._next_update += 1
        async with self._new:
            self._waiting[self._next_update] = {"update_id": self._next_update, **update}
            self._new.notify_all()
        return self._next_update

    async def say(self, text: str, user: int = 41, **more: Any) -> int:
        """Somebody writes to the bot in their private chat."""
        return await self.put(message=self.message(user, text=text, **more))

    async def press(self, data: str, user: int = 41, message_id: int = 99) -> int:
        """Somebody presses a button under a message of ours."""
        under = {**self.message(user, text="?"), "message_id": message_id}
        query = {
            "id": str(9000 + self._next_update),
            "from": person(user),
            "chat_instance": "1",
            "data": data,
        }
        return await self.put(callback_query={**query, "message": under})

    def message(self, user: int, chat: dict[str, Any] | None = None, **content: Any) -> dict[str, Any]:
        """A message as Telegram gives it."""
        self._next_message += 1
        return {
            "message_id": self._next_message,
            "date": BEGINS_AT,
            "chat": chat or {"id": user, "type": "private", "first_name": f"P{user}"},
            "from": person(user),
            **content,
        }

    @property
    def unconfirmed(self) -> list[int]:
        """Ids of the updates that still wait here."""
        return sorted(self._waiting)

    async def push(self, *, tries: int = 5) -> list[int]:
        """Call the webhook with everything that waits, as Telegram does; the statuses that came back."""
        statuses: list[int] = []
        async with aiohttp.ClientSession() as session:
            for update_id in self.unconfirmed:
                for _ in range(tries):
                    headers = {"X-Telegram-Bot-Api-Secret-Token": self.webhook.get("secret_token", "")}
                    body = self._waiting[update_id]
                    async with session.post(self.webhook["url"], json=body, headers=headers) as answer:
                        statuses.append(answer.status)
                    if 200 <= statuses[-1] < 300:
                        del self._waiting[update_id]
                        break
        return statuses

    async def _file(self, request: web.Request) -> web.StreamResponse:
        found = self.files.get(request.match_info["path"])
        return web.Response(status=404) if found is None else web.Response(body=found)

    # The API -------------------------------------------------------------------------------------------

    async def _call(self, request: web.Request) -> web.StreamResponse:
        if request.match_info["token"] != self.token:
            return await refused(401, "Unauthorized")(request, dict)
        method = request.match_info["method"]
        params, files = await _read(request)
        self.asked[method] += 1
        if method == "getUpdates" and not self._scripts[method]:
            return await self._get_updates(request, params)

        def carry_out() -> Any:
            return self._carry_out(method, params, files)

        if self._scripts[method]:
            return await self._scripts[method].popleft()(request, carry_out)
        chat = str(params.get("chat_id", ""))
        if chat in self.blocked:
            return await refused(403, "Forbidden: bot was blocked by the user")(request, carry_out)
        if chat in self.migrated:
            new = self.migrated[chat]
            why = "Bad Request: group chat was upgraded to a supergroup chat"
            return await refused(400, why, migrate_to_chat_id=new)(request, carry_out)
        return await fine(request, carry_out)

    def _carry_out(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> Any:
        if method in ("sendMessage", "sendPhoto"):
            self._next_message += 1
            call = Call(method, params, files, self._next_message)
            self.sent.append(call)
            chat = {"id": int(params["chat_id"]), "type": "private"}
            return {"message_id": call.message_id, "date": BEGINS_AT, "chat": chat, "text": call.text}
        self.calls.append(Call(method, params, files))
        if method == "getMe":
            return {"id": BOT_ID, "is_bot": True, "first_name": "Stile", "username": USERNAME}
        if method == "getFile":
            path = f"photos/{params['file_id']}.jpg"
            return {"file_id": params["file_id"], "file_unique_id": "u", "file_path": path}
        if method == "setWebhook":
            self.webhook = {k: str(v) for k, v in params.items()}
        if method == "deleteWebhook":
            self.webhook = {}
            if params.get("drop_pending_updates"):
                self._waiting.clear()
        if method == "getWebhookInfo":
            waiting = len(self._waiting)
            url = self.webhook.get("url", "")
            return {"url": url, "has_custom_certificate": False, "pending_update_count": waiting}
        return True

    async def _get_updates(self, request: web.Request, params: dict[str, Any]) -> web.StreamResponse:
        if self.webhook:
            return _conflict("can't use getUpdates method while webhook is active")
        offset = params.get("offset")
        self.offsets.append(offset)
        for update_id in [u for u in self._waiting if offset is not None and u < offset]:
            del self._waiting[update_id]
        async with self._new:
            self._asking += 1
            mine = self._asking
            self._new.notify_all()
            try:
                async with asyncio.timeout(float(params.get("timeout", 0))):
                    await self._new.wait_for(lambda: self._waiting or self._asking != mine)
            except TimeoutError:
                pass
            if self._asking != mine:
                # An asker that has hung up meanwhile is told, but nobody hears it.
                gone = request.transport is None or request.transport.is_closing()
                self.conflicts += not gone
                return _conflict("terminated by other getUpdates request")
            found = [self._waiting[u] for u in self.unconfirmed[: int(params.get("limit", 100))]]
        return web.json_response({"ok": True, "result": found})


def _conflict(why: str) -> web.Response:
    body = {"ok": False, "error_code": 409, "description": f"Conflict: {why}"}
    return web.json_response(body, status=409)


def person(user: int) -> dict[str, Any]:
    """A user as Telegram gives one."""
    return {"id": user, "is_bot": False, "first_name": f"P{user}", "language_code": "en"}


async def _read(request: web.Request) -> tuple[dict[str, Any], dict[str, bytes]]:
    params: dict[str, Any] = {}
    files: dict[str, bytes] = {}
    for name, value in (await request.post()).items():
        if isinstance(value, web.FileField):
            files[name] = value.file.read()
        elif isinstance(value, str):
            params[name] = _value(value)
    return params, files


def _value(text: str) -> Any:
    """Numbers, lists and objects travel as JSON; other texts as they are."""
    try:
        read = json.loads(text)
    except ValueError:
        return text
    return read if not isinstance(read, str) else text
