"""The short form, and a volunteer's list of bibs: '214 in 0312 out 0319; 87 in 0315', 'in mill 1455', 'out'.

    message = item { (';' | ',' | new line | ' ') item }
    item    = [bib] word [point] [time]
    word    = in | out | through | resting | moving | sweep | not yet
A bib and a point hold until the next one. A message is taken for this form only if nothing else stands in it.
It fits 160 characters, needs no punctuation, and is what goes through text gateways.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import datetime
from zoneinfo import ZoneInfo

from bot.words.times import nearest
from server.facts.entry import Kind
from server.wording.answer import RunnerHere

_WORDS = {
    "in": Kind.IN, "arr": Kind.IN, "arrived": Kind.IN, "out": Kind.OUT, "left": Kind.OUT, "dep": Kind.OUT,
    "through": Kind.THROUGH, "thro": Kind.THROUGH, "resting": Kind.RESTING, "rest": Kind.RESTING,
    "moving": Kind.MOVING_AGAIN, "sweep": Kind.SWEEP_THROUGH, "notyet": Kind.NOT_HERE_YET,
}  # fmt: skip
_FILLER = frozenset({"at", "and", "then", ";", "she", "bib", "no", "number", "runner"})


@dataclass(frozen=True, slots=True)
class Item:
    """One item of a list: bib as written (None: not given), word, time (None: not given), PT mentioned."""

    kind: Kind
    bib: str | None
    at: datetime | None


def _time(token: str, now: datetime, zone: str) -> datetime | None:
    """'0312', '312', '3:12', '03:12' as a moment; anything else is none."""
    m = re.fullmatch(r"(\d{1,2}):?(\d{2})", token)
    if m is None or int(m[1]) > 23 or int(m[2]) > 59:
        return None
    padded = len(m[1]) == 2
    at, _ = nearest(int(m[1]), int(m[2]), "", now, ZoneInfo(zone), padded)
    return at


def _is_bib(tokens: list[str], i: int, bibs: frozenset[str]) -> bool:
    """A number is a bib where a word of a report follows it, perhaps after other bibs; else it is a time."""
    token = tokens[i].lstrip("#")
    if not token.isdigit() or len(token) > 5:
        return False
    following = next((t for t in tokens[i + 1 :] if t not in _FILLER and not t.lstrip("#").isdigit()), "")
    leads = (
        i == 0 or tokens[i - 1] in {";", "bib", "no", "number", "runner", "and"} or tokens[i].startswith("#")
    )
    return following in _WORDS and (leads or token in bibs or not _timely(token))


def _timely(token: str) -> bool:
    return re.fullmatch(r"\d{3,4}", token) is not None and int(token[-2:]) < 60 and int(token[:-2]) < 24


def _tokens(text: str) -> list[str]:
    """The words of a message; digits dictated one by one joined to a bib, hours and minutes to a time."""
    joined = text.replace("not yet", "notyet").replace("sweep through", "sweep")
    joined = re.sub(r"(?<=\d)(?=(?:in|out)\b)", " ", joined)
    joined = re.sub(r"(?<!\d )\b(?:\d )+\d\b(?= (?:in|out|through|left|arrived)\b)", _closed, joined)
    joined = re.sub(r"\b(in|out|at|through|left|arrived) (\d{1,2}) ([0-5]\d)\b", r"\1 \2:\3", joined)
    return joined.split()


def _closed(m: re.Match[str]) -> str:
    return m[0].replace(" ", "")


def read_list(text: str, now: datetime, zone: str, bibs: frozenset[str]) -> tuple[Item, ...] | None:
    """The items of a message in the short form (tidied, points as PT); None if it is anything else.

    '214 and 87 in 0312': one word and time hold for every bib before it.
    """
    tokens = _tokens(text)
    items: list[Item] = []
    group: list[str | None] = [None]
    latest: range = range(0)
    open_group = False
    for i, t in enumerate(tokens):
        if t in _FILLER or t in ("PT", "FINISH"):
            continue
        if t in _WORDS:
            latest = range(len(items), len(items) + len(group))
            items += [Item(_WORDS[t], bib, None) for bib in group]
            open_group = False
        elif _is_bib(tokens, i, bibs):
            group = [*(group if open_group else ()), t.lstrip("#")]
            open_group = True
        elif latest and items[-1].at is None and (at := _time(t, now, zone)):
            for k in latest:
                items[k] = replace(items[k], at=at)
        else:
            return None
    return tuple(items) or None


def near_bibs(bib: str, runners: tuple[RunnerHere, ...]) -> tuple[RunnerHere, ...]:
    """Runners whose bib is one slip away: two digits swapped, one wrong, one too many or too few."""

    def slip(other: str) -> bool:
        if sorted(other) == sorted(bib) and len(bib) > 1:
            return True
        if len(other) == len(bib):
            return sum(a != b for a, b in zip(other, bib, strict=True)) == 1
        longer, shorter = (other, bib) if len(other) > len(bib) else (bib, other)
        return len(longer) == len(shorter) + 1 and any(
            longer[:i] + longer[i + 1 :] == shorter for i in range(len(longer))
        )

    return tuple(r for r in runners if r.bib and r.bib != bib and slip(r.bib))
