"""The wording of alarms and of what belongs to them: stand-down, test alarm, who can't be reached, outages.

An alarm is read by a frightened person on a phone, so it has ten lines at most: what happened and to whom, who says so, what
the reader does now, two numbers. What is known, and what to read out to rescuers, are texts of their own (alarm_known.py).
"""

from __future__ import annotations

from collections.abc import Sequence

from server.conversation.telling import alarm_known, not_there, past_cut_off, race_over, why_now
from server.conversation.telling.alarm_known import by_herself, fact, named, not_named, said_place, says
from server.conversation.telling.say import SayInEvent, lines, slug
from server.event.model import PartKind
from server.sentences import has
from server.watch.escalation import SOON
from server.watch.notice import (
    AlarmValues,
    CallBackValues,
    NoticeKind,
    OutageValues,
    StandDownValues,
    TestAlarmValues,
    UnreachedValues,
)

LINES_MAX = 9
"""Of an alarm, without the line that gives its number."""
_HELP = NoticeKind.ASKED_FOR_HELP.value


def alarm(say: SayInEvent, v: AlarmValues, kind: NoticeKind, to: str) -> str:
    """The alarm for the person `to`. What is known and what to read out, where the kind asks for those."""
    if kind is NoticeKind.ALARM_KNOWN:
        return alarm_known.known(say, v, to)
    if kind is NoticeKind.READ_OUT:
        return alarm_known.read_out(say, v)
    # What may be left out where there is too much of it has a number: the highest goes first.
    newest = v.since_call[-1] if v.since_call else None
    since = (
        say.s("alarm-newest", when=say.when(newest.at), who=say.person(newest.by), words=newest.words)
        if newest and newest.words != v.words
        else ""
    )
    again = kind is NoticeKind.LOOK_AGAIN or (_told_only(v) and to in v.told)
    return fitted(
        (
            (0, _first(say, v, kind, to)),
            (0, says(say, v)),
            (0, "" if again else not_named(say, v)),
            (0, _to_do(say, v, kind, to)),
            (0, numbers(say, v, to)),
            (0, said_place(say, v)),
            (1, since),
            (1, race_over.facts(say, v, to)),
            (1, past_cut_off.in_alarm(say, v.past)),
            (1, alarm_known.unconfirmed(say, v.unconfirmed[:1])),
            (2 if v.of_kind == _HELP else 0, fact(say, v.last_known)),
            (2, not_there.fact(say, v)),
            (1, "" if again else why_now.why_now(say, v)),
            (3, not_there.no_word(say, v, to)),
            (0, say.s("alarm-more-follows" if v.caller == to and v.step == 0 else "alarm-more")),
        )
    )


def fitted(parts: Sequence[tuple[int, str]], most: int = LINES_MAX) -> str:
    """The parts as one text of at most so many lines: parts of the highest rank are left out first, those of rank 0
    never."""
    kept = [(rank, text) for rank, text in parts if text]
    while sum(text.count("\n") + 1 for _, text in kept) > most:
        worst = max(rank for rank, _ in kept)
        if worst == 0:
            break
        last = max(i for i, (rank, _) in enumerate(kept) if rank == worst)
        del kept[last]
    return lines(*(text for _, text in kept))


def numbers(say: SayInEvent, v: AlarmValues | CallBackValues, to: str) -> str:
    """The two numbers, with what each is for; race control itself reads that of whoever has it, or called."""
    control, emergency = say.event.race_control, say.event.emergency_number
    if not say.event.is_race_control(to):
        return say.s("alarm-two", emergency=emergency, name=control.name, phone=control.phone)
    phones = {p.id: p.phone for p in say.event.people if p.phone and p.id != to}
    home = (p.person for p in say.event.parts if p.kind is PartKind.SAFETY_CONTACT)
    other = next((who for who in (v.holder, v.by, *home) if who in phones), None)
    if other is None:
        return say.s("alarm-two-none", emergency=emergency)
    return say.s("alarm-two", emergency=emergency, name=say.person(other), phone=phones[other])


def _first(say: SayInEvent, v: AlarmValues, kind: NoticeKind, to: str) -> str:
    who = {"runner": named(say)}
    if v.named_by and kind is NoticeKind.HANDED_ON and _told_only(v) and v.holder is None and not v.gave_back:
        return say.s("alarm-named", name=say.person(v.named_by), **who)
    if kind is NoticeKind.LOOK_AGAIN:
        return say.s("alarm-look-again", name=say.person(v.holder) if v.holder else "none", **who)
    if kind is NoticeKind.HANDED_ON and v.gave_back:
        key = "alarm-given-back" if _told_only(v) else "alarm-handed-on-back"
        back = say.s(key, name=say.person(v.gave_back), **who)
        return lines(back, "" if _told_only(v) else _what(say, v, v.of_kind, who))
    if kind is NoticeKind.HANDED_ON and _told_only(v) and v.holder is not None and v.caller != to:
        taken = say.s("alarm-taken", name=say.person(v.holder), **who)
        return lines(taken, "" if to in v.told else _what(say, v, v.of_kind, who))
    if kind is NoticeKind.HANDED_ON and v.holder is not None and v.caller == to and _told_only(v):
        if v.holder == to:
            return say.s("alarm-call-instead", **who)
        return say.s("alarm-taken-call", name=say.person(v.holder), **who)
    if kind is NoticeKind.HANDED_ON and not _told_only(v):
        handed = (
            say.s("alarm-handed-on-held", name=say.person(v.silent), **who)
            if v.silent
            else say.s("alarm-handed-on", **who)
        )
        return lines(handed, _what(say, v, v.of_kind, who))
    if v.silent and v.silent != to:
        silent = say.s("alarm-silent", name=say.person(v.silent))
        return f"{silent} {_what(say, v, v.of_kind, who)}"
    return _what(say, v, v.of_kind, who)


def _told_only(v: AlarmValues) -> bool:
    """Whether this is no step of the ladder: it says who holds the alarm, and hands it to nobody."""
    return v.step < 0


def _what(say: SayInEvent, v: AlarmValues, of_kind: str, who: dict[str, str]) -> str:
    if of_kind == _HELP:
        unanswered = v.step > 0 and v.holder is None and not v.gave_back and not v.silent
        first = say.s("alarm-unanswered") if unanswered else ""
        by_her = not v.by or by_herself(say, v)
        what = say.s("alarm-asked-for-help" if by_her else "alarm-help-needed", **who)
        return f"{first} {what}" if first else what
    if of_kind == NoticeKind.SWEEP.value:
        return say.s("alarm-sweep", place=say.point(v.point), **who)
    if v.point:
        return say.s("alarm-overdue", place=say.point(v.point), **who)
    return say.s("alarm-overdue-nowhere", **who)


def _to_do(say: SayInEvent, v: AlarmValues, kind: NoticeKind, to: str) -> str:
    """Who holds it, who is to answer, who calls race control: one named person, the others not. Whoever may stand beside
    her calls themselves: they can say what they see."""
    if kind is NoticeKind.LOOK_AGAIN:
        return _held(say, v, to)
    if v.gave_back and _told_only(v):
        held = ""
    elif v.holder is None:
        rule, everybody = say.event.alarm, v.of_kind == _HELP
        # Help that nobody answers is asked about again soon, a few times; then at the look-again time.
        pause = rule.look_again if everybody and v.step >= SOON else rule.answer_within
        held = say.s("alarm-answer-all" if everybody else "alarm-answer", length=say.length(pause))
    else:
        held = _held(say, v, to)
    return lines(held, _call(say, v, to))


def _call(say: SayInEvent, v: AlarmValues, to: str) -> str:
    control = {"name": say.event.race_control.name, "phone": say.event.race_control.phone}
    if to in v.beside:
        return say.s("alarm-beside", emergency=say.event.emergency_number, **control)
    if say.event.is_race_control(to):
        return race_control_does(say, v)
    if v.holder is not None and say.event.is_race_control(v.holder):
        return say.s("alarm-call-not-needed")
    if v.caller is None:
        return say.s("alarm-call-none", **control)
    if v.caller == to:
        return say.s("alarm-call-you", **control)
    if v.holder is None and v.step > 0 and v.caller in v.asked:
        # Who was to call sleeps: left at 'they call', each would wait for somebody who has not even read it.
        return say.s("alarm-call-in-place", caller=say.person(v.caller), **control)
    return say.s("alarm-call-other", caller=say.person(v.caller))


def race_control_does(say: SayInEvent, v: AlarmValues) -> str:
    """What race control does, who reads an alarm as a person of the event: they have no number to ring but can see, ask and
    send."""
    if v.of_kind == _HELP:
        return say.s("alarm-control-help")
    return say.s("alarm-control", place=say.point(v.point) if v.point else "none")


def _held(say: SayInEvent, v: AlarmValues, to: str) -> str:
    """Who holds it, and until when; a look-again time that has come is asked for, not announced."""
    if v.holder is None:
        return ""
    ahead = v.look_again if v.look_again is not None and v.look_again > say.now else None
    if v.holder == to:
        return say.s("alarm-held-you", when=say.when(ahead)) if ahead else say.s("alarm-held-you-now")
    if ahead is not None:
        return say.s("alarm-held", name=say.person(v.holder), when=say.when(ahead))
    return say.s("alarm-held-untimed", name=say.person(v.holder))


def stand_down(say: SayInEvent, v: StandDownValues) -> str:
    """The alarm is over: why, and who says so."""
    values = {"by": say.person(v.by), "when": say.when(v.at)}
    if v.point:
        first = say.s("stand-down-seen", runner=say.runner, place=say.point(v.point), **values)
        return lines(first, say.s("stand-down-thanks"))
    key = f"alarm-kind-{slug(v.of_kind)}"
    of_kind = say.s(key if has(key) else "alarm-kind-other")
    why = ended_by(say, v.reason)
    if v.meant:
        names = {r.id: r.name for r in say.event.runners}
        why = say.s("stand-down-reason-meant", other=names.get(v.meant, v.meant))
    return lines(
        say.s("stand-down", runner=say.runner, of_kind=of_kind),
        say.s("stand-down-why", reason=why, **values),
        say.s("stand-down-thanks"),
    )


def ended_by(say: SayInEvent, reason: str) -> str:
    """What ended an alarm, by its `End`."""
    key = f"stand-down-reason-{slug(reason)}"
    return say.s(key) if has(key) else say.s("stand-down-reason-other", reason=reason)


def test_alarm(say: SayInEvent, v: TestAlarmValues) -> str:
    """The test before the start, answered with the phone as it will be at night."""
    return lines(say.s("test-alarm", when=say.when(v.answer_by)), say.s("test-alarm-why"))


def unreached(say: SayInEvent, v: UnreachedValues) -> str:
    """Somebody can't be reached: who, since when, tried how, and the number to telephone."""
    person = next((p for p in say.event.people if p.id == v.person), None)
    kind = slug(v.notice_kind)
    known = next((k for k in (f"unreached-kind-{kind}", f"alarm-kind-{kind}") if has(k)), "alarm-kind-other")
    values = {"name": say.person(v.person), "what": say.s(known), "when": say.when(v.since)}
    first = (
        say.s("unreached", channels=say.all(v.channels), **values)
        if v.channels
        else say.s("unreached-silent", **values)
    )
    phone = say.s("unreached-phone", name=person.name, phone=person.phone) if person and person.phone else ""
    return lines(first, phone)


def outage(say: SayInEvent, v: OutageValues) -> str:
    """Our own server, database or channel was down, by name, and what that means."""
    way, _, name = v.what.rpartition(":")
    sends = ("outage-open-out", "outage-over-out")
    lasts, over = sends if way == "outgoing" else ("outage-open", "outage-over")
    what = say.ours(name)
    if v.end is None:
        return say.s(lasts, what=what, when=say.when(v.start))
    return say.s(
        over,
        what=what[:1].upper() + what[1:],
        length=say.length(v.end - v.start),
        **{"from": say.when(v.start), "to": say.when(v.end)},
    )
