"""A change of the plan in the text of an event file: what it says then, and that nothing else of the file moves."""

from __future__ import annotations

from difflib import SequenceMatcher
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from server.api.building import build
from server.drafting.replan import replanned
from server.event import parse_event
from server.event.model import Event, PartKind
from server.event.replan import NotPossibleError, PlanChange, What, in_place_of

HERE = Path(__file__).parents[2] / "demo_event"
DEMO = (HERE / "event.toml").read_text("utf-8")


def read(text: str) -> Event:
    found = parse_event(text)
    assert found.event is not None, found.problems
    return found.event


EVENT = read(DEMO)


def after(change: PlanChange) -> Event:
    return read(replanned(DEMO, EVENT, change))


def test_another_driver_goes_in_their_own_car_and_who_rides_along_still_goes() -> None:
    change = PlanChange(What.DRIVES, meeting="ember-maren", crew=("jonas", "ana"))
    plan = after(change).meeting("ember-maren")
    assert (plan.crew, plan.car) == (("jonas", "tomas"), "estate")
    assert plan.kit == EVENT.meeting("ember-maren").kit


def test_without_a_name_it_is_the_driver_who_is_replaced() -> None:
    assert in_place_of(EVENT, EVENT.meeting("ember-maren"), "jonas").crew == ("jonas", "tomas")


def free() -> str:
    """The demo's file with a point where crew may be, and nobody is."""
    return replanned(DEMO, EVENT, PlanChange(What.SKIP, meeting="stile-back-maren"))


def test_a_moved_meeting_keeps_its_id_and_all_that_goes_with_it() -> None:
    old = EVENT.meeting("mill-maren")
    move = PlanChange(What.MOVE, meeting="mill-maren", point="stile-back")
    new = read(replanned(free(), read(free()), move)).meeting("mill-maren")
    assert new.point == "stile-back"
    assert (new.crew, new.car, new.kit, new.food) == (old.crew, old.car, old.kit, old.food)


def test_a_meeting_added_where_a_moved_one_was_has_an_id_of_its_own() -> None:
    move = PlanChange(What.MOVE, meeting="mill-maren", point="stile-back")
    moved = replanned(free(), read(free()), move)
    add = PlanChange(What.ADD, runner="maren", point="mill", crew=("ana",), car="van", kit=("cap",))
    ids = [m.id for m in read(replanned(moved, read(moved), add)).meetings]
    assert len(set(ids)) == len(ids) == len(EVENT.meetings)


def test_skipped_kit_and_target() -> None:
    assert "ravel-maren" not in {m.id for m in after(PlanChange(What.SKIP, meeting="ravel-maren")).meetings}
    kit = after(PlanChange(What.KIT, meeting="ravel-maren", kit=("spare head torch", "hat"))).meeting(
        "ravel-maren"
    )
    assert [k.name for k in kit.kit] == ["spare head torch", "hat"]
    assert kit.kit[0] == EVENT.meeting("ravel-maren").kit[0]
    assert after(PlanChange(What.JUST_FINISH)).runners[0].target.finish == EVENT.limit


def test_a_person_is_added_with_their_part() -> None:
    new = after(PlanChange(What.PERSON, name="Per", phone="+44 7700 900199", drives=True, car="van"))
    person = next(p for p in new.people if p.name == "Per")
    part = new.parts_of(person.id)[0]
    assert (part.kind, part.drives, part.car, person.phone) == (PartKind.CREW, True, "van", "+44 7700 900199")


@pytest.mark.parametrize(
    ("change", "why"),
    [
        (PlanChange(What.SKIP, meeting="nowhere"), "no-meeting"),
        (PlanChange(What.MOVE, meeting="mill-maren", point="nowhere"), "no-point"),
        (PlanChange(What.MOVE, meeting="mill-maren", point="brindle"), "met-there"),
        (PlanChange(What.WHO_GOES, meeting="mill-maren", crew=("nobody",)), "no-person"),
        (PlanChange(What.WHO_GOES, meeting="mill-maren"), "nobody-goes"),
        (PlanChange(What.WHO_GOES, meeting="mill-maren", crew=("ana",), car="bus"), "no-car"),
        (PlanChange(What.WHO_GOES, meeting="mill-maren", crew=("ana",), car="van"), "nothing-changes"),
        (PlanChange(What.PERSON, name=" "), "no-name"),
        (PlanChange(What.PERSON, name="ana"), "name-taken"),
        (PlanChange(What.PERSON, name="Per", part=PartKind.ORGANISER), "not-that-part"),
        (PlanChange(What.JUST_FINISH, runner="other"), "no-runner"),
    ],
)
def test_what_can_not_be_is_refused_with_its_reason(change: PlanChange, why: str) -> None:
    with pytest.raises(NotPossibleError) as refused:
        replanned(DEMO, EVENT, change)
    assert refused.value.why == why


def test_without_a_time_limit_there_is_nothing_to_just_finish_in() -> None:
    text = DEMO.replace('limit = "34:00"\n', "")
    with pytest.raises(NotPossibleError) as refused:
        replanned(text, read(text), PlanChange(What.JUST_FINISH))
    assert refused.value.why == "no-limit"


def test_who_just_wants_to_finish_still_has_a_timetable() -> None:
    """The time limit is a target that the planner takes, cut-offs and all."""
    text = replanned(DEMO, EVENT, PlanChange(What.JUST_FINISH))
    built = build(text, {"route.gpx": (HERE / "route.gpx").read_bytes()})
    last = built.timetables["maren"].rows[-1]
    assert EVENT.limit is not None
    assert all(t <= EVENT.limit for t in last.arrive.values())


MEETINGS = st.sampled_from([m.id for m in EVENT.meetings])
POINTS = st.sampled_from([p.id for p in EVENT.courses[0].points])
PEOPLE = st.lists(st.sampled_from(["ana", "jonas", "tomas"]), min_size=1, max_size=3).map(tuple)
CARS = st.sampled_from([None, "van", "estate"])
WORDS = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")), max_size=20)
CHANGES = st.one_of(
    st.builds(PlanChange, st.just(What.WHO_GOES), meeting=MEETINGS, crew=PEOPLE, car=CARS),
    st.builds(PlanChange, st.just(What.DRIVES), meeting=MEETINGS, crew=PEOPLE),
    st.builds(PlanChange, st.just(What.SKIP), meeting=MEETINGS),
    st.builds(PlanChange, st.just(What.MOVE), meeting=MEETINGS, point=POINTS),
    st.builds(PlanChange, st.just(What.ADD), runner=st.just("maren"), point=POINTS, crew=PEOPLE, car=CARS),
    st.builds(PlanChange, st.just(What.KIT), meeting=MEETINGS, kit=st.lists(WORDS, max_size=4).map(tuple)),
    st.builds(PlanChange, st.just(What.PERSON), name=WORDS, phone=WORDS, car=CARS),
    st.builds(PlanChange, st.just(What.JUST_FINISH)),
)
COMMENTED = DEMO.replace(
    '[[meetings]]\npoint = "ravel"',
    '# The lay-by floods after rain: ask first.\n[[meetings]]\npoint = "ravel" # quarry side',
)


@given(CHANGES)
def test_all_that_a_change_is_not_about_stays_byte_for_byte(change: PlanChange) -> None:
    """However it is changed: one stretch of the file is not as it was, and of the lines outside of its table none."""
    try:
        new = replanned(COMMENTED, EVENT, change)
    except NotPossibleError:
        return
    old_lines, new_lines = COMMENTED.splitlines(True), new.splitlines(True)
    differ = [
        o
        for o in SequenceMatcher(None, old_lines, new_lines, autojunk=False).get_opcodes()
        if o[0] != "equal"
    ]
    first, last = min(o[1] for o in differ), max(o[2] for o in differ)
    assert sum(line.startswith("[[") for line in old_lines[first:last]) <= 2
    assert new.startswith("".join(old_lines[:first]))
    assert new.endswith("".join(old_lines[last:]))
    if change.what is not What.SKIP:
        assert "# The lay-by floods" in new


def test_things_that_rode_in_the_car_which_goes_no_more_are_put_into_the_one_that_does() -> None:
    """Where the file names the car for them: else the change would be refused, and nobody could mend that on a phone."""
    new = after(PlanChange(What.WHO_GOES, meeting="brindle-maren", crew=("jonas",), car="estate"))
    kit = new.meeting("brindle-maren").kit
    assert [k.name for k in kit] == [k.name for k in EVENT.meeting("brindle-maren").kit]
    assert {k.car for k in kit} <= {None, "estate"}
