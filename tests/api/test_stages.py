"""A race in stages over HTTP: the odds of being in before the next stage starts, in the answers that people get."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta

import pytest
from pydantic import TypeAdapter

from server.api.building import Built, build
from server.conversation.telling.answer import CutOffsAnswer, PlanAnswer
from server.conversation.telling.plan_answers import say_cut_offs, say_plan
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from tests.api.conftest import EVENT, RUNNER, Running

TWO_DAYS = f"""
[event]
id = "{EVENT}"
name = "Two days over the stiles"
time_zone = "Europe/London"
starts = 2027-06-19T08:00
route = "route.gpx"
limit = "40:00"
emergency_number = "112"
[race_control]
phone = "+44 1632 960001"
[[runners]]
id = "{RUNNER}"
name = "Maren"
person = "maren"
target = {{ finish = "27:00" }}
[[points]]
id = "start"
name = "Start"
kinds = ["start"]
[[points]]
id = "camp"
name = "Camp"
km = 80
next_stage = "Sun 05:30"
[[points]]
id = "finish"
name = "Finish"
kinds = ["finish"]
[[people]]
id = "maren"
name = "Maren"
phone = "+44 1632 960002"
parts = [{{ kind = "runner", runner = "{RUNNER}" }}]
[[people]]
id = "ana"
name = "Ana"
phone = "+44 1632 960003"
parts = [{{ kind = "crew" }}]
[[people]]
id = "lena"
name = "Lena"
phone = "+44 1632 960004"
parts = [{{ kind = "safety contact", ladder = 1, calls_race_control = true, can_telephone = true }}]
"""


@pytest.fixture(scope="session")
def event_text() -> str:
    """Two stages, the night at km 80."""
    return TWO_DAYS


@pytest.fixture(scope="session")
def built(event_text: str, event_files: Mapping[str, bytes]) -> Built:
    """The same, built."""
    return build(event_text, event_files)


async def asked(running: Running, what: str) -> dict:
    """The answer to one question of Ana's."""
    status, reply = await running.get("ana", running.path(what))
    assert status == 200, reply
    return reply["data"]


async def test_the_odds_of_the_next_stage_are_told_and_go_once_she_is_in(running: Running) -> None:
    """Before the start each answer has them, and what is said names place, hour, odds and rest; in the camp it is no
    longer a question. The race's own limit stands among the cut-offs."""
    limits = TypeAdapter(CutOffsAnswer).validate_python(await asked(running, "cutoffs"))
    plan = TypeAdapter(PlanAnswer).validate_python(await asked(running, "plan"))
    (stage,) = limits.stages
    assert plan.stages == (stage,)
    begins = datetime.fromisoformat("2027-06-20T05:30+01:00")
    assert (stage.point, stage.starts_at, stage.by) == ("camp", begins, begins)
    assert 0.5 < stage.odds < 1.0
    say = Say(Reader("en", "Europe/London", "Europe/London"), running.clock.now())
    for text in (say_cut_offs(say, limits, None), say_cut_offs(say, limits, "camp"), say_plan(say, plan)):
        assert "to be in before the next stage starts Sun 05:30; then likely" in text
    assert [c.point for c in limits.cut_offs] == ["finish"]
    running.clock.set(running.built.event.starts + timedelta(hours=14))
    status, _ = await running.report("ana", "in", "camp")
    assert status < 300
    assert (await asked(running, "cutoffs"))["stages"] == []


async def test_low_odds_come_with_a_warning(running: Running) -> None:
    """Not there an hour before the next stage starts, by her crew's word: the odds are low, and it says what to ask."""
    running.clock.set(running.built.event.starts + timedelta(hours=20, minutes=30))
    status, _ = await running.report("ana", "not here yet", "camp")
    assert status < 300
    limits = TypeAdapter(CutOffsAnswer).validate_python(await asked(running, "cutoffs"))
    assert limits.stages[0].odds < 0.6
    said = say_cut_offs(
        Say(Reader("de", "Europe/London", "Europe/London"), running.clock.now()), limits, "camp"
    )
    assert "Das ist wenig: jetzt beim Rennen fragen" in said
