"""The set-up on a phone in a real browser: a race from a made route to its invitations, by touch alone."""

from __future__ import annotations

from importlib import resources
from itertools import count
from pathlib import Path

import pytest
from playwright.async_api import Page, expect

from server.drafting.document import Document
from tests.pages.setup_race import TABLE, made_gpx
from tests.pages.test_browser import browser
from tests.pages.test_setup import Desk, desk

__all__ = ["browser", "desk"]
pytestmark = pytest.mark.browser
WIDTH, LENGTH_KM = 390, 45.9
AXE = resources.files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8")
_NUMBER = count()


async def _on(page: Page, step: str, shots: Path) -> None:
    """Look at the page as it is, then on to a step by its large button."""
    await _fits(page, shots)
    await page.locator(f'.onward button[value="{step}"]').tap()
    await page.wait_for_url(f"**/setup/{step}")


async def _fits(page: Page, shots: Path) -> None:
    number, step = next(_NUMBER), page.url.rpartition("/")[2]
    await page.screenshot(path=shots / f"{number:02d}-{step}.png", full_page=True)
    assert await page.evaluate("document.documentElement.scrollWidth") <= WIDTH
    if step == "publish":
        return
    await page.evaluate(AXE + ";0")
    result = await page.evaluate("axe.run(document, {resultTypes: ['violations']})")
    assert [v["id"] for v in result["violations"] if v["impact"] in ("serious", "critical")] == []


async def test_a_race_is_set_up_by_touch(desk: Desk, browser, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    """Only what a finger can do: tap, type, choose a file. Nothing is blocked, nothing scrolls sideways."""
    shots = tmp_path / "shots"
    context = await browser.new_context(
        viewport={"width": WIDTH, "height": 844}, has_touch=True, is_mobile=True, timezone_id="Europe/London"
    )
    page = await context.new_page()
    wrong: list[str] = []
    page.on("console", lambda m: wrong.append(m.text) if m.type in ("error", "warning") else None)
    page.on("pageerror", lambda e: wrong.append(str(e)))
    page.on("request", lambda r: None if r.url.startswith((desk.url, "data:")) else wrong.append(r.url))

    await page.goto(await desk.link())
    await page.wait_for_url("**/setup/course")
    await page.get_by_label("Name of the race").fill("Two Hills")
    await page.get_by_label("Day of the start").fill("2027-06-19")
    await page.get_by_label("Start, by").fill("05:00")
    await page.get_by_label("Time limit").fill("12")
    await page.get_by_label("Race control: number").fill("+44 1632 960001")
    await page.get_by_label("Route").set_input_files(
        {"name": "hills.gpx", "mimeType": "application/gpx+xml", "buffer": made_gpx()}
    )
    await expect(page.locator("figure svg")).to_be_visible()
    await expect(page.get_by_label("Time zone")).to_have_value("Europe/London")
    await _on(page, "points", shots)

    await page.get_by_text("Paste the race").tap()
    await page.locator("textarea").fill(TABLE)
    await page.get_by_role("button", name="Read it").tap()
    await expect(page.get_by_text("Sat 07:45")).to_be_visible()
    await _fits(page, shots)
    await page.get_by_role("button", name="That is right").tap()
    profile = page.locator("figure.tap .ground")
    await profile.scroll_into_view_if_needed()
    box = await profile.bounding_box()
    assert box is not None
    await page.touchscreen.tap(box["x"] + box["width"] * 0.4, box["y"] + box["height"] / 2)
    new = page.locator("details.thing").last
    km = float(await new.get_by_label("km").input_value())
    assert abs(km - 0.4 * LENGTH_KM) < 0.3
    await new.get_by_label("Name").fill("Cairn")
    await _on(page, "runner", shots)
    assert any(p["name"] == "Cairn" and p["km"] == km for p in Document(desk.text()).tables("points"))

    await page.get_by_label("Her name").first.fill("Maren")
    await page.get_by_label("Target").first.fill("9:00")
    await page.get_by_role("button", name="Save", exact=True).tap()
    await expect(page.get_by_role("heading", name="Timetable")).to_be_visible()
    await _on(page, "people", shots)

    for number, name, ticks in (
        (1, "Ana", ("crew", "drives")),
        (2, "Jo", ("safety contact", "calls race control")),
    ):
        row = page.locator("details.thing").nth(number)
        await row.get_by_label("Name").fill(name)
        await row.get_by_label("Telephone").fill(f"+44 1632 96001{number}")
        for tick in ticks:
            await row.get_by_label(tick, exact=True).tap()
        await page.get_by_role("button", name="one more").tap()
        await page.wait_for_load_state()
        await expect(page.locator("#another").get_by_label("Name")).to_be_in_viewport()
    await _on(page, "meetings", shots)

    await page.get_by_role("button", name="Suggest").tap()
    await expect(page.get_by_text("Estimated by distance").first).to_be_visible()
    for choice in await page.get_by_label("Who stands by it").all():
        await choice.select_option("ana")
    await page.get_by_label("Kit").first.fill("torch, warm layer")
    await page.get_by_role("button", name="Save", exact=True).tap()
    await _on(page, "check", shots)

    await expect(page.get_by_text("Nothing stands in the way")).to_be_visible()
    await _on(page, "publish", shots)
    await page.get_by_role("button", name="Publish and invite").tap()
    await expect(page.locator(".invitation img")).to_have_count(3)
    await _fits(page, shots)
    assert wrong == []
    await context.close()
