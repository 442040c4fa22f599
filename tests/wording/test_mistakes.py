"""Mistakes of an event file in German: every one that the tests know, with its file, line, field and remedy."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from server.cli.main import stilepost
from server.event import Problem, Severity, parse_event
from server.wording.mistakes import file_language, problem_in, said_in, say_problem
from server.wording.mistakes_de import EVENT
from server.wording.mistakes_plan_de import PLAN
from tests.event.conftest import GOOD
from tests.event.test_wrong_files import WRONG
from tests.test_wrong_input import ROUTES

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize(("old", "new"), [row[:2] for row in WRONG])
def test_every_mistake_has_its_german(old: str, new: str) -> None:
    """What is wrong and what to do are other words, place and kind the same; values of the file stay as typed."""
    text = GOOD.replace(old, new) if old.startswith("[[points") else GOOD.replace(old, new, 1)
    for p in parse_event(text, "my.toml").problems:
        german = problem_in(p, "de")
        assert german.what != p.what
        assert german.remedy != p.remedy
        assert (german.file, german.line, german.field, german.severity) == (
            p.file,
            p.line,
            p.field,
            p.severity,
        )
        for typed in re.findall(r"'([^' ]+)'", p.what):
            assert typed in german.what
        said = say_problem(p, "de")
        kind = "Fehler" if p.severity is Severity.ERROR else "Warnung"
        assert said.startswith(str(p).split(f": {p.severity.value}:")[0] + f": {kind}:")
        assert "{" not in re.sub(r"\{ [^}]*\}|\{ \.\.\. \}", "", german.what)


@pytest.mark.parametrize("name", [row[0] for row in ROUTES])
def test_every_wrong_route_has_its_german(name: str, tmp_path: Path) -> None:
    """What `stilepost check` says of a route that is none is German where the file's people read German."""
    route = next(row[1] for row in ROUTES if row[0] == name)
    (tmp_path / "route.gpx").write_bytes(route)
    lines = _ten_lines().replace('{ name = "Maren" }', '{ name = "Maren", language = "de" }')
    lines = lines.replace('{ name = "Ana",', '{ name = "Ana", language = "de",')
    (tmp_path / "event.toml").write_text(lines, encoding="utf-8")
    found = CliRunner().invoke(stilepost, ["check", str(tmp_path / "event.toml")])
    told = [line for line in found.output.splitlines() if ": Fehler:" in line or ": Warnung:" in line]
    if found.exit_code:
        assert told
        assert found.output.rstrip().endswith("Fehler zu berichtigen.")
    english = re.compile(r"\b(the|is not|are|and|with|Export|Correct the)\b")
    for line in told:
        assert not english.search(re.sub(r"\([^)]*\)|<[^>]*>", "", line)), line


def _ten_lines() -> str:
    """The example as the README has it."""
    (found,) = re.findall(r"```toml\n(.*?)```", (ROOT / "README.md").read_text(encoding="utf-8"), re.DOTALL)
    return found


@pytest.mark.parametrize("key", [*EVENT, *PLAN])
def test_no_value_is_lost(key: str) -> None:
    """Each sentence has a place for every value of the English one, and for no other."""
    german = {**EVENT, **PLAN}[key]
    holes = len(re.findall(r"\{\}", key))
    numbered = re.findall(r"\{(\d)\}", german)
    assert len(numbered or re.findall(r"\{\}", german)) == holes
    assert sorted(numbered) == [str(k) for k in range(len(numbered))]


def test_an_id_that_is_used_often_is_told_in_german() -> None:
    """The one sentence about a name that there is none of, with all its lines, is German as a whole."""
    said = said_in("there is no person 'sam' (also on lines 114, 125, 131)", "de")
    assert said == "es gibt keine Person ‚sam‘ (auch in den Zeilen 114, 125, 131)"


@pytest.mark.parametrize(
    "limit",
    [
        "within her own limits (walk_kmh = 5.5, downhill_kmh = 9)",
        "at the best power anybody has held so long",
    ],
)
@pytest.mark.parametrize(
    "speeds", ["7.7 m/s uphill and 14.4 m/s on the level", "7.7 m/s uphill", "14.4 m/s on the level"]
)
def test_a_finish_out_of_reach_is_told_in_german(limit: str, speeds: str) -> None:
    """The planner's refusal of a target, all of it."""
    said = said_in(f"a finish in 2:00 needs {speeds}; {limit} this course takes 5:12:58", "de")
    assert said.startswith("ein Ziel in 2:00 braucht ")
    assert said.endswith(" dauert diese Strecke 5:12:58")
    for word in ("uphill", "level", "limits", "power", "needs", " and "):
        assert word not in said


def test_what_has_no_german_is_said_all_the_same() -> None:
    """A sentence that nobody has put into German goes out in English: nothing that is wrong is kept back."""
    p = Problem(Severity.ERROR, "the moon is in the way", "e.toml", 3, "event", "Wait for it")
    assert say_problem(p, "de") == "e.toml:3: Fehler: event: the moon is in the way. Wait for it."
    assert say_problem(p, "en") == str(p)
    assert said_in("the file is empty", "en") == "the file is empty"


@pytest.mark.parametrize(
    ("people", "language"),
    [
        ("", "en"),
        ('[[people]]\nname = "A"\n', "en"),
        ('[[people]]\nname = "A"\nlanguage = "de"\n', "de"),
        ('[[people]]\nname = "A"\nlanguage = "de"\n[[people]]\nname = "B"\n[[people]]\nname = "C"\n', "en"),
        ('[[people]]\nname = "O"\nlanguage = "de"\nparts = [{ kind = "organiser" }]\n' + '[[people]]\nname = "B"\n' * 3,
         "de"),
        ('[[people]]\nname = "A\nlanguage = "de"\n', "de"),
        ("people = 3\n", "en"),
    ],
)  # fmt: skip
def test_the_language_of_a_file(people: str, language: str) -> None:
    """The organiser's, else what most people read, also of a file that can't be parsed; English where nothing says."""
    assert file_language('[event]\nname = "x"\n' + people) == language


def test_check_speaks_german(tmp_path: Path) -> None:
    """A German crew's file with a slip: German words, the line, the key and the remedy."""
    lines = _ten_lines().replace('{ name = "Maren" }', '{ name = "Maren", language = "de" }')
    lines = lines.replace('{ name = "Ana",', '{ name = "Ana", language = "de",').replace(
        "minutes = 35", "minutes = true"
    )
    (tmp_path / "event.toml").write_text(lines, encoding="utf-8")
    found = CliRunner().invoke(stilepost, ["check", str(tmp_path / "event.toml")])
    assert found.exit_code == 1
    assert "event.toml:9: Fehler: drives.1.minutes: true ist keine Zahl." in found.output
    assert "Schreib eine Zahl ohne Anführungszeichen." in found.output
    assert "1 Fehler zu berichtigen." in found.output
    english = CliRunner().invoke(stilepost, ["check", str(tmp_path / "event.toml"), "--language", "en"])
    assert "is no number" in english.output
