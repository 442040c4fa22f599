"""The description that is served: valid OpenAPI 3.1, complete, and true of what is answered."""

from __future__ import annotations

import json
import re
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from openapi_spec_validator import OpenAPIV31SpecValidator
from pydantic import SecretStr

from bot.channels.base import Delivery, Outcome, Sent
from bot.channels.shorttext import BadTextError, ShortText, envelope
from bot.channels.signing import DELIVERY, SIGNATURE, TIMESTAMP, Poster
from bot.channels.webhook import Webhook
from server.api.calls import CALLS
from server.api.openapi import document, models
from server.api.openapi_extra import BESIDES
from server.api.who_may import Call
from server.app import Options, make_app
from server.conversation.telling.message import Button
from server.journal import Journal
from server.settings import Settings
from tests.api.conftest import Running


async def test_the_served_description_is_valid(running: Running) -> None:
    """By the validator of the OpenAPI tooling, and without a token."""
    async with running.client.get("/v1/openapi.json") as reply:
        served = await reply.json()
    assert reply.status == 200
    assert list(OpenAPIV31SpecValidator(served).iter_errors()) == []


def test_every_call_is_described() -> None:
    """Path, method, reply and a sentence for each row of the table; operation ids are unique."""
    described = document()["paths"]
    ids = [op["operationId"] for path in described.values() for op in path.values()]
    assert len(ids) == len(set(ids)) == len(CALLS) + len(BESIDES)
    for route in (*CALLS, *BESIDES):
        operation = described[route.path][route.method.lower()]
        assert operation["summary"]
        assert "200" in operation["responses"]


def test_every_model_refuses_unknown_fields_or_says_why() -> None:
    """Requests forbid what they do not know; GeoJSON and trackers carry more than we read, by their nature."""
    loose = {m.__name__ for m in models() if m.model_config.get("extra") != "forbid"}
    assert loose == {"Positions", "TrackerReport", "TextIn", "UpdateIn"}


PAGES = {"/", "/board/{event}", "/board/{event}/part", "/join", "/leave", "/be/{person}", "/stream",
         "/static/{version}/{name}", "/answer", "/sheet/{event}", "/sheet/{event}/paper.pdf", "/manifest.webmanifest",
         "/worker.js", "/setup", "/setup/open", "/setup/draft", "/setup/draft.zip", "/setup/{step}",
         "/follow", "/followers/{event}", "/change/{event}"}  # fmt: skip
"""What only a browser asks for."""


async def test_every_path_the_server_answers_is_described(sqlite_url: str) -> None:
    """With every door open: what the router knows is in the description, and nothing else is; but for the pages."""
    settings = Settings(telegram_webhook_secret=SecretStr("a-secret-of-ours"), text_gateway=True)
    journal = await Journal.open(sqlite_url)
    try:
        app = make_app(settings, journal, options=Options(live=False))
    finally:
        await journal.close()
    there = {
        (route.method, route.resource.canonical)
        for route in app.router.routes()
        if route.resource is not None and route.method != "HEAD"
    }
    described = {(m.upper(), path) for path, found in document()["paths"].items() for m in found}
    assert {(m, p) for m, p in there if p not in PAGES} == described
    assert {p for _, p in there} >= PAGES


TEXTS: dict[str, tuple[Any, bool]] = {
    "plain": ({"text": "in mill"}, True),
    "whole": ({"text": "in mill", "id": "7", "sent_at": "2027-06-19T02:55:00Z"}, True),
    "numbers": ({"text": 214, "id": 7}, True),
    "more than we read": ({"text": "in mill", "from": "+44", "network": {"x": 1}}, True),
    "no text": ({"id": "7"}, False),
    "text of another kind": ({"text": ["in"]}, False),
    "id of another kind": ({"text": "in", "id": {}}, False),
    "time of another kind": ({"text": "in", "sent_at": 5.5}, False),
}


@pytest.mark.parametrize("case", TEXTS)
def test_the_gateways_door_takes_what_the_description_says(case: str) -> None:
    """The schema and the reader agree."""
    body, right = TEXTS[case]
    described = document()
    schema = described["paths"]["/hooks/text"]["post"]["requestBody"]["content"]["application/json"]["schema"]
    validator = Draft202012Validator({**schema, "components": described["components"]})
    assert validator.is_valid(body) is right
    try:
        envelope("dev-1", json.dumps(body), datetime(2027, 6, 19, tzinfo=UTC))
    except BadTextError:
        assert not right
    else:
        assert right


@pytest.mark.parametrize("name", ["notice", "text"])
async def test_what_is_posted_is_of_the_shape_described(name: str) -> None:
    """Both bodies as the channels really send them."""
    posted: list[bytes] = []

    class Taking(Poster):
        async def post(self, url: str, delivery: str, body: bytes, now: datetime) -> Outcome:
            posted.append(body)
            return Outcome(Sent.ACCEPTED)

    owed = Delivery("d-1", "https://example.org", "Leave now.", ((Button("On our way", "n|7|on"),),), short=7)
    channel = {"notice": Webhook(Taking("x")), "text": ShortText("https://example.org", Taking("x"))}[name]
    await channel.deliver(owed)
    described = document()
    operation = described["webhooks"][name]["post"]
    schema = operation["requestBody"]["content"]["application/json"]["schema"]
    whole = {**schema, "components": described["components"]}
    assert [e.message for e in Draft202012Validator(whole).iter_errors(json.loads(posted[0]))] == []
    definition = (
        described["components"]["schemas"][schema["$ref"].rsplit("/", 1)[-1]] if "$ref" in schema else schema
    )
    assert set(json.loads(posted[0])) == set(definition["properties"])
    assert {p["name"] for p in operation["parameters"]} == {TIMESTAMP, DELIVERY, SIGNATURE}


QUESTIONS = [r for r in CALLS if r.method == "GET" and r.call is not None]


@pytest.mark.parametrize("route", QUESTIONS, ids=[r.path.rsplit("/", 1)[-1] for r in QUESTIONS])
@pytest.mark.parametrize("when", ["before the start", "under way"])
async def test_answers_are_of_the_shape_described(running: Running, route: object, when: str) -> None:
    """Every question's reply validates against the schema that the description gives for it."""
    if when == "under way":
        running.clock.set(running.start + timedelta(hours=1, minutes=20))
        await running.report("ana", "in", "pell")
        running.clock.set(running.start + timedelta(hours=2))
    path = re.sub(r"\{event\}", "harrow-round", route.path).replace("{runner}", "maren")  # type: ignore[attr-defined]
    whose = "olga" if route.call is Call.FIELD else "ana"  # type: ignore[attr-defined]
    status, reply = await running.get(whose, path)
    described = document()
    schema = described["paths"][route.path]["get"]["responses"]["200"]["content"]["application/json"][
        "schema"
    ]  # type: ignore[attr-defined]
    whole = {**schema, "components": described["components"]}
    assert status == 200
    assert [e.message for e in Draft202012Validator(whole).iter_errors(reply)] == []


def test_the_table_of_calls_uses_every_question() -> None:
    """No row of who-may is without a call that uses it, apart from those asked by kind of entry."""
    used = {r.call for r in CALLS if r.call}
    by_kind = {
        Call.PHONES, Call.CHECK_IN, Call.POSITION, Call.CREW_FACT, Call.IN_HAND,
        Call.RACE_CONTROL_TOLD, Call.STAND_DOWN, Call.TAKE_BACK, Call.CONFIRM, Call.PASS_ON, Call.OWN_NEWS,
        Call.LOG, Call.ASK_LOG, Call.PHOTO,
    }  # fmt: skip
    assert set(Call) - used == by_kind
