"""Her points and their windows as bars on one axis of time: what is a fact, what is expected, what is over by now."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from server.api.replies import RunnerBoard
from server.conversation.telling import times
from server.conversation.telling.answer import MeetingAnswer, PointAnswer
from server.pages.view import Pen, behind_her, gets_there

TICK_HOURS = (1, 2, 3, 6, 12, 24)
TICKS_MAX = 5
WIDTH_MIN = 1.0
"""Of a bar, percent of the axis: a fact has no width, and must be seen."""


@dataclass(frozen=True, slots=True)
class Bar:
    """One point: its times in words and its bar, in percent of the axis. `kind`: 'told' or 'expected'; `past`: nothing of it
    lies ahead; `own`: the times on the reader's own clock, where that is another. `mine_x` and `mine_width` are from when to
    when the reader is there ('' they are not)."""

    name: str
    km: str
    crew: bool
    time: str
    span: str
    more: str
    kind: str
    past: bool
    x: str
    width: str
    own: str = ""
    likely_x: str = ""
    mine_x: str = ""
    mine_width: str = ""


@dataclass(frozen=True, slots=True)
class Axis:
    """The bars of one runner, hours to write along them, and where now is."""

    bars: tuple[Bar, ...]
    ticks: tuple[tuple[str, str], ...]
    now_x: str


@dataclass(frozen=True, slots=True)
class _Scale:
    start: datetime
    end: datetime

    def at(self, moment: datetime) -> float:
        return 100.0 * ((moment - self.start) / (self.end - self.start))

    def bar(self, start: datetime, end: datetime) -> tuple[str, str]:
        left = min(max(self.at(start), 0.0), 100.0 - WIDTH_MIN)
        return _percent(left), _percent(max(min(self.at(end), 100.0) - left, WIDTH_MIN))


def _percent(share: float) -> str:
    return f"{share:.2f}%"


def axis(r: RunnerBoard, pen: Pen, *, her: bool = False) -> Axis | None:
    """The points from the one reported last on; None while there is nothing to draw. `her`: the reader is the runner."""
    if r.forecast is None:
        return None
    points = r.forecast.points
    reached = [p for p in points if p.arrived or p.left]
    shown = [*reached[-1:], *(p for p in points if p.window is not None)]
    if not any(p.window for p in shown):
        return None
    scale = _scale(shown, pen.now)
    behind = r.forecast.fresh.last.km if r.forecast.fresh.last is not None else None
    bars = tuple(
        _fact(p, scale, pen) if p.window is None else _estimate(p, r, scale, pen, behind, her=her)
        for p in shown
    )
    return Axis(bars, _ticks(scale, pen), _percent(min(max(scale.at(pen.now), 0.0), 100.0)))


def _scale(shown: list[PointAnswer], now: datetime) -> _Scale:
    moments = [now]
    for p in shown:
        moments += [t for t in (p.arrived, p.left) if t is not None]
        moments += [p.window.early, p.window.late] if p.window is not None else []
    start, end = min(moments), max(moments)
    room = max((end - start) * 0.02, timedelta(minutes=5))
    return _Scale(start - room, end + room)


def _fact(p: PointAnswer, scale: _Scale, pen: Pen) -> Bar:
    moments = [t for t in (p.arrived, p.left) if t is not None]
    x, width = scale.bar(moments[0], moments[-1])
    told = ", ".join(_told(p, lambda at: _clock(at, pen), pen))
    abroad = bool(times.own_clock(moments[0], pen.reader, pen.now))
    here = ", ".join(_told(p, lambda at: times.own_clock(at, pen.reader, pen.now), pen)) if abroad else ""
    own = pen.word("bar-own", times=here) if here else ""
    return Bar(p.name, pen.km(p.km), p.crew_access, told, "", "", "told", True, x, width, own=own)


def _told(p: PointAnswer, clock: Callable[[datetime], str], pen: Pen) -> Iterator[str]:
    for key, at in (("in-at", p.arrived), ("out-at", p.left)):
        if at is not None:
            yield pen.word(key, when=clock(at))


def _estimate(
    p: PointAnswer, r: RunnerBoard, scale: _Scale, pen: Pen, behind: float | None, *, her: bool
) -> Bar:
    assert p.window is not None
    _, likely, late = times.edges(p.window)
    middle, first, last = times.window_clocks(p.window, pen.reader, pen.now)
    past = late < pen.now or behind_her(p, behind)
    x, width = scale.bar(p.window.early, p.window.late)
    mine = next((m for m in r.meetings if m.mine and m.values.point == p.point and not m.values.lost), None)
    mine_x, mine_width = _mine(mine, scale) if mine is not None else ("", "")
    more = pen.word("bar-unheard") if past else gets_there(p, pen, her=her)
    here = times.window_own_clocks(p.window, pen.reader, pen.now)
    return Bar(
        name=p.name,
        km=pen.km(p.km),
        crew=p.crew_access,
        time=middle,
        span=f"{first} – {last}",
        more=more,
        kind="expected",
        past=past,
        x=x,
        width=width,
        own=pen.word("bar-own", times=f"{here[0]} ({here[1]} – {here[2]})") if here else "",
        likely_x=_percent(scale.at(likely)),
        mine_x=mine_x,
        mine_width=mine_width,
    )


def _mine(m: MeetingAnswer, scale: _Scale) -> tuple[str, str]:
    return scale.bar(m.values.be_there, max(m.values.wait_until, m.values.be_there))


def _clock(at: datetime, pen: Pen) -> str:
    return times.clock(at, pen.reader, pen.now)


def _ticks(scale: _Scale, pen: Pen) -> tuple[tuple[str, str], ...]:
    """Whole hours of the race's clock, so many that their names do not run into one another."""
    hours = (scale.end - scale.start) / timedelta(hours=1)
    step = next((h for h in TICK_HOURS if hours / h <= TICKS_MAX), TICK_HOURS[-1])
    zone = ZoneInfo(pen.reader.event_time_zone)
    at = scale.start.astimezone(zone).replace(minute=0, second=0, microsecond=0).astimezone(UTC)
    found = []
    while at <= scale.end:
        if at.astimezone(zone).hour % step == 0 and 4.0 <= scale.at(at) <= 96.0:
            text = times.clock(at, pen.reader, pen.now, day=at.astimezone(zone).hour == 0)
            found.append((_percent(scale.at(at)), text))
        at += timedelta(hours=1)
    return tuple(found)
