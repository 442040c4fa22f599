"""What an error of python-telegram-bot means for a message: one table that the code walks.

Checked against version 22.8. Whether the request left this machine is told only by the error underneath
(`__cause__`, one of httpx); where that leaves doubt the outcome is unknown, never 'not sent': a repeat that is
marked is harmless, a lost alarm is not.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta

import httpx
from telegram import error as tg

from bot.channels.base import Outcome, Sent

__all__ = ["TABLE", "ErrorRow", "detail_of", "outcome_of", "row_of"]

_DETAIL_MAX = 200


@dataclass(frozen=True, slots=True)
class ErrorRow:
    """An error (or a subclass of it), the error underneath if that decides, and what both together mean."""

    error: type[BaseException]
    cause: type[BaseException] | None
    means: Sent


TABLE: tuple[ErrorRow, ...] = (
    # BadRequest is a NetworkError to the library: it must be met first, or it would be tried for ever.
    ErrorRow(tg.BadRequest, None, Sent.NEVER),
    ErrorRow(tg.RetryAfter, None, Sent.LATER),
    ErrorRow(tg.Forbidden, None, Sent.GONE),
    ErrorRow(tg.ChatMigrated, None, Sent.MOVED),
    ErrorRow(tg.InvalidToken, None, Sent.WRONG_SETTINGS),
    ErrorRow(tg.EndPointNotFound, None, Sent.WRONG_SETTINGS),
    ErrorRow(tg.Conflict, None, Sent.WRONG_SETTINGS),
    ErrorRow(tg.TimedOut, httpx.ConnectTimeout, Sent.NOT_SENT),
    ErrorRow(tg.TimedOut, httpx.PoolTimeout, Sent.NOT_SENT),
    ErrorRow(tg.TimedOut, None, Sent.UNKNOWN),
    ErrorRow(tg.NetworkError, httpx.ConnectError, Sent.NOT_SENT),
    # An address that is none: the base URL in the settings is wrong.
    ErrorRow(tg.NetworkError, httpx.UnsupportedProtocol, Sent.WRONG_SETTINGS),
    ErrorRow(tg.NetworkError, httpx.InvalidURL, Sent.WRONG_SETTINGS),
    ErrorRow(tg.NetworkError, None, Sent.UNKNOWN),
    ErrorRow(tg.PassportDecryptionError, None, Sent.UNKNOWN),
    # 200, but not JSON.
    ErrorRow(tg.TelegramError, None, Sent.UNKNOWN),
    # 200 and 'ok': false raises a bare KeyError; 200 with a result of another shape one of the others.
    ErrorRow(KeyError, None, Sent.UNKNOWN),
    ErrorRow(TypeError, None, Sent.UNKNOWN),
    ErrorRow(ValueError, None, Sent.UNKNOWN),
    ErrorRow(AttributeError, None, Sent.UNKNOWN),
)
"""First fit wins."""


def row_of(error: BaseException) -> ErrorRow | None:
    """The row an error falls under; None for one that no answer of Telegram's can cause."""
    for row in TABLE:
        if isinstance(error, row.error) and (row.cause is None or isinstance(error.__cause__, row.cause)):
            return row
    return None


def outcome_of(error: BaseException, token: str = "") -> Outcome:
    """What an error raised by a call means for the message sent by it. An error outside the table: unknown."""
    row = row_of(error)
    means = row.means if row else Sent.UNKNOWN
    return Outcome(
        means,
        detail=detail_of(error, token),
        retry_after=_wait(error) if isinstance(error, tg.RetryAfter) else None,
        new_address=str(error.new_chat_id) if isinstance(error, tg.ChatMigrated) else "",
    )


def _wait(error: tg.RetryAfter) -> timedelta:
    # A number of seconds, or a timedelta where PTB_TIMEDELTA is set.
    wait = error.retry_after
    return wait if isinstance(wait, timedelta) else timedelta(seconds=wait)


def detail_of(error: BaseException, token: str = "") -> str:
    """The error in a line for the record: its class, and its text with the token taken out."""
    words = f"{type(error).__name__}: {error}"
    if error.__cause__ is not None:
        words = f"{words} ({type(error.__cause__).__name__})"
    if token:
        words = words.replace(token, "…")
    return words[:_DETAIL_MAX]
