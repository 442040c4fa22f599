# Times, answers, replies, buttons. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

# For dates and numbers.
locale = fr

## Times, lengths, places
both-clocks = { $there } ({ $here } à ta montre)
window = vers { $likely } ({ $early } à { $late })
window-over = attendue à { $likely } ({ $early } à { $late }), rien de signalé là-bas
window-there = là depuis { $likely }
window-set = { $likely }
window-due = vers { $likely }, à tout moment d’ici { $late }
window-open = à tout moment d’ici { $late }
window-stood = vers { $likely } ({ $early } à { $late })
window-own = , à ta montre { $likely } ({ $early } à { $late })
window-own-over = , à ta montre { $likely } ({ $early } à { $late })
window-own-there = , à ta montre { $likely }
window-own-set = , à ta montre { $likely }
window-own-open = , à ta montre { $late } au plus tard
window-own-due = , à ta montre { $likely }, { $late } au plus tard
window-short = { $likely } ({ $early } à { $late })
window-how = Une heure comme 14:35 (14:10 à 15:20) se lit : vers 14:35 ; 1 fois sur 10 elle arrive avant 14:10, 1 fois sur 10 après 15:20. ‘Pourquoi ?’ le réexplique.
duration-none = moins d’une minute
duration-min = { $minutes } min
duration-h = { $hours } h
duration-h-min = { $hours } h { $minutes } min
ago = il y a { $length }
in-time = dans { $length }
just-now = à l’instant
km = { $number } km
miles = { $number } miles
odds-under = moins d’1 chance sur 20
odds-over = plus de 19 chances sur 20
odds-about = environ { $tenths } chances sur 10
degrees = { $lat } { $north ->
    [north] nord
   *[south] sud
 }, { $lon } { $east ->
    [east] est
   *[west] ouest
 }
utm-too = (UTM { $utm })
nobody = personne
somebody = quelqu’un

## Kinds of check-in as facts: 'out of Mill'
fact-in = arrivée à { $place }
fact-out = repartie de { $place }
fact-through = passée par { $place } sans s’arrêter
fact-position = vue à { $place }
fact-resting = se repose, { $place }
fact-moving-again = de nouveau en route, { $place }
fact-asked-for-help = a demandé de l’aide, { $place }
fact-retired = a abandonné, { $place }
fact-in-hand = avec nous, { $place }
fact-sweep-through = serre-file passé à { $place }
fact-not-here-yet = pas encore à { $place }
fact-other = { $kind } à { $place }
fact-in-nowhere = arrivée, lieu non précisé
fact-out-nowhere = repartie, lieu non précisé
fact-through-nowhere = passée sans s’arrêter, lieu non précisé
fact-position-nowhere = vue, lieu non précisé
fact-resting-nowhere = se repose, lieu non précisé
fact-moving-again-nowhere = de nouveau en route, lieu non précisé
fact-asked-for-help-nowhere = a demandé de l’aide, lieu non précisé
fact-retired-nowhere = a abandonné, lieu non précisé
fact-in-hand-nowhere = avec nous, lieu non précisé
fact-sweep-through-nowhere = serre-file passé, lieu non précisé
fact-not-here-yet-nowhere = pas encore là, lieu non précisé
place-km = { $km } après le départ
place-nowhere = lieu non précisé

## How fresh
fresh = Dernière information : { $fact }, { $when }, signalé par { $who } ({ $ago }).
fresh-nothing = Aucune nouvelle de { $name } pour l’instant.
fresh-before = { $name } n’est pas encore partie.
fresh-doubted = { $count ->
    [one] Une information n’est pas encore confirmée et ne compte pas.
   *[other] { $count } informations ne sont pas encore confirmées et ne comptent pas.
 }
fresh-blind = EN PANNE depuis { $when } : { $what ->
    [none] notre propre liaison
   *[other] { $what }
 }. Des nouvelles ont pu se perdre.
fresh-held = La direction de course retient les coureurs. Les temps repartent à la reprise.
fresh-held-until = La direction de course retient les coureurs jusqu’à { $until }.
fresh-ended = La direction de course a mis fin à la course { $when }{ $place ->
    [none] .
   *[other] {", à partir de "}{ $place }.
 }
fresh-sharper = Avec une nouvelle de { $name }, je pourrais être plus précis.

## Marks before a notice
mark-exercise = [EXERCICE, rien n’est arrivé] { $text }
mark-delayed = [en retard, prévu { $when }] { $text }
mark-repeat = [peut-être déjà reçu{ $short ->
    [0] {""}
   *[other] {", n° "}{ $short }
 }] { $text }
mark-number = (n° { $short })
# In a mail, which has no buttons.
mail-answer = Pour répondre, ouvre cette page et appuie là : { $link }
mail-answer-note = Le lien répond à ta place jusqu’à { $until } : ne le transmets pas. L’ouvrir ne répond encore à rien. Personne ne lit une réponse à ce courriel.
mail-no-page = Personne ne lit une réponse à ce courriel ; cela reste sans réponse tant que tu ne réponds pas dans ta discussion ou sur la page.{ $phone ->
    [none] {""}
   *[other] { " " }Si tu n’as ni l’une ni l’autre, appelle { $name } : { $phone }.
}

## Answers
point-next = { $runner } à { $place } : { $window }.
point-reached = { $runner } est arrivée à { $place } { $when }{ $left ->
    [none] .
   *[other] {" et repartie "}{ $left }.
 }
point-left = { $runner } est repartie de { $place } { $when }.
point-through = { $runner } est passée par { $place } { $when }.
point-is-in = { $runner } est à { $place } depuis { $when }.
point-odds = C’est si elle y arrive : { $odds }.
point-odds-first = Que { $runner } arrive à { $place } : { $odds }.
point-if = Si elle y arrive : { $window }.
point-planned = Plan : { $when } ({ $gap }).
gap-late = { $length } de retard
gap-early = { $length } d’avance
gap-none = dans le plan
no-more-points = { $runner } n’a plus de point devant elle : { $going }.
going-before-the-start = pas encore partie
going-moving = en route
going-at-a-point = à un point
going-resting = se repose
going-retired = a abandonné
going-retired-in-hand = a abandonné, avec nous
going-finished = arrivée au bout
going-closed = arrivée au bout, avec son équipe
no-forecast = Je n’ai pas d’heure pour { $place }.
where-between = Dernière information sur { $runner } : { $fact } { $when }, signalé par { $who } ({ $ago }).
where-seen = { $runner } a été vue en dernier { $when }, { $place }, signalé par { $who } ({ $ago }).
where-estimate = Estimation, pas vue : entre { $low } et { $high } du parcours, plutôt vers { $likely }.
where-estimate-near = Estimation, pas vue : près de { $likely } du parcours.
where-legs = C’est entre { $from } et { $to }.
where-at = { $runner } est à { $place }, arrivée à { $when }, signalé par { $who } ({ $ago }).
where-gone-on = Personne n’a signalé son départ de là ; { $odds } qu’elle soit repartie.
where-ended = { $runner } : { $going }.
gap-answer-late = { $runner } a environ { $length } de retard sur le plan. { $place } : { $window }.
gap-answer-early = { $runner } a environ { $length } d’avance sur le plan. { $place } : { $window }.
gap-answer-none = { $runner } est dans le plan. { $place } : { $window }.
gap-fact = Arrivée à { $place } { $when } : { $gap } là-bas.
gap-none-known = Il n’y a pas d’heure prévue à comparer.
supposed-slower = Si { $runner } va { $percent } % plus lentement à partir d’ici : { $place } { $window }.
supposed-faster = Si { $runner } va { $percent } % plus vite à partir d’ici : { $place } { $window }.
supposed-leaving = Si { $runner } repart à { $when } : { $place } { $window }.
supposed-later = Si { $runner } met { $length } de plus : { $place } { $window }.
supposed-sooner = Si { $runner } met { $length } de moins : { $place } { $window }.
supposed-on-the-move = { $runner } est en route, à aucun point : voilà où on en est.
supposed-only = Seulement calculé : personne n’a été prévenu, rien n’a changé.
stop-over = { $runner } est restée { $length } à { $place } ({ $from } à { $to }){ $gap ->
    [none] .
   *[other] {", "}{ $gap }.
 }
stop-over-plan = prévu { $length }
stop-on = { $runner } est encore à { $place }, arrivée à { $from } ({ $length } pour l’instant){ $gap ->
    [none] .
   *[other] {", "}{ $gap }.
 }
stop-through = { $runner } est passée par { $place } { $when } sans s’arrêter.
stop-half = { $runner } à { $place } : arrivée { $from }, départ { $to }. Il manque l’un des deux, donc la durée aussi.
stop-none = Aucun arrêt de { $runner } n’a encore été signalé.
not-reported = pas signalé
cut-off-answer = { $place }, { $edge } avant { $when } : { $odds } que { $runner } passe.
cut-off-split = À temps si elle continue : { $odds } ; qu’elle continue jusque-là : { $going }.
cut-off-line = { $place }, { $edge } avant { $when } : { $odds }.
cut-off-more = Ensuite :
cut-offs-none = Plus de barrière horaire pour { $runner }.
missed-seen-out = Oui, partie : { $runner } est repartie de { $place } { $when }.
missed-seen-in = Non : { $runner } est à { $place } depuis { $when } ; personne n’a signalé son départ.
missed-gone-on = Peut-être : { $runner } était à { $place } à { $when }, personne n’a signalé son départ ; { $odds } qu’elle soit repartie.
missed-odds-high = Sans doute oui : { $odds } que { $runner } ait déjà quitté { $place }.
missed-odds-even = Possible : { $odds } que { $runner } ait déjà quitté { $place }.
missed-odds-low = Sans doute pas : { $odds } que { $runner } ait déjà quitté { $place }.
until-heard = ce qu’on ait de ses nouvelles
wait-advice-wait = Attends{ $until ->
    [none] .
   *[other] {" jusqu’à "}{ $until }.
 }
wait-advice-go = Continue{ $next ->
    [none] .
   *[other] {" vers "}{ $next }.
 }
wait-expected = { $runner } à { $place } : { $window }.
wait-next-leave = Pars avant { $leave_by } pour { $next }.
people-line = { $name } : { $parts }{ $where ->
    [none] {""}
   *[other] {", "}{ $where }
 }.
people-at = à { $place } depuis { $when }
people-bound = en route pour { $place }, là à partir de { $when }
people-bound-untimed = en route pour { $place }
people-unreached = mes messages ne passent pas : appelle
people-phone = téléphone { $phone }
people-car = { $car }
people-none = Personne n’est à { $place }, à ce qu’on sait.
people-nobody = Personne d’autre que tu puisses voir.
people-head = { $count ->
    [one] Une personne :
   *[other] { $count } personnes :
 }
numbers = Danger de mort : d’abord { $emergency }. { $name } : { $phone }.
bring = À apporter à { $place } pour { $runner } : { $kit }.
bring-none = Rien sur la liste à apporter à { $place } pour { $runner }.
bring-safety = Ne pars pas sans : { $kit }.
bring-car = Dans { $car } : { $items }.
bring-food = À manger : { $food }
bring-dark = Elle y sera sans doute de nuit.
take-back = À reprendre à { $place } : { $kit }.
take-back-none = Rien sur la liste à reprendre à { $place }.
food = { $runner } à { $place } : { $food }
food-carry = À emporter jusqu’à { $place } ({ $length } à l’objectif B) : environ { $things }.
food-bottles = { $count ->
    [one] une bouteille d’un demi-litre
   *[other] { $count } bouteilles d’un demi-litre
 }
food-none = Rien d’écrit à manger ou à boire pour { $runner } à { $place }.
fuel = À partir de là : { $words }
fuel-figures = Par heure : { $figures }. Boire à la soif.
fuel-kcal = { $amount } kcal
fuel-carbohydrate = { $amount } g de glucides
fuel-fluid = des bouteilles pour { $amount } ml
fuel-sodium = { $amount } mg de sodium
fuel-caffeine = { $amount } mg de caféine
leave = Pars avant { $leave_by } pour { $place } ; sois-y à partir de { $be_there }.
leave-lost = Le rendez-vous avec { $runner } à { $place } n’est plus possible. { $why }
leave-over = Le départ pour { $place } était à { $leave_by }. Roule comme d’habitude : arriver en sécurité compte plus.
leave-ended = Plus aucun rendez-vous ni heure de départ ne tient. Où aller la chercher, la direction de course ou elle-même le dit : demande avant de rouler.
leave-unknown = Pas encore d’heure de départ pour { $place } : personne n’a confirmé le trajet. Sois-y à partir de { $be_there }.
leave-these = C’est pour { $crew }{ $from ->
    [none] .
   *[other] {", depuis "}{ $from }.
 }
other-car = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 } : départ avant { $leave_by }{ $from ->
    [none] .
   *[other] {" de "}{ $from }.
 }
other-car-unknown = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 } : pas d’heure de départ, leur trajet{ $from ->
    [none] {""}
   *[other] {" depuis "}{ $from }
 } n’est pas confirmé.
other-car-stays = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 } : restent à { $place }, pas de route.
other-car-lost = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 } : ne peuvent pas être à temps à { $place }.
leave-on-way = Tu es en route pour { $place } depuis { $left } ; sois-y à partir de { $be_there }.
leave-there = Tu es déjà à { $place }.
leave-not-you = Pour { $crew }, pas pour toi :
leave-none = Il ne reste aucun rendez-vous où aller.
drive = Trajet jusqu’à { $place } : { $length }{ $walk ->
    [none] {""}
   *[other] {", puis "}{ $walk }{" à pied"}
 }.
drive-from = Depuis { $from }.
drive-estimated = Personne ne l’a confirmé, donc aucune heure de départ n’en est tirée.
drive-unknown = Aucun trajet vers { $place } n’est écrit.
meeting = Ensuite : { $place }, { $runner } { $window }.
ride = À { $place } pour { $runner } : { $crew }{ $car ->
    [none] {""}
   *[other] {", "}{ $car }
}{ $from ->
    [none] {""}
   *[other] {", depuis "}{ $from }
}. { $how ->
    [stays] Déjà là et y restent.
    [open] Sur place à partir de { $be_there } ; pas d’heure de départ, le trajet n’est pas confirmé.
   *[leave] Départ avant { $leave_by }, sur place à partir de { $be_there }.
}
ride-nobody = Personne n’est inscrit pour le rendez-vous avec { $runner } à { $place }.
ride-none = { $place ->
    [none] Il ne reste aucun rendez-vous avec { $runner } où conduire.
   *[other] Aucun rendez-vous avec { $runner } à { $place } n’est prévu ou encore à venir, donc personne n’est inscrit pour y aller.
}
meeting-who = Y vont : { $crew }{ $car ->
    [none] .
   *[other] {", "}{ $car }.
 }
meeting-way = { $place }, parking : { $parking }{ $walk ->
    [none] .
   *[other] {", puis "}{ $walk }{" à pied."}
 }
meeting-way-unknown = Rien n’est écrit sur la façon d’aller à { $place }.
meeting-parking = Parking : { $parking }{ $walk ->
    [none] .
   *[other] {", puis "}{ $walk }{" à pied."}
 }
meeting-hours = Ouvert à l’équipe { $hours }.
hours-both = de { $opens } à { $closes }
hours-from = à partir de { $opens }
hours-to = jusqu’à { $closes }
meeting-after = Ensuite { $place } : { $window }.
meeting-none = Il ne reste aucun rendez-vous avec { $runner }.
dark-yes = Oui, il fait nuit à { $place } quand { $runner } arrive : { $window }.
dark-no = Non, il fait jour à { $place } quand { $runner } arrive : { $window }.
plan-says-nothing = { $words ->
    [none] Le plan ne le dit pas. Ce qu’on sait :
   *[other] Le plan ne dit rien de ‘{ $words }’. Ce qu’on sait :
}
time-left = Encore { $length } avant de devoir partir pour { $place }. À quoi cela suffit, le plan ne le dit pas.
time-left-unknown = Il n’y a pas d’heure de départ pour { $place }, donc je ne peux pas dire combien de temps il reste.
time-left-none = Il ne reste pas de temps avant { $place } : l’heure de départ est passée.
time-own = S’il y a le temps pour cela, le plan ne le dit pas. Tes limites :
weather-unknown = Le plan ne dit pas le temps qu’il fera : demande à la météo ou à la direction de course.
leave-there-unknown = Le plan ne dit pas si l’on peut laisser ou remettre quelque chose là-bas. Demande à la direction de course : { $name } { $phone }.
leave-there-crew = L’équipe la retrouve à { $place } : { $crew }.
leave-there-no-crew = Aucun rendez-vous de l’équipe n’est prévu à { $place }.
catch-up = Depuis { $when } : { $count ->
    [one] un message pour toi.
   *[other] { $count } messages pour toi.
 }
catch-up-nothing = Rien ne t’a été envoyé depuis { $when }.
catch-up-line = { $when } : { $text }
catch-up-waits = { $when }, ATTEND ENCORE TA RÉPONSE (n° { $short }) : { $text }
dark-unknown = S’il fait jour à { $place }, je ne le sais pas.
heard = { $runner } : { $fact } { $when }, signalé par { $who } ({ $ago }).
how-she-is = { $who }, { $when } ({ $ago }) : ‘{ $words }’
how-she-is-none = Personne n’a encore écrit comment va { $runner }.
how-help = L’appel à l’aide pour { $runner } de { $when } est toujours ouvert : ‘{ $words }’
plan-head = Plan de { $runner }, arrivée (objectif B), A à C :
plan-row = { $place } ({ $km }) : { $times }{ $was ->
    [none] {""}
   *[other] {", en fait "}{ $was }
 }{ $stop ->
    [none] {""}
   *[other] {", arrêt "}{ $stop }
 }
card-box = ■ SIGNES D’ALERTE. { $red_line }
card-box-flag = ■ { $flag }
card-box-end = ■ Pas sûr ? Appelle.
card = D’abord essayer, si rien de cela : { $tries }.
card-red = { $trouble }. On fait venir les SECOURISTES, et elle attend là, si : { $flags }.
paper-card-red = Les SECOURISTES, et elle attend là, si : { $flags }.
card-call = Appeler : { $call }
picture-dark = nuit
picture-row = { $place } ({ $km }) : { $times }{ $dark ->
    [none] {""}
   *[other] {", "}{ $dark }
 }
cards-which = Laquelle ? Demande par exemple ‘que faire contre les ampoules’.
cards-line = - { $trouble }
cards-none = Aucune fiche n’est écrite pour cela.
cards-medical = Une fiche rappelle seulement : secouristes et médecins de la course décident.

## Answers: who knows, towards her, how the runner stands, goals
told-none = Aucune alerte n’est ouverte pour { $runner }.
told-held = { $holder } a l’alerte pour { $runner } ({ $kind }, depuis { $since }){ $again ->
    [none] .
   *[other] {" ; prochain point "}{ $again }.
 }
told-not-held = Personne n’a encore pris l’alerte pour { $runner } ({ $kind }, depuis { $since }).
told-answered = { $name } : appelé { $when }, a répondu ‘{ $answer }’ { $at }.
told-asked = { $name } : appelé { $when }, pas encore de réponse.
told-only = { $name } : prévenu { $when }, sans question.
told-failed = { $name } : mon message n’est pas passé, essayé { $when }.
told-race-control = La direction de course est au courant, depuis { $when }.
told-race-control-not = Personne n’a signalé que la direction de course est au courant : { $name }, { $phone }.
told-words = Les mots : ‘{ $words }’
told-race-control-phone = Pour y appeler : { $name }, { $phone }.
told-danger = En danger : { $emergency } d’abord.
taken-alarm = { $runner } : { $kind }, depuis { $since }.
towards = Demande à la direction de course avant que quelqu’un aille à sa rencontre : { $name }, { $phone }. Je ne peux pas en décider.
towards-alarm = Une alerte est ouverte et personne ne l’a encore : réponds d’abord à celle-là.
towards-alarm-held = { $holder } a l’alerte ouverte : parle d’abord à { $holder }.
towards-rule = Règlement : aide extérieure pour { $runner } seulement aux points d’équipe. Ailleurs elle peut y perdre sa course.
towards-rule-anywhere = Le règlement n’interdit pas l’aide hors des points d’équipe.
towards-note = Règlement pour l’équipe : { $note }
towards-instead = Où elle te cherchera : { $place }, à partir de { $be_there }{ $until ->
    [none] {" jusqu’à ce qu’on ait de ses nouvelles."}
   *[other] {" jusqu’à "}{ $until }.
 }
towards-if = Si quelqu’un y va malgré tout : jamais seul, jamais sans lampe. Un reste à { $place } avec un téléphone qui marche. Écris ici qui part, quand, et quand vous êtes revenus.
my-race-late = Tu as environ { $length } de retard sur le plan à { $place }.
my-race-early = Tu as environ { $length } d’avance sur le plan à { $place }.
my-race-on-plan = Tu es dans le plan à { $place }.
my-race-next = { $place } : { $window }.
my-race-cut-off = Prochaine barrière horaire : { $place }, { $edge } avant { $when } ; { $odds } que tu passes.
my-race-latest = Pour 9 chances sur 10, repars de { $place } avant { $when }.
my-race-no-cut-off = Il n’y a plus de barrière horaire devant toi.
my-race-old = Ce que je sais de toi est ancien ({ $ago }). Écris ‘in’ ou ‘repartie’, ou envoie ta position.
my-race-ended = Ta course : { $going }.
goals-next = { $runner }, départ de { $place } : { $goals }.
goals-gone = { $goal } plus possible
goals-meaning = Partie plus tard, c’est l’objectif suivant (après C : aucun). D’après ce qu’on sait maintenant.
goals-none = Plus aucun objectif ne change pour { $runner }.
cut-off-none-at = Pas de barrière horaire devant { $runner } à { $place }.
cut-off-access = L’accès de l’équipe à { $place } est ouvert { $hours }.
cut-off-no-hours = Aucune heure de fermeture pour l’équipe à { $place } n’est écrite.

## Replies to reports
noted-seen = Noté : { $runner } a été vue, { $when } : ‘{ $words }’
noted-seen-kept = Cela compte dès que quelqu’un le confirme ; on demande à qui le peut.
noted-how = Noté comment va { $runner } : ‘{ $words }’
meeting-not-among = { $place } n’est pas parmi tes prochains rendez-vous.
picture-none = Il n’y a pas d’image à envoyer. En mots :
photo-how = Envoie-la ici : ceux qui la suivent cette nuit la voient, sans le lieu ni les données de l’appareil. Je ne vois pas ce qu’elle montre : écris ce qu’il faut faire, par exemple ‘elle est arrivée à { $place } 14:20’.
photo-unseen = Je ne vois pas ce qu’elle montre. Écris ce qu’il faut faire, par exemple ‘elle est arrivée à { $place } 14:20’.
photo-shown = { $names ->
    [none] L’image est gardée, mais encore montrée à personne.
   *[other] L’image est gardée, et montrée à { $names }.
}
photo-lost = L’image n’est pas arrivée. Envoie-la encore une fois.
photo-too-large = L’image est trop lourde (700 ko au plus). Envoie-la plus petite.
photo-unreadable = Ce n’est pas une image que je peux garder. Envoie une photo (JPEG, PNG ou WebP).
other-unreadable = Je ne peux pas lire cela. Écris-le, s’il te plaît.
live-ended = Le partage de position est fini. Cela ne dit rien de { $runner }.
noted = Noté : { $runner } { $fact }, { $when }.
noted-cannot-come = Noté : { $who } ne peut pas venir. Pas de ‘Pars maintenant’ pour { $who } ; les autres sont appelés.
noted-can-come = Noté : { $who } peut revenir, comme prévu.
noted-takes-over = C’est à toi, { $who }. Tous ceux qui doivent le savoir sont prévenus.
answered-cannot-come = Noté : tu ne peux pas. On demande aux autres qui peut. Si tu es fatigué ou mal : ne conduis pas, arrête-toi en lieu sûr et repose-toi.
answered-cannot-why = Tu n’as rien de plus à faire. Si c’est la voiture, ou si tu peux finalement, écris-le.
answered-you-go = C’est à toi. Les heures sont dans le message suivant.
answered-goes = { $who } y va déjà ; pas besoin de toi.
cannot-come-driver = Toi d’abord : arrête-toi en lieu sûr et ne roule plus. Dors, ou laisse conduire quelqu’un d’autre.
cannot-come-own-safety = Toi d’abord : blessé ou malade, appelle { $emergency }. Ne conduis pas.
cannot-come-car = Toi d’abord : hors de la route, feux allumés, loin de la circulation. Blessé ? { $emergency }.
cannot-come-pacer = Toi d’abord : si tu ne peux pas marcher en sécurité, appelle { $emergency } ou la direction de course ({ $phone }), garde-toi au chaud et partage ta position.
cannot-come-back = Quand cela change, écris ‘je peux de nouveau venir’.
noted-note = Noté.
noted-crew-there = Noté : tu es à { $place }, { $when }.
noted-crew-left = Noté : tu as quitté { $place }, { $when }.
noted-on-the-road-untold = Noté. Conduis prudemment.
noted-awake = Noté : tu es réveillé.
noted-race-control = Noté : la direction de course est au courant.
noted-in-hand = Bien : { $runner } est avec toi, { $when }.
noted-stand-down = Noté : l’alerte est finie.
noted-position = Noté : position de { $runner }, { $when }.
noted-same = Je l’avais déjà ; cela compte une fois.
noted-kept = { $runner } { $fact }, { $when } : est-ce juste ?
noted-unconfirmed = Cela ne compte pas encore : { $doubt }. Est-ce juste ?
noted-kept-why = Cela compte dès que quelqu’un le confirme. Pourquoi : { $doubt }.
noted-supporter = Cela compte dès que l’équipe le confirme.
noted-guessed = Cela compte dès que tu appuies sur ‘Juste’.
noted-in-place-of = À la place de { $when }.
noted-next = Ensuite { $place } : { $window }.
noted-undo = Faux ? ‘Annuler’ dans les { $minutes } min.
noted-told = Transmis à { $names }.
noted-how-told = Comment elle va a été transmis à { $names }.
noted-drive = Noté : le trajet de { $from } à { $to } prend { $length }. Les heures de départ en tiennent compte.
noted-drive-from = D’où à { $place } ? Écris par exemple ‘trajet de l'hôtel à { $place } 35 min’.
noted-many = Noté : { $count ->
    [one] une nouvelle.
   *[other] { $count } nouvelles.
 }
undone = Annulé : { $runner } { $fact }, { $when }.
undone-words = Annulé : ‘{ $words }’
undone-plain = Annulé.
undo-nothing = Tu n’as rien envoyé dans les { $minutes } dernières min qu’on puisse annuler.
undo-over = C’est plus vieux que { $minutes } min. Envoie ce qui est juste : ‘correction : elle est arrivée à { $place } 14:20’.
undo-none-there = Je n’ai de toi aucune nouvelle de { $place } à annuler ; rien n’a changé. Envoie ce qui est juste : ‘correction : elle est arrivée à { $place } 14:20’.
held-up = Noté : ‘{ $words }’. Je n’ai prévenu personne : appelle qui peut être là pour toi. Conduis prudemment.
stand-in-asked = Je ne peux pas changer qui va où : arrangez-vous par téléphone.
stand-in-call = L’équipe avec un numéro :
stand-in-nobody = Personne d’autre de l’équipe n’a de numéro ici.
stand-in-person = { $name } ({ $part }) : { $phone }
stand-in-control = { $name } : { $phone }
word-told-nobody = Cela n’a été envoyé à personne : qui demande comment tu vas le lit. Appelle si c’est important.
how-far = Jusqu’à { $place } (au { $km }) : environ { $distance } d’où tu es sans doute.
how-far-course = { $place } est au { $km } du parcours.
confirmed = Confirmé. Merci.
answered-yours = C’est à toi. Je redemande { $when }.
answered-yours-untimed = C’est à toi.
answered-other = { $name } l’a déjà. Merci.
answered = Merci, ta réponse est là.
answered-on-our-way = Bien, vous êtes en route. Conduis prudemment.
answered-cannot-alarm = Noté : tu ne peux pas. { $names ->
    [none] La personne suivante est appelée tout de suite.
   *[other] Aussi sollicités : { $names } ; la personne suivante est appelée tout de suite.
 }
answered-cannot-held = Noté : tu ne peux pas. { $name } s’en occupe.
answered-gave-back = Noté : tu ne t’en occupes plus. Les suivants sont appelés tout de suite, et qui a demandé de l’aide l’apprend.
answered-cannot = Compris, tu ne peux pas. La personne suivante est appelée.
answered-yes = Merci.
answered-not-yet = Merci : pas encore.
answered-nobody-there = Merci : personne là-bas pour la voir.
answered-still-missing = Merci : toujours introuvable. L’alerte reste ouverte.
answered-ok = Bien, tu l’as lu.
answered-no = Merci : non.
answered-i-have-it = Bien, tu t’en occupes.
answered-unreached-i-have-it = Bien, tu appelles. Ce que tu apprends, écris-le ici.
answered-unreached-cannot = Compris, tu ne peux pas appeler. La personne suivante est sollicitée.
answered-goes-on = Merci : elle continue.
answered-race-over = Merci : sa course est finie.
answer-nothing-open = Noté, mais rien n’attend de réponse.
answered-seen = Où a-t-elle été vue, et quand ? Appuie, ou écris-le.
answered-when = Quand ? ‘maintenant’, ‘il y a 10 min’ ou une heure.
help-in-events = L’alerte est lancée dans { $events }.
help-other-event = S’agit-il de { $event } ? Alors réécris-le tout de suite avec ‘{ $name }’ dedans.
passed-on = Transmis mot pour mot à { $names }.
passed-on-place = Ta position est allée à { $names ->
    [none] personne encore
   *[other] { $names }
 }, sur l’appel à l’aide pour { $runner }.
help-still-open = L’alerte de ton appel à l’aide reste ouverte malgré tout{ $holder ->
    [none] {""}
   *[other] {" chez "}{ $holder }
 } jusqu’à ce que quelqu’un écrive ‘fin d'alerte’.
help-was-nothing = Si ce n’était rien, écris ‘annuler’ : ton appel à l’aide est alors annulé.

## Asking back
ask-out = Partie d’où ? De { $place } et elle continue, ou sortie de la course ?
ask-out-nowhere = Partie d’où ? D’un point et elle continue, ou sortie de la course ?
ask-dropped = ‘{ $word }’ : sa course est-elle finie, ou autre chose ?
ask-dropped-own = ‘{ $word }’ : ta course est-elle finie, ou autre chose ?
ask-retired-where = { $own ->
    [yes] Où es-tu ? Partage ta position ou écris le lieu : qui vient te chercher en a besoin.
   *[no] Où est-elle ? Écris le lieu, ou demande-lui : qui va la chercher en a besoin.
 }
ask-retired-how = Cela compte déjà. Comment sa course a-t-elle fini ?
ask-point = Quel point veux-tu dire ?
ask-who = Qui est à { $place } ?
ask-runner = Quelle coureuse ?
ask-bib = Personne n’a le dossard { $bib }. { $count ->
    [0] Rien n’est noté pour cela : regarde encore, s’il te plaît.
   *[other] Voulais-tu dire :
 }
bibs-left = Rien n’est noté pour { $bibs } : personne n’a ce dossard.
ask-where-seen = Entre quels points était-ce ?
of-runner = { $runner } : { $line }
race-only-organiser = Pas noté : seul l’organisateur peut dire que le départ change, que les coureurs sont retenus ou qu’une barrière horaire change. Dis-le à { $name } : { $phone }.
button-right-of = { $runner } : juste
button-wrong-of = { $runner } : faux
event-chosen = { $event } : écris maintenant ton message encore une fois.
picked-before = Ce bouton a servi. Pour changer ce qui est noté, écris-le.
button-old = Je ne sais plus à quoi servait ce bouton. Écris-le en mots, avec le nom de la coureuse.
ask-event = Quelle course ?
ask-with-us = { $runner } est avec vous. N’a-t-elle plus besoin d’aide ? L’alerte court encore pour tous : appuie sur ‘Juste’ ou écris ‘oui’ pour y mettre fin.
noted-no-alarm = Aucune alerte n’est ouverte pour { $runner }, donc aucune à lever. J’ai gardé tes mots ; on veille sur elle comme avant.
ask-stand-down = Lever l’alerte pour { $runner } pour tous ? Elle court encore : appuie sur ‘Juste’ ou écris ‘oui’.
choice-left = Repartie de { $place }, elle continue
choice-left-plain = Repartie d’un point, elle continue
choice-crew = C’est moi
choice-her = C’est { $runner }
choice-crew-left = Moi
choice-her-left = { $runner }
ask-who-left = Qui est reparti de { $place } ?
choice-over = Sa course est finie
choice-over-own = Ta course est finie
choice-else = Autre chose
choice-both = Les deux
choice-all = Toutes
choice-runner = { $bib ->
    [none] { $name }
   *[other] { $name } ({ $bib })
 }
button-undo-of = Annuler : { $event }
choice-between = { $from } – { $to }
choice-point-km = { $place } ({ $km })
not-understood-help = Si tu as besoin d’aide : appelle { $emergency }, et écris ‘au secours’ ; cela va tout de suite à ton équipe et à ton contact sécurité.
clause-not-done = Pas compris : ‘{ $words }’. Redemande-le seul, en d’autres mots.
not-understood = Je n’ai pas compris. Écris ‘usage’ pour des exemples.
nothing-to-say = Bonjour. Écris ‘usage’ pour des exemples.
thanks = Bien.
button-in-plain = Arrivée
button-out-plain = Repartie

## Joining
stranger = Ce numéro ou cette discussion n’est pas connu ici. Si tu as une invitation, envoie son code.
join-preview = Bonjour { $name }, tu es { $parts } à { $event }. C’est bien toi ?
join-asks-runner = Tu écris comment ça va et quand tu as besoin d’aide ; aux points, ton équipe et la course te signalent.
join-asks-crew = On te dit quand partir et où être, et tu dis quand elle est arrivée et repartie.
join-asks-pacer = On te dit où tu la rejoins, et en route tu signales pour vous deux.
join-asks-safety-contact = Si elle est en retard grave, une alarme arrive : réponds « je m’en occupe » ou « je ne peux pas ». Une alarme d’essai vient avant le départ ; réponds-y aussi.
join-asks-organiser = Tu signales ce qui vaut pour tous : départ retardé, interruption, barrière déplacée.
join-asks-volunteer = Tu signales chacun par son dossard, à l’arrivée et au départ de ton point.
join-asks-supporter = On ne te demande rien ; tu vois où elle a été signalée et quand elle est attendue ensuite.
join-done-plain = Bienvenue, { $name }. Écris ‘usage’ pour des exemples.
join-no = Alors rien n’est rejoint, et le code reste inutilisé. Dis-le à qui l’a envoyé.
group-bound =
    À partir de maintenant ce groupe reçoit ce qui concerne toute l’équipe pour { $name } : changements de la course, une alerte levée, l’arrivée.
    Jamais où elle est, ni ce qui est à une seule personne : cela vient à chacun seul. ‘/group off’ y met fin.
group-free = Ce groupe ne reçoit plus rien de { $name } de lui-même. Chacun reçoit ce qui est à lui comme avant.
join-private = Envoie le code à moi seul, pas dans un groupe.
part-line = { $kind }{ $runner ->
    [none] {""}
   *[other] {" pour "}{ $runner }
 }
part-runner = coureuse
part-crew = équipe
part-pacer = accompagnateur
part-safety-contact = contact sécurité
part-organiser = organisateur
part-volunteer = bénévole
part-supporter = supporter

## What can be asked
usage-crew =
    Demande comme tu parles :
    ‘quand arrive-t-elle à { $place }’, ‘prochain point’, ‘où est-elle’, ‘on l'a ratée ?’, ‘attendre ou partir’
    ‘quoi apporter’, ‘quand partir’, ‘barrière horaire’
    ‘et si elle ralentit de 10 %’ ; quand c’est fini ‘comment ça s'est passé’
usage-report =
    Signale comme tu parles :
    ‘elle est arrivée à { $place } à 14:55’, ‘repartie il y a 20 min’, ‘pas encore là’
    ‘elle mange, les pieds vont bien’
    ‘Annuler’ reprend le dernier message pendant { $minutes } min.
usage-volunteer =
    Signale les dossards : ‘214 in 0312 out 0319; 87 in 0315’, ‘214 passée’, ‘serre-file passé’.
    ‘Annuler’ reprend le dernier message pendant { $minutes } min.
duty-runner =
    Tu cours. Écris aux points ‘in’ et ‘repartie’ quand tu peux, ou partage ta position en direct.
    ‘repos’ quand tu t’arrêtes longtemps ; ‘au secours’ si tu en as besoin : ton équipe et { $control } l’apprennent.
duty-crew =
    Tu es dans l’équipe de { $runner }. Un message te dit quand partir et que tenir prêt : réponds-y.
    Dis quand tu es toi-même à un point. Signale ensuite là chaque arrivée et départ par son nom, et ‘pas encore là’ quand on demande.
duty-pacer =
    Tu accompagnes { $runner }. Sois au point où tu la rejoins, avec ta lampe et une couche chaude.
    Signale-la aux points. Si l’un de vous est blessé, écris ‘au secours’ et appelle { $emergency }.
duty-safety-contact =
    Tu es le contact sécurité de { $runner }, à la maison, joignable toute la nuit.
    Si elle est sans nouvelles ou demande de l’aide, une alerte vient ici : réponds ‘je m'en occupe’ dans les 5 min, et veille à ce qu’on la cherche.
    { $calls ->
        [yes] C’est toi qui appelles { $control }, { $phone }.
       *[no] Une personne désignée appelle { $control } ; l’alerte dit qui.
    } Une vie est peut-être en danger : { $emergency } d’abord.
    Avant le départ vient une alerte d’essai : réponds avec le téléphone tel qu’il sera la nuit.
duty-organiser =
    Tu es l’organisateur. Tu apprends les pannes, les personnes injoignables et les alertes.
    Tu dis quand le départ est retardé, les coureurs retenus, ou une barrière horaire changée.
duty-volunteer = Tu signales les coureurs à ton point : dossard, ‘in’ et ‘out’ avec l’heure. Tu ne vois pas les positions.
duty-supporter = Tu suis { $runner } : demande ‘prochain point’ ou ‘où est-elle’. On ne te demande rien.
duty-all = ‘usage’ donne ce que tu peux écrire ici. Ceci est une aide, pas un service de secours.
usage-runner =
    Écris ‘in’, ‘repartie’, ‘repos’, ou envoie ta position.
    Demande ‘prochain point’, ‘barrière horaire’, ‘plan’, et après ‘comment ça s'est passé’.
    Si tu écris au secours, blessée ou perdue, cela va tout de suite à ton équipe.
usage-answer = Réponds à une alerte avec ‘je m'en occupe’ ou son bouton.

## Buttons
button-in = Arrivée à { $place }
button-out = Repartie de { $place }
button-through = Passée par { $place }
button-not-here-yet = Pas encore là
button-was-nothing = Ce n’était rien : lever pour tous
button-undo = Annuler
button-right = Juste
button-wrong = Faux
button-yes = Oui
button-no = Non
button-not-yet = Pas encore
button-nobody-there = Personne là-bas
button-i-have-it = Je m’en occupe
button-unreached-i-have-it = J’appelle
button-unreached-cannot = Je ne peux pas appeler
button-ok = OK
button-leaving = Je pars
button-on-our-way = En route
button-cannot = Je ne peux pas
button-awake = Réveillé
button-seen = Vue, elle va bien
button-still-missing = Toujours introuvable
button-race-control-told = Direction de course prévenue
button-in-hand = Elle est avec nous
button-i-go = J’y vais
button-join = Oui, c’est moi
button-not-me = Non
button-own-choice = De son choix
button-timed-out = Hors délai
button-medics = Secours ou organisation
button-did-not-start = Pas partie
button-next = Ensuite
button-bring = Quoi apporter
button-where = Où
button-after = Le suivant
button-alarm-known = Ce qu’on sait
button-alarm-tell = Que dire aux secours
button-just-now = À l’instant
button-ten-ago = Il y a 10 min
button-twenty-ago = Il y a 20 min
button-other = { $word }

## Errors to a person
error-no_such_code = Ce code n’est pas valable : faute de frappe, déjà utilisé, ou expiré. Demande-en un nouveau à qui l’a envoyé.
error-not_yours = Ton rôle dans la course ne le permet pas.
error-not_found = Cela n’existe pas dans la course.
error-conflict = C’est venu avant avec d’autres mots. Les deux sont gardés, et on demande à quelqu’un ce qui est juste.
error-not_now = Cela ne va pas avec ce qui a été signalé : { $what }.
error-too_many = Trop d’essais faux. Attends quelques minutes.
error-not_ready = Le serveur ne peut pas encore répondre. Redemande dans une minute.
error-other = Le serveur n’a pas pu prendre cela. Rien n’est noté. Réessaie ; si cela dure, téléphone.
error-fault = Une faute de ma part : je n’ai pas pu lire cela. RIEN n’est noté. Écris-le autrement ; si cela ne peut attendre, téléphone.
error-unreachable =
    Le serveur n’est pas joignable en ce moment. RIEN n’est encore noté.
    Je garde ton message et le transmets, avec son heure, dès que le serveur répond ; tu en auras des nouvelles. Si cela ne peut attendre, téléphone.
error-unreachable-not-kept = Le serveur n’est pas joignable en ce moment. RIEN n’est noté et ton message n’est pas gardé. Renvoie-le ; si cela ne peut attendre, téléphone.

## The commands in a chat's menu
menu-start = Rejoindre avec le code reçu
menu-next = Quand elle arrive au prochain point, et où être
menu-leave = Quand nous devons partir
menu-group = Dire à ce groupe ce qui concerne toute l’équipe
menu-kit = Quoi apporter et tenir prêt
menu-missed = L’avons-nous manquée ?
menu-where = Où elle est maintenant, à ce qu’on sait
menu-plan = Le plan, point par point
menu-cutoffs = Les barrières horaires à venir
menu-food = Ce qu’elle mange et boit ensuite
menu-cards = Que faire si quelque chose va mal
menu-numbers = Direction de course et numéro d’urgence
menu-usage = Comment demander et signaler
report-finished = { $runner } a terminé { $when }{ $length ->
        [none] .
       *[other] , après { $length }.
    }
report-retired = { $runner } n’a pas terminé : abandon{ $place ->
        [none] { "" }
       *[other] { " " }à { $place }
    }, { $when } ({ $how }).
report-not-started = { $runner } n’est pas partie.
report-not-over = Ce n’est pas fini pour { $runner } : { $going }.
report-late = Face au plan (objectif B), à { $place } : { $length } de retard ; prévu { $planned }.
report-early = Face au plan (objectif B), à { $place } : { $length } d’avance ; prévu { $planned }.
report-on-plan = Face au plan (objectif B), à { $place } : dans le plan ({ $planned }).
report-lost = Du temps a été perdu : { $parts }.
report-won = Du temps a été gagné : { $parts }.
report-leg = { $from } à { $to } { $length }
report-stop = arrêt à { $place } { $length }
report-even = Aucun tronçon ni arrêt ne s’est écarté du plan de { $length } ou plus.
report-whole = Le tout, point par point, avec ce qui s’est passé : écris ‘plan’.
menu-report = Comment cela s’est passé, face au plan

## What was said, kept in its own words
kept = Gardé dans tes mots : ‘{ $words }’
goes-already = Tu vas déjà à { $place } : il n’y a personne à demander.
kept-own = C’est déjà noté pour toi, pas pour la coureuse.
kept-note = Noté dans tes mots : ‘{ $words }’. Cela ne compte pas comme un signalement d'elle.
ask-danger = Est-elle en danger ? Alors appelle { $emergency }, et appuie ci-dessous.
ask-danger-own = Es-tu en danger ? Alors appelle { $emergency }, et appuie ci-dessous.
button-danger-yes = Oui, préviens tout le monde
button-danger-no = Non
ask-meaning = ‘{ $word }’ : que veux-tu dire ?
rivals-unknown = Je ne sais pas où en sont les autres, ni sa place : demande à la direction de course. { $name } : { $phone }.
rules-unknown = Je ne connais pas le règlement : demande à la direction de course. { $name } : { $phone }.
elsewhere-unknown = { $words ->
    [none] Je ne le sais pas : ce n’est pas dans le plan. Quelqu’un sur place le sait peut-être.
   *[other] Le plan ne dit rien de ‘{ $words }’. Quelqu’un sur place le sait peut-être.
 }
signal-unknown = Je ne sais pas comment est le réseau là-bas. Qui y est allé le sait peut-être.
elsewhere-unknown-at = { $words ->
    [none] Le plan ne le dit pas pour { $place }.
   *[other] Le plan ne dit rien de ‘{ $words }’ à { $place }.
 } Quelqu’un sur place le sait peut-être ; sinon demande à { $name } : { $phone }.
parking-known = On se gare à { $place } : { $parking }. Il n’en dit pas plus.
signal-known = { $signal ->
    [none] Pas de réseau à { $place }, d’après le plan.
   *[other] Réseau irrégulier à { $place }, d’après le plan.
 }
signal-unsaid = Le plan ne signale pas de mauvais réseau à { $place } : il devrait y en avoir. Qui y est allé en sait plus ; sinon demande à { $name } : { $phone }.
why-times = L’heure du milieu est la plus probable ; 1 fois sur 10 elle arrive avant la première, 1 fois sur 10 après la dernière. Elles reposent sur son plan et sur tout ce qui a été signalé.
why-others = Les temps de { $others } autres aujourd’hui y entrent aussi : jusqu’à { $place }, la journée va { $way ->
    [longer] environ { $percent } % plus lentement que prévu
    [less] environ { $percent } % plus vite que prévu
   *[same] comme prévu
 }.
request-swap = Je ne peux pas changer qui fait quoi : ‘{ $words }’. Appelle, s’il te plaît :
meaning-when-there = Quand elle y est
meaning-when-there-own = Quand j’y suis
meaning-finish = Quand elle termine
meaning-finish-own = Quand j’arrive
meaning-where = Où elle est
meaning-where-own = Où l’on me situe
meaning-plan-gap = Avance ou retard sur le plan
meaning-last-stop = Combien a duré l’arrêt
meaning-cut-off = La barrière horaire
meaning-missed = Si nous l’avons manquée
meaning-wait-or-go = Attendre ou continuer
meaning-people = Qui est où
meaning-ride = Qui conduit où
meaning-bring = Quoi apporter
meaning-take-back = Quoi lui reprendre
meaning-food = Ce qu’elle mange
meaning-food-own = Ce que je mange
meaning-leave = Quand partir
meaning-drive = Combien dure le trajet
meaning-dark = Quand il fait nuit
meaning-heard = La dernière nouvelle
meaning-what-if = Si elle est plus lente
meaning-leaves-now = Si elle repart maintenant
meaning-plan = Le plan
meaning-meeting = Le prochain rendez-vous
meaning-how-is-she = Comment va-t-elle ?
meaning-how-is-she-own = Ce qu’on sait de moi
meaning-trouble = Que faire contre cela
meaning-numbers = Numéros de téléphone
meaning-picture = Le profil
meaning-photo = Une photo
meaning-walk-towards = Aller à sa rencontre
meaning-who-knows = Qui est au courant
meaning-my-race = Comment va ma course
meaning-goals = Objectifs A, B, C
meaning-why = Pourquoi cette heure
meaning-signal = Le réseau
meaning-catch-up = Ce que j’ai manqué
meaning-duty = Quel est mon rôle
meaning-cover = Qui peut remplacer
meaning-report = Comment cela s’est passé
meaning-usage = Ce que je peux demander
meaning-unknown-weather = La météo
meaning-unknown-rivals = Les autres coureurs
meaning-unknown-rules = Le règlement
meaning-unknown-other = Autre chose
meaning-in = Elle est arrivée
meaning-in-own = Je suis arrivée
meaning-out = Elle est repartie
meaning-out-own = Je suis repartie
meaning-through = Elle est passée
meaning-through-own = Je suis passée
meaning-position = On l’a vue
meaning-position-own = Où je suis
meaning-resting = Elle se repose
meaning-resting-own = Je me repose
meaning-moving = Elle est de nouveau en route
meaning-moving-own = Je repars
meaning-retired = Sa course est finie
meaning-retired-own = Ta course est finie
meaning-sweep = Le serre-file est passé
meaning-not-here-yet = Pas encore là
meaning-condition = Je dis comment elle va
meaning-condition-own = Je dis comment je vais
meaning-with-us = Elle est avec nous
meaning-with-us-own = Je suis avec l’équipe
meaning-hearsay = Quelqu’un d’autre l’a dit
meaning-supposed = Une simple supposition
meaning-note = Une note
meaning-race-news = Nouvelle de la course
meaning-crew-there = Nous sommes sur place
meaning-crew-left = Nous sommes en route
meaning-drive-takes = Combien le trajet prend
meaning-about-me = À propos de moi
meaning-cant-come = Je ne peux pas venir
meaning-can-come = Je peux de nouveau venir
meaning-held-up = Je suis retenu, j’arrive plus tard
meaning-i-have-it = Je m’en occupe
meaning-i-go = J’y vais
meaning-race-control-told = La direction de course est au courant
meaning-alarm-over = Elle est en sécurité
meaning-alarm-over-own = Je suis en sécurité
meaning-nobody-there = Personne là-bas
meaning-awake = Je suis réveillé
meaning-ok = OK
meaning-yes = Oui
meaning-no = Non
meaning-undo = Annuler le dernier
meaning-correction = Corriger l’heure
meaning-other-person = C’était une autre coureuse
meaning-pass-message = Transmettre un message
meaning-swap = Échanger avec quelqu’un
meaning-meet-elsewhere = Se retrouver ailleurs
meaning-mute = M’envoyer moins
meaning-remind-me = Me rappeler quelque chose
meaning-small-talk = Rien, pour parler
race-news-noted = C’est noté. Ceux que cela concerne sont prévenus.
race-news-how-long = De combien, ou jusqu’à quand ? Écris par exemple ‘le départ est retardé de 30 min’. Rien n’est encore noté.
race-news-which-cut-off = Quelle barrière horaire, et jusqu’à quand ? Écris par exemple ‘barrière de { $place } repoussée à 18:00’. Rien n’est encore noté.
sent-to = Transmis à { $names } : ‘{ $words }’
sent-to-nobody = Gardé, mais encore dit à personne : ‘{ $words }’
sent-waits = { $name } le lira dès { $when }, sauf signe de vie avant.
sent-unheard = Impossible à joindre ici : { $names }. Téléphone, s’il te plaît.
swap-sent = Tant que personne ne le prend, cela reste à toi.
swap-whose = Personne n’a été sollicité : je ne connais pas de rendez-vous à toi encore à venir là-bas.
quiet-until = Pas de nouvelles jusqu’à { $when }. Les alarmes et tes propres rendez-vous passent quand même.
to-bed = Dors bien. Le reste attend jusqu’à { $when } ; les alertes et tes propres rendez-vous te réveillent avant, laisse donc le téléphone allumé et fort.
quiet-how-long = Jusqu’à quand ? Écris ‘silence jusqu’à 18:00’.
quiet-over = Les nouvelles reviennent dès maintenant.
remind-at = Je te le rappelle { $when }. Mets aussi un réveil si tu ne dois pas le manquer.
remind-when = À quelle heure ? Écris ‘rappelle-moi à 18:00’ et quoi. Ce que tu dois savoir d’elle vient tout seul.
request-race = Je ne peux pas transmettre cela à la course : ‘{ $words }’. Appelle, s’il te plaît :
noted-cannot-come-to = Noté : { $who } ne peut pas venir, { $place }. Pas de ‘Pars maintenant’ pour { $who } ; les autres sont appelés.

# Ce que dit le fichier en plus des rendez-vous, et ce qui vient de qui écrit.
rules-known = Du règlement je n’ai que ceci ; pour le reste demande à la direction de course. { $name } : { $phone }.
rule-note = Note de la course : { $note }
rule-points = Aide extérieure seulement aux points d’équipe.
rule-cars = { $count ->
    [one] Une voiture peut venir à ses rendez-vous.
   *[other] Au plus { $count } voitures peuvent venir à ses rendez-vous.
 }
rule-people = { $count ->
    [one] Une personne peut être son équipe.
   *[other] Au plus { $count } personnes peuvent être son équipe.
 }
rule-pacers = Accompagnateurs : { $count } à la fois, à partir de { $km }.
rule-not-before = Pas d’équipe à un point avant { $when }.
start-at = Départ de { $runner } : { $when }.
start-was = { $runner } est partie : { $when }.
start-no-change = Je ne connais aucun changement.
clock-now = Les heures sont celles de la course : là-bas il est { $now }.
clock-yours = Quand ta montre dit autre chose, son heure est derrière, entre parenthèses.
course-ahead = Encore à venir : { $points }.
course-point = { $place } ({ $km })
course-hills = Combien de montées, je ne sais pas : je ne les compte pas.
looks = { $runner }{ $bib ->
    [none] {""}
   *[other] {", dossard "}{ $bib }
 }{ $clothing ->
    [none] {" : sa tenue n’est écrite nulle part."}
   *[other] {" : "}{ $clothing }.
 }
looks-torch = Lumière : { $torch }.
looks-none = La tenue de { $runner }{ $bib ->
    [none] {""}
   *[other] {" (dossard "}{ $bib }{")"}
 } n’est écrite nulle part.
mine-fact = J’ai de toi : { $runner }, { $fact }, { $when }.
mine-words = J’ai de toi, { $when } : ‘{ $words }’
mine-none = Je n’ai rien de toi là-dessus.
late-not-yet = { $runner } n’est pas en retard. Elle le serait si rien ne venait de { $place } avant { $when }.
late-already = { $runner } est en retard : attendue à { $place } à { $when } au plus tard.
in-doubt = Quelqu’un est en danger ? Alors appelle le { $emergency }.
grave-any = Si toi ou quelqu’un près de toi est en danger, appelle { $emergency } maintenant. { $name } : { $phone }.
grave-any-drive = Qui a un malaise, sommeil, très froid ou voit mal ne continue pas à conduire : arrête-toi, un autre ira.
grave-any-help = Quelqu’un est-il en danger ? ‘Oui’ envoie tes mots à tous ici.
meaning-start-time = Quand ça part
meaning-clock = L’heure de qui
meaning-course-ahead = Ce qui vient après
meaning-my-reports = Ce que j’ai de toi
meaning-clothing = Sa tenue
meaning-clothing-own = Ce que je mets
remind-leave = Un message te dit quand partir.
button-tell-all = Dire aux autres
new-link = Prépare la course ici ; le lien ouvre une fois, pendant un jour. Le brouillon est dans { $folder }, et un autre `stilepost new` le reprend.
new-stop = Ctrl-C arrête ce serveur. Ce qui est publié est ensuite servi par `stilepost serve`.
new-no-folder = { $folder } : rien ne peut y être écrit. Nomme un autre dossier.
new-again = Répondre encore ?
new-written = Écrit : { $file }. Ensuite : `stilepost check`, `stilepost load`, `stilepost serve`, et `stilepost invite` pour chaque personne ; ou `stilepost new` dans un navigateur.
new-no-file = { $file } : illisible ({ $why }). Vérifie le chemin.
new-paste-end = Colle-le ici, ou donne le nom d’un fichier ; une ligne vide termine.
new-unusual = { $file } : a une forme qui ne se change pas ici ({ $why }). Donne à chaque table son propre titre, comme [[points]], ou nomme un autre dossier.
meaning-pace = Son allure
meaning-pace-own = Mon allure
meaning-words = Le sens d’un mot
meaning-complaint = Quelque chose était faux
meaning-offer = Je propose mon aide
meaning-unremind = Plus de rappel
remind-over = Annulé : plus de rappel { $when }.
remind-none = Je n’ai pas de rappel à venir pour toi.
light-dark-at = Il fera nuit à { $place } quand elle y sera.
light-left = Elle n’a pas sa lampe avec elle. { $dark } Transmis à { $names }.
light-meet = Apportez une lampe à { $place }, où l’équipe la retrouve ensuite : { $crew }.
light-carries = D’après le plan elle a : { $torch }.
light-control = Personne ne la voit avant la nuit, ou elle n’a pas d’autre lampe ? Prévenez { $name } : { $phone }.
await-open = Tu l’apprends tout de suite quand { $runner } { $edge ->
    [out] est repartie de { $place }
   *[in] est arrivée à { $place }
}.
await-before = Je te réveille { $length } avant que { $runner } puisse être à { $place } au plus tôt : là, pour l’instant, { $window }. Si cela bouge, le réveil bouge aussi. Mets aussi un réveil si tu ne dois pas le manquer.
await-set = Je te le dis tout de suite quand { $runner } { $edge ->
    [out] est repartie de { $place }
   *[in] est arrivée à { $place }
}, la nuit aussi{ $window ->
    [none] .
   *[other] { " " }: là { $window }.
}
await-was = { $runner } est déjà plus loin : { $fact }, { $when }.
await-past = { $runner } a déjà dépassé { $place }.
await-race-over = La course est finie pour { $runner }. Il n’y a plus rien à attendre à { $place }.
await-over = Annulé : pas de message quand { $runner } { $edge ->
    [out] est repartie de { $place }
   *[in] est arrivée à { $place }
}.
pace-last = { $from } à { $to } : { $leg }.
pace-before = Avant, { $from } à { $to } : { $leg }.
pace-whole = Depuis le départ, arrêts compris : { $leg }.
pace-leg = { $distance } en { $length }, { $pace }
pace-per-km = { $pace } min au km
pace-per-mile = { $pace } min au mile
pace-of = D’après les heures signalées ; aucune balise ne le mesure.
pace-none = Pas encore d’allure : personne n’a signalé { $runner } à un point depuis le départ.
complaint-sorry = Désolé. Voici ce qui vaut maintenant :
complaint-right = Une heure était fausse ? Écris la bonne, comme ‘arrivée à { $place } 13:42’. Moins de messages : ‘silence jusqu’à 18:00’.
term-none = De quel mot parles-tu ? On demande surtout ceux-ci :
term-window = « 14:35 (14:10 à 15:20) » : vers 14:35 ; 1 fois sur 10 elle vient avant 14:10, 1 fois sur 10 après 15:20.
term-estimate = « Vers » et « prévue » sont des estimations : personne ne l’y a vue. « Arrivée », « repartie » et « passée » ont été signalés par la personne nommée.
term-late = « En retard » : 9 fois sur 10 on aurait déjà eu de ses nouvelles. C’est une question à ceux qui sont au point, pas une alarme.
term-overdue = « Sans nouvelles » : depuis si longtemps que la maison et l’équipe sont appelées, l’une après l’autre, jusqu’à ce que quelqu’un réponde.
term-held = « Arrêtés » : les organisateurs retiennent les coureurs où ils sont. Personne n’est en retard pendant ce temps.
term-unconfirmed = « Non confirmé » : gardé, mais ne compte que si quelqu’un qui peut le savoir le confirme.
term-with-us = « Avec nous » : l’équipe, un soignant ou la course l’a avec soi. Personne n’a à la chercher.
term-last-known = « Dernier signe » : la dernière chose qu’une personne ou un tapis a signalée d’elle. Tout le reste est estimé.
term-cut-off = « Barrière horaire » : elle doit y être à cette heure, ou en être repartie si c’est écrit ainsi ; sinon la direction de course l’arrête.
term-sweep = « Serre-file » : ceux qui marchent derrière la dernière.
term-stand-down = « Fin d’alerte » : l’alarme est terminée ; personne n’a plus rien à faire.
term-leave-by = « Partir avant » : qui part plus tard risque de la manquer.
term-resting = « Se repose » : quelqu’un a signalé qu’elle est assise ou dort. En soi, rien d’inquiétant.
term-goals = « Objectifs A, B, C » : un bon jour, le plan, et un jour difficile où elle arrive quand même.
term-out-of-race = « DNF » : n’a pas terminé. « DNS » : n’est pas partie.
term-clock = « 07:40 » est une heure, sur 24 heures, à l’heure de la course ; une durée s’écrit « 40 min » ou « 2 h 10 min ».

## Changing the plan during the race
change-ask = Changer ce rendez-vous
change-what = { $place }, { $runner } : { $who }. Que faut-il changer ?
change-drives = { $name } conduit
change-skip = Le laisser de côté
change-move = Se retrouver à un autre point
change-finish = Juste finir, sans objectif
change-where = Où retrouver { $runner } au lieu de { $place } ?
change-nowhere = Plus loin, il n’y a pas d’autre point ouvert à l’équipe où personne ne retrouve { $runner }.
change-for = { $name } : { $what }
change-left = Rien n’est changé.
change-yes = Oui, changer
change-no = Non, laisser
change-undo = Annuler le changement
change-would = Rien n’est encore changé. Cela voudrait dire :
change-for-nobody = Personne n’a rien à faire autrement.
change-mind = À regarder d’abord : { $what }
change-refused = Impossible : { $what }
change-done = Changé. { $count ->
    [0] Personne n’a rien à faire autrement.
   *[other] { $names } { $count ->
        [one] l’apprend
       *[other] l’apprennent
     }.
 }
change-undone = Annulé. { $count ->
    [0] Personne n’a rien à faire autrement.
   *[other] { $names } { $count ->
        [one] l’apprend
       *[other] l’apprennent
     }.
 }
change-stale = Le plan a changé entre-temps. Regarde de nouveau le rendez-vous, puis change-le.
change-not-nothing-changes = c’est déjà ainsi.
change-not-no-meeting = ce rendez-vous n’est plus dans le plan.
change-not-no-runner = cette coureuse n’existe pas. Donne son nom.
change-not-no-point = ce point n’est pas sur son parcours.
change-not-met-there = quelqu’un l’y retrouve déjà. Change ce rendez-vous-là.
change-not-nobody-goes = personne n’irait. Laisse plutôt le rendez-vous de côté.
change-not-no-person = cette personne n’existe pas. Ajoute-la d’abord.
change-not-no-car = cette voiture n’existe pas.
change-not-no-name = il manque un nom.
change-not-name-taken = quelqu’un porte déjà ce nom. Ajoute un second nom.
change-not-not-that-part = ici on n’ajoute que l’équipe, les meneurs d’allure et les proches.
change-not-no-limit = la course n’a pas de temps limite. Donne un objectif plus tardif dans le fichier de l’événement.
change-not-unusual = le fichier de l’événement est écrit d’une façon qui ne peut pas être changée ici. Change le fichier et charge-le.
change-not-past = ce rendez-vous est déjà passé, ou sa course est finie. Si c’est faux, corrige l’annonce.
change-not-behind = elle a déjà passé ce point, ou sa course est finie. Choisis-en un devant elle.
change-not-not-last = le plan a été changé depuis, ou ce n’était pas un changement fait ici. Change-le à la main.
change-not-no-cut-off = il n’y a pas de barrière horaire à ce point. Choisis-en un qui en a une.
change-not-no-time = il manque la nouvelle heure. Donne-la comme 18:30.
change-not-no-drive = il manque d’où. Choisis de nouveau le trajet.
change-not-no-minutes = il manque les minutes. Donne-les comme 40.
change-not-drive-told = quelqu’un a dit dans la discussion combien dure ce trajet, et cela compte. Dis-y le nouveau temps, comme « le trajet vers le moulin prend 40 min ».
change-invited = { $name } est ajouté. Son invitation, valable une fois : { $link } (code { $code }). Envoie-la tout de suite, elle ne sera plus montrée.
change-really = Changer maintenant ?
change-which = De quoi s’agit-il ?
change-who-may = { $who } ne peut pas changer cela. Qui le peut : { $names }.

# -- le carnet des arrêts
button-log-stop = Noter l’arrêt
button-medic = Je suis des secours médicaux
log-offer = Qu’a fait { $runner }{ $place ->
    [none] {""}
   *[other] {" "}à { $place }
} ? Chaque appui est noté tout de suite ; puis combien, si tu le sais. Ou écris-le : ‘bu 500, mangé une demi-banane, pas d’ibuprofène’.
log-noted = Noté pour { $runner } : { $what }.
noted-log = Noté : ‘{ $words }’.
log-more-ate = Combien ? Appuie sur les grammes de glucides, ou écris ce que c’était : ‘une demi-banane’.
log-more-drank = Combien ? Appuie, ou écris les ml : ‘400’.
log-more-peed = Comment était-ce ?
log-more-mood = Comment est le moral ?
log-more-feet = Comment sont les pieds ?
log-more-painkiller = Lequel ? Appuie, ou écris-le avec la dose.
log-more-slept = Combien de temps ? Appuie, ou écris les minutes.
log-more-changed = Quoi ? Appuie, ou écris-le.
log-item-ate = Mangé
log-item-drank = Bu
log-item-peed = Uriné
log-item-mood = Moral
log-item-feet = Pieds
log-item-painkiller = Antidouleur
log-item-slept = Dormi
log-item-changed = Changé
log-ate = mangé, quantité non dite
log-ate-none = rien mangé
log-ate-amount = mangé { $amount } g de glucides
log-ate-words = mangé : { $words }
log-drank = bu, quantité non dite
log-drank-none = rien bu
log-drank-amount = bu { $amount } ml
log-drank-words = bu : { $words }
log-peed = uriné
log-peed-none = pas uriné
log-peed-good = uriné, clair
log-peed-bad = uriné, foncé
log-peed-words = uriné : { $words }
log-mood = moral
log-mood-good = bon moral
log-mood-so-so = moral moyen
log-mood-bad = moral bas
log-mood-words = moral : { $words }
log-feet = pieds
log-feet-good = pieds en bon état
log-feet-so-so = pieds irrités
log-feet-bad = pieds en mauvais état
log-feet-words = pieds : { $words }
log-painkiller = un antidouleur
log-ate-unsaid = aucun repas noté
log-drank-unsaid = aucune boisson notée
log-painkiller-unsaid = aucun antidouleur noté
log-painkiller-none = pas d’antidouleur
log-painkiller-words = antidouleur : { $words }
log-slept = dormi
log-slept-none = pas dormi
log-slept-amount = dormi { $amount } min
log-slept-words = dormi : { $words }
log-changed = changé quelque chose
log-changed-words = changé : { $words }
log-word-ibuprofen = ibuprofène
log-word-paracetamol = paracétamol
log-word-socks = chaussettes
log-word-shoes = chaussures
log-word-top = haut
log-word-battery = batterie de lampe
log-with = { $what } ({ $words })
log-at = { $what }, { $when }
log-since = Carnet depuis { $since } : { $what }.
log-nothing = Rien n’est encore noté de ce que { $runner } a mangé, bu ou pris.
log-row = { $when }{ $place ->
    [none] {""}
   *[other] , { $place }
} : { $what } ({ $by })
log-medic = { $who } l’a vu comme secours médical ({ $when }).
log-not-advice = C’est ce qui a été noté, pas tout ce qui fut. Ce qu’il faut en faire relève des secours médicaux de la course.
log-for-medics = Ce que { $runner } a mangé, bu et pris est pour son équipe, et pour les secours médicaux qui s’en occupent. Si c’est toi, appuie : il est noté que tu l’as dit, et son équipe peut le voir.
log-flag-painkiller-and-no-pee = ATTENTION : un antidouleur, et pas d’urine notée depuis { $since }. Pas d’autre antidouleur sans les secours médicaux de la course : montre-leur ceci.
log-flag-no-pee = ATTENTION : pas uriné depuis { $since }, d’après le carnet. Montre ceci aux secours médicaux de la course.
log-flag-dark-pee = ATTENTION : urine foncée notée à { $since }. Montre ceci aux secours médicaux de la course.
log-flag-painkillers-again = ATTENTION : plus d’un antidouleur, le dernier à { $since }. Pas d’autre sans les secours médicaux de la course.
log-flag-much-drunk = ATTENTION : plus de 750 ml par heure notés depuis { $since }. Boire selon la soif, pas plus ; gonflement, nausée, mal de tête ou confusion : secours médicaux tout de suite.
log-flag-not-eating = Rien mangé après { $since }, d’après le carnet : voir la carte pour l’estomac.
look-back-kept = Noté : { $kept }. Ce sera sur la page de la course. Merci.
look-back-well = ce qui était bien
look-back-wrong = ce qui a mal tourné
look-back-next = ce que tu feras autrement
follow-given =
    Le lien pour les supporters : { $link }
    Il montre à quels points tu es passée, avec une demi-heure de retard et au quart d’heure près : aucune position, personne de ton équipe. Un lien plus ancien ne vaut plus. « Retire le lien » met fin à celui-ci.
follow-taken-back = Le lien pour les supporters est retiré. Qui l’ouvre ne voit plus rien de toi.
follow-not-yours = Seule la coureuse donne ce lien ou le retire.

## A line of the event file, word for word
written = { $kind ->
    [rule] Note de la course : { $text }.
    [must] Elle doit avoir sur elle, selon le plan : { $text }.
    [transport] Qui abandonne { $name ->
        [none] est ramené
       *[other] à { $name } est ramené
     }, selon le plan : { $text }.
    [parking] Pour se garer à { $name }, le plan dit : { $text }.
    [permit] Pour l’autorisation à { $name }, le plan dit : { $text }.
    [surface] Du terrain à { $name }, le plan dit : { $text }.
    [escape] Pour descendre de { $name }, le plan dit : { $text }.
    [pace] { $name } court avec elle, selon le plan : { $text }.
    [travel] Du trajet, le plan dit : { $text }.
    [beds] Des lits, le plan dit : { $text }.
    [entry] De l’inscription, le plan dit : { $text }.
    [missed] Si on la manque à { $name }, le plan dit : { $text }.
    [kit] Pour { $name }, le plan a : { $text }.
    [food] À manger et à boire à { $name }, le plan a : { $text }.
    [way] Du chemin vers { $name }, le plan dit : { $text }.
    [bag] Son sac à { $name }, selon le plan : { $text }.
    [carries] { $name } porte, selon le plan : { $text }.
    [fuel] Pour manger à partir de { $name }, le plan dit : { $text }.
    [prompt] Le plan dit, pour ‘{ $name }’ : { $text }.
    [hear] { $name } veut entendre, selon le plan : { $text }.
    [not_hear] { $name } ne veut pas entendre, selon le plan : { $text }.
    [card] Le plan dit, pour ‘{ $name }’ : { $text }.
   *[other] { $name ->
        [none] Le plan dit : { $text }.
       *[other] Le plan dit de { $name } : { $text }.
     }
 }
written-sleep = { $person } compte dormir de { $start } à { $end }.
needed-next = Oui, ensuite ici :
needed-nowhere = Aucun rendez-vous ne t’attend plus.
needed-yes = Oui, tu es prévu à { $place }.
needed-no = Non, tu n’es pas prévu à { $place }. { $crew ->
    [none] Aucun rendez-vous n’y est prévu.
   *[other] Prévus : { $crew }.
 }
parking-else-unknown = Je ne connais pas d’autre place pour se garer : le plan n’en a pas. { $name } le sait peut-être : { $phone }.
crew-food-unknown = Le plan ne dit rien des repas de l’équipe, seulement des siens. Sur place, quelqu’un le sait peut-être.
fetch-unknown = Personne n’est prévu pour aller la chercher. { $name } décide comment elle redescend : { $phone }.
fetch-access = { $place } est un point d’équipe : l’équipe peut y aller en voiture.
fetch-no-access = { $place } n’est pas un point d’équipe : selon le plan, aucune de vos voitures n’y va.
fetch-nearest = Les plus proches selon le plan :
near-there = { $name }, à { $place }{ $since ->
    [none] {""}
   *[other] {" "}depuis { $since }
 }{ $phone ->
    [none] {""}
   *[other] {" : "}{ $phone }
 }
near-bound = { $name }, en route pour { $place }{ $phone ->
    [none] {""}
   *[other] {" : "}{ $phone }
 }
on-spot-nobody = Je ne sais pas qui est à un point en ce moment.
on-spot-search-unknown = Qui la cherche dehors, je ne le sais pas ; { $name } peut-être : { $phone }.
next-bit = Ensuite : { $place }, environ { $distance } depuis { $last }.
ground-else = Le plan n’en dit pas plus sur le terrain.
took = { $runner } a mis { $length }, depuis { $start }.
took-so-far = { $runner } est en route depuis { $length }, départ { $start }.
late-from = { $runner } est considérée en retard si rien ne vient de { $place } d’ici { $when }.
