"""The sheet for the glove box: one page a person, each in their own car, with what the race allows there."""

from __future__ import annotations

import re
from collections.abc import AsyncIterator
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import lxml.html
import pytest
from playwright.async_api import Browser, async_playwright

from server.api.building import build
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.event.model import Event, KitItem, KitWeight, Place, Rules
from server.paper.before import BeforeStart, before_start
from server.paper.calendar import appointments_of
from server.paper.meeting import meeting_lines
from server.paper.moves import move_rows
from server.paper.sheet import crew_sheets
from server.plan.movements import CrewPlan, course_spots, crew_plan

DEMO = Path(__file__).parents[2] / "demo_event"
STAMP = datetime(2027, 1, 1, 12, 0, tzinfo=UTC)
READERS = {x: Reader(x, "Europe/London", "Europe/London") for x in ("en", "de")}


@pytest.fixture(scope="module")
def demo() -> tuple[BeforeStart, CrewPlan]:
    """The demo before its start, with its crew's movements."""
    files = {"route.gpx": (DEMO / "route.gpx").read_bytes()}
    built = build((DEMO / "event.toml").read_text(encoding="utf-8"), files)
    before = before_start(built.event, built.timetables, built.courses, STAMP)
    spots = course_spots(built.event, built.courses)
    return before, crew_plan(built.event, built.timetables, before.views, spots=spots)


def with_event(before: BeforeStart, event: Event) -> BeforeStart:
    """The same situation with another event file."""
    return replace(before, situation=replace(before.situation, event=event))


def glove(html: str) -> str:
    """The text of the page for the glove box."""
    (page,) = lxml.html.fromstring(html).xpath("//*[@class='glove']")
    return " ".join(" ".join(page.itertext()).split())


def test_who_comes_in_another_car_has_their_own_way(demo) -> None:
    """The finish is timed for the grey estate; Ana comes in the van from Ember Quarry, on a drive nobody has
    confirmed: her paper has no leave-by from where she is not."""
    before, moves = demo
    jonas = glove(crew_sheets(before, ["jonas"], "x", moves))
    assert "once she has left Ravel Dod" in jonas
    html = crew_sheets(before, ["ana"], "x", moves)
    last = lxml.html.fromstring(html).xpath("//*[@class='meeting']")[-1].text_content()
    assert "from Ember Quarry · No leave-by: nobody stands by the drive yet." in last
    assert "Ravel" not in last
    say = Say(READERS["en"], STAMP)
    ana, other = (appointments_of(before, p, say)[-1] for p in ("ana", "jonas"))
    assert other.title.endswith("once Maren has left Ravel Dod")
    assert ana.title.startswith("Maren at Harrow Fold finish: be there from")


def test_a_drive_that_is_not_written_down_is_not_one_to_be_confirmed(demo) -> None:
    """'Nobody stands by the drive yet' sends people to look for a drive to confirm; there is none."""
    before, moves = demo
    drives = tuple(d for d in before.event.drives if d.to_place != "mill")
    found = with_event(before, replace(before.event, drives=drives))
    first = found.meetings("maren")[0]
    assert first.drive is None
    told = meeting_lines(found, "maren", first, Say(READERS["en"], STAMP))
    assert told[0] == "No leave-by: no drive from Harrow Fold start to Skelter Mill is written down."
    assert (
        "Keine Abfahrtszeit: eine Fahrt von"
        in meeting_lines(found, "maren", first, Say(READERS["de"], STAMP))[0]
    )
    assert "to Skelter Mill is written down" in glove(crew_sheets(found, ["ana"], "x", moves))
    cars = tuple(replace(c, starts_at=None) for c in before.event.cars)
    nowhere = with_event(before, replace(before.event, cars=cars))
    told = meeting_lines(nowhere, "maren", nowhere.meetings("maren")[0], Say(READERS["en"], STAMP))
    assert told[0] == "No leave-by: where they come from is not said."


def test_crew_who_are_there_already_are_told_to_stay(demo) -> None:
    """A second meeting at the same car park has no drive: 'stay', never a time by which to leave; so in the calendar."""
    before, _ = demo
    event = before.event
    brindle = event.courses[0].point("brindle")
    mill = event.courses[0].point("mill")
    points = tuple(
        replace(p, access=replace(p.access, place="yard")) if p.id in ("mill", "brindle") else p
        for p in event.courses[0].points
    )
    assert mill.access
    assert brindle.access
    place = Place("yard", "Estate yard")
    changed = replace(event, courses=(replace(event.courses[0], points=points),), places=(place,))
    found = with_event(before, changed)
    say = Say(READERS["en"], STAMP)
    second = next(m for m in found.meetings("maren") if m.point == "brindle")
    assert "Stay: you are there already, from Skelter Mill." in meeting_lines(found, "maren", second, say)
    html = crew_sheets(found, ["ana"], "x")
    cells = lxml.html.fromstring(html).xpath("//*[@class='meeting']")[1].text_content()
    assert "stay" in cells
    entry = next(a for a in appointments_of(found, "ana", say) if a.id == "meeting-brindle-maren")
    assert "Leave by" not in entry.title


def test_the_runner_s_own_page_sends_her_nowhere(demo) -> None:
    """Maren reads what is planned, how long she stops and until when her crew wait, never when to leave by car."""
    before, moves = demo
    whole = " ".join(lxml.html.fromstring(crew_sheets(before, ["maren"], "x", moves)).text_content().split())
    assert "Leave by" not in whole
    assert "Crew wait until" in whole


def test_who_does_not_go_reads_whose_times_they_are(demo) -> None:
    """A safety contact has every meeting on the sheet; 'leave by', with nobody named, reads as an order to drive there,
    most of all to one who is crew elsewhere."""
    before, moves = demo
    page = lxml.html.fromstring(crew_sheets(before, ["ines"], "x", moves))
    met = [" ".join(m.text_content().split()) for m in page.xpath("//*[@class='meeting']")]
    assert "Going: Ana, blue van." in met[0]
    assert "Going: Jonas, grey estate." in met[1]
    assert "Going: Jonas, grey estate." in met[-1]
    assert not any("But stay" in m for m in met)
    for goes in ("ana", "maren"):
        assert "Going:" not in glove(crew_sheets(before, [goes], "x", moves))
    parts = tuple(replace(p, person="jonas") if p.person == "ines" else p for p in before.event.parts)
    both = with_event(before, replace(before.event, parts=parts))
    page = lxml.html.fromstring(crew_sheets(both, ["jonas"], "x", moves))
    met = [m.text_content() for m in page.xpath("//*[@class='meeting']")]
    assert ["Going: " in m for m in met] == [False, False, False, True, True, True]


def test_kit_in_two_cars_is_told_by_car(demo) -> None:
    """Else the crew of each car think that the other has it; in the one car of a meeting it goes without saying."""
    before, moves = demo
    kit = (
        KitItem("blanket", KitWeight.SAFETY, "van"),
        KitItem("dry clothes", KitWeight.NORMAL, "estate"),
        KitItem("tea, hot", KitWeight.NORMAL, "estate"),
    )
    plans = tuple(replace(m, kit=kit) if m.point == "finish" else m for m in before.event.meetings)
    found = with_event(before, replace(before.event, meetings=plans))
    say = Say(READERS["en"], STAMP)
    told = meeting_lines(found, "maren", found.meetings("maren")[-1], say)
    assert "Bring: dry clothes; tea, hot." in told
    assert "In the blue van: blanket." in told
    assert "In the grey estate: dry clothes; tea, hot." in told
    page = glove(crew_sheets(found, ["jonas"], "x", moves))
    assert "blanket (blue van) dry clothes (grey estate) tea, hot (grey estate)" in page
    brindle = next(m for m in before.meetings("maren") if m.point == "brindle")
    assert not any("In the" in x for x in meeting_lines(before, "maren", brindle, say))


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", ("Permit needed: green, blue van has it.", "Crew allowed from Sat 06:00 until Sat 11:00.",
                "At most one car.")),
        ("de", ("Genehmigung nötig: green, blue van hat sie.", "Crew erlaubt ab Sa 06:00 bis Sa 11:00.",
                "Höchstens ein Auto.")),
    ],
)  # fmt: skip
def test_what_the_race_allows_there_is_on_paper(demo, language: str, words: tuple[str, ...]) -> None:
    """Permit and who has it, hours (the later of the point's and the race's), people and cars: at 3 a.m. nobody looks
    up the rules."""
    before, _ = demo
    event = before.event
    day = datetime(2027, 9, 11, tzinfo=UTC)
    course = event.courses[0]
    mill = course.point("mill")
    access = replace(
        mill.access,
        permit="green",
        cars_max=1,
        opens=day + timedelta(hours=4),
        closes=day + timedelta(hours=10),
    )
    points = tuple(replace(p, access=access) if p.id == "mill" else p for p in course.points)
    cars = tuple(replace(c, permits=("Green",)) if c.id == "van" else c for c in event.cars)
    rules = replace(event.rules, crew_not_before=day + timedelta(hours=5))
    changed = replace(event, courses=(replace(course, points=points),), cars=cars, rules=rules)
    found = with_event(before, changed)
    said = meeting_lines(found, "maren", found.meetings("maren")[0], Say(READERS[language], STAMP))
    assert not set(words) - set(said), said
    nobody = with_event(before, replace(changed, cars=event.cars))
    told = meeting_lines(nobody, "maren", nobody.meetings("maren")[0], Say(READERS["en"], STAMP))
    assert "Permit needed: green, nobody says who has it: ask the race." in told


def test_rules_of_the_race_are_on_the_page(demo) -> None:
    """How many cars and people, and from where pacers may run; nothing where there is no rule."""
    before, moves = demo
    page = glove(crew_sheets(before, ["ana"], "x", moves))
    assert (
        "Allowed: 2 vehicles at most; 4 crew at most; outside help at crew points only; pacers from 96.0 km."
        in page
    )
    free = with_event(before, replace(before.event, rules=Rules(outside_help_only_at_crew_points=False)))
    assert "Allowed:" not in glove(crew_sheets(free, ["ana"], "x", moves))


def test_rows_of_who_drives_where(demo) -> None:
    """Each car of each meeting, in both languages, the driver marked; what is not promised says so."""
    before, moves = demo
    rows = move_rows(before.event, moves, Say(READERS["de"], STAMP))
    assert len(rows) == 7
    assert rows[0].who == "Ana (fährt) und Tomas"
    assert rows[-1].odds.endswith("nicht zugesagt")


@pytest.fixture
async def browser() -> AsyncIterator[Browser]:
    """The system's chromium, without a window."""
    async with async_playwright() as playwright:
        opened = await playwright.chromium.launch(
            executable_path="/usr/bin/chromium", args=["--disable-dev-shm-usage"]
        )
        yield opened
        await opened.close()


@pytest.mark.browser
async def test_the_glove_box_page_is_one_sheet_of_paper(demo, browser: Browser) -> None:
    """Printed on A4, what crew do is one page, and no table runs off the paper; on a phone nothing is wider than the
    screen."""
    before, moves = demo
    people = [p.id for p in before.event.people if before.event.parts_of(p.id)]
    page = await browser.new_page(viewport={"width": 390, "height": 844})
    await page.set_content(crew_sheets(before, people, "x", moves))
    assert await page.evaluate("document.documentElement.scrollWidth") <= 390
    wide = "[...document.querySelectorAll('.wide')].filter(e => e.scrollWidth > e.clientWidth).length"
    assert await page.evaluate(wide) == 0
    await page.emulate_media(media="print")
    await page.set_viewport_size({"width": 718, "height": 1000})  # 190 mm at 96 to the inch
    assert await page.evaluate(wide) == 0
    drivers = ["ana", "jonas"]
    await page.set_content(crew_sheets(before, drivers, "x", moves))
    await page.add_style_tag(content=".details { display: none }")
    printed = await page.pdf(prefer_css_page_size=True)
    assert len(re.findall(rb"/Type\s*/Page\b", printed)) == len(drivers)


def test_name_and_page_stand_at_the_foot_of_every_page(demo) -> None:
    """A sheet that falls apart in a car is put together again; a hostile name can't end the style it stands in."""
    before, moves = demo
    people = tuple(
        replace(p, name="Ana</style><script>") if p.id == "ana" else p for p in before.event.people
    )
    html = crew_sheets(with_event(before, replace(before.event, people=people)), ["ana", "jonas"], "x", moves)
    assert "@page of1 { @bottom-right { content:" in html
    assert "@page of2 { @bottom-right { content:" in html
    assert html.count("counter(page)") == 2
    assert "Ana\\3c \\2f style\\3e " in html
    assert "<script>" not in html
