"""Several runners, stages, relay shares, loops; tired drivers; every rule; the rows that people read."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from server.conversation.telling.movements import broken_words, plan_remarks
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.event.model import (
    Car,
    CourseDef,
    CrewAccess,
    Drive,
    Event,
    KitItem,
    KitWeight,
    MeetingPlan,
    Part,
    PartKind,
    Point,
    PointKind,
    Rules,
    Runner,
    Share,
    Sleep,
    Target,
)
from server.paper.moves import move_rows
from server.plan.movements import CrewPlan, OfferKind, Role, TroubleKind, crew_plan
from server.plan.movements.trips import is_safety

MINUTE = timedelta(minutes=1)
HOUR = timedelta(hours=1)
START = datetime(2027, 6, 19, 5, 0, tzinfo=UTC)
WALK = CrewAccess(walk_in=4 * MINUTE, unloading=6 * MINUTE)
Views = Callable[..., Any]
Events = Callable[..., Event]
Points = Callable[..., Point]


def kinds(plan: CrewPlan) -> set[TroubleKind]:
    """The kinds of trouble there are."""
    return {t.kind for t in plan.troubles}


def with_points(event: Event, **changes: Any) -> Event:
    """The event with other values at points: chapel={"access": ...}."""
    course = event.courses[0]
    points = tuple(replace(p, **changes.get(p.id, {})) for p in course.points)
    return replace(event, courses=(replace(course, points=points),))


def two_runners(event: Event, start: datetime) -> Event:
    """Jo runs the same course, from `start`; Ana meets both at Chapel and Mill."""
    jo = Runner("jo", "jonas", "Jo", "2", "main", start, Target(finish=timedelta(hours=12)))
    meetings = (
        MeetingPlan("m-maren", "chapel", "maren", ("ana",), "van"),
        MeetingPlan("m-jo", "mill", "jo", ("ana",), "van"),
    )
    return replace(event, runners=(*event.runners, jo), meetings=meetings)


def test_one_crew_for_two_runners_far_apart_in_time(event_of: Events, view: Views) -> None:
    """Jo starts eight hours later: both are made, and the second trip starts where the first ended."""
    event = two_runners(event_of(), START + 8 * HOUR)
    plan = crew_plan(event, {}, {"maren": view(), "jo": view(start=START + 8 * HOUR, key=9)})
    assert [v.meeting for v in plan.visits] == ["m-maren", "m-jo"]
    assert plan.visit("m-jo").rides[0].from_place == "chapel"
    assert all(v.promised for v in plan.visits)


def test_one_crew_for_two_runners_at_the_same_time(event_of: Events, view: Views) -> None:
    """Jo comes to Mill when Maren comes to Chapel: one car can't do both, the odds say so, the other car is offered."""
    begin = START + 175 * MINUTE
    event = two_runners(event_of(), begin)
    plan = crew_plan(event, {}, {"maren": view(), "jo": view(start=begin, key=9)})
    clash = [t for t in plan.troubles if t.kind is TroubleKind.CLASH]
    assert len(clash) == 1
    assert clash[0].odds is not None
    assert clash[0].odds < 0.7
    assert sum(v.promised for v in plan.visits) == 1
    assert any(o.kind is OfferKind.OTHER_CAR and o.car == "red" for o in plan.offers)
    told = plan_remarks(english(event), event, plan)
    assert any("before her, less than the 97 in 100 that can be promised" in line for line in told)


def test_it_is_said_that_two_runners_odds_are_counted_apart(event_of: Events, view: Views) -> None:
    """Where one car goes from one runner to the other the odds come with what they leave out, once; else nothing."""
    apart = "one crew meets Jo and Maren: the odds are counted as if their nights had nothing in common"
    two = two_runners(event_of(), START + 8 * HOUR)
    both = {"maren": view(), "jo": view(start=START + 8 * HOUR, key=9)}
    said = [x for x in plan_remarks(english(two), two, crew_plan(two, {}, both)) if apart in x]
    assert len(said) == 1
    one = event_of()
    told = plan_remarks(english(one), one, crew_plan(one, {}, {"maren": view()}))
    assert not any("in common" in x for x in told)
    cars = tuple(replace(m, crew=("vera",), car="red") if m.runner == "jo" else m for m in two.meetings)
    own = replace(two, meetings=cars)
    assert not any("in common" in x for x in plan_remarks(english(own), own, crew_plan(own, {}, both)))


def test_crew_who_go_on_before_she_comes_are_not_promised(event_of: Events, view: Views) -> None:
    """Ana is at Mill in time, but Jo is due at Chapel so soon that she would leave before Maren has likely come: the
    odds of seeing her are told, the meeting is not promised, and the other car is offered."""
    event = two_runners(event_of(), START)
    first, second = event.meetings
    meetings = (replace(first, point="mill"), replace(second, point="chapel"))
    event = replace(event, meetings=meetings)
    views = {"maren": view(spread=0.15), "jo": view(minutes=(60.0, 200.0, 480.0, 640.0), spread=0.01, key=9)}
    plan = crew_plan(event, {}, views)
    mill = plan.visit("m-maren")
    assert mill.p_first >= mill.sure
    assert mill.p_meets < 0.9
    assert not mill.promised
    (told,) = [t for t in plan.troubles if t.said.kind == "move-leaves-early"]
    assert (told.meeting, told.other, told.odds) == ("m-maren", "m-jo", mill.p_meets)
    assert any("to see her there" in line for line in plan_remarks(english(event), event, plan))
    assert any(o.kind is OfferKind.OTHER_CAR for o in plan.offers)


def test_the_wait_ends_with_the_race(event_of: Events, view: Views) -> None:
    """Nobody is to wait at the finish after the race's limit is over."""
    event = event_of(meetings=(MeetingPlan("m", "finish", "maren", ("ana",), "van"),))
    views = {"maren": view(spread=0.2)}
    end = START + 11 * HOUR
    assert crew_plan(event, {}, views, other_cars=False).visit("m").wait_until > end
    limited = replace(event, limit=11 * HOUR)
    assert crew_plan(limited, {}, views, other_cars=False).visit("m").wait_until == end


def test_two_runners_met_at_one_car_park(event_of: Events, view: Views) -> None:
    """Both come through Chapel within the hour: the crew are there for both, and no drive lies between."""
    event = two_runners(event_of(), START + 30 * MINUTE)
    there = tuple(replace(m, point="chapel") for m in event.meetings)
    plan = crew_plan(
        replace(event, meetings=there), {}, {"maren": view(), "jo": view(start=START + 30 * MINUTE, key=9)}
    )
    second = plan.visits[1]
    assert second.rides[0].journey.whole == timedelta(0)
    assert all(v.promised for v in plan.visits)


def test_loops_need_no_drive_until_the_crew_go_elsewhere(
    event_of: Events, view: Views, point_of: Points
) -> None:
    """Five rounds past one field: one drive there, then none; going to the far side in between needs two."""
    field = replace(WALK, place="field")
    names = [f"lap{k}" for k in range(1, 6)]
    far = point_of("far", 25, WALK)
    points = (
        point_of("start", 0, None, PointKind.START),
        *(point_of(n, 10.0 * k + 10, field) for k, n in enumerate(names)),
        point_of("finish", 80, None, PointKind.FINISH),
    )
    meetings = tuple(MeetingPlan(n, n, "maren", ("ana",), "van") for n in names)
    event = event_of(
        courses=(CourseDef("main", "r.gpx", points),),
        drives=(Drive("start", "lap1", 20, "ana"),),
        meetings=meetings,
    )
    forecast = view(names, [60.0, 125.0, 190.0, 260.0, 330.0])
    plan = crew_plan(event, {}, {"maren": forecast})
    assert [v.rides[0].journey.drive for v in plan.visits] == [20 * MINUTE] + [timedelta(0)] * 4
    assert all(v.promised for v in plan.visits)
    detour = replace(
        event,
        courses=(CourseDef("main", "r.gpx", (*points[:3], far, *points[3:])),),
        drives=(*event.drives, Drive("lap2", "far", 15, "ana"), Drive("far", "lap1", 15, "ana")),
        meetings=(*meetings, MeetingPlan("out", "far", "maren", ("ana",), "van")),
    )
    wide = view(["lap1", "lap2", "far", "lap3", "lap4", "lap5"], [60.0, 125.0, 160.0, 190.0, 260.0, 330.0])
    drives = [v.rides[0].journey.drive for v in crew_plan(detour, {}, {"maren": wide}).visits]
    assert drives == [d * MINUTE for d in (20, 0, 15, 15, 0, 0)]


def test_stages_with_a_night_between(event_of: Events, view: Views, point_of: Points) -> None:
    """Each day is a course of its own with a start of its own; the van goes by the inn where the crew sleep."""
    second = CourseDef(
        "two", "two.gpx",
        (point_of("b-start", 0, None, PointKind.START), point_of("weir", 20, WALK),
         point_of("b-end", 40, WALK, PointKind.FINISH)),
    )  # fmt: skip
    event = event_of()
    day2 = START + 24 * HOUR
    drives = (*event.drives, Drive("finish", "inn", 25, "ana"), Drive("inn", "weir", 40, "ana"))
    event = replace(
        event,
        courses=(*event.courses, second),
        runners=(
            *event.runners,
            Runner("maren-2", "maren", "Maren day 2", "1b", "two", day2, Target(HOUR * 8)),
        ),
        drives=drives,
        meetings=(
            MeetingPlan("end", "finish", "maren", ("ana",), "van"),
            MeetingPlan("next-day", "weir", "maren-2", ("ana",), "van", from_place="inn"),
        ),
    )
    views = {"maren": view(), "maren-2": view(("weir", "b-end"), (150.0, 320.0), start=day2, key=5)}
    plan = crew_plan(event, {}, views)
    ride = plan.visit("next-day").rides[0]
    assert [(w.from_place, w.to_place) for w in ride.journey.ways] == [("finish", "inn"), ("inn", "weir")]
    assert ride.journey.drive == 65 * MINUTE
    assert all(v.promised for v in plan.visits)
    assert TroubleKind.AWAKE in kinds(plan)  # nobody said that they sleep
    slept = tuple(
        replace(p, sleeps=(Sleep(START + 16 * HOUR, START + 22 * HOUR),)) if p.person == "ana" else p
        for p in event.parts
    )
    assert TroubleKind.AWAKE not in kinds(crew_plan(replace(event, parts=slept), {}, views))


def relay(event: Event) -> Event:
    """Vera runs to Chapel, Jonas from there; Ana brings Jonas and takes Vera on."""
    parts = (
        Part("ana", PartKind.CREW, drives=True, car="van"),
        Part("vera", PartKind.CREW),
        Part("jonas", PartKind.CREW),
    )
    return replace(
        event,
        parts=parts,
        shares=(Share("maren", "vera", "start", "chapel"), Share("maren", "jonas", "chapel", "finish")),
        meetings=(
            MeetingPlan("hand-over", "chapel", "maren", ("ana",), "van"),
            MeetingPlan("late", "moss", "maren", ("ana",), "van"),
        ),
    )


def test_a_relay_hands_over_where_the_next_runner_is_brought(event_of: Events, view: Views) -> None:
    """Jonas rides to Chapel and is promised there at 99%; Vera, done, rides on in the van."""
    plan = crew_plan(relay(event_of()), {}, {"maren": view()})
    first, second = plan.visits
    assert first.sure == 0.99
    assert {r.person: r.role for r in plan.people if r.meeting == "hand-over"} == {
        "ana": Role.DRIVES,
        "jonas": Role.RUNS,
    }
    assert set(second.rides[0].riders) == {"ana", "vera"}
    assert all(v.promised for v in plan.visits)


def test_a_hand_over_without_transport_is_said(event_of: Events, view: Views) -> None:
    """No meeting at Chapel: nobody brings Jonas, nobody fetches Vera."""
    event = relay(event_of())
    event = replace(event, meetings=event.meetings[1:])
    assert {TroubleKind.HAND_OVER, TroubleKind.FETCH} <= kinds(crew_plan(event, {}, {"maren": view()}))


def test_a_pacer_is_dropped_paced_with_and_fetched(event_of: Events, view: Views) -> None:
    """Tomas rides to Mill, is in no car while he paces, and rides on from Moss; not fetched is said."""
    meetings = (
        MeetingPlan("m1", "mill", "maren", ("ana",), "van", pacer_joins="tomas"),
        MeetingPlan("m2", "chapel", "maren", ("ana",), "van"),
        MeetingPlan("m3", "moss", "maren", ("ana",), "van", pacer_leaves="tomas"),
        MeetingPlan("m4", "finish", "maren", ("ana",), "van"),
    )
    plan = crew_plan(event_of(meetings=meetings), {}, {"maren": view()})
    tomas = [r for r in plan.people if r.person == "tomas"]
    assert [r.meeting for r in tomas] == ["m1", "m4"]
    assert tomas[0].role is Role.PACES
    assert all(v.promised for v in plan.visits)
    alone = crew_plan(event_of(meetings=meetings[:2]), {}, {"maren": view()})
    assert TroubleKind.FETCH in kinds(alone)


@pytest.mark.parametrize(
    ("changes", "meetings", "kind"),
    [
        ({}, (("m1", ("jonas",), "van"),), TroubleKind.NO_DRIVER),
        ({"cars": (Car("van", "van", 1, "start"),)}, (("m1", ("ana", "jonas"), "van"),), TroubleKind.NO_SEAT),
        ({"drives": ()}, (("m1", ("ana",), "van"),), TroubleKind.NO_WAY),
        ({}, (("m1", ("ana", "jonas"), "van"), ("m2", ("vera", "jonas"), "red")), TroubleKind.STRANDED),
    ],
)
def test_what_can_not_be_is_said_and_not_promised(
    event_of: Events, view: Views, changes: Any, meetings: Any, kind: TroubleKind
) -> None:
    """No driver, no seat, no known drive, somebody who is not where the car is."""
    points = {"m1": "mill", "m2": "chapel"}
    plans = tuple(MeetingPlan(m, points[m], "maren", crew, car) for m, crew, car in meetings)
    parts = event_of().parts
    if kind is TroubleKind.NO_DRIVER:
        parts = tuple(replace(p, car=None) if p.person == "ana" else p for p in parts)
    plan = crew_plan(event_of(meetings=plans, parts=parts, **changes), {}, {"maren": view()})
    assert kind in kinds(plan)
    assert not plan.visits[-1].promised


@pytest.mark.parametrize(("hours", "flagged"), [(16.9, False), (17.0, False), (17.1, True)])
def test_a_drive_that_ends_past_17_hours_awake(
    event_of: Events, view: Views, hours: float, flagged: bool
) -> None:
    """17 h: Williamson & Feyer 2000 (from memory). Judged at the end of the drive; before, at and after."""
    event = event_of()
    end = crew_plan(event, {}, {"maren": view()}).visit("m1").there
    woke = end - timedelta(hours=hours)
    parts = tuple(replace(p, awake_since=woke) if p.person == "ana" else p for p in event.parts)
    meetings = event.meetings[:1]
    plan = crew_plan(replace(event, parts=parts, meetings=meetings), {}, {"maren": view()})
    assert (TroubleKind.AWAKE in kinds(plan)) is flagged
    assert any(o.kind is OfferKind.SKIP for o in plan.offers) is flagged


@pytest.mark.parametrize(
    ("before_s", "after_s", "flagged"), [(-1, 60, True), (60, 0, False), (-3600, 1, True)]
)
def test_nobody_drives_in_a_sleep_they_mean_to_have(
    event_of: Events, view: Views, before_s: float, after_s: float, flagged: bool
) -> None:
    """A sleep that begins before the drive is over is told at its meeting; one that begins after it is none of its."""
    event = event_of()
    end = crew_plan(event, {}, {"maren": view()}).visit("m1").there
    sleep = Sleep(end + timedelta(seconds=before_s), end + timedelta(seconds=after_s) + HOUR)
    parts = tuple(replace(p, sleeps=(sleep,)) if p.person == "ana" else p for p in event.parts)
    plan = crew_plan(replace(event, parts=parts, meetings=event.meetings[:1]), {}, {"maren": view()})
    told = [t for t in plan.troubles if t.kind is TroubleKind.ASLEEP]
    assert [(t.meeting, t.person) for t in told] == ([("m1", "ana")] if flagged else [])
    for language in ("en", "de"):
        said = "\n".join(plan_remarks(Reader(language, "UTC", "UTC"), event, plan))
        assert (f"{sleep.start:%H:%M}" in said) is flagged
        assert ("Ana means to sleep from" in said or "Ana will von" in said) is flagged


def test_a_car_that_comes_too_late_keeps_no_other(event_of: Events, view: Views) -> None:
    """Ana's drive from the mill takes half the day. Vera, at the chapel in the red car, sees Maren there all the same
    and goes on when she does: her odds and hours are her own car's."""
    event = event_of()
    drives = tuple(
        replace(d, minutes=500) if (d.from_place, d.to_place) == ("mill", "chapel") else d
        for d in event.drives
    )
    meetings = (
        MeetingPlan("m1", "mill", "maren", ("ana",), "van"),
        MeetingPlan("m2", "chapel", "maren", ("ana", "vera"), "van"),
        MeetingPlan("m3", "moss", "maren", ("vera",), "red"),
    )
    late = replace(event, drives=drives, meetings=meetings)
    both = crew_plan(late, {}, {"maren": view()})
    alone = (replace(meetings[1], crew=("vera",), car="red"), meetings[2])
    vera = crew_plan(replace(event, meetings=alone), {}, {"maren": view()})
    van, red = both.visit("m2").rides
    assert (van.car, red.car) == ("van", "red")
    assert van.p_first < 0.05
    assert both.visit("m2").p_first < 0.05
    assert (red.p_first, red.there, red.gone) == (
        vera.visit("m2").p_first,
        vera.visit("m2").there,
        vera.visit("m2").gone,
    )
    assert red.p_first >= 0.97
    assert both.visit("m3").promised
    assert [t.meeting for t in both.troubles if t.kind is TroubleKind.CLASH] == ["m2"]
    said = [r.odds for r in move_rows(late, both, Say(Reader("en", "UTC", "UTC"), START))]
    assert said[1:] == ["under 1 in 20, not promised", "over 19 in 20, not promised", "over 19 in 20"]


def test_another_driver_in_the_car_is_offered_and_safety_is_not_skipped(
    event_of: Events, view: Views
) -> None:
    """Vera, awake for less, sits beside Ana: she may drive. A meeting with the torch is never offered to be left out."""
    event = event_of()
    woke = START - 20 * HOUR
    parts = tuple(
        replace(p, awake_since=woke, car="van")
        if p.person == "ana"
        else replace(p, awake_since=START - HOUR, car=None)
        if p.person == "vera"
        else p
        for p in event.parts
    )
    kit = (KitItem("torch", KitWeight.SAFETY),)
    meetings = (MeetingPlan("m1", "mill", "maren", ("ana", "vera"), "van", kit=kit),)
    plan = crew_plan(replace(event, parts=parts, meetings=meetings), {}, {"maren": view()})
    assert [(o.kind, o.person) for o in plan.offers] == [(OfferKind.SWAP_DRIVER, "vera")]


def test_an_assumed_waking_is_said(event_of: Events, view: Views) -> None:
    """Nobody said when Ana woke: the plan says what it assumed."""
    plan = crew_plan(event_of(), {}, {"maren": view()})
    assert [(n.kind, n.word("person")) for n in plan.notes] == [("move-awake-assumed", "Ana")]


def test_who_is_first_on_the_road_at_night_has_not_slept(event_of: Events, view: Views) -> None:
    """Ana drives off after midnight with Vera beside her: both are taken to be awake since the morning before, so that Vera
    is not offered the wheel; who first leaves at four in the morning is taken to have slept."""
    meetings = (MeetingPlan("m1", "mill", "maren", ("ana", "vera"), "van"),)
    parts = tuple(replace(p, car="van" if p.person == "ana" else None) for p in event_of().parts)
    for start_h, since in ((20, "Sat 19 Jun 07:00"), (23, "Sun 20 Jun")):
        late = view(start=START + start_h * HOUR)
        plan = crew_plan(event_of(meetings=meetings, parts=parts), {}, {"maren": late})
        (note,) = plan.notes
        woke = datetime.fromtimestamp(note.number("since_at"), UTC)
        assert f"{woke:%a %d %b %H:%M}".startswith(since), (start_h, woke)
        assert not any(o.kind is OfferKind.SWAP_DRIVER for o in plan.offers)


def test_the_drives_of_one_tired_driver_are_one_line(event_of: Events, view: Views) -> None:
    """Places and hours together, not a line a drive."""
    event = event_of()
    parts = tuple(replace(p, awake_since=START - 20 * HOUR, car="van") for p in event.parts)
    meetings = tuple(MeetingPlan(f"m-{p}", p, "maren", ("ana",), "van") for p in ("mill", "chapel", "moss"))
    tired = replace(event, parts=parts, meetings=meetings)
    plan = crew_plan(tired, {}, {"maren": view()})
    assert sum(t.kind is TroubleKind.AWAKE for t in plan.troubles) == 3
    said = [x for x in plan_remarks(english(tired), tired, plan) if "awake" in x]
    assert len(said) == 1, said
    assert said[0].startswith("Mill, Chapel and Moss, Maren: Ana will have been awake for 2")
    helps = [x for x in plan_remarks(english(tired), tired, plan) if "leave this meeting out" in x]
    assert [x.partition(",")[0] for x in helps] == ["Mill"], helps


@pytest.mark.parametrize(
    ("thing", "sure"),
    [
        (KitItem("head torch"), True),
        (KitItem("warm jacket"), True),
        (KitItem("spare battery"), True),
        (KitItem("poles", KitWeight.SAFETY), True),
        (KitItem("warm jacket", take_back=True), False),
        (KitItem("spare jumper"), False),
        (KitItem("poles"), False),
    ],
)
def test_what_a_meeting_must_not_be_missed_for(event_of: Events, thing: KitItem, sure: bool) -> None:
    """Light, what feeds it and a warm layer are promised at 99% by their names; at the finish only what is written so."""
    event = event_of()
    meeting = MeetingPlan("m1", "mill", "maren", ("ana",), "van", kit=(thing,))
    assert is_safety(event, meeting) is sure
    assert is_safety(event, replace(meeting, point="finish")) is (thing.weight is KitWeight.SAFETY)


M1 = MeetingPlan("m1", "mill", "maren", ("ana",), "van")
M2 = MeetingPlan("m2", "chapel", "maren", ("vera",), "red")
LATE = START + 1000 * MINUTE
VAN, RED = Car("van", "blue van", 4, "start"), Car("red", "red car", 4, "start")
GREEN = replace(RED, permits=("green",))
PERMIT = replace(WALK, permit="green")
BROKEN = [
    ({"rules": Rules(vehicles_max=1)}, {}, (M1, M2), "one vehicle at most"),
    ({"rules": Rules(crew_people_max=1)}, {}, (replace(M1, crew=("ana", "jonas")),), "one of the crew at most"),
    ({}, {"mill": {"access": replace(WALK, people_max=1)}}, (replace(M1, crew=("ana", "jonas")),),
     "one person at most at Mill"),
    ({}, {"mill": {"access": None}}, (M1,), "outside help at crew points only"),
    ({"rules": Rules(crew_not_before=LATE)}, {"mill": {"access": replace(WALK, closes=LATE)}}, (M1,),
     "no crew before its time"),
    ({"rules": Rules(crew_not_before=LATE)}, {}, (M1,), "no crew anywhere before Saturday 21:40"),
    ({}, {"mill": {"access": replace(WALK, opens=LATE)}}, (M1,), "no crew at Mill before Saturday 21:40"),
    ({}, {"mill": {"access": replace(WALK, closes=START + 60 * MINUTE)}}, (M1,), "no crew at Mill after Saturday 06:00"),
    ({}, {"mill": {"access": replace(WALK, cars_max=0)}}, (M1,), "no cars at Mill"),
    ({"cars": (Car("van", "blue van", 4, "start"), GREEN)}, {"mill": {"access": PERMIT}}, (M1,), "permit “green” at Mill"),
    ({"rules": Rules(pacer_from_km=30)}, {}, (replace(M1, pacer_joins="tomas"),), "pacers from 30.0 km"),
    ({"rules": Rules(pacers_at_once=1)}, {},
     (replace(M1, pacer_joins="tomas"), replace(M2, pacer_joins="jonas")), "one pacer at once"),
]  # fmt: skip


@pytest.mark.parametrize(("changes", "points", "meetings", "rule"), BROKEN)
def test_a_plan_that_breaks_a_rule_is_refused_with_the_rule(
    event_of: Events, view: Views, changes: Any, points: Any, meetings: Any, rule: str
) -> None:
    """Each rule of the race: the plan is refused, the rule and the meeting are named, nothing there is promised; the
    words are there in every language."""
    event = with_points(event_of(meetings=meetings, **changes), **points)
    plan = crew_plan(event, {}, {"maren": view()})
    (broken,) = plan.broken
    assert not plan.visit(broken.meeting or "").promised
    what, remedy = broken_words(english(event), broken)
    assert what.endswith(f"(rule: {rule})")
    assert remedy
    german = broken_words(replace(english(event), language="de"), broken)
    assert "(Regel: " in german[0]
    assert german[1] != remedy


def english(event: Event) -> Reader:
    """Who reads English where the race is."""
    return Reader("en", event.time_zone, event.time_zone)


PERMITS: list[tuple[str, tuple[Car, ...], dict[str, tuple[str, ...]], bool, bool]] = [
    ("nobody says who has it", (VAN, RED), {}, True, False),
    ("the car that goes has it", (replace(VAN, permits=("green",)), RED), {}, False, True),
    ("written otherwise", (replace(VAN, permits=(" Green",)), RED), {}, False, True),
    ("who is in the car has it", (VAN, RED), {"ana": ("green",)}, False, True),
    ("another permit is none", (replace(VAN, permits=("blue",)), RED), {}, True, False),
]


@pytest.mark.parametrize(("case", "cars", "held", "asked", "promised"), PERMITS, ids=[p[0] for p in PERMITS])
def test_a_permit_is_held_or_asked_about(
    event_of: Events,
    view: Views,
    case: str,
    cars: tuple[Car, ...],
    held: dict[str, tuple[str, ...]],
    asked: bool,
    promised: bool,
) -> None:
    """A point that needs a permit: who is said to hold it may come, otherwise it is asked about and not promised."""
    event = event_of(meetings=(M1,), cars=cars)
    parts = tuple(replace(p, permits=held.get(p.person, ())) for p in event.parts)
    event = with_points(replace(event, parts=parts), mill={"access": PERMIT})
    plan = crew_plan(event, {}, {"maren": view()})
    assert not plan.broken
    assert (TroubleKind.PERMIT in kinds(plan)) is asked
    assert plan.visit("m1").promised is promised
    said = [line for line in plan_remarks(english(event), event, plan) if "permit “green”" in line]
    assert len(said) == asked


def test_the_second_car_at_a_point_for_one(event_of: Events, view: Views) -> None:
    """Vera, elsewhere with the red car, would bring it to a point where one car of a runner may come: refused."""
    meetings = (M1, M2, MeetingPlan("m3", "moss", "maren", ("ana", "vera"), "van"))
    event = with_points(event_of(meetings=meetings), moss={"access": replace(WALK, cars_max=1)})
    (broken,) = crew_plan(event, {}, {"maren": view()}).broken
    what, _ = broken_words(english(event), broken)
    assert what == "2 cars come to Moss (blue van and red car) (rule: one car of one runner at most at Moss)"


def test_a_car_brought_along_counts_as_a_vehicle(event_of: Events, view: Views) -> None:
    """Vera, elsewhere with the red car, brings it to a meeting for which only the van is named: two vehicles."""
    meetings = (M1, M2, MeetingPlan("m3", "moss", "maren", ("ana", "vera"), "van"))
    plan = crew_plan(event_of(meetings=meetings, rules=Rules(vehicles_max=2)), {}, {"maren": view()})
    assert [r.car for r in plan.visit("m3").rides] == ["van", "red"]
    assert not plan.broken
    fewer = crew_plan(event_of(meetings=meetings, rules=Rules(vehicles_max=1)), {}, {"maren": view()})
    assert fewer.broken


def test_help_anywhere_needs_no_crew_point(event_of: Events, view: Views) -> None:
    """With outside help allowed anywhere a meeting at a plain point is no breach."""
    event = event_of(meetings=(M1,), rules=Rules(outside_help_only_at_crew_points=False))
    assert not crew_plan(with_points(event, mill={"access": None}), {}, {"maren": view()}).broken


def test_the_rows_people_read(event_of: Events, view: Views) -> None:
    """One row a car and meeting, each addend named; troubles and offers as lines; all of it in German too."""
    event = event_of(drives=(*event_of().drives[:1], Drive("mill", "chapel", 30)))
    plan = crew_plan(event, {}, {"maren": view()})
    first, second = move_rows(event, plan, Say(english(event), START))
    assert first.cells == (
        "blue van", "Ana (drives)", "Start", "Mill", "drive 30 min, in on foot 4 min and unloading 6 min",
        "over 19 in 20",
    )  # fmt: skip
    assert second.odds.endswith("not promised")
    assert any("nobody has confirmed" in line for line in plan_remarks(english(event), event, plan))
    refused = crew_plan(event_of(rules=Rules(crew_people_max=0)), {}, {"maren": view()})
    told = plan_remarks(english(event), event, refused)[0]
    assert told == "NOT ALLOWED: one person is to meet her at Mill (rule: no crew at all). Name fewer people."
    german = Reader("de", event.time_zone, event.time_zone)
    assert move_rows(event, plan, Say(german, START))[0].who == "Ana (fährt)"
    assert plan_remarks(german, event, refused)[0].startswith(
        "NICHT ERLAUBT: eine Person soll sie bei Mill treffen"
    )
    assert any("niemand bestätigt hat" in line for line in plan_remarks(german, event, plan))


def test_a_meeting_that_is_rather_missed_is_offered_to_be_left_out(event_of: Events, view: Views) -> None:
    """The drive from the mill takes half the day: with nothing hanging on the chapel it may go, with a torch it may not."""
    event = event_of()
    drives = tuple(replace(d, minutes=500) if d.to_place == "chapel" else d for d in event.drives)
    for kit, offered in (((), ["m2"]), ((KitItem("head torch"),), [])):
        meetings = (
            MeetingPlan("m1", "mill", "maren", ("ana",), "van"),
            MeetingPlan("m2", "chapel", "maren", ("ana",), "van", kit=kit),
        )
        plan = crew_plan(
            replace(event, drives=drives, meetings=meetings), {}, {"maren": view()}, other_cars=False
        )
        skips = [o.meeting for o in plan.offers if o.kind is OfferKind.SKIP and o.said.kind == "move-skip"]
        assert skips[:1] == offered, plan.offers


def test_a_finish_is_never_offered_to_be_left_out(event_of: Events, view: Views) -> None:
    """However tired the driver: somebody must be there when she comes in, and when her pacer comes off the course."""
    late = view(start=START + 20 * HOUR)
    meetings = (MeetingPlan("m4", "finish", "maren", ("ana",), "van"),)
    event = with_points(event_of(meetings=meetings), finish={"access": WALK})
    woke = tuple(replace(p, awake_since=START) if p.person == "ana" else p for p in event.parts)
    plan = crew_plan(replace(event, parts=woke), {}, {"maren": late})
    assert TroubleKind.AWAKE in kinds(plan)
    assert not [o for o in plan.offers if o.kind is OfferKind.SKIP]
