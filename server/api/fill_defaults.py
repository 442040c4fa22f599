"""What each kind of report must say to be understood; names that don't exist, with the nearest that do.

'asked for help' does not come this way: it is let through whatever it lacks (fast_lane.py).
"""

from __future__ import annotations

import difflib
from collections.abc import Callable, Mapping
from dataclasses import replace

from server.api.envelope import ApiError
from server.api.models import CheckIn
from server.api.snapshot import Picture
from server.event.model import Event
from server.facts.entry import EVERYBODY, LOOKED_BACK, Entry, Kind, Retired, Why
from server.facts.state import RaceState
from server.facts.validation import drives_begin
from server.plan.movements.trips import goes_to

NEEDS_POINT = frozenset(
    {
        Kind.IN,
        Kind.OUT,
        Kind.THROUGH,
        Kind.NOT_HERE_YET,
        Kind.SWEEP_THROUGH,
        Kind.CREW_THERE,
        Kind.CREW_LEFT,
        Kind.CUT_OFF_MOVED,
        Kind.ACCESS_CLOSED,
        Kind.ACCESS_OPENED,
    }
)
COVERING = frozenset(
    {Kind.CANNOT_COME, Kind.CAN_COME, Kind.TAKES_OVER, Kind.ASKED_TO_SWAP, Kind.MEET_ELSEWHERE}
)
"""Who comes to meetings: `about` is a meeting's id."""
NEEDS_AMOUNT_OR_UNTIL = frozenset({Kind.START_DELAYED, Kind.WAVE_MOVED})

_Missing = Callable[[CheckIn], bool]
_NEEDS: Mapping[Kind, tuple[tuple[str, _Missing, str], ...]] = {
    Kind.POSITION: (("fix", lambda s: s.fix is None, "Send fix with lat and lon."),),
    Kind.RETIRED: (
        ("how", lambda s: s.how is None, "Say how: " + ", ".join(f"'{r}'" for r in Retired) + "."),
    ),
    Kind.CONDITION: (
        ("factor", lambda s: s.factor is None, "Send factor: 1.1 means a tenth slower from here."),
    ),
    Kind.HOW_SHE_IS: (("words", lambda s: not s.words, "Send how she is in words."),),
    Kind.LOG: (("logged", lambda s: not s.logged, "Send logged: a list of what was logged."),),
    Kind.LOOKED_BACK: (
        ("words", lambda s: not s.words, "Send words."),
        (
            "about",
            lambda s: s.about not in LOOKED_BACK,
            "Send about: the question, " + ", ".join(f"'{q}'" for q in LOOKED_BACK) + ".",
        ),
    ),
    Kind.TAKES_OVER: (("about", lambda s: s.about is None, "Send about: the id of the meeting."),),
    Kind.ASKED_TO_SWAP: (
        ("to", lambda s: s.to is None, "Send to: the id of whom you ask."),
        ("about", lambda s: s.about is None, "Send about: the id of the meeting."),
    ),
    Kind.MEET_ELSEWHERE: (("words", lambda s: not s.words, "Send words."),),
    Kind.PASSED_ON: (("words", lambda s: not (s.words or s.picture), "Send words."),),
    Kind.QUIET: (("until", lambda s: s.until is None, "Send until: when news may come again."),),
    Kind.REMIND: (
        (
            "until",
            lambda s: s.until is None and (s.edge is None or s.about is None or s.point is None),
            "Send until: when to be reminded; or about, point and edge: of whom, where, in or out.",
        ),
        ("words", lambda s: not s.words, "Send words."),
    ),
    Kind.NOTE: (("words", lambda s: not s.words, "Send words."),),
    Kind.CUT_OFF_MOVED: (("until", lambda s: s.until is None, "Send until: the new time."),),
    Kind.DRIVE_CONFIRMED: (
        ("amount_s", lambda s: s.amount_s is None, "Send amount_s: how long the drive takes."),
        ("words", lambda s: " > " not in s.words, "Send words as 'from place > to place'."),
    ),
}


def of_meeting(sent: CheckIn, picture: Picture, person: str) -> CheckIn:
    """The report with the meeting it is about, where it names the place of one, still to come, of the person's own: of
    somebody with one reason not to come there. Elsewhere the next, where no place is named. `to` may be a runner."""
    event, state = picture.event, picture.state
    if sent.to is not None and sent.to not in {p.id for p in event.people}:
        to = next((r.person for r in event.runners if r.id == sent.to), sent.to)
        sent = sent.model_copy(update={"to": to})
    if sent.kind not in COVERING or sent.about is not None:
        return sent
    who = sent.person or person
    runs = {r.id for r in event.runners if r.person == who}
    mine = [
        m
        for m in event.meetings
        if (who in goes_to(event, m) or m.runner in runs) and not _reached(state, m.runner, m.point)
    ]
    found = next((m for m in mine if m.point == sent.point), None)
    if sent.kind is Kind.MEET_ELSEWHERE and sent.point is None:
        found = next(iter(mine), None)
    whole = sent.kind is Kind.CANNOT_COME and sent.why not in (None, Why.NOT_SAID)
    if found is None or whole:
        return sent.model_copy(update={"point": None})
    return sent.model_copy(update={"about": found.id, "point": found.point})


def _reached(state: RaceState, runner: str, point: str) -> bool:
    return state.runner(runner).at_point(point) is not None


def complete(
    sent: CheckIn, picture: Picture, runner: str | None, *, edge: str | None = None, wave: str | None = None
) -> CheckIn:
    """The report as it can be kept; ApiError 'invalid' for the first thing that is missing or unknown."""
    event = picture.event
    if sent.point is None and sent.kind in NEEDS_POINT:
        raise ApiError("invalid", f"'{sent.kind}' needs the point", "point", "Send the id of the point.")
    if sent.point is not None:
        hotels = sorted(drives_begin(event)) if sent.kind is Kind.CREW_LEFT else []
        _known("point", sent.point, [*_points(event, runner), *hotels])
    if sent.person is not None:
        _known("person", sent.person, [p.id for p in event.people])
    if sent.to is not None and sent.to != EVERYBODY:
        _known("to", sent.to, [p.id for p in event.people])
    if sent.kind is Kind.REMIND and sent.about is not None:
        _known("about", sent.about, [r.id for r in event.runners])
        _known("point", sent.point or "", _points(event, sent.about))
    if sent.kind in COVERING and sent.about is not None:
        _known("about", sent.about, [m.id for m in event.meetings])
    for field, is_missing, remedy in _NEEDS.get(sent.kind, ()):
        if is_missing(sent):
            raise ApiError("invalid", f"'{sent.kind}' needs {field}", field, remedy)
    if sent.kind in NEEDS_AMOUNT_OR_UNTIL and sent.until is None and sent.amount_s is None:
        raise ApiError(
            "invalid", f"'{sent.kind}' needs how long or until when", "amount_s", "Send amount_s or until."
        )
    if sent.kind is Kind.CUT_OFF_MOVED and edge is None:
        raise ApiError("invalid", "'cut-off moved' needs which one", "edge", "Send edge: 'in' or 'out'.")
    if sent.kind is Kind.WAVE_MOVED:
        _known("wave", wave or "", sorted({r.wave for r in event.runners if r.wave}))
    return sent


def named_point(call: Entry, event: Event) -> Entry:
    """A call for help as it can be kept: the same, but for a point that the event does not have, which goes into its
    words."""
    if call.point is None or call.point in _points(event, call.runner):
        return call
    return replace(call, point=None, words=f"{call.words} (at: {call.point})".strip())


def _points(event: Event, runner: str | None) -> list[str]:
    courses = event.courses if runner is None else (event.course_of(runner),)
    return [p.id for c in courses for p in c.points]


def _known(field: str, value: str, there_are: list[str]) -> None:
    if value in there_are:
        return
    near = difflib.get_close_matches(value, there_are, n=1)
    remedy = f"Did you mean '{near[0]}'?" if near else f"Use one of: {', '.join(there_are)}."
    raise ApiError("not_found", f"the event has no {field} '{value}'", field, remedy)
