"""A whole field: a start list by a call, reports by bib, and what an organiser sees of everybody."""

from __future__ import annotations

import time
from datetime import timedelta

import pytest

from server.api import board
from server.api.building import Built, build
from server.api.field import field_of
from server.api.who_may import May
from tests.api.conftest import DEMO, EVENT, EXTRA_PEOPLE, Running

LIST = "bib,name,target\n" + "".join(f"{n},Runner {n},{28 + n % 6}:00\n" for n in range(301, 341))
"""Forty runners of whom nobody has a crew, beside one who has."""


DESK = """
[[people]]
id = "desk"
name = "Desk"
phone = "+44 1632 960099"
parts = [{ kind = "safety contact", ladder = 9 }]
"""


@pytest.fixture(scope="module")
def event_text() -> str:
    """The demo's, with somebody who hears of alarms about anybody."""
    return (DEMO / "event.toml").read_text(encoding="utf-8") + EXTRA_PEOPLE + DESK


@pytest.fixture(scope="module")
def built(event_text: str, event_files: dict[str, bytes]) -> Built:
    return build(event_text, event_files)


async def with_field(running: Running) -> None:
    status, said = await running.call("olga", "POST", f"/v1/events/{EVENT}/start-list", {"csv": LIST})
    assert status == 200, said
    assert len(said["data"]["added"]) == 40


async def by_bib(
    running: Running, bib: str, kind: str, point: str | None, who: str = "vera", **more: str
) -> tuple[int, dict[str, dict[str, str]]]:
    body = {"bib": bib, "kind": kind, "point": point, **more}
    return await running.call(who, "POST", f"/v1/events/{EVENT}/checkins", body)  # fmt: skip


async def test_a_start_list_is_stored_once(running: Running) -> None:
    """By an organiser only; the same list again makes no new version; one row changed is one runner changed."""
    path = f"/v1/events/{EVENT}/start-list"
    assert (await running.call("ana", "POST", path, {"csv": LIST}))[0] == 403
    await with_field(running)
    _, again = await running.call("olga", "POST", path, {"csv": LIST})
    assert (again["data"]["version"], again["data"]["same"], again["data"]["added"]) == (2, 40, [])
    assert again["data"]["not_listed"] == ["Maren"]
    _, one = await running.call("olga", "POST", path, {"csv": "bib,name\n301,Ida\n"})
    assert (one["data"]["version"], one["data"]["changed"], len(one["data"]["not_listed"])) == (
        3,
        ["301"],
        40,
    )
    event = await running.parts.pictures.event(EVENT)
    assert [(r.name, r.target.finish) for r in event.runners if r.bib == "301"] == [
        ("Ida", timedelta(hours=29))
    ]
    assert len(event.meetings) == len(running.built.event.meetings)


async def test_a_wrong_row_stores_nothing(running: Running) -> None:
    """Each is told with its line, its column and what to do."""
    status, said = await running.call(
        "olga", "POST", f"/v1/events/{EVENT}/start-list", {"csv": "bib,name,target\n1,Ida,30:00\n2,Bo,soon\n3,,\n"}
    )  # fmt: skip
    assert (status, said["error"]["where"]) == (422, "csv")
    lines = said["error"]["what"].splitlines()
    assert [line.partition(": error: ")[0] for line in lines] == ["start list:3", "start list:4"]
    assert "target: 'soon' is no length of time. Write hours and minutes" in lines[0]
    assert len(await running.parts.journal.event_versions(EVENT)) == 1


async def test_a_wrong_row_is_told_in_the_organisers_language(running: Running, event_text: str) -> None:
    """File, mistake, remedy and how many are not told here: all of it."""
    text = event_text.replace('name = "Olga"\n', 'name = "Olga"\nlanguage = "de"\n')
    journal, files = running.parts.journal, (await running.parts.journal.load_event(EVENT)).files
    await journal.store_event(text, files, build(text, files).event, "test", running.clock.now(), over=1)
    running.parts.hub.changed(EVENT)
    rows = "".join(f"{n},Runner {n},soon\n" for n in range(301, 361))
    _, said = await running.call(
        "olga", "POST", f"/v1/events/{EVENT}/start-list", {"csv": "bib,name,target\n" + rows}
    )
    *lines, more = said["error"]["what"].splitlines()
    assert lines[0].startswith("Startliste:2: Fehler: target: ‚soon‘ ist keine Dauer. Schreib ")
    assert (len(lines), more) == (50, "und 10 weitere")
    assert said["error"]["do"].startswith("Behebe")


async def test_volunteers_report_by_bib(running: Running) -> None:
    """With and without a crew; a bib that nobody has is asked back with those near it."""
    await with_field(running)
    running.clock.advance(timedelta(hours=4))
    for bib, runner in (("214", "maren"), ("301", "bib-301")):
        status, said = await by_bib(running, bib, "in", "mill", key=f"in-{bib}")
        assert (status, said["data"]["runner"], said["data"]["status"]) == (200, runner, "noted")
    assert (await by_bib(running, "301", "in", "mill", key="in-301"))[1]["data"]["status"] == "same again"
    status, said = await by_bib(running, "31", "in", "mill")
    assert (status, said["error"]["where"]) == (404, "bib")
    assert "Near it: 331" in said["error"]["do"]
    assert {e.runner for e in await running.stored()} == {"maren", "bib-301"}


async def test_the_field_says_who_is_late_where(running: Running) -> None:
    """Counts in and out at a point, who is late, out, or was never reported; at another look only those are worked out anew
    of whom something has come in."""
    await with_field(running)
    running.clock.advance(timedelta(hours=4))
    for n in range(301, 311):
        await by_bib(running, str(n), "in", "mill")
        await by_bib(running, str(n), "out", "mill")
    await by_bib(running, "311", "in", "mill")
    await by_bib(running, "312", "retired", "mill", how="own choice")
    await by_bib(running, "313", "retired", None, "olga", how="did not start")
    assert (await running.get("vera", f"/v1/events/{EVENT}/field"))[0] == 403
    _, said = await running.get("olga", f"/v1/events/{EVENT}/field")
    runners = {r["bib"]: r for r in said["data"]["runners"]}
    mill = next(p for p in said["data"]["points"] if p["point"] == "mill")
    assert (mill["came"], mill["left"], mill["here"]) == (11, 10, 1)
    assert mill["to_come"] == 41 - 11 - 2
    assert runners["312"]["retired_how"] == "own choice"
    assert [runners[b]["started"] for b in ("301", "312", "313", "320")] == [True, True, False, False]
    assert not runners["301"]["late_at"]
    assert runners["320"]["late_at"]
    running.clock.advance(timedelta(hours=9))
    _, later = await running.get("olga", f"/v1/events/{EVENT}/field")
    late = {r["bib"] for r in later["data"]["runners"] if r["late_at"]}
    assert {"301", "311", "320"} <= late
    assert not late & {"312", "313"}
    picture = await running.parts.pictures.take(EVENT, running.clock.now())
    field_of(picture)
    kept = {r: known[1] for r, known in picture.ahead.items()}
    await by_bib(running, "302", "in", "brindle", "olga")
    picture = await running.parts.pictures.take(EVENT, running.clock.now())
    field_of(picture)
    assert {r for r, known in picture.ahead.items() if known[1] is not kept.get(r)} == {"bib-302"}


async def test_an_organisers_board_shows_the_field(running: Running) -> None:
    """Who is late with a link each, the counts; of the runners the one asked for, whole; and it takes no longer than a few
    runners would each."""
    await with_field(running)
    running.clock.advance(timedelta(hours=6))
    headers = {"Authorization": f"Bearer {await running.token('olga')}"}

    async def page(path: str) -> str:
        async with running.client.get(path, headers=headers) as got:
            assert got.status == 200
            return await got.text()

    html = await page(f"/board/{EVENT}/part")
    assert "Late: 41" in html
    assert f'<a href="/board/{EVENT}?runner=bib-301">301 Runner 301: awaited at' in html
    assert "In and out at each point" in html
    assert 'data-runner="bib-301"' not in html
    began = time.process_time()
    assert 'data-runner="bib-301"' in await page(f"/board/{EVENT}/part?runner=bib-301")
    assert time.process_time() - began < 5


async def test_nobodys_meetings_are_looked_for_who_has_none(running: Running) -> None:
    """Of whom crew are bound for is asked of those they meet, not of everybody in a field."""
    await with_field(running)
    picture = await running.parts.pictures.take(EVENT, running.clock.now())
    ana = next(p for p in board.people(picture, May.YES).people if p.name == "Ana")
    assert ana.bound_for
    asked = {key[1] for key in picture.memo if isinstance(key, tuple) and key[0] == "meetings"}
    assert asked == {"maren"}
