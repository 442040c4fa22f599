"""A sentence as typed on a phone -> plain lower-case words: no punctuation, slang and typos written out.

'he' and 'him' become 'she' and 'her', number words become digits, so that the tables of questions and reports
see one form of each thing. Nothing here knows of events.
"""

from __future__ import annotations

import re
import unicodedata

from rapidfuzz import process
from rapidfuzz.distance import OSA

from bot.words.everyday import RIGHT_AS_IT_IS

# One word as written (without apostrophe) -> as the tables know it.
WRITTEN_OUT = {
    "wheres": "where is", "whens": "when is", "whats": "what is", "hows": "how is", "whos": "who is",
    "shes": "she is", "hes": "she is", "theyre": "they are", "theyve": "they have", "weve": "we have",
    "were are": "where are", "ive": "i have", "im": "i am", "dont": "do not", "doesnt": "does not",
    "didnt": "did not", "havent": "have not", "hasnt": "has not", "isnt": "is not", "arent": "are not",
    "wont": "will not", "cant": "can not", "cannot": "can not", "couldnt": "could not", "its": "it is",
    "thats": "that is", "theres": "there is", "lets": "let us", "shell": "she will", "hell": "she will",
    "theyll": "they will", "itll": "it will", "youre": "you are", "wasnt": "was not", "whend": "when did",
    "whered": "where did", "howd": "how did", "whatll": "what will", "whenll": "when will",
    "whatre": "what are", "u": "you", "ur": "your", "r": "are", "pls": "please", "plz": "please",
    "gonna": "going to", "gotta": "have to", "wanna": "want to", "shoulda": "should have",
    "mighta": "might have", "coulda": "could have", "gunna": "going to", "bout": "about", "til": "until",
    "till": "until", "b4": "before", "thru": "through", "thro": "through", "rn": "right now",
    "atm": "right now", "mins": "min", "minutes": "min", "minute": "min", "minuets": "min", "minuts": "min",
    "hrs": "hour", "hours": "hour", "hr": "hour", "h": "hour", "cutoff": "cutoff", "cutoffs": "cutoff",
    "he": "she", "him": "her", "his": "her", "wen": "when", "wher": "where", "wat": "what", "wot": "what",
    "whn": "when", "ware": "where", "hav": "have", "hv": "have", "shud": "should", "cud": "could", "wud": "would",
    "w": "with", "yr": "your", "tmrw": "tomorrow", "ok": "ok", "okay": "ok", "okey": "ok",
    "yep": "yes", "yeah": "yes", "yup": "yes", "ya": "yes", "nope": "no", "nah": "no", "noon": "12:00 pm",
    "midday": "12:00 pm", "midnight": "00:00", "headtorch": "head torch", "headlamp": "head torch",
    "omw": "on our way", "ppl": "people", "every1": "everyone", "any1": "anyone", "gr8": "great",
    "approx": "about", "roughly": "about", "around": "about", "estimated": "eta", "arival": "arrival",
    "schedual": "schedule", "dnf": "dnf", "dnfed": "dnf", "dnfd": "dnf", "dns": "dns", "alright": "ok",
    "percent": "percent", "pc": "percent", "peed": "peeing", "pee": "peeing", "everybody": "everyone",
    "anybody": "anyone", "jus": "just", "shuld": "should", "thx": "thanks", "ty": "thanks", "cheers": "thanks",
    "ta": "thanks", "hiya": "hi", "gd": "good", "nvm": "never mind", "nxt": "next", "lst": "last", "abt": "about",
    "stil": "still", "arived": "arrived", "thee": "the", "teh": "the", "hte": "the", "adn": "and",
    "shee": "she", "sge": "she", "whe": "when", "hwo": "how", "hoe": "how", "woh": "who", "iz": "is",
}  # fmt: skip

_HOURS = (
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "noon",
)
_PHRASES = (
    (r"\bcut[ -]?offs?\b", "cutoff"),
    (r"\bcut off time(s)?\b", "cutoff"),
    (r"\bhead[ -]?(torch|lamp|light)(es|s)?\b", "head torch"),
    (r"\b(a|p)\.m\.?", r"\1m"),
    (r"(?<=\d) ?%", " percent"),
    (r"\bper ?cent\b", "percent"),
    (r"\bo['’ ]?clock\b", "oclock"),
    (r"\bcheck[- ]?in\b", "check in"),
    (r"\b(past|to|after|before) midnight\b", r"\1 24"),
    (r"\b(past|to|after|before) (?:noon|midday)\b", r"\1 12"),
    (r"(?<=\d)ish\b", ""),
    (
        r"\bill (?=(?:ring|call|phone|take|go|do|be|get|bring|drive|have|let|come|sort|fetch|pick|wait|meet|see|check)\b)",
        "i will ",
    ),
    (r"\bw(?:tf|th) is\b", "where is"),
    (r"\b(?:bang|dead|spot|exactly|dot) (?:on|at) (?=\d|" + "|".join(_HOURS) + r")", "at "),
    (r"\bdid not finish\b", "dnf"),
    (r"\bdid not start\b", "dns"),
    (r"\b(i|you|we|she|he|they|it)'ll\b", r"\1 will"),
    (r"\b(i|you|we|they)'ve\b", r"\1 have"),
    (r"\b(you|we|they)'re\b", r"\1 are"),
    (r"^were (?=(?:is|are|she|was)\b)", "where "),
    (r"^were (?=(?:at|here|parked|on|leaving|off|going|there|in)\b)", "we are "),
)

_UNITS = {
    "zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15,
    "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
}  # fmt: skip
_TENS = {"twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50}

# Words worth mending when mistyped: the ones that the tables turn on. Only long ones, one slip (two from 8).
MENDED = (
    "where", "when", "finish", "finished", "arrive", "arrived", "arriving", "arrival", "leave", "leaving",
    "missed", "bring", "drive", "driving", "retired", "through", "sweep", "sweeper", "schedule", "behind",
    "ahead", "torch", "position", "location", "cutoff", "wait", "waiting", "should", "expected", "resting",
    "sleeping", "moving", "running", "station", "percent", "slower", "everyone", "control", "number",
    "quarter", "midnight", "yesterday", "timetable", "spotted", "correction", "eating", "drinking",
    "awake", "next", "dark", "reached", "minutes", "stomach", "blister", "vomiting", "already", "heading",
    "headed", "meeting", "passed", "emergency", "injured", "batteries", "started", "picked", "dropped", "pulled",
)  # fmt: skip


def _numbers(words: list[str]) -> list[str]:
    """Number words to digits: 'twenty five' 25, 'oh five' 05. 'one' stays unless a time is near it."""
    out: list[str] = []
    i = 0
    while i < len(words):
        w, nxt = words[i], words[i + 1] if i + 1 < len(words) else ""
        if w in _TENS:
            unit = _UNITS.get(nxt, 0)
            joined = 0 < unit < 10
            out.append(str(_TENS[w] + (unit if joined else 0)))
            i += 2 if joined else 1
            continue
        if w == "oh" and nxt in _UNITS and _UNITS[nxt] < 10:
            out.append(f"0{_UNITS[nxt]}")
            i += 2
            continue
        if w in ("oh", "o") and len(nxt) == 1 and nxt.isdigit() and out and out[-1].isdigit():
            out.append(f"0{nxt}")
            i += 2
            continue
        if w == "one":
            before = out[-1] if out else ""
            dictated = before.isdigit() and nxt in _UNITS
            timely = (
                dictated
                or before in ("at", "past", "to", "half")
                or nxt in ("am", "pm", "oclock", "hour", "min")
            )
            out.append("1" if timely else w)
        elif w in _UNITS:
            out.append(str(_UNITS[w]))
        else:
            out.append(w)
        i += 1
    return out


def mend(word: str, known: frozenset[str]) -> str:
    """A mistyped key word as it was meant; any other word as it is."""
    if len(word) < 4 or not word.isalpha() or word in known or word in MENDED or word in RIGHT_AS_IT_IS:
        return word
    allowed = 1 if len(word) < 8 else 2
    found = process.extractOne(word, MENDED, scorer=OSA.distance, score_cutoff=allowed)
    if found is None or found[0][0] != word[0] or len(found[0]) < 4:
        return word
    return str(found[0])


_UMLAUTS = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss", "Ä": "Ae", "Ö": "Oe", "Ü": "Ue"})


def fold(text: str) -> str:
    """The text with umlauts spelt out, so that 'Brücke' and 'Bruecke' are one word, in names too."""
    return unicodedata.normalize("NFKC", text).translate(_UMLAUTS)


_THUMBS = (
    *((sign, " ok ") for sign in "👍👌🆗✅"),
    *((sign, " no ") for sign in "👎❌"),
    ("🙏", " thanks "),
)


def _signs(text: str) -> str:
    """A sign that stands alone is a word; among words it is decoration. A cry for help is one wherever it stands."""
    text = text.replace("🆘", " sos ")
    if re.search(r"\w", text):
        return text
    for sign, word in _THUMBS:
        text = text.replace(sign, word)
    return text


def tidy(text: str, known: frozenset[str] = frozenset()) -> str:
    """The sentence in plain words. `known` are words that are right as they are (names). ';' and line ends
    stay as ' ; ', a question mark at the end as ' ?', clock times as '14:35'."""
    t = fold(_signs(text)).lower().replace("’", "'").replace("‘", "'").replace("`", "'")
    t = re.sub(r"[\n;|]+", " ; ", t)
    for pattern, to in _PHRASES:
        t = re.sub(pattern, to, t)
    t = re.sub(r"\b(\d{1,2})[.:h](\d{2})(?!\d)(?!\s*(?:km|mi|percent))", r"\1:\2", t)
    t = re.sub(r"(\d)(am|pm|km|mins?|hrs?|minutes?|hours?|h)\b", r"\1 \2", t)
    t = re.sub(r"(?<=[a-z])'s\b(?=\s+(?:phone|number|car|name|mum|dad|wife|husband))", "", t)
    t = re.sub(r"(?<=[a-z])'(?=[a-z])", "", t)
    asked = "?" in t
    t = re.sub(r"(?<!\d):|:(?!\d)", " ", t)
    t = re.sub(r"[^\w\s;:#]+", " ", t).replace("_", " ")
    words: list[str] = []
    for w in t.split():
        words.extend((WRITTEN_OUT[w] if w in WRITTEN_OUT and w not in known else mend(w, known)).split())
    words = _numbers(words)
    return " ".join(words) + (" ?" if asked else "")
