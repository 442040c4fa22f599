"""Notices as rows: number, keep and read back; which alarms are open."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import Any

from sqlalchemy import (
    BigInteger,
    ColumnElement,
    Select,
    and_,
    bindparam,
    cast,
    func,
    insert,
    or_,
    select,
    update,
)
from sqlalchemy.ext.asyncio import AsyncConnection

from server.facts.entry import Kind
from server.journal import events
from server.journal import tables as t
from server.journal.codec import aware, dump_notice, load_entry, load_notice
from server.journal.errors import UnknownError
from server.journal.values import MadeKnown, VerdictBasis
from server.watch.notice import AlarmValues, Made, Notice, Said, StandDownValues, UnnamedHelpValues

__all__ = [
    "MARK",
    "answers_to",
    "by_short",
    "columns",
    "locked",
    "made",
    "made_of",
    "made_since",
    "open_alarms",
    "overtaken",
    "put",
    "still_open",
]


def made_of(row: Any, said: tuple[Said, ...] = ()) -> Made:
    """The value of a row of the notice table and what its person answered."""
    return Made(
        notice=load_notice(row.body),
        short=row.short,
        made_at=row.made_at,
        sent_at=row.sent_at,
        answered_at=row.answered_at,
        answer=said[-1].words if said else row.answer,
        failed=row.failed_at is not None,
        said=said,
    )


def _answers_to(which: ColumnElement[bool]) -> Select[Any]:
    a = t.answer.c
    query = select(a.notice, a.at, a.words).join(t.notice, t.notice.c.key == a.notice)
    return query.where(which, a.person == t.notice.c.person).order_by(a.notice, a.at, a.id)


async def answers_to(c: AsyncConnection, which: ColumnElement[bool]) -> dict[str, tuple[Said, ...]]:
    """What their own persons answered to the notices that `which` picks, by key, in order of time."""
    return await _answers(c, _answers_to(which), {})


async def _answers(
    c: AsyncConnection, query: Select[Any], which: dict[str, Any]
) -> dict[str, tuple[Said, ...]]:
    found: dict[str, tuple[Said, ...]] = {}
    for row in await c.execute(query, which):
        found[row.notice] = (*found.get(row.notice, ()), Said(row.at, row.words))
    return found


async def put(c: AsyncConnection, owed: Sequence[Notice], now: datetime) -> tuple[Made, ...]:
    """Keep those notices whose key is new, numbered in the order given."""
    new: list[Made] = []
    for event in sorted({n.key.event for n in owed}):
        row = await events.lock(c, event)
        mine: dict[str, Notice] = {}
        for n in owed:
            if n.key.event == event:
                mine.setdefault(n.key.text(), n)
        known = set(await c.scalars(_KNOWN, {"keys": list(mine)}))
        fresh = [n for key, n in mine.items() if key not in known]
        numbered = [Made(n, row.notices + i, now) for i, n in enumerate(fresh, 1)]
        if numbered:
            await c.execute(_PUT, [{**columns(m), "body": dump_notice(m.notice)} for m in numbered])
            await c.execute(_NUMBERED, {"which": event, "count": row.notices + len(numbered)})
        new += numbered
    return tuple(new)


async def overtaken(c: AsyncConnection, seen: VerdictBasis) -> bool:
    """Whether more has come in about the runner (or the race) than a verdict rests on. Asked with the event held, so
    that nothing comes in between the answer and what is done with it."""
    await events.lock(c, seen.event)
    which = {"which": seen.event, "entries": seen.entries, "notices": seen.notices, "runner": seen.runner}
    later = _LATER_OF_HER if seen.runner else _LATER
    return any([await c.scalar(query, which) is not None for query in (later, _TOLD)])


def columns(m: Made) -> dict[str, Any]:
    """A new notice as a row, but for its body."""
    n = m.notice
    return {
        "key": n.key.text(),
        "event": n.key.event,
        "short": m.short,
        "runner": n.key.runner,
        "person": n.key.person,
        "kind": n.key.kind.value,
        "point": n.key.point,
        "episode": n.key.episode,
        "urgency": n.urgency.value,
        "owed_at": aware(n.owed_at, "owed_at"),
        "use_by": None if n.use_by is None else aware(n.use_by, "use_by"),
        "needs_answer": n.needs_answer,
        "made_at": m.made_at,
        "answer": "",
    }


async def made(c: AsyncConnection, event: str, runner: str | None) -> tuple[Made, ...]:
    """See `Journal.made`."""
    which = t.notice.c.event == event
    if runner is not None:
        which = and_(which, t.notice.c.runner == runner)
    said = await answers_to(c, which)
    rows = await c.execute(select(t.notice).where(which).order_by(t.notice.c.short))
    return tuple(made_of(row, said.get(row.key, ())) for row in rows)


async def made_since(
    c: AsyncConnection, event: str, mark: tuple[object, ...], known: MadeKnown | None
) -> MadeKnown:
    """Every notice of an event, read on from what is known: the very same where nothing has become of any, else the same
    values for those of which nothing has. `mark`: how often the event was blanked, and the row of `MARK` now."""
    if known is not None and known.mark == mark:
        return known
    if known is None or known.mark[0] != mark[0]:
        return MadeKnown(mark, await made(c, event, None))
    before = {m.short: m for m in known.made}
    rows = (await c.execute(_WHAT_BECAME, {"which": event})).all()
    said = await _answers(c, _ANSWERS, {"which": event})
    stale = [r.short for r in rows if not _as_known(r, said.get(r.key, ()), before.get(r.short))]
    fresh: dict[int, Made] = {}
    for start in range(0, len(stale), _AT_ONCE):
        some = {"which": event, "shorts": stale[start : start + _AT_ONCE]}
        fresh |= {r.short: made_of(r, said.get(r.key, ())) for r in await c.execute(_SOME, some)}
    return MadeKnown(mark, tuple(fresh.get(r.short) or before[r.short] for r in rows))


_AT_ONCE = 500


def _mark_query() -> Select[*tuple[Any, ...]]:
    """What differs once anything that `Made` holds does: which notices there are, which were sent, failed or answered (by
    count and two sums, as a failure may pass from one to another), how many answers there are, of any event."""
    n = t.notice.c
    short = cast(n.short, BigInteger)
    sums = [
        of.filter(column.is_not(None))
        for column in (n.sent_at, n.failed_at, n.answered_at)
        for of in (func.count(), func.sum(short), func.sum(short * short))
    ]
    answers = select(func.count()).select_from(t.answer).scalar_subquery()
    return select(func.count(), *sums, answers).where(n.event == bindparam("which"))


# Made once: to put one of these together takes longer than to carry it out, thirty times for the mark.
MARK = _mark_query().subquery()
_n, _a = t.notice.c, t.answer.c
_WHAT_BECAME = select(_n.key, _n.short, _n.sent_at, _n.answered_at, _n.failed_at)
_WHAT_BECAME = _WHAT_BECAME.where(_n.event == bindparam("which")).order_by(_n.short)
_ANSWERS = _answers_to(_n.event == bindparam("which"))
_SOME = select(t.notice).where(
    _n.event == bindparam("which"), _n.short.in_(bindparam("shorts", expanding=True))
)
_KNOWN = select(_n.key).where(_n.key.in_(bindparam("keys", expanding=True)))
_PUT = insert(t.notice)
_NUMBERED = update(t.event).where(t.event.c.id == bindparam("which")).values(notices=bindparam("count"))
_LATER = select(t.entry.c.number).where(
    t.entry.c.event == bindparam("which"), t.entry.c.number > bindparam("entries")
)
_LATER_OF_HER = _LATER.where(or_(t.entry.c.runner == bindparam("runner"), t.entry.c.runner.is_(None))).limit(
    1
)
_LATER = _LATER.limit(1)
_TOLD = select(_n.key).where(
    _n.event == bindparam("which"), _n.short > bindparam("notices"), _n.runner == bindparam("runner")
)
_TOLD = _TOLD.limit(1)


def _as_known(row: Any, said: tuple[Said, ...], known: Made | None) -> bool:
    if known is None or known.said != said:
        return False
    now = (row.sent_at, row.answered_at, row.failed_at is not None)
    return (known.sent_at, known.answered_at, known.failed) == now


async def by_short(c: AsyncConnection, event: str, short: int) -> Made:
    """See `Journal.notice`."""
    row = await _row_of(c, event, short, lock=False)
    said = await answers_to(c, t.notice.c.key == row.key)
    return made_of(row, said.get(row.key, ()))


async def locked(c: AsyncConnection, event: str, short: int) -> Any:
    """The row of a notice, held until the transaction ends."""
    return await _row_of(c, event, short, lock=True)


async def _row_of(c: AsyncConnection, event: str, short: int, *, lock: bool) -> Any:
    query = select(t.notice).where(t.notice.c.event == event, t.notice.c.short == short)
    row = (await c.execute(query.with_for_update() if lock else query)).one_or_none()
    if row is None:
        raise UnknownError(
            f"there is no notice {short} in event {event!r}",
            "short",
            "use the number at the end of the message",
        )
    return row


async def open_alarms(c: AsyncConnection, event: str) -> frozenset[str]:
    """Ids of the event's alarms that nobody has stood down, by notice or by entry."""
    e = t.entry.c
    stood_down = [
        load_entry(body).about or ""
        for body in await c.scalars(select(e.body).where(e.event == event, e.kind == Kind.STAND_DOWN.value))
    ]
    return still_open([m.notice for m in await made(c, event, None)], stood_down)


def still_open(notices: Iterable[Notice], stood_down: Iterable[str]) -> frozenset[str]:
    """Alarms told to somebody, less those whose stand-down was told or entered. Pure."""
    raised: set[str] = set()
    over = set(stood_down)
    for n in notices:
        if isinstance(n.values, AlarmValues):
            raised.add(n.values.alarm)
        elif isinstance(n.values, StandDownValues):
            over.add(n.values.alarm)
        elif isinstance(n.values, UnnamedHelpValues):
            (over if n.values.over else raised).add(n.values.call)
    return frozenset(raised - over)
