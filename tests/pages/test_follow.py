"""The runner's page about followers and the page they see, in a real browser."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest
from playwright.async_api import Browser, expect

from tests.pages.conftest import EVENT, Site
from tests.pages.test_browser import browser
from tests.pages.test_changing import _fits, _get, _phone
from tests.pages.test_display import serious

__all__ = ["browser"]


@pytest.mark.browser
async def test_given_by_touch_seen_by_a_stranger_and_taken_back(
    site: Site, browser: Browser, tmp_path: Path
) -> None:
    """From the board to a link; whoever has it sees points and no script, no request to anywhere else; then nothing."""
    page, wrong = await _phone(site, browser, "maren")
    await page.goto(site.url)
    await page.locator("a[href='#people']").tap()
    await page.get_by_role("link", name="Followers").tap()
    await expect(page.get_by_role("status")).to_have_text("There is no link for followers.")
    await page.get_by_role("button", name="Give a link").tap()
    link = page.locator("a[href*='/follow?t=']")
    await expect(link).to_be_visible()
    await _fits(page, tmp_path / "given.png")
    assert await serious(page) == []
    address = await link.get_attribute("href") or ""
    site.clock.advance(timedelta(minutes=45))
    stranger = await (await browser.new_context(viewport={"width": 390, "height": 844})).new_page()
    asked: list[str] = []
    stranger.on("request", lambda r: asked.append(r.url))
    await stranger.goto(address)
    await expect(stranger.locator("h1")).to_have_text("Maren – Harrow Round 100")
    await _fits(stranger, tmp_path / "seen.png")
    assert await serious(stranger) == []
    seen = await stranger.inner_text("body")
    assert "Skelter Mill" in seen
    await stranger.get_by_role("link", name="Look again").click()
    await expect(stranger.locator("h1")).to_have_text("Maren – Harrow Round 100")
    for word in ("Ana", "Jonas", "van", "Ines"):
        assert word not in seen
    assert all(u.startswith(site.url) for u in asked), asked
    await page.get_by_role("button", name="Take the link back").tap()
    await expect(page.get_by_role("status")).to_have_text("There is no link for followers.")
    await stranger.reload()
    await expect(stranger.locator("body")).to_contain_text("This link shows nothing")
    assert await stranger.locator("a").count() == 0, "who follows has no board to go back to"
    assert "Maren" not in await stranger.inner_text("body")
    assert wrong == []


async def test_nobody_but_the_runner_has_the_page(site: Site) -> None:
    for who in ("ana", "ines", "tomas"):
        assert "/followers/" not in (await _get(site, who, "/"))[1]
        assert (await _get(site, who, f"/followers/{EVENT}"))[0] == 403
