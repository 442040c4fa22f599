"""Others' passages handed in: read row by row, kept by bib, and the forecasts that rest on them looked at anew."""

from __future__ import annotations

import asyncio
from datetime import datetime

from server.api.ask import Ask
from server.api.envelope import ApiError
from server.api.models import Passages
from server.api.replies import PassagesStored
from server.api.snapshot import Picture
from server.conversation.telling.reader import reader_in
from server.drafting.passages import Read, Row, of_csv, of_json, read_passages
from server.event import Problem
from server.sentences import sentence

__all__ = ["keep", "read_in"]

SHOWN = 50
"""So many rows that were not taken are told at once (own choice)."""


def read_in(picture: Picture, rows: tuple[Row, ...], now: datetime, file: str) -> Read:
    """Rows read for an event as it stands. Elapsed times count from when it did start, where all start together."""
    starts = {r.start for r in picture.state.runners}
    begin = next(iter(starts)) if len(starts) == 1 else picture.event.starts
    return read_passages(rows, picture.event, begin, now, file)


async def keep(ask: Ask) -> PassagesStored:
    """POST …/passages."""
    sent, picture = ask.sent(Passages), await ask.picture()
    language = reader_in(picture.event, ask.person).language
    file = sentence(language, "passages-file")
    if (sent.csv is None) == (sent.passages is None):
        raise ApiError(
            "invalid", "one of 'csv' and 'passages' is needed", "csv", "Send the one or the other."
        )
    rows = (
        of_json(sent.passages, file) if sent.csv is None else await asyncio.to_thread(of_csv, sent.csv, file)
    )
    if isinstance(rows, Problem):
        raise ApiError("invalid", rows.in_language(language), "csv" if sent.csv else "passages")
    read = await asyncio.to_thread(read_in, picture, rows, ask.now, file)
    kept = await ask.parts.journal.keep_passages(ask.event, read.taken, ask.person)
    if kept.added or kept.changed:
        ask.parts.hub.changed(ask.event)
        ask.parts.ticker.on_due(ask.now)
    why = tuple(p.in_language(language) for p in read.not_taken[:SHOWN])
    return PassagesStored(kept.added, kept.changed, kept.same, len(read.not_taken), why)
