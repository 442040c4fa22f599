"""A call for help that does not say for which of many runners, in words: who called, what they wrote, whom to ask."""

from __future__ import annotations

from server.conversation.telling.say import SayInEvent, lines
from server.watch.notice import UnnamedHelpValues

__all__ = ["unnamed_help"]


def unnamed_help(say: SayInEvent, v: UnnamedHelpValues, to: str, *, asked: bool) -> str:
    """The call while it is open, who has it, or for whom it was in the end."""
    control = say.event.race_control
    numbers = say.s(
        "alarm-numbers", name=control.name, phone=control.phone, emergency=say.event.emergency_number
    )
    if v.over == "named":
        her = next((r for r in say.event.runners if r.id == v.meant), None)
        who = {"runner": her.name if her else v.meant, "bib": (her.bib if her else "") or "none"}
        return lines(say.s("unnamed-meant", name=say.person(v.ended_by), **who), numbers)
    if v.over:
        return say.s(
            "unnamed-over", name=say.person(v.ended_by) if v.ended_by else "none", who=say.person(v.by)
        )
    caller = say.event.person(v.by) if any(p.id == v.by for p in say.event.people) else None
    phone = (caller.phone if caller else "") or "none"
    return lines(
        say.s("unnamed", who=say.person(v.by)),
        say.s("alarm-words", words=v.words) if v.words else "",
        say.s("unnamed-ask", who=say.person(v.by), phone=phone, when=say.when(v.at)),
        _whose(say, v, to),
        say.s("unnamed-to", names=say.all(say.person(p) for p in v.told if p != to))
        if any(p != to for p in v.told)
        else "",
        say.s("alarm-answer-unnamed") if asked and v.holder is None else "",
        numbers,
    )


def _whose(say: SayInEvent, v: UnnamedHelpValues, to: str) -> str:
    if v.holder is None:
        return ""
    return say.s("unnamed-held-you") if v.holder == to else say.s("unnamed-held", name=say.person(v.holder))
