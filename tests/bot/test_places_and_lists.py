"""What a place has, lists of bibs, words passed on whole, a torch left behind, who left with whom."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from conftest import Race


@pytest.mark.parametrize(
    ("words", "first"),
    [
        ("is there a loo at brindle gate", "The plan says nothing about ‘loo’ at Brindle Gate."),
        ("can i camp at brindle gate?", "The plan says nothing about ‘camp’ at Brindle Gate."),
        ("can i park a van at brindle gate", "The plan does not say that of Brindle Gate."),
        (
            "do they have veggie food at brindle gate?",
            "The plan says nothing about ‘veggie’ at Brindle Gate.",
        ),
    ],
)
async def test_what_the_file_does_not_say_is_said_first_with_who_may_know(
    race: Race, words: str, first: str
) -> None:
    """Race control's number, and who is there; no drive, no list of food."""
    lines = (await race.say("ana", words)).text.split("\n")
    assert lines[0].startswith(first), lines
    assert race.event.race_control.phone in lines[0]


async def test_signal_is_what_the_file_says(race: Race) -> None:
    """Of each point."""
    points = {p.name: p.signal.value for p in race.event.courses[0].points}
    for name, signal in points.items():
        text = (await race.say("ana", f"is there phone signal at {name}?")).text
        if signal == "none":
            assert text.startswith(f"No phone signal at {name}"), text
        elif signal == "good" and "finish" not in name.lower() and "start" not in name.lower():
            assert text.startswith(f"The plan says nothing bad of the signal at {name}"), text


async def test_every_bib_of_a_list_is_done_or_named(race: Race) -> None:
    """Those nobody has are named, and no number of a list makes an emergency."""
    text = (await race.say("olga", "912, 915 and 933 in")).text
    assert text.startswith("No runner has bib 912, 915 and 933. Nothing is noted for that"), text
    text = (await race.say("olga", "214 out at 7:31, 915 too")).text
    assert text.split("\n")[-1] == "Nothing is noted for 915: no runner has that bib.", text
    text = (await race.say("vera", "seen 987 and 990")).text
    assert text.startswith("No runner has bib 987 and 990."), text


async def test_her_words_go_to_all_whole(race: Race) -> None:
    """No word is cut off as how she is, or answered as a question."""
    words = "tell everyone i feel sick but ok, want coke at brindle"
    text = (await race.say("maren", words)).text
    assert f"‘{words}’" in text.split("\n")[0], text
    assert {
        n["text"].partition("‘")[2].rstrip("’")
        for n in await race.notices("ines")
        if n["kind"] == "passed on"
    } == {words}


async def test_still_here_asks_of_no_danger_and_gone_is_from_there(race: Race) -> None:
    """'Shes still here' changes nothing."""
    race.at("08:40")
    await race.say("ana", "maren in at moor cross 0838")
    still = await race.say("ana", "shes still here")
    assert "danger" not in still.text
    gone = (await race.say("ana", "shes gone")).text
    assert gone.startswith("Noted: Maren out of Moor Cross"), gone


async def test_who_left_with_whom_is_asked_where_the_words_do_not_say(race: Race) -> None:
    """Crew by car are crew; with somebody on foot it may be either."""
    race.at("08:40")
    await race.say("ana", "maren in at moor cross 0838")
    asked = await race.say("ana", "left moor cross with birgit")
    assert [e.kind.value for e in await race.journal.entries(race.event.id)].count("out") == 3
    assert asked.text == "Who left Moor Cross?"
    await race.say("ana", "left moor cross with birgit in the van, driving on")
    assert "crew left" in [e.kind.value for e in await race.journal.entries(race.event.id)]


async def test_a_torch_left_behind_before_the_dark_is_told_and_by_day_a_note(race: Race) -> None:
    """With what to do; it is no alarm."""
    day = (await race.say("ana", "torch found on the seat")).text
    assert "Not with her" not in day
    assert "danger" not in day
