"""A day on the beck: 45 km from 07:00, Ruth and Piet in one car, a cut-off at Long Weir. Hanne is at home."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

from tests.whole.ground import Ground

BECK = Ground(
    name="beck",
    starts=datetime(2027, 6, 5, 7, 0, tzinfo=ZoneInfo("Europe/London")),
    km=45.0,
    climb_m=1200.0,
    laps=1,
    lat=54.30,
    lon=-3.00,
    text="""
[event]
id = "sallow-beck"
name = "Sallow Beck Day"
time_zone = "Europe/London"
starts = {starts}
limit = "10:00"
route = "line.gpx"
emergency_number = "112"
keep_until = {year}-12-31

[race_control]
name = "Race control, Sallow hall"
phone = "+44 1632 960400"

[rules]
vehicles_max = 1
outside_help = "crew points only"

[waves]
B = {starts}

[alarm]
line = 0.005
grace_minutes = 15
look_again_minutes = 20
answer_within_minutes = 5

[[points]]
id = "start"
name = "Sallow hall"
km = 0
kinds = ["start"]
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 1 }]

[[points]]
id = "bridge"
name = "Mere Bridge"
km = 10
kinds = ["aid station"]
reports = [{ by = "volunteer", chance = 0.95, delay_minutes = 6 }]
stop_minutes = 2

[[points]]
id = "fold"
name = "Sheep Fold"
also = ["the fold"]
km = 20
kinds = ["aid station", "crew access"]
crew = { parking = "chapel field", walk_in_minutes = 5, unloading_minutes = 5 }
reports = [
    { by = "volunteer", chance = 0.9, delay_minutes = 6 },
    { by = "crew", chance = 0.97, delay_minutes = 3 },
]
stop_minutes = 6

[[points]]
id = "weir"
name = "Long Weir"
also = ["the weir"]
km = 32
kinds = ["aid station", "crew access"]
cut_off = { when = "out", elapsed = "6:30" }
crew = { parking = "mill yard", walk_in_minutes = 4, unloading_minutes = 4 }
reports = [
    { by = "volunteer", chance = 0.95, delay_minutes = 6 },
    { by = "crew", chance = 0.97, delay_minutes = 3 },
]
stop_minutes = 6

[[points]]
id = "top"
name = "Beck Top"
km = 39
kinds = ["water"]
reports = [{ by = "volunteer", chance = 0.9, delay_minutes = 10 }]

[[points]]
id = "finish"
name = "Sallow green"
also = ["the finish"]
km = 45
kinds = ["finish", "crew access"]
crew = { parking = "school yard", walk_in_minutes = 3, unloading_minutes = 2 }
reports = [{ by = "timing mat", chance = 0.97, delay_minutes = 1 }]

[[runners]]
id = "lene"
name = "Lene"
bib = "33"
target = { finish = "7:30" }
clothing = "blue jacket, black tights"

[[people]]
id = "lene"
name = "Lene"
phone = "+44 7700 900401"
parts = [{ kind = "runner", runner = "lene" }]

[[people]]
id = "ruth"
name = "Ruth"
phone = "+44 7700 900402"
parts = [{ kind = "crew", runner = "lene", ladder = 2, can_telephone = true, drives = true, car = "van" }]

[[people]]
id = "piet"
name = "Piet"
phone = "+44 7700 900403"
parts = [{ kind = "crew", runner = "lene", ladder = 3, can_telephone = true, car = "van" }]

[[people]]
id = "hanne"
name = "Hanne"
phone = "+44 1632 960402"
parts = [
    { kind = "safety contact", runner = "lene", ladder = 1, calls_race_control = true, can_telephone = true },
]

[[people]]
id = "office"
name = "Race office"
phone = "+44 1632 960400"
parts = [{ kind = "organiser" }]

[[people]]
id = "bo"
name = "Bo"
phone = "+44 7700 900405"
parts = [{ kind = "volunteer", point = "bridge" }]

[[people]]
id = "cy"
name = "Cy"
phone = "+44 7700 900406"
parts = [{ kind = "volunteer", point = "weir" }]

[[people]]
id = "dot"
name = "Dot"
parts = [{ kind = "supporter", runner = "lene" }]

[[cars]]
id = "van"
name = "green van"
seats = 4
starts_at = "start"

[[drives]]
from = "start"
to = "fold"
minutes = 25
confirmed_by = "ruth"

[[drives]]
from = "fold"
to = "weir"
minutes = 30
confirmed_by = "ruth"

[[drives]]
from = "weir"
to = "finish"
minutes = 25
confirmed_by = "ruth"

[[meetings]]
point = "fold"
crew = ["ruth", "piet"]
car = "van"
kit = ["two full bottles", "sun cap"]
food = "rice pudding"
if_missed = "drive on to Long Weir"

[[meetings]]
point = "weir"
crew = ["ruth", "piet"]
car = "van"
kit = ["dry socks", "poles"]
food = "soup"
if_missed = "drive on to the finish"

[[meetings]]
point = "finish"
crew = ["ruth", "piet"]
car = "van"
kit = ["blanket"]
food = "whatever she asks for"
""",
)
