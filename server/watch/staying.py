"""Who stays for a runner who is missed, and who may go on meanwhile.

She is missed while she is late and unheard of, or looked for. Then nobody is sent away from where she may yet come: crew who
should be at a point ahead of her stay, whether or not they have said that they are there. Of several cars at one point one
stays, and those of the others may go on. Waiting is over only once she has very likely gone by unseen, the place closes, or
crew have left by themselves; what race control says of her is a sighting like any other.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from server.watch.alarms import alarms, ended
from server.watch.crew_whereabouts import is_there, left_again, parties_to, plans_of, stands_at, there_at
from server.watch.escalation_state import open_alarms
from server.watch.late_values import StayValues
from server.watch.notice import MeetingValues, NoticeKind, together
from server.watch.runner_context import Draft, Rule, Sight, Wake, on_grid, with_us
from server.watch.silence import with_her

__all__ = [
    "GONE_BY",
    "RULES",
    "as_missed",
    "behind",
    "gone_by",
    "may_go",
    "missed_since",
    "stays",
    "waited_out",
]

GONE_BY = 0.9
"""With these odds that she has left a point where nobody saw her, waiting there is over."""
LEAD = timedelta(minutes=5)
"""Crew hear that they stay so long before they would have to leave for their next meeting."""
LATE_SIDE = 0.97
"""Without that they would have waited until her 97% time, as it stood at the last fact."""

_SOUGHT = (NoticeKind.OVERDUE.value, NoticeKind.SWEEP.value)


def sought(sight: Sight) -> bool:
    """Whether she is looked for: an alarm of silence or of the sweep is open, and nothing that is known now ends it."""
    if not any(alarm.partition(":")[0] in _SOUGHT for alarm in open_alarms(sight.made)):
        return False
    return any(a.kind.value in _SOUGHT and ended(sight, a) is None for a in alarms(sight))


def late_since(sight: Sight) -> datetime | None:
    """Her 90% time at the next point that somebody reports from, as it stood when she was last seen."""
    found = None if sight.seen_outlook is None else sight.seen_outlook.late_time()
    return None if found is None else max(found[1], sight.state.start)


def missed_since(sight: Sight) -> datetime | None:
    """Since when nobody has seen her, where she is late and unheard of, or looked for; None where she is not missed."""
    return sight.once(("missed", len(sight.made)), lambda: _missed_since(sight))


def _missed_since(sight: Sight) -> datetime | None:
    if not sight.state.going.on_course or with_us(sight):
        return None
    late = late_since(sight)
    if not sought(sight) and (late is None or sight.now < late or sight.held()):
        return None
    known = sight.state.last_known
    return sight.state.start if known is None else known.at


def gone_by(sight: Sight, m: MeetingValues) -> bool:
    """Whether she has very likely gone by where nobody saw her; `m` is of one car. Never by odds alone where those of it
    were there before she can have come: they would have seen her."""
    if sight.reached(m.point) or _there_in_time(sight, m):
        return False
    tick, _ = on_grid(sight.now)
    view = sight.view_at(tick)
    return view is not None and m.point in view.points and view.p_out_by(m.point, tick) >= GONE_BY


def _there_in_time(sight: Sight, m: MeetingValues) -> bool:
    since = [at for who in m.crew if (at := there_at(sight, m.point, who)) is not None]
    return any(at <= m.window.early for at in since)


def waited_out(sight: Sight, m: MeetingValues) -> bool:
    """Whether waiting for her at a meeting where she has not been seen is over for those of one car."""
    closes = _closes(sight, m)
    if closes is not None and sight.now >= closes:
        return True
    if left_again(sight, m.point, m.crew):
        return True
    if sight.now < m.be_there or sight.held() or with_us(sight):
        return False
    if missed_since(sight) is None:
        return gone_by(sight, m)
    free = may_go(sight, m.meeting)
    return bool(m.crew) and all(p in free for p in m.crew)


def _closes(sight: Sight, m: MeetingValues) -> datetime | None:
    access = sight.event.course_of(sight.runner.id).point(m.point).access
    return None if access is None else access.closes


def stays(sight: Sight, m: MeetingValues) -> bool:
    """Whether those of one car stay at a meeting until she is heard of."""
    due = missed_since(sight) is not None and not m.lost and not sight.reached(m.point)
    here = is_there(sight, sight.plan(m.meeting), m.crew)
    # Who was told to stay where she was last seen is not on the way to where she may come.
    here = here or (sight.now >= m.be_there and not set(m.crew) & set(behind(sight)[0]))
    return due and here and not waited_out(sight, m)


def may_go(sight: Sight, meeting: str) -> tuple[str, ...]:
    """Who may go on from a meeting where she is missed, since another car stays: all there but those of the car that has
    nothing else to go to, else the longest time until it must leave. () where one car alone is known to be there."""
    return sight.once(("may go", meeting, len(sight.made)), lambda: _may_go(sight, meeting))


def _may_go(sight: Sight, meeting: str) -> tuple[str, ...]:
    whole = next((m for m in sight.meetings if m.meeting == meeting), None)
    if whole is None or missed_since(sight) is None:
        return ()
    here = [m for m in whole.parties() if m.crew and is_there(sight, sight.plan(meeting), m.crew)]
    if not here:
        return ()
    far = sight.now + timedelta(days=30)
    stay = max(here, key=lambda m: leaves_next(sight, m) or far)
    return tuple(p for m in here if m is not stay and m.next_meeting is not None for p in m.crew)


def behind(sight: Sight) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Who stays where she was last seen while she is missed, and who may go from there: the people of the cars that are
    known to be there still. She may turn back, and they are nearest behind her."""
    return sight.once(("behind", len(sight.made)), lambda: _behind(sight))


def _behind(sight: Sight) -> tuple[tuple[str, ...], tuple[str, ...]]:
    last = sight.state.times[-1].point if sight.state.times else None
    plan = next((p for p in plans_of(sight) if p.point == last), None)
    if last is None or plan is None or missed_since(sight) is None:
        return (), ()
    # A pacer who came in that car and has set off with her is not there.
    cars = [tuple(p for p in c.people if not with_her(sight, p)) for c in parties_to(sight, plan)]
    here = [c for c in cars if any(stands_at(sight, p) == last for p in c)]
    if not here:
        return (), ()
    far = sight.now + timedelta(days=30)
    keep = max(here, key=lambda c: _next_leave(sight, c) or far)
    return keep, tuple(p for c in here if c is not keep for p in c)


def _next_leave(sight: Sight, people: tuple[str, ...]) -> datetime | None:
    """By when those of one car would leave for the first meeting ahead."""
    ahead = (
        m.own(p).leave_by
        for m in sight.meetings
        for p in people
        if p in m.crew and not sight.reached(m.point)
    )
    return next(ahead, None)


def leaves_next(sight: Sight, m: MeetingValues) -> datetime | None:
    """By when those of one car would leave for their next meeting with her; None without one, or a confirmed drive."""
    after = next((n for n in sight.meetings if n.meeting == m.next_meeting), None)
    return None if after is None or not m.crew else after.own(m.crew[0]).leave_by


def as_missed(sight: Sight) -> tuple[MeetingValues, ...]:
    """Her meetings with whether crew stay for her, and since when nobody has seen her, where she is missed."""
    since = missed_since(sight)
    if since is None:
        return sight.meetings
    return tuple(
        together([replace(m, stay=stays(sight, m), unseen=since) for m in whole.parties()], whole.crew)
        for whole in sight.meetings
    )


def stay(sight: Sight) -> Iterator[Draft | Wake]:
    """Once a silence and meeting, when crew would otherwise go: who stays, and who may go on."""
    since = missed_since(sight)
    if since is None:
        late = late_since(sight)
        yield from () if late is None else (Wake(late),)
        return
    yield from _stay_behind(sight, since)
    first = next((m.meeting for m in sight.meetings if any(stays(sight, c) for c in m.parties())), None)
    for whole in sight.meetings:
        yield from _stay_at(sight, whole, since, nearest=whole.meeting == first)


def _stay_at(sight: Sight, whole: MeetingValues, since: datetime, *, nearest: bool) -> Iterator[Draft | Wake]:
    """Those whose turn this meeting is, and who would go on, or are nearest to one who is looked for."""
    cars = [m for m in whole.parties() if stays(sight, m) and _turn(sight, m)]
    cars = [m for m in cars if m.next_meeting is not None or (nearest and sought(sight))]
    go = may_go(sight, whole.meeting)
    if not cars:
        yield Wake(whole.be_there)
        return
    due = min(_would_go(sight, m) for m in cars)
    if sight.now < due:
        yield Wake(due)
        return
    keep = tuple(p for m in cars for p in m.crew)
    known = sight.state.last_known
    ahead = [m.next_meeting for m in (cars if not go else whole.parties()) if m.next_meeting]
    later = [m.point for m in sight.meetings if set(m.crew) & set(go or keep) and not sight.reached(m.point)]
    places = [*(_point_of(sight, p) for p in ahead), *later]
    values = StayValues(
        whole.point, keep, go, since, known, sought(sight), _elsewhere(sight, whole.point, places)
    )
    facts = () if known is None else (known.entry,)
    for who in (*keep, *go):
        occasion = f"{sight.seen_at.isoformat()}:{'go' if who in go else 'stay'}"
        yield Draft(NoticeKind.STAY, who, whole.point, occasion, sight.now, values, facts, mine=True)


def _stay_behind(sight: Sight, since: datetime) -> Iterator[Draft | Wake]:
    """Those where she was last seen, when they would leave for the next meeting, or at once when she is looked for."""
    keep, go = behind(sight)
    if not keep or not sight.state.times:
        return
    leaves, point = _next_leave(sight, keep), sight.state.times[-1].point
    due = sight.now if sought(sight) or leaves is None else leaves - LEAD
    if leaves is None and not sought(sight):
        return
    if sight.now < due:
        yield Wake(due)
        return
    known = sight.state.last_known
    ahead = [
        m.point for m in sight.meetings for p in (go or keep) if p in m.crew and not sight.reached(m.point)
    ]
    values = StayValues(point, keep, go, since, known, sought(sight), _elsewhere(sight, point, ahead))
    facts = () if known is None else (known.entry,)
    for who in (*keep, *go):
        occasion = f"{sight.seen_at.isoformat()}:{'go' if who in go else 'stay'}"
        yield Draft(NoticeKind.STAY, who, point, occasion, sight.now, values, facts, mine=True)


def _turn(sight: Sight, m: MeetingValues) -> bool:
    """Whether no meeting before it still holds those of one car."""
    before = sight.meetings[: [w.meeting for w in sight.meetings].index(m.meeting)]
    mine = (w.own(p) for w in before for p in m.crew if p in w.crew)
    return all(w.lost or sight.reached(w.point) or waited_out(sight, w) for w in mine)


def _would_go(sight: Sight, m: MeetingValues) -> datetime:
    """When those of one car would have gone, were she not missed; at once where she is looked for."""
    if sought(sight):
        return sight.now
    leaves, view = leaves_next(sight, m), sight.fact_view
    waits = m.wait_until if view is None or m.point not in view.points else view.arrival(m.point, LATE_SIDE)
    return waits if leaves is None else min(waits, leaves - LEAD)


def _elsewhere(sight: Sight, here: str, points: Iterable[str]) -> str | None:
    """The first of those points that is not where they stand already, for another runner or for the loop before."""
    course = sight.event.course_of(sight.runner.id)
    sites = {p.id: p.access.place for p in course.points if p.access is not None and p.access.place}
    return next((p for p in points if p != here and sites.get(p, p) != sites.get(here, here)), None)


def _point_of(sight: Sight, meeting: str) -> str:
    return sight.plan(meeting).point


RULES: tuple[Rule, ...] = (stay,)
