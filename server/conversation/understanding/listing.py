"""Messages in the short form to reports: each item with its runner by bib, unknown bibs asked back."""

from __future__ import annotations

import re
from dataclasses import replace

from server.conversation.understanding import lists
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import AskBack, Choice, Context, Need, Report, Reported
from server.conversation.understanding.names import find_runner
from server.conversation.understanding.placing import placed
from server.conversation.understanding.sentence import FINISH, POINT, RUNNER, Sentence, read_sentence
from server.event.model import PartKind
from server.facts.entry import Kind


def _looks_like_one(said: Sentence) -> bool:
    """Whether at most one word is neither of a list nor a stand-in nor part of a phrase: most messages are no list."""
    return sum(w[0] != "<" and not lists.may_stand(w) for w in said.masked) <= 0


def _rest_is_one(said: Sentence) -> bool:
    """The same of all words but the first."""
    return all(w[0] == "<" or lists.may_stand(w) for w in said.masked[1:])


_POSTED = frozenset({PartKind.VOLUNTEER, PartKind.ORGANISER})


def _seen_bibs(said: Sentence, ctx: Context) -> bool:
    """'Seen 87 and 90' of whoever reports many: each of them is there, where that is so."""
    rest = [w for w in said.plain[1:] if w[0].isdigit() or w[0] == "#"]
    see = lexicon().classes["see"].word(said.plain[0])
    return see and bool(rest) and ctx.parts <= _POSTED


def _row(said: Sentence, ctx: Context) -> list[str]:
    """The words with the point and a runner's name (but no bib) taken out of the way."""
    words = list(said.plain)
    if said.point is not None:
        words[said.point.start : said.point.end] = [POINT]
    elif said.finish:
        words = [w for w in said.masked if w != RUNNER] if FINISH in said.masked and not said.times else words
    named = find_runner(words, [""] * len(words), tuple(replace(r, bib="") for r in ctx.runners))
    if named is not None:
        words[named.start : named.end] = ["she"]
    return words


def listed(said: Sentence, ctx: Context) -> Reported | AskBack | None:
    """A message that is nothing but a list; None for any other."""
    seen = _seen_bibs(said, ctx)
    pairs = () if said.asks else _pairs(said, ctx)
    if pairs:
        return _of_items(pairs, _headed(said, ctx), ctx, guessed=False)
    if said.asks or not (_looks_like_one(said) or (seen and _rest_is_one(said))):
        return None
    tokens = ["she" if t == "she" else t for t in lists.tokens_of(_row(said, ctx))]
    if seen:
        tokens = [lists.word_for("in"), *tokens[1:]]
    bibs = frozenset(r.bib for r in ctx.runners)
    items = lists.read_list(tokens, ctx.now, ctx.time_zone, bibs) or lists.read_columns(
        tokens, ctx.now, ctx.time_zone, bibs, from_post=ctx.parts <= {PartKind.VOLUNTEER}
    )
    if items is None:
        return None
    if len(items) > 1 and any(i.kind is Kind.SWEEP_THROUGH for i in items):
        return None  # 'sweep left the mill' is one thing
    alone = items[0]
    if len(items) == 1 and alone.kind is Kind.OUT and not (alone.bib or alone.at or said.point):
        return None
    return _of_items(items, said, ctx, guessed=seen)


def _of_items(
    items: tuple[lists.ListItem, ...], said: Sentence, ctx: Context, *, guessed: bool
) -> Reported | AskBack | None:
    reports: list[Report] = []
    for item in items:
        runner = said.runner
        if item.bib is not None:
            runner = next((r for r in ctx.runners if r.bib == item.bib), None)
            if runner is None:
                return _ask_bib(item.bib, items, said, ctx, guessed=guessed)
        if runner is None:
            return None
        one = Report(item.kind, item.at or ctx.now, runner.id, guessed=guessed)
        report = placed(one, said, runner, ctx)
        if isinstance(report, AskBack):
            return report
        reports.append(report)
    return Reported(tuple(in_order(reports)))


def _headed(said: Sentence, ctx: Context) -> Sentence:
    """The sentence with the place that stands before its first bib: 'pell: 198 6.11, …, kettle is on' is at Pell Bridge."""
    first = _PAIR.search(said.written.lower())
    head = read_sentence(said.written[: first.start()], ctx) if first is not None else said
    return replace(said, point=head.point, finish=head.finish)


_PAIR = re.compile(
    r"(?<![\w.:])#?(?P<bib>\d{1,5})\s*[:=,–-]?\s+(?:(?P<word>[^\W\d]+)\s+)?(?P<h>\d{1,2}[:.h]|[01]\d|2[0-4])(?P<min>[0-5]\d)(?![\d.:]|\s*[–-])"
    r"(?: (?P<after>[^\W\d]+))?"
)
_PAIRS_MIN = 2


def _pairs(said: Sentence, ctx: Context) -> tuple[lists.ListItem, ...]:
    """Bibs each with its time, whatever stands around them ('mill: 188 10.02, 207 10.03, a queue'): each time is that
    bib's. () for a message that holds less than two of them, or none whose bib anybody here has."""
    if ctx.parts & {PartKind.RUNNER, PartKind.PACER}:
        return ()
    at = lexicon().read["at"]
    found = [
        m for m in _PAIR.finditer(said.written.lower()) if m["h"][-1] in ":.h" or at.word(m["word"] or "")
    ]
    known = {r.bib for r in ctx.runners}
    if len(found) < _PAIRS_MIN or not known & {m["bib"] for m in found}:
        return ()
    head = lexicon().words(said.written[: found[0].start()])
    heading = next((k for w in head if (k := lists.kind_of(w)) is not None), Kind.IN)
    items = []
    for m in found:
        words = (m["word"], m["after"])
        kind = next((k for w in words if w and (k := lists.kind_of(w)) is not None), heading)
        when = lists.time_of(f"{m['h'].rstrip(':.h')}:{m['min']}", ctx.now, ctx.time_zone)
        if when is None:
            return ()
        items.append(lists.ListItem(kind, m["bib"], when))
    return tuple(items)


def in_order(reports: list[Report]) -> list[Report]:
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


def _ask_bib(
    bib: str, items: tuple[lists.ListItem, ...], said: Sentence, ctx: Context, *, guessed: bool
) -> AskBack:
    """An unknown bib: what was clear is kept apart, the near ones are offered. Several are only named."""
    known = {r.bib: r for r in ctx.runners}
    clear = []
    for item in items:
        runner = known.get(item.bib or "")
        if runner is not None:
            one = Report(item.kind, item.at or ctx.now, runner.id, guessed=guessed)
            report = placed(one, said, runner, ctx)
            if isinstance(report, Report):
                clear.append(report)
    unknown = list(dict.fromkeys(i.bib for i in items if i.bib is not None and i.bib not in known))
    choices = []
    listed_too = {i.bib for i in items}
    for near in lists.near_bibs(bib, ctx.runners) if len(unknown) == 1 else ():
        if near.bib in listed_too:
            continue  # of her the list says something already
        meant = []
        for item in items:
            if item.bib == bib:
                report = placed(Report(item.kind, item.at or ctx.now, near.id), said, near, ctx)
                if isinstance(report, Report):
                    meant.append(report)
        choices.append(Choice(near.id, Reported(tuple(in_order(meant)))))
    return AskBack(Need.BIB, tuple(choices), ", ".join(unknown), also=tuple(in_order(clear)))
