"""A missed cut-off in words: what was reported, what the rule says, that race control decides; what this person does."""

from __future__ import annotations

from server.conversation.telling.answer import Freshness, LimitMissed
from server.conversation.telling.say import Say, SayInEvent, lines, slug
from server.event.model import PartKind
from server.watch.notice import MissedLimit, PastCutOffValues

__all__ = ["in_alarm", "notice", "standing"]


def notice(say: SayInEvent, v: PastCutOffValues, to: str) -> str:
    """For the person `to`: the fact and the limit first."""
    place, seen = say.point(v.point), say.point(v.seen_at) if v.seen_at else "none"
    edge, limit = say.s(f"edge-{v.edge}"), say.when(v.cut_off)
    if v.over:
        who = say.person(v.told_by) if v.told_by else "none"
        values = {
            "runner": say.runner,
            "place": place,
            "edge": edge,
            "cut_off": limit,
            "when": say.when(v.at),
        }
        return say.s(f"past-cut-off-over-{slug(v.over)}", who=who, seen=seen, **values)
    return lines(
        _limit(say, v),
        say.s("past-cut-off-told-by", who=say.person(v.told_by)) if v.told_by != to else "",
        say.s("past-cut-off-unsure" if slug(v.how) == _NO_OUT else "past-cut-off-rule", runner=say.runner),
        _do(say, v, to),
        _if_let_on(say, v),
    )


def in_alarm(say: SayInEvent, v: MissedLimit | None) -> str:
    """The same as one line of an alarm about her; '' where she has missed none."""
    return "" if v is None else say.s("alarm-past-cut-off", limit=_limit(say, v))


def _limit(say: SayInEvent, v: PastCutOffValues | MissedLimit) -> str:
    place, seen = say.point(v.point), say.point(v.seen_at) if v.seen_at else "none"
    fact = _fact(say, slug(v.how), say.runner, place, seen, say.when(v.at))
    there = "yes" if v.seen_at == v.point or v.seen_at is None else "no"
    edge, limit = say.s(f"edge-{v.edge}"), say.when(v.cut_off)
    return say.s("past-cut-off", fact=fact, place=place, edge=edge, cut_off=limit, there=there)


_NO_OUT = "not-reported-out"


def _do(say: SayInEvent, v: PastCutOffValues, to: str) -> str:
    """What this one person does about it."""
    control = {"name": say.event.race_control.name, "phone": say.event.race_control.phone}
    if _is(say, to, PartKind.RUNNER):
        return say.s("past-cut-off-you-run", **control)
    if v.here:
        return say.s("past-cut-off-stay", runner=say.runner, **control)
    if _is(say, to, PartKind.ORGANISER):
        return say.s("past-cut-off-decide")
    if to in v.asked:
        return say.s("past-cut-off-ask", runner=say.runner, **control)
    others = tuple(p for p in v.asked if p != to)
    return (
        say.s("past-cut-off-wait", who=say.people(others))
        if others
        else say.s("past-cut-off-nobody", **control)
    )


def _is(say: SayInEvent, person: str, kind: PartKind) -> bool:
    return any(p.person == person and p.kind is kind for p in say.event.parts)


def _if_let_on(say: SayInEvent, v: PastCutOffValues) -> str:
    if v.next_point is None or v.leave_by is None:
        return ""
    leave = say.when(v.leave_by)
    return say.s("past-cut-off-if-let-on", runner=say.runner, place=say.point(v.next_point), leave_by=leave)


def _fact(say: Say, how: str, runner: str, place: str, seen: str, when: str) -> str:
    return say.s(f"past-cut-off-{how}", runner=runner, place=place, seen=seen, when=when)


def standing(say: Say, fresh: Freshness, runner: str) -> str:
    """The first lines of any answer about a runner of whom this holds; '' where it does not."""
    v: LimitMissed | None = fresh.past_cut_off
    if v is None:
        return ""
    fact = _fact(say, slug(v.how), runner, v.name, v.seen_name or "none", say.when(v.at))
    edge, there = say.s(f"edge-{v.edge}"), "yes" if v.seen_name in ("", v.name) else "no"
    return lines(
        say.s("past-cut-off", fact=fact, place=v.name, edge=edge, cut_off=say.when(v.cut_off), there=there),
        say.s("past-cut-off-unsure" if slug(v.how) == _NO_OUT else "past-cut-off-rule", runner=runner),
    )
