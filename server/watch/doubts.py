"""Reports that were guessed or don't fit: kept, shown as such, and asked about once nobody has settled them."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from server.event.model import PartKind
from server.facts.entry import CHECK_INS, Entry, Kind, Retired
from server.facts.hearsay import is_hearsay
from server.facts.state import Going
from server.watch.crew_routes import members
from server.watch.crew_whereabouts import may_be_asked, on_road_until, plans_of, there_at
from server.watch.escalation_state import open_alarms, replay
from server.watch.hearsay import asked_of, overtaken
from server.watch.notice import AlarmValues, DoubtValues, NoticeKind, Urgency
from server.watch.runner_context import Draft, Rule, Sight, Wake
from server.watch.silence import elsewhere, with_her

__all__ = ["RULES"]

REPORTER_FIRST = timedelta(minutes=2)
"""Whoever reported it is asked in the conversation at once; the others only after this."""
OF_USE = timedelta(minutes=20)
"""So long after it was due the question is put to nobody anew (own choice): then later facts have said more than anybody
could remember. Not while an alarm is open, or nobody looks for her."""
DOES_NOT_FIT = "does not fit"


def unconfirmed(sight: Sight) -> Iterator[Draft | Wake]:
    """Those who can know are asked while it is of use, off the road: right or wrong? Help never waits for this.

    While an alarm is open its holder and the safety contact hear of it too, unless those words were passed on to them:
    a doubtful sighting is what they are waiting for. And where nobody is looking for her because she 'did not start':
    then all are asked at once, and no choice holds it back. So it is where her race is said to be over: that is asked of
    everybody near her and of herself.
    """
    state = sight.state
    unwatched = state.retirement is not None and state.retirement.how is Retired.DID_NOT_START
    loud = unwatched or bool(open_alarms(sight.made))
    if state.going is Going.CLOSED and not loud:
        return
    missed = {*sight.people(PartKind.SAFETY_CONTACT), *_holders(sight)} if loud else set()
    everybody = [*sight.people(PartKind.CREW, PartKind.PACER, PartKind.ORGANISER), *sorted(missed)]
    doubted = [(e, e.doubt) for e in state.unconfirmed] + [
        (e, e.doubt or DOES_NOT_FIT) for e in state.refused
    ]
    for e, doubt in doubted:
        if e.kind not in CHECK_INS or e.kind is Kind.ASKED_FOR_HELP:
            continue
        if overtaken(sight, e) or (e.kind is Kind.RETIRED and state.retirement is not None):
            continue
        if not loud and _seen_since(sight, e):
            continue
        over = e.kind is Kind.RETIRED
        at_once = unwatched or (over and is_hearsay(e))
        due = e.received_at + (timedelta(0) if at_once else REPORTER_FIRST)
        if sight.now < due:
            yield Wake(due)
            continue
        values = DoubtValues(e.id, e.kind.value, e.point, e.seen_at, e.by, doubt, e.words)
        told = {m.notice.key.person for m in sight.told(NoticeKind.WORD_OF_HER) if e.id in m.notice.facts}
        home = (p for p in sorted(missed) if p not in told)
        known = everybody if unwatched else (*_could_know(sight, e), *home)
        for who in dict.fromkeys((*everybody, *asked_of(sight)) if over else known):
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
                    use_by=None if loud or over else due + OF_USE,
                    urgency=Urgency.ACTION if unwatched or over else None,
                    mine=unwatched or over or who in missed,
                )


def _holders(sight: Sight) -> Iterator[str]:
    for alarm in open_alarms(sight.made):
        values = ((m, m.notice.values) for m in sight.made)
        stand = replay(m for m, v in values if isinstance(v, AlarmValues) and v.alarm == alarm)
        yield from (stand.holder,) if stand.holder else ()


def _seen_since(sight: Sight, e: Entry) -> bool:
    """Whether she was seen later than that for certain, so that it changes nothing: of what she did and how her race
    ended it does."""
    last = sight.state.last_known
    return e.kind in _SEEN and last is not None and last.at >= e.seen_at


_SEEN = frozenset({Kind.IN, Kind.THROUGH, Kind.POSITION, Kind.MOVING_AGAIN, Kind.RESTING})


def _could_know(sight: Sight, e: Entry) -> Iterator[str]:
    """Who is at the place, or meant to be, and is not known elsewhere; a pacer with her; the organiser. Where there is no
    such crew but who reported it, those of her next meeting; not of what was seen at no named place."""
    yield from sight.people(PartKind.ORGANISER)
    yield from (p for p in sight.people(PartKind.PACER) if with_her(sight, p))
    plans = plans_of(sight)
    last = sight.state.last_known
    point = e.point or (None if last is None else last.point)
    meet = [w for m in plans if m.point == point for w in members(sight.event, m)]
    near = [
        w
        for w in dict.fromkeys((*sight.people(PartKind.CREW), *meet))
        if point is not None
        and (there_at(sight, point, w) is not None or (w in meet and not elsewhere(sight, w, point)))
    ]
    if (near != [e.by] and near) or e.point is None:
        yield from near
        return
    ahead = [m for m in plans if m.point != point and not sight.reached(m.point)]
    yield from (w for m in ahead[:1] for w in members(sight.event, m))


RULES: tuple[Rule, ...] = (unconfirmed,)
