"""The table of what may follow what in a runner's race, and its drawing.

The fold walks this table and nothing else. What is not in it is refused: it changes nothing and is
listed, so that a person can be asked. Ground rules: place facts are welcome for as long as she is out
(also once retired, until somebody has her); only taking an entry back undoes 'retired' or 'finished'. One report is
believed less than a sighting after it: 'did not start', said of somebody who is then seen on the course, would
have nobody look for her all night.
"""

from __future__ import annotations

from enum import StrEnum

from server.facts.state import Going


class Step(StrEnum):
    """What moves a runner from state to state: kinds of entries, told apart where the point matters."""

    START_TIME = "her start time comes"
    AT_START = "in at the start"
    IN = "in"
    OUT = "out"
    THROUGH = "through"
    FINISH = "in at the finish"
    POSITION = "position"
    POSITION_ON = "position well past where she was"
    RESTING = "resting"
    MOVING_AGAIN = "moving again"
    RETIRED = "retired"
    DID_NOT_START = "did not start"
    IN_HAND = "in hand"
    RACE_CONTROL_TOLD = "race control told"
    STARTED_AFTER_ALL = "seen on the course after 'did not start'"


_G, _S = Going, Step

_OUT_THERE: dict[Step, Going] = {
    _S.START_TIME: _G.MOVING,
    _S.AT_START: _G.MOVING,  # a mat under the start arch says 'in' as she runs off
    _S.IN: _G.AT_POINT,
    _S.OUT: _G.MOVING,
    _S.THROUGH: _G.MOVING,
    _S.FINISH: _G.FINISHED,
    _S.POSITION: _G.MOVING,
    _S.POSITION_ON: _G.MOVING,
    _S.RESTING: _G.RESTING,
    _S.MOVING_AGAIN: _G.MOVING,
    _S.RETIRED: _G.RETIRED,
    _S.IN_HAND: _G.MOVING,
    _S.RACE_CONTROL_TOLD: _G.MOVING,
}


def _staying(state: Going) -> dict[Step, Going]:
    """As when moving, but a position nearby, or a word to race control, does not send her on."""
    stays = dict.fromkeys((_S.START_TIME, _S.POSITION, _S.IN_HAND, _S.RACE_CONTROL_TOLD), state)
    return _OUT_THERE | stays


TABLE: dict[Going, dict[Step, Going]] = {
    _G.BEFORE_START: {
        _S.START_TIME: _G.MOVING,
        _S.AT_START: _G.BEFORE_START,
        _S.POSITION: _G.BEFORE_START,
        _S.OUT: _G.MOVING,
        _S.RETIRED: _G.RETIRED,
        _S.DID_NOT_START: _G.IN_HAND,
        _S.RACE_CONTROL_TOLD: _G.BEFORE_START,
    },
    # 'did not start' after her start time: the clock alone had set her moving. The fold refuses it once she
    # has been seen farther on.
    _G.MOVING: _OUT_THERE | {_S.DID_NOT_START: _G.IN_HAND},
    _G.AT_POINT: _staying(_G.AT_POINT),
    _G.RESTING: _staying(_G.RESTING),
    _G.RETIRED: {
        _S.START_TIME: _G.RETIRED,
        _S.IN: _G.RETIRED,
        _S.POSITION: _G.RETIRED,
        _S.POSITION_ON: _G.RETIRED,
        _S.RESTING: _G.RETIRED,
        _S.RETIRED: _G.RETIRED,
        _S.DID_NOT_START: _G.IN_HAND,
        _S.IN_HAND: _G.IN_HAND,
        _S.RACE_CONTROL_TOLD: _G.RETIRED,
    },
    _G.IN_HAND: {
        _S.START_TIME: _G.IN_HAND,
        _S.POSITION: _G.IN_HAND,
        _S.POSITION_ON: _G.IN_HAND,
        _S.RETIRED: _G.IN_HAND,
        _S.DID_NOT_START: _G.IN_HAND,
        _S.IN_HAND: _G.IN_HAND,
        _S.RACE_CONTROL_TOLD: _G.CLOSED,
        _S.STARTED_AFTER_ALL: _G.BEFORE_START,
    },
    _G.FINISHED: {
        _S.OUT: _G.FINISHED,
        _S.FINISH: _G.FINISHED,
        _S.POSITION: _G.FINISHED,
        _S.POSITION_ON: _G.FINISHED,
        _S.RESTING: _G.FINISHED,
        _S.MOVING_AGAIN: _G.FINISHED,
        _S.RACE_CONTROL_TOLD: _G.FINISHED,
        _S.IN_HAND: _G.CLOSED,
    },
    _G.CLOSED: {
        _S.OUT: _G.CLOSED,
        _S.FINISH: _G.CLOSED,
        _S.POSITION: _G.CLOSED,
        _S.POSITION_ON: _G.CLOSED,
        _S.IN_HAND: _G.CLOSED,
        _S.RACE_CONTROL_TOLD: _G.CLOSED,
        _S.STARTED_AFTER_ALL: _G.BEFORE_START,
    },
}


def after(state: Going, step: Step) -> Going | None:
    """The state after `step`, or None where the table does not allow it."""
    return TABLE[state].get(step)
