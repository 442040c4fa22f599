# Jeder Satz, den jemand liest, auf Deutsch. Die Namen der Sätze und ihrer
# Werte sind dieselben wie dort.

## Zeiten, Längen, Orte

both-clocks = { $there } (deine Uhr: { $here })
window = wohl { $likely }, zwischen { $early } und { $late }; in 1 von 10 Fällen früher, in 1 von 10 später
window-over = war erwartet für { $likely }, zwischen { $early } und { $late }; von dort ist nichts gemeldet
window-there = dort seit { $likely }
window-set = { $likely }
window-due = wohl { $likely }, jederzeit von jetzt bis { $late }; in 1 von 10 Fällen später
window-open = jederzeit von jetzt bis { $late }; in 1 von 10 Fällen später
window-stood = wohl { $likely }, zwischen { $early } und { $late }
window-own = (deine Uhr: wohl { $likely }, zwischen { $early } und { $late })
window-own-over = (deine Uhr: { $likely }, zwischen { $early } und { $late })
window-own-there = (deine Uhr: { $likely })
window-own-set = (deine Uhr: { $likely })
window-own-open = (deine Uhr: spätestens { $late })
window-own-due = (deine Uhr: wohl { $likely }, spätestens { $late })
window-short = { $likely } ({ $early } bis { $late })
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

## Meldungen als Tatsachen

fact-in = in { $place } angekommen
fact-out = { $place } verlassen
fact-through = ohne Halt durch { $place }
fact-position = gesehen, { $place }
fact-resting = macht Pause, { $place }
fact-moving-again = wieder unterwegs, { $place }
fact-asked-for-help = hat um Hilfe gebeten, { $place }
fact-retired = ausgeschieden, { $place }
fact-in-hand = bei jemandem, { $place }
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
fact-in-hand-nowhere = bei jemandem, Ort nicht genannt
fact-sweep-through-nowhere = Schlussläufer durch, Ort nicht genannt
fact-not-here-yet-nowhere = noch nicht da, Ort nicht genannt
place-km = { $km } nach dem Start
place-nowhere = Ort nicht genannt

## Wie frisch

fresh = Zuletzt bekannt: { $fact }, { $when }, gemeldet von { $who } ({ $ago }).
fresh-nothing = Von { $name } ist noch nichts gemeldet.
fresh-before = { $name } ist noch nicht gestartet.
fresh-doubted = { $count ->
    [one] Eine Meldung liegt vor, zählt aber noch nicht: sie muss bestätigt werden.
   *[other] { $count } Meldungen liegen vor, zählen aber noch nicht: sie müssen bestätigt werden.
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
fresh-sharper = Eine Meldung aus { $name } würde das genauer machen.

## Zeichen vor einer Nachricht

mark-delayed = [verspätet, fällig { $when }] { $text }
mark-repeat = [vielleicht doppelt{ $short ->
    [0] {""}
   *[other] {", Nr. "}{ $short }
 }] { $text }
mark-number = (Nr. { $short })

# In einer Mail, die keine Knöpfe hat.
mail-answer = Zum Antworten diese Seite öffnen und dort drücken: { $link }
mail-answer-note = Der Link antwortet als du, bis { $until }: gib ihn nicht weiter. Das Öffnen allein ist noch keine Antwort. Eine Antwort auf diese Mail liest niemand.
mail-no-page = Eine Antwort auf diese Mail liest niemand, und es gilt als unbeantwortet, bis du im Chat oder auf der Seite antwortest.{ $phone ->
    [none] {""}
   *[other] { " " }Wenn du beides nicht hast, ruf { $name } an: { $phone }.
}

## Nachrichten: Treffen

leave-now = Fahr jetzt los nach { $place } zu { $runner }: sei ab { $be_there } dort.
leave-now-by = Fahr bis { $leave_by } los nach { $place } zu { $runner }: sei ab { $be_there } dort.
leave-now-late = Abfahrt nach { $place } war { $leave_by }. Bei normaler Fahrt kommst du vielleicht nach { $runner } an. Fahr wie immer; Eile hilft niemandem.
meeting-she-comes = { $runner } in { $place }: { $window }.
meeting-drive = Fahrt { $length }{ $from ->
    [none] .
   *[other] {" ab "}{ $from }.
 }
meeting-no-drive = Es ist keine Fahrzeit bestätigt, darum gibt es keine Abfahrtszeit. Sag mir, wie lange die Fahrt dauert.
meeting-wait = Warte bis { $until }.
meeting-wait-short = Warte bis { $until }, dann weiter zum nächsten Treffen: { $odds }, dass { $runner } bis dahin gekommen ist.
meeting-kit = Mitbringen: { $kit }.
meeting-take-back = Dort wieder mitnehmen: { $kit }.
meeting-food = Essen: { $food }
meeting-if-missed = Falls verpasst: { $text }
meeting-no-signal = Kein Netz in { $place }.
be-there = Sei ab { $be_there } in { $place } für { $runner }.
move-on = Fahr weiter von { $place }: nach { $until } lohnt es sich nicht mehr, auf { $runner } zu warten.
move-on-next-other = Nächstes Treffen: { $place }, { $runner }.
move-on-next = Nächstes Treffen: { $place }.
window-moved = Neue Zeiten für { $place }: { $what }
window-moved-was = Vorher: { $was }.
window-moved-leave = fahr bis { $leave_by } los{ $was ->
    [none] {""}
   *[other] {" (vorher "}{ $was })
 }, sei ab { $be_there } dort, warte bis { $until }.
window-moved-there = sei ab { $be_there } dort, warte bis { $until }.
unreported-out = Niemand hat gemeldet, dass { $runner } { $place } verlassen hat. Schreib, wann sie los ist; ist sie noch bei dir, schreib ‚noch da‘ und bleib.
meeting-lost = { $runner } in { $place } ist nicht mehr zu schaffen. Versuch es nicht.
meeting-lost-why = { $runner } in { $place }: { $window }.
lost-access-closed = Der Zugang für die Crew ist dort gesperrt.
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

## Nachrichten: wo sie ist

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
retired-pick-up = Abholung: { $who }.
retired-no-pick-up = Noch niemand ist eingeteilt, sie zu holen. Wer fährt?
retired-in-hand = Jemand hat sie bei sich.
retired-not-in-hand = Sie wird weiter überwacht, bis jemand sie bei sich hat: sag es mir dann.
retired-race-control = Die Rennleitung weiß es.
retired-has-her = { $who } hat { $runner } bei sich, { $when }.
retired-in-hand-taken-back = Zurückgenommen: niemand hat { $runner } bei sich. Sie wird wieder überwacht, bis jemand sie bei sich hat.
retired-waits-hand = Noch hat niemand gemeldet, { $runner } bei sich zu haben.
retired-waits-race-control = Die Rennleitung muss noch erfahren, dass { $runner } ausgeschieden ist. Sag du es ihr jetzt: { $name } { $phone }. Antworte ‚Rennleitung weiß es‘, wenn es getan ist.
retired-call-you = Du sagst es der Rennleitung: { $name } { $phone }. Antworte ‚Rennleitung weiß es‘, wenn es getan ist.
retired-call-other = { $caller } sagt es der Rennleitung; du musst dort nicht anrufen.
retired-tell-race-control = Die Rennleitung muss es wissen: { $name } { $phone }. Antworte ‚Rennleitung weiß es‘, wenn es getan ist.
how-own-choice = eigene Entscheidung
how-timed-out = Zeitlimit
how-withdrawn-by-medics-or-officials = von Sanitätern oder Rennleitung herausgenommen
how-did-not-start = nicht gestartet
how-not-said = noch nicht gesagt
in-hand = Jemand hat { $runner } bei sich: das sagt { $who }, { $when }.
in-hand-where = Wo: { $place }.
in-hand-nowhere = Wo das ist, wurde nicht gesagt.
in-hand-words = { $who } schrieb: ‚{ $words }‘
in-hand-alarm = Der Alarm zu { $runner } bleibt trotzdem offen.
in-hand-calm = Zu { $runner } ist kein Alarm offen; du musst jetzt nichts tun. Ob sie weitergeht, wurde nicht gesagt: eine Stunde lang löst ihr Schweigen keinen Alarm aus, danach wird sie überwacht wie vorher.
in-hand-ask = Nachfragen: { $who } { $phone }.
cut-off-falling = { $runner } und das Zeitlimit in { $place } ({ $edge } bis { $cut_off }): Chance { $odds }, und sie sinkt.
cut-off-rising = { $runner } und das Zeitlimit in { $place } ({ $edge } bis { $cut_off }): Chance wieder { $odds }.
cut-off-latest = Damit es in 9 von 10 Fällen reicht, muss sie { $place } bis { $when } verlassen haben.
cut-off-not-possible = { $place } so früh zu verlassen, dass es in 9 von 10 Fällen reicht, ist nicht mehr möglich.
edge-in = Ankunft
edge-out = Aufbruch
late = { $runner } in { $place }? Später, als es in 9 von 10 Fällen gewesen wäre. War sie schon da?
late-window = Erwartet: { $window }.
late-answer = Ja, noch nicht, oder ist niemand da, der sie sieht?
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
 } wurde verlegt{ $until ->
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
race-change-all-anew = Alle Zeiten sind neu berechnet.
race-ended-crew = Die geplanten Treffen gelten nicht mehr, und es kommt kein Aufruf zum Losfahren mehr. Wo { $runner } abzuholen ist, sagt die Rennleitung oder sie selbst: frag, bevor du fährst, { $name } { $phone }. Wer sie bei sich hat, schreibt ‚wir haben sie‘; bis dahin wird sie überwacht.
race-ended-runner = Wohin du jetzt gehst, sagt die Rennleitung: { $name } { $phone }. Sag deiner Crew, wo sie dich abholen kann.
race-change-who = Gemeldet von { $who }.

## Nachrichten: Alarm

alarm-runner = { $runner } (Nr. { $bib })
alarm-overdue = ALARM: { $runner } ist in { $place } ÜBERFÄLLIG.
alarm-overdue-nowhere = ALARM: { $runner } ist ÜBERFÄLLIG.
alarm-asked-for-help = ALARM: { $runner } hat UM HILFE GEBETEN.
alarm-sweep = ALARM: SCHLUSSLÄUFER DURCH { $place }, und { $runner } wurde dort nicht gesehen.
alarm-look-again = NACHSEHEN: { $runner }, der Alarm ist noch offen. { $name ->
    [none] Was ist jetzt bekannt?
   *[other] { $name }, was ist jetzt bekannt?
 }
alarm-handed-on = ALARM GEHT AN DICH WEITER: { $runner }. Die vorher Gefragten haben ihn nicht übernommen.
alarm-handed-on-held = ALARM GEHT AN DICH WEITER: { $runner }. { $name } hat ihn, antwortet aber nicht mehr.
alarm-given-back = { $name } kann nicht mehr: DEN ALARM zu { $runner } HAT JETZT NIEMAND. Die Nächsten werden gefragt.
alarm-handed-on-back = ALARM GEHT AN DICH WEITER: { $runner }. { $name } hatte ihn und kann nicht mehr.
alarm-taken = { $name } HAT DEN ALARM zu { $runner } ÜBERNOMMEN: du musst nicht mehr antworten.
alarm-answer = Antworte ‚Ich übernehme‘, dann gehört er dir; ohne Antwort in { $length } wird die nächste Person gefragt.
alarm-held-you = Du hast diesen Alarm. Nächstes Nachsehen: { $when }.
alarm-held-you-now = Du hast diesen Alarm. Antworte ‚gesehen‘ oder ‚noch vermisst‘, oder schreib, was du weißt.
alarm-held = { $name } hat diesen Alarm. Nächstes Nachsehen: { $when }.
alarm-held-untimed = { $name } hat diesen Alarm.
alarm-call-you = DU rufst jetzt an: { $name }, { $phone }. Sonst niemand.
alarm-call-other = { $caller } ruft die Rennleitung an. Bitte ruf dort deswegen nicht selbst an.
alarm-call-in-place = { $caller } soll die Rennleitung anrufen und HAT NICHT GEANTWORTET. Übernimm, und DU rufst an: { $name }, { $phone }.
alarm-call-none = Niemand ist eingeteilt, die Rennleitung anzurufen. Wer antwortet, ruft { $name } an, { $phone }.
alarm-life = Wenn du glaubst, dass sie in Gefahr ist, ruf sofort { $emergency } an; warte nicht auf das hier.
alarm-words = Im Wortlaut: ‚{ $words }‘
alarm-not-named = NICHT GESAGT, FÜR WEN: { $who } betreut mehr als eine Läuferin, und dieser Alarm läuft für jede, bis { $who } sagt, welche es ist. Frag { $who }{ $phone ->
    [none] .
   *[other] {": "}{ $phone }.
 }
alarm-named = { $name } sagt jetzt: der Hilferuf gilt { $runner }. Der Alarm zu ihr ist offen.
alarm-fact = TATSACHE, zuletzt bekannt: { $fact } { $when } ({ $ago }), gemeldet von { $who }.
alarm-unconfirmed = NICHT BESTÄTIGT, kann stimmen: { $fact } { $when } ({ $ago }), gemeldet von { $who }. Frag nach.
unnamed = ALARM: HILFERUF von { $who }, NICHT GESAGT, FÜR WELCHE LÄUFERIN.
unnamed-ask = Ruf { $who } an und frag, wer Hilfe braucht und wo{ $phone ->
    [none] .
   *[other] {": "}{ $phone }.
} Der Ruf kam { $when }.
unnamed-to = Das ging an: { $names }.
unnamed-held = { $name } hat übernommen und findet heraus, wer es ist.
unnamed-held-you = Du hast übernommen: finde heraus, wer es ist. Ihr eigener Alarm geht hinaus, sobald wer gerufen hat sie nennt, oder du schreibst ‚Name braucht Hilfe‘. War es nichts, beende ihn mit dem Knopf.
alarm-answer-unnamed = Antworte ‚Ich übernehme‘, dann gehört er dir. Du wirst wieder gefragt, bis jemand übernimmt.
unnamed-meant = { $name } sagt jetzt: der Hilferuf gilt { $runner }{ $bib ->
    [none] {""}
   *[other] {" (Nr. "}{ $bib }{")"}
}. Ihr eigener Alarm ist hinausgegangen.
unnamed-over = ENTWARNUNG: der Hilferuf von { $who } ist zurückgenommen{ $name ->
    [none] .
   *[other] {", von "}{ $name }.
}
alarm-help-ends = Der Alarm endet, sobald jemand, der sie bei sich hat, ‚wir haben sie‘ schreibt, oder der Sicherheitskontakt oder der Veranstalter ‚Entwarnung‘.
alarm-help-seen = { $runner } ist seitdem gesehen worden. Frag, ob sie noch Hilfe braucht; das endet mit ‚wir haben sie‘, oder mit ‚Entwarnung‘ vom Sicherheitskontakt oder Veranstalter.
alarm-said-km = NACH DEN WORTEN DES RUFS ist sie bei { $km }{ $place ->
    [none] .
   *[other] {": "}{ $place }.
 }
alarm-heard-since = SEITDEM GEHÖRT, Ort unbekannt: { $when } ({ $ago }), { $who }: ‚{ $words }‘.
alarm-contact-lost = TATSACHE: ihr geteilter Standort endete { $when } ({ $ago }), seitdem ist nichts von ihr gehört. Das Telefon kann leer, aus oder ohne Netz sein; über sie selbst sagt das nichts.
alarm-race-over = Ihr Rennen war { $when } zu Ende: wo sie danach hinging, kann keine Prognose sagen.
alarm-had-her = TATSACHE: { $who } schrieb { $when } ({ $ago }), dass jemand sie bei sich hat. Frag zuerst { $who }, wo sie ist.
alarm-had-her-you = TATSACHE: du hast { $when } ({ $ago }) geschrieben, dass jemand sie bei sich hat. Wo ist sie jetzt?
alarm-not-there = TATSACHE: { $fact }, { $when } ({ $ago }), gemeldet von { $who }{ $phone ->
    [none] .
   *[other] {", "}{ $phone }.
 }
alarm-fact-none = TATSACHE: seit dem Start { $when } wurde sie an keinem Punkt gesehen.
alarm-expected = Erwartet in { $place }: { $window }.
alarm-why-now = Er kommt { $length } nach der wahrscheinlichen Zeit, weil Meldungen spät kommen und langsame Abschnitte häufig sind: früher wären die meisten solcher Alarme falsch.
alarm-asked = Diesen Alarm hatten vor dir: { $names }.
alarm-asked-none = Dieser Alarm geht zuerst an dich.
alarm-no-word = Keine Antwort von { $names }, gefragt { $when }, ob sie angekommen ist.
alarm-told = Auch benachrichtigt: { $names }.
alarm-estimate = SCHÄTZUNG, NICHT GESEHEN: zwischen { $low } und { $high } auf der Strecke, am ehesten bei { $likely }.
alarm-estimate-place = Wahrscheinlichster Ort dieser Schätzung: { $place }.
alarm-may-be = Vielleicht ist sie nur nicht gemeldet worden oder von der Strecke abgekommen:
alarm-may-unreported-nobody = - niemand meldet aus { $place };
alarm-may-unreported = - { $place } wird gemeldet durch { $by }, und nicht jeder wird erfasst;
alarm-may-delay = - Meldungen aus { $place } können { $length } später kommen;
alarm-may-signal = - kein Netz zwischen { $from } und { $to };
alarm-may-signal-point = - kein gutes Netz in { $place };
alarm-may-phone = - Telefon leer, nass oder aus;
alarm-may-resting = - sie ruht oder schläft am Rand oder in einem Unterstand;
alarm-may-off = - falsch abgebogen, oder unterwegs ausgeschieden und von anderen mitgenommen;
alarm-may-escape = - abgestiegen über { $route }.
by-timing-mat = eine Zeitmatte
by-volunteer = Helfer
by-crew = die Crew
by-runner = die Läuferin selbst
by-tracker = einen Sender
alarm-bib = Nr. { $bib }.
alarm-her = Telefon { $phone }. Kleidung: { $clothing }. Lampe: { $torch }. { $pacer }.
alarm-pacer = Begleitläufer bei ihr: { $name }
alarm-no-pacer = Kein Begleitläufer bei ihr bekannt
not-known = nicht bekannt
alarm-numbers = { $name }: { $phone }. Notruf: { $emergency }.
alarm-numbers-rescue = { $name }: { $phone }.
alarm-read-out = Zum Vorlesen:
read-out-who = „Es geht um Läuferin { $runner }{ $bib ->
    [none] {""}
   *[other] {", Startnummer "}{ $bib }
 }, beim { $event }.
read-out-not-named = Wer gerufen hat, hat noch nicht gesagt, welche von mehreren Läuferinnen Hilfe braucht.
read-out-last = Zuletzt bekannt: { $fact }, { $when } Ortszeit, gemeldet von { $who }.
read-out-heard = { $when } Ortszeit meldete { $who }, ohne Ort: ‚{ $words }‘.
read-out-last-place = Dieser Ort: { $place }.
read-out-last-km = Das sind { $km } nach dem Start.
read-out-not-there = { $when } Ortszeit meldete { $who }, dass sie in { $place } noch nicht da war.
read-out-over = Ihr Rennen war { $when } Ortszeit zu Ende.
read-out-had-her = { $when } Ortszeit meldete { $who }, dass jemand sie bei sich hat.
read-out-none = Seit dem Start am { $when } Ortszeit wurde sie an keinem Punkt gesehen.
read-out-expected = Erwartet war sie in { $place }, am ehesten { $likely }; bis { $late } Ortszeit wäre sie in 9 von 10 Fällen dort gewesen.
read-out-help = Sie hat um Hilfe gebeten{ $words ->
    [none] .
   *[other] {" mit den Worten: "}{ $words }.
 }
read-out-estimate = Schätzung, nicht gesehen: sie ist vielleicht nahe { $place }.
read-out-her = Kleidung: { $clothing }. Lampe: { $torch }. Ihr Telefon: { $phone }.“
alarm-cautions = Stilepost ist eine Hilfe, kein Rettungsdienst: Notruf, Rennleitung und Bergrettung entscheiden. Geh nicht allein oder im Dunkeln auf die Strecke, um sie zu suchen. Halte dieses Telefon geladen und frei.
stand-down = ENTWARNUNG: der Alarm zu { $runner } ist vorbei ({ $of_kind }).
stand-down-seen = ENTWARNUNG: { $runner } wurde in { $place } gesehen, { $when }, gemeldet von { $by }.
stand-down-why = Grund: { $reason }. Von { $by }, { $when }.
stand-down-thanks = Es ist nichts mehr zu tun. Hast du jemanden angerufen, sag es auch dort.
stand-down-reason-seen = gesehen
stand-down-reason-stand-down = von Hand beendet
stand-down-reason-taken-back = die Meldung dahinter wurde zurückgenommen
stand-down-reason-meant = der Hilferuf galt { $other }
stand-down-reason-other = { $reason }
alarm-kind-overdue = überfällig
alarm-kind-asked-for-help = um Hilfe gebeten
alarm-kind-sweep = Schlussläufer durch, ohne sie
alarm-kind-other = Alarm
test-alarm = PROBEALARM, es ist nichts geschehen. Antworte ‚Ich übernehme‘ bis { $when }.
test-alarm-why = Lass das Telefon, wie es nachts sein wird: geladen, laut, auf dem Tisch. Wer nicht antwortet, wird dem Veranstalter gezeigt.
unreached = { $name } NICHT ERREICHT ({ $what }) seit { $when }. Versucht: { $channels }. Bitte ruf an.
unreached-silent = KEINE ANTWORT von { $name } ({ $what }) seit { $when }. Bitte ruf an.
unreached-kind-leave-now = losfahren
unreached-kind-late = Frage, ob sie angekommen ist
unreached-kind-wake-up = wecken
unreached-kind-test-alarm = Probealarm
unreached-phone = { $name }: { $phone }.
outage-open = AUSGEFALLEN seit { $when }: { $what }. Meldungen darüber kommen verspätet; das Schweigen derer, die es nutzen, löst so lange keinen Alarm aus. Ruf sie an.
outage-open-out = AUSGEFALLEN seit { $when }: { $what }. Nachrichten darüber warten oder gehen auf dem nächsten Weg hinaus.
outage-over = { $what }: ausgefallen von { $from } bis { $to } ({ $length }). Was gewartet hat, ist gelesen; die Zeiten sind neu berechnet.
outage-over-out = { $what }: ausgefallen von { $from } bis { $to } ({ $length }). Was dort gewartet hat, geht jetzt hinaus.
outage-what-server = unser Server oder seine Datenbank
outage-what-telegram = unser Telegram-Bot
outage-what-email = unsere E-Mail
outage-what-text = unsere Kurznachrichten
outage-what-webhook = unser Webhook
outage-what-other = unser Kanal { $name }

## Nachrichten: Berichtigungen und Zweifel

correction-moved = Berichtigung zu { $runner }: { $what } { $now_at }, nicht { $was_at }. Von { $by }.
correction-now = Berichtigung zu { $runner }: { $what }, jetzt { $now_at }. Von { $by }.
correction-taken-back = Zurückgenommen zu { $runner }: { $what }; das gilt nicht mehr. Von { $by }.
correction-taken-back-at = Zurückgenommen zu { $runner }: { $what } { $was_at }; das gilt nicht mehr. Von { $by }.
correction-watch-on = Sie wird von jetzt an wieder überwacht.
correction-race-control = Falls die Rennleitung hörte, dass ihr Rennen vorbei ist: sag ihr jetzt, dass es nicht so ist, { $name } { $phone }.
unconfirmed = Bitte bestätigen, { $runner }: { $fact }, { $when }? Gemeldet von { $who }.
unconfirmed-seen = Bitte bestätigen: wurde { $runner } unterwegs gesehen, { $when }? Gemeldet von { $who }.
unconfirmed-words = Geschrieben: ‚{ $words }‘
unconfirmed-why = Festgehalten, zählt aber nicht: { $doubt }.
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
doubt-vehicle = es bewegt sich wie ein Auto: Sender im Auto?
doubt-parked = dort parken Autos: Sender im Auto?
doubt-other-post = das kommt von jemandem, der an einem anderen Punkt hilft
doubt-supporter = es kommt von einem Fan
doubt-guessed = ein Teil davon ist aus dem Text erschlossen
doubt-crew-position = es ist der Ort eines Telefons, das nicht ihres ist
doubt-not-named = es sagt nicht, für welche Läuferin
doubt-does-not-fit = es passt nicht zu dem, was vorher gemeldet war
doubt-none = es muss bestätigt werden

## Antworten

point-next = { $runner } in { $place }: { $window }.
point-reached = { $runner } ist { $when } in { $place } angekommen{ $left ->
    [none] .
   *[other] {" und hat es "}{ $left }{" verlassen."}
 }
point-left = { $runner } hat { $place } { $when } verlassen.
point-through = { $runner } ist { $when } durch { $place } gelaufen.
point-is-in = { $runner } ist seit { $when } in { $place }.
point-odds-first = Dass { $runner } überhaupt nach { $place } kommt: Chance { $odds }.
point-if = Falls sie hinkommt: { $window }.
point-odds = Das gilt, falls sie dort ankommt: Chance { $odds }.
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
going-retired-in-hand = ausgeschieden, jemand hat sie bei sich
going-finished = im Ziel
going-closed = im Ziel, bei ihrer Crew
no-forecast = Für { $place } gibt es kein Zeitfenster.
where-seen = { $runner } wurde zuletzt { $when } gesehen, { $place }, gemeldet von { $who } ({ $ago }).
where-between = { $runner }, zuletzt bekannt: { $fact }, { $when }, gemeldet von { $who } ({ $ago }).
where-estimate = Schätzung, nicht gesehen: zwischen { $low } und { $high } auf der Strecke, am ehesten bei { $likely }.
where-estimate-near = Schätzung, nicht gesehen: nahe { $likely } auf der Strecke.
where-legs = Das liegt zwischen { $from } und { $to }.
where-at = { $runner } ist in { $place }, seit { $when }, gemeldet von { $who } ({ $ago }).
where-gone-on = Niemand hat gemeldet, dass sie dort aufgebrochen ist; Chance { $odds }, dass sie weitergegangen ist.
where-ended = { $runner }: { $going }.
gap-answer-late = { $runner } liegt in { $place } etwa { $length } hinter dem Plan, { $window }.
gap-answer-early = { $runner } liegt in { $place } etwa { $length } vor dem Plan, { $window }.
gap-answer-none = { $runner } liegt in { $place } im Plan, { $window }.
gap-fact = Ankunft in { $place } { $when }: dort { $gap }.
gap-none-known = Es gibt keine Planzeit zum Vergleich.
supposed-slower = Läuft { $runner } ab hier { $percent } % langsamer: { $place } { $window }.
supposed-faster = Läuft { $runner } ab hier { $percent } % schneller: { $place } { $window }.
supposed-leaving = Bricht { $runner } um { $when } auf: { $place } { $window }.
supposed-on-the-move = { $runner } ist, soweit bekannt, an keinem Punkt, sondern unterwegs: so steht es jetzt.
supposed-only = Nur angenommen: niemand wurde benachrichtigt, nichts ist geändert.
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
cut-off-line = { $place }, { $edge } bis { $when }: Chance { $odds }.
cut-off-more = Danach:
cut-offs-none = Für { $runner } gibt es kein Zeitlimit mehr.
missed-seen-out = Ja: { $runner } hat { $place } { $when } verlassen.
missed-seen-in = Nein: { $runner } ist seit { $when } in { $place }, ein Aufbruch ist nicht gemeldet.
missed-gone-on = { $runner } war um { $when } in { $place }, ein Aufbruch ist nicht gemeldet; Chance { $odds }, dass sie weitergegangen ist.
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
people-unreached = NICHT ERREICHT
people-phone = Telefon { $phone }
people-car = { $car }
people-none = Soweit bekannt, ist niemand in { $place }.
people-nobody = Sonst ist niemand dabei, den du sehen darfst.
people-head = { $count ->
    [one] Eine Person:
   *[other] { $count } Personen:
 }
numbers = { $name }: { $phone }. Notruf: { $emergency }.
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
leave = Fahr bis { $leave_by } los nach { $place }; sei ab { $be_there } dort.
leave-lost = { $runner } ist in { $place } nicht mehr zu treffen. { $why }
leave-over = Die Abfahrtszeit nach { $place } war { $leave_by }. Fahr wie immer; Eile hilft niemandem.
leave-ended = Kein Treffen und keine Abfahrtszeit gilt mehr. Wo sie abzuholen ist, sagt die Rennleitung oder sie selbst: frag, bevor du fährst.
leave-unknown = Noch keine Abfahrtszeit nach { $place }: die Fahrt ist nicht bestätigt. Sei ab { $be_there } dort.
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
drive-estimated = Niemand hat das bestätigt; keine Abfahrtszeit stützt sich darauf.
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
meeting-not-among = { $place } ist nicht unter deinen nächsten Treffen.
dark-yes = Ja: in { $place } ist es dunkel, wenn { $runner } voraussichtlich dort ist ({ $window }).
dark-no = Nein: in { $place } ist es hell, wenn { $runner } voraussichtlich dort ist ({ $window }).
plan-says-nothing = { $words ->
    [none] Das steht nicht im Plan. Bekannt ist:
   *[other] Über ‚{ $words }‘ sagt der Plan nichts. Bekannt ist:
}
time-left = Noch { $length }, bis du nach { $place } losmusst. Wofür das reicht, sagt der Plan nicht.
time-left-unknown = Wie viel Zeit bleibt, sagt der Plan nicht: für { $place } gibt es keine Abfahrtszeit.
time-left-none = Vor { $place } bleibt keine Zeit mehr: die Abfahrtszeit ist vorbei.
time-own = Ob dafür Zeit ist, sagt der Plan nicht. Deine Grenzen:
weather-unknown = Wie das Wetter wird, sagt der Plan nicht: frag den Wetterdienst oder die Rennleitung.
leave-there-unknown = Ob dort etwas abgegeben oder zurückgelassen werden darf, sagt der Plan nicht: das sagen die Rennregeln. Frag die Rennleitung: { $name } { $phone }.
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
card = { $trouble }: { $tries }.
card-red = Alarmzeichen: { $flags }.
card-call = Anrufen: { $call }
picture-dark = dunkel
picture-row = { $place } ({ $km }): { $times }{ $dark ->
    [none] {""}
   *[other] {", "}{ $dark }
 }
picture-none = Es gibt kein Bild. In Worten:
cards-which = Welche? Frag zum Beispiel ‚was tun bei Übelkeit‘.
cards-line = { $name }: { $trouble }
cards-none = Dafür ist keine Karte geschrieben.
cards-medical = Eine Karte erinnert nur: Sanitäter und Rennärzte entscheiden.

## Antworten auf Meldungen

noted = Notiert für { $runner }: { $fact }, { $when }.
noted-seen = Notiert: { $runner } wurde gesehen, { $when }: ‚{ $words }‘
noted-seen-kept = Es geht an alle, die es bestätigen können; bis dahin zählt es nicht.
noted-how = Notiert, wie es { $runner } geht: ‚{ $words }‘
noted-note = Notiert.
noted-crew-there = Notiert: du bist in { $place }, { $when }.
noted-crew-left = Notiert: du hast { $place } verlassen, { $when }.
noted-on-the-road-untold = Notiert. Fahr vorsichtig.
noted-awake = Notiert: du bist wach.
noted-race-control = Notiert: die Rennleitung weiß es.
noted-in-hand = Notiert: { $runner } ist bei euch, { $when }.
noted-stand-down = Notiert: der Alarm ist vorbei.
noted-position = Notiert: Standort von { $runner }, { $when }.
noted-same = Das lag schon vor; es zählt einmal.
noted-kept = { $runner }: { $fact }, { $when } – stimmt das?
noted-kept-why = Festgehalten; es zählt, sobald das bestätigt ist: { $doubt }.
noted-unconfirmed = Festgehalten, zählt aber noch nicht: { $doubt }. Stimmt es?
noted-supporter = Festgehalten, zählt aber erst, wenn die Crew es bestätigt.
noted-guessed = Festgehalten; es zählt, sobald du ‚Richtig‘ drückst.
noted-next = Als Nächstes { $place }: { $window }.
noted-undo = Falsch? Schreib innerhalb von { $minutes } min ‚rückgängig‘.
noted-told = Weitergesagt an { $names }.
noted-how-told = Wie es ihr geht, wurde weitergesagt an { $names }.
noted-drive = Notiert: die Fahrt von { $from } nach { $to } dauert { $length }. Die Abfahrtszeiten stützen sich ab jetzt darauf.
noted-drive-from = Von wo nach { $place }? Schreib zum Beispiel ‚Fahrt vom Hotel nach { $place } 35 min‘.
noted-many = Notiert: { $count ->
    [one] eine Meldung.
   *[other] { $count } Meldungen.
 }
live-ended = Der geteilte Standort ist zu Ende. Das sagt nichts über { $runner }.
position-whose = Hat { $runner } dieses Telefon bei sich?
photo-kept = Bilder kann ich nicht sehen, und dieses wird nicht gespeichert. Schreib, was darauf ist, zum Beispiel ‚angekommen in { $place } 14:20‘.
photo-words-only = Das Bild selbst wird nicht gespeichert, nur deine Worte.
other-unreadable = Das kann ich nicht lesen. Bitte schreib es.
undone = Zurückgenommen für { $runner }: { $fact }, { $when }.
undone-words = Zurückgenommen: ‚{ $words }‘
undone-plain = Zurückgenommen.
undo-nothing = Von dir gibt es aus den letzten { $minutes } min nichts, was sich zurücknehmen ließe.
undo-over = Das ist älter als { $minutes } min. Schick stattdessen, was richtig ist, zum Beispiel ‚Berichtigung: in { $place } angekommen 14:20‘.
undo-none-there = Von dir liegt mir aus { $place } nichts vor, das ich zurücknehmen könnte; geändert ist nichts. Schick stattdessen, was stimmt, zum Beispiel ‚Korrektur: in { $place } 14:20‘.
held-up = Notiert: ‚{ $words }‘. Ich habe niemandem Bescheid gesagt: Ruf an, wer statt dir da sein kann. Fahr vorsichtig.
stand-in-asked = Wer wohin fährt, kann ich nicht ändern: Sprecht es am Telefon ab.
stand-in-call = Crew mit Nummer:
stand-in-nobody = Von der übrigen Crew ist hier keine Nummer hinterlegt.
stand-in-person = { $name } ({ $part }): { $phone }
stand-in-control = { $name }: { $phone }
word-told-nobody = Weitergegeben ist es gerade an NIEMANDEN: Wer fragt, wie es dir geht, liest es. Ist es wichtig, ruf an.
how-far = Bis { $place } (bei { $km }): etwa { $distance } von da, wo du wohl bist.
how-far-course = { $place } liegt bei { $km } der Strecke.
confirmed = Bestätigt. Danke.
answered-yours = Der Alarm ist bei dir. Ich frage { $when } wieder nach.
answered-yours-untimed = Der Alarm ist bei dir.
answered-other = { $name } hat das schon übernommen. Danke.
answered = Notiert zu Nr. { $short }. Danke.
answer-nothing-open = Notiert; es ist aber nichts offen, was eine Antwort braucht.
answered-seen = Wo und wann wurde sie gesehen? Drück einen Knopf oder schreib es.
answered-when = Wann? ‚jetzt‘, ‚vor 10 min‘ oder eine Uhrzeit.
distress = Bist du verletzt? Ruf { $emergency } an. { $name }: { $phone }.
distress-for-her = Ist sie verletzt? Ruf { $emergency } an. { $name }: { $phone }.
distress-passed-on = Deine Worte sind bei deiner Crew und deinem Sicherheitskontakt{ $count ->
    [0] .
   *[other] {": "}{ $names }.
 }
distress-reaches-nobody = Es ist notiert, hat aber NIEMANDEN erreicht: keiner ist verbunden. Bitte telefoniere.
distress-not-passed-on = Ich konnte deine Worte NICHT weitergeben. Bitte ruf an.
distress-whose = Du hast nicht gesagt, welche Läuferin: der Alarm läuft für { $names }. Welche ist es?
help-in-events = Der Alarm läuft bei { $events }.
help-other-event = Geht es um { $event }? Dann schreib es sofort noch einmal mit ‚{ $name }‘ darin.
distress-which = Du hast nicht gesagt, welche Läuferin. Schreib jetzt ihren Namen oder ihre Nummer, oder drück: dann geht ihr eigener Alarm hinaus.
distress-named = Für { $runner }: ihr eigener Alarm läuft.
distress-about = Der Alarm gilt { $runner }, von der zuletzt die Rede war. Braucht eine andere Läuferin Hilfe, schreib das sofort mit ihrem Namen.
distress-meant = Für { $runner }: ihr Alarm bleibt offen. Zurückgenommen für { $others }.
distress-meant-all = Die Alarme bleiben offen für { $names }.
distress-where = Wenn du kannst, schick deinen Standort oder schreib, wo du bist. Halte dich warm; bleib auf der Strecke, wenn das sicher ist.
distress-not-hurt = Wenn nichts ist, schreib ‚rückgängig‘.
grave = Ist sie in Gefahr, ruf jetzt { $emergency } an. { $name }: { $phone }. Ob sie weitergeht, entscheiden Sanitäter und Ärzte.
grave-own = Bist du in Gefahr, ruf jetzt { $emergency } an. { $name }: { $phone }. Ob du weitergehst, entscheiden Sanitäter und Ärzte.
grave-help = Sollen es alle sofort erfahren, schreib ‚sie braucht Hilfe‘.
grave-help-own = Sollen es alle sofort erfahren, schreib ‚Hilfe‘.
help-still-open = Der Alarm wegen deines Hilferufs bleibt trotzdem offen{ $holder ->
    [none] {""}
   *[other] {" bei "}{ $holder }
 }, bis jemand ‚Entwarnung‘ schreibt.
help-was-nothing = War es nichts, schreib ‚rückgängig‘: dann ist der Hilferuf zurückgenommen.

## Antworten: wer es weiß, ihr entgegen, wie sie selbst steht, Ziele

told-none = Zu { $runner } ist kein Alarm offen.
told-held = { $holder } hat den Alarm zu { $runner } ({ $kind }, seit { $since }){ $again ->
    [none] .
   *[other] {"; sieht wieder nach: "}{ $again }.
 }
told-not-held = Den Alarm zu { $runner } hat noch niemand übernommen ({ $kind }, seit { $since }).
told-answered = { $name }: gefragt { $when }, Antwort ‚{ $answer }‘ { $at }.
told-asked = { $name }: gefragt { $when }, noch keine Antwort.
told-only = { $name }: benachrichtigt { $when }, ohne Frage.
told-failed = { $name }: NICHT ERREICHT, versucht { $when }.
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
towards-if = Wenn doch jemand geht: nie allein, nie ohne Licht; einer bleibt in { $place }, mit einem Telefon, das Netz hat; schreibt hier, wer wann geht und wann ihr zurück seid.
my-race-late = Du bist in { $place } etwa { $length } hinter dem Plan.
my-race-early = Du bist in { $place } etwa { $length } vor dem Plan.
my-race-on-plan = Du bist in { $place } im Plan.
my-race-next = { $place }: { $window }.
my-race-cut-off = Nächstes Zeitlimit: { $place }, { $edge } bis { $when }; Chance { $odds }, dass du es schaffst.
my-race-latest = Damit es in 9 von 10 Fällen reicht, brich bis { $when } in { $place } auf.
my-race-no-cut-off = Vor dir liegt kein Zeitlimit mehr.
my-race-old = Was ich von dir weiß, ist alt ({ $ago }). Schreib ‚da‘ oder ‚los‘, oder schick deinen Standort.
my-race-ended = Dein Rennen: { $going }.
goals-next = { $runner }, Ziele beim Aufbruch in { $place }: { $goals }.
goals-gone = { $goal } nicht mehr
goals-meaning = Bricht sie später auf, gilt das nächste Ziel (nach C keines); nach dem, was jetzt bekannt ist.
goals-none = Für { $runner } wechselt kein Ziel mehr.
cut-off-none-at = In { $place } liegt vor { $runner } kein Zeitlimit.
cut-off-access = Der Zugang für die Crew in { $place } ist offen { $hours }.
cut-off-no-hours = Wann der Zugang für die Crew in { $place } schließt, ist nicht eingetragen.

## Rückfragen

ask-out = Was heißt ‚raus‘? { $place } verlassen und weiter unterwegs, oder aus dem Rennen?
ask-out-nowhere = Was heißt ‚raus‘? Einen Punkt verlassen und weiter unterwegs, oder aus dem Rennen?
ask-dropped = ‚{ $word }‘: ist ihr Rennen vorbei, oder ist etwas anderes gemeint?
ask-retired-how = Es gilt schon. Wie kam es dazu?
ask-point = Welchen Punkt meinst du?
ask-who = Wer ist in { $place }?
ask-runner = Welche Läuferin?
ask-bib = Niemand hat Startnummer { $bib }. { $count ->
    [0] Bitte sieh noch einmal nach.
   *[other] Meintest du:
 }
ask-where-seen = Zwischen welchen Punkten war das?
of-runner = { $runner }: { $line }
race-only-organiser = Nicht notiert, und es zählt nicht: dass der Start sich verschiebt, das Rennen ruht oder ein Zeitlimit sich ändert, kann nur der Veranstalter melden. Sag es { $name }: { $phone }.
button-right-of = { $runner }: richtig
button-wrong-of = { $runner }: falsch
event-chosen = { $event }: schreib deine Nachricht jetzt noch einmal.
picked-before = Dieser Knopf ist schon erledigt. Um Notiertes zu ändern, schreib es.
button-old = Wofür dieser Knopf war, weiß ich nicht mehr. Schreib es noch einmal in Worten, mit dem Namen der Läuferin.
ask-event = Welche Veranstaltung?
ask-with-us = { $runner } ist bei euch. Ist der Alarm zu ihrem Hilferuf damit zu Ende? Noch läuft er für alle: drück ‚Richtig‘ oder schreib ‚ja‘, wenn sie keine Hilfe mehr braucht.
ask-stand-down = Den Alarm zu { $runner } für alle beenden? Noch läuft er: drück ‚Richtig‘ oder schreib ‚ja‘.
choice-left = { $place } verlassen, läuft weiter
choice-left-plain = Einen Punkt verlassen, läuft weiter
choice-crew = Ich
choice-her = { $runner }
choice-over = Ihr Rennen ist vorbei
choice-else = Etwas anderes
choice-both = Beide
choice-all = Alle
choice-runner = { $name } ({ $bib })
choice-between = { $from } – { $to }
not-understood-help = Wenn du Hilfe brauchst: ruf { $emergency } an und schreib ‚Hilfe‘; das geht sofort an Crew und Sicherheitskontakt.
not-understood = Das habe ich nicht verstanden. Schreib ‚was kann ich fragen‘ für Beispiele.
nothing-to-say = Hallo. Schreib ‚was kann ich fragen‘ für Beispiele.
thanks = Gern.

## Beitreten

stranger = Diese Nummer oder dieser Chat ist hier nicht bekannt. Hast du eine Einladung, schick ihren Code.
join-preview = Du bist { $name }. Rolle: { $parts }. Veranstaltung: { $event }. Bist du das?
join-done-plain = Willkommen, { $name }. Schreib ‚was kann ich fragen‘ für Beispiele.
join-no = Dann ist nichts verbunden, und der Code bleibt unbenutzt. Sag es dem, der ihn geschickt hat.
group-bound = Ab jetzt hört diese Gruppe, was alle im Team bei { $name } angeht: Änderungen am Rennen, einen beendeten Alarm, den Zieleinlauf. Nie, wo sie ist, und nichts, was nur eine Person angeht: das bekommt jede und jeder allein. ‚/group off‘ beendet es.
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

## Was man fragen kann

usage-crew = Frag, wie du redest: ‚wann ist sie in { $place }‘, ‚nächster Punkt‘, ‚wann im Ziel‘, ‚wo ist sie‘, ‚haben wir sie verpasst‘, ‚warten oder fahren‘, ‚was bringen wir mit‘, ‚wann müssen wir los‘, ‚Zeitlimit‘, ‚und der danach?‘; wenn es vorbei ist ‚wie lief es‘.
usage-report = Melde, wie du redest: ‚angekommen in { $place } um 14:55‘, ‚raus vor 20 min‘, ‚noch nicht da‘, ‚isst gut, Füße ok‘. ‚Rückgängig‘ nimmt das Letzte { $minutes } min lang zurück.
usage-volunteer = Melde Startnummern: ‚214 rein 0312 raus 0319; 87 rein 0315‘, ‚214 durch‘, ‚Schlussläufer durch‘. ‚Rückgängig‘ nimmt das Letzte { $minutes } min lang zurück.
usage-runner = Schreib ‚da‘, ‚los‘, ‚Pause‘, ‚wieder unterwegs‘ oder schick deinen Standort. Frag ‚wie steh ich‘, ‚nächster Punkt‘, ‚Zeitlimit‘, danach ‚wie lief es‘. Schreibst du Hilfe, verletzt oder verlaufen, geht es sofort an deine Crew.
duty-runner = Du läufst. Schreib an den Punkten ‚rein‘ und ‚raus‘, wenn du kannst, oder teile deinen Live-Standort; ‚Pause‘, wenn du länger stehst; ‚Hilfe‘, wenn du sie brauchst. Deine Crew und { $control } erfahren es.
duty-crew = Du bist Crew für { $runner }. Du bekommst gesagt, wann du losmusst und was bereitliegen soll: antworte darauf. Melde dich selbst, sobald du an einem Punkt bist; melde dort jede Ankunft und jeden Aufbruch, mit Namen; und ‚noch nicht da‘, wenn gefragt wird.
duty-pacer = Du begleitest { $runner }. Sei an dem Punkt, an dem du dazustößt, mit eigenem Licht und einer warmen Schicht. Melde sie an den Punkten; ist eine von euch verletzt, schreib ‚Hilfe‘ und ruf { $emergency } an.
duty-safety-contact = Du bist der Sicherheitskontakt von { $runner }, zu Hause und die ganze Nacht erreichbar. Ist sie überfällig oder bittet um Hilfe, kommt hier ein Alarm: antworte binnen 5 min ‚Ich übernehme‘ und sorge dafür, dass jemand nach ihr sieht. { $calls ->
    [yes] Du rufst { $control } an, { $phone }.
   *[no] Eine bestimmte Person ruft { $control } an; wer, steht im Alarm.
 } Wenn ein Leben in Gefahr sein kann, zuerst { $emergency }. Vor dem Start kommt ein Probealarm: antworte darauf mit dem Telefon so, wie es nachts sein wird.
duty-organiser = Du bist Veranstalter. Du hörst von Ausfällen, von Leuten, die nicht zu erreichen sind, und von Alarmen; du sagst, wenn der Start sich verschiebt, die Läuferinnen angehalten werden oder ein Zeitlimit sich ändert.
duty-volunteer = Du meldest an deinem Punkt: Startnummer, ‚rein‘ und ‚raus‘ mit der Zeit. Positionen siehst du nicht.
duty-supporter = Du verfolgst { $runner }: frag ‚nächster‘, ‚wo‘ oder ‚Ziel‘. Von dir wird nichts verlangt.
duty-all = ‚was kann ich fragen‘ zeigt, was du hier schreiben kannst. Das hier ist eine Hilfe, kein Rettungsdienst.
usage-answer = Einen Alarm beantwortest du mit ‚ich übernehme‘ oder seinem Knopf.

## Knöpfe

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
button-ok = OK
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
button-in-car = Im Auto
button-on-foot = Bei der Läuferin
button-just-now = Gerade eben
button-ten-ago = Vor 10 min
button-twenty-ago = Vor 20 min
button-in-plain = Da
button-out-plain = Los
button-leaving = Fahre los
button-after = Der danach
button-other = { $word }

## Fehler

error-no_such_code = Dieser Code gilt nicht: vertippt, benutzt oder abgelaufen. Bitte um einen neuen.
error-not_yours = Deine Rolle in der Veranstaltung erlaubt das nicht.
error-not_found = Das gibt es in der Veranstaltung nicht.
error-conflict = Das kam vorher mit anderem Inhalt. Beides ist festgehalten, und jemand wird gefragt, was gilt.
error-not_now = Das passt nicht zu dem, was gemeldet ist: { $what }.
error-too_many = Zu viele falsche Versuche. Warte ein paar Minuten.
error-not_ready = Das kann der Server noch nicht beantworten. Frag in einer Minute wieder.
error-other = Der Server konnte das nicht annehmen. Nichts ist notiert. Versuch es noch einmal; bleibt es so, ruf an.
error-fault = Ein Fehler bei mir: Das konnte ich nicht lesen. NICHTS ist notiert. Schreib es mit anderen Worten; wenn es eilt, ruf an.
error-unreachable = Der Server ist gerade nicht zu erreichen. NICHTS ist bisher notiert. Deine Nachricht ist aufgehoben: sobald der Server antwortet, wird sie mit der Zeit bearbeitet, zu der du sie geschickt hast, und dann hörst du davon. Du musst sie nicht noch einmal schicken; wenn es eilt, ruf an.
error-unreachable-not-kept = Der Server ist gerade nicht zu erreichen. NICHTS ist notiert, und deine Nachricht ist nicht aufgehoben. Schick sie noch einmal; wenn es eilt, ruf an.

## Die Befehle im Menü eines Chats

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

## Der Plan: woher Ziel und Tempo kommen

plan-source-finish = Ziel in { $target }
plan-source-pace = { $pace } min/km mit allen Pausen
plan-source-easy = ruhiges Tempo { $easy } plus { $margin } min/km, von 50 km hochgerechnet
plan-source-costs = Tempo nach veröffentlichten Kosten je Steigung
plan-source-own-runs = { $count ->
    [one] einer ihrer eigenen Läufe
   *[other] { $count } ihrer eigenen Läufe
 }, { $distance }, der längste { $longest }
plan-source-past-race = { $name } in { $time }, nach Strecke und Anstieg
plan-source-results = frühere Ergebnisse, { $count } Ankommende in { $fastest } bis { $slowest }
plan-source-results-any = frühere Ergebnisse

## Der Plan: Hinweise

plan-unlikely = { $target } ist unwahrscheinlich nach { $about }: die Chance ist etwa 1 zu { $one_in }
plan-unlikely-very = { $target } ist unwahrscheinlich nach { $about }: die Chance ist unter 1 zu 200
plan-predicted = { $about } ergibt { $likely }, zwischen { $low } und { $high }; 1 von 10 schneller, 1 von 10 langsamer
plan-predicted-beside = { $about } ergäbe für sich { $likely }, zwischen { $low } und { $high }; 1 von 10 schneller, 1 von 10 langsamer. Ziele und Zeitfenster richten sich nicht danach
plan-longest-run = der längste aufgezeichnete Lauf ist { $longest }: wie sie später nachlässt, ist der übliche Wert, nicht ihr eigener
plan-paused = { $paused } Stillstand in ihren Läufen blieben außen vor
plan-jumps = { $count ->
    [one] ein Sprung der Satellitenortung blieb außen vor
   *[other] { $count } Sprünge der Satellitenortung blieben außen vor
 }
plan-far-race = { $name } war im Aufwand { $times }-mal kürzer oder länger als dieses Rennen: je weiter weg, desto weniger sagt es
plan-short-race = die Regel stammt von Rennen bis etwa 4 h und ist jenseits des Marathons eher zu optimistisch
plan-few-near = wenige kamen nahe { $target } an: die Form ist die von Läufern um { $middle }
plan-easy-scaled = ruhiges Tempo plus Zuschlag passt zu flachen 50 km; hier auf { $course } mit { $ascent } Anstieg hochgerechnet (wie { $effort } in der Ebene, Zeit wächst mit Strecke hoch 1,06), was nach einem Tag zu Fuß eher zu optimistisch ist
plan-no-heights = die Strecke hat keine Höhen: Anstiege, Gefälle und Höhenlage fehlen in diesem Plan, bergige Abschnitte werden zu kurz, ebene zu lang; eine Strecke mit Höhen verwenden
plan-surface-unknown = Untergrund ‚{ $surface }‘ auf { $where } ist nicht bekannt und kostet nichts; bekannt sind { $known }
plan-goal-a-target = Ziel A ist das Ziel selbst: die geplanten Pausen lassen keine Zeit, schneller zu sein
plan-goal-a-limit = Ziel A ist so schnell, wie ihre Grenzen es zulassen, { $fastest }
plan-goal-c = Ziel C käme zu spät für { $about }: es wurde am Ziel um { $pulled } vorgezogen
plan-limit = das Zeitlimit des Rennens
plan-cut-off-in = das Zeitlimit bei der Ankunft in { $place }
plan-cut-off-out = das Zeitlimit beim Aufbruch in { $place }
plan-walking = Gehen kostet keine Zeit auf { $walked } von { $course }; am längsten { $about }
plan-walking-mostly = Gehen kostet bei diesem Ziel keine Zeit auf { $walked } von { $course }: bergab laufen
plan-span = { $from } bis { $to }
plan-stages = ein Rennen in Etappen: das Ziel ist die Summe der Etappen, die Zeiten an den Punkten gehen nach der Uhr, mit den Nächten
plan-rested = nach { $rest } Ruhe bei { $place } beginnt sie so gerechnet wie nach { $after } auf den Beinen (Erfahrung, ohne Quelle)
plan-few-stops = Pausen sind mit insgesamt { $planned } geplant; ein bis zwei Stunden sind bei langen Rennen üblich (Erfahrung)
plan-fuel-above = ab { $place }: { $amount } { $unit } liegt über den veröffentlichten { $low } bis { $high } ({ $source })
plan-fuel-below = ab { $place }: { $amount } { $unit } liegt unter den veröffentlichten { $low } bis { $high } ({ $source })
plan-caution-thirst = Die Zahlen dienen der Planung. Nach Durst trinken, essen, was im Training erprobt ist.
plan-caution-danger = Weit über den Durst zu trinken ist selbst eine Gefahr; wer verwirrt ist, sich immer wieder übergibt, geschwollenes Gesicht oder geschwollene Hände oder starke Kopfschmerzen hat, wird zuerst von Sanitätern gesehen.
plan-caution-pills = Schmerzmittel und Salztabletten sind Sache der Rennsanitäter.
plan-factor-level-ground = ebene Strecke
plan-factor-hills = Berge
plan-factor-fade = Ermüdung
plan-factor-night = Nacht
plan-factor-heat = Hitze
plan-factor-mud = Schlamm
plan-factor-snow = Schnee
plan-factor-altitude = Höhenlage

## Der Plan: Licht, Ziele, Zeitlimits

plan-rests = Beruht auf: { $source }.
plan-change-next = Bis wann die Ziele gelten, beim Aufbruch in { $place }: { $goals }.
plan-light = Licht, und wo sie nach dem Plan dann ist: { $light }.
cut-off-earlier = Damit es in 9 von 10 Fällen reicht, wenn sie weitermacht: { $points }.
plan-goals = Ziele: A { $a } (ein guter Tag), B { $b } (das Ziel), C { $c } (ein schwerer Tag).
plan-goals-odds = { $sides ->
    [both] Am Ende ist 1 von 10 schneller als A, 1 von 10 langsamer als C, wenn sie ankommt; davor sind A bis C
    [A] Am Ende ist 1 von 10 schneller als A, wenn sie ankommt; C, und davor A bis C, sind
    [C] Am Ende ist 1 von 10 langsamer als C, wenn sie ankommt; A, und davor A bis C, sind
   *[none] A bis C sind
 } drei Arten, das Rennen zu laufen, keine Chancen: die Crew richtet sich nach den Zeitfenstern ihrer Treffen{ $limited ->
    [yes] , die gelten, wenn sie innerhalb des Zeitlimits ankommt
   *[no] {""}
 }.
plan-light-civil-dawn = erstes Licht { $when } (bei { $km })
plan-light-sunrise = Sonnenaufgang { $when } (bei { $km })
plan-light-sunset = Sonnenuntergang { $when } (bei { $km })
plan-light-civil-dusk = letztes Licht { $when } (bei { $km })
plan-torch = Lampe von { $from } ({ $from_when }) bis { $to } ({ $to_when }).
plan-no-torch = Bei diesem Tempo braucht es keine Lampe; mitnehmen, was die Regeln verlangen.
plan-changes = Wechsel der Ziele: später ab als hier, gilt das nächste Ziel.
plan-change = { $place }: { $goals }
plan-change-goal = { $goal } bis { $when }
plan-latest = { $place } verlassen bis { $when }
plan-latest-none = { $place }: keine Zeit ist früh genug
plan-odds = Zeitlimit bei { $place }, { $edge } bis { $when }: Chance { $odds }, es zu schaffen.
plan-planned-notes = Was der Planer sagt:

## Fahrten der Crew: was nicht geht und was helfen könnte

move-not-allowed = NICHT ERLAUBT: { $what }. { $remedy }.
move-broken = { $what } (Regel: { $rule })
move-trouble = { $place }, { $runner }: { $what }
move-offer = { $place }, { $runner }: was helfen könnte: { $what }
plan-move-name = { $name }
plan-move-on-foot = { $person } ist dann zu Fuß mit { $runner } unterwegs
plan-move-stranded = { $person } ist { $place ->
    [none] an keinem bekannten Ort
   *[other] {"bei "}{ $place }
 }, und { $car } fährt von { $origin ->
    [none] einem Ort, den niemand genannt hat,
   *[other] { $origin }
 } los
plan-move-no-driver = in { $car } ist niemand, von dem es heißt, dass er oder sie fährt
plan-move-seats = { $people } Leute fahren in { $car }, das { $seats } Plätze hat
plan-move-no-car-there = { $person } hört bei { $place } auf mitzulaufen, und dort ist kein Auto
plan-move-hand-over = { $person } übernimmt bei { $place }, und kein Treffen bringt sie oder ihn dorthin
plan-move-not-fetched = { $person } übergibt bei { $place }, und kein Treffen holt sie oder ihn dort ab
plan-move-pacer-not-fetched = { $person } läuft bis ins Ziel mit, und kein Treffen holt sie oder ihn dort ab
plan-move-closed = der Crew-Zugang bei { $place } ist gesperrt
plan-move-no-way = wie { $car } nach { $place } kommt, ist nicht bekannt: { $origin ->
    [none] niemand hat gesagt, wo es losgeht
   *[other] {"es ist keine Fahrt von "}{ $origin }{" angegeben"}
 }
plan-move-estimated = { $drive } von { $origin } nach { $place } ist eine Schätzung, die niemand bestätigt hat
plan-move-short = { $p }, vor ihr bei { $place } zu sein, weniger als die { $sure } von 100, die zugesagt werden können
plan-move-leaves-early = um rechtzeitig bei { $following } zu sein, fährt die Crew um { $wait } von { $place } ab: { $p }, sie dort zu sehen
plan-move-clash = { $p }, sie bei { $first } zu sehen und dann vor ihr bei { $place } zu sein, weniger als die { $sure } von 100, die zugesagt werden können
plan-move-confirm = die Fahrt von { $origin } nach { $place } bestätigen oder berichtigen: { $about }
plan-move-part-drive = Fahrt { $took }
plan-move-part-road = Straße { $took }
plan-move-part-the-way-back = wie der Rückweg { $took }
plan-move-part-night = Nacht { $took }
plan-move-part-traffic = Verkehr { $took }
plan-move-part-full-car-park = voller Parkplatz { $took }
plan-move-part-fuel = Tanken { $took }
plan-move-part-walk-out = zurück zum Auto { $took }
plan-move-part-walk-in = zu Fuß hin { $took }
plan-move-part-unloading = Ausladen { $took }
plan-move-part-pacer-signs-in = Anmelden der Begleitung { $took }
plan-move-searched-in-part = andere Autos oder Leute machten es vielleicht noch besser als angeboten: es wurde nicht alles durchsucht
plan-move-not-searched = ob andere Autos oder Leute es besser machten, war zu viel zu durchsuchen
plan-move-skip-others = dieses Treffen auslassen: die anderen gewinnen dabei
plan-move-skip = dieses Treffen auslassen: daran hängen weder Lampe noch warme Schicht, Begleitung oder Übergabe
plan-move-other-car = { $car } fährt zu diesem Treffen, mit { $about }: { $p }, vor ihr dort zu sein
plan-move-asleep = { $person } will von { $from } bis { $until } schlafen, fährt dann aber: die Schlafzeit verlegen oder jemand anderen fahren lassen
plan-move-awake = { $person } wird am Ende dieser Fahrt { $awake } wach gewesen sein
plan-move-two-runners = eine Crew trifft { $runner } und { $other }: die Chancen sind gerechnet, als hätten ihre Nächte nichts gemeinsam; Wetter, das beide bremst, steckt nicht darin
plan-move-awake-assumed = angenommen ist, dass { $person } seit { $since } wach ist: in der Eventdatei mit awake_since oder sleeps sagen
plan-move-swap = { $person }, im selben Auto, fährt stattdessen
plan-move-sleep = { $person } schläft vor dieser Fahrt, von { $from } bis { $until }
plan-move-no-access = die Crew hat keinen Zugang zu { $place }
plan-move-crowd = { $count ->
    [one] eine Person soll
   *[other] { $count } Leute sollen
 } sie bei { $place } treffen
plan-move-closes-first = { $place } schließt, bevor die Regeln eine Crew erlauben
plan-move-closed-before-her = { $place } ist für die Crew geschlossen, bevor sie wohl kommt, frühestens { $early }
plan-move-opens-after-her = die Crew darf erst nach { $place }, wenn sie dort wohl schon fort ist: sie bricht bis { $late } auf
plan-move-cars-at = { $count ->
    [one] ein Auto kommt
   *[other] { $count } Autos kommen
 } nach { $place } ({ $about })
plan-move-permit-elsewhere = { $about } käme ohne die Genehmigung „{ $permit }“, die { $holders } hat
plan-move-permit-unsaid = bei { $place } braucht die Crew die Genehmigung „{ $permit }“, und niemand sagt, wer sie hat: beim Veranstalter fragen, dann permits = ["{ $permit }"] bei Auto oder Person eintragen
plan-move-vehicles = { $count } Autos kommen, um { $runner } zu treffen: { $about }
plan-move-pacer-early = eine Begleitung stößt bei { $here } dazu
plan-move-pacers = { $count } Begleitungen wären bei ihr
plan-rule-help = Hilfe von außen nur an Crew-Punkten
plan-rule-people-at = { $count ->
    [0] keine Crew
    [one] höchstens eine Person
   *[other] höchstens { $count } Leute
 } bei { $place }
plan-rule-people = { $count ->
    [0] gar keine Crew
    [one] höchstens eine Person Crew
   *[other] höchstens { $count } Leute Crew
 }
plan-rule-not-before = keine Crew vor der erlaubten Zeit
plan-rule-crew-not-before = nirgends Crew vor { $opens }
plan-rule-opens = keine Crew bei { $place } vor { $opens }
plan-rule-closes = keine Crew bei { $place } nach { $closes }
plan-rule-cars-at = { $count ->
    [0] keine Autos
    [one] höchstens ein Auto
   *[other] höchstens { $count } Autos
 } je Läuferin bei { $place }
plan-rule-permit = Genehmigung „{ $permit }“ bei { $place }
plan-rule-vehicles = { $count ->
    [0] kein Fahrzeug
    [one] höchstens ein Fahrzeug
   *[other] höchstens { $count } Fahrzeuge
 }
plan-rule-pacer-from = Begleitung ab { $from }
plan-rule-pacers = { $count ->
    [0] keine Begleitung
    [one] eine Begleitung
   *[other] { $count } Begleitungen
 } zugleich
plan-remedy-crew-point = Sie an einem Punkt mit Crew-Zugang treffen
plan-remedy-fewer-people = Weniger Leute nennen
plan-remedy-leave-out = Dieses Treffen auslassen
plan-remedy-other-point = Sie an einem anderen Punkt treffen
plan-remedy-fewer-cars = Weniger Autos nehmen
plan-remedy-permit = Das Auto oder die Person schicken, die sie hat, oder dieses Treffen auslassen
plan-remedy-later = Die Begleitung später dazustoßen lassen
plan-remedy-pacer-leaves = Sagen, wo die vorige aufhört: pacer_leaves

## Papier: Tabelle, Kalender, Blatt

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
paper-bag = Bereit bei { $place }: { $things }
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
paper-after-her = Bleibt aber in { $place }, bis { $runner } dort los ist, oder bis { $until }: ab dann kommen neue Zeiten per Nachricht.
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
paper-pace-length = { $length } gemeinsam
paper-stand-title = { $runner } bei { $place }
paper-as-of = Geplant am { $when }. Die Zeiten verschieben sich, sobald sie unterwegs ist: vor der Abfahrt fragen.
paper-stays = Es zeigt, was am { $when } geplant war; was später gehört wird, steht auf der Tafel und im Chat.
paper-aid = Eine Hilfe für die Crew, kein Rettungsdienst. Bei Lebensgefahr zuerst { $emergency } anrufen, dann die Rennleitung: { $name ->
    [none] {""}
   *[other] { $name }{", "}
 }{ $phone }.
paper-rescue = Bergrettung: { $name } { $phone }.
paper-head-numbers = Wen anrufen
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
paper-stay = Bleiben: ihr seid schon da, von { $place } her.
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
paper-head-phones = Telefon
paper-phone = { $name } ({ $parts }) { $phone }
paper-head-how = Woraus der Weg besteht
paper-allowed-by = Erlaubt: { $rules }.
paper-head-drives = Wer fährt wohin
paper-car = Auto
paper-who = wer
paper-made-of = besteht aus
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

## Was `stilepost check` sagt

check-mistakes = { $count } Fehler zu berichtigen.
check-right = { $file }: richtig. { $runners } Läuferin(nen), { $points } Punkte, { $people } Leute, { $meetings } Treffen. `stilepost load { $file }` speichert es.

cli-error = Fehler: { $what }
cli-written = geschrieben: { $file }
cli-not-written = { $file }: lässt sich nicht schreiben ({ $why }). Nimm einen anderen Ort.
cli-no-runner = --runner: das Event hat niemanden mit der Id ‚{ $runner }‘. Es gibt: { $known }.
cli-breaks-rules = der Plan bricht { $count ->
    [one] eine Regel
   *[other] { $count } Regeln
 } des Rennens: siehe oben, NICHT ERLAUBT. Ändere die Datei und plane noch einmal.

## Was `stilepost load` sagt

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

## Etappen: da sein, bevor die nächste startet

stage-odds = { $place }: Chance { $odds }, vor dem Start der nächsten Etappe { $when } dort zu sein; dann wohl { $rest } Ruhe, 1-mal in 10 { $least ->
    [none] kaum welche
   *[other] unter { $least }
 }.
stage-odds-by = { $place }: Chance { $odds }, bis { $by } dort zu sein für die nächste Etappe, Start { $when }; dann wohl { $rest } Ruhe, 1-mal in 10 { $least ->
    [none] kaum welche
   *[other] unter { $least }
 }.
stage-low = Das ist wenig: jetzt beim Rennen fragen, was mit denen wird, die später kommen.

report-finished = { $runner } ist im Ziel, { $when }{ $length ->
        [none] .
       *[other] , nach { $length }.
    }
report-retired = { $runner } ist nicht ins Ziel gekommen: ausgestiegen{ $place ->
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
