"""One shape for replies and one for errors, and the middleware that maps everything to them."""

from __future__ import annotations

import asyncio
import json
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache
from typing import Any, TypeVar

import structlog
from aiohttp import web
from pydantic import BaseModel, TypeAdapter, ValidationError

from server.conversation.view import Refused
from server.journal import (
    AwayError,
    ClashError,
    InvitationError,
    JournalError,
    RefusedError,
    TooManyGuessesError,
    UnknownError,
)
from server.log import broke

log = structlog.get_logger("api")
BODY_S = web.AppKey("BODY_S", float)
"""How long a body may take to come in."""
Model = TypeVar("Model", bound=BaseModel)
Handler = Callable[[web.Request], Awaitable[web.StreamResponse]]


@dataclass(frozen=True, slots=True)
class Fault:
    """A kind of error: its HTTP status and when it comes. `FAULTS` lists them all for the documentation."""

    status: int
    says: str


FAULTS: Mapping[str, Fault] = {
    "bad_json": Fault(400, "The body is not JSON."),
    "bad_request": Fault(400, "The request can't be understood by the server."),
    "no_token": Fault(401, "No token was sent."),
    "bad_token": Fault(401, "The token is unknown, withdrawn or used up."),
    "no_address": Fault(401, "A channel's token came without a bound Acting-Address."),
    "not_yours": Fault(403, "Your part does not allow this, or you have no part there."),
    "no_such_code": Fault(403, "The invitation code is unknown, used, or over."),
    "not_from_here": Fault(403, "The page's form came from somewhere else."),
    "not_found": Fault(404, "There is no such thing."),
    "wrong_method": Fault(405, "That path is asked in another way."),
    "conflict": Fault(409, "The same key came before with other content."),
    "too_late": Fault(409, "That is too long ago to be undone."),
    "not_now": Fault(409, "That does not fit what has been reported."),
    "too_slow": Fault(408, "The request's body took too long to come in."),
    "too_long": Fault(413, "The request is longer than the server reads."),
    "wrong_media": Fault(415, "The body is not of the kind the call reads."),
    "invalid": Fault(422, "A field is missing or wrong."),
    "too_many": Fault(429, "Too many wrong guesses from one address."),
    "our_fault": Fault(500, "Something went wrong in the server."),
    "not_ready": Fault(503, "The server can't answer this yet."),
    "unavailable": Fault(
        503, "The database is locked, full, read-only or away: nothing was kept. Retry-After says when."
    ),
}


class ApiError(Refused):
    """An error with its code (a key of FAULTS), what was wrong, where, and what to do next."""

    def __init__(self, code: str, what: str, where: str = "", do: str = "") -> None:
        super().__init__(code, what)
        self.where = where
        self.do = do
        self.headers: dict[str, str] = {}

    @property
    def status(self) -> int:
        """The HTTP status."""
        return FAULTS[self.code].status


@lru_cache(maxsize=256)
def adapter(shape: type) -> TypeAdapter[Any]:
    """What turns values of that class into JSON and describes them."""
    return TypeAdapter(shape)


def reply(data: object, now: datetime, status: int = 200) -> web.Response:
    """The one reply envelope round any value the documentation describes."""
    shape: Any = type(data)
    shown = adapter(shape).dump_python(data, mode="json")
    body = {"ok": True, "now": now.isoformat(), "data": shown}
    return web.json_response(body, status=status, headers={"Cache-Control": "no-store"})


def error_reply(error: ApiError) -> web.Response:
    """The one error envelope."""
    body = {
        "ok": False,
        "error": {"code": error.code, "what": error.what, "where": error.where, "do": error.do},
    }
    headers = {"Cache-Control": "no-store", **error.headers}
    return web.json_response(body, status=error.status, headers=headers)


@web.middleware
async def errors_to_envelope(request: web.Request, handler: Handler) -> web.StreamResponse:
    """Map whatever a handler raises to the error envelope; an unexpected error shows nothing of itself."""
    try:
        if "%00" in request.raw_path:
            raise _no_sign("path" if "%00" in request.rel_url.raw_path else "query")
        return await handler(request)
    except ApiError as error:
        return error_reply(error)
    except ValidationError as error:
        return error_reply(from_validation(error))
    except JournalError as error:
        return error_reply(from_journal(error))
    except AwayError as error:
        log.error("DATABASE CAN'T BE USED", why=error.why, method=request.method)
        return error_reply(from_away(error))
    except web.HTTPRedirection:
        raise
    except web.HTTPException as error:
        return error_reply(from_http(error, request))
    except (ConnectionResetError, TimeoutError):
        raise
    except Exception as error:
        broke(log, "request failed", error, method=request.method)
        return error_reply(
            ApiError(
                "our_fault", "the server made a mistake", "", "Try again; if it stays, tell the organiser."
            )
        )


def from_validation(error: ValidationError) -> ApiError:
    """The first wrong field, by its path; how many more there are. Never quotes what was sent."""
    problems = error.errors(include_url=False, include_input=False, include_context=False)
    first = problems[0]
    where = ".".join(str(part) for part in first["loc"])
    more = f" ({len(problems) - 1} more)" if len(problems) > 1 else ""
    return ApiError(
        "invalid",
        f"{first['msg']}{more}",
        where,
        "Correct the field; GET /v1/openapi.json describes every call.",
    )


_JOURNAL_CODES: Mapping[type[JournalError], str] = {
    UnknownError: "not_found",
    RefusedError: "not_now",
    ClashError: "conflict",
    InvitationError: "no_such_code",
    TooManyGuessesError: "too_many",
}


def from_journal(error: JournalError) -> ApiError:
    """What the journal refused, in our shape; a kind without a row of its own is our fault."""
    code = next((c for kind, c in _JOURNAL_CODES.items() if isinstance(error, kind)), "our_fault")
    mapped = ApiError(code, error.what, error.where, error.do)
    if isinstance(error, TooManyGuessesError):
        mapped.headers["Retry-After"] = str(max(1, round(error.retry_after_s)))
    return mapped


def from_away(error: AwayError) -> ApiError:
    """What the database could not do now: its sender tries again, and whoever watches sees why."""
    what = f"the database is {error.why}: nothing was kept"
    do = "Send it again in a moment; if somebody is in danger, telephone now."
    mapped = ApiError("unavailable", what, "database", do)
    mapped.headers["Retry-After"] = str(round(error.retry_after_s))
    return mapped


def from_http(error: web.HTTPException, request: web.Request) -> ApiError:
    """aiohttp's own refusals in our shape."""
    if isinstance(error, web.HTTPNotFound):
        return ApiError("not_found", "there is nothing at this path", "path", "Look at GET /v1/openapi.json.")
    if isinstance(error, web.HTTPMethodNotAllowed):
        allowed = ", ".join(sorted(error.allowed_methods))
        mapped = ApiError(
            "wrong_method", f"{request.method} is not possible here", "method", f"Use {allowed}."
        )
        mapped.headers["Allow"] = allowed
        return mapped
    if isinstance(error, web.HTTPRequestEntityTooLarge):
        return ApiError(
            "too_long", "the body is longer than the server reads", "body", "Send less at once, in parts."
        )
    if error.status < 500:
        return ApiError(
            "bad_request", "the request can't be read", "request", "Check how it was put together."
        )
    return ApiError("our_fault", "the server made a mistake", "", "Try again later.")


async def read_json(request: web.Request) -> Any:
    """The body as JSON; ApiError 'wrong_media' or 'bad_json' otherwise."""
    if request.content_type not in ("application/json", "application/geo+json"):
        raise ApiError(
            "wrong_media",
            f"the body is {request.content_type or 'of no stated kind'}, not JSON",
            "Content-Type",
            "Send Content-Type: application/json.",
        )
    try:
        async with asyncio.timeout(request.app[BODY_S]):
            raw = await request.read()
    except TimeoutError:
        raise ApiError("too_slow", "the body took too long to come in", "body", "Send it again.") from None
    try:
        found = json.loads(raw, parse_constant=_refuse_constant)
    except (ValueError, RecursionError):
        raise ApiError("bad_json", "the body is not JSON", "body", "Send one JSON object.") from None
    if b"\\u0000" in raw:
        _refuse_nothing(found)
    return found


def _refuse_nothing(value: Any, where: str = "body") -> None:
    """Refuse the sign that stands for nothing (NUL): not every database can keep it, so none does."""
    if isinstance(value, str) and "\x00" in value:
        raise _no_sign(where)
    inside = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for name, item in inside:
        _refuse_nothing(name, "a name in it")
        _refuse_nothing(item, str(name) if where == "body" else f"{where}.{name}")


def _no_sign(where: str) -> ApiError:
    return ApiError("invalid", "there is a NUL in it (U+0000), which is no sign", where, "Send it without.")


def _refuse_constant(name: str) -> None:
    raise ValueError(name)


async def read_model(request: web.Request, model: type[Model]) -> Model:
    """The body as that model; its first mistake as ApiError 'invalid'."""
    return model.model_validate(await read_json(request))


def read_query(request: web.Request, model: type[Model]) -> Model:
    """The query parameters as that model; a parameter given twice is refused."""
    query: dict[str, str] = {}
    for name, value in request.query.items():
        if name in query:
            raise ApiError("invalid", "given twice", name, "Give each parameter once.")
        query[name] = value
    return model.model_validate(query)
