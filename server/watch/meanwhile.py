"""What comes in about her while a call for help is open goes, word for word, to those who see to it.

Whoever has it acts on her last words, not on those of half an hour ago; and she, who cannot see what is being done, reads
what the one who has it writes.
"""

from __future__ import annotations

from collections.abc import Iterator

from server.event.model import PartKind
from server.facts.entry import Entry, Kind
from server.watch.alarms import Alarm, alarms, ended
from server.watch.beside import callers, since_call
from server.watch.escalation_state import Stand, replay
from server.watch.notice import Answer, MeanwhileValues, NoticeKind
from server.watch.runner_context import Draft, Rule, Sight, Wake

__all__ = ["RULES", "on_it"]


def meanwhile(sight: Sight) -> Iterator[Draft | Wake]:
    """Each report once to each of those on it, but for whoever made it."""
    for alarm in alarms(sight):
        if (
            alarm.kind is not NoticeKind.ASKED_FOR_HELP
            or ended(sight, alarm) is not None
            or not alarm.notices
        ):
            continue
        stand = replay(alarm.notices)
        those = on_it(sight, alarm, stand)
        for e in since_call(sight, alarm):
            to = those
            if e.by == stand.holder and e.words:
                to = tuple(dict.fromkeys((*those, *callers(sight, alarm), sight.runner.person)))
            for who in to:
                if who != e.by and any(p.id == who for p in sight.event.people):
                    yield _draft(sight, alarm, who, e)


def on_it(sight: Sight, alarm: Alarm, stand: Stand) -> tuple[str, ...]:
    """Who has it, those asked who have not said that they can't, and the safety contact."""
    last = {m.notice.key.person: m.answer for m in alarm.notices if m.answered_at is not None}
    asked = [m.notice.key.person for m in alarm.notices]
    free = [who for who in asked if last.get(who) != Answer.CANNOT.value]
    held = [stand.holder] if stand.holder is not None else []
    return tuple(dict.fromkeys((*held, *free, *sight.people(PartKind.SAFETY_CONTACT))))


def _draft(sight: Sight, alarm: Alarm, who: str, e: Entry) -> Draft:
    values = MeanwhileValues(
        alarm=alarm.id,
        entry=e.id,
        kind=e.kind.value,
        at=e.seen_at,
        by=e.by,
        words=e.words,
        point=e.point,
        fix=e.fix,
        own_place=e.kind is Kind.HELP_WORD and e.by != sight.runner.person,
        unconfirmed=e.unconfirmed and e.kind is not Kind.ASKED_FOR_HELP,
    )
    return Draft(NoticeKind.MEANWHILE, who, "", e.id, e.received_at, values, (e.id,), mine=True)


RULES: tuple[Rule, ...] = (meanwhile,)
