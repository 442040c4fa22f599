"""What a channel may know and do beyond `base.Channel`: news of addresses, checks, menus. All optional.

The worker asks with `isinstance` whether a channel has one of these; a channel without it loses nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import timedelta
from enum import StrEnum
from typing import Protocol, runtime_checkable

from bot.channels.base import Incoming, RawUpdate

__all__ = [
    "AddressNews",
    "Became",
    "Checked",
    "HasMenu",
    "HasPhotos",
    "NotReadyError",
    "Opened",
    "TellsOfAddresses",
    "WrongSettingsError",
]


class NotReadyError(Exception):
    """This update can't be read yet: leave it stored and try again later."""


class WrongSettingsError(Exception):
    """Token, host or rights are wrong: nothing works until somebody mends it. The text says which setting."""


class Became(StrEnum):
    """What became of an address."""

    GONE = "gone"
    BACK = "back"
    MOVED = "moved"


@dataclass(frozen=True, slots=True)
class AddressNews:
    """An address takes nothing more, takes messages again, or has become `new_address`."""

    address: str
    became: Became
    new_address: str = ""


@runtime_checkable
class TellsOfAddresses(Protocol):
    """A channel whose updates may say that somebody blocked us, came back, or that a group moved."""

    def addresses(self, update: RawUpdate) -> tuple[AddressNews, ...]:
        """What a stored update says of addresses. Pure."""


@runtime_checkable
class Opened(Protocol):
    """A channel that has something to open and to close."""

    async def open(self) -> None:
        """Learn what is needed from the other side. May be called again after it failed; raises
        WrongSettingsError, or anything else when the other side can't be reached."""

    async def close(self) -> None:
        """Give connections back."""


@runtime_checkable
class Checked(Protocol):
    """A channel that only sends, and so hears nothing that would show that the other side is up."""

    check_every: timedelta

    async def check(self) -> bool:
        """Whether the other side answers, asked without sending anybody anything."""


@runtime_checkable
class HasPhotos(Protocol):
    """A channel over which photos come and go."""

    async def photo(self, ref: str) -> bytes | None:
        """The bytes of a photo by its name there; None where it can't be had. Raises nothing."""


@runtime_checkable
class HasMenu(Protocol):
    """A channel that shows a list of commands in a chat."""

    async def show_menu(self, to: Incoming, parts: Iterable[str], language: str) -> None:
        """Show those that fit somebody with these kinds of part. Trouble is let go: the menu is a comfort."""
