"""python-telegram-bot as we use it: no retries inside, short time-outs, raw updates, no token in any log."""

from __future__ import annotations

import logging
from dataclasses import dataclass
from typing import Any

from telegram import Bot
from telegram.error import TelegramError
from telegram.request import HTTPXRequest

from bot.channels.telegram.reading import ALLOWED

__all__ = ["Timeouts", "TokenBot", "make_bot"]

# httpx logs whole URLs at INFO, the library what it sends at DEBUG: tokens and people's words.
_TALKATIVE = ("httpx", "httpcore", "telegram")
BATCH = 100
SENDING_AT_ONCE = 64
"""Room for all that one worker sends at once: answers, news and alarms (a batch of 20 each)."""


@dataclass(frozen=True, slots=True)
class Timeouts:
    """Seconds. `poll_s` is how long one request for updates may wait for the first; `connection_s` holds for
    connecting and for writing, `answer_s` for the answer to begin; pictures take longer to write."""

    poll_s: int = 25
    connection_s: float = 5.0
    answer_s: float = 5.0
    picture_s: float = 20.0
    pool_s: float = 1.0


class _Request(HTTPXRequest):
    """The library's requests, with what came back kept out of the log when it is not JSON."""

    __slots__ = ()

    @staticmethod
    def parse_json_payload(payload: bytes) -> Any:
        """As in the library, but silent: an answer may quote what people wrote."""
        logger = logging.getLogger("telegram.request.BaseRequest")
        was, logger.disabled = logger.disabled, True
        try:
            return HTTPXRequest.parse_json_payload(payload)
        except TelegramError as error:
            # The library's own text would quote the answer.
            raise TelegramError("the answer is not JSON") from error.__cause__
        finally:
            logger.disabled = was


class TokenBot(Bot):
    """The library's bot, without its token in its repr, and with updates as they came."""

    __slots__ = ()

    def __repr__(self) -> str:
        return "Bot(…)"

    async def close_connections(self) -> None:
        """Give both pools back (the library's own `close` is a call to Telegram)."""
        for request in self._request:
            await request.shutdown()

    async def raw_updates(self, offset: int | None, timeout_s: int) -> list[dict[str, Any]]:
        """getUpdates, unparsed: one update that the library cannot read must not hold up the others."""
        read_timeout_s = (self._request[0].read_timeout or 0) + timeout_s
        found: list[dict[str, Any]] = await self._post(
            "getUpdates",
            {"timeout": timeout_s, "offset": offset, "limit": BATCH, "allowed_updates": list(ALLOWED)},
            read_timeout=read_timeout_s,
        )
        return found


def make_bot(token: str, base_url: str, timeouts: Timeouts) -> TokenBot:
    """A bot on its own two connection pools; nothing is sent yet."""
    for name in _TALKATIVE:
        logger = logging.getLogger(name)
        logger.setLevel(max(logger.level, logging.WARNING))
    asking, sending = _request(timeouts, 1), _request(timeouts, SENDING_AT_ONCE)
    if not base_url:
        return TokenBot(token, request=sending, get_updates_request=asking)
    base, files = f"{base_url}/bot", f"{base_url}/file/bot"
    return TokenBot(token, base_url=base, base_file_url=files, request=sending, get_updates_request=asking)


def _request(timeouts: Timeouts, connections: int) -> _Request:
    return _Request(
        connection_pool_size=connections,
        read_timeout=timeouts.answer_s,
        write_timeout=timeouts.connection_s,
        connect_timeout=timeouts.connection_s,
        pool_timeout=timeouts.pool_s,
        media_write_timeout=timeouts.picture_s,
        # Proxy settings of the environment would apply to loopback too.
        httpx_kwargs={"trust_env": False},
    )
