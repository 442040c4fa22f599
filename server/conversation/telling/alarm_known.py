"""What is known beside an alarm, and what to read out to rescuers: each a text of its own, so that the alarm fits a phone.

Facts stand apart from estimates; what is read out is whole sentences, on the event's own clock, coordinates in full.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from server.conversation.telling import measures, not_there, past_cut_off, race_over, why_now
from server.conversation.telling.say import SayInEvent, lines, slug
from server.conversation.telling.times import edges
from server.conversation.telling.trackers import tracker_says
from server.event.model import Point, ReporterKind, Runner, Signal, Stretch
from server.facts.state import LastKnown
from server.plan.kit import light_of
from server.watch.notice import AlarmValues, Heard, NoticeKind, Unsure

__all__ = [
    "bib",
    "fact",
    "known",
    "named",
    "not_named",
    "part_of",
    "read_out",
    "said_place",
    "says",
    "unconfirmed",
]

_HELP = NoticeKind.ASKED_FOR_HELP.value


def known(say: SayInEvent, v: AlarmValues, to: str) -> str:
    """All that is known of her now, for who looks for her: no orders."""
    asked = [p for p in v.asked if p != to]
    others = [p for p in v.told if p not in v.asked and p != to]
    return lines(
        say.s("known-first", runner=named(say), when=say.when(say.now)),
        says(say, v),
        not_named(say, v),
        said_place(say, v),
        fact(say, v.last_known),
        not_there.fact(say, v),
        not_there.no_word(say, v, to),
        race_over.facts(say, v, to),
        past_cut_off.in_alarm(say, v.past),
        _heard_since(say, v),
        _contact_lost(say, v),
        tracker_says(say, v.tracker),
        _how_it_ends(say, v),
        _expected(say, v),
        say.s("alarm-asked", names=say.people(asked)) if asked else "",
        say.s("alarm-told", names=say.people(others)) if others else "",
        _estimate(say, v),
        _may_be(say, v) if v.of_kind != _HELP else "",
        _her(say, v),
        _numbers(say),
        say.s("alarm-cautions"),
    )


def says(say: SayInEvent, v: AlarmValues) -> str:
    """Whose words raised the alarm, and the words: her own, or those of somebody who calls for her."""
    if v.of_kind != _HELP:
        return ""
    words = " / ".join(v.words.split("\n")) or "none"
    when = say.when(v.raised_at) if v.raised_at else "none"
    if not v.by:
        return say.s("alarm-words", words=words) if v.words else ""
    if by_herself(say, v):
        return say.s("alarm-says-self", runner=say.runner, when=when, words=words)
    return say.s("alarm-says", who=say.person(v.by), part=part_of(say, v.by), when=when, words=words)


def by_herself(say: SayInEvent, v: AlarmValues) -> bool:
    """Whether she called for help herself."""
    runner = _runner(say)
    return runner is not None and v.by == runner.person


def part_of(say: SayInEvent, person: str) -> str:
    """What somebody is in her race: 'crew'; 'none' for who is nothing in it."""
    parts = (p for p in say.event.parts if p.person == person and p.runner in (None, say.runner_id))
    kind = next((p.kind.value for p in parts), "")
    return say.s(f"part-{slug(kind)}") if kind else "none"


def _since_call(v: AlarmValues) -> tuple[Heard, ...]:
    """The newest words about her, whether or not they came in since the call, each once."""
    both = {(h.at, h.by, h.words): h for h in (*v.heard_since, *v.since_call)}
    return tuple(sorted(both.values(), key=lambda h: h.at))


def _runner(say: SayInEvent) -> Runner | None:
    return next((r for r in say.event.runners if r.id == say.runner_id), None)


def bib(say: SayInEvent) -> str:
    """Her number; '' where she has none: nobody is helped by 'bib ?'."""
    runner = _runner(say)
    return runner.bib if runner else ""


def named(say: SayInEvent) -> str:
    """Her name, with her number where she has one."""
    return say.s("alarm-runner", runner=say.runner, bib=bib(say)) if bib(say) else say.runner


def fact(say: SayInEvent, last: LastKnown | None) -> str:
    """Where and when she was last known, told by whom; with the place on the ground, where a phone gave it."""
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
        place=_place(say, (last.fix.lat, last.fix.lon)) if last.fix else "none",
    )


def not_named(say: SayInEvent, v: AlarmValues) -> str:
    """That the call may be for another runner, and whom to ask."""
    if not v.not_named_by:
        return ""
    person = next((p for p in say.event.people if p.id == v.not_named_by), None)
    phone = person.phone if person and person.phone else "none"
    return say.s("alarm-not-named", who=say.person(v.not_named_by), phone=phone)


def said_place(say: SayInEvent, v: AlarmValues) -> str:
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


def unconfirmed(say: SayInEvent, found: Sequence[Unsure]) -> str:
    """Reports about her that nobody stands for yet, a line each."""
    return lines(
        *(
            say.s(
                "alarm-said-over" if u.words else "alarm-unconfirmed",
                words=u.words,
                hearsay="yes" if u.hearsay else "no",
                fact=say.fact(u.kind, say.place_of(say.point(u.point) if u.point else "", None)),
                when=say.when(u.at, day=True),
                ago=say.ago(u.at),
                who=say.person(u.by),
            )
            for u in found
        )
    )


def _heard_since(say: SayInEvent, v: AlarmValues) -> str:
    return lines(
        unconfirmed(say, v.unconfirmed),
        *(
            say.s(
                "alarm-heard-since",
                when=say.when(h.at, day=True),
                ago=say.ago(h.at),
                who=say.person(h.by),
                words=h.words,
            )
            for h in _since_call(v)
        ),
    )


def _expected(say: SayInEvent, v: AlarmValues) -> str:
    if v.expected is None:
        return ""
    first = say.s(
        "alarm-expected", place=say.point(v.expected.point), window=say.window_stood(v.expected, day=True)
    )
    return lines(first, why_now.why_now(say, v))


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
    routes = dict.fromkeys(s.escape_route for s in between if s.escape_route)
    ways += [say.s("alarm-may-escape", route=route) for route in routes]
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
        torch=light_of(runner) or say.s("not-known"),
        pacer=pacer,
    )
    return f"{say.s('alarm-bib', bib=bib(say))} {her}" if bib(say) else her


def _numbers(say: SayInEvent) -> str:
    """Race control, the emergency number, mountain rescue."""
    control, rescue = say.event.race_control, say.event.rescue
    return lines(
        say.s("alarm-numbers", name=control.name, phone=control.phone, emergency=say.event.emergency_number),
        say.s("alarm-numbers-rescue", name=rescue.name, phone=rescue.phone) if rescue else "",
    )


def read_out(say: SayInEvent, v: AlarmValues) -> str:
    """A text to read out as it stands, whole sentences, the event's own clock only, coordinates in full."""
    runner = _runner(say)
    her = (
        say.s(
            "read-out-her",
            clothing=runner.clothing or say.s("not-known"),
            torch=light_of(runner) or say.s("not-known"),
            phone=_phone(say, runner),
        )
        if runner
        else ""
    )
    help_words = "" if v.of_kind != _HELP else _read_out_help(say, v)
    return lines(
        say.s("alarm-read-out"),
        say.s("read-out-who", runner=say.runner, bib=bib(say) or "none", event=say.event.name),
        help_words,
        say.s("read-out-not-named") if v.not_named_by else "",
        said_place(say, v),
        *_read_out_last(say, v.last_known),
        not_there.read_out(say, v),
        race_over.read_out(say, v),
        *(
            say.s("read-out-heard", when=say.spoken(h.at), who=say.person(h.by), words=h.words)
            for h in _since_call(v)
        ),
        _read_out_expected(say, v),
        say.s("read-out-estimate", place=_place(say, v.where_fix)) if v.where_fix else "",
        her,
    )


def _read_out_help(say: SayInEvent, v: AlarmValues) -> str:
    if not v.by or by_herself(say, v):
        return say.s("read-out-help", words=v.words or "none")
    return say.s("read-out-help-by", who=say.person(v.by), words=v.words or "none")


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
