"""The stop log: what she ate, drank and how she was, as logged; what of it the next crew need, and what is for medics.

Nothing here advises treatment: each flag says what was logged and that the race's medics decide.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import Final, Protocol

LOOKED_BACK: Final = timedelta(hours=6)
"""What was logged longer ago than this is in no summary, but for the last of each kind (own choice)."""
NO_PEE: Final = timedelta(hours=6)
NO_PEE_PAINKILLER: Final = timedelta(hours=3)
NOT_EATEN: Final = timedelta(hours=3)
"""So long is noted to crew (common practice, no source)."""
MOST_ML_PER_H: Final = 750.0
"""The upper end of what runners are to plan with, 450 to 750 ml an hour (Tiller et al. 2019, J Int Soc Sports Nutr 16:50);
more is told for the sake of hyponatraemia, of which drinking too much is the main cause (Hew-Butler et al. 2015)."""
LEAST_SPAN: Final = timedelta(hours=2)
"""Over less than this what was drunk says nothing of an hour (own choice)."""


class Item(StrEnum):
    """What is logged at a stop."""

    ATE = "ate"
    DRANK = "drank"
    PEED = "peed"
    MOOD = "mood"
    FEET = "feet"
    PAINKILLER = "painkiller"
    SLEPT = "slept"
    CHANGED = "changed"


class Level(StrEnum):
    """How it was. NONE: said not to have been: nothing eaten, no painkiller, not peed."""

    NONE = "none"
    GOOD = "good"
    SO_SO = "so-so"
    BAD = "bad"


UNIT: Final = {Item.ATE: "g", Item.DRANK: "ml", Item.SLEPT: "min"}
"""What `Logged.amount` counts: grams of carbohydrate, millilitres, minutes; other items have none."""
MOST: Final = {Item.ATE: 500.0, Item.DRANK: 5000.0, Item.SLEPT: 720.0}
"""More than this at one stop is a slip of the pen (own choice)."""


@dataclass(frozen=True, slots=True)
class Logged:
    """One thing logged: `amount` in the unit of its item, `words` what of it ('half a banana', 'ibuprofen')."""

    item: Item
    amount: float | None = None
    level: Level | None = None
    words: str = ""


class LogEntry(Protocol):
    """An entry that says something of the log."""

    @property
    def seen_at(self) -> datetime:
        """When it was so."""

    @property
    def logged(self) -> tuple[Logged, ...]:
        """What was logged."""


class Flag(StrEnum):
    """What of the log crew and medics are to look at."""

    PAINKILLER_NO_PEE = "painkiller and no pee"
    NO_PEE = "no pee"
    DARK_PEE = "dark pee"
    PAINKILLERS = "painkillers again"
    MUCH_DRUNK = "much drunk"
    NOT_EATING = "not eating"


@dataclass(frozen=True, slots=True)
class LogSince:
    """The log in short. `since`: when the first of it was logged, within LOOKED_BACK. `drank_ml`, `ate_g`, `slept_min` are
    sums (None: nothing logged; 0 with `not_…`: said to be nothing); `eaten` what was eaten in words. `last`: of peed, mood,
    feet and painkiller the newest with its time, of painkillers each that was taken."""

    since: datetime
    drank_ml: float | None = None
    drank_some: bool = False
    ate_g: float | None = None
    eaten: tuple[str, ...] = ()
    ate_some: bool = False
    slept_min: float | None = None
    changed: tuple[str, ...] = ()
    last: tuple[tuple[datetime, Logged], ...] = ()
    flags: tuple[tuple[Flag, datetime], ...] = ()


_LAST_OF: Final = (Item.PEED, Item.MOOD, Item.FEET, Item.PAINKILLER)


def in_short(entries: Iterable[LogEntry], start: datetime, now: datetime) -> LogSince | None:
    """The log at `now` in short; None where nothing has been logged. `start` is when she started."""
    every = sorted(
        ((e.seen_at, one) for e in entries if e.seen_at <= now for one in e.logged), key=lambda p: p[0]
    )
    if not every:
        return None
    new = [(at, one) for at, one in every if at >= every[-1][0] - LOOKED_BACK]

    def of(item: Item) -> list[Logged]:
        return [one for _, one in new if one.item is item]

    def total(item: Item) -> float | None:
        some = [one.amount for one in of(item) if one.amount is not None]
        nothing = any(one.level is Level.NONE for one in of(item))
        return sum(some) if some else (0.0 if nothing else None)

    def unmeasured(item: Item) -> bool:
        return any(one.amount is None and one.level is not Level.NONE for one in of(item))

    return LogSince(
        since=new[0][0],
        drank_ml=total(Item.DRANK),
        drank_some=unmeasured(Item.DRANK),
        ate_g=total(Item.ATE),
        eaten=tuple(one.words for one in of(Item.ATE) if one.words and one.level is not Level.NONE),
        ate_some=unmeasured(Item.ATE),
        slept_min=total(Item.SLEPT),
        changed=tuple(one.words for one in of(Item.CHANGED) if one.words),
        last=_last(every),
        flags=tuple(_flags(every, start, now)),
    )


_Timed = tuple[datetime, Logged]


def _last(every: Sequence[_Timed]) -> tuple[_Timed, ...]:
    """The newest of peed, mood and feet, however old; of painkillers each that was taken, or that none was."""
    found: list[_Timed] = []
    for item in _LAST_OF:
        mine = [p for p in every if p[1].item is item]
        taken = [p for p in mine if item is Item.PAINKILLER and p[1].level is not Level.NONE]
        found += taken or mine[-1:]
    return tuple(found)


def _flags(every: Sequence[_Timed], start: datetime, now: datetime) -> Iterable[tuple[Flag, datetime]]:
    """Each flag with the moment since when it is so."""
    peed = [at for at, one in every if one.item is Item.PEED and one.level is not Level.NONE]
    asked = any(one.item is Item.PEED for _, one in every)
    last_pee = peed[-1] if peed else start
    taken = [at for at, one in every if one.item is Item.PAINKILLER and one.level is not Level.NONE]
    told_not = any(one.item is Item.PEED and one.level is Level.NONE and at > last_pee for at, one in every)
    dry = now - last_pee
    if taken and dry >= NO_PEE_PAINKILLER and (asked or told_not):
        yield Flag.PAINKILLER_NO_PEE, last_pee
    elif told_not and dry >= NO_PEE:
        yield Flag.NO_PEE, last_pee
    newest_pee = next((p for p in reversed(every) if p[1].item is Item.PEED), None)
    if newest_pee is not None and newest_pee[1].level is Level.BAD:
        yield Flag.DARK_PEE, newest_pee[0]
    if len(taken) > 1:
        yield Flag.PAINKILLERS, taken[-1]
    yield from _intake(every, start, now)


def _intake(every: Sequence[_Timed], start: datetime, now: datetime) -> Iterable[tuple[Flag, datetime]]:
    new = [(at, one) for at, one in every if at >= now - LOOKED_BACK]
    first = max(start, now - LOOKED_BACK)
    drunk = sum(one.amount or 0.0 for _, one in new if one.item is Item.DRANK)
    if new and drunk / (max(now - first, LEAST_SPAN) / timedelta(hours=1)) > MOST_ML_PER_H:
        yield Flag.MUCH_DRUNK, first
    ate = [at for at, one in every if one.item is Item.ATE and one.level is not Level.NONE]
    last_ate = ate[-1] if ate else start
    told_not = any(one.item is Item.ATE and one.level is Level.NONE and at > last_ate for at, one in every)
    if told_not and now - last_ate >= NOT_EATEN:
        yield Flag.NOT_EATING, last_ate
