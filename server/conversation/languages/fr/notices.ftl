# What is told unasked. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## Notices: meetings
leave-soon = Prépare-toi : pars avant { $leave_by } pour { $place } retrouver { $runner }, sois-y à partir de { $be_there }.
leave-soon-here = Prépare-toi : sois à { $place } à partir de { $be_there } pour retrouver { $runner }.
leave-now = Pars maintenant pour { $place } retrouver { $runner } : sois-y à partir de { $be_there }.
leave-now-by = Pars avant { $leave_by } pour { $place } retrouver { $runner } : sois-y à partir de { $be_there }.
leave-now-still = Le départ pour { $place } était à { $leave_by }. En roulant normalement dès maintenant tu y es à { $there }, avant l’arrivée probable de { $runner }.
leave-now-late = Le départ pour { $place } était à { $leave_by }. En roulant normalement tu y seras peut-être après { $runner }. Roule comme d’habitude : arriver en sécurité compte plus.
meeting-she-comes = { $runner } à { $place } : { $window }.
meeting-drive = Route { $length }{ $from ->
    [none] .
   *[other] {" depuis "}{ $from }.
 }
meeting-no-drive = Personne n’a confirmé la durée du trajet, donc pas d’heure de départ. Dis-moi combien de temps il prend.
meeting-wait = Attends jusqu’à { $until }.
meeting-wait-short = Attends jusqu’à { $until }, puis va au rendez-vous suivant : { $odds } que { $runner } soit venue d’ici là.
meeting-kit = À apporter : { $kit }.
meeting-take-back = À reprendre là-bas : { $kit }.
meeting-food = À manger : { $food }
meeting-if-missed = Si elle est manquée : { $text }
meeting-no-signal = Pas de réseau à { $place }.
be-there = Sois à { $place } à partir de { $be_there } pour { $runner }.
move-on = Quitte { $place } : { $runner } est très probablement déjà passée sans être vue.
move-on-closes = Quitte { $place } : l’accès de l’équipe ferme à { $until }. { $runner } n’y a pas été vue.
unseen = Personne n’a vu { $runner } depuis { $when } ({ $ago }).
stay = Reste à { $place } : personne n’a vu { $runner } depuis { $when } ({ $ago }).
stay-go = Tu peux repartir{ $next ->
    [none] {""}
   *[other] {" vers "}{ $next }
 } : { $names } { $count ->
    [one] reste
   *[other] restent
 } à { $place } pour { $runner }.
stay-sought = Une alerte est ouverte : on la cherche.
stay-until = Jusqu’à ce qu’on ait de ses nouvelles, ou que la direction de course dise où elle est. Quand elle arrive, écris ‘in’.
stay-may-go = Peut repartir{ $next ->
    [none] {" "}
   *[other] {" vers "}{ $next }{" "}
 }: { $names }.
stay-not-next = Ne pars pas avant pour { $next }.
move-on-next-other = Prochain rendez-vous : { $place }, { $runner }.
move-on-next = Prochain rendez-vous : { $place }.
window-moved = Nouvelles heures pour { $place } : { $what }
window-moved-was = Avant : { $was }.
window-moved-leave = pars avant { $leave_by }{ $was ->
    [none] {""}
   *[other] {" (avant : "}{ $was })
 }, sois-y à partir de { $be_there }, attends jusqu’à { $until }.
window-moved-there = sois-y à partir de { $be_there }, attends jusqu’à { $until }.
unreported-out = Personne n’a signalé que { $runner } a quitté { $place }. Dis-moi quand elle est repartie ; si elle est encore avec toi, écris ‘elle est toujours ici’ et reste.
meeting-lost = Le rendez-vous avec { $runner } à { $place } n’est plus possible. N’essaie pas d’y aller.
meeting-lost-why = { $runner } à { $place } : { $window }.
lost-access-closed = L’accès de l’équipe y est fermé, ou ferme avant son arrivée probable.
lost-not-both = La même équipe ne peut pas faire ce rendez-vous et le précédent.
lost-too-late = Le trajet prend plus de temps qu’il n’en reste.
lost-she-has-left = Elle en est repartie à { $when }.
brief = Avant de perdre le réseau : { $count ->
    [one] le prochain rendez-vous.
   *[other] les { $count } prochains rendez-vous.
 }
brief-meeting = { $place } : { $runner } { $window }.
brief-times = Sois-y à partir de { $be_there } ; repars à { $until }.
brief-leave = Pars avant { $leave_by }.
brief-signal = Le réseau revient à { $place }.
brief-nothing-heard = Sans nouvelles : tiens-toi à ces heures, puis continue. Si elle ne vient pas, dis-le à la direction de course et à ton équipe dès que tu as du réseau.
brief-nothing-heard-plain = Sans nouvelles : tiens-toi à ces heures, puis continue. Si elle ne vient pas, dis-le à la direction de course dès que tu as du réseau.
wake-up = Debout : pars avant { $leave_by } pour { $place } retrouver { $runner }.
wake-up-there = Debout : sois à { $place } à partir de { $be_there } pour { $runner }.
wake-up-answer = Réponds ‘réveillé’, sinon quelqu’un d’autre sera appelé.

## Notices: a driver, a car or a pacer has fallen out
uncovered = Personne ne va plus à { $place } retrouver { $runner }. Ne peut pas : { $who }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-still = Toujours personne pour aller à { $place } retrouver { $runner }. Ne peut pas : { $who }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-part = { $goes } { $count ->
    [one] va
   *[other] vont
 } à { $place }, mais sans { $who }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-pacer = Plus personne n’accompagne { $runner } depuis { $place }. Ne peut pas : { $who }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-you-could = Tu pourrais : { $how }.
uncovered-first = Appuie sur ‘J'y vais’ et c’est à toi ; le premier qui le fait l’a.
uncovered-others = Pourraient : { $others }.
uncovered-other = { $who }, { $how }
uncovered-nobody = PLUS PERSONNE ne peut y être à temps. { $runner } devra s’en passer.
uncovered-no-pacer = Plus personne ne peut l’accompagner. { $runner } continuera seule.
uncovered-kit-in = Pour là-bas, dans { $car } : { $kit }.
uncovered-fetch = Prends-les en chemin, ou apporte l’équivalent.
uncovered-also = Aussi sans personne : { $places }.
uncovered-also-at = { $place } (vers { $when })
uncovered-kit = Elle y a besoin de : { $kit }.
uncovered-words = { $who } a écrit : ‘{ $words }’
uncovered-you = { $who } dit que tu ne peux pas venir à { $place }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 } Tu ne recevras pas de ‘Pars maintenant’, et d’autres sont appelés.
uncovered-you-wrong = Si c’est faux, appuie sur ‘J'y vais’.
uncovered-you-drive = C’est toi qui conduis à { $place } maintenant : { $who } ne peut pas.
uncovered-other-drives = { $driver } conduit à { $place } maintenant : { $who } ne peut pas.
uncovered-without = Tu vas à { $place } sans { $who }.
her-all = Personne de ton équipe ne sera à { $place }.
her-pacer = Personne pour t’accompagner depuis { $place } : { $who } ne peut pas courir.
her-kit = Tout ne sera pas à { $place }.
uncovered-her-lacks = Pas là-bas : { $kit }.
uncovered-her-before = Demande ce qu’il te faut à { $place } : ceux qui t’y retrouvent sont au courant.
uncovered-her-nobody = Personne de ton équipe ne te voit avant. Demande aux ravitaillements, et compte avec ce que tu portes.
uncovered-tell = Dis à { $runner } à { $before } : { $what }.
uncovered-give = Donne-lui avant qu’elle reparte, de ce que tu as : { $kit }.
lacks-all = personne de son équipe ne sera à { $place }
lacks-pacer = personne pour l’accompagner depuis { $place }, { $who } ne peut pas courir
lacks-kit = tout ne sera pas à { $place }
could-leave-by = partir avant { $when }, { $drive }
could-now = en partant maintenant, là vers { $when }, { $drive }
could-estimated = en partant maintenant, là vers { $when }, { $drive } estimés, personne ne l’a confirmé
could-after = après le rendez-vous d’avant, { $drive }
could-unknown = durée du trajet inconnue
could-drive = { $length } de route{ $from ->
    [none] {""}
   *[other] {" depuis "}{ $from }
 }
could-odds = { $how } ; { $odds } que { $runner } n’en soit pas encore repartie
could-gives-up = Tu manquerais alors : { $places }.
alone = { $who }, à pied avec { $runner }, ne peut plus continuer{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 } { $runner } est peut-être seule maintenant.
alone-ask = Demande à { $who } où ils sont tous les deux, et qui a besoin de quoi{ $phone ->
    [none] .
   *[other] {" : "}{ $phone }.
 }
alone-numbers = Blessure : { $emergency } d’abord, puis { $name } { $phone }. Qui retrouve { $runner } ensuite veille sur les deux.
fell-out-car = la voiture
fell-out-driver = ne peut pas conduire
fell-out-pacer = ne peut pas courir
fell-out-own-safety = malade ou blessé
covered = { $who } va à { $place } retrouver { $runner }, à la place de { $gone }.
covered-you = Tu vas à { $place } retrouver { $runner }, à la place de { $gone }. Tous sont prévenus.
covered-her = { $who } vient à { $place } à la place de { $gone }.
covered-times = Pars avant { $leave_by }, sois-y à partir de { $be_there }.
covered-be-there = Sois-y à partir de { $be_there }.
covered-leave-now = Pars quand tu es prêt, sois-y à partir de { $be_there } si la route le permet. Roule comme d’habitude.
covered-back = { $who } { $count ->
    [one] va
   *[other] vont
 } finalement à { $place } retrouver { $runner }, comme prévu.
covered-back-her = { $who } { $count ->
    [one] vient
   *[other] viennent
 } finalement à { $place }, comme prévu.
covered-not-you = Tu n’as pas à y aller.
lost-uncovered = Personne n’y va maintenant : qui devait y aller ne peut pas.

## Notices: a new version of the event file during the race
new-version = Le plan a changé pour toi (version { $version }).
new-item = { $place }, { $runner }, { $what } : avant { $was ->
    [none] rien
   *[other] { $was }
 }, maintenant { $now ->
    [none] rien
   *[other] { $now }
 }.
new-meeting = Nouveau : { $place }, { $runner } : { $what }.
new-meeting-gone = Plus à toi : { $place }, { $runner } (avant : { $what }).
# The same for the runner, who is met.
new-met = Là on t’attend maintenant : { $place } ({ $what }).
new-met-gone = Là plus personne ne t’attend : { $place } (avant : { $what }).
new-post = Ton poste : avant { $was }, maintenant { $now }.
new-what-place = lieu
new-what-parking = parking
new-what-crew = qui y va
new-what-car = voiture
new-what-from = venant de
new-what-drive = trajet
new-what-kit = à apporter
new-what-take-back = à reprendre
new-what-food = à manger
new-what-pacer = accompagnateur
new-what-if-missed = si elle est manquée
new-target = Objectif de { $runner } : avant { $was ->
    [none] aucun
   *[other] { $was }
 }, maintenant { $now ->
    [none] aucun
   *[other] { $now }
 }.
new-kit-left = { $place }, { $runner } : dans { $car }, qui n’y vient plus : { $things }. À remettre avant.
new-time = { $place }, { $runner } : { $now ->
    [none] pas encore d’heure de départ, personne n’a confirmé le trajet
   *[other] partir avant { $now }
 }{ $was ->
    [none] {""}
   *[other] {" "}(avant : { $was })
 }, y être dès { $be_there }.
new-free = Tu n’as plus nulle part où aller.

## Notices: where she is
arrived = { $runner } est arrivée à { $place }, { $when }, signalé par { $who }.
arrived-through = { $runner } est passée par { $place } sans s’arrêter, { $when }, signalé par { $who }.
arrived-stop = Arrêt prévu : { $length }.
arrived-kit = À tenir prêt : { $kit }.
arrived-next = Ensuite { $place } : { $window }.
left = { $runner } est repartie de { $place }, { $when }, signalé par { $who }.
left-next = Ensuite { $place } : { $window }.
left-next-her = { $runner } ensuite à { $place } : { $window }.
finished = { $runner } a terminé : { $when }, signalé par { $who }.
finished-crew = Dis-moi quand elle est avec toi (‘on l'a avec nous’).
word-of-her = Nouvelles de { $runner }, { $when }, signalé par { $who } : ‘{ $words }’
word-rests = Se repose depuis { $since }{ $until ->
    [none] .
   *[other] {", jusqu’à "}{ $until }{" a-t-on dit."}
 }
word-moves = De nouveau en route depuis { $since }.
word-at = Elle est à { $place }, arrivée à { $since }.
word-no-rest = Pas de repos, à ce qu’on sait.
word-retired = Elle a abandonné, et personne n’a encore dit l’avoir avec soi.
word-next = Ensuite pour toi, { $place } : { $window }.
word-taken-back = Annulé : la nouvelle de { $runner }, { $when }, ne compte plus : ‘{ $words }’
retired = { $runner } a abandonné à { $place }, { $when }, signalé par { $who }.
retired-nowhere = { $runner } a abandonné, { $when }, signalé par { $who } ; où, on ne le sait pas.
retired-how = Pourquoi : { $how }.
retired-words = Il a été écrit : ‘{ $words }’
retired-asked = { $you ->
    [yes] Peux-tu aller la chercher{ $place ->
        [none] {""}
       *[other] {" "}à { $place }
     } ? Tu es appelé en premier : appuie pour dire qui y va.
   *[no] Appelé pour aller la chercher{ $place ->
        [none] {""}
       *[other] {" "}à { $place }
     } : { $who }{ $car ->
        [none] {""}
       *[other] {" "}({ $car })
     }.
 }
retired-drive = { $said ->
    [yes] Depuis { $from }
   *[no] Depuis { $from }, d’après le plan
 } : { $length ->
    [none] trajet inconnu.
   *[other] { $length }{ $sure ->
        [yes] .
       *[no] , une estimation que personne n’a confirmée.
     }
 }
retired-is-there = { $you ->
    [yes] Tu y es{ $said ->
        [yes] .
       *[no] {" "}d’après le plan.
     }
   *[no] { $said ->
        [yes] Déjà sur place.
       *[no] Déjà sur place d’après le plan.
     }
 }
retired-busy = Avant cela, un rendez-vous avec une autre coureuse est prévu à { $place } : dis-le si ce n’est pas possible.
retired-else = Sinon, ensuite : { $who }.
retired-goes = { $you ->
    [yes] Tu vas chercher { $runner }
   *[no] { $who } va chercher { $runner }
 }{ $place ->
    [none] {""}
   *[other] {" "}à { $place }
 } : sur place vers { $there }.
retired-where-not-said = On n’a pas dit où elle est. Dernière information : { $fact } { $when }, signalé par { $who }.
retired-bring = À apporter : { $kit ->
    [none] {""}
   *[other] { $kit } ;{" "}
 }des vêtements secs, une couverture, quelque chose de chaud à boire.
retired-transport = Transport de l’organisation : { $words }
retired-no-car = Aucune de vos voitures ne va à { $place } : comment elle rejoint { $to }, ou qui va la chercher, { $name } le dit ({ $phone }).
retired-stay = Reste là et garde-toi au chaud. Écris-moi quand quelqu’un est avec toi.
retired-no-pick-up = Personne n’est désigné pour aller la chercher. Qui y va ?
retired-in-hand = Elle est avec nous : quelqu’un l’a.
retired-not-in-hand = On veille sur elle jusqu’à ce que quelqu’un l’ait. Écris alors ‘on l'a avec nous’.
retired-race-control = La direction de course est au courant.
retired-has-her = { $who } a { $runner } avec soi, { $when }.
retired-in-hand-taken-back = Annulé : finalement personne n’a { $runner }. On veille de nouveau sur elle jusqu’à ce que quelqu’un l’ait.
retired-waits-hand = Personne n’a encore dit avoir { $runner }. Qui l’a écrit ‘on l'a avec nous’.
retired-waits-race-control = La direction de course doit encore savoir que { $runner } a abandonné. À toi de le lui dire maintenant : { $name } { $phone }. Réponds ‘direction de course prévenue’ quand c’est fait.
retired-call-you = Tu préviens la direction de course : { $name } { $phone }. Réponds ‘direction de course prévenue’ quand c’est fait.
retired-call-other = { $caller } prévient la direction de course ; inutile que tu appelles.
retired-tell-race-control = La direction de course doit le savoir : { $name } { $phone }. Réponds ‘direction de course prévenue’ quand c’est fait.
how-own-choice = de son choix
how-timed-out = hors délai
how-withdrawn-by-medics-or-officials = retirée par les secours ou l’organisation
how-did-not-start = pas partie
how-not-said = pas encore dit
in-hand = { $runner } est avec nous : { $who } le dit, { $when }.
in-hand-where = Où : { $place }.
in-hand-nowhere = Où, on ne l’a pas dit.
in-hand-words = { $who } a écrit : ‘{ $words }’
in-hand-alarm = L’alerte pour { $runner } reste ouverte malgré tout.
in-hand-calm =
    Aucune alerte n’est ouverte pour { $runner } ; tu n’as rien à faire, ni à partir pour la retrouver avant qu’elle reparte.
    On n’a pas dit si elle continue : pendant une heure son silence ne déclenche rien, puis on veille sur elle comme avant.
in-hand-still =
    { $runner } est-elle encore avec toi ? Le dernier mot date de { $when }, et personne n’a dit si elle continue.
    Appuie sur ce qui est vrai, ou écris-le. Sans réponse on veille sur elle dès { $until } comme si elle était repartie.
in-hand-ask = Pour demander : { $who } { $phone }.
cut-off-falling = Barrière horaire à { $place }, { $edge } avant { $cut_off } : { $odds } que { $runner } passe, et cela baisse.
cut-off-rising = Barrière horaire à { $place }, { $edge } avant { $cut_off } : de nouveau { $odds } que { $runner } passe.
cut-off-latest = Pour 9 chances sur 10 elle doit être repartie de { $place } avant { $when }.
cut-off-not-possible = Elle ne peut plus repartir de { $place } assez tôt pour 9 chances sur 10.
before-dark-crew = { $runner } risque d’être dans le noir avant sa lampe : nuit dès { $dark }, et { $things } ne l’attend qu’à { $place } : { $window }
before-dark-give-crew = Apportez-la plutôt à { $give }, { $when } : { $meets ->
    [none] personne n’est prévu là-bas ; dites qui y va.
    [one] { $who } l’y rencontre. Faites-la passer, ou prêtez-lui-en une.
   *[other] { $who } l’y rencontrent. Faites-la passer, ou prêtez-lui-en une.
 }
before-dark-none-crew = Aucun point d’équipe avant la nuit. Allez tôt à { $place } avec elle ; dites aux gens de la course en chemin qu’elle n’a pas de lampe.
before-dark-here-crew = { $runner } est à { $here } en ce moment : donnez-lui une lampe avant qu’elle reparte.
before-dark-here-her = Tu es à { $here } en ce moment : prends une lampe avant de repartir.
before-dark-holders = La lampe est chez { $who }, pour le rendez-vous à { $place }.
before-dark-her = Tu risques d’être dans le noir avant ta lampe : nuit dès { $dark }, et { $things } ne t’attend qu’à { $place } : { $window }
before-dark-give-her = Demandes-en une à { $give }, { $when }{ $meets ->
    [none] {""}
    [one] {" "}: { $who } t’y rencontre
   *[other] {" "}: { $who } t’y rencontrent
 }. Ne t’engage pas dans la nuit sans lampe.
before-dark-none-her = Aucun point d’équipe avant. Demande une lampe au prochain ravitaillement ; ne t’engage pas dans la nuit sans.
edge-in = arrivée
edge-out = départ
late = { $runner } est-elle passée à { $place } ? Elle est plus tard que prévu.
late-window = Attendue : { $window }.
late-answer = Oui, pas encore, ou personne là-bas pour voir ?
late-home = { $runner } est en retard à { $place }, sans que ce soit inquiétant. Ceci n’est pas une alerte.
tracker-quiet = Sa balise n’a rien envoyé depuis { $when } ({ $ago }). Cela ne dit rien d’elle.
tracker-disagrees = Une personne et sa balise se contredisent : { $who } l’a vue à { $place } { $seen } ; la balise était { $km ->
    [none] hors du parcours
   *[other] à { $km }
 } à { $when }.
stands = La balise de { $runner } n’a pas bougé depuis { $length }{ $place ->
    [none] {""}
   *[other] {", près de "}{ $place }
 }{ $km ->
    [none] {""}
   *[other] {", "}{ $km }
 }. C’est plus long que presque tous les arrêts.
stands-where = Lieu : { $at }. Elle émet de là depuis { $since }, en dernier { $until }.
stands-do = Sais-tu pourquoi ? Si elle se repose, écris ‘elle se repose’ ; si tu l’as vue, où et quand. La balise peut aussi être quelque part sans elle.
late-home-do = Regarde les résultats de la course, ou demande à { $name }, { $phone } : est-elle passée par { $place } ?
late-home-write = Si oui, écris-le ici avec l’heure, par exemple ‘passée à { $place } 02:10’.
late-home-next = Sans nouvelles d’elle, l’alerte part à { $when }.
sweep = SERRE-FILE PASSÉ À { $place }, et { $runner } n’y a pas été vue.
race-change-start-delayed = Le départ est retardé{ $amount ->
    [none] {""}
   *[other] {" de "}{ $amount }
 }{ $until ->
    [none] .
   *[other] {", à "}{ $until }.
 }
race-change-wave-moved = Le départ de { $runner } a changé{ $until ->
    [none] .
   *[other] {" : "}{ $until }.
 }
race-change-runners-held = Les coureurs sont retenus{ $place ->
    [none] {""}
   *[other] {" à "}{ $place }
 }{ $until ->
    [none] {" jusqu’à nouvel ordre."}
   *[other] {" jusqu’à "}{ $until }.
 }
race-change-runners-released = Les coureurs peuvent repartir{ $place ->
    [none] .
   *[other] {" à "}{ $place }.
 }
race-change-race-ended-early = La direction de course a mis fin à la course{ $place ->
    [none] .
   *[other] {", à partir de "}{ $place }.
 }
race-change-rerouted = Le parcours a été modifié{ $place ->
    [none] .
   *[other] {" près de "}{ $place }.
 }
race-change-cut-off-moved = La barrière horaire à { $place }{ $edge ->
    [none] {""}
   *[other] {" ("}{ $edge }{")"}
 } a changé{ $until ->
    [none] {""}
   *[other] {" : "}{ $until }
 }{ $was ->
    [none] .
   *[other] {" (avant : "}{ $was }).
 }
race-change-access-closed = L’accès de l’équipe à { $place } est fermé{ $until ->
    [none] .
   *[other] {" jusqu’à "}{ $until }.
 } N’y va pas.
race-change-access-opened = L’accès de l’équipe à { $place } est rouvert.
race-change-other = Nouvelle de la direction de course : { $change }.
race-change-words = { $words }
race-change-all-anew = Toutes les heures sont recalculées.
race-ended-crew =
    Les rendez-vous prévus ne tiennent plus, et aucun ‘Pars maintenant’ ne viendra plus.
    Où aller chercher { $runner }, la direction de course ou elle-même le dit : demande avant de rouler, { $name } { $phone }.
    Qui l’a avec soi écrit ‘on l'a avec nous’ ; jusque-là on veille sur elle.
race-ended-runner = Où aller maintenant, la direction de course le dit : { $name } { $phone }. Dis à ton équipe où venir te chercher.
race-change-who = Signalé par { $who }.

## Notices: corrections and doubts
correction-moved = Correction : { $runner } { $what } à { $now_at }, pas { $was_at }. Par { $by }.
correction-now = Correction : { $runner } { $what } : maintenant { $now_at }. Par { $by }.
correction-taken-back = Annulé : { $runner } { $what }, ce n’est plus le cas. Par { $by }.
correction-taken-back-at = Annulé : { $runner } { $what } { $was_at }, ce n’est plus le cas. Par { $by }.
correction-watch-on = À partir de maintenant on veille de nouveau sur elle.
correction-race-control = Si la direction de course a entendu que sa course était finie, dis-lui maintenant que non : { $name } { $phone }.
unconfirmed = À confirmer : { $runner } { $fact }, { $when } ? Signalé par { $who }.
unconfirmed-seen = À confirmer : a-t-on vu { $runner } en route, { $when } ? Signalé par { $who }.
unconfirmed-words = Écrit : ‘{ $words }’
unconfirmed-why = Cela ne compte pas encore : { $doubt }.
doubt-future = l’heure est dans le futur
doubt-unknown-runner = cette coureuse n’est pas dans la course
doubt-unknown-point = ce point n’est pas sur son parcours
doubt-before-start = l’heure est avant le départ
doubt-retired = elle avait été signalée en abandon avant
doubt-finished = elle avait été signalée arrivée avant
doubt-out-before-in = le départ est avant l’arrivée
doubt-behind = c’est en arrière d’où elle était
doubt-too-fast = personne ne court si vite
doubt-closed = sa course était finie à ce moment
doubt-off-course = le lieu est loin du parcours
doubt-vehicle = cela va à la vitesse d’une voiture : balise dans une voiture ?
doubt-parked = c’est là où l’on se gare : balise dans une voiture ?
doubt-other-post = cela vient d’un bénévole d’un autre point
doubt-supporter = cela vient d’un supporter
doubt-guessed = une partie est devinée d’après ce qui a été écrit
doubt-not-named = on ne dit pas pour quelle coureuse
doubt-does-not-fit = cela ne va pas avec ce qui a été signalé avant
doubt-none = il faut le confirmer

## A cut-off missed: the fact, the rule, who decides
past-cut-off = { $fact }. Barrière horaire { $there ->
    [yes] là-bas
   *[no] à { $place }
 } : { $edge } avant { $cut_off }.
past-cut-off-in-after-it = { $runner } est arrivée à { $place } { $when }
past-cut-off-out-after-it = { $runner } est repartie de { $place } { $when }
past-cut-off-there-after-it = { $runner } était encore à { $place } { $when }
past-cut-off-not-in-by-it = { $seen ->
    [none] { $runner } n’était pas encore à { $place } { $when }
   *[other] { $runner } était encore à { $seen } { $when }
 }
past-cut-off-not-reported-out = { $runner } est arrivée à { $place } { $when } et personne n’a signalé son départ
past-cut-off-told-by = Signalé par { $who }.
past-cut-off-rule = D’après le règlement sa course s’arrête là ; la direction de course décide. Personne n’a encore dit si { $runner } continue.
past-cut-off-unsure = Elle est peut-être repartie à temps sans être vue. Sinon, la direction de course décide si { $runner } continue.
past-cut-off-you-run = Reste au point, ou près du signaleur le plus proche, jusqu’à avoir parlé à la direction de course : { $name } { $phone }. Dis-moi ensuite si tu continues.
past-cut-off-stay = Reste avec elle. Demande aux gens de la course là-bas ou à { $name } { $phone }, puis appuie sur ce qu’ils disent.
past-cut-off-ask = À toi de demander : { $name } { $phone }. Appuie ensuite sur ce qu’ils disent.
past-cut-off-decide = Tu décides : appuie sur ce qui vaut.
past-cut-off-wait = Chargé de demander : { $who }. Reste où tu es jusqu’à la réponse ; on veille sur elle pendant ce temps.
past-cut-off-nobody = Demande à la direction de course : { $name } { $phone }. Reste où tu es jusqu’à le savoir ; on veille sur elle pendant ce temps.
past-cut-off-if-let-on = Seulement si { $runner } peut continuer : pars avant { $leave_by } pour { $place }.
past-cut-off-over-goes-on = { $runner } continue après la barrière horaire à { $place } : { $seen ->
    [none] { $who } le dit, { $when }.
   *[other] vue à { $seen }, { $when }.
 } Ses points suivants comptent de nouveau.
past-cut-off-over-moved = { $runner } n’a pas manqué la barrière horaire à { $place } : c’est maintenant { $edge } avant { $cut_off }. Ses points suivants comptent de nouveau.
past-cut-off-over-wrong = Annulé : { $runner } n’a pas manqué la barrière horaire à { $place } ({ $edge } avant { $cut_off }). Ce qui a été signalé était faux.
button-goes-on = Elle continue
button-race-over = Sa course est finie

## Said to have retired
unconfirmed-over = { $runner } a-t-elle abandonné{ $place ->
    [none] {""}
   *[other] {" "}à { $place }
 } ? { $who } l’a entendu d’un autre, { $when }.
unconfirmed-over-asks = Pas confirmé : on veille sur { $runner } comme avant. Le sais-tu d’elle-même, ou la vois-tu là-bas ? Alors appuie.
alarm-past-cut-off = FAIT : { $limit } La direction de course a peut-être arrêté sa course : demande-lui d’abord.
alarm-said-over = Aurait fini sa course, NON CONFIRMÉ : { $fact }, { $when } ({ $ago }), { $hearsay ->
    [yes] { $who } l’a entendu d’un autre
   *[no] signalé par { $who }
 } : ‘{ $words }’
said-over-seen = { $runner } a été vue depuis{ $place ->
    [none] {""}
   *[other] {" "}: { $place }
 }, { $when }, signalé par { $who }.
said-over-was = Ce qui se disait de son abandon ({ $when }){ $words ->
    [none] {""}
   *[other] {" "}‘{ $words }’
 } ne tient pas.
doubt-hearsay = entendu d’un autre
fresh-said-over = Aurait abandonné{ $place ->
    [none] {""}
   *[other] {" "}à { $place }
 }, { $when }, { $hearsay ->
    [yes] { $who } l’a entendu d’un autre
   *[no] signalé par { $who }
 } ; non confirmé{ $words ->
    [none] .
   *[other] {" "}: ‘{ $words }’
 }
noted-hearsay = Seulement entendu d’un autre : { $runner } a abandonné{ $place ->
    [none] {""}
   *[other] {" "}à { $place }
 }. Cela ne compte pas encore ; on veille sur elle comme avant.
noted-hearsay-asked = Demandé à : { $names }.
ask-hearsay = Le sais-tu d’elle-même, ou l’as-tu vue là-bas ? Alors appuie.
button-from-her = Je le sais d’elle
position-yours = Noté comme ta position{ $place ->
    [none] {""}
   *[other] {" "}: { $place }
 }, pas celle de { $runner }.
says-to-you = { $who } fait dire : ‘{ $words }’
says-back = { $who } retire cela : ‘{ $words }’
says-picture = { $back ->
    [yes] { $who } retire une image{ $words ->
        [none] .
       *[other] { " " }: ‘{ $words }’
    }
   *[no] { $who } envoie une image{ $words ->
        [none] .
       *[other] { " " }: ‘{ $words }’
    }
}
picture-where = { $page ->
    [none] L’image est sur la page de la course, dans le chat.
   *[other] L’image : { $page }
}
elsewhere-told = { $who } veut un autre lieu de rendez-vous que { $place } : ‘{ $words }’
elsewhere-unchanged = Rien n’est changé dans le plan. Mettez-vous d’accord ; qui tient le plan peut le changer.
swap-asked = { $who } te demande d’aller à { $place } retrouver { $runner } : ‘{ $words }’
swap-window = Elle y est probablement { $window }.
swap-be-there = Sur place dès { $when }.
swap-refused = { $who } ne peut pas aller à { $place }. Cela reste à toi.
reminder = Tu voulais un rappel ({ $when }) : ‘{ $words }’
awaited = { $runner } { $fact }, { $when } (signalé par { $by }).
awaited-soon = { $runner } à { $place } : { $window }.
awaited-unseen = { $runner } a dépassé { $place } : personne ne l’y a signalée, et elle a été vue à { $then }.
awaited-over = La course est finie pour { $runner }, avant qu’elle { $edge ->
    [out] soit repartie de { $place }
   *[in] soit arrivée à { $place }
}.
awaited-asked = Tu voulais le savoir ({ $when }) : ‘{ $words }’
# -- après la course
look-back = Retour sur { $runner } à { $event }, finie { $when }, pour que la prochaine course soit meilleure. Trois questions :
look-back-how = Réponds à chacune sur une ligne qui commence par son numéro, comme ‘3 partir plus tôt’. Ce que tu écris sera sur la page de la course.
