"""'Got her', 'she is with us' from crew: the end of a search while one is on or her race is over, else a sighting where
they stand. What it means is for the state of her race to say, not for the words."""

from __future__ import annotations

from dataclasses import replace

from server.conversation import alarmed, reported
from server.conversation.telling.answer import RunnerHere
from server.conversation.telling.say import lines
from server.conversation.understanding import Report, Reported, expected
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import Kind
from server.facts.state import Going

_THERE = frozenset({PartKind.CREW, PartKind.PACER, PartKind.ORGANISER})
_SAYS_SO = frozenset({PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER})


async def said(visit: Visit, meant: Reported) -> Reply | None:
    """The reply to somebody who has her; None for any other report, or where it is not said whom they have."""
    one = meant.reports[0]
    her = visit.runner(one.runner)
    if len(meant.reports) > 1 or not one.with_us or her is None or not visit.kinds & _SAYS_SO:
        return None
    facts = await alarmed.facts(visit, her.id)
    if Going(her.going).race_over or (facts is not None and facts.fresh.ended_at is not None):
        return await reported.report(visit, Reported((_in_hand(one, her),)))
    alarms = () if facts is None else facts.alarms
    if not alarms:
        return await reported.report(visit, Reported((_sighting(visit, one, her),)))
    place = _place(visit, one, her)
    seen = (replace(one, kind=Kind.IN, point=place, guessed=False, condition=False),) if place else ()
    hand = _in_hand(one, her)
    hand = replace(hand, point=place or hand.point)
    called = any(a.kind == Kind.ASKED_FOR_HELP.value for a in alarms)
    if visit.kinds & _THERE and (one.with_us == "got" or not called):
        return await reported.report(visit, Reported((*seen, hand)))
    # Whoever asked for help may well walk in and still need it: 'with us' alone does not say that it is over. And at home
    # 'got her' may be said of a voice on the telephone.
    first = await reported.report(visit, Reported(seen)) if seen else None
    asked = await reported.report(visit, Reported((replace(hand, guessed=True),)), first=len(seen))
    text = lines(first.text.split("\n")[0] if first else "", asked.text)
    return replace(asked, text=text)


def _in_hand(one: Report, her: RunnerHere) -> Report:
    point = one.point if one.kind is Kind.IN_HAND or not one.guessed else None
    return replace(one, kind=Kind.IN_HAND, point=point or her.at, guessed=False, condition=False)


def _place(visit: Visit, one: Report, her: RunnerHere) -> str | None:
    """The point at which she is now seen, where the words or where the writer stands say it, and she was not known to have
    been there before."""
    point = one.point if one.point and not one.guessed else visit.event.stands
    ids = [p.id for p in her.points]
    reached = ids.index(her.reached) if her.reached in ids else -1
    return point if point in ids and ids.index(point) > reached else None


def _sighting(visit: Visit, one: Report, her: RunnerHere) -> Report:
    stands = visit.event.stands
    point = one.point or expected(her, Kind.IN, stands)
    surely = point is not None and point in (stands, her.at)
    unsure = one.guessed if one.point is not None else not surely
    return replace(one, kind=Kind.IN, point=point, guessed=unsure)
