"""Buttons of a choice after this program was started again, or after something else was asked: they carry what they mean."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.conversing import Conversing
from server.conversation.button_payload import fields_of, meant_by
from server.conversation.telling.answer import EventHere, PointHere, RunnerHere
from server.conversation.telling.message import DATA_BYTES_MAX, Press, data, event_mark
from server.conversation.understanding import Asked, Choice, MeantFor, Question, Report, Reported
from server.facts.entry import Kind, Retired
from server.facts.state import Going

if TYPE_CHECKING:
    from conftest import Race


def _restart(race: Race) -> None:
    """The program that answers, started again: it remembers nothing."""
    race.desk = Conversing(race.api)


async def test_which_runner_left_is_known_after_a_restart(race: Race) -> None:
    """The report is of the moment in which it was written, not of the press."""
    race.at("07:40")
    await race.say("olga", "tove in at skelter mill 7:35")
    reply = await race.say("ines", "she left at 7:38")
    assert reply.text == "Which runner?"
    _restart(race)
    race.at("07:52")
    told = (await race.press("ines", reply, "Tove")).text
    assert told.startswith("Noted: Tove out of Skelter Mill, 07:38")
    assert (await race.press("ines", reply, "Tove")).text.startswith("That button has been used.")
    assert len([e for e in await race.entries("out") if e.by == "ines"]) == 1  # type: ignore[attr-defined]


async def test_a_question_of_one_of_two_is_answered_after_a_restart(race: Race) -> None:
    """'Where is she' of two: the button for one of them tells all of her, as often as it is pressed."""
    reply = await race.say("both", "wo ist sie")
    _restart(race)
    for _ in range(2):
        assert (await race.press("both", reply, "Tove")).text.startswith("Tove")


async def test_how_her_race_ended_is_asked_on_after_a_restart(race: Race) -> None:
    """Three questions, and a restart between each: out of what, who, and, once it counts, how."""
    reply = await race.say("ines", "she's out")
    _restart(race)
    reply = await race.press("ines", reply, "Her race is over")
    assert reply.text == "Which runner?"
    _restart(race)
    reply = await race.press("ines", reply, "Tove")
    assert reply.text.startswith("Noted: Tove retired")
    assert (await race.state()).runner("tove").going is Going.RETIRED
    _restart(race)
    await race.press("ines", reply, "Own choice")
    assert (await race.state()).runner("tove").retirement.how is Retired.OWN_CHOICE  # type: ignore[union-attr]


@pytest.mark.parametrize(("label", "open_for"), [("Tove", ["tove"]), ("Both", ["maren", "tove"])])
async def test_for_whom_a_call_was_is_said_after_a_restart(
    race: Race, label: str, open_for: list[str]
) -> None:
    """The call went out for both; the press takes it back for the other, though nothing is remembered of it."""
    reply = await race.say("ines", "she needs help")
    _restart(race)
    told = await race.press("ines", reply, label)
    assert "open for" in told.text or "stays open" in told.text
    state = await race.state()
    assert [r for r in ("maren", "tove") if state.runner(r).help_open is not None] == open_for


@pytest.mark.parametrize(("words", "open_for"), [("Tove", ["tove"]), ("both", ["maren", "tove"])])
async def test_a_name_answers_after_a_restart_too(race: Race, words: str, open_for: list[str]) -> None:
    """While the call is young and still for nobody by name; without one a name is the question where she is."""
    await race.say("ines", "she needs help")
    _restart(race)
    await race.say("ines", words)
    state = await race.state()
    assert [r for r in ("maren", "tove") if state.runner(r).help_open is not None] == open_for
    _restart(race)
    assert (await race.say("ines", "where is maren")).text.startswith("Maren")
    assert "alarm" not in (await race.say("ines", "Tove")).text.split("\n")[0]


async def test_an_old_button_is_not_taken_for_a_new_choice(race: Race) -> None:
    """Two questions are open: the button of the first does what it says, not what stands in its place in the second."""
    race.at("07:40")
    await race.say("olga", "tove in at skelter mill 7:35")
    first = await race.say("ines", "she left at 7:38")
    await race.say("ines", "she's out")
    told = (await race.press("ines", first, "Tove")).text
    assert told.startswith("Noted: Tove out of Skelter Mill, 07:38")


async def test_words_are_asked_for_again(race: Race) -> None:
    """How somebody is can't be carried: once what was spoken of is gone, nothing is noted, and it says what to do."""
    reply = await race.say("both", "sie hat blasen")
    spoken = await race.journal.spoken("test", "both", "", race.clock.now())
    assert await race.journal.keep_turn(replace(spoken, body=""), race.clock.now())
    told = (await race.press("both", reply, "Tove")).text
    assert told == (
        "Wofür dieser Knopf war, weiß ich nicht mehr. Schreib es in Worten, mit dem Namen der Läuferin."
    )
    assert not await race.entries("how she is")


async def test_words_outlive_a_restart(race: Race) -> None:
    """The server knows what the choice was about, also to a bot that was started again since."""
    reply = await race.say("both", "sie hat blasen")
    _restart(race)
    told = (await race.press("both", reply, "Tove")).text
    assert told.startswith("Notiert, wie es Tove geht: ‚sie hat blasen‘")
    assert len(await race.entries("how she is")) == 1


# -- what is carried ------------------------------------------------------------------------------------------------

_IDS = st.text(st.sampled_from("abcdefghijklmnopqrstuvwxyz-"), min_size=1, max_size=60)
_MOMENTS = st.integers(0, 2_100_000_000).map(lambda s: datetime.fromtimestamp(s, UTC))


def _event(runner: str, point: str) -> EventHere:
    her = RunnerHere(runner, "Her", "1", datetime(2027, 6, 19, tzinfo=UTC), (PointHere(point, "Point", 1.0),))
    return EventHere("e" * 60, "E", "UTC", her.start, (), (her,), None, "112")  # type: ignore[arg-type]


def _choices(runner: str, point: str, at: datetime) -> st.SearchStrategy[Choice]:
    reports = st.builds(
        Report,
        st.sampled_from(
            [Kind.IN, Kind.OUT, Kind.THROUGH, Kind.RETIRED, Kind.RACE_CONTROL_TOLD, Kind.IN_HAND]
        ),
        st.just(at),
        st.sampled_from([None, runner]),
        st.sampled_from([None, point]),
        how=st.sampled_from([None, *Retired]),
        guessed=st.booleans(),
        corrects=st.booleans(),
        with_us=st.sampled_from(["", "got", "here"]),
    )
    asked = st.builds(
        Asked,
        st.sampled_from(
            [q for q in Question if q not in (Question.SLOWER, Question.LEAVES_NOW, Question.CARDS)]
        ),
        st.just(runner),
        st.sampled_from([None, point]),
    )
    slower = st.builds(
        Asked, st.just(Question.SLOWER), st.just(runner), factor=st.integers(50, 300).map(lambda n: n / 100)
    )
    leaving = st.builds(Asked, st.just(Question.LEAVES_NOW), st.just(runner), leaving=st.just(at))
    whose = st.sampled_from([MeantFor((runner,)), MeantFor(())])
    then = st.one_of(reports.map(lambda r: Reported((r,))), asked, slower, leaving, whose)
    return then.map(lambda t: Choice("x", t))


@given(st.data(), _IDS, _IDS, _MOMENTS)
def test_what_is_carried_comes_back_and_fits(
    drawn: st.DataObject, runner: str, point: str, at: datetime
) -> None:
    """Every wordless choice, whatever the ids: the same again, in a button that every channel takes."""
    event = _event(runner, point)
    choice = drawn.draw(_choices(runner, point, at))
    fields = fields_of(choice)
    assert meant_by(fields, event) == choice.then
    assert len(data(Press.PICK, "19", *fields, event_mark(event.id)).encode()) <= DATA_BYTES_MAX


def test_the_question_how_of_an_older_button_counts_that_her_race_is_over() -> None:
    """It carried place and time and asked how first: now it counts, and how is asked after."""
    at = datetime(2027, 6, 19, 12, tzinfo=UTC)
    over = Report(Kind.RETIRED, at, "maren", "mill", Retired.NOT_SAID)
    _, _, point, runner, seen, _ = fields_of(Choice("over", Reported((over,))))
    assert meant_by(("h", point, runner, seen), _event("maren", "mill")) == Reported((over,))
