"""What news of her and of the race holds: her race over, in hand, changes by the organiser, words, corrections, doubts.

Values only: a notice (notice.py) is worded from them, in server/wording.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from server.forecast.outlook import Window


class Waits(StrEnum):
    """What a notice about a retirement is about: the news itself, that nobody has her in hand yet, that race
    control does not know yet, or that somebody has her."""

    NEWS = "news"
    HAND = "hand"
    RACE_CONTROL = "race control"
    IN_HAND = "in hand"


@dataclass(frozen=True, slots=True)
class RetiredValues:
    """Her race has ended before the finish: how, where, who fetches her, who tells race control.

    `caller`: the one person who does (None = none is named: whoever reads it). `waits`: what it is
    about, that she retired or what came of it since.
    """

    how: str
    point: str | None
    at: datetime
    told_by: str
    words: str = ""
    in_hand: bool = False
    race_control_knows: bool = False
    pick_up_by: tuple[str, ...] = ()
    caller: str | None = None
    waits: Waits = Waits.NEWS
    in_hand_by: str = ""
    in_hand_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class InHandValues:
    """Somebody has her who has not retired: when and by whose word, at which point or km if that was said, their
    words. `alarm_open`: an alarm about her goes on all the same."""

    at: datetime
    told_by: str
    point: str | None = None
    km: float | None = None
    words: str = ""
    alarm_open: bool = False


@dataclass(frozen=True, slots=True)
class RaceChangeValues:
    """A race-level fact by the organiser; `edge` of a cut-off: in or out."""

    change: str
    point: str | None
    until: datetime | None
    amount: timedelta | None
    words: str
    told_by: str
    edge: str = ""


@dataclass(frozen=True, slots=True)
class CorrectionValues:
    """Something this person was told has been corrected: what was said (with its words, of a word of her), what
    holds now."""

    was_kind: str
    point: str | None
    was_at: datetime | None
    now_at: datetime | None
    taken_back: bool
    by: str
    words: str = ""


@dataclass(frozen=True, slots=True)
class WordValues:
    """How she is, as somebody wrote it of the moment `at`.

    `going` is where in her race she is now. `since` is from when she rests, or is in at `point`; or from when
    she moves again after a rest. `until` is how long a rest was said to last. `next_window` is for the point
    where this person may meet her next.
    """

    entry: str
    words: str
    at: datetime
    told_by: str
    going: str
    point: str | None = None
    since: datetime | None = None
    until: datetime | None = None
    next_window: Window | None = None


@dataclass(frozen=True, slots=True)
class DoubtValues:
    """A report that was guessed or can't be right is kept, and asked about."""

    entry: str
    kind: str
    point: str | None
    at: datetime
    told_by: str
    doubt: str
    words: str = ""
