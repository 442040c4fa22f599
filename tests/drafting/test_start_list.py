"""A start list: read with every mistake named, and put into an event file of which nothing else changes."""

from __future__ import annotations

from pathlib import Path

import pytest

from server.drafting.document import Document
from server.drafting.start_list import Listed, listed_in, read_start_list
from server.event import parse_event
from server.event.model import Event

DEMO = Path(__file__).parents[2] / "demo_event" / "event.toml"
DESK = """
[[people]]
id = "desk"
name = "Desk"
phone = "+44 1632 960099"
parts = [{ kind = "safety contact", ladder = 9 }]
"""
BARE = DEMO.read_text(encoding="utf-8")
TEXT = BARE + DESK
WAVES = {"early": "5:00"}


@pytest.fixture(scope="module")
def event() -> Event:
    found = parse_event(TEXT).event
    assert found is not None
    return found


def put_in(text: str, csv: str, event: Event) -> Listed:
    rows, problems = read_start_list(csv, event, WAVES, "list.csv")
    assert problems == []
    return listed_in(text, rows, event, "list.csv")


@pytest.mark.parametrize(
    ("csv", "told"),
    [
        ("", ["1::the list is empty"]),
        ("bib;name;club\n1;A;B\n", ["1:club:there is no column 'club'"]),
        ("bib,bib\n1,2\n", ["1:bib:the column 'bib' stands there twice"] * 2 + ["1:name:the column 'name' is missing"]),
        ("bib,name,target\n1,Ines,29h\n", ["2:target:'29h' is no length of time"]),
        ("bib,name\n1,Ines\n\n1,Ada\n", ["4:bib:bib 1 stands on line 2 too"]),
        ("bib,name\n,Ines\n2,\n", ["2:bib:the bib is missing", "3:name:the name is missing"]),
        ("bib,name,wave,course\n1,I,late,ring\n", ["2:wave:there is no wave 'late'", "2:course:there is no course 'ring'"]),
        ("bib,name\n1,Ines,x\n", ["2::the row has 3 cells, the first line has 2"]),
        ('bib,name\n1,"Ines\n', ["2::a quote is not closed"]),
        ("bib,name\n<b>,Ines\n", ["2:bib:'<b>' is no bib"]),
    ],
)  # fmt: skip
def test_every_wrong_row_is_told(csv: str, told: list[str], event: Event) -> None:
    """Line, column and what is wrong, all at once, each with what to do."""
    _, problems = read_start_list(csv, event, WAVES, "list.csv")
    assert sorted(f"{p.line}:{p.field}:{p.what}" for p in problems) == sorted(told)
    assert all(p.remedy for p in problems)


def test_only_what_differs_is_changed(event: Event) -> None:
    """Maren stands there by her bib: her target is changed and nothing else of her or of the file; others are added, with a
    part of their own; the same list again changes nothing, and who is not in the list stays."""
    first = put_in(TEXT, "bib,name,target\n214,Maren,28:30\n7,Ada Holm,31:00\n", event)
    assert (first.added, first.changed, first.same) == (("7",), ("214",), 0)
    assert ADDED in first.text
    assert PERSON in first.text
    left = first.text.replace(ADDED, "").replace(PERSON, "").rstrip()
    assert left == TEXT.replace('finish = "29:00"', 'finish = "28:30"').rstrip()
    after = parse_event(first.text).event
    assert after is not None
    assert [(r.bib, r.name) for r in after.runners] == [("214", "Maren"), ("7", "Ada Holm")]
    assert [p.kind.value for p in after.parts_of(after.runners[1].person)] == ["runner"]
    assert len(after.meetings) == len(event.meetings)
    again = put_in(first.text, "bib;name;target\n7;Ada Holm;31:00\n", after)
    assert (again.text, again.same, again.not_listed) == (first.text, 1, ("Maren",))


ADDED = """[[runners]]
id = "bib-7"
name = "Ada Holm"
bib = "7"
target = {finish = "31:00"}

"""
PERSON = """
[[people]]
id = "bib-7"
name = "Ada Holm"
parts = [{kind = "runner", runner = "bib-7"}]
"""


def test_somebody_must_hear_of_alarms_about_all(event: Event) -> None:
    """Told once, not for each of those who are new."""
    alone = parse_event(BARE).event
    assert alone is not None
    rows, _ = read_start_list("bib,name,target\n7,Ada,31:00\n8,Bo,31:00\n", alone, {}, "list.csv")
    told = [str(p.what) for p in listed_in(BARE, rows, alone, "list.csv").problems]
    assert told == ["an alarm about a new runner would reach nobody"]


def test_a_new_runner_needs_a_target(event: Event) -> None:
    """An empty cell leaves what is stored, but one who is not stored yet has nothing to be left."""
    listed = put_in(TEXT, "bib,name,target\n214,Maren,\n9,Eva,\n", event)
    assert [(p.line, p.field) for p in listed.problems] == [(3, "target")]


def test_a_thousand_are_put_in_one_place(event: Event) -> None:
    """In the order of the list, behind those there are."""
    csv = "bib,name,target\n" + "".join(f"{n},Runner {n},30:00\n" for n in range(1000, 1100))
    text = put_in(TEXT, csv, event).text
    assert [t.get("bib") for t in Document(text).tables("runners")] == ["214", *map(str, range(1000, 1100))]
