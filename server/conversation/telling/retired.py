"""The wording of a race that ended before the finish: what happened, who fetches her, who tells race control.

What comes after the first message keeps to what still waits, in its first line; only the one person who is to
ring race control is told to.
"""

from __future__ import annotations

from server.conversation.telling.say import SayInEvent, lines, slug
from server.event.model import PartKind
from server.plan.movements.names import place_name
from server.sentences import has
from server.watch.news_values import Fetcher, PickUp
from server.watch.notice import CorrectionValues, InHandValues, NoticeKind, RetiredValues, Waits


def retired(say: SayInEvent, v: RetiredValues, to: str) -> str:
    """For the person `to`: that she has retired, or what still waits since, or that somebody goes or has her."""
    if v.waits is Waits.IN_HAND:
        return lines(_has_her(say, v), _retired(say, v), _race_control(say, v, to))
    if v.waits is Waits.GOES:
        rings = _race_control(say, v, to) if v.caller == to else ""
        hers = _only(say, to, PartKind.RUNNER)
        stays = say.s("retired-stay" if hers else "retired-not-in-hand")
        return lines(_fetched_by(say, v, to), _no_car(say, v), _retired(say, v), rings, stays)
    if v.waits is Waits.RACE_CONTROL:
        return lines(_race_control(say, v, to, still=True), _retired(say, v), _pick_up(say, v, to))
    if v.waits is Waits.HAND:
        waits = say.s("retired-waits-hand", runner=say.runner)
        return lines(waits, _retired(say, v), _pick_up(say, v, to), _race_control(say, v, to))
    how = f"how-{slug(v.how)}"
    supporter = _only(say, to, PartKind.SUPPORTER)
    return lines(
        _retired(say, v),
        say.s("retired-how", how=say.s(how) if has(how) else v.how) if v.how else "",
        say.s("retired-words", words=v.words) if v.words and not supporter else "",
        "" if supporter else _pick_up(say, v, to),
        "" if supporter else _race_control(say, v, to),
    )


def _only(say: SayInEvent, person: str, kind: PartKind) -> bool:
    return {p.kind for p in say.event.parts if p.person == person} == {kind}


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


def _pick_up(say: SayInEvent, v: RetiredValues, to: str) -> str:
    """Where she is, who is asked to fetch her or does, with what, and what the race itself offers."""
    if v.in_hand:
        return _has_her(say, v)
    if v.fetch is None:
        return ""
    hers = _only(say, to, PartKind.RUNNER)
    return lines(
        _where(say, v.fetch),
        _no_car(say, v),
        _fetched_by(say, v, to),
        _bring(say, v.fetch) if v.fetch.fetcher is not None and v.fetch.fetcher.person == to else "",
        say.s("retired-transport", words=v.fetch.transport) if v.fetch.transport else "",
        say.s("retired-stay" if hers else "retired-not-in-hand"),
    )


def _where(say: SayInEvent, f: PickUp) -> str:
    """Only where nobody said where she is: the last that was known."""
    if f.last is None:
        return ""
    fact = say.last(f.last)
    return say.s("retired-where-not-said", fact=fact, when=say.when(f.last.at), who=say.person(f.last.by))


def _no_car(say: SayInEvent, v: RetiredValues) -> str:
    """That she has to get to where she is fetched, where no car comes to the point at which she retired."""
    if v.fetch is None or v.fetch.to is None or v.point in (None, v.fetch.to):
        return ""
    control = {"name": say.event.race_control.name, "phone": say.event.race_control.phone}
    return say.s("retired-no-car", place=say.point(v.point), to=say.point(v.fetch.to), **control)


def _fetched_by(say: SayInEvent, v: RetiredValues, to: str) -> str:
    f = v.fetch
    if f is None or f.fetcher is None:
        return say.s("retired-no-pick-up")
    mine = f.fetcher
    values = {
        "runner": say.runner,
        "place": say.point(f.to) if f.to else "none",
        "who": say.person(mine.person),
        "you": "yes" if mine.person == to else "no",
    }
    if f.goes:
        return say.s("retired-goes", there=say.maybe(f.there_by), **values)
    car = next((c.name for c in say.event.cars if c.id == mine.car), "none")
    return lines(
        say.s("retired-asked", car=car, **values),
        _drive(say, f, mine, values["you"]),
        say.s("retired-busy", place=say.point(mine.busy)) if mine.busy else "",
        say.s("retired-else", who=say.people(tuple(o.person for o in f.others))) if f.others else "",
    )


def _drive(say: SayInEvent, f: PickUp, mine: Fetcher, you: str) -> str:
    """From where, how long: by their own word or by the plan, confirmed or an estimate."""
    if mine.stands is None or f.to is None:
        return ""
    if mine.drive is not None and not mine.drive:
        return say.s("retired-is-there", you=you, said="yes" if mine.said else "no")
    length = "none" if mine.drive is None else say.length(mine.drive)
    sure, said = "yes" if mine.confirmed else "no", "yes" if mine.said else "no"
    return say.s(
        "retired-drive", length=length, sure=sure, said=said, **{"from": place_name(say.event, mine.stands)}
    )


def _bring(say: SayInEvent, f: PickUp) -> str:
    return say.s("retired-bring", kit=say.all(f.bring) if f.bring else "none")


def _race_control(say: SayInEvent, v: RetiredValues, to: str, *, still: bool = False) -> str:
    """One named person rings there; where none is named, whoever reads it."""
    if say.event.is_race_control(to):
        return ""
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


def seen_since(say: SayInEvent, v: CorrectionValues) -> str:
    """She was said to have retired, and has been seen since."""
    place = say.point(v.point) if v.point else "none"
    values = {"runner": say.runner, "place": place, "when": say.maybe(v.now_at), "who": say.person(v.by)}
    return lines(
        say.s("said-over-seen", **values),
        say.s("said-over-was", when=say.maybe(v.was_at), words=v.words or "none"),
    )


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
    """Somebody has her who has not retired: who says so, where, what it means for the watch; or whether they still do."""
    if v.asked_by is not None:
        return say.s("in-hand-still", runner=say.runner, when=say.when(v.at), until=say.when(v.asked_by))
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
