"""The short form, and a volunteer's list of bibs: '214 in 0312 out 0319; 87 in 0315', 'in mill 1455', 'out'.

    message = item { (';' | ',' | new line | ' ') item }
    item    = [bib] word [point] [time]
    word    = in | out | through | resting | moving | sweep | not yet
A bib and a point hold until the next one. A message is taken for this form only if nothing else stands in it.
It fits 160 characters, needs no punctuation, and is what goes through text gateways.

Lists kept on paper come in other orders too: the word once for many ('in: 214 1502, 87 1509'), the time first
('15:02 214 in'), and from a volunteer bib and times alone ('214 1502 1507'): `read_columns`.
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
_FILLER = frozenset(
    {
        "at",
        "and",
        "then",
        ";",
        "she",
        "bib",
        "bibs",
        "no",
        "nr",
        "number",
        "numbers",
        "runner",
        "runners",
        "both",
        "all",
    }
)


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
    joined = _SPOKEN.sub(_as_clock, text).replace("not yet", "notyet").replace("sweep through", "sweep")
    joined = re.sub(r"(?<=\d) i (?=\d)", " in ", re.sub(r"(?<=\d) o (?=\d)", " out ", joined))
    joined = re.sub(r"\b([1-9]) (\d0|1\d|[2-9]\d)\b(?= (?:in|out|through|left|arrived)\b)", r"\1\2", joined)
    joined = re.sub(r"(?<=\d)(?=(?:in|out)\b)", " ", joined)
    joined = re.sub(r"(?<!\d )\b(?:\d )+\d\b(?= (?:in|out|through|left|arrived)\b)", _closed, joined)
    joined = re.sub(r"\b(in|out|at|through|left|arrived) (\d{1,2}) ([0-5]\d)\b", r"\1 \2:\3", joined)
    return joined.split()


_SPOKEN = re.compile(r"\b(quarter|half|\d{1,2})(?: min)? (past|to) (\d{1,2})\b(?!:)")


def _as_clock(m: re.Match[str]) -> str:
    """'5 past 3' as '3:05'; anything that is no time stays."""
    minutes, hour = {"quarter": 15, "half": 30}.get(m[1]) or int(m[1]), int(m[3])
    if minutes >= 60 or hour > 24:
        return m[0]
    if m[2] == "to":
        return f"{(hour - 2) % 12 + 1 if hour <= 12 else hour - 1}:{60 - minutes:02d}" if minutes else m[0]
    return f"{hour}:{minutes:02d}"


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
        elif _carries_on(tokens, i, items, bibs):
            # '214 through 1502 and 87 at 1504': the word holds for the next bib too.
            group = [t.lstrip("#")]
            latest = range(len(items), len(items) + 1)
            items.append(Item(items[-1].kind, group[0], None))
        else:
            return None
    return tuple(items) or None


def _carries_on(tokens: list[str], i: int, items: list[Item], bibs: frozenset[str]) -> bool:
    """Whether a known bib follows a finished item and has its own time and no word."""
    later = [t for t in tokens[i + 1 :] if t not in _FILLER]
    once = bool(items) and items[-1].at is not None and sum(x.bib == items[-1].bib for x in items) == 1
    return once and tokens[i].lstrip("#") in bibs and bool(later) and _timely(later[0].replace(":", ""))


_SEPARATE = re.compile(r" ;(?: |$)")


def read_columns(
    text: str, now: datetime, zone: str, bibs: frozenset[str], *, from_post: bool
) -> tuple[Item, ...] | None:
    """Lists in columns: word first, time first, and `from_post` (a volunteer writes) bib and times alone."""
    items: list[Item] = []
    heading: Kind | None = None
    for line in _SEPARATE.split(text):
        tokens = [t for t in _tokens(line) if t not in _FILLER and t != "PT"]
        if not tokens:
            continue
        if tokens == [t for t in tokens if t in _WORDS][:1]:
            heading = _WORDS[tokens[0]]
            continue
        found = _column(tokens, heading, bibs, from_post=from_post)
        if found is None:
            return None
        for kind, bib, said in found:
            at = _time(said, now, zone) if said else None
            if said and at is None:
                return None
            items.append(Item(kind, bib, at))
    return tuple(items) or None


_Found = list[tuple[Kind, str, str]]


def _column(
    tokens: list[str], heading: Kind | None, bibs: frozenset[str], *, from_post: bool
) -> _Found | None:
    """One line of a list: (kind, bib, time as written) of each entry; None if it is none."""
    if tokens[0] in _WORDS and len(tokens) > 2:
        heading, tokens = _WORDS[tokens[0]], tokens[1:]
    elif len(tokens) == 3 and _timely(tokens[0].replace(":", "")):
        # The time first, then word and bib in either order.
        a, b = tokens[1:]
        word, bib = (a, b) if a in _WORDS else (b, a)
        if word in _WORDS and _number(bib):
            return [(_WORDS[word], bib.lstrip("#"), tokens[0])]
    if any(t in _WORDS for t in tokens):
        return None
    return _rows(tokens, heading, bibs, from_post=from_post)


def _rows(tokens: list[str], heading: Kind | None, bibs: frozenset[str], *, from_post: bool) -> _Found | None:
    """Bibs each with a time (under a heading) or with one or two times (in, and out)."""
    found: _Found = []
    waiting: list[str] = []
    times: list[str] = []

    def close() -> bool:
        kinds = [heading] if heading else [Kind.IN, Kind.OUT]
        if len(times) > len(kinds) or not waiting or not (times or heading):
            return False
        for bib in waiting:
            found.extend((k, bib, at) for k, at in zip(kinds, times or [""], strict=False))
        return True

    if heading is None and not from_post:
        return None
    for t in tokens:
        is_bib = _number(t) and (t.lstrip("#") in bibs or t.startswith("#") or not waiting or not _timely(t))
        if not is_bib and not _timely(t.replace(":", "")):
            return None
        if is_bib and times:
            if not close():
                return None
            waiting, times = [], []
        if is_bib:
            waiting.append(t.lstrip("#"))
        elif waiting:
            times.append(t)
        else:
            return None
    return found if close() else None


def _number(token: str) -> bool:
    return re.fullmatch(r"#?\d{1,5}", token) is not None


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
