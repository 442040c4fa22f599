"""Wrong event files: each mistake is found, with its line, its field and a remedy."""

from __future__ import annotations

import pytest

from server.event import Severity, parse_event

E, W = Severity.ERROR, Severity.WARNING

# (what is replaced, by what, severity, text of the line it is reported on, words that must be said)
WRONG = [
    # -- the event itself
    ('name = "The Long Stile Hundred"\n', "", E, "[event]", "'name' is missing"),
    ("Europe/London", "Europe/Londn", E, "time_zone", "Did you mean 'Europe/London'?"),
    ('time_zone = "Europe/London"\n', "", E, "[event]", "'time_zone' is missing"),
    ("starts = 2027-06-19T05:00\n", "", E, "[event]", "'starts' is missing"),
    ("starts = 2027-06-19T05:00", "starts = 2027-06-19", E, "starts", "is no date and time"),
    ("starts = 2027-06-19T05:00", 'starts = "five"', E, "starts", "is no date and time"),
    ("starts = 2027-06-19T05:00", "starts = 1027-06-19T05:00", E, "starts", "the year 1027"),
    ("starts = 2027-06-19T05:00", "starts = 2027-03-28T01:30", E, "starts", "does not exist in Europe/London"),
    ("starts = 2027-06-19T05:00", "starts = 2027-10-31T01:30", W, "starts", "starts = 2027-10-31T01:30:00+00:00"),
    ('limit = "36:00"', "limit = 36", E, "limit", "36 is no text"),
    ('limit = "36:00"', 'limit = "36"', E, "limit", "is no length of time"),
    ('limit = "36:00"', 'limit = "999:00"', E, "limit", "outside 0.5 to 336 hours"),
    ('route = "route.gpx"\n', "", E, "[event]", "'route' is missing"),
    ('route = "route.gpx"', 'rout = "route.gpx"', E, "rout", "Did you mean 'route'?"),
    ('emergency_number = "112"', 'emergency_number = "call"', E, "emergency_number", "no telephone number"),
    ('emergency_number = "112"\n', "", W, "[event]", "112 is used"),
    ("keep_until = 2027-09-30", "keep_until = 2027-06-19", E, "keep_until", "before the race is over"),
    ('name = "The Long', 'name = "\\u0007The Long', E, "name", "control character U+0007"),
    ('name = "The Long', f'name = "{"x" * 150}The Long', E, "name", "Keep it to 120"),
    ("[waves]", "[event.extra]\na = 1\n[waves]", E, "[event.extra]", "the key 'extra' is not known"),
    ("[race_control]", "[race_controll]", E, "[race_controll]", "Did you mean 'race_control'?"),
    ('phone = "+44 1632 960001"\n', "", E, "[race_control]", "needs a telephone number"),
    # -- rules, alarm
    ("vehicles_max = 2", "vehicles_max = 1.5", E, "vehicles_max", "no whole number"),
    ("vehicles_max = 2", "vehicles_max = -1", E, "vehicles_max", "outside 0 to 50"),
    ("vehicles_max = 2", 'vehicles_max = "2"', E, "vehicles_max", "is no number"),
    ("vehicles_max = 2", 'outside_help = "none"', E, "outside_help", "crew points only, anywhere"),
    ("[waves]", "[alarm]\nline = 0\n[waves]", E, "line = 0", "outside 1e-06 to 0.2"),
    ("[waves]", "[alarm]\ngrace_minutes = nan\n[waves]", E, "grace_minutes", "nan is outside"),
    ("[waves]", "[alarm]\ngrace_minutes = inf\n[waves]", E, "grace_minutes", "inf is outside"),
    ("vehicles_max = 2", "vehicles_max = 0", E, 'car = "van"', "the rules allow 0"),
    ("crew_people_max = 3", "crew_people_max = 0", E, "crew = [", "1 people are to meet her, the rules allow 0"),
    ("pacer_from_km = 60", "pacer_from_km = 70", E, "parts = [ { kind = \"pacer\"", "from km 66"),
    ("pacer_from_km = 60", "pacer_from_km = 95", E, "pacer_joins", "a pacer joins at km 90"),
    ("pacer_from_km = 60", "pacers_at_once = 0", E, "pacer_joins", "the rules allow 0"),
    # -- permits
    ('people_max = 2', 'people_max = 2, permit = "green"', W, 'point = "mill"', "nobody says who has it. Ask the race"),
    ('people_max = 2', 'people_max = 2, permit = 3', E, "people_max", "3 is no text"),
    ('people_max = 2', 'people_max = 2, cars_max = -1', E, "people_max", "-1 is outside 0 to 50"),
    ('[[cars]]', '[[cars]]\npermits = ["green"]', W, "permits", "no point asks for the permit 'green'"),
    ('[[cars]]', '[[cars]]\npermits = "green"', E, "permits", 'Write permits = ["...", "..."]'),
    # -- points
    ("km = 21.3", "km = -1", E, "km = -1", "outside 0 to 1000"),
    ("km = 21.3", 'km = "21,3"', E, "km =", "a point, not a comma"),
    ("km = 21.3", "km = true", E, "km =", "true is no number"),
    ("km = 21.3\n", "", E, "[[points]]", "'km' is missing"),
    ("km = 66", "km = 66\nnext_stage = 2027-06-18T05:00", E, "next_stage", "starts before the race"),
    ("km = 66", 'km = 66\nnext_stage = "morning"', E, "next_stage", "is no time of day"),
    ("km = 66", 'km = 66\nstop_minutes = 5\nnext_stage = "Sun 07:00"', E, "stop_minutes", "Leave stop_minutes out"),
    ('kinds = ["start"]', 'kinds = ["start"]\nnext_stage = "Sun 07:00"', E, "next_stage", "no stage ends at the start"),
    ("km = 66", 'km = 66\ncut_off = { when = "in", clock = "Sat 20:00" }\nnext_stage = "Sat 19:00"', E, "next_stage",
     "starts before the cut-off there"),
    ("km = 66", 'km = 66\ncut_off = { when = "in", elapsed = "15:00" }\nnext_stage = "Sat 19:59"', E, "next_stage",
     "starts before the cut-off there"),
    ("km = 66", 'km = 66\ncut_off = { when = "in", clock = "Sat 20:00" }\nnext_stage = "Sat 20:30"', None, "", ""),
    ("km = 66", 'km = 66\ncut_off = { when = "out", clock = "Sun 06:00" }\nnext_stage = "Sun 07:00"', E, "cut_off = {",
     "nobody is out of 'Moss Edge' by the cut-off there"),
    ("km = 66", 'km = 66\ncut_off = { when = "out", clock = "Sat 20:30" }\nnext_stage = "Sat 20:30"', None, "", ""),
    ("km = 66", 'km = 66\nnext_stage = "Sun 04:00"', E, 'elapsed = "22:00"', "before the stage that leads there starts"),
    ('open_from = "09:00", open_to = "14:00"', 'open_from = "09:00", open_to = "Sat 08:00"', E, "open_to",
     "it closes before it opens"),
    ("km = 66", "km = 20", E, "km = 20", "'Moss Edge' at km 20 stands after 'Skelter Mill' at km 21.3"),
    ("km = 66", "km = 21.3", E, "km = 21.3", "stands after"),
    ('id = "moss"', 'id = "mill"', E, 'id = "mill"', "used twice in points"),
    ('id = "moss"', 'id = "Moss Edge"', E, 'id = "Moss Edge"', "such as 'moss-edge'"),
    ('name = "Moss Edge"', 'name = "Skelter Mills"', W, 'name = "Skelter Mills"', "easily mixed up"),
    ('name = "Moss Edge"', 'name = "Skelter Mill, lap 2"', None, "", ""),
    ('name = "Moss Edge"', 'name = "The Mill"', E, 'name = "The Mill"', "also a name of 'Skelter Mill'"),
    ('kinds = ["start"]', 'kinds = ["water"]', E, "[[points]]", "no point is the start"),
    ('kinds = ["finish"]', 'kinds = ["water"]', E, "[[points]]", "no point is the finish"),
    ('kinds = ["water"]', 'kinds = ["finish"]', E, "[[points]]", "'Moss Edge' is a second finish"),
    ('km = 161\nkinds = ["finish"]', 'km = 161\nkinds = ["start", "finish"]', E, "[[points]]", "second start"),
    ('kinds = ["water"]', 'kinds = ["watr"]', E, "watr", "Did you mean 'water'?"),
    ('kinds = ["water"]', 'kinds = "water"', E, 'kinds = "water"', "is no list of texts"),
    ('kinds = ["water"]', 'kinds = ["cut-off"]', E, "[[points]]", "'cut_off' is missing"),
    ('crew = { parking = "yard" }\n', "", W, "kinds", "nothing says where to park"),
    ("walk_in_minutes", "walk_minutes", E, "walk_minutes", "Did you mean 'walk_in_minutes'?"),
    ("people_max = 2", "people_max = 0", E, "crew = [", "where 0 are allowed"),
    ("people_max = 2", "lat = 54", E, "lat = 54", "lat and lon go together"),
    ("people_max = 2", "lat = 95, lon = 2", E, "lat = 95", "outside -90 to 90"),
    ('open_to = "14:00"', 'open_to = "25:00"', E, "open_to", "no time of day"),
    ('open_to = "14:00"', "open_to = 2027-06-18T14:00", E, "open_to", "closes before it opens"),
    ('open_from = "09:00", open_to = "14:00"', 'open_to = "04:00"', E, "open_to", "closes before the start"),
    ('when = "out", ', "", E, "cut_off", "'when' is missing"),
    ('when = "out"', 'when = "leaving"', E, "cut_off", "Write one of: in, out"),
    ('clock = "11:30"', 'clock = "Someday 11:30"', E, "cut_off", "is no moment"),
    ('clock = "11:30"', 'clock = "11:30", elapsed = "6:00"', E, "cut_off", "has clock and elapsed"),
    (', clock = "11:30"', "", E, "cut_off", "a cut-off has no time"),
    ('clock = "11:30"', "clock = 2027-06-19T04:00", E, "cut_off", "is before the start"),
    ('clock = "11:30"', 'clock = "Mon 11:30"', W, "cut_off", "after the time limit"),
    ('elapsed = "22:00"', 'elapsed = "2:00"', E, "cut_off", "earlier than the one before, at 'Skelter Mill'"),
    ('cut_off = { when = "out", clock = "11:30" }',
     'cut_offs = [{ when = "out", clock = "11:30" }, { when = "in", clock = "12:30" }]', E, "cut_offs",
     "out before she must be in"),
    ('cut_off = { when = "out", clock = "11:30" }',
     'cut_offs = [{ when = "out", clock = "11:30" }, { when = "out", clock = "12:30" }]', E, "cut_offs",
     "two cut-offs for the same moment"),
    ("chance = 0.9", "chance = 0", E, "reports", "a chance of 0 is nobody"),
    ("chance = 0.9", "chance = 1.2", E, "reports", "1.2 is outside 0 to 1"),
    ("chance = 0.9, ", "", E, "reports", "'chance' is missing"),
    ('by = "volunteer"', 'by = "voluntier"', E, "reports", "Did you mean 'volunteer'?"),
    ('by = "volunteer"', 'by = "nobody"', W, "[event]", "nobody reports from any point"),
    ("[[stretches]]", "[stretches]", None, "", ""),  # one table in place of a list is understood
    ("to_km = 78", "to_km = 58", E, "to_km", "ends at km 58, before it begins"),
    ("to_km = 78", "to_km = 178", E, "to_km", "the finish is at km 161"),
    ("no_signal = true", 'no_signal = "yes"', E, "no_signal", "neither true nor false"),
    # -- runners
    ('wave = "B"', 'wave = "C"', E, "wave", "there is no wave 'C'"),
    ('wave = "B"', "start = 2027-06-12T05:00", E, "start =", "more than a day before the event"),
    ('wave = "B"', 'person = "marn"', E, "person", "Did you mean 'maren'?"),
    ('target = { finish = "29:00" }\n', "", E, "[[runners]]", "'target' is missing"),
    ('finish = "29:00"', 'finish = "29:00", pace_all_in = "10:50"', E, "target", "several forms of target"),
    ('finish = "29:00"', 'easy_pace = "6:30"', E, "target", "easy_pace and margin go together"),
    ('finish = "29:00"', 'pace_all_in = "99:99"', E, "target", "is no pace"),
    ('finish = "29:00"', 'pace_all_in = "1:00"', E, "target", "outside 2:00 to 60:00 per km"),
    ('from = "start", words', 'from = "strat", words', E, "fuel", "Did you mean 'start'?"),
    ("kcal_per_h = 250", "kcal_per_h = 99999", E, "fuel", "outside 0 to 1500"),
    ("[[runners]]\n", "[[runner]]\n", E, "[[runner]]", "Did you mean 'runners'?"),
    # -- people
    ('phone = "+44 1632 960011"', 'phone = "96-x"', E, "96-x", "is no telephone number"),
    ('phone = "+44 1632 960011"', 'phone = "01632 960011"', W, "01632 960011", "has no country code"),
    ('phone = "+44 1632 960011"', 'phone = "(01632) 960011"', W, "(01632) 960011", "has no country code"),
    ('phone = "+44 1632 960011"', 'email = "ana at home"', E, "email", "is no e-mail address"),
    ('channels = ["telegram"]', 'channels = ["telegramm"]', E, "channels", "Did you mean 'telegram'?"),
    ('channels = ["telegram"]', 'channels = ["email"]', E, "channels", "the channel 'email' has no address"),
    ('channels = ["telegram"]', 'language = "xx"', E, "language", "Write one of: en, de"),
    ('channels = ["telegram"]', 'notices = "mine"', E, "notices", "Did you mean 'only mine'?"),
    ('from = "22:00", to', 'from = "22.00", to', E, "quiet", "is no time of day"),
    ('from = "22:00", ', "", E, "quiet", "quiet hours need both ends"),
    ("Europe/Berlin", "Europe/Berlyn", E, "time_zone", "Did you mean 'Europe/Berlin'?"),
    ('kind = "crew"', 'kind = "crw"', E, "parts", "Did you mean 'crew'?"),
    ('kind = "crew", runner = "maren"', 'kind = "crew", runner = "marn"', E, "parts", "Did you mean 'maren'?"),
    ('car = "van" } ]', 'car = "vna" } ]', E, "parts", "Did you mean 'van'?"),
    ("ladder = 2", "ladder = 0", E, "parts", "outside 1 to 20"),
    ("ladder = 2", "ladder = 1", W, "parts", "step 1 of the ladder for Maren is also that of"),
    ("ladder = 2", "calls_race_control = true", E, "parts", "are both to call race control"),
    (", calls_race_control = true", "", E, "[[people]]", "nobody is to call race control"),
    ('kind = "safety contact"', 'kind = "supporter"', E, "[[runners]]", "has no safety contact"),
    ('pace_from = "moss"', 'pace_from = "mos"', E, "parts", "Did you mean 'moss'?"),
    ('pace_to = "finish"', 'pace_to = "mill"', E, "parts", "pace_to comes before pace_from"),
    # -- kit, fuel, lists
    ("kcal_per_h = 250", "kcal_per_h = 2500", E, "fuel", "outside 0 to 1500"),
    ("kcal_per_h = 250", 'kcal_per_h = "250"', E, "fuel", "is no number"),
    ("kcal_per_h = 250", "caffeine_mg_per_h = 300", E, "fuel", "outside 0 to 200"),
    ("kcal_per_h = 250", "cafeine_mg_per_h = 20", E, "fuel", "Did you mean 'caffeine_mg_per_h'?"),
    ("kcal_per_h = 250", 'eats = [ { name = "gel" } ]', E, "fuel", "'per_h' is missing. Say how many in an hour"),
    ("kcal_per_h = 250", "eats = [ { per_h = 1 } ]", E, "fuel", "'name' is missing. Name it"),
    ("kcal_per_h = 250", 'eats = [ { name = "gel", per_h = 50 } ]', E, "fuel", "outside 0.05 to 20"),
    ("kcal_per_h = 250", 'eats = [ { name = "gel", per_h = 1, caffeine_mg = 900 } ]', E, "fuel", "outside 0 to 400"),
    ("kcal_per_h = 250", 'eats = [ { name = "gel", per_h = 1, carbs = 25 } ]', E, "fuel", "'carbs' is not known"),
    ("kcal_per_h = 250", 'eats = "gel"', E, "fuel", "no list of tables"),
    ('bib = "214"', 'bib = "214"\nbottles = 0', E, "bottles", "outside 1 to 20"),
    ('bib = "214"', 'bib = "214"\nbottles = 1.5', E, "bottles", "no whole number"),
    ('bib = "214"', 'bib = "214"\ntrained_carbohydrate_g_per_h = 900', E, "trained", "outside 0 to 200"),
    ('bib = "214"', 'bib = "214"\ncarries = "jacket"', E, "carries", "carries is no list"),
    ('bib = "214"', 'bib = "214"\ncarries = [ { name = "jacket", grams = 0 } ]', E, "carries", "outside 1 to 50000"),
    ('bib = "214"', 'bib = "214"\ncarries = [ { name = "torch", prepare = ["load"] } ]', E, "carries",
     "buy, charge, test"),
    ('bib = "214"', 'bib = "214"\ncarries = [ { name = "torch", prepare = "test" } ]', E, "carries", "is no list of texts"),
    ('bib = "214"', 'bib = "214"\ncarries = [ { grams = 90 } ]', E, "carries", "'name' is missing. Name the item"),
    ('bib = "214"', 'bib = "214"\ndrop_bags = [ { point = "mil", kit = [] } ]', E, "drop_bags", "Did you mean 'mill'?"),
    ('bib = "214"', 'bib = "214"\ndrop_bags = [ { point = "moss" } ]', W, "drop_bags", "is no point for drop bags"),
    ('bib = "214"', 'bib = "214"\ndrop_bags = [ { point = "mill", kit = ["socks"] }, { point = "mill", kit = ["gels"] } ]',
     W, "drop_bags", "two of her bags wait at 'mill'"),
    ("kcal_per_h = 250", 'eats = [ { name = "gel", per_h = 4, caffeine_mg = 75 } ]', E, "fuel",
     "caffeine_mg_per_h = 300 is outside 0 to 200. Correct per_h"),
    ("kcal_per_h = 250", 'eats = [ { name = "bar", per_h = 1, carbohydrate_g = 400 } ]', E, "fuel", "outside 0 to 250"),
    ("kcal_per_h = 250", 'eats = [ { name = "salt", per_h = 1, sodium_mg = 0.3 } ]', W, "fuel",
     "Write milligrams, not grams: sodium_mg = 300"),
    ("kcal_per_h = 250", 'eats = [ { name = "gel", per_h = 1 }, { name = "Gel", per_h = 2 } ]', W, "fuel",
     "'Gel' stands twice in one of her fuel plans"),
    ("kcal_per_h = 250", "fluid_ml_per_h = 0.5", W, "fuel", "Write millilitres, not litres"),
    ('fuel = [ {', 'fuel = [ { from = "start", words = "bars" }, {', E, "fuel", "two of her fuel plans begin at 'start'"),
    ('bib = "214"', 'bib = "214"\ncarries = "poles"', E, "carries", '{ name = "torch", hours = 9 }'),
    ('bib = "214"', 'bib = "214"\ndrop_bags = [ { kit = ["socks"] } ]', E, "drop_bags", "Say where the bag waits"),
    ("vehicles_max = 2", 'required_kit = "whistle"', E, "required_kit", 'Write required_kit = ["...", "..."]'),
    ("vehicles_max = 2", "required_kit = [1]", E, "required_kit", "is no list of texts"),
    # -- the brief
    ("[waves]", '[brief]\ntravel = "by train"\n[waves]', E, "travel", 'Write travel = ["...", "..."]'),
    ("[waves]", "[brief]\nbeds = [2]\n[waves]", E, "beds", "is no list of texts"),
    ("[waves]", '[brief]\nbed = ["inn"]\n[waves]', E, "bed", "Did you mean 'beds'?"),
    ("[waves]", "[brief]\nentry = 5\n[waves]", E, "entry", 'Write entry = ["...", "..."]'),
    # -- her own words
    ('bib = "214"', 'bib = "214"\nprompts = [ { when = "at night" } ]', E, "prompts", "'words' is missing"),
    ('bib = "214"', 'bib = "214"\nprompts = [ { words = "count" } ]', E, "prompts", "'when' is missing"),
    ('bib = "214"', 'bib = "214"\nprompts = "count"', E, "prompts", "[[runners.prompts]] on its own line"),
    ('bib = "214"', 'bib = "214"\nprompts = [ { when = "at night", word = "count" } ]', E, "prompts",
     "Did you mean 'words'?"),
    ('bib = "214"', 'bib = "214"\nnot_to_hear = "nearly there"', E, "not_to_hear", 'Write not_to_hear = ["...", "..."]'),
    ('bib = "214"', 'bib = "214"\nwants_to_hear = [5]', E, "wants_to_hear", "is no list of texts"),
    # -- cars, drives, meetings
    ('starts_at = "start"', 'starts_at = "strat"', W, "starts_at", "much like 'start'"),
    ("minutes = 35\n", "", W, "[[drives]]", "there is no leave-by"),
    ('minutes = 35\nconfirmed_by = "ana"\n', "minutes = 35\n", W, "[[drives]]", "nobody has confirmed the drive"),
    ('confirmed_by = "ana"', 'confirmed_by = "an"', E, "confirmed_by", "Did you mean 'ana'"),
    ('to = "mill"\n', 'to = "start"\n', E, "[[drives]]", "to itself"),
    ('to = "mill"\n', 'to = "Skelter Mill"\n', E, "to =", "Write its id: 'mill'"),
    ('from = "mill"\nto = "chapel"', 'from = "start"\nto = "mill"', E, "[[drives]]", "is given twice"),
    ('from = "mill"\nto = "chapel"', 'from = "mill"\nto = "hotel"', W, "[[meetings]]",
     "there is no drive from 'mill' to 'chapel'"),
    ('point = "mill"', 'point = "mil"', E, "point", "Did you mean 'mill'?"),
    ('point = "mill"', 'point = "moss"', E, "point", "crew have no access to 'Moss Edge'"),
    ('point = "mill"', 'point = "chapel"', E, "[[meetings]]", "is met twice at 'chapel'"),
    ('crew = ["ana"]', 'crew = ["anna"]', E, "crew = [", "Did you mean 'ana'?"),
    ('crew = ["ana"]', 'crew = ["ines"]', W, "crew = [", "has no part as crew or pacer"),
    ('weight = "safety"', 'weight = "safe"', E, "kit", "Did you mean 'safety'?"),
    ('weight = "safety", car = "van"', 'car = "estate"', E, "kit", "which does not go to this meeting"),
    ('kit = ["poles"', "kit = [5", E, "kit", "5 is no text"),
    ('pacer_joins = "tomas"', 'pacer_joins = "ana"', E, "pacer_joins", "has no part as pacer"),
    ('pacer_joins = "tomas"', 'from = "nowhere"', W, "from =", "no drive leads from or to 'nowhere'"),
    # -- movements: places, drives, pacers, sleeps, relay shares
    ("[[cars]]", '[[places]]\nid = "mill"\n[[cars]]', E, 'id = "mill"', "the place 'mill' has the id of a point"),
    ("[[cars]]", '[[places]]\nid = "inn"\nlat = 54\n[[cars]]', E, "lat = 54", "lat and lon go together"),
    ("[[cars]]", '[[places]]\nid = "inn"\n[[places]]\nid = "inn"\n[[cars]]', E, 'id = "inn"', "used twice in places"),
    ("people_max = 2", 'place = "yard"', E, "place =", "there is no place 'yard'"),
    ("[[cars]]", '[[places]]\nid = "inn"\nlatitude = 54\n[[cars]]', E, "latitude", "the key 'latitude' is not known"),
    ("[waves]", "[driving]\nspeed_kmh = 400\n[waves]", E, "speed_kmh", "outside 5 to 130"),
    ("[waves]", "[driving]\nroad_factor = 0.8\n[waves]", E, "road_factor", "outside 1 to 5"),
    ("[waves]", "[driving]\nnigt_factor = 1.2\n[waves]", E, "nigt_factor", "Did you mean 'night_factor'?"),
    ("minutes = 35", "minutes = 35\nfuel_minutes = 10", W, "fuel_minutes", "minutes, which are the whole drive"),
    ("minutes = 35", "traffic_minutes = -5", E, "traffic_minutes", "outside 0 to 1440"),
    ("pacer_from_km = 60", "crew_not_before = 2027-06-19T15:00", E, 'point = "mill"', "before the rules allow crew"),
    ("pacer_from_km = 60", "crew_not_before = 2027-06-21T15:00", E, "crew_not_before", "once the race is over"),
    ("pacer_from_km = 60", "pacer_sign_in_minutes = 2000", E, "pacer_sign_in", "outside 0 to 1440"),
    ('pacer_joins = "tomas"', 'pacer_leaves = "tomas"', E, "pacer_leaves", "joins her at no meeting before"),
    ('pacer_joins = "tomas"', 'pacer_joins = "tomas"\npacer_leaves = "tomas"', E, "pacer_leaves",
     "at the same meeting"),
    ('pace_from = "moss"', 'pace_from = "finish"', W, "pacer_joins", "said to pace only from 'finish'"),
    ('crew = ["ana"]', 'crew = ["ana", "ana"]', E, "crew = [", "'ana' is named twice"),
    ('crew = ["ana"]', 'crew = ["maren"]', E, "crew = [", "Maren can't be in the crew that meets her"),
    ('crew = ["ana"]', 'crew = ["tomas"]', W, "crew = [", "nobody who goes in 'van' is said to drive"),
    ('car = "van"\nkit', 'car = "van"\nfrom = "mill"\nkit', E, "from =", "come from 'mill' itself"),
    ("drives = true", "drives = true, awake_since = 2027-06-16T05:00", E, "parts", "awake for over two days"),
    ("drives = true", "drives = true, awake_since = 2027-06-21T05:00", E, "parts", "only from after the race"),
    ("drives = true", 'drives = true, sleeps = [ { from = "01:00" } ]', E, "parts", "'to' is missing"),
    ("drives = true", 'drives = true, sleeps = [ { from = "01:00", to = "Mon 03:00" } ]', E, "parts", "over 16 hours"),
    ("drives = true", 'drives = true, sleeps = [ { from = "01:00", to = "03:00" }, { from = "02:00", to = "04:00" } ]',
     E, "parts", "two sleeps of 'ana' overlap"),
    ("[[if_then]]", '[[shares]]\nperson = "ana"\nfrom = "start"\nto = "mill"\n[[if_then]]', E, 'to = "mill"',
     "nobody runs from 'mill' to 'finish'"),
    ("[[if_then]]", '[[shares]]\nperson = "tomas"\nfrom = "mill"\nto = "finish"\n[[if_then]]', E, 'from = "mill"',
     "nobody runs from 'start' to 'mill'"),
    ("[[if_then]]", '[[shares]]\nperson = "tomas"\nfrom = "mill"\nto = "start"\n[[if_then]]', E, "to =",
     "comes before"),
    ("[[if_then]]", '[[shares]]\nperson = "thomas"\nfrom = "start"\nto = "finish"\n[[if_then]]', E, "person",
     "Did you mean 'tomas'?"),
    ("[[if_then]]", '[[shares]]\nperson = "ana"\nfrom = "start"\nto = "finish"\n[[if_then]]', E, "crew = [",
     "'ana' is to be with the crew, but runs a share then"),
    ("[[if_then]]", '[[shares]]\nperson = "tomas"\nto = "finish"\n[[if_then]]', E, "[[shares]]", "'from' is missing"),
    # -- what the pace rests on: own runs, past races, results, weather
    ('wave = "B"', 'own_runs = "run.gpx"', E, "own_runs", "is no list of texts"),
    ('wave = "B"', 'own_runs = ["a.gpx", "a.gpx"]', E, "own_runs", "'a.gpx' is named twice"),
    ('wave = "B"', 'own_runs = ["../a.gpx"]', E, "own_runs", "'../a.gpx' is not beside the event file"),
    ('wave = "B"', 'own_runs = ["/home/maren/a.gpx"]', E, "own_runs", "write its name: 'a.gpx'"),
    ('wave = "B"', "own_runs = ['C:\\runs\\a.fit']", E, "own_runs", "write its name: 'a.fit'"),
    ('wave = "B"', f"own_runs = {[f'{k}.gpx' for k in range(51)]}", E, "own_runs", "51 recordings are too many"),
    ('wave = "B"', "own_runs = [5]", E, "own_runs", "is no list of texts"),
    ('wave = "B"', 'own_run = ["a.gpx"]', E, "own_run =", "Did you mean 'own_runs'?"),
    ('wave = "B"', 'past_race = "Fell 50"', E, "past_race", "is no table"),
    ('wave = "B"', 'past_race = { name = "Fell 50", km = 52, time = "7:40" }', E, "past_race", "'ascent_m' is missing"),
    ('wave = "B"', 'past_race = { name = "Fell 50", ascent_m = 5, time = "7:40" }', E, "past_race", "'km' is missing"),
    ('wave = "B"', 'past_race = { km = 52, ascent_m = 5, time = "7:40" }', E, "past_race", "'name' is missing"),
    ('wave = "B"', 'past_race = { name = "Fell 50", km = 52, ascent_m = 5 }', E, "past_race", "'time' is missing"),
    ('wave = "B"', 'past_race = { name = "F", km = 52, ascent_m = 5, time = 7.4 }', E, "past_race", "is no text"),
    ('wave = "B"', 'past_race = { name = "F", km = 52, ascent_m = 5, time = "7h" }', E, "past_race", "no length of time"),
    ('wave = "B"', 'past_race = { name = "F", km = 52, ascent_m = 5, time = "1:07" }', E, "past_race", "no speed on foot"),
    ('wave = "B"', 'past_race = { name = "F", km = 52, ascent_m = 5, time = "140:00" }', E, "past_race", "no speed on"),
    ('wave = "B"', 'past_race = { name = "F", km = 0, ascent_m = 5, time = "7:40" }', E, "past_race", "outside 1 to 1000"),
    ('wave = "B"', 'past_race = { name = "F", km = 52, ascent_m = -5, time = "7:40" }', E, "past_race", "outside 0 to"),
    ('wave = "B"', 'past_race = { name = "F", km = 52, ascent = 5, time = "7:40" }', E, "past_race", "mean 'ascent_m'?"),
    ('route = "route.gpx"', 'route = "route.gpx"\nresults = 2026', E, "results", "2026 is no text"),
    ('route = "route.gpx"', 'route = "route.gpx"\nresults = "../s.csv"', E, "results", "not beside the event file"),
    ('route = "route.gpx"', 'route = "route.gpx"\nresult = "s.csv"', E, "result =", "Did you mean 'results'?"),
    ("[waves]", "[[weather]]\nnote = \"fair\"\n[waves]", E, "[[weather]]", "this weather says nothing"),
    ("[waves]", "[[weather]]\ntemperature_c = 93\n[waves]", E, "temperature_c", "93 is outside -45 to 55"),
    ("[waves]", '[[weather]]\ntemperature_c = "27C"\n[waves]', E, "temperature_c", "is no number"),
    ("[waves]", "[[weather]]\ntemperature_c = 27\nhumidity = 140\n[waves]", E, "humidity", "outside 0 to 100"),
    ("[waves]", '[[weather]]\nground = "mud"\nhumidity = 40\n[waves]', E, "humidity", "without temperature_c"),
    ("[waves]", '[[weather]]\nground = "mudd"\n[waves]', E, "ground", "Did you mean 'mud'?"),
    ("[waves]", '[[weather]]\nground = "mud"\nfrom_km = 40\nto_km = 30\n[waves]', E, "to_km = 30", "before it begins"),
    ("[waves]", '[[weather]]\nground = "mud"\nfrom_km = 40\nto_km = 300\n[waves]', E, "to_km = 300", "the finish is at"),
    ("[waves]", '[[weather]]\nground = "mud"\ncourse = "lng"\n[waves]', E, "course", "there is no course 'lng'"),
    ("[waves]", '[[weather]]\ntemperature_c = 27\nfrom = "noon"\n[waves]', E, "from", "no time of day"),
    ("[waves]", '[[weather]]\ntemperature_c = 27\nfrom = "12:00"\nto = 2027-06-19T10:00\n[waves]', E, "to = 2027",
     "the weather ends before it begins"),
    ("[waves]", "[[weather]]\ntemperature_c = 27\nto = 2027-06-12T10:00\n[waves]", E, "to = 2027", "over days before"),
    ("[waves]", '[[weather]]\ntemperature_c = 27\nfrm = "12:00"\n[waves]', E, "frm", "Did you mean 'from'?"),
    # -- no TOML at all
    ('name = "Ana"', "name = Ana", E, "name = Ana", "Put words in quotes"),
    ('name = "Ana"', "name = “Ana”", E, "name = “Ana”", "straight quotes"),
    ("km = 21.3", "km = 21,3", E, "km = 21,3", "decimals with a point"),
    ('limit = "36:00"', "limit = 36:00", E, "limit", "times and lengths in quotes"),
    ('limit = "36:00"', 'limit = "36:00', E, "limit", "A quote is missing"),
    ("km = 21.3", "km = 21.3\nkm = 22", E, "km = 22", "keep one"),
    ("km = 21.3", "km 21.3", E, "km 21.3", "key = value"),
    ("[[points]]", "[points]", E, "[points]", "use [[...]]"),
]  # fmt: skip


def lines_with(text: str, row: str) -> set[int]:
    """Numbers of the lines that hold `row`."""
    return {n for n, line in enumerate(text.split("\n"), 1) if row in line}


@pytest.mark.parametrize(("old", "new", "severity", "row", "words"), WRONG)
def test_each_mistake_is_said_with_its_line(good, old, new, severity, row, words) -> None:
    """The mistake is reported on the line it stands on, with what is wrong or what to do."""
    assert old in good
    text = good.replace(old, new) if old.startswith("[[points") else good.replace(old, new, 1)
    problems = parse_event(text, "my.toml", ("en", "de")).problems
    if severity is None:
        assert problems == ()
        return
    found = [p for p in problems if words in str(p)]
    assert found, [str(p) for p in problems]
    assert found[0].severity is severity
    assert found[0].line in lines_with(text, row), str(found[0])
    assert str(found[0]).startswith(f"my.toml:{found[0].line}: {severity.value}: ")
    assert found[0].remedy


def test_a_misspelt_hour_of_a_stage_is_one_mistake(good) -> None:
    """A weekday nobody knows at next_stage: that, and nothing about the cut-off beside it that is right."""
    cut = 'cut_off = { when = "in", clock = "Sat 20:00" }'
    wrong = good.replace("km = 66", f'km = 66\n{cut}\nnext_stage = "Sab 20:30"', 1)
    errors = [p for p in parse_event(wrong, "event.toml").problems if p.severity is Severity.ERROR]
    assert [p.field for p in errors] == ["points.moss.next_stage"]


def test_the_table_is_long_enough() -> None:
    """At least 40 wrong files, as promised."""
    assert len(WRONG) >= 40


def test_the_good_file_has_no_fault(good) -> None:
    """The file in which the mistakes are made gives no error and no warning."""
    parsed = parse_event(good)
    assert parsed.problems == ()
    assert parsed.event is not None


FAR_APART = (
    ("people_max = 2", "lat = 54.0, lon = -2.0"),
    ('crew = { parking = "yard" }', 'crew = { parking = "yard", lat = 56.0, lon = -2.0 }'),
)


def test_a_drive_faster_than_any_car_is_refused(good) -> None:
    """222 km in a straight line (2 degrees of latitude) can't be driven in 50 minutes."""
    text = good
    for old, new in FAR_APART:
        text = text.replace(old, new, 1)
    found = [p for p in parse_event(text).errors if "faster than any car" in str(p.what)]
    assert [p.field for p in found] == ["drives.mill>chapel.minutes"]
    assert found[0].line in lines_with(text, "minutes = 50")
    assert "223 km" in str(found[0].what)


def test_a_place_and_its_point_have_one_position(good) -> None:
    """Coordinates are given at the place or at the point, never at both."""
    text = good.replace("people_max = 2", 'lat = 54.0, lon = -2.0, place = "field"', 1)
    text += '\n[[places]]\nid = "field"\nlat = 54.0\nlon = -2.0\n'
    assert any("Keep them at the place only" in str(p.remedy) for p in parse_event(text).errors)


SHARED = [
    # (what is replaced, by what): each makes Mill and Chapel one car park, so that no drive between them is missed
    (("people_max = 2", 'place = "field"'), ('crew = { parking = "yard" }', 'crew = { place = "field" }')),
    (("km = 21.3", 'waypoint = "Ford"'), ("km = 90", 'waypoint = "ford"')),
]


@pytest.mark.parametrize("changes", SHARED)
def test_no_drive_is_missed_within_one_car_park(good, changes) -> None:
    """Two points that share a place or a waypoint need no drive; without that the drive is missed."""
    start = good.index('[[drives]]\nfrom = "mill"')
    end = good.index("[[", start + 2)
    text = good[:start] + good[end:] + '\n[[places]]\nid = "field"\n'
    missed = "there is no drive from 'mill' to 'chapel'"
    assert any(missed in str(p.what) for p in parse_event(text).problems)
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    assert not any(missed in str(p.what) for p in parse_event(text).problems)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('kinds = ["start"]', 'kinds = ["strat"]'),
        ('km = 161\nkinds = ["finish"]', 'kinds = ["finnish"]'),
        ('kinds = ["crew access"]\ncrew = { parking = "yard" }', 'kinds = ["crew acces"]'),
        ('kind = "safety contact"', 'kind = "safty contact"'),
        ('kind = "pacer"', 'kind = "paser"'),
        ('kind = "crew"', 'kind = "crw"'),
    ],
)
def test_one_wrong_kind_is_one_mistake(good, old: str, new: str) -> None:
    """What would be missing only because a kind is mistyped is not told besides: no start, no safety contact, no pacer."""
    assert old in good
    before = {str(p).partition(": ")[2] for p in parse_event(good).problems}
    more = [
        p for p in parse_event(good.replace(old, new, 1)).problems if str(p).partition(": ")[2] not in before
    ]
    assert len(more) == 1, [str(p) for p in more]
    assert "is not known here" in str(more[0].what)


@pytest.mark.parametrize(
    ("old", "new", "remedy"),
    [
        (
            'target = { finish = "29:00" }',
            'target = "29:00"',
            "or [runners.target] on its own line below the [[runners]]",
        ),
        (
            'fuel = [ { from = "start", words = "porridge", kcal_per_h = 250 } ]',
            "fuel = 3",
            "[[runners.fuel]] on its own line",
        ),
        ("[alarm]", "alarm = 3", "Write [alarm] on its own line"),
    ],
)
def test_how_a_table_within_a_list_is_written(good, old: str, new: str, remedy: str) -> None:
    """[target] on its own line would begin a table of the file's: inside a list it wants its whole name."""
    text = good.replace(old, new, 1) if old in good else f"{new}\n{good}"
    said = [str(p.remedy) for p in parse_event(text).errors]
    assert any(remedy in r for r in said), said


def test_every_mistake_at_once(good) -> None:
    """Five mistakes in five tables: five problems, in the order of the file, and no event."""
    text = good
    for old, new in (
        ("Europe/London", "Europe/Londn"),
        ("km = 21.3", "km = -4"),
        ('wave = "B"', 'wave = "C"'),
        ('confirmed_by = "ana"', 'confirmed_by = "anna"'),
        ("try_first", "try_frist"),
    ):
        text = text.replace(old, new, 1)
    parsed = parse_event(text)
    assert parsed.event is None
    lines = [p.line for p in parsed.errors]
    assert len(lines) == 5
    assert lines == sorted(lines)
    assert [p.field for p in parsed.errors][1] == "points.mill.km"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "there is no [event] table"),
        ("\ufeff[event]\n", "'name' is missing"),
        ("a = " + "[" * 30_000, "my.toml"),
        ("a = " + "{b=" * 5_000, "my.toml"),
        ("x" * 8_100_000, "is this the route?"),
        ("<html><body>nothing here</body></html>", "can't be read as TOML"),
        ("[event]\nstarts = 2027-02-30T05:00", "my.toml"),
        ("[event]\nname = '''a\nb'''", "more than one line"),
        ("event = 3", "is no table"),
        ("event = []", "is no table"),
        ("[[event]]\nid = 'x'", "[{ ... }] is no table"),
        ("[event]\n[[points]]\n[[points.reports]]\nby = 3", "3 is no text"),
        ("points = [1, 2]", "is no list of tables"),
        ("\0", "my.toml"),
        ("[event]\nlimit = 1e999", "my.toml"),
        ("[event]\nkeep_until = 9999-12-31\ntime_zone='Europe/London'\nstarts = 9999-12-31T23:59", "the year 9999"),
    ],
)  # fmt: skip
def test_hostile_or_broken_texts_give_a_plain_error(text, words) -> None:
    """Whatever the text, there is an error with the file's name and no exception."""
    parsed = parse_event(text, "my.toml")
    assert parsed.event is None
    assert any(words in str(p) for p in parsed.errors), [str(p) for p in parsed.problems]


def test_pacers_may_follow_one_another(good) -> None:
    """The next pacer may join where the one before leaves, but not while she is still with the runner."""
    ivo = '[[people]]\nname = "Ivo"\nphone = "+44 1632 960014"\nparts = [ { kind = "pacer" } ]\n\n[[cars]]'
    finish = 'kinds = ["finish"]\ncrew = { parking = "yard" }'
    last = '\n[[meetings]]\npoint = "finish"\ncrew = ["ana"]\npacer_joins = "ivo"\n'
    text = good.replace("[[cars]]", ivo, 1).replace('kinds = ["finish"]', finish) + last
    assert any("2 pacers would be with her" in str(p.what) for p in parse_event(text).errors)
    assert parse_event(text + 'pacer_leaves = "tomas"\n').errors == ()


def test_ten_lines_are_enough_for_a_plan() -> None:
    """A first file: name, zone, start, route, start and finish, one runner: an event, with warnings."""
    text = """\
event = { name = "First", time_zone = "Europe/Vienna", starts = 2027-05-01T06:00, route = "r.gpx" }
[[points]]
name = "Start"
kinds = ["start"]
[[points]]
name = "Finish"
kinds = ["finish"]
[[runners]]
name = "Maren"
target = { pace_all_in = "9:30" }
"""
    parsed = parse_event(text)
    assert parsed.event is not None
    assert parsed.event.people[0].id == "maren"
    assert any("nobody is told anything" in str(p.what) for p in parsed.problems)


def test_a_misspelt_runners_table_is_not_taken_for_several_runners(good) -> None:
    """One slip, one cause: a meeting of a file without runners is not asked which of several it means."""
    said = [str(p) for p in parse_event(good.replace("[[runners", "[[runer")).problems]
    assert any(s.endswith("Did you mean 'runners'?") for s in said), said
    assert any("there is no runner" in s for s in said), said
    assert not any("several runners" in s for s in said), said


def test_how_a_retired_runner_gets_away_is_asked_once_where_no_crew_car_comes(good) -> None:
    """'Moss Edge' has no crew access: a note, until the file says how the race takes runners away, there or anywhere."""

    good = good.replace('transport = "the race\'s bus, by the sweep"\n', "")

    def asked(text: str) -> list[str]:
        return [str(p.what) for p in parse_event(text).problems if "gets away" in str(p.what)]

    (what,) = asked(good)
    assert "'Moss Edge'" in what
    assert asked(good.replace("km = 66\n", 'km = 66\ntransport = "the sweep\'s bus"\n')) == []
    assert asked(good.replace('limit = "36:00"', 'limit = "36:00"\ntransport = "a bus each hour"')) == []
    assert (
        asked(good.replace('kinds = ["water"]', 'kinds = ["crew access"]\ncrew = { parking = "lay-by" }'))
        == []
    )
    assert (
        len(asked(good.replace("km = 90\n", "km = 90\n").replace('crew = { parking = "yard" }\n', ""))) == 1
    )


@pytest.mark.parametrize(
    ("typed", "remedy"),
    [
        ('"35 min"', "Write a number without quotes"),
        ("0:35", "Write minutes as a number: minutes = 35"),
        ("-35", "Give minutes within that range"),
    ],
)
def test_minutes_that_are_wrong_are_one_mistake_with_its_own_remedy(good, typed, remedy) -> None:
    """Not also told to be missing; and '0:35' is not sent into quotes, where it is wrong again."""
    parsed = parse_event(good.replace("minutes = 35", f"minutes = {typed}", 1))
    (wrong,) = [p for p in parsed.problems if "drive" in p.field or not p.field]
    assert str(wrong.remedy).startswith(remedy)


def test_a_list_where_one_text_belongs_is_shown_as_the_text(good) -> None:
    parsed = parse_event(good.replace('parking = "by the bridge"', 'parking = ["by the bridge", "left"]', 1))
    assert any('parking = "by the bridge, left"' in str(p.remedy) for p in parsed.errors), parsed.errors
