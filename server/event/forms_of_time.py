"""The forms of times in an event file: lengths, paces, times of day, moments. See `forms`."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, time, timedelta
from functools import partial
from typing import Any, Final
from zoneinfo import ZoneInfo

from server.event.context import ReadSoFar
from server.event.forms import MINUTE, Form, Text, Values
from server.event.table_reader import Section
from server.event.times import (
    end_of_day,
    read_clock,
    read_moment,
    read_pace,
    read_span,
    to_utc,
    to_wall,
    write_pace,
    write_span,
)
from server.event.typo_hints import as_moment
from server.sentences import Worded, say

FIRST_YEAR, LAST_YEAR = 2000, 2100
HOUR: Final = timedelta(hours=1)


class TimeForm(Text):
    """A time in quotes, read and written by two functions, within bounds that are `said`."""

    default = None

    def __init__(
        self,
        parts: tuple[Callable[[str], timedelta], Callable[[timedelta], str]],
        said: str,
        bounds: tuple[timedelta, timedelta],
        outside: Callable[..., Worded],
        remedy: Worded,
    ) -> None:
        super().__init__(said=said)
        self.parts, self.bounds, self.outside, self.remedy = parts, bounds, outside, remedy

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        text = super().read(s, key, v, d)
        length = None if text is None else s.timed(key, lambda: self.parts[0](text))
        if length is not None and not self.bounds[0] <= length <= self.bounds[1]:
            s.error(key, self.outside(text=text), self.remedy)
            return None
        return length

    def write(self, value: Any, zone: str) -> Any:
        return self.parts[1](value)


def span(least: timedelta, most: timedelta) -> TimeForm:
    """A length 'h:mm' within bounds."""
    low, high = f"{least / HOUR:.3g}", f"{most / HOUR:g}"
    outside = partial(say, "wrong-outside-hours", low=low, high=high)
    form = 'hours and minutes in quotes, as in "29:00"'
    parts = (read_span, write_span)
    return TimeForm(
        parts, f"{form}; {low} to {high} hours", (least, most), outside, say("do-write-hours-minutes")
    )


def pace(least: timedelta = 2 * MINUTE, most: timedelta = HOUR) -> TimeForm:
    """A pace 'm:ss' per km, within bounds."""
    said, remedy = (
        'minutes and seconds per km in quotes, as in "6:30"',
        say("do-write-minutes-seconds-per-km"),
    )
    return TimeForm((read_pace, write_pace), said, (least, most), partial(say, "wrong-outside-pace"), remedy)


class TimeOfDay(Form):
    """A time of day, as text 'HH:MM'."""

    said = 'time of day in quotes, as in "22:00"'

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        value = s.raw(key)
        if value is None:
            return None
        text = value.isoformat() if isinstance(value, time) else value
        if not isinstance(text, str):
            s.error(key, say("wrong-no-time-day", value=value), say("do-write-22-00", key=key))
            return None
        found = s.timed(key, lambda: read_clock(text))
        return None if found is None else f"{found:%H:%M}"

    def schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": r"^\d{1,2}:\d\d(:\d\d)?$"}


class Moment(Form):
    """A moment, in UTC; in the file by the clock at the race.

    `after`: where '11:30' and 'Sun 11:30' are taken too, the first such time not before: the fields of this table named, the
    first of them that is given; 'the day' of the start, 'the start', 'the known start' only where it is known. `eve`: one
    with a weekday may be as long as a day before that.
    """

    def __init__(
        self, *after: str, example: str = "2027-06-19T05:00", day: bool = False, eve: bool = False
    ) -> None:
        self.after, self.example, self.day, self.eve = after, example, day, eve
        short = f"; or a time of day with or without weekday, as in {example}" if after else ""
        self.said = f"date and time without quotes, as in 2027-06-19T05:00{short}"
        if day:
            self.said = f"day or date and time without quotes, as in {example}"

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        value = s.raw(key)
        if value is None:
            return None
        if self.day and isinstance(value, date) and not isinstance(value, datetime):
            return end_of_day(value, d.zone) if self._year(s, key, value.year) else None
        local = self._local(s, key, value, self._not_before(v, d))
        if local is None:
            self._no_moment(s, key, value)
            return None
        if not self._year(s, key, local.year):
            return None
        found = s.timed(key, lambda: to_utc(local, d.zone))
        if found is None:
            return None
        at, warning = found
        if warning:
            offset = local.replace(tzinfo=ZoneInfo(d.zone), fold=1).isoformat()
            s.report.warn(s.at(key), warning, say("do-if-second-meant-write", key=key, offset=offset))
        return at

    def _not_before(self, v: Values, d: ReadSoFar) -> datetime | None:
        start = d.local_start()
        known = {
            "the day": start.replace(hour=0, minute=0, second=0, microsecond=0),
            "the start": start,
            "the known start": start if d.starts_known else None,
        }
        for name in self.after:
            at = v.get(name)
            if at is not None or known.get(name) is not None:
                return known[name] if at is None else at.astimezone(ZoneInfo(d.zone)).replace(tzinfo=None)
        return None

    def _no_moment(self, s: Section, key: str, value: Any) -> None:
        meant = as_moment(str(value)) if isinstance(value, str) else ""
        remedy = say("do-write-date-time-without-quotes", key=key, example=self.example)
        if isinstance(value, date):
            remedy = say("do-add-time-day-t05-00", key=key, value=value)
        elif "T" in meant:
            remedy = say("do-write-without-quotes", key=key, meant=meant)
        s.error(key, say("wrong-no-date-time", value=value), remedy)

    def _year(self, s: Section, key: str, year: int) -> bool:
        if not FIRST_YEAR <= year <= LAST_YEAR:
            s.error(key, say("wrong-year-cannot-right", year=year), say("do-check-year"))
            return False
        return True

    def _local(self, s: Section, key: str, value: object, after: datetime | None) -> datetime | None:
        if isinstance(value, datetime):
            return value
        if after is None or isinstance(value, date):
            return None
        text = value.isoformat() if isinstance(value, time) else value
        if not isinstance(text, str):
            return None
        if self.eve and len(text.split()) > 1:
            after -= timedelta(days=1)
        # The mistake is noted; a harmless moment keeps the caller from noting it twice.
        return s.timed(key, lambda: read_moment(text, after)) or after

    def write(self, value: Any, zone: str) -> Any:
        if self.day:
            day = (value.astimezone(ZoneInfo(zone)) - timedelta(microseconds=1)).date()
            if end_of_day(day, zone) == value:
                return day
        return to_wall(value, zone)

    def schema(self) -> dict[str, Any]:
        return {"type": "string", **({} if self.after or self.day else {"format": "date-time"})}
