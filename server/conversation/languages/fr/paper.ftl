# Sheets, calendars, files. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## Paper: table, calendar, sheet
paper-point = point
paper-leg = tronçon
paper-climb = dénivelé m
paper-in = { $goal } arrivée
paper-out = { $goal } départ
paper-stop = arrêt
paper-cut-off = barrière horaire
paper-minutes-for = minutes pour
paper-due = { $edge } { $when }
paper-goal = objectif { $goal }
paper-height = altitude, m
paper-no-heights = la trace n’a pas d’altitudes
paper-goals-band = objectifs A à C
paper-night = nuit
paper-goal-b = objectif B, la cible
paper-carries = ce que { $runner } porte
paper-from = de
paper-to = à
paper-takes = dure
paper-at-most = au plus
paper-kcal = kcal
paper-carbohydrate = glucides g
paper-sodium = sodium mg
paper-bottles = bouteilles
paper-what = quoi
paper-bag = Disponible à { $place } : { $things }
paper-bag-kcal = { $amount } kcal
paper-bag-carbohydrate = { $amount } g de glucides
paper-bag-sodium = { $amount } mg de sodium
paper-meeting-title = { $runner } à { $place } : y être à partir de { $be_there }
paper-leave-title = Partir avant { $leave_by } pour { $place } : { $runner }
paper-own-title = Ton équipe à { $place }
paper-leave = Partir avant { $leave_by }{ $from ->
    [none] {""}
   *[other] {", de "}{ $from }
 }.
paper-after-her = Partir une fois que { $runner } a quitté { $place }{ $after ->
    [none] , aussitôt
   *[other] , au plus tard { $after } après
 } ; pas avant. Elle compte en repartir { $times }. Si elle n’est pas venue avant { $until }, de nouvelles heures viennent par message.
paper-after-goal = { $goal } { $when }
paper-leave-once-title = Pour { $place } une fois que { $runner } a quitté { $left }
paper-cell-leave-once = Partir
paper-cell-once = quand elle a quitté { $place }
paper-cell-after = { $after ->
    [none] aussitôt
   *[other] au plus tard { $after } après
 } ; pas avant. Prévu : { $times }
paper-no-drive = Pas d’heure de départ : { $from ->
    [none] on n’a pas dit d’où
   *[other] aucun trajet de { $from } à { $place } n’est écrit
 }.
paper-no-leave = Pas d’heure de départ : personne ne répond encore du trajet.
paper-be-there = Y être à partir de { $be_there }.
paper-expected = { $runner } : { $window }.
paper-planned = Prévu { $when }{ $length ->
    [none] .
   *[other] {", arrêt "}{ $length }.
 }
paper-wait = Attendre jusqu’à { $until }.
paper-wait-short = Attendre jusqu’à { $until }, puis aller au rendez-vous suivant : { $odds } que { $runner } soit venue d’ici là.
paper-drive = Route { $length }.
paper-parking = Parking : { $parking }
paper-kit-safety = DOIT y être : { $kit }.
paper-kit = À apporter : { $kit }.
paper-food = À manger : { $food }
paper-if-missed = Si elle est manquée : { $text }
paper-pacer-joins = { $who } la rejoint comme accompagnateur.
paper-pacer-leaves = { $who } cesse de l’accompagner.
paper-lost = D’après ce plan le rendez-vous n’est pas possible : { $why }
paper-start-title = { $event } : départ
paper-pace-title = Accompagner { $runner }, { $from } à { $to }
paper-pace-length = { $length } ensemble
paper-stand-title = { $runner } à { $place }
paper-as-of = Prévu le { $when }. Les heures bougent dès qu’elle est en route : demander avant de partir.
paper-stays = Ceci montre ce qui était prévu le { $when } ; ce qu’on apprend ensuite est sur le tableau et dans la discussion.
paper-window-how = Première à dernière heure : 1 fois sur 10 elle arrive plus tôt, 1 fois sur 10 plus tard.
paper-aid = Une aide pour l’équipe, pas un service de secours. En danger de mort appeler { $emergency } d’abord, puis la direction de course : { $name ->
    [none] {""}
   *[other] { $name }{", "}
 }{ $phone }.
paper-rescue = Secours en montagne : { $name } { $phone }.
paper-head-numbers = Qui appeler
paper-head-meetings = Rendez-vous
paper-head-plan = Son plan
paper-head-cards = Si ceci, alors cela
paper-head-cut-offs = Barrières horaires
paper-head-light = Lumière
paper-head-fuel = Ce qu’elle porte
paper-cell-leave = Partir avant
paper-cell-from = de { $place }
paper-cell-there = Y être à partir de
paper-cell-comes = Elle arrive sans doute
paper-cell-between = { $early } à { $late }
paper-stay = Rester : vous y êtes déjà, depuis { $place }.
paper-cell-stay = rester
paper-cell-own = { $here } à ta montre
paper-cell-planned = Prévu
paper-cell-likely = Probable
paper-cell-crew-until = L’équipe attend jusqu’à
paper-cell-wait = Attendre jusqu’à
paper-permit = Permis nécessaire : { $permit }{ $who ->
    [none] {", personne ne dit qui l’a : demander à la course"}
   *[other] {", "}{ $who }{" l’a"}
 }.
paper-hours = Équipe permise { $from ->
    [none] {""}
   *[other] {"à partir de "}{ $from }
 }{ $to ->
    [none] {""}
   *[other] {" jusqu’à "}{ $to }
 }.
paper-allowed = Au plus { $what }.
paper-people-max = { $count ->
    [one] une personne
   *[other] { $count } personnes
 }
paper-cars-max = { $count ->
    [one] une voiture
   *[other] { $count } voitures
 }
paper-race-clock = Les heures de ce tableau sont celles de l’horloge à la course.
paper-head-glove = Garder cette page dans la boîte à gants
paper-head-silences = Si l’on n’entend rien de { $runner } (objectifs A / B / C)
paper-silence-after = Après, puis demandée à
paper-silence-likely = Probable là
paper-silence-asked = Équipe interrogée
paper-silence-home = Maison prévenue
paper-silence-alarm = Alerte
paper-silence-point = { $place }, puis { $next }
paper-silence-no-alarm = aucune
paper-silence-far = Après { $place } l’alerte vient { $length } après l’heure probable (objectif B).
paper-silence-never = Après { $place } le silence seul ne déclenche pas d’alerte (objectif B).
paper-silence-nobody-reports = Personne ne signale depuis { $places }.
paper-silence-may-be-missed = Qui signale depuis { $place } manque environ 1 coureur sur { $count }.
paper-silence-uncertain = Son heure là-bas est incertaine : 1 sur 10 arriverait plus de { $length } plus tard.
paper-silence-shorter = Une personne de plus qui signale à { $place } l’amène à { $when }.
paper-silence-told = Une équipe sur place qui répond ‘pas encore’ l’amène à { $when }.
paper-head-phones = Téléphones
paper-phone = { $name } ({ $parts }) { $phone }
paper-head-how = De quoi chaque trajet est fait
paper-allowed-by = Permis : { $rules }.
paper-head-drives = Qui conduit où
paper-car = voiture
paper-who = qui
paper-made-of = fait de
paper-in-time = là avant elle
paper-drives-her = { $name } (conduit)
paper-own-car = par leurs moyens
paper-there-already = déjà là
paper-not-promised = { $odds }, pas promis
paper-no-meetings = Aucun rendez-vous n’est prévu pour toi.
paper-runner = { $name }{ $bib ->
    [none] {""}
   *[other] {", dossard "}{ $bib }
 }. { $clothing }
paper-no-signal = Pas de réseau là-bas.
paper-rules = Règlement pour l’équipe : { $rules }
