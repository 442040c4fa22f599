"""A fold that grows: whom an entry does not concern keeps her state, and positions that change nothing are passed over."""

from __future__ import annotations

import random
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

import pytest

from server.event.model import Event
from server.facts.entry import Entry, Kind, Source
from server.facts.fold import fold
from server.facts.folding import Folding
from server.facts.race import RACE_WIDE, RaceFacts, race_facts

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
