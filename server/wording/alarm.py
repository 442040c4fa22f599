"""The wording of alarms and of what belongs to them: stand-down, test alarm, who can't be reached, outages.

An alarm is read by a frightened person, perhaps aloud to race control. So: what and who in the first line,
then who does what, then facts apart from estimates, then numbers, then a text ready to read out.
"""

from __future__ import annotations

from datetime import timedelta

from server.event.model import Point, ReporterKind, Runner, Signal, Stretch
from server.facts.state import LastKnown
from server.watch.notice import (
    AlarmValues,
    NoticeKind,
    OutageValues,
    StandDownValues,
    TestAlarmValues,
    UnreachedValues,
)
from server.wording import measures, not_there, race_over
from server.wording.say import SayInEvent, lines, slug
from server.wording.sentences import has
from server.wording.times import edges


def alarm(say: SayInEvent, v: AlarmValues, kind: NoticeKind, to: str) -> str:
    """The full alarm for the person `to`: everything they need, so that nobody has to ask back."""
    others = [p for p in v.told if p not in v.asked and p != to]
    if kind is NoticeKind.LOOK_AGAIN or (_told_only(v) and to in v.told):
        # They have the whole of it already: what is new, and whom to call.
        return lines(
            _first(say, v, kind, to),
            _to_do(say, v, kind, to),
            _fact(say, v.last_known),
            not_there.fact(say, v),
            not_there.no_word(say, v, to),
            race_over.facts(say, v, to),
            _heard_since(say, v),
            _contact_lost(say, v),
            _estimate(say, v),
            say.s("alarm-life", emergency=say.event.emergency_number),
            _numbers(say),
        )
    return lines(
        _first(say, v, kind, to),
        say.s("alarm-words", words=v.words) if v.words else "",
        _not_named(say, v),
        _said_place(say, v),
        _to_do(say, v, kind, to),
        say.s("alarm-life", emergency=say.event.emergency_number),
        _fact(say, v.last_known),
        not_there.fact(say, v),
        not_there.no_word(say, v, to),
        race_over.facts(say, v, to),
        _heard_since(say, v),
        _contact_lost(say, v),
        _how_it_ends(say, v),
        _expected(say, v),
        say.s("alarm-asked", names=say.people(v.asked)) if v.asked else say.s("alarm-asked-none"),
        say.s("alarm-told", names=say.people(others)) if others else "",
        _estimate(say, v),
        _may_be(say, v) if v.of_kind != NoticeKind.ASKED_FOR_HELP.value else "",
        _her(say, v),
        _numbers(say),
        _read_out(say, v),
        say.s("alarm-cautions"),
    )


FAR_AFTER = timedelta(minutes=45)
"""An alarm so long after the likely time makes its reader ask why it comes only now (own choice)."""


def _runner(say: SayInEvent) -> Runner | None:
    return next((r for r in say.event.runners if r.id == say.runner_id), None)


def _bib(say: SayInEvent) -> str:
    """Her number; '' where she has none: nobody is helped by 'bib ?'."""
    runner = _runner(say)
    return runner.bib if runner else ""


def _named(say: SayInEvent) -> str:
    bib = _bib(say)
    return say.s("alarm-runner", runner=say.runner, bib=bib) if bib else say.runner


def _first(say: SayInEvent, v: AlarmValues, kind: NoticeKind, to: str) -> str:
    who = {"runner": _named(say)}
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
    if kind is NoticeKind.HANDED_ON and not _told_only(v):
        held = v.holder is not None
        handed = (
            say.s("alarm-handed-on-held", name=say.person(v.holder), **who)
            if held
            else say.s("alarm-handed-on", **who)
        )
        return lines(handed, _what(say, v, v.of_kind, who))
    return _what(say, v, v.of_kind, who)


def _told_only(v: AlarmValues) -> bool:
    """Whether this is no step of the ladder: it says who holds the alarm, and hands it to nobody."""
    return v.step < 0


def _what(say: SayInEvent, v: AlarmValues, of_kind: str, who: dict[str, str]) -> str:
    if of_kind == NoticeKind.ASKED_FOR_HELP.value:
        return say.s("alarm-asked-for-help", **who)
    if of_kind == NoticeKind.SWEEP.value:
        return say.s("alarm-sweep", place=say.point(v.point), **who)
    if v.point:
        return say.s("alarm-overdue", place=say.point(v.point), **who)
    return say.s("alarm-overdue-nowhere", **who)


def _to_do(say: SayInEvent, v: AlarmValues, kind: NoticeKind, to: str) -> str:
    """Who holds it, who is to answer, who calls race control: one named person, the others not."""
    control = say.event.race_control
    if kind is NoticeKind.LOOK_AGAIN:
        return _held(say, v, to)
    if v.gave_back and _told_only(v):
        held = ""
    elif v.holder is None or (kind is NoticeKind.HANDED_ON and not _told_only(v)):
        held = say.s("alarm-answer", length=say.length(say.event.alarm.answer_within))
    else:
        held = _held(say, v, to)
    if v.caller is None:
        call = say.s("alarm-call-none", name=control.name, phone=control.phone)
    elif v.caller == to:
        call = say.s("alarm-call-you", name=control.name, phone=control.phone)
    elif v.holder is None and v.step > 0 and v.caller in v.asked:
        # Who was to call sleeps: left at 'they call', each would wait for somebody who has not even read it.
        values = {"caller": say.person(v.caller), "name": control.name, "phone": control.phone}
        call = say.s("alarm-call-in-place", **values)
    else:
        call = say.s("alarm-call-other", caller=say.person(v.caller))
    return lines(held, call)


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


def _fact(say: SayInEvent, last: LastKnown | None) -> str:
    if last is None:
        runner = _runner(say)
        start = runner.start if runner else say.event.starts
        return say.s("alarm-fact-none", when=say.when(start, day=True))
    return say.s(
        "alarm-fact",
        fact=say.last(last),
        when=say.when(last.at, day=True),
        ago=say.ago(last.at),
        who=say.person(last.by),
    )


def _not_named(say: SayInEvent, v: AlarmValues) -> str:
    """That the call may be for another runner, and whom to ask."""
    if not v.not_named_by:
        return ""
    person = next((p for p in say.event.people if p.id == v.not_named_by), None)
    phone = person.phone if person and person.phone else "none"
    return say.s("alarm-not-named", who=say.person(v.not_named_by), phone=phone)


def _said_place(say: SayInEvent, v: AlarmValues) -> str:
    """Where the words of the call put her: it stands before what the forecast thinks."""
    if v.said_km is None:
        return ""
    where = _place(say, v.said_fix) if v.said_fix is not None else "none"
    return say.s("alarm-said-km", km=say.km(v.said_km), place=where)


def _how_it_ends(say: SayInEvent, v: AlarmValues) -> str:
    """Help is not over because she was seen: who can end it, and in which words."""
    if v.of_kind != NoticeKind.ASKED_FOR_HELP.value:
        return ""
    last, raised = v.last_known, v.raised_at
    seen = last is not None and raised is not None and last.at > raised
    return say.s("alarm-help-seen" if seen else "alarm-help-ends", runner=say.runner)


def _heard_since(say: SayInEvent, v: AlarmValues) -> str:
    unsure = (
        say.s(
            "alarm-unconfirmed",
            fact=say.fact(u.kind, say.place_of(say.point(u.point) if u.point else "", None)),
            when=say.when(u.at, day=True),
            ago=say.ago(u.at),
            who=say.person(u.by),
        )
        for u in v.unconfirmed
    )
    return lines(
        *unsure,
        *(
            say.s(
                "alarm-heard-since",
                when=say.when(h.at, day=True),
                ago=say.ago(h.at),
                who=say.person(h.by),
                words=h.words,
            )
            for h in v.heard_since
        ),
    )


def _expected(say: SayInEvent, v: AlarmValues) -> str:
    if v.expected is None:
        return ""
    first = say.s(
        "alarm-expected", place=say.point(v.expected.point), window=say.window_stood(v.expected, day=True)
    )
    after = None if v.raised_at is None else v.raised_at - v.expected.likely
    late = v.of_kind == NoticeKind.OVERDUE.value and after is not None and after >= FAR_AFTER
    return lines(first, say.s("alarm-why-now", length=say.length(after)) if late and after else "")


def _estimate(say: SayInEvent, v: AlarmValues) -> str:
    """Where she may be now, marked as an estimate in capitals, with the place of the likeliest km."""
    km = ""
    if v.where is not None:
        low, high = measures.stretch(v.where.low_km, v.where.high_km, say.reader)
        likely = measures.distance(v.where.likely_km, say.reader, decimals=0)
        km = say.s("alarm-estimate", low=low, high=high, likely=likely)
    place = say.s("alarm-estimate-place", place=_place(say, v.where_fix)) if v.where_fix else ""
    return lines(km, place)


def _place(say: SayInEvent, at: tuple[float, float]) -> str:
    return measures.place(at[0], at[1], say.reader.language)


def _span(say: SayInEvent, v: AlarmValues) -> tuple[float, float]:
    """The part of the course (km) between the last fact and the point she is expected at."""
    low = v.last_known.km if v.last_known and v.last_known.km is not None else 0.0
    expected = say.point_or_none(v.expected.point if v.expected else v.point)
    ends = [k for k in (expected.km if expected else None, v.where.high_km if v.where else None) if k]
    return low, max([low, *ends])


def _contact_lost(say: SayInEvent, v: AlarmValues) -> str:
    """That her shared position has ended: of her phone, not of her."""
    if v.contact_lost is None:
        return ""
    return say.s("alarm-contact-lost", when=say.when(v.contact_lost), ago=say.ago(v.contact_lost))


def _may_be(say: SayInEvent, v: AlarmValues) -> str:
    """The ways in which she may be well: unreported, out of signal, resting, off the course."""
    ways: list[str] = []
    point = say.point_or_none(v.expected.point if v.expected else v.point)
    if point is not None and (v.not_there is None or v.not_there.point != point.id):
        ways += _unreported(say, point)
    low, high = _span(say, v)
    between = [s for s in _stretches(say) if s.to_km > low and s.from_km < high]
    for s in between:
        if s.no_signal:
            ways.append(say.s("alarm-may-signal", **{"from": say.km(s.from_km), "to": say.km(s.to_km)}))
    ways += [say.s("alarm-may-phone"), say.s("alarm-may-resting"), say.s("alarm-may-off")]
    ways += [say.s("alarm-may-escape", route=s.escape_route) for s in between if s.escape_route]
    ways[-1] = ways[-1].removesuffix(";").removesuffix(".") + "."
    return lines(say.s("alarm-may-be"), *ways)


def _stretches(say: SayInEvent) -> tuple[Stretch, ...]:
    runner = _runner(say)
    return say.event.course_of(runner.id).stretches if runner else ()


def _unreported(say: SayInEvent, point: Point) -> list[str]:
    reports = [r for r in point.reports if r.by is not ReporterKind.NOBODY]
    ways = []
    if not reports:
        ways.append(say.s("alarm-may-unreported-nobody", place=point.name))
    else:
        by = say.all(say.s(f"by-{slug(r.by.value)}") for r in reports)
        ways.append(say.s("alarm-may-unreported", place=point.name, by=by))
        delay = max(r.delay for r in reports)
        if delay > timedelta(0):
            ways.append(say.s("alarm-may-delay", place=point.name, length=say.length(delay)))
    if point.signal is not Signal.GOOD:
        ways.append(say.s("alarm-may-signal-point", place=point.name))
    return ways


def _phone(say: SayInEvent, runner: Runner) -> str:
    person = next((p for p in say.event.people if p.id == runner.person), None)
    return person.phone if person and person.phone else say.s("not-known")


def _her(say: SayInEvent, v: AlarmValues) -> str:
    runner = _runner(say)
    if runner is None:
        return ""
    pacer = say.s("alarm-pacer", name=say.person(v.pacer)) if v.pacer else say.s("alarm-no-pacer")
    her = say.s(
        "alarm-her",
        phone=_phone(say, runner),
        clothing=runner.clothing or say.s("not-known"),
        torch=runner.torch or say.s("not-known"),
        pacer=pacer,
    )
    return f"{say.s('alarm-bib', bib=_bib(say))} {her}" if _bib(say) else her


def _numbers(say: SayInEvent) -> str:
    control, rescue = say.event.race_control, say.event.rescue
    return lines(
        say.s("alarm-numbers", name=control.name, phone=control.phone, emergency=say.event.emergency_number),
        say.s("alarm-numbers-rescue", name=rescue.name, phone=rescue.phone) if rescue else "",
    )


def _read_out(say: SayInEvent, v: AlarmValues) -> str:
    """A text to read out as it stands, whole sentences, the event's own clock only, coordinates in full."""
    runner = _runner(say)
    her = (
        say.s(
            "read-out-her",
            clothing=runner.clothing or say.s("not-known"),
            torch=runner.torch or say.s("not-known"),
            phone=_phone(say, runner),
        )
        if runner
        else ""
    )
    help_words = (
        say.s("read-out-help", words=v.words or "none")
        if v.of_kind == NoticeKind.ASKED_FOR_HELP.value
        else ""
    )
    return lines(
        say.s("alarm-read-out"),
        say.s("read-out-who", runner=say.runner, bib=_bib(say) or "none", event=say.event.name),
        help_words,
        say.s("read-out-not-named") if v.not_named_by else "",
        _said_place(say, v),
        *_read_out_last(say, v.last_known),
        not_there.read_out(say, v),
        race_over.read_out(say, v),
        *(
            say.s("read-out-heard", when=say.spoken(h.at), who=say.person(h.by), words=h.words)
            for h in v.heard_since
        ),
        _read_out_expected(say, v),
        say.s("read-out-estimate", place=_place(say, v.where_fix)) if v.where_fix else "",
        her,
    )


def _read_out_last(say: SayInEvent, last: LastKnown | None) -> tuple[str, ...]:
    if last is None:
        runner = _runner(say)
        start = runner.start if runner else say.event.starts
        return (say.s("read-out-none", when=say.spoken(start)),)
    said = say.s("read-out-last", fact=say.last(last), when=say.spoken(last.at), who=say.person(last.by))
    fix = say.s("read-out-last-place", place=_place(say, (last.fix.lat, last.fix.lon))) if last.fix else ""
    km = say.s("read-out-last-km", km=say.km(last.km)) if last.km is not None else ""
    return said, fix, km


def _read_out_expected(say: SayInEvent, v: AlarmValues) -> str:
    if v.expected is None:
        return ""
    _, likely, late = edges(v.expected)
    return say.s(
        "read-out-expected",
        place=say.point(v.expected.point),
        likely=say.spoken(likely),
        late=say.spoken(late),
    )


def stand_down(say: SayInEvent, v: StandDownValues) -> str:
    """The alarm is over: why, and who says so."""
    values = {"by": say.person(v.by), "when": say.when(v.at)}
    if v.point:
        first = say.s("stand-down-seen", runner=say.runner, place=say.point(v.point), **values)
        return lines(first, say.s("stand-down-thanks"))
    key = f"alarm-kind-{slug(v.of_kind)}"
    of_kind = say.s(key if has(key) else "alarm-kind-other")
    reason = f"stand-down-reason-{slug(v.reason)}"
    why = say.s(reason) if has(reason) else say.s("stand-down-reason-other", reason=v.reason)
    if v.meant:
        names = {r.id: r.name for r in say.event.runners}
        why = say.s("stand-down-reason-meant", other=names.get(v.meant, v.meant))
    return lines(
        say.s("stand-down", runner=say.runner, of_kind=of_kind),
        say.s("stand-down-why", reason=why, **values),
        say.s("stand-down-thanks"),
    )


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
