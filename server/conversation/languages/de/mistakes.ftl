# What the commands say of a file. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## What `stilepost check` says
mistake-error = Fehler
mistake-warning = Warnung
check-mistakes = { $count } Fehler zu berichtigen.
check-not-promised = { $count ->
    [one] Ein Treffen ist nicht versprochen
   *[other] { $count } Treffen sind nicht versprochen
 }: die Crew kommt vielleicht zu spät, oder eine Fahrt ist nicht bestätigt. `stilepost plan { $file }` sagt welche, warum und was hülfe.
check-right = { $file }: richtig. { $runners ->
    [one] Eine Läuferin
   *[other] { $runners } Läuferinnen
 }, { $points } Punkte, { $people } Leute, { $meetings } Treffen. `stilepost load { $file }` speichert es.
cli-error = Fehler: { $what }
cli-nothing-reported = von { $event } ist noch niemand gemeldet: danach gibt es nichts zu berichten
cli-log-whose = --runner: sag, wessen Protokoll es ist. Nimm eines von: { $known }.
cli-log-columns = der ersten Zeile fehlen die Spalten { $missing }. Schreib time,point,log; `stilepost log` ohne Datei druckt das Formular.
cli-log-time = Zeile { $line }, time: ‚{ $time }‘ ist kein Tag mit Uhrzeit. Schreib 2027-06-19 14:05, nach der Uhr des Rennens.
cli-log-ahead = Zeile { $line }, time: { $time } liegt noch vor uns. Sieh nach, ob Tag und Monat stimmen.
cli-log-point = Zeile { $line }, point: es gibt für sie keinen Punkt ‚{ $point }‘. Nimm einen von: { $known }.
cli-log-words = Zeile { $line }, log: nicht alles in ‚{ $words }‘ ist verständlich. Schreib jede Sache für sich, mit Strichpunkt dazwischen: ‚getrunken 500; gegessen halbe Banane; kein Ibuprofen; nicht gepinkelt; Füße gut; geschlafen 20 min‘. Lass den Rest weg.
cli-log-none = { $count ->
    [one] Nichts ist gespeichert: behebe das und lies die Datei noch einmal ein.
   *[other] Nichts ist gespeichert: behebe diese { $count } und lies die Datei noch einmal ein.
 }
cli-log-noted = { $count ->
    [one] Eine neue Zeile steht
   *[other] { $count } neue Zeilen stehen
 } im Protokoll; schon darin: { $before }.
cli-written = geschrieben: { $file }
cli-not-written = { $file }: lässt sich nicht schreiben ({ $why }). Nimm einen anderen Ort.
cli-no-runner = --runner: das Event hat niemanden mit der Id ‚{ $runner }‘. Es gibt: { $known }.
cli-breaks-rules = der Plan bricht { $count ->
    [one] eine Regel
   *[other] { $count } Regeln
 } des Rennens: siehe oben, NICHT ERLAUBT. Ändere die Datei und plane noch einmal.

## What `stilepost load` says
load-ask = Das speichern?
load-nothing-stored = nichts wurde gespeichert.
load-stored = { $event }: gespeichert als Version { $version }.
load-new = { $event }: ein neues Event, ‚{ $name }‘.
load-unreadable = Version { $version } kann dieses Stilepost nicht lesen:
load-no-change = { $event }: nichts ändert sich gegenüber Version { $version }.
change-added = { $thing }: neu
change-removed = { $thing }: entfällt
change-changed = { $thing }: { $field } war { $was ->
    [none] nicht angegeben
   *[other] { $was }
 }, wird { $now ->
    [none] nicht angegeben
   *[other] { $now }
 }
change-thing-event = Event
change-thing-course = Strecke
change-thing-runner = Läuferin
change-thing-person = Person
change-thing-car = Auto
change-thing-meeting = Treffen
change-thing-if-then-card = Wenn-dann-Karte
change-thing-place = Ort
change-thing-stretch = Stück
change-thing-drive = Fahrt
change-thing-part = Rolle
change-thing-relay-share = Staffelteil
change-thing-weather = Wetter
change-thing-point = Punkt
start-list-file = Startliste
start-list-more = und { $count } weitere
start-list-again = Behebe, was genannt ist, und schick die Liste noch einmal.
start-list-found = in der Liste: { $added } neu, { $changed } geändert, { $same } wie gespeichert.
start-list-not-listed = nicht in der Liste, bleiben: { $names }.
passages-file = Durchgänge
passages-kept = Durchgänge: { $added } neu, { $changed } geändert, { $same } schon bekannt, { $wrong } Zeilen nicht übernommen.

learn-no-json = { $file }: das ist nicht das JSON, das `stilepost afterwards` schreibt. Gib diese Datei an, oder die Kennung einer gespeicherten Veranstaltung.
learn-no-runner = --runner: in der nächsten Datei gibt es niemanden mit der Kennung ‚{ $runner }‘. Nimm eine von: { $known }.
learn-unusual = { $file }: ihre Tabellen stehen nicht jede unter einer eigenen Überschrift, darum lässt sich nichts hineinschreiben. Schreib [[runners]] und [[points]] als Überschriften.
learn-breaks = { $file }: mit dem Gelernten hält der Plan nicht mehr (siehe oben), darum wurde nichts geschrieben. Behebe, was genannt ist, und versuch es noch einmal.
learn-nothing = Nichts ändert sich: Die Datei sagt das alles schon, oder die Rennen sagen nicht mehr.
learn-was = Der Plan von { $runner }, wie er war:
learn-next = Der nächste Plan von { $runner }, mit dem Gelernten:
learn-shown = Noch ist nichts geschrieben. Mit --write kommt es in { $file }, Kommentare bleiben.
learn-not-finished = { $field }: kein Ziel gemeldet, darum ist daraus keine Zeit zu lernen.
learn-target-stays = { $field } bleibt, und der Plan ist dafür gemacht: Das Rennen sagt nur, wie wahrscheinlich es ist. Nimm das Ziel heraus, dann wird der Plan aus den Rennen gemacht.
learn-race = { $field }: { $was ->
    [none] neu: { $now }
   *[other] { $now } (bisher { $was })
}. Der Plan macht daraus eine Zeit für diese Strecke, mit ihrer Spanne.
learn-fade = { $field } = { $now }{ $was ->
    [none] {""}
   *[other] {" "}(bisher { $was })
}: wie sehr sie langsamer wird, 1 wie die meisten. Aus { $count ->
    [one] einem Rennen
   *[other] { $count } Rennen
} liegt es zwischen { $low } und { $high } (je 1 von 10 außerhalb); zu 1 hingezogen, soweit das nicht mehr sagen kann.
learn-fade-same = { $field } = { $was } bleibt: Das Rennen sagt { $low } bis { $high }.
learn-stop = { $field } = { $now } (bisher { $was }): ihre { $count } Stopps dauerten länger oder kürzer als geplant; wahrscheinlich { $low } bis { $high } min.
learn-stops-same = Ihre Stopps dauerten wie geplant (mal { $now }, { $low } bis { $high }, { $count } Stopps): stop_minutes bleiben.
learn-stops-shared = Ihre Stopps dauerten { $now }-mal so lang wie geplant ({ $low } bis { $high }, { $count } Stopps). stop_minutes gelten in dieser Datei für alle, darum bleiben sie: Ändere sie von Hand.
learn-carbohydrate = { $field } = { $now }{ $was ->
    [none] {""}
   *[other] {" "}(bisher { $was })
}: g Kohlenhydrate in der Stunde, laut Protokoll des Rennens; { $low } bis { $high } in den beiden Hälften, { $count } Einträge. Was niemand protokolliert hat, fehlt darin.
learn-carbohydrate-same = { $field } = { $was } bleibt: Das Protokoll sagt { $low } bis { $high } g in der Stunde in den beiden Hälften.
learn-fluid = Flüssigkeit: { $was } ml in der Stunde laut Protokoll ({ $low } bis { $high } in den beiden Hälften, { $count } Einträge). Nicht geschrieben: Plane Flaschen mit fluid_ml_per_h in { $field }; getrunken wird nach Durst.
