"""The OpenAPI 3.1 description, made from the table of calls and the models they read and answer."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from importlib.metadata import PackageNotFoundError, version
from typing import Any

from aiohttp import web
from pydantic import BaseModel, TypeAdapter

from server.api.ask import Route, Who
from server.api.auth import COOKIE
from server.api.calls import CALLS
from server.api.envelope import FAULTS
from server.api.openapi_extra import BESIDES, Beside, NoticePost, TextPost, posts
from server.api.who_may import SOME_MEANS, TABLE, May

TELEGRAM_SECRET_HEADER = "X-Telegram-Bot-Api-Secret-Token"  # noqa: S105 - the header's name
_REF = "#/components/schemas/{model}"
_GIVES_400 = ("bad_json", "wrong_media", "too_long", "invalid")


@lru_cache(maxsize=1)
def document() -> dict[str, Any]:
    """The whole description; the same for every server of this version."""
    keyed, definitions = TypeAdapter.json_schemas(
        [(name, mode, adapter) for (name, mode), adapter in _shapes().items()], ref_template=_REF
    )
    schemas = {**definitions.get("$defs", {}), **_envelopes()}
    paths: dict[str, dict[str, Any]] = {}
    for route in CALLS:
        paths.setdefault(route.path, {})[route.method.lower()] = _operation(route, keyed)
    for beside in BESIDES:
        paths.setdefault(beside.path, {})[beside.method.lower()] = _beside(beside, keyed)
    posted = {m.__name__: keyed[m.__name__, "serialization"] for m in (NoticePost, TextPost)}
    return {
        "openapi": "3.1.0",
        "info": {
            "title": "Stilepost",
            "version": _version(),
            "description": "Check-ins in, honest arrival windows out. Times are ISO 8601 with an offset, "
            "distances km along the course, probabilities 0 to 1. An aid to a crew, not a rescue service.",
        },
        "paths": paths,
        "webhooks": posts(posted),
        "components": {"schemas": schemas, "securitySchemes": _schemes()},
    }


def _version() -> str:
    try:
        return version("stilepost")
    except PackageNotFoundError:
        return "0"


def _shapes() -> dict[tuple[str, Any], TypeAdapter[Any]]:
    shapes: dict[tuple[str, Any], TypeAdapter[Any]] = {}
    for route in CALLS:
        for read in (route.body, route.query):
            if read is not None:
                shapes[read.__name__, "validation"] = TypeAdapter(read)
        shapes[route.replies.__name__, "serialization"] = TypeAdapter(route.replies)
    for beside in BESIDES:
        if beside.body is not None:
            shapes[beside.body.__name__, "validation"] = TypeAdapter(beside.body)
        if beside.replies is not None:
            shapes[beside.replies.__name__, "serialization"] = TypeAdapter(beside.replies)
    for posted in (NoticePost, TextPost):
        shapes[posted.__name__, "serialization"] = TypeAdapter(posted)
    return shapes


def _operation(route: Route, keyed: Any) -> dict[str, Any]:
    operation: dict[str, Any] = {
        "summary": route.says.partition(". ")[0].rstrip(".") + ".",
        "description": f"{route.says} Wants {route.who.value}.{_who_may(route)}",
        "operationId": _operation_id(route),
        "parameters": [*_path_parameters(route), *_query_parameters(route), *_headers(route)],
        "responses": _responses(route, keyed[route.replies.__name__, "serialization"]),
        "security": _security(route),
    }
    if route.body is not None:
        schema = keyed[route.body.__name__, "validation"]
        operation["requestBody"] = {"required": True, "content": {"application/json": {"schema": schema}}}
    return operation


def _beside(beside: Beside, keyed: Any) -> dict[str, Any]:
    content: dict[str, Any] = {beside.media: {}}
    if beside.replies is not None:
        content = {beside.media: {"schema": _envelope(keyed[beside.replies.__name__, "serialization"])}}
    responses: dict[str, Any] = {"200": {"description": "Done.", "content": content}}
    responses |= {str(s): {"description": says} for s, says in (beside.statuses or {}).items()}
    operation: dict[str, Any] = {
        "summary": beside.says.partition(". ")[0].rstrip(".") + ".",
        "description": beside.says,
        "operationId": _operation_id(beside),
        "parameters": [*_path_parameters(beside)],
        "responses": responses,
        "security": _BESIDE_SECURITY[beside.security],
    }
    if beside.body is not None:
        schema = keyed[beside.body.__name__, "validation"]
        operation["requestBody"] = {"required": True, "content": {"application/json": {"schema": schema}}}
    return operation


_BESIDE_SECURITY: dict[str, list[dict[str, list[str]]]] = {
    "": [{}],
    "token": [{"token": []}],
    "cookie": [{"cookie": []}, {"token": []}],
    "deviceToken": [{"token": []}, {"trackerKey": []}],
    "telegramSecret": [{"telegramSecret": []}],
}


def _operation_id(route: Route | Beside) -> str:
    path = route.path.removeprefix("/v1")
    return re.sub(r"[^a-z]+", "_", f"{route.method.lower()} {path}").strip("_")


def _who_may(route: Route) -> str:
    if route.call is None:
        return ""
    row = TABLE[route.call]
    whole = ", ".join(p.value for p, m in row.items() if m is May.YES)
    some = ", ".join(p.value for p, m in row.items() if m is May.SOME)
    means = SOME_MEANS.get(route.call, "")
    return f" For: {whole}." + (f" Less ({means}): {some}." if some else "")


def _path_parameters(route: Route | Beside) -> Iterable[dict[str, Any]]:
    for name in re.findall(r"\{(\w+)\}", route.path):
        yield {"name": name, "in": "path", "required": True, "schema": {"type": "string"}}


def _query_parameters(route: Route) -> Iterable[dict[str, Any]]:
    if route.query is None:
        return
    schema = route.query.model_json_schema(ref_template=_REF)
    for name, field in schema.get("properties", {}).items():
        required = name in schema.get("required", ())
        yield {"name": name, "in": "query", "required": required, "schema": field}


def _headers(route: Route) -> Iterable[dict[str, Any]]:
    if route.who in (Who.PERSON, Who.DEVICE):
        yield {
            "name": "Acting-Address",
            "in": "header",
            "required": False,
            "schema": {"type": "string"},
            "description": "With a channel's token: the bound address of the person it acts for.",
        }


def _security(route: Route) -> list[dict[str, list[str]]]:
    if route.who is Who.KEY:
        return [{"trackerKey": []}]
    return [{}] if route.who is Who.ANYBODY else [{"token": []}]


def _envelope(data: Any) -> dict[str, Any]:
    return {
        "type": "object",
        "required": ["ok", "now", "data"],
        "properties": {
            "ok": {"const": True},
            "now": {"type": "string", "format": "date-time"},
            "data": data,
        },
    }


def _responses(route: Route, data: Any) -> dict[str, Any]:
    reply = _envelope(data)
    codes = [*route.errors, "our_fault"]
    codes += _GIVES_400 if route.body else ("invalid",) if route.query else ()
    if route.who is not Who.ANYBODY:
        codes += ["no_token", "bad_token", "too_many", "not_yours"]
    responses: dict[str, Any] = {
        "200": {"description": "Done.", "content": {"application/json": {"schema": reply}}}
    }
    for status in sorted({FAULTS[c].status for c in codes}):
        says = " ".join(
            f"`{c}`: {FAULTS[c].says}" for c in dict.fromkeys(codes) if FAULTS[c].status == status
        )
        responses[str(status)] = {
            "description": says,
            "content": {"application/json": {"schema": {"$ref": _REF.format(model="Error")}}},
        }
    return responses


def _envelopes() -> dict[str, Any]:
    text = {"type": "string"}
    return {
        "Error": {
            "type": "object",
            "required": ["ok", "error"],
            "properties": {
                "ok": {"const": False},
                "error": {
                    "type": "object",
                    "required": ["code", "what", "where", "do"],
                    "properties": {
                        "code": {"type": "string", "enum": sorted(FAULTS)},
                        "what": {**text, "description": "What was wrong."},
                        "where": {**text, "description": "The field or header."},
                        "do": {**text, "description": "What to do next."},
                    },
                },
            },
        }
    }


def _schemes() -> dict[str, Any]:
    return {
        "token": {"type": "http", "scheme": "bearer"},
        "trackerKey": {"type": "apiKey", "in": "query", "name": "key"},
        "cookie": {"type": "apiKey", "in": "cookie", "name": COOKIE},
        "telegramSecret": {"type": "apiKey", "in": "header", "name": TELEGRAM_SECRET_HEADER},
    }


async def serve(_request: web.Request) -> web.Response:
    """GET /v1/openapi.json: this description; no token, as it says nothing of anybody."""
    return web.json_response(document())


def models() -> tuple[type[BaseModel], ...]:
    """Every model a call reads."""
    calls = [m for r in CALLS for m in (r.body, r.query) if m is not None]
    return tuple(dict.fromkeys([*calls, *(b.body for b in BESIDES if b.body is not None)]))
