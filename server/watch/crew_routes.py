"""How crews get to meetings: who goes, in which car, from where, by which drive; all meetings in order of time.

Cars and drives are those of the crew movements, so that watch, answers and plan never differ: where two cars come to
one meeting, each has its own way there.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.event.model import Event, Goal, MeetingPlan
from server.facts.state import RaceState, RunnerState
from server.plan.movements.names import ON_THEIR_OWN
from server.plan.movements.roads import Roads, course_spots
from server.plan.movements.times import journey_of
from server.plan.movements.trips import CarTrip, car_of, goes_to, trips_of
from server.watch.runner_context import fact_at
from server.watch.situation import Situation

__all__ = [
    "CrewRoute",
    "Party",
    "in_time",
    "members",
    "parties",
    "parties_of",
    "plans_in_order",
    "roads_in",
    "roads_of",
    "shared",
    "way_to",
]


@dataclass(frozen=True, slots=True)
class CrewRoute:
    """How a crew gets to a meeting: from where, the drive (None = unknown), whether a person stands by it,
    and the minutes on foot: out of the meeting before, walk-in, unloading, a pacer's signing in.

    `stands` is where their car is before, `through` the whole from there, None without a confirmed drive: as the way
    itself, but where they go by way of a place, which `from_place` then is.
    """

    from_place: str | None
    drive: timedelta | None
    confirmed: bool
    on_foot: timedelta
    stands: str | None = None
    through: timedelta | None = None

    @property
    def whole(self) -> timedelta | None:
        """Door to meeting, or None where the drive is not known."""
        return None if self.drive is None else self.drive + self.on_foot


@dataclass(frozen=True, slots=True)
class Party:
    """Those who come to a meeting in one car, and their way. `car` is the key of a car that is not the meeting's own,
    '' for its own."""

    people: tuple[str, ...]
    way: CrewRoute
    car: str = ""


def members(event: Event, plan: MeetingPlan) -> tuple[str, ...]:
    """Who goes to a meeting: its crew, the pacer who joins there, the relay runner who takes over."""
    return goes_to(event, plan)


def plans_in_order(event: Event, runner_id: str) -> tuple[MeetingPlan, ...]:
    """A runner's meetings in running order of their points; those at unknown points are left out."""
    order = {p.id: i for i, p in enumerate(event.course_of(runner_id).points)}
    mine = [m for m in event.meetings_of(runner_id) if m.point in order]
    return tuple(sorted(mine, key=lambda m: order[m.point]))


def roads_of(event: Event, race: RaceState) -> Roads:
    """The roads as the event file and people's later words have them."""
    return Roads(event, race.drives_confirmed)


def roads_in(situation: Situation) -> Roads:
    """The roads of a situation. Where somebody stands in for another no drive was planned: those are estimated from the
    course where the file does not say where its car parks are."""
    event, race = situation.event, situation.state
    spots = course_spots(event, situation.courses) if situation.uncovered else {}
    return Roads(event, race.drives_confirmed, spots)


def shared(event: Event, one: MeetingPlan, other: MeetingPlan) -> bool:
    """Whether one car, or where none is said somebody of the crew, goes to both."""
    if one.car is not None and other.car is not None:
        return one.car == other.car or bool(set(one.crew) & set(other.crew))
    return bool(set(members(event, one)) & set(members(event, other)))


def way_to(
    event: Event, plan: MeetingPlan, roads: Roads, ordered: Sequence[MeetingPlan] | None = None
) -> CrewRoute:
    """The way to a meeting. A drive counts as confirmed by the event file or by a person's later word.

    A 'drive confirmed' entry names the place driven to as its point and may name the place driven from
    as `about`; its `amount`, if any, is the time that the person stands by. `ordered`: all meetings in order
    of time, where one crew meets several runners (default: this runner's).
    """
    before = _before(plan, ordered or plans_in_order(event, plan.runner))
    start = plan.from_place or (before.point if before is not None else None)
    start = start or next((c.starts_at for c in event.cars if c.id == plan.car), None)
    stays = before is not None and start is not None and roads.same(start, plan.point)
    after = None if before is None else before.id
    return _of_leg(event, roads, plan, CarTrip("", None, (), None, start, None, after, stays))


def parties(event: Event, roads: Roads, ordered: Sequence[MeetingPlan]) -> Mapping[str, tuple[Party, ...]]:
    """Car by car who comes to each meeting of `ordered` (all runners', in order of time) and how, the meeting's own
    car first; by the id of the meeting. Everybody who goes is in one of them, once."""
    trips, _ = trips_of(event, roads, ordered)
    return {t.plan.id: _parties(event, roads, ordered, t.plan, t.legs) for t in trips}


def _parties(
    event: Event,
    roads: Roads,
    ordered: Sequence[MeetingPlan],
    plan: MeetingPlan,
    legs: Sequence[CarTrip],
) -> tuple[Party, ...]:
    goes, own = members(event, plan), car_of(event, plan)
    others = [leg for leg in legs if leg.key != own and any(w in goes for w in leg.riders)]
    first = next((leg for leg in legs if leg.key == own), None)
    found = [
        Party(tuple(w for w in goes if w in x.riders), _of_leg(event, roads, plan, x), x.key) for x in others
    ]
    rest = tuple(w for w in goes if all(w not in p.people for p in found))
    if not rest and found:
        return tuple(found)
    seated = tuple(w for w in rest if first is not None and w in first.riders)
    placed = first is None or first.from_place is not None
    astray = tuple(w for w in rest if w not in seated) if placed else ()
    known = first is not None and (first.via or first.from_place) is not None
    way = _of_leg(event, roads, plan, first) if first and known else way_to(event, plan, roads, ordered)
    if not astray:
        return (Party(rest, way), *found)
    # Who can't get to the car has no way that anybody knows of: least of all the car's own.
    lost = Party(astray, CrewRoute(None, None, False, way.on_foot), f"{ON_THEIR_OWN}{astray[0]}")
    if not seated:
        return (*found, lost) if found else (replace(lost, car=""),)
    return (Party(seated, way), *found, lost)


def _of_leg(event: Event, roads: Roads, plan: MeetingPlan, leg: CarTrip) -> CrewRoute:
    part, whole = leg.sets_out, journey_of(event, roads, plan, leg, None)
    last = journey_of(event, roads, plan, part, None)
    on_foot = sum((a.time for a in last.on_foot), timedelta(0))
    through = whole.whole if whole.confirmed else None
    return CrewRoute(part.from_place, last.drive, last.confirmed, on_foot, leg.from_place, through)


def parties_of(situation: Situation) -> Mapping[str, tuple[Party, ...]]:
    """The same for a situation; the very same as before where no way and no order has changed, as it hardly does by a
    report of her."""
    return situation.once("parties", lambda: _parties_of(situation))


def _parties_of(situation: Situation) -> Mapping[str, tuple[Party, ...]]:
    event, ordered = situation.event, in_time(situation)
    if situation.uncovered:
        return parties(event, roads_in(situation), ordered)
    rests_on = (situation.state.drives_confirmed, ordered)
    kept: dict[str, tuple[object, Mapping[str, tuple[Party, ...]]]] = event.once("parties", dict)
    last = kept.get("last")
    if last is None or last[0] != rests_on:
        last = kept["last"] = rests_on, parties(event, roads_in(situation), ordered)
    return last[1]


def _before(plan: MeetingPlan, ordered: Sequence[MeetingPlan]) -> MeetingPlan | None:
    """The last meeting before it of this car or, without one, of this crew."""
    found: MeetingPlan | None = None
    for other in ordered:
        if other.id == plan.id:
            break
        if (plan.car and other.car == plan.car) or (not plan.car and set(other.crew) & set(plan.crew)):
            found = other
    return found


def in_time(situation: Situation) -> tuple[MeetingPlan, ...]:
    """All runners' meetings in order of time, by facts, else by the forecast as it stood at the last fact.

    Those a runner whose race is over will not come to are left out.
    """
    return situation.once("in time", lambda: _in_time(situation))


def _in_time(situation: Situation) -> tuple[MeetingPlan, ...]:
    event = situation.event
    found: list[tuple[datetime, int, MeetingPlan]] = []
    for number, runner in enumerate(event.runners):
        state = situation.state.runner(runner.id)
        last = state.start
        for plan in plans_in_order(event, runner.id):
            when = _when(situation, state, plan)
            if when is None and state.going.race_over:
                break
            # A later point is never before an earlier one, whatever is known of either.
            last = max(last, when or last)
            found.append((last, number, plan))
    found.sort(key=lambda x: x[:2])
    return tuple(plan for *_, plan in found)


def _when(situation: Situation, state: RunnerState, plan: MeetingPlan) -> datetime | None:
    times = state.at_point(plan.point)
    if times is not None:
        known = times.arrived or times.left
        return state.start if known is None else known.at
    outlook = situation.outlooks.get(plan.runner)
    if state.going.race_over:
        return None
    if outlook is not None:
        view = outlook.at(fact_at(state))
        return view.window(plan.point).likely if plan.point in view.points else None
    table = situation.timetables.get(plan.runner)
    rows = [r for r in table.rows if r.point == plan.point] if table is not None else []
    return state.start + rows[0].arrive[Goal.B] if rows else None
