"""A notice in words: the answer in the first line, then what goes with it. One function a kind, in a table.

Who is asked for an answer finds it as buttons below; each button carries the notice's short number.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime
from typing import TypeVar

from server.event.model import Event
from server.watch.notice import (
    AlarmValues,
    BriefValues,
    CorrectionValues,
    CutOffValues,
    DoubtValues,
    InHandValues,
    LateValues,
    MeetingValues,
    Notice,
    NoticeKind,
    OutageValues,
    RaceChangeValues,
    RetiredValues,
    SightingValues,
    StandDownValues,
    TestAlarmValues,
    UnnamedHelpValues,
    UnreachedValues,
    Values,
    Waits,
    WordValues,
)
from server.wording import alarm, news, retired, unnamed, word_of_her
from server.wording.message import Button, Message, Press, Rows, data, event_mark, tag
from server.wording.reader import Reader
from server.wording.say import SayInEvent, lines, slug
from server.wording.sentences import has, sentence

V = TypeVar("V", bound=Values)
Wording = Callable[[SayInEvent, Notice], str]


def _of(kind: type[V], word: Callable[[SayInEvent, V], str]) -> Wording:
    """A wording that takes the values alone and says which it expects."""

    def worded(say: SayInEvent, notice: Notice) -> str:
        if not isinstance(notice.values, kind):
            raise TypeError(
                f"a notice '{notice.key.kind.value}' holds {kind.__name__}, "
                f"not {type(notice.values).__name__}"
            )
        return word(say, notice.values)

    return worded


def _alarm(say: SayInEvent, notice: Notice) -> str:
    return _of(AlarmValues, lambda s, v: alarm.alarm(s, v, notice.key.kind, notice.key.person))(say, notice)


def _race_change(say: SayInEvent, notice: Notice) -> str:
    return _of(RaceChangeValues, lambda s, v: news.race_change(s, v, notice.key.person))(say, notice)


def _left(say: SayInEvent, notice: Notice) -> str:
    return _of(SightingValues, lambda s, v: news.left(s, v, notice.key.person))(say, notice)


def _correction(say: SayInEvent, notice: Notice) -> str:
    """What was told: a fact, words of how she is, that somebody has her."""

    def worded(say: SayInEvent, v: CorrectionValues) -> str:
        if v.was_kind == NoticeKind.WORD_OF_HER.value:
            return word_of_her.word_taken_back(say, v)
        if v.was_kind == Waits.IN_HAND.value:
            return retired.in_hand_taken_back(say)
        return lines(news.correction(say, v), retired.tell_race_control(say, v, notice.key.person))

    return _of(CorrectionValues, worded)(say, notice)


def _retired(say: SayInEvent, notice: Notice) -> str:
    return _of(RetiredValues, lambda s, v: retired.retired(s, v, notice.key.person))(say, notice)


def _finished(say: SayInEvent, notice: Notice) -> str:
    return _of(SightingValues, lambda s, v: news.finished(s, v, asked=notice.needs_answer))(say, notice)


def _unnamed(say: SayInEvent, notice: Notice) -> str:
    def worded(s: SayInEvent, v: UnnamedHelpValues) -> str:
        return unnamed.unnamed_help(s, v, notice.key.person, asked=notice.needs_answer)

    return _of(UnnamedHelpValues, worded)(say, notice)


def _sweep(say: SayInEvent, notice: Notice) -> str:
    """The sweep without her goes out as an alarm where alarm values are given, else as plain news."""
    if isinstance(notice.values, AlarmValues):
        return _alarm(say, notice)
    return say.s("sweep", place=say.point(notice.key.point), runner=say.runner)


TABLE: Mapping[NoticeKind, Wording] = {
    NoticeKind.LEAVE_NOW: _of(MeetingValues, news.leave_now),
    NoticeKind.BE_THERE: _of(MeetingValues, news.be_there),
    NoticeKind.MOVE_ON: _of(MeetingValues, news.move_on),
    NoticeKind.WINDOW_MOVED: _of(MeetingValues, news.window_moved),
    NoticeKind.MEETING_LOST: _of(MeetingValues, news.meeting_lost),
    NoticeKind.WAKE_UP: _of(MeetingValues, news.wake_up),
    NoticeKind.BRIEF: _of(BriefValues, news.brief),
    NoticeKind.ARRIVED: _of(SightingValues, news.arrived),
    NoticeKind.LEFT: _left,
    NoticeKind.FINISHED: _finished,
    NoticeKind.CUT_OFF_ODDS: _of(CutOffValues, news.cut_off_odds),
    NoticeKind.LATE: _of(LateValues, news.late),
    NoticeKind.RETIRED: _retired,
    NoticeKind.IN_HAND: _of(InHandValues, retired.in_hand),
    NoticeKind.RACE_CHANGE: _race_change,
    NoticeKind.OVERDUE: _alarm,
    NoticeKind.ASKED_FOR_HELP: _alarm,
    NoticeKind.LOOK_AGAIN: _alarm,
    NoticeKind.HANDED_ON: _alarm,
    NoticeKind.SWEEP: _sweep,
    NoticeKind.STAND_DOWN: _of(StandDownValues, alarm.stand_down),
    NoticeKind.TEST_ALARM: _of(TestAlarmValues, alarm.test_alarm),
    NoticeKind.UNREACHED: _of(UnreachedValues, alarm.unreached),
    NoticeKind.OUTAGE: _of(OutageValues, alarm.outage),
    NoticeKind.CORRECTION: _correction,
    NoticeKind.WORD_OF_HER: _of(WordValues, word_of_her.word_of_her),
    NoticeKind.HELP_NOT_NAMED: _unnamed,
    NoticeKind.UNCONFIRMED: _of(DoubtValues, news.unconfirmed),
}

ANSWERS: Mapping[NoticeKind, tuple[str, ...]] = {
    NoticeKind.LEAVE_NOW: ("on our way", "cannot"),
    NoticeKind.WAKE_UP: ("awake", "cannot"),
    NoticeKind.LATE: ("yes", "not yet", "nobody there"),
    NoticeKind.OVERDUE: ("i have it", "cannot"),
    NoticeKind.ASKED_FOR_HELP: ("i have it", "cannot"),
    NoticeKind.SWEEP: ("i have it", "cannot"),
    NoticeKind.HANDED_ON: ("i have it", "cannot"),
    NoticeKind.LOOK_AGAIN: ("seen", "still missing"),
    NoticeKind.HELP_NOT_NAMED: ("i have it", "cannot"),
    NoticeKind.TEST_ALARM: ("i have it",),
    NoticeKind.RETIRED: ("i go", "in hand", "race control told"),
    NoticeKind.FINISHED: ("in hand",),
}
"""The answers under a notice when the watch names none of its own."""


def say_notice(
    notice: Notice,
    event: Event,
    reader: Reader,
    now: datetime,
    delayed: bool = False,
    repeat: bool = False,
    short: int = 0,
) -> Message:
    """A notice for one reader at `now`, with its buttons.

    `delayed`: it goes out past its use-by, with the facts as they stand now. `repeat`: an earlier attempt may
    have arrived. `short` is the notice's short number (0 = none yet, so no buttons can carry an answer).
    """
    say = SayInEvent(reader, now, event, notice.key.runner)
    text = TABLE[notice.key.kind](say, notice)
    if repeat:
        text = say.s("mark-repeat", text=text, short=short)
    if delayed or notice.delayed:
        text = say.s("mark-delayed", text=text, when=say.when(notice.owed_at))
    if notice.needs_answer and short:
        text = lines(text, say.s("mark-number", short=str(short)))
    return Message(text, answer_buttons(notice, reader, short))


def answer_buttons(notice: Notice, reader: Reader, short: int) -> Rows:
    """One row a button: thumbs are cold. Those asking about an entry carry its id instead of a number."""

    def say(key: str, **values: str) -> str:
        return sentence(reader.language, key, **values)

    if notice.key.kind is NoticeKind.UNCONFIRMED and isinstance(notice.values, DoubtValues):
        fields = (notice.values.entry, str(short), event_mark(notice.key.event))
        return (
            (Button(say("button-right"), data(Press.CONFIRM, *fields)),),
            (Button(say("button-wrong"), data(Press.UNDO, *fields)),),
        )
    if not short:
        return ()
    if isinstance(notice.values, UnnamedHelpValues) and notice.values.holder == notice.key.person:
        # Whoever has it finds out, and may find that it was nothing.
        undo = data(Press.UNDO, notice.values.call, "0", event_mark(notice.key.event))
        return ((Button(say("button-was-nothing"), undo),),)
    words = notice.buttons or (ANSWERS.get(notice.key.kind, ()) if notice.needs_answer else ())
    point, runner, event = tag(notice.key.point), tag(notice.key.runner), event_mark(notice.key.event)
    return tuple(
        (Button(say(label_key(w), word=w), data(Press.ANSWER, str(short), w, point, runner, event)),)
        for w in words
    )


def label_key(word: str) -> str:
    """The sentence that labels an answer; one without a label of its own shows itself."""
    key = f"button-{slug(word)}"
    return key if has(key) else "button-other"
