"""Meetings, kit, people and drives of a draft, as forms have them: what the file says besides stays."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest

from server.drafting.crew import (
    awake_shown,
    legs,
    put_drives,
    put_meetings,
    put_people,
    put_runner,
    put_runners,
    sleeps_shown,
    suggest,
    things_shown,
)
from server.drafting.document import Document
from server.drafting.typed import shown
from server.event import parse_event

DEMO = (Path(__file__).parents[2] / "demo_event" / "event.toml").read_text("utf-8")
SMALL = """[[points]]
id = "start"
kinds = ["start"]
[[points]]
id = "a"
crew = {}
[[points]]
id = "b"
crew = {}
[[points]]
id = "c"
crew = {}
[[people]]
id = "ana"
parts = [{ kind = "crew", drives = true, car = "van" }]
[[people]]
id = "ben"
parts = [{ kind = "crew", drives = true }]
[[people]]
id = "kai"
parts = [{ kind = "crew" }]
"""


def test_forms_that_say_what_the_file_says_change_nothing() -> None:
    """The demo's event through every form as its page fills it: kit with weights and commas, sleeps, second ladders."""
    doc = Document(DEMO)
    put_meetings(
        doc,
        [
            {"point": m["point"], "crew": ", ".join(m["crew"])}
            | {k: shown(m.get(k)) for k in ("car", "from", "food")}
            | {"kit": things_shown(m.get("kit"))}
            for m in doc.tables("meetings")
        ],
    )
    drives = [(x.start, x.end, x.minutes, x.by) for x in legs(doc)]
    put_drives(doc, [{"from": a, "to": b, "minutes": m, "by": by} for a, b, m, by in drives])
    runner = doc.table("runners")
    put_runner(
        doc,
        {
            "carries": things_shown(runner.get("carries")),
            "name": runner["name"],
            "bib": runner["bib"],
            "finish": runner["target"]["finish"],
        },
    )
    assert doc.text() == DEMO


def test_kit_keeps_its_weight_when_a_thing_is_added() -> None:
    doc = Document(DEMO)
    met = doc.tables("meetings")
    number = next(n for n, m in enumerate(met) if m["point"] == "brindle")
    m = met[number]
    assert any("weight" in thing for thing in m["kit"] if isinstance(thing, dict))
    row = {"point": "brindle", "crew": ", ".join(m["crew"]), "car": m["car"], "food": m["food"]}
    row["kit"] = shown(m["kit"]) + ", dry hat"
    put_meetings(doc, [row])
    assert doc.tables("meetings")[number]["kit"] == [*m["kit"], "dry hat"]
    assert parse_event(doc.text()).event is not None


@pytest.mark.parametrize(
    ("typed", "kit"),
    [
        ("head torch 8 h", [{"name": "head torch", "hours": 8}]),
        ("Stirnlampe (7.5 Std.), Mütze", [{"name": "Stirnlampe", "hours": 7.5}, "Mütze"]),
        ("gel for 2 h 30", ["gel for 2 h 30"]),
    ],
)
def test_how_long_a_light_lasts_is_typed_behind_its_name(typed: str, kit: list[object]) -> None:
    """And stands there again; taken out of the field it goes, and what else the file says of the thing stays."""
    doc = Document(SMALL)
    put_meetings(doc, [{"point": "a", "crew": "ann", "kit": typed}])
    assert doc.tables("meetings")[0]["kit"] == kit
    put_meetings(doc, [{"point": "a", "crew": "ann", "kit": things_shown(kit)}])
    assert doc.tables("meetings")[0]["kit"] == kit


def test_hours_change_and_the_weight_stays() -> None:
    doc = Document(
        SMALL
        + '[[meetings]]\npoint = "a"\ncrew = ["ann"]\nkit = [{ name = "lamp", hours = 4, car = "van" }]\n'
    )
    for typed, hours in (("lamp 6 h", {"hours": 6}), ("lamp", {})):
        put_meetings(doc, [{"point": "a", "crew": "ann", "kit": typed}])
        assert doc.tables("meetings")[0]["kit"] == [{"name": "lamp", "car": "van", **hours}]


def test_suggested_meetings_take_drivers_in_turn_and_need_their_drives() -> None:
    doc = Document(SMALL)
    assert suggest(doc) == 3
    met = [(m["point"], m["crew"], m.get("car"), m.get("from")) for m in doc.tables("meetings")]
    assert met == [
        ("a", ["ana", "kai"], "van", "start"),
        ("b", ["ben"], None, "start"),
        ("c", ["ana", "kai"], "van", None),
    ]
    assert [(x.start, x.end) for x in legs(doc)] == [("start", "a"), ("start", "b"), ("a", "c")]
    assert suggest(doc) == 0


def test_an_estimate_counts_once_somebody_stands_by_it() -> None:
    doc = Document(SMALL)
    way = {"from": "start", "to": "a", "minutes": "", "guess": "25"}
    put_drives(doc, [way | {"by": ""}])
    assert doc.tables("drives") == []
    put_drives(doc, [way | {"by": "ana"}])
    assert doc.tables("drives") == [{"from": "start", "to": "a", "minutes": 25, "confirmed_by": "ana"}]


def test_a_part_is_ticked_and_taken_away_without_touching_the_others() -> None:
    doc = Document(DEMO)
    ana = next(p for p in doc.tables("people") if p["id"] == "ana")
    row = {"was": "ana", "name": "Ana", "phone": ana["phone"], "crew": "yes", "drives": "yes", "car": "van"}
    put_people(doc, [row | {"safety-contact": "yes", "ladder": "2"}], [])
    parts = next(p for p in doc.tables("people") if p["id"] == "ana")["parts"]
    assert parts == [*ana["parts"], {"kind": "safety contact", "ladder": 2}]
    put_people(doc, [row], [])
    assert next(p for p in doc.tables("people") if p["id"] == "ana")["parts"] == ana["parts"]


def test_whoever_is_ticked_to_call_race_control_does_whatever_their_part() -> None:
    """By the part as safety contact where they have it, else by their first; unticked, by none."""
    doc = Document(DEMO)
    row = {"was": "ana", "name": "Ana", "phone": "+44 1632 960001", "crew": "yes", "calls": "yes"}

    def callers(given: dict[str, str]) -> list[str]:
        put_people(doc, [given], [])
        parts = next(p for p in doc.tables("people") if p["id"] == "ana")["parts"]
        return [p["kind"] for p in parts if p.get("calls_race_control")]

    assert callers(row) == ["crew"]
    assert callers(row | {"safety-contact": "yes", "ladder": "2"}) == ["safety contact"]
    assert callers(row | {"calls": ""}) == []


def test_several_runners_have_fields_and_meetings_of_their_own() -> None:
    """A second runner is added, changed and taken out; meetings say with whom from then on, and none is lost."""
    doc = Document(DEMO)
    first = {"name": "Maren", "finish": "29:00"}
    put_runners(doc, first | {"r0-was": "", "r0-name": "Sofie", "r0-finish": "30 h", "r0-f0-words": "bars"})
    maren, sofie = doc.tables("runners")
    assert (sofie["name"], sofie["target"], sofie["fuel"]) == (
        "Sofie", {"finish": "30:00"}, [{"from": "start", "words": "bars"}],
    )  # fmt: skip
    assert sofie["id"] in [p["id"] for p in doc.tables("people")]
    before = [m["point"] for m in doc.tables("meetings")]
    put_meetings(doc, [{"point": "mill", "runner": sofie["id"], "crew": "jonas"}])
    put_meetings(doc, [{"point": "mill", "runner": maren["id"], "crew": "tomas"}])
    at_mill = {m.get("runner"): m["crew"] for m in doc.tables("meetings") if m["point"] == "mill"}
    assert at_mill == {sofie["id"]: ["jonas"], maren["id"]: ["tomas"]}
    assert len(doc.tables("meetings")) == len(before) + 1
    put_runners(doc, first | {"r0-was": sofie["id"], "r0-name": "Sofie", "r0-gone": "yes"})
    assert [r["name"] for r in doc.tables("runners")] == ["Maren"]


def test_what_she_eats_is_changed_in_place_and_the_things_themselves_stay() -> None:
    """A row that stands in the file keeps what no field shows; an emptied one goes; a new one is put behind."""
    doc = Document(DEMO)
    held = doc.table("runners")["fuel"]
    assert len(held) == 2
    put_runner(doc, {"name": "Maren", "f0-from": "start", "f0-words": "a bar an hour", "f0-fluid_ml_per_h": "450",
                     "f2-from": "mill",
                     "f2-words": "soup", "f1-words": ""})  # fmt: skip
    fuel = doc.table("runners")["fuel"]
    assert [f["words"] for f in fuel] == ["a bar an hour", "soup"]
    assert fuel[0]["fluid_ml_per_h"] == 450
    assert fuel[0]["eats"] == held[0]["eats"]
    assert fuel[1]["from"] == "mill"


def test_two_who_drive_one_car_are_one_turn() -> None:
    """Each meeting has both, the car goes from one to the next, and those are the drives that are asked for."""
    doc = Document(SMALL.replace("drives = true }]", 'drives = true, car = "van" }]'))
    assert suggest(doc) == 3
    met = doc.tables("meetings")
    assert [(m["crew"], m["car"], m.get("from")) for m in met] == [
        (["ana", "ben", "kai"], "van", "start"),
        (["ana", "ben", "kai"], "van", None),
        (["ana", "ben", "kai"], "van", None),
    ]
    assert [(x.start, x.end) for x in legs(doc)] == [("start", "a"), ("a", "b"), ("b", "c")]


def test_a_drive_is_the_cars_whoever_drives() -> None:
    """Ben drives on where Ana drove to: the car stands there, so that is where he leaves from."""
    doc = Document(SMALL)
    put_meetings(
        doc,
        [
            {"point": "a", "crew": "ana", "car": "van", "from": "start"},
            {"point": "b", "crew": "ben", "car": "van"},
        ],
    )
    assert [(x.start, x.end) for x in legs(doc)] == [("start", "a"), ("a", "b")]


@pytest.mark.parametrize(
    ("typed", "sleeps"),
    [
        ("Sun 01:00 – Sun 03:00", [{"from": "Sun 01:00", "to": "Sun 03:00"}]),
        (
            "So 01:00 bis 03:00, So 09:00-10:30",
            [{"from": "Sun 01:00", "to": "03:00"}, {"from": "Sun 09:00", "to": "10:30"}],
        ),
        ("dim 1:00 à dim 3:00", [{"from": "Sun 01:00", "to": "Sun 03:00"}]),
        ("after the mill", [{"from": "after the mill"}]),
        ("", None),
    ],
)
def test_when_a_driver_wakes_and_sleeps_is_typed(typed: str, sleeps: object) -> None:
    """And stands there again; a form that says the same changes nothing, an emptied field takes it out."""
    doc = Document("[event]\nstarts = 2027-06-19T05:00\n" + SMALL)
    row = {"was": "ana", "name": "Ana", "crew": "yes", "drives": "yes", "car": "van"}
    row |= {"awake": "2027-06-19T03:30", "sleeps": typed}
    put_people(doc, [row], [])
    (part,) = doc.tables("people")[0]["parts"]
    assert part["awake_since"] == datetime(2027, 6, 19, 3, 30)  # noqa: DTZ001 - as the file has it
    assert part.get("sleeps") == sleeps
    put_people(doc, [row | {"awake": awake_shown(part), "sleeps": sleeps_shown(part)}], [])
    assert doc.tables("people")[0]["parts"] == [part]
    put_people(doc, [row | {"awake": "", "sleeps": ""}], [])
    assert set(doc.tables("people")[0]["parts"][0]) == {"kind", "drives", "car"}
