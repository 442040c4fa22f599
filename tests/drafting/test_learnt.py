"""A race that was held in the next event file: keys that are there, comments kept, each change told."""

from __future__ import annotations

import json
from typing import Any

import pytest

from server.drafting.learnt import LearnError, read_held, taken_in
from server.event import parse_event
from server.sentences import languages, sentence

NEXT = """# our second race
[event]
name = "Ridge Fifty"
time_zone = "Europe/London"
starts = 2028-06-17T05:00
route = "route.gpx"
[race_control]
phone = "+44 1632 960001"
[[points]]
id = "fold"
name = "Fold"
kinds = ["start"]
[[points]]
id = "mill"
name = "Mill"
km = 20
stop_minutes = 10 # with soup
[[points]]
name = "Fold end"
kinds = ["finish"]
[[runners]]
id = "maren"
name = "Maren"
target = { finish = "9:00" } # her dream
{past}
[[people]]
id = "maren"
name = "Maren"
[[people]]
id = "ines"
name = "Ines"
phone = "+44 1632 960011"
parts = [{ kind = "safety contact", ladder = 1, calls_race_control = true }]
"""
STOPS = [{"from": "", "to": f"P{k}", "planned_s": 600.0, "over_s": 600.0} for k in range(8)]


def held(**more: Any) -> str:
    """The JSON of a race."""
    found: dict[str, Any] = {
        "event": "fell",
        "name": "Fell Sixty",
        "runner": "maren",
        "sections": [*STOPS, {"from": "P0", "to": "P1", "planned_s": 3600.0, "over_s": 60.0}],
        "past_race": {"km": 60.0, "ascent_m": 2100.0, "time_s": 41_400.0},
        "fade": {"value": 2.0, "low": 1.5, "high": 2.5, "count": 7},
        "intake": {
            "carbohydrate_g_per_h": {"value": 41.4, "low": 31.0, "high": 52.0, "count": 9},
            "fluid_ml_per_h": {"value": 430.0, "low": 390.0, "high": 470.0, "count": 9},
        },
    }
    return json.dumps(found | more)


def test_all_of_it() -> None:
    """Race, fade, stops and carbohydrate are written; fluid and the target that stays are told."""
    text, changes = taken_in(NEXT.replace("{past}", ""), None, [read_held(held(), "a.json")])
    event = parse_event(text).event
    assert event is not None
    runner = event.runners[0]
    assert [(r.name, r.km, r.ascent_m) for r in runner.past_races] == [("Fell Sixty", 60, 2100)]
    assert runner.fade is not None
    assert 1.3 < runner.fade < 2.0
    assert runner.trained_carbohydrate_g_per_h == 41
    assert event.courses[0].point("mill").planned_stop.total_seconds() == 60 * 18
    for comment in ("# our second race", "# with soup", "# her dream"):
        assert comment in text
    kinds = [c.kind for c in changes]
    assert kinds == [
        "learn-race", "learn-target-stays", "learn-fade", "learn-stop", "learn-carbohydrate", "learn-fluid",
    ]  # fmt: skip
    for language in languages():
        for c in changes:
            values = {
                "field": c.field,
                "was": c.was or "none",
                "now": c.now,
                "low": c.low,
                "high": c.high,
                "count": c.count,
            }
            assert c.field.split(".")[-1] in sentence(language, c.kind, **values)


@pytest.mark.parametrize(
    "past",
    [
        'past_race = { name = "Moor 40", km = 40, ascent_m = 900, time = "5:10" }',
        'past_race = [{ name = "Moor 40", km = 40, ascent_m = 900, time = "5:10" }]',
        '[[runners.past_race]]\nname = "Moor 40"\nkm = 40\nascent_m = 900\ntime = "5:10"',
    ],
)
def test_beside_the_races_there_are(past: str) -> None:
    """The newest stands first, the older one stays, in whatever form it was written."""
    text, _ = taken_in(NEXT.replace("{past}", past), None, [read_held(held(), "a.json")])
    event = parse_event(text).event
    assert event is not None
    assert [r.name for r in event.runners[0].past_races] == ["Fell Sixty", "Moor 40"]


def test_learnt_again_changes_nothing_of_her() -> None:
    """The same race a second time: nothing is made longer twice."""
    once, _ = taken_in(NEXT.replace("{past}", ""), None, [read_held(held(), "a.json")])
    again, changes = taken_in(once, None, [read_held(held(), "a.json")])
    assert again == once
    assert [c.kind for c in changes] == ["learn-fade-same", "learn-carbohydrate-same", "learn-fluid"]


def test_what_was_trained_is_not_lowered_by_a_log_with_gaps() -> None:
    """What nobody logged was eaten too: more that was trained stays, less goes up to it."""
    for had, then in (("55", 55), ("30", 41)):
        mine = NEXT.replace("{past}", f"trained_carbohydrate_g_per_h = {had}")
        text, changes = taken_in(mine, None, [read_held(held(), "a.json")])
        event = parse_event(text).event
        assert event is not None
        assert event.runners[0].trained_carbohydrate_g_per_h == then
        assert ("learn-carbohydrate-same" in [c.kind for c in changes]) is (then == 55)


def test_a_race_without_a_finish() -> None:
    """No time is learnt, and that is said."""
    text, changes = taken_in(
        NEXT.replace("{past}", ""), None, [read_held(held(past_race=None, fade=None), "a.json")]
    )
    assert "past_race" not in text
    assert changes[0].kind == "learn-not-finished"


@pytest.mark.parametrize("text", ["", "[]", '{"event": "x"}', "no json"])
def test_what_is_no_race_is_refused(text: str) -> None:
    """With the file's name."""
    with pytest.raises(LearnError) as caught:
        read_held(text, "a.json")
    assert caught.value.values == {"file": "a.json"}


def test_a_runner_the_next_file_has_not_got() -> None:
    """Named, with those there are."""
    with pytest.raises(LearnError) as caught:
        taken_in(NEXT.replace("{past}", ""), "tove", [read_held(held(), "a.json")])
    assert caught.value.values == {"runner": "tove", "known": "maren"}
