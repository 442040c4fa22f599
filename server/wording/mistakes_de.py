"""What is wrong with an event file, in German: each sentence of the event room and what it becomes, `{}` for each value.

The key is the sentence as it stands in the code, so that reading a file needs no wording; a hole with a number takes
that value of the English one.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

EVENT: Final[Mapping[str, str]] = {
    # -- any key
    "'{}' is missing": "‚{}‘ fehlt",
    "{} is no text": "{} ist kein Text",
    "Put it in quotes: {} = \"{}\".": "Setz es in Anführungszeichen: {} = \"{}\".",
    "the text holds the control character U+{}": "der Text enthält das Steuerzeichen U+{}",
    "Type the text anew.": "Tipp den Text neu.",
    "the text has {} characters": "der Text hat {} Zeichen",
    "Keep it to {}.": "Bleib bei {}.",
    "the text has more than one line": "der Text hat mehr als eine Zeile",
    "Write it on one line.": "Schreib ihn in eine Zeile.",
    "{} is no number": "{} ist keine Zahl",
    "Write a number without quotes.": "Schreib eine Zahl ohne Anführungszeichen.",
    "Write a number without quotes (a point, not a comma, before decimals).":
        "Schreib eine Zahl ohne Anführungszeichen (Punkt statt Komma vor den Nachkommastellen).",
    "{} is outside {} to {}": "{} liegt nicht zwischen {} und {}",
    "{} is outside {} to {} hours": "{} liegt nicht zwischen {} und {} Stunden",
    "Give {} within that range.": "Gib {} in diesem Bereich an.",
    "{} is no whole number": "{} ist keine ganze Zahl",
    "Write it without decimals.": "Schreib sie ohne Nachkommastellen.",
    "{} is neither true nor false": "{} ist weder true noch false",
    "Write true or false, without quotes.": "Schreib true oder false, ohne Anführungszeichen.",
    "Write hours and minutes, as in \"29:00\".": "Schreib Stunden und Minuten, wie \"29:00\".",
    "{} is no list of texts": "{} ist keine Liste von Texten",
    "Write {} = [\"...\", \"...\"].": "Schreib {} = [\"...\", \"...\"].",
    "Write [{}] on its own line, or {} = { ... }.": "Schreib [{}] in eine eigene Zeile, oder {} = { ... }.",
    "'{}' is no list of tables": "‚{}‘ ist keine Liste von Tabellen",
    "Begin each one with [[{}]] on its own line.": "Beginn jede mit [[{}]] in einer eigenen Zeile.",
    "{} {} are too many": "{} {} sind zu viele",
    "Keep them to {}.": "Bleib bei {}.",
    "the time is out of range": "die Zeit liegt außerhalb des Möglichen",
    "the key '{}' is not known": "den Schlüssel ‚{}‘ gibt es nicht",
    "Did you mean '{}'?": "Meintest du ‚{}‘?",
    "Known here: {}.": "Bekannt ist hier: {}.",
    "Known here: {}. `stilepost keys {}` says what each means.":
        "Bekannt ist hier: {}. `stilepost keys {}` sagt, was jeder bedeutet.",
    "Did you mean '{}'? `stilepost keys {}` says what each means.":
        "Meintest du ‚{}‘? `stilepost keys {}` sagt, was jeder bedeutet.",
    "`stilepost keys {}` says what each means.": "`stilepost keys {}` sagt, was jeder bedeutet.",
    "Write one of: {}.": "Schreib eines von: {}.",
    "Use one of: {}.": "Nimm eines von: {}.",
    "'{}' is not known here": "‚{}‘ ist hier nicht bekannt",
    "{} is no table": "{} ist keine Tabelle",
    "{} (also on line {})": "{} (auch in Zeile {})",
    "{} (also on lines {})": "{} (auch in den Zeilen {})",
    # -- times
    "'{}' is no length of time": "‚{}‘ ist keine Dauer",
    "Write hours and minutes, as in \"29:00\" or \"6:30\".": "Schreib Stunden und Minuten, wie \"29:00\" oder \"6:30\".",
    "'{}' is no pace": "‚{}‘ ist kein Tempo",
    "Write minutes and seconds per km, as in \"10:50\", or per mile, as in \"14:00/mile\".":
        "Schreib Minuten und Sekunden je km, wie \"10:50\", oder je Meile, wie \"14:00/mile\".",
    "'{}' is no time of day": "‚{}‘ ist keine Uhrzeit",
    "{} is no time of day": "{} ist keine Uhrzeit",
    "Write {} = \"22:00\".": "Schreib {} = \"22:00\".",
    "Write hours and minutes, as in \"09:30\" or \"21:05\".": "Schreib Stunden und Minuten, wie \"09:30\" oder \"21:05\".",
    "Write \"11:30\", \"Sun 11:30\" or a date and time such as 2027-06-20T11:30.":
        "Schreib \"11:30\", \"Sun 11:30\" oder Tag und Zeit wie 2027-06-20T11:30.",
    "'{}' is no moment": "‚{}‘ ist kein Zeitpunkt",
    "{} does not exist in {}: the clocks go forward over it":
        "{} gibt es in {} nicht: die Uhren werden darüber hinweg vorgestellt",
    "Take a time before or after the hour that is left out.":
        "Nimm eine Zeit vor oder nach der Stunde, die ausfällt.",
    "{} comes twice in {} as the clocks go back; the first is taken":
        "{} gibt es in {} zweimal, weil die Uhren zurückgestellt werden; genommen wird das erste Mal",
    "If the second is meant, write {} = {}.": "Ist das zweite gemeint, schreib {} = {}.",
    "Write {} = {}, without quotes.": "Schreib {} = {}, ohne Anführungszeichen.",
    "Write date and time without quotes, as in {} = {}.":
        "Schreib Tag und Zeit ohne Anführungszeichen, wie {} = {}.",
    "Add the time of day: {} = {}T05:00 is five in the morning.":
        "Gib die Uhrzeit dazu: {} = {}T05:00 ist fünf Uhr morgens.",
    "{} is no date and time": "{} ist kein Tag mit Uhrzeit",
    "the year {} can't be right": "das Jahr {} kann nicht stimmen",
    "Check the year.": "Prüf das Jahr.",
    # -- the file as such
    "the file has {} characters": "die Datei hat {} Zeichen",
    "An event file has at most {}: is this the route?": "Eine Renndatei hat höchstens {}: ist das die Strecke?",
    "brackets are nested too deep": "die Klammern sind zu tief geschachtelt",
    "a value is impossible: {}": "ein Wert ist unmöglich: {}",
    "Compare with the example file.": "Vergleich mit der Beispieldatei.",
    "Compare the line with the example file: quotes, brackets, commas.":
        "Vergleich die Zeile mit der Beispieldatei: Anführungszeichen, Klammern, Kommas.",
    "the telephone number {} stands without quotes": "die Telefonnummer {} steht ohne Anführungszeichen",
    "Put it in quotes, with its country code, as in {} = \"{}\".":
        "Setz sie mit Ländervorwahl in Anführungszeichen, wie {} = \"{}\".",
    "the date {} is written in another way than this file has it":
        "das Datum {} ist anders geschrieben, als diese Datei es hat",
    "Write {} = {}.": "Schreib {} = {}.",
    "{} is no day or time that there is": "{} gibt es als Tag oder Uhrzeit nicht",
    "Check day, hour and minute: {} = 2027-06-19T05:00.": "Prüf Tag, Stunde und Minute: {} = 2027-06-19T05:00.",
    "this line can't be read as TOML ({}): {}": "diese Zeile ist als TOML nicht lesbar ({}): {}",
    "Use straight quotes, \" and \", not curly ones.": "Nimm gerade Anführungszeichen, \" und \", keine geschwungenen.",
    "This key or table is there already: keep one, or use [[...]] for a list of tables.":
        "Diesen Schlüssel oder diese Tabelle gibt es schon: behalte eines, oder nimm [[...]] für eine Liste von Tabellen.",
    "Write decimals with a point: 21.3.": "Schreib Nachkommastellen mit Punkt: 21.3.",
    "Put times and lengths in quotes: \"29:00\".": "Setz Zeiten und Dauern in Anführungszeichen: \"29:00\".",
    "Put words in quotes: name = \"Skelter Mill\". true and false stand without.":
        "Setz Wörter in Anführungszeichen: name = \"Skelter Mill\". true und false stehen ohne.",
    "A quote is missing.": "Ein Anführungszeichen fehlt.",
    "Each line is key = value, a [heading], or a comment after \"#\".":
        "Jede Zeile ist Schlüssel = Wert, eine [Überschrift] oder eine Bemerkung nach \"#\".",
    "there is no [event] table": "es gibt keine Tabelle [event]",
    "Begin the file with [event], name, starts, time_zone.": "Beginn die Datei mit [event], name, starts, time_zone.",
    "Give the race a name, as in name = \"The Long Stile Hundred\".":
        "Gib dem Rennen einen Namen, wie name = \"The Long Stile Hundred\".",
    "no emergency number is given, 112 is used": "es ist keine Notrufnummer angegeben, 112 wird genommen",
    "Write emergency_number = \"112\", or what holds where the race is.":
        "Schreib emergency_number = \"112\", oder was am Ort des Rennens gilt.",
    "Say where the race is: time_zone = \"Europe/London\".": "Sag, wo das Rennen ist: time_zone = \"Europe/London\".",
    "Say when: starts = 2027-06-19T05:00 (local time).": "Sag, wann: starts = 2027-06-19T05:00 (Ortszeit).",
    "nobody knows how to reach race control": "niemand weiß, wie die Rennleitung zu erreichen ist",
    "there is no race control": "es gibt keine Rennleitung",
    "Add [race_control] with name and phone.": "Ergänz [race_control] mit name und phone.",
    "[{}] needs a telephone number.": "[{}] braucht eine Telefonnummer.",
    "Give phone.": "Gib phone an.",
    "{} is not among the [[people]]: nothing can be sent to her":
        "{} steht nicht unter [[people]]: ihr kann nichts geschickt werden",
    "Add [[people]] with name = \"{}\" and her phone.": "Ergänz [[people]] mit name = \"{}\" und ihrem phone.",
    "Add [[people]] with name = \"{}\" and her phone; if she is {}, write person = \"{}\" here.":
        "Ergänz [[people]] mit name = \"{}\" und ihrem phone; ist sie {}, schreib hier person = \"{}\".",
    # -- points
    "the id '{}' can't be used": "die id ‚{}‘ geht nicht",
    "Use small letters, digits and hyphens, such as '{}'.":
        "Nimm kleine Buchstaben, Ziffern und Bindestriche, wie ‚{}‘.",
    "Name the GPX file that stands beside this one: route = \"route.gpx\".":
        "Nenn die GPX-Datei neben dieser: route = \"route.gpx\".",
    "[event] names a route and so do the [[courses]]": "[event] nennt eine Strecke und die [[courses]] auch",
    "Keep only the [[courses]].": "Behalte nur die [[courses]].",
    "there is no course '{}'": "es gibt keine Strecke ‚{}‘",
    "Known: {}.": "Bekannt: {}.",
    "There are several courses: say which ({}).": "Es gibt mehrere Strecken: sag, welche ({}).",
    "Give the point a name, as in name = \"Skelter Mill\".": "Gib dem Punkt einen Namen, wie name = \"Skelter Mill\".",
    "Give its distance, km = 21.3, or a waypoint of the route, waypoint = \"Mill\".":
        "Gib die Entfernung an, km = 21.3, oder einen Wegpunkt der Strecke, waypoint = \"Mill\".",
    "crew may come here, but nothing says where to park": "hierher darf die Crew, aber nichts sagt, wo sie parkt",
    "Add crew = { parking = \"...\", walk_in_minutes = 5 }.": "Ergänz crew = { parking = \"...\", walk_in_minutes = 5 }.",
    "Say when: cut_off = { when = \"out\", clock = \"Sun 11:30\" }.":
        "Sag, wann: cut_off = { when = \"out\", clock = \"Sun 11:30\" }.",
    "the next stage starts before the race": "die nächste Etappe startet vor dem Rennen",
    "Give the weekday, as in \"Sun 07:00\".": "Gib den Wochentag an, wie \"Sun 07:00\".",
    "a stage ends here, and she stays until the next one": "hier endet eine Etappe, und sie bleibt bis zur nächsten",
    "Leave stop_minutes out.": "Lass stop_minutes weg.",
    "there are cut_off and cut_offs": "es gibt cut_off und cut_offs",
    "Put them all into cut_offs.": "Schreib alle in cut_offs.",
    "two cut-offs for the same moment": "zwei Zeitlimits für denselben Moment",
    "Keep one for \"in\" and one for \"out\".": "Behalte eines für \"in\" und eines für \"out\".",
    "Say whether she must be in or out by then: when = \"in\" or when = \"out\".":
        "Sag, ob sie bis dann an oder ab sein muss: when = \"in\" oder when = \"out\".",
    "a cut-off has clock and elapsed": "ein Zeitlimit hat clock und elapsed",
    "a cut-off has no time": "ein Zeitlimit hat keine Zeit",
    "Give one: clock = \"Sun 11:30\" (time of day) or elapsed = \"6:30\" (since her start).":
        "Gib eines an: clock = \"Sun 11:30\" (Uhrzeit) oder elapsed = \"6:30\" (seit ihrem Start).",
    "it closes before it opens": "es schließt, bevor es öffnet",
    "Check the two times, with weekday.": "Prüf beide Zeiten, mit Wochentag.",
    "lat and lon go together": "lat und lon gehören zusammen",
    "Give both or none.": "Gib beide an oder keines.",
    "Say who reports: by = \"volunteer\" (or \"crew\", \"timing mat\", \"runner\", \"tracker\", \"nobody\").":
        "Sag, wer meldet: by = \"volunteer\" (oder \"crew\", \"timing mat\", \"runner\", \"tracker\", \"nobody\").",
    "a chance of 0 is nobody": "eine chance von 0 ist niemand",
    "'chance' is missing": "‚chance‘ fehlt",
    "Write how surely she is reported, above 0 up to 1, as in chance = 0.9.":
        "Schreib, wie sicher sie gemeldet wird, über 0 bis 1, wie chance = 0.9.",
    "Say where it begins: from_km = 60.": "Sag, wo er beginnt: from_km = 60.",
    "Say where it ends: to_km = 78.": "Sag, wo er endet: to_km = 78.",
    "the stretch ends at km {}, before it begins": "der Abschnitt endet bei km {}, bevor er beginnt",
    "Check from_km and to_km.": "Prüf from_km und to_km.",
    # -- points together
    "the id '{}' is used twice in {} (first on line {})": "die id ‚{}‘ steht zweimal in {} (zuerst in Zeile {})",
    "Give this one its own: id = \"{}-2\".": "Gib diesem eine eigene: id = \"{}-2\".",
    "no point is the start": "kein Punkt ist der Start",
    "no point is the finish": "kein Punkt ist das Ziel",
    "Give the first one kinds = [\"{}\"].": "Gib dem ersten kinds = [\"{}\"].",
    "Give the last one kinds = [\"{}\"].": "Gib dem letzten kinds = [\"{}\"].",
    "'{}' is a second start": "‚{}‘ ist ein zweiter Start",
    "'{}' is a second finish": "‚{}‘ ist ein zweites Ziel",
    "A place passed twice is two points, only one of them the end.":
        "Ein Ort, an dem man zweimal vorbeikommt, ist zwei Punkte, nur einer davon das Ende.",
    "the start is not the first point": "der Start ist nicht der erste Punkt",
    "the finish is not the last point": "das Ziel ist nicht der letzte Punkt",
    "List the points in running order.": "Ordne die Punkte in Laufrichtung.",
    "a course needs two points at least": "eine Strecke braucht mindestens zwei Punkte",
    "Add [[points]].": "Ergänz [[points]].",
    "'{}' is also a name of '{}' (line {})": "‚{}‘ ist auch ein Name von ‚{}‘ (Zeile {})",
    "People must be able to tell the two: call them outward and homeward, or first and second.":
        "Man muss die beiden auseinanderhalten können: nenn sie hin und zurück, oder erstes und zweites.",
    "'{}' and '{}' are easily mixed up": "‚{}‘ und ‚{}‘ verwechselt man leicht",
    "Choose names that differ more.": "Wähl Namen, die sich mehr unterscheiden.",
    "crew are to report from '{}', where they have no access":
        "die Crew soll von ‚{}‘ melden, wo sie keinen Zugang hat",
    "Add crew = { ... } or another reporter.": "Ergänz crew = { ... } oder jemand anderen, der meldet.",
    "nobody reports from any point, so silence would never raise an alarm":
        "von keinem Punkt meldet jemand, also löste Stille nie einen Alarm aus",
    "Say who reports: reports = [ { by = \"volunteer\", chance = 0.9 } ].":
        "Sag, wer meldet: reports = [ { by = \"volunteer\", chance = 0.9 } ].",
    "the cut-off at '{}' is before the start": "das Zeitlimit bei ‚{}‘ liegt vor dem Start",
    "Check day and time.": "Prüf Tag und Zeit.",
    "the cut-off at '{}' is after the time limit": "das Zeitlimit bei ‚{}‘ liegt nach dem des Rennens",
    "Check it, and limit in [event].": "Prüf es, und limit in [event].",
    "at '{}' she must be out before she must be in": "bei ‚{}‘ muss sie weg sein, bevor sie da sein muss",
    "Exchange the two times.": "Vertausch die beiden Zeiten.",
    "the cut-off at '{}' is earlier than the one before, at '{}'":
        "das Zeitlimit bei ‚{}‘ ist früher als das davor, bei ‚{}‘",
    "Check both, and the order of the points.": "Prüf beide, und die Reihenfolge der Punkte.",
    "no stage ends at the start, and none follows the finish": "am Start endet keine Etappe, und nach dem Ziel folgt keine",
    "Give next_stage to the points where a night lies between.":
        "Gib next_stage den Punkten, an denen eine Nacht dazwischen liegt.",
    "the stage after '{}' starts before the one before it": "die Etappe nach ‚{}‘ startet vor der davor",
    "Give each stage its own day, in running order.": "Gib jeder Etappe ihren Tag, in Laufrichtung.",
    "the cut-off at '{}' is before the stage that leads there starts":
        "das Zeitlimit bei ‚{}‘ liegt vor dem Start der Etappe, die dorthin führt",
    "Check day and time, and next_stage of the point before.":
        "Prüf Tag und Zeit, und next_stage des Punkts davor.",
    "nobody is out of '{}' by the cut-off there: the next stage starts after it":
        "bis zum Zeitlimit bei ‚{}‘ ist dort niemand weiter: die nächste Etappe startet erst danach",
    'Write when = "in", or a time not before next_stage.':
        'Schreib when = "in", oder eine Zeit nicht vor next_stage.',
    "the stage after '{}' starts before the cut-off there": "die Etappe nach ‚{}‘ startet vor dem Zeitlimit dort",
    "Check day and time, and those of the cut-off.": "Prüf Tag und Zeit, auch die des Zeitlimits.",
    "crew access at '{}' closes before the start": "der Zugang für die Crew bei ‚{}‘ schließt vor dem Start",
    "Give the weekday, as in \"Sun 14:00\".": "Gib den Wochentag an, wie \"Sun 14:00\".",
    "crew access at '{}' opens after the race is over": "der Zugang für die Crew bei ‚{}‘ öffnet nach dem Ende des Rennens",
    "there is no runner": "es gibt keine Läuferin",
    "Add [[runners]] with name and target.": "Ergänz [[runners]] mit name und target.",
    "{} '{}' is also that of runner '{}'": "{} ‚{}‘ hat auch die Läuferin ‚{}‘",
    "Reports could not be told apart: make them differ.": "Meldungen wären nicht auseinanderzuhalten: mach sie verschieden.",
    "Add [[people]] with id = \"{}\".": "Ergänz [[people]] mit id = \"{}\".",
    "there is no person '{}' in [[people]]": "es gibt keine Person ‚{}‘ in [[people]]",
    "{} starts more than a day before the event, or weeks after":
        "{} startet über einen Tag vor dem Rennen, oder Wochen danach",
    "Check her start and that of the event.": "Prüf ihren Start und den des Rennens.",
    "there is no point '{}'": "es gibt keinen Punkt ‚{}‘",
    "Points: {}.": "Punkte: {}.",
    "personal data would be blanked before the race is over": "persönliche Daten würden vor dem Ende des Rennens gelöscht",
    "Give a day after the race.": "Gib einen Tag nach dem Rennen an.",
    "'{}' at km {} stands after '{}' at km {}": "‚{}‘ bei km {} steht nach ‚{}‘ bei km {}",
    "List the points in running order, each farther on.": "Ordne die Punkte in Laufrichtung, jeden weiter als den davor.",
    "the stretch ends at km {}, the finish is at km {}": "der Abschnitt endet bei km {}, das Ziel ist bei km {}",
    "Check the km.": "Prüf die km.",
    "{} = {} lies beyond the course, the finish is at km {}": "{} = {} liegt hinter der Strecke, das Ziel ist bei km {}",
    "{} paces from km {}, but the rules allow pacers from km {}":
        "{} begleitet ab km {}, die Regeln erlauben Begleitung erst ab km {}",
    "Choose a later point for pace_from.": "Wähl für pace_from einen späteren Punkt.",
    "pace_to comes before pace_from": "pace_to kommt vor pace_from",
    "Exchange the two, or correct one.": "Vertausch die beiden, oder berichtige eines.",
    "a pacer joins at km {}, but the rules allow pacers from km {}":
        "eine Begleitung steigt bei km {} ein, die Regeln erlauben sie erst ab km {}",
    "Let the pacer join at a later meeting.": "Lass die Begleitung bei einem späteren Treffen einsteigen.",
    "{} pacers would be with her, the rules allow {}": "{} Begleitungen wären bei ihr, die Regeln erlauben {}",
    "Say where the one before leaves: pacer_leaves.": "Sag, wo die davor aussteigt: pacer_leaves.",
    # -- people
    "Give the runner a name, as in name = \"Maren\".": "Gib der Läuferin einen Namen, wie name = \"Maren\".",
    "Check the id.": "Prüf die id.",
    "Give one: target = { finish = \"29:00\" }, { pace_all_in = \"10:50\" } or { easy_pace = \"6:30\", margin = \"1:30\" }; "
    "or none, with past_race or own_runs instead.":
        "Gib eines an: target = { finish = \"29:00\" }, { pace_all_in = \"10:50\" } oder { easy_pace = \"6:30\", margin = "
        "\"1:30\" }; oder keines, dafür past_race oder own_runs.",
    "Add its start under [waves]; known: {}.": "Ergänz ihren Start unter [waves]; bekannt: {}.",
    "there is no wave '{}'": "es gibt keine Startwelle ‚{}‘",
    "{} is outside 2:00 to 60:00 per km": "{} liegt nicht zwischen 2:00 und 60:00 je km",
    "Write minutes and seconds per km.": "Schreib Minuten und Sekunden je km.",
    "several forms of target are given": "es sind mehrere Formen von target angegeben",
    "the target is empty": "target ist leer",
    "easy_pace and margin go together": "easy_pace und margin gehören zusammen",
    "Say from which point on: from = \"start\".": "Sag, ab welchem Punkt: from = \"start\".",
    "'{}' is no telephone number": "‚{}‘ ist keine Telefonnummer",
    "Write it with country code: \"+44 1632 960001\".": "Schreib sie mit Landesvorwahl: \"+44 1632 960001\".",
    "'{}' has no country code": "‚{}‘ hat keine Landesvorwahl",
    "Write it as from abroad: \"+44 1632 960001\".": "Schreib sie wie aus dem Ausland: \"+44 1632 960001\".",
    "Give the person a name, as in name = \"Ana\".": "Gib der Person einen Namen, wie name = \"Ana\".",
    "quiet hours need both ends": "Ruhezeiten brauchen Anfang und Ende",
    "Write quiet = { from = \"22:00\", to = \"06:00\" }.": "Schreib quiet = { from = \"22:00\", to = \"06:00\" }.",
    "Write area and city, as in \"Europe/London\".": "Schreib Gebiet und Stadt, wie \"Europe/London\".",
    "'{}' is no time zone": "‚{}‘ ist keine Zeitzone",
    "'{}' is no e-mail address": "‚{}‘ ist keine E-Mail-Adresse",
    "Check the @ and what follows it.": "Prüf das @ und was danach kommt.",
    "'{}' is no web address": "‚{}‘ ist keine Webadresse",
    "Write it whole, beginning with https://.": "Schreib sie ganz, mit https:// am Anfang.",
    "there is no channel '{}'": "es gibt keinen Kanal ‚{}‘",
    "a channel is named twice": "ein Kanal ist zweimal genannt",
    "Name each one once, in the order to try.": "Nenn jeden einmal, in der Reihenfolge des Versuchens.",
    "the channel '{}' has no address": "der Kanal ‚{}‘ hat keine Adresse",
    "Add {} = ... or take it out of channels.": "Ergänz {} = ... oder nimm ihn aus channels.",
    "Say what this person is: {}.": "Sag, was diese Person ist: {}.",
    "Say where the drive begins: from = \"start\".": "Sag, wo die Fahrt beginnt: from = \"start\".",
    "Say where the drive ends: to = \"mill\".": "Sag, wo die Fahrt endet: to = \"mill\".",
    "Say where: point = \"mill\".": "Sag, wo: point = \"mill\".",
    "There are several runners: say whom they meet.": "Es gibt mehrere Läuferinnen: sag, wen sie treffen.",
    "Name the trouble: trouble = \"hot spot on a foot\".": "Nenn die Not: trouble = \"hot spot on a foot\".",
    "kit is no list": "kit ist keine Liste",
    "Write kit = [\"poles\", { name = \"torch\", weight = \"safety\" }].":
        "Schreib kit = [\"poles\", { name = \"torch\", weight = \"safety\" }].",
    "Name the item: { name = \"head torch\" }.": "Nenn das Ding: { name = \"head torch\" }.",
    "no people are named: a plan can be made, but nobody is told anything":
        "es sind keine Leute genannt: ein Plan geht, aber niemand erfährt etwas",
    "Add [[people]] with their parts, one with ladder = 1.": "Ergänz [[people]] mit ihren parts, eine mit ladder = 1.",
    "a runner can't answer an alarm about herself": "eine Läuferin kann keinen Alarm über sich selbst beantworten",
    "Put the ladder on another person.": "Gib ladder einer anderen Person.",
    "the part '{}' is given twice": "der Part ‚{}‘ steht zweimal da",
    "Keep one of the two.": "Behalte einen von beiden.",
    "an alarm about {} would reach nobody: the ladder is empty":
        "ein Alarm über {} erreichte niemanden: die Leiter ist leer",
    "Give somebody's part ladder = 1.": "Gib jemandem im Part ladder = 1.",
    "Give one person the part { kind = \"safety contact\", ladder = 1 }.":
        "Gib einer Person den Part { kind = \"safety contact\", ladder = 1 }.",
    "{} has no safety contact": "{} hat keinen Sicherheitskontakt",
    "step {} of the ladder for {} is also that of '{}'": "Stufe {} der Leiter für {} hat auch ‚{}‘",
    "Both are told at once; number them if not meant.":
        "Beide erfahren es zugleich; gib ihnen Nummern, wenn das nicht gemeint ist.",
    "nobody is to call race control": "niemand soll die Rennleitung anrufen",
    "Give exactly one person's part calls_race_control = true.": "Gib genau einer Person im Part calls_race_control = true.",
    "'{}' and '{}' are both to call race control": "‚{}‘ und ‚{}‘ sollen beide die Rennleitung anrufen",
    "Keep one person.": "Behalte eine Person.",
    "{} is to call race control, but has no telephone number":
        "{} soll die Rennleitung anrufen, hat aber keine Telefonnummer",
    "Add phone.": "Ergänz phone.",
    "{} is on the ladder, but there is no way to reach them": "{} steht auf der Leiter, ist aber nicht zu erreichen",
    "Add phone, email or channels.": "Ergänz phone, email oder channels.",
    "{} is on the ladder, but others can't telephone them": "{} steht auf der Leiter, aber andere können dort nicht anrufen",
    "the car '{}' has the name of '{}'": "das Auto ‚{}‘ heißt wie ‚{}‘",
    "the person '{}' has the name of '{}'": "die Person ‚{}‘ heißt wie ‚{}‘",
    "the place '{}' has the name of '{}'": "der Ort ‚{}‘ heißt wie ‚{}‘",
    "the {} '{}' has the name of '{}'": "‚{1}‘ ({0}) heißt wie ‚{2}‘",
    "People could mix them up: make them differ.": "Man könnte sie verwechseln: mach sie verschieden.",
    # -- drives, cars, meetings
    "the drive goes from '{}' to itself": "die Fahrt geht von ‚{}‘ zu sich selbst",
    "Correct from or to.": "Berichtige from oder to.",
    "the drive from '{}' to '{}' is given twice": "die Fahrt von ‚{}‘ nach ‚{}‘ steht zweimal da",
    "Keep one.": "Behalte eine.",
    "how long the drive from '{}' to '{}' takes is not said":
        "wie lange die Fahrt von ‚{}‘ nach ‚{}‘ dauert, steht nicht da",
    "Add minutes = 35; without it there is no leave-by.": "Ergänz minutes = 35; sonst gibt es keine Abfahrtszeit.",
    "nobody has confirmed the drive from '{}' to '{}'": "niemand hat die Fahrt von ‚{}‘ nach ‚{}‘ bestätigt",
    "Add confirmed_by = \"...\" once a person has checked it; until then there is no leave-by.":
        "Ergänz confirmed_by = \"...\", sobald jemand sie geprüft hat; bis dahin gibt es keine Abfahrtszeit.",
    "'{}' is the name of the point '{}'": "‚{}‘ ist der Name des Punkts ‚{}‘",
    "Write its id: '{}'.": "Schreib seine id: ‚{}‘.",
    "'{}' is no point or place, but much like '{}'": "‚{}‘ ist kein Punkt oder Ort, aber fast wie ‚{}‘",
    "no drive leads from or to '{}'": "keine Fahrt führt von oder nach ‚{}‘",
    "Add it under [[drives]], or write the id of a point or place.":
        "Ergänz sie unter [[drives]], oder schreib die id eines Punkts oder Orts.",
    "'{}' is met twice at '{}'": "‚{}‘ wird zweimal bei ‚{}‘ getroffen",
    "Put both into one meeting.": "Mach ein Treffen daraus.",
    "crew have no access to '{}'": "die Crew hat keinen Zugang zu ‚{}‘",
    "crew have no access to '{}', and the rules allow help at crew points only":
        "die Crew hat keinen Zugang zu ‚{}‘, und die Regeln erlauben Hilfe nur an Crew-Punkten",
    "Choose another point, or add crew = { ... } to this one.": "Wähl einen anderen Punkt, oder ergänz hier crew = { ... }.",
    "{} people are to meet her at '{}', where {} are allowed": "{} Leute sollen sie bei ‚{}‘ treffen, wo {} erlaubt sind",
    "Name fewer people.": "Nenn weniger Leute.",
    "'{}' is to meet her, but has no part as crew or pacer":
        "‚{}‘ soll sie treffen, hat aber keinen Part als Crew oder Begleitung",
    "Add { kind = \"crew\" } to their parts.": "Ergänz { kind = \"crew\" } in den parts.",
    "{} people are to meet her, the rules allow {}": "{} Leute sollen sie treffen, die Regeln erlauben {}",
    "nobody is named to go to this meeting": "niemand ist genannt, der zu diesem Treffen fährt",
    "Add crew = [\"...\"].": "Ergänz crew = [\"...\"].",
    "'{}' has no part as pacer": "‚{}‘ hat keinen Part als Begleitung",
    "Add { kind = \"pacer\" } to their parts.": "Ergänz { kind = \"pacer\" } in den parts.",
    "'{}' travels in '{}', which does not go to this meeting": "‚{}‘ liegt in ‚{}‘, das nicht zu diesem Treffen fährt",
    "Put it into a car that goes there.": "Pack es in ein Auto, das hinfährt.",
    "{} people go in '{}', which seats {}": "{} Leute fahren in ‚{}‘, das {} Plätze hat",
    "Check the seats, or name a second car.": "Prüf die Plätze, oder nenn ein zweites Auto.",
    "{} cars are used for {} ({}), the rules allow {}": "{} Autos werden für {} gebraucht ({}), die Regeln erlauben {}",
    "Use fewer cars.": "Nimm weniger Autos.",
    "no point asks for the permit '{}'": "kein Punkt verlangt die Erlaubnis ‚{}‘",
    "Permits asked for: {}.": "Verlangt werden: {}.",
    "Add permit = \"...\" to crew = { ... } of a point.": "Ergänz permit = \"...\" in crew = { ... } eines Punkts.",
    "crew need the permit '{}' at '{}', and nobody says who has it":
        "die Crew braucht die Erlaubnis ‚{}‘ bei ‚{}‘, und niemand sagt, wer sie hat",
    "Ask the race, then write permits = [\"{}\"] at the car, or at the part of who holds it.":
        "Frag beim Rennen, dann schreib permits = [\"{}\"] beim Auto, oder im Part dessen, der sie hat.",
    "where '{}' comes from is not said, so there is no leave-by":
        "woher ‚{}‘ kommt, steht nicht da, also gibt es keine Abfahrtszeit",
    "Add from = ... here or starts_at = ... to the car.": "Ergänz hier from = ... oder beim Auto starts_at = ...",
    "there is no drive from '{}' to '{}', so '{}' has no leave-by":
        "es gibt keine Fahrt von ‚{}‘ nach ‚{}‘, also hat ‚{}‘ keine Abfahrtszeit",
    "Add it under [[drives]].": "Ergänz sie unter [[drives]].",
    # -- movements, shares
    "There is no {} in this file yet.": "In dieser Datei gibt es noch nichts der Art ‚{}‘.",
    "there is no person '{}'": "es gibt keine Person ‚{}‘",
    "there is no car '{}'": "es gibt kein Auto ‚{}‘",
    "there is no place '{}'": "es gibt keinen Ort ‚{}‘",
    "there is no {} '{}'": "es gibt kein {} ‚{}‘",
    "the place '{}' has the id of a point": "der Ort ‚{}‘ hat die id eines Punkts",
    "Points are places already: leave this one out.": "Punkte sind schon Orte: lass diesen weg.",
    "'{}' has lat and lon, and so has its place '{}'": "‚{}‘ hat lat und lon, und sein Ort ‚{}‘ auch",
    "Keep them at the place only.": "Behalte sie nur beim Ort.",
    "{} is given beside minutes, which are the whole drive": "{} steht neben minutes, die schon die ganze Fahrt sind",
    "Count it into minutes and leave {} out.": "Rechne es in minutes ein und lass {} weg.",
    "{} minutes for {} km in a straight line is faster than any car may go":
        "{} Minuten für {} km Luftlinie ist schneller, als ein Auto fahren darf",
    "Check the minutes, and lat and lon of both places.": "Prüf die Minuten, und lat und lon beider Orte.",
    "the rules allow crew only once the race is over": "die Regeln erlauben Crew erst, wenn das Rennen vorbei ist",
    "'{}' closes before the rules allow crew (crew_not_before)":
        "‚{}‘ schließt, bevor die Regeln Crew erlauben (crew_not_before)",
    "Leave this meeting out.": "Lass dieses Treffen weg.",
    "'{}' joins her and leaves her at the same meeting": "‚{}‘ steigt beim selben Treffen ein und aus",
    "Let one of the two be at another meeting.": "Leg eines von beiden auf ein anderes Treffen.",
    "'{}' leaves her here, but joins her at no meeting before": "‚{}‘ steigt hier aus, aber bei keinem Treffen davor ein",
    "Add pacer_joins to an earlier meeting.": "Ergänz pacer_joins bei einem früheren Treffen.",
    "'{}' is to be with the crew, but is on foot with her then, as pacer":
        "‚{}‘ soll bei der Crew sein, ist dann aber als Begleitung zu Fuß bei ihr",
    "Take the name out, or add pacer_leaves before.": "Nimm den Namen heraus, oder ergänz davor pacer_leaves.",
    "'{}' joins her here, but is with her already": "‚{}‘ steigt hier ein, ist aber schon bei ihr",
    "Add pacer_leaves to a meeting in between.": "Ergänz pacer_leaves bei einem Treffen dazwischen.",
    "'{}' joins her at '{}', but is said to pace only from '{}'":
        "‚{}‘ steigt bei ‚{}‘ ein, soll aber erst ab ‚{}‘ begleiten",
    "Make pace_from and the meeting agree.": "Bring pace_from und das Treffen in Einklang.",
    "'{}' is named twice": "‚{}‘ ist zweimal genannt",
    "{} can't be in the crew that meets her": "{} kann nicht in der Crew sein, die sie trifft",
    "Name somebody else.": "Nenn jemand anderen.",
    "the crew of '{}' come from '{}' itself": "die Crew von ‚{}‘ kommt von ‚{}‘ selbst",
    "Leave from out, or name where they come from.": "Lass from weg, oder nenn, woher sie kommt.",
    "nobody who goes in '{}' is said to drive": "von niemandem in ‚{}‘ steht da, dass er fährt",
    "Add drives = true to a part of one of them.": "Ergänz drives = true im Part von einem.",
    "'{}' would have been awake for over two days at the start": "‚{}‘ wäre beim Start über zwei Tage wach",
    "two sleeps of '{}' overlap": "zwei Schlafzeiten von ‚{}‘ überschneiden sich",
    "Join them into one.": "Mach eine daraus.",
    "the share from '{}' ends at '{}', which comes before": "der Anteil ab ‚{}‘ endet bei ‚{}‘, das davor kommt",
    "{} from '{}' to '{}'": "{} von ‚{}‘ bis ‚{}‘",
    "nobody runs": "niemand läuft",
    "two people run": "zwei laufen",
    "Let each share begin where the one before ends.": "Lass jeden Anteil beginnen, wo der davor endet.",
    "nobody runs from '{}' to '{}'": "niemand läuft von ‚{}‘ bis ‚{}‘",
    "Add a share up to the finish.": "Ergänz einen Anteil bis ins Ziel.",
    "'{}' is to be with the crew, but runs a share then": "‚{}‘ soll bei der Crew sein, läuft dann aber einen Anteil",
    "There are several runners: say whose race it is a share of.":
        "Es gibt mehrere Läuferinnen: sag, von wessen Rennen es ein Anteil ist.",
    "Write sleeps = [ { from = \"Sun 01:00\", to = \"Sun 03:00\" } ].":
        "Schreib sleeps = [ { from = \"Sun 01:00\", to = \"Sun 03:00\" } ].",
    "a sleep ends before it begins, or lasts over 16 hours":
        "ein Schlaf endet, bevor er beginnt, oder dauert über 16 Stunden",
    "Give both with weekday.": "Gib beide mit Wochentag an.",
    "Say who runs it: person = \"ana\".": "Sag, wer ihn läuft: person = \"ana\".",
    "Say where the share begins: from = \"start\".": "Sag, wo der Anteil beginnt: from = \"start\".",
    "Say where the share ends: to = \"mill\".": "Sag, wo der Anteil endet: to = \"mill\".",
    # -- pace, weather
    "Write past_race = { name = \"Fell 50\", km = 52, ascent_m = 1900, time = \"7:40\" }.":
        "Schreib past_race = { name = \"Fell 50\", km = 52, ascent_m = 1900, time = \"7:40\" }.",
    "Write [[weather]] with from = \"Sat 12:00\", to = \"Sat 18:00\", temperature_c = 27, humidity = 55; or ground = "
    "\"mud\" with from_km and to_km.":
        "Schreib [[weather]] mit from = \"Sat 12:00\", to = \"Sat 18:00\", temperature_c = 27, humidity = 55; oder ground = "
        "\"mud\" mit from_km und to_km.",
    "{} recordings are too many": "{} Aufzeichnungen sind zu viele",
    "Name the best {}.": "Nenn die besten {}.",
    "Name each recording once: it would count twice.": "Nenn jede Aufzeichnung einmal: sie zählte sonst doppelt.",
    "'{}' is not beside the event file": "‚{}‘ liegt nicht neben der Renndatei",
    "Copy the file next to the event file and write its name: '{}'.":
        "Kopier die Datei neben die Renndatei und schreib ihren Namen: ‚{}‘.",
    "Give the ascent in metres, 0 for a level race.": "Gib den Anstieg in Metern an, 0 für ein flaches Rennen.",
    "{} km in {} is {} km/h, no speed on foot": "{} km in {} sind {} km/h, keine Geschwindigkeit zu Fuß",
    "Write hours and minutes, as in \"7:40\"; look whether they were mixed up.":
        "Schreib Stunden und Minuten, wie \"7:40\"; sieh nach, ob sie vertauscht sind.",
    "the weather ends at km {}, before it begins": "das Wetter endet bei km {}, bevor es beginnt",
    "this weather says nothing": "dieses Wetter sagt nichts",
    "humidity without temperature_c says nothing": "humidity ohne temperature_c sagt nichts",
    "Add temperature_c.": "Ergänz temperature_c.",
    "the weather ends before it begins": "das Wetter endet, bevor es beginnt",
    "this weather is over days before the start": "dieses Wetter ist Tage vor dem Start vorbei",
    "Check the date.": "Prüf den Tag.",
}  # fmt: skip
