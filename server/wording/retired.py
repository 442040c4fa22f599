"""The wording of a race that ended before the finish: what happened, who fetches her, who tells race control.

What comes after the first message keeps to what still waits, in its first line; only the one person who is to
ring race control is told to.
"""

from __future__ import annotations

from server.event.model import PartKind
from server.watch.notice import CorrectionValues, InHandValues, NoticeKind, RetiredValues, Waits
from server.wording.say import SayInEvent, lines, slug
from server.wording.sentences import has


def retired(say: SayInEvent, v: RetiredValues, to: str) -> str:
    """For the person `to`: that she has retired, or what still waits since, or that somebody has her."""
    if v.waits is Waits.IN_HAND:
        return lines(_has_her(say, v), _retired(say, v), _race_control(say, v, to))
    if v.waits is Waits.RACE_CONTROL:
        return lines(_race_control(say, v, to, still=True), _retired(say, v), _pick_up(say, v))
    if v.waits is Waits.HAND:
        waits = say.s("retired-waits-hand", runner=say.runner)
        return lines(waits, _retired(say, v), _pick_up(say, v), _race_control(say, v, to))
    how = f"how-{slug(v.how)}"
    return lines(
        _retired(say, v),
        say.s("retired-how", how=say.s(how) if has(how) else v.how) if v.how else "",
        say.s("retired-words", words=v.words) if v.words else "",
        _pick_up(say, v),
        _race_control(say, v, to),
    )


def _retired(say: SayInEvent, v: RetiredValues) -> str:
    values = {"runner": say.runner, "when": say.when(v.at), "who": say.person(v.told_by)}
    if v.point:
        return say.s("retired", place=say.point(v.point), **values)
    return say.s("retired-nowhere", **values)


def _has_her(say: SayInEvent, v: RetiredValues) -> str:
    if not v.in_hand_by or v.in_hand_at is None:
        return say.s("retired-in-hand")
    who = say.person(v.in_hand_by)
    return say.s("retired-has-her", who=who, runner=say.runner, when=say.when(v.in_hand_at))


def _pick_up(say: SayInEvent, v: RetiredValues) -> str:
    if v.in_hand:
        return _has_her(say, v)
    who = (
        say.s("retired-pick-up", who=say.people(v.pick_up_by))
        if v.pick_up_by
        else say.s("retired-no-pick-up")
    )
    return lines(who, say.s("retired-not-in-hand"))


def _race_control(say: SayInEvent, v: RetiredValues, to: str, *, still: bool = False) -> str:
    """One named person rings there; where none is named, whoever reads it."""
    if v.race_control_knows:
        return say.s("retired-race-control")
    control = {"name": say.event.race_control.name, "phone": say.event.race_control.phone}
    if v.caller is None:
        return say.s("retired-tell-race-control", **control)
    if v.caller != to:
        return say.s("retired-call-other", caller=say.person(v.caller))
    if still:
        return say.s("retired-waits-race-control", runner=say.runner, **control)
    return say.s("retired-call-you", **control)


def in_hand_taken_back(say: SayInEvent) -> str:
    """That somebody had her was wrong."""
    return say.s("retired-in-hand-taken-back", runner=say.runner)


def tell_race_control(say: SayInEvent, v: CorrectionValues, to: str) -> str:
    """Her race goes on after all: race control may still believe that it is over. One person tells them."""
    if v.was_kind != NoticeKind.RETIRED.value or not v.taken_back:
        return ""
    callers = [p.person for p in say.event.parts if p.calls_race_control]
    near = {PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT}
    asked = to in callers[:1] if callers else any(p.person == to and p.kind in near for p in say.event.parts)
    control = say.event.race_control
    return say.s("correction-race-control", name=control.name, phone=control.phone) if asked else ""


def in_hand(say: SayInEvent, v: InHandValues) -> str:
    """Somebody has her who has not retired: who says so, where, what it means for the watch."""
    who = say.person(v.told_by)
    place = say.place_of(say.point(v.point) if v.point else "", v.km)
    phone = say.event.person(v.told_by).phone if any(p.id == v.told_by for p in say.event.people) else ""
    return lines(
        say.s("in-hand", runner=say.runner, who=who, when=say.when(v.at)),
        say.s("in-hand-where", place=place) if v.point or v.km is not None else say.s("in-hand-nowhere"),
        say.s("in-hand-words", who=who, words=v.words) if v.words else "",
        say.s("in-hand-alarm" if v.alarm_open else "in-hand-calm", runner=say.runner),
        say.s("in-hand-ask", who=who, phone=phone) if phone else "",
    )
