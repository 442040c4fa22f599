"""Plays the story on a stepped clock through the real server: HTTP, journal, watch, desk; prints who is told what.

Nothing is prepared: sentences go to the desk, posts to the API, and the clock moves only to where the story or the
server's own 'ask again' says. The page can be opened meanwhile, as any of the people.
"""

from __future__ import annotations

import asyncio
import contextlib
import sys
import tempfile
import time
import tomllib
from collections.abc import AsyncIterator, Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from functools import partial
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import aiohttp
from aiohttp import web
from rich.console import Console
from rich.text import Text

from bot.channels.base import Incoming
from bot.conversing import Conversing
from bot.service_client import ServiceClient
from demo_event import knowing
from server.api import auth
from server.api.building import Built, build
from server.api.parts import PARTS, Parts
from server.app import Options, make_app
from server.clock import SteppedClock
from server.conversation.telling.message import Button, Press, read_data
from server.event.model import Event
from server.facts.entry import Fix
from server.journal import Journal
from server.log import AccessLog, set_up
from server.pages.session import DemoPerson
from server.settings import Settings
from server.watch.notice import NoticeKind

HERE = Path(__file__).parent
CHANNEL = "terminal"
LASTS_S = 110.0
"""How long the whole story takes at speed 1."""
LOOK_EVERY_S = 100.0
"""Often enough that no channel is taken for down: each look hands over what is due, which is its heartbeat."""
CODES_FOR = timedelta(days=3)
WATCH_ON = timedelta(hours=1)
ON_A_LINE = 96
READILY = (NoticeKind.TEST_ALARM, NoticeKind.LEAVE_NOW)


class StoryError(Exception):
    """A step of the story that can't be played: what, which step, what to do."""


@dataclass(frozen=True, slots=True)
class Step:
    """One thing somebody does: says a sentence, presses a button of the last message that has it, shares where
    they are (km along the course), or a device posts a check-in.

    `told`: not at a time but `minutes_later` than they get a notice of that kind, which must come by `at`.
    """

    at: datetime
    who: str = ""
    says: str = ""
    presses: str = ""
    shares_km: float | None = None
    post: dict[str, object] | None = None
    note: str = ""
    told: str = ""
    minutes_later: float = 0.0


def read_story(text: str, event: Event) -> tuple[Step, ...]:
    """The steps in order. Times are wall times of the event, with the day's name where the day changes."""
    zone = ZoneInfo(event.time_zone)
    day = event.starts.astimezone(zone).date()
    steps: list[Step] = []
    before: datetime | None = None
    for number, row in enumerate(tomllib.loads(text)["step"], 1):
        clock = datetime.strptime(row.pop("at"), "%H:%M").time()  # noqa: DTZ007 - made aware two lines on
        day += timedelta(days=row.pop("days", 0))
        at = datetime.combine(day, clock, zone)
        if before is not None and at < before:
            day += timedelta(days=1)
            at = datetime.combine(day, clock, zone)
        before = at
        unknown = set(row) - {"who", "says", "presses", "shares_km", "post", "note", "told", "minutes_later"}
        if unknown:
            raise StoryError(
                f"step {number}: unknown key {', '.join(sorted(unknown))}; see Step for the keys"
            )
        steps.append(Step(at=at, **row))
    return tuple(steps)


@dataclass(frozen=True, slots=True)
class Script:
    """What is played: an event file with the files it names, the steps made from it, and how it is announced.

    `reporter`: in whose name posts are printed. `lead`: how long before the first step the clock begins. `answers`:
    everybody answers the test alarm and every leave-now at once, so that nobody is chased; questions and alarms stay open.
    """

    text: str
    files: dict[str, bytes]
    steps: Callable[[Built], tuple[Step, ...]]
    headline: str
    reporter: str = "race office reports"
    lead: timedelta = timedelta(minutes=5)
    answers: bool = False


def demo_script() -> Script:
    """The invented night."""
    return told_script(
        (HERE / "event.toml").read_text("utf-8"),
        {"route.gpx": (HERE / "route.gpx").read_bytes()},
        (HERE / "story.toml").read_text("utf-8"),
    )


def told_script(text: str, files: dict[str, bytes], story: str) -> Script:
    """An event with the story written for it."""
    steps = partial(read_story, story)
    return Script(text, files, lambda built: steps(built.event), "an invented night on a stepped clock.")


@dataclass(slots=True)
class Told:
    """What one person has been sent, newest last: the buttons are what they can press."""

    buttons: list[Button] = field(default_factory=list)
    count: int = 0
    by_urgency: dict[str, int] = field(default_factory=dict)


@dataclass(slots=True)
class Player:
    """The demo while it runs. `pace_s` is how many real seconds a second of the story takes."""

    event: Event
    built: Built
    clock: SteppedClock
    parts: Parts
    desk: Conversing
    session: aiohttp.ClientSession
    url: str
    secret: str
    console: Console
    pace_s: float
    steps: tuple[Step, ...]
    script: Script
    told: dict[str, Told] = field(default_factory=dict)
    number: int = 0

    async def play(self) -> None:
        """The story from its first step to its last, then some more watching."""
        await self.play_until(self.steps[-1].at + WATCH_ON)

    async def play_until(self, at: datetime) -> None:
        """The story up to a moment, and what is due of the watch up to then."""
        began, story_began = time.monotonic(), self.clock.now()
        for step in self.steps:
            if step.at > at and not step.told:  # one that waits for a notice may well be due before
                break
            moment = step.at if not step.told else await self._told_at(step, began, story_began)
            await self._until(moment, began, story_began)
            await self._act(step)
            await self.look()
        await self._until(at, began, story_began)

    async def _until(self, at: datetime, began: float, story_began: datetime) -> None:
        """Move the clock to `at`, stopping wherever the server wants to be asked again."""
        while True:
            due = await self.look()
            if due >= at:
                break
            await self.go_to(due)
            await self._keep_pace(began, story_began)
        await self.go_to(max(at, self.clock.now()))
        await self._keep_pace(began, story_began)

    async def _told_at(self, step: Step, began: float, story_began: datetime) -> datetime:
        """Go on until that person has the notice the step waits for, and not past the step's time."""
        since = self.clock.now()
        while True:
            due = await self.look()
            for made in await self.parts.journal.made(self.event.id):
                key = made.notice.key
                if key.person == step.who and key.kind.value == step.told and made.made_at >= since:
                    return made.made_at + timedelta(minutes=step.minutes_later)
            if due > step.at:
                raise StoryError(
                    f"{step.who} was to be told '{step.told}' by {step.at:%a %H:%M}, and was not"
                )
            await self.go_to(due)
            await self._keep_pace(began, story_began)

    async def go_to(self, at: datetime) -> None:
        """The clock goes on to a moment before which nothing is due."""
        self.clock.set(at)

    async def _keep_pace(self, began: float, story_began: datetime) -> None:
        wanted = (self.clock.now() - story_began).total_seconds() * self.pace_s
        await asyncio.sleep(max(0.0, wanted - (time.monotonic() - began)))

    async def look(self) -> datetime:
        """One tick at the clock's time, and what is due handed over; when to look next."""
        due = await self.parts.ticker.tick(self.clock.now())
        await self._deliver()
        return due

    async def _deliver(self) -> None:
        """Hand over everything that is due as a channel does: one message for all that a chat is owed now."""
        while deliveries := (await self._service("/v1/outbox/claim", channel=CHANNEL, limit=20))[
            "deliveries"
        ]:
            chats: dict[str, list[Any]] = {}
            for d in deliveries:
                chats.setdefault(d["address"], []).append(d)
            for address, owed in chats.items():
                text = "\n\n".join(d["text"] for d in owed)
                self._print(address, text, "!" if any(d["urgent"] for d in owed) else ">")
                rows = (row for d in owed for row in d["buttons"])
                self._keep(address, [Button(b["label"], b["data"]) for row in rows for b in row])
                for d in owed:
                    await self._service(f"/v1/outbox/{d['id']}/report", outcome="accepted", tries=d["tries"])
        if self.script.answers:
            await self._answer_readily()

    async def _answer_readily(self) -> None:
        """Everybody who has a test alarm or a leave-now open presses its first button: it has come, and they go."""
        for made in await self.parts.journal.made(self.event.id):
            if made.notice.key.kind not in READILY or made.answered_at is not None:
                continue
            person = made.notice.key.person
            for button in self.told.get(person, Told()).buttons:
                press = read_data(button.data)
                if press is not None and press[0] is Press.ANSWER and press[1][0] == str(made.short):
                    self._print(person, f"[{button.label}]", "<")
                    await self._ask(person, button=button.data)
                    break

    async def _service(self, path: str, acting: str = "", **body: object) -> Any:
        """A call of the channel, for itself or for whoever it names."""
        headers = {"Authorization": f"Bearer {self.secret}"} | ({"Acting-Address": acting} if acting else {})
        async with self.session.post(self.url + path, json=body, headers=headers) as reply:
            found = await reply.json()
            if not found["ok"]:
                raise StoryError(f"{path}: {found['error']}")
            return found["data"]

    def _keep(self, person: str, buttons: list[Button]) -> None:
        told = self.told.setdefault(person, Told())
        told.count += 1
        told.buttons += buttons

    async def _act(self, step: Step) -> None:
        if step.note:
            self.console.print(Text(f"\n{self._now()}  {step.note}", style="italic"))
        if step.post is not None:
            await self._post(step)
        elif step.says:
            self._print(step.who, step.says, "<")
            await self._ask(step.who, text=step.says)
        elif step.presses:
            button = self._button(step)
            self._print(step.who, f"[{button.label}]", "<")
            await self._ask(step.who, button=button.data)
        elif step.shares_km is not None:
            spot = self.built.courses[self.event.courses[0].id].at(step.shares_km)
            self._print(step.who, f"(shares where she is: {spot.lat_deg:.4f}, {spot.lon_deg:.4f})", "<")
            await self._ask(step.who, fix=Fix(spot.lat_deg, spot.lon_deg, 15.0))

    def _button(self, step: Step) -> Button:
        offered = self.told.get(step.who, Told()).buttons
        for button in reversed(offered):
            if step.presses.lower() in button.label.lower():
                return button
        labels = ", ".join(b.label for b in offered[-8:]) or "none"
        raise StoryError(
            f"{step.at:%a %H:%M}: {step.who} has no button '{step.presses}'. Last offered: {labels}."
        )

    async def _ask(self, who: str, text: str = "", button: str = "", fix: Fix | None = None) -> None:
        self.number += 1
        incoming = Incoming(
            channel=CHANNEL,
            address=who,
            sent_at=self.clock.now(),
            message_key=f"m{self.number}",
            text=text,
            button=button,
            fix=fix,
        )
        reply = await self.desk.handle(incoming)
        if reply.text:
            self._print(who, reply.text, "=")
        self._keep(who, [b for row in reply.buttons for b in row])

    async def _post(self, step: Step) -> None:
        assert step.post is not None
        body = dict(step.post)
        runner = str(body.pop("runner", self.event.runners[0].id))
        point = self.event.course_of(runner).point(str(body["point"])) if "point" in body else None
        where = f" {point.name}" if point else ""
        whose = f", {self.event.runner(runner).name}" if len(self.event.runners) > 1 else ""
        said = f"{self._now()}  {self.script.reporter}: {body['kind']}{where}{whose}"
        self.console.print(Text(said, style="dim"))
        self.number += 1
        seen = self.clock.now() - timedelta(minutes=float(str(body.pop("minutes_ago", 0))))
        report = {**body, "seen_at": seen.isoformat(), "key": f"o{self.number}"}
        await self.report(step.who, self.event.id, runner, report)

    async def report(self, who: str, event: str, runner: str, body: Mapping[str, Any]) -> None:
        """A device of somebody's reports."""
        await self._service(f"/v1/events/{event}/runners/{runner}/checkins", acting=who, **body)

    def _now(self) -> str:
        return self.clock.now().astimezone(ZoneInfo(self.event.time_zone)).strftime("%a %H:%M")

    def _print(self, person: str, text: str, mark: str) -> None:
        """One message. `>` a notice, `!` an alarm, `<` said by the person, `=` the answer to that."""
        name = next((p.name for p in self.event.people if p.id == person), person)
        style = {"!": "bold", "<": "dim"}.get(mark, "")
        lines = text.splitlines() or [""]
        self.console.print(Text(f"{self._now()}  {mark} {name}: {lines[0]}", style=style))
        for line in lines[1:]:
            self.console.print(Text(" " * 14 + line, style=style))


def demo(speed: float = 1.0, port: int = 8437, keep: bool | None = None) -> int:
    """Play it; the exit code. `keep` leaves the page up at the end (None: only in a terminal)."""
    return play_script(demo_script(), speed, port, keep)


def play_script(script: Script, speed: float = 1.0, port: int = 8437, keep: bool | None = None) -> int:
    """Play any script; the exit code."""
    if not speed > 0:
        sys.stderr.write(f"--speed: {speed} is not above 0. Use 1 for two minutes, 4 for half a minute.\n")
        return 2
    if keep is None:
        keep = sys.stdin.isatty() and sys.stdout.isatty()
    set_up("error")
    with contextlib.suppress(KeyboardInterrupt), tempfile.TemporaryDirectory() as folder:
        asyncio.run(_play(script, speed, port, keep, Path(folder)))
    return 0


@contextlib.asynccontextmanager
async def stage(
    folder: Path,
    speed: float,
    port: int,
    console: Console,
    script: Script | None = None,
    *,
    make: type[Player] = Player,
    begins: datetime | None = None,
    look_every_s: float = LOOK_EVERY_S,
) -> AsyncIterator[Player]:
    """The server up on a port of 127.0.0.1, everybody bound to the terminal, the clock just before the story or, where
    that is earlier, at `begins`."""
    script = script or demo_script()
    built = build(script.text, script.files)
    steps = script.steps(built)
    clock = SteppedClock(min(begins or steps[0].at, steps[0].at - script.lead))
    length = (steps[-1].at + WATCH_ON - clock.now()).total_seconds()
    journal = await Journal.open(f"sqlite+aiosqlite:///{folder / 'demo.db'}")
    settings = Settings(database="demo", port=port, tick_seconds_max=look_every_s)
    try:
        await journal.store_event(script.text, script.files, built.event, "demo", clock.now())
        app = make_app(settings, journal, clock, options=Options(live=False, choices=_choices(built.event)))
        runner = web.AppRunner(app, access_log_class=AccessLog, shutdown_timeout=2.0)
        await runner.setup()
        try:
            url = await _listen(runner, port)
            await _open_doors(journal, built.event, clock, console, url, script.headline)
            secret = await journal.issue_token(
                None, CHANNEL, [auth.channel_scope(CHANNEL)], clock.now(), None
            )
            async with aiohttp.ClientSession() as session:
                yield make(
                    event=built.event,
                    built=built,
                    clock=clock,
                    parts=app[PARTS],
                    desk=Conversing(ServiceClient(session, url, secret)),
                    session=session,
                    url=url,
                    secret=secret,
                    console=console,
                    pace_s=LASTS_S / speed / length,
                    steps=steps,
                    script=script,
                )
        finally:
            await runner.cleanup()
    finally:
        await journal.close()


async def _play(script: Script, speed: float, port: int, keep: bool, folder: Path) -> None:
    console = Console(width=ON_A_LINE, highlight=False, soft_wrap=True)
    async with stage(folder, speed, port, console, script) as player:
        await player.play()
        _sum_up(player)
        if script.answers:
            await print_table(player)
        if keep:
            await _go_on(player)


def _choices(event: Event) -> tuple[DemoPerson, ...]:
    """Everybody: the page of the demo lets one be any of them, on this machine only."""
    return tuple(DemoPerson(p.id, p.name) for p in event.people)


async def _listen(runner: web.AppRunner, port: int) -> str:
    try:
        site = web.TCPSite(runner, "127.0.0.1", port)
        await site.start()
    except OSError:
        site = web.TCPSite(runner, "127.0.0.1", 0)
        await site.start()
    return f"http://127.0.0.1:{runner.addresses[0][1]}"


async def _open_doors(
    journal: Journal, event: Event, clock: SteppedClock, console: Console, url: str, headline: str
) -> None:
    """Bind everybody to the terminal, and say where the page is."""
    console.print(Text(f"{event.name}: {headline}", style="bold"))
    console.print(Text(f"The page: {url} (choose whom you want to be).", style="bold"))
    for person in event.people:
        code = await journal.invite(person.id, event.id, "demo", clock.now(), CODES_FOR)
        await journal.redeem(code, CHANNEL, person.id, "demo", clock.now())
        parts = ", ".join(p.kind.value for p in event.parts_of(person.id))
        console.print(Text(f"  {person.name}: {parts}"))
    console.print(Text("Marks: > notice, ! alarm, < said by the person, = the answer.\n", style="dim"))


def _sum_up(player: Player) -> None:
    player.console.print(Text("\nMessages per person (notices and answers):", style="bold"))
    for person in player.event.people:
        told = player.told.get(person.id)
        player.console.print(Text(f"  {person.name}: {told.count if told else 0}"))


async def print_table(player: Player) -> None:
    """Who was told what by when, and the longest wait for a fact."""
    journal, event = player.parts.journal, player.event
    found = knowing.rows(await journal.made(event.id), await journal.entries(event.id))
    player.console.print(Text("\nWho was told what by when:", style="bold"))
    for line in knowing.table(event, found):
        player.console.print(Text(line))


async def _go_on(player: Player) -> None:
    """The page stays up; the clock now goes as a clock does."""
    player.console.print(
        Text(f"\nThe story is over; the page stays up at {player.url} until Ctrl-C.", style="bold")
    )
    while True:
        await asyncio.sleep(2.0)
        player.clock.advance(timedelta(seconds=2))
        await player.look()
