"""Plan, cut-offs, cards and food over HTTP: what the planner knows reaches those who may see it."""

from __future__ import annotations

from datetime import datetime

from server.plan.cards import NEEDED
from tests.api.conftest import EVENT, RUNNER, Running


def at(text: str) -> datetime:
    """An instant as the API writes it."""
    return datetime.fromisoformat(text)


async def plan_of(running: Running, person: str) -> dict:
    """The answer to GET …/plan."""
    status, reply = await running.get(person, running.path("plan"))
    assert status == 200, reply
    return reply["data"]


async def test_the_plan_says_what_it_rests_on_and_where_walking_costs_nothing(running: Running) -> None:
    """Source, spread, notes as values, minutes by cause."""
    data = await plan_of(running, "ana")
    assert [s["kind"] for s in data["source"]] == ["source-finish", "source-costs"]
    assert 0.05 < data["odds_spread"] < 0.3
    assert "walking" in {n["kind"] for n in data["notes"]}
    assert "hills" in {f["name"] for f in data["rows"][3]["factors"]}


async def test_the_plan_says_light_and_torch(running: Running) -> None:
    """Sunset and sunrise where she is then, and the part for which she needs a torch, in order."""
    data = await plan_of(running, "ana")
    moments = [m["event"] for m in data["light"]]
    assert moments.index("sunset") < moments.index("civil dusk")
    sunset = next(m for m in data["light"] if m["event"] == "sunset")
    night = data["torch"][-1]
    assert abs((at(night["from_at"]) - at(sunset["at"])).total_seconds()) < 120
    assert night["from_km"] < night["to_km"]


async def test_a_start_put_off_moves_her_into_another_light(running: Running) -> None:
    """Two hours late she needs her torch from an earlier km, at the same hour of the day."""
    was = (await plan_of(running, "ana"))["torch"][-1]
    body = {"kind": "start delayed", "amount_s": 7200}
    status, reply = await running.call("olga", "POST", f"/v1/events/{EVENT}/race", body)
    assert status == 200, reply
    now = (await plan_of(running, "ana"))["torch"][-1]
    assert now["from_km"] < was["from_km"] - 3
    assert abs((at(now["from_at"]) - at(was["from_at"])).total_seconds()) < 600


async def test_goals_change_over_in_order_and_move_with_what_is_known(running: Running) -> None:
    """Out of each point A holds no longer than B, B no longer than C; behind her nothing is left to change."""
    rows = {r["point"]: r for r in (await plan_of(running, "ana"))["rows"]}
    changes = {c["goal"]: at(c["at"]) for c in rows["mill"]["changes"]}
    assert changes["A"] < changes["B"] < changes["C"]
    planned = at(rows["mill"]["b_out"])
    assert abs((changes["B"] - planned).total_seconds()) < 3600
    running.clock.set(running.start.replace() + (planned - running.start))
    await running.report("ana", "out", "mill", seen_at=planned.isoformat(), key="k1")
    later = {r["point"]: r for r in (await plan_of(running, "ana"))["rows"]}
    assert later["mill"]["changes"] == []
    assert later["brindle"]["changes"]


async def test_cut_offs_say_the_latest_time_out_of_each_point_before(running: Running) -> None:
    """Every cut-off has odds and, in running order, times out of the points before it that grow later."""
    _, reply = await running.get("ana", running.path("cutoffs"))
    found = reply["data"]["cut_offs"]
    assert found
    for cut_off in found:
        assert 0.0 <= cut_off["odds"] <= 1.0
        times = [at(e["at"]) for e in cut_off["earlier"] if e["at"]]
        assert times == sorted(times)
        assert all(t < at(cut_off["at"]) for t in times)
    assert [e["point"] for e in found[0]["earlier"]][:2] == ["pell", "mill"]


async def test_cards_are_there_without_any_in_the_file(running: Running) -> None:
    """The built-in cards, with race control's number and the sentence over the red flags."""
    _, reply = await running.get("ana", running.path("cards"))
    ids = {c["id"] for c in reply["data"]["cards"]}
    assert set(NEEDED) <= ids
    assert "she does not leave" in reply["data"]["red_line"]
    cards = {c["id"]: c for c in reply["data"]["cards"]}
    assert running.built.event.race_control.phone in cards["fall"]["call"]
    assert cards["stomach"]["call"] == "race medic if nothing stays down for two hours", (
        "the file's own goes first"
    )
    assert any("confused" in f for f in cards["stomach"]["red_flags"]), "no red flag is lost by an own card"


async def test_a_supporter_sees_neither_cards_nor_what_the_planner_says(running: Running) -> None:
    """The smaller share: times only."""
    data = await plan_of(running, "sam")
    assert (data["notes"], data["source"], data["odds_spread"]) == ([], [], None)
    assert all(r["changes"] == [] and r["factors"] == [] for r in data["rows"])
    _, reply = await running.get("sam", running.path("cards"))
    assert reply["data"]["cards"] == []


async def test_food_says_what_to_carry_to_the_next_refill(running: Running) -> None:
    """Amounts and bottles from the point to the next where she can refill."""
    _, reply = await running.get("ana", running.path("kit"), point="brindle")
    carry = reply["data"]["carry"]
    assert carry["name"] == "Kettle Howe"
    assert carry["kcal"] > 300
    assert carry["bottles"] >= 2
    assert reply["data"]["runner"] == RUNNER
