"""A change of the plan asked for in words and nothing else said: 'skip the quarry', 'just finish'. What else stands in a
message makes it something else: 'she dropped at the quarry', 'drop bag at the quarry' are none."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from server.conversation.understanding.language import Matcher, lexicon, matcher, table
from server.conversation.understanding.meaning import Context
from server.conversation.understanding.sentence import POINT, RUNNER, read_sentence

__all__ = ["Added", "Wanted", "added_in", "change_in", "link_in"]


@dataclass(frozen=True, slots=True)
class Wanted:
    """`points`: where a meeting is left out, several where the name may be any of them; none: the target of `runner` (None:
    nobody named) is given up."""

    points: tuple[str, ...]
    runner: str | None

    @property
    def finish(self) -> bool:
        """Whether it is the target that goes."""
        return not self.points


@dataclass(frozen=True, slots=True)
class Added:
    """A `thing` for the kit of a meeting at one of `points`, or a `person` for the crew with their `phone` ('' not said)."""

    thing: str = ""
    points: tuple[str, ...] = ()
    person: str = ""
    phone: str = ""


_FORMS, _NUMBER = ("kit", "person"), "number"
_HOLES = {
    "thing": r"(?P<thing>[^,;.!?|]{2,80}?)",
    "place": r"(?P<place>.{2,80}?)",
    "name": r"(?P<name>[^\W\d_][^,;:.!?\d+|]{1,38}?)",
    "phone": r"(?P<phone>\+?\d[\d ()/-]{4,24}\d)",
}


@cache
def _words() -> dict[str, Matcher]:
    return {
        k: matcher(v, lexicon().elided)
        for k, v in table("changes.toml").items()
        if k not in (*_FORMS, _NUMBER)
    }


@cache
def _forms(of: str) -> tuple[re.Pattern[str], ...]:
    """The whole messages of a kind, the longest first; commas and colons may stand between their words."""
    found = sorted(table("changes.toml")[of], key=lambda form: (-form.count("{"), -len(form)))
    return tuple(re.compile(_pattern(form), re.IGNORECASE) for form in found)


def _pattern(form: str) -> str:
    parts = (_HOLES[w[1:-1]] if w.startswith("{") else re.escape(w) for w in form.split())
    said = "|".join(re.escape(w) for w in sorted(table("changes.toml")[_NUMBER], key=len, reverse=True))
    phone = rf"(?:(?:{said})\s*:?\s*)?{_HOLES['phone']}"
    return r"[\s,:;’'-]+".join(parts).replace(_HOLES["phone"], phone)


def added_in(text: str, ctx: Context) -> Added | None:
    """What the whole of a message asks to be added, to the kit of a meeting or to the crew; None for any other message."""
    said = " ".join(text.split()).strip(" .!")
    if len(said) > _ADDED_MAX:
        return None
    for of in _FORMS:
        for found in (form.fullmatch(said) for form in _forms(of)):
            if found is None:
                continue
            words = read_sentence(found["name" if of == "person" else "thing"], ctx)
            if _left_of(words.plain, _words()["fill"]) or words.named or words.person:
                continue  # 'bring her too' is no thing
            if words.times or words.lengths or words.amounts:
                continue
            if of == "person":
                return Added(person=found["name"].strip(), phone=found.groupdict().get("phone") or "")
            point = read_sentence(found["place"], ctx).point
            if point is not None:
                return Added(thing=found["thing"].strip(), points=point.ids)
    return None


def _left_of(row: Sequence[str], fill: Matcher) -> bool:
    return all(fill.at(row, i) for i in range(len(row)))


_ADDED_MAX = 160
"""More words than this are no such message (own choice)."""


def change_in(text: str, ctx: Context) -> Wanted | None:
    """The change that the whole of a message asks for; None for any other message."""
    said, words = read_sentence(text, ctx), _words()
    if said.times or said.lengths or said.amounts:
        return None
    runner = said.runner if said.named and said.runner_score == 100.0 else None
    hers = None if runner is None else runner.id
    # As typed: 'finish' is a place as well.
    name = set() if runner is None else set(lexicon().words(runner.name))
    plain = [RUNNER if w in name else w for w in said.plain]
    if _left(plain, words["finish"], words["fill"]) == 1:
        return Wanted((), hers)
    if said.point is None or not _left(list(said.masked), words["skip"], words["fill"]):
        return None
    return Wanted(said.point.ids, hers)


def link_in(text: str) -> bool | None:
    """Whether the whole of a message asks for a link for followers, or takes it back (False); None for any other message."""
    row, words = lexicon().words(text), _words()
    if _left(row, words["unfollow"], words["fill"]) == 1:
        return False
    return True if _left(row, words["follow"], words["fill"]) == 1 else None


def _left(row: list[str], asks: Matcher, fill: Matcher) -> int:
    """How many phrases ask for it, where all other words are names or mean nothing by themselves; 0 else."""
    asked, i = 0, 0
    while i < len(row):
        n = asks.at(row, i)
        asked += n > 0
        n = n or fill.at(row, i) or (1 if row[i] in (POINT, RUNNER) else 0)
        if not n:
            return 0
        i += n
    return asked
