"""The desk on what people ask when it gets serious, and on messages that do two things, against the real server."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from server.facts.state import Going

if TYPE_CHECKING:
    from conftest import Race

SERIOUS = (
    "should i walk towards her", "who knows about this", "who has been told", "how am i doing", "when do the goals change",
    "what time do they close brindle gate", "where do we park", "when does it get dark", "does race control know",
)  # fmt: skip


@pytest.mark.parametrize("who", ["ana", "ines"])
async def test_serious_questions_are_answered(race: Race, who: str) -> None:
    """Crew and safety contact get an answer to each, with no gap in it and no refusal."""
    for question in SERIOUS:
        text = (await race.say(who, question)).text
        assert text, question
        assert "…" not in text.replace("…’", ""), (question, text)
        for bad in ("could not take that", "did not understand", "does not allow"):
            assert bad not in text, (question, text)


async def test_going_towards_her_is_never_an_order(race: Race) -> None:
    """Race control is asked first; the rules, what is known, where to be instead and how to stay reachable follow."""
    lines = (await race.say("ana", "should i walk towards her")).text.split("\n")
    assert lines[0].startswith(
        "Ask race control before anybody goes towards her: Race control, +44 1632 960001."
    )
    assert any(x.startswith("Race rules: outside help for Maren only at crew points.") for x in lines)
    assert any(x.startswith("Last known:") for x in lines)
    assert any(x.startswith("Where she will look for you: ") for x in lines)
    assert any("never alone, never without a light" in x for x in lines)


async def test_who_knows_names_who_was_asked_and_who_has_it(race: Race) -> None:
    """Without an alarm that is said; with one: who holds it, who was asked, whether race control knows."""
    assert (await race.say("ana", "who knows about this")).text.startswith("No alarm is open about Maren.")
    await race.say("maren", "help, i fell and can't walk")
    await race.tick()  # type: ignore[misc]
    open_now = (await race.say("ana", "who knows about this")).text
    assert open_now.startswith("Nobody has taken the alarm about Maren yet (asked for help, since ")
    assert "no answer yet" in open_now
    assert "Nobody has reported that race control knows: Race control, +44 1632 960001." in open_now
    await race.say("ines", "i have it")
    await race.say("ines", "told race control")
    held = (await race.say("ana", "who has been told")).text
    assert held.startswith("Ines has the alarm about Maren (asked for help, since ")
    assert "answered ‘I have it’" in held
    assert "Race control knows, since " in held
    towards = (await race.say("ana", "should i go and look for her")).text
    assert "Ines has the open alarm: speak to Ines first." in towards


async def test_the_runner_asks_of_herself(race: Race) -> None:
    """She is told against the plan first, addressed as you; asked by crew it is hers against the plan."""
    own = (await race.say("maren", "how am i doing")).text.split("\n")
    assert own[0].startswith("You are ")
    assert any(x.startswith("Moor Cross: about ") for x in own)
    assert (await race.say("ana", "how am i doing")).text.startswith("Maren is ")


async def test_a_report_and_a_question_in_one(race: Race) -> None:
    """The report counts, the question is answered, and what both would say is said once."""
    race.at("08:40")
    reply = await race.say("ana", "in at moor cross 0838. when is she at brindle gate?")
    lines = reply.text.split("\n")
    assert lines[0] == "Noted: Maren in at Moor Cross, 08:38."
    assert any(x.startswith("Maren at Brindle Gate: about ") for x in lines)
    assert len(lines) == len(set(lines))
    assert (await race.state()).runner("maren").going is Going.AT_POINT


async def test_a_bare_question_reports_nothing(race: Race) -> None:
    """'in?' and hearsay put nothing on record that counts."""
    await race.say("ana", "in at moor cross?")
    told = await race.say("ana", "a marshal says she left moor cross 0725")
    state = (await race.state()).runner("maren")
    assert state.at_point("moor") is None
    assert len(state.unconfirmed) == 1
    assert told.text.split("\n")[0].endswith("is that right?")


async def test_yes_with_its_time_answers_and_reports(race: Race) -> None:
    """'yes at 7:25' where nothing was asked is kept as her arrival at the next point, and asked about."""
    reply = await race.say("ana", "yes at 7:25")
    assert reply.text.startswith("Maren in at Moor Cross, 07:25: is that right?")
