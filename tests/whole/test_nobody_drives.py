"""Nights on which nobody can drive, or pace: through the real server, as people write it, and what each of them is told."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import datetime, timedelta

import pytest

from server.watch.notice import NoticeKind
from tests.whole import hill
from tests.whole.night import Night, night

K = NoticeKind
STARTS = datetime(2027, 6, 19, 20, 0, tzinfo=hill.ZONE)
MINUTE = timedelta(minutes=1)
NEWS = (K.UNCOVERED, K.COVERED)


def _hour_away() -> str:
    """Jonas and the estate wait at a hut: an hour from Hollin Mill, three quarters from the tarn."""
    text = hill.event_text(STARTS).replace(
        'name = "grey estate"\nseats = 4\nstarts_at = "start"',
        'name = "grey estate"\nseats = 4\nstarts_at = "hut"',
    )
    drives = "".join(
        f'\n[[drives]]\nfrom = "hut"\nto = "{to}"\nminutes = {minutes}\nconfirmed_by = "jonas"\n'
        for to, minutes in (("hollin", 60), ("tarn", 45))
    )
    way = '\n[[drives]]\nfrom = "hollin"\nto = "tarn"\nminutes = 35\nconfirmed_by = "jonas"\n'
    return text + drives + way


def _one_car() -> str:
    """Ana is the only one who drives."""
    text = hill.event_text(STARTS).replace(
        '"maren", ladder = 3, can_telephone = true, drives = true, car = "estate"',
        '"maren", ladder = 3, can_telephone = true',
    )
    return text.replace('crew = ["jonas"]\ncar = "estate"', 'crew = ["ana"]\ncar = "van"')


def _paced() -> str:
    """Nils joins her at the tarn; he comes with Jonas."""
    text = hill.event_text(STARTS).replace('food = "rice, tea"', 'pacer_joins = "nils"\nfood = "rice, tea"')
    return text + (
        '\n[[people]]\nid = "nils"\nname = "Nils"\nphone = "+44 7700 900309"\n'
        'parts = [{ kind = "pacer", runner = "maren" }]\n'
    )


@pytest.fixture
async def an_hour(sqlite_url: str) -> AsyncIterator[Night]:
    """Ten minutes before the start."""
    async with night(sqlite_url, _hour_away(), hill.files(), STARTS - 10 * MINUTE) as n:
        yield n


@pytest.fixture
async def one_car(sqlite_url: str) -> AsyncIterator[Night]:
    """The same with one driver."""
    async with night(sqlite_url, _one_car(), hill.files(), STARTS - 10 * MINUTE) as n:
        yield n


@pytest.fixture
async def paced(sqlite_url: str) -> AsyncIterator[Night]:
    """The same with a pacer."""
    async with night(sqlite_url, _paced(), hill.files(), STARTS - 10 * MINUTE) as n:
        yield n


def told(n: Night, who: str, *kinds: K) -> str:
    """All that somebody was told of those kinds."""
    return "\n".join(t.text for t in n.notices(who) if t.kind in kinds)


async def test_the_van_breaks_down_and_the_other_car_is_an_hour_away(an_hour: Night) -> None:
    """Jonas hears by when he would have to leave and what lies in the van, takes it with one press and is sent; then the
    van runs again, and he need not go."""
    n = an_hour
    await n.until("20:02")
    await n.reports("office", "out", "start", minutes_ago=2)
    await n.until("20:30")
    reply = await n.says("ana", "my van broke down")
    assert reply.startswith("You first: off the road")
    assert "Told to Ines and Jonas" in reply
    assert "Nobody goes to Hollin Mill to meet Maren now: Ana can’t (the car)." in told(
        n, "jonas", K.UNCOVERED
    )
    assert "60 min drive from hut" in told(n, "jonas", K.UNCOVERED) or "1 h drive from hut" in told(
        n, "jonas", K.UNCOVERED
    )
    assert "in white van: two full bottles and head torch" in told(n, "jonas", K.UNCOVERED)
    await n.wait(4)
    assert "It is yours" in await n.presses("jonas", "i go")
    assert "You go to Hollin Mill to meet Maren, for Ana" in told(n, "jonas", K.COVERED)
    for who in ("ana", "ines"):
        assert "Jonas goes to Hollin Mill to meet Maren, for Ana." in told(n, who, K.COVERED)
    await n.until_told("jonas", K.LEAVE_NOW)
    assert not n.notices("ana", K.LEAVE_NOW)
    await n.presses("jonas", "on our way")
    await n.wait(5)
    await n.says("ana", "got it started again")
    assert "You need not go" in told(n, "jonas", K.COVERED)
    await n.wait(5)


async def test_the_only_driver_falls_asleep_at_the_wheel(one_car: Night) -> None:
    """First Ana herself; nobody can come: home, the office and Maren hear so, and what she will not have."""
    n = one_car
    await n.until("20:02")
    await n.reports("office", "out", "start", minutes_ago=2)
    await n.until("21:24")
    await n.says("vera", "51 in at larch 21:20 out 21:23")
    asleep = n.clock.now()
    reply = await n.says("ana", "im falling asleep at the wheel")
    assert reply.startswith("You first: stop where it is safe, and do not drive on.")
    for who in ("ines", "office", "jonas"):
        assert "NOBODY is left who could be there in time" in told(n, who, K.UNCOVERED), who
    her = told(n, "maren", K.UNCOVERED)
    assert "Nobody of yours will be at Hollin Mill." in her
    assert "Not there: two full bottles and head torch." in her
    status, facts = await n.asks("ines", "facts")
    assert (status, facts["data"]["how_she_is"]) == (200, []), "nothing of it is hers"
    await n.until("23:30")
    assert not [t for t in n.notices("ana", K.LEAVE_NOW) if t.at > asleep]


async def test_the_pacer_twists_an_ankle_at_dusk(paced: Night) -> None:
    """The numbers first; she hears that she goes on alone, those who meet her before are to say it, none of it is hers."""
    n = paced
    await n.until("20:02")
    await n.reports("office", "out", "start", minutes_ago=2)
    await n.until("21:40")
    reply = await n.says("nils", "I twisted my ankle")
    assert reply.startswith("You first: if you can’t walk on safely, call 112")
    assert "No pacer for Maren from Black Tarn: Nils can’t (not able to run)." in told(
        n, "jonas", K.UNCOVERED
    )
    assert "No pacer at Black Tarn: Nils can’t run." in told(n, "maren", K.UNCOVERED)
    assert "Tell Maren at Hollin Mill: no pacer at Black Tarn, Nils can’t run" in told(n, "ana", K.UNCOVERED)
    status, facts = await n.asks("ines", "facts")
    assert (status, facts["data"]["how_she_is"]) == (200, [])
    await n.until("23:12")
    await n.reports("office", "in", "hollin", minutes_ago=2)
    await n.wait(30)
