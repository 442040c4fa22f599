"""Every kind of notice in words, for every kind of reader: sound, the answer first, nothing left out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest

from server.conversation.telling import notices
from server.conversation.telling.message import Press, event_mark, read_data
from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import slug
from server.event.model import Event
from server.facts.cut_offs import Past
from server.facts.entry import Fix
from server.facts.state import LastKnown
from server.forecast.outlook import Whereabouts, Window
from server.sentences import languages, sentence
from server.watch.hearsay import SEEN_SINCE
from server.watch.news_values import Fetcher, PickUp
from server.watch.notice import (
    AlarmNewsValues,
    AlarmValues,
    BeforeDarkValues,
    BriefValues,
    CallBackValues,
    CorrectionValues,
    CutOffValues,
    DoubtValues,
    Ear,
    Heard,
    InHandValues,
    LateHomeValues,
    LateValues,
    LookBackValues,
    MeanwhileValues,
    MeetingValues,
    NewVersionValues,
    Notice,
    NoticeKey,
    NoticeKind,
    NoWord,
    Out,
    OutageValues,
    PassedOnValues,
    PastCutOffValues,
    PlanItem,
    RaceChangeValues,
    ReminderValues,
    RetiredValues,
    SightingValues,
    StandDownValues,
    StandIn,
    StandsValues,
    StayValues,
    SwapValues,
    TestAlarmValues,
    TrackerSays,
    UncoveredValues,
    UnnamedHelpValues,
    UnreachedValues,
    Unsure,
    Urgency,
    Values,
    Waits,
    WhyNow,
    WordValues,
)

NOW = datetime.fromisoformat("2027-06-19T14:10+00:00")


def in_minutes(minutes: int) -> datetime:
    """That many minutes from now."""
    return NOW + timedelta(minutes=minutes)


WINDOW = Window("lathe", in_minutes(62), in_minutes(93), in_minutes(158))
LAST = LastKnown("x1", "out", "mill", 21.0, None, in_minutes(-65), "ana", in_minutes(-60))
MEETING = MeetingValues(
    meeting="lathe-maren",
    point="lathe",
    window=WINDOW,
    leave_by=in_minutes(23),
    be_there=in_minutes(58),
    wait_until=in_minutes(171),
    drive=timedelta(minutes=32),
    kit=("poles", "head torch"),
    food="soup",
    if_missed="drive on to the finish",
    no_signal=True,
)
TOMAS_COULD = StandIn("tomas", in_minutes(23), in_minutes(40), timedelta(minutes=32), True, "mill", 0.97)
OPEN = UncoveredValues(
    meeting="lathe-maren",
    point="lathe",
    ear=Ear.OTHERS,
    fallen=(Out("ana", "car", "ana", "the van will not start"),),
    window=WINDOW,
    out=("ana",),
    stand_ins=(TOMAS_COULD,),
    kit=("poles", "head torch"),
    missing=("poles", "head torch"),
)
ALARM = AlarmValues(
    alarm="a",
    of_kind="overdue",
    point="lathe",
    last_known=LAST,
    expected=Window("lathe", in_minutes(-200), in_minutes(-160), in_minutes(-95)),
    where=Whereabouts(51.2, 57.8, 60.1),
    where_fix=(54.91234, -2.61234),
    asked=("ana",),
    told=("ana",),
    caller="ines",
    holder=None,
    step=1,
    pacer="tomas",
)
CLOSED = replace(
    ALARM,
    of_kind="asked for help",
    point=None,
    expected=None,
    where=None,
    where_fix=None,
    race_over=in_minutes(-90),
    had_by="ana",
    had_at=in_minutes(-80),
)
BACK = CallBackValues("a", "asked", in_minutes(-5), "ana", ("ines", "tomas"))
SINCE = MeanwhileValues(
    "a", "e1", "word on a call for help", in_minutes(-2), "maren", "still here,\nnobody came"
)
CALLED = UnnamedHelpValues(
    "e-0123456789abcdef0123", "ana", "she needs help", in_minutes(-3), ("ines", "sasha")
)
NAMED = replace(CLOSED, race_over=None, had_by="", step=-1, named_by="ana")
HAS_HER = {"in_hand": True, "in_hand_by": "tomas", "in_hand_at": in_minutes(-2)}
SIGHTING = SightingValues("lathe", in_minutes(-2), "ana", kit=("poles",), food="soup", next_window=WINDOW)

FETCHER = Fetcher("ana", "", "start", said=True, drive=timedelta(minutes=40), confirmed=True)
FETCHES = (
    PickUp(
        "lathe", None, FETCHER, goes=False, others=(FETCHER,), bring=("blanket",), transport="bus on the hour"
    ),
    PickUp("lathe", LAST, replace(FETCHER, said=False, confirmed=False, busy="lathe"), goes=False),
    PickUp("lathe", None, replace(FETCHER, person="tomas", drive=timedelta(0)), goes=False),
    PickUp("lathe", None, replace(FETCHER, drive=None), goes=True, there_by=in_minutes(40)),
    PickUp(None, None, None, goes=False),
)
MISSED = PastCutOffValues(
    "lathe", "out", in_minutes(-20), Past.IN_AFTER.value, in_minutes(-9), "tomas", "lathe"
)

EXAMPLES: dict[NoticeKind, tuple[Values, ...]] = {
    NoticeKind.LEAVE_SOON: (MEETING,),
    NoticeKind.LEAVE_NOW: (
        MEETING,
        replace(MEETING, leave_by=None, drive=None),
        replace(MEETING, leave_by=in_minutes(-5)),
    ),
    NoticeKind.BE_THERE: (MEETING,),
    NoticeKind.MOVE_ON: (MEETING, replace(MEETING, next_meeting="finish", if_missed="")),
    NoticeKind.WINDOW_MOVED: (
        replace(MEETING, was=WINDOW, was_leave_by=in_minutes(3)),
        replace(MEETING, leave_by=None),
    ),
    NoticeKind.MEETING_LOST: tuple(
        replace(MEETING, lost=why, next_meeting="finish")
        for why in ("access closed", "not both", "too late", "she has left", "")
    ),
    NoticeKind.WAKE_UP: (MEETING, replace(MEETING, leave_by=None)),
    NoticeKind.BRIEF: (
        BriefValues((MEETING,), None),
        BriefValues((MEETING, replace(MEETING, point="finish", leave_by=None)), "finish"),
    ),
    NoticeKind.ARRIVED: (
        replace(SIGHTING, planned_stop=timedelta(minutes=20)),
        replace(SIGHTING, through=True, next_window=None),
    ),
    NoticeKind.LEFT: (SIGHTING, replace(SIGHTING, through=True)),
    NoticeKind.FINISHED: (replace(SIGHTING, point="finish", next_window=None),),
    NoticeKind.CUT_OFF_ODDS: (
        CutOffValues("lathe", "in", in_minutes(200), 0.47, 0.5, True, "mill", in_minutes(30)),
        CutOffValues("lathe", "out", in_minutes(200), 0.83, 0.8, False, "mill", in_minutes(-30)),
        CutOffValues("lathe", "out", in_minutes(200), 0.01, 0.2, True),
    ),
    NoticeKind.BEFORE_DARK: (
        BeforeDarkValues(
            "lathe", ("head torch",), in_minutes(90), WINDOW, ("ana",), "mill", WINDOW, ("tomas",)
        ),
        BeforeDarkValues("lathe", ("head torch",), in_minutes(90), WINDOW, ("ana",), "mill", WINDOW),
        BeforeDarkValues("lathe", ("head torch",), in_minutes(90), WINDOW, ("ana",), "mill"),
        BeforeDarkValues("lathe", ("head torch", "warm layer"), in_minutes(90), WINDOW),
    ),
    NoticeKind.LATE: (LateValues("lathe", WINDOW, LAST), LateValues("lathe", WINDOW, None)),
    NoticeKind.STANDS: (
        StandsValues(in_minutes(-90), in_minutes(-20), 31.2, (54.5, -2.6)),
        StandsValues(in_minutes(-90), in_minutes(-20), None, (54.5, -2.6), "lathe"),
    ),
    NoticeKind.STAY: (
        StayValues("lathe", ("ana",), (), in_minutes(-300), LAST),
        StayValues(
            "lathe", ("ines", "tomas"), ("ana",), in_minutes(-300), LAST, sought=True, next_point="finish"
        ),
        StayValues("lathe", ("ana",), ("ines",), in_minutes(-300), None, next_point="finish"),
    ),
    NoticeKind.LATE_HOME: (
        LateHomeValues("lathe", WINDOW, LAST, alarm_at=in_minutes(70)),
        LateHomeValues("lathe", WINDOW, None, no_word=(NoWord("ana", in_minutes(-30)),)),
        LateHomeValues("lathe", WINDOW, LAST, tracker=TrackerSays(31.2, in_minutes(-90), quiet=True)),
        LateHomeValues(
            "lathe",
            WINDOW,
            LAST,
            tracker=TrackerSays(31.2, in_minutes(-30), False, "mill", in_minutes(-65), "ana"),
        ),
    ),
    NoticeKind.RETIRED: (
        RetiredValues("timed out", "lathe", in_minutes(-9), "ana", "too slow today", False, False, ("ana",)),
        RetiredValues("own choice", None, in_minutes(-9), "ana", in_hand=True, race_control_knows=True),
        RetiredValues("withdrawn by medics or officials", "lathe", in_minutes(-9), "ana"),
        RetiredValues("did not start", "start", in_minutes(-9), "ana"),
        RetiredValues("own choice", "lathe", in_minutes(-9), "tomas", pick_up_by=("ana",), caller="ines"),
        RetiredValues("own choice", "lathe", in_minutes(-9), "tomas", pick_up_by=("ana",), caller="ana"),
        *(
            RetiredValues(
                "own choice", None, in_minutes(-9), "tomas", pick_up_by=("ana",), waits=waits, fetch=fetch
            )
            for waits in (Waits.NEWS, Waits.GOES, Waits.HAND)
            for fetch in FETCHES
        ),
        *(
            RetiredValues("own choice", "lathe", in_minutes(-9), "tomas", caller="ana", waits=waits, **more)
            for waits, more in (
                (Waits.HAND, {"pick_up_by": ("ana",)}),
                (Waits.RACE_CONTROL, {"pick_up_by": ("ana",)}),
                (Waits.RACE_CONTROL, HAS_HER),
                (Waits.IN_HAND, HAS_HER),
            )
        ),
    ),
    NoticeKind.IN_HAND: (
        InHandValues(in_minutes(-3), "ana", "lathe", 61.0, "she is in our tent"),
        InHandValues(in_minutes(-3), "tomas", alarm_open=True),
    ),
    NoticeKind.PAST_CUT_OFF: (
        *(replace(MISSED, how=how.value, seen_at=seen) for how in Past for seen in ("lathe", "start", None)),
        replace(MISSED, asked=("ana", "tomas"), here=True),
        replace(MISSED, asked=("tomas",), next_point="lathe", leave_by=in_minutes(30)),
        replace(MISSED, asked=("ana",)),
        *(replace(MISSED, over=over) for over in ("goes on", "moved", "wrong")),
        replace(MISSED, over="goes on", seen_at=None),
    ),
    NoticeKind.RACE_CHANGE: tuple(
        RaceChangeValues(change, point, until, amount, words, "ana")
        for change, point, until, amount, words in (
            ("start delayed", None, in_minutes(60), timedelta(minutes=30), "fog"),
            ("start delayed", None, None, timedelta(minutes=30), ""),
            ("wave moved", None, in_minutes(60), None, ""),
            ("runners held", "lathe", None, None, "thunder"),
            ("runners held", None, in_minutes(30), None, ""),
            ("runners released", "lathe", None, None, ""),
            ("race ended early", None, None, None, ""),
            ("rerouted", "lathe", None, None, ""),
            ("cut-off moved", "lathe", in_minutes(300), None, ""),
            ("access closed", "lathe", in_minutes(300), None, ""),
            ("access opened", "lathe", None, None, ""),
            ("something new", None, None, None, ""),
        )
    ),
    NoticeKind.OVERDUE: (ALARM, replace(ALARM, last_known=None, where=None, where_fix=None, expected=None)),
    NoticeKind.ASKED_FOR_HELP: (
        replace(ALARM, of_kind="asked for help", words="my knee", point=None),
        CLOSED,
        replace(CLOSED, had_by=""),
        replace(CLOSED, race_over=None, not_named_by="ana"),
    ),
    NoticeKind.SWEEP: (replace(ALARM, of_kind="sweep"), replace(SIGHTING, point="lathe")),
    NoticeKind.LOOK_AGAIN: (replace(ALARM, holder="ines", look_again=in_minutes(20)), ALARM),
    NoticeKind.HANDED_ON: (ALARM, replace(ALARM, caller=None, pacer=None, told=()), NAMED),
    NoticeKind.STAND_DOWN: (
        StandDownValues("a", "overdue", "seen", "ana", NOW, "lathe"),
        StandDownValues("a", "asked for help", "taken back", "ana", NOW),
        StandDownValues("a", "asked for help", "taken back", "ana", NOW, meant="maren"),
        StandDownValues("a", "sweep", "stand-down", "ana", NOW),
    ),
    NoticeKind.CORRECTION: (
        CorrectionValues("in", "lathe", in_minutes(-40), in_minutes(-20), False, "ana"),
        CorrectionValues("in", "lathe", None, in_minutes(-20), False, "ana"),
        CorrectionValues("retired", "lathe", in_minutes(-40), None, True, "ana"),
        CorrectionValues("finished", None, None, None, False, "ana"),
        CorrectionValues("in hand", None, None, None, True, ""),
        CorrectionValues(
            SEEN_SINCE, "lathe", in_minutes(-20), in_minutes(-2), False, "ana", "said by a runner"
        ),
        CorrectionValues("word of her", None, in_minutes(-9), None, True, "", "feet bad"),
    ),
    NoticeKind.WORD_OF_HER: tuple(
        WordValues("e-1", "sitting on a wall, feel sick", in_minutes(-4), "ana", going, **more)
        for going, more in (
            ("resting", {"since": in_minutes(-4), "until": in_minutes(16), "next_window": WINDOW}),
            ("resting", {"since": in_minutes(-4), "next_window": WINDOW}),
            ("moving", {"next_window": WINDOW}),
            ("moving", {"since": in_minutes(-1)}),
            ("at a point", {"since": in_minutes(-1), "point": "lathe"}),
            ("before the start", {}),
            ("retired", {}),
        )
    ),
    NoticeKind.UNCOVERED: (
        OPEN,
        replace(OPEN, ear=Ear.STAND_IN, again=True, also=(("finish", WINDOW),), kit_car="~ana"),
        *(
            replace(OPEN, ear=Ear.STAND_IN, stand_ins=(replace(TOMAS_COULD, **how), TOMAS_COULD))
            for how in (
                {"person": "ines", "leave_by": None, "drive_confirmed": False, "p_meets": 0.5},
                {"person": "ines", "leave_by": in_minutes(-5), "gives_up": ("lathe-maren",)},
                {"person": "ines", "leave_by": None, "there": None, "drive_from": None},
                {"person": "ines", "drive": None},
            )
        ),
        replace(OPEN, stand_ins=()),
        replace(OPEN, goes=("ines",), pacer="tomas", stand_ins=(), missing=()),
        replace(OPEN, goes=("ines", "tomas"), stand_ins=(), fallen=(Out("ana", "not said", "ana"),)),
        replace(OPEN, ear=Ear.ALONE, fallen=(Out("tomas", "pacer", "tomas", "twisted my ankle"),)),
        replace(OPEN, ear=Ear.ALONE),
        replace(OPEN, ear=Ear.FALLEN, fallen=(Out("ana", "driver", "ines"),)),
        *(
            replace(OPEN, ear=ear, before=before, **more)
            for ear in (Ear.HER, Ear.MEETS_HER)
            for before, more in (("mill", {}), (None, {}), ("mill", {"goes": ("ines",), "pacer": "tomas"}))
        ),
        replace(OPEN, ear=Ear.MEETS_HER, before="mill", goes=("ines",)),
        *(
            replace(OPEN, ear=Ear.GOES, goes=("ines",), driver=driver, missing=())
            for driver in (None, "ines", "tomas", "maren")
        ),
    ),
    NoticeKind.PASSED_ON: (
        PassedOnValues("e-1", "ana", "bring socks", in_minutes(-1)),
        PassedOnValues("e-1", "ana", "at the weir", in_minutes(-1), "lathe-maren", "lathe"),
        PassedOnValues("e-1", "ana", "bring socks", in_minutes(-1), taken_back=True),
    ),
    NoticeKind.SWAP: (
        SwapValues(
            "e-1", "ana", "tomas", "lathe-maren", "lathe", "can tomas go?", MEETING.window, in_minutes(60)
        ),
        SwapValues("e-1", "ana", "tomas", "lathe-maren", "lathe", "can tomas go?", refused=True),
    ),
    NoticeKind.REMINDER: (
        ReminderValues("e-1", "remind me to fill the bottles", in_minutes(-90)),
        ReminderValues("e-1", "wake me first", in_minutes(-90), "lathe", "in", "soon", window=MEETING.window),
    ),
    NoticeKind.LOOK_BACK: (LookBackValues(in_minutes(-720)),),
    NoticeKind.NEW_VERSION: (
        NewVersionValues(
            3,
            (
                *(
                    PlanItem(w, "maren", "lathe", "poles", "")
                    for w in ("kit", "take-back", "food", "if-missed")
                ),
                *(
                    PlanItem(w, "maren", "lathe", "", "van")
                    for w in ("place", "parking", "crew", "car", "from", "pacer")
                ),
                PlanItem("meeting", "maren", "lathe", "Ana", ""),
                PlanItem("meeting", "maren", "mill", "", "Ana · van"),
                PlanItem("post", "", "mill", "lathe", "mill"),
            ),
        ),
    ),
    NoticeKind.COVERED: (
        replace(OPEN, by="tomas"),
        *(
            replace(OPEN, by="ines", ear=Ear.STAND_IN, meeting_now=m, kit_car="~ana")
            for m in (MEETING, replace(MEETING, leave_by=None), replace(MEETING, leave_by=in_minutes(-5)))
        ),
        replace(OPEN, by="maren", ear=Ear.STAND_IN, meeting_now=MEETING),
        replace(OPEN, by="tomas", ear=Ear.HER),
        replace(OPEN, by="tomas", ear=Ear.HER, missing=()),
        *(replace(OPEN, by=by, back=True, ear=ear, goes=("ana",)) for by in (None, "maren") for ear in Ear),
        replace(OPEN, back=True, ear=Ear.FALLEN, goes=("ana", "tomas"), meeting_now=MEETING),
    ),
    NoticeKind.UNCONFIRMED: (
        DoubtValues("e-0123456789abcdef0123", "in", "lathe", in_minutes(-3), "ana", "too-fast"),
        DoubtValues("e-0123456789abcdef0123", "position", None, in_minutes(-3), "ana", "vehicle; guessed"),
        DoubtValues("e-0123456789abcdef0123", "in", "lathe", in_minutes(-3), "ana", ""),
        DoubtValues(
            "e-0123456789abcdef0123", "retired", "lathe", in_minutes(-3), "ana", "hearsay", "she quit"
        ),
        DoubtValues("e-0123456789abcdef0123", "retired", None, in_minutes(-3), "ana", "hearsay"),
    ),
    NoticeKind.UNREACHED: (
        UnreachedValues("ana", "overdue", ("telegram", "email"), in_minutes(-20)),
        UnreachedValues("tomas", "leave now", (), in_minutes(-20)),
    ),
    NoticeKind.OUTAGE: (
        OutageValues("server", in_minutes(-30), in_minutes(-10)),
        OutageValues("channel:telegram", in_minutes(-30), None),
        OutageValues("outgoing:email", in_minutes(-30), None),
        OutageValues("outgoing:webhook", in_minutes(-30), in_minutes(-10)),
        OutageValues("channel:pigeon", in_minutes(-30), None),
    ),
    NoticeKind.TEST_ALARM: (TestAlarmValues(in_minutes(30)),),
    NoticeKind.ALARM_KNOWN: (ALARM, replace(CLOSED, by="tomas", words="she fell", raised_at=in_minutes(-9))),
    NoticeKind.READ_OUT: (ALARM, replace(CLOSED, by="tomas", words="she fell"), replace(CLOSED, by="maren")),
    NoticeKind.CALL_BACK: (
        BACK,
        replace(BACK, minutes=5),
        replace(BACK, minutes=5, asked=()),
        replace(BACK, state="held", holder="ines", at=in_minutes(-2)),
        replace(BACK, state="held", holder="ines", said=Heard(in_minutes(-1), "ines", "on my way")),
        replace(BACK, state="given back", holder="ines"),
        replace(BACK, state="lost", holder="ines", minutes=20),
        replace(BACK, state="over", reason="in hand", ended_by="ana", at=in_minutes(-1)),
    ),
    NoticeKind.MEANWHILE: (
        SINCE,
        replace(SINCE, by="ana", kind="in", point="lathe", words=""),
        replace(SINCE, by="ana", kind="in", point="lathe", words="limping", unconfirmed=True),
        replace(SINCE, kind="position", words="", fix=Fix(54.90001, -2.60002)),
        replace(SINCE, by="tomas", words="", fix=Fix(54.90001, -2.60002), own_place=True),
        replace(SINCE, by="tomas", fix=Fix(54.90001, -2.60002), own_place=True),
    ),
    NoticeKind.ALARM_NEWS: (
        AlarmNewsValues("a", "overdue", in_minutes(-20)),
        AlarmNewsValues("a", "asked for help", in_minutes(-20), "maren", "ines", "ines", "lathe"),
    ),
    NoticeKind.HELP_NOT_NAMED: (
        CALLED,
        replace(CALLED, holder="ines", words=""),
        replace(CALLED, over="named", meant="maren", ended_by="ana"),
        replace(CALLED, over="taken back", ended_by="ana"),
        replace(CALLED, over="taken back"),
    ),
}
CASES = [(kind, i) for kind, examples in EXAMPLES.items() for i in range(len(examples))]
Sound = Callable[[str], None]


def notice(kind: NoticeKind, values: Values, *, person: str = "ana", asks: bool = True) -> Notice:
    """A notice of that kind to somebody."""
    key = NoticeKey("e", "maren", person, kind, getattr(values, "point", None) or "", 1)
    return Notice(key, Urgency.ACTION, in_minutes(-1), None, asks, values)


def test_every_kind_is_worded_and_tried() -> None:
    """The table of wordings and these examples cover every kind there is."""
    assert set(notices.TABLE) == set(NoticeKind) == set(EXAMPLES)


@pytest.mark.parametrize(("kind", "number"), CASES, ids=[f"{k.value} {i}" for k, i in CASES])
def test_every_notice_is_sound(
    kind: NoticeKind, number: int, event: Event, reader: Reader, check_sound: Sound
) -> None:
    """No gap, no misleading word, no bare number, names instead of ids, buttons that fit and can be read."""
    message = say_notice(notice(kind, EXAMPLES[kind][number]), event, reader, NOW, short=12)
    check_sound(message.text)
    assert "lathe-maren" not in message.text
    assert " ana" not in message.text.replace(" and ", " ")
    assert len(message.text) <= 4096, "longer than the tightest channel takes in one piece"
    for button in (b for row in message.buttons for b in row):
        assert button.label.strip()
        assert read_data(button.data) is not None
        assert len(button.data.encode()) <= 64


@pytest.mark.parametrize(
    ("kind", "first"),
    [
        (
            NoticeKind.LEAVE_SOON,
            "Get ready: leave by 15:30 for Wether Lathe to meet Maren, be there from 16:05.",
        ),
        (NoticeKind.LEAVE_NOW, "Leave by 15:30 for Wether Lathe to meet Maren: be there from 16:05."),
        (NoticeKind.BE_THERE, "Be at Wether Lathe from 16:05 to meet Maren."),
        (NoticeKind.MOVE_ON, "Move on from Wether Lathe: Maren has very likely gone by unseen."),
        (NoticeKind.ARRIVED, "Maren is in at Wether Lathe, 15:08, reported by Ana."),
        (NoticeKind.OVERDUE, "ALARM: Maren (bib 214) is OVERDUE at Wether Lathe."),
        (
            NoticeKind.LATE,
            "Has Maren been at Wether Lathe? She is later than expected.",
        ),
        (NoticeKind.WORD_OF_HER, "Word of Maren, 15:06, reported by Ana: ‘sitting on a wall, feel sick’"),
        (NoticeKind.UNCOVERED, "Nobody goes to Wether Lathe to meet Maren now: Ana can’t (the car)."),
        (NoticeKind.PASSED_ON, "Ana says: ‘bring socks’"),
        (NoticeKind.SWAP, "Ana asks you to go to Wether Lathe to meet Maren: ‘can tomas go?’"),
        (NoticeKind.COVERED, "Tomas goes to Wether Lathe to meet Maren, for Ana."),
        (NoticeKind.STAND_DOWN, "STAND-DOWN: Maren has been seen at Wether Lathe, 15:10, reported by Ana."),
    ],
)
def test_the_first_line_is_the_answer(kind: NoticeKind, first: str, event: Event, here: Reader) -> None:
    """What to do, or what has happened, stands in the first line: it is what a locked screen shows."""
    assert say_notice(notice(kind, EXAMPLES[kind][0]), event, here, NOW).text.split("\n")[0] == first


def test_leave_by_is_earlier_and_wait_until_later(event: Event, here: Reader) -> None:
    """Rounded times err on the side on which nobody is missed: leave and be there earlier, wait longer."""
    values = replace(MEETING, leave_by=in_minutes(24), be_there=in_minutes(59), wait_until=in_minutes(171))
    text = say_notice(notice(NoticeKind.LEAVE_NOW, values), event, here, NOW).text
    assert "Leave by 15:30" in text
    assert "be there from 16:05" in text
    assert "Wait until 18:05" in text


def test_a_wait_cut_short_says_the_odds(event: Event, here: Reader) -> None:
    """Whoever has to go on before she has surely come reads how likely she comes by then, in either language."""
    values = replace(MEETING, next_meeting="finish-maren", p_comes=0.62)
    text = say_notice(notice(NoticeKind.LEAVE_NOW, values), event, here, NOW).text
    assert "then go on to your next meeting: about 6 in 10 that Maren has come by then." in text
    german = replace(here, language="de")
    assert "6 von 10" in say_notice(notice(NoticeKind.LEAVE_NOW, values), event, german, NOW).text
    whole = say_notice(notice(NoticeKind.LEAVE_NOW, replace(values, p_comes=0.96)), event, here, NOW).text
    assert "go on to your next" not in whole


def test_a_driver_too_late_is_not_hurried(event: Event, here: Reader) -> None:
    """Past the leave-by it is said plainly, with no word of haste."""
    values = replace(MEETING, leave_by=in_minutes(-5))
    text = say_notice(notice(NoticeKind.LEAVE_NOW, values), event, here, NOW).text
    assert text.startswith("Leave-by for Wether Lathe was 15:05.")
    assert "Drive as always" in text


def test_an_alarm_gives_the_numbers_of_who_does_not_answer(event: Event, here: Reader) -> None:
    """Who was asked about her and is silent, with their number and since when; the reader is not told of themselves."""
    values = replace(
        ALARM, asked=(), no_word=(NoWord("ana", in_minutes(-40)), NoWord("tomas", in_minutes(-38)))
    )
    text = say_notice(notice(NoticeKind.OVERDUE, values, person="ines"), event, here, NOW).text
    assert "No answer from Ana +44 1632 960002 and Tomas, asked Sat 14:30 whether she has come in." in text
    own = say_notice(notice(NoticeKind.OVERDUE, values, person="ana"), event, here, NOW).text
    assert "No answer from Tomas, asked" in own
    german = replace(here, language="de")
    said = say_notice(notice(NoticeKind.OVERDUE, values, person="ines"), event, german, NOW).text
    assert "Keine Antwort von Ana +44 1632 960002 und Tomas, gefragt Sa 14:30, ob sie angekommen ist." in said


HOLDS = {
    NoticeKind.OVERDUE: (
        "ALARM: Maren (bib 214) is OVERDUE at Wether Lathe.",
        "YOU call now: Race control, +44 1632 960100. Nobody else does.",
        "Danger to life: 112 at once, do not wait. Race control: +44 1632 960100.",
        "Sat 14:05 (Sat 15:05 your clock) (1 h 5 min ago), reported by Ana: 54.90001 north, 2.60002 west",
        "follow as messages of their own",
    ),
    NoticeKind.ALARM_KNOWN: (
        "FACT, last known: out of Skelter Mill Sat 14:05 (Sat 15:05 your clock) (1 h 5 min ago), reported by Ana",
        "Expected at Wether Lathe: about Sat 12:30 (11:50 to 13:35)",
        "Asked besides you: Ana.",
        "ESTIMATE, NOT SEEN: between 51 km and 61 km on the course, likely near 58 km.",
        "- Wether Lathe is reported by volunteers, and not every runner is caught;",
        "- reports from Wether Lathe can come 8 min late;",
        "- no phone signal between 50.0 km and 58.0 km;",
        "- no good phone signal at Wether Lathe;",
        "- off the course by a wrong turn",
        "- gone down on the escape route: the track west to the road.",
        "Bib 214. Phone +44 1632 960001. Clothing: orange jacket. Torch: head torch. Pacer with her: Tomas.",
        "Race control: +44 1632 960100. Emergency: 112.",
        "Mountain rescue: 112, ask for it.",
        "an aid, not a rescue service",
        "Do not go onto the course alone or in the dark",
    ),
    NoticeKind.READ_OUT: (
        "To read out:\n“This is about runner Maren, bib 214, in The Test Round.",
        "She was last known out of Skelter Mill on Saturday 14:05, local time, reported by Ana.",
        "That place: 54.90001 north, 2.60002 west (UTM 30U 525649 6083737).",
        "Estimate, not seen: she may be near 54.91234 north, 2.61234 west (UTM 30U ",
    ),
}


@pytest.mark.parametrize("kind", HOLDS)
def test_an_alarm_and_what_goes_with_it(kind: NoticeKind, event: Event, abroad: Reader) -> None:
    """The safety contact has what to do in one message, facts apart from estimates in the next, on both clocks, and what
    to read out in a third."""
    fix = Fix(54.90001, -2.60002)
    values = replace(ALARM, step=0, last_known=replace(LAST, fix=fix))
    text = say_notice(notice(kind, values, person="ines"), event, abroad, NOW, short=7).text
    for needed in HOLDS[kind]:
        assert needed in text, needed


@pytest.mark.parametrize("kind", [NoticeKind.OVERDUE, NoticeKind.ASKED_FOR_HELP, NoticeKind.LOOK_AGAIN])
def test_an_alarm_about_somebody_without_a_number(kind: NoticeKind, event: Event, here: Reader) -> None:
    """No 'bib ?' or 'bib not known' where she wears none: it is left out, wherever an alarm says it."""
    bare = replace(event, runners=tuple(replace(r, bib="") for r in event.runners))
    text = say_notice(notice(kind, replace(ALARM, of_kind=kind.value)), bare, here, NOW).text
    assert "bib" not in text.lower()
    assert "Maren" in text
    assert "  " not in text


def test_the_dark_before_her_torch_speaks_to_her(event: Event, here: Reader) -> None:
    """To herself nothing says 'her': who has the torch is told beside the meeting it is for. One who meets her meets."""
    values = EXAMPLES[NoticeKind.BEFORE_DARK][0]
    text = say_notice(notice(NoticeKind.BEFORE_DARK, values, person="maren"), event, here, NOW).text
    assert "It is with Ana, for the meeting at Wether Lathe." in text
    assert "Tomas meets you there" in text
    assert not {"her", "she"} & set(text.lower().replace(",", " ").split())


def test_what_is_brought_and_taken_back_are_apart(event: Event, here: Reader) -> None:
    """Two lines, so that nobody drives the wet shoes back to her."""
    values = replace(MEETING, kit=("head torch",), take_back=("wet shoes",))
    text = say_notice(notice(NoticeKind.LEAVE_NOW, values), event, here, NOW).text
    assert "Bring: head torch." in text
    assert "Take back there: wet shoes." in text


@pytest.mark.parametrize(
    ("to", "had"),
    [
        (
            "ines",
            "FACT: Ana wrote Sat 13:50 (1 h 20 min ago) that somebody had her. Ask Ana first where she is.",
        ),
        ("ana", "FACT: you wrote Sat 13:50 (1 h 20 min ago) that somebody had her. Where is she now?"),
    ],
)
def test_a_call_after_her_race_says_who_had_her(event: Event, here: Reader, to: str, had: str) -> None:
    """No estimate of where she went: that her race was over, and whom to ask first; to read out as well."""
    text = say_notice(notice(NoticeKind.ASKED_FOR_HELP, CLOSED, person=to), event, here, NOW).text
    assert "\nHer race was over Sat 13:40: where she went after that I can’t work out.\n" + had in text
    text = say_notice(notice(NoticeKind.READ_OUT, CLOSED, person=to), event, here, NOW).text
    assert "Her race was over on Saturday 13:40, local time." in text
    assert "On Saturday 13:50, local time, Ana sent word that somebody had her." in text
    assert "ESTIMATE" not in text


def test_who_gave_an_alarm_back_is_named(event: Event, here: Reader) -> None:
    """Those told hear in capitals that nobody has it; whoever is asked, why it comes to them."""
    back = replace(ALARM, gave_back="ana", holder=None)
    told = say_notice(notice(NoticeKind.HANDED_ON, replace(back, step=-1), asks=False), event, here, NOW).text
    assert told.startswith("Ana can't any more: NOBODY HAS THE ALARM about Maren (bib 214) NOW.")
    asked = say_notice(notice(NoticeKind.HANDED_ON, replace(back, step=1)), event, here, NOW).text
    assert asked.startswith("ALARM HANDED ON TO YOU: Maren (bib 214). Ana had it and can't any more.")


@pytest.mark.parametrize(
    ("what", "end", "said"),
    [
        ("server", -10, "Our server or its database was down from 14:40 to 15:00 (20 min)."),
        ("channel:telegram", None, "DOWN since 14:40: our Telegram bot. Reports over it come late;"),
        ("outgoing:email", None, "DOWN since 14:40: our e-mail. Notices by it wait,"),
        (
            "outgoing:email",
            -10,
            "Our e-mail was down from 14:40 to 15:00 (20 min). What waited there goes out now.",
        ),
        ("channel:pigeon", None, "DOWN since 14:40: our channel pigeon."),
    ],
)
def test_an_outage_is_called_by_its_name(
    what: str, end: float | None, said: str, event: Event, here: Reader
) -> None:
    """What was down, since when, and what that means for those who report or are told."""
    values = OutageValues(what, in_minutes(-30), None if end is None else in_minutes(end))
    assert said in say_notice(notice(NoticeKind.OUTAGE, values), event, here, NOW).text


def test_only_one_person_calls_race_control(event: Event, here: Reader) -> None:
    """The named caller is told to call, the others that they do; with nobody named, whoever answers calls."""
    other = say_notice(notice(NoticeKind.OVERDUE, ALARM, person="ana"), event, here, NOW).text
    assert "\nInes calls race control.\n" in other
    assert "YOU call" not in other
    nobody = replace(ALARM, caller=None)
    assert (
        "Whoever answers calls Race control"
        in say_notice(notice(NoticeKind.OVERDUE, nobody), event, here, NOW).text
    )


@pytest.mark.parametrize("kind", [NoticeKind.WINDOW_MOVED, NoticeKind.WAKE_UP])
def test_who_is_on_the_spot_reads_of_no_leave_by(kind: NoticeKind, event: Event, here: Reader) -> None:
    """Between loops, or there for another runner: 'leave by' would be the time to be there, and reads as a drive."""
    there = replace(MEETING, leave_by=MEETING.be_there, was=WINDOW, was_leave_by=in_minutes(3))
    text = say_notice(notice(kind, there), event, here, NOW).text
    assert "leave by" not in text.lower()
    assert "be there from" in text or "be at" in text


def test_nobody_rings_race_control_that_has_it_itself(event: Event, here: Reader) -> None:
    """Its own desk took the alarm: the others read no 'Ines calls race control'."""
    number = event.race_control.phone
    people = tuple(replace(p, phone=number) if p.id == "tomas" else p for p in event.people)
    held = replace(ALARM, holder="tomas", step=-1)
    text = say_notice(
        notice(NoticeKind.HANDED_ON, held, person="ana"), replace(event, people=people), here, NOW
    ).text
    assert "Race control itself has it" in text
    assert "calls race control" not in text


@pytest.mark.parametrize(
    ("values", "to", "first", "race_control"),
    [
        ({}, "ana", "Maren has retired at", "Race control has to know: Race control +44 1632 960100."),
        ({"caller": "ines"}, "ana", "Maren has retired at", "Ines tells race control; no need for you to ring"),
        ({"caller": "ines"}, "ines", "Maren has retired at", "You tell race control: Race control +44"),
        ({"caller": "ines", "waits": Waits.RACE_CONTROL}, "ines", "Race control still has to know that Maren has", ""),
        ({"caller": "ines", "waits": Waits.HAND}, "ana", "Nobody has said yet that they have Maren.", "Ines tells"),
        ({"caller": "ines", "waits": Waits.IN_HAND, **HAS_HER}, "ines", "Tomas has Maren, 15:08.", "You tell"),
        ({"caller": "ines", "race_control_knows": True}, "ines", "Maren has retired at", "Race control knows."),
    ],
)  # fmt: skip
def test_one_person_is_told_to_ring_race_control(
    values: dict[str, Any], to: str, first: str, race_control: str, event: Event, here: Reader
) -> None:
    """The others read that there is no need to; what comes later begins with what still waits."""
    v = RetiredValues("own choice", "lathe", in_minutes(-9), "tomas", pick_up_by=("ana",), **values)
    text = say_notice(notice(NoticeKind.RETIRED, v, person=to), event, here, NOW).text
    assert text.startswith(first)
    assert race_control in text
    told_to_ring = not v.race_control_knows and v.caller in (None, to)
    assert text.count("+44") == told_to_ring


def test_delayed_and_repeated_are_marked(event: Event, here: Reader) -> None:
    """A late notice says when it was due, a possible repeat says of which number."""
    n = notice(NoticeKind.ARRIVED, SIGHTING)
    text = say_notice(n, event, here, NOW, delayed=True, repeat=True, short=7).text
    assert text.startswith("[delayed, was due 15:09] [may be a repeat of no. 7] Maren is in at")
    assert "[" not in say_notice(n, event, here, NOW, short=7).text


def test_answers_carry_number_point_and_runner(event: Event, here: Reader) -> None:
    """Each answer's button says which notice it is for and what about; without a number there is none."""
    n = notice(NoticeKind.LATE, EXAMPLES[NoticeKind.LATE][0])
    message = say_notice(n, event, here, NOW, short=12)
    assert [b.label for row in message.buttons for b in row] == ["Yes", "Not yet", "Nobody there"]
    about = ("12", "not yet", "lathe", "maren", event_mark(n.key.event))
    assert read_data(message.buttons[1][0].data) == (Press.ANSWER, about)
    assert say_notice(n, event, here, NOW).buttons == ()
    assert (
        say_notice(notice(NoticeKind.ARRIVED, SIGHTING, asks=False), event, here, NOW, short=12).buttons == ()
    )


def test_a_doubt_is_confirmed_or_taken_back(event: Event, here: Reader) -> None:
    """A doubted report is settled by its own id, and the notice that asked is answered with it."""
    n = notice(NoticeKind.UNCONFIRMED, EXAMPLES[NoticeKind.UNCONFIRMED][0])
    rows = say_notice(n, event, here, NOW, short=9).buttons
    assert [read_data(b.data) for row in rows for b in row] == [
        (Press.CONFIRM, ("e-0123456789abcdef0123", "9", event_mark("e"))),
        (Press.UNDO, ("e-0123456789abcdef0123", "9", event_mark("e"))),
    ]


def test_values_of_another_kind_are_our_fault(event: Event, here: Reader) -> None:
    """A notice whose values do not belong to its kind is refused, naming both."""
    with pytest.raises(TypeError, match="'leave now' holds MeetingValues, not SightingValues"):
        say_notice(notice(NoticeKind.LEAVE_NOW, SIGHTING), event, here, NOW)


def test_one_person_tells_race_control_that_her_race_goes_on(event: Event, here: Reader) -> None:
    """'Did not start' taken back: she who rings there is told to ring again; the others are not."""
    wrong = CorrectionValues("retired", "start", in_minutes(-90), None, taken_back=True, by="ana")
    texts = {
        who: say_notice(notice(NoticeKind.CORRECTION, wrong, person=who), event, here, NOW).text
        for who in ("ines", "ana")
    }
    assert "tell them now that it is not: Race control +44 1632 960100" in texts["ines"]
    assert "tell them" not in texts["ana"]
    assert "watched again" in texts["ana"]


def test_an_alarm_tells_the_end_of_a_shared_position_as_a_fact_of_the_phone(
    event: Event, here: Reader
) -> None:
    """When it ended stands among the facts; that it says nothing of her, beside it."""
    text = say_notice(
        notice(NoticeKind.ALARM_KNOWN, replace(ALARM, contact_lost=in_minutes(-50))), event, here, NOW
    ).text
    assert "FACT: the position she shared ended 14:20 (50 min ago)" in text
    assert "that says nothing about her" in text


@pytest.mark.parametrize(("raised", "said"), [(-120, False), (-100, True), (0, True)])
def test_an_overdue_alarm_says_why_it_comes_so_late(
    raised: int, said: bool, event: Event, here: Reader
) -> None:
    """Expected 160 min ago: nobody at home should think that it was forgotten. Near the time nothing is explained."""
    values = replace(ALARM, raised_at=in_minutes(raised), why_now=WhyNow.LINE.value)
    text = say_notice(notice(NoticeKind.OVERDUE, values), event, here, NOW).text
    assert ("after the likely time: reports come late" in text) is said
    called = replace(values, of_kind="asked for help", why_now=WhyNow.HELP.value)
    assert (
        "reports come late"
        not in say_notice(notice(NoticeKind.ASKED_FOR_HELP, called), event, here, NOW).text
    )


@pytest.mark.parametrize("why", [w for w in WhyNow if w not in (WhyNow.HELP, WhyNow.SWEEP)])
@pytest.mark.parametrize("language", languages())
def test_every_alarm_of_silence_says_why_it_comes_now(why: WhyNow, language: str, event: Event) -> None:
    """Each reason in a sentence of its own."""
    reader = Reader(language, "Europe/London", "Europe/London")
    words = sentence(language, f"alarm-why-{slug(why)}")
    values = replace(ALARM, raised_at=in_minutes(-150), why_now=why.value)
    assert words in say_notice(notice(NoticeKind.OVERDUE, values), event, reader, NOW).text


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en", "Ines, who is to call race control, HAS NOT ANSWERED. Take it, and YOU call: "),
        ("de", "Ines soll die Rennleitung anrufen und HAT NICHT GEANTWORTET. Übernimm, und DU rufst an: "),
    ],
)
def test_where_the_caller_sleeps_who_takes_it_calls(
    event: Event, here: Reader, language: str, said: str
) -> None:
    """The next step is not told that somebody calls who has not even read the alarm."""
    asleep = replace(ALARM, holder=None, step=1, asked=("ines", "ana"), caller="ines")
    reader = replace(here, language=language)
    text = say_notice(notice(NoticeKind.HANDED_ON, asleep, person="ana"), event, reader, NOW).text
    assert said in text
    held = say_notice(
        notice(NoticeKind.HANDED_ON, replace(asleep, holder="ines"), person="ana"), event, reader, NOW
    ).text
    assert said not in held


WIDEST = replace(
    ALARM,
    of_kind="asked for help",
    by="tomas",
    words="she fell\nshe can't stand",
    raised_at=in_minutes(-6),
    holder=None,
    not_named_by="tomas",
    said_km=57.0,
    said_fix=(54.9, -2.6),
    heard_since=(Heard(in_minutes(-9), "ana", "tired"),),
    since_call=(Heard(in_minutes(-2), "tomas", "shivering now"),),
    not_there=Unsure("not here yet", "lathe", in_minutes(-20), "ana"),
    no_word=(NoWord("tomas", in_minutes(-40)),),
    race_over=in_minutes(-90),
    had_by="ana",
    had_at=in_minutes(-80),
    why_now="help",
)
"""An alarm about which everything there is to say has to be said."""


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("to", ["ana", "ines", "tomas"])
@pytest.mark.parametrize(
    ("kind", "values"),
    [
        (NoticeKind.ASKED_FOR_HELP, WIDEST),
        (NoticeKind.ASKED_FOR_HELP, replace(WIDEST, beside=("tomas", "ana"))),
        (NoticeKind.OVERDUE, replace(WIDEST, of_kind="overdue", why_now="odds", by="", words="")),
        (NoticeKind.HANDED_ON, replace(WIDEST, of_kind="overdue", why_now="odds", by="", words="")),
        (NoticeKind.HANDED_ON, replace(WIDEST, step=-1, holder="ana", told=("ana", "ines", "tomas"))),
        (NoticeKind.HANDED_ON, replace(WIDEST, step=-1, gave_back="ana", told=("ana", "ines", "tomas"))),
        (NoticeKind.LOOK_AGAIN, replace(WIDEST, holder="ines", look_again=in_minutes(0))),
        (NoticeKind.SWEEP, replace(WIDEST, of_kind="sweep", by="", words="")),
    ],
)
def test_an_alarm_fits_a_phone(
    kind: NoticeKind, values: AlarmValues, to: str, language: str, event: Event
) -> None:
    """Ten lines at most with its number, whatever there is to say: the two numbers and what to write for more are among
    them."""
    reader = Reader(language, "Europe/London", "Europe/London")
    text = say_notice(notice(kind, values, person=to), event, reader, NOW, short=7).text
    assert len(text.split("\n")) <= 10, text
    assert "112" in text
    assert "+44 1632 960100" in text
    assert any(sentence(language, key) in text for key in ("alarm-more", "alarm-more-follows"))


def test_who_says_so_stands_in_the_alarm(event: Event, here: Reader) -> None:
    """Her own call is hers; another's report names them and their part, and never says that she has asked."""

    def words(by: str) -> str:
        values = replace(WIDEST, by=by, step=0, words="she fell")
        return say_notice(notice(NoticeKind.ASKED_FOR_HELP, values), event, here, NOW).text

    own, other = words("maren"), words("tomas")
    assert own.startswith("ALARM: Maren (bib 214) has ASKED FOR HELP.\nMaren, 15:04: ‘she fell’")
    assert other.startswith(
        "ALARM: HELP IS NEEDED for Maren (bib 214).\nTomas, pacer, reports 15:04: ‘she fell’"
    )
    assert "ASKED FOR HELP" not in other
    told = say_notice(notice(NoticeKind.READ_OUT, replace(WIDEST, by="tomas")), event, here, NOW).text
    assert "Tomas has called for help for her" in told
    assert "She has asked" not in told


def test_whoever_may_be_beside_her_calls_for_themselves(event: Event, here: Reader) -> None:
    """They can say what they see: nobody tells them to leave it to another."""
    values = replace(WIDEST, beside=("ana",))
    beside, other = (
        say_notice(notice(NoticeKind.ASKED_FOR_HELP, values, person=to), event, here, NOW).text
        for to in ("ana", "tomas")
    )
    assert "call 112 or Race control (+44 1632 960100) YOURSELF" in beside
    assert "calls race control" not in beside
    assert "YOURSELF" not in other


def test_what_the_caller_reads(event: Event, here: Reader) -> None:
    """Nobody: the number to call stands in the first line. Somebody: who, and what they wrote."""

    def first(values: CallBackValues, to: str = "tomas") -> list[str]:
        return say_notice(notice(NoticeKind.CALL_BACK, values, person=to), event, here, NOW).text.split("\n")

    nobody = first(replace(BACK, minutes=10))
    assert (
        nobody[0] == "NOBODY HAS ANSWERED, 10 min after the call for help for Maren (bib 214): call 112 now."
    )
    assert nobody[1] == "Asked: Ines."
    own = first(replace(BACK, minutes=10, by="maren"), "maren")
    assert own[0] == "NOBODY HAS ANSWERED, 10 min after your call for help: call 112 now."
    said = Heard(in_minutes(-1), "ines", "taking the forest road")
    held = first(replace(BACK, state="held", holder="ines", at=in_minutes(-2), said=said))
    assert held[0] == "Ines HAS the call for help for Maren (bib 214), since 15:08."
    assert held[1] == "Ines wrote 15:09: ‘taking the forest road’"


def test_the_other_texts_are_announced_only_when_they_follow(event: Event, here: Reader) -> None:
    """Asked again, who calls race control has had them: they are a press away, as for the others."""
    texts = [
        say_notice(
            notice(NoticeKind.ASKED_FOR_HELP, replace(WIDEST, step=n), person="ines"), event, here, NOW
        ).text
        for n in (0, 1)
    ]
    assert ["follow as messages of their own" in t for t in texts] == [True, False]
    assert "write ‘what is known’" in texts[1]


def test_who_calls_race_control_reads_who_has_it(event: Event, here: Reader) -> None:
    """Somebody took it: the first line says so, and that the call is still theirs; or that it falls to the holder."""
    taken = replace(WIDEST, step=-1, holder="ana", told=("ana", "ines"))
    text = say_notice(notice(NoticeKind.HANDED_ON, taken, person="ines"), event, here, NOW).text
    assert text.startswith("Ana HAS THE ALARM about Maren (bib 214). YOU still make the call")
    instead = replace(taken, caller="ana")
    text = say_notice(notice(NoticeKind.HANDED_ON, instead, person="ana"), event, here, NOW).text
    assert text.startswith("Who was to call race control about Maren (bib 214) can’t, or does not answer")


def test_a_person_and_her_tracker_are_both_shown(event: Event, here: Reader) -> None:
    """Who saw her where and when, and where the tracker then was; a quiet one says nothing of her."""
    says = TrackerSays(
        31.2, in_minutes(-30), quiet=True, seen_point="lathe", seen_at=in_minutes(-65), seen_by="ana"
    )
    text = say_notice(
        notice(NoticeKind.LATE_HOME, LateHomeValues("lathe", WINDOW, LAST, tracker=says)), event, here, NOW
    ).text
    assert (
        "A person and her tracker disagree: Ana saw her at Wether Lathe 14:05; the tracker was at 31" in text
    )
    assert "Her tracker has sent nothing since 14:40" in text
    assert "That says nothing about her" in text


def test_race_control_is_not_asked_to_ring_itself(event: Event, here: Reader) -> None:
    """As a person of the event they read what they can do, and the number of whoever called or is at home."""
    control = event.race_control
    people = tuple(replace(p, phone=control.phone) if p.id == "tomas" else p for p in event.people)
    office = replace(event, people=people)
    text = say_notice(notice(NoticeKind.OVERDUE, ALARM, person="tomas"), office, here, NOW).text
    assert "YOU are race control: look in the race’s own results, ask" in text
    assert control.phone not in text
    help_ = replace(ALARM, of_kind=NoticeKind.ASKED_FOR_HELP.value, caller=None)
    text = say_notice(notice(NoticeKind.ASKED_FOR_HELP, help_, person="tomas"), office, here, NOW).text
    assert "YOU are race control: find out who of yours is nearest to her" in text
    assert control.phone not in text
    text = say_notice(notice(NoticeKind.OVERDUE, ALARM, person="ines"), office, here, NOW).text
    assert control.phone in text


def test_whoever_waited_reads_that_she_is_looked_after(event: Event, here: Reader) -> None:
    """'In hand' is our word: she and whoever called read who says that she is looked after, or who ended it."""
    back = replace(BACK, state="over", reason="in hand", ended_by="ana", at=in_minutes(-2))

    def first(values: CallBackValues, to: str) -> str:
        return say_notice(notice(NoticeKind.CALL_BACK, values, person=to), event, here, NOW).text.split("\n")[
            0
        ]

    assert first(back, "maren") == "OVER: Ana says that you are looked after, 15:08."
    assert first(back, "tomas").startswith("OVER: Ana says that Maren")
    assert first(replace(back, reason="stand-down"), "maren").startswith(
        "OVER: Ana has ended the alarm, 15:08"
    )
    assert first(replace(back, reason="taken back"), "maren").endswith("has been taken back by Ana, 15:08.")


def test_to_ring_somebody_is_no_alarm_to_take(event: Event, here: Reader) -> None:
    """Its buttons say what is asked: a telephone call."""
    values = UnreachedValues("ana", "late", (), in_minutes(-30))
    made = replace(notice(NoticeKind.UNREACHED, values, person="ines"), buttons=("i have it", "cannot"))
    rows = say_notice(made, event, here, NOW, short=7).buttons
    assert [b.label for row in rows for b in row] == ["I’ll ring them", "Can’t ring them"]


def test_help_that_nobody_answers_says_when_it_comes_again(event: Event, here: Reader) -> None:
    """Three times after the answer time, then at the look-again time: what is announced is what comes."""
    help_ = replace(ALARM, of_kind=NoticeKind.ASKED_FOR_HELP.value, holder=None)
    for step, again in (
        (0, event.alarm.answer_within),
        (2, event.alarm.answer_within),
        (3, event.alarm.look_again),
    ):
        values = replace(help_, step=step)
        text = say_notice(notice(NoticeKind.ASKED_FOR_HELP, values, person="ines"), event, here, NOW).text
        assert f"again in {round(again.total_seconds() / 60)} min." in text


def test_who_is_there_already_reads_no_leave_by_before_signal_is_lost(event: Event, here: Reader) -> None:
    """A second runner at the same place: from when she is to be expected, and nowhere to leave for."""
    stays = replace(MEETING, leave_by=MEETING.be_there)
    told = [
        say_notice(notice(NoticeKind.BRIEF, BriefValues((m,), None)), event, here, NOW).text
        for m in (MEETING, stays)
    ]
    assert ["Leave by" in t for t in told] == [True, False]
    assert all("Be there from" in t for t in told)
