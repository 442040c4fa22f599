title = Stilepost
board = Tafel
exercise = ÜBUNG: hier wird geprobt, nichts davon ist passiert.
aid = Eine Hilfe für die Crew, kein Rettungsdienst. In Gefahr zuerst { $number } anrufen.
call = { $name } anrufen
emergency = Notruf { $number }
now = jetzt { $when }
you-are = Du bist { $name }, { $parts }
leave = In diesem Browser abmelden
last-known = Zuletzt bekannt
nothing-yet = Noch ist nichts gemeldet.
told-by = gemeldet von { $who }, { $ago }
estimate = Geschätzt, nicht gesehen
estimate-near = nahe { $likely } der Strecke
estimate-between = zwischen { $low } und { $high } der Strecke, wohl bei { $likely }
estimate-points = zwischen { $from } und { $to }
points = Punkte voraus: wohl um, und zwischen wann
reached = Erreichte Punkte
in-at = an { $when }
out-at = ab { $when }
through-at = durch { $when }
reported-none = erreicht; keine Zeit gemeldet
gets-there = Chance { $odds }, dass sie hinkommt
gets-there-you = Chance { $odds }, dass du hinkommst
own-clock = { $when } deine Uhr
bar-own = deine Uhr: { $times }
next-meeting = Nächstes Treffen
my-meeting = Dein nächstes Treffen
further-meetings = Andere Treffen
mine = deins
others = { $who }
leave-by = Losfahren bis
you-are-there = du bist da
leave-by-unknown = keine Abfahrtszeit: die Fahrt ist nicht bestätigt
be-there = Dort sein ab
until-heard = zur nächsten Nachricht von ihr
wait-until = Warten bis
have-ready = Bereithalten
food = Essen
if-missed = Wenn verpasst
parking = Parken
arrives = Ankunft
lost = Dieses Treffen geht nicht: { $why }
no-signal = Dort gibt es kein Netz.
cut-offs = Zeitlimits
cut-off-line = { $name }, { $edge } bis { $when }: Chance { $odds }, dass sie es schafft
cut-off-line-you = { $name }, { $edge } bis { $when }: Chance { $odds }, dass du es schaffst
stop-log = Stopp-Protokoll
log-rows = Eintrag für Eintrag
doubted = Noch nicht bestätigt, zählt nicht
doubted-line = { $what } { $when }, gemeldet von { $who }: { $why }
alarms = Alarm
alarm-line = { $kind }, ausgelöst { $when }{ $point ->
    [none] {""}
   *[other] , { $point }
}{ $words ->
    [none] {""}
   *[other] {": ‚"}{ $words }{"‘"}
}
alarm-held = { $who } hat geantwortet und hat ihn übernommen.{ $again ->
    [none] {""}
   *[other] { " " }Wieder nachsehen { $again }.
}
alarm-open = Geschickt an { $told }; noch hat niemand geantwortet.
alarm-unreached = NIEMAND IST ERREICHT. { $told } HAT NICHT GEANTWORTET. JETZT ANRUFEN.
alarm-nobody = NIEMAND IST ERREICHT. KEIN KANAL GEHT. JETZT ANRUFEN.
held = Die Läufer sind angehalten.
blind = { $what ->
    [none] unsere eigenen Kanäle
   *[other] { $what }
 }: AUSGEFALLEN seit { $when }. Dass von denen, die dort schreiben, nichts kommt, heißt seitdem nichts. Ruf sie an.
race-changes = Vom Rennen
people = Leute
people-at = in { $name } seit { $when }
people-bound = als Nächstes: { $name }, dort ab { $when }
unreachable = auf keinem Kanal zu erreichen
profile = Strecke: Höhe entlang des Wegs, Punkte, wo sie zuletzt bekannt war
chat = Chat
chat-hint = Fragen oder melden: „wo ist sie“, „da in Mühle vor 5 min“, „was bringe ich mit“
send = Senden
share-place = Meinen Standort teilen
asking-place = frage das Gerät, wo es ist
place-refused = Dieses Gerät sagt nicht, wo es ist.
place-shared = Meinen Standort geteilt.
photo = Foto
photo-unreadable = Diese Datei ist kein lesbares Bild. Wähl ein Foto (JPEG, PNG oder WebP).
not-sent = Nicht gesendet: keine Verbindung. Noch einmal versuchen.
stale = Keine Verbindung seit { $when }. Was hier steht, kann alt sein.
notices = Nachrichten an dich
join-title = Einer Crew beitreten
join-lead = Gib den Code deiner Einladung ein.
join-code = Code
join-look = Nachsehen
join-yes = Das bin ich
join-no = Nicht ich
join-wrong = Dieser Code geht nicht. Bitte die Person, die dich eingeladen hat, um einen neuen.
join-wait = Zu viele falsche Codes. Warte eine Viertelstunde.
stranger = Wer zu keinem Rennen gehört, sieht nichts. Nimm den Link deiner Einladung.
answer-title = Deine Antwort
answer-done = Du hast { $when } ‚{ $answer }‘ geantwortet. Hier ist nichts weiter nötig; um etwas anderes zu sagen, schreib in deinem Chat.
answer-over = Darauf ist keine Antwort mehr nötig.
answer-no-link = Dieser Link geht nicht: er ist zu alt oder nicht vollständig. Antworte in deinem Chat oder auf der Seite, oder ruf deine Crew an.
error-title = Das ging nicht
error-back = Zurück zur Tafel
part-runner = Läuferin
part-crew = Crew
part-pacer = Begleitläufer
part-safety-contact = Sicherheitskontakt
part-organiser = Veranstalter
part-volunteer = Helfer
part-supporter = Fan
kind-overdue = Überfällig
kind-asked-for-help = Um Hilfe gebeten
kind-sweep = Schlussläufer sind durch, sie nicht
edge-in = Ankunft
edge-out = Aufbruch
race-runners-held = Die Läufer sind angehalten{ $until ->
    [none] {""}
   *[other] { " " }bis { $until }
}{ $by ->
    [none] {""}
   *[other] {", sagt "}{ $by }
}
race-race-ended-early = Das Rennen ist vorzeitig beendet, { $at }{ $by ->
    [none] {""}
   *[other] {", sagt "}{ $by }
}{ $words ->
    [none] {""}
   *[other] {": ‚"}{ $words }{"‘"}
}
race-access-closed = Crew-Zugang geschlossen: { $point }{ $by ->
    [none] {""}
   *[other] {", sagt "}{ $by }
}
race-cut-off-in-moved = Zeitlimit für die Ankunft in { $point } ist jetzt { $until }{ $by ->
    [none] {""}
   *[other] {", sagt "}{ $by }
}
race-cut-off-out-moved = Zeitlimit für den Aufbruch in { $point } ist jetzt { $until }{ $by ->
    [none] {""}
   *[other] {", sagt "}{ $by }
}
race-rerouted = Die Strecke ist geändert{ $words ->
    [none] {""}
   *[other] {": "}{ $words }
}{ $by ->
    [none] {""}
   *[other] {", sagt "}{ $by }
}

## The first sentence
first-leave = Abfahrt bis { $when } nach { $place }.
first-leave-now = Jetzt losfahren nach { $place }, falls noch nicht geschehen: Abfahrt war bis { $when }.
first-be-there = Ab { $when } in { $place } sein.
first-on-way = Du bist unterwegs nach { $place }: ab { $when } dort sein.
first-there = Du bist in { $place }.
first-stay = Warte bis { $when }.
first-stay-heard = Bleib, bis du von ihr hörst.
first-lost = { $place } ist nicht zu schaffen: { $why }.
first-no-meeting = Du hast kein Treffen mehr.
first-pacing = Du läufst mit { $runner } bis { $to }. Nächster Punkt: { $place }, etwa { $when }.
first-then-leave = Danach: Abfahrt bis { $when } nach { $place }.
first-then-be = Danach: ab { $when } in { $place } sein.
first-then-after = Danach: nach { $place }, sobald { $runner } { $here } verlassen hat.
first-due = { $runner } kommt etwa { $when }.
first-due-any-time = { $runner } kommt jederzeit bis { $when }.
first-was-due = { $runner } wurde etwa { $when } erwartet; nichts gemeldet.
first-there-since = { $runner } ist seit { $when } dort.
first-i-am-there = Ich bin da
first-bring = Mitbringen
first-nothing = Für dich ist gerade nichts zu tun.
first-next-is = Nächster Punkt: { $place }.
first-field = { $going } von { $of } sind noch im Rennen.
first-you-next = Nächster Punkt: { $place }, { $km } ab der letzten Meldung. Du kommst dort etwa { $when } an.
first-you-next-at = Nächster Punkt: { $place }, { $km } ab dem Start. Du kommst dort etwa { $when } an.
first-run-over = Dein Rennen ist vorbei.
first-volunteer = Melde alle mit Startnummer, an und ab.
first-volunteer-at = Du bist in { $place }: { $count } kommen noch. Melde alle mit Startnummer, an und ab.
say-on-way = wir fahren jetzt los nach { $place }
say-there = ich bin in { $place }
say-in = { $bib } in { $place } angekommen
say-out = { $bib } raus aus { $place }
## Places of the page
places = Teile dieser Seite
place-now = Jetzt
place-plan = Plan
place-chat = Chat
place-people = Leute
unread = { $count } ungelesen
people-none = Deine Aufgabe zeigt die Nummern anderer nicht.
plan-none = Deine Aufgabe zeigt nicht, wie ein Rennen läuft.
waiting = Noch nicht gesendet, geschrieben { $when }. Geht von selbst ab, sobald Verbindung da ist.
needs-script = Das braucht JavaScript. Ohne geht es per Telefon an die Rennleitung.
bars-read = Voll: gemeldet. Schraffiert: Schätzung, die wahrscheinliche Zeit als Strich. Senkrechter Strich: jetzt.
bars-read-mine = Dünne Linie darunter: wann du dort bist.
bar-unheard = müsste schon da sein, von dort nichts gemeldet
## An open alarm
alarm-what = Was zu tun ist, wen anrufen
part-race-control = Rennleitung
part-rescue = Rettung
## What each part sees first
duty = Wenn ein Alarm kommt
duty-danger = Lebensgefahr: zuerst { $number }.
duty-answer = Antworte binnen { $length }, hier oder in deinem Chat: ‚ich übernehme‘ oder ‚kann nicht‘. Sonst wird die nächste Person gefragt.
duty-call-you = Ruf selbst { $name } an: { $phone }.
duty-call-other = Im Alarm steht, wer { $name } anruft ({ $phone }). Bist du nicht sicher, dass es geschehen ist, ruf an.
duty-look = Sorg dafür, dass jemand sie sucht, und schreib im Chat, was du erfährst.
duty-end = Er endet, wenn jemand bei ihr ist, oder wenn du ‚Entwarnung‘ schreibst.
duty-ladder = In dieser Reihenfolge anrufen
section = Dein nächster Abschnitt
section-due = { $place }: { $when }
section-ground = { $km }, +{ $up } -{ $down } m
section-carry = Nach Plan bei dir: { $things }
section-torch-now = LAMPE: es ist dunkel.
section-torch = LAMPE vor { $place }: dunkel ab { $when }.
section-next-crew = Deine Crew das nächste Mal: { $place }, { $when }: { $crew }.
section-crew = In { $place }: { $crew }.
section-nobody = In { $place } ist niemand von deiner Crew.
section-food = Essen: { $food }
section-kit = { $item }{ $car ->
    [none] {""}
   *[other] { " " }({ $car })
}
station = Dein Punkt: { $place }
station-any = Jemanden melden
station-where = Punkt
station-due = Kommen noch
station-none = Alle sind gemeldet.
station-more = und { $count } weitere
bib = Startnummer
bib-in = An
bib-out = Ab
field = Das Feld
field-line = { $count } { $what }
field-points = An und ab an jedem Punkt
field-here = Dort
field-to-come = Kommen noch
field-late = Zu spät: { $count }
field-late-line = { $who }: erwartet an { $place } bis { $when }
field-missed = Zeitlimit verpasst: { $count }
field-danger = Zeitlimit in Gefahr: { $count }
field-danger-line = { $who }: { $place } bis { $when }, { $odds }
field-not-started = Am Start nicht gemeldet: { $count }
field-retired = Aus dem Rennen: { $count }
field-place-line = { $who }{ $place ->
    [none] {""}
   *[other] , { $place }
}{ $when ->
    [none] {""}
   *[other] , { $when }
}
going-before-the-start = vor dem Start
going-moving = auf der Strecke
going-at-a-point = an einem Punkt
going-resting = in Pause
going-retired = ausgestiegen, noch bei niemandem
going-retired-in-hand = ausgestiegen, bei jemandem
going-finished = im Ziel
going-closed = abgeschlossen
## The map
map = Karte der Strecke
map-last = Zuletzt bekannt: { $fact }.
map-estimate = Geschätzt, nicht gesehen: wohl zwischen { $from } und { $to }, { $low } bis { $high } der Strecke; { $odds }.
map-places = Orte auf der Karte, und der Weg dorthin
map-mine = hier triffst du sie
map-parking = Parken: { $words }.
map-to-car-park = Zum Parkplatz fahren
map-to-point = Zum Punkt fahren
map-geo = Öffnet das Kartenprogramm dieses Telefons. Öffnet sich nichts, gib die Zahlen dort ein. Ist die Lage des Parkplatzes nicht angegeben, führt der Link zum Punkt auf der Strecke.
## Web push
push-on = Dieses Telefon wecken lassen
push-off = Dieses Telefon nicht mehr wecken
push-is-on = Dieses Telefon wird bei Nachrichten geweckt.
push-refused = Nicht eingeschaltet: dieser Browser erlaubt es nicht, oder der Server ist nicht erreichbar. Erlaube in den Einstellungen des Browsers Mitteilungen für diese Seite und versuch es noch einmal.
push-says = Nachrichten kommen dann auch, wenn die Seite zu ist. Versprechen lässt sich das nicht: der Hersteller des Browsers reicht sie weiter, ein Telefon ohne Netz, auf stumm oder im Sparmodus zeigt sie spät oder nie, und manche wollen die Seite zuerst auf dem Startbildschirm. Als erreicht gilt nur, wer antwortet. Lass den Ton an, und macht aus, wer wen anruft.
## Sheet and display
sheet = Mein Blatt zum Drucken
sheet-paper = Mein ganzes Blatt nach Plan, PDF, { $size }
sheet-as-of = Stand { $when }. Später können die Zeiten andere sein: sieh auf der Seite nach, sobald Verbindung da ist.
sheet-cards = Wenn etwas schiefgeht
look = Anzeige
look-device = wie das Gerät
look-day = Tag
look-dark = dunkel
look-red = rot, für die Nacht
look-large = große Schrift
setup-title = Ein Rennen einrichten
setup-language-name = Deutsch
setup-steps = Schritte
setup-step = Schritt { $number } von { $all }
setup-course = Rennen
setup-points = Punkte
setup-runner = Läuferin
setup-people = Leute
setup-meetings = Treffen
setup-check = Prüfen
setup-publish = Freigeben
setup-save = Speichern
setup-on = Speichern, weiter: { $step }
setup-to = Zu { $step }
setup-wrong = Hier noch zu tun
setup-doubt = Einen Blick wert:
setup-gone = Herausnehmen
setup-take-out = Entwurf mitnehmen (zip: event.toml und Strecke)
setup-put-in = Einen Entwurf einlesen
setup-put-in-lead = Ein zip, das hier mitgenommen wurde, oder eine event.toml. Sie tritt an die Stelle dieses Entwurfs; dieser bleibt als replaced.zip daneben.
setup-put-in-file = Datei
setup-put-in-do = Einlesen
setup-parcel-zip = Dieses zip lässt sich nicht lesen. Den Entwurf noch einmal mitnehmen, oder die event.toml selbst wählen.
setup-parcel-event = Darin ist keine event.toml in UTF-8. Das zip wählen, das hier mitgenommen wurde.
setup-parcel-large = Das ist zu viel: höchstens 60 Dateien und 100 MB.
setup-unusual = Nichts wurde geändert: diese event.toml hat eine Form, die diese Seiten nicht ändern können ({ $why }). Jeder Tabelle eine eigene Überschrift geben, etwa [[points]].
setup-broken = Die event.toml des Entwurfs lässt sich hier so nicht ändern. In einem Texteditor richten und wieder einlesen.
setup-door-lead = Diese Seite ist für die, die den Link zum Einrichten haben. Auf dem Rechner des Servers macht `stilepost new` einen; er öffnet einmal.
setup-door-code = Schlüssel aus dem Link (was hinter # steht)
setup-door-open = Öffnen
setup-link-used = Dieser Link wurde schon benutzt oder ist zu alt. `stilepost new` macht einen neuen; der Entwurf bleibt.
setup-stranger = Dieser Browser hat keinen Schlüssel zum Einrichten.
setup-course-lead = Die GPX-Datei der Strecke wählen; ihre Wegpunkte werden Punkte. Alles lässt sich später ändern.
setup-route = Strecke (GPX)
setup-route-again = Eine andere Strecke (GPX)
setup-course-found = { $km } km, { $up } m hinauf, { $down } m hinab, { $points } Punkte
setup-profile = Profil der Strecke mit ihren Punkten
setup-name = Name des Rennens
setup-name-hint = wie man es nennt
setup-day = Tag des Starts
setup-clock = Start, nach der Uhr am Ort
setup-zone = Zeitzone des Rennens
setup-limit = Zeitlimit (Stunden)
setup-limit-hint = 30:00
setup-control = Rennleitung: wer abnimmt
setup-control-hint = Rennleitung
setup-control-phone = Rennleitung: Nummer
setup-emergency = Notrufnummer, wo das Rennen ist
setup-start = Start
setup-finish = Ziel
setup-points-lead = Wo die Crew hin darf, dort gibt es Treffen. Einen Punkt antippen, um ihn zu ändern.
setup-paste = Die Tabelle des Rennens einfügen
setup-paste-lead = Punkte mit km, Name, Zeitlimit und Crew, je eine Zeile. Es zählt erst, wenn du gesehen hast, was gelesen wurde.
setup-paste-hint = 21,5 km; Mühle; 11:30; ja
setup-read = Lesen
setup-read-found = Gelesen: { $count } Zeilen
setup-read-new = ein neuer Punkt
setup-read-known = ändert den Punkt, den es gibt
setup-read-lost = kein km, und kein Punkt dieses Namens: wird ausgelassen
setup-read-left = Mit diesen Zeilen ließ sich nichts anfangen. Je km, Name und Zeit angeben, oder sie lassen.
setup-take = Das stimmt: { $count } Zeilen nehmen
setup-route-broken = Die Strecke bricht bei km { $from } ab und geht { $gap } km entfernt weiter. Endet dort eine Etappe, sag bei dem Punkt, wann die nächste beginnt (der Weg dazwischen wird nicht gelaufen); sonst zeichne die Linie durch.
setup-taken-but = Genommen. Zeilen, aus denen nichts wurde: { $count }.
setup-crew-short = Crew
setup-crew-yes = · Crew ja
setup-crew-no = · keine Crew
setup-cut-line = Zeitlimit { $when }
setup-point-new = Noch ein Punkt
setup-point-name = Name
setup-km-hint = 21,5
setup-crew-may = Crew darf kommen
setup-aid = Verpflegung
setup-water = Wasser
setup-bag = Wechselbeutel
setup-cut = Zeitlimit
setup-cut-hint = Sat 23:30, oder +18:30
setup-edge = Bis dahin muss sie
setup-edge-out = hinaus sein
setup-edge-in = da sein
setup-stop = Geplanter Halt (min)
setup-by = Wer dort meldet
setup-by-nobody = niemand
setup-by-crew = die Crew
setup-by-volunteer = Helfer
setup-by-timing-mat = Zeitmatte
setup-by-runner = die Läuferin
setup-by-tracker = ein Tracker
setup-parking = Wo parken
setup-parking-hint = Wiese am Wehr
setup-runner-lead = Eine Zielzeit, oder ein Rennen, das sie gelaufen ist: daraus folgt der Zeitplan.
setup-runner-name = Ihr Name
setup-bib = Startnummer
setup-target = Zielzeit im Ganzen (Stunden)
setup-target-hint = 29:00
setup-past = Ein Rennen, das sie gelaufen ist
setup-past-lead = Statt einer Zielzeit, oder daneben.
setup-past-name = Welches
setup-past-ascent = Anstieg (m)
setup-past-time = Ihre Zeit
setup-timetable = Zeitplan
setup-no-timetable = Hier steht der Zeitplan, sobald Strecke, Start, Punkte und Zielzeit stimmen.
setup-between = zwischen { $early } und { $late }
setup-people-lead = Wer fährt, wer zu Hause ihr Sicherheitskontakt ist (bei Gefahr zuerst gefragt), wer die Rennleitung anruft.
setup-person-new = Noch jemand
setup-person-more = Speichern, und noch jemand
setup-person-name = Name
setup-phone = Telefon
setup-email = E-Mail
setup-language = Sprache
setup-drives = fährt
setup-calls = ruft die Rennleitung an
setup-ladder = Als Sicherheitskontakt gefragt
setup-station = Als Helfer an
setup-ladder-first = zuerst
setup-ladder-second = als Zweites
setup-ladder-third = als Drittes
setup-car = Auto
setup-awake = Am Steuer: wach seit
setup-sleeps = Will schlafen
setup-sleeps-hint = So 01:00 – So 03:00
setup-cars = Autos
setup-car-name = Auto
setup-car-hint = blauer Bus
setup-seats = Sitze
setup-meetings-lead = Wer wohin geht, womit. Die Zeiten folgen aus ihrem Tempo und den Fahrten.
setup-no-crew-points = Es gibt keinen Punkt, an den die Crew darf: bei Schritt 2 ‚Crew darf kommen‘ ankreuzen.
setup-no-drivers = Noch fährt niemand: bei Schritt 4 für jemand ‚Crew‘ und ‚fährt‘ ankreuzen.
setup-suggest = Treffen vorschlagen
setup-likely = wohl { $when }
setup-from = Gefahren von
setup-from-before = vom vorigen
setup-kit = Sachen, mit Kommas
setup-kit-hint = Stirnlampe, warme Jacke
setup-food = Essen und Trinken
setup-food-hint = Milchreis, Kaffee
setup-legs = Fahrten
setup-legs-lead = Nur eine Fahrt, für die jemand geradesteht, ergibt eine Abfahrtszeit.
setup-leg = { $start } nach { $end }
setup-guess = Nach Entfernung geschätzt: { $minutes } min. Nicht bestätigt.
setup-minutes = Minuten
setup-stands-by = Wer dafür geradesteht
setup-nobody-yet = noch niemand
setup-ready = Bereit für diese Strecke?
setup-remarks = Was der Plan dazu sagt
setup-right = Nichts steht im Weg.
setup-not-right = Es fehlt noch etwas.
setup-publish-wrong = Noch nicht: { $count ->
    [one] ein Fehler steht im Weg.
   *[other] { $count } Fehler stehen im Weg.
 }
setup-publish-lead = Freigeben lädt das Rennen in diesen Server und macht je Person eine Einladung. Es lässt sich ändern und wieder freigeben.
setup-publish-do = Freigeben und einladen
setup-published = Freigegeben als Version { $version }.
setup-changes = Was sich gegen Version { $version } ändert
setup-as-stored = So freigegeben, wie es hier steht (Version { $version }).
setup-invite-all = Neue Einladungen für die, die noch fehlen
setup-invited-lead = Eine je Person, einmal gültig, zwei Wochen lang. Sie werden nur jetzt gezeigt: gleich scannen lassen oder den Link schicken.
setup-qr = QR der Einladung von { $name }
setup-code = Code
setup-here-only = Dieser Server hat keine öffentliche Adresse (STILEPOST_PUBLIC_URL): die Links öffnen nur dort, wo diese Seite aufgeht.
setup-transport = Wie das Rennen wegbringt, wer aufgibt
setup-transport-hint = Besenbus, jede Stunde
setup-do-emergency = Die Notrufnummer bei Schritt 1 eintragen.
setup-do-control = Bei Schritt 1 die Nummer der Rennleitung eintragen.
setup-do-runner = Ihren Namen eintragen, und eine Zielzeit oder ein Rennen, das sie gelaufen ist.
setup-do-contact = Bei Schritt 4 für jemand ‚Sicherheitskontakt‘ ankreuzen, zuerst gefragt.
setup-do-calls = Für genau eine Person ‚ruft die Rennleitung an‘ ankreuzen.
setup-do-phone = Ihre Telefonnummer eintragen.
setup-do-people = Bei Schritt 4 ergänzen, wer fährt und wer ihr Sicherheitskontakt ist.
setup-do-reports = Bei einem Punkt sagen, ‚wer dort meldet‘.
setup-do-transport = Das Rennen fragen und bei Schritt 1 eintragen, ‚wie das Rennen wegbringt, wer aufgibt‘.
setup-do-name = Den Namen des Rennens eintragen.
setup-do-starts = Tag und Uhrzeit des Starts eintragen.
setup-do-zone = Die Zeitzone des Rennens wählen.
setup-do-route = Die GPX-Datei der Strecke wählen.
setup-do-span = Stunden und Minuten schreiben, etwa 29:00.
setup-do-km = Die Entfernung vom Start schreiben, etwa 21,5.
setup-do-cut = Eine Uhrzeit schreiben (23:30), mit Wochentag (Sa 23:30), oder die Stunden seit dem Start (+18:30).
setup-do-past = Von dem gelaufenen Rennen km, Anstieg und Zeit eintragen, oder nichts davon.
setup-do-target = Eine Zielzeit eintragen, oder ein Rennen, das sie gelaufen ist.
setup-do-confirm = Wählen, wer für diese Fahrt geradesteht; bis dahin ergibt sie keine Abfahrtszeit.
setup-tap = Das Profil antippen: der km kommt in den Punkt, der unten offen ist, oder in einen neuen.
setup-joins = Begleitung steigt hier ein
setup-leaves = Begleitung steigt hier aus
setup-own = Wie sie läuft
setup-own-lead = Aufzeichnungen ergeben ihr eigenes Tempo je Steigung, Zwischenzeiten früherer Jahre das Muster dieser Strecke. Beides kann fehlen.
setup-own-files = Aufzeichnungen ihrer Läufe (GPX, FIT, TCX)
setup-results = Zwischenzeiten anderer auf dieser Strecke (CSV)
setup-gone-file = { $name } herausnehmen
setup-not-kept = NICHT BEHALTEN: in { $folder } lässt sich der Entwurf nicht schreiben ({ $why }). Was du getippt hast, steht noch hier; den Server dort schreiben lassen, dann wieder speichern.
setup-carries = Von Anfang an dabei, mit Kommas
setup-carries-hint = Regenjacke, Stirnlampe 8 h
setup-do-fuel = Ändere, was sie isst und trinkt, oder lass es, wenn es so gemeint ist.
setup-do-kit = Bei den Sachen eines Treffens davor eintragen, oder bei Schritt 3 unter dem, was von Anfang an dabei ist; die Stunden einer Lampe hinter ihrem Namen, wie ‚Stirnlampe 8 h‘.
setup-not-taken = Die eingefügte Tabelle ist gelesen, aber noch nicht genommen: unten nehmen oder das Feld leeren, dann weiter.
setup-do-number = Eine Zahl schreiben, etwa 12.
setup-joined = Schon da
setup-not-begun = nicht begonnen
setup-missing = { $count } fehlen noch
setup-stage = Hier endet eine Etappe: die nächste startet
setup-stage-hint = Sun 07:00
setup-runners-more = Weitere Läuferinnen
setup-runner-new = Noch eine Läuferin
setup-fuel = Was sie isst und trinkt
setup-fuel-lead = Je Stunde, von einem Punkt bis zum nächsten genannten. Um Flaschen und Beutel zu planen: sie trinkt nach Durst.
setup-fuel-part = Von einem Punkt an
setup-fuel-more = Von einem weiteren Punkt an
setup-fuel-from = Ab
setup-fuel-words = In Worten
setup-fuel-hint = alle halbe Stunde ein Riegel
setup-fuel-carbohydrate = Kohlenhydrate (g je Stunde)
setup-fuel-kcal = Energie (kcal je Stunde)
setup-fuel-fluid = Flüssigkeit (ml je Stunde)
setup-fuel-sodium = Natrium (mg je Stunde)

## Changing the plan
change = Den Plan ändern
change-this = Ändern
change-crew = Wer hinfährt
change-own-car = eigenes Auto
change-car = Auto
change-point = Punkt
change-first = Es gilt erst, wenn du gesehen hast, was es für wen heißt, und Ja sagst.
change-who = Jemand anders fährt, oder ein anderes Auto
change-elsewhere = An einem anderen Punkt treffen
change-look = Zeigen, was das ändert
change-kit = Andere Sachen mitbringen
change-kit-lines = Eine Sache pro Zeile
change-skip = Das Treffen auslassen
change-drive = Die Fahrt dorthin von { $start }
change-drive-known = { $minutes } min, jemand steht dafür ein.
change-drive-estimate = { $minutes } min geschätzt: niemand steht dafür ein, also gibt es keine Abfahrtszeit.
change-drive-unknown = Niemand weiß, wie lange sie dauert, also gibt es keine Abfahrtszeit.
change-drive-minutes = Minuten von Tür zu Tür; du stehst dafür ein
change-more = Treffen oder Person hinzufügen, oder das Ziel aufgeben
change-add = Ein Treffen hinzufügen
change-person = Jemanden hinzufügen
change-name = Name
change-phone = Telefon
change-drives = Fährt
change-finish = Nur ankommen: kein Ziel mehr, das Zeitlimit gilt
change-cut-off = Ein Zeitlimit wurde verlegt
change-cut-off-which = Zeitlimit
change-cut-off-until = Neue Zeit
change-invited-lead = Gleich scannen lassen oder den Link schicken: einmal gültig, zwei Wochen lang, und nicht noch einmal gezeigt.
follow-title = Zuschauer
follow-none = Dieser Link zeigt nichts: er wurde zurückgenommen, ist abgelaufen oder war nie einer. Bitte die Läuferin um einen neuen.
follow-before = { $runner } hat noch keinen Punkt erreicht.
follow-last = { $runner } war gegen { $when } in { $place }, { $km } nach dem Start.
follow-finished = { $runner } ist im Ziel, seit etwa { $when }.
follow-over = { $runner } ist nicht mehr im Rennen. Der letzte Punkt war { $place }, gegen { $when }.
follow-next = Als Nächstes: { $place }.
follow-far = Ab Start
follow-about = Etwa
follow-delay = Alles hier ist mindestens { $minutes } Minuten alt und auf { $step } Minuten gerundet. Langes Schweigen heißt hier nichts: auf weiten Teilen der Strecke gibt es kein Netz.
follow-asked = Angesehen um { $when }; die Seite ändert sich nicht von selbst.
follow-again = Noch einmal ansehen
follow-on = Es gibt einen Link für Zuschauer.
follow-off = Es gibt keinen Link für Zuschauer.
follow-once = Schick diesen Link denen, die zusehen dürfen. Er wird nicht noch einmal gezeigt.
follow-qr = QR des Links für Zuschauer
follow-shows = Wer den Link hat, sieht, an welchen Punkten du warst, { $minutes } Minuten verspätet und auf { $step } Minuten gerundet. Keine Position, niemanden aus deiner Crew und keinen Alarm.
follow-give = Einen Link geben
follow-new = Einen neuen Link geben, der alte gilt nicht mehr
follow-take-back = Den Link zurücknehmen
