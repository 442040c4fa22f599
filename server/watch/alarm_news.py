"""That an alarm is open, told once to those near her who are asked nothing: they may be the first to see her, and must not
hear of it by chance. Crew elsewhere, pacers who wait, and who is posted at her last point and the next two.

Whoever stands further up the ladder may be asked in a moment: they hear it once somebody has the alarm.
"""

from __future__ import annotations

from collections.abc import Iterator

from server.event.model import PartKind
from server.watch.alarms import Alarm, alarms, ended
from server.watch.beside import callers
from server.watch.escalation import steps_of
from server.watch.escalation_state import Stage, replay
from server.watch.notice import AlarmNewsValues, NoticeKind
from server.watch.runner_context import Draft, Rule, Sight, Wake

__all__ = ["RULES", "near_points"]

AHEAD = 2
"""So many points ahead of her last one hear of it (own choice: one may be closed by then)."""


def alarm_news(sight: Sight) -> Iterator[Draft | Wake]:
    """Once an alarm to each who is near and has not been told of it otherwise."""
    for alarm in alarms(sight):
        if not alarm.notices or ended(sight, alarm) is not None:
            continue
        stand = replay(alarm.notices)
        held = stand.stage in (Stage.HELD, Stage.LOOKING_AGAIN)
        told = {m.notice.key.person for m in alarm.notices} | {sight.runner.person}
        told |= set(callers(sight, alarm)) if alarm.kind is NoticeKind.ASKED_FOR_HELP else set()
        told |= set() if held else {who for step in steps_of(sight, alarm.kind) for who in step}
        for who, point in _near(sight).items():
            if who not in told:
                values = AlarmNewsValues(
                    alarm.id,
                    alarm.kind.value,
                    alarm.raised,
                    alarm.by,
                    stand.holder if held else None,
                    sight.caller(),
                    point,
                )
                yield _draft(sight, alarm, who, values)


def _draft(sight: Sight, alarm: Alarm, who: str, values: AlarmNewsValues) -> Draft:
    return Draft(
        NoticeKind.ALARM_NEWS, who, "", alarm.id, sight.now, values, alarm.facts, mine=True, lasting=True
    )


def near_points(sight: Sight) -> tuple[str, ...]:
    """Her last known point and the next two."""
    order = [p.id for p in sight.event.course_of(sight.runner.id).points]
    reached = [i for i, p in enumerate(order) if sight.reached(p)]
    last = max(reached, default=0)
    return tuple(order[last : last + 1 + AHEAD])


def _near(sight: Sight) -> dict[str, str | None]:
    """Crew and pacers, and the volunteers of the points near her, with that point."""
    points = near_points(sight)
    found: dict[str, str | None] = dict.fromkeys(sight.people(PartKind.CREW, PartKind.PACER))
    for part in sight.parts(PartKind.VOLUNTEER):
        if part.point in points:
            found[part.person] = part.point
    return found


RULES: tuple[Rule, ...] = (alarm_news,)
