"""Calls for help, played whole: nobody answers; a volunteer calls and the holder gives it back; who took it falls asleep;
two runners, one of whom calls. Each with who must have heard what by when."""

from __future__ import annotations

import pytest

from server.watch.notice import NoticeKind
from tests.whole.beck import BECK
from tests.whole.loops import LOOPS
from tests.whole.night import Night
from tests.whole.ridge import RIDGE
from tests.whole.story import ANSWER, Story, hold, must, never
from tests.whole.ways import two_loops

K = NoticeKind


async def _nobody_answers(n: Night) -> None:
    """Lene lies by the beck with a broken ankle. Ruth is driving, Hanne sleeps, the office is away from its desk."""
    await n.until("07:02")
    await n.reports("office", "out", "start", minutes_ago=2)
    await n.until("08:35")
    await n.says("bo", "33 in at mere bridge 0832 out 0833")
    await n.until("09:10")
    await n.says("lene", "help, broken ankle")
    n.mark("call")
    await n.wait(7)
    await n.says("lene", "still here nobody came")
    n.mark("still here")
    await n.wait(4)
    await n.shares("lene", 13.4)
    n.mark("place")
    await n.wait(3)
    await n.says("lene", "help please i am cold")
    n.mark("again")
    await n.wait(2)
    await n.says("lene", "should i call 112")
    n.mark("asks")
    await n.wait(20)
    await n.says("hanne", "i have it, race doctor is on the way up")
    n.mark("taken")
    await n.wait(10)
    await n.says("hanne", "he is at the ford now")
    n.mark("ford")
    await n.wait(8)
    await n.says("office", "we have 33")
    n.mark("over")
    await n.wait(30)


NOBODY = Story(
    "help, nobody answers for half an hour",
    BECK,
    _nobody_answers,
    (
        must("call", 0, 0, "lene", ANSWER, "Are you hurt? Call 112.", "Hanne", "Ruth"),
        *(
            must("call", 0, 1, who, K.ASKED_FOR_HELP, "Lene (bib 33) has ASKED FOR HELP", "broken ankle")
            for who in ("hanne", "ruth", "piet", "office")
        ),
        must("call", 0, 1, "hanne", K.READ_OUT, "This is about runner Lene, bib 33"),
        must("call", 5, 6, "lene", K.CALL_BACK, "NOBODY HAS ANSWERED, 5 min", "call 112 now"),
        must("call", 10, 11, "lene", K.CALL_BACK, "NOBODY HAS ANSWERED, 10 min"),
        must("call", 20, 21, "lene", K.CALL_BACK, "NOBODY HAS ANSWERED, 20 min"),
        must("call", 0, 1, "bo", K.ALARM_NEWS, "AN ALARM IS OPEN about Lene (bib 33)", "Mere Bridge"),
        must("call", 0, 1, "cy", K.ALARM_NEWS, "If Lene comes to Long Weir"),
        must("still here", 0, 0, "lene", ANSWER, "NOBODY HAS ANSWERED"),
        *(
            must("still here", 0, 1, who, K.MEANWHILE, "still here nobody came")
            for who in ("hanne", "ruth", "piet", "office")
        ),
        must("place", 0, 1, "ruth", K.MEANWHILE, "PLACE of Lene"),
        must("again", 0, 0, "lene", ANSWER, "this has joined it", "NOBODY HAS ANSWERED YET"),
        must("again", 0, 1, "office", K.MEANWHILE, "help please i am cold"),
        must("asks", 0, 0, "lene", ANSWER, "Call 112 AT ONCE", "If you are not sure: call 112"),
        must(
            "taken", 0, 1, "lene", K.CALL_BACK, "Hanne HAS your call for help", "race doctor is on the way up"
        ),
        must("taken", 0, 1, "ruth", K.HANDED_ON, "Hanne HAS THE ALARM about Lene"),
        must("ford", 0, 1, "lene", K.MEANWHILE, "he is at the ford now"),
        must("over", 0, 1, "lene", K.CALL_BACK, "OVER: Race office says that you are looked after"),
        must("over", 0, 1, "bo", K.STAND_DOWN, "the alarm for Lene is over"),
        must("over", 0, 1, "cy", K.STAND_DOWN, "the alarm for Lene is over"),
        *(
            never("call", 0.1, 53, who, kind)
            for who in ("ruth", "piet", "hanne")
            for kind in (K.LEAVE_NOW, K.WINDOW_MOVED, K.LATE, K.LATE_HOME, K.ARRIVED, K.LEFT, K.CUT_OFF_ODDS)
        ),
        never("call", 0, 120, "dot", None),
    ),
)


async def _a_volunteer_calls(n: Night) -> None:
    """Nele has Ida with a head wound. Max takes it and his car breaks down; Lotte takes it; race control ends it."""
    await n.until("14:04")
    await n.reports("office", "out", "start", minutes_ago=2)
    await n.until("15:40")
    await n.reports("office", "in", "alp", minutes_ago=4)
    await n.reports("office", "out", "alp", minutes_ago=1)
    await n.until("17:20")
    await n.reports("nele", "asked for help", words="214 fell on the stairs, head wound, awake")
    n.mark("call")
    await n.wait(3)
    await n.says("max", "i have it, leaving now")
    n.mark("max has it")
    await n.wait(6)
    await n.says("max", "can't")
    n.mark("given back")
    await n.wait(2)
    await n.says("lotte", "i have it")
    n.mark("lotte has it")
    await n.wait(1)
    await n.says("lotte", "what do i do now")
    n.mark("lotte asks")
    await n.says("lotte", "what do i tell them")
    await n.wait(5)
    await n.says("nele", "she was sick twice now")
    n.mark("sick")
    await n.wait(10)
    await n.says("office", "stand down ida")
    await n.says("office", "yes")
    n.mark("over")
    await n.wait(20)


VOLUNTEER = Story(
    "help by a volunteer, given back",
    RIDGE,
    _a_volunteer_calls,
    (
        *(
            must(
                "call",
                0,
                1,
                who,
                K.ASKED_FOR_HELP,
                "HELP IS NEEDED for Ida",
                "Nele, volunteer, reports",
                "head wound",
            )
            for who in ("max", "lotte", "office")
        ),
        never("call", 0, 60, "max", None, "has ASKED FOR HELP"),
        must("call", 0, 1, "ida", K.CALL_BACK, "Nele has called for help for you"),
        must("max has it", 0, 1, "nele", K.CALL_BACK, "Max HAS the call for help for Ida", "leaving now"),
        must("max has it", 0, 1, "ida", K.CALL_BACK, "Max HAS the call for help for you"),
        must("call", 5, 6, "nele", K.CALL_BACK, "Max HAS"),
        must("given back", 0, 1, "nele", K.CALL_BACK, "Max can't any more: NOBODY HAS"),
        must("lotte has it", 0, 1, "nele", K.CALL_BACK, "Lotte HAS the call for help"),
        must("lotte asks", 0, 0, "lotte", ANSWER, "YOU HAVE THE ALARM about Ida", "Ring Nele"),
        must("lotte asks", 0, 1, "lotte", ANSWER, "Nele has called for help for her"),
        must("sick", 0, 0, "nele", ANSWER, "Sent on word for word"),
        must("sick", 0, 1, "lotte", K.MEANWHILE, "she was sick twice now"),
        must("over", 0, 1, "nele", K.CALL_BACK, "OVER:"),
        must("over", 0, 1, "ida", K.CALL_BACK, "OVER:"),
        must("over", 0, 1, "timo", K.STAND_DOWN, "the alarm for Ida is over"),
        must("call", 0, 1, "timo", K.ALARM_NEWS, "AN ALARM IS OPEN about Ida"),
        must("max has it", 0, 1, "oskar", K.HANDED_ON, "Max HAS THE ALARM", "YOU still make the call"),
    ),
    # A leave-by that came while help was open is told when it is over, as what it is by then.
    apart_from=frozenset({"no_leave_by_in_the_past"}),
)


async def _the_holder_sleeps(n: Night) -> None:
    """Oskar takes it at home and falls asleep over it: the others are asked again, and Ida hears that nobody has it."""
    await n.until("14:04")
    await n.reports("office", "out", "start", minutes_ago=2)
    await n.until("15:40")
    await n.reports("office", "in", "alp", minutes_ago=4)
    await n.reports("office", "out", "alp", minutes_ago=1)
    await n.until("16:30")
    await n.says("ida", "help i am lost and it is foggy")
    n.mark("call")
    await n.wait(2)
    await n.says("oskar", "ich übernehme")
    n.mark("oskar has it")
    await n.wait(33)
    n.mark("asleep")
    await n.says("lotte", "i have it")
    n.mark("lotte has it")
    await n.wait(6)
    await n.says("ida", "undo")
    n.mark("over")
    await n.wait(20)


SLEEPS = Story(
    "help, who took it falls asleep",
    RIDGE,
    _the_holder_sleeps,
    (
        must("oskar has it", 0, 1, "ida", K.CALL_BACK, "Oskar HAS your call for help"),
        must("oskar has it", 20, 22, "oskar", K.LOOK_AGAIN),
        must(
            "oskar has it",
            24,
            27,
            "ida",
            K.CALL_BACK,
            "Oskar had it and does not answer any more: NOBODY HAS",
        ),
        must("oskar has it", 24, 27, "lotte", K.ASKED_FOR_HELP),
        must("lotte has it", 0, 1, "ida", K.CALL_BACK, "Lotte HAS your call for help"),
        must("over", 0, 1, "lotte", K.STAND_DOWN, "Ida"),
        never("over", 1, 20, "ida", K.CALL_BACK),
    ),
)


async def _two_runners(n: Night) -> None:
    """Kaya calls, Dana is her crew; Wim runs on, and his crew go on with what is theirs."""
    await n.until("18:05")
    await n.reports("office", "out", "start", minutes_ago=4, runner="kaya")
    await n.until("18:50")
    await n.says("kaya", "help, i twisted my knee")
    n.mark("call")
    await n.wait(1)
    await n.says("dana", "i have it")
    n.mark("taken")
    await n.wait(12)
    await n.says("dana", "what do i do now")
    n.mark("asks")
    await n.wait(3)
    await n.says("dana", "we have kaya")
    n.mark("over")
    await n.wait(20)


TWO = Story(
    "help for one of two runners",
    LOOPS,
    _two_runners,
    (
        must("call", 0, 1, "dana", K.ASKED_FOR_HELP, "Kaya", "twisted my knee"),
        must("taken", 0, 1, "kaya", K.CALL_BACK, "Dana HAS your call for help"),
        must("call", 5, 6, "kaya", K.CALL_BACK, "Dana HAS"),
        must("asks", 0, 0, "dana", ANSWER, "YOU HAVE THE ALARM about Kaya"),
        never("call", 0, 60, "wim", None),
        never("call", 0, 60, "eli", K.ASKED_FOR_HELP, "Wim"),
        must("over", 0, 1, "kaya", K.CALL_BACK, "OVER: Dana says that you are looked after"),
    ),
)


async def _a_hand_and_nothing(n: Night) -> None:
    """Dana takes Kaya's call with more words round it and has her in the van: she is asked before that is forgotten, Kaya
    goes on. Wim calls, writes more, and it was nothing."""
    await two_loops(n)
    await n.until("20:45")
    await n.says("kaya", "help, i fell and my arm is broken")
    n.mark("call")
    await n.wait(2)
    await n.says("dana", "i have it, driving to her")
    n.mark("taken")
    await n.wait(8)
    await n.says("dana", "got kaya")
    n.mark("with dana")
    await n.until("21:05")
    await n.says("wim", "help")
    await n.wait(2)
    await n.says("wim", "still here nobody came")
    await n.wait(1)
    await n.says("wim", "undo")
    n.mark("undone")
    await n.until_told("dana", K.IN_HAND)
    n.mark("asked")
    await n.wait(2)
    await n.presses("dana", "goes on")
    n.mark("goes on")
    await n.wait(5)


HAND = Story(
    "a call taken in other words, one that was nothing",
    LOOPS,
    _a_hand_and_nothing,
    (
        must("taken", 0, 0, "dana", ANSWER, "It is yours"),
        must("taken", 0, 1, "kaya", K.CALL_BACK, "Dana HAS your call for help"),
        must("taken", 0, 1, "office", K.HANDED_ON, "Dana HAS THE ALARM", "driving to her"),
        must("with dana", 40, 40, "dana", K.IN_HAND, "Is Kaya still with you?"),
        never("with dana", 1, 42, "dana", None, "OVERDUE"),
        must("undone", 0, 0, "wim", ANSWER, "Taken back: ‘help’"),
        must("undone", 0, 1, "rosa", K.STAND_DOWN, "Wim"),
        never("undone", 0.1, 60, "wim", K.CALL_BACK, "NOBODY"),
        must("goes on", 0, 0, "dana", ANSWER, "moving again"),
        never("goes on", 1, 5, "dana", K.IN_HAND),
    ),
)

STORIES = (NOBODY, VOLUNTEER, SLEEPS, TWO, HAND)


@pytest.mark.parametrize("story", STORIES, ids=str)
async def test_a_call_for_help(story: Story, sqlite_url: str) -> None:
    """Everybody hears by their minute; nothing routine comes meanwhile; the invariants hold."""
    await hold(story, sqlite_url)
