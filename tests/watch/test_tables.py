"""The tables are whole, and the pictures are made from them."""

from __future__ import annotations

import pytest

from server.event.model import PartKind
from server.facts.state import Going
from server.watch import draw, escalation_state
from server.watch.escalation_state import Stage, Turn
from server.watch.notice import NoticeKind, Urgency
from server.watch.table import TABLE


@pytest.mark.parametrize("kind", NoticeKind)
def test_every_kind_has_a_row(kind: NoticeKind) -> None:
    """No kind of notice can be added without saying who is told, when, and in which states."""
    assert kind in TABLE, f"{kind!r} has no row in server/watch/table.py"
    row = TABLE[kind]
    assert row.kind is kind
    assert row.told
    assert row.arises
    assert row.owed_when
    assert row.over_when


@pytest.mark.parametrize("kind", NoticeKind)
def test_every_kind_is_on_the_page_and_in_the_picture(kind: NoticeKind) -> None:
    """The docs name every kind."""
    assert f"| {kind.value} |" in draw.page()
    assert kind.value in draw.draw_states()


def test_privacy_of_strangers_to_the_crew() -> None:
    """Supporters hear only how her race ended; volunteers only what the organiser changed, corrections
    of it, of their own post whether she has come and that it is another, and near her that an alarm is open and over:
    neither is ever told where she is or may be, unless somebody has them told so. Whoever called for help hears back, and
    whoever wanted to be reminded is, whatever their part."""
    told = {part: {k for k, r in TABLE.items() if part in r.told} for part in PartKind}
    called = {NoticeKind.CALL_BACK, NoticeKind.MEANWHILE, NoticeKind.REMINDER}
    assert (
        told[PartKind.SUPPORTER] == {NoticeKind.RETIRED, NoticeKind.FINISHED, NoticeKind.CORRECTION} | called
    )
    post = {
        NoticeKind.RACE_CHANGE,
        NoticeKind.CORRECTION,
        NoticeKind.LATE,
        NoticeKind.NEW_VERSION,
        NoticeKind.PASSED_ON,
    }
    near = {NoticeKind.ALARM_NEWS, NoticeKind.STAND_DOWN}
    assert told[PartKind.VOLUNTEER] == post | near | called


def test_alarms_are_all_answered_but_the_stand_down() -> None:
    """Whatever is an alarm must be answered, but for its end and what goes with it: reached means answered."""
    silent = {k for k, r in TABLE.items() if r.urgency is Urgency.ALARM and not r.needs_answer}
    with_it = {NoticeKind.CALL_BACK, NoticeKind.MEANWHILE, NoticeKind.ALARM_KNOWN, NoticeKind.READ_OUT}
    assert silent == {NoticeKind.STAND_DOWN} | with_it


def test_nothing_routine_is_an_alarm_or_ends_one() -> None:
    """What a call for help holds back is what people get every hour; never what it is about itself."""
    routine = {k for k, r in TABLE.items() if r.routine}
    assert routine == {
        NoticeKind.LEAVE_SOON,
        NoticeKind.LEAVE_NOW,
        NoticeKind.BE_THERE,
        NoticeKind.WAKE_UP,
        NoticeKind.BRIEF,
        NoticeKind.MOVE_ON,
        NoticeKind.WINDOW_MOVED,
        NoticeKind.MEETING_LOST,
        NoticeKind.ARRIVED,
        NoticeKind.LEFT,
        NoticeKind.WORD_OF_HER,
        NoticeKind.CUT_OFF_ODDS,
        NoticeKind.BEFORE_DARK,
        NoticeKind.LATE,
        NoticeKind.LATE_HOME,
    }


def test_nothing_late_or_overdue_once_her_race_is_over() -> None:
    """Late, overdue and sweep are questions about somebody still on the course."""
    for kind in (NoticeKind.LATE, NoticeKind.OVERDUE, NoticeKind.SWEEP):
        assert TABLE[kind].arises == {Going.MOVING, Going.AT_POINT, Going.RESTING}


def test_a_call_for_help_climbs_its_ladder_in_every_state() -> None:
    """Her race may be closed for hours: nobody's call waits for it to be opened again, in the drawing either."""
    for kind in (
        NoticeKind.ASKED_FOR_HELP,
        NoticeKind.HANDED_ON,
        NoticeKind.LOOK_AGAIN,
        NoticeKind.STAND_DOWN,
    ):
        assert TABLE[kind].arises == set(Going)
    lines = draw.draw_states().splitlines()
    box = next(line.split("[")[0].strip() for line in lines if NoticeKind.ASKED_FOR_HELP.value in line)
    assert f"    closed --> {box}" in lines


def test_every_stage_of_the_ladder_can_end() -> None:
    """From every stage a confirmed sighting or stand-down leads to the end, and nothing leads back."""
    for stage in Stage:
        if stage is not Stage.OVER:
            assert escalation_state.TABLE[stage][Turn.ENDED] is Stage.OVER
    assert set(escalation_state.TABLE[Stage.OVER].values()) == {Stage.OVER}


def test_the_drawing_shows_every_change_of_stage() -> None:
    """Each arrow of the table is in the picture, with its reason."""
    picture = draw.draw()
    for stage, turns in escalation_state.TABLE.items():
        for turn, then in turns.items():
            if then is not stage:
                arrow = f"{stage.name.lower()} --> {then.name.lower()}:"
                assert any(arrow in line and turn.value in line for line in picture.splitlines())
