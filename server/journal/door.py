"""The door of the journal: what may be relied on, then the methods.

Who may call. Any number of servers and tasks may hold a `Journal` on one database at once. Every method is
one transaction: it returns only after its work is on the disk (SQLite: WAL, synchronous=FULL; PostgreSQL:
its default), and an exception means that nothing of it was kept. No method reads a clock: `now` is an argument,
aware. No method calls the network. A method that raises `JournalError` was understood and refused; any other
exception means the database itself failed, and the call may be made again.

Entries. Append-only. One entry per (sender, key): the same content again changes nothing and says 'same
again'; other content is kept beside it as a conflict, and said so, and is never folded. An entry answered
'noted' survives a killed process and a pulled plug. Entries of one event are numbered from 1 without holes,
in the order in which they were committed, so `since` misses nothing.

Notices. One row per key, whoever adds it and however often; the first stays. The first delivery is made in
the same transaction, on the person's first usable channel; somebody who has none is marked failed at once.
Short numbers count from 1 in each event. Reached means answered; `sent_at` only says a channel took it.

Deliveries. Whoever claims one holds it from `now` until, not including, `lease_until`; nobody else gets it
meanwhile. Claiming writes 'attempting' before anything is sent. A holder that dies leaves 'attempting': from
`lease_until` on its outcome is unknown, and the next claim gets it marked `possible_repeat`. A report by a
holder whose lease went to another is ignored unless it says 'sent', which is a fact. So a notice is sent at
least once, twice only if marked, once in the quiet case. One chat gets one message per `spacing`; news for one chat is claimed together, those
still held (`hold_until`) too, to be sent as one message and reported one by one.

Updates. Stored under (channel, update id) before the channel is told; stored again, they count once. Claimed
for work with a lease like deliveries; one whose worker died comes again, so work on it must bear repeating
(keys make it so). Handed out in the order of their update ids.

Leases by name (who polls) hold until, not including, `now + ttl`; only the holder renews or gives back early.
`runner_lock` is held by a live process and freed by the system when it dies, whatever the clock says.

On restart: open (migrates), store what the channels kept, work off `next_updates` until none, then watch.
"""

from __future__ import annotations

from collections.abc import AsyncIterator, Callable, Iterable, Mapping, Sequence
from contextlib import asynccontextmanager
from datetime import datetime, timedelta
from pathlib import Path

from server.event.model import Event, Person
from server.facts.entry import Entry
from server.journal.values import (
    Address,
    Answered,
    Appended,
    Attempt,
    Blanked,
    Conflict,
    Delivery,
    EventVersion,
    Head,
    Invitation,
    Outage,
    Outcome,
    PersonPart,
    RawUpdate,
    StoredEvent,
    Swept,
    TokenInfo,
)
from server.watch.notice import Made, Notice

__all__ = ["Journal"]


class Journal:
    """The database as the other rooms see it; get one from `Journal.open`."""

    def __init__(self, store: object) -> None:
        self._store = store

    @classmethod
    async def open(cls, url: str, *, channels: Iterable[str] | None = None) -> Journal:
        """Open the database at `url` and bring its tables up to date; several servers may do so at once.

        `url`: 'sqlite+aiosqlite:///file.db' or 'postgresql+asyncpg://…' ('sqlite:///' and 'postgresql://' are
        taken as these). `channels`: those this installation can send over (others are never chosen); None = all.
        Raises TooNewError if a newer Stilepost wrote the database, JournalError for a url of another kind.
        """
        raise NotImplementedError("being built; the signature stands")

    async def close(self) -> None:
        """Close every connection."""
        raise NotImplementedError("being built; the signature stands")

    async def ping(self) -> None:
        """Return if the database answers; raise what it raises otherwise."""
        raise NotImplementedError("being built; the signature stands")

    async def store_event(
        self, text: str, files: Mapping[str, bytes], event: Event, by: str, now: datetime
    ) -> int:
        """Store a checked event file and the files it names; returns its version, counting from 1.

        The same text and files as the current version make no new one. People, parts, runners and points
        follow the file by their ids. RefusedError: a file that drops a point or runner with entries. ClashError:
        a person id that another event uses for somebody with another name.
        """
        raise NotImplementedError("being built; the signature stands")

    async def list_events(self) -> tuple[EventVersion, ...]:
        """The current version of every event, by id."""
        raise NotImplementedError("being built; the signature stands")

    async def event_versions(self, event: str) -> tuple[EventVersion, ...]:
        """Every version of an event, oldest first; empty if there is no such event."""
        raise NotImplementedError("being built; the signature stands")

    async def load_event(self, event: str, version: int | None = None) -> StoredEvent:
        """The file text and files of a version (None: the current one). UnknownError if there is none."""
        raise NotImplementedError("being built; the signature stands")

    async def points_with_check_ins(self, event: str) -> frozenset[str]:
        """Ids of the points that some entry names, which a new version may not drop."""
        raise NotImplementedError("being built; the signature stands")

    async def append(self, entry: Entry) -> Appended:
        """Append one entry. An empty `id` is filled with `entry_id(sender, key)`, which a sender can work out
        beforehand, so that a correction may name an entry still to come.

        Naive times, an empty sender or key are refused; an unknown event is UnknownError.
        """
        raise NotImplementedError("being built; the signature stands")

    async def entries(self, event: str, since: int = 0) -> list[Entry]:
        """The entries of an event with a number above `since`, in order of number."""
        raise NotImplementedError("being built; the signature stands")

    async def entry(self, entry_id: str) -> Entry | None:
        """One entry by id."""
        raise NotImplementedError("being built; the signature stands")

    async def head(self, event: str) -> Head:
        """What names the present set of entries; UnknownError if there is no such event."""
        raise NotImplementedError("being built; the signature stands")

    async def conflicts(self, event: str) -> tuple[Conflict, ...]:
        """Reports whose key was already used for other content, oldest first."""
        raise NotImplementedError("being built; the signature stands")

    async def keep_picture(
        self, event: str, entry: str | None, by: str, content: bytes, media_type: str, now: datetime
    ) -> str:
        """Keep a picture, perhaps of an entry; returns its id. The same bytes twice count once."""
        raise NotImplementedError("being built; the signature stands")

    async def picture(self, picture_id: str) -> tuple[bytes, str] | None:
        """A picture's bytes and media type; None if unknown or blanked."""
        raise NotImplementedError("being built; the signature stands")

    async def person(self, person: str) -> Person | None:
        """A person as last loaded."""
        raise NotImplementedError("being built; the signature stands")

    async def parts(self, person: str) -> tuple[PersonPart, ...]:
        """Every part of a person in every event."""
        raise NotImplementedError("being built; the signature stands")

    async def person_at(self, channel: str, address: str) -> str | None:
        """Whose address this is; None for a stranger."""
        raise NotImplementedError("being built; the signature stands")

    async def addresses(self, person: str) -> tuple[Address, ...]:
        """Where a person can be reached, in the order in which to try; blocked ones last."""
        raise NotImplementedError("being built; the signature stands")

    async def bind(self, person: str, channel: str, address: str, now: datetime) -> None:
        """Bind an address to a person and call it usable; also when a browser session begins (channel 'web').

        Notices the person could not be given and that are still of use are queued there. ClashError: it is bound
        to somebody else.
        """
        raise NotImplementedError("being built; the signature stands")

    async def unbind(self, channel: str, address: str) -> None:
        """Forget an address (the person left, a browser session ended)."""
        raise NotImplementedError("being built; the signature stands")

    async def heard_from(self, channel: str, address: str) -> None:
        """A message came from there, so it is no longer blocked."""
        raise NotImplementedError("being built; the signature stands")

    async def issue_token(
        self,
        person: str | None,
        device: str,
        scopes: Iterable[str],
        now: datetime,
        expires_at: datetime | None = None,
    ) -> str:
        """Make a token; returns its secret, which is stored hashed only and cannot be shown again."""
        raise NotImplementedError("being built; the signature stands")

    async def check_token(self, secret: str, now: datetime) -> TokenInfo | None:
        """Whose token this is; None if unknown, revoked, or expired (from `expires_at` on)."""
        raise NotImplementedError("being built; the signature stands")

    async def tokens(self, person: str | None = None) -> tuple[TokenInfo, ...]:
        """Tokens not revoked, of one person or all."""
        raise NotImplementedError("being built; the signature stands")

    async def revoke_token(self, token_id: str, now: datetime) -> bool:
        """Revoke a token by id; False if it was not valid before."""
        raise NotImplementedError("being built; the signature stands")

    async def invite(self, person: str, event: str, by: str, now: datetime, ttl: timedelta) -> str:
        """Make a one-use code for a person in an event, good until (not including) now + ttl; any earlier
        unused one of theirs is revoked. 12 characters, also fit for a start link; stored hashed only."""
        raise NotImplementedError("being built; the signature stands")

    async def invitations(self, event: str) -> tuple[Invitation, ...]:
        """Every invitation to an event, newest first."""
        raise NotImplementedError("being built; the signature stands")

    async def preview(self, code: str, guesser: str, now: datetime) -> Invitation:
        """What a code opens, without using it. `guesser` names whoever asks (channel and address, or IP) for
        the limit of 5 wrong codes in 15 minutes. Raises InvitationError, TooManyGuessesError."""
        raise NotImplementedError("being built; the signature stands")

    async def redeem(self, code: str, channel: str, address: str, guesser: str, now: datetime) -> Invitation:
        """Use a code up: bind the address to the person it is for. Raises as `preview`, or ClashError."""
        raise NotImplementedError("being built; the signature stands")

    async def revoke_invitation(self, invitation_id: str, now: datetime) -> bool:
        """Revoke an unused invitation; False if it was used, revoked or unknown."""
        raise NotImplementedError("being built; the signature stands")

    @asynccontextmanager
    async def runner_lock(self, event: str, runner: str) -> AsyncIterator[None]:
        """Hold the right to evaluate one runner, among all servers: read `made`, evaluate, `add_notices`
        inside. Not re-entrant."""
        raise NotImplementedError("being built; the signature stands")

    async def made(self, event: str, runner: str | None = None) -> tuple[Made, ...]:
        """Every notice of an event (of one runner), in order of short number."""
        raise NotImplementedError("being built; the signature stands")

    async def add_notices(self, owed: Sequence[Notice], now: datetime) -> tuple[Made, ...]:
        """Add notices with their first deliveries; those whose key exists are left alone. Returns the new."""
        raise NotImplementedError("being built; the signature stands")

    async def notice(self, event: str, short: int) -> Made:
        """The notice people know by this number. UnknownError if there is none."""
        raise NotImplementedError("being built; the signature stands")

    async def answer(
        self, event: str, short: int, person: str, words: str, at: datetime, entry: Entry | None = None
    ) -> Answered:
        """Record that a person answered a notice (reached); the first answer counts, all are kept. What was
        still to be sent of it is overtaken. `entry` is appended in the same transaction."""
        raise NotImplementedError("being built; the signature stands")

    async def overtake(self, event: str, shorts: Iterable[int], now: datetime) -> int:
        """Cancel what is still to be sent of these notices, as later facts have overtaken them; how many."""
        raise NotImplementedError("being built; the signature stands")

    async def claim(
        self,
        channels: Iterable[str],
        now: datetime,
        limit: int = 20,
        lease: timedelta = timedelta(seconds=60),
        holder: str = "",
        spacing: timedelta = timedelta(seconds=1),
    ) -> list[Delivery]:
        """Claim deliveries due on these channels: alarms first, then by due time, one per chat per `spacing`.

        Of several past their use-by for one person and runner only the newest is handed out (`delayed`), the
        others are overtaken; alarms never are. News for one chat comes together (see above).
        """
        raise NotImplementedError("being built; the signature stands")

    async def keep_text(self, delivery: str, tries: int, text: str) -> None:
        """Keep the text about to be sent by this attempt, so that it is known even if the outcome is not."""
        raise NotImplementedError("being built; the signature stands")

    async def report(
        self,
        delivery: str,
        outcome: Outcome,
        now: datetime,
        *,
        tries: int | None = None,
        detail: str = "",
        message_ref: str = "",
        text: str | None = None,
        retry_after: timedelta | None = None,
        moved_to: str | None = None,
    ) -> bool:
        """Record the outcome of an attempt and do what outcomes.py says follows. `tries` as claimed; False if
        the delivery has meanwhile gone to another holder and this report changed nothing."""
        raise NotImplementedError("being built; the signature stands")

    async def try_next_channels(self, now: datetime, silent_for: timedelta) -> int:
        """Queue on the person's next channel what is needed an answer to, or not sent, for `silent_for` (from
        then on); returns how many were queued. Harmless to call often."""
        raise NotImplementedError("being built; the signature stands")

    async def deliveries(self, event: str, short: int | None = None) -> tuple[Delivery, ...]:
        """Every delivery of an event (of one notice), oldest first."""
        raise NotImplementedError("being built; the signature stands")

    async def attempts(self, event: str, short: int) -> tuple[Attempt, ...]:
        """Every attempt to deliver a notice, oldest first."""
        raise NotImplementedError("being built; the signature stands")

    async def next_due(self, channels: Iterable[str]) -> datetime | None:
        """When the next delivery on these channels is due or its lease ends; None if nothing waits."""
        raise NotImplementedError("being built; the signature stands")

    async def store_updates(
        self, channel: str, updates: Iterable[tuple[int, str]], received_at: datetime
    ) -> int:
        """Store raw updates (id, body) and raise the channel's offset past them; how many were new."""
        raise NotImplementedError("being built; the signature stands")

    async def offset(self, channel: str) -> int | None:
        """The id to ask the channel for next: one past the highest stored; None before the first."""
        raise NotImplementedError("being built; the signature stands")

    async def next_updates(
        self, channel: str, now: datetime, limit: int = 20, lease: timedelta = timedelta(seconds=60)
    ) -> list[RawUpdate]:
        """Claim waiting updates for work, in order of id."""
        raise NotImplementedError("being built; the signature stands")

    async def update_done(self, update: str, now: datetime, problem: str = "") -> None:
        """An update has been worked off; `problem` says why it could not be, if so, for people to look at."""
        raise NotImplementedError("being built; the signature stands")

    async def waiting(self, channel: str | None = None) -> int:
        """How many updates are stored but not worked off."""
        raise NotImplementedError("being built; the signature stands")

    async def heartbeat(
        self, component: str, now: datetime, gap: timedelta = timedelta(minutes=2)
    ) -> Outage | None:
        """Say that a component works. If the last heartbeat is longer ago than `gap` (not: exactly as long),
        that time is recorded as an outage and returned."""
        raise NotImplementedError("being built; the signature stands")

    async def outages(
        self, since: datetime, now: datetime, components: Iterable[str] | None = None
    ) -> tuple[Outage, ...]:
        """Outages that ended after `since` or have not ended, oldest first."""
        raise NotImplementedError("being built; the signature stands")

    async def last_heartbeats(self) -> Mapping[str, datetime]:
        """When each component last said that it works."""
        raise NotImplementedError("being built; the signature stands")

    async def take_lease(self, name: str, holder: str, now: datetime, ttl: timedelta) -> bool:
        """Take or renew a lease; False while another holds it."""
        raise NotImplementedError("being built; the signature stands")

    async def give_back_lease(self, name: str, holder: str) -> None:
        """Give a lease back early; nothing happens if another holds it."""
        raise NotImplementedError("being built; the signature stands")

    async def blank_person(
        self, person: str, now: datetime, rewrite: Callable[[str], str] | None = None
    ) -> Blanked:
        """Blank in place the positions, words and pictures of and by a person, in every event; forget how to
        reach them. `rewrite` takes them out of an event file's text; without it the texts are left, and said
        so. RefusedError while an alarm is open in an event where they have a part."""
        raise NotImplementedError("being built; the signature stands")

    async def blank_event(
        self, event: str, now: datetime, rewrite: Callable[[str], str] | None = None
    ) -> Blanked:
        """The same for everybody in an event; without `rewrite` its texts are emptied. Times and points stay.
        RefusedError while an alarm is open."""
        raise NotImplementedError("being built; the signature stands")

    async def sweep(self, now: datetime, rewrite: Callable[[str], str] | None = None) -> Swept:
        """Blank every event whose keep-by moment is reached; one with an open alarm waits."""
        raise NotImplementedError("being built; the signature stands")

    async def backup(self, path: Path) -> None:
        """Write a whole copy while everything runs: a database file on SQLite, `dump` lines elsewhere. The
        copy owes what the original owed at that moment. An existing file is refused."""
        raise NotImplementedError("being built; the signature stands")

    async def dump(self, path: Path) -> int:
        """Write everything as JSON lines that `restore` reads into either kind of database; rows written."""
        raise NotImplementedError("being built; the signature stands")

    async def restore(self, path: Path) -> int:
        """Read a dump into this database, which must be empty (else RefusedError); rows read."""
        raise NotImplementedError("being built; the signature stands")

    async def export_event(self, event: str, path: Path) -> int:
        """Write one event whole (versions, people, entries, notices, answers) as JSON lines; no secrets."""
        raise NotImplementedError("being built; the signature stands")

    async def import_event(self, path: Path) -> str:
        """Read an exported event in; returns its id. RefusedError if it is here already. People already here stay
        as they are."""
        raise NotImplementedError("being built; the signature stands")
