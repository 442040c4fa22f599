"""Notices: what is owed to one person, with the values to word it from, never the text.

A notice's identity is its key (event, runner, person, kind, point, episode), unique in the database, so any
number of servers may tick. `episode` numbers repeats that are meant (a window moved again, a new alarm).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum

from server.facts.state import LastKnown
from server.forecast.outlook import Whereabouts, Window


class NoticeKind(StrEnum):
    """Every kind of notice. A new kind is a member here, a payload below, a row in the watch's table, and
    a sentence in server/wording."""

    LEAVE_NOW = "leave now"
    BE_THERE = "be there from"
    MOVE_ON = "move on"
    WINDOW_MOVED = "window moved"
    ARRIVED = "arrived"
    LEFT = "left"
    CUT_OFF_ODDS = "cut-off odds"
    LATE = "late"
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
    RIGHT = "right"
    WRONG = "wrong"


class Urgency(StrEnum):
    """How a notice is treated: alarms break through everything; action notices break quiet hours for
    the person's own; news obeys choices and quiet hours."""

    ALARM = "alarm"
    ACTION = "action"
    NEWS = "news"


@dataclass(frozen=True, slots=True)
class OwnWay:
    """What of a meeting is different for those who come to it in another car, `car` by its key. As in
    `MeetingValues`."""

    people: tuple[str, ...]
    car: str
    leave_by: datetime | None
    wait_until: datetime
    drive: timedelta | None
    drive_confirmed: bool
    drive_from: str | None
    next_meeting: str | None = None
    p_both: float | None = None
    lost: str = ""
    p_comes: float | None = None


@dataclass(frozen=True, slots=True)
class MeetingValues:
    """A meeting as it stands. `leave_by` is None where no confirmed drive is known.

    `drive` may be an estimate: then `drive_confirmed` is False and it sets nothing. `drive_from` is where
    the crew come from, `crew` who goes. `p_in_time` is the probability, which the times are set for, that
    the crew is there before she is. `p_both`: the odds that the same crew also makes `next_meeting`, if
    they stay here until she leaves; `p_comes`: that she has come here by `wait_until`, where that is cut short for
    `next_meeting`. `kit` is brought, `take_back` taken away from there. `stay`: the time to wait is
    over, but she is missed here, so crew stay until she is heard of. `lost` says why the meeting can't be made ('' = it
    can), `was_leave_by` and `was_be_there` what this person was last told; `unreported_out` the point where she was
    seen in, and from which nobody has reported her out. Where several cars come, all this is of one of them, `ways` of
    the others; `own` and `parties` give each car's; `car` is then the key of a car that is not the meeting's own.
    """

    meeting: str
    point: str
    window: Window
    leave_by: datetime | None
    be_there: datetime
    wait_until: datetime
    drive: timedelta | None
    kit: tuple[str, ...]
    food: str
    if_missed: str
    no_signal: bool
    was: Window | None = None
    next_meeting: str | None = None
    drive_confirmed: bool = False
    drive_from: str | None = None
    crew: tuple[str, ...] = ()
    p_in_time: float = 0.97
    p_both: float | None = None
    lost: str = ""
    was_leave_by: datetime | None = None
    was_be_there: datetime | None = None
    stay: bool = False
    take_back: tuple[str, ...] = ()
    unreported_out: str | None = None
    ways: tuple[OwnWay, ...] = ()
    car: str = ""
    p_comes: float | None = None

    def own(self, person: str) -> MeetingValues:
        """The meeting as it is for one of those who go, by the car they are in; itself for anybody else."""
        return next((m for m in self.parties() if person in m.crew), self)

    def parties(self) -> tuple[MeetingValues, ...]:
        """The meeting car by car: `crew` are those in it, `ways` is empty."""
        elsewhere = {p for w in self.ways for p in w.people}
        first = replace(self, crew=tuple(p for p in self.crew if p not in elsewhere), ways=())
        return (first, *(self._by(w) for w in self.ways))

    def _by(self, w: OwnWay) -> MeetingValues:
        return replace(
            self,
            crew=w.people,
            ways=(),
            car=w.car,
            leave_by=w.leave_by,
            wait_until=w.wait_until,
            drive=w.drive,
            drive_confirmed=w.drive_confirmed,
            drive_from=w.drive_from,
            next_meeting=w.next_meeting,
            p_both=w.p_both,
            lost=w.lost,
            p_comes=w.p_comes,
        )


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
        )
        for m in parties
        if m is not first
    )
    return replace(first, crew=crew, ways=rest)


@dataclass(frozen=True, slots=True)
class SightingValues:
    """She is in, out, through or finished at a point; with what to have ready and what comes next."""

    point: str
    at: datetime
    told_by: str
    through: bool = False
    kit: tuple[str, ...] = ()
    food: str = ""
    planned_stop: timedelta | None = None
    next_window: Window | None = None
    next_meeting: MeetingValues | None = None
    take_back: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CutOffValues:
    """The odds of a cut-off have crossed a level; `latest_out` of the point before for 90%."""

    point: str
    edge: str
    cut_off: datetime
    odds: float
    level: float
    falling: bool
    latest_out_point: str | None = None
    latest_out: datetime | None = None


@dataclass(frozen=True, slots=True)
class LateValues:
    """Now is past the 90% time as it stood at the last fact heard: a question."""

    point: str
    window: Window
    last_known: LastKnown | None


@dataclass(frozen=True, slots=True)
class Heard:
    """Words about her with no place: when they were true, who sent them."""

    at: datetime
    by: str
    words: str


@dataclass(frozen=True, slots=True)
class Unsure:
    """A report of her that is kept unconfirmed: what it says, of which point, when, by whom."""

    kind: str
    point: str | None
    at: datetime
    by: str


@dataclass(frozen=True, slots=True)
class AlarmValues:
    """An alarm (overdue, asked for help, sweep through without her, look again, handed on).

    `step` is that of the ladder, -1 for what only tells. `gave_back`: who held it and can't any more.
    `heard_since`: what was heard of her after the last known point, where that named no place; `unconfirmed`: the
    reports after it that are kept and do not count. `said_km`, `said_fix`: where the words of the call put her.
    `contact_lost`: since when her shared position has ended, with nothing heard of her since.
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
class StandDownValues:
    """An alarm is over, why, and who said so."""

    alarm: str
    of_kind: str
    reason: str
    by: str
    at: datetime
    point: str | None = None


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


@dataclass(frozen=True, slots=True)
class BriefValues:
    """Before crew leave signal: the next meetings, when to move on, what to do if nothing is heard."""

    meetings: tuple[MeetingValues, ...]
    signal_back_at: str | None


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


@dataclass(frozen=True, slots=True)
class TestAlarmValues:
    """The test alarm before the start."""

    answer_by: datetime


Values = (
    MeetingValues
    | SightingValues
    | CutOffValues
    | LateValues
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
