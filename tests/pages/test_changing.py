"""The plan changed on its sheet during the race, in a real browser: by touch, by keyboard; who may not has no such sheet."""

from __future__ import annotations

from pathlib import Path

import aiohttp
import pytest
from playwright.async_api import Browser, Page, expect

from server.watch.notice import NewVersionValues, NoticeKind
from tests.pages.conftest import EVENT, Site
from tests.pages.test_browser import browser

__all__ = ["browser"]
WIDTH = 390


async def _told(site: Site) -> dict[str, list[str]]:
    """What of their meetings changed, by person, as far as anybody was told."""
    await site.parts.ticker.tick(site.clock.now())
    found: dict[str, list[str]] = {}
    for m in await site.parts.journal.made(EVENT):
        if m.notice.key.kind is NoticeKind.NEW_VERSION:
            assert isinstance(m.notice.values, NewVersionValues)
            items = [f"{i.what}: {i.was} > {i.now}" for i in m.notice.values.items]
            found.setdefault(m.notice.key.person, []).extend(items)
    return found


async def _get(site: Site, person: str, path: str) -> tuple[int, str]:
    headers = {"Authorization": f"Bearer {await site.token(person)}"}
    async with aiohttp.ClientSession(headers=headers) as http, http.get(site.url + path) as reply:
        return reply.status, await reply.text()


async def test_who_may_change_the_plan_has_the_sheet_and_nobody_else(site: Site) -> None:
    """Crew see the link at each meeting, on the board and not on the printed sheet; a pacer sees none and gets no sheet."""
    _, board = await _get(site, "ana", "/")
    assert f"/change/{EVENT}?meeting=brindle-maren" in board
    assert "/change/" not in (await _get(site, "ana", f"/sheet/{EVENT}"))[1]
    assert "/change/" not in (await _get(site, "tomas", "/"))[1]
    assert (await _get(site, "tomas", f"/change/{EVENT}"))[0] == 403
    status, sheet = await _get(site, "ana", f"/change/{EVENT}?meeting=brindle-maren")
    assert status == 200
    assert "Brindle Gate, Maren" in sheet


async def test_a_form_of_another_page_changes_nothing(site: Site) -> None:
    """The cookie goes along, the origin is not ours."""
    headers = {"Authorization": f"Bearer {await site.token('ana')}", "Origin": "https://elsewhere.example"}
    body = {"what": "skip", "meeting": "brindle-maren", "do": "yes"}
    url = f"{site.url}/change/{EVENT}"
    async with aiohttp.ClientSession(headers=headers) as http, http.post(url, data=body) as reply:
        assert reply.status == 403
    assert len(await site.parts.journal.event_versions(EVENT)) == 1


async def _pressed(site: Site, *sent: tuple[str, str]) -> str:
    headers = {"Authorization": f"Bearer {await site.token('ana')}", "Origin": site.url}
    url, body = f"{site.url}/change/{EVENT}", [("runner", "maren"), *sent]
    async with aiohttp.ClientSession(headers=headers) as http, http.post(url, data=body) as reply:
        return await reply.text()


async def test_what_was_chosen_stands_there_once_it_is_refused(site: Site) -> None:
    """Nobody ticks it all again at night to change the one thing that was wrong."""
    crew = [("crew", who) for who in ("jonas", "tomas", "ines", "ana", "nobody")]
    sheet = await _pressed(site, ("what", "who goes"), ("meeting", "brindle-maren"), ("car", "estate"), *crew)
    assert "That can’t be" in sheet
    assert 'value="jonas" checked' in sheet
    assert '<option value="estate" selected>' in sheet
    sheet = await _pressed(site, ("what", "person"), ("drives", "yes"), ("car", "estate"))
    assert "That can’t be" in sheet
    assert 'name="drives" value="yes" checked' in sheet
    assert sheet.count('<option value="estate" selected>') == 1, "of the form that was pressed alone"


async def test_a_change_refused_in_one_form_takes_no_car_out_of_another(site: Site) -> None:
    """The next press under 'who goes' would have dropped it."""
    van = '<option value="van" selected>'
    assert van in (await _get(site, "ana", f"/change/{EVENT}?meeting=ember-maren"))[1]
    sheet = await _pressed(site, ("what", "move"), ("meeting", "ember-maren"), ("point", "brindle"))
    assert "That can’t be" in sheet
    assert van in sheet


async def test_the_drive_to_a_meeting_is_confirmed_on_its_sheet(site: Site) -> None:
    """What is known of it stands there, what is typed is looked at first, and what can't be read says so."""
    path = f"/change/{EVENT}?meeting=brindle-maren"
    sheet = (await _get(site, "ana", path))[1]
    assert "The drive there from Skelter Mill" in sheet
    assert "41 min, somebody stands by it" in sheet
    drive = (("what", "drive time"), ("meeting", "brindle-maren"), ("start", "mill"))
    looked = await _pressed(site, *drive, ("minutes", "0:55"))
    assert "was 41 min, now 55 min" in looked
    assert '<input type="hidden" name="minutes" value="55">' in looked
    assert "minutes are missing" in await _pressed(site, *drive, ("minutes", "soon"))
    done = await _pressed(site, *drive, ("minutes", "55"), ("do", "yes"), ("over", "1"))
    assert 'name="undo" value="2"' in done
    assert "55 min, somebody stands by it" in (await _get(site, "ana", path))[1]
    assert any("drive: 41 min > 55 min" in x for x in (await _told(site))["ana"])


async def _phone(site: Site, browser: Browser, who: str = "ana") -> tuple[Page, list[str]]:
    context = await browser.new_context(
        viewport={"width": WIDTH, "height": 844}, has_touch=True, is_mobile=True, color_scheme="dark"
    )
    cookie = {"name": "stilepost", "value": await site.token(who), "url": site.url, "sameSite": "Strict"}
    await context.add_cookies([cookie])  # type: ignore[list-item]
    page = await context.new_page()
    wrong: list[str] = []
    page.on("console", lambda m: wrong.append(m.text) if m.type in ("error", "warning") else None)
    page.on("pageerror", lambda e: wrong.append(str(e)))
    return page, wrong


async def _fits(page: Page, shot: Path) -> None:
    await page.screenshot(path=shot, full_page=True)
    assert await page.evaluate("document.documentElement.scrollWidth") <= WIDTH
    small = "[...document.querySelectorAll('main button, main select, main label.tick')].filter(x => x.offsetHeight < 44)"
    assert await page.evaluate(f"{small}.length") == 0


@pytest.mark.browser
async def test_a_meeting_is_moved_during_the_race_and_both_crews_are_told(
    site: Site, browser: Browser, tmp_path: Path
) -> None:
    """By touch: Ana gives the meeting at Ember Quarry to Jonas, sees what that is for whom, says yes, and takes it back;
    she, he, the pacer who rides along and the runner hear it both times."""
    page, wrong = await _phone(site, browser)
    await page.goto(f"{site.url}/change/{EVENT}?meeting=ember-maren")
    await _fits(page, tmp_path / "sheet.png")
    await page.get_by_label("Ana", exact=True).tap()
    await page.get_by_label("Jonas", exact=True).tap()
    await page.get_by_label("Car").select_option("estate")
    await page.get_by_role("button", name="See what it changes").first.tap()
    yes = page.get_by_role("button", name="Yes, change it")
    await expect(yes).to_be_visible(timeout=30_000)
    await _fits(page, tmp_path / "preview.png")
    told = await page.inner_text("main")
    assert "No longer yours: Ember Quarry, Maren" in told
    assert "no time to leave yet" in told
    assert "blue van, which does not come there now" in told
    assert await _told(site) == {}, "looking changes nothing"
    await yes.tap()
    await expect(page.get_by_role("status")).to_contain_text("Jonas", timeout=30_000)
    await _fits(page, tmp_path / "done.png")
    heard = await _told(site)
    assert set(heard) == {"ana", "jonas", "tomas", "maren"}
    assert "crew: Ana, Tomas > Jonas, Tomas" in heard["maren"]
    await page.get_by_role("button", name="Undo the change").tap()
    await expect(page.get_by_role("status")).to_contain_text("Taken back", timeout=30_000)
    assert "crew: Jonas, Tomas > Ana, Tomas" in (await _told(site))["maren"]
    versions = [await site.parts.journal.load_event(EVENT, n) for n in (1, 3)]
    assert versions[0].text == versions[1].text
    assert wrong == []


@pytest.mark.browser
async def test_a_person_is_added_and_invited_on_the_spot(
    site: Site, browser: Browser, tmp_path: Path
) -> None:
    """The QR and the link stand on the page once it counts, and open the door for the new one."""
    page, wrong = await _phone(site, browser)
    await page.goto(f"{site.url}/change/{EVENT}")
    await page.get_by_label("Name").fill("Per <b>")
    await page.get_by_role("button", name="See what it changes").nth(-2).tap()
    await page.get_by_role("button", name="Yes, change it").tap()
    link = page.locator("a[href*='/join#']")
    await expect(link).to_be_visible(timeout=30_000)
    await expect(page.get_by_alt_text("QR of the invitation of Per <b>")).to_be_visible()
    await _fits(page, tmp_path / "invited.png")
    door = await (await browser.new_context()).new_page()
    await door.goto(await link.get_attribute("href") or "")
    await expect(door.locator("body")).to_contain_text("Per <b>", timeout=30_000)
    assert wrong == []


@pytest.mark.browser
async def test_a_cut_off_is_moved_on_the_sheet_and_back(site: Site, browser: Browser, tmp_path: Path) -> None:
    """The organiser chooses it, types the time of day, sees what each hears, says yes, and takes it back; crew have no
    such form."""
    assert "cut-off has moved" not in (await _get(site, "ana", f"/change/{EVENT}"))[1]
    page, wrong = await _phone(site, browser, "office")
    await page.goto(f"{site.url}/change/{EVENT}")
    await page.get_by_label("Cut-off").select_option("ember in")
    await page.get_by_label("New time").fill("10:30")
    await _fits(page, tmp_path / "cut-off.png")
    section = page.locator("section", has=page.get_by_role("heading", name="A cut-off has moved"))
    await section.get_by_role("button").tap()
    yes = page.get_by_role("button", name="Yes, change it")
    await expect(yes).to_be_visible(timeout=30_000)
    assert "The cut-off at Ember Quarry (in) has moved from" in await page.inner_text("main")
    await _fits(page, tmp_path / "cut-off-preview.png")
    await yes.tap()
    await expect(page.get_by_role("status")).to_contain_text("Ana", timeout=30_000)
    await page.get_by_role("button", name="Undo the change").tap()
    await expect(page.get_by_role("status")).to_contain_text("Taken back", timeout=30_000)
    assert wrong == []


@pytest.mark.browser
async def test_by_keyboard_alone_and_what_can_not_be_says_why(site: Site, browser: Browser) -> None:
    """Every field and button is reached by Tab and pressed by Enter or Space; a refusal is an alert above the forms."""
    page, wrong = await _phone(site, browser)
    await page.goto(f"{site.url}/change/{EVENT}?meeting=ember-maren")
    await page.get_by_label("Ana", exact=True).focus()
    await page.keyboard.press("Space")
    for _ in range(20):
        await page.keyboard.press("Tab")
        if await page.evaluate("document.activeElement.tagName") == "BUTTON":
            break
        if await page.evaluate("document.activeElement.checked"):
            await page.keyboard.press("Space")
    await page.keyboard.press("Enter")
    alert = page.get_by_role("alert")
    await expect(alert).to_contain_text("nobody would go", timeout=30_000)
    assert len(await site.parts.journal.event_versions(EVENT)) == 1
    assert wrong == []
