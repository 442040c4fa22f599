"""What commands print as tables."""

from __future__ import annotations

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from rich.console import Console
from rich.table import Table

from server.api.building import Built
from server.event.model import Event, Goal
from server.plan.timetable import Row, Timetable
from server.wording.planned import say_sources
from server.wording.reader import Reader

PAPER_WIDTH = 140


def console() -> Console:
    """Where tables go; their width follows the terminal, and is enough for all columns where there is none."""
    found = Console(highlight=False)
    return found if found.is_terminal else Console(highlight=False, width=PAPER_WIDTH)


def timetable(built: Built, runner: str) -> Table:
    """The computed timetable of one runner: B in and out, A and C in, stops, climb."""
    event, plan = built.event, built.timetables[runner]
    course = event.course_of(runner)
    source = say_sources(Reader("en", event.time_zone, event.time_zone), plan.source)
    table = Table(title=f"{event.runner(runner).name}: {source}", title_justify="left")
    for heading, right in (
        ("point", False),
        ("km", True),
        ("leg", True),
        ("up m", True),
        ("A in", True),
        ("B in", True),
        ("C in", True),
        ("stop", True),
        ("B out", True),
        ("cut-off", False),
    ):
        table.add_column(
            heading,
            justify="right" if right else "left",
            no_wrap=True,
            min_width=14 if heading == "point" else None,
        )
    for row in plan.rows:
        point = course.point(row.point)
        cut = ", ".join(f"{c.edge.value} {clock(c.at(plan.start), event)}" for c in point.cut_offs)
        table.add_row(point.name, *_row(row, plan, event), cut)
    return table


def _row(row: Row, plan: Timetable, event: Event) -> tuple[str, ...]:
    return (
        f"{row.km:.1f}",
        f"{row.leg_km:.1f}",
        f"{row.leg_ascent_m:.0f}",
        *(clock(plan.start + row.arrive[g], event) for g in Goal),
        minutes(row.stop),
        clock(plan.start + row.leave[Goal.B], event),
    )


def clock(at: datetime, event: Event) -> str:
    """A time of day where the race is, with its weekday."""
    return f"{at.astimezone(ZoneInfo(event.time_zone)):%a %H:%M}"


def minutes(length: timedelta) -> str:
    """A stop in minutes; nothing for none."""
    return f"{round(length.total_seconds() / 60)} min" if length else ""
