"""A cut-off she has missed: told once to all who would act on it, asked about, until it is known what race control says.

The rule ends her race there, race control decides: so nothing sends crew on to a later point meanwhile, no window of one
is told as if nothing were, and she stays watched. It is over once she is seen farther on, is said to go on, or retires.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from server.event.model import PartKind
from server.facts.cut_offs import Past, PastCutOff, cut_offs_at, past_cut_off
from server.facts.state import Going
from server.watch.crew_routes import members
from server.watch.crew_whereabouts import is_there, may_be_asked, on_road_until, plans_of, there_at
from server.watch.leaving import next_of
from server.watch.notice import Answer, Made, NoticeKind, PastCutOffValues
from server.watch.runner_context import Draft, Rule, Sight, Wake
from server.watch.silence import with_her

__all__ = ["RULES", "goes_no_further", "missed"]

NOT_HEARD = timedelta(minutes=10)
"""So long after a cut-off a report of her leaving in time may still be under way (own choice)."""
SURELY_OUT = 0.8
"""In and not reported out, with these odds that she had left in time, nobody is asked: people forget 'out'."""
ASKS = 3
"""How often those who find out what race control says are asked (own choice)."""

GOES_ON, MOVED, WRONG = "goes on", "moved", "wrong"
"""Why it no longer holds; `conversation.telling` has a sentence for each."""

_HEARS = (PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER, PartKind.RUNNER)
_ASKED = (Answer.GOES_ON, Answer.RACE_OVER)


def missed(sight: Sight) -> PastCutOff | None:
    """The cut-off she has missed and from which nobody has said that she is let go on."""
    return sight.once(("past cut-off", len(sight.made)), lambda: _missed(sight))


def _missed(sight: Sight) -> PastCutOff | None:
    past = past_cut_off(sight.event, sight.race, sight.state, sight.now)
    if past is None or _let_on(sight, past):
        return None
    if past.how is Past.NO_OUT and (sight.now < past.cut_off + NOT_HEARD or _had_left(sight, past)):
        return None
    return past


def goes_no_further(sight: Sight, point: str) -> bool:
    """Whether by the rule she goes to `point` no more. That nobody has reported her out is no such thing: silence sends
    nobody away and keeps nobody back."""
    past = missed(sight)
    if past is None or past.how is Past.NO_OUT:
        return False
    order = [p.id for p in sight.event.course_of(sight.runner.id).points]
    return point in order and order.index(point) >= order.index(past.point) and point != past.seen_at


def _had_left(sight: Sight, past: PastCutOff) -> bool:
    view = sight.view_at(sight.now)
    try:
        return view is not None and view.leaving(past.point, SURELY_OUT) <= past.cut_off
    except KeyError:
        return False


def _let_on(sight: Sight, past: PastCutOff) -> str:
    """Who has said that she goes on all the same; '' for nobody."""
    told = (m for m in sight.told(NoticeKind.PAST_CUT_OFF) if m.answer == Answer.GOES_ON.value)
    return next((m.notice.key.person for m in told if _of(m, past)), "")


def _of(made: Made, past: PastCutOff) -> bool:
    v = made.notice.values
    return isinstance(v, PastCutOffValues) and (v.point, v.edge, v.cut_off) == (
        past.point, past.edge.value, past.cut_off,
    )  # fmt: skip


def past_the_cut_off(sight: Sight) -> Iterator[Draft | Wake]:
    """Once to each for each fact of it; again to those who find out; and that it no longer holds."""
    yield from _deadlines(sight)
    past = missed(sight)
    yield from _no_longer(sight, past)
    if past is None:
        return
    here, control = _at_hand(sight, past), _control(sight)
    asked = tuple(dict.fromkeys((*here, *control)))
    base = PastCutOffValues(
        past.point, past.edge.value, past.cut_off, past.how.value, past.at, past.by, past.seen_at, asked
    )
    for who in sight.people(*_HEARS):
        values = _if_let_on(sight, who, past, replace(base, here=who in here))
        yield from _tell(sight, past, who, values, asks=who in asked)


def _if_let_on(sight: Sight, who: str, past: PastCutOff, values: PastCutOffValues) -> PastCutOffValues:
    """With by when somebody would have to set out for their next meeting with her, should she go on."""
    ahead = next_of(sight, who)
    if ahead is None or ahead.point == past.seen_at or ahead.leave_by is None or ahead.leave_by <= sight.now:
        return values
    return replace(values, next_point=ahead.point, leave_by=ahead.leave_by)


def _deadlines(sight: Sight) -> Iterator[Wake]:
    """When a cut-off of the point where she is closes, with the time a report of her may take."""
    if sight.state.going not in (Going.AT_POINT, Going.RESTING) or not sight.state.times:
        return
    point = sight.event.course_of(sight.runner.id).point(sight.state.times[-1].point)
    for _, limit in cut_offs_at(sight.race, point, sight.state):
        yield Wake(limit + NOT_HEARD)


def _tell(
    sight: Sight, past: PastCutOff, who: str, values: PastCutOffValues, *, asks: bool
) -> Iterator[Draft | Wake]:
    told = [m for m in sight.told(NoticeKind.PAST_CUT_OFF, who) if _of(m, past) and not _is_over(m)]
    name = f"{past.how.value}:{past.edge.value}:{past.point}:{past.cut_off.isoformat()}"
    again = [m for m in told if m.notice.occasion.startswith(name)]
    number = len(again)
    if number and not asks:
        return
    due = _due(sight, past) if not number else max(m.made_at for m in again) + _pause(sight)
    if number and (number >= ASKS or any(m.answered_at is not None for m in told)):
        return
    road = on_road_until(sight, who) if number else None
    due = due if road is None else max(due, road)
    yield Wake(due)
    if sight.now < due:
        return
    asks = asks and may_be_asked(sight, who)
    yield Draft(
        NoticeKind.PAST_CUT_OFF,
        who,
        past.point,
        f"{name}:{number}" if number else name,
        due,
        values,
        (past.entry,),
        needs_answer=asks,
        buttons=_ASKED if asks else (),
        mine=True,
        lasting=True,
    )


def _due(sight: Sight, past: PastCutOff) -> datetime:
    """From when it was due: once the report was in, and of silence once it had its time."""
    if past.how is Past.NO_OUT:
        return past.cut_off + NOT_HEARD
    known = sight.state.last_known
    return known.received_at if known is not None and known.entry == past.entry else past.at


def _pause(sight: Sight) -> timedelta:
    return sight.event.alarm.look_again


def _at_hand(sight: Sight, past: PastCutOff) -> tuple[str, ...]:
    """Who stands where she was seen, or by the cut-off, and pacers with her."""
    points = dict.fromkeys(p for p in (past.seen_at, past.point) if p)
    crew = sight.people(PartKind.CREW)
    there = [w for p in points for w in crew if there_at(sight, p, w) is not None]
    there += [
        w
        for p in plans_of(sight)
        if p.point in points and is_there(sight, p)
        for w in members(sight.event, p)
        if is_there(sight, p, (w,))
    ]
    return tuple(dict.fromkeys((*there, *(p for p in sight.people(PartKind.PACER) if with_her(sight, p)))))


def _control(sight: Sight) -> tuple[str, ...]:
    """Who finds out at race control: the organiser decides, the one named asks."""
    caller = sight.caller()
    return (*sight.people(PartKind.ORGANISER), *((caller,) if caller else ()))


def _is_over(made: Made) -> bool:
    v = made.notice.values
    return isinstance(v, PastCutOffValues) and bool(v.over)


def _no_longer(sight: Sight, past: PastCutOff | None) -> Iterator[Draft]:
    """Each who was told of one that holds no more hears that, and why; not once she has retired: they hear of that."""
    if not sight.state.going.on_course and sight.state.going is not Going.FINISHED:
        return
    for who in sight.people(*_HEARS):
        told = list(sight.told(NoticeKind.PAST_CUT_OFF, who))
        if not told or _is_over(told[-1]) or (past is not None and _of(told[-1], past)):
            continue
        was = told[-1].notice.values
        assert isinstance(was, PastCutOffValues)
        values = _why_over(sight, was)
        if values.told_by == who and values.over == GOES_ON:
            continue
        yield Draft(
            NoticeKind.PAST_CUT_OFF,
            who,
            was.point,
            f"over:{len(told)}:{told[-1].notice.occasion}",
            sight.now,
            values,
            needs_answer=False,
            buttons=(),
            mine=True,
        )


def _why_over(sight: Sight, was: PastCutOffValues) -> PastCutOffValues:
    base = replace(was, asked=(), here=False, next_point=None, leave_by=None)
    said = (m for m in sight.told(NoticeKind.PAST_CUT_OFF) if m.answer == Answer.GOES_ON.value)
    for m in said:
        v = m.notice.values
        if isinstance(v, PastCutOffValues) and (v.point, v.cut_off) == (was.point, was.cut_off):
            at = m.answered_at or sight.now
            return replace(base, over=GOES_ON, told_by=m.notice.key.person, at=at, seen_at=None)
    order = [p.id for p in sight.event.course_of(sight.runner.id).points]
    last = sight.state.last_known
    if last is not None and last.point in order and order.index(last.point) > order.index(was.point):
        return replace(base, over=GOES_ON, told_by=last.by, at=last.at, seen_at=last.point)
    point = sight.event.course_of(sight.runner.id).point(was.point)
    now = {edge.value: limit for edge, limit in cut_offs_at(sight.race, point, sight.state)}
    if now.get(was.edge) != was.cut_off:
        return replace(base, over=MOVED, cut_off=now.get(was.edge, was.cut_off), told_by="", at=sight.now)
    return replace(base, over=WRONG, told_by="", at=sight.now)


RULES: tuple[Rule, ...] = (past_the_cut_off,)
