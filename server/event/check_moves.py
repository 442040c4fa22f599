"""Cross checks on movements: places, drives that no car can do, pacers who join and leave, sleeps, relay shares."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from itertools import pairwise

from geopy.distance import geodesic

from server.event.context import At
from server.event.model import Drive, MeetingPlan, PartKind
from server.event.parse_state import ParseState
from server.sentences import say

ONE_SITE_M = 150.0
"""Car parks nearer than this are one (own choice): nobody moves a car for it."""
FASTEST_KMH = 130.0
"""No drive is on average faster than this over the straight line (own choice: motorway speed)."""
LONGEST_AWAKE = timedelta(hours=48)


def check_moves(draft: ParseState) -> None:
    """Note every mistake about how people and cars move."""
    _places(draft)
    for d in draft.drives:
        _drive(draft, d)
    _crew_hours(draft)
    for runner in draft.runners:
        _pacers(draft, runner.value.id)
    _company(draft)
    _awake(draft)
    _shares(draft)


def _places(draft: ParseState) -> None:
    points = {p.value.id for p in draft.points}
    for place in draft.places:
        if place.value.id in points:
            what = say("wrong-place-id-point", id=place.value.id)
            draft.report.error((*place.path, "id"), what, say("do-points-places-already-leave-out"))
    ids = [p.value.id for p in draft.places]
    for p in draft.points:
        access = p.value.access
        if access is None or not access.place:
            continue
        path = (*p.path, "crew", "place")
        if access.place in ids and access.lat is not None:
            what = say("wrong-lat-lon-so-place", name=p.value.name, place=access.place)
            draft.report.error(path, what, say("do-keep-them-place-only"))


def spots_of(draft: ParseState) -> dict[str, tuple[float, float]]:
    """Where each place with coordinates is, points by their car park."""
    found = {
        p.value.id: (p.value.lat, p.value.lon)
        for p in draft.places
        if p.value.lat is not None and p.value.lon is not None
    }
    for p in draft.points:
        a = p.value.access
        if a is not None and a.lat is not None and a.lon is not None:
            found[p.value.id] = (a.lat, a.lon)
        elif a is not None and a.place in found:
            found[p.value.id] = found[a.place]
    return found


def _drive(draft: ParseState, d: At[Drive]) -> None:
    v = d.value
    if v.minutes is None:
        return
    for key, extra in (("traffic_minutes", v.traffic), ("fuel_minutes", v.fuel_stop)):
        if extra:
            what = say("wrong-given-beside-minutes-whole-drive", key=key)
            draft.report.warn((*d.path, key), what, say("do-count-into-minutes-leave-out", key=key))
    spots = spots_of(draft)
    if v.from_place in spots and v.to_place in spots:
        km = geodesic(spots[v.from_place], spots[v.to_place]).km
        if km / v.minutes * 60.0 > FASTEST_KMH:
            what = say("wrong-minutes-km-straight-line-faster", minutes=f"{v.minutes:g}", km=f"{km:.0f}")
            draft.report.error((*d.path, "minutes"), what, say("do-check-minutes-lat-lon-both"))


def _crew_hours(draft: ParseState) -> None:
    """'No crew before TIME' against the race and against each access."""
    first = draft.rules.crew_not_before
    if first is None or not draft.starts_known:
        return
    if first >= draft.starts + (draft.limit or timedelta(days=14)):
        what = say("wrong-rules-allow-crew-only-once")
        draft.report.error(("rules", "crew_not_before"), what, say("do-check-day-time"))
        return
    access = {p.value.id: p.value.access for p in draft.points}
    for m in draft.meetings:
        a = access.get(m.value.point)
        if a is not None and a.closes is not None and a.closes <= first:
            what = say("wrong-closes-before-rules-allow-crew", point=m.value.point)
            draft.report.error((*m.path, "point"), what, say("do-leave-meeting-out"))


def _in_order(draft: ParseState, runner: str) -> list[At[MeetingPlan]]:
    order = {p.value.id: i for i, p in enumerate(draft.points)}
    mine = [m for m in draft.meetings_with(runner) if m.value.point in order]
    return sorted(mine, key=lambda m: order[m.value.point])


def _pacers(draft: ParseState, runner: str) -> None:
    """Who is with her from meeting to meeting: nobody leaves who never joined, nor crews while pacing."""
    with_her: set[str] = set()
    for m in _in_order(draft, runner):
        v = m.value
        if v.pacer_joins is not None and v.pacer_joins == v.pacer_leaves:
            what = say("wrong-joins-leaves-same-meeting", pacer_joins=v.pacer_joins)
            draft.report.error((*m.path, "pacer_leaves"), what, say("do-let-two-another-meeting"))
            continue
        if v.pacer_leaves is not None:
            if v.pacer_leaves not in with_her:
                what = say("wrong-leaves-here-but-joins-no", pacer_leaves=v.pacer_leaves)
                draft.report.error((*m.path, "pacer_leaves"), what, say("do-add-pacer-joins-earlier-meeting"))
            with_her.discard(v.pacer_leaves)
        for i, person in enumerate(v.crew):
            if person in with_her:
                what = say("wrong-crew-but-foot-then-pacer", person=person)
                draft.report.error((*m.path, "crew", i), what, say("do-take-name-out-add-pacer"))
        if v.pacer_joins is None:
            continue
        if v.pacer_joins in with_her:
            what = say("wrong-joins-here-but-already", pacer_joins=v.pacer_joins)
            draft.report.error((*m.path, "pacer_joins"), what, say("do-add-pacer-leaves-meeting-between"))
        with_her.add(v.pacer_joins)
        _pace_from(draft, m, v.pacer_joins)


def _pace_from(draft: ParseState, m: At[MeetingPlan], person: str) -> None:
    parts = [p.value for p in draft.parts_of(person) if p.value.kind is PartKind.PACER]
    said = [p.pace_from for p in parts if p.runner in (None, m.value.runner) and p.pace_from is not None]
    order = {p.value.id: i for i, p in enumerate(draft.points)}
    begins = min((order[p] for p in said if p in order), default=0)
    if order[m.value.point] < begins:
        what = say("wrong-joins-but-said-pace-only", person=person, point=m.value.point, said=said[0])
        draft.report.warn((*m.path, "pacer_joins"), what, say("do-make-pace-from-meeting-agree"))


def _company(draft: ParseState) -> None:
    """Names twice in one meeting, crew who run themselves, a car that comes from where it goes, no driver."""
    running = {r.value.person: r.value.name for r in draft.runners}
    herself = {(r.value.person, r.value.id) for r in draft.runners}
    drivers = {p.value.person for p in draft.parts if p.value.drives}
    for m in draft.meetings:
        v = m.value
        for i, person in enumerate(v.crew):
            if person in v.crew[:i]:
                draft.report.error(
                    (*m.path, "crew", i), say("wrong-named-twice", name=person), say("do-keep")
                )
            if (person, v.runner) in herself:
                what = say("wrong-cannot-crew-meets", running=running[person])
                draft.report.error((*m.path, "crew", i), what, say("do-name-somebody-else"))
        if v.from_place is not None and v.from_place == v.point:
            what = say("wrong-crew-come-from-itself", point=v.point)
            draft.report.error((*m.path, "from"), what, say("do-leave-from-out-name-where"))
        if v.car is not None and v.crew and drivers and not drivers & set(v.crew):
            what = say("wrong-nobody-goes-said-drive", car=v.car)
            draft.report.warn((*m.path, "crew"), what, say("do-add-drives-true-part-them"))


def _awake(draft: ParseState) -> None:
    for p in draft.parts:
        since, sleeps = p.value.awake_since, p.value.sleeps
        if since is not None and draft.starts_known and draft.starts - since > LONGEST_AWAKE:
            what = say("wrong-would-been-awake-over-two", person=p.value.person)
            draft.report.error((*p.path, "awake_since"), what, say("do-check-day-time"))
        over = draft.starts + (draft.limit or timedelta(days=14))
        if since is not None and draft.starts_known and since > over:
            what = say("wrong-awake-only-after-race", person=p.value.person)
            draft.report.error((*p.path, "awake_since"), what, say("do-check-day-time"))
        ordered = sorted(sleeps, key=lambda s: s.start)
        if any(b.start < a.end for a, b in pairwise(ordered)):
            what = say("wrong-two-sleeps-overlap", person=p.value.person)
            draft.report.error((*p.path, "sleeps"), what, say("do-join-them-into"))


def _shares(draft: ParseState) -> None:
    runners = {r.value.id: r.value for r in draft.runners}
    for runner in runners.values():
        order = {p.value.id: i for i, p in enumerate(draft.points_of(runner.course))}
        mine = draft.shares_with(runner.id)
        ends = [
            (draft.known((*s.path, key), "point", point, order) and bool(point))
            for s in mine
            for key, point in (("from", s.value.from_point), ("to", s.value.to_point))
        ]
        if mine and all(ends):
            _relay(draft, runner.id, order)


def _relay(draft: ParseState, runner: str, order: dict[str, int]) -> None:
    """The shares of one team follow each other from start to finish without gap or overlap."""
    mine = sorted(draft.shares_with(runner), key=lambda s: order[s.value.from_point])
    here = 0
    names = list(order)
    for s in mine:
        first, last = order[s.value.from_point], order[s.value.to_point]
        if last <= first:
            what = say(
                "wrong-share-from-ends-comes-before", from_point=s.value.from_point, to_point=s.value.to_point
            )
            draft.report.error((*s.path, "to"), what, say("do-exchange-two-correct"))
            return
        if first != here:
            gap = say("wrong-nobody-runs") if first > here else say("wrong-two-people-run")
            low, high = sorted((first, here))
            what = say("wrong-from", gap=gap, names=names[low], names2=names[high])
            draft.report.error((*s.path, "from"), what, say("do-let-each-share-begin-where"))
        here = last
    if here != len(names) - 1:
        what = say("wrong-nobody-runs-from", names=names[here], names2=names[-1])
        draft.report.error((*mine[-1].path, "to"), what, say("do-add-share-up-finish"))
    for m, person in _crewing(draft, runner):
        at = order.get(m.value.point, -1)
        for s in mine:
            if s.value.person == person and order[s.value.from_point] < at < order[s.value.to_point]:
                what = say("wrong-crew-but-runs-share-then", person=person)
                draft.report.error((*m.path, "crew"), what, say("do-name-somebody-else"))


def _crewing(draft: ParseState, runner: str) -> Iterator[tuple[At[MeetingPlan], str]]:
    for m in draft.meetings_with(runner):
        yield from ((m, person) for person in m.value.crew)
