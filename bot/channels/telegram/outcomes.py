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

__all__ = ["TABLE", "Row", "detail_of", "outcome_of", "row_of"]

_DETAIL_MAX = 200


@dataclass(frozen=True, slots=True)
class Row:
    """An error (or a subclass of it), the error underneath if that decides, and what both together mean."""

    error: type[BaseException]
    cause: type[BaseException] | None
    means: Sent


TABLE: tuple[Row, ...] = (
    # BadRequest is a NetworkError to the library: it must be met first, or it would be tried for ever.
    Row(tg.BadRequest, None, Sent.NEVER),
    Row(tg.RetryAfter, None, Sent.LATER),
    Row(tg.Forbidden, None, Sent.GONE),
    Row(tg.ChatMigrated, None, Sent.MOVED),
    Row(tg.InvalidToken, None, Sent.WRONG_SETTINGS),
    Row(tg.EndPointNotFound, None, Sent.WRONG_SETTINGS),
    Row(tg.Conflict, None, Sent.WRONG_SETTINGS),
    Row(tg.TimedOut, httpx.ConnectTimeout, Sent.NOT_SENT),
    Row(tg.TimedOut, httpx.PoolTimeout, Sent.NOT_SENT),
    Row(tg.TimedOut, None, Sent.UNKNOWN),
    Row(tg.NetworkError, httpx.ConnectError, Sent.NOT_SENT),
    # An address that is none: the base URL in the settings is wrong.
    Row(tg.NetworkError, httpx.UnsupportedProtocol, Sent.WRONG_SETTINGS),
    Row(tg.NetworkError, httpx.InvalidURL, Sent.WRONG_SETTINGS),
    Row(tg.NetworkError, None, Sent.UNKNOWN),
    Row(tg.PassportDecryptionError, None, Sent.UNKNOWN),
    # 200, but not JSON.
    Row(tg.TelegramError, None, Sent.UNKNOWN),
    # 200 and 'ok': false raises a bare KeyError; 200 with a result of another shape one of the others.
    Row(KeyError, None, Sent.UNKNOWN),
    Row(TypeError, None, Sent.UNKNOWN),
    Row(ValueError, None, Sent.UNKNOWN),
    Row(AttributeError, None, Sent.UNKNOWN),
)
"""First fit wins."""


def row_of(error: BaseException) -> Row | None:
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
