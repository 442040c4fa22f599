"""How the fold gets a position put on the course line, without knowing the course room."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache
from typing import Protocol

from server.facts.entry import Fix


@dataclass(frozen=True, slots=True)
class KnownAt:
    """What is known of a runner before a position: km along the course, and when she was there."""

    km: float
    at: datetime


@dataclass(frozen=True, slots=True)
class Placed:
    """A position on the line: km along it (None = not placeable), metres off it, and whether another
    part of the course fits nearly as well."""

    km: float | None
    off_m: float
    ambiguous: bool = False


class Placer(Protocol):
    """Puts a fix on the line of a course, helped by where she was known to be before.

    A plain function of its arguments: the same call gives the same answer.
    """

    def __call__(self, course: str, fix: Fix, at: datetime, before: KnownAt) -> Placed:
        """Place `fix`, taken at `at`, on course `course`; `before` is the last place known by then (at
        the latest km 0 at her start)."""


def remembered(place: Placer, most: int = 100_000) -> Placer:
    """`place` that remembers its last `most` answers: a fold made again after one new report then places
    only what is new, and what a late report changes."""
    cached = lru_cache(maxsize=most)(place)

    def answer(course: str, fix: Fix, at: datetime, before: KnownAt) -> Placed:
        return cached(course, fix, at, before)

    return answer
