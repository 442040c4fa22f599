"""What can't be right is doubted, with its reason; what is only unlikely is not."""

from __future__ import annotations

from datetime import timedelta

import pytest

from server.facts.entry import Kind, Retired, Source
from server.facts.fold import fold
from server.facts.validation import FASTEST_KMH, Doubt, Reason, doubt, fastest_kmh
from tests.facts.conftest import at

K, R = Kind, Reason


def p(point: str, **more):
    """Fields of a report at a point."""
    return {"point": point, **more}


IN_MILL = (K.IN, "6:00", p("mill"))
OUT_MILL = (K.OUT, "6:10", p("mill"))
IN_CHAPEL = (K.IN, "9:30", p("chapel"))
CLOSED = (K.ACCESS_CLOSED, "5:00", p("mill", runner=None))
GONE = (K.RETIRED, "10:00", {"id": "gone"})
NOON = at("12:00")

CASES = [
    ([], (K.IN, "6:00", p("mill")), None),
    ([], (K.IN, "13:30", p("mill")), R.FUTURE),
    ([], (K.IN, "12:01", p("mill")), None),  # watches differ by two minutes
    ([], (K.IN, "6:00", p("mil")), R.UNKNOWN_POINT),
    ([], (K.RETIRED, "6:00", p("by the gate")), None),
    ([], (K.IN, "6:00", p("mill", runner="nobody")), R.UNKNOWN_RUNNER),
    ([], (K.IN, "3:50", p("mill")), R.BEFORE_START),
    ([], (K.IN, "3:30", p("start")), None),
    ([], (K.OUT, "3:55", p("start")), None),
    ([], (K.OUT, "3:30", p("start")), R.BEFORE_START),
    ([], (K.RESTING, "3:30", {}), R.BEFORE_START),
    ([], (K.RETIRED, "3:30", {"how": Retired.DID_NOT_START}), None),
    ([(K.START_DELAYED, "3:00", {"runner": None, "amount": timedelta(hours=3)})], (K.IN, "6:00", p("mill")),
     R.BEFORE_START),
    ([], (K.IN, "4:50", p("mill")), R.TOO_FAST),  # 20 km in 50 minutes
    ([], (K.IN, "4:55", p("mill")), None),  # 20 km in 55 minutes and two for the watches: a fine runner
    ([IN_MILL], (K.IN, "6:50", p("chapel")), R.TOO_FAST),
    ([IN_MILL, OUT_MILL], (K.IN, "9:30", p("chapel")), None),
    ([IN_CHAPEL], (K.IN, "9:10", p("mill")), R.TOO_FAST),  # 25 km in 20 minutes, told afterwards
    ([IN_CHAPEL], (K.IN, "6:00", p("mill")), None),  # a late report
    ([IN_CHAPEL], (K.IN, "9:31", p("mill")), R.TOO_FAST),  # a minute apart: whichever was first
    ([IN_CHAPEL], (K.IN, "10:00", p("mill")), R.BEHIND),
    ([IN_MILL], (K.IN, "5:30", p("chapel")), R.BEHIND),  # in at chapel before she was at the mill
    ([IN_CHAPEL], (K.NOT_HERE_YET, "10:00", p("mill")), R.BEHIND),
    ([IN_MILL], (K.NOT_HERE_YET, "6:20", p("mill")), R.BEHIND),
    ([IN_MILL], (K.NOT_HERE_YET, "5:50", p("mill")), None),
    ([IN_MILL], (K.OUT, "5:40", p("mill")), R.OUT_BEFORE_IN),
    ([IN_MILL], (K.OUT, "5:59", p("mill")), None),
    ([IN_MILL, OUT_MILL], (K.IN, "6:30", p("mill")), R.OUT_BEFORE_IN),
    ([IN_MILL, OUT_MILL], (K.THROUGH, "6:30", p("mill")), R.OUT_BEFORE_IN),  # another's time, or another place
    ([IN_MILL, OUT_MILL], (K.THROUGH, "6:12", p("mill")), None),  # two people's times of one stop
    ([IN_MILL], (K.IN, "6:03", p("mill")), None),  # a second report of the same arrival
    ([CLOSED], (K.IN, "6:00", p("mill")), R.CLOSED),
    ([CLOSED], (K.IN, "6:00", p("mill", source=Source.TIMING_MAT)), None),
    ([(K.RETIRED, "4:30", {"how": Retired.DID_NOT_START})], (K.THROUGH, "11:00", p("chapel")), None),
    ([GONE], (K.THROUGH, "11:00", p("chapel")), R.RETIRED),
    ([GONE], (K.IN, "11:00", p("chapel")), None),
    ([GONE], (K.OUT, "6:00", p("mill")), None),  # a late report of before
    ([(K.IN, "10:00", p("finish"))], (K.OUT, "11:00", p("moss")), R.FINISHED),
    ([(K.IN, "11:00", p("finish"))], (K.IN, "11:01", p("finish")), None),
    ([(K.IN, "10:00", p("finish"))], (K.RETIRED, "11:00", {}), R.FINISHED),
    ([], (K.IN, "6:00", p("mill", source=Source.SUPPORTER)), R.SUPPORTER),
    ([], (K.ASKED_FOR_HELP, "13:30", p("nowhere")), None),
    ([], (K.NOTE, "6:00", {}), None),
]  # fmt: skip


@pytest.mark.parametrize(("facts", "report", "reason"), CASES)
def test_reports(entry, event, clock, facts, report, reason) -> None:
    """Beside what is fact at noon, each report is doubted for the reason a person would name, or not."""
    now = clock("12:00")
    state = fold([entry(k, when, **more) for k, when, more in facts], event, now)
    kind, when, more = report
    found = doubt(entry(kind, when, **more), state, event, now)
    assert (found.reason if found is not None else None) is reason


def test_a_doubt_says_what_it_rests_on(entry, event, clock) -> None:
    """The clash is named, so that a person can be asked a sensible question."""
    now = clock("12:00")
    state = fold([entry(K.OUT, "6:00", point="mill")], event, now)
    found = doubt(entry(K.IN, "6:58", point="chapel"), state, event, now)
    assert (found.reason, found.point, found.at, found.km) == (R.TOO_FAST, "mill", clock("6:00"), 25.0)
    assert found.kmh == pytest.approx(25.0)


MINUTE = timedelta(minutes=1)
POSITIONS = [
    # (positions before: clock, km, km east, fields), (clock, km, km east, fields), reason
    ([], ("6:00", 15, 0, {}), None),
    ([], ("3:00", 50, 40, {}), None),  # before the start the tracker rides in a car
    ([], ("6:00", 15, 32, {}), R.OFF_COURSE),
    ([], ("6:00", 15, 5, {}), None),  # five km off: she may be lost
    ([], ("5:00", 30, 0, {}), R.TOO_FAST),
    ([("6:00", 15, 0, {})], ("6:05", 18, 0, {}), R.VEHICLE),  # 36 km/h
    ([("6:00", 15, 3, {})], ("6:10", 20, 3, {}), R.VEHICLE),  # on a road beside the course
    ([("6:00", 15, 0, {})], ("6:10", 16.6, 0, {}), None),
    ([("6:00", 15, 0, {})], ("6:00", 15.4, 0, {}), None),  # two fixes in one minute tell no speed
    ([("6:00", 15, 0, {"speed_m_s": 16})], ("6:00:20", 15.3, 0, {"speed_m_s": 15}), R.VEHICLE),
    ([("6:00", 15, 0, {"speed_m_s": 2})], ("6:00:20", 15.1, 0, {"speed_m_s": 15}), None),  # a glitch
    ([], ("6:00", 19.903, 2.2264, {}), R.PARKED),
    ([], ("6:00", 19.903, 2.8, {}), None),
    ([("8:00", 30, 0, {})], ("8:30", 26, 0, {}), R.BEHIND),
    ([("8:00", 30, 0, {})], ("8:30", 29.5, 0, {}), None),
]  # fmt: skip


@pytest.mark.parametrize(("before", "report", "reason"), POSITIONS)
def test_positions(entry, event, clock, placer, north_course, fix_at, before, report, reason) -> None:
    """Beside earlier positions, a position far off, at road speed, in a car park or behind is doubted."""
    now = clock("12:00")

    def position(when, km, east, more):
        hours, minutes, *seconds = when.split(":")
        seen = clock(f"{hours}:{minutes}") + timedelta(seconds=int(seconds[0]) if seconds else 0)
        return entry(K.POSITION, seen, fix=fix_at(km, east, **more), source=Source.TRACKER, id=f"p{when}{km}")

    def place(course, fix, at, prior):
        found = placer(course, fix, at, prior)
        return type(found)(fix.lat * 110.574, abs(fix.lon) * 111_320)

    state = fold([position(*b) for b in before], event, now, place)
    found = doubt(position(*report), state, event, now, north_course)
    assert (found.reason if found is not None else None) is reason


def test_a_position_without_a_course_is_not_judged(entry, event, clock, fix_at) -> None:
    """Where the line is unknown nothing can be off it."""
    state = fold([], event, clock("12:00"))
    assert doubt(entry(K.POSITION, "6:00", fix=fix_at(15, 32)), state, event, clock("12:00")) is None


@pytest.mark.parametrize(
    ("km", "seconds"),
    [(10.0, 26 * 60 + 11), (42.195, 2 * 3600 + 35), (50.0, 2 * 3600 + 38 * 60 + 43), (100.0, 6 * 3600 + 5 * 60 + 35),
     (160.934, 10 * 3600 + 51 * 60 + 39)],
)  # fmt: skip
def test_world_bests_are_not_too_fast(km, seconds) -> None:
    """The best ever run over each distance (from memory) stays under the limit, by less than 5%."""
    kmh = km / (seconds / 3600)
    assert kmh <= fastest_kmh(km) <= kmh * 1.05


def test_the_limit_falls_with_distance() -> None:
    """Nobody keeps a higher speed for longer."""
    speeds = [kmh for _, kmh in FASTEST_KMH]
    assert speeds == sorted(speeds, reverse=True)
    assert fastest_kmh(-1) == fastest_kmh(0)


M, S = timedelta(minutes=1), timedelta(seconds=1)
EDGES = [
    # What is fact, a report at a moment beside a fact's, how long after that fact it is believed or doubted.
    ([], (K.IN, "12:00", p("mill")), 2 * M, 2 * M + S, R.FUTURE),
    ([], (K.RESTING, "4:00", {}), timedelta(0), -S, R.BEFORE_START),
    ([], (K.OUT, "4:00", p("start")), -10 * M, -10 * M - S, R.BEFORE_START),
    ([IN_MILL], (K.OUT, "6:00", p("mill")), -2 * M, -2 * M - S, R.OUT_BEFORE_IN),
    ([IN_MILL, OUT_MILL], (K.IN, "6:10", p("mill")), 2 * M, 2 * M + S, R.OUT_BEFORE_IN),
    ([IN_MILL, OUT_MILL], (K.THROUGH, "6:10", p("mill")), 15 * M, 15 * M + S, R.OUT_BEFORE_IN),
    ([GONE], (K.OUT, "10:00", p("mill")), timedelta(0), S, R.RETIRED),
    ([(K.IN, "10:00", p("finish"))], (K.RETIRED, "10:00", {}), timedelta(0), S, R.FINISHED),
    ([IN_MILL], (K.NOT_HERE_YET, "6:00", p("mill")), -S, timedelta(0), R.BEHIND),
    ([IN_CHAPEL], (K.NOT_HERE_YET, "9:30", p("mill")), 2 * M, 2 * M + S, R.BEHIND),
]


@pytest.mark.parametrize(("facts", "report", "right", "wrong", "reason"), EDGES)
def test_to_the_second(entry, event, clock, facts, report, right, wrong, reason) -> None:
    """The last moment at which a report is believed, and the first at which it is not."""
    now = clock("12:00")
    state = fold([entry(k, when, **more) for k, when, more in facts], event, now)
    kind, when, more = report
    assert doubt(entry(kind, clock(when) + right, **more), state, event, now) is None
    found = doubt(entry(kind, clock(when) + wrong, **more), state, event, now)
    assert found.reason is reason


@pytest.mark.parametrize(
    ("facts", "report", "rests_on"),
    [
        ([], (K.IN, "13:30", p("mill")), Doubt(R.FUTURE, at=NOON + timedelta(minutes=90))),
        ([], (K.IN, "6:00", p("mil")), Doubt(R.UNKNOWN_POINT, "mil")),
        ([], (K.CREW_THERE, "6:00", p("mil", runner=None)), Doubt(R.UNKNOWN_POINT, "mil")),
        ([], (K.IN, "3:50", p("mill")), Doubt(R.BEFORE_START, "start", NOON - timedelta(hours=8))),
        ([CLOSED], (K.IN, "6:00", p("mill")), Doubt(R.CLOSED, "mill")),
        ([IN_MILL], (K.OUT, "5:40", p("mill")), Doubt(R.OUT_BEFORE_IN, "mill", NOON - timedelta(hours=6))),
        ([OUT_MILL], (K.IN, "6:30", p("mill")), Doubt(R.OUT_BEFORE_IN, "mill", NOON - timedelta(minutes=350))),
        ([OUT_MILL], (K.THROUGH, "6:30", p("mill")), Doubt(R.OUT_BEFORE_IN, "mill", NOON - timedelta(minutes=350))),
        ([IN_CHAPEL], (K.IN, "10:00", p("mill")), Doubt(R.BEHIND, "chapel", NOON - timedelta(minutes=150), km=45.0)),
        ([IN_MILL], (K.NOT_HERE_YET, "6:20", p("mill")), Doubt(R.BEHIND, "mill", NOON - timedelta(hours=6))),
        ([(K.RETIRED, "10:00", {"point": "chapel"})], (K.OUT, "11:00", p("chapel")),
         Doubt(R.RETIRED, "chapel", NOON - timedelta(hours=2))),
        ([(K.IN, "10:00", p("finish"))], (K.OUT, "11:00", p("moss")),
         Doubt(R.FINISHED, at=NOON - timedelta(hours=2))),
    ],
)  # fmt: skip
def test_each_doubt_names_the_fact_it_clashes_with(entry, event, clock, facts, report, rests_on) -> None:
    """Reason, point, moment and distance: what a person is asked about."""
    state = fold([entry(k, when, **more) for k, when, more in facts], event, NOON)
    kind, when, more = report
    assert doubt(entry(kind, when, **more), state, event, NOON) == rests_on


@pytest.mark.parametrize(
    ("km", "kmh"),
    [(-5, 23), (0, 23), (42.19, 23), (42.195, 21.1), (49.9, 21.1), (50, 19), (100, 16.5), (160.9, 14.9), (300, 14.9)],
)  # fmt: skip
def test_the_speed_nobody_exceeds_by_distance(km, kmh) -> None:
    """Rows of the table of world bests, each from its distance on."""
    assert fastest_kmh(km) == kmh


@pytest.mark.parametrize(
    ("minutes", "km", "accuracy_m", "kmh"),
    [
        (10, 5.0, 0, 30.0),
        (10, 5.0, 400, 25.2),  # as near as the two fixes may have been
        (10, 5.0, 420, None),
        (10, 4.1, 0, None),  # 24.6 km/h
        (30, 14.0, 0, 28.0),
        (31, 15.0, 0, None),  # so long ago tells no speed
        (1, 0.51, 0, 30.6),
        (1, 0.49, 0, None),  # half a kilometre is scatter
    ],
)
def test_the_speed_of_a_vehicle(
    entry, event, clock, placer, north_course, fix_at, minutes, km, accuracy_m, kmh
) -> None:
    """From the position before, less what both may be out, within half an hour; three km beside the course on a road."""
    before = entry(
        K.POSITION, "6:00", fix=fix_at(15, 3.0, accuracy_m=accuracy_m or None), source=Source.TRACKER
    )
    state = fold([before], event, clock("6:00"), placer)
    seen = clock("6:00") + minutes * M
    report = entry(
        K.POSITION, seen, fix=fix_at(15 + km, 3.0, accuracy_m=accuracy_m or None), source=Source.TRACKER
    )
    found = doubt(report, state, event, seen, north_course)
    assert (found.kmh if found is not None and found.reason is R.VEHICLE else None) == (
        None if kmh is None else pytest.approx(kmh, abs=0.15)
    )


def test_far_off_the_course_is_told_in_km(entry, event, clock, north_course, fix_at) -> None:
    """Thirty kilometres are another tracker; less she may be lost."""
    state = fold([], event, clock("6:00"))
    near, far = (
        doubt(entry(K.POSITION, "6:00", fix=fix_at(15, east)), state, event, clock("6:00"), north_course)
        for east in (29.8, 30.2)
    )
    assert near is None
    assert (far.reason, far.km) == (R.OFF_COURSE, pytest.approx(30.2, abs=0.1))
