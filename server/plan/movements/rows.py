"""A crew plan as rows of text for the terminal and paper: per car, what it is made of, and what is wrong."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from server.event.model import Event
from server.plan.movements.values import CrewPlan, Ride, Visit


@dataclass(frozen=True, slots=True)
class PlanRow:
    """One car to one meeting, in words; times on the event's own clock ('' where there is none)."""

    car: str
    who: str
    origin: str
    point: str
    runner: str
    leave_by: str
    be_there: str
    wait_until: str
    likely: str
    made_of: str
    odds: str
    if_missed: str


def plan_rows(event: Event, plan: CrewPlan) -> tuple[PlanRow, ...]:
    """The movements in order of time, one row for each car of each meeting."""
    return tuple(_row(event, v, r) for v in plan.visits for r in v.rides)


def plan_remarks(plan: CrewPlan) -> tuple[str, ...]:
    """Rules broken, troubles, offers, notes: one line each, the gravest first."""
    lines = [f"NOT ALLOWED ({b.rule}): {b.what}. {b.remedy}." for b in plan.broken]
    lines += [f"{t.meeting}: {t.kind.value}: {t.what}" for t in plan.troubles if t.kind.name != "RULE"]
    lines += [f"{o.meeting}: offer: {o.what}" for o in plan.offers]
    return (*lines, *plan.notes)


def _row(event: Event, v: Visit, r: Ride) -> PlanRow:
    zone = ZoneInfo(event.time_zone)
    cars = {c.id: c.name for c in event.cars}
    leave = _clock(r.leave_by, zone)
    if r.after is not None and r.journey.ways and leave:
        leave = f"when she has gone, {leave} at the latest"
    return PlanRow(
        car=cars.get(r.car or "", r.car or "on their own"),
        who=", ".join(_names(event, r)),
        origin=_place(event, r.from_place),
        point=_place(event, v.point),
        runner=event.runner(v.runner).name,
        leave_by=leave,
        be_there=_clock(v.be_there, zone),
        wait_until=_clock(v.wait_until, zone),
        likely=_clock(v.likely, zone),
        made_of=" + ".join(f"{a.name} {_minutes(a.time)}" for a in r.journey.addends),
        odds=f"{v.p_first:.0%}" if v.promised else f"{v.p_first:.0%}, not promised",
        if_missed=v.if_missed,
    )


def _names(event: Event, r: Ride) -> Iterator[str]:
    names = {p.id: p.name for p in event.people}
    for who in r.riders:
        yield f"{names.get(who, who)} (drives)" if who == r.driver and r.journey.ways else names.get(who, who)


def _place(event: Event, place: str | None) -> str:
    names = {p.id: p.name for p in event.places if p.name}
    names |= {p.id: p.name for c in event.courses for p in c.points}
    return "" if place is None else names.get(place, place)


def _clock(at: datetime | None, zone: ZoneInfo) -> str:
    return "" if at is None else f"{at.astimezone(zone):%a %H:%M}"


def _minutes(time: timedelta) -> str:
    return f"{round(time.total_seconds() / 60)}"
