"""The table of who may do what, walked cell by cell over real HTTP."""

from __future__ import annotations

import itertools
from datetime import timedelta
from typing import Any

import pytest

from server.api.ask import Who
from server.api.calls import CALLS
from server.api.who_may import KIND_NEEDS, SOME_MEANS, TABLE, Call, May
from server.event.model import PartKind
from server.facts.entry import Kind
from tests.api.conftest import EVENT, Running

PERSON_OF = {
    PartKind.RUNNER: "maren",
    PartKind.CREW: "ana",
    PartKind.PACER: "tomas",
    PartKind.SAFETY_CONTACT: "ines",
    PartKind.ORGANISER: "olga",
    PartKind.VOLUNTEER: "vera",
    PartKind.SUPPORTER: "sam",
}
FIX = {"lat": 54.8, "lon": -2.3}
RUN, EV = "/v1/events/harrow-round/runners/maren", "/v1/events/harrow-round"
ASKS: dict[Call, tuple[str, str, dict[str, Any] | None]] = {
    Call.FORECAST: ("GET", f"{RUN}/forecast", None),
    Call.NEXT: ("GET", f"{RUN}/next", None),
    Call.MISSED: ("GET", f"{RUN}/missed", None),
    Call.PLAN: ("GET", f"{RUN}/plan", None),
    Call.KIT: ("GET", f"{RUN}/kit", None),
    Call.WHERE: ("GET", f"{RUN}/where", None),
    Call.FACTS: ("GET", f"{RUN}/facts", None),
    Call.CUT_OFFS: ("GET", f"{RUN}/cutoffs", None),
    Call.CARDS: ("GET", f"{RUN}/cards", None),
    Call.ALARM: ("GET", f"{RUN}/alarm", None),
    Call.BOARD: ("GET", f"{EV}/board", None),
    Call.PASS_ON: ("POST", f"{RUN}/checkins", {"kind": "passed on", "to": "*", "words": "bring socks"}),
    Call.OWN_NEWS: (
        "POST",
        f"{RUN}/checkins",
        {"kind": "remind", "until": "2027-06-20T12:00:00Z", "words": "eat"},
    ),
    Call.CHECK_IN: ("POST", f"{RUN}/checkins", {"kind": "in", "point": "mill"}),
    Call.POSITION: ("POST", f"{RUN}/checkins", {"kind": "position", "fix": FIX}),
    Call.HELP: ("POST", f"{RUN}/checkins", {"kind": "asked for help"}),
    Call.CREW_FACT: ("POST", f"{RUN}/checkins", {"kind": "crew there", "point": "mill"}),
    Call.LOG: ("POST", f"{RUN}/checkins", {"kind": "log", "logged": [{"item": "drank", "amount": 500}]}),
    Call.SEE_LOG: ("GET", f"{RUN}/log", None),
    Call.ASK_LOG: ("POST", f"{RUN}/checkins", {"kind": "log shown"}),
    Call.IN_HAND: ("POST", f"{RUN}/checkins", {"kind": "in hand"}),
    Call.RACE_CONTROL_TOLD: ("POST", f"{RUN}/checkins", {"kind": "race control told"}),
    Call.STAND_DOWN: ("POST", f"{RUN}/checkins", {"kind": "stand-down"}),
    Call.RACE: ("POST", f"{EV}/race", {"kind": "runners held"}),
    Call.FOLLOWERS: ("POST", f"{RUN}/followers", {"on": True}),
}
CELLS = [(c, p) for c, p in itertools.product(ASKS, PERSON_OF)]


@pytest.mark.parametrize(("call", "part"), CELLS, ids=[f"{c.value}-{p.value}" for c, p in CELLS])
async def test_every_cell(running: Running, call: Call, part: PartKind) -> None:
    """NO is 403 and keeps nothing; SOME and YES are answered."""
    running.clock.set(running.start + timedelta(hours=2, minutes=45))
    method, path, body = ASKS[call]
    status, reply = await running.call(PERSON_OF[part], method, path, body)
    if TABLE[call][part] is May.NO:
        assert (status, reply["error"]["code"]) == (403, "not_yours")
        assert await running.stored() == []
    else:
        assert status == 200, reply


def test_every_call_of_the_table_is_walked_or_has_its_own_test() -> None:
    """A new row of the table must be walked here, or be one of those tested by name."""
    elsewhere = {
        Call.PHONES,
        Call.TAKE_BACK,
        Call.CONFIRM,
        Call.ANSWER,
        Call.GROUP,
        Call.CHANGE,
        Call.START_LIST,
        Call.PASSAGES,
        Call.FIELD,
        Call.PHOTO,
    }
    assert set(TABLE) == set(ASKS) | elsewhere
    assert all(set(row) == set(PartKind) for row in TABLE.values())


def test_every_smaller_share_is_worded() -> None:
    """Wherever the table says SOME, the words say what that is."""
    assert {c for c, row in TABLE.items() if May.SOME in row.values()} == set(SOME_MEANS)


def test_every_kind_needs_something_or_has_a_call_of_its_own() -> None:
    """No kind of entry can be reported without a row that says who may."""
    assert set(Kind) - set(KIND_NEEDS) == {Kind.TAKEN_BACK, Kind.CONFIRMED, Kind.ANSWERED}


EVENT_CALLS = [r for r in CALLS if r.who in (Who.PERSON, Who.DEVICE) and "{event}" in r.path]


@pytest.mark.parametrize("route", EVENT_CALLS, ids=[f"{r.method} {r.path}" for r in EVENT_CALLS])
async def test_a_stranger_cannot_tell_what_there_is(running: Running, route: Any) -> None:
    """Somebody without a part gets the same refusal for an event that is and one that is not."""
    secret = await running.parts.journal.issue_token("sam", "s", ["person"], running.clock.now())
    headers = {"Authorization": f"Bearer {secret}"}
    replies = []
    for event in ("other-race", "another"):
        path = route.path.format(event=event, runner="maren", short="1")
        replies.append(await running.call(None, route.method, path, {}, headers=headers))
    real = route.path.format(event=EVENT, runner="somebody-else", short="1")
    if "{runner}" in route.path:
        replies.append(await running.call(None, route.method, real, {}, headers=headers))
    assert {status for status, _ in replies} == {403}
    assert len({str(reply) for _, reply in replies}) == 1


async def test_a_volunteer_reads_no_place_of_hers(running: Running) -> None:
    """What a volunteer may read (me, board, numbers) holds nothing of where she is."""
    running.clock.set(running.start + timedelta(hours=1, minutes=20))
    await running.report("ana", "in", "pell")
    me = (await running.get("vera", "/v1/me"))[1]["data"]
    board = (await running.get("vera", f"/v1/events/{EVENT}/board"))[1]["data"]
    here = me["events"][0]["runners"][0]
    assert (here["reached"], here["at"], here["going"]) == (None, None, "moving")
    assert board["runners"][0]["forecast"] is None
    assert board["runners"][0]["meetings"] == []
    people = (await running.get("vera", f"/v1/events/{EVENT}/people"))[1]["data"]
    assert people["people"] == []
    assert people["emergency_number"] == "112"


async def test_a_supporter_sees_little(running: Running) -> None:
    """The last known point and when, the next point and the finish: no coordinates, no estimate, no numbers."""
    running.clock.set(running.start + timedelta(hours=1, minutes=20))
    await running.report("ana", "in", "pell")
    await running.report("ana", "position", fix=FIX)
    running.clock.set(running.start + timedelta(hours=1, minutes=40))
    reply = (await running.get("sam", running.path("forecast")))[1]["data"]
    assert [p["point"] for p in reply["points"]] == ["mill", "finish"]
    assert (reply["where"], reply["where_fix"], reply["where_between"]) == (None, None, None)
    assert reply["fresh"]["last"]["fix"] is None
    board = (await running.get("sam", f"/v1/events/{EVENT}/board"))[1]["data"]
    assert (board["rescue"], board["runners"][0]["alarms"], board["runners"][0]["doubted"]) == (None, [], [])


async def test_a_devices_token_reports_one_runner_and_reads_nothing(running: Running) -> None:
    """Another event or runner is refused, and so is every question."""
    scope = [f"report:{EVENT}/maren"]
    secret = await running.parts.journal.issue_token(None, "watch", scope, running.clock.now())
    headers = {"Authorization": f"Bearer {secret}"}
    running.clock.set(running.start + timedelta(hours=1, minutes=20))
    fine = await running.call(
        None, "POST", f"{RUN}/checkins", {"kind": "in", "point": "pell"}, headers=headers
    )
    other = await running.call(
        None, "POST", f"{EV}/runners/other/checkins", {"kind": "in", "point": "pell"}, headers=headers
    )
    question = await running.call(None, "GET", f"{RUN}/where", headers=headers)
    assert (fine[0], other[0], question[0]) == (200, 403, 403)
