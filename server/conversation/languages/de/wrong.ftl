# Was an einer Datei falsch ist, und was dagegen zu tun ist: `wrong-` und `do-`. Werte stehen da wie in der Datei.

### event

## any key
wrong-missing = ‚{ $key }‘ fehlt
wrong-no-text = { $value } ist kein Text
do-put-quotes = Setz es in Anführungszeichen: { $key } = "{ $value }".
wrong-text-holds-control-character-u = der Text enthält das Steuerzeichen U+{ $character }
do-type-text-anew = Tipp den Text neu.
wrong-text-characters = der Text hat { $count } Zeichen
do-keep-it-to = Bleib bei { $most }.
wrong-text-more-line = der Text hat mehr als eine Zeile
do-write-line = Schreib ihn in eine Zeile.
wrong-no-number = { $value } ist keine Zahl
wrong-number-outside = { $value } liegt nicht zwischen { $low } und { $high }
do-give-within-range = Gib { $key } in diesem Bereich an.
wrong-no-whole-number = { $value } ist keine ganze Zahl
do-write-without-decimals = Schreib sie ohne Nachkommastellen.
wrong-neither-true-nor-false = { $value } ist weder true noch false
do-write-true-false-without-quotes = Schreib true oder false, ohne Anführungszeichen.
do-write-hours-minutes = Schreib Stunden und Minuten, wie "29:00".
wrong-no-list-texts = { $value } ist keine Liste von Texten
do-write-list-of-texts = Schreib { $key } = ["...", "..."].
do-write-own-line-below = Schreib { $key } = {"{"} ... {"}"}, oder [{ $head }] in eine eigene Zeile unter dem [[{ $listed }]], zu dem es gehört.
do-begin-each-own-line-below = Beginn jede mit [[{ $head }]] in einer eigenen Zeile unter dem [[{ $listed }]], zu dem sie gehört.
do-write-own-line = Schreib [{ $key }] in eine eigene Zeile, oder { $key } = {"{"} ... {"}"}.
wrong-no-list-tables = ‚{ $key }‘ ist keine Liste von Tabellen
do-begin-each-own-line = Beginn jede mit [[{ $head }]] in einer eigenen Zeile.
wrong-too-many = { $count } { $key } sind zu viele
do-keep-them = Bleib bei { $most }.
wrong-time-out-range = die Zeit liegt außerhalb des Möglichen
wrong-key-not-known = den Schlüssel ‚{ $key }‘ gibt es nicht
do-did-mean = Meintest du ‚{ $near }‘?
do-known-here = Bekannt ist hier: { $known }.
do-stilepost-keys-says-what-each = `stilepost keys { $table }` sagt, was jeder bedeutet.
do-write = Schreib eines von: { $words }.
do-use = Nimm eines von: { $known }.
wrong-not-known-here = ‚{ $word }‘ ist hier nicht bekannt
wrong-no-table = { $value } ist keine Tabelle

## times
wrong-no-length-time = ‚{ $text }‘ ist keine Dauer
do-write-hours-minutes-29-00 = Schreib Stunden und Minuten, wie "29:00" oder "6:30".
wrong-no-pace = ‚{ $text }‘ ist kein Tempo
do-write-minutes-seconds-per-km-10 = Schreib Minuten und Sekunden je km, wie "10:50", oder je Meile, wie "14:00/mile".
wrong-text-no-time-of-day = ‚{ $text }‘ ist keine Uhrzeit
wrong-no-time-day = { $value } ist keine Uhrzeit
do-write-22-00 = Schreib { $key } = "22:00".
do-write-hours-minutes-09-30 = Schreib Stunden und Minuten, wie "09:30" oder "21:05".
do-write-11-30-sun-11 = Schreib "11:30", "Sun 11:30" oder Tag und Zeit wie 2027-06-20T11:30.
wrong-no-moment = ‚{ $text }‘ ist kein Zeitpunkt
wrong-does-not-exist-clocks-go = { $wall } gibt es in { $zone } nicht: die Uhren werden darüber hinweg vorgestellt
do-take-time-before-after-hour = Nimm eine Zeit vor oder nach der Stunde, die ausfällt.
wrong-comes-twice-clocks-go-back = { $wall } gibt es in { $zone } zweimal, weil die Uhren zurückgestellt werden; genommen wird das erste Mal
do-if-second-meant-write = Ist das zweite gemeint, schreib { $key } = { $offset }.
do-write-without-quotes = Schreib { $key } = { $meant }, ohne Anführungszeichen.
do-write-date-time-without-quotes = Schreib Tag und Zeit ohne Anführungszeichen, wie { $key } = { $example }.
do-add-time-day-t05-00 = Gib die Uhrzeit dazu: { $key } = { $value }T05:00 ist fünf Uhr morgens.
wrong-no-date-time = { $value } ist kein Tag mit Uhrzeit
wrong-year-cannot-right = das Jahr { $year } kann nicht stimmen
do-check-year = Prüf das Jahr.

## the file as such
wrong-file-characters = die Datei hat { $count } Zeichen
do-event-file-most-route = Eine Renndatei hat höchstens { $most }: ist das die Strecke?
wrong-brackets-nested-too-deep = die Klammern sind zu tief geschachtelt
wrong-value-impossible = ein Wert ist unmöglich: { $error }
do-compare-example-file = Vergleich mit der Beispieldatei.
do-compare-line-example-file-quotes = Vergleich die Zeile mit der Beispieldatei: Anführungszeichen, Klammern, Kommas.
wrong-telephone-number-stands-without-quotes = die Telefonnummer { $value } steht ohne Anführungszeichen
do-put-quotes-country-code = Setz sie mit Ländervorwahl in Anführungszeichen, wie { $key } = "{ $abroad }".
wrong-date-written-another-way-file = das Datum { $value } ist anders geschrieben, als diese Datei es hat
do-write-moment = Schreib { $key } = { $moment }.
wrong-no-day-time = { $value } gibt es als Tag oder Uhrzeit nicht
do-check-day-hour-minute-2027 = Prüf Tag, Stunde und Minute: { $key } = 2027-06-19T05:00.
do-use-straight-quotes-not-curly = Nimm gerade Anführungszeichen, " und ", keine geschwungenen.
do-key-table-already-keep-use = Diesen Schlüssel oder diese Tabelle gibt es schon: behalte eines, oder nimm [[...]] für eine Liste von Tabellen.
do-write-decimals-point-21-3 = Schreib Nachkommastellen mit Punkt: 21.3.
do-put-times-lengths-quotes-29 = Setz Zeiten und Dauern in Anführungszeichen: "29:00".
do-write-minutes = Schreib Minuten als Zahl: { $key } = { $minutes }
do-put-words-quotes-name-skelter = Setz Wörter in Anführungszeichen: name = "Skelter Mill". true und false stehen ohne.
do-quote-missing = Ein Anführungszeichen fehlt.
do-each-line-key-value-heading = Jede Zeile ist Schlüssel = Wert, eine [Überschrift] oder eine Bemerkung nach "#".
wrong-no-event-table = es gibt keine Tabelle [event]
do-begin-file-event-name-starts = Beginn die Datei mit [event], name, starts, time_zone.
do-give-race-name-name-long = Gib dem Rennen einen Namen, wie name = "The Long Stile Hundred".
wrong-no-emergency-number-given-112 = es ist keine Notrufnummer angegeben, 112 wird genommen
do-write-emergency-number-112-what = Schreib emergency_number = "112", oder was am Ort des Rennens gilt.
do-say-where-race-time-zone = Sag, wo das Rennen ist: time_zone = "Europe/London".
do-say-when-starts-2027-06 = Sag, wann: starts = 2027-06-19T05:00 (Ortszeit).
wrong-nobody-knows-how-reach-race = niemand weiß, wie die Rennleitung zu erreichen ist
wrong-no-race-control = es gibt keine Rennleitung
do-add-race-control-name-phone = Ergänz [race_control] mit name und phone.
do-give-telephone-number = [{ $table }] braucht eine Telefonnummer.
wrong-not-among-people-nothing-can = { $name } steht nicht unter [[people]]: ihr kann nichts geschickt werden
do-add-people-name-phone = Ergänz [[people]] mit name = "{ $name }" und ihrem phone.

## points
wrong-id-cannot-used = die id ‚{ $given }‘ geht nicht
do-use-small-letters-digits-hyphens = Nimm kleine Buchstaben, Ziffern und Bindestriche, wie ‚{ $value }‘.
do-name-gpx-file-stands-beside = Nenn die GPX-Datei neben dieser: route = "route.gpx".
wrong-event-names-route-so-do = [event] nennt eine Strecke und die [[courses]] auch
wrong-no-course = es gibt keine Strecke ‚{ $course }‘
do-known = Bekannt: { $ids }.
do-several-courses-say = Es gibt mehrere Strecken: sag, welche ({ $course_ids }).
do-give-point-name-name-skelter = Gib dem Punkt einen Namen, wie name = "Skelter Mill".
do-give-distance-km-21-3 = Gib die Entfernung an, km = 21.3, oder einen Wegpunkt der Strecke, waypoint = "Mill".
wrong-crew-may-come-here-but = hierher darf die Crew, aber nichts sagt, wo sie parkt
do-add-crew-parking-walk-minutes = Ergänz crew = {"{"} parking = "...", walk_in_minutes = 5 {"}"}.
do-say-when-cut-off-when = Sag, wann: cut_off = {"{"} when = "out", clock = "Sun 11:30" {"}"}.
wrong-next-stage-starts-before-race = die nächste Etappe startet vor dem Rennen
do-give-weekday-sun-07-00 = Gib den Wochentag an, wie "Sun 07:00".
wrong-stage-ends-here-stays-until = hier endet eine Etappe, und sie bleibt bis zur nächsten
do-leave-stop-minutes-out = Lass stop_minutes weg.
wrong-cut-off-cut-offs = es gibt cut_off und cut_offs
do-put-them-all-into-cut = Schreib alle in cut_offs.
wrong-two-cut-offs-same-moment = zwei Zeitlimits für denselben Moment
do-keep-out = Behalte eines für "in" und eines für "out".
do-say-whether-must-out-then = Sag, ob sie bis dann an oder ab sein muss: when = "in" oder when = "out".
wrong-cut-off-clock-elapsed = ein Zeitlimit hat clock und elapsed
wrong-cut-off-no-time = ein Zeitlimit hat keine Zeit
do-give-clock-sun-11-30 = Gib eines an: clock = "Sun 11:30" (Uhrzeit) oder elapsed = "6:30" (seit ihrem Start).
wrong-closes-before-opens = es schließt, bevor es öffnet
do-check-two-times-weekday = Prüf beide Zeiten, mit Wochentag.
do-give-both-none = Gib beide an oder keines.
do-say-reports-volunteer-crew-timing = Sag, wer meldet: by = "volunteer" (oder "crew", "timing mat", "runner", "tracker", "nobody").
wrong-chance-0-nobody = eine chance von 0 ist niemand
wrong-chance-missing = ‚chance‘ fehlt
do-write-how-surely-reported-above = Schreib, wie sicher sie gemeldet wird, über 0 bis 1, wie chance = 0.9.
do-say-where-begins-from-km = Sag, wo er beginnt: from_km = 60.
do-say-where-ends-km-78 = Sag, wo er endet: to_km = 78.
wrong-stretch-ends-km-before-begins = der Abschnitt endet bei km { $to_km }, bevor er beginnt
do-check-from-km-km = Prüf from_km und to_km.

## points together
wrong-id-used-twice-first-line = die id ‚{ $thing_id }‘ steht zweimal in { $kind } (zuerst in Zeile { $line })
do-give-its-own-id = Gib diesem eine eigene: id = "{ $thing_id }-2".
do-place-passed-twice-two-points = Ein Ort, an dem man zweimal vorbeikommt, ist zwei Punkte, nur einer davon das Ende.
do-list-points-running-order = Ordne die Punkte in Laufrichtung.
wrong-course-needs-two-points-least = eine Strecke braucht mindestens zwei Punkte
do-add-points = Ergänz [[points]].
wrong-also-name-line = ‚{ $name }‘ ist auch ein Name von ‚{ $name2 }‘ (Zeile { $line })
do-people-must-able-tell-two = Man muss die beiden auseinanderhalten können: nenn sie hin und zurück, oder erstes und zweites.
wrong-easily-mixed-up = ‚{ $name }‘ und ‚{ $name2 }‘ verwechselt man leicht
do-choose-names-differ-more = Wähl Namen, die sich mehr unterscheiden.
wrong-crew-report-from-where-they = die Crew soll von ‚{ $name }‘ melden, wo sie keinen Zugang hat
do-add-crew-another-reporter = Ergänz crew = {"{"} ... {"}"} oder jemand anderen, der meldet.
wrong-nobody-reports-from-any-point = von keinem Punkt meldet jemand, also löste Stille nie einen Alarm aus
do-say-reports-reports-volunteer-chance = Sag, wer meldet: reports = [ {"{"} by = "volunteer", chance = 0.9 {"}"} ].
wrong-cut-off-before-start = das Zeitlimit bei ‚{ $name }‘ liegt vor dem Start
do-check-day-time = Prüf Tag und Zeit.
wrong-cut-off-after-time-limit = das Zeitlimit bei ‚{ $name }‘ liegt nach dem des Rennens
do-check-limit-event = Prüf es, und limit in [event].
wrong-must-out-before-must = bei ‚{ $name }‘ muss sie weg sein, bevor sie da sein muss
wrong-cut-off-earlier-before = das Zeitlimit bei ‚{ $name }‘ ist früher als das davor, bei ‚{ $name2 }‘
do-check-both-order-points = Prüf beide, und die Reihenfolge der Punkte.
wrong-no-stage-ends-start-none = am Start endet keine Etappe, und nach dem Ziel folgt keine
do-give-next-stage-points-where = Gib next_stage den Punkten, an denen eine Nacht dazwischen liegt.
wrong-stage-after-starts-before-before = die Etappe nach ‚{ $name }‘ startet vor der davor
do-give-each-stage-own-day = Gib jeder Etappe ihren Tag, in Laufrichtung.
wrong-cut-off-before-stage-leads = das Zeitlimit bei ‚{ $name }‘ liegt vor dem Start der Etappe, die dorthin führt
do-check-day-time-next-stage = Prüf Tag und Zeit, und next_stage des Punkts davor.
wrong-nobody-out-cut-off-next = bis zum Zeitlimit bei ‚{ $name }‘ ist dort niemand weiter: die nächste Etappe startet erst danach
do-write-when-time-not-before = Schreib when = "in", oder eine Zeit nicht vor next_stage.
wrong-stage-after-starts-before-cut = die Etappe nach ‚{ $name }‘ startet vor dem Zeitlimit dort
do-check-day-time-those-cut = Prüf Tag und Zeit, auch die des Zeitlimits.
wrong-crew-access-closes-before-start = der Zugang für die Crew bei ‚{ $name }‘ schließt vor dem Start
do-give-weekday-sun-14-00 = Gib den Wochentag an, wie "Sun 14:00".
wrong-crew-access-opens-after-race = der Zugang für die Crew bei ‚{ $name }‘ öffnet nach dem Ende des Rennens
wrong-no-runner = es gibt keine Läuferin
do-add-runners-name-target = Ergänz [[runners]] mit name und target.
wrong-also-runner = { $key } ‚{ $value }‘ hat auch die Läuferin ‚{ $seen }‘
do-reports-could-not-told-apart = Meldungen wären nicht auseinanderzuhalten: mach sie verschieden.
do-add-people-id = Ergänz [[people]] mit id = "{ $person }".
wrong-no-person-people = es gibt keine Person ‚{ $person }‘ in [[people]]
wrong-starts-more-day-before-event = { $name } startet über einen Tag vor dem Rennen, oder Wochen danach
do-check-start-event = Prüf ihren Start und den des Rennens.
wrong-personal-data-would-blanked-before = persönliche Daten würden vor dem Ende des Rennens gelöscht
do-give-day-after-race = Gib einen Tag nach dem Rennen an.
wrong-km-stands-after-km = ‚{ $name }‘ bei km { $km } steht nach ‚{ $last_name }‘ bei km { $last_km }
do-list-points-running-order-each = Ordne die Punkte in Laufrichtung, jeden weiter als den davor.
wrong-stretch-ends-km-finish-km = der Abschnitt endet bei km { $to_km }, das Ziel ist bei km { $finish_km }
do-check-km = Prüf die km.
wrong-lies-beyond-course-finish-km = { $key } = { $km } liegt hinter der Strecke, das Ziel ist bei km { $finish_km }
wrong-paces-from-km-but-rules = { $name } begleitet ab km { $from_km }, die Regeln erlauben Begleitung erst ab km { $allowed_km }
do-choose-later-point-pace-from = Wähl für pace_from einen späteren Punkt.
wrong-pace-comes-before-pace-from = pace_to kommt vor pace_from
do-exchange-two-correct = Vertausch die beiden, oder berichtige eines.
wrong-pacer-joins-km-but-rules = eine Begleitung steigt bei km { $km } ein, die Regeln erlauben sie erst ab km { $allowed_km }
do-let-pacer-join-later-meeting = Lass die Begleitung bei einem späteren Treffen einsteigen.
wrong-pacers-would-rules-allow = { $count } Begleitungen wären bei ihr, die Regeln erlauben { $pacers_at_once }
do-say-where-before-leaves-pacer = Sag, wo die davor aussteigt: pacer_leaves.

## people
do-give-runner-name-name-maren = Gib der Läuferin einen Namen, wie name = "Maren".
do-give-target-finish-29-00 = Gib eines an: target = {"{"} finish = "29:00" {"}"}, {"{"} pace_all_in = "10:50" {"}"} oder {"{"} easy_pace = "6:30", margin = "1:30" {"}"}; oder keines, dafür past_race oder own_runs.
do-add-start-under-waves-known = Ergänz ihren Start unter [waves]{ $known ->
    [none] {"."}
   *[other] ; bekannt: { $known }.
 }
wrong-no-wave = es gibt keine Startwelle ‚{ $wave }‘
do-write-minutes-seconds-per-km = Schreib Minuten und Sekunden je km.
wrong-several-forms-target-given = es sind mehrere Formen von target angegeben
wrong-target-empty = target ist leer
wrong-easy-pace-margin-go-together = easy_pace und margin gehören zusammen
do-say-from-point-from-start = Sag, ab welchem Punkt: from = "start".
wrong-no-telephone-number = ‚{ $text }‘ ist keine Telefonnummer
do-write-country-code-44-1632 = Schreib sie mit Landesvorwahl: "+44 1632 960001".
wrong-no-country-code = ‚{ $text }‘ hat keine Landesvorwahl
do-write-from-abroad-44-1632 = Schreib sie wie aus dem Ausland: "+44 1632 960001".
do-give-person-name-name-ana = Gib der Person einen Namen, wie name = "Ana".
wrong-quiet-hours-need-both-ends = Ruhezeiten brauchen Anfang und Ende
do-write-quiet-from-22-00 = Schreib quiet = {"{"} from = "22:00", to = "06:00" {"}"}.
do-write-area-city-europe-london = Schreib Gebiet und Stadt, wie "Europe/London".
wrong-no-time-zone = ‚{ $name }‘ ist keine Zeitzone
do-check-what-follows = Prüf das @ und was danach kommt.
do-write-whole-beginning-https = Schreib sie ganz, mit https:// am Anfang.
wrong-no-channel = es gibt keinen Kanal ‚{ $name }‘
wrong-channel-named-twice = ein Kanal ist zweimal genannt
do-name-each-once-order-try = Nenn jeden einmal, in der Reihenfolge des Versuchens.
wrong-channel-no-address = der Kanal ‚{ $name }‘ hat keine Adresse
do-add-take-out-channels = Ergänz { $name } = ... oder nimm ihn aus channels.
do-say-what-person = Sag, was diese Person ist: { $kinds }.
do-say-where-drive-begins-from = Sag, wo die Fahrt beginnt: from = "start".
do-say-where-drive-ends-mill = Sag, wo die Fahrt endet: to = "mill".
do-say-where-point-mill = Sag, wo: point = "mill".
do-name-trouble-trouble-hot-spot = Nenn die Not: trouble = "hot spot on a foot".
wrong-no-list = { $key } ist keine Liste
do-write-poles-name-torch-hours = Schreib { $key } = ["poles", {"{"} name = "torch", hours = 9 {"}"}].
wrong-two-bags-wait-at = zwei ihrer Beutel warten bei ‚{ $point }‘
do-put-all-into-one-bag = Pack alles in einen: was sie ab dort isst, steht auf jedem Etikett.
wrong-no-point-drop-bags = ‚{ $point }‘ ist kein Punkt für Beutel
do-ask-race-then-add-drop = Frag den Veranstalter; dann ergänz "drop bag" unter kinds dieses Punktes, oder schick den Beutel anderswohin.
do-correct-per-h-or-what-one-holds = Berichtige per_h, oder was eines der Dinge enthält.
wrong-eaten-twice = ‚{ $name }‘ steht zweimal in einem ihrer Pläne in fuel
do-write-it-once-added-up = Schreib es einmal, mit zusammengezähltem per_h.
wrong-mg-hardly-any = { $mg } mg in einem ist so gut wie nichts
do-write-milligrams = Schreib Milligramm, nicht Gramm: { $key } = 300.
wrong-two-fuel-plans-begin = zwei ihrer Pläne in fuel beginnen bei ‚{ $from_point }‘
do-join-them-into-let-begin = Mach einen daraus, oder lass einen an einem späteren Punkt beginnen.
wrong-ml-hour-not-even-sip = { $fluid_ml_per_h } ml in der Stunde sind nicht einmal ein Schluck
do-write-millilitres-not-litres-fluid = Schreib Milliliter, nicht Liter: fluid_ml_per_h = 500.
do-say-where-bag-waits-point = Sag, wo der Beutel wartet: point = "mill".
wrong-time-zone-hours-from-suns = die Zeitzone { $time_zone } ist { $apart_h } Stunden von der Sonnenzeit am Ort der Strecke entfernt
do-check-time-zone-route-right = Prüf time_zone, und ob es die richtige Strecke ist: sie beginnt bei Länge { $lon }.
do-say-when-bad-when-second = Sag, wann es schlecht ist: when = "die zweite Nacht".
do-write-what-wants-told-words = Schreib, was sie hören will: words = "links, rechts, zählen".
do-name-name-gel-per-h = Nenn es: {"{"} name = "Gel", per_h = 1 {"}"}.
do-say-how-many-hour-name = Sag, wie viele in einer Stunde: {"{"} name = "Gel", per_h = 1 {"}"}.
do-name-item-name-head-torch = Nenn das Ding: {"{"} name = "head torch" {"}"}.
wrong-no-people-named-plan-can = es sind keine Leute genannt: ein Plan geht, aber niemand erfährt etwas
do-add-people-their-parts-ladder = Ergänz [[people]] mit ihren parts, eine mit ladder = 1.
wrong-runner-cannot-answer-alarm-about = eine Läuferin kann keinen Alarm über sich selbst beantworten
do-put-ladder-another-person = Gib ladder einer anderen Person.
wrong-part-given-twice = der Part ‚{ $value }‘ steht zweimal da
do-keep-two = Behalte einen von beiden.
wrong-no-crew-car-comes-how = zu ‚{ $name }‘ kommt kein Auto der Crew: wie von dort wegkommt, wer dort aussteigt, steht nicht da
do-ask-race-add-transport-under = Frag den Veranstalter und ergänz transport = "..." dort, oder unter [event] für jeden solchen Punkt.
wrong-alarm-about-would-reach-nobody = ein Alarm über { $name } erreichte niemanden: die Leiter ist leer
do-give-somebodys-part-ladder-1 = Gib jemandem im Part ladder = 1.
do-give-person-part-kind-safety = Gib einer Person den Part {"{"} kind = "safety contact", ladder = 1 {"}"}.
wrong-no-safety-contact = { $name } hat keinen Sicherheitskontakt
wrong-step-ladder-also = Stufe { $ladder } der Leiter für { $name } hat auch ‚{ $person }‘
do-both-told-once-number-them = Beide erfahren es zugleich; gib ihnen Nummern, wenn das nicht gemeint ist.
wrong-nobody-call-race-control = niemand soll die Rennleitung anrufen
do-give-exactly-persons-part-calls = Gib genau einer Person im Part calls_race_control = true.
wrong-both-call-race-control = ‚{ $person }‘ und ‚{ $person2 }‘ sollen beide die Rennleitung anrufen
do-keep-person = Behalte eine Person.
wrong-call-race-control-but-no = { $name } soll die Rennleitung anrufen, hat aber keine Telefonnummer
do-add-phone = Ergänz phone.
wrong-ladder-but-no-way-reach = { $name } steht auf der Leiter, ist aber nicht zu erreichen
do-add-phone-email-channels = Ergänz phone, email oder channels.
wrong-ladder-but-others-cannot-telephone = { $name } steht auf der Leiter, aber andere können dort nicht anrufen
wrong-name = { $kind ->
    [car] das Auto ‚{ $name }‘
    [person] die Person ‚{ $name }‘
   *[place] der Ort ‚{ $name }‘
 } heißt wie ‚{ $seen }‘
do-people-could-mix-them-up = Man könnte sie verwechseln: mach sie verschieden.

## drives, cars, meetings
wrong-drive-goes-from-itself = die Fahrt geht von ‚{ $from_place }‘ zu sich selbst
do-correct-from = Berichtige from oder to.
wrong-drive-from-given-twice = die Fahrt von ‚{ $from_place }‘ nach ‚{ $to_place }‘ steht zweimal da
do-keep = Behalte eine.
wrong-how-long-drive-from-takes = wie lange die Fahrt von ‚{ $from_place }‘ nach ‚{ $to_place }‘ dauert, steht nicht da
do-add-minutes-35-without-no = Ergänz minutes = 35; sonst gibt es keine Abfahrtszeit.
wrong-nobody-confirmed-drive-from = niemand hat die Fahrt von ‚{ $from_place }‘ nach ‚{ $to_place }‘ bestätigt
do-add-confirmed-once-person-checked = Ergänz confirmed_by = "...", sobald jemand sie geprüft hat; bis dahin gibt es keine Abfahrtszeit.
wrong-name-point = ‚{ $place }‘ ist der Name des Punkts ‚{ $id }‘
do-write-id = Schreib seine id: ‚{ $id }‘.
wrong-no-point-place-but-much = ‚{ $place }‘ ist kein Punkt oder Ort, aber fast wie ‚{ $near }‘
wrong-no-drive-leads-from = keine Fahrt führt von oder nach ‚{ $place }‘
do-add-under-drives-write-id = Ergänz sie unter [[drives]], oder schreib die id eines Punkts oder Orts.
wrong-met-twice = ‚{ $runner }‘ wird zweimal bei ‚{ $point }‘ getroffen
do-put-both-into-meeting = Mach ein Treffen daraus.
wrong-crew-no-access = die Crew hat keinen Zugang zu ‚{ $name }‘
do-choose-another-point-add-crew = Wähl einen anderen Punkt, oder ergänz hier crew = {"{"} ... {"}"}.
wrong-people-meet-where-allowed = { $count } Leute sollen sie bei ‚{ $name }‘ treffen, wo { $most } erlaubt sind
do-name-fewer-people = Nenn weniger Leute.
wrong-meet-but-no-part-crew = ‚{ $person }‘ soll sie treffen, hat aber keinen Part als Crew oder Begleitung
do-add-kind-crew-their-parts = Ergänz {"{"} kind = "crew" {"}"} in den parts.
wrong-people-meet-rules-allow = { $count } Leute sollen sie treffen, die Regeln erlauben { $most }
wrong-nobody-named-go-meeting = niemand ist genannt, der zu diesem Treffen fährt
do-add-crew = Ergänz crew = ["..."].
wrong-no-part-pacer = ‚{ $person }‘ hat keinen Part als Begleitung
do-add-kind-pacer-their-parts = Ergänz {"{"} kind = "pacer" {"}"} in den parts.
wrong-travels-does-not-go-meeting = ‚{ $name }‘ liegt in ‚{ $car }‘, das nicht zu diesem Treffen fährt
do-put-into-car-goes = Pack es in ein Auto, das hinfährt.
wrong-people-go-seats = { $count } Leute fahren in ‚{ $car }‘, das { $seats } Plätze hat
do-check-seats-name-second-car = Prüf die Plätze, oder nenn ein zweites Auto.
wrong-cars-used-rules-allow = { $count } Autos werden für { $name } gebraucht ({ $cars }), die Regeln erlauben { $most }
do-use-fewer-cars = Nimm weniger Autos.
wrong-no-point-asks-permit = kein Punkt verlangt die Erlaubnis ‚{ $name }‘
do-permits-asked = Verlangt werden: { $known }.
do-add-permit-crew-point = Ergänz permit = "..." in crew = {"{"} ... {"}"} eines Punkts.
wrong-crew-need-permit-nobody-says = die Crew braucht die Erlaubnis ‚{ $permit }‘ bei ‚{ $name }‘, und niemand sagt, wer sie hat
do-ask-race-then-write-permits = Frag beim Rennen, dann schreib permits = ["{ $permit }"] beim Auto, oder im Part dessen, der sie hat.
wrong-where-comes-from-not-said = woher ‚{ $id }‘ kommt, steht nicht da, also gibt es keine Abfahrtszeit
do-add-from-here-starts-car = Ergänz hier from = ... oder beim Auto starts_at = ...
wrong-no-drive-from-so-no = es gibt keine Fahrt von ‚{ $came_from }‘ nach ‚{ $here }‘, also hat ‚{ $id }‘ keine Abfahrtszeit
do-add-under-drives = Ergänz sie unter [[drives]].

## movements, shares
do-no-file-yet = { $what ->
    [point] In dieser Datei gibt es noch keinen Punkt.
    [runner] In dieser Datei gibt es noch keine Läuferin.
    [person] In dieser Datei gibt es noch keine Person.
    [car] In dieser Datei gibt es noch kein Auto.
    [place] In dieser Datei gibt es noch keinen Ort.
   *[other] In dieser Datei gibt es noch nichts der Art ‚{ $what }‘.
 }
wrong-no-such = { $what ->
    [point] es gibt keinen Punkt ‚{ $word }‘
    [runner] es gibt keine Läuferin ‚{ $word }‘
    [person] es gibt keine Person ‚{ $word }‘
    [car] es gibt kein Auto ‚{ $word }‘
    [place] es gibt keinen Ort ‚{ $word }‘
   *[other] es gibt kein { $what } ‚{ $word }‘
 }
wrong-place-id-point = der Ort ‚{ $id }‘ hat die id eines Punkts
do-points-places-already-leave-out = Punkte sind schon Orte: lass diesen weg.
wrong-lat-lon-so-place = ‚{ $name }‘ hat lat und lon, und sein Ort ‚{ $place }‘ auch
do-keep-them-place-only = Behalte sie nur beim Ort.
wrong-given-beside-minutes-whole-drive = { $key } steht neben minutes, die schon die ganze Fahrt sind
do-count-into-minutes-leave-out = Rechne es in minutes ein und lass { $key } weg.
wrong-minutes-km-straight-line-faster = { $minutes } Minuten für { $km } km Luftlinie ist schneller, als ein Auto fahren darf
do-check-minutes-lat-lon-both = Prüf die Minuten, und lat und lon beider Orte.
wrong-rules-allow-crew-only-once = die Regeln erlauben Crew erst, wenn das Rennen vorbei ist
wrong-closes-before-rules-allow-crew = ‚{ $point }‘ schließt, bevor die Regeln Crew erlauben (crew_not_before)
do-leave-meeting-out = Lass dieses Treffen weg.
wrong-joins-leaves-same-meeting = ‚{ $pacer_joins }‘ steigt beim selben Treffen ein und aus
do-let-two-another-meeting = Leg eines von beiden auf ein anderes Treffen.
wrong-leaves-here-but-joins-no = ‚{ $pacer_leaves }‘ steigt hier aus, aber bei keinem Treffen davor ein
do-add-pacer-joins-earlier-meeting = Ergänz pacer_joins bei einem früheren Treffen.
wrong-crew-but-foot-then-pacer = ‚{ $person }‘ soll bei der Crew sein, ist dann aber als Begleitung zu Fuß bei ihr
do-take-name-out-add-pacer = Nimm den Namen heraus, oder ergänz davor pacer_leaves.
wrong-joins-here-but-already = ‚{ $pacer_joins }‘ steigt hier ein, ist aber schon bei ihr
do-add-pacer-leaves-meeting-between = Ergänz pacer_leaves bei einem Treffen dazwischen.
wrong-joins-but-said-pace-only = ‚{ $person }‘ steigt bei ‚{ $point }‘ ein, soll aber erst ab ‚{ $said }‘ begleiten
do-make-pace-from-meeting-agree = Bring pace_from und das Treffen in Einklang.
wrong-named-twice = ‚{ $name }‘ ist zweimal genannt
wrong-cannot-crew-meets = { $running } kann nicht in der Crew sein, die sie trifft
do-name-somebody-else = Nenn jemand anderen.
wrong-crew-come-from-itself = die Crew von ‚{ $point }‘ kommt von ‚{ $point }‘ selbst
do-leave-from-out-name-where = Lass from weg, oder nenn, woher sie kommt.
wrong-nobody-goes-said-drive = von niemandem in ‚{ $car }‘ steht da, dass er fährt
do-add-drives-true-part-them = Ergänz drives = true im Part von einem.
wrong-would-been-awake-over-two = ‚{ $person }‘ wäre beim Start über zwei Tage wach
wrong-awake-only-after-race = ‚{ $person }‘ wäre erst nach dem Rennen wach
wrong-two-sleeps-overlap = zwei Schlafzeiten von ‚{ $person }‘ überschneiden sich
do-join-them-into = Mach eine daraus.
wrong-share-from-ends-comes-before = der Anteil ab ‚{ $from_point }‘ endet bei ‚{ $to_point }‘, das davor kommt
wrong-from = { $gap } von ‚{ $names }‘ bis ‚{ $names2 }‘
wrong-nobody-runs = niemand läuft
wrong-two-people-run = zwei laufen
do-let-each-share-begin-where = Lass jeden Anteil beginnen, wo der davor endet.
wrong-nobody-runs-from = niemand läuft von ‚{ $names }‘ bis ‚{ $names2 }‘
do-add-share-up-finish = Ergänz einen Anteil bis ins Ziel.
wrong-crew-but-runs-share-then = ‚{ $person }‘ soll bei der Crew sein, läuft dann aber einen Anteil
do-write-sleeps-from-sun-01 = Schreib sleeps = [ {"{"} from = "Sun 01:00", to = "Sun 03:00" {"}"} ].
wrong-sleep-ends-before-begins-lasts = ein Schlaf endet, bevor er beginnt, oder dauert über 16 Stunden
do-give-both-weekday = Gib beide mit Wochentag an.
do-say-runs-person-ana = Sag, wer ihn läuft: person = "ana".
do-say-where-share-begins-from = Sag, wo der Anteil beginnt: from = "start".
do-say-where-share-ends-mill = Sag, wo der Anteil endet: to = "mill".

## pace, weather
do-write-past-race-name-fell = Schreib past_race = {"{"} name = "Fell 50", km = 52, ascent_m = 1900, time = "7:40" {"}"}.
do-write-weather-from-sat-12 = Schreib [[weather]] mit from = "Sat 12:00", to = "Sat 18:00", temperature_c = 27, humidity = 55; oder ground = "mud" mit from_km und to_km.
wrong-recordings-too-many = { $count } Aufzeichnungen sind zu viele
do-name-best = Nenn die besten { $most }.
do-name-each-recording-once-would = Nenn jede Aufzeichnung einmal: sie zählte sonst doppelt.
wrong-not-beside-event-file = ‚{ $name }‘ liegt nicht neben der Renndatei
do-copy-file-next-event-file = Kopier die Datei neben die Renndatei und schreib ihren Namen: ‚{ $last }‘.
do-give-ascent-metres-0-level = Gib den Anstieg in Metern an, 0 für ein flaches Rennen.
wrong-km-km-h-no-speed = { $km } km in { $time } sind { $speed_km_h } km/h, keine Geschwindigkeit zu Fuß
do-write-hours-minutes-7-40 = Schreib Stunden und Minuten, wie "7:40"; sieh nach, ob sie vertauscht sind.
wrong-weather-ends-km-before-begins = das Wetter endet bei km { $to_km }, bevor es beginnt
wrong-weather-says-nothing = dieses Wetter sagt nichts
wrong-humidity-without-temperature-c-says = humidity ohne temperature_c sagt nichts
do-add-temperature-c = Ergänz temperature_c.
wrong-weather-ends-before-begins = das Wetter endet, bevor es beginnt
wrong-weather-over-days-before-start = dieses Wetter ist Tage vor dem Start vorbei
do-check-date = Prüf den Tag.

### plan

## files beside the event file
wrong-no-file = es gibt keine Datei { $file }
do-correct-name = Berichtige ihren Namen.
do-put-beside-event-file-correct = Leg sie neben die Renndatei, oder berichtige ihren Namen
wrong-not-utf-8-text-line = sie ist kein UTF-8-Text (Zeile { $line })
do-save-csv-utf-8 = Speicher sie als CSV in UTF-8
wrong-recorded-same-time-run-would = sie wurde zur selben Zeit aufgezeichnet wie { $file }: ein Lauf zählte doppelt
do-keep-better-two-correct-clock = Behalte die bessere von beiden, oder stell die Uhr des Geräts richtig

## results
do-write-h-mm-ss-since = Schreib h:mm:ss seit dem Start, oder Sekunden; lass es leer, wo keine genommen wurde
wrong-no-elapsed-time = ‚{ $text }‘ ist keine Zeit seit dem Start
wrong-too-large = sie ist zu groß
do-give-years-results-line-runner = Gib die Ergebnisse eines Jahres, eine Zeile je Läufer
wrong-no-runners = sie enthält keine Läufer
do-give-header-line-then-line = Gib eine Kopfzeile, dann eine Zeile je Läufer
wrong-no-csv-file = sie ist keine CSV-Datei ({ $error })
do-save-csv-commas = Speicher sie als CSV mit Kommas
wrong-no-column-named-after-finish = keine Spalte heißt wie das Ziel, ‚{ $name }‘
wrong-later-point-earlier-time-before = ein späterer Punkt hat eine frühere Zeit als der davor
do-give-elapsed-times-since-start = Gib Zeiten seit dem Start, keine Stücke und keine Uhrzeiten
wrong-finishers-too-few-see-shape = { $count } im Ziel sind zu wenige, um eine Form zu sehen
do-add-results-other-years = Ergänz Ergebnisse anderer Jahre
wrong-km-m-ascent-no-race = { $km } km mit { $ascent_m } m Anstieg ist kein Rennen
do-give-distance-km-1-2000 = Gib die Länge in km (1 bis 2000) und den Anstieg in Metern
wrong-km-no-speed-foot = { $time } für { $km } km ist keine Geschwindigkeit zu Fuß
do-look-whether-hours-minutes-mixed = Sieh nach, ob Stunden und Minuten vertauscht sind

## recordings
do-export-activity-again-from-watchs = Hol die Aufzeichnung noch einmal aus dem Programm der Uhr, als FIT oder TCX, oder als GPX mit Zeiten
wrong-mb-more = sie hat { $mb } MB, mehr als { $most_mb }
do-give-activity = Gib eine einzige Aufzeichnung
wrong-empty = sie ist leer
wrong-neither-gpx-nor-fit-nor = sie ist weder GPX noch FIT noch TCX
wrong-watch-calls-not-run = die Uhr nennt sie ‚{ $word }‘, keinen Lauf
do-give-recordings-runs-hikes-only = Gib nur Aufzeichnungen von Läufen und Wanderungen
wrong-no-track-point-time-so = kein Punkt hat eine Zeit, also ist sie eine Strecke, keine Aufzeichnung
wrong-fit-file-damaged = die FIT-Datei ist beschädigt ({ $error })
wrong-tcx-file-damaged = die TCX-Datei ist beschädigt ({ $error })
wrong-file-declares-doctype-tcx-never = die Datei erklärt einen DOCTYPE, den TCX nie braucht
wrong-samples-time-least-needed = sie hat { $count } Punkte mit Zeit, mindestens { $least } braucht es
wrong-km-min-too-short-learn = sie hat { $km } km in { $minutes } min, zu kurz, um daraus zu lernen
do-give-runs-more-kilometre-five = Gib Läufe von mehr als einem Kilometer und fünf Minuten
wrong-lasts-days = sie dauert { $days } Tage
do-give-activity-file = Gib eine Aufzeichnung je Datei
wrong-neither-distances-nor-positions = sie hat weder Entfernungen noch Orte
wrong-no-heights-so-nothing-can = sie hat keine Höhen, über Berge ist also nichts zu lernen
do-give-recording-watch-writes-heights = Gib eine Aufzeichnung einer Uhr, die Höhen schreibt
wrong-m-foot-rest-pauses-jumps = { $walked_m } m davon waren zu Fuß, der Rest sind Pausen und Sprünge
do-give-run-more-kilometre = Gib einen Lauf von mehr als einem Kilometer
wrong-km-h-over-km-faster = { $speed_km_h } km/h über { $km } km ist schneller, als je jemand gelaufen ist
do-leave-out-rides-give-recordings = Lass Fahrten weg; gib Aufzeichnungen von Läufen und Wanderungen
wrong-under-3-km-own-running = es sind unter 3 km ihres eigenen Laufens, um daraus zu lernen
do-add-longer-runs = Ergänz längere Läufe

## target and plan
do-give-finish-pace-all-easy = Gib finish, oder pace_all_in, oder easy_pace mit margin
wrong-over-days-longer-can-planned = { $time } ist über { $days } Tage, länger als hier geplant werden kann
do-look-whether-hours-minutes-mixed-up = Sieh nach, ob Stunden und Minuten vertauscht sind, oder plane das Rennen in Etappen
wrong-km-slower-anybody-walks = { $time } für { $km } km ist langsamer, als jemand geht
do-look-whether-hours-minutes-pace = Sieh nach, ob Stunden und Minuten, oder Tempo und Ziel, vertauscht sind
wrong-easy-pace-needs-margin-0 = ein lockeres Tempo braucht einen Zuschlag von 0 bis 10 min/km
do-write-margin-1-30-two = Schreib margin = "1:30"; ein bis zwei Minuten sind beim ersten Ultra üblich
wrong-no-time-aim = { $time } ist keine Zeit, die man anstrebt
do-give-time-above-zero = Gib eine Zeit über null
wrong-planned-stops-alone-take-target = die geplanten Pausen allein dauern { $stops }, das Ziel ist { $target }
do-shorten-stop-minutes-points-aim = Kürze stop_minutes an den Punkten, oder nimm ein späteres Ziel
wrong-plan-needs-start-finish-least = ein Plan braucht mindestens Start und Ziel
do-add-points-course = Ergänz die Punkte der Strecke
wrong-no-km-known = von { $unplaced } ist kein km bekannt
do-give-km-waypoint-route = Gib km an, oder einen Wegpunkt der Strecke
wrong-km-does-not-come-after = { $name } bei km { $km } kommt nicht nach dem Punkt davor
do-put-points-running-order-place = Ordne die Punkte in Laufrichtung; ein Ort, an dem man zweimal vorbeikommt, ist zwei Punkte
wrong-km-route-ends-km = { $name } ist bei km { $km }, die Strecke endet bei km { $length_km }
do-correct-km-state-organisers-distance = Berichtige den km, oder gib die Länge des Veranstalters als stated_km an
wrong-rate-outside = { $name } = { $value } liegt nicht zwischen { $low } und { $high }
do-give-what-does-good-ground = Gib an, was sie frisch auf gutem Boden kann, oder lass es weg
wrong-factor-outside-0-5-5 = factor = { $factor } liegt nicht zwischen 0.5 und 5
do-write-1-10-tenth-slower = Schreib 1.10 für ein Zehntel langsamer
wrong-stretch-from-km-km-no = der Abschnitt von km { $from_km } bis km { $to_km } hat keine Länge
do-put-smaller-km-first = Setz den kleineren km zuerst
wrong-past-results-leave-too-little = frühere Ergebnisse lassen mit den geplanten Pausen zu wenig Zeit bis { $name }
do-shorten-stops-before-look-whether = Kürze die Pausen davor, oder sieh nach, ob die Ergebnisse von dieser Strecke sind
wrong-before-start = { $name } liegt vor ihrem Start
do-correct-cut-off = Berichtige das Zeitlimit
wrong-races-time-limit = das Zeitlimit des Rennens
wrong-start-next-stage = den Start der nächsten Etappe bei { $name }
do-aim-finish-earlier = Nimm ein Ziel in { $aim } oder früher
do-no-finish-time-meets-cut = Keine Zielzeit hält die Zeitlimits, wie sie sind
do-stop-less-before = { $instead }, oder mach davor weniger Pause (Pausen bis dort: { $stops })
wrong-slower-anybody-walks-course = { $target } ist langsamer, als jemand diese Strecke geht
do-plan-longer-stops-aim-earlier = Plane längere Pausen, oder nimm ein früheres Ziel
do-aim-later-finish = Nimm ein späteres Ziel
wrong-card-nothing-try-first = die Karte ‚{ $id }‘ nennt nichts, was zuerst versucht wird
do-give-least-step-try-first = Gib mindestens einen Schritt an, wie try_first = ["stop at once, dry, tape"]

## routes
do-export-route-again-gpx-use = Hol die Strecke noch einmal als GPX und nimm die neue Datei
wrong-web-page-not-route-download = das ist eine Webseite, keine Strecke: zum Herunterladen musste man wohl angemeldet sein
wrong-kml-file-not-gpx = das ist eine KML-Datei, kein GPX
wrong-tcx-file-not-gpx = das ist eine TCX-Datei, kein GPX
wrong-news-feed-not-gpx = das ist ein Nachrichtenstrom, kein GPX
wrong-zip-kmz-archive-not-gpx = das ist ein ZIP- oder KMZ-Archiv, kein GPX
wrong-gzip-archive-not-gpx = das ist ein gzip-Archiv, kein GPX
wrong-pdf-not-gpx = das ist ein PDF, kein GPX
wrong-json-not-gpx = das ist JSON, kein GPX
wrong-fit-recording-not-gpx = das ist eine FIT-Aufzeichnung, kein GPX
wrong-file-empty = die Datei ist leer
wrong-file-mb-more-mb = die Datei hat { $mb } MB, mehr als { $most_mb } MB
wrong-file-ends-middle-after-broken = die Datei hört mittendrin auf, wie nach abgebrochenem Herunterladen
do-download-export-again = Lad oder hol sie noch einmal
wrong-not-well-formed-xml = das ist kein richtiges XML: { $name }
wrong-file-begins-not-gpx = die Datei beginnt mit <{ $tag }>, nicht mit <gpx>
wrong-file-declares-doctype-gpx-never = die Datei erklärt einen DOCTYPE, den GPX nie braucht und der Leser überlasten kann
do-remove-doctype-export-route-again = Nimm den DOCTYPE heraus, oder hol die Strecke mit einem anderen Programm
wrong-text-not-utf-8-though = der Text ist kein UTF-8, obwohl die Datei keine andere Kodierung nennt
do-save-file-utf-8-export = Speicher die Datei als UTF-8, oder hol die Strecke noch einmal
wrong-files-text-encoding-cannot-read = die Kodierung der Datei ist nicht lesbar ({ $error })
wrong-unknown-kind-gpx-known-gpx = unbekannte Art von GPX, { $namespace }: bekannt sind GPX 1.0 und 1.1
wrong-elements-nested-deeper = Elemente sind tiefer geschachtelt als { $max_depth }
wrong-tag-comment-longer-bytes = ein Tag oder eine Bemerkung ist länger als { $max_token } Bytes
wrong-more-tracks-routes = mehr als { $max_lines } Tracks und Routen
do-leave-only-course-file = Lass nur die Strecke in der Datei
wrong-more-points = mehr als { $max_points } Punkte
do-thin-track-program-made = Dünne den Track in dem Programm aus, das ihn gemacht hat
wrong-more-waypoints = mehr als { $max_waypoints } Wegpunkte
do-keep-waypoints-points-race = Behalte die Wegpunkte, die Punkte des Rennens sind
wrong-point-no-missing = ein Punkt hat kein { $key }=
wrong-degrees-outside = { $key } ‚{ $text }‘ liegt nicht zwischen -{ $limit } und { $limit }
do-correct-point-perhaps-latitude-longitude = Berichtige den Punkt; vielleicht sind Breite und Länge vertauscht
wrong-not-number = { $key } ‚{ $text }‘ ist keine Zahl
do-write-like-54-9012-point = Schreib sie wie 54.9012, mit Punkt
wrong-height-spikes-bridged = { $file }: { $spikes } Höhenspitzen wurden überbrückt
wrong-line-heights-outside-m-taken = { $file }, Zeile { $strange_line }: { $strange_heights } Höhen außerhalb von { $lowest_m } bis { $highest_m } m gelten als fehlend
wrong-straight-km-from-km-points = { $file }: { $length_km } km gerade ab km { $from_km }; dort fehlen Punkte oder stehen falsch
wrong-broken-where-no-stage = { $file }: die Linie bricht bei km { $from_km } ab und geht { $length_km } km entfernt weiter, und dort endet keine Etappe; dieser Weg wird nicht gezählt
do-broken-stage = Schreib next_stage zu dem Punkt, an dem die Etappe endet, oder zeichne die Linie durch
wrong-no-heights-from-km-drawn = { $file }: keine Höhen von km { $from_km } bis { $to_km }; dort gerade gezogen
wrong-route-no-heights = { $file }: die Strecke hat keine Höhen: { $lacking }
wrong-every-height-0 = { $file }: jede Höhe ist 0: { $lacking }
wrong-only-points-heights = { $file }: nur { $share } der Punkte haben Höhen: { $lacking }
wrong-gradient-ascent-unknown-so-plan = Neigung und Anstieg sind unbekannt, der Plan rechnet also mit flachem Boden
wrong-line-m-long = die Linie ist { $length_m } m lang
do-use-file-holds-whole-course = Nimm die Datei mit der ganzen Strecke
wrong-line-km-long-when-points = die Linie ist { $length_km } km lang, wie wenn Punkte falsch geordnet sind oder falsch stehen
do-look-route-map-export-again = Sieh die Strecke auf einer Karte an und hol sie noch einmal
wrong-line-measures-km-but-km = die Linie misst { $length_km } km, angegeben sind { $stated_km } km
do-correct-stated-km-use-route = Berichtige stated_km, oder nimm die Strecke dieses Rennens
wrong-file-no-track-no-route = die Datei hat keinen Track und keine Route mit mindestens zwei Punkten
do-export-course-itself-not-only = Hol die Strecke selbst, nicht nur ihre Wegpunkte
wrong-s-joined = { $file }: { $count } { $kind ->
    [track] Tracks
   *[route] Routen
 } wurden verbunden: { $lines }
wrong-file-holds-s-do-not = die Datei enthält { $count } { $kind ->
    [track] Tracks
   *[route] Routen
 }, die nicht aufeinander folgen ({ $lines }; { $gap_km } km zwischen zweien)
do-leave-only-line-that-is-course = Lass nur den in der Datei, der die Strecke ist; endet dazwischen eine Etappe, schreib next_stage zu ihrem letzten Punkt

## points on the route
wrong-no-waypoint = { $file } hat keinen Wegpunkt ‚{ $name }‘
wrong-waypoints-named = { $count } Wegpunkte von { $file } heißen ‚{ $name }‘
do-give-points-km-instead = Gib stattdessen den km des Punkts an
do-file-no-named-waypoints-give = Die Datei hat keine Wegpunkte mit Namen: gib stattdessen den km an
wrong-but-stands-before-not-before = ‚{ $name }‘ ist bei { $places }, aber ‚{ $before }‘, das davor steht, ist nicht vor km { $earliest_km }
do-put-points-running-order-correct = Ordne die Punkte in Laufrichtung, oder berichtige km oder Wegpunkt
wrong-neither-km-nor-waypoint-given = weder km noch waypoint ist angegeben
do-give-km-21-3 = Gib eines an, wie km = 21.3
wrong-km-not-course-km-long = km { $km } liegt nicht auf der Strecke, die { $length_km } km lang ist
do-correct-km-give-stated-km = Berichtige den km, oder gib stated_km an, wo der Veranstalter anders zählt
wrong-given-km-but-course-km = { $end ->
    [start] der Start
   *[finish] das Ziel
 } steht bei km { $km }, die Strecke hat den Punkt bei km { $course_km }
wrong-waypoint-from-line = der Wegpunkt ‚{ $waypoint }‘ liegt { $distance } vom { $end ->
    [start] Start
   *[finish] Ziel
 } der Linie
do-correct-waypoint-use-route-race = Berichtige den Wegpunkt, oder nimm die Strecke mit dem { $end ->
    [start] Start
   *[finish] Ziel
 } des Rennens
wrong-waypoint-from-course-nearest-km = der Wegpunkt ‚{ $name }‘ liegt { $distance } neben der Strecke, am nächsten bei km { $km }; höchstens { $reach_m } m sind erlaubt
do-correct-waypoint-route-give-points = Berichtige Wegpunkt oder Strecke, oder gib stattdessen den km an
wrong-km-given-but-waypoint = km { $km } ist angegeben, aber der Wegpunkt ‚{ $name }‘ ist bei { $places }
do-correct-km-leave-out = Berichtige den km, oder lass ihn weg
wrong-course-comes-waypoint = die Strecke kommt am Wegpunkt ‚{ $waypoint }‘ vorbei bei { $places }
do-add-km-say-pass-meant = Ergänz km = ..., um zu sagen, welches Vorbeikommen gemeint ist

### start_list
wrong-list-empty = die Liste ist leer
do-write-first-line-bib-name = Schreib als erste Zeile: bib,name,wave,course,target. Nur bib und name müssen dastehen.
wrong-quote-not-closed = ein Anführungszeichen wird nicht geschlossen
do-put-quote-both-ends-cell = Setz Anführungszeichen an beide Enden einer Zelle oder an keines.
wrong-rows-too-many = { $count } Zeilen sind zu viele
wrong-no-column = es gibt keine Spalte ‚{ $said }‘
wrong-column-stands-twice = die Spalte ‚{ $said }‘ steht zweimal da
do-take-two-out = Nimm eine der beiden heraus.
wrong-column-missing = die Spalte ‚{ $name }‘ fehlt
wrong-bib-stands-line-too = Startnummer { $bib } steht auch in Zeile { $seen }
do-give-each-runner-bib-their = Gib jedem eine eigene Startnummer.
wrong-row-cells-first-line = die Zeile hat { $cells } Zellen, die erste hat { $columns }
do-put-name-separator-quotes = Setz einen Namen, in dem das Trennzeichen steht, in Anführungszeichen.
wrong-bib-missing = die Startnummer fehlt
wrong-no-bib = ‚{ $bib }‘ ist keine Startnummer
do-use-digits-letters-most-20 = Nimm Ziffern und Buchstaben, höchstens 20.
wrong-name-missing = der Name fehlt
do-write-runners-name = Schreib den Namen hin.
wrong-bib-new-no-target = Startnummer { $bib } ist neu und hat kein Ziel
wrong-bib-new-no-course = Startnummer { $bib } ist neu und hat keine Strecke
wrong-event-file-not-changed-list = die Renndatei wird durch keine Liste geändert: { $error }
wrong-table-stands-before-first-heading = eine Tabelle steht vor der ersten Überschrift
wrong-no-toml = der Text ist kein TOML ({ $error })
wrong-table-not-changed-in-place = [{ $table }] lässt sich nicht an seiner Stelle ändern
do-write-each-table-under-heading = Schreib jede Tabelle unter eine eigene Überschrift.
wrong-alarm-about-new-runner-would = ein Alarm zu jemandem, der neu ist, würde niemanden erreichen
do-give-person-race-part-all = Gib jemandem vom Rennen in der Renndatei einen Part für alle: {"{"} kind = "safety contact", ladder = 9 {"}"}.

### passages
wrong-passages-json = das ist keine Liste von Durchgängen
do-passages-head = Schreib Zeilen mit bib, point und time (oder elapsed), so benannt in der ersten Zeile der CSV oder als Schlüssel einer JSON-Liste.
wrong-passage-followed = Startnummer { $bib } gehört zu jemandem, der hier begleitet wird
do-passage-check-in = Melde das als Check-in: POST /v1/events/…/checkins, oder im Chat.
wrong-passage-no-point = keine Strecke hat einen Punkt ‚{ $said }‘
wrong-passage-points = ‚{ $said }‘ heißen mehrere Punkte
wrong-passage-no-time = ‚{ $said }‘ ist keine Zeit
wrong-passage-before-start = { $said } liegt vor dem Start
wrong-passage-to-come = { $said } kommt erst noch
do-passage-time = Schreib time so, wie die Uhr am Rennen sie zeigte (07:58:12, Sat 07:58, 2027-09-11 07:58), oder elapsed als h:mm:ss seit dem Start.
wrong-passage-which-day = { $said } war an mehr als einem Tag des Rennens
do-passage-day = Schreib den Tag oder das Datum dazu (Sat 07:58), und wo die Uhren umgestellt werden, den Abstand zu UTC (2027-10-31T01:30+01:00).

## put together, or with several words
wrong-outside-hours = { $text } liegt nicht zwischen { $low } und { $high } Stunden
wrong-outside-pace = { $text } liegt nicht zwischen 2:00 und 60:00 je km
do-write-number-without-quotes = Schreib eine Zahl ohne Anführungszeichen.
do-write-number-point-not-comma = Schreib eine Zahl ohne Anführungszeichen (Punkt statt Komma vor den Nachkommastellen).
wrong-also-on-line = { $what } (auch in Zeile { $lines })
wrong-also-on-lines = { $what } (auch in den Zeilen { $lines })
wrong-line-no-toml = diese Zeile ist als TOML nicht lesbar ({ $why }): { $row }
do-add-people-name-phone-or = Ergänz [[people]] mit name = "{ $name }" und ihrem phone; ist sie { $near }, schreib hier person = "{ $near }".
wrong-go-together = { $one } und { $other } gehören zusammen
wrong-no-end = kein Punkt ist { $kind ->
    [start] der Start
   *[finish] das Ziel
 }
do-give-end = Gib dem { $place ->
    [first] ersten
   *[last] letzten
 } kinds = ["{ $kind }"].
wrong-second-end = ‚{ $name }‘ ist ein { $kind ->
    [start] zweiter Start
   *[finish] zweites Ziel
 }
wrong-end-out-of-place = { $kind ->
    [start] der Start ist nicht der erste Punkt
   *[finish] das Ziel ist nicht der letzte Punkt
 }
wrong-no-e-mail-address = ‚{ $text }‘ ist keine E-Mail-Adresse
wrong-no-web-address = ‚{ $text }‘ ist keine Webadresse
do-several-runners-say-whom-meet = Es gibt mehrere Läuferinnen: sag, wen sie treffen.
do-several-runners-say-whose-share = Es gibt mehrere Läuferinnen: sag, von wessen Rennen es ein Anteil ist.
wrong-crew-no-access-rules = die Crew hat keinen Zugang zu ‚{ $name }‘, und die Regeln erlauben Hilfe nur an Crew-Punkten
do-name-columns-points = Nenn die Spalten wie die Punkte: { $names }
do-column-meant = (ist ‚{ $column }‘ für ‚{ $name }‘ gemeint?)
do-nearest-names = Die ähnlichsten Namen sind { $names }
wrong-cut-off-in = das Zeitlimit an bei { $name }
wrong-cut-off-out = das Zeitlimit ab bei { $name }
wrong-past-cut-off-in = mit einem Ziel in { $finish } kommt sie bei { $point } nach { $after } an, { $over } über { $limit } hinaus
wrong-past-cut-off-out = mit einem Ziel in { $finish } geht sie bei { $point } nach { $after } weiter, { $over } über { $limit } hinaus
wrong-finish-within-limits = ein Ziel in { $target } braucht { $needs }; in ihren eigenen Grenzen ({ $limits }) dauert diese Strecke { $fastest }
wrong-finish-within-power = ein Ziel in { $target } braucht { $needs }; mit der größten je so lange gehaltenen Leistung dauert diese Strecke { $fastest }
wrong-speed-uphill-level = { $uphill } m/s bergauf und { $level } m/s in der Ebene
wrong-speed-uphill = { $uphill } m/s bergauf
wrong-speed-level = { $level } m/s in der Ebene
wrong-speed-nobody-has = mehr, als irgendwer bergab schafft
do-aim-later-finish-or-correct-limits = Nimm ein späteres Ziel, oder berichtige ihre Grenzen
wrong-no-built-in-card = keine eingebaute Karte für { $cards }
do-give-texts-every-needed-card = Gib die Texte jeder nötigen Karte an
do-known-tables = Tabellen: { $tables }.
wrong-point-has-check-ins = der Punkt ‚{ $point }‘ ({ $name }) hat Meldungen und kann nicht entfernt werden
do-put-point-back = Setz ihn wieder ein; sperr seinen Zugang für die Crew, wenn er nicht mehr gebraucht wird.
do-keep-id-change-name = Ist ‚{ $near }‘ derselbe Ort, behalte die id ‚{ $point }‘ und ändere seinen Namen.
wrong-no-point-on-course = auf dieser Strecke gibt es keinen Punkt ‚{ $point }‘
as-said = { $words }
both-said = { $first } { $second }
