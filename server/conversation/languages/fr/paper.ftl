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
paper-bag = Disponible à { $place }{ $runner ->
    [none] {""}
   *[other] {" pour "}{ $runner }
 } : { $things }
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
 } ; pas avant. Elle compte en repartir { $times }. Si elle n’est pas venue avant { $until }, de nouvelles heures viennent par message{ $signal ->
    [none] {" une fois que vous avez du réseau"}
   *[other] {""}
 }.
paper-after-other = Partir une fois que { $runner } a quitté { $place }, et au plus tard { $until }, que { $runner } soit arrivé ou non. Départ prévu de là { $times }.
paper-after-goal = { $goal } { $when }
paper-leave-once-title = Pour { $place } une fois que { $runner } a quitté { $left }
paper-cell-leave-once = Partir
paper-other-car-once = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 } : partir quand { $runner ->
    [none] elle
   *[other] { $runner }
 } a quitté { $place }, pas avant.
paper-cell-once = quand { $runner ->
    [none] elle
   *[other] { $runner }
 } a quitté { $place }
paper-cell-after = { $after ->
    [none] aussitôt
   *[other] au plus tard { $after } après
 } ; pas avant. Prévu : { $times }
paper-cell-after-other = au plus tard { $until }, vu ou non. Prévu : { $times }
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
paper-pacer-way = Tu cours avec { $runner } de { $from } (prévu { $start }) à { $to } ({ $end }), { $length }. { $before ->
    [none] {""}
   *[other] Sois inscrit { $before } avant elle.{" "}
 }Ta lampe, une couche chaude, à manger et à boire : rien de cela n’est sur ses listes.
paper-rides-along = Tu montes aussi, { $car }{ $driver ->
    [none] {""}
   *[other] {" "}({ $driver } conduit)
 }{ $origin ->
    [none] {""}
   *[other] {" "}de { $origin }
 }{ $leave ->
    [at] , départ avant { $at },
    [after] , quand elle a quitté { $before },
   *[none] {""}
 } vers { $places } : de là part le trajet vers ton propre rendez-vous.
paper-pace-length = { $length } ensemble
paper-stand-title = { $runner } à { $place }
paper-as-of = Prévu le { $when }. Les heures bougent dès qu’elle est en route : demander avant de partir.
paper-stays = Ceci montre ce qui était prévu le { $when } ; ce qu’on apprend ensuite est sur le tableau et dans la discussion.
paper-window-how = Première à dernière heure : 1 fois sur 10 elle arrive plus tôt, 1 fois sur 10 plus tard.
paper-aid = Une aide pour l’équipe, pas un service de secours. En danger de mort appeler { $emergency } d’abord, puis la direction de course : { $name ->
    [none] {""}
   *[other] { $name }{", "}
 }{ $phone }.
paper-rescue-who = Secours en montagne
paper-rescue = { $who } : { $name ->
    [none] {""}
   *[other] { $name }{" "}
 }{ $phone }.
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
paper-stay = Rester : vous y êtes déjà, { $place ->
    [none] depuis la rencontre précédente
   *[other] depuis { $place }
 }.
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
paper-silence-clock = Ce sont les heures de la course : { $when }.
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
paper-silence-few-told = La plupart ne sont pas signalés depuis { $place } : personne n’est nommé pour le faire.
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

## Feuilles, partie par partie
paper-kit-in-car = { $thing } ({ $car })
paper-blank-in = Arrivée
paper-blank-out = Départ
paper-blank-ate = Mangé
paper-blank-drank = Bu
paper-blank-peed = Uriné
paper-fact-cut-off = Barrière { $edge } { $when }
paper-fact-latest = Repartie avant { $when } : 9 sur 10 pour la barrière de { $place }
paper-fact-stop = arrêt { $length }
paper-odds-if = Les chances d’une barrière valent si elle continue.
paper-fact-walk = { $length } à pied depuis la voiture
paper-fact-torch = LAMPE avant { $place } : { $goals }
paper-dark-already = { $goals } nuit dès ici
paper-dark-always = nuit dès ici à toutes les allures
paper-dark-from = { $goals } dès { $when }
paper-goal-limit = juste dans le temps limite
paper-head-parking = Parkings
paper-parking-head = parking
paper-grid-ref = où (degrés ; UTM)
paper-know = à savoir
paper-not-the-car-park = (le point, pas le parking)
paper-signal-patchy = réseau irrégulier
paper-signal-none = PAS de réseau
paper-signal = réseau
paper-directions = par où
paper-stands-by = { $length }{ $who ->
    [none] {", confirmé par personne"}
   *[other] {", dit "}{ $who }
 }
paper-head-ground = Sans réseau, échappatoires
paper-stretch = { $name ->
    [none] {""}
   *[other] { $name }{", "}
 }{ $from } à { $to } : { $about }
paper-stretch-silent = pas de réseau.
paper-stretch-out = Échappatoire : { $way }.
paper-head-bags = Sacs d’allègement
paper-head-bad-moments = Pour les mauvais moments, dans les mots de { $runner }
paper-prompt = { $when } : « { $words } »
paper-wants-to-hear = Bon à entendre : { $words }.
paper-not-to-hear = Ne jamais dire : { $words }.
paper-head-emergency = Fiche d’urgence
paper-head-say = À lire au téléphone
paper-say-who = Ici { $name }, { $parts }, { $event }.{ $phone ->
    [none] {""}
   *[other] {" Mon numéro est le "}{ $phone }.
 }
paper-say-runner = Il s’agit de { $runner }
paper-say-runner-blank = Il s’agit de ____________________, dossard ______.
paper-say-medical = Note médicale : { $note }
paper-say-what = Ce qui est arrivé : ______________________________ Est-elle éveillée, respire-t-elle normalement : ______________
paper-say-where = Elle est à : ______________________________ (point, km, ou la grille ci-dessous)
paper-say-seen = Vue la dernière fois à ____________________ à ____:____ par ____________, en route vers ____________________
paper-say-then = Ils raccrochent les premiers. Puis appeler la direction de course. Rester près du téléphone, le garder libre.
paper-head-places = Lieux
paper-km = km
paper-escape = échappatoire
paper-head-do = Ce que tu fais
paper-home-reach = Sois joignable de { $from } à { $to } : téléphone chargé, sonnerie forte, ligne libre. Préviens l’équipe si tu ne peux pas.
paper-home-late = « En retard » est une nouvelle, pas une alerte : on demande d’abord à l’équipe, et le message dit où chercher.
paper-home-alarm = Une alerte te demande par ton nom : réponds. Après { $length } sans réponse on demande à la personne suivante.
paper-home-calls = { $mine ->
    [yes] C’est toi qui appelles la direction de course : { $name ->
        [none] {""}
       *[other] { $name }{", "}
     }{ $phone }. Lis la fiche d’urgence.
   *[no] { $who } appelle la direction de course, { $phone }. Si { $who } est injoignable, qui tient l’alerte le fait.
 }
paper-home-again = Qui tient l’alerte regarde de nouveau après { $length }, ou dit une heure.
paper-home-ends = C’est fini seulement quand quelqu’un la voit ou que la direction de course le dit. Le silence ne finit rien.
paper-head-ladder = À qui l’on demande pour { $runner }, l’un après l’autre
paper-step = rang
paper-asked-after = demandé après
paper-at-once = tout de suite
paper-phone-head = numéro
paper-sleeps = dort de { $from } à { $to }
paper-calls-control = Appelle la direction de course.
paper-section = section
paper-carry-eat = porter, manger, boire
paper-at-the-stop = à l’arrêt qui suit
paper-section-in = là { $when } (B), après { $takes }–{ $most }
paper-section-ground = { $km }, +{ $up } -{ $down } m
paper-section-through = par { $places }
paper-bottles-of = { $count ->
    [one] une gourde
   *[other] { $count } gourdes
 }
paper-from-the-start = Sur toi dès le départ : { $things }.
paper-go-through = passer sans arrêt
paper-crew-there = Équipe : { $crew }
paper-take = Prends : { $things }
paper-give-for-the-way = À lui donner pour la route : { $things }
paper-give-back = Rends : { $things }
paper-pacer-joins-her = { $who } court avec toi d’ici
paper-from-bag = Du sac : { $things }
paper-post-note = Note le dossard et l’heure de tous ceux qui arrivent ou partent, aussi de qui ne s’arrête pas. Signale-le comme convenu.
paper-post-miss = Qui est attendu et n’est pas là à la dernière heure ci-dessous : le dire à la direction de course. Aussi qui est parti par un autre chemin.
paper-post-danger = Blessé, malade, confus ou très froid : il reste avec toi, fais venir les secouristes, appelle les numéros ci-dessus.
paper-post-cut-off = Après une barrière la direction de course décide. Toi seul ne fais repartir ni n’écartes personne.
paper-post-none = Ton point n’est pas dans le fichier : la direction de course te le dit. Qui attendre sera sur la feuille faite quand il y sera.
paper-post-then = Ensuite : { $place }, { $km } plus loin
paper-bib-head = n°
paper-runner-head = qui
paper-expect-from = dès (A)
paper-expect-likely = prévu (B)
paper-expect-until = au plus tard (C)
paper-in-head = arrivée
paper-out-head = départ

## Listes
paper-lists = listes
paper-no-fuel = Le fichier n’a pas de plan de ravitaillement : ce qu’elle veut manger et boire par heure fait ces listes ([[runners.fuel]]).
paper-head-fuel-list = Ravitaillement par section, par heure
paper-carbohydrate-h = glucides g/h
paper-fluid-h = boisson ml/h
paper-sodium-h = sodium mg/h
paper-caffeine-h = caféine mg/h
paper-kcal-h = kcal/h
paper-head-ranges = Fourchettes publiées, pour prévoir ; boire à la soif
paper-range-kcal = Énergie { $low } à { $high } kcal/h : { $source }.
paper-range-carbohydrate = Glucides { $low } à { $high } g/h, jusqu’à environ 90 avec des sucres mélangés pour qui s’y est entraîné : { $source }.
paper-range-fluid = Boisson { $low } à { $high } ml/h, jamais un but : { $source }.
paper-range-sodium = Sodium : plus de { $most } mg par litre peut être nécessaire les longues journées chaudes : { $source }.
paper-range-caffeine = Caféine : jusqu’à 200 mg d’un coup, 400 mg par jour, adultes, hors grossesse : { $source }.
paper-head-to-do = Avant la course
paper-to-buy = À acheter avant le { $day }
paper-to-charge = À charger avant le { $day }
paper-to-test = À essayer avant le { $day }
paper-head-shopping = Achats
paper-shop-food = { $food } (pour { $place }, { $crew })
paper-head-required = Exigé par la course
paper-required = { $name }{ $thing ->
    [none] {" "}: DANS AUCUNE LISTE
    [same] {""}
   *[other] {" "}: { $thing }
 }{ $place ->
    [none] {""}
   *[other] , seulement depuis { $place }
 }
paper-head-sleep = Sommeil et pieds
paper-who-sleeps = { $name } dort de { $from } à { $to }
paper-feet = Chaussures ôtées, pieds regardés : { $stops }
paper-feet-at = { $place } ({ $when })
paper-load-her = Sur { $runner } dès le départ
paper-load-bag = Sac { $place }
paper-load-car = Dans la voiture : { $car }
paper-load-for = Pour { $place }
paper-load-weight = { " : " }{ $weight }{ $count ->
    [0] {""}
    [one] , une chose non pesée
   *[other] , { $count } choses non pesées
 }
paper-label = { $bib ->
    [none] {""}
   *[other] { $bib }{" – "}
 }{ $place }
paper-takes-goals = dure B / C
paper-head-food-by-bag = Nourriture, jusqu’au prochain sac ou à l’équipe

## Le briefing
paper-brief = Briefing de l’équipe
paper-brief-about = À lire avant le voyage
paper-part = rôle
paper-head-who = Qui fait quoi
paper-head-house = Comment nous faisons
paper-house-time = Partir selon la feuille ou le message, pas au sentiment. Les messages sont plus récents que le papier.
paper-house-hurry = Personne ne se presse sur la route. Un rendez-vous manqué se rattrape au suivant.
paper-house-cant = « Je ne peux pas » est une bonne réponse, dite tôt : on demande aussitôt à quelqu’un d’autre.
paper-house-tired = Qui est trop fatigué pour conduire le dit et ne conduit pas. Elle peut attendre.
paper-house-seen = Dis ce que tu as vu, où et quand : arrivée, repartie, pas encore là. Une supposition s’appelle supposition.
paper-house-help = Danger de mort : { $emergency } d’abord, puis la direction de course, puis l’équipe.
paper-head-travel = Voyage
paper-head-beds = Lits
paper-head-entry = Inscription
paper-head-also = Aussi
paper-head-rules = Règles de la course
paper-head-recce = Trajets à essayer avant
paper-recce = Faites-les avant la course, de nuit là où il fera nuit ; notez les minutes et dites-les dans la discussion : « le trajet vers l’arrivée dure 40 min ».
paper-stands-by-head = qui s’en porte garant
paper-driven-at = roulé avant
paper-measured = mesuré
paper-nobody-yet = PERSONNE ENCORE
paper-head-sleeps = Qui dort quand

## Après
paper-afterwards = comment ça s’est passé
paper-head-sections = Plan et réalité par section
paper-head-stops = Arrêts
paper-planned-head = prévu
paper-took = réel
paper-over = en plus
paper-from-to = { $from } – { $to }
paper-halves = La seconde moitié du chemin par rapport à la première : { $fact } % de temps ; d’après le plan { $planned } %.
paper-window-first = première
paper-window-last = dernière
paper-head-windows = La justesse des fenêtres
paper-windows-score = { $inside } arrivées sur { $count } étaient entre première et dernière heure (8 sur 10 le devraient) ; l’heure probable était à { $off } près, la moitié à moins.
paper-likely-head = probable
paper-came = venue
paper-inside = dedans
paper-inside-yes = oui, { $off }
paper-inside-no = NON, { $off }
paper-head-told = Messages, et en combien de temps on a répondu
paper-messages = messages
paper-asked-head = avec question
paper-answered = répondus
paper-how-soon = la moitié en
paper-slowest = le plus lent
paper-head-written = Écrit en route
paper-word = { $when } { $who } : { $words }
paper-head-log = Ce qui a été noté aux arrêts
paper-when = quand
paper-logged = Noté
paper-intake-carbohydrate = Glucides : { $value } g par heure d’après le carnet ({ $low } à { $high } dans les deux moitiés de la course). Ce que personne n’a noté n’y est pas.
paper-intake-fluid = Liquide : { $value } ml par heure d’après le carnet ({ $low } à { $high } dans les deux moitiés de la course). Ce que personne n’a noté n’y est pas.
paper-head-next = Pour le prochain plan
paper-next = Écris-le sous [[runners]] du prochain fichier : { $line }
paper-head-questions = Trois questions à chacun
paper-ask-well = Qu’est-ce qui a bien marché ?
paper-ask-wrong = Qu’est-ce qui a mal tourné, ou presque ?
paper-ask-next = Que feras-tu autrement la prochaine fois ?
paper-all-stops = tous ensemble
