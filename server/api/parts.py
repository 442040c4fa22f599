"""What the handlers share, put into the aiohttp app by `server.app`: each part replaceable by argument."""

from __future__ import annotations

from dataclasses import dataclass

from aiohttp import web

from server.api.hub import Hub
from server.api.limits import Guesses
from server.api.metrics import Metrics
from server.api.signs import LifeSigns
from server.api.snapshot import Pictures
from server.api.talks import Talks
from server.api.ticker import Ticker
from server.clock import Clock
from server.journal import Journal
from server.settings import Settings


@dataclass(frozen=True, slots=True)
class Parts:
    """One of each: the clock, the journal, and what is built on them."""

    settings: Settings
    clock: Clock
    journal: Journal
    pictures: Pictures
    ticker: Ticker
    hub: Hub
    metrics: Metrics
    guesses: Guesses
    talks: Talks
    signs: LifeSigns


PARTS = web.AppKey("PARTS", Parts)
