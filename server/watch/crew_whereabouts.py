"""Where each of the crew is, as far as facts and answers say: on the road, there, or neither known.

A driver on the road is asked nothing: a notice that needs an answer waits, or goes to somebody else.
Facts about crew come as (point, person, stamp). 'Crew left' at a point where they had not been means that
they set out for it; at any other that they left it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from server.event.model import MeetingPlan
from server.facts.state import Stamp
from server.watch.crew_routes import CrewRoute, Party, members, parties_of, plans_in_order, roads_of, way_to
from server.watch.notice import Answer, Made, MeetingValues, NoticeKind
from server.watch.runner_context import Sight, stamps

__all__ = [
    "AWAKE_FOR",
    "awake",
    "company",
    "is_there",
    "last_word",
    "left_again",
    "may_be_asked",
    "on_road_until",
    "parties_to",
    "plans_of",
    "reported_her",
    "set_out",
    "set_out_at",
    "stands_at",
    "way_of",
]

UNKNOWN_DRIVE = timedelta(hours=1)
"""How long somebody counts as on the road whose drive nobody has timed (own choice)."""
SLOW_ROAD = 1.25
"""A drive may take a quarter longer than its figure before the driver counts as off the road (own choice)."""
AWAKE_FOR = timedelta(hours=3)
"""Somebody heard from in their quiet hours counts as awake for so long; after that they may be asleep (own choice)."""
SAME_TRIP = timedelta(hours=6)
"""A departure longer ago than this was for some other meeting (own choice)."""


def plans_of(sight: Sight, runner_id: str | None = None) -> tuple[MeetingPlan, ...]:
    """The meetings of a runner (None = the one in sight), in running order."""
    runner = runner_id or sight.runner.id
    return sight.once(("plans", runner), lambda: plans_in_order(sight.event, runner))


def parties_to(sight: Sight, plan: MeetingPlan) -> tuple[Party, ...]:
    """Car by car who goes to a meeting, and their way."""
    found = sight.once(("parties",), lambda: parties_of(sight.situation))
    if plan.id in found:
        return found[plan.id]
    return (Party(members(sight.event, plan), way_to(sight.event, plan, roads_of(sight.event, sight.race))),)


def _party(sight: Sight, plan: MeetingPlan, who: str) -> Party:
    found = parties_to(sight, plan)
    return next((p for p in found if who in p.people), found[0])


def company(sight: Sight, plan: MeetingPlan, who: str) -> tuple[str, ...]:
    """Those who go to a meeting in one car with somebody; () for one who does not go."""
    people = _party(sight, plan, who).people
    return people if who in people else ()


def way_of(sight: Sight, plan: MeetingPlan, who: str) -> CrewRoute:
    """The way of one who goes to a meeting."""
    return _party(sight, plan, who).way


def is_there(sight: Sight, plan: MeetingPlan, people: Sequence[str] | None = None) -> bool:
    """Whether any of those people (None: any who go to the meeting) are known to be at its point; cars arrive with
    all their people, so that for those of one car one is enough.

    Whoever of them reports her from the point is there, said or not.
    """
    going = members(sight.event, plan) if people is None else people
    if any(there_at(sight, plan.point, who) is not None for who in going):
        return True
    return reported_her(sight, plan, going) or _missed_her_there(sight, plan, going)


def _missed_her_there(sight: Sight, plan: MeetingPlan, people: Sequence[str]) -> bool:
    """Whether one of those who go said 'not here yet' of that point, and has not left it since."""
    if plan.runner != sight.runner.id:
        return False
    said = [n.stamp for n in sight.state.not_yet if n.point == plan.point]
    left = {s.by: _last(sight.race.crew_left, plan.point, s.by) for s in said}
    mine = (s for s in said if s.by in people)
    return any((gone := left[s.by]) is None or gone.at <= s.at for s in mine)


def reported_her(sight: Sight, plan: MeetingPlan, people: Sequence[str] | None = None) -> bool:
    """Whether one of those people (None: any who go to the meeting) reported her at its point."""
    going = members(sight.event, plan) if people is None else people
    if plan.runner != sight.runner.id:
        return False
    times = sight.state.at_point(plan.point)
    if times is None:
        return False
    stamps = (times.arrived, times.left, *times.also_arrived, *times.also_left)
    return any(s is not None and s.by in going for s in stamps)


def there_at(sight: Sight, point: str, who: str) -> datetime | None:
    """Since when a person is at a point; None if never there, or gone again."""
    there = _last(sight.race.crew_there, point, who)
    left = _last(sight.race.crew_left, point, who)
    if there is None or (left is not None and left.at > there.at):
        return None
    return there.at


def stands_at(sight: Sight, who: str) -> str | None:
    """Where a person is by their own word: the last point they said they were at, unless they have left it or set out
    for another since, or were told to: people forget to answer."""
    last = max(((s.at, p) for p, w, s in sight.race.crew_there if w == who), default=None)
    if last is None or there_at(sight, last[1], who) is None:
        return None
    others = [plan for plan in _plans_of(sight, who) if plan.point != last[1]]
    gone = [at for m in others for at in (*_departures(sight, m, who), *_answered_leaving(sight, m, who))]
    sent = (m for plan in others for m in _leave_nows(sight, plan, who))
    gone += [
        m.made_at
        for m in sent
        if m.notice.key.kind is NoticeKind.LEAVE_NOW and m.answer != Answer.CANNOT.value
    ]
    return None if any(at > last[0] for at in gone) else last[1]


def left_again(sight: Sight, point: str, people: Sequence[str]) -> bool:
    """Whether those people were at a point and have left it, by their own word."""
    if any(there_at(sight, point, who) is not None for who in people):
        return False
    return any(
        _last(sight.race.crew_there, point, who) and _last(sight.race.crew_left, point, who) for who in people
    )


def _last(facts: tuple[tuple[str, str, Stamp], ...], point: str, who: str) -> Stamp | None:
    found = [s for p, w, s in facts if (p, w) == (point, who)]
    return max(found, key=lambda s: s.at, default=None)


def set_out(sight: Sight, plan: MeetingPlan, people: tuple[str, ...]) -> bool:
    """Whether one of those people, who go in one car, is known to have set out for a meeting."""
    return set_out_at(sight, plan, people) is not None


def set_out_at(sight: Sight, plan: MeetingPlan, people: tuple[str, ...]) -> datetime | None:
    """When the first of those people set out for a meeting, by a fact or their answer to leave now; None if
    none is known to have."""
    key = ("set out", plan.id, people, len(sight.made))
    return sight.once(key, lambda: _set_out_at(sight, plan, people))


def _set_out_at(sight: Sight, plan: MeetingPlan, people: tuple[str, ...]) -> datetime | None:
    found = [
        at for who in people for at in (*_departures(sight, plan, who), *_answered_leaving(sight, plan, who))
    ]
    recent = [at for at in found if sight.now - at <= SAME_TRIP]
    return min(recent, default=None)


def _departures(sight: Sight, plan: MeetingPlan, who: str) -> Iterator[datetime]:
    way = way_of(sight, plan, who)
    if way.from_place is not None and way.from_place != plan.point:
        left = _last(sight.race.crew_left, way.from_place, who)
        if left is not None:
            yield left.at
    left = _last(sight.race.crew_left, plan.point, who)
    there = _last(sight.race.crew_there, plan.point, who)
    if left is not None and (there is None or there.at > left.at):
        yield left.at


def on_road_until(sight: Sight, who: str) -> datetime | None:
    """Until when a person counts as driving now; None if they don't. Passengers never do."""
    return sight.once(("road", who, len(sight.made)), lambda: _on_road_until(sight, who))


def _on_road_until(sight: Sight, who: str) -> datetime | None:
    ends = [
        end
        for plan in _plans_of(sight, who)
        if _drives(sight, plan, who)
        for end in _trips(sight, plan, who)
        if sight.now < end
    ]
    return max(ends, default=None)


def may_be_asked(sight: Sight, who: str) -> bool:
    """Whether a notice may ask this person to answer now."""
    return on_road_until(sight, who) is None


def _plans_of(sight: Sight, who: str) -> Iterator[MeetingPlan]:
    """A person's meetings with any runner: a driver bound for another runner is on the road as well."""
    for runner in sight.event.runners:
        for plan in plans_of(sight, runner.id):
            if who in members(sight.event, plan):
                yield plan


def awake(sight: Sight, who: str, since: datetime) -> bool:
    """Whether a person has answered, written or reported anything since then."""
    last = last_word(sight, who)
    return last is not None and last >= since


def last_word(sight: Sight, who: str) -> datetime | None:
    """When a person answered, wrote or reported anything last; None for nothing."""
    said = [at for person, at in sight.race.awake if person == who]
    said += [s.at for m in sight.situation.made_to(who) for s in m.answers]
    said += [s.at for _, person, s in (*sight.race.crew_there, *sight.race.crew_left) if person == who]
    said += [s.at for _, s in stamps(sight.state) if s.by == who]
    return max(said, default=None)


def _drives(sight: Sight, plan: MeetingPlan, who: str) -> bool:
    """Whether a person is at the wheel: marked as driving, or nobody in the car is."""
    drivers = sight.event.drivers
    return who in drivers or not drivers & set(company(sight, plan, who))


def _trips(sight: Sight, plan: MeetingPlan, who: str) -> Iterator[datetime]:
    """The ends of trips to a meeting that a person has begun and not finished."""
    way = way_of(sight, plan, who)
    lasts = UNKNOWN_DRIVE if way.whole is None else way.whole * SLOW_ROAD
    there = _last(sight.race.crew_there, plan.point, who)
    begun = [*_departures(sight, plan, who), *_answered_leaving(sight, plan, who)]
    for at in begun:
        here = reported_her(sight, plan, company(sight, plan, who))
        if at <= sight.now and (there is None or there.at < at) and not here:
            yield at + lasts


def _answered_leaving(sight: Sight, plan: MeetingPlan, who: str) -> Iterator[datetime]:
    """Answering 'leaving' to a leave-now says that the drive begins; half an hour ahead only those very words do."""
    for m in _leave_nows(sight, plan, who):
        ahead = m.notice.key.kind is NoticeKind.LEAVE_SOON
        if m.answer != Answer.CANNOT.value:
            said = (s for s in m.answers if s.words != Answer.CANNOT.value)
            yield from (s.at for s in said if not ahead or s.words == Answer.LEAVING.value)


def _leave_nows(sight: Sight, plan: MeetingPlan, who: str) -> Iterator[Made]:
    for m in sight.situation.made_to(who):
        key = m.notice.key
        if key.kind in (NoticeKind.LEAVE_SOON, NoticeKind.LEAVE_NOW) and key.runner == plan.runner:
            values = m.notice.values
            if isinstance(values, MeetingValues) and values.meeting == plan.id:
                yield m
