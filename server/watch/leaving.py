"""Getting the crew on the road: brief, wake-up, leave soon, leave now, be there; and who is asked when nobody answers.

Only a person's first meeting that is not over is looked at: nobody is sent on while they still wait for her.
Half an hour before the leave-by they are told with all they need; leave now comes five minutes before it, so that it
can be handed on before it is too late.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.event.model import MeetingPlan, PartKind, Signal
from server.facts.stop_log import in_short
from server.plan.movements.trips import is_safety
from server.watch.crew_routes import members
from server.watch.crew_whereabouts import (
    AWAKE_FOR,
    awake,
    is_there,
    may_be_asked,
    plans_of,
    set_out,
    set_out_at,
    stands_at,
)
from server.watch.escalation_state import Stage, over_at, replay
from server.watch.notice import (
    Answer,
    BriefValues,
    Ear,
    Made,
    MeetingValues,
    NoticeKind,
    UncoveredValues,
    UnreachedValues,
    Values,
)
from server.watch.quiet import quiet_since
from server.watch.runner_context import (
    Draft,
    Rule,
    Sight,
    Wake,
    on_grid,
    stewards,
    tried,
    with_us,
    with_us_ends,
)
from server.watch.staying import behind, missed_since, waited_out

__all__ = [
    "GONE_ON",
    "RULES",
    "leave_time",
    "next_of",
    "p_gone_on",
    "told_ahead",
    "too_late",
    "unreported_out",
]

LEAD = timedelta(minutes=5)
"""Leave now comes so long before the leave-by: the time an answer may take."""
WAKING = timedelta(minutes=30)
"""Time to wake, dress and pack (common practice, no source)."""
AHEAD = timedelta(minutes=30)
"""Told so long before the leave-by: time to pack and to end what one is doing (own choice)."""
REACHERS_MAX = 2
"""So many people at most are asked, one after the other, to reach somebody about one departure: more would telephone
at once, and what it is about is no alarm (own choice)."""
NO_DRIVE_LEAD = timedelta(hours=1)
"""Without a confirmed drive 'be there from' comes so long, and the estimate, ahead (own choice)."""
AGAIN = timedelta(minutes=30)
"""A leave-by moved later by more, after a leave-now that nobody answered, gets a leave-now of its own."""
GONE_ON = 0.9
"""Seen in, not seen out, waited out: with these odds that she has gone on, the meeting is behind the crew."""
LOST_ODDS = 0.9
"""A meeting is called lost when she will have left, with this probability, before the crew can be there."""
BACK_ODDS = 0.5
"""The same once they were told that it is lost (own choice)."""


def leave_time(m: MeetingValues) -> datetime:
    """When leave now, or without a confirmed drive 'be there from', is due."""
    if m.leave_by is not None:
        return m.leave_by - LEAD
    return m.be_there - (m.drive or timedelta(0)) - NO_DRIVE_LEAD


def next_of(sight: Sight, who: str) -> MeetingValues | None:
    """The first meeting of a person that is neither lost nor over, as it is by the car they are in."""
    return sight.once(("next", who, len(sight.made)), lambda: _next_of(sight, who))


def _next_of(sight: Sight, who: str) -> MeetingValues | None:
    for m in sight.meetings:
        mine = m.own(who)
        if who in m.crew and not mine.lost and not _over(sight, mine):
            return mine
    return None


def _over(sight: Sight, m: MeetingValues) -> bool:
    """Whether a meeting is behind the crew: waited out (staying.py), and there is another to go to; or too late.

    Where she was seen in and nobody has reported her out, the crew wait no longer than she would have stayed: an
    'out' that was forgotten must not keep them from the next meeting.
    """
    if sight.state.at_point(m.point) is None:
        waited = waited_out(sight, m)
    else:
        waited = sight.now >= m.wait_until and p_gone_on(sight, m.point) >= GONE_ON
    if waited and m.next_meeting is not None:
        return True
    # Where she is they may be with her, unless they were told not to try it.
    unseen = sight.state.at_point(m.point) is None or _told_lost(sight, m)
    return unseen and too_late(sight, sight.plan(m.meeting), m)


def _told_lost(sight: Sight, m: MeetingValues) -> bool:
    return any(x.notice.key.person in m.crew for x in sight.told(NoticeKind.MEETING_LOST, point=m.point))


def p_gone_on(sight: Sight, point: str) -> float:
    """P(she has left a point by now) where she was seen in and not out; 0 where that is not how it stands."""
    times, view = sight.state.at_point(point), sight.view_at(sight.now)
    if view is None or times is None or times.arrived is None or times.left is not None or times.through:
        return 0.0
    try:
        return view.p_out_by(point, sight.now)
    except KeyError:
        return 0.0


def unreported_out(sight: Sight) -> str | None:
    """The point where she was last seen in, and from which nobody has reported her out."""
    last = sight.state.times[-1] if sight.state.times else None
    open_end = last is not None and last.arrived is not None and last.left is None and not last.through
    return last.point if last is not None and open_end else None


def _open_end(sight: Sight, who: str) -> str | None:
    """That point, for one who meets her there or said that they are there: nobody else can have her with them still."""
    point = unreported_out(sight)
    theirs = {p.point for p in plans_of(sight) if who in members(sight.event, p)} | {stands_at(sight, who)}
    return point if point in theirs else None


def too_late(sight: Sight, plan: MeetingPlan, m: MeetingValues) -> bool:
    """Whether she will have left before the crew can be there, as far as is known of both; `m` is of one car.

    Looked at on the five-minute grid, since her side drifts with silence. Never without a confirmed drive,
    and never guessed of crew who were told to leave and did not answer: they may well be driving, and must
    not be turned round. Never while she is missed: that she was not heard of is no sign that she has gone on.
    """
    if m.leave_by is None or sight.now <= m.leave_by or is_there(sight, plan, m.crew):
        return False
    if missed_since(sight) is not None:
        return False
    begun = set_out_at(sight, plan, m.crew)
    told = (x.notice.key.person for x in sight.told(NoticeKind.LEAVE_NOW, point=m.point))
    if begun is None and any(who in m.crew for who in told):
        return False
    tick, _ = on_grid(sight.now)
    view = sight.view_at(tick)
    if view is None:
        return False
    whole = m.be_there - m.leave_by
    there = (begun or max(tick, m.leave_by)) + whole
    # Nobody who was told not to try it is sent off after all, unless they would rather meet her than not.
    odds = BACK_ODDS if _told_lost(sight, m) else LOST_ODDS
    try:
        return there >= view.leaving(m.point, odds)
    except KeyError:
        return False


@dataclass(frozen=True, slots=True)
class _Trip:
    """A meeting that the people of one car have to set out for, and those whose next it is."""

    plan: MeetingPlan
    m: MeetingValues
    who: tuple[str, ...]

    @property
    def name(self) -> str:
        """What tells it from those of other cars to the same meeting."""
        return f"{self.plan.id}/{self.m.car}" if self.m.car else self.plan.id


def _trips(sight: Sight) -> tuple[_Trip, ...]:
    return sight.once(("trips", len(sight.made)), lambda: tuple(_to_set_out(sight)))


def _to_set_out(sight: Sight) -> Iterator[_Trip]:
    if with_us(sight):
        return
    for m in sight.meetings:
        plan = sight.plan(m.meeting)
        for mine in m.parties():
            ahead = {p: next_of(sight, p) for p in mine.crew}
            stay, _ = behind(sight)
            who = tuple(
                p for p, first in ahead.items() if first and first.meeting == m.meeting and p not in stay
            )
            if who and not is_there(sight, plan, mine.crew) and not set_out(sight, plan, mine.crew):
                yield _Trip(plan, mine, who)


def _moments(sight: Sight) -> Iterator[Wake]:
    """When a trip may begin to matter: a wait is over, or the grid on which 'too late' is judged."""
    yield from with_us_ends(sight)
    for m in (mine for meeting in sight.meetings for mine in meeting.parties()):
        yield Wake(m.wait_until)
        if m.leave_by is not None:
            yield Wake(m.leave_by + timedelta(microseconds=1))
            if sight.now > m.leave_by:
                yield on_grid(sight.now)[1]
        if sight.now >= m.wait_until and unreported_out(sight) == m.point:
            yield on_grid(sight.now)[1]
        if m.next_meeting is not None and sight.now >= m.window.early and not sight.reached(m.point):
            yield on_grid(sight.now)[1]


def brief(sight: Sight) -> Iterator[Draft | Wake]:
    """Before crew go out of signal: the next two meetings, kit, move on at, what to do if nothing is heard. Whoever
    leaves earlier than they were told to gets it as they leave, while they still have signal."""
    for trip, gone in _to_no_signal(sight):
        due = told_ahead(trip.m)
        if sight.now < due and not gone:
            yield Wake(due)
            continue
        for who in trip.who:
            mine = [m.own(who) for m in sight.meetings if who in m.crew and not m.own(who).lost]
            if trip.m not in mine or (gone and any(sight.told(NoticeKind.BRIEF, who, trip.m.point))):
                continue
            first, *after = mine[mine.index(trip.m) :][:2]
            two = (_with_log(sight, first), *after)
            values = BriefValues(two, _signal_back(sight, mine[mine.index(trip.m) + 1 :]))
            yield Draft(
                NoticeKind.BRIEF,
                who,
                trip.m.point,
                trip.name,
                min(due, sight.now),
                values,
                use_by=trip.m.wait_until,
                mine=True,
            )


def _to_no_signal(sight: Sight) -> Iterator[tuple[_Trip, bool]]:
    """The trips to points without signal, and whether they have begun."""
    yield from ((trip, False) for trip in _trips(sight) if trip.m.no_signal)
    for m in sight.meetings:
        plan = sight.plan(m.meeting)
        for mine in m.parties() if m.no_signal else ():
            if set_out(sight, plan, mine.crew) and not is_there(sight, plan, mine.crew):
                yield _Trip(plan, mine, mine.crew), True


def told_ahead(m: MeetingValues) -> datetime:
    """When those who go are told what they need for it."""
    return leave_time(m) if m.leave_by is None else m.leave_by - AHEAD


def leave_soon(sight: Sight) -> Iterator[Draft | Wake]:
    """Half an hour before the leave-by, with all they need: to those who got no brief and no wake-up for it."""
    for trip in _trips(sight):
        due, over = told_ahead(trip.m), leave_time(trip.m)
        if trip.m.leave_by is None or trip.m.no_signal or sight.now >= over:
            continue
        if sight.now < due:
            yield Wake(due)
            continue
        for who in trip.who:
            woken = (
                m.notice.occasion == trip.name for m in sight.told(NoticeKind.WAKE_UP, who, trip.m.point)
            )
            if any(woken) or _asleep(sight, who, due) or _just_took_it(sight, trip, who):
                continue
            occasion = _occasion(sight, trip, NoticeKind.LEAVE_SOON, who)
            values = replace(_with_log(sight, trip.m), unreported_out=_open_end(sight, who))
            yield Draft(
                NoticeKind.LEAVE_SOON, who, trip.m.point, occasion, due, values, use_by=over, mine=True
            )


def _with_log(sight: Sight, m: MeetingValues) -> MeetingValues:
    """The meeting with what was logged at the stops before: who meets her next may not have been there."""
    return replace(m, log=in_short(sight.state.log, sight.state.start, sight.now)) if sight.state.log else m


def _just_took_it(sight: Sight, trip: _Trip, who: str) -> bool:
    """Whether somebody took this meeting over as late as this: all they need for it was told them with that."""
    since = sight.now - AHEAD
    return any(
        isinstance(m.notice.values, UncoveredValues)
        and m.notice.values.meeting == trip.plan.id
        and m.notice.values.ear is Ear.STAND_IN
        and m.made_at >= since
        for m in sight.told(NoticeKind.COVERED, who, trip.m.point)
    )


def _signal_back(sight: Sight, later: list[MeetingValues]) -> str | None:
    course = sight.event.course_of(sight.runner.id)
    good = (m.point for m in later if not m.no_signal and course.point(m.point).signal is Signal.GOOD)
    return next(good, None)


def wake_up(sight: Sight) -> Iterator[Draft | Wake]:
    """A sleeper is woken with time to wake, pack and drive."""
    for trip in _trips(sight):
        due = leave_time(trip.m) - WAKING
        if sight.now < due:
            yield Wake(due)
            continue
        asleep = [w for w in trip.who if _asleep(sight, w, due)]
        for who in asleep:
            yield Draft(
                NoticeKind.WAKE_UP,
                who,
                trip.m.point,
                trip.name,
                due,
                _with_log(sight, trip.m),
                use_by=trip.m.wait_until,
                mine=True,
            )
        yield from _climbed(sight, trip, NoticeKind.WAKE_UP)


def _asleep(sight: Sight, who: str, at: datetime) -> bool:
    """Whether a person's quiet hours hold `at` and nothing of late says that they are awake in them."""
    since = quiet_since(sight.person(who), sight.event, at)
    return since is not None and not awake(sight, who, max(since, at - AWAKE_FOR))


def leave_now(sight: Sight) -> Iterator[Draft | Wake]:
    """Leave now to each who goes, or 'be there from' where no drive is confirmed."""
    yield from _moments(sight)
    for trip in _trips(sight):
        due = leave_time(trip.m)
        if sight.now < due:
            yield Wake(due)
            continue
        if trip.m.on_the_spot and _told_of_it(sight, trip):
            continue
        drives = trip.m.leave_by is not None and not trip.m.on_the_spot
        kind = NoticeKind.LEAVE_NOW if drives else NoticeKind.BE_THERE
        new = False
        for who in trip.who:
            values = replace(_with_log(sight, trip.m), unreported_out=_open_end(sight, who))
            occasion = _occasion(sight, trip, kind, who)
            new = new or all(m.notice.occasion != occasion for m in sight.told(kind, who, trip.m.point))
            yield Draft(kind, who, trip.m.point, occasion, due, values, use_by=trip.m.wait_until, mine=True)
        # Whoever is told anew has yet to be given the time to answer; the pass after this one asks again.
        if kind is NoticeKind.LEAVE_NOW and not new:
            yield from _climbed(sight, trip, kind)


def _told_of_it(sight: Sight, trip: _Trip) -> bool:
    """Whether one of those who go has been told all they need for it."""
    kinds = (NoticeKind.LEAVE_SOON, NoticeKind.BRIEF, NoticeKind.WAKE_UP)
    return any(m.notice.key.person in trip.who for k in kinds for m in sight.told(k, point=trip.m.point))


def _occasion(sight: Sight, trip: _Trip, kind: NoticeKind, who: str) -> str:
    """The meeting; with a number where it moved so much later that the earlier notice was for nothing."""
    before = list(sight.told(kind, who, trip.m.point))
    if not before:
        return trip.name
    last = before[-1].notice
    values = last.values
    then = values.leave_by if isinstance(values, MeetingValues) else None
    if then is None or trip.m.leave_by is None or trip.m.leave_by - then <= AGAIN:
        return last.occasion
    return f"{trip.name}:{len(before)}"


def _climbed(sight: Sight, trip: _Trip, kind: NoticeKind) -> Iterator[Draft | Wake]:
    """No answer in five minutes: one of the other crew is to reach them, after five more one who can telephone; nobody
    twice for one meeting. Where nobody did and a torch, a warm layer or a pacer hangs on it the organiser hears."""
    occasion = _newest(sight, trip, kind)
    alarm = f"{kind.value}:{occasion}:step"
    asks = [m for m in sight.made if _about(m, alarm, kind, occasion)]
    stand = replay(asks)
    if not asks or stand.stage is not Stage.ASKING:
        return
    due = over_at(stand, sight.event.alarm) or sight.now
    if stand.spent:
        due = min(due, sight.now)
    if sight.now < due:
        yield Wake(due)
        return
    since = min((m.made_at for m in asks if m.notice.key.kind is kind), default=due)
    them = tuple(dict.fromkeys(m.notice.key.person for m in asks if m.notice.key.kind is kind))
    told = {m.notice.key.person for m in sight.told(NoticeKind.UNREACHED, point=trip.m.point)}
    if len(told) < REACHERS_MAX:
        for number, who in enumerate(_steps(sight, trip, them), 1):
            if number > stand.step and who not in told and may_be_asked(sight, who):
                yield _hand_on(sight, trip, kind, who, f"{alarm}:{number}", due, since, them)
                return
    elif not is_safety(sight.event, trip.plan):
        return
    asked = {m.notice.key.person for m in asks}
    for organiser in (o for o in stewards(sight.event) if o not in asked):
        yield replace(
            _hand_on(sight, trip, kind, organiser, f"{kind.value}:{occasion}:nobody", due, since, them),
            needs_answer=False,
            buttons=(),
        )


def _newest(sight: Sight, trip: _Trip, kind: NoticeKind) -> str:
    """The occasion of the last notice of that kind for the meeting to those of the car; the trip's own before there
    is one."""
    told = (m.notice for m in sight.told(kind, point=trip.m.point))
    mine = [n.occasion for n in told if n.key.person in trip.m.crew and _of_meeting(n.values, trip.plan)]
    return mine[-1] if mine else trip.name


def _about(m: Made, alarm: str, kind: NoticeKind, occasion: str) -> bool:
    if isinstance(m.notice.values, UnreachedValues):
        return m.notice.occasion.startswith(alarm)
    return m.notice.key.kind is kind and m.notice.occasion == occasion


def _of_meeting(values: Values, plan: MeetingPlan) -> bool:
    return isinstance(values, MeetingValues) and values.meeting == plan.id


def _steps(sight: Sight, trip: _Trip, asked: tuple[str, ...]) -> tuple[str, ...]:
    """Who is asked to reach those in the car who were asked to go, or to wake up, in this order: who goes with them and was
    not, the rest of the crew, anybody else with a part who can telephone. Nobody is woken for it while others are up."""
    others = [p for p in (*trip.m.crew, *sight.people(PartKind.CREW)) if p not in asked]
    phones = [p.person for p in sight.parts(*_PHONES) if p.can_telephone and p.person not in asked]
    found = tuple(dict.fromkeys((*others, *phones)))
    return tuple(p for p in found if not _asleep(sight, p, sight.now)) or found


_PHONES = (PartKind.SAFETY_CONTACT, PartKind.ORGANISER, PartKind.PACER)


def _hand_on(
    sight: Sight,
    trip: _Trip,
    kind: NoticeKind,
    who: str,
    occasion: str,
    due: datetime,
    since: datetime,
    asked: tuple[str, ...],
) -> Draft:
    """Asks somebody to reach the one at the wheel, or the first, of those who were asked at `since`."""
    them = next((p for p in asked if p in sight.event.drivers), asked[0])
    theirs = sight.told(kind, them, trip.m.point)
    values = UnreachedValues(them, kind.value, tried(sight.person(them), theirs), since)
    return Draft(
        NoticeKind.UNREACHED,
        who,
        trip.m.point,
        occasion,
        due,
        values,
        use_by=trip.m.wait_until,
        needs_answer=True,
        buttons=(Answer.ON_IT, Answer.CANNOT),
        mine=True,
    )


RULES: tuple[Rule, ...] = (brief, wake_up, leave_soon, leave_now)
