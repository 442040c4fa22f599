"""Puts the server together: every part made once, each replaceable by argument; nothing happens on import."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Callable, Iterable
from dataclasses import dataclass
from datetime import timedelta

import structlog
from aiohttp import web

from bot import hooks
from bot.channels.installed import channels_of
from server.api import calls, openapi, system
from server.api.ask import endpoint, measured
from server.api.envelope import BODY_S
from server.api.hub import Hub
from server.api.limits import Guesses
from server.api.metrics import Metrics
from server.api.parts import PARTS, Parts
from server.api.signs import LifeSigns
from server.api.snapshot import Pictures
from server.api.talks import Talks
from server.api.ticker import Schedule, Ticker
from server.clock import Clock, SystemClock
from server.journal import Journal
from server.pages import routes as pages
from server.pages.pictures import profile_for
from server.pages.session import DemoPerson
from server.settings import Settings

log = structlog.get_logger("app")

MAIL_CHECKED = timedelta(minutes=13)
"""The mail server is looked at every five minutes; two looks and a half without an answer, and it is down."""

Background = Callable[[web.Application], AsyncIterator[None]]
"""Something that runs as long as the server: aiohttp's cleanup_ctx form."""


@dataclass(frozen=True, slots=True)
class Options:
    """How this server runs. `live`: the schedule wakes ticks and heartbeats are written; without it whoever
    drives the clock calls `Parts.ticker.tick`. `channels`: those that hand over what waited at a start.
    `choices`: in the demo, the people whom somebody at this machine may be on the page. `push_key`: the public key
    with which browsers subscribe to web push; '' = none."""

    live: bool = True
    channels: frozenset[str] = frozenset()
    choices: tuple[DemoPerson, ...] = ()
    push_key: str = ""


def make_app(
    settings: Settings,
    journal: Journal,
    clock: Clock | None = None,
    *,
    options: Options | None = None,
    background: Iterable[Background] = (),
) -> web.Application:
    """The server over an open journal, which stays the caller's to close."""
    options = options or Options()
    parts = make_parts(settings, journal, clock or SystemClock(), options)
    app = web.Application(middlewares=[measured], client_max_size=settings.max_body_bytes)
    app[PARTS] = parts
    app[BODY_S] = settings.body_seconds
    for route in calls.CALLS:
        app.router.add_route(route.method, route.path, endpoint(route))
    app.router.add_get("/v1/openapi.json", openapi.serve)
    app.router.add_get("/health", system.health)
    app.router.add_get("/metrics", system.metrics)
    hooks.add_to(app)
    pages.add_to(app, options.choices, options.push_key)
    if options.live:
        app.cleanup_ctx.append(_living)
        app.cleanup_ctx.append(_ticking)
        app.cleanup_ctx.append(_hearing)
    app.cleanup_ctx.extend(background)
    app.on_shutdown.append(_end_streams)
    return app


def make_parts(settings: Settings, journal: Journal, clock: Clock, options: Options) -> Parts:
    """One of each part, joined."""
    pictures, hub, metrics = Pictures(journal), Hub(), Metrics()
    ticker = Ticker(
        journal,
        pictures,
        clock,
        settings,
        hub,
        metrics,
        channels=options.channels,
        expected={"outgoing:email": MAIL_CHECKED} if "email" in channels_of(settings) else {},
        beats=options.live,
    )
    guesses = Guesses(settings.guesses_per_quarter_hour)
    talks = Talks(profile_for)
    return Parts(settings, clock, journal, pictures, ticker, hub, metrics, guesses, talks, LifeSigns(journal))


SIGN_EVERY_S = 2.0
"""How often a server says that it does not hang; others wait for four of these (`keeping.HANGS_AFTER`)."""


async def _living(app: web.Application) -> AsyncIterator[None]:
    parts = app[PARTS]

    async def say_so() -> None:
        while True:
            await parts.signs.write(parts.clock.now())
            await asyncio.sleep(SIGN_EVERY_S)

    task = asyncio.create_task(say_so())
    yield
    task.cancel()
    await asyncio.gather(task, return_exceptions=True)


async def _ticking(app: web.Application) -> AsyncIterator[None]:
    parts = app[PARTS]
    schedule = Schedule(parts.ticker, parts.clock, parts.settings.tick_seconds_max)
    schedule.start()
    yield
    await schedule.stop()


async def _hearing(app: web.Application) -> AsyncIterator[None]:
    parts = app[PARTS]
    task = asyncio.create_task(parts.journal.hear(parts.ticker.heard))
    yield
    task.cancel()
    await asyncio.gather(task, return_exceptions=True)


async def _end_streams(app: web.Application) -> None:
    # An open stream would hold the cleanup for twice the shutdown time.
    app[PARTS].hub.close()
