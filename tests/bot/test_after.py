"""Once her race is over, people ask how it went: the end, against the plan, where time was lost."""

from __future__ import annotations

import io
import json
import tomllib
from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdf import PdfReader

from server.api.answers import forecast
from server.api.snapshot import Pictures
from server.api.who_may import May
from server.conversation.telling.against_plan import parts_of
from server.conversation.telling.answer import PointAnswer
from server.paper.afterwards import afterwards, sheet, to_csv, to_json
from server.paper.document import Grid, Lines
from server.paper.pdf import pdf
from server.paper.scored import scored
from server.plan.held import RaceEvidence
from server.sentences import languages
from server.watch.evaluate import evaluate
from server.watch.notice import Made, Notice

if TYPE_CHECKING:
    from conftest import Race

ASKED = ("report", "how was the race", "how did it go", "summary", "is it over", "what happened")
GEFRAGT = ("Bericht", "wie lief es", "Zusammenfassung", "ist es vorbei", "was war los", "was ist passiert")


async def _to_the_finish(race: Race) -> None:
    for hm, who, words in (
        ("09:40", "vera", "214 in 0910 out 0940"),
        ("12:20", "ana", "in at gate 12:00"),
        ("12:21", "ana", "out of gate 12:20"),
        ("15:10", "ana", "in at the finish 15:05"),
    ):
        race.at(hm)
        await race.say(who, words)


@pytest.mark.parametrize("words", ASKED)
async def test_after_the_race_it_is_told_how_it_went(race: Race, words: str) -> None:
    """The end and its time first, then against the plan, where time was lost, and what shows the whole."""
    await _to_the_finish(race)
    text = (await race.say("ana", words)).text.split("\n")
    assert text[0].startswith("Maren finished")
    assert "after 10 h 5 min" in text[0]
    assert text[1].startswith("Against the plan (goal B), at Low Barn finish: 1 h")
    assert "Time was lost: " in text[2]
    assert "stop at Moor Cross 30 min" in text[2]
    assert text[-1].endswith("write ‘plan’.")


@pytest.mark.parametrize("words", GEFRAGT)
async def test_the_same_in_german(race: Race, words: str) -> None:
    """Crew of two runners, one of them at the finish: both are told of."""
    await _to_the_finish(race)
    await race.say("both", "wo ist maren")
    assert (await race.say("both", words)).text.startswith("Maren ist im Ziel")


async def test_what_happened_on_the_way_is_about_alarms(race: Race) -> None:
    """During the race 'what happened' is answered as before, and 'is it over' with 'no' and how it stands."""
    assert "finished" not in (await race.say("ana", "what happened")).text
    first = (await race.say("ana", "is it over")).text.split("\n")[0]
    assert first == "It is not over for Maren: on the move."


async def test_of_a_retired_runner_where_when_and_how(race: Race) -> None:
    """The first line says that she did not finish."""
    race.at("09:10")
    await race.say("ana", "in at moor cross")
    await race.say("ana", "she has retired, timed out")
    race.at("11:00")
    first = (await race.say("ana", "how did it go")).text.split("\n")[0]
    assert first.startswith("Maren did not finish: retired at Moor Cross, ")
    assert first.endswith("(timed out).")


@pytest.mark.parametrize("who", ["ana", "maren", "ines", "fan"])
async def test_what_can_i_ask_names_it(race: Race, who: str) -> None:
    """Whoever follows her reads that it can be asked."""
    assert "how did it go" in (await race.say(who, "what can i ask")).text


async def test_it_is_kept_as_a_page_and_as_figures(race: Race) -> None:
    """Sections and stops against the plan, the windows as they stood when she was last heard of, who answered how soon, what
    was written of her, and the line that the next plan can rest on; every language whole."""
    race.at("09:15")
    owed = evaluate(
        (await Pictures(race.journal).take(race.event.id, race.clock.now())).situation, race.clock.now()
    ).owed
    await _to_the_finish(race)
    race.at("15:12")
    picture = await Pictures(race.journal).take(race.event.id, race.clock.now())
    event, table, state = picture.event, picture.timetable("maren"), picture.state.runner("maren")
    windows = scored(event, "maren", table, picture.course("maren"), picture.entries, picture.built.placer)
    assert [w.point for w in windows] == ["mill", "moor", "gate", "finish"]
    assert all(w.told_at < w.came for w in windows)
    answer = forecast(picture, "maren", May.YES)
    sent = picture.now - timedelta(minutes=30)
    asked = [
        replace(m, sent_at=sent, answered_at=sent + timedelta(minutes=k))
        for k, m in enumerate(_asked(owed[0]), start=3)
    ]
    found = afterwards(event, table, answer, asked, windows, state.how_she_is, RaceEvidence())
    assert sum((p.over for p in found.parts), timedelta(0)) > timedelta(hours=1)
    (told, *_) = found.told
    assert told.answered == told.asked == 2
    stops = [b.rows[-1] for b in sheet(found, "maren", picture.now).pages[0].blocks if isinstance(b, Grid)][1]
    assert stops == ("all of them", "0:15", "0:56", "+0:41")
    assert (told.median, told.slowest) == (timedelta(minutes=3.5), timedelta(minutes=4))
    assert found.halves is not None
    assert found.race is not None
    assert found.race[2] == timedelta(hours=10, minutes=5)
    people = tuple(replace(p, language=x) for p, x in zip(event.people, languages(), strict=False))
    for person in people:
        page = sheet(replace(found, event=replace(event, people=people)), person.id, picture.now)
        (first, *_) = PdfReader(io.BytesIO(pdf([page]))).pages
        assert "10:05" in first.extract_text()
    assert len(to_csv(found).splitlines()) == len(found.parts) + 1
    assert json.loads(to_json(found))["past_race"]["time_s"] == 36300
    line = next(
        x
        for b in sheet(found, "maren", picture.now).pages[0].blocks
        if isinstance(b, Lines)
        for x in b.lines
        if "past_race" in x
    )
    assert tomllib.loads(line.partition(": ")[2])["past_race"]["time"] == "10:05"


def _asked(owed: Notice) -> list[Made]:
    """Two questions that went to one person."""
    one = replace(owed, key=replace(owed.key, person="ana", runner="maren"), needs_answer=True)
    return [Made(one, k, owed.owed_at) for k in (1, 2)]


_AT = datetime.fromisoformat("2027-06-19T05:00+01:00")
_MINUTES = st.integers(0, 300).map(lambda n: timedelta(minutes=n))


@given(st.lists(st.tuples(_MINUTES, _MINUTES, _MINUTES, _MINUTES), min_size=1, max_size=8))
def test_legs_and_stops_come_to_what_she_was_late_at_the_end(
    rows: list[tuple[timedelta, timedelta, timedelta, timedelta]],
) -> None:
    """Where every point has its times, nothing is lost that is in no leg and no stop."""
    points, plan, real = [PointAnswer("p0", "P0", 0.0, planned_in=_AT, planned_out=_AT, left=_AT)], _AT, _AT
    for i, (leg, stop, real_leg, real_stop) in enumerate(rows, start=1):
        planned_in, came = plan + leg, real + real_leg
        plan, real = planned_in + stop, came + real_stop
        last = i == len(rows)
        points.append(
            PointAnswer(
                f"p{i}", f"P{i}", float(i), planned_in=planned_in, planned_out=plan, planned_stop=stop,
                arrived=came, left=None if last else real, finish=last,
            )
        )  # fmt: skip
    end = points[-1]
    assert end.arrived is not None
    assert end.planned_in is not None
    assert sum((p.over for p in parts_of(tuple(points))), timedelta(0)) == end.arrived - end.planned_in
