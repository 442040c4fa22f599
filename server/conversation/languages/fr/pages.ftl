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
estimate-between = entre { $low } et { $high } du parcours, plutôt vers { $likely }
estimate-points = entre { $from } et { $to }
points = Points à venir : heure probable, et entre quand
points-unheard = Attendue à cette heure, rien de signalé là-bas
reached = Points atteints
in-at = arrivée { $when }
out-at = repartie { $when }
through-at = passée { $when }
reported-none = atteint ; aucune heure signalée
gets-there = { $odds } qu’elle y arrive
own-clock = { $when } à ta montre
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
people-bound = en route pour { $name }, là à partir de { $when }
unreachable = joignable par aucun canal
profile = Parcours : altitude le long du chemin, points, où elle était en dernier
profile-none = La trace n’a pas d’altitudes.
chat = Discussion
chat-hint = Demande ou signale : ‘où est-elle’, ‘elle est arrivée au moulin il y a 5 min’, ‘que dois-je apporter’
send = Envoyer
share-place = Partager où je suis
asking-place = je demande à cet appareil où il est
place-refused = Cet appareil ne dit pas où il est.
place-shared = Position partagée.
not-sent = Pas envoyé : pas de connexion. Réessaie.
stale = Pas de connexion depuis { $when }. Ce que tu vois peut être ancien.
notices = Ce qui t’a été dit
join-title = Rejoindre une équipe
join-lead = Tape le code de ton invitation.
join-code = Code
join-look = Voir
join-yes = C’est moi
join-no = Pas moi
join-who = Tu es { $name } dans { $event } : { $parts }.
join-wrong = Ce code ne peut pas servir. Demande-en un nouveau à qui t’a invité.
join-wait = Trop de codes faux. Attends un quart d’heure.
stranger = Rien n’est montré à qui n’a pas de rôle dans une course. Utilise le lien de ton invitation.
answer-title = Ta réponse
answer-done = Tu as répondu ‘{ $answer }’ { $when }. Il n’y a rien de plus à faire ici ; pour dire autre chose, écris dans ta discussion.
answer-over = On n’attend plus de réponse à cela.
answer-no-link = Ce lien ne peut pas servir : trop ancien, ou incomplet. Réponds dans ta discussion ou sur la page, ou appelle ton équipe.
no-events = Tu n’as encore de rôle dans aucune course.
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
first-then-leave = Ensuite : pars avant { $when } pour { $place }.
first-then-be = Ensuite : sois à { $place } à partir de { $when }.
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
bars-read = Plein : signalé. Hachuré : estimation, l’heure probable en trait. Ligne fine dessous : quand tu y es. Trait vertical : maintenant.
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
going-before-the-start = avant le départ
going-moving = sur le parcours
going-at-a-point = à un point
going-resting = en pause
going-retired = abandon, avec personne encore
going-retired-in-hand = abandon, avec quelqu’un
going-finished = arrivés
going-closed = clos
## Sheet and display
sheet = Ma feuille, à imprimer
sheet-as-of = État { $when }. Les heures peuvent changer ensuite : regarde la page dès qu’il y a une connexion.
sheet-cards = Si quelque chose va mal
look = Affichage
look-device = comme l’appareil
look-day = jour
look-dark = sombre
look-red = rouge, pour la nuit
look-large = grand texte
