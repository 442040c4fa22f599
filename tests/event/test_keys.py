"""The list of keys of an event file: complete, true to the reader, and pointed to by whoever asks for a wrong one."""

from __future__ import annotations

import json
import re
import tomllib

import pytest
from click.testing import CliRunner
from jsonschema import Draft202012Validator

from server.cli.main import stilepost
from server.event import dump_event, parse_event
from server.event.keys import FREE, TABLES, json_schema, key_help, longest, tables_named
from server.event.lines import with_seconds
from server.event.model import Event
from server.event.parse_state import ParseState
from server.event.table import read_table
from server.event.table_reader import Problems, Section
from tests.event.examples import ALL, WITHIN, example_file

LISTED = {(t.name, k.name) for t in TABLES for k in t.keys if t.name != FREE}


@pytest.mark.parametrize("table", [t for t in TABLES if t.of not in (None, Event)], ids=lambda t: t.name)
def test_what_only_code_reads_is_listed_too(table) -> None:
    """What the reader looks for in a table is what the list has: a key that a `look` reads by itself stands in MORE."""
    report = Problems("", {})
    section, draft = Section(report, {}, (table.name,)), ParseState(report)
    draft.course_ids.append("main")
    read_table(section, table.of, draft, person="ana", points=())
    listed = {k.name for k in table.keys} | {
        "car",
        "take_back",
        "weight",
    } & section.asked  # not of things of hers
    assert section.asked ^ listed <= {
        "name",
        "person",
    }  # the name of a course is read before it, `person` is given here


@pytest.mark.parametrize("which", ALL)
def test_the_examples_are_right(which: int) -> None:
    """A file of all examples is read without an error and without a warning."""
    parsed = parse_event(example_file(which))
    assert [str(p) for p in parsed.problems] == []


def test_every_example_is_tried() -> None:
    """Each key but those that would contradict the rest stands in one of the files."""
    left_out = {k for (_, k), files in WITHIN.items() if not files} - {"clock", "elapsed"}
    assert left_out == {"pacer_leaves"}
    text = "".join(map(example_file, ALL))
    for _, name in LISTED:
        assert name in left_out or f"{name} = " in text, name


@pytest.mark.parametrize("table", [t for t in TABLES if t.name != FREE], ids=lambda t: t.name)
def test_each_key_is_told_whole(table) -> None:
    """Meaning, form and example of every key."""
    for k in key_help(table):
        assert k.means
        assert k.form
        assert k.example.startswith(f"{k.name} = ")


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


def test_how_long_a_text_may_be() -> None:
    """As the reader has it; there is no such limit for a number, nor for a key that there is none of."""
    assert (longest("points.crew.parking"), longest("people.email"), longest("event.name")) == (
        2000,
        254,
        120,
    )
    for of in ("points.km", "points.nam", "poins.name"):
        with pytest.raises(KeyError):
            longest(of)


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
    found = [p for p in parse_event(good.replace(old, new, 1)).errors if "is not known" in str(p.what)]
    assert [command in str(p.remedy) for p in found] == [True]
    assert tables_named(command.strip("`").rpartition(" ")[2])


def as_json(text: str) -> object:
    """An event file as JSON has it: moments and times of day as texts."""
    return json.loads(json.dumps(tomllib.loads(with_seconds(text)), default=lambda at: at.isoformat()))


@pytest.mark.parametrize("which", ALL)
def test_the_schema_takes_what_the_reader_takes(which: int, good: str) -> None:
    """The schema that the command prints is one, and takes files without a mistake."""
    schema = json.loads(CliRunner().invoke(stilepost, ["keys", "--schema"]).output)
    Draft202012Validator.check_schema(schema)
    for text in (good, example_file(which)):
        assert [e.message for e in Draft202012Validator(schema).iter_errors(as_json(text))] == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("km = 21.3", "km = 2000"),
        ("km = 21.3", 'km = "21,3"'),
        ('when = "out", clock', 'when = "leaving", clock'),
        ("walk_in_minutes", "walk_minutes"),
        ('weight = "safety"', 'weight = "heavy"'),
        ('name = "Ana"\n', ""),
        ('channels = ["telegram"]', 'channels = ["telegramm"]'),
    ],
)
def test_the_schema_refuses_what_the_reader_refuses(old: str, new: str, good: str) -> None:
    """Limits, words, keys and what is needed: those of the reader."""
    text = good.replace(old, new, 1)
    assert parse_event(text).errors
    assert list(Draft202012Validator(json_schema()).iter_errors(as_json(text)))


def test_one_changed_value_changes_one_line(good: str) -> None:
    """Written out, an event differs from one with another value on the line of that value and nowhere else."""
    for old, new in (("km = 21.3", "km = 22"), ("walk_in_minutes = 8", "walk_in_minutes = 9"), ('"29:00"', '"30:00"'),
                     ("ladder = 2", "ladder = 3"), ("minutes = 35", "minutes = 45"), ('surface = "bog"', 'surface = "mud"'),
                     ('"22:00", to', '"21:00", to')):  # fmt: skip
        was, now = (dump_event(parse_event(t).event).split("\n") for t in (good, good.replace(old, new, 1)))
        assert len([1 for a, b in zip(was, now, strict=True) if a != b]) == 1, old
