"""Notices: what is owed to one person, with the values to word it from, never the text.

A notice's identity is its key (event, runner, person, kind, point, episode), unique in the database, so any
number of servers may tick. `episode` numbers repeats that are meant (a window moved again, a new alarm).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum

from server.watch.alarm_values import (
    AlarmValues,
    Heard,
    MissedLimit,
    NoWord,
    OutageValues,
    StandDownValues,
    TestAlarmValues,
    TrackerSays,
    UnnamedHelpValues,
    UnreachedValues,
    Unsure,
)
from server.watch.call_values import AlarmNewsValues, Answered, CallBackValues, MeanwhileValues
from server.watch.late_values import LateHomeValues, StandsValues, StayValues, WhyNow
from server.watch.meeting_values import (
    BeforeDarkValues,
    BriefValues,
    CutOffValues,
    LateValues,
    MeetingValues,
    OwnWay,
    SightingValues,
)
from server.watch.news_values import (
    CorrectionValues,
    DoubtValues,
    InHandValues,
    LookBackValues,
    NewVersionValues,
    PassedOnValues,
    PastCutOffValues,
    PlanItem,
    RaceChangeValues,
    ReminderValues,
    RetiredValues,
    SwapValues,
    Waits,
    WordValues,
)
from server.watch.uncovered_values import Ear, Out, StandIn, UncoveredValues

__all__ = [
    "AlarmNewsValues",
    "AlarmValues",
    "Answer",
    "Answered",
    "BeforeDarkValues",
    "BriefValues",
    "CallBackValues",
    "CorrectionValues",
    "CutOffValues",
    "DoubtValues",
    "Ear",
    "Heard",
    "InHandValues",
    "LateHomeValues",
    "LateValues",
    "LookBackValues",
    "Made",
    "MeanwhileValues",
    "MeetingValues",
    "MissedLimit",
    "NewVersionValues",
    "NoWord",
    "Notice",
    "NoticeKey",
    "NoticeKind",
    "Out",
    "OutageValues",
    "OwnWay",
    "PassedOnValues",
    "PastCutOffValues",
    "PlanItem",
    "RaceChangeValues",
    "ReminderValues",
    "RetiredValues",
    "Said",
    "SightingValues",
    "StandDownValues",
    "StandIn",
    "StandsValues",
    "StayValues",
    "SwapValues",
    "TestAlarmValues",
    "TrackerSays",
    "UncoveredValues",
    "UnnamedHelpValues",
    "UnreachedValues",
    "Unsure",
    "Urgency",
    "Values",
    "Waits",
    "WhyNow",
    "WordValues",
]


class NoticeKind(StrEnum):
    """Every kind of notice. What else a new kind needs: 'a kind of notice' in DEVELOPERS.md."""

    LEAVE_SOON = "leave soon"
    LEAVE_NOW = "leave now"
    BE_THERE = "be there from"
    MOVE_ON = "move on"
    WINDOW_MOVED = "window moved"
    ARRIVED = "arrived"
    LEFT = "left"
    CUT_OFF_ODDS = "cut-off odds"
    BEFORE_DARK = "dark before her torch"
    LATE = "late"
    LATE_HOME = "late, told home"
    STAY = "stay"
    STANDS = "tracker stands still"
    OVERDUE = "overdue"
    ASKED_FOR_HELP = "asked for help"
    RETIRED = "retired"
    FINISHED = "finished"
    RACE_CHANGE = "race change"
    SWEEP = "sweep"
    LOOK_AGAIN = "look again"
    HANDED_ON = "handed on"
    STAND_DOWN = "stand-down"
    CORRECTION = "correction"
    UNCONFIRMED = "unconfirmed"
    MEETING_LOST = "meeting lost"
    BRIEF = "brief"
    WAKE_UP = "wake-up"
    TEST_ALARM = "test alarm"
    UNREACHED = "unreached"
    OUTAGE = "outage"
    WORD_OF_HER = "word of her"
    IN_HAND = "in hand"
    HELP_NOT_NAMED = "help, not said for whom"
    PAST_CUT_OFF = "past the cut-off"
    UNCOVERED = "uncovered"
    COVERED = "covered"
    CALL_BACK = "your call for help"
    MEANWHILE = "while help is open"
    ALARM_KNOWN = "alarm, what is known"
    READ_OUT = "alarm, to read out"
    ALARM_NEWS = "an alarm is open"
    NEW_VERSION = "new version"
    PASSED_ON = "passed on"
    SWAP = "asked to take over"
    REMINDER = "reminder"
    LOOK_BACK = "looking back"


class Answer(StrEnum):
    """The answers that the watch offers as buttons. Any other words answer as well: reached means answered.
    Only `CANNOT` means anything to the watch: asked, but somebody else has to see to it."""

    ON_IT = "i have it"
    CANNOT = "cannot"
    LEAVING = "on our way"
    AWAKE = "awake"
    YES = "yes"
    NOT_YET = "not yet"
    NOBODY = "nobody there"
    SEEN = "seen"
    STILL_MISSING = "still missing"
    I_GO = "i go"
    IN_HAND = "in hand"
    RACE_CONTROL_TOLD = "race control told"
    RACE_OVER = "race over"
    GOES_ON = "goes on"
    RIGHT = "right"
    WRONG = "wrong"


class Urgency(StrEnum):
    """How a notice is treated: alarms break through everything; action notices break quiet hours for
    the person's own; news obeys choices and quiet hours."""

    ALARM = "alarm"
    ACTION = "action"
    NEWS = "news"


def together(parties: Sequence[MeetingValues], crew: tuple[str, ...]) -> MeetingValues:
    """The meeting of all its cars again: the first that can make it speaks for it, the others are its `ways`."""
    first = next((m for m in parties if not m.lost), parties[0])
    rest = tuple(
        OwnWay(
            m.crew,
            m.car,
            m.leave_by,
            m.wait_until,
            m.drive,
            m.drive_confirmed,
            m.drive_from,
            m.next_meeting,
            m.p_both,
            m.lost,
            m.p_comes,
            m.stay,
        )
        for m in parties
        if m is not first
    )
    return replace(first, crew=crew, ways=rest)


Values = (
    MeetingValues
    | SightingValues
    | CutOffValues
    | BeforeDarkValues
    | LateValues
    | LateHomeValues
    | StayValues
    | StandsValues
    | AlarmValues
    | RetiredValues
    | InHandValues
    | RaceChangeValues
    | StandDownValues
    | CorrectionValues
    | WordValues
    | DoubtValues
    | BriefValues
    | UnreachedValues
    | OutageValues
    | TestAlarmValues
    | UnnamedHelpValues
    | PastCutOffValues
    | UncoveredValues
    | CallBackValues
    | MeanwhileValues
    | AlarmNewsValues
    | NewVersionValues
    | PassedOnValues
    | SwapValues
    | ReminderValues
    | LookBackValues
)


@dataclass(frozen=True, slots=True)
class NoticeKey:
    """What makes a notice the same notice."""

    event: str
    runner: str
    person: str
    kind: NoticeKind
    point: str
    episode: int

    def text(self) -> str:
        """The key as one string, for the unique column."""
        return "|".join(
            (self.event, self.runner, self.person, self.kind.value, self.point, str(self.episode))
        )


@dataclass(frozen=True, slots=True)
class Notice:
    """A notice owed. `use_by`: past it the latest facts go out instead, marked delayed. `facts` are the
    entry ids it rests on, so that a correction finds what it changes.

    `owed_at` is the moment from which it was owed, `delayed` says that this was so long ago (we were down)
    that the text must say so. `occasion` tells a repeat that is meant from the same notice again: the watch
    finds by it what it has made, so it must be kept with the notice. `hold_until`: the outbox may keep the
    notice so long, to join it with others for the same person in one message; None = send at once.
    """

    key: NoticeKey
    urgency: Urgency
    owed_at: datetime
    use_by: datetime | None
    needs_answer: bool
    values: Values
    facts: tuple[str, ...] = ()
    buttons: tuple[str, ...] = ()
    occasion: str = ""
    delayed: bool = False
    hold_until: datetime | None = None


@dataclass(frozen=True, slots=True)
class Said:
    """One answer of a person to a notice."""

    at: datetime
    words: str


@dataclass(frozen=True, slots=True)
class Made:
    """A notice already in the database, with what became of it. `short` is its short number for people.

    `sent_at` first accepted by a channel; `answered_at` first answered by the person (reached), `answer` what
    they say now: who said 'can't' may say 'I have it' later, and the other way round. `said` are all their answers in
    order of time. `failed`: no channel works.
    """

    notice: Notice
    short: int
    made_at: datetime
    sent_at: datetime | None = None
    answered_at: datetime | None = None
    answer: str = ""
    failed: bool = False
    said: tuple[Said, ...] = ()

    @property
    def answers(self) -> tuple[Said, ...]:
        """Every answer in order of time."""
        if self.said or self.answered_at is None:
            return self.said
        return (Said(self.answered_at, self.answer),)
