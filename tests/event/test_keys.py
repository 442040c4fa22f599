"""The list of keys of an event file: complete, true to the reader, and pointed to by whoever asks for a wrong one."""

from __future__ import annotations

import re

import pytest
from click.testing import CliRunner

from server.cli.main import stilepost
from server.event import parse_event
from server.event.keys import FREE, TABLES, asked, example_file, key_help, tables_named
from server.event.keyword import ALL

LISTED = {(t.name, k.name) for t in TABLES for k in t.keys if t.name != FREE}
AT_TOP = {("", t.name) for t in TABLES if "." not in t.name}


def test_each_key_that_is_read_is_listed_and_the_other_way_round() -> None:
    """What the reader asks for is what the list has: a key added to one and not to the other fails here."""
    assert set(asked()) == LISTED | AT_TOP


@pytest.mark.parametrize("which", ALL)
def test_the_examples_are_right(which: int) -> None:
    """A file of all examples is read without an error and without a warning."""
    parsed = parse_event(example_file(which))
    assert [str(p) for p in parsed.problems] == []


def test_every_example_is_tried() -> None:
    """Each key but those that would contradict the rest stands in one of the files."""
    left_out = {k.name for t in TABLES for k in t.keys if not k.within}
    assert left_out == {"pacer_leaves"}
    text = "".join(map(example_file, ALL))
    for _, name in LISTED:
        assert name in left_out or f"{name} = " in text, name


@pytest.mark.parametrize("table", [t for t in TABLES if t.name != FREE], ids=lambda t: t.name)
def test_each_key_is_told_whole(table) -> None:
    """Meaning, form and example of every key; the form is the reader's own."""
    for k in key_help(table):
        assert k.means
        assert k.form
        assert k.example.startswith(f"{k.name} = ")
        assert asked()[table.name, k.name].form == k.form


@pytest.mark.parametrize(
    ("table", "key", "form", "default"),
    [
        ("points", "km", "number from 0 to 1000", ""),
        ("cars", "seats", "whole number from 1 to 60", "5"),
        ("points.crew", "unloading_minutes", "minutes, from 0 to 1440", "5"),
        ("points", "signal", "one of: good, patchy, none", "good"),
        ("event", "limit", 'hours and minutes in quotes, as in "29:00"; 0.5 to 336 hours', ""),
        ("alarm", "line", "number from 1e-06 to 0.2", "0.002"),
        ("rules", "outside_help", "one of: crew points only, anywhere", "crew points only"),
    ],
)
def test_forms_are_those_that_are_checked(table: str, key: str, form: str, default: str) -> None:
    """A look at some: bounds and defaults as the reader has them."""
    (found,) = [k for k in key_help(tables_named(table)[0]) if k.name == key]
    assert (found.form, found.default) == (form, default)


def test_the_command_lists_a_table_with_those_inside() -> None:
    """`stilepost keys points` has crew access too; all tables without a name; '[[cars]]' is understood."""
    said = CliRunner().invoke(stilepost, ["keys", "points"]).output
    assert "[[points]]" in said
    assert "walk_in_minutes: from the car to where she comes through" in said
    assert "seats" not in said
    assert "seats" in CliRunner().invoke(stilepost, ["keys", "[[cars]]"]).output
    whole = CliRunner().invoke(stilepost, ["keys"]).output
    assert all(re.search(rf"^  {re.escape(name)}: ", whole, re.MULTILINE) for _, name in LISTED)


def test_a_table_there_is_none_of() -> None:
    """The nearest one is asked about."""
    found = CliRunner().invoke(stilepost, ["keys", "poins"])
    assert found.exit_code == 1
    assert "there is no table 'poins'. Did you mean 'points'?" in found.output


@pytest.mark.parametrize(
    ("old", "new", "command"),
    [
        ("km = 21.3", "klm = 21.3", "`stilepost keys points`"),
        ("walk_in_minutes = 8", "walk_minutes = 8", "`stilepost keys points.crew`"),
        ('when = "out", clock', 'whn = "out", clock', "`stilepost keys points.cut_off`"),
    ],
)
def test_an_unknown_key_points_to_the_list(good: str, old: str, new: str, command: str) -> None:
    """Beside the nearest key the error says where all of them are listed; that table is there."""
    assert old in good
    found = [p for p in parse_event(good.replace(old, new, 1)).errors if "is not known" in p.what]
    assert [command in p.remedy for p in found] == [True]
    assert tables_named(command.strip("`").rpartition(" ")[2])
