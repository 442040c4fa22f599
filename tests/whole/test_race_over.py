"""Her race over, or said to be: a cut-off missed, her own word between points, hearsay, a list with two runners.

Through the real server; what each reads is looked at by its first lines, and by what may not be in it.
"""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import datetime, timedelta

import pytest

from server.watch.notice import NoticeKind
from tests.whole import hill
from tests.whole.night import Night, night

K = NoticeKind
STARTS = datetime(2027, 6, 19, 20, 0, tzinfo=hill.ZONE)
LIMIT = """kinds = ["aid station", "crew access", "cut-off"]
cut_offs = [{ when = "out", clock = 2027-06-20T02:00:00+01:00 }]
transport = "minibus to Thorn meadow at 03:00"
"""


WIM = """[[runners]]
id = "wim"
name = "Wim"
bib = "87"
target = { finish = "8:00" }

[[people]]
id = "wim"
name = "Wim"
parts = [{ kind = "runner", runner = "wim" }]

"""
HOME = "calls_race_control = true, can_telephone = true },"


def text(*, two: bool = False) -> str:
    """The night on the hill, with a cut-off at the tarn; with `two` Wim (87) runs as well."""
    first, tarn, rest = hill.event_text(STARTS).partition('name = "Black Tarn"')
    rest = rest.replace('kinds = ["aid station", "crew access"]\n', LIMIT, 1)
    if two:
        rest = rest.replace('[[people]]\nid = "maren"', WIM + '[[people]]\nid = "maren"', 1)
        rest = rest.replace(HOME, HOME + '\n    { kind = "safety contact", runner = "wim", ladder = 1 },', 1)
    return first + tarn + rest


@pytest.fixture
async def onward(sqlite_url: str) -> AsyncIterator[Night]:
    """Ten past midnight: out of the mill at 23:08, told by Ana, who stays there; Jonas is at the tarn."""
    async with night(sqlite_url, text(), hill.files(), STARTS + timedelta(hours=2, minutes=50)) as n:
        await n.reports("office", "out", "start", minutes_ago=170)
        await n.says("ana", "I am at the mill")
        await n.until("23:09")
        await n.reports("ana", "in", "hollin", minutes_ago=9)
        await n.reports("ana", "out", "hollin", minutes_ago=1)
        await n.until("00:10")
        await n.says("jonas", "I am at the tarn")
        yield n


def read(n: Night, who: str, kind: NoticeKind) -> str:
    """The newest notice of that kind as somebody read it."""
    assert n.notices(who, kind), f"{who} has none: {kind}\n" + "\n".join(map(str, n.told[-12:]))
    return n.notices(who, kind)[-1].text


async def test_timed_out_at_the_tarn(onward: Night) -> None:
    """In at 02:07, out by 02:00: the rule and who decides; no later window anywhere; the nearest car, then she is had."""
    n = onward
    await n.until("02:07")
    await n.reports("jonas", "in", "tarn")
    await n.wait(2)
    for who in ("maren", "ana", "ines", "office", "jonas"):
        assert read(n, who, K.PAST_CUT_OFF).startswith("Maren came in at Black Tarn Sun 02:07")
    assert "race control decides" in read(n, "ana", K.PAST_CUT_OFF)
    assert "Stay with her" in read(n, "jonas", K.PAST_CUT_OFF)
    for who, asked in (
        ("ana", "when is maren at wythe"),
        ("ines", "where is maren"),
        ("ana", "when do I leave for maren"),
    ):
        answer = await n.says(who, asked)
        assert "race control decides" in answer, answer
        assert "likely" not in answer, answer
        assert "in 10" not in answer, answer
    status, board = await n.call("ines", "GET", "/v1/events/thorn-edge/board")
    assert status == 200
    hers = next(r for r in board["data"]["runners"] if r["id"] == "maren")
    assert all(p["window"] is None for p in hers["forecast"]["points"]), "the board still has a window"
    left = len(n.notices("ana", K.LEAVE_NOW))
    await n.until("02:25")
    await n.presses("jonas", "Her race is over")
    await n.wait(2)
    assert "timed out" in read(n, "ines", K.RETIRED)
    assert "minibus to Thorn meadow at 03:00" in read(n, "jonas", K.RETIRED)
    assert "You are there." in read(n, "jonas", K.RETIRED)
    await n.presses("jonas", "I go")
    await n.wait(2)
    assert "Jonas fetches Maren at Black Tarn" in read(n, "maren", K.RETIRED)
    await n.until("02:45")
    await n.presses("jonas", "with us")
    await n.says("ines", "race control told")
    await n.wait(2)
    assert read(n, "ines", K.RETIRED).startswith("Jonas has Maren")
    silent = len(n.notices())
    await n.until("04:00")
    assert len(n.notices("ana", K.LEAVE_NOW)) == left
    assert [t for t in n.notices()[silent:] if "Maren" in t.text and t.kind in (K.RETIRED, K.OVERDUE)] == []


async def test_retires_in_her_own_words_between_two_points(onward: Night) -> None:
    """'Knee gone, i am retiring at Black Tarn': her words to all, one person asked, the next where he does not answer."""
    n = onward
    await n.until("00:40")
    answer = await n.says("maren", "Knee gone, i am retiring at Black Tarn")
    assert "retired at Black Tarn" in answer
    await n.wait(1)
    for who in ("jonas", "ana", "ines", "office"):
        assert "Knee gone" in read(n, who, K.RETIRED)
    assert "Can you fetch her at Black Tarn?" in read(n, "jonas", K.RETIRED)
    assert "Asked to fetch her at Black Tarn: Jonas" in read(n, "ana", K.RETIRED)
    assert "Knee gone" not in read(n, "sam", K.RETIRED)
    await n.wait(6)
    assert "Can you fetch her" in read(n, "ana", K.RETIRED)
    await n.presses("ana", "I go")
    await n.wait(2)
    assert "Ana fetches Maren at Black Tarn" in read(n, "jonas", K.RETIRED)
    assert "Ana fetches Maren at Black Tarn" in read(n, "maren", K.RETIRED)
    await n.until_told("ines", K.RETIRED, times=len(n.notices("ines", K.RETIRED)) + 3)
    assert any(t.urgent for t in n.notices("ines", K.RETIRED)), "nobody has her, and home hears no alarm"


async def test_hearsay_then_she_turns_up(onward: Night) -> None:
    """'another runner told me she dropped out': kept with its words, asked of all, counted by nobody, put right at 01:05."""
    n = onward
    await n.until("00:45")
    assert (await n.says("ana", "another runner told me maren dropped out")).startswith(
        "Only heard from somebody else: Maren has retired"
    )
    await n.wait(2)
    for who in ("maren", "jonas", "ines", "office"):
        assert "another runner told me" in read(n, who, K.UNCONFIRMED)
    assert n.notices(kind=K.RETIRED) == []
    answer = await n.says("ines", "where is maren")
    assert "Said to have retired" in answer, answer
    assert "not confirmed" in answer
    await n.until("01:05")
    await n.reports("jonas", "in", "tarn")
    await n.wait(2)
    assert read(n, "ines", K.CORRECTION).startswith("Maren has been seen since: Black Tarn")
    assert n.notices("ines", K.OVERDUE) == []


async def test_a_volunteer_s_list_with_two_runners(sqlite_url: str) -> None:
    """'51 in 2120 out 2123, 87 dropped here': both are kept, and home hears that one of them has retired."""
    async with night(sqlite_url, text(two=True), hill.files(), STARTS + timedelta(minutes=85)) as n:
        answer = await n.says("vera", "51 in 2120 out 2123, 87 dropped here")
        assert "Wim retired at Larch Gate" in answer, answer
        assert "Maren out of Larch Gate" in answer, answer
        await n.wait(2)
        assert read(n, "ines", K.RETIRED).startswith("Wim has retired at Larch Gate")


async def test_where_they_say_they_are_wins(onward: Night) -> None:
    """Ana says that she is at the tarn, where by the plan it is Jonas: what she asks and reports without a place is about
    it; and the place of her phone is hers."""
    n = onward
    await n.says("ana", "leaving")
    await n.until("00:50")
    await n.says("ana", "I am at the tarn")
    assert "Black Tarn" in (await n.says("ana", "when does maren come?")).partition("\n")[0]
    assert "Black Tarn" in (await n.says("ana", "have we missed maren?")).partition("\n")[0]
    assert "not at Black Tarn yet" in await n.says("ana", "maren not here yet")
    body = {"kind": "position", "fix": {"lat": 54.61, "lon": -2.70}, "key": "phone-1"}
    status, found = await n.call("ana", "POST", "/v1/events/thorn-edge/runners/maren/checkins", body)
    assert (status, found["data"]["own_place"]) == (200, True)
    picture = await n.parts.pictures.take("thorn-edge", n.clock.now())
    assert picture.state.runner("maren").positions == ()
