"""Times in a sentence: 'quarter past two', '5 to 3', '1435', '3 am', '20 min ago' -> a moment.

Everything is relative to `now` and the event's time zone. A clock time without a day is the one nearest to
now, the past counting as three times nearer than the future: people report what has happened. Sentences
come tidied.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

FUTURE_COUNTS = 3
# Past this, which of two readings of a 12-hour time was meant is a guess.
SURE_WITHIN = timedelta(hours=5)
LONGEST = timedelta(days=30)
"""No length that is said is longer: '99999999999 min ago' is a slip, and must not keep the rest of it from being read."""


@dataclass(frozen=True, slots=True)
class TimeSaid:
    """A time found: the moment, the sentence without it, and whether there was more than one good reading."""

    at: datetime
    rest: str
    unsure: bool = False


_COUNT = (
    r"(?:(\d+(?:\.\d+)?)|(a few|few)|(a couple of|a couple|couple of|couple)|(half an|half a|half)"
    r"|(a quarter of an|quarter of an)|(an|a))"
)
_AGO = re.compile(
    rf"(?:\b(?:about|like|maybe|some|at|from) )*\b{_COUNT} (min|hour|m)\b(?: (?:and )?(?:(a half)|(\d+) ?(?:min)?))?"
    r"(?: or so)? (?:ago|back|earlier|since)\b"
)
_JUST_AFTER = re.compile(
    r"\b(?:just |shortly |bit |little |about )+(?:after|before|past|gone|turned) (\d{1,2})(?: (am|pm))?\b(?!:| min)"
)
# 'gone from here 10 min': so long ago. 'In 10 min' is something else.
_GONE = re.compile(
    r"\b((?:gone|left)(?: (?!at|for|early)\w+){0,3}) (\d{1,2}) min\b(?! (?:early|late|behind|ahead|up|down|to|"
    r"past|before|after))"
)
_BARE_AGO = re.compile(r"\b(?:about )?(\d+) ago\b")
_HALF = re.compile(
    r"\b(?:at |about |since |just |gone )*(?:(quarter|half|\d{1,2})(?: min)? (past|to|too|after|before|til|until)) "
    r"(\d{1,2})(?: oclock)?(?: (am|pm))?\b"
)
_HALF_TWO = re.compile(r"\b(?:at |about )*half (\d{1,2})(?: (am|pm))?\b")
_PAST_THIS = re.compile(r"\b(?:at |about )+(quarter|half|\d{1,2})(?: min)? (past|to)\b(?! \d)")
_CLOCK = re.compile(r"\b(?:at |about |since |by )*(\d{1,2}):(\d{2})(?: (am|pm|uhr))?\b")
_FOUR = re.compile(
    r"\b(?:at |about |since |by )*([01]\d|2[0-3])([0-5]\d)(?: (am|pm|hour))?\b(?! (?:min|km|percent|m)\b)"
)
_THREE = re.compile(r"\b(?:at |about |in |out )*([1-9])([0-5]\d) (am|pm)\b")
_SPACED = re.compile(
    r"\b(?:(?:at|about|since|by) )?(\d{1,2}) ([0-5]\d)(?: (am|pm))?\b(?! (?:min|km|percent|hour|ago|to|past|in|out)\b)"
)
_HOUR = re.compile(r"\b(?:at |about |since |by )*(\d{1,2}) (am|pm|oclock|uhr)(?: (am|pm))?\b")
_AT_HOUR = re.compile(
    r"\b(?:at|about|since|by) (\d{1,2})\b(?! (?:min|km|percent|hour|ago|m|to|past|mile|miles)\b)"
)
_NOW = re.compile(r"\b(?:just now|right now|now|this min)\b")
_IN_MIN = re.compile(rf"\bin (?:about )?{_COUNT} (min|hour)\b(?: (?:and )?(?:(a half)|(\d+) ?(?:min)?))?")


def _length(groups: tuple[str | None, ...]) -> timedelta:
    number, few, couple, half, quarter, one, unit, and_half, more = groups
    if number:
        count = float(number)
    else:
        count = 5.0 if few else 2.0 if couple else 0.5 if half else 0.25 if quarter else 1.0 if one else 0.0
    minutes = count * (60 if unit == "hour" else 1)
    if and_half:
        minutes += 30 if unit == "hour" else 0.5
    if more and unit == "hour":
        minutes += float(more)
    return _minutes(minutes)


def _minutes(count: float) -> timedelta:
    return timedelta(minutes=min(count, LONGEST / timedelta(minutes=1)))


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
                at = datetime(date.year, date.month, date.day, h, minute, fold=fold, tzinfo=zone).astimezone(
                    UTC
                )
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


def _cut(text: str, match: re.Match[str]) -> str:
    return " ".join((text[: match.start()] + " " + text[match.end() :]).split())


def _valid(hour: int, minute: int) -> bool:
    return 0 <= hour <= 24 and 0 <= minute <= 59


def find_time(text: str, now: datetime, time_zone: str) -> TimeSaid | None:
    """The first time said in a tidied sentence; None if there is none. 'now' counts as one."""
    found = _first_time(text, now, time_zone)
    return replace(found, rest=" ".join(_DAY.sub(" ", found.rest).split())) if found else None


# Which day or half of it: read with the clock time, and no part of what is reported.
_DAY = re.compile(
    r"\b(?:last night|yesterday|(?:this|in the) (?:morning|afternoon|evening)|today|tonight|at night|earlier|"
    r"or so|ish)\b"
)
_MORNING = re.compile(r"\b(?:this morning|in the morning)\b")
_AFTERNOON = re.compile(r"\b(?:this afternoon|in the afternoon|this evening|in the evening)\b")
_NIGHT = re.compile(r"\b(?:tonight|at night|last night)\b")


def _half_of_day(text: str, hour: int) -> str:
    """'in the afternoon', 'last night' settle a 12-hour time; two at night may be either."""
    if hour > 12 or hour == 0:
        return ""
    if _MORNING.search(text):
        return "am"
    return "pm" if _AFTERNOON.search(text) or (_NIGHT.search(text) and 5 <= hour < 12) else ""


def _first_time(text: str, now: datetime, time_zone: str) -> TimeSaid | None:
    zone = ZoneInfo(time_zone)
    if m := _AGO.search(text):
        return TimeSaid(now - _length(m.groups()), _cut(text, m))
    if m := _BARE_AGO.search(text):
        return TimeSaid(now - _minutes(float(m[1])), _cut(text, m))
    if m := _GONE.search(text):
        return TimeSaid(
            now - timedelta(minutes=int(m[2])), " ".join((text[: m.end(1)] + text[m.end() :]).split())
        )
    return _clock_said(text, now, zone) or _three_digits(text, now, zone) or _now_said(text, now)


# Behind the name of a point and at the end: 'through Brindle 745'. Anywhere else three digits may be a number she wears.
_THREE_BARE = re.compile(
    r"\b(?:PT|FINISH)(?: (?:in|out|at|about|through|left|arrived|off|just|now))* (?P<time>([1-9])([0-5]\d))$"
)


def _three_digits(text: str, now: datetime, zone: ZoneInfo) -> TimeSaid | None:
    """The last such time that has been: nobody reports what is still to come."""
    m = _THREE_BARE.search(text)
    if m is None:
        return None
    been = [at for at in _candidates(int(m[2]), int(m[3]), "", now, zone, pad=False) if at <= now]
    at = max(been)
    return TimeSaid(at, text[: m.start("time")].strip(), now - at > SURE_WITHIN)


def _now_said(text: str, now: datetime) -> TimeSaid | None:
    m = _NOW.search(text)
    return TimeSaid(now, _cut(text, m)) if m else None


def _clock_said(text: str, now: datetime, zone: ZoneInfo) -> TimeSaid | None:
    for pattern, read in _READERS:
        for m in pattern.finditer(text):
            parts = read(m, now.astimezone(zone))
            if parts is None:
                continue
            hour, minute, half, pad = parts
            if not _valid(hour, minute):
                continue
            half = half or ("" if pad else _half_of_day(text, hour))
            at, unsure = nearest(hour, minute, half, now, zone, pad)
            if "yesterday" in text and at.astimezone(zone).date() == now.astimezone(zone).date():
                at -= timedelta(days=1)
            return TimeSaid(at, _cut(text, m), unsure)
    return None


Parts = tuple[int, int, str, bool]


def _read_half(m: re.Match[str], _local: datetime) -> Parts | None:
    amount, side, hour, half = m[1], m[2], int(m[3]), m[4] or ""
    minutes = {"quarter": 15, "half": 30}.get(amount) or int(amount)
    if minutes >= 60 or hour > 24:
        return None
    if side in ("past", "after"):
        return hour, minutes, half, hour > 12
    return (hour - 1) % 24 if hour > 12 else (hour - 2) % 12 + 1, 60 - minutes, half, hour > 12


def _read_past_this(m: re.Match[str], local: datetime) -> Parts | None:
    minutes = {"quarter": 15, "half": 30}.get(m[1]) or int(m[1])
    if minutes >= 60:
        return None
    if m[2] == "past":
        hour = local.hour if minutes <= local.minute else (local.hour - 1) % 24
        return hour, minutes, "", True
    hour = local.hour if 60 - minutes <= local.minute else (local.hour - 1) % 24
    return hour, 60 - minutes, "", True


def _read_clock(m: re.Match[str], _local: datetime) -> Parts | None:
    half = m[3] if m[3] in ("am", "pm") else ""
    return int(m[1]), int(m[2]), half or "", m[1].startswith("0") and not half


def _read_four(m: re.Match[str], _local: datetime) -> Parts | None:
    half = m[3] if m[3] in ("am", "pm") else ""
    # '1435' or '0312' is 24-hour time; nobody writes '0312' for the afternoon.
    return int(m[1]), int(m[2]), half or "", not half


def _read_spaced(m: re.Match[str], _local: datetime) -> Parts | None:
    return int(m[1]), int(m[2]), m[3] or "", m[1].startswith("0")


def _read_hour(m: re.Match[str], _local: datetime) -> Parts | None:
    half = m[2] if m[2] in ("am", "pm") else m[3] or ""
    return int(m[1]), 0, half, m[2] == "uhr" and int(m[1]) > 12


def _read_at_hour(m: re.Match[str], _local: datetime) -> Parts | None:
    return int(m[1]), 0, "", int(m[1]) > 12


def _read_just_after(m: re.Match[str], _local: datetime) -> Parts | None:
    return int(m[1]), 0, m[2] or "", int(m[1]) > 12


def _read_half_two(m: re.Match[str], _local: datetime) -> Parts | None:
    return int(m[1]), 30, m[2] or "", False


_READERS = (
    (_HALF, _read_half),
    (_HALF_TWO, _read_half_two),
    (_JUST_AFTER, _read_just_after),
    (_CLOCK, _read_clock),
    (_FOUR, _read_four),
    (_THREE, _read_clock),
    (_SPACED, _read_spaced),
    (_HOUR, _read_hour),
    (_PAST_THIS, _read_past_this),
    (_AT_HOUR, _read_at_hour),
)


def find_ahead(text: str, now: datetime) -> TimeSaid | None:
    """A time to come said as 'in 20 min'."""
    m = _IN_MIN.search(text)
    return TimeSaid(now + _length(m.groups()), _cut(text, m)) if m else None


_FOR = re.compile(rf"\bfor (?:about )?{_COUNT} (min|hour)\b(?: (?:and )?(?:(a half)|(\d+) ?(?:min)?))?")
_BY = re.compile(rf"\b(?:by|of) (?:about )?{_COUNT} (min|hour)\b(?: (?:and )?(?:(a half)|(\d+) ?(?:min)?))?")
_PLAIN = re.compile(rf"\b{_COUNT} (min|hour)\b(?: (?:and )?(?:(a half)|(\d+) ?(?:min)?))?")


def find_length(text: str, *, bare: bool = False) -> tuple[timedelta, str] | None:
    """A length of time: 'for 20 min', 'by half an hour', and with `bare` any '20 min'."""
    for pattern in (_FOR, _BY, *((_PLAIN,) if bare else ())):
        if m := pattern.search(text):
            return _length(m.groups()), _cut(text, m)
    return None
