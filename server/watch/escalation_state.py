"""The ladder as a machine: a table of what follows what, and the walk over notices made and answers given.

It remembers nothing: where an alarm stands is replayed each time from who was asked when, and who answered.
Reached means answered; a channel that accepted a message has reached nobody. The first who answers holds the
alarm until it is time to look again; who answers then, holds it on. No answer is the last: who said 'can't' may
take it later, and a holder who says 'can't' gives it back, which has the next step asked at once.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum

from server.event.model import AlarmRule
from server.watch.notice import AlarmValues, Answer, Made, NoticeKind, StandDownValues, UnreachedValues

__all__ = ["TABLE", "Move", "Stage", "Stand", "Turn", "given_back", "next_move", "open_alarms", "replay"]


RAISING = frozenset(k.value for k in (NoticeKind.ASKED_FOR_HELP, NoticeKind.SWEEP, NoticeKind.OVERDUE))
"""Kinds that are alarms about her; a leave-now nobody answers climbs as well, but alarms nobody."""


class Stage(StrEnum):
    """Where an alarm stands."""

    RAISED = "raised"
    ASKING = "asking a step of the ladder"
    HELD = "held by the one who answered"
    LOOKING_AGAIN = "the holder is asked again"
    OVER = "over"


class Turn(StrEnum):
    """What moves an alarm."""

    ASKED = "the people of a step are asked"
    ANSWERED = "somebody answers"
    DECLINED = "somebody can't"
    GAVE_BACK = "its holder can't any more"
    LOOK_AGAIN = "look-again time"
    ENDED = "confirmed sighting, in hand, or stand-down"


_S, _T = Stage, Turn

TABLE: Mapping[Stage, Mapping[Turn, Stage]] = {
    _S.RAISED: {_T.ASKED: _S.ASKING, _T.ANSWERED: _S.HELD, _T.ENDED: _S.OVER},
    _S.ASKING: {
        _T.ASKED: _S.ASKING,
        _T.ANSWERED: _S.HELD,
        _T.DECLINED: _S.ASKING,
        _T.ENDED: _S.OVER,
    },
    _S.HELD: {
        _T.ANSWERED: _S.HELD,
        _T.DECLINED: _S.HELD,
        _T.GAVE_BACK: _S.ASKING,
        _T.LOOK_AGAIN: _S.LOOKING_AGAIN,
        _T.ASKED: _S.ASKING,
        _T.ENDED: _S.OVER,
    },
    _S.LOOKING_AGAIN: {
        _T.ANSWERED: _S.HELD,
        _T.DECLINED: _S.LOOKING_AGAIN,
        _T.GAVE_BACK: _S.ASKING,
        _T.ASKED: _S.ASKING,
        _T.ENDED: _S.OVER,
    },
    _S.OVER: {_T.ANSWERED: _S.OVER, _T.DECLINED: _S.OVER},
}
"""A turn that has no entry for a stage changes nothing."""


@dataclass(frozen=True, slots=True)
class Stand:
    """Where an alarm stands. `step` numbers the steps asked so far from 0 (-1 = none), going on upwards in
    later rounds. `since` is when the stage began. `spent`: everybody asked in it can't, or is unreachable.
    `takes` counts how often somebody took it, `gave_back` names who gave it back last, if nobody has it since."""

    stage: Stage = Stage.RAISED
    step: int = -1
    since: datetime | None = None
    holder: str | None = None
    spent: bool = False
    asked: frozenset[str] = frozenset()
    out: frozenset[str] = frozenset()
    takes: int = 0
    gave_back: str = ""


def replay(notices: Iterable[Made]) -> Stand:
    """Where an alarm stands after these of its notices, in any order."""
    stand = Stand()
    for at, what, made in sorted(_turns(notices), key=_order):
        holds = stand.stage in (Stage.HELD, Stage.LOOKING_AGAIN) and made.notice.key.person == stand.holder
        turn = Turn.GAVE_BACK if holds and what is Turn.DECLINED else what
        then = TABLE[stand.stage].get(turn)
        if then is not None:
            stand = _after(stand, then, turn, at, made)
    return replace(stand, spent=bool(stand.asked) and stand.asked <= stand.out)


def _turns(notices: Iterable[Made]) -> Iterable[tuple[datetime, Turn, Made]]:
    for m in notices:
        if m.notice.needs_answer and step_of(m) >= 0:
            again = m.notice.key.kind is NoticeKind.LOOK_AGAIN
            yield m.made_at, Turn.LOOK_AGAIN if again else Turn.ASKED, m
        for said in m.answers:
            yield said.at, Turn.DECLINED if said.words == Answer.CANNOT.value else Turn.ANSWERED, m


_RANK = {turn: i for i, turn in enumerate((Turn.ASKED, Turn.LOOK_AGAIN, Turn.DECLINED, Turn.ANSWERED))}


def _order(turn: tuple[datetime, Turn, Made]) -> tuple[datetime, int, str]:
    at, what, made = turn
    return at, _RANK[what], made.notice.key.text()


def _after(stand: Stand, then: Stage, turn: Turn, at: datetime, made: Made) -> Stand:
    who = made.notice.key.person
    match turn:
        case Turn.ASKED | Turn.LOOK_AGAIN:
            step = step_of(made) if turn is Turn.ASKED else stand.step
            same = stand.stage is then and step == stand.step
            asked = stand.asked | {who} if same else frozenset({who})
            out = stand.out if same else frozenset()
            gone = frozenset({who}) if made.failed else frozenset()
            return replace(stand, stage=then, step=step, since=at, asked=asked, out=out | gone)
        case Turn.DECLINED if who == stand.holder:
            # Asked again in vain, or the others asked in the same moment: nobody has it, and it is known who had.
            return replace(stand, stage=then, out=stand.out | {who}, holder=None, gave_back=who)
        case Turn.DECLINED:
            return replace(stand, stage=then, out=stand.out | {who})
        case Turn.GAVE_BACK:
            alone = frozenset({who})
            return replace(stand, stage=then, since=at, holder=None, asked=alone, out=alone, gave_back=who)
        case _:
            if stand.stage is Stage.HELD and who != stand.holder:
                return stand  # the first who answers holds it
            takes = stand.takes + (who != stand.holder)
            free = frozenset[str]()
            return replace(
                stand, stage=then, since=at, holder=who, asked=free, out=free, takes=takes, gave_back=""
            )


def step_of(made: Made) -> int:
    """The step of the ladder that a notice was asked on; -1 for one that only tells."""
    match made.notice.values:
        case AlarmValues(step=step):
            return step
        case UnreachedValues():
            return int(made.notice.occasion.rsplit(":", 1)[1])
        case _:
            return 0


def open_alarms(made: Iterable[Made]) -> tuple[str, ...]:
    """Ids of alarms raised and not stood down, in the order in which they were raised."""
    raised: dict[str, None] = {}
    closed: set[str] = set()
    for m in made:
        match m.notice.values:
            case AlarmValues(alarm=alarm, of_kind=kind) if kind in RAISING:
                raised.setdefault(alarm)
            case StandDownValues(alarm=alarm, also=also):
                closed.update((alarm, *also))
            case _:
                pass
    return tuple(a for a in raised if a not in closed)


@dataclass(frozen=True, slots=True)
class Move:
    """What is to be done at `at`: ask step number `step`, or (None) ask the holder again."""

    at: datetime
    step: int | None


def next_move(
    stand: Stand, steps: Sequence[tuple[str, ...]], rule: AlarmRule, raised: datetime, pause: timedelta
) -> Move | None:
    """The next move and when it is due; None when nobody is on the ladder or the alarm is over.

    A step has `rule.answer_within` to answer, unless it is spent. After the last step the first is asked
    again, `pause` after the last was: an alarm that nobody answers is never left lying.
    """
    if not steps or stand.stage is Stage.OVER:
        return None
    if stand.stage is Stage.RAISED or stand.since is None:
        return Move(raised, 0)
    if stand.stage is Stage.HELD:
        return Move(stand.since + rule.look_again, None)
    number = stand.step + 1
    wait = timedelta(0) if stand.spent else rule.answer_within
    if stand.stage is Stage.ASKING and number % len(steps) == 0 and not given_back(stand):
        wait = max(rule.answer_within, pause)
    return Move(stand.since + wait, number)


def given_back(stand: Stand) -> bool:
    """Whether its holder has given it back and nobody has been asked since."""
    return stand.stage is Stage.ASKING and stand.asked == {stand.gave_back}


def nobody_answers(stand: Stand, steps: Sequence[tuple[str, ...]], now: datetime, rule: AlarmRule) -> bool:
    """Whether a whole round of the ladder has gone by without an answer."""
    if given_back(stand):
        return False
    if stand.stage is not Stage.ASKING or stand.since is None or (stand.step + 1) % len(steps):
        return False
    return stand.spent or now >= stand.since + rule.answer_within


def over_at(stand: Stand, rule: AlarmRule) -> datetime | None:
    """When the people asked last have had their time."""
    return None if stand.since is None else stand.since + rule.answer_within
