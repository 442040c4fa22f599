"""Mistakes of an event file in other languages: every one that the tests know, with its file, line, field and remedy."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from server.cli.main import stilepost
from server.conversation.telling.mistakes import file_language
from server.event import Problem, Severity, parse_event
from server.event.problem import once
from server.sentences import as_said, both, fallback, languages, say, sentence
from tests.event.conftest import GOOD
from tests.event.test_wrong_files import WRONG
from tests.test_wrong_input import ROUTES

ROOT = Path(__file__).resolve().parents[3]


OTHERS = [x for x in languages() if x != fallback()]


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize(("old", "new"), [row[:2] for row in WRONG])
def test_every_mistake_has_its_words(old: str, new: str, language: str) -> None:
    """What is wrong and what to do are other words, place and kind the same; values of the file stay as typed."""
    text = GOOD.replace(old, new) if old.startswith("[[points") else GOOD.replace(old, new, 1)
    for p in parse_event(text, "my.toml", languages()).problems:
        assert p.what.in_language(language) != str(p.what)
        assert p.remedy is not None
        assert p.remedy.in_language(language) != str(p.remedy)
        for typed in re.findall(r"'([^' ]+)'", str(p.what)):
            assert typed in p.what.in_language(language)
        said = p.in_language(language)
        kind = sentence(language, f"mistake-{p.severity.value}")
        assert said.startswith(str(p).split(f": {p.severity.value}:")[0] + f": {kind}:")
        assert "…" not in said


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


def test_an_id_that_is_used_often_is_told_in_german() -> None:
    """The one sentence about a name that there is none of, with all its lines, is German as a whole."""
    what = say("wrong-no-such", what="person", word="sam")
    lines = (9, 114, 125, 131)
    (one,) = once(
        Problem(Severity.ERROR, what, "e.toml", line, "meetings", say("do-known", ids="ana"))
        for line in lines
    )
    assert one.in_language("de").startswith(
        "e.toml:9: Fehler: meetings: es gibt keine Person ‚sam‘ (auch in den Zeilen 114, 125, 131)."
    )


@pytest.mark.parametrize("limit", ["wrong-finish-within-limits", "wrong-finish-within-power"])
@pytest.mark.parametrize("speeds", [{"uphill": "7.7", "level": "14.4"}, {"uphill": "7.7"}, {"level": "14.4"}])
def test_a_finish_out_of_reach_is_told_in_german(limit: str, speeds: dict[str, str]) -> None:
    """The planner's refusal of a target, what stands in it too."""
    needs = say(f"wrong-speed-{'-'.join(speeds)}", **speeds)
    said = say(limit, target="2:00", needs=needs, limits="walk_kmh = 5.5", fastest="5:12:58").in_language(
        "de"
    )
    assert said.startswith("ein Ziel in 2:00 braucht ")
    assert said.endswith(" dauert diese Strecke 5:12:58")
    assert all(value in said for value in speeds.values())
    for word in ("uphill", "level", "limits", "power", "needs", " and "):
        assert word not in said


def test_a_language_that_is_not_there_is_said_in_the_fallback() -> None:
    """Nothing that is wrong is kept back, and a remedy may be none."""
    p = Problem(Severity.ERROR, as_said("der Mond steht im Weg"), "e.toml", 3, "event", None)
    assert p.in_language("xx") == str(p) == "e.toml:3: error: event: der Mond steht im Weg."
    twice = both(say("do-aim-later-finish"), say("do-check-what-follows"))
    assert twice.in_language("xx") == str(twice) == "Aim for a later finish Check the @ and what follows it."


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


@pytest.mark.parametrize("language", OTHERS)
def test_a_line_and_its_points_are_told_without_english(language: str) -> None:
    """Start and finish, tracks and routes, and places a line comes by are said in the reader's words."""
    ways = [
        say("wrong-s-joined", file="a.gpx", count=2, kind=kind, lines="a.gpx:3")
        for kind in ("track", "route")
    ]
    ends = [
        say("wrong-waypoint-from-line", waypoint="Mill", distance="2 km", end=e) for e in ("start", "finish")
    ]
    waves = [say("do-add-start-under-waves-known", known=known) for known in ("none", "early, late")]
    for one, other in (ways, ends, waves):
        told = {one.in_language(language), other.in_language(language)}
        assert len(told) == 2
        assert not re.search(r"\b(tracks|routes|start|finish|none|and)\b", " ".join(told))
