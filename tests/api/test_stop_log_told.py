"""The stop log where it is read: GET …/log with its rights, the next crew's notice, the board."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from tests.api.conftest import EVENT, Running

DRANK = [
    {"item": "drank", "amount": 500},
    {"item": "painkiller", "level": "none"},
    {"item": "ate", "level": "none"},
]


async def _logged(running: Running) -> None:
    """She has been at the mill, where Ana logged a stop."""
    await running.reachable()
    running.clock.advance(timedelta(hours=3, minutes=31))
    assert (await running.report("ana", "in", "mill"))[0] == 200
    assert (await running.report("ana", "log", "mill", logged=DRANK))[0] == 200
    running.clock.advance(timedelta(minutes=6))
    assert (await running.report("ana", "out", "mill"))[0] == 200


async def _log(running: Running, person: str) -> tuple[int, Any]:
    return await running.get(person, running.path("log"))


async def test_who_crews_or_waits_at_home_reads_it(running: Running) -> None:
    """Also she herself; a supporter gets 403, and nobody without a token anything."""
    await _logged(running)
    for person in ("ana", "jonas", "tomas", "ines", "maren"):
        status, found = await _log(running, person)
        assert status == 200
        (row,) = found["data"]["rows"]
        assert [x["item"] for x in row["logged"]] == ["drank", "painkiller", "ate"]
    status, found = await _log(running, "sam")
    assert (status, found["error"]["code"]) == (403, "not_yours")
    assert (await running.get(None, running.path("log")))[0] == 401


@pytest.mark.parametrize("person", ["vera", "olga"])
async def test_a_medic_of_the_race_says_so_first_and_that_is_kept(running: Running, person: str) -> None:
    """Nothing before their word; all of it for twelve hours after it; her crew read who was shown it."""
    await _logged(running)
    _, found = await _log(running, person)
    assert not found["data"]["shown_to_asker"]
    assert not found["data"]["rows"]
    assert (await running.report(person, "log shown"))[0] == 200
    _, found = await _log(running, person)
    assert len(found["data"]["rows"]) == 1
    assert len((await _log(running, "ana"))[1]["data"]["medics"]) == 1
    running.clock.advance(timedelta(hours=12, minutes=1))
    assert not (await _log(running, person))[1]["data"]["rows"]


async def test_the_next_crew_reads_it_before_she_comes(running: Running) -> None:
    """Jonas was not at the mill: his 'get ready' for the next meeting has what was logged there, and what was not is not
    in it."""
    await _logged(running)
    for _ in range(60):
        running.clock.advance(timedelta(minutes=5))
        await running.parts.ticker.tick(running.clock.now())
        found = (await running.get("jonas", f"/v1/events/{EVENT}/notices"))[1]["data"]["notices"]
        ready = [n["text"] for n in found if n["kind"] == "leave soon"]
        if ready:
            break
    assert "drank 500 ml" in ready[0]
    assert "nothing eaten" in ready[0]
    assert "no painkiller" in ready[0]
    assert "peed" not in ready[0]
