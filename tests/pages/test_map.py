"""The map: the course from above with its places, a fact as a mark, the estimate as a stretch, tiles only where set."""

from __future__ import annotations

import math
import re
from datetime import timedelta

import aiohttp
import pytest
from playwright.async_api import Browser, expect

from server.course import Course, Paper, build_course, read_gpx
from server.facts.entry import Kind
from server.pages.map import geo_link
from server.pages.map_paper import WIDTH, drawn, of_course, tiles_under
from server.settings import Settings, SettingsError, read_settings
from tests.pages.conftest import DEMO, Site
from tests.pages.test_browser import PHONE, _page, browser

__all__ = ["browser"]
TILES = "https://tiles.example.org/{z}/{x}/{y}.png"


@pytest.fixture
def demo_course() -> Course:
    """The line that the demo runs on."""
    return build_course(read_gpx((DEMO / "route.gpx").read_bytes(), "route.gpx"))


async def _board(site: Site, person: str) -> tuple[str, str]:
    async with (
        aiohttp.ClientSession(cookies={"stilepost": await site.token(person)}) as session,
        session.get(site.url) as reply,
    ):
        return await reply.text(), reply.headers["Content-Security-Policy"]


def _map(html: str) -> str:
    found = re.search(r'<section class="map">.*?</section>', html, re.S)
    assert found is not None
    return found.group()


async def test_the_map_says_in_words_what_it_shows(site: Site) -> None:
    """Last fact, the stretch with its odds between two points, places with who meets her, and the way there."""
    site.clock.advance(timedelta(hours=1))
    drawing = _map((await _board(site, "ana"))[0])
    title = re.search(r"<title[^>]*>(.*?)</title>", drawing)
    assert title is not None
    assert "Last known: out of Skelter Mill" in title.group(1)
    assert "Estimate, not seen: likely between Skelter Mill and Corrie Chapel" in title.group(1)
    assert "about 8 in 10" in title.group(1)
    assert "Brindle Gate" in drawing
    assert "you meet her here" in drawing
    assert "Parking: verge below the stile" in drawing
    assert re.search(r'href="geo:54\.\d{5},-2\.\d{5}\?q=', drawing)
    assert "Navigate to the point" in drawing


async def test_the_estimate_is_a_stretch_and_only_a_fact_is_a_mark(site: Site) -> None:
    """Nothing moves on the map: between two reports the one mark stays where she was last known."""
    before = _map((await _board(site, "ana"))[0])
    site.clock.advance(timedelta(hours=1))
    after = _map((await _board(site, "ana"))[0])
    seen = re.compile(r'<g class="seen" transform="([^"]+)"')
    assert len(seen.findall(before)) == 1
    assert seen.findall(before) == seen.findall(after)
    stretch = re.compile(r'<path class="stretch" d="([^"]+)"')
    assert stretch.findall(before) != stretch.findall(after)
    marks = re.compile(r"<(?:circle|rect)[^>]*>")
    assert marks.findall(before) == marks.findall(after)


async def test_a_volunteer_sees_no_map(site: Site) -> None:
    """Nor does anybody else whose part does not follow her race."""
    html, _ = await _board(site, "office")
    assert 'class="map"' in html, "the race office organises"
    async with aiohttp.ClientSession() as session, session.get(site.url) as reply:
        assert 'class="map"' not in await reply.text()


async def test_without_a_tile_server_nothing_is_asked_of_anybody(site: Site) -> None:
    """No picture in the map, and the policy lets none in."""
    html, policy = await _board(site, "ana")
    assert "<image" not in _map(html)
    assert "img-src 'self' data:;" in policy


@pytest.mark.parametrize("settings", [Settings(map_tiles=TILES, map_tiles_credit="Tiles: <Survey>")])
async def test_tiles_come_from_the_server_that_is_set_and_are_credited(site: Site) -> None:
    """The policy lets pictures of that server in and nothing else."""
    html, policy = await _board(site, "ana")
    hrefs = re.findall(r'<image href="([^"]+)"', _map(html))
    assert 4 <= len(hrefs) <= 24
    assert all(re.fullmatch(r"https://tiles\.example\.org/\d+/\d+/\d+\.png", h) for h in hrefs)
    assert "Tiles: &lt;Survey&gt;" in html
    assert "img-src https://tiles.example.org 'self' data:;" in policy
    assert "script-src 'self';" in policy


def test_a_tile_lies_where_its_corner_is(demo_course: Course) -> None:
    """North-west corner of tile x, y at zoom z by the published formula of Web Mercator tiles (from memory)."""
    frame, _ = drawn(demo_course)
    tiles = tiles_under(frame, TILES)
    assert tiles
    for tile in tiles:
        z, x, y = (int(n) for n in re.findall(r"\d+", tile.href.removeprefix("https://tiles.example.org")))
        lon = x / 2**z * 360 - 180
        lat = math.degrees(math.atan(math.sinh(math.pi * (1 - 2 * y / 2**z))))
        assert frame.spot(lat, lon) == pytest.approx((float(tile.x), float(tile.y)), abs=0.02)


def test_the_course_fills_the_picture(demo_course: Course) -> None:
    """All of it lies inside, from edge to edge."""
    frame, corners = drawn(demo_course)
    xs, ys = zip(*(frame.at(c.east_km, c.north_km) for c in corners), strict=True)
    assert min(xs) >= 0
    assert max(xs) <= WIDTH
    assert min(ys) >= 0
    assert max(ys) <= frame.height
    assert max(xs) - min(xs) > 0.8 * WIDTH or max(ys) - min(ys) > 0.8 * frame.height
    spot = frame.spot(*of_course(demo_course, 21.0))
    assert spot == pytest.approx(frame.at(*Paper.of(demo_course).place(*of_course(demo_course, 21.0))))


def test_a_link_for_the_phones_own_program() -> None:
    """A geo: address, its name as part of the query and never of the page."""
    assert (
        geo_link(54.9, -2.6, "Mill & (weir)")
        == "geo:54.90000,-2.60000?q=54.90000,-2.60000(Mill%20%26%20%28weir%29)"
    )


@pytest.mark.parametrize(
    "address",
    [
        "tiles.example.org/{z}/{x}/{y}.png",
        "https://tiles.example.org/{z}/{x}.png",
        "https://a.b/{z}/{x}/{y}; script-src *",
    ],
)
def test_an_address_that_is_no_tile_servers_is_refused(address: str) -> None:
    """Said at the start, with how it is written: it goes into the page's policy."""
    with pytest.raises(SettingsError, match="setting map_tiles"):
        read_settings({"STILEPOST_MAP_TILES": address})


@pytest.mark.browser
async def test_the_way_is_reached_by_keyboard(site: Site, browser: Browser) -> None:
    """The list under the map opens by keyboard, its links are named by what they lead to, and the map has a name."""
    page, wrong = await _page(browser, site, "ana", PHONE)
    await page.goto(site.url + "/#plan")
    await page.wait_for_selector(".live")
    assert await page.get_by_role("img", name="Map of the course. Last known").count() == 1
    await page.locator(".stops summary").focus()
    await page.keyboard.press("Enter")
    await expect(page.locator(".stops")).to_have_attribute("open", "")
    site.clock.advance(timedelta(minutes=5))
    async with page.expect_response("**/part"):
        await site.report(Kind.IN, "stile-out")
    await expect(page.locator(".map .seen text")).to_have_text("08:25", timeout=20_000)
    await page.keyboard.press("Tab")
    named = await page.evaluate("document.activeElement.getAttribute('aria-label')")
    assert named == "Navigate to the point: Harrow Fold start, Harrow Fold finish"
    assert await page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    assert wrong == []
