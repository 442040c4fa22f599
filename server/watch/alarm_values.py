"""What notices of an alarm hold, and those about ourselves: what is known of her, who is asked, who can't be reached.

Values only: a notice (notice.py) is worded from them, in server/conversation/telling.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from server.facts.state import LastKnown
from server.forecast.outlook import Whereabouts, Window


@dataclass(frozen=True, slots=True)
class Heard:
    """Words about her with no place: when they were true, who sent them."""

    at: datetime
    by: str
    words: str


@dataclass(frozen=True, slots=True)
class Unsure:
    """A report of her that says not where she is, or is kept unconfirmed: what it says, of which point, when, by whom; with
    the words of one that says that her race is over, `hearsay` where its sender was told by another."""

    kind: str
    point: str | None
    at: datetime
    by: str
    words: str = ""
    hearsay: bool = False


@dataclass(frozen=True, slots=True)
class NoWord:
    """Somebody who was asked whether she has come in, and has not answered; when the question went out."""

    who: str
    at: datetime


@dataclass(frozen=True, slots=True)
class TrackerSays:
    """What her tracker says beside what is known last: its newest fix. `quiet`: it has sent nothing since. `seen_point`,
    `seen_at`, `seen_by`: where a person saw her, where the two can't both be; '' and None where they agree."""

    km: float | None
    at: datetime
    quiet: bool = False
    seen_point: str = ""
    seen_at: datetime | None = None
    seen_by: str = ""


@dataclass(frozen=True, slots=True)
class MissedLimit:
    """A cut-off that she has missed by what was reported: `how` (a `Past`) and when it was seen, `seen_at` where."""

    point: str
    edge: str
    cut_off: datetime
    how: str
    at: datetime
    seen_at: str | None = None


@dataclass(frozen=True, slots=True)
class AlarmValues:
    """An alarm (overdue, asked for help, sweep through without her, look again, handed on).

    `step` is that of the ladder, -1 for what only tells. `gave_back`: who held it and can't any more.
    `heard_since`: what was heard of her after the last known point, where that named no place; `unconfirmed`: the
    reports after it that are kept and do not count. `said_km`, `said_fix`: where the words of the call put her.
    `contact_lost`: since when her shared position has ended, with nothing heard of her since.
    `not_there`: the newest 'not here yet' later than the last known point; `no_word`: who were asked about her since and
    do not answer.
    `tracker`: where her tracker is quiet, or says otherwise than people.
    `why_now`: what made it due at this moment (a `WhyNow`, '' where an older server did not say).
    `by`: who called for help ('' of any other alarm); `beside`: who may be standing beside her, the caller first;
    `past`: the cut-off she has missed, while nobody has said that she is let go on.
    `silent`: who had it and does not answer any more, where others are asked for that.
    `since_call`: the newest words that came in while the call was open.
    `race_over`: when her race ended, where she was not to be watched for any more: then nothing is estimated; `had_by`,
    `had_at`: who said last that somebody had her. `not_named_by`: who called and did not say for which of their runners;
    `named_by`: who has said since that it was for her.
    """

    alarm: str
    of_kind: str
    point: str | None
    last_known: LastKnown | None
    expected: Window | None
    where: Whereabouts | None
    where_fix: tuple[float, float] | None
    asked: tuple[str, ...]
    told: tuple[str, ...]
    caller: str | None
    holder: str | None
    step: int
    words: str = ""
    pacer: str | None = None
    look_again: datetime | None = None
    raised_at: datetime | None = None
    gave_back: str = ""
    heard_since: tuple[Heard, ...] = ()
    unconfirmed: tuple[Unsure, ...] = ()
    said_km: float | None = None
    said_fix: tuple[float, float] | None = None
    contact_lost: datetime | None = None
    race_over: datetime | None = None
    had_by: str = ""
    had_at: datetime | None = None
    not_named_by: str = ""
    named_by: str = ""
    not_there: Unsure | None = None
    no_word: tuple[NoWord, ...] = ()
    why_now: str = ""
    tracker: TrackerSays | None = None
    by: str = ""
    beside: tuple[str, ...] = ()
    since_call: tuple[Heard, ...] = ()
    silent: str = ""
    past: MissedLimit | None = None


@dataclass(frozen=True, slots=True)
class StandDownValues:
    """An alarm is over, why, and who said so; `meant`: the runner whom the call taken back was for; `also`: ids of other
    alarms about her that are over with it."""

    alarm: str
    of_kind: str
    reason: str
    by: str
    at: datetime
    point: str | None = None
    meant: str = ""
    also: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class UnnamedHelpValues:
    """A call for help that names none of the many runners its sender may mean: its entry, who called, in which words and
    when it came, who is told, at which point the caller stands. `holder`: who has it. `over`: 'named' once it is said that
    it was for `meant`, or 'taken back', by `ended_by` at `at`; '' while it is open."""

    call: str
    by: str
    words: str
    at: datetime
    told: tuple[str, ...]
    point: str | None = None
    holder: str | None = None
    over: str = ""
    meant: str = ""
    ended_by: str = ""


@dataclass(frozen=True, slots=True)
class TestAlarmValues:
    """The test alarm before the start."""

    answer_by: datetime


@dataclass(frozen=True, slots=True)
class UnreachedValues:
    """Somebody could not be reached over any channel."""

    person: str
    notice_kind: str
    channels: tuple[str, ...]
    since: datetime


@dataclass(frozen=True, slots=True)
class OutageValues:
    """Our own server, database or channel was down."""

    what: str
    start: datetime
    end: datetime | None
