"""An evening of loops: four times 12 km from 18:00. Kaya with Dana, Wim half an hour later with Eli; Rosa is at home for
both, Gil stands at the Far Gate."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

from tests.whole.ground import Ground

_CAMPS = (("one", 6, 12), ("two", 18, 24), ("three", 30, 36))


def _loops() -> str:
    """The event file of the loops: a gate and the camp three times over, then the finish in the camp."""
    points = ""
    for word, gate, camp in _CAMPS:
        points += f"""
[[points]]
id = "gate-{word}"
name = "Far Gate, loop {word}"
km = {gate}
kinds = ["water"]
reports = [{{ by = "volunteer", chance = 0.9, delay_minutes = 10 }}]

[[points]]
id = "camp-{word}"
name = "Camp, loop {word}"
km = {camp}
kinds = ["aid station", "crew access"]
crew = {{ parking = "the camp field", place = "field", walk_in_minutes = 2, unloading_minutes = 2 }}
reports = [
    {{ by = "timing mat", chance = 0.95, delay_minutes = 2 }},
    {{ by = "crew", chance = 0.9, delay_minutes = 3 }},
]
stop_minutes = 8
"""
    meetings = "".join(
        f"""
[[meetings]]
point = "{point}"
runner = "{runner}"
crew = ["{who}"]
car = "{car}"
kit = ["{kit}"]
food = "{food}"
"""
        for runner, who, car, rows in (
            (
                "kaya",
                "dana",
                "van",
                (
                    ("camp-one", "bottles", "banana"),
                    ("camp-two", "warm layer", "soup"),
                    ("camp-three", "fresh battery", "tea"),
                    ("finish", "blanket", "rice"),
                ),
            ),
            (
                "wim",
                "eli",
                "estate",
                (
                    ("camp-one", "flasks", "dates"),
                    ("camp-two", "jacket", "noodles"),
                    ("camp-three", "gloves", "coffee"),
                    ("finish", "slippers", "bread"),
                ),
            ),
        )
        for point, kit, food in rows
    )
    return (
        """
[event]
id = "tarn-loops"
name = "Tarn Loops 48"
time_zone = "Europe/London"
starts = {starts}
limit = "12:00"
route = "line.gpx"
emergency_number = "112"
keep_until = {year}-12-31

[race_control]
name = "Race control, camp tent"
phone = "+44 1632 960600"

[rules]
vehicles_max = 2
outside_help = "crew points only"

[waves]
late = 2027-07-10T18:30:00

[alarm]
line = 0.005
grace_minutes = 15
look_again_minutes = 20
answer_within_minutes = 5

[[places]]
id = "field"
name = "Camp field"
lat = 54.90
lon = -2.20

[[points]]
id = "start"
name = "Tarn camp"
km = 0
kinds = ["start"]
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 1 }]
"""
        + points
        + """
[[points]]
id = "gate-four"
name = "Far Gate, loop four"
km = 42
kinds = ["water"]
reports = [{ by = "volunteer", chance = 0.9, delay_minutes = 10 }]

[[points]]
id = "finish"
name = "Tarn camp finish"
also = ["the finish"]
km = 48
kinds = ["finish", "crew access"]
crew = { parking = "the camp field", place = "field", walk_in_minutes = 2, unloading_minutes = 2 }
reports = [{ by = "timing mat", chance = 0.97, delay_minutes = 1 }]

[[runners]]
id = "kaya"
name = "Kaya"
bib = "7"
target = { finish = "8:00" }
clothing = "yellow jacket"

[[runners]]
id = "wim"
name = "Wim"
bib = "8"
wave = "late"
target = { finish = "9:00" }
clothing = "grey jacket"

[[people]]
id = "kaya"
name = "Kaya"
phone = "+44 7700 900601"
parts = [{ kind = "runner", runner = "kaya" }]

[[people]]
id = "wim"
name = "Wim"
phone = "+44 7700 900602"
parts = [{ kind = "runner", runner = "wim" }]

[[people]]
id = "dana"
name = "Dana"
phone = "+44 7700 900603"
parts = [
    { kind = "crew", runner = "kaya", ladder = 2, can_telephone = true, drives = true, car = "van" },
]

[[people]]
id = "eli"
name = "Eli"
phone = "+44 7700 900604"
parts = [
    { kind = "crew", runner = "wim", ladder = 2, can_telephone = true, drives = true, car = "estate" },
]

[[people]]
id = "rosa"
name = "Rosa"
phone = "+44 1632 960605"
parts = [{ kind = "safety contact", ladder = 1, calls_race_control = true, can_telephone = true }]

[[people]]
id = "office"
name = "Race office"
phone = "+44 1632 960600"
parts = [{ kind = "organiser" }]

[[people]]
id = "gil"
name = "Gil"
phone = "+44 7700 900607"
parts = [{ kind = "volunteer" }]

[[cars]]
id = "van"
name = "red van"
seats = 3
starts_at = "field"

[[cars]]
id = "estate"
name = "grey estate"
seats = 4
starts_at = "field"
"""
        + meetings
    )


LOOPS = Ground(
    name="loops",
    starts=datetime(2027, 7, 10, 18, 0, tzinfo=ZoneInfo("Europe/London")),
    km=48.0,
    climb_m=600.0,
    laps=4,
    lat=54.90,
    lon=-2.20,
    text=_loops(),
)
