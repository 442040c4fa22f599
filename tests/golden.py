"""Golden turns: what each message of the desk's tests, the night and the demo is answered with, records and tells,
kept as data, so that code can be moved and be proved to say and do the same.

    python -m tests.golden record      writes tests/golden.jsonl from the tests of the desk and the nights, and the demo
    python -m tests.golden check       plays them again and prints every turn that differs; exit code 1 if any does

A change of what is said or done on purpose is recorded anew with the change. Ids and keys made by chance are not kept.
"""

from __future__ import annotations

import asyncio
import io
import json
import os
import re
import subprocess
import sys
import tempfile
from collections import Counter
from copy import copy
from pathlib import Path
from typing import Any, Protocol
from zoneinfo import ZoneInfo

from rich.console import Console

from bot.channels.base import Incoming, Reply
from demo_event.play import stage
from server.journal import Journal

FILE = Path(__file__).with_name("golden.jsonl")
RECORD = "STILEPOST_GOLDEN_TURNS"
"""Names the file to which turns are written while tests run; without it nothing is recorded."""
PLAYED = ("tests/bot", "tests/whole/test_night.py")

_CHANCE = re.compile(r"(?:no|Nr)\. \d+|\b[0-9A-Z]{4}-?[0-9A-Z]{4}-?[0-9A-Z]{4}\b")
_numbers: Counter[str] = Counter()


class Desk(Protocol):
    """What answers."""

    async def handle(self, incoming: Incoming) -> Reply:
        """The answer to one thing a person sent."""


async def heard(desk: Desk, journal: Journal, event: str, zone: str, incoming: Incoming) -> Reply:
    """The desk's reply; recorded with what came of it where that is asked for."""
    if RECORD not in os.environ:
        return await desk.handle(incoming)
    entries = {e.id for e in await journal.entries(event)}
    made = {m.short for m in await journal.made(event)}
    reply = await desk.handle(incoming)
    said = {"text": incoming.text, "fix": incoming.fix is not None, "other": incoming.other}
    turn = {
        "as": incoming.address,
        "at": f"{incoming.sent_at.astimezone(ZoneInfo(zone)):%a %H:%M}",
        "say": {k: v for k, v in said.items() if v} or {"press": incoming.button[:1]},
        "reply": reply.text or reply.alt,
        "buttons": [b.label for row in reply.buttons for b in row],
        "entries": [
            f"{e.kind.value} {e.runner or ''} {e.point or ''} {e.seen_at.astimezone(ZoneInfo(zone)):%H:%M:%S}"
            f"{' unconfirmed' if e.unconfirmed else ''} {e.words}".strip()
            for e in await journal.entries(event)
            if e.id not in entries
        ],
        "notices": [
            f"{m.notice.key.kind.value} {m.notice.key.person}"
            for m in await journal.made(event)
            if m.short not in made
        ],
    }
    where = os.environ.get("PYTEST_CURRENT_TEST", "demo").split(" ")[0]
    _numbers[where] += 1
    _write(Path(os.environ[RECORD]), {"id": f"{where}#{_numbers[where]}", **turn})
    return reply


def _write(file: Path, turn: dict[str, Any]) -> None:
    with file.open("a", encoding="utf-8") as turns:
        turns.write(json.dumps(turn, ensure_ascii=False) + "\n")


def play(into: Path) -> None:
    """Play everything, the turns into a file."""
    env = {**os.environ, RECORD: str(into)}
    python = [sys.executable]
    subprocess.run([*python, "-m", "pytest", "-q", *PLAYED], env=env, check=False)
    subprocess.run([*python, "-m", "tests.golden", "demo"], env=env, check=True)


async def _demo(folder: Path) -> None:
    """The demo, each message recorded."""
    async with stage(folder, 1e9, 0, Console(file=io.StringIO())) as player:
        plain, event = copy(player.desk), player.event

        async def handle(incoming: Incoming) -> Reply:
            return await heard(plain, player.parts.journal, event.id, event.time_zone, incoming)

        player.desk.handle = handle  # type: ignore[method-assign]
        await player.play()


def read(file: Path) -> dict[str, dict[str, Any]]:
    """The turns of a file by id."""
    turns = [json.loads(row) for row in file.read_text("utf-8").splitlines()]
    return {t["id"]: t for t in turns}


def differences(before: dict[str, dict[str, Any]], now: dict[str, dict[str, Any]]) -> list[str]:
    """Every turn that is not as it was, with what differs."""
    found = [f"{i}: gone" for i in before.keys() - now.keys()] + [
        f"{i}: new" for i in now.keys() - before.keys()
    ]
    for i in before.keys() & now.keys():
        changed = [k for k in before[i] if _steady(before[i][k]) != _steady(now[i][k])]
        found += [f"{i} {k}\n  was {before[i][k]!r}\n  is  {now[i][k]!r}" for k in changed]
    return sorted(found)


def _steady(value: Any) -> Any:
    """Without what comes by chance: the short numbers of notices made at one moment have no set order; codes."""
    if isinstance(value, dict):
        return {k: _steady(v) for k, v in value.items()}
    return _CHANCE.sub("·", value) if isinstance(value, str) else value


def main(arguments: list[str]) -> int:
    """The command."""
    if arguments == ["demo"] and RECORD in os.environ:
        with tempfile.TemporaryDirectory() as demo:
            asyncio.run(_demo(Path(demo)))
        return 0
    if arguments == ["record"]:
        FILE.unlink(missing_ok=True)
        play(FILE)
        return 0
    if arguments != ["check"]:
        sys.stderr.write(__doc__ or "")
        return 2
    with tempfile.TemporaryDirectory() as folder:
        now = Path(folder) / "now.jsonl"
        play(now)
        found = differences(read(FILE), read(now))
    sys.stdout.write("\n".join([*found, f"{len(found)} differences"]) + "\n")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
