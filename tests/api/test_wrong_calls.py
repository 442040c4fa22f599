"""A table of wrong calls, each with the error it gets; and that every error has the one shape."""

from __future__ import annotations

# ruff: noqa: E501 - a case a line: the table is read down its columns
import contextlib
import sqlite3
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest
from aiohttp.test_utils import make_mocked_request
from multidict import CIMultiDict
from yarl import URL

from server.api import auth
from server.api.envelope import FAULTS
from tests.api.conftest import EVENT, Running

RUN, EV = "/v1/events/harrow-round/runners/maren", "/v1/events/harrow-round"
IN = f"{RUN}/checkins"
POINT = {"type": "Point", "coordinates": [-2.3, 54.8]}

WRONG: list[tuple[str, str, str, str, Any, int, str, str]] = [
    # name, person, method, path, body, status, code, where
    ("no such path", "ana", "GET", "/v1/nothing", None, 404, "not_found", "path"),
    ("no such path, no token", "", "GET", "/nothing", None, 404, "not_found", "path"),
    ("wrong method", "ana", "DELETE", IN, None, 405, "wrong_method", "method"),
    ("no token", "", "GET", "/v1/me", None, 401, "no_token", "Authorization"),
    ("no kind", "ana", "POST", IN, {}, 422, "invalid", "kind"),
    ("unknown kind", "ana", "POST", IN, {"kind": "flew"}, 422, "invalid", "kind"),
    ("unknown field", "ana", "POST", IN, {"kind": "in", "point": "mill", "colour": 1}, 422, "invalid", "colour"),
    ("no point", "ana", "POST", IN, {"kind": "in"}, 422, "invalid", "point"),
    ("unknown point", "ana", "POST", IN, {"kind": "in", "point": "mil"}, 404, "not_found", "point"),
    ("unknown person", "ana", "POST", IN, {"kind": "awake", "person": "bob"}, 404, "not_found", "person"),
    ("retired, but how", "ana", "POST", IN, {"kind": "retired"}, 422, "invalid", "how"),
    ("retired oddly", "ana", "POST", IN, {"kind": "retired", "how": "abducted"}, 422, "invalid", "how"),
    ("position without one", "ana", "POST", IN, {"kind": "position"}, 422, "invalid", "fix"),
    ("latitude 95", "ana", "POST", IN, {"kind": "position", "fix": {"lat": 95, "lon": 0}}, 422, "invalid", "fix.lat"),
    ("longitude 200", "ana", "POST", IN, {"kind": "position", "fix": {"lat": 0, "lon": 200}}, 422, "invalid", "fix.lon"),
    ("NaN in words", "ana", "POST", IN, {"kind": "position", "fix": {"lat": "NaN", "lon": 0}}, 422, "invalid", "fix.lat"),
    ("time without offset", "ana", "POST", IN, {"kind": "in", "point": "mill", "seen_at": "2027-09-11T08:00:00"}, 422, "invalid", "seen_at"),
    ("no time", "ana", "POST", IN, {"kind": "in", "point": "mill", "seen_at": "soon"}, 422, "invalid", "seen_at"),
    ("key with a space", "ana", "POST", IN, {"kind": "in", "point": "mill", "key": "a b"}, 422, "invalid", "key"),
    ("endless key", "ana", "POST", IN, {"kind": "in", "point": "mill", "key": "k" * 200}, 422, "invalid", "key"),
    ("endless words", "ana", "POST", IN, {"kind": "note", "words": "w" * 3000}, 422, "invalid", "words"),
    ("a kind with its own call", "ana", "POST", IN, {"kind": "taken back"}, 422, "invalid", "kind"),
    ("race-level as a check-in", "ana", "POST", IN, {"kind": "runners held"}, 422, "invalid", "kind"),
    ("how she is, without words", "ana", "POST", IN, {"kind": "how she is"}, 422, "invalid", "words"),
    ("slower, but by what", "ana", "POST", IN, {"kind": "condition"}, 422, "invalid", "factor"),
    ("ten times slower", "ana", "POST", IN, {"kind": "condition", "factor": 10}, 422, "invalid", "factor"),
    ("a list", "ana", "POST", IN, [1, 2], 422, "invalid", ""),
    ("not a race fact", "olga", "POST", f"{EV}/race", {"kind": "in", "point": "mill"}, 422, "invalid", "kind"),
    ("delayed by what", "olga", "POST", f"{EV}/race", {"kind": "start delayed"}, 422, "invalid", "amount_s"),
    ("which cut-off", "olga", "POST", f"{EV}/race", {"kind": "cut-off moved", "point": "brindle", "until": "2027-09-11T22:00:00Z"}, 422, "invalid", "edge"),
    ("no such wave", "olga", "POST", f"{EV}/race", {"kind": "wave moved", "wave": "Z", "amount_s": 60}, 404, "not_found", "wave"),
    ("geojson line", "maren", "POST", f"{RUN}/positions", {"type": "Feature", "geometry": {"type": "LineString", "coordinates": [[0, 0]]}}, 422, "invalid", "geometry.type"),
    ("geojson turned round", "maren", "POST", f"{RUN}/positions", {"type": "Feature", "geometry": {"type": "Point", "coordinates": [54.8, 154.8]}}, 422, "invalid", "geometry.coordinates"),
    ("geojson without time zone", "maren", "POST", f"{RUN}/positions", {"type": "Feature", "geometry": POINT, "properties": {"time": "2027-09-11T08:00:00"}}, 422, "invalid", "properties.time"),
    ("empty collection", "maren", "POST", f"{RUN}/positions", {"type": "FeatureCollection", "features": []}, 422, "invalid", "geometry"),
    ("kit at no point", "ana", "GET", f"{RUN}/kit?point=moon", None, 404, "not_found", "point"),
    ("question with an unknown parameter", "ana", "GET", f"{RUN}/kit?colour=red", None, 422, "invalid", "colour"),
    ("parameter twice", "ana", "GET", f"{RUN}/kit?point=mill&point=pell", None, 422, "invalid", "point"),
    ("for whom", "ana", "GET", f"{RUN}/next?for=everybody", None, 422, "invalid", "for"),
    ("no such runner, but may", "olga", "GET", f"{EV}/runners/nobody/where", None, 404, "not_found", "runner"),
    ("notice of nobody", "ana", "POST", "/v1/notices/999/answer", {"answer": "ok"}, 403, "not_yours", "Authorization"),
    ("notice without number", "ana", "POST", "/v1/notices/x/answer", {"answer": "ok"}, 422, "invalid", "short"),
    ("a person claims deliveries", "ana", "POST", "/v1/outbox/claim", {"channel": "telegram"}, 403, "not_yours", "Authorization"),
    ("wrong code", "", "POST", "/v1/join", {"code": "AAAAAAAAAAAA", "channel": "device"}, 403, "no_such_code", "code"),
    ("join a channel as nobody", "", "POST", "/v1/join", {"code": "AAAAAAAAAAAA", "channel": "telegram", "address": "1"}, 401, "no_token", "Authorization"),
    ("tracker with no key", "", "GET", "/v1/report?lat=1&lon=2", None, 422, "invalid", "key"),
    ("tracker with a wrong key", "", "GET", "/v1/report?key=wrongwrong&lat=1&lon=2", None, 401, "bad_token", "Authorization"),
    ("tracker at no place", "", "GET", "/v1/report?key=wrongwrong&lat=nan&lon=2", None, 422, "invalid", "lat"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("person", "method", "path", "body", "status", "code", "where"),
    [row[1:] for row in WRONG],
    ids=[row[0] for row in WRONG],
)
async def test_each_wrong_call_gets_its_error(
    running: Running, person: str, method: str, path: str, body: Any, status: int, code: str, where: str
) -> None:
    """Status, code and field as listed; what and do are sentences; nothing is kept."""
    running.clock.set(running.start + timedelta(hours=3))
    found, reply = await running.call(person or None, method, path, body)
    assert (found, reply["ok"], set(reply), set(reply["error"])) == (
        status,
        False,
        {"ok", "error"},
        {"code", "what", "where", "do"},
    )
    assert (reply["error"]["code"], reply["error"]["where"]) == (code, where)
    assert reply["error"]["what"]
    assert FAULTS[code].status == status
    assert await running.stored() == []


RAW = [
    ("not JSON", b"{kind: in}", "application/json", 400, "bad_json"),
    ("cut off", b'{"kind": "in"', "application/json", 400, "bad_json"),
    (
        "NaN itself",
        b'{"kind": "position", "fix": {"lat": NaN, "lon": 1}}',
        "application/json",
        400,
        "bad_json",
    ),
    ("nested without end", b"[" * 200_000, "application/json", 400, "bad_json"),
    ("not UTF-8", b'{"kind": "\xff\xfe"}', "application/json", 400, "bad_json"),
    ("a form", b"kind=in", "application/x-www-form-urlencoded", 415, "wrong_media"),
    ("nothing", b"", "application/json", 400, "bad_json"),
    ("two megabytes", b'"' + b"a" * 2_000_000 + b'"', "application/json", 413, "too_long"),
]


@pytest.mark.parametrize(("body", "kind", "status", "code"), [r[1:] for r in RAW], ids=[r[0] for r in RAW])
async def test_each_wrong_body_gets_its_error(
    running: Running, body: bytes, kind: str, status: int, code: str
) -> None:
    """Whatever the body is, the answer has our shape."""
    headers = {"Authorization": f"Bearer {await running.token('ana')}", "Content-Type": kind}
    async with running.client.post(IN, data=body, headers=headers) as reply:
        assert (reply.status, (await reply.json())["error"]["code"]) == (status, code)


async def test_an_unexpected_error_shows_nothing(
    running: Running,
    sqlite_url: str,
    capsys: pytest.CaptureFixture[str],
    caplog: pytest.LogCaptureFixture,
) -> None:
    """A table gone under the server: 500 in our shape, no word of the cause in reply or log, and it lives on."""
    token = await running.token("ana")
    with contextlib.closing(sqlite3.connect(sqlite_url.partition(":///")[2])) as database:
        database.execute("ALTER TABLE token RENAME TO token_gone")
        status, reply = await running.call(
            None, "GET", "/v1/me", headers={"Authorization": f"Bearer {token}"}
        )
        database.execute("ALTER TABLE token_gone RENAME TO token")
    assert (status, reply["error"]["code"]) == (500, "our_fault")
    assert "token" not in str(reply)
    # Where the log goes depends on whether a test before this one has set it up.
    written = "".join((*capsys.readouterr(), caplog.text))
    assert "request failed" in written
    assert token not in written
    assert (await running.get("ana", "/v1/me"))[0] == 200


async def test_too_many_wrong_tokens_must_wait(running: Running) -> None:
    """After ten wrong tokens a further wrong one is told to wait; a right one from the same address never is."""
    right = {"Authorization": f"Bearer {await running.token('ana')}"}
    for number in range(10):
        status, _ = await running.call(
            None, "GET", "/v1/me", headers={"Authorization": f"Bearer wrong{number}"}
        )
        assert status == 401
    wrong = {"Authorization": "Bearer wrong-again"}
    async with running.client.get("/v1/me", headers=wrong) as reply:
        assert (reply.status, (await reply.json())["error"]["code"]) == (429, "too_many")
        assert 0 < int(reply.headers["Retry-After"]) <= 900
    assert (await running.call(None, "GET", "/v1/me", headers=right))[0] == 200
    running.clock.advance(timedelta(minutes=15))
    assert (await running.call(None, "GET", "/v1/me", headers=wrong))[0] == 401


@pytest.mark.parametrize(
    "sent",
    [
        [("X-Forwarded-For", "198.51.100.{n}, 203.0.113.9")],
        [("X-Forwarded-For", "198.51.100.{n}"), ("X-Forwarded-For", "203.0.113.9")],
    ],
    ids=["one line", "a line of its own"],
)
async def test_a_made_up_address_before_the_proxys_is_no_new_guesser(
    running: Running, sent: list[tuple[str, str]]
) -> None:
    """What a caller writes into the header itself counts for nothing, however the proxy adds what it saw."""
    parts = replace(running.parts, settings=running.parts.settings.model_copy(update={"behind_proxy": True}))
    seen = set()
    for number in range(5):
        headers = CIMultiDict([(name, value.format(n=number)) for name, value in sent])
        seen.add(auth.peer(make_mocked_request("GET", "/", headers=headers), parts))
    assert seen == {"203.0.113.9"}


async def test_every_event_call_of_the_demo_exists(running: Running) -> None:
    """The paths of this table are real ones: a right call through each prefix is answered."""
    assert (await running.get("ana", f"/v1/events/{EVENT}/board"))[0] == 200


@pytest.mark.parametrize(
    ("method", "path", "body", "where"),
    [
        ("POST", "runners/maren/checkins", {"kind": "asked for help", "words": "my leg\0"}, "words"),
        ("POST", "runners/maren/checkins", {"kind": "in", "point": "mi\0ll"}, "point"),
        ("POST", "help", {"kind": "asked for help", "words": "\0"}, "words"),
        ("POST", "race", {"kind": "access closed", "point": "\0"}, "point"),
        ("POST", "runners/maren/positions", {"type": "Feature", "a": [{"b": "\0"}]}, "a.0.b"),
        ("POST", "runners/maren/checkins", {"ki\0nd": "in"}, "a name in it"),
        ("GET", "runners/maren/next?point=mi%00ll", None, "query"),
        ("GET", "runners/ma%00ren/next", None, "path"),
        ("POST", "notices/1%00/answer", {"answer": "ok"}, "path"),
    ],
)
async def test_a_sign_that_is_none_is_refused(
    running: Running, method: str, path: str, body: Any, where: str
) -> None:
    """NUL, which PostgreSQL can't keep, in a field, a name, the path or the query: said where, and nothing is kept."""
    url = URL(f"/v1/events/{EVENT}/{path}", encoded=True)
    headers = {"Authorization": f"Bearer {await running.token('olga')}"}
    async with running.client.request(method, url, json=body, headers=headers) as reply:
        error = (await reply.json())["error"]
        assert (reply.status, error["code"], error["where"]) == (422, "invalid", where)
    assert "NUL" in error["what"]
    assert not await running.stored()


async def test_what_only_looks_like_it_is_kept(running: Running) -> None:
    """Backslash, u and four noughts as words are words."""
    assert (await running.report("ana", "how she is", words="\\u0000 she said"))[0] == 200
    assert [e.words for e in await running.stored()] == ["\\u0000 she said"]
