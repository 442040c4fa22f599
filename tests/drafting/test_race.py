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
