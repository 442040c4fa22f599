"""The ladder as a machine, turn by turn: who is asked, who holds it, when the next move is due, what is still open."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from server.event.model import AlarmRule
from server.watch.call_back import due_mark, state_of
from server.watch.escalation_state import (
    RAISING,
    Move,
    Stage,
    Stand,
    given_back,
    next_move,
    nobody_answers,
    open_alarms,
    over_at,
    replay,
    step_of,
)
from server.watch.notice import (
    AlarmValues,
    Answer,
    Answered,
    LateValues,
    Made,
    Notice,
    NoticeKey,
    NoticeKind,
    Said,
    StandDownValues,
    UnreachedValues,
    Urgency,
    Values,
)
from server.watch.told_home import told_home_at
from tests.watch.conftest import clock

K = NoticeKind
T = clock("20:00")
RULE = AlarmRule(answer_within=timedelta(minutes=5), look_again=timedelta(minutes=20))
CANNOT, ON_IT = Answer.CANNOT.value, Answer.ON_IT.value
STEPS = (("sasha",), ("ana", "jonas"), ("olga",))


def after(minutes: float) -> datetime:
    """So many minutes after the alarm was raised."""
    return T + timedelta(minutes=minutes)


def alarm_values(step: int, alarm: str = "overdue:e1:0", kind: NoticeKind = K.OVERDUE) -> AlarmValues:
    """An alarm as asked on that step; -1 only tells."""
    return AlarmValues(alarm, kind.value, None, None, None, None, None, (), (), None, None, step)


def made(
    who: str,
    minutes: float,
    values: Values | None = None,
    *said: tuple[float, str],
    kind: NoticeKind = K.OVERDUE,
    asks: bool = True,
    failed: bool = False,
    occasion: str = "",
) -> Made:
    """A notice to somebody so many minutes after the alarm, with what they answered when."""
    values = alarm_values(0) if values is None else values
    key = NoticeKey("stile", "maren", who, kind, "", 0)
    notice = Notice(key, Urgency.ALARM, after(minutes), None, asks, values, occasion=occasion)
    answers = tuple(Said(after(at), words) for at, words in said)
    return Made(
        notice,
        1,
        after(minutes),
        answered_at=answers[0].at if answers else None,
        answer=answers[-1].words if answers else "",
        failed=failed,
        said=answers,
    )


def again(who: str, minutes: float, *said: tuple[float, str], failed: bool = False) -> Made:
    """The holder asked again at the look-again time."""
    return made(who, minutes, alarm_values(0), *said, kind=K.LOOK_AGAIN, failed=failed)


def asking(
    step: int, at: float, asked: Sequence[str], out: Sequence[str] = (), *, spent: bool = False
) -> Stand:
    """A stand in which a step was asked."""
    return Stand(Stage.ASKING, step, after(at), None, spent, frozenset(asked), frozenset(out))


def held(who: str, at: float, step: int = 0, takes: int = 1) -> Stand:
    """A stand in which somebody has it."""
    return Stand(Stage.HELD, step, after(at), who, takes=takes)


STANDS: dict[str, tuple[list[Made], Stand]] = {
    "nothing made": ([], Stand()),
    "one asked": ([made("sasha", 0)], asking(0, 0, ["sasha"])),
    "only told asks nobody": ([made("sasha", 0, asks=False)], Stand()),
    "told what is known asks nobody": ([made("sasha", 0, alarm_values(-1))], Stand()),
    "two of one step": (
        [made("ana", 0, alarm_values(1)), made("jonas", 1, alarm_values(1))],
        asking(1, 1, ["ana", "jonas"]),
    ),
    "a later step forgets the earlier": (
        [made("sasha", 0, None, (1, CANNOT)), made("ana", 5, alarm_values(1))],
        asking(1, 5, ["ana"]),
    ),
    "can't, of one alone": (
        [made("sasha", 0, None, (1, CANNOT))],
        asking(0, 0, ["sasha"], ["sasha"], spent=True),
    ),
    "can't, of one of two": (
        [made("ana", 0, alarm_values(1), (1, CANNOT)), made("jonas", 0, alarm_values(1))],
        asking(1, 0, ["ana", "jonas"], ["ana"]),
    ),
    "can't, of both, one after the other": (
        [made("ana", 0, alarm_values(1), (1, CANNOT)), made("jonas", 0, alarm_values(1), (2, CANNOT))],
        asking(1, 0, ["ana", "jonas"], ["ana", "jonas"], spent=True),
    ),
    "no channel reaches one of two": (
        [made("ana", 0, alarm_values(1), failed=True), made("jonas", 0, alarm_values(1))],
        asking(1, 0, ["ana", "jonas"], ["ana"]),
    ),
    "no channel reaches either": (
        [made("ana", 0, alarm_values(1), failed=True), made("jonas", 1, alarm_values(1), failed=True)],
        asking(1, 1, ["ana", "jonas"], ["ana", "jonas"], spent=True),
    ),
    "answered": ([made("sasha", 0, None, (2, ON_IT))], held("sasha", 2)),
    "any words are an answer": ([made("sasha", 0, None, (2, "I am driving up"))], held("sasha", 2)),
    "the first who answers holds it": (
        [made("ana", 0, alarm_values(1), (3, ON_IT)), made("jonas", 0, alarm_values(1), (2, ON_IT))],
        held("jonas", 2, step=1),
    ),
    "who holds it says more": ([made("sasha", 0, None, (2, ON_IT), (9, "on the hill"))], held("sasha", 9)),
    "can't, of another than the holder": (
        [made("ana", 0, alarm_values(1), (2, ON_IT)), made("jonas", 0, alarm_values(1), (3, CANNOT))],
        replace(held("ana", 2, step=1), out=frozenset({"jonas"})),
    ),
    "can't is taken back by the same person": (
        [made("sasha", 0, None, (1, CANNOT), (3, ON_IT))],
        held("sasha", 3),
    ),
    "the holder gives it back": (
        [made("sasha", 0, None, (1, ON_IT), (3, CANNOT))],
        replace(asking(0, 3, ["sasha"], ["sasha"], spent=True), takes=1, gave_back="sasha"),
    ),
    "given back and taken by another": (
        [made("ana", 0, alarm_values(1), (1, ON_IT), (3, CANNOT)), made("jonas", 0, alarm_values(1), (4, ON_IT))],
        held("jonas", 4, step=1, takes=2),
    ),
    "given back and the next step asked": (
        [made("sasha", 0, None, (1, ON_IT), (3, CANNOT)), made("ana", 3.5, alarm_values(1))],
        replace(asking(1, 3.5, ["ana"]), takes=1, gave_back="sasha"),
    ),
    "given back and taken again by the same person": (
        [made("sasha", 0, None, (1, ON_IT), (3, CANNOT), (6, ON_IT))],
        held("sasha", 6, takes=2),
    ),
    "the holder is asked again": (
        [made("sasha", 0, None, (1, ON_IT)), again("sasha", 21)],
        Stand(Stage.LOOKING_AGAIN, 0, after(21), "sasha", asked=frozenset({"sasha"}), takes=1),
    ),
    "the holder can't be reached again": (
        [made("sasha", 0, None, (1, ON_IT)), again("sasha", 21, failed=True)],
        Stand(
            Stage.LOOKING_AGAIN, 0, after(21), "sasha", True, frozenset({"sasha"}), frozenset({"sasha"}), 1
        ),
    ),
    "the holder holds it on": (
        [made("sasha", 0, None, (1, ON_IT)), again("sasha", 21, (22, ON_IT))],
        held("sasha", 22),
    ),
    "another answers while the holder is asked again": (
        [made("sasha", 0, None, (1, ON_IT)), again("sasha", 21), made("ana", 0, None, (22, ON_IT))],
        held("ana", 22, takes=2),
    ),
    "the holder, asked again, can't": (
        [made("sasha", 0, None, (1, ON_IT)), again("sasha", 21, (23, CANNOT))],
        replace(asking(0, 23, ["sasha"], ["sasha"], spent=True), takes=1, gave_back="sasha"),
    ),
    "the holder asked again in vain, the next step asked, then the holder can't": (
        [
            made("sasha", 0, None, (1, ON_IT)),
            again("sasha", 21),
            made("ana", 26, alarm_values(1)),
            made("sasha", 0, None, (27, CANNOT)),
        ],
        replace(asking(1, 26, ["ana"], ["sasha"]), takes=1, gave_back="sasha"),
    ),
    "asked and answered in one moment": ([made("sasha", 0, None, (0, ON_IT))], held("sasha", 0)),
    "one can't and one has it in one moment": (
        [made("ana", 0, alarm_values(1), (2, ON_IT)), made("jonas", 0, alarm_values(1), (2, CANNOT))],
        held("ana", 2, step=1),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", STANDS)
def test_where_an_alarm_stands_after_these_turns(name: str) -> None:
    """Replayed from who was asked when and what they said, in whatever order the notices come."""
    notices, stand = STANDS[name]
    assert replay(notices) == stand
    assert replay(reversed(notices)) == stand


MOVES: dict[str, tuple[Stand, Move | None]] = {
    "raised": (Stand(), Move(T, 0)),
    "asking: the next step when these have had their time": (asking(0, 2, ["sasha"]), Move(after(7), 1)),
    "the second of three": (asking(1, 2, ["ana"]), Move(after(7), 2)),
    "spent: at once": (asking(0, 2, ["sasha"], ["sasha"], spent=True), Move(after(2), 1)),
    "the last: the first again, after the pause": (asking(2, 2, ["olga"]), Move(after(32), 3)),
    "the last, spent: after the pause all the same": (
        asking(2, 2, ["olga"], ["olga"], spent=True),
        Move(after(32), 3),
    ),
    "the last of the second round": (asking(5, 2, ["olga"]), Move(after(32), 6)),
    "in the second round": (asking(3, 2, ["sasha"]), Move(after(7), 4)),
    "given back on the last: at once": (
        replace(asking(2, 2, ["olga"], ["olga"], spent=True), gave_back="olga"),
        Move(after(2), 3),
    ),
    "held: the holder at the look-again time": (held("sasha", 2), Move(after(22), None)),
    "asked again: the next step when they have had their time": (
        Stand(Stage.LOOKING_AGAIN, 0, after(22), "sasha", asked=frozenset({"sasha"})),
        Move(after(27), 1),
    ),
    "asked again, out of reach: at once": (
        Stand(Stage.LOOKING_AGAIN, 0, after(22), "sasha", True, frozenset({"sasha"}), frozenset({"sasha"})),
        Move(after(22), 1),
    ),
    "asked again after the last step: no pause": (
        Stand(Stage.LOOKING_AGAIN, 2, after(22), "olga", asked=frozenset({"olga"})),
        Move(after(27), 3),
    ),
    "over": (Stand(Stage.OVER, 0, after(2)), None),
}


@pytest.mark.parametrize("name", MOVES)
def test_the_next_move_and_when_it_is_due(name: str) -> None:
    """Five minutes a step, none for a spent one, half an hour's pause after the last, twenty minutes to look again."""
    stand, move = MOVES[name]
    assert next_move(stand, STEPS, RULE, T, timedelta(minutes=30)) == move


def test_the_pause_after_the_last_step_is_never_shorter_than_an_answer_may_take() -> None:
    """Help goes round again at once, but not before those asked had their five minutes."""
    move = next_move(asking(2, 2, ["olga"]), STEPS, RULE, T, timedelta(minutes=1))
    assert move == Move(after(7), 3)


def test_a_ladder_without_anybody_has_no_move() -> None:
    """There is nobody to ask."""
    assert next_move(Stand(), (), RULE, T, timedelta(minutes=30)) is None


@pytest.mark.parametrize(
    ("stand", "is_back"),
    [
        (replace(asking(0, 2, ["sasha"], ["sasha"]), gave_back="sasha"), True),
        (replace(asking(1, 2, ["ana"]), gave_back="sasha"), False),
        (asking(0, 2, ["sasha"], ["sasha"]), False),
        (Stand(Stage.LOOKING_AGAIN, 0, T, None, asked=frozenset({"sasha"}), gave_back="sasha"), False),
    ],
)
def test_given_back_until_somebody_else_is_asked(stand: Stand, *, is_back: bool) -> None:
    """Only where who was asked last is who gave it back."""
    assert given_back(stand) is is_back


@pytest.mark.parametrize(
    ("stand", "minutes", "nobody"),
    [
        (asking(2, 2, ["olga"]), 6.9, False),
        (asking(2, 2, ["olga"]), 7, True),
        (asking(2, 2, ["olga"], ["olga"], spent=True), 2, True),
        (asking(1, 2, ["ana"]), 60, False),
        (asking(5, 2, ["olga"]), 7, True),
        (held("olga", 2, step=2), 60, False),
        (replace(asking(2, 2, ["olga"], ["olga"], spent=True), gave_back="olga"), 60, False),
        (Stand(), 60, False),
        (Stand(Stage.ASKING, 2, None), 60, False),
    ],
)
def test_nobody_answers_once_a_whole_round_has_had_its_time(
    stand: Stand, minutes: float, *, nobody: bool
) -> None:
    """Not before the last step's time is over; not of one step alone; not where somebody has it or gave it back."""
    assert nobody_answers(stand, STEPS, after(minutes), RULE) is nobody


def test_those_asked_last_have_their_time_from_then() -> None:
    """None while nobody was asked."""
    assert over_at(Stand(), RULE) is None
    assert over_at(asking(0, 2, ["sasha"]), RULE) == after(7)


@pytest.mark.parametrize(
    ("one", "step"),
    [
        (made("ana", 0, alarm_values(3)), 3),
        (made("ana", 0, alarm_values(-1)), -1),
        (made("ana", 0, UnreachedValues("jonas", "leave now", (), T), occasion="leave now:mill:step:12"), 12),
        (made("ana", 0, LateValues("mill", None, None)), 0),  # type: ignore[arg-type]
    ],
)
def test_the_step_on_which_somebody_was_asked(one: Made, step: int) -> None:
    """An alarm says it; who is to reach somebody has it in the occasion; anything else was the first."""
    assert step_of(one) == step


def stand_down(alarm: str, *also: str) -> Made:
    """Somebody told that it is over, and what is over with it."""
    return made("ana", 9, StandDownValues(alarm, "", "", "", T, also=also), kind=K.STAND_DOWN)


def test_an_alarm_is_open_until_it_or_the_one_it_waited_behind_is_stood_down() -> None:
    """In the order raised; a leave-now that climbs is no alarm; nor does telling it a second time open it again."""
    assert {k for k in NoticeKind if k.value in RAISING} == {K.OVERDUE, K.SWEEP, K.ASKED_FOR_HELP}
    sweep = made("ana", 0, alarm_values(0, "sweep:e1:0", K.SWEEP))
    overdue = made("ana", 1, alarm_values(0, "overdue:e1:0"))
    called = made("ana", 2, alarm_values(0, "asked for help:e2:0", K.ASKED_FOR_HELP))
    climbs = made("ana", 2, alarm_values(1, "leave now:e2:0", K.LEAVE_NOW))
    all_open = ("sweep:e1:0", "overdue:e1:0", "asked for help:e2:0")
    assert open_alarms([sweep, overdue, called, climbs, sweep]) == all_open
    assert open_alarms([sweep, overdue, stand_down("sweep:e1:0"), sweep]) == ("overdue:e1:0",)
    both = stand_down("asked for help:e2:0", "overdue:e1:0")
    assert open_alarms([sweep, overdue, called, both]) == ("sweep:e1:0",)
    assert open_alarms([]) == ()


@pytest.mark.parametrize(
    ("gone", "mark", "following"),
    [
        (0, None, 5), (4.9, None, 5), (5, 5, 10), (9.9, 5, 10), (10, 10, 20), (19.9, 10, 20), (20, 20, 40),
        (39.9, 20, 40), (40, 40, 60), (41, 40, 60), (60, 60, 80),
    ],
)  # fmt: skip
def test_the_caller_hears_at_5_10_and_20_minutes_and_then_every_20(
    gone: float, mark: float | None, following: float
) -> None:
    """The mark that is past, and when the next one comes."""
    past = None if mark is None else timedelta(minutes=mark)
    assert due_mark(T, after(gone)) == (past, after(following))


@pytest.mark.parametrize(
    ("stand", "state", "who"),
    [
        (Stand(), Answered.ASKED, None),
        (asking(0, 2, ["sasha"]), Answered.ASKED, None),
        (held("sasha", 2), Answered.HELD, "sasha"),
        (Stand(Stage.LOOKING_AGAIN, 0, T, "sasha"), Answered.HELD, "sasha"),
        (replace(asking(0, 2, ["sasha"]), gave_back="sasha"), Answered.GIVEN_BACK, "sasha"),
        (Stand(Stage.ASKING, 1, T, "sasha", gave_back="ana"), Answered.GIVEN_BACK, "ana"),
        (Stand(Stage.ASKING, 1, T, "sasha"), Answered.LOST, "sasha"),
    ],
)
def test_the_caller_hears_how_far_it_has_come(stand: Stand, state: Answered, who: str | None) -> None:
    """Held, given back, with one who does not answer any more, or only asked; and by whom."""
    assert state_of(stand) == (state, who)


@pytest.mark.parametrize(
    ("alarm", "told"),
    [(None, 30), (200, 30), (45, 30), (44, 29), (20, 5), (15, 0), (10, 0), (-60, 0)],
)
def test_home_hears_before_the_alarm_and_never_before_she_is_late(alarm: float | None, told: float) -> None:
    """Half an hour after she is late; a quarter of an hour before the alarm where that is sooner."""
    assert told_home_at(T, None if alarm is None else after(alarm)) == after(told)
