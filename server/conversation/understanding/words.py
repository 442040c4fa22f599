"""A message as a row of words: small letters, signs left out, digits and letters apart, clock times in one form.

Accents and umlauts are spelt out or dropped, so that a phone that has none finds the same words.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection

_UMLAUTS = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss", "œ": "oe", "æ": "ae"})
_APOSTROPHES = str.maketrans({"’": "'", "‘": "'", "`": "'", "´": "'", "ʼ": "'"})


def fold(text: str) -> str:
    """The text in small letters with umlauts spelt out and accents dropped: 'Brücke' and 'bruecke' are one word."""
    lower = unicodedata.normalize("NFKC", text).lower().translate(_APOSTROPHES).translate(_UMLAUTS)
    parts = unicodedata.normalize("NFD", lower)
    return "".join(c for c in parts if not unicodedata.combining(c))


_CLOCK = re.compile(r"(?<![\d.,:])(\d{1,2})(\.|:| : ?|h)(\d{2})(?![\d%])(?!\s*(?:km|mi|min|mins|percent)\b)")
_DECIMAL = re.compile(r"(?<!\d)(\d+)[.,](\d)(?!\d)")
_SPLIT = re.compile(r"(?<=\d)(?=[^\W\d_])|(?<=\bkm)(?=\d)|(?<=\bin)(?=\d)|(?<=\bout)(?=\d)|(?<=\bat)(?=\d)")
_ENDS = re.compile(r"(?<=\d)(?:st|nd|rd|th|ish)\b")
_DOTTED = re.compile(r"\b([ap])\.\s?m\b\.?")
# One sign of a picture is a word of its own ('👍'); everything between words is not.
_WORD = re.compile(r"\d{1,2}:\d{2}|\d+\.\d|#\d+|[^\W_]+|[%;]|[\U0001F000-\U0001FAFF☀-➿]")
LONGEST = 48
"""No word is longer: what is, is nonsense, and is cut."""


def words_of(text: str, elided: Collection[str] = ()) -> list[str]:
    """The words of a text. ';' stands for an end of a line or an item. `elided` are what an apostrophe parts from the next
    word ("l'eau"); in all others it is left out ("she's")."""
    t = re.sub(r"[\n;|]+", " ; ", fold(text))
    if "'" in t:
        t = re.sub(r"\b([^\W\d_]{1,2})'(?=[^\W\d_]{2})", lambda m: f"{m[1]} " if m[1] in elided else m[1], t)
        t = t.replace("'", "")
    t = _DOTTED.sub(r"\1m ", t)
    t = _CLOCK.sub(lambda m: f" {m[1]}:{m[3]} ", t)
    t = _DECIMAL.sub(r"\1.\2", t)
    t = _ENDS.sub("", t)
    t = _SPLIT.sub(" ", t)
    return [w[:LONGEST] for w in _WORD.findall(t)]


def asks(text: str) -> bool:
    """Whether it ends in a question mark."""
    return "?" in text
