title = Stilepost
board = Tableau
exercise = EXERCICE : ceci est un entraînement, rien n’en est arrivé.
aid = Une aide pour l’équipe, pas un service de secours. En danger appelle { $number } d’abord.
call = Appeler { $name }
emergency = Urgences { $number }
now = maintenant { $when }
you-are = Tu es { $name }, { $parts }
leave = Se déconnecter de ce navigateur
last-known = Dernière information
nothing-yet = Rien n’a encore été signalé.
told-by = signalé par { $who }, { $ago }
estimate = Estimation, pas vue
estimate-near = près de { $likely } du parcours
estimate-between = entre { $low } et { $high } du parcours, plutôt vers { $likely }
estimate-points = entre { $from } et { $to }
points = Points à venir : heure probable, et entre quand
reached = Points atteints
in-at = arrivée { $when }
out-at = repartie { $when }
through-at = passée { $when }
reported-none = atteint ; aucune heure signalée
gets-there = { $odds } qu’elle y arrive
gets-there-you = { $odds } que tu y arrives
own-clock = { $when } à ta montre
bar-own = à ta montre : { $times }
next-meeting = Prochain rendez-vous
my-meeting = Ton prochain rendez-vous
further-meetings = Autres rendez-vous
mine = à toi
others = { $who }
leave-by = Partir avant
you-are-there = tu y es
leave-by-unknown = pas d’heure de départ : le trajet n’est pas confirmé
be-there = Y être à partir de
until-heard = ce qu’on ait de ses nouvelles
wait-until = Attendre jusqu’à
have-ready = Tenir prêt
food = À manger
if-missed = Si elle est manquée
parking = Parking
arrives = Arrive
lost = Ce rendez-vous n’est pas possible : { $why }
no-signal = Pas de réseau là-bas.
cut-offs = Barrières horaires
cut-off-line = { $name }, { $edge } avant { $when } : { $odds } qu’elle passe
cut-off-line-you = { $name }, { $edge } avant { $when } : { $odds } que tu passes
stop-log = Carnet des arrêts
log-rows = Entrée par entrée
doubted = Pas encore confirmé, ne compte pas
doubted-line = { $what } { $when }, signalé par { $who } : { $why }
alarms = Alerte
alarm-line = { $kind }, lancée { $when }{ $point ->
    [none] {""}
   *[other] , { $point }
}{ $words ->
    [none] {""}
   *[other] {" : ‘"}{ $words }{"’"}
}
alarm-held = { $who } a répondu et s’en occupe.{ $again ->
    [none] {""}
   *[other] { " " }Prochain point { $again }.
}
alarm-open = Envoyée à { $told } ; personne n’a encore répondu.
alarm-unreached = PERSONNE N’A ÉTÉ JOINT. { $told } N’A PAS RÉPONDU. TÉLÉPHONE MAINTENANT.
alarm-nobody = PERSONNE N’A ÉTÉ JOINT. AUCUN CANAL NE MARCHE. TÉLÉPHONE MAINTENANT.
held = Les coureurs sont retenus.
blind = { $what ->
    [none] nos propres canaux
   *[other] { $what }
 } EN PANNE depuis { $when } : le silence de ceux qui y écrivent ne veut plus rien dire. Appelle-les.
race-changes = De la course
people = Personnes
people-at = à { $name } depuis { $when }
people-bound = ensuite : { $name }, là à partir de { $when }
unreachable = joignable par aucun canal
profile = Parcours : altitude le long du chemin, points, où elle était en dernier
chat = Discussion
chat-hint = Demande ou signale : ‘où est-elle’, ‘elle est arrivée au moulin il y a 5 min’, ‘que dois-je apporter’
send = Envoyer
share-place = Partager où je suis
asking-place = je demande à cet appareil où il est
place-refused = Cet appareil ne dit pas où il est.
place-shared = Position partagée.
photo = Photo
photo-unreadable = Ce fichier n’est pas une image lisible. Choisis une photo (JPEG, PNG ou WebP).
not-sent = Pas envoyé : pas de connexion. Réessaie.
stale = Pas de connexion depuis { $when }. Ce que tu vois peut être ancien.
notices = Ce qui t’a été dit
join-title = Rejoindre une équipe
join-lead = Tape le code de ton invitation.
join-code = Code
join-look = Voir
join-yes = C’est moi
join-no = Pas moi
join-wrong = Ce code ne peut pas servir. Demande-en un nouveau à qui t’a invité.
join-wait = Trop de codes faux. Attends un quart d’heure.
stranger = Rien n’est montré à qui n’a pas de rôle dans une course. Utilise le lien de ton invitation.
answer-title = Ta réponse
answer-done = Tu as répondu ‘{ $answer }’ { $when }. Il n’y a rien de plus à faire ici ; pour dire autre chose, écris dans ta discussion.
answer-over = On n’attend plus de réponse à cela.
answer-no-link = Ce lien ne peut pas servir : trop ancien, ou incomplet. Réponds dans ta discussion ou sur la page, ou appelle ton équipe.
error-title = Cela n’a pas marché
error-back = Retour au tableau
part-runner = coureuse
part-crew = équipe
part-pacer = accompagnateur
part-safety-contact = contact sécurité
part-organiser = organisateur
part-volunteer = bénévole
part-supporter = supporter
kind-overdue = Sans nouvelles
kind-asked-for-help = A demandé de l’aide
kind-sweep = Le serre-file est passé, pas elle
edge-in = arrivée
edge-out = départ
race-runners-held = Les coureurs sont retenus{ $until ->
    [none] {""}
   *[other] { " " }jusqu’à { $until }
}{ $by ->
    [none] {""}
   *[other] {", dit "}{ $by }
}
race-race-ended-early = La course a été arrêtée avant la fin, { $at }{ $by ->
    [none] {""}
   *[other] {", dit "}{ $by }
}{ $words ->
    [none] {""}
   *[other] {" : ‘"}{ $words }{"’"}
}
race-access-closed = L’accès de l’équipe est fermé : { $point }{ $by ->
    [none] {""}
   *[other] {", dit "}{ $by }
}
race-cut-off-in-moved = La barrière horaire à l’arrivée à { $point } est maintenant { $until }{ $by ->
    [none] {""}
   *[other] {", dit "}{ $by }
}
race-cut-off-out-moved = La barrière horaire au départ de { $point } est maintenant { $until }{ $by ->
    [none] {""}
   *[other] {", dit "}{ $by }
}
race-rerouted = Le parcours a été modifié{ $words ->
    [none] {""}
   *[other] {" : "}{ $words }
}{ $by ->
    [none] {""}
   *[other] {", dit "}{ $by }
}

## The first sentence
first-leave = Pars avant { $when } pour { $place }.
first-leave-now = Pars maintenant pour { $place }, si ce n’est pas fait : il fallait partir avant { $when }.
first-be-there = Sois à { $place } à partir de { $when }.
first-on-way = Tu es en route pour { $place } : sois-y à partir de { $when }.
first-there = Tu es à { $place }.
first-stay = Attends jusqu’à { $when }.
first-stay-heard = Reste jusqu’à ce qu’on ait des nouvelles d’elle.
first-lost = { $place } n’est pas possible : { $why }.
first-no-meeting = Tu n’as plus de rendez-vous.
first-pacing = Tu cours avec { $runner } jusqu’à { $to }. Prochain point : { $place }, vers { $when }.
first-then-leave = Ensuite : pars avant { $when } pour { $place }.
first-then-be = Ensuite : sois à { $place } à partir de { $when }.
first-then-after = Ensuite : pour { $place }, quand { $runner } aura quitté { $here }.
first-due = { $runner } est attendue vers { $when }.
first-due-any-time = { $runner } est attendue d’un moment à l’autre, jusqu’à { $when }.
first-was-due = { $runner } était attendue vers { $when } ; rien de signalé.
first-there-since = { $runner } y est depuis { $when }.
first-i-am-there = J’y suis
first-bring = Quoi apporter
first-nothing = Rien à faire pour toi maintenant.
first-next-is = Prochain point : { $place }.
first-field = { $going } sur { $of } sont encore en course.
first-you-next = Prochain point : { $place }, à { $km } du dernier signalement. Tu y es attendue vers { $when }.
first-you-next-at = Prochain point : { $place }, à { $km } du départ. Tu y es attendue vers { $when }.
first-run-over = Ta course est finie.
first-volunteer = Signale chaque dossard, à l’arrivée et au départ.
first-volunteer-at = Tu es à { $place } : { $count } à venir. Signale chaque dossard, à l’arrivée et au départ.
say-on-way = en route pour { $place }
say-there = je suis à { $place }
say-in = { $bib } arrivée à { $place }
say-out = { $bib } partie de { $place }
## Places of the page
places = Parties de cette page
place-now = Maintenant
place-plan = Plan
place-chat = Messages
place-people = Équipe
unread = { $count } non lus
people-none = Ton rôle ne montre pas les numéros des autres.
plan-none = Ton rôle ne montre pas comment va une course.
waiting = Pas encore envoyé, écrit à { $when }. Part tout seul dès qu’il y a une connexion.
needs-script = Il faut JavaScript. Sans lui, téléphone à la direction de course.
bars-read = Plein : signalé. Hachuré : estimation, l’heure probable en trait. Trait vertical : maintenant.
bars-read-mine = Ligne fine dessous : quand tu y es.
bar-unheard = attendue déjà, rien de signalé de là
## An open alarm
alarm-what = Que faire, qui appeler
part-race-control = direction de course
part-rescue = secours
## What each part sees first
duty = Quand une alerte arrive
duty-danger = Vie en danger : d’abord le { $number }.
duty-answer = Réponds sous { $length }, ici ou dans ta messagerie : ‘je m'en occupe’ ou ‘je ne peux pas’. Sinon la personne suivante est sollicitée.
duty-call-you = Appelle toi-même { $name } : { $phone }.
duty-call-other = L’alerte dit qui appelle { $name } ({ $phone }). Si tu n’es pas sûr que c’est fait, appelle.
duty-look = Veille à ce que quelqu’un la cherche, et écris ici ce que tu apprends.
duty-end = Elle prend fin quand quelqu’un est avec elle, ou quand tu écris ‘fin d'alerte’.
duty-ladder = Téléphone dans cet ordre
section = Ta prochaine section
section-due = { $place } : { $when }
section-ground = { $km }, +{ $up } -{ $down } m
section-carry = Sur toi, selon le plan : { $things }
section-torch-now = LAMPE : il fait nuit.
section-torch = LAMPE avant { $place } : nuit dès { $when }.
section-next-crew = Ton équipe la prochaine fois : { $place }, { $when } : { $crew }.
section-crew = À { $place } : { $crew }.
section-nobody = Personne de ton équipe à { $place }.
section-food = À manger : { $food }
section-kit = { $item }{ $car ->
    [none] {""}
   *[other] { " " }({ $car })
}
station = Ton point : { $place }
station-any = Signaler une coureuse ou un coureur
station-where = Point
station-due = Encore à venir
station-none = Tout le monde est signalé.
station-more = et { $count } de plus
bib = Dossard
bib-in = Arrivée
bib-out = Départ
field = Le peloton
field-line = { $count } { $what }
field-points = Arrivées et départs à chaque point
field-here = Sur place
field-to-come = À venir
field-late = En retard : { $count }
field-late-line = { $who } : attendu à { $place } jusqu’à { $when }
field-missed = Barrière manquée : { $count }
field-danger = Barrière en danger : { $count }
field-danger-line = { $who } : { $place } avant { $when }, { $odds }
field-not-started = Pas signalés au départ : { $count }
field-retired = Hors course : { $count }
field-place-line = { $who }{ $place ->
    [none] {""}
   *[other] , { $place }
}{ $when ->
    [none] {""}
   *[other] , { $when }
}
going-before-the-start = avant le départ
going-moving = sur le parcours
going-at-a-point = à un point
going-resting = en pause
going-retired = abandon, avec personne encore
going-retired-in-hand = abandon, avec quelqu’un
going-finished = arrivés
going-closed = clos
## The map
map = Carte du parcours
map-last = Dernier fait connu : { $fact }.
map-estimate = Estimation, non vue : sans doute entre { $from } et { $to }, de { $low } à { $high } du parcours ; { $odds }.
map-places = Lieux de la carte, et comment y aller
map-mine = tu la retrouves ici
map-parking = Parking : { $words }.
map-to-car-park = Aller au parking
map-to-point = Aller au point
map-geo = Ouvre le programme de cartes de ce téléphone. Si rien ne s’ouvre, saisis-y les chiffres. Si la position du parking n’est pas donnée, le lien mène au point du parcours.
## Web push
push-on = Laisser réveiller ce téléphone
push-off = Ne plus réveiller ce téléphone
push-is-on = Ce téléphone est réveillé quand un message arrive.
push-refused = Pas activé : ce navigateur ne le permet pas, ou le serveur est injoignable. Autorise les notifications de cette page dans les réglages du navigateur et réessaie.
push-says = Les messages arrivent alors aussi quand la page est fermée. Ce n’est pas une promesse : le fabricant du navigateur les transmet, un téléphone sans réseau, en silencieux ou en économie d’énergie les montre tard ou jamais, et certains veulent d’abord la page sur l’écran d’accueil. N’est joint que qui répond. Laisse le son, et convenez de qui appelle qui.
## Sheet and display
sheet = Ma feuille, à imprimer
sheet-paper = Ma feuille entière selon le plan, PDF, { $size }
sheet-as-of = État { $when }. Les heures peuvent changer ensuite : regarde la page dès qu’il y a une connexion.
sheet-cards = Si quelque chose va mal
look = Affichage
look-device = comme l’appareil
look-day = jour
look-dark = sombre
look-red = rouge, pour la nuit
look-large = grand texte
setup-title = Préparer une course
setup-language-name = Français
setup-steps = Étapes
setup-step = étape { $number } sur { $all }
setup-course = Course
setup-points = Points
setup-runner = Coureuse
setup-people = Équipe
setup-meetings = Rendez-vous
setup-check = Vérifier
setup-publish = Publier
setup-save = Enregistrer
setup-on = Enregistrer, suite : { $step }
setup-to = Vers { $step }
setup-wrong = Encore à faire ici
setup-doubt = À regarder :
setup-gone = Retirer
setup-take-out = Emporter le brouillon (zip : event.toml et parcours)
setup-put-in = Reprendre un brouillon
setup-put-in-lead = Un zip emporté d’ici, ou un event.toml. Il prend la place de ce brouillon, qui reste à côté sous le nom replaced.zip.
setup-put-in-file = Fichier
setup-put-in-do = Reprendre
setup-parcel-zip = Ce zip est illisible. Emporte encore le brouillon, ou choisis l’event.toml lui-même.
setup-parcel-event = Il ne contient pas d’event.toml en UTF-8. Choisis le zip emporté d’ici.
setup-parcel-large = C’est trop : 60 fichiers et 100 Mo au plus.
setup-unusual = Rien n’a été changé : cet event.toml a une forme que ces pages ne savent pas changer ({ $why }). Donne à chaque table son propre titre, comme [[points]].
setup-broken = L’event.toml du brouillon ne peut pas être changé ici tel quel. Corrige-le dans un éditeur et reprends-le.
setup-door-lead = Cette page est pour qui détient le lien de préparation. Sur la machine du serveur, `stilepost new` en fait un ; il ouvre une fois.
setup-door-code = Clé du lien (ce qui suit le #)
setup-door-open = Ouvrir
setup-link-used = Ce lien a déjà servi, ou il est trop vieux. `stilepost new` en fait un autre ; le brouillon reste.
setup-stranger = Ce navigateur n’a pas de clé pour la préparation.
setup-course-lead = Choisis le fichier GPX du parcours ; ses repères deviennent des points. Tout peut être changé plus tard.
setup-route = Parcours (GPX)
setup-route-again = Un autre parcours (GPX)
setup-course-found = { $km } km, { $up } m de montée, { $down } m de descente, { $points } points
setup-profile = Profil du parcours avec ses points
setup-name = Nom de la course
setup-name-hint = comme on l’appelle
setup-day = Jour du départ
setup-clock = Départ, à l’heure du lieu
setup-zone = Fuseau horaire de la course
setup-limit = Temps limite (heures)
setup-limit-hint = 30:00
setup-control = Direction de course : qui répond
setup-control-hint = Direction de course
setup-control-phone = Direction de course : numéro
setup-emergency = Numéro d’urgence du lieu
setup-start = Départ
setup-finish = Arrivée
setup-points-lead = Là où l’équipe peut venir, il y aura des rendez-vous. Touche un point pour le changer.
setup-paste = Coller le tableau de la course
setup-paste-lead = Points avec km, nom, barrière horaire et assistance, un par ligne. Rien ne compte avant que tu aies vu ce qui a été lu.
setup-paste-hint = 21,5 km; Moulin; 11:30; oui
setup-read = Lire
setup-read-found = Lu : { $count } lignes
setup-read-new = un nouveau point
setup-read-known = change le point qui existe
setup-read-lost = pas de km, et aucun point de ce nom : laissé de côté
setup-read-left = Rien n’a été tiré de ces lignes. Donne à chacune km, nom et heure, ou laisse-les.
setup-take = C’est juste : prendre { $count } lignes
setup-route-broken = Le parcours s’arrête au km { $from } et reprend à { $gap } km de là. Si une étape y finit, dis à ce point quand part la suivante (le trajet entre les deux n’est pas couru) ; sinon trace la ligne jusqu’au bout.
setup-taken-but = Pris. Lignes dont rien n’a été tiré : { $count }.
setup-crew-short = assistance
setup-crew-yes = · assistance oui
setup-crew-no = · sans assistance
setup-cut-line = barrière { $when }
setup-point-new = Un autre point
setup-point-name = Nom
setup-km-hint = 21,5
setup-crew-may = Assistance permise
setup-aid = Ravitaillement
setup-water = Eau
setup-bag = Sacs d’allègement
setup-cut = Barrière horaire
setup-cut-hint = Sat 23:30, ou +18:30
setup-edge = À cette heure elle doit être
setup-edge-out = repartie
setup-edge-in = arrivée
setup-stop = Arrêt prévu (min)
setup-by = Qui signale là
setup-by-nobody = personne
setup-by-crew = l’équipe
setup-by-volunteer = des bénévoles
setup-by-timing-mat = tapis de chronométrage
setup-by-runner = la coureuse
setup-by-tracker = une balise
setup-parking = Où se garer
setup-parking-hint = pré près du barrage
setup-runner-lead = Un temps visé, ou une course qu’elle a courue : l’horaire en découle.
setup-runner-name = Son nom
setup-bib = Dossard
setup-target = Temps visé en tout (heures)
setup-target-hint = 29:00
setup-past = Une course qu’elle a courue
setup-past-lead = À la place d’un temps visé, ou à côté.
setup-past-name = Laquelle
setup-past-ascent = Montée (m)
setup-past-time = Son temps
setup-timetable = Horaire
setup-no-timetable = L’horaire paraît ici dès que parcours, départ, points et temps visé sont justes.
setup-between = entre { $early } et { $late }
setup-people-lead = Qui conduit, qui est son contact de sécurité à la maison (demandé en premier si quelque chose va mal), qui appelle la direction de course.
setup-person-new = Une autre personne
setup-person-more = Enregistrer, et une autre
setup-person-name = Nom
setup-phone = Téléphone
setup-email = E-mail
setup-language = Langue
setup-drives = conduit
setup-calls = appelle la direction de course
setup-ladder = Comme contact, sollicité
setup-station = Comme bénévole à
setup-ladder-first = en premier
setup-ladder-second = en deuxième
setup-ladder-third = en troisième
setup-car = Voiture
setup-awake = Au volant : éveillé depuis
setup-sleeps = Compte dormir
setup-sleeps-hint = dim 01:00 – dim 03:00
setup-cars = Voitures
setup-car-name = Voiture
setup-car-hint = fourgon bleu
setup-seats = Places
setup-meetings-lead = Qui va où, avec quoi. Les heures découlent de son allure et des trajets.
setup-no-crew-points = Il n’y a aucun point ouvert à l’équipe : coche « Assistance permise » à l’étape 2.
setup-no-drivers = Personne ne conduit encore : coche « équipe » et « conduit » pour quelqu’un à l’étape 4.
setup-suggest = Proposer des rendez-vous
setup-likely = sans doute { $when }
setup-from = On y vient de
setup-from-before = le précédent
setup-kit = Matériel, avec des virgules
setup-kit-hint = frontale, couche chaude
setup-food = À manger et à boire
setup-food-hint = riz au lait, café
setup-legs = Trajets
setup-legs-lead = Seul un trajet que quelqu’un garantit donne une heure de départ.
setup-leg = { $start } à { $end }
setup-guess = Estimé d’après la distance : { $minutes } min. Non confirmé.
setup-minutes = Minutes
setup-stands-by = Qui s’en porte garant
setup-nobody-yet = personne encore
setup-ready = Prête pour ce parcours ?
setup-remarks = Ce qu’en dit le plan
setup-right = Rien ne s’y oppose.
setup-not-right = Il manque encore quelque chose.
setup-publish-wrong = Pas encore : { $count ->
    [one] une erreur s’y oppose.
   *[other] { $count } erreurs s’y opposent.
 }
setup-publish-lead = Publier charge la course dans ce serveur et fait une invitation par personne. Tout peut être changé puis publié de nouveau.
setup-publish-do = Publier et inviter
setup-published = Publié, version { $version }.
setup-changes = Ce qui change par rapport à la version { $version }
setup-as-stored = Publié tel quel (version { $version }).
setup-invite-all = Nouvelles invitations pour qui n’est pas venu
setup-invited-lead = Une par personne, valable une fois, deux semaines. Elles ne sont montrées que maintenant : fais scanner, ou envoie le lien.
setup-qr = QR de l’invitation de { $name }
setup-code = Code
setup-here-only = Ce serveur n’a pas d’adresse publique (STILEPOST_PUBLIC_URL) : les liens n’ouvrent que là où cette page s’ouvre.
setup-transport = Comment la course ramène qui abandonne
setup-transport-hint = bus balai, toutes les heures
setup-do-emergency = Indique le numéro d’urgence à l’étape 1.
setup-do-control = Indique le numéro de la direction de course à l’étape 1.
setup-do-runner = Indique son nom, et un temps visé ou une course qu’elle a courue.
setup-do-contact = À l’étape 4, coche « contact de sécurité » pour quelqu’un, sollicité en premier.
setup-do-calls = Coche « appelle la direction de course » pour une seule personne.
setup-do-phone = Indique son numéro de téléphone.
setup-do-people = Ajoute à l’étape 4 qui conduit et qui est son contact de sécurité.
setup-do-reports = Dis à un point « Qui signale là ».
setup-do-transport = Demande à la course, et remplis « Comment la course ramène qui abandonne » à l’étape 1.
setup-do-name = Indique le nom de la course.
setup-do-starts = Indique le jour et l’heure du départ.
setup-do-zone = Choisis le fuseau horaire de la course.
setup-do-route = Choisis le fichier GPX du parcours.
setup-do-span = Écris heures et minutes, comme 29:00.
setup-do-km = Écris sa distance du départ, comme 21,5.
setup-do-cut = Écris une heure (23:30), avec le jour (sam 23:30), ou les heures depuis le départ (+18:30).
setup-do-past = De la course qu’elle a courue, indiquez km, montée et temps, ou rien.
setup-do-target = Indique un temps visé, ou une course qu’elle a courue.
setup-do-confirm = Choisis qui se porte garant de ce trajet ; d’ici là il ne donne pas d’heure de départ.
setup-tap = Touche le profil : le km va au point ouvert plus bas, ou à un nouveau.
setup-joins = Pacer qui rejoint ici
setup-leaves = Pacer qui quitte ici
setup-own = Comment elle court
setup-own-lead = Ses enregistrements donnent son allure selon la pente, les temps de passage des années passées la forme du parcours. Les deux peuvent manquer.
setup-own-files = Enregistrements de ses sorties (GPX, FIT, TCX)
setup-results = Temps de passage d’autres sur ce parcours (CSV)
setup-gone-file = Retirer { $name }
setup-not-kept = PAS GARDÉ : le brouillon ne peut être écrit dans { $folder } ({ $why }). Ce que tu as tapé est encore ici ; laisse le serveur y écrire, puis enregistre de nouveau.
setup-carries = Sur elle dès le départ, avec des virgules
setup-carries-hint = veste de pluie, frontale 8 h
setup-do-fuel = Change ce qu’elle mange et boit, ou laisse-le si c’est voulu.
setup-do-kit = Note-le dans le matériel d’un rendez-vous d’avant, ou à l’étape 3 parmi ce qu’elle a dès le départ ; les heures d’une lampe après son nom, comme « frontale 8 h ».
setup-not-taken = Le tableau collé est lu, mais pas encore pris : prends-le plus bas, ou vide sa case, puis continue.
setup-do-number = Écris un nombre, comme 12.
setup-joined = Déjà là
setup-not-begun = pas commencé
setup-missing = { $count } manquent encore
setup-stage = Une étape finit ici : la suivante part
setup-stage-hint = Sun 07:00
setup-runners-more = D’autres coureuses
setup-runner-new = Encore une coureuse
setup-fuel = Ce qu’elle mange et boit
setup-fuel-lead = Par heure, d’un point jusqu’au suivant nommé. Pour prévoir gourdes et sacs : elle boit à sa soif.
setup-fuel-part = À partir d’un point
setup-fuel-more = À partir d’un autre point
setup-fuel-from = À partir de
setup-fuel-words = En mots
setup-fuel-hint = une barre toutes les demi-heures
setup-fuel-carbohydrate = Glucides (g par heure)
setup-fuel-kcal = Énergie (kcal par heure)
setup-fuel-fluid = Liquide (ml par heure)
setup-fuel-sodium = Sodium (mg par heure)

## Changing the plan
change = Changer le plan
change-this = Changer
change-crew = Qui y va
change-own-car = sa propre voiture
change-car = Voiture
change-point = Point
change-first = Rien ne compte avant que tu aies vu ce que cela change pour qui, et dit oui.
change-who = Quelqu’un d’autre y va, ou une autre voiture
change-elsewhere = Se retrouver à un autre point
change-look = Voir ce que cela change
change-kit = Apporter autre chose
change-kit-lines = Une chose par ligne
change-skip = Laisser le rendez-vous de côté
change-drive = Le trajet depuis { $start }
change-drive-known = { $minutes } min, quelqu’un s’en porte garant.
change-drive-estimate = { $minutes } min estimées : personne ne s’en porte garant, donc pas d’heure de départ.
change-drive-unknown = Personne ne sait combien de temps il prend, donc pas d’heure de départ.
change-drive-minutes = Minutes, de porte à porte ; tu t’en portes garant
change-more = Ajouter un rendez-vous ou une personne, ou abandonner l’objectif
change-add = Ajouter un rendez-vous
change-person = Ajouter une personne
change-name = Nom
change-phone = Téléphone
change-drives = Conduit
change-finish = Juste finir : plus d’objectif, le temps limite reste
change-cut-off = Une barrière horaire a changé
change-cut-off-which = Barrière
change-cut-off-until = Nouvelle heure
change-invited-lead = Fais-la scanner tout de suite ou envoie le lien : valable une fois, deux semaines, et plus montrée ensuite.
follow-title = Supporters
follow-none = Ce lien ne montre rien : il a été retiré, a expiré ou n’en a jamais été un. Demande-en un nouveau à la coureuse.
follow-before = { $runner } n’a encore atteint aucun point.
follow-last = { $runner } était à { $place } vers { $when }, à { $km } du départ.
follow-finished = { $runner } a fini, vers { $when }.
follow-over = { $runner } n’est plus en course. Le dernier point était { $place }, vers { $when }.
follow-next = Ensuite : { $place }.
follow-far = Du départ
follow-about = Vers
follow-delay = Tout ceci a au moins { $minutes } minutes et est arrondi à { $step } minutes. Un long silence ne veut rien dire ici : une grande partie du parcours n’a pas de réseau.
follow-asked = Vu à { $when } ; la page ne change pas d’elle-même.
follow-again = Regarder à nouveau
follow-on = Il y a un lien pour les supporters.
follow-off = Il n’y a pas de lien pour les supporters.
follow-once = Envoie ce lien à ceux qui peuvent suivre. Il ne sera plus montré.
follow-qr = QR du lien pour les supporters
follow-shows = Qui a le lien voit à quels points tu es passée, avec { $minutes } minutes de retard et à { $step } minutes près. Aucune position, personne de ton équipe, aucune alarme.
follow-give = Donner un lien
follow-new = Donner un nouveau lien, l’ancien ne vaut plus
follow-take-back = Retirer le lien
