# Die eingebauten Wenn-dann-Karten; woher sie sind, steht in server/conversation/telling/cards.py.

card-red-flag = Bei einem einzigen dieser Zeichen: jetzt { $emergency } anrufen und tun, was sie sagen, dann die Rennleitung, { $race_control }. Sanitäter werden geholt, und sie geht nicht weiter, bis sie es erlaubt haben.
card-call-medic = die Sanitäter am Punkt; zwischen Punkten die Rennleitung, { $race_control }
card-call-race-control = die Rennleitung, { $race_control }

card-flag-life-1 = sie wacht nicht auf, ist kaum zu wecken oder atmet nicht normal
card-flag-life-2 = ein Krampfanfall
card-flag-life-3 = Brustschmerz
card-flag-life-4 = Gesicht, Lippen oder Zunge schwellen an, oder der Atem pfeift
card-flag-life-5 = heiß und verwirrt
card-flag-life-6 = eine Seite ist schwach, oder eine Gesichtshälfte hängt
card-flag-life-7 = eine Blutung, die unter fester Hand nicht aufhört: weiter drücken

card-flag-always-1 = sie ist verwirrt, redet seltsam, weiß nicht, wo sie ist
card-flag-always-2 = sie wird ohnmächtig oder hat Atemnot in Ruhe
card-flag-always-3 = starke Kopfschmerzen, oder solche, die zunehmen
card-flag-always-4 = sie kann nicht richtig sehen oder sprechen
card-flag-always-5 = ihr Herz schlägt unregelmäßig
card-flag-always-6 = Muskeln, die zu sehr schmerzen, geschwollen sind oder sie nicht mehr tragen

card-flag-head-1 = Schmerzen im Nacken
card-flag-head-2 = zunehmende Verwirrung, ungewohntes Verhalten, oder sie wird schläfriger
card-flag-head-3 = immer wieder Erbrechen
card-flag-head-4 = Schwäche oder Kribbeln in Armen oder Beinen
card-flag-head-5 = Kopfschmerzen, die stark sind oder zunehmen
card-flag-head-6 = sie sieht oder hört schlecht, oder doppelt

card-flag-water-1 = Erbrechen, aufgebläht, verwirrt oder Kopfschmerzen: das macht zu viel Wasser ebenso wie zu wenig; erst Sanitäter, dann mehr trinken oder Salz

## feet
card-feet = Druckstelle, Blase, nasse oder geschwollene Füße
card-feet-try-1 = beim ersten Reiben anhalten, nicht erst am nächsten Punkt
card-feet-try-2 = Schuh und Socke aus, Sand heraus, Fuß trocknen
card-feet-try-3 = tapen oder abdecken, wie sie es geübt hat; frische trockene Socken
card-feet-try-4 = lockerer schnüren, wenn der Fuß geschwollen ist; Ersatzschuhe eine halbe Nummer größer
card-feet-try-5 = Blasen, die mehr als eine Abdeckung brauchen, sind Sache der Sanitäter
card-feet-red-1 = sie kann den Fuß nicht belasten
card-feet-red-2 = taube, weiße oder blaue Zehen, die nicht warm werden
card-feet-red-3 = ein tiefer Schnitt oder eine Wunde, die heiß und rot ist und sich ausbreitet

## stomach
card-stomach = Übelkeit, Erbrechen, nichts bleibt drin
card-stomach-try-1 = zuerst die Warnzeichen lesen: sie gehen jedem Schritt hier vor
card-stomach-try-2 = ins Gehen wechseln, aus der Sonne, lockern, was auf den Magen drückt
card-stomach-try-3 = zehn bis zwanzig Minuten nichts essen, dann kleine Bissen von etwas Einfachem
card-stomach-try-4 = schluckweise nach Durst trinken, nicht mehr; keine Schmerz- oder Salztabletten ohne die Sanitäter
card-stomach-try-5 = kein Ibuprofen und nichts Ähnliches, vor allem nicht ausgetrocknet, bei Erbrechen, bei dunklem oder keinem Urin
card-stomach-try-6 = nur ohne ein einziges Warnzeichen: eine halbe Stunde abwarten, bevor etwas entschieden wird
card-stomach-red-1 = immer wieder Erbrechen, oder mit Blut oder schwarz
card-stomach-red-2 = Hände oder Gesicht dick, oder schwerer als am Start
card-stomach-red-3 = nicht einmal kleine Schlucke Wasser bleiben drin
card-stomach-red-4 = viele Stunden kein Urin, oder er ist dunkel wie Cola
card-stomach-red-5 = Bauchschmerz, der nicht nachlässt

## fall
card-fall = sie ist gestürzt
card-fall-try-1 = erst fragen: schmerzen Kopf, Hals oder Rücken, kribbelt etwas? Dann bleibt sie liegen, und ihr ruft an
card-fall-try-2 = hat sie sich den Kopf gestoßen? Dann die Karte ‚Kopfverletzung‘, auch wenn sie sich gut fühlt
card-fall-try-3 = sonst hinsetzen, atmen; Handgelenke, Rippen, Knie: was schmerzt, was bewegt sich nicht
card-fall-try-4 = im Sitzen warm anziehen
card-fall-try-5 = aufstehen, fünfzig Meter gehen, dann entscheiden
card-fall-try-6 = eine Schürfwunde säubern und abdecken; alles Tiefere ist Sache der Sanitäter
card-fall-red-1 = sie hat sich den Kopf gestoßen, auch wenn sie sich gut fühlt
card-fall-red-2 = Schmerzen in Hals oder Rücken, Kribbeln oder kein Gefühl in Arm oder Bein: nicht bewegen
card-fall-red-3 = sie kann nicht gehen, oder ein Gelenk oder Knochen sieht falsch aus

## head-injury
card-head-injury = sie hat sich den Kopf gestoßen
card-head-injury-try-1 = ihr Rennen ist vorbei, bis Sanitäter sie gesehen haben, so gut sie sich auch fühlt
card-head-injury-try-2 = Schmerzen im Nacken oder Kribbeln: sie bleibt liegen, und niemand bewegt ihren Kopf
card-head-injury-try-3 = sie wird nicht allein gelassen: jemand achtet auf sie, auch die Nacht über
card-head-injury-try-4 = sie fährt nicht Auto und entscheidet nicht selbst, dass es ihr gut geht
card-head-injury-try-5 = keine Schmerztabletten, kein Alkohol
card-head-injury-red-1 = sie erinnert sich nicht an den Sturz oder an das, was davor war
card-head-injury-red-2 = schwindlig, übel, unsicher, benommen, oder Licht und Lärm tun weh

## weather
card-weather = Sturm, Gewitter, Nebel, große Hitze oder Kälte im Anzug
card-weather-try-1 = warme und wasserdichte Schicht anziehen, bevor sie friert, im Windschatten
card-weather-try-2 = Gewitter: ins Auto oder in ein Gebäude; ist keines nah: in die Hocke, Füße zusammen, Abstand voneinander, weg von Graten, Bäumen und Wasser; weiter erst 30 Minuten nach dem letzten Donner
card-weather-try-3 = Nebel: langsamer, von Markierung zu Markierung, mit denen, die in der Nähe sind
card-weather-try-4 = Hitze: erst kühlen, dann bewegen: Schatten, nass machen, fächeln, Eis oder nasse Tücher an Hals, Achseln, Leisten
card-weather-try-5 = Höhe voraus: vor dem Aufstieg die Rennleitung fragen; das Rennen kann angehalten sein
card-weather-red-1 = sie zittert ohne Ende
card-weather-red-2 = jemand kommt allein nicht hinunter
card-weather-life-1 = heiß, und sie taumelt oder fällt, ob sie schwitzt oder nicht: kühlen, während Hilfe gerufen wird, bis sie da ist
card-weather-life-2 = sie zittert nicht mehr und ist noch kalt
card-weather-life-3 = jemand wurde vom Blitz getroffen

## cannot-get-warm
card-cannot-get-warm = ihr ist kalt und sie wird nicht warm
card-cannot-get-warm-try-1 = verwaschene Sprache oder Stolpern: liegen lassen, von unten und oben einpacken, nicht gehen; Wärme an den Rumpf, über der Kleidung, nicht an Arme und Beine; sanft bewegen
card-cannot-get-warm-try-2 = aus dem Wind, Nasses aus, alles Trockene an, Mütze und Kapuze; nicht reiben, kein Alkohol
card-cannot-get-warm-try-3 = weg vom Boden: auf einen Rucksack setzen, Decke herum
card-cannot-get-warm-try-4 = etwas Warmes, Süßes, wenn sie wach ist und gut schluckt
card-cannot-get-warm-try-5 = ins Auto oder Zelt, mit jemandem neben ihr
card-cannot-get-warm-try-6 = sie geht erst weiter, wenn sie warm und trocken ist, in mehr, als sie anhatte
card-cannot-get-warm-red-1 = sie zittert ohne Ende
card-cannot-get-warm-red-2 = ungeschickte Hände
card-cannot-get-warm-red-3 = weiße oder taube Finger, Zehen, Nase oder Ohren
card-cannot-get-warm-life-1 = sie zittert nicht mehr und ist noch kalt
card-cannot-get-warm-life-2 = verwaschene Sprache, Stolpern, oder schläfrig vor Kälte

## allergy
card-allergy = eine allergische Reaktion: Stich, Essen oder Tablette
card-allergy-try-1 = Schwellung, pfeifender Atem, ohnmächtig oder überall Ausschlag: sofort ihr eigener Pen, wie darauf steht, und { $emergency } anrufen
card-allergy-try-2 = hinlegen, Beine hoch; bei Atemnot sitzen lassen. Sie steht nicht auf und geht nicht
card-allergy-try-3 = jemand bleibt bei ihr; der Pen geht mit ins Krankenhaus, auch wenn es ihr wieder gut geht
card-allergy-try-4 = Jucken oder Ausschlag nur an einer Stelle: anhalten, eine halbe Stunde zu zweit sitzen, den Sanitätern zeigen
card-allergy-try-5 = ein Stachel in der Haut: herauskratzen
card-allergy-red-1 = der Ausschlag breitet sich aus, oder ihr wird nach einem Stich übel oder schwach
card-allergy-red-2 = sie hatte schon einmal eine schwere Reaktion
card-allergy-life-1 = ihr eigener Pen wurde benutzt oder ist nicht da
card-allergy-life-2 = heiser, enger Hals, oder sie kann nicht schlucken

## diabetes
card-diabetes = sie hat Diabetes und ist nicht sie selbst
card-diabetes-try-1 = ihr eigener Plan geht vor: ihre Crew hat ihn, mit ihrem Zucker, Messgerät und den Nummern
card-diabetes-try-2 = zittrig, verschwitzt, blass, seltsam oder gereizt: sofort ihr eigener Zucker, wenn sie wach ist und gut schluckt; dann nach ihrem Plan
card-diabetes-try-3 = nichts in den Mund, wenn sie kaum zu wecken ist oder nicht schluckt
card-diabetes-try-4 = sie ist nicht allein, bis sie wieder sie selbst ist, und geht erst weiter, wenn ihr Plan es erlaubt
card-diabetes-try-5 = ihr Insulin rührt niemand an als sie
card-diabetes-red-1 = nach dem ersten Schritt ihres Plans nicht besser
card-diabetes-red-2 = großer Durst, Erbrechen, Bauchschmerz, Atem, der nach Obst riecht
card-diabetes-red-3 = Messgerät, Pumpe oder Zucker verloren oder kaputt
card-diabetes-life-1 = sie kann nicht schlucken, oder versteht nicht, was ihr sagt

## collapse
card-collapse = sie bricht zusammen, im Ziel oder davor
card-collapse-try-1 = ansprechen und auf die Brust schauen: keine Antwort oder kein normaler Atem heißt jetzt { $emergency } und Sanitäter
card-collapse-try-2 = wach und klar, hinter der Linie: hinlegen, Beine hoch, warm zudecken, jemand eine halbe Stunde daneben
card-collapse-try-3 = vor der Linie zusammengebrochen oder nicht klar im Kopf: sofort die Sanitäter, wie kurz es auch war
card-collapse-try-4 = heiß und verwirrt: erst kühlen, dann bewegen: nass machen, fächeln, Eis an Hals, Achseln und Leisten
card-collapse-try-5 = nichts zu trinken, bis Sanitäter sie gesehen haben, wenn sie erbricht, aufgebläht oder verwirrt ist oder Kopfweh hat
card-collapse-red-1 = sie kommt nach einigen Minuten im Liegen nicht wieder hoch

## wrong-turn
card-wrong-turn = vom Weg abgekommen
card-wrong-turn-try-1 = anhalten: einige Minuten keine Markierung heißt schauen, nicht weiterlaufen
card-wrong-turn-try-2 = Karte, Uhr und die letzte sichere Markierung vergleichen
card-wrong-turn-try-3 = auf demselben Weg zu dieser Markierung zurück, nie quer abkürzen
card-wrong-turn-try-4 = weiß sie nicht, wo sie ist: bleiben, warm anziehen, anrufen
card-wrong-turn-try-5 = der Crew sagen, wie lange es gekostet hat, damit sie sich nicht zur falschen Zeit sorgt
card-wrong-turn-red-1 = sie hat sich verlaufen und es wird dunkel, kalt oder neblig
card-wrong-turn-red-2 = sie ist in steilem oder gefährlichem Gelände
card-wrong-turn-red-3 = sie ist verletzt und allein
card-wrong-turn-red-4 = sie ist verwirrt, redet seltsam, weiß nicht, wo sie ist

## lost-kit
card-lost-kit = Lampe, Jacke, Telefon oder andere Pflichtausrüstung verloren oder kaputt
card-lost-kit-try-1 = sofort sagen, was fehlt; die Regeln können es verlangen
card-lost-kit-try-2 = ohne Licht oder warme Schicht: bis zum nächsten Punkt bei jemandem bleiben, der beides hat
card-lost-kit-try-3 = Crew: in welchem Auto ist der Ersatz, und liegt der Punkt noch vor ihr
card-lost-kit-try-4 = Telefon verloren: Crew und Rennleitung sagen, dass Stille von ihr nichts bedeutet
card-lost-kit-try-5 = kein Ersatz: an der Verpflegungsstelle fragen, bevor sie sie verlässt
card-lost-kit-red-1 = kein Licht, und Nacht vor dem nächsten Punkt
card-lost-kit-red-2 = keine warme oder wasserdichte Schicht, und schlechtes Wetter oder Höhe voraus

## drowsy-driver
card-drowsy-driver = wer fährt, ist schläfrig oder nickt am Steuer ein
card-drowsy-driver-try-1 = an der nächsten sicheren Stelle anhalten, Schlüssel abziehen; offenes Fenster und Musik halten niemanden wach
card-drowsy-driver-try-2 = jemand anders fährt oder niemand: schreib hier ‚ich kann nicht fahren‘, dann werden die anderen gefragt
card-drowsy-driver-try-3 = ein Kaffee (keiner für die, die keinen dürfen), dann zwanzig Minuten Schlaf im geparkten Auto, Wecker gestellt
card-drowsy-driver-try-4 = danach einmal ums Auto; noch schwere Augen heißt schlafen, nicht fahren
card-drowsy-driver-try-5 = sie kann warten, mit Decke und Verpflegung; eine Crew im Graben hilft niemandem
card-drowsy-driver-red-1 = der Kopf nickt, die Augen fallen zu, die Spur wird verlassen, die letzten Kilometer fehlen: keinen Meter weiter
card-drowsy-driver-red-2 = ein Unfall oder beinahe einer: zuerst { $emergency }, dann die Rennleitung
card-drowsy-driver-red-3 = niemand sonst kann fahren, und kein sicherer Platz zum Halten: der Rennleitung sagen

## runner-late
card-runner-late = sie ist spät dran, und niemand hat sie gesehen
card-runner-late-try-1 = in die Ergebnisse des Rennens schauen und die Rennleitung fragen, ob sie ungesehen durch ist
card-runner-late-try-2 = eine Person bleibt wach am Punkt; wer gehen darf, wird mit Namen gesagt, nie alle
card-runner-late-try-3 = auf die Frage ‚noch nicht hier‘ schreiben: das zählt; wer mehr weiß, schreibt das
card-runner-late-try-4 = niemand geht allein oder im Dunkeln auf die Strecke, um sie zu suchen
card-runner-late-try-5 = nicht immer wieder anrufen: ihr Akku ist vielleicht alles, was sie noch hat
card-runner-late-red-1 = sie hat um Hilfe gebeten oder klang zuletzt krank oder verwirrt
card-runner-late-red-2 = Sturm, Kälte, Hitze oder steiles Gelände, und kein Wort nach der spätesten erwarteten Zeit
card-runner-late-red-3 = der Schlussläufer ist durch, und sie wurde nicht gesehen
card-runner-late-red-4 = ein Alarm ist offen: zuerst tun, was er sagt, und bei Gefahr { $emergency } anrufen

## wants-to-stop
card-wants-to-stop = sie will aufhören
card-wants-to-stop-try-1 = ist sie verletzt oder krank, ist dies die falsche Karte: die andere nehmen
card-wants-to-stop-try-2 = nicht im Tief, nicht mit leerem Magen: erst warm, trocken, satt, zwanzig Minuten, ohne Geschrei
card-wants-to-stop-try-3 = fragen, was genau nicht stimmt; jede Antwort hat ihre Karte
card-wants-to-stop-try-4 = kein Warnzeichen auf einer Karte, der Weg voraus sicher: vielleicht bis zum nächsten Punkt, dort entscheiden
card-wants-to-stop-try-5 = es ist ihr Rennen: was sie warm und satt entscheidet, wird ihr nicht zweimal ausgeredet
card-wants-to-stop-try-6 = steigt sie aus: sofort der Rennleitung sagen, Nummer abgeben, im Warmen auf die Crew warten
card-wants-to-stop-red-1 = sie will aufhören und kann nicht sagen, warum, oder sagt Dinge ohne Sinn
card-wants-to-stop-red-2 = sie will an einer Stelle bleiben, die kein Punkt ist: die Rennleitung muss wissen, wo
card-wants-to-stop-red-3 = sie ist verwirrt, redet seltsam, weiß nicht, wo sie ist
