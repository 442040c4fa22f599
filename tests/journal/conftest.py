"""An invented event, and makers of entries and notices, for the journal's tests."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from server.event.model import (
    Contact,
    CourseDef,
    Event,
    Part,
    PartKind,
    Person,
    Point,
    PointKind,
    Rules,
    Runner,
    Target,
)
from server.facts.entry import Entry, Kind, Source
from server.journal import Journal
from server.watch.notice import Notice, NoticeKey, NoticeKind, OutageValues, TestAlarmValues, Urgency, Values

START = datetime(2027, 6, 19, 4, 0, tzinfo=UTC)
TEXT = '[event]\nname = "The Long Stile Hundred"\n'
FILES = {"route.gpx": b"<gpx>\x00\xff</gpx>"}


@pytest.fixture
def start() -> datetime:
    """When the invented event starts."""
    return START


@pytest.fixture
def event() -> Event:
    """An event with three points, a runner, two crew and a safety contact."""
    points = tuple(
        Point(i, i.title(), km, frozenset({PointKind.CREW_ACCESS}))
        for i, km in (("start", 0.0), ("mill", 21.3), ("chapel", 40.0))
    )
    return Event(
        id="long-stile",
        name="The Long Stile Hundred",
        time_zone="Europe/London",
        starts=START,
        rules=Rules(),
        courses=(CourseDef("main", "route.gpx", points),),
        runners=(Runner("maren", "maren", "Maren", "214", "main", START, Target(timedelta(hours=29))),),
        people=(
            Person("maren", "Maren"),
            Person("ana", "Ana", channels=("telegram", "email"), email="ana@example.org"),
            Person("jonas", "Jonas"),
            Person("tomas", "Tomas", phone="+44 1632 960012"),
        ),
        parts=(
            Part("maren", PartKind.RUNNER, "maren"),
            Part("ana", PartKind.CREW, "maren", ladder=2),
            Part("jonas", PartKind.CREW, "maren"),
            Part("tomas", PartKind.SAFETY_CONTACT, "maren", ladder=1, can_telephone=True),
        ),
        race_control=Contact("Race control", "+44 1632 960001"),
        emergency_number="112",
        keep_until=START + timedelta(days=90),
    )


@pytest.fixture
async def loaded(journal: Journal, event: Event) -> Journal:
    """A journal with the invented event; Ana and Tomas are on telegram, Jonas nowhere."""
    await journal.store_event(TEXT, FILES, event, "ana", START)
    await journal.bind("ana", "telegram", "111", START)
    await journal.bind("tomas", "telegram", "333", START)
    return journal


def make_entry(key: str = "k1", **changes: Any) -> Entry:
    """A check-in of Maren into the mill, by Ana."""
    base = Entry(
        id="",
        event="long-stile",
        runner="maren",
        kind=Kind.IN,
        seen_at=START + timedelta(hours=3),
        sent_at=START + timedelta(hours=3, minutes=1),
        received_at=START + timedelta(hours=3, minutes=2),
        by="ana",
        source=Source.CREW,
        sender="telegram:111",
        key=key,
        point="mill",
    )
    return replace(base, **changes)


def make_notice(
    person: str = "ana", episode: int = 1, kind: NoticeKind = NoticeKind.ARRIVED, **changes: Any
) -> Notice:
    """A notice of news to a person; `kind` and `episode` make the key."""
    values: Values = OutageValues("telegram", START, None)
    if kind is NoticeKind.TEST_ALARM:
        values = TestAlarmValues(START)
    base = Notice(
        key=NoticeKey("long-stile", "maren", person, kind, "mill", episode),
        urgency=Urgency.NEWS,
        owed_at=START,
        use_by=None,
        needs_answer=False,
        values=values,
    )
    return replace(base, **changes)


@pytest.fixture
def entry() -> Callable[..., Entry]:
    """Makes entries."""
    return make_entry


@pytest.fixture
def notice() -> Callable[..., Notice]:
    """Makes notices."""
    return make_notice
