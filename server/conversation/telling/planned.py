"""What the planner wants said, in words: sources, notes, what costs minutes, light, cautions, the goals' change-over."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta

from babel.numbers import format_decimal

from server.conversation.telling import measures, times
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import slug
from server.plan.notes import Note, Saying
from server.plan.targets import hours
from server.sentences import has, locale_of, sentence

_SURFACE = "surface: "


def say_planned(reader: Reader, said: Saying) -> str:
    """One saying of the planner; a note has its inner sayings put in as `$about`, a list in words."""
    values: dict[str, str | int] = dict(said.words)
    for name, number in said.numbers:
        key, value = _shown(reader, name, number)
        values[key] = value
    if isinstance(said, Note) and said.about:
        inner = [say_planned(reader, s) for s in said.about]
        values["about"] = measures.listing(inner, reader.language)
    return sentence(reader.language, f"plan-{said.kind}", **values)


def say_sources(reader: Reader, sources: Iterable[Saying]) -> str:
    """What target and pace came from, in one line."""
    return "; ".join(say_planned(reader, s) for s in sources)


def _shown(reader: Reader, name: str, number: float) -> tuple[str, str | int]:
    """A number by the unit in its name, and the name without it; a count stays a number, for its plural."""
    for unit in ("_pace_s", "_length_s", "_whole_km", "_odds", "_km", "_at", "_s", "_m", "_h"):
        if name.endswith(unit):
            return name.removesuffix(unit), _in_unit(reader, unit, number)
    return name, int(number) if number == int(number) else f"{number:g}"


def _in_unit(reader: Reader, unit: str, number: float) -> str:
    match unit:
        case "_pace_s":
            return hours_min(number)
        case "_whole_km":
            return measures.distance(number, reader, decimals=0)
        case "_km":
            return measures.distance(number, reader)
        case "_s":
            return hours(timedelta(seconds=round(number)))
        case "_length_s":
            return times.duration(timedelta(seconds=number), reader.language)
        case "_at":
            return times.full_clock(datetime.fromtimestamp(number, UTC), reader)
        case "_odds":
            return measures.odds(number, reader.language)
        case "_m":
            return f"{number:.0f} m"
        case _:
            return f"{format_decimal(number, format='0.0', locale=locale_of(reader.language))} h"


def hours_min(seconds: float) -> str:
    """A pace as m:ss."""
    whole = round(seconds)
    return f"{whole // 60}:{whole % 60:02d}"


def say_factor(reader: Reader, name: str) -> str:
    """What costs or saves minutes on a leg; a name that the event file gave stays as it is."""
    if name.startswith(_SURFACE):
        return name.removeprefix(_SURFACE)
    key = f"plan-factor-{slug(name)}"
    return sentence(reader.language, key) if has(key) else name
