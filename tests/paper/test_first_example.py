"""The promise of the README: one command turns a GPX file and its first example into timetable, meetings and calendar."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

import icalendar
import numpy as np
import pytest
from click.testing import CliRunner, Result

from server.cli.main import stilepost
from tests.plan import synthetic as made

ROOT = Path(__file__).resolve().parents[2]


def first_example() -> str:
    """The example as the README has it."""
    (found,) = re.findall(r"```toml\n(.*?)```", (ROOT / "README.md").read_text(encoding="utf-8"), re.DOTALL)
    return found


def beside_the_route(folder: Path, lines: str) -> str:
    """An event file with these lines beside the demo's route; its path."""
    folder.mkdir(parents=True, exist_ok=True)
    shutil.copy(ROOT / "demo_event/route.gpx", folder / "route.gpx")
    (folder / "event.toml").write_text(lines, encoding="utf-8")
    return str(folder / "event.toml")


def stilepost_says(*arguments: str) -> Result:
    """What the command prints, and its exit code."""
    return CliRunner().invoke(stilepost, list(arguments))


@pytest.fixture(scope="module")
def planned(tmp_path_factory) -> tuple[Result, Path]:
    """The command run once on the example beside the demo's route."""
    here = tmp_path_factory.mktemp("first")
    file = beside_the_route(here, first_example())
    return stilepost_says("plan", file, "--out", str(here / "out"), "--picture", str(here / "p.png")), here


def test_it_is_one_screen() -> None:
    """One key a line, as a person writes it, and no more than one screen of them."""
    lines = first_example().strip().splitlines()
    assert len(lines) <= 60
    assert len([x for x in lines if "=" in x]) <= 32


def test_the_command_succeeds_and_shows_the_plan(planned) -> None:
    """Timetable, what it rests on, light, and the meeting with its leave-by stand in the terminal."""
    result, _ = planned
    assert result.exit_code == 0, result.output
    assert "Fell 50 in 7:40, by distance and climb" in result.output
    assert re.search(r"Leave by Sat 0\d:\d\d, from hotel\.", result.output)
    assert "walking costs no time on" in result.output
    assert "sunset" in result.output
    assert "error" not in result.output


def test_it_writes_what_is_handed_out(planned) -> None:
    """Table, JSON, GPX, picture, a calendar and a sheet for each person, all of them whole."""
    _, here = planned
    out = here / "out"
    names = {p.name for p in out.iterdir()}
    assert {"timetable.csv", "plan.json", "course-with-points.gpx", "plan.png", "crew-sheets.html"} <= names
    assert {"calendar-ana.ics", "calendar-maren.ics", "sheet-ana.html", "sheet-maren.html"} <= names
    points = json.loads((out / "plan.json").read_text(encoding="utf-8"))["points"]
    assert [p["id"] for p in points] == ["start", "skelter-mill", "finish"]
    (met,) = json.loads((out / "plan.json").read_text(encoding="utf-8"))["meetings"]
    assert [(r["names"], r["from"], r["confirmed"]) for r in met["rides"]] == [(["Ana"], "hotel", True)]
    assert "Ana,Ana,,hotel,0:35:00,yes,2027-06-19 0" in (out / "meetings.csv").read_text(encoding="utf-8-sig")
    (entry,) = icalendar.Calendar.from_ical((out / "calendar-ana.ics").read_bytes()).walk("VEVENT")
    assert str(entry["summary"]).startswith("Leave by Sat 0")
    assert (here / "p.png").read_bytes()[:4] == b"\x89PNG"


def test_a_missing_recording_is_told_with_its_line(tmp_path) -> None:
    """The same file naming a recording that is not there: exit code 1, file, line, field, remedy."""
    lines = first_example().replace("past_race =", 'own_runs = ["a.gpx"]\npast_race =')
    result = stilepost_says("plan", beside_the_route(tmp_path, lines))
    line = next(n for n, row in enumerate(lines.splitlines(), 1) if "own_runs" in row)
    assert result.exit_code == 1
    assert f"event.toml:{line}: error: runners.maren.own_runs: there is no file a.gpx" in result.output
    assert "Put it beside the event file" in result.output


def test_a_plan_that_breaks_a_rule_is_refused(tmp_path) -> None:
    """A pacer sooner than the rules let them come, or a car more: the rule is named, the exit code 1."""
    lines = first_example().replace('crew = ["ana"]', 'crew = ["ana"]\ncar = "van"')
    lines += '[rules]\nvehicles_max = 0\n[[cars]]\nid = "van"\nname = "van"\n'
    result = stilepost_says("plan", beside_the_route(tmp_path, lines))
    assert result.exit_code == 1
    assert "the rules allow 0" in result.output


def test_an_unknown_runner_is_told_who_there_is(planned) -> None:
    """--runner with a name that is not there names those who are."""
    _, here = planned
    result = stilepost_says("plan", str(here / "event.toml"), "--runner", "marn")
    assert result.exit_code == 1
    assert "Use one of: maren." in result.output


def test_a_file_that_cannot_be_written_is_told(planned, tmp_path) -> None:
    """--picture into a place that is a file already says which and what to do."""
    _, here = planned
    (tmp_path / "taken").write_text("x", encoding="utf-8")
    result = stilepost_says("plan", str(here / "event.toml"), "--picture", str(tmp_path / "taken" / "p.png"))
    assert result.exit_code == 1
    assert "can't be written" in result.output


def test_load_and_export_keep_the_files(tmp_path) -> None:
    """Recordings travel with the stored version: loaded, exported, they are the same bytes under the same names."""
    run = made.to_fit(made.record(np.random.default_rng(1), 12.0, 0.05, 9.5))
    named = 'own_runs = ["runs/long.fit"]\npast_race ='
    lines, out = first_example().replace("past_race =", named), tmp_path / "out"
    file = beside_the_route(tmp_path / "in", lines)
    (tmp_path / "in/runs").mkdir()
    (tmp_path / "in/runs/long.fit").write_bytes(run)
    database = ("--database", f"sqlite:///{tmp_path / 'd.sqlite'}")
    loaded = stilepost_says(*database, "load", file, "--yes")
    assert loaded.exit_code == 0, loaded.output
    exported = stilepost_says(*database, "export", "my-first-hundred", str(out))
    assert exported.exit_code == 0, exported.output
    assert (out / "runs/long.fit").read_bytes() == run
    assert (out / "event.toml").read_text(encoding="utf-8") == lines
    again = stilepost_says("check", str(out / "event.toml"))
    assert again.exit_code == 0, again.output
