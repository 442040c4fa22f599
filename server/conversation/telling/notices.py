"""A notice in words: the answer in the first line, then what goes with it. One function a kind, in a table.

Who is asked for an answer finds it as buttons below; each button carries the notice's short number.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime
from typing import TypeVar

from server.conversation.telling import (
    alarm,
    before_dark,
    call_back,
    condition_updates,
    late_home,
    missed,
    new_version,
    news,
    past_cut_off,
    requests,
    retired,
    trackers,
    uncovered,
    unnamed,
)
from server.conversation.telling.message import (
    Button,
    Message,
    Press,
    Rows,
    data,
    event_mark,
    tag,
    told_apart,
)
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import SayInEvent, lines, slug
from server.event.model import Event
from server.sentences import has, sentence
from server.watch.hearsay import SEEN_SINCE
from server.watch.notice import (
    AlarmNewsValues,
    AlarmValues,
    BeforeDarkValues,
    BriefValues,
    CallBackValues,
    CorrectionValues,
    CutOffValues,
    DoubtValues,
    InHandValues,
    LateHomeValues,
    LateValues,
    LookBackValues,
    MeanwhileValues,
    MeetingValues,
    NewVersionValues,
    Notice,
    NoticeKind,
    OutageValues,
    PassedOnValues,
    PastCutOffValues,
    RaceChangeValues,
    ReminderValues,
    RetiredValues,
    SightingValues,
    StandDownValues,
    StandsValues,
    StayValues,
    SwapValues,
    TestAlarmValues,
    UncoveredValues,
    UnnamedHelpValues,
    UnreachedValues,
    Values,
    Waits,
    WordValues,
)

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
        if v.was_kind in (NoticeKind.WORD_OF_HER.value, NoticeKind.MEANWHILE.value):
            return condition_updates.word_taken_back(say, v)
        if v.was_kind == SEEN_SINCE:
            return retired.seen_since(say, v)
        if v.was_kind == Waits.IN_HAND.value:
            return retired.in_hand_taken_back(say)
        return lines(news.correction(say, v), retired.tell_race_control(say, v, notice.key.person))

    return _of(CorrectionValues, worded)(say, notice)


def _retired(say: SayInEvent, notice: Notice) -> str:
    return _of(RetiredValues, lambda s, v: retired.retired(s, v, notice.key.person))(say, notice)


def _past_cut_off(say: SayInEvent, notice: Notice) -> str:
    return _of(PastCutOffValues, lambda s, v: past_cut_off.notice(s, v, notice.key.person))(say, notice)


def _finished(say: SayInEvent, notice: Notice) -> str:
    return _of(SightingValues, lambda s, v: news.finished(s, v, asked=notice.needs_answer))(say, notice)


def _before_dark(say: SayInEvent, notice: Notice) -> str:
    return _of(BeforeDarkValues, lambda s, v: before_dark.before_dark(s, v, notice.key.person))(say, notice)


def _stay(say: SayInEvent, notice: Notice) -> str:
    return _of(StayValues, lambda s, v: missed.stay(s, v, notice.key.person))(say, notice)


def _unnamed(say: SayInEvent, notice: Notice) -> str:
    def worded(s: SayInEvent, v: UnnamedHelpValues) -> str:
        return unnamed.unnamed_help(s, v, notice.key.person, asked=notice.needs_answer)

    return _of(UnnamedHelpValues, worded)(say, notice)


def _uncovered(say: SayInEvent, notice: Notice) -> str:
    return _of(UncoveredValues, lambda s, v: uncovered.uncovered(s, v, notice.key.person))(say, notice)


def _covered(say: SayInEvent, notice: Notice) -> str:
    return _of(UncoveredValues, lambda s, v: uncovered.covered(s, v, notice.key.person))(say, notice)


def _call_back(say: SayInEvent, notice: Notice) -> str:
    return _of(CallBackValues, lambda s, v: call_back.call_back(s, v, notice.key.person))(say, notice)


def _sweep(say: SayInEvent, notice: Notice) -> str:
    """The sweep without her goes out as an alarm where alarm values are given, else as plain news."""
    if isinstance(notice.values, AlarmValues):
        return _alarm(say, notice)
    return say.s("sweep", place=say.point(notice.key.point), runner=say.runner)


TABLE: Mapping[NoticeKind, Wording] = {
    NoticeKind.LEAVE_SOON: _of(MeetingValues, news.leave_soon),
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
    NoticeKind.BEFORE_DARK: _before_dark,
    NoticeKind.LATE: _of(LateValues, news.late),
    NoticeKind.STAY: _stay,
    NoticeKind.STANDS: _of(StandsValues, trackers.stands),
    NoticeKind.LATE_HOME: _of(LateHomeValues, late_home.late_home),
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
    NoticeKind.WORD_OF_HER: _of(WordValues, condition_updates.word_of_her),
    NoticeKind.HELP_NOT_NAMED: _unnamed,
    NoticeKind.CALL_BACK: _call_back,
    NoticeKind.MEANWHILE: _of(MeanwhileValues, call_back.meanwhile),
    NoticeKind.ALARM_NEWS: _of(AlarmNewsValues, call_back.alarm_news),
    NoticeKind.ALARM_KNOWN: _alarm,
    NoticeKind.READ_OUT: _alarm,
    NoticeKind.UNCONFIRMED: _of(DoubtValues, news.unconfirmed),
    NoticeKind.PAST_CUT_OFF: _past_cut_off,
    NoticeKind.UNCOVERED: _uncovered,
    NoticeKind.NEW_VERSION: _of(NewVersionValues, new_version.new_version),
    NoticeKind.COVERED: _covered,
    NoticeKind.PASSED_ON: _of(PassedOnValues, requests.passed_on),
    NoticeKind.SWAP: _of(SwapValues, requests.swap),
    NoticeKind.REMINDER: _of(ReminderValues, requests.reminder),
    NoticeKind.LOOK_BACK: _of(LookBackValues, requests.look_back),
}

_ASK_MORE = frozenset(
    {
        NoticeKind.OVERDUE,
        NoticeKind.ASKED_FOR_HELP,
        NoticeKind.SWEEP,
        NoticeKind.HANDED_ON,
        NoticeKind.LOOK_AGAIN,
    }
)
"""Alarms: what is known, and what to read out, are a press away."""
ALARM_KNOWN, ALARM_TELL = "alarm known", "alarm tell"
"""The words of those questions, as a button carries them."""

ANSWERS: Mapping[NoticeKind, tuple[str, ...]] = {
    NoticeKind.LEAVE_SOON: ("on our way", "cannot"),
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
    NoticeKind.PAST_CUT_OFF: ("goes on", "race over"),
    NoticeKind.UNCOVERED: ("i go", "cannot"),
    NoticeKind.SWAP: ("i go", "cannot"),
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
    if (notice.needs_answer or notice.buttons) and short and notice.key.kind is not NoticeKind.UNCONFIRMED:
        text = lines(text, say.s("mark-number", short=str(short)))
    if event.exercise:
        text = say.s("mark-exercise", text=text)
    return Message(text, told_apart(answer_buttons(notice, reader, short)))


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
    rows = tuple(
        (
            Button(
                say(label_key(w, notice.key.kind.value), word=w),
                data(Press.ANSWER, str(short), w, point, runner, event),
            ),
        )
        for w in words
    )
    if not rows or notice.key.kind not in _ASK_MORE:
        return rows
    more = (("button-alarm-known", ALARM_KNOWN), ("button-alarm-tell", ALARM_TELL))
    return (*rows, *((Button(say(key), data(Press.ASK, word, "", runner, event)),) for key, word in more))


def label_key(word: str, kind: str = "") -> str:
    """The sentence that labels an answer, under a notice of that kind; one without a label of its own shows itself."""
    keys = (f"button-{slug(kind)}-{slug(word)}" if kind else "", f"button-{slug(word)}")
    return next((k for k in keys if k and has(k)), "button-other")
