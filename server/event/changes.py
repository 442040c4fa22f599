"""What would change if a new version of an event file were loaded, in plain words; and what may not."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass, fields, is_dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import Any
from zoneinfo import ZoneInfo

from server.event.model import Event, Point
from server.event.problem import Problem, Severity
from server.event.table_reader import nearest
from server.event.times import write_span
from server.sentences import both, say

__all__ = ["ChangeKind", "Difference", "changes", "removal_refused"]


class ChangeKind(StrEnum):
    """What happens to a thing."""

    ADDED = "added"
    REMOVED = "removed"
    CHANGED = "changed"


@dataclass(frozen=True, slots=True)
class Difference:
    """One change. `what`: point, runner, person, ...; `id` which; `field` as in the values ('' when the
    whole thing comes or goes); `was`, `now` as a person reads them, times on the event's own clock."""

    kind: ChangeKind
    what: str
    id: str
    field: str = ""
    was: str = ""
    now: str = ""

    def __str__(self) -> str:
        thing = f"{self.what} {self.id}".strip()
        if self.kind is not ChangeKind.CHANGED:
            return f"{thing}: {self.kind.value}"
        return f"{thing}: {self.field} was {self.was or 'not given'}, becomes {self.now or 'not given'}"


_LISTS = frozenset(
    {
        "courses",
        "runners",
        "people",
        "parts",
        "cars",
        "drives",
        "meetings",
        "cards",
        "places",
        "shares",
        "weather",
    }
)
_APART = frozenset({"version", "points", "stretches"})
_WORDS = {"km": "km", "also": "other names", "access": "crew access", "starts": "start"}


def changes(old: Event, new: Event) -> tuple[Difference, ...]:
    """Every difference that `new` makes, the event itself first, then courses, points, people and so on."""
    found = list(_differences(old, new, "event", "", new.time_zone, _LISTS | _APART))
    found += _points(old, new)
    for what, olds, news in _things(old, new):
        found += _compare(what, olds, news, new.time_zone)
    return tuple(found)


def removal_refused(
    old: Event, new: Event, points_with_check_ins: Collection[str], file: str = "event.toml"
) -> tuple[Problem, ...]:
    """Why `new` may not be loaded over `old`: points that have check-ins are gone."""
    names = {p.id: p.name for c in old.courses for p in c.points}
    left = {p.id for c in new.courses for p in c.points}
    fresh = left - set(names)
    problems = []
    for point in sorted(set(points_with_check_ins) & set(names) - left):
        what = say("wrong-point-has-check-ins", point=point, name=names[point])
        near = nearest(point, fresh)
        renamed = say("do-keep-id-change-name", near=near, point=point) if near else None
        remedy = both(say("do-put-point-back"), renamed)
        problems.append(Problem(Severity.ERROR, what, file, None, f"points.{point}", remedy))
    return tuple(problems)


def _things(old: Event, new: Event) -> Iterator[tuple[str, dict[str, Any], dict[str, Any]]]:
    for what, name in (("course", "courses"), ("runner", "runners"), ("person", "people"), ("car", "cars"),
                       ("meeting", "meetings"), ("if-then card", "cards"), ("place", "places")):  # fmt: skip
        yield what, {x.id: x for x in getattr(old, name)}, {x.id: x for x in getattr(new, name)}
    yield "stretch", _stretches(old), _stretches(new)
    yield "drive", _drives(old), _drives(new)
    yield "part", _parts(old), _parts(new)
    yield "relay share", _shares(old), _shares(new)
    yield "weather", _weather(old), _weather(new)


def _stretches(event: Event) -> dict[str, Any]:
    return {
        f"{s.name or 'without a name'} (km {s.from_km:g} to {s.to_km:g})": s
        for c in event.courses
        for s in c.stretches
    }


def _drives(event: Event) -> dict[str, Any]:
    return {f"from {d.from_place} to {d.to_place}": d for d in event.drives}


def _shares(event: Event) -> dict[str, Any]:
    return {f"of {s.runner} from {s.from_point}": s for s in event.shares}


def _weather(event: Event) -> dict[str, Any]:
    """A spell of weather has no id of its own: when, and where."""
    found = {}
    for w in event.weather:
        hours = " to ".join(_said(t, event.time_zone) for t in (w.from_at, w.to_at) if t is not None)
        km = "" if w.from_km is None and w.to_km is None else f"km {w.from_km or 0:g} to {_open(w.to_km)}"
        found[" ".join(x for x in (hours, w.course, km) if x) or "all day"] = w
    return found


def _open(km: float | None) -> str:
    return "the end" if km is None else f"{km:g}"


def _parts(event: Event) -> dict[str, Any]:
    """A part has no id of its own: who, what, for whom, where."""
    return {
        " ".join(x for x in (p.person, p.kind.value, p.runner and f"for {p.runner}", p.point) if x): p
        for p in event.parts
    }


def _points(old: Event, new: Event) -> Iterator[Difference]:
    for course in new.courses:
        before = next((c.points for c in old.courses if c.id == course.id), ())
        olds: dict[str, Point] = {p.id: p for p in before}
        news: dict[str, Point] = {p.id: p for p in course.points}
        yield from _compare("point", olds, news, new.time_zone)
        was = [p.id for p in before if p.id in news]
        now = [p.id for p in course.points if p.id in olds]
        if was != now:
            yield Difference(
                ChangeKind.CHANGED, "course", course.id, "order of points", ", ".join(was), ", ".join(now)
            )


def _compare(what: str, olds: dict[str, Any], news: dict[str, Any], zone: str) -> Iterator[Difference]:
    for key in olds:
        if key not in news:
            yield Difference(ChangeKind.REMOVED, what, key)
    for key, value in news.items():
        if key not in olds:
            yield Difference(ChangeKind.ADDED, what, key)
        else:
            yield from _differences(olds[key], value, what, key, zone, _APART)


def _differences(
    old: Any, new: Any, what: str, thing: str, zone: str, skip: Collection[str], inside: str = ""
) -> Iterator[Difference]:
    """Field by field, into values within values."""
    for f in (f for f in fields(new) if f.compare):
        a, b = getattr(old, f.name), getattr(new, f.name)
        if a == b or (f.name in skip and not inside):
            continue
        words = f"{inside}{_WORDS.get(f.name, f.name.replace('_', ' '))}"
        if is_dataclass(a) and is_dataclass(b) and type(a) is type(b):
            yield from _differences(a, b, what, thing, zone, skip, f"{words}, ")
        else:
            yield Difference(ChangeKind.CHANGED, what, thing, words, _said(a, zone), _said(b, zone))


def _said(value: Any, zone: str) -> str:
    """A value as a person reads it."""
    match value:
        case None:
            return ""
        case bool():
            return "yes" if value else "no"
        case datetime():
            return f"{value.astimezone(ZoneInfo(zone)):%a %Y-%m-%d %H:%M}"
        case timedelta():
            return (
                f"{value / timedelta(minutes=1):g} min" if value < timedelta(hours=2) else write_span(value)
            )
        case float():
            return f"{value:g}"
        case frozenset():
            return ", ".join(sorted(_said(v, zone) for v in value))
        case tuple():
            return "; ".join(_said(v, zone) for v in value)
        case _ if is_dataclass(value):
            given = [_said(getattr(value, f.name), zone) for f in fields(value)]
            return " ".join(x for x in given if x and x != "no") or "as usual"
        case _:
            return str(value)
