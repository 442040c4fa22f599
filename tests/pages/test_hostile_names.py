"""Names and words with markup, quotes and writing from the right: shown as they are, never read as part of the page."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import timedelta
from html.parser import HTMLParser

import aiohttp
import pytest
from aiohttp import web

from server.api.building import build
from server.api.parts import PARTS
from server.app import Options, make_app
from server.clock import SteppedClock
from server.facts.entry import Kind
from server.journal import Journal
from server.settings import Settings
from tests.pages.conftest import DEMO, EVENT, Site

TAGS = "<img src=x onerror=alert(1)>"
QUOTED = 'O\'Hara \\" onmouseover=alert(1) x=\\"'
HEBREW = "\u202eשרה"
HOSTILE = {
    'name = "Harrow Round 100"': f'name = "{TAGS}"',
    'name = "Ana"': f'name = "{QUOTED}"',
    'name = "Brindle Gate"': f'name = "</svg><script>alert(2)</script>{HEBREW}"',
    'name = "Maren"': 'name = "M<b>\'&amp;"',
    'food = "soup and bread, tea"': f'food = "{TAGS}"',
    'name = "blue van"': f'name = "{QUOTED}"',
}


@pytest.fixture
async def hostile(sqlite_url: str) -> AsyncIterator[Site]:
    text = (DEMO / "event.toml").read_text(encoding="utf-8")
    for calm, wild in HOSTILE.items():
        assert calm in text
        text = text.replace(calm, wild)
    files = {"route.gpx": (DEMO / "route.gpx").read_bytes()}
    event = build(text, files).event
    clock = SteppedClock(event.starts + timedelta(hours=3))
    journal = await Journal.open(sqlite_url)
    await journal.store_event(text, files, event, "test", clock.now())
    app = make_app(Settings(), journal, clock, options=Options(live=False))
    runner = web.AppRunner(app, shutdown_timeout=1.0)
    await runner.setup()
    await web.TCPSite(runner, "127.0.0.1", 0).start()
    yield Site(f"http://127.0.0.1:{runner.addresses[0][1]}", app[PARTS], clock)
    await runner.cleanup()
    await journal.close()


class _Elements(HTMLParser):
    """Every element and attribute that a browser would see."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.attributes: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += [name for name, _ in attrs]


@pytest.mark.parametrize("person", ["ana", "ines", "maren", "office"])
async def test_nothing_of_a_name_becomes_part_of_the_page(hostile: Site, person: str) -> None:
    """Board and chat with an open alarm in hostile words: no element and no attribute but our own."""
    await hostile.report(Kind.OUT, "mill", by="ana")
    await hostile.report(Kind.ASKED_FOR_HELP, by="maren", words=f"fell {TAGS} \"'")
    async with (
        aiohttp.ClientSession(cookies={"stilepost": await hostile.token(person)}) as session,
        session.get(f"{hostile.url}/board/{EVENT}") as reply,
    ):
        assert reply.status == 200
        text = await reply.text()
    seen = _Elements()
    seen.feed(text)
    assert "img" not in seen.tags
    assert [t for t in seen.tags if t == "script"] == ["script"] * 5
    assert not [a for a in seen.attributes if a.startswith("on")]
    assert "&lt;img src=x onerror" in text
    assert TAGS not in text
