"""What comes by the server's own doors, and what somebody unknown is told."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta
from typing import Any

import aiohttp

from bot.channels.telegram import Telegram
from bot.channels.telegram.listening import Hook
from bot.hooks import TEXT_SCOPE
from tests.channels.conftest import EVENT, EchoDesk, Server, until
from tests.channels.standin import StandIn
from tests.channels.working import (
    MakeWorker,
    all_done,
    at_message,
    texts,
)


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
    assert texts(standin, "43")[0].startswith("Hello Tomas, you are safety contact for ")
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
