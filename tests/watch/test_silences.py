"""The table of silences before the race: the moments of the night, why an alarm comes late, what would shorten it."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from rich.console import Console

from server.api.building import Built, build
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.event.model import Event, Goal, ReporterKind, ReportsThere, Signal
from server.facts.entry import Entry, Kind, Source
from server.facts.fold import fold
from server.forecast.bridge import outlook
from server.paper.before import BeforeStart, before_start
from server.paper.sheet import crew_sheets
from server.paper.silences import print_silences, silence_notes
from server.watch.silence import late_at, overdue
from server.watch.silences import FAR, SECOND, Because, LegSilence, silences
from server.watch.situation import Situation
from server.watch.told_times import sight_of
from tests.whole import hill

STARTS = datetime(2027, 6, 19, 20, 0, tzinfo=hill.ZONE)
RUNNER = hill.RUNNER


@pytest.fixture(scope="module")
def built() -> Built:
    """The ridge by night."""
    return build(hill.event_text(STARTS), hill.files())


def rows_of(built: Built, event: Event | None = None) -> tuple[LegSilence, ...]:
    event = event or built.event
    return silences(event, RUNNER, built.timetables[RUNNER], built.courses[event.runner(RUNNER).course])


@pytest.fixture(scope="module")
def rows(built: Built) -> tuple[LegSilence, ...]:
    return rows_of(built)


def with_reports(event: Event, **reports: tuple[ReportsThere, ...]) -> Event:
    """The event with other reporters at some points."""
    course = event.courses[0]
    points = tuple(replace(p, reports=reports[p.id]) if p.id in reports else p for p in course.points)
    return replace(event, courses=(replace(course, points=points),))


def test_a_row_for_each_goal_and_each_point_but_the_finish(rows: tuple[LegSilence, ...]) -> None:
    """In running order, A before B before C, each later than the one before."""
    points = list(dict.fromkeys(r.point for r in rows))
    assert points == ["start", "larch", "hollin", "tarn", "wythe"]
    for p in points[1:]:
        three = [r for r in rows if r.point == p]
        assert [r.goal for r in three] == [Goal.A, Goal.B, Goal.C]
        assert three[0].left < three[1].left < three[2].left


def test_home_hears_before_the_alarm_and_crew_before_home(rows: tuple[LegSilence, ...]) -> None:
    """In every row."""
    for r in rows:
        assert r.left < r.likely < r.asked <= r.home
        assert r.alarm is None or r.home < r.alarm


def test_the_table_says_what_the_night_does(built: Built, rows: tuple[LegSilence, ...]) -> None:
    """Reported out of the mill by goal B and nothing more, the live rules ask and alarm at the moments printed."""
    (row,) = [r for r in rows if (r.point, r.goal) == ("hollin", Goal.B)]
    table, event = built.timetables[RUNNER], built.event
    course = built.courses[event.runner(RUNNER).course]
    start = event.runner(RUNNER).start
    entries = [
        Entry(p, event.id, RUNNER, Kind.OUT, at, at, at, "vera", Source.VOLUNTEER, "vera", p, point=p)
        for p in ("start", "larch", "hollin")
        if (at := start + table.row(p).leave[Goal.B])
    ]
    state = fold(entries, event, row.left)
    found = outlook(event, state.runner(RUNNER), state, table, course)
    sight = sight_of(Situation(event, state, {RUNNER: found}, {RUNNER: table}, {}, (), ()), RUNNER, row.left)
    due = overdue(sight)
    assert late_at(sight) == (row.next_point, row.asked)
    assert due is not None
    assert (due.at, due.why) == (row.alarm, row.why)


def test_an_alarm_that_comes_far_past_the_likely_time_is_explained(built: Built) -> None:
    """A volunteer who misses 3 in 10 at the tarn: it says so, and that one reporter more brings it forward to what it
    then is."""
    weak = ReportsThere(ReporterKind.VOLUNTEER, 0.7, timedelta(minutes=5))
    event = with_reports(built.event, tarn=(weak,))
    (row,) = [r for r in rows_of(built, event) if (r.point, r.goal) == ("hollin", Goal.B)]
    assert row.far
    assert row.after is None or row.after > FAR
    assert Because.MISSED in row.because
    assert row.misses == pytest.approx(0.3)
    assert row.shorter is not None
    (after,) = [
        r
        for r in rows_of(built, with_reports(event, tarn=(weak, SECOND)))
        if (r.point, r.goal) == ("hollin", Goal.B)
    ]
    assert (row.shorter.point, row.shorter.alarm) == ("tarn", after.alarm)
    assert row.alarm is None or after.alarm < row.alarm


def test_points_that_nobody_reports_from_are_named(built: Built) -> None:
    """Nobody at the tarn: she is asked about at Wythe Cross, and the tarn is why it takes so long."""
    event = with_reports(built.event, tarn=())
    (row,) = [r for r in rows_of(built, event) if (r.point, r.goal) == ("hollin", Goal.B)]
    assert (row.next_point, row.quiet) == ("wythe", ("tarn",))
    assert not any(r.point == "tarn" for r in rows_of(built, event)), "she is not known to have left it"


def test_crew_without_a_signal_are_no_reporters(built: Built) -> None:
    """Only crew report from the tarn: out of signal they can't."""
    course = built.event.courses[0]
    points = tuple(replace(p, signal=Signal.NONE) if p.id == "tarn" else p for p in course.points)
    event = replace(built.event, courses=(replace(course, points=points),))
    (row,) = [r for r in rows_of(built, event) if (r.point, r.goal) == ("hollin", Goal.B)]
    assert row.quiet == ("tarn",)
    assert row.told is None or row.next_point == "wythe"


@pytest.fixture(scope="module")
def before(built: Built) -> BeforeStart:
    return before_start(built.event, built.timetables, built.courses, STARTS)


@pytest.mark.parametrize(("language", "words"), [("en", "Home told"), ("de", "Zu Hause gesagt")])
def test_it_is_printed_for_those_at_home_and_on_the_screen(
    before: BeforeStart, language: str, words: str
) -> None:
    """On the sheet of the safety contact, not on a driver's; in the terminal in the reader's language."""
    found = before
    assert "Home told" in crew_sheets(found, ["ines"], "x")
    assert "Home told" not in crew_sheets(found, ["ana"], "x")
    console = Console(width=200)
    say = Say(Reader(language, "Europe/London", "Europe/London"), found.at)
    with console.capture() as shown:
        print_silences(console, found, RUNNER, say)
    assert words in shown.get()


def test_the_note_gives_reason_and_remedy_in_words(built: Built) -> None:
    """One sentence each."""
    weak = ReportsThere(ReporterKind.VOLUNTEER, 0.7, timedelta(minutes=5))
    event = with_reports(built.event, tarn=(weak,))
    found = before_start(event, built.timetables, built.courses, STARTS)
    notes = silence_notes(found, RUNNER, Say(Reader("en", "Europe/London", "Europe/London"), found.at))
    (note,) = [n for n in notes if n.startswith("After Hollin Mill")]
    assert "Those who report from Black Tarn miss about 1 runner in 3." in note
    assert "One reporter more at Black Tarn brings it to" in note
    assert "Crew there who answer ‘not yet’ bring it to" in note


def test_where_hardly_anybody_reports_it_says_so(built: Built) -> None:
    """Not that they miss '1 runner in 1'."""
    weak = ReportsThere(ReporterKind.VOLUNTEER, 0.2, timedelta(minutes=5))
    event = with_reports(built.event, tarn=(weak,))
    found = before_start(event, built.timetables, built.courses, STARTS)
    notes = silence_notes(found, RUNNER, Say(Reader("en", "Europe/London", "Europe/London"), found.at))
    (note,) = [n for n in notes if n.startswith("After Hollin Mill")]
    assert "Most are not reported from Black Tarn" in note
