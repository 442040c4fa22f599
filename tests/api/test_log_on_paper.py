"""`stilepost log`: a log kept on paper goes in, or a refusal with file and line, in the language of who kept it."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from server.cli.main import stilepost
from tests.api.conftest import DEMO


@pytest.fixture
def shell(tmp_path: Path, sqlite_template: Path):
    """Runs commands on a stored race that has been run, in which Ana reads German."""
    shutil.copy(sqlite_template, tmp_path / "one.db")
    shutil.copy(DEMO / "route.gpx", tmp_path / "route.gpx")
    text = (DEMO / "event.toml").read_text(encoding="utf-8")
    text = text.replace("2027-09-11", "2026-09-12").replace(
        'name = "Ana"\n', 'name = "Ana"\nlanguage = "de"\n'
    )
    (tmp_path / "event.toml").write_text(text, encoding="utf-8")

    def run(*arguments: str) -> Result:
        url = f"sqlite+aiosqlite:///{tmp_path / 'one.db'}"
        return CliRunner().invoke(stilepost, ["--database", url, *arguments])

    loaded = run("load", str(tmp_path / "event.toml"), "--yes")
    assert loaded.exit_code == 0, loaded.output
    return run


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("when,where,what", "der ersten Zeile fehlen die Spalten time, point, log."),
        ("time,point,log\n25:00,mill,drank 500", "Zeile 2, time: ‚25:00‘ ist kein Tag mit Uhrzeit."),
        (
            "time,point,log\n2096-09-12 10:00,mill,drank 500",
            "Zeile 2, time: 2096-09-12 10:00 liegt noch vor uns.",
        ),
        (
            "time,point,log\n2026-09-12 10:00,mil,drank 500",
            "Zeile 2, point: es gibt für sie keinen Punkt ‚mil‘.",
        ),
        (
            "time,point,log\n2026-09-12 10:00,mill,xyzzy",
            "Zeile 2, log: nicht alles in ‚xyzzy‘ ist verständlich.",
        ),
    ],
)
def test_a_refusal_names_the_file_and_reads_as_the_writer_does(
    shell, tmp_path: Path, row: str, said: str
) -> None:
    """Who kept the log reads German: file, line and column, and what is wrong."""
    file = tmp_path / "log.csv"
    file.write_text(row + "\n", encoding="utf-8")
    told = shell("log", str(file), "--by", "ana")
    assert told.exit_code == 1
    assert told.output.startswith(f"Fehler: {file}: {said}")


def test_every_wrong_line_is_told_and_none_stored(shell, tmp_path: Path) -> None:
    """Three lines with four mistakes, one that is right and one that is empty: all four with their lines, nothing kept."""
    file = tmp_path / "log.csv"
    rows = (
        "time,point,log",
        "2026-09-12 10:00,mill,drank 500",
        "2026-13-12 10:00,mil,drank 500",
        "2026-09-12 12:00,brindle,",
        "2096-09-12 14:00,brindle,feet good",
        "2026-09-12 15:00,brindle,xyzzy",
    )
    file.write_text("\n".join(rows), encoding="utf-8")
    told = shell("log", str(file), "--by", "maren")
    assert told.exit_code == 1
    lines = told.output.splitlines()
    assert [x.partition(f"{file}: ")[2].partition(":")[0] for x in lines[:-1]] == [
        "line 3, time",
        "line 3, point",
        "line 5, time",
        "line 6, log",
    ]
    assert lines[-1] == "Nothing has been stored: mend these 4 and read the file in again."
    file.write_text("\n".join(rows[:2]), encoding="utf-8")
    assert "One new line is in the log" in shell("log", str(file), "--by", "maren").output


def test_what_stands_behind_a_comma_is_kept(shell, tmp_path: Path) -> None:
    """A log with commas that nobody put into quotes was cut at the first of them."""
    file = tmp_path / "log.csv"
    file.write_text("time,point,log\n2026-09-12 10:00,mill,drank 500, xyzzy\n", encoding="utf-8")
    assert "not all of ‘drank 500, xyzzy’" in shell("log", str(file), "--by", "maren").output


def test_a_log_goes_in_once(shell, tmp_path: Path) -> None:
    """Read in again its lines are counted as there already."""
    file = tmp_path / "log.csv"
    file.write_text("time,point,log\n2026-09-12 10:00,mill,drank 500; no ibuprofen\n", encoding="utf-8")
    assert "Eine neue Zeile steht im Protokoll" in shell("log", str(file), "--by", "ana").output
    again = shell("log", str(file), "--by", "maren").output, shell("log", str(file), "--by", "maren").output
    assert again[0].startswith("One new line is in the log")
    assert again[1].startswith("0 new lines are in the log; there before: 1.")
