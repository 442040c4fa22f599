"""A sheet a part: what each of them needs on it, what must not be on it, and the PDF that it is printed from."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import numpy as np
import pytest
import typst
from matplotlib import pyplot as plt
from pypdf import PdfReader

from server.api.building import build
from server.event.model import Contact, KitItem, Part, PartKind, Person, Prompt
from server.paper.before import BeforeStart, before_start
from server.paper.brief import briefs_of
from server.paper.document import Grid, Head, Lines, Look, Met, Page, Sheet, Size, page
from server.paper.pdf import pdf
from server.paper.sheet import crew_pdf, sheets_of
from server.plan.movements import CrewPlan, course_spots, crew_plan

DEMO = Path(__file__).parents[2] / "demo_event"
STAMP = datetime(2027, 1, 1, 12, 0, tzinfo=UTC)


@pytest.fixture(scope="module")
def demo() -> tuple[BeforeStart, CrewPlan]:
    """The demo before its start, with its crew's movements; a volunteer at the mill and her own words added."""
    files = {"route.gpx": (DEMO / "route.gpx").read_bytes()}
    event = build((DEMO / "event.toml").read_text(encoding="utf-8"), files)
    maren = replace(
        event.event.runners[0],
        prompts=(Prompt("the second night", "eat, then count two hundred steps"),),
        not_to_hear=("nearly there",),
        medical_note="asthma, inhaler in the pack",
        carries=(KitItem("rain jacket"), *event.event.runners[0].carries),
    )
    people = (*event.event.people, Person("vera", "Vera", "+44 7700 900199"))
    parts = (*event.event.parts, Part("vera", PartKind.VOLUNTEER, point="brindle"))
    built = replace(event.event, runners=(maren,), people=people, parts=parts)
    before = before_start(built, event.timetables, event.courses, STAMP)
    return before, crew_plan(built, event.timetables, before.views, spots=course_spots(built, event.courses))


def sheet(demo: tuple[BeforeStart, CrewPlan], person: str) -> Sheet:
    """A person's sheet."""
    (found,) = sheets_of(demo[0], [person], demo[1])
    return found


def met(found: Sheet) -> dict[str, Met]:
    """The meetings on the first page."""
    return {b.place: b for b in found.pages[0].blocks if isinstance(b, Met)}


def text(found: Sheet) -> str:
    """Everything on a sheet."""
    return " ".join(page_text(found.pages[i].blocks) for i in range(len(found.pages)))


def page_text(blocks: object) -> str:
    """Every word in blocks, however deep."""
    if isinstance(blocks, str):
        return blocks
    if isinstance(blocks, tuple | list):
        return " ".join(page_text(b) for b in blocks)
    return " ".join(page_text(getattr(blocks, f)) for f in getattr(blocks, "__slots__", ()))


def test_the_first_page_of_crew_is_what_they_do(demo) -> None:
    """Each meeting whole: cut-off, stop, walk in, sunset and torch, must kit apart, room to write."""
    brindle = met(sheet(demo, "ana"))["Brindle Gate"]
    facts = " ".join(brindle.facts)
    for needed in ("Cut-off in Sat 22:00", "stop 20 min", "4 min on foot from the car", "sunset Sat 19:37",
                   "TORCH before Ravel Dod: B and C from Sat 19:37"):  # fmt: skip
        assert needed in facts, needed
    assert brindle.must == ("head torch, fresh battery", "warm layer")
    assert brindle.kit == ("shoes, half a size up", "two full bottles")
    assert brindle.blanks == ("In", "Out", "Ate", "Drank", "Peed")


def test_one_latest_time_at_a_point(demo) -> None:
    """A point whose own cut-off comes first says no later time for another's."""
    for m in met(sheet(demo, "ana")).values():
        assert sum("Out by" in f for f in m.facts) <= 1


def test_the_car_knows_places_ways_and_silence(demo) -> None:
    """Car parks with coordinates, what is known of each drive, no-signal stretches with the way out."""
    told = text(sheet(demo, "jonas"))
    out = "Ravel side, 92.0 km to 106.0 km: no signal. Way out: track east down to the reservoir road."
    for needed in (
        "quarry lay-by, no telephone signal",
        "NO signal",
        "30U 533641 6095276",
        "55 min, says Jonas",
        out,
    ):
        assert needed in told, needed


def test_a_car_park_with_a_place_of_its_own_is_told_by_it(demo) -> None:
    """Coordinates of the file go before those of the point, which are marked as such."""
    before, moves = demo
    course = before.event.courses[0]
    assert "(the point, not the car park)" in text(sheet(demo, "jonas"))
    points = tuple(
        replace(p, access=replace(p.access, lat=54.5, lon=-2.5)) if p.access is not None else p
        for p in course.points
    )
    event = replace(before.event, courses=(replace(course, points=points),))
    found = replace(before, situation=replace(before.situation, event=event))
    told = text(sheet((found, moves), "jonas"))
    assert "54.50000, -2.50000" in told
    assert "(the point, not the car park)" not in told


def test_home_has_the_ladder_and_who_calls(demo) -> None:
    """Steps with their minutes, who calls race control, silences, all numbers, what to read out."""
    found = sheet(demo, "ines")
    ladder = next(b for b in found.pages[0].blocks if isinstance(b, Grid))
    assert [(r[0], r[1], r[2]) for r in ladder.rows] == [
        ("1", "Ines", "at once"), ("2", "Ana", "5 min"), ("3", "Jonas", "10 min"),
    ]  # fmt: skip
    told = text(found)
    assert "You are who calls race control: Race control, Harrow Fold hall, +44 1632 960100." in told
    assert "Home told" in told
    assert "This is Ines, safety contact for Maren, Harrow Round 100. My number is +49 30 23125101." in told
    assert "Medical note: asthma, inhaler in the pack" in told


@pytest.mark.parametrize(
    ("confirmed_by", "told"),
    [
        ("ana", "Ana (blue van): leave once she has left Ember Quarry, not before."),
        (None, "Ana (blue van): no leave-by, their drive from Ember Quarry is not confirmed."),
    ],
)
def test_home_reads_of_every_car_as_its_crew_do(demo, confirmed_by: str | None, told: str) -> None:
    """Two cars at the finish: the second leaves once she has left Ember Quarry, by no clock; unconfirmed, it is said."""
    before, moves = demo
    drives = tuple(
        replace(d, confirmed_by=confirmed_by) if d.from_place == "ember" else d for d in before.event.drives
    )
    event = replace(before.event, drives=drives)
    there = replace(before, situation=replace(before.situation, event=event))
    (found,) = sheets_of(there, ["ines"], moves)
    last = [b for p in found.pages for b in p.blocks if isinstance(b, Met)][-1]
    assert [x for x in last.lines if x.startswith("Ana")] == [told]


def test_a_driver_reads_that_they_will_be_awake_too_long(demo) -> None:
    """What the plan says of a driver's own sleep stands before their first meeting."""
    before, _ = demo
    event = before.event
    parts = tuple(
        replace(p, awake_since=event.runners[0].start - timedelta(hours=12), sleeps=()) if p.drives else p
        for p in event.parts
    )
    situation = replace(before.situation, event=replace(event, parts=parts))
    weary = replace(before, situation=situation)
    moves = crew_plan(situation.event, before.situation.timetables, before.views)
    (found,) = sheets_of(weary, ["jonas"], moves)
    assert "Jonas will have been awake for" in page_text(found.pages[0].blocks)
    assert "will have been awake" in page_text(briefs_of(weary, moves)[0].pages[1].blocks)


def test_who_goes_to_a_meeting_reads_what_will_not_work_there(demo) -> None:
    """The pacer is to come with another car than the one he is with: both cars' people read it, nobody else."""
    before, _ = demo
    event = before.event
    parts = tuple(replace(p, car="estate") if p.person == "tomas" else p for p in event.parts)
    meetings = tuple(
        replace(m, crew=("jonas", "tomas")) if m.point == "ravel" else replace(m, crew=("ana",)) if m.point == "ember" else m
        for m in event.meetings
    )  # fmt: skip
    situation = replace(before.situation, event=replace(event, parts=parts, meetings=meetings))
    there = replace(before, situation=situation)
    moves = crew_plan(situation.event, before.situation.timetables, before.views)
    for person, told in (("ana", True), ("tomas", True), ("jonas", False)):
        (found,) = sheets_of(there, [person], moves)
        assert ("Tomas is at Ravel Dod" in page_text(found.pages[0].blocks)) is told, person


def test_crew_give_her_what_her_fuel_plan_asks_unless_a_bag_has_it(demo) -> None:
    """Gels and bars to the next crew, counted for the slow day; at Brindle Gate her own bag holds them."""
    found = met(sheet(demo, "ana"))
    assert "Give her for the way: 5 gel and 3 bar" in page_text(found["Skelter Mill"])
    assert "Give her for the way" not in page_text(found["Brindle Gate"])
    assert "Give her for the way" not in text(sheet(demo, "maren"))


def test_her_sections_fill_one_page(demo) -> None:
    """All the way to the finish on the sheet in her hand, and that she starts in the dark; meetings overleaf."""
    told = PdfReader(io.BytesIO(pdf([sheet(demo, "maren")]))).pages[0].extract_text()
    assert "TORCH before Pell Bridge: dark from here at every pace" in told
    assert "Candle Moss – Harrow Fold" in told
    assert "whatever she asks for" in told
    assert "Crew wait until" not in told


def test_a_pacer_reads_what_they_run(demo) -> None:
    """From where to where, when by her plan, when to sign in where the race asks for it; nobody else reads that."""
    before, moves = demo
    told = page_text(sheet(demo, "tomas").pages[0].blocks)
    assert re.search(
        r"You run with Maren from Ember Quarry \(planned Sun \d\d:\d\d\) to Harrow Fold finish", told
    )
    assert "signed in" not in told
    assert "You run with" not in page_text(sheet(demo, "ana").pages[0].blocks)
    event = before.event
    asked = replace(event, rules=replace(event.rules, pacer_sign_in=timedelta(minutes=15)))
    there = replace(before, situation=replace(before.situation, event=asked))
    (found,) = sheets_of(there, ["tomas"], moves)
    assert "Be signed in 15 min before she comes." in page_text(found.pages[0].blocks)


def test_rescue_is_named_once(demo) -> None:
    """'Mountain rescue: Bergwacht Süd 112.'; a name that says mountain rescue itself is not told twice."""
    before, moves = demo
    for name, told in (
        ("Bergwacht Süd", "Mountain rescue: Bergwacht Süd 112."),
        ("Harrow mountain rescue", "Harrow mountain rescue: 112."),
    ):
        event = replace(before.event, rescue=Contact(name, "112"))
        there = replace(before, situation=replace(before.situation, event=event))
        (found,) = sheets_of(there, ["ana"], moves)
        assert told in page_text(found.pages[0].blocks)


def test_her_own_sheet_goes_section_by_section(demo) -> None:
    """What she carries from refill to refill and what is done at the stop after; her words; no leave-by."""
    found = sheet(demo, "maren")
    grid = next(b for b in found.pages[0].blocks if isinstance(b, Grid))
    section, carried, stop = next(r for r in grid.rows if r[0].startswith("Wether Lathe – Brindle Gate"))
    assert "in Sat 15:40 (B)" in section
    assert "3 bottles" in carried
    for needed in (
        "stop 20 min",
        "Crew: Ana",
        "Take: head torch, fresh battery; warm layer",
        "Food: soup and bread, tea",
    ):
        assert needed in stop, needed
    told = text(found)
    assert "On you from the start: rain jacket, waterproof jacket, " in told
    assert "the second night: “eat, then count two hundred steps”" in told
    assert "Leave by" not in told


def test_the_sun_sets_once_on_her_sheet(demo) -> None:
    """Whom nobody meets is not told at every stop of all nights to come, only of what comes before the next point."""
    before, moves = demo
    alone = replace(before.event.runners[0], drop_bags=())
    event = replace(before.event, runners=(alone,), meetings=())
    found = sheet((replace(before, situation=replace(before.situation, event=event)), moves), "maren")
    grid = next(b for b in found.pages[0].blocks if isinstance(b, Grid))
    assert page_text(grid).count("sunset") == 1
    assert page_text(grid).count("sunrise") == 2


def test_crew_have_her_words_and_no_medical_note_unless_on_the_ladder(demo) -> None:
    """Who meets her reads what to say and never to say; the note is for her ladder and herself."""
    for person, sees in (("ana", True), ("tomas", False), ("maren", True), ("vera", False)):
        told = text(sheet(demo, person))
        assert ("asthma" in told) is sees, person
        assert ("Never say: nearly there." in told) is (person != "vera"), person


def test_a_volunteer_s_sheet_has_no_private_number(demo) -> None:
    """Whom to expect at their point and when; race control's and the emergency number, nobody else's."""
    found = sheet(demo, "vera")
    told = text(found)
    private = [p.phone for p in demo[0].event.people if p.phone not in ("", demo[0].event.race_control.phone)]
    assert [p for p in private if p in told] == []
    assert "+44 1632 960100" in told
    grid = next(b for b in found.pages[0].blocks if isinstance(b, Grid))
    assert grid.rows == (
        (
            "214",
            "Maren\norange jacket, black tights, white cap",
            "Sat 14:04",
            "Sat 15:40",
            "Sat 17:32",
            "",
            "",
        ),
    )
    assert "Cut-off in Sat 22:00" in told


@pytest.mark.parametrize(("size", "points"), [(Size.A4, (595, 842)), (Size.LETTER, (612, 792))])
def test_name_and_page_stand_on_every_page_of_the_pdf(demo, size: Size, points: tuple[int, int]) -> None:
    """A sheet that falls apart in a car is put together again; each person's pages are counted anew."""
    before, moves = demo
    read = PdfReader(io.BytesIO(crew_pdf(before, ["ana", "tomas"], moves, size)))
    texts = [p.extract_text() for p in read.pages]
    names = ["Ana" if "Ana – Harrow Round 100" in t else "Tomas" for t in texts]
    count = {n: names.count(n) for n in ("Ana", "Tomas")}
    for k, (name, told) in enumerate(zip(names, texts, strict=True)):
        nth = names[: k + 1].count(name)
        assert f"{name} – Harrow Round 100" in told
        assert f"{nth} / {count[name]}" in told
    assert {(round(p.mediabox.width), round(p.mediabox.height)) for p in read.pages} == {points}


def test_what_crew_do_is_one_sheet_of_paper(demo) -> None:
    """Four meetings with all there is to know of them, on A4 and on Letter."""
    before, moves = demo
    (ana,) = sheets_of(before, ["ana"], moves)
    for size in Size:
        read = PdfReader(io.BytesIO(pdf([replace(ana, pages=ana.pages[:1])], size)))
        assert len(read.pages) == 1, size


def test_a_page_a_few_lines_too_long_is_drawn_smaller(demo) -> None:
    """67 lines of a list fill an A4 page as they are drawn; five more are drawn smaller and stay on it, twelve do not."""
    (ana,) = sheets_of(demo[0], ["ana"], demo[1])

    def first_and_all(lines: int) -> tuple[int, int]:
        long = Page((Lines(tuple(f"line {n}" for n in range(lines)), Look.LIST),))
        read = PdfReader(io.BytesIO(pdf([replace(ana, pages=(long,))])))
        return read.pages[0].extract_text().count("line "), len(read.pages)

    assert first_and_all(72) == (72, 1)
    assert first_and_all(79) == (67, 2)


HOSTILE = '#panic("x") $x$ *b* `c` @d <e> [f] \\ " // -- {{ } Ж ☐'


def test_what_people_wrote_is_text_and_never_markup(demo) -> None:
    """Signs of typst's own language are printed as they stand, in every kind of block."""
    found = Sheet(
        "en",
        HOSTILE,
        HOSTILE,
        HOSTILE,
        (page(Head(HOSTILE), Lines((HOSTILE,)), Grid((HOSTILE,), ((HOSTILE,),))),),
    )
    told = PdfReader(io.BytesIO(pdf([found]))).pages[0].extract_text()
    assert told.count('#panic("x")') >= 5
    assert "Ж" in told


def test_the_same_sheet_is_the_same_bytes(demo) -> None:
    """Nothing of the hour or the machine's names is in it."""
    found = [sheet(demo, "vera")]
    assert pdf(found) == pdf(found)


def test_black_and_white(monkeypatch: pytest.MonkeyPatch, demo) -> None:
    """Drawn as a picture, no dot has a colour: it is printed on what there is."""
    drawn = {}
    compiled = typst.compile

    def as_picture(*what: object, **how: object) -> bytes:
        drawn["pages"] = compiled(*what, **{**how, "format": "png", "ppi": 40.0})
        return b""

    monkeypatch.setattr("server.paper.pdf.typst.compile", as_picture)
    pdf([sheet(demo, "ana")])
    for one in drawn["pages"]:
        dots = plt.imread(io.BytesIO(one))[..., :3]
        assert float(np.ptp(dots, axis=2).max()) < 0.01


def test_a_heading_over_nothing_is_left_out() -> None:
    """No bare headings where the file says nothing."""
    kept = page(Head("a"), Lines(()), Head("b"), Lines(("x",)), Head("c")).blocks
    assert [b.text for b in kept if isinstance(b, Head)] == ["b"]
    assert page(Head("a"), None).blocks == ()
    assert page().blocks == ()


def test_at_home_silences_are_on_the_race_s_clock_and_say_so(demo) -> None:
    """Ines is an hour ahead and reads it below the table; what another reporter would do is for the organiser."""
    home, office = (text(sheet(demo, p)) for p in ("ines", "office"))
    assert "These are the race’s times: Sat 05:00 (Sat 06:00 your clock)." in home
    assert "These are the race’s times" not in office
    assert "One reporter more at" not in home
    assert "One reporter more at" in office


def test_who_sits_in_a_car_to_others_meetings_reads_so(demo) -> None:
    """Tomas's own meeting is reached from where Ana's car stands by then: he reads from where and when he rides, with the
    leave-by of that car's sheet; Ana, who goes there herself, reads nothing of it."""
    told = page_text(sheet(demo, "tomas").pages[0].blocks)
    assert "You ride along, blue van (Ana drives) from Harrow Fold start, leaving by Sat" in told
    assert "to Skelter Mill and Brindle Gate: your own meeting is reached from there." in told
    by = re.search(r"leaving by (Sat \d\d:\d\d),", told)
    assert by is not None
    assert by[1] == met(sheet(demo, "ana"))["Skelter Mill"].cells[0].time
    assert "ride along" not in page_text(sheet(demo, "ana").pages[0].blocks)
