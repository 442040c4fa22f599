"""Times in a row of words: 'quarter past two', 'halb drei', '3h20', '1435', '20 min ago' -> a moment, a length, a distance.

Each word or phrase of time is first put into one sign that all languages share (the folders' times.toml); the patterns here
read signs. Everything is relative to `now` and the event's time zone. A clock time without a day is the one nearest to now,
the past counting as three times nearer than the future: people report what has happened.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from functools import cache, lru_cache
from zoneinfo import ZoneInfo

from server.conversation.understanding.language import lexicon

FUTURE_COUNTS = 3
SURE_WITHIN = timedelta(hours=5)
"""Past this, which of two readings of a 12-hour time was meant is a guess."""
LONGEST = timedelta(days=30)
"""No length that is said is longer: '99999999999 min ago' is a slip, and must not keep the rest of it from being read."""
FEW = 5


@dataclass(frozen=True, slots=True)
class TimeSaid:
    """A moment said by the words `start` to `end`. `unsure`: there was more than one good reading. `ahead`: said as a length
    to come ('in 20 min'). `bare`: only 'now', or so. `ago`: said as so long ago; `since`: as how long something has lasted
    ('seit 20 min')."""

    at: datetime
    start: int
    end: int
    unsure: bool = False
    ahead: bool = False
    bare: bool = False
    ago: bool = False
    since: bool = False


@dataclass(frozen=True, slots=True)
class LengthSaid:
    """A length of time said by the words `start` to `end`; `marked` where 'for' or 'by' stands before it."""

    length: timedelta
    start: int
    end: int
    marked: bool = False


@dataclass(frozen=True, slots=True)
class AmountSaid:
    """A number with what it counts: KM, MILE, PERCENT, or nothing ('')."""

    number: float
    unit: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Signs:
    """A row of words as signs: `text` with one blank between; `spans` of each sign in it (begin, end, first word, one past
    the last)."""

    text: str
    spans: tuple[tuple[int, int, int, int], ...]

    def words(self, start: int, end: int) -> tuple[int, int]:
        """The words that stand behind a stretch of the text."""
        hit = [s for s in self.spans if s[0] < end and s[1] > start]
        return hit[0][2], hit[-1][3]


@cache
def _table() -> dict[str, tuple[tuple[tuple[str, ...], str], ...]]:
    """Phrases of time by their first word, longest first."""
    out: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for words, sign in lexicon().times:
        out.setdefault(words[0], []).append((words, sign))
    return {k: tuple(v) for k, v in out.items()}


def signs_of(words: Sequence[str]) -> Signs:
    """The row of signs, remembered: the same words are read for times, lengths and names."""
    return _signs(tuple(words))


@lru_cache(maxsize=512)
def _signs(words: tuple[str, ...]) -> Signs:
    """The row of signs: 'twenty five to three' -> '25 TO 3'. What is no word of time stays as it is, in small letters."""
    numbers = lexicon().numbers
    out: list[tuple[str, int, int]] = []
    i = 0
    while i < len(words):
        w = words[i]
        if w in numbers:
            n, j = numbers[w], i + 1
            nxt = numbers.get(words[j], 0) if j < len(words) else 0
            if n >= 20 and n % 10 == 0 and 0 < nxt < 10:
                n, j = n + nxt, j + 1
            out.append((str(n), i, j))
            i = j
            continue
        found = next((p for p in _table().get(w, ()) if words[i : i + len(p[0])] == p[0]), None)
        if found is None:
            out.append((w, i, i + 1))
            i += 1
        elif (
            found[1] == "OH"
            and i + 1 < len(words)
            and len(d := str(numbers.get(words[i + 1], words[i + 1]))) == 1
        ):
            # 'three oh five': a nought before the next digit.
            out.append((f"0{d}" if d.isdigit() else w, i, i + 2 if d.isdigit() else i + 1))
            i += 2 if d.isdigit() else 1
        else:
            out.append((found[1], i, i + len(found[0])))
            i += len(found[0])
    text, spans = "", []
    for sign, a, b in out:
        spans.append((len(text), len(text) + len(sign), a, b))
        text += sign + " "
    return Signs(text.rstrip(" "), tuple(spans))


_NEAR = r"(?:(?:AT|SINCE|ABOUT|A|BY|FOR) )*"
_COUNT = (
    r"(?:(?P<n>\d+(?:\.\d+)?)|(?P<few>FEW)|(?P<couple>COUPLE)|(?:(?:A|ONE) )?(?P<half>HALF)(?: A| ONE)?"
    r"|(?P<quarter>QUARTER)|(?P<one>A|ONE))"
)
_MORE = r"(?: (?:AND )?(?:(?P<and>ANDHALF)|(?P<more>\d+)(?: MIN)?\b(?! (?:PAST|TO)\b)))?"
_LENGTH = rf"{_COUNT} (?P<unit>MIN|HOUR|HEURE)\b{_MORE}"
_HOUR = r"(?P<h>\d{1,2}|ONE|12:00 PM|00:00)"
_HALF = r"(?: (?P<half>AM|PM))?"
_CLOCK_END = r"(?! (?:MIN|KM|MILE|PERCENT|HOUR)\b)(?!\S)"

# 'Depuis 14 heures' is a clock's, 'depuis 2 heures' a length.
_AGO = (
    re.compile(rf"(?:(?:AT|ABOUT) )*(?<!\S){_LENGTH}(?: or so)? (?:AGO|BEFORE)(?!\S)(?! (?:\d|PT|half|ONE))"),
    re.compile(
        r"(?<!\S)(?:BEFORE|AGOPRE|SINCE(?!(?: ABOUT| AT)* (?:[6-9]|\d\d) HEURE))"
        rf"(?: (?:ABOUT|AT|A(?= (?:FEW|\d))))* {_LENGTH}"
    ),
    re.compile(
        r"(?<!\S)(?:ABOUT )?(?P<n>\d+) AGO(?!\S)(?P<few>X)?(?P<couple>X)?(?P<half>X)?(?P<quarter>X)?(?P<one>X)?"
        r"(?P<unit>X)?(?P<and>X)?(?P<more>X)?"
    ),
    # 'gone 10 min', 'left 5 minutes': so long ago.
    re.compile(
        rf"(?:(?<=PAST )|(?<=left )|(?<=here )|(?<=us )){_LENGTH}(?! (?:TO|PAST|early|late|behind|ahead|down|up)\b)"
    ),
)
_IN = re.compile(rf"(?<!\S)(?:IN|dans)(?: ABOUT)? {_LENGTH}(?! (?:AGO|BEFORE))")
_FOR = re.compile(rf"(?<!\S)(?:FOR|BY)(?: ABOUT)? {_LENGTH}")
_PLAIN = re.compile(rf"(?<!\S){_LENGTH}(?! (?:TO|PAST|BEFORE|AGO) (?:\d|HALFTO))")
_AMOUNT = re.compile(
    r"(?<!\S)(?P<n>\d+(?:\.\d+)?) (?P<unit>KM|MILE|PERCENT)(?!\S)|(?<!\S)(?P<unit2>KM|MILE) (?P<n2>\d+(?:\.\d+)?)(?!\S)"
)

HOURS, MINUTES = 24, 60
Parts = tuple[int, int, str, bool]
"""Hour, minute, 'AM', 'PM' or '', and whether it is written as 24-hour time."""


def _hour(m: re.Match[str]) -> int:
    return {"ONE": 1, "12:00 PM": 12, "00:00": 24}.get(m["h"]) or int(m["h"])


def _minutes_of(text: str) -> int:
    return {"QUARTER": 15, "HALF": 30, "HALFTO": 30}.get(text) or int(text)


def _past_or_to(m: re.Match[str], _local: datetime) -> Parts | None:
    minutes, hour = _minutes_of(m["m"]), _hour(m)
    if minutes >= 60 or hour > 24:
        return None
    half = _half(m)
    if m["side"] == "PAST":
        return hour, minutes, half, hour > 12
    return ((hour - 1) % 24 if hour > 12 else (hour - 2) % 12 + 1), 60 - minutes, half, hour > 12


def _half(m: re.Match[str]) -> str:
    return (m.groupdict().get("half") or "").lower()


def _near_half(m: re.Match[str], _local: datetime) -> Parts | None:
    """'fünf vor halb drei' is 2:25."""
    off, hour = int(m["m"]), _hour(m)
    return _twelve(hour - 1, 30 - off if m["side"] != "PAST" else 30 + off, _half(m), hour > 12)


def _half_to(m: re.Match[str], _local: datetime) -> Parts | None:
    return _twelve(_hour(m) - 1, 30, _half(m), _hour(m) > 12)


def _quarter_of(m: re.Match[str], _local: datetime) -> Parts | None:
    """'dreiviertel drei' is 2:45, 'viertel drei' 2:15."""
    return _twelve(_hour(m) - 1, 45 if m["q"] == "THREEQUARTER" else 15, _half(m), _hour(m) > 12)


def _twelve(hour: int, minute: int, half: str, late: bool) -> Parts:
    hour, minute = divmod(hour * 60 + minute, 60)
    return (hour % 24 if late else (hour - 1) % 12 + 1), minute, half, late


def _half_two(m: re.Match[str], _local: datetime) -> Parts | None:
    return _hour(m), 30, _half(m), False


def _heure(m: re.Match[str], _local: datetime) -> Parts | None:
    """'trois heures moins le quart', '3 heures et demie', 'quinze heures vingt'."""
    hour, half = _hour(m), _half(m)
    if m["minus"]:
        return _past_or_to_of(hour, 60 - _minutes_of(m["minus"]), half)
    minute = 30 if m["and"] == "ANDHALF" else 15 if m["and"] else int(m["more"] or 0)
    return hour, minute, half, hour > 12


def _past_or_to_of(hour: int, minute: int, half: str) -> Parts:
    return ((hour - 1) % 24 if hour > 12 else (hour - 2) % 12 + 1), minute, half, hour > 12


def _past_this(m: re.Match[str], local: datetime) -> Parts | None:
    minutes = _minutes_of(m["m"] or "QUARTER")
    if minutes >= 60:
        return None
    if m["side"] == "PAST":
        return (local.hour if minutes <= local.minute else (local.hour - 1) % 24), minutes, "", True
    return (local.hour if 60 - minutes <= local.minute else (local.hour - 1) % 24), 60 - minutes, "", True


def _clock(m: re.Match[str], _local: datetime) -> Parts | None:
    half = _half(m)
    return int(m["h"]), int(m["m"]), half, m["h"].startswith("0") and not half


def _four(m: re.Match[str], _local: datetime) -> Parts | None:
    """'1435' or '0312' is 24-hour time; nobody writes '0312' for the afternoon."""
    half = _half(m)
    return int(m["h"]), int(m["m"]), half, not half


def _at_hour(m: re.Match[str], _local: datetime) -> Parts | None:
    return _hour(m), 0, _half(m), _hour(m) > 12


def _at_hour_or_minute(m: re.Match[str], local: datetime) -> Parts | None:
    """'At 5' is an hour; 'out at 36' the minute of this one or of that before, which no hour is."""
    if not m["h"].isdigit() or not HOURS <= int(m["h"]) < MINUTES:
        return _at_hour(m, local)
    minute = int(m["h"])
    return (local.hour if minute <= local.minute else (local.hour - 1) % 24), minute, "", True


def _uhr(m: re.Match[str], _local: datetime) -> Parts | None:
    minute = int(m["m"] or 0)
    return _hour(m), minute, _half(m), _hour(m) > 12 or m["h"].startswith("0")


def _noon(m: re.Match[str], _local: datetime) -> Parts | None:
    return (12, 0, "pm", False) if m[0].endswith("PM") else (0, 0, "", True)


_READERS: tuple[tuple[re.Pattern[str], Callable[[re.Match[str], datetime], Parts | None]], ...] = (
    (re.compile(rf"(?<!\S){_NEAR}(?P<m>\d{{1,2}})(?: MIN)? (?P<side>PAST|TO|BEFORE) HALFTO {_HOUR}{_HALF}{_CLOCK_END}"),
     _near_half),
    (re.compile(rf"(?<!\S){_NEAR}(?P<m>QUARTER|HALF|\d{{1,2}})(?: MIN)? (?P<side>PAST|TO|BEFORE) {_HOUR}(?: OCLOCK)?{_HALF}{_CLOCK_END}"),  # noqa: E501
     _past_or_to),
    (re.compile(rf"(?<!\S){_NEAR}HALFTO {_HOUR}{_HALF}{_CLOCK_END}"), _half_to),
    (re.compile(rf"(?<!\S){_NEAR}(?P<q>THREEQUARTER|QUARTER) {_HOUR}{_HALF}{_CLOCK_END}"), _quarter_of),
    (re.compile(rf"(?<!\S){_NEAR}HALF {_HOUR}{_HALF}{_CLOCK_END}"), _half_two),
    (re.compile(rf"(?<!\S){_NEAR}{_HOUR} HEURE(?: (?:MINUS (?P<minus>QUARTER|\d{{1,2}})|(?P<and>ANDHALF|ANDQUARTER)|(?P<more>[0-5]?\d)))?{_HALF}{_CLOCK_END}"),  # noqa: E501
     _heure),
    (re.compile(rf"(?<!\S)(?:ABOUT )+(?:PAST|BEFORE|TO) {_HOUR}{_HALF}{_CLOCK_END}"), _at_hour),
    (re.compile(rf"(?<!\S){_NEAR}(?P<h>\d{{1,2}}):(?P<m>\d{{2}})(?: OCLOCK)?{_HALF}(?!\S)"), _clock),
    (re.compile(rf"(?<!\S){_NEAR}{_HOUR} OCLOCK(?: (?P<m>[0-5]\d))?{_HALF}{_CLOCK_END}"), _uhr),
    (re.compile(rf"(?<!\S){_NEAR}(?P<h>[01]\d|2[0-4])(?P<m>[0-5]\d)(?: OCLOCK)?{_HALF}{_CLOCK_END}"), _four),
    (re.compile(rf"(?<!\S){_NEAR}(?P<h>[1-9])(?P<m>[0-5]\d) (?P<half>AM|PM)(?!\S)"), _clock),
    (re.compile(rf"(?<!\S){_NEAR}(?P<h>\d{{1,2}}) (?P<m>[0-5]\d){_HALF}(?! (?:MIN|KM|PERCENT|HOUR|AGO|TO|PAST|IN|out|MILE)\b)(?!\S)"),  # noqa: E501
     _clock),
    (re.compile(rf"(?<!\S){_NEAR}{_HOUR} (?P<half>AM|PM)(?!\S)"), _at_hour),
    (re.compile(r"(?<!\S)(?:AT|SINCE|ABOUT|A|BY) (?P<m>QUARTER|HALF|\d{1,2})(?: MIN)? (?P<side>PAST|TO|BEFORE)(?! \d)(?!\S)"
                r"|(?<=\bIN )(?P<m2>X)?(?P<side2>X)"), _past_this),
    (re.compile(r"(?<!\S)(?P<m>QUARTER|HALF|\d{1,2}) (?P<side>PAST|TO|BEFORE)$|(?<!HEURE )MINUS (?P<m2>QUARTER)$"),
     _past_this),
    (re.compile(r"(?<!\S)(?:AT |ABOUT )?(?:12:00 PM|00:00)(?!\S)"), _noon),
    (re.compile(r"(?<!\S)(?:AT|SINCE|ABOUT|BY|A)(?: (?:ABOUT|AT))* (?P<h>\d{1,2}|ONE)(?! (?:MIN|KM|PERCENT|HOUR|HEURE|AGO|TO|PAST|BEFORE|MILE|PT|of)\b)(?!\S)"),  # noqa: E501
     _at_hour_or_minute),
)  # fmt: skip
# Behind the name of a point and at the end: 'through Brindle 745'. Anywhere else three digits may be a number she wears.
_THREE_BARE = re.compile(
    r"(?:PT|FINISH)(?: (?:IN|in|out|AT|ABOUT|through|left|arrived|off|NOW))* (?P<h>[1-9])(?P<m>[0-5]\d)$"
)
_NOW = re.compile(r"(?<!\S)NOW(?!\S)")


def _length_of(m: re.Match[str]) -> timedelta:
    g = m.groupdict()
    if g["n"]:
        count = float(g["n"])
    else:
        count = (
            float(FEW)
            if g["few"]
            else 2.0
            if g["couple"]
            else 0.5
            if g["half"]
            else 0.25
            if g["quarter"]
            else 1.0
        )
    hours = g["unit"] in ("HOUR", "HEURE")
    minutes = count * (60 if hours else 1)
    if g["and"]:
        minutes += 30 if hours else 0.5
    if g["more"] and hours:
        minutes += float(g["more"])
    return timedelta(minutes=min(minutes, LONGEST / timedelta(minutes=1)))


def _candidates(
    hour: int, minute: int, half: str, now: datetime, zone: ZoneInfo, pad: bool
) -> list[datetime]:
    """Every moment within a day and a half of now that such a clock time may be."""
    if half == "am":
        hours = [hour % 12]
    elif half == "pm":
        hours = [hour % 12 + 12]
    elif 1 <= hour <= 12 and not pad:
        hours = [hour % 12, hour % 12 + 12]
    else:
        hours = [hour % 24]
    local = now.astimezone(zone)
    found = []
    for day in (-1, 0, 1):
        date = local.date() + timedelta(days=day)
        for h in hours:
            for fold in (0, 1):
                naive = datetime(date.year, date.month, date.day, h, minute, fold=fold, tzinfo=zone)
                at = naive.astimezone(UTC)
                if at not in found:
                    found.append(at)
    return found


def nearest(
    hour: int, minute: int, half: str, now: datetime, zone: ZoneInfo, pad: bool = False
) -> tuple[datetime, bool]:
    """The moment such a clock time means, and whether that was a guess. `pad`: written as 24-hour time."""

    def far(at: datetime) -> timedelta:
        off = at - now
        return off * FUTURE_COUNTS if off > timedelta(0) else -off

    best = min(_candidates(hour, minute, half, now, zone, pad), key=far)
    return best, abs(best - now) > SURE_WITHIN and not half and not pad


def _half_of_day(text: str, hour: int) -> str:
    """'in the afternoon', 'last night' settle a 12-hour time; two at night may be either."""
    if hour > 12 or hour == 0:
        return ""
    signs = text.split()
    if "AM" in signs:
        return "am"
    return "pm" if "PM" in signs or ("NIGHT" in signs and 5 <= hour < 12) else ""


def find_times(
    words: Sequence[str], now: datetime, time_zone: str, mask: Sequence[str] = ()
) -> tuple[TimeSaid, ...]:
    """The times said, the one that is told first: how long ago, then clock times in their order, then 'now'. `mask` the
    words with stand-ins for names, where that matters."""
    zone = ZoneInfo(time_zone)
    signs = signs_of(mask or words)
    text = signs.text
    taken: list[tuple[int, int]] = []
    ago: list[TimeSaid] = []
    clock: list[TimeSaid] = []
    ahead: list[TimeSaid] = []

    def take(m: re.Match[str]) -> tuple[int, int] | None:
        if m.start() == m.end() or any(m.start() < b and m.end() > a for a, b in taken):
            return None
        taken.append((m.start(), m.end()))
        return signs.words(m.start(), m.end())

    for pattern in _AGO:
        for m in pattern.finditer(text):
            if span := take(m):
                since = m[0].startswith("SINCE")
                ago.append(TimeSaid(now - _length_of(m), *span, ago=True, since=since))
    for m in _IN.finditer(text):
        if span := take(m):
            ahead.append(TimeSaid(now + _length_of(m), *span, ahead=True))  # noqa: PERF401
    # A length is none of the times behind it: 'for 20 min', not 'for 20'.
    lengths = [(m.start(), m.end()) for m in _PLAIN.finditer(text) if m["unit"] != "HEURE"]
    local = now.astimezone(zone)
    for pattern, read in _READERS:
        for m in pattern.finditer(text):
            if (
                any(m.start() < b and m.end() > a for a, b in lengths)
                and "PAST" not in m[0]
                and "TO" not in m[0]
            ):
                continue
            parts = read(m, local)
            if parts is None or not (0 <= parts[0] <= 24 and 0 <= parts[1] <= 59):
                continue
            if span := take(m):
                clock.append(_moment(parts, text, now, zone, span))
    m3 = _THREE_BARE.search(text)
    if m3 is not None and not clock and not ago:
        been = [at for at in _candidates(int(m3["h"]), int(m3["m"]), "", now, zone, pad=False) if at <= now]
        span = signs.words(m3.start("h"), m3.end("m"))
        clock.append(TimeSaid(max(been), *span, unsure=now - max(been) > SURE_WITHIN))
    clock.sort(key=lambda t: t.start)
    bare = [TimeSaid(now, *signs.words(m.start(), m.end()), bare=True) for m in _NOW.finditer(text)]
    return (*sorted(ago, key=lambda t: t.start), *clock, *bare, *ahead)


def _moment(parts: Parts, text: str, now: datetime, zone: ZoneInfo, span: tuple[int, int]) -> TimeSaid:
    hour, minute, half, pad = parts
    half = half or ("" if pad else _half_of_day(text, hour))
    at, unsure = nearest(hour, minute, half, now, zone, pad)
    if "YESTERDAY" in text.split() and at.astimezone(zone).date() == now.astimezone(zone).date():
        at -= timedelta(days=1)
    return TimeSaid(at, *span, unsure=unsure)


def find_lengths(words: Sequence[str]) -> tuple[LengthSaid, ...]:
    """Lengths of time that are no moment ('for 20 min', '20 min'), those marked first."""
    signs = signs_of(words)
    gone = [(m.start(), m.end()) for p in (*_AGO, _IN) for m in p.finditer(signs.text)]
    found: list[LengthSaid] = []
    for pattern in (_FOR, _PLAIN):
        for m in pattern.finditer(signs.text):
            if any(m.start() < b and m.end() > a for a, b in gone):
                continue
            gone.append((m.start(), m.end()))
            found.append(LengthSaid(_length_of(m), *signs.words(m.start(), m.end()), marked=pattern is _FOR))
    return tuple(found)


def find_amounts(words: Sequence[str]) -> tuple[AmountSaid, ...]:
    """Distances and shares: 'km 34', '10 percent'."""
    signs = signs_of(words)
    out = []
    for m in _AMOUNT.finditer(signs.text):
        number, unit = (m["n"], m["unit"]) if m["unit"] else (m["n2"], m["unit2"])
        out.append(AmountSaid(float(number), unit, *signs.words(m.start(), m.end())))
    return tuple(out)
