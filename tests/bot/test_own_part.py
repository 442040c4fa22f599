"""What people ask of their own part: at a place they are not down for, no list of things to bring and no time to leave."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from conftest import Race


async def test_who_is_down_for_a_place_hears_yes_and_when(race: Race) -> None:
    """Here: why no time to leave can be said."""
    race.at("08:00")
    text = (await race.say("ana", "am I needed at Brindle Gate at all")).text
    assert text.startswith("Yes, you are down for Brindle Gate.")
    assert "No leave-by for Brindle Gate yet" in text


async def test_who_is_not_down_for_it_hears_no_and_who_is(race: Race) -> None:
    """Birgit meets Tove there, not Maren; nothing of what Ana has to bring is hers."""
    race.at("08:00")
    text = (await race.say("both", "muss ich überhaupt zum Brindle Gate, für Maren?")).text
    assert text.startswith("Nein")
    assert "Ana" in text
    assert "dry shirt" not in text


async def test_where_else_to_park_is_not_known_and_who_may_know_is(race: Race) -> None:
    """What the plan does say of it comes after that."""
    race.at("08:00")
    text = (await race.say("ana", "its full here, where else can we park")).text
    assert text.startswith("I know no other place to park")
    assert "may know" in text


async def test_who_is_near_is_said_only_where_somebody_is(race: Race) -> None:
    """Ana and Birgit are bound for Brindle Gate; past it there is no heading over an empty list."""
    race.at("08:00")
    near = (await race.say("ana", "who goes and gets her if she stops at moor cross")).text.splitlines()
    far = (await race.say("ana", "who goes and gets her if she stops at the finish")).text.splitlines()
    assert near[0] == "Moor Cross is no crew point: no car of yours goes there by the plan."
    assert near[1:3] == ["Nearest by the plan:", "Ana, bound for Brindle Gate: +44 1632 960011"]
    assert far[0] == "Low Barn finish is a crew point: crew can drive there."
    assert far[1].startswith("Nobody is written down to fetch her. Race control")
