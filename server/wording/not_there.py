"""In an alarm: who said last that she is not there yet. Who looks for her must not take her for merely unreported."""

from __future__ import annotations

from server.watch.notice import AlarmValues
from server.wording.say import SayInEvent


def fact(say: SayInEvent, v: AlarmValues) -> str:
    """Where she is not, since when, told by whom, and their number to ask."""
    n = v.not_there
    if n is None:
        return ""
    person = next((p for p in say.event.people if p.id == n.by), None)
    return say.s(
        "alarm-not-there",
        fact=say.fact(n.kind, say.point(n.point or "")),
        when=say.when(n.at, day=True),
        ago=say.ago(n.at),
        who=say.person(n.by),
        phone=person.phone if person and person.phone else "none",
    )


def read_out(say: SayInEvent, v: AlarmValues) -> str:
    """The same as a whole sentence, on the event's own clock."""
    n = v.not_there
    if n is None:
        return ""
    return say.s(
        "read-out-not-there", place=say.point(n.point or ""), when=say.spoken(n.at), who=say.person(n.by)
    )
