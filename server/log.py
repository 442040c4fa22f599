"""Logging: named events with fields, one line each; no prose, no positions, no tokens.

`set_up` is called once by the command line. Every room that logs takes `structlog.get_logger()`, names an
event ('check-in noted') and gives fields; `_without_private` is the last net under a careless field.
"""

from __future__ import annotations

import logging
import sys
from collections.abc import Mapping, MutableMapping
from typing import Any, TextIO

import structlog
from aiohttp import web
from aiohttp.abc import AbstractAccessLogger

PRIVATE = frozenset(
    {
        "lat",
        "lon",
        "fix",
        "token",
        "key",
        "code",
        "password",
        "authorization",
        "cookie",
        "words",
        "body",
        "query",
    }
)
"""Field names that must never reach a log: places, secrets, and what people wrote."""

_QUIET_BELOW_WARNING = ("httpx", "httpcore", "apscheduler", "telegram", "aiosqlite", "asyncio", "alembic")
# httpx logs whole URLs at INFO, and a bot's URL carries its token.


def set_up(level: str = "info", as_json: bool = False, to: TextIO | None = None) -> None:
    """Send structlog and the standard library's logging to one stream in one form."""
    shared: list[structlog.typing.Processor] = [
        structlog.contextvars.merge_contextvars,
        structlog.stdlib.add_log_level,
        structlog.processors.TimeStamper(fmt="iso", utc=True),
        _without_private,
    ]
    last: structlog.typing.Processor = (
        structlog.processors.JSONRenderer()
        if as_json
        else structlog.dev.ConsoleRenderer(colors=False, exception_formatter=structlog.dev.plain_traceback)
    )
    structlog.configure(
        processors=[*shared, structlog.stdlib.ProcessorFormatter.wrap_for_formatter],
        logger_factory=structlog.stdlib.LoggerFactory(),
        wrapper_class=structlog.stdlib.BoundLogger,
        cache_logger_on_first_use=False,
    )
    handler = logging.StreamHandler(to or sys.stderr)
    handler.setFormatter(
        structlog.stdlib.ProcessorFormatter(
            foreign_pre_chain=shared,
            processors=[
                structlog.stdlib.ProcessorFormatter.remove_processors_meta,
                _exception_without_values,
                last,
            ],
        )
    )
    root = logging.getLogger()
    root.handlers[:] = [handler]
    root.setLevel(level.upper())
    for name in _QUIET_BELOW_WARNING:
        logging.getLogger(name).setLevel(logging.WARNING)


def _without_private(_logger: Any, _method: str, fields: MutableMapping[str, Any]) -> Mapping[str, Any]:
    for name in PRIVATE & fields.keys():
        fields[name] = "…"
    return fields


def _exception_without_values(
    _logger: Any, _method: str, fields: MutableMapping[str, Any]
) -> Mapping[str, Any]:
    """Keep the kind of an exception and where it arose; its text may quote a position or a token."""
    info = fields.pop("exc_info", None)
    if info is True:
        info = sys.exc_info()
    error = info[1] if isinstance(info, tuple) else info
    if isinstance(error, BaseException):
        fields["error"] = type(error).__name__
        fields["at"] = _where(error)
    return fields


def broke(log: Any, event: str, error: BaseException, **fields: Any) -> None:
    """Log that something unexpected happened: its kind and where it arose, never its text nor local values,
    however logging has been set up."""
    log.error(event, error=type(error).__name__, at=_where(error), **fields)


def _where(error: BaseException) -> str:
    places: list[str] = []
    step = error.__traceback__
    while step is not None:
        code = step.tb_frame.f_code
        places.append(f"{code.co_filename.rsplit('/', 1)[-1]}:{step.tb_lineno}:{code.co_name}")
        step = step.tb_next
    return " > ".join(places[-6:])


_ASKED_ALL_THE_TIME = frozenset({"/v1/inbox/next", "/v1/inbox/lease", "/v1/outbox/claim"})


class AccessLog(AbstractAccessLogger):
    """One line a request: method, route pattern, status, time taken. Never the query, never an address in
    a path that could identify a runner's place."""

    def log(self, request: web.BaseRequest, response: web.StreamResponse, time: float) -> None:
        """Called by aiohttp after each reply."""
        route = "?"
        if isinstance(request, web.Request) and request.match_info.route.resource is not None:
            route = request.match_info.route.resource.canonical
        log = structlog.get_logger("access")
        # The channels ask every second whether there is something to do.
        tell = log.debug if route in _ASKED_ALL_THE_TIME and response.status < 400 else log.info
        tell(
            "request", method=request.method, route=route, status=response.status, took_ms=round(time * 1000)
        )

    @property
    def enabled(self) -> bool:
        """Whether requests are logged at all."""
        return logging.getLogger().isEnabledFor(logging.INFO)
