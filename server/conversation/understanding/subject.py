"""Whose danger a clause speaks of: hers, the writer's, another helper's or a stranger's. Only hers is ever an alarm about
her, or how she is."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from itertools import pairwise

from server.conversation.understanding import gates
from server.conversation.understanding.features import topics
from server.conversation.understanding.language import Matcher, lexicon
from server.conversation.understanding.sentence import FINISH, NUMBER, PERSON, POINT, TIME, Sentence


class Whose(StrEnum):
    """Of whom a clause speaks. `OPEN`: it does not say, and is taken for hers."""

    HERS = "hers"
    WRITERS = "the writer's"
    OTHERS = "another's"
    STRANGERS = "a stranger's"
    OPEN = "open"

    @property
    def apart(self) -> bool:
        """Whether it is surely not of her."""
        return self not in (Whose.HERS, Whose.OPEN)


def denies_her(said: Sentence) -> bool:
    """Whether a clause says that it is not of her: 'not Maren', 'none of ours'."""
    return gates.not_her(said) or lexicon().subject["not_ours"].has(said.masked)


def whose(said: Sentence) -> Whose:
    """Of whom a clause speaks that somebody wrote who is not on the course."""
    words, known = said.masked, lexicon().subject
    if denies_her(said):
        return Whose.STRANGERS
    if said.named or known["ours"].has(words):
        return Whose.HERS
    she = said.reads("she_alone")
    # 'Another runner says she is down' tells of her; 'a woman has collapsed and she is bleeding' does not.
    if _of_a_bib(said) or _begins(words, known["stranger"]) or (not she and _tells_of_a_stranger(words)):
        return Whose.STRANGERS
    if she and not (_begins(words, None) and _her_body_alone(words)):
        return Whose.HERS
    if _begins(words, known["others"]) or _begins(words, None) or known["crash"].has(words):
        return Whose.OTHERS
    if known["self"].has(words) or _my_body(words):
        return Whose.WRITERS
    return Whose.HERS if said.says("she") else Whose.OPEN


def _tells_of_a_stranger(words: Sequence[str]) -> bool:
    """Whether some stranger is spoken of who does not himself tell something ('saw a runner lying there')."""
    at = lexicon().subject["stranger"].places(words)
    return bool(at) and not lexicon().subject["tells"].has(words[at[-1] :])


def _begins(words: Sequence[str], who: Matcher | None) -> bool:
    """Whether words begin with one of these (None: a helper's name), of whom something is said: who tells something, has
    found somebody or is with somebody, is not who is in danger."""
    row, read = list(words), lexicon().read
    while row and not (who.begins(row) if who else row[0] == PERSON):
        n = read["lead"].begins(row) or read["article"].begins(row) or read["at"].begins(row)
        if not n and row[0] not in _PLACES:
            return False
        row = row[n or 1 :]
    return bool(row) and not lexicon().subject["tells"].has(row)


_PLACES = (POINT, FINISH, TIME)


def _of_a_bib(said: Sentence) -> bool:
    """Whether it is said of a bib that nobody here has."""
    if any(lexicon().danger["own"].word(w) for w in said.plain if w.isdigit()):
        return False  # 'die 112 rufen'
    mark = lexicon().read["bib_mark"]
    return gates.of_a_bib(said) or any(b == NUMBER and mark.word(a) for a, b in pairwise(said.masked))


def _her_body_alone(words: Sequence[str]) -> bool:
    """Whether 'she' stands only before a part of the body, of whoever was named: 'Birgit slurs and her face hangs'."""
    she = lexicon().read["she_alone"]
    behind = [b for a, b in pairwise((*words, "")) if she.word(a)]
    return all(b and "body" in topics((b,)) for b in behind)


def _my_body(words: Sequence[str]) -> bool:
    mine = lexicon().subject["mine"]
    return any(mine.word(a) and "body" in topics((b,)) for a, b in pairwise(words))
