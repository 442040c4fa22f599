"""Hearing from Telegram, by asking or by being called: stored first, confirmed after.

Telegram counts updates as confirmed when asked with a higher offset, and keeps the rest for 24 h. So the offset
lives only in this loop: after a restart everything not yet confirmed comes again, and counts once.
"""

from __future__ import annotations

import asyncio
import json
from dataclasses import dataclass

import structlog
from telegram.error import BadRequest, Conflict, EndPointNotFound, InvalidToken, RetryAfter

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import RawUpdate, StoreUpdates
from bot.channels.telegram.api import TokenBot
from bot.channels.telegram.outcomes import detail_of, outcome_of
from bot.channels.telegram.reading import ALLOWED

__all__ = ["Backoff", "Hook", "poll", "watch_webhook"]

log = structlog.get_logger("telegram")


@dataclass(slots=True)
class Backoff:
    """How long to wait after the nth failure in a row: `first_s`, doubled, at most `longest_s`."""

    first_s: float = 0.5
    longest_s: float = 15.0
    failures: int = 0

    def worked(self) -> None:
        """Start again from the beginning."""
        self.failures = 0

    def failed(self) -> float:
        """Seconds to wait now."""
        wait_s = min(self.longest_s, self.first_s * 2.0 ** min(self.failures, 16))
        self.failures += 1
        return wait_s


@dataclass(frozen=True, slots=True)
class Hook:
    """Where Telegram shall call us, the secret it must then show, and how often we see to it (seconds)."""

    url: str
    secret: str
    look_every_s: float = 45.0


async def poll(bot: TokenBot, store: StoreUpdates, timeout_s: int, backoff: Backoff) -> None:
    """Ask and store until cancelled. Raises WrongSettingsError when Telegram refuses the token."""
    offset: int | None = None
    hook_gone = False
    timeout_now_s = 0  # the first question does not wait, so that 'nothing waits' is known at once
    while True:
        try:
            if not hook_gone:
                # A webhook still set bars asking. What waits there holds check-ins: never drop it.
                await bot.delete_webhook(drop_pending_updates=False)
                hook_gone = True
            raw = await bot.raw_updates(offset, timeout_now_s)
            updates = tuple(RawUpdate(str(int(u["update_id"])), json.dumps(u)) for u in raw)
        except Exception as error:
            hook_gone = hook_gone and not isinstance(error, Conflict)
            await asyncio.sleep(_wait(error, backoff, bot.token))
            continue
        if await _stored(store, updates, backoff):
            backoff.worked()
            timeout_now_s = 0 if updates else timeout_s
            offset = max((int(u.id) + 1 for u in updates), default=offset)


async def _stored(store: StoreUpdates, updates: tuple[RawUpdate, ...], backoff: Backoff) -> bool:
    """Whether the server has them. If not they are not confirmed, and come again."""
    try:
        await store(updates)
    except Exception as error:
        log.warning("updates not stored", count=len(updates), error=type(error).__name__)
        await asyncio.sleep(backoff.failed())
        return False
    return True


def _wait(error: Exception, backoff: Backoff, token: str) -> float:
    """Log a failed call; how many seconds to wait. WrongSettingsError if waiting would not help."""
    if isinstance(error, InvalidToken | EndPointNotFound):
        raise WrongSettingsError("Telegram does not know this bot token: check telegram_token") from None
    detail = detail_of(error, token)
    if isinstance(error, Conflict):
        log.error("somebody else asks Telegram with the same token", detail=detail)
    else:
        log.warning("telegram does not answer", detail=detail)
    wait_s = backoff.failed()
    asked = outcome_of(error).retry_after if isinstance(error, RetryAfter) else None
    return max(wait_s, asked.total_seconds()) if asked else wait_s


async def watch_webhook(bot: TokenBot, store: StoreUpdates, hook: Hook, backoff: Backoff) -> None:
    """Have Telegram call us, and see that it can, until cancelled.

    While something waits at Telegram no sign of life is given: then our own address is not reached.
    """
    while True:
        try:
            info = await bot.get_webhook_info()
            if info.url != hook.url:
                await _set_webhook(bot, hook)
                continue
        except WrongSettingsError:
            raise
        except Exception as error:
            await asyncio.sleep(_wait(error, backoff, bot.token))
            continue
        if info.pending_update_count:
            log.warning("updates wait at telegram", count=info.pending_update_count)
            await asyncio.sleep(min(hook.look_every_s, backoff.failed()))
        elif await _stored(store, (), backoff):
            backoff.worked()
            await asyncio.sleep(hook.look_every_s)


async def _set_webhook(bot: TokenBot, hook: Hook) -> None:
    try:
        await bot.set_webhook(
            hook.url, secret_token=hook.secret, allowed_updates=ALLOWED, drop_pending_updates=False
        )
    except BadRequest as error:
        # An address without TLS, one that names no host, a secret of other letters: waiting mends none of them.
        why = detail_of(error, bot.token).replace(hook.secret, "…")
        raise WrongSettingsError(
            f"Telegram refuses the webhook: check public_url and telegram_webhook_secret ({why})"
        ) from None
