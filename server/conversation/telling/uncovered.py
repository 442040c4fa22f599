"""Somebody fell out of a meeting: who could go, who goes, what she will lack; and the answer to whoever said it."""

from __future__ import annotations

from server.conversation.telling import news
from server.conversation.telling.say import SayInEvent, lines, slug
from server.conversation.telling.times import ceil_to, floor_to
from server.plan.movements.names import NOWHERE, car_name, place_name
from server.watch.notice import Ear, Out, StandIn, UncoveredValues

SURE = 0.9
"""Better odds of finding her still there need no saying."""


def uncovered(say: SayInEvent, v: UncoveredValues, reader: str) -> str:
    """What is open: for one who could go, for her, for those who meet her before, for the others."""
    place = say.point(v.point)
    match v.ear:
        case Ear.GOES if not v.missing and v.pacer is None:
            return _goes_on(say, v, reader)
        case Ear.FALLEN:
            who = v.fallen[0]
            told = say.person(who.told_by)
            return lines(
                say.s("uncovered-you", who=told, place=place, why=_why(say, who)),
                say.s("uncovered-you-wrong"),
            )
        case Ear.ALONE:
            return _alone(say, v)
        case Ear.HER:
            return _for_her(say, v)
        case Ear.MEETS_HER:
            before = say.point(v.before)
            nobody = say.s("uncovered-tell", runner=say.runner, before=before, what=_lacks(say, v))
            things = v.missing or (() if v.goes else v.kit)
            return lines(nobody, say.s("uncovered-give", kit=say.things(things)) if things else "")
    mine = next((s for s in v.stand_ins if s.person == reader), None)
    return lines(
        _open(say, v),
        _window(say, v),
        say.s("uncovered-you-could", how=_how(say, mine)) if mine is not None else "",
        _gives_up(say, mine) if mine is not None else "",
        say.s("uncovered-first") if mine is not None else "",
        _others(say, v, reader),
        *_kit(say, v, fetch=False),
        _also(say, v),
        *(_quoted(say, o) for o in v.fallen),
    )


def covered(say: SayInEvent, v: UncoveredValues, reader: str) -> str:
    """Who goes now; the one who goes hears it as a meeting of their own."""
    place, gone = say.point(v.point), _names(say, v)
    if v.back:
        back = say.s(
            "covered-back", who=say.people(v.goes), place=place, count=len(v.goes), runner=say.runner
        )
        if v.ear is Ear.HER:
            back = say.s("covered-back-her", who=say.people(v.goes), place=place, count=len(v.goes))
        if reader == v.by:
            return lines(back, say.s("covered-not-you"))
        return lines(back, _own_meeting(say, v))
    by = say.person(v.by)
    if v.ear is Ear.HER:
        return lines(say.s("covered-her", who=by, place=place, gone=gone), _lacks_line(say, v))
    if reader == v.by:
        return lines(
            say.s("covered-you", place=place, runner=say.runner, gone=gone),
            _own_meeting(say, v),
            *_kit(say, v, fetch=True),
        )
    return lines(
        say.s("covered", who=by, place=place, runner=say.runner, gone=gone), *_kit(say, v, fetch=False)
    )


def _own_meeting(say: SayInEvent, v: UncoveredValues) -> str:
    m = v.meeting_now
    if m is None:
        return ""
    there = say.when(floor_to(m.be_there))
    if m.leave_by is None:
        times = say.s("covered-be-there", be_there=there)
    elif m.leave_by <= say.now:
        times = say.s("covered-leave-now", be_there=there)
    else:
        times = say.s("covered-times", be_there=there, leave_by=say.when(news.leave_by_of(say, m)))
    return lines(times, news.with_her(say, m))


def _open(say: SayInEvent, v: UncoveredValues) -> str:
    place, who = say.point(v.point), _names(say, v)
    why = _why(say, v.fallen[0]) if len(v.fallen) == 1 else "none"
    if v.pacer is not None and v.goes:
        return say.s("uncovered-pacer", runner=say.runner, place=place, who=say.person(v.pacer), why=why)
    if v.goes:
        return say.s(
            "uncovered-part", goes=say.people(v.goes), place=place, count=len(v.goes), who=who, why=why
        )
    key = "uncovered-still" if v.again else "uncovered"
    return say.s(key, place=place, runner=say.runner, who=who, why=why)


def _goes_on(say: SayInEvent, v: UncoveredValues, reader: str) -> str:
    place, who = say.point(v.point), _names(say, v)
    if v.driver == reader:
        return say.s("uncovered-you-drive", place=place, who=who)
    if v.driver is not None:
        return say.s("uncovered-other-drives", place=place, who=who, driver=say.person(v.driver))
    return say.s("uncovered-without", place=place, who=who)


def _alone(say: SayInEvent, v: UncoveredValues) -> str:
    """A pacer on the course can't go on: who and where to ask, what it means for her."""
    out = v.fallen[0]
    phone = next((p.phone for p in say.event.people if p.id == out.person), "") or "none"
    control, number = say.event.race_control, say.event.emergency_number
    return lines(
        say.s("alone", who=say.person(out.person), runner=say.runner, why=_why(say, out)),
        _quoted(say, out),
        say.s("alone-ask", who=say.person(out.person), phone=phone),
        say.s("alone-numbers", emergency=number, name=control.name, phone=control.phone, runner=say.runner),
    )


def _for_her(say: SayInEvent, v: UncoveredValues) -> str:
    before = (
        say.s("uncovered-her-before", place=say.point(v.before))
        if v.before is not None
        else say.s("uncovered-her-nobody")
    )
    things = v.missing or (() if v.goes else v.kit)
    return lines(
        say.s(f"her-{_what(v)}", place=say.point(v.point), who=say.person(v.pacer)),
        say.s("uncovered-her-lacks", kit=say.things(things)) if things else "",
        before if things or not v.goes else "",
    )


def _lacks(say: SayInEvent, v: UncoveredValues) -> str:
    """In one clause: nobody will be there, or no pacer, or not all she needs."""
    return say.s(f"lacks-{_what(v)}", place=say.point(v.point), who=say.person(v.pacer))


def _what(v: UncoveredValues) -> str:
    if not v.goes and v.by is None:
        return "all"
    return "kit" if v.pacer is None else "pacer"


def _lacks_line(say: SayInEvent, v: UncoveredValues) -> str:
    return say.s("uncovered-her-lacks", kit=say.things(v.missing)) if v.missing else ""


def _window(say: SayInEvent, v: UncoveredValues) -> str:
    if v.window is None:
        return ""
    return say.s(
        "meeting-she-comes", runner=say.runner, place=say.point(v.point), window=say.window(v.window)
    )


def _others(say: SayInEvent, v: UncoveredValues, reader: str) -> str:
    others = [s for s in v.stand_ins if s.person != reader]
    if others:
        listed = [say.s("uncovered-other", who=say.person(s.person), how=_how(say, s)) for s in others]
        return say.s("uncovered-others", others="; ".join(listed))
    if v.stand_ins or (v.goes and v.pacer is None):
        return ""
    if v.goes:
        return say.s("uncovered-no-pacer", runner=say.runner)
    return say.s("uncovered-nobody", runner=say.runner)


def _how(say: SayInEvent, s: StandIn) -> str:
    """By when they would have to leave, or when they would be there leaving now; and the odds."""
    if s.drive is None:
        return say.s("could-unknown")
    origin = place_name(say.event, s.drive_from)
    drive = say.s(
        "could-drive", length=say.length(s.drive), **{"from": "none" if origin == NOWHERE else origin}
    )
    if s.leave_by is not None and s.leave_by > say.now:
        early = floor_to(s.leave_by)
        how = say.s("could-leave-by", when=say.when(early if early > say.now else s.leave_by), drive=drive)
    elif s.there is not None:
        when = say.when(ceil_to(s.there))
        how = say.s("could-now" if s.drive_confirmed else "could-estimated", when=when, drive=drive)
    else:
        how = say.s("could-after", drive=drive)
    return (
        how
        if s.p_meets >= SURE
        else say.s("could-odds", how=how, odds=say.odds(s.p_meets), runner=say.runner)
    )


def _gives_up(say: SayInEvent, s: StandIn) -> str:
    if not s.gives_up:
        return ""
    places = [say.point_of_meeting(m) for m in s.gives_up]
    return say.s("could-gives-up", places=say.all(places))


def _kit(say: SayInEvent, v: UncoveredValues, *, fetch: bool) -> tuple[str, ...]:
    """What lies in no car that comes, and where; for the one who goes, what to do about it."""
    if not v.missing:
        return ()
    things = say.things(v.missing)
    if not v.kit_car:
        return (say.s("uncovered-kit", kit=things),)
    where = say.s("uncovered-kit-in", kit=things, car=car_name(say.event, v.kit_car))
    return (where, say.s("uncovered-fetch")) if fetch else (where,)


def _also(say: SayInEvent, v: UncoveredValues) -> str:
    """Later meetings that are open as well."""
    if not v.also:
        return ""
    each = [say.s("uncovered-also-at", place=say.point(p), when=say.when(w.likely)) for p, w in v.also]
    return say.s("uncovered-also", places=say.all(each))


def _names(say: SayInEvent, v: UncoveredValues) -> str:
    return say.people(_gone(v))


def _gone(v: UncoveredValues) -> tuple[str, ...]:
    """Who fell out, and those who were to ride with them."""
    return tuple(dict.fromkeys((*(o.person for o in v.fallen), *v.out)))


def _why(say: SayInEvent, o: Out) -> str:
    return "none" if o.why == "not said" else say.s(f"fell-out-{slug(o.why)}")


def _quoted(say: SayInEvent, o: Out) -> str:
    return say.s("uncovered-words", who=say.person(o.told_by), words=o.words) if o.words else ""
