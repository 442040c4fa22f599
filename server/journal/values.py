"""What the journal hands out, beside the values of the pure rooms: frozen, aware UTC times, no bare dicts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from server.event.model import Part
from server.facts.entry import Entry
from server.facts.passages import Passage
from server.watch.notice import Made, Notice

__all__ = [
    "Address",
    "AnswerTaken",
    "Appended",
    "Attempt",
    "Blanked",
    "Conflict",
    "CrewGroup",
    "Delivery",
    "DeliveryState",
    "EventVersion",
    "Invitation",
    "JournalHead",
    "MadeKnown",
    "NewUpdate",
    "Outage",
    "Outcome",
    "PassagesKept",
    "PersonPart",
    "Pulse",
    "RawUpdate",
    "Status",
    "StoredEvent",
    "Swept",
    "TokenInfo",
    "VerdictBasis",
]


class Status(StrEnum):
    """What became of an entry that was handed in. Only a conflict leaves the reporter something to do."""

    NOTED = "noted"
    SAME_AGAIN = "same again"
    CONFLICT = "conflict"


class DeliveryState(StrEnum):
    """Where one delivery stands. Claimable: queued, unknown, and attempting past its lease."""

    QUEUED = "queued"
    ATTEMPTING = "attempting"
    UNKNOWN = "unknown"
    SENT = "sent"
    FAILED = "failed"
    PERMANENT = "permanent"
    OVERTAKEN = "overtaken"


class Outcome(StrEnum):
    """What a channel says of one attempt; server/journal/outcomes.py holds the table of what follows."""

    SENT = "sent"
    NOT_SENT = "not sent"
    UNKNOWN = "unknown"
    LATER = "later"
    BLOCKED = "blocked"
    PERMANENT = "permanent"
    MOVED = "moved"
    WRONG_SETTINGS = "wrong settings"


@dataclass(frozen=True, slots=True)
class JournalHead:
    """Names the set of entries of an event: how many there are, and how often some were blanked.

    Its text is what caches and `RaceState.head` hold: same text, same entries. `passages`: how often others' passages
    have changed, which are no entries.
    """

    number: int
    blanks: int
    passages: int = 0

    def __str__(self) -> str:
        return f"{self.number}.{self.blanks}"


@dataclass(frozen=True, slots=True)
class VerdictBasis:
    """What a verdict about one runner ('' = about none) rests on: the entries up to number `entries`, and the notices
    up to short number `notices`, of the event."""

    event: str
    runner: str
    entries: int
    notices: int


@dataclass(frozen=True, slots=True)
class MadeKnown:
    """Every notice of an event, as read before; `mark` differs once something has become of one since."""

    mark: tuple[object, ...]
    made: tuple[Made, ...]


@dataclass(frozen=True, slots=True)
class Pulse:
    """What of an event may have changed since it was last read, all of one moment: its versions (none where the newest is
    known), entries above the number asked for (all of them where some were blanked since), the notices, outages, chats of
    the whole crew, and likewise the passages of others."""

    versions: tuple[EventVersion, ...]
    head: JournalHead
    entries: tuple[Entry, ...]
    made: MadeKnown
    outages: tuple[Outage, ...]
    groups: tuple[CrewGroup, ...]
    passages: tuple[Passage, ...] = ()


@dataclass(frozen=True, slots=True)
class PassagesKept:
    """Of passages handed in how many were new, how many changed what was known, how many were known."""

    added: int
    changed: int
    same: int


@dataclass(frozen=True, slots=True)
class Appended:
    """The entry as stored (on 'same again' and 'conflict': the first one under that key) and its number,
    counting from 1 within the event."""

    entry: Entry
    status: Status
    number: int


@dataclass(frozen=True, slots=True)
class Conflict:
    """A report under a key already used for other content: `kept` is the new one, `entry` the first's id."""

    entry: str
    kept: Entry


@dataclass(frozen=True, slots=True)
class StoredEvent:
    """One numbered version of an event file with the files it names."""

    event: str
    version: int
    text: str
    files: Mapping[str, bytes]
    by: str
    at: datetime


@dataclass(frozen=True, slots=True)
class EventVersion:
    """The line of one version in the list: number, who stored it, when."""

    event: str
    version: int
    name: str
    by: str
    at: datetime


@dataclass(frozen=True, slots=True)
class PersonPart:
    """A part of a person, with the event it is in."""

    event: str
    part: Part


@dataclass(frozen=True, slots=True)
class Address:
    """Where a person can be reached on a channel. `blocked_at` is set while the channel says never."""

    channel: str
    address: str
    person: str
    bound_at: datetime | None
    blocked_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class CrewGroup:
    """A chat of a whole crew. `id` begins with `watch.situation.GROUP` and stays when the chat moves."""

    id: str
    event: str
    channel: str
    address: str
    bound_by: str
    bound_at: datetime


@dataclass(frozen=True, slots=True)
class TokenInfo:
    """A valid token, without its secret. `person` is None for a service (a channel's or a tracker's)."""

    id: str
    person: str | None
    device: str
    scopes: frozenset[str]
    created_at: datetime
    expires_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Invitation:
    """What an invitation opens: shown before it is accepted, and to whoever made it. Never the code."""

    id: str
    person: str
    person_name: str
    event: str
    event_name: str
    parts: tuple[Part, ...]
    made_at: datetime
    expires_at: datetime
    used_at: datetime | None = None
    revoked_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Delivery:
    """One delivery of a notice over one channel, as claimed. Report it with its `tries` before `lease_until`.

    `possible_repeat`: an earlier attempt may have arrived, so say so in the text. `delayed`: at the claim the
    notice was past its use-by, so send the latest facts, marked delayed. `made` carries notice and number.
    """

    id: str
    channel: str
    address: str
    state: DeliveryState
    tries: int
    due: datetime
    lease_until: datetime | None
    possible_repeat: bool
    delayed: bool
    made: Made
    text: str = ""
    message_ref: str = ""
    detail: str = ""

    @property
    def notice(self) -> Notice:
        """The notice to be delivered."""
        return self.made.notice


@dataclass(frozen=True, slots=True)
class Attempt:
    """The record of one attempt of a delivery: kept for ever, whatever came after."""

    delivery: str
    number: int
    claimed_at: datetime
    claimed_by: str
    reported_at: datetime | None
    outcome: Outcome | None
    detail: str
    message_ref: str
    text: str


@dataclass(frozen=True, slots=True)
class AnswerTaken:
    """What an answer did: `first` if this was the answer that counts as reached."""

    made: Made
    first: bool


@dataclass(frozen=True, slots=True)
class NewUpdate:
    """An update to store. Updates of one `chat` ('' = of none) are worked off in their order; `urgent`: it sounds like a
    call for help."""

    update_id: int
    body: str
    chat: str = ""
    urgent: bool = False


@dataclass(frozen=True, slots=True)
class RawUpdate:
    """An update as a channel gave it, stored before it is confirmed there."""

    id: str
    channel: str
    update_id: int
    body: str
    received_at: datetime
    tries: int = 0


@dataclass(frozen=True, slots=True)
class Outage:
    """A time in which a component gave no heartbeat; `end` is None while it still gives none."""

    component: str
    start: datetime
    end: datetime | None


@dataclass(frozen=True, slots=True)
class Blanked:
    """What a deletion blanked. `texts_left`: event versions whose file text still names the person, because
    no way to rewrite it was handed in."""

    entries: int
    notices: int
    deliveries: int
    updates: int
    pictures: int
    texts_left: tuple[EventVersion, ...] = ()


@dataclass(frozen=True, slots=True)
class Swept:
    """What the keep-by sweep did: events blanked, and those that wait for an open alarm to be stood down."""

    blanked: tuple[str, ...]
    waiting: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Spoken:
    """What was spoken of with an address at a place ('' = between the two of us, else a group chat), as text. `version`
    counts how often it was kept; 0 = never."""

    channel: str
    address: str
    place: str
    version: int = 0
    body: str = ""
