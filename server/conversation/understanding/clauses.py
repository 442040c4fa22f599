"""The clauses of one message, each read and scored once however often it is looked at."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from server.conversation.understanding.features import begins_as_question, features
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import Context
from server.conversation.understanding.model import model
from server.conversation.understanding.sentence import Sentence, read_sentence

CLAUSES_MAX = 6
"""So many clauses are shown to the model."""
_PIECE = re.compile(r"[^.!?;,\n]+(?:(?<=\d)[.,](?=\d)[^.!?;,\n]+)*\??")
_STRONG = re.compile(r"(?<=[.!?;\n])\s+|\n+|;|(?<=[a-zß])[.](?=[A-Z])")
_SPELT = re.compile(r"(?<=\b[^\W\d])[.](?=[^\W\d]\b)")
_WEAK = re.compile(r",\s+|\s+[-–—]\s+")


@dataclass(slots=True)
class Clauses:
    """What is read of a message by one person."""

    ctx: Context
    _read: dict[str, Sentence] = field(default_factory=dict)
    _scored: dict[str, NDArray[np.float64]] = field(default_factory=dict)

    def of(self, text: str) -> Sentence:
        """A clause with its slots."""
        found = self._read.get(text)
        if found is None:
            found = self._read[text] = read_sentence(text, self.ctx)
        return found

    def scores(self, said: Sentence) -> NDArray[np.float64]:
        """What the model makes of it: a score for each intent and, last, for danger."""
        found = self._scored.get(said.written)
        if found is None:
            found = model().scores(features(said, sorted(p.value for p in self.ctx.parts)))
            self._scored[said.written] = found
        return found


def pieces_of(text: str) -> list[str]:
    """The text cut at every sign that ends or parts a clause, each with its question mark; 's.o.s.' is one word."""
    text = _SPELT.sub("", text)
    return [piece for m in _PIECE.finditer(text) if (piece := m[0].strip()).strip("?")]


def clauses_of(text: str) -> list[tuple[str, bool]]:
    """The clauses of a message, and whether each stands by itself (a full stop, a line) or only behind a comma or 'and'."""
    out: list[tuple[str, bool]] = []
    for sentence in (s for s in _STRONG.split(text) if s and s.strip(" .,!?")):
        mark = "?" if sentence.rstrip().endswith("?") else ""
        behind_commas = [_at_joins(part) for part in _WEAK.split(sentence)]
        parts = [p for row in behind_commas for p in (x.strip(" ,") for x in row) if p.strip(" .!?")]
        parts = _with_their_times(parts)
        # A mark at the end is of every clause before it, unless the last is a question by itself: 'in 1502, what now?'
        alone = bool(parts) and begins_as_question(lexicon().words(parts[-1]))
        ask = set(range(len(parts) - 1 if alone else 0, len(parts))) if mark else set()
        out += [(p + "?" if i in ask and p[-1] != "?" else p, len(parts) == 1) for i, p in enumerate(parts)]
    return out[:CLAUSES_MAX]


_TIME_ALONE = re.compile(
    r"^(?:um|at|à|gegen|vers)?\s*\d{1,2}(?:[:.]\d{2}|h\d{0,2})(?: ?(?:uhr|am|pm))?[.!]*$", re.IGNORECASE
)


def _with_their_times(parts: list[str]) -> list[str]:
    """A time behind a comma, and nothing else, goes with what stands before it: 'she is in, 8:10'."""
    out: list[str] = []
    for part in parts:
        if out and _TIME_ALONE.match(part):
            out[-1] = f"{out[-1]} {part}"
        else:
            out.append(part)
    return [f"{out[0]} {out[1]}", *out[2:]] if len(out) > 1 and _TIME_ALONE.match(out[0]) else out


def _at_joins(part: str) -> list[str]:
    """Cut before 'and', 'but' in any language; 'between the mill and here' is one thing."""
    joins, between = lexicon().read["joins"], lexicon().read["between_two"]
    out: list[str] = []
    row: list[str] = []
    for w in part.split():
        held = any(between.word(x.lower()) for x in row) and not any(joins.word(x.lower()) for x in row)
        if joins.word(w.lower()) and row and not held:
            out.append(" ".join(row))
            row = []
        else:
            row.append(w)
    return [*out, " ".join(row)]
