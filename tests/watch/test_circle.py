"""Who shares people and cars with whom: what is judged of a runner is worked out among those."""

from __future__ import annotations

from dataclasses import replace

import pytest

from server.api.building import Built, build
from server.event.model import Part, PartKind
from server.facts.fold import fold
from server.watch.circle import circle_of, share_of
from server.watch.situation import Situation
from tests.api.conftest import DEMO, EXTRA_PEOPLE
from tests.api.field import many

FILES = {"route.gpx": (DEMO / "route.gpx").read_bytes()}
HER, SECOND, ALONE = "maren", "maren-1", "maren-2"


@pytest.fixture(scope="module")
def field() -> Built:
    """Two runners with crews of their own, and one with nobody."""
    one = build((DEMO / "event.toml").read_text(encoding="utf-8") + EXTRA_PEOPLE, FILES)
    return build(many(one.event, 3, 2), FILES)


def _situation(field: Built) -> Situation:
    return Situation(
        field.event, fold((), field.event, field.event.starts), {}, field.timetables, field.courses, ()
    )


def test_crews_of_their_own_are_circles_of_their_own(field: Built) -> None:
    """Organisers and volunteers, who are there for all, tie nobody together; they are in every share."""
    situation = _situation(field)
    assert [circle_of(situation, r) for r in (HER, SECOND, ALONE)] == [{HER}, {SECOND}, {ALONE}]
    share = share_of(situation, HER).event
    assert {m.runner for m in share.meetings} == {HER} == {r.id for r in share.runners}
    assert {"olga", "vera"} <= {p.id for p in share.people}
    assert "ana-1" not in {p.id for p in share.people}
    assert share.person("ana-1").name == "Ana 1"
    assert share_of(share_of(situation, HER), HER).event is share


def test_a_shared_person_or_car_ties_together(field: Built) -> None:
    """One of crew who meets both, a car that goes to both; not the one whom nobody comes with."""
    event = field.event
    theirs = next(m for m in event.meetings if m.runner == SECOND)
    hers = next(m for m in event.meetings if m.runner == HER and m.car)
    for m in (replace(theirs, crew=(*theirs.crew, hers.crew[0])), replace(theirs, car=hers.car)):
        tied = replace(event, meetings=tuple(m if x.id == m.id else x for x in event.meetings))
        situation = replace(_situation(field), event=tied, memo={})
        assert circle_of(situation, HER) == circle_of(situation, SECOND) == {HER, SECOND}
        assert circle_of(situation, ALONE) == {ALONE}
        assert share_of(situation, HER) is share_of(situation, SECOND)


def test_who_crews_for_all_ties_all(field: Built) -> None:
    """They may be asked to stand in for anybody."""
    event = replace(field.event, parts=(*field.event.parts, Part("sam", PartKind.CREW)))
    assert circle_of(replace(_situation(field), event=event, memo={}), ALONE) == {HER, SECOND, ALONE}
