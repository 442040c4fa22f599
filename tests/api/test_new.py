"""`stilepost new`: the link to the set-up, on its own server or the one that runs; and the questions in the terminal."""

from __future__ import annotations

import os
import subprocess
import sys
import urllib.request
from pathlib import Path

from click.testing import CliRunner

from server.api.building import build
from server.cli.main import stilepost
from tests.pages.setup_race import made_gpx

ROOT = Path(__file__).parents[2]
RACE = [
    "Two Hills",
    "2027-06-19",
    "05:00",
    "Europe/London",
    "12",
    "The hall",
    "+44 1632 960001",
    "112",
    "bus",
]
AGAIN = ["", "", "", "", "12", "", "", "", ""]
TABLE = ["10,6 km\tTarn Head\t07:45\tyes", "21.1;Bridge;10:30;no", "31.7\tFold Inn\tSat 13:00\tyes", "", "y"]
RUNNER = ["Maren", "12", "", "rain jacket", "Fell 50", "52", "1900", "7:40"]
PEOPLE = [
    "+44 1632 960002",
    "Ana",
    "+44 1632 960011",
    "y",
    "n",
    "n",
    "y",
    "Jo",
    "+44 1632 960012",
    "n",
    "n",
    "y",
    "y",
    "",
]
MEETINGS = ["y", "25", "", ""]


def asked(folder: Path, answers: list[str]) -> str:
    result = CliRunner().invoke(
        stilepost, ["new", str(folder), "--terminal"], input="\n".join(answers) + "\n"
    )
    assert result.exit_code == 0, result.output
    return result.output


def test_the_terminal_asks_the_same_and_writes_the_file(tmp_path: Path) -> None:
    """A wrong route and a wrong limit are told and asked again, what was right need not be typed twice."""
    route, folder = tmp_path / "hills.gpx", tmp_path / "race"
    route.write_bytes(made_gpx())
    wrong = [*RACE[:4], "all day", *RACE[5:]]
    answers = [
        str(tmp_path / "none.gpx"),
        str(route),
        *wrong,
        "y",
        *AGAIN,
        *TABLE,
        *RUNNER,
        *PEOPLE,
        *MEETINGS,
    ]
    said = asked(folder, answers)
    assert "can't be read" in said
    assert "'all day' is no length of time" in said
    assert "Nothing stands in the way" in said
    text = (folder / "event.toml").read_text("utf-8")
    built = build(text, {"route.gpx": (folder / "route.gpx").read_bytes()})
    assert built.event.name == "Two Hills"
    assert [m.point for m in built.event.meetings] == ["tarn-head", "fold-inn"]
    assert [(d.minutes, d.confirmed_by) for d in built.event.drives] == [(25, "ana")]


def test_a_link_to_a_server_of_its_own_then_to_the_one_that_runs(tmp_path: Path) -> None:
    database = f"sqlite+aiosqlite:///{tmp_path}/x.db"
    command = [sys.executable, "-c", "from server.cli import main; main()", "--database", database]
    with subprocess.Popen(
        [*command, "new", str(tmp_path / "race"), "--port", "0", "--no-browser"],
        cwd=ROOT, env=os.environ | {"PYTHONUNBUFFERED": "1"}, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True,
    ) as running:  # fmt: skip
        try:
            assert running.stdout is not None
            first = next(line.strip() for line in running.stdout if line.startswith("http://127.0.0.1:"))
            site, _, secret = first.partition("/setup#")
            second = CliRunner().invoke(
                stilepost, ["--database", database, "new", str(tmp_path / "race"), "--no-browser"]
            )
            assert f"{site}/setup#" in second.output
            assert secret not in second.output
            with urllib.request.urlopen(f"{site}/setup") as page:
                assert "stilepost new" in page.read().decode()
        finally:
            running.terminate()
            running.wait(20)
