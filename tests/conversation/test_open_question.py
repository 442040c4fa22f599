"""Words that go on from what was said before: which of two, another time for the last report, more of the same question."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from server.facts.entry import Kind
from tests.bot.conftest import (  # noqa: F401 - fixtures
    Race,
    before_start,
    on_the_way,
    race,
    small_event,
)

if TYPE_CHECKING:
    from server.facts.entry import Entry


async def _last(race: Race, who: str) -> Entry:  # noqa: F811
    return [e for e in await race.journal.entries("hill") if e.by == who][-1]


@pytest.mark.parametrize("which", ["tove", "it's tove", "the second one", "87"])
async def test_which_runner_is_answered_in_words(race: Race, which: str) -> None:  # noqa: F811
    """The report is made of whom the answer names; it is not lost."""
    race.at("09:00")
    asked = await race.say("both", "sie ist raus aus skelter mill 8:50")
    assert asked.text == "Welche Läuferin?"
    await race.say("both", which)
    last = await _last(race, "both")
    assert (last.kind, last.runner, last.point) == (Kind.OUT, "tove", "mill")


@pytest.mark.parametrize(
    ("words", "minute"),
    [
        ("no wait 0916", 16),
        ("sorry 9:16", 16),
        ("make that 2 min earlier", 12),
        ("2 min later", 16),
        ("nein 9:16", 16),
    ],
)
async def test_another_time_for_the_last_report(race: Race, words: str, minute: int) -> None:  # noqa: F811
    """In place of it, and nothing else is recorded."""
    race.at("09:20")
    await race.say("ana", "in at moor cross 9:14")
    await race.say("ana", words)
    times = (await race.state()).runner("maren").at_point("moor")
    assert times is not None
    assert times.arrived is not None
    assert times.arrived.at == race.clock.now().replace(hour=8, minute=minute)


@pytest.mark.parametrize(
    ("told", "words", "minute"),
    [
        ("in at moor cross 4 min ago", "no sorry 11", 9),
        ("in at moor cross 4 min ago", "no, 11", 9),
        ("in at moor cross 4 min ago", "no more like 11 min", 9),
        ("vor 4 min am moor cross rein", "nein, vor 11", 9),
        ("arrivée à moor cross il y a 4 min", "non, 11", 9),
        ("in at moor cross 9:14", "no, 11", 11),
    ],
)
async def test_minutes_are_as_long_ago_where_the_last_report_was(
    race: Race,  # noqa: F811
    told: str,
    words: str,
    minute: int,
) -> None:
    """And those of an hour where a time of the clock was told; nothing is taken back for the 'no'."""
    race.at("09:20")
    await race.say("ana", told)
    await race.say("ana", words)
    times = (await race.state()).runner("maren").at_point("moor")
    assert times is not None
    assert times.arrived is not None
    assert times.arrived.at == race.clock.now().replace(hour=8, minute=minute)


async def test_minutes_to_come_are_of_the_hour_before(race: Race) -> None:  # noqa: F811
    """'No 58' a few minutes past nine."""
    race.at("09:05")
    await race.say("ana", "in at moor cross 9:02")
    await race.say("ana", "no 58")
    times = (await race.state()).runner("maren").at_point("moor")
    assert times is not None
    assert times.arrived is not None
    assert times.arrived.at == race.clock.now().replace(hour=7, minute=58)


@pytest.mark.parametrize("told", ["in at moor cross 9:14", "in moor cross 9:12 out 9:14"])
@pytest.mark.parametrize(
    "words", ["sorry misread it was 241", "not 214, 241", "verlesen, war die 241", "mal lu, le 241"]
)
async def test_a_report_of_another_bib_is_taken_back(race: Race, told: str, words: str) -> None:  # noqa: F811
    """All that the message said of her."""
    race.at("09:20")
    await race.say("ana", told)
    await race.say("ana", words)
    assert (await race.state()).runner("maren").at_point("moor") is None


@pytest.mark.parametrize(
    "words",
    [
        "she drank 500", "she ate 300", "sie trank 500", "elle a pris 300", "the next is 302", "no hr 150",
        "she weighs 150", "no sorry 538", "she turned round", "umgedreht", "out 302",
    ],
)  # fmt: skip
async def test_a_number_or_a_turn_takes_no_report_back(race: Race, words: str) -> None:  # noqa: F811
    """It counts something, or is of somebody else."""
    race.at("09:20")
    await race.say("ana", "in at moor cross 9:12")
    await race.say("ana", "out of moor cross 9:14")
    await race.say("ana", words)
    times = (await race.state()).runner("maren").at_point("moor")
    assert times is not None
    assert times.left is not None
    assert times.left.at == race.clock.now().replace(hour=8, minute=14)


async def test_a_second_correction_is_read_as_the_first(race: Race) -> None:  # noqa: F811
    """As long ago again; and the place may be put right all the same."""
    race.at("09:40")
    await race.say("ana", "in at brindle gate 10 min ago")
    await race.say("ana", "no, 20")
    await race.say("ana", "no sorry, 25")
    assert (await _last(race, "ana")).seen_at == race.clock.now().replace(hour=8, minute=15)
    await race.say("ana", "sorry it was moor cross")
    assert (await _last(race, "ana")).point == "moor"


async def test_another_place_for_the_last_report(race: Race) -> None:  # noqa: F811
    """'Sorry it was …' moves it."""
    race.at("09:20")
    await race.say("ana", "in at brindle gate 9:14")
    await race.say("ana", "sorry it was moor cross")
    last = await _last(race, "ana")
    assert (last.kind, last.point) == (Kind.IN, "moor")


async def test_in_danger_is_answered_in_words(race: Race) -> None:  # noqa: F811
    """'Yes' tells everyone, 'no' nobody."""
    await race.say("ana", "she keeps falling asleep standing up")
    assert not await race.entries("asked for help")
    await race.say("ana", "no")
    assert not await race.entries("asked for help")
    await race.say("ana", "she looks grey and will not talk")
    reply = await race.say("ana", "yes")
    assert "112" in reply.text.split("\n")[0]
    assert [e.runner for e in await race.entries("asked for help")] == ["maren"]  # type: ignore[attr-defined]


async def test_still_here_and_then_gone_is_of_one_place(race: Race) -> None:  # noqa: F811
    """Crew who wait farther on by the plan are with her where they say that she is."""
    race.at("09:20")
    await race.say("ana", "in at moor cross 9:14")
    await race.say("ana", "shes still here")
    await race.say("ana", "shes gone")
    last = await _last(race, "ana")
    assert (last.kind, last.point, last.unconfirmed) == (Kind.OUT, "moor", False)


async def test_a_question_goes_on(race: Race) -> None:  # noqa: F811
    """Twenty minutes more, why, another person, somebody's number."""
    first = (await race.say("ana", "when is she at brindle gate")).text
    more = (await race.say("ana", "and with 20 min more?")).text
    assert more.startswith("If Maren takes 20 min more: Brindle Gate ")
    assert more.split("Brindle Gate ")[1].split("\n")[0] not in first
    assert "rest on her plan" in (await race.say("ana", "why?")).text
    assert (await race.say("ana", "and olga?")).text.startswith("Olga")
    assert (await race.say("ana", "whats her number")).text.startswith("Olga")


async def test_no_to_has_she_been_there(race: Race) -> None:  # noqa: F811
    """A bare 'no' is the answer to the question that waits: not yet."""
    race.at("09:40")
    await race.tick()  # type: ignore[misc]
    race.at("10:20")
    await race.tick()  # type: ignore[misc]
    waits = [n for n in await race.journal.made("hill") if n.notice.key.kind.value == "late"]
    assert waits
    who = waits[-1].notice.key.person
    before = len(await race.entries("not here yet"))
    await race.say(who, "no")
    assert len(await race.entries("not here yet")) == before + 1


async def test_news_of_the_race_by_its_organiser(race: Race) -> None:  # noqa: F811
    """A cut-off extended has its new time and its edge; a start delayed by nothing is asked about."""
    told = (await race.say("olga", "cut-off at moor cross extended by 30 min")).text
    assert told.startswith("The cut-off at Moor Cross (")
    assert "11:30" in told.split("\n")[0]
    (moved,) = await race.entries("cut-off moved")
    assert moved.point == "moor"  # type: ignore[attr-defined]
    assert (await race.say("olga", "the start is delayed")).text.startswith("By how long")
