"""Somebody in two races at once: a button says its event, words that only answer are asked about, none is guessed."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from server.api.building import build
from server.facts.entry import Kind
from server.wording.message import event_mark, read_data

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
    await _choose(two, "ana", "The Hill")
    shown = await two.say("ana", "where is maren")
    reports = [b for row in shown.buttons for b in row if b.data.startswith("r|")]
    assert reports
    assert all(read_data(b.data)[1][-1] == event_mark("hill") for b in reports)  # type: ignore[index]
    two.desk._memories.of("test", "ana").event = OTHER
    await two.say("ana", button=reports[0].data)
    said = [e for e in await two.journal.entries(OTHER) if e.kind in (Kind.IN, Kind.OUT, Kind.THROUGH)]
    assert said == []
    kinds = [e.kind for e in await two.journal.entries("hill") if e.by == "ana"]
    assert kinds[-1].value == read_data(reports[0].data)[1][0]  # type: ignore[index]


async def test_i_have_it_is_asked_of_which_race_where_two_alarms_wait(two: Race) -> None:
    """Both races have an alarm for Ines: neither is taken by a guess, and the one she names is."""
    await _choose(two, "ines", "The Hill")
    for event in ("hill", OTHER):
        await two.api.check_in(
            "maren", event, "maren", {"kind": "asked for help", "words": "lost", "key": event}
        )
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
    await two.api.check_in("maren", OTHER, "maren", {"kind": "asked for help", "words": "lost", "key": "k"})
    await two.tick()
    await two.say("ines", "ich übernehme")
    assert [m.notice.key.event for m in await two.journal.made(OTHER) if m.answered_at] == [OTHER]
