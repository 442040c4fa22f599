"""A stored Telegram update -> what somebody sent us, or what became of an address. Pure.

Address: the user's id, which is also the id of the private chat with them; in a group the reply goes to the
group's id. A photo, place or text counts as sent when Telegram dates it; a later position of a live share, or
a corrected text, at its edit date.
"""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass
from datetime import datetime

from telegram import CallbackQuery, ChatMemberUpdated, Location, Message, Update
from telegram.constants import ChatMemberStatus, ChatType, MessageEntityType

from bot.channels.addresses import AddressNews, Became, NotReadyError
from bot.channels.base import Incoming, Photo
from server.facts.entry import Fix

__all__ = ["ALLOWED", "NAME", "Me", "address_news", "read"]

NAME = "telegram"

ALLOWED = ("message", "edited_message", "callback_query", "my_chat_member")
"""The kinds of update we ask for. Left out, Telegram would keep whatever was asked for last."""

_UNREADABLE = ("voice", "audio", "video", "video_note", "sticker", "animation", "document", "contact", "poll")
_GROUPS = (ChatType.GROUP, ChatType.SUPERGROUP)


@dataclass(frozen=True, slots=True)
class Me:
    """The bot itself: its id (the front of its token) and its user name, once Telegram has told it."""

    id: int
    username: str = ""


_UNLIKE_TELEGRAM = (KeyError, TypeError, AttributeError, OverflowError, OSError, RecursionError)
"""What the library raises for JSON of another shape than it expects."""


def _parse(body: str) -> Update:
    update = Update.de_json(json.loads(body), None)
    if update is None:
        raise ValueError("the update is empty")
    return update


def read(body: str, me: Me, received_at: datetime | None = None) -> tuple[Incoming, ...]:
    """The things to hand to the desk; () for an update that says nothing to it.

    Raises ValueError for a body that is no update of Telegram's, NotReadyError when it takes our user name to
    tell whether we are meant and that is not known yet.
    """
    try:
        return _read(_parse(body), me, received_at)
    except _UNLIKE_TELEGRAM as error:
        raise ValueError(f"no update of Telegram's: {type(error).__name__}") from error


def _read(update: Update, me: Me, received_at: datetime | None) -> tuple[Incoming, ...]:
    if update.callback_query is not None:
        return _pressed(update.callback_query, received_at)
    if update.edited_message is not None:
        return _written(update.edited_message, me, edited=True)
    if update.message is not None:
        return _written(update.message, me, edited=False)
    return ()


def _pressed(query: CallbackQuery, received_at: datetime | None) -> tuple[Incoming, ...]:
    """A button: who pressed it is who acts, whoever's message it hangs under."""
    if query.data is None or query.message is None or query.from_user.is_bot:
        return ()
    chat = query.message.chat
    # Telegram does not say when a button was pressed; the date of its message may be hours earlier.
    return (
        Incoming(
            channel=NAME,
            address=str(query.from_user.id),
            sent_at=received_at or query.message.date,
            message_key=f"q{query.id}",
            button=query.data,
            reply_to=str(chat.id),
            group=chat.type in _GROUPS,
            language=query.from_user.language_code or "",
        ),
    )


def _written(message: Message, me: Me, *, edited: bool) -> tuple[Incoming, ...]:
    who, chat = message.from_user, message.chat
    if who is None or who.is_bot or message.sender_chat is not None:
        return ()
    if chat.type not in (ChatType.PRIVATE, *_GROUPS):
        return ()
    text = _words(message)
    other = next((kind for kind in _UNREADABLE if getattr(message, kind) and not text), "")
    place = message.location
    if not (text or place or message.photo or other):
        return ()
    group = chat.type in _GROUPS
    meant = _Meant(message, me, text) if group else None
    if meant is not None and meant.other_bot:
        return ()
    first = f"{chat.id}.{message.message_id}"
    return (
        Incoming(
            channel=NAME,
            address=str(who.id),
            sent_at=_sent(message, edited=edited),
            message_key=_key(message, first, edited=edited),
            text=meant.text if meant else text,
            fix=_fix(place) if place else None,
            photo=Photo(_of_size(message)) if message.photo else None,
            reply_to=str(chat.id),
            group=group,
            addressed=meant is None or meant.us,
            live=place is not None and (_is_live(place) or edited),
            live_ended=place is not None and edited and not _is_live(place),
            language=who.language_code or "",
            edits=first if edited and place is None else "",
            other=other,
        ),
    )


PHOTO_MAX = 700_000
"""So many bytes of a photo the server takes (server/api/photos.py)."""


def _of_size(message: Message) -> str:
    """The largest of a photo's sizes that the server takes; they come from small to large."""
    fits = [p for p in message.photo if (p.file_size or 0) <= PHOTO_MAX]
    return (fits or message.photo)[-1].file_id


def _words(message: Message) -> str:
    text = message.text or message.caption or ""
    if message.venue is not None and not text:
        return message.venue.title
    return text


def _sent(message: Message, *, edited: bool) -> datetime:
    if edited and message.edit_date is not None:
        return message.edit_date
    # A message sent on is a report of now about then; what was written then is not dated by us.
    return message.date


def _key(message: Message, first: str, *, edited: bool) -> str:
    """The same for the same update. Edit dates have whole seconds: a hash of the content tells two apart."""
    if not edited:
        return first
    place = message.location
    content = f"{place.latitude},{place.longitude},{_is_live(place)}" if place else _words(message)
    digest = hashlib.sha256(content.encode()).hexdigest()[:8]
    stamp = int(_sent(message, edited=True).timestamp())
    return f"{first}.{stamp}.{digest}"


def _is_live(place: Location) -> bool:
    # Not by the attribute, whose type is about to change and which says so in a warning each time.
    return "live_period" in place.to_dict()


def _fix(place: Location) -> Fix:
    heading = float(place.heading) if place.heading is not None else None
    return Fix(place.latitude, place.longitude, place.horizontal_accuracy, None, heading)


class _Meant:
    """Whether a group's message is meant for us: our name, a reply to us, a command; and its text without
    the name. `other_bot`: a command that names another bot."""

    def __init__(self, message: Message, me: Me, text: str) -> None:
        self.us = False
        self.other_bot = False
        self.text = text
        answered = message.reply_to_message
        if answered is not None and answered.from_user is not None and answered.from_user.id == me.id:
            self.us = True
        found = message.parse_entities() if message.text else {}
        found |= message.parse_caption_entities() if message.caption else {}
        for entity, words in found.items():
            if entity.type == MessageEntityType.TEXT_MENTION and entity.user and entity.user.id == me.id:
                self.us = True
            elif entity.type == MessageEntityType.MENTION:
                self._named(words, words, me)
            elif entity.type == MessageEntityType.BOT_COMMAND:
                command, _, name = words.partition("@")
                if name:
                    self._named(f"@{name}", words, me, command)
                else:
                    self.us = True
        self.other_bot = self.other_bot and not self.us

    def _named(self, name: str, written: str, me: Me, instead: str = "") -> None:
        if not me.username:
            raise NotReadyError("our own user name is not known yet")
        if name[1:].lower() == me.username.lower():
            self.us = True
            self.text = self.text.replace(written, instead, 1).strip()
        elif instead:
            self.other_bot = True


_GONE = (ChatMemberStatus.BANNED, ChatMemberStatus.LEFT)


def address_news(body: str) -> tuple[AddressNews, ...]:
    """What an update says of an address itself: blocked or left, back again, moved. ValueError as `read`."""
    try:
        return _news(_parse(body))
    except _UNLIKE_TELEGRAM as error:
        raise ValueError(f"no update of Telegram's: {type(error).__name__}") from error


def _news(update: Update) -> tuple[AddressNews, ...]:
    if update.my_chat_member is not None:
        return (_membership(update.my_chat_member),)
    message = update.message
    if message is not None and message.migrate_to_chat_id is not None:
        return (AddressNews(str(message.chat.id), Became.MOVED, str(message.migrate_to_chat_id)),)
    return ()


def _membership(change: ChatMemberUpdated) -> AddressNews:
    gone = change.new_chat_member.status in _GONE
    return AddressNews(str(change.chat.id), Became.GONE if gone else Became.BACK)
