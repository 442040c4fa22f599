"""Reports that were guessed or don't fit: kept, shown as such, and asked about once nobody has settled them."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from server.event.model import PartKind
from server.facts.entry import CHECK_INS, Kind, Retired
from server.facts.state import Going
from server.watch.climb import open_alarms
from server.watch.notice import DoubtValues, NoticeKind, Urgency
from server.watch.places import may_be_asked, on_road_until
from server.watch.sight import Draft, Rule, Sight, Wake

__all__ = ["RULES"]

REPORTER_FIRST = timedelta(minutes=2)
"""Whoever reported it is asked in the conversation at once; the others only after this."""
DOES_NOT_FIT = "does not fit"


def unconfirmed(sight: Sight) -> Iterator[Draft | Wake]:
    """Crew off the road and the organiser are asked: right or wrong? Help never waits for this.

    While an alarm is open the safety contact hears of it too: a doubtful sighting is what they are waiting for. And
    where nobody is looking for her because she 'did not start': then all are asked at once, and no choice holds it back.
    """
    state = sight.state
    unwatched = state.retirement is not None and state.retirement.how is Retired.DID_NOT_START
    loud = unwatched or bool(open_alarms(sight.made))
    if state.going is Going.CLOSED and not loud:
        return
    missed = set(sight.people(PartKind.SAFETY_CONTACT)) if loud else set()
    asked = dict.fromkeys([*sight.people(PartKind.CREW, PartKind.PACER, PartKind.ORGANISER), *sorted(missed)])
    doubted = [(e, e.doubt) for e in state.unconfirmed] + [
        (e, e.doubt or DOES_NOT_FIT) for e in state.refused
    ]
    for e, doubt in doubted:
        if e.kind not in CHECK_INS or e.kind is Kind.ASKED_FOR_HELP:
            continue
        due = e.received_at + (timedelta(0) if unwatched else REPORTER_FIRST)
        if sight.now < due:
            yield Wake(due)
            continue
        values = DoubtValues(e.id, e.kind.value, e.point, e.seen_at, e.by, doubt, e.words)
        for who in asked:
            if not may_be_asked(sight, who):
                road = on_road_until(sight, who)
                yield from () if road is None else (Wake(road),)
                continue
            if who != e.by:
                yield Draft(
                    NoticeKind.UNCONFIRMED,
                    who,
                    e.point or "",
                    e.id,
                    due,
                    values,
                    (e.id,),
                    urgency=Urgency.ACTION if unwatched else None,
                    mine=unwatched or who in missed,
                )


RULES: tuple[Rule, ...] = (unconfirmed,)
