"""What a report changes for whoever sent it goes into the answer to it, and is not sent a minute later once more.

Only where a chat shows the answer to a person. The same report handed in again gets the same answer: whoever never saw
the first, as a server was killed in between, misses nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from server.api.ask import Ask
from server.api.snapshot import Picture
from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import reader_in
from server.facts.entry import Entry
from server.journal import Appended, Status
from server.watch.notice import Made, NoticeKind

__all__ = ["told_here"]


async def told_here(ask: Ask, picture: Picture, appended: Appended, made: Sequence[Made]) -> tuple[str, ...]:
    """The texts of the notices that the report has made for its sender, no longer to be sent otherwise."""
    entry, event = appended.entry, picture.event
    if not ask.caller.channel or ask.caller.person != entry.by:
        return ()
    again = appended.status is Status.SAME_AGAIN
    found = tuple(_for_sender(entry, picture.situation.made if again else made))
    if not again:
        await ask.parts.journal.told_in_answer(event.id, (m.short for m in found), ask.now)
    reader = reader_in(event, entry.by)
    return tuple(say_notice(m.notice, event, reader, ask.now).text for m in found)


def _for_sender(entry: Entry, made: Iterable[Made]) -> Iterable[Made]:
    for m in made:
        mine = m.notice.key.person == entry.by and entry.id in m.notice.facts
        if mine and m.notice.key.kind is NoticeKind.WINDOW_MOVED:
            yield m
