"""Retired: everybody hears, somebody fetches her, one person tells race control; she stays watched until both is done."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.event.model import PartKind
from server.facts.entry import Retired
from server.facts.state import Going, Retirement, Stamp
from server.watch.meetings import members
from server.watch.notice import Answer, CorrectionValues, Made, NoticeKind, RetiredValues, Urgency, Waits
from server.watch.places import may_be_asked, on_road_until, plans_of
from server.watch.sight import Draft, Rule, Sight, Wake, heard_at
from server.watch.table import may_be_told

__all__ = ["RULES", "pick_up"]

HOME_AFTER = timedelta(hours=1)
"""Nobody has her so long after she retired: the safety contact is asked as well, as an alarm."""

OFTEN, LATER = 3, 3
"""Asked three times at the look-again time, then every third (own choice: an hour and a half of asking
often is enough to be heard, and more is switched off)."""

HAND, RACE_CONTROL, IN_HAND = Waits.HAND.value, Waits.RACE_CONTROL.value, Waits.IN_HAND.value
HOME = "home"

_HEARS = (
    PartKind.CREW,
    PartKind.PACER,
    PartKind.SAFETY_CONTACT,
    PartKind.ORGANISER,
    PartKind.SUPPORTER,
)


def pick_up(sight: Sight, retirement: Retirement) -> tuple[str, ...]:
    """Who fetches her: the crew of the meeting where she is, else of the next one, else every driver."""
    plans = plans_of(sight)
    here = [m for m in plans if m.point == retirement.point]
    ahead = here or [m for m in plans if not sight.reached(m.point)][:1]
    people = dict.fromkeys(w for m in ahead for w in members(sight.event, m))
    drivers = dict.fromkeys(p.person for p in sight.parts(PartKind.CREW) if p.drives)
    return tuple(people or drivers or dict.fromkeys(sight.people(PartKind.CREW)))


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
    fetch = pick_up(sight, retirement)
    over = sight.state.going is Going.CLOSED or retirement.how is Retired.DID_NOT_START
    asks = not over and sight.state.race_control_knows is None
    calling = _calling(sight, retirement) if asks else _Calling((), _caller(sight))
    yield from (Wake(w) for w in calling.wakes)
    base = _told(sight, retirement, fetch, calling.now)
    yield from _news(sight, base, fetch, calling, over=over)
    news = list(_in_hand(sight, base, fetch, calling))
    yield from news
    if not over:
        calling = replace(
            calling, people=tuple(p for p in calling.people if p not in {d.person for d in news})
        )
        yield from _reminders(sight, base, retirement, fetch, calling)


def _told(sight: Sight, retirement: Retirement, fetch: tuple[str, ...], caller: str | None) -> Draft:
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
        supporter = not any(p.person == who for p in sight.parts(*_HEARS[:-1]))
        yield replace(
            base,
            person=who,
            needs_answer=asks,
            buttons=(Answer.I_GO, Answer.IN_HAND) if asks else (),
            urgency=Urgency.NEWS if supporter else None,
            mine=not supporter,
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
    sight: Sight, base: Draft, retirement: Retirement, fetch: tuple[str, ...], calling: _Calling
) -> Iterator[Draft | Wake]:
    """Those who fetch her, until somebody has her; who tells race control, until they know. Whoever does both is
    asked for both at once."""
    seeking: tuple[str, ...] = ()
    if sight.state.in_hand is None:
        seeking = tuple(w for w in fetch if _goes(sight, retirement, w)) or fetch
        for who in seeking:
            yield from _again(sight, base, who, HAND, calling)
        alarm = retirement.stamp.at + HOME_AFTER
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
    sight: Sight, base: Draft, who: str, what: str, calling: _Calling, *, both: bool = False
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
    due = due if road is None else max(due, road)
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
            *((Answer.I_GO, Answer.IN_HAND) if fetches else ()),
            *((Answer.RACE_CONTROL_TOLD,) if calls else ()),
        ),
    )


def _goes(sight: Sight, retirement: Retirement, who: str) -> bool:
    """Whether a person has said that they see to fetching her; then the others are asked no more."""
    about_race_control = (Answer.RACE_CONTROL_TOLD.value,)
    no = (Answer.CANNOT.value, *about_race_control)
    told = _about(sight, who, retirement.stamp.entry)
    mine = [m for m in told if m.answered_at is not None and m.notice.buttons != about_race_control]
    return any(m.answer not in no for m in mine)


# --- who tells race control ------------------------------------------------------------------------------


def _caller(sight: Sight) -> str | None:
    """The one named in the event file, if their part lets them hear of it at all."""
    caller = sight.caller()
    event, runner = sight.event, sight.runner.id
    return caller if caller and may_be_told(event, runner, caller, NoticeKind.RETIRED) else None


def _calling(sight: Sight, retirement: Retirement) -> _Calling:
    """The one named; while they can't be had, one after the other who could: the rest were told that there is no
    need for them to ring, so it must not hang on one person alone."""
    caller = _caller(sight)
    if caller is None:
        return _Calling((), None)
    phones = [p.person for p in sight.parts(PartKind.CREW, PartKind.PACER) if p.can_telephone]
    home, organisers = sight.people(PartKind.SAFETY_CONTACT), sight.people(PartKind.ORGANISER)
    people: list[str] = []
    wakes: list[datetime] = []
    for who in dict.fromkeys((caller, *home, *phones, *organisers)):
        people.append(who)
        until = _to_be_had_until(sight, who, retirement.stamp.entry)
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
