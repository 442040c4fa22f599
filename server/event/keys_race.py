"""The tables of an event file about the race and its ground: what each key means, with an example."""

from __future__ import annotations

from typing import Final

from server.event.keyword import Key, KeyTable

SINGLE, SEVERAL = (0, 1), (2,)
"""The example files of one course, and the one with [[courses]]."""

RACE_TABLES: Final = (
    KeyTable(
        "event",
        "The race: name, place in time, route. Every file begins with it.",
        (
            Key("id", "what the event is called in commands and addresses", '"harrow-round"'),
            Key("name", "the race's name as people read it", '"Harrow Round 100"'),
            Key("time_zone", "where the race is; every time in the file is on this clock", '"Europe/London"'),
            Key("starts", "the start, as the clock at the race shows it", "2027-09-11T05:00"),
            Key("limit", "the race's time limit, counted from its start", '"34:00"'),
            Key("route", "the GPX file of the course", '"route.gpx"', SINGLE),
            Key("stated_km", "the organiser's length, where the measured one differs", "161", SINGLE),
            Key(
                "stated_ascent_m",
                "the organiser's ascent: what a past race's stated ascent is compared with",
                "5200",
                SINGLE,
            ),
            Key(
                "results",
                "a CSV of others' split times on this course, to plan from",
                '"results.csv"',
                SINGLE,
            ),
            Key(
                "emergency_number",
                "the number to call in danger of life where the race is; 112 without it",
                '"112"',
            ),
            Key("grid", "the grid in which positions are told to rescuers", '"UTM"'),
            Key(
                "transport",
                "how the race takes away whoever retires; a point may say its own",
                '"sweep bus from every aid station to the finish, on the hour"',
            ),
            Key("exercise", "played to practise: every notice and the board are marked so", "true"),
            Key(
                "keep_until",
                "the day after which positions, words and pictures of people are blanked",
                "2027-12-31",
            ),
        ),
    ),
    KeyTable(
        "race_control",
        "Whom to call at the race. Needed as soon as anybody is to be alarmed.",
        (
            Key("name", "who answers there", '"Race control, the hall"'),
            Key("phone", "their number", '"+44 1632 960100"'),
        ),
    ),
    KeyTable(
        "rescue",
        "Mountain or sea rescue, for the sheets; the emergency number comes first.",
        (Key("name", "who they are", '"Hill rescue, through 112"'), Key("phone", "their number", '"112"')),
    ),
    KeyTable(
        "rules",
        "What the race allows crews and pacers. A plan that breaks a rule is refused. Leave out what is no rule.",
        (
            Key("vehicles_max", "how many cars may come to one runner's meetings", "2"),
            Key("crew_people_max", "how many of the crew may meet her at once (pacers not counted)", "4"),
            Key("pacer_from_km", "from which km a pacer may be with her", "10"),
            Key("pacers_at_once", "how many pacers may be with her at once", "1"),
            Key(
                "outside_help",
                "whether she may be helped anywhere, or only where crew have access",
                '"crew points only"',
            ),
            Key("crew_not_before", "no crew at any point before then", '"06:00"'),
            Key("pacer_sign_in_minutes", "how long before her a pacer must be there to sign in", "15"),
            Key(
                "required_kit",
                "what every runner must have on her: ticked off against her lists",
                '["rain jacket"]',
            ),
            Key(
                "note",
                "other rules, in the race's own words: printed on every sheet",
                '"No cars past the dam."',
            ),
        ),
    ),
    KeyTable(
        "brief",
        "What crew read before they travel: printed in brief.pdf beside roles, rules, drives and her own words.",
        (
            Key("travel", "how each gets there", '["Ana and Tomas: train, Friday 14:10"]'),
            Key("beds", "where who sleeps, before and after", '["Inn at the bridge, two rooms, late key"]'),
            Key(
                "entry",
                "numbers, stickers, hours of the race office",
                '["number and car sticker: hall, Friday to 21:00"]',
            ),
            Key("also", "anything else", '["cash for the car park"]'),
        ),
    ),
    KeyTable(
        "alarm",
        "When the safety contact is called. Best left as it is.",
        (
            Key("line", "the chance that all is well under which she counts as overdue", "0.002"),
            Key("grace_minutes", "how long to wait then before anybody is called", "15"),
            Key("look_again_minutes", "how long whoever answered has before they are asked again", "20"),
            Key("answer_within_minutes", "how long somebody has to answer before the next is called", "5"),
        ),
    ),
    KeyTable(
        "driving",
        "What a drive is estimated from where nobody gave its minutes. An estimate sets no leave-by.",
        (
            Key("road_factor", "how much longer the road is than the straight line", "1.4"),
            Key("speed_kmh", "how fast crew drive on average", "45"),
            Key("night_factor", "how much longer it takes in the dark", "1.15"),
            Key("full_car_park_minutes", "to find a space", "5"),
        ),
    ),
    KeyTable(
        "waves",
        'Starts of their own, by names you choose; a runner names hers with wave = "…".',
        (Key("B", "any name: when that wave starts", "2027-09-11T05:30"),),
    ),
    KeyTable(
        "courses",
        "Only where runners are on several courses, or the race has stages: then [event] names no route.",
        (
            Key("id", "what other tables call it", '"long"'),
            Key("name", "its name, from which the id is made where none is given", '"Long course"'),
            Key("route", "its GPX file", '"long.gpx"'),
            Key("stated_km", "the organiser's length", "161"),
            Key("stated_ascent_m", "the organiser's ascent", "5200"),
            Key("results", "a CSV of others' split times on it", '"results.csv"'),
        ),
        many=True,
        within=SEVERAL,
    ),
    KeyTable(
        "points",
        "A named place on the course, in running order; a place passed twice is two points.",
        (
            Key("id", "what other tables call it", '"mill"'),
            Key("name", "what people call it", '"Skelter Mill"'),
            Key("also", "other names that people may use in messages", '["the mill"]'),
            Key("course", "which of several [[courses]] it is on", '"long"', SEVERAL),
            Key("km", "distance from the start; start and finish need none", "21.3", (0,)),
            Key(
                "waypoint",
                "instead of km: the name of a waypoint of the route file",
                '"Skelter Mill"',
                (1, 2),
            ),
            Key(
                "kinds",
                "what there is; crew and cut_off add theirs by themselves",
                '["aid station", "drop bag"]',
            ),
            Key("cut_off", "a time by which she must be in or out", within=(0,)),
            Key("cut_offs", "the same where there is one for in and one for out", within=(1, 2)),
            Key("crew", "how crew get there; without it they have no access"),
            Key("reports", "who tells where she is; without it her silence there means nothing"),
            Key("signal", "how telephones work there", '"patchy"'),
            Key("stop_minutes", "how long she means to stop", "8", (0,)),
            Key("next_stage", "a stage ends here: when the next one starts", '"Sun 07:00"', (1,)),
            Key(
                "transport",
                "how the race takes away whoever retires there",
                '"minibus to the finish at 03:00 and 06:00"',
            ),
            Key("note", "anything else", '"soup and beds"'),
        ),
        many=True,
        before='[[points]]\nname = "Start"\nCOURSEkinds = ["start"]\n',
        after='[[points]]\nname = "Finish"\nCOURSEkinds = ["finish"]\n',
    ),
    KeyTable(
        "points.cut_off",
        "A time limit at a point, by the clock or counted from her own start.",
        (
            Key("when", "whether she must be in or out by then", '"in"'),
            Key("clock", "the time of day, with weekday past the first day", '"Sat 13:30"', (0,)),
            Key("elapsed", "instead: how long after her start", '"8:30"', (1, 2)),
        ),
    ),
    KeyTable(
        "points.crew",
        "Where crew may meet her: parking, walk, hours, how many, permit.",
        (
            Key("parking", "where to park, in words", '"field by the weir"'),
            Key("walk_in_minutes", "from the car to where she comes through", "6"),
            Key("unloading_minutes", "from there to ready", "5"),
            Key("open_from", "no crew there before", '"06:00"'),
            Key("open_to", "no crew there after", '"Sat 18:00"'),
            Key("people_max", "how many of the crew may be there (pacers not counted)", "2"),
            Key("cars_max", "how many cars of one runner may come there", "1"),
            Key("permit", "the permit that a car, or somebody in it, needs there", '"green"'),
            Key("place", "the [[places]] that several points share as their car park", '"field"', (0,)),
            Key("lat", "the car park, degrees north; drives are estimated from it", "54.21", (1, 2)),
            Key("lon", "degrees east, west is negative", "-2.3", (1, 2)),
        ),
    ),
    KeyTable(
        "points.reports",
        "Somebody who tells that a runner is there, how surely and how late.",
        (
            Key("by", "who", '"volunteer"'),
            Key("chance", "how surely a runner there is told of, above 0 up to 1", "0.9"),
            Key("delay_minutes", "how late it is heard", "10"),
        ),
        wrap="[ %s ]",
    ),
    KeyTable(
        "stretches",
        "A part of the course with something in common.",
        (
            Key("course", "which of several [[courses]]", '"long"', SEVERAL),
            Key("from_km", "where it begins", "2"),
            Key("to_km", "where it ends", "12"),
            Key("name", "what it is called", '"Long Moss"'),
            Key(
                "surface",
                "what is underfoot, as in road, track, path, grass, rock, scree, bog, sand, snow",
                '"bog"',
            ),
            Key("forest_or_gorge", "dark half an hour earlier", "true"),
            Key("no_signal", "no telephone there: silence means nothing", "true"),
            Key("factor", "what her time is multiplied by there (1.10 is a tenth slower)", "1.10"),
            Key("factor_for", "what that is for, as the timetable names it", '"stiles"'),
            Key("escape_route", "how to get off the hill there", '"down the beck to the road"'),
        ),
        many=True,
    ),
    KeyTable(
        "weather",
        "Weather to plan with, for some hours or a part of a course. A later one goes before an earlier.",
        (
            Key("course", "which of several [[courses]]", '"long"', SEVERAL),
            Key("from", "when it begins; without it from the start on", '"Sat 12:00"'),
            Key("to", "when it ends", '"Sat 18:00"'),
            Key("from_km", "where it begins, for a part of the course", "2"),
            Key("to_km", "where it ends", "12"),
            Key("temperature_c", "the air's, in the shade", "27"),
            Key("humidity", "in per cent; 50 without it", "55"),
            Key("ground", "what it makes of the ground", '"mud"'),
            Key("note", "where it is from", '"forecast of Thursday"'),
        ),
        many=True,
    ),
)
