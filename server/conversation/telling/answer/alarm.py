"""The shape of what somebody is answered about an open alarm: worded by the server, as they have to act on it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class AlarmNowAnswer:
    """GET …/alarm: what the asker does now about the alarm that is open about her, worded for them.

    `alarm`: its kind ('' none is open); `part`: what the asker is in it ('runner', 'caller', 'holder', 'asked', 'near').
    `now`: what to do; `tell`: what to read out to rescuers; `call`: whether to call the emergency number; `known`: what is
    known ('' for who may not see it).
    """

    runner: str
    runner_name: str
    alarm: str
    part: str
    now: str
    tell: str
    call: str
    known: str
