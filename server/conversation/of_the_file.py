"""Questions whose answer stands in the event file, or is the writer's own: the rules, the start, the clock, the points to
come, what she wears, what I have of you."""

from __future__ import annotations

from server.conversation import awaiting
from server.conversation.telling import of_the_file
from server.conversation.telling.answer import FactsAnswer, RunnerHere
from server.conversation.telling.say import lines
from server.conversation.telling.written import say_written
from server.conversation.understanding import Asked, says
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.facts.entry import Kind

__all__ = ["clock", "course", "ground", "looks", "mine", "next_bit", "rules", "start"]

_MOVES = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})
OWN_TOLD = 3
"""So many of the writer's own reports are told again, the newest first (own choice)."""


def _her(visit: Visit, asked: Asked) -> RunnerHere | None:
    found = visit.runner(asked.runner) or visit.context().runner(None)
    return found or next(iter(visit.event.runners), None)


async def rules(visit: Visit, _asked: Asked) -> Reply:
    """What the file has of them; the others are for the race to say."""
    return visit.reply(of_the_file.say_rules(visit.say, visit.event))


async def start(visit: Visit, asked: Asked) -> Reply:
    """When she starts."""
    her = _her(visit, asked)
    if her is None:
        return visit.reply(visit.s("not-understood"))
    return visit.reply(of_the_file.say_start(visit.say, her, visit.view.where(visit.event.id, her.id)))


async def clock(visit: Visit, _asked: Asked) -> Reply:
    """By whose clock times are told."""
    return visit.reply(of_the_file.say_clock(visit.say, visit.now))


async def course(visit: Visit, asked: Asked) -> Reply:
    """What lies ahead of her."""
    her = _her(visit, asked)
    if her is None:
        return visit.reply(visit.s("not-understood"))
    told = visit.view.forecast(visit.event.id, her.id)
    hills = says(asked.words, "hills")
    after = says(asked.words, "behind")
    return visit.reply(of_the_file.say_course(visit.say, told, asked.point, after=after, hills=hills))


async def next_bit(visit: Visit, asked: Asked) -> Reply:
    """The next point and how far it is, and nothing else."""
    her = _her(visit, asked)
    if her is None:
        return visit.reply(visit.s("not-understood"))
    told = visit.view.forecast(visit.event.id, her.id)
    return visit.reply(of_the_file.say_next_bit(visit.say, told))


async def ground(visit: Visit, _asked: Asked) -> Reply:
    """What the file says of the ground, stretch by stretch; that it says nothing, where it does not."""
    found = [w for w in visit.view.written(visit.event.id) if w.kind == "surface"]
    if not found:
        return visit.reply(visit.s("elsewhere-unknown", words="none"))
    return visit.reply(lines(*(say_written(visit.say, w) for w in found), visit.s("ground-else")))


async def looks(visit: Visit, asked: Asked) -> Reply:
    """What she wears."""
    her = _her(visit, asked)
    return visit.reply(of_the_file.say_looks(visit.say, her) if her else visit.s("not-understood"))


async def mine(visit: Visit, asked: Asked) -> Reply:
    """What the writer has reported, the newest first, of the point that is named; and how good the last of her is."""
    found = _handed_in(visit, asked.point)
    for her in visit.context().candidates():
        have = {text for _, text in found}
        try:
            told = visit.view.facts(visit.event.id, her.id)
        except Refused:
            continue  # a part that may not see what others reported
        found += [f for f in _of_writer(visit, told, asked.point) if f[1] not in have]
    texts = [text for _, text in sorted(found, key=lambda x: x[0], reverse=True)[:OWN_TOLD]]
    texts += [awaiting.open_one(visit, a, "await-open") for a in visit.event.awaited]
    return visit.reply(lines(*texts) if texts else visit.s("mine-none"))


def _handed_in(visit: Visit, point: str | None) -> list[tuple[float, str]]:
    """The check-ins of this chat that are remembered."""
    found = []
    for h in visit.memory.handed:
        r = h.report
        if (
            h.event != visit.event.id
            or r.kind not in _MOVES
            or r.point is None
            or point not in (None, r.point)
        ):
            continue
        name, her = visit.point_name(r.runner, r.point), visit.runner(r.runner)
        fact = visit.say.fact(r.kind.value, visit.say.place_of(name, None))
        told = visit.s("mine-fact", runner=her.name if her else "", fact=fact, when=visit.say.when(r.seen_at))
        found.append((r.seen_at.timestamp(), told))
    return found


def _of_writer(visit: Visit, told: FactsAnswer, point: str | None) -> list[tuple[float, str]]:
    """What of the facts is this person's word: when, and in words."""
    me, say, found = visit.person.name, visit.say, []
    for s in told.stops:
        if s.told_by != me or point not in (None, s.point):
            continue
        kinds = (("in", s.arrived), ("out", s.left)) if not s.through else (("through", s.arrived or s.left),)
        for kind, at in kinds:
            if at is not None:
                fact = say.fact(kind, say.place_of(s.name, None))
                found.append(
                    (
                        at.timestamp(),
                        visit.s("mine-fact", runner=told.runner_name, fact=fact, when=say.when(at)),
                    )
                )
    last = told.fresh.last
    if last is not None and last.by == me and last.kind == "position" and point is None:
        fact = say.fact(last.kind, say.place_of(last.name, last.km))
        found.append(
            (
                last.at.timestamp(),
                visit.s("mine-fact", runner=told.runner_name, fact=fact, when=say.when(last.at)),
            )
        )
    if point is None:
        found += [
            (h.at.timestamp(), visit.s("mine-words", when=say.when(h.at), words=h.words))
            for h in told.how_she_is
            if h.by == me
        ]
    return found
