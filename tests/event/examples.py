"""Event files made of the examples of every key: right in all, and read without a warning."""

from __future__ import annotations

from collections.abc import Iterator

from server.event.keys import TABLES, KeyTable, wrapped
from server.event.table import Key, One

ALL = (0, 1, 2)
SINGLE, SEVERAL = (0, 1), (2,)
"""Files with one course, and the one with [[courses]]."""

WITHIN = {
    ("courses", ""): SEVERAL,
    **{("event", k): SINGLE for k in ("route", "stated_km", "stated_ascent_m", "results")},
    **{(t, "course"): SEVERAL for t in ("points", "stretches", "weather", "runners")},
    ("points", "km"): (0,),
    ("points", "waypoint"): (1, 2),
    ("points", "cut_off"): (0,),
    ("points", "cut_offs"): (1, 2),
    ("points", "stop_minutes"): (0,),
    ("points", "next_stage"): (1,),
    ("points.cut_offs", "clock"): (),
    ("points.cut_off", "elapsed"): (),
    ("points.crew", "place"): (0,),
    ("points.crew", "lat"): (1, 2),
    ("points.crew", "lon"): (1, 2),
    ("runners.target", "finish"): (0,),
    ("runners.target", "pace_all_in"): (1,),
    ("runners.target", "easy_pace"): (2,),
    ("runners.target", "margin"): (2,),
    ("meetings", "pacer_leaves"): (),
}
"""Keys that exclude each other stand in different files; one that would contradict the rest in none."""
BEFORE = {"points": '[[points]]\nname = "Start"\nCOURSEkinds = ["start"]\n'}
AFTER = {
    "points": '[[points]]\nname = "Finish"\nCOURSEkinds = ["finish"]\n',
    "people": '[[people]]\nname = "Maren"\n[[people]]\nname = "Tomas"\nparts = [ { kind = "pacer" } ]\n',
}


def example_file(which: int = 0) -> str:
    """A file without a mistake that holds an example of every key; of keys that exclude each other one in each of the
    three files (0..2)."""
    course = 'course = "long"\n' if which in SEVERAL else ""
    tables = [t for t in TABLES if "." not in t.name and which in WITHIN.get((t.name, ""), ALL)]
    return "\n".join(
        f"{BEFORE.get(t.name, '')}{t.head}\n{_body(t, which)}\n{AFTER.get(t.name, '')}" for t in tables
    ).replace("COURSE", course)


def _body(table: KeyTable, which: int) -> str:
    return "\n".join(f"{k.name} = {_example(table, k, which)}" for k in _keys(table, which))


def _keys(table: KeyTable, which: int) -> Iterator[Key]:
    return (k for k in table.keys if which in WITHIN.get((table.name, k.name), ALL))


def _example(table: KeyTable, key: Key, which: int) -> str:
    if not isinstance(key.form, One):
        return key.example
    inner = next(t for t in TABLES if t.name == f"{table.name}.{key.name}")
    listed = ", ".join(f"{k.name} = {_example(inner, k, which)}" for k in _keys(inner, which))
    return wrapped(key, f"{{ {listed} }}")
