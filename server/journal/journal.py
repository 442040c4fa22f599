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
least once, twice only if marked, once in the quiet case. One chat gets one message per `spacing`: an alarm
by itself; else everything for it together, also what is still held (`hold_until`), to be sent as one message and reported
one by one. One that asks for an answer is not joined with another that does.

Updates. Stored under (channel, update id) before the channel is told; stored again, they count once. Claimed
for work with a lease like deliveries; one whose worker died comes again, so work on it must bear repeating
(keys make it so). Handed out as they were received, those of one batch by id: not every channel counts up.

Leases by name (who polls) hold until, not including, `now + ttl`; only the holder renews or gives back early.
A lease, or a claim of updates or deliveries, through a server that has died is free at once: what says that a server
lives is held by its process and freed by the system when it dies, whatever the clock says. One that hangs is known by the
signs of life it no longer gives (`sign_of_life`).

Judging takes no lock: a process that is stopped while it judges would silence all others. Whoever judges reads the notices
made, then the entries, and hands its verdict in with what it rests on (`add_judged`): it is kept if nothing has come in
about that runner since, else there is another go. A call for help waits for neither (`call_for_help`).

Servers on one PostgreSQL hear from each other what has changed (`hear`); what is not heard is found at the next tick.

Away. AwayError: the database is locked, full, read-only or not there; nothing was kept, and the call may be made again.

On restart: open (migrates), store what the channels kept, work off `next_updates` until none, then watch.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from functools import cached_property
from pathlib import Path

from sqlalchemy.ext.asyncio import AsyncConnection

from server.event.model import Event, Person
from server.facts.entry import Entry
from server.facts.passages import Passage
from server.journal import (
    blanking,
    copies,
    deliveries,
    entries,
    events,
    groups,
    inbox,
    notices,
    passages,
    people,
    pictures,
    retention,
)
from server.journal.announced import announce, hear
from server.journal.batches import Batches
from server.journal.directory import PeopleDoor
from server.journal.errors import AwayError
from server.journal.outbox import OutboxDoor
from server.journal.store import Store
from server.journal.values import (
    AnswerTaken,
    Appended,
    Blanked,
    Conflict,
    EventVersion,
    JournalHead,
    MadeKnown,
    NewUpdate,
    Outage,
    PassagesKept,
    Pulse,
    RawUpdate,
    Status,
    StoredEvent,
    Swept,
    VerdictBasis,
)
from server.watch.notice import Made, Notice

__all__ = ["Journal"]


class Journal(PeopleDoor, OutboxDoor):
    """The database as the other rooms see it; get one from `Journal.open`. People are in directory.py."""

    @classmethod
    async def open(cls, url: str, *, channels: Iterable[str] | None = None) -> Journal:
        """Open the database at `url` and bring its tables up to date; several servers may do so at once.

        `url`: 'sqlite+aiosqlite:///file.db' or 'postgresql+asyncpg://…' ('sqlite:///' and 'postgresql://' are
        taken as these). `channels`: those this installation can send over (others are never chosen); None = all.
        Raises TooNewError if a newer Stilepost wrote the database, JournalError for a url of another kind.
        """
        return cls(await Store.open(url, channels))

    async def close(self) -> None:
        """Close every connection."""
        await self._store.close()

    async def ping(self) -> None:
        """Return if the database answers; raise what it raises otherwise."""
        await self._store.ping()

    # Events ---------------------------------------------------------------------------------------------

    async def store_event(
        self,
        text: str,
        files: Mapping[str, bytes],
        event: Event,
        by: str,
        now: datetime,
        *,
        over: int | None = None,
    ) -> int:
        """Store a checked event file and the files it names; returns its version, counting from 1.

        The same text and files as the current version make no new one. People, parts, runners and points
        follow the file by their ids. RefusedError: a file that drops a point or runner with entries; one made from the
        version `over` that is not the current one any more. ClashError: a person id that another event uses for somebody
        with another name.
        """

        async def work(c: AsyncConnection) -> int:
            version = await events.store(c, text, files, event, by, now, over)
            await announce(c, self._store, (event.id,))
            return version

        return await self._store.writing(work)

    async def list_events(self) -> tuple[EventVersion, ...]:
        """The current version of every event, by id."""
        return await self._store.reading(lambda c: events.current(c))

    async def event_versions(self, event: str) -> tuple[EventVersion, ...]:
        """Every version of an event, oldest first; empty if there is no such event."""
        return await self._store.reading(lambda c: events.versions(c, event))

    async def load_event(self, event: str, version: int | None = None) -> StoredEvent:
        """The file text and files of a version (None: the current one). UnknownError if there is none."""
        return await self._store.reading(lambda c: events.load(c, event, version))

    async def points_with_check_ins(self, event: str) -> frozenset[str]:
        """Ids of the points that some entry names, which a new version may not drop."""
        return await self._store.reading(lambda c: events.points_named(c, event))

    async def first_report(self, event: str) -> datetime | None:
        """When the first report about a runner came in; None before any has."""
        return await self._store.reading(lambda c: entries.first_report(c, event))

    # Entries --------------------------------------------------------------------------------------------

    async def append(self, entry: Entry, *, timed: bool = True) -> Appended:
        """Append one entry. An empty `id` is filled with `entry_id(sender, key)`, which a sender can work out
        beforehand, so that a correction may name an entry still to come.

        Naive times, an empty sender or key are refused; an unknown event is UnknownError. Not `timed`: its sender gave no
        time, so that the same report handed in again, even at the same moment, differs by ours and is the same.
        """

        async def work(c: AsyncConnection) -> Appended:
            appended = await entries.append(c, entry, timed=timed)
            await announce(c, self._store, (entry.event,))
            return appended

        return await self._store.writing(work)

    async def append_all(self, given: Sequence[Entry], *, timed: bool = True) -> list[Appended]:
        """Append many entries of one event, all or none of them, as `append` does each; a thousand take as long as a few,
        and what others hand in meanwhile goes with them."""
        return await self._batches.append(given, timed) if given else []

    @cached_property
    def _batches(self) -> Batches:
        async def append(given: Sequence[Entry], timed: bool) -> list[Appended]:
            async def work(c: AsyncConnection) -> list[Appended]:
                appended = await entries.append_all(c, given, timed=timed)
                await announce(c, self._store, (e.event for e in given))
                return appended

            return await self._store.writing(work)

        return Batches(append)

    async def entries(self, event: str, since: int = 0, *, runner: str | None = None) -> list[Entry]:
        """The entries of an event with a number above `since`, in order of number; with `runner` only those about her
        and those about the race ('' = only these)."""
        return await self._store.reading(lambda c: entries.of_event(c, event, since, runner))

    async def entry(self, entry_id: str) -> Entry | None:
        """One entry by id."""
        return await self._store.reading(lambda c: entries.one(c, entry_id))

    async def head(self, event: str) -> JournalHead:
        """What names the present set of entries; UnknownError if there is no such event."""
        return await self._store.reading(lambda c: entries.head(c, event))

    async def conflicts(self, event: str) -> tuple[Conflict, ...]:
        """Reports whose key was already used for other content, oldest first."""
        return await self._store.reading(lambda c: entries.conflicts(c, event))

    async def keep_picture(
        self, event: str, entry: str | None, by: str, content: bytes, media_type: str, now: datetime
    ) -> str:
        """Keep a picture, perhaps of an entry; returns its id. The same bytes twice count once."""
        return await self._store.writing(
            lambda c: pictures.keep(c, event, entry, by, content, media_type, now)
        )

    async def picture(self, picture_id: str) -> tuple[bytes, str] | None:
        """A picture's bytes and media type; None if unknown or blanked."""
        return await self._store.reading(lambda c: pictures.one(c, picture_id))

    async def owns_picture(self, picture_id: str, event: str, person: str) -> bool:
        """Whether that person kept it, for that event."""
        async with self._store.read() as c:
            return await pictures.owns(c, picture_id, event, person)

    async def picture_of(self, picture_id: str) -> tuple[str, str | None, str] | None:
        """Event, entry and sender of a picture; None if unknown or blanked."""
        async with self._store.read() as c:
            return await pictures.of_entry(c, picture_id)

    async def keep_passages(self, event: str, given: Iterable[Passage], by: str) -> PassagesKept:
        """Keep when others came to points, all or none of them: of one bib at one point the last said counts, the same again
        changes nothing. UnknownError; RefusedError where they would be more than one event may have."""

        async def work(c: AsyncConnection) -> PassagesKept:
            kept = await passages.keep(c, event, given, by)
            await announce(c, self._store, (event,))
            return kept

        return await self._store.writing(work)

    async def passages(self, event: str) -> tuple[Passage, ...]:
        """When others came to points, by bib and point."""
        return await self._store.reading(lambda c: passages.since(c, event, 0))

    # Watch ----------------------------------------------------------------------------------------------

    async def pulse(
        self,
        event: str,
        since: JournalHead,
        known: MadeKnown | None,
        outages_since: datetime,
        now: datetime,
        version: int = 0,
    ) -> Pulse:
        """All that may have changed of an event since its entries up to `since`, the notices in `known` and its versions up
        to `version` were read, in one transaction: reading each by itself costs more than all of them. UnknownError if there
        is no such event."""
        here = self._installed()

        async def work(c: AsyncConnection) -> Pulse:
            head, newest, mark = await entries.state(c, event)
            whole = since.blanks != head.blanks
            number, read = (0, 0) if whole else (since.number, since.passages)
            later = await entries.of_event(c, event, number, None) if head.number != number else ()
            return Pulse(
                await events.versions(c, event) if newest != version else (),
                head,
                tuple(later),
                await notices.made_since(c, event, mark, known),
                await retention.outages(c, outages_since, now, here),
                await groups.of_event(c, event),
                await passages.since(c, event, read) if head.passages != read else (),
            )

        return await self._store.reading(work)

    async def made(self, event: str, runner: str | None = None) -> tuple[Made, ...]:
        """Every notice of an event (of one runner), in order of short number."""
        return await self._store.reading(lambda c: notices.made(c, event, runner))

    async def add_notices(self, owed: Sequence[Notice], now: datetime) -> tuple[Made, ...]:
        """Add notices with their first deliveries; those whose key exists are left alone. Returns the new."""
        return await self._store.writing(lambda c: deliveries.add_notices(c, owed, now, self._store.channels))

    async def add_judged(
        self, owed: Sequence[Notice], now: datetime, seen: VerdictBasis, *, anyhow: bool = False
    ) -> tuple[Made, ...] | None:
        """The same for a verdict, if nothing about its runner has come in since what it rests on; else None, and
        nothing is kept: judge again. `anyhow`: keep it all the same, as more comes in than can be judged."""
        if not owed:
            return ()

        async def work(c: AsyncConnection) -> tuple[Made, ...] | None:
            if await notices.overtaken(c, seen) and not anyhow:
                return None
            made = await deliveries.add_notices(c, owed, now, self._store.channels)
            await announce(c, self._store, (m.notice.key.event for m in made))
            return made

        return await self._store.writing(work)

    async def call_for_help(
        self, entry: Entry, owed: Sequence[Notice], now: datetime, *, timed: bool = True
    ) -> tuple[Appended, tuple[Made, ...]]:
        """Append a call for help and add what it owes at once, in one transaction that goes before all others of this
        process and waits for no lock of another's; AwayError within seconds where it can't be had. Nothing is added
        for a call whose key came before with other content."""

        async def work(c: AsyncConnection) -> tuple[Appended, tuple[Made, ...]]:
            appended = await entries.append(c, entry, timed=timed)
            await announce(c, self._store, (entry.event,))
            if appended.status is Status.CONFLICT:
                return appended, ()
            return appended, await deliveries.add_notices(c, owed, now, self._store.channels)

        return await self._store.writing(work, urgent=True)

    async def notice(self, event: str, short: int) -> Made:
        """The notice people know by this number. UnknownError if there is none."""
        return await self._store.reading(lambda c: notices.by_short(c, event, short))

    async def answer(
        self,
        event: str,
        short: int,
        person: str,
        words: str,
        at: datetime,
        entry: Entry | None = None,
        *,
        timed: bool = True,
    ) -> AnswerTaken:
        """Record that a person answered a notice (reached); the first answer counts, all are kept. What was
        still to be sent of it is overtaken. `entry` is appended in the same transaction, as by `append`."""

        async def work(c: AsyncConnection) -> AnswerTaken:
            if entry is not None:
                await entries.append(c, entry, timed=timed)
            await announce(c, self._store, (event,))
            return await deliveries.answer(c, event, short, person, words, at)

        return await self._store.writing(work)

    async def hear(self, changed: Callable[[str | None], None]) -> None:
        """Call `changed` with each event that another server on this PostgreSQL has changed, until cancelled; with None
        where that may have been missed. Returns at once on SQLite."""
        await hear(self._store, changed)

    async def told_in_answer(self, event: str, shorts: Iterable[int], now: datetime) -> None:
        """The answer to what a person said holds these notices: nothing of them is to be sent any more."""
        await self._store.writing(lambda c: deliveries.told_in_answer(c, event, tuple(shorts), now))

    async def overtake(self, event: str, shorts: Iterable[int], now: datetime) -> int:
        """Cancel what is still to be sent of these notices, as later facts have overtaken them; how many."""
        return await self._store.writing(lambda c: deliveries.overtake(c, event, tuple(shorts), now))

    # Inbox ----------------------------------------------------------------------------------------------

    async def store_updates(
        self, channel: str, updates: Iterable[NewUpdate | tuple[int, str]], received_at: datetime
    ) -> int:
        """Store raw updates (or id and body of one) and raise the channel's offset past them; how many were new."""
        new = tuple(x if isinstance(x, NewUpdate) else NewUpdate(*x) for x in updates)
        return await self._store.writing(lambda c: inbox.store(c, channel, new, received_at))

    async def offset(self, channel: str) -> int | None:
        """The id to ask the channel for next: one past the highest stored; None before the first."""
        return await self._store.reading(lambda c: inbox.offset(c, channel))

    async def next_updates(
        self,
        channel: str,
        now: datetime,
        limit: int = 20,
        lease: timedelta = timedelta(seconds=60),
        server: str | None = None,
    ) -> list[RawUpdate]:
        """Claim waiting updates for work, in the order in which they came, those of one batch by id; chats with one that is
        urgent first. None of a chat is handed out while an earlier one is in hand elsewhere. `server`: see `claim`."""

        async def work(c: AsyncConnection) -> list[RawUpdate]:
            gone = await retention.gone(c, inbox.claimed_through(channel), now, self._store)
            return await inbox.claim(c, inbox.Holder(channel, now, limit, lease, server, gone))

        return await self._store.writing(work)

    async def update_let_by(self, update: str) -> None:
        """What came after it from the same chat need not wait for it any more; it comes again when its lease is over."""
        await self._store.writing(lambda c: inbox.let_by(c, update))

    async def update_back(self, update: str, tries: int) -> None:
        """Free an update claimed for the `tries`th time, unless it has been claimed again since."""
        await self._store.writing(lambda c: inbox.give_back(c, update, tries))

    async def update_done(self, update: str, now: datetime, problem: str = "") -> None:
        """An update has been worked off; `problem` says why it could not be, if so, for people to look at."""
        await self._store.writing(lambda c: inbox.done(c, update, now, problem))

    async def waiting(self, channel: str | None = None) -> int:
        """How many updates are stored but not worked off."""
        return await self._store.reading(lambda c: inbox.waiting(c, channel))

    # Being up -------------------------------------------------------------------------------------------

    async def heartbeat(
        self,
        component: str,
        now: datetime,
        gap: timedelta = timedelta(minutes=2),
        *,
        caught_up: bool = False,
    ) -> Outage | None:
        """Say that a component works; `caught_up`: and that nothing waited there. If the last heartbeat is longer
        ago than `gap` (not: exactly as long), that time is recorded as an outage and returned. If it is to come, the
        clock has been put back: what waits for a moment by the old time waits no more."""
        return await self._store.writing(
            lambda c: retention.heartbeat(c, component, now, gap, caught_up=caught_up)
        )

    async def expect(self, component: str, now: datetime, gap: timedelta = timedelta(minutes=2)) -> None:
        """A component is to give heartbeats from now on: one that never does is down since then. Nothing changes
        for one that has given any."""
        await self._store.writing(lambda c: retention.expect(c, component, now, gap))

    async def outages(
        self, since: datetime, now: datetime, components: Iterable[str] | None = None
    ) -> tuple[Outage, ...]:
        """Outages that ended after `since` or have not ended, oldest first. Only a component that this
        installation has can be down now: a channel taken out of the settings is not, however long it is silent."""
        here = self._installed()
        wanted = None if components is None else frozenset(components)
        found = await self._store.reading(lambda c: retention.outages(c, since, now, here))
        return found if wanted is None else tuple(x for x in found if x.component in wanted)

    def _installed(self) -> frozenset[str] | None:
        channels = self._store.channels
        if channels is None:
            return None
        return frozenset({"server"}) | {f"{way}:{c}" for way in ("channel", "outgoing") for c in channels}

    async def last_heartbeats(self) -> Mapping[str, datetime]:
        """When each component last said that it works."""
        return await self._store.reading(lambda c: retention.last_heartbeats(c))

    async def server(self) -> str:
        """This server's id, under which it claims; others can tell whether it lives."""
        return await self._store.live()

    async def sign_of_life(self, now: datetime) -> None:
        """Say that this server neither has died nor hangs, and that the database can be written; AwayError, within
        seconds, if it can't or soon can't."""
        await self._store.live()
        await self._store.writing(lambda c: retention.sign_of_life(c, now, self._store), urgent=True)
        if not self._store.has_room():
            raise AwayError("full")

    async def take_lease(self, name: str, holder: str, now: datetime, ttl: timedelta) -> bool:
        """Take or renew a lease; False while another holds it. One whose server has died is free at once."""
        await self._store.live()
        return await self._store.writing(
            lambda c: retention.take_lease(c, name, holder, now, ttl, self._store)
        )

    async def listens_elsewhere(self, channel: str, now: datetime) -> bool:
        """Whether another server that runs holds the lease to listen at a channel, has found since it took it that
        nothing waited there, and has given signs of life since: then nothing waits that only we could read."""
        return await self._store.reading(
            lambda c: retention.listens(c, f"listen:{channel}", f"channel:{channel}", now, self._store)
        )

    async def channels_of(self, persons: Iterable[Person]) -> Mapping[str, tuple[str, ...]]:
        """By person id, the channels over which each can be reached, in the order in which they are tried."""
        return await self._store.reading(
            lambda c: people.channels_of(c, tuple(persons), self._store.channels)
        )

    async def give_back_lease(self, name: str, holder: str) -> None:
        """Give a lease back early; nothing happens if another holds it."""
        await self._store.writing(lambda c: retention.give_back_lease(c, name, holder))

    # Deletion and copies --------------------------------------------------------------------------------

    async def blank_person(
        self, person: str, now: datetime, rewrite: Callable[[str], str] | None = None
    ) -> Blanked:
        """Blank in place the positions, words and pictures of and by a person, in every event; forget how to
        reach them. `rewrite` takes them out of an event file's text; without it the texts are left, and said
        so. RefusedError while an alarm is open in an event where they have a part."""
        return await self._store.writing(lambda c: blanking.person(c, person, now, rewrite))

    async def blank_event(
        self, event: str, now: datetime, rewrite: Callable[[str], str] | None = None
    ) -> Blanked:
        """The same for everybody in an event; without `rewrite` its texts are emptied. Times and points stay.
        RefusedError while an alarm is open."""
        return await self._store.writing(lambda c: blanking.event(c, event, now, rewrite))

    async def sweep(self, now: datetime, rewrite: Callable[[str], str] | None = None) -> Swept:
        """Blank every event whose keep-by moment is reached; one with an open alarm waits. Raw updates worked
        off 30 days ago or more are emptied too."""
        return await self._store.writing(lambda c: blanking.sweep(c, now, rewrite))

    async def backup(self, path: Path) -> None:
        """Write a whole copy while everything runs: a database file on SQLite, `dump` lines elsewhere. The
        copy owes what the original owed at that moment. An existing file is refused."""
        await copies.backup(self._store, path)

    async def dump(self, path: Path) -> int:
        """Write everything as JSON lines that `restore` reads into either kind of database; rows written."""
        return await copies.dump(self._store, path)

    async def restore(self, path: Path) -> int:
        """Read a dump into this database, which must be empty (else RefusedError); rows read."""
        return await copies.restore(self._store, path)

    async def export_event(self, event: str, path: Path) -> int:
        """Write one event whole (versions, people, entries, notices, answers) as JSON lines; no secrets."""
        return await copies.export_event(self._store, event, path)

    async def import_event(self, path: Path, *, owing: bool = False) -> str:
        """Read an exported event in; returns its id. RefusedError if it is here already. People already here
        stay as they are. What is still to be sent is left to the old server, unless `owing` (a live move)."""
        return await copies.import_event(self._store, path, owing=owing)
