"""The lists on paper: fuel an hour with its sources, shopping, packing, the race's list, labels to cut out."""

from __future__ import annotations

import io
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest
from pypdf import PdfReader

from server.api.building import build
from server.paper.before import BeforeStart, before_start
from server.paper.document import Grid, Label, Lines, Sheet, Ticks
from server.paper.lists import lists_of
from server.paper.pdf import pdf
from server.paper.sheet import as_html
from server.sentences import languages
from tests.paper.test_parts import text

DEMO = Path(__file__).parents[2] / "demo_event"


@pytest.fixture(scope="module")
def before() -> BeforeStart:
    """The demo before its start."""
    files = {"route.gpx": (DEMO / "route.gpx").read_bytes()}
    built = build((DEMO / "event.toml").read_text(encoding="utf-8"), files)
    return before_start(built.event, built.timetables, built.courses, datetime(2027, 1, 1, 12, 0, tzinfo=UTC))


@pytest.fixture(scope="module")
def lists(before: BeforeStart) -> Sheet:
    """Her lists."""
    return lists_of(before, "maren")


def test_fuel_by_section_says_so_much_an_hour(lists: Sheet) -> None:
    """The hourly figures of the file come out again in every section; bottles and pieces for the slow day."""
    grid = next(b for b in lists.pages[0].blocks if isinstance(b, Grid))
    by_section = {r[0]: r for r in grid.rows}
    assert len(by_section) == 13
    first = by_section["Harrow Fold start – Pell Bridge"]
    assert first[2:4] == ("45", "500")
    # A section of some minutes as well: amounts are rounded up, what an hour comes to is not.
    assert {r[2] for r in grid.rows} == {"45", "40"}
    assert first[7:] == ("2", "2 gel, 1 bar; one bar or gel each half hour, a bottle each hour")
    told = text(lists)
    for source in ("Tiller et al. 2019", "Costa et al. 2019", "EFSA 2015", "575 mg a litre"):
        assert source in told, source


def test_shopping_is_what_the_bags_hold(lists: Sheet) -> None:
    """As many as all bags together; the food of each meeting with who brings it."""
    (shop,) = [
        b for b in lists.pages[1].blocks if isinstance(b, Ticks) and any("(for" in x for x in b.others)
    ]
    bags = [
        x
        for b in lists.pages[2].blocks
        if isinstance(b, Lines)
        for x in b.lines
        if x.startswith("To be had at")
    ]
    packed = sum(
        int(part.rsplit(" gel", 1)[0].split()[-1])
        for x in bags
        for part in [x]
        if " gel" in x and "caffeine" not in x
    )
    assert f"{packed} gel" in shop.others
    assert "soup and bread, tea (for Brindle Gate, Ana)" in shop.others


def test_the_race_s_list_and_the_dates(lists: Sheet) -> None:
    """Ticked by what of hers meets it; charged the day before, by name of the day."""
    told = text(lists)
    assert "head torch: head torch, spare in the pack" in told
    assert "To charge by Fri 10 Sep" in told
    assert "Ana sleeps Sat 19:00 to Sun 02:00" in told


def test_missing_kit_is_said_in_capitals(before: BeforeStart) -> None:
    """Nobody overlooks what is in no list."""
    rules = replace(before.event.rules, required_kit=("altimeter", "head torch"))
    event = replace(before.event, rules=rules)
    found = replace(before, situation=replace(before.situation, event=event))
    told = text(lists_of(found, "maren"))
    assert "altimeter: IN NO LIST" in told
    again = replace(event, rules=replace(rules, required_kit=("whistle",)))
    whole = text(lists_of(replace(before, situation=replace(before.situation, event=again)), "maren"))
    assert "Required by the race whistle Sleep" in " ".join(whole.split()), (
        "a thing that is called the same is named once"
    )


def test_a_label_a_drop_bag(lists: Sheet) -> None:
    """Number and point large, what is in it below, food included."""
    brindle, ember = (b for b in lists.pages[-1].blocks if isinstance(b, Label))
    assert brindle.large == "214 – Brindle Gate"
    assert ember.lines[-1].startswith("battery for the head torch; dry gloves; ")
    assert "rice ball" in ember.lines[-1]


@pytest.mark.parametrize("language", languages())
def test_lists_are_whole_in_every_language(before: BeforeStart, language: str) -> None:
    """No gap and no page without its foot, in print and on a telephone."""
    people = tuple(replace(p, language=language) for p in before.event.people)
    event = replace(before.event, people=people)
    found = lists_of(replace(before, situation=replace(before.situation, event=event)), "maren")
    assert "…" not in text(found)
    pages = PdfReader(io.BytesIO(pdf([found]))).pages
    assert len(pages) == 4
    assert all("Maren – Harrow Round 100" in p.extract_text() for p in pages)
    assert "214 – Brindle Gate" in as_html([found], "x")


def test_without_a_fuel_plan_the_rest_is_there(before: BeforeStart) -> None:
    """Packing and labels need no figures; that there are none is said with what to write."""
    runner = replace(before.event.runners[0], fuel=())
    event = replace(before.event, runners=(runner,))
    found = lists_of(replace(before, situation=replace(before.situation, event=event)), "maren")
    told = text(found)
    assert "[[runners.fuel]]" in told
    assert "214 – Brindle Gate" in told
