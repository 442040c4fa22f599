"""What notices hold that go with an open call for help: back to whoever called, on to those who see to it, and to those
near who are not asked.

Values only: a notice (notice.py) is worded from them, in server/conversation/telling.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from server.facts.entry import Fix
from server.watch.alarm_values import Heard


class Answered(StrEnum):
    """How far a call for help has come, as its caller hears it."""

    ASKED = "asked"
    """People are being asked; nobody has answered yet."""
    HELD = "held"
    GIVEN_BACK = "given back"
    """Who had it can't any more, and nobody has taken it since."""
    LOST = "lost"
    """Who had it does not answer any more, and the others are asked again."""
    OVER = "over"


@dataclass(frozen=True, slots=True)
class CallBackValues:
    """How a call for help stands, for the caller or for her whom it is about.

    `by`: who called ('' nobody known); `asked`: who was asked and has a channel that works; `holder`: who has it, or had it
    last; `said`: what that person wrote since, newest; `reason`, `ended_by`: of one that is over; `at`: since when
    it stands so; `minutes`: how long after the call this is said, 0 = as soon as it came to stand so. `call`: the entry of a
    call that named no runner.
    """

    alarm: str
    state: str
    raised_at: datetime
    by: str
    asked: tuple[str, ...]
    holder: str | None = None
    said: Heard | None = None
    reason: str = ""
    ended_by: str = ""
    at: datetime | None = None
    minutes: int = 0
    call: str = ""


@dataclass(frozen=True, slots=True)
class MeanwhileValues:
    """Something about her that came in while a call for help is open, word for word. `kind`: of the report; `fix`: the
    place that was shared with it, the sender's own where `own_place`; `unconfirmed`: it does not count yet."""

    alarm: str
    entry: str
    kind: str
    at: datetime
    by: str
    words: str = ""
    point: str | None = None
    fix: Fix | None = None
    own_place: bool = False
    unconfirmed: bool = False


@dataclass(frozen=True, slots=True)
class AlarmNewsValues:
    """That an alarm about her is open, for those who are near and are asked nothing; `at_point`: the point where the reader
    stands or is posted, if she may come there."""

    alarm: str
    of_kind: str
    raised_at: datetime
    by: str = ""
    holder: str | None = None
    caller: str | None = None
    at_point: str | None = None
