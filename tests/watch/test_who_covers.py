"""Who still goes to a meeting that somebody fell out of, who drives, what she lacks, and how it is gone to then."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from server.event.model import KitItem, Part, PartKind
from server.facts.entry import Kind, Why
from server.watch.covering import covered, covered_by
from server.watch.situation import Situation
from tests.watch.conftest import clock

ALONE, BOTH_DRIVE, NO_DRIVERS = "only Ana drives", "both drive", "nobody is marked as driver"


def with_drivers(night: Any, who: str) -> None:
    """Who of the van may drive it; Jonas' own part has no car."""
    drives = {ALONE: {"ana", "vera"}, BOTH_DRIVE: {"ana", "jonas", "vera"}, NO_DRIVERS: set()}[who]
    parts = tuple(replace(p, drives=p.person in drives) for p in night.event.parts)
    night.event = replace(night.event, parts=parts)


def stand_of(situation: Situation, meeting: str) -> str:
    """How a meeting stands, in one line: who goes, who does not, at whose wheel, what is missing; and as it is gone to."""
    u = next((u for u in situation.uncovered if u.plan.id == meeting), None)
    m = next(m for m in situation.event.meetings if m.id == meeting)
    goes_to = f"{'+'.join(m.crew)} in {m.car} from {m.from_place}"
    goes_to += "" if m.pacer_joins is None else f", pacer {m.pacer_joins}"
    if u is None:
        return f"as planned: {goes_to}"
    said = [f"goes {'+'.join(u.goes)}", f"out {'+'.join(u.out)}"]
    said += [] if u.driver is None else [f"wheel {u.driver}"]
    said += [f"lacks {'+'.join(u.missing)} of {u.kit_car}"] if u.missing or u.kit_car else []
    said += [] if u.no_pacer is None else [f"no pacer {u.no_pacer}"]
    return f"{'; '.join((*said, u.stand))} | {goes_to}"


TABLE = [
    (ALONE, "ana", Why.CAR, "mill-maren",
     "goes ; out ana+jonas; lacks poles of van; open:e1! |  in None from None"),
    (ALONE, "ana", Why.DRIVER, "mill-maren",
     "goes ; out ana+jonas; lacks poles of van; open:e1! |  in van from start"),
    (ALONE, "ana", Why.PACER, "mill-maren",
     "as planned: ana+jonas in van from start"),
    (ALONE, "ana", Why.OWN_SAFETY, "mill-maren",
     "goes ; out ana+jonas; lacks poles of van; open:e1! |  in van from start"),
    (ALONE, "ana", Why.NOT_SAID, "mill-maren",
     "goes ; out ana+jonas; lacks poles of van; open:e1! |  in van from start"),
    (BOTH_DRIVE, "ana", Why.CAR, "mill-maren",
     "goes ; out ana+jonas; lacks poles of van; open:e1! |  in None from None"),
    (BOTH_DRIVE, "ana", Why.DRIVER, "mill-maren",
     "goes ana+jonas; out ; wheel jonas; with:e1 | ana+jonas in van from start"),
    (BOTH_DRIVE, "ana", Why.PACER, "mill-maren",
     "as planned: ana+jonas in van from start"),
    (BOTH_DRIVE, "ana", Why.OWN_SAFETY, "mill-maren",
     "goes jonas; out ana; wheel jonas; with:e1 | jonas in van from start"),
    (BOTH_DRIVE, "ana", Why.NOT_SAID, "mill-maren",
     "goes jonas; out ana; wheel jonas; with:e1 | jonas in van from start"),
    (NO_DRIVERS, "ana", Why.DRIVER, "mill-maren",
     "goes ana+jonas; out ; wheel jonas; with:e1 | ana+jonas in van from start"),
    (NO_DRIVERS, "ana", Why.OWN_SAFETY, "mill-maren",
     "goes jonas; out ana; wheel jonas; with:e1 | jonas in van from start"),
    (ALONE, "jonas", Why.CAR, "mill-maren",
     "goes ; out ana+jonas; lacks poles of van; open:e1! |  in None from None"),
    (ALONE, "jonas", Why.DRIVER, "mill-maren",
     "as planned: ana+jonas in van from start"),
    (ALONE, "jonas", Why.OWN_SAFETY, "mill-maren",
     "goes ana; out jonas; with:e1 | ana in van from start"),
    (ALONE, "tomas", Why.CAR, "moss-maren",
     "goes ; out vera+tomas; lacks dry socks of red; no pacer tomas; open:e1! |  in None from None"),
    (ALONE, "tomas", Why.DRIVER, "moss-maren",
     "as planned: vera in red from hotel, pacer tomas"),
    (ALONE, "tomas", Why.PACER, "moss-maren",
     "goes vera+tomas; out ; no pacer tomas; with:e1! | vera in red from hotel"),
    (ALONE, "tomas", Why.OWN_SAFETY, "moss-maren",
     "goes vera; out tomas; no pacer tomas; with:e1! | vera in red from hotel"),
    (ALONE, "tomas", Why.NOT_SAID, "moss-maren",
     "goes vera; out tomas; no pacer tomas; with:e1! | vera in red from hotel"),
    (ALONE, "vera", Why.CAR, "moss-maren",
     "goes ; out vera+tomas; lacks dry socks of red; no pacer tomas; open:e1! |  in None from None"),
    (ALONE, "vera", Why.DRIVER, "moss-maren",
     "goes ; out vera+tomas; lacks dry socks of red; no pacer tomas; open:e1! |  in red from hotel"),
    (ALONE, "vera", Why.NOT_SAID, "moss-maren",
     "goes ; out vera+tomas; lacks dry socks of red; no pacer tomas; open:e1! |  in red from hotel"),
    (ALONE, "vera", Why.PACER, "moss-maren",
     "as planned: vera in red from hotel, pacer tomas"),
    (ALONE, "ana", Why.CAR, "barn-maren",
     "goes ; out ana+jonas; lacks warm layer of van; open:e1! |  in None from None"),
    (ALONE, "ana", Why.CAR, "moss-maren",
     "as planned: vera in red from hotel, pacer tomas"),
]  # fmt: skip


@pytest.mark.parametrize(("drivers", "who", "why", "meeting", "stand"), TABLE)
def test_who_still_goes(
    night: Any, at: Any, drivers: str, who: str, why: Why, meeting: str, stand: str
) -> None:
    """A car goes while somebody in it may drive it; a pacer who can't run may come; who is ill does neither."""
    with_drivers(night, drivers)
    night.report(Kind.CANNOT_COME, "14:30", who, why=why)
    assert stand_of(covered(night.situation(at("14:31"))), meeting) == stand


def taken_over(
    night: Any, fell: str, why: Why, meeting: str, taker: str, *more: tuple[Kind, str]
) -> Situation:
    """Somebody fell out at 14:30, another took the meeting over at 14:33; `more` is what that one said of where they are."""
    pacer = Part("piet", PartKind.PACER, "maren")
    night.event = replace(night.event, parts=(*(p for p in night.event.parts if p.person != "piet"), pacer))
    kit = (
        KitItem("poles"),
        KitItem("cup", car="van"),
        KitItem("coat", car="red"),
        KitItem("bag", take_back=True),
    )
    plans = tuple(replace(m, kit=kit) if m.id == meeting else m for m in night.event.meetings)
    night.event = replace(night.event, meetings=plans)
    for minute, (kind, point) in enumerate(more, 20):
        night.report(kind, f"14:{minute}", taker, runner=None, point=point)
    night.report(Kind.CANNOT_COME, "14:30", fell, why=why, id="fell")
    night.report(Kind.TAKES_OVER, "14:33", taker, about=meeting, id="takes")
    return covered(night.situation(clock("14:34")))


TAKEN: list[tuple[str, Why, str, str, tuple[tuple[Kind, str], ...], str]] = [
    ("ana", Why.CAR, "mill-maren", "vera", (),
     "goes ; out ana+jonas; lacks poles+cup of van; by:takes! | vera in red from None"),
    ("ana", Why.CAR, "mill-maren", "vera", ((Kind.CREW_THERE, "chapel"),),
     "goes ; out ana+jonas; lacks poles+cup of van; by:takes! | vera in red from chapel"),
    ("ana", Why.CAR, "mill-maren", "vera", ((Kind.CREW_THERE, "chapel"), (Kind.CREW_LEFT, "chapel")),
     "goes ; out ana+jonas; lacks poles+cup of van; by:takes! | vera in red from None"),
    ("ana", Why.OWN_SAFETY, "mill-maren", "jonas", (),
     "goes ; out ana+jonas; lacks coat of red; by:takes! | jonas in van from None"),
    ("ana", Why.CAR, "mill-maren", "sasha", (),
     "goes ; out ana+jonas; lacks poles+cup+coat of van; by:takes! | sasha in None from None"),
    ("ana", Why.CAR, "barn-maren", "vera", (),
     "goes ; out ana+jonas; lacks poles+cup of van; by:takes! | vera in red from None"),
    ("ana", Why.CAR, "barn-maren", "vera", ((Kind.CREW_THERE, "chapel"),),
     "goes ; out ana+jonas; lacks poles+cup of van; by:takes! | vera in red from None"),
    ("tomas", Why.PACER, "moss-maren", "piet", (),
     "goes vera+tomas; out ; lacks cup of van; by:takes! | vera in red from hotel, pacer piet"),
    ("tomas", Why.PACER, "moss-maren", "ana", (),
     "goes vera+tomas; out ; lacks cup of van; no pacer tomas; with:fell! | vera in red from hotel"),
    ("vera", Why.NOT_SAID, "moss-maren", "piet", (),
     "goes ; out vera+tomas; lacks poles+cup+coat of red; by:takes! |  in red from hotel, pacer piet"),
    ("vera", Why.NOT_SAID, "moss-maren", "ana", (),
     "goes ; out vera+tomas; lacks poles+coat of red; no pacer tomas; by:takes! | ana in van from None"),
]  # fmt: skip


@pytest.mark.parametrize(("fell", "why", "meeting", "taker", "more", "stand"), TAKEN)
def test_who_takes_it_over_comes_in_their_own_car_from_where_they_are(
    night: Any, fell: str, why: Why, meeting: str, taker: str, more: tuple[tuple[Kind, str], ...], stand: str
) -> None:
    """With what lies in that car; a pacer takes the running over and not the meeting; where others still go nobody can."""
    assert stand_of(taken_over(night, fell, why, meeting, taker, *more), meeting) == stand


def test_where_nobody_fell_out_or_it_is_covered_already_nothing_changes(night: Any, at: Any) -> None:
    """The very same situation; and what would be if somebody else took it over is asked of the plan anew."""
    calm = night.situation(at("14:00"))
    assert covered(calm) is calm
    once = taken_over(night, "ana", Why.CAR, "mill-maren", "vera")
    assert covered(once) is once
    assert once.planned is night.event
    other = covered_by(once, "mill-maren", "sasha")
    assert [m.crew for m in other.event.meetings if m.id == "mill-maren"] == [("sasha",)]
    assert [u.taken.person for u in other.uncovered if u.taken is not None] == ["sasha"]
