"""Somebody fell out of a meeting: the others hear at once who could take it over, then who does; she hears what she lacks.

Told are those of the crew and at home, most of all those who could come; she herself, and those who meet her before, once
it is certain that something will not be there or nobody has taken it in `ASK`. Whoever said it has had their answer.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from server.event.model import MeetingPlan, PartKind
from server.facts.entry import Why
from server.forecast.outlook import Window
from server.watch.crew_whereabouts import AWAKE_FOR, awake
from server.watch.meetings import brought
from server.watch.notice import Answer, Made, MeetingValues, NoticeKind, UncoveredValues
from server.watch.quiet import asleep_until
from server.watch.runner_context import Draft, Rule, Sight, Wake, stewards
from server.watch.silence import with_her
from server.watch.stand_ins import stand_ins
from server.watch.uncovered_values import Ear, Out, StandIn, Uncovered

__all__ = ["RULES"]

ASK = timedelta(minutes=10)
"""So long those who could take a meeting over have for it, before she and home hear that nobody has (own choice)."""
AHEAD = timedelta(hours=3)
"""A meeting is near so long before they are to be there: then it is told by itself, and she hears of it (own choice)."""
LAST_CALL = timedelta(minutes=30)
"""Before somebody would have to leave for it, or is to be at the meeting before it (own choice)."""
_HEAR = (PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT)
_K = NoticeKind


def uncovered(sight: Sight) -> Iterator[Draft | Wake]:
    """What is open, lacks something, or is gone to by somebody else; each stand told once. Of several meetings that are open
    by one word the first is told at once, with the others in it; those come by themselves once they are near."""
    order = [p.id for p in sight.event.course_of(sight.runner.id).points]
    hers = [u for u in sight.situation.uncovered if u.plan.runner == sight.runner.id]
    hers = sorted(
        (u for u in hers if not sight.reached(u.plan.point)), key=lambda u: order.index(u.plan.point)
    )
    for number, u in enumerate(hers):
        if u.taken is not None:
            yield from _taken(sight, u)
            continue
        first = all(o.whole is not u.whole or o.fallen[0] != u.fallen[0] for o in hers[:number])
        m = _values_of(sight, u.plan.id)
        if not first and (m is None or sight.now < m.be_there - AHEAD):
            yield from () if m is None else (Wake(m.be_there - AHEAD),)
        elif u.whole:
            yield from _goes_on(sight, u)
        else:
            later = [o for o in hers[number + 1 :] if o.taken is None and not o.whole]
            yield from _open(sight, u, later)


def _values_of(sight: Sight, meeting: str) -> MeetingValues | None:
    return next((m for m in sight.meetings if m.meeting == meeting), None)


def _goes_on(sight: Sight, u: Uncovered) -> Iterator[Draft]:
    """The others of the car, or of the meeting, go all the same, with all she needs: nobody else has to hear of it."""
    for who in u.goes:
        if not _said_it(u, who):
            yield _draft(sight, u, who, Ear.GOES, mine=True)


def _open(sight: Sight, u: Uncovered, later: list[Uncovered]) -> Iterator[Draft | Wake]:
    could = () if u.held and u.no_pacer is None else stand_ins(sight, u)
    said_no = _said_no(sight, u)
    able = tuple(s for s in could if s.person not in said_no)
    presses = _presses(sight, u, able)
    waited = sight.now >= presses
    if not waited:
        yield Wake(presses)
    drafts = [*_asked(sight, u, able, waited=waited), *_told(sight, u, able)]
    also = tuple((o.plan.point, m.window) for o in later if (m := _values_of(sight, o.plan.id)) is not None)
    yield from (_with_also(d, also) for d in drafts)
    if waited or not able:
        yield from _she_lacks(sight, u)
    if waited and not u.held and (able or said_no):
        yield from _again(sight, u, able)


def _presses(sight: Sight, u: Uncovered, able: tuple[StandIn, ...]) -> datetime:
    """From when it can wait no longer for somebody to take it: `ASK` after they were asked, but not long before."""
    told = [
        x.made_at
        for x in sight.told(NoticeKind.UNCOVERED, point=u.plan.point)
        if x.notice.occasion.startswith(_occasion(u))
    ]
    asked = min(told, default=sight.now) + ASK
    m = _values_of(sight, u.plan.id)
    near = [] if m is None else [m.be_there - AHEAD]
    near += [s.leave_by - LAST_CALL for s in able if s.leave_by is not None]
    return max(asked, min(near)) if near else asked


def _with_also(draft: Draft, also: tuple[tuple[str, Window], ...]) -> Draft:
    assert isinstance(draft.values, UncoveredValues)
    return replace(draft, values=replace(draft.values, also=also))


def _asked(sight: Sight, u: Uncovered, able: tuple[StandIn, ...], *, waited: bool) -> Iterator[Draft]:
    """Those who could come; a sleeper is woken for it only once nobody who is awake has taken it."""
    nobody_up = all(_asleep(sight, s.person) for s in able)
    for s in able:
        if not _said_it(u, s.person):
            wake = waited or nobody_up or not _asleep(sight, s.person)
            yield _ask(sight, u, s.person, able, mine=wake)


def _told(sight: Sight, u: Uncovered, able: tuple[StandIn, ...]) -> Iterator[Draft]:
    """Everybody else of the crew and at home, and those of whom others said it; organisers where nobody can come."""
    fell = {f.person for f in u.fallen}
    for f in u.fallen:
        if not _said_it(u, f.person):
            yield _draft(sight, u, f.person, Ear.FALLEN, mine=True, buttons=(Answer.I_GO,))
    home = {*sight.people(PartKind.SAFETY_CONTACT), *stewards(sight.event)}
    hears = dict.fromkeys((*sight.people(*_HEAR), *(() if able else stewards(sight.event))))
    for who in hears:
        if who in fell or _said_it(u, who) or who in {s.person for s in able}:
            continue
        ear = Ear.GOES if who in u.goes else Ear.OTHERS
        yield _draft(sight, u, who, ear, able, mine=(who in home and not able) or who in u.goes)


def _again(sight: Sight, u: Uncovered, able: tuple[StandIn, ...]) -> Iterator[Draft]:
    """Nobody has taken it: those who could are asked once more, home and organisers hear that it is open."""
    for s in able:
        yield _ask(sight, u, s.person, able, mine=True, again=True)
    for who in dict.fromkeys((*sight.people(PartKind.SAFETY_CONTACT), *stewards(sight.event))):
        if who not in {s.person for s in able} and not _said_it(u, who):
            yield _draft(sight, u, who, Ear.OTHERS, able, mine=True, again=True)


def _she_lacks(sight: Sight, u: Uncovered) -> Iterator[Draft | Wake]:
    """She herself, and those who meet her next before it, once that or the meeting itself is near."""
    before, m = _meets_before(sight, u), _values_of(sight, u.plan.id)
    near = [x.be_there - ahead for x, ahead in ((m, AHEAD), (before, LAST_CALL)) if x is not None]
    if near and sight.now < min(near):
        yield Wake(min(near))
        return
    point = None if before is None else before.point
    yield _draft(sight, u, sight.runner.person, Ear.HER, mine=True, before=point)
    for who in () if before is None else before.crew:
        yield _draft(sight, u, who, Ear.MEETS_HER, mine=True, before=point)


def _meets_before(sight: Sight, u: Uncovered) -> MeetingValues | None:
    """The next meeting before it that somebody comes to."""
    order = [p.id for p in sight.event.course_of(sight.runner.id).points]
    place = order.index(u.plan.point)
    return next((m for m in sight.meetings if order.index(m.point) < place and m.crew and not m.lost), None)


def _taken(sight: Sight, u: Uncovered) -> Iterator[Draft | Wake]:
    """Everybody who was told that it is open, the one who fell out and the one who comes hear who comes; she too where
    not all will be there, and then those who meet her before."""
    assert u.taken is not None
    heard = _told_of(sight, u.plan.id)
    her = () if u.whole else (sight.runner.person,)
    people = dict.fromkeys((u.taken.person, *heard, *(f.person for f in u.fallen), *her))
    m = _values_of(sight, u.plan.id)
    now = None if m is None else m.own(u.taken.person)
    for who in people:
        ear = Ear.STAND_IN if who == u.taken.person else Ear.HER if who == sight.runner.person else Ear.OTHERS
        draft = _draft(sight, u, who, ear, kind=_K.COVERED, mine=True)
        values = draft.values
        assert isinstance(values, UncoveredValues)
        yield replace(draft, values=replace(values, meeting_now=now if ear is Ear.STAND_IN else None))
    if not u.whole:
        yield from (d for d in _she_lacks(sight, u) if isinstance(d, Wake) or d.person != sight.runner.person)


def back(sight: Sight) -> Iterator[Draft | Wake]:
    """A meeting that people were told is open is gone to as planned again: they, and who stood in, hear it."""
    still = {u.plan.id for u in sight.situation.uncovered}
    last: dict[tuple[str, str], Made] = {}
    for m in sight.made:
        values = m.notice.values
        if (
            isinstance(values, UncoveredValues)
            and values.meeting not in still
            and values.ear is not Ear.ALONE
        ):
            last[(values.meeting, m.notice.key.person)] = m
    for (meeting, who), m in last.items():
        values = m.notice.values
        plan = next((p for p in sight.event.meetings if p.id == meeting), None)
        if (
            not isinstance(values, UncoveredValues)
            or values.back
            or plan is None
            or sight.reached(plan.point)
        ):
            continue
        ear = Ear.FALLEN if who in plan.crew else Ear.HER if who == sight.runner.person else Ear.OTHERS
        if ear is Ear.FALLEN and any(o.person == who == o.told_by for o in values.fallen):
            continue
        now = next((x.own(who) for x in sight.meetings if x.meeting == meeting and who in x.crew), None)
        new = replace(values, ear=ear, back=True, goes=plan.crew, stand_ins=(), again=False, meeting_now=now)
        occasion = f"{meeting}:back:{m.notice.occasion}"
        yield Draft(_K.COVERED, who, plan.point, occasion, sight.now, new, m.notice.facts, mine=True)


def alone(sight: Sight) -> Iterator[Draft | Wake]:
    """A pacer who is with her on foot can't go on: two people are out there, and she may be alone. All hear at once."""
    for f in sight.race.fallen:
        plan = set_off_at(sight, f.person)
        if plan is None or f.why in (Why.CAR, Why.DRIVER):
            continue
        values = UncoveredValues(
            plan.id, plan.point, Ear.ALONE, (Out(f.person, f.why.value, f.stamp.by, f.words),), pacer=f.person
        )
        for who in dict.fromkeys((*sight.people(*_HEAR), *stewards(sight.event))):
            if who != f.stamp.by:
                occasion, at = f"alone:{f.stamp.entry}", f.stamp.at
                yield Draft(
                    _K.UNCOVERED,
                    who,
                    plan.point,
                    occasion,
                    at,
                    values,
                    (f.stamp.entry,),
                    mine=True,
                    lasting=True,
                )


def set_off_at(sight: Sight, pacer: str) -> MeetingPlan | None:
    """The meeting at which a pacer who runs with her now joined her; None while she is still there."""
    order = [p.id for p in sight.event.course_of(sight.runner.id).points]
    joins = (
        m
        for m in sight.event.meetings_of(sight.runner.id)
        if m.pacer_joins == pacer and sight.reached(m.point)
    )
    last = max(joins, key=lambda m: order.index(m.point), default=None)
    if last is None or not with_her(sight, pacer):
        return None
    times = sight.state.at_point(last.point)
    waits = times is not None and times.left is None and times.arrived is not None and not times.through
    return None if waits else last


def _told_of(sight: Sight, meeting: str) -> tuple[str, ...]:
    found = (m.notice for m in sight.made if m.notice.key.kind is _K.UNCOVERED)
    return tuple(
        dict.fromkeys(
            n.key.person
            for n in found
            if isinstance(n.values, UncoveredValues)
            and n.values.meeting == meeting
            and n.key.person in {p.id for p in sight.event.people}
        )
    )


def _said_no(sight: Sight, u: Uncovered) -> set[str]:
    """Who was asked to take it over and said that they can't."""
    return {
        m.notice.key.person
        for m in sight.told(_K.UNCOVERED, point=u.plan.point)
        if m.answer == Answer.CANNOT.value and m.notice.occasion.startswith(_occasion(u))
    }


def _said_it(u: Uncovered, who: str) -> bool:
    return any(f.stamp.by == who for f in u.fallen)


def _asleep(sight: Sight, who: str) -> bool:
    quiet = asleep_until(sight.person(who), sight.event, sight.now) is not None
    return quiet and not awake(sight, who, sight.now - AWAKE_FOR)


def _occasion(u: Uncovered) -> str:
    return f"{u.plan.id}:{u.stand}"


def _ask(
    sight: Sight, u: Uncovered, who: str, able: tuple[StandIn, ...], *, mine: bool, again: bool = False
) -> Draft:
    both = (Answer.I_GO, Answer.CANNOT)
    return _draft(sight, u, who, Ear.STAND_IN, able, mine=mine, buttons=both, again=again)


def _draft(
    sight: Sight,
    u: Uncovered,
    who: str,
    ear: Ear,
    able: tuple[StandIn, ...] = (),
    *,
    mine: bool,
    kind: NoticeKind = NoticeKind.UNCOVERED,
    buttons: tuple[Answer, ...] = (),
    again: bool = False,
    before: str | None = None,
) -> Draft:
    m = _values_of(sight, u.plan.id)
    facts = tuple(f.stamp.entry for f in u.fallen) if u.taken is None else (u.taken.stamp.entry,)
    values = UncoveredValues(
        meeting=u.plan.id,
        point=u.plan.point,
        ear=ear,
        fallen=tuple(Out(f.person, f.why.value, f.stamp.by, f.words) for f in u.fallen),
        window=None if m is None else m.window,
        out=u.out,
        goes=u.goes,
        driver=u.driver,
        stand_ins=able,
        kit=brought(u.plan),
        food=u.plan.food,
        missing=u.missing,
        kit_car=u.kit_car,
        pacer=u.no_pacer,
        by=None if u.taken is None else u.taken.person,
        before=before,
        again=again,
    )
    tells = f":{ear.value}" if ear in (Ear.HER, Ear.MEETS_HER) else ":again" if again else ""
    return Draft(
        kind,
        who,
        u.plan.point,
        f"{_occasion(u)}{tells}",
        sight.now,
        values,
        facts,
        use_by=None if m is None else m.wait_until,
        needs_answer=bool(buttons),
        buttons=buttons,
        mine=mine,
        lasting=True,
    )


RULES: tuple[Rule, ...] = (uncovered, alone, back)
