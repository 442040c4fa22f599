# Les fiches si-alors intégrées ; leurs sources sont dans server/conversation/telling/cards.py.

card-red-flag = Un seul de ces signes : appeler { $emergency } maintenant et faire ce qu’ils disent, puis la direction de course, { $race_control }. On fait venir un secouriste, et elle ne repart pas avant que le secouriste l’ait permis.
card-call-medic = les secouristes au point ; entre les points la direction de course, { $race_control }
card-call-race-control = la direction de course, { $race_control }

card-flag-life-1 = elle ne se réveille pas, se réveille à peine, ou ne respire pas normalement
card-flag-life-2 = une crise de convulsions
card-flag-life-3 = mal à la poitrine
card-flag-life-4 = le visage, les lèvres ou la langue gonflent, ou la respiration siffle
card-flag-life-5 = brûlante et confuse
card-flag-life-6 = un côté est faible, ou la moitié du visage tombe
card-flag-life-7 = un saignement qui ne s’arrête pas sous une main ferme : continuer d’appuyer

card-flag-always-1 = elle est confuse, parle bizarrement, ne sait pas où elle est
card-flag-always-2 = elle s’évanouit, ou manque d’air au repos
card-flag-always-3 = un mal de tête violent, ou qui augmente
card-flag-always-4 = elle ne voit ou ne parle pas bien
card-flag-always-5 = son cœur bat irrégulièrement
card-flag-always-6 = des muscles trop douloureux, gonflés ou faibles pour la porter

card-flag-head-1 = mal à la nuque
card-flag-head-2 = confusion qui augmente, comportement inhabituel, ou elle devient plus somnolente
card-flag-head-3 = vomissements répétés
card-flag-head-4 = faiblesse ou fourmillements dans les bras ou les jambes
card-flag-head-5 = un mal de tête violent ou qui augmente
card-flag-head-6 = elle voit ou entend mal, ou double

card-flag-water-1 = vomissements, ventre gonflé, confusion ou mal de tête : trop d’eau fait cela aussi bien que trop peu ; un secouriste avant plus de boisson ou de sel

## feet
card-feet = échauffement, ampoule, pieds mouillés ou gonflés
card-feet-try-1 = s’arrêter au premier frottement, pas au prochain point
card-feet-try-2 = enlever chaussure et chaussette, le sable et les graviers, sécher le pied
card-feet-try-3 = bander ou couvrir comme elle l’a essayé ; chaussettes sèches
card-feet-try-4 = lacer plus lâche si le pied a gonflé, chaussures de rechange une demi-taille plus grandes
card-feet-try-5 = les ampoules qui demandent plus qu’un pansement sont pour les secouristes
card-feet-red-1 = elle ne peut pas s’appuyer sur le pied
card-feet-red-2 = orteils insensibles, blancs ou bleus, qui ne se réchauffent pas
card-feet-red-3 = une coupure profonde, ou une plaie chaude et rouge qui s’étend

## stomach
card-stomach = nausées, vomissements, rien ne reste
card-stomach-try-1 = lire d’abord les signes : ils passent avant chaque étape d’ici
card-stomach-try-2 = ralentir au pas, sortir du soleil, desserrer ce qui appuie sur l’estomac
card-stomach-try-3 = arrêter de manger dix à vingt minutes, puis de petites bouchées de quelque chose de simple
card-stomach-try-4 = boire par gorgées à la soif, pas plus ; pas de cachets contre la douleur ni de sel sans les secouristes
card-stomach-try-5 = pas d’ibuprofène ni rien de semblable, surtout si elle est desséchée, vomit, ou urine foncé ou plus du tout
card-stomach-try-6 = seulement sans aucun signe : attendre une demi-heure avant de décider quoi que ce soit
card-stomach-red-1 = vomissements répétés, ou avec du sang ou noirs
card-stomach-red-2 = mains ou visage gonflés, ou plus lourde qu’au départ
card-stomach-red-3 = même des gorgées d’eau ne restent pas
card-stomach-red-4 = pas d’urine depuis des heures, ou foncée comme du cola
card-stomach-red-5 = mal au ventre qui ne lâche pas

## fall
card-fall = elle est tombée
card-fall-try-1 = avant qu’elle bouge : mal à la tête, au cou ou au dos, des fourmillements ? Alors elle reste allongée, et tu appelles
card-fall-try-2 = s’est-elle cogné la tête ? Alors la fiche ‘choc à la tête’, même si elle se sent bien
card-fall-try-3 = sinon s’asseoir, respirer ; poignets, côtes, genoux : qu’est-ce qui fait mal, qu’est-ce qui ne bouge pas
card-fall-try-4 = une couche chaude pendant qu’elle est assise
card-fall-try-5 = se lever, marcher cinquante mètres, puis décider
card-fall-try-6 = nettoyer et couvrir une éraflure ; tout ce qui est plus profond est pour les secouristes
card-fall-red-1 = elle s’est cogné la tête, même si elle se sent bien
card-fall-red-2 = mal au cou ou au dos, fourmillements, ou plus de sensation dans un membre : ne pas la bouger
card-fall-red-3 = elle ne peut pas marcher, ou une articulation ou un os a l’air anormal

## head-injury
card-head-injury = elle s’est cogné la tête
card-head-injury-try-1 = sa course est finie tant qu’un secouriste ne l’a pas vue, si bien qu’elle se sente
card-head-injury-try-2 = mal à la nuque ou fourmillements : elle reste allongée, et personne ne bouge sa tête
card-head-injury-try-3 = on ne la laisse pas seule : quelqu’un la surveille, la nuit aussi
card-head-injury-try-4 = elle ne conduit pas, et ne décide pas elle-même qu’elle va bien
card-head-injury-try-5 = pas de cachets contre la douleur, pas d’alcool
card-head-injury-red-1 = elle ne se souvient pas de la chute, ou de ce qui était avant
card-head-injury-red-2 = vertiges, nausée, instable, hébétée, ou la lumière et le bruit font mal

## weather
card-weather = tempête, orage, brouillard, grande chaleur ou grand froid en vue
card-weather-try-1 = couches chaudes et imperméables avant qu’elle ait froid, à l’abri du vent
card-weather-try-2 = orage : dans une voiture ou un bâtiment ; aucun près : accroupi, pieds joints, loin les uns des autres, loin des crêtes, des arbres et de l’eau ; repartir 30 minutes après le dernier tonnerre
card-weather-try-3 = brouillard : plus lentement, de balise en balise, avec ceux qui sont proches
card-weather-try-4 = chaleur : refroidir d’abord, bouger ensuite : ombre, la mouiller, l’éventer, glace ou linges mouillés au cou, aux aisselles et à l’aine
card-weather-try-5 = hauteurs devant : demander à la direction de course avant de monter ; la course est peut-être arrêtée
card-weather-red-1 = elle tremble sans fin
card-weather-red-2 = quelqu’un ne peut pas descendre seul
card-weather-life-1 = brûlante, et elle titube ou tombe, qu’elle transpire ou non : la refroidir pendant qu’on appelle, et continuer jusqu’à l’arrivée des secours
card-weather-life-2 = elle ne tremble plus et est encore froide
card-weather-life-3 = quelqu’un a été touché par la foudre

## cannot-get-warm
card-cannot-get-warm = elle a froid et ne se réchauffe pas
card-cannot-get-warm-try-1 = parole pâteuse ou trébuche : la garder allongée, isolée dessous et dessus, ne pas marcher ; chaleur au tronc par-dessus les vêtements, pas aux bras ni aux jambes ; la bouger doucement
card-cannot-get-warm-try-2 = à l’abri du vent, enlever le mouillé, mettre tout le sec, bonnet et capuche ; pas de frictions, pas d’alcool
card-cannot-get-warm-try-3 = pas à même le sol : assise sur un sac, couverture autour d’elle
card-cannot-get-warm-try-4 = quelque chose de chaud et sucré à boire si elle est éveillée et avale bien
card-cannot-get-warm-try-5 = dans la voiture ou la tente, avec quelqu’un à côté
card-cannot-get-warm-try-6 = elle ne repart que chaude et sèche, plus couverte qu’en arrivant
card-cannot-get-warm-red-1 = elle tremble sans fin
card-cannot-get-warm-red-2 = des mains maladroites
card-cannot-get-warm-red-3 = doigts, orteils, nez ou oreilles blancs ou insensibles
card-cannot-get-warm-life-1 = elle ne tremble plus et est encore froide
card-cannot-get-warm-life-2 = parole pâteuse, trébuche, ou somnolente de froid

## allergy
card-allergy = une réaction allergique : piqûre, aliment ou cachet
card-allergy-try-1 = gonflement, respiration sifflante, malaise, ou plaques partout : tout de suite son propre stylo, comme écrit dessus, et appeler { $emergency }
card-allergy-try-2 = l’allonger, jambes levées ; si elle respire mal : la laisser assise. Elle ne se lève pas et ne marche pas
card-allergy-try-3 = quelqu’un reste avec elle ; le stylo va à l’hôpital avec elle, même si elle se sent mieux
card-allergy-try-4 = démangeaison ou plaques à un seul endroit : s’arrêter, rester assise une demi-heure avec quelqu’un, le montrer aux secouristes
card-allergy-try-5 = un dard dans la peau : l’enlever en grattant
card-allergy-red-1 = les plaques s’étendent, ou elle se sent mal ou faible après une piqûre
card-allergy-red-2 = elle a déjà eu une forte réaction
card-allergy-life-1 = son propre stylo a servi, ou n’est pas là
card-allergy-life-2 = voix rauque, gorge serrée, ou elle ne peut pas avaler

## diabetes
card-diabetes = elle est diabétique et n’est pas elle-même
card-diabetes-try-1 = son propre plan passe d’abord : son équipe l’a, avec son sucre, son lecteur et les numéros
card-diabetes-try-2 = tremblante, en sueur, pâle, bizarre ou irritable : tout de suite son propre sucre, si elle est éveillée et avale bien ; puis selon son plan
card-diabetes-try-3 = rien par la bouche si elle se réveille à peine ou n’avale pas
card-diabetes-try-4 = elle n’est pas seule tant qu’elle n’est pas redevenue elle-même, et ne repart que quand son plan le permet
card-diabetes-try-5 = personne d’autre qu’elle ne touche à son insuline
card-diabetes-red-1 = pas mieux après la première étape de son plan
card-diabetes-red-2 = grande soif, vomissements, mal au ventre, haleine qui sent le fruit
card-diabetes-red-3 = lecteur, pompe ou sucre perdu ou cassé
card-diabetes-life-1 = elle ne peut pas avaler, ou ne comprend pas ce que vous dites

## collapse
card-collapse = elle s’effondre, à l’arrivée ou avant
card-collapse-try-1 = lui parler et regarder sa poitrine : pas de réponse ou pas de respiration normale, c’est { $emergency } et les secouristes, maintenant
card-collapse-try-2 = éveillée et lucide, après la ligne : allongée, jambes levées, au chaud, quelqu’un à côté pendant une demi-heure
card-collapse-try-3 = tombée avant la ligne, ou pas lucide : les secouristes tout de suite, si bref que ce fût
card-collapse-try-4 = brûlante et confuse : refroidir d’abord, bouger ensuite : la mouiller, l’éventer, glace au cou, aux aisselles et à l’aine
card-collapse-try-5 = rien à boire avant qu’un secouriste l’ait vue, si elle vomit, a le ventre gonflé, est confuse ou a mal à la tête
card-collapse-red-1 = elle ne peut pas se relever après quelques minutes allongée

## wrong-turn
card-wrong-turn = hors du parcours
card-wrong-turn-try-1 = s’arrêter : pas de balise depuis quelques minutes veut dire regarder, pas continuer
card-wrong-turn-try-2 = comparer la carte, la montre et la dernière balise sûre
card-wrong-turn-try-3 = revenir par le même chemin à cette balise, jamais de raccourci à travers
card-wrong-turn-try-4 = si elle ne sait pas où elle est : rester là, couche chaude, appeler
card-wrong-turn-try-5 = dire à l’équipe combien de temps cela a coûté, pour qu’elle ne s’inquiète pas au mauvais moment
card-wrong-turn-red-1 = elle est perdue et il fait nuit, froid ou brouillard
card-wrong-turn-red-2 = elle est sur un terrain raide ou dangereux
card-wrong-turn-red-3 = elle est blessée et seule
card-wrong-turn-red-4 = elle est confuse, parle bizarrement, ne sait pas où elle est

## lost-kit
card-lost-kit = lampe, veste, téléphone ou autre matériel obligatoire perdu ou cassé
card-lost-kit-try-1 = dire tout de suite ce qui manque ; le règlement peut l’exiger
card-lost-kit-try-2 = sans lampe ou sans couche chaude : rester avec quelqu’un qui a les deux jusqu’au prochain point
card-lost-kit-try-3 = équipe : dans quelle voiture est la rechange, et ce point est-il encore devant elle
card-lost-kit-try-4 = téléphone perdu : dire à l’équipe et à la direction de course que son silence ne veut rien dire
card-lost-kit-try-5 = pas de rechange : demander au ravitaillement avant d’en repartir
card-lost-kit-red-1 = pas de lampe, et la nuit avant le prochain point
card-lost-kit-red-2 = pas de couche chaude ou imperméable, et mauvais temps ou hauteurs devant

## drowsy-driver
card-drowsy-driver = qui conduit somnole, s’endort au volant
card-drowsy-driver-try-1 = s’arrêter au prochain endroit sûr et retirer la clé ; fenêtre ouverte et musique ne tiennent personne éveillé
card-drowsy-driver-try-2 = un autre conduit, ou personne : écris ici ‘je ne peux pas y aller’, et on demande aux autres de prendre le rendez-vous
card-drowsy-driver-try-3 = un café (pas pour qui ne doit pas en prendre), puis vingt minutes de sommeil dans la voiture arrêtée, réveil mis
card-drowsy-driver-try-4 = ensuite : faire le tour de la voiture ; des yeux encore lourds veulent dire dormir, pas conduire
card-drowsy-driver-try-5 = elle peut attendre, avec une couverture et un ravitaillement ; une équipe dans le fossé n’aide personne
card-drowsy-driver-red-1 = la tête tombe, les yeux se ferment, on quitte la voie, les derniers kilomètres manquent : plus un mètre
card-drowsy-driver-red-2 = un accident ou presque : { $emergency } d’abord, puis la direction de course
card-drowsy-driver-red-3 = pas d’autre conducteur et pas d’endroit sûr où s’arrêter : le dire à la direction de course

## runner-late
card-runner-late = elle est en retard et personne ne l’a vue
card-runner-late-try-1 = regarder les résultats de la course, et demander à la direction de course si elle est passée sans être vue
card-runner-late-try-2 = une personne reste au point, éveillée ; qui part est dit par son nom, jamais tous
card-runner-late-try-3 = écrire ‘pas encore là’ quand on demande : cela compte ; qui en sait plus l’écrit
card-runner-late-try-4 = personne ne va sur le parcours seul ou de nuit pour la chercher
card-runner-late-try-5 = ne pas l’appeler sans cesse : sa batterie est peut-être tout ce qui lui reste
card-runner-late-red-1 = elle a demandé de l’aide, ou semblait malade ou confuse la dernière fois
card-runner-late-red-2 = tempête, froid, chaleur ou terrain raide, et pas un mot d’elle après l’heure la plus tardive attendue
card-runner-late-red-3 = le serre-file est passé et on ne l’a pas vue
card-runner-late-red-4 = une alerte est ouverte : faire d’abord ce qu’elle dit, et en danger appeler { $emergency }

## wants-to-stop
card-wants-to-stop = elle veut arrêter
card-wants-to-stop-try-1 = si elle est blessée ou malade, ce n’est pas la bonne fiche : prendre l’autre
card-wants-to-stop-try-2 = pas dans le creux de la nuit, pas le ventre vide : d’abord au chaud, au sec, nourrie, vingt minutes, sans crier
card-wants-to-stop-try-3 = demander ce qui ne va pas exactement ; chaque réponse a sa fiche
card-wants-to-stop-try-4 = aucun signe sur aucune fiche et la suite est sûre : peut-être seulement jusqu’au prochain point, et décider là
card-wants-to-stop-try-5 = c’est sa course : ce qu’elle décide au chaud et nourrie ne se discute pas deux fois
card-wants-to-stop-try-6 = si elle abandonne : le dire tout de suite à la direction de course, rendre le dossard, attendre l’équipe au chaud
card-wants-to-stop-red-1 = elle veut arrêter et ne peut pas dire pourquoi, ou dit des choses sans sens
card-wants-to-stop-red-2 = elle veut rester quelque part qui n’est pas un point : la direction de course doit savoir où
card-wants-to-stop-red-3 = elle est confuse, parle bizarrement, ne sait pas où elle est
