"""Calls to the server's API: typed values out, two kinds of error.

The token is a channel's own; a call names the address it acts for, and the server decides what that person may. Nothing
is tried again here: what is handed over carries its sender's key, so that whoever calls may send it again.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import cache
from typing import Any, Generic, TypeVar

import aiohttp
from pydantic import TypeAdapter, ValidationError

T = TypeVar("T")
TIMEOUT = aiohttp.ClientTimeout(total=15, connect=5)


class ApiError(Exception):
    """The server refused: its code, what was wrong, where, and what to do."""

    def __init__(self, status: int, code: str, what: str, where: str = "", do: str = "") -> None:
        super().__init__(f"{code}: {what}")
        self.status, self.code, self.what, self.where, self.do = status, code, what, where, do


class UnreachableError(Exception):
    """No reply came, or none that is the server's. Whether the call was carried out is unknown."""


class FaultError(UnreachableError):
    """The server answered that it made a mistake: asked the same again, it may well make it again."""


@dataclass(frozen=True, slots=True)
class Told(Generic[T]):
    """What the server answered, and its clock at that moment."""

    now: datetime
    data: T


@cache
def _reader(shape: Any) -> TypeAdapter[Any]:
    return TypeAdapter(shape)


class ApiClient:
    """Calls to one server with one channel's token. The session is the caller's to open and close."""

    def __init__(self, session: aiohttp.ClientSession, base_url: str, token: str) -> None:
        self._session = session
        self._base = base_url.rstrip("/")
        self._token = token

    def _headers(self, address: str | None) -> dict[str, str]:
        headers = {"Authorization": f"Bearer {self._token}"}
        if address is not None:
            headers["Acting-Address"] = address
        return headers

    async def _call(
        self,
        address: str | None,
        method: str,
        path: str,
        shape: type[T],
        body: Mapping[str, Any] | None = None,
    ) -> Told[T]:
        sent = None if body is None else {k: v for k, v in body.items() if v is not None}
        try:
            async with self._session.request(
                method,
                self._base + path,
                json=sent,
                headers=self._headers(address),
                timeout=TIMEOUT,
            ) as reply:
                found = await _json(reply)
                status = reply.status
        except (TimeoutError, aiohttp.ClientError, OSError) as error:
            raise self._away(UnreachableError(type(error).__name__)) from error
        except UnreachableError as error:
            raise self._away(error) from error
        if status >= 400 or not found.get("ok"):
            refused = _refused(status, found)
            if isinstance(refused, FaultError):
                raise refused
            if isinstance(refused, UnreachableError):
                raise self._away(refused)
            self._there()
            raise refused
        try:
            hashable: Any = shape
            data: T = _reader(hashable).validate_python(found["data"], strict=False)
            told = Told(datetime.fromisoformat(found["now"]), data)
        except (KeyError, ValueError, ValidationError) as error:
            raise self._away(UnreachableError(f"a reply to {path} that is not of its shape")) from error
        self._there()
        return told

    def _there(self) -> None:
        """After every call that the server answered. For those that say so in their log."""

    def _away(self, error: UnreachableError) -> UnreachableError:
        """The error of a call that the server did not answer, on its way to the caller."""
        return error


async def _json(reply: aiohttp.ClientResponse) -> dict[str, Any]:
    try:
        found = await reply.json(content_type=None)
    except ValueError as error:
        raise UnreachableError(f"status {reply.status}, not JSON") from error
    if not isinstance(found, dict):
        raise UnreachableError(f"status {reply.status}, not an envelope")
    return found


def _refused(status: int, found: Mapping[str, Any]) -> Exception:
    error = found.get("error") or {}
    if error.get("code") == "our_fault":
        return FaultError(f"status {status}")
    if status >= 500:
        return UnreachableError(f"status {status}")
    return ApiError(
        status,
        str(error.get("code", "other")),
        str(error.get("what", "")),
        str(error.get("where", "")),
        str(error.get("do", "")),
    )
