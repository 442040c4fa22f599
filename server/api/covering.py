"""What an answer to a notice says of who comes to a meeting: 'can't' of a leave-now, 'I go' of a meeting that is open."""

from __future__ import annotations

from dataclasses import replace

from server.api.snapshot import Picture
from server.facts.entry import Entry, Kind
from server.facts.state import RaceState
from server.watch.notice import Answer, Made, MeetingValues, NoticeKind, SwapValues, UncoveredValues

__all__ = ["follows", "holder"]

_SENT_OUT = frozenset({NoticeKind.LEAVE_SOON, NoticeKind.LEAVE_NOW, NoticeKind.WAKE_UP, NoticeKind.BE_THERE})


def follows(made: Made, answer: str, said: Entry, state: RaceState) -> Entry | None:
    """The entry that goes with the answer `said`; None where it says nothing of who comes."""
    values, person = made.notice.values, made.notice.key.person
    if isinstance(values, MeetingValues) and made.notice.key.kind in _SENT_OUT:
        out = any(f.person == person and f.meeting == values.meeting for f in state.fallen)
        if answer == Answer.CANNOT.value:
            return _entry(said, Kind.CANNOT_COME, values.meeting)
        if out and answer in (Answer.LEAVING.value, Answer.AWAKE.value):
            return _entry(said, Kind.CAN_COME, values.meeting)
    if isinstance(values, SwapValues) and not values.refused and answer == Answer.I_GO.value:
        return _entry(said, Kind.TAKES_OVER, values.meeting)
    if isinstance(values, UncoveredValues) and answer == Answer.I_GO.value:
        back = any(f.person == person and f.meeting in (None, values.meeting) for f in state.fallen)
        return _entry(said, Kind.CAN_COME if back else Kind.TAKES_OVER, values.meeting)
    return None


def _entry(said: Entry, kind: Kind, meeting: str) -> Entry:
    return replace(said, id="", kind=kind, key=f"{said.key}.goes", about=meeting, words="")


def holder(picture: Picture, meeting: str) -> str | None:
    """Who goes to a meeting now: who took it over, else the first of those planned; None for nobody."""
    taken = next((t.person for t in picture.state.taken if t.meeting == meeting), None)
    plan = next((m for m in picture.event.meetings if m.id == meeting), None)
    if taken is not None:
        return taken
    return next(iter(plan.crew), None) if plan is not None else None
