"""The brief: one document for the crew, from the same values as their sheets."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from server.api.building import build
from server.event.model import PartKind
from server.paper.before import BeforeStart, before_start
from server.paper.brief import briefs_of, file_names
from server.paper.document import Grid
from server.plan.movements import CrewPlan, course_spots, crew_plan
from server.sentences import languages
from tests.paper.test_parts import text

DEMO = Path(__file__).parents[2] / "demo_event"


@pytest.fixture(scope="module")
def demo() -> tuple[BeforeStart, CrewPlan]:
    """The demo before its start, with its crew's movements."""
    files = {"route.gpx": (DEMO / "route.gpx").read_bytes()}
    built = build((DEMO / "event.toml").read_text(encoding="utf-8"), files)
    before = before_start(
        built.event, built.timetables, built.courses, datetime(2027, 1, 1, 12, 0, tzinfo=UTC)
    )
    spots = course_spots(built.event, built.courses)
    return before, crew_plan(built.event, built.timetables, before.views, spots=spots)


def test_it_has_all_that_is_agreed_before(demo) -> None:
    """Roles, rules, travel, beds, entry, sleeps, her words, cards."""
    (brief,) = briefs_of(*demo)
    told = text(brief)
    for needed in (
        "safety contact for Maren", "Allowed: 2 vehicles at most", "school hall, Harrow Fold: four mats",
        "number, drop bags and car stickers", "Never say: nearly there; you look tired.", "Ana sleeps Sat 19:00",
        "hot spot or blister", "Nobody hurries on the road.",
    ):  # fmt: skip
        assert needed in told, needed


def test_drives_to_try_begin_with_those_that_nobody_stands_by(demo) -> None:
    """Each way once, an unconfirmed one first and in capitals, with room for the minutes."""
    (brief,) = briefs_of(*demo)
    grid = [b for b in brief.pages[1].blocks if isinstance(b, Grid)][-1]
    assert grid.rows[0] == ("Ember Quarry", "Harrow Fold finish", "0:27", "NOBODY YET", grid.rows[0][4], "")
    assert ("Skelter Mill", "Brindle Gate", "0:41", "Ana") in [r[:4] for r in grid.rows]
    assert len({r[:2] for r in grid.rows}) == len(grid.rows)


def test_one_for_each_language_that_crew_read(demo) -> None:
    """Everybody in a language of theirs; no gap in any of them; none where there is no crew."""
    before, moves = demo
    spoken = dict(zip(("ana", "jonas", "ines"), languages(), strict=False))
    people = tuple(replace(p, language=spoken.get(p.id, "en")) for p in before.event.people)
    found = briefs_of(
        replace(before, situation=replace(before.situation, event=replace(before.event, people=people))),
        moves,
    )
    assert {s.language for s in found} == set(spoken.values())
    assert sorted(file_names(found)) == [f"brief-{x}" for x in spoken.values()]
    assert not any("…" in text(s) for s in found)
    alone = replace(
        before.event, parts=tuple(p for p in before.event.parts if p.kind is PartKind.RUNNER), meetings=()
    )
    assert briefs_of(replace(before, situation=replace(before.situation, event=alone))) == ()
