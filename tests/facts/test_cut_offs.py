"""A cut-off missed, as facts say it: in or out after it, still there, not in by it; and what is none of these."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest

from server.event.model import CutOff, Edge, Event
from server.facts.cut_offs import Past, past_cut_off
from server.facts.entry import Fix, Kind, Retired, Source
from server.facts.fold import fold

Entries = Callable[..., Any]
Clock = Callable[[str], datetime]
IN, OUT = Edge.IN, Edge.OUT


@pytest.fixture
def limits(event: Event, clock: Clock) -> Event:
    """Chapel: in by 12:00, out by 12:15. Moss: out by 16:00."""
    (course,) = event.courses
    at = {
        "chapel": (CutOff(IN, clock("12:00")), CutOff(OUT, clock("12:15"))),
        "moss": (CutOff(OUT, clock("16:00")),),
    }
    points = tuple(replace(p, cut_offs=at.get(p.id, ())) for p in course.points)
    return replace(event, courses=(replace(course, points=points),))


CHAPEL = {"point": "chapel"}
CASES = (
    # what is reported                                           now      edge  how
    ([(Kind.IN, "11:59", CHAPEL)],                               "12:10", None, None),
    ([(Kind.IN, "12:00", CHAPEL)],                               "12:01", None, None),
    ([(Kind.IN, "12:01", CHAPEL)],                               "12:01", IN, Past.IN_AFTER),
    ([(Kind.IN, "12:03", CHAPEL | {"seen_spread": timedelta(minutes=5)})], "12:10", None, None),
    ([(Kind.IN, "12:20", {"point": "moss"})],                    "12:30", None, None),
    ([(Kind.IN, "11:50", CHAPEL), (Kind.OUT, "12:15", CHAPEL)],  "12:20", None, None),
    ([(Kind.IN, "11:50", CHAPEL), (Kind.OUT, "12:16", CHAPEL)],  "12:20", OUT, Past.OUT_AFTER),
    ([(Kind.IN, "12:05", CHAPEL), (Kind.OUT, "12:10", CHAPEL)],  "12:20", IN, Past.OUT_AFTER),
    ([(Kind.THROUGH, "12:05", CHAPEL)],                          "12:20", IN, Past.IN_AFTER),
    ([(Kind.IN, "11:50", CHAPEL)],                               "12:15", None, None),
    ([(Kind.IN, "11:50", CHAPEL)],                               "12:16", OUT, Past.NO_OUT),
    ([(Kind.IN, "11:50", CHAPEL), (Kind.RESTING, "12:14", CHAPEL)], "12:20", OUT, Past.NO_OUT),
    ([(Kind.IN, "11:50", CHAPEL), (Kind.RESTING, "12:18", CHAPEL)], "12:20", OUT, Past.STILL_THERE),
    ([(Kind.OUT, "12:01", {"point": "mill"})],                   "12:05", IN, Past.NOT_IN),
    ([(Kind.OUT, "12:00", {"point": "mill"})],                   "12:30", None, None),
    ([(Kind.NOT_HERE_YET, "12:00", CHAPEL)],                     "12:30", None, None),
    ([(Kind.NOT_HERE_YET, "12:04", CHAPEL)],                     "12:30", IN, Past.NOT_IN),
    ([(Kind.IN, "12:20", CHAPEL), (Kind.IN, "15:00", {"point": "moss"})], "15:30", None, None),
    ([(Kind.IN, "12:20", CHAPEL), (Kind.RETIRED, "12:30", {"how": Retired.TIMED_OUT})], "12:40", None, None),
    ([(Kind.IN, "12:20", CHAPEL | {"unconfirmed": True})],       "12:40", None, None),
)  # fmt: skip


@pytest.mark.parametrize(("reported", "now", "edge", "how"), CASES)
def test_what_misses_a_cut_off(
    reported: list[Any],
    now: str,
    edge: Edge | None,
    how: Past | None,
    limits: Event,
    entry: Entries,
    clock: Clock,
) -> None:
    """To the minute it is made; a time known to some minutes must be past with all of them."""
    state = fold([entry(kind, at, **more) for kind, at, more in reported], limits, clock(now))
    found = past_cut_off(limits, state, state.runner("maren"), clock(now))
    assert (found and found.edge, found and found.how) == (edge, how)


def test_a_moved_cut_off_counts_at_its_new_time(limits: Event, entry: Entries, clock: Clock) -> None:
    """The organiser gives half an hour more: nothing is missed."""
    moved = [
        entry(
            Kind.CUT_OFF_MOVED, "11:00", runner=None, point="chapel", edge=edge, until=clock("12:45"), id=edge
        )
        for edge in ("in", "out")
    ]
    state = fold([*moved, entry(Kind.IN, "12:20", point="chapel")], limits, clock("12:30"))
    assert past_cut_off(limits, state, state.runner("maren"), clock("12:30")) is None


@pytest.mark.parametrize(
    ("source", "km", "missed"),
    [(Source.RUNNER, 30.0, True), (Source.RUNNER, 44.8, False), (Source.TRACKER, 30.0, False)],
)
def test_a_position_short_of_it(
    source: Source, km: float, missed: bool, limits: Event, entry: Entries, clock: Clock, placer: Any
) -> None:
    """Her phone well before the point when it closes says so; a tracker may lie beside the path."""
    at = entry(Kind.POSITION, "12:02", fix=Fix(km / 100, 0.0), source=source)
    state = fold([at], limits, clock("12:05"), placer)
    found = past_cut_off(limits, state, state.runner("maren"), clock("12:05"))
    assert (found is not None) is missed


@pytest.mark.parametrize(
    ("facts", "now", "what"),
    [
        ([(Kind.IN, "12:01", CHAPEL)], "12:02", ("chapel", IN, "12:00", Past.IN_AFTER, "12:01", "chapel")),
        (
            [(Kind.IN, "11:50", CHAPEL), (Kind.OUT, "12:16", CHAPEL)],
            "12:20",
            ("chapel", OUT, "12:15", Past.OUT_AFTER, "12:16", "chapel"),
        ),
        ([(Kind.IN, "11:50", CHAPEL)], "12:16", ("chapel", OUT, "12:15", Past.NO_OUT, "11:50", "chapel")),
        (
            [(Kind.NOT_HERE_YET, "12:05", CHAPEL)],
            "12:06",
            ("chapel", IN, "12:00", Past.NOT_IN, "12:05", None),
        ),
        (
            [(Kind.OUT, "12:01", {"point": "mill"})],
            "12:05",
            ("chapel", IN, "12:00", Past.NOT_IN, "12:01", "mill"),
        ),
    ],
)
def test_a_missed_cut_off_names_the_fact_that_says_so(
    entry: Entries, limits: Event, clock: Clock, facts: Any, now: str, what: Any
) -> None:
    """The cut-off with its time, when and by whom she was seen, in which entry, and where."""
    rows = [entry(kind, when, **more) for kind, when, more in facts]
    race = fold(rows, limits, clock(now))
    found = past_cut_off(limits, race, race.runner("maren"), clock(now))
    assert found is not None
    point, edge, limit, how, at, seen_at = what
    assert (found.point, found.edge, found.cut_off, found.how) == (point, edge, clock(limit), how)
    assert (found.at, found.seen_at, found.by) == (clock(at), seen_at, "ana")
    assert found.entry in {r.id for r in rows if r.seen_at == clock(at)}
