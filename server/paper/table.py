"""The plan for the terminal: the timetable as a rich table, and what goes below it line by line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import timedelta

from rich.console import Console
from rich.table import Table

from server.conversation.telling import measures
from server.conversation.telling.plan_answers import say_stage
from server.conversation.telling.planned import say_factor, say_planned, say_sources
from server.conversation.telling.say import Say, slug
from server.conversation.telling.times import planned, planned_length
from server.event.model import Event, Goal
from server.paper.before import BeforeStart
from server.plan.cutoffs import ChangeOver, DueTime, due_times, one_latest
from server.plan.fuel import fuel_of
from server.plan.light import DarkKit
from server.plan.packing import kit_wrong
from server.plan.targets import hours
from server.plan.timetable import Row, Timetable

MINUTES_WIDTH = 26
LEFT = frozenset({"paper-point", "paper-minutes-for", "paper-from", "paper-to", "paper-what"})


def plan_table(event: Event, timetable: Timetable, say: Say) -> Table:
    """A rich table, one row a point: km, leg, stop, clock times of the goals, cut-off, what costs minutes."""
    due = due_times(event, timetable.runner)
    table = Table(
        title=f"{event.name}: {event.runner(timetable.runner).name}",
        caption=say_sources(say.reader, timetable.source),
    )
    goals = [say.s("paper-in", goal=g.value) for g in Goal]
    unit = say.s("miles" if say.reader.miles else "km", number="").strip()
    for name in (
        say.s("paper-point"), unit, say.s("paper-leg"), say.s("paper-climb"), *goals,
        say.s("paper-stop"), say.s("paper-out", goal="B"), say.s("paper-cut-off"),
    ):  # fmt: skip
        table.add_column(name, justify="left" if name == say.s("paper-point") else "right", no_wrap=True)
    table.add_column(say.s("paper-minutes-for"), min_width=MINUTES_WIDTH)
    day = ""
    for row in timetable.rows:
        likely = say.spoken(planned(timetable.start + row.arrive[Goal.B], Goal.B)).split()[0]
        if likely != day:
            day = likely
            table.add_section()
        table.add_row(*_cells(event, timetable, row, due, say))
    return table


NARROW = 110
"""Under so many columns the table would lose cells; then each point is told in two short lines."""


def print_timetable(console: Console, event: Event, timetable: Timetable, say: Say) -> None:
    """The timetable as a table, or as a list where the console is too narrow for one."""
    if console.width >= NARROW:
        console.print(plan_table(event, timetable, say))
        return
    console.print(f"{event.name}: {event.runner(timetable.runner).name}", markup=False, style="bold")
    console.print(say_sources(say.reader, timetable.source), markup=False)
    due = due_times(event, timetable.runner)
    for row in timetable.rows:
        point, km, leg, climb, a, b, c, stop, out, rules, _ = _cells(event, timetable, row, due, say)
        unit = say.s("miles" if say.reader.miles else "km", number=km)
        went = f"  (+{leg}; {climb.replace(' ', '/')} m)" if leg else ""
        console.print(f"{point}, {unit}{went}", markup=False, style="bold" if rules else None)
        times = f"  A {a}  B {b}  C {c}" if leg else f"  {b}"
        held = f"  {say.s('paper-stop')} {stop}, {say.s('paper-out', goal='B')} {out}" if stop else ""
        console.print(f"{times}{held}", markup=False)
        for line in rules.splitlines():
            console.print(f"  {say.s('paper-cut-off')}: {line}", markup=False, style="bold")


def _km(say: Say, km: float) -> str:
    return f"{km / measures.KM_PER_MILE if say.reader.miles else km:.1f}"


def _cells(event: Event, table: Timetable, row: Row, due: tuple[DueTime, ...], say: Say) -> tuple[str, ...]:
    def clock(gone: timedelta, goal: Goal) -> str:
        return say.when(planned(table.start + gone, goal), day=True)

    first = row is table.rows[0]
    rules = [
        say.s("paper-due", edge=say.s(f"edge-{d.edge.value}"), when=say.when(d.at, day=True))
        for d in due
        if d.point == row.point
    ]
    return (
        event.course_of(table.runner).point(row.point).name,
        _km(say, row.km),
        "" if first else _km(say, row.leg_km),
        "" if first else f"+{row.leg_ascent_m:.0f} -{row.leg_descent_m:.0f}",
        clock(row.arrive[Goal.A], Goal.A),
        clock(row.arrive[Goal.B], Goal.B),
        clock(row.arrive[Goal.C], Goal.C),
        to_minute(row.stop) if row.stop else "",
        clock(row.leave[Goal.B], Goal.B) if row.stop else "",
        "\n".join(rules),
        costs(say, row),
    )


def costs(say: Say, row: Row) -> str:
    """What adds or saves a minute or more on the leg to a point: 'hills +21, night +4'."""
    minute = timedelta(minutes=1)
    told = [(n, t) for n, t in row.factors if n != "level ground" and abs(t) >= minute]
    return ", ".join(f"{say_factor(say.reader, name)} {round(gone / minute):+d}" for name, gone in told)


def goals_line(say: Say, event: Event, timetable: Timetable) -> str:
    """The three whole times, and what of them are odds: A and C are the 10% and 90% sides but where something holds them."""
    nights = tuple(p.id for p in event.course_of(timetable.runner).points if p.next_stage is not None)
    a, b, c = (to_minute(planned_length(whole_time(timetable, g, nights), g)) for g in Goal)
    held = {n.kind for n in timetable.notes}
    free = [g.value for g, k in ((Goal.A, _A_HELD), (Goal.C, _C_HELD)) if not held & k]
    sides = "both" if len(free) == 2 else (free or ["none"])[0]
    limited = "yes" if _limited(event, timetable.runner) else "no"
    odds = say.s("plan-goals-odds", sides=sides, limited=limited)
    return f"{say.s('plan-goals', a=a, b=b, c=c, stages='yes' if nights else 'no')} {odds}"


def whole_time(timetable: Timetable, goal: Goal, nights: Sequence[str]) -> timedelta:
    """Her time to the finish, without what she rests at those points, where the clock of the race stands."""
    rests = (timetable.row(p).leave[goal] - timetable.row(p).arrive[goal] for p in nights)
    return timetable.rows[-1].arrive[goal] - sum(rests, timedelta(0))


def _limited(event: Event, runner: str) -> bool:
    """Whether windows count only who is in by a time: the race's limit, or the start of a next stage."""
    points = event.course_of(runner).points
    return event.limit is not None or bool(points[-1].cut_offs) or any(p.next_stage for p in points)


_A_HELD, _C_HELD = {"goal-a-target", "goal-a-limit"}, {"goal-c"}
"""Kinds of notes that say a goal is no side of hers: her limits, a cut-off."""


def to_minute(gone: timedelta) -> str:
    """A length as h:mm, to the nearest minute."""
    return hours(timedelta(minutes=round(gone / timedelta(minutes=1))))


def light_lines(say: Say, before: BeforeStart, runner: str) -> tuple[str, ...]:
    """Dawn, sunrise, sunset and dusk where she is then, and the parts for which she needs a torch: in goal B, and in the
    others and just in by the limit. That none is needed is said only where that holds for all of them."""
    timetable = before.timetable(runner)
    moments = [
        say.s(f"plan-light-{slug(m.event.value)}", when=say.when(m.at, day=True), km=say.km(m.km))
        for m in timetable.light
    ]
    torch = [
        say.s(
            "plan-torch",
            **{"from": say.km(d.from_km), "to": say.km(d.to_km)},
            from_when=say.when(d.from_at, day=True),
            to_when=say.when(d.to_at, day=True),
        )
        for d in timetable.dark
    ]
    others = [(name, d) for name, parts in before.dark(runner) if name != Goal.B.value for d in parts]
    if not torch:
        torch = [say.s("plan-no-torch-b" if others else "plan-no-torch")]
    if others:
        torch.append(say.s("plan-torch-others", about="; ".join(_other(say, n, d) for n, d in others)))
    return (*moments, *torch)


def _other(say: Say, goal: str, d: DarkKit) -> str:
    return say.s(
        "plan-torch-other",
        goal=goal,
        **{"from": say.km(d.from_km), "to": say.km(d.to_km)},
        from_when=say.when(d.from_at, day=True),
        to_when=say.when(d.to_at, day=True),
    )


def kit_lines(say: Say, before: BeforeStart, runner: str) -> tuple[str, ...]:
    """What of her kit does not reach her in time, or does not last, and what to do about it."""
    told = kit_wrong(before.event, before.timetable(runner), before.course(runner))
    # Who reads paper has no file before them: the remedy in their words.
    said = ((t.what, replace(t.remedy, kind=f"{t.remedy.kind}-paper")) for t in told)
    return tuple(f"{say_planned(say.reader, what)}. {say_planned(say.reader, do)}." for what, do in said)


def note_lines(say: Say, timetable: Timetable) -> tuple[str, ...]:
    """The planner's notes."""
    return tuple(say_planned(say.reader, n) for n in timetable.notes)


def cut_off_lines(say: Say, before: BeforeStart, runner: str, *, crew_points: bool = False) -> Iterator[str]:
    """Each cut-off with its odds, stopping included, and the latest time out of each point before it for 9 in 10
    (of those where crew may be, with `crew_points`)."""
    course = before.event.course_of(runner)
    for c in one_latest(before.cut_offs(runner)):
        place, edge = course.point(c.due.point).name, say.s(f"edge-{c.due.edge.value}")
        when = say.when(c.due.at, day=True)
        odds = {"odds": say.odds(c.if_going), "going": say.odds(c.going)}
        yield say.s("plan-odds", edge=edge, place=place, when=when, **odds)
        told = []
        shown = [o for o in c.latest_out if not crew_points or course.point(o.point).crew_access]
        for out in shown:
            key = "plan-latest" if out.at else "plan-latest-none"
            known = {"when": say.when(out.at, day=True)} if out.at else {}
            told.append(say.s(key, place=course.point(out.point).name, **known))
        if told:
            yield "  " + say.s("cut-off-earlier", points=say.all(told))


def stage_lines(say: Say, before: BeforeStart, runner: str) -> tuple[str, ...]:
    """Each end of a stage: the odds of being in before the next one starts, with how much rest; a warning if low."""
    return tuple(line for s in before.stages(runner) for line in say_stage(say, s).splitlines())


def change_lines(say: Say, before: BeforeStart, runner: str) -> tuple[str, ...]:
    """Until when out of each crew point goals A, B, C hold."""
    course, changes = before.event.course_of(runner), before.changes(runner)
    shown = [p for p in course.points if p.crew_access or p.cut_offs]
    rows = [change_row(say, p.name, [c for c in changes if c.point == p.id]) for p in shown]
    found = tuple(r for r in rows if r)
    return (say.s("plan-changes"), *(f"  {r}" for r in found)) if found else ()


def change_row(say: Say, place: str, changes: Iterable[ChangeOver]) -> str:
    """One point: 'Mill: A until 11:20, B until 12:05 and C until 13:10'; '' for none."""
    told = [
        say.s("plan-change-goal", goal=c.goal.value, when=say.when(c.at, day=True))
        for c in changes
        if c.at is not None
    ]
    return say.s("plan-change", place=place, goals=say.all(told)) if told else ""


def print_plan(console: Console, before: BeforeStart, runner: str, say: Say) -> None:
    """Table, goals, light, cut-offs, change-over, notes onto a console."""
    timetable = before.timetable(runner)
    print_timetable(console, before.event, timetable, say)
    notes = note_lines(say, timetable)
    for line in (
        goals_line(say, before.event, timetable),
        *light_lines(say, before, runner),
        *cut_off_lines(say, before, runner),
        *stage_lines(say, before, runner),
        *change_lines(say, before, runner),
        *((say.s("plan-planned-notes"),) if notes else ()),
        *(f"- {n}" for n in notes),
    ):
        console.print(line, highlight=False, markup=False)


def print_fuel(console: Console, event: Event, timetable: Timetable, say: Say) -> None:
    """The same onto a console."""
    definition, runner = event.course_of(timetable.runner), event.runner(timetable.runner)
    found = fuel_of(runner, definition.points, timetable)
    table = Table(title=f"{event.name}: {say.s('paper-carries', runner=runner.name)}")
    for key in ("paper-from", "paper-to", "paper-takes", "paper-at-most", "paper-kcal", "paper-carbohydrate",
                "paper-sodium", "paper-bottles", "paper-what"):  # fmt: skip
        table.add_column(say.s(key), justify="left" if key in LEFT else "right")
    for c in found.carry:
        names = (definition.point(c.from_point).name, definition.point(c.to_point).name)
        spans = [to_minute(t) for t in (c.takes, c.takes_at_most)]
        amounts = ["" if v is None else str(v) for v in (c.kcal, c.carbohydrate_g, c.sodium_mg, c.bottles)]
        table.add_row(*names, *spans, *amounts, c.words)
    console.print(table)
    for line in (*bag_lines(say, event, timetable), *fuel_notes(say, event, timetable)):
        console.print(line, highlight=False, markup=False)


def bag_lines(say: Say, event: Event, timetable: Timetable) -> Iterator[str]:
    """What must be to hand at each point where bags or crew are."""
    definition = event.course_of(timetable.runner)
    for bag in fuel_of(event.runner(timetable.runner), definition.points, timetable).bags:
        held = [
            say.s(key, amount=str(v))
            for v, key in (
                (bag.kcal, "paper-bag-kcal"),
                (bag.carbohydrate_g, "paper-bag-carbohydrate"),
                (bag.sodium_mg, "paper-bag-sodium"),
            )
            if v is not None
        ]
        held += [f"{count} {name}" for name, count in bag.things]
        if held:
            yield say.s(
                "paper-bag", place=definition.point(bag.point).name, things=say.all(held), runner="none"
            )


def fuel_notes(say: Say, event: Event, timetable: Timetable) -> tuple[str, ...]:
    """Warnings about figures outside the published ranges, and the cautions."""
    points = event.course_of(timetable.runner).points
    found = fuel_of(event.runner(timetable.runner), points, timetable)
    return tuple(f"- {say_planned(say.reader, n)}" for n in (*found.warnings, *found.cautions))
