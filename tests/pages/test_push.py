"""Web push on the page: switched on by hand and bound to its person; the worker shows a notice and opens the page."""

from __future__ import annotations

import base64
import json
from datetime import timedelta
from typing import Any

import aiohttp
import pytest
from playwright.async_api import Browser, expect

from bot.channels.push import new_key, public_key
from server.app import Options
from server.facts.entry import Kind
from tests.pages.conftest import Site
from tests.pages.test_browser import PHONE, _page, browser, controlled

__all__ = ["browser"]
KEY = public_key(new_key())
SUBSCRIPTION = {
    "endpoint": "https://push.example.org/box/1",
    "p256dh": base64.urlsafe_b64encode(bytes(65)).rstrip(b"=").decode(),
    "auth": base64.urlsafe_b64encode(bytes(16)).rstrip(b"=").decode(),
}


@pytest.fixture
def options() -> Options:
    """Those of a server that sends push."""
    return Options(live=False, push_key=KEY)


async def _post(site: Site, person: str, path: str, body: dict[str, str]) -> int:
    cookies = {"stilepost": await site.token(person)}
    async with (
        aiohttp.ClientSession(cookies=cookies, headers={"Origin": site.url}) as session,
        session.post(site.url + path, json=body) as reply,
    ):
        return reply.status


async def _addresses(site: Site, person: str) -> list[str]:
    return [a.address for a in await site.parts.journal.addresses(person) if a.channel == "push"]


async def test_whoever_switches_it_on_is_sent_notices_there(site: Site) -> None:
    """An alarm is queued on the browser's address, before the open page; switched off, no more."""
    assert await _post(site, "ines", "/v1/push", SUBSCRIPTION) == 204
    assert await _post(site, "ines", "/v1/push", SUBSCRIPTION) == 204, (
        "every opening of the page says it again"
    )
    [address] = await _addresses(site, "ines")
    assert json.loads(address) == SUBSCRIPTION
    site.clock.advance(timedelta(minutes=1))
    await site.report(Kind.ASKED_FOR_HELP, words="fell")
    server = await site.parts.journal.server()
    owed = await site.parts.journal.claim(["push"], site.clock.now(), holder="test", server=server)
    assert any(d.address == address for d in owed)
    assert await _post(site, "ines", "/v1/push/off", SUBSCRIPTION) == 204
    assert await _addresses(site, "ines") == []


async def test_a_phone_handed_on_is_its_new_persons(site: Site) -> None:
    """Somebody else logged in there: the one before is told nothing on it any more."""
    await _post(site, "ines", "/v1/push", SUBSCRIPTION)
    assert await _post(site, "ana", "/v1/push", SUBSCRIPTION) == 204
    assert await _addresses(site, "ines") == []
    assert len(await _addresses(site, "ana")) == 1


@pytest.mark.parametrize(
    "wrong",
    [
        {"endpoint": "http://push.example.org/x"},
        {"endpoint": "https://push.example.org"},
        {"p256dh": ""},
        {"auth": "<b>"},
    ],
)
async def test_what_is_no_subscription_is_refused(site: Site, wrong: dict[str, str]) -> None:
    """And nothing is bound."""
    assert await _post(site, "ana", "/v1/push", SUBSCRIPTION | wrong) == 422
    assert await _addresses(site, "ana") == []


async def test_a_stranger_binds_nothing(site: Site) -> None:
    """Without a token, and from another site's page with one."""
    async with (
        aiohttp.ClientSession() as session,
        session.post(site.url + "/v1/push", json=SUBSCRIPTION) as reply,
    ):
        assert reply.status == 401
    cookies = {"stilepost": await site.token("ana")}
    headers = {"Origin": "https://evil.example"}
    async with (
        aiohttp.ClientSession(cookies=cookies, headers=headers) as session,
        session.post(site.url + "/v1/push", json=SUBSCRIPTION) as reply,
    ):
        assert reply.status == 403
    assert await _addresses(site, "ana") == []


async def test_the_page_says_what_push_cannot_promise(site: Site) -> None:
    """Beside the switch, before it is pressed; with the key to subscribe with."""
    cookies = {"stilepost": await site.token("ana")}
    async with aiohttp.ClientSession(cookies=cookies) as session, session.get(site.url) as reply:
        html = await reply.text()
    assert f'data-key="{KEY}"' in html
    assert "promise that: the maker of the browser passes them on" in html
    assert "Nobody counts as reached until they answer" in html


@pytest.mark.parametrize("options", [Options(live=False)])
async def test_without_a_key_there_is_no_switch(site: Site) -> None:
    """A server that sends no push offers none, and takes no subscription."""
    cookies = {"stilepost": await site.token("ana")}
    async with aiohttp.ClientSession(cookies=cookies) as session, session.get(site.url) as reply:
        assert 'id="push"' not in await reply.text()
    assert await _post(site, "ana", "/v1/push", SUBSCRIPTION) == 422


@pytest.mark.browser
async def test_the_worker_shows_a_notice_and_hands_it_to_the_open_page(site: Site, browser: Browser) -> None:
    """Chromium without a screen subscribes to nothing, so the message is given to its worker by the browser's own tool."""
    page, _ = await _page(browser, site, "ana", PHONE)
    await page.context.grant_permissions(["notifications"], origin=site.url)
    tool = await page.context.new_cdp_session(page)
    registered: list[dict[str, Any]] = []
    tool.on("ServiceWorker.workerRegistrationUpdated", lambda e: registered.extend(e["registrations"]))
    await tool.send("ServiceWorker.enable")
    await page.goto(site.url)
    await controlled(page)
    await expect(page.locator("#push button")).to_be_visible()
    said = {"text": "Leave now for Brindle Gate.", "subject": "Leave now", "short": 901, "urgent": True,
            "buttons": [[{"label": "On our way", "data": "x"}]]}  # fmt: skip
    await tool.send(
        "ServiceWorker.deliverPushMessage",
        {"origin": site.url, "registrationId": registered[-1]["registrationId"], "data": json.dumps(said)},
    )
    await page.click("nav.bar a[href='#chat']")
    notice = page.locator("#talk li[data-short='901']")
    await expect(notice).to_contain_text("Leave now for Brindle Gate.", timeout=20_000)
    await expect(notice.get_by_role("button", name="On our way")).to_be_visible()
    shown = await page.evaluate(
        "async () => (await (await navigator.serviceWorker.ready).getNotifications()).map((n) => [n.title, n.body, n.tag])"
    )
    assert shown == [["Leave now", "Leave now for Brindle Gate.", "notice-901"]]
