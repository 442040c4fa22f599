"""From the picture of an event to what crews are told of their meetings: the next ones, missed or not, what to have ready.

As in `answers`, which has the rest: one function a question, no I/O, no decisions.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta

from server.api.alarms import holder_of
from server.api.answers import freshness, person_name, point_name, point_of
from server.api.crew_location import stands_at, waits_at
from server.api.snapshot import Picture
from server.conversation.telling.answer import (
    CarryOut,
    DoorHours,
    KitAnswer,
    MeetingAnswer,
    MissedAnswer,
    NextAnswer,
    OtherCar,
)
from server.event.model import Event, FuelPlan, KitItem, MeetingPlan, Point
from server.facts.state import Going, RunnerState
from server.forecast.outlook import View
from server.plan.fuel import fuel_of
from server.plan.movements.names import place_name
from server.watch.notice import MeetingValues
from server.watch.staying import GONE_BY


def next_meetings(picture: Picture, runner: str, person: str | None, point: str | None = None) -> NextAnswer:
    """GET …/next: the next two meetings of one person or of anybody, and those before them that are lost; with a
    `point` those to come there, whoever goes."""
    all_of_them = tuple(meeting_answer(picture, runner, m, person) for m in picture.meetings(runner))
    if point is not None:
        there = tuple(m for m in all_of_them if m.values.point == point)
        return NextAnswer(runner, picture.event.runner(runner).name, there, freshness(picture, runner))
    mine = tuple(m for m in all_of_them if m.mine)
    chosen = mine if person is not None and (mine or picture.past_cut_off(runner)) else all_of_them
    left = 2 + sum(1 for m in chosen if m.values.lost)
    if chosen:
        since = _left_at(picture, runner, chosen[0].values, person)
        chosen = (replace(chosen[0], on_way_since=since), *chosen[1:])
    return NextAnswer(runner, picture.event.runner(runner).name, chosen[:left], freshness(picture, runner))


def plan_of(event: Event, meeting: str) -> MeetingPlan | None:
    """The planned meeting of that id."""
    return next((m for m in event.meetings if m.id == meeting), None)


def meeting_answer(picture: Picture, runner: str, values: MeetingValues, person: str | None) -> MeetingAnswer:
    """A meeting with the names of those who go, timed by the asker's own car."""
    event = picture.event
    cars, going = values.parties(), values.crew
    values = next((m for m in cars if person in m.crew), cars[0])
    plan = plan_of(event, values.meeting)
    access = event.course_of(runner).point(values.point).access
    return MeetingAnswer(
        values=values,
        name=point_name(event, runner, values.point),
        runner_name=event.runner(runner).name,
        crew=tuple(person_name(event, p) for p in values.crew),
        car=_car_name(event, values.car or (plan.car if plan else None)),
        parking=access.parking if access else "",
        walk_in=access.walk_in if access else None,
        opens=access.opens if access else None,
        closes=access.closes if access else None,
        mine=person is None or person in going,
        drive_confirmed=values.drive_confirmed,
        there=person is not None and person in going and stands_at(picture, person) == values.point,
        drive_from=place_name(event, values.drive_from) if values.drive_from else "",
        others=tuple(_other_car(event, plan, m) for m in cars if m.crew and m is not values),
    )


def _other_car(event: Event, plan: MeetingPlan | None, m: MeetingValues) -> OtherCar:
    return OtherCar(
        people=tuple(person_name(event, p) for p in m.crew),
        car=_car_name(event, m.car or (plan.car if plan else None)),
        drive_from=place_name(event, m.drive_from) if m.drive_from else "",
        leave_by=m.leave_by,
        stays=m.drive == timedelta(0),
        lost=m.lost,
    )


def _car_name(event: Event, car: str | None) -> str:
    """The name of a car; empty where somebody comes in one that the event does not have."""
    return next((c.name for c in event.cars if c.id == car), "")


def _left_at(picture: Picture, runner: str, values: MeetingValues, person: str | None) -> datetime | None:
    """When that person said they were off to this meeting, their next; None once they, or she at a meeting of
    theirs, have been seen since."""
    left = [(s.at, point) for point, who, s in picture.state.crew_left if who == person]
    at, start = max(left, default=(None, ""))
    if at is None or start == values.point or person not in values.crew:
        return None
    theirs = {m.point for m in picture.event.meetings if m.runner == runner and person in m.crew}
    met = [t.arrived.at for t in picture.state.runner(runner).times if t.point in theirs and t.arrived]
    there = [s.at for _, who, s in picture.state.crew_there if who == person]
    return at if all(t < at for t in (*met, *there)) else None


def missed(picture: Picture, runner: str, point: str | None, person: str) -> MissedAnswer:
    """GET …/missed: has she been through, and wait or go. Without a point: the asker's next meeting."""
    event, state = picture.event, picture.state.runner(runner)
    coming = tuple(m.own(person) for m in picture.meetings(runner))
    at = point_of(event, runner, point or _meant(picture, runner, coming, person))
    times = state.at_point(at.id)
    values = next((m for m in coming if m.point == at.id), None)
    mine = [m for m in coming if person in m.crew] or coming
    after = next((m for m in mine if _km(event, runner, m.point) > (at.km or 0.0)), None)
    view = picture.views.get(runner)
    ahead = view is not None and at.id in view.points
    p_past = _p_past(picture, runner, at, view)
    wait_until = values.wait_until if values and not values.stay else None
    past = picture.past_cut_off(runner)
    ruled_out = past is not None and (past.seen_at == at.id or picture.goes_no_further(runner, at.id))
    return MissedAnswer(
        runner=runner,
        runner_name=event.runner(runner).name,
        point=at.id,
        name=at.name,
        p_past=p_past,
        advice=_advice(state, p_past, free=wait_until is not None and stands_at(picture, person) != at.id),
        fresh=freshness(picture, runner),
        wait_until=wait_until,
        window=view.window(at.id) if view is not None and ahead and not ruled_out else None,
        seen_in=times.arrived.at if times and times.arrived else None,
        seen_out=times.left.at if times and times.left else None,
        next_name=point_name(event, runner, after.point) if after else "",
        next_leave_by=after.leave_by if after else None,
        if_missed=values.if_missed if values else "",
        help_only_at_points=event.rules.outside_help_only_at_crew_points,
        rules_note=event.rules.note,
        no_signal=values.no_signal if values else False,
        alarm_holder=holder_of(picture, runner),
    )


def _meant(picture: Picture, runner: str, coming: Iterable[MeetingValues], person: str) -> str:
    """The point meant by one who names none: where they say they are, else their next meeting's."""
    event = picture.event
    here = waits_at(picture, runner, person)
    if here is not None:
        return here
    mine = [m.point for m in coming if person in m.crew]
    any_of = [m.point for m in coming]
    course = event.course_of(runner)
    ahead = [
        p.id for p in course.points if p.crew_access and p.id not in picture.state.runner(runner).reached
    ]
    return next(iter((*mine, *any_of, *ahead, course.points[-1].id)))


def _km(event: Event, runner: str, point: str) -> float:
    return event.course_of(runner).point(point).km or 0.0


def _p_past(picture: Picture, runner: str, at: Point, view: View | None) -> float:
    """P(she has left `at` by now): 1 where a fact says so, 0 where a fact says she is there."""
    state = picture.state.runner(runner)
    times = state.at_point(at.id)
    later = any(_km(picture.event, runner, p) > (at.km or 0.0) for p in state.reached)
    if later or (times is not None and times.left is not None):
        return 1.0
    if view is None:
        return 0.0
    if times is not None and times.arrived is not None and state.going is Going.AT_POINT:
        return picture.p_gone_on(runner)
    return view.p_out_by(at.id, picture.now)


def _advice(state: RunnerState, p_past: float, *, free: bool) -> str:
    """'go' once a fact says so, or of those `free` to go, who do not stand there, the odds."""
    if p_past >= 1.0 or state.going.race_over:
        return "go"
    return "go" if free and p_past >= GONE_BY else "wait"


def doors(picture: Picture, runner: str) -> tuple[DoorHours, ...]:
    """When the points with crew access are open to crew."""
    points = picture.event.course_of(runner).points
    return tuple(DoorHours(p.id, p.access.opens, p.access.closes) for p in points if p.access is not None)


def kit(picture: Picture, runner: str, point: str | None, person: str) -> KitAnswer:
    """GET …/kit: what to have ready at a point; without one, at the asker's next meeting."""
    event = picture.event
    coming = tuple(m.own(person) for m in picture.meetings(runner))
    at = point_of(event, runner, point or _meant(picture, runner, coming, person))
    plans = [m for m in event.meetings if m.runner == runner and m.point == at.id]
    items: tuple[KitItem, ...] = tuple(item for m in plans for item in m.kit)
    cars = {c.id: c.name for c in event.cars}
    view = picture.views.get(runner)
    window = view.window(at.id) if view is not None and at.id in view.points else None
    return KitAnswer(
        runner=runner,
        runner_name=event.runner(runner).name,
        point=at.id,
        name=at.name,
        kit=items,
        food="; ".join(m.food for m in plans if m.food),
        fuel=_fuel(event, runner, at),
        window=window,
        dark=picture.dark(runner, at.id, window.likely) if window else None,
        cars=tuple((i.name, cars.get(i.car, i.car)) for i in items if i.car),
        carry=_carry(picture, runner, at),
    )


def _carry(picture: Picture, runner: str, at: Point) -> CarryOut | None:
    """What she carries out of `at`, where she can refill there."""
    course = picture.event.course_of(runner)
    table = fuel_of(picture.event.runner(runner), course.points, picture.timetable(runner))
    for c in table.carry:
        if c.from_point == at.id:
            name = course.point(c.to_point).name
            return CarryOut(name, c.takes, c.kcal, c.carbohydrate_g, c.sodium_mg, c.bottles)
    return None


def _fuel(event: Event, runner: str, at: Point) -> FuelPlan | None:
    """What she means to take in from `at` on: the plan that began last, there or before."""
    begun = {p.id: p.km or 0.0 for p in event.course_of(runner).points if (p.km or 0.0) <= (at.km or 0.0)}
    in_force = [f for f in event.runner(runner).fuel if f.from_point in begun]
    return max(in_force, key=lambda f: begun[f.from_point], default=None)
