"""The race's rules for crew, in words."""

from __future__ import annotations

from server.conversation.telling.planned import say_planned
from server.paper.writing import Writing
from server.plan.notes import saying


def rules_lines(w: Writing) -> tuple[str, ...]:
    """What the race allows everywhere, and its note."""
    rules = w.event.rules
    found = [
        saying("rule-vehicles", count=rules.vehicles_max) if rules.vehicles_max is not None else None,
        saying("rule-people", count=rules.crew_people_max) if rules.crew_people_max is not None else None,
        saying("rule-help") if rules.outside_help_only_at_crew_points else None,
        saying("rule-crew-not-before", opens_at=rules.crew_not_before.timestamp())
        if rules.crew_not_before is not None
        else None,
        saying("rule-pacer-from", from_km=rules.pacer_from_km) if rules.pacer_from_km is not None else None,
    ]
    said = "; ".join(say_planned(w.say.reader, x) for x in found if x is not None)
    return (
        *((w.s("paper-allowed-by", rules=said),) if said else ()),
        *((w.s("paper-rules", rules=rules.note),) if rules.note else ()),
    )
