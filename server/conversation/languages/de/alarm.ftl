# Alarms and calls for help. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## Notices: alarms
alarm-runner = { $runner } (Nr. { $bib })
alarm-overdue = ALARM: { $runner } ist in { $place } ÜBERFÄLLIG.
alarm-overdue-nowhere = ALARM: { $runner } ist ÜBERFÄLLIG.
alarm-asked-for-help = ALARM: { $runner } hat UM HILFE GEBETEN.
alarm-help-needed = ALARM: { $runner } BRAUCHT HILFE.
alarm-silent = { $name } HATTE IHN UND ANTWORTET NICHT MEHR.
alarm-unanswered = NOCH IMMER HAT NIEMAND GEANTWORTET.
alarm-says-self = { $runner }, { $when }{ $words ->
    [none] , ohne Worte.
   *[other] {": ‚"}{ $words }{"‘"}
 }
alarm-says = { $who }{ $part ->
    [none] {""}
   *[other] {", "}{ $part }{","}
 } meldet { $when }{ $words ->
    [none] , ohne Worte.
   *[other] {": ‚"}{ $words }{"‘"}
 }
alarm-newest = Zuletzt, { $when }, { $who }: ‚{ $words }‘
alarm-answer-all = Kannst du dich kümmern? Antworte ‚Ich übernehme‘, dann gehört er dir. Alle, die können, sind jetzt gefragt, und in { $length } wieder.
alarm-beside = Wenn du bei ihr bist: bleib bei ihr und ruf SELBST { $emergency } oder { $name } ({ $phone }) an: du kannst sagen, was du siehst.
alarm-two = Lebensgefahr: sofort { $emergency }, nicht warten. { $name }: { $phone }.
alarm-two-none = Lebensgefahr: sofort { $emergency }, nicht warten.
alarm-control = DU bist die Rennleitung: sieh in den eigenen Ergebnissen nach, frag { $place ->
    [none] eure Posten
   *[other] { $place }
 } und den Schlussläufer, ob sie gesehen wurde, und schreib hier, was du findest.
alarm-control-help = DU bist die Rennleitung: finde heraus, wer von euch ihr am nächsten ist, schick jemanden hin und schreib hier, wer geht und bis wann.
alarm-more = Mehr: schreib ‚was ist bekannt‘. Für Retter: ‚was sage ich ihnen‘.
alarm-more-follows = Was bekannt ist und was du Rettern vorliest, kommt gleich in eigenen Nachrichten.
known-first = BEKANNT über { $runner }, { $when }:
read-out-help-by = { $who } hat für sie um Hilfe gerufen{ $words ->
    [none] .
   *[other] {" mit den Worten: "}{ $words }.
 }
call-yours = deinen Hilferuf
call-for-you = den Hilferuf für dich
call-for = den Hilferuf für { $runner }
call-unnamed = deinen Hilferuf
call-made = { $who } hat { $when } für dich um Hilfe gerufen.
call-asked = Gefragt: { $names }.
call-do-not-wait = Ich sage dir, wer übernimmt. Bist du in Gefahr, warte nicht darauf: ruf { $emergency } an.
call-nobody = NIEMAND HAT { $call } BEANTWORTET, seit { $length }: ruf jetzt { $emergency } an.
call-nobody-to-ask = NIEMAND hier kann { $call } übernehmen: ruf jetzt { $emergency } an.
call-given-back = { $name } kann nicht mehr: JETZT HAT NIEMAND { $call }. Kann es nicht warten, ruf jetzt { $emergency } an.
call-lost = { $name } hatte übernommen und antwortet nicht mehr: JETZT HAT NIEMAND { $call }. Ruf jetzt { $emergency } an.
call-held = { $name } HAT { $call } ÜBERNOMMEN{ $when ->
    [none] .
   *[other] {", "}{ $when }.
 }
call-does = { $name } schrieb { $when }: ‚{ $words }‘
call-does-not-said = { $name } hat noch nicht geschrieben, was geschieht{ $phone ->
    [none] : schreib hier, es geht wörtlich dorthin.
   *[other] : ruf { $phone } an, oder schreib hier, es geht wörtlich dorthin.
 }
call-if-worse = Wird es schlimmer, ruf sofort { $emergency } an; du brauchst niemandes Erlaubnis.
call-stay = Bleib, wo du bist, wenn es dort sicher ist; alles Warme an, weg vom Boden, aus dem Wind. Was du hier schreibst oder teilst, geht an die, die sich kümmern.
call-scene =
    Wenn du bei ihr bist: bleib bei ihr. Leg sie windgeschützt auf etwas Trockenes, alles Warme an.
    Schmerzen Kopf, Hals oder Rücken: nicht bewegen. Blutung: drücken und weiter drücken.
    Wacht sie nicht auf oder atmet nicht normal: jetzt { $emergency }, und tun, was sie sagen. Halte dieses Telefon frei.
call-over = VORBEI ist der Alarm auf { $call } ({ $reason }){ $who ->
    [none] .
   *[other] {", "}{ $who }{", "}{ $when }.
 }
call-over-in-hand-you = VORBEI: { $who } sagt, dass für dich gesorgt ist, { $when }.
call-over-in-hand-of = VORBEI: { $who } sagt, dass für { $runner } gesorgt ist, { $when }.
call-over-stand-down = VORBEI: { $who } hat den Alarm auf { $call } beendet, { $when }; er gilt als erledigt.
call-over-taken-back = VORBEI: der Alarm auf { $call } wurde zurückgenommen{ $who ->
    [none] .
   *[other] {" von "}{ $who }{", "}{ $when }.
 }
call-over-again = Wird noch Hilfe gebraucht, schreib wieder ‚Hilfe‘ oder ruf { $emergency } an.
meanwhile-words = VON { $who }{ $part ->
    [none] {""}
   *[other] {" ("}{ $part }{")"}
 }, { $when }: ‚{ $words }‘
meanwhile-report = { $who }{ $part ->
    [none] {""}
   *[other] {" ("}{ $part }{")"}
 }, { $when }, zu { $runner }: { $fact }{ $words ->
    [none] .
   *[other] {". ‚"}{ $words }{"‘"}
 }
meanwhile-place = STANDORT von { $runner }, geteilt { $when } von { $who }: { $place }.
meanwhile-own-place = STANDORT von { $who }{ $part ->
    [none] {""}
   *[other] {" ("}{ $part }{")"}
 }, beteiligt am Hilferuf für { $runner }, geteilt { $when }: { $place }.
meanwhile-doubted = NICHT BESTÄTIGT, kann stimmen: { $text }
meanwhile-reply = Der Alarm ist offen. Was hier schreibt, wer übernommen hat, geht wörtlich an sie.
alarm-news = EIN ALARM IST OFFEN zu { $runner }: { $kind }, { $when }. { $holder ->
    [none] Andere werden gefragt.
   *[other] { $holder } hat übernommen.
 }
news-stay =
    Du musst jetzt nichts tun: bleib, wo du bist, Telefon an und laut. Ich sage dir, wenn es vorbei ist.
    Siehst oder hörst du von { $runner }, schreib es sofort hier.
news-at-point =
    Kommt { $runner } nach { $place }: halte sie dort, schreib hier ‚{ $bib } da‘ und sag es { $name }, { $phone }.
    Ich sage dir, wenn es vorbei ist.
news-danger = Findest du sie in Gefahr: zuerst { $emergency }.
unreached-kind-your-call-for-help = hat um Hilfe gerufen und erfährt nicht, wer sich kümmert
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
alarm-taken-call = { $name } HAT DEN ALARM zu { $runner } ÜBERNOMMEN. DU rufst weiterhin die Rennleitung an.
alarm-call-instead = Wer die Rennleitung wegen { $runner } anrufen sollte, kann nicht oder antwortet nicht: du hast den Alarm, also rufst DU an.
alarm-answer = Antworte ‚Ich übernehme‘, dann gehört er dir; ohne Antwort in { $length } wird die nächste Person gefragt.
alarm-held-you = Du hast diesen Alarm. Nächstes Nachsehen: { $when }.
alarm-held-you-now = Du hast diesen Alarm. Antworte ‚gesehen‘ oder ‚noch vermisst‘, oder schreib, was du weißt.
alarm-held = { $name } hat diesen Alarm. Nächstes Nachsehen: { $when }.
alarm-held-untimed = { $name } hat diesen Alarm.
alarm-call-you = DU rufst jetzt an: { $name }, { $phone }. Sonst niemand.
alarm-call-other = { $caller } ruft die Rennleitung an.
alarm-call-in-place = { $caller } soll die Rennleitung anrufen und HAT NICHT GEANTWORTET. Übernimm, und DU rufst an: { $name }, { $phone }.
alarm-call-none = Niemand ist eingeteilt, die Rennleitung anzurufen. Wer antwortet, ruft { $name } an, { $phone }.
alarm-call-not-needed = Die Rennleitung selbst hat ihn: niemand muss sie anrufen.
alarm-words = Im Wortlaut: ‚{ $words }‘
alarm-not-named = NICHT GESAGT, FÜR WEN: { $who } betreut mehr als eine Läuferin, und dieser Alarm läuft für jede, bis { $who } sagt, welche es ist. Frag { $who }{ $phone ->
    [none] .
   *[other] {": "}{ $phone }.
 }
alarm-named = { $name } sagt jetzt: der Hilferuf gilt { $runner }. Der Alarm zu ihr ist offen.
alarm-fact = TATSACHE, zuletzt bekannt: { $fact } { $when } ({ $ago }), gemeldet von { $who }{ $place ->
    [none] .
   *[other] {": "}{ $place }.
 }
alarm-unconfirmed = NICHT BESTÄTIGT, kann stimmen: { $fact } { $when } ({ $ago }), gemeldet von { $who }. Frag nach.
unnamed = ALARM: HILFERUF von { $who }, NICHT GESAGT, FÜR WELCHE LÄUFERIN.
unnamed-ask = Ruf { $who } an und frag, wer Hilfe braucht und wo{ $phone ->
    [none] .
   *[other] {": "}{ $phone }.
} Der Ruf kam { $when }.
unnamed-to = Das ging an: { $names }.
unnamed-held = { $name } hat übernommen und findet heraus, wer es ist.
unnamed-held-you =
    Du hast übernommen: finde heraus, wer es ist. Ihr eigener Alarm geht hinaus, sobald wer gerufen hat sie nennt, oder du schreibst ‚Name braucht Hilfe‘.
    War es nichts, beende ihn mit dem Knopf.
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
alarm-help-seen =
    { $runner } ist seitdem gesehen worden. Frag, ob sie noch Hilfe braucht.
    Das endet mit ‚wir haben sie‘, oder mit ‚Entwarnung‘ vom Sicherheitskontakt oder Veranstalter.
alarm-said-km = NACH DEN WORTEN DES RUFS ist sie bei { $km }{ $place ->
    [none] .
   *[other] {": "}{ $place }.
 }
alarm-heard-since = SEITDEM GEHÖRT, Ort unbekannt: { $when } ({ $ago }), { $who }: ‚{ $words }‘.
alarm-contact-lost =
    TATSACHE: ihr geteilter Standort endete { $when } ({ $ago }), seitdem ist nichts von ihr gehört.
    Das Telefon kann leer, aus oder ohne Netz sein; über sie sagt das nichts.
alarm-race-over = Ihr Rennen war { $when } zu Ende: wo sie danach hinging, kann ich nicht ausrechnen.
alarm-had-her = TATSACHE: { $who } schrieb { $when } ({ $ago }), dass jemand sie bei sich hat. Frag zuerst { $who }, wo sie ist.
alarm-had-her-you = TATSACHE: du hast { $when } ({ $ago }) geschrieben, dass jemand sie bei sich hat. Wo ist sie jetzt?
alarm-not-there = TATSACHE: { $fact }, { $when } ({ $ago }), gemeldet von { $who }{ $phone ->
    [none] .
   *[other] {", "}{ $phone }.
 }
alarm-fact-none = TATSACHE: seit dem Start { $when } wurde sie an keinem Punkt gesehen.
alarm-expected = Erwartet in { $place }: { $window }.
alarm-why-alarm-line = Warum jetzt: Wenn alles gut geht, ist eine so lange Stille sehr selten.
alarm-why-alarm-line-far = Warum erst jetzt, { $length } nach der wahrscheinlichen Zeit: Meldungen kommen spät, und langsame Abschnitte sind häufig; früher wären die meisten solcher Alarme falsch.
alarm-why-odds = Warum jetzt: Wer sie gemeldet hätte, hat es nicht getan. Eher als nicht ist ihr Rennen unterwegs zu Ende gegangen.
alarm-why-finish = Warum jetzt: Inzwischen wäre sie im Ziel, wer auch immer meldet.
alarm-why-limit = Warum jetzt: Die Zeit des Rennens ist für sie um, und niemand hat sie seither gesehen. Es liegt nicht an der Länge dieser Stille.
alarm-why-told-missing = Warum jetzt: Jemand sagte, sie sei noch nicht da, als sie fast sicher dort gewesen wäre.
alarm-asked = Außer dir gefragt: { $names }.
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
alarm-may-escape = - auf dem Fluchtweg abgestiegen: { $route }.
by-timing-mat = eine Zeitmatte
by-volunteer = Helfer
by-crew = die Crew
by-runner = die Läuferin selbst
by-tracker = einen Tracker
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
alarm-cautions =
    Stilepost ist eine Hilfe, kein Rettungsdienst: Notruf, Rennleitung und Bergrettung entscheiden.
    Geh nicht allein oder im Dunkeln auf die Strecke, um sie zu suchen. Halte dieses Telefon geladen und frei.
stand-down = ENTWARNUNG: der Alarm zu { $runner } ist vorbei ({ $of_kind }).
stand-down-seen = ENTWARNUNG: { $runner } wurde in { $place } gesehen, { $when }, gemeldet von { $by }.
stand-down-why = Grund: { $reason }. Von { $by }, { $when }.
stand-down-thanks = Es ist nichts mehr zu tun. Hast du jemanden angerufen, sag es auch dort.
stand-down-reason-seen = gesehen
stand-down-reason-stand-down = von Hand beendet
stand-down-reason-taken-back = die Meldung dahinter wurde zurückgenommen
stand-down-reason-meant = der Hilferuf galt { $other }
stand-down-reason-in-hand = jemand hat sie bei sich
stand-down-reason-retired = ihr Rennen ist vorbei, ausgestiegen
stand-down-reason-finished = im Ziel
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
outage-over = { $what }: ausgefallen von { $from } bis { $to } ({ $length }). Was gewartet hat, ist gelesen; die Zeiten sind neu ausgerechnet.
outage-over-out = { $what }: ausgefallen von { $from } bis { $to } ({ $length }). Was dort gewartet hat, geht jetzt hinaus.
outage-what-server = unser Server oder seine Datenbank
outage-what-telegram = unser Telegram-Bot
outage-what-email = unsere E-Mail
outage-what-text = unsere Kurznachrichten
outage-what-webhook = unser Webhook
outage-what-other = unser Kanal { $name }
distress = Bist du verletzt? Ruf { $emergency } an. { $name }: { $phone }.
distress-for-her = Ist sie verletzt? Ruf { $emergency } an. { $name }: { $phone }.
distress-passed-on = Deine Worte sind bei deiner Crew und deinem Sicherheitskontakt{ $count ->
    [0] .
   *[other] {": "}{ $names }.
 }
distress-reaches-nobody = Es ist notiert, hat aber NIEMANDEN erreicht: niemand ist verbunden. Bitte ruf an.
distress-not-passed-on = Ich konnte deine Worte NICHT weitergeben. Bitte ruf an.
distress-whose = Du hast nicht gesagt, welche Läuferin: der Alarm läuft für { $names }. Welche ist es?
distress-which = Du hast nicht gesagt, welche Läuferin. Schreib jetzt ihren Namen oder ihre Nummer, oder drück: dann geht ihr eigener Alarm hinaus.
distress-named = Für { $runner }: ihr eigener Alarm läuft.
distress-about = Der Alarm gilt { $runner }, von der zuletzt die Rede war. Braucht eine andere Läuferin Hilfe, schreib das sofort mit ihrem Namen.
distress-meant = Für { $runner }: ihr Alarm bleibt offen. Zurückgenommen für { $others }.
distress-meant-all = Die Alarme bleiben offen für { $names }.
distress-joins = Dazu ist schon ein Alarm offen, dein Ruf gehört jetzt zu ihm. { $holder ->
    [none] NOCH HAT NIEMAND GEANTWORTET: ruf { $emergency } an.
   *[other] { $holder } hat ihn übernommen.
 }
now-holder = DU HAST DEN ALARM zu { $runner }.
now-control = 1. Ruf jetzt { $name } an, { $phone }, falls noch nicht geschehen. Die Worte dafür gibt dir ‚was sage ich ihnen‘.
now-control-other = 1. { $caller } soll { $name } anrufen; bist du nicht sicher, dass es geschehen ist, ruf selbst an: { $phone }.
now-ring = 2. Ruf { $who } an{ $phone ->
    [none] {""}
   *[other] {", "}{ $phone }
 }: wo, was, wer ist bei ihr?
now-write = 3. Schreib hier, was du tust: es geht wörtlich an sie und an den, der gerufen hat. Kannst du nicht mehr, schreib ‚kann nicht‘.
now-look = 2. Schreib hier, was du herausfindest. Kannst du nicht mehr, schreib ‚kann nicht‘.
now-ends = Es endet, sobald jemand, der sie bei sich hat, ‚wir haben sie‘ schreibt, oder mit ‚Entwarnung‘ vom Sicherheitskontakt oder Veranstalter.
now-asked = Den Alarm zu { $runner } hat niemand. Kannst du dich kümmern? Schreib ‚ich übernehme‘; wenn nicht, ‚kann nicht‘.
now-asked-held = { $name } hat den Alarm zu { $runner }. Bleib erreichbar; was du von ihr weißt, schreib hier, es geht an { $name }.
now-call =
    Ruf SOFORT { $emergency } an, wenn sie nicht aufwacht oder nicht normal atmet, krampft oder Brustschmerz hat, Gesicht oder Zunge anschwellen,
    sie heiß oder kalt und verwirrt ist, eine Seite schwach ist oder eine Blutung nicht aufhört.
now-call-own =
    Ruf SOFORT { $emergency } an, wenn du schlecht Luft bekommst, Brustschmerz hast oder einen Krampfanfall hattest, Gesicht oder Zunge anschwellen,
    dir heiß oder kalt ist und du nicht klar denken kannst, eine Seite schwach ist oder eine Blutung nicht aufhört.
now-call-unsure = Bist du unsicher: ruf { $emergency } an. Du brauchst niemandes Erlaubnis, und ein Anruf zu viel schadet nicht.
now-call-open = Auch dann, wenn hier niemand geantwortet hat oder niemand bald bei ihr sein kann.
now-call-open-own = Auch dann, wenn hier niemand geantwortet hat oder niemand bald bei dir sein kann.
now-call-then = Danach { $name }: { $phone }.
now-tell = Lies das vor; sag zuerst, wo du selbst bist und was du siehst.
now-tell-less = Ihren Namen und ihre Nummer, wo sie ist, was geschehen ist, ob sie wach ist und normal atmet, wer bei ihr ist, deine eigene Nummer.
distress-where = Wenn du kannst, schick deinen Standort oder schreib, wo du bist. Halte dich warm; bleib auf der Strecke, wenn das sicher ist.
distress-not-hurt = Wenn nichts ist, schreib ‚rückgängig‘.
grave = Ist sie oder sonst jemand in Gefahr, ruf jetzt { $emergency } an. { $name }: { $phone }. Ob sie weitergeht, entscheiden Sanitäter und Ärzte.
grave-own = Bist du in Gefahr, ruf jetzt { $emergency } an. { $name }: { $phone }. Ob du weitergehst, entscheiden Sanitäter und Ärzte.
grave-help = Sollen es alle sofort erfahren, schreib ‚sie braucht Hilfe‘.
grave-help-own = Sollen es alle sofort erfahren, schreib ‚Hilfe‘.
