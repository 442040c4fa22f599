"""What stands first on the page, by part: the sentence and its button, the alarm with its telephones, each part's own."""

from __future__ import annotations

import re
from datetime import timedelta

import aiohttp
import pytest

from server.conversation.telling.reader import Reader
from server.event.model import PartKind
from server.facts.entry import Kind
from server.pages.alarm_card import ladder_phones
from server.pages.first import first
from server.pages.labels import label
from server.pages.view import Pen
from server.sentences import languages
from tests.pages.conftest import EVENT, Site

READER = Reader("en", "Europe/London", "Europe/London")


async def _page(site: Site, person: str) -> str:
    async with (
        aiohttp.ClientSession(cookies={"stilepost": await site.token(person)}) as session,
        session.get(site.url + "/") as reply,
    ):
        assert reply.status == 200
        return await reply.text()


async def _said(site: Site, person: str, key: str, text: str) -> str:
    async with (
        aiohttp.ClientSession(cookies={"stilepost": await site.token(person)}) as session,
        session.post(
            site.url + "/v1/chat", json={"key": key, "text": text}, headers={"Origin": site.url}
        ) as reply,
    ):
        return str((await reply.json())["data"]["text"])


def _do(page: str) -> str:
    found = re.search(r'<p class="do">(.*?)</p>', page)
    return found.group(1) if found else ""


async def test_crew_read_first_by_when_they_leave_and_when_she_is_due(site: Site) -> None:
    """Ana's next meeting is Brindle Gate: one sentence with leave-by and likely time; hours before, what to bring."""
    page = await _page(site, "ana")
    assert re.fullmatch(r"Leave by \S+ for Brindle Gate\. Maren is due about \S+\.", _do(page))
    assert "After that: for Ember Quarry, once Maren has left Brindle Gate." in page
    assert "What to bring</button>" in page
    assert page.index('class="do"') < page.index("Last known")


async def test_on_the_way_and_there_the_sentence_follows(site: Site) -> None:
    """What the button says is understood, and the sentence says where one goes and until when one waits."""
    assert await _said(site, "ana", "k1", label("en", "say-on-way", place="Brindle Gate"))
    assert _do(await _page(site, "ana")).startswith("You are on the way to Brindle Gate: be there from")
    await _said(site, "ana", "k2", label("en", "say-there", place="Brindle Gate"))
    page = await _page(site, "ana")
    assert _do(page).startswith("You are at Brindle Gate. Maren is due about")
    assert "In at Brindle Gate</button>" in page


async def test_whoever_is_there_is_not_asked_whether_they_set_out(site: Site) -> None:
    """'Leave now' came and nobody pressed it; then Ana says that she is there: the button is what she sees there."""
    site.clock.advance(timedelta(hours=5, minutes=32))
    await site.parts.ticker.tick(site.clock.now())
    assert "On our way</button>" in await _page(site, "ana")
    await _said(site, "ana", "k3", label("en", "say-there", place="Brindle Gate"))
    page = await _page(site, "ana")
    assert "On our way</button>" not in page.partition('class="do"')[2].partition("</section>")[0]
    assert "In at Brindle Gate</button>" in page


@pytest.mark.parametrize("language", languages())
async def test_the_words_behind_buttons_are_understood_in_each_language(site: Site, language: str) -> None:
    """Pressed, they do what they say: crew on the way, crew there, in and out by bib."""
    for number, (person, key, values) in enumerate(
        (
            ("ana", "say-on-way", {"place": "Brindle Gate"}),
            ("ana", "say-there", {"place": "Brindle Gate"}),
            ("office", "say-in", {"bib": "214", "place": "Corrie Chapel"}),
            ("office", "say-out", {"bib": "214", "place": "Corrie Chapel"}),
        )
    ):
        site.clock.advance(timedelta(minutes=50))
        await _said(site, person, f"{language}{number}", label(language, key, **values))
    kinds = [e.kind for e in (await site.parts.journal.entries(EVENT))[2:]]
    assert kinds == [Kind.CREW_LEFT, Kind.CREW_THERE, Kind.IN, Kind.OUT]


async def test_an_open_alarm_stands_above_all_with_telephones_in_order(site: Site) -> None:
    """Ines calls race control: it is her first number, then the ladder, her runner's own last; her answers are beside it."""
    await site.report(Kind.ASKED_FOR_HELP, by="maren", words="fell")
    page = await _page(site, "ines")
    alarm = page[page.index('class="alarm') : page.index("<header>")]
    names = re.findall(r"<b>(.*?)</b> <small>(.*?)</small>", alarm)
    assert names == [
        ("Race control, Harrow Fold hall", "race control"),
        ("Ana", "crew"),
        ("Jonas", "crew"),
        ("Tomas", "pacer"),
        ("Maren", "runner"),
    ]
    first = re.search(r'<ul class="phones"><li><a href="tel:(\d+)">', alarm)
    assert first is not None
    assert first.group(1) == "112"
    assert "I have it</button>" in alarm
    assert 'class="answers open"' in alarm
    assert "NOBODY HAS BEEN REACHED" in alarm  # no channel of theirs works here
    pressed = re.search(r'data-press="([^"]+)">I have it', alarm)
    assert pressed is not None
    async with (
        aiohttp.ClientSession(cookies={"stilepost": await site.token("ines")}) as session,
        session.post(
            site.url + "/v1/chat",
            json={"key": "p1", "button": pressed.group(1)},
            headers={"Origin": site.url},
        ) as reply,
    ):
        assert reply.status == 200
    page = await _page(site, "ana")
    assert "Ines has answered and holds it" in page[: page.index("<header>")]
    assert 'class="answers"' in page, "who has it is not pushed aside by the next tired thumb"


async def test_who_called_for_help_is_asked_for_no_next_point(site: Site) -> None:
    """Her own page has the alarm first, and no button that has her in at the next point; her crew's keeps theirs."""
    await site.report(Kind.ASKED_FOR_HELP, by="maren", words="fell")
    page = await _page(site, "maren")
    assert 'class="alarm' in page
    assert _do(page) == ""
    assert 'class="go"' not in page
    assert _do(await _page(site, "ana")) != ""


async def test_nobody_is_offered_their_own_number(site: Site) -> None:
    """Ana's list has everybody else; race control stands behind the one who is to call it."""
    event = (await site.parts.pictures.take(EVENT, site.clock.now())).event
    pen = Pen(READER, site.clock.now())
    assert [b.name for b in ladder_phones(event, "maren", "ana", pen)] == [
        "Ines",
        "Race control, Harrow Fold hall",
        "Jonas",
        "Tomas",
        "Maren",
    ]


async def test_each_part_sees_its_own(site: Site) -> None:
    """At home: what to do when an alarm comes; the runner: her next section; a volunteer: bib, in, out, and no positions."""
    home, runner, office = [await _page(site, p) for p in ("ines", "maren", "office")]
    assert "When an alarm comes" in home
    assert _do(home).startswith("Nothing for you to do now. Next is ")
    assert "Your next section" in runner
    assert _do(runner).startswith("Next: ")
    assert 'id="bib"' in office
    assert "<h3>Report a runner</h3>" in office
    assert "<option selected>Long Stile outward</option>" in office
    assert "Still to come" not in office
    picture = await site.parts.pictures.take(EVENT, site.clock.now())
    volunteer = tuple(p for p in picture.event.parts_of("office") if p.kind is PartKind.VOLUNTEER)
    said = first(picture, "office", volunteer, Pen(READER, site.clock.now()))
    assert said.text == "Report each runner by bib, in and out."


async def test_her_page_has_her_section_and_no_leave_by(site: Site) -> None:
    """What lies before her, what she has with her, who meets her next with what in which car; no drive, no third person."""
    page = await _page(site, "maren")
    for told in (
        r"\+\d+ -\d+ m",
        "With you, by the plan: \\d+ bottles",
        "Your crew next: Long Stile homeward, ",
        r"poles \(grey estate\)",
        "that you make it",
    ):
        assert re.search(told, page), told
    assert "Leave by" not in page
    assert '<section class="estimate">' not in page
    assert "that she makes it" not in page


async def test_a_pacer_who_has_set_out_reads_where_they_run_to(site: Site) -> None:
    """From Ember Quarry on Tomas has no meeting to wait for: the next point, with its button."""
    assert "You run with" not in _do(await _page(site, "tomas"))
    site.clock.advance(timedelta(hours=14))
    await site.report(Kind.OUT, "ember")
    page = await _page(site, "tomas")
    assert re.match(r"You run with Maren to Harrow Fold finish\. Next: Candle Moss, about ", _do(page))
    assert "In at Candle Moss</button>" in page


async def test_at_home_the_windows_are_on_both_clocks(site: Site) -> None:
    """Ines reads in Berlin: beside each window on the race's clock the same on hers; Ana, at the race, one clock."""
    assert re.search(r"your clock: \d\d:\d\d \(\d\d:\d\d – \d\d:\d\d\)", await _page(site, "ines"))
    assert "your clock:" not in await _page(site, "ana")
