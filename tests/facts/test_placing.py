"""Remembering what was placed: the same answers, asked once."""

from __future__ import annotations

from datetime import timedelta

from server.facts.entry import Fix, Kind, Source
from server.facts.fold import fold
from server.facts.placing import remembered


def test_a_fold_made_again_places_only_what_is_new(entry, event, clock, placer) -> None:
    """One more position asks for one more place; a late report between asks again only where it matters."""
    asked = []

    def counting(course, fix, at, before):
        asked.append(at)
        return placer(course, fix, at, before)

    place = remembered(counting)
    first, tracker = clock("5:00"), {"source": Source.TRACKER}
    rows = [
        entry(Kind.POSITION, first + timedelta(minutes=i), fix=Fix(0.1 + i / 1000, 0), id=f"p{i}", **tracker)
        for i in range(100)
    ]  # fmt: skip
    now = clock("20:00")
    plain = fold(rows, event, now, placer)
    assert (
        fold(rows[:99], event, now, place).runner("maren").positions == plain.runner("maren").positions[:99]
    )
    assert len(asked) == 99
    assert fold(rows, event, now, place) == plain
    assert len(asked) == 100
    late = entry(Kind.IN, "5:30", point="mill", id="late")
    assert fold([*rows, late], event, now, place) == fold([*rows, late], event, now, placer)
    assert len(asked) <= 102
