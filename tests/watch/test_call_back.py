"""A call for help: whoever called hears back, what comes in goes on, those near hear of it, and one alarm a runner."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import Part, PartKind
from server.facts.entry import Fix, Kind, Source
from server.watch.notice import CallBackValues, MeanwhileValues, NoticeKind, StandDownValues, Urgency

K = NoticeKind
HERSELF = {"by": "maren", "source": Source.RUNNER}
LENA = {"by": "lena", "source": Source.VOLUNTEER}
ASKED = ["ana", "jonas", "olga", "sasha", "vera"]
"""Whom a call for help asks before the pacer runs with her."""
NEAR = ["lena", "tomas"]
"""Who is told that there is an alarm, and asked nothing."""


def told(owed: list[Any], kind: NoticeKind) -> list[str]:
    """Who is owed that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind)


def back(owed: list[Any], who: str) -> list[tuple[str, str | None, int]]:
    """How the call stands, as that person hears it."""
    mine = [n.values for n in owed if n.key.kind is K.CALL_BACK and n.key.person == who]
    return [(v.state, v.holder, v.minutes) for v in mine if isinstance(v, CallBackValues)]


def called(night: Any, at: str = "17:20", **who: Any) -> Any:
    """Out of Mill, then a call for help."""
    night.report(Kind.OUT, "16:46", point="mill")
    night.tick("16:46")
    night.report(Kind.ASKED_FOR_HELP, at, id="call", **(who or HERSELF | {"words": "broken ankle"}))
    return night.tick(at)


@pytest.mark.parametrize(
    ("clock", "minutes"),
    [("17:25", 5), ("17:30", 10), ("17:40", 20), ("18:00", 40), ("18:20", 60)],
)
def test_nobody_answers_and_the_caller_hears_so(night: Any, at: Any, clock: str, minutes: int) -> None:
    """At 5, 10 and 20 minutes and then every twenty: nobody; not a second before."""
    assert told(called(night), K.CALL_BACK) == [], "the reply to the call says who was asked"
    before = {5: 0, 10: 5, 20: 10, 40: 20, 60: 40}[minutes]
    early = back(night.tick(at(clock) - timedelta(seconds=1)), "maren")
    assert early == ([("asked", None, before)] if before else [])
    owed = night.tick(clock)
    assert back(owed, "maren") == [("asked", None, minutes)]
    values = next(n.values for n in owed if n.key.kind is K.CALL_BACK)
    assert sorted(values.asked) == ASKED
    assert back(night.tick(at(clock) + timedelta(minutes=1)), "maren") == []


def test_the_watch_asks_to_be_woken_for_each_mark(new_night: Any) -> None:
    """Lazily looked at, each comes in its minute."""
    night = new_night()
    called(night)
    log = night.run("17:21", "18:01", lazily=True)
    mine = [(w, n.values.minutes) for w, n in log if n.key.kind is K.CALL_BACK and n.key.person == "maren"]
    assert [(w.strftime("%H:%M"), m) for w, m in mine] == [
        ("17:25", 5),
        ("17:30", 10),
        ("17:40", 20),
        ("18:00", 40),
    ]


def test_the_caller_hears_who_has_it_what_they_do_and_that_it_is_given_back(night: Any) -> None:
    """At once when it changes hands, and at 5, 10 and 20 minutes; the holder's own words with it."""
    called(night)
    night.answer(K.ASKED_FOR_HELP, "sasha", "i have it", "17:22")
    assert back(night.tick("17:22"), "maren") == [("held", "sasha", 0)]
    night.report(Kind.HELP_WORD, "17:24", "sasha", words="race doctor is driving up")
    owed = night.tick("17:24")
    assert "maren" in told(owed, K.MEANWHILE)
    owed = night.tick("17:25")
    assert back(owed, "maren") == [("held", "sasha", 5)]
    values = next(n.values for n in owed if n.key.kind is K.CALL_BACK)
    assert (values.said.by, values.said.words) == ("sasha", "race doctor is driving up")
    night.answer(K.ASKED_FOR_HELP, "sasha", "cannot", "17:27")
    assert back(night.tick("17:27"), "maren") == [("given back", "sasha", 0)]
    assert back(night.tick("17:30"), "maren") == [("given back", "sasha", 10)]
    night.answer(K.ASKED_FOR_HELP, "vera", "i have it", "17:31")
    assert back(night.tick("17:31"), "maren") == [("held", "vera", 0)]
    assert back(night.tick("17:40"), "maren") == [("held", "vera", 20)]


def test_a_mark_that_waits_for_what_was_just_told_is_woken_for(new_night: Any) -> None:
    """Given back a minute before the mark: how it stands is said again two minutes after that, lazily looked at too."""
    night = new_night()
    called(night)
    night.answer(K.ASKED_FOR_HELP, "sasha", "i have it", "17:22")
    night.tick("17:22")
    night.tick("17:25")
    night.answer(K.ASKED_FOR_HELP, "sasha", "cannot", "17:29")
    log = night.run("17:29", "17:34", lazily=True)
    mine = [(w, n.values.minutes) for w, n in log if n.key.kind is K.CALL_BACK and n.key.person == "maren"]
    assert [(w.strftime("%H:%M"), m) for w, m in mine] == [("17:29", 0), ("17:31", 10)]


def test_words_round_the_answer_are_what_the_holder_does(night: Any) -> None:
    """'I have it, twenty minutes away' reaches the caller with the answer."""
    called(night)
    first = next(
        m for m in night.made if m.notice.key.kind is K.ASKED_FOR_HELP and m.notice.key.person == "ana"
    )
    words = "i have it: twenty minutes away"
    night.report(Kind.ANSWERED, "17:22", "ana", about=first.notice.key.text(), words=words, person="ana")
    night.answer(K.ASKED_FOR_HELP, "ana", "i have it", "17:22")
    owed = night.tick("17:22")
    values = next(n.values for n in owed if n.key.kind is K.CALL_BACK)
    assert values.said.words == "twenty minutes away"


def test_the_others_read_what_whoever_has_it_does(night: Any) -> None:
    """Sasha takes it with words round it: those who are told that she has it read them."""
    called(night)
    night.answer(K.ASKED_FOR_HELP, "sasha", "i have it", "17:22")
    about = next(m.notice.key.text() for m in night.got(K.ASKED_FOR_HELP, "sasha"))
    said = "i have it, the race doctor is on the way"
    night.report(Kind.ANSWERED, "17:22", "sasha", about=about, words=f"i have it: {said}", person="sasha")
    owed = night.tick("17:22")
    texts = [n.values.since_call[-1] for n in owed if n.key.kind is K.HANDED_ON and n.key.person == "ana"]
    assert [(h.by, h.words) for h in texts] == [("sasha", said)]


def test_a_holder_who_sleeps_is_no_holder(night: Any) -> None:
    """Who took it and does not answer when asked again: the caller hears that nobody has it."""
    called(night)
    night.answer(K.ASKED_FOR_HELP, "sasha", "i have it", "17:21")
    log = night.run("17:21", "17:50")
    again = next(w for w, n in log if n.key.kind is K.LOOK_AGAIN)
    lost = next(w for w, n in log if ("lost", "sasha", 0) in back([n], "maren"))
    assert lost - again == night.event.alarm.answer_within


@pytest.mark.parametrize(
    ("end", "reason"),
    [
        (lambda n: n.report(Kind.STAND_DOWN, "17:33", "olga"), "stand-down"),
        (lambda n: n.report(Kind.IN_HAND, "17:33", "ana"), "in hand"),
    ],
)
def test_the_caller_hears_that_it_is_over(night: Any, end: Any, reason: str) -> None:
    """Stood down by race control, or somebody has her: she hears it too, once, and may call again."""
    called(night)
    night.answer(K.ASKED_FOR_HELP, "sasha", "i have it", "17:22")
    night.tick("17:22")
    end(night)
    owed = night.tick("17:33")
    assert back(owed, "maren") == [("over", None, 0)]
    assert next(n.values.reason for n in owed if n.key.kind is K.CALL_BACK) == reason
    assert told(night.tick("17:40"), K.CALL_BACK) == []
    night.report(Kind.ASKED_FOR_HELP, "17:50", id="again", **HERSELF)
    assert told(night.tick("17:50"), K.ASKED_FOR_HELP) == ASKED


def test_another_calls_for_her_and_both_hear(night: Any) -> None:
    """A volunteer calls: she is told at once who called and who is asked; then both hear how it stands."""
    owed = called(night, words="head injury, awake", **LENA)
    assert back(owed, "maren") == [("asked", None, 0)]
    assert back(owed, "lena") == []
    values = next(n.values for n in owed if n.key.kind is K.ASKED_FOR_HELP)
    assert (values.by, values.beside) == ("lena", ("lena",))
    owed = night.tick("17:25")
    assert back(owed, "lena") == back(owed, "maren") == [("asked", None, 5)]
    night.answer(K.ASKED_FOR_HELP, "vera", "i have it", "17:26")
    owed = night.tick("17:26")
    assert back(owed, "lena") == back(owed, "maren") == [("held", "vera", 0)]
    night.report(Kind.STAND_DOWN, "17:50", "olga")
    assert back(night.tick("17:50"), "lena") == [("over", None, 0)]


def test_who_called_and_takes_it_hears_nothing_of_themselves(night: Any) -> None:
    """Ana calls for her and has it herself: she is told nothing back, Maren who has it."""
    called(night, words="she fell", by="ana")
    night.answer(K.ASKED_FOR_HELP, "ana", "i have it", "17:21")
    owed = night.tick("17:21")
    assert back(owed, "maren") == [("held", "ana", 0)]
    assert [back(night.tick(c), "ana") for c in ("17:25", "17:30", "17:40")] == [[], [], []]


def test_home_calls_and_stands_beside_nobody(night: Any) -> None:
    """The safety contact raises it: not told to look after her at the scene; hears while nobody answers."""
    owed = called(night, words="she rang me", by="sasha")
    values = next(n.values for n in owed if n.key.kind is K.ASKED_FOR_HELP)
    assert values.beside == ()
    assert back(night.tick("17:25"), "sasha") == [("asked", None, 5)]


def test_where_the_caller_is_not_reached_the_holder_telephones(night: Any) -> None:
    """Every channel of hers is blocked: whoever has it is told so, with her number."""
    called(night)
    night.answer(K.ASKED_FOR_HELP, "sasha", "i have it", "17:22")
    night.tick("17:22")
    night.made = [
        replace(m, failed=True, sent_at=None) if m.notice.key.person == "maren" else m for m in night.made
    ]
    owed = [n for n in night.tick("17:23") if n.key.kind is K.UNREACHED]
    assert ("sasha", "maren") in [(n.key.person, n.values.person) for n in owed]
    assert {n.key.person for n in owed} <= {"sasha", "olga"}


# One alarm a runner -----------------------------------------------------------------------------------------


def test_later_calls_join_the_alarm_that_is_open(night: Any) -> None:
    """Her second cry, and her pacer's, raise no second alarm: the words go to those on it, and both hear back."""
    called(night)
    night.report(Kind.ASKED_FOR_HELP, "17:23", id="second", words="please come", **HERSELF)
    owed = night.tick("17:23")
    assert told(owed, K.ASKED_FOR_HELP) == []
    assert told(owed, K.MEANWHILE) == ASKED
    night.report(Kind.ASKED_FOR_HELP, "17:24", id="third", words="she is pale", **LENA)
    assert told(night.tick("17:24"), K.ASKED_FOR_HELP) == []
    assert back(night.tick("17:30"), "lena") == [("asked", None, 10)]
    alarms = {m.notice.values.alarm for m in night.got(K.ASKED_FOR_HELP)}
    assert alarms == {"asked for help:call:0"}
    night.report(Kind.STAND_DOWN, "17:40", "olga", about="third")
    owed = night.tick("17:40")
    assert set(told(owed, K.STAND_DOWN)) == {*ASKED, *NEAR}
    assert told(night.tick("17:41"), K.ASKED_FOR_HELP) == []


def test_taking_one_of_two_calls_back_leaves_the_alarm_open(night: Any) -> None:
    """Hers was a slip, the volunteer's was not; once both are taken back it is over."""
    called(night)
    night.report(Kind.ASKED_FOR_HELP, "17:23", id="second", words="she is pale", **LENA)
    night.tick("17:23")
    night.report(Kind.TAKEN_BACK, "17:24", about="call", **HERSELF)
    assert told(night.tick("17:24"), K.STAND_DOWN) == []
    night.report(Kind.TAKEN_BACK, "17:26", about="second", **LENA)
    owed = night.tick("17:26")
    assert set(told(owed, K.STAND_DOWN)) == {*ASKED, *NEAR}
    assert told(night.tick("17:27"), K.ASKED_FOR_HELP) == []


def test_a_sweep_while_help_is_open_joins_it(night: Any) -> None:
    """No alarm of its own: those on it read that the sweep is through and she was not seen."""
    called(night)
    night.report(Kind.SWEEP_THROUGH, "17:25", "lena", point="chapel", source=Source.VOLUNTEER)
    owed = night.tick("17:25")
    assert told(owed, K.SWEEP) == []
    assert told(owed, K.MEANWHILE) == ASKED


def test_help_takes_the_place_of_an_overdue_alarm_and_one_word_ends_both(night: Any) -> None:
    """She is missed, then calls: the call is the one alarm. Somebody has her: one stand-down to each."""
    night.report(Kind.OUT, "23:10", "lena", point="moss", source=Source.VOLUNTEER)
    night.run("23:10", "26:55", lazily=True)
    assert night.got(K.OVERDUE)
    night.report(Kind.ASKED_FOR_HELP, "26:56", id="call", words="fell", **HERSELF)
    assert told(night.tick("26:56"), K.ASKED_FOR_HELP) == sorted([*ASKED, "tomas"])
    before = len(night.got(K.LOOK_AGAIN)) + len(night.got(K.OVERDUE)) + len(night.got(K.HANDED_ON))
    night.run("26:57", "27:30")
    after = len(night.got(K.LOOK_AGAIN)) + len(night.got(K.OVERDUE)) + len(night.got(K.HANDED_ON))
    assert after == before, "the first waits"
    night.report(Kind.IN_HAND, "27:31", "ana")
    owed = night.tick("27:31")
    ends = [n for n in owed if n.key.kind is K.STAND_DOWN]
    assert len(ends) == len({n.key.person for n in ends}), "one word each"
    assert all(isinstance(n.values, StandDownValues) and n.values.also for n in ends)
    assert not [n for n in night.tick("27:35") if n.key.kind in (K.STAND_DOWN, K.OVERDUE, K.LOOK_AGAIN)]


def test_a_call_taken_back_leaves_the_overdue_alarm(night: Any) -> None:
    """That it was a slip says that she can write, not where she is: the first alarm is looked at again."""
    night.report(Kind.OUT, "23:10", "lena", point="moss", source=Source.VOLUNTEER)
    night.run("23:10", "26:55", lazily=True)
    night.report(Kind.ASKED_FOR_HELP, "26:56", id="call", **HERSELF)
    night.tick("26:56")
    night.report(Kind.TAKEN_BACK, "26:58", about="call", **HERSELF)
    ends = [n.values for n in night.tick("26:58") if n.key.kind is K.STAND_DOWN]
    assert {(v.of_kind, v.also) for v in ends} == {("asked for help", ())}
    log = night.run("26:59", "27:20")
    assert any(n.values.of_kind == "overdue" for _, n in log if n.key.kind in (K.OVERDUE, K.HANDED_ON))


# What comes in meanwhile ------------------------------------------------------------------------------------


def test_what_she_writes_goes_word_for_word_to_those_on_it(night: Any) -> None:
    """To its holder, those asked but who can't, and the safety contact; the writer's own words never come back."""
    called(night)
    night.answer(K.ASKED_FOR_HELP, "jonas", "cannot", "17:21")
    night.report(Kind.HOW_SHE_IS, "17:22", words="still here nobody came", **HERSELF)
    owed = night.tick("17:22")
    assert told(owed, K.MEANWHILE) == ["ana", "olga", "sasha", "vera"]
    values = next(n.values for n in owed if n.key.kind is K.MEANWHILE)
    assert isinstance(values, MeanwhileValues)
    assert (values.words, values.by) == ("still here nobody came", "maren")
    assert {n.urgency for n in owed if n.key.kind is K.MEANWHILE} == {Urgency.ALARM}
    assert told(night.tick("17:23"), K.MEANWHILE) == [], "once"
    night.report(Kind.IN, "17:24", "ana", point="chapel")
    assert told(night.tick("17:24"), K.MEANWHILE) == ["olga", "sasha", "vera"]


def test_one_message_goes_on_once_though_it_is_kept_as_two_reports(night: Any) -> None:
    """'In at Chapel, cold': where she is and how she is, in the same words."""
    called(night)
    for kind in (Kind.HOW_SHE_IS, Kind.IN):
        night.report(kind, "17:24", point="chapel", words="in at chapel, cold", **LENA)
    owed = [n for n in night.tick("17:24") if n.key.kind is K.MEANWHILE and n.key.person == "sasha"]
    assert [n.values.kind for n in owed] == [Kind.IN.value]


def test_the_safety_contact_reads_it_though_they_cannot_go(night: Any) -> None:
    """Who is at home and says 'can't' still tells rescuers what is known: the words go there all the same."""
    called(night)
    night.answer(K.ASKED_FOR_HELP, "sasha", "cannot", "17:21")
    night.report(Kind.HOW_SHE_IS, "17:22", words="still here nobody came", **HERSELF)
    assert told(night.tick("17:22"), K.MEANWHILE) == ASKED


def test_a_share_that_moves_is_passed_on_and_one_that_lies_still_is_not(night: Any) -> None:
    """The first place at once; the next only 300 m on and five minutes later."""
    called(night)
    where = [("17:21", 54.0), ("17:22", 54.01), ("17:27", 54.0001), ("17:33", 54.01)]
    heard = []
    for clock, lat in where:
        night.report(Kind.POSITION, clock, fix=Fix(lat, -2.0), **HERSELF)
        heard.append(bool(told(night.tick(clock), K.MEANWHILE)))
    assert heard == [True, False, False, True]


def test_words_taken_back_are_taken_back_with_those_who_read_them(night: Any) -> None:
    """As with any word of her."""
    called(night)
    night.report(Kind.HELP_WORD, "17:22", id="w", words="I can see a road", **HERSELF)
    night.tick("17:22")
    night.report(Kind.TAKEN_BACK, "17:23", about="w", **HERSELF)
    assert told(night.tick("17:23"), K.CORRECTION) == ASKED


# No routine -------------------------------------------------------------------------------------------------


def test_no_routine_while_help_is_open_and_it_goes_on_after(new_night: Any, at: Any) -> None:
    """Leave-nows, windows, arrivals and questions stay away until it is over; the same night without a call has them."""
    routine = {
        K.LEAVE_NOW,
        K.WAKE_UP,
        K.BRIEF,
        K.MOVE_ON,
        K.WINDOW_MOVED,
        K.ARRIVED,
        K.LEFT,
        K.LATE,
        K.BE_THERE,
    }

    def kinds(helped: bool) -> set[NoticeKind]:
        night = new_night()
        called(night)
        if not helped:
            night.entries = [e for e in night.entries if e.id != "call"]
            night.made = [m for m in night.made if m.notice.key.kind is not K.ASKED_FOR_HELP]
        night.report(Kind.IN, "19:40", "lena", point="chapel", source=Source.VOLUNTEER)
        night.report(Kind.OUT, "19:50", "lena", point="chapel", source=Source.VOLUNTEER)
        return {n.key.kind for _, n in night.run("17:21", "22:00", lazily=True)}

    assert kinds(helped=False) & routine
    assert not kinds(helped=True) & routine
    night = new_night()
    called(night)
    night.report(Kind.STAND_DOWN, "17:40", "olga")
    after = {n.key.kind for _, n in night.run("17:40", "22:00", lazily=True)}
    assert after & routine


# Those near -------------------------------------------------------------------------------------------------


def test_those_near_hear_once_that_there_is_an_alarm_and_that_it_is_over(night: Any) -> None:
    """The pacer who waits and the volunteer two points ahead, who are asked nothing; one far on hears nothing."""
    night.event = replace(
        night.event, parts=(*night.event.parts, Part("piet", PartKind.VOLUNTEER, point="finish"))
    )
    owed = called(night)
    assert told(owed, K.ALARM_NEWS) == ["lena", "tomas"]
    points = {n.key.person: n.values.at_point for n in owed if n.key.kind is K.ALARM_NEWS}
    assert points == {"lena": "moss", "tomas": None}
    assert told(night.tick("17:30"), K.ALARM_NEWS) == []
    night.report(Kind.STAND_DOWN, "17:40", "olga")
    over = [n for n in night.tick("17:40") if n.key.kind is K.STAND_DOWN]
    assert told(over, K.STAND_DOWN) == sorted([*ASKED, *NEAR])
    # Sent on the same terms as the news of the alarm, it can't overtake that.
    assert {n.urgency for n in over if n.key.person in NEAR} == {
        n.urgency for n in owed if n.key.kind is K.ALARM_NEWS
    }


def test_who_may_be_asked_in_a_moment_hears_of_it_once_somebody_has_it(night: Any) -> None:
    """Ana is the second step of an overdue alarm: asked five minutes later, or told when it is taken before that."""
    night.report(Kind.OUT, "23:10", "lena", point="moss", source=Source.VOLUNTEER)
    log = night.run("23:10", "27:00", lazily=False)
    first = next(w for w, n in log if n.key.kind is K.OVERDUE)
    at_once = [n.key.person for w, n in log if n.key.kind is K.ALARM_NEWS and w == first]
    assert sorted(at_once) == ["jonas", "lena", "tomas"]
    assert not {"ana", "vera"} & {n.key.person for _, n in log if n.key.kind is K.ALARM_NEWS}


def test_who_is_up_the_ladder_hears_who_has_it(night: Any) -> None:
    """Taken at once: Ana and Vera, who would have been asked next, are told of it then."""
    night.report(Kind.OUT, "23:10", "lena", point="moss", source=Source.VOLUNTEER)
    log = night.run("23:10", "26:55", lazily=True)
    first = next(w for w, n in log if n.key.kind is K.OVERDUE)
    night.answer(K.OVERDUE, "sasha", "i have it", first + timedelta(minutes=1))
    news = [n for n in night.tick(first + timedelta(minutes=1)) if n.key.kind is K.ALARM_NEWS]
    assert sorted((n.key.person, n.values.holder) for n in news) == [("ana", "sasha"), ("vera", "sasha")]


def test_what_is_known_and_what_to_read_out_follow_for_caller_and_holder(night: Any) -> None:
    """Two messages of their own, once: to who calls race control at once, to the holder when it is taken."""
    owed = called(night)
    assert told(owed, K.ALARM_KNOWN) == told(owed, K.READ_OUT) == ["sasha"]
    night.answer(K.ASKED_FOR_HELP, "vera", "i have it", "17:22")
    owed = night.tick("17:22")
    assert told(owed, K.ALARM_KNOWN) == told(owed, K.READ_OUT) == ["vera"]
    assert told(night.tick("17:25"), K.READ_OUT) == []
