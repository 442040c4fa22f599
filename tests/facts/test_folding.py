"""A fold that grows: whom an entry does not concern keeps her state, and positions that change nothing are passed over."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import fields
from datetime import datetime, timedelta
from typing import Any

import pytest

from server.event.model import Event
from server.facts import runner as runner_fold
from server.facts.entry import Entry, Fix, Kind, Source
from server.facts.fold import fold
from server.facts.folding import Folding
from server.facts.placing import KnownAt, Placed
from server.facts.race import RACE_WIDE, RaceFacts, race_facts
from server.facts.state import RaceState
from server.facts.stop_log import Item, Logged

Make = Callable[..., Entry]
Clock = Callable[[str], datetime]


def test_whom_an_entry_does_not_concern_keeps_the_very_same_state(
    entry: Make, event: Event, clock: Clock
) -> None:
    """By that others know that nothing about her has changed; what holds all concerns all; a start when it comes."""
    folding, now = Folding(event), clock("6:00")
    before = folding.at(now)
    folding.add([entry(Kind.OUT, "5:00", point="start", id="a")])
    after = folding.at(now)
    assert after.runner("maren") is not before.runner("maren")
    assert after.runner("ines") is before.runner("ines")
    folding.add([entry(Kind.HELD, "5:30", runner=None, id="b")])
    held = folding.at(now)
    assert all(held.runner(r) is not after.runner(r) for r in ("maren", "ines"))


def test_a_start_changes_her_state_when_it_comes(event: Event, clock: Clock) -> None:
    """Of maren at 04:00, of ines half an hour later; in between nothing is folded."""
    folding = Folding(event)
    early = folding.at(clock("3:00"))
    assert folding.changes_at() == clock("4:00")
    assert folding.at(clock("3:59")) is early
    first = folding.at(clock("4:00"))
    assert first.runner("maren") is not early.runner("maren")
    assert first.runner("ines") is early.runner("ines")
    assert folding.changes_at() == clock("4:30")
    assert folding.at(clock("3:59")) == early


@pytest.mark.parametrize("kind", sorted(set(Kind) - RACE_WIDE))
def test_what_is_not_race_wide_changes_no_race_level_fact(
    kind: Kind, entry: Make, event: Event, clock: Clock
) -> None:
    """So a fold that grows need not look at it for others."""
    for runner in ("maren", None):
        e = entry(kind, "5:00", runner=runner, point="mill", person="ana", about="x", until=clock("9:00"))
        assert race_facts([e], event) == RaceFacts()


def test_positions_between_are_passed_over_in_any_order(
    entry: Make, event: Event, clock: Clock, placer: Any, fix_at: Callable[..., Any]
) -> None:
    """A tracker every five seconds for half an hour: one a minute is folded, and the newest, whichever came first; where
    she is known to be is the same."""
    start, fixes = clock("5:00"), list[Entry]()
    for n in range(360):
        seen = start + timedelta(seconds=5 * n)
        more = {"id": f"f{n:03}", "key": f"f{n}", "sender": "box", "source": Source.TRACKER}
        fixes.append(
            entry(
                Kind.POSITION,
                seen,
                sent_at=seen,
                received_at=seen,
                fix=fix_at(5.0 + n / 100),
                point=None,
                **more,
            )
        )
    now, kept = clock("6:00"), list[set[str]]()
    for seed in range(3):
        folding = Folding(event, placer, thin=True)
        for e in random.Random(seed).sample(fixes, len(fixes)) if seed else fixes:
            folding.add([e])
        kept.append({e.id for e in folding.entries()})
        state = folding.at(now).runner("maren")
        assert state.last_known == fold(fixes, event, now, placer).runner("maren").last_known
    assert kept[0] == kept[1] == kept[2] == {f"f{n:03}" for n in (*range(0, 360, 12), 359)}


def test_what_came_one_by_one_is_what_came_at_once(
    entry: Make, event: Event, clock: Clock, placer: Any, fix_at: Callable[..., Any]
) -> None:
    """Reports of which nobody says more, told late and out of order, then a race-level fact, then positions: after each
    the state is that of all together, with when each came."""
    rows = [
        entry(Kind.IN, "9:30", point="chapel", id="d"),
        entry(Kind.IN, "6:00", point="mill", id="b", received_at=clock("9:40")),
        entry(Kind.OUT, "6:10", point="mill", id="c", received_at=clock("9:41")),
        entry(Kind.ACCESS_CLOSED, "5:00", point="moss", runner=None, id="a", received_at=clock("9:42")),
        entry(Kind.ACCESS_OPENED, "5:30", point="moss", runner=None, id="o", received_at=clock("9:43")),
        entry(Kind.POSITION, "9:45", fix=fix_at(46), point=None, id="p", source=Source.TRACKER, sender="box"),
        entry(Kind.CONDITION, "9:50", runner=None, words="hail", id="w"),
        entry(Kind.OUT, "9:55", point="chapel", id="e"),
    ]
    now, folding = clock("10:00"), Folding(event, placer)
    folding.at(now)
    for n, e in enumerate(rows, start=1):
        folding.add([e])
        grown, whole = folding.at(now), fold(rows[:n], event, now, placer)
        assert grown == whole, e.id
        for name in ("maren", ""):
            known = grown.received.get(name)
            assert (known and known.of) == (whole.received.get(name) and whole.received[name].of), e.id
    assert folding.at(now).received["maren"].of["b"] == clock("9:40")
    assert folding.at(now).received["maren"].last == clock("9:55")


@pytest.mark.parametrize("seed", range(6))
def test_a_walk_that_goes_on_is_the_whole_walk(
    seed: int,
    entry: Make,
    event: Event,
    clock: Clock,
    placer: Any,
    fix_at: Callable[..., Any],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Of a long night most is settled: what comes late, is of an earlier moment, is taken back or said anew, a start that is
    moved and a clock put back still leave the state of all entries together."""
    monkeypatch.setattr(runner_fold, "OPEN_ITEMS", 8)
    chance, start, rows = random.Random(seed), clock("4:00"), list[Entry]()
    kinds = (*(Kind.IN, Kind.OUT, Kind.THROUGH) * 3, Kind.RESTING, Kind.MOVING_AGAIN, Kind.RETIRED, Kind.IN_HAND,
             Kind.ASKED_FOR_HELP, Kind.STAND_DOWN, Kind.NOT_HERE_YET, Kind.HOW_SHE_IS, Kind.CONTACT_LOST)  # fmt: skip
    for n in range(160):
        came, name = start + timedelta(minutes=3 * n), f"e{n:03}"
        late = timedelta(minutes=chance.choice((0, 0, 0, 0, 2, 15, 90)))
        if chance.random() < 0.5:
            seen, fix = max(came - late, start), fix_at(min(0.6 * n, 99.0))
            more = {"fix": fix, "point": None, "source": Source.TRACKER, "sender": "box"}
            made = entry(Kind.POSITION, seen, received_at=came, id=name, **more)
        elif n > 20 and chance.random() < 0.2:
            about = chance.choice(rows[-20:]).id
            made = entry(Kind.TAKEN_BACK, came, about=about, id=name)
        else:
            point = ("start", "mill", "chapel", "moss", "finish")[min(n // 32 + chance.choice((0, 0, 1)), 4)]
            who = chance.choice((Source.CREW, Source.VOLUNTEER))
            seen, kind = max(came - late, start), chance.choice(kinds)
            made = entry(kind, seen, point=point, source=who, received_at=came, id=name)
        rows.append(made)
    rows[100] = entry(Kind.START_DELAYED, "5:00", runner=None, amount=timedelta(minutes=10), id="later")
    folding = Folding(event, placer)
    for n, e in enumerate(rows, start=1):
        now = max(e.received_at, start)
        folding.add([e])
        assert folding.at(now) == fold(rows[:n], event, now, placer), e.id
    for now in (clock("7:00"), clock("13:00")):
        assert folding.at(now) == fold(rows, event, now, placer)


def test_a_report_of_now_that_moves_a_settled_one_has_all_walked_again(
    entry: Make, event: Event, clock: Clock, placer: Any, fix_at: Callable[..., Any]
) -> None:
    """She was in at nine by who is trusted more, and rested until then: crew's 'in' of six, long settled, is none."""
    rows = [
        entry(Kind.RESTING, "5:30", point=None, id="r"),
        entry(Kind.IN, "6:00", point="chapel", id="crew"),
    ]
    for n in range(100):
        seen = clock("6:00") + timedelta(minutes=n)
        more = {"point": None, "source": Source.TRACKER, "sender": "box"}
        rows.append(entry(Kind.POSITION, seen, fix=fix_at(40), id=f"f{n}", **more))
    folding, now = Folding(event, placer), clock("10:00")
    folding.add(rows)
    assert [r.end for r in folding.at(now).runner("maren").rests] == [clock("6:00")]
    rows.append(entry(Kind.IN, "9:00", point="chapel", source=Source.VOLUNTEER, id="post"))
    folding.add(rows[-1:])
    assert [r.end for r in folding.at(now).runner("maren").rests] == [clock("9:00")]
    assert folding.at(now) == fold(rows, event, now, placer)


def test_a_report_of_now_walks_over_little(
    entry: Make, event: Event, clock: Clock, fix_at: Callable[..., Any]
) -> None:
    """However long she has been tracked, what comes next places a few fixes and not all."""
    placed = list[datetime]()

    def counting(course: str, fix: Fix, at: datetime, before: KnownAt) -> Placed:
        placed.append(at)
        return Placed(km=fix.lat * 100, off_m=0.0)

    def position(n: int) -> Entry:
        seen = clock("4:00") + timedelta(minutes=n)
        more = {"point": None, "source": Source.TRACKER, "sender": "box"}
        return entry(Kind.POSITION, seen, fix=fix_at(n / 10), id=f"f{n}", **more)

    folding, now = Folding(event, counting), clock("14:00")
    folding.add(map(position, range(500)))
    folding.at(now)
    for e in (position(500), entry(Kind.IN, "12:25", point="chapel", id="in"), position(501)):
        placed.clear()
        folding.add([e])
        folding.at(now)
        assert 0 < len(placed) <= runner_fold.OPEN_ITEMS


def test_what_waited_for_a_word_came_with_it(entry: Make, event: Event, clock: Clock) -> None:
    """A doubtful report counts from the first word that confirms it, as far as 'when was it known' goes."""
    doubtful = entry(Kind.IN, "6:00", point="mill", id="a", unconfirmed=True)
    words = [
        entry(Kind.CONFIRMED, t, about="a", id=f"yes {t}", received_at=clock(t)) for t in ("6:30", "6:20")
    ]
    sure = entry(Kind.OUT, "6:05", point="mill", id="b")
    race = fold([doubtful, *words, sure], event, clock("7:00"))
    came = race.received["maren"].of
    assert (came["a"], came["b"]) == (clock("6:20"), clock("6:05"))
    assert race.received_at(("a",), "maren") == clock("6:20")
    assert race.received_at((), "maren") == max(came.values())


def test_every_fact_has_its_place_in_the_state(entry: Make, event: Event, clock: Clock) -> None:
    """One entry of each thing that the state of a race and of a runner can hold: none of the two has an empty field that
    something here would fill."""
    rows = [
        entry(Kind.START_DELAYED, "3:00", runner=None, amount=timedelta(minutes=10)),
        entry(Kind.HELD, "7:00", runner=None, id="held"),
        entry(Kind.RELEASED, "7:10", runner=None),
        entry(Kind.RACE_ENDED_EARLY, "11:59", runner=None),
        entry(Kind.CUT_OFF_MOVED, "5:00", runner=None, point="chapel", edge="out", until=clock("19:00")),
        entry(Kind.ACCESS_CLOSED, "5:00", runner=None, point="moss"),
        entry(Kind.REROUTED, "5:00", runner=None, words="round the wood"),
        entry(Kind.CREW_THERE, "5:50", runner=None, point="mill"),
        entry(Kind.CREW_LEFT, "6:20", runner=None, point="mill"),
        entry(Kind.DRIVE_CONFIRMED, "5:00", runner=None, about="d1", words="35 min"),
        entry(Kind.ANSWERED, "6:30", runner=None, about="n1", words="yes"),
        entry(Kind.STAND_DOWN, "6:40", runner=None, about="n1"),
        entry(Kind.AWAKE, "6:50", runner=None),
        entry(Kind.CANNOT_COME, "6:51", runner=None, about="m1"),
        entry(Kind.TAKES_OVER, "6:52", runner=None, about="m1", by="jonas"),
        entry(Kind.QUIET, "6:53", runner=None, until=clock("8:00")),
        entry(Kind.ASKED_FOR_HELP, "6:54", runner=None, id="call"),
        entry(Kind.TAKEN_BACK, "6:55", runner=None, about="call"),
        entry(Kind.ASKED_FOR_HELP, "6:56", runner=None, id="call 2"),
        entry(Kind.NOTE, "6:57", runner=None, unconfirmed=True, id="waits"),
        entry(Kind.NOTE, "13:00", runner=None, id="ahead"),
        entry(Kind.IN, "6:58", runner="stranger", point="mill"),
        entry(Kind.NOTE, "6:59", runner=None, id="x", key="same"),
        entry(Kind.NOTE, "7:00", runner=None, id="y", key="same", words="other"),
        entry(Kind.LOG, "6:05", point="mill", logged=(Logged(Item.DRANK, 500.0),)),
        entry(Kind.IN, "6:00", point="mill"),
    ]
    race = fold(rows, event, clock("12:00"))
    empty = {f.name for f in fields(RaceState) if f.name != "by_id" and not getattr(race, f.name)}
    assert empty == set()
    assert [e.logged[0].amount for e in race.runner("maren").log] == [500.0]
    assert [e.id for e in race.future] == ["ahead"]
    assert [e.id for e in race.unconfirmed] == ["waits"]
    assert [e.runner for e in race.refused] == ["stranger"]
    by_kind = {e.kind: e for e in rows}
    assert race.calls == tuple(e for e in rows if e.kind is Kind.ASKED_FOR_HELP and e.id == "call 2")
    assert race.taken_back == (by_kind[Kind.TAKEN_BACK],)
    assert race.drives_confirmed == (by_kind[Kind.DRIVE_CONFIRMED],)
    assert race.answers == (by_kind[Kind.ANSWERED],)
    assert race.stand_downs == (by_kind[Kind.STAND_DOWN],)
    assert race.rerouted == (by_kind[Kind.REROUTED],)
    assert race.requests == (by_kind[Kind.QUIET],)
    assert race.awake == (("ana", clock("6:50")),)
    assert race.access_closed == ("moss",)
    assert [(p, who, s.at) for p, who, s in race.crew_there] == [("mill", "ana", clock("5:50"))]
    assert [(p, who, s.at) for p, who, s in race.crew_left] == [("mill", "ana", clock("6:20"))]
    assert race.cut_offs_moved == (("chapel", "out", clock("19:00")),)
    assert race.conflicts == (("x", "y"),)
    assert {k: e.kind for k, e in race.said} == {
        "access:moss": Kind.ACCESS_CLOSED,
        "cut-off:chapel:out": Kind.CUT_OFF_MOVED,
        "ended": Kind.RACE_ENDED_EARLY,
        "start:ines": Kind.START_DELAYED,
        "start:maren": Kind.START_DELAYED,
    }


@pytest.mark.parametrize(
    ("rows", "maren", "ines"),
    [
        ([], None, None),
        ([(Kind.START_DELAYED, "3:00", {})], "3:00", "3:00"),
        ([(Kind.START_DELAYED, "3:00", {"runner": "ines"})], None, "3:00"),
        ([(Kind.WAVE_MOVED, "3:10", {"wave": "B"})], None, "3:10"),
        ([(Kind.WAVE_MOVED, "3:10", {"wave": "C"})], None, None),
        ([(Kind.WAVE_MOVED, "3:10", {"runner": "maren"})], "3:10", None),
        ([(Kind.START_DELAYED, "3:00", {}), (Kind.WAVE_MOVED, "3:10", {"wave": "B"})], "3:00", "3:10"),
        ([(Kind.START_DELAYED, "3:20", {}), (Kind.WAVE_MOVED, "3:10", {"wave": "B"})], "3:20", "3:20"),
    ],
)
def test_who_moved_her_start_last(
    entry: Make, event: Event, clock: Clock, rows: Any, maren: str | None, ines: str | None
) -> None:
    """A delay of all or of her, or a wave's new time, whichever was said last."""
    said = [
        entry(kind, when, amount=timedelta(minutes=10), **{"runner": None, **more})
        for kind, when, more in rows
    ]
    race = fold(said, event, clock("3:30"))
    for runner, when in (("maren", maren), ("ines", ines)):
        e = race.said_of(f"start:{runner}")
        assert (e.seen_at if e else None) == (clock(when) if when else None)


def test_a_fix_keeps_what_it_says(
    entry: Make, event: Event, clock: Clock, fix_at: Callable[..., Any]
) -> None:
    """Where it was put on the course, how far off, and whether it may be elsewhere too."""
    fix = fix_at(15)
    seen = entry(Kind.POSITION, "6:00", fix=fix, source=Source.TRACKER)
    state = fold([seen], event, clock("7:00"), lambda *_: Placed(15.0, 12.0, True)).runner("maren")
    (kept,) = state.positions
    assert (kept.fix, kept.stamp.entry, kept.km, kept.off_m, kept.ambiguous) == (
        fix,
        seen.id,
        15.0,
        12.0,
        True,
    )
    unplaced = fold([seen], event, clock("7:00")).runner("maren").positions[0]
    assert (unplaced.km, unplaced.off_m, unplaced.ambiguous) == (None, 0.0, False)
    last = (
        fold([seen, entry(Kind.RESTING, "6:10", id="rest")], event, clock("7:00")).runner("maren").last_known
    )
    assert last is not None
    assert (last.entry, last.km) == (seen.id, None)


@pytest.mark.parametrize(
    ("rows", "through"),
    [
        ([(Kind.THROUGH, "6:00", Source.CREW)], True),
        ([(Kind.IN, "6:00", Source.VOLUNTEER), (Kind.THROUGH, "6:00", Source.CREW)], True),
        ([(Kind.IN, "6:00", Source.VOLUNTEER), (Kind.THROUGH, "6:04", Source.CREW)], False),
        ([(Kind.IN, "6:00", Source.CREW), (Kind.OUT, "6:00", Source.CREW)], False),
    ],
)
def test_through_is_out_at_the_moment_of_in(
    entry: Make, event: Event, clock: Clock, rows: Any, through: bool
) -> None:
    """A better word of when she came makes a stop of it."""
    reports = [entry(kind, when, point="mill", source=source) for kind, when, source in rows]
    times = fold(reports, event, clock("7:00")).runner("maren").at_point("mill")
    assert times is not None
    assert times.through is through
