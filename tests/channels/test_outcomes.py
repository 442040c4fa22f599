"""Every error python-telegram-bot can raise, and what it means for the message it was raised for."""

from __future__ import annotations

import inspect
from collections.abc import Iterator
from datetime import timedelta

import httpx
import pytest
from telegram import error as tg

from bot.channels.base import Sent
from bot.channels.telegram.outcomes import TABLE, outcome_of, row_of

# The library announces that the wait will be a timedelta; both forms are read.
pytestmark = pytest.mark.filterwarnings("ignore:.*retry_after.*")


def _below(kind: type[BaseException]) -> Iterator[type[BaseException]]:
    yield kind
    for sub in kind.__subclasses__():
        yield from _below(sub)


LIBRARY = sorted(
    {c for c in _below(tg.TelegramError) if c.__module__ == tg.__name__}, key=lambda c: c.__name__
)
UNDERNEATH = sorted(
    (
        c
        for _, c in inspect.getmembers(httpx, inspect.isclass)
        if issubclass(c, httpx.HTTPError | httpx.InvalidURL)
    ),
    key=lambda c: c.__name__,
)

SURELY_NOT_SENT = {"ConnectError", "ConnectTimeout", "PoolTimeout"}
WRONG_ADDRESS = {"UnsupportedProtocol", "InvalidURL"}


def _made(kind: type[BaseException]) -> BaseException:
    if kind is tg.ChatMigrated:
        return tg.ChatMigrated(-100123)
    if kind is tg.RetryAfter:
        return tg.RetryAfter(7)
    return kind("words")


def _caused(cause: type[BaseException]) -> BaseException:
    """The error as the library wraps what httpx raises (HTTPXRequest.do_request, 22.8)."""
    known = issubclass(cause, httpx.TimeoutException)
    error = tg.TimedOut() if known else tg.NetworkError(f"httpx.{cause.__name__}")
    error.__cause__ = cause.__new__(cause, "words")
    return error


def test_the_library_has_the_errors_that_were_looked_at() -> None:
    """A version with another error stops here, so that somebody decides what it means."""
    names = {c.__name__ for c in LIBRARY}
    assert names == {
        "BadRequest", "ChatMigrated", "Conflict", "EndPointNotFound", "Forbidden", "InvalidToken",
        "NetworkError", "PassportDecryptionError", "RetryAfter", "TelegramError", "TimedOut",
    }  # fmt: skip


@pytest.mark.parametrize("kind", LIBRARY, ids=lambda c: c.__name__)
def test_every_error_of_the_library_has_a_row_of_its_own(kind: type[BaseException]) -> None:
    """No error is decided by the row of a wider one."""
    row = row_of(_made(kind))
    assert row is not None
    assert row.error is kind


EXPECTED = {
    "BadRequest": Sent.NEVER,
    "ChatMigrated": Sent.MOVED,
    "Conflict": Sent.WRONG_SETTINGS,
    "EndPointNotFound": Sent.WRONG_SETTINGS,
    "Forbidden": Sent.GONE,
    "InvalidToken": Sent.WRONG_SETTINGS,
    "NetworkError": Sent.UNKNOWN,
    "PassportDecryptionError": Sent.UNKNOWN,
    "RetryAfter": Sent.LATER,
    "TelegramError": Sent.UNKNOWN,
    "TimedOut": Sent.UNKNOWN,
}


@pytest.mark.parametrize("kind", LIBRARY, ids=lambda c: c.__name__)
def test_an_error_of_the_library_means_what_was_tried_out(kind: type[BaseException]) -> None:
    """The meanings are those found by experiment with version 22.8; a bad request is never tried again,
    though it is a network error to the library."""
    assert outcome_of(_made(kind)).sent is EXPECTED[kind.__name__]


@pytest.mark.parametrize("cause", UNDERNEATH, ids=lambda c: c.__name__)
def test_not_sent_is_only_said_where_no_byte_can_have_left(cause: type[BaseException]) -> None:
    """Of what httpx can raise, only failing to connect, and to get a connection, are surely not sent."""
    outcome = outcome_of(_caused(cause))
    if cause.__name__ in SURELY_NOT_SENT:
        assert outcome.sent is Sent.NOT_SENT
    elif cause.__name__ in WRONG_ADDRESS:
        assert outcome.sent is Sent.WRONG_SETTINGS
    else:
        assert outcome.sent is Sent.UNKNOWN


def test_more_than_twenty_errors_underneath_were_looked_at() -> None:
    """The list is taken from the library, and must not be empty by a change of its layout."""
    assert len(UNDERNEATH) > 20


@pytest.mark.parametrize("error", [KeyError("result"), TypeError("x"), ValueError("x"), AttributeError("x")])
def test_an_answer_the_library_cannot_read_is_unknown(error: Exception) -> None:
    """Telegram answered something: the message may well be there."""
    assert outcome_of(error).sent is Sent.UNKNOWN
    assert row_of(error) is not None


@pytest.mark.parametrize("seconds", [3, timedelta(seconds=3)])
def test_the_wait_is_read_in_either_form(seconds: int | timedelta, monkeypatch: pytest.MonkeyPatch) -> None:
    """The library gives seconds, or a timedelta where PTB_TIMEDELTA is set."""
    if isinstance(seconds, timedelta):
        monkeypatch.setenv("PTB_TIMEDELTA", "1")
    outcome = outcome_of(tg.RetryAfter(seconds))
    assert outcome.sent is Sent.LATER
    assert outcome.retry_after == timedelta(seconds=3)


def test_a_moved_chat_says_where_to() -> None:
    """The new chat's id is handed on as an address."""
    assert outcome_of(tg.ChatMigrated(-100123)).new_address == "-100123"


def test_a_detail_never_holds_the_token() -> None:
    """What goes into the record of attempts has no secret."""
    outcome = outcome_of(tg.NetworkError("https://api/bot12:AB/sendMessage failed"), "12:AB")
    assert "12:AB" not in outcome.detail
    assert "NetworkError" in outcome.detail


def test_no_row_is_hidden_behind_an_earlier_one() -> None:
    """Each row can be reached: none earlier is as wide or wider."""
    for i, row in enumerate(TABLE):
        for earlier in TABLE[:i]:
            wider = issubclass(row.error, earlier.error) and earlier.cause in (None, row.cause)
            assert not wider, f"{row} is hidden by {earlier}"
