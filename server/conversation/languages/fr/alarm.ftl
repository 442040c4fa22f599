# Alarms and calls for help. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## Notices: alarms
alarm-runner = { $runner } (dossard { $bib })
alarm-overdue = ALERTE : SANS NOUVELLES de { $runner }, attendue à { $place }.
alarm-overdue-nowhere = ALERTE : SANS NOUVELLES de { $runner }.
alarm-asked-for-help = ALERTE : { $runner } a DEMANDÉ DE L’AIDE.
alarm-help-needed = ALERTE : { $runner } A BESOIN D’AIDE.
alarm-silent = { $name } L’AVAIT ET NE RÉPOND PLUS.
alarm-unanswered = TOUJOURS PERSONNE N’A RÉPONDU.
alarm-says-self = { $runner }, { $when }{ $words ->
    [none] , sans un mot.
   *[other] {" : ‘"}{ $words }{"’"}
 }
alarm-says = { $who }{ $part ->
    [none] {""}
   *[other] {", "}{ $part }{","}
 } signale { $when }{ $words ->
    [none] , sans un mot.
   *[other] {" : ‘"}{ $words }{"’"}
 }
alarm-newest = En dernier, { $when }, { $who } : ‘{ $words }’
alarm-answer-all = Peux-tu t’en occuper ? Réponds ‘je m'en occupe’ et c’est à toi. Tous ceux qui peuvent sont appelés maintenant, et de nouveau dans { $length }.
alarm-beside = Si tu es avec elle : reste avec elle, et appelle TOI-MÊME { $emergency } ou { $name } ({ $phone }) : tu peux dire ce que tu vois.
alarm-two = Danger de mort : { $emergency } tout de suite, n’attends pas. { $name } : { $phone }.
alarm-two-none = Danger de mort : { $emergency } tout de suite, n’attends pas.
alarm-control = TU es la direction de course : regarde dans vos propres résultats, demande à { $place ->
    [none] vos postes
   *[other] { $place }
 } et au serre-file si on l’a vue, et écris ici ce que tu trouves.
alarm-control-help = TU es la direction de course : trouve qui des vôtres est le plus près d’elle, envoie quelqu’un, et écris ici qui y va et pour quand.
alarm-more = Plus : écris ‘que sait-on’. Pour les secours : ‘que leur dire’.
alarm-more-follows = Ce qu’on sait, et ce que tu lis aux secours, suit dans d’autres messages.
known-first = CE QU’ON SAIT de { $runner }, { $when } :
read-out-help-by = { $who } a appelé à l’aide pour elle{ $words ->
    [none] .
   *[other] {" avec ces mots : "}{ $words }.
 }
call-yours = ton appel à l’aide
call-for-you = l’appel à l’aide pour toi
call-for = l’appel à l’aide pour { $runner }
call-unnamed = ton appel à l’aide
call-made = { $who } a appelé à l’aide pour toi, { $when }.
call-asked = Appelés : { $names }.
call-do-not-wait = Je te dis qui s’en occupe. En danger, n’attends pas : appelle { $emergency }.
call-nobody = PERSONNE N’A RÉPONDU, { $length } après { $call } : appelle { $emergency } maintenant.
call-nobody-to-ask = PERSONNE ici ne peut prendre { $call } : appelle { $emergency } maintenant.
call-given-back = { $name } ne peut plus : PLUS PERSONNE N’A { $call }. Si cela ne peut attendre, appelle { $emergency } maintenant.
call-lost = { $name } s’en occupait et ne répond plus : PLUS PERSONNE N’A { $call }. Appelle { $emergency } maintenant.
call-held = { $name } S’OCCUPE DE { $call }{ $when ->
    [none] .
   *[other] {", depuis "}{ $when }.
 }
call-does = { $name } a écrit { $when } : ‘{ $words }’
call-does-not-said = { $name } n’a pas encore écrit ce qui se fait{ $phone ->
    [none] {" "}: écris ici, cela lui parvient mot pour mot.
   *[other] {" "}: appelle { $phone }, ou écris ici, cela lui parvient mot pour mot.
 }
call-if-worse = Si cela empire, appelle { $emergency } tout de suite ; tu n’as besoin de la permission de personne.
call-stay = Reste où tu es si c’est sûr ; tout ce qui est chaud sur toi, pas à même le sol, à l’abri du vent. Ce que tu écris ou partages ici va à ceux qui s’en occupent.
call-scene =
    Si tu es avec elle : reste avec elle. Allonge-la à l’abri du vent sur du sec, tout ce qui est chaud sur elle.
    Mal à la tête, au cou ou au dos : ne la bouge pas. Saignement : appuie et continue d’appuyer.
    Ne se réveille pas ou ne respire pas normalement : { $emergency } maintenant, et fais ce qu’ils disent. Garde ce téléphone libre.
call-over = TERMINÉ : l’alerte pour { $call } est levée ({ $reason }){ $who ->
    [none] .
   *[other] {", "}{ $who }{", "}{ $when }.
 }
call-over-in-hand-you = TERMINÉ : { $who } dit qu’on s’occupe de toi, { $when }.
call-over-in-hand-of = TERMINÉ : { $who } dit qu’on s’occupe de { $runner }, { $when }.
call-over-stand-down = TERMINÉ : { $who } a levé l’alerte pour { $call }, { $when } ; on le tient pour réglé.
call-over-taken-back = TERMINÉ : l’alerte pour { $call } a été annulée{ $who ->
    [none] .
   *[other] {" par "}{ $who }{", "}{ $when }.
 }
call-over-again = S’il faut encore de l’aide, écris de nouveau ‘au secours’ ou appelle { $emergency }.
meanwhile-words = DE { $who }{ $part ->
    [none] {""}
   *[other] {" ("}{ $part }{")"}
 }, { $when } : ‘{ $words }’
meanwhile-report = { $who }{ $part ->
    [none] {""}
   *[other] {" ("}{ $part }{")"}
 }, { $when }, sur { $runner } : { $fact }{ $words ->
    [none] .
   *[other] {". ‘"}{ $words }{"’"}
 }
meanwhile-place = POSITION de { $runner }, partagée { $when } par { $who } : { $place }.
meanwhile-own-place = POSITION de { $who }{ $part ->
    [none] {""}
   *[other] {" ("}{ $part }{")"}
 }, qui s’occupe de l’appel à l’aide pour { $runner }, partagée { $when } : { $place }.
meanwhile-doubted = NON CONFIRMÉ, peut être vrai : { $text }
meanwhile-reply = L’alerte est ouverte. Ce qu’écrit ici qui s’en occupe lui parvient mot pour mot.
alarm-news = UNE ALERTE EST OUVERTE pour { $runner } : { $kind }, { $when }. { $holder ->
    [none] On appelle d’autres personnes.
   *[other] { $holder } s’en occupe.
 }
news-stay =
    Tu n’as rien à faire maintenant : reste où tu es, téléphone allumé et sonnerie forte. Je te dis quand c’est fini.
    Si tu vois ou entends quelque chose de { $runner }, écris-le ici tout de suite.
news-at-point =
    Si { $runner } arrive à { $place } : garde-la là, écris ici ‘{ $bib } in’ et préviens { $name }, { $phone }.
    Je te dis quand c’est fini.
news-danger = Si tu la trouves en danger : { $emergency } d’abord.
unreached-kind-your-call-for-help = a appelé à l’aide et ne sait pas qui s’en occupe
alarm-sweep = ALERTE : SERRE-FILE PASSÉ À { $place }, et { $runner } n’y a pas été vue.
alarm-look-again = À REVOIR : { $runner }, l’alerte est toujours ouverte. { $name ->
    [none] Que sait-on maintenant ?
   *[other] { $name }, que sait-on maintenant ?
 }
alarm-handed-on = L’ALERTE PASSE À TOI : { $runner }. Ceux appelés avant toi ne l’ont pas prise.
alarm-handed-on-held = L’ALERTE PASSE À TOI : { $runner }. { $name } l’a, mais ne répond plus.
alarm-given-back = { $name } ne peut plus : PLUS PERSONNE N’A L’ALERTE pour { $runner }. Les suivants sont appelés.
alarm-handed-on-back = L’ALERTE PASSE À TOI : { $runner }. { $name } l’avait et ne peut plus.
alarm-taken = { $name } A PRIS L’ALERTE pour { $runner } : tu n’as plus à répondre.
alarm-taken-call = { $name } A PRIS L’ALERTE pour { $runner }. C’est toujours TOI qui appelles la direction de course.
alarm-call-instead = Qui devait appeler la direction de course pour { $runner } ne peut pas, ou ne répond pas : tu as l’alerte, donc c’est TOI qui appelles.
alarm-answer = Réponds ‘je m'en occupe’ et c’est à toi ; sans réponse dans { $length }, la personne suivante est appelée.
alarm-held-you = Tu as cette alerte. Prochain point : { $when }.
alarm-held-you-now = Tu as cette alerte. Réponds ‘vue’ ou ‘toujours disparue’, ou écris ce que tu sais.
alarm-held = { $name } a cette alerte. Prochain point : { $when }.
alarm-held-untimed = { $name } a cette alerte.
alarm-call-you = C’est TOI qui appelles maintenant : { $name }, { $phone }. Personne d’autre ne le fait.
alarm-call-other = { $caller } appelle la direction de course.
alarm-call-in-place = { $caller }, qui doit appeler la direction de course, N’A PAS RÉPONDU. Prends l’alerte, et c’est TOI qui appelles : { $name }, { $phone }.
alarm-call-none = Personne n’est désigné pour appeler la direction de course. Qui répond appelle { $name }, { $phone }.
alarm-call-not-needed = La direction de course l’a elle-même : personne n’a à l’appeler.
alarm-words = Mot pour mot : ‘{ $words }’
alarm-not-named = PAS DIT POUR QUI : { $who } suit plusieurs coureuses, et cette alerte vaut pour chacune jusqu’à ce que { $who } dise laquelle. Demande à { $who }{ $phone ->
    [none] .
   *[other] {" : "}{ $phone }.
 }
alarm-named = { $name } dit maintenant : l’appel à l’aide est pour { $runner }. L’alerte pour elle est ouverte.
alarm-fact = FAIT, dernière information : { $fact } { $when } ({ $ago }), signalé par { $who }{ $place ->
    [none] .
   *[other] {" : "}{ $place }.
 }
alarm-unconfirmed = NON CONFIRMÉ, peut être vrai : { $fact } { $when } ({ $ago }), signalé par { $who }. Demande-lui.
unnamed = ALERTE : APPEL À L’AIDE de { $who }, PAS DIT POUR QUELLE COUREUSE.
unnamed-ask = Appelle { $who } et demande qui a besoin d’aide et où{ $phone ->
    [none] .
   *[other] {" : "}{ $phone }.
} L’appel est venu { $when }.
unnamed-to = Envoyé à : { $names }.
unnamed-held = { $name } s’en occupe et cherche de qui il s’agit.
unnamed-held-you = Tu t’en occupes : cherche de qui il s’agit. Sa propre alerte part quand qui a appelé la nomme, ou quand tu écris ‘Nom a besoin d'aide’. Si ce n’était rien, termine avec le bouton.
alarm-answer-unnamed = Réponds ‘je m'en occupe’ et c’est à toi. Tu seras rappelé jusqu’à ce que quelqu’un l’ait.
unnamed-meant = { $name } dit maintenant : l’appel à l’aide est pour { $runner }{ $bib ->
    [none] {""}
   *[other] {" (dossard "}{ $bib }{")"}
}. Sa propre alerte est partie.
unnamed-over = FIN D’ALERTE : l’appel à l’aide de { $who } a été annulé{ $name ->
    [none] .
   *[other] {", par "}{ $name }.
}
alarm-help-ends = L’alerte finit quand qui l’a avec soi écrit ‘on l'a avec nous’ et le confirme, ou quand le contact sécurité ou l’organisateur écrit ‘fin d'alerte’.
alarm-help-seen = { $runner } a été vue depuis. Demande si elle a encore besoin d’aide. ‘on l'a avec nous’, confirmé, termine ceci, ou ‘fin d'alerte’ du contact sécurité ou de l’organisateur.
alarm-said-km = D’APRÈS L’APPEL elle est au { $km }{ $place ->
    [none] .
   *[other] {" : "}{ $place }.
 }
alarm-heard-since = ENTENDU DEPUIS, lieu inconnu : { $when } ({ $ago }), { $who } : ‘{ $words }’.
alarm-contact-lost = FAIT : la position qu’elle partageait s’est arrêtée { $when } ({ $ago }), et plus rien depuis. Son téléphone peut être vide, éteint ou sans réseau ; cela ne dit rien d’elle.
alarm-race-over = Sa course était finie { $when } : où elle est allée ensuite, je ne peux pas le calculer.
alarm-had-her = FAIT : { $who } a écrit { $when } ({ $ago }) que quelqu’un l’avait. Demande d’abord à { $who } où elle est.
alarm-had-her-you = FAIT : tu as écrit { $when } ({ $ago }) que quelqu’un l’avait. Où est-elle maintenant ?
alarm-not-there = FAIT : { $fact }, { $when } ({ $ago }), signalé par { $who }{ $phone ->
    [none] .
   *[other] {", "}{ $phone }.
 }
alarm-fact-none = FAIT : elle n’a été vue à aucun point depuis le départ à { $when }.
alarm-expected = Attendue à { $place } : { $window }.
alarm-why-alarm-line = Pourquoi maintenant : un si long silence est très rare quand tout va bien.
alarm-why-alarm-line-far = Pourquoi seulement maintenant, { $length } après l’heure probable : les nouvelles tardent et les passages lents sont fréquents ; plus tôt, la plupart de ces alertes seraient fausses.
alarm-why-odds = Pourquoi maintenant : ceux qui l’auraient signalée ne l’ont pas fait ; sa course s’est plus probablement arrêtée en chemin.
alarm-why-finish = Pourquoi maintenant : elle devrait être à l’arrivée, quel que soit celui qui signale.
alarm-why-limit = Pourquoi maintenant : son temps de course est écoulé, et personne ne l’a vue depuis. Ce n’est pas la durée du silence.
alarm-why-told-missing = Pourquoi maintenant : on a dit qu’elle n’était pas encore là alors qu’elle aurait presque sûrement dû y être.
alarm-asked = Demandé aussi à : { $names }.
alarm-no-word = Pas de réponse de { $names }, à qui on a demandé { $when } si elle est arrivée.
alarm-told = Prévenus aussi : { $names }.
alarm-estimate = ESTIMATION, PAS VUE : entre { $low } et { $high } du parcours, plutôt vers { $likely }.
alarm-estimate-place = Lieu le plus probable de cette estimation : { $place }.
alarm-may-be = Elle est peut-être seulement non signalée, ou hors du parcours :
alarm-may-unreported-nobody = - personne ne signale depuis { $place } ;
alarm-may-unreported = - { $place } est signalé par { $by }, et toutes ne sont pas vues ;
alarm-may-delay = - les nouvelles de { $place } peuvent arriver { $length } plus tard ;
alarm-may-signal = - pas de réseau entre { $from } et { $to } ;
alarm-may-signal-point = - mauvais réseau à { $place } ;
alarm-may-phone = - téléphone vide, mouillé ou éteint ;
alarm-may-resting = - elle se repose ou dort au bord, ou dans un abri ;
alarm-may-off = - hors du parcours par erreur, ou abandon en chemin et prise par d’autres ;
alarm-may-escape = - descendue par l’échappatoire : { $route }.
by-timing-mat = un tapis de chronométrage
by-volunteer = des bénévoles
by-crew = l’équipe
by-runner = la coureuse
by-tracker = une balise
alarm-bib = Dossard { $bib }.
alarm-her = Téléphone { $phone }. Vêtements : { $clothing }. Lampe : { $torch }. { $pacer }.
alarm-pacer = Accompagnateur avec elle : { $name }
alarm-no-pacer = Aucun accompagnateur connu avec elle
not-known = inconnu
alarm-numbers = { $name } : { $phone }. Urgences : { $emergency }.
alarm-numbers-rescue = { $name } : { $phone }.
alarm-read-out = À lire à voix haute :
read-out-who = « Il s’agit de la coureuse { $runner }{ $bib ->
    [none] {""}
   *[other] {", dossard "}{ $bib }
 }, dans { $event }.
read-out-not-named = Qui a appelé n’a pas encore dit laquelle de plusieurs coureuses a besoin d’aide.
read-out-last = Dernière information : { $fact }, { $when }, heure locale, signalé par { $who }.
read-out-heard = { $when }, heure locale, { $who } a donné des nouvelles, sans lieu : ‘{ $words }’.
read-out-last-place = Ce lieu : { $place }.
read-out-last-km = C’est { $km } après le départ.
read-out-not-there = { $when }, heure locale, { $who } a dit qu’elle n’était pas encore à { $place }.
read-out-over = Sa course était finie { $when }, heure locale.
read-out-had-her = { $when }, heure locale, { $who } a dit que quelqu’un l’avait.
read-out-none = Elle n’a été vue à aucun point depuis son départ { $when }, heure locale.
read-out-expected = Elle était attendue à { $place }, le plus probablement { $likely } ; à { $late }, heure locale, elle y aurait été 9 fois sur 10.
read-out-help = Elle a demandé de l’aide{ $words ->
    [none] .
   *[other] {" avec ces mots : "}{ $words }.
 }
read-out-estimate = Estimation, pas vue : elle est peut-être près de { $place }.
read-out-her = Vêtements : { $clothing }. Lampe : { $torch }. Son téléphone : { $phone }. »
alarm-cautions =
    Stilepost est une aide, pas un service de secours : numéro d’urgence, direction de course et secours en montagne décident.
    Ne va pas sur le parcours seul ou de nuit pour la chercher. Garde ce téléphone chargé et libre.
stand-down = FIN D’ALERTE : l’alerte pour { $runner } est finie ({ $of_kind }).
stand-down-seen = FIN D’ALERTE : { $runner } a été vue à { $place }, { $when }, signalé par { $by }.
stand-down-why = Pourquoi : { $reason }. Par { $by }, { $when }.
stand-down-thanks = Plus rien à faire. Si tu as appelé quelqu’un, préviens-le aussi.
stand-down-reason-seen = vue
stand-down-reason-stand-down = levée à la main
stand-down-reason-taken-back = la nouvelle derrière elle a été annulée
stand-down-reason-meant = l’appel à l’aide était pour { $other }
stand-down-reason-in-hand = quelqu’un l’a avec soi
stand-down-reason-retired = sa course est finie, abandon
stand-down-reason-finished = à l’arrivée
stand-down-reason-other = { $reason }
alarm-kind-overdue = sans nouvelles
alarm-kind-asked-for-help = a demandé de l’aide
alarm-kind-sweep = serre-file passé sans elle
alarm-kind-other = alerte
test-alarm = ALERTE D’ESSAI, il n’est rien arrivé. Réponds ‘je m'en occupe’ avant { $when }.
test-alarm-why = Laisse ce téléphone comme il sera la nuit : chargé, sonnerie forte, sur la table. Qui ne répond pas est montré à l’organisateur.
unreached = IMPOSSIBLE DE JOINDRE { $name } ({ $what }) depuis { $when }. Essayé : { $channels }. Appelle, s’il te plaît.
unreached-silent = PAS DE RÉPONSE de { $name } ({ $what }) depuis { $when }. Appelle, s’il te plaît.
unreached-kind-leave-now = partir maintenant
unreached-kind-late = question si elle est arrivée
unreached-kind-wake-up = réveil
unreached-kind-test-alarm = alerte d’essai
unreached-phone = { $name } : { $phone }.
outage-open = EN PANNE depuis { $when } : { $what }. Les nouvelles par là tardent ; le silence de ceux qui l’utilisent ne déclenche rien pendant ce temps. Appelle-les.
outage-open-out = EN PANNE depuis { $when } : { $what }. Les messages par là attendent, ou passent par la voie suivante.
outage-over = { $what } était en panne de { $from } à { $to } ({ $length }). Ce qui attendait est lu ; les heures sont recalculées.
outage-over-out = { $what } était en panne de { $from } à { $to } ({ $length }). Ce qui attendait part maintenant.
outage-what-server = notre serveur ou sa base de données
outage-what-telegram = notre robot Telegram
outage-what-email = notre courriel
outage-what-text = nos SMS
outage-what-webhook = notre webhook
outage-what-other = notre canal { $name }
distress = Es-tu blessée ? Appelle { $emergency }. { $name } : { $phone }.
distress-for-her = Est-elle blessée ? Appelle { $emergency }. { $name } : { $phone }.
distress-passed-on = Tes mots sont allés à ton équipe et à ton contact sécurité{ $count ->
    [0] .
   *[other] {" : "}{ $names }.
 }
distress-reaches-nobody = C’est écrit, mais cela n’a atteint PERSONNE : personne n’est connecté. Téléphone, s’il te plaît.
distress-not-passed-on = Je n’ai PAS pu transmettre tes mots. Téléphone, s’il te plaît.
distress-whose = Tu n’as pas dit quelle coureuse : l’alerte est lancée pour { $names }. Laquelle est-ce ?
distress-which = Tu n’as pas dit quelle coureuse. Écris son nom ou son numéro maintenant, ou appuie : sa propre alerte part alors.
distress-named = Pour { $runner } : sa propre alerte est lancée.
distress-about = L’alerte est pour { $runner }, dont on parlait avant. Si une autre coureuse a besoin d’aide, écris-le tout de suite avec son nom.
distress-meant = Pour { $runner } : son alerte reste ouverte. Annulée pour { $others }.
distress-meant-all = Les alertes restent ouvertes pour { $names }.
distress-joins = Une alerte à ce sujet est déjà ouverte : ceci l’a rejointe. { $holder ->
    [none] PERSONNE N’A ENCORE RÉPONDU : appelle { $emergency }.
   *[other] { $holder } s’en occupe.
 }
now-holder = TU AS L’ALERTE pour { $runner }.
now-control = 1. Appelle { $name } maintenant, { $phone }, si ce n’est pas fait. ‘que leur dire’ te donne les mots.
now-control-other = 1. { $caller } doit appeler { $name } ; appelle toi-même { $phone } si tu n’es pas sûr que ce soit fait.
now-ring = 2. Appelle { $who }{ $phone ->
    [none] {""}
   *[other] {", "}{ $phone }
 } : où, quoi, qui est avec elle ?
now-write = 3. Écris ici ce que tu fais : cela va à elle et à qui a appelé, mot pour mot. Si tu ne peux plus, écris ‘je ne peux pas’.
now-look = 2. Écris ici ce que tu apprends. Si tu ne peux plus, écris ‘je ne peux pas’.
now-ends = Cela finit quand qui l’a avec soi écrit ‘on l'a avec nous’ et le confirme, ou par ‘fin d'alerte’ du contact sécurité ou de l’organisateur.
now-asked = Personne n’a l’alerte pour { $runner }. Peux-tu t’en occuper ? Écris ‘je m'en occupe’ ; sinon ‘je ne peux pas’.
now-asked-held = { $name } a l’alerte pour { $runner }. Reste joignable ; ce que tu sais d’elle, écris-le ici, cela va à { $name }.
now-call =
    Appelle { $emergency } TOUT DE SUITE si elle ne se réveille pas ou ne respire pas normalement, convulse ou a mal à la poitrine, si son visage ou sa langue gonfle,
    si elle est brûlante ou glacée et confuse, faible d’un côté, ou si un saignement ne s’arrête pas.
now-call-own =
    Appelle { $emergency } TOUT DE SUITE si tu as du mal à respirer, mal à la poitrine ou as eu des convulsions, si ton visage ou ta langue gonfle,
    si tu as très chaud ou très froid et n’arrives plus à penser clairement, si tu es faible d’un côté, ou si un saignement ne s’arrête pas.
now-call-unsure = Si tu n’es pas sûr : appelle { $emergency }. Tu n’as besoin de la permission de personne, et un appel de trop ne fait pas de mal.
now-call-open = Aussi si personne n’a répondu ici, ou si personne ne peut être bientôt près d’elle.
now-call-open-own = Aussi si personne n’a répondu ici, ou si personne ne peut être bientôt près de toi.
now-call-then = Ensuite { $name } : { $phone }.
now-tell = Lis ceci ; dis d’abord où tu es toi-même et ce que tu vois.
now-tell-less = Son nom et son numéro, où elle est, ce qui est arrivé, si elle se réveille et respire normalement, qui est avec elle, ton propre numéro.
distress-where = Si tu peux, envoie ta position ou écris où tu es. Garde-toi au chaud ; reste sur le parcours si c’est sûr.
distress-not-hurt = Si ce n’est rien, écris ‘annuler’.
grave = Si elle ou quelqu’un près de toi est en danger, appelle { $emergency } maintenant. { $name } : { $phone }. Les secouristes décident si elle continue.
grave-own = Si tu es en danger appelle { $emergency } maintenant. { $name } : { $phone }. Les secouristes décident si tu continues.
grave-help = Si tous doivent le savoir tout de suite, écris ‘elle a besoin d'aide’.
grave-help-own = Si tous doivent le savoir tout de suite, écris ‘au secours’.
