# Ce qui ne va pas dans un fichier, et que faire : `wrong-` et `do-`. Les valeurs sont telles que dans le fichier.

### event

## any key
wrong-missing = ‘{ $key }’ manque
wrong-no-text = { $value } n’est pas un texte
do-put-quotes = Mets-le entre guillemets : { $key } = "{ $value }".
wrong-text-holds-control-character-u = le texte contient le caractère de commande U+{ $character }
do-type-text-anew = Retape le texte.
wrong-text-characters = le texte a { $count } caractères
do-keep-it-to = Tiens-toi à { $most }.
wrong-text-more-line = le texte a plus d’une ligne
do-write-line = Écris-le sur une ligne.
wrong-no-number = { $value } n’est pas un nombre
wrong-number-outside = { $value } n’est pas entre { $low } et { $high }
do-give-within-range = Donne { $key } dans ces limites.
wrong-no-whole-number = { $value } n’est pas un nombre entier
do-write-without-decimals = Écris-le sans décimales.
wrong-neither-true-nor-false = { $value } n’est ni true ni false
do-write-true-false-without-quotes = Écris true ou false, sans guillemets.
do-write-hours-minutes = Écris heures et minutes, comme "29:00".
wrong-no-list-texts = { $value } n’est pas une liste de textes
do-write-list-of-texts = Écris { $key } = ["...", "..."].
do-write-own-line-below = Écris { $key } = {"{"} ... {"}"}, ou [{ $head }] sur sa propre ligne sous le [[{ $listed }]] dont elle fait partie.
do-begin-each-own-line-below = Commence chacune par [[{ $head }]] sur sa propre ligne sous le [[{ $listed }]] dont elle fait partie.
do-write-own-line = Écris [{ $key }] sur sa propre ligne, ou { $key } = {"{"} ... {"}"}.
wrong-no-list-tables = ‘{ $key }’ n’est pas une liste de tables
do-begin-each-own-line = Commence chacune par [[{ $head }]] sur sa propre ligne.
wrong-too-many = { $count } { $key } sont trop
do-keep-them = Tiens-toi à { $most }.
wrong-time-out-range = l’heure est hors du possible
wrong-key-not-known = la clé ‘{ $key }’ n’est pas connue
do-did-mean = Voulais-tu dire ‘{ $near }’ ?
do-known-here = Connus ici : { $known }.
do-stilepost-keys-says-what-each = `stilepost keys { $table }` dit ce que chacun veut dire.
do-write = Écris l’un de : { $words }.
do-use = Prends l’un de : { $known }.
wrong-not-known-here = ‘{ $word }’ n’est pas connu ici
wrong-no-table = { $value } n’est pas une table

## times
wrong-no-length-time = ‘{ $text }’ n’est pas une durée
do-write-hours-minutes-29-00 = Écris heures et minutes, comme "29:00" ou "6:30".
wrong-no-pace = ‘{ $text }’ n’est pas une allure
do-write-minutes-seconds-per-km-10 = Écris minutes et secondes par km, comme "10:50", ou par mile, comme "14:00/mile".
wrong-text-no-time-of-day = ‘{ $text }’ n’est pas une heure
wrong-no-time-day = { $value } n’est pas une heure
do-write-22-00 = Écris { $key } = "22:00".
do-write-hours-minutes-09-30 = Écris heures et minutes, comme "09:30" ou "21:05".
do-write-11-30-sun-11 = Écris "11:30", "Sun 11:30" ou une date avec l’heure comme 2027-06-20T11:30.
wrong-no-moment = ‘{ $text }’ n’est pas un moment
wrong-does-not-exist-clocks-go = { $wall } n’existe pas à { $zone } : les horloges avancent par-dessus
do-take-time-before-after-hour = Prends une heure avant ou après celle qui est sautée.
wrong-comes-twice-clocks-go-back = { $wall } vient deux fois à { $zone } quand les horloges reculent ; la première est prise
do-if-second-meant-write = Si la seconde est voulue, écris { $key } = { $offset }.
do-write-without-quotes = Écris { $key } = { $meant }, sans guillemets.
do-write-date-time-without-quotes = Écris date et heure sans guillemets, comme { $key } = { $example }.
do-add-time-day-t05-00 = Ajoute l’heure : { $key } = { $value }T05:00, c’est cinq heures du matin.
wrong-no-date-time = { $value } n’est pas une date avec l’heure
wrong-year-cannot-right = l’année { $year } ne peut pas être juste
do-check-year = Vérifie l’année.

## the file as such
wrong-file-characters = le fichier a { $count } caractères
do-event-file-most-route = Un fichier de course en a au plus { $most } : est-ce la trace ?
wrong-brackets-nested-too-deep = les crochets sont emboîtés trop profond
wrong-value-impossible = une valeur est impossible : { $error }
do-compare-example-file = Compare avec le fichier d’exemple.
do-compare-line-example-file-quotes = Compare la ligne avec le fichier d’exemple : guillemets, crochets, virgules.
wrong-telephone-number-stands-without-quotes = le numéro de téléphone { $value } est sans guillemets
do-put-quotes-country-code = Mets-le entre guillemets, avec l’indicatif du pays, comme { $key } = "{ $abroad }".
wrong-date-written-another-way-file = la date { $value } est écrite autrement que dans ce fichier
do-write-moment = Écris { $key } = { $moment }.
wrong-no-day-time = { $value } n’existe pas comme jour ou heure
do-check-day-hour-minute-2027 = Vérifie jour, heure et minute : { $key } = 2027-06-19T05:00.
do-use-straight-quotes-not-curly = Prends des guillemets droits, " et ", pas courbes.
do-key-table-already-keep-use = Cette clé ou table est déjà là : garde l’une, ou prends [[...]] pour une liste de tables.
do-write-decimals-point-21-3 = Écris les décimales avec un point : 21.3.
do-put-times-lengths-quotes-29 = Mets heures et durées entre guillemets : "29:00".
do-write-minutes = Écris les minutes comme un nombre : { $key } = { $minutes }
do-put-words-quotes-name-skelter = Mets les mots entre guillemets : name = "Skelter Mill". true et false restent sans.
do-quote-missing = Il manque un guillemet.
do-each-line-key-value-heading = Chaque ligne est clé = valeur, un [titre], ou une remarque après "#".
wrong-no-event-table = il n’y a pas de table [event]
do-begin-file-event-name-starts = Commence le fichier par [event], name, starts, time_zone.
do-give-race-name-name-long = Donne un nom à la course, comme name = "The Long Stile Hundred".
wrong-no-emergency-number-given-112 = aucun numéro d’urgence n’est donné, 112 est pris
do-write-emergency-number-112-what = Écris emergency_number = "112", ou ce qui vaut là où est la course.
do-say-where-race-time-zone = Dis où est la course : time_zone = "Europe/London".
do-say-when-starts-2027-06 = Dis quand : starts = 2027-06-19T05:00 (heure locale).
wrong-nobody-knows-how-reach-race = personne ne sait comment joindre la direction de course
wrong-no-race-control = il n’y a pas de direction de course
do-add-race-control-name-phone = Ajoute [race_control] avec name et phone.
do-give-telephone-number = [{ $table }] a besoin d’un numéro de téléphone.
wrong-not-among-people-nothing-can = { $name } n’est pas parmi les [[people]] : rien ne peut lui être envoyé
do-add-people-name-phone = Ajoute [[people]] avec name = "{ $name }" et son phone.

## points
wrong-id-cannot-used = l’id ‘{ $given }’ ne peut pas servir
do-use-small-letters-digits-hyphens = Prends des minuscules, chiffres et traits d’union, comme ‘{ $value }’.
do-name-gpx-file-stands-beside = Nomme le fichier GPX à côté de celui-ci : route = "route.gpx".
wrong-event-names-route-so-do = [event] nomme une trace et les [[courses]] aussi
wrong-no-course = il n’y a pas de parcours ‘{ $course }’
do-known = Connus : { $ids }.
do-several-courses-say = Il y a plusieurs parcours : dis lequel ({ $course_ids }).
do-give-point-name-name-skelter = Donne un nom au point, comme name = "Skelter Mill".
do-give-distance-km-21-3 = Donne sa distance, km = 21.3, ou un repère de la trace, waypoint = "Mill".
wrong-crew-may-come-here-but = l’équipe peut venir ici, mais rien ne dit où se garer
do-add-crew-parking-walk-minutes = Ajoute crew = {"{"} parking = "...", walk_in_minutes = 5 {"}"}.
do-say-when-cut-off-when = Dis quand : cut_off = {"{"} when = "out", clock = "Sun 11:30" {"}"}.
wrong-next-stage-starts-before-race = l’étape suivante part avant la course
do-give-weekday-sun-07-00 = Donne le jour de la semaine, comme "Sun 07:00".
wrong-stage-ends-here-stays-until = une étape finit ici, et elle reste jusqu’à la suivante
do-leave-stop-minutes-out = Laisse stop_minutes.
wrong-cut-off-cut-offs = il y a cut_off et cut_offs
do-put-them-all-into-cut = Mets tout dans cut_offs.
wrong-two-cut-offs-same-moment = deux barrières horaires pour le même moment
do-keep-out = Garde une pour "in" et une pour "out".
do-say-whether-must-out-then = Dis si elle doit être arrivée ou repartie : when = "in" ou when = "out".
wrong-cut-off-clock-elapsed = une barrière horaire a clock et elapsed
wrong-cut-off-no-time = une barrière horaire n’a pas d’heure
do-give-clock-sun-11-30 = Donne l’un : clock = "Sun 11:30" (heure du jour) ou elapsed = "6:30" (depuis son départ).
wrong-closes-before-opens = cela ferme avant d’ouvrir
do-check-two-times-weekday = Vérifie les deux heures, avec le jour.
do-give-both-none = Donne les deux ou aucun.
do-say-reports-volunteer-crew-timing = Dis qui signale : by = "volunteer" (ou "crew", "timing mat", "runner", "tracker", "nobody").
wrong-chance-0-nobody = une chance de 0, c’est personne
wrong-chance-missing = ‘chance’ manque
do-write-how-surely-reported-above = Écris combien il est sûr qu’on la signale, au-dessus de 0 jusqu’à 1, comme chance = 0.9.
do-say-where-begins-from-km = Dis où il commence : from_km = 60.
do-say-where-ends-km-78 = Dis où il finit : to_km = 78.
wrong-stretch-ends-km-before-begins = le passage finit au km { $to_km }, avant de commencer
do-check-from-km-km = Vérifie from_km et to_km.

## points together
wrong-id-used-twice-first-line = l’id ‘{ $thing_id }’ sert deux fois dans { $kind } (d’abord à la ligne { $line })
do-give-its-own-id = Donne à celui-ci le sien : id = "{ $thing_id }-2".
do-place-passed-twice-two-points = Un lieu où l’on vient deux fois est deux points, dont un seul est le bout.
do-list-points-running-order = Mets les points dans l’ordre de la course.
wrong-course-needs-two-points-least = un parcours a besoin d’au moins deux points
do-add-points = Ajoute [[points]].
wrong-also-name-line = ‘{ $name }’ est aussi un nom de ‘{ $name2 }’ (ligne { $line })
do-people-must-able-tell-two = On doit pouvoir les distinguer : appelle-les aller et retour, ou premier et second.
wrong-easily-mixed-up = ‘{ $name }’ et ‘{ $name2 }’ se confondent facilement
do-choose-names-differ-more = Choisis des noms plus différents.
wrong-crew-report-from-where-they = l’équipe doit signaler depuis ‘{ $name }’, où elle n’a pas accès
do-add-crew-another-reporter = Ajoute crew = {"{"} ... {"}"} ou quelqu’un d’autre qui signale.
wrong-nobody-reports-from-any-point = personne ne signale d’aucun point, donc le silence ne donnerait jamais d’alerte
do-say-reports-reports-volunteer-chance = Dis qui signale : reports = [ {"{"} by = "volunteer", chance = 0.9 {"}"} ].
wrong-cut-off-before-start = la barrière horaire à ‘{ $name }’ est avant le départ
do-check-day-time = Vérifie le jour et l’heure.
wrong-cut-off-after-time-limit = la barrière horaire à ‘{ $name }’ est après le temps limite
do-check-limit-event = Vérifie-la, et limit dans [event].
wrong-must-out-before-must = à ‘{ $name }’ elle doit être repartie avant de devoir être arrivée
wrong-cut-off-earlier-before = la barrière horaire à ‘{ $name }’ est plus tôt que celle d’avant, à ‘{ $name2 }’
do-check-both-order-points = Vérifie les deux, et l’ordre des points.
wrong-no-stage-ends-start-none = aucune étape ne finit au départ, et aucune ne suit l’arrivée
do-give-next-stage-points-where = Donne next_stage aux points où il y a une nuit entre deux.
wrong-stage-after-starts-before-before = l’étape après ‘{ $name }’ part avant la précédente
do-give-each-stage-own-day = Donne à chaque étape son jour, dans l’ordre de la course.
wrong-cut-off-before-stage-leads = la barrière horaire à ‘{ $name }’ est avant le départ de l’étape qui y mène
do-check-day-time-next-stage = Vérifie le jour et l’heure, et next_stage du point d’avant.
wrong-nobody-out-cut-off-next = personne n’est reparti de ‘{ $name }’ à la barrière horaire : l’étape suivante part après
do-write-when-time-not-before = Écris when = "in", ou une heure pas avant next_stage.
wrong-stage-after-starts-before-cut = l’étape après ‘{ $name }’ part avant la barrière horaire là-bas
do-check-day-time-those-cut = Vérifie le jour et l’heure, et ceux de la barrière horaire.
wrong-crew-access-closes-before-start = l’accès de l’équipe à ‘{ $name }’ ferme avant le départ
do-give-weekday-sun-14-00 = Donne le jour de la semaine, comme "Sun 14:00".
wrong-crew-access-opens-after-race = l’accès de l’équipe à ‘{ $name }’ ouvre après la fin de la course
wrong-no-runner = il n’y a pas de coureuse
do-add-runners-name-target = Ajoute [[runners]] avec name et target.
wrong-also-runner = { $key } ‘{ $value }’ est aussi celui de la coureuse ‘{ $seen }’
do-reports-could-not-told-apart = On ne distinguerait pas ce qui est signalé : rends-les différents.
do-add-people-id = Ajoute [[people]] avec id = "{ $person }".
wrong-no-person-people = il n’y a pas de personne ‘{ $person }’ dans [[people]]
wrong-starts-more-day-before-event = { $name } part plus d’un jour avant la course, ou des semaines après
do-check-start-event = Vérifie son départ et celui de la course.
wrong-personal-data-would-blanked-before = les données personnelles seraient effacées avant la fin de la course
do-give-day-after-race = Donne un jour après la course.
wrong-km-stands-after-km = ‘{ $name }’ au km { $km } vient après ‘{ $last_name }’ au km { $last_km }
do-list-points-running-order-each = Mets les points dans l’ordre de la course, chacun plus loin.
wrong-stretch-ends-km-finish-km = le passage finit au km { $to_km }, l’arrivée est au km { $finish_km }
do-check-km = Vérifie les km.
wrong-lies-beyond-course-finish-km = { $key } = { $km } est au-delà du parcours, l’arrivée est au km { $finish_km }
wrong-paces-from-km-but-rules = { $name } accompagne depuis le km { $from_km }, mais le règlement permet les accompagnateurs depuis le km { $allowed_km }
do-choose-later-point-pace-from = Choisis un point plus tard pour pace_from.
wrong-pace-comes-before-pace-from = pace_to vient avant pace_from
do-exchange-two-correct = Échange les deux, ou corrige l’un.
wrong-pacer-joins-km-but-rules = un accompagnateur rejoint au km { $km }, mais le règlement les permet depuis le km { $allowed_km }
do-let-pacer-join-later-meeting = Fais rejoindre l’accompagnateur à un rendez-vous plus tard.
wrong-pacers-would-rules-allow = { $count } accompagnateurs seraient avec elle, le règlement en permet { $pacers_at_once }
do-say-where-before-leaves-pacer = Dis où le précédent s’arrête : pacer_leaves.

## people
do-give-runner-name-name-maren = Donne un nom à la coureuse, comme name = "Maren".
do-give-target-finish-29-00 = Donne l’un : target = {"{"} finish = "29:00" {"}"}, {"{"} pace_all_in = "10:50" {"}"} ou {"{"} easy_pace = "6:30", margin = "1:30" {"}"} ; ou aucun, avec past_race ou own_runs à la place.
do-add-start-under-waves-known = Ajoute son départ sous [waves]{ $known ->
    [none] {"."}
   *[other] {" "}; connus : { $known }.
 }
wrong-no-wave = il n’y a pas de vague ‘{ $wave }’
do-write-minutes-seconds-per-km = Écris minutes et secondes par km.
wrong-several-forms-target-given = plusieurs formes de target sont données
wrong-target-empty = target est vide
wrong-easy-pace-margin-go-together = easy_pace et margin vont ensemble
do-say-from-point-from-start = Dis depuis quel point : from = "start".
wrong-no-telephone-number = ‘{ $text }’ n’est pas un numéro de téléphone
do-write-country-code-44-1632 = Écris-le avec l’indicatif du pays : "+44 1632 960001".
wrong-no-country-code = ‘{ $text }’ n’a pas d’indicatif de pays
do-write-from-abroad-44-1632 = Écris-le comme depuis l’étranger : "+44 1632 960001".
do-give-person-name-name-ana = Donne un nom à la personne, comme name = "Ana".
wrong-quiet-hours-need-both-ends = les heures de repos ont besoin d’un début et d’une fin
do-write-quiet-from-22-00 = Écris quiet = {"{"} from = "22:00", to = "06:00" {"}"}.
do-write-area-city-europe-london = Écris région et ville, comme "Europe/London".
wrong-no-time-zone = ‘{ $name }’ n’est pas un fuseau horaire
do-check-what-follows = Vérifie le @ et ce qui suit.
do-write-whole-beginning-https = Écris-la entière, en commençant par https://.
wrong-no-channel = il n’y a pas de canal ‘{ $name }’
wrong-channel-named-twice = un canal est nommé deux fois
do-name-each-once-order-try = Nomme chacun une fois, dans l’ordre des essais.
wrong-channel-no-address = le canal ‘{ $name }’ n’a pas d’adresse
do-add-take-out-channels = Ajoute { $name } = ... ou retire-le de channels.
do-say-what-person = Dis ce qu’est cette personne : { $kinds }.
do-say-where-drive-begins-from = Dis où le trajet commence : from = "start".
do-say-where-drive-ends-mill = Dis où le trajet finit : to = "mill".
do-say-where-point-mill = Dis où : point = "mill".
do-name-trouble-trouble-hot-spot = Nomme l’ennui : trouble = "hot spot on a foot".
wrong-no-list = { $key } n’est pas une liste
do-write-poles-name-torch-hours = Écris { $key } = ["poles", {"{"} name = "torch", hours = 9 {"}"}].
wrong-two-bags-wait-at = deux de ses sacs attendent à ‘{ $point }’
do-put-all-into-one-bag = Mets tout dans un seul : ce qu’elle mange à partir de là est écrit sur chaque étiquette.
wrong-no-point-drop-bags = « { $point } » n’est pas un point à sacs
do-ask-race-then-add-drop = Demande à l’organisateur ; puis ajoute "drop bag" aux kinds de ce point, ou envoie le sac ailleurs.
do-correct-per-h-or-what-one-holds = Corrige per_h, ou ce que contient une des choses.
wrong-eaten-twice = « { $name } » figure deux fois dans un de ses plans fuel
do-write-it-once-added-up = Écris-le une fois, avec per_h additionné.
wrong-mg-hardly-any = { $mg } mg dans une seule, c’est presque rien
do-write-milligrams = Écris des milligrammes, pas des grammes : { $key } = 300.
wrong-two-fuel-plans-begin = deux de ses plans fuel commencent à « { $from_point } »
do-join-them-into-let-begin = Fais-en un seul, ou fais commencer l’un à un point plus loin.
wrong-ml-hour-not-even-sip = { $fluid_ml_per_h } ml par heure ne font même pas une gorgée
do-write-millilitres-not-litres-fluid = Écris des millilitres, pas des litres : fluid_ml_per_h = 500.
do-say-where-bag-waits-point = Dis où le sac attend : point = "mill".
wrong-time-zone-hours-from-suns = le fuseau { $time_zone } est à { $apart_h } heures de l’heure solaire du parcours
do-check-time-zone-route-right = Vérifie time_zone, et que le parcours est le bon : il commence à la longitude { $lon }.
do-say-when-bad-when-second = Dis quand ça va mal : when = "la deuxième nuit".
do-write-what-wants-told-words = Écris ce qu’elle veut entendre : words = "gauche, droite, compter".
do-name-name-gel-per-h = Nomme-le : {"{"} name = "gel", per_h = 1 {"}"}.
do-say-how-many-hour-name = Dis combien par heure : {"{"} name = "gel", per_h = 1 {"}"}.
do-name-item-name-head-torch = Nomme la chose : {"{"} name = "head torch" {"}"}.
wrong-no-people-named-plan-can = personne n’est nommé : un plan est possible, mais personne n’apprend rien
do-add-people-their-parts-ladder = Ajoute [[people]] avec leurs parts, l’un avec ladder = 1.
wrong-runner-cannot-answer-alarm-about = une coureuse ne peut pas répondre à une alerte sur elle-même
do-put-ladder-another-person = Mets ladder à une autre personne.
wrong-part-given-twice = le rôle ‘{ $value }’ est donné deux fois
do-keep-two = Garde l’un des deux.
wrong-no-crew-car-comes-how = aucune voiture de l’équipe ne vient à ‘{ $name }’ : comment repart de là qui y abandonne n’est pas dit
do-ask-race-add-transport-under = Demande à l’organisation, et ajoute transport = "..." là, ou sous [event] pour tous ces points.
wrong-alarm-about-would-reach-nobody = une alerte sur { $name } n’atteindrait personne : l’échelle est vide
do-give-somebodys-part-ladder-1 = Donne au rôle de quelqu’un ladder = 1.
do-give-person-part-kind-safety = Donne à une personne le rôle {"{"} kind = "safety contact", ladder = 1 {"}"}.
wrong-no-safety-contact = { $name } n’a pas de contact sécurité
wrong-step-ladder-also = la marche { $ladder } de l’échelle pour { $name } est aussi celle de ‘{ $person }’
do-both-told-once-number-them = Les deux l’apprennent en même temps ; numérote-les si ce n’est pas voulu.
wrong-nobody-call-race-control = personne ne doit appeler la direction de course
do-give-exactly-persons-part-calls = Donne au rôle d’exactement une personne calls_race_control = true.
wrong-both-call-race-control = ‘{ $person }’ et ‘{ $person2 }’ doivent tous deux appeler la direction de course
do-keep-person = Garde une personne.
wrong-call-race-control-but-no = { $name } doit appeler la direction de course, mais n’a pas de numéro de téléphone
do-add-phone = Ajoute phone.
wrong-ladder-but-no-way-reach = { $name } est sur l’échelle, mais n’est joignable par aucun moyen
do-add-phone-email-channels = Ajoute phone, email ou channels.
wrong-ladder-but-others-cannot-telephone = { $name } est sur l’échelle, mais les autres ne peuvent pas lui téléphoner
wrong-name = { $kind ->
    [car] la voiture ‘{ $name }’
    [person] la personne ‘{ $name }’
   *[place] le lieu ‘{ $name }’
 } a le nom de ‘{ $seen }’
do-people-could-mix-them-up = On pourrait les confondre : rends-les différents.

## drives, cars, meetings
wrong-drive-goes-from-itself = le trajet va de ‘{ $from_place }’ à lui-même
do-correct-from = Corrige from ou to.
wrong-drive-from-given-twice = le trajet de ‘{ $from_place }’ à ‘{ $to_place }’ est donné deux fois
do-keep = Garde l’un.
wrong-how-long-drive-from-takes = on ne dit pas combien dure le trajet de ‘{ $from_place }’ à ‘{ $to_place }’
do-add-minutes-35-without-no = Ajoute minutes = 35 ; sans cela il n’y a pas d’heure de départ.
wrong-nobody-confirmed-drive-from = personne n’a confirmé le trajet de ‘{ $from_place }’ à ‘{ $to_place }’
do-add-confirmed-once-person-checked = Ajoute confirmed_by = "..." dès que quelqu’un l’a vérifié ; jusque-là il n’y a pas d’heure de départ.
wrong-name-point = ‘{ $place }’ est le nom du point ‘{ $id }’
do-write-id = Écris son id : ‘{ $id }’.
wrong-no-point-place-but-much = ‘{ $place }’ n’est ni point ni lieu, mais ressemble à ‘{ $near }’
wrong-no-drive-leads-from = aucun trajet ne mène de ou vers ‘{ $place }’
do-add-under-drives-write-id = Ajoute-le sous [[drives]], ou écris l’id d’un point ou lieu.
wrong-met-twice = ‘{ $runner }’ est retrouvée deux fois à ‘{ $point }’
do-put-both-into-meeting = Mets les deux en un seul rendez-vous.
wrong-crew-no-access = l’équipe n’a pas accès à ‘{ $name }’
do-choose-another-point-add-crew = Choisis un autre point, ou ajoute ici crew = {"{"} ... {"}"}.
wrong-people-meet-where-allowed = { $count } personnes doivent la retrouver à ‘{ $name }’, où { $most } sont permises
do-name-fewer-people = Nomme moins de personnes.
wrong-meet-but-no-part-crew = ‘{ $person }’ doit la retrouver, mais n’a pas de rôle d’équipe ou d’accompagnateur
do-add-kind-crew-their-parts = Ajoute {"{"} kind = "crew" {"}"} à ses parts.
wrong-people-meet-rules-allow = { $count } personnes doivent la retrouver, le règlement en permet { $most }
wrong-nobody-named-go-meeting = personne n’est nommé pour aller à ce rendez-vous
do-add-crew = Ajoute crew = ["..."].
wrong-no-part-pacer = ‘{ $person }’ n’a pas de rôle d’accompagnateur
do-add-kind-pacer-their-parts = Ajoute {"{"} kind = "pacer" {"}"} à ses parts.
wrong-travels-does-not-go-meeting = ‘{ $name }’ voyage dans ‘{ $car }’, qui ne va pas à ce rendez-vous
do-put-into-car-goes = Mets-le dans une voiture qui y va.
wrong-people-go-seats = { $count } personnes vont dans ‘{ $car }’, qui a { $seats } places
do-check-seats-name-second-car = Vérifie les places, ou nomme une seconde voiture.
wrong-cars-used-rules-allow = { $count } voitures servent pour { $name } ({ $cars }), le règlement en permet { $most }
do-use-fewer-cars = Prends moins de voitures.
wrong-no-point-asks-permit = aucun point ne demande le permis ‘{ $name }’
do-permits-asked = Permis demandés : { $known }.
do-add-permit-crew-point = Ajoute permit = "..." à crew = {"{"} ... {"}"} d’un point.
wrong-crew-need-permit-nobody-says = l’équipe a besoin du permis ‘{ $permit }’ à ‘{ $name }’, et personne ne dit qui l’a
do-ask-race-then-write-permits = Demande à la course, puis écris permits = ["{ $permit }"] à la voiture, ou au rôle de qui l’a.
wrong-where-comes-from-not-said = on ne dit pas d’où vient ‘{ $id }’, donc pas d’heure de départ
do-add-from-here-starts-car = Ajoute ici from = ... ou starts_at = ... à la voiture.
wrong-no-drive-from-so-no = il n’y a pas de trajet de ‘{ $came_from }’ à ‘{ $here }’, donc ‘{ $id }’ n’a pas d’heure de départ
do-add-under-drives = Ajoute-le sous [[drives]].

## movements, shares
do-no-file-yet = { $what ->
    [point] Il n’y a encore aucun point dans ce fichier.
    [runner] Il n’y a encore aucune coureuse dans ce fichier.
    [person] Il n’y a encore personne dans ce fichier.
    [car] Il n’y a encore aucune voiture dans ce fichier.
    [place] Il n’y a encore aucun lieu dans ce fichier.
   *[other] Il n’y a encore aucun { $what } dans ce fichier.
 }
wrong-no-such = { $what ->
    [point] il n’y a pas de point ‘{ $word }’
    [runner] il n’y a pas de coureuse ‘{ $word }’
    [person] il n’y a pas de personne ‘{ $word }’
    [car] il n’y a pas de voiture ‘{ $word }’
    [place] il n’y a pas de lieu ‘{ $word }’
   *[other] il n’y a pas de { $what } ‘{ $word }’
 }
wrong-place-id-point = le lieu ‘{ $id }’ a l’id d’un point
do-points-places-already-leave-out = Les points sont déjà des lieux : laisse celui-ci.
wrong-lat-lon-so-place = ‘{ $name }’ a lat et lon, et son lieu ‘{ $place }’ aussi
do-keep-them-place-only = Garde-les au lieu seulement.
wrong-given-beside-minutes-whole-drive = { $key } est donné à côté de minutes, qui sont déjà tout le trajet
do-count-into-minutes-leave-out = Compte-le dans minutes et laisse { $key }.
wrong-minutes-km-straight-line-faster = { $minutes } minutes pour { $km } km à vol d’oiseau, c’est plus vite qu’une voiture ne peut rouler
do-check-minutes-lat-lon-both = Vérifie les minutes, et lat et lon des deux lieux.
wrong-rules-allow-crew-only-once = le règlement ne permet l’équipe qu’une fois la course finie
wrong-closes-before-rules-allow-crew = ‘{ $point }’ ferme avant que le règlement permette l’équipe (crew_not_before)
do-leave-meeting-out = Laisse ce rendez-vous.
wrong-joins-leaves-same-meeting = ‘{ $pacer_joins }’ la rejoint et la quitte au même rendez-vous
do-let-two-another-meeting = Mets l’un des deux à un autre rendez-vous.
wrong-leaves-here-but-joins-no = ‘{ $pacer_leaves }’ la quitte ici, mais ne la rejoint à aucun rendez-vous avant
do-add-pacer-joins-earlier-meeting = Ajoute pacer_joins à un rendez-vous plus tôt.
wrong-crew-but-foot-then-pacer = ‘{ $person }’ doit être avec l’équipe, mais est alors à pied avec elle, comme accompagnateur
do-take-name-out-add-pacer = Retire le nom, ou ajoute pacer_leaves avant.
wrong-joins-here-but-already = ‘{ $pacer_joins }’ la rejoint ici, mais est déjà avec elle
do-add-pacer-leaves-meeting-between = Ajoute pacer_leaves à un rendez-vous entre les deux.
wrong-joins-but-said-pace-only = ‘{ $person }’ la rejoint à ‘{ $point }’, mais ne doit accompagner que depuis ‘{ $said }’
do-make-pace-from-meeting-agree = Mets pace_from et le rendez-vous d’accord.
wrong-named-twice = ‘{ $name }’ est nommé deux fois
wrong-cannot-crew-meets = { $running } ne peut pas être dans l’équipe qui la retrouve
do-name-somebody-else = Nomme quelqu’un d’autre.
wrong-crew-come-from-itself = l’équipe de ‘{ $point }’ vient de ‘{ $point }’ même
do-leave-from-out-name-where = Laisse from, ou nomme d’où elle vient.
wrong-nobody-goes-said-drive = de personne qui va dans ‘{ $car }’ on ne dit qu’il conduit
do-add-drives-true-part-them = Ajoute drives = true au rôle de l’un d’eux.
wrong-would-been-awake-over-two = ‘{ $person }’ serait éveillé depuis plus de deux jours au départ
wrong-awake-only-after-race = ‘{ $person }’ ne serait éveillé qu’après la course
wrong-two-sleeps-overlap = deux sommeils de ‘{ $person }’ se chevauchent
do-join-them-into = Fais-en un seul.
wrong-share-from-ends-comes-before = la part depuis ‘{ $from_point }’ finit à ‘{ $to_point }’, qui vient avant
wrong-from = { $gap } de ‘{ $names }’ à ‘{ $names2 }’
wrong-nobody-runs = personne ne court
wrong-two-people-run = deux personnes courent
do-let-each-share-begin-where = Fais commencer chaque part où finit la précédente.
wrong-nobody-runs-from = personne ne court de ‘{ $names }’ à ‘{ $names2 }’
do-add-share-up-finish = Ajoute une part jusqu’à l’arrivée.
wrong-crew-but-runs-share-then = ‘{ $person }’ doit être avec l’équipe, mais court alors une part
do-write-sleeps-from-sun-01 = Écris sleeps = [ {"{"} from = "Sun 01:00", to = "Sun 03:00" {"}"} ].
wrong-sleep-ends-before-begins-lasts = un sommeil finit avant de commencer, ou dure plus de 16 heures
do-give-both-weekday = Donne les deux avec le jour.
do-say-runs-person-ana = Dis qui la court : person = "ana".
do-say-where-share-begins-from = Dis où la part commence : from = "start".
do-say-where-share-ends-mill = Dis où la part finit : to = "mill".

## pace, weather
do-write-past-race-name-fell = Écris past_race = {"{"} name = "Fell 50", km = 52, ascent_m = 1900, time = "7:40" {"}"}.
do-write-weather-from-sat-12 = Écris [[weather]] avec from = "Sat 12:00", to = "Sat 18:00", temperature_c = 27, humidity = 55 ; ou ground = "mud" avec from_km et to_km.
wrong-recordings-too-many = { $count } enregistrements sont trop
do-name-best = Nomme les { $most } meilleurs.
do-name-each-recording-once-would = Nomme chaque enregistrement une fois : il compterait double.
wrong-not-beside-event-file = ‘{ $name }’ n’est pas à côté du fichier de course
do-copy-file-next-event-file = Copie le fichier à côté du fichier de course et écris son nom : ‘{ $last }’.
do-give-ascent-metres-0-level = Donne le dénivelé en mètres, 0 pour une course plate.
wrong-km-km-h-no-speed = { $km } km en { $time } font { $speed_km_h } km/h, pas une vitesse à pied
do-write-hours-minutes-7-40 = Écris heures et minutes, comme "7:40" ; regarde si elles sont inversées.
wrong-weather-ends-km-before-begins = la météo finit au km { $to_km }, avant de commencer
wrong-weather-says-nothing = cette météo ne dit rien
wrong-humidity-without-temperature-c-says = humidity sans temperature_c ne dit rien
do-add-temperature-c = Ajoute temperature_c.
wrong-weather-ends-before-begins = la météo finit avant de commencer
wrong-weather-over-days-before-start = cette météo est finie des jours avant le départ
do-check-date = Vérifie la date.

### plan

## files beside the event file
wrong-no-file = il n’y a pas de fichier { $file }
do-correct-name = Corrige son nom.
do-put-beside-event-file-correct = Mets-le à côté du fichier de course, ou corrige son nom
wrong-not-utf-8-text-line = ce n’est pas du texte UTF-8 (ligne { $line })
do-save-csv-utf-8 = Enregistre-le en CSV et UTF-8
wrong-recorded-same-time-run-would = il a été enregistré en même temps que { $file } : une sortie compterait double
do-keep-better-two-correct-clock = Garde le meilleur des deux, ou corrige l’horloge de l’appareil

## results
do-write-h-mm-ss-since = Écris h:mm:ss depuis le départ, ou des secondes ; laisse vide là où rien n’a été noté
wrong-no-elapsed-time = ‘{ $text }’ n’est pas un temps depuis le départ
wrong-too-large = c’est trop grand
do-give-years-results-line-runner = Donne les résultats d’une année, une ligne par coureur
wrong-no-runners = il n’y a pas de coureurs
do-give-header-line-then-line = Donne une ligne de titres, puis une ligne par coureur
wrong-no-csv-file = ce n’est pas un fichier CSV ({ $error })
do-save-csv-commas = Enregistre-le en CSV avec des virgules
wrong-no-column-named-after-finish = aucune colonne n’a le nom de l’arrivée, ‘{ $name }’
wrong-later-point-earlier-time-before = un point plus tard a un temps plus tôt que le précédent
do-give-elapsed-times-since-start = Donne des temps depuis le départ, pas des tronçons ni des heures
wrong-finishers-too-few-see-shape = { $count } arrivants sont trop peu pour voir une forme
do-add-results-other-years = Ajoute des résultats d’autres années
wrong-km-m-ascent-no-race = { $km } km avec { $ascent_m } m de dénivelé, ce n’est pas une course
do-give-distance-km-1-2000 = Donne la distance en km (1 à 2000) et le dénivelé en mètres
wrong-km-no-speed-foot = { $time } pour { $km } km, ce n’est pas une vitesse à pied
do-look-whether-hours-minutes-mixed = Regarde si heures et minutes sont inversées

## recordings
do-export-activity-again-from-watchs = Exporte l’activité de nouveau depuis le programme de la montre, en FIT ou TCX, ou en GPX avec les heures
wrong-mb-more = il a { $mb } Mo, plus que { $most_mb }
do-give-activity = Donne une seule activité
wrong-empty = il est vide
wrong-neither-gpx-nor-fit-nor = ce n’est ni GPX ni FIT ni TCX
wrong-watch-calls-not-run = la montre l’appelle ‘{ $word }’, pas une course à pied
do-give-recordings-runs-hikes-only = Donne seulement des enregistrements de courses et de marches
wrong-no-track-point-time-so = aucun point n’a d’heure, donc c’est une trace, pas un enregistrement
wrong-fit-file-damaged = le fichier FIT est abîmé ({ $error })
wrong-tcx-file-damaged = le fichier TCX est abîmé ({ $error })
wrong-file-declares-doctype-tcx-never = le fichier déclare un DOCTYPE, dont TCX n’a jamais besoin
wrong-samples-time-least-needed = il a { $count } points avec l’heure, il en faut au moins { $least }
wrong-km-min-too-short-learn = il a { $km } km en { $minutes } min, trop court pour apprendre
do-give-runs-more-kilometre-five = Donne des sorties de plus d’un kilomètre et de cinq minutes
wrong-lasts-days = il dure { $days } jours
do-give-activity-file = Donne une activité par fichier
wrong-neither-distances-nor-positions = il n’a ni distances ni positions
wrong-no-heights-so-nothing-can = il n’a pas d’altitudes, donc rien à apprendre sur les côtes
do-give-recording-watch-writes-heights = Donne un enregistrement d’une montre qui note les altitudes
wrong-m-foot-rest-pauses-jumps = { $walked_m } m étaient à pied, le reste est pauses et sauts
do-give-run-more-kilometre = Donne une sortie de plus d’un kilomètre
wrong-km-h-over-km-faster = { $speed_km_h } km/h sur { $km } km, c’est plus vite que personne n’a couru
do-leave-out-rides-give-recordings = Laisse les trajets ; donne des enregistrements de courses et de marches
wrong-under-3-km-own-running = il y a moins de 3 km de sa propre course pour apprendre
do-add-longer-runs = Ajoute des sorties plus longues

## target and plan
do-give-finish-pace-all-easy = Donne finish, ou pace_all_in, ou easy_pace avec margin
wrong-over-days-longer-can-planned = { $time } dépasse { $days } jours, plus long que ce qu’on peut prévoir ici
do-look-whether-hours-minutes-mixed-up = Regarde si heures et minutes sont inversées, ou prévois la course par étapes
wrong-km-slower-anybody-walks = { $time } pour { $km } km, c’est plus lent que personne ne marche
do-look-whether-hours-minutes-pace = Regarde si heures et minutes, ou allure et arrivée, sont inversées
wrong-easy-pace-needs-margin-0 = une allure facile a besoin d’une marge de 0 à 10 min/km à côté
do-write-margin-1-30-two = Écris margin = "1:30" ; une à deux minutes sont usuelles pour un premier ultra
wrong-no-time-aim = { $time } n’est pas un temps à viser
do-give-time-above-zero = Donne un temps au-dessus de zéro
wrong-planned-stops-alone-take-target = les arrêts prévus prennent à eux seuls { $stops }, la cible est { $target }
do-shorten-stop-minutes-points-aim = Raccourcis stop_minutes aux points, ou vise une arrivée plus tard
wrong-plan-needs-start-finish-least = un plan a besoin d’au moins un départ et une arrivée
do-add-points-course = Ajoute les points du parcours
wrong-no-km-known = aucun km n’est connu pour { $unplaced }
do-give-km-waypoint-route = Donne km, ou un repère de la trace
wrong-km-does-not-come-after = { $name } au km { $km } ne vient pas après le point d’avant
do-put-points-running-order-place = Mets les points dans l’ordre de la course ; un lieu où l’on vient deux fois est deux points
wrong-km-route-ends-km = { $name } est au km { $km }, la trace finit au km { $length_km }
do-correct-km-state-organisers-distance = Corrige le km, ou donne la distance de l’organisateur comme stated_km
wrong-rate-outside = { $name } = { $value } n’est pas entre { $low } et { $high }
do-give-what-does-good-ground = Donne ce qu’elle fait fraîche sur bon terrain, ou laisse-le
wrong-factor-outside-0-5-5 = factor = { $factor } n’est pas entre 0.5 et 5
do-write-1-10-tenth-slower = Écris 1.10 pour un dixième plus lent
wrong-stretch-from-km-km-no = le passage du km { $from_km } au km { $to_km } n’a pas de longueur
do-put-smaller-km-first = Mets le plus petit km en premier
wrong-past-results-leave-too-little = les résultats passés laissent trop peu de temps pour aller à { $name } avec les arrêts prévus
do-shorten-stops-before-look-whether = Raccourcis les arrêts avant, ou regarde si les résultats sont de ce parcours
wrong-before-start = { $name } est avant son départ
do-correct-cut-off = Corrige la barrière horaire
wrong-races-time-limit = le temps limite de la course
wrong-start-next-stage = le départ de l’étape suivante à { $name }
do-aim-finish-earlier = Vise une arrivée en { $aim } ou plus tôt
do-no-finish-time-meets-cut = Aucun temps d’arrivée ne tient les barrières horaires telles qu’elles sont
do-stop-less-before = { $instead }, ou arrête-toi moins avant (arrêts jusque-là : { $stops })
wrong-slower-anybody-walks-course = { $target } est plus lent que personne ne marche ce parcours
do-plan-longer-stops-aim-earlier = Prévois des arrêts plus longs, ou vise une arrivée plus tôt
do-aim-later-finish = Vise une arrivée plus tard
wrong-card-nothing-try-first = la fiche ‘{ $id }’ n’a rien à essayer d’abord
do-give-least-step-try-first = Donne au moins une étape, comme try_first = ["stop at once, dry, tape"]

## routes
do-export-route-again-gpx-use = Exporte la trace de nouveau en GPX et prends le nouveau fichier
wrong-web-page-not-route-download = c’est une page web, pas une trace : le téléchargement demandait sans doute de se connecter
wrong-kml-file-not-gpx = c’est un fichier KML, pas GPX
wrong-tcx-file-not-gpx = c’est un fichier TCX, pas GPX
wrong-news-feed-not-gpx = c’est un fil de nouvelles, pas GPX
wrong-zip-kmz-archive-not-gpx = c’est une archive zip ou KMZ, pas GPX
wrong-gzip-archive-not-gpx = c’est une archive gzip, pas GPX
wrong-pdf-not-gpx = c’est un PDF, pas GPX
wrong-json-not-gpx = c’est du JSON, pas GPX
wrong-fit-recording-not-gpx = c’est un enregistrement FIT, pas GPX
wrong-file-empty = le fichier est vide
wrong-file-mb-more-mb = le fichier a { $mb } Mo, plus que { $most_mb } Mo
wrong-file-ends-middle-after-broken = le fichier s’arrête au milieu, comme après un téléchargement interrompu
do-download-export-again = Télécharge-le ou exporte-le de nouveau
wrong-not-well-formed-xml = ce n’est pas du XML correct : { $name }
wrong-file-begins-not-gpx = le fichier commence par <{ $tag }>, pas par <gpx>
wrong-file-declares-doctype-gpx-never = le fichier déclare un DOCTYPE, dont GPX n’a jamais besoin et qui peut épuiser un lecteur
do-remove-doctype-export-route-again = Retire le DOCTYPE, ou exporte la trace avec un autre programme
wrong-text-not-utf-8-though = le texte n’est pas en UTF-8, bien que le fichier ne nomme pas d’autre codage
do-save-file-utf-8-export = Enregistre le fichier en UTF-8, ou exporte la trace de nouveau
wrong-files-text-encoding-cannot-read = le codage du fichier n’est pas lisible ({ $error })
wrong-unknown-kind-gpx-known-gpx = sorte de GPX inconnue, { $namespace } : connus sont GPX 1.0 et 1.1
wrong-elements-nested-deeper = des éléments sont emboîtés plus profond que { $max_depth }
wrong-tag-comment-longer-bytes = une balise ou une remarque est plus longue que { $max_token } octets
wrong-more-tracks-routes = plus de { $max_lines } traces et routes
do-leave-only-course-file = Ne laisse que le parcours dans le fichier
wrong-more-points = plus de { $max_points } points
do-thin-track-program-made = Allège la trace dans le programme qui l’a faite
wrong-more-waypoints = plus de { $max_waypoints } repères
do-keep-waypoints-points-race = Garde les repères qui sont des points de la course
wrong-point-no-missing = un point n’a pas de { $key }=
wrong-degrees-outside = { $key } ‘{ $text }’ n’est pas entre -{ $limit } et { $limit }
do-correct-point-perhaps-latitude-longitude = Corrige le point ; peut-être latitude et longitude sont-elles échangées
wrong-not-number = { $key } ‘{ $text }’ n’est pas un nombre
do-write-like-54-9012-point = Écris-le comme 54.9012, avec un point
wrong-height-spikes-bridged = { $file } : { $spikes } pics d’altitude ont été comblés
wrong-line-heights-outside-m-taken = { $file }, ligne { $strange_line } : { $strange_heights } altitudes hors de { $lowest_m } à { $highest_m } m sont prises pour manquantes
wrong-straight-km-from-km-points = { $file } : tout droit pendant { $length_km } km depuis le km { $from_km } ; des points y manquent ou sont mal placés
wrong-broken-where-no-stage = { $file } : la ligne s’arrête au km { $from_km } et reprend à { $length_km } km de là, et aucune étape n’y finit ; ce trajet n’est pas compté
do-broken-stage = Écris next_stage au point où l’étape finit, ou trace la ligne jusqu’au bout
wrong-no-heights-from-km-drawn = { $file } : pas d’altitudes du km { $from_km } au { $to_km } ; tracé droit à cet endroit
wrong-route-no-heights = { $file } : la trace n’a pas d’altitudes : { $lacking }
wrong-every-height-0 = { $file } : chaque altitude est 0 : { $lacking }
wrong-only-points-heights = { $file } : seulement { $share } des points ont une altitude : { $lacking }
wrong-gradient-ascent-unknown-so-plan = pente et dénivelé sont inconnus, donc le plan compte avec du plat
wrong-line-m-long = la ligne fait { $length_m } m
do-use-file-holds-whole-course = Prends le fichier qui contient tout le parcours
wrong-line-km-long-when-points = la ligne fait { $length_km } km, comme quand des points sont en désordre ou mal placés
do-look-route-map-export-again = Regarde la trace sur une carte et exporte-la de nouveau
wrong-line-measures-km-but-km = la ligne mesure { $length_km } km, mais { $stated_km } km sont annoncés
do-correct-stated-km-use-route = Corrige stated_km, ou prends la trace de cette course
wrong-file-no-track-no-route = le fichier n’a ni trace ni route d’au moins deux points
do-export-course-itself-not-only = Exporte le parcours même, pas seulement ses repères
wrong-s-joined = { $file } : { $count } { $kind ->
    [track] traces ont été reliées
   *[route] itinéraires ont été reliés
 }{" "}: { $lines }
wrong-file-holds-s-do-not = le fichier contient { $count } { $kind ->
    [track] traces
   *[route] itinéraires
 } qui ne se suivent pas ({ $lines } ; { $gap_km } km entre deux)
do-leave-only-line-that-is-course = Ne laisse dans le fichier que celui qui est le parcours ; si une étape finit entre les deux, écris next_stage à son dernier point

## points on the route
wrong-no-waypoint = { $file } n’a pas de repère ‘{ $name }’
wrong-waypoints-named = { $count } repères de { $file } s’appellent ‘{ $name }’
do-give-points-km-instead = Donne plutôt le km du point
do-file-no-named-waypoints-give = Le fichier n’a pas de repères nommés : donne plutôt le km du point
wrong-but-stands-before-not-before = ‘{ $name }’ est à { $places }, mais ‘{ $before }’, qui est avant, n’est pas avant le km { $earliest_km }
do-put-points-running-order-correct = Mets les points dans l’ordre de la course, ou corrige le km ou le repère
wrong-neither-km-nor-waypoint-given = ni km ni waypoint n’est donné
do-give-km-21-3 = Donne l’un, comme km = 21.3
wrong-km-not-course-km-long = le km { $km } n’est pas sur le parcours, qui fait { $length_km } km
do-correct-km-give-stated-km = Corrige le km, ou donne stated_km là où l’organisateur compte autrement
wrong-given-km-but-course-km = { $end ->
    [start] le départ est donné
   *[finish] l’arrivée est donnée
 } au km { $km }, mais le parcours l’a au km { $course_km }
wrong-waypoint-from-line = le repère ‘{ $waypoint }’ est à { $distance } { $end ->
    [start] du départ
   *[finish] de l’arrivée
 } de la ligne
do-correct-waypoint-use-route-race = Corrige le repère, ou prends la trace qui a { $end ->
    [start] le départ
   *[finish] l’arrivée
 } de la course
wrong-waypoint-from-course-nearest-km = le repère ‘{ $name }’ est à { $distance } du parcours, au plus près au km { $km } ; au plus { $reach_m } m sont permis
do-correct-waypoint-route-give-points = Corrige le repère ou la trace, ou donne plutôt le km du point
wrong-km-given-but-waypoint = le km { $km } est donné, mais le repère ‘{ $name }’ est à { $places }
do-correct-km-leave-out = Corrige le km, ou laisse-le
wrong-course-comes-waypoint = le parcours passe au repère ‘{ $waypoint }’ à { $places }
do-add-km-say-pass-meant = Ajoute km = ... pour dire quel passage est voulu

### start_list
wrong-list-empty = la liste est vide
do-write-first-line-bib-name = Écris en première ligne : bib,name,wave,course,target. Seuls bib et name doivent y être.
wrong-quote-not-closed = un guillemet n’est pas fermé
do-put-quote-both-ends-cell = Mets un guillemet aux deux bouts d’une cellule, ou à aucun.
wrong-rows-too-many = { $count } lignes, c’est trop
wrong-no-column = il n’y a pas de colonne « { $said } »
wrong-column-stands-twice = la colonne « { $said } » y est deux fois
do-take-two-out = Enlève l’une des deux.
wrong-column-missing = la colonne « { $name } » manque
wrong-bib-stands-line-too = le dossard { $bib } est aussi à la ligne { $seen }
do-give-each-runner-bib-their = Donne à chacun son propre dossard.
wrong-row-cells-first-line = la ligne a { $cells } cellules, la première en a { $columns }
do-put-name-separator-quotes = Mets entre guillemets un nom qui contient le séparateur.
wrong-bib-missing = le dossard manque
wrong-no-bib = « { $bib } » n’est pas un dossard
do-use-digits-letters-most-20 = Prends des chiffres et des lettres, 20 au plus.
wrong-name-missing = le nom manque
do-write-runners-name = Écris le nom.
wrong-bib-new-no-target = le dossard { $bib } est nouveau et n’a pas d’objectif
wrong-bib-new-no-course = le dossard { $bib } est nouveau et n’a pas de parcours
wrong-event-file-not-changed-list = le fichier de course n’est pas changé par une liste : { $error }
wrong-table-stands-before-first-heading = une table se trouve avant le premier titre
wrong-no-toml = le texte n’est pas du TOML ({ $error })
wrong-table-not-changed-in-place = [{ $table }] ne se change pas sur place
do-write-each-table-under-heading = Écris chaque table sous son propre titre.
wrong-alarm-about-new-runner-would = une alerte sur quelqu’un de nouveau n’atteindrait personne
do-give-person-race-part-all = Donne à quelqu’un de la course, dans le fichier de course, un rôle pour tous : {"{"} kind = "safety contact", ladder = 9 {"}"}.

### passages
wrong-passages-json = ce n’est pas une liste de passages
do-passages-head = Écris des lignes avec bib, point et time (ou elapsed), nommés ainsi dans la première ligne du CSV ou comme clés d’une liste JSON.
wrong-passage-followed = le dossard { $bib } est à quelqu’un qui est suivi ici
do-passage-check-in = Signale ce passage comme pointage : POST /v1/events/…/checkins, ou dans le chat.
wrong-passage-no-point = aucun parcours n’a de point « { $said } »
wrong-passage-points = plusieurs points s’appellent « { $said } »
wrong-passage-no-time = « { $said } » n’est pas une heure
wrong-passage-before-start = { $said } est avant le départ
wrong-passage-to-come = { $said } est encore à venir
do-passage-time = Écris time comme l’horloge de la course l’a montré (07:58:12, Sat 07:58, 2027-09-11 07:58), ou elapsed en h:mm:ss depuis le départ.
wrong-passage-which-day = { $said } a eu lieu plus d’un jour de la course
do-passage-day = Ajoute le jour ou la date (Sat 07:58) et, quand on change d’heure, le décalage (2027-10-31T01:30+01:00).

## put together, or with several words
wrong-outside-hours = { $text } n’est pas entre { $low } et { $high } heures
wrong-outside-pace = { $text } n’est pas entre 2:00 et 60:00 par km
do-write-number-without-quotes = Écris un nombre sans guillemets.
do-write-number-point-not-comma = Écris un nombre sans guillemets (un point, pas une virgule, avant les décimales).
wrong-also-on-line = { $what } (aussi à la ligne { $lines })
wrong-also-on-lines = { $what } (aussi aux lignes { $lines })
wrong-line-no-toml = cette ligne n’est pas lisible comme TOML ({ $why }) : { $row }
do-add-people-name-phone-or = Ajoute [[people]] avec name = "{ $name }" et son phone ; si c’est { $near }, écris ici person = "{ $near }".
wrong-go-together = { $one } et { $other } vont ensemble
wrong-no-end = aucun point n’est { $kind ->
    [start] le départ
   *[finish] l’arrivée
 }
do-give-end = Donne au { $place ->
    [first] premier
   *[last] dernier
 } kinds = ["{ $kind }"].
wrong-second-end = ‘{ $name }’ est { $kind ->
    [start] un second départ
   *[finish] une seconde arrivée
 }
wrong-end-out-of-place = { $kind ->
    [start] le départ n’est pas le premier point
   *[finish] l’arrivée n’est pas le dernier point
 }
wrong-no-e-mail-address = ‘{ $text }’ n’est pas une adresse e-mail
wrong-no-web-address = ‘{ $text }’ n’est pas une adresse web
do-several-runners-say-whom-meet = Il y a plusieurs coureuses : dis laquelle ils retrouvent.
do-several-runners-say-whose-share = Il y a plusieurs coureuses : dis de la course de laquelle c’est une part.
wrong-crew-no-access-rules = l’équipe n’a pas accès à ‘{ $name }’, et le règlement permet l’aide aux points d’équipe seulement
do-name-columns-points = Nomme les colonnes comme les points : { $names }
do-column-meant = (est-ce que ‘{ $column }’ veut dire ‘{ $name }’ ?)
do-nearest-names = Les noms les plus proches sont { $names }
wrong-cut-off-in = la barrière horaire à l’arrivée à { $name }
wrong-cut-off-out = la barrière horaire au départ de { $name }
wrong-past-cut-off-in = avec une arrivée en { $finish } elle arrive à { $point } après { $after }, { $over } au-delà de { $limit }
wrong-past-cut-off-out = avec une arrivée en { $finish } elle repart de { $point } après { $after }, { $over } au-delà de { $limit }
wrong-finish-within-limits = une arrivée en { $target } demande { $needs } ; dans ses propres limites ({ $limits }) ce parcours prend { $fastest }
wrong-finish-within-power = une arrivée en { $target } demande { $needs } ; à la plus grande puissance que quelqu’un ait tenue si longtemps ce parcours prend { $fastest }
wrong-speed-uphill-level = { $uphill } m/s en montée et { $level } m/s à plat
wrong-speed-uphill = { $uphill } m/s en montée
wrong-speed-level = { $level } m/s à plat
wrong-speed-nobody-has = plus que personne ne tient en descente
do-aim-later-finish-or-correct-limits = Vise une arrivée plus tard, ou corrige ses limites
wrong-no-built-in-card = pas de carte fournie pour { $cards }
do-give-texts-every-needed-card = Donne les textes de chaque carte nécessaire
do-known-tables = Tables : { $tables }.
wrong-point-has-check-ins = le point ‘{ $point }’ ({ $name }) a des passages notés et ne peut pas être retiré
do-put-point-back = Remets-le ; ferme son accès à l’équipe s’il ne sert plus.
do-keep-id-change-name = Si ‘{ $near }’ est le même lieu, garde l’id ‘{ $point }’ et change son nom.
wrong-no-point-on-course = il n’y a pas de point ‘{ $point }’ sur ce parcours
as-said = { $words }
both-said = { $first } { $second }
