"""Pages without a browser: who sees them, what they carry, and that nothing comes from elsewhere."""

from __future__ import annotations

import asyncio
import json
import re
from contextlib import ExitStack
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from xml.etree import ElementTree

import aiohttp
import pytest

from server.api.hub import STREAMS_MAX, Hub
from server.api.replies import BoardAnswer, RaceNote, RunnerBoard
from server.conversation.telling.answer import ForecastAnswer, Freshness, LastFact, PointAnswer
from server.conversation.telling.reader import Reader
from server.facts.entry import Kind
from server.facts.stop_log import Item, Level, Logged
from server.forecast.outlook import Window
from server.journal import Outcome
from server.pages.bars import axis
from server.pages.labels import label
from server.pages.profile import profile_svg
from server.pages.routes import static_path
from server.pages.stream import NOT_OPEN
from server.pages.view import Pen, board_view
from server.sentences import languages
from tests.pages.conftest import EVENT, Site


async def _get(site: Site, path: str, person: str | None = None) -> tuple[int, str, dict[str, str]]:
    cookies = {"stilepost": await site.token(person)} if person else {}
    async with (
        aiohttp.ClientSession(cookies=cookies) as session,
        session.get(site.url + path, allow_redirects=False) as reply,
    ):
        return reply.status, await reply.text(), dict(reply.headers)


async def test_a_stranger_is_shown_nothing(site: Site) -> None:
    """Neither name nor place, only how to join."""
    status, text, _ = await _get(site, "/")
    assert status == 200
    assert "Join a crew" in text
    assert "Maren" not in text.replace('data-be="maren">Maren', "")
    assert "Skelter" not in text


async def test_the_board_says_facts_estimates_and_times_apart(site: Site) -> None:
    """Last known point with its time and who told it; the estimate under its own heading."""
    _, text, _ = await _get(site, "/", "ana")
    assert "Out of Skelter Mill" in text
    assert "reported by Ana, 22 min ago" in text
    assert "Estimate, not seen" in text
    assert "Brindle Gate" in text
    assert "Leave by" in text


@pytest.mark.parametrize("path", ["/", "/join", "/board/harrow-round", "/board/harrow-round/part"])
async def test_every_page_is_closed_to_the_outside(site: Site, path: str) -> None:
    """Content security policy, no framing, no caching, and no address of any other host in the page."""
    _, text, headers = await _get(site, path, "ana")
    assert headers["Content-Security-Policy"].startswith("default-src 'none'")
    assert "unsafe" not in headers["Content-Security-Policy"]
    assert headers["Cache-Control"] == "no-store"
    outside = [
        u
        for u in re.findall(r'(?:src|href)="([^"]+)"', text)
        if not u.startswith(("/", "#", "tel:", "data:", "geo:"))
    ]
    assert outside == []
    assert "<script>" not in text
    assert not re.search(r"\sstyle=|\son\w+=", text)


async def test_where_she_has_just_been_seen_is_no_stretch(site: Site) -> None:
    """No 'between 21.0 and 21.0 km'."""
    site.clock.advance(timedelta(hours=2))
    await site.report(Kind.OUT, "chapel")
    _, text, _ = await _get(site, "/", "ana")
    assert "near 38.1 km on the course" in text
    assert "between 38.1 km and 38.1 km" not in text


async def test_a_supporters_board_has_no_numbers_and_no_estimate(site: Site) -> None:
    """The organiser-volunteer of the demo has all; somebody whose part is smaller gets less."""
    _, text, _ = await _get(site, "/", "ana")
    assert "+44 7700 900105" in text or "tel:+44770090010" in text
    status, _, _ = await _get(site, "/board/other-event", "ana")
    assert status == 403


async def test_joining_sets_a_cookie_no_script_reads(site: Site) -> None:
    """HttpOnly, strict, and only for a request that comes from our own page."""
    code = await site.parts.journal.invite("jonas", EVENT, "t", site.clock.now(), timedelta(hours=1))
    async with aiohttp.ClientSession() as session:
        async with session.post(site.url + "/join", json={"code": code}) as reply:
            assert (reply.status, (await reply.json())["error"]["code"]) == (403, "not_from_here")
        headers = {"Origin": site.url}
        async with session.post(
            site.url + "/join", json={"code": code, "preview": True}, headers=headers
        ) as reply:
            first, asked = (await reply.json())["data"]["you"].split("\n")
            assert first == "Hello Jonas, you are crew for Maren at Harrow Round 100. Is that you?"
            assert asked.startswith("You are told when to leave and where to be")
            assert "Set-Cookie" not in reply.headers
        async with session.post(site.url + "/join", json={"code": code}, headers=headers) as reply:
            cookie = reply.headers["Set-Cookie"]
    assert "HttpOnly" in cookie
    assert "SameSite=Strict" in cookie


@pytest.mark.parametrize("origin", [None, "https://evil.example", "null"])
async def test_a_cookie_from_another_page_changes_nothing(site: Site, origin: str | None) -> None:
    """A forged form is refused for API calls and chat alike, and keeps nothing."""
    before = len(await site.parts.journal.entries(EVENT))
    headers = {"Origin": origin} if origin else {}
    async with aiohttp.ClientSession(cookies={"stilepost": await site.token("ana")}) as session:
        for path, body in (
            (f"/v1/events/{EVENT}/runners/maren/checkins", {"kind": "in", "point": "chapel"}),
            ("/v1/chat", {"key": "k", "text": "in at chapel"}),
        ):
            async with session.post(site.url + path, json=body, headers=headers) as reply:
                assert (reply.status, (await reply.json())["error"]["code"]) == (403, "not_from_here")
    assert len(await site.parts.journal.entries(EVENT)) == before


async def test_the_stream_says_when_to_look_again(site: Site) -> None:
    """An open page hears 'changed' after a report, and gets a notice to its person as a message."""
    async with (
        aiohttp.ClientSession(cookies={"stilepost": await site.token("jonas")}) as session,
        session.get(site.url + "/stream") as reply,
    ):
        await reply.content.readuntil(b"\n\n")
        await site.report(Kind.ASKED_FOR_HELP, words="fell")
        kinds: dict[str, str] = {}
        # What was owed before the report comes first where a claim falls between the two.
        while "changed" not in kinds or "urgent" not in kinds:
            # One message a second goes to an address: on a clock that stands still the next would never come.
            site.clock.advance(timedelta(seconds=2))
            block = (await asyncio.wait_for(reply.content.readuntil(b"\n\n"), 60)).decode()
            found = dict(
                line.split(": ", 1) for line in block.strip().splitlines() if not line.startswith(":")
            )
            if found.get("event") == "message" and json.loads(found["data"]).get("urgent"):
                kinds.setdefault("urgent", found["data"])  # the alarm comes first, what is known after it
            elif "event" in found:
                kinds.setdefault(found["event"], found["data"])
    assert kinds["changed"] == EVENT
    assert "HELP IS NEEDED" in json.loads(kinds["urgent"])["text"]


async def test_an_alarm_that_found_no_page_open_comes_as_one_opens(site: Site) -> None:
    """Not only when it would be tried again, three quarters of a minute later."""
    token, now, journal = await site.token("jonas"), site.clock.now(), site.parts.journal
    await journal.bind("jonas", "web", "s-jonas", now)
    await site.report(Kind.ASKED_FOR_HELP, words="fell")
    waiting = [d for d in await journal.deliveries(EVENT) if d.channel == "web"]
    assert waiting
    for owed in waiting:
        await journal.report(owed.id, Outcome.LATER, now, tries=owed.tries, retry_after=NOT_OPEN)
    async with (
        aiohttp.ClientSession(cookies={"stilepost": token}) as session,
        session.get(site.url + "/stream") as reply,
    ):
        block = b""
        while b"HELP IS NEEDED" not in block:
            block = await asyncio.wait_for(reply.content.readuntil(b"\n\n"), 10)


async def test_a_stopping_server_ends_streams_at_once(site: Site) -> None:
    """An open page does not hold the server back."""
    async with (
        aiohttp.ClientSession(cookies={"stilepost": await site.token("jonas")}) as session,
        session.get(site.url + "/stream") as reply,
    ):
        await reply.content.readuntil(b"\n\n")
        site.parts.hub.close()
        rest = await asyncio.wait_for(reply.content.read(), 3)
    assert b"event:" not in rest


async def test_an_alarm_nobody_answers_is_in_capitals_with_a_mark(site: Site) -> None:
    """No channel works for anybody: the board says so loudly, with numbers to tap."""
    await site.report(Kind.ASKED_FOR_HELP, words="fell")
    site.clock.advance(timedelta(minutes=6))
    await site.parts.ticker.tick(site.clock.now())
    _, text, _ = await _get(site, "/", "ines")
    assert "NOBODY HAS BEEN REACHED" in text
    assert "▲!" in text
    assert "tel:" in text


async def test_the_profile_is_a_picture_for_those_who_may(site: Site) -> None:
    """SVG and PNG; well-formed; the fact is drawn as a line with its time."""
    path = f"/v1/events/{EVENT}/runners/maren/picture"
    status, text, _ = await _get(site, path + ".svg", "ana")
    root = ElementTree.fromstring(text)
    words = [e.text for e in root.iter() if e.get("class") == "known" and e.text]
    assert status == 200
    assert any("out of Skelter Mill" in w for w in words)
    async with (
        aiohttp.ClientSession(cookies={"stilepost": await site.token("ana")}) as session,
        session.get(site.url + path + ".png") as reply,
    ):
        assert (await reply.read())[:8] == b"\x89PNG\r\n\x1a\n"
    assert (await _get(site, path + ".svg"))[0] == 401


async def test_the_chat_answers_and_reports(site: Site) -> None:
    """The desk behind the page answers a question and keeps a report."""
    async with aiohttp.ClientSession(cookies={"stilepost": await site.token("ana")}) as session:
        said = []
        for key, text in (("k1", "where is she"), ("k2", "in at chapel")):
            async with session.post(
                site.url + "/v1/chat", json={"key": key, "text": text}, headers={"Origin": site.url}
            ) as reply:
                said.append((reply.status, (await reply.json())["data"]["text"]))
    assert [s for s, _ in said] == [200, 200]
    assert "Skelter Mill" in said[0][1]
    assert (await site.parts.journal.entries(EVENT))[-1].point == "chapel"


@pytest.mark.parametrize("person", ["ana", "jonas"])
async def test_the_board_gives_the_times_that_the_chat_gives(site: Site, person: str) -> None:
    """One leave-by wherever it stands: who reads two takes the later."""
    async with (
        aiohttp.ClientSession(cookies={"stilepost": await site.token(person)}) as session,
        session.post(
            site.url + "/v1/chat", json={"key": "k1", "text": "when do i leave"}, headers={"Origin": site.url}
        ) as reply,
    ):
        said = re.match(r"Leave by (\S+) for .+; be there from (\S+)\.", (await reply.json())["data"]["text"])
    assert said is not None
    _, page, _ = await _get(site, "/", person)
    assert all(f"<dd>{time}" in page for time in said.groups())


async def test_static_files_are_kept_for_ever_and_only_ours(site: Site) -> None:
    """The content's hash is in the path; other names, dotfiles and paths upward are nothing."""
    status, _, headers = await _get(site, static_path("board.js"))
    assert (status, "immutable" in headers["Cache-Control"]) == (200, True)
    for name in ("nothing.js", ".env", "..%2f..%2fapp.py"):
        assert (await _get(site, f"/static/x/{name}"))[0] == 404


async def test_being_somebody_is_for_the_demo_alone(site: Site) -> None:
    """Only those the demo names, and nobody where it names none."""
    async with aiohttp.ClientSession() as session:
        headers = {"Origin": site.url}
        async with session.post(site.url + "/be/ines", headers=headers) as reply:
            assert reply.status == 204
        async with session.post(site.url + "/be/nobody", headers=headers) as reply:
            assert reply.status == 404


def test_pages_have_words_of_their_own_in_each_language() -> None:
    """Not the fallback under another name; that none lacks any is tested with the other sentences."""
    assert len({label(language, "last-known") for language in languages()}) == len(languages())


async def test_the_board_names_the_channel_that_is_deaf_and_who_changed_the_race(site: Site) -> None:
    """'Our own channels' helps nobody at night: which one, so that those who use it are telephoned."""
    board = BoardAnswer(
        EVENT, "Harrow", "Europe/London", (), "112", False, None,
        race_notes=(RaceNote("cut-off in moved", "Moss", until=site.clock.now(), by="Olga"), RaceNote("rerouted")),
        blind_since=site.clock.now(), blind=("telegram", "text"),
    )  # fmt: skip
    view = board_view(board, None, Pen(Reader("en", "UTC", "UTC"), site.clock.now()))
    assert view.blind.startswith("Our Telegram bot and our text messages DOWN since")
    assert view.race[0].startswith("Cut-off in at Moss is now ")
    assert view.race[0].endswith(", says Olga")
    assert view.race[1] == "The course has been rerouted"


async def test_a_point_whose_window_is_over_is_not_ahead(site: Site) -> None:
    """She was expected at Brindle Gate hours ago and nobody has said anything: it stands under a heading of its own."""
    forecast = ForecastAnswer(
        "maren",
        "Maren",
        tuple(
            PointAnswer(p, p, km, Window(p, *(site.clock.now() + timedelta(minutes=m) for m in minutes)))
            for p, km, minutes in (("gate", 45.0, (-200, -160, -70)), ("low", 60.0, (-60, 5, 70)))
        ),
        Freshness(None),
    )
    board = BoardAnswer(
        EVENT, "Harrow", "Europe/London", (RunnerBoard("maren", "Maren", "214", forecast=forecast),), "112", False, None
    )  # fmt: skip
    (runner,) = board_view(board, None, Pen(Reader("en", "UTC", "UTC"), site.clock.now())).runners
    assert [p.name for p in runner.unheard] == ["gate"]
    assert [p.name for p in runner.ahead] == ["low"]


def test_a_point_behind_where_she_was_seen_is_not_ahead() -> None:
    """Seen beyond Brindle Gate she comes there no more, however far its window reaches."""
    now = datetime(2027, 9, 11, 14, 0, tzinfo=UTC)
    points = tuple(
        PointAnswer(p, p, km, Window(p, *(now + timedelta(minutes=m) for m in (-20, 40, 90))))
        for p, km in (("gate", 45.0), ("low", 60.0))
    )
    last = LastFact("in", now, "Ana", "howe", "Kettle Howe", 50.0)
    forecast = ForecastAnswer("maren", "Maren", points, Freshness(last))
    runner = RunnerBoard("maren", "Maren", "214", forecast=forecast)
    board = BoardAnswer(EVENT, "Harrow", "Europe/London", (runner,), "112", False, None)
    pen = Pen(Reader("en", "UTC", "UTC"), now)
    (view,) = board_view(board, None, pen).runners
    drawn = axis(runner, pen)
    assert [p.name for p in view.ahead] == ["low"]
    assert drawn is not None
    assert [(b.name, b.past) for b in drawn.bars] == [("gate", True), ("low", False)]


def test_one_person_has_so_many_streams_at_once() -> None:
    """One more ends the oldest of theirs, and nobody else's."""
    hub = Hub()
    with ExitStack() as open_ones:
        other = open_ones.enter_context(hub.listening("ana", "a", frozenset()))
        mine = [
            open_ones.enter_context(hub.listening("jonas", f"j{n}", frozenset())) for n in range(STREAMS_MAX)
        ]
        assert all(x.waiting.empty() for x in (other, *mine))
        newest = open_ones.enter_context(hub.listening("jonas", "new", frozenset()))
        assert mine[0].waiting.get_nowait() is None
        assert all(x.waiting.empty() for x in (other, *mine[1:], newest))
        assert hub.addresses == {"a", "new", *(f"j{n}" for n in range(1, STREAMS_MAX))}


async def test_the_board_has_the_stop_log_of_those_who_may_see_it(site: Site) -> None:
    """Crew and home read it in a section of its own; the race's office has to say first that they are a medic, and of a
    runner at a point crew get the button that logs the stop."""
    site.clock.set(site.clock.now() + timedelta(hours=4))
    await site.report(Kind.IN, "stile-back", by="jonas")
    await site.report(
        Kind.LOG, "stile-back", logged=(Logged(Item.DRANK, 500.0), Logged(Item.PAINKILLER, level=Level.NONE))
    )
    for person in ("ana", "ines"):
        _, text, _ = await _get(site, "/", person)
        (section,) = re.findall(r'<section class="log">.*?</section>', text, re.DOTALL)
        assert "drank 500 ml" in section
        assert "no painkiller" in section
    _, text, _ = await _get(site, "/", "ana")
    assert "Log the stop" in text
    _, text, _ = await _get(site, "/", "office")
    assert "500 ml" not in text


async def test_the_profile_counts_in_the_readers_unit(site: Site) -> None:
    """Who reads miles has a scale in miles, and the same picture else."""
    picture = await site.parts.pictures.take(EVENT, site.clock.now())
    course = picture.course("maren")
    drawn = [profile_svg(picture.event, "maren", course, miles=m) for m in (False, True)]
    scales = [re.findall(r'<text class="scale"[^>]*middle[^>]*>([^<]+)<', d) for d in drawn]
    assert (scales[0][0], scales[1][0]) == ("0 km", "0 mi")
    assert int(scales[1][-1]) <= 100 < int(scales[0][-1])


async def test_a_changed_line_is_drawn_anew(site: Site) -> None:
    """The ground is kept by the line it was drawn of: another line of that course has its own."""
    picture = await site.parts.pictures.take(EVENT, site.clock.now())
    course = picture.course("maren")
    higher = replace(course, height_m=course.height_m * 2.0)
    drawn = [profile_svg(picture.event, "maren", c) for c in (course, higher, course)]
    grounds = [re.findall(r'<polygon class="ground"[^>]*points="([^"]*)"', d) for d in drawn]
    assert grounds[0] == grounds[2] != grounds[1]
