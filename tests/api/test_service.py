"""What channels ask for: updates kept before they are confirmed, deliveries claimed, worded and reported."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from server.api import auth
from server.watch.notice import Notice, NoticeKey, NoticeKind, ReminderValues, Urgency
from tests.api.conftest import EVENT, Running

CHANNEL = "telegram"


@pytest.fixture
async def channel(running: Running) -> dict[str, str]:
    """The channel's token, with Ana bound to address 777."""
    now = running.clock.now()
    code = await running.parts.journal.invite("ana", EVENT, "test", now, timedelta(hours=1))
    await running.parts.journal.redeem(code, CHANNEL, "777", "test", now)
    secret = await running.parts.journal.issue_token(None, CHANNEL, [auth.channel_scope(CHANNEL)], now)
    return {"Authorization": f"Bearer {secret}"}


async def _post(running: Running, headers: dict[str, str], path: str, **body: Any) -> Any:
    status, reply = await running.call(None, "POST", path, body, headers=headers)
    assert status == 200, reply
    return reply["data"]


async def test_updates_are_kept_once_and_worked_off(running: Running, channel: dict[str, str]) -> None:
    """Stored twice they count once; handed out in order; gone when done."""
    updates = [{"id": "12", "body": "b"}, {"id": "11", "body": "a"}]
    first = await _post(running, channel, "/v1/inbox", channel=CHANNEL, updates=updates)
    again = await _post(running, channel, "/v1/inbox", channel=CHANNEL, updates=updates)
    out = await _post(running, channel, "/v1/inbox/next", channel=CHANNEL)
    assert (first["new"], again["new"]) == (2, 0)
    assert [u["body"] for u in out["updates"]] == ["a", "b"]
    for update in out["updates"]:
        await _post(running, channel, f"/v1/inbox/{update['id']}/done", channel=CHANNEL)
    running.clock.advance(timedelta(minutes=5))
    assert (await _post(running, channel, "/v1/inbox/next", channel=CHANNEL))["updates"] == []


async def test_an_alarm_goes_out_worded_and_is_answered(running: Running, channel: dict[str, str]) -> None:
    """Help asked: the crew's delivery is urgent, has buttons, is reported sent, and the answer holds it."""
    running.clock.set(running.start + timedelta(hours=2))
    await running.report("tomas", "asked for help", words="fell")
    claimed = await _post(running, channel, "/v1/outbox/claim", channel=CHANNEL)
    alarm = next(d for d in claimed["deliveries"] if d["urgent"])
    assert alarm["address"] == "777"
    assert "Maren" in alarm["text"]
    assert alarm["buttons"]
    done = await _post(
        running,
        channel,
        f"/v1/outbox/{alarm['id']}/report",
        outcome="accepted",
        tries=alarm["tries"],
        ref="m1",
    )
    assert done["counted"]
    acting = {**channel, "Acting-Address": "777"}
    path = f"/v1/events/{EVENT}/notices/{alarm['short']}/answer"
    answered = await _post(running, acting, path, answer="i have it", key="a1")
    assert (answered["holder"], answered["yours"]) == ("Ana", True)
    board = (await running.get("ines", f"/v1/events/{EVENT}/board"))[1]["data"]
    assert [a["holder"] for a in board["runners"][0]["alarms"]] == ["Ana"]


async def test_only_ones_own_notice_can_be_answered(running: Running, channel: dict[str, str]) -> None:
    """Somebody else's number is refused as if it were none."""
    running.clock.set(running.start + timedelta(hours=2))
    await running.report("tomas", "asked for help")
    made = await running.parts.journal.made(EVENT)
    hers = next(m.short for m in made if m.notice.key.person == "ana")
    theirs = await running.call("vera", "POST", f"/v1/notices/{hers}/answer", {"answer": "ok"})
    none = await running.call("vera", "POST", "/v1/notices/9999/answer", {"answer": "ok"})
    assert theirs == none
    assert theirs[0] == 403


async def test_one_channel_sees_nothing_of_another(running: Running, channel: dict[str, str]) -> None:
    """Its token neither claims nor reads what is another's."""
    for path in ("/v1/outbox/claim", "/v1/inbox/next", "/v1/inbox"):
        status, _ = await running.call(None, "POST", path, {"channel": "email"}, headers=channel)
        assert status == 403


async def test_a_nonsense_outcome_is_refused(running: Running, channel: dict[str, str]) -> None:
    """The words for an outcome are those of the channel table, and the error lists them."""
    status, reply = await running.call(
        None, "POST", "/v1/outbox/d-1/report", {"outcome": "hopefully"}, headers=channel
    )
    assert (status, reply["error"]["where"]) == (422, "outcome")
    assert "accepted" in reply["error"]["do"]


async def test_old_news_comes_in_lines(running: Running, channel: dict[str, str]) -> None:
    """After an outage: twelve notices that waited are one message, of each its first line, kept as sent."""
    now = running.clock.now()
    for n in range(12):
        key = NoticeKey(EVENT, "", "ana", NoticeKind.REMINDER, "", n)
        owed = Notice(key, Urgency.NEWS, now, None, False, ReminderValues("e", "fill the bottles", now))
        await running.parts.journal.add_notices([owed], now)
    running.clock.advance(timedelta(minutes=10))
    claimed = await _post(running, channel, "/v1/outbox/claim", channel=CHANNEL, limit=20)
    texts = [d["text"] for d in claimed["deliveries"]]
    assert len(texts) == 12
    assert all(text and "\n" not in text for text in texts)
    kept = await running.parts.journal.deliveries(EVENT)
    assert sorted(d.text for d in kept) == sorted(texts)


async def test_who_has_blocked_us_is_not_told(running: Running, channel: dict[str, str]) -> None:
    """Whoever calls for help must not count on somebody whose channel is known to be blocked."""
    await running.parts.journal.bind("jonas", CHANNEL, "778", running.clock.now())
    await running.parts.journal.address_gone(CHANNEL, "777", running.clock.now())
    running.clock.set(running.start + timedelta(hours=2))
    _, reply = await running.report("maren", "asked for help", words="fell")
    assert reply["data"]["told"] == ["Jonas"]
