"""Kills a real `stilepost serve` at random moments while people report and are told, and counts what that cost.

Run `.venv/bin/python -m tests.whole.kills --kills 200 --database sqlite` (or `postgresql`, started from a wheel). The
server runs with its Telegram bot in its own process, against a stand-in Bot API that outlives it. All the while race
control sends news by HTTP, each of which is owed to five people, and Ana writes how she finds the runner. Moments:

- `any`: whenever; `starting`: while the server starts, migrates, catches up;
- `stored`: a report is in the database and not yet answered, nor anybody told;
- `noted`: the answer 'noted' has just come, the next tick has not;
- `sent`: Telegram has just taken a message, our record of that is not yet written;
- `fetched`: Telegram has just handed out updates that we have not yet stored.

Printed: reports acknowledged and lost, updates Telegram handed over and lost, notices owed (what a server that nobody
kills owes for the same reports) and forgotten or never sent, and messages that came twice: marked as such or not.
Leases of the dead and the minute for which news is held are not waited for: their ends are moved up in the database,
for half of the kills while nothing runs, so that both sides of a lease are tried.
"""

from __future__ import annotations

import argparse
import asyncio
import json
import os
import random
import re
import shutil
import signal
import sys
import tempfile
import time
from collections import Counter
from collections.abc import AsyncIterator, Iterator, Sequence
from contextlib import asynccontextmanager, contextmanager, suppress
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import aiohttp
from aiohttp import web
from sqlalchemy import delete, update

from server.api import auth
from server.api.building import build
from server.app import Options, make_parts
from server.clock import SteppedClock
from server.facts.entry import Entry, Kind, Source
from server.journal import Journal
from server.journal import tables as t
from server.settings import Settings
from server.watch.notice import NoticeKind
from tests.channels.standin import TOKEN, StandIn
from tests.conftest import Postgres
from tests.whole import hill
from tests.whole.forks import Running, Servers, answering, free_port
from tests.whole.hill import EVENT, RUNNER

MOMENTS = ("any", "starting", "stored", "noted", "sent", "fetched")
CHATS = {"maren": 101, "ana": 102, "jonas": 103, "ines": 104, "vera": 105, "office": 106}
TOLD_OF_RACE = ("maren", "ana", "jonas", "ines", "vera")
BEFORE = "before the server"
WAIT_S = 3.0
LOOKS_WITHIN_S = 180.0
STUCK_S = 240.0
REPEAT = "may be a repeat"
LIVES_S = 2.0


@dataclass(slots=True)
class Tally:
    """What a run of kills cost."""

    kills: int = 0
    moments: Counter[str] = field(default_factory=Counter)
    noted: int = 0
    noted_lost: int = 0
    updates: int = 0
    updates_lost: int = 0
    owed: int = 0
    forgotten: int = 0
    never_sent: int = 0
    marked: int = 0
    unmarked: int = 0
    answers_again: int = 0
    took_s: float = 0.0

    @property
    def clean(self) -> bool:
        """Whether nothing was lost or forgotten, and nothing came twice without saying so."""
        return not (self.noted_lost + self.updates_lost + self.forgotten + self.never_sent + self.unmarked)

    def __str__(self) -> str:
        moments = ", ".join(f"{name} {n}" for name, n in sorted(self.moments.items()))
        return (
            f"{self.kills} kills in {self.took_s:.0f} s ({moments})\n"
            f"reports acknowledged: {self.noted}, lost: {self.noted_lost}\n"
            f"Telegram updates: {self.updates}, lost: {self.updates_lost}\n"
            f"notices owed: {self.owed}, forgotten: {self.forgotten}, made but never sent: {self.never_sent}\n"
            f"came again: {self.marked} marked, {self.unmarked} unmarked; "
            f"answers given again: {self.answers_again}"
        )


class Phones(StandIn):
    """The stand-in Bot API, which can have somebody killed just after it has done something."""

    def __init__(self, chance: random.Random) -> None:
        super().__init__()
        self._chance = chance
        self.armed = ""
        self.victim = 0
        self.fired = asyncio.Event()

    def arm(self, moment: str, victim: int) -> None:
        """Kill at the next such moment."""
        self.armed, self.victim = moment, victim
        self.fired.clear()

    def strike(self, moment: str, most_s: float) -> None:
        """That moment has come: kill within so many seconds, if it was asked for."""
        if self.armed == moment:
            self.armed = ""
            asyncio.get_running_loop().call_later(self._chance.uniform(0.0, most_s), self._kill)

    def _kill(self) -> None:
        with suppress(ProcessLookupError):
            os.kill(self.victim, signal.SIGKILL)
        self.fired.set()

    def _carry_out(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> Any:
        result = super()._carry_out(method, params, files)
        if method == "sendMessage":
            self.strike("sent", 0.006)
        return result

    async def _get_updates(self, request: web.Request, params: dict[str, Any]) -> web.StreamResponse:
        answer = await super()._get_updates(request, params)
        if isinstance(answer, web.Response) and json.loads(answer.text or "{}").get("result"):
            self.strike("fetched", 0.008)
        return answer


@dataclass(slots=True, repr=False)
class Hunt:
    """A race under way, people who report, and a server that is killed again and again."""

    database: str
    journal: Journal
    phones: Phones
    servers: Servers
    log: Path
    session: aiohttp.ClientSession
    token: str
    chance: random.Random
    port: int = field(default_factory=free_port)
    noted: set[str] = field(default_factory=set)
    said: set[int] = field(default_factory=set)
    tally: Tally = field(default_factory=Tally)
    _allowed: int = 1
    _over: bool = False

    # The server ----------------------------------------------------------------------------------------

    async def start(self, *, beside: bool = False) -> Running:
        """Start one, without waiting until it answers: in place of a dead one, or beside one that lives."""
        if not beside:
            await _listen_lease_over(self.journal)
        return self.servers.start(
            self.database,
            free_port() if beside else self.port,
            self.log,
            STILEPOST_TELEGRAM_TOKEN=TOKEN,
            STILEPOST_TELEGRAM_BASE_URL=self.phones.base_url,
            STILEPOST_TICK_SECONDS_MAX="2",
            STILEPOST_LOG_LEVEL="warning",
        )

    async def life(self, moment: str) -> None:
        """One life of the server, which ends at such a moment or soon after."""
        self._allowed += 1
        server = await self.start()
        if moment == "starting":
            await asyncio.sleep(self.chance.uniform(0.0, 0.7))
        else:
            await answering(self.session, server)
            # Now and then it gets as far as to have read what waited, and to tell people.
            await asyncio.sleep(self.chance.choice((0.0, self.chance.uniform(0.0, LIVES_S))))
            self.phones.arm(moment, server.pid)
            with suppress(TimeoutError):
                async with asyncio.timeout(WAIT_S):
                    await self._until(moment)
        self.phones.armed = ""
        self.servers.kill(server)
        self.tally.kills += 1
        self.tally.moments[moment] += 1
        if self.chance.random() < 0.5:
            await self.end_leases()

    async def end_leases(self, *, listening: bool = False) -> None:
        """As if every lease that a dead process left had run out; with `listening` also that of the listener."""
        await _leases_over(self.journal)
        if listening:
            await _listen_lease_over(self.journal)

    async def release(self) -> None:
        """As if the minute had gone by for which news waits for company."""
        await _holds_over(self.journal)

    async def _until(self, moment: str) -> None:
        await _holds_over(self.journal)
        if moment == "any":
            await asyncio.sleep(self.chance.uniform(0.0, LIVES_S))
        elif moment == "stored":
            before = (await self.journal.head(EVENT)).number
            while (await self.journal.head(EVENT)).number == before:  # noqa: ASYNC110 - in another process
                await asyncio.sleep(0.001)
        else:
            await self.phones.fired.wait()

    # People --------------------------------------------------------------------------------------------

    async def race_control(self) -> None:
        """One piece of news after the other, each sent with its key until it is answered."""
        number = 0
        while not self._over or number < self._allowed:
            if number >= self._allowed:
                await asyncio.sleep(0.02)
                continue
            number += 1
            await self._send_news(number)
            await asyncio.sleep(self.chance.uniform(0.0, 0.25))

    async def _send_news(self, number: int) -> None:
        while True:
            with suppress(aiohttp.ClientError, OSError, ValueError):
                if await self.tell(f"http://127.0.0.1:{self.port}", number) in ("noted", "same again"):
                    self.noted.add(f"news-{number}")
                    self.phones.strike("noted", 0.004)
                    return
            await asyncio.sleep(0.02)

    async def tell(self, url: str, number: int) -> str:
        """One piece of news to the server there: what it answers ('' for an error)."""
        body = {"kind": "rerouted", "words": f"use the gate marked <{number}>", "key": f"news-{number}"}
        headers = {"Authorization": f"Bearer {self.token}"}
        async with self.session.post(f"{url}/v1/events/{EVENT}/race", json=body, headers=headers) as reply:
            found = await reply.json()
            return str(found["data"]["status"]) if reply.status == 200 else ""

    async def writes(self, number: int) -> None:
        """Ana writes how she finds the runner."""
        now = int(datetime.now(UTC).timestamp())
        await self.phones.say(f"eating ok, feet sore x{number}", user=CHATS["ana"], date=now)

    async def ana(self) -> None:
        """Ana writes again and again, whether or not anybody listens."""
        number = 0
        while not self._over or number < self._allowed:
            if number >= self._allowed:
                await asyncio.sleep(0.02)
                continue
            number += 1
            await self.writes(number)
            self.said.add(number)
            await asyncio.sleep(self.chance.uniform(0.0, 0.5))

    # The whole run -------------------------------------------------------------------------------------

    async def run(self, moments: Sequence[str]) -> Tally:
        """Kill at each of these moments, let the last life bring everything to its end, count."""
        began = time.monotonic()
        people = [asyncio.create_task(self.race_control()), asyncio.create_task(self.ana())]
        for moment in moments:
            await self.life(moment)
        await self.end_leases()
        last = await self.start()
        self._over = True
        await asyncio.gather(*people)
        await answering(self.session, last)
        await self.looked(last)
        await self.drained()
        self.servers.kill(last)
        self.tally.took_s = time.monotonic() - began
        await self._count()
        return self.tally

    async def looked(self, server: Running) -> None:
        """Wait until it has read what waited, and has looked at everything since now."""
        began = time.monotonic()
        while True:
            async with self.session.get(f"{server.url}/health") as reply:
                health = (await reply.json())["data"]
            age = health["tick_age_s"]
            if not health["catching_up"] and age is not None and age < time.monotonic() - began:
                return
            assert time.monotonic() - began < LOOKS_WITHIN_S, f"it never looks: {health}"
            await asyncio.sleep(0.1)

    async def drained(self) -> None:
        """Wait until nothing waits any more."""
        before, since = "", time.monotonic()
        while waiting := await self._waiting():
            if waiting != before:
                before, since = waiting, time.monotonic()
            assert time.monotonic() - since < STUCK_S, f"this never comes to its end: {waiting}"
            await _holds_over(self.journal)
            await asyncio.sleep(0.2)

    async def _waiting(self) -> str:
        """What still waits, in words; '' if nothing does."""
        states = Counter(d.state.value for d in await self.journal.deliveries(EVENT))
        open_ones = {s: n for s, n in states.items() if s in ("queued", "attempting", "unknown")}
        updates = await self.journal.waiting()
        if not self.phones.unconfirmed and not updates and not open_ones:
            return ""
        return f"unconfirmed {len(self.phones.unconfirmed)}, updates {updates}, deliveries {open_ones}"

    async def _count(self) -> None:
        tally, entries = self.tally, await self.journal.entries(EVENT)
        keys = {e.key for e in entries}
        words = {e.words for e in entries}
        tally.noted, tally.noted_lost = len(self.noted), len(self.noted - keys)
        tally.updates = len(self.said)
        tally.updates_lost = sum(f"eating ok, feet sore x{n}" not in words for n in self.said)
        owed = await owed_unkilled(entries)
        made = {
            (m.notice.key.person, m.notice.key.kind, m.notice.occasion)
            for m in await self.journal.made(EVENT)
        }
        tally.owed, tally.forgotten = len(owed), len(owed - made)
        news = {e.id: int(e.key.removeprefix("news-")) for e in entries if e.kind is Kind.REROUTED}
        for person, kind, occasion in owed:
            if kind is NoticeKind.RACE_CHANGE:
                self._count_arrivals(person, news[occasion.removeprefix("rerouted:")])
        answers = Counter(m for call in self.phones.sent for m in re.findall(r"sore (x\d+)", call.text))
        tally.answers_again = sum(n - 1 for n in answers.values())

    def _count_arrivals(self, person: str, number: int) -> None:
        arrived = [
            part
            for call in self.phones.sent
            if call.chat == str(CHATS[person])
            for part in call.text.split("\n\n")
            if f"<{number}>" in part
        ]
        self.tally.never_sent += not arrived
        self.tally.marked += sum(REPEAT in part for part in arrived[1:])
        self.tally.unmarked += sum(REPEAT not in part for part in arrived[1:])


async def owed_unkilled(entries: list[Entry]) -> set[tuple[str, NoticeKind, str]]:
    """Who is owed what, by the same reports, by a server that runs all the while: person, kind, occasion."""
    with tempfile.TemporaryDirectory() as folder:
        journal = await Journal.open(f"sqlite+aiosqlite:///{folder}/twin.db")
        try:
            begins = entries[0].received_at
            await _store_race(journal, begins)
            await _bind_all(journal, begins)
            clock = SteppedClock(begins)
            ticker = make_parts(Settings(), journal, clock, Options(live=False)).ticker
            for entry in entries:
                await journal.append(entry)
                clock.set(max(clock.now(), entry.received_at))
                if entry.sender != BEFORE:
                    await ticker.look(EVENT, clock.now())
            made = await journal.made(EVENT)
            return {(m.notice.key.person, m.notice.key.kind, m.notice.occasion) for m in made}
        finally:
            await journal.close()


# The database ----------------------------------------------------------------------------------------------


async def _leases_over(journal: Journal) -> None:
    now = datetime.now(UTC)
    d, u = t.delivery.c, t.update_.c
    async with journal._store.write() as c:
        await c.execute(update(t.delivery).where(d.state == "attempting").values(lease_until=now))
        await c.execute(update(t.update_).where(u.lease_until > now).values(lease_until=now))


async def _listen_lease_over(journal: Journal) -> None:
    """As if the half minute were over for which a dead process may still count as the one that listens."""
    async with journal._store.write() as c:
        await c.execute(delete(t.lease))


async def _holds_over(journal: Journal) -> None:
    """As if the minute had gone by for which news waits for company."""
    now = datetime.now(UTC)
    async with journal._store.write() as c:
        waiting = t.delivery.c.state.in_(("queued", "unknown"))
        await c.execute(update(t.delivery).where(waiting).values(due_at=now, held_until=None))


async def _store_race(journal: Journal, now: datetime) -> None:
    """A race that began eighty minutes ago; she was seen at the first point two minutes ago, so that nothing is
    owed for an hour but what is reported."""
    starts = (now - timedelta(minutes=80)).replace(second=0, microsecond=0)
    text, files = hill.event_text(starts), hill.files()
    await journal.store_event(text, files, build(text, files).event, "test", now)


async def _begin_race(journal: Journal) -> None:
    now = datetime.now(UTC)
    await _store_race(journal, now)
    await _bind_all(journal, now)
    for kind, point, ago in ((Kind.OUT, "start", 79), (Kind.OUT, "larch", 2)):
        seen = now - timedelta(minutes=ago)
        who = ("vera", Source.VOLUNTEER, BEFORE, point)
        await journal.append(Entry("", EVENT, RUNNER, kind, seen, seen, now, *who, point=point))


async def _bind_all(journal: Journal, now: datetime) -> None:
    for person, chat in CHATS.items():
        await journal.bind(person, "telegram", str(chat), now)


@asynccontextmanager
async def hunt(database: str, servers: Servers, log: Path, seed: int) -> AsyncIterator[Hunt]:
    """Everything ready on an empty, migrated database; nothing runs yet, nor after the end."""
    chance = random.Random(seed)
    journal = await Journal.open(database)
    try:
        await _begin_race(journal)
        token = await journal.issue_token("office", "race office", [auth.PERSON], datetime.now(UTC))
        async with (
            Phones(chance) as phones,
            aiohttp.ClientSession(timeout=aiohttp.ClientTimeout(total=8)) as session,
        ):
            try:
                yield Hunt(database, journal, phones, servers, log, session, token, chance)
            finally:
                servers.kill_all()
    finally:
        await journal.close()


@contextmanager
def _database(kind: str, folder: Path) -> Iterator[str]:
    if kind == "sqlite":
        yield f"sqlite+aiosqlite:///{folder / 'kills.db'}"
        return
    data = Path(tempfile.mkdtemp(prefix="stilepost-pg-"))
    server = Postgres(data)
    try:
        yield server.url(server.take())
    finally:
        server.stop()
        shutil.rmtree(data, ignore_errors=True)


async def _run(database: str, log: Path, kills: int, seed: int) -> Tally:
    moments = [MOMENTS[i % len(MOMENTS)] for i in range(kills)]
    random.Random(seed).shuffle(moments)
    with Servers() as servers:
        async with hunt(database, servers, log, seed) as hunted:
            return await hunted.run(moments)


def main() -> int:
    """Prints the tally; 0 if nothing was lost, forgotten, or repeated unmarked."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--kills", type=int, default=200)
    parser.add_argument("--database", choices=("sqlite", "postgresql"), default="sqlite")
    parser.add_argument("--seed", type=int, default=214)
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        log = Path(name) / "servers.log"
        log.touch()
        with _database(asked.database, Path(name)) as url:
            tally = asyncio.run(_run(url, log, asked.kills, asked.seed))
        errors = [line for line in log.read_text().splitlines() if "error" in line]
    print(f"{asked.database}: {tally}")
    print(f"error lines in the servers' log: {len(errors)}", *errors[:5], sep="\n")
    return 0 if tally.clean else 1


if __name__ == "__main__":
    sys.exit(main())
