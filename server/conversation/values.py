"""What a person sent, as it comes into the room, and what goes back: the same for every channel."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from server.conversation.telling.message import Rows
from server.facts.entry import Fix

__all__ = ["Incoming", "Menu", "Photo", "Reply", "Trouble"]


class Trouble(StrEnum):
    """Why a picture can't be kept: it did not come through, is too large, or is none."""

    LOST = "lost"
    TOO_LARGE = "too large"
    UNREADABLE = "unreadable"


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture somebody sent; its caption goes in `text`. `ref` is its name at the channel. It comes twice: first without
    `content`, so that its words wait for no picture, then with it (JPEG, cleaned) or with what the `trouble` is."""

    ref: str = ""
    content: bytes | None = None
    trouble: str = ""

    @property
    def to_come(self) -> bool:
        """Whether only its words are here yet."""
        return self.content is None and not self.trouble


@dataclass(frozen=True, slots=True)
class Incoming:
    """One thing a person sent. As a rule one of text, button, fix, photo is set (a photo may have text).

    `address` is who wrote, at this channel, and what their person is bound to; `reply_to` where the reply
    goes if that is another place (a group). `sent_at` is when they sent it, by the channel's own clock.
    `message_key` is unique per address and the same when the same message comes again: check-ins made from
    it use it as their key. `live` marks a position of a live share, `live_ended` that the share has ended.
    `short_form` marks channels where a report needs no confirming (text gateways). `edits` is the key of the
    message of which this one is a later form. `other` names what we can't read ('voice'), so that its sender
    is told instead of left waiting. `kept`: it is stored, and handed to the desk again when the server could not be
    asked; false where whoever sent it has to send it again.
    """

    channel: str
    address: str
    sent_at: datetime
    message_key: str
    text: str = ""
    button: str = ""
    fix: Fix | None = None
    photo: Photo | None = None
    reply_to: str = ""
    group: bool = False
    addressed: bool = True
    live: bool = False
    live_ended: bool = False
    short_form: bool = False
    language: str = ""
    edits: str = ""
    other: str = ""
    kept: bool = True


@dataclass(frozen=True, slots=True)
class Menu:
    """What the menu of a chat is to offer: by the parts of whoever writes, in their language."""

    kinds: tuple[str, ...]
    language: str


@dataclass(frozen=True, slots=True)
class Reply:
    """What goes back at once to where an `Incoming` came from. Empty text and no picture: say nothing.

    `picture` is PNG bytes, `alt` the same in words (a channel without pictures sends `alt`). `again`: the
    server could not be asked, so what was sent is to be handed to the desk again later; this reply is then
    sent the first time only. `menu`: what the chat's menu is to offer, where that is known.
    """

    text: str
    buttons: Rows = ()
    picture: bytes | None = None
    alt: str = ""
    again: bool = False
    menu: Menu | None = None

    @property
    def silent(self) -> bool:
        """Whether there is nothing to send."""
        return not self.text and self.picture is None
