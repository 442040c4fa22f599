"""Somebody has her, with no retirement and no alarm over it: who sits at home reads it once, calmly.

With a retirement server/watch/retired.py tells it; an alarm that it ends is told as over. Without either nobody
at home heard that somebody is with her, or brings her, and would be left to wonder why she does not come in.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from server.event.model import PartKind
from server.watch.crew_whereabouts import company, plans_of
from server.watch.escalation_state import open_alarms
from server.watch.notice import Answer, CorrectionValues, InHandValues, NoticeKind
from server.watch.runner_context import WITH_US_HOLDS, Draft, Rule, Sight, Wake, with_us_until

__all__ = ["RULES"]

ASKED_BEFORE = timedelta(minutes=20)
"""So long before their word is too old they are asked whether she is still with them (own choice)."""


def in_hand(sight: Sight) -> Iterator[Draft | Wake]:
    """Once to each at home, and to her crew, who did not say it themselves and has not read it as the end of an alarm."""
    said, state = sight.state.said_in_hand, sight.state
    if said is None or state.retirement is not None:
        return
    home = sight.people(PartKind.SAFETY_CONTACT)
    car = {w for m in plans_of(sight) for w in company(sight, m, said.by)}
    for who in (*home, *(w for w in sight.people(PartKind.CREW, PartKind.PACER) if w not in home)):
        if (
            who == said.by
            or who in car
            or any(said.id in m.notice.facts for m in sight.told(NoticeKind.STAND_DOWN, who))
        ):
            continue
        last = state.last_known
        seen = last if last is not None and last.entry == said.id else None
        yield Draft(
            NoticeKind.IN_HAND,
            who,
            "",
            said.id,
            said.received_at,
            InHandValues(
                said.seen_at,
                said.by,
                None if seen is None else seen.point,
                None if seen is None else seen.km,
                said.words,
                alarm_open=bool(open_alarms(sight.made)),
            ),
            (said.id,),
            mine=who in home,  # crew who sleep need not be woken for it
        )


def taken_back(sight: Sight) -> Iterator[Draft | Wake]:
    """Nobody had her after all. That she has gone on since takes nothing back."""
    for m in sight.told(NoticeKind.IN_HAND):
        key, values = m.notice.key, m.notice.values
        if not isinstance(values, InHandValues) or values.asked_by or m.notice.occasion in sight.state.folded:
            continue
        yield Draft(
            NoticeKind.CORRECTION,
            key.person,
            "",
            f"{NoticeKind.IN_HAND.value}:{m.notice.occasion}",
            sight.now,
            CorrectionValues(NoticeKind.IN_HAND.value, None, values.at, None, taken_back=True, by=""),
            m.notice.facts,
            mine=True,
        )


def still(sight: Sight) -> Iterator[Draft | Wake]:
    """Before that word is too old to go by, whoever gave it is asked: only they know whether she goes on, and their silence
    would have her late, and then sought, at a point she was never on her way to."""
    said, until = sight.state.said_in_hand, with_us_until(sight.state)
    if said is None or until is None or sight.state.retirement is not None:
        return
    due = until - ASKED_BEFORE
    yield Wake(due)
    if not due <= sight.now < until:
        return
    who = said.by if any(p.id == said.by for p in sight.event.people) else sight.caller()
    if who is None:
        return
    yield Draft(
        NoticeKind.IN_HAND,
        who,
        "",
        f"{said.id}:still:{until.isoformat()}",
        due,
        InHandValues(until - WITH_US_HOLDS, said.by, asked_by=until),
        (said.id,),
        use_by=until,
        needs_answer=True,
        buttons=(Answer.IN_HAND, Answer.GOES_ON, Answer.RACE_OVER),
        mine=True,
    )


RULES: tuple[Rule, ...] = (in_hand, still, taken_back)
