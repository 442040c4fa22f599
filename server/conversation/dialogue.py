"""What is remembered of one address between two messages. Losing it is harmless: people are asked again."""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass, field
from datetime import datetime

from server.conversation.understanding import Asked, Choice, Need, Report
from server.conversation.values import Incoming


@dataclass(frozen=True, slots=True)
class Handed:
    """A report this address handed in: its entry's id, when, about what, and from
    which message, for undo and correction. `also` is the entry of what it said besides of how she is,
    `open_notices` what waited for an answer of theirs at that time."""

    entry: str
    at: datetime
    event: str
    report: Report
    unconfirmed: bool
    message: str = ""
    also: str = ""
    open_notices: tuple[int, ...] = ()


@dataclass(slots=True)
class Memory:
    """One address: the event (`event_at`: when it was named) and question last spoken of, what was offered,
    what was handed in, the buttons of choices pressed lately. `added`: the words of a change that was looked at, as a button
    has no room for them. `danger`: the runner of whom it was asked whether she is in
    danger."""

    event: str | None = None
    event_at: datetime | None = None
    last: Asked | None = None
    last_at: datetime | None = None
    need: Need | None = None
    choices: tuple[Choice, ...] = ()
    events_offered: tuple[str, ...] = ()
    waiting: Incoming | None = None
    pending: Report | None = None
    danger: str | None = None
    code: str = ""
    added: tuple[str, ...] = ()
    handed: list[Handed] = field(default_factory=list)
    picked: deque[str] = field(default_factory=lambda: deque(maxlen=20))

    def speaks_in(self, event: str | None, now: datetime) -> None:
        """What follows within a short while is about that event too; None where it was about several."""
        if event is not None:
            self.event = event
        self.event_at = now if event is not None else None

    def forget_offers(self) -> None:
        """What was offered is over once something else is said."""
        self.need, self.choices, self.events_offered, self.pending, self.danger = None, (), (), None, None
