"""Answers about how things stand: who knows of an alarm, going towards her, how the runner herself is doing, and
until when each goal holds. The answer is in the first line; nothing here is an order."""

from __future__ import annotations

from server.conversation.telling import measures
from server.conversation.telling.answer import (
    AlarmHere,
    AskedHere,
    CutOffsAnswer,
    FactsAnswer,
    ForecastAnswer,
    MissedAnswer,
    NextAnswer,
    PersonThere,
    PlanAnswer,
)
from server.conversation.telling.answers import (
    ON_PLAN,
    freshness,
    going_words,
    next_point,
    point_in,
    rounded,
    say_point,
)
from server.conversation.telling.notices import label_key
from server.conversation.telling.plan_answers import goals_told, say_stage
from server.conversation.telling.say import Say, lines, slug
from server.conversation.telling.things import part_word
from server.conversation.telling.times import ceil_to, floor_to
from server.event.model import Contact
from server.facts.state import Going
from server.sentences import has

GOALS_TOLD = 6
"""So many points are told of when goals change over; the plan has the rest."""


def say_told(say: Say, a: FactsAnswer, control: Contact, emergency: str = "") -> str:
    """Who knows of what is open about her: who has it, its words, whom it went to, what they said; whether race
    control knows, and whom to call."""
    if not a.alarms:
        return lines(
            say.s("told-none", runner=a.runner_name),
            freshness(say, a.fresh, a.runner_name, sharper=False),
        )
    told = (line for alarm in a.alarms for line in (_held(say, a.runner_name, alarm), *_asked(say, alarm)))
    danger = say.s("told-danger", emergency=emergency) if emergency else ""
    return lines(*told, _race_control(say, a, control), danger)


def _held(say: Say, runner: str, alarm: AlarmHere) -> str:
    key = f"alarm-kind-{slug(alarm.kind)}"
    kind = say.s(key if has(key) else "alarm-kind-other")
    values = {"runner": runner, "kind": kind, "since": say.when(alarm.raised_at)}
    words = say.s("told-words", words=alarm.words) if alarm.words else ""
    if alarm.holder:
        held = say.s("told-held", holder=alarm.holder, again=say.maybe(alarm.look_again), **values)
        return lines(held, words)
    return lines(say.s("told-not-held", **values), words)


def say_taken(say: Say, runner: str, alarm: AlarmHere) -> str:
    """Which alarm somebody has just taken: whose, of what kind, since when, its words."""
    key = f"alarm-kind-{slug(alarm.kind)}"
    kind = say.s(key if has(key) else "alarm-kind-other")
    first = say.s("taken-alarm", runner=runner, kind=kind, since=say.when(alarm.raised_at))
    return lines(first, say.s("told-words", words=alarm.words) if alarm.words else "")


def _asked(say: Say, alarm: AlarmHere) -> tuple[str, ...]:
    return tuple(_person(say, p) for p in alarm.people)


def _person(say: Say, p: AskedHere) -> str:
    values = {"name": p.name, "when": say.when(p.at)}
    if p.answered_at is not None:
        label = label_key(slug(p.answer))
        answer = p.answer if label == "button-other" else say.s(label)
        return say.s("told-answered", answer=answer, at=say.when(p.answered_at), **values)
    if p.failed:
        return say.s("told-failed", **values)
    return say.s("told-asked" if p.asked else "told-only", **values)


def _race_control(say: Say, a: FactsAnswer, control: Contact) -> str:
    if a.race_control_knows is not None:
        known = say.s("told-race-control", when=say.when(a.race_control_knows))
        return lines(known, say.s("told-race-control-phone", name=control.name, phone=control.phone))
    return say.s("told-race-control-not", name=control.name, phone=control.phone)


def say_towards(say: Say, a: MissedAnswer, coming: NextAnswer, control: Contact) -> str:
    """Whether to walk towards her: what is known, what the rules say, where to be instead; no order either way."""
    meeting = coming.meetings[0] if coming.meetings else None
    window = ""
    if a.window is not None and a.seen_in is None and a.seen_out is None:
        window = say.s("wait-expected", runner=a.runner_name, place=a.name, window=say.window(a.window))
    instead = ""
    if meeting is not None:
        until = None if meeting.values.stay else ceil_to(meeting.values.wait_until)
        be_there = say.when(floor_to(meeting.values.be_there))
        instead = say.s("towards-instead", place=meeting.name, be_there=be_there, until=say.maybe(until))
    alarm = ""
    if a.alarm_holder is not None:
        alarm = (
            say.s("towards-alarm-held", holder=a.alarm_holder) if a.alarm_holder else say.s("towards-alarm")
        )
    return lines(
        say.s("towards", name=control.name, phone=control.phone),
        alarm,
        say.s("towards-rule" if a.help_only_at_points else "towards-rule-anywhere", runner=a.runner_name),
        say.s("towards-note", note=a.rules_note) if a.rules_note else "",
        freshness(say, a.fresh, a.runner_name, sharper=False),
        window,
        instead,
        say.s("towards-if", place=meeting.name if meeting else a.name),
        say.s("meeting-no-signal", place=a.name) if a.no_signal else "",
    )


def say_my_race(say: Say, a: ForecastAnswer, limits: CutOffsAnswer) -> str:
    """What the runner asks of herself: against the plan, the next point, the next cut-off."""
    if Going(a.fresh.going).race_over:
        return say.s("my-race-ended", going=going_words(say, a.fresh.going))
    p = next_point(a)
    if p is None or p.window is None:
        return freshness(say, a.fresh, a.runner_name)
    first = say.s("my-race-next", place=p.name, window=say.window(p.window))
    last = a.fresh.last
    # She asks, so she is there: odds that come of silence would be about us, not about her.
    if last is not None and p.window.late < say.now:
        return lines(say.s("my-race-old", ago=say.ago(last.at)), freshness(say, a.fresh, a.runner_name))
    gap = ""
    if p.planned_in is not None:
        off = rounded(p.window.likely - p.planned_in)
        key = "my-race-late" if off > ON_PLAN else "my-race-early" if off < -ON_PLAN else "my-race-on-plan"
        values = {} if key == "my-race-on-plan" else {"length": say.length(off)}
        gap = say.s(key, place=p.name, **values)
    cut = limits.cut_offs[0] if limits.cut_offs else None
    limit = "" if limits.stages else say.s("my-race-no-cut-off")
    latest = ""
    if cut is not None:
        edge = say.s(f"edge-{cut.edge}")
        limit = say.s(
            "my-race-cut-off", place=cut.name, edge=edge, when=say.when(cut.at), odds=say.odds(cut.odds)
        )
        if cut.latest_out is not None and cut.latest_out > say.now:
            latest = say.s("my-race-latest", place=cut.latest_out_name, when=say.when(cut.latest_out))
    night = next((say_stage(say, s) for s in limits.stages), "")
    return lines(gap, limit, latest, night, first, freshness(say, a.fresh, a.runner_name, sharper=False))


def say_goals(say: Say, a: PlanAnswer) -> str:
    """Until when out of each point to come each goal still holds; of the next point first."""
    rows = [r for r in a.rows if r.changes]
    if not rows:
        return say.s("goals-none", runner=a.runner_name)
    first, *rest = rows
    # What is gone at the next point is gone at those after it, whatever their own time says.
    gone = frozenset(c.goal for c in first.changes if c.at <= say.now)
    return lines(
        say.s("goals-next", runner=a.runner_name, place=first.name, goals=goals_told(say, first)),
        *(say.s("plan-change", place=r.name, goals=goals_told(say, r, gone)) for r in rest[:GOALS_TOLD]),
        say.s("goals-meaning"),
    )


def say_stand_in(say: Say, others: tuple[PersonThere, ...], control: Contact) -> str:
    """Who else of the crew has a number; where nobody has one, that; race control in any case."""
    rows = (
        say.s("stand-in-person", name=p.name, part=part_names(say, p.part), phone=p.phone) for p in others
    )
    first = say.s("stand-in-call") if others else say.s("stand-in-nobody")
    return lines(first, *rows, say.s("stand-in-control", name=control.name, phone=control.phone))


def part_names(say: Say, parts: str) -> str:
    """'crew, pacer' in the reader's language."""
    return ", ".join(part_word(say, p) for p in parts.split(", "))


def say_how_far(say: Say, a: ForecastAnswer, point: str | None) -> str:
    """From the runner herself: how far on foot to a point (None: the next one)."""
    p = point_in(a, point)
    if p is None or p.window is None or Going(a.fresh.going).race_over or p.arrived is not None:
        return say_point(say, a, point)
    if a.where is None or a.where.likely_km >= p.km:
        return lines(say.s("how-far-course", place=p.name, km=say.km(p.km)), say_point(say, a, p.point))
    left = measures.distance(p.km - a.where.likely_km, say.reader, decimals=0)
    return lines(say.s("how-far", place=p.name, distance=left, km=say.km(p.km)), say_point(say, a, p.point))
