"""A race's table of points as people paste it from a page, a sheet or a mail: rows of km, name, cut-off, crew.

Tolerant of what separates the columns, of decimal commas, of units, of the words of every language there is. Nothing of it
counts before a person has seen what was read.
"""

from __future__ import annotations

import csv
import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache
from itertools import pairwise

from server.event.times import DAYS, KM_PER_MILE, write_span
from server.sentences import folder, languages

__all__ = ["PastedRow", "ReadTable", "read_cut_off", "read_table"]

ROWS_MAX = 300
_YES_SIGNS, _NO_SIGNS = frozenset({"x", "✓", "✔", "1"}), frozenset({"-", "–", "—", "0"})


@dataclass(frozen=True, slots=True)
class _Words:
    """What a table's words look like in every language there is (`pasted.toml` in the folder of each)."""

    days: Mapping[str, int]
    length: re.Pattern[str]
    length_among: re.Pattern[str]
    mile: re.Pattern[str]
    unit_of_column: re.Pattern[str]
    unit_of_title: re.Pattern[str]
    leg: re.Pattern[str]
    lap: re.Pattern[str]
    answer: re.Pattern[str]
    yes: frozenset[str]
    no: frozenset[str]
    time: re.Pattern[str]
    crew: re.Pattern[str]
    heads: Mapping[str, re.Pattern[str]]
    elapsed: re.Pattern[str]
    arriving: re.Pattern[str]
    filler: re.Pattern[str]


@cache
def _words() -> _Words:
    """Of two days that share a short word the one counts whose language comes first."""
    read = [tomllib.loads((folder(x) / "pasted.toml").read_text(encoding="utf-8")) for x in languages()]
    days: dict[str, int] = {}
    for found in read:
        for number, names in enumerate(found["days"]):
            for name in names:
                days.setdefault(name, number)

    def any_of(key: str) -> str:
        return "(?:" + "|".join(w for found in read for w in found[key]) + ")"

    kilometre, far, mile, short = (any_of(key) for key in ("kilometre", "far", "mile", "mile_short"))
    length, any_mile = r"\d{1,3}(?:[.,]\d{1,3})?", f"(?:{mile}|{short})"
    # 'Mi' is a day as well: outside of a column's own heading the short word counts only where it stands as a unit does.
    as_unit = (
        rf"[(\[](?:[^()\[\]]*\W)?{short}\.?\s*[)\]]"
        rf"|(?:(?<![\d.,:]){length}\s*|\b{far}[^\w\t]+(?:\w+[^\w\t]+)?){short}\b(?!-|\.?\s*\d)"
    )
    day = "|".join(sorted(map(re.escape, days), key=len, reverse=True))
    hour = any_of("hour")
    crew = any_of("crew")
    yes = frozenset(w for found in read for w in found["yes"])
    no = frozenset(w for found in read for w in found["no"])
    answer = "|".join(map(re.escape, sorted(yes | no, key=len, reverse=True)))
    return _Words(
        days,
        re.compile(
            rf"(?:(?P<before>km|{mile})\s*)?(?P<n>{length})\s*(?P<unit>km|k|{any_mile})?\.?", re.IGNORECASE
        ),
        re.compile(
            rf"\b{mile}\s*{length}|(?<![\d:.,])\d{{1,3}}[.,]\d{{1,2}}$|^{length}\s*(?:km|k|{any_mile})?(?=\s|$)"
            rf"|\bkm\s*{length}|(?<!\d){length}\s*(?:km|{any_mile})\b",
            re.IGNORECASE,
        ),
        re.compile(any_mile, re.IGNORECASE),
        re.compile(rf"(?<![^\W\d])(?:{kilometre}|(?P<miles>{any_mile}))\b", re.IGNORECASE),
        re.compile(rf"(?<![^\W\d]){kilometre}\b|(?P<miles>(?<![^\W\d]){mile}\b|{as_unit})", re.IGNORECASE),
        re.compile(rf"\b{any_of('leg')}\b", re.IGNORECASE),
        re.compile(
            rf"\b(?:{any_of('lap')}\s*(?P<n>\d{{1,2}})|(?P<of>\d{{1,2}})\.?\s*{any_of('lap')})\b",
            re.IGNORECASE,
        ),
        re.compile(rf"(?:(?P<yes>{'|'.join(map(re.escape, yes))})|{'|'.join(map(re.escape, no))})(?!\w)"),
        yes | _YES_SIGNS | {w for found in read for w in found["crew"]},
        no | _NO_SIGNS,
        re.compile(
            rf"(?P<day>(?<!\w)(?:{day})(?!\w)\.?,?\s*(?:\d{{1,2}}\.?\s*[^\W\d]{{3,9}}\.?,?\s*)?)?(?P<plus>\+\s*)?(?<![\d.,])(?P<h>\d{{1,3}})\s?"
            rf"(?:[:h]|(?<=\d)\.(?=\d\d(?:\s*(?:{hour}|h|[ap]\.?m)\b)))(?P<m>[0-5]\d)(?::[0-5]\d)?"
            rf"(?:\s*(?P<half>[ap])\.?m\.?)?(?:\s*(?:{hour}|h)\b)?"
            rf"(?:,?\s*(?P<after>{day})(?!\w))?",
            re.IGNORECASE,
        ),
        re.compile(
            rf"\b(?P<no>{any_of('without')})\s*{crew}\b|\b{crew}\b\s*[:=]?\s*(?P<answer>(?:{answer})\b)?"
            rf"(?:{any_of('allowed')}\b\s*[:=]?\s*(?P<then>(?:{answer})\b)?)?",
            re.IGNORECASE,
        ),
        {
            "km": re.compile(rf"\b(?:{kilometre}|{far}|{any_mile})\b", re.IGNORECASE),
            "name": re.compile(rf"^{any_of('name')}\b", re.IGNORECASE),
            "cut": re.compile(any_of("cut"), re.IGNORECASE),
            "crew": re.compile(crew, re.IGNORECASE),
        },
        re.compile(any_of("elapsed"), re.IGNORECASE),
        re.compile(rf"\b{any_of('arriving')}\b", re.IGNORECASE),
        re.compile(rf"\b{any_of('filler')}\b:?", re.IGNORECASE),
    )


@dataclass(frozen=True, slots=True)
class PastedRow:
    """One point as read. `line`: its number in what was pasted, from 1; `clock` a local wall time ('23:30' or, where the
    start is known, with the weekday), `elapsed` a length since the start; '' for none. `crew` None where nothing is said."""

    line: int
    name: str
    km: float | None = None
    clock: str = ""
    elapsed: str = ""
    edge: str = "out"
    crew: bool | None = None


@dataclass(frozen=True, slots=True)
class ReadTable:
    """What was made of a pasted text, and the lines (number, text) that nothing was made of."""

    rows: tuple[PastedRow, ...]
    left: tuple[tuple[int, str], ...]


def read_table(text: str, starts: datetime | None = None) -> ReadTable:
    """Read a pasted table. `starts`: the start on the race's clock, so that times past midnight get their weekday."""
    lines = [(n, line) for n, line in enumerate(text.splitlines()[:ROWS_MAX], 1) if line.strip(" \t,;|-=+:")]
    cells = {n: _cells(line) for n, line in lines}
    head = next((n for n, _ in lines if _heads(cells[n])), None)
    first = [] if head is None else cells[head]
    body = [x for n, x in cells.items() if head is None or n > head]
    heads = _completed(_heads(first), first, body)
    laps = [n for n, h in enumerate(heads) if h == "lap"]
    above = [line for n, line in lines if head is not None and n <= head]
    miles = _in_miles(heads, first, above[:-1])
    elapsed = any(_words().elapsed.search(x) for x in above)
    edge = "out"
    if any(h == "cut" and _words().arriving.search(c) for h, c in zip(heads, first, strict=False)):
        edge = "in"
    found: list[PastedRow] = []
    left: list[tuple[int, str]] = []
    for number, line in lines:
        if number == head:
            continue
        read = list(
            _rows(number, cells[number], [] if head is not None and number < head else heads, first, miles)
        )
        found += read
        if not read:
            left.append((number, line.strip()[:120]))
    if laps:
        found.sort(key=lambda r: r.km or 0.0)
    rows, last, said = [], starts, dict(lines)
    for row in found:
        counted = elapsed or (head is None and _words().elapsed.search(said[row.line]) is not None)
        clock, length, last = _timed(row.clock, counted, starts, last)
        rows.append(PastedRow(row.line, row.name, row.km, clock, length, edge, row.crew))
    return ReadTable(tuple(rows), tuple(left))


def read_cut_off(text: str, starts: datetime | None = None) -> dict[str, str]:
    """A cut-off as typed: {'clock': 'Sat 23:30'} or {'elapsed': '6:30'} ('+6:30', or 24 hours and more). What can't be read
    stays as typed, for the check to tell."""
    text = re.sub(r"(\d)\.(?=\d\d$)", r"\1:", text.strip())
    if _words().time.fullmatch(text) is None:
        return {"clock": text.strip()}
    clock, length, _ = _timed(text, False, starts, starts)
    return {"elapsed": length} if length else {"clock": clock}


def _cells(line: str) -> list[str]:
    for mark in ("\t", ";", "|"):
        if mark in line:
            return [c.strip() for c in next(csv.reader([line.strip(" |")], delimiter=mark))]
    gaps = [c.strip() for c in re.split(r"\s{2,}", line.strip())]
    if len(gaps) >= 3 and not any(c.endswith(",") for c in gaps):
        return gaps  # columns set with spaces, a comma in a name: 'Finish, Thornby   100 km   Sun 09:00'
    if "," in line and not re.fullmatch(r"[^,]*\d,\d{1,3}(?!\d)[^,]*", line):
        return [c.strip() for c in next(csv.reader([line], skipinitialspace=True))]
    return gaps


def _heads(cells: Sequence[str]) -> list[str]:
    """What each column is, where the line is a heading: no times, no lengths, and two words that name columns."""
    if any(_words().time.search(c) or _words().length.fullmatch(c) for c in cells if c):
        return []
    heads = _words().heads.items()
    named = [
        "leg" if _words().leg.search(c)
        else "lap" if _words().lap.search(c)
        else next((k for k, p in heads if p.search(c)), "")
        for c in cells
    ]  # fmt: skip
    return named if len({n for n in named if n} - {"leg"}) >= 2 else []


def _completed(heads: list[str], first: Sequence[str], body: Sequence[Sequence[str]]) -> list[str]:
    """What each column is, those that no heading tells told by what stands in them one below the other.

    A cut-off is never guessed where there is a heading: the times may be those of whoever leads.
    """
    width = len(first) or max(map(len, body), key=[len(x) for x in body].count, default=0)
    rows = [x for x in body if len(x) == width]
    if width < 3 or len(rows) < 3:
        return heads
    found = heads or [""] * width
    columns = {n: [c for x in rows if (c := x[n].strip(" –—-"))] for n in range(width) if not found[n]}
    guesses = {"km": _longest_line(columns), "name": _named_each(columns)}
    if not heads:
        times = [n for n, cells in columns.items() if any(_words().time.search(c) for c in cells)]
        told = [n for n, cells in columns.items() if cells and all(_crew(c) is not None for c in cells)]
        guesses |= {"cut": times[-1] if times else None, "crew": told[0] if told else None}
    for kind, column in guesses.items():
        if column is not None and kind not in found and not (kind == "km" and "lap" in found):
            found[column] = kind
    return found if {"name", "km"} <= set(found) or heads else []


def _in_miles(heads: Sequence[str], first: Sequence[str], titles: Sequence[str]) -> bool:
    """Whether lengths without a unit are miles: what names a unit nearest to them says so, the heading of their column
    before the line of headings and this before the title. Where that names both it is no unit of a column."""
    own = next((c for c, h in zip(first, heads, strict=False) if h in ("lap", "km")), "")
    for pattern, text in (
        (_words().unit_of_column, own),
        *((_words().unit_of_title, x) for x in ("\t".join(first), *reversed(titles))),
    ):
        if hits := list(pattern.finditer(text)):
            return all(hit["miles"] for hit in hits)
    return False


def _longest_line(columns: Mapping[int, Sequence[str]]) -> int | None:
    """The column whose lengths rise all the way, and farthest: neither a number for each row nor the climb."""
    ends = {}
    for n, cells in columns.items():
        lengths = [_km(c, False) for c in cells]
        read = [x for x in lengths if x is not None]
        rises = len(read) == len(lengths) > 1 and read == sorted(read) and read[0] < read[-1]
        if rises and any(b - a != 1 for a, b in pairwise(read)):
            ends[n] = read[-1]
    return max(ends, key=ends.__getitem__) if ends else None


def _named_each(columns: Mapping[int, Sequence[str]]) -> int | None:
    """The first column that has words, another in each row; 'CP1' is a name only where nothing else is."""
    words = [
        n
        for n, cells in columns.items()
        if len({*cells}) == len(cells) > 2
        and all(
            re.search(r"[^\W\d]{2}", c) and not _words().time.search(c) and not _words().length.fullmatch(c)
            for c in cells
        )
    ]
    full = [n for n in words if not all(re.fullmatch(r"\w{1,4}\s?\d{1,2}", c) for c in columns[n])]
    return next(iter(full or words), None)


def _rows(
    number: int, cells: Sequence[str], heads: Sequence[str], first: Sequence[str], miles: bool
) -> Iterator[PastedRow]:
    """The points of a line: one, or in a table of laps the same place once a lap."""
    laps = [n for n, head in enumerate(heads) if head == "lap"]
    if not laps or len(cells) != len(heads):
        row = _row(number, cells, heads, miles)
        if row is not None:
            yield row
        return
    by = dict(_columns(cells, heads))
    lengths = {n + 1: km for n, at in enumerate(laps) if (km := _km(cells[at], miles)) is not None}
    cut = by.get("cut", "")
    hit = _words().lap.search(cut)
    meant = int(hit["n"] or hit["of"]) if hit else max(lengths, default=0)
    for lap, km in lengths.items():
        name = f"{by.get('name', '')[:150]}, {first[laps[lap - 1]][:40]}"
        yield PastedRow(number, name, km, cut if lap == meant else "", crew=_crew(by.get("crew", "")))


def _row(number: int, cells: Sequence[str], heads: Sequence[str], miles: bool) -> PastedRow | None:
    """`clock` of it is the time as written."""
    if heads and len(cells) >= 2:
        by = dict(_columns(cells, heads))
    elif len(cells) >= 3:
        by = dict(_sorted_out(cells))
    else:
        by = {}
    if not by.get("name"):
        by = _among(" ".join(cells))
    elif not by.get("km"):
        inside = _among(by["name"])
        by |= {k: v for k, v in inside.items() if "km" in inside and k in ("km", "name")}
    km = _km(by.get("km", ""), miles)
    name = re.sub(r"^\d{1,2}[.)]\s+", "", by.get("name", "")).strip(" -–:,")
    if not name or (km is None and not by.get("cut")):
        return None
    # What stands beside the start is when it is.
    return PastedRow(
        number, name[:200], km, by.get("cut", "") if km != 0 else "", crew=_crew(by.get("crew", ""))
    )


def _columns(cells: Sequence[str], heads: Sequence[str]) -> Iterator[tuple[str, str]]:
    for head, cell in reversed(list(zip(heads, cells, strict=False))):
        if head:
            yield head, cell


def _sorted_out(cells: Sequence[str]) -> Iterator[tuple[str, str]]:
    """Columns without a heading, told by what stands in them."""
    kinds: dict[str, list[str]] = {"cut": [], "km": [], "crew": [], "name": []}
    for cell in filter(None, cells):
        word = cell.casefold().strip(" .")
        if _words().time.search(cell):
            kinds["cut"].append(cell)
        elif _words().length.fullmatch(cell):
            kinds["km"].append(cell)
        elif word in _words().yes | _words().no or _words().crew.fullmatch(cell):
            kinds["crew"].append(cell)
        elif re.search(r"[^\W\d]{2}", cell):
            kinds["name"].append(cell)
    # 'CP1' stands for a name only where there is no other; a bare number in front counts the rows.
    names = [c for c in kinds["name"] if not re.fullmatch(r"\w{1,4}\s?\d{1,2}", c)] or kinds["name"]
    lengths = kinds["km"]
    told = [c for c in lengths if not c.isdigit()] or (lengths[1:] if cells[0] in lengths else []) or lengths
    for kind, found in (("cut", kinds["cut"]), ("km", told), ("crew", kinds["crew"]), ("name", names)):
        if found:
            yield kind, found[0]


def _among(line: str) -> dict[str, str]:
    """A line without columns: the time, the word about crew and the distance are taken out, the name is what stays."""
    found: dict[str, str] = {}
    for kind, pattern in (("cut", _words().time), ("crew", _words().crew), ("km", _words().length_among)):
        hit = pattern.search(line)
        if hit is not None:
            found[kind] = hit[0].strip()
            line = f"{line[: hit.start()]} {line[hit.end() :]}".strip()
    rest = re.sub(r"\bkm\b", " ", _words().filler.sub(" ", line), flags=re.I)
    if "cut" in found:
        rest = _words().elapsed.sub(" ", rest)
    rest = re.sub(r"\(\s*\)", " ", rest)
    return found | {"name": re.sub(r"\s+", " ", rest).strip(" ,;:()-–")}


def _km(text: str, miles: bool) -> float | None:
    hit = _words().length.fullmatch(text.strip())
    if hit is None:
        return None
    value = float(hit["n"].replace(",", "."))
    if unit := hit["unit"] or hit["before"]:
        miles = _words().mile.fullmatch(unit) is not None
    return round(value * KM_PER_MILE, 2) if miles else value


def _crew(text: str) -> bool | None:
    word = text.casefold().strip(" .")
    if word in _words().no:
        return False
    if word in _words().yes:
        return True
    if begun := _words().answer.match(word):
        return begun["yes"] is not None
    hit = _words().crew.search(text)
    if hit is None:
        return None
    said = (hit["answer"] or hit["then"] or "").casefold()
    return hit["no"] is None and said not in _words().no


def _timed(
    text: str, elapsed: bool, starts: datetime | None, last: datetime | None
) -> tuple[str, str, datetime | None]:
    """Clock time or length of a cut-off, and the moment it is, from which the next one is looked for."""
    hit = _words().time.search(text)
    if hit is None:
        return "", "", last
    hours, minutes = int(hit["h"]), int(hit["m"])
    if hit["half"]:
        hours = hours % 12 + (12 if hit["half"].lower() == "p" else 0)
    if elapsed or hit["plus"] or hours > 23:
        length = timedelta(hours=hours, minutes=minutes)
        return "", write_span(length), last if starts is None else starts + length
    named = re.match(r"\w+", hit["day"] or hit["after"] or "")
    day = _words().days[named[0].casefold()] if named else None
    clock = f"{hours:02d}:{minutes:02d}"
    if last is None:
        return (clock if day is None else f"{DAYS[day].capitalize()} {clock}"), "", None
    at = last.replace(hour=hours, minute=minutes, second=0, microsecond=0)
    while at < last or (day is not None and at.weekday() != day):
        at += timedelta(days=1)
    if day is not None and at - last > timedelta(days=5):
        at = last  # a day before the one above it: the check will tell of the order
        return f"{DAYS[day].capitalize()} {clock}", "", last
    return f"{DAYS[at.weekday()].capitalize()} {clock}", "", at
