"""An event file changed block by block: what is not changed stays byte for byte, comments go with their table."""

from __future__ import annotations

from pathlib import Path

import pytest

from server.drafting.document import Document, UnusualError
from server.event import parse_event
from server.sentences import languages

DEMO = (Path(__file__).parents[2] / "demo_event" / "event.toml").read_text("utf-8")
SMALL = """# a race
[event] # the head
name = 'One'
starts = 2027-06-19T05:00

# the first
[[points]]
name = "A"   # by the gate
km = 1
[points.crew]
parking = "gate"

# a remark of nobody

# the second
[[points]]
name = "[B]"
reports = [
    { by = "crew", chance = 0.5 }, # mostly
]
"""


@pytest.mark.parametrize("text", [DEMO, SMALL, "", SMALL.replace("\n", "\r\n"), SMALL.rstrip()])
def test_taken_apart_and_put_together_it_is_the_same(text: str) -> None:
    assert Document(text).text() == text


def test_one_value_changes_one_line() -> None:
    doc = Document(DEMO)
    doc.change("people", 1, {"phone": "+44 7700 900199"})
    lines = list(zip(DEMO.splitlines(), doc.text().splitlines(), strict=True))
    assert [b for a, b in lines if a != b] == ['phone = "+44 7700 900199"']
    assert parse_event(doc.text()).event is not None


def test_the_same_values_change_nothing() -> None:
    doc = Document(DEMO)
    for name in ("event", "points", "people", "meetings"):
        for n, values in enumerate(doc.tables(name)):
            doc.change(name, n, values)
    assert doc.text() == DEMO


def test_a_comment_goes_with_its_table_and_one_that_stands_apart_stays() -> None:
    doc = Document(SMALL)
    doc.sort("points", lambda p: p["name"] != "[B]")
    text = doc.text()
    assert text.index("# the second") < text.index('"[B]"') < text.index("# the first") < text.index('"A"')
    assert "# a remark of nobody" in text
    doc.drop("points", 1)
    assert "# the first" not in doc.text()
    assert "# a remark of nobody" in doc.text()
    assert [p["name"] for p in doc.tables("points")] == ["[B]"]


def test_inner_tables_and_lists_are_changed_in_place() -> None:
    doc = Document(SMALL)
    doc.change("points", 0, {"crew": {"parking": None, "walk_in_minutes": 4}, "km": None})
    doc.change("points", 1, {"reports": [{"by": "crew", "chance": 0.9}]})
    assert doc.tables("points")[0] == {"name": "A", "crew": {"walk_in_minutes": 4}}
    assert "# mostly" in doc.text()
    assert "# by the gate" in doc.text()


def test_a_new_table_goes_where_its_kind_is() -> None:
    doc = Document(SMALL)
    doc.add("points", {"name": "C", "km": None, "cut_off": {"when": "out", "clock": "Sat 13:30"}})
    doc.put("race_control", {"phone": "1"})
    doc.put("rescue", {"phone": None})
    text = doc.text()
    assert text.index("[race_control]") < text.index("# the first")
    assert [p["name"] for p in doc.tables("points")] == ["A", "[B]", "C"]
    assert "rescue" not in text


@pytest.mark.parametrize("text", ["points = [ { name = 'A' } ]\n", "[event\n", "a = = 1\n"])
def test_another_form_is_refused_and_not_spoilt(text: str) -> None:
    with pytest.raises(UnusualError) as refused:
        Document(text)
    told = {refused.value.what.in_language(language) for language in languages()}
    assert len(told) == len(languages())
