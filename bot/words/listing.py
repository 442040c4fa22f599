"""Messages in the short form to reports: each item with its runner by bib, unknown bibs asked back."""

from __future__ import annotations

from dataclasses import replace

from bot.words import lists, names
from bot.words.meaning import AskBack, Choice, Context, Need, Report, Reported, Understood
from bot.words.placing import placed
from bot.words.sentence import FINISH_SAID, Sentence
from server.event.model import PartKind
from server.facts.entry import Kind


def listed(said: Sentence, ctx: Context) -> Understood | None:
    plain = names.find_runner(said.plain, tuple(replace(r, bib="") for r in ctx.runners))
    text = plain.rest if plain else said.plain
    if said.point is not None:
        text = text.replace(said.point.words, names.POINT, 1)
    text = FINISH_SAID.sub(names.FINISH, text)
    bibs = frozenset(r.bib for r in ctx.runners)
    items = lists.read_list(text, ctx.now, ctx.time_zone, bibs) or lists.read_columns(
        text, ctx.now, ctx.time_zone, bibs, from_post=ctx.parts <= {PartKind.VOLUNTEER}
    )
    if items is None:
        return None
    alone = items[0]
    if len(items) == 1 and alone.kind is Kind.OUT and not (alone.bib or alone.at or said.point):
        return None
    reports: list[Report] = []
    for item in items:
        runner = said.runner
        if item.bib is not None:
            runner = next((r for r in ctx.runners if r.bib == item.bib), None)
            if runner is None:
                return _ask_bib(item.bib, items, said, ctx)
        if runner is None:
            return None
        report = placed(Report(item.kind, item.at or ctx.now, runner.id), said, runner, ctx)
        if isinstance(report, AskBack):
            return report
        reports.append(report)
    return Reported(tuple(_in_order(reports)))


def _in_order(reports: list[Report]) -> list[Report]:
    """'in … out …' of one runner without a point: the out is of the point she came in at."""
    last: dict[str | None, Report] = {}
    out = []
    for r in reports:
        before = last.get(r.runner)
        if r.kind is Kind.OUT and before is not None and before.kind is Kind.IN:
            r = replace(r, point=before.point, guessed=before.guessed)
        last[r.runner] = r
        out.append(r)
    return out


def _ask_bib(bib: str, items: tuple[lists.Item, ...], said: Sentence, ctx: Context) -> AskBack:
    """An unknown bib: what was clear is kept apart, the near ones are offered."""
    known = {r.bib: r for r in ctx.runners}
    clear = []
    for item in items:
        runner = known.get(item.bib or "")
        if runner is not None:
            report = placed(Report(item.kind, item.at or ctx.now, runner.id), said, runner, ctx)
            if isinstance(report, Report):
                clear.append(report)
    choices = []
    for near in lists.near_bibs(bib, ctx.runners):
        meant = []
        for item in items:
            if item.bib == bib:
                report = placed(Report(item.kind, item.at or ctx.now, near.id), said, near, ctx)
                if isinstance(report, Report):
                    meant.append(report)
        choices.append(Choice(near.id, Reported(tuple(_in_order(meant)))))
    return AskBack(Need.BIB, tuple(choices), bib, also=tuple(_in_order(clear)))
