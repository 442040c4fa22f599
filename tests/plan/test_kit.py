"""Torch and layers: what the dark, the cold and the wet need, against where she gets it, for A, B, C and the limit."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from server.conversation.telling.planned import say_planned
from server.conversation.telling.reader import Reader
from server.event.model import (
    CrewAccess,
    CutOff,
    DropBag,
    Edge,
    Event,
    KitItem,
    MeetingPlan,
    Target,
    WeatherSpell,
)
from server.plan import make_timetable
from server.plan.kit import KitNeed, gaps, is_for, kit_told, light_of
from server.plan.paces import LIMIT, dark_by_pace, paces_of

MORNING = datetime(2027, 9, 11, 10, 0, tzinfo=UTC)
"""At 50 degrees north, 10 east the sun sets that day about 17:38 UTC."""
TORCH, BATTERY, LAYER = KitItem("head torch"), KitItem("spare battery", hours=4.0), KitItem("warm layer")


@pytest.fixture
def race(make_event, points_at, level_course):
    """50 km in so many hours with a limit, crew may come to each point; meetings as (point, kit)."""

    def made(
        hours: float, *meetings: tuple[str, tuple[KitItem, ...]], limit: float = 11.0, weather=(), **own
    ) -> Event:
        points = tuple(
            replace(p, access=CrewAccess()) if 0 < i < 5 else p
            for i, p in enumerate(points_at((0.0, 10.0, 20.0, 30.0, 40.0, 50.0)))
        )
        event = make_event(
            Target(finish=timedelta(hours=hours)), points=points, limit=timedelta(hours=limit), start=MORNING
        )
        plans = tuple(MeetingPlan(f"m-{point}", point, "maren", ("ana",), kit=kit) for point, kit in meetings)
        runner = replace(event.runners[0], **own)
        return replace(event, runners=(runner,), meetings=plans, weather=weather)

    return made


def found(event: Event, course):
    """Gaps by need."""
    return {g.need: g for g in gaps(event, make_timetable(event, "maren", course), course)}


def paces(gap) -> list[str]:
    """At which paces."""
    return [m.pace for m in gap.moments]


def test_the_limit_is_a_pace_of_its_own(race, level_course) -> None:
    """In by the limit to the minute, never before goal C, and stops are kept."""
    event = race(6.0)
    by_name = {p.name: p for p in paces_of(event, make_timetable(event, "maren", level_course))}
    assert list(by_name) == ["A", "B", "C", LIMIT]
    assert by_name[LIMIT].elapsed_s[-1] == pytest.approx(11 * 3600.0, abs=61.0)
    assert (by_name[LIMIT].elapsed_s >= by_name["C"].elapsed_s - 1.0).all()
    assert (by_name[LIMIT].elapsed_s[1:] >= by_name[LIMIT].elapsed_s[:-1]).all()


def test_each_stage_has_its_limit(race, level_course) -> None:
    """In a race in stages just in by each day's cut-off is a pace too; the night's rest is no part of the dark."""
    event = race(6.0, limit=36.0)
    points = tuple(
        replace(
            p,
            cut_offs=(CutOff(Edge.IN, clock=event.starts + timedelta(hours=14)),),
            next_stage=event.starts + timedelta(hours=24),
        )
        if p.id == "p3"
        else p
        for p in event.courses[0].points
    )
    event = replace(event, courses=(replace(event.courses[0], points=points),))
    table = make_timetable(event, "maren", level_course)
    by_name = {p.name: p for p in paces_of(event, table)}
    late = by_name[LIMIT]
    assert late.at(30.0) == pytest.approx(14 * 3600.0, abs=61.0)
    assert late.elapsed_s[-1] == pytest.approx(36 * 3600.0, abs=61.0)
    assert late.rests() == [(pytest.approx(14 * 3600.0), pytest.approx(24 * 3600.0))]
    dark = dict(dark_by_pace(event, table, level_course))
    assert dark["B"] == ()
    in_camp = timedelta(hours=14)
    assert [d.to_elapsed for d in dark[LIMIT] if d.from_elapsed < in_camp] == [in_camp]


def test_no_torch_in_b_alone_is_no_answer(race, level_course) -> None:
    """In by 16:00 she needs none; the sun sets before the limit at 21:00: said for the limit, from sunset on."""
    event = race(6.0)
    dark = dict(dark_by_pace(event, make_timetable(event, "maren", level_course), level_course))
    assert not dark["B"]
    assert dark[LIMIT][0].from_at == pytest.approx(
        datetime(2027, 9, 11, 17, 38, tzinfo=UTC), abs=timedelta(minutes=6)
    )
    gap = found(event, level_course)[KitNeed.TORCH]
    assert LIMIT in paces(gap)
    assert "B" not in paces(gap)


def test_a_torch_handed_over_after_dark(race, level_course) -> None:
    """Needed from the sunset on, got later on: said with when she gets it, and the last crew point before."""
    event = race(10.0, ("p4", (TORCH,)), limit=14.0)
    gap = found(event, level_course)[KitNeed.TORCH]
    assert gap.handed_at == "p4"
    late = {m.pace: m for m in gap.moments}
    assert {"C", LIMIT} <= set(late)
    for m in late.values():
        assert m.until is not None
        assert m.at < m.until
        assert m.km < 40.0
    first = min(m.km for m in gap.moments)
    point = {"p1": 10.0, "p2": 20.0, "p3": 30.0}[gap.give_at]
    assert point <= first < point + 10.0


@pytest.mark.parametrize(
    "given",
    [
        {"carries": (TORCH,)},
        {"torch": "head torch, spare in the pack"},
        {"torch": "white head torch"},
        {"drop_bags": (DropBag("p1", (KitItem("Stirnlampe"),)),)},
    ],
)
def test_a_torch_that_is_there_in_time(race, level_course, given) -> None:
    """From the start, by what the file says of her light, or from a bag before dark: nothing to say."""
    assert KitNeed.TORCH not in found(race(10.0, **given), level_course)


def test_a_torch_that_was_taken_back(race, level_course) -> None:
    """Taken from her by day, she has none by night."""
    event = race(10.0, ("p1", (replace(TORCH, take_back=True),)), carries=(TORCH,))
    assert KitNeed.TORCH in found(event, level_course)


def test_crew_take_what_they_name_and_no_more(race, level_course) -> None:
    """Her torch is taken and the spare is left: no gap. The spare's hours are then all she has."""
    spare = KitItem("spare head torch", hours=1.0)
    taken = ("p1", (replace(TORCH, take_back=True),))
    event = race(10.8, taken, limit=13.0, carries=(replace(TORCH, hours=9.0), spare, LAYER))
    assert KitNeed.TORCH not in found(event, level_course)
    assert kinds(event, level_course) == ["kit-battery"]
    kept = race(10.8, limit=13.0, carries=(replace(TORCH, hours=9.0), spare, LAYER))
    assert kinds(kept, level_course) == []


def test_a_warm_layer_by_the_hour_and_by_the_weather(race, level_course) -> None:
    """Two hours after sunset it is asked for, not in a night that stays warm, and by day where it is cold."""
    night = race(10.8, limit=14.0, carries=(TORCH,))
    assert KitNeed.WARM in found(night, level_course)
    assert KitNeed.WARM not in found(
        replace(night, weather=(WeatherSpell(temperature_c=19.0),)), level_course
    )
    by_day = race(5.0, limit=6.0, carries=(TORCH,), weather=(WeatherSpell(temperature_c=3.0),))
    assert paces(found(by_day, level_course)[KitNeed.WARM])[:3] == ["A", "B", "C"]
    assert KitNeed.WARM not in found(
        replace(by_day, runners=(replace(by_day.runners[0], carries=(LAYER,)),)), level_course
    )


def test_a_night_that_is_long_cold_at_the_start(race, level_course) -> None:
    """Off three hours after sunset, a warm layer is needed from the first minute; off at sunset, two hours later."""
    late, at_sunset = (race(6.0, limit=9.0, carries=(TORCH,)) for _ in range(2))
    for event, start_h, after_h in ((late, 11.0, 0.0), (at_sunset, 7.75, 2.0)):
        start = MORNING + timedelta(hours=start_h)
        moved = replace(event, starts=start, runners=(replace(event.runners[0], start=start),))
        gap = found(moved, level_course)[KitNeed.WARM]
        began = {m.pace: (m.at - start) / timedelta(hours=1) for m in gap.moments}
        assert began["B"] == pytest.approx(after_h, abs=0.2)
        assert gap.always


def test_a_need_at_every_pace_is_said_once(race, level_course) -> None:
    """One from, one to, where and when she gets it: a line that is read at a glance; which paces, where it is not each."""
    event = race(10.8, ("p4", (LAYER,)), limit=14.0, carries=(TORCH,))
    (told,) = kit_told(event, make_timetable(event, "maren", level_course), level_course)
    said = say_planned(Reader("en", "UTC", "UTC"), told.what)
    assert said.count("goal") <= 1
    assert len(said) < 230
    assert "and gets it only at" in said


def test_hours_that_nobody_gave_are_asked_for_in_a_long_night(race, level_course) -> None:
    """Past six hours of dark by goal C; a text on the runner alone asks nothing."""
    start = MORNING + timedelta(hours=8)
    event = race(8.0, limit=12.0, carries=(TORCH, LAYER))
    night = replace(event, starts=start, runners=(replace(event.runners[0], start=start),))
    assert kinds(night, level_course) == ["kit-hours"]
    lasting = replace(night.runners[0], carries=(replace(TORCH, hours=12.0), BATTERY, LAYER))
    assert kinds(replace(night, runners=(lasting,)), level_course) == []
    in_words = replace(night.runners[0], carries=(LAYER,), torch="head torch, spare in the pack")
    assert kinds(replace(night, runners=(in_words,)), level_course) == []


def test_rain_from_a_place_on(race, level_course) -> None:
    """Rain that is forecast from 30 km on, the jacket at 40: said; at 20: not."""
    rain = (WeatherSpell(from_km=30.0, course="main", note="showers from the west"),)
    jacket = KitItem("rain jacket")
    gap = found(race(5.0, ("p4", (jacket,)), weather=rain), level_course)[KitNeed.WET]
    assert (gap.handed_at, gap.give_at) == ("p4", "p3")
    assert KitNeed.WET not in found(race(5.0, ("p2", (jacket,)), weather=rain), level_course)


def test_layers_are_asked_for_only_where_lists_are_kept(race, level_course) -> None:
    """A file of ten lines hears of the torch alone."""
    assert set(found(race(10.8, limit=14.0), level_course)) == {KitNeed.TORCH}


def kinds(event: Event, course) -> list[str]:
    """What is told, by kind."""
    return [t.what.kind for t in kit_told(event, make_timetable(event, "maren", course), course)]


def test_lights_that_do_not_last_and_no_spare(race, level_course) -> None:
    """One hour of light for five of dark; a second battery with hours enough is right; without hours nothing is asked."""
    short = replace(TORCH, hours=1.0)
    said = kinds(race(10.8, limit=13.0, carries=(short, LAYER)), level_course)
    assert said == ["kit-battery", "kit-no-spare"]
    assert kinds(race(10.8, limit=13.0, carries=(short, BATTERY, BATTERY, LAYER)), level_course) == []
    assert kinds(race(10.8, limit=13.0, carries=(TORCH, LAYER)), level_course) == []


@pytest.mark.parametrize(
    ("need", "name", "it_is"),
    [
        (KitNeed.TORCH, "head torch, fresh battery", True),
        (KitNeed.TORCH, "Stirnlampe", True),
        (KitNeed.TORCH, "lampe frontale", True),
        (KitNeed.TORCH, "light jacket", False),
        (KitNeed.TORCH, "spare battery", False),
        (KitNeed.TORCH, "head torch battery", False),
        (KitNeed.TORCH, "Akku für die Stirnlampe", False),
        (KitNeed.TORCH, "Stirnlampe mit Ersatzakku", True),
        (KitNeed.WARM, "fleece", True),
        (KitNeed.WARM, "couche chaude", True),
        (KitNeed.WARM, "warme Schicht", True),
        (KitNeed.WARM, "dry socks", False),
        (KitNeed.WET, "Regenjacke", True),
        (KitNeed.WET, "veste de pluie", True),
        (KitNeed.WET, "training shoes", False),
    ],
)
def test_what_a_thing_is_for(need: KitNeed, name: str, it_is: bool) -> None:
    """By its name, in three languages; names that only sound like it are not taken."""
    assert is_for(need, name) is it_is


def test_the_light_that_searchers_read_of_stands_in_her_list_too(race) -> None:
    """The file's words first; without them what she carries from the start, and no battery."""
    carried = race(6.0, carries=(TORCH, BATTERY, LAYER)).runners[0]
    assert light_of(carried) == "head torch"
    assert light_of(replace(carried, torch="white head torch, spare in the pack")) == (
        "white head torch, spare in the pack"
    )
    assert light_of(replace(carried, carries=(BATTERY,))) == ""
