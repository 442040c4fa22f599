"""Reports over HTTP: kept once, doubted where they must be, help never waits."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

import pytest

from server.api import auth
from tests.api.conftest import EVENT, RUNNER, Running


async def test_a_check_in_is_noted_and_moves_the_forecast(running: Running) -> None:
    """'noted' names the entry, the point and the next window, which has moved with the fact."""
    before = (await running.get("ana", running.path("forecast")))[1]["data"]["points"]
    running.clock.set(running.start + timedelta(hours=2))
    status, reply = await running.report("ana", "in", "pell")
    after = (await running.get("ana", running.path("forecast")))[1]["data"]["points"]
    assert (status, reply["data"]["status"], reply["data"]["name"]) == (200, "noted", "Pell Bridge")
    assert reply["data"]["next_name"] == "Skelter Mill"
    mill = {p["point"]: p["window"] for p in before}["mill"], {p["point"]: p["window"] for p in after}["mill"]
    assert mill[1]["likely"] > mill[0]["likely"]


async def test_the_same_key_counts_once(running: Running) -> None:
    """The same report again, later, says 'same again' and adds nothing."""
    running.clock.set(running.start + timedelta(hours=1, minutes=20))
    first = await running.report("ana", "in", "pell", key="k1")
    running.clock.advance(timedelta(minutes=5))
    again = await running.report("ana", "in", "pell", key="k1")
    assert (first[1]["data"]["status"], again[0], again[1]["data"]["status"]) == ("noted", 200, "same again")
    assert again[1]["data"]["entry"] == first[1]["data"]["entry"]
    assert len(await running.stored()) == 1


async def test_the_same_key_with_other_content_is_a_conflict(running: Running) -> None:
    """409, and the first goes on counting."""
    running.clock.set(running.start + timedelta(hours=1, minutes=20))
    await running.report("ana", "in", "pell", key="k1")
    status, reply = await running.report("ana", "out", "pell", key="k1")
    facts = (await running.get("ana", running.path("facts")))[1]["data"]["stops"]
    assert (status, reply["error"]["code"], reply["error"]["where"]) == (409, "conflict", "key")
    assert [s["left"] for s in facts if s["point"] == "pell"] == [None]


async def test_two_people_may_use_the_same_key(running: Running) -> None:
    """Keys are unique per sender, not among all."""
    running.clock.set(running.start + timedelta(hours=1, minutes=20))
    one = await running.report("ana", "in", "pell", key="k1")
    other = await running.report("jonas", "in", "pell", key="k1")
    assert (one[1]["data"]["status"], other[1]["data"]["status"]) == ("noted", "noted")


async def test_a_supporters_report_waits_for_the_crew(running: Running) -> None:
    """Kept as unconfirmed, counted only once somebody of the crew confirms it."""
    running.clock.set(running.start + timedelta(hours=1, minutes=20))
    _, reply = await running.report("sam", "in", "pell")
    assert reply["data"]["unconfirmed"]
    assert (await running.get("ana", running.path("facts")))[1]["data"]["fresh"]["last"] is None
    entry = reply["data"]["entry"]
    status, _ = await running.call("ana", "POST", f"/v1/entries/{entry}/confirm", {})
    last = (await running.get("ana", running.path("facts")))[1]["data"]["fresh"]["last"]
    assert (status, last["point"]) == (200, "pell")


async def test_a_volunteer_elsewhere_is_doubted(running: Running) -> None:
    """A volunteer who stands at the mill reports from there at once, from another point as unconfirmed."""
    running.clock.set(running.start + timedelta(hours=2, minutes=40))
    here = (await running.report("vera", "in", "mill"))[1]["data"]
    elsewhere = (await running.report("vera", "in", "chapel"))[1]["data"]
    assert (here["unconfirmed"], elsewhere["unconfirmed"]) == (False, True)
    assert "other-post" in elsewhere["doubt"]


async def test_what_cannot_be_is_doubted(running: Running) -> None:
    """Ten kilometres in one minute is kept, and asked about."""
    running.clock.set(running.start + timedelta(minutes=1))
    reply = (await running.report("ana", "in", "pell"))[1]["data"]
    assert reply["unconfirmed"]
    assert reply["doubt"]


@pytest.mark.parametrize("person", ["maren", "ana", "tomas", "ines", "olga", "vera", "sam"])
async def test_help_never_waits(running: Running, person: str) -> None:
    """Whoever asks for help, even with a point that is none and marked as a guess, it counts at once."""
    running.clock.set(running.start + timedelta(hours=3))
    status, reply = await running.report(person, "asked for help", "nowhere", unconfirmed=True, words="fell")
    kept = (await running.stored())[-1]
    assert (status, reply["data"]["unconfirmed"]) == (200, False)
    assert (kept.unconfirmed, kept.point, "nowhere" in kept.words) == (False, None, True)
    made = await running.parts.journal.made(EVENT)
    assert "asked for help" in {m.notice.key.kind.value for m in made}


async def test_help_after_her_race_is_closed_is_on_the_board_as_ever(running: Running) -> None:
    """Retired, in hand, race control told; an hour later a device of hers asks for help: those told are named, the alarm
    is open on the board, answered like any, and over when it is taken back."""
    await running.reachable()
    running.clock.set(running.start + timedelta(hours=3))
    await running.report("ana", "retired", "mill", how="own choice")
    await running.report("ana", "in hand")
    await running.report("ines", "race control told")
    board = f"/v1/events/{EVENT}/board"
    running.clock.advance(timedelta(hours=1))
    picture = await running.parts.pictures.take(EVENT, running.clock.now())
    assert picture.state.runner("maren").going.value == "closed"
    status, reply = await running.report("maren", "asked for help", words="in the car park", key="h1")
    assert (status, reply["data"]["unconfirmed"]) == (200, False)
    assert {"Ana", "Ines", "Olga"} <= set(reply["data"]["told"])
    (alarm,) = (await running.get("ines", board))[1]["data"]["runners"][0]["alarms"]
    assert (alarm["kind"], alarm["words"], alarm["holder"]) == ("asked for help", "in the car park", "")
    made = await running.parts.journal.made(EVENT)
    hers = next(
        m.short for m in made if m.notice.key.kind.value == "asked for help" and m.notice.key.person == "ines"
    )
    await running.call("ines", "POST", f"/v1/events/{EVENT}/notices/{hers}/answer", {"answer": "i have it"})
    (alarm,) = (await running.get("ines", board))[1]["data"]["runners"][0]["alarms"]
    assert alarm["holder"] == "Ines"
    status, back = await running.call(
        "maren", "POST", f"/v1/entries/{reply['data']['entry']}/take-back", {"key": "h2"}
    )
    # Pacers waiting and the crew of the other car heard of the alarm without being asked: they hear its end too.
    assert (status, set(back["data"]["told"])) == (200, set(reply["data"]["told"]) | {"Tomas", "Vera"})
    assert (await running.get("ines", board))[1]["data"]["runners"][0]["alarms"] == []


async def test_taking_back_and_taking_that_back(running: Running) -> None:
    """An undone entry no longer counts; undoing the undoing makes it count again."""
    running.clock.set(running.start + timedelta(hours=1, minutes=20))
    entry = (await running.report("ana", "in", "pell"))[1]["data"]["entry"]
    running.clock.advance(timedelta(minutes=1))
    undone = (await running.call("ana", "POST", f"/v1/entries/{entry}/take-back", {}))[1]["data"]["entry"]
    gone = (await running.get("ana", running.path("facts")))[1]["data"]["fresh"]["last"]
    running.clock.advance(timedelta(minutes=1))
    await running.call("ana", "POST", f"/v1/entries/{undone}/take-back", {})
    back = (await running.get("ana", running.path("facts")))[1]["data"]["fresh"]["last"]
    assert gone is None
    assert back["point"] == "pell"


async def test_a_supporter_takes_back_only_their_own(running: Running) -> None:
    """Somebody else's entry is refused in the same words as one that does not exist."""
    running.clock.set(running.start + timedelta(hours=1, minutes=20))
    entry = (await running.report("ana", "in", "pell"))[1]["data"]["entry"]
    theirs = await running.call("sam", "POST", f"/v1/entries/{entry}/take-back", {})
    none = await running.call("sam", "POST", "/v1/entries/e-nothing/take-back", {})
    assert theirs[0] == none[0] == 403
    assert theirs[1] == none[1]


async def test_positions_as_geojson(running: Running) -> None:
    """A collection is kept point by point; sent again, nothing is added."""
    running.clock.set(running.start + timedelta(hours=1))
    at = running.built.courses["main"].at(7.0)
    features = [
        {
            "type": "Feature",
            "geometry": {"type": "Point", "coordinates": [at.lon_deg, at.lat_deg, 300.0]},
            "properties": {"time": (running.start + timedelta(minutes=m)).isoformat(), "accuracy": 8},
        }
        for m in (50, 52, 54)
    ]
    body = {"type": "FeatureCollection", "features": features}
    first = (await running.call("maren", "POST", running.path("positions"), body))[1]["data"]
    again = (await running.call("maren", "POST", running.path("positions"), body))[1]["data"]
    assert (first["noted"], again["noted"], again["same_again"]) == (3, 0, 3)
    where = (await running.get("ana", running.path("where")))[1]["data"]["fresh"]["last"]
    assert where["km"] == pytest.approx(7.0, abs=0.3)


async def test_a_tracker_that_can_only_get(running: Running) -> None:
    """Its key stands in the query, its time is POSIX seconds, and the same place again counts once."""
    running.clock.set(running.start + timedelta(hours=1))
    scope = [f"report:{EVENT}/{RUNNER}"]
    key = await running.parts.journal.issue_token("maren", "tracker", scope, running.clock.now())
    at = running.built.courses["main"].at(7.0)
    query = {
        "key": key,
        "lat": f"{at.lat_deg}",
        "lon": f"{at.lon_deg}",
        "t": f"{(running.start + timedelta(minutes=55)).timestamp():.0f}",
        "acc": "9",
        "batt": "44",
    }
    first = await running.get(None, "/v1/report", **query)
    again = await running.get(None, "/v1/report", **query)
    assert (first[0], first[1]["data"]["noted"], again[1]["data"]["same_again"]) == (200, 1, 1)
    read = await running.client.get(running.path("where"), headers={"Authorization": f"Bearer {key}"})
    assert read.status == 403


async def test_a_race_level_fact_recomputes_everything(running: Running) -> None:
    """A start delayed by an hour moves every window by an hour, give or take what another light does."""
    before = (await running.get("ana", running.path("forecast"), point="mill"))[1]["data"]["points"][0]
    body = {"kind": "start delayed", "amount_s": 3600}
    status, _ = await running.call("olga", "POST", f"/v1/events/{EVENT}/race", body)
    after = (await running.get("ana", running.path("forecast"), point="mill"))[1]["data"]["points"][0]
    moved = _moment(after) - _moment(before)
    assert status == 200
    assert abs(moved - timedelta(hours=1)) <= timedelta(minutes=5)


def _moment(point: dict[str, Any]) -> datetime:
    return datetime.fromisoformat(point["window"]["likely"])


@pytest.mark.parametrize(
    ("first", "by", "then", "allowed"),
    [
        ("asked for help", "maren", "vera", False),
        ("asked for help", "maren", "jonas", False),
        ("asked for help", "maren", "ines", True),
        ("asked for help", "ana", "ana", True),
        ("in", "ana", "vera", False),
        ("in", "ana", "sam", False),
        ("in", "ana", "jonas", True),
        ("in", "vera", "vera", True),
    ],
)
async def test_a_report_in_the_place_of_another_takes_what_taking_it_back_takes(
    running: Running, first: str, by: str, then: str, allowed: bool
) -> None:
    """Else a volunteer's slip, or a tracker's token, could end a call for help."""
    running.clock.advance(timedelta(hours=4))
    _, noted = await running.report(by, first, "mill")
    entry = noted["data"]["entry"]
    status, reply = await running.report(then, "in", "mill", replaces=entry)
    assert status == (200 if allowed else 403), reply
    if not allowed:
        assert reply["error"]["code"] == "not_yours"
    state = (await running.parts.pictures.take(EVENT, running.clock.now())).state.runner("maren")
    if first == "asked for help":
        assert (state.help_open is None) is allowed


async def test_a_trackers_token_replaces_only_its_own(running: Running) -> None:
    """A device that may report her may not end what people said of her; a call for help gets through and ends nothing."""
    running.clock.advance(timedelta(hours=4))
    _, noted = await running.report("maren", "asked for help")
    scope = [auth.report_scope(EVENT, "maren")]
    secret = await running.parts.journal.issue_token(None, "tracker", scope, running.clock.now())
    headers = {"Authorization": f"Bearer {secret}"}
    body = {"kind": "in", "point": "mill", "replaces": noted["data"]["entry"]}
    status, _ = await running.call(None, "POST", running.path("checkins"), body, headers=headers)
    assert status == 403
    body = {"kind": "asked for help", "replaces": noted["data"]["entry"]}
    status, _ = await running.call(None, "POST", running.path("checkins"), body, headers=headers)
    assert status == 200
    state = (await running.parts.pictures.take(EVENT, running.clock.now())).state.runner("maren")
    assert len(state.helps_open) == 2


@pytest.mark.parametrize("field", ["seen_at", "sent_at"])
async def test_help_from_a_clock_that_is_ahead_goes_out_at_once(running: Running, field: str) -> None:
    """By her telephone it is three hours later. It is not kept until then; sent again it is the same call."""
    await running.reachable()
    running.parts.ticker.catching_up = None
    running.parts.pictures.watching_since = running.clock.now()
    running.clock.advance(timedelta(hours=1))
    ahead = {field: (running.clock.now() + timedelta(hours=3)).isoformat(), "key": "h-1"}
    _, noted = await running.report("maren", "asked for help", **ahead)
    assert "Ines" in noted["data"]["told"]
    made = await running.parts.journal.made(EVENT)
    assert "asked for help" in {m.notice.key.kind.value for m in made}
    running.clock.advance(timedelta(minutes=1))
    _, again = await running.report("maren", "asked for help", **ahead)
    assert again["data"]["status"] == "same again"
