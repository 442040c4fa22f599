"""Somebody in two races at once: a button says its event, words that only answer are asked about, none is guessed."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from server.api.building import build
from server.conversation.telling.message import event_mark, read_data
from server.facts.entry import Kind
from server.facts.state import Going

if TYPE_CHECKING:
    from conftest import Race

OTHER = "fell"


@pytest.fixture
async def two(race: Race, event_text: str, event_files: dict[str, bytes]) -> Race:
    """The same people run, and are crew, in a second race on the same day."""
    text = event_text.replace('id = "hill"', f'id = "{OTHER}"').replace("The Hill Sixty", "The Fell Race")
    event = build(text, event_files).event
    await race.journal.store_event(text, event_files, event, "tests", race.clock.now())
    return race


async def _choose(race: Race, who: str, event: str) -> None:
    """They speak of that race, as after its name was asked."""
    asked = await race.say(who, "where is maren")
    await race.press(who, asked, event)


async def test_a_report_button_keeps_to_its_event(two: Race) -> None:
    """Pressed after they have turned to the other race: 'out of the mill' is of the race it was shown in."""
    asked = await two.say("ana", "where is maren")
    await two.press("ana", asked, "The Hill")
    shown = await two.say("ana", "where is maren")
    reports = [b for row in shown.buttons for b in row if b.data.startswith("r|")]
    assert reports
    assert all(read_data(b.data)[1][-1] == event_mark("hill") for b in reports)  # type: ignore[index]
    await two.press("ana", asked, "The Fell")
    await two.say("ana", button=reports[0].data)
    said = [e for e in await two.journal.entries(OTHER) if e.kind in (Kind.IN, Kind.OUT, Kind.THROUGH)]
    assert said == []
    kinds = [e.kind for e in await two.journal.entries("hill") if e.by == "ana"]
    assert kinds[-1].value == read_data(reports[0].data)[1][0]  # type: ignore[index]


async def test_i_have_it_is_asked_of_which_race_where_two_alarms_wait(two: Race) -> None:
    """Both races have an alarm for Ines: neither is taken by a guess, and the one she names is."""
    await _choose(two, "ines", "The Hill")
    for event in ("hill", OTHER):
        await two.check_in("maren", event, "maren", {"kind": "asked for help", "words": "lost", "key": event})
    await two.tick()
    asked = await two.say("ines", "i have it")
    assert [b.label for row in asked.buttons for b in row] == ["The Fell Race", "The Hill Sixty"]
    taken = await two.press("ines", asked, "The Fell")
    assert taken.text.startswith("It is yours.")
    state = {e: [m for m in await two.journal.made(e) if m.answered_at] for e in ("hill", OTHER)}
    assert (len(state["hill"]), len(state[OTHER])) == (0, 1)


async def test_where_one_alarm_waits_the_answer_goes_there(two: Race) -> None:
    """She spoke of the other race last; only one has an alarm, so that is the one she has."""
    await _choose(two, "ines", "The Hill")
    await two.check_in("maren", OTHER, "maren", {"kind": "asked for help", "words": "lost", "key": "k"})
    await two.tick()
    await two.say("ines", "ich übernehme")
    assert [m.notice.key.event for m in await two.journal.made(OTHER) if m.answered_at] == [OTHER]


async def _helps(race: Race, event: str) -> list[str | None]:
    """The runners for whom help was called in that event."""
    return [e.runner for e in await race.journal.entries(event) if e.kind is Kind.ASKED_FOR_HELP]


async def _close_the_hill(race: Race) -> None:
    """Maren has finished the Hill Sixty, and her crew have her."""
    race.at("14:00")
    seen = race.clock.now().isoformat()
    for key, said in (("1", {"kind": "in", "point": "finish"}), ("2", {"kind": "in hand"})):
        await race.check_in("olga", "hill", "maren", {**said, "seen_at": seen, "key": key})
    await race.tick()  # type: ignore[misc]
    race.at("15:00")
    assert (await race.state()).runner("maren").going is Going.CLOSED


async def test_help_goes_to_the_race_that_is_on_and_says_how_to_reach_the_other(two: Race) -> None:
    """Ana's Hill Sixty is closed and the Fell Race on: the alarm is out there, and the reply names the other."""
    await _close_the_hill(two)
    told = (await two.say("ana", "she needs help")).text.split("\n")
    assert told[0] == "Is she hurt? Call 112. Race control: +44 1632 960001."
    assert "The alarm is out in The Fell Race." in told
    assert "Is it about The Hill Sixty? Then write it again at once with ‘The Hill Sixty’ in it." in told
    assert (await _helps(two, OTHER), await _helps(two, "hill")) == (["maren"], [])
    told = (await two.say("ana", "she needs help at the hill sixty")).text
    assert "The alarm is out in The Hill Sixty." in told
    assert (await _helps(two, OTHER), await _helps(two, "hill")) == (["maren"], ["maren"])


async def test_the_name_of_a_closed_races_runner_decides(
    race: Race, event_text: str, event_files: dict[str, bytes]
) -> None:
    """Lene runs in the race that is on, Maren in the one that is closed: help for Maren goes where Maren ran, and what is
    said next is about it."""
    text = event_text.replace('id = "hill"', f'id = "{OTHER}"').replace("The Hill Sixty", "The Fell Race")
    text = text.replace('"Maren"', '"Lene"').replace('"maren"', '"lene"')
    await race.journal.store_event(
        text, event_files, build(text, event_files).event, "tests", race.clock.now()
    )
    await _close_the_hill(race)
    told = (await race.say("ana", "maren needs help, she collapsed in the car park")).text
    assert "Is it about The Fell Race? Then write it again at once with ‘Lene’ in it." in told
    assert (await _helps(race, OTHER), await _helps(race, "hill")) == ([], ["maren"])
    await race.tick()  # type: ignore[misc]
    race.at("15:10")
    await race.say("ana", "got her")
    await race.tick()  # type: ignore[misc]
    assert [e.kind for e in await race.journal.entries("hill") if e.by == "ana"][-1] is Kind.IN_HAND
    race.at("16:30")
    told = (await race.say("ana", "she needs help")).text
    assert "The alarm is out in The Fell Race." in told
    assert "‘Maren’" in told
    assert await _helps(race, OTHER) == ["lene"]


async def test_where_both_are_on_help_waits_for_no_question(two: Race) -> None:
    """Nothing was spoken of yet: it goes out in both at once; each has its own undo."""
    reply = await two.say("ana", "she needs help")
    assert "The alarm is out in The Fell Race and The Hill Sixty." in reply.text
    assert (await _helps(two, OTHER), await _helps(two, "hill")) == (["maren"], ["maren"])
    undo = [b for row in reply.buttons for b in row if b.label.startswith("Undo")]
    assert sorted(b.label for b in undo) == ["Undo: The Fell Race", "Undo: The Hill Sixty"]
    for button in undo:
        assert (await two.say("ana", button=button.data)).text.startswith("Taken back")
    assert (await two.state()).runner("maren").help_open is None


async def test_one_word_takes_back_what_went_out_in_both(two: Race) -> None:
    """'Undo' means the message, not one of the races it reached."""
    await two.say("maren", "help")
    assert (await _helps(two, OTHER), await _helps(two, "hill")) == (["maren"], ["maren"])
    await two.say("maren", "undo")
    for event in (OTHER, "hill"):
        taken = [e for e in await two.journal.entries(event) if e.kind is Kind.TAKEN_BACK]
        assert len(taken) == 1, event


async def test_what_was_just_spoken_of_is_meant(two: Race) -> None:
    """'The Fell Race: where is she?' and then 'she needs help': there, and how to reach the other."""
    await two.say("ana", "where is maren in the fell race")
    told = (await two.say("ana", "she needs help")).text
    assert "Is it about The Hill Sixty? Then write it again at once with ‘The Hill Sixty’ in it." in told
    assert (await _helps(two, OTHER), await _helps(two, "hill")) == (["maren"], [])
