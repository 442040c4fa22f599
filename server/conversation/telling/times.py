"""The one formatter of times, windows and durations.

Rules: the point's clock first, the reader's own in brackets where the two differ at that moment; a weekday
where the day differs from today's or the hour is one of the night (20 to 6: at 3 a.m. nobody is sure what
day it is), with its date where another week's could be meant; the zone's name where the clock shows an hour
twice. A window's outer edges are rounded outward
to 5 minutes, its middle to the nearest 5, so that what is shown is never surer than what was computed. A plan is
what she means, not a guess: its times stand to the minute wherever they stand, goal A down, B nearest, C up.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

from babel.dates import format_date, format_datetime, format_time

from server.conversation.telling.reader import Reader
from server.event.model import Goal
from server.forecast.outlook import Window
from server.sentences import locale_of, sentence

STEP = timedelta(minutes=5)
MINUTE = timedelta(minutes=1)
NIGHT_FROM_HOUR, NIGHT_TO_HOUR = 20, 6
A_WEEK = timedelta(days=6)
"""So far from today a weekday alone could be another week's."""


def floor_to(at: datetime, step: timedelta = STEP) -> datetime:
    """The last whole step not after `at`."""
    over = timedelta(seconds=at.timestamp() % step.total_seconds())
    return at - over


def ceil_to(at: datetime, step: timedelta = STEP) -> datetime:
    """The first whole step not before `at`."""
    down = floor_to(at, step)
    return down if down == at else down + step


def nearest(at: datetime, step: timedelta = STEP) -> datetime:
    """The nearest whole step; half a step goes up."""
    return floor_to(at + step / 2, step)


def leave_said(leave_by: datetime, now: datetime) -> datetime:
    """A leave-by as it is said: the earlier 5 minutes, unless those would already be over while it is not."""
    early = floor_to(leave_by)
    return leave_by if early <= now <= leave_by else early


def planned(at: datetime, goal: Goal) -> datetime:
    """A time of the plan as shown, in chat, on paper and in files alike: whole minutes, A down, B nearest, C up."""
    return {Goal.A: floor_to, Goal.B: nearest, Goal.C: ceil_to}[goal](at, MINUTE)


def planned_length(gone: timedelta, goal: Goal) -> timedelta:
    """The same of a time since her start."""
    begin = datetime.fromtimestamp(0, UTC)
    return planned(begin + gone, goal) - begin


def edges(window: Window) -> tuple[datetime, datetime, datetime]:
    """Early, likely, late as shown: edges outward to 5 minutes, the middle to the nearest 5 and inside."""
    early, late = floor_to(window.early), ceil_to(window.late)
    return early, min(max(nearest(window.likely), early), late), late


def _twice(local: datetime) -> bool:
    # A moment always has a local time that exists, so two offsets for it mean the hour that comes twice.
    return local.replace(fold=1 - local.fold).utcoffset() != local.utcoffset()


def _day_needed(local: datetime, today: datetime) -> bool:
    night = local.hour >= NIGHT_FROM_HOUR or local.hour < NIGHT_TO_HOUR
    return night or local.date() != today.date()


def _far(local: datetime, today: datetime) -> bool:
    return abs(local.date() - today.date()) >= A_WEEK


def _bare(local: datetime, reader: Reader, day: bool, *, date: bool = False) -> str:
    locale = locale_of(reader.language)
    if reader.clock_12h:
        text = format_time(local.timetz(), "h:mm", locale=locale) + (" am" if local.hour < 12 else " pm")
    else:
        text = f"{local.hour:02d}:{local.minute:02d}"
    if _twice(local):
        text += f" {local.tzname()}"
    if date:
        return f"{format_datetime(local, 'EEE d MMM', locale=locale).replace('.', '')} {text}"
    if day:
        text = f"{format_datetime(local, 'EEE', locale=locale).removesuffix('.')} {text}"
    return text


def _shown(local: datetime, today: datetime, reader: Reader, day: bool | None) -> str:
    if day is not None:
        return _bare(local, reader, day)
    return _bare(local, reader, _day_needed(local, today), date=_far(local, today))


def _in_zone(at: datetime, zone: str) -> datetime:
    return at.astimezone(ZoneInfo(zone))


def full_clock(at: datetime, reader: Reader) -> str:
    """A time to read out: the point's clock with the weekday in full, 'Sunday 05:25'."""
    local = _in_zone(at, reader.event_time_zone)
    day = format_datetime(local, "EEEE", locale=locale_of(reader.language))
    return f"{day} {_bare(local, reader, day=False)}"


def dated(at: datetime, reader: Reader) -> str:
    """A moment that may be months off, on the event's clock: '30 Nov 2026 22:29', '30.11.2026 22:29'."""
    local = _in_zone(at, reader.event_time_zone)
    day = format_date(local.date(), "medium", locale=locale_of(reader.language))
    return f"{day} {_bare(local, reader, day=False)}"


def clock(at: datetime, reader: Reader, now: datetime, *, day: bool | None = None) -> str:
    """One time on the point's clock: '14:35', 'Sun 02:35', '2:35 pm'. `day` forces or bars the weekday."""
    local, today = (_in_zone(t, reader.event_time_zone) for t in (at, now))
    return _shown(local, today, reader, day)


def own_clock(at: datetime, reader: Reader, now: datetime, *, day: bool | None = None) -> str:
    """The same moment on the reader's own clock, or '' where both clocks show the same."""
    there, here = (_in_zone(at, z) for z in (reader.event_time_zone, reader.time_zone))
    if there.utcoffset() == here.utcoffset():
        return ""
    today = _in_zone(now, reader.time_zone)
    return _shown(here, today, reader, day)


def moment(at: datetime, reader: Reader, now: datetime, *, day: bool | None = None) -> str:
    """A time with the reader's own clock behind it where that differs: '14:35 (15:35 your clock)'."""
    there, here = clock(at, reader, now, day=day), own_clock(at, reader, now, day=day)
    return sentence(reader.language, "both-clocks", there=there, here=here) if here else there


def _run(
    times: tuple[datetime, ...], reader: Reader, now: datetime, zone: str, day: bool | None
) -> list[str]:
    """Several times in one breath: the weekday on the first if needed, later only where the day changes."""
    locals_ = [_in_zone(at, zone) for at in times]
    first = _shown(locals_[0], _in_zone(now, zone), reader, day)
    return [first, *(_bare(b, reader, a.date() != b.date()) for a, b in pairwise(locals_))]


def window(
    w: Window, reader: Reader, now: datetime, *, day: bool | None = None, as_stood: bool = False
) -> str:
    """A window in words: 'about 14:35 (14:10 to 15:20)'. What the edges mean is said once, on joining, and where
    somebody asks why (`window-how`, `why-times`).

    Where the early edge is not after `now` nobody can be told 'earlier': it reads 'any time from now to …', without
    a likely time that is over; where the late edge is not after `now` either, it reads as what was expected, with
    nothing reported. A window without width is a fact: 'there since 14:35'. With `as_stood` it is told as what was
    once expected, whatever time it is.
    """
    early, likely, late = edges(w)
    fixed = w.early == w.late
    names: tuple[str, ...]
    times: tuple[datetime, ...]
    if fixed:
        likely = w.likely
        names, times, suffix = ("likely",), (likely,), "set" if likely > now else "there"
    elif late <= now and not as_stood:
        names, times, suffix = ("likely", "early", "late"), (likely, early, late), "over"
    elif likely <= now and not as_stood:
        # A likely time that is over is no longer likely.
        names, times, suffix = ("late",), (late,), "open"
    elif early <= now and not as_stood:
        names, times, suffix = ("likely", "late"), (likely, late), "due"
    else:
        names, times, suffix = ("likely", "early", "late"), (likely, early, late), ""

    def words(key: str, zone: str) -> str:
        texts = _run(times, reader, now, zone, day)
        return sentence(reader.language, key, **dict(zip(names, texts, strict=True)))

    as_now = f"window-{suffix}" if suffix else "window"
    text = words("window-stood" if as_stood and not fixed else as_now, reader.event_time_zone)
    if own_clock(likely, reader, now):
        text += words(f"window-own-{suffix}" if suffix else "window-own", reader.time_zone)
    return text


def plan_short(a: datetime, b: datetime, c: datetime, reader: Reader, now: datetime) -> str:
    """The goals of one point for a list, to the minute: '14:30 (13:20 to 15:52)'."""
    early, likely, late = planned(a, Goal.A), planned(b, Goal.B), planned(c, Goal.C)
    there = _run((likely, early, late), reader, now, reader.event_time_zone, None)
    return sentence(reader.language, "window-short", likely=there[0], early=there[1], late=there[2])


def window_short(w: Window, reader: Reader, now: datetime) -> str:
    """The same for a list, the point's clock only: '14:35 (14:10 to 15:20)'."""
    likely, early, late = window_clocks(w, reader, now)
    return sentence(reader.language, "window-short", likely=likely, early=early, late=late)


def window_clocks(w: Window, reader: Reader, now: datetime) -> tuple[str, str, str]:
    """Likely, early and late, the point's clock only, the weekday where it is needed and where it changes."""
    early, likely, late = edges(w)
    there = _run((likely, early, late), reader, now, reader.event_time_zone, None)
    return there[0], there[1], there[2]


def window_own_clocks(w: Window, reader: Reader, now: datetime) -> tuple[str, str, str] | None:
    """The same on the reader's own clock; None where both clocks show the same."""
    if not own_clock(w.likely, reader, now):
        return None
    early, likely, late = edges(w)
    here = _run((likely, early, late), reader, now, reader.time_zone, None)
    return here[0], here[1], here[2]


def duration(length: timedelta, language: str) -> str:
    """A length of time to the minute: '1 h 20 min', '20 min', 'under a minute'. The sign is dropped."""
    minutes = round(abs(length.total_seconds()) / 60)
    hours, rest = divmod(minutes, 60)
    if minutes == 0:
        return sentence(language, "duration-none")
    if not hours:
        return sentence(language, "duration-min", minutes=str(rest))
    if not rest:
        return sentence(language, "duration-h", hours=str(hours))
    return sentence(language, "duration-h-min", hours=str(hours), minutes=str(rest))


def ago(at: datetime, now: datetime, language: str) -> str:
    """How long ago: '25 min ago', 'just now'; a time to come reads 'in 25 min'."""
    if abs(now - at) < timedelta(seconds=90):
        return sentence(language, "just-now")
    return sentence(language, "ago" if at < now else "in-time", length=duration(now - at, language))
