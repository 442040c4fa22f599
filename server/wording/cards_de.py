"""The built-in if-then cards in German: the same troubles, steps and red flags as `server.wording.cards`."""

from __future__ import annotations

from typing import Final

from server.event.model import IfThenCard

MEDIC: Final = "die Sanitäter am Punkt; zwischen Punkten die Rennleitung, {race_control}"
RACE_CONTROL: Final = "die Rennleitung, {race_control}"

RED_FLAG: Final = (
    "Bei einem einzigen dieser Zeichen: jetzt Sanitäter holen, sie geht nicht weiter, bis die Sanitäter sie gesehen und es "
    "erlaubt haben. Bei Lebensgefahr (sie wacht nicht auf, atmet nicht wie sonst, blutet stark) zuerst {emergency} anrufen "
    "und tun, was sie sagen, dann die Rennleitung, {race_control}."
)

ALWAYS: Final = (
    "sie ist verwirrt, redet seltsam, weiß nicht, wo sie ist",
    "sie wird ohnmächtig, krampft oder ist kaum zu wecken",
    "Brustschmerz oder Atemnot in Ruhe; pfeifender Atem, oder Lippen, Zunge oder Gesicht schwellen an",
)

CARDS: Final = (
    IfThenCard(
        "feet",
        "Druckstelle, Blase, nasse oder geschwollene Füße",
        (
            "beim ersten Reiben anhalten, nicht erst am nächsten Punkt",
            "Schuh und Socke aus, Sand heraus, Fuß trocknen",
            "tapen oder abdecken, wie sie es geübt hat; frische trockene Socken",
            "lockerer schnüren, wenn der Fuß geschwollen ist; Ersatzschuhe eine halbe Nummer größer",
            "Blasen, die mehr als eine Abdeckung brauchen, sind Sache der Sanitäter",
        ),
        MEDIC,
        (
            "sie kann den Fuß nicht belasten",
            "taube, weiße oder blaue Zehen, die nicht warm werden",
            "ein tiefer Schnitt oder eine Wunde, die heiß und rot ist und sich ausbreitet",
            *ALWAYS,
        ),
    ),
    IfThenCard(
        "stomach",
        "Übelkeit, Erbrechen, nichts bleibt drin",
        (
            "ins Gehen wechseln, aus der Sonne, lockern, was auf den Magen drückt",
            "zehn bis zwanzig Minuten nichts essen, dann kleine Bissen von etwas Einfachem",
            "schluckweise nach Durst trinken, nicht mehr; keine Schmerz- oder Salztabletten ohne die Sanitäter",
            "statt süß salzig, statt kalt warm",
            "eine halbe Stunde abwarten, bevor etwas entschieden wird",
        ),
        MEDIC,
        (
            "immer wieder Erbrechen, oder mit Blut oder schwarz",
            "starke Kopfschmerzen, Hände oder Gesicht dick, schwerer als am Start: zu viel getrunken, nichts mehr trinken",
            "nicht einmal kleine Schlucke Wasser bleiben drin",
            "viele Stunden kein Urin, oder er ist dunkel wie Cola",
            "Bauchschmerz, der nicht nachlässt",
            *ALWAYS,
        ),
    ),
    IfThenCard(
        "fall",
        "sie ist gestürzt",
        (
            "erst fragen: schmerzen Kopf, Hals oder Rücken, kribbelt etwas? Dann bleibt sie liegen, und ihr ruft an",
            "sonst hinsetzen, atmen; Handgelenke, Rippen, Knie: was schmerzt, was bewegt sich nicht",
            "im Sitzen warm anziehen",
            "aufstehen, fünfzig Meter gehen, dann entscheiden",
            "eine Schürfwunde säubern und abdecken; alles Tiefere ist Sache der Sanitäter",
        ),
        MEDIC,
        (
            "sie hat sich den Kopf gestoßen, auch wenn sie sich gut fühlt",
            "Schmerzen in Hals oder Rücken, Kribbeln oder kein Gefühl in Arm oder Bein: nicht bewegen",
            "eine Blutung, die unter fester Hand nicht aufhört: weiter drücken",
            "sie kann nicht gehen, oder ein Gelenk oder Knochen sieht falsch aus",
            *ALWAYS,
        ),
    ),
    IfThenCard(
        "wrong-turn",
        "vom Weg abgekommen",
        (
            "anhalten: einige Minuten keine Markierung heißt schauen, nicht weiterlaufen",
            "Karte, Uhr und die letzte sichere Markierung vergleichen",
            "auf demselben Weg zu dieser Markierung zurück, nie quer abkürzen",
            "weiß sie nicht, wo sie ist: bleiben, warm anziehen, anrufen",
            "der Crew sagen, wie lange es gekostet hat, damit sie sich nicht zur falschen Zeit sorgt",
        ),
        RACE_CONTROL,
        (
            "sie hat sich verlaufen und es wird dunkel, kalt oder neblig",
            "sie ist in steilem oder gefährlichem Gelände",
            "sie ist verletzt und allein",
            "sie ist verwirrt, redet seltsam, weiß nicht, wo sie ist",
        ),
    ),
    IfThenCard(
        "weather",
        "Sturm, Gewitter, Nebel, große Hitze oder Kälte im Anzug",
        (
            "warme und wasserdichte Schicht anziehen, bevor sie friert, im Windschatten",
            "Gewitter: weg von Graten und einzelnen Bäumen, Stöcke weg vom Körper",
            "Nebel: langsamer, von Markierung zu Markierung, mit denen, die in der Nähe sind",
            "Hitze: Schatten, Wasser auf Kopf und Nacken, gehen",
            "Höhe voraus: vor dem Aufstieg die Rennleitung fragen; das Rennen kann angehalten sein",
        ),
        RACE_CONTROL,
        (
            "sie zittert ohne Ende, oder zittert nicht mehr und ist noch kalt",
            "heiß, und sie taumelt, ist verwirrt oder fällt, ob sie schwitzt oder nicht: Schatten, Wasser, Hilfe rufen",
            "jemand wurde getroffen oder kommt allein nicht hinunter",
            *ALWAYS,
        ),
    ),
    IfThenCard(
        "lost-kit",
        "Lampe, Jacke, Telefon oder andere Pflichtausrüstung verloren oder kaputt",
        (
            "sofort sagen, was fehlt; die Regeln können es verlangen",
            "ohne Licht oder warme Schicht: bis zum nächsten Punkt bei jemandem bleiben, der beides hat",
            "Crew: in welchem Auto ist der Ersatz, und liegt der Punkt noch vor ihr",
            "Telefon verloren: Crew und Rennleitung sagen, dass Stille von ihr nichts bedeutet",
            "kein Ersatz: an der Verpflegungsstelle fragen, bevor sie sie verlässt",
        ),
        RACE_CONTROL,
        (
            "kein Licht, und Nacht vor dem nächsten Punkt",
            "keine warme oder wasserdichte Schicht, und schlechtes Wetter oder Höhe voraus",
        ),
    ),
    IfThenCard(
        "cannot-get-warm",
        "ihr ist kalt und sie wird nicht warm",
        (
            "aus dem Wind, Nasses aus, alles Trockene an, Mütze und Kapuze; nicht reiben, kein Alkohol",
            "weg vom Boden: auf einen Rucksack setzen, Decke herum",
            "etwas Warmes, Süßes, wenn sie wach ist und gut schluckt",
            "ins Auto oder Zelt, mit jemandem neben ihr",
            "sie geht erst weiter, wenn sie warm und trocken ist, in mehr, als sie anhatte",
        ),
        MEDIC,
        (
            "sie zittert ohne Ende, oder zittert nicht mehr und ist noch kalt: liegen lassen, sanft bewegen",
            "verwaschene Sprache, ungeschickte Hände, Stolpern",
            "weiße oder taube Finger, Zehen, Nase oder Ohren",
            *ALWAYS,
        ),
    ),
    IfThenCard(
        "wants-to-stop",
        "sie will aufhören",
        (
            "ist sie verletzt oder krank, ist dies die falsche Karte: die andere nehmen",
            "nicht im Tief, nicht mit leerem Magen: erst warm, trocken, satt, zwanzig Minuten, ohne Geschrei",
            "fragen, was genau nicht stimmt; jede Antwort hat ihre Karte",
            "kein Warnzeichen auf einer Karte, der Weg voraus sicher: vielleicht bis zum nächsten Punkt, dort entscheiden",
            "es ist ihr Rennen: was sie warm und satt entscheidet, wird ihr nicht zweimal ausgeredet",
            "steigt sie aus: sofort der Rennleitung sagen, Nummer abgeben, im Warmen auf die Crew warten",
        ),
        RACE_CONTROL,
        (
            "sie will aufhören und kann nicht sagen, warum, oder sagt Dinge ohne Sinn",
            "sie will an einer Stelle bleiben, die kein Punkt ist: die Rennleitung muss wissen, wo",
            *ALWAYS,
        ),
    ),
)
