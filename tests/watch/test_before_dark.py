"""She slows, and the dark is there before her torch: who is told, when, and where it can still be handed over."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from server.course import build_course, read_gpx
from server.event.model import KitItem
from server.facts.entry import Kind
from server.watch.notice import NoticeKind as K
from tests.plan.conftest import gpx

TORCH = KitItem("head torch")
"""On that line, at 54 degrees north in June, the sun sets about twenty to nine by UTC."""


@pytest.fixture(scope="module")
def line() -> Any:
    """105 km to the north, level."""
    points = [(53.5 + k * 0.0059, -2.0, 100.0) for k in range(161)]
    return build_course(read_gpx(gpx(points), "line.gpx"), stated_km=105.0)


@pytest.fixture
def lit(new_night: Any, line: Any) -> Any:
    """A night that knows its course; the torch waits at the point given, and nowhere else."""

    class Lit(new_night):  # type: ignore[misc]
        def situation(self, now: Any) -> Any:
            return replace(super().situation(now), courses={"main": line})

    def made(torch_at: str, **runner: Any) -> Any:
        night = Lit()
        meetings = tuple(
            replace(m, kit=(TORCH,) if m.point == torch_at else (KitItem("poles"),))
            for m in night.event.meetings
        )
        own = (replace(night.event.runners[0], **runner),)
        night.event = replace(night.event, meetings=meetings, runners=own)
        return night

    return made


def told(night: Any) -> set[str]:
    """Who was told."""
    return {m.notice.key.person for m in night.got(K.BEFORE_DARK)}


def test_a_torch_that_waits_beyond_the_sunset(lit: Any, at: Any) -> None:
    """It waits at Moss at ten; she is at Chapel at twenty past seven: both crews, the pacer and she hear of it at Mill,
    once, with the place to hand it over instead."""
    night = lit("moss")
    night.report(Kind.IN, "16:30", point="mill")
    night.run("16:30", "18:00")
    assert told(night) == {"ana", "jonas", "vera", "tomas", "maren"}
    assert len(night.got(K.BEFORE_DARK)) == 5
    values = night.got(K.BEFORE_DARK, "maren")[0].notice.values
    assert (values.point, values.give_at, values.things) == ("moss", "chapel", ("head torch",))
    assert at("20:25") <= values.dark <= at("20:55")


def test_on_time_nobody_hears_of_it(lit: Any) -> None:
    """It waits at Chapel, where she is in the light even if she is slow."""
    night = lit("chapel")
    night.report(Kind.IN, "16:30", point="mill")
    night.report(Kind.OUT, "16:35", point="mill")
    night.run("16:30", "18:00")
    assert not told(night)


def test_she_slows_and_stands_where_it_is(lit: Any) -> None:
    """Hours late at Mill, met by those who have it for Chapel: she is given it there, now."""
    night = lit("chapel")
    night.report(Kind.IN, "18:40", point="mill")
    night.run("18:40", "18:42")
    assert told(night) == {"ana", "jonas", "maren"}
    values = night.got(K.BEFORE_DARK, "ana")[0].notice.values
    assert (values.give_at, values.give_window) == ("mill", None)


def test_too_early_to_be_of_use(lit: Any) -> None:
    """It waits at Barn, after three in the morning; the last meeting in the light is Chapel: told three hours before it."""
    night = lit("barn")
    night.run("14:05", "14:10")
    assert not told(night)
    night.run("16:19", "16:25")
    assert told(night) == {"ana", "jonas", "vera", "tomas", "maren"}


@pytest.mark.parametrize("own", [{"carries": (TORCH,)}, {"torch": "head torch in the pack"}])
def test_who_has_one_needs_no_word(lit: Any, own: Any) -> None:
    """She has a light on her: nothing is said."""
    night = lit("moss", **own)
    night.report(Kind.IN, "16:30", point="mill")
    night.run("16:30", "18:00")
    assert not told(night)


def test_a_start_before_sunrise_is_no_torch_that_comes_too_late(lit: Any, at: Any) -> None:
    """Off at two in the morning, her torch for the evening at Moss at ten: nobody is sent there early for the dark that she
    began in."""
    night = lit("moss", start=at("2:00"))
    night.report(Kind.OUT, "2:01", point="start")
    night.run("2:01", "2:04")
    assert not told(night)
