"""Word of her: how she is, as somebody wrote it, told to the crew she comes to next and to her pacer.

They act on it (what to have ready, how long to let her sit), so they read it before she comes and have not to
ask. Not told: who wrote it, nor those who stood with her or with them. While an alarm is open its holder and
the safety contact read it too. Once she is in at a meeting its crew see for themselves.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from server.event.model import MeetingPlan, PartKind
from server.facts.entry import Entry, Kind
from server.facts.state import Going, PointTimes
from server.forecast.outlook import Window
from server.watch.crew_whereabouts import company, is_there, plans_of, set_out
from server.watch.escalation_state import Stage, open_alarms, replay
from server.watch.leaving import next_of, told_ahead
from server.watch.meetings import members
from server.watch.notice import (
    AlarmValues,
    CorrectionValues,
    Made,
    MeanwhileValues,
    MeetingValues,
    NoticeKind,
    Urgency,
    WordValues,
)
from server.watch.pick_up import pick_up
from server.watch.runner_context import Draft, Rule, Sight, Wake
from server.watch.silence import with_her

__all__ = ["RULES"]

"""Nobody gets anything ready for her any more: her words are of use only to those who answer a call for help."""
SOON_TOLD = timedelta(hours=3)
"""Her words wait so long at most for the notice half an hour before the leave-by (own choice)."""
FRESH = timedelta(hours=6)
"""A word longer ago says little of how she is now (own choice: as long as a sighting is news)."""


def word_of_her(sight: Sight) -> Iterator[Draft | Wake]:
    """Each word once to each whom it concerns; to those who look for her whatever they chose and whatever the hour."""
    fresh = [e for e in sight.state.how_she_is if e.words and sight.now - e.seen_at <= FRESH]
    read = {(m.notice.key.person, e) for m in sight.told(NoticeKind.MEANWHILE) for e in m.notice.facts}
    for e in fresh:
        plan, near = _next_crew(sight, e)
        looking = _looking(sight, e, newest=e is fresh[-1])
        crew = () if sight.state.going.no_longer_watched else (*near, *_pacers(sight, e, plan))
        told = dict.fromkeys((*looking, *crew))
        for who in (w for w in told if w not in _beside(sight, e, plan) and (w, e.id) not in read):
            at_once = who in looking or who not in near or e.id in sight.situation.grave
            ahead = None if at_once else _with_the_rest(sight, e, plan, who)
            if ahead is not None and sight.now < ahead:
                yield Wake(ahead)
                continue
            yield Draft(
                NoticeKind.WORD_OF_HER,
                who,
                "",
                _occasion(sight, who, e),
                sight.now if who in looking else ahead or e.received_at,
                _values(sight, e, None if plan is None else plan.point),
                (e.id,),
                use_by=e.seen_at + FRESH,
                urgency=Urgency.ALARM if who in looking else None,
                mine=True,
            )


def _with_the_rest(sight: Sight, e: Entry, plan: MeetingPlan | None, who: str) -> datetime | None:
    """When somebody who has yet to leave for her is told all they need, where that is soon: they read her words with it.
    Grave words wait for nothing."""
    m = next((m.own(who) for m in sight.meetings if plan is not None and m.meeting == plan.id), None)
    if plan is None or m is None or m.leave_by is None or _gone(sight, plan, m):
        return None
    due = told_ahead(m)
    return due if e.received_at < due <= e.seen_at + SOON_TOLD else None


def _gone(sight: Sight, plan: MeetingPlan, m: MeetingValues) -> bool:
    return is_there(sight, plan, m.crew) or set_out(sight, plan, m.crew)


def _next_crew(sight: Sight, e: Entry) -> tuple[MeetingPlan | None, tuple[str, ...]]:
    """The meeting that was next when it was seen, and who goes there; none once she has been there.

    A meeting that can't be made, or that is waited out, sees nothing of her: then it is the one after it.
    Retired, she is met by those who fetch her.
    """
    if sight.state.retirement is not None:
        return None, pick_up(sight, sight.state.retirement)
    order, behind = _order(sight), _behind(sight, e)
    for plan in plans_of(sight):
        number = order.index(plan.point)
        if number <= behind:
            continue
        if sight.reached(plan.point):
            return None, ()
        m = next((m for m in sight.meetings if m.meeting == plan.id), None)
        if m is None or m.lost:
            continue
        ahead = {who: next_of(sight, who) for who in members(sight.event, plan)}
        coming = tuple(w for w, mine in ahead.items() if mine and order.index(mine.point) <= number)
        if coming:
            return plan, coming
    return None, ()


def _order(sight: Sight) -> list[str]:
    return [p.id for p in sight.event.course_of(sight.runner.id).points]


def _behind(sight: Sight, e: Entry) -> int:
    """The number of the last point she was known to have been at when it was seen; -1 for none.

    One who rests at a point has come there, said or not: its crew are next as long as none of them says so.
    """
    points = sight.event.course_of(sight.runner.id).points
    numbers = {p.id: n for n, p in enumerate(points)}
    found = [numbers[t.point] for t in sight.state.times if _been(t, e.seen_at)]
    fixes = [f.km for f in sight.state.positions if f.stamp.at <= e.seen_at and not f.ambiguous]
    km = max((k for k in fixes if k is not None), default=0.0)
    found += [n for n, p in enumerate(points) if p.km is not None and p.km < km]
    if e.kind is Kind.RESTING and e.point in numbers:
        crew = _crew_at(sight, e.point or "")
        found.append(numbers[e.point or ""] - (e.by not in crew))
    return max(found, default=-1)


def _been(times: PointTimes, by: datetime) -> bool:
    return any(s is not None and s.at <= by for s in (times.arrived, times.left))


def _crew_at(sight: Sight, point: str) -> tuple[str, ...]:
    """All who go to her meetings at a point."""
    return tuple(w for p in plans_of(sight) if p.point == point for w in members(sight.event, p))


def _beside(sight: Sight, e: Entry, plan: MeetingPlan | None) -> frozenset[str]:
    """Who knows already: whoever wrote it, those of one car with them, those who stood with her when it was seen."""
    found = {e.by}
    behind = _behind(sight, e)
    if behind >= 0:
        point = _order(sight)[behind]
        crew, times = _crew_at(sight, point), sight.state.at_point(point)
        missed = any(True for _ in sight.told(NoticeKind.MEETING_LOST, point=point))
        if e.by in crew or (times is not None and _there(times, e.seen_at) and not missed):
            found |= set(crew)
    if plan is not None and e.by in plan.crew:
        found |= set(company(sight, plan, e.by))
    return frozenset(found)


def _there(times: PointTimes, at: datetime) -> bool:
    """Whether she was in at a point at that moment."""
    if times.arrived is None or times.through or times.arrived.at > at:
        return False
    return times.left is None or at < times.left.at


def _pacers(sight: Sight, e: Entry, plan: MeetingPlan | None) -> Iterator[str]:
    """A pacer who runs with her, and one who joins her before the next crew has seen her, or with them."""
    order, behind = _order(sight), _behind(sight, e)
    last = len(order) if plan is None else order.index(plan.point)
    for part in sight.parts(PartKind.PACER):
        start = order.index(part.pace_from) if part.pace_from in order else -1
        joins = behind < start <= last and not sight.reached(order[start])
        if with_her(sight, part.person) or (joins and sight.state.retirement is None):
            yield part.person


def _looking(sight: Sight, e: Entry, *, newest: bool) -> tuple[str, ...]:
    """While an alarm is open: who holds it, and the safety contact. They read what comes in meanwhile, and the
    newest word from before."""
    found: list[str] = []
    for alarm in open_alarms(sight.made):
        notices = [m for m in sight.made if _of_alarm(m, alarm)]
        stand = replay(notices)
        if newest or e.received_at >= min(m.made_at for m in notices):
            held = stand.stage in (Stage.HELD, Stage.LOOKING_AGAIN)
            found += [stand.holder] if held and stand.holder else []
            found += sight.people(PartKind.SAFETY_CONTACT)
    return tuple(dict.fromkeys(found))


def _of_alarm(m: Made, alarm: str) -> bool:
    return isinstance(m.notice.values, AlarmValues) and m.notice.values.alarm == alarm


def _values(sight: Sight, e: Entry, point: str | None) -> WordValues:
    state = sight.state
    last = state.rests[-1] if state.rests else None
    times = next((t for t in reversed(state.times) if t.arrived is not None or t.left is not None), None)
    resting = state.going is Going.RESTING and last is not None
    at_point = state.going is Going.AT_POINT and times is not None and times.arrived is not None
    went_on = last is not None and last.end is not None and last.end >= e.seen_at
    since = None
    if last is not None and resting:
        since = last.start
    elif at_point and times is not None and times.arrived is not None:
        since = times.arrived.at
    elif last is not None and went_on:
        since = last.end
    return WordValues(
        entry=e.id,
        words=e.words,
        at=e.seen_at,
        told_by=e.by,
        going=state.going.value,
        point=times.point if at_point and times is not None else None,
        since=since,
        until=state.rest_until if resting else None,
        next_window=_window(sight, point),
    )


def _window(sight: Sight, point: str | None) -> Window | None:
    return next((m.window for m in sight.meetings if m.point == point), None)


def _occasion(sight: Sight, who: str, e: Entry) -> str:
    """One word is told once; again only where it was taken back and counts again."""
    back = sum(1 for m in sight.told(NoticeKind.CORRECTION, who) if _takes_back(m, e.id))
    return f"{e.id}:{back}" if back else e.id


def _takes_back(m: Made, entry: str) -> bool:
    values = m.notice.values
    ours = isinstance(values, CorrectionValues) and values.was_kind == NoticeKind.WORD_OF_HER.value
    return ours and entry in m.notice.facts


def taken_back(sight: Sight) -> Iterator[Draft | Wake]:
    """Whoever was told a word that counts no longer is told so, unless other words have taken its place."""
    state = sight.state
    counts = {*state.folded, *(e.id for e in state.refused), *(e.replaces for e in state.how_she_is)}
    counts |= {e.id for e in state.unconfirmed}
    for m in (*sight.told(NoticeKind.WORD_OF_HER), *sight.told(NoticeKind.MEANWHILE)):
        values = m.notice.values
        if not isinstance(values, WordValues | MeanwhileValues) or not values.words or values.entry in counts:
            continue
        yield Draft(
            NoticeKind.CORRECTION,
            m.notice.key.person,
            "",
            f"{m.notice.key.kind.value}:{m.notice.occasion}",
            sight.now,
            CorrectionValues(
                NoticeKind.WORD_OF_HER.value,
                None,
                values.at,
                None,
                taken_back=True,
                by="",
                words=values.words,
            ),
            m.notice.facts,
            mine=True,
        )


RULES: tuple[Rule, ...] = (word_of_her, taken_back)
