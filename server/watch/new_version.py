"""A new version of the event file while the race is on: whose meetings, kit or place changed hears it, old and new.

One message a person and version, for all runners; whoever has nothing to do differently hears nothing. Times of meetings
are told by what moves them ('window moved'), not here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime

from server.event.model import CrewAccess, Event, MeetingPlan
from server.plan.movements.names import car_name, place_name
from server.plan.movements.trips import goes_to
from server.watch.news_values import NewVersionValues, PlanItem
from server.watch.notice import Made, NoticeKind
from server.watch.sight import Draft, Wake
from server.watch.situation import Situation

__all__ = ["EVENT_RULES", "changed_for"]


def new_version(situation: Situation, _: tuple[Made, ...], now: datetime) -> Iterator[Draft | Wake]:
    """What the version in force changed for each person, where somebody had reported something before it came."""
    loaded = situation.loaded
    if loaded is None or loaded.at > now:
        return
    reported = (at for runner, r in situation.state.received.items() if runner for at in r.of.values())
    if not any(at <= loaded.at for at in reported):
        return
    event = situation.planned or situation.event
    for person in event.people:
        items = tuple(changed_for(loaded.before, event, person.id))
        if items:
            values = NewVersionValues(event.version, items)
            occasion = f"version:{event.version}"
            yield Draft(NoticeKind.NEW_VERSION, person.id, "", occasion, loaded.at, values, mine=True)


def changed_for(old: Event, new: Event, person: str) -> Iterable[PlanItem]:
    """Each thing of a person's meetings and of the place where they stand that is not what it was; '' for none."""
    was, now = _meetings(old, person), _meetings(new, person)
    for key in dict.fromkeys((*was, *now)):
        before, after = was.get(key), now.get(key)
        runner, point = key
        if before is None or after is None:
            said = _whole(before or after)
            there, gone = (said, "") if before is not None else ("", said)
            yield PlanItem("meeting", runner, point, there, gone)
            continue
        for what in before:
            if before[what] != after[what]:
                yield PlanItem(what, runner, point, before[what], after[what])
    for a, b in zip(_posts(old, person), _posts(new, person), strict=False):
        if a != b:
            yield PlanItem("post", "", b, a, b)


_Side = Mapping[str, str]


def _meetings(event: Event, person: str) -> dict[tuple[str, str], _Side]:
    """What a person goes to, or is met at as the runner, by runner and point: each field in words."""
    hers = {r.id for r in event.runners if r.person == person}
    mine = [
        m
        for m in event.meetings
        if m.runner in hers or person in goes_to(event, m) or m.pacer_leaves == person
    ]
    return {(m.runner, m.point): _side(event, m) for m in mine}


def _side(event: Event, m: MeetingPlan) -> _Side:
    point = event.course_of(m.runner).point(m.point)
    names = {p.id: p.name for p in event.people}
    return {
        "place": point.name,
        "parking": _parking(point.access),
        "crew": ", ".join(names.get(w, w) for w in m.crew),
        "car": "" if m.car is None else car_name(event, m.car),
        "from": "" if m.from_place is None else place_name(event, m.from_place),
        "kit": "; ".join(k.name for k in m.kit if not k.take_back),
        "take-back": "; ".join(k.name for k in m.kit if k.take_back),
        "food": m.food,
        "pacer": names.get(m.pacer_joins or "", ""),
        "if-missed": m.if_missed,
    }


def _parking(access: CrewAccess | None) -> str:
    return "" if access is None else access.parking


def _whole(side: _Side | None) -> str:
    """A meeting that comes or goes: who goes there, and with what."""
    assert side is not None
    return " · ".join(x for x in (side["crew"], side["car"], side["kit"]) if x) or side["place"]


def _posts(event: Event, person: str) -> list[str]:
    """The points where a volunteer stands."""
    return [p.point for p in event.parts_of(person) if p.point is not None]


EVENT_RULES = (new_version,)
