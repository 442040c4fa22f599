"""A night on the ridge: 84 km from 14:00. Max and Timo (her pacer from Blausee) in one car, Lotte in the other, asleep
from 22:00; no signal about Hornpass; Oskar is at home."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

from tests.whole.ground import Ground

RIDGE = Ground(
    name="ridge",
    starts=datetime(2027, 9, 18, 14, 0, tzinfo=ZoneInfo("Europe/Zurich")),
    km=84.0,
    climb_m=2600.0,
    laps=1,
    lat=46.70,
    lon=8.90,
    text="""
[event]
id = "graue-hoerner"
name = "Grey Horns 84"
time_zone = "Europe/Zurich"
starts = {starts}
limit = "22:00"
route = "line.gpx"
emergency_number = "112"
keep_until = {year}-12-31

[race_control]
name = "Race control, Talhaus"
phone = "+44 1632 960500"

[rules]
vehicles_max = 2
pacer_from_km = 50
pacers_at_once = 1
outside_help = "crew points only"

[alarm]
line = 0.005
grace_minutes = 15
look_again_minutes = 20
answer_within_minutes = 5

[[points]]
id = "start"
name = "Talhaus"
km = 0
kinds = ["start"]
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 2 }]

[[points]]
id = "alp"
name = "Sandalp"
km = 11
kinds = ["aid station"]
reports = [{ by = "volunteer", chance = 0.92, delay_minutes = 8 }]
stop_minutes = 3

[[points]]
id = "dorf"
name = "Moosdorf"
also = ["the village"]
km = 22
kinds = ["aid station", "crew access"]
crew = { parking = "fire station", walk_in_minutes = 4, unloading_minutes = 6 }
reports = [
    { by = "volunteer", chance = 0.92, delay_minutes = 8 },
    { by = "crew", chance = 0.96, delay_minutes = 3 },
]
stop_minutes = 10

[[points]]
id = "pass"
name = "Hornpass"
also = ["the pass"]
km = 37
kinds = ["aid station", "crew access"]
crew = { parking = "bus turn below the pass", walk_in_minutes = 12, unloading_minutes = 5 }
reports = [
    { by = "volunteer", chance = 0.85, delay_minutes = 20 },
    { by = "crew", chance = 0.96, delay_minutes = 3 },
]
signal = "none"
stop_minutes = 10

[[points]]
id = "see"
name = "Blausee"
also = ["the lake"]
km = 52
kinds = ["aid station", "crew access"]
cut_off = { when = "out", elapsed = "14:00" }
crew = { parking = "boat house", walk_in_minutes = 3, unloading_minutes = 5 }
reports = [
    { by = "volunteer", chance = 0.92, delay_minutes = 8 },
    { by = "crew", chance = 0.96, delay_minutes = 3 },
]
stop_minutes = 15

[[points]]
id = "hut"
name = "Felshut"
km = 66
kinds = ["aid station"]
reports = [{ by = "volunteer", chance = 0.9, delay_minutes = 10 }]
stop_minutes = 5

[[points]]
id = "saege"
name = "Old Sawmill"
also = ["the sawmill"]
km = 75
kinds = ["aid station", "crew access"]
crew = { parking = "timber yard", walk_in_minutes = 3, unloading_minutes = 4 }
reports = [{ by = "crew", chance = 0.96, delay_minutes = 3 }]
stop_minutes = 5

[[points]]
id = "finish"
name = "Talhaus meadow"
also = ["the finish"]
km = 84
kinds = ["finish", "crew access"]
crew = { parking = "school yard", walk_in_minutes = 3, unloading_minutes = 2 }
reports = [{ by = "timing mat", chance = 0.97, delay_minutes = 2 }]

[[stretches]]
from_km = 31
to_km = 44
name = "Horn side"
no_signal = true
escape_route = "down the west track to the bus turn"

[[runners]]
id = "ida"
name = "Ida"
bib = "84"
target = { finish = "17:30" }
clothing = "red jacket, white cap"
torch = "head torch, spare in the pack"

[[people]]
id = "ida"
name = "Ida"
phone = "+44 7700 900501"
parts = [{ kind = "runner", runner = "ida" }]

[[people]]
id = "max"
name = "Max"
phone = "+44 7700 900502"
parts = [{ kind = "crew", runner = "ida", ladder = 2, can_telephone = true, drives = true, car = "kombi" }]

[[people]]
id = "lotte"
name = "Lotte"
phone = "+44 7700 900503"
quiet = { from = "22:00", to = "05:00" }
parts = [{ kind = "crew", runner = "ida", ladder = 3, can_telephone = true, drives = true, car = "bus" }]

[[people]]
id = "timo"
name = "Timo"
phone = "+44 7700 900504"
parts = [{ kind = "pacer", runner = "ida", pace_from = "see", pace_to = "finish" }]

[[people]]
id = "oskar"
name = "Oskar"
phone = "+44 7700 900505"
parts = [
    { kind = "safety contact", runner = "ida", ladder = 1, calls_race_control = true, can_telephone = true },
]

[[people]]
id = "office"
name = "Race office"
phone = "+44 1632 960500"
parts = [{ kind = "organiser" }]

[[people]]
id = "nele"
name = "Nele"
phone = "+44 7700 900507"
parts = [{ kind = "volunteer", point = "hut" }]

[[people]]
id = "ulla"
name = "Ulla"
parts = [{ kind = "supporter", runner = "ida" }]

[[cars]]
id = "kombi"
name = "blue kombi"
seats = 5
starts_at = "start"

[[cars]]
id = "bus"
name = "white bus"
seats = 6
starts_at = "start"

[[drives]]
from = "start"
to = "dorf"
minutes = 30
confirmed_by = "max"

[[drives]]
from = "start"
to = "pass"
minutes = 55
confirmed_by = "lotte"

[[drives]]
from = "dorf"
to = "see"
minutes = 50
confirmed_by = "max"

[[drives]]
from = "pass"
to = "saege"
minutes = 60
confirmed_by = "lotte"

[[drives]]
from = "see"
to = "finish"
minutes = 35
confirmed_by = "max"

[[meetings]]
point = "dorf"
crew = ["max", "timo"]
car = "kombi"
kit = ["two full bottles", { name = "head torch", weight = "safety", car = "kombi" }]
food = "soup"
if_missed = "drive on to Blausee"

[[meetings]]
point = "pass"
crew = ["lotte"]
car = "bus"
kit = [{ name = "warm layer", weight = "safety", car = "bus" }, "gloves"]
food = "tea, rice"
if_missed = "drive down to the village for signal"

[[meetings]]
point = "see"
crew = ["max", "timo"]
car = "kombi"
kit = ["dry shoes", "two full bottles"]
food = "potatoes, broth"
if_missed = "wait for word from race control"
pacer_joins = "timo"

[[meetings]]
point = "saege"
crew = ["lotte"]
car = "bus"
kit = ["dry top"]
food = "coffee"
if_missed = "drive on to the finish"

[[meetings]]
point = "finish"
crew = ["max"]
car = "kombi"
kit = ["blanket", "dry clothes"]
food = "whatever she asks for"
pacer_leaves = "timo"
""",
)
