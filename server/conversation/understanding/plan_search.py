"""Which lines of the event file a question is about: by their words, typing errors and endings forgiven, and by the words
with which people ask for their kind in any language. No line rather than a wrong one."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache

from rapidfuzz import fuzz

from server.conversation.telling.answer import Written
from server.conversation.understanding.clauses import clauses_of
from server.conversation.understanding.features import fine_family, question_form
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import Context
from server.conversation.understanding.sentence import Sentence, read_sentence

SURE, PLAIN = 0.55, 0.7
"""So much of what a question says, at least, is found in a line and in the words for its kind (measured on two sets of 500
sentences by others: below it, questions of something else begin to get lines); and so much where there is another answer
too, before which the line is to stand."""
AT_MOST = 2
_NEAR_BEST = 0.9
"""Of lines that answer as well as the best the second is told too."""
_STEM, _OF_THE_LONGER, _ENDING = 4, 0.6, 3
"""Words of one beginning so long, that share of the longer, and no longer an ending, are one (own choice)."""
_LIKE = 84.0
"""Words of five letters and more, so alike, are one mistyped."""
_KIN = 0.5
"""What a word of the same family counts beside the word itself."""
_KIND, _HERE, _OF_THE_PLACE = 0.25, 0.08, 0.15


@lru_cache(maxsize=4096)
def _words(text: str) -> tuple[str, ...]:
    """The words of a line that say something."""
    stop = lexicon().read["plan_stop"]
    return tuple(w for w in lexicon().words(text) if len(w) > 1 and not stop.word(w))


@lru_cache(maxsize=16384)
def alike(one: str, other: str) -> float:
    """How far two words are the same, 0 to 1."""
    if one == other:
        return 1.0
    short, long = sorted((one, other), key=len)
    if len(short) < _STEM:
        return 0.0
    same = next((i for i, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), len(short))
    if same >= _STEM and same >= _OF_THE_LONGER * len(long) and len(short) - same <= _ENDING:
        return 0.95
    near = len(short) > _STEM and len(long) - len(short) <= _ENDING
    if near and fuzz.ratio(one, other, score_cutoff=_LIKE):
        return 0.85
    family = fine_family(one)
    return _KIN if family is not None and family == fine_family(other) else 0.0


def _asked(said: Sentence) -> list[str]:
    """The words of a question that say what it is about: no names, no times, none that any question has."""
    stop = lexicon().read["plan_stop"]
    number = lexicon().numbers
    words = (w for w in said.masked if w[0] != "<" and len(w) > 1 and w not in number and not stop.word(w))
    return list(dict.fromkeys(words))


def _cued(kind: str, masked: Sequence[str]) -> set[str]:
    """The words by which a question asks for lines of a kind."""
    cue = lexicon().read.get(f"plan_{kind}")
    if cue is None:
        return set()
    return {w for i in range(len(masked)) if (n := cue.at(masked, i)) for w in masked[i : i + n]}


def found(
    said: Sentence, rows: Sequence[Written], *, near: str | None, me: str, least: float
) -> tuple[Written, ...]:
    """The best lines for a question, the best first; () where none is surely meant. `near`: the point where its writer
    stands or goes next, whose lines come first where the question names no place; `me`: their id."""
    asked = _asked(said)
    named = frozenset(said.point.ids) if said.point is not None else frozenset()
    cues = {kind: _cued(kind, said.masked) for kind in {r.kind for r in rows}}
    if cues.get("not_hear"):
        cues["hear"] = cues["prompt"] = set()  # 'what must I not say'
    lines = [_words(r.text if r.place else f"{r.text} {r.name}") for r in rows]
    same = {w: [max((alike(w, x) for x in line), default=0.0) for line in lines] for w in asked}
    rare = {w: math.log(1 + len(rows) / (1 + sum(s > _KIN for s in same[w]))) for w in asked}
    whole = sum(rare.values())
    scored: list[tuple[float, int]] = []
    for i, r in enumerate(rows):
        if _of_somebody_else(r, said, me) or _of_another_place(r, named, lines[i], said):
            continue
        own, cued = [w for w in asked if same[w][i] > _KIN], cues[r.kind]
        placed = bool(named) or r.place == near or not r.place
        if not (own or (cued and placed)) or (least > SURE and not cued and len(own) < 2):
            continue
        got = sum(rare[w] * max(same[w][i], float(w in cued)) for w in asked)
        there = _OF_THE_PLACE if named else _HERE * (r.place == near)
        scored.append(((got / whole if whole else 0.0) + _KIND * bool(cued) + there, i))
    scored.sort(key=lambda x: (-x[0], x[1]))
    if not scored or scored[0][0] < least:
        return ()
    best, first = scored[0]
    also = [
        rows[i]
        for score, i in scored[1:AT_MOST]
        if score >= best * _NEAR_BEST and rows[i].kind == rows[first].kind
    ]
    return (rows[first], *also)


def _of_somebody_else(row: Written, said: Sentence, me: str) -> bool:
    """Whether a line is another's than whom the question is about. Hours of sleep are asked for by name, by 'who' and
    'when', or of one's own."""
    if row.person and said.person not in (None, row.person):
        return True
    if row.start is None or said.person is not None:
        return False
    if said.says("who") or said.says("they"):
        return False
    own = said.says("i") and (said.says("when") or said.says("modal") or said.says("aux"))
    return row.person != me or not own


def _of_another_place(row: Written, named: frozenset[str], line: Sequence[str], said: Sentence) -> bool:
    """Whether a question names a place, and the line is of another and does not speak of it."""
    if not named or row.place in named:
        return False
    if row.place:
        return True
    words = said.point.words.split() if said.point is not None else []
    return not any(alike(w, x) > _KIN for w in words for x in line)


def lines_about(
    text: str, ctx: Context, rows: Sequence[Written], *, me: str = "", plain: bool = False
) -> tuple[Written, ...]:
    """The lines that a question of a message is about, the best first; () for none, and for a message that asks nothing.
    `plain`: only where they are plainly meant."""
    said = read_sentence(text, ctx)
    clauses = [read_sentence(c, ctx) for c, _ in clauses_of(text)]
    if not rows or not any(question_form(c) for c in (said, *clauses)):
        return ()
    places = (ctx.point, *((said.runner.own, said.runner.due) if said.runner is not None else ()))
    near = next((p for p in places if p), None)
    return found(said, rows, near=near, me=me, least=PLAIN if plain else SURE)
