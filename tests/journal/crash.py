"""Kill journal workers with SIGKILL at random moments and say what each had acknowledged before it died.

Run as a program: `crash.py URL KILLS SEED`. Workers are forked from one process that has imported everything,
so that a round costs milliseconds. Prints one JSON line: entries acknowledged, notices owed, messages sent.
"""

from __future__ import annotations

import asyncio
import json
import os
import random
import signal
import sys
import time
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from server.facts.entry import Entry, Kind, Source
from server.journal import Journal, Outcome
from server.watch.notice import Notice, NoticeKey, NoticeKind, OutageValues, Urgency

START = datetime(2027, 6, 19, 4, 0, tzinfo=UTC)
PEOPLE = ("ana", "tomas")


def _entry(key: str, now: datetime) -> Entry:
    return Entry(
        "", "long-stile", "maren", Kind.IN, now, now, now, "ana", Source.CREW, "crash", key, point="mill"
    )


def _notice(person: str, episode: int, now: datetime) -> Notice:
    key = NoticeKey("long-stile", "maren", person, NoticeKind.OUTAGE, "", episode)
    return Notice(key, Urgency.ACTION, now, None, False, OutageValues("server", now, None))


async def _send(journal: Journal, now: datetime, out: int) -> int:
    """Send what is due; the message leaves before its report, as with a real channel."""
    claimed = await journal.claim(["telegram"], now, limit=4, spacing=timedelta(0))
    for d in claimed:
        _say(out, sent=d.id, repeat=d.possible_repeat)
        await journal.report(d.id, Outcome.SENT, now, tries=d.tries)
    return len(claimed)


async def _work(url: str, turn: int, out: int) -> None:
    """Append, owe, send, until killed."""
    now = START + turn * timedelta(minutes=2)
    journal = await Journal.open(url)
    for i in range(1_000_000):
        key = f"{turn}-{i}"
        await journal.append(_entry(key, now))
        _say(out, noted=key)
        notice = _notice(PEOPLE[i % 2], turn * 1_000_000 + i, now)
        await journal.add_notices([notice], now)
        _say(out, owed=notice.key.text())
        await _send(journal, now, out)


async def _drain(url: str, turn: int, out: int) -> None:
    """Send what is left after the last kill."""
    journal = await Journal.open(url)
    while await _send(journal, START + turn * timedelta(minutes=2), out):
        pass
    await journal.close()


@dataclass(frozen=True, slots=True)
class Life:
    """A worker is killed so long after it has said so many words: by words, as a busy machine is slow."""

    words: int
    then_s: float


def _say(out: int, **what: object) -> None:
    os.write(out, json.dumps(what).encode() + b"\n")


def _turn(url: str, turn: int, life: Life | None) -> list[dict[str, object]]:
    """One worker's life, which ends as `life` says, or when it has drained the outbox; what it said."""
    read, write = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(read)
        asyncio.run(_work(url, turn, write) if life else _drain(url, turn, write))
        os._exit(0)
    os.close(write)
    said = b""
    while data := os.read(read, 65536):
        said += data
        if life and said.count(b"\n") >= life.words:
            time.sleep(life.then_s)
            os.kill(child, signal.SIGKILL)
            life = None
    os.close(read)
    os.waitpid(child, 0)
    return [json.loads(line) for line in said.decode().splitlines()]


def main() -> None:
    """Kill so many workers, let the last one drain, print what they said."""
    url, kills, seed = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    chance = random.Random(seed)
    lives = [Life(chance.randint(1, 40), chance.uniform(0.0, 0.02)) for _ in range(kills)]
    said = [word for turn, life in enumerate(lives) for word in _turn(url, turn, life)]
    said += _turn(url, kills + 1, None)
    print(
        json.dumps(
            {
                "noted": [w["noted"] for w in said if "noted" in w],
                "owed": [w["owed"] for w in said if "owed" in w],
                "sent": [[w["sent"], w["repeat"]] for w in said if "sent" in w],
            }
        )
    )


if __name__ == "__main__":
    main()
