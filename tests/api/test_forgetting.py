"""A person taken out of an event file: no name, run or race of theirs left, and the file still reads."""

from __future__ import annotations

from datetime import timedelta

import pytest

from server.cli.forgetting import without_person
from server.event import parse_event

RACE = 'past_race = { name = "Fell 50", km = 52, ascent_m = 1900, time = "7:40" }'
TEXT = """
[event]
name = "Ridge Fifty"
time_zone = "Europe/London"
starts = 2027-06-19T05:00
limit = "16:00"
route = "route.gpx"
[race_control]
phone = "+44 1632 960001"
[[points]]
name = "Fold"
kinds = ["start"]
[[points]]
name = "Fold end"
kinds = ["finish"]
[[runners]]
id = "r1"
name = "Maren"
{runner}
[[people]]
id = "r1"
name = "Maren"
[[people]]
id = "ines"
name = "Ines"
phone = "+44 1632 960011"
parts = [{{ kind = "safety contact", ladder = 1, calls_race_control = true }}]
"""


@pytest.mark.parametrize(
    ("runner", "target"),
    [
        ('own_runs = ["long.fit"]', timedelta(hours=16)),
        (RACE, timedelta(hours=16)),
        (f'target = {{ finish = "9:00" }}\nown_runs = ["long.fit"]\n{RACE}', timedelta(hours=9)),
    ],
)
def test_her_runs_and_races_are_forgotten(runner: str, target: timedelta) -> None:
    """Own runs and past races are gone; a target that hung on them becomes the race's limit."""
    left = without_person(TEXT.format(runner=runner), "r1")
    for gone in ("Maren", "long.fit", "Fell 50"):
        assert gone not in left
    event = parse_event(left).event
    assert event is not None
    assert event.runners[0].target.finish == target
    assert event.files() == ("route.gpx",)
