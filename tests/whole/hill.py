"""A small invented night race, for the whole job end to end: 48 km over one ridge, out in the evening, home by dawn.

Everything is made up. Telephone numbers come from ranges that regulators keep for drama. `event_text` begins it
at any moment, so that a test can play it on a stepped clock or find it under way by the machine's own.
"""

from __future__ import annotations

from datetime import datetime
from math import cos, pi, radians, sin
from zoneinfo import ZoneInfo

EVENT, RUNNER = "thorn-edge", "maren"
ROUTE = "edge.gpx"
ZONE = ZoneInfo("Europe/London")
LENGTH_KM = 48.0
_POINTS = 640


def route() -> bytes:
    """The line: a wide arc with a ridge in its middle, the same every time."""
    rows = []
    for i in range(_POINTS + 1):
        share = i / _POINTS
        turn = 1.5 * pi * share
        radius_km = LENGTH_KM / (1.5 * pi)
        lat = 54.60 + radius_km * sin(turn) / 111.3
        lon = -2.70 + radius_km * (1 - cos(turn)) / (111.3 * cos(radians(54.6)))
        height = 180 + 420 * sin(pi * share) ** 2 + 60 * sin(8 * pi * share)
        rows.append(f'<trkpt lat="{lat:.6f}" lon="{lon:.6f}"><ele>{height:.1f}</ele></trkpt>')
    head = '<gpx version="1.1" creator="tests" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>'
    return f"{head}{''.join(rows)}</trkseg></trk></gpx>".encode()


def files() -> dict[str, bytes]:
    """The route file beside the event file."""
    return {ROUTE: route()}


def event_text(starts: datetime, people: str = "") -> str:
    """The event file of a race that begins at `starts`; `people` adds to it."""
    local = starts.astimezone(ZONE).replace(microsecond=0)
    return _EVENT.format(starts=local.isoformat(), keep=local.year + 1) + people


_EVENT = """
[event]
id = "thorn-edge"
name = "Thorn Edge Night"
time_zone = "Europe/London"
starts = {starts}
limit = "14:00"
route = "edge.gpx"
emergency_number = "112"
grid = "UTM"
keep_until = {keep}-12-31

[race_control]
name = "Race control, Thorn hall"
phone = "+44 1632 960300"

[rules]
vehicles_max = 2
outside_help = "crew points only"

[alarm]
line = 0.005
grace_minutes = 15
look_again_minutes = 20
answer_within_minutes = 5

[[points]]
id = "start"
name = "Thorn hall"
km = 0
kinds = ["start"]
reports = [{{ by = "volunteer", chance = 0.98, delay_minutes = 2 }}]

[[points]]
id = "larch"
name = "Larch Gate"
km = 9
kinds = ["aid station"]
reports = [{{ by = "volunteer", chance = 0.95, delay_minutes = 6 }}]
stop_minutes = 2

[[points]]
id = "hollin"
name = "Hollin Mill"
also = ["the mill"]
km = 18.5
kinds = ["aid station", "crew access"]
crew = {{ parking = "weir yard", walk_in_minutes = 5, unloading_minutes = 5 }}
reports = [
    {{ by = "volunteer", chance = 0.95, delay_minutes = 6 }},
    {{ by = "crew", chance = 0.97, delay_minutes = 3 }},
]
stop_minutes = 8

[[points]]
id = "tarn"
name = "Black Tarn"
also = ["the tarn"]
km = 29.5
kinds = ["aid station", "crew access"]
crew = {{ parking = "dam road end", walk_in_minutes = 10, unloading_minutes = 5 }}
reports = [{{ by = "crew", chance = 0.97, delay_minutes = 3 }}]
stop_minutes = 8

[[points]]
id = "wythe"
name = "Wythe Cross"
km = 39
kinds = ["aid station", "crew access"]
crew = {{ parking = "chapel field", walk_in_minutes = 3, unloading_minutes = 5 }}
reports = [
    {{ by = "volunteer", chance = 0.95, delay_minutes = 6 }},
    {{ by = "crew", chance = 0.97, delay_minutes = 3 }},
]
stop_minutes = 6

[[points]]
id = "finish"
name = "Thorn meadow"
also = ["the finish", "the end"]
km = 48
kinds = ["finish", "crew access"]
crew = {{ parking = "school yard", walk_in_minutes = 3, unloading_minutes = 2 }}
reports = [
    {{ by = "timing mat", chance = 0.99, delay_minutes = 2 }},
    {{ by = "crew", chance = 0.97, delay_minutes = 3 }},
]

[[stretches]]
from_km = 31
to_km = 38
name = "the edge"
escape_route = "wall west down to the forest road"

[[runners]]
id = "maren"
name = "Maren"
bib = "51"
target = {{ finish = "8:20" }}
clothing = "yellow jacket"
torch = "head torch, spare cell in the pack"

[[people]]
id = "maren"
name = "Maren"
phone = "+44 7700 900301"
parts = [{{ kind = "runner", runner = "maren" }}]

[[people]]
id = "ana"
name = "Ana"
phone = "+44 7700 900302"
parts = [
    {{ kind = "crew", runner = "maren", ladder = 2, can_telephone = true, drives = true, car = "van" }},
]

[[people]]
id = "jonas"
name = "Jonas"
phone = "+44 7700 900303"
parts = [
    {{ kind = "crew", runner = "maren", ladder = 3, can_telephone = true, drives = true, car = "estate" }},
]

[[people]]
id = "ines"
name = "Ines"
phone = "+49 30 23125301"
time_zone = "Europe/Berlin"
parts = [
    {{ kind = "safety contact", runner = "maren", ladder = 1, calls_race_control = true, can_telephone = true }},
]

[[people]]
id = "office"
name = "Race office"
phone = "+44 1632 960300"
parts = [{{ kind = "organiser" }}]

[[people]]
id = "vera"
name = "Vera"
parts = [{{ kind = "volunteer", point = "larch" }}]

[[people]]
id = "sam"
name = "Sam"
parts = [{{ kind = "supporter", runner = "maren" }}]

[[cars]]
id = "van"
name = "white van"
seats = 3
starts_at = "start"

[[cars]]
id = "estate"
name = "grey estate"
seats = 4
starts_at = "start"

[[drives]]
from = "start"
to = "hollin"
minutes = 30
confirmed_by = "ana"

[[drives]]
from = "start"
to = "tarn"
minutes = 45
confirmed_by = "jonas"

[[drives]]
from = "hollin"
to = "wythe"
minutes = 40
confirmed_by = "ana"

[[drives]]
from = "tarn"
to = "finish"
minutes = 50
confirmed_by = "jonas"

[[meetings]]
point = "hollin"
runner = "maren"
crew = ["ana"]
car = "van"
kit = ["two full bottles", {{ name = "head torch", weight = "safety", car = "van" }}]
food = "soup"
if_missed = "drive on to Wythe Cross"

[[meetings]]
point = "tarn"
runner = "maren"
crew = ["jonas"]
car = "estate"
kit = ["warm layer", "two full bottles"]
food = "rice, tea"
if_missed = "wait at the dam"

[[meetings]]
point = "wythe"
runner = "maren"
crew = ["ana"]
car = "van"
kit = ["dry socks", "gloves"]
food = "broth"
if_missed = "drive on to the finish"

[[meetings]]
point = "finish"
runner = "maren"
crew = ["jonas"]
car = "estate"
kit = ["blanket"]
food = "whatever she asks for"
"""
