"""What deploy/WEBHOOKS.md tells other people's programmers is so: its example, its receiver, its request."""

from __future__ import annotations

import json
import re
import shlex
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from aiohttp import web
from aiohttp.test_utils import TestServer

from bot.channels.base import Delivery, Sent
from bot.channels.shorttext import ShortText, envelope
from bot.channels.signing import DELIVERY, SIGNATURE, TIMESTAMP, TOLERANCE, Poster, sign, verify
from bot.channels.webhook import SECRET_MIN, Webhook
from server.clock import SteppedClock

PAGE = (Path(__file__).parents[2] / "deploy" / "WEBHOOKS.md").read_text(encoding="utf-8")
NOW = datetime.fromtimestamp(1_813_364_400, UTC)


def block(kind: str) -> str:
    """A block of the page."""
    found = re.search(rf"```{kind}\n(.*?)```", PAGE, re.S)
    assert found is not None
    return found[1]


def example() -> dict[str, str]:
    """The worked example."""
    return dict(re.split(r": +", line, maxsplit=1) for line in block("text").strip().splitlines())


def receiver() -> Any:
    """The receiver the page shows."""
    names: dict[str, Any] = {}
    exec(block("python"), names)
    return names["is_ours"]


def test_the_worked_example_is_right() -> None:
    """Our own signature of it, and our own check."""
    given = example()
    body = given["body"].encode()
    assert sign(given["secret"], int(given["timestamp"]), body) == given["signature"]
    assert verify(given["secret"], given["timestamp"], body, given["signature"], NOW)


CASES: dict[str, tuple[dict[str, str], float, bytes, set[str], bool]] = {
    "as it came": ({}, 0, b"", set(), True),
    "five minutes late": ({}, 300, b"", set(), True),
    "played back later": ({}, 301, b"", set(), False),
    "from the future": ({}, -301, b"", set(), False),
    "played back sooner": ({}, 10, b"", {"harrow-round-12"}, False),
    "another body": ({}, 0, b" ", set(), False),
    "another time": ({TIMESTAMP: "1813364401"}, 0, b"", set(), False),
    "no time": ({TIMESTAMP: "soon"}, 0, b"", set(), False),
    "another signature": ({SIGNATURE: "v1=00"}, 0, b"", set(), False),
}


@pytest.mark.parametrize("case", CASES)
def test_the_receiver_shown_takes_what_is_ours_once(case: str) -> None:
    """And nothing else."""
    changed, after_s, more, taken, ours = CASES[case]
    given = example()
    headers = {
        TIMESTAMP: given["timestamp"],
        SIGNATURE: given["signature"],
        DELIVERY: json.loads(given["body"])["delivery"],
        **changed,
    }
    body = given["body"].encode() + more
    assert receiver()(given["secret"], headers, body, NOW.timestamp() + after_s, taken) is ours


async def test_the_receiver_shown_takes_a_real_post_and_its_repeat_once() -> None:
    """Sent by the channel over HTTP, twice, as after a lost answer."""
    taken: set[str] = set()
    found: list[bool] = []

    async def handle(request: web.Request) -> web.Response:
        ours = receiver()(
            "sixteen letters or more", dict(request.headers), await request.read(), NOW.timestamp(), taken
        )
        taken.add(request.headers[DELIVERY])
        found.append(ours)
        return web.Response(status=200)

    app = web.Application()
    app.router.add_post("/in", handle)
    server = TestServer(app)
    await server.start_server()
    channel = Webhook(Poster("sixteen letters or more", 60.0, 60.0), SteppedClock(NOW))
    for _ in range(2):
        owed = Delivery("d-1", str(server.make_url("/in")), "Leave by 02:10.")
        assert (await channel.deliver(owed)).sent is Sent.ACCEPTED
    await server.close()
    assert found == [True, False]


def test_the_request_shown_is_one_we_read() -> None:
    """The words after -d, as a shell reads them."""
    words = shlex.split(block("sh").replace("\\\n", " "))
    body = words[words.index("-d") + 1]
    update = envelope("dev-1", body, NOW)
    (said,) = ShortText("", None).read(update)
    assert (said.text, said.message_key) == ("in mill 0255", "m-17")
    assert said.sent_at == datetime(2027, 6, 19, 1, 55, tzinfo=UTC)
    assert words[-1].endswith("/hooks/text")


def test_the_figures_on_the_page_are_the_codes() -> None:
    """Five minutes, ten seconds, sixteen characters."""
    assert "more than five minutes" in PAGE
    assert TOLERANCE.total_seconds() == 300
    assert "within ten seconds" in PAGE
    assert Poster("x").answer_s == 10.0
    assert f"({SECRET_MIN} characters or more)" in PAGE
