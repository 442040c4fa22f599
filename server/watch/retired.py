"""Retired: everybody hears, somebody fetches her, and she stays watched until in hand and race control knows."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta

from server.event.model import PartKind
from server.facts.entry import Retired
from server.facts.state import Going, Retirement
from server.watch.meetings import members
from server.watch.notice import Answer, NoticeKind, RetiredValues, Urgency
from server.watch.places import may_be_asked, on_road_until, plans_of
from server.watch.sight import Draft, Rule, Sight, Wake, heard_at

__all__ = ["RULES", "pick_up"]

HOME_AFTER = timedelta(hours=1)
"""Nobody has her so long after she retired: the safety contact is asked as well, as an alarm."""

OFTEN, LATER = 3, 3
"""Asked three times at the look-again time, then every third (own choice: an hour and a half of asking
often is enough to be heard, and more is switched off)."""

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


def retired(sight: Sight) -> Iterator[Draft | Wake]:
    """Told once to all; asked again of those who fetch her, and of the one who calls race control."""
    retirement = sight.state.retirement
    if retirement is None:
        return
    fetch = pick_up(sight, retirement)
    home = sight.people(PartKind.SAFETY_CONTACT)
    base = _told(sight, retirement, fetch)
    over = sight.state.going is Going.CLOSED or retirement.how is Retired.DID_NOT_START
    for who in dict.fromkeys((*fetch, *sight.people(*_HEARS))):
        if who == retirement.stamp.by and who not in fetch:
            continue
        asks = not over and who in fetch and sight.state.in_hand is None and may_be_asked(sight, who)
        supporter = not any(p.person == who for p in sight.parts(*_HEARS[:-1]))
        yield replace(
            base,
            person=who,
            needs_answer=asks,
            buttons=(Answer.I_GO, Answer.IN_HAND) if asks else (),
            urgency=Urgency.NEWS if supporter else None,
            mine=not supporter,
        )
    if over:
        return
    if sight.state.in_hand is None:
        going = tuple(w for w in fetch if _goes(sight, retirement, w))
        yield from _again(sight, replace(base, buttons=(Answer.I_GO, Answer.IN_HAND)), going or fetch, "hand")
        alarm = retirement.stamp.at + HOME_AFTER
        yield Wake(alarm)
        if sight.now >= alarm:
            loud = replace(base, buttons=(Answer.I_GO, Answer.IN_HAND), urgency=Urgency.ALARM)
            yield from _again(sight, loud, tuple(p for p in home if p not in fetch), "home")
    caller = sight.caller()
    if caller is not None and sight.state.race_control_knows is None:
        yield from _again(
            sight, replace(base, buttons=(Answer.RACE_CONTROL_TOLD,)), (caller,), "race control"
        )


def _goes(sight: Sight, retirement: Retirement, who: str) -> bool:
    """Whether a person has said that they see to fetching her; then the others are asked no more."""
    told = sight.told(NoticeKind.RETIRED, who)
    mine = [m for m in told if retirement.stamp.entry in m.notice.facts and m.answered_at is not None]
    return any(m.answer != Answer.CANNOT.value and "race control" not in m.notice.occasion for m in mine)


def _told(sight: Sight, retirement: Retirement, fetch: tuple[str, ...]) -> Draft:
    knows = sight.state.race_control_knows is not None
    words = next((e.words for e in sight.state.how_she_is if e.id == retirement.stamp.entry), "")
    return Draft(
        NoticeKind.RETIRED,
        "",
        retirement.point or "",
        retirement.stamp.entry,
        heard_at(sight, retirement.stamp),
        RetiredValues(
            how=retirement.how.value,
            point=retirement.point,
            at=retirement.stamp.at,
            told_by=retirement.stamp.by,
            words=words,
            in_hand=sight.state.in_hand is not None,
            race_control_knows=knows,
            pick_up_by=fetch,
        ),
        (retirement.stamp.entry,),
        mine=True,
        lasting=True,
    )


def _again(sight: Sight, base: Draft, people: tuple[str, ...], what: str) -> Iterator[Draft | Wake]:
    """Asked again each look-again time since last told; a driver on the road when off it."""
    for who in people:
        told = [m.made_at for m in sight.told(NoticeKind.RETIRED, who) if base.facts[0] in m.notice.facts]
        asked = [m for m in sight.told(NoticeKind.RETIRED, who) if f":{what}:" in m.notice.occasion]
        at_once = what != "hand" and not asked
        last = max(told, default=sight.now)
        wait = sight.event.alarm.look_again * (1 if len(asked) < OFTEN else LATER)
        due = sight.now if at_once else last + wait
        road = on_road_until(sight, who)
        due = due if road is None else max(due, road)
        yield Wake(due)
        if sight.now >= due:
            occasion = f"{base.occasion}:{what}:{len(asked)}"
            yield replace(base, person=who, occasion=occasion, owed_at=due, needs_answer=True)


RULES: tuple[Rule, ...] = (retired,)
