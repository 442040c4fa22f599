"""Names in a row of words: points, runners, people; with slips, and with the tie said where there is one.

A point answers to its name, its other names, its id, to any word of its name that no other place has and that is no
everyday word, and to such a word in another language ('die Brücke'). One place passed twice is two points of one name: which
of them is meant depends on where the runner is, so that is settled by the caller; a tie between different places is asked
back.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache

from rapidfuzz import fuzz

from server.conversation.telling.answer import PointHere, RunnerHere
from server.conversation.understanding.language import Lexicon, lexicon

# Under ENOUGH (0..100) a name is not recognised at all; under SURE it is recognised but guessed.
ENOUGH, SURE = 82.0, 90.0
MOST_WORDS = 4
REMEMBERED = 4096
"""So many words are remembered with the names they are like."""
NAME_ENOUGH, PERSON_ENOUGH = 79.0, 88.0
"""One letter wrong in five is 80: enough for a runner's name, as long as the first letter holds."""


@dataclass(frozen=True, slots=True)
class Named:
    """A point mentioned. `ids` one, or more where the same words fit several; `same_place` whether those are
    one place passed more than once. `score` 0..100; `start`, `end` the words that name it."""

    ids: tuple[str, ...]
    words: str
    score: float
    same_place: bool
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Somebody:
    """A runner or a person mentioned by the words `start` to `end`; `by_bib` a runner by her number."""

    id: str
    score: float
    start: int
    end: int
    by_bib: bool = False


@dataclass(frozen=True)
class Aliases:
    """Every way to call the points: by the whole words, and by first letter for slips."""

    exact: dict[str, tuple[tuple[str, ...], bool]]
    by_letter: dict[str, tuple[str, ...]]
    seen: dict[str, tuple[tuple[str, float], ...]]

    def near(self, gram: str) -> tuple[tuple[str, float], ...]:
        """The names that words are like, with how much; remembered, since words come again."""
        found = self.seen.get(gram)
        if found is None:
            words = lexicon()
            likely = (a for a in self.by_letter.get(gram[0], ()) if _long_as(a, gram))
            scored = ((a, _score(gram, a, words)) for a in likely)
            found = tuple((a, s) for a, s in scored if s)
            if len(self.seen) > REMEMBERED:
                self.seen.clear()
            self.seen[gram] = found
        return found


def _plain(name: str, words: Lexicon) -> str:
    return " ".join(words.words(name))


def place_name(name: str) -> str:
    """The name without what tells its passes apart: 'Long Stile back' -> 'long stile'."""
    words = lexicon()
    plain = _plain(name, words).split()
    while len(plain) > 1 and plain[-1] in words.names["passes"]:
        plain.pop()
    return " ".join(plain)


def _without_the(phrase: str, words: Lexicon) -> str:
    first, _, rest = phrase.partition(" ")
    return rest if rest and first in words.names["the"] else phrase


@lru_cache(maxsize=64)
def aliases(points: tuple[PointHere, ...]) -> Aliases:
    """Every way to call a point, with the ids that it fits and whether those are one place."""
    words = lexicon()
    calls: dict[str, list[str]] = {}
    where = {p.id: place_name(p.name) for p in points}
    finish = words.read["finish"].whole

    def add(phrase: str, point: str) -> None:
        if phrase and phrase not in finish and point not in calls.setdefault(phrase, []):
            calls[phrase].append(point)

    for p in points:
        plain = _plain(p.name, words)
        for phrase in (
            plain,
            where[p.id],
            _plain(p.id.replace("-", " "), words),
            *(_plain(a, words) for a in p.also),
        ):
            add(phrase, p.id)
            add(_without_the(phrase, words), p.id)
        numbered = re.fullmatch(r"(.*?) ?(\d+)", plain)
        if numbered:
            for short in (*words.names["station"], numbered[1].split()[0] if numbered[1] else ""):
                add(f"{short} {numbered[2]}", p.id)
                add(f"{short}{numbered[2]}", p.id)
    shared = _of_stretches(points, words)
    for p in points:
        for word in where[p.id].split():
            if len(word) >= 4 and word not in shared and word not in words.names["none"] and word.isalpha():
                for q in points:
                    if word in where[q.id].split():
                        add(word, q.id)
    for other, ids in _in_other_words(points, where, words).items():
        if other not in calls and other not in words.names["none"] and other not in shared:
            for point in ids:
                add(other, point)
    exact = {w: (tuple(ids), len({where[i] for i in ids}) == 1) for w, ids in calls.items()}
    letters: dict[str, list[str]] = {}
    for w in exact:
        if len(w) > 4:
            letters.setdefault(w[0], []).append(w)
    return Aliases(exact, {k: tuple(v) for k, v in letters.items()}, {})


def _of_stretches(points: tuple[PointHere, ...], words: Lexicon) -> frozenset[str]:
    """Words for a kind of place that a stretch of the course has in its name, in any language: where 'Ember moss' is one,
    'the moss' is not surely Candle Moss."""
    said = {w for p in points[:1] for name in p.beside for w in words.words(name)}
    return frozenset().union(*(same for same in words.places if same & said))


def is_kind(word: str) -> bool:
    """Whether a word names a kind of place: 'gate', 'Mühle'."""
    return any(word in same for same in lexicon().places)


_NTH = re.compile(r"\b\d+(?:st|nd|rd|th|ste|te|e|ème|eme|er|ère|\.)\s+(?P<word>[^\W\d]+)", re.IGNORECASE)


def of_no_name(named: Named, text: Sequence[str], written: str) -> bool:
    """Whether a word for a kind of place is said of another than the point that has it in its name: 'the second gate', 'a
    ford', 'the next mill down', of a place that has no name."""
    if named.end - named.start > 1 or not is_kind(named.words):
        return False
    read, before = lexicon().read, text[named.start - 1] if named.start else ""
    if read["some_one_of"].word(before) and not (before == "a" and "à" in written.lower()):
        return True
    nth = (m["word"].lower() for m in _NTH.finditer(written))
    return read["nameless"].has(text) or named.words in (" ".join(lexicon().words(w)) for w in nth)


def _in_other_words(
    points: tuple[PointHere, ...], where: dict[str, str], words: Lexicon
) -> dict[str, list[str]]:
    """What a place is called in another language; the ids that each word fits."""
    found: dict[str, list[str]] = {}
    for p in points:
        for word in where[p.id].split():
            for same in words.places:
                if word in same or any(len(w) > 4 and word.endswith(w) for w in same):
                    for other in same:
                        if other not in where[p.id]:
                            found.setdefault(other, []).append(p.id)
    return found


def _long_as(alias: str, gram: str) -> bool:
    """Whether two are near enough in length to be alike: at ENOUGH they can't differ by more than a third."""
    return len(gram) >= 4 and abs(len(alias) - len(gram)) <= 0.36 * max(len(alias), len(gram))


def _alike(said: list[str], name: list[str]) -> bool:
    """Whether no short word stands for a longer one: 'brindle at' is not 'Brindle Gate'."""
    if len(said) == len(name):
        pairs = zip(said, name, strict=True)
        return all(
            a == b or (len(a) >= 3 and fuzz.ratio(a, b) >= (60 if len(a) > 3 else 80)) for a, b in pairs
        )
    return all(len(a) > 3 or a in name for a in said)


@cache
def _time_words() -> frozenset[str]:
    """Words of time, which are no slips of a name."""
    return frozenset(p[0] for p, _ in lexicon().times if len(p) == 1)


def _score(gram: str, alias: str, words: Lexicon) -> float:
    if any(w in _time_words() and w not in alias.split() for w in gram.split()):
        return 0.0
    if re.findall(r"\d+", gram) != re.findall(r"\d+", alias) or not _alike(gram.split(), alias.split()):
        return 0.0
    short, name = _without_the(gram, words), _without_the(alias, words)
    if short != gram and name != alias:
        # What is common to both likens nothing: 'the castle' is not 'the stile'.
        gram, alias = short, name
    elif name != alias:
        return 0.0
    if len(alias) <= 4 or len(gram) < 4 or gram[0] != alias[0]:
        return 0.0
    if gram in words.names["none"] or gram in words.names["like"] or gram in words.numbers:
        return 0.0
    score = fuzz.ratio(gram, alias)
    return score if score >= ENOUGH else 0.0


def find_point(text: Sequence[str], points: tuple[PointHere, ...]) -> Named | None:
    """The point best named in a row of words; None if none is. Stand-ins ('<runner>') are no words."""
    known = aliases(points)
    best: Named | None = None
    best_key = (0.0, 0.0)
    for i in range(len(text)):
        for n in range(1, min(MOST_WORDS, len(text) - i) + 1):
            if text[i + n - 1][0] == "<":
                break
            gram = " ".join(text[i : i + n])
            for alias, score in ((gram, 100.0),) if gram in known.exact else known.near(gram):
                ids, same = known.exact[alias]
                key = ((score - 70) * len(alias), score)
                if key > best_key:
                    best, best_key = Named(ids, gram, score, same, i, i + n), key
                elif key == best_key and best is not None and best.start == i:
                    both = tuple(dict.fromkeys((*best.ids, *ids)))
                    best = Named(both, gram, score, best.same_place and same and len(both) == 1, i, i + n)
    return best


def which_pass(
    named: Named, text: Sequence[str], runner: RunnerHere, *, ahead: bool, crew: bool = False
) -> str | None:
    """The one point meant among the passes of a place: the words may say; else by where she is: the first not reached
    (`ahead`), or for a report where she is or the one next due; `crew`: the one where crew may meet her. None where it
    can't be told."""
    order = [p.id for p in runner.points if p.id in named.ids]
    if len(order) == 1:
        return order[0]
    if not order or not named.same_place:
        return None
    words = lexicon()
    open_ = [p.id for p in runner.points if p.id in order and p.crew_access]
    said = words.classes["back"].has(text) or words.classes["out_pass"].has(text)
    if crew and len(open_) == 1 and not said:
        return open_[0]
    if words.classes["back"].has(text):
        return order[-1]
    if words.classes["out_pass"].has(text):
        return order[0]
    ids = [p.id for p in runner.points]
    reached = ids.index(runner.reached) if runner.reached in ids else -1
    if not ahead and runner.at in order:
        return runner.at
    to_come = [i for i in order if ids.index(i) > reached]
    return to_come[0] if to_come else order[-1]


_MARKS = frozenset({"bib", "no", "nr", "number", "runner"})
_BEFORE_A_TIME = frozenset({"AT", "SINCE", "IN", "FOR", "BY", "PAST", "TO", "ABOUT", "BEFORE", "A", "AGOPRE", "HALF",
                            "HALFTO", "QUARTER", "KM", "AND"})  # fmt: skip
_AFTER_A_NUMBER = frozenset({"MIN", "HOUR", "HEURE", "KM", "PERCENT", "MILE", "AM", "PM", "AGO", "OCLOCK", "PAST", "TO",
                             "BEFORE"})  # fmt: skip


def find_bib(text: Sequence[str], signs: Sequence[str], bib: str) -> int | None:
    """The place of a bib with '#' or 'bib' before it; from two digits on also alone, where it can be no time or length.
    `signs` are the words of time (times.signs_of), one a word, '' where none stands for it."""
    for i, w in enumerate(text):
        if w == f"#{bib}":
            return i
        if w != bib:
            continue
        before, after = signs[i - 1] if i else "", signs[i + 1] if i + 1 < len(text) else ""
        if i and text[i - 1] in _MARKS:
            return i
        if len(bib) < 2 or (after.isdigit() and i + 1 < len(text) and len(bib) < 3):
            continue
        if before in _BEFORE_A_TIME or after in _AFTER_A_NUMBER:
            continue
        return i
    return None


def _dictated(text: Sequence[str], signs: Sequence[str], bib: str) -> int | None:
    """The place of a bib said digit by digit: 'two one four'."""
    digits = ["1" if s == "ONE" else "" if w.isdigit() else s for w, s in zip(text, signs, strict=True)]
    size = len(bib)
    return next((i for i in range(len(text) - size + 1) if digits[i : i + size] == list(bib)), None)


def find_runner(
    text: Sequence[str], signs: Sequence[str], runners: tuple[RunnerHere, ...]
) -> Somebody | None:
    """The runner named by first or full name (a slip allowed) or by her bib."""
    for r in runners:
        at = find_bib(text, signs, r.bib) if r.bib else None
        if at is not None:
            marked = at and text[at - 1] in _MARKS
            return Somebody(r.id, 100.0, at - 1 if marked else at, at + 1, by_bib=True)
        at = _dictated(text, signs, r.bib) if len(r.bib) > 2 else None
        if at is not None:
            return Somebody(r.id, 100.0, at, at + len(r.bib), by_bib=True)
    best: Somebody | None = None
    for r in runners:
        for alias in _calls(r.name, r.id):
            size = len(alias)
            for i in range(len(text) - size + 1):
                score = _names_her(text[i : i + size], alias)
                if score > (best.score if best else 0):
                    best = Somebody(r.id, score, i, i + size)
    return best


@lru_cache(maxsize=256)
def _calls(name: str, own_id: str) -> tuple[tuple[str, ...], ...]:
    words = lexicon()
    full = tuple(words.words(name))
    return tuple(dict.fromkeys(c for c in (full, full[:1], tuple(words.words(own_id))) if c))


def _names_her(said: Sequence[str], alias: tuple[str, ...]) -> float:
    words = lexicon()
    score = 100.0
    for w, name in zip(said, alias, strict=True):
        if w in (name, name + "s"):
            continue
        if w[:1] != name[:1]:
            return 0.0
        short = w.removesuffix("s")
        if w in words.names["none"] or w in words.names["like"]:
            return 0.0
        score = min(score, max(_name_score(w, name), _name_score(short, name)))
    return score


def _name_score(word: str, name: str) -> float:
    if len(name) < 4 or len(word) < 4 or word[0] != name[0]:
        return 0.0
    score = fuzz.ratio(word, name)
    return score if score >= NAME_ENOUGH else 0.0


SHORT = 3
"""A short form of a name has so many letters at least."""


def _short_for(said: str, name: str, words: Lexicon) -> bool:
    """Whether a word is a short form of a name ('Tom' of Tomas) and no word of any language here."""
    if not SHORT <= len(said) < len(name) or not name.startswith(said):
        return False
    return not any(m.word(said) for m in (*words.classes.values(), *words.read.values()))


def find_person(text: Sequence[str], people: tuple[tuple[str, str], ...]) -> Somebody | None:
    """The person named."""
    words = lexicon()
    for person, name in people:
        full = tuple(words.words(name))
        if not full:
            continue
        # 'Race office' answers to its whole name only: 'race control' is somebody else.
        first = full if full[0] in words.names["none"] else full[:1]
        for i in range(len(text) - len(first) + 1):
            said = tuple(text[i : i + len(first)])
            whole = said == first or (len(first) == 1 and said[0] == first[0] + "s")
            short = len(first) == 1 and _short_for(said[0], first[0], words)
            if whole or short or (len(first) == 1 and _name_score(said[0], first[0]) >= PERSON_ENOUGH):
                end = i + len(full) if tuple(text[i : i + len(full)]) == full else i + len(first)
                return Somebody(person, 100.0, i, end)
    return None
