"""The only room that reads and writes the database: events, entries, people, notices, outbox, inbox.

In: values of the pure rooms (`Entry`, `Event`, `Notice`) and `now`. Out: the same values, and those of
`server.journal.values`. May import the pure rooms' values; never aiohttp, telegram, nor the clock.
Its door is `Journal` (server/journal/door.py), whose first page says what may be relied on.
"""

from server.journal.door import Journal
from server.journal.errors import (
    AwayError,
    ClashError,
    InvitationError,
    JournalError,
    RefusedError,
    TooManyGuessesError,
    TooNewError,
    UnknownError,
)
from server.journal.keys import content_key, entry_id
from server.journal.values import (
    Address,
    Answered,
    Appended,
    Attempt,
    Blanked,
    Conflict,
    CrewGroup,
    Delivery,
    DeliveryState,
    EventVersion,
    Head,
    Invitation,
    MadeKnown,
    NewUpdate,
    Outage,
    Outcome,
    PersonPart,
    RawUpdate,
    Seen,
    Spoken,
    Status,
    StoredEvent,
    Swept,
    TokenInfo,
)

__all__ = [
    "Address",
    "Answered",
    "Appended",
    "Attempt",
    "AwayError",
    "Blanked",
    "ClashError",
    "Conflict",
    "CrewGroup",
    "Delivery",
    "DeliveryState",
    "EventVersion",
    "Head",
    "Invitation",
    "InvitationError",
    "Journal",
    "JournalError",
    "MadeKnown",
    "NewUpdate",
    "Outage",
    "Outcome",
    "PersonPart",
    "RawUpdate",
    "RefusedError",
    "Seen",
    "Spoken",
    "Status",
    "StoredEvent",
    "Swept",
    "TokenInfo",
    "TooManyGuessesError",
    "TooNewError",
    "UnknownError",
    "content_key",
    "entry_id",
]
