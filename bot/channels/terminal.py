"""The terminal as a channel: one person types lines and reads messages, numbered buttons are pressed by
number.

Settings: `address` (whom the terminal is bound as; default 'terminal'), `language` of a stranger (default
the fallback). A line '@54.9,-2.6' shares a place. Everything else is text. It is for trying things out and for a
race office without a browser; nobody is woken by it.
"""

from __future__ import annotations

import asyncio
import json
import re
import sys
import uuid
from collections.abc import Awaitable, Callable
from datetime import datetime
from typing import TextIO

from bot.channels.base import (
    Delivery,
    Incoming,
    Outcome,
    RawUpdate,
    Reply,
    Sent,
    Settings,
    StoreUpdates,
)
from server.clock import Clock, SystemClock
from server.conversation.telling.message import Rows
from server.facts.entry import Fix

NAME = "terminal"
_PLACE = re.compile(r"^@\s*(-?\d+(?:\.\d+)?)\s*[, ]\s*(-?\d+(?:\.\d+)?)$")

ReadLine = Callable[[], Awaitable[str]]
"""The next line typed, with its line end; '' at the end of the input."""


async def _stdin_line() -> str:
    return await asyncio.to_thread(sys.stdin.readline)


class Terminal:
    """One person at one terminal."""

    def __init__(
        self,
        address: str = NAME,
        *,
        language: str = "",
        read_line: ReadLine = _stdin_line,
        out: TextIO | None = None,
        clock: Clock | None = None,
    ) -> None:
        self._address = address
        self._language = language
        self._read_line = read_line
        self._out = out or sys.stdout
        self._clock = clock or SystemClock()
        self._offered: list[str] = []

    @property
    def name(self) -> str:
        """'terminal'."""
        return NAME

    async def listen(self, store: StoreUpdates) -> None:
        """Hand over each line as it is typed, until the input ends. A line counts once it is stored."""
        while line := await self._read_line():
            if line.strip():
                await store((RawUpdate(uuid.uuid4().hex, self._body(line.strip())),))

    def _body(self, line: str) -> str:
        at = self._clock.now().isoformat()
        if line.isdecimal() and 1 <= int(line) <= len(self._offered):
            return json.dumps({"at": at, "button": self._offered[int(line) - 1]})
        return json.dumps({"at": at, "text": line})

    def read(self, update: RawUpdate) -> tuple[Incoming, ...]:
        """The line of an update. Its key is the update's id, so that a line read twice counts once."""
        said = json.loads(update.body)
        place = _PLACE.match(said.get("text", ""))
        return (
            Incoming(
                channel=NAME,
                address=self._address,
                sent_at=datetime.fromisoformat(said["at"]),
                message_key=update.id,
                text="" if place else said.get("text", ""),
                button=said.get("button", ""),
                fix=Fix(float(place[1]), float(place[2])) if place else None,
                language=self._language,
            ),
        )

    async def reply(self, to: Incoming, reply: Reply) -> Outcome:
        """Print the reply; one written elsewhere is not shown here."""
        if to.address != self._address:
            return Outcome(Sent.GONE, detail="nobody sits at this terminal under that address")
        return self._print(reply.text or reply.alt, reply.buttons)

    async def deliver(self, delivery: Delivery) -> Outcome:
        """Print a notice; the bell rings for one that is urgent. Other addresses are not here."""
        if delivery.address != self._address:
            return Outcome(Sent.GONE, detail="nobody sits at this terminal under that address")
        bell = "\a" if delivery.urgent else ""
        return self._print(bell + (delivery.text or delivery.alt), delivery.buttons)

    def _print(self, text: str, rows: Rows) -> Outcome:
        buttons = [button for row in rows for button in row]
        if buttons:
            self._offered = [button.data for button in buttons]
        labels = [f"  [{i}] {button.label}" for i, button in enumerate(buttons, 1)]
        try:
            self._out.write("\n".join([text, *labels, ""]) + "\n")
            self._out.flush()
        except (OSError, ValueError) as error:
            # A closed terminal takes nothing more; part of the text may have been shown.
            return Outcome(Sent.UNKNOWN, detail=type(error).__name__)
        return Outcome(Sent.ACCEPTED)


def make(settings: Settings) -> Terminal:
    """The channel from its settings."""
    return Terminal(settings.get("address", NAME), language=settings.get("language", ""))
