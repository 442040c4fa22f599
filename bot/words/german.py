"""German sentences put into the plain English words that the tables know: phrase by phrase, longest first.

Written as on a phone: umlauts may be spelt out or left off, 'is', 'nich' and 'grad' stand for what they are. A
phrase that is missing is added to the table in `german_phrases`.
"""

from __future__ import annotations

import re

from bot.words.german_phrases import PHRASES
from bot.words.tidy import fold

_LOOSE = str.maketrans({"ä": "ae?", "ö": "oe?", "ü": "ue?", "ß": "ss?"})


def loose(pattern: str) -> str:
    """A pattern over folded text in which a vowel may have lost its umlaut: 'müssen' also finds 'mussen'."""
    return pattern.translate(_LOOSE)


REQUESTS = {
    "treffen": "next meeting", "treffs": "next meeting", "treff": "next meeting", "treffpunkt": "next meeting",
    "treffpunkte": "next meeting", "termine": "next meeting", "ziele": "goals", "etappenziele": "goals",
    "zielzeiten": "goals", "zeiten": "plan", "zeitplan": "plan", "fahrplan": "plan", "durchgangszeiten": "plan",
    "abfahrt": "leave", "abfahrtszeit": "leave", "abfahrtszeiten": "leave", "losfahren": "leave", "fahrt": "drive",
    "fahrzeit": "drive", "fahrer": "drivers", "fahrerin": "drivers", "ausruestung": "kit", "packliste": "kit",
    "sachen": "kit", "gepaeck": "kit", "verpflegung": "food", "essen": "food", "leute": "who is where",
    "crew": "who is where",
    "wetter": "weather", "nummern": "numbers", "telefonnummern": "numbers", "notfallnummern": "numbers",
    "karten": "cards", "profil": "profile", "streckenprofil": "profile", "bild": "picture", "karte": "map",
    "zeitlimits": "cutoffs", "aufgabe": "what is my job", "aufgaben": "what is my job", "neuigkeiten": "latest",
    "stand": "latest", "alarm": "alarms", "alarme": "alarms", "befehle": "commands", "anleitung": "commands",
    "standort": "where is she", "position": "where is she", "sonnenuntergang": "when is sunset", "naechste": "next",
    "naechster": "next", "naechstes": "next",
}  # fmt: skip
"""Requests in one German word, in the word of the English tables: alone, no other word of theirs says their language."""


def request(text: str) -> str:
    """The English of a request in one German word; '' for anything else."""
    return REQUESTS.get(re.sub(r"[^\w]+", "", fold(text.lower())), "")


_COMPILED = tuple((re.compile(loose(p)), to) for p, to in PHRASES)

# One word as it is spoken or typed -> the word of the phrases.
_SPOKEN = {
    "is": "ist", "iss": "ist", "issn": "ist", "isn": "ist", "isses": "ist es", "ists": "ist es", "nich": "nicht",
    "net": "nicht", "ned": "nicht", "nid": "nicht", "nix": "nichts", "nischt": "nichts", "grad": "gerade",
    "grade": "gerade", "ham": "haben", "hamma": "haben wir", "hammer": "haben wir", "hab": "habe", "solln": "sollen",
    "muessn": "muessen", "mussn": "muessen", "gehts": "geht es", "gibts": "gibt es", "jo": "ja", "jau": "ja",
    "joa": "ja", "jup": "ja", "jap": "ja", "jepp": "ja", "jawohl": "ja", "nee": "nein", "noe": "nein", "ner": "einer",
    "nen": "einen", "nem": "einem", "se": "sie", "jetz": "jetzt", "etz": "jetzt", "heut": "heute", "gesehn": "gesehen",
    "gsehn": "gesehen", "fahrn": "fahren", "mitm": "mit dem", "beim": "bei", "glaub": "glaube", "hoff": "hoffe",
    "schaetz": "schaetze", "kanns": "kann es", "kotzuebel": "schlecht", "er": "sie", "ihm": "ihr", "ihn": "sie",
    "mim": "mit dem", "duch": "durch", "druch": "durch", "dursch": "durch", "angekomen": "angekommen",
    "angekommn": "angekommen", "gekomen": "gekommen", "verlaufn": "verlaufen", "weitr": "weiter", "kaputt": "kaputt",
    "naechst": "naechste", "wanns": "wann es", "dauerts": "dauert es", "keiner": "niemand", "keine": "niemand",
    "mir": "mir", "min": "min", "minuten": "min", "minute": "min", "std": "stunde", "stunden": "stunde",
    "siehts": "sieht es", "schaffts": "schafft es", "kommts": "kommt sie", "drinne": "drin",
}  # fmt: skip
# fmt: off
_FILLERS = frozenset(
    "denn eigentlich bitte mal ma gell halt eh doch auch ungefaehr ca leute jungs maedels sag nochmal ueberhaupt".split()  # noqa: SIM905
)
# fmt: on
# 'keine' is 'nobody' only where nothing follows that it counts.
_COUNTED = re.compile(
    r"\bniemand(?= (?:ahnung|spur|zeit|lust|neuigkeiten|meldung|blasen|energie|kraft|probleme))"
)

_UNITS = {
    "ein": 1, "eins": 1, "zwei": 2, "zwo": 2, "drei": 3, "vier": 4, "fuenf": 5, "funf": 5, "sechs": 6, "sieben": 7,
    "acht": 8, "neun": 9, "zehn": 10, "elf": 11, "zwoelf": 12, "zwolf": 12, "dreizehn": 13, "vierzehn": 14,
    "fuenfzehn": 15, "funfzehn": 15, "sechzehn": 16, "siebzehn": 17, "achtzehn": 18, "neunzehn": 19,
}  # fmt: skip
_TENS = {"zwanzig": 20, "dreissig": 30, "vierzig": 40, "fuenfzig": 50, "funfzig": 50}
_NUMBERS = {
    **_UNITS,
    **_TENS,
    **{f"{u}und{t}": n + m for t, m in _TENS.items() for u, n in _UNITS.items() if n < 10 and u != "eins"},
}

# Words that say a sentence is German, and words that say it is English; those of both languages say nothing.
_GERMAN = re.compile(
    loose(
        r"\b(?:wann|wo|wie|wer|wen|sie|ist|isses|issn|ihr|ihre|nicht|nich|nix|net|und|wir|haben|ham|hab|habt|ich|"
        r"du|noch|"
        r"schon|angekommen|hilfe|verletzt|ja|jo|nein|nee|nö|raus|rein|gerade|grad|sind|bin|bist|braucht|soll|"
        r"sollen|solln|"
        r"vorbei|beenden|beendet|beide|beiden|geparkt|entwarnung|hilft|(?<!i )am (?!i\b)|darf|auch|bin|weiter|"
        r"vor \d+|uhr|halb|viertel|dreiviertel|ziel|danach|dunkel|verpasst|übernehme|wach|danke|eben|zeitplan|"
        r"rückgängig|"
        r"los|durch|aus|nach|bei|beim|im|zum|zur|kommt|geht|läuft|schläft|sitzt|isst|trinkt|warten|weiter|unterwegs|"
        r"jetzt|gleich|muss|müssen|kann|könnt|mach|mache|alles|klar|verstanden|passt|kein|keine|keiner|niemand|da|"
        r"letzte|meldung|neues|nächste[rns]?|treffpunkt|fahren|fahrt|losfahren|mitnehmen|mitbringen|essen|trinken|stimmt|falsch|"
        r"verlaufen|verirrt|gestürzt|gesehen|schlecht|übel|müde|kaputt|kalt|blase|blasen|füße|pause|pennt|weg|drin|"
        r"rennleitung|weiss|vom|es|unser\w*|die|der|das|den|dem|ein|eine|einen|ruft|bergwacht|arzt|mit|auf|für|von|uns|sich|auch|mal|denn|steh|"
        r"steht|stehe|wieder|vor|ne|"
        r"angeblich|gestartet|hoffentlich|vielleicht|wahrscheinlich|aufgehört|aufgegeben|ausgestiegen|besenwagen|schlussläufer|"
        r"wo|was|welche[rsnm]?|warum|wieviel|seit|kurz|mitternacht|um|wird|wurde|hat|habe|geworden|geschafft|"
        r"sonnenuntergang|sonnenaufgang|startnummer|zeitlimit|entwarnung|fehlalarm|krank|fertig|hier|nochmal|bitte)\b"
    )
)
_ENGLISH = re.compile(
    r"\b(?:the|she|where|when|what|how|who|is she|are|we|you|do|does|did|has|have|her|at|left|out|yet|now|"
    r"here|there|next|and|of|to|from|she's|shes|been|not|just|should|will|for|on|it)\b"
)


def is_german(text: str, reader_language: str) -> bool:
    """Whether a sentence is German: two of its words say so, or one and the writer reads German; and no fewer
    than say it is English."""
    if request(text):
        return True
    folded = fold(text.lower())
    marks, against = len(_GERMAN.findall(folded)), len(_ENGLISH.findall(folded))
    return marks >= (1 if reader_language.startswith("de") else 2) and marks >= against


def to_english(text: str) -> str:
    """The sentence with German phrases put into the words of the tables; names stay."""
    alone = request(text)
    if alone:
        return alone
    t = re.sub(r"(?<=\d)[.:](?=\d\d\b)", ":", fold(text.lower()))
    t = re.sub(r"(?<=\d) ?uhr ?(?=\d\d\b)", ":", t)
    t = re.sub(r"(?<=\d)(?=min|uhr|std)", " ", t)
    # Names keep their own marks: only what parts sentences and times matters from here on.
    t = re.sub(r"[^\w\s:;?%#/+.,\n-]", " ", t)
    words = (w for w in re.findall(r"[\w#%]+|[^\w\s]|\n", t) if w not in _FILLERS)
    t = " ".join(str(_NUMBERS.get(w, _SPOKEN.get(w, w))) for w in words)
    t = re.sub(r"(?<=\d) ([:.]) (?=\d)", r"\1", t)
    t = re.sub(r"^ne\b", "nein", t).replace(" ne ", " eine ")
    t = _COUNTED.sub("keine", t)
    t = _times(t)
    for pattern, to in _COMPILED:
        t = pattern.sub(to, t)
    return t


_HALF_NEAR = re.compile(r"\b(\d{1,2}|kurz)(?: min)? (vor|nach) halb (\d{1,2})\b")
_HALF = re.compile(r"\bhalb (\d{1,2})\b")
_THREE_QUARTERS = re.compile(r"\b(?:dreiviertel|3 ?viertel) (\d{1,2})\b")
_QUARTER_OF = re.compile(r"\bviertel (\d{1,2})\b")


def _clock(hour: int, minute: int) -> str:
    """A 12-hour clock time as it is spoken: 'halb drei' may be 02:30 or 14:30, so it carries no leading nought."""
    hour, minute = divmod(hour * 60 + minute, 60)
    return f"{(hour - 1) % 12 + 1 if hour <= 12 else hour}:{minute:02d}"


def _near_half(m: re.Match[str]) -> str:
    off = 2 if m[1] == "kurz" else int(m[1])
    return _clock(int(m[3]) - 1, 30 - off if m[2] == "vor" else 30 + off)


def _times(t: str) -> str:
    """German clock times: 'halb drei' is half past two, 'dreiviertel drei' a quarter to three, 'viertel drei' a
    quarter past two."""
    t = re.sub(r"\b0 uhr\b", "00:00", t)
    t = _HALF_NEAR.sub(_near_half, t)
    t = _HALF.sub(lambda m: _clock(int(m[1]) - 1, 30), t)
    t = _THREE_QUARTERS.sub(lambda m: _clock(int(m[1]) - 1, 45), t)
    return _QUARTER_OF.sub(lambda m: _clock(int(m[1]) - 1, 15), t)
