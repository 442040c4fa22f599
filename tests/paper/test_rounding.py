"""One rule of rounding: the same minute of the plan in chat, table, sheet, CSV, GPX and calendar."""

from __future__ import annotations

import csv
import html
import io
import math
import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest

from server.conversation.telling.answer import PlanAnswer, PlanRow
from server.conversation.telling.plan_answers import say_plan
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.event.model import Goal, Part, PartKind, Person, Target
from server.paper.before import before_start
from server.paper.calendar import appointments_of
from server.paper.files import gpx_with_points, to_csv
from server.paper.sheet import crew_sheets
from server.paper.table import goals_line, print_plan
from server.plan import make_timetable
from server.plan.notes import note
from tests.paper.printing import printed

STAMP = datetime(2027, 1, 1, 12, 0, tzinfo=UTC)
LONDON = ZoneInfo("Europe/London")
SAY = Say(Reader("en", LONDON.key, LONDON.key), STAMP)
WHOLE = {Goal.A: math.floor, Goal.B: lambda m: math.floor(m + 0.5), Goal.C: math.ceil}


@pytest.fixture(scope="module")
def drawn(make_event, demo_course, points_at):
    """A plan on no whole minute, and for each row and goal the minute it is to be shown with."""
    km = (0.0, 20.0, 41.3, 77.7, 120.1, 160.0)
    event = make_event(Target(finish=timedelta(hours=28, minutes=13)), points=points_at(km))
    event = replace(
        event, people=(Person("maren", "Maren"),), parts=(Part("maren", PartKind.RUNNER, "maren"),)
    )
    table = make_timetable(event, "maren", demo_course)
    shown = [
        {g: table.start + timedelta(minutes=WHOLE[g](row.arrive[g].total_seconds() / 60.0)) for g in Goal}
        for row in table.rows
    ]
    assert any(row.arrive[g].total_seconds() % 60 for row in table.rows for g in Goal)
    return event, table, shown, before_start(event, {"maren": table}, {"main": demo_course}, STAMP)


def test_early_down_late_up(drawn) -> None:
    """No goal is shown surer than it is, and none out of order along the course."""
    _, table, shown, _ = drawn
    for row, at in zip(table.rows, shown, strict=True):
        assert at[Goal.A] <= table.start + row.arrive[Goal.A]
        assert at[Goal.C] >= table.start + row.arrive[Goal.C]
        assert at[Goal.A] <= at[Goal.B] <= at[Goal.C]
    assert all(a[g] < b[g] for a, b in pairwise(shown) for g in Goal)


def test_table_and_sheet_and_chat(drawn) -> None:
    """The clock of every goal at every point is the same text, and the whole times agree with the last of them."""
    event, table, shown, before = drawn
    text = printed(print_plan, before, "maren", SAY)
    sheet = html.unescape(re.sub(r"<[^>]+>", "\n", crew_sheets(before, ["maren"], event.name)))
    rows = tuple(
        PlanRow(
            point=r.point, name=event.courses[0].point(r.point).name, km=r.km,
            **{f"{g.value.lower()}_in": table.start + r.arrive[g] for g in Goal},
            b_out=table.start + r.leave[Goal.B], stop=r.stop, crew_access=False,
        )
        for r in table.rows
    )  # fmt: skip
    chat = say_plan(SAY, PlanAnswer("maren", "Maren", rows)).splitlines()[1:]
    for row, at, line in zip(rows, shown, chat, strict=False):
        (told,) = (x for x in text.splitlines() if re.match(rf"│ {row.name} ", x))
        clocks = [f"{at[g].astimezone(LONDON):%a %H:%M}" for g in Goal]
        assert [c for c in clocks if c in told] == clocks, told
        assert [c for c in clocks if c in sheet] == clocks
        assert [c for c in (f"{at[g].astimezone(LONDON):%H:%M}" for g in Goal) if c in line] == [
            c[4:] for c in clocks
        ], line
    for g in Goal:
        minutes = (shown[-1][g] - table.start) // timedelta(minutes=1)
        assert f"{g.value} {minutes // 60}:{minutes % 60:02d}" in goals_line(SAY, event, table)


def test_files_and_calendar(drawn, demo_course) -> None:
    """CSV, GPX and calendar have it as well; edges of her own window stand on five minutes outward."""
    event, table, shown, before = drawn
    for read, at in zip(csv.DictReader(io.StringIO(to_csv(event, table))), shown, strict=True):
        for g in Goal:
            assert datetime.fromisoformat(read[f"{g.value} in clock"]).replace(tzinfo=LONDON) == at[g]
            hours, minutes, seconds = (int(x) for x in read[f"{g.value} in"].split(":"))
            assert table.start + timedelta(hours=hours, minutes=minutes) == at[g]
            assert seconds == 0
    gpx = gpx_with_points(event, table, demo_course, SAY).decode()
    for at in shown:
        assert f"A {SAY.when(at[Goal.A], day=True)}, C {SAY.when(at[Goal.C], day=True)}" in gpx
    (race,) = (a for a in appointments_of(before, "maren", SAY) if a.id.startswith("race"))
    assert race.end == shown[-1][Goal.C]


def test_the_goals_say_what_they_are(drawn) -> None:
    """A, B and C mean nothing to whoever reads a plan for the first time."""
    event, table, _, _ = drawn
    assert re.search(
        r"A \S+ \(a good day\), B \S+ \(the target\), C \S+ \(a hard day\)\.", goals_line(SAY, event, table)
    )


@pytest.mark.parametrize(
    ("held", "says"),
    [
        ((), "1 in 10 is faster than A, 1 in 10 slower than C"),
        (("goal-a-limit",), "1 in 10 is slower than C, if she gets there; A,"),
        (("goal-c",), "1 in 10 is faster than A, if she gets there; C,"),
        (("goal-a-target", "goal-c"), "A to C are three ways to run it, not odds"),
    ],
)
def test_the_goals_say_what_of_them_are_odds(drawn, held, says) -> None:
    """A goal held by her limits or by a cut-off is no 10% or 90% side, and none is one before the finish."""
    event, table, _, _ = drawn
    free = tuple(n for n in table.notes if not n.kind.startswith("goal-"))
    drawn_up = replace(table, notes=(*free, *(note(kind) for kind in held)))
    line = goals_line(SAY, replace(event, limit=None), drawn_up)
    assert says in line
    assert line.endswith("three ways to run it, not odds: crew go by the windows of their meetings.")
    limited = goals_line(SAY, replace(event, limit=timedelta(hours=36)), drawn_up)
    assert limited.endswith("their meetings, which hold if she is in by the time limit.")
