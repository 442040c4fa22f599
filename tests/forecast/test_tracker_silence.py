"""A tracker that used to send and went quiet is evidence like a reporter's silence, but nobody to ask."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from server.api.building import Built, build
from server.event.model import Goal
from server.facts.entry import Entry, Fix, Kind, Source
from server.facts.fold import fold
from server.facts.state import RaceState
from server.forecast.bridge import outlook
from server.forecast.in_event import EventOutlook
from tests.whole import hill

STARTS = datetime(2027, 6, 19, 20, 0, tzinfo=hill.ZONE)
MINUTE = timedelta(minutes=1)


@pytest.fixture(scope="module")
def built() -> Built:
    return build(hill.event_text(STARTS), hill.files())


def state(built: Built, fixes: int, source: Source = Source.TRACKER, ended: bool = False) -> RaceState:
    """Out of the mill by goal B, and so many fixes of hers after it, ten minutes apart."""
    out = STARTS + built.timetables[hill.RUNNER].row("hollin").leave[Goal.B]
    entries = [_entry(Kind.OUT, out, "vera", Source.VOLUNTEER, point="hollin")]
    for k in range(fixes):
        spot = built.courses[built.event.courses[0].id].at(19.0 + k)
        at = out + 10 * (k + 1) * MINUTE
        entries.append(_entry(Kind.POSITION, at, "maren", source, fix=Fix(spot.lat_deg, spot.lon_deg, 10.0)))
    last = entries[-1].seen_at
    if ended:
        entries.append(_entry(Kind.CONTACT_LOST, last + MINUTE, "maren", Source.SERVER))
    return fold(entries, built.event, last + 2 * MINUTE, built.placer)


def _entry(kind: Kind, at: datetime, by: str, source: Source, **more: object) -> Entry:
    name = f"{kind.value}-{at:%H%M%S}"
    return Entry(name, hill.EVENT, hill.RUNNER, kind, at, at, at, by, source, by, name, **more)  # type: ignore[arg-type]


def forecast(built: Built, race: RaceState) -> EventOutlook:
    runner = race.runner(hill.RUNNER)
    return outlook(
        built.event, runner, race, built.timetables[hill.RUNNER], built.courses[built.event.courses[0].id]
    )


def test_its_silence_counts_once_she_would_be_where_it_would_send(built: Built) -> None:
    """Past the tarn, the next point with signal: clearly less is left of P(not heard | going on), never under half."""
    found = forecast(built, state(built, 4))
    (beside,) = found.silence.beside
    assert (beside.chance, found.ids[beside.point]) == (0.5, "tarn")
    without = replace(found, silence=replace(found.silence, beside=()))
    late = STARTS + timedelta(hours=7)
    assert 0.5 <= found.at(late).p_unheard() / without.at(late).p_unheard() < 0.8
    assert found.at(late).engine.probability_going() < without.at(late).engine.probability_going()


def test_it_is_nobody_to_ask(built: Built) -> None:
    """Where she is next asked about, and when, is the same with and without."""
    found = forecast(built, state(built, 4))
    assert found.late_time() == replace(found, silence=replace(found.silence, beside=())).late_time()


@pytest.mark.parametrize(
    ("fixes", "source", "ended"),
    [
        (2, Source.TRACKER, False),
        (4, Source.CREW, False),
        (4, Source.TRACKER, True),
        (0, Source.TRACKER, False),
    ],
)
def test_what_never_sent_regularly_or_was_ended_says_nothing(
    built: Built, fixes: int, source: Source, ended: bool
) -> None:
    """Two fixes, a place her crew shared, a share that she ended."""
    assert forecast(built, state(built, fixes, source, ended)).silence.beside == ()
