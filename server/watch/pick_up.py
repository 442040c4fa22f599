"""Fetching a runner whose race is over: where she is, whose car is nearest and free, what the race itself offers.

One person is asked at a time, the nearest first; the others are told, and the next is asked where nobody answers. A drive
that nobody stands by orders the cars as well: here it sets no leave-by.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import partial

from server.event.model import Part, PartKind
from server.facts.entry import Retired
from server.facts.state import Retirement
from server.plan.movements.roads import Roads, course_spots
from server.watch.crew_routes import members
from server.watch.crew_whereabouts import on_road_until, plans_of, there_at
from server.watch.meetings import meetings
from server.watch.news_values import Fetcher, PickUp
from server.watch.notice import Answer, Made, NoticeKind
from server.watch.runner_context import Sight

__all__ = ["FetchAsked", "asking", "fetchers", "pick_up", "plan_of_it"]

UNKNOWN_DRIVE = timedelta(hours=1)
"""How long a drive that nobody knows is taken to last, before it is asked how it went (own choice)."""
SPARE = timedelta(minutes=30)
"""So long before their meeting with another runner a driver must be back to count as free (own choice)."""
BRING_MAX = 5
"""So many things of her kit are named to bring along (own choice)."""

_NOT_ABOUT_IT = (Answer.CANNOT.value, Answer.RACE_CONTROL_TOLD.value, Answer.IN_HAND.value)


def fetch_from(sight: Sight, retirement: Retirement) -> str | None:
    """The point to drive to: where she retired if crew may come there, else the nearest on the course that they may come
    to; without a place, the nearest to where she was last known. None for a course that no car comes to."""
    points = sight.event.course_of(sight.runner.id).points
    at = next((p for p in points if p.id == retirement.point), None)
    if at is not None and at.crew_access:
        return at.id
    last = sight.state.last_known
    km = at.km if at is not None else None if last is None else last.km
    open_to_cars = [p for p in points if p.crew_access and p.km is not None]
    if not open_to_cars:
        return None
    return min(open_to_cars, key=lambda p: abs((p.km or 0.0) - (km or 0.0))).id


def fetchers(sight: Sight, retirement: Retirement) -> tuple[Fetcher, ...]:
    """Who could fetch her, the best first: free, then by the drive from where they are; who is on the road counts from
    where they are bound. The drivers; where nobody is said to drive, all the crew."""
    return sight.once(
        ("fetchers", retirement.stamp.entry, len(sight.made)), lambda: _fetchers(sight, retirement)
    )


def _fetchers(sight: Sight, retirement: Retirement) -> tuple[Fetcher, ...]:
    crew = sight.parts(PartKind.CREW)
    drivers = [p for p in crew if p.drives] or list(crew)
    to = fetch_from(sight, retirement)
    courses = sight.situation.courses
    roads = Roads(sight.event, sight.race.drives_confirmed, course_spots(sight.event, courses))
    found = [_fetcher(sight, roads, p, to) for p in {p.person: p for p in drivers}.values()]
    never = timedelta(days=9)
    order = {f.person: n for n, f in enumerate(found)}

    def key(f: Fetcher) -> tuple[bool, timedelta, int]:
        return (bool(f.busy), never if f.drive is None else f.drive, order[f.person])

    return tuple(sorted(found, key=key))


def _fetcher(sight: Sight, roads: Roads, part: Part, to: str | None) -> Fetcher:
    who = part.person
    stands, said = _stands(sight, part)
    way = roads.way(stands, to, sight.now) if stands and to else None
    drive = None if way is None else way.drive
    return Fetcher(
        who,
        part.car or "",
        stands,
        said,
        drive,
        confirmed=way is not None and way.confirmed,
        busy=_busy(sight, who, drive),
    )


def _stands(sight: Sight, part: Part) -> tuple[str | None, bool]:
    """Where a person is, and whether they said so: their own word first, then where they are bound, the last meeting that
    is behind them, and where their car stood."""
    who = part.person
    there = [
        (s.at, p) for p, w, s in sight.race.crew_there if w == who and there_at(sight, p, who) is not None
    ]
    if there:
        return max(there)[1], True
    mine = [m for r in sight.event.runners for m in plans_of(sight, r.id) if who in members(sight.event, m)]
    hers = [m for m in mine if m.runner == sight.runner.id]
    if on_road_until(sight, who) is not None:
        ahead = [m for m in hers if not sight.reached(m.point)] or hers[-1:]
        return (ahead[0].point if ahead else None), False
    behind = [m for m in hers if sight.reached(m.point)]
    if behind:
        return behind[-1].point, False
    own = next((c.starts_at for c in sight.event.cars if c.id == part.car), None)
    return (hers[0].from_place if hers else None) or own, False


def _busy(sight: Sight, who: str, drive: timedelta | None) -> str:
    """The point of a meeting with another runner for which they would not be back in time; '' for none."""
    back = sight.now + 2 * (drive if drive is not None else UNKNOWN_DRIVE) + SPARE
    for other in sight.event.runners:
        state = sight.race.runner(other.id)
        if other.id == sight.runner.id or state.going.race_over:
            continue
        if not any(who in members(sight.event, m) for m in plans_of(sight, other.id)):
            continue
        coming = sight.once(
            ("meetings of", other.id), partial(meetings, sight.situation, other.id, sight.now)
        )
        soon = next((m.point for m in coming if who in m.crew and m.be_there <= back), "")
        if soon:
            return soon
    return ""


def pick_up(sight: Sight, retirement: Retirement) -> tuple[str, ...]:
    """Who has to do with fetching her: who stands where she is, and whoever could drive there."""
    points = {retirement.point} - {None}
    there = [
        w for p in points for w in sight.people(PartKind.CREW) if p and there_at(sight, p, w) is not None
    ]
    drivers = [f.person for f in fetchers(sight, retirement)]
    return tuple(dict.fromkeys((*there, *drivers)))


@dataclass(frozen=True, slots=True)
class FetchAsked:
    """Who has been asked to fetch her so far, in that order; who does it (`goes`), from when; `now` the one whose turn it
    is, None when all have had theirs. `wakes`: when one who has not answered has had their time."""

    people: tuple[str, ...]
    now: str | None
    goes: str | None = None
    since: datetime | None = None
    wakes: tuple[datetime, ...] = ()


def asking(sight: Sight, retirement: Retirement) -> FetchAsked:
    """One after the other, the nearest first, those on the road last; whoever says that they go is the one."""
    entry = retirement.stamp.entry
    order = [f.person for f in fetchers(sight, retirement)]
    order.sort(key=lambda w: on_road_until(sight, w) is not None)
    asked = [w for w in order if _asked(sight, w, entry)]
    taken = [(at, w) for w in (*order, *sight.people(PartKind.CREW)) if (at := _takes_it(sight, w, entry))]
    if taken:
        since, who = min(taken)
        return FetchAsked(tuple(dict.fromkeys((*asked, who))), who, who, since)
    people: list[str] = []
    for who in dict.fromkeys((*asked, *order)):
        people.append(who)
        until = _had_time(sight, who, entry)
        if until is None or sight.now < until:
            return FetchAsked(tuple(people), who, wakes=() if until is None else (until,))
    return FetchAsked(tuple(people), None)


def _about(sight: Sight, who: str, entry: str) -> list[Made]:
    mine = (m for m in sight.told(NoticeKind.RETIRED, who) if entry in m.notice.facts)
    return [m for m in mine if Answer.I_GO.value in m.notice.buttons]


def _asked(sight: Sight, who: str, entry: str) -> bool:
    return bool(_about(sight, who, entry))


def _takes_it(sight: Sight, who: str, entry: str) -> datetime | None:
    """Since when a person has it: any answer but that they can't, or one that is about race control."""
    mine = [m for m in _about(sight, who, entry) if m.answered_at is not None]
    if not mine or mine[-1].answer in _NOT_ABOUT_IT:
        return None
    return mine[-1].answered_at


def _had_time(sight: Sight, who: str, entry: str) -> datetime | None:
    """Until when it is this person's turn; None where they have not been asked."""
    mine = _about(sight, who, entry)
    if not mine:
        return None
    if all(m.failed for m in mine) or any(m.answer == Answer.CANNOT.value for m in mine):
        return sight.now
    return min(m.made_at for m in mine) + sight.event.alarm.answer_within


def plan_of_it(sight: Sight, retirement: Retirement, turn: FetchAsked) -> PickUp | None:
    """The pick-up as it is told; None for one who did not start."""
    if retirement.how is Retired.DID_NOT_START:
        return None
    found = fetchers(sight, retirement)
    mine = next((f for f in found if f.person == (turn.goes or turn.now)), None)
    to = fetch_from(sight, retirement)
    points = {p.id: p for p in sight.event.course_of(sight.runner.id).points}
    at = points.get(retirement.point or "")
    last = sight.state.last_known
    return PickUp(
        to=to,
        last=None if at is not None else last,
        fetcher=mine,
        goes=turn.goes is not None,
        others=tuple(f for f in found if f.person not in turn.people),
        bring=_bring(sight, mine),
        transport=(at.transport if at is not None else "") or sight.event.transport,
        there_by=None if turn.since is None else turn.since + _drive(mine),
    )


def _drive(mine: Fetcher | None) -> timedelta:
    return UNKNOWN_DRIVE if mine is None or mine.drive is None else mine.drive


def _bring(sight: Sight, mine: Fetcher | None) -> tuple[str, ...]:
    """Of her kit what travels in that car to the meetings she will not come to."""
    left = [m for m in plans_of(sight) if not sight.reached(m.point)]
    items = [
        k.name for m in left for k in m.kit if mine is None or not mine.car or (k.car or m.car) == mine.car
    ]
    return tuple(dict.fromkeys(items))[:BRING_MAX]
