"""Hours awake at the wheel: a drive that ends past 17 h awake is flagged, with what could be done instead.

17 h without sleep cost about as much as 0.05% alcohol in the blood (Williamson & Feyer 2000, Occup Environ Med
57:649, from memory): many countries let nobody drive so.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

import numpy as np

from server.event.model import Event
from server.plan.movements.joint import moment
from server.plan.movements.times import TimedTrip
from server.plan.movements.trips import drivers_of
from server.plan.movements.values import MovementTrouble, Offer, OfferKind, TroubleKind
from server.plan.notes import Saying, saying

LONGEST = timedelta(hours=17)
SLEEP_LEAST = timedelta(minutes=90)
"""A gap shorter than this is no sleep worth offering (common practice, no source)."""
RISE = timedelta(hours=7)
"""Where nobody says, a driver is taken to be awake since 07:00 on the event's clock, or since an hour before they are first
on the road, driving or not; the plan notes that it assumed so."""
BEFORE_FIRST = timedelta(hours=1)
UP_BEFORE = timedelta(hours=3)
"""Who would have to be up earlier than that has not been to bed (own choice)."""


@dataclass(frozen=True, slots=True)
class Wheel:
    """One drive of one person: from when to when, likely (50%), to which meeting, and since when they are free."""

    person: str
    meeting: str
    car: str
    start: datetime
    end: datetime
    free_from: datetime | None
    riders: tuple[str, ...]
    needed: bool
    """Whether torch, warm layer, pacer or hand-over hangs on the meeting, somebody is fetched there, or it is the finish:
    then it is never offered to leave it out."""


def needed(event: Event, t: TimedTrip) -> bool:
    """Whether a meeting is never offered to be left out (see `Wheel.needed`)."""
    finish = event.course_of(t.trip.plan.runner).point(t.trip.plan.point).finish
    return t.sure > 0.98 or bool(t.trip.leaves) or finish


def wheels(event: Event, timed: Sequence[TimedTrip]) -> tuple[Wheel, ...]:
    """Every drive, in order of time."""
    found = []
    gone: dict[str, datetime] = {}
    for t in timed:
        for leg in t.trip.legs:
            drive = t.journeys[leg.key].drive
            if leg.driver is not None and drive is not None and drive > timedelta(0):
                end = moment(float(np.median(t.there_by[leg.key])))
                start = end - (t.journeys[leg.key].whole or drive)
                others = tuple(w for w in leg.riders if w != leg.driver)
                free = gone.get(leg.driver)
                found.append(
                    Wheel(leg.driver, t.trip.plan.id, leg.key, start, end, free, others, needed(event, t))
                )
            for who in leg.riders:
                gone[who] = moment(float(np.median(t.gone_by[leg.key])))
        for who in t.trip.leaves:
            gone[who] = moment(float(np.median(t.gone_s)))
    return tuple(found)


def awake_since(event: Event, person: str, at: datetime, first: datetime) -> tuple[datetime, bool]:
    """Since when a person will have been awake at `at`, and whether that had to be assumed.

    `first`: when they are first on the road. Sleeps that are over by `at` count; one that is going on does not.
    """
    parts = event.parts_of(person)
    woke = [s.end for p in parts for s in p.sleeps if s.end <= at]
    said = [p.awake_since for p in parts if p.awake_since is not None and p.awake_since <= at]
    if woke or said:
        return max([*woke, *said]), False
    zone, up = ZoneInfo(event.time_zone), first - BEFORE_FIRST
    day = (up.astimezone(zone).replace(tzinfo=None) - UP_BEFORE).date()
    risen = (datetime.combine(day, time()) + RISE).replace(tzinfo=zone)
    return min(risen, up), True


def tired(
    event: Event, drives: Sequence[Wheel]
) -> tuple[tuple[MovementTrouble, ...], tuple[Offer, ...], tuple[Saying, ...]]:
    """Drives past 17 h awake or in a sleep, what could be done about each, and for whom a time of waking was assumed."""
    first = {who: w.start for w in reversed(drives) for who in (w.person, *w.riders)}
    troubles: list[MovementTrouble] = []
    offers: list[Offer] = []
    assumed: dict[str, datetime] = {}
    for w in drives:
        since, guessed = awake_since(event, w.person, w.end, first[w.person])
        if guessed:
            assumed.setdefault(w.person, since)
        troubles += _asleep(event, w)
        awake = w.end - since
        if awake <= LONGEST:
            continue
        hours = round(awake / timedelta(hours=1), 1)
        said = saying("move-awake", person=event.person(w.person).name, awake_h=hours)
        troubles.append(
            MovementTrouble(TroubleKind.AWAKE, w.meeting, said, person=w.person, car=w.car, hours=hours)
        )
        offers += _instead(event, w, first)
    notes = tuple(
        saying("move-awake-assumed", person=event.person(p).name, since_at=s.timestamp())
        for p, s in assumed.items()
    )
    return tuple(troubles), tuple(offers), notes


def _asleep(event: Event, w: Wheel) -> Iterator[MovementTrouble]:
    """A drive in a sleep that its driver means to have: one of the two will not be."""
    for s in (s for p in event.parts_of(w.person) for s in p.sleeps):
        if s.start < w.end and w.start < s.end:
            said = saying(
                "move-asleep",
                person=event.person(w.person).name,
                from_at=s.start.timestamp(),
                until_at=s.end.timestamp(),
            )
            yield MovementTrouble(TroubleKind.ASLEEP, w.meeting, said, person=w.person, car=w.car)


def _instead(event: Event, w: Wheel, first: Mapping[str, datetime]) -> Iterator[Offer]:
    drivers = drivers_of(event)
    for other in w.riders:
        since, _ = awake_since(event, other, w.end, first.get(other, w.start))
        if other in drivers and w.end - since <= LONGEST:
            said = saying("move-swap", person=event.person(other).name)
            yield Offer(OfferKind.SWAP_DRIVER, w.meeting, said, person=other, car=w.car)
    if w.free_from is not None and w.start - w.free_from >= SLEEP_LEAST:
        said = saying(
            "move-sleep",
            person=event.person(w.person).name,
            from_at=w.free_from.timestamp(),
            until_at=w.start.timestamp(),
        )
        yield Offer(OfferKind.SLEEP, w.meeting, said, person=w.person, start=w.free_from, end=w.start)
    if not w.needed:
        yield Offer(OfferKind.SKIP, w.meeting, saying("move-skip"), person=w.person, car=w.car)
