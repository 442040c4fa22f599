"""Names in a sentence: points, runners, people; with typos, and with the tie said where there is one.

A point answers to its name, its other names, its id, and to any word of its name that no other place has
and that is no everyday word. One place passed twice is two points of one name: which of them is meant
depends on where the runner is, so that is settled by the caller; a tie between different places is asked
back.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz import fuzz

from bot.words.everyday import NO_NAMES
from bot.words.tidy import fold, tidy
from server.wording.answer import PointHere, RunnerHere

POINT, FINISH = "PT", "FINISH"
# Under this likeness (0..100) a name is not recognised at all; under SURE it is recognised but guessed.
ENOUGH, SURE = 82.0, 90.0
_PASS = re.compile(
    r"(?: (?:out|back|outbound|inbound|return|again|start|finish|first|second|1st|2nd|i|ii)| \((?:out|back|\d)\))+$"
)
# The finish is found by these words wherever it is called something else; as names they would shadow it.
_FINISH_WORDS = frozenset({"finish", "finish line", "end", "the end"})
_LIKE_NAMES = frozenset(
    {"weather", "late", "later", "mile", "miles", "will", "still", "style", "while", "there"}
)
_OUT_PASS = re.compile(r"\b(?:first time|1st time|on the way out|outbound|going out)\b")
_BACK_PASS = re.compile(r"\b(?:2nd time|second time|on the way back|coming back|inbound|again|way home)\b")


@dataclass(frozen=True, slots=True)
class Named:
    """A point mentioned. `ids` one, or more where the same words fit several; `same_place` whether those are
    one place passed more than once. `score` 0..100."""

    ids: tuple[str, ...]
    words: str
    score: float
    same_place: bool
    start: int
    end: int


def place_name(name: str) -> str:
    """The name without what tells its passes apart: 'Long Stile back' -> 'long stile'."""
    plain = tidy(name)
    return _PASS.sub("", plain) or plain


@lru_cache(maxsize=64)
def aliases(points: tuple[PointHere, ...]) -> tuple[tuple[str, tuple[str, ...], bool], ...]:
    """Every way to call a point: words, the ids they fit, whether those are one place."""
    calls: dict[str, list[str]] = {}
    where = {p.id: place_name(p.name) for p in points}

    def add(words: str, point: str) -> None:
        if words and words not in _FINISH_WORDS and point not in calls.setdefault(words, []):
            calls[words].append(point)

    for p in points:
        plain = tidy(p.name)
        for words in (plain, where[p.id], tidy(p.id.replace("-", " ")), *(tidy(a) for a in p.also)):
            add(words, p.id)
            add(words.removeprefix("the "), p.id)
        numbered = re.fullmatch(r"(.*?) ?(\d+)", plain)
        if numbered:
            for short in (
                "aid",
                "aid station",
                "as",
                "station",
                "checkpoint",
                "cp",
                "stop",
                numbered[1].split()[0],
            ):
                add(f"{short} {numbered[2]}", p.id)
                add(f"{short}{numbered[2]}", p.id)
    for p in points:
        for word in where[p.id].split():
            others = [q for q in points if word in where[q.id].split()]
            if len(word) >= 4 and word not in NO_NAMES and word.isalpha():
                for q in others:
                    add(word, q.id)
    for other, points_ in _in_other_words(points, where).items():
        if other not in calls and other not in NO_NAMES:
            for point in points_:
                add(other, point)
    return tuple((w, tuple(ids), len({where[i] for i in ids}) == 1) for w, ids in calls.items())


_SAME_THING = (
    ("bridge", "bruecke"), ("mill", "muehle"), ("farm", "hof"), ("barn", "scheune"), ("church", "kirche"),
    ("chapel", "kapelle"), ("castle", "schloss", "burg"), ("ford", "furt"), ("quarry", "steinbruch"), ("lake", "see"),
    ("pass", "sattel"), ("summit", "gipfel"), ("valley", "tal"), ("forest", "wald"), ("village", "dorf"),
    ("school", "schule"), ("station", "bahnhof"), ("hut", "huette"), ("tower", "turm"), ("gate", "tor"),
    ("meadow", "wiese"), ("moor", "moss", "moos"), ("weir", "wehr"), ("spring", "quelle"), ("edge", "kante"),
    ("inn", "gasthof", "wirtshaus"), ("cross", "kreuz"), ("river", "fluss"), ("brook", "beck", "bach"), ("rock", "fels"),
    ("house", "haus"), ("reservoir", "stausee", "talsperre"), ("dam", "damm"), ("square", "markt", "marktplatz"),
)  # fmt: skip
# Words of one language that mean something else in a sentence of the other, or that are parts of other words.
_NO_CALLS = frozenset({"see", "tal", "tor", "pass", "station", "house", "spring", "square", "rock", "inn"})


def _in_other_words(points: tuple[PointHere, ...], where: Mapping[str, str]) -> dict[str, list[str]]:
    """What a place is called in the other language: 'die Bruecke' for Sike Bridge; the ids that each word fits."""
    found: dict[str, list[str]] = {}
    for p in points:
        for word in where[p.id].split():
            for same in _SAME_THING:
                ends = [w for w in same if word == w or (len(w) > 4 and word.endswith(w))]
                if ends:
                    for other in same:
                        if other not in where[p.id] and other not in _NO_CALLS:
                            found.setdefault(other, []).append(p.id)
    return found


def name_words(points: Iterable[PointHere], others: Iterable[str]) -> frozenset[str]:
    """All words that are part of names, which must not be taken for slips."""
    texts = [t for p in points for t in (p.name, p.id.replace("-", " "), *p.also)] + list(others)
    return frozenset(w for t in texts for w in re.findall(r"[^\W\d_]+", fold(t).lower()))


def _score(gram: str, alias: str) -> float:
    if gram == alias:
        return 100.0
    if re.findall(r"\d+", gram) != re.findall(r"\d+", alias):
        return 0.0
    if not _alike(gram.split(), alias.split()):
        return 0.0
    if gram.startswith("the ") and alias.startswith("the "):
        # What is common to both likens nothing: 'the castle' is not 'the stile'.
        gram, alias = gram[4:], alias[4:]
    if len(alias) <= 4 or gram in NO_NAMES or gram in _LIKE_NAMES or len(gram) < 4 or gram[0] != alias[0]:
        return 0.0
    score = fuzz.ratio(gram, alias)
    return score if score >= ENOUGH else 0.0


def _alike(said: list[str], name: list[str]) -> bool:
    """Whether no short word stands for a longer one: 'brindle at' is not 'Brindle Gate'."""
    if len(said) == len(name):
        return all(a == b or (len(a) > 3 and fuzz.ratio(a, b) >= 60) for a, b in zip(said, name, strict=True))
    return all(len(a) > 3 or a in name for a in said)


def find_point(text: str, points: tuple[PointHere, ...], start: int = 0) -> Named | None:
    """The point best named in a tidied sentence from word `start` on; None if none is."""
    tokens = text.split()
    best: Named | None = None
    best_key = (0.0, 0.0)
    for i in range(start, len(tokens)):
        for n in range(1, min(4, len(tokens) - i) + 1):
            gram = " ".join(tokens[i : i + n])
            for alias, ids, same in aliases(points):
                score = _score(gram, alias)
                key = ((score - 70) * len(alias), score)
                if score and key > best_key:
                    best, best_key = Named(ids, gram, score, same, i, i + n), key
                elif score and key == best_key and best is not None and best.start == i:
                    both = tuple(dict.fromkeys((*best.ids, *ids)))
                    best = Named(both, gram, score, best.same_place and same and len(both) == 1, i, i + n)
    return best


def which_pass(named: Named, text: str, runner: RunnerHere, *, ahead: bool) -> str | None:
    """The one point meant among the passes of a place: the words may say; else by where she is: the first
    not reached (`ahead`), or for a report where she is or the one next due. None where it can't be told."""
    order = [p.id for p in runner.points if p.id in named.ids]
    if len(order) == 1:
        return order[0]
    if not order or not named.same_place:
        return None
    if _BACK_PASS.search(text):
        return order[-1]
    if _OUT_PASS.search(text):
        return order[0]
    ids = [p.id for p in runner.points]
    reached = ids.index(runner.reached) if runner.reached in ids else -1
    if not ahead and runner.at in order:
        return runner.at
    to_come = [i for i in order if ids.index(i) > reached]
    return to_come[0] if to_come else order[-1]


def _bib_said(text: str, bib: str) -> re.Match[str] | None:
    """A bib with '#', 'bib', 'number' before it; from two digits on also alone, where it can be no time."""
    number = re.escape(bib)
    marked = re.search(rf"(?:#|\b(?:bib|no|number|nr|runner) )\s*{number}\b", text)
    if marked or len(bib) < 2:
        return marked
    return re.search(
        rf"(?<![\d:])(?<!\bat )(?<!\bin )(?<!\bfor )(?<!\bby )(?<!\bpast )(?<!\bto )(?<!about )\b{number}\b"
        r"(?! ?(?:min|hour|km|percent|mile|miles|am|pm|ago|oclock|past|to|\d))(?!:)",
        text,
    )


@dataclass(frozen=True, slots=True)
class RunnerNamed:
    """A runner mentioned, and the sentence with 'she' in her place."""

    id: str
    rest: str
    score: float


def find_runner(text: str, runners: tuple[RunnerHere, ...]) -> RunnerNamed | None:
    """The runner named by first or full name (a slip allowed) or as '#214', 'bib 214'."""
    for r in runners:
        by_bib = _bib_said(text, r.bib) if r.bib else None
        if by_bib:
            return RunnerNamed(
                r.id, " ".join((text[: by_bib.start()] + "she" + text[by_bib.end() :]).split()), 100
            )
    tokens = text.split()
    best: RunnerNamed | None = None
    for r in runners:
        full = tidy(r.name)
        for alias in dict.fromkeys((full, full.split()[0] if full else "", tidy(r.id))):
            size = len(alias.split())
            for i in range(len(tokens) - size + 1):
                gram = " ".join(tokens[i : i + size])
                for end in (gram, gram.removesuffix("s")):
                    score = 100.0 if end == alias else _name_score(end, alias)
                    if score > (best.score if best else 0):
                        rest = [*tokens[:i], "she", *tokens[i + size :]]
                        best = RunnerNamed(r.id, " ".join(rest), score)
    return best


def _name_score(word: str, name: str) -> float:
    if len(name) < 4 or len(word) < 4 or word[0] != name[0]:
        return 0.0
    score = fuzz.ratio(word, name)
    # One letter wrong in five is 80: enough for a name, as long as the first letter holds.
    return score if score >= 79 else 0.0


def find_person(text: str, people: tuple[tuple[str, str], ...]) -> tuple[str, str] | None:
    """The person named (id) and the sentence with PERSON in their place."""
    tokens = text.split()
    for person, name in people:
        full = tidy(name).split()
        # 'Race office' answers to its whole name only: 'race control' is somebody else.
        if full and full[0] in NO_NAMES:
            found = next((i for i in range(len(tokens)) if tokens[i : i + len(full)] == full), None)
            if found is not None:
                return person, " ".join([*tokens[:found], "PERSON", *tokens[found + len(full) :]])
            continue
        first = full[0] if full else ""
        for i, t in enumerate(tokens):
            if first and (t in (first, f"{first}s") or _name_score(t, first) >= 88):
                return person, " ".join([*tokens[:i], "PERSON", *tokens[i + 1 :]])
    return None
