"""A call for help on its way: kept, and its alarm made, in one transaction that waits for nothing else.

No picture is taken, no forecast worked out, nobody else judged; no lock of another process and no queue of this one is
waited in. Whoever may wait (the caller's call back, crew elsewhere, the rest of the watch) is looked at afterwards.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime

import structlog

from server.api.envelope import ApiError
from server.api.fill_defaults import named_point
from server.api.parts import Parts
from server.event.model import Event
from server.facts.entry import Entry
from server.journal import Appended, entry_id
from server.log import broke
from server.watch.notice import Made, Notice

__all__ = ["CallOut", "put_out"]

log = structlog.get_logger("help")


@dataclass(frozen=True, slots=True)
class CallOut:
    """A call that is out: the entry as kept, the notices it made, and what had been made about its runner before."""

    event: Event
    appended: Appended
    made: tuple[Made, ...]
    before: tuple[Made, ...]


async def put_out(parts: Parts, call: Entry, now: datetime, *, timed: bool = True) -> CallOut:
    """Keep a call for help and make its alarm. ApiError 'not_found' for a runner the event does not have."""
    call = replace(call, id=call.id or entry_id(call.sender, call.key))
    situation = await parts.pictures.at_once(call, now)
    event = situation.event
    if call.runner is not None and call.runner not in {r.id for r in event.runners}:
        raise ApiError(
            "not_found", f"the event has no runner '{call.runner}'", "runner", "Send a runner's id."
        )
    placed = named_point(call, event)
    if placed is not call:
        call, situation = placed, await parts.pictures.at_once(placed, now)
    owed: tuple[Notice, ...] = ()
    try:
        owed = await parts.pictures.owed_at_once(situation, call.runner or "", now)
    except Exception as error:
        # Whatever about her can't be looked at so: the call is kept, and the look that follows makes its alarm.
        broke(log, "no alarm at once", error, event_id=call.event)
    appended, made = await parts.journal.call_for_help(call, owed, now, timed=timed)
    log.info("call for help", event_id=call.event, entry=appended.entry.id, notices=len(made))
    return CallOut(event, appended, made, situation.made)
