"""Sentences tried on the story: each is said to a fresh copy of it at its moment, by one of its people, through the
real conversation, and what came of it is told as data. For people who write example sentences, and for scoring.

The story is played once, the database copied at every moment asked for; each line then begins on its copy, so that no
line hears of another. Playing it takes longest: kept in a folder, the copies serve the next file too.
"""

from __future__ import annotations

import hashlib
import io
import json
import sqlite3
import time as wall
from collections.abc import AsyncIterator, Callable, Iterable, Mapping
from contextlib import asynccontextmanager, closing
from copy import deepcopy
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time, timedelta
from functools import partial
from itertools import count
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from rich.console import Console

from bot.channels.base import Incoming, Reply
from demo_event import rehearse
from demo_event.play import CHANNEL, HERE, Player, Script, StoryError, Told, stage, told_script
from server.api import auth, conversing
from server.api.auth import Caller
from server.api.building import Built, build
from server.api.parts import Parts
from server.api.snapshot import Pictures
from server.app import Options, make_parts
from server.clock import SteppedClock
from server.conversation.telling.message import Button
from server.event.model import Event, Person
from server.facts.entry import Entry, Fix
from server.facts.state import RaceState
from server.journal import Journal
from server.journal.codec import dump_person
from server.settings import Settings

__all__ = ["Line", "read_lines", "try_lines"]

BETWEEN_TURNS = timedelta(seconds=20)
LOOK_EVERY_S = 300.0
"""The watch says itself when to look next; nobody reads along here, so nothing is gained by looking more often."""
BEFORE_START, AFTER_START = timedelta(days=3), timedelta(days=4)
"""'Fri 16:00' is the first such moment from three days before the start on; within the week there is no second."""
DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
NEEDED = {"as", "at", "say"}
"""What a line must hold. `event` and `lang` may be there; any other key is the writer's own, such as an id or what they
expect."""
EVERY_S = 5.0
"""So often it is said how far the story is."""
TURN_KEYS = {"press", "km"}

Turn = str | Mapping[str, Any]
"""What is said; or {"press": part of a button's label}; or {"km": a place on the course that is shared}."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the file: who says what, when, in which event's folder. `many`: the turns came as a list; `language`: what
    they read, '' as the event's file has it."""

    number: int
    who: str
    at: str
    turns: tuple[Turn, ...]
    many: bool
    folder: Path
    language: str = ""


def read_lines(text: str, beside: Path) -> tuple[Line, ...]:
    """The lines of a file of JSON objects; `beside`: the folder that relative event folders are looked for in.
    Raises StoryError for the first that is wrong."""
    found = []
    for number, row in enumerate(text.splitlines(), 1):
        if not row.strip():
            continue
        try:
            read = json.loads(row)
        except ValueError as error:
            raise StoryError(f"line {number}: no JSON ({error}). Write one object a line.") from error
        found.append(_line(number, read, beside))
    return tuple(found)


def _line(number: int, read: Any, beside: Path) -> Line:
    if not isinstance(read, dict) or not set(read) >= NEEDED:
        raise StoryError(
            f'line {number}: wants {{"as": person, "at": "Sat 16:00", "say": text or list of turns}}, and may have "event".'
        )
    say, many = read["say"], isinstance(read["say"], list)
    turns: tuple[Turn, ...] = tuple(say) if many else (say,)
    for turn in turns:
        if not (
            isinstance(turn, str) or (isinstance(turn, dict) and len(turn) == 1 and set(turn) <= TURN_KEYS)
        ):
            raise StoryError(
                f'line {number}: {turn!r} is no turn: a text, {{"press": label}} or {{"km": number}}.'
            )
    folder = beside / str(read["event"]) if "event" in read else HERE
    return Line(number, str(read["as"]), str(read["at"]), turns, many, folder, str(read.get("lang", "")))


async def try_lines(
    lines: Iterable[Line],
    folder: Path,
    tell: Callable[[Any], None],
    *,
    keep: Path | None = None,
    progress: Callable[[str], None] = lambda _: None,
) -> None:
    """Say every line to its copy; `tell` is given what came of each, in the order of the lines. `folder`: for the copies;
    `keep`: where the story's stay for the next time; `progress` is told how far it is."""
    lines = tuple(lines)
    worlds = {where: _read_world(where) for where in dict.fromkeys(line.folder for line in lines)}
    wanted: dict[Path, set[datetime]] = {}
    for line in lines:
        worlds[line.folder].person(line)
        wanted.setdefault(line.folder, set()).add(worlds[line.folder].moment(line))
    scenes = {}
    for number, (where, world) in enumerate(worlds.items()):
        own = folder / str(number)
        own.mkdir()
        shelf = _Shelf.of(world, keep) if keep is not None else None
        had = shelf.taken(wanted[where]) if shelf is not None else {}
        missing = sorted(wanted[where] - set(had))
        played = await _play_to(world, missing, own, progress) if missing else {}
        if shelf is not None:
            shelf.put(played)
        scenes[where] = had | played
    async with _Copies.opened(folder / "copy.db") as copies:
        for number, line in enumerate(lines, 1):
            world = worlds[line.folder]
            came = await copies.say(line, world, scenes[line.folder][world.moment(line)])
            tell(came if line.many else came[0])
            if number % 10 == 0 or number == len(lines):
                progress(f"{number} of {len(lines)} lines said")


# -- the story up to its moments ----------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _World:
    """One event's folder, read."""

    script: Script
    built: Built
    mark: str
    """Of the files it was read from: copies of another are not taken for its own."""

    @property
    def event(self) -> Event:
        return self.built.event

    def person(self, line: Line) -> str:
        """The id of who speaks, given as id or name."""
        for person in self.event.people:
            if line.who.lower() in (person.id.lower(), person.name.lower()):
                return person.id
        known = ", ".join(p.id for p in self.event.people)
        raise StoryError(f"line {line.number}: nobody is called '{line.who}'. There are: {known}.")

    def moment(self, line: Line) -> datetime:
        """'Sat 16:00' (wall time of the event) or a date with a time."""
        zone = ZoneInfo(self.event.time_zone)
        day, _, clock = line.at.strip().partition(" ")
        try:
            if day[:3].lower() not in DAYS:
                found = datetime.fromisoformat(line.at)
                return found if found.tzinfo else found.replace(tzinfo=zone)
            at, weekday = time.fromisoformat(clock.strip()), DAYS.index(day[:3].lower())
        except ValueError as error:
            raise StoryError(f"line {line.number}: '{line.at}' is no moment; write 'Sat 16:00'.") from error
        first = (self.event.starts.astimezone(zone) - BEFORE_START).date()
        return datetime.combine(_next(first, weekday), at, zone)


def _next(day: date, weekday: int) -> date:
    return day + timedelta(days=(weekday - day.weekday()) % 7)


def _read_world(folder: Path) -> _World:
    """The event of a folder with its story; one without a story is played as its plan has it."""
    try:
        text = (folder / "event.toml").read_text("utf-8")
        story = (folder / "story.toml").read_text("utf-8") if (folder / "story.toml").exists() else None
    except OSError as error:
        raise StoryError(f"{folder}: no event.toml can be read there ({error.strerror}).") from error
    files = {p.name: p.read_bytes() for p in folder.glob("*.gpx")}
    script = rehearse.script(text, files) if story is None else told_script(text, files, story)
    mark = hashlib.sha256(repr((text, story, sorted(files.items()))).encode()).hexdigest()[:12]
    return _World(script, build(text, files, version=1), mark)


@dataclass(frozen=True, slots=True)
class _Scene:
    """The story at one moment: its database, what everybody was offered until then, and a server's knowledge of it."""

    at: datetime
    database: Path
    told: Mapping[str, Told]
    watching_since: datetime | None
    pictures: Pictures | None = None
    """What the server knew; None where the copy was kept from before, and it is worked out again."""


@dataclass(frozen=True, slots=True)
class _Shelf:
    """A folder where the copies of one story stay: of each moment the database and what everybody was offered."""

    folder: Path

    @classmethod
    def of(cls, world: _World, keep: Path) -> _Shelf:
        folder = keep / f"{world.event.id}-{world.mark}"
        folder.mkdir(parents=True, exist_ok=True)
        return cls(folder)

    def taken(self, wanted: Iterable[datetime]) -> dict[datetime, _Scene]:
        """Those of the moments wanted that are there."""
        return {at: found for at in wanted if (found := self._read(at)) is not None}

    def put(self, scenes: Mapping[datetime, _Scene]) -> None:
        """Keep these."""
        for at, scene in scenes.items():
            _copied(scene.database, self._path(at, "db"))
            told = {who: [[b.label, b.data] for b in t.buttons] for who, t in scene.told.items() if t.buttons}
            since = scene.watching_since.isoformat() if scene.watching_since else None
            # Written last: a copy without it is not whole.
            self._path(at, "json").write_text(json.dumps({"told": told, "since": since}), "utf-8")

    def _path(self, at: datetime, ending: str) -> Path:
        return self.folder / f"{at:%Y%m%d-%H%M%S}.{ending}"

    def _read(self, at: datetime) -> _Scene | None:
        if not self._path(at, "json").exists():
            return None
        kept = json.loads(self._path(at, "json").read_text("utf-8"))
        told = {who: Told([Button(*b) for b in buttons]) for who, buttons in kept["told"].items()}
        since = datetime.fromisoformat(kept["since"]) if kept["since"] else None
        return _Scene(at, self._path(at, "db"), told, since)


def _copied(there: Path, here: Path) -> None:
    """One database made into a copy of another."""
    with closing(sqlite3.connect(there)) as source, closing(sqlite3.connect(here)) as copy:
        copy.execute("PRAGMA synchronous=OFF")
        source.backup(copy)


@dataclass(slots=True)
class _Scout(Player):
    """Plays the story silently and copies it at every moment wanted, once all that happens up to it has happened."""

    wanted: list[datetime] = field(default_factory=list)
    folder: Path = Path()
    scenes: dict[datetime, _Scene] = field(default_factory=dict)
    progress: Callable[[str], None] = lambda _: None
    said_at: float = field(default_factory=wall.monotonic)

    async def go_to(self, at: datetime) -> None:
        """Stop on the way wherever a copy is wanted."""
        while self.wanted and self.wanted[0] < at:
            self.clock.set(max(self.wanted[0], self.clock.now()))
            await self.look()
            await self._copy(self.wanted.pop(0))
        self.clock.set(at)
        if wall.monotonic() - self.said_at > EVERY_S:
            self.said_at = wall.monotonic()
            self.progress(f"the story is at {self._now()}, {len(self.wanted)} moments to come")

    async def look(self) -> datetime:
        """As the player looks; and where the outbox holds something back, not later than it is due."""
        due = await Player.look(self)
        held = await self.parts.journal.next_due([CHANNEL])
        return due if held is None else min(due, held)

    async def _copy(self, moment: datetime) -> None:
        database = self.folder / f"{len(self.scenes)}.db"
        await self.parts.journal.backup(database)
        known = Pictures(self.parts.journal)
        known.learn(self.parts.pictures)
        since = self.parts.pictures.watching_since
        self.scenes[moment] = _Scene(moment, database, deepcopy(self.told), since, known)


async def _play_to(
    world: _World, wanted: list[datetime], folder: Path, progress: Callable[[str], None]
) -> dict[datetime, _Scene]:
    """The copies of one story at the moments wanted."""
    far = [m for m in wanted if m - world.event.starts > AFTER_START]
    if far:
        raise StoryError(f"'{far[0]:%a %d %b %H:%M}' is more than {AFTER_START.days} days after the start.")
    quiet = Console(file=io.StringIO())
    begins = world.script.steps(world.built)[0].at - world.script.lead
    scenes: dict[datetime, _Scene] = {}
    # Before the story begins nothing has happened, and a server that runs from then on would change the story.
    for early in [m for m in wanted if m < begins]:
        own = folder / f"early-{len(scenes)}"
        own.mkdir()
        scenes |= await _scout(world, own, quiet, [early], progress, begins=early)
    later = [m for m in wanted if m >= begins]
    if later:
        scenes |= await _scout(world, folder, quiet, later, progress)
    return scenes


async def _scout(
    world: _World,
    folder: Path,
    quiet: Console,
    wanted: list[datetime],
    progress: Callable[[str], None],
    begins: datetime | None = None,
) -> dict[datetime, _Scene]:
    async with stage(
        folder, 1e9, 0, quiet, world.script, make=_Scout, begins=begins, look_every_s=LOOK_EVERY_S
    ) as scout:
        assert isinstance(scout, _Scout)
        scout.wanted, scout.folder, scout.progress = list(wanted), folder, progress
        last = wanted[-1] + timedelta(seconds=1)
        await scout.play_until(last)
        return scout.scenes


# -- one line -----------------------------------------------------------------------------------------------------


@dataclass(slots=True)
class _Copies:
    """One database that is made into a copy of a scene for every line."""

    journal: Journal
    path: Path
    keys: Iterable[int] = field(default_factory=count)

    @classmethod
    @asynccontextmanager
    async def opened(cls, path: Path) -> AsyncIterator[_Copies]:
        journal = await Journal.open(f"sqlite+aiosqlite:///{path}")
        try:
            yield cls(journal, path)
        finally:
            await journal.close()

    async def say(self, line: Line, world: _World, scene: _Scene) -> list[dict[str, Any]]:
        """What came of each turn."""
        _copied(scene.database, self.path)
        who = world.person(line)
        reads: Callable[[Built], Built] = lambda built: built  # noqa: E731 - as it is
        if line.language:
            person = replace(next(p for p in world.event.people if p.id == who), language=line.language)
            self._reads(person)
            reads = partial(_read_by, person)
        clock = SteppedClock(scene.at)
        secret = await self.journal.issue_token(None, CHANNEL, [auth.channel_scope(CHANNEL)], scene.at, None)
        token = await self.journal.check_token(secret, scene.at)
        assert token is not None
        parts = make_parts(Settings(database="try"), self.journal, clock, Options(live=False))
        if scene.pictures is not None:
            parts.pictures.learn(scene.pictures, reads)
        else:
            parts.pictures.begin_with(reads(world.built), scene.watching_since)
        parts.ticker.catching_up = None
        visit = _Visit(
            world, line, clock, parts, Caller(token, who, CHANNEL, who), deepcopy(dict(scene.told))
        )
        return [await visit.turn(turn) for turn in line.turns]

    def _reads(self, person: Person) -> None:
        """Somebody reads another language than the event's file has it."""
        with closing(sqlite3.connect(self.path)) as copy, copy:
            copy.execute("UPDATE person SET body = ? WHERE id = ?", (dump_person(person), person.id))


def _read_by(person: Person, built: Built) -> Built:
    people = tuple(person if p.id == person.id else p for p in built.event.people)
    return replace(built, event=replace(built.event, people=people))


@dataclass(slots=True)
class _Visit:
    """One line being said."""

    world: _World
    line: Line
    clock: SteppedClock
    parts: Parts
    caller: Caller
    told: dict[str, Told]
    said: int = 0

    async def turn(self, turn: Turn) -> dict[str, Any]:
        """Say it; the reply and what is new since."""
        event = self.world.event.id
        if self.said:
            self.clock.advance(BETWEEN_TURNS)
        self.said += 1
        entries = {e.id for e in await self.parts.journal.entries(event)}
        made = {m.short for m in await self.parts.journal.made(event)}
        reply = await conversing.answer(self.parts, self.caller, self._incoming(turn))
        offered = self.told.setdefault(self._who(), Told())
        offered.buttons += [b for row in reply.buttons for b in row]
        await self.parts.ticker.look(event, self.clock.now())
        state = (await self.parts.pictures.take(event, self.clock.now())).state
        return {
            "reply": _text(reply),
            "buttons": [b.label for row in reply.buttons for b in row],
            "entries": [
                self._entry(e, state) for e in await self.parts.journal.entries(event) if e.id not in entries
            ],
            "notices": [
                {"kind": m.notice.key.kind.value, "to": m.notice.key.person}
                for m in await self.parts.journal.made(event)
                if m.short not in made
            ],
        }

    def _who(self) -> str:
        return self.world.person(self.line)

    def _incoming(self, turn: Turn) -> Incoming:
        said: dict[str, Any] = {"text": turn}
        if not isinstance(turn, str):
            said = (
                {"button": self._button(str(turn["press"]))} if "press" in turn else {"fix": self._fix(turn)}
            )
        return Incoming(CHANNEL, self._who(), self.clock.now(), f"try-{self.line.number}-{self.said}", **said)

    def _button(self, label: str) -> str:
        offered = self.told.get(self._who(), Told()).buttons
        for button in reversed(offered):
            if label.lower() in button.label.lower():
                return button.data
        had = ", ".join(b.label for b in offered[-8:]) or "none"
        raise StoryError(
            f"line {self.line.number}: {self.line.who} has no button '{label}'. Last offered: {had}."
        )

    def _fix(self, turn: Mapping[str, Any]) -> Fix:
        spot = self.world.built.courses[self.world.event.courses[0].id].at(float(turn["km"]))
        return Fix(spot.lat_deg, spot.lon_deg, 15.0)

    def _entry(self, entry: Entry, state: RaceState) -> dict[str, Any]:
        zone = ZoneInfo(self.world.event.time_zone)
        return {
            "kind": entry.kind.value,
            "runner": entry.runner,
            "point": entry.point,
            "at": f"{entry.seen_at.astimezone(zone):%a %H:%M}",
            "counted": entry.id not in _not_counted(state),
        }


def _text(reply: Reply) -> str:
    return reply.text or reply.alt


def _not_counted(state: RaceState) -> frozenset[str]:
    """The entries that are kept and change nothing: unconfirmed, from the future, or refused."""
    lists = [state.unconfirmed, state.future, state.refused]
    lists += [kept for r in state.runners for kept in (r.unconfirmed, r.future, r.refused)]
    calls = {e.id for r in state.runners for e in r.helps_open}
    return frozenset(e.id for kept in lists for e in kept) - calls
