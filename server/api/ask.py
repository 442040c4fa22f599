"""One call: what its handler is handed, the table row that describes it, and the wrapper around it.

The wrapper does what every call needs in the same order: who are you, may you, read the request; then the
handler, then the envelope. 'May you' comes before 'is it there', so that nobody can probe.
"""

from __future__ import annotations

import time
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import Any, TypeVar

import structlog
from aiohttp import web
from pydantic import BaseModel

from server.api import auth
from server.api.auth import Caller
from server.api.envelope import ApiError, Handler, errors_to_envelope, read_model, read_query, reply
from server.api.parts import PARTS, Parts
from server.api.snapshot import Picture
from server.api.who_may import Call, May, may
from server.event.model import Part

M = TypeVar("M", bound=BaseModel)


class Who(StrEnum):
    """Whose token a call wants."""

    ANYBODY = "no token"
    PERSON = "a person's token, or a channel's with Acting-Address"
    SERVICE = "a channel's own token"
    DEVICE = "a person's or a device's token"
    KEY = "a device's token as `key` in the query"


@dataclass(frozen=True, slots=True)
class Inside:
    """In the place of a request, what stands in its path: for what this server asks of itself."""

    match_info: Mapping[str, str]


@dataclass(slots=True)
class Ask:
    """One request as a handler sees it."""

    parts: Parts
    request: web.Request | Inside
    now: datetime
    who: Caller | None = None
    person_parts: tuple[Part, ...] = ()
    share: May = May.NO
    body: BaseModel | None = None
    query: BaseModel | None = None
    timed: bool = True
    """Whether what is reported has a time of its sender's; else the same at the same moment is told apart by ours alone."""
    page: str = ""
    """Where the page is from which this was asked, for what is asked inside."""

    @property
    def caller(self) -> Caller:
        """Who calls; only for calls that want a token."""
        assert self.who is not None
        return self.who

    @property
    def http(self) -> web.Request:
        """The request itself; only for calls that come from outside."""
        assert isinstance(self.request, web.Request)
        return self.request

    @property
    def person(self) -> str:
        """The person who acts."""
        return auth.acting(self.caller)

    @property
    def event(self) -> str:
        """The event in the path."""
        return self.request.match_info["event"]

    @property
    def runner(self) -> str:
        """The runner in the path."""
        return self.request.match_info["runner"]

    @property
    def site(self) -> str:
        """Where people find the pages: the public address, else where this request came in, else where we listen."""
        settings, http = self.parts.settings, self.request
        here = (
            f"{http.scheme}://{http.host}"
            if isinstance(http, web.Request)
            else self.page or f"http://{settings.host}:{settings.port}"
        )
        return (settings.public_url or here).rstrip("/")

    def sent(self, model: type[M]) -> M:
        """The body, which the call's row says is that model."""
        assert isinstance(self.body, model)
        return self.body

    def asked(self, model: type[M]) -> M:
        """The query parameters, which the call's row says are that model."""
        assert isinstance(self.query, model)
        return self.query

    def may(self, call: Call, runner: str | None = None) -> May:
        """How far the person who acts may go."""
        return may(self.person_parts, call, runner)

    async def picture(self, *, together: bool = False) -> Picture:
        """The event of the path at this moment; the runner of the path is known to be in it. `together`: shared with others
        who ask for it, and seconds old where it takes long."""
        pictures = self.parts.pictures
        if together:
            picture = await pictures.take_together(self.event, self.now)
        else:
            picture = await pictures.take(self.event, self.now)
        runner = self.request.match_info.get("runner")
        if runner is not None and runner not in {r.id for r in picture.event.runners}:
            raise ApiError(
                "not_found",
                f"the event has no runner '{runner}'",
                "runner",
                "Use one of: " + ", ".join(r.id for r in picture.event.runners) + ".",
            )
        return picture


@dataclass(frozen=True, slots=True)
class Route:
    """One row of the table of calls: everything the router and the documentation need to know of it."""

    method: str
    path: str
    handler: Callable[[Ask], Awaitable[Any]]
    says: str
    replies: type
    who: Who = Who.PERSON
    call: Call | None = None
    body: type[BaseModel] | None = None
    query: type[BaseModel] | None = None
    errors: tuple[str, ...] = field(default=())


def not_yours(call: Call | None) -> ApiError:
    """The one refusal, the same whether or not the thing exists."""
    what = f"you may not {call.value} there" if call else "you have no part there"
    return ApiError("not_yours", what, "Authorization", "Ask whoever invited you for a part that may.")


async def parts_in(ask: Ask, event: str) -> tuple[Part, ...]:
    """The parts the acting person has in an event; none for a stranger and for an event that is not."""
    return tuple(p.part for p in await ask.parts.journal.parts(ask.person) if p.event == event)


def endpoint(route: Route) -> Callable[[web.Request], Awaitable[web.StreamResponse]]:
    """The aiohttp handler of a row."""

    async def handle(request: web.Request) -> web.StreamResponse:
        parts = request.app[PARTS]
        ask = Ask(parts, request, parts.clock.now())
        await _identify(ask, route)
        if route.body is not None:
            ask.body = await read_model(request, route.body)
        if route.query is not None:
            ask.query = read_query(request, route.query)
        data = await route.handler(ask)
        return reply(data, parts.clock.now())

    return handle


async def _identify(ask: Ask, route: Route) -> None:
    if route.who in (Who.ANYBODY, Who.KEY):
        return
    ask.who = await auth.caller(ask.http, ask.parts, ask.now)
    if route.who is Who.SERVICE:
        if not ask.who.channel:
            raise ApiError(
                "not_yours", "only a channel may do that", "Authorization", "Use a channel's token."
            )
        return
    if route.who is Who.DEVICE and ask.who.reports_for is not None:
        if ask.who.reports_for != (ask.event, ask.runner):
            raise not_yours(route.call)
        return
    structlog.contextvars.bind_contextvars(person=ask.person)
    if "event" in ask.request.match_info:
        await check_may(ask, route)


async def check_may(ask: Ask, route: Route) -> None:
    """Find the parts of the person who acts; ApiError 'not_yours' where they do not allow that call."""
    ask.person_parts = await parts_in(ask, ask.event)
    runner = ask.request.match_info.get("runner")
    if not [p for p in ask.person_parts if runner is None or p.runner in (None, runner)]:
        raise not_yours(route.call)
    if route.call is not None:
        ask.share = ask.may(route.call, runner)
        if ask.share is May.NO:
            raise not_yours(route.call)


@web.middleware
async def measured(request: web.Request, handler: Handler) -> web.StreamResponse:
    """Count and time every request; nothing of one request's log fields stays for the next."""
    structlog.contextvars.clear_contextvars()
    parts = request.app[PARTS]
    began = time.perf_counter()
    response = await errors_to_envelope(request, handler)
    resource = request.match_info.route.resource
    parts.metrics.requests.labels(resource.canonical if resource else "none", str(response.status)).inc()
    parts.metrics.request_seconds.observe(time.perf_counter() - began)
    return response
