"""Mistakes of an event file in other languages: every one that the tests know, with its file, line, field and remedy."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from server.cli.main import stilepost
from server.conversation.telling.mistakes import file_language, problem_in, said_in, said_of, say_problem
from server.event import Problem, Severity, parse_event
from server.sentences import fallback, languages, sentence
from tests.event.conftest import GOOD
from tests.event.test_wrong_files import WRONG
from tests.test_wrong_input import ROUTES

ROOT = Path(__file__).resolve().parents[3]


OTHERS = [x for x in languages() if x != fallback()]


def test_every_language_has_the_same_sentences() -> None:
    """What is put into one language is put into the others."""
    assert len(OTHERS) == 2
    assert len({frozenset(said_of(x)) for x in OTHERS}) == 1
    assert len(said_of(OTHERS[0])) > 500


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize(("old", "new"), [row[:2] for row in WRONG])
def test_every_mistake_has_its_words(old: str, new: str, language: str) -> None:
    """What is wrong and what to do are other words, place and kind the same; values of the file stay as typed."""
    text = GOOD.replace(old, new) if old.startswith("[[points") else GOOD.replace(old, new, 1)
    for p in parse_event(text, "my.toml", languages()).problems:
        other = problem_in(p, language)
        assert other.what != p.what
        assert other.remedy != p.remedy
        assert (other.file, other.line, other.field, other.severity) == (
            p.file,
            p.line,
            p.field,
            p.severity,
        )
        for typed in re.findall(r"'([^' ]+)'", p.what):
            assert typed in other.what
        said = say_problem(p, language)
        kind = sentence(language, f"mistake-{p.severity.value}")
        assert said.startswith(str(p).split(f": {p.severity.value}:")[0] + f": {kind}:")
        assert "{" not in re.sub(r"\{ [^}]*\}|\{ \.\.\. \}", "", other.what)


@pytest.mark.parametrize("name", [row[0] for row in ROUTES])
def test_every_wrong_route_has_its_german(name: str, tmp_path: Path) -> None:
    """What `stilepost check` says of a route that is none is German where the file's people read German."""
    route = next(row[1] for row in ROUTES if row[0] == name)
    (tmp_path / "route.gpx").write_bytes(route)
    lines = _read_in_german()
    (tmp_path / "event.toml").write_text(lines, encoding="utf-8")
    found = CliRunner().invoke(stilepost, ["check", str(tmp_path / "event.toml")])
    told = [line for line in found.output.splitlines() if ": Fehler:" in line or ": Warnung:" in line]
    if found.exit_code:
        assert told
        assert found.output.rstrip().endswith("Fehler zu berichtigen.")
    english = re.compile(r"\b(the|is not|are|and|with|Export|Correct the)\b")
    for line in told:
        assert not english.search(re.sub(r"\([^)]*\)|<[^>]*>", "", line)), line


def _read_in_german() -> str:
    """The README's example, its people reading German."""
    (found,) = re.findall(r"```toml\n(.*?)```", (ROOT / "README.md").read_text(encoding="utf-8"), re.DOTALL)
    before, *people = str(found).split("[[people]]\n")
    return before + "".join(f'[[people]]\nlanguage = "de"\n{p}' for p in people)


@pytest.mark.parametrize(("language", "key"), [(x, k) for x in languages() for k in said_of(x)])
def test_no_value_is_lost(language: str, key: str) -> None:
    """Each sentence has a place for every value of the English one, and for no other."""
    said = said_of(language)[key]
    holes = len(re.findall(r"\{\}", key))
    numbered = re.findall(r"\{(\d)\}", said)
    assert len(numbered or re.findall(r"\{\}", said)) == holes
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
    lines = _read_in_german().replace("minutes = 35", "minutes = true")
    at = lines[: lines.index("minutes = true")].count("\n") + 1
    (tmp_path / "event.toml").write_text(lines, encoding="utf-8")
    found = CliRunner().invoke(stilepost, ["check", str(tmp_path / "event.toml")])
    assert found.exit_code == 1
    assert f"event.toml:{at}: Fehler: drives.1.minutes: true ist keine Zahl." in found.output
    assert "Schreib eine Zahl ohne Anführungszeichen." in found.output
    assert "1 Fehler zu berichtigen." in found.output
    english = CliRunner().invoke(stilepost, ["check", str(tmp_path / "event.toml"), "--language", "en"])
    assert "is no number" in english.output
