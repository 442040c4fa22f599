"""The rule that tells people about alarms: the ladder climbed, somebody holding it, looked again, stood down.

The machine is escalation_state.py, what raises and ends an alarm alarms.py; this says whom each step tells, and what.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from server.event.model import PartKind
from server.facts.entry import Kind
from server.facts.hearsay import is_hearsay, said_over
from server.facts.state import Stamp
from server.watch.alarms import Alarm, End, alarms, ended, helps, over_with, overdue_again
from server.watch.beside import beside, said_by_holder, words_since
from server.watch.crew_whereabouts import may_be_asked, on_road_until
from server.watch.escalation_state import Stage, Stand, given_back, next_move, nobody_answers, over_at, replay
from server.watch.naming import named_by, not_named_by
from server.watch.no_word import no_word, not_there, tracker_says
from server.watch.notice import (
    AlarmNewsValues,
    AlarmValues,
    Answer,
    Heard,
    Made,
    MissedLimit,
    NoticeKind,
    StandDownValues,
    UnreachedValues,
    Unsure,
    Urgency,
)
from server.watch.runner_context import Draft, Rule, Sight, Wake, stewards, tried, with_us_ends
from server.watch.silence import no_alarm_before, overdue_at, with_her
from server.watch.table import may_be_told
from server.watch.timed_out import missed

__all__ = ["RULES", "called_for", "steps_of"]

HEARD_MAX = 2
"""How many of the newest words about her an alarm repeats."""
SOON = 3
"""Help that nobody answers goes to everybody again at once, so many times; then at the look-again time."""


def ladder(sight: Sight) -> Iterator[Draft | Wake]:
    """Everything owed about alarms."""
    soonest = no_alarm_before(sight)
    ahead = soonest is not None and sight.now < soonest
    for when in (soonest if ahead else overdue_at(sight), overdue_again(sight)):
        if when is not None:
            yield Wake(when)
    yield from with_us_ends(sight)
    for alarm in alarms(sight):
        end = ended(sight, alarm)
        if end is not None:
            yield from _stand_down(sight, alarm, end)  # to nobody, where nobody was told yet
        else:
            yield from _climb(sight, alarm)


def called_for(sight: Sight) -> Iterator[Draft | Wake]:
    """What calls for help about her owe at once: `ladder` of these alone, which waits for nothing else to be looked at."""
    for alarm in helps(sight):
        if ended(sight, alarm) is None:
            yield from _climb(sight, alarm)


def steps_of(sight: Sight, kind: NoticeKind) -> tuple[tuple[str, ...], ...]:
    """The ladder of an alarm about her, step by step.

    Help goes to everybody at once. A sweep begins with crew and safety contact. After the people given a
    step come those who can telephone, then the organiser, and where all that is one person the crew: an alarm does not
    end with the last name written.
    """
    given: dict[int, list[str]] = {}
    for part in sorted(sight.parts(*PartKind), key=lambda p: p.ladder or 0):
        if part.ladder is not None:
            given.setdefault(part.ladder, []).append(part.person)
    home = [p for p in sight.people(PartKind.SAFETY_CONTACT) if not any(p in s for s in given.values())]
    steps = [list(given[n]) for n in sorted(given)]
    if home:
        steps = [[*home, *(steps[0] if steps else [])], *steps[1:]]
    phones = [p.person for p in sight.parts(*_CALLED) if p.can_telephone]
    caller = sight.caller()
    steps += [phones, [caller] if caller else [], list(sight.people(PartKind.ORGANISER))]
    if kind is NoticeKind.ASKED_FOR_HELP:
        pacers = [p for p in sight.people(PartKind.PACER) if with_her(sight, p)]
        steps = [[p for s in steps for p in s] + [*sight.people(PartKind.CREW), *pacers]]
    elif kind is NoticeKind.SWEEP:
        steps = [[*sight.people(PartKind.CREW, PartKind.SAFETY_CONTACT)], *steps]
    event, runner = sight.event, sight.runner.id
    found = _each_once([[p for p in s if may_be_told(event, runner, p, kind)] for s in steps])
    if len(found) == 1:
        # One name written, who may be asleep: the crew are awake somewhere, and one of them can call race control.
        crew = [p for p in sight.people(PartKind.CREW) if may_be_told(event, runner, p, kind)]
        found = _each_once([list(found[0]), crew])
    return found


_CALLED = (PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER)


def _each_once(steps: list[list[str]]) -> tuple[tuple[str, ...], ...]:
    seen: set[str] = set()
    out: list[tuple[str, ...]] = []
    for step in steps:
        new = tuple(p for p in dict.fromkeys(step) if p not in seen)
        seen |= set(new)
        if new:
            out.append(new)
    return tuple(out)


def _climb(sight: Sight, alarm: Alarm) -> Iterator[Draft | Wake]:
    """The next step, or the look-again, or when to ask again; and who holds it told to the others."""
    steps = steps_of(sight, alarm.kind)
    rule = sight.event.alarm
    stand = replay(alarm.notices)
    yield from _named(sight, alarm, stand)
    if stand.stage is Stage.HELD:
        yield from _held(sight, alarm, stand)
    elif given_back(stand):
        yield from _given_back(sight, alarm, stand, steps)
    elif steps and nobody_answers(stand, steps, sight.now, rule):
        yield from _unanswered(sight, alarm)
    soon = alarm.kind is NoticeKind.ASKED_FOR_HELP and stand.step < SOON
    pause = rule.answer_within if soon else rule.look_again
    move = next_move(stand, steps, rule, alarm.raised, pause)
    if move is None:
        return
    yield from (Wake(w) for w in (move.at, over_at(stand, rule)) if w is not None)
    if sight.now < move.at:
        return
    if move.step is None:
        holder = stand.holder or ""
        if may_be_asked(sight, holder):
            yield _ask_again(sight, alarm, stand, holder)
            return
        yield from _steps(sight, alarm, steps, stand.step + 1, stand)
    else:
        yield from _steps(sight, alarm, steps, move.step, stand)


def _steps(
    sight: Sight, alarm: Alarm, steps: tuple[tuple[str, ...], ...], first: int, stand: Stand
) -> Iterator[Draft | Wake]:
    """Tell step `first`; a step where everybody is on the road is told, and the next asked at once.

    Whoever has just given it back is not asked again at once, unless there is nobody else.
    """
    back = (
        {stand.gave_back} if given_back(stand) and any(set(s) - {stand.gave_back} for s in steps) else set()
    )
    for number in range(first, first + len(steps)):
        people = [p for p in steps[number % len(steps)] if p not in back]
        free = [p for p in people if may_be_asked(sight, p)]
        for who in people:
            yield _tell(sight, alarm, stand, who, number, asks=who in free)
        yield from (Wake(r) for p in people if (r := on_road_until(sight, p)) is not None)
        if free:
            return


def _tell(sight: Sight, alarm: Alarm, stand: Stand, who: str, number: int, *, asks: bool) -> Draft:
    first = number == 0 or not alarm.notices or alarm.kind is NoticeKind.ASKED_FOR_HELP
    told = {m.notice.key.person for m in alarm.notices}
    kind = alarm.kind if first or who in told else NoticeKind.HANDED_ON
    v = values(sight, alarm, stand, step=number)
    if v.holder is not None:
        v = replace(v, holder=None, silent=v.holder)  # asked anew, for who had it does not answer
    return Draft(
        kind,
        who,
        alarm.point or "",
        f"{alarm.id}:{number}" + ("" if asks else ":told"),
        sight.now if number else alarm.raised,
        v,
        alarm.facts,
        needs_answer=asks,
        buttons=None if asks else (),
        mine=True,
        lasting=True,
    )


def _ask_again(sight: Sight, alarm: Alarm, stand: Stand, holder: str) -> Draft:
    times = sum(1 for m in alarm.notices if m.notice.key.kind is NoticeKind.LOOK_AGAIN)
    return Draft(
        NoticeKind.LOOK_AGAIN,
        holder,
        alarm.point or "",
        f"{alarm.id}:again:{times}",
        sight.now,
        values(sight, alarm, stand, step=max(stand.step, 0)),
        alarm.facts,
        mine=True,
    )


def _held(sight: Sight, alarm: Alarm, stand: Stand) -> Iterator[Draft | Wake]:
    """Everybody told hears who holds it; the one who calls race control is asked to, and if that person can't, or can't be
    had, the holder is."""
    holder, caller = stand.holder or "", sight.caller()
    known = _race_control_knows(sight, alarm, holder)
    if sight.event.is_race_control(holder):
        caller = None  # nobody has to ring them up: the caller hears what the others hear
    elif caller is not None and caller != holder and _cannot_call(sight, alarm):
        if not known:
            yield _call_instead(sight, alarm, stand, holder)
        caller = None
    told = dict.fromkeys(m.notice.key.person for m in alarm.notices)
    again = "" if stand.takes < 2 else f":{stand.takes}"
    for who in told:
        if who not in (holder, caller):
            yield _inform(sight, alarm, stand, who, f"{alarm.id}:held:{holder}" + again)
    if caller is None or caller == holder or known:
        return
    asks = may_be_asked(sight, caller)
    yield _inform(sight, alarm, stand, caller, f"{alarm.id}:call", asks=asks)
    mine = [m for m in alarm.notices if m.notice.key.person == caller]
    if not mine or any(m.answered_at for m in mine):
        return
    since = min((m.made_at for m in mine if m.notice.occasion == f"{alarm.id}:call"), default=sight.now)
    wait = timedelta(0) if not asks or all(m.failed for m in mine) else sight.event.alarm.answer_within
    yield Wake(since + wait)
    if sight.now >= since + wait:
        yield _call_instead(sight, alarm, stand, holder)


def _call_instead(sight: Sight, alarm: Alarm, stand: Stand, holder: str) -> Draft:
    asks = may_be_asked(sight, holder)
    call = _inform(sight, alarm, stand, holder, f"{alarm.id}:call instead:{holder}", asks=asks)
    assert isinstance(call.values, AlarmValues)
    return replace(call, values=replace(call.values, caller=holder))


def _cannot_call(sight: Sight, alarm: Alarm) -> bool:
    """Whether the one who is to call race control has said, of this alarm, that they can't."""
    mine = [m for m in alarm.notices if m.notice.key.person == sight.caller() and m.answered_at is not None]
    newest = max(mine, key=lambda m: max(s.at for s in m.answers), default=None)
    return newest is not None and newest.answer == Answer.CANNOT.value


def _named(sight: Sight, alarm: Alarm, stand: Stand) -> Iterator[Draft]:
    """Those who were told that nobody knows for whom the call is hear that it is for her."""
    said = named_by(sight, alarm.basis)
    for m in alarm.notices if said else ():
        who, was = m.notice.key.person, m.notice.values
        if who != said and isinstance(was, AlarmValues) and was.not_named_by:
            yield _inform(sight, alarm, stand, who, f"{alarm.id}:named")


def _given_back(
    sight: Sight, alarm: Alarm, stand: Stand, steps: tuple[tuple[str, ...], ...]
) -> Iterator[Draft]:
    """Everybody told hears that nobody has it now, but for those who are asked to take it this very moment."""
    asked = steps[(stand.step + 1) % len(steps)] if steps else ()
    for who in dict.fromkeys(m.notice.key.person for m in alarm.notices):
        if who != stand.gave_back and who not in asked:
            yield _inform(sight, alarm, stand, who, f"{alarm.id}:back:{stand.takes}")


def _inform(
    sight: Sight, alarm: Alarm, stand: Stand, who: str, occasion: str, *, asks: bool = False
) -> Draft:
    said = values(sight, alarm, stand, step=-1)
    return Draft(
        NoticeKind.HANDED_ON,
        who,
        alarm.point or "",
        occasion,
        sight.now,
        said if who == stand.holder else _with_what_they_do(sight, alarm, stand, said),
        alarm.facts,
        needs_answer=asks,
        buttons=(Answer.RACE_CONTROL_TOLD, Answer.CANNOT) if asks else (),
        mine=True,
    )


def _race_control_knows(sight: Sight, alarm: Alarm, holder: str) -> bool:
    """Whether nobody need ring race control about it any more: they were told since, or have it themselves."""
    if sight.event.is_race_control(holder):
        return True
    known = sight.state.race_control_knows
    return known is not None and known.at >= alarm.raised


def _unanswered(sight: Sight, alarm: Alarm) -> Iterator[Draft]:
    """A whole round unanswered: the organiser hears who did not answer, to telephone them."""
    asked: dict[str, list[Made]] = {}
    for m in alarm.notices:
        if m.notice.needs_answer:
            asked.setdefault(m.notice.key.person, []).append(m)
    for organiser in stewards(sight.event):
        for who, mine in asked.items():
            if who != organiser and all(m.answered_at is None for m in mine):
                since = min(m.made_at for m in mine)
                yield Draft(
                    NoticeKind.UNREACHED,
                    organiser,
                    alarm.point or "",
                    f"{alarm.id}:{who}",
                    sight.now,
                    UnreachedValues(who, alarm.kind.value, tried(sight.person(who), mine), since),
                    alarm.facts,
                    mine=True,
                )


def _stand_down(sight: Sight, alarm: Alarm, end: End) -> Iterator[Draft]:
    """All who were told hear once that it is over, why, and who said so; with it what waited behind it."""
    others = over_with(sight, alarm)
    also = tuple(a.id for a in others)
    told = (*alarm.notices, *(m for a in others for m in a.notices), *_heard_of(sight, (alarm.id, *also)))
    on_it = {m.notice.key.person for m in told if m.notice.key.kind is not NoticeKind.ALARM_NEWS}
    for who in dict.fromkeys(m.notice.key.person for m in told):
        if who not in on_it and who == end.by:
            continue  # they saw her themselves, and were asked nothing
        yield Draft(
            NoticeKind.STAND_DOWN,
            who,
            alarm.point or "",
            alarm.id,
            sight.now,
            StandDownValues(
                alarm.id, alarm.kind.value, end.reason, end.by, end.at, end.point, end.meant, also
            ),
            (end.entry,) if end.entry else alarm.facts,
            # Who only heard of it reads it after that, on the same terms: never that it is open after that it is over.
            urgency=None if who in on_it else Urgency.NEWS,
            mine=True,
        )


def _heard_of(sight: Sight, ids: tuple[str, ...]) -> Iterator[Made]:
    """What told people who are not asked that one of these alarms is open."""
    for m in sight.told(NoticeKind.ALARM_NEWS):
        if isinstance(m.notice.values, AlarmNewsValues) and m.notice.values.alarm in ids:
            yield m


def values(sight: Sight, alarm: Alarm, stand: Stand, *, step: int) -> AlarmValues:
    """What an alarm message is worded from: facts first, then estimates that are marked as such."""
    view = sight.view_at(sight.now)
    over, hand = _race_over(sight)
    # Nobody's forecast knows where she goes once she has changed her shoes.
    fact_view = sight.fact_view if over is None else None
    if alarm.kind is NoticeKind.OVERDUE and over is None:
        # When she was due, not when those who wait for her in vain would next have thought her likely.
        fact_view = sight.seen_view
    where = None if view is None or over is not None else view.where()
    point = alarm.point
    expected = fact_view.window(point) if fact_view and point and point in fact_view.points else None
    said_km = _said_km(sight, alarm.words)
    return AlarmValues(
        alarm=alarm.id,
        of_kind=alarm.kind.value,
        point=point,
        last_known=sight.state.last_known,
        expected=expected,
        where=where,
        where_fix=None if where is None else _fix(sight, where.likely_km),
        asked=tuple(dict.fromkeys(m.notice.key.person for m in alarm.notices if m.notice.needs_answer)),
        told=tuple(dict.fromkeys(m.notice.key.person for m in alarm.notices)),
        caller=None if _cannot_call(sight, alarm) else sight.caller(),
        holder=stand.holder if stand.stage in (Stage.HELD, Stage.LOOKING_AGAIN) else None,
        step=step,
        words=alarm.words,
        pacer=next((p for p in sight.people(PartKind.PACER) if with_her(sight, p)), None),
        look_again=_look_again(sight, stand),
        raised_at=alarm.raised,
        gave_back=stand.gave_back,
        heard_since=_heard_since(sight),
        unconfirmed=_unconfirmed(sight),
        said_km=said_km,
        said_fix=None if said_km is None else _fix(sight, said_km),
        contact_lost=None if sight.state.contact_lost is None else sight.state.contact_lost.at,
        race_over=over,
        had_by="" if hand is None else hand.by,
        had_at=None if hand is None else hand.at,
        not_named_by=not_named_by(sight, alarm.basis),
        named_by=named_by(sight, alarm.basis),
        not_there=not_there(sight),
        why_now=alarm.why,
        tracker=tracker_says(sight),
        past=_missed_limit(sight),
        by=alarm.by,
        beside=beside(sight, alarm),
        since_call=words_since(sight, alarm)[-HEARD_MAX:],
        no_word=no_word(sight) if alarm.kind is NoticeKind.OVERDUE else (),
    )


def _with_what_they_do(sight: Sight, alarm: Alarm, stand: Stand, values: AlarmValues) -> AlarmValues:
    """With what whoever has it wrote of it: news to all the others, and nothing that was heard of her."""
    held = stand.stage in (Stage.HELD, Stage.LOOKING_AGAIN)
    said = said_by_holder(sight, alarm, stand) if held else None
    if said is None:
        return values
    both = dict.fromkeys((*values.since_call, said))
    return replace(values, since_call=tuple(sorted(both, key=lambda h: h.at))[-HEARD_MAX:])


def _missed_limit(sight: Sight) -> MissedLimit | None:
    past = missed(sight)
    if past is None:
        return None
    return MissedLimit(past.point, past.edge.value, past.cut_off, past.how.value, past.at, past.seen_at)


def _race_over(sight: Sight) -> tuple[datetime | None, Stamp | None]:
    """When her race ended, if somebody has had her since or she is in at the finish; and who said they had her."""
    state = sight.state
    if not state.going.no_longer_watched:
        return None, None
    ended = state.finished or (None if state.retirement is None else state.retirement.stamp)
    return (None, None) if ended is None else (ended.at, state.crew_has_her or state.in_hand)


_KM_SAID = re.compile(
    r"(?P<at>\b(?:at|bei|à|au|auf) )?\b(?P<far>\d{1,3}(?:[.,]\d{1,2})?) ?(?P<unit>km|k|kms|kilomet\w+|mi|miles?|meilen?)\b"
    r"(?(at)|(?! *\w))|\bkm ?(?P<mark>\d{1,3}(?:[.,]\d)?)\b",
    re.I,
)
KM_OF_A_MILE = 1.609344
SAID_BEHIND_KM = 5.0
"""A watch may run so far behind the course's own measure (own choice)."""


def _said_km(sight: Sight, words: str) -> float | None:
    """The distance along the course that a call for help names ('at 50 km'); None where it names none on it. '5 miles
    after Moss' and '60 km to go' count from elsewhere: none is taken with a word after its unit but for 'at', nor well
    behind her."""
    m = _KM_SAID.search(words)
    points = sight.event.course_of(sight.runner.id).points
    if m is None:
        return None
    km = float((m["far"] or m["mark"]).replace(",", "."))
    km *= KM_OF_A_MILE if (m["unit"] or "").lower().startswith(("mi", "mei")) else 1.0
    last = sight.state.last_known
    behind = 0.0 if last is None or last.km is None else last.km - SAID_BEHIND_KM
    return km if max(0.0, behind) < km <= max(p.km or 0.0 for p in points) else None


def _unconfirmed(sight: Sight) -> tuple[Unsure, ...]:
    """The newest unconfirmed reports later than the last known point: they end nothing, and may be the truth. That her
    race is said to be over stands first, with its words."""
    last = sight.state.last_known
    later = [e for e in sight.state.unconfirmed if e.kind in _SEEN and (last is None or e.seen_at > last.at)]
    over = said_over(sight.state)
    later = [e for e in later if e.kind is not Kind.RETIRED]
    seen = (Unsure(e.kind.value, e.point, e.seen_at, e.by) for e in later[-HEARD_MAX:])
    return (
        *(Unsure(e.kind.value, e.point, e.seen_at, e.by, e.words, is_hearsay(e)) for e in over[-HEARD_MAX:]),
        *seen,
    )


_SEEN = (Kind.IN, Kind.OUT, Kind.THROUGH, Kind.RETIRED, Kind.IN_HAND)


def _heard_since(sight: Sight) -> tuple[Heard, ...]:
    """The newest words about her later than the last known point: what searchers ask for first."""
    last = sight.state.last_known
    later = [e for e in sight.state.how_she_is if e.words and (last is None or e.seen_at > last.at)]
    over = sight.state.retirement
    why = () if over is None or not over.words else (Heard(over.stamp.at, over.stamp.by, over.words),)
    return (*why, *(Heard(e.seen_at, e.by, e.words) for e in later[-HEARD_MAX:]))


def _look_again(sight: Sight, stand: Stand) -> datetime | None:
    if stand.stage is not Stage.HELD or stand.since is None:
        return None
    return stand.since + sight.event.alarm.look_again


def _fix(sight: Sight, km: float) -> tuple[float, float] | None:
    courses = sight.situation.courses
    course = courses.get(sight.runner.id) or courses.get(sight.runner.course)
    if course is None:
        return None
    spot = course.at(km)
    return spot.lat_deg, spot.lon_deg


RULES: tuple[Rule, ...] = (ladder,)
