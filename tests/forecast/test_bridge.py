"""The join of engine and event: nothing that was heard gets lost, and silence counts only where it would be broken."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import numpy as np
import pytest

from server.api.building import Built, build
from server.event.model import Event, ReporterKind, Signal
from server.facts.entry import Entry, Kind, Source
from server.facts.fold import fold
from server.facts.state import Interval
from server.forecast.bridge import facts_of, limit_of, outlook, reference_of
from server.forecast.channel_outages import Hearing
from server.forecast.nights import Night, nights_ahead
from server.forecast.posterior import posterior
from server.forecast.values import Condition, KnownStop, NotYet, Position, Sighting
from server.forecast.watchers import silence_of

DEMO = Path(__file__).parents[2] / "demo_event"
START = datetime(2027, 9, 11, 4, tzinfo=UTC)


@pytest.fixture(scope="module")
def built() -> Built:
    """The demo's event."""
    return build((DEMO / "event.toml").read_text("utf-8"), {"route.gpx": (DEMO / "route.gpx").read_bytes()})


def entry(kind: Kind, hours: float, point: str | None = None, by: str = "office") -> Entry:
    """A check-in so many hours after the start."""
    at = START + timedelta(hours=hours)
    key = f"{kind}{hours}{point}{by}"
    return Entry(key, "harrow-round", "maren", kind, at, at, at, by, Source.VOLUNTEER, "t", key, point=point)


def look(built: Built, *entries: Entry, event: Event | None = None, outages: tuple[Interval, ...] = ()):  # type: ignore[no-untyped-def]
    """Outlook, state and race after these entries."""
    event = event or built.event
    race = fold(entries, event, START + timedelta(hours=30), None)
    runner = race.runner("maren")
    course = built.courses[event.runner("maren").course]
    return outlook(event, runner, race, built.timetables["maren"], course, outages), runner, race


def index(built: Built) -> dict[str, int]:
    """The engine's numbers of the points."""
    return {r.point: i for i, r in enumerate(built.timetables["maren"].rows[1:])}


def test_windows_are_the_engines_own(built: Built) -> None:
    """What people are shown is what the engine says, to the millisecond: windows, odds and the alarm's figure."""
    seen = (entry(Kind.IN, 1.3, "pell"), entry(Kind.IN, 2.6, "mill"))
    found, runner, race = look(built, *seen)
    table, course = built.timetables["maren"], built.courses["main"]
    engine = posterior(
        reference_of(table, course),
        facts_of(runner, index(built), table),
        limit_of(built.event, runner, race, "finish"),
    )
    now = START + timedelta(hours=4)
    view, own = (
        found.at(now),
        engine.view(4 * 3600.0, silence_of(built.event, runner, race, index(built), ())),
    )
    i = index(built)["brindle"]
    early, likely, late = own.quantiles(i, np.array([0.1, 0.5, 0.9]))
    window = view.window("brindle")
    for shown, seconds in ((window.early, early), (window.likely, likely), (window.late, late)):
        assert abs((shown - START).total_seconds() - seconds) < 0.002
    assert view.p_in_by("brindle", START + timedelta(hours=17)) == pytest.approx(
        own.probability_by(i, 17 * 3600.0)
    )
    assert view.p_unheard() == pytest.approx(own.probability_unheard())


def test_points_reached_have_no_window(built: Built) -> None:
    """An arrival ends its window, and those of the points before it."""
    found, _, _ = look(built, entry(Kind.IN, 2.6, "mill"))
    view = found.at(START + timedelta(hours=3))
    assert view.points[0] == "stile-out"
    with pytest.raises(KeyError):
        view.window("mill")
    with pytest.raises(KeyError):
        view.window("pell")


def test_each_fact_reaches_the_engine(built: Built) -> None:
    """In, out, 'not here yet': each becomes a fact in the engine's words."""
    _, runner, _ = look(
        built,
        entry(Kind.IN, 1.3, "pell"),
        entry(Kind.OUT, 1.4, "pell"),
        entry(Kind.NOT_HERE_YET, 2.9, "mill"),
    )
    facts = facts_of(runner, index(built), built.timetables["maren"])
    assert sum(isinstance(f, Sighting) for f in facts) == 2
    assert [f.point for f in facts if isinstance(f, NotYet)] == [index(built)["mill"]]
    assert not any(isinstance(f, Position) for f in facts)


def watchers(built: Built, point: str, *entries: Entry, event: Event | None = None):  # type: ignore[no-untyped-def]
    """Who would report at a point."""
    event = event or built.event
    _, runner, race = look(built, *entries, event=event)
    silence = silence_of(event, runner, race, index(built), ())
    return [w for w in silence.watchers if w.point == index(built)[point]]


def test_crew_who_have_left_report_no_more(built: Built) -> None:
    """From the moment all of a meeting's crew have left it, silence there says nothing of theirs."""
    left = replace(entry(Kind.CREW_LEFT, 3.5, "mill", by="ana"), person="ana")
    before = watchers(built, "mill")
    after = watchers(built, "mill", left)
    assert [w.covered_s for w in before] == [None, None]
    crew = [w for w in after if w.chance == 0.95]
    assert [w.covered_s[0][1] for w in crew] == [3.5 * 3600.0]
    assert [w.covered_s for w in after if w.chance == 0.9] == [None]


def test_nobody_reports_from_where_there_is_no_signal(built: Built) -> None:
    """A crew without signal counts as nobody; the race's volunteers have their own means."""
    course = built.event.courses[0]
    points = tuple(replace(p, signal=Signal.NONE) if p.id == "mill" else p for p in course.points)
    event = replace(built.event, courses=(replace(course, points=points),))
    assert [w.chance for w in watchers(built, "mill", event=event)] == [0.9]
    assert watchers(built, "wether") == []


def test_who_is_reported_from_nowhere_ahead_is_late_at_the_finish(built: Built) -> None:
    """Where nobody reports any more, being late is still asked about: at the 90% time of the finish, until it is over."""
    course = built.event.courses[0]
    silent = tuple(replace(p, reports=p.reports if p.id == "mill" else ()) for p in course.points)
    event = replace(built.event, courses=(replace(course, points=silent),))
    out = entry(Kind.OUT, 2.7, "mill", by="ana")
    found, _, _ = look(built, entry(Kind.IN, 2.6, "mill", by="ana"), out, event=event)
    point, at = found.late_time()
    assert point == "finish"
    assert at == found.at(START + timedelta(hours=2.7)).window("finish").late
    home, _, _ = look(built, out, entry(Kind.IN, 30.0, "finish"), event=event)
    assert home.late_time() is None


def test_our_own_outage_counts_as_nobody(built: Built) -> None:
    """While our channels are down, silence says nothing."""
    seen = (entry(Kind.IN, 1.3, "pell"),)
    now = START + timedelta(hours=5)
    down = (Interval(START + timedelta(hours=1.4), None),)
    found, _, _ = look(built, *seen)
    blind, _, _ = look(built, *seen, outages=down)
    assert found.at(now).p_unheard() < 0.1
    assert blind.at(now).p_unheard() == pytest.approx(1.0)
    assert blind.unheard_falls_under(0.005, now) is None


def test_a_channel_that_is_down_takes_only_the_silence_of_those_who_use_it(built: Built) -> None:
    """Telegram down: crew who write over it count as nobody, a crew on another channel and the race's mats do not."""
    race = fold((), built.event, START, None)
    runner = race.runner("maren")
    crew = {w for m in built.event.meetings for w in m.crew}
    down = (Interval(START, None),)

    def covered(hearing: Hearing) -> dict[ReporterKind, set[object]]:
        found: dict[ReporterKind, set[object]] = {}
        silence = silence_of(built.event, runner, race, index(built), (), hearing)
        every = [r for p in built.event.courses[0].points if p.id in index(built) for r in p.reports]
        kinds = [r.by for r in every if r.by is not ReporterKind.NOBODY and r.chance > 0]
        assert len(kinds) == len(silence.watchers)
        for kind, watcher in zip(kinds, silence.watchers, strict=True):
            found.setdefault(kind, set()).add(watcher.covered_s)
        return found

    deaf = covered(Hearing(people=dict.fromkeys(crew, down)))
    assert deaf[ReporterKind.CREW] == {((-1e12, 0.0),)}
    assert all(spans == {None} for kind, spans in deaf.items() if kind is not ReporterKind.CREW)
    one = dict.fromkeys(sorted(crew)[1:], down)
    assert len(crew) > 1
    assert None in covered(Hearing(people=one))[ReporterKind.CREW]
    everybody = covered(Hearing(nobody=down, unknown=down, people=dict.fromkeys(crew, down)))
    assert all(spans == {((-1e12, 0.0),)} for spans in everybody.values())


def test_long_unheard_she_is_looked_for_on_the_leg_not_beyond_it(built: Built) -> None:
    """An alarm's estimate counts that she may have ended on the way: most of it lies before the silent point."""
    found, _, _ = look(built, entry(Kind.OUT, 11.9, "brindle"), entry(Kind.NOT_HERE_YET, 17.5, "kettle"))
    where = found.at(START + timedelta(hours=18)).where()
    brindle, kettle = (built.timetables["maren"].row(p).km for p in ("brindle", "kettle"))
    assert brindle < where.low_km < where.likely_km < kettle


def test_windows_near_the_limit_stay_sane(built: Built) -> None:
    """With the median close to the race's limit the late edge is no fantasy: within two hours of the limit."""
    found, _, _ = look(built, entry(Kind.IN, 26.7, "ember"), entry(Kind.OUT, 27.05, "ember"))
    window = found.at(START + timedelta(hours=28)).window("finish")
    assert window.early <= window.likely <= window.late <= START + timedelta(hours=36)


def test_the_alarm_line_is_the_engines_own(built: Built) -> None:
    """When the odds of silence fall under the line is asked of the same posterior, to the second."""
    seen = (entry(Kind.IN, 1.3, "pell"), entry(Kind.IN, 2.6, "mill"))
    found, runner, race = look(built, *seen)
    engine = posterior(
        reference_of(built.timetables["maren"], built.courses["main"]),
        facts_of(runner, index(built), built.timetables["maren"]),
        limit_of(built.event, runner, race, "finish"),
    )
    silence = silence_of(built.event, runner, race, index(built), ())
    for line in (0.05, 0.005):
        want = engine.unheard_falls_under(line, 3 * 3600.0, silence)
        got = found.unheard_falls_under(line, START + timedelta(hours=3))
        assert want is not None
        assert got is not None
        assert abs((got - START).total_seconds() - want) < 0.002
        assert found.at(got).p_unheard() < line <= found.at(got - timedelta(seconds=2)).p_unheard()


def test_a_late_report_counts_by_when_she_was_seen(built: Built) -> None:
    """Heard three hours later, and after others, an arrival tells the engine just what it would have told at once."""
    first, second = entry(Kind.IN, 1.3, "pell"), entry(Kind.IN, 2.6, "mill")
    late = replace(first, received_at=first.received_at + timedelta(hours=3))
    prompt, _, _ = look(built, first, second)
    delayed, _, _ = look(built, second, late)
    assert np.array_equal(prompt.posterior.arrivals_s, delayed.posterior.arrivals_s)


def test_a_report_taken_back_is_as_if_never_heard(built: Built) -> None:
    """A wrong arrival, once taken back, moves no window and no odds."""
    first, wrong = entry(Kind.IN, 1.3, "pell"), entry(Kind.IN, 1.9, "mill")
    undo = replace(entry(Kind.TAKEN_BACK, 2.0), about=wrong.id)
    plain, _, _ = look(built, first)
    misled, _, _ = look(built, first, wrong)
    mended, _, _ = look(built, first, wrong, undo)
    assert not np.array_equal(plain.posterior.arrivals_s, misled.posterior.arrivals_s)
    assert np.array_equal(plain.posterior.arrivals_s, mended.posterior.arrivals_s)
    assert np.array_equal(plain.posterior.survival, mended.posterior.survival)


@pytest.mark.parametrize("days", [1, 30])
def test_shifting_all_times_shifts_the_answer(built: Built, days: int) -> None:
    """The same race so many days later, entries included: every window moves by just that."""
    by = timedelta(days=days)
    seen = (entry(Kind.IN, 1.3, "pell"), entry(Kind.OUT, 1.4, "pell"), entry(Kind.NOT_HERE_YET, 2.9, "mill"))
    moved = tuple(
        replace(e, seen_at=e.seen_at + by, sent_at=e.sent_at + by, received_at=e.received_at + by)
        for e in seen
    )
    waves = tuple(replace(r, start=r.start + by) for r in built.event.runners)
    event = replace(built.event, runners=waves, starts=built.event.starts + by)
    here, _, _ = look(built, *seen)
    race = fold(moved, event, START + by + timedelta(hours=30), None)
    runner = race.runner("maren")
    there = outlook(event, runner, race, built.timetables["maren"], built.courses["main"], ())
    now = START + timedelta(hours=3)
    for point in here.at(now).points:
        one, other = here.at(now).window(point), there.at(now + by).window(point)
        assert abs((other.likely - one.likely) - by) < timedelta(milliseconds=2)
        assert abs((other.late - one.late) - by) < timedelta(milliseconds=2)


@pytest.mark.parametrize("factors", [(0.5, 0.5), (0.5,) * 50, (3.0,) * 50, (0.5, 3.0) * 25, (0.9, 1.1) * 250])
def test_any_number_of_conditions_leaves_windows_of_this_race(
    built: Built, factors: tuple[float, ...]
) -> None:
    """'Slower from here' said again and again, by a slip or by a quarrel, moves a window; it breaks none, and the
    finish stays within a week of the start (own choice: three times the plan's slowest goal)."""
    said = [
        replace(entry(Kind.CONDITION, 1.0 + i / 200, by=f"crew {i}"), factor=factor)
        for i, factor in enumerate(factors)
    ]
    found, _, _ = look(built, *said)
    view = found.at(START + timedelta(hours=3))
    windows = [view.window(p) for p in view.points]
    assert all(w.early <= w.likely <= w.late for w in windows)
    assert windows[-1].late < START + timedelta(days=7)


def test_a_rest_at_a_point_is_a_stop_until_it_is_said_to_end_or_was_last_heard_of(built: Built) -> None:
    """Sat down at the mill, to go on at 4 h; said again at 3.5 h that she sits there."""
    came, sat = entry(Kind.IN, 2.6, "mill"), entry(Kind.RESTING, 2.8)
    until = replace(sat, until=START + timedelta(hours=4))
    again = entry(Kind.RESTING, 3.5)

    def stops(*said: Entry) -> list[tuple[int, float]]:
        _, runner, _ = look(built, came, *said)
        facts = facts_of(runner, index(built), built.timetables["maren"])
        return [(f.point, f.until_s / 3600.0) for f in facts if isinstance(f, KnownStop)]

    mill = index(built)["mill"]
    assert stops(sat) == []
    assert (mill, 4.0) in stops(until)
    assert stops(sat, again) == [(mill, 3.5)]


def test_slower_from_a_point_counts_from_there_and_from_nowhere_named_from_where_she_was(
    built: Built,
) -> None:
    """With the factor as it was said; without one, or with none that can be, it says nothing to a forecast."""
    rows = {r.point: r.km for r in built.timetables["maren"].rows}
    seen = entry(Kind.IN, 2.6, "mill")
    said = [
        replace(entry(Kind.CONDITION, 2.7, "brindle"), factor=1.1),
        replace(entry(Kind.CONDITION, 2.8), factor=0.9),
        entry(Kind.CONDITION, 3.0),
        replace(entry(Kind.CONDITION, 3.1), factor=0.0),
    ]
    _, runner, _ = look(built, seen, *said)
    facts = facts_of(runner, index(built), built.timetables["maren"])
    found = {f.from_km: float(np.exp(f.log_factor)) for f in facts if isinstance(f, Condition)}
    assert found == pytest.approx({rows["brindle"]: 1.1, rows["mill"]: 0.9})
    assert {f.to_km for f in facts if isinstance(f, Condition)} == {rows["finish"]}


def test_the_odds_of_having_gone_on_are_the_engines_own(built: Built) -> None:
    """In before out, and out as the engine has it."""
    found, _, _ = look(built, entry(Kind.IN, 2.6, "mill"))
    view = found.at(START + timedelta(hours=4))
    own = view.engine
    i = index(built)["brindle"]
    window = view.window("brindle")
    for when in (window.early, window.likely, window.late):
        seconds = (when - START).total_seconds()
        assert 0.0 < view.p_out_by("brindle", when) == own.probability_out_by(i, seconds)
        assert view.p_out_by("brindle", when) < view.p_in_by("brindle", when)


def test_what_would_be_thought_without_not_here_yet_is_the_forecast_without_it(built: Built) -> None:
    """Only that fact is left out; where nobody said so there is no other forecast."""
    seen = (entry(Kind.IN, 1.3, "pell"),)
    found, _, _ = look(built, *seen, entry(Kind.NOT_HERE_YET, 3.4, "mill"))
    plain, _, _ = look(built, *seen)
    now = START + timedelta(hours=4)
    before = found.untold()
    assert before is not None
    assert before.at(now).window("mill") == plain.at(now).window("mill")
    assert found.at(now).window("mill") != plain.at(now).window("mill")
    assert plain.untold() is None


def test_a_night_lies_ahead_until_she_has_come_to_where_she_sleeps(built: Built) -> None:
    ids = tuple(r.point for r in built.timetables["maren"].rows[1:])
    mill = ids.index("mill")
    nights = (Night(mill, 3600.0, 7200.0, 6000.0), Night(mill + 2, 3600.0, 14400.0, 13000.0))
    before, at, past = (
        look(built, *seen)[1]
        for seen in (
            (entry(Kind.IN, 1.3, "pell"),),
            (entry(Kind.IN, 2.6, "mill"),),
            (entry(Kind.OUT, 2.7, "mill"),),
        )
    )
    assert nights_ahead(before, ids, nights) == nights
    assert nights_ahead(at, ids, nights) == nights_ahead(past, ids, nights) == nights[1:]
