"""From the board's values to what the page shows: words, times on both clocks, nothing to decide in a template."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from server.api.replies import BoardAnswer, Doubted, OpenAlarm, RaceNote, RunnerBoard
from server.conversation.telling import measures, times
from server.conversation.telling.answer import (
    CutOffAnswer,
    ForecastAnswer,
    MeetingAnswer,
    PeopleAnswer,
    PersonThere,
    PointAnswer,
)
from server.conversation.telling.answers import known_fact
from server.conversation.telling.news import doubt_words, lost_words
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.conversation.telling.things import other_cars
from server.pages.labels import label

ODDS_SAID, ODDS_SAID_FINISH = 0.8, 0.95
# A window holds given that she gets there; under these odds that must be said beside it.


@dataclass(frozen=True, slots=True)
class PointLine:
    """One point: to come (`likely`, `window`) or reached (`window` says in and out)."""

    name: str
    km: str
    likely: str
    window: str
    more: str = ""
    crew: bool = False


@dataclass(frozen=True, slots=True)
class LargeTime:
    """A time in large: on the race's clock, and under it on the reader's own where that differs."""

    there: str = ""
    here: str = ""


@dataclass(frozen=True, slots=True)
class MeetingCard:
    """One meeting as a card: the three times in large, the rest below."""

    name: str
    crew: str
    mine: bool
    leave_by: LargeTime
    be_there: LargeTime
    wait_until: LargeTime
    arrives: str
    kit: tuple[str, ...]
    food: str
    parking: str
    if_missed: str
    lost: str
    no_signal: bool
    others: tuple[str, ...] = ()
    there: bool = False
    id: str = ""
    point: str = ""


@dataclass(frozen=True, slots=True)
class AlarmLine:
    """One open alarm; `loud` when nobody has been reached, `held` once somebody has it."""

    text: str
    state: str
    loud: bool
    held: bool


@dataclass(frozen=True, slots=True)
class RunnerView:
    """One runner's part of the board. `unheard`: points where her window is over, or that lie behind
    her, and nothing was reported; `followed`: the reader's part may see how her race goes."""

    id: str
    name: str
    bib: str
    fact: str
    fact_at: LargeTime
    fact_by: str
    doubt_count: int
    held: str
    estimate: tuple[str, ...]
    alarms: tuple[AlarmLine, ...]
    ahead: tuple[PointLine, ...]
    unheard: tuple[PointLine, ...]
    reached: tuple[PointLine, ...]
    meetings: tuple[MeetingCard, ...]
    cut_offs: tuple[str, ...]
    doubted: tuple[str, ...]
    profile: str = ""
    followed: bool = True


@dataclass(frozen=True, slots=True)
class PersonLine:
    """One person and where they are; `phone` to tap."""

    name: str
    part: str
    phone: str
    where: str
    unreachable: bool


@dataclass(frozen=True, slots=True)
class BoardView:
    """The whole board for one reader; `at`: the server's own time, as a page's clock may differ, and `zone` the
    race's."""

    event: str
    name: str
    now: str
    runners: tuple[RunnerView, ...]
    race: tuple[str, ...]
    blind: str
    emergency_number: str
    exercise: bool
    race_control_name: str
    race_control_phone: str
    people: tuple[PersonLine, ...] = ()
    at: str = ""
    zone: str = ""


@dataclass(frozen=True, slots=True)
class Pen:
    """Who reads and when, with the short forms the page needs."""

    reader: Reader
    now: datetime

    def word(self, key: str, **values: str) -> str:
        """A word of the pages."""
        return label(self.reader.language, key, **values)

    def when(self, at: datetime) -> str:
        """A time, on both clocks where they differ."""
        return times.moment(at, self.reader, self.now)

    def clock(self, at: datetime | None) -> LargeTime:
        """A time to be shown in large."""
        if at is None:
            return LargeTime()
        own = times.own_clock(at, self.reader, self.now)
        here = self.word("own-clock", when=own) if own else ""
        return LargeTime(times.clock(at, self.reader, self.now), here)

    def maybe(self, at: datetime | None) -> str:
        """A time or nothing."""
        return self.when(at) if at else ""

    def km(self, km: float) -> str:
        """A distance in the reader's unit."""
        return measures.distance(km, self.reader)

    @property
    def say(self) -> Say:
        """The same reader for `conversation.telling`."""
        return Say(self.reader, self.now)


def board_view(board: BoardAnswer, people: PeopleAnswer | None, pen: Pen, me: str = "") -> BoardView:
    """The board in words; `me`: the reader where they are a runner, by the runner's id."""
    control = board.race_control
    return BoardView(
        event=board.event,
        name=board.name,
        now=pen.word("now", when=pen.when(pen.now)),
        runners=tuple(_runner(r, pen, her=r.id == me) for r in board.runners),
        race=tuple(_race(n, pen) for n in board.race_notes),
        blind=_blind(board, pen),
        emergency_number=board.emergency_number,
        exercise=board.exercise,
        race_control_name=control.name if control else "",
        race_control_phone=control.phone if control else "",
        people=tuple(_person(p, pen) for p in people.people) if people else (),
        at=pen.now.isoformat(),
        zone=board.time_zone,
    )


def _blind(board: BoardAnswer, pen: Pen) -> str:
    """Which of our channels is deaf, since when; '' while none is."""
    if board.blind_since is None:
        return ""
    what = pen.say.all(pen.say.ours(name) for name in board.blind)
    return _capital(pen.word("blind", when=pen.when(board.blind_since), what=what or "none"))


def _runner(r: RunnerBoard, pen: Pen, *, her: bool) -> RunnerView:
    forecast = r.forecast
    last = forecast.fresh.last if forecast else None
    by = (
        pen.word("told-by", who=last.by, ago=times.ago(last.at, pen.now, pen.reader.language)) if last else ""
    )
    points = forecast.points if forecast else ()
    km = last.km if last else None
    return RunnerView(
        id=r.id,
        name=r.name,
        bib=r.bib,
        fact=_capital(known_fact(pen.say, last)) if last else "",
        fact_at=pen.clock(last.at if last else None),
        fact_by=by,
        doubt_count=forecast.fresh.doubted if forecast else 0,
        held=_held(forecast, pen),
        estimate=tuple(_estimate(forecast, pen)) if forecast else (),
        alarms=tuple(_alarm(a, pen) for a in r.alarms),
        ahead=tuple(_ahead(p, pen) for p in points if p.window is not None and not _is_over(p, pen, km)),
        unheard=tuple(_ahead(p, pen) for p in points if p.window is not None and _is_over(p, pen, km)),
        reached=tuple(_reached(p, pen) for p in points if p.arrived or p.left or p.through),
        meetings=tuple(_meeting(m, pen) for m in _mine_first(r.meetings)),
        cut_offs=tuple(_cut_off(c, pen, her=her) for c in r.cut_offs),
        doubted=tuple(_doubted(d, pen) for d in r.doubted),
        followed=forecast is not None,
    )


def _mine_first(meetings: tuple[MeetingAnswer, ...]) -> tuple[MeetingAnswer, ...]:
    """The reader's own next meeting before all others, which stay in running order."""
    own = next((m for m in meetings if m.mine), None)
    return meetings if own is None else (own, *(m for m in meetings if m is not own))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _held(forecast: ForecastAnswer | None, pen: Pen) -> str:
    return pen.word("held") if forecast and forecast.fresh.held else ""


def _estimate(forecast: ForecastAnswer, pen: Pen) -> list[str]:
    where = forecast.where
    if where is None:
        return []
    low, likely, high = (pen.km(k) for k in (where.low_km, where.likely_km, where.high_km))
    near = pen.word("estimate-near", likely=likely)
    lines = [near if low == high else pen.word("estimate-between", low=low, high=high, likely=likely)]
    if forecast.where_between:
        start, end = forecast.where_between
        lines.append(pen.word("estimate-points", **{"from": start, "to": end}))
    return lines


def _alarm(a: OpenAlarm, pen: Pen) -> AlarmLine:
    kind = pen.word("kind-" + a.kind.replace(" ", "-"))
    words = a.words or "none"
    text = pen.word(
        "alarm-line", kind=kind, when=pen.when(a.raised_at), point=a.point_name or "none", words=words
    )
    told = ", ".join(a.told)
    if a.unreached:
        state = pen.word("alarm-unreached", told=told.upper()) if told else pen.word("alarm-nobody")
    elif a.holder:
        state = pen.word("alarm-held", who=a.holder, again=pen.maybe(a.look_again) or "none")
    else:
        state = pen.word("alarm-open", told=told)
    return AlarmLine(text, state, a.unreached, held=bool(a.holder))


def _is_over(p: PointAnswer, pen: Pen, last_km: float | None) -> bool:
    """Whether the whole window of a point has gone by, or she was seen beyond it: it does not lie ahead, nobody has
    reported her there."""
    return p.window is not None and (times.edges(p.window)[2] < pen.now or behind_her(p, last_km))


def behind_her(p: PointAnswer, last_km: float | None) -> bool:
    """Whether a point lies behind where she was last known: nobody reported her there, and she comes there no more."""
    return last_km is not None and p.km < last_km


def gets_there(p: PointAnswer, pen: Pen, *, her: bool = False) -> str:
    """The odds that she gets to a point at all, where they must be said; else ''. `her`: to herself."""
    odds = p.p_gets_there
    if odds is None or odds >= (ODDS_SAID if not p.finish else ODDS_SAID_FINISH):
        return ""
    return pen.word("gets-there-you" if her else "gets-there", odds=measures.odds(odds, pen.reader.language))


def _ahead(p: PointAnswer, pen: Pen) -> PointLine:
    assert p.window is not None
    likely, early, late = times.window_clocks(p.window, pen.reader, pen.now)
    return PointLine(p.name, pen.km(p.km), likely, f"{early} – {late}", gets_there(p, pen), p.crew_access)


def _reached(p: PointAnswer, pen: Pen) -> PointLine:
    if p.through and (p.arrived or p.left):
        moment = p.left or p.arrived
        return PointLine(
            p.name, pen.km(p.km), "", pen.word("through-at", when=pen.when(moment) if moment else "")
        )
    told = [pen.word("in-at", when=pen.when(p.arrived))] if p.arrived else []
    told += [pen.word("out-at", when=pen.when(p.left))] if p.left else []
    return PointLine(
        p.name, pen.km(p.km), "", ", ".join(told) or pen.word("reported-none"), "", p.crew_access
    )


def _meeting(m: MeetingAnswer, pen: Pen) -> MeetingCard:
    v = m.values
    return MeetingCard(
        name=m.name,
        crew=", ".join(m.crew),
        mine=m.mine,
        leave_by=pen.clock(v.leave_by and times.leave_said(v.leave_by, pen.now)),
        be_there=pen.clock(times.floor_to(v.be_there)),
        wait_until=LargeTime(pen.word("until-heard")) if v.stay else pen.clock(times.ceil_to(v.wait_until)),
        arrives=times.window(v.window, pen.reader, pen.now),
        kit=v.kit,
        food=v.food,
        parking=m.parking,
        if_missed=v.if_missed,
        lost=pen.word("lost", why=lost_words(pen.say, v)) if v.lost else "",
        no_signal=v.no_signal,
        others=_cars(m, pen),
        there=m.there,
        id=v.meeting,
        point=v.point,
    )


def _cars(m: MeetingAnswer, pen: Pen) -> tuple[str, ...]:
    """Where several cars come: of whom the times are and where they leave from; then the others, a line a car."""
    if not m.others:
        return ()
    origin = m.drive_from or "none"
    first = pen.say.s("leave-these", crew=pen.say.all(m.crew), **{"from": origin})
    return (*((first,) if m.values.leave_by is not None else ()), *other_cars(pen.say, m))


def _cut_off(c: CutOffAnswer, pen: Pen, *, her: bool) -> str:
    odds = measures.odds(c.odds, pen.reader.language)
    return pen.word(
        "cut-off-line-you" if her else "cut-off-line",
        name=c.name,
        edge=pen.word(f"edge-{c.edge}"),
        when=pen.when(c.at),
        odds=odds,
    )


def _doubted(d: Doubted, pen: Pen) -> str:
    what = pen.say.fact(d.kind, d.point_name) if d.point_name else d.kind
    return pen.word(
        "doubted-line", what=_capital(what), when=pen.when(d.at), who=d.by, why=doubt_words(pen.say, d.doubt)
    )


def _race(n: RaceNote, pen: Pen) -> str:
    return pen.word(
        "race-" + n.what.replace(" ", "-"),
        point=n.point_name,
        at=pen.maybe(n.at),
        until=pen.maybe(n.until) or "none",
        words=n.words or "none",
        by=n.by or "none",
    )


def _person(p: PersonThere, pen: Pen) -> PersonLine:
    parts = ", ".join(pen.word("part-" + part.replace(" ", "-")) for part in p.part.split(", ") if part)
    where = ""
    if p.at_name and p.since:
        where = pen.word("people-at", name=p.at_name, when=pen.when(p.since))
    elif p.bound_for and p.be_there:
        where = pen.word("people-bound", name=p.bound_for, when=pen.when(times.floor_to(p.be_there)))
    return PersonLine(p.name, parts, p.phone, where, not p.reachable)
