"""The server's API as the bot sees it: one method a call, typed values out, two kinds of error.

The token is a channel's own; each call names the address it acts for, and the server decides what that
person may see. Nothing is tried again here: a check-in carries its sender's key, so that whoever calls may
send it again.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache
from typing import Any, Generic, TypeVar

import aiohttp
from pydantic import TypeAdapter, ValidationError

from server.wording.answer import (
    AnsweredAnswer,
    CardsAnswer,
    CutOffsAnswer,
    FactsAnswer,
    ForecastAnswer,
    JoinAnswer,
    KitAnswer,
    MeAnswer,
    MissedAnswer,
    NextAnswer,
    NotedAnswer,
    PeopleAnswer,
    PlanAnswer,
)

T = TypeVar("T")
TIMEOUT = aiohttp.ClientTimeout(total=15, connect=5)


class ApiError(Exception):
    """The server refused: its code, what was wrong, where, and what to do."""

    def __init__(self, status: int, code: str, what: str, where: str = "", do: str = "") -> None:
        super().__init__(f"{code}: {what}")
        self.status, self.code, self.what, self.where, self.do = status, code, what, where, do


class UnreachableError(Exception):
    """No reply came, or none that is the server's. Whether the call was carried out is unknown."""


@dataclass(frozen=True, slots=True)
class Told(Generic[T]):
    """What the server answered, and its clock at that moment."""

    now: datetime
    data: T


@dataclass(frozen=True, slots=True)
class NoticeHere:
    """A notice to the asker: enough to answer it."""

    short: int
    kind: str
    needs_answer: bool
    answered: str
    text: str = ""
    changeable: bool = False
    made_at: datetime | None = None
    answered_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class GroupHere:
    """Whether a group chat is told now what concerns the whole crew."""

    tell: bool
    event_name: str


@dataclass(frozen=True, slots=True)
class NoticesHere:
    """The asker's notices, newest last."""

    notices: tuple[NoticeHere, ...]


@cache
def _reader(shape: Any) -> TypeAdapter[Any]:
    return TypeAdapter(shape)


class ApiClient:
    """Calls to one server with one channel's token. The session is the caller's to open and close."""

    def __init__(self, session: aiohttp.ClientSession, base_url: str, token: str) -> None:
        self._session = session
        self._base = base_url.rstrip("/")
        self._token = token

    async def me(self, address: str) -> Told[MeAnswer]:
        """Who is bound to that address, and their events. ApiError 'no_address' for a stranger."""
        return await self._call(address, "GET", "/v1/me", MeAnswer)

    async def join(self, channel: str, address: str, code: str, *, preview: bool) -> Told[JoinAnswer]:
        """Look at an invitation (`preview`), or take it. ApiError 'no_such_code' for one that does not
        hold."""
        body = {"code": code, "channel": channel, "address": address, "preview": preview}
        return await self._call(None, "POST", "/v1/join", JoinAnswer, body=body)

    async def forecast(
        self,
        address: str,
        event: str,
        runner: str,
        *,
        factor: float | None = None,
        leaving: datetime | None = None,
    ) -> Told[ForecastAnswer]:
        """Every point; with `factor` or `leaving` a what-if."""
        query = {} if factor is None else {"factor": f"{factor:g}"}
        if leaving is not None:
            query["leaving"] = leaving.isoformat()
        return await self._call(address, "GET", f"{_of(event, runner)}/forecast", ForecastAnswer, query)

    async def where(self, address: str, event: str, runner: str) -> Told[ForecastAnswer]:
        """The last fact and the estimate."""
        return await self._call(address, "GET", f"{_of(event, runner)}/where", ForecastAnswer)

    async def next(self, address: str, event: str, runner: str, point: str | None = None) -> Told[NextAnswer]:
        """The next meetings of the asker, or of anybody where they have none; with a point, those to come there, whoever
        goes."""
        return await self._call(address, "GET", f"{_of(event, runner)}/next", NextAnswer, _at(point))

    async def missed(self, address: str, event: str, runner: str, point: str | None) -> Told[MissedAnswer]:
        """Has she been through, and wait or go."""
        return await self._call(address, "GET", f"{_of(event, runner)}/missed", MissedAnswer, _at(point))

    async def kit(self, address: str, event: str, runner: str, point: str | None) -> Told[KitAnswer]:
        """What to have ready at a point, or at the asker's next meeting."""
        return await self._call(address, "GET", f"{_of(event, runner)}/kit", KitAnswer, _at(point))

    async def plan(self, address: str, event: str, runner: str) -> Told[PlanAnswer]:
        """The timetable."""
        return await self._call(address, "GET", f"{_of(event, runner)}/plan", PlanAnswer)

    async def facts(self, address: str, event: str, runner: str) -> Told[FactsAnswer]:
        """What was reported."""
        return await self._call(address, "GET", f"{_of(event, runner)}/facts", FactsAnswer)

    async def cut_offs(self, address: str, event: str, runner: str) -> Told[CutOffsAnswer]:
        """Cut-offs to come."""
        return await self._call(address, "GET", f"{_of(event, runner)}/cutoffs", CutOffsAnswer)

    async def cards(self, address: str, event: str, runner: str) -> Told[CardsAnswer]:
        """The if-then cards."""
        return await self._call(address, "GET", f"{_of(event, runner)}/cards", CardsAnswer)

    async def people(self, address: str, event: str) -> Told[PeopleAnswer]:
        """Who is where."""
        return await self._call(address, "GET", f"/v1/events/{event}/people", PeopleAnswer)

    async def notices(self, address: str, event: str) -> Told[NoticesHere]:
        """The asker's own notices."""
        return await self._call(address, "GET", f"/v1/events/{event}/notices", NoticesHere)

    async def check_in(
        self, address: str, event: str, runner: str, body: Mapping[str, Any]
    ) -> Told[NotedAnswer]:
        """One report about a runner."""
        return await self._call(address, "POST", f"{_of(event, runner)}/checkins", NotedAnswer, body=body)

    async def race(self, address: str, event: str, body: Mapping[str, Any]) -> Told[NotedAnswer]:
        """One race-level fact."""
        return await self._call(address, "POST", f"/v1/events/{event}/race", NotedAnswer, body=body)

    async def help(self, address: str, event: str, body: Mapping[str, Any]) -> Told[NotedAnswer]:
        """A call for help that names none of the many runners it may be for."""
        return await self._call(address, "POST", f"/v1/events/{event}/help", NotedAnswer, body=body)

    async def take_back(
        self, address: str, entry: str, key: str, within: timedelta | None = None, *, meant: str | None = None
    ) -> Told[NotedAnswer]:
        """What an entry said no longer counts; ApiError 'too_late' for one that counts and came longer ago than
        `within`. `meant`: the runner whom a call for help was for instead."""
        path, body = f"/v1/entries/{entry}/take-back", {"key": key}
        more: dict[str, Any] = {} if within is None else {"within_s": within.total_seconds()}
        more |= {} if meant is None else {"meant": meant}
        return await self._call(address, "POST", path, NotedAnswer, body={**body, **more})

    async def confirm(self, address: str, entry: str, key: str) -> Told[NotedAnswer]:
        """An unconfirmed entry counts."""
        path = f"/v1/entries/{entry}/confirm"
        return await self._call(address, "POST", path, NotedAnswer, body={"key": key})

    async def answer(
        self, address: str, event: str, short: int, answer: str, words: str, key: str
    ) -> Told[AnsweredAnswer]:
        """Answer a notice."""
        path = f"/v1/events/{event}/notices/{short}/answer"
        body = {"answer": answer, "words": words, "key": key}
        return await self._call(address, "POST", path, AnsweredAnswer, body=body)

    async def group(self, address: str, event: str, chat: str, *, tell: bool) -> Told[GroupHere]:
        """Have a group chat told what concerns all, or no longer."""
        body = {"address": chat, "tell": tell}
        return await self._call(address, "POST", f"/v1/events/{event}/group", GroupHere, body=body)

    async def picture(self, address: str, event: str, runner: str) -> bytes:
        """The profile as PNG; ApiError 'not_found' where the server draws none."""
        url = f"{self._base}{_of(event, runner)}/picture.png"
        try:
            async with self._session.get(url, headers=self._headers(address), timeout=TIMEOUT) as reply:
                if reply.status == 200 and reply.content_type == "image/png":
                    return await reply.read()
                raise _refused(reply.status, await _json(reply))
        except (TimeoutError, aiohttp.ClientError, OSError) as error:
            raise self._away(UnreachableError(type(error).__name__)) from error
        except UnreachableError as error:
            raise self._away(error) from error

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
        query: Mapping[str, str] | None = None,
        body: Mapping[str, Any] | None = None,
    ) -> Told[T]:
        sent = None if body is None else {k: v for k, v in body.items() if v is not None}
        try:
            async with self._session.request(
                method,
                self._base + path,
                params=dict(query or {}),
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


def _of(event: str, runner: str) -> str:
    return f"/v1/events/{event}/runners/{runner}"


def _at(point: str | None) -> dict[str, str]:
    return {} if point is None else {"point": point}


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
    if status >= 500 and error.get("code") != "not_ready":
        return UnreachableError(f"status {status}")
    return ApiError(
        status,
        str(error.get("code", "other")),
        str(error.get("what", "")),
        str(error.get("where", "")),
        str(error.get("do", "")),
    )
