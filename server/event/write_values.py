"""What writing an event needs: tables without what is not given, lengths and moments as people write them."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

from server.event.times import to_wall

Table = dict[str, Any]


def given(table: Table) -> Table:
    """Without what is not given: None, empty texts and lists, false."""
    return {k: v for k, v in table.items() if v is not None and v is not False and v not in ("", [], {})}


def unless(value: Any, default: Any) -> Any:
    """Nothing where a value is what holds without it."""
    return None if value == default else value


def number(value: float | None) -> int | float | None:
    """Whole numbers without decimals, as people write them."""
    return int(value) if value is not None and value == int(value) else value


def minutes(length: timedelta, default: timedelta = timedelta(0)) -> int | float | None:
    """A length in minutes; nothing where it is what holds without it."""
    return None if length == default else number(length / timedelta(minutes=1))


def wall(at: datetime | None, zone: str) -> datetime | None:
    """A moment as the clock at the race shows it."""
    return None if at is None else to_wall(at, zone)
