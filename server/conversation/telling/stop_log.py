"""The stop log in words: one thing logged, the log in short, and what of it is for medics."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from server.conversation.telling.answer import LogAnswer
from server.conversation.telling.say import Say, lines, slug
from server.facts.stop_log import Item, Level, Logged, LogSince
from server.sentences import has

ROWS_TOLD = 5
"""So many entries are told one by one; the short form has the rest."""
DRUGS = ("ibuprofen", "paracetamol")
CHANGES = ("socks", "shoes", "top", "battery")


def logged_words(say: Say, one: Logged) -> str:
    """'drank 500 ml', 'nothing eaten', 'feet: two blisters'."""
    item = slug(one.item.value)
    if one.level is Level.NONE and has(f"log-{item}-none"):
        return say.s(f"log-{item}-none")
    if one.amount is not None and has(f"log-{item}-amount"):
        first = say.s(f"log-{item}-amount", amount=_number(one.amount))
        return say.s("log-with", what=first, words=one.words) if one.words else first
    if one.words:
        return say.s(f"log-{item}-words", words=one.words)
    key = f"log-{item}-{slug(one.level.value)}" if one.level else ""
    return say.s(key if key and has(key) else f"log-{item}")


def log_line(say: Say, logged: Iterable[Logged]) -> str:
    """Several things in a row."""
    return ", ".join(logged_words(say, one) for one in logged)


def _number(amount: float) -> str:
    return f"{amount:.0f}"


def say_since(say: Say, log: LogSince | None) -> str:
    """The log in short, and what of it crew and medics are to look at; '' for nothing logged."""
    if log is None:
        return ""
    what = "; ".join((*_sums(say, log), *_last(say, log)))
    first = say.s("log-since", since=say.when(log.since), what=what) if what else ""
    flags = (say.s(f"log-flag-{slug(flag.value)}", since=say.when(at)) for flag, at in log.flags)
    return lines(first, *flags)


def _sums(say: Say, log: LogSince) -> Iterator[str]:
    yield from _sum(say, Item.DRANK, log.drank_ml, log.drank_some)
    words = log.eaten
    if words and not log.ate_g:
        yield say.s("log-ate-words", words=", ".join(words))
    else:
        for text in _sum(say, Item.ATE, log.ate_g, log.ate_some):
            yield say.s("log-with", what=text, words=", ".join(words)) if words else text
    yield from _sum(say, Item.SLEPT, log.slept_min, False)
    if log.changed:
        yield say.s("log-changed-words", words=", ".join(log.changed))


def _sum(say: Say, item: Item, amount: float | None, some: bool) -> Iterator[str]:
    """A sum; that nothing was said to be; that it was, and nobody said how much; or that nothing is logged of it."""
    if amount:
        yield logged_words(say, Logged(item, amount))
    elif some:
        yield logged_words(say, Logged(item))
    elif amount is not None:
        yield logged_words(say, Logged(item, level=Level.NONE))
    elif has(f"log-{item.value}-unsaid"):
        yield say.s(f"log-{item.value}-unsaid")


def _last(say: Say, log: LogSince) -> Iterator[str]:
    for at, one in log.last:
        yield say.s("log-at", what=logged_words(say, one), when=say.when(at))
    if not any(one.item is Item.PAINKILLER for _, one in log.last):
        yield say.s("log-painkiller-unsaid")


def say_log(say: Say, a: LogAnswer) -> str:
    """What was logged: in short, then the newest entries, then who was shown it; of who has to say first that they are a
    medic, that."""
    if not a.shown_to_asker:
        return say.s("log-for-medics", runner=a.runner_name)
    if a.log is None:
        return say.s("log-nothing", runner=a.runner_name)
    rows = (
        say.s("log-row", when=say.when(r.at), place=r.name or "none", what=log_line(say, r.logged), by=r.by)
        for r in sorted(a.rows, key=lambda r: r.at, reverse=True)[:ROWS_TOLD]
    )
    medics = (say.s("log-medic", who=who, when=say.when(at)) for at, who in a.medics)
    return lines(say_since(say, a.log), *rows, *medics, say.s("log-not-advice"))
