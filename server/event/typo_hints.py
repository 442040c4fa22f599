"""Slips that everybody makes on a line of an event file, said in plain words with the line as it should stand: a date as
one writes it at home, a telephone number without quotes."""

from __future__ import annotations

import re
from datetime import UTC, datetime

from server.sentences import Worded, say

__all__ = ["as_moment", "slip"]

_LINE = re.compile(r"(?P<key>[A-Za-z_]+)\s*=\s*(?P<value>[^#]*?)\s*(?:#.*)?$")
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_GERMAN = {"mär": 3, "mrz": 3, "mai": 5, "okt": 10, "dez": 12}
_AT = r"(?:[\sT,]+(?:at |um )?(?P<hour>\d{1,2})[:.](?P<minute>\d\d)(?::(?P<second>\d\d))?(?: uhr)?)?"
_DAY_FIRST = re.compile(
    rf"(?P<day>\d{{1,2}})[./](?P<month>\d{{1,2}})[./](?P<year>\d{{4}}){_AT}", re.IGNORECASE
)
_IN_WORDS = re.compile(
    rf"(?P<day>\d{{1,2}})(?:st|nd|rd|th|\.)?\s+(?P<word>[A-Za-zä]{{3}})[a-zä]*\.?,?\s+(?P<year>\d{{4}}){_AT}",
    re.IGNORECASE,
)
_YEAR_FIRST = re.compile(
    rf"(?P<year>\d{{4}})[-/.](?P<month>\d{{1,2}})[-/.](?P<day>\d{{1,2}}){_AT}", re.IGNORECASE
)
_PHONE = re.compile(r"\+?[\d\s()/.-]{3,25}")
_NUMBERS = ("phone", "emergency_number")


def as_moment(text: str) -> str:
    """A date, with or without a time, as the file reads it: '19.06.2027 5:00' is '2027-06-19T05:00'; '' for what is
    none, or no day there is. Where day and month could be either, the day stands first."""
    written = text.strip().strip("\"'")
    for form in (_DAY_FIRST, _IN_WORDS, _YEAR_FIRST):
        m = form.fullmatch(written)
        if m is None:
            continue
        found = m.groupdict()
        word = (found.get("word") or "").lower()
        month = _GERMAN.get(word) or (
            _MONTHS.index(word) + 1 if word in _MONTHS else int(found.get("month") or 0)
        )
        hour, minute = int(found["hour"] or 0), int(found["minute"] or 0)
        try:
            at = datetime(
                int(found["year"]), month, int(found["day"]), hour, minute, tzinfo=UTC
            )  # a day there is
        except ValueError:
            return ""
        return f"{at:%Y-%m-%dT%H:%M}" if found["hour"] is not None else f"{at:%Y-%m-%d}"
    return ""


def slip(row: str) -> tuple[Worded, Worded] | None:
    """What is wrong with a line that can't be read, and how to write it; None where it is none of these slips."""
    m = _LINE.fullmatch(row)
    if m is None:
        return None
    key, value = m["key"], m["value"]
    if key in _NUMBERS and _PHONE.fullmatch(value):
        what = say("wrong-telephone-number-stands-without-quotes", value=value)
        return what, say("do-put-quotes-country-code", key=key, abroad=_abroad(value))
    if not re.match(r"\d{1,4}[-./\s]", value):
        return None
    moment = as_moment(value)
    if moment:
        return say("wrong-date-written-another-way-file", value=value), say(
            "do-write-moment", key=key, moment=moment
        )
    if re.match(r"\d{4}-\d\d-\d\d", value):
        return (
            say("wrong-no-day-time", value=value),
            say("do-check-day-hour-minute-2027", key=key),
        )
    return None


def _abroad(number: str) -> str:
    """The number itself where it has its country code; else an example: which country, nobody can guess."""
    return (
        number
        if number.startswith(("+", "00")) or sum(c.isdigit() for c in number) <= 6
        else "+44 1632 960001"
    )
