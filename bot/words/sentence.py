"""A sentence with its names found: who and where it is about, and the words with stand-ins for them."""

from __future__ import annotations

import re
from dataclasses import dataclass

from bot.words import names
from bot.words.meaning import Context
from bot.words.tidy import tidy
from server.wording.answer import PointHere, RunnerHere


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence with its names found. `plain` is tidied; `text` has PT, FINISH, PERSON, 'she' in place of
    names; `runner` the one it is about (None: open); `named` whether she was named."""

    words: str
    plain: str
    text: str
    runner: RunnerHere | None
    named: bool
    runner_score: float
    point: names.Named | None
    person: str | None
    finish: bool


def _points(ctx: Context, runner: RunnerHere | None) -> tuple[PointHere, ...]:
    if runner is not None:
        return runner.points
    # One course is most often that of all; a point of another's is found by its name too.
    return tuple({p.id: p for r in reversed(ctx.candidates()) for p in r.points}.values())


FINISH_SAID = re.compile(r"\b(?:(?:at |to |in )?the (?:finish(?: line)?|end)|finish(?: line)?)\b")


_CONTROL = r"(?:the )?(?:race (?:hq|office|headquarters|director|centre|center|organisers?)|hq)"


def _race_control(plain: str, own_name: str) -> str:
    """Race control by whatever name this race or the sport gives it."""
    named = tidy(own_name)
    own = rf"(?:the )?{re.escape(named)}|" if named and named != "race control" else ""
    return re.sub(rf"\b(?:{own}{_CONTROL})\b", "race control", plain)


def find_names(words: str, english: str, ctx: Context) -> Sentence:
    """Find who and where, and put stand-ins in their place."""
    everywhere = tuple(p for r in ctx.runners for p in r.points)
    known = names.name_words(everywhere, [*(r.name for r in ctx.runners), *(n for _, n in ctx.people)])
    plain = _race_control(tidy(english, known), ctx.control)
    found = names.find_runner(plain, ctx.runners)
    text = found.rest if found else plain
    runner = ctx.runner(found.id if found else None)
    point = names.find_point(text, _points(ctx, runner))
    if point is not None:
        tokens = text.split()
        text = " ".join([*tokens[: point.start], names.POINT, *tokens[point.end :]])
    finish = FINISH_SAID.search(text) is not None
    text = FINISH_SAID.sub(lambda m: ("at " if m[0].startswith("at") else "") + names.FINISH, text)
    runners = {r.id for r in ctx.runners}
    others = tuple(
        (i, n) for i, n in ctx.people if i not in runners and n not in {r.name for r in ctx.runners}
    )
    person = names.find_person(text, others)
    if person is not None:
        text = person[1]
    return Sentence(
        words,
        plain,
        text,
        runner,
        found is not None,
        found.score if found else 100.0,
        point,
        person[0] if person else None,
        finish,
    )


def finish_of(runner: RunnerHere) -> str | None:
    """The id of a runner's finish."""
    return next((p.id for p in runner.points if p.finish), None)
