"""After the race: three questions to each by chat, and what becomes of the answers."""

from __future__ import annotations

import pytest

from server.api.snapshot import Pictures
from server.cli.afterwards import looked_back
from server.facts.entry import Kind
from server.paper.afterwards import sheet, to_json
from server.paper.document import Grid
from tests.bot.conftest import Race


async def _asked(race: Race, who: str) -> list[str]:
    await race.tick()
    return [n["text"] for n in await race.notices(who) if n["kind"] == "looking back"]


async def _over(race: Race) -> None:
    """She ends her race at the first crew point, and Ana takes her home."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    for kind, more in (
        (Kind.RETIRED, {"how": "own choice"}),
        (Kind.IN_HAND, {}),
        (Kind.RACE_CONTROL_TOLD, {}),
    ):
        body = {"kind": kind.value, "key": f"k-{kind.name}", "point": "moor", **more}
        body["sent_at"] = body["seen_at"] = race.clock.now().isoformat()
        await race.check_in("ana", race.event.id, "maren", body)


async def _kept(race: Race) -> list[tuple[str, str]]:
    return sorted((e.about or "", e.words) for e in (await race.state()).runner("maren").looked_back)


async def test_each_is_asked_once_the_morning_after(race: Race) -> None:
    """Twelve hours later, not before; numbered lines are kept under their question and stand on the page of the race."""
    await _over(race)
    race.at("20:40")
    assert await _asked(race, "ana") == []
    race.at("09:30", day=1)
    (asked,) = await _asked(race, "ana")
    assert (
        "1 What went well?\n2 What went wrong, or nearly?\n3 What will you do otherwise next time?" in asked
    )
    assert len(await _asked(race, "maren")) == 1
    assert await _asked(race, "fan") == []
    said = await race.say(
        "ana", "1 the soup was hot\n2. gloves lay in the other car,\nso she froze\n3) pack gloves twice"
    )
    assert said.text.startswith("Kept: what was well, what went wrong and what you will do otherwise.")
    assert await _kept(race) == [
        ("next", "pack gloves twice"),
        ("well", "the soup was hot"),
        ("wrong", "gloves lay in the other car, so she froze"),
    ]
    race.at("10:30", day=1)
    assert len(await _asked(race, "ana")) == 1
    picture = await Pictures(race.journal).take(race.event.id, race.clock.now())
    found = looked_back(picture, "maren")
    assert '"question": "next"' in to_json(found)
    questions = next(b for b in sheet(found, "ana", race.clock.now()).pages[-1].blocks if isinstance(b, Grid))
    assert next(r for r in questions.rows if r[0].startswith("Ana"))[3] == "pack gloves twice"


async def test_undone_it_is_gone(race: Race) -> None:
    """As any report."""
    await _over(race)
    race.at("09:30", day=1)
    await _asked(race, "ana")
    said = await race.say("ana", "3 leave earlier")
    await race.press("ana", said, "Undo")
    assert await _kept(race) == []


async def test_numbers_before_it_was_asked_are_what_they_were(race: Race) -> None:
    """During the race '2 gels eaten' is the stop log's."""
    race.at("08:45")
    await race.say("ana", "maren in at moor cross 8:44")
    await race.say("ana", "2 gels eaten")
    assert await _kept(race) == []


async def test_danger_is_no_answer(race: Race) -> None:
    """A call for help goes its way whatever number stands before it."""
    await _over(race)
    race.at("09:30", day=1)
    await _asked(race, "ana")
    said = await race.say("ana", "2 help, maren has collapsed and does not breathe")
    assert "112" in said.text
    assert await _kept(race) == []


@pytest.mark.parametrize(
    "text",
    [
        "1: gels went down, 2: too cold on the ridge, 3: warm layer from the start",
        "1) gels went down 2) too cold on the ridge 3) warm layer from the start",
        "1 gels went down\n2 too cold on the ridge\n3 warm layer from the start",
    ],
)
async def test_what_was_bad_then_is_no_call_for_help_now(race: Race, text: str) -> None:
    """She tells the three of them in one go, on one line or three: kept, and nobody is woken."""
    await _over(race)
    race.at("09:30", day=1)
    await _asked(race, "maren")
    said = await race.say("maren", text)
    assert said.text.startswith("Kept: what was well, what went wrong and what you will do otherwise.")
    assert await _kept(race) == [
        ("next", "warm layer from the start"),
        ("well", "gels went down"),
        ("wrong", "too cold on the ridge"),
    ]


async def test_an_amount_behind_a_comma_is_no_answer_of_its_own(race: Race) -> None:
    await _over(race)
    race.at("09:30", day=1)
    await _asked(race, "ana")
    await race.say("ana", "1 the boxes, 2 of them with names, were right")
    assert await _kept(race) == [("well", "the boxes, 2 of them with names, were right")]
