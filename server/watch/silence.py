"""Late and overdue: when silence becomes a question, and when an alarm.

Late asks the crew. Overdue is judged by itself and never waits for the answer to that question (see `overdue`); what is
answered may bring it forward, never put it off. Nobody is judged before the updates that waited have been read.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from server.event.model import PartKind, ReporterKind
from server.facts.cut_offs import cut_offs_at
from server.facts.entry import Why
from server.forecast.outlook import RATHER, Outlook, View
from server.watch.crew_whereabouts import (
    company,
    last_word,
    may_be_asked,
    on_road_until,
    plans_of,
    stands_at,
    there_at,
)
from server.watch.escalation_state import open_alarms
from server.watch.meetings import members
from server.watch.notice import Answer, LateValues, Made, NoticeKind, UnreachedValues, WhyNow
from server.watch.runner_context import Draft, Rule, Sight, Wake, with_us, with_us_ends

__all__ = ["RULES", "Due", "blind", "finish_of", "hold_ends", "late_at", "overdue", "overdue_at", "with_her"]

UNANSWERED = timedelta(minutes=30)
"""So long the crew at a point may take to answer about her before somebody telephones them (own choice)."""
HOME_LINE = 0.02
"""The alarm line at a finish that nobody is said to report from (own choice). It is asked once a race, the line itself at
every point: a race has no more false alarms of it, and where reports are few the alarm comes hours sooner."""
PHONED_MAX = 4
"""So many times home is asked to telephone crew who do not answer."""
PHONING = timedelta(hours=2)
"""Asked to telephone somebody, that is of use so long (own choice)."""
ASK_SPACING = timedelta(minutes=20)
"""The same person is not asked about the same point more often (own choice)."""
ANSWERED_SPACING = timedelta(minutes=60)
"""Nor so soon where they wait at that point and answered 'not yet': they will see her (own choice)."""
_RESTS = frozenset({Why.DRIVER, Why.OWN_SAFETY})
"""Why somebody who can't come is asked last."""


def blind(sight: Sight) -> bool:
    """Whether nobody could have reached us: what waited is not yet read, or we are down ourselves.

    A channel that is down takes only the silence of those who write over it: the forecast leaves that out.
    """
    down = any(o.start <= sight.now and o.end is None for o in sight.situation.outages)
    return sight.situation.watching_since is None or down


def late_at(sight: Sight) -> tuple[str, datetime] | None:
    """The point she is next reported from and when she is late there; never before her start."""
    late = None if sight.outlook is None else sight.outlook.late_time()
    return None if late is None else (late[0], max(late[1], sight.state.start))


@dataclass(frozen=True, slots=True)
class Due:
    """When silence becomes an alarm, and what makes it so at that moment."""

    at: datetime
    why: WhyNow


def overdue_at(sight: Sight) -> datetime | None:
    """When silence becomes an alarm if nothing is heard; None without a forecast."""
    due = overdue(sight)
    return None if due is None else due.at


def no_alarm_before(sight: Sight) -> datetime | None:
    """A moment before which silence is no alarm: when she is late, or sooner when the race is over for her. The very moment
    (`overdue_at`) takes dozens of looks at the forecast, and most are heard of again before they are late. None where that
    is not known so easily."""
    return sight.once("no alarm before", lambda: _no_alarm_before(sight))


def _no_alarm_before(sight: Sight) -> datetime | None:
    late = late_at(sight)
    if sight.outlook is None or late is None or sight.state.not_yet:
        return None
    home = _surely_home(sight, sight.outlook.at(sight.fact_at))
    return late[1] if home is None else min(late[1], home.at)


def overdue(sight: Sight) -> Due | None:
    """When silence becomes an alarm if nothing is heard, and why then; None without a forecast.

    The earliest of four moments. P(not heard by now | still going) falls under the alarm line, but not before the grace
    after she was late. Or 95 in 100 like her would have been at the next point that somebody reports from, and what all
    those who would have reported her have not said, with how she ran and how near the limit, makes it likelier (`RATHER`)
    that her race has ended on the way than not: evidence of several adds up, and one reporter who may fail does not silence
    it; not before that grace either. Or she would be at the finish by now with as high a probability as the line asks, or
    the race is over, and the grace too: this holds whoever reports, for where nobody reports at all silence never says so
    much, and somebody at home would wait for ever. Or somebody has said 'not here yet' of a point when she would have been
    there but for the alarm line.

    All but the last are found with and without what was said of her not being there. With it alone every 'not here yet'
    would begin the wait anew, and crew who answer each half hour would put the alarm off for as long as they answer.
    """
    return sight.once("overdue", lambda: _overdue(sight))


def _overdue(sight: Sight) -> Due | None:
    if sight.outlook is None or sight.seen_outlook is None:
        return None
    found = [*_by_silence(sight, sight.outlook, sight.fact_at)]
    if sight.state.not_yet:
        found += [*_by_silence(sight, sight.seen_outlook, sight.seen_at), *_told_missing(sight)]
    return min(found, key=lambda d: d.at, default=None)


def _by_silence(sight: Sight, outlook: Outlook, since: datetime) -> Iterator[Due]:
    """The first three moments, by an outlook whose last fact is of `since`."""
    rule, late = sight.event.alarm, outlook.late_time()
    under = outlook.unheard_falls_under(rule.line, since)
    if under is not None:
        at = under if late is None else max(under, max(late[1], sight.state.start) + rule.grace)
        yield Due(at, WhyNow.LINE)
    ended = outlook.ended_rather(RATHER, since)
    if ended is not None:
        at = ended if late is None else max(ended, max(late[1], sight.state.start) + rule.grace)
        yield Due(at, WhyNow.ODDS)
    home = _surely_home(sight, outlook.at(since))
    if home is not None:
        yield home


def _told_missing(sight: Sight) -> Iterator[Due]:
    """When somebody said that she was not there yet, who surely would have been, the grace after she was late."""
    view, rule = sight.seen_view, sight.event.alarm
    if view is None:
        return
    for n in sight.state.not_yet:
        if n.point in view.points and n.stamp.at >= view.arrival(n.point, 1.0 - rule.line):
            yield Due(max(n.stamp.at, view.window(n.point).late + rule.grace), WhyNow.TOLD_MISSING)


def finish_of(sight: Sight) -> str:
    """Her finish."""
    points = sight.event.course_of(sight.runner.id).points
    return next((p.id for p in points if p.finish), points[-1].id)


def _surely_home(sight: Sight, view: View) -> Due | None:
    """When she would be at the finish but for the alarm line's odds, as `view` stood at the last fact, and the grace;
    or, if that comes first, when the race is over for her and the grace with it."""
    finish = finish_of(sight)
    if finish not in view.points:
        return None
    rule = sight.event.alarm
    point = sight.event.course_of(sight.runner.id).point(finish)
    # Where nobody reports from the finish it is all there is to go by.
    watched = any(r.by is not ReporterKind.NOBODY for r in point.reports)
    surely = view.arrival(finish, 1.0 - (rule.line if watched else max(rule.line, HOME_LINE)))
    limits = [at for _, at in cut_offs_at(sight.race, point, sight.state)]
    if sight.event.limit is not None:
        limits.append(sight.event.starts + sight.event.limit)
    end = min(limits, default=None)
    if end is not None and end < surely:
        return Due(end + rule.grace, WhyNow.LIMIT)
    return Due(surely + rule.grace, WhyNow.FINISH)


def late(sight: Sight) -> Iterator[Draft | Wake]:
    """The question to the crew. It pauses while runners are held, and while an alarm is open."""
    found = late_at(sight)
    view = sight.fact_view
    if found is None or view is None:
        return
    point, at = found
    if sight.now < at:
        yield Wake(at)
        return
    if blind(sight) or sight.held() or with_us(sight) or open_alarms(sight.made):
        yield from hold_ends(sight)
        return
    if point not in view.points:
        return
    values = LateValues(point, view.window(point), sight.state.last_known)
    facts = () if sight.state.last_known is None else (sight.state.last_known.entry,)
    occasion = sight.fact_at.isoformat()
    asked, roads = _whom(sight, point)
    yield from (Wake(r) for r in roads)
    for who, mine in asked:
        if any(o.start <= sight.now and o.end is None for o in sight.situation.hearing.deaf_to(who)):
            continue  # no answer of theirs would reach us
        before = [m for m in sight.told(NoticeKind.LATE, who, point) if m.notice.occasion != occasion]
        # Asked anew because of what was heard since: owed from then, not from when the last question had its time.
        due = max(at, sight.fact_at, _ask_again(sight, before[-1], occasion)) if before else at
        if sight.now < due:
            yield Wake(due)
            continue
        yield Draft(NoticeKind.LATE, who, point, occasion, due, values, facts, mine=mine)


def _ask_again(sight: Sight, before: Made, occasion: str) -> datetime:
    """When somebody may be asked again who has been asked before: so long after the last question to them, or on this
    occasion to another of their car."""
    key = before.notice.key
    car = {w for m in plans_of(sight) for w in company(sight, m, key.person)} - {key.person}
    asked = (m for m in sight.told(NoticeKind.LATE, point=key.point, occasion=occasion))
    since = [before.made_at, *(m.made_at for m in asked if m.notice.key.person in car)]
    said = [n.stamp.at for n in sight.state.not_yet if n.point == key.point and n.stamp.by == key.person]
    waits = there_at(sight, key.point, key.person) is not None or bool(said)
    # In words or by the button under the question: 'not yet' is an answer to it.
    answered = before.answer == Answer.NOT_YET.value or any(at >= before.made_at for at in said)
    stays = waits and answered
    return max([*since, *said]) + (ANSWERED_SPACING if stays else ASK_SPACING)


def hold_ends(sight: Sight) -> Iterator[Wake]:
    """When holds with a known end let her go on, and somebody's word that they have her is too old."""
    yield from with_us_ends(sight)
    for span in (*sight.race.held, *sight.state.held):
        if span.end is not None:
            yield Wake(span.end)


def _whom(sight: Sight, point: str) -> tuple[list[tuple[str, bool]], list[datetime]]:
    """Who is asked, and whether it is their own meeting; and when those on the road come off it.

    First those who could know: who said that they are at that point, the volunteers posted there, the crew of the
    meeting there unless they are known to be elsewhere. If there is none, or all are on the road: the crew of the next
    meeting ahead, who at least see that she has not come to them. A pacer with her is asked besides, as one who may be
    out of signal with her. If nobody of all these is free: the rest of the crew. Whoever has said that they are too tired,
    or ill, is left to sleep while anybody else can be asked.
    """
    plans = plans_of(sight)
    crew = sight.people(PartKind.CREW)
    meets = [w for m in plans if m.point == point for w in members(sight.event, m)]
    there = [w for w in dict.fromkeys((*crew, *meets)) if there_at(sight, point, w) is not None]
    posted = [p.person for p in sight.parts(PartKind.VOLUNTEER) if p.point == point]
    pacers = [p for p in sight.people(PartKind.PACER) if with_her(sight, p)]
    going = [w for w in meets if w in there or not elsewhere(sight, w, point)]
    ahead = [m for m in plans if not sight.reached(m.point)]
    nearest = [*there, *posted, *going]
    following = [w for m in ahead[:1] for w in members(sight.event, m)]
    roads: list[datetime] = []
    resting = {f.person for f in sight.race.fallen if f.why in _RESTS}
    pacing = [p for p in pacers if may_be_asked(sight, p)]
    for group in (nearest, following):
        roads += [end for w in (*group, *pacers) if (end := on_road_until(sight, w)) is not None]
        free = [w for w in group if may_be_asked(sight, w) and w not in resting]
        if free or (group is following and pacing):
            return [(w, True) for w in dict.fromkeys((*free, *pacing))], roads
    free = [w for w in crew if may_be_asked(sight, w)]
    return [(w, False) for w in free if w not in resting or set(free) <= resting], roads


def elsewhere(sight: Sight, who: str, point: str) -> bool:
    """Whether a person is known to be at another point: said so there last, and has not left it, nor was told to."""
    return stands_at(sight, who) not in (None, point)


def with_her(sight: Sight, pacer: str) -> bool:
    """Whether a pacer is running with her, by the plan and the points she has reached: they have joined her since they left
    her last, or where they did, whether their part or a meeting says so."""
    parts = [p for p in sight.parts(PartKind.PACER) if p.person == pacer]
    plans = plans_of(sight)
    joins = [p.pace_from for p in parts] + [m.point for m in plans if m.pacer_joins == pacer]
    leaves = [p.pace_to for p in parts] + [m.point for m in plans if m.pacer_leaves == pacer]
    order = [p.id for p in sight.event.course_of(sight.runner.id).points]

    def last(where: Iterable[str | None]) -> int:
        return max((order.index(p) for p in where if p in order and sight.reached(p)), default=-1)

    return -1 < last(joins) >= last(leaves)


def unanswered(sight: Sight) -> Iterator[Draft | Wake]:
    """A question that none of the crew at the point answers: somebody at home is asked to telephone them.

    Silence of reporters who may fail becomes an alarm late, by the odds (see `overdue`); crew who are asleep in the car
    must not be mistaken for such.
    """
    found = late_at(sight)
    if found is None or blind(sight) or sight.held() or with_us(sight) or open_alarms(sight.made):
        return
    point, occasion = found[0], sight.fact_at.isoformat()
    there = {w for m in plans_of(sight) if m.point == point for w in members(sight.event, m)}
    asked = [m for m in sight.told(NoticeKind.LATE, point=point) if m.notice.occasion == occasion]
    mine = [m for m in asked if m.notice.key.person in there]
    if not mine or any(m.answered_at is not None for m in asked):
        return
    since = min(m.made_at for m in mine)
    # Whoever has written since, of whatever it was, is up and reads: they are given the time anew.
    wrote = (last_word(sight, m.notice.key.person) for m in mine)
    due = max([since, *(at for at in wrote if at is not None)]) + UNANSWERED
    if sight.now < due:
        yield Wake(due)
        return
    them = mine[0].notice.key.person
    values = UnreachedValues(them, NoticeKind.LATE.value, sight.person(them).channels, since)
    told = [
        m
        for m in sight.told(NoticeKind.UNREACHED, point=point)
        if m.notice.occasion.startswith(f"late:{occasion}")
    ]
    if any(m.answered_at is not None for m in told):
        return
    # Nobody at home has answered either: the organisers too, and again, for as long as it is of use.
    number = min(int((sight.now - due) / UNANSWERED), PHONED_MAX - 1)
    if number + 1 < PHONED_MAX:
        yield Wake(due + (number + 1) * UNANSWERED)
    home = sight.people(PartKind.SAFETY_CONTACT, *((PartKind.ORGANISER,) if number else ()))
    # Who was told that she is late was told with it who does not answer, and is asked only if that brings nothing.
    knows = (
        {m.notice.key.person for m in sight.told(NoticeKind.LATE_HOME, point=point)} if not number else set()
    )
    for who in home:
        if who not in there and who not in knows and may_be_asked(sight, who):
            yield Draft(
                NoticeKind.UNREACHED,
                who,
                point,
                f"{NoticeKind.LATE.value}:{occasion}:{number}",
                due + number * UNANSWERED,
                values,
                use_by=due + number * UNANSWERED + PHONING,
                needs_answer=True,
                buttons=(Answer.ON_IT, Answer.CANNOT),
                mine=True,
            )


RULES: tuple[Rule, ...] = (late, unanswered)
