"""After the race: plan against fact by section, stops, fade, how the windows did, messages and how soon they were
answered, what was written on the way, and three questions to each."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from statistics import median

from server.conversation.telling.against_plan import LegCompared, parts_of, say_report
from server.conversation.telling.answer import ForecastAnswer, PointAnswer
from server.conversation.telling.reader import reader_in
from server.conversation.telling.say import Say
from server.conversation.telling.stop_log import log_line
from server.event.model import Event, PartKind
from server.facts.entry import LOOKED_BACK, Entry
from server.facts.stop_log import UNIT
from server.paper.document import Block, Grid, Head, Lines, Look, Page, Sheet, page
from server.paper.scored import Scored
from server.plan.held import Figure, RaceEvidence
from server.plan.movements.names import person_name
from server.plan.targets import hours
from server.plan.timetable import Timetable
from server.watch.notice import Made

SECTIONS = ("section", "planned-head", "took", "over")
STOPS = ("point", *SECTIONS[1:])
WINDOWS = ("point", "window-first", "likely-head", "window-last", "came", "inside")
TOLD = ("who", "messages", "asked-head", "answered", "how-soon", "slowest")


@dataclass(frozen=True, slots=True)
class MessagesTold:
    """What one person was told of a race: messages that went out, how many asked for an answer, how many got one, how
    soon (None: none)."""

    person: str
    sent: int
    asked: int
    answered: int
    median: timedelta | None
    slowest: timedelta | None


@dataclass(frozen=True, slots=True)
class Afterwards:
    """One runner's race when it is over. `halves`: how much longer the second half of what she covered took than the first,
    by plan and in fact (0.2 = a fifth); None where too little is known."""

    event: Event
    runner: str
    answer: ForecastAnswer
    parts: tuple[LegCompared, ...]
    halves: tuple[float, float] | None
    scored: tuple[Scored, ...]
    told: tuple[MessagesTold, ...]
    written: tuple[Entry, ...]
    race: tuple[float, float, timedelta] | None
    """Of a finished race km, ascent (m) and time: what a next plan can rest on."""
    held: RaceEvidence
    log: tuple[Entry, ...]
    looked_back: tuple[Entry, ...]


def afterwards(
    event: Event,
    timetable: Timetable,
    answer: ForecastAnswer,
    made: Sequence[Made],
    windows: Sequence[Scored],
    written: Sequence[Entry],
    held: RaceEvidence,
    log: Sequence[Entry] = (),
    looked_back: Sequence[Entry] = (),
) -> Afterwards:
    """All of it, from the forecast at the end, the notices made, the windows scored, words on how she was, and the stop
    log with what it and her times say of her."""
    runner = timetable.runner
    told = tuple(_told(event, made, runner))
    parts = tuple(parts_of(answer.points))
    halves, race = _halves(answer.points), _race(event, timetable, answer)
    return Afterwards(
        event,
        runner,
        answer,
        parts,
        halves,
        tuple(windows),
        told,
        tuple(written),
        race,
        held,
        tuple(log),
        tuple(looked_back),
    )


def _told(event: Event, made: Sequence[Made], runner: str) -> Iterator[MessagesTold]:
    by_person: dict[str, list[Made]] = {}
    people = {p.id for p in event.people}
    for m in made:
        if m.sent_at is not None and m.notice.key.runner in (runner, "") and m.notice.key.person in people:
            by_person.setdefault(m.notice.key.person, []).append(m)
    for person, mine in by_person.items():
        asked = [m for m in mine if m.notice.needs_answer]
        took = [
            m.answered_at - m.sent_at for m in asked if m.answered_at is not None and m.sent_at is not None
        ]
        yield MessagesTold(person, len(mine), len(asked), len(took), _middle(took), max(took, default=None))


def _middle(lengths: Sequence[timedelta]) -> timedelta | None:
    return timedelta(seconds=median(t.total_seconds() for t in lengths)) if lengths else None


def _halves(points: Sequence[PointAnswer]) -> tuple[float, float] | None:
    """Half of the way between the first and the last point with a time; each point's time by plan and in fact."""
    rows = [
        (p.km, p.planned_in, p.arrived or p.left)
        for p in points
        if p.planned_in is not None and (p.arrived or p.left) is not None
    ]
    if points and points[0].planned_in is not None and (not rows or rows[0][0] > points[0].km):
        rows.insert(0, (points[0].km, points[0].planned_in, points[0].left or points[0].planned_in))
    if len(rows) < 3:
        return None
    km = [r[0] for r in rows]
    middle = (km[0] + km[-1]) / 2
    return _longer(km, [r[1] for r in rows], middle), _longer(km, [r[2] for r in rows], middle)


def _longer(km: Sequence[float], at: Sequence[datetime | None], middle: float) -> float:
    times = [t.timestamp() for t in at if t is not None]
    k = next(i for i in range(1, len(km)) if km[i] >= middle)
    share = (middle - km[k - 1]) / (km[k] - km[k - 1])
    half = times[k - 1] + share * (times[k] - times[k - 1])
    return (times[-1] - half) / (half - times[0]) - 1.0


def _race(
    event: Event, timetable: Timetable, answer: ForecastAnswer
) -> tuple[float, float, timedelta] | None:
    finish = next((p for p in answer.points if p.finish), None)
    if finish is None or finish.arrived is None:
        return None
    stated = event.course_of(timetable.runner).stated_ascent_m
    ascent = sum(r.leg_ascent_m for r in timetable.rows) if stated is None else stated
    started = answer.fresh.started or timetable.start
    return finish.km, ascent, finish.arrived - started


def sheet(a: Afterwards, person: str, now: datetime) -> Sheet:
    """The page of it, as `person` reads it, and one with three questions to each."""
    say = Say(reader_in(a.event, person), now)
    return Sheet(
        say.reader.language,
        a.answer.runner_name,
        a.event.name,
        say.s("paper-afterwards"),
        tuple(p for p in (_facts(a, say), _questions(a, say)) if p.blocks),
    )


def _facts(a: Afterwards, say: Say) -> Page:
    legs, stops = ([p for p in a.parts if bool(p.start) is x] for x in (True, False))
    return page(
        Lines(tuple(say_report(say, a.answer).splitlines()[:-1])),
        Head(say.s("paper-head-sections")),
        Grid(_heads(say, SECTIONS), tuple(_row(say, p) for p in legs), numbers=True),
        Head(say.s("paper-head-stops")),
        Grid(_heads(say, STOPS), (*(_row(say, p) for p in stops), *_all_stops(say, stops)), numbers=True),
        *_fade(a, say),
        *_windows(a, say),
        Head(say.s("paper-head-told")),
        Grid(_heads(say, TOLD), tuple(_said(a, say, t) for t in a.told), numbers=True),
        Head(say.s("paper-head-written")),
        Lines(tuple(_word(a, say, e) for e in a.written if e.words), Look.SMALL),
        *_logged(a, say),
        *_next(a, say),
    )


def _heads(say: Say, keys: Sequence[str]) -> tuple[str, ...]:
    return tuple(say.s(f"paper-{k}") for k in keys)


def _row(say: Say, p: LegCompared) -> tuple[str, ...]:
    name = say.s("paper-from-to", **{"from": p.start}, to=p.end) if p.start else p.end
    return name, _hm(p.planned), _hm(p.planned + p.over), _signed(p.over)


def _all_stops(say: Say, stops: Sequence[LegCompared]) -> Iterator[tuple[str, ...]]:
    if len(stops) > 1:
        planned, over = (
            sum(x, timedelta(0)) for x in zip(*((p.planned, p.over) for p in stops), strict=True)
        )
        yield _row(say, LegCompared("", say.s("paper-all-stops"), planned, over))


def _hm(t: timedelta) -> str:
    return hours(timedelta(minutes=round(t / timedelta(minutes=1))))


def _signed(t: timedelta) -> str:
    return f"{'-' if t < timedelta(0) else '+'}{_hm(abs(t))}"


def _fade(a: Afterwards, say: Say) -> Iterator[Block]:
    if a.halves is not None:
        planned, fact = (f"{x * 100:+.0f}" for x in a.halves)
        yield Lines((say.s("paper-halves", planned=planned, fact=fact),))


def _windows(a: Afterwards, say: Say) -> Iterator[Block]:
    names = {p.point: p.name for p in a.answer.points}
    rows = tuple(
        (
            names[s.point],
            *(say.when(t, day=True) for t in (s.window.early, s.window.likely, s.window.late, s.came)),
            say.s("paper-inside-yes" if s.inside else "paper-inside-no", off=_signed(s.off)),
        )
        for s in a.scored
    )
    yield Head(say.s("paper-head-windows"))
    if rows:
        inside = sum(s.inside for s in a.scored)
        off = _middle([abs(s.off) for s in a.scored]) or timedelta(0)
        yield Lines((say.s("paper-windows-score", inside=inside, count=len(rows), off=say.length(off)),))
    yield Grid(_heads(say, WINDOWS), rows, numbers=True)


def _said(a: Afterwards, say: Say, t: MessagesTold) -> tuple[str, ...]:
    soon, slow = ("" if x is None else say.length(x) for x in (t.median, t.slowest))
    return person_name(a.event, t.person), str(t.sent), str(t.asked), str(t.answered), soon, slow


def _word(a: Afterwards, say: Say, e: Entry) -> str:
    return say.s(
        "paper-word", when=say.when(e.seen_at, day=True), who=person_name(a.event, e.by), words=e.words
    )


def _logged(a: Afterwards, say: Say) -> Iterator[Block]:
    """What was logged at the stops, and what that makes an hour."""
    if not a.log:
        return
    names = {p.point: p.name for p in a.answer.points}
    yield Head(say.s("paper-head-log"))
    for key, figure in (("carbohydrate", a.held.carbohydrate), ("fluid", a.held.fluid)):
        if figure is not None:
            value, low, high = (f"{x:.0f}" for x in (figure.value, figure.low, figure.high))
            yield Lines((say.s(f"paper-intake-{key}", value=value, low=low, high=high),))
    rows = tuple(
        (
            say.when(e.seen_at, day=True),
            names.get(e.point or "", ""),
            log_line(say, e.logged),
            person_name(a.event, e.by),
        )
        for e in a.log
    )
    yield Grid(_heads(say, ("when", "point", "logged", "who")), rows)


def _next(a: Afterwards, say: Say) -> Iterator[Block]:
    """The line that lets the next plan rest on this race."""
    if a.race is not None:
        km, ascent, took = a.race
        name = json.dumps(a.event.name, ensure_ascii=False)
        figures = f'km = {km:.1f}, ascent_m = {ascent:.0f}, time = "{_hm(took)}"'
        line = f"past_race = {{ name = {name}, {figures} }}"
        yield Head(say.s("paper-head-next"))
        yield Lines((say.s("paper-next", line=line),))


def _questions(a: Afterwards, say: Say) -> Page:
    """Three questions to each who had a part in her race: what they answered, with room to write where they did not."""
    kinds = {PartKind.RUNNER, PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT}
    people = dict.fromkeys(
        p.person for p in a.event.parts if p.kind in kinds and p.runner in (None, a.runner)
    )
    people |= dict.fromkeys(e.by for e in a.looked_back)
    rows = tuple(
        (f"{person_name(a.event, p)}\n\n\n\n", *(_answered(a, p, q) for q in LOOKED_BACK)) for p in people
    )
    heads = (say.s("paper-who"), *(say.s(f"paper-ask-{q}") for q in LOOKED_BACK))
    return page(Head(say.s("paper-head-questions")), Grid(heads, rows, shares=(0.8, 2.0, 2.0, 2.0)))


def _answered(a: Afterwards, person: str, question: str) -> str:
    return "\n".join(e.words for e in a.looked_back if (e.by, e.about) == (person, question))


def to_csv(a: Afterwards) -> str:
    """A row a section or stop, in minutes."""
    out = io.StringIO()
    write = csv.writer(out)
    write.writerow(("from", "to", "planned_min", "took_min", "over_min"))
    for p in a.parts:
        minutes = (x / timedelta(minutes=1) for x in (p.planned, p.planned + p.over, p.over))
        write.writerow((p.start, p.end, *(f"{m:.1f}" for m in minutes)))
    return out.getvalue()


def _figure(f: Figure | None) -> dict[str, float] | None:
    return None if f is None else {"value": f.value, "low": f.low, "high": f.high, "count": f.count}


def to_json(a: Afterwards) -> str:
    """Everything, times in ISO form, lengths in seconds."""
    found = {
        "event": a.event.id,
        "name": a.event.name,
        "fade": _figure(a.held.fade),
        "intake": {"carbohydrate_g_per_h": _figure(a.held.carbohydrate), "fluid_ml_per_h": _figure(a.held.fluid)},
        "log": [{"at": e.seen_at.isoformat(), "point": e.point, "by": e.by,
                 "logged": [{"item": x.item.value, "amount": x.amount, "unit": UNIT.get(x.item),
                             "level": x.level.value if x.level else None, "words": x.words} for x in e.logged]}
                for e in a.log],
        "runner": a.runner,
        "sections": [
            {"from": p.start, "to": p.end, "planned_s": p.planned.total_seconds(), "over_s": p.over.total_seconds()}
            for p in a.parts
        ],
        "second_half_longer": None if a.halves is None else {"planned": a.halves[0], "fact": a.halves[1]},
        "windows": [
            {"point": s.point, "told_at": s.told_at.isoformat(), "early": s.window.early.isoformat(),
             "likely": s.window.likely.isoformat(), "late": s.window.late.isoformat(),
             "came": s.came.isoformat(), "inside": s.inside}
            for s in a.scored
        ],
        "messages": [
            {"person": t.person, "sent": t.sent, "asked": t.asked, "answered": t.answered,
             "median_s": None if t.median is None else t.median.total_seconds(),
             "slowest_s": None if t.slowest is None else t.slowest.total_seconds()}
            for t in a.told
        ],
        "looking_back": [{"by": e.by, "question": e.about, "words": e.words} for e in a.looked_back],
        "past_race": None
        if a.race is None
        else {"km": a.race[0], "ascent_m": a.race[1], "time_s": a.race[2].total_seconds()},
    }  # fmt: skip
    return json.dumps(found, indent=2, ensure_ascii=False)
