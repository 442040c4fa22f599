"""Logs: named events with fields; no place, no token, no words, no address of a request."""

from __future__ import annotations

import io
import json
import logging
from collections.abc import Iterator

import aiohttp
import pytest
import structlog
from aiohttp import web

from server import log


@pytest.fixture
def written() -> Iterator[io.StringIO]:
    root = logging.getLogger()
    before, level = root.handlers[:], root.level
    out = io.StringIO()
    log.set_up("info", as_json=True, to=out)
    yield out
    root.handlers[:] = before
    root.setLevel(level)
    structlog.reset_defaults()


def _lines(out: io.StringIO) -> list[dict[str, object]]:
    return [json.loads(line) for line in out.getvalue().splitlines()]


def test_an_event_has_its_name_time_and_fields(written: io.StringIO) -> None:
    """One JSON object a line."""
    structlog.get_logger().info("entry handed in", kind="in", point="mill")
    (line,) = _lines(written)
    assert (line["event"], line["kind"], line["level"]) == ("entry handed in", "in", "info")
    assert str(line["timestamp"]).endswith("Z")


def test_private_fields_never_show(written: io.StringIO) -> None:
    """A careless field with a place or a token is blanked."""
    structlog.get_logger().info("careless", lat=154.80, token="abc123", words="she fell", fix=(1, 2))
    text = written.getvalue()
    assert not any(secret in text for secret in ("154.8", "abc123", "fell"))


def test_an_exception_is_logged_without_its_words_or_values(written: io.StringIO) -> None:
    """Its kind and where it arose; its text may quote a position."""

    def trouble(place: str) -> None:
        raise ValueError(f"bad place {place}")

    try:
        trouble("54.81234")
    except ValueError as error:
        structlog.get_logger().exception("request failed")
        log.broke(structlog.get_logger(), "tick failed", error)
    assert "54.81234" not in written.getvalue()
    assert [line["error"] for line in _lines(written)] == ["ValueError", "ValueError"]
    assert all("trouble" in str(line["at"]) for line in _lines(written))


def test_libraries_that_log_secrets_are_quiet(written: io.StringIO) -> None:
    """httpx writes whole addresses, tokens included, at INFO."""
    logging.getLogger("httpx").info("POST https://example.org/bot123:abc/getMe")
    logging.getLogger("httpx").warning("slow")
    assert [line["event"] for line in _lines(written)] == ["slow"]


async def test_the_access_log_shows_the_pattern_only(written: io.StringIO) -> None:
    """Method, route, status; no query, no id."""

    async def answer(_request: web.Request) -> web.Response:
        return web.Response()

    app = web.Application()
    app.router.add_get("/v1/report/{runner}", answer)
    runner = web.AppRunner(app, access_log_class=log.AccessLog)
    await runner.setup()
    await web.TCPSite(runner, "127.0.0.1", 0).start()
    async with aiohttp.ClientSession() as client:
        await client.get(f"http://127.0.0.1:{runner.addresses[0][1]}/v1/report/maren?key=sekret&lat=154.80")
    await runner.cleanup()
    (line,) = [x for x in _lines(written) if x["event"] == "request"]
    assert (line["route"], line["status"], line["method"]) == ("/v1/report/{runner}", 200, "GET")
    assert not any(word in written.getvalue() for word in ("sekret", "154.8", "maren"))
