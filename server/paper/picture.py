"""The plan as a picture: height along the course above, time along the course below, with night and cut-offs."""

from __future__ import annotations

import io
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING, Final
from zoneinfo import ZoneInfo

import numpy as np

from server.conversation.telling.planned import say_sources
from server.conversation.telling.reader import Reader
from server.conversation.telling.times import clock
from server.course import Course
from server.event.model import Event, Goal
from server.plan.cutoffs import due_times
from server.plan.light import dark_kit, sky_over
from server.plan.timetable import Timetable
from server.sentences import sentence

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

INK: Final = "#1d2b2a"
PAPER: Final = "#fbfaf6"
GROUND: Final = "#b9b08f"
PLAN: Final = "#0b5d63"
BAND: Final = "#8fc1b5"
NIGHT: Final = "#d9dbe8"
DUE: Final = "#a8321f"
LABEL_GAP_KM: Final = 0.045
FAR_PAST: Final = 1.5
"""A cut-off later than this many times goal C is not drawn (own choice)."""


def plan_picture(
    event: Event, timetable: Timetable, course: Course, reader: Reader, *, dpi: int = 110
) -> bytes:
    """A PNG: height along the course above, time along the course below, with night and cut-offs.

    Takes about 0.2 s: call it off the event loop.
    """
    figure = plan_figure(event, timetable, course, reader, dpi=dpi)
    out = io.BytesIO()
    figure.savefig(out, format="png", facecolor=PAPER)
    return out.getvalue()


def plan_figure(
    event: Event, timetable: Timetable, course: Course, reader: Reader, *, dpi: int = 110
) -> Figure:
    """The same before it becomes a file: heights above, times in hours since her start below."""
    # Only here: every command would load it, and a server that starts after a crash. Figure, not pyplot: pyplot keeps
    # every figure in a global until it is closed.
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=(11.0, 7.5), dpi=dpi, facecolor=PAPER, layout="constrained")
    FigureCanvasAgg(figure)
    upper, lower = figure.subplots(2, 1, sharex=True, gridspec_kw={"height_ratios": [1.0, 2.0]})
    _heights(upper, timetable, course, reader)
    _times(lower, event, timetable, course, reader)
    _names(upper, event, timetable)
    figure.suptitle(
        f"{event.name}: {event.runner(timetable.runner).name}, {say_sources(reader, timetable.source)}",
        color=INK,
        fontsize=11,
    )
    return figure


def _heights(axes: Axes, timetable: Timetable, course: Course, reader: Reader) -> None:
    axes.set_facecolor(PAPER)
    if course.has_heights:
        floor = float(course.height_m.min()) - 30.0
        axes.fill_between(course.km, course.height_m, floor, color=GROUND, linewidth=0)
        axes.set_ylim(floor, float(course.height_m.max()) * 1.05 + 30.0)
        axes.set_ylabel(sentence(reader.language, "paper-height"), color=INK)
    else:
        none = sentence(reader.language, "paper-no-heights")
        axes.text(0.5, 0.5, none, transform=axes.transAxes, ha="center", color=DUE)
        axes.set_yticks([])
    for part in timetable.dark:
        axes.axvspan(part.from_km, part.to_km, color=NIGHT, alpha=0.6, linewidth=0, zorder=0)
    axes.set_xlim(0.0, timetable.rows[-1].km)


def _names(axes: Axes, event: Event, timetable: Timetable) -> None:
    """Names of the points above the picture, leaving out one that would lie on its neighbour."""
    definition = event.course_of(timetable.runner)
    gap, last = LABEL_GAP_KM * timetable.rows[-1].km / 2, -1e9
    for row in timetable.rows:
        axes.axvline(row.km, color=INK, linewidth=0.5, alpha=0.4)
        if row.km - last < gap and row is not timetable.rows[-1]:
            continue
        last = row.km
        axes.annotate(
            definition.point(row.point).name,
            (row.km, 1.0),
            xycoords=("data", "axes fraction"),
            xytext=(0, 4),
            textcoords="offset points",
            rotation=40,
            ha="left",
            va="bottom",
            fontsize=8,
            color=INK,
        )


def _times(axes: Axes, event: Event, timetable: Timetable, course: Course, reader: Reader) -> None:
    zone = ZoneInfo(event.time_zone)
    axes.set_facecolor(PAPER)
    lines = {g: _steps(timetable, g) for g in Goal}
    km = lines[Goal.B][0]
    axes.fill_between(
        km,
        lines[Goal.A][1],
        lines[Goal.C][1],
        color=BAND,
        alpha=0.6,
        linewidth=0,
        label=sentence(reader.language, "paper-goals-band"),
    )
    target = sentence(reader.language, "paper-goal-b")
    axes.plot(km, lines[Goal.B][1], color=PLAN, linewidth=2.0, label=target)
    labelled = False
    top = max(_h(timetable.rows[-1].arrive[Goal.C]), *lines[Goal.C][1])
    # Cut-offs past the last goal have their place in the picture; one far past it would leave no room for the race.
    dues = due_times(event, timetable.runner)
    drawn = [d for d in dues if _h(d.at - timetable.start) <= FAR_PAST * top]
    top = max(top, *(_h(d.at - timetable.start) for d in drawn), 0.0)
    night = sentence(reader.language, "paper-night")
    for begin, end in _nights(timetable, course, 1.03 * top):
        axes.axhspan(begin, end, color=NIGHT, alpha=0.6, linewidth=0, zorder=0, label=night)
        night = ""
    for due in drawn:
        at = due.at - timetable.start
        label = None if labelled else sentence(reader.language, "paper-cut-off")
        axes.plot(
            [timetable.row(due.point).km],
            [_h(at)],
            marker="v",
            clip_on=False,
            markersize=9,
            color=DUE,
            linestyle="none",
            label=label,
        )
        labelled = True
    ticks = _ticks(timetable.start.astimezone(zone), top, reader)
    axes.set_yticks([t for t, _ in ticks], [words for _, words in ticks])
    axes.set_ylim(0.0, top * 1.03)
    axes.set_xlabel("km", color=INK)
    axes.grid(axis="both", color=INK, alpha=0.12)
    for row in timetable.rows:
        axes.axvline(row.km, color=INK, linewidth=0.5, alpha=0.25)
    axes.legend(loc="upper left", frameon=False)


def _nights(timetable: Timetable, course: Course, top: float) -> list[tuple[float, float]]:
    """Every night on the axis, hours since her start: where goal B has her then, at the finish after that. The slower
    goal and the cut-offs are drawn against it too, and her sleep in a camp is as dark as the course."""
    km, at = _steps(timetable, Goal.B)
    end = max(top, at[-1])
    gone, where = np.array([*at, end]) * 3600.0, np.array([*km, km[-1]])
    sky = sky_over(course.km, course.lat_deg, course.lon_deg, timetable.start, float(gone[-1]))
    parts = (*timetable.dark, *dark_kit(sky, gone, where, np.zeros(len(where), dtype=np.bool_)))
    found: list[tuple[float, float]] = []
    for begin, stop in sorted((_h(p.from_elapsed), _h(p.to_elapsed)) for p in parts):
        if found and begin <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], stop))
        else:
            found.append((begin, stop))
    return found


def _steps(timetable: Timetable, goal: Goal) -> tuple[list[float], list[float]]:
    km = [row.km for row in timetable.rows for _ in (0, 1)]
    at = [_h(t) for row in timetable.rows for t in (row.arrive[goal], row.leave[goal])]
    return km, at


def _h(gone: timedelta) -> float:
    return gone.total_seconds() / 3600.0


def _ticks(start: datetime, hours_long: float, reader: Reader) -> list[tuple[float, str]]:
    """Clock times for the axis: full hours, few enough to read, midnight with its day."""
    every = next(e for e in (1, 2, 3, 6, 12, 24, 48, 10_000) if hours_long / e <= 14)
    first = start.replace(minute=0, second=0, microsecond=0)
    out: list[tuple[float, str]] = []
    for k in range(int(hours_long) + 2):
        # Counted in UTC and shown in the zone, so that the night the clocks change has its right length.
        at = (first.astimezone(UTC) + timedelta(hours=k)).astimezone(start.tzinfo)
        gone = (at.astimezone(UTC) - start.astimezone(UTC)).total_seconds() / 3600.0
        if at.hour % min(every, 24) == 0 and 0.0 <= gone <= hours_long:
            out.append((gone, clock(at, reader, at, day=at.hour == 0 or not out)))
    return out
