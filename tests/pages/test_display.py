"""The page for every eye and on paper: how much it weighs, the sheet, the display by choice, what axe finds."""

from __future__ import annotations

import io
import json
import re
from importlib import resources

import aiohttp
import pytest
from playwright.async_api import Browser, Page
from pypdf import PdfReader

from tests.pages.conftest import EVENT, Site
from tests.pages.test_browser import PHONE, _page, browser

__all__ = ["browser"]
FIRST_VIEW_BYTES = 60_000


async def test_the_first_view_is_small_and_all_from_here(site: Site) -> None:
    """Page, style, scripts and mark together, as they go over the line."""
    cookies = {"stilepost": await site.token("ana")}
    async with aiohttp.ClientSession(cookies=cookies) as session, session.get(site.url + "/") as reply:
        page = await reply.text()
    async with (
        aiohttp.ClientSession(cookies=cookies, auto_decompress=False) as session,
        session.get(site.url + "/") as reply,
    ):
        total = len(await reply.read())
        for path in set(re.findall(r'(?:src|href)="(/[^"]+\.(?:js|css|svg|webmanifest))"', page)):
            async with session.get(site.url + path) as found:
                assert found.status == 200
                total += len(await found.read())
    assert total < FIRST_VIEW_BYTES


async def test_the_sheet_is_for_whoever_asks(site: Site) -> None:
    """Ana's has her meeting, numbers and cards; a stranger's has nothing."""
    async with (
        aiohttp.ClientSession(cookies={"stilepost": await site.token("ana")}) as session,
        session.get(f"{site.url}/sheet/{EVENT}") as reply,
    ):
        text = await reply.text()
    for wanted in ("Brindle Gate", "head torch", "+44 1632 960100", "hot spot or blister", "As it stands"):
        assert wanted in text
    async with aiohttp.ClientSession() as session, session.get(f"{site.url}/sheet/{EVENT}") as reply:
        assert "Brindle" not in await reply.text()


async def test_the_sheet_is_there_to_print(site: Site) -> None:
    """As PDF on either paper, linked from the sheet; for those of the race only."""
    path = f"{site.url}/sheet/{EVENT}/paper.pdf"
    async with aiohttp.ClientSession(cookies={"stilepost": await site.token("ana")}) as session:
        async with session.get(f"{site.url}/sheet/{EVENT}") as reply:
            assert f'href="/sheet/{EVENT}/paper.pdf"' in await reply.text()
        for query, width in (("", 595), ("?size=letter", 612)):
            async with session.get(path + query) as reply:
                assert reply.content_type == "application/pdf"
                first = PdfReader(io.BytesIO(await reply.read())).pages[0]
            assert round(first.mediabox.width) == width
            assert "Brindle Gate" in first.extract_text()
    async with aiohttp.ClientSession() as session, session.get(path) as reply:
        assert reply.content_type == "text/html"
        assert b"Brindle" not in await reply.read()


async def serious(page: Page) -> list[str]:
    """What axe-core finds on the page as it is shown now that is serious or critical."""
    axe = resources.files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8")
    await page.evaluate(axe + ";0")
    result = await page.evaluate("axe.run(document, {resultTypes: ['violations']})")
    bad = [v for v in result["violations"] if v["impact"] in ("serious", "critical")]
    return [f"{v['id']}: {v['nodes'][0]['html'][:120]}" for v in bad]


@pytest.mark.browser
async def test_axe_finds_nothing_serious_in_any_display(site: Site, browser: Browser) -> None:
    """axe-core over every place, by day, dark and red: no finding that is serious or critical."""
    page, _ = await _page(browser, site, "ines", PHONE)
    await page.goto(site.url)
    await page.wait_for_selector(".live")
    found: dict[str, list[str]] = {}
    for look in ("day", "dark", "red"):
        await page.select_option("#look", look)
        for place in ("now", "plan", "chat", "people"):
            await page.click(f"nav.bar a[href='#{place}']")
            if bad := await serious(page):
                found[f"{look} {place}"] = bad
    assert found == {}, json.dumps(found, indent=1)
    await page.reload()
    assert await page.evaluate("document.documentElement.dataset.look") == "red"


@pytest.mark.browser
async def test_large_text_breaks_nothing(site: Site, browser: Browser) -> None:
    """At 200% text nothing runs out of the screen, in any place."""
    page, _ = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url)
    await page.wait_for_selector(".live")
    await page.evaluate("document.documentElement.style.fontSize = '34px'")
    for place in ("now", "plan", "chat", "people"):
        await page.evaluate("(p) => { location.hash = p; }", place)
        await page.wait_for_timeout(100)
        wide = await page.evaluate(
            """() => [...document.querySelectorAll("body *")]
              .filter((e) => e.getBoundingClientRect().right > innerWidth + 1 && !e.closest("figure, svg"))
              .map((e) => e.tagName + "." + e.className + ": " + e.textContent.slice(0, 30))"""
        )
        assert await page.evaluate("document.documentElement.scrollWidth") <= 390, (place, wide)
        heights = await page.locator("nav.bar a").evaluate_all("all => all.map((a) => a.offsetHeight)")
        assert max(heights) < 2 * 34 * 1.45, "no word of the four places is broken in two"


@pytest.mark.browser
async def test_what_the_browser_draws_itself_follows_the_display(site: Site, browser: Browser) -> None:
    """Lists that open, boxes to tick and bars to scroll are no white patch in the dark, whatever the device is set to."""
    page, _ = await _page(browser, site, "ana", PHONE)
    await page.emulate_media(color_scheme="light")
    await page.goto(site.url)
    await page.wait_for_selector(".live")
    for look, scheme in (("red", "dark"), ("day", "light"), ("dark", "dark")):
        await page.select_option("#look", look)
        assert await page.evaluate("getComputedStyle(document.documentElement).colorScheme") == scheme
    await page.select_option("#look", "red")
    box = "getComputedStyle(document.getElementById('large')).backgroundColor"
    assert await page.evaluate(box) == "rgb(20, 0, 0)"


@pytest.mark.browser
async def test_the_chat_ends_with_what_was_said_last(site: Site, browser: Browser) -> None:
    """On a phone nothing stands below the field, and an answer that has come is whole above it."""
    page, _ = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url + "/#chat")
    await page.wait_for_selector(".live")
    assert not await page.locator("footer").is_visible()
    for question in ("where is she", "what do I have to do"):
        await page.fill("#text", question)
        await page.press("#text", "Enter")
        await (
            page.locator("#talk li.mine", has_text=question)
            .locator("xpath=following-sibling::li")
            .first.wait_for()
        )
    gap = await page.evaluate(
        """document.getElementById("say").getBoundingClientRect().top
          - document.querySelector("#talk li:last-child").getBoundingClientRect().bottom"""
    )
    assert gap >= 0
