"""Times as people write them in an event file: lengths, paces, clock times; local wall time to UTC.

Each reader returns a value or raises `TimeError` with what is wrong and the remedy.
"""

from __future__ import annotations

import re
from datetime import UTC, date, datetime, time, timedelta
from functools import cache
from zoneinfo import ZoneInfo, available_timezones

from server.sentences import Worded, say

KM_PER_MILE = 1.609344
DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_CLOCK = re.compile(r"(\d{1,2}):(\d\d)(?::(\d\d))?")
_SPAN = re.compile(r"(\d{1,3}):([0-5]\d)(?::([0-5]\d))?")
_PACE = re.compile(r"(\d{1,2}):([0-5]\d)(?:\.(\d{1,6}))?(?:\s*(?:min)?\s*/\s*(km|mi|mile))?")


class TimeError(ValueError):
    """A time that can't be read; `what` and `remedy` as in a Problem."""

    def __init__(self, what: Worded, remedy: Worded) -> None:
        super().__init__(what)
        self.what = what
        self.remedy = remedy


@cache
def zone_names() -> frozenset[str]:
    """The names of time zones known here."""
    return frozenset(available_timezones())


def read_span(text: str) -> timedelta:
    """'29:00' or '6:30' (h:mm, also h:mm:ss) as a length."""
    m = _SPAN.fullmatch(text.strip())
    if m is None:
        raise TimeError(say("wrong-no-length-time", text=text), say("do-write-hours-minutes-29-00"))
    return timedelta(hours=int(m[1]), minutes=int(m[2]), seconds=int(m[3] or 0))


def read_pace(text: str) -> timedelta:
    """'10:50', '10:50/km' or '14:00/mile' as time per km, to the microsecond."""
    m = _PACE.fullmatch(text.strip())
    if m is None:
        remedy = say("do-write-minutes-seconds-per-km-10")
        raise TimeError(say("wrong-no-pace", text=text), remedy)
    per = timedelta(minutes=int(m[1]), seconds=int(m[2]), microseconds=int((m[3] or "").ljust(6, "0")))
    return per / KM_PER_MILE if (m[4] or "km").startswith("mi") else per


def read_clock(text: str) -> time:
    """'11:30' as a time of day."""
    m = _CLOCK.fullmatch(text.strip())
    if m is None or int(m[1]) > 23 or int(m[2]) > 59 or int(m[3] or 0) > 59:
        raise TimeError(say("wrong-text-no-time-of-day", text=text), say("do-write-hours-minutes-09-30"))
    return time(int(m[1]), int(m[2]), int(m[3] or 0))


def read_moment(text: str, not_before: datetime) -> datetime:
    """'11:30' (its first time at or after `not_before`) or 'Sun 11:30' as naive local wall time.

    not_before: naive local.
    """
    words = text.split()
    day: int | None = None
    if len(words) == 2 and words[0][:3].lower() in DAYS:
        day = DAYS.index(words[0][:3].lower())
    elif len(words) != 1:
        remedy = say("do-write-11-30-sun-11")
        raise TimeError(say("wrong-no-moment", text=text), remedy)
    clock = read_clock(words[-1])
    found = datetime.combine(not_before.date(), clock)
    while found < not_before or (day is not None and found.weekday() != day):
        found += timedelta(days=1)
    return found


def to_utc(local: datetime, zone: str) -> tuple[datetime, Worded | None]:
    """The instant of a wall time in a zone, and a warning, None if none.

    A time that the clocks skip is an error; one that they show twice means the earlier, with a warning.
    A time that carries its own offset is taken as it is.
    """
    if local.tzinfo is not None:
        return local.astimezone(UTC), None
    tz = ZoneInfo(zone)
    first = local.replace(tzinfo=tz, fold=0)
    second = local.replace(tzinfo=tz, fold=1)
    if first.utcoffset() == second.utcoffset():
        return first.astimezone(UTC), None
    wall = f"{local:%Y-%m-%d %H:%M}"
    if first.astimezone(UTC).astimezone(tz).replace(tzinfo=None) != local:
        remedy = say("do-take-time-before-after-hour")
        raise TimeError(say("wrong-does-not-exist-clocks-go", wall=wall, zone=zone), remedy)
    return first.astimezone(UTC), say("wrong-comes-twice-clocks-go-back", wall=wall, zone=zone)


def to_wall(at: datetime, zone: str) -> datetime:
    """How to write an instant so that it is read back the same: wall time, with its offset where the wall
    time alone would not do."""
    wall = at.astimezone(ZoneInfo(zone))
    naive = wall.replace(tzinfo=None, fold=0)
    try:
        back, warning = to_utc(naive, zone)
    except TimeError:
        return wall
    return naive if back == at and not warning else wall


def end_of_day(day: date, zone: str) -> datetime:
    """The instant at which a local day is over."""
    return datetime.combine(day + timedelta(days=1), time(0), tzinfo=ZoneInfo(zone)).astimezone(UTC)


def write_span(length: timedelta) -> str:
    """A length as `read_span` reads it; whole seconds."""
    seconds = round(length.total_seconds())
    h, m, s = seconds // 3600, seconds // 60 % 60, seconds % 60
    return f"{h}:{m:02d}:{s:02d}" if s else f"{h}:{m:02d}"


def write_pace(per_km: timedelta) -> str:
    """A pace as `read_pace` reads it, to the microsecond where it has any."""
    seconds, rest = divmod(per_km, timedelta(seconds=1))
    text = f"{seconds // 60}:{seconds % 60:02d}"
    return f"{text}.{rest.microseconds:06d}" if rest else text
