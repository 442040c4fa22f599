"""What people type into a field, as the event file has it. What can't be made out stays as typed: the check tells."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date, datetime, time
from typing import Any

from server.event.forms import slug

__all__ = [
    "Given",
    "begun",
    "fresh_id",
    "items",
    "moment",
    "number",
    "rows",
    "shown",
    "span",
    "span_in_minutes",
]

Given = Mapping[str, str]
_NUMBER = re.compile(r"([+-]?\d+(?:[.,]\d+)?)\s*(?:km|m|min|mins|hm|%)?\.?", re.IGNORECASE)
_SPAN = re.compile(
    r"(\d{1,3})\s*(?:(?:[:h.]|hours?\s|std\.?\s)\s*([0-5]\d))?\s*(?:h|hrs?|hours?|std|min)?\.?", re.IGNORECASE
)


def number(text: str) -> float | int | str | None:
    """'21,5 km' as 21.5, '' as None."""
    text = text.strip()
    hit = _NUMBER.fullmatch(text)
    if hit is None:
        return text or None
    value = float(hit[1].replace(",", "."))
    return int(value) if value.is_integer() else value


def span(text: str) -> str | None:
    """'34' or '34 h' as '34:00', '6h30' as '6:30', '' as None."""
    text = text.strip()
    hit = _SPAN.fullmatch(text)
    return f"{int(hit[1])}:{hit[2] or '00'}" if hit is not None else text or None


def span_in_minutes(text: str) -> str:
    """'1:05' or '1 h 5' as '65'; minutes, and what can't be read, as typed."""
    hit = re.fullmatch(r"\s*(\d{1,2})\s*[:h]\s*([0-5]?\d)?(?:\s*(?:m|min|mins)\.?)?\s*", text, re.IGNORECASE)
    return str(int(hit[1]) * 60 + int(hit[2] or 0)) if hit is not None else text


def moment(day: str, clock: str) -> datetime | date | str | None:
    """Two fields of a form as one moment; a day alone, or what can't be read, as it is."""
    day, clock = day.strip(), clock.strip()
    try:
        on = date.fromisoformat(day)
        return datetime.combine(on, time.fromisoformat(clock)) if clock else on
    except ValueError:
        return f"{day}T{clock}" if day or clock else None


def items(text: str) -> list[str]:
    """A line of things, with commas or one a line."""
    return [w.strip() for w in re.split(r"[,;\n]", text) if w.strip()]


def rows(given: Given, prefix: str) -> list[dict[str, str]]:
    """The rows of a form whose fields are named 'p0-name', 'p0-km', 'p1-name' …, in their order."""
    found: dict[int, dict[str, str]] = {}
    for name, value in given.items():
        hit = re.fullmatch(rf"{prefix}(\d{{1,4}})-(.+)", name)
        if hit is not None:
            found.setdefault(int(hit[1]), {})[hit[2]] = value.strip() if "\n" not in value else value
    return [found[n] for n in sorted(found)]


def begun(row: Given) -> bool:
    """Whether anybody typed into an empty row: what it holds by itself (a language, in or out) is nothing."""
    return any(value.strip() for key, value in row.items() if key not in ("was", "language", "edge"))


def fresh_id(name: str, taken: list[str], otherwise: str) -> str:
    """An id made of a name that nobody has yet."""
    base = slug(name)[:36] or otherwise
    return next(i for n in range(1, 10_000) if (i := base if n == 1 else f"{base}-{n}") not in taken)


def shown(value: Any) -> str:
    """A value of the file as it stands in a field."""
    if value is None:
        return ""
    if isinstance(value, float):
        return f"{value:.10g}"
    if isinstance(value, list):
        return ", ".join(shown(v) for v in value)
    if isinstance(value, dict):
        return shown(value.get("name", ""))
    return str(value)
