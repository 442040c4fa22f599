"""Others' passages of points: one row a bib and point, the last said counts; read on from the change last read."""

from __future__ import annotations

from collections.abc import Iterable

from sqlalchemy import bindparam, delete, func, select, tuple_, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.facts.passages import Passage
from server.journal import events
from server.journal import tables as t
from server.journal.errors import RefusedError
from server.journal.store import insert
from server.journal.values import PassagesKept

__all__ = ["MOST", "forget", "keep", "since"]

MOST = 100_000
"""So many rows of one event are kept (own choice: three thousand runners at some thirty points)."""
_AT_ONCE = 400
_p, _event = t.passage.c, t.event.c
_KNOWN = select(_p.bib, _p.point, _p.at).where(
    _p.event == bindparam("which"), tuple_(_p.bib, _p.point).in_(bindparam("pairs", expanding=True))
)
_LATER = select(_p.bib, _p.point, _p.at).where(_p.event == bindparam("which"), _p.number > bindparam("since"))
_LATER = _LATER.order_by(_p.bib, _p.point)


async def keep(c: AsyncConnection, event: str, given: Iterable[Passage], by: str) -> PassagesKept:
    """See `Journal.keep_passages`."""
    row = await events.lock(c, event)
    said = {(p.bib, p.point): p for p in given}
    known = await _known(c, event, list(said))
    differ = [p for key, p in said.items() if known.get(key) != p.at]
    added = sum((p.bib, p.point) not in known for p in differ)
    have = await c.scalar(select(func.count()).select_from(t.passage).where(_p.event == event)) or 0
    if have + added > MOST:
        raise RefusedError(
            f"the event would have {have + added} passages, at most {MOST} are kept",
            "passages",
            "send those of points that matter, or of fewer runners; nothing of this was stored",
        )
    number = row.passages + 1
    for start in range(0, len(differ), _AT_ONCE):
        rows = [
            {"event": event, "bib": p.bib, "point": p.point, "at": p.at, "number": number, "by": by}
            for p in differ[start : start + _AT_ONCE]
        ]
        put = insert(c, t.passage)
        new = {"at": put.excluded.at, "number": put.excluded.number, "by": put.excluded.by}
        await c.execute(put.on_conflict_do_update(index_elements=["event", "bib", "point"], set_=new), rows)
    if differ:
        await c.execute(update(t.event).where(_event.id == event).values(passages=number))
    return PassagesKept(added, len(differ) - added, len(said) - len(differ))


async def _known(
    c: AsyncConnection, event: str, pairs: list[tuple[str, str]]
) -> dict[tuple[str, str], object]:
    found: dict[tuple[str, str], object] = {}
    for start in range(0, len(pairs), _AT_ONCE):
        which = {"which": event, "pairs": pairs[start : start + _AT_ONCE]}
        found |= {(r.bib, r.point): r.at for r in await c.execute(_KNOWN, which)}
    return found


async def since(c: AsyncConnection, event: str, number: int) -> tuple[Passage, ...]:
    """Those that changes after that number brought, taken-back ones with no time."""
    rows = await c.execute(_LATER, {"which": event, "since": number})
    return tuple(Passage(r.bib, r.point, r.at) for r in rows)


async def forget(c: AsyncConnection, event: str) -> None:
    """Delete those of an event: a bib is somebody's."""
    await c.execute(delete(t.passage).where(_p.event == event))
