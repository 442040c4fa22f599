# What the commands say of a file. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## What `stilepost check` says
mistake-error = erreur
mistake-warning = avertissement
check-mistakes = { $count ->
    [one] 1 faute
   *[other] { $count } fautes
 } à corriger.
check-not-promised = { $count ->
    [one] Un rendez-vous n’est pas promis
   *[other] { $count } rendez-vous ne sont pas promis
 } : l’équipe risque d’arriver trop tard, ou un trajet n’est pas confirmé. `stilepost plan { $file }` dit lesquels, pourquoi et ce qui aiderait.
check-right = { $file } : juste. { $runners ->
    [one] Une coureuse
   *[other] { $runners } coureuses
 }, { $points } points, { $people } personnes, { $meetings } rendez-vous. `stilepost load { $file }` l’enregistre.
cli-error = Erreur : { $what }
cli-nothing-reported = dans { $event } personne n’a encore été signalé : il n’y a rien à raconter
cli-log-whose = --runner : dis de qui est le carnet. Choisis parmi : { $known }.
cli-log-columns = il manque à la première ligne les colonnes { $missing }. Écris time,point,log ; `stilepost log` sans fichier imprime le formulaire.
cli-log-time = ligne { $line }, time : ‘{ $time }’ n’est pas un jour et une heure. Écris 2027-06-19 14:05, à l’heure de la course.
cli-log-ahead = ligne { $line }, time : { $time } est encore à venir. Vérifie le jour et le mois.
cli-log-point = ligne { $line }, point : elle n’a pas de point ‘{ $point }’. Choisis parmi : { $known }.
cli-log-words = ligne { $line }, log : tout n’est pas compris dans ‘{ $words }’. Écris chaque chose à part, avec un point-virgule : ‘bu 500; mangé une demi-banane; pas d’ibuprofène; pas uriné; pieds bien; dormi 20 min’. Laisse le reste.
cli-log-none = { $count ->
    [one] Rien n’a été enregistré : corrige-la et relis le fichier.
   *[other] Rien n’a été enregistré : corrige ces { $count } fautes et relis le fichier.
 }
cli-log-noted = { $count ->
    [one] { $count } nouvelle ligne est
   *[other] { $count } nouvelles lignes sont
 } dans le carnet ; déjà là : { $before }.
cli-written = écrit : { $file }
cli-not-written = { $file } : impossible à écrire ({ $why }). Choisis un autre endroit.
cli-no-runner = --runner : la course n’a pas de coureuse '{ $runner }'. Prends l’une de : { $known }.
cli-breaks-rules = le plan enfreint { $count ->
    [one] une règle
   *[other] { $count } règles
 } de la course : voir PAS PERMIS plus haut. Change le fichier, puis planifie de nouveau.

## What `stilepost load` says
load-ask = Enregistrer ceci ?
load-nothing-stored = rien n’a été enregistré.
load-stored = { $event } : enregistré comme version { $version }.
load-new = { $event } : une nouvelle course, '{ $name }'.
load-unreadable = la version { $version } n’est pas lisible par ce Stilepost :
load-no-change = { $event } : rien ne change par rapport à la version { $version }.
change-added = { $thing } : ajouté
change-removed = { $thing } : retiré
change-changed = { $thing } : { $field } était { $was ->
    [none] non donné
   *[other] { $was }
 }, devient { $now ->
    [none] non donné
   *[other] { $now }
 }
change-thing-event = course
change-thing-course = parcours
change-thing-runner = coureuse
change-thing-person = personne
change-thing-car = voiture
change-thing-meeting = rendez-vous
change-thing-if-then-card = fiche si-alors
change-thing-place = lieu
change-thing-stretch = passage
change-thing-drive = trajet
change-thing-part = rôle
change-thing-relay-share = part de relais
change-thing-weather = météo
change-thing-point = point
start-list-file = liste de départ
start-list-more = et { $count } de plus
start-list-again = Corrige ce qui est nommé, puis renvoie la liste.
start-list-found = dans la liste : { $added } nouveaux, { $changed } modifiés, { $same } comme enregistrés.
start-list-not-listed = pas dans la liste, gardés : { $names }.
passages-file = passages
passages-kept = passages : { $added } nouveaux, { $changed } modifiés, { $same } déjà connus, { $wrong } lignes non prises.

learn-no-json = { $file } : ce n’est pas le JSON qu’écrit `stilepost afterwards`. Donne ce fichier, ou l’identifiant d’un événement enregistré.
learn-no-runner = --runner : le prochain fichier n’a personne d’identifiant ‘{ $runner }’. Choisis parmi : { $known }.
learn-unusual = { $file } : ses tables ne sont pas chacune sous un titre, rien ne peut donc y être écrit. Écris [[runners]] et [[points]] comme titres.
learn-breaks = { $file } : avec ce qui a été appris, le plan ne tient plus (voir plus haut), rien n’a donc été écrit. Corrige ce qui est nommé, puis recommence.
learn-nothing = Rien ne change : le fichier dit déjà tout cela, ou les courses n’en disent pas plus.
learn-was = Le plan de { $runner }, tel qu’il était :
learn-next = Le prochain plan de { $runner }, avec ce qu’on a appris :
learn-shown = Rien n’est encore écrit. Avec --write, cela va dans { $file }, commentaires gardés.
learn-not-finished = { $field } : aucune arrivée n’a été signalée, il n’y a donc pas de temps à en apprendre.
learn-target-stays = { $field } reste, et le plan est fait pour lui : la course dit seulement s’il est probable. Enlève l’objectif, et le plan est fait de ses courses.
learn-race = { $field } : { $was ->
    [none] nouveau : { $now }
   *[other] { $now } (avant : { $was })
}. Le plan en fait un temps pour ce parcours, avec sa marge.
learn-fade = { $field } = { $now }{ $was ->
    [none] {""}
   *[other] {" "}(avant : { $was })
} : comment elle ralentit, 1 comme la plupart. De { $count ->
    [one] une course
   *[other] { $count } courses
}, c’est entre { $low } et { $high } (1 sur 10 de chaque côté) ; ramené vers 1 tant que cela n’en dit pas plus.
learn-fade-same = { $field } = { $was } reste : la course dit { $low } à { $high }.
learn-stop = { $field } = { $now } (avant : { $was }) : ses { $count } arrêts ont duré plus ou moins que prévu ; sans doute { $low } à { $high } min.
learn-stops-same = Ses arrêts ont duré comme prévu (fois { $now }, { $low } à { $high }, { $count } arrêts) : stop_minutes restent.
learn-stops-shared = Ses arrêts ont duré { $now } fois le temps prévu ({ $low } à { $high }, { $count } arrêts). Dans ce fichier, stop_minutes valent pour tous, ils restent donc : change-les à la main.
learn-carbohydrate = { $field } = { $now }{ $was ->
    [none] {""}
   *[other] {" "}(avant : { $was })
} : g de glucides par heure, d’après le carnet de la course ; { $low } à { $high } dans ses deux moitiés, { $count } notes. Ce que personne n’a noté n’y est pas.
learn-carbohydrate-same = { $field } = { $was } reste : le carnet dit { $low } à { $high } g par heure dans les deux moitiés.
learn-fluid = Liquide : { $was } ml par heure d’après le carnet ({ $low } à { $high } dans les deux moitiés, { $count } notes). Non écrit : prévois les bidons avec fluid_ml_per_h dans { $field } ; elle boit selon la soif.
