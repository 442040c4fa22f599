"""What a call for help owes at once is a share of what the whole look finds: same people, same numbers, same words."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from server.facts.entry import NOT_NAMED, Kind, Source
from server.watch.evaluate import evaluate_event, evaluate_help, evaluate_runner
from server.watch.notice import NoticeKind

HERSELF = {"by": "maren", "source": Source.RUNNER, "words": "fallen, my ankle"}


@pytest.mark.parametrize(
    "before", ["nothing", "a call that was stood down", "a call that is open", "an alarm"]
)
def test_the_alarm_is_that_of_the_whole_look(night: Any, at: Any, before: str) -> None:
    """Also after a call that has ended, beside one that is open, and while she is overdue."""
    when = "16:40"
    if before.startswith("a call"):
        night.report(Kind.ASKED_FOR_HELP, "16:00", **HERSELF)
        night.tick("16:00")
        when = "16:01"
    if before == "a call that was stood down":
        when = "16:40"
        night.report(Kind.IN_HAND, "16:10", "ana")
        night.tick("16:10")
    if before == "an alarm":
        night.run("22:00", "23:00")
        when = "23:01"
    call = night.report(Kind.ASKED_FOR_HELP, when, **HERSELF)
    situation = night.situation(at(when))
    owed = evaluate_help(situation, "maren", at(when))
    whole = evaluate_runner(situation, "maren", at(when)).owed
    assert set(owed) <= set(whole)
    alarm = {n.key for n in whole if n.key.kind is NoticeKind.ASKED_FOR_HELP}
    assert {n.key for n in owed} >= alarm
    assert bool(alarm) is (before != "a call that is open"), call


def test_without_meetings_and_forecast_the_same_people_are_told(night: Any, at: Any) -> None:
    """Nothing has been worked out yet, as just after a start: everybody is told all the same."""
    night.report(Kind.ASKED_FOR_HELP, "16:40", **HERSELF)
    situation = night.situation(at("16:40"))
    bare = replace(situation, outlooks={}, timetables={}, courses={}, sheet={})
    owed, had = evaluate_help(bare, "maren", at("16:40")), evaluate_help(situation, "maren", at("16:40"))
    assert [n.key for n in owed] == [n.key for n in had]
    assert {n.values.words for n in owed} == {"fallen, my ankle"}
    assert {n.values.last_known for n in owed} == {n.values.last_known for n in had}


def test_a_call_that_names_nobody(night: Any, at: Any) -> None:
    """It goes to race control and those at home, as by the whole look."""
    night.report(Kind.ASKED_FOR_HELP, "16:40", runner=None, doubt=NOT_NAMED, **HERSELF)
    situation = night.situation(at("16:40"))
    owed = evaluate_help(situation, "", at("16:40"))
    assert owed
    assert set(owed) <= set(evaluate_event(situation, at("16:40")).owed)
