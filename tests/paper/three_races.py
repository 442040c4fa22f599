"""Three invented races to print: one by day, one over a night, one in stages; each in a language of its own.

`day` has one car and no fuel figures of each thing; `night` a torch and a pacer, two cars, a past race; `stages` a camp
between its two days. Telephone numbers come from ranges that regulators keep for drama.
"""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

from tests.whole.ground import Ground

__all__ = ["DAY", "NIGHT", "STAGES", "THREE"]

DAY = Ground(
    name="day",
    starts=datetime(2027, 6, 12, 7, 0, tzinfo=ZoneInfo("Europe/London")),
    km=58.0,
    climb_m=2100.0,
    laps=1,
    lat=54.30,
    lon=-3.10,
    text="""
[event]
id = "larch-fells"
name = "Larch Fells 58"
time_zone = "Europe/London"
starts = {starts}
limit = "12:00"
route = "line.gpx"
stated_ascent_m = 2400
emergency_number = "112"
keep_until = {year}-12-31

[race_control]
name = "Race control, Larch hall"
phone = "+44 1632 960201"

[rescue]
name = "Larch mountain rescue (through 112)"
phone = "112"

[rules]
vehicles_max = 1
outside_help = "crew points only"
note = "Dogs on leads. No glass at the tarn."
required_kit = ["waterproof jacket", "whistle", "map"]

[brief]
travel = ["all in the estate, at Larch by 06:15"]
beds = ["at home, both nights"]
entry = ["number and kit check: hall, from 05:45"]

[[points]]
id = "start"
name = "Larch"
km = 0
kinds = ["start"]
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 2 }]

[[points]]
id = "beck"
name = "Gill Beck"
km = 13
kinds = ["aid station", "water"]
reports = [{ by = "volunteer", chance = 0.9, delay_minutes = 8 }]
stop_minutes = 2

[[points]]
id = "tarn"
name = "Stone Tarn"
km = 27
kinds = ["aid station", "crew access"]
crew = { parking = "walled field left of the chapel", lat = 54.33, lon = -3.02, walk_in_minutes = 9, unloading_minutes = 5 }
reports = [
    { by = "volunteer", chance = 0.9, delay_minutes = 8 },
    { by = "crew", chance = 0.95, delay_minutes = 3 },
]
cut_off = { when = "out", clock = "12:30" }
stop_minutes = 8
note = "toilets behind the chapel"

[[points]]
id = "nick"
name = "High Nick"
km = 39
kinds = ["water"]
reports = [{ by = "nobody", chance = 1.0, delay_minutes = 0 }]
signal = "none"

[[points]]
id = "farm"
name = "Howe Farm"
km = 48
kinds = ["aid station", "crew access"]
crew = { parking = "farm yard, ask first", walk_in_minutes = 2, unloading_minutes = 4 }
reports = [{ by = "crew", chance = 0.95, delay_minutes = 3 }]
stop_minutes = 5

[[points]]
id = "finish"
name = "Larch green"
km = 58
kinds = ["finish", "crew access"]
crew = { parking = "school", walk_in_minutes = 3, unloading_minutes = 2 }
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 2 }]

[[stretches]]
from_km = 34
to_km = 43
name = "Nick side"
no_signal = true
escape_route = "west down the beck to the valley road"

[[runners]]
id = "iona"
name = "Iona"
bib = "58"
target = { finish = "8:20" }
clothing = "yellow top, black shorts"
bottles = 2
wants_to_hear = ["the next place and how far"]
not_to_hear = ["how you look"]
carries = [
    { name = "waterproof jacket", grams = 210 },
    { name = "whistle", grams = 10 },
    { name = "map", grams = 60, prepare = ["buy"] },
]
prompts = [{ when = "the climb to High Nick", words = "hands on knees, count to a hundred" }]
[[runners.fuel]]
from = "start"
words = "a gel each half hour, a mouthful each ten minutes"
kcal_per_h = 220
carbohydrate_g_per_h = 50
fluid_ml_per_h = 500
sodium_mg_per_h = 300

[[people]]
id = "iona"
name = "Iona"
phone = "+44 7700 900201"
parts = [{ kind = "runner", runner = "iona" }]

[[people]]
id = "bea"
name = "Bea"
phone = "+44 7700 900202"
parts = [{ kind = "crew", runner = "iona", ladder = 2, can_telephone = true, drives = true, car = "estate" }]

[[people]]
id = "colm"
name = "Colm"
phone = "+44 7700 900203"
parts = [
    { kind = "safety contact", runner = "iona", ladder = 1, calls_race_control = true, can_telephone = true },
]

[[people]]
id = "greta"
name = "Greta"
phone = "+44 7700 900204"
parts = [{ kind = "volunteer", point = "beck" }]

[[cars]]
id = "estate"
name = "green estate"
seats = 5
starts_at = "start"

[[drives]]
from = "start"
to = "tarn"
minutes = 35
confirmed_by = "bea"
note = "coast road, not over the fell"

[[drives]]
from = "tarn"
to = "farm"
minutes = 40
confirmed_by = "bea"

[[drives]]
from = "farm"
to = "finish"
minutes = 18
confirmed_by = "bea"

[[meetings]]
point = "tarn"
crew = ["bea"]
car = "estate"
kit = ["two full bottles", "six gels", "sun cap", { name = "wet socks", take_back = true }]
food = "rice, cola"
if_missed = "drive on to Howe Farm"

[[meetings]]
point = "farm"
crew = ["bea"]
car = "estate"
kit = ["two full bottles", "three gels"]
food = "tea"
if_missed = "drive on to the finish"

[[meetings]]
point = "finish"
crew = ["bea"]
car = "estate"
kit = ["dry clothes", "blanket"]
food = "soup"

[[if_then]]
id = "stomach"
trouble = "cannot eat"
try_first = ["walk ten minutes, sip"]
call = "the medic at Stone Tarn"
red_flags = ["confused", "nothing stays down for two hours"]
""",
)

NIGHT = Ground(
    name="night",
    starts=datetime(2027, 9, 25, 15, 0, tzinfo=ZoneInfo("Europe/Berlin")),
    km=104.0,
    climb_m=4200.0,
    laps=1,
    lat=47.60,
    lon=11.40,
    text="""
[event]
id = "tannen-grat"
name = "Tannengrat 104"
time_zone = "Europe/Berlin"
starts = {starts}
limit = "26:00"
route = "line.gpx"
stated_ascent_m = 4700
emergency_number = "112"
grid = "UTM"
keep_until = {year}-12-31

[race_control]
name = "Rennleitung, Turnhalle Tann"
phone = "+49 30 23125201"

[rescue]
name = "Bergwacht (über 112)"
phone = "112"

[rules]
vehicles_max = 2
crew_people_max = 3
pacer_from_km = 60
pacers_at_once = 1
outside_help = "crew points only"
note = "Am Joch nach 22 Uhr keine Autos."
required_kit = ["Stirnlampe", "Ersatzlampe", "Regenjacke", "Rettungsdecke", "Pfeife"]

[brief]
travel = ["Jule und Enno im Bus, Wiebke im Kombi: Freitag bis 19 Uhr"]
beds = ["Turnhalle, vier Matten"]
entry = ["Startnummer: Turnhalle, Freitag 16 bis 21 Uhr"]

[[points]]
id = "start"
name = "Tann"
km = 0
kinds = ["start"]
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 2 }]

[[points]]
id = "muehle"
name = "Obermühle"
km = 14
kinds = ["aid station"]
reports = [{ by = "volunteer", chance = 0.9, delay_minutes = 8 }]
stop_minutes = 3

[[points]]
id = "kapelle"
name = "Waldkapelle"
km = 30
kinds = ["aid station", "crew access", "drop bag"]
crew = { parking = "Wiese am Friedhof", walk_in_minutes = 6, unloading_minutes = 5, lat = 47.66, lon = 11.52 }
reports = [
    { by = "volunteer", chance = 0.9, delay_minutes = 8 },
    { by = "crew", chance = 0.95, delay_minutes = 3 },
]
stop_minutes = 10

[[points]]
id = "joch"
name = "Steinjoch"
km = 47
kinds = ["aid station", "crew access"]
crew = { parking = "Kehre unter dem Joch", walk_in_minutes = 15, unloading_minutes = 5 }
cut_off = { when = "out", clock = "Sun 02:30" }
reports = [{ by = "volunteer", chance = 0.85, delay_minutes = 20 }]
signal = "none"
stop_minutes = 10

[[points]]
id = "alm"
name = "Lochalm"
km = 58
kinds = ["water"]
reports = [{ by = "nobody", chance = 1.0, delay_minutes = 0 }]

[[points]]
id = "see"
name = "Grünsee"
km = 70
kinds = ["aid station", "crew access", "drop bag"]
crew = { parking = "Bootshaus", walk_in_minutes = 3, unloading_minutes = 6 }
cut_off = { when = "in", elapsed = "17:30" }
reports = [
    { by = "timing mat", chance = 0.97, delay_minutes = 2 },
    { by = "crew", chance = 0.95, delay_minutes = 3 },
]
stop_minutes = 20

[[points]]
id = "saege"
name = "Alte Säge"
km = 88
kinds = ["aid station", "crew access"]
crew = { parking = "Holzplatz", walk_in_minutes = 2, unloading_minutes = 4 }
reports = [{ by = "crew", chance = 0.95, delay_minutes = 3 }]
stop_minutes = 8

[[points]]
id = "ziel"
name = "Tann Marktplatz"
km = 104
kinds = ["finish", "crew access"]
crew = { parking = "Schulhof", walk_in_minutes = 3, unloading_minutes = 2 }
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 2 }]

[[stretches]]
from_km = 40
to_km = 54
name = "Jochseite"
no_signal = true
escape_route = "nach Osten zum Forstweg"

[[weather]]
temperature_c = 14
note = "Mittel der Jahre"

[[weather]]
from = "20:00"
to = "Sun 07:00"
temperature_c = 4

[[runners]]
id = "svea"
name = "Svea"
bib = "104"
past_race = [{ name = "Hügelrunde", km = 56, ascent_m = 3500, time = "10:15" }]
clothing = "rote Jacke, schwarze Hose"
torch = "Stirnlampe ab Waldkapelle"
wants_to_hear = ["was als Nächstes kommt"]
not_to_hear = ["gleich geschafft"]
bottles = 3
trained_carbohydrate_g_per_h = 55
carries = [
    { name = "Regenjacke", grams = 230 },
    { name = "Rettungsdecke", grams = 60 },
    { name = "Pfeife", grams = 10 },
    { name = "Telefon", grams = 190, prepare = ["charge"] },
]
drop_bags = [
    { point = "kapelle", kit = ["Ersatzsocken"] },
    { point = "see", kit = [{ name = "Akku für die Stirnlampe", hours = 8, grams = 90, prepare = ["charge", "test"] }] },
]
prompts = [{ when = "will sich am Grünsee hinlegen", words = "erst Brühe, dann entscheiden" }]
[[runners.fuel]]
from = "start"
words = "jede halbe Stunde etwas"
kcal_per_h = 240
carbohydrate_g_per_h = 48
fluid_ml_per_h = 500
eats = [
    { name = "Gel", per_h = 1, kcal = 100, carbohydrate_g = 25, sodium_mg = 50 },
    { name = "Riegel", per_h = 0.5, kcal = 200, carbohydrate_g = 40, sodium_mg = 90 },
]
[[runners.fuel]]
from = "joch"
words = "was geht, wenig und oft"
kcal_per_h = 200
carbohydrate_g_per_h = 40
fluid_ml_per_h = 450
eats = [
    { name = "Reisball", per_h = 1, kcal = 140, carbohydrate_g = 30, sodium_mg = 250 },
    { name = "Koffeingel", per_h = 0.25, kcal = 100, carbohydrate_g = 25, sodium_mg = 50, caffeine_mg = 75 },
]

[[people]]
id = "svea"
name = "Svea"
phone = "+49 30 23125202"
language = "de"
parts = [{ kind = "runner", runner = "svea" }]

[[people]]
id = "jule"
name = "Jule"
phone = "+49 30 23125203"
language = "de"
parts = [{ kind = "crew", runner = "svea", ladder = 2, can_telephone = true, drives = true, car = "bus" }]

[[people]]
id = "wiebke"
name = "Wiebke"
phone = "+49 30 23125204"
language = "de"
parts = [
    { kind = "crew", runner = "svea", ladder = 3, can_telephone = true, drives = true, car = "kombi", sleeps = [
        { from = "Sat 20:00", to = "Sat 23:30" },
    ] },
]

[[people]]
id = "enno"
name = "Enno"
phone = "+49 30 23125205"
language = "de"
parts = [{ kind = "pacer", runner = "svea", pace_from = "see", pace_to = "ziel" }]

[[people]]
id = "almut"
name = "Almut"
phone = "+49 30 23125206"
language = "de"
parts = [
    { kind = "safety contact", runner = "svea", ladder = 1, calls_race_control = true, can_telephone = true },
]

[[people]]
id = "posten"
name = "Hauke"
phone = "+49 30 23125207"
language = "de"
parts = [{ kind = "volunteer", point = "joch" }]

[[cars]]
id = "bus"
name = "weißer Bus"
seats = 6
starts_at = "start"

[[cars]]
id = "kombi"
name = "blauer Kombi"
seats = 5
starts_at = "start"

[[drives]]
from = "start"
to = "kapelle"
minutes = 40
confirmed_by = "jule"

[[drives]]
from = "start"
to = "joch"
minutes = 65
confirmed_by = "wiebke"
note = "letztes Netz an der Staumauer"

[[drives]]
from = "kapelle"
to = "see"
minutes = 55
confirmed_by = "jule"

[[drives]]
from = "joch"
to = "saege"
minutes = 60
confirmed_by = "wiebke"

[[drives]]
from = "see"
to = "ziel"
minutes = 45
confirmed_by = "jule"

[[meetings]]
point = "kapelle"
crew = ["jule", "enno"]
car = "bus"
kit = [
    "zwei volle Flaschen",
    { name = "Stirnlampe", weight = "safety", car = "bus", hours = 7, grams = 110, prepare = ["charge", "test"] },
]
food = "Suppe, Brot"
if_missed = "weiter zum Grünsee"

[[meetings]]
point = "joch"
crew = ["wiebke"]
car = "kombi"
kit = [
    { name = "warme Jacke", weight = "safety", car = "kombi", grams = 350 },
    { name = "Ersatzlampe", weight = "safety", car = "kombi", hours = 6 },
    "Handschuhe",
]
food = "Brühe"
if_missed = "hinunter zur Staumauer, dann fragen"

[[meetings]]
point = "see"
crew = ["jule", "enno"]
car = "bus"
kit = ["trockene Schuhe", "zwei volle Flaschen"]
food = "Kartoffeln, Brühe"
if_missed = "auf Nachricht der Rennleitung warten"
pacer_joins = "enno"

[[meetings]]
point = "saege"
crew = ["wiebke"]
car = "kombi"
kit = ["trockenes Hemd", { name = "Stöcke", take_back = true }]
food = "Kaffee"
if_missed = "weiter ins Ziel"

[[meetings]]
point = "ziel"
crew = ["jule"]
car = "bus"
kit = ["Decke", "trockene Sachen"]
food = "was sie will"
pacer_leaves = "enno"

[[if_then]]
id = "fuesse"
trouble = "Blase"
try_first = ["hinsetzen, trocknen, tapen"]
call = "den Arzt am Grünsee"
red_flags = ["Rötung, die wandert"]
""",
)

STAGES = Ground(
    name="stages",
    starts=datetime(2027, 7, 3, 6, 0, tzinfo=ZoneInfo("Europe/Paris")),
    km=112.0,
    climb_m=3600.0,
    laps=1,
    lat=44.80,
    lon=6.20,
    text="""
[event]
id = "deux-cols"
name = "Les Deux Cols 112"
time_zone = "Europe/Paris"
starts = {starts}
route = "line.gpx"
emergency_number = "112"
keep_until = {year}-12-31

[race_control]
name = "Direction de course, Aubrenne"
phone = "+33 1 99 00 12 01"

[rules]
vehicles_max = 1
outside_help = "crew points only"
required_kit = ["frontale", "veste imperméable", "couverture de survie", "sifflet"]

[[points]]
id = "depart"
name = "Aubrenne-le-Bas"
km = 0
kinds = ["start"]
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 2 }]

[[points]]
id = "moulin"
name = "Le Moulin"
km = 18
kinds = ["aid station"]
reports = [{ by = "volunteer", chance = 0.9, delay_minutes = 8 }]
stop_minutes = 4

[[points]]
id = "col"
name = "Col Vert"
km = 36
kinds = ["aid station", "crew access"]
crew = { parking = "virage sous le col", walk_in_minutes = 10, unloading_minutes = 5 }
reports = [
    { by = "volunteer", chance = 0.9, delay_minutes = 8 },
    { by = "crew", chance = 0.95, delay_minutes = 3 },
]
cut_off = { when = "out", elapsed = "9:00" }
stop_minutes = 10

[[points]]
id = "camp"
name = "Camp du Lac"
km = 60
kinds = ["aid station", "crew access"]
crew = { parking = "pré du lac", walk_in_minutes = 4, unloading_minutes = 5 }
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 2 }]
cut_off = { when = "in", elapsed = "15:00" }
next_stage = "Sun 06:30"

[[points]]
id = "refuge"
name = "Refuge Noir"
km = 84
kinds = ["aid station", "crew access"]
crew = { parking = "barrière de la piste", walk_in_minutes = 12, unloading_minutes = 5 }
reports = [{ by = "volunteer", chance = 0.85, delay_minutes = 20 }]
signal = "none"
stop_minutes = 10

[[points]]
id = "arrivee"
name = "Aubrenne-le-Haut"
km = 112
kinds = ["finish", "crew access"]
crew = { parking = "école", walk_in_minutes = 3, unloading_minutes = 2 }
cut_off = { when = "in", clock = "Sun 21:00" }
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 2 }]

[[stretches]]
from_km = 76
to_km = 90
name = "versant noir"
no_signal = true
escape_route = "piste au sud jusqu'à la route"

[[runners]]
id = "aude"
name = "Aude"
bib = "12"
target = { finish = "20:30" }
clothing = "veste bleue, casquette blanche"
torch = "frontale et piles de rechange dans le sac"
bottles = 3
wants_to_hear = ["où est l'eau"]
carries = [
    { name = "frontale", grams = 90, hours = 6, prepare = ["charge"] },
    { name = "veste imperméable", grams = 200 },
    { name = "couverture de survie", grams = 60 },
    { name = "sifflet", grams = 10, prepare = ["buy"] },
]
prompts = [{ when = "la montée du refuge", words = "petits pas, on respire" }]
[[runners.fuel]]
from = "depart"
words = "une barre par heure, boire à sa soif"
kcal_per_h = 220
carbohydrate_g_per_h = 42
fluid_ml_per_h = 500
eats = [{ name = "barre", per_h = 1, kcal = 200, carbohydrate_g = 42, sodium_mg = 150 }]

[[people]]
id = "aude"
name = "Aude"
phone = "+33 1 99 00 12 02"
language = "fr"
parts = [{ kind = "runner", runner = "aude" }]

[[people]]
id = "lou"
name = "Lou"
phone = "+33 1 99 00 12 03"
language = "fr"
parts = [{ kind = "crew", runner = "aude", ladder = 2, can_telephone = true, drives = true, car = "fourgon" }]

[[people]]
id = "remi"
name = "Rémi"
phone = "+33 1 99 00 12 04"
language = "fr"
parts = [
    { kind = "safety contact", runner = "aude", ladder = 1, calls_race_control = true, can_telephone = true },
]

[[people]]
id = "odile"
name = "Odile"
language = "fr"
parts = [{ kind = "volunteer", point = "refuge" }]

[[cars]]
id = "fourgon"
name = "fourgon gris"
seats = 3
starts_at = "depart"

[[drives]]
from = "depart"
to = "col"
minutes = 50
confirmed_by = "lou"

[[drives]]
from = "col"
to = "camp"
minutes = 45
confirmed_by = "lou"

[[drives]]
from = "camp"
to = "refuge"
minutes = 70
confirmed_by = "lou"

[[drives]]
from = "refuge"
to = "arrivee"
minutes = 60
confirmed_by = "lou"

[[meetings]]
point = "col"
crew = ["lou"]
car = "fourgon"
kit = ["deux bidons pleins", "coupe-vent"]
food = "riz, cola"
if_missed = "aller au Camp du Lac"

[[meetings]]
point = "camp"
crew = ["lou"]
car = "fourgon"
kit = ["affaires sèches", "chaussures", "tapis"]
food = "pâtes"

[[meetings]]
point = "refuge"
crew = ["lou"]
car = "fourgon"
kit = ["deux bidons pleins", { name = "veste chaude", weight = "safety", car = "fourgon" }]
food = "soupe"
if_missed = "aller à l'arrivée"

[[meetings]]
point = "arrivee"
crew = ["lou"]
car = "fourgon"
kit = ["couverture", "affaires sèches"]
food = "ce qu'elle veut"

[[if_then]]
id = "froid"
trouble = "a froid"
try_first = ["mettre la veste, manger, marcher"]
call = "le médecin au refuge"
red_flags = ["ne tremble plus", "confuse"]
""",
)

THREE = (DAY, NIGHT, STAGES)
