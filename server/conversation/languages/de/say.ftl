# Times, answers, replies, buttons. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

# For dates and numbers.
locale = de

## Times, lengths, places
both-clocks = { $there } (deine Uhr: { $here })
window = etwa { $likely } ({ $early } bis { $late })
window-over = war erwartet für { $likely } ({ $early } bis { $late }), von dort ist nichts gemeldet
window-there = dort seit { $likely }
window-set = { $likely }
window-due = etwa { $likely }, jederzeit von jetzt bis { $late }
window-open = jederzeit von jetzt bis { $late }
window-stood = etwa { $likely } ({ $early } bis { $late })
window-own = , deine Uhr { $likely } ({ $early } bis { $late })
window-own-over = , deine Uhr { $likely } ({ $early } bis { $late })
window-own-there = , deine Uhr { $likely }
window-own-set = , deine Uhr { $likely }
window-own-open = , deine Uhr spätestens { $late }
window-own-due = , deine Uhr { $likely }, spätestens { $late }
window-short = { $likely } ({ $early } bis { $late })
window-how = So liest du 14:35 (14:10 bis 15:20): etwa 14:35; 1-mal in 10 kommt sie vor 14:10, 1-mal in 10 nach 15:20. ‚Warum?‘ erklärt es wieder.
duration-none = unter einer Minute
duration-min = { $minutes } min
duration-h = { $hours } h
duration-h-min = { $hours } h { $minutes } min
ago = vor { $length }
in-time = in { $length }
just-now = gerade eben
km = { $number } km
miles = { $number } Meilen
odds-under = unter 1 von 20
odds-over = über 19 von 20
odds-about = etwa { $tenths } von 10
degrees = { $lat } { $north ->
    [north] Nord
   *[south] Süd
 }, { $lon } { $east ->
    [east] Ost
   *[west] West
 }
utm-too = (UTM { $utm })
nobody = niemand
somebody = jemand

## Kinds of check-in as facts: 'out of Mill'
fact-in = in { $place } angekommen
fact-out = { $place } verlassen
fact-through = ohne Halt durch { $place }
fact-position = gesehen, { $place }
fact-resting = macht Pause, { $place }
fact-moving-again = wieder unterwegs, { $place }
fact-asked-for-help = hat um Hilfe gebeten, { $place }
fact-retired = ausgeschieden, { $place }
fact-in-hand = bei uns, { $place }
fact-sweep-through = Schlussläufer durch { $place }
fact-not-here-yet = noch nicht in { $place }
fact-other = { $kind } bei { $place }
fact-in-nowhere = angekommen, Ort nicht genannt
fact-out-nowhere = aufgebrochen, Ort nicht genannt
fact-through-nowhere = ohne Halt durchgelaufen, Ort nicht genannt
fact-position-nowhere = gesehen, Ort nicht genannt
fact-resting-nowhere = macht Pause, Ort nicht genannt
fact-moving-again-nowhere = wieder unterwegs, Ort nicht genannt
fact-asked-for-help-nowhere = hat um Hilfe gebeten, Ort nicht genannt
fact-retired-nowhere = ausgeschieden, Ort nicht genannt
fact-in-hand-nowhere = bei uns, Ort nicht genannt
fact-sweep-through-nowhere = Schlussläufer durch, Ort nicht genannt
fact-not-here-yet-nowhere = noch nicht da, Ort nicht genannt
place-km = { $km } nach dem Start
place-nowhere = Ort nicht genannt

## How fresh
fresh = Zuletzt bekannt: { $fact }, { $when }, gemeldet von { $who } ({ $ago }).
fresh-nothing = Von { $name } ist noch nichts gemeldet.
fresh-before = { $name } ist noch nicht gestartet.
fresh-doubted = { $count ->
    [one] Eine Meldung ist noch nicht bestätigt und zählt nicht.
   *[other] { $count } Meldungen sind noch nicht bestätigt und zählen nicht.
 }
fresh-blind = AUSGEFALLEN seit { $when }: { $what ->
    [none] unsere eigene Leitung
   *[other] { $what }
 }. Es kann etwas fehlen.
fresh-held = Die Rennleitung hält die Läufer an. Die Zeiten zählen ab der Freigabe.
fresh-held-until = Die Rennleitung hält die Läufer bis { $until } an.
fresh-ended = Die Rennleitung hat das Rennen beendet, { $when }{ $place ->
    [none] .
   *[other] {", ab "}{ $place }.
 }
fresh-sharper = Mit einer Meldung aus { $name } könnte ich es genauer sagen.

## Marks before a notice
mark-exercise = [ÜBUNG, nichts ist passiert] { $text }
mark-delayed = [verspätet, fällig { $when }] { $text }
mark-repeat = [vielleicht doppelt{ $short ->
    [0] {""}
   *[other] {", Nr. "}{ $short }
 }] { $text }
mark-number = (Nr. { $short })
# In a mail, which has no buttons.
mail-answer = Zum Antworten diese Seite öffnen und dort drücken: { $link }
mail-answer-note = Der Link antwortet als du, bis { $until }: gib ihn nicht weiter. Das Öffnen allein ist noch keine Antwort. Eine Antwort auf diese Mail liest niemand.
mail-no-page = Eine Antwort auf diese Mail liest niemand, und es gilt als unbeantwortet, bis du im Chat oder auf der Seite antwortest.{ $phone ->
    [none] {""}
   *[other] { " " }Wenn du beides nicht hast, ruf { $name } an: { $phone }.
}

## Answers
point-next = { $runner } in { $place }: { $window }.
point-reached = { $runner } ist { $when } in { $place } angekommen{ $left ->
    [none] .
   *[other] {" und hat es "}{ $left }{" verlassen."}
 }
point-left = { $runner } hat { $place } { $when } verlassen.
point-through = { $runner } ist { $when } durch { $place } gelaufen.
point-is-in = { $runner } ist seit { $when } in { $place }.
point-odds = Das gilt, falls sie dort ankommt: Chance { $odds }.
point-odds-first = Dass { $runner } überhaupt nach { $place } kommt: Chance { $odds }.
point-if = Falls sie hinkommt: { $window }.
point-planned = Plan: { $when } ({ $gap }).
gap-late = { $length } Rückstand
gap-early = { $length } Vorsprung
gap-none = im Plan
no-more-points = Vor { $runner } liegt kein Punkt mehr: { $going }.
going-before-the-start = noch nicht gestartet
going-moving = unterwegs
going-at-a-point = an einem Punkt
going-resting = in einer Pause
going-retired = ausgeschieden
going-retired-in-hand = ausgeschieden, bei uns
going-finished = im Ziel
going-closed = im Ziel, bei ihrer Crew
no-forecast = Für { $place } habe ich keine Zeit.
where-between = { $runner }, zuletzt bekannt: { $fact }, { $when }, gemeldet von { $who } ({ $ago }).
where-seen = { $runner } wurde zuletzt { $when } gesehen, { $place }, gemeldet von { $who } ({ $ago }).
where-estimate = Schätzung, nicht gesehen: zwischen { $low } und { $high } auf der Strecke, am ehesten bei { $likely }.
where-estimate-near = Schätzung, nicht gesehen: nahe { $likely } auf der Strecke.
where-legs = Das liegt zwischen { $from } und { $to }.
where-at = { $runner } ist in { $place }, seit { $when }, gemeldet von { $who } ({ $ago }).
where-gone-on = Niemand hat gemeldet, dass sie dort aufgebrochen ist; Chance { $odds }, dass sie weitergegangen ist.
where-ended = { $runner }: { $going }.
gap-answer-late = { $runner } liegt etwa { $length } hinter dem Plan. { $place }: { $window }.
gap-answer-early = { $runner } liegt etwa { $length } vor dem Plan. { $place }: { $window }.
gap-answer-none = { $runner } liegt im Plan. { $place }: { $window }.
gap-fact = Ankunft in { $place } { $when }: dort { $gap }.
gap-none-known = Es gibt keine Planzeit zum Vergleich.
supposed-slower = Läuft { $runner } ab hier { $percent } % langsamer: { $place } { $window }.
supposed-faster = Läuft { $runner } ab hier { $percent } % schneller: { $place } { $window }.
supposed-leaving = Bricht { $runner } um { $when } auf: { $place } { $window }.
supposed-later = Braucht { $runner } { $length } mehr: { $place } { $window }.
supposed-sooner = Braucht { $runner } { $length } weniger: { $place } { $window }.
supposed-on-the-move = { $runner } ist unterwegs, an keinem Punkt: so steht es jetzt.
supposed-only = Nur ausgerechnet: niemand hat etwas davon gehört, nichts ist geändert.
stop-over = { $runner } war { $length } in { $place } ({ $from } bis { $to }){ $gap ->
    [none] .
   *[other] {", "}{ $gap }.
 }
stop-over-plan = geplant { $length }
stop-on = { $runner } ist noch in { $place }, seit { $from } (bisher { $length }){ $gap ->
    [none] .
   *[other] {", "}{ $gap }.
 }
stop-through = { $runner } ist { $when } ohne Halt durch { $place } gelaufen.
stop-half = { $runner } in { $place }: Ankunft { $from }, Aufbruch { $to }. Eines von beiden fehlt, also ist auch die Dauer nicht bekannt.
stop-none = Von { $runner } ist noch kein Halt gemeldet.
not-reported = nicht gemeldet
cut-off-answer = { $place }, { $edge } bis { $when }: Chance { $odds }, dass { $runner } es schafft.
cut-off-split = Rechtzeitig, wenn sie weitergeht: { $odds }; dass sie bis dorthin weitergeht: { $going }.
cut-off-line = { $place }, { $edge } bis { $when }: Chance { $odds }.
cut-off-more = Danach:
cut-offs-none = Für { $runner } gibt es kein Zeitlimit mehr.
missed-seen-out = Ja: { $runner } hat { $place } { $when } verlassen.
missed-seen-in = Nein: { $runner } ist seit { $when } in { $place }; niemand hat gemeldet, dass sie weiter ist.
missed-gone-on = Vielleicht: { $runner } war um { $when } in { $place }, niemand hat gemeldet, dass sie weiter ist; Chance { $odds }, dass sie fort ist.
missed-odds-high = Wohl ja: Chance { $odds }, dass { $runner } { $place } schon verlassen hat.
missed-odds-even = Kann sein: Chance { $odds }, dass { $runner } { $place } schon verlassen hat.
missed-odds-low = Wohl nicht: Chance { $odds }, dass { $runner } { $place } schon verlassen hat.
until-heard = zur nächsten Nachricht von ihr
wait-advice-wait = Warte{ $until ->
    [none] .
   *[other] {" bis "}{ $until }.
 }
wait-advice-go = Fahr weiter{ $next ->
    [none] .
   *[other] {" nach "}{ $next }.
 }
wait-expected = { $runner } in { $place }: { $window }.
wait-next-leave = Fahr bis { $leave_by } los nach { $next }.
people-line = { $name }: { $parts }{ $where ->
    [none] {""}
   *[other] {", "}{ $where }
 }.
people-at = in { $place } seit { $when }
people-bound = auf dem Weg nach { $place }, ab { $when } dort
people-bound-untimed = auf dem Weg nach { $place }
people-unreached = meine Nachrichten kommen nicht an: ruf an
people-phone = Telefon { $phone }
people-car = { $car }
people-none = Soweit bekannt, ist niemand in { $place }.
people-nobody = Sonst ist niemand dabei, den du sehen darfst.
people-head = { $count ->
    [one] Eine Person:
   *[other] { $count } Personen:
 }
numbers = Lebensgefahr: zuerst { $emergency }. { $name }: { $phone }.
bring = Nach { $place } für { $runner } mitbringen: { $kit }.
bring-none = Für { $runner } steht in { $place } nichts auf der Liste.
bring-safety = Auf keinen Fall ohne: { $kit }.
bring-car = Im Wagen { $car }: { $items }.
bring-food = Essen: { $food }
bring-dark = Sie ist dort wohl im Dunkeln.
take-back = In { $place } zurücknehmen: { $kit }.
take-back-none = In { $place } ist nichts zurückzunehmen.
food = { $runner } in { $place }: { $food }
food-carry = Mitzunehmen bis { $place } ({ $length } bei Ziel B): etwa { $things }.
food-bottles = { $count ->
    [one] eine Flasche zu einem halben Liter
   *[other] { $count } Flaschen zu einem halben Liter
 }
food-none = Für { $runner } steht in { $place } nichts zu essen oder trinken.
fuel = Ab dort: { $words }
fuel-figures = Je Stunde: { $figures }. Nach Durst trinken.
fuel-kcal = { $amount } kcal
fuel-carbohydrate = { $amount } g Kohlenhydrate
fuel-fluid = Flaschen für { $amount } ml
fuel-sodium = { $amount } mg Natrium
fuel-caffeine = { $amount } mg Koffein
leave = Fahr bis { $leave_by } los nach { $place }; sei ab { $be_there } dort.
leave-lost = { $runner } ist in { $place } nicht mehr zu treffen. { $why }
leave-over = Abfahrt nach { $place } war { $leave_by }. Fahr wie immer: sicher ankommen ist wichtiger.
leave-ended = Kein Treffen und keine Abfahrtszeit gilt mehr. Wo sie abzuholen ist, sagt die Rennleitung oder sie selbst: frag, bevor du fährst.
leave-unknown = Noch keine Abfahrtszeit nach { $place }: die Fahrt hat niemand bestätigt. Sei ab { $be_there } dort.
leave-these = Das gilt für { $crew }{ $from ->
    [none] .
   *[other] {", ab "}{ $from }.
 }
other-car = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 }: Abfahrt bis { $leave_by }{ $from ->
    [none] .
   *[other] {" ab "}{ $from }.
 }
other-car-unknown = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 }: keine Abfahrtszeit, die Fahrt{ $from ->
    [none] {""}
   *[other] {" ab "}{ $from }
 } ist nicht bestätigt.
other-car-stays = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 }: schon bei { $place }, keine Fahrt.
other-car-lost = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 }: schaffen es nicht nach { $place }.
leave-on-way = Du bist seit { $left } unterwegs nach { $place }; sei ab { $be_there } dort.
leave-there = Du bist schon in { $place }.
leave-not-you = Für { $crew }, nicht für dich:
leave-none = Es gibt kein Treffen mehr, zu dem du fahren musst.
drive = Fahrt nach { $place }: { $length }{ $walk ->
    [none] {""}
   *[other] {", dann "}{ $walk }{" zu Fuß"}
 }.
drive-from = Von { $from }.
drive-estimated = Niemand hat das bestätigt, darum gibt es danach keine Abfahrtszeit.
drive-unknown = Zur Fahrt nach { $place } ist nichts eingetragen.
meeting = Als Nächstes: { $place }, { $runner } { $window }.
ride = Nach { $place } zu { $runner }: { $crew }{ $car ->
    [none] {""}
   *[other] {", "}{ $car }
}{ $from ->
    [none] {""}
   *[other] {", ab "}{ $from }
}. { $how ->
    [stays] Schon dort und bleibt.
    [open] Ab { $be_there } dort; keine Abfahrtszeit, die Fahrt ist nicht bestätigt.
   *[leave] Abfahrt bis { $leave_by }, ab { $be_there } dort.
}
ride-nobody = Für das Treffen mit { $runner } in { $place } ist niemand eingetragen.
ride-none = { $place ->
    [none] Es gibt kein Treffen mit { $runner } mehr, zu dem jemand fährt.
   *[other] In { $place } ist kein Treffen mit { $runner } geplant oder mehr offen, also ist niemand für die Fahrt eingetragen.
}
meeting-who = Es fahren: { $crew }{ $car ->
    [none] .
   *[other] {", "}{ $car }.
 }
meeting-way = { $place }, Parken: { $parking }{ $walk ->
    [none] .
   *[other] {", dann "}{ $walk }{" zu Fuß."}
 }
meeting-way-unknown = Wie man nach { $place } kommt, ist nicht eingetragen.
meeting-parking = Parken: { $parking }{ $walk ->
    [none] .
   *[other] {", dann "}{ $walk }{" zu Fuß."}
 }
meeting-hours = Für die Crew offen { $hours }.
hours-both = von { $opens } bis { $closes }
hours-from = ab { $opens }
hours-to = bis { $closes }
meeting-after = Danach { $place }: { $window }.
meeting-none = Es gibt kein Treffen mit { $runner } mehr.
dark-yes = Ja, in { $place } ist es dunkel, wenn { $runner } kommt: { $window }.
dark-no = Nein, in { $place } ist es hell, wenn { $runner } kommt: { $window }.
plan-says-nothing = { $words ->
    [none] Das steht nicht im Plan. Bekannt ist:
   *[other] Über ‚{ $words }‘ sagt der Plan nichts. Bekannt ist:
}
time-left = Noch { $length }, bis du nach { $place } losmusst. Wofür das reicht, sagt der Plan nicht.
time-left-unknown = Für { $place } gibt es keine Abfahrtszeit, darum kann ich nicht sagen, wie viel Zeit bleibt.
time-left-none = Vor { $place } bleibt keine Zeit mehr: die Abfahrtszeit ist vorbei.
time-own = Ob dafür Zeit ist, sagt der Plan nicht. Deine Grenzen:
weather-unknown = Wie das Wetter wird, sagt der Plan nicht: frag den Wetterdienst oder die Rennleitung.
leave-there-unknown = Ob dort etwas abgegeben oder zurückgelassen werden darf, sagt der Plan nicht. Frag die Rennleitung: { $name } { $phone }.
leave-there-crew = In { $place } trifft sie ihre Crew: { $crew }.
leave-there-no-crew = In { $place } ist kein Treffen mit der Crew geplant.
catch-up = Seit { $when }: { $count ->
    [one] eine Nachricht an dich.
   *[other] { $count } Nachrichten an dich.
 }
catch-up-nothing = Seit { $when } ging nichts an dich.
catch-up-line = { $when }: { $text }
catch-up-waits = { $when }, WARTET NOCH AUF DEINE ANTWORT (Nr. { $short }): { $text }
dark-unknown = Ob es in { $place } hell ist, weiß ich nicht.
heard = { $runner }: { $fact }, { $when }, gemeldet von { $who } ({ $ago }).
how-she-is = { $who }, { $when } ({ $ago }): ‚{ $words }‘
how-she-is-none = Noch hat niemand geschrieben, wie es { $runner } geht.
how-help = Der Hilferuf zu { $runner } von { $when } ist noch offen: ‚{ $words }‘
plan-head = Plan von { $runner }, Ankunft (Ziel B), A bis C:
plan-row = { $place } ({ $km }): { $times }{ $was ->
    [none] {""}
   *[other] {", war "}{ $was }
 }{ $stop ->
    [none] {""}
   *[other] {", Halt "}{ $stop }
 }
card-box = ■ WARNZEICHEN. { $red_line }
card-box-flag = ■ { $flag }
card-box-end = ■ Unsicher? Anrufen.
card = Zuerst versuchen, wenn nichts davon zutrifft: { $tries }.
card-red = { $trouble }. SANITÄTER holen, und sie wartet dort, wenn: { $flags }.
paper-card-red = SANITÄTER, und sie wartet dort, wenn: { $flags }.
card-call = Anrufen: { $call }
picture-dark = dunkel
picture-row = { $place } ({ $km }): { $times }{ $dark ->
    [none] {""}
   *[other] {", "}{ $dark }
 }
cards-which = Welche? Frag zum Beispiel ‚was tun bei Übelkeit‘.
cards-line = - { $trouble }
cards-none = Dafür ist keine Karte geschrieben.
cards-medical = Eine Karte erinnert nur: Sanitäter und Rennärzte entscheiden.

## Answers: who knows, towards her, how the runner stands, goals
told-none = Zu { $runner } ist kein Alarm offen.
told-held = { $holder } hat den Alarm zu { $runner } ({ $kind }, seit { $since }){ $again ->
    [none] .
   *[other] {"; sieht wieder nach: "}{ $again }.
 }
told-not-held = Den Alarm zu { $runner } hat noch niemand übernommen ({ $kind }, seit { $since }).
told-answered = { $name }: gefragt { $when }, Antwort ‚{ $answer }‘ { $at }.
told-asked = { $name }: gefragt { $when }, noch keine Antwort.
told-only = { $name }: benachrichtigt { $when }, ohne Frage.
told-failed = { $name }: meine Nachricht kam nicht an, versucht { $when }.
told-race-control = Die Rennleitung weiß es, seit { $when }.
told-race-control-not = Dass die Rennleitung es weiß, hat niemand gemeldet: { $name }, { $phone }.
told-words = Im Wortlaut: ‚{ $words }‘
told-race-control-phone = Dort anrufen: { $name }, { $phone }.
told-danger = Bei Gefahr zuerst { $emergency }.
taken-alarm = { $runner }: { $kind }, seit { $since }.
towards = Fragt zuerst die Rennleitung, bevor ihr jemand entgegengeht: { $name }, { $phone }. Ich kann das nicht entscheiden.
towards-alarm = Ein Alarm ist offen, und niemand hat ihn übernommen: beantworte zuerst den.
towards-alarm-held = { $holder } hat den offenen Alarm: sprich zuerst mit { $holder }.
towards-rule = Rennregeln: Hilfe von außen für { $runner } nur an den Crew-Punkten. Anderswo kann Hilfe sie das Rennen kosten.
towards-rule-anywhere = Die Rennregeln verbieten Hilfe außerhalb der Crew-Punkte nicht.
towards-note = Rennregeln für die Crew: { $note }
towards-instead = Dort sucht sie euch: { $place }, ab { $be_there }{ $until ->
    [none] {", bis man von ihr hört."}
   *[other] {" bis "}{ $until }.
 }
towards-if =
    Wenn doch jemand geht: nie allein, nie ohne Licht. Einer bleibt in { $place }, mit einem Telefon, das Netz hat.
    Schreibt hier, wer wann geht und wann ihr zurück seid.
my-race-late = Du bist in { $place } etwa { $length } hinter dem Plan.
my-race-early = Du bist in { $place } etwa { $length } vor dem Plan.
my-race-on-plan = Du bist in { $place } im Plan.
my-race-next = { $place }: { $window }.
my-race-cut-off = Nächstes Zeitlimit: { $place }, { $edge } bis { $when }; Chance { $odds }, dass du es schaffst.
my-race-latest = Für 9 Chancen von 10 brich bis { $when } in { $place } auf.
my-race-no-cut-off = Vor dir liegt kein Zeitlimit mehr.
my-race-old = Was ich von dir weiß, ist alt ({ $ago }). Schreib ‚da‘ oder ‚los‘, oder schick deinen Standort.
my-race-ended = Dein Rennen: { $going }.
goals-next = { $runner }, Ziele beim Aufbruch in { $place }: { $goals }.
goals-gone = { $goal } nicht mehr
goals-meaning = Bricht sie später auf, zählt das nächste Ziel (nach C keines). Nach dem, was jetzt bekannt ist.
goals-none = Für { $runner } wechselt kein Ziel mehr.
cut-off-none-at = In { $place } liegt vor { $runner } kein Zeitlimit.
cut-off-access = Der Zugang für die Crew in { $place } ist offen { $hours }.
cut-off-no-hours = Wann der Zugang für die Crew in { $place } schließt, ist nicht eingetragen.

## Replies to reports
noted-seen = Notiert: { $runner } wurde gesehen, { $when }: ‚{ $words }‘
noted-seen-kept = Es zählt, sobald jemand es bestätigt; wer es kann, wird gefragt.
noted-how = Notiert, wie es { $runner } geht: ‚{ $words }‘
meeting-not-among = { $place } ist nicht unter deinen nächsten Treffen.
picture-none = Es gibt kein Bild. In Worten:
photo-how = Schick es hier: Wer heute Nacht für sie da ist, sieht es, ohne Ort und Kameradaten. Ich sehe nicht, was darauf ist: Schreib, was zu tun ist, zum Beispiel ‚angekommen in { $place } 14:20‘.
photo-unseen = Ich sehe nicht, was darauf ist. Schreib, was zu tun ist, zum Beispiel ‚angekommen in { $place } 14:20‘.
photo-shown = { $names ->
    [none] Das Bild ist gespeichert, aber noch niemandem gezeigt.
   *[other] Das Bild ist gespeichert und wurde gezeigt: { $names }.
}
photo-lost = Das Bild ist nicht angekommen. Bitte schick es noch einmal.
photo-too-large = Das Bild ist zu groß (höchstens 700 kB). Schick es kleiner.
photo-unreadable = Das ist kein Bild, das ich speichern kann. Schick ein Foto (JPEG, PNG oder WebP).
other-unreadable = Das kann ich nicht lesen. Bitte schreib es.
live-ended = Der geteilte Standort ist zu Ende. Über { $runner } sagt das nichts.
noted = Notiert für { $runner }: { $fact }, { $when }.
noted-cannot-come = Notiert: { $who } kann nicht kommen. Für { $who } kommt kein „Jetzt losfahren“; die anderen werden gefragt.
noted-can-come = Notiert: { $who } kann wieder kommen, wie geplant.
noted-takes-over = Das übernimmst du, { $who }. Alle, die es wissen müssen, hören davon.
answered-cannot-come =
    Notiert: du kannst nicht. Die anderen werden gefragt, wer kann.
    Bist du müde oder ist dir nicht gut: fahr nicht, halte an, wo es sicher ist, und ruh dich aus.
answered-cannot-why = Mehr musst du nicht tun. Liegt es am Auto, oder kannst du doch, dann schreib es.
answered-you-go = Das übernimmst du. Die Zeiten stehen in der nächsten Nachricht.
answered-goes = { $who } fährt schon; du musst nicht.
cannot-come-driver = Zuerst du: halte an, wo es sicher ist, und fahr nicht weiter. Schlaf, oder lass jemand anderen fahren.
cannot-come-own-safety = Zuerst du: verletzt oder krank? Ruf { $emergency } an. Fahr nicht.
cannot-come-car = Zuerst du: runter von der Straße, Licht an, weg vom Verkehr. Verletzt? { $emergency }.
cannot-come-pacer = Zuerst du: kannst du nicht sicher weitergehen, ruf { $emergency } oder die Rennleitung ({ $phone }) an, halt dich warm und teile deinen Standort.
cannot-come-back = Wenn sich das ändert, schreib „Ich kann wieder kommen“.
noted-note = Notiert.
noted-crew-there = Notiert: du bist in { $place }, { $when }.
noted-crew-left = Notiert: du hast { $place } verlassen, { $when }.
noted-on-the-road-untold = Notiert. Fahr vorsichtig.
noted-awake = Notiert: du bist wach.
noted-race-control = Notiert: die Rennleitung weiß es.
noted-in-hand = Gut: { $runner } ist bei euch, { $when }.
noted-stand-down = Notiert: der Alarm ist vorbei.
noted-position = Notiert: Standort von { $runner }, { $when }.
noted-same = Das hatte ich schon; es zählt einmal.
noted-kept = { $runner }: { $fact }, { $when } – stimmt das?
noted-unconfirmed = Es zählt noch nicht: { $doubt }. Stimmt es?
noted-kept-why = Es zählt, sobald es jemand bestätigt. Grund: { $doubt }.
noted-supporter = Es zählt, sobald die Crew es bestätigt.
noted-guessed = Es zählt, sobald du ‚Richtig‘ drückst.
noted-in-place-of = Statt { $when }.
noted-next = Als Nächstes { $place }: { $window }.
noted-undo = Falsch? Schreib innerhalb von { $minutes } min ‚rückgängig‘.
noted-told = Weitergesagt an { $names }.
noted-how-told = Wie es ihr geht, wurde weitergesagt an { $names }.
noted-drive = Notiert: die Fahrt von { $from } nach { $to } dauert { $length }. Die Abfahrtszeiten richten sich ab jetzt danach.
noted-drive-from = Von wo nach { $place }? Schreib zum Beispiel ‚Fahrt vom Hotel nach { $place } 35 min‘.
noted-many = Notiert: { $count ->
    [one] eine Meldung.
   *[other] { $count } Meldungen.
 }
undone = Zurückgenommen für { $runner }: { $fact }, { $when }.
undone-words = Zurückgenommen: ‚{ $words }‘
undone-plain = Zurückgenommen.
undo-nothing = Aus den letzten { $minutes } min gibt es von dir nichts zurückzunehmen.
undo-over = Das ist älter als { $minutes } min. Schick, was stimmt: ‚Berichtigung: in { $place } angekommen 14:20‘.
undo-none-there = Aus { $place } habe ich keine Meldung von dir, die sich zurücknehmen ließe; geändert ist nichts. Schick, was stimmt: ‚Korrektur: in { $place } 14:20‘.
held-up = Notiert: ‚{ $words }‘. Ich habe niemandem Bescheid gesagt: ruf an, wer für dich da sein kann. Fahr vorsichtig.
stand-in-asked = Wer wohin fährt, kann ich nicht ändern: Sprecht es am Telefon ab.
stand-in-call = Crew mit Nummer:
stand-in-nobody = Von der übrigen Crew ist hier keine Nummer hinterlegt.
stand-in-person = { $name } ({ $part }): { $phone }
stand-in-control = { $name }: { $phone }
word-told-nobody = Geschickt habe ich es niemandem: wer fragt, wie es dir geht, liest es. Ist es wichtig, ruf an.
how-far = Bis { $place } (bei { $km }): etwa { $distance } von da, wo du wohl bist.
how-far-course = { $place } liegt bei { $km } der Strecke.
confirmed = Bestätigt. Danke.
answered-yours = Der Alarm ist bei dir. Ich frage { $when } wieder nach.
answered-yours-untimed = Der Alarm ist bei dir.
answered-other = { $name } hat das schon übernommen. Danke.
answered = Danke, deine Antwort ist da.
answered-on-our-way = Gut, ihr seid unterwegs. Fahr vorsichtig.
answered-cannot-alarm = Notiert: du kannst nicht. { $names ->
    [none] Wer als Nächstes kommt, wird sofort gefragt.
   *[other] Gefragt sind außer dir: { $names }; wer als Nächstes kommt, wird sofort gefragt.
 }
answered-cannot-held = Notiert: du kannst nicht. { $name } hat ihn.
answered-gave-back = Notiert: du hast ihn nicht mehr. Die Nächsten werden sofort gefragt, und wer um Hilfe gerufen hat, erfährt es.
answered-cannot = Verstanden, du kannst nicht. Als Nächstes wird jemand anderes gefragt.
answered-yes = Danke.
answered-not-yet = Danke: noch nicht.
answered-nobody-there = Danke: dort ist niemand, der sie sieht.
answered-still-missing = Danke: noch vermisst. Der Alarm bleibt offen.
answered-ok = Gut, du hast es gelesen.
answered-no = Danke: nein.
answered-i-have-it = Gut, du übernimmst.
answered-unreached-i-have-it = Gut, du rufst an. Was du hörst, schreib es hier.
answered-unreached-cannot = Verstanden, du kannst nicht anrufen. Als Nächstes wird jemand anderes gefragt.
answered-goes-on = Danke: sie macht weiter.
answered-race-over = Danke: ihr Rennen ist vorbei.
answer-nothing-open = Notiert; es ist aber nichts offen, was eine Antwort braucht.
answered-seen = Wo und wann wurde sie gesehen? Drück einen Knopf oder schreib es.
answered-when = Wann? ‚jetzt‘, ‚vor 10 min‘ oder eine Uhrzeit.
help-in-events = Der Alarm läuft bei { $events }.
help-other-event = Geht es um { $event }? Dann schreib es sofort noch einmal mit ‚{ $name }‘ darin.
passed-on = Wörtlich weitergegeben an { $names }.
passed-on-place = Dein Standort ist an { $names ->
    [none] noch niemanden
   *[other] { $names }
 } gegangen, zum Hilferuf für { $runner }.
help-still-open = Der Alarm wegen deines Hilferufs bleibt trotzdem offen{ $holder ->
    [none] {""}
   *[other] {" bei "}{ $holder }
 }, bis jemand ‚Entwarnung‘ schreibt.
help-was-nothing = War es nichts, schreib ‚rückgängig‘: dann ist der Hilferuf zurückgenommen.

## Asking back
ask-out = Was heißt ‚raus‘? { $place } verlassen und weiter unterwegs, oder aus dem Rennen?
ask-out-nowhere = Was heißt ‚raus‘? Einen Punkt verlassen und weiter unterwegs, oder aus dem Rennen?
ask-dropped = ‚{ $word }‘: ist ihr Rennen vorbei, oder ist etwas anderes gemeint?
ask-dropped-own = ‚{ $word }‘: ist dein Rennen vorbei, oder ist etwas anderes gemeint?
ask-retired-where = { $own ->
    [yes] Wo bist du? Teile deinen Standort oder schreib den Ort: wer dich holt, braucht ihn.
   *[no] Wo ist sie? Schreib den Ort oder frag sie: wer sie holt, braucht ihn.
 }
ask-retired-how = Es gilt schon. Wie kam es dazu?
ask-point = Welchen Punkt meinst du?
ask-who = Wer ist in { $place }?
ask-runner = Welche Läuferin?
ask-bib = Niemand hat Startnummer { $bib }. { $count ->
    [0] Dafür ist nichts notiert: Bitte sieh noch einmal nach.
   *[other] Meintest du:
 }
bibs-left = Für { $bibs } ist nichts notiert: Diese Startnummer hat niemand.
ask-where-seen = Zwischen welchen Punkten war das?
of-runner = { $runner }: { $line }
race-only-organiser =
    Nicht notiert: dass der Start sich verschiebt, die Läufer angehalten sind oder ein Zeitlimit sich ändert,
    kann nur der Veranstalter melden. Sag es { $name }: { $phone }.
button-right-of = { $runner }: richtig
button-wrong-of = { $runner }: falsch
event-chosen = { $event }: schreib deine Nachricht jetzt noch einmal.
picked-before = Dieser Knopf ist schon benutzt. Um Notiertes zu ändern, schreib es.
button-old = Wofür dieser Knopf war, weiß ich nicht mehr. Schreib es in Worten, mit dem Namen der Läuferin.
ask-event = Welche Veranstaltung?
ask-with-us = { $runner } ist bei euch. Braucht sie keine Hilfe mehr? Noch läuft der Alarm für alle: drück ‚Richtig‘ oder schreib ‚ja‘, um ihn zu beenden.
noted-no-alarm = Zu { $runner } ist kein Alarm offen, also auch keiner zu beenden. Deine Worte sind notiert; sie wird überwacht wie bisher.
ask-stand-down = Den Alarm zu { $runner } für alle beenden? Noch läuft er: drück ‚Richtig‘ oder schreib ‚ja‘.
choice-left = { $place } verlassen, läuft weiter
choice-left-plain = Einen Punkt verlassen, läuft weiter
choice-crew = Ich bin es
choice-her = { $runner } ist es
choice-crew-left = Ich
choice-her-left = { $runner }
ask-who-left = Wer hat { $place } verlassen?
choice-over = Ihr Rennen ist vorbei
choice-over-own = Dein Rennen ist vorbei
choice-else = Etwas anderes
choice-both = Beide
choice-all = Alle
choice-runner = { $bib ->
    [none] { $name }
   *[other] { $name } ({ $bib })
 }
button-undo-of = Zurücknehmen: { $event }
choice-between = { $from } – { $to }
choice-point-km = { $place } ({ $km })
not-understood-help = Wenn du Hilfe brauchst: ruf { $emergency } an und schreib ‚Hilfe‘; das geht sofort an Crew und Sicherheitskontakt.
clause-not-done = Nicht verstanden: ‚{ $words }‘. Frag das bitte noch einmal allein, mit anderen Worten.
not-understood = Das habe ich nicht verstanden. Schreib ‚was kann ich fragen‘ für Beispiele.
nothing-to-say = Hallo. Schreib ‚was kann ich fragen‘ für Beispiele.
thanks = Gern.
button-in-plain = Da
button-out-plain = Los

## Joining
stranger = Diese Nummer oder dieser Chat ist hier nicht bekannt. Hast du eine Einladung, schick ihren Code.
join-preview = Hallo { $name }, du bist { $parts } bei { $event }. Bist du das?
join-asks-runner = Du schreibst, wie es geht und wann du Hilfe brauchst; an den Punkten melden dich deine Crew und das Rennen.
join-asks-crew = Du erfährst, wann du losfährst und wo du sein musst, und sagst, wann sie kam und wann sie ging.
join-asks-pacer = Du erfährst, wo du zu ihr stößt, und meldest unterwegs für euch beide.
join-asks-safety-contact = Ist sie überfällig, kommt ein Alarm: antworte mit ‚ich übernehme‘ oder ‚kann nicht‘. Vor dem Start kommt ein Probealarm; antworte auch auf den.
join-asks-organiser = Du meldest, was für alle gilt: ein später Start, eine Unterbrechung, ein verschobenes Zeitlimit.
join-asks-volunteer = Du meldest an deinem Punkt alle mit Startnummer, an und ab.
join-asks-supporter = Von dir wird nichts verlangt; du siehst, wo sie zuletzt gemeldet wurde und wann sie das nächste Mal erwartet wird.
join-done-plain = Willkommen, { $name }. Schreib ‚was kann ich fragen‘ für Beispiele.
join-no = Dann ist nichts verbunden, und der Code bleibt unbenutzt. Sag es dem, der ihn geschickt hat.
group-bound =
    Ab jetzt hört diese Gruppe, was alle im Team bei { $name } angeht: Änderungen am Rennen, einen beendeten Alarm, den Zieleinlauf.
    Nie, wo sie ist, und nichts, was nur eine Person angeht: das bekommt jede und jeder allein. ‚/group off‘ beendet es.
group-free = Diese Gruppe hört von selbst nichts mehr von { $name }. Was dich angeht, bekommst du wie bisher.
join-private = Schick den Code mir allein, nicht in einer Gruppe.
part-line = { $kind }{ $runner ->
    [none] {""}
   *[other] {" für "}{ $runner }
 }
part-runner = Läuferin
part-crew = Crew
part-pacer = Begleitläufer
part-safety-contact = Sicherheitskontakt
part-organiser = Veranstalter
part-volunteer = Helfer
part-supporter = Fan

## What can be asked
usage-crew =
    Frag, wie du redest:
    ‚wann ist sie in { $place }‘, ‚nächster Punkt‘, ‚wann im Ziel‘, ‚wo ist sie‘, ‚haben wir sie verpasst‘, ‚warten oder fahren‘
    ‚was bringen wir mit‘, ‚wann müssen wir los‘, ‚Zeitlimit‘, ‚und der danach?‘; wenn es vorbei ist ‚wie lief es‘
usage-report =
    Melde, wie du redest:
    ‚angekommen in { $place } um 14:55‘, ‚raus vor 20 min‘, ‚noch nicht da‘, ‚isst gut, Füße ok‘
    ‚Rückgängig‘ nimmt das Letzte { $minutes } min lang zurück.
usage-volunteer =
    Melde Startnummern: ‚214 rein 0312 raus 0319; 87 rein 0315‘, ‚214 durch‘, ‚Schlussläufer durch‘.
    ‚Rückgängig‘ nimmt das Letzte { $minutes } min lang zurück.
duty-runner =
    Du läufst. Schreib an den Punkten ‚rein‘ und ‚raus‘, wenn du kannst, oder teile deinen Live-Standort.
    ‚Pause‘, wenn du länger stehst; ‚Hilfe‘, wenn du sie brauchst: deine Crew und { $control } erfahren es.
duty-crew =
    Du bist Crew für { $runner }. Eine Nachricht sagt dir, wann du losmusst und was bereitliegen soll: antworte darauf.
    Melde dich selbst, sobald du an einem Punkt bist. Melde dort jede Ankunft und jeden Aufbruch, mit Namen; und ‚noch nicht da‘, wenn gefragt wird.
duty-pacer =
    Du begleitest { $runner }. Sei an dem Punkt, an dem du dazustößt, mit eigenem Licht und einer warmen Schicht.
    Melde sie an den Punkten. Ist eine von euch verletzt, schreib ‚Hilfe‘ und ruf { $emergency } an.
duty-safety-contact =
    Du bist der Sicherheitskontakt von { $runner }, zu Hause und die ganze Nacht erreichbar.
    Ist sie überfällig oder bittet um Hilfe, kommt hier ein Alarm: antworte binnen 5 min ‚Ich übernehme‘ und sorge dafür, dass jemand nach ihr sieht.
    { $calls ->
        [yes] Du rufst { $control } an, { $phone }.
       *[no] Eine bestimmte Person ruft { $control } an; wer, steht im Alarm.
    } Ist vielleicht ein Leben in Gefahr: zuerst { $emergency }.
    Vor dem Start kommt ein Probealarm: antworte darauf mit dem Telefon so, wie es nachts sein wird.
duty-organiser =
    Du bist Veranstalter. Du hörst von Ausfällen, von Leuten, die nicht zu erreichen sind, und von Alarmen.
    Du sagst, wenn der Start sich verschiebt, die Läufer angehalten werden oder ein Zeitlimit sich ändert.
duty-volunteer = Du meldest an deinem Punkt: Startnummer, ‚rein‘ und ‚raus‘ mit der Zeit. Positionen siehst du nicht.
duty-supporter = Du verfolgst { $runner }: frag ‚nächster‘, ‚wo‘ oder ‚Ziel‘. Von dir wird nichts verlangt.
duty-all = ‚was kann ich fragen‘ zeigt, was du hier schreiben kannst. Das hier ist eine Hilfe, kein Rettungsdienst.
usage-runner =
    Schreib ‚da‘, ‚los‘, ‚Pause‘, ‚wieder unterwegs‘ oder schick deinen Standort.
    Frag ‚wie steh ich‘, ‚nächster Punkt‘, ‚Zeitlimit‘, danach ‚wie lief es‘.
    Schreibst du Hilfe, verletzt oder verlaufen, geht es sofort an deine Crew.
usage-answer = Einen Alarm beantwortest du mit ‚ich übernehme‘ oder seinem Knopf.

## Buttons
button-in = In { $place } angekommen
button-out = { $place } verlassen
button-through = Ohne Halt durch { $place }
button-not-here-yet = Noch nicht da
button-was-nothing = Es war nichts: für alle beenden
button-undo = Zurücknehmen
button-right = Richtig
button-wrong = Falsch
button-yes = Ja
button-no = Nein
button-not-yet = Noch nicht
button-nobody-there = Niemand da
button-i-have-it = Ich übernehme
button-unreached-i-have-it = Ich rufe an
button-unreached-cannot = Kann nicht anrufen
button-ok = OK
button-leaving = Fahre los
button-on-our-way = Unterwegs
button-cannot = Kann nicht
button-awake = Wach
button-seen = Gesehen, ihr geht es gut
button-still-missing = Noch vermisst
button-race-control-told = Rennleitung weiß es
button-in-hand = Sie ist bei uns
button-i-go = Ich fahre
button-join = Ja, das bin ich
button-not-me = Nein
button-own-choice = Eigene Entscheidung
button-timed-out = Zeitlimit
button-medics = Sanitäter oder Rennleitung
button-did-not-start = Nicht gestartet
button-next = Nächster Punkt
button-bring = Mitbringen
button-where = Wo
button-after = Der danach
button-alarm-known = Was ist bekannt
button-alarm-tell = Was sage ich Rettern
button-just-now = Gerade eben
button-ten-ago = Vor 10 min
button-twenty-ago = Vor 20 min
button-other = { $word }

## Errors to a person
error-no_such_code = Dieser Code gilt nicht: vertippt, benutzt oder abgelaufen. Bitte um einen neuen.
error-not_yours = Deine Rolle in der Veranstaltung erlaubt das nicht.
error-not_found = Das gibt es in der Veranstaltung nicht.
error-conflict = Das kam vorher mit anderen Worten. Beides ist aufgehoben, und jemand wird gefragt, was stimmt.
error-not_now = Das passt nicht zu dem, was gemeldet ist: { $what }.
error-too_many = Zu viele falsche Versuche. Warte ein paar Minuten.
error-not_ready = Das kann der Server noch nicht beantworten. Frag in einer Minute wieder.
error-other = Der Server konnte das nicht annehmen. Nichts ist notiert. Versuch es noch einmal; bleibt es so, ruf an.
error-fault = Ein Fehler bei mir: das konnte ich nicht lesen. NICHTS ist notiert. Schreib es mit anderen Worten; kann es nicht warten, ruf an.
error-unreachable =
    Der Server ist gerade nicht zu erreichen. NICHTS ist bisher notiert.
    Ich hebe deine Nachricht auf und gebe sie mit ihrer Zeit weiter, sobald der Server antwortet; dann hörst du davon. Kann es nicht warten, ruf an.
error-unreachable-not-kept =
    Der Server ist gerade nicht zu erreichen. NICHTS ist notiert, und deine Nachricht ist nicht aufgehoben.
    Schick sie noch einmal; kann es nicht warten, ruf an.

## The commands in a chat's menu
menu-start = Mit dem Code beitreten, den du bekommen hast
menu-next = Wann sie am nächsten Punkt ist, und wo du sein musst
menu-leave = Wann wir losfahren müssen
menu-group = Dieser Gruppe sagen, was alle im Team angeht
menu-kit = Was wir mitbringen und bereithalten
menu-missed = Haben wir sie verpasst?
menu-where = Wo sie jetzt ist, soweit bekannt
menu-plan = Der Plan, Punkt für Punkt
menu-cutoffs = Die Zeitlimits, die noch kommen
menu-food = Was sie als Nächstes isst und trinkt
menu-cards = Was zu tun ist, wenn etwas schiefgeht
menu-numbers = Rennleitung und Notruf
menu-usage = Wie man fragt und meldet
report-finished = { $runner } ist im Ziel, { $when }{ $length ->
        [none] .
       *[other] , nach { $length }.
    }
report-retired = { $runner } ist nicht ins Ziel gekommen: ausgeschieden{ $place ->
        [none] { "" }
       *[other] { " " }in { $place }
    }, { $when } ({ $how }).
report-not-started = { $runner } ist nicht gestartet.
report-not-over = Für { $runner } ist es nicht vorbei: { $going }.
report-late = Gegenüber dem Plan (Ziel B), in { $place }: { $length } später; geplant { $planned }.
report-early = Gegenüber dem Plan (Ziel B), in { $place }: { $length } früher; geplant { $planned }.
report-on-plan = Gegenüber dem Plan (Ziel B), in { $place }: nach Plan ({ $planned }).
report-lost = Zeit verloren: { $parts }.
report-won = Zeit gewonnen: { $parts }.
report-leg = { $from } bis { $to } { $length }
report-stop = Halt in { $place } { $length }
report-even = Kein Abschnitt und kein Halt wich um { $length } oder mehr vom Plan ab.
report-whole = Das Ganze, Punkt für Punkt, mit dem, was daraus wurde: schreib ‚plan‘.
menu-report = Wie es lief, gegenüber dem Plan

## What was said, kept in its own words
kept = In deinen Worten behalten: ‚{ $words }‘
goes-already = { $place } hast du ohnehin: Es muss niemand gefragt werden.
kept-own = Notiert ist es schon für dich, nicht für die Läuferin.
kept-note = In deinen Worten notiert: ‚{ $words }‘. Als Meldung über sie zählt es nicht.
ask-danger = Ist sie in Gefahr? Dann ruf { $emergency } an und drück unten.
ask-danger-own = Bist du in Gefahr? Dann ruf { $emergency } an und drück unten.
button-danger-yes = Ja, allen sagen
button-danger-no = Nein
ask-meaning = ‚{ $word }‘: was meinst du?
rivals-unknown = Wie es um andere steht und auf welchem Platz sie ist, weiß ich nicht: frag die Rennleitung. { $name }: { $phone }.
rules-unknown = Die Regeln des Rennens kenne ich nicht: frag die Rennleitung. { $name }: { $phone }.
elsewhere-unknown = { $words ->
    [none] Das weiß ich nicht: es steht nicht im Plan. Vielleicht weiß es jemand vor Ort.
   *[other] Über ‚{ $words }‘ sagt der Plan nichts. Vielleicht weiß es jemand vor Ort.
 }
signal-unknown = Wie das Netz dort ist, weiß ich nicht. Wer dort war, weiß es vielleicht.
elsewhere-unknown-at = { $words ->
    [none] Das sagt der Plan von { $place } nicht.
   *[other] Über ‚{ $words }‘ in { $place } sagt der Plan nichts.
 } Vielleicht weiß es jemand dort, sonst frag { $name }: { $phone }.
parking-known = Parken in { $place }: { $parking }. Mehr steht nicht da.
signal-known = { $signal ->
    [none] In { $place } ist laut Plan kein Netz.
   *[other] In { $place } ist das Netz laut Plan lückenhaft.
 }
signal-unsaid = Der Plan nennt für { $place } kein schlechtes Netz, es sollte also gehen. Mehr weiß, wer dort war, sonst frag { $name }: { $phone }.
why-times =
    Die mittlere Zeit ist die wahrscheinlichste; 1-mal in 10 kommt sie vor der ersten, 1-mal in 10 nach der letzten.
    Alle beruhen auf ihrem Plan und auf dem, was bisher gemeldet ist.
why-others = Zeiten von { $others } anderen heute stecken auch darin: bis { $place } geht es { $way ->
    [longer] etwa { $percent } % langsamer als geplant
    [less] etwa { $percent } % schneller als geplant
   *[same] wie geplant
 }.
request-swap = Wer was übernimmt, kann ich nicht ändern: ‚{ $words }‘. Bitte ruf an:
meaning-when-there = Wann sie dort ist
meaning-when-there-own = Wann ich dort bin
meaning-finish = Wann sie im Ziel ist
meaning-finish-own = Wann ich im Ziel bin
meaning-where = Wo sie ist
meaning-where-own = Wo ihr mich vermutet
meaning-plan-gap = Vor oder hinter dem Plan
meaning-last-stop = Wie lang der Halt war
meaning-cut-off = Das Zeitlimit
meaning-missed = Ob wir sie verpasst haben
meaning-wait-or-go = Warten oder weiterfahren
meaning-people = Wer wo ist
meaning-ride = Wer wohin fährt
meaning-bring = Was mitbringen
meaning-take-back = Was ihr abnehmen
meaning-food = Was sie isst
meaning-food-own = Was ich esse
meaning-leave = Wann losfahren
meaning-drive = Wie lang die Fahrt ist
meaning-dark = Wann es dunkel ist
meaning-heard = Was zuletzt gehört wurde
meaning-what-if = Wenn sie langsamer ist
meaning-leaves-now = Wenn sie jetzt losläuft
meaning-plan = Der Plan
meaning-meeting = Das nächste Treffen
meaning-how-is-she = Wie geht es ihr?
meaning-how-is-she-own = Was über mich bekannt ist
meaning-trouble = Was da hilft
meaning-numbers = Telefonnummern
meaning-picture = Das Profil
meaning-photo = Ein Foto
meaning-walk-towards = Ihr entgegengehen
meaning-who-knows = Wer es weiß, und Alarme
meaning-my-race = Wie mein Rennen läuft
meaning-goals = Ziele A, B, C
meaning-why = Warum diese Zeit
meaning-signal = Handynetz
meaning-catch-up = Was ich verpasst habe
meaning-duty = Was meine Aufgabe ist
meaning-cover = Wer einspringen kann
meaning-report = Wie es lief
meaning-usage = Was ich fragen kann
meaning-unknown-weather = Das Wetter
meaning-unknown-rivals = Andere Läufer
meaning-unknown-rules = Die Regeln
meaning-unknown-other = Etwas anderes
meaning-in = Sie ist da
meaning-in-own = Ich bin da
meaning-out = Sie ist weitergelaufen
meaning-out-own = Ich bin wieder unterwegs
meaning-through = Sie ist durch
meaning-through-own = Ich bin durchgelaufen
meaning-position = Sie wurde gesehen
meaning-position-own = Wo ich bin
meaning-resting = Sie ruht sich aus
meaning-resting-own = Ich ruhe mich aus
meaning-moving = Sie ist wieder unterwegs
meaning-moving-own = Ich laufe weiter
meaning-retired = Ihr Rennen ist vorbei
meaning-retired-own = Dein Rennen ist vorbei
meaning-sweep = Der Schlussläufer kam durch
meaning-not-here-yet = Noch nicht da
meaning-condition = Ich sage, wie es ihr geht
meaning-condition-own = Ich sage, wie es mir geht
meaning-with-us = Sie ist bei uns
meaning-with-us-own = Ich bin bei der Crew
meaning-hearsay = Jemand anderes sagt es
meaning-supposed = Nur vermutet
meaning-note = Eine Notiz
meaning-race-news = Neues vom Rennen
meaning-crew-there = Wir sind da
meaning-crew-left = Wir sind unterwegs
meaning-drive-takes = Wie lange die Fahrt dauert
meaning-about-me = Über mich
meaning-cant-come = Ich kann nicht kommen
meaning-can-come = Ich kann wieder kommen
meaning-held-up = Ich werde aufgehalten und komme später
meaning-i-have-it = Ich übernehme
meaning-i-go = Ich fahre hin
meaning-race-control-told = Die Rennleitung weiß es
meaning-alarm-over = Sie ist in Sicherheit
meaning-alarm-over-own = Ich bin in Sicherheit
meaning-nobody-there = Niemand ist dort
meaning-awake = Ich bin wach
meaning-ok = OK
meaning-yes = Ja
meaning-no = Nein
meaning-undo = Das Letzte zurücknehmen
meaning-correction = Die Zeit berichtigen
meaning-other-person = Das war eine andere Läuferin
meaning-pass-message = Etwas ausrichten
meaning-swap = Mit jemandem tauschen
meaning-meet-elsewhere = Woanders treffen
meaning-mute = Weniger schicken
meaning-remind-me = Erinnere mich
meaning-small-talk = Nichts, nur so
race-news-noted = Notiert. Wen es betrifft, dem wird es gesagt.
race-news-how-long = Um wie lange, oder bis wann? Schreib es wie ‚der Start ist um 30 min verschoben‘. Notiert ist noch nichts.
race-news-which-cut-off = Welches Zeitlimit, und bis wann? Schreib es wie ‚Zeitlimit in { $place } verlängert bis 18:00‘. Notiert ist noch nichts.
sent-to = Weitergesagt an { $names }: ‚{ $words }‘
sent-to-nobody = Festgehalten, aber noch niemandem gesagt: ‚{ $words }‘
sent-waits = { $name } liest es ab { $when }, außer es kommt vorher etwas von dort.
sent-unheard = Hier nicht zu erreichen: { $names }. Bitte ruf an.
swap-sent = Bis es jemand übernimmt, bleibt es bei dir.
swap-whose = Niemand wurde gefragt: Ich weiß dort von keinem Treffen von dir, das noch kommt.
quiet-until = Keine Neuigkeiten bis { $when }. Alarme und deine eigenen Treffen kommen trotzdem.
to-bed = Schlaf gut. Anderes wartet bis { $when }; Alarme und deine eigenen Treffpunkte wecken dich vorher, also lass das Telefon an und laut.
quiet-how-long = Bis wann? Schreib „Ruhe bis 18:00“.
quiet-over = Ab jetzt kommen wieder Neuigkeiten.
remind-at = Ich erinnere dich { $when }. Darfst du es nicht verpassen, stell dir auch einen Wecker.
remind-when = Um wie viel Uhr? Schreib „erinnere mich um 18:00“ und woran. Was du von ihr wissen musst, kommt von selbst.
request-race = An das Rennen kann ich das nicht weitersagen: ‚{ $words }‘. Bitte ruf an:
noted-cannot-come-to = Notiert: { $who } kann nicht kommen, { $place }. Für { $who } kommt dafür kein „Jetzt losfahren“; die anderen werden gefragt.

# Was außer den Treffen in der Datei steht, und was des Schreibers eigenes ist.
rules-known = Von den Regeln habe ich nur diese; für alles andere frag die Rennleitung. { $name }: { $phone }.
rule-note = Hinweis des Rennens: { $note }
rule-points = Hilfe von außen für sie nur an Crewpunkten.
rule-cars = { $count ->
    [one] Ein Auto darf zu ihren Treffen kommen.
   *[other] Höchstens { $count } Autos dürfen zu ihren Treffen kommen.
 }
rule-people = { $count ->
    [one] Eine Person darf ihre Crew sein.
   *[other] Höchstens { $count } Personen dürfen ihre Crew sein.
 }
rule-pacers = Begleitläufer: { $count } auf einmal, ab { $km }.
rule-not-before = Vor { $when } keine Crew an einem Punkt.
start-at = { $runner } startet { $when }.
start-was = { $runner } ist { $when } gestartet.
start-no-change = Eine Änderung ist mir nicht bekannt.
clock-now = Die Zeiten hier sind nach der Uhr des Rennens: dort ist es jetzt { $now }.
clock-yours = Wo deine eigene Uhr anders geht, steht ihre Zeit in Klammern dahinter.
course-ahead = Es kommen noch: { $points }.
course-point = { $place } ({ $km })
course-hills = Wie viele Anstiege das sind, weiß ich nicht: ich zähle keine.
looks = { $runner }{ $bib ->
    [none] {""}
   *[other] {", Startnummer "}{ $bib }
 }{ $clothing ->
    [none] : was sie trägt, steht nirgends.
   *[other] {": "}{ $clothing }.
 }
looks-torch = Licht: { $torch }.
looks-none = Was { $runner }{ $bib ->
    [none] {""}
   *[other] {" (Startnummer "}{ $bib }{")"}
 } trägt, steht nirgends.
mine-fact = Von dir habe ich: { $runner }, { $fact }, { $when }.
mine-words = Von dir habe ich, { $when }: ‚{ $words }‘
mine-none = Davon habe ich keine Meldung von dir.
late-not-yet = { $runner } ist nicht spät. Spät wäre sie, wenn bis { $when } nichts aus { $place } zu hören ist.
late-already = { $runner } ist spät: in { $place } war sie spätestens { $when } erwartet.
in-doubt = Ist jemand in Gefahr? Dann ruf { $emergency } an.
grave-any = Bist du oder ist jemand bei dir in Gefahr, ruf jetzt { $emergency } an. { $name }: { $phone }.
grave-any-drive = Wem schwindlig, schläfrig oder durch und durch kalt ist, oder wer schlecht sieht, fährt nicht weiter: anhalten, jemand anders fährt.
grave-any-help = Ist jemand in Gefahr? ‚Ja‘ schickt deine Worte an alle hier.
meaning-start-time = Wann es losgeht
meaning-clock = Nach welcher Uhr
meaning-course-ahead = Was noch kommt
meaning-my-reports = Was ich von dir habe
meaning-clothing = Was sie trägt
meaning-clothing-own = Was ich anziehe
remind-leave = Eine Nachricht sagt dir, wann du losmusst.
button-tell-all = Den anderen sagen
new-link = Das Rennen hier einrichten; der Link öffnet einmal, einen Tag lang. Der Entwurf liegt in { $folder }, ein weiteres `stilepost new` macht damit weiter.
new-stop = Strg-C beendet diesen Server. Was veröffentlicht ist, führt danach `stilepost serve`.
new-no-folder = { $folder }: dort lässt sich nichts schreiben. Einen anderen Ordner nennen.
new-again = Noch einmal antworten?
new-written = Geschrieben: { $file }. Weiter: mit `stilepost check` prüfen, `stilepost load`, `stilepost serve`, und jede Person mit `stilepost invite` einladen; oder `stilepost new` im Browser.
new-no-file = { $file }: lässt sich nicht lesen ({ $why }). Den Pfad prüfen.
new-paste-end = Hier einfügen, oder den Namen einer Datei angeben; eine leere Zeile beendet es.
new-unusual = { $file }: hat eine Form, die hier nicht geändert wird ({ $why }). Jeder Tabelle eine eigene Überschrift geben, etwa [[points]], oder einen anderen Ordner nennen.
meaning-pace = Ihr Tempo
meaning-pace-own = Mein Tempo
meaning-words = Was ein Wort heißt
meaning-complaint = Da war etwas falsch von dir
meaning-offer = Ich biete Hilfe an
meaning-unremind = Keine Erinnerung
remind-over = Gestrichen: keine Erinnerung { $when }.
remind-none = Ich habe keine Erinnerung für dich, die noch kommt.
light-dark-at = In { $place } wird es dunkel sein, wenn sie dort ist.
light-left = Sie hat ihr Licht nicht dabei. { $dark } Weitergesagt an { $names }.
light-meet = Bringt eine Lampe nach { $place }, wo sie als Nächstes jemand trifft: { $crew }.
light-carries = Laut Plan hat sie: { $torch }.
light-control = Trifft sie vor der Dunkelheit niemand, oder hat sie kein anderes Licht? Sagt es: { $name } { $phone }.
await-open = Du hörst es sofort, wenn { $runner } { $edge ->
    [out] { $place } verlassen hat
   *[in] in { $place } angekommen ist
}.
await-before = Ich wecke dich { $length }, bevor { $runner } frühestens in { $place } ist: dort jetzt { $window }. Ändert sich das, ändert sich auch der Weckruf. Darfst du es nicht verpassen, stell dir auch einen Wecker.
await-set = Ich sage es dir sofort, wenn { $runner } { $edge ->
    [out] { $place } verlassen hat
   *[in] in { $place } angekommen ist
}, auch nachts{ $window ->
    [none] .
   *[other] : dort { $window }.
}
await-was = { $runner } ist schon weiter: { $fact }, { $when }.
await-past = { $runner } ist schon an { $place } vorbei.
await-race-over = Das Rennen ist für { $runner } zu Ende. In { $place } gibt es nichts mehr zu erwarten.
await-over = Gestrichen: keine Nachricht, wenn { $runner } { $edge ->
    [out] { $place } verlassen hat
   *[in] in { $place } angekommen ist
}.
pace-last = { $from } bis { $to }: { $leg }.
pace-before = Davor, { $from } bis { $to }: { $leg }.
pace-whole = Seit dem Start, mit Halten: { $leg }.
pace-leg = { $distance } in { $length }, { $pace }
pace-per-km = { $pace } min pro km
pace-per-mile = { $pace } min pro Meile
pace-of = Nach den gemeldeten Zeiten; kein Tracker misst es.
pace-none = Noch kein Tempo: Niemand hat { $runner } seit dem Start an einem Punkt gemeldet.
complaint-sorry = Das tut mir leid. Jetzt gilt:
complaint-right = War eine Zeit falsch? Schreib die richtige, wie ‚in { $place } 13:42‘. Weniger Nachrichten: ‚Ruhe bis 18:00‘.
term-none = Welches Wort meinst du? Am meisten gefragt wird nach diesen:
term-window = „14:35 (14:10 bis 15:20)“: etwa 14:35; 1 von 10 Malen kommt sie vor 14:10, 1 von 10 Malen nach 15:20.
term-estimate = „Etwa“ und „voraussichtlich“ sind geschätzt: Niemand hat sie dort gesehen. „Drin“, „raus“ und „durch“ hat gemeldet, wer dabei genannt ist.
term-late = „Spät“: In 9 von 10 Fällen hätte man jetzt von ihr gehört. Das ist eine Frage an die am Punkt, kein Alarm.
term-overdue = „Überfällig“: so lange nichts gehört, dass zu Hause und die Crew gerufen werden, der Reihe nach, bis jemand antwortet.
term-held = „Angehalten“: Die Veranstalter halten die Läufer fest, wo sie sind. Niemand ist so lange spät dran.
term-unconfirmed = „Nicht bestätigt“: festgehalten, zählt aber erst, wenn es jemand bestätigt, der es wissen kann.
term-with-us = „Bei uns“: Crew, Sanität oder das Rennen hat sie. Niemand muss sie suchen.
term-last-known = „Zuletzt bekannt“: das Letzte, was ein Mensch oder eine Matte von ihr gemeldet hat. Alles andere ist geschätzt.
term-cut-off = „Zeitlimit“: Bis dahin muss sie dort sein, oder wieder weg, wo es so dasteht; sonst nimmt die Rennleitung sie heraus.
term-sweep = „Besen“: die hinter der Letzten gehen.
term-stand-down = „Entwarnung“: Der Alarm ist vorbei; niemand muss mehr etwas tun.
term-leave-by = „Spätestens los“: Wer später fährt, verpasst sie vielleicht.
term-resting = „Ruht“: Jemand hat gemeldet, dass sie sitzt oder schläft. Für sich allein ist das kein Grund zur Sorge.
term-goals = „Ziele A, B, C“: ein guter Tag, der Plan, und ein schwerer Tag, an dem sie doch ankommt.
term-out-of-race = „DNF“: nicht im Ziel. „DNS“: nicht gestartet.
term-clock = „07:40“ ist eine Uhrzeit, nach der Uhr des Rennens; eine Dauer steht als „40 min“ oder „2 h 10 min“ da.

## Changing the plan during the race
change-ask = Dieses Treffen ändern
change-what = { $place }, { $runner }: { $who }. Was soll anders sein?
change-drives = { $name } fährt
change-skip = Auslassen
change-move = An einem anderen Punkt treffen
change-finish = Nur ankommen, kein Ziel mehr
change-where = Wo soll { $runner } statt an { $place } getroffen werden?
change-nowhere = Vor { $runner } liegt kein anderer Punkt, an dem Betreuer sein dürfen und noch niemand ist.
change-for = { $name }: { $what }
change-left = Es bleibt, wie es war.
change-yes = Ja, so ändern
change-no = Nein, so lassen
change-undo = Änderung zurücknehmen
change-would = Noch nichts geändert. Es hieße:
change-for-nobody = Für niemanden ändert sich etwas.
change-mind = Das zuerst bedenken: { $what }
change-refused = Das geht nicht: { $what }
change-done = Geändert. { $count ->
    [0] Für niemanden ändert sich etwas.
   *[other] { $names } { $count ->
        [one] erfährt
       *[other] erfahren
     } es.
 }
change-undone = Zurückgenommen. { $count ->
    [0] Für niemanden ändert sich etwas.
   *[other] { $names } { $count ->
        [one] erfährt
       *[other] erfahren
     } es.
 }
change-stale = Der Plan hat sich inzwischen geändert. Sieh das Treffen noch einmal an und ändere es dann.
change-not-nothing-changes = es ist schon so.
change-not-no-meeting = dieses Treffen steht nicht mehr im Plan.
change-not-no-runner = diese Läuferin gibt es nicht. Nenne ihren Namen.
change-not-no-point = diesen Punkt gibt es auf ihrer Strecke nicht.
change-not-met-there = dort trifft sie schon jemand. Ändere jenes Treffen.
change-not-nobody-goes = es führe niemand hin. Lass das Treffen stattdessen aus.
change-not-no-person = diese Person gibt es nicht. Füge sie zuerst hinzu.
change-not-no-car = dieses Auto gibt es nicht.
change-not-no-name = ein Name fehlt.
change-not-name-taken = jemand mit diesem Namen ist schon dabei. Setze einen zweiten Namen dazu.
change-not-not-that-part = hier können nur Betreuer, Tempomacher und Unterstützer dazukommen.
change-not-no-limit = das Rennen hat kein Zeitlimit, in dem sie ankommen könnte. Gib in der Eventdatei ein späteres Ziel an.
change-not-unusual = die Eventdatei ist so geschrieben, dass sie hier nicht geändert werden kann. Ändere die Datei und lade sie.
change-not-past = dieses Treffen ist schon vorbei, oder ihr Rennen ist zu Ende. Stimmt das nicht, berichtige die Meldung.
change-not-behind = sie ist an diesem Punkt schon vorbei, oder ihr Rennen ist zu Ende. Wähle einen, der noch vor ihr liegt.
change-not-not-last = der Plan wurde seither geändert, oder das war keine Änderung von hier. Ändere ihn von Hand.
change-not-no-cut-off = an diesem Punkt gibt es kein Zeitlimit. Wähle einen, der eines hat.
change-not-no-time = die neue Zeit fehlt. Gib sie an wie 18:30.
change-not-no-drive = es fehlt, von wo aus. Wähle die Fahrt noch einmal.
change-not-no-minutes = die Minuten fehlen. Gib sie an wie 40.
change-not-drive-told = jemand hat im Chat gesagt, wie lange diese Fahrt dauert, und das gilt. Sag dort die neue Zeit, wie in ‚die Fahrt zur Mühle dauert 40 min‘.
change-invited = { $name } ist dabei. Die Einladung, einmal gültig: { $link } (Code { $code }). Schick sie gleich, sie wird nicht noch einmal gezeigt.
change-really = Jetzt ändern?
change-which = Was ist gemeint?
change-who-may = { $who } darf das nicht ändern. Wer darf: { $names }.

# -- das Stopp-Protokoll
button-log-stop = Stopp protokollieren
button-medic = Ich bin vom Sanitätsdienst
log-offer = Was war { $place ->
    [none] {""}
   *[other] an { $place }{" "}
}mit { $runner }? Jeder Druck wird sofort festgehalten; danach wie viel, wenn du es weißt. Oder schreib es: ‚getrunken 500, gegessen halbe Banane, kein Ibu‘.
log-noted = Protokolliert für { $runner }: { $what }.
noted-log = Protokolliert: ‚{ $words }‘.
log-more-ate = Wie viel? Drück Gramm Kohlenhydrate, oder schreib, was es war: ‚halbe Banane‘.
log-more-drank = Wie viel? Drück, oder schreib ml: ‚400‘.
log-more-peed = Wie sah der Urin aus?
log-more-mood = Wie ist die Stimmung?
log-more-feet = Wie sind die Füße?
log-more-painkiller = Welches? Drück, oder schreib es mit der Menge.
log-more-slept = Wie lange? Drück, oder schreib Minuten.
log-more-changed = Was? Drück, oder schreib es.
log-item-ate = Gegessen
log-item-drank = Getrunken
log-item-peed = Gepinkelt
log-item-mood = Stimmung
log-item-feet = Füße
log-item-painkiller = Schmerzmittel
log-item-slept = Geschlafen
log-item-changed = Gewechselt
log-ate = gegessen, Menge nicht gesagt
log-ate-none = nichts gegessen
log-ate-amount = { $amount } g Kohlenhydrate gegessen
log-ate-words = gegessen: { $words }
log-drank = getrunken, Menge nicht gesagt
log-drank-none = nichts getrunken
log-drank-amount = { $amount } ml getrunken
log-drank-words = getrunken: { $words }
log-peed = gepinkelt
log-peed-none = nicht gepinkelt
log-peed-good = gepinkelt, hell
log-peed-bad = gepinkelt, dunkel
log-peed-words = gepinkelt: { $words }
log-mood = Stimmung
log-mood-good = Stimmung gut
log-mood-so-so = Stimmung mittel
log-mood-bad = Stimmung schlecht
log-mood-words = Stimmung: { $words }
log-feet = Füße
log-feet-good = Füße gut
log-feet-so-so = Füße wund
log-feet-bad = Füße schlecht
log-feet-words = Füße: { $words }
log-painkiller = ein Schmerzmittel
log-ate-unsaid = kein Essen protokolliert
log-drank-unsaid = kein Trinken protokolliert
log-painkiller-unsaid = kein Schmerzmittel protokolliert
log-painkiller-none = kein Schmerzmittel
log-painkiller-words = Schmerzmittel: { $words }
log-slept = geschlafen
log-slept-none = nicht geschlafen
log-slept-amount = { $amount } min geschlafen
log-slept-words = geschlafen: { $words }
log-changed = etwas gewechselt
log-changed-words = gewechselt: { $words }
log-word-ibuprofen = Ibuprofen
log-word-paracetamol = Paracetamol
log-word-socks = Socken
log-word-shoes = Schuhe
log-word-top = Oberteil
log-word-battery = Lampenakku
log-with = { $what } ({ $words })
log-at = { $what }, { $when }
log-since = Protokoll seit { $since }: { $what }.
log-nothing = Noch ist nicht protokolliert, was { $runner } gegessen, getrunken oder genommen hat.
log-row = { $when }{ $place ->
    [none] {""}
   *[other] , { $place }
}: { $what } ({ $by })
log-medic = { $who } hat das als Sanitätsdienst gezeigt bekommen ({ $when }).
log-not-advice = Das ist, was protokolliert wurde, nicht alles, was war. Was daraus folgt, entscheidet der Sanitätsdienst des Rennens.
log-for-medics = Was { $runner } gegessen, getrunken und genommen hat, ist für die Crew, und für den Sanitätsdienst, der sie versorgt. Bist du das, dann drück: Es wird festgehalten, dass du es gesagt hast, und die Crew kann es sehen.
log-flag-painkiller-and-no-pee = ACHTUNG: ein Schmerzmittel, und seit { $since } kein Pinkeln protokolliert. Kein weiteres Schmerzmittel ohne den Sanitätsdienst des Rennens: zeig ihm das.
log-flag-no-pee = ACHTUNG: seit { $since } nicht gepinkelt, laut Protokoll. Zeig das dem Sanitätsdienst des Rennens.
log-flag-dark-pee = ACHTUNG: um { $since } dunkler Urin protokolliert. Zeig das dem Sanitätsdienst des Rennens.
log-flag-painkillers-again = ACHTUNG: mehr als ein Schmerzmittel, das letzte um { $since }. Kein weiteres ohne den Sanitätsdienst des Rennens.
log-flag-much-drunk = ACHTUNG: seit { $since } mehr als 750 ml in der Stunde protokolliert. Nach Durst trinken, nicht mehr; geschwollen, übel, Kopfweh oder verwirrt: sofort zum Sanitätsdienst.
log-flag-not-eating = Nach { $since } nichts gegessen, laut Protokoll: siehe die Karte für den Magen.
look-back-kept = Aufgeschrieben: { $kept }. Es steht auf der Seite über das Rennen. Danke.
look-back-well = was gut war
look-back-wrong = was schiefging
look-back-next = was du anders machst
follow-given =
    Der Link für Zuschauer: { $link }
    Er zeigt, an welchen Punkten du warst, eine halbe Stunde verspätet und auf eine Viertelstunde genau: keine Position, niemanden aus deiner Crew. Ein früherer Link gilt nicht mehr. ‚Nimm den Link zurück‘ beendet diesen.
follow-taken-back = Der Link für Zuschauer ist zurückgenommen. Wer ihn öffnet, sieht nichts mehr von dir.
follow-not-yours = Nur wer läuft, gibt den Link für Zuschauer oder nimmt ihn zurück.

## A line of the event file, word for word
written = { $kind ->
    [rule] Hinweis des Rennens: { $text }.
    [must] Dabeihaben muss sie laut Plan: { $text }.
    [transport] Wer { $name ->
        [none] aufgibt
       *[other] bei { $name } aufgibt
     }, wird laut Plan zurückgebracht: { $text }.
    [parking] Zum Parken bei { $name } sagt der Plan: { $text }.
    [permit] Zur Erlaubnis bei { $name } sagt der Plan: { $text }.
    [surface] Zum Boden bei { $name } sagt der Plan: { $text }.
    [escape] Zum Weg hinunter bei { $name } sagt der Plan: { $text }.
    [pace] { $name } läuft laut Plan mit ihr: { $text }.
    [travel] Zur Anreise sagt der Plan: { $text }.
    [beds] Zu den Betten sagt der Plan: { $text }.
    [entry] Zur Anmeldung sagt der Plan: { $text }.
    [missed] Wird sie bei { $name } verpasst, sagt der Plan: { $text }.
    [kit] Für { $name } hat der Plan: { $text }.
    [food] Zu essen und zu trinken hat der Plan bei { $name }: { $text }.
    [way] Zum Weg nach { $name } sagt der Plan: { $text }.
    [bag] Ihr Beutel bei { $name }, laut Plan: { $text }.
    [carries] { $name } trägt laut Plan: { $text }.
    [fuel] Zum Essen ab { $name } sagt der Plan: { $text }.
    [prompt] Der Plan sagt für ‚{ $name }‘: { $text }.
    [hear] Hören will { $name } laut Plan: { $text }.
    [not_hear] Nicht hören will { $name } laut Plan: { $text }.
    [card] Der Plan sagt für ‚{ $name }‘: { $text }.
   *[other] { $name ->
        [none] Der Plan sagt: { $text }.
       *[other] Der Plan sagt zu { $name }: { $text }.
     }
 }
written-sleep = { $person } will von { $start } bis { $end } schlafen.
needed-next = Ja, als Nächstes hier:
needed-nowhere = Für dich steht kein Treffen mehr an.
needed-yes = Ja, du bist für { $place } eingeteilt.
needed-no = Nein, für { $place } bist du nicht eingeteilt. { $crew ->
    [none] Dort ist kein Treffen geplant.
   *[other] Eingeteilt: { $crew }.
 }
parking-else-unknown = Einen anderen Parkplatz kenne ich nicht: Im Plan steht keiner. { $name } weiß es vielleicht: { $phone }.
crew-food-unknown = Vom Essen für die Crew steht nichts im Plan, nur von ihrem. Vor Ort weiß es vielleicht jemand.
fetch-unknown = Fürs Abholen ist niemand eingeteilt. { $name } entscheidet, wie sie wegkommt: { $phone }.
fetch-access = { $place } ist ein Crewpunkt: Die Crew kann hinfahren.
fetch-no-access = { $place } ist kein Crewpunkt: Nach Plan fährt von euch kein Auto hin.
fetch-nearest = Nach Plan am nächsten:
near-there = { $name }, in { $place }{ $since ->
    [none] {""}
   *[other] {" "}seit { $since }
 }{ $phone ->
    [none] {""}
   *[other] {": "}{ $phone }
 }
near-bound = { $name }, unterwegs nach { $place }{ $phone ->
    [none] {""}
   *[other] {": "}{ $phone }
 }
on-spot-nobody = Ich weiß von niemandem, der gerade an einem Punkt ist.
on-spot-search-unknown = Wer draußen nach ihr sucht, weiß ich nicht; vielleicht { $name }: { $phone }.
next-bit = Als Nächstes: { $place }, etwa { $distance } ab { $last }.
ground-else = Mehr steht über den Boden nicht im Plan.
took = { $runner } hat { $length } gebraucht, ab { $start }.
took-so-far = { $runner } ist seit { $length } unterwegs, ab { $start }.
late-from = { $runner } gilt als verspätet, wenn bis { $when } nichts aus { $place } kommt.
