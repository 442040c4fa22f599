"""A start list put into a stored event: read, checked whole, and kept as a new version, or nothing of it."""

from __future__ import annotations

import asyncio
from collections.abc import Sequence
from dataclasses import dataclass

from server.api.ask import Ask
from server.api.building import BuildError, Built, build
from server.api.envelope import ApiError
from server.api.models import StartList
from server.api.replies import StartListStored
from server.conversation.telling.reader import reader_in
from server.drafting.document import Document, UnusualError
from server.drafting.start_list import Listed, listed_in, not_changed, read_start_list
from server.event import Problem, Severity, parse_event
from server.journal import StoredEvent
from server.sentences import sentence

__all__ = ["Prepared", "load", "prepare"]

SHOWN = 50
"""So many mistakes are told at once (own choice)."""


@dataclass(frozen=True, slots=True)
class Prepared:
    """The event with a list in it. `listed.problems`: what is wrong with the list; then there is nothing `built`."""

    listed: Listed
    built: Built | None


def prepare(stored: StoredEvent, text: str, file: str, language: str) -> Prepared:
    """An event as stored with a list put in; BuildError where the two do not go together. Takes seconds for a thousand."""
    event = parse_event(stored.text).event
    if event is None:
        raise BuildError(parse_event(stored.text).problems)
    try:
        rows, wrong = read_start_list(text, event, Document(stored.text).table("waves"), file)
        listed = Listed("", problems=tuple(wrong)) if wrong else listed_in(stored.text, rows, event, file)
    except UnusualError as error:
        listed = Listed("", problems=(not_changed(error, file),))
    if listed.problems:
        return Prepared(listed, None)
    return Prepared(listed, build(listed.text, stored.files, language=language))


async def load(ask: Ask) -> StartListStored:
    """POST …/start-list: the list in the event as a new version; the same again makes none."""
    journal, event = ask.parts.journal, ask.event
    language = reader_in(await ask.parts.pictures.event(event), ask.person).language
    stored, file = await journal.load_event(event), sentence(language, "start-list-file")
    try:
        prepared = await asyncio.to_thread(prepare, stored, ask.sent(StartList).csv, file, language)
    except BuildError as error:
        raise _refused([p for p in error.problems if p.severity is Severity.ERROR], language) from error
    listed, built = prepared.listed, prepared.built
    if built is None:
        raise _refused(listed.problems, language)
    version = await journal.store_event(
        listed.text, stored.files, built.event, ask.person, ask.now, over=stored.version
    )
    ask.parts.hub.changed(event)
    ask.parts.ticker.on_due(ask.now)
    return StartListStored(version, listed.added, listed.changed, listed.same, listed.not_listed)


def _refused(problems: Sequence[Problem], language: str) -> ApiError:
    """Every mistake in one answer, each with its line, column and remedy."""
    said = [p.in_language(language) for p in problems[:SHOWN]]
    if len(problems) > SHOWN:
        said.append(sentence(language, "start-list-more", count=len(problems) - SHOWN))
    return ApiError("invalid", "\n".join(said), "csv", sentence(language, "start-list-again"))
