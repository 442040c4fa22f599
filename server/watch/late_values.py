"""What is said of a silence before and when it becomes an alarm: late, told home; why an alarm comes now.

Values only: a notice (notice.py) is worded from them, in server/conversation/telling.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from server.facts.state import LastKnown
from server.forecast.outlook import Window
from server.watch.alarm_values import NoWord, TrackerSays, Unsure


class WhyNow(StrEnum):
    """Why an alarm comes at this moment and no other."""

    LINE = "alarm line"
    """So long a silence is rarer than the alarm line where all is well."""
    ODDS = "odds"
    """Those who would have reported her are silent: more likely than not her race has ended unseen."""
    FINISH = "finish"
    """She would be at the finish by now, whoever reports."""
    LIMIT = "limit"
    """The race's time for her is over, or a cut-off at the finish is."""
    TOLD_MISSING = "told missing"
    """Somebody said 'not here yet' where she surely would have been."""
    HELP = "help"
    SWEEP = "sweep"


@dataclass(frozen=True, slots=True)
class StandsValues:
    """Her tracker has been at one spot from `since` to its newest fix at `until`: km along the course where it lies on it,
    the place, the point it is at if any."""

    since: datetime
    until: datetime
    km: float | None
    fix: tuple[float, float]
    point: str | None = None


@dataclass(frozen=True, slots=True)
class StayValues:
    """She is missed, and crew at `point`, where she may yet come, stay for her.

    `keep` stay until she is heard of, `go` may go on meanwhile. `unseen`: since when nobody has seen her; `sought`: an
    alarm is open. `next_point`: where those who stay, or `go`, would go next; None where they have no other meeting.
    """

    point: str
    keep: tuple[str, ...]
    go: tuple[str, ...]
    unseen: datetime
    last_known: LastKnown | None = None
    sought: bool = False
    next_point: str | None = None


@dataclass(frozen=True, slots=True)
class LateHomeValues:
    """She is late and nobody has reported her: news to those at home, no alarm.

    `point`, `window`: where and when she was expected, as it stood when she was last seen. `not_there`: the newest 'not
    here yet' since; `no_word`: who was asked about her since and has not answered. `alarm_at`: when it becomes an alarm if
    nothing is heard, as far as is known; None where silence alone never does. `tracker`: where it is quiet, or says
    otherwise than people.
    """

    point: str
    window: Window
    last_known: LastKnown | None
    not_there: Unsure | None = None
    no_word: tuple[NoWord, ...] = ()
    alarm_at: datetime | None = None
    tracker: TrackerSays | None = None
