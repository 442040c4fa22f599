"""The part of the journal's door that sends: deliveries claimed, their texts kept, their outcomes reported."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import deliveries, leases, reports, retention
from server.journal.store import Store
from server.journal.values import Attempt, Delivery, Outcome

__all__ = ["OutboxDoor"]


class OutboxDoor:
    """Methods of `Journal`; its promises hold here too."""

    _store: Store

    async def claim(
        self,
        channels: Iterable[str],
        now: datetime,
        limit: int = 20,
        lease: timedelta = timedelta(seconds=60),
        holder: str = "",
        spacing: timedelta = timedelta(seconds=1),
        *,
        urgent: bool = False,
        server: str | None = None,
    ) -> list[Delivery]:
        """Claim deliveries due on these channels: alarms first, then by due time, one per chat per `spacing`.

        Of several past their use-by for one person and runner only the newest is handed out (`delayed`), the
        others are overtaken; alarms never are. What is no alarm comes together for one chat (see above). `urgent`:
        alarms only, for whoever has no room for more. `server`: the one in whose process they are sent, if any: should it
        die or hang they are claimed again, whatever the lease.
        """
        there = tuple(channels)

        async def work(c: AsyncConnection) -> list[Delivery]:
            gone = await retention.gone(c, leases.claimed_through(there), now, self._store)
            who = leases.Claimer(there, now, limit, lease, holder, spacing, urgent, server, gone)
            return await leases.claim(c, who, self._store.channels)

        return await self._store.writing(work)

    async def keep_text(self, delivery: str, tries: int, text: str) -> None:
        """Keep the text about to be sent by this attempt, so that it is known even if the outcome is not."""
        await self._store.writing(lambda c: reports.keep_text(c, delivery, tries, text))

    async def report(
        self,
        delivery: str,
        outcome: Outcome,
        now: datetime,
        *,
        tries: int | None = None,
        detail: str = "",
        message_ref: str = "",
        text: str | None = None,
        retry_after: timedelta | None = None,
        moved_to: str | None = None,
    ) -> bool:
        """Record the outcome of an attempt and do what outcomes.py says follows. `tries` as claimed; False if
        the delivery has meanwhile gone to another holder and this report changed nothing."""

        async def work(c: AsyncConnection) -> bool:
            said = reports.SendReport(outcome, now, tries, detail, message_ref, text, retry_after, moved_to)
            return await reports.report(c, delivery, said, self._store.channels)

        return await self._store.writing(work)

    async def try_next_channels(self, now: datetime, silent_for: timedelta) -> int:
        """Queue on the person's next channel what is needed an answer to, or not sent, for `silent_for` (from
        then on); returns how many were queued. Harmless to call often."""
        return await self._store.writing(
            lambda c: deliveries.try_next_channels(c, now, silent_for, self._store.channels)
        )

    async def deliveries(self, event: str, short: int | None = None) -> tuple[Delivery, ...]:
        """Every delivery of an event (of one notice), oldest first."""
        return await self._store.reading(lambda c: deliveries.deliveries(c, event, short))

    async def attempts(self, event: str, short: int) -> tuple[Attempt, ...]:
        """Every attempt to deliver a notice, oldest first."""
        return await self._store.reading(lambda c: deliveries.attempts(c, event, short))

    async def next_due(self, channels: Iterable[str]) -> datetime | None:
        """When the next delivery on these channels is due or its lease ends; None if nothing waits."""
        return await self._store.reading(lambda c: deliveries.next_due(c, tuple(channels)))
