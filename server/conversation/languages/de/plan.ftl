# The plan and the crew’s movements. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## The plan: what target and pace came from
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

## The plan: notes
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
plan-ascent = Höhenmeter: der Veranstalter hat { $stated }, die Strecke misst { $ours } ({ $percent } %). Seine Zahl zählt vielleicht jede kleine Welle einer Karte oder Uhr, unsere ist geglättet, damit Rauschen keine Steigung macht, oder der Strecke fehlt etwas; das Tempo rechnet mit unserer, die Höhenmeter eines früheren Rennens werden mit seiner verglichen
plan-past-ascent = die { $had } von { $name } sind die seines Veranstalters, die { $ours } dieser Strecke sind gemessen, was oft weniger ist: schreib die Zahl des Veranstalters als stated_ascent_m, dann wird Gleiches mit Gleichem verglichen
plan-short-race = der Exponent der Regel (1,06) stammt von Rennen bis etwa 4 h und ist so weit darüber hinaus optimistisch: die Spanne ist deshalb weiter
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
plan-fuel-untrained = ab { $place }: { $amount } g Kohlenhydrate in der Stunde sind mehr als die { $trained } g, die trainiert wurden
plan-fuel-apart = ab { $place }: was sie isst, macht { $made } g Kohlenhydrate in der Stunde, der Plan sagt { $amount } g
plan-fuel-caffeine-dose = ab { $place }: { $thing } enthält { $amount } mg Koffein, mehr als { $most } mg auf einmal (Erwachsene, nicht schwanger: { $source })
plan-fuel-caffeine-day = { $amount } mg Koffein in 24 Stunden sind mehr als { $most } mg (Erwachsene, nicht schwanger: { $source }); so viel ist es zwischen { $place } und { $next }, und Kaffee und Cola bei den Halten kommen dazu
plan-fuel-dry = { $place } bis { $next }: { $count } Flaschen für bis zu { $takes }, und sie trägt { $has }: wo gibt es unterwegs Wasser?
plan-fuel-do-above = Plan ab dort weniger in der Stunde, oder berichtige, was eines der Dinge enthält
plan-fuel-do-below = Plan ab dort mehr in der Stunde, wenn nicht das Essen bei den Halten es ausgleicht
plan-fuel-do-untrained = Plan weniger, oder probier es im Training aus und schreib trained_carbohydrate_g_per_h neu
plan-fuel-do-apart = Berichtige die Zahl je Stunde, oder per_h und was jedes Ding enthält
plan-fuel-do-caffeine-dose = Plan eine kleinere Menge auf einmal, oder berichtige caffeine_mg
plan-fuel-do-caffeine-day = Plan weniger davon in der Stunde, oder fang später damit an
plan-fuel-do-dry = Frag, wo es Wasser gibt, und schreib es als Punkt dazu, oder schreib, wie viele Flaschen sie trägt: bottles = { $count }
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

## The plan: light, goals, cut-offs
plan-rests = Beruht auf: { $source }.
plan-change-next = Bis wann die Ziele gelten, beim Aufbruch in { $place }: { $goals }.
plan-light = Licht, und wo sie nach dem Plan dann ist: { $light }.
cut-off-earlier = Für 9 Chancen von 10, wenn sie weitermacht: { $points }.
plan-goals = Ziele{ $stages ->
    [yes] , die Summe der Etappen
   *[no] {""}
 }: A { $a } (ein guter Tag), B { $b } (das Ziel), C { $c } (ein schwerer Tag).
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
plan-torch-others = Lampe bei anderen Zielen: { $about }.
plan-torch-other = { $goal ->
    [limit] gerade noch im Zeitlimit
   *[other] { $goal }
 } von { $from } ({ $from_when }) bis { $to } ({ $to_when })
plan-no-torch = Bei diesem Tempo braucht es keine Lampe; mitnehmen, was die Regeln verlangen.
plan-no-torch-b = Bei Ziel B braucht es keine Lampe, bei anderem Tempo schon.
plan-changes = Wechsel der Ziele: später ab als hier, gilt das nächste Ziel.
plan-change = { $place }: { $goals }
plan-change-goal = { $goal } bis { $when }
plan-latest = { $place } verlassen bis { $when }
plan-latest-none = { $place }: keine Zeit ist früh genug
plan-odds = Zeitlimit bei { $place }, { $edge } bis { $when }: Chance { $odds }, dass sie es schafft, wenn sie weitergeht; { $going }, dass sie bis dorthin weitergeht.
plan-planned-notes = Was der Planer sagt:

## Crew movements: what will not work, and what could help
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
plan-move-opens = nach { $place } darf die Crew erst ab { $opens }: { $p }, vor ihr dort zu sein
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
plan-move-awake-drives = { $person } wird am Ende dieser Fahrten { $least } bis { $most } wach gewesen sein
plan-move-two-runners = eine Crew trifft { $runner } und { $other }: die Chancen sind gerechnet, als hätten ihre Nächte nichts gemeinsam; Wetter, das beide bremst, steckt nicht darin
plan-move-awake-assumed = angenommen ist, dass { $person } seit { $since } wach ist: sag, seit wann, oder wann geschlafen wird (awake_since, sleeps)
plan-move-swap = { $person }, im selben Auto, fährt stattdessen
plan-move-sleep = { $person } schläft vor dieser Fahrt, von { $from } bis { $until }
plan-move-no-access = die Crew hat keinen Zugang zu { $place }
plan-move-crowd = { $count ->
    [one] eine Person soll
   *[other] { $count } Leute sollen
 } sie bei { $place } treffen
plan-move-closes-first = { $place } schließt, bevor die Regeln eine Crew erlauben
plan-move-closed-before-her = { $place } ist für die Crew geschlossen, bevor sie wahrscheinlich kommt, { $likely }
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

## Stages: in before the next one starts
stage-odds = { $place }: Chance { $odds }, vor dem Start der nächsten Etappe { $when } dort zu sein; dann wohl { $rest } Ruhe, 1-mal in 10 { $least ->
    [none] kaum welche
   *[other] unter { $least }
 }.
stage-odds-by = { $place }: Chance { $odds }, bis { $by } dort zu sein für die nächste Etappe, Start { $when }; dann wohl { $rest } Ruhe, 1-mal in 10 { $least ->
    [none] kaum welche
   *[other] unter { $least }
 }.
stage-low = Das ist wenig: jetzt beim Rennen fragen, was mit denen wird, die später kommen.

## Was Dunkelheit, Kälte und Nässe verlangen, und wo sie es bekommt
plan-kit-missing = { $runner } braucht { $thing ->
    [torch] eine Lampe
    [warm] eine warme Schicht
   *[wet] eine Regenjacke
 } { $about }, und keine Liste sagt, dass sie dann eine hat
plan-kit-late = { $runner } braucht { $thing ->
    [torch] eine Lampe
    [warm] eine warme Schicht
   *[wet] eine Regenjacke
 } { $about }, und bekommt sie erst bei { $place } ({ $at }), { $got ->
    [one] { $given }
   *[many] zwischen { $given } und { $last }
 }
plan-kit-when = ab { $from }{ $clock ->
    [one] {""}
   *[many] {" "}bis { $to }
 }{ $road ->
    [one] {" "}bei { $least }
   *[many] {", "}zwischen { $least } und { $most } je nach Tempo
 }{ $paces ->
    [all] {""}
   *[some] {" "}({ $about })
 }
plan-kit-pace = { $goal ->
    [limit] gerade noch im Zeitlimit
   *[other] Ziel { $goal }
 }
plan-kit-do-give = Schreib sie in kit von { $place } ({ $at }) oder davor, oder in carries = ["{ $thing ->
    [torch] Stirnlampe
    [warm] warme Schicht
   *[wet] Regenjacke
 }"], wenn sie sie vom Start an bei sich hat
plan-kit-do-carry = Davor kommt sie zu keiner Crew und keinem Beutel: schreib sie in carries = ["{ $thing ->
    [torch] Stirnlampe
    [warm] warme Schicht
   *[wet] Regenjacke
 }"] von [[runners]]
plan-kit-battery = Die Lampen, die { $runner } bis dahin hat, sind leer, und es ist dunkel, { $about }; insgesamt stehen { $lasts } in den Listen
plan-kit-do-battery = Gib einem Treffen, einem Beutel oder carries eine Lampe oder Batterie mit ihren Stunden dazu, oder schreib mehr Stunden hinein
plan-kit-hours = { $runner } ist bis zu { $dark } im Dunkeln, und nirgends steht, wie lange „{ $torch }“ hält
plan-kit-do-hours = Schreib ihre Stunden hinein, auch die der Batterien: { "{" } name = "Stirnlampe", hours = 8 { "}" }
plan-kit-required = Das Rennen verlangt { $thing }, und keine Liste von { $runner } hat es
plan-kit-required-late = Das Rennen verlangt { $thing }, und { $runner } hat es erst ab { $place }
plan-kit-required-taken = Das Rennen verlangt { $thing } auf der ganzen Strecke, und die Crew nimmt es { $runner } bei { $place } ab
plan-kit-do-keep = Lass die Zeile mit take_back dort weg, oder gib ihr am selben Halt Ersatz: { $thing }
plan-kit-do-required = Schreib es in carries, in den Worten des Rennens: carries = ["{ $thing }"]
plan-kit-taken-none = Bei { $place } soll die Crew { $thing } von { $runner } zurücknehmen, und sie hat es dort nicht
plan-kit-do-taken = Nehmt es an einem späteren Halt zurück, oder schreib, wo sie es bekommt: carries = ["{ $thing }"]
plan-kit-no-spare = { $runner } hat für die Nacht eine einzige Lampe ({ $torch }) und keinen Ersatz
plan-kit-do-spare = Gib eine zweite Lampe oder eine Batterie dazu
# Dasselbe auf Papier, für Leute, die keine Datei vor sich haben.
plan-kit-do-give-paper = Lasst sie zu { $place } ({ $at }) oder davor bringen, oder sie hat sie vom Start an dabei
plan-kit-do-carry-paper = Davor kommt sie zu keiner Crew und keinem Beutel: sie muss sie vom Start an dabeihaben
plan-kit-do-battery-paper = Lasst noch eine Lampe oder eine geladene Batterie bringen, oder sie hat sie vom Start an dabei
plan-kit-do-hours-paper = Klärt vor dem Start, welche Lampe und welche Batterien so lange halten
plan-kit-do-keep-paper = Lasst es ihr, oder gebt ihr dort Ersatz
plan-kit-do-required-paper = Packt es für den Start ein: das Rennen kann es dort sehen wollen
plan-kit-do-taken-paper = Klärt vor dem Start, wo sie es bekommt
plan-kit-do-spare-paper = Packt eine zweite Lampe oder eine Batterie ein

# -- bereit für diese Strecke?
ready-no-runs = Bereit für diese Strecke? Keine Aufzeichnungen sind genannt: own_runs = ["long.gpx"] in ihrer Tabelle, dann werden sie daran gemessen.
ready-missing = Bereit für diese Strecke? { $count ->
    [one] Eine Sache fehlt
   *[other] { $count } Sachen fehlen
} noch in den genannten Aufzeichnungen:
ready-enough = Bereit für diese Strecke? Die genannten Aufzeichnungen haben alles, was sie verlangt:
ready-feet = am längsten auf den Beinen { $had }{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, geplant sind { $course }
ready-climb = Anstieg auf einem langen Lauf { $had } m je km{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, die Strecke hat { $course }
ready-steep = steil bergab (1 zu 5 und mehr) { $had } m in einem Lauf{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, die Strecke hat { $course } m
ready-dark = im Dunkeln { $had } in einem Lauf{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, geplant sind { $course }
ready-by = { $what }: einmal etwa { $asked } bis { $by }.
ready-too-late = { $what }: etwa { $asked } sollten es bis { $by } sein, das ist vorbei. Jetzt nicht mehr: plane dafür langsamer.
ready-is-enough = { $what }: genug.
ready-practice = Anteile und Tage sind übliche Praxis, ohne Quelle, und kein Trainingsplan. Krank oder mit Schmerzen: frag einen Arzt, nicht dies hier.
