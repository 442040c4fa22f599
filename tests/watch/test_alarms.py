"""Late, overdue, help and sweep: when they come, whom they climb to, what ends them and what does not."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import AlarmRule, Part, PartKind, ReporterKind, ReportsThere
from server.facts.entry import Kind, Retired, Source
from server.facts.state import Interval
from server.watch.notice import AlarmValues, LateValues, NoticeKind, StandDownValues, UnreachedValues

K = NoticeKind
VOLUNTEER = {"source": Source.VOLUNTEER, "point": "moss"}


NEAR = ["jonas", "lena", "sasha", "tomas"]
"""Who is told of an overdue alarm that waits at its first step: home, and those near her who are asked nothing."""
NOT_LENA = [w for w in NEAR if w != "lena"]
"""The same where Lena herself reports what ends it: she knows."""


def told(owed: list[Any], kind: NoticeKind) -> list[str]:
    """Who is owed that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind)


def of_alarms(owed: list[Any]) -> list[Any]:
    """Those that are about an alarm; what goes with it apart is tried in test_call_back.py."""
    apart = (K.ALARM_KNOWN, K.READ_OUT)
    return [
        n for n in owed if isinstance(n.values, AlarmValues | StandDownValues) and n.key.kind not in apart
    ]


def gone_quiet(night: Any) -> Any:
    """Out of Moss at 23:10; Ridge, where a volunteer reports, is next: late 02:17, under the line 02:48."""
    night.report(Kind.OUT, "23:10", "lena", **VOLUNTEER)
    night.tick("23:10")
    return night


def lines_of(night: Any, at: Any) -> tuple[Any, Any]:
    """When she is late and when overdue, from the forecast itself."""
    outlook = night.situation(at("23:11")).outlooks["maren"]
    late = outlook.late_time()[1]
    return late, max(outlook.unheard_falls_under(AlarmRule().line, at("23:10")), late + timedelta(minutes=15))


def alarmed(night: Any, at: Any) -> Any:
    """The night at the moment at which the safety contact is told."""
    gone_quiet(night)
    late, overdue = lines_of(night, at)
    night.tick(late)
    assert told(night.tick(overdue), K.OVERDUE) == ["sasha"]
    return overdue


def test_an_alarm_names_who_was_asked_and_does_not_answer(night: Any, at: Any) -> None:
    """Whoever was asked whether she is in, and has not answered by button or by word, is named with the hour; no other."""
    gone_quiet(night)
    late, overdue = lines_of(night, at)
    asked = told(night.tick(late), K.LATE)
    assert len(asked) > 1
    by_button, *silent = asked
    night.answer(K.LATE, by_button, "not yet", late + timedelta(minutes=2))
    owed = night.tick(overdue)
    values = next(n.values for n in owed if n.key.kind is K.OVERDUE)
    assert isinstance(values, AlarmValues)
    assert [n.who for n in values.no_word] == silent
    assert {n.at for n in values.no_word} == {late}


def test_who_has_sent_word_of_her_since_is_not_named_as_silent(night: Any, at: Any) -> None:
    """A 'not here yet' written rather than pressed is an answer."""
    gone_quiet(night)
    late, overdue = lines_of(night, at)
    wrote, *silent = told(night.tick(late), K.LATE)
    night.report(Kind.NOT_HERE_YET, overdue - timedelta(minutes=1), wrote, point="ridge")
    values = next(n.values for n in night.tick(overdue) if n.key.kind is K.OVERDUE)
    assert isinstance(values, AlarmValues)
    assert [n.who for n in values.no_word] == silent


@pytest.mark.parametrize(("seconds", "asked"), [(-1, False), (0, True), (1, True)])
def test_late_is_asked_at_the_90_percent_time(night: Any, at: Any, seconds: int, asked: bool) -> None:
    """Before, at and after the 90% time as it stood at the last fact; the question names the point."""
    gone_quiet(night)
    late, _ = lines_of(night, at)
    owed = night.tick(late + timedelta(seconds=seconds))
    assert bool(told(owed, K.LATE)) is asked
    for n in owed:
        if n.key.kind is K.LATE:
            assert isinstance(n.values, LateValues)
            assert n.values.point == "ridge"
            assert n.buttons == ("yes", "not yet", "nobody there")
            assert n.needs_answer


@pytest.mark.parametrize(("seconds", "raised"), [(-1, False), (0, True), (1, True)])
def test_overdue_goes_to_the_safety_contact_at_its_line(
    night: Any, at: Any, seconds: int, raised: bool
) -> None:
    """Before, at and after the later of line and grace: to the first step of the ladder, and nobody else."""
    gone_quiet(night)
    _, overdue = lines_of(night, at)
    owed = night.tick(overdue + timedelta(seconds=seconds))
    assert told(owed, K.OVERDUE) == (["sasha"] if raised else [])


def test_asking_first_never_delays_the_alarm(new_night: Any, at: Any) -> None:
    """Asked and not answered, asked and answered 'nobody there', never asked: the alarm comes at one time."""
    raised = []
    for case in ("unanswered", "answered", "not asked"):
        night = gone_quiet(new_night())
        late, overdue = lines_of(night, at)
        if case != "not asked":
            night.tick(late)
        if case == "answered":
            night.answer(K.LATE, "ana", "nobody there", late)
        assert told(night.tick(overdue - timedelta(seconds=1)), K.OVERDUE) == []
        raised.append(told(night.tick(overdue), K.OVERDUE))
    assert raised == [["sasha"]] * 3


def test_grace_holds_where_the_line_is_reached_with_it(night: Any, at: Any) -> None:
    """With an hour of grace the alarm waits for the hour after she was late, not for the line."""
    night.event = replace(night.event, alarm=replace(night.event.alarm, grace=timedelta(hours=1)))
    gone_quiet(night)
    late, _ = lines_of(night, at)
    assert told(night.tick(late + timedelta(minutes=59)), K.OVERDUE) == []
    assert told(night.tick(late + timedelta(minutes=60)), K.OVERDUE) == ["sasha"]


def test_a_not_yet_moves_the_question_but_not_the_alarm(night: Any, at: Any) -> None:
    """'Not here yet' is a fact: who is asked again is asked at new times; she is missing all the same at her line."""
    gone_quiet(night)
    late, overdue = lines_of(night, at)
    night.tick(late)
    answered = overdue - timedelta(minutes=1)
    night.report(Kind.NOT_HERE_YET, answered, "ana", point="ridge")
    again = night.situation(answered).outlooks["maren"].late_time()[1]
    assert again > overdue
    owed = night.tick(answered)
    assert told(owed, K.LATE) == told(owed, K.OVERDUE) == []
    assert told(night.tick(overdue), K.OVERDUE) == ["sasha"]


def test_nobody_is_judged_before_what_waited_is_read(night: Any, at: Any) -> None:
    """After a restart, until the waiting updates are read, nobody is late or overdue; then at once."""
    gone_quiet(night)
    _, overdue = lines_of(night, at)
    night.watching_since = None
    owed = night.tick(overdue + timedelta(hours=1))
    assert of_alarms(owed) == []
    assert told(owed, K.LATE) == []
    night.watching_since = overdue + timedelta(hours=1)
    assert told(night.tick(overdue + timedelta(hours=1)), K.OVERDUE) == ["sasha"]


def test_nobody_is_judged_while_our_channels_are_down(night: Any, at: Any) -> None:
    """An outage that lasts silences late and overdue: we could not have heard."""
    gone_quiet(night)
    _, overdue = lines_of(night, at)
    night.outages = (Interval(at("23:30"), None),)
    owed = night.tick(overdue)
    assert told(owed, K.LATE) == told(owed, K.OVERDUE) == []


def test_late_pauses_while_runners_are_held(night: Any, at: Any) -> None:
    """Held from midnight: no question, and after the release the times have moved by the hold."""
    gone_quiet(night)
    late, _ = lines_of(night, at)
    night.report(Kind.HELD, "24:00", "olga", runner=None)
    assert told(night.tick(late), K.LATE) == []
    night.report(Kind.RELEASED, late + timedelta(minutes=10), "olga", runner=None)
    assert told(night.tick(late + timedelta(minutes=10)), K.LATE) == []


def test_nobody_reports_so_nobody_is_late(new_night: Any) -> None:
    """Where nobody reports and the forecast says that silence says nothing, no hour is late."""
    night = new_night(reported=())
    gone_quiet(night)
    for hour in range(24, 30):
        owed = night.tick(f"{hour}:00")
        assert told(owed, K.LATE) == told(owed, K.OVERDUE) == []


@pytest.mark.parametrize(
    ("reports", "share"),
    [((), 0.98), ((ReportsThere(ReporterKind.VOLUNTEER, 0.9, timedelta(minutes=5)),), 0.998)],
    ids=["nobody", "volunteers"],
)
def test_a_finish_nobody_reports_from_is_waited_for_less_long(
    new_night: Any, at: Any, reports: tuple[ReportsThere, ...], share: float
) -> None:
    """Not until one in five hundred would still be out, as where somebody stands there, but one in fifty."""
    night = gone_quiet(new_night(reported=()))
    course = night.event.courses[0]
    points = tuple(replace(p, reports=reports) if p.finish else p for p in course.points)
    night.event = replace(night.event, limit=None, courses=(replace(course, points=points),))
    view = night.situation(at("23:10")).outlooks["maren"].at(at("23:10"))
    due = view.arrival("finish", share) + AlarmRule().grace
    assert told(night.verdict(due - timedelta(minutes=1)).owed, K.OVERDUE) == []
    assert told(night.verdict(due).owed, K.OVERDUE) == ["sasha"]


def test_the_ladder_climbs_until_one_answers(night: Any, at: Any) -> None:
    """No answer in five minutes: the next step, as 'handed on'; whoever answers ends the climb."""
    start = alarmed(night, at)
    five = timedelta(minutes=5)
    assert of_alarms(night.tick(start + five - timedelta(seconds=1))) == []
    second = of_alarms(night.tick(start + five))
    assert told(second, K.HANDED_ON) == ["ana"]
    values = second[0].values
    assert isinstance(values, AlarmValues)
    assert values.asked == ("sasha",)
    assert values.caller == "sasha"
    assert values.last_known is not None
    assert values.last_known.point == "moss"
    night.answer(K.HANDED_ON, "ana", "i have it", start + 2 * five)
    owed = of_alarms(night.tick(start + 2 * five))
    assert told(owed, K.HANDED_ON) == ["sasha"]
    assert [n.values.holder for n in owed] == ["ana"]
    assert owed[0].values.look_again == start + 2 * five + timedelta(minutes=20)
    assert all(n.key.person != "vera" for n in night.tick(start + 3 * five))


def test_cannot_and_no_channel_do_not_wait(night: Any, at: Any) -> None:
    """'Cannot', or a person no channel reaches, moves the alarm on at once."""
    start = alarmed(night, at)
    night.answer(K.OVERDUE, "sasha", "cannot", start + timedelta(minutes=1))
    assert told(night.tick(start + timedelta(minutes=1)), K.HANDED_ON) == ["ana"]
    night.made[-1] = replace(night.made[-1], failed=True)
    owed = night.tick(start + timedelta(minutes=2))
    assert told(owed, K.HANDED_ON) == ["vera"]
    assert told(owed, K.UNREACHED) == ["olga"]


def test_words_answer_like_a_button(night: Any, at: Any) -> None:
    """Any words of the person answer: reached means answered."""
    start = alarmed(night, at)
    night.answer(K.OVERDUE, "sasha", "ok got it, calling now", start + timedelta(minutes=2))
    night.tick(start + timedelta(minutes=2))
    assert told(night.tick(start + timedelta(minutes=6)), K.HANDED_ON) == []


def test_an_alarm_nobody_answers_is_never_left_lying(night: Any, at: Any) -> None:
    """After the last step the organiser hears who is silent, and twenty minutes later the first is asked
    again."""
    start = alarmed(night, at)
    asked = [(0, "sasha")]
    for minute in range(1, 60):
        owed = night.tick(start + timedelta(minutes=minute))
        asked += [(minute, n.key.person) for n in of_alarms(owed) if n.needs_answer]
    assert asked[:5] == [(0, "sasha"), (5, "ana"), (10, "vera"), (15, "olga"), (35, "sasha")]
    assert {m.notice.values.person for m in night.got(K.UNREACHED, "olga")} == {"sasha", "ana", "vera"}


@pytest.mark.parametrize(("seconds", "again"), [(-1, False), (0, True)])
def test_the_holder_is_asked_again(night: Any, at: Any, seconds: int, again: bool) -> None:
    """Twenty minutes after the answer the holder is asked; each answer starts another twenty."""
    start = alarmed(night, at)
    night.answer(K.OVERDUE, "sasha", "i have it", start)
    night.tick(start)
    due = start + timedelta(minutes=20)
    owed = night.tick(due + timedelta(seconds=seconds))
    assert told(owed, K.LOOK_AGAIN) == (["sasha"] if again else [])
    if again:
        night.answer(K.LOOK_AGAIN, "sasha", "still missing", due)
        assert of_alarms(night.tick(due + timedelta(minutes=19))) == []
        assert told(night.tick(due + timedelta(minutes=20)), K.LOOK_AGAIN) == ["sasha"]


def test_a_holder_who_falls_silent_loses_it(night: Any, at: Any) -> None:
    """Look again unanswered for five minutes: the alarm climbs on."""
    start = alarmed(night, at)
    night.answer(K.OVERDUE, "sasha", "i have it", start)
    for minutes in (0, 20):
        night.tick(start + timedelta(minutes=minutes))
    assert told(night.tick(start + timedelta(minutes=25)), K.HANDED_ON) == ["ana"]


def test_the_first_who_answers_holds_it(night: Any, at: Any) -> None:
    """A second 'I have it' while it is held changes nothing."""
    start = alarmed(night, at)
    night.tick(start + timedelta(minutes=5))
    night.answer(K.OVERDUE, "sasha", "i have it", start + timedelta(minutes=6))
    night.answer(K.HANDED_ON, "ana", "i have it", start + timedelta(minutes=7))
    night.tick(start + timedelta(minutes=7))
    assert told(night.tick(start + timedelta(minutes=26)), K.LOOK_AGAIN) == ["sasha"]


def test_one_person_calls_race_control(night: Any, at: Any) -> None:
    """The caller is asked when somebody else holds the alarm; if the caller does not answer, the holder is
    asked to call; once race control knows, nobody is."""
    parts = tuple(
        replace(p, calls_race_control=p.person == "vera") if p.kind is not PartKind.ORGANISER else p
        for p in night.event.parts
    )
    night.event = replace(night.event, parts=parts)
    start = alarmed(night, at)
    night.answer(K.OVERDUE, "sasha", "i have it", start)
    owed = of_alarms(night.tick(start))
    assert [(n.key.person, n.values.caller, n.needs_answer) for n in owed] == [("vera", "vera", True)]
    owed = of_alarms(night.tick(start + timedelta(minutes=5)))
    assert [(n.key.person, n.values.caller, n.needs_answer) for n in owed] == [("sasha", "sasha", True)]
    assert of_alarms(night.tick(start + timedelta(minutes=6))) == []


def test_a_sighting_by_a_person_ends_it_for_all_who_were_told(night: Any, at: Any) -> None:
    """Seen at Ridge: stand-down once to each who was told, naming who saw her, where and when."""
    start = alarmed(night, at)
    night.tick(start + timedelta(minutes=5))
    seen = start + timedelta(minutes=7)
    night.report(Kind.IN, seen, "lena", point="ridge", source=Source.VOLUNTEER)
    owed = night.tick(seen)
    assert told(owed, K.STAND_DOWN) == ["ana", *NOT_LENA]
    values = next(n.values for n in owed if n.key.kind is K.STAND_DOWN)
    assert isinstance(values, StandDownValues)
    assert (values.reason, values.by, values.at, values.point) == ("seen", "lena", seen, "ridge")
    assert told(night.tick(seen + timedelta(minutes=30)), K.STAND_DOWN) == []


def test_an_unconfirmed_report_ends_nothing(night: Any, at: Any) -> None:
    """A guess does not end an alarm; its confirmation does."""
    start = alarmed(night, at)
    guess = night.report(
        Kind.IN,
        start + timedelta(minutes=3),
        "piet",
        point="ridge",
        unconfirmed=True,
        source=Source.SUPPORTER,
    )
    assert told(night.tick(start + timedelta(minutes=3)), K.STAND_DOWN) == []
    night.report(Kind.CONFIRMED, start + timedelta(minutes=4), "ana", about=guess)
    assert told(night.tick(start + timedelta(minutes=4)), K.STAND_DOWN) == NEAR


def test_a_doubtful_sighting_reaches_the_safety_contact_while_she_is_missed(night: Any, at: Any) -> None:
    """Hearsay ends no alarm, but whoever holds it must hear it, with its words, quiet hours or not; with no
    alarm open it is the crew's business."""
    night.event = replace(
        night.event,
        people=tuple(
            replace(p, quiet_from="00:00", quiet_to="23:59") if p.id == "sasha" else p
            for p in night.event.people
        ),
    )
    night.report(Kind.IN, "16:40", "jonas", point="mill", unconfirmed=True, doubt="guessed")
    assert "sasha" not in told(night.tick("16:42"), K.UNCONFIRMED)
    start = alarmed(night, at)
    heard = start + timedelta(minutes=3)
    night.report(
        Kind.MOVING_AGAIN, heard, "jonas", unconfirmed=True, doubt="guessed", words="a walker saw her"
    )
    assert told(night.tick(heard + timedelta(minutes=1)), K.UNCONFIRMED) == []
    owed = [n for n in night.tick(heard + timedelta(minutes=2)) if n.key.kind is K.UNCONFIRMED]
    assert "sasha" in {n.key.person for n in owed}
    assert {n.values.words for n in owed} == {"a walker saw her"}


def test_a_trackers_word_does_not_end_it(night: Any, at: Any) -> None:
    """A tracker tells where the tracker is; only a person or a mat ends an alarm."""
    start = alarmed(night, at)
    night.report(Kind.IN, start + timedelta(minutes=3), "tracker", point="ridge", source=Source.TRACKER)
    assert told(night.tick(start + timedelta(minutes=3)), K.STAND_DOWN) == []


def test_a_late_report_of_something_earlier_does_not_end_it(night: Any, at: Any) -> None:
    """In at Moss at 23:05, received during the alarm: she is as missing as before."""
    start = alarmed(night, at)
    night.report(Kind.IN, "23:05", "lena", received=start + timedelta(minutes=2), **VOLUNTEER)
    assert told(night.tick(start + timedelta(minutes=2)), K.STAND_DOWN) == []


def test_taking_the_sighting_back_opens_the_alarm_again(night: Any, at: Any) -> None:
    """The wrong bib was read: the alarm is raised anew at once."""
    start = alarmed(night, at)
    seen = start + timedelta(minutes=3)
    wrong = night.report(Kind.IN, seen, "lena", point="ridge", source=Source.VOLUNTEER)
    assert told(night.tick(seen), K.STAND_DOWN) == NOT_LENA
    night.report(Kind.TAKEN_BACK, seen + timedelta(minutes=2), "lena", about=wrong)
    assert told(night.tick(seen + timedelta(minutes=2)), K.OVERDUE) == ["sasha"]


def test_stand_down_by_race_control_and_silence_after_it(night: Any, at: Any) -> None:
    """A stand-down ends it; if an hour later still nothing is heard, the same silence raises it again."""
    start = alarmed(night, at)
    night.report(Kind.STAND_DOWN, start + timedelta(minutes=8), "olga")
    assert told(night.tick(start + timedelta(minutes=8)), K.STAND_DOWN) == NEAR
    assert of_alarms(night.tick(start + timedelta(minutes=67))) == []
    assert told(night.tick(start + timedelta(minutes=68)), K.OVERDUE) == ["sasha"]


@pytest.mark.parametrize(
    ("kind", "more", "reason"),
    [
        (Kind.RETIRED, {"how": Retired.OWN_CHOICE}, "retired"),
        (Kind.IN, {"point": "finish"}, "finished"),
    ],
)
def test_the_end_of_her_race_ends_overdue(night: Any, at: Any, kind: Kind, more: Any, reason: str) -> None:
    """Retired or finished: no longer overdue (her pick-up is watched on its own)."""
    start = alarmed(night, at)
    night.report(kind, start + timedelta(minutes=3), "lena", **more)
    owed = night.tick(start + timedelta(minutes=3))
    assert told(owed, K.STAND_DOWN) == NOT_LENA
    assert next(n.values.reason for n in owed if n.key.kind is K.STAND_DOWN) == reason


def test_help_goes_to_everybody_at_once(night: Any) -> None:
    """The whole ladder, the crew and the organiser in the same evaluation, though nobody confirmed it."""
    night.report(Kind.IN, "16:40", point="mill")
    night.tick("16:40")
    night.report(Kind.ASKED_FOR_HELP, "17:20", "maren", source=Source.RUNNER, unconfirmed=True, words="ankle")
    owed = night.tick("17:20")
    assert told(owed, K.ASKED_FOR_HELP) == ["ana", "jonas", "olga", "sasha", "vera"]
    assert {n.values.words for n in owed if n.key.kind is K.ASKED_FOR_HELP} == {"ankle"}


def test_help_reaches_the_pacer_with_her(night: Any) -> None:
    """Past Moss Tomas runs with her, and is told as well."""
    night.report(Kind.OUT, "23:10", "lena", **VOLUNTEER)
    night.report(Kind.ASKED_FOR_HELP, "23:40", "maren", source=Source.RUNNER)
    assert "tomas" in told(night.tick("23:40"), K.ASKED_FOR_HELP)


def test_a_later_check_in_does_not_end_help(night: Any) -> None:
    """Somebody who asked for help may walk into a point and still need it: only in hand, stand-down or
    taking the request back ends it."""
    night.report(Kind.ASKED_FOR_HELP, "17:20", "maren", source=Source.RUNNER)
    night.tick("17:20")
    night.report(Kind.IN, "19:20", point="chapel")
    assert told(night.tick("19:20"), K.STAND_DOWN) == []
    night.report(Kind.IN_HAND, "19:30")
    assert "sasha" in told(night.tick("19:30"), K.STAND_DOWN)


def test_help_taken_back(night: Any) -> None:
    """A request sent by mistake and taken back stands everybody down; the undo undone raises it again."""
    request = night.report(Kind.ASKED_FOR_HELP, "17:20", "maren", source=Source.RUNNER)
    night.tick("17:20")
    undo = night.report(Kind.TAKEN_BACK, "17:22", "maren", about=request)
    owed = night.tick("17:22")
    assert "sasha" in told(owed, K.STAND_DOWN)
    assert {n.values.reason for n in owed if n.key.kind is K.STAND_DOWN} == {"taken back"}
    night.report(Kind.TAKEN_BACK, "17:25", "maren", about=undo)
    assert "sasha" in told(night.tick("17:25"), K.ASKED_FOR_HELP)


def test_help_unanswered_goes_round_again_in_five_minutes(night: Any) -> None:
    """Nobody answers: everybody again after five minutes, and the organiser hears who is silent."""
    night.report(Kind.ASKED_FOR_HELP, "17:20", "maren", source=Source.RUNNER)
    night.tick("17:20")
    assert of_alarms(night.tick("17:24")) == []
    owed = night.tick("17:25")
    assert "sasha" in told(owed, K.ASKED_FOR_HELP)
    silent = {n.values.person for n in owed if isinstance(n.values, UnreachedValues)}
    assert silent == {"ana", "jonas", "sasha", "vera"}


def test_no_second_alarm_while_she_is_being_looked_for(night: Any, at: Any) -> None:
    """Help is open: that she is overdue as well raises nothing more, and late asks nobody."""
    gone_quiet(night)
    late, overdue = lines_of(night, at)
    night.report(Kind.ASKED_FOR_HELP, "23:40", "maren", source=Source.RUNNER)
    night.tick("23:40")
    for when in (late, overdue):
        owed = night.tick(when)
        assert told(owed, K.LATE) == told(owed, K.OVERDUE) == []


def test_sweep_through_without_her(night: Any) -> None:
    """The sweep is through Chapel, she was not seen there: crew and safety contact at once."""
    night.report(Kind.OUT, "16:46", point="mill")
    night.tick("16:46")
    night.report(Kind.SWEEP_THROUGH, "20:50", "lena", point="chapel", source=Source.VOLUNTEER)
    assert told(night.tick("20:50"), K.SWEEP) == ["ana", "jonas", "sasha", "vera"]
    night.report(
        Kind.IN, "20:20", "vera", point="chapel", received=night.made[-1].made_at + timedelta(minutes=3)
    )
    assert told(night.tick("20:53"), K.STAND_DOWN) == ["ana", *NEAR, "vera"]


def test_sweep_behind_her_is_nothing(night: Any) -> None:
    """The sweep comes through a point that she is known to have reached, by a later point too."""
    night.report(Kind.IN, "19:20", point="chapel")
    night.tick("19:20")
    for point in ("mill", "chapel"):
        night.report(Kind.SWEEP_THROUGH, "20:50", "lena", point=point, source=Source.VOLUNTEER)
    assert told(night.tick("20:50"), K.SWEEP) == []


def test_a_driver_on_the_road_is_told_but_not_asked(night: Any, at: Any) -> None:
    """Ana left for Barn; the alarm comes to her step: she is told, and the next step asked at once."""
    gone_quiet(night)
    _, overdue = lines_of(night, at)
    night.report(Kind.CREW_LEFT, overdue - timedelta(minutes=10), "ana", runner=None, point="barn")
    night.tick(overdue)
    owed = night.tick(overdue + timedelta(minutes=5))
    asked = {n.key.person: n.needs_answer for n in owed if n.key.kind is K.HANDED_ON}
    assert asked == {"ana": False, "vera": True}


def test_an_alarm_without_a_ladder_still_finds_somebody(night: Any, at: Any) -> None:
    """Nobody was given a step: the safety contact is first, then who can telephone, then the organiser."""
    night.event = replace(night.event, parts=tuple(replace(p, ladder=None) for p in night.event.parts))
    start = alarmed(night, at)
    assert told(night.tick(start + timedelta(minutes=5)), K.HANDED_ON) == ["vera"]
    assert told(night.tick(start + timedelta(minutes=10)), K.HANDED_ON) == ["olga"]


def test_whoever_is_on_the_ladder_is_told_whatever_their_part(night: Any, at: Any) -> None:
    """A supporter put on the second step by hand gets the alarm that is handed on."""
    extra = Part("piet", PartKind.SUPPORTER, "maren", ladder=2)
    parts = tuple(replace(p, ladder=3) if p.person == "ana" else p for p in night.event.parts)
    night.event = replace(night.event, parts=(*parts, extra))
    start = alarmed(night, at)
    assert told(night.tick(start + timedelta(minutes=5)), K.HANDED_ON) == ["piet"]


def test_an_alarm_says_that_her_shared_position_has_ended(night: Any, at: Any) -> None:
    """Her phone went silent at 18:30: whoever looks for her must not take its last place for hers, nor its silence for
    rest. Once she is heard of it is said no more."""
    night.report(Kind.OUT, "16:40", "maren", point="mill", source=Source.RUNNER)
    night.report(Kind.CONTACT_LOST, "18:30", "maren", source=Source.RUNNER)
    night.report(Kind.ASKED_FOR_HELP, "18:40", "tomas")
    calls = [n for n in night.tick("18:40") if n.key.kind is NoticeKind.ASKED_FOR_HELP]
    assert {n.values.contact_lost for n in calls} == {None}  # the call itself was word of her
    other = type(night)()
    other.report(Kind.OUT, "16:40", "maren", point="mill", source=Source.RUNNER)
    other.report(Kind.CONTACT_LOST, "18:30", "maren", source=Source.RUNNER)
    late = [n for _, n in other.run("18:30", "24:00", lazily=True) if n.key.kind is NoticeKind.OVERDUE]
    assert late
    assert {n.values.contact_lost for n in late} == {at("18:30")}


def test_a_call_that_names_nobody_says_so_until_it_is_said(night: Any) -> None:
    """Whose call it was is in the alarm; once it is confirmed for her, those told hear it once, and later steps leave the
    doubt out."""
    call = night.report(Kind.ASKED_FOR_HELP, "17:20", "ana", doubt="not-named")
    owed = night.tick("17:20")
    assert {n.values.not_named_by for n in owed if n.key.kind is K.ASKED_FOR_HELP} == {"ana"}
    night.report(Kind.CONFIRMED, "17:22", "ana", about=call)
    owed = night.tick("17:22")
    assert told(owed, K.HANDED_ON) == ["jonas", "olga", "sasha", "vera"]
    assert {(n.values.named_by, n.values.not_named_by, n.needs_answer) for n in owed} == {("ana", "", False)}
    assert of_alarms(night.tick("17:23")) == []
    assert {n.values.not_named_by for n in night.tick("17:25") if n.key.kind is K.ASKED_FOR_HELP} == {""}


def test_a_call_taken_back_for_another_runner_says_for_whom_it_was(night: Any) -> None:
    """The stand-down names who took it back, when, and the runner it was for."""
    call = night.report(Kind.ASKED_FOR_HELP, "17:20", "ana", doubt="not-named")
    night.tick("17:20")
    night.report(Kind.TAKEN_BACK, "17:22", "ana", about=call, person="tove")
    owed = night.tick("17:22")
    assert {(n.values.by, n.values.meant) for n in owed if isinstance(n.values, StandDownValues)} == {
        ("ana", "tove")
    }
