"""What goes with an alarm, apart from it: what is known, and what to read out to rescuers, each a message of its own.

The alarm itself fits a phone and says what to do. Whoever is to call race control, and whoever has taken it, needs the rest
at once, as the next thing may be a call in a place without signal; everybody else asks for it with a button.
"""

from __future__ import annotations

from collections.abc import Iterator

from server.watch.alarms import Alarm, alarms, ended
from server.watch.escalation import values
from server.watch.escalation_state import Stage, replay
from server.watch.notice import NoticeKind
from server.watch.runner_context import Draft, Rule, Sight, Wake

__all__ = ["RULES"]


def apart(sight: Sight) -> Iterator[Draft | Wake]:
    """Once an alarm to the one who is to call race control, if asked or told of it, and to each who has taken it."""
    for alarm in alarms(sight):
        if ended(sight, alarm) is None and alarm.notices:
            yield from _to_each(sight, alarm)


def _to_each(sight: Sight, alarm: Alarm) -> Iterator[Draft]:
    stand = replay(alarm.notices)
    told = {m.notice.key.person for m in alarm.notices}
    caller = sight.caller()
    who = [caller] if caller in told and caller is not None else []
    if stand.stage is Stage.HELD and stand.holder is not None:
        who.append(stand.holder)
    had = {m.notice.key.person for m in sight.told(NoticeKind.READ_OUT, occasion=alarm.id)}
    for one in dict.fromkeys(who):
        if one in had:
            continue
        known = values(sight, alarm, stand, step=-1)
        for kind in (NoticeKind.ALARM_KNOWN, NoticeKind.READ_OUT):
            yield Draft(
                kind,
                one,
                alarm.point or "",
                alarm.id,
                sight.now,
                known,
                alarm.facts,
                needs_answer=False,
                mine=True,
            )


RULES: tuple[Rule, ...] = (apart,)
