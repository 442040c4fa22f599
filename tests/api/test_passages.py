"""Others' passage times by a call and from a file: who may, what becomes of each row, and what they change of a forecast."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

import pytest

from server.api import outlooks
from server.api.building import Built, build
from server.forecast.bridge import reference_of
from tests.api.conftest import DEMO, EVENT, EXTRA_PEOPLE, Running
from tests.api.test_field import DESK, by_bib

PATH = f"/v1/events/{EVENT}/passages"


@pytest.fixture(scope="module")
def event_text() -> str:
    """The demo's, with somebody who hears of alarms about anybody."""
    return (DEMO / "event.toml").read_text(encoding="utf-8") + EXTRA_PEOPLE + DESK


@pytest.fixture(scope="module")
def built(event_text: str, event_files: dict[str, bytes]) -> Built:
    return build(event_text, event_files)


def feed(running: Running, upto: timedelta, slow: float = 1.0, bibs: int = 30) -> str:
    """As a timing feed would have it: all take `slow` times as planned after the second point."""
    table, course = running.built.timetables["maren"], running.built.courses["main"]
    legs, ids = reference_of(table, course).elapsed_s, [r.point for r in table.rows[1:]]
    rows = ["bib,name,point,elapsed"]
    for bib in range(bibs):
        at = 0.0
        for n, point in enumerate(ids):
            at += (legs[n] - (legs[n - 1] if n else 0.0)) * (slow if n > 1 else 1.0) * (0.7 + bib / 300)
            if timedelta(seconds=at) > upto:
                break
            rows.append(
                f"{1000 + bib},Somebody Else,{point},{int(at) // 3600}:{int(at) // 60 % 60:02d}:{int(at) % 60:02d}"
            )
    return "\n".join(rows)


async def send(running: Running, who: str = "olga", **body: Any) -> tuple[int, dict[str, Any]]:
    return await running.call(who, "POST", PATH, body)


async def window(running: Running, point: str) -> datetime:
    _, said = await running.call("ana", "GET", f"/v1/events/{EVENT}/runners/maren/forecast")
    found = next(p for p in said["data"]["points"] if p["point"] == point)
    return datetime.fromisoformat(found["window"]["likely"])


async def seen_twice(running: Running) -> tuple[str, datetime]:
    """She was seen at two points as planned; the next point and its time before anybody else's were known."""
    table = running.built.timetables["maren"]
    legs = reference_of(table, running.built.courses["main"]).elapsed_s
    ids = [r.point for r in table.rows[1:]]
    start = running.built.event.starts
    for n in range(2):
        at = start + timedelta(seconds=float(legs[n]))
        running.clock.advance(max(timedelta(0), at - running.clock.now()))
        status, said = await running.call(
            "vera", "POST", f"/v1/events/{EVENT}/checkins",
            {"bib": "214", "kind": "in", "point": ids[n], "seen_at": at.isoformat(), "key": f"in-{n}"},
        )  # fmt: skip
        assert status == 200, said
    running.clock.advance(timedelta(hours=1))
    return ids[2], await window(running, ids[2])


@pytest.mark.parametrize(("who", "status"), [("olga", 200), ("vera", 200), ("ana", 403), ("tomas", 403)])
async def test_race_and_posts_may_say_so(running: Running, who: str, status: int) -> None:
    running.clock.advance(timedelta(hours=12))
    assert (await send(running, who, csv="bib,point,elapsed\n7,mill,3:00\n"))[0] == status
    assert len(await running.parts.journal.passages(EVENT)) == (status == 200)


async def test_each_row_is_kept_once_or_named(running: Running) -> None:
    """The same again changes nothing, a correction replaces; what is wrong is told by row; no name is stored; a bib of one
    who is followed is none of it."""
    running.clock.advance(timedelta(hours=12))
    rows = [
        {"bib": 7, "point": "mill", "elapsed": "3:00", "name": "Somebody Else"},
        {"bib": "214", "point": "mill", "elapsed": "3:00"},
    ]
    _, said = await send(running, passages=rows)
    assert {k: said["data"][k] for k in ("added", "changed", "same", "not_taken")} == {
        "added": 1, "changed": 0, "same": 0, "not_taken": 1,
    }  # fmt: skip
    assert said["data"]["why"][0].startswith(
        "passages:2: error: bib: bib 214 is of a runner who is followed here. Report her"
    )
    assert (await send(running, passages=rows))[1]["data"]["same"] == 1
    assert (await send(running, csv="bib;point;elapsed\n7;Mill;3:01\n"))[1]["data"]["changed"] == 1
    assert [p.bib for p in await running.parts.journal.passages(EVENT)] == ["7"]
    state = (await running.parts.pictures.take(EVENT, running.clock.now())).state.runner("maren")
    assert state.times == ()
    for body in ({}, {"csv": "x,y\n1,2\n"}, {"csv": "a", "passages": []}):
        status, said = await send(running, **body)
        assert (status, bool(said["error"]["what"])) == (422, True)


async def test_others_times_move_her_windows(running: Running) -> None:
    """Thirty who took longer to the next point make it later for her, and it is told why; taken back, it is as before."""
    next_, before = await seen_twice(running)
    upto = running.clock.now() - running.built.event.starts
    rows = feed(running, upto, slow=1.15)
    assert (await send(running, csv=rows))[1]["data"]["added"] > 60
    late = await window(running, next_)
    assert timedelta(minutes=2) < late - before < timedelta(minutes=40)
    _, said = await running.call("ana", "GET", f"/v1/events/{EVENT}/runners/maren/forecast")
    told = said["data"]["fresh"]["day"]
    assert (told["others"] >= 20, told["percent"] in range(5, 16)) == (True, True)
    gone = "\n".join(",".join([*row.split(",")[:3], ""]) for row in rows.splitlines()[1:])
    assert (await send(running, csv=f"bib,name,point,elapsed\n{gone}"))[1]["data"]["changed"] > 60
    assert await window(running, next_) == before


async def test_a_forecast_whose_others_stay_is_not_worked_out_anew(running: Running) -> None:
    """Passages of points she has passed, or by those of whom nobody has been seen past her, leave her forecast as it was."""
    await seen_twice(running)
    now = running.clock.now()
    before = (await running.parts.pictures.take(EVENT, now)).situation.outlooks["maren"]
    await send(running, csv=feed(running, timedelta(hours=1)))
    picture = await running.parts.pictures.take(EVENT, now)
    assert picture.situation.outlooks["maren"] is before
    await send(running, csv=feed(running, now - running.built.event.starts))
    told = (await running.parts.pictures.take(EVENT, now)).situation.outlooks["maren"]
    assert told is not before
    assert told.day is not None
    assert told.day.others > 5


async def test_one_report_has_no_field_looked_through_anew(
    running: Running, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Of eight who were seen each is in what the others' forecasts rest on; a report of now has only hers looked at,
    one of a time before others were last seen has theirs too."""
    looked: list[str] = []
    real = outlooks.seen_of_others
    monkeypatch.setattr(
        outlooks, "seen_of_others", lambda s, f, me, *r: (looked.append(me.runner), real(s, f, me, *r))[1]
    )
    few = "bib,name,target\n" + "".join(f"{n},Runner {n},{28 + n % 6}:00\n" for n in range(301, 312))
    assert (await running.call("olga", "POST", f"/v1/events/{EVENT}/start-list", {"csv": few}))[0] == 200
    begin = running.built.event.starts
    running.clock.advance(begin - running.clock.now() + timedelta(hours=6))
    for n in range(301, 309):
        for hours, point in ((2.8, "mill"), (4.5, "stile-out")):
            at = begin + timedelta(hours=hours, minutes=n - 300)
            status, said = await by_bib(
                running, str(n), "in", point, key=f"{n}{point}", seen_at=at.isoformat()
            )
            assert status == 200, said

    async def look() -> None:
        picture = await running.parts.pictures.take(EVENT, running.clock.now())
        assert len(picture.situation.outlooks) == 12

    await look()
    looked.clear()
    running.clock.advance(timedelta(minutes=5))
    await by_bib(running, "309", "in", "mill", key="now")
    await look()
    assert set(looked) == {"bib-309"}
    looked.clear()
    await by_bib(running, "310", "in", "mill", key="late", seen_at=(begin + timedelta(hours=2.9)).isoformat())
    await look()
    assert {"bib-310", "bib-308"} <= set(looked)
    assert "bib-311" not in looked  # of whom nothing is known yet
