"""A whole event file to make mistakes in, and a minimal one."""

from __future__ import annotations

import pytest

GOOD = """\
[event]
name = "The Long Stile Hundred"
time_zone = "Europe/London"
starts = 2027-06-19T05:00
limit = "36:00"
route = "route.gpx"
transport = "the race's bus, by the sweep"
emergency_number = "112"
keep_until = 2027-09-30

[race_control]
name = "Race control"
phone = "+44 1632 960001"

[rules]
vehicles_max = 2
crew_people_max = 3
pacer_from_km = 60

[waves]
B = 2027-06-19T05:30

[[points]]
id = "start"
name = "Fold start"
km = 0
kinds = ["start"]

[[points]]
id = "mill"
name = "Skelter Mill"
also = ["the mill"]
km = 21.3
kinds = ["aid station", "crew access"]
cut_off = { when = "out", clock = "11:30" }
crew = { parking = "by the bridge", walk_in_minutes = 8, people_max = 2, open_from = "09:00", open_to = "14:00" }
reports = [ { by = "volunteer", chance = 0.9, delay_minutes = 10 } ]
stop_minutes = 5

[[points]]
id = "moss"
name = "Moss Edge"
km = 66
kinds = ["water"]

[[points]]
id = "chapel"
name = "Corrie Chapel"
km = 90
kinds = ["crew access"]
crew = { parking = "yard" }
cut_off = { when = "in", elapsed = "22:00" }

[[points]]
id = "finish"
name = "Fold finish"
km = 161
kinds = ["finish"]

[[stretches]]
from_km = 60
to_km = 78
surface = "bog"
no_signal = true

[[runners]]
id = "maren"
name = "Maren"
bib = "214"
wave = "B"
target = { finish = "29:00" }
fuel = [ { from = "start", words = "porridge", kcal_per_h = 250 } ]

[[people]]
id = "maren"
name = "Maren"

[[people]]
id = "ana"
name = "Ana"
phone = "+44 1632 960011"
channels = ["telegram"]
quiet = { from = "22:00", to = "06:00" }
parts = [ { kind = "crew", runner = "maren", ladder = 2, drives = true, car = "van" } ]

[[people]]
id = "ines"
name = "Ines"
phone = "+44 1632 960012"
time_zone = "Europe/Berlin"
parts = [ { kind = "safety contact", ladder = 1, calls_race_control = true } ]

[[people]]
id = "tomas"
name = "Tomas"
phone = "+44 1632 960013"
parts = [ { kind = "pacer", runner = "maren", pace_from = "moss", pace_to = "finish" } ]

[[cars]]
id = "van"
name = "blue van"
starts_at = "start"

[[cars]]
id = "estate"
name = "grey estate"

[[drives]]
from = "start"
to = "mill"
minutes = 35
confirmed_by = "ana"

[[drives]]
from = "mill"
to = "chapel"
minutes = 50
confirmed_by = "ana"

[[meetings]]
point = "mill"
crew = ["ana"]
car = "van"
kit = ["poles", { name = "head torch", weight = "safety", car = "van" }]

[[meetings]]
point = "chapel"
crew = ["ana"]
car = "van"
pacer_joins = "tomas"

[[if_then]]
trouble = "hot spot"
try_first = ["dry, tape"]
"""


@pytest.fixture(scope="session")
def good() -> str:
    """An event file without a fault."""
    return GOOD
