"""Three races of our own, by day, over a night and in stages, planned and printed for each part, on both papers."""

from __future__ import annotations

import io
from datetime import UTC, datetime, timedelta
from functools import cache
from zoneinfo import ZoneInfo

import pytest
from pypdf import PdfReader

from server.api.building import Built, build
from server.event.model import Goal, PartKind
from server.paper.before import BeforeStart, before_start
from server.paper.brief import briefs_of
from server.paper.document import Size
from server.paper.lists import lists_of
from server.paper.pdf import pdf
from server.paper.sheet import crew_pdf, sheets_of
from server.plan.kit import gaps
from server.plan.movements import course_spots, crew_plan
from server.watch.silences import silences
from tests.paper.test_parts import text
from tests.paper.three_races import DAY, NIGHT, STAGES, THREE
from tests.whole.ground import Ground

FILE_WORDS = ("carries =", "[[", "confirmed_by", "own_runs", "…")
"""What only an event file says, and a gap: never on paper."""


@cache
def planned(ground: Ground) -> tuple[Built, BeforeStart]:
    """The race and the situation before its start."""
    built = build(ground.event_text(), ground.files)
    now = datetime(2027, 1, 1, 12, 0, tzinfo=UTC)
    return built, before_start(built.event, built.timetables, built.courses, now)


@pytest.mark.parametrize("size", Size)
@pytest.mark.parametrize("ground", THREE, ids=lambda g: g.name)
def test_each_part_is_printed_on_both_papers(ground: Ground, size: Size) -> None:
    """Name, event and number stand on every page; what a person does is on the first."""
    built, before = planned(ground)
    event = built.event
    moves = crew_plan(event, built.timetables, before.views, spots=course_spots(event, built.courses))
    for person in event.people:
        pages = [
            p.extract_text() for p in PdfReader(io.BytesIO(crew_pdf(before, [person.id], moves, size))).pages
        ]
        for n, page in enumerate(pages, 1):
            assert f"{person.name} – {event.name}" in page
            assert f"{n} / {len(pages)}" in page
        met = [m for m in event.meetings if person.id in m.crew]
        course = event.course_of(event.runners[0].id)
        assert all(course.point(m.point).name in pages[0] for m in met), person.id
        assert not any(w in page for page in pages for w in FILE_WORDS), person.id
    for sheets in ([lists_of(before, event.runners[0].id)], briefs_of(before, moves)):
        whole = "".join(p.extract_text() for p in PdfReader(io.BytesIO(pdf(sheets, size))).pages)
        assert not any(w in whole for w in FILE_WORDS)


@pytest.mark.parametrize("ground", THREE, ids=lambda g: g.name)
def test_who_helps_out_sees_no_private_number(ground: Ground) -> None:
    """The volunteer's sheet has race control and nobody's own number."""
    event = planned(ground)[0].event
    helper = next(p.person for p in event.parts if p.kind is PartKind.VOLUNTEER)
    told = text(sheets_of(planned(ground)[1], [helper])[0])
    assert event.race_control.phone in told
    assert not [p.id for p in event.people if p.phone and p.phone in told]


def test_torch_and_sunset_say_one_time() -> None:
    """Where the light says from when she needs a torch, the warning has the same minute and km, at every pace."""
    built, before = planned(NIGHT)
    table = built.timetables["svea"]
    light = table.start + before.timetable("svea").dark[0].from_elapsed
    torch = next(g for g in gaps(built.event, table, before.course(table.runner)) if g.need == "torch")
    assert {m.pace for m in torch.moments} == {"C", "limit"}
    assert all(abs(m.at - light) < timedelta(minutes=3) for m in torch.moments)
    told = text(sheets_of(before, ["svea"])[0])
    assert (
        "Lampe ab Samstag 19:06, zwischen 19,8 km und 26,1 km je nach Tempo (Ziel C und gerade noch" in told
    )
    assert "C von 26,1 km (Sa 19:06)" in told


def test_layers_and_torch_for_each_pace_by_hand() -> None:
    """4 degrees from 20:00 on: a warm layer wherever she is then on the way to Steinjoch, which hands it over."""
    built, before = planned(NIGHT)
    table = built.timetables["svea"]
    warm = next(g for g in gaps(built.event, table, before.course(table.runner)) if g.need == "warm")
    assert [(m.pace, m.at.astimezone(ZoneInfo("Europe/Berlin")).strftime("%H:%M")) for m in warm.moments] == [
        (p, "20:00") for p in ("A", "B", "C", "limit")
    ]
    assert warm.handed_at == "joch"
    came = table.start + table.row("joch").arrive[Goal.B]
    assert next(m.until for m in warm.moments if m.pace == "B") == came


def test_past_race_by_hand() -> None:
    """56 km and 3,500 m in 10:15 for 104 km and the organiser's 4,700 m: (104 + 47) / (56 + 35) = 1.659; to the power of
    1.06 (Riegel 1981) 1.711; 10.25 h times that is 17:32."""
    table = planned(NIGHT)[0].timetables["svea"]
    assert table.rows[-1].arrive[Goal.B].total_seconds() / 3600 == pytest.approx(
        10.25 * ((104 + 47) / (56 + 35)) ** 1.06, abs=0.02
    )


def test_stages_count_without_the_night() -> None:
    """Her target is the sum of the stages: so are the goals above the plan."""
    assert "somme des étapes : A 17:" in text(sheets_of(planned(STAGES)[1], ["aude"])[0])
    assert "B 20:30" in text(sheets_of(planned(STAGES)[1], ["aude"])[0])


def test_after_a_night_a_quicker_day_is_not_taken_for_a_slower_one() -> None:
    """Who ran the first stage by goal A is looked for earlier on the second than by B, and by B than by C."""
    built, before = planned(STAGES)
    rows = silences(built.event, "aude", built.timetables["aude"], before.course("aude"))
    likely = {r.goal: r.likely for r in rows if r.point == "camp"}
    assert likely[Goal.A] < likely[Goal.B] < likely[Goal.C]


def test_home_is_reachable_until_the_race_is_over() -> None:
    """Not only until her slow goal: by then nobody knows yet that she is in."""
    assert "Sa 15:00 bis So 17:00" in text(sheets_of(planned(NIGHT)[1], ["almut"])[0])
    assert "Sat 07:00 to Sat 19:00" in text(sheets_of(planned(DAY)[1], ["colm"])[0])


def test_weights_as_they_are() -> None:
    """490 g stay 490 g."""
    assert "Vom Start an bei Svea: 490 g" in text(lists_of(planned(NIGHT)[1], "svea"))


def test_no_goal_holds_past_a_cut_off() -> None:
    """Where a cut-off bites the last goal's latest time out is before it, however long the race's own limit would leave."""
    _, before = planned(DAY.but(('clock = "12:30"', 'clock = "11:25"')))
    due = datetime(2027, 6, 12, 11, 25, tzinfo=ZoneInfo("Europe/London"))
    held = {c.goal: c.at for c in before.changes("iona") if c.point == "tarn"}
    assert held[Goal.C] == due
    (beck,) = [c.at for c in before.changes("iona") if c.point == "beck" and c.goal is Goal.C]
    (tarn,) = [c for c in before.cut_offs("iona") if c.due.point == "tarn"]
    (safe,) = [o.at for o in tarn.latest_out if o.point == "beck"]
    assert beck is not None
    assert safe is not None
    assert safe < beck < due, "even odds of the cut-off are later than nine in ten, and before it"
