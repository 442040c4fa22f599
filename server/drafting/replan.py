"""A change of the plan put into the text of the event file: the tables it is about are written anew, all else stays as it
stands, byte for byte. Whether the plan holds then is said by the check of the new text, as for any other file."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from server.drafting.crew import kit_of, put_drives
from server.drafting.document import Document
from server.drafting.race import ident
from server.drafting.typed import fresh_id
from server.event.forms import slug
from server.event.model import Event, PartKind
from server.event.replan import NotPossibleError, PlanChange, What, in_place_of

__all__ = ["replanned"]

ASKED_HERE = frozenset({PartKind.CREW, PartKind.PACER, PartKind.SUPPORTER})
"""Parts that a change may give: who stands on the ladder or decides is said in the event file, at leisure."""


def replanned(text: str, event: Event, change: PlanChange) -> str:
    """The text with that change in it; `event` is what the text says. NotPossibleError for what it has not got, and for a
    change that changes nothing; `UnusualError` for a text that is not written table by table."""
    doc = Document(text)
    _PUTS[change.what](doc, event, change)
    if doc.text() == text:
        raise NotPossibleError("nothing-changes", "what")
    return doc.text()


def _meeting(event: Event, change: PlanChange) -> int:
    """Where in the file the meeting stands: its tables are read one by one, in their order."""
    found = next((n for n, m in enumerate(event.meetings) if m.id == change.meeting), None)
    if found is None:
        raise NotPossibleError("no-meeting", "meeting")
    return found


def _runner(event: Event, change: PlanChange) -> str:
    only = event.runners[0].id if len(event.runners) == 1 else None
    found = change.runner or only
    if found is None or all(r.id != found for r in event.runners):
        raise NotPossibleError("no-runner", "runner")
    return found


def _point(event: Event, change: PlanChange, runner: str) -> str:
    if all(p.id != change.point for p in event.course_of(runner).points):
        raise NotPossibleError("no-point", "point")
    assert change.point is not None
    if any(m.point == change.point for m in event.meetings_of(runner)):
        raise NotPossibleError("met-there", "point")
    return change.point


def _goes(event: Event, change: PlanChange) -> dict[str, Any]:
    """Who goes, in which car."""
    if not change.crew:
        raise NotPossibleError("nobody-goes", "crew")
    if any(all(p.id != who for p in event.people) for who in change.crew):
        raise NotPossibleError("no-person", "crew")
    if change.car is not None and all(c.id != change.car for c in event.cars):
        raise NotPossibleError("no-car", "car")
    return {"crew": list(dict.fromkeys(change.crew)), "car": change.car}


def _who_goes(doc: Document, event: Event, change: PlanChange) -> None:
    at = _meeting(event, change)
    goes, plan = _goes(event, change), event.meetings[at]
    # Where those who do not go were to come from is nothing to those who do.
    origin = plan.from_place if set(plan.crew) & set(change.crew) and plan.car == change.car else None
    values: dict[str, Any] = {**goes, "from": origin}
    if plan.car != change.car:
        # What was to come in the car before comes in the one that goes now; that it has to be handed over is told.
        kit = doc.tables("meetings")[at].get("kit") or []
        rode = [isinstance(one, dict) and one.get("car") == plan.car for one in kit]
        if any(rode):
            values["kit"] = [
                {k: v for k, v in one.items() if k != "car"} if left else one
                for one, left in zip(kit, rode, strict=True)
            ]
    doc.change("meetings", at, values)


def _drives(doc: Document, event: Event, change: PlanChange) -> None:
    plan = event.meetings[_meeting(event, change)]
    if not change.crew:
        raise NotPossibleError("nobody-goes", "crew")
    _who_goes(doc, event, in_place_of(event, plan, *change.crew[:2]))


def _skip(doc: Document, event: Event, change: PlanChange) -> None:
    doc.drop("meetings", _meeting(event, change))


def _move(doc: Document, event: Event, change: PlanChange) -> None:
    at = _meeting(event, change)
    plan = event.meetings[at]
    # It keeps its id, which the file need not say: who can't come to it, and who took it over, is known by that.
    doc.change("meetings", at, {"id": plan.id, "point": _point(event, change, plan.runner)})


def _add(doc: Document, event: Event, change: PlanChange) -> None:
    runner = _runner(event, change)
    point = _point(event, change, runner)
    by_itself = slug(f"{point}-{runner}")
    taken = [m.id for m in event.meetings]
    values: dict[str, Any] = {
        "id": fresh_id(by_itself, taken, "meeting") if by_itself in taken else None,
        "point": point,
        "runner": runner,
        **_goes(event, change),
        "kit": list(change.kit) or None,
    }
    doc.add("meetings", values)


def _kit(doc: Document, event: Event, change: PlanChange) -> None:
    at = _meeting(event, change)
    doc.change("meetings", at, {"kit": kit_of(doc.tables("meetings")[at].get("kit"), change.kit)})


def _person(doc: Document, event: Event, change: PlanChange) -> None:
    name = change.name.strip()
    if not name:
        raise NotPossibleError("no-name", "name")
    if any(p.name.casefold() == name.casefold() for p in event.people):
        raise NotPossibleError("name-taken", "name")
    if change.part not in ASKED_HERE:
        raise NotPossibleError("not-that-part", "part")
    if change.car is not None and all(c.id != change.car for c in event.cars):
        raise NotPossibleError("no-car", "car")
    part = {
        "kind": change.part.value,
        "runner": _runner(event, change) if change.runner else None,
        "drives": True if change.drives else None,
        "car": change.car,
    }
    # With the event's id: a person is one in all events, and a Tom of another may be another Tom.
    person = {
        "id": fresh_id(
            f"{slug(name)[:20]} {event.id}"[:36], [ident(p) for p in doc.tables("people")], "person"
        ),
        "name": name,
        "phone": change.phone.strip() or None,
        "parts": [{k: v for k, v in part.items() if v is not None}],
    }
    doc.add("people", person)


def _drive_time(doc: Document, event: Event, change: PlanChange) -> None:
    point = event.meetings[_meeting(event, change)].point
    if change.start is None or change.start == point:
        raise NotPossibleError("no-drive", "start")
    if change.minutes is None:
        raise NotPossibleError("no-minutes", "minutes")
    put_drives(doc, [{"from": change.start, "to": point, "minutes": f"{change.minutes:g}", "by": change.by}])


def _just_finish(doc: Document, event: Event, change: PlanChange) -> None:
    runner = _runner(event, change)
    limit = doc.table("event").get("limit")
    if event.limit is None or not isinstance(limit, str):
        raise NotPossibleError("no-limit", "runner")
    at = next(n for n, r in enumerate(event.runners) if r.id == runner)
    others = dict.fromkeys(doc.tables("runners")[at].get("target", {}))
    doc.change("runners", at, {"target": {**others, "finish": limit}})


_PUTS: Mapping[What, Callable[[Document, Event, PlanChange], None]] = {
    What.WHO_GOES: _who_goes,
    What.DRIVES: _drives,
    What.SKIP: _skip,
    What.MOVE: _move,
    What.ADD: _add,
    What.KIT: _kit,
    What.PERSON: _person,
    What.DRIVE_TIME: _drive_time,
    What.JUST_FINISH: _just_finish,
}
