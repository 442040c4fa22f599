# The plan and the crew’s movements. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## The plan: what target and pace came from
plan-source-finish = arrivée en { $target }
plan-source-pace = { $pace } min/km avec tous les arrêts
plan-source-easy = allure facile { $easy } plus { $margin } min/km, extrapolée depuis 50 km
plan-source-costs = allure d’après les coûts publiés selon la pente
plan-source-own-runs = { $count ->
    [one] une de ses sorties
   *[other] { $count } de ses sorties
 }, { $distance }, la plus longue { $longest }
plan-source-past-race = { $name } en { $time }, par distance et dénivelé
plan-source-results = résultats passés, { $count } arrivants en { $fastest } à { $slowest }
plan-source-results-any = résultats passés

## The plan: notes
plan-unlikely = { $target } est peu probable d’après { $about } : environ 1 chance sur { $one_in }
plan-unlikely-very = { $target } est peu probable d’après { $about } : moins d’1 chance sur 200
plan-predicted = { $about } donne { $likely }, entre { $low } et { $high } ; 1 fois sur 10 plus vite, 1 sur 10 plus lentement
plan-predicted-beside = { $about } seul donnerait { $likely }, entre { $low } et { $high } ; 1 fois sur 10 plus vite, 1 sur 10 plus lentement. Objectifs et heures n’en dépendent pas
plan-longest-run = la plus longue sortie enregistrée est { $longest } : sa fatigue ensuite est la valeur usuelle, pas la sienne
plan-paused = { $paused } d’arrêt dans ses sorties ont été laissés de côté
plan-jumps = { $count ->
    [one] un saut de la position satellite a été laissé de côté
   *[other] { $count } sauts de la position satellite ont été laissés de côté
 }
plan-far-race = { $name } et cette course diffèrent en effort d’un facteur { $times } : plus c’est loin de ce qu’elle a couru, moins cela dit
plan-ascent = dénivelé : l’organisateur annonce { $stated }, le tracé mesure { $ours } ({ $percent } %). Le sien compte peut-être chaque bosse d’une carte ou d’une montre, le nôtre est lissé pour que le bruit ne fasse pas de montée, ou le tracé en oublie ; l’allure suit le nôtre, le dénivelé d’une course passée est comparé au sien
plan-past-ascent = les { $had } de { $name } sont ceux de son organisateur, les { $ours } de ce parcours sont mesurés, souvent moins : écris le chiffre de l’organisateur dans stated_ascent_m, et l’on compare ce qui se ressemble
plan-short-race = l’exposant de la règle (1,06) vient de courses d’environ 4 h au plus et il est optimiste si loin au-delà : la fourchette en est plus large
plan-few-near = peu ont terminé près de { $target } : la forme est celle de coureurs autour de { $middle }
plan-easy-scaled = allure facile plus une marge convient à 50 km plats ; ici elle est extrapolée à { $course } avec { $ascent } de dénivelé (comme { $effort } à plat, le temps croissant comme la distance puissance 1,06), ce qui est optimiste au-delà d’un jour à pied
plan-no-heights = la trace n’a pas d’altitudes : montées, descentes et altitude manquent dans ce plan, les tronçons vallonnés sortent trop courts et les plats trop longs ; prends une trace avec altitudes
plan-surface-unknown = le terrain ‘{ $surface }’ sur { $where } n’est pas connu et ne coûte rien ; connus : { $known }
plan-goal-a-target = l’objectif A est la cible : les arrêts prévus ne laissent pas le temps d’aller plus vite
plan-goal-a-limit = l’objectif A est aussi rapide que ses limites le permettent, { $fastest }
plan-goal-c = l’objectif C serait en retard pour { $about } : il a été avancé de { $pulled } à l’arrivée
plan-limit = le temps limite de la course
plan-cut-off-in = la barrière horaire à l’arrivée à { $place }
plan-cut-off-out = la barrière horaire au départ de { $place }
plan-walking = marcher ne coûte pas de temps sur { $walked } de { $course } ; les plus longs : { $about }
plan-walking-mostly = marcher ne coûte pas de temps sur { $walked } de { $course } à cette cible : cours ce qui descend
plan-span = { $from } à { $to }
plan-stages = une course par étapes : la cible est la somme des étapes, les heures aux points sont celles de l’horloge, nuits comprises
plan-rested = après { $rest } de repos à { $place } elle est censée repartir comme après { $after } à pied (usage courant, sans source)
plan-few-stops = { $planned } d’arrêts prévus en tout ; une à deux heures sont usuelles dans une longue course (usage courant)
plan-fuel-above = depuis { $place } : { $amount } { $unit } est au-dessus des { $low } à { $high } publiés ({ $source })
plan-fuel-below = depuis { $place } : { $amount } { $unit } est en dessous des { $low } à { $high } publiés ({ $source })
plan-fuel-untrained = depuis { $place } : { $amount } g de glucides par heure, c’est plus que les { $trained } g de l’entraînement
plan-fuel-apart = depuis { $place } : ce qu’elle mange fait { $made } g de glucides par heure, le plan dit { $amount } g
plan-fuel-caffeine-dose = depuis { $place } : { $thing } contient { $amount } mg de caféine, plus que { $most } mg d’un coup (adultes, hors grossesse: { $source })
plan-fuel-caffeine-day = { $amount } mg de caféine en 24 heures, c’est plus que { $most } mg (adultes, hors grossesse : { $source }) ; ils sont atteints entre { $place } et { $next }, et le café et le cola aux arrêts s’y ajoutent
plan-fuel-dry = { $place } à { $next } : { $count } gourdes pour au plus { $takes }, et elle en porte { $has } : où y a-t-il de l’eau en route ?
plan-fuel-do-above = Prévois moins par heure à partir de là, ou corrige ce que contient une des choses
plan-fuel-do-below = Prévois plus par heure à partir de là, à moins que ce qu’elle mange aux arrêts compense
plan-fuel-do-untrained = Prévois moins, ou essaie-le à l’entraînement et corrige trained_carbohydrate_g_per_h
plan-fuel-do-apart = Corrige le chiffre par heure, ou per_h et ce que contient chaque chose
plan-fuel-do-caffeine-dose = Prévois une dose plus petite, ou corrige caffeine_mg
plan-fuel-do-caffeine-day = Prévois-en moins par heure, ou commence plus tard
plan-fuel-do-dry = Demande où il y a de l’eau et ajoute-la comme point, ou écris combien de gourdes elle porte : bottles = { $count }
plan-caution-thirst = Ces chiffres servent à prévoir. Boire à la soif, manger ce qui a été essayé à l’entraînement.
plan-caution-danger = Boire bien au-delà de la soif est un danger en soi ; qui est confus, vomit sans cesse, a le visage ou les mains gonflés ou très mal à la tête est vu par un secouriste avant tout le reste.
plan-caution-pills = Les cachets contre la douleur et le sel sont l’affaire des secouristes de la course.
plan-factor-level-ground = terrain plat
plan-factor-hills = côtes
plan-factor-fade = fatigue
plan-factor-night = nuit
plan-factor-heat = chaleur
plan-factor-mud = boue
plan-factor-snow = neige
plan-factor-altitude = altitude

## The plan: light, goals, cut-offs
plan-rests = Repose sur : { $source }.
plan-change-next = Changement d’objectif : départ de { $place }, { $goals }.
plan-light = Lumière, et où elle est alors d’après le plan : { $light }.
cut-off-earlier = Pour 9 chances sur 10, si elle continue : { $points }.
plan-goals = Objectifs{ $stages ->
    [yes] , somme des étapes
   *[no] {""}
 } : A { $a } (un bon jour), B { $b } (la cible), C { $c } (un jour dur).
plan-goals-odds = { $sides ->
    [both] À l’arrivée 1 sur 10 est plus rapide que A, 1 sur 10 plus lente que C, si elle y arrive ; avant cela A à C
    [A] À l’arrivée 1 sur 10 est plus rapide que A, si elle y arrive ; C, et A à C avant,
    [C] À l’arrivée 1 sur 10 est plus lente que C, si elle y arrive ; A, et A à C avant,
   *[none] A à C
 } sont trois façons de courir, pas des chances : l’équipe se règle sur les heures de ses rendez-vous{ $limited ->
    [yes] , qui valent si elle arrive dans le temps limite
   *[no] {""}
 }.
plan-light-civil-dawn = première lueur { $when } (au { $km })
plan-light-sunrise = lever du soleil { $when } (au { $km })
plan-light-sunset = coucher du soleil { $when } (au { $km })
plan-light-civil-dusk = dernière lueur { $when } (au { $km })
plan-torch = Lampe de { $from } ({ $from_when }) à { $to } ({ $to_when }).
plan-torch-others = Lampe pour les autres objectifs : { $about }.
plan-torch-other = { $goal ->
    [limit] juste dans le temps limite
   *[other] { $goal }
 } de { $from } ({ $from_when }) à { $to } ({ $to_when })
plan-no-torch = Pas besoin de lampe à cette allure ; emporte ce que le règlement demande.
plan-no-torch-b = Pas besoin de lampe à l’objectif B ; à une autre allure, si.
plan-changes = Changement d’objectif : repartie plus tard qu’ici, c’est l’objectif suivant.
plan-change = { $place } : { $goals }
plan-change-goal = { $goal } jusqu’à { $when }
plan-latest = repartie de { $place } avant { $when }
plan-latest-none = { $place } : aucune heure n’est assez tôt
plan-odds = Barrière horaire { $edge } à { $place } avant { $when } : { $odds } d’être à temps si elle continue ; { $going } qu’elle continue jusque-là.
plan-planned-notes = Ce que dit le planificateur :

## Crew movements: what will not work, and what could help
move-not-allowed = PAS PERMIS : { $what }. { $remedy }.
move-broken = { $what } (règle : { $rule })
move-trouble = { $place }, { $runner } : { $what }
move-offer = { $place }, { $runner } : ce qui pourrait aider : { $what }
plan-move-name = { $name }
plan-move-on-foot = { $person } est alors à pied avec { $runner }
plan-move-stranded = { $person } est { $place ->
    [none] à aucun endroit connu
   *[other] {"à "}{ $place }
 }, et { $car } part { $origin ->
    [none] d’un lieu que personne n’a dit
   *[other] {"de "}{ $origin }
 }
plan-move-no-driver = personne de ceux qui vont dans { $car } n’est dit conduire
plan-move-seats = { $people } personnes vont dans { $car }, qui a { $seats } places
plan-move-no-car-there = { $person } quitte le parcours à { $place }, où aucune voiture ne vient
plan-move-hand-over = { $person } prend le relais à { $place }, et aucun rendez-vous ne l’y amène
plan-move-not-fetched = { $person } passe le relais à { $place }, et aucun rendez-vous ne vient l’y chercher
plan-move-pacer-not-fetched = { $person } accompagne jusqu’à l’arrivée, et aucun rendez-vous ne vient l’y chercher
plan-move-closed = l’accès de l’équipe à { $place } est fermé
plan-move-no-way = on ne sait pas comment { $car } va à { $place } : { $origin ->
    [none] personne n’a dit d’où
   *[other] {"aucun trajet depuis "}{ $origin }{" n’est donné"}
 }
plan-move-estimated = { $drive } de { $origin } à { $place } est une estimation que personne n’a confirmée
plan-move-short = { $p } d’être à { $place } avant elle, moins que les { $sure } sur 100 qu’on peut promettre
plan-move-opens = l’équipe n’a accès à { $place } qu’à partir de { $opens } : { $p } d’y être avant elle
plan-move-leaves-early = pour être à temps à { $following } l’équipe quitte { $place } à { $wait } : { $p } de l’y voir
plan-move-clash = { $p } de la voir à { $first } puis d’être à { $place } avant elle, moins que les { $sure } sur 100 qu’on peut promettre
plan-move-confirm = confirme ou corrige le trajet de { $origin } à { $place } : { $about }
plan-move-part-drive = trajet { $took }
plan-move-part-road = route { $took }
plan-move-part-the-way-back = comme au retour { $took }
plan-move-part-night = nuit { $took }
plan-move-part-traffic = circulation { $took }
plan-move-part-full-car-park = parking plein { $took }
plan-move-part-fuel = essence { $took }
plan-move-part-walk-out = retour à la voiture { $took }
plan-move-part-walk-in = à pied jusqu’au point { $took }
plan-move-part-unloading = déchargement { $took }
plan-move-part-pacer-signs-in = inscription de l’accompagnateur { $took }
plan-move-searched-in-part = d’autres voitures ou personnes feraient peut-être mieux encore : tout n’a pas été cherché
plan-move-not-searched = si d’autres voitures ou personnes feraient mieux, c’était trop à chercher
plan-move-skip-others = laisser ce rendez-vous : les autres y gagnent
plan-move-skip = laisser ce rendez-vous : il ne porte ni lampe, ni couche chaude, ni accompagnateur, ni relais
plan-move-other-car = { $car } va à ce rendez-vous, avec { $about } : { $p } d’y être avant elle
plan-move-asleep = { $person } compte dormir de { $from } à { $until }, mais conduit alors : déplacer le sommeil, ou laisser conduire un autre
plan-move-awake = { $person } sera éveillé depuis { $awake } à la fin de ce trajet
plan-move-awake-drives = { $person } sera éveillé depuis { $least } à { $most } à la fin de ces trajets
plan-move-two-runners = une équipe retrouve { $runner } et { $other } : les chances sont comptées comme si leurs nuits n’avaient rien en commun ; un temps qui ralentit les deux n’y est pas
plan-move-awake-assumed = { $person } est supposé éveillé depuis { $since } : dis depuis quand, ou quand dormir est prévu (awake_since, sleeps)
plan-move-swap = { $person }, dans la même voiture, conduit à la place
plan-move-sleep = { $person } dort avant ce trajet, de { $from } à { $until }
plan-move-no-access = l’équipe n’a pas accès à { $place }
plan-move-crowd = { $count ->
    [one] une personne doit
   *[other] { $count } personnes doivent
 } la retrouver à { $place }
plan-move-closes-first = { $place } ferme avant que le règlement permette l’équipe
plan-move-closed-before-her = { $place } est fermé à l’équipe avant son arrivée probable, { $likely }
plan-move-opens-after-her = l’équipe ne peut venir à { $place } que quand elle en est sans doute partie : elle repart avant { $late }
plan-move-cars-at = { $count ->
    [one] une voiture vient
   *[other] { $count } voitures viennent
 } à { $place } ({ $about })
plan-move-permit-elsewhere = { $about } viendrait sans le permis « { $permit } », que { $holders } a
plan-move-permit-unsaid = l’équipe a besoin du permis « { $permit } » à { $place }, et personne ne dit qui l’a : demande à la course, puis écris permits = ["{ $permit }"] à la voiture ou la personne
plan-move-vehicles = { $count } voitures viennent retrouver { $runner } : { $about }
plan-move-pacer-early = un accompagnateur rejoint à { $here }
plan-move-pacers = { $count } accompagnateurs seraient avec elle
plan-rule-help = aide extérieure aux points d’équipe seulement
plan-rule-people-at = { $count ->
    [0] pas d’équipe
    [one] une personne au plus
   *[other] { $count } personnes au plus
 } à { $place }
plan-rule-people = { $count ->
    [0] pas d’équipe du tout
    [one] une personne d’équipe au plus
   *[other] { $count } personnes d’équipe au plus
 }
plan-rule-not-before = pas d’équipe avant son heure
plan-rule-crew-not-before = pas d’équipe nulle part avant { $opens }
plan-rule-opens = pas d’équipe à { $place } avant { $opens }
plan-rule-closes = pas d’équipe à { $place } après { $closes }
plan-rule-cars-at = { $count ->
    [0] pas de voitures
    [one] une voiture par coureuse au plus
   *[other] { $count } voitures par coureuse au plus
 } à { $place }
plan-rule-permit = permis « { $permit } » à { $place }
plan-rule-vehicles = { $count ->
    [0] pas de véhicules
    [one] un véhicule au plus
   *[other] { $count } véhicules au plus
 }
plan-rule-pacer-from = accompagnateurs à partir de { $from }
plan-rule-pacers = { $count ->
    [0] pas d’accompagnateurs
    [one] un accompagnateur
   *[other] { $count } accompagnateurs
 } à la fois
plan-remedy-crew-point = La retrouver à un point avec accès de l’équipe
plan-remedy-fewer-people = Nommer moins de personnes
plan-remedy-leave-out = Laisser ce rendez-vous
plan-remedy-other-point = La retrouver à un autre point
plan-remedy-fewer-cars = Prendre moins de voitures
plan-remedy-permit = Envoyer la voiture ou la personne qui l’a, ou laisser ce rendez-vous
plan-remedy-later = Laisser l’accompagnateur rejoindre plus tard
plan-remedy-pacer-leaves = Dire où le précédent s’arrête : pacer_leaves

## Stages: in before the next one starts
stage-odds = { $place } : { $odds } d’y être avant le départ de l’étape suivante { $when } ; puis sans doute { $rest } de repos là-bas, 1 fois sur 10 { $least ->
    [none] presque rien
   *[other] moins de { $least }
 }.
stage-odds-by = { $place } : { $odds } d’y être avant { $by } pour l’étape suivante, qui part { $when } ; puis sans doute { $rest } de repos là-bas, 1 fois sur 10 { $least ->
    [none] presque rien
   *[other] moins de { $least }
 }.
stage-low = C’est peu : demande maintenant à la course ce que deviennent ceux qui arrivent plus tard.

## Ce que demandent la nuit, le froid et la pluie, et où elle le reçoit
plan-kit-missing = { $runner } a besoin { $thing ->
    [torch] d’une lampe
    [warm] d’une couche chaude
   *[wet] d’une veste de pluie
 } { $about }, et aucune liste ne dit qu’elle l’a à ce moment
plan-kit-late = { $runner } a besoin { $thing ->
    [torch] d’une lampe
    [warm] d’une couche chaude
   *[wet] d’une veste de pluie
 } { $about }, et ne la reçoit qu’à { $place } ({ $at }), { $got ->
    [one] { $given }
   *[many] entre { $given } et { $last }
 }
plan-kit-when = dès { $from }{ $clock ->
    [one] {""}
   *[many] {" "}à { $to }
 }{ $road ->
    [one] {" "}à { $least }
   *[many] {", "}entre { $least } et { $most } selon l’allure
 }{ $paces ->
    [all] {""}
   *[some] {" "}({ $about })
 }
plan-kit-pace = { $goal ->
    [limit] juste dans le temps limite
   *[other] objectif { $goal }
 }
plan-kit-do-give = Écris-la dans kit de { $place } ({ $at }) ou d’un point avant, ou dans carries = ["{ $thing ->
    [torch] lampe frontale
    [warm] couche chaude
   *[wet] veste de pluie
 }"] si elle l’a sur elle dès le départ
plan-kit-do-carry = Avant, ni équipe ni sac ne l’attend : écris-la dans carries = ["{ $thing ->
    [torch] lampe frontale
    [warm] couche chaude
   *[wet] veste de pluie
 }"] de [[runners]]
plan-kit-battery = Les lampes que { $runner } a jusque-là sont vides et il fait nuit { $about } ; { $lasts } en tout sur les listes
plan-kit-do-battery = Ajoute une lampe ou une batterie avec ses heures à une rencontre, à un sac ou à carries, ou écris plus d’heures
plan-kit-hours = { $runner } est dans la nuit jusqu’à { $dark }, et rien ne dit combien de temps dure « { $torch } »
plan-kit-do-hours = Écris ses heures, celles des batteries aussi : { "{" } name = "frontale", hours = 8 { "}" }
plan-kit-required = La course exige { $thing }, et aucune liste de { $runner } ne l’a
plan-kit-required-late = La course exige { $thing }, et { $runner } ne l’a que depuis { $place }
plan-kit-required-taken = La course exige { $thing } sur tout le parcours, et l’équipe le reprend à { $runner } à { $place }
plan-kit-do-keep = Enlève la ligne avec take_back là-bas, ou donne-lui au même arrêt de quoi le remplacer : { $thing }
plan-kit-do-required = Écris-le dans carries, dans les mots de la course : carries = ["{ $thing }"]
plan-kit-taken-none = À { $place }, l’équipe doit reprendre { $thing } à { $runner }, qui ne l’a pas là-bas
plan-kit-do-taken = Reprenez-le à un arrêt plus loin, ou écris où elle le reçoit : carries = ["{ $thing }"]
plan-kit-no-spare = { $runner } a une seule lampe pour la nuit ({ $torch }) et rien de rechange
plan-kit-do-spare = Ajoute une deuxième lampe ou une batterie
# La même chose sur papier, pour qui n’a pas de fichier devant soi.
plan-kit-do-give-paper = Faites-la apporter à { $place } ({ $at }) ou avant, ou elle la porte dès le départ
plan-kit-do-carry-paper = Avant, ni équipe ni sac ne l’attend : elle doit la porter dès le départ
plan-kit-do-battery-paper = Faites apporter une lampe de plus ou une batterie chargée, ou elle la porte dès le départ
plan-kit-do-hours-paper = Réglez avant le départ quelle lampe et quelles batteries durent aussi longtemps
plan-kit-do-keep-paper = Laissez-le-lui, ou donnez-lui là de quoi le remplacer
plan-kit-do-required-paper = À prendre pour le départ : la course peut demander à le voir là
plan-kit-do-taken-paper = Voyez avant le départ où elle le reçoit
plan-kit-do-spare-paper = Prenez une deuxième lampe ou une batterie

# -- prête pour ce parcours ?
ready-no-runs = Prête pour ce parcours ? Aucun enregistrement n’est nommé : own_runs = ["long.gpx"] dans sa table, et ils lui sont comparés.
ready-missing = Prête pour ce parcours ? Dans les enregistrements nommés, il manque encore { $count ->
    [one] une chose
   *[other] { $count } choses
} :
ready-enough = Prête pour ce parcours ? Les enregistrements nommés ont tout ce qu’il demande :
ready-feet = le plus long temps debout { $had }{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, le plan est de { $course }
ready-climb = montée d’une longue sortie { $had } m par km{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, le parcours en a { $course }
ready-steep = en descente raide (1 sur 5 et plus) { $had } m en une sortie{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, le parcours a { $course } m
ready-dark = dans le noir { $had } en une sortie{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, le plan en a { $course }
ready-by = { $what } : une fois environ { $asked } avant le { $by }.
ready-too-late = { $what } : environ { $asked } devaient être faits avant le { $by }, c’est passé. Plus maintenant : prévois plus lentement.
ready-is-enough = { $what } : suffisant.
ready-practice = Parts et dates sont un usage courant, sans source, et pas un plan d’entraînement. Malade ou avec des douleurs : demande à un médecin, pas à ceci.
