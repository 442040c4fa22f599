"""A runner who is missed, in what is said to crew: since when nobody has seen her, who stays for her and who may go on."""

from __future__ import annotations

from server.conversation.telling.say import SayInEvent, lines
from server.watch.notice import MeetingValues, StayValues


def unseen(say: SayInEvent, m: MeetingValues) -> str:
    """Whoever is sent somewhere hears since when nobody has seen her; '' where she is not missed."""
    if m.unseen is None:
        return ""
    return say.s("unseen", runner=say.runner, when=say.when(m.unseen), ago=say.ago(m.unseen))


def stay(say: SayInEvent, v: StayValues, to: str) -> str:
    """Stay, until when, and who may go on; to one who may go, that they may and who stays."""
    place, after = say.point(v.point), say.point(v.next_point) if v.next_point else "none"
    since = {"runner": say.runner, "when": say.when(v.unseen), "ago": say.ago(v.unseen)}
    sought = say.s("stay-sought") if v.sought else ""
    if to in v.go:
        keep = say.people(v.keep)
        first = say.s("stay-go", next=after, names=keep, count=len(v.keep), place=place, runner=say.runner)
        return lines(first, say.s("unseen", **since), sought)
    go = say.s("stay-may-go", names=say.people(v.go), next=after) if v.go else ""
    held = say.s("stay-not-next", next=after) if v.next_point and not v.go else ""
    return lines(say.s("stay", place=place, **since), sought, say.s("stay-until"), go, held)
