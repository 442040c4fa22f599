"""A new version of the event file while the race is on: whose meetings, kit or place changed hears it, old and new.

One message a person and version, for all runners; whoever has nothing to do differently hears nothing. What somebody asks
to be changed is shown by the same values before it counts (`outcome`).
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.event.model import CrewAccess, Event, MeetingPlan, PartKind
from server.event.times import write_span
from server.plan.movements.names import car_name, place_name
from server.plan.movements.offers import crew_plan
from server.plan.movements.roads import Roads, course_spots
from server.plan.movements.trips import car_of, goes_to
from server.plan.movements.values import CrewPlan, MovementTrouble
from server.watch.circle import circle_of, share_with
from server.watch.covering import covered
from server.watch.crew_routes import way_to
from server.watch.news_values import NewVersionValues, PlanItem, PlanTime
from server.watch.notice import Made, MeetingValues, NoticeKind
from server.watch.runner_context import Draft, Wake, fact_at, floor_to
from server.watch.situation import Situation
from server.watch.told_times import meetings_as_told, sight_of

__all__ = ["EVENT_RULES", "ChangeEffect", "changed_for", "outcome", "version_told"]

TOLD_WITHIN = timedelta(hours=6)
"""So long a notice of it is of use (as its row in the table says)."""
_PLANS_WITH_HER = frozenset(
    {PartKind.RUNNER, PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER}
)
"""Who hears that she goes for another target."""


def version_told(version: int) -> str:
    """The occasion of what is told of a version."""
    return f"version:{version}"


def new_version(situation: Situation, made: tuple[Made, ...], now: datetime) -> Iterator[Draft | Wake]:
    """What the version in force changed for each person, where somebody had reported something before it came, or where it
    was asked for as a change."""
    loaded = situation.loaded
    if loaded is None or not loaded.at <= now < loaded.at + TOLD_WITHIN:
        return
    reported = (at for runner, r in situation.state.received.items() if runner for at in r.of.values())
    if not loaded.asked and not any(at <= loaded.at for at in reported):
        return
    event = situation.planned or situation.event
    occasion = version_told(event.version)
    kind = NoticeKind.NEW_VERSION
    told = {m.notice.key.person for m in made if m.notice.key.kind is kind and m.notice.occasion == occasion}
    owed = {p.id: tuple(changed_for(loaded.before, event, p.id)) for p in event.people if p.id not in told}
    if not any(owed.values()):
        return
    for who, values in _with_times(_as_before(situation, loaded.before), situation, owed, now).items():
        if values.items or values.times:
            yield Draft(kind, who, "", occasion, loaded.at, values, mine=True)


@dataclass(frozen=True, slots=True)
class ChangeEffect:
    """What a change would do: for whom what, by person; and what will not work, or not surely, that did before."""

    people: Mapping[str, NewVersionValues]
    troubles: tuple[MovementTrouble, ...]


def outcome(old: Situation, new: Situation, now: datetime) -> ChangeEffect:
    """What it does to everybody that `new` comes in the place of `old`, both of this moment."""
    before, after = old.planned or old.event, new.planned or new.event
    ids = dict.fromkeys(p.id for p in (*before.people, *after.people))
    items = {who: tuple(changed_for(before, after, who)) for who in ids}
    concerned = [who for who in ids if items[who]]
    if not concerned:
        return ChangeEffect({}, ())
    known = {_of(t) for t in _moves(share_with(old, concerned) or old, now).troubles}
    troubles = tuple(
        t for t in _moves(share_with(new, concerned) or new, now).troubles if _of(t) not in known
    )
    people = _with_times(old, new, items, now)
    return ChangeEffect({who: v for who, v in people.items() if v.items or v.times}, troubles)


def _of(t: MovementTrouble) -> tuple[object, ...]:
    """What makes two troubles the same one; the odds of it are not."""
    return t.kind, t.meeting, t.person, t.car, t.other


def _moves(situation: Situation, now: datetime) -> CrewPlan:
    """Cars and people as they would go, by the forecasts as they stood at the last fact."""
    event, state = situation.event, situation.state
    met = {m.runner for m in event.meetings}
    views = {r: o.at(fact_at(state.runner(r))) for r in met if (o := situation.outlooks.get(r)) is not None}
    spots = course_spots(event, situation.courses)
    return crew_plan(event, situation.timetables, views, now=now, race=state, spots=spots, other_cars=False)


def changed_for(old: Event, new: Event, person: str) -> Iterable[PlanItem]:
    """Each thing of a person's meetings and of the place where they stand that is not what it was; '' for none."""
    was, now = _meetings(old, person), _meetings(new, person)
    goes = {m.id for e in (old, new) for m in e.meetings if person in goes_to(e, m)}
    for key in dict.fromkeys((*was, *now)):
        before, after = was.get(key), now.get(key)
        if before is None or after is None:
            plan, event = (after, new) if after is not None else (before, old)
            assert plan is not None
            said = _whole(_side(event, plan))
            there, gone = (said, "") if after is None else ("", said)
            met = person not in goes_to(event, plan) and plan.pacer_leaves != person
            yield PlanItem("met" if met else "meeting", plan.runner, plan.point, there, gone)
            yield from _left_behind(old, new, key) if key in goes else ()
            continue
        a, b = _side(old, before), _side(new, after)
        for what in a:
            if a[what] != b[what]:
                yield PlanItem(what, after.runner, after.point, a[what], b[what])
        yield from _left_behind(old, new, key) if key in goes else ()
    yield from _drives(old, new, was, now, goes)
    yield from _targets(old, new, person)
    for p, q in zip(_posts(old, person), _posts(new, person), strict=False):
        if p != q:
            yield PlanItem("post", "", q, p, q)


_Side = Mapping[str, str]


def _meetings(event: Event, person: str) -> dict[str, MeetingPlan]:
    """What a person goes to, or is met at as the runner, by its id."""
    hers = {r.id for r in event.runners if r.person == person}
    return {
        m.id: m
        for m in event.meetings
        if m.runner in hers or person in goes_to(event, m) or m.pacer_leaves == person
    }


def _side(event: Event, m: MeetingPlan) -> _Side:
    """Each field of a meeting in words."""
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


def _whole(side: _Side) -> str:
    """A meeting that comes or goes: who goes there, and with what."""
    return " · ".join(x for x in (side["crew"], side["car"], side["kit"]) if x) or side["place"]


def _left_behind(old: Event, new: Event, meeting: str) -> Iterator[PlanItem]:
    """Things for a meeting that lie in a car which comes there no more: whoever goes now has not got them."""
    before = next((m for m in old.meetings if m.id == meeting), None)
    after = next((m for m in new.meetings if m.id == meeting), None)
    if before is None or after is None:
        return
    comes = {car_of(new, after)} | {p.car for who in after.crew for p in new.parts_of(who)}
    wanted = {k.name for k in after.kit}
    left: dict[str, list[str]] = {}
    for k in before.kit:
        car = k.car or car_of(old, before)
        came = car == car_of(old, before) or car in {p.car for who in before.crew for p in old.parts_of(who)}
        if not k.take_back and k.name in wanted and came and car not in comes:
            left.setdefault(car, []).append(k.name)
    for car, things in left.items():
        yield PlanItem("kit-left", after.runner, after.point, car_name(old, car), "; ".join(things))


def _drives(
    old: Event,
    new: Event,
    was: Mapping[str, MeetingPlan],
    now: Mapping[str, MeetingPlan],
    goes: Collection[str],
) -> Iterator[PlanItem]:
    """Another time for the drive to a meeting that stays where it was, for whoever goes there."""
    if old.drives == new.drives:
        return
    before, after = Roads(old), Roads(new)
    for key in (k for k in goes if k in was and k in now and was[k].point == now[k].point):
        a, b = _driven(old, was[key], before), _driven(new, now[key], after)
        if a != b:
            yield PlanItem("drive", now[key].runner, now[key].point, a, b)


def _driven(event: Event, m: MeetingPlan, roads: Roads) -> str:
    """How long the drive to a meeting takes, by what somebody stands by; '' for nobody."""
    way = way_to(event, m, roads)
    if way.drive is None or not way.confirmed:
        return ""
    return f"{way.drive / timedelta(minutes=1):g} min"


def _targets(old: Event, new: Event, person: str) -> Iterator[PlanItem]:
    """Another target of a runner whose race this person plans with her."""
    mine = [p.runner for p in new.parts_of(person) if p.kind in _PLANS_WITH_HER]
    were = {r.id: r.target.finish for r in old.runners}
    for r in new.runners:
        was, now = were.get(r.id), r.target.finish
        if r.id in were and was != now and (None in mine or r.id in mine):
            yield PlanItem(
                "target",
                r.id,
                "",
                "" if was is None else write_span(was),
                "" if now is None else write_span(now),
            )


def _posts(event: Event, person: str) -> list[str]:
    """The points where a volunteer stands."""
    return [p.point for p in event.parts_of(person) if p.point is not None]


def _as_before(situation: Situation, before: Event) -> Situation:
    """The situation as it would be now, had the crew's movements stayed those of the version before."""
    event = situation.planned or situation.event
    points = {r.id: {p.id for p in event.course_of(r.id).points} for r in event.runners}
    meetings = tuple(m for m in before.meetings if m.point in points.get(m.runner, ()))
    was = replace(
        event,
        meetings=meetings,
        people=before.people,
        parts=before.parts,
        cars=before.cars,
        drives=before.drives,
    )
    return covered(replace(situation, event=was, planned=None, uncovered=()))


def _with_times(
    old: Situation, new: Situation, items: Mapping[str, tuple[PlanItem, ...]], now: datetime
) -> dict[str, NewVersionValues]:
    """What changed for each person, with when they leave where that changed by it; also for those whose times alone did."""
    event = new.planned or new.event
    about = {i.runner for mine in items.values() for i in mine if i.runner}
    was, will = _own_meetings(old, about, now), _own_meetings(new, about, now)
    found = {}
    for who, mine in items.items():
        theirs = will.get(who, {})
        times = tuple(
            t for key, m in theirs.items() if (t := _time(was.get(who, {}).get(key), m)) is not None
        )
        free = bool(mine) and bool(was.get(who)) and not theirs
        found[who] = NewVersionValues(event.version, mine, times, free)
    return found


_Own = tuple[str, MeetingValues]


def _time(before: _Own | None, after: _Own) -> PlanTime | None:
    runner, m = after
    was, now = (None if before is None else before[1].leave_by), m.leave_by
    same = (was is None) == (now is None) and (was is None or now is None or floor_to(was) == floor_to(now))
    if m.lost or (same and before is not None):
        return None
    return PlanTime(runner, m.point, was, now, m.be_there)


def _own_meetings(situation: Situation, about: Iterable[str], now: datetime) -> dict[str, dict[str, _Own]]:
    """Of each person the meetings to come with those runners, and all who share crew with them, as told, by meeting."""
    found: dict[str, dict[str, _Own]] = {}
    known = {r.id for r in situation.event.runners}
    for r in sorted({r for her in about if her in known for r in circle_of(situation, her)}):
        for m in meetings_as_told(sight_of(situation, r, now)):
            for party in m.parties():
                for who in party.crew:
                    found.setdefault(who, {})[m.meeting] = (r, party)
    return found


EVENT_RULES = (new_version,)
