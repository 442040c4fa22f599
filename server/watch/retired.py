"""Retired: everybody hears, somebody fetches her, one person tells race control; she stays watched until both is done."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.event.model import PartKind
from server.facts.entry import Retired
from server.facts.state import Going, Retirement, Stamp
from server.watch.crew_whereabouts import may_be_asked, on_road_until
from server.watch.notice import Answer, CorrectionValues, Made, NoticeKind, RetiredValues, Urgency, Waits
from server.watch.pick_up import UNKNOWN_DRIVE, FetchAsked, asking, plan_of_it
from server.watch.runner_context import Draft, Rule, Sight, Wake, heard_at
from server.watch.table import may_be_told

__all__ = ["RULES"]

HOME_AFTER = timedelta(hours=1)
"""Nobody has her so long after she retired: the safety contact is asked as well, as an alarm."""

OFTEN, LATER = 3, 3
"""Asked three times at the look-again time, then every third (own choice: an hour and a half of asking
often is enough to be heard, and more is switched off)."""

HAND, RACE_CONTROL, IN_HAND = Waits.HAND.value, Waits.RACE_CONTROL.value, Waits.IN_HAND.value
GOES = Waits.GOES.value
HOME = "home"

_HEARS = (
    PartKind.CREW,
    PartKind.PACER,
    PartKind.SAFETY_CONTACT,
    PartKind.ORGANISER,
    PartKind.SUPPORTER,
    PartKind.RUNNER,
)
_NEAR = (PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.RUNNER)
"""Who hears that somebody goes to fetch her."""


@dataclass(frozen=True, slots=True)
class _Calling:
    """Who is asked to tell race control; the last of them is `now` the one to do it, None when none can be had.
    `wakes` are when one who has not answered counts as not to be had."""

    people: tuple[str, ...]
    now: str | None
    wakes: tuple[datetime, ...] = ()


def retired(sight: Sight) -> Iterator[Draft | Wake]:
    """Told once to all; asked again of those who fetch her, and of the one who calls race control."""
    retirement = sight.state.retirement
    if retirement is None:
        return
    over = sight.state.going is Going.CLOSED or retirement.how is Retired.DID_NOT_START
    turn = asking(sight, retirement)
    fetch = turn.people if turn.now is None else (turn.now,)
    asks = not over and sight.state.race_control_knows is None
    calling = _calling(sight, retirement, turn) if asks else _Calling((), _caller(sight))
    yield from (Wake(w) for w in (*calling.wakes, *turn.wakes))
    base = _told(sight, retirement, turn, fetch, calling.now)
    yield from _news(sight, base, fetch, calling, over=over)
    now = [] if over or sight.state.in_hand is not None else list(_goes_now(sight, base, turn, calling))
    yield from now
    near = sight.people(PartKind.CREW, PartKind.PACER)
    news = [*now, *_in_hand(sight, base, near, calling)]
    yield from news[len(now) :]
    if not over:
        turned = {d.person for d in now if d.needs_answer}
        fetch = tuple(w for w in fetch if w not in turned)
        calling = replace(
            calling, people=tuple(p for p in calling.people if p not in {d.person for d in news})
        )
        yield from _reminders(sight, base, retirement, fetch, calling)


def _told(
    sight: Sight, retirement: Retirement, turn: FetchAsked, fetch: tuple[str, ...], caller: str | None
) -> Draft:
    state, stamp = sight.state, retirement.stamp
    has_her = state.in_hand
    return Draft(
        NoticeKind.RETIRED,
        "",
        retirement.point or "",
        stamp.entry,
        heard_at(sight, stamp),
        RetiredValues(
            how=retirement.how.value,
            point=retirement.point,
            at=stamp.at,
            told_by=stamp.by,
            words=retirement.words,
            in_hand=has_her is not None,
            race_control_knows=state.race_control_knows is not None,
            pick_up_by=fetch,
            caller=caller,
            in_hand_by="" if has_her is None else has_her.by,
            in_hand_at=None if has_her is None else has_her.at,
            fetch=None if has_her is not None else plan_of_it(sight, retirement, turn),
        ),
        (stamp.entry,),
        mine=True,
        lasting=True,
    )


def _about(sight: Sight, who: str, entry: str) -> list[Made]:
    """What a person was told of this retirement."""
    return [m for m in sight.told(NoticeKind.RETIRED, who) if entry in m.notice.facts]


# --- told once to all ------------------------------------------------------------------------------------


def _news(
    sight: Sight, base: Draft, fetch: tuple[str, ...], calling: _Calling, *, over: bool
) -> Iterator[Draft]:
    """To everybody but those who reported it, and those who hear it with being asked to tell race control."""
    values = base.values
    assert isinstance(values, RetiredValues)
    for who in dict.fromkeys((*fetch, *sight.people(*_HEARS))):
        asked_at_once = who in calling.people and may_be_asked(sight, who)
        known = who == values.told_by and who not in fetch
        if known or asked_at_once or _about(sight, who, base.occasion):
            continue
        asks = not over and who in fetch and not values.in_hand and may_be_asked(sight, who)
        supporter = not any(
            p.person == who for p in sight.parts(*(k for k in _HEARS if k is not PartKind.SUPPORTER))
        )
        yield replace(
            base,
            person=who,
            needs_answer=asks,
            buttons=(Answer.I_GO, Answer.IN_HAND, Answer.CANNOT) if asks else (),
            urgency=Urgency.NEWS if supporter else None,
            mine=not supporter,
        )


# --- somebody goes ----------------------------------------------------------------------------------------


def _goes_now(sight: Sight, base: Draft, turn: FetchAsked, calling: _Calling) -> Iterator[Draft]:
    """Who goes is told once to those who know that she has retired and would else go themselves, or wait for somebody; and
    to the next one asked, that it is their turn now."""
    values = base.values
    assert isinstance(values, RetiredValues)
    if turn.goes is not None:
        occasion = f"{base.occasion}:{GOES}:{turn.goes}"
        for who in sight.people(*_NEAR):
            told = _about(sight, who, base.occasion)
            said = any(m.notice.occasion.startswith(occasion) for m in told)
            if who == turn.goes or said or not (told or who == values.told_by):
                continue
            # Who drives rings nobody: whose turn it is to tell race control reads it in the same message.
            rings = who in calling.people and not _asked(sight, who, base.occasion, RACE_CONTROL)
            yield replace(
                base,
                person=who,
                occasion=f"{occasion}:{RACE_CONTROL}:" if rings else occasion,
                owed_at=turn.since or sight.now,
                values=replace(values, waits=Waits.GOES, caller=who if rings else values.caller),
                needs_answer=rings,
                buttons=(Answer.RACE_CONTROL_TOLD,) if rings else (),
            )
        return
    for who in turn.people[1:]:
        told = _about(sight, who, base.occasion)
        asked = any(Answer.I_GO.value in m.notice.buttons for m in told)
        if told and not asked and may_be_asked(sight, who):
            yield replace(
                base,
                person=who,
                occasion=f"{base.occasion}:{HAND}:turn",
                owed_at=sight.now,
                values=replace(
                    values, waits=Waits.HAND, caller=who if who in calling.people else values.caller
                ),
                needs_answer=True,
                buttons=(
                    *(Answer.I_GO, Answer.IN_HAND, Answer.CANNOT),
                    *((Answer.RACE_CONTROL_TOLD,) if who in calling.people else ()),
                ),
            )


# --- somebody has her ------------------------------------------------------------------------------------


def _in_hand(sight: Sight, base: Draft, fetch: tuple[str, ...], calling: _Calling) -> Iterator[Draft]:
    """At once to the safety contact, who sits at home, to those who were to fetch her, and to who calls race
    control: to each who knows that she retired and not that somebody has her."""
    stamp, values = sight.state.in_hand, base.values
    assert isinstance(values, RetiredValues)
    home = sight.people(PartKind.SAFETY_CONTACT)
    ringing = (p for p in calling.people if _asked(sight, p, base.occasion, RACE_CONTROL))
    for who in dict.fromkeys((*home, *fetch, *ringing)):
        said = _said_in_hand(sight, who, base.occasion)
        if stamp is not None and said is False and who != stamp.by:
            yield _has_her(sight, base, values, stamp, who, calls=who in calling.people)
        elif stamp is None and said:
            yield replace(
                base,
                kind=NoticeKind.CORRECTION,
                person=who,
                occasion=f"{base.occasion}:{IN_HAND}:{len(_about(sight, who, base.occasion))}",
                owed_at=sight.now,
                values=CorrectionValues(IN_HAND, None, None, None, taken_back=True, by=""),
            )


def _said_in_hand(sight: Sight, who: str, entry: str) -> bool | None:
    """What a person was last told of whether somebody has her; None who was told nothing of it."""
    last: bool | None = None
    for m in sight.made:
        if m.notice.key.person == who and entry in m.notice.facts:
            match m.notice.values:
                case RetiredValues(in_hand=in_hand):
                    last = in_hand
                case CorrectionValues(was_kind=was) if was == IN_HAND:
                    last = False
                case _:
                    pass
    return last


def _has_her(
    sight: Sight, base: Draft, values: RetiredValues, stamp: Stamp, who: str, *, calls: bool
) -> Draft:
    asks = calls and may_be_asked(sight, who)
    what = f"{RACE_CONTROL}:{stamp.entry}" if asks else f"{IN_HAND}:{stamp.entry}"
    again = sum(1 for m in _about(sight, who, base.occasion) if m.notice.occasion.endswith(f":{what}"))
    return replace(
        base,
        person=who,
        occasion=f"{base.occasion}:{again}:{what}" if again else f"{base.occasion}:{what}",
        owed_at=heard_at(sight, stamp),
        values=replace(values, waits=Waits.IN_HAND, caller=who if calls else values.caller),
        needs_answer=asks,
        buttons=(Answer.RACE_CONTROL_TOLD,) if asks else (),
    )


# --- asked until it is done -------------------------------------------------------------------------------


def _reminders(
    sight: Sight,
    base: Draft,
    retirement: Retirement,
    fetch: tuple[str, ...],
    calling: _Calling,
) -> Iterator[Draft | Wake]:
    """Those who fetch her, until somebody has her; who tells race control, until they know. Whoever does both is
    asked for both at once. Who drives to her is asked once they would be there, and home not before."""
    seeking: tuple[str, ...] = ()
    if sight.state.in_hand is None:
        values = base.values
        assert isinstance(values, RetiredValues)
        seeking = fetch
        arrives = values.fetch.there_by if values.fetch is not None else None
        for who in seeking:
            yield from _again(sight, base, who, HAND, calling, not_before=arrives)
        alarm = retirement.stamp.at + HOME_AFTER
        if arrives is not None:
            alarm = min(max(alarm, arrives + sight.event.alarm.look_again), alarm + UNKNOWN_DRIVE)
        yield Wake(alarm)
        if sight.now >= alarm:
            loud = replace(base, urgency=Urgency.ALARM)
            for who in sight.people(PartKind.SAFETY_CONTACT):
                if who not in fetch:
                    yield from _again(sight, loud, who, HOME, calling)
    for who in calling.people:
        if who not in seeking or not _about(sight, who, base.occasion):
            yield from _again(sight, base, who, RACE_CONTROL, calling, both=who in seeking)


def _asked(sight: Sight, who: str, entry: str, what: str) -> list[Made]:
    return [m for m in _about(sight, who, entry) if f":{what}:" in m.notice.occasion]


def _again(
    sight: Sight,
    base: Draft,
    who: str,
    what: str,
    calling: _Calling,
    *,
    both: bool = False,
    not_before: datetime | None = None,
) -> Iterator[Draft | Wake]:
    """Asked again each look-again time since last told; a driver on the road when off it."""
    values = base.values
    assert isinstance(values, RetiredValues)
    entry, calls = base.occasion, who in calling.people
    told, asked = _about(sight, who, entry), _asked(sight, who, entry, what)
    at_once = what != HAND and not asked
    wait = sight.event.alarm.look_again * (1 if len(asked) < OFTEN else LATER)
    due = sight.now if at_once else max((m.made_at for m in told), default=sight.now) + wait
    road = on_road_until(sight, who)
    due = max(d for d in (due, road, not_before) if d is not None)
    yield Wake(due)
    if sight.now < due:
        return
    fetches = both or what != RACE_CONTROL
    knows = bool(told) or who == values.told_by
    yield replace(
        base,
        person=who,
        occasion=f"{entry}:{what}:{len(asked)}",
        owed_at=due,
        needs_answer=True,
        values=replace(
            values,
            waits=(Waits.RACE_CONTROL if what == RACE_CONTROL else Waits.HAND) if knows else Waits.NEWS,
            caller=who if calls else values.caller,
        ),
        buttons=(
            *((Answer.I_GO, Answer.IN_HAND, Answer.CANNOT) if fetches else ()),
            *((Answer.RACE_CONTROL_TOLD,) if calls else ()),
        ),
    )


# --- who tells race control ------------------------------------------------------------------------------


def _caller(sight: Sight) -> str | None:
    """The one named in the event file, if their part lets them hear of it at all."""
    caller = sight.caller()
    event, runner = sight.event, sight.runner.id
    return caller if caller and may_be_told(event, runner, caller, NoticeKind.RETIRED) else None


def _calling(sight: Sight, retirement: Retirement, turn: FetchAsked) -> _Calling:
    """The one named; while they can't be had, one after the other who could: the rest were told that there is no
    need for them to ring, so it must not hang on one person alone."""
    caller = _caller(sight)
    if caller is None:
        return _Calling((), None)
    phones = [p.person for p in sight.parts(PartKind.CREW, PartKind.PACER) if p.can_telephone]
    home = sight.people(PartKind.SAFETY_CONTACT)
    # Race control as a person of the event has read it, and can't ring itself.
    organisers = [p for p in sight.people(PartKind.ORGANISER) if not sight.event.is_race_control(p)]
    people: list[str] = []
    wakes: list[datetime] = []
    for who in dict.fromkeys((caller, *home, *phones, *organisers)):
        people.append(who)
        until = _to_be_had_until(sight, who, retirement.stamp.entry)
        if who == turn.goes and sight.state.in_hand is None:
            until = sight.now  # at the wheel, on the way to her
        if until is None or sight.now < until:
            wakes += [] if until is None else [until]
            return _Calling(tuple(people), who, tuple(wakes))
    return _Calling(tuple(people), None)


def _to_be_had_until(sight: Sight, who: str, entry: str) -> datetime | None:
    """Until when somebody counts as there to tell race control; None for as long as it takes.

    Who is on the road is not; who was asked has the look-again time to answer in, unless no channel reaches them.
    """
    ring = Answer.RACE_CONTROL_TOLD.value
    mine = [m for m in _about(sight, who, entry) if m.notice.needs_answer and ring in m.notice.buttons]
    answered = [m for m in mine if m.answered_at is not None]
    if answered:
        return sight.now if answered[-1].answer == Answer.CANNOT.value else None
    if not mine:
        return None if may_be_asked(sight, who) else sight.now
    if all(m.failed for m in mine):
        return sight.now
    return min(m.made_at for m in mine) + sight.event.alarm.look_again


RULES: tuple[Rule, ...] = (retired,)
