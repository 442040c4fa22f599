"""The pages in a real browser: a phone in the dark and a laptop, joining, chatting, and keeping fresh."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from datetime import timedelta
from pathlib import Path

import pytest
from playwright.async_api import Browser, Page, async_playwright, expect
from playwright.async_api import Error as PlaywrightError

from server.facts.entry import Kind
from tests.pages.conftest import EVENT, Site

pytestmark = pytest.mark.browser
PHONE, LAPTOP = {"width": 390, "height": 844}, {"width": 1280, "height": 860}


@pytest.fixture
async def browser() -> AsyncIterator[Browser]:
    async with async_playwright() as playwright:
        opened = await playwright.chromium.launch(
            executable_path="/usr/bin/chromium", args=["--disable-dev-shm-usage"]
        )
        yield opened
        await opened.close()


async def _page(
    browser: Browser, site: Site, person: str | None, size: dict[str, int]
) -> tuple[Page, list[str]]:
    context = await browser.new_context(
        viewport=size,  # type: ignore[arg-type]
        color_scheme="dark",
        geolocation={"latitude": 54.8, "longitude": -2.3},
        permissions=["geolocation"],
    )
    if person:
        cookie = {
            "name": "stilepost",
            "value": await site.token(person),
            "url": site.url,
            "sameSite": "Strict",
        }
        await context.add_cookies([cookie])  # type: ignore[list-item]
    page = await context.new_page()
    wrong: list[str] = []
    page.on("console", lambda m: wrong.append(m.text) if m.type in ("error", "warning") else None)
    page.on("pageerror", lambda e: wrong.append(str(e)))
    page.on("request", lambda r: None if r.url.startswith((site.url, "data:")) else wrong.append(r.url))
    return page, wrong


@pytest.mark.parametrize("size", [PHONE, LAPTOP], ids=["phone", "laptop"])
async def test_the_board_fits_and_breaks_nothing(
    site: Site, browser: Browser, tmp_path: Path, size: dict[str, int]
) -> None:
    """No sideways scrolling, no script error, nothing blocked by the policy, nothing fetched elsewhere."""
    page, wrong = await _page(browser, site, "ana", size)
    await page.goto(site.url)
    await page.wait_for_selector(".fact")
    await page.screenshot(path=tmp_path / "board.png", full_page=True)
    assert await page.evaluate("document.documentElement.scrollWidth") <= size["width"]
    size_px = await page.evaluate("parseFloat(getComputedStyle(document.querySelector('.time')).fontSize)")
    assert size_px >= 32
    assert wrong == []


async def test_a_report_freshens_the_open_page(site: Site, browser: Browser) -> None:
    """Somebody else's report is on the board within seconds, without a reload."""
    page, _ = await _page(browser, site, "ines", PHONE)
    await page.goto(site.url)
    await expect(page.locator(".fact").first).to_contain_text("Skelter Mill", timeout=10_000)
    site.clock.advance(timedelta(hours=3))
    await site.report(Kind.IN, "chapel")
    await expect(page.locator(".fact").first).to_contain_text("Corrie Chapel", timeout=10_000)


async def test_joining_by_link_then_chatting(site: Site, browser: Browser, tmp_path: Path) -> None:
    """The link's code is asked about, taken, and hidden; a question is answered, a place is shared."""
    code = await site.parts.journal.invite("ana", EVENT, "t", site.clock.now(), timedelta(hours=1))
    page, wrong = await _page(browser, site, None, PHONE)
    await page.goto(f"{site.url}/join#{code}")
    await page.wait_for_selector("#yes:visible")
    assert "Ana" in await page.inner_text("#you")
    assert code not in page.url
    await page.click("#yes")
    await page.wait_for_selector(".fact")
    await page.click("nav.bar a[href='#chat']")
    await page.fill("#text", "where is she")
    await page.press("#text", "Enter")
    await expect(page.locator("#talk").first).to_contain_text("Skelter Mill", timeout=10_000)
    await page.click("#place")
    await expect(page.locator("#talk li.mine")).to_have_count(2)
    await expect(page.locator("#talk li.told").last).not_to_be_empty()
    await page.screenshot(path=tmp_path / "chat.png", full_page=True)
    assert wrong == []


async def test_a_stop_is_logged_by_taps_one_thing_after_the_other(site: Site, browser: Browser) -> None:
    """A tap on one thing leaves the others to be tapped; of how much there is one."""
    page, _ = await _page(browser, site, "ana", PHONE)
    await page.goto(f"{site.url}#chat")
    await page.fill("#text", "log")
    await page.press("#text", "Enter")
    talk = page.locator("#talk")
    await talk.get_by_role("button", name="Log the stop").last.click(timeout=10_000)
    await talk.get_by_role("button", name="Drank", exact=True).last.click(timeout=10_000)
    await talk.get_by_role("button", name="drank 500 ml").click(timeout=10_000)
    await expect(talk.get_by_role("button", name="drank 750 ml")).to_be_disabled()
    await talk.get_by_role("button", name="Ate", exact=True).first.click(timeout=10_000)
    await talk.get_by_role("button", name="nothing eaten").click(timeout=10_000)
    await expect(talk.get_by_text("Logged for Maren: nothing eaten")).to_be_visible(timeout=10_000)
    state = await site.parts.journal.entries(EVENT)
    logged = [(x.item.value, x.amount) for e in state for x in e.logged]
    assert ("drank", 500.0) in logged


async def test_an_alarm_shows_and_is_answered_by_button(site: Site, browser: Browser) -> None:
    """An alarm comes as a message with buttons; pressing one holds the alarm on everybody's board."""
    page, _ = await _page(browser, site, "ines", PHONE)
    await page.goto(site.url)
    await expect(page.locator("#stale")).to_be_hidden()
    await page.wait_for_timeout(300)
    site.clock.advance(
        timedelta(seconds=5)
    )  # what was owed when the page opened went first, and a chat rests for a second
    await site.report(Kind.ASKED_FOR_HELP, words="fell")
    card = page.locator("#board .alarm")
    await card.wait_for(timeout=10_000)
    top = await card.evaluate("e => [e.getBoundingClientRect().top, innerHeight]")
    assert top[0] < 60, "it stands above everything"
    numbers = await card.locator("a[href^='tel:']").all_inner_texts()
    assert numbers[0] == "Emergency 112"
    assert numbers[1].startswith("Race control")
    assert numbers[-1].startswith("Maren")
    await card.get_by_role("button", name="I have it").click()
    await expect(card).to_contain_text("Ines has answered", timeout=10_000)
    await expect(page.locator("#talk li.mine")).to_have_text("I have it")


async def test_on_a_phone_four_places_one_at_a_time_and_without_a_script_all_of_them(
    site: Site, browser: Browser
) -> None:
    """The bar leads to each; the first sentence and its button stay; what comes in unread is counted; no script: a page."""
    page, wrong = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url)
    await page.wait_for_selector(".live")
    for place in ("plan", "chat", "people", "now"):
        await page.click(f"nav.bar a[href='#{place}']")
        for other in ("now", "plan", "chat", "people"):
            await expect(page.locator(f"#{other}")).to_be_visible(visible=other == place)
        await expect(page.locator(".do")).to_be_visible()
        assert await page.evaluate("document.documentElement.scrollWidth") <= 390
    assert await page.evaluate("document.documentElement.scrollHeight") < 2000
    await expect(page.locator("#stale")).to_be_hidden()
    await page.wait_for_timeout(300)
    site.clock.advance(
        timedelta(seconds=5)
    )  # what was owed when the page opened went first, and a chat rests for a second
    await site.report(Kind.ASKED_FOR_HELP, by="maren", words="fell")
    await expect(page.locator("#unread")).to_have_text("1", timeout=10_000)
    await page.click("nav.bar a[href='#chat']")
    await expect(page.locator("#unread")).to_be_hidden()
    assert wrong == []
    bare = await browser.new_context(viewport={"width": 390, "height": 844}, java_script_enabled=False)
    await bare.add_cookies(await page.context.cookies())  # type: ignore[arg-type]
    plain = await bare.new_page()
    await plain.goto(site.url)
    for place in ("#now", "#plan", "#chat", "#people"):
        await expect(plain.locator(place)).to_be_visible()


@pytest.mark.parametrize("size", [{"width": 1440, "height": 900}], ids=["wide"])
async def test_on_a_wide_screen_the_places_stand_side_by_side(
    site: Site, browser: Browser, size: dict[str, int]
) -> None:
    """Now, plan and chat beside one another, no bar."""
    page, _ = await _page(browser, site, "jonas", size)
    await page.goto(site.url)
    await page.wait_for_selector(".live")
    # At one moment: what has been drawn anew meanwhile lies nowhere.
    lefts = await page.evaluate(
        "['now', 'plan', 'chat'].map((id) => document.getElementById(id).getBoundingClientRect().left)"
    )
    assert lefts == sorted(set(lefts))
    await expect(page.locator("nav.bar")).to_be_hidden()


async def test_without_a_server_the_page_says_that_it_is_old(site: Site, browser: Browser) -> None:
    """A lost connection is said in words, with since when."""
    page, _ = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url)
    await page.wait_for_selector(".fact")
    await page.context.set_offline(True)
    site.parts.hub.close()
    await page.wait_for_selector("#stale:visible", timeout=10_000)
    assert "may be old" in await page.inner_text("#stale")


async def test_on_a_phone_the_course_begins_where_she_is(site: Site, browser: Browser) -> None:
    """The picture is wider than the screen: where she was last known, or may be now, is in view from the start."""
    page, wrong = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url + "/#plan")
    in_view = """() => {
      const mark = document.querySelector("figure rect.estimate, figure line.known");
      const at = mark.getBoundingClientRect(), frame = mark.closest("figure").getBoundingClientRect();
      const middle = at.left + at.width / 2;
      return frame.left <= middle && middle <= frame.right;
    }"""
    await _comes_true(page, in_view)
    assert wrong == []


async def test_what_was_said_stands_there_after_a_reload_and_not_after_logging_out(
    site: Site, browser: Browser
) -> None:
    """Question and answer are kept in the browser; whoever logs out leaves nothing behind for the next one."""
    page, wrong = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url)
    await page.click("nav.bar a[href='#chat']")
    await page.fill("#text", "where is she")
    await page.press("#text", "Enter")
    answer = page.locator("#talk li.told", has_text="Last known")
    await answer.or_(page.locator("#talk li.told", has_text="last known")).first.wait_for(timeout=10_000)
    said = await page.locator("#talk li").all_inner_texts()
    await page.reload()
    await page.wait_for_selector(".live")
    assert await page.locator("#talk li").all_inner_texts() == said
    await expect(page.locator("#talk li.mine")).to_have_text("where is she")
    await page.click("nav.bar a[href='#now']")
    await page.click("#leave")
    await page.wait_for_url(site.url + "/**")
    assert await page.evaluate("localStorage.length + sessionStorage.length") == 0
    assert wrong == []


async def test_what_is_written_without_a_connection_goes_by_itself_once_each(
    site: Site, browser: Browser
) -> None:
    """Three reports offline: shown as waiting, kept over a reload of nothing, sent once each with two tabs open, each at its
    own time; the other tab shows them too."""
    page, _ = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url + "/#chat")
    await page.wait_for_selector(".live")
    other = await page.context.new_page()
    await other.goto(site.url + "/#chat")
    await other.wait_for_selector(".live")
    await page.context.set_offline(True)
    before = len(await site.parts.journal.entries(EVENT))
    for words in ("in at chapel", "out of chapel", "in at long stile back"):
        await page.fill("#text", words)
        await page.press("#text", "Enter")
        await page.wait_for_timeout(200)
    await expect(page.locator("#talk li.waiting")).to_have_count(3)
    await expect(page.locator("#talk li.waiting").first).to_contain_text("Not sent yet, written 08:20")
    await expect(page.locator("#stale")).to_contain_text("No connection since 08:20")
    await expect(other.locator("#talk li.waiting")).to_have_count(3)
    await page.context.set_offline(False)
    await expect(page.locator("#talk li.waiting")).to_have_count(0, timeout=30_000)
    await expect(other.locator("#talk li.waiting")).to_have_count(0, timeout=30_000)
    new = (await site.parts.journal.entries(EVENT))[before:]
    told = [e for e in new if e.kind in (Kind.IN, Kind.OUT)]
    assert [(e.kind, e.point) for e in told] == [
        (Kind.IN, "chapel"),
        (Kind.OUT, "chapel"),
        (Kind.IN, "stile-back"),
    ]
    assert len({e.key for e in told}) == 3
    mine = await other.locator("#talk li.mine").all_inner_texts()
    assert mine == ["in at chapel", "out of chapel", "in at long stile back"]


async def test_one_runner_after_another_is_reported_by_bib_without_leaving_the_field(
    site: Site, browser: Browser, tmp_path: Path
) -> None:
    """The answers stand beside it, newest first, waiting ones too, and the point stays chosen, also once the board is drawn
    anew; what one of them asks is answered in the chat."""
    page, wrong = await _page(browser, site, "office", PHONE)
    await page.goto(site.url)
    await page.wait_for_selector(".live")
    await page.select_option("#where", "Corrie Chapel")
    said = page.locator("#answered li")
    await page.fill("#bib", "214")
    await page.click("button[data-bib] >> nth=0")
    await expect(page.locator("#now")).to_contain_text("Not confirmed yet", timeout=10_000)
    await expect(said).to_have_count(2, timeout=10_000)
    await page.context.set_offline(True)
    await page.fill("#bib", "999")
    await page.click("button[data-bib] >> nth=1")
    await expect(said).to_have_count(3)
    await expect(said.first).to_contain_text("999 out of Corrie Chapel")
    await expect(said.first).to_contain_text("Not sent yet")
    await page.context.set_offline(False)
    await expect(said).to_have_count(4, timeout=30_000)
    await expect(said.nth(1)).to_contain_text("999")
    await page.screenshot(path=tmp_path / "answered.png", full_page=True)
    assert await page.input_value("#bib") == ""
    assert await page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    await said.get_by_role("button", name="Right").click()
    await expect(page.locator("#talk li.mine").last).to_have_text("Right")
    await expect(page.locator("#talk li.told", has_text="Confirmed")).to_have_count(1, timeout=10_000)
    assert [w for w in wrong if "DISCONNECTED" not in w] == []


KEPT = "async () => (await (await caches.open('kept')).keys()).map((k) => new URL(k.url).pathname)"


async def _comes_true(page: Page, expression: str) -> None:
    """Asked again and again from outside: the page's policy keeps the browser's tool from asking more than once inside."""
    async with asyncio.timeout(10):
        while not await page.evaluate(expression):
            await page.wait_for_timeout(100)


async def controlled(page: Page) -> None:
    """Wait until the worker has the page."""
    await _comes_true(page, "navigator.serviceWorker.controller !== null")


async def _keeps(page: Page, path: str) -> None:
    async with asyncio.timeout(10):
        while path not in await page.evaluate(KEPT):
            await page.wait_for_timeout(100)


async def test_board_and_sheet_open_without_a_connection_until_somebody_logs_out(
    site: Site, browser: Browser
) -> None:
    """Opened again in a valley: what was last seen is there, newer than the page as it was loaded, with its age; so is the
    sheet. Who logs out leaves none of it in the browser."""
    page, _ = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url)
    await controlled(page)
    site.clock.advance(timedelta(hours=3))
    await site.report(Kind.IN, "chapel")
    await expect(page.locator(".fact").first).to_contain_text("Corrie Chapel", timeout=10_000)
    sheet = f"/sheet/{EVENT}"
    await _keeps(page, sheet)
    await page.context.set_offline(True)
    await page.reload()
    await expect(page.locator(".fact").first).to_contain_text("Corrie Chapel", timeout=10_000)
    await expect(page.locator("#stale")).to_contain_text("No connection since 11:")
    await page.goto(site.url + sheet)
    await expect(page.locator("h1").first).to_be_visible()
    await page.context.set_offline(False)
    await page.goto(site.url)
    await page.wait_for_selector(".live")
    await page.click("#leave")
    await page.wait_for_selector("#code")
    assert await page.evaluate(KEPT) == []
    await page.context.set_offline(True)
    with pytest.raises(PlaywrightError):
        await page.goto(site.url)


async def test_a_token_withdrawn_takes_what_was_kept_with_it(site: Site, browser: Browser) -> None:
    """A phone that was lost shows nothing more than the door, once it has asked the server."""
    page, _ = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url)
    await _keeps(page, "/")
    await page.context.clear_cookies()
    await page.goto(site.url)
    await page.wait_for_selector("#code")
    assert "/" not in await page.evaluate(KEPT)


async def test_half_a_sentence_is_there_after_a_reload(site: Site, browser: Browser) -> None:
    """What is being typed is nobody's to lose."""
    page, _ = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url + "/#chat")
    await page.fill("#text", "she looked tired but")
    await page.reload()
    await expect(page.locator("#text")).to_have_value("she looked tired but")
