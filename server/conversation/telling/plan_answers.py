"""Answers about the plan in words: the plan itself, its light, the cut-offs and when each goal changes over."""

from __future__ import annotations

from datetime import timedelta

from server.conversation.telling.answer import CutOffAnswer, CutOffsAnswer, PlanAnswer, PlanRow, StageAnswer
from server.conversation.telling.answers import freshness
from server.conversation.telling.planned import say_planned, say_sources
from server.conversation.telling.say import Say, lines, slug
from server.conversation.telling.things import hours_words
from server.conversation.telling.times import edges, plan_short

LEAST_REST = timedelta(minutes=30)
"""Less than that is told as hardly any rest (own choice)."""
EARLIER_TOLD = 2
"""So many of the points to come are told of with their latest times out; the first are what can still be acted on."""


SURELY_GOES_ON = 0.98
"""With such odds that she goes on to a point nothing is said of it (own choice)."""


def say_cut_offs(say: Say, answer: CutOffsAnswer, point: str | None, place: str = "") -> str:
    """The cut-off asked about, or the next and those after it; of a point (`place` its name) when it closes to crew."""
    asked = [c for c in answer.cut_offs if point is None or c.point == point]
    name = answer.runner_name
    nights = tuple(say_stage(say, s) for s in answer.stages if point is None or s.point == point)
    if point is not None and not asked:
        return lines(
            *(nights or (say.s("cut-off-none-at", runner=name, place=place),)),
            _closing(say, answer, point, place) or say.s("cut-off-no-hours", place=place),
            *(_cut_off_line(say, c) for c in answer.cut_offs),
            freshness(say, answer.fresh, name),
        )
    if not asked:
        return lines(*(nights or (say.s("cut-offs-none", runner=name),)), freshness(say, answer.fresh, name))
    first, *rest = asked

    latest = ""
    if first.latest_out is not None and first.latest_out_name:
        key = "cut-off-latest" if first.latest_out > say.now else "cut-off-not-possible"
        more = {"when": say.when(first.latest_out)} if first.latest_out > say.now else {}
        latest = say.s(key, place=first.latest_out_name, **more)
    there = ""
    if first.window is not None:
        there = say.s("point-next", runner=name, place=first.name, window=say.window(first.window))
    return lines(
        say.s("cut-off-answer", runner=name, **_cut_off_values(say, first)),
        _split(say, first),
        _closing(say, answer, point, first.name) if point is not None else "",
        latest,
        _earlier(say, first),
        there,
        say.s("cut-off-more") if rest else "",
        *(_cut_off_line(say, c) for c in rest),
        *nights,
        freshness(say, answer.fresh, name),
    )


def say_stage(say: Say, s: StageAnswer) -> str:
    """The odds of being in before the next stage starts, with the rest that leaves; a warning where they are low."""
    _, likely, late = edges(s.window)
    least, cut = s.starts_at - late, s.by < s.starts_at
    odds = say.s(
        "stage-odds-by" if cut else "stage-odds",
        place=s.name,
        odds=say.odds(s.odds),
        when=say.when(s.starts_at, day=True),
        rest=say.length(max(s.starts_at - likely, timedelta(0))),
        least=say.length(least) if least >= LEAST_REST else "none",
        **({"by": say.when(s.by, day=True)} if cut else {}),
    )
    return lines(odds, say.s("stage-low") if s.low else "")


def _cut_off_values(say: Say, c: CutOffAnswer) -> dict[str, str]:
    edge = say.s(f"edge-{c.edge}")
    return {"place": c.name, "edge": edge, "when": say.when(c.at), "odds": say.odds(c.odds)}


def _split(say: Say, c: CutOffAnswer) -> str:
    """What low odds come of: the time, or that she may go no farther. '' where she surely goes on."""
    if c.going >= SURELY_GOES_ON:
        return ""
    in_time = min(1.0, c.odds / max(c.going, 1e-9))
    return say.s("cut-off-split", odds=say.odds(in_time), going=say.odds(c.going))


def _cut_off_line(say: Say, c: CutOffAnswer) -> str:
    return say.s("cut-off-line", **_cut_off_values(say, c))


def _closing(say: Say, answer: CutOffsAnswer, point: str, place: str) -> str:
    """Until when a point is open to crew."""
    door = next((d for d in answer.doors if d.point == point), None)
    if door is None:
        return ""
    hours = hours_words(say, door.opens, door.closes)
    return say.s("cut-off-access", place=place, hours=hours) if hours else ""


def _earlier(say: Say, cut_off: CutOffAnswer) -> str:
    """The latest times out of the points before the last one, for 9 in 10 if she goes on."""
    told = [
        say.s("plan-latest", place=e.name, when=say.when(e.at))
        for e in cut_off.earlier
        if e.at is not None and e.at > say.now and e.name != cut_off.latest_out_name
    ]
    return say.s("cut-off-earlier", points=say.all(told[:EARLIER_TOLD])) if told else ""


def _plan_row(say: Say, r: PlanRow) -> str:
    short = plan_short(r.a_in, r.b_in, r.c_in, say.reader, say.now)
    return say.s(
        "plan-row",
        place=r.name,
        km=say.km(r.km),
        times=short,
        was=say.maybe(r.arrived),
        stop=say.length(r.stop) if r.stop else "none",
    )


def say_plan(say: Say, answer: PlanAnswer) -> str:
    """The plan, a line a point, with what became of it; what it rests on; change-over, light and notes."""
    head = say.s("plan-head", runner=answer.runner_name)
    rests = say.s("plan-rests", source=say_sources(say.reader, answer.source)) if answer.source else ""
    changes = next((r for r in answer.rows if r.changes), None)
    return lines(
        head,
        *(_plan_row(say, r) for r in answer.rows),
        rests,
        _changes(say, changes) if changes is not None else "",
        *(say_stage(say, s) for s in answer.stages),
        say_light(say, answer),
        *(_whole(say_planned(say.reader, n)) for n in answer.notes),
    )


def _whole(text: str) -> str:
    """A remark that stands as a line of its own, as a sentence."""
    return text[:1].upper() + text[1:] + ("" if text.endswith((".", "!", "?")) else ".")


def _changes(say: Say, row: PlanRow) -> str:
    """Until when out of a point each goal still holds."""
    return say.s("plan-change-next", place=row.name, goals=goals_told(say, row))


def goals_told(say: Say, row: PlanRow, gone: frozenset[str] = frozenset()) -> str:
    """'A no longer, B until 14:20': times down to the minute as on paper, a goal whose time is over said to be gone,
    one that is `gone` already left out."""
    told = (
        say.s("plan-change-goal", goal=c.goal, when=say.when(c.at))
        if c.at > say.now
        else say.s("goals-gone", goal=c.goal)
        for c in row.changes
        if c.goal not in gone
    )
    return say.all(told)


def say_light(say: Say, answer: PlanAnswer) -> str:
    """Light still to come by the plan: sunrise, sunset, twilight where she is then; where she needs a torch."""
    moments = [
        say.s(f"plan-light-{slug(m.event)}", when=say.when(m.at), km=say.km(m.km))
        for m in answer.light
        if m.at > say.now
    ]
    torch = [
        say.s(
            "plan-torch",
            **{"from": say.km(t.from_km), "to": say.km(t.to_km)},
            from_when=say.when(t.from_at),
            to_when=say.when(t.to_at),
        )
        for t in answer.torch
        if t.to_at > say.now
    ]
    told = say.s("plan-light", light="; ".join(moments)) if moments else ""
    return lines(told, *torch)
