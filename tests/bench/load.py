"""Load over HTTP while servers die and hang: `python -m tests.bench load`, one line of JSON.

A field of positions at an even rate (an open loop: each is due at its time, whatever became of those before), a call for
help every `HELP_EVERY_S`, to servers and a bot in processes of their own on one database. Now and then one of the servers is
killed and started again, or stopped (SIGSTOP) for some seconds. Each report is sent, with its key, until some server has
acknowledged it. Printed: what was acknowledged and is not in the database (`lost`), how long after it was due a report
was acknowledged and its notices queued, and how long after a call was due its alarm stood in the database; with `--calm`
the CPU of all servers together for a report, their ticks included, which a busy machine does not make larger.
"""

from __future__ import annotations

import argparse
import asyncio
import itertools
import json
import os
import random
import signal
import statistics
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path

import aiohttp

from server.api import auth
from server.api.building import Built, build
from server.drafting.start_list import listed_in, read_start_list
from server.event import parse_event
from server.journal import Journal
from server.watch.notice import NoticeKind
from tests.bench.scale import database
from tests.channels.standin import TOKEN, StandIn
from tests.whole import hill
from tests.whole.forks import Running, Servers, answering, free_port

HELP_EVERY_S = 10.0
GIVES_UP_S = 60.0
"""So long after the last report was due it is still sent again."""
DESK = """
[[people]]
id = "desk"
name = "Desk"
phone = "+44 1632 960099"
parts = [{ kind = "safety contact", ladder = 9 }]
"""


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked of a run."""

    database: str
    rate: float
    seconds: float
    servers: int
    runners: int
    seed: int
    calm: bool


@dataclass(slots=True)
class Run:
    """Servers under load, and what came of it: keys acknowledged with how long each took, calls with when each was due."""

    asked: Asked
    url: str
    built: Built
    token: str
    servers: Servers
    log: Path
    session: aiohttp.ClientSession
    chance: random.Random
    fleet: list[Running] = field(default_factory=list)
    took_s: dict[str, float] = field(default_factory=dict)
    calls: dict[str, datetime] = field(default_factory=dict)
    refused: Counter[str] = field(default_factory=Counter)
    kills: int = 0
    stops: int = 0
    cpu_s: float = 0.0

    def start(self, port: int) -> Running:
        """One more server."""
        more = {"STILEPOST_CHANNELS_APART": "telegram", "STILEPOST_LOG_LEVEL": "warning"}
        return self.servers.start(self.url, port, self.log, **more)

    async def under_load(self) -> None:
        """Every report, and the trouble beside; returns once each was acknowledged or given up."""
        began, until = time.monotonic(), time.monotonic() + self.asked.seconds
        cpu_s = sum(map(_cpu_s, self.fleet))
        trouble = None if self.asked.calm else asyncio.create_task(self._trouble(until))
        sent = [asyncio.create_task(self._report(*what)) for what in self._due(began)]
        await asyncio.gather(*sent)
        if trouble is not None:
            await trouble
        self.cpu_s = sum(map(_cpu_s, self.fleet)) - cpu_s

    def _due(self, began: float) -> Iterator[tuple[float, str, str, dict[str, object]]]:
        """Each report with when it is due, its key, its path and what it says."""
        # Each call for help is of another runner: a second of one joins the alarm that is open about her.
        runners, callers = (itertools.cycle(self.built.event.runners) for _ in range(2))
        at, numbers, next_help = 0.0, itertools.count(), HELP_EVERY_S / 2
        while (at := at + self.chance.expovariate(self.asked.rate)) < self.asked.seconds:
            helped = at >= next_help
            runner, n = next(callers if helped else runners), next(numbers)
            path = f"/v1/events/{hill.EVENT}/runners/{runner.id}/"
            if helped:
                next_help += HELP_EVERY_S
                yield (
                    began + at,
                    f"help-{n}",
                    f"{path}checkins",
                    {"kind": "asked for help", "key": f"help-{n}"},
                )
                continue
            spot = self.built.courses[runner.course].at(4.0 + at / 600.0)
            seen = datetime.now(UTC) + timedelta(seconds=at)
            properties = {"time": seen.isoformat(), "key": f"fix-{n}", "accuracy": 8}
            place = {"type": "Point", "coordinates": [spot.lon_deg, spot.lat_deg]}
            yield (
                began + at,
                f"fix-{n}",
                f"{path}positions",
                {"type": "Feature", "geometry": place, "properties": properties},
            )

    async def _report(self, due: float, key: str, path: str, body: dict[str, object]) -> None:
        await asyncio.sleep(max(due - time.monotonic(), 0.0))
        if key.startswith("help-"):
            self.calls[key] = datetime.now(UTC)
        first = self.chance.randrange(len(self.fleet))
        for go in itertools.count(first):
            if time.monotonic() > due + self.asked.seconds + GIVES_UP_S:
                return
            url = self.fleet[go % len(self.fleet)].url
            try:
                headers = {"Authorization": f"Bearer {self.token}"}
                async with self.session.post(url + path, json=body, headers=headers) as reply:
                    await reply.read()
                    if reply.status == 200:
                        self.took_s[key] = time.monotonic() - due
                        return
                    self.refused[str(reply.status)] += 1
            except (aiohttp.ClientError, OSError, TimeoutError) as error:
                self.refused[type(error).__name__] += 1
            await asyncio.sleep(0.05)

    async def _trouble(self, until: float) -> None:
        while time.monotonic() < until - 15.0:
            await asyncio.sleep(self.chance.uniform(5.0, 15.0))
            n = self.chance.randrange(len(self.fleet))
            if self.chance.random() < 0.5:
                self.kills += 1
                self.servers.kill(self.fleet[n])
                self.fleet[n] = self.start(int(self.fleet[n].url.rpartition(":")[2]))
            else:
                self.stops += 1
                os.kill(self.fleet[n].pid, signal.SIGSTOP)
                await asyncio.sleep(self.chance.uniform(2.0, 8.0))
                os.kill(self.fleet[n].pid, signal.SIGCONT)

    async def figures(self, journal: Journal) -> dict[str, object]:
        """What came of it, by what the database holds."""
        entries = {e.key: e for e in await journal.entries(hill.EVENT)}
        alarms: dict[str, datetime] = {}
        for m in await journal.made(hill.EVENT):
            if m.notice.key.kind is NoticeKind.ASKED_FOR_HELP:
                for fact in m.notice.facts:
                    alarms[fact] = min(m.made_at, alarms.get(fact, m.made_at))
        late = [
            (alarms[entries[key].id] - due).total_seconds()
            for key, due in self.calls.items()
            if key in entries and entries[key].id in alarms
        ]
        took = sorted(1000.0 * s for s in self.took_s.values()) or [0.0]
        return {
            "database": self.asked.database,
            "servers": self.asked.servers,
            "runners": self.asked.runners,
            "rate": self.asked.rate,
            "seconds": self.asked.seconds,
            "kills": self.kills,
            "stops": self.stops,
            "servers_cpu_ms": round(1000.0 * self.cpu_s / max(len(self.took_s), 1), 1)
            if self.asked.calm
            else None,
            "acknowledged": len(self.took_s),
            "not_at_once": dict(self.refused),
            "lost": sum(key not in entries for key in self.took_s),
            "median_ms": round(statistics.median(took), 1),
            "p99_ms": round(took[int(0.99 * (len(took) - 1))], 1),
            "calls_for_help": len(self.calls),
            "calls_without_alarm": len(self.calls) - len(late),
            "latest_alarm_s": round(max(late, default=0.0), 2),
        }


def _cpu_s(server: Running) -> float:
    """CPU that a server has used."""
    after_name = Path(f"/proc/{server.pid}/stat").read_text(encoding="ascii").rpartition(")")[2].split()
    return sum(int(ticks) for ticks in after_name[11:13]) / os.sysconf("SC_CLK_TCK")


def _race(runners: int, now: datetime) -> tuple[str, dict[str, bytes], Built]:
    """A race that began eighty minutes ago: one runner with her crew, all others from a start list."""
    text, files = (
        hill.event_text((now - timedelta(minutes=80)).replace(second=0, microsecond=0), DESK),
        hill.files(),
    )
    event = parse_event(text).event
    assert event is not None
    csv = "bib,name,target\n" + "".join(f"{n},Runner {n},12:30\n" for n in range(1001, 1000 + runners))
    rows, problems = read_start_list(csv, event, {}, "list")
    assert not problems
    text = listed_in(text, rows, event, "list").text
    return text, files, build(text, files)


async def _measured(asked: Asked) -> dict[str, object]:
    now = datetime.now(UTC)
    text, files, built = _race(asked.runners, now)
    async with database(asked.database) as url:
        journal = await Journal.open(url)
        await journal.store_event(text, files, built.event, "bench", now)
        await journal.bind("office", "telegram", "106", now)
        token = await journal.issue_token("office", "race office", [auth.PERSON], now)
        scope = [auth.channel_scope("telegram")]
        bot_token = await journal.issue_token(None, "bot", scope, now)
        with tempfile.TemporaryDirectory() as folder, Servers() as servers:
            log = Path(folder) / "servers.log"
            limits = aiohttp.ClientTimeout(total=10.0, sock_connect=2.0)
            async with (
                StandIn() as phones,
                aiohttp.ClientSession(timeout=limits, connector=aiohttp.TCPConnector(limit=0)) as session,
            ):
                run = Run(asked, url, built, token, servers, log, session, random.Random(asked.seed))
                run.fleet = [run.start(free_port()) for _ in range(asked.servers)]
                for server in run.fleet:
                    await answering(session, server)
                servers.bot(
                    log,
                    STILEPOST_SERVER_URL=run.fleet[0].url,
                    STILEPOST_SERVER_TOKEN=bot_token,
                    STILEPOST_TELEGRAM_TOKEN=TOKEN,
                    STILEPOST_TELEGRAM_BASE_URL=phones.base_url,
                )
                await run.under_load()
                found = await run.figures(journal)
        await journal.close()
        return found


def main(argv: list[str]) -> int:
    """One run; 1 if anything acknowledged was lost, or a call for help has no alarm."""
    ask = argparse.ArgumentParser(prog="python -m tests.bench load", description=__doc__.partition("\n")[0])
    ask.add_argument("--database", choices=("sqlite", "postgresql"), default="postgresql")
    ask.add_argument("--rate", type=float, default=200.0, help="reports a second")
    ask.add_argument("--seconds", type=float, default=120.0)
    ask.add_argument("--servers", type=int, default=2)
    ask.add_argument("--runners", type=int, default=100)
    ask.add_argument("--seed", type=int, default=214)
    ask.add_argument(
        "--calm", action="store_true", help="kill and stop nobody: what a report costs the servers"
    )
    found = asyncio.run(_measured(Asked(**vars(ask.parse_args(argv)))))
    print(json.dumps(found), flush=True)
    return int(bool(found["lost"] or found["calls_without_alarm"]))
