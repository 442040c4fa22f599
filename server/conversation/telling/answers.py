"""Answers about time and place, in words: the answer in the first line, then how fresh and what would
change it."""

from __future__ import annotations

from datetime import datetime, timedelta

from server.conversation.telling import measures, past_cut_off
from server.conversation.telling.answer import (
    FactsAnswer,
    ForecastAnswer,
    Freshness,
    LastFact,
    MissedAnswer,
    PointAnswer,
    StopFact,
)
from server.conversation.telling.say import Say, lines, slug
from server.conversation.telling.times import ceil_to, floor_to, window_short
from server.conversation.telling.trackers import tracker_word
from server.facts.state import Going
from server.sentences import has

# Under these odds of getting there at all, the window alone ('given that she gets there') would mislead.
ODDS_WORTH_SAYING = 0.9
ODDS_FIRST = 0.5
ON_PLAN = timedelta(minutes=2, seconds=30)
MISSED_HIGH, MISSED_LOW = 0.8, 0.35
LIKELY_GONE_ON = 0.5
"""Seen in and not seen out: from these odds on that she has gone on, nobody is told that she is there."""


def known_fact(say: Say, last: LastFact) -> str:
    """The last known point as a fact: 'out of Mill'."""
    return say.fact(last.kind, say.place_of(last.name, last.km))


def _known_values(say: Say, last: LastFact) -> dict[str, str]:
    return {
        "fact": known_fact(say, last),
        "when": say.when(last.at),
        "who": last.by,
        "ago": say.ago(last.at),
    }


def freshness(say: Say, fresh: Freshness, name: str, *, sharper: bool = True, ruled: bool = True) -> str:
    """How good the ground is: last known, a cut-off missed, doubted reports, holds, our own outages, what would sharpen
    it. `ruled` False: the answer has said first that a cut-off is missed."""
    if fresh.last is not None:
        first = say.s("fresh", **_known_values(say, fresh.last))
    elif fresh.going == "before the start":
        first = say.s("fresh-before", name=name)
    else:
        first = say.s("fresh-nothing", name=name)
    held = ""
    if fresh.held_until is not None:
        held = say.s("fresh-held-until", until=say.when(fresh.held_until))
    elif fresh.held:
        held = say.s("fresh-held")
    going = not Going(fresh.going).race_over
    return lines(
        first,
        tracker_word(say, fresh.tracker),
        past_cut_off.standing(say, fresh, name) if ruled else "",
        _said_over(say, fresh),
        race_ended(say, fresh),
        held,
        _blind(say, fresh),
        say.s("fresh-doubted", count=fresh.doubted) if fresh.doubted else "",
        say.s("fresh-sharper", name=fresh.sharpened_by) if sharper and fresh.sharpened_by and going else "",
    )


def _said_over(say: Say, fresh: Freshness) -> str:
    """That her race is said to be over: not confirmed, and whose word it is."""
    over = fresh.said_over
    if over is None:
        return ""
    return say.s(
        "fresh-said-over",
        place=over.name or "none",
        when=say.when(over.at),
        who=over.by,
        hearsay="yes" if over.hearsay else "no",
        words=over.words or "none",
    )


def _blind(say: Say, fresh: Freshness) -> str:
    if fresh.blind_since is None:
        return ""
    what = say.all(say.ours(name) for name in fresh.blind) if fresh.blind else "none"
    return say.s("fresh-blind", when=say.when(fresh.blind_since), what=what)


def race_ended(say: Say, fresh: Freshness) -> str:
    """That the organiser has ended the race, and who says where she is fetched; '' while it goes on."""
    if fresh.ended_at is None:
        return ""
    return say.s("fresh-ended", when=say.when(fresh.ended_at), place=fresh.ended_from or "none")


def going_words(say: Say, going: str) -> str:
    """How she is going: 'on the move'."""
    key = f"going-{slug(going.replace(',', ''))}"
    return say.s(key) if has(key) else going


def point_line(say: Say, runner: str, p: PointAnswer, gone_on: float = 0.0) -> str:
    """One point in one line: reached or to come. `gone_on`: the odds that she has left it unreported (1 = she was seen
    farther on)."""
    if p.through and (p.arrived or p.left):
        return say.s(
            "point-through", runner=runner, place=p.name, when=say.when(p.arrived or p.left or say.now)
        )
    if p.arrived is not None:
        values = {"runner": runner, "place": p.name, "when": say.when(p.arrived)}
        if p.left is None and not p.finish and gone_on < 1.0:
            if gone_on >= LIKELY_GONE_ON:
                return say.s("missed-gone-on", odds=say.odds(gone_on), **values)
            return say.s("point-is-in", **values)
        return say.s("point-reached", left=say.maybe(p.left), **values)
    if p.left is not None:
        return say.s("point-left", runner=runner, place=p.name, when=say.when(p.left))
    if p.window is None:
        return say.s("no-forecast", place=p.name)
    return say.s("point-next", runner=runner, place=p.name, window=say.window(p.window))


def _gap(say: Say, actual: datetime, planned: datetime) -> str:
    """How far from plan, to 5 minutes when it rests on a forecast, always with its sign in words."""
    off = actual - planned
    if abs(off) < ON_PLAN:
        return say.s("gap-none")
    return say.s("gap-late" if off > timedelta(0) else "gap-early", length=say.length(off))


def rounded(off: timedelta) -> timedelta:
    """A difference as it is told: to 5 minutes."""
    return timedelta(minutes=5 * round(off / timedelta(minutes=5)))


def _point_more(say: Say, p: PointAnswer) -> str:
    """What goes with a point to come: the odds of getting there, and the plan."""
    if p.window is None or p.arrived is not None or p.left is not None:
        return ""
    unsure = p.p_gets_there is not None and ODDS_FIRST <= p.p_gets_there < ODDS_WORTH_SAYING
    plan = ""
    if p.planned_in is not None:
        off = rounded(p.window.likely - p.planned_in)
        plan = say.s(
            "point-planned",
            when=say.when(p.planned_in),
            gap=_gap(say, p.planned_in + off, p.planned_in),
        )
    return lines(say.s("point-odds", odds=say.odds(p.p_gets_there or 0.0)) if unsure else "", plan)


def _gone_on(answer: ForecastAnswer, p: PointAnswer) -> float:
    """The odds that she is no longer at a point where she was seen in: 1 once she was seen farther on."""
    later = answer.points[answer.points.index(p) + 1 :]
    return 1.0 if any(q.arrived or q.left for q in later) else answer.p_gone_on


def next_point(answer: ForecastAnswer) -> PointAnswer | None:
    """The first point she has not reached; None at the end."""
    return next((p for p in answer.points if p.arrived is None and p.left is None and p.window), None)


def point_in(answer: ForecastAnswer, point: str | None) -> PointAnswer | None:
    """The point of that id in an answer; without an id the next one."""
    if point is None:
        return next_point(answer)
    return next((p for p in answer.points if p.point == point), None)


def say_point(say: Say, answer: ForecastAnswer, point: str | None) -> str:
    """When she is at a point (None: where the asker says they are, else the next one)."""
    p = point_in(answer, point or answer.asker_at)
    ruled = past_cut_off.standing(say, answer.fresh, answer.runner_name)
    if ruled and (p is None or (p.window is None and p.arrived is None and p.left is None)):
        return lines(ruled, freshness(say, answer.fresh, answer.runner_name, ruled=False))
    if p is None:
        first = say.s("no-more-points", runner=answer.runner_name, going=going_words(say, answer.fresh.going))
        return lines(first, freshness(say, answer.fresh, answer.runner_name))
    reached = p.arrived is not None or p.left is not None
    if not reached and Going(answer.fresh.going).race_over:
        if answer.fresh.last is not None and answer.fresh.last.kind == "retired":
            return say_heard(say, answer.fresh, answer.runner_name)
        first = say.s("where-ended", runner=answer.runner_name, going=going_words(say, answer.fresh.going))
        return lines(first, freshness(say, answer.fresh, answer.runner_name))
    return lines(
        _doubtful(say, answer, p) or point_line(say, answer.runner_name, p, _gone_on(answer, p)),
        _point_more(say, p),
        freshness(say, answer.fresh, answer.runner_name),
    )


def _doubtful(say: Say, answer: ForecastAnswer, p: PointAnswer) -> str:
    """Where she less likely gets there than not, that comes first, and the window after it as an 'if'; else ''."""
    if p.window is None or p.p_gets_there is None or p.p_gets_there >= ODDS_FIRST:
        return ""
    first = say.s("point-odds-first", runner=answer.runner_name, place=p.name, odds=say.odds(p.p_gets_there))
    return lines(first, say.s("point-if", window=say.window(p.window)))


def say_finish(say: Say, answer: ForecastAnswer) -> str:
    """When she is at the finish."""
    finish = next((p.point for p in answer.points if p.finish), answer.points[-1].point)
    return say_point(say, answer, finish)


def say_where(say: Say, answer: ForecastAnswer) -> str:
    """Where she is: the last fact first, then the estimate marked as one."""
    fresh = answer.fresh
    if Going(fresh.going).race_over:
        first = say.s("where-ended", runner=answer.runner_name, going=going_words(say, fresh.going))
        return lines(first, freshness(say, fresh, answer.runner_name, sharper=False))
    if fresh.last is None:
        return freshness(say, fresh, answer.runner_name)
    values = _known_values(say, fresh.last)
    gone_on = answer.p_gone_on >= LIKELY_GONE_ON
    if fresh.last.kind == "in" and fresh.going in ("at a point", "resting") and not gone_on:
        at = {k: v for k, v in values.items() if k != "fact"}
        first = say.s("where-at", runner=answer.runner_name, place=fresh.last.name, **at)
        return lines(first, _after_first(say, answer))
    if fresh.last.kind == "position":
        place = say.place_of(fresh.last.name, fresh.last.km)
        seen = {k: v for k, v in values.items() if k != "fact"}
        first = say.s("where-seen", runner=answer.runner_name, place=place, **seen)
    else:
        first = say.s("where-between", runner=answer.runner_name, **values)
    estimate = ""
    if answer.where is not None:
        low, high = measures.stretch(answer.where.low_km, answer.where.high_km, say.reader)
        likely = measures.distance(answer.where.likely_km, say.reader, decimals=0)
        narrow = low == high
        estimate = (
            say.s("where-estimate-near", likely=likely)
            if narrow
            else say.s("where-estimate", low=low, high=high, likely=likely)
        )
    legs = ""
    if answer.where_between is not None:
        a, b = answer.where_between
        legs = say.s("where-legs", **{"from": a, "to": b})
    unseen = say.s("where-gone-on", odds=say.odds(answer.p_gone_on)) if gone_on else ""
    return lines(first, unseen, estimate, legs, _after_first(say, answer))


def _after_first(say: Say, answer: ForecastAnswer) -> str:
    """Next point, and of the freshness only what the first line has not said."""
    upcoming = next_point(answer)
    rest = freshness(say, answer.fresh, answer.runner_name).split("\n")[1:]
    return lines(point_line(say, answer.runner_name, upcoming) if upcoming else "", *rest)


def say_gap(say: Say, answer: ForecastAnswer) -> str:
    """Against the plan: at the next point, and at the last one where both are known."""
    p = next_point(answer)
    fact = ""
    for q in answer.points:
        if q.arrived is not None and q.planned_in is not None:
            gap = _gap(say, q.arrived, q.planned_in)
            fact = say.s("gap-fact", place=q.name, when=say.when(q.arrived), gap=gap)
    fresh = freshness(say, answer.fresh, answer.runner_name)
    if p is None or p.window is None or p.planned_in is None:
        ruled = past_cut_off.standing(say, answer.fresh, answer.runner_name)
        if ruled:
            return lines(ruled, fact, freshness(say, answer.fresh, answer.runner_name, ruled=False))
        return lines(fact or say.s("gap-none-known"), fresh)
    off = rounded(p.window.likely - p.planned_in)
    key = "gap-answer-late" if off > ON_PLAN else "gap-answer-early" if off < -ON_PLAN else "gap-answer-none"
    values = {"runner": answer.runner_name, "place": p.name, "window": say.window(p.window)}
    if key != "gap-answer-none":
        values["length"] = say.length(off)
    return lines(_doubtful(say, answer, p).split("\n")[0], say.s(key, **values), fact, fresh)


def say_supposed(say: Say, answer: ForecastAnswer, point: str | None) -> str:
    """A what-if, marked as one. `answer` holds what was supposed."""
    p = point_in(answer, point)
    if p is None or p.window is None:
        return say_point(say, answer, point)
    values = {"runner": answer.runner_name, "place": p.name, "window": say.window(p.window)}
    if answer.supposed_leaving is not None:
        first = say.s("supposed-leaving", when=say.when(answer.supposed_leaving), **values)
    else:
        percent = round(((answer.supposed_factor or 1.0) - 1.0) * 100)
        key = "supposed-slower" if percent >= 0 else "supposed-faster"
        first = say.s(key, percent=str(abs(percent)), **values)
    finish = next((q for q in answer.points if q.finish and q.window and q.point != p.point), None)
    return lines(
        first,
        point_line(say, answer.runner_name, finish) if finish else "",
        say.s("supposed-only"),
        freshness(say, answer.fresh, answer.runner_name, sharper=False),
    )


def say_dark(say: Say, answer: ForecastAnswer, point: str | None) -> str:
    """Whether it is dark there when she is likely there."""
    p = point_in(answer, point)
    if p is None:
        return say_point(say, answer, point)
    if p.arrived is not None or p.left is not None:
        return point_line(say, answer.runner_name, p, _gone_on(answer, p))
    if p.dark is None or p.window is None:
        return lines(say.s("dark-unknown", place=p.name), point_line(say, answer.runner_name, p))
    return lines(
        say.s(
            "dark-yes" if p.dark else "dark-no",
            place=p.name,
            runner=answer.runner_name,
            window=say.window(p.window),
        ),
        freshness(say, answer.fresh, answer.runner_name, sharper=False),
    )


def say_heard(say: Say, fresh: Freshness, name: str) -> str:
    """When she was last heard of."""
    if fresh.last is None:
        return freshness(say, fresh, name)
    first = say.s("heard", runner=name, **_known_values(say, fresh.last))
    return lines(first, *freshness(say, fresh, name).split("\n")[1:])


def say_day(say: Say, fresh: Freshness) -> str:
    """What others' times of the day change of the way to the next point; '' where nothing."""
    if fresh.day is None:
        return ""
    way = "longer" if fresh.day.percent > 0 else "less" if fresh.day.percent < 0 else "same"
    percent, place = abs(fresh.day.percent), fresh.day.place
    return say.s("why-others", way=way, others=fresh.day.others, percent=percent, place=place)


def _stop_line(say: Say, name: str, stop: StopFact) -> str:
    if stop.through:
        at = stop.arrived or stop.left or say.now
        return say.s("stop-through", runner=name, place=stop.name, when=say.when(at))
    planned = stop.planned_stop
    gap = say.s("stop-over-plan", length=say.length(planned)) if planned else "none"
    if stop.arrived is not None and stop.left is not None:
        return say.s(
            "stop-over",
            runner=name,
            place=stop.name,
            length=say.length(stop.left - stop.arrived),
            gap=gap,
            **{"from": say.when(stop.arrived), "to": say.when(stop.left)},
        )
    if stop.arrived is not None:
        so_far = say.length(say.now - stop.arrived)
        return say.s(
            "stop-on",
            runner=name,
            place=stop.name,
            length=so_far,
            gap=gap,
            **{"from": say.when(stop.arrived)},
        )
    out = say.when(stop.left) if stop.left else say.s("not-reported")
    return say.s("stop-half", runner=name, place=stop.name, **{"from": say.s("not-reported"), "to": out})


def say_last_stop(say: Say, answer: FactsAnswer, point: str | None) -> str:
    """How long she was at a point (None: the last one she was at)."""
    # Nobody comes in at the start: 'out' alone is no stop.
    stops = [
        s
        for s in answer.stops
        if s.point == point or (point is None and (s.arrived is not None or s.through))
    ]
    if not stops:
        return lines(
            say.s("stop-none", runner=answer.runner_name),
            freshness(say, answer.fresh, answer.runner_name),
        )
    return lines(
        _stop_line(say, answer.runner_name, stops[-1]),
        freshness(say, answer.fresh, answer.runner_name, sharper=False),
    )


def say_how_she_is(say: Say, answer: FactsAnswer) -> str:
    """What people wrote about how she is, the newest first; at most three. A call for help that is open stands
    before all of it."""
    calls = (
        say.s("how-help", runner=answer.runner_name, when=say.when(a.raised_at), words=a.words)
        for a in answer.alarms
        if a.words
    )
    return lines(*calls, _how_written(say, answer))


def _how_written(say: Say, answer: FactsAnswer) -> str:
    if not answer.how_she_is:
        return lines(
            say.s("how-she-is-none", runner=answer.runner_name),
            freshness(say, answer.fresh, answer.runner_name, sharper=False),
        )
    newest = sorted(answer.how_she_is, key=lambda h: h.at, reverse=True)[:3]
    return lines(
        *(
            say.s("how-she-is", who=h.by, when=say.when(h.at), ago=say.ago(h.at), words=h.words)
            for h in newest
        )
    )


def _missed_first(say: Say, a: MissedAnswer) -> str:
    values = {"runner": a.runner_name, "place": a.name}
    if a.seen_out is not None:
        return say.s("missed-seen-out", when=say.when(a.seen_out), **values)
    if a.seen_in is not None:
        if a.p_past >= LIKELY_GONE_ON:
            return say.s("missed-gone-on", when=say.when(a.seen_in), odds=say.odds(a.p_past), **values)
        return say.s("missed-seen-in", when=say.when(a.seen_in), **values)
    level = "high" if a.p_past >= MISSED_HIGH else "low" if a.p_past < MISSED_LOW else "even"
    return say.s(f"missed-odds-{level}", odds=say.odds(a.p_past), **values)


def _advice(say: Say, a: MissedAnswer) -> str:
    if a.advice == "wait":
        until = ceil_to(a.wait_until) if a.wait_until else None
        return say.s("wait-advice-wait", until=say.maybe(until))
    return say.s("wait-advice-go", next=a.next_name or "none")


def say_missed(say: Say, a: MissedAnswer, *, advice_first: bool = False) -> str:
    """Have we missed her; with `advice_first`, wait or go. Facts settle it, else the odds do."""
    over = a.fresh.ended_at is not None and not a.fresh.ended_from
    ruled = past_cut_off.standing(say, a.fresh, a.runner_name)
    if ruled and a.window is None:
        fact = _missed_first(say, a) if a.seen_in or a.seen_out else ""
        return lines(ruled, fact, freshness(say, a.fresh, a.runner_name, ruled=False))
    order = [_missed_first(say, a), say.s("leave-ended") if over else _advice(say, a)]
    window = ""
    if a.window is not None and a.seen_in is None and a.seen_out is None:
        window = say.s("wait-expected", runner=a.runner_name, place=a.name, window=say.window(a.window))
    leave = ""
    if a.next_leave_by is not None and a.next_name and not over:
        leave = say.s("wait-next-leave", leave_by=say.when(floor_to(a.next_leave_by)), next=a.next_name)
    return lines(
        *(reversed(order) if advice_first else order),
        window,
        leave,
        say.s("meeting-if-missed", text=a.if_missed)
        if a.if_missed and a.advice != "wait" and not over
        else "",
        freshness(say, a.fresh, a.runner_name),
    )


def say_picture(say: Say, answer: ForecastAnswer) -> str:
    """The picture of the course in words: where she is, then each point to come with its window and light."""
    ahead = [p for p in answer.points if p.window is not None and p.arrived is None]
    rows = []
    for p in ahead:
        assert p.window is not None
        dark = say.s("picture-dark") if p.dark else ""
        short = window_short(p.window, say.reader, say.now)
        rows.append(say.s("picture-row", place=p.name, km=say.km(p.km), times=short, dark=dark or "none"))
    return lines(say_where(say, answer), *rows)
