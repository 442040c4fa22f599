# Sheets, calendars, files. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## Paper: table, calendar, sheet
paper-point = Punkt
paper-leg = Stück
paper-climb = Höhenmeter
paper-in = { $goal } an
paper-out = { $goal } ab
paper-stop = Pause
paper-cut-off = Zeitlimit
paper-minutes-for = Minuten für
paper-due = { $edge } { $when }
paper-goal = Ziel { $goal }
paper-height = Höhe, m
paper-no-heights = die Strecke hat keine Höhen
paper-goals-band = Ziele A bis C
paper-night = Nacht
paper-goal-b = Ziel B, das Ziel
paper-carries = was { $runner } mitnimmt
paper-from = von
paper-to = bis
paper-takes = dauert
paper-at-most = höchstens
paper-kcal = kcal
paper-carbohydrate = Kohlenhydrate g
paper-sodium = Natrium mg
paper-bottles = Flaschen
paper-what = was
paper-bag = Bereit bei { $place }{ $runner ->
    [none] {""}
   *[other] {" für "}{ $runner }
 }: { $things }
paper-bag-kcal = { $amount } kcal
paper-bag-carbohydrate = { $amount } g Kohlenhydrate
paper-bag-sodium = { $amount } mg Natrium
paper-meeting-title = { $runner } bei { $place }: da sein ab { $be_there }
paper-leave-title = Losfahren bis { $leave_by } nach { $place }: { $runner }
paper-own-title = Deine Crew bei { $place }
paper-leave = Losfahren bis { $leave_by }{ $from ->
    [none] {""}
   *[other] {", von "}{ $from }
 }.
paper-after-her = Losfahren, sobald { $runner } aus { $place } los ist{ $after ->
    [none] , sofort
   *[other] , spätestens { $after } danach
 }; nicht vorher. Geplant ist sie dort los { $times }. Ist sie bis { $until } nicht gekommen, kommen neue Zeiten per Nachricht{ $signal ->
    [none] , sobald ihr wieder Netz habt
   *[other] {""}
 }.
paper-after-other = Losfahren, sobald { $runner } aus { $place } los ist, und spätestens um { $until }, ob { $runner } gekommen ist oder nicht. Geplant dort los { $times }.
paper-after-goal = { $goal } { $when }
paper-leave-once-title = Nach { $place }, sobald { $runner } aus { $left } los ist
paper-cell-leave-once = Losfahren
paper-other-car-once = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 }: losfahren, sobald { $runner ->
    [none] sie
   *[other] { $runner }
 } aus { $place } los ist, nicht vorher.
paper-cell-once = sobald { $runner ->
    [none] sie
   *[other] { $runner }
 } aus { $place } los ist
paper-cell-after = { $after ->
    [none] sofort
   *[other] spätestens { $after } danach
 }; nicht vorher. Geplant: { $times }
paper-cell-after-other = spätestens { $until }, gekommen oder nicht. Geplant: { $times }
paper-no-drive = Keine Abfahrtszeit: { $from ->
    [none] woher sie kommen, steht nicht da
   *[other] eine Fahrt von { $from } nach { $place } steht nirgends
 }.
paper-no-leave = Keine Abfahrtszeit: noch hat niemand die Fahrzeit bestätigt.
paper-be-there = Da sein ab { $be_there }.
paper-expected = { $runner }: { $window }.
paper-planned = Geplant { $when }{ $length ->
    [none] .
   *[other] {", Pause "}{ $length }.
 }
paper-wait = Warten bis { $until }.
paper-wait-short = Warten bis { $until }, dann weiter zum nächsten Treffen: { $odds }, dass { $runner } bis dahin gekommen ist.
paper-drive = Fahrt { $length }.
paper-parking = Parken: { $parking }
paper-kit-safety = MUSS da sein: { $kit }.
paper-kit = Mitbringen: { $kit }.
paper-food = Essen: { $food }
paper-if-missed = Falls verpasst: { $text }
paper-pacer-joins = { $who } begleitet sie ab hier.
paper-pacer-leaves = { $who } hört hier mit dem Begleiten auf.
paper-lost = Nach diesem Plan ist das Treffen nicht zu schaffen: { $why }
paper-start-title = { $event }: Start
paper-pace-title = { $runner } begleiten, { $from } bis { $to }
paper-pacer-way = Du läufst mit { $runner } von { $from } (geplant { $start }) bis { $to } ({ $end }), { $length }. { $before ->
    [none] {""}
   *[other] Melde dich dort { $before } vor ihr an.{" "}
 }Eigene Lampe, warme Schicht, Essen und Trinken: auf ihren Listen steht nichts davon.
paper-rides-along = Du fährst mit, { $car }{ $driver ->
    [none] {""}
   *[other] {" "}({ $driver } fährt)
 }{ $origin ->
    [none] {""}
   *[other] {" "}ab { $origin }
 }{ $leave ->
    [at] , Abfahrt bis { $at },
    [after] , sobald sie { $before } verlassen hat,
   *[none] {""}
 } nach { $places }: von dort geht es zu deinem eigenen Treffen.
paper-pace-length = { $length } gemeinsam
paper-stand-title = { $runner } bei { $place }
paper-as-of = Geplant am { $when }. Die Zeiten verschieben sich, sobald sie unterwegs ist: vor der Abfahrt fragen.
paper-stays = Es zeigt, was am { $when } geplant war; was später gehört wird, steht auf der Tafel und im Chat.
paper-window-how = Frühestens bis spätestens: 1-mal in 10 kommt sie früher, 1-mal in 10 später.
paper-aid = Eine Hilfe für die Crew, kein Rettungsdienst. Bei Lebensgefahr zuerst { $emergency } anrufen, dann die Rennleitung: { $name ->
    [none] {""}
   *[other] { $name }{", "}
 }{ $phone }.
paper-rescue-who = Bergrettung
paper-rescue = { $who }: { $name ->
    [none] {""}
   *[other] { $name }{" "}
 }{ $phone }.
paper-head-meetings = Treffen
paper-head-plan = Ihr Plan
paper-head-cards = Wenn dies, dann das
paper-head-cut-offs = Zeitlimits
paper-head-light = Licht
paper-head-fuel = Was sie mitnimmt
paper-cell-leave = Abfahrt bis
paper-cell-from = von { $place }
paper-cell-there = Da sein ab
paper-cell-comes = Sie kommt wohl
paper-cell-between = { $early } bis { $late }
paper-stay = Bleiben: ihr seid schon da, { $place ->
    [none] vom Treffen davor
   *[other] von { $place } her
 }.
paper-cell-stay = bleiben
paper-cell-own = { $here } deine Uhr
paper-cell-planned = Geplant
paper-cell-likely = Wohl
paper-cell-crew-until = Crew wartet bis
paper-cell-wait = Warten bis
paper-permit = Genehmigung nötig: { $permit }{ $who ->
    [none] {", niemand sagt, wer sie hat: beim Veranstalter fragen"}
   *[other] {", "}{ $who }{" hat sie"}
 }.
paper-hours = Crew erlaubt { $from ->
    [none] {""}
   *[other] {"ab "}{ $from }
 }{ $to ->
    [none] {""}
   *[other] {" bis "}{ $to }
 }.
paper-allowed = Höchstens { $what }.
paper-people-max = { $count ->
    [one] eine Person
   *[other] { $count } Leute
 }
paper-cars-max = { $count ->
    [one] ein Auto
   *[other] { $count } Autos
 }
paper-race-clock = Die Zeiten dieser Tabelle sind die der Uhr beim Rennen.
paper-head-glove = Dieses Blatt kommt ins Handschuhfach
paper-head-silences = Wenn von { $runner } nichts zu hören ist (Ziele A / B / C)
paper-silence-clock = Das sind Zeiten der Uhr des Rennens: { $when }.
paper-silence-after = Nach, dann gefragt zu
paper-silence-likely = Wahrscheinlich dort
paper-silence-asked = Crew gefragt
paper-silence-home = Zu Hause gesagt
paper-silence-alarm = Alarm
paper-silence-point = { $place }, dann { $next }
paper-silence-no-alarm = keiner
paper-silence-far = Nach { $place } kommt der Alarm { $length } nach der wahrscheinlichen Zeit (Ziel B).
paper-silence-never = Nach { $place } löst Stille allein keinen Alarm aus (Ziel B).
paper-silence-nobody-reports = Niemand meldet aus { $places }.
paper-silence-may-be-missed = Wer aus { $place } meldet, übersieht etwa 1 von { $count }.
paper-silence-few-told = Aus { $place } werden die meisten nicht gemeldet: niemand ist genannt, der es täte.
paper-silence-uncertain = Ihre Zeit dort ist unsicher: 1 von 10 käme über { $length } später.
paper-silence-shorter = Mit einer Person mehr, die aus { $place } meldet, kommt er um { $when }.
paper-silence-told = Antwortet die Crew dort ‚noch nicht‘, kommt er um { $when }.
paper-head-phones = Telefon
paper-phone = { $name } ({ $parts }) { $phone }
paper-head-how = So setzt sich jede Fahrt zusammen
paper-allowed-by = Erlaubt: { $rules }.
paper-head-drives = Wer fährt wohin
paper-car = Auto
paper-who = wer
paper-made-of = setzt sich zusammen aus
paper-in-time = vor ihr da
paper-drives-her = { $name } (fährt)
paper-own-car = auf eigenem Weg
paper-there-already = schon da
paper-not-promised = { $odds }, nicht zugesagt
paper-no-meetings = Für dich ist kein Treffen geplant.
paper-runner = { $name }{ $bib ->
    [none] {""}
   *[other] {", Startnummer "}{ $bib }
 }. { $clothing }
paper-no-signal = Dort gibt es kein Netz.
paper-rules = Rennregeln für die Crew: { $rules }

## Blätter, Teil für Teil
paper-kit-in-car = { $thing } ({ $car })
paper-blank-in = Ein
paper-blank-out = Aus
paper-blank-ate = Gegessen
paper-blank-drank = Getrunken
paper-blank-peed = Gepinkelt
paper-fact-cut-off = Zeitlimit { $edge } { $when }
paper-fact-latest = Raus bis { $when }: 9 von 10 für das Zeitlimit bei { $place }
paper-fact-stop = Halt { $length }
paper-odds-if = Chancen für ein Zeitlimit gelten, wenn sie weitergeht.
paper-fact-walk = { $length } zu Fuß vom Auto
paper-fact-torch = LAMPE vor { $place }: { $goals }
paper-dark-already = { $goals } dunkel ab hier
paper-dark-always = dunkel ab hier bei jedem Tempo
paper-dark-from = { $goals } ab { $when }
paper-goal-limit = gerade noch im Limit
paper-head-parking = Parkplätze
paper-parking-head = Parken
paper-grid-ref = wo (Grad; UTM)
paper-know = wissen
paper-not-the-car-park = (der Punkt, nicht der Parkplatz)
paper-signal-patchy = Netz mit Lücken
paper-signal-none = KEIN Netz
paper-signal = Netz
paper-directions = welcher Weg
paper-stands-by = { $length }{ $who ->
    [none] {", von niemandem bestätigt"}
   *[other] {", sagt "}{ $who }
 }
paper-head-ground = Kein Netz, Auswege
paper-stretch = { $name ->
    [none] {""}
   *[other] { $name }{", "}
 }{ $from } bis { $to }: { $about }
paper-stretch-silent = kein Netz.
paper-stretch-out = Ausweg: { $way }.
paper-head-bags = Verpflegungsbeutel
paper-head-bad-moments = Für schlechte Momente, in den eigenen Worten von { $runner }
paper-prompt = { $when }: „{ $words }“
paper-wants-to-hear = Gut zu hören: { $words }.
paper-not-to-hear = Nie sagen: { $words }.
paper-head-emergency = Notfallkarte
paper-head-say = Das vorlesen
paper-say-who = Hier ist { $name }, { $parts }, { $event }.{ $phone ->
    [none] {""}
   *[other] {" Meine Nummer ist "}{ $phone }.
 }
paper-say-runner = Es geht um { $runner }
paper-say-runner-blank = Es geht um ____________________, Startnummer ______.
paper-say-medical = Medizinisches: { $note }
paper-say-what = Was ist geschehen: ______________________________ Ist sie wach, atmet sie normal: ______________
paper-say-where = Sie ist bei: ______________________________ (Punkt, km oder das Gitter unten)
paper-say-seen = Zuletzt gesehen bei ____________________ um ____:____ von ____________, unterwegs nach ____________________
paper-say-then = Die anderen legen zuerst auf. Dann die Rennleitung anrufen. Am Telefon bleiben, es frei halten.
paper-head-places = Orte
paper-km = km
paper-escape = Ausweg
paper-head-do = Was du tust
paper-home-reach = Sei von { $from } bis { $to } erreichbar: Telefon geladen, laut, frei. Sag es der Crew, wenn das nicht geht.
paper-home-late = ‚Verspätet‘ ist eine Nachricht, kein Alarm: die Crew wird zuerst gefragt, und es steht dabei, wo zu suchen ist.
paper-home-alarm = Ein Alarm fragt dich mit Namen: antworte. Nach { $length } ohne Antwort wird die nächste Person gefragt.
paper-home-calls = { $mine ->
    [yes] Du rufst die Rennleitung an: { $name ->
        [none] {""}
       *[other] { $name }{", "}
     }{ $phone }. Lies die Notfallkarte vor.
   *[no] { $who } ruft die Rennleitung an, { $phone }. Ist { $who } nicht zu erreichen, tut es, wer den Alarm hat.
 }
paper-home-again = Wer den Alarm hat, sieht nach { $length } wieder nach oder nennt eine Zeit.
paper-home-ends = Er ist erst vorbei, wenn jemand sie sieht oder die Rennleitung es sagt. Stille beendet nichts.
paper-head-ladder = Wer nach { $runner } gefragt wird, nacheinander
paper-step = Stufe
paper-asked-after = gefragt nach
paper-at-once = sofort
paper-phone-head = Nummer
paper-sleeps = schläft { $from } bis { $to }
paper-calls-control = Ruft die Rennleitung an.
paper-section = Abschnitt
paper-carry-eat = mitnehmen, essen, trinken
paper-at-the-stop = beim Halt danach
paper-section-in = da { $when } (B), nach { $takes }–{ $most }
paper-section-ground = { $km }, +{ $up } -{ $down } m
paper-section-through = durch { $places }
paper-bottles-of = { $count ->
    [one] eine Flasche
   *[other] { $count } Flaschen
 }
paper-from-the-start = Vom Start an dabei: { $things }.
paper-go-through = durchlaufen
paper-crew-there = Crew: { $crew }
paper-take = Nimm: { $things }
paper-give-for-the-way = Für unterwegs mitgeben: { $things }
paper-give-back = Gib zurück: { $things }
paper-pacer-joins-her = { $who } läuft ab hier mit dir
paper-from-bag = Aus dem Beutel: { $things }
paper-post-note = Schreib Nummer und Zeit von allen auf, die kommen oder gehen, auch wer nicht hält. Melde es wie vereinbart.
paper-post-miss = Wer erwartet wird und bis zur letzten Zeit unten nicht da ist: der Rennleitung sagen. Auch wer einen anderen Weg nahm.
paper-post-danger = Verletzt, krank, verwirrt oder sehr kalt: sie bleiben bei dir, hol die Sanitäter, ruf die Nummern oben an.
paper-post-cut-off = Nach einem Zeitlimit entscheidet die Rennleitung. Du allein schickst niemanden weiter oder fort.
paper-post-none = Dein Punkt steht nicht in der Renndatei: die Rennleitung sagt ihn dir. Wer zu erwarten ist, steht auf dem Blatt, sobald er darin ist.
paper-post-then = Danach: { $place }, { $km } weiter
paper-bib-head = Nr.
paper-runner-head = Wer
paper-expect-from = ab (A)
paper-expect-likely = geplant (B)
paper-expect-until = zuletzt (C)
paper-in-head = ein
paper-out-head = aus

## Listen
paper-lists = Listen
paper-no-fuel = In der Datei steht kein Verpflegungsplan: aus dem, was sie in der Stunde essen und trinken will, werden diese Listen ([[runners.fuel]]).
paper-head-fuel-list = Verpflegung nach Abschnitt, je Stunde
paper-carbohydrate-h = Kohlenh. g/h
paper-fluid-h = Trinken ml/h
paper-sodium-h = Natrium mg/h
paper-caffeine-h = Koffein mg/h
paper-kcal-h = kcal/h
paper-head-ranges = Veröffentlichte Bereiche, zum Planen; nach Durst trinken
paper-range-kcal = Energie { $low } bis { $high } kcal/h: { $source }.
paper-range-carbohydrate = Kohlenhydrate { $low } bis { $high } g/h, bis etwa 90 mit gemischten Zuckern, wer es trainiert hat: { $source }.
paper-range-fluid = Trinken { $low } bis { $high } ml/h, nie ein Ziel: { $source }.
paper-range-sodium = Natrium: über { $most } mg je Liter können an langen heißen Tagen nötig sein: { $source }.
paper-range-caffeine = Koffein: bis 200 mg auf einmal, 400 mg am Tag, Erwachsene, nicht schwanger: { $source }.
paper-head-to-do = Vor dem Rennen
paper-to-buy = Kaufen bis { $day }
paper-to-charge = Laden bis { $day }
paper-to-test = Ausprobieren bis { $day }
paper-head-shopping = Einkaufen
paper-shop-food = { $food } (für { $place }, { $crew })
paper-head-required = Vom Rennen verlangt
paper-required = { $name }{ $thing ->
    [none] : IN KEINER LISTE
    [same] {""}
   *[other] : { $thing }
 }{ $place ->
    [none] {""}
   *[other] , erst ab { $place }
 }
paper-head-sleep = Schlaf und Füße
paper-who-sleeps = { $name } schläft { $from } bis { $to }
paper-feet = Schuhe aus und Füße ansehen: { $stops }
paper-feet-at = { $place } ({ $when })
paper-load-her = Vom Start an bei { $runner }
paper-load-bag = Beutel { $place }
paper-load-car = Im Auto: { $car }
paper-load-for = Für { $place }
paper-load-weight = : { $weight }{ $count ->
    [0] {""}
    [one] , ein Ding ohne Gewicht
   *[other] , { $count } Dinge ohne Gewicht
 }
paper-label = { $bib ->
    [none] {""}
   *[other] { $bib }{" – "}
 }{ $place }
paper-takes-goals = dauert B / C
paper-head-food-by-bag = Essen, bis zum nächsten Beutel oder zur Crew

## Das Briefing
paper-brief = Crew-Briefing
paper-brief-about = Vor der Anreise zu lesen
paper-part = Aufgabe
paper-head-who = Wer was macht
paper-head-house = Wie wir es machen
paper-house-time = Losfahren nach Blatt oder Nachricht, nicht nach Gefühl. Nachrichten sind neuer als Papier.
paper-house-hurry = Auf der Straße eilt niemand. Ein verpasstes Treffen fängt das nächste auf.
paper-house-cant = ‚Ich kann nicht‘ ist eine gute Antwort, wenn sie früh kommt: jemand anderes wird sofort gefragt.
paper-house-tired = Wer zum Fahren zu müde ist, sagt es und fährt nicht. Sie kann warten.
paper-house-seen = Sag, was du gesehen hast, wo und wann: da, weg, noch nicht hier. Eine Vermutung heißt Vermutung.
paper-house-help = Lebensgefahr: zuerst { $emergency }, dann die Rennleitung, dann die Crew.
paper-head-travel = Anreise
paper-head-beds = Betten
paper-head-entry = Anmeldung
paper-head-also = Außerdem
paper-head-rules = Regeln des Rennens
paper-head-recce = Fahrten, die vorher zu proben sind
paper-recce = Fahrt sie vor dem Rennen ab, im Dunkeln, wo es dann dunkel ist; tragt die Minuten ein und sagt sie im Chat: ‚die Fahrt zum Ziel dauert 40 min‘.
paper-stands-by-head = wer dafür einsteht
paper-driven-at = gefahren bis
paper-measured = gemessen
paper-nobody-yet = NOCH NIEMAND
paper-head-sleeps = Wer wann schläft

## Danach
paper-afterwards = wie es lief
paper-head-sections = Plan und Wirklichkeit nach Abschnitt
paper-head-stops = Halte
paper-planned-head = geplant
paper-took = gebraucht
paper-over = darüber
paper-from-to = { $from } – { $to }
paper-halves = Die zweite Hälfte des Wegs gegen die erste: { $fact } % Zeit; nach Plan { $planned } %.
paper-window-first = erste
paper-window-last = letzte
paper-head-windows = Wie gut die Zeitfenster waren
paper-windows-score = { $inside } von { $count } Ankünften lagen zwischen erster und letzter Zeit (8 von 10 sollen es); die wahrscheinliche Zeit lag um { $off } daneben, bei der Hälfte um weniger.
paper-likely-head = wahrscheinlich
paper-came = gekommen
paper-inside = darin
paper-inside-yes = ja, { $off }
paper-inside-no = NEIN, { $off }
paper-head-told = Nachrichten, und wie bald sie beantwortet wurden
paper-messages = Nachrichten
paper-asked-head = mit Frage
paper-answered = beantwortet
paper-how-soon = die Hälfte binnen
paper-slowest = langsamste
paper-head-written = Unterwegs geschrieben
paper-word = { $when } { $who }: { $words }
paper-head-log = Was an den Stopps protokolliert wurde
paper-when = wann
paper-logged = Protokolliert
paper-intake-carbohydrate = Kohlenhydrate: { $value } g in der Stunde laut Protokoll ({ $low } bis { $high } in den beiden Hälften des Rennens). Was niemand protokolliert hat, fehlt darin.
paper-intake-fluid = Flüssigkeit: { $value } ml in der Stunde laut Protokoll ({ $low } bis { $high } in den beiden Hälften des Rennens). Was niemand protokolliert hat, fehlt darin.
paper-head-next = Für den nächsten Plan
paper-next = Schreib es unter [[runners]] der nächsten Renndatei: { $line }
paper-head-questions = Drei Fragen an jede und jeden
paper-ask-well = Was lief gut?
paper-ask-wrong = Was ging schief, oder beinahe?
paper-ask-next = Was machst du das nächste Mal anders?
paper-all-stops = alle zusammen
