"""The set-up over its real forms: from a route to invitations, with nothing typed lost and every comment kept."""

from __future__ import annotations

import asyncio
import re
from collections.abc import AsyncIterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import aiohttp
import numpy as np
import pytest
from aiohttp import web

from server.app import Options, make_app
from server.clock import SteppedClock
from server.drafting import parcel
from server.event import parse_event
from server.event.forms import TEXT_MAX, WORDS_MAX
from server.journal import Journal
from server.pages.labels import label
from server.pages.setup import door, mending
from server.sentences import has
from server.settings import Settings
from tests.pages.setup_race import TABLE, made_gpx
from tests.paper.three_races import DAY
from tests.plan.synthetic import record, to_gpx

ROOT = Path(__file__).parents[2]
NOW = datetime(2027, 5, 1, 9, tzinfo=UTC)
RACE = {
    "name": "Two <b>Hills</b>", "day": "2027-06-19", "clock": "05:00", "zone": "Europe/London", "limit": "12",
    "control-name": "The hall", "control-phone": "+44 1632 960001", "emergency": "112",
}  # fmt: skip


class Desk:
    """A browser at the set-up of one server."""

    def __init__(self, http: aiohttp.ClientSession, url: str, folder: Path, journal: Journal) -> None:
        self.http, self.url, self.folder, self.journal = http, url, folder, journal

    async def link(self) -> str:
        return await door.make_link(self.journal, self.url, self.folder, NOW)

    async def enter(self) -> int:
        code = (await self.link()).partition("#")[2]
        async with self.http.post(f"{self.url}/setup/open", data={"code": code}, headers=self.own) as r:
            return r.status

    @property
    def own(self) -> dict[str, str]:
        return {"Origin": self.url}

    async def get(self, step: str) -> str:
        async with self.http.get(f"{self.url}/setup/{step}") as r:
            return await r.text()

    async def post(self, step: str, fields: dict[str, str] | aiohttp.FormData) -> str:
        async with self.http.post(f"{self.url}/setup/{step}", data=fields, headers=self.own) as r:
            assert r.status == 200, await r.text()
            return await r.text()

    def text(self) -> str:
        return (self.folder / "event.toml").read_text("utf-8")


@pytest.fixture
async def desk(sqlite_url: str, tmp_path: Path) -> AsyncIterator[Desk]:
    journal = await Journal.open(sqlite_url)
    app = make_app(Settings(), journal, SteppedClock(NOW), options=Options(live=False))
    runner = web.AppRunner(app, shutdown_timeout=1.0)
    await runner.setup()
    await web.TCPSite(runner, "127.0.0.1", 0).start()
    jar = aiohttp.CookieJar(unsafe=True)
    async with aiohttp.ClientSession(cookie_jar=jar) as http:
        yield Desk(http, f"http://127.0.0.1:{runner.addresses[0][1]}", tmp_path / "race", journal)
    await runner.cleanup()
    await journal.close()


def with_route(fields: dict[str, str], gpx: bytes) -> aiohttp.FormData:
    form = aiohttp.FormData(fields)
    form.add_field("route", gpx, filename="hills.gpx", content_type="application/gpx+xml")
    return form


def points_form(page: str) -> dict[str, str]:
    """The fields of the table of points as the page holds them."""
    found = dict(re.findall(r'<input type="(?:text|hidden)" name="(p\d+-\w+)" value="([^"]*)"', page))
    found |= dict.fromkeys(re.findall(r'name="(p\d+-\w+)" value="yes" checked', page), "yes")
    return {k: v.replace("&lt;", "<").replace("&gt;", ">") for k, v in found.items()}


async def to_meetings(desk: Desk) -> None:
    await desk.enter()
    await desk.post("course", with_route(RACE, made_gpx()))
    page = await desk.get("points")
    await desk.post("points", points_form(page) | {"pasted": TABLE, "do": "take"})
    await desk.post("runner", {"name": "Maren", "finish": "9", "go": "people"})
    people = {
        "p0-was": "maren", "p0-name": "Maren", "p0-phone": "+44 1632 960010",
        "p1-was": "", "p1-name": "Ana", "p1-phone": "+44 1632 960011", "p1-crew": "yes", "p1-drives": "yes",
        "p2-was": "", "p2-name": "Jo", "p2-phone": "+44 1632 960012", "p2-safety-contact": "yes", "p2-ladder": "1",
        "p2-calls": "yes", "c0-was": "", "c0-name": "Van", "c0-seats": "5",
    }  # fmt: skip
    await desk.post("people", people)
    await desk.post("meetings", {"do": "suggest"})


async def test_an_input_takes_no_more_letters_than_the_file(desk: Desk) -> None:
    """The limits of the browser's inputs are those of the event file's own keys."""
    await to_meetings(desk)
    for step, name, most in (("course", "transport", WORDS_MAX), ("course", "control-phone", TEXT_MAX),
                             ("points", "p1-name", TEXT_MAX), ("points", "p1-parking", WORDS_MAX),
                             ("runner", "past-name", TEXT_MAX), ("people", "p1-email", 254), ("people", "c0-name", TEXT_MAX),
                             ("meetings", "m0-food", WORDS_MAX)):  # fmt: skip
        assert re.search(rf'name="{name}"[^>]* maxlength="{most}"', await desk.get(step)), name


async def test_a_race_from_a_route_to_invitations(desk: Desk) -> None:
    """All seven steps; what is published is what `stilepost load` would store, and a code opens the page to its person."""
    await to_meetings(desk)
    page = await desk.get("meetings")
    guesses = re.findall(r'name="(d\d+)-guess" value="(\d+)"', page)
    assert len(guesses) == 2
    assert "Estimated by distance" in page
    ends = dict(re.findall(r'name="(d\d+-(?:from|to|guess))" value="([^"]*)"', page))
    confirmed = {f"{d}-by": "ana" for d, _ in guesses}
    kit = {
        "m0-point": "tarn-head",
        "m0-crew": "ana",
        "m0-from": "start",
        "m0-kit": "torch, warm layer",
        "m0-food": "soup",
    }
    await desk.post("meetings", ends | confirmed | kit)
    check = await desk.get("check")
    assert "Nothing stands in the way" in check
    assert "Leave by" in check or "leave by" in check.lower()
    done = await desk.post("publish", {"do": "publish"})
    codes = re.findall(r"<b>([A-Za-z0-9-]{12,})</b>", done)
    assert len(codes) == 3
    assert done.count("data:image/svg+xml") == 3
    stored = await desk.journal.load_event("two-b-hills-b")
    assert stored.text == desk.text()
    async with desk.http.post(
        f"{desk.url}/join", json={"code": codes[1], "preview": True}, headers=desk.own
    ) as r:
        assert "Ana" in (await r.json())["data"]["you"]
    # A second look offers nothing to publish; a change does.
    assert 'name="do" value="publish"' not in await desk.get("publish")


async def test_the_route_is_shown_at_once_with_its_waypoints_as_points(desk: Desk) -> None:
    await desk.enter()
    page = await desk.post("course", with_route(RACE, made_gpx()))
    assert "<svg" in page
    assert "5 points" in page
    event = parse_event(desk.text()).event
    points = await desk.get("points")
    assert event is None  # there is no runner yet
    assert "Gill &lt;i&gt;Bridge&lt;/i&gt;" in points
    assert "<i>Bridge" not in points


async def test_a_wrong_route_is_told_and_nothing_typed_is_lost(desk: Desk) -> None:
    await desk.enter()
    page = await desk.post("course", with_route(RACE | {"limit": "all day"}, b"<gpx><trk>"))
    assert 'role="alert"' in page
    assert 'value="all day"' in page
    assert "no length of time" in page
    assert 'value="05:00"' in page


async def test_a_pasted_table_counts_only_after_it_was_seen(desk: Desk) -> None:
    await desk.enter()
    await desk.post("course", with_route(RACE, made_gpx()))
    before = desk.text()
    form = points_form(await desk.get("points")) | {"pasted": TABLE}
    seen = await desk.post("points", form | {"do": "read"})
    assert desk.text() == before
    assert "Read: 4 rows" in seen
    assert "the bar is open all night" in seen
    assert "Sat 07:45" in seen
    assert TABLE.splitlines()[1].split("\t")[1] in seen
    await desk.post("points", form | {"do": "take"})
    text = desk.text()
    assert 'cut_off = {when = "out", clock = "Sat 07:45"}' in text
    assert text.index('"Fold Inn"') < text.index('"Top Gate"') < text.index('"Finish"')


async def test_out_and_in_again_loses_no_byte(desk: Desk) -> None:
    """The draft with its comments, taken out, changed by hand, put in, changed by a form."""
    await to_meetings(desk)
    async with desk.http.get(f"{desk.url}/setup/draft.zip") as r:
        files = parcel.unpack(await r.read())
    assert files["event.toml"].decode() == desk.text()
    by_hand = desk.text().replace("[[people]]", "# who is who\n[[people]]", 1) + "\n# the end\n"
    form = aiohttp.FormData()
    form.add_field("draft", parcel.pack(files | {"event.toml": by_hand.encode()}), filename="race.zip")
    await desk.post("draft", form)
    assert desk.text() == by_hand
    assert (desk.folder / "route.gpx").read_bytes() == made_gpx()
    await desk.post("runner", {"name": "Maren", "finish": "9:30"})
    assert desk.text() == by_hand.replace('"9:00"', '"9:30"')


async def test_only_the_link_opens_it_and_only_once(desk: Desk) -> None:
    assert "holds no key" in await desk.get("points")
    code = (await desk.link()).partition("#")[2]
    async with desk.http.post(f"{desk.url}/setup/open", data={"code": code}) as r:
        assert r.status == 403  # from another page
    for wanted in (200, 403):
        async with desk.http.post(f"{desk.url}/setup/open", data={"code": code}, headers=desk.own) as r:
            assert r.status == wanted
    async with desk.http.post(
        f"{desk.url}/setup/course", data=RACE, headers={"Origin": "http://else.example"}
    ) as r:
        assert r.status == 403
    person = await desk.journal.issue_token(None, "phone", ["person"], NOW, NOW + timedelta(days=1))
    async with (
        aiohttp.ClientSession(cookies={door.COOKIE: person}) as other,
        other.get(f"{desk.url}/setup/course") as r,
    ):
        assert "holds no key" in await r.text()


async def test_recordings_are_kept_beside_the_draft_under_names_of_their_own(desk: Desk) -> None:
    await desk.enter()
    await desk.post("course", with_route(RACE, made_gpx()))
    form = aiohttp.FormData({"name": "Maren"}, quote_fields=False)
    for name in ("../../Long run!.gpx", "route.gpx"):
        form.add_field("own", made_gpx(60), filename=name)
    page = await desk.post("runner", form)
    assert 'own_runs = ["long-run.gpx", "route-2.gpx"]' in desk.text()
    assert (desk.folder / "route.gpx").read_bytes() == made_gpx()
    assert sorted(p.name for p in desk.folder.iterdir()) == [
        "event.toml",
        "long-run.gpx",
        "route-2.gpx",
        "route.gpx",
    ]
    assert "route-2.gpx" in page
    await desk.post("runner", {"name": "Maren", "gone-route-2.gpx": "yes"})
    assert 'own_runs = ["long-run.gpx"]' in desk.text()


async def test_a_folder_that_takes_nothing_is_told_and_the_form_keeps_what_was_typed(desk: Desk) -> None:
    await desk.enter()
    desk.folder.parent.mkdir(exist_ok=True)
    desk.folder.write_text("a file stands where the folder should be")
    page = await desk.post("course", RACE)
    assert "NOT KEPT" in page
    assert 'value="2027-06-19"' in page


async def test_a_table_that_was_pasted_and_not_taken_is_not_left_behind(desk: Desk) -> None:
    await desk.enter()
    await desk.post("course", with_route(RACE, made_gpx()))
    page = await desk.post(
        "points", points_form(await desk.get("points")) | {"pasted": TABLE, "go": "runner"}
    )
    assert "not taken yet" in page
    assert "the bar is open all night" in page


async def test_a_row_without_its_name_is_kept_and_asked_about(desk: Desk) -> None:
    await desk.enter()
    await desk.post("course", with_route(RACE, made_gpx()))
    page = await desk.post(
        "people", {"p0-was": "", "p0-name": "", "p0-phone": "+44 1632 960099", "p0-crew": "yes"}
    )
    assert "+44 1632 960099" in page
    assert "name&#39; is missing" in page
    assert 'kind = "crew"' in desk.text()
    page = await desk.post(
        "points", {"p0-was": "", "p0-name": "", "p0-km": "", "p0-cut": "14:00", "p0-edge": "out"}
    )
    assert "14:00" in page


async def test_a_finger_that_taps_twice_adds_nobody_twice(desk: Desk) -> None:
    await desk.enter()
    await desk.post("course", with_route(RACE, made_gpx()))
    person = {"p0-was": "", "p0-name": "Ole", "p0-phone": "+44 1632 960098", "p0-crew": "yes"}
    point = {"p0-was": "", "p0-name": "Cairn", "p0-km": "12,5"}
    await asyncio.gather(*(desk.post("people", person) for _ in range(3)))
    await asyncio.gather(*(desk.post("points", point) for _ in range(3)))
    assert desk.text().count('"Ole"') == 1
    assert desk.text().count('"Cairn"') == 1


async def test_a_step_not_begun_says_so_instead_of_counting(desk: Desk) -> None:
    """Before anything is typed nothing is missing yet; what was typed is counted at its own step alone."""
    await desk.enter()
    page = await desk.get("course")
    steps = page.partition('class="steps"')[2].partition("</nav>")[0]
    assert "mistakes" not in page
    assert steps.count("not begun") == 5
    assert "still missing" not in steps
    steps = (
        (await desk.post("course", {"name": "Two Hills"}))
        .partition('class="steps"')[2]
        .partition("</nav>")[0]
    )
    assert steps.count("not begun") == 4
    assert steps.count("still missing") == 1


async def test_a_stage_ends_at_a_point(desk: Desk) -> None:
    """When the next one starts stands in the file as typed, and goes with the field."""
    await desk.enter()
    row = {"p0-was": "", "p0-name": "Hut", "p0-km": "10", "p0-stage": "Sun 07:00"}
    await desk.post("points", row)
    assert 'next_stage = "Sun 07:00"' in desk.text()
    await desk.post("points", row | {"p0-was": "hut", "p0-stage": ""})
    assert "next_stage" not in desk.text()


@pytest.mark.parametrize("step", ["runner", "check"])
async def test_recordings_are_held_against_the_course(desk: Desk, step: str) -> None:
    """What is missing of what this course asks stands beside her fields and on the page of the check, with a date."""
    await desk.enter()
    desk.folder.mkdir(exist_ok=True)
    text = DAY.event_text().replace('bib = "58"', 'bib = "58"\nown_runs = ["short.gpx"]')
    (desk.folder / "event.toml").write_text(text, encoding="utf-8")
    short = to_gpx(record(np.random.default_rng(4), 12.0, 0.04, 9.0, name="short.gpx"))
    for name, content in {**DAY.files, "short.gpx": short}.items():
        (desk.folder / name).write_bytes(content)
    page = await desk.get(step)
    assert "Ready for this course?: Iona" in page
    assert "short.gpx" in page.partition("Ready for this course?: Iona")[2]
    assert "by Sat 22 May" in page


def test_every_code_that_the_pages_mend_is_one() -> None:
    """A mistake that is named otherwise would lose the pages' words and keep those of the file."""
    assert [c for codes, *_ in mending._MENDED for c in codes if not has(c)] == []


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ('phone = "+44 1632 960100"', "", "control"),
        ("starts = 2027-09-11T05:00:00", "starts = 1999-09-11T05:00:00", "starts"),
        ('clock = "Sun 03:30"', 'clock = "25:70"', "cut"),
    ],
)
def test_a_remedy_is_in_the_pages_own_words(old: str, new: str, words: str) -> None:
    """Where the file's remedy would speak of keys and quotes."""
    text = (ROOT / "demo_event" / "event.toml").read_text(encoding="utf-8")
    assert old in text
    problems = parse_event(text.replace(old, new, 1)).problems
    assert label("en", f"setup-do-{words}") in {mending.told(p, "en").remedy for p in problems}


async def test_what_is_missing_is_told_in_the_words_of_the_page_alone(desk: Desk) -> None:
    """No key of the file, no bracket: whoever is on a phone has no file before them."""
    await desk.enter()
    page = await desk.post("course", with_route({"name": "Two Hills"}, made_gpx()))
    told = page.partition('class="mistakes"')[2].partition("</section>")[0]
    assert "Fill in the day and the time of the start." in told
    assert not set("[]=_") & set(re.sub(r"<[^>]+>", "", told))


async def test_a_volunteer_has_a_point_and_a_drive_its_hours(desk: Desk) -> None:
    """'1:05' in a field of minutes is 65 of them; where a volunteer stands is chosen, and stands there again."""
    await desk.enter()
    await desk.post("course", with_route(RACE, made_gpx()))
    page = await desk.post(
        "people", {"p0-was": "", "p0-name": "Ole", "p0-volunteer": "yes", "p0-station": "finish"}
    )
    assert 'point = "finish"' in desk.text()
    assert '<option value="finish" selected>' in page
    await desk.post("meetings", {"d0-from": "start", "d0-to": "finish", "d0-minutes": "1:05", "d0-by": "ole"})
    assert "minutes = 65" in desk.text()


async def test_a_wrong_number_of_race_control_takes_no_timetable_away(desk: Desk) -> None:
    """What has nothing to do with her times stands in their way no more than people and meetings do."""
    await desk.enter()
    await desk.post("course", with_route(RACE | {"control-phone": "ask at the hall"}, made_gpx()))
    page = await desk.post("runner", {"name": "Maren", "finish": "9:00"})
    assert label("en", "setup-no-timetable") not in page
    assert label("en", "setup-timetable") in page


async def test_a_route_that_breaks_off_is_asked_about(desk: Desk) -> None:
    """A day of the race begins elsewhere: the page says where the line breaks, and once a stage ends there no more."""
    await desk.enter()
    far = "".join(f'<trkpt lat="55.5" lon="{-2.0 + 0.01 * n}"><ele>90</ele></trkpt>' for n in range(9))
    route = made_gpx().replace(
        b"</trkseg></trk>", f"</trkseg></trk><trk><trkseg>{far}</trkseg></trk>".encode()
    )
    assert "breaks off at km 45.9" in await desk.post("course", with_route(RACE, route))
    row = {"p0-was": "", "p0-name": "Camp", "p0-km": "45.9", "p0-stage": "Sun 07:00"}
    await desk.post("points", row)
    assert "breaks off" not in await desk.post("course", with_route(RACE, route))
