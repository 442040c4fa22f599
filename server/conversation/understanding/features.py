"""What the model sees of a clause: its words, pieces of its words, and the classes they stand in.

Five groups, each of features that are there or not: single words and pairs; pieces of two to five letters; classes of the
lexicon, alone, in order and first, with how the clause is put; what its words are about; and the kin of its words, so that a
word of no example acts like its cousins. Every group counts the same however long the clause.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cache, lru_cache
from importlib import resources
from io import BytesIO
from zlib import crc32

import numpy as np
from numpy.typing import NDArray

from server.conversation.understanding.language import Matcher, lexicon
from server.conversation.understanding.sentence import FINISH, PERSON, POINT, RUNNER, Sentence

PIECES = range(2, 6)
WORDS_MAX = 60
"""So many words of a clause are looked at."""
_ROLES = frozenset({"runner", "volunteer", "organiser"})
"""Parts whose words mean something else than a crew's: 'in at the mill' of the runner is her own arrival."""


def key(feature: str) -> int:
    """A feature as a number, the same on every machine."""
    return crc32(feature.encode())


@lru_cache(maxsize=8192)
def _pieces(word: str) -> tuple[int, ...]:
    edge = f" {word} "
    return tuple({key(f"c{edge[i : i + n]}") for n in PIECES for i in range(len(edge) - n + 1)})


@lru_cache(maxsize=8192)
def classes_of(word: str) -> tuple[str, ...]:
    """The classes that a single word stands in."""
    return tuple(name for name, m in lexicon().classes.items() if m.word(word))


@cache
def _phrases() -> dict[str, tuple[tuple[str, Matcher], ...]]:
    return _by_first(lexicon().classes)


def _by_first(classes: Mapping[str, Matcher]) -> dict[str, tuple[tuple[str, Matcher], ...]]:
    """The classes that have phrases with a given first word."""
    out: dict[str, list[tuple[str, Matcher]]] = {}
    for name, m in classes.items():
        for first in m.phrases:
            out.setdefault(first, []).append((name, m))
    return {k: tuple(v) for k, v in out.items()}


@lru_cache(maxsize=8192)
def _topics_of(word: str) -> tuple[str, ...]:
    return tuple(name for name, m in lexicon().topics.items() if m.word(word))


@cache
def _topic_phrases() -> dict[str, tuple[tuple[str, Matcher], ...]]:
    return _by_first(lexicon().topics)


def topics(words: Sequence[str]) -> set[str]:
    """What words are about. Those that begin with 'red' are red flags: each alone means little, two together much."""
    found = {t for w in words if w[0] != "<" for t in _topics_of(w)}
    known = _topic_phrases()
    found |= {name for i, w in enumerate(words) for name, m in known.get(w, ()) if m.at(words, i) > 1}
    return found


@cache
def _kindred() -> tuple[NDArray[np.uint32], NDArray[np.uint16]]:
    """Words as numbers, sorted (n,), and the families each is of, coarse and fine (n, 2): `languages/word_classes.md`."""
    data = resources.files("server.conversation").joinpath("languages", "word_classes.npz").read_bytes()
    with np.load(BytesIO(data), allow_pickle=False) as f:
        return f["words"], f["families"]


def _families(word: str) -> tuple[int, ...]:
    """The families of words that a word is of, the coarse one first; () for a word of none."""
    words, families = _kindred()
    wanted = key(word)
    at = int(np.searchsorted(words, wanted))
    return tuple(int(f) for f in families[at]) if at < len(words) and int(words[at]) == wanted else ()


@lru_cache(maxsize=8192)
def fine_family(word: str) -> int | None:
    """The smaller of its families, of words that mean something alike in any language; None for a word of none."""
    return next(reversed(_families(word)), None)


@lru_cache(maxsize=8192)
def _kin(word: str) -> tuple[int, ...]:
    """Which families of words a word is of, as features."""
    return tuple(key(f"K{j}:{family}") for j, family in enumerate(_families(word)))


def class_row(words: Sequence[str]) -> list[tuple[int, str]]:
    """The classes in the order in which they stand."""
    found = {(i, c) for i, w in enumerate(words) for c in classes_of(w)}
    known = _phrases()
    for i, w in enumerate(words):
        for name, m in known.get(w, ()):
            if m.at(words, i) > 1:
                found.add((i, name))
    return sorted(found)


def question_form(said: Sentence) -> bool:
    """Whether it is put as a question: by its mark, or by how it begins."""
    return said.asks or begins_as_question(said.masked)


def begins_as_question(row: Sequence[str]) -> bool:
    """Whether words begin as a question does, behind words that lead up to it."""
    read = lexicon().read
    words = list(row)
    while (
        words and (n := read["lead"].begins(words)) and len(words) > n and not read["question"].begins(words)
    ):
        words = words[n:]
    if read["question"].begins(words):
        return True
    if read["told_so"].begins(words):
        return False  # 'is da seit 24', which in another language would ask
    if read["fronted"].has(row[: len(row) - len(words)]):
        return False  # 'jetzt ist sie weg' states, with its verb in the second place
    return len(words) > 2 and read["asks"].begins(words) == 1 and bool(read["asked"].begins(words[1:]))


def features(said: Sentence, parts: Iterable[str]) -> tuple[tuple[int, ...], ...]:
    """The features of a clause in five groups, as numbers."""
    words = said.masked[:WORDS_MAX]
    pairs = zip((*words, "$"), ("^", *words), strict=True)
    of_words = {key(f"w{w}") for w in words} | {key(f"b{b} {a}") for a, b in pairs}
    of_pieces = {p for w in words if w[0] != "<" for p in _pieces(w)}
    row = class_row(words)
    names = {n for _, n in row}
    of_class = {f"L{n}" for n in names}
    signs = [w for w in words if w[0] == "<"]
    of_class |= {f"L{w}" for w in signs}
    in_order = sorted({*row, *((i, w) for i, w in enumerate(words) if w[0] == "<")})
    for k, (i, a) in enumerate(in_order):
        for j, b in in_order[k + 1 : k + 9]:
            if i < j <= i + 4 and a != b:
                of_class.add(f"P{a}>{b}")
    if in_order:
        first = in_order[0][0]
        of_class |= {f"F{n}" for i, n in in_order if i == first}
        of_class |= {f"E{n}" for i, n in in_order if i == in_order[-1][0]}
    asks = question_form(said)
    of_class.add("Q" if asks else "S")
    of_class.add(f"N{min(len(words), 8)}")
    who = "h" if "she" in names or RUNNER in signs else "i" if "i" in names or "we" in names else "-"
    of_class.add(f"W{who}{'Q' if asks else 'S'}")
    for name in ("neg", "nofact", "hearsay", "she", "i", "we", "they"):
        if name in names:
            of_class |= {f"X{name}&{n}" for n in names if n != name}
    if asks:
        of_class |= {f"X?&{n}" for n in names}
    of_class |= {f"R{r}" for r in parts if r in _ROLES}
    of_class.add(
        f"T{'t' if said.time else ''}{'p' if POINT in signs or FINISH in signs else ''}{'x' if PERSON in signs else ''}"
    )
    about = topics(words)
    of_topic = {f"G{n}" for n in about} | {f"G{'Q' if asks else 'S'}{n}" for n in about}
    red = sorted(n for n in about if n.startswith("red"))
    of_topic |= {f"GR{a}&{b}" for i, a in enumerate(red) for b in red[i + 1 :]} | {f"GN{min(len(red), 4)}"}
    of_kin = {k for w in words if w[0] != "<" for k in _kin(w)}
    in_class, in_topic = ({key(c) for c in group} for group in (of_class, of_topic))
    return tuple(tuple(sorted(g)) for g in (of_words, of_pieces, in_class, in_topic, of_kin))
