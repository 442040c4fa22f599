"""Two cars to one meeting, one from home and one from the last point, as their crew hear of them, in both languages.

No time of the forecast is written here: what each car is told is held against 'be there from' less its own way.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Any
from zoneinfo import ZoneInfo

import pytest

from server.conversation.telling.times import floor_to

if TYPE_CHECKING:
    from conftest import Race

MINUTES = timedelta(minutes=1)
LEAD = 5 * MINUTES
"""Leave now comes so long before the leave-by."""


@dataclass(frozen=True)
class Gate:
    """The meeting at the gate: from when to be there, and each car's leave-by. Ana leaves the mill 45 min before (walk,
    drive, walk, unload), Birgit home 80 min before."""

    be_there: datetime

    @property
    def ana(self) -> datetime:
        return self.be_there - 45 * MINUTES

    @property
    def birgit(self) -> datetime:
        return self.be_there - 80 * MINUTES


def wall(at: datetime, zone: str = "Europe/London") -> str:
    """As people read it: down to five minutes, where the race is."""
    return f"{floor_to(at).astimezone(ZoneInfo(zone)):%H:%M}"


@pytest.fixture
async def race(race_two_cars: Race) -> Race:
    """07:12: Maren was out of the mill at 07:08. Ana drives on in the van, Birgit will come from home."""
    race_two_cars.at("07:10")
    await race_two_cars.say("ana", "in at mill 7:02")
    await race_two_cars.say("ana", "out of mill 7:08")
    race_two_cars.at("07:12")
    return race_two_cars


@pytest.fixture
async def gate(race: Race) -> Gate:
    """The meeting as the server has it."""
    told = await race.call("ana", "GET", f"/v1/events/{race.event.id}/runners/maren/next")
    there = next(m["values"]["be_there"] for m in told["meetings"] if m["values"]["point"] == "gate")
    return Gate(datetime.fromisoformat(there))


async def claimed(race: Race) -> dict[str, list[str]]:
    """What the channel is handed to send, by address."""
    told = await race.api._call(None, "POST", "/v1/outbox/claim", dict[str, Any], body={"channel": "test"})
    found: dict[str, list[str]] = {}
    for d in told.data["deliveries"]:
        found.setdefault(d["address"], []).append(d["text"])
    return found


async def test_everybody_is_told_their_own_leave_by(race: Race, gate: Gate) -> None:
    """Each asker hears of the car they are in, and of the other one below it."""
    ana = (await race.say("ana", "when must i leave")).text.split("\n")
    assert ana[:3] == [
        f"Leave by {wall(gate.ana)} for Brindle Gate; be there from {wall(gate.be_there)}.",
        "That is for Ana, from Skelter Mill.",
        "Drive to Brindle Gate: 30 min, then 5 min on foot.",
    ]
    assert f"Birgit (rotes Auto): leave by {wall(gate.birgit)} from Hof Anger." in ana
    birgit = (await race.say("both", "wann muss ich zu maren los")).text.split("\n")
    assert birgit[:3] == [
        f"Fahr bis {wall(gate.birgit)} los nach Brindle Gate; sei ab {wall(gate.be_there)} dort.",
        "Das gilt für Birgit, ab Hof Anger.",
        "Fahrt nach Brindle Gate: 1 h 10 min, dann 5 min zu Fuß.",
    ]
    assert f"Ana (blue van): Abfahrt bis {wall(gate.ana)} ab Skelter Mill." in birgit
    assert "Von Hof Anger." in (await race.say("both", "wie lange ist die fahrt zu maren")).text


async def test_the_next_meeting_is_as_ones_own_car_has_it(race: Race, gate: Gate) -> None:
    """The whole meeting, by the asker's car; who sits at home sees both."""
    birgit = (await race.say("both", "nächstes treffen mit maren")).text
    assert f"Fahr bis {wall(gate.birgit)} los" in birgit
    assert "Es fahren: Birgit, rotes Auto." in birgit
    home = (await race.say("ines", "next meeting of maren")).text
    berlin = wall(gate.ana, "Europe/Berlin")
    assert f"Leave by {wall(gate.ana)} ({berlin} your clock)" in home
    assert f"Birgit (rotes Auto): leave by {wall(gate.birgit)} (" in home


async def test_each_car_is_reminded_at_its_time(race: Race, gate: Gate) -> None:
    """Birgit first, in German and from home; Ana, for whom her answer says nothing, from the mill at her own time."""
    race.clock.set(gate.birgit - LEAD)
    await race.tick()  # type: ignore[misc]
    first = await claimed(race)
    told = next(t for t in first["both"] if wall(gate.birgit) in t.split("\n")[0])
    assert "Fahrt 1 h 10 min ab Hof Anger." in told
    assert not any(t.startswith("Leave by") for t in first.get("ana", ()))
    race.clock.set(gate.birgit)
    assert (await race.say("both", "fahre jetzt los")).text
    race.clock.set(gate.ana - LEAD)
    await race.tick()  # type: ignore[misc]
    second = await claimed(race)
    told = next(t for t in second["ana"] if "Leave by" in t)
    assert told.startswith(
        f"Leave by {wall(gate.ana)} for Brindle Gate to meet Maren: be there from {wall(gate.be_there)}."
    )
    assert "Drive 30 min from Skelter Mill." in told
    again = [t.split("\n")[0] for t in second.get("both", ()) if t.startswith("Fahr bis")]
    assert not any("Maren" in first_line for first_line in again)


async def test_one_car_there_is_not_the_other_there(race: Race, gate: Gate) -> None:
    """Birgit parks early at the gate: Ana is reminded all the same."""
    await race.say("both", "wir sind am brindle gate")
    race.clock.set(gate.ana - LEAD)
    await race.tick()  # type: ignore[misc]
    assert any(f"Leave by {wall(gate.ana)}" in t for t in (await claimed(race))["ana"])


async def test_kit_of_a_meeting_of_others_says_whose_it_is(race_two_cars: Race) -> None:
    """Birgit is down for the gate and not for the mill; at the gate nobody else needs to be named."""
    others = (await race_two_cars.say("both", "was muss ich zu skelter mill mitbringen für maren")).text
    assert others.split("\n")[0] == "Für Ana, nicht für dich:"
    own = (await race_two_cars.say("both", "was muss ich zu brindle gate mitbringen für maren")).text
    assert "nicht für dich" not in own
