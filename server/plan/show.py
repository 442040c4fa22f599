"""The plan for the eye: tables for the terminal and a picture of height and time. No file is written here."""

from __future__ import annotations

import io
from datetime import UTC, datetime, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from rich.console import Console
from rich.table import Table

from server.course import Course
from server.event.model import CourseDef, Event, Goal
from server.plan.cutoffs import DueTime, due_times
from server.plan.fuel import fuel_table
from server.plan.targets import hours
from server.plan.timetable import Row, Timetable

INK: Final = "#1d2b2a"
PAPER: Final = "#fbfaf6"
GROUND: Final = "#b9b08f"
PLAN: Final = "#0b5d63"
BAND: Final = "#8fc1b5"
NIGHT: Final = "#d9dbe8"
DUE: Final = "#a8321f"
LABEL_GAP_KM: Final = 0.045


def plan_table(event: Event, timetable: Timetable) -> Table:
    """A rich table, one row a point: km, leg, stop, clock times of the goals, cut-off, what costs minutes."""
    zone = ZoneInfo(event.time_zone)
    definition = event.course_of(timetable.runner)
    due = due_times(event, timetable.runner)
    table = Table(title=f"{event.name}: {event.runner(timetable.runner).name}", caption=timetable.source)
    for name, side in (
        ("point", "left"), ("km", "right"), ("leg", "right"), ("up", "right"), ("down", "right"),
        ("A in", "right"), ("B in", "right"), ("C in", "right"), ("stop", "right"), ("B out", "right"),
        ("cut-off", "right"), ("minutes for", "left"),
    ):  # fmt: skip
        table.add_column(name, justify="left" if side == "left" else "right", no_wrap=name != "minutes for")
    day = ""
    for row in timetable.rows:
        likely = (timetable.start + row.arrive[Goal.B]).astimezone(zone)
        if f"{likely:%a}" != day:
            day = f"{likely:%a}"
            table.add_section()
        table.add_row(*_cells(timetable, row, definition, due, zone))
    return table


def _cells(
    table: Timetable, row: Row, definition: CourseDef, due: tuple[DueTime, ...], zone: ZoneInfo
) -> tuple[str, ...]:
    def clock(gone: timedelta) -> str:
        return f"{(table.start + gone).astimezone(zone):%a %H:%M}"

    first = row is table.rows[0]
    rules = [f"{d.edge.value} {d.at.astimezone(zone):%a %H:%M}" for d in due if d.point == row.point]
    costs = [
        (name, gone)
        for name, gone in row.factors
        if name != "level ground" and abs(gone) >= timedelta(minutes=1)
    ]
    return (
        definition.point(row.point).name,
        f"{row.km:.1f}",
        "" if first else f"{row.leg_km:.1f}",
        "" if first else f"{row.leg_ascent_m:.0f}",
        "" if first else f"{row.leg_descent_m:.0f}",
        clock(row.arrive[Goal.A]),
        clock(row.arrive[Goal.B]),
        clock(row.arrive[Goal.C]),
        hours(row.stop) if row.stop else "",
        clock(row.leave[Goal.B]) if row.stop else "",
        "\n".join(rules),
        ", ".join(f"{name} {round(gone / timedelta(minutes=1)):+d}" for name, gone in costs),
    )


def plan_text(event: Event, timetable: Timetable, width: int = 150) -> str:
    """The same as plain text, with the notes and the light below it."""
    zone = ZoneInfo(event.time_zone)
    out = io.StringIO()
    console = Console(file=out, width=width, color_system=None, legacy_windows=False)
    console.print(plan_table(event, timetable))
    for g in Goal:
        console.print(f"goal {g.value}: {hours(timetable.rows[-1].arrive[g])}", highlight=False)
    for m in timetable.light:
        console.print(f"{m.event.value} {m.at.astimezone(zone):%a %H:%M} at km {m.km:.1f}", highlight=False)
    for d in timetable.dark:
        times = f"{d.from_at.astimezone(zone):%a %H:%M} to {d.to_at.astimezone(zone):%a %H:%M}"
        console.print(f"torch from km {d.from_km:.1f} to {d.to_km:.1f}, {times}", highlight=False)
    for note in timetable.notes:
        console.print(f"- {note}", highlight=False, markup=False)
    return out.getvalue()


def fuel_text(event: Event, timetable: Timetable, width: int = 150) -> str:
    """What to carry from refill to refill and what each bag holds, with warnings and cautions, as plain text."""
    definition = event.course_of(timetable.runner)
    found = fuel_table(event.runner(timetable.runner).fuel, definition.points, timetable)
    table = Table(title=f"{event.name}: what {event.runner(timetable.runner).name} carries")
    for name in ("from", "to", "takes", "at most", "kcal", "carbohydrate g", "sodium mg", "bottles", "what"):
        table.add_column(name, justify="left" if name in {"from", "to", "what"} else "right")
    for c in found.carry:
        names = (definition.point(c.from_point).name, definition.point(c.to_point).name)
        spans = [
            hours(timedelta(minutes=round(t / timedelta(minutes=1)))) for t in (c.takes, c.takes_at_most)
        ]
        amounts = ["" if v is None else str(v) for v in (c.kcal, c.carbohydrate_g, c.sodium_mg, c.bottles)]
        table.add_row(*names, *spans, *amounts, c.words)
    out = io.StringIO()
    console = Console(file=out, width=width, color_system=None, legacy_windows=False)
    console.print(table)
    for bag in found.bags:
        held = [
            f"{v} {unit}"
            for v, unit in (
                (bag.kcal, "kcal"),
                (bag.carbohydrate_g, "g carbohydrate"),
                (bag.sodium_mg, "mg sodium"),
            )
            if v is not None
        ]
        if held:
            name = definition.point(bag.point).name
            console.print(f"to be had at {name}: {', '.join(held)}", highlight=False, markup=False)
    for line in (*found.warnings, *found.cautions):
        console.print(f"- {line}", highlight=False, markup=False)
    return out.getvalue()


def plan_picture(event: Event, timetable: Timetable, course: Course, *, dpi: int = 110) -> bytes:
    """A PNG: height along the course above, time along the course below, with night and cut-offs.

    Takes about 0.2 s: call it off the event loop.
    """
    # Figure, not pyplot: pyplot keeps every figure in a global until it is closed.
    figure = Figure(figsize=(11.0, 7.5), dpi=dpi, facecolor=PAPER, layout="constrained")
    FigureCanvasAgg(figure)
    upper, lower = figure.subplots(2, 1, sharex=True, gridspec_kw={"height_ratios": [1.0, 2.0]})
    _heights(upper, timetable, course)
    _times(lower, event, timetable)
    _names(upper, event, timetable)
    figure.suptitle(
        f"{event.name}: {event.runner(timetable.runner).name}, {timetable.source}", color=INK, fontsize=11
    )
    out = io.BytesIO()
    figure.savefig(out, format="png", facecolor=PAPER)
    return out.getvalue()


def _heights(axes: Axes, timetable: Timetable, course: Course) -> None:
    axes.set_facecolor(PAPER)
    if course.has_heights:
        floor = float(course.height_m.min()) - 30.0
        axes.fill_between(course.km, course.height_m, floor, color=GROUND, linewidth=0)
        axes.set_ylim(floor, float(course.height_m.max()) * 1.05 + 30.0)
        axes.set_ylabel("height, m", color=INK)
    else:
        axes.text(0.5, 0.5, "the route has no heights", transform=axes.transAxes, ha="center", color=DUE)
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


def _times(axes: Axes, event: Event, timetable: Timetable) -> None:
    zone = ZoneInfo(event.time_zone)
    axes.set_facecolor(PAPER)
    lines = {g: _steps(timetable, g) for g in Goal}
    km = lines[Goal.B][0]
    axes.fill_between(
        km, lines[Goal.A][1], lines[Goal.C][1], color=BAND, alpha=0.6, linewidth=0, label="goals A to C"
    )
    axes.plot(km, lines[Goal.B][1], color=PLAN, linewidth=2.0, label="goal B, the target")
    for part in timetable.dark:
        axes.axhspan(
            _h(part.from_elapsed), _h(part.to_elapsed), color=NIGHT, alpha=0.6, linewidth=0, zorder=0
        )
    labelled = False
    for due in due_times(event, timetable.runner):
        at = due.at - timetable.start
        label = None if labelled else "cut-off"
        axes.plot(
            [timetable.row(due.point).km],
            [_h(at)],
            marker="v",
            markersize=9,
            color=DUE,
            linestyle="none",
            label=label,
        )
        labelled = True
    top = max(_h(timetable.rows[-1].arrive[Goal.C]), *lines[Goal.C][1])
    ticks = _ticks(timetable.start.astimezone(zone), top)
    axes.set_yticks([t for t, _ in ticks], [words for _, words in ticks])
    axes.set_ylim(0.0, top * 1.03)
    axes.set_xlabel("km", color=INK)
    axes.grid(axis="both", color=INK, alpha=0.12)
    for row in timetable.rows:
        axes.axvline(row.km, color=INK, linewidth=0.5, alpha=0.25)
    axes.legend(loc="upper left", frameon=False)


def _steps(timetable: Timetable, goal: Goal) -> tuple[list[float], list[float]]:
    km = [row.km for row in timetable.rows for _ in (0, 1)]
    at = [_h(t) for row in timetable.rows for t in (row.arrive[goal], row.leave[goal])]
    return km, at


def _h(gone: timedelta) -> float:
    return gone.total_seconds() / 3600.0


def _ticks(start: datetime, hours_long: float) -> list[tuple[float, str]]:
    """Clock times for the axis: full hours, few enough to read, midnight with its day."""
    every = next(e for e in (1, 2, 3, 6, 12, 24, 48, 10_000) if hours_long / e <= 14)
    first = start.replace(minute=0, second=0, microsecond=0)
    out: list[tuple[float, str]] = []
    for k in range(int(hours_long) + 2):
        # Counted in UTC and shown in the zone, so that the night the clocks change has its right length.
        at = (first.astimezone(UTC) + timedelta(hours=k)).astimezone(start.tzinfo)
        gone = (at.astimezone(UTC) - start.astimezone(UTC)).total_seconds() / 3600.0
        if at.hour % min(every, 24) == 0 and 0.0 <= gone <= hours_long:
            out.append((gone, f"{at:%a %H:%M}" if at.hour == 0 or not out else f"{at:%H:%M}"))
    return out
