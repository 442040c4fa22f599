# What is told unasked. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## Notices: meetings
leave-soon = Mach dich bereit: fahr bis { $leave_by } los nach { $place } zu { $runner }, sei ab { $be_there } dort.
leave-soon-here = Mach dich bereit: sei ab { $be_there } an { $place }, um { $runner } zu treffen.
leave-now = Fahr jetzt los nach { $place } zu { $runner }: sei ab { $be_there } dort.
leave-now-by = Fahr bis { $leave_by } los nach { $place } zu { $runner }: sei ab { $be_there } dort.
leave-now-still = Abfahrt nach { $place } war { $leave_by }. Bei normaler Fahrt ab jetzt bist du um { $there } dort, bevor { $runner } wahrscheinlich kommt.
leave-now-late = Abfahrt nach { $place } war { $leave_by }. Bei normaler Fahrt kommst du vielleicht nach { $runner } an. Fahr wie immer: sicher ankommen ist wichtiger.
meeting-she-comes = { $runner } in { $place }: { $window }.
meeting-drive = Fahrt { $length }{ $from ->
    [none] .
   *[other] {" ab "}{ $from }.
 }
meeting-no-drive = Wie lange die Fahrt dauert, hat niemand bestätigt, darum gibt es keine Abfahrtszeit. Sag mir, wie lange sie dauert.
meeting-wait = Warte bis { $until }.
meeting-wait-short = Warte bis { $until }, dann weiter zum nächsten Treffen: { $odds }, dass { $runner } bis dahin gekommen ist.
meeting-kit = Mitbringen: { $kit }.
meeting-take-back = Dort wieder mitnehmen: { $kit }.
meeting-food = Essen: { $food }
meeting-if-missed = Falls verpasst: { $text }
meeting-no-signal = Kein Netz in { $place }.
be-there = Sei ab { $be_there } in { $place } für { $runner }.
move-on = Fahr weiter von { $place }: { $runner } ist sehr wahrscheinlich schon ungesehen durch.
move-on-closes = Fahr weg von { $place }: Der Zugang für die Crew schließt um { $until }. { $runner } wurde dort nicht gesehen.
unseen = Niemand hat { $runner } seit { $when } gesehen ({ $ago }).
stay = Bleib in { $place }: Niemand hat { $runner } seit { $when } gesehen ({ $ago }).
stay-go = Du kannst weiterfahren{ $next ->
    [none] {""}
   *[other] {" nach "}{ $next }
 }: { $names } { $count ->
    [one] bleibt
   *[other] bleiben
 } für { $runner } in { $place }.
stay-sought = Ein Alarm ist offen: Sie wird gesucht.
stay-until = Bis von ihr zu hören ist oder die Rennleitung sagt, wo sie ist. Wenn sie kommt, schreib ‚sie ist da‘.
stay-may-go = Weiterfahren{ $next ->
    [none] {" "}
   *[other] {" nach "}{ $next }{" "}
 }darf: { $names }.
stay-not-next = Fahr vorher nicht nach { $next } los.
move-on-next-other = Nächstes Treffen: { $place }, { $runner }.
move-on-next = Nächstes Treffen: { $place }.
window-moved = Neue Zeiten für { $place }: { $what }
window-moved-was = Vorher: { $was }.
window-moved-leave = fahr bis { $leave_by } los{ $was ->
    [none] {""}
   *[other] {" (vorher "}{ $was })
 }, sei ab { $be_there } dort, warte bis { $until }.
window-moved-there = sei ab { $be_there } dort, warte bis { $until }.
unreported-out = Niemand hat gemeldet, dass { $runner } { $place } verlassen hat. Schreib, wann sie los ist; ist sie noch bei dir, schreib ‚sie ist noch hier‘ und bleib.
meeting-lost = { $runner } in { $place } ist nicht mehr zu schaffen. Versuch es nicht.
meeting-lost-why = { $runner } in { $place }: { $window }.
lost-access-closed = Der Zugang für die Crew ist dort gesperrt oder schließt, bevor sie wahrscheinlich kommt.
lost-not-both = Dieselbe Crew schafft dieses Treffen und das davor nicht beide.
lost-too-late = Die Fahrt dauert länger, als Zeit bleibt.
lost-she-has-left = Sie ist dort { $when } aufgebrochen.
brief = Bevor das Netz endet: { $count ->
    [one] das nächste Treffen.
   *[other] die nächsten { $count } Treffen.
 }
brief-meeting = { $place }: { $runner } { $window }.
brief-times = Sei ab { $be_there } dort; fahr um { $until } weiter.
brief-leave = Fahr bis { $leave_by } los.
brief-signal = Netz gibt es wieder in { $place }.
brief-nothing-heard = Hörst du nichts: halte dich an diese Zeiten, dann fahr weiter. Kommt sie nicht, sag es der Rennleitung und deiner Crew, sobald du Netz hast.
brief-nothing-heard-plain = Hörst du nichts: halte dich an diese Zeiten, dann fahr weiter. Kommt sie nicht, sag es der Rennleitung, sobald du Netz hast.
wake-up = Aufstehen: fahr bis { $leave_by } los nach { $place } zu { $runner }.
wake-up-there = Aufstehen: sei ab { $be_there } in { $place } für { $runner }.
wake-up-answer = Antworte ‚wach‘, sonst wird jemand anderes gefragt.

## Notices: a driver, a car or a pacer has fallen out
uncovered = Nach { $place } fährt jetzt niemand zu { $runner }. Verhindert: { $who }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-still = Nach { $place } fährt noch immer niemand zu { $runner }. Verhindert: { $who }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-part = { $goes } { $count ->
    [one] ist
   *[other] sind
 } in { $place }, aber ohne { $who }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-pacer = Ab { $place } läuft niemand mit { $runner }. Verhindert: { $who }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-you-could = Du könntest: { $how }.
uncovered-first = „Ich fahre“ drücken, dann ist es deins; wer es zuerst tut, hat es.
uncovered-others = Es könnten: { $others }.
uncovered-other = { $who }, { $how }
uncovered-nobody = NIEMAND kann mehr rechtzeitig dort sein. { $runner } muss ohne auskommen.
uncovered-no-pacer = Niemand sonst kann mitlaufen. { $runner } läuft allein weiter.
uncovered-kit-in = Für dort, in { $car }: { $kit }.
uncovered-fetch = Hol es unterwegs, oder bring Ersatz mit.
uncovered-also = Auch offen: { $places }.
uncovered-also-at = { $place } (etwa { $when })
uncovered-kit = Das braucht sie dort: { $kit }.
uncovered-words = { $who } schreibt: „{ $words }“
uncovered-you = { $who } sagt, dass du nicht nach { $place } kommen kannst{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 } Du bekommst dafür kein „Jetzt losfahren“, andere werden gefragt.
uncovered-you-wrong = Stimmt das nicht, drück „Ich fahre“.
uncovered-you-drive = Du fährst jetzt nach { $place }: { $who } kann nicht.
uncovered-other-drives = Nach { $place } fährt jetzt { $driver }: { $who } kann nicht.
uncovered-without = Ihr fahrt ohne { $who } nach { $place }.
her-all = In { $place } ist niemand von deinen Leuten.
her-pacer = Ab { $place } läuft niemand mit dir: { $who } kann nicht.
her-kit = In { $place } ist nicht alles da.
uncovered-her-lacks = Nicht dort: { $kit }.
uncovered-her-before = Lass dir geben, was du brauchst, in { $place }: wer dich dort trifft, weiß Bescheid.
uncovered-her-nobody = Vorher trifft dich niemand von deinen Leuten. Frag an den Verpflegungsstellen und rechne mit dem, was du hast.
uncovered-tell = Sagt { $runner } in { $before }: { $what }.
uncovered-give = Gebt ihr vorher mit, was ihr davon habt: { $kit }.
lacks-all = von der Crew ist niemand in { $place }
lacks-pacer = ab { $place } läuft niemand mit, { $who } kann nicht
lacks-kit = in { $place } ist nicht alles da
could-leave-by = losfahren bis { $when }, { $drive }
could-now = jetzt los, dort etwa { $when }, { $drive }
could-estimated = jetzt los, dort etwa { $when }, { $drive }, geschätzt und von niemandem bestätigt
could-after = nach dem Treffpunkt davor, { $drive }
could-unknown = wie lange die Fahrt dauert, weiß niemand
could-drive = { $length } Fahrt{ $from ->
    [none] {""}
   *[other] {" von "}{ $from }
 }
could-odds = { $how }; { $odds }, dass { $runner } dann noch nicht weiter ist
could-gives-up = Dann verpasst du: { $places }.
alone = { $who }, zu Fuß mit { $runner } unterwegs, kann nicht weiter{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 } { $runner } ist jetzt vielleicht allein.
alone-ask = Frag { $who }, wo beide sind und wer was braucht{ $phone ->
    [none] .
   *[other] {": "}{ $phone }.
 }
alone-numbers = Verletzt: zuerst { $emergency }, dann { $name } { $phone }. Wer { $runner } als Nächstes trifft, achtet auf beide.
fell-out-car = das Auto
fell-out-driver = kann nicht fahren
fell-out-pacer = kann nicht laufen
fell-out-own-safety = nicht gesund oder verletzt
covered = { $who } fährt nach { $place } zu { $runner }, statt { $gone }.
covered-you = Du fährst nach { $place } zu { $runner }, statt { $gone }. Alle wissen es.
covered-her = { $who } kommt nach { $place }, statt { $gone }.
covered-times = Losfahren bis { $leave_by }, dort sein ab { $be_there }.
covered-be-there = Dort sein ab { $be_there }.
covered-leave-now = Fahr los, wenn du so weit bist; dort sein ab { $be_there }, wenn die Fahrt es zulässt. Fahr wie immer.
covered-back = { $who } { $count ->
    [one] fährt
   *[other] fahren
 } doch nach { $place } zu { $runner }, wie geplant.
covered-back-her = { $who } { $count ->
    [one] kommt
   *[other] kommen
 } doch nach { $place }, wie geplant.
covered-not-you = Du musst nicht fahren.
lost-uncovered = Dorthin fährt jetzt niemand: wer sollte, kann nicht kommen.

## Notices: a new version of the event file during the race
new-version = Der Plan hat sich für dich geändert (Fassung { $version }).
new-item = { $place }, { $runner }, { $what }: war { $was ->
    [none] nichts
   *[other] { $was }
 }, jetzt { $now ->
    [none] nichts
   *[other] { $now }
 }.
new-meeting = Neu: { $place }, { $runner }: { $what }.
new-meeting-gone = Nicht mehr deins: { $place }, { $runner } (war { $what }).
# The same for the runner, who is met.
new-met = Dort trifft dich jetzt jemand: { $place } ({ $what }).
new-met-gone = Dort trifft dich niemand mehr: { $place } (war { $what }).
new-post = Dein Posten: war { $was }, jetzt { $now }.
new-what-place = Ort
new-what-parking = Parkplatz
new-what-crew = wer fährt
new-what-car = Auto
new-what-from = Anfahrt ab
new-what-drive = Fahrt dorthin
new-what-kit = mitbringen
new-what-take-back = zurücknehmen
new-what-food = Essen
new-what-pacer = Begleitung
new-what-if-missed = falls verpasst
new-target = Ziel von { $runner }: war { $was ->
    [none] keines
   *[other] { $was }
 }, jetzt { $now ->
    [none] keines
   *[other] { $now }
 }.
new-kit-left = { $place }, { $runner }: in { $car }, das jetzt nicht mehr dorthin kommt: { $things }. Vorher übergeben.
new-time = { $place }, { $runner }: { $now ->
    [none] noch keine Abfahrtszeit, weil niemand die Fahrzeit bestätigt hat
   *[other] Abfahrt bis { $now }
 }{ $was ->
    [none] {""}
   *[other] {" "}(war { $was })
 }, da sein ab { $be_there }.
new-free = Du musst nirgends mehr hin.

## Notices: where she is
arrived = { $runner } ist in { $place } angekommen, { $when }, gemeldet von { $who }.
arrived-through = { $runner } ist ohne Halt durch { $place } gelaufen, { $when }, gemeldet von { $who }.
arrived-stop = Geplanter Halt: { $length }.
arrived-kit = Bereithalten: { $kit }.
arrived-next = Danach { $place }: { $window }.
left = { $runner } hat { $place } verlassen, { $when }, gemeldet von { $who }.
left-next = Als Nächstes { $place }: { $window }.
left-next-her = { $runner } als Nächstes in { $place }: { $window }.
finished = { $runner } ist im Ziel: { $when }, gemeldet von { $who }.
finished-crew = Sag Bescheid, wenn du sie bei dir hast (‚wir haben sie‘).
word-of-her = Wie es { $runner } geht, { $when }, gemeldet von { $who }: ‚{ $words }‘
word-rests = Pause seit { $since }{ $until ->
    [none] .
   *[other] {", wie gesagt wurde bis "}{ $until }.
 }
word-moves = Wieder unterwegs seit { $since }.
word-at = Sie ist in { $place }, dort seit { $since }.
word-no-rest = Keine Pause, soweit bekannt.
word-retired = Sie ist ausgeschieden, und noch niemand hat sie bei sich.
word-next = Als Nächstes für dich, { $place }: { $window }.
word-taken-back = Zurückgenommen: was über { $runner } gemeldet war, { $when }, gilt nicht mehr: ‚{ $words }‘
retired = { $runner } ist in { $place } ausgeschieden, { $when }, gemeldet von { $who }.
retired-nowhere = { $runner } ist ausgeschieden, { $when }, gemeldet von { $who }; wo, ist nicht bekannt.
retired-how = Grund: { $how }.
retired-words = Geschrieben wurde: ‚{ $words }‘
retired-asked = { $you ->
    [yes] Kannst du sie{ $place ->
        [none] {""}
       *[other] {" "}in { $place }
     } abholen? Du wirst zuerst gefragt: drück, wer fährt.
   *[no] Gefragt, sie{ $place ->
        [none] {""}
       *[other] {" "}in { $place }
     } abzuholen: { $who }{ $car ->
        [none] {""}
       *[other] {" "}({ $car })
     }.
 }
retired-drive = { $said ->
    [yes] Von { $from }
   *[no] Von { $from }, nach dem Plan
 }: { $length ->
    [none] Fahrzeit nicht bekannt.
   *[other] { $length }{ $sure ->
        [yes] .
       *[no] , geschätzt, von niemandem bestätigt.
     }
 }
retired-is-there = { $you ->
    [yes] { $said ->
        [yes] Du bist dort.
       *[no] Nach dem Plan bist du dort.
     }
   *[no] { $said ->
        [yes] Ist schon dort.
       *[no] Ist nach dem Plan schon dort.
     }
 }
retired-busy = Davor steht in { $place } ein Treffen mit einer anderen Läuferin an: sag Bescheid, wenn es nicht geht.
retired-else = Wenn nicht, als Nächstes: { $who }.
retired-goes = { $you ->
    [yes] Du holst { $runner }
   *[no] { $who } holt { $runner }
 }{ $place ->
    [none] {""}
   *[other] {" "}in { $place }
 } ab: dort etwa { $there }.
retired-where-not-said = Wo sie ist, wurde nicht gesagt. Zuletzt bekannt: { $fact } { $when }, gemeldet von { $who }.
retired-bring = Mitbringen: { $kit ->
    [none] {""}
   *[other] { $kit };{" "}
 }trockene Kleidung, eine Decke, etwas Warmes zu trinken.
retired-transport = Rücktransport des Veranstalters: { $words }
retired-no-car = An { $place } kommt kein Auto von euch: wie sie zu { $to } kommt oder dort abgeholt wird, sagt { $name } ({ $phone }).
retired-stay = Bleib dort und halt dich warm. Schreib mir, wenn jemand bei dir ist.
retired-no-pick-up = Noch niemand ist eingeteilt, sie zu holen. Wer fährt?
retired-in-hand = Sie ist bei uns: jemand hat sie bei sich.
retired-not-in-hand = Sie wird weiter überwacht, bis jemand sie bei sich hat. Schreib dann ‚wir haben sie‘.
retired-race-control = Die Rennleitung weiß es.
retired-has-her = { $who } hat { $runner } bei sich, { $when }.
retired-in-hand-taken-back = Zurückgenommen: niemand hat { $runner } bei sich. Sie wird wieder überwacht, bis jemand sie bei sich hat.
retired-waits-hand = Noch hat niemand gemeldet, { $runner } bei sich zu haben. Wer sie hat, schreibt ‚wir haben sie‘.
retired-waits-race-control =
    Die Rennleitung muss noch erfahren, dass { $runner } ausgeschieden ist. Sag du es ihr jetzt: { $name } { $phone }.
    Antworte ‚Rennleitung weiß es‘, wenn es getan ist.
retired-call-you = Du sagst es der Rennleitung: { $name } { $phone }. Antworte ‚Rennleitung weiß es‘, wenn es getan ist.
retired-call-other = { $caller } sagt es der Rennleitung; du musst dort nicht anrufen.
retired-tell-race-control = Die Rennleitung muss es wissen: { $name } { $phone }. Antworte ‚Rennleitung weiß es‘, wenn es getan ist.
how-own-choice = eigene Entscheidung
how-timed-out = Zeitlimit
how-withdrawn-by-medics-or-officials = von Sanitätern oder Rennleitung herausgenommen
how-did-not-start = nicht gestartet
how-not-said = noch nicht gesagt
in-hand = { $runner } ist bei uns: das sagt { $who }, { $when }.
in-hand-where = Wo: { $place }.
in-hand-nowhere = Wo, wurde nicht gesagt.
in-hand-words = { $who } schrieb: ‚{ $words }‘
in-hand-alarm = Der Alarm zu { $runner } bleibt trotzdem offen.
in-hand-calm =
    Zu { $runner } ist kein Alarm offen; du musst nichts tun und zu keinem Treffen mit ihr losfahren, bis sie weitergeht.
    Ob sie weitergeht, wurde nicht gesagt: eine Stunde lang löst ihr Schweigen keinen Alarm aus, danach wird sie überwacht wie vorher.
in-hand-still =
    Ist { $runner } noch bei dir? Zuletzt stammt das von { $when }, und ob sie weitergeht, hat niemand gesagt.
    Drück, was stimmt, oder schreib es. Ohne Antwort wird sie ab { $until } überwacht, als wäre sie weitergegangen.
in-hand-ask = Nachfragen: { $who } { $phone }.
cut-off-falling = Zeitlimit in { $place }, { $edge } bis { $cut_off }: Chance { $odds }, dass { $runner } es schafft, und sie sinkt.
cut-off-rising = Zeitlimit in { $place }, { $edge } bis { $cut_off }: Chance wieder { $odds }, dass { $runner } es schafft.
cut-off-latest = Für 9 Chancen von 10 muss sie { $place } bis { $when } verlassen haben.
cut-off-not-possible = Für 9 Chancen von 10 kann sie { $place } nicht mehr früh genug verlassen.
before-dark-crew = { $runner } ist womöglich vor ihrer Lampe im Dunkeln: dunkel ab { $dark }, und { $things } wartet erst bei { $place }: { $window }
before-dark-give-crew = Bringt sie ihr schon nach { $give }, { $when }: { $meets ->
    [none] dort trifft sie nach Plan niemand; sagt, wer hinfährt.
    [one] dort trifft sie { $who }. Gebt sie weiter, oder leiht ihr eine.
   *[other] dort treffen sie { $who }. Gebt sie ihnen mit, oder leiht ihr eine.
 }
before-dark-none-crew = Davor kommt kein Crewpunkt mehr im Hellen. Fahrt früh mit ihr nach { $place }; sagt den Leuten des Rennens unterwegs, dass sie kein Licht hat.
before-dark-here-crew = { $runner } ist gerade bei { $here }: gebt ihr dort ein Licht mit, bevor sie weitergeht.
before-dark-here-her = Du bist gerade bei { $here }: nimm von dort ein Licht mit, bevor du weitergehst.
before-dark-holders = Die Lampe ist bei { $who }, für das Treffen bei { $place }.
before-dark-her = Du bist womöglich vor deiner Lampe im Dunkeln: dunkel ab { $dark }, und { $things } wartet erst bei { $place }: { $window }
before-dark-give-her = Bitte bei { $give } um eine, { $when }{ $meets ->
    [none] {""}
    [one] : dort trifft dich { $who }
   *[other] : dort treffen dich { $who }
 }. Geh nicht ohne Licht ins Dunkle.
before-dark-none-her = Davor kommt kein Crewpunkt. Bitte an der nächsten Verpflegung um ein Licht; geh nicht ohne ins Dunkle.
edge-in = Ankunft
edge-out = Aufbruch
late = War { $runner } schon in { $place }? Sie ist später dran als erwartet.
late-window = Erwartet: { $window }.
late-answer = Ja, noch nicht, oder ist niemand dort, der sie sieht?
late-home = { $runner } ist spät dran in { $place }, aber nicht überfällig. Das ist kein Alarm.
tracker-quiet = Ihr Tracker hat seit { $when } ({ $ago }) nichts gesendet. Über sie sagt das nichts.
tracker-disagrees = Jemand und ihr Tracker widersprechen sich: { $who } sah sie in { $place } { $seen }; der Tracker war { $when } { $km ->
    [none] abseits der Strecke
   *[other] bei { $km }
 }.
stands = Der Tracker von { $runner } hat sich seit { $length } nicht bewegt{ $place ->
    [none] {""}
   *[other] {", bei "}{ $place }
 }{ $km ->
    [none] {""}
   *[other] {", "}{ $km }
 }. Das ist länger als fast jede Pause.
stands-where = Ort: { $at }. Von dort sendet er seit { $since }, zuletzt { $until }.
stands-do = Weißt du, warum? Ruht sie, schreib ‚sie ruht‘; hast du sie gesehen, schreib wo und wann. Der Tracker kann auch ohne sie irgendwo liegen.
late-home-do = Sieh in den Ergebnissen des Rennens nach oder frag { $name }, { $phone }: Ist sie durch { $place } gekommen?
late-home-write = Wenn ja, schreib es hier mit der Uhrzeit, etwa ‚durch { $place } 02:10‘.
late-home-next = Wenn nichts von ihr zu hören ist, kommt der Alarm um { $when }.
sweep = SCHLUSSLÄUFER DURCH { $place }, und { $runner } wurde dort nicht gesehen.
race-change-start-delayed = Der Start verschiebt sich{ $amount ->
    [none] {""}
   *[other] {" um "}{ $amount }
 }{ $until ->
    [none] .
   *[other] {", auf "}{ $until }.
 }
race-change-wave-moved = Der Start von { $runner } hat sich verschoben{ $until ->
    [none] .
   *[other] {" auf "}{ $until }.
 }
race-change-runners-held = Die Läufer werden angehalten{ $place ->
    [none] {""}
   *[other] {" in "}{ $place }
 }{ $until ->
    [none] {", bis auf Weiteres."}
   *[other] {" bis "}{ $until }.
 }
race-change-runners-released = Die Läufer dürfen weiter{ $place ->
    [none] .
   *[other] {" in "}{ $place }.
 }
race-change-race-ended-early = Die Rennleitung hat das Rennen beendet{ $place ->
    [none] .
   *[other] {", ab "}{ $place }.
 }
race-change-rerouted = Die Strecke wurde geändert{ $place ->
    [none] .
   *[other] {" bei "}{ $place }.
 }
race-change-cut-off-moved = Das Zeitlimit in { $place }{ $edge ->
    [none] {""}
   *[other] {" ("}{ $edge }{")"}
 } wurde verlegt{ $was ->
    [none] {""}
   *[other] {" von "}{ $was }
 }{ $until ->
    [none] .
   *[other] {" auf "}{ $until }.
 }
race-change-access-closed = Der Zugang für die Crew in { $place } ist gesperrt{ $until ->
    [none] .
   *[other] {" bis "}{ $until }.
 } Fahr nicht hin.
race-change-access-opened = Der Zugang für die Crew in { $place } ist wieder offen.
race-change-other = Neues von der Rennleitung: { $change }.
race-change-words = { $words }
race-change-all-anew = Alle Zeiten sind neu ausgerechnet.
race-ended-crew =
    Die geplanten Treffen gelten nicht mehr, und es kommt kein Aufruf zum Losfahren mehr.
    Wo { $runner } abzuholen ist, sagt die Rennleitung oder sie selbst: frag, bevor du fährst, { $name } { $phone }.
    Wer sie hat, schreibt ‚wir haben sie‘; bis dahin wird sie überwacht.
race-ended-runner = Wohin du jetzt gehst, sagt die Rennleitung: { $name } { $phone }. Sag deiner Crew, wo sie dich abholt.
race-change-who = Gemeldet von { $who }.

## Notices: corrections and doubts
correction-moved = Berichtigung zu { $runner }: { $what } { $now_at }, nicht { $was_at }. Von { $by }.
correction-now = Berichtigung zu { $runner }: { $what }, jetzt { $now_at }. Von { $by }.
correction-taken-back = Zurückgenommen zu { $runner }: { $what }; das gilt nicht mehr. Von { $by }.
correction-taken-back-at = Zurückgenommen zu { $runner }: { $what } { $was_at }; das gilt nicht mehr. Von { $by }.
correction-watch-on = Sie wird von jetzt an wieder überwacht.
correction-race-control = Falls die Rennleitung hörte, dass ihr Rennen vorbei ist: sag ihr jetzt, dass es nicht so ist, { $name } { $phone }.
unconfirmed = Bitte bestätigen, { $runner }: { $fact }, { $when }? Gemeldet von { $who }.
unconfirmed-seen = Bitte bestätigen: wurde { $runner } unterwegs gesehen, { $when }? Gemeldet von { $who }.
unconfirmed-words = Geschrieben: ‚{ $words }‘
unconfirmed-why = Es zählt noch nicht: { $doubt }.
doubt-future = die Zeit liegt in der Zukunft
doubt-unknown-runner = diese Läuferin gibt es hier nicht
doubt-unknown-point = diesen Punkt gibt es auf ihrer Strecke nicht
doubt-before-start = die Zeit liegt vor dem Start
doubt-retired = sie war davor als ausgeschieden gemeldet
doubt-finished = sie war davor als im Ziel gemeldet
doubt-out-before-in = der Aufbruch liegt vor der Ankunft
doubt-behind = das liegt weiter hinten, als sie schon war
doubt-too-fast = so schnell läuft niemand
doubt-closed = ihr Rennen war da schon vorbei
doubt-off-course = der Ort liegt weit neben der Strecke
doubt-vehicle = es bewegt sich wie ein Auto: Tracker im Auto?
doubt-parked = dort parken Autos: Tracker im Auto?
doubt-other-post = das kommt von jemandem, der an einem anderen Punkt hilft
doubt-supporter = es kommt von einem Fan
doubt-guessed = ein Teil davon ist aus dem Text erschlossen
doubt-not-named = es sagt nicht, für welche Läuferin
doubt-does-not-fit = es passt nicht zu dem, was vorher gemeldet war
doubt-none = es muss bestätigt werden

## A cut-off missed: the fact, the rule, who decides
past-cut-off = { $fact }. Zeitlimit { $there ->
    [yes] dort
   *[no] in { $place }
 }: { $edge } bis { $cut_off }.
past-cut-off-in-after-it = { $runner } kam { $when } in { $place } an
past-cut-off-out-after-it = { $runner } hat { $place } { $when } verlassen
past-cut-off-there-after-it = { $runner } war { $when } noch in { $place }
past-cut-off-not-in-by-it = { $seen ->
    [none] { $runner } war { $when } noch nicht in { $place }
   *[other] { $runner } war { $when } noch in { $seen }
 }
past-cut-off-not-reported-out = { $runner } kam { $when } in { $place } an, und niemand hat gemeldet, dass sie weiter ist
past-cut-off-told-by = Gemeldet von { $who }.
past-cut-off-rule = Nach der Regel endet ihr Rennen dort; die Rennleitung entscheidet. Noch hat niemand gesagt, ob { $runner } weitermacht.
past-cut-off-unsure = Vielleicht ist sie rechtzeitig ungesehen weiter. Wenn nicht, entscheidet die Rennleitung, ob { $runner } weitermacht.
past-cut-off-you-run = Bleib am Punkt oder beim nächsten Streckenposten, bis du mit der Rennleitung gesprochen hast: { $name } { $phone }. Sag mir dann, ob du weitermachst.
past-cut-off-stay = Bleib bei ihr. Frag die Leute vom Rennen dort oder { $name } { $phone } und drück dann, was sie sagen.
past-cut-off-ask = Du fragst nach: { $name } { $phone }. Drück dann, was sie sagen.
past-cut-off-decide = Du entscheidest: drück, was gilt.
past-cut-off-wait = Nachfragen sollen: { $who }. Bleib, wo du bist, bis du etwas hörst; sie wird weiter überwacht.
past-cut-off-nobody = Frag die Rennleitung: { $name } { $phone }. Bleib, wo du bist, bis es klar ist; sie wird weiter überwacht.
past-cut-off-if-let-on = Nur wenn { $runner } weiterdarf: bis { $leave_by } losfahren nach { $place }.
past-cut-off-over-goes-on = { $runner } macht nach dem Zeitlimit in { $place } weiter: { $seen ->
    [none] { $who } sagt es, { $when }.
   *[other] gesehen in { $seen }, { $when }.
 } Ihre späteren Punkte gelten wieder.
past-cut-off-over-moved = { $runner } hat das Zeitlimit in { $place } nicht verpasst: es gilt jetzt { $edge } bis { $cut_off }. Ihre späteren Punkte gelten wieder.
past-cut-off-over-wrong = Zurückgenommen: { $runner } hat das Zeitlimit in { $place } nicht verpasst ({ $edge } bis { $cut_off }). Die Meldung war falsch.
button-goes-on = Sie macht weiter
button-race-over = Ihr Rennen ist vorbei

## Said to have retired
unconfirmed-over = Ist { $runner }{ $place ->
    [none] {""}
   *[other] {" "}in { $place }
 } ausgeschieden? { $who } hat es von jemandem gehört, { $when }.
unconfirmed-over-asks = Nicht bestätigt: { $runner } wird weiter überwacht wie bisher. Weißt du es von ihr selbst oder siehst du sie dort? Dann drück.
alarm-past-cut-off = FAKT: { $limit } Vielleicht hat die Rennleitung ihr Rennen beendet: dort zuerst fragen.
alarm-said-over = Soll ihr Rennen beendet haben, NICHT BESTÄTIGT: { $fact }, { $when } ({ $ago }), { $hearsay ->
    [yes] { $who } hat es von jemandem gehört
   *[no] gemeldet von { $who }
 }: ‚{ $words }‘
said-over-seen = { $runner } ist seither gesehen worden{ $place ->
    [none] {""}
   *[other] : { $place }
 }, { $when }, gemeldet von { $who }.
said-over-was = Dass sie ausgeschieden sein soll ({ $when }){ $words ->
    [none] {""}
   *[other] {" "}‚{ $words }‘
 }, gilt nicht.
doubt-hearsay = von jemand anderem gehört
fresh-said-over = Soll ausgeschieden sein{ $place ->
    [none] {""}
   *[other] {" "}in { $place }
 }, { $when }, { $hearsay ->
    [yes] { $who } hat es von jemandem gehört
   *[no] gemeldet von { $who }
 }; nicht bestätigt{ $words ->
    [none] .
   *[other] : ‚{ $words }‘
 }
noted-hearsay = Nur von jemandem gehört: { $runner } ist ausgeschieden{ $place ->
    [none] {""}
   *[other] {" "}in { $place }
 }. Es zählt noch nicht; sie wird überwacht wie bisher.
noted-hearsay-asked = Gefragt: { $names }.
ask-hearsay = Weißt du es von ihr selbst, oder hast du sie dort gesehen? Dann drück.
button-from-her = Ich weiß es von ihr
position-yours = Als dein Ort notiert{ $place ->
    [none] {""}
   *[other] : { $place }
 }, nicht als der von { $runner }.
says-to-you = { $who } lässt sagen: ‚{ $words }‘
says-back = { $who } nimmt das zurück: ‚{ $words }‘
says-picture = { $back ->
    [yes] { $who } nimmt ein Bild zurück{ $words ->
        [none] .
       *[other] : ‚{ $words }‘
    }
   *[no] { $who } schickt ein Bild{ $words ->
        [none] .
       *[other] : ‚{ $words }‘
    }
}
picture-where = { $page ->
    [none] Das Bild ist auf der Seite des Rennens, im Chat.
   *[other] Das Bild: { $page }
}
elsewhere-told = { $who } will sich woanders treffen als { $place }: ‚{ $words }‘
elsewhere-unchanged = Am Plan ist nichts geändert. Sprecht euch ab; wer den Plan führt, kann ihn ändern.
swap-asked = { $who } bittet dich, für { $runner } zu übernehmen, { $place }: ‚{ $words }‘
swap-window = Sie ist wahrscheinlich { $window } dort.
swap-be-there = Dort sein ab { $when }.
swap-refused = { $who } kann nicht, { $place }. Es bleibt bei dir.
reminder = Du wolltest erinnert werden ({ $when }): ‚{ $words }‘
awaited = { $runner } { $fact }, { $when } (gemeldet von { $by }).
awaited-soon = { $runner } in { $place }: { $window }.
awaited-unseen = { $runner } ist an { $place } vorbei: Dort hat sie niemand gemeldet, und sie wurde gesehen in { $then }.
awaited-over = Das Rennen ist für { $runner } zu Ende, bevor sie { $edge ->
    [out] { $place } verlassen hat
   *[in] in { $place } angekommen ist
}.
awaited-asked = Das wolltest du wissen ({ $when }): ‚{ $words }‘
# -- nach dem Rennen
look-back = Rückblick auf { $runner } bei { $event }, vorbei { $when }, damit das nächste Rennen besser wird. Drei Fragen:
look-back-how = Antworte auf jede in einer Zeile, die mit ihrer Nummer beginnt, wie ‚3 früher losfahren‘. Was du schreibst, steht auf der Seite über das Rennen.
