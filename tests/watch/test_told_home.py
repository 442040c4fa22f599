"""Late, told home: the safety contact hears that she is late before any alarm; and every alarm says why it comes now."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import AlarmRule, CutOff, Edge
from server.facts.entry import Kind
from server.forecast.outlook import RATHER
from server.watch.notice import AlarmValues, LateHomeValues, NoticeKind, WhyNow
from tests.watch.test_alarms import VOLUNTEER, gone_quiet, lines_of, told

K = NoticeKind
MINUTE = timedelta(minutes=1)


def patient(night: Any) -> Any:
    """The same night with an alarm that waits long: the grace puts it an hour and a half past late."""
    night.event = replace(night.event, alarm=AlarmRule(grace=timedelta(minutes=90)))
    return gone_quiet(night)


def test_home_is_told_half_an_hour_past_the_90_percent_time(night: Any, at: Any) -> None:
    """Not a minute sooner, to the safety contact alone, as news of her and no alarm."""
    patient(night)
    late, _ = lines_of(night, at)
    assert told(night.tick(late + 29 * MINUTE), K.LATE_HOME) == []
    owed = night.tick(late + 30 * MINUTE)
    assert told(owed, K.LATE_HOME) == ["sasha"]
    (notice,) = [n for n in owed if n.key.kind is K.LATE_HOME]
    assert not notice.needs_answer
    assert isinstance(notice.values, LateHomeValues)
    assert notice.values.alarm_at == late + 90 * MINUTE
    assert notice.values.last_known.point == "moss"


def test_home_is_told_before_an_alarm_that_comes_sooner(night: Any, at: Any) -> None:
    """The alarm comes 31 min after late: home has a quarter of an hour's notice of it."""
    gone_quiet(night)
    late, overdue = lines_of(night, at)
    assert overdue - late < timedelta(minutes=45)
    assert told(night.tick(overdue - 16 * MINUTE), K.LATE_HOME) == []
    assert told(night.tick(overdue - 15 * MINUTE), K.LATE_HOME) == ["sasha"]


def test_home_is_told_once_a_silence(night: Any, at: Any) -> None:
    """Crew who answer 'not yet' begin no new silence."""
    patient(night)
    late, _ = lines_of(night, at)
    night.tick(late)
    night.report(Kind.NOT_HERE_YET, late + 31 * MINUTE, "ana", point="ridge")
    log = night.run((late + MINUTE).strftime("26:%M"), "28:30")
    assert len([n for _, n in log if n.key.kind is K.LATE_HOME]) == 1


def test_home_is_not_told_of_a_runner_who_is_heard_of(night: Any, at: Any) -> None:
    """In at Ridge at the last minute."""
    patient(night)
    late, _ = lines_of(night, at)
    night.report(Kind.IN, late + 20 * MINUTE, "lena", **{**VOLUNTEER, "point": "ridge"})
    assert told(night.tick(late + 30 * MINUTE), K.LATE_HOME) == []


def test_home_is_not_told_that_she_is_late_while_runners_are_held(night: Any, at: Any) -> None:
    """The race waits, not she."""
    patient(night)
    late, _ = lines_of(night, at)
    night.report(Kind.HELD, late - MINUTE, "olga", runner=None)
    assert told(night.tick(late + 40 * MINUTE), K.LATE_HOME) == []


def test_home_hears_who_does_not_answer_with_it(night: Any, at: Any) -> None:
    """And gets no second message of the same minute; half an hour on it is asked to telephone them."""
    patient(night)
    night.event = replace(
        night.event,
        meetings=tuple(replace(m, point="ridge") if m.point == "barn" else m for m in night.event.meetings),
    )
    late, _ = lines_of(night, at)
    night.tick(late)
    owed = night.tick(late + 30 * MINUTE)
    values = next(n.values for n in owed if n.key.kind is K.LATE_HOME)
    assert isinstance(values, LateHomeValues)
    assert {"ana", "jonas"} <= {n.who for n in values.no_word}
    assert told(owed, K.UNREACHED) == []
    assert "sasha" in told(night.tick(late + 60 * MINUTE), K.UNREACHED)


def why(owed: list[Any]) -> str:
    """What the alarm among those says of why it comes now."""
    (values,) = {n.values.why_now for n in owed if n.key.kind in (K.OVERDUE, K.SWEEP, K.ASKED_FOR_HELP)}
    return str(values)


def test_an_alarm_of_silence_says_so(night: Any, at: Any) -> None:
    """The alarm line."""
    gone_quiet(night)
    _, overdue = lines_of(night, at)
    assert why(night.tick(overdue)) == WhyNow.LINE.value


def test_an_alarm_by_the_odds_comes_before_the_line_and_says_so(night: Any, at: Any) -> None:
    """Her race has rather ended: not before the grace is over."""
    gone_quiet(night)
    late, by_line = lines_of(night, at)
    night.going = RATHER - 0.01
    outlook = night.situation(at("23:11")).outlooks["maren"]
    sooner = outlook.ended_rather(RATHER, at("23:10"))
    due = max(sooner, late + 15 * MINUTE)
    assert due < by_line
    assert told(night.tick(due - MINUTE), K.OVERDUE) == []
    owed = night.tick(due)
    assert told(owed, K.OVERDUE) == ["sasha"]
    assert why(owed) == WhyNow.ODDS.value


def test_the_odds_of_one_who_rather_goes_on_raise_nothing(night: Any, at: Any) -> None:
    """Three to one is not yet enough: the line decides."""
    gone_quiet(night)
    _, by_line = lines_of(night, at)
    night.going = 0.25
    assert told(night.tick(by_line - MINUTE), K.OVERDUE) == []
    assert why(night.tick(by_line)) == WhyNow.LINE.value


def test_an_alarm_by_the_limit_says_so(night: Any, at: Any) -> None:
    """The finish closes half an hour after she was due at Ridge: it comes then, and says that it is for that."""
    end = at("26:25")
    finish = next(p for p in night.event.courses[0].points if p.id == "finish")
    closing = replace(finish, cut_offs=(CutOff(Edge.IN, elapsed=end - at("14:00")),))
    points = tuple(closing if p.id == "finish" else p for p in night.event.courses[0].points)
    night.event = replace(night.event, courses=(replace(night.event.courses[0], points=points),))
    gone_quiet(night)
    assert why(night.tick(end + 15 * MINUTE)) == WhyNow.LIMIT.value


def test_an_alarm_by_a_word_says_so(night: Any, at: Any) -> None:
    """'Not here yet' where she surely would have been."""
    patient(night)
    late, _ = lines_of(night, at)
    night.report(Kind.NOT_HERE_YET, late + 60 * MINUTE, "ana", point="ridge")
    night.event = replace(night.event, alarm=replace(night.event.alarm, grace=timedelta(minutes=15)))
    owed = night.tick(late + 60 * MINUTE)
    assert why(owed) in (WhyNow.TOLD_MISSING.value, WhyNow.LINE.value)


@pytest.mark.parametrize(
    ("kind", "by", "more", "reason"),
    [
        (Kind.ASKED_FOR_HELP, "ana", {"point": "ridge"}, WhyNow.HELP),
        (Kind.SWEEP_THROUGH, "olga", {"runner": None, "point": "ridge"}, WhyNow.SWEEP),
    ],
)
def test_other_alarms_say_what_they_are(
    night: Any, at: Any, kind: Kind, by: str, more: dict[str, Any], reason: WhyNow
) -> None:
    """Help, and the sweep without her."""
    gone_quiet(night)
    night.report(kind, "24:00", by, **more)
    owed = night.tick("24:00")
    assert any(isinstance(n.values, AlarmValues) for n in owed)
    assert why(owed) == reason.value
