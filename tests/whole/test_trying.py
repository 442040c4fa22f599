"""Sentences tried on a story: each line meets the story as it stood at its moment, and nothing of the other lines."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from server.cli.main import stilepost
from tests.bot.conftest import EVENT, route_gpx

STORY = """
[[step]]
at = "05:02"
who = "olga"
says = "maren out of start at 5:00"

[[step]]
at = "07:05"
who = "ana"
says = "in at mill 7:02"

[[step]]
at = "07:10"
who = "ana"
says = "out of mill 7:08"
"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An event's folder with a short story."""
    made = tmp_path_factory.mktemp("tried")
    (made / "event.toml").write_text(EVENT, "utf-8")
    (made / "story.toml").write_text(STORY, "utf-8")
    (made / "route.gpx").write_bytes(route_gpx())
    return made


def tried(folder: Path, *lines: dict[str, Any] | str, keep: Path | None = None) -> tuple[int, list[Any], str]:
    """Exit code, what was printed, and the whole output."""
    file = folder.parent / "said.jsonl"
    rows = [r if isinstance(r, str) else json.dumps({"event": str(folder), **r}) for r in lines]
    file.write_text("\n".join(rows), "utf-8")
    came = CliRunner().invoke(stilepost, ["try", str(file), *(["--keep", str(keep)] if keep else [])])
    printed = [json.loads(row) for row in came.stdout.splitlines()] if came.exit_code == 0 else []
    return came.exit_code, printed, came.output


def test_each_line_is_said_to_the_story_at_its_moment(folder: Path) -> None:
    """In order of the lines, not of their times; what one line reports no other hears of; turns follow each other."""
    code, came, output = tried(
        folder,
        {"id": "first", "as": "ana", "at": "Sat 07:30", "say": "in at gate 7:28"},
        {"as": "Ana", "at": "Sat 07:06", "say": ["out of mill", "undo", {"press": "out of"}, {"km": 15.0}]},
        {"as": "ines", "at": "Fri 20:00", "say": "where is maren"},
        {"as": "ana", "at": "2027-06-19 07:30", "say": "where is maren"},
        {"as": "ana", "at": "Sat 07:31", "say": "maren collapsed"},
    )
    assert code == 0, output
    doubted, turns, before, after, help_ = came
    assert doubted["entries"] == [
        {"kind": "in", "runner": "maren", "point": "gate", "at": "Sat 07:28", "counted": False}
    ]
    assert [[e["kind"] for e in t["entries"]] for t in turns] == [
        ["out"],
        ["taken back"],
        ["out"],
        ["crew there"],
    ]
    assert turns[0]["entries"][0]["at"] == "Sat 07:06"
    assert "Undo" in turns[0]["buttons"]
    assert (before["entries"], before["notices"]) == ([], [])
    assert "Skelter Mill" in after["reply"]
    assert "Brindle Gate, 07:28" not in after["reply"]
    assert help_["entries"][0]["kind"] == "asked for help"
    assert help_["entries"][0]["counted"] is True
    assert {"kind": "asked for help", "to": "ines"} in help_["notices"]


def test_whoever_reads_another_language_is_answered_in_it(folder: Path) -> None:
    """`lang` is what that person reads, in that line alone."""
    where = {"as": "ana", "at": "Sat 07:06"}
    code, (german, french, english), output = tried(
        folder,
        {**where, "lang": "de", "say": "wo ist maren"},
        {**where, "lang": "fr", "say": "où est maren"},
        {**where, "say": "where is maren"},
    )
    assert code == 0, output
    assert "gemeldet von Ana" in german["reply"]
    assert "signalé par Ana" in french["reply"]
    assert "reported by Ana" in english["reply"]


def test_the_copies_that_are_kept_answer_alike(folder: Path, tmp_path: Path) -> None:
    """What is tried on a kept copy comes out as on the first; buttons that were offered before can be pressed on it."""
    line = {"as": "ana", "at": "Sat 07:06", "lang": "de", "say": ["wo ist maren", "out of mill", "undo"]}
    code, first, output = tried(folder, line, keep=tmp_path)
    assert code == 0, output
    assert [p.suffix for p in sorted(tmp_path.glob("*/*"))] == [".db", ".json"]
    code, again, output = tried(folder, line, keep=tmp_path)
    assert code == 0, output
    assert "the story is at" not in output
    assert again == first


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ('{"as": "ana"', "line 1: no JSON"),
        ({"as": "ana", "at": "Sat 07:30"}, "line 1: wants"),
        ({"as": "nobody", "at": "Sat 07:30", "say": "hi"}, "There are: maren, tove"),
        ({"as": "ana", "at": "half past", "say": "hi"}, "'half past' is no moment"),
        ({"as": "ana", "at": "Sat 07:30", "say": [3]}, "3 is no turn"),
        ({"as": "ana", "at": "2027-07-19 07:30", "say": "hi"}, "more than 4 days after the start"),
        ({"as": "ana", "at": "Sat 05:00", "say": {"press": "Fly"}}, "has no button 'Fly'"),
    ],
)
def test_a_wrong_line_is_told_with_its_number(folder: Path, line: dict[str, Any] | str, says: str) -> None:
    """What was wrong, in which line, and what there is."""
    code, _came, output = tried(folder, line)
    assert code == 1
    assert says in output


def test_she_is_late_by_the_time_at_which_she_is_asked_after(folder: Path) -> None:
    """Before it that is said; after it a 'not yet' makes her no less late, whatever is expected of her now."""
    code, came, output = tried(
        folder,
        {"as": "ana", "at": "Sat 07:30", "say": "is she late"},
        {"as": "ana", "at": "Sat 10:30", "say": "is she late"},
        {"as": "ana", "at": "Sat 10:30", "say": ["not here yet", "is she late"]},
        {"as": "ana", "at": "Sat 10:30", "say": ["not here yet", "should i be worried"]},
    )
    assert code == 0, output
    early, late, asked, worried = ((c[-1] if isinstance(c, list) else c)["reply"] for c in came)
    (by,) = (
        line
        for line in early.split("\n")
        if line.startswith("Maren counts as late if nothing is heard from ")
    )
    place, when = (
        by.removeprefix("Maren counts as late if nothing is heard from ").removesuffix(".").split(" by ")
    )
    for told in (late, asked, worried):
        assert f"Maren is late: expected at {place} by {when} at the latest." in told.split("\n")
