"""A start list put into a stored event: read, checked whole, and kept as a new version, or nothing of it."""

from __future__ import annotations

import asyncio
from dataclasses import dataclass

from server.api.ask import Ask
from server.api.building import BuildError, Built, build
from server.api.envelope import ApiError
from server.api.models import StartList
from server.api.replies import StartListStored
from server.drafting.document import Document, UnusualError
from server.drafting.start_list import Listed, listed_in, not_changed, read_start_list
from server.event import Problem, Severity, parse_event
from server.journal import StoredEvent

__all__ = ["Prepared", "load", "prepare"]

SHOWN = 50
"""So many mistakes are told at once (own choice)."""
FILE = "start list"


@dataclass(frozen=True, slots=True)
class Prepared:
    """The event with a list in it. `listed.problems`: what is wrong with the list; then there is nothing `built`."""

    listed: Listed
    built: Built | None


def prepare(stored: StoredEvent, text: str, file: str = FILE) -> Prepared:
    """An event as stored with a list put in; BuildError where the two do not go together. Takes seconds for a thousand."""
    event = parse_event(stored.text).event
    if event is None:
        raise BuildError(parse_event(stored.text).problems)
    try:
        waves = Document(stored.text).table("waves")
    except UnusualError as error:
        return Prepared(_wrong(not_changed(error, file)), None)
    rows, problems = read_start_list(text, event, waves, file)
    if problems:
        return Prepared(_wrong(*problems), None)
    listed = listed_in(stored.text, rows, event, file)
    if listed.problems:
        return Prepared(listed, None)
    return Prepared(listed, build(listed.text, stored.files))


def _wrong(*problems: Problem) -> Listed:
    return Listed("", problems=problems)


async def load(ask: Ask) -> StartListStored:
    """POST …/start-list: the list in the event as a new version; the same again makes none."""
    journal, event = ask.parts.journal, ask.event
    stored = await journal.load_event(event)
    try:
        prepared = await asyncio.to_thread(prepare, stored, ask.sent(StartList).csv)
    except BuildError as error:
        raise _refused([p for p in error.problems if p.severity is Severity.ERROR]) from error
    listed, built = prepared.listed, prepared.built
    if built is None:
        raise _refused(listed.problems)
    version = await journal.store_event(
        listed.text, stored.files, built.event, ask.person, ask.now, over=stored.version
    )
    ask.parts.hub.changed(event)
    ask.parts.ticker.on_due(ask.now)
    return StartListStored(version, listed.added, listed.changed, listed.same, listed.not_listed)


def _refused(problems: list[Problem] | tuple[Problem, ...]) -> ApiError:
    """Every mistake in one answer, each with its line, column and remedy."""
    said = [str(p) for p in problems[:SHOWN]]
    more = len(problems) - len(said)
    what = "\n".join([*said, *([f"and {more} more"] if more else [])])
    return ApiError(
        "invalid",
        what,
        "csv",
        str(problems[0].remedy or "") if len(problems) == 1 else "Mend these rows, and send the list again.",
    )
