"""What follows from the outcome of an attempt: a table the outbox walks, and how long to wait. Pure."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from enum import StrEnum

from server.journal.values import DeliveryState, Outcome
from server.watch.notice import Urgency

__all__ = ["AFTER", "RANK", "TRIES_BEFORE_NEXT", "After", "NextChannel", "backoff"]

TRIES_BEFORE_NEXT = 4
"""Attempts that failed for want of a connection before the next channel is tried beside this one."""

RANK = {Urgency.ALARM: 0, Urgency.ACTION: 1, Urgency.NEWS: 2}
"""In which order deliveries go out."""


class NextChannel(StrEnum):
    """Whether the person's next channel is tried as well."""

    NO = "no"
    NOW = "now"
    AFTER_TRIES = "after some tries"


@dataclass(frozen=True, slots=True)
class After:
    """`state` the delivery is left in; `repeat`: the next attempt may be a repeat; `again`: there is one;
    `chat_waits`: nothing else goes to this chat before; `block`: the address is of no use until heard from."""

    state: DeliveryState
    again: bool = False
    repeat: bool = False
    next_channel: NextChannel = NextChannel.NO
    chat_waits: bool = False
    block: bool = False


AFTER: dict[Outcome, After] = {
    Outcome.SENT: After(DeliveryState.SENT),
    Outcome.NOT_SENT: After(DeliveryState.QUEUED, again=True, next_channel=NextChannel.AFTER_TRIES),
    Outcome.UNKNOWN: After(
        DeliveryState.UNKNOWN, again=True, repeat=True, next_channel=NextChannel.AFTER_TRIES
    ),
    Outcome.LATER: After(
        DeliveryState.QUEUED, again=True, next_channel=NextChannel.AFTER_TRIES, chat_waits=True
    ),
    Outcome.BLOCKED: After(DeliveryState.FAILED, next_channel=NextChannel.NOW, block=True),
    Outcome.PERMANENT: After(DeliveryState.PERMANENT, next_channel=NextChannel.NOW),
    Outcome.MOVED: After(DeliveryState.QUEUED, again=True),
    Outcome.WRONG_SETTINGS: After(DeliveryState.QUEUED, again=True, next_channel=NextChannel.NOW),
}

_FIRST = timedelta(seconds=2)
_LONGEST = {0: timedelta(seconds=15), 1: timedelta(seconds=60), 2: timedelta(minutes=5)}


def backoff(tries: int, rank: int) -> timedelta:
    """How long to wait after attempt number `tries` (from 1): 2 s, doubled each time, at most 15 s for an
    alarm, 1 min for an action, 5 min for news. Never gives up: the notice is owed until overtaken.

    Common practice, no source. No jitter: a chat is spaced by itself, and tests can say the second.
    """
    if tries < 1:
        raise ValueError(f"attempts count from 1, not {tries}")
    longest = _LONGEST[rank]
    doubled: int = 2 ** min(tries - 1, 16)
    return min(longest, _FIRST * doubled)
