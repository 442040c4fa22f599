"""Who goes to which meeting now: the plan, less those who can't come, with those who took a meeting over.

Everything that asks who goes (meetings, leave-by, who is asked when she is late, who fetches her) asks the event of a
situation that went through `covered`; the plan itself stays beside it. A car takes those who were to ride in it: one
without anybody to drive it, or that does not run, brings nobody, unless it is there already.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from server.event.model import Event, MeetingPlan, PartKind
from server.facts.entry import Why
from server.facts.state import Fallen, RaceState, Taken
from server.plan.movements.names import ON_THEIR_OWN
from server.plan.movements.trips import CarTrip, Trip, car_of, drivers_of, trips_of
from server.watch.circle import share_with
from server.watch.crew_routes import in_time, roads_of
from server.watch.situation import Situation
from server.watch.uncovered_values import Uncovered

__all__ = ["covered", "covered_by", "stands"]

_STAYS_AWAY = frozenset({Why.OWN_SAFETY, Why.NOT_SAID})
_NO_WHEEL = _STAYS_AWAY | {Why.DRIVER}
_NO_PACE = _STAYS_AWAY | {Why.PACER}


def covered(situation: Situation) -> Situation:
    """The situation with its meetings as they are gone to now; itself where nobody has fallen out. Twice is once."""
    if situation.planned is not None or not situation.state.fallen:
        return situation
    if situation.event.whole is not None:
        return _covered(situation)
    event, race = situation.event, situation.state
    people = {f.person for f in race.fallen} | {t.person for t in race.taken}
    share = share_with(situation, people)
    done = None if share is None else _covered(share)
    if done is None or done is share:
        return situation
    now = {m.id: m for m in done.event.meetings}
    meetings = tuple(now.get(m.id, m) for m in event.meetings)
    return replace(
        situation, event=replace(event, meetings=meetings), planned=event, uncovered=done.uncovered
    )


def _covered(situation: Situation) -> Situation:
    event, race = situation.event, situation.state
    ordered = in_time(situation)
    trips, _ = trips_of(event, roads_of(event, race), ordered)
    broken = frozenset(_broken_cars(event, race, trips))
    found: list[Uncovered] = []
    nowhere: dict[str, frozenset[str]] = {}
    for t in trips:
        u = _fallen_out(event, race, t, broken, nowhere)
        if u is not None:
            found.append(u)
            nowhere[t.plan.id] = frozenset(x.key for x in t.legs if not set(x.riders) & set(u.goes))
    if not found:
        return situation
    places = {t.plan.id: _place_of_taker(situation, t, ordered) for t in trips}
    now = {u.plan.id: _as_gone_to(event, u, broken, places.get(u.plan.id)) for u in found}
    meetings = tuple(now.get(m.id, m) for m in event.meetings)
    return replace(situation, event=replace(event, meetings=meetings), planned=event, uncovered=tuple(found))


def covered_by(situation: Situation, meeting: str, person: str) -> Situation:
    """What would be if that person took that meeting over now."""
    planned = situation.planned or situation.event
    race = situation.state
    said = next(f.stamp for f in race.fallen)
    taken = (*(t for t in race.taken if t.meeting != meeting), Taken(person, meeting, said))
    return covered(
        replace(situation, event=planned, planned=None, uncovered=(), state=replace(race, taken=taken))
    )


def stands(race: RaceState, who: str) -> str | None:
    """The place where a person last said that they are, unless they have left it since."""
    there = max(((s.at, p) for p, w, s in race.crew_there if w == who), default=None)
    if there is None:
        return None
    left = [s.at for p, w, s in race.crew_left if (p, w) == (there[1], who)]
    return None if any(at > there[0] for at in left) else there[1]


def _broken_cars(event: Event, race: RaceState, trips: Sequence[Trip]) -> Iterator[str]:
    """Cars that do not run: of whoever said so the one they ride in to a meeting, else their own."""
    for f in race.fallen:
        if f.why is not Why.CAR:
            continue
        own = next((p.car for p in event.parts_of(f.person) if p.car is not None), None)
        ridden = (
            leg.key
            for t in trips
            if f.meeting in (None, t.plan.id)
            for leg in t.legs
            if f.person in leg.riders
        )
        car = own or next(ridden, None)
        if car is not None:
            yield car


def _said_in_time(event: Event, race: RaceState, plan: MeetingPlan, f: Fallen) -> bool:
    """Whether a word is of that meeting: not of one where she had been met, or from which she was on, when it was said."""
    if f.meeting is not None:
        return f.meeting == plan.id
    order = [p.id for p in event.course_of(plan.runner).points]
    later = order[order.index(plan.point) :]
    for t in race.runner(plan.runner).times:
        if t.point in later and any(s is not None and s.at <= f.stamp.at for s in (t.arrived, t.left)):
            return False
    return True


@dataclass(frozen=True, slots=True)
class _Words:
    """What has been said that bears on one meeting."""

    away: frozenset[str]
    no_wheel: frozenset[str]
    no_pace: frozenset[str]
    broken: frozenset[str]

    def hit(self, leg: CarTrip, going: Sequence[str]) -> bool:
        return leg.key in self.broken or bool(self.no_wheel & {leg.driver}) or bool(self.away & set(going))


def _fallen_out(
    event: Event, race: RaceState, trip: Trip, broken: frozenset[str], nowhere: Mapping[str, frozenset[str]]
) -> Uncovered | None:
    """How a meeting stands that somebody fell out of; None where nobody did. `nowhere`: of meetings before it the cars that
    bring nobody, and so do not stand there for the next."""
    plan = trip.plan
    said = tuple(f for f in race.fallen if _said_in_time(event, race, plan, f))
    if not said:
        return None
    of = {why: frozenset(f.person for f in said if f.why is why) for why in Why}
    cars = broken if of[Why.CAR] else frozenset[str]()
    words = _Words(
        away=of[Why.OWN_SAFETY] | of[Why.NOT_SAID],
        no_wheel=of[Why.OWN_SAFETY] | of[Why.NOT_SAID] | of[Why.DRIVER],
        no_pace=of[Why.OWN_SAFETY] | of[Why.NOT_SAID] | of[Why.PACER],
        broken=cars,
    )
    goes, lost, driver = _who_goes(event, race, trip, words, nowhere)
    pacer = plan.pacer_joins
    no_pacer = pacer if pacer is not None and (pacer in words.no_pace or pacer in lost) else None
    if not lost and no_pacer is None and driver is None:
        return None
    mine = tuple(f for f in said if _bears(f, trip, lost, no_pacer, driver))
    here = Uncovered(plan, mine or said, lost, goes, driver, no_pacer=no_pacer)
    taken = next((t for t in race.taken if t.meeting == plan.id), None)
    if taken is not None and _paces(event, taken.person, plan) and no_pacer is not None:
        return _with_kit(event, replace(here, taken=taken, no_pacer=None), trip, taken if not goes else None)
    taken = taken if not goes else None
    return _with_kit(event, replace(here, taken=taken), trip, taken)


def _bears(f: Fallen, trip: Trip, lost: Sequence[str], no_pacer: str | None, driver: str | None) -> bool:
    if f.person in lost or f.person == no_pacer:
        return True
    riders = {w for leg in trip.legs for w in leg.riders}
    return f.person in riders and (driver is not None or bool(lost))


def _who_goes(
    event: Event, race: RaceState, trip: Trip, words: _Words, nowhere: Mapping[str, frozenset[str]]
) -> tuple[tuple[str, ...], tuple[str, ...], str | None]:
    """Who of those planned still goes, who does not, and who drives in the place of the one who was to."""
    goes: list[str] = []
    lost: list[str] = []
    driver: str | None = None
    for leg in trip.legs:
        going = [w for w in leg.riders if w in trip.goes]
        here = [w for w in going if stands(race, w) == trip.plan.point]
        # A car that stays where its meeting before was is there only if it came to that one.
        absent = leg.after is not None and leg.key in nowhere.get(leg.after, ())
        if not (words.hit(leg, going) or (absent and leg.stays)) or (here and not words.away & set(going)):
            goes += going
            continue
        able = [w for w in leg.riders if w not in words.no_wheel and _may_drive(event, w)]
        stays = (leg.stays and not absent) or bool(here)
        left = [w for w in going if w not in words.away]
        if not stays and (leg.key in words.broken or not able):
            lost += going
            continue
        goes += left
        lost += [w for w in going if w in words.away]
        if not stays and left and leg.driver in words.no_wheel:
            driver = able[0]
    return tuple(goes), tuple(lost), driver


def _may_drive(event: Event, who: str) -> bool:
    drivers = drivers_of(event)
    return not drivers or who in drivers


def _paces(event: Event, who: str, plan: MeetingPlan) -> bool:
    """Whether somebody takes a meeting over as its pacer rather than as its crew."""
    kinds = {p.kind for p in event.parts_of(who) if p.runner in (None, plan.runner)}
    return plan.pacer_joins is not None and PartKind.PACER in kinds and PartKind.CREW not in kinds


def _with_kit(event: Event, u: Uncovered, trip: Trip, taken: Taken | None) -> Uncovered:
    """What of the kit is in no car that comes."""
    own = car_of(event, u.plan)
    comes = {leg.key for leg in trip.legs if set(leg.riders) & set(u.goes)}
    if taken is not None:
        comes = {_car_of_taker(event, taken.person)}
    missing = [k for k in u.plan.kit if not k.take_back and (k.car or own) not in comes]
    if not u.held:
        missing = [k for k in u.plan.kit if not k.take_back]
    car = next(((k.car or own) for k in missing), "")
    return replace(u, missing=tuple(k.name for k in missing), kit_car=car if missing else "")


def _car_of_taker(event: Event, who: str) -> str:
    own = next((p.car for p in event.parts_of(who) if p.car is not None), None)
    if own is not None:
        return own
    ridden = (car_of(event, m) for m in event.meetings if who in m.crew)
    return next(ridden, f"{ON_THEIR_OWN}{who}")


def _place_of_taker(situation: Situation, trip: Trip, ordered: Sequence[MeetingPlan]) -> str | None:
    """Where the one who takes a meeting over sets out from, where that is known better than by the plan: where they said
    they are, unless a meeting of theirs comes first."""
    taken = next((t for t in situation.state.taken if t.meeting == trip.plan.id), None)
    if taken is None:
        return None
    before = [m for m in ordered[: ordered.index(trip.plan)] if taken.person in m.crew]
    if before and situation.state.runner(before[-1].runner).at_point(before[-1].point) is None:
        return None
    return stands(situation.state, taken.person)


def _as_gone_to(event: Event, u: Uncovered, broken: frozenset[str], place: str | None) -> MeetingPlan:
    """The meeting as it is gone to now."""
    plan = u.plan
    pacer = None if u.no_pacer is not None else plan.pacer_joins
    if u.taken is not None and _paces(event, u.taken.person, plan) and plan.pacer_joins is not None:
        pacer = u.taken.person
    elif u.taken is not None:
        car = _car_of_taker(event, u.taken.person)
        named = None if car.startswith(ON_THEIR_OWN) or car in broken else car
        with_them = pacer if pacer is not None and pacer not in u.out else None
        return replace(
            plan,
            crew=(u.taken.person,),
            car=named,
            from_place=place,
            pacer_joins=with_them,
            kit=_in(plan, named),
        )
    crew = tuple(w for w in plan.crew if w in u.goes)
    own = plan.car in broken
    return replace(
        plan,
        crew=crew,
        pacer_joins=pacer,
        car=None if own else plan.car,
        from_place=None if own else plan.from_place,
    )


def _in(plan: MeetingPlan, car: str | None) -> tuple:  # type: ignore[type-arg]
    """Her kit is brought from wherever it lies: no car is said for it any more."""
    return tuple(replace(k, car=car) if k.car is not None else k for k in plan.kit)
