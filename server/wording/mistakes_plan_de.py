"""What is wrong with routes, recordings, results and targets, in German: as `mistakes_de`, for the rooms course and plan."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

PLAN: Final[Mapping[str, str]] = {
    # -- files beside the event file
    "there is no file {}": "es gibt keine Datei {}",
    "Correct its name": "Berichtige ihren Namen",
    "Put it beside the event file, or correct its name": "Leg sie neben die Renndatei, oder berichtige ihren Namen",
    "it is not UTF-8 text (line {})": "sie ist kein UTF-8-Text (Zeile {})",
    "Save it as CSV in UTF-8": "Speicher sie als CSV in UTF-8",
    "it was recorded at the same time as {}: one run would count twice":
        "sie wurde zur selben Zeit aufgezeichnet wie {}: ein Lauf zählte doppelt",
    "Keep the better of the two, or correct the clock of the device":
        "Behalte die bessere von beiden, oder stell die Uhr des Geräts richtig",
    # -- results
    "Write h:mm:ss since the start, or seconds; leave it empty where none was recorded":
        "Schreib h:mm:ss seit dem Start, oder Sekunden; lass es leer, wo keine genommen wurde",
    "'{}' is no elapsed time": "‚{}‘ ist keine Zeit seit dem Start",
    "it is too large": "sie ist zu groß",
    "Give one year's results, one line a runner": "Gib die Ergebnisse eines Jahres, eine Zeile je Läufer",
    "it has no runners": "sie enthält keine Läufer",
    "Give a header line, then one line a runner": "Gib eine Kopfzeile, dann eine Zeile je Läufer",
    "it is no CSV file ({})": "sie ist keine CSV-Datei ({})",
    "Save it as CSV with commas": "Speicher sie als CSV mit Kommas",
    "no column is named after the finish, '{}'": "keine Spalte heißt wie das Ziel, ‚{}‘",
    "Name the columns as the points are: {}": "Nenn die Spalten wie die Punkte: {}",
    "a later point has an earlier time than the one before it": "ein späterer Punkt hat eine frühere Zeit als der davor",
    "Give elapsed times since the start, not legs or times of day":
        "Gib Zeiten seit dem Start, keine Stücke und keine Uhrzeiten",
    "{} finishers are too few to see a shape": "{} im Ziel sind zu wenige, um eine Form zu sehen",
    "Add results of other years": "Ergänz Ergebnisse anderer Jahre",
    "{} km with {} m of ascent is no race": "{} km mit {} m Anstieg ist kein Rennen",
    "Give distance in km (1 to 2000) and ascent in metres": "Gib die Länge in km (1 bis 2000) und den Anstieg in Metern",
    "{} for {} km is no speed on foot": "{} für {} km ist keine Geschwindigkeit zu Fuß",
    "Look whether hours and minutes were mixed up": "Sieh nach, ob Stunden und Minuten vertauscht sind",
    # -- recordings
    "Export the activity again from the watch's own program, as FIT or TCX, or as GPX with times":
        "Hol die Aufzeichnung noch einmal aus dem Programm der Uhr, als FIT oder TCX, oder als GPX mit Zeiten",
    "it has {} MB, more than {}": "sie hat {} MB, mehr als {}",
    "Give one activity": "Gib eine einzige Aufzeichnung",
    "it is empty": "sie ist leer",
    "it is neither GPX nor FIT nor TCX": "sie ist weder GPX noch FIT noch TCX",
    "the watch calls it '{}', not a run": "die Uhr nennt sie ‚{}‘, keinen Lauf",
    "Give recordings of runs and hikes only": "Gib nur Aufzeichnungen von Läufen und Wanderungen",
    "no track point has a time, so it is a route, not a recording":
        "kein Punkt hat eine Zeit, also ist sie eine Strecke, keine Aufzeichnung",
    "the FIT file is damaged ({})": "die FIT-Datei ist beschädigt ({})",
    "the TCX file is damaged ({})": "die TCX-Datei ist beschädigt ({})",
    "the file declares a DOCTYPE, which TCX never needs": "die Datei erklärt einen DOCTYPE, den TCX nie braucht",
    "it has {} samples with a time, at least {} are needed": "sie hat {} Punkte mit Zeit, mindestens {} braucht es",
    "it is {} km in {} min, too short to learn from": "sie hat {} km in {} min, zu kurz, um daraus zu lernen",
    "Give runs of more than a kilometre and five minutes": "Gib Läufe von mehr als einem Kilometer und fünf Minuten",
    "it lasts {} days": "sie dauert {} Tage",
    "Give one activity a file": "Gib eine Aufzeichnung je Datei",
    "it has neither distances nor positions": "sie hat weder Entfernungen noch Orte",
    "it has no heights, so nothing can be learnt about hills": "sie hat keine Höhen, über Berge ist also nichts zu lernen",
    "Give a recording of a watch that writes heights": "Gib eine Aufzeichnung einer Uhr, die Höhen schreibt",
    "{} m of it were on foot, the rest is pauses and jumps": "{} m davon waren zu Fuß, der Rest sind Pausen und Sprünge",
    "Give a run of more than a kilometre": "Gib einen Lauf von mehr als einem Kilometer",
    "{} km/h over {} km is faster than anybody has run": "{} km/h über {} km ist schneller, als je jemand gelaufen ist",
    "Leave out rides; give recordings of runs and hikes": "Lass Fahrten weg; gib Aufzeichnungen von Läufen und Wanderungen",
    "there are under 3 km of her own running to learn from": "es sind unter 3 km ihres eigenen Laufens, um daraus zu lernen",
    "Add longer runs": "Ergänz längere Läufe",
    # -- target and plan
    "a target has exactly one form, here is {}": "ein Ziel hat genau eine Form, hier ist {}",
    "Give finish, or pace_all_in, or easy_pace with margin": "Gib finish, oder pace_all_in, oder easy_pace mit margin",
    "{} is over {} days, longer than can be planned here": "{} ist über {} Tage, länger als hier geplant werden kann",
    "Look whether hours and minutes were mixed up, or plan the race in stages":
        "Sieh nach, ob Stunden und Minuten vertauscht sind, oder plane das Rennen in Etappen",
    "{} for {} km is slower than anybody walks": "{} für {} km ist langsamer, als jemand geht",
    "Look whether hours and minutes, or pace and finish, were mixed up":
        "Sieh nach, ob Stunden und Minuten, oder Tempo und Ziel, vertauscht sind",
    "an easy pace needs a margin of 0 to 10 min/km beside it":
        "ein lockeres Tempo braucht einen Zuschlag von 0 bis 10 min/km",
    "Write margin = \"1:30\"; one to two minutes are usual for a first ultra":
        "Schreib margin = \"1:30\"; ein bis zwei Minuten sind beim ersten Ultra üblich",
    "{} is no time to aim for": "{} ist keine Zeit, die man anstrebt",
    "Give a time above zero": "Gib eine Zeit über null",
    "the planned stops alone take {}, the target is {}": "die geplanten Pausen allein dauern {}, das Ziel ist {}",
    "Shorten stop_minutes at the points, or aim for a later finish":
        "Kürze stop_minutes an den Punkten, oder nimm ein späteres Ziel",
    "a plan needs a start and a finish at least": "ein Plan braucht mindestens Start und Ziel",
    "Add the points of the course": "Ergänz die Punkte der Strecke",
    "no km is known for {}": "von {} ist kein km bekannt",
    "Give km, or a waypoint of the route": "Gib km an, oder einen Wegpunkt der Strecke",
    "{} at km {} does not come after the point before it": "{} bei km {} kommt nicht nach dem Punkt davor",
    "Put the points in running order; one place passed twice is two points":
        "Ordne die Punkte in Laufrichtung; ein Ort, an dem man zweimal vorbeikommt, ist zwei Punkte",
    "{} is at km {}, the route ends at km {}": "{} ist bei km {}, die Strecke endet bei km {}",
    "Correct the km, or state the organiser's distance as stated_km":
        "Berichtige den km, oder gib die Länge des Veranstalters als stated_km an",
    "there is no runner '{}'": "es gibt keine Läuferin ‚{}‘",
    "{} = {} is outside {} to {}": "{} = {} liegt nicht zwischen {} und {}",
    "Give what she does on good ground when fresh, or leave it out":
        "Gib an, was sie frisch auf gutem Boden kann, oder lass es weg",
    "factor = {} is outside 0.5 to 5": "factor = {} liegt nicht zwischen 0.5 und 5",
    "Write 1.10 for a tenth slower": "Schreib 1.10 für ein Zehntel langsamer",
    "the stretch from km {} to km {} has no length": "der Abschnitt von km {} bis km {} hat keine Länge",
    "Put the smaller km first": "Setz den kleineren km zuerst",
    "past results leave too little time to get to {} with the planned stops":
        "frühere Ergebnisse lassen mit den geplanten Pausen zu wenig Zeit bis {}",
    "Shorten the stops before it, or look whether the results are of this course":
        "Kürze die Pausen davor, oder sieh nach, ob die Ergebnisse von dieser Strecke sind",
    "{} is before her start": "{} liegt vor ihrem Start",
    "Correct the cut-off": "Berichtige das Zeitlimit",
    "the race's time limit": "das Zeitlimit des Rennens",
    "the cut-off in of {}": "das Zeitlimit an bei {}",
    "the cut-off out of {}": "das Zeitlimit ab bei {}",
    "the start of the next stage at {}": "den Start der nächsten Etappe bei {}",
    "with a finish in {} she is in at {} after {}, {} past {}":
        "mit einem Ziel in {} kommt sie bei {} nach {} an, {} über {} hinaus",
    "with a finish in {} she is out at {} after {}, {} past {}":
        "mit einem Ziel in {} geht sie bei {} nach {} weiter, {} über {} hinaus",
    "Aim for a finish in {} or earlier": "Nimm ein Ziel in {} oder früher",
    "No finish time meets the cut-offs as they stand": "Keine Zielzeit hält die Zeitlimits, wie sie sind",
    "{}, or stop less before it (stops up to there: {})": "{}, oder mach davor weniger Pause (Pausen bis dort: {})",
    "{} is slower than anybody walks this course": "{} ist langsamer, als jemand diese Strecke geht",
    "Plan longer stops, or aim for an earlier finish": "Plane längere Pausen, oder nimm ein früheres Ziel",
    "a finish in {} needs {}; within her own limits ({}) this course takes {}":
        "ein Ziel in {} braucht {}; in ihren eigenen Grenzen ({}) dauert diese Strecke {}",
    "a finish in {} needs {}; at the best power anybody has held so long this course takes {}":
        "ein Ziel in {} braucht {}; mit der größten je so lange gehaltenen Leistung dauert diese Strecke {}",
    "{} m/s uphill and {} m/s on the level": "{} m/s bergauf und {} m/s in der Ebene",
    "{} m/s uphill": "{} m/s bergauf",
    "{} m/s on the level": "{} m/s in der Ebene",
    "Aim for a later finish": "Nimm ein späteres Ziel",
    "Aim for a later finish, or correct her limits": "Nimm ein späteres Ziel, oder berichtige ihre Grenzen",
    "the card '{}' has nothing to try first": "die Karte ‚{}‘ nennt nichts, was zuerst versucht wird",
    "Give at least one step, as in try_first = [\"stop at once, dry, tape\"]":
        "Gib mindestens einen Schritt an, wie try_first = [\"stop at once, dry, tape\"]",
    # -- routes
    "Export the route again as GPX and use the new file": "Hol die Strecke noch einmal als GPX und nimm die neue Datei",
    "this is a web page, not a route: the download probably needed a log-in":
        "das ist eine Webseite, keine Strecke: zum Herunterladen musste man wohl angemeldet sein",
    "this is a KML file, not GPX": "das ist eine KML-Datei, kein GPX",
    "this is a TCX file, not GPX": "das ist eine TCX-Datei, kein GPX",
    "this is a news feed, not GPX": "das ist ein Nachrichtenstrom, kein GPX",
    "this is a zip or KMZ archive, not GPX": "das ist ein ZIP- oder KMZ-Archiv, kein GPX",
    "this is a gzip archive, not GPX": "das ist ein gzip-Archiv, kein GPX",
    "this is a PDF, not GPX": "das ist ein PDF, kein GPX",
    "this is JSON, not GPX": "das ist JSON, kein GPX",
    "this is a FIT recording, not GPX": "das ist eine FIT-Aufzeichnung, kein GPX",
    "the file is empty": "die Datei ist leer",
    "the file has {} MB, more than {} MB": "die Datei hat {} MB, mehr als {} MB",
    "the file ends in the middle, as after a broken download":
        "die Datei hört mittendrin auf, wie nach abgebrochenem Herunterladen",
    "Download or export it again": "Lad oder hol sie noch einmal",
    "this is not well-formed XML: {}": "das ist kein richtiges XML: {}",
    "the file begins with <{}>, not with <gpx>": "die Datei beginnt mit <{}>, nicht mit <gpx>",
    "the file declares a DOCTYPE, which GPX never needs and which can be made to exhaust a reader":
        "die Datei erklärt einen DOCTYPE, den GPX nie braucht und der Leser überlasten kann",
    "Remove the DOCTYPE, or export the route again with another program":
        "Nimm den DOCTYPE heraus, oder hol die Strecke mit einem anderen Programm",
    "the text is not UTF-8, though the file does not name another encoding":
        "der Text ist kein UTF-8, obwohl die Datei keine andere Kodierung nennt",
    "Save the file as UTF-8, or export the route again": "Speicher die Datei als UTF-8, oder hol die Strecke noch einmal",
    "the file's text encoding cannot be read ({})": "die Kodierung der Datei ist nicht lesbar ({})",
    "unknown kind of GPX, {}: known are GPX 1.0 and 1.1": "unbekannte Art von GPX, {}: bekannt sind GPX 1.0 und 1.1",
    "elements are nested deeper than {}": "Elemente sind tiefer geschachtelt als {}",
    "one tag or comment is longer than {} bytes": "ein Tag oder eine Bemerkung ist länger als {} Bytes",
    "more than {} tracks and routes": "mehr als {} Tracks und Routen",
    "Leave only the course in the file": "Lass nur die Strecke in der Datei",
    "more than {} points": "mehr als {} Punkte",
    "Thin the track in the program that made it": "Dünne den Track in dem Programm aus, das ihn gemacht hat",
    "more than {} waypoints": "mehr als {} Wegpunkte",
    "Keep the waypoints that are points of the race": "Behalte die Wegpunkte, die Punkte des Rennens sind",
    "a point has no {}: {}= is missing": "ein Punkt hat kein {}: {}= fehlt",
    "{} {} is outside -{} to {}": "{} {} liegt nicht zwischen -{} und {}",
    "Correct the point; perhaps latitude and longitude are exchanged":
        "Berichtige den Punkt; vielleicht sind Breite und Länge vertauscht",
    "{} {} is not a number": "{} {} ist keine Zahl",
    "Write it like 54.9012, with a point": "Schreib sie wie 54.9012, mit Punkt",
    "{}: {} height spikes were bridged": "{}: {} Höhenspitzen wurden überbrückt",
    "{}, line {}: {} heights outside {} to {} m were taken as missing":
        "{}, Zeile {}: {} Höhen außerhalb von {} bis {} m gelten als fehlend",
    "{}: straight for {} km from km {}; points are missing there or stand in the wrong place":
        "{}: {} km gerade ab km {}; dort fehlen Punkte oder stehen falsch",
    "{}: no heights from km {} to {}; drawn straight there": "{}: keine Höhen von km {} bis {}; dort gerade gezogen",
    "{}: the route has no heights: {}": "{}: die Strecke hat keine Höhen: {}",
    "{}: every height is 0: {}": "{}: jede Höhe ist 0: {}",
    "{}: only {} of the points have heights: {}": "{}: nur {} der Punkte haben Höhen: {}",
    "gradient and ascent are unknown, so that the plan reckons with flat ground":
        "Neigung und Anstieg sind unbekannt, der Plan rechnet also mit flachem Boden",
    "the line is {} m long": "die Linie ist {} m lang",
    "Use the file that holds the whole course": "Nimm die Datei mit der ganzen Strecke",
    "the line is {} km long, as when points stand in the wrong order or place":
        "die Linie ist {} km lang, wie wenn Punkte falsch geordnet sind oder falsch stehen",
    "Look at the route on a map and export it again": "Sieh die Strecke auf einer Karte an und hol sie noch einmal",
    "the line measures {} km, but {} km are stated": "die Linie misst {} km, angegeben sind {} km",
    "Correct stated_km, or use the route of this race": "Berichtige stated_km, oder nimm die Strecke dieses Rennens",
    "the file has no track and no route with two points or more":
        "die Datei hat keinen Track und keine Route mit mindestens zwei Punkten",
    "Export the course itself, not only its waypoints": "Hol die Strecke selbst, nicht nur ihre Wegpunkte",
    "{}: {} {}s were joined: {}": "{}: {} {}s wurden verbunden: {}",
    "the file holds {} {}s that do not follow one another ({}; {} km between two of them)":
        "die Datei enthält {} {}s, die nicht aufeinander folgen ({}; {} km zwischen zweien)",
    "Leave only the one that is the course in the file": "Lass nur den in der Datei, der die Strecke ist",
    # -- points on the route
    "{} has no waypoint {}": "{} hat keinen Wegpunkt {}",
    "{} waypoints of {} are named {}": "{} Wegpunkte von {} heißen {}",
    "Give the point's km instead": "Gib stattdessen den km des Punkts an",
    "The file has no named waypoints: give the point's km instead":
        "Die Datei hat keine Wegpunkte mit Namen: gib stattdessen den km an",
    "The nearest names are {}": "Die ähnlichsten Namen sind {}",
    "{} is at {}, but {}, which stands before it, is not before km {}":
        "{} ist bei {}, aber {}, das davor steht, ist nicht vor km {}",
    "Put the points in running order, or correct the km or the waypoint":
        "Ordne die Punkte in Laufrichtung, oder berichtige km oder Wegpunkt",
    "neither km nor waypoint is given": "weder km noch waypoint ist angegeben",
    "Give one, as km = 21.3": "Gib eines an, wie km = 21.3",
    "km {} is not on the course, which is {} km long": "km {} liegt nicht auf der Strecke, die {} km lang ist",
    "Correct the km, or give stated_km where the organiser counts another distance":
        "Berichtige den km, oder gib stated_km an, wo der Veranstalter anders zählt",
    "the {} is given as km {}, but the course has it at km {}": "{} steht bei km {}, auf der Strecke ist es bei km {}",
    "waypoint {} is {} from the {} of the line": "der Wegpunkt {} liegt {} vom {} der Linie",
    "Correct the waypoint, or use the route that has the {} of the race":
        "Berichtige den Wegpunkt, oder nimm die Strecke mit dem {} des Rennens",
    "waypoint {} is {} from the course, nearest at km {}; at most {} m are allowed":
        "der Wegpunkt {} liegt {} neben der Strecke, am nächsten bei km {}; höchstens {} m sind erlaubt",
    "Correct the waypoint or the route, or give the point's km instead":
        "Berichtige Wegpunkt oder Strecke, oder gib stattdessen den km an",
    "km {} is given, but waypoint {} is at {}": "km {} ist angegeben, aber der Wegpunkt {} ist bei {}",
    "Correct the km, or leave it out": "Berichtige den km, oder lass ihn weg",
    "the course comes by waypoint {} at {}": "die Strecke kommt am Wegpunkt {} vorbei bei {}",
    "Add km = ... to say which pass is meant": "Ergänz km = ..., um zu sagen, welches Vorbeikommen gemeint ist",
}  # fmt: skip
