"""Answering from a mail: the link shows, the press counts; whatever else opens the link answers for nobody."""

from __future__ import annotations

import asyncio
import re
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import timedelta
from html import unescape
from typing import Any

import aiohttp
import pytest

from bot.service_client import ServiceClient
from server.api import answer_links, auth
from server.conversation.telling.message import event_mark
from server.facts.entry import Kind
from server.forecast.outlook import Window
from server.journal import Journal
from server.settings import Settings
from server.watch.notice import LateValues, Made, Notice, NoticeKey, NoticeKind, Urgency
from server.watch.notice import TestAlarmValues as AlarmTried
from tests.pages.conftest import EVENT, Site

PUBLIC = "https://crew.example.org"
MARK = event_mark(EVENT)
LINK = re.compile(re.escape(PUBLIC) + r"(/answer\?t=([A-Za-z0-9_-]{43}))")


@pytest.fixture
def settings() -> Settings:
    """An installation that people reach."""
    return Settings(public_url=PUBLIC)


@pytest.fixture
async def mailing(site: Site) -> Site:
    """The site, and Ines to be reached by mail alone."""
    await site.parts.journal.bind("ines", "email", "ines@example.org", site.clock.now())
    return site


async def owe(
    site: Site, kind: NoticeKind = NoticeKind.TEST_ALARM, values: Any = None, point: str = ""
) -> int:
    """A notice to Ines; its short number."""
    now = site.clock.now()
    key = NoticeKey(EVENT, "maren", "ines", kind, point, len(await site.parts.journal.made(EVENT)) + 1)
    owed = Notice(key, Urgency.ACTION, now, None, True, values or AlarmTried(now))
    (made,) = await site.parts.journal.add_notices([owed], now)
    return made.short


async def claimed(site: Site) -> list[str]:
    """The texts of the mails that are due, as the channel gets them."""
    secret = await site.parts.journal.issue_token(None, "m", [auth.channel_scope("email")], site.clock.now())
    async with aiohttp.ClientSession() as session:
        found = await ServiceClient(session, site.url, secret).claim("email", 10, 60.0)
    return [d.text for d in found.deliveries]


async def mailed(site: Site) -> str:
    """The path of the link in the one mail that is due."""
    (text,) = await claimed(site)
    found = LINK.search(text)
    assert found is not None, text
    return found[1]


async def made(site: Site, short: int) -> Made:
    """A notice as it stands."""
    return next(m for m in await site.parts.journal.made(EVENT) if m.short == short)


@asynccontextmanager
async def browser() -> AsyncIterator[aiohttp.ClientSession]:
    """A browser that is logged in nowhere."""
    async with aiohttp.ClientSession() as session:
        yield session


def buttons(page: str) -> list[tuple[str, str]]:
    """Label and data of each button of a page."""
    found = re.findall(r'name="press" value="([^"]*)">([^<]*)<', page)
    return [(unescape(label), unescape(data)) for data, label in found]


async def get(site: Site, path: str, method: str = "GET") -> tuple[int, str]:
    """Status and page."""
    async with browser() as b, b.request(method, site.url + path) as reply:
        return reply.status, await reply.text()


async def press(site: Site, path: str, data: str) -> tuple[int, str]:
    """Press a button of the page behind a link."""
    form = {"t": path.partition("t=")[2], "press": data}
    async with browser() as b, b.post(site.url + "/answer", data=form) as reply:
        return reply.status, await reply.text()


async def test_a_mail_has_a_link_under_its_first_line_and_the_page_its_buttons(mailing: Site) -> None:
    """The page says the notice's words and has the answers a chat would have under them."""
    short = await owe(mailing)
    (text,) = await claimed(mailing)
    lines = [line for line in text.split("\n") if line]
    assert LINK.search(lines[1])
    assert "read by nobody" in lines[-1]
    found = LINK.search(text)
    assert found is not None
    status, page = await get(mailing, found[1])
    assert status == 200
    assert unescape(page).count(lines[0]) == 1
    assert [data for _, data in buttons(page)] == [f"n|{short}|i have it||maren|{MARK}"]


@pytest.mark.parametrize("method", ["GET", "HEAD"])
async def test_a_machine_that_follows_links_answers_nothing(mailing: Site, method: str) -> None:
    """However often it looks: the notice waits, and the link still holds."""
    short = await owe(mailing)
    path = await mailed(mailing)
    entries = len(await mailing.parts.journal.entries(EVENT))
    for _ in range(5):
        assert (await get(mailing, path, method))[0] == 200
    assert (await made(mailing, short)).answered_at is None
    assert len(await mailing.parts.journal.entries(EVENT)) == entries
    _, page = await get(mailing, path)
    assert buttons(page)


async def test_a_press_is_an_answer_like_any_other(mailing: Site) -> None:
    """Answered, by her, with the button's word; the page says so; a second tap changes nothing."""
    short = await owe(mailing)
    path = await mailed(mailing)
    ((_, data),) = buttons((await get(mailing, path))[1])
    status, page = await press(mailing, path, data)
    assert status == 200
    first = await made(mailing, short)
    assert (first.answer, first.answered_at) == ("i have it", mailing.clock.now())
    entries = [e for e in await mailing.parts.journal.entries(EVENT) if e.kind is Kind.ANSWERED]
    assert [(e.by, e.person) for e in entries] == [("ines", "ines")]
    mailing.clock.advance(timedelta(minutes=1))
    status, page = await press(mailing, path, data)
    assert (status, buttons(page)) == (200, [])
    assert "Nothing more is needed" in page
    assert (await made(mailing, short)) == first
    assert "Nothing more is needed" in (await get(mailing, path))[1]


async def test_two_taps_at_once_are_one_answer(mailing: Site) -> None:
    """The slower of two requests finds it answered."""
    await owe(mailing)
    path = await mailed(mailing)
    ((_, data),) = buttons((await get(mailing, path))[1])
    await asyncio.gather(*(press(mailing, path, data) for _ in range(3)))
    assert [e.kind for e in await mailing.parts.journal.entries(EVENT)].count(Kind.ANSWERED) == 1


async def test_every_attempts_link_holds(mailing: Site) -> None:
    """A mail whose fate is unknown is sent again with a link of its own; either may be the one that arrived."""
    await owe(mailing)
    first = await mailed(mailing)
    mailing.clock.advance(timedelta(minutes=2))
    again = await mailed(mailing)
    assert first != again
    for path in (first, again):
        assert buttons((await get(mailing, path))[1])


@pytest.mark.parametrize(
    ("after", "holds"), [(timedelta(hours=23, minutes=59), True), (timedelta(hours=24), False)]
)
async def test_a_link_ends_after_a_day(mailing: Site, after: timedelta, holds: bool) -> None:
    """Before, at: and then it neither shows nor answers, and says what to do."""
    short = await owe(mailing)
    path = await mailed(mailing)
    mailing.clock.advance(after)
    status, page = await get(mailing, path)
    assert (status == 200) is holds
    if not holds:
        assert "telephone your crew" in page
        assert (await press(mailing, path, f"n|{short}|i have it||maren|{MARK}"))[0] == 403
        assert (await made(mailing, short)).answered_at is None


async def test_a_link_answers_nothing_but_its_own_notice(mailing: Site) -> None:
    """Another notice, a report, the undoing of an entry: not with this token, whatever is written into the form."""
    short, other = await owe(mailing), await owe(mailing, NoticeKind.FINISHED)
    paths = [LINK.search(text) for text in await claimed(mailing)]
    found = paths[0]
    assert found is not None
    entry = (await mailing.parts.journal.entries(EVENT))[0].id
    for data in (
        f"n|{other}|in hand||maren|{MARK}",
        f"n|{short}|cannot||maren|{MARK}",
        "r|in|chapel|maren|0",
        f"u|{entry}|0",
        "x",
        "",
    ):
        _, page = await press(mailing, found[1], data)
        assert buttons(page), data
    assert (await made(mailing, short)).answered_at is None
    assert (await made(mailing, other)).answered_at is None


async def test_a_links_token_opens_nothing_else(mailing: Site) -> None:
    """Not the API, not the chat, not the board: it is no person's token."""
    await owe(mailing)
    secret = (await mailed(mailing)).partition("t=")[2]
    async with aiohttp.ClientSession(headers={"Authorization": f"Bearer {secret}"}) as session:
        for path in ("/v1/me", f"/v1/events/{EVENT}/board", f"/v1/events/{EVENT}/notices"):
            async with session.get(mailing.url + path) as reply:
                assert reply.status == 403, path


async def test_no_other_token_is_a_link(mailing: Site) -> None:
    """A person's, a channel's, one of nobody's, none: the same page for all, and nothing is learned."""
    short = await owe(mailing)
    journal, now = mailing.parts.journal, mailing.clock.now()
    others = [
        await mailing.token("ines"),
        await journal.issue_token(None, "c", [auth.channel_scope("email")], now),
        await journal.issue_token("ana", "x", [answer_links.scope(EVENT, short)], now),
        await journal.issue_token("ines", "x", [answer_links.scope(EVENT, 9999)], now),
        "nonsense",
        "",
    ]
    pages = {(await get(mailing, f"/answer?t={secret}")) for secret in others}
    assert len(pages) == 1
    assert next(iter(pages))[0] == 403
    for secret in others:
        await press(mailing, f"/answer?t={secret}", f"n|{short}|i have it||maren|{MARK}")
    assert (await made(mailing, short)).answered_at is None


async def test_late_is_asked_further_on_the_page(mailing: Site) -> None:
    """'Yes, she has been here': when? The buttons that follow are of use too, and make the report."""
    now = mailing.clock.now()
    window = Window("chapel", *(now - timedelta(minutes=m) for m in (40, 20, 5)))
    short = await owe(mailing, NoticeKind.LATE, LateValues("chapel", window, None), "chapel")
    path = await mailed(mailing)
    assert [d.split("|")[2] for _, d in buttons((await get(mailing, path))[1])] == [
        "yes",
        "not yet",
        "nobody there",
    ]
    first = next(d for _, d in buttons((await get(mailing, path))[1]) if "|yes|" in d)
    _, page = await press(mailing, path, first)
    asked = [data for _, data in buttons(page)]
    assert all(data.startswith("r|in|chapel|maren|") for data in asked)
    ten = next(data for data in asked if data.endswith(f"|10|{MARK}"))
    assert (await press(mailing, path, "r|out|chapel|maren|0"))[0] == 200
    _, page = await press(mailing, path, ten)
    (entry,) = [
        e for e in await mailing.parts.journal.entries(EVENT) if e.point == "chapel" and e.kind is Kind.IN
    ]
    assert (entry.by, entry.seen_at) == ("ines", now - timedelta(minutes=10))
    assert (await made(mailing, short)).answer == "yes"


@pytest.mark.parametrize("settings", [Settings()])
async def test_without_a_public_address_a_mail_says_how_to_answer(site: Site) -> None:
    """No link, that replies are read by nobody, and whom to telephone."""
    await site.parts.journal.bind("ines", "email", "ines@example.org", site.clock.now())
    await owe(site)
    (text,) = await claimed(site)
    assert "/answer" not in text
    assert "read by nobody" in text
    assert re.search(r"telephone [A-Z]\w+.*\+", text)


async def test_other_channels_say_nothing_of_mails(mailing: Site) -> None:
    """In a chat the buttons are under the text."""
    await mailing.parts.journal.unbind("email", "ines@example.org")
    await mailing.parts.journal.bind("ines", "telegram", "7", mailing.clock.now())
    await owe(mailing)
    secret = await mailing.parts.journal.issue_token(
        None, "t", [auth.channel_scope("telegram")], mailing.clock.now()
    )
    async with aiohttp.ClientSession() as session:
        found = await ServiceClient(session, mailing.url, secret).claim("telegram", 10, 60.0)
    assert ["/answer" in d.text for d in found.deliveries] == [False]


async def test_the_text_that_is_kept_holds_no_link(mailing: Site) -> None:
    """What is stored of an attempt can't be used to answer."""
    short = await owe(mailing)
    await mailed(mailing)
    journal: Journal = mailing.parts.journal
    kept = [a.text for a in await journal.attempts(EVENT, short)]
    assert kept
    assert all("/answer" not in text for text in kept)
