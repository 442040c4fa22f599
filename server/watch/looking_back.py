"""After the race: everybody who had a part in it is asked three things once, so that the next is better."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from server.event.model import PartKind
from server.facts.entry import Retired
from server.facts.state import RunnerState, Stamp
from server.watch.escalation_state import open_alarms
from server.watch.news_values import LookBackValues
from server.watch.notice import NoticeKind
from server.watch.runner_context import Draft, Rule, Sight, Wake

__all__ = ["RULES"]

AFTER = timedelta(hours=12)
"""So long after her race was over: they have slept, and have not yet forgotten (own choice)."""
_ASKED = (PartKind.RUNNER, PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT)


def look_back(sight: Sight) -> Iterator[Draft | Wake]:
    """Once to each; not while an alarm is open, nor of a race that she did not start."""
    over = _over(sight.state)
    if over is None or open_alarms(sight.made):
        return
    due = over.at + AFTER
    if sight.now < due:
        yield Wake(due)
        return
    for who in sight.people(*_ASKED):
        yield Draft(
            NoticeKind.LOOK_BACK, who, "", "once", due, LookBackValues(over.at), (over.entry,), mine=True
        )


def _over(state: RunnerState) -> Stamp | None:
    if not state.going.race_over:
        return None
    if state.finished is not None:
        return state.finished
    ended = state.retirement
    return None if ended is None or ended.how is Retired.DID_NOT_START else ended.stamp


RULES: tuple[Rule, ...] = (look_back,)
