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
estimate-between = zwischen { $low } und { $high } der Strecke, wohl bei { $likely }
estimate-points = zwischen { $from } und { $to }
points = Punkte voraus: wohl um, und zwischen wann
points-unheard = Bis jetzt erwartet, von dort nichts gemeldet
reached = Erreichte Punkte
in-at = an { $when }
out-at = ab { $when }
through-at = durch { $when }
reported-none = erreicht; keine Zeit gemeldet
gets-there = Chance { $odds }, dass sie hinkommt
own-clock = { $when } deine Uhr
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
people-bound = unterwegs nach { $name }, dort ab { $when }
unreachable = auf keinem Kanal zu erreichen
profile = Strecke: Höhe entlang des Wegs, Punkte, wo sie zuletzt bekannt war
profile-none = Die Route hat keine Höhen.
chat = Chat
chat-hint = Fragen oder melden: „wo ist sie“, „da in Mühle vor 5 min“, „was bringe ich mit“
send = Senden
share-place = Meinen Standort teilen
asking-place = frage das Gerät, wo es ist
place-refused = Dieses Gerät sagt nicht, wo es ist.
place-shared = Meinen Standort geteilt.
not-sent = Nicht gesendet: keine Verbindung. Noch einmal versuchen.
stale = Keine Verbindung seit { $when }. Was hier steht, kann alt sein.
notices = Nachrichten an dich
join-title = Einer Crew beitreten
join-lead = Gib den Code deiner Einladung ein.
join-code = Code
join-look = Nachsehen
join-yes = Das bin ich
join-no = Nicht ich
join-who = Du bist { $name } in { $event }: { $parts }.
join-wrong = Dieser Code geht nicht. Bitte die Person, die dich eingeladen hat, um einen neuen.
join-wait = Zu viele falsche Codes. Warte eine Viertelstunde.
stranger = Wer zu keinem Rennen gehört, sieht nichts. Nimm den Link deiner Einladung.
answer-title = Deine Antwort
answer-done = Du hast { $when } ‚{ $answer }‘ geantwortet. Hier ist nichts weiter nötig; um etwas anderes zu sagen, schreib in deinem Chat.
answer-over = Darauf ist keine Antwort mehr nötig.
answer-no-link = Dieser Link geht nicht: er ist zu alt oder nicht vollständig. Antworte in deinem Chat oder auf der Seite, oder ruf deine Crew an.
no-events = Du gehörst noch zu keinem Rennen.
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
first-then-leave = Danach: Abfahrt bis { $when } nach { $place }.
first-then-be = Danach: ab { $when } in { $place } sein.
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
bars-read = Voll: gemeldet. Schraffiert: Schätzung, die wahrscheinliche Zeit als Strich. Dünne Linie darunter: wann du dort bist. Senkrechter Strich: jetzt.
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
going-before-the-start = vor dem Start
going-moving = auf der Strecke
going-at-a-point = an einem Punkt
going-resting = in Pause
going-retired = ausgestiegen, noch bei niemandem
going-retired-in-hand = ausgestiegen, bei jemandem
going-finished = im Ziel
going-closed = abgeschlossen
## Sheet and display
sheet = Mein Blatt zum Drucken
sheet-as-of = Stand { $when }. Später können die Zeiten andere sein: sieh auf der Seite nach, sobald Verbindung da ist.
sheet-cards = Wenn etwas schiefgeht
look = Anzeige
look-device = wie das Gerät
look-day = Tag
look-dark = dunkel
look-red = rot, für die Nacht
look-large = große Schrift
