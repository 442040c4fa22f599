"""Sending one answer or notice to one chat: words first, split where too long, the picture as an extra."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Iterator
from dataclasses import dataclass, replace
from functools import partial

from telegram import (
    InlineKeyboardButton,
    InlineKeyboardMarkup,
    InputFile,
    LinkPreviewOptions,
    Message,
    ReplyParameters,
)

from bot.channels.base import Outcome, Sent
from bot.channels.telegram.api import TokenBot
from bot.channels.telegram.outcomes import outcome_of
from bot.channels.telegram.parcels import CAPTION_MAX, cut, split, units
from server.conversation.telling.message import Rows

__all__ = ["Parcel", "send"]

# A preview would have Telegram fetch our links, which may carry a code.
_NO_PREVIEW = LinkPreviewOptions(is_disabled=True)


_SAYS_NOTHING_OF_THE_WORDS = (Sent.NEVER, Sent.UNKNOWN, Sent.NOT_SENT)
"""Outcomes of a picture after which its words go alone. Should it have arrived all the same, they are there twice."""


@dataclass(frozen=True, slots=True)
class Parcel:
    """What goes to one chat. `under`: the message it answers."""

    address: str
    text: str
    buttons: Rows = ()
    picture: bytes | None = None
    alt: str = ""
    under: ReplyParameters | None = None


async def send(bot: TokenBot, parcel: Parcel) -> Outcome:
    """Send it; the outcome of the words is the outcome. Raises nothing."""
    try:
        chat = int(parcel.address)
    except ValueError:
        return Outcome(Sent.NEVER, "the address is no chat id")
    if parcel.picture is not None and units(parcel.text) <= CAPTION_MAX:
        outcome = await _attempt(
            bot, [_photo(bot, chat, parcel, parcel.text or cut(parcel.alt), _markup(parcel))]
        )
        if outcome.sent not in _SAYS_NOTHING_OF_THE_WORDS:
            return outcome
        return await _attempt(bot, _texts(bot, chat, parcel))
    outcome = await _attempt(bot, _texts(bot, chat, parcel))
    if parcel.picture is None or outcome.sent is not Sent.ACCEPTED:
        return outcome
    extra = await _attempt(bot, [_photo(bot, chat, parcel, cut(parcel.alt), None)])
    if extra.sent is Sent.ACCEPTED:
        return outcome
    return replace(outcome, detail=f"without its picture: {extra.detail}")


Call = Callable[[], Awaitable[Message]]


def _texts(bot: TokenBot, chat: int, parcel: Parcel) -> list[Call]:
    parts = split(parcel.text or parcel.alt)
    return list(_text_calls(bot, chat, parcel, parts))


def _text_calls(bot: TokenBot, chat: int, parcel: Parcel, parts: tuple[str, ...]) -> Iterator[Call]:
    for i, part in enumerate(parts):
        yield partial(
            bot.send_message,
            chat,
            part,
            reply_markup=_markup(parcel) if i == len(parts) - 1 else None,
            reply_parameters=parcel.under if i == 0 else None,
            link_preview_options=_NO_PREVIEW,
        )


def _photo(
    bot: TokenBot, chat: int, parcel: Parcel, caption: str, markup: InlineKeyboardMarkup | None
) -> Call:
    assert parcel.picture is not None
    return partial(
        bot.send_photo,
        chat,
        InputFile(parcel.picture, filename=f"picture.{_ending(parcel.picture)}"),
        caption=caption or None,
        reply_markup=markup,
        reply_parameters=parcel.under,
    )


def _ending(picture: bytes) -> str:
    return "jpg" if picture.startswith(b"\xff\xd8") else "png"


def _markup(parcel: Parcel) -> InlineKeyboardMarkup | None:
    if not parcel.buttons:
        return None
    return InlineKeyboardMarkup(
        [[InlineKeyboardButton(b.label, callback_data=b.data) for b in row] for row in parcel.buttons]
    )


async def _attempt(bot: TokenBot, calls: list[Call]) -> Outcome:
    """Make the calls one after the other, each once. Telegram's id of the last message is the reference."""
    ref = ""
    for call in calls:
        try:
            message = await call()
        except Exception as error:
            outcome = outcome_of(error, bot.token)
            if ref and outcome.sent in (Sent.NOT_SENT, Sent.LATER):
                # Its beginning is there already, so that another attempt repeats it.
                return replace(outcome, sent=Sent.UNKNOWN, ref=ref)
            return outcome
        ref = str(message.message_id)
    return Outcome(Sent.ACCEPTED, ref=ref) if ref else Outcome(Sent.NEVER, "there is nothing to send")
