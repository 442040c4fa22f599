"""The server's API as a channel's worker sees it: updates in and out of the inbox, deliveries out of the outbox."""

from __future__ import annotations

import time
from collections.abc import Iterable, Mapping
from typing import Any

import aiohttp
import structlog

from bot.api_client import ApiClient, UnreachableError
from bot.channels.addresses import AddressNews
from bot.channels.base import Outcome, RawUpdate
from server.api.replies import Claimed, Conversed, Done, Held, RawUpdateOut, RawUpdates, Reported, Stored

__all__ = ["ServiceClient"]


log = structlog.get_logger("service")


class ServiceClient(ApiClient):
    """Calls with one channel's own token. Raises ApiError and UnreachableError as its base does, and says in
    the log once that the server is lost, and once that it is back."""

    def __init__(self, session: aiohttp.ClientSession, base_url: str, token: str) -> None:
        super().__init__(session, base_url, token)
        self._lost_at: float | None = None

    def _away(self, error: UnreachableError) -> UnreachableError:
        if self._lost_at is None:
            self._lost_at = time.monotonic()
            log.error("SERVER NOT REACHED: WAITING FOR IT", server=self._base, why=str(error))
        return error

    def _there(self) -> None:
        if self._lost_at is not None:
            away_s, self._lost_at = time.monotonic() - self._lost_at, None
            log.warning("server reached again", server=self._base, away_s=round(away_s))

    async def converse(self, address: str, body: Mapping[str, Any]) -> Conversed:
        """One thing that somebody sent, answered. Raises FaultError where the server fails on it."""
        return (await self._call(address, "POST", "/v1/converse", Conversed, body=body)).data

    async def store(self, channel: str, updates: Iterable[RawUpdate], *, caught_up: bool) -> int:
        """Keep raw updates; how many were new. Once it returns they are safe."""
        body = {
            "channel": channel,
            "updates": [{"id": u.id, "body": u.body} for u in updates],
            "caught_up": caught_up,
        }
        return (await self._call(None, "POST", "/v1/inbox", Stored, body=body)).data.new

    async def next_updates(self, channel: str, limit: int) -> tuple[RawUpdateOut, ...]:
        """Stored updates to work on, ours for a minute."""
        body = {"channel": channel, "limit": limit}
        return (await self._call(None, "POST", "/v1/inbox/next", RawUpdates, body=body)).data.updates

    async def update_done(self, channel: str, update: str, problem: str = "") -> None:
        """An update is worked off; `problem` says why it could not be."""
        body = {"channel": channel, "problem": problem[:500]}
        await self._call(None, "POST", f"/v1/inbox/{update}/done", Done, body=body)

    async def update_later(self, channel: str, update: str) -> None:
        """An update will be tried again; what its sender wrote after it need not wait for that."""
        await self._call(
            None, "POST", f"/v1/inbox/{update}/done", Done, body={"channel": channel, "later": True}
        )

    async def update_back(self, channel: str, update: str, tries: int) -> None:
        """An update claimed for the `tries`th time is not worked on any more: whoever asks next gets it."""
        body = {"channel": channel, "back": tries}
        await self._call(None, "POST", f"/v1/inbox/{update}/done", Done, body=body)

    async def lease(self, channel: str, holder: str, ttl_s: float, *, give_back: bool = False) -> bool:
        """Whether we are the one that listens, for `ttl_s` from now."""
        body = {"channel": channel, "holder": holder, "ttl_s": ttl_s, "give_back": give_back}
        return (await self._call(None, "POST", "/v1/inbox/lease", Held, body=body)).data.held

    async def address_news(self, channel: str, news: AddressNews) -> None:
        """Hand on what became of an address."""
        body = {
            "channel": channel,
            "address": news.address,
            "became": news.became.value,
            "new_address": news.new_address,
        }
        await self._call(None, "POST", "/v1/addresses", Done, body=body)

    async def alive(self, channel: str, well_for_s: float) -> None:
        """The other side of an outgoing channel is up."""
        body = {"channel": channel, "well_for_s": well_for_s}
        await self._call(None, "POST", "/v1/outbox/alive", Done, body=body)

    async def claim(
        self, channel: str, limit: int, lease_s: float, *, urgent: bool = False, pictures: bool = False
    ) -> Claimed:
        """Deliveries that are due (`urgent`: alarms only), ours for `lease_s`; with the bytes of `pictures`."""
        body = {
            "channel": channel,
            "limit": limit,
            "lease_s": lease_s,
            "urgent": urgent,
            "pictures": pictures,
        }
        return (await self._call(None, "POST", "/v1/outbox/claim", Claimed, body=body)).data

    async def report(self, delivery: str, tries: int, outcome: Outcome) -> bool:
        """What became of an attempt; False if it had gone to another meanwhile."""
        wait = outcome.retry_after
        body = {
            "outcome": outcome.sent.value,
            "tries": tries,
            "detail": outcome.detail[:500],
            "ref": outcome.ref[:200],
            "retry_after_s": min(wait.total_seconds(), 86_400.0) if wait is not None else None,
            "new_address": outcome.new_address,
        }
        return (
            await self._call(None, "POST", f"/v1/outbox/{delivery}/report", Reported, body=body)
        ).data.counted
