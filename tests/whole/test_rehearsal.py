"""A race of one's own rehearsed: from the event file to every message, through the real server on a stepped clock."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from io import StringIO
from pathlib import Path

import pytest
from click.testing import CliRunner
from rich.console import Console

from demo_event import play
from demo_event.knowing import Row, longest
from demo_event.rehearse import script, steps
from server.api.building import Built, build
from server.cli.main import stilepost
from server.event.model import Event, Goal, ReporterKind
from tests.api.test_stages import TWO_DAYS

DEMO = Path(play.__file__).parent
TEXT = (DEMO / "event.toml").read_text("utf-8")
FILES = {"route.gpx": (DEMO / "route.gpx").read_bytes()}


@pytest.fixture(scope="module")
def built() -> Built:
    """The demo's event, as anybody's."""
    return build(TEXT, FILES)


def test_she_is_reported_where_anybody_reports_at_the_planned_times(built: Built) -> None:
    """In and out of every reported point, times as planned or so many times as long, in order, the start out and the finish
    in; a point nobody reports from says nothing."""
    table = built.timetables["maren"]
    rows = {r.point: r for r in table.rows}
    found = [s for s in steps(built, 1.2, None) if s.post]
    assert [s.at for s in found] == sorted(s.at for s in found)
    assert {s.who for s in found} == {"maren"}
    said = [(str(s.post["kind"]), str(s.post["point"])) for s in found if s.post]
    assert said[0] == ("out", table.rows[0].point)
    assert said[-1] == ("in", table.rows[-1].point)
    points = {p.id: p for p in built.event.course_of("maren").points}
    between = {p for _, p in said} - {table.rows[0].point, table.rows[-1].point}
    heard = {i for i in points if any(r.by is not ReporterKind.NOBODY for r in points[i].reports)}
    assert between == heard - {table.rows[0].point, table.rows[-1].point}
    assert between < set(points)
    for s, (kind, point) in zip(found, said, strict=True):
        row = rows[point]
        planned = row.arrive[Goal.B] if kind == "in" else row.leave[Goal.B]
        assert s.at == built.event.starts + 1.2 * planned


def test_a_wave_starts_at_its_own_time_and_a_stage_scales_no_night() -> None:
    """Of a runner whose wave is three quarters of an hour later nothing comes before it; a night between two stages is as
    long at any pace."""
    started = build(TEXT, FILES)
    late = replace(started.event.runners[0], start=started.event.starts + timedelta(minutes=45))
    later = replace(started.event, runners=(late, *started.event.runners[1:]))
    found = [
        s for s in steps(replace_event(started, later), 1.2, None) if s.post and s.post["runner"] == late.id
    ]
    assert found[0].at == late.start
    staged = build(TWO_DAYS, FILES)
    camp = next(p for p in staged.event.courses[0].points if p.id == "camp")
    for slower in (1.0, 1.1):
        out = next(
            s
            for s in steps(staged, slower, None)
            if s.post and (s.post["kind"], s.post["point"]) == ("out", "camp")
        )
        assert out.at == camp.next_stage


def replace_event(built: Built, event: Event) -> Built:
    """The same with another event."""
    return Built(event, built.courses, built.timetables)


def test_nothing_is_heard_after_the_point_she_is_said_to_stop_at(built: Built) -> None:
    """The last report is the out of that point, and the night goes on long enough for the alarm."""
    found = steps(built, 1.0, "mill")
    assert found[-2].post == {"kind": "out", "point": "mill", "runner": "maren"}
    assert found[-1].post is None
    assert found[-1].at > built.event.starts + built.timetables["maren"].rows[-1].arrive[Goal.B]
    with pytest.raises(play.StoryError, match="no point 'mil'"):
        steps(built, 1.0, "mil")


async def test_everybody_is_told_what_they_would_be(tmp_path: Path) -> None:
    """Played through the server from the day before: the test alarm is answered, crew are told when to leave and that she
    is in; nobody is chased for it."""
    printed = StringIO()
    console = Console(file=printed, width=play.ON_A_LINE, highlight=False, soft_wrap=True)
    whole = script(TEXT, FILES)
    until: datetime = build(TEXT, FILES).event.starts + timedelta(hours=5)
    part = replace(whole, steps=lambda b: tuple(s for s in whole.steps(b) if s.at < until))
    async with play.stage(tmp_path, 1e6, 0, console, part) as player:
        await player.play()
        await play.print_table(player)
    text = printed.getvalue()
    assert "a rehearsal, as planned. Nobody is sent anything" in text
    assert text.count("TEST ALARM") == text.count("[I have it]") > 2
    assert text.count("[EXERCISE, nothing has happened] TEST ALARM") == text.count("TEST ALARM")
    assert "[EXERCISE, nothing has happened] Leave" in text
    assert "[On our way]" in text
    assert "reported: out" in text
    assert "Leave by" in text
    assert "NO ANSWER" not in text
    # Who knew what by when, on what fact, stands at the end.
    assert "Longest from a fact to who needed it" in text
    assert "Everybody was reached." in text


def test_a_point_that_is_none_is_refused_by_name(tmp_path: Path) -> None:
    """The command says which points there are."""
    for name, content in (("event.toml", TEXT.encode()), *FILES.items()):
        (tmp_path / name).write_bytes(content)
    refused = CliRunner().invoke(
        stilepost, ["rehearse", str(tmp_path / "event.toml"), "--stops-after", "nowhere", "--no-keep"]
    )
    assert refused.exit_code != 0
    assert "no point 'nowhere'. Use one of: " in refused.output


def test_what_is_asked_again_was_not_told_late(built: Built) -> None:
    """Finished, told at once and asked about again after 20 and 40 minutes: nobody waited for it."""
    at = built.event.starts

    def row(after: int, person: str) -> Row:
        told = at + timedelta(minutes=after)
        return Row(told, told, person, "finished", "finish", "in", at)

    found = longest([row(0, "ana"), row(2, "jonas"), row(20, "ana"), row(40, "ana")])
    assert found is not None
    assert (found.person, found.waited) == ("jonas", timedelta(minutes=2))
