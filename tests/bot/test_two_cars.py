"""Two cars to one meeting, one from home and one from the last point, as their crew hear of them, in both languages."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from conftest import Race


@pytest.fixture
async def race(race_two_cars: Race) -> Race:
    """07:12: Maren was out of the mill at 07:08. Ana drives on in the van, Birgit will come from home."""
    race_two_cars.at("07:10")
    await race_two_cars.say("ana", "in at mill 7:02")
    await race_two_cars.say("ana", "out of mill 7:08")
    race_two_cars.at("07:12")
    return race_two_cars


async def claimed(race: Race) -> dict[str, list[str]]:
    """What the channel is handed to send, by address."""
    told = await race.api._call(None, "POST", "/v1/outbox/claim", dict[str, Any], body={"channel": "test"})
    found: dict[str, list[str]] = {}
    for d in told.data["deliveries"]:
        found.setdefault(d["address"], []).append(d["text"])
    return found


async def test_everybody_is_told_their_own_leave_by(race: Race) -> None:
    """Ana leaves the mill 45 min before 'be there from' (walk, drive, walk, unload), Birgit home 80."""
    ana = (await race.say("ana", "when must i leave")).text.split("\n")
    assert ana[:3] == [
        "Leave by 09:55 for Brindle Gate; be there from 10:40.",
        "That is for Ana, from Skelter Mill.",
        "Drive to Brindle Gate: 30 min, then 5 min on foot.",
    ]
    assert "Birgit (rotes Auto): leave by 09:20 from Hof Anger." in ana
    birgit = (await race.say("both", "wann muss ich zu maren los")).text.split("\n")
    assert birgit[:3] == [
        "Fahr bis 09:20 los nach Brindle Gate; sei ab 10:40 dort.",
        "Das gilt für Birgit, ab Hof Anger.",
        "Fahrt nach Brindle Gate: 1 h 10 min, dann 5 min zu Fuß.",
    ]
    assert "Ana (blue van): Abfahrt bis 09:55 ab Skelter Mill." in birgit
    assert "Von Hof Anger." in (await race.say("both", "wie lange ist die fahrt zu maren")).text


async def test_the_next_meeting_is_as_ones_own_car_has_it(race: Race) -> None:
    """The whole meeting, by the asker's car; who sits at home sees both."""
    birgit = (await race.say("both", "nächstes treffen mit maren")).text
    assert "Fahr bis 09:20 los" in birgit
    assert "Es fahren: Birgit, rotes Auto." in birgit
    home = (await race.say("ines", "next meeting of maren")).text
    assert "Leave by 09:55 (10:55 your clock)" in home
    assert "Birgit (rotes Auto): leave by 09:20 (10:20 your clock) from Hof Anger." in home


async def test_each_car_is_reminded_at_its_time(race: Race) -> None:
    """Birgit at 09:15, in German and from home; Ana, who has not answered for anybody else, at 09:50 from the mill."""
    race.at("07:15")
    await claimed(race)
    race.at("09:15")
    await race.tick()  # type: ignore[misc]
    first = await claimed(race)
    told = next(t for t in first["both"] if "09:20" in t.split("\n")[0])
    assert "Fahrt 1 h 10 min ab Hof Anger." in told
    assert not any("Leave by" in t for texts in first.values() for t in texts)
    race.at("09:18")
    assert (await race.say("both", "fahre jetzt los")).text
    race.at("09:50")
    await race.tick()  # type: ignore[misc]
    second = await claimed(race)
    told = next(t for t in second["ana"] if "Leave by" in t)
    assert told.startswith("Leave by 09:55 for Brindle Gate to meet Maren: be there from 10:40.")
    assert "Drive 30 min from Skelter Mill." in told
    assert not any("Fahr bis" in t for t in second.get("both", ()))


async def test_one_car_there_is_not_the_other_there(race: Race) -> None:
    """Birgit parks early at the gate: Ana is reminded all the same."""
    race.at("07:15")
    await claimed(race)
    await race.say("both", "wir sind am brindle gate")
    race.at("09:50")
    await race.tick()  # type: ignore[misc]
    assert any("Leave by 09:55" in t for t in (await claimed(race))["ana"])
