"""A small event and readers for the tests of what is told; every text is searched for gaps and words that
mislead."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from server.conversation.telling.reader import Reader
from server.event.model import (
    Contact,
    CourseDef,
    CrewAccess,
    Event,
    Part,
    PartKind,
    Person,
    Point,
    PointKind,
    ReporterKind,
    ReportsThere,
    Rules,
    Runner,
    Signal,
    Stretch,
    Target,
)

NOW = datetime(2027, 6, 19, 14, 10, tzinfo=UTC)
MISLEADING = re.compile(r"\bpassed\b|\bstopped\b|\bdead\b|\bhurry\b|she's out|she’s out", re.IGNORECASE)
# A number with no word near it says nothing at 3 a.m.: a line may not be a number alone.
BARE = re.compile(r"^[\s\d.,:%]+$")


def sound(text: str) -> None:
    """No gaps, no empty lines, no misleading words, no line that is a bare number."""
    assert text.strip(), "an empty text"
    assert "…" not in text, f"a value is missing: {text}"
    assert "{" not in text, f"a value is missing: {text}"
    assert "None" not in text, text
    assert not MISLEADING.search(text), text
    for line in text.split("\n"):
        assert line.strip(), f"an empty line in {text!r}"
        assert not BARE.match(line), f"a bare number: {line!r}"


@pytest.fixture
def check_sound():
    """The check every text has to stand."""
    return sound


@pytest.fixture
def now() -> datetime:
    """Saturday 15:10 in Britain."""
    return NOW


@pytest.fixture
def event() -> Event:
    """Two points to come, one without signal, three people, race control, rescue."""
    start = NOW - timedelta(hours=9)
    reports = (ReportsThere(ReporterKind.VOLUNTEER, 0.9, timedelta(minutes=8)),)
    points = (
        Point("start", "Harrow Fold", 0.0, frozenset({PointKind.START})),
        Point("mill", "Skelter Mill", 21.0, frozenset({PointKind.AID_STATION}), reports=reports),
        Point(
            "lathe",
            "Wether Lathe",
            61.0,
            frozenset({PointKind.CREW_ACCESS}),
            access=CrewAccess(),
            reports=reports,
            signal=Signal.NONE,
        ),
        Point("finish", "Harrow Fold finish", 160.9, frozenset({PointKind.FINISH})),
    )
    stretches = (Stretch(50.0, 58.0, "Moss edge", no_signal=True, escape_route="the track west to the road"),)
    return Event(
        id="e",
        name="The Test Round",
        time_zone="Europe/London",
        starts=start,
        rules=Rules(),
        courses=(CourseDef("c", "route.gpx", points, stretches),),
        runners=(
            Runner(
                "maren",
                "maren",
                "Maren",
                "214",
                "c",
                start,
                Target(finish=timedelta(hours=30)),
                clothing="orange jacket",
                torch="head torch",
            ),
        ),
        people=(
            Person("maren", "Maren", phone="+44 1632 960001"),
            Person("ana", "Ana", phone="+44 1632 960002"),
            Person("ines", "Ines", phone="+44 1632 960003", time_zone="Europe/Berlin", language="de"),
            Person("tomas", "Tomas"),
        ),
        parts=(
            Part("maren", PartKind.RUNNER, "maren"),
            Part("ana", PartKind.CREW, "maren", ladder=2),
            Part("ines", PartKind.SAFETY_CONTACT, "maren", ladder=1, calls_race_control=True),
            Part("tomas", PartKind.PACER, "maren"),
        ),
        race_control=Contact("Race control", "+44 1632 960100"),
        emergency_number="112",
        rescue=Contact("Mountain rescue", "112, ask for it"),
    )


HERE = Reader("en", "Europe/London", "Europe/London")
READERS = {
    "here": HERE,
    "abroad": Reader("en", "Europe/Berlin", "Europe/London"),
    "twelve hours, miles": replace(HERE, clock_12h=True, miles=True),
    "german": Reader("de", "Europe/Berlin", "Europe/London"),
    "french": Reader("fr", "Europe/Paris", "Europe/London"),
}


@pytest.fixture(params=READERS, ids=list(READERS))
def reader(request: pytest.FixtureRequest) -> Reader:
    """Each kind of reader in turn."""
    return READERS[request.param]


@pytest.fixture
def here() -> Reader:
    """English, at the event, 24 h, km."""
    return HERE


@pytest.fixture
def abroad() -> Reader:
    """English, one hour east of the event."""
    return READERS["abroad"]
