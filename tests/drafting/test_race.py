"""A pasted table into the points there are: which row is which point, and whose length the race has."""

from __future__ import annotations

from datetime import datetime

from server.drafting.document import Document
from server.drafting.pasted import read_table
from server.drafting.race import matched, put_points, take_rows

START = datetime.fromisoformat("2027-06-19T05:00")
POINTS = """[event]
starts = 2027-06-19T05:00:00
[[points]]
id = "start"
name = "Start"
kinds = ["start"]
[[points]]
id = "mill"
name = "Mill"
km = 20.0
[[points]]
id = "mill-2"
name = "Mill 2"
km = 80.0
[[points]]
id = "cairn"
name = "Cairn"
km = 50.0 # by the map
[[points]]
id = "finish"
name = "Finish"
kinds = ["finish"]
"""


def test_rows_find_their_points_each_once() -> None:
    rows = read_table("0 Village\n21 Mill\n49.8 Cairn Gate\n60 Water\n70 Water\n106 Harbour", START).rows
    assert matched(Document(POINTS), rows, 100.0) == ["start", "mill", "cairn", None, None, "finish"]


def test_a_table_out_and_back_makes_two_points_of_one_name() -> None:
    doc = Document(POINTS)
    take_rows(doc, read_table("21 Mill 09:00\n40 Turn 12:00\n60 Mill 15:00", START).rows, 100.0)
    kms = [(p["name"], p.get("km")) for p in doc.tables("points")]
    assert ("Mill", 21.0) in kms
    assert ("Mill", 60.0) in kms
    assert len({p["id"] for p in doc.tables("points")}) == 7


def test_the_tables_finish_is_the_races_length() -> None:
    """The table says 102 km, the line has 100: what the table does not name stays where it is on the line."""
    doc = Document(POINTS)
    take_rows(doc, read_table("20.4 Mill\n102 Finish Sun 10:00", START).rows, 100.0)
    assert doc.table("event")["stated_km"] == 102
    assert next(p for p in doc.tables("points") if p["id"] == "cairn")["km"] == 51.0
    assert "# by the map" in doc.text()


def test_a_finish_called_so_is_the_finish_though_the_line_is_longer() -> None:
    """The handbook says 100 km, the line has 104; a point of another name that far before the end stays a point."""
    rows = read_table("88 Mossdale\n100 Finish, Thornby Sun 10:00", START).rows
    assert matched(Document(POINTS), rows, 104.0) == [None, "finish"]
    rows = read_table("88 Mossdale\n100 Thornby Sun 10:00", START).rows
    assert matched(Document(POINTS), rows, 104.0) == [None, None]


def test_what_is_typed_wrong_stays_as_typed() -> None:
    doc = Document(POINTS)
    put_points(doc, [{"was": "mill", "name": "Mill", "km": "twenty", "cut": "late", "stop": "a while"}])
    mill = next(p for p in doc.tables("points") if p["id"] == "mill")
    assert (mill["km"], mill["cut_off"]["clock"], mill["stop_minutes"]) == ("twenty", "late", "a while")


def test_a_pass_that_the_table_numbers_otherwise_is_the_same_point() -> None:
    """A waypoint passed twice became 'Mill 2', the organiser calls it 'Mill (2nd)' a hundred metres on: one point."""
    doc = Document(
        '[[points]]\nid = "mill"\nname = "Mill"\nkm = 20.0\n[[points]]\nid = "mill-2"\nname = "Mill 2"\nkm = 54.1\n'
        '[[points]]\nid = "top"\nname = "Top"\nkm = 58.0\n'
    )
    rows = read_table(
        "km;Point;Cut-off\n20;Mill (1st);10:00\n54.2;Mill (2nd);15:00\n58.1;Top Gate 3;16:00"
    ).rows
    assert matched(doc, rows, 75.0) == ["mill", "mill-2", "top"]
    apart = read_table("km;Point;Cut-off\n54.2;Hill (2nd);15:00").rows
    assert matched(doc, apart, 75.0) == [None]


def test_a_mat_misses_fewer_than_people() -> None:
    doc = Document('[[points]]\nid = "a"\nname = "A"\nkm = 9\n')
    for by, chance in (("timing mat", 0.97), ("volunteer", 0.9)):
        put_points(doc, [{"was": "a", "name": "A", "km": "9", "by": by}])
        assert doc.tables("points")[0]["reports"] == [{"by": by, "chance": chance}]
