"""The short form, and a volunteer's list of bibs: '214 in 0312 out 0319; 87 in 0315', 'in mill 1455', 'out'.

    message = item { (';' | ',' | new line | ' ') item }
    item    = [bib] word [point] [time]
    word    = in | out | through | resting | moving | sweep | not yet, in any language (the folders' [short])
A bib and a point hold until the next one. A message is taken for this form only if nothing else stands in it.
It fits 160 characters, needs no punctuation, and is what goes through text gateways.

Lists kept on paper come in other orders too: the word once for many ('in: 214 1502, 87 1509'), the time first
('15:02 214 in'), and from a volunteer bib and times alone ('214 1502 1507'): `read_columns`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cache
from zoneinfo import ZoneInfo

from server.conversation.telling.answer import RunnerHere
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.times import nearest, signs_of
from server.facts.entry import Kind

_KINDS = {
    "in": Kind.IN, "out": Kind.OUT, "through": Kind.THROUGH, "resting": Kind.RESTING, "moving": Kind.MOVING_AGAIN,
    "sweep": Kind.SWEEP_THROUGH, "notyet": Kind.NOT_HERE_YET,
}  # fmt: skip
_STAND_INS = frozenset({"<point>", "<finish>"})


@dataclass(frozen=True, slots=True)
class ListItem:
    """One item of a list: bib as written (None: not given), word, time (None: not given)."""

    kind: Kind
    bib: str | None
    at: datetime | None


def kind_of(token: str) -> Kind | None:
    """What a word of a list stands for."""
    return _KINDS.get(lexicon().short.get(token, ""))


def word_for(kind: str) -> str:
    """A word that stands for a kind of report in a list."""
    return next(w for w, k in lexicon().short.items() if k == kind and " " not in w)


def _filler(token: str) -> bool:
    return token in (";", *lexicon().filler)


_OF_A_CLOCK = frozenset({"QUARTER", "HALF", "PAST", "TO", "OH", "ONE", "OCLOCK"})


@cache
def _words() -> frozenset[str]:
    """Every word that may stand in a list."""
    return (
        frozenset(w for p in lexicon().short for w in p.split())
        | lexicon().filler
        | frozenset(lexicon().numbers)
    )


def may_stand(word: str) -> bool:
    """Whether a word may stand in a list."""
    return word == ";" or word[0].isdigit() or word[0] == "#" or word in _words()


def time_of(token: str, now: datetime, zone: str) -> datetime | None:
    """'0312', '312', '3:12', '03:12' as a moment; anything else is none."""
    m = re.fullmatch(r"(\d{1,2}):?(\d{2})", token)
    if m is None or int(m[1]) > 23 or int(m[2]) > 59:
        return None
    at, _ = nearest(int(m[1]), int(m[2]), "", now, ZoneInfo(zone), len(m[1]) == 2)
    return at


def _is_bib(tokens: Sequence[str], i: int, bibs: frozenset[str]) -> bool:
    """A number is a bib where a word of a report follows it, perhaps after other bibs; else it is a time."""
    token = tokens[i].lstrip("#")
    if not token.isdigit() or len(token) > 5:
        return False
    following = next((t for t in tokens[i + 1 :] if not _filler(t) and not t.lstrip("#").isdigit()), "")
    leads = i == 0 or _filler(tokens[i - 1]) or tokens[i].startswith("#") or _like_the_one_before(tokens, i)
    return kind_of(following) is not None and (leads or token in bibs or not _timely(token))


def _like_the_one_before(tokens: Sequence[str], i: int) -> bool:
    """'214 215 out': a number of three digits behind one of three, which a time would hardly be."""
    one, other = tokens[i - 1].lstrip("#"), tokens[i]
    return one.isdigit() and other.isdigit() and len(one) == len(other) == 3


def _timely(token: str) -> bool:
    token = token.replace(":", "")
    return re.fullmatch(r"\d{3,4}", token) is not None and int(token[-2:]) < 60 and int(token[:-2]) < 24


@cache
def _shapes() -> tuple[tuple[tuple[str, str], ...], re.Pattern[str], re.Pattern[str], re.Pattern[str]]:
    """Phrases with the one word they are put into; a dictated bib in two numbers, in digits; a time in two numbers."""
    short = lexicon().short
    word_of = {
        k: next(w for w, kind in short.items() if kind == k and " " not in w) for k in set(short.values())
    }
    phrases = tuple((p, word_of[short[p]]) for p in sorted(short, key=len, reverse=True) if " " in p)
    words = "|".join(sorted(re.escape(w) for w in short if " " not in w))
    return (
        phrases,
        re.compile(rf"(?<= )([1-9]) (\d0|1\d|[2-9]\d) (?=(?:{words}) )"),
        re.compile(rf"(?<!\d )(?<= )(?:\d )+\d (?=(?:{words}) )"),
        re.compile(rf"(?<= )((?:{words}|at)) (\d{{1,2}}) ([0-5]\d) "),
    )


def tokens_of(words: Sequence[str]) -> list[str]:
    """The words of a list: digits dictated one by one joined to a bib, hours and minutes to a time, phrases to one word."""
    signs = signs_of(words)
    row: list[str] = []
    for begin, end, first, last in signs.spans:
        sign = signs.text[begin:end]
        if sign == "ONE" and row and row[-1].isdigit():
            sign = "1"
        if sign in _OF_A_CLOCK and sign not in ("ONE", "OH"):
            row.append(sign)
            continue
        row += (
            [sign] if sign.isdigit() or (last - first > 1 and not sign.isupper()) else list(words[first:last])
        )
    text = f" {' '.join(row)} "
    phrases, bib, digits, time = _shapes()
    for phrase, word in phrases:
        text = text.replace(f" {phrase} ", f" {word} ")
    text = _ON_THE_HOUR.sub(r"\1:\2 ", _SPOKEN.sub(_as_clock, text)).replace(" OCLOCK ", " ")
    text = bib.sub(r"\1\2 ", text)
    text = digits.sub(lambda m: m[0].replace(" ", "") + " ", text)
    text = time.sub(r"\1 \2:\3 ", text)
    return text.split()


_ON_THE_HOUR = re.compile(r"(?<= )(\d{1,2}) OCLOCK ([0-5]\d) ")
_SPOKEN = re.compile(r"(?<= )(QUARTER|HALF|\d{1,2})(?: min)? (PAST|TO) (\d{1,2}) ")


def _as_clock(m: re.Match[str]) -> str:
    """'5 past 3' as '3:05'; anything that is no time stays."""
    minutes, hour = {"QUARTER": 15, "HALF": 30}.get(m[1]) or int(m[1]), int(m[3])
    if minutes >= 60 or hour > 24:
        return m[0]
    if m[2] == "TO":
        return f"{(hour - 2) % 12 + 1 if hour <= 12 else hour - 1}:{60 - minutes:02d} " if minutes else m[0]
    return f"{hour}:{minutes:02d} "


def read_list(
    tokens: Sequence[str], now: datetime, zone: str, bibs: frozenset[str]
) -> tuple[ListItem, ...] | None:
    """The items of a message in the short form (points as stand-ins); None if it is anything else.

    '214 and 87 in 0312': one word and time hold for every bib before it.
    """
    items: list[ListItem] = []
    group: list[str | None] = [None]
    latest: range = range(0)
    open_group = False
    for i, t in enumerate(tokens):
        kind = kind_of(t)
        if kind is not None:
            if i and Kind.NOT_HERE_YET in (kind, before := kind_of(tokens[i - 1])) and before is not None:
                return None  # 'not yet out' is one thing
            if latest and not open_group and (items[-1].kind, items[-1].at) == (kind, None):
                continue  # '214 rein in Candle 1118': one thing in two words
            latest = range(len(items), len(items) + len(group))
            items += [ListItem(kind, bib, None) for bib in group]
            open_group = False
        elif _filler(t) or t in _STAND_INS:
            continue
        elif _is_bib(tokens, i, bibs):
            group = [*(group if open_group else ()), t.lstrip("#")]
            open_group = True
        elif latest and items[-1].at is None and (at := time_of(t, now, zone)):
            for k in latest:
                items[k] = replace(items[k], at=at)
        elif _carries_on(tokens, i, items, bibs):
            # '214 through 1502 and 87 at 1504': the word holds for the next bib too.
            group = [t.lstrip("#")]
            latest = range(len(items), len(items) + 1)
            items.append(ListItem(items[-1].kind, group[0], None))
        else:
            return None
    return tuple(items) or None


def _carries_on(tokens: Sequence[str], i: int, items: list[ListItem], bibs: frozenset[str]) -> bool:
    """Whether a known bib follows a finished item and has its own time and no word."""
    later = [t for t in tokens[i + 1 :] if not _filler(t)]
    once = bool(items) and items[-1].at is not None and sum(x.bib == items[-1].bib for x in items) == 1
    return once and tokens[i].lstrip("#") in bibs and bool(later) and _timely(later[0])


def read_columns(
    tokens: Sequence[str], now: datetime, zone: str, bibs: frozenset[str], *, from_post: bool
) -> tuple[ListItem, ...] | None:
    """Lists in columns: word first, time first, and `from_post` (a volunteer writes) bib and times alone."""
    items: list[ListItem] = []
    heading: Kind | None = None
    for line in _lines(tokens):
        row = [t for t in line if kind_of(t) is not None or not (_filler(t) or t in _STAND_INS)]
        if not row:
            continue
        if len(row) == 1 and kind_of(row[0]) is not None:
            heading = kind_of(row[0])
            continue
        found = _column(row, heading, bibs, from_post=from_post)
        if found is None:
            return None
        for kind, bib, said in found:
            at = time_of(said, now, zone) if said else None
            if said and at is None:
                return None
            items.append(ListItem(kind, bib, at))
    return tuple(items) or None


def _lines(tokens: Sequence[str]) -> list[list[str]]:
    out: list[list[str]] = [[]]
    for t in tokens:
        if t == ";":
            out.append([])
        else:
            out[-1].append(t)
    return out


_Found = list[tuple[Kind, str, str]]


def _column(
    tokens: list[str], heading: Kind | None, bibs: frozenset[str], *, from_post: bool
) -> _Found | None:
    """One line of a list: (kind, bib, time as written) of each entry; None if it is none."""
    first = kind_of(tokens[0])
    if first is not None and len(tokens) > 2:
        heading, tokens = first, tokens[1:]
    elif len(tokens) == 3 and _timely(tokens[0]):
        # The time first, then word and bib in either order.
        a, b = tokens[1:]
        word, bib = (a, b) if kind_of(a) else (b, a)
        kind = kind_of(word)
        if kind is not None and _number(bib):
            return [(kind, bib.lstrip("#"), tokens[0])]
    if any(kind_of(t) is not None for t in tokens):
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
        if not is_bib and not _timely(t):
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
