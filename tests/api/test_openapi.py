"""The description that is served: valid OpenAPI 3.1, complete, and true of what is answered."""

from __future__ import annotations

import re
from datetime import timedelta

import pytest
from jsonschema import Draft202012Validator
from openapi_spec_validator import OpenAPIV31SpecValidator

from server.api.calls import CALLS
from server.api.openapi import document, models
from server.api.who_may import Call
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
    assert len(ids) == len(set(ids)) == len(CALLS)
    for route in CALLS:
        operation = described[route.path][route.method.lower()]
        assert operation["summary"]
        assert "200" in operation["responses"]


def test_every_model_refuses_unknown_fields_or_says_why() -> None:
    """Requests forbid what they do not know; GeoJSON and trackers carry more than we read, by their nature."""
    loose = {m.__name__ for m in models() if m.model_config.get("extra") != "forbid"}
    assert loose == {"Positions", "TrackerReport"}


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
    status, reply = await running.get("ana", path)
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
        Call.PHONES, Call.CHECK_IN, Call.POSITION, Call.HELP, Call.CREW_FACT, Call.IN_HAND,
        Call.RACE_CONTROL_TOLD, Call.STAND_DOWN, Call.TAKE_BACK, Call.CONFIRM,
    }  # fmt: skip
    assert set(Call) - used == by_kind
