"""An event written as text and read again is the same event; odd texts never break the reader."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.event import dump_event, parse_event
from server.event.lines import line_index, with_seconds
from server.event.model import (
    AlarmRule,
    Brief,
    Car,
    Contact,
    CourseDef,
    CrewAccess,
    CutOff,
    Drive,
    Driving,
    Eaten,
    Edge,
    Event,
    FuelPlan,
    GroundState,
    IfThenCard,
    KitItem,
    KitWeight,
    MeetingPlan,
    NoticeChoice,
    Part,
    PartKind,
    PastRace,
    Person,
    Place,
    Point,
    PointKind,
    Prepare,
    Prompt,
    ReporterKind,
    ReportsThere,
    Rules,
    Runner,
    Share,
    Signal,
    Sleep,
    Stretch,
    Target,
    WeatherSpell,
)
from tests.examples import examples

few = settings(max_examples=examples(60), deadline=None)
HARD = "äß–’\"'\\#[]{}=,. 🏔x1"
words = st.text(alphabet=HARD + "abc", min_size=1, max_size=12).filter(lambda t: t.strip() == t)
maybe_words = st.just("") | words
minutes = st.integers(0, 120).map(lambda m: timedelta(minutes=m)) | st.just(timedelta(seconds=90))
spans = st.integers(60 * 60, 40 * 3600).map(lambda s: timedelta(seconds=s))
paces = st.integers(120 * 10**6, 900 * 10**6).map(lambda u: timedelta(microseconds=u))
starts = st.datetimes(datetime(2026, 1, 1), datetime(2030, 1, 1)).map(  # noqa: DTZ001  made aware below
    lambda d: d.replace(microsecond=0, tzinfo=UTC)
)


def later(start: datetime) -> st.SearchStrategy[datetime]:
    """A moment within a day after the start."""
    return st.integers(1, 86_400).map(lambda s: start + timedelta(seconds=s))


@st.composite
def points(draw: st.DrawFn, prefix: str, start: datetime) -> tuple[Point, ...]:
    """Two to five points in order; the first the start, the last the finish."""
    n = draw(st.integers(2, 5))
    kms = sorted(draw(st.lists(st.floats(0, 200), min_size=n, max_size=n, unique=True)))
    offs = sorted(draw(st.lists(st.integers(3600, 10**5), min_size=n, max_size=n)))
    counted = draw(st.sampled_from(["clock", "elapsed"]))  # of one sort, so that waves can't upset the order
    found = []
    for i in range(n):
        kinds = set(
            draw(st.sets(st.sampled_from([PointKind.WATER, PointKind.DROP_BAG, PointKind.AID_STATION])))
        )
        kinds |= {PointKind.START} if i == 0 else {PointKind.FINISH} if i == n - 1 else set()
        access = draw(st.none() | accesses(start))
        kinds |= {PointKind.CREW_ACCESS} if access is not None else set()
        off = timedelta(seconds=offs[i])
        kind = draw(st.sampled_from(["none", counted]))
        cuts = {
            "none": (),
            "clock": (CutOff(draw(st.sampled_from(Edge)), clock=start + off),),
            "elapsed": (CutOff(draw(st.sampled_from(Edge)), elapsed=off),),
        }[kind]
        kinds |= {PointKind.CUT_OFF} if cuts else set()
        found.append(
            Point(
                id=f"{prefix}{i}",
                name=f"{prefix} {i} {draw(words)}",
                km=kms[i],
                kinds=frozenset(kinds),
                also=tuple(f"{prefix}-{i}-{x}" for x in range(draw(st.integers(0, 2)))),
                waypoint=draw(st.none() | words),
                cut_offs=cuts,
                access=access,
                reports=tuple(draw(st.lists(reports, max_size=2))),
                signal=draw(st.sampled_from(Signal)),
                planned_stop=draw(minutes),
                note=draw(maybe_words),
                transport=draw(maybe_words),
            )
        )
    return tuple(found)


reports = st.builds(ReportsThere, st.sampled_from(ReporterKind), st.floats(0.01, 1), minutes)


@st.composite
def accesses(draw: st.DrawFn, start: datetime) -> CrewAccess:
    """Crew access with or without hours and place."""
    opens = draw(st.none() | later(start))
    placed = draw(st.booleans())
    return CrewAccess(
        parking=draw(maybe_words),
        walk_in=draw(minutes),
        unloading=draw(minutes),
        opens=opens,
        closes=draw(st.none() | later(opens or start)),
        people_max=draw(st.none() | st.integers(3, 9)),
        lat=draw(st.floats(-90, 90)) if placed else None,
        lon=draw(st.floats(-180, 180)) if placed else None,
        permit=draw(maybe_words),
        cars_max=draw(st.none() | st.integers(0, 9)),
    )


targets = (
    st.builds(Target, finish=spans)
    | st.builds(Target, pace_all_in=paces)
    | st.builds(Target, easy_pace=paces, margin=paces)
)
permits = st.lists(words, max_size=2).map(tuple)
clocks = st.times().map(lambda t: f"{t:%H:%M}")


@st.composite
def people(draw: st.DrawFn, person_id: str) -> Person:
    """Somebody with a telephone, and all manner of wishes."""
    quiet = draw(st.booleans())
    return Person(
        id=person_id,
        name=f"{person_id} {draw(words)}",
        phone="+44 1632 960001",
        email=draw(st.sampled_from(["", "a@example.org"])),
        webhook=draw(st.sampled_from(["", "https://example.org/hook?x=1"])),
        language=draw(st.sampled_from(["en", "de"])),
        time_zone=draw(st.sampled_from([None, "Europe/Berlin"])),
        miles=draw(st.booleans()),
        clock_12h=draw(st.booleans()),
        channels=tuple(draw(st.permutations(["telegram", "web"]))),
        notices=draw(st.sampled_from(NoticeChoice)),
        quiet_from=draw(clocks) if quiet else None,
        quiet_to=draw(clocks) if quiet else None,
    )


@st.composite
def events(draw: st.DrawFn) -> Event:
    """A sound event: one or two courses, runners, crew, cars, drives, meetings; times anywhere."""
    zone = draw(st.sampled_from(["Europe/London", "America/St_Johns", "Asia/Kathmandu", "UTC"]))
    start = draw(starts)
    ids = draw(st.sampled_from([("main",), ("long", "short")]))
    courses = tuple(
        CourseDef(
            c,
            f"{c}.gpx",
            draw(points(c, start)),
            stated_km=draw(st.none() | st.floats(1, 900)),
            results=draw(st.sampled_from(["", f"years/{c}.csv"])),
        )
        for c in ids
    )
    courses = tuple(replace(c, stretches=stretches(draw, c)) for c in courses)
    runners = tuple(runner(draw, f"r{i}", c, start) for i, c in enumerate(courses))
    persons = tuple(draw(people(p)) for p in ("ana", "jonas", *(r.person for r in runners)))
    parts = (
        Part("ana", PartKind.SAFETY_CONTACT, ladder=1, calls_race_control=True),
        Part(
            "jonas",
            PartKind.CREW,
            ladder=2,
            drives=True,
            car="van",
            awake_since=start,
            can_telephone=True,
            sleeps=(Sleep(start + timedelta(hours=20), start + timedelta(hours=23)),),
            permits=draw(permits),
        ),
        *(Part(r.person, PartKind.RUNNER, r.id) for r in runners),
    )
    met = [(p, r) for c, r in zip(courses, runners, strict=True) for p in c.points if p.access is not None]
    return Event(
        exercise=draw(st.booleans()),
        id="race",
        name=draw(words),
        time_zone=zone,
        starts=start,
        brief=Brief(*(tuple(draw(st.lists(words, max_size=2))) for _ in range(4))),
        rules=Rules(
            vehicles_max=3,
            note=draw(maybe_words),
            outside_help_only_at_crew_points=draw(st.booleans()),
            crew_not_before=draw(st.none() | st.just(start)),
            pacer_sign_in=draw(minutes),
            required_kit=tuple(draw(st.lists(words, max_size=2))),
        ),
        courses=courses,
        runners=runners,
        people=persons,
        parts=parts,
        race_control=Contact("Control", "+44 1632 960002"),
        emergency_number="112",
        limit=timedelta(days=10),
        cars=(
            Car(
                "van",
                draw(words),
                draw(st.integers(1, 9)),
                draw(st.sampled_from([None, "home"])),
                draw(permits),
            ),
        ),
        drives=(
            Drive("home", courses[0].points[0].id, draw(st.floats(0.5, 600)), "ana", draw(maybe_words)),
            Drive("home", "inn", None, None, "", draw(minutes), draw(minutes)),
        ),
        meetings=tuple(meeting(draw, p, r) for p, r in met),
        cards=(IfThenCard("card", draw(words), (draw(words),), draw(maybe_words), (draw(words),)),),
        alarm=AlarmRule(draw(st.floats(0.0001, 0.1)), *(draw(minutes) for _ in range(3))),
        rescue=draw(st.sampled_from([None, Contact("Hills", "112")])),
        transport=draw(maybe_words),
        grid=draw(words),
        keep_until=draw(st.none() | st.just(start + timedelta(days=30))),
        places=(Place("inn", draw(maybe_words), *draw(st.sampled_from([(None, None), (54.25, -2.0)]))),),
        driving=Driving(draw(st.floats(1, 3)), draw(st.floats(5, 120)), draw(st.floats(1, 2)), draw(minutes)),
        shares=tuple(
            Share(r.id, r.person, c.points[0].id, c.points[-1].id)
            for c, r in zip(courses, runners, strict=True)
            if draw(st.booleans())
        ),
        weather=tuple(spell(draw, c, start) for c in courses if draw(st.booleans())),
    )


def spell(draw: st.DrawFn, course: CourseDef, start: datetime) -> WeatherSpell:
    """Weather of some hours, of some km, or of both; warm air, bad ground, or both."""
    finish = course.points[-1].km or 0.0
    begins = draw(st.none() | later(start))
    warm = draw(st.booleans())
    return WeatherSpell(
        from_at=begins,
        to_at=draw(st.none() | later(begins or start)),
        temperature_c=draw(st.floats(-40, 50)) if warm else None,
        humidity=draw(st.none() | st.floats(0, 100)) if warm else None,
        ground=draw(st.sampled_from([*([None] if warm else []), *GroundState])),
        from_km=draw(st.none() | st.just(0.0)),
        to_km=draw(st.none() | st.just(finish)) if finish > 0 else None,
        course=course.id,
        note=draw(maybe_words),
    )


PAST = (PastRace("Fell 50", 52.5, 1900.0, timedelta(hours=7, minutes=40)),
        PastRace("Level marathon", 42.2, 0.0, timedelta(hours=4, seconds=30)))  # fmt: skip


def stretches(draw: st.DrawFn, course: CourseDef) -> tuple[Stretch, ...]:
    """One or none, within the course."""
    end = course.points[-1].km
    if not end or draw(st.booleans()):
        return ()
    flags = (draw(maybe_words), draw(st.booleans()), draw(st.booleans()), draw(st.floats(0.5, 4)))
    return (Stretch(0.0, end, draw(maybe_words), *flags, draw(maybe_words), draw(maybe_words)),)


def runner(draw: st.DrawFn, runner_id: str, course: CourseDef, start: datetime) -> Runner:
    """A runner of that course; without a target only where a past race or a run of hers stands in for it."""
    raced = PAST[: draw(st.integers(0, 2))]
    runs = draw(st.sampled_from([(), ("long.fit",), ("runs/a.gpx", "runs/b.tcx")]))
    return Runner(
        id=runner_id,
        person=draw(st.sampled_from([runner_id, f"p-{runner_id}"])),
        name=f"{runner_id} {draw(words)}",
        bib=runner_id,
        course=course.id,
        start=draw(st.just(start) | later(start)),
        target=draw(targets | st.just(Target())) if raced or runs else draw(targets),
        own_runs=runs,
        past_races=raced,
        wave=draw(st.sampled_from(["", "B"])),
        clothing=draw(maybe_words),
        torch=draw(maybe_words),
        medical_note=draw(maybe_words),
        fuel=(fuel(draw, course.points[0].id),),
        carries=tuple(thing(draw) for _ in range(draw(st.integers(0, 2)))),
        bottles=draw(st.none() | st.integers(1, 20)),
        trained_carbohydrate_g_per_h=draw(st.none() | st.floats(0, 200)),
        walk_kmh=draw(st.none() | st.floats(1, 10)),
        prompts=tuple(Prompt(draw(words), draw(words)) for _ in range(draw(st.integers(0, 2)))),
        wants_to_hear=tuple(draw(st.lists(words, max_size=2))),
        not_to_hear=tuple(draw(st.lists(words, max_size=2))),
    )


def fuel(draw: st.DrawFn, point: str) -> FuelPlan:
    """A plan of food in words, figures, things that together are not more than anybody eats."""
    eats = tuple(
        Eaten(draw(words), draw(st.floats(0.05, 20)), carbohydrate_g=draw(st.none() | st.floats(0, 6)))
        for _ in range(draw(st.integers(0, 2)))
    )
    kcal, caffeine = (draw(st.none() | st.floats(0, most)) for most in (900, 200))
    return FuelPlan(point, draw(maybe_words), kcal, caffeine_mg_per_h=caffeine, eats=eats)


def thing(draw: st.DrawFn) -> KitItem:
    """A thing on her, with what is known of it."""
    prepare = tuple(draw(st.lists(st.sampled_from(Prepare), unique=True, max_size=2)))
    return KitItem(draw(words), grams=draw(st.none() | st.floats(1, 9000)), prepare=prepare)


def meeting(draw: st.DrawFn, point: Point, who: Runner) -> MeetingPlan:
    """A meeting with kit both plain and elaborate."""
    kit = (
        KitItem(draw(words)),
        KitItem(draw(words), draw(st.sampled_from(KitWeight)), draw(st.sampled_from([None, "van"])), True),
    )
    return MeetingPlan(
        f"{point.id}-{who.id}",
        point.id,
        who.id,
        ("jonas",),
        "van",
        None,
        kit,
        draw(maybe_words),
        draw(maybe_words),
    )


@few
@given(event=events())
def test_written_and_read_again_it_is_the_same_event(event: Event) -> None:
    """No value is lost or changed on the way to text and back, whatever the clock does in that zone."""
    parsed = parse_event(dump_event(event))
    assert [str(p) for p in parsed.errors] == []
    assert parsed.event == event


def alone(event: Event) -> Event:
    """The event as a first file has it: no people but the runners, nothing that speaks of others."""
    runners = tuple(replace(r, person=r.id) for r in event.runners)
    return replace(
        event,
        runners=runners,
        people=tuple(Person(r.id, r.name) for r in runners),
        parts=tuple(Part(r.id, PartKind.RUNNER, r.id) for r in runners),
        cars=(),
        drives=(),
        meetings=(),
        shares=(),
    )


@few
@given(event=events())
def test_an_event_without_people_stays_one(event: Event) -> None:
    """What a first-time runner writes, herself alone, is not asked for a safety contact once it is written out."""
    text = dump_event(alone(event))
    assert "[[people]]" not in text
    parsed = parse_event(text)
    assert [str(p) for p in parsed.errors] == []
    assert parsed.event == alone(event)


FIRST = """\
event = { name = "First", time_zone = "Europe/Vienna", starts = 2027-05-01T06:00, route = "r.gpx" }
race_control = { name = "Hut", phone = "+43 1 960100" }
points = [ { name = "Start", kinds = ["start"] }, { name = "Finish", kinds = ["finish"] } ]
runners = [ { name = "Nell", target = { pace_all_in = "9:30" } } ]
"""
CONTACT = """\
[[people]]
name = "Joss"
phone = "+44 1632 960111"
parts = [ { kind = "safety contact", ladder = 1, calls_race_control = true } ]
"""


def test_a_runner_among_others_stands_for_herself() -> None:
    """Who names her crew but not herself is no mistake: she is a person by her name, and is told what that means."""
    parsed = parse_event(FIRST + CONTACT)
    assert parsed.event is not None, [str(p) for p in parsed.problems]
    assert [p.id for p in parsed.event.people] == ["joss", "nell"]
    assert parsed.event.people_for("nell", PartKind.RUNNER)[0].person == "nell"
    (told,) = [p for p in parsed.problems if "is not among the [[people]]" in str(p.what)]
    assert told.field == "runners.nell"
    assert parse_event(dump_event(parsed.event)).event == parsed.event


def test_a_runners_person_misspelt_is_pointed_out() -> None:
    """A person much like the runner's id is asked about; a person given that is not there stays a mistake."""
    parsed = parse_event(FIRST + CONTACT.replace("Joss", "Nelle"))
    assert any('write person = "nelle"' in str(p.remedy) for p in parsed.problems)
    wrong = FIRST.replace('name = "Nell"', 'name = "Nell", person = "nele"')
    assert any("there is no person 'nele'" in str(p.what) for p in parse_event(wrong + CONTACT).errors)


def test_the_good_file_survives_too(good) -> None:
    """What a person wrote, exported and loaded again, is the same event, and exporting is stable."""
    event = parse_event(good).event
    again = parse_event(dump_event(event)).event
    assert again == event
    assert dump_event(again) == dump_event(event)


@pytest.mark.parametrize("hour", ["2027-10-31T01:30:00+01:00", "2027-10-31T01:30:00+00:00"])
def test_the_doubled_hour_survives(good, hour) -> None:
    """As the clocks go back, the first and the second 01:30 are each written so that they are read as such."""
    text = good.replace("starts = 2027-06-19T05:00", f"starts = {hour}").replace(
        "keep_until = 2027-09-30", ""
    )
    text = text.replace("B = 2027-06-19T05:30", "B = 2027-10-31T03:00")
    event = parse_event(text).event
    assert event.starts == datetime.fromisoformat(hour)
    again = parse_event(dump_event(event))
    assert again.event == event
    assert not [p for p in again.problems if "comes twice" in str(p.what)]


def test_the_version_is_not_in_the_file(good) -> None:
    """The numbered version belongs to the store, not to the text."""
    event = parse_event(good).event
    assert parse_event(dump_event(replace(event, version=7))).event == event


@settings(max_examples=150, deadline=None)
@given(data=st.data())
def test_a_file_with_a_few_characters_changed_never_breaks_the_reader(good, data) -> None:
    """Cut, doubled or overwritten anywhere: an event or at least one error that names a place."""
    text = good
    for _ in range(data.draw(st.integers(1, 3))):
        at = data.draw(st.integers(0, len(text)))
        length = data.draw(st.sampled_from([0, 1, 5, 40]))
        put = data.draw(
            st.sampled_from(["", '"', "[", "]", "{", "=", "\n", "-1", "nan", "[]", "''", "x", "2027-"])
        )
        text = text[:at] + put + text[at + length :]
    parsed = parse_event(text)
    assert (parsed.event is None) == bool(parsed.errors)
    assert all(p.line is None or 1 <= p.line <= text.count("\n") + 1 for p in parsed.problems)


@settings(max_examples=examples(100), deadline=None)
@given(
    key=st.sampled_from(["km", "name", "kinds", "crew", "reports", "cut_off", "stop_minutes", "also", "id"]),
    value=st.recursive(
        st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5) | st.datetimes(),
        lambda inner: (
            st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(["by", "when", "a"]), inner)
        ),
        max_leaves=5,
    ),
)
def test_any_value_at_any_key_is_an_error_or_an_event(key, value) -> None:
    """A value of a wrong kind never raises."""
    import tomli_w

    def clean(v):
        if isinstance(v, list):
            return [clean(x) for x in v if x is not None]
        if isinstance(v, dict):
            return {k: clean(x) for k, x in v.items() if x is not None}
        return v

    if value is not None:
        parse_event(tomli_w.dumps({"points": [{key: clean(value)}]}))


LINES = """\
a = 1
"b c" = { d = 2, "e" = [3, 4] } # { comment
[t.u]
x = [
  1,
  { y = "=[", z = [[1], [2,
     3]] },
]
when = 2027-06-19T05:00
[[list]]
n = '''
text = 3
'''
k.l = 1
[[list]]
[list.sub]
m = 1
[[list.deep]]
o = 1
"""


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("a",), 1),
        (("b c", "e", 1), 2),
        (("t", "u"), 3),
        (("t", "u", "x", 0), 5),
        (("t", "u", "x", 1, "y"), 6),
        (("t", "u", "x", 1, "z", 1, 1), 7),
        (("t", "u", "when"), 9),
        (("list", 0), 10),
        (("list", 0, "n"), 11),
        (("list", 0, "k", "l"), 14),
        (("list", 1), 15),
        (("list", 1, "sub", "m"), 17),
        (("list", 1, "deep", 0, "o"), 19),
    ],
)
def test_lines(path, line) -> None:
    """Each key stands on its line, through nested tables, arrays, strings and comments."""
    assert line_index(with_seconds(LINES))[path] == line


def test_times_without_seconds_are_completed_outside_strings_only() -> None:
    """Hand-written times lack seconds; words that look like one are left alone."""
    text = 'a = 2027-06-19T05:00\nb = "2027-06-19T05:00" # 2027-06-19T05:00\nc = 2027-06-19 05:00+01:00\n'
    values = tomllib.loads(with_seconds(text))
    assert values["b"] == "2027-06-19T05:00"
    assert values["a"].hour == 5
    assert values["c"].utcoffset() == timedelta(hours=1)
