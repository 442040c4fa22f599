"""What each kind of report must say to be understood; names that don't exist, with the nearest that do.

'asked for help' is let through whatever it lacks: a wrong point goes into its words instead.
"""

from __future__ import annotations

import difflib
from collections.abc import Callable, Mapping

from server.api.envelope import ApiError
from server.api.models import CheckIn
from server.api.picture import Picture
from server.event.model import Event
from server.facts.doubt import drives_begin
from server.facts.entry import Kind, Retired

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
    Kind.NOTE: (("words", lambda s: not s.words, "Send words."),),
    Kind.CUT_OFF_MOVED: (("until", lambda s: s.until is None, "Send until: the new time."),),
    Kind.DRIVE_CONFIRMED: (
        ("amount_s", lambda s: s.amount_s is None, "Send amount_s: how long the drive takes."),
        ("words", lambda s: " > " not in s.words, "Send words as 'from place > to place'."),
    ),
}


def complete(
    sent: CheckIn, picture: Picture, runner: str | None, *, edge: str | None = None, wave: str | None = None
) -> CheckIn:
    """The report as it can be kept; ApiError 'invalid' for the first thing that is missing or unknown."""
    event = picture.event
    if sent.kind is Kind.ASKED_FOR_HELP:
        return _help(sent, event, runner)
    if sent.point is None and sent.kind in NEEDS_POINT:
        raise ApiError("invalid", f"'{sent.kind}' needs the point", "point", "Send the id of the point.")
    if sent.point is not None:
        hotels = sorted(drives_begin(event)) if sent.kind is Kind.CREW_LEFT else []
        _known("point", sent.point, [*_points(event, runner), *hotels])
    if sent.person is not None:
        _known("person", sent.person, [p.id for p in event.people])
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


def _help(sent: CheckIn, event: Event, runner: str | None) -> CheckIn:
    if sent.point is None or sent.point in _points(event, runner):
        return sent
    return sent.model_copy(update={"point": None, "words": f"{sent.words} (at: {sent.point})".strip()})


def _points(event: Event, runner: str | None) -> list[str]:
    courses = event.courses if runner is None else (event.course_of(runner),)
    return [p.id for c in courses for p in c.points]


def _known(field: str, value: str, there_are: list[str]) -> None:
    if value in there_are:
        return
    near = difflib.get_close_matches(value, there_are, n=1)
    remedy = f"Did you mean '{near[0]}'?" if near else f"Use one of: {', '.join(there_are)}."
    raise ApiError("not_found", f"the event has no {field} '{value}'", field, remedy)
