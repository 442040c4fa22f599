"""Wrong input as people meet it: an event file or a route through `stilepost check`, a check-in or a call over HTTP.

One table for each door. Every row holds what is said: what is wrong, where (file, line and field, or the field of
the request), and what to do about it. The rooms' own tests have many more cases; these hold that the doors say it.
"""

from __future__ import annotations

import asyncio
import json
import threading
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from server.api import auth
from server.api.building import build
from server.app import Options, make_app
from server.cli.main import stilepost
from server.clock import SteppedClock
from server.journal import Journal
from server.settings import Settings
from tests.whole import hill
from tests.whole.hill import EVENT
from tests.whole.night import serving

STARTS = datetime(2027, 6, 19, 20, 0, tzinfo=hill.ZONE)
TEXT = hill.event_text(STARTS)

EVENT_FILES: list[tuple[str, str, str, str]] = [
    # what is replaced, by what, text of the line that is named ('' = none), what is said
    ('name = "Thorn Edge Night"', "name = Thorn Edge Night", "name =", "Put words in quotes"),
    ('name = "Thorn Edge Night"\n', "", "[event]", "event.name: 'name' is missing. Give the race a name"),
    ('time_zone = "Europe/London"', 'time_zone = "Europe/Londn"', "Londn", "Did you mean 'Europe/London'?"),
    ('limit = "14:00"', "limit = 14", "limit", "event.limit: 14 is no text. Put it in quotes"),
    ('route = "edge.gpx"', 'route = "egde.gpx"', "", "route: there is no file egde.gpx. Correct its name."),
    ("[race_control]", "[race_controll]", "controll", "is not known. Did you mean 'race_control'?"),
    (
        "vehicles_max = 2",
        'vehicles_max = "two"',
        "vehicles_max",
        "is no number. Write a number without quotes.",
    ),
    ("line = 0.005", "line = 0.9", "line = 0.9", "alarm.line: 0.9 is outside 1e-06 to 0.2"),
    (
        "km = 18.5",
        "km = 180.5",
        "km = 29.5",
        "stands after 'Hollin Mill' at km 180.5. List the points in running order",
    ),
    ("km = 48", "km = 58", "km = 58", "the finish is given as km 58, but the course has it at km 48"),
    ('id = "larch"', 'id = "hollin"', 'name = "Hollin Mill"', "also a name of 'Larch Gate'"),
    ('kinds = ["aid station"]', 'kinds = ["aid sttion"]', "sttion", "Did you mean 'aid station'?"),
    (
        "walk_in_minutes = 5",
        "walk_minutes = 5",
        "walk_minutes",
        "is not known. Did you mean 'walk_in_minutes'?",
    ),
    ("from_km = 31", "from_km = 61", "to_km = 38", "the stretch ends at km 38, before it begins"),
    (
        'target = { finish = "8:20" }',
        'target = { finish = "3:00" }',
        "target",
        "at the best power anybody has held so long",
    ),
    (
        'target = { finish = "8:20" }',
        'target = { finish = "15:00" }',
        "target",
        "past the race's time limit. Aim for a finish in",
    ),
    (
        'target = { finish = "8:20" }\n',
        "",
        "[[runners]]",
        "'target' is missing. Give one: target = { finish =",
    ),
    (
        'phone = "+44 7700 900302"',
        'phone = "ask her"',
        "ask her",
        "is no telephone number. Write it with country code",
    ),
    ('kind = "supporter"', 'kind = "suporter"', "suporter", "Did you mean 'supporter'?"),
    ("calls_race_control = true, ", "", "[[people]]", "nobody is to call race control"),
    ('car = "estate"', 'car = "estat"', 'estat"', "there is no car 'estat'. Did you mean 'estate'?"),
    ('confirmed_by = "ana"', 'confirmed_by = "bob"', "bob", "there is no person 'bob'. Known: maren, ana"),
    ("minutes = 30\n", "minutes = -30\n", "minutes = -30", "outside 0.5 to 1440"),
    ('crew = ["ana"]', 'crew = ["anna"]', "anna", "there is no person 'anna'. Did you mean 'ana'?"),
]

_HEAD = b'<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>'
_TAIL = b"</trkseg></trk></gpx>"
_TWO = b'<trkpt lat="54.6" lon="-2.7"><ele>10</ele></trkpt><trkpt lat="54.7" lon="-2.7"><ele>20</ele></trkpt>'
_BOMB = b'<!DOCTYPE g [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;&a;">]>'
_ROUTE = hill.route()

ROUTES: list[tuple[str, bytes, str]] = [
    # what it is, the route file, what is said
    ("empty", b"", "edge.gpx: error: route: the file is empty. Export the route again"),
    ("cut short", _ROUTE[: len(_ROUTE) // 2], "the file ends in the middle, as after a broken download"),
    ("a web page", b"<html><body>log in first</body></html>", "this is a web page, not a route"),
    ("an archive", b"PK\x03\x04" + bytes(100), "this is a zip or KMZ archive, not GPX"),
    (
        "another form",
        b'<kml xmlns="http://www.opengis.net/kml/2.2"><Document/></kml>',
        "this is a KML file, not GPX",
    ),
    ("an entity bomb", _BOMB + _HEAD + _TWO + _TAIL, "edge.gpx:1: error: route: the file declares a DOCTYPE"),
    ("150,000 nested tags", _HEAD + b"<x>" * 150_000, "elements are nested deeper than 32"),
    ("no text", _ROUTE.replace(b"<trk>", b"<trk><name>\xff\xfe</name>"), "the text is not UTF-8"),
    ("latitude nan", _HEAD + _TWO.replace(b"54.7", b"nan") + _TAIL, "lat 'nan' is not a number"),
    (
        "latitude 95",
        _HEAD + _TWO.replace(b"54.7", b"95") + _TAIL,
        "perhaps latitude and longitude are exchanged",
    ),
    ("longitude 200", _HEAD + _TWO.replace(b"-2.7", b"200") + _TAIL, "lon '200' is outside -180 to 180"),
    ("no latitude", _HEAD + b'<trkpt lon="1"/>' + _TWO + _TAIL, "a point has no lat="),
    (
        "a height in words",
        _HEAD + _TWO.replace(b"<ele>10", b"<ele>high") + _TAIL,
        "ele 'high' is not a number",
    ),
    ("no points", _HEAD + _TAIL, "the file has no track and no route with two points or more"),
    ("another race's", _HEAD + _TWO + _TAIL, "km 18.5 is not on the course, which is 11.1 km long"),
]

_RUN, _EV = f"/v1/events/{EVENT}/runners/maren", f"/v1/events/{EVENT}"
_IN = f"{_RUN}/checkins"
_NOW = STARTS.astimezone(UTC) + timedelta(hours=1)
_DOWN = {"kind": "position", "fix": {"lat": 95, "lon": 0}}
_PLACE = {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-2.7, 54.6]}}
_LINE = {"type": "Feature", "geometry": {"type": "LineString", "coordinates": [[0, 0]]}}

CHECK_INS: list[tuple[str, str, str, Any, int, str, str, str]] = [
    # what it is, who, path, body, status, code, where, what to do
    ("nothing in it", "ana", _IN, {}, 422, "invalid", "kind", "GET /v1/openapi.json"),
    ("no such kind", "ana", _IN, {"kind": "flew"}, 422, "invalid", "kind", "Correct the field"),
    ("in, but where", "ana", _IN, {"kind": "in"}, 422, "invalid", "point", ""),
    ("in nowhere", "ana", _IN, {"kind": "in", "point": "moon"}, 404, "not_found", "point", "larch"),
    (
        "no offset",
        "ana",
        _IN,
        {"kind": "in", "point": "larch", "seen_at": "2027-06-19T21:00"},
        422,
        "invalid",
        "seen_at",
        "Correct",
    ),
    ("at the pole and beyond", "ana", _IN, _DOWN, 422, "invalid", "fix.lat", "Correct"),
    ("retired, but how", "ana", _IN, {"kind": "retired"}, 422, "invalid", "how", ""),
    (
        "an unknown field",
        "ana",
        _IN,
        {"kind": "note", "words": "x", "mood": 1},
        422,
        "invalid",
        "mood",
        "Correct",
    ),
    (
        "a key with a space",
        "ana",
        _IN,
        {"kind": "in", "point": "larch", "key": "a b"},
        422,
        "invalid",
        "key",
        "Correct",
    ),
    (
        "a race-level fact",
        "ana",
        _IN,
        {"kind": "runners held"},
        422,
        "invalid",
        "kind",
        "Use POST /v1/events/{event}/race.",
    ),
    ("a line for a point", "ana", f"{_RUN}/positions", _LINE, 422, "invalid", "geometry.type", "Correct"),
    (
        "a position by a supporter",
        "sam",
        f"{_RUN}/positions",
        _LINE,
        422,
        "invalid",
        "geometry.type",
        "Correct",
    ),
    (
        "a hold by the crew",
        "ana",
        f"{_EV}/race",
        {"kind": "runners held"},
        403,
        "not_yours",
        "Authorization",
        "Ask whoever invited you",
    ),
    ("delayed by what", "office", f"{_EV}/race", {"kind": "start delayed"}, 422, "invalid", "amount_s", ""),
    (
        "a stand-down by the crew",
        "ana",
        _IN,
        {"kind": "stand-down"},
        403,
        "not_yours",
        "Authorization",
        "Ask whoever invited you",
    ),
]

CALLS: list[tuple[str, str, str, str, int, str, str, str]] = [
    # what it is, who, method, path, status, code, where, what to do
    ("nowhere", "ana", "GET", "/v1/nowhere", 404, "not_found", "path", "Look at GET /v1/openapi.json."),
    ("the wrong way round", "ana", "DELETE", _IN, 405, "wrong_method", "method", "Use POST."),
    ("no token", "", "GET", "/v1/me", 401, "no_token", "Authorization", "Send 'Authorization: Bearer"),
    (
        "a made-up token",
        "?",
        "GET",
        "/v1/me",
        401,
        "bad_token",
        "Authorization",
        "Send 'Authorization: Bearer",
    ),
    (
        "another event",
        "ana",
        "GET",
        "/v1/events/other/runners/maren/where",
        403,
        "not_yours",
        "Authorization",
        "Ask whoever invited you",
    ),
    (
        "facts for a supporter",
        "sam",
        "GET",
        f"{_RUN}/facts",
        403,
        "not_yours",
        "Authorization",
        "Ask whoever invited you",
    ),
    (
        "a question by a volunteer",
        "vera",
        "GET",
        f"{_RUN}/forecast",
        403,
        "not_yours",
        "Authorization",
        "Ask whoever invited you",
    ),
    ("kit for no point", "ana", "GET", f"{_RUN}/kit?point=moon", 404, "not_found", "point", "larch"),
    ("an unknown parameter", "ana", "GET", f"{_RUN}/kit?colour=red", 422, "invalid", "colour", "Correct"),
    ("ten times slower", "ana", "GET", f"{_RUN}/forecast?factor=10", 422, "invalid", "factor", "Correct"),
    (
        "an answer to nobody",
        "ana",
        "POST",
        f"{_EV}/notices/999/answer",
        400,
        "bad_json",
        "body",
        "Send one JSON object.",
    ),
    (
        "a channel's call",
        "ana",
        "POST",
        "/v1/outbox/claim",
        403,
        "not_yours",
        "Authorization",
        "Use a channel's token.",
    ),
    ("a tracker without a key", "", "GET", "/v1/report?lat=1&lon=1", 422, "invalid", "key", "Correct"),
]


def line_of(text: str, part: str) -> int:
    """The number of the first line that holds that."""
    return next(i for i, line in enumerate(text.splitlines(), 1) if part in line)


def check(folder: Path, text: str, route: bytes) -> tuple[int, str]:
    """What `stilepost check` says of an event file beside its route: exit code and text."""
    (folder / "event.toml").write_text(text, encoding="utf-8")
    (folder / hill.ROUTE).write_bytes(route)
    result = CliRunner().invoke(stilepost, ["check", str(folder / "event.toml")])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.output


def test_the_tables_are_long_enough() -> None:
    """At least forty wrong inputs, each kind among them."""
    assert len(EVENT_FILES) + len(ROUTES) + len(CHECK_INS) + len(CALLS) >= 40
    assert min(len(EVENT_FILES), len(ROUTES), len(CHECK_INS), len(CALLS)) >= 12


def test_the_right_ones_are_right(tmp_path: Path) -> None:
    """What the rows are made wrong from is taken."""
    code, said = check(tmp_path, TEXT, _ROUTE)
    assert code == 0, said
    assert "right." in said
    assert "finish in 8:20" in said


@pytest.mark.parametrize(
    ("old", "new", "line", "says"), EVENT_FILES, ids=[row[3][:40] for row in EVENT_FILES]
)
def test_a_wrong_event_file(tmp_path: Path, old: str, new: str, line: str, says: str) -> None:
    """`stilepost check` names file, line and field, says what is wrong and what to write, and ends with 1."""
    assert old in TEXT
    text = TEXT.replace(old, new, 1)
    code, said = check(tmp_path, text, _ROUTE)
    assert code == 1
    told = [row for row in said.splitlines() if says in row]
    assert told, said
    assert "to correct." in said
    if line:
        assert f"event.toml:{line_of(text, line)}: error:" in told[0], said


@pytest.mark.parametrize(("name", "route", "says"), ROUTES, ids=[row[0] for row in ROUTES])
def test_a_wrong_route(tmp_path: Path, name: str, route: bytes, says: str) -> None:
    """`stilepost check` says of a route that can't be used what it is and how to get a right one."""
    code, said = check(tmp_path, TEXT, route)
    assert code == 1
    assert says in said, said
    assert "to correct." in said


Ask = Callable[[str, str, str, Any], tuple[int, dict[str, Any]]]


@pytest.fixture(scope="module")
def ask(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Ask]:
    """A server on a thread of its own, an hour into the race; asks it as a person and gives status and JSON."""
    ready, over = threading.Event(), asyncio.Event()
    found: dict[str, str] = {"?": "no-such-token-as-this"}
    folder = tmp_path_factory.mktemp("door")
    loop = asyncio.new_event_loop()

    async def serve() -> None:
        journal = await Journal.open(f"sqlite+aiosqlite:///{folder / 'door.db'}")
        files = hill.files()
        event = build(TEXT, files).event
        await journal.store_event(TEXT, files, event, "test", _NOW)
        for person in event.people:
            found[person.id] = await journal.issue_token(person.id, "test", [auth.PERSON], _NOW)
        app = make_app(Settings(), journal, SteppedClock(_NOW), options=Options(live=False))
        async with serving(app) as url:
            found["url"] = url
            ready.set()
            await over.wait()
        await journal.close()

    thread = threading.Thread(target=loop.run_until_complete, args=(serve(),))
    thread.start()
    assert ready.wait(30)

    def call(who: str, method: str, path: str, body: Any) -> tuple[int, dict[str, Any]]:
        headers = {"Authorization": f"Bearer {found[who]}"} if who else {}
        data = (
            None if body is None and method == "GET" else b"" if body is None else json.dumps(body).encode()
        )
        headers["Content-Type"] = "application/json"
        request = urllib.request.Request(found["url"] + path, data, headers, method=method)
        try:
            with urllib.request.urlopen(request, timeout=10) as reply:
                return reply.status, json.load(reply)
        except urllib.error.HTTPError as error:
            return error.code, json.load(error)

    yield call
    loop.call_soon_threadsafe(over.set)
    thread.join(30)
    loop.close()


def refused(status: int, found: dict[str, Any], wanted: int, code: str, where: str, do: str) -> None:
    """The one shape of errors, with what, where and what to do; nothing else."""
    assert set(found) == {"ok", "error"}, found
    error = found["error"]
    assert (status, found["ok"], error["code"], error["where"]) == (wanted, False, code, where), found
    assert error["what"]
    assert error["do"]
    assert do in error["do"], found


@pytest.mark.parametrize(
    ("name", "who", "path", "body", "status", "code", "where", "do"),
    CHECK_INS,
    ids=[row[0] for row in CHECK_INS],
)
def test_a_wrong_check_in(
    ask: Ask, name: str, who: str, path: str, body: Any, status: int, code: str, where: str, do: str
) -> None:
    """A report that can't be kept is refused with its field and what to send instead."""
    got, found = ask(who, "POST", path, body)
    refused(got, found, status, code, where, do)


@pytest.mark.parametrize(
    ("name", "who", "method", "path", "status", "code", "where", "do"), CALLS, ids=[row[0] for row in CALLS]
)
def test_a_wrong_call(
    ask: Ask, name: str, who: str, method: str, path: str, status: int, code: str, where: str, do: str
) -> None:
    """A call that can't be answered says why, where and what to do, and nothing of what there is."""
    got, found = ask(who, method, path, None)
    refused(got, found, status, code, where, do)
