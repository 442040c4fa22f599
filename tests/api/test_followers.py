"""The link for followers: whose it is to give and take back, and what it must never show."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

from tests.api.conftest import EVENT, Running

LINK = f"/v1/events/{EVENT}/runners/maren/followers"
HIDDEN = (
    "Ana",
    "Jonas",
    "Ines",
    "Tomas",
    "Olga",
    "Vera",
    "54.8",
    "-2.3",
    "+44",
    "van",
    "alarm",
    "help",
    "Race control",
)


async def given(running: Running) -> str:
    """A fresh link's path, with its secret."""
    status, answer = await running.call("maren", "POST", LINK, {"on": True})
    assert (status, answer["data"]["on"]) == (200, True)
    link: str = answer["data"]["link"]
    assert link.startswith("http://127.0.0.1:")
    return "/" + link.partition("://")[2].partition("/")[2]


async def page(running: Running, path: str, **headers: str) -> tuple[int, str, Any]:
    async with running.client.get(path, headers=headers) as reply:
        return reply.status, await reply.text(), reply.headers


async def under_way(running: Running) -> None:
    running.clock.set(running.start + timedelta(hours=1, minutes=22))
    assert (await running.report("ana", "in", "pell"))[0] == 200
    await running.report("ana", "position", fix={"lat": 54.8, "lon": -2.3})
    await running.report("ana", "passed on", to="*", words="bring dry socks")


async def test_it_is_half_an_hour_late_and_coarse(running: Running) -> None:
    """At 29 minutes nothing, at 30 the point, to a quarter of an hour."""
    path = await given(running)
    await under_way(running)
    _, text, _ = await page(running, path)
    assert "has not reached a point yet" in text
    running.clock.advance(timedelta(minutes=29))
    assert "was at Pell Bridge" not in (await page(running, path))[1]
    running.clock.advance(timedelta(minutes=1))
    status, text, headers = await page(running, path)
    assert status == 200
    assert "Maren was at Pell Bridge about 06:15" in text, text
    assert "06:22" not in text
    assert headers["Cache-Control"] == "no-store"
    assert 'content="noindex"' in text


async def test_it_shows_no_position_nobody_of_the_crew_and_no_alarm(running: Running) -> None:
    path = await given(running)
    await under_way(running)
    await running.report("maren", "asked for help")
    running.clock.advance(timedelta(hours=2))
    await running.report("ana", "how she is", words="Maren is sick")
    running.clock.advance(timedelta(minutes=40))
    _, text, _ = await page(running, path)
    assert "Pell Bridge" in text
    for word in (*HIDDEN, "sick", "socks"):
        assert word.casefold() not in text.casefold(), word


async def test_taken_back_it_shows_nothing_at_once_and_a_new_one_ends_the_old(running: Running) -> None:
    first = await given(running)
    second = await given(running)
    assert (await page(running, first))[0] == 404
    assert (await page(running, second))[0] == 200
    status, answer = await running.call("maren", "POST", LINK, {"on": False})
    assert (status, answer["data"]) == (200, {"on": False, "link": ""})
    status, text, _ = await page(running, second)
    assert status == 404
    assert "Maren" not in text
    assert "Harrow" not in text
    never = (await page(running, "/follow?t=nothing"))[1]
    assert text == never, "one that was taken back can't be told from one that never was"
    assert (await running.call("maren", "POST", LINK, {}))[1]["data"] == {"on": False, "link": ""}


async def test_it_opens_nothing_else(running: Running) -> None:
    """Neither call of the API, nor the board, nor a tracker's report."""
    secret = (await given(running)).partition("t=")[2]
    headers = {"Authorization": f"Bearer {secret}"}
    for path in (
        "/v1/me",
        f"/v1/events/{EVENT}/board",
        f"/v1/events/{EVENT}/runners/maren/forecast",
    ):
        status, _ = await running.call(None, "GET", path, headers=headers)
        assert status in (401, 403), path
    status, _ = await running.call(
        None, "POST", running.path("checkins"), {"kind": "in", "point": "mill"}, headers=headers
    )
    assert status in (401, 403)
    async with running.client.get(f"/v1/report?key={secret}&lat=54&lon=-2") as reply:
        assert reply.status in (401, 403)
    token = await running.token("ana")
    assert (await page(running, f"/follow?t={token}"))[0] == 404, "a person's token is no link"


async def test_it_ends_a_week_after_the_start(running: Running) -> None:
    path = await given(running)
    running.clock.set(running.start + timedelta(days=7, minutes=-1))
    assert (await page(running, path))[0] == 200
    running.clock.advance(timedelta(minutes=1))
    assert (await page(running, path))[0] == 404
