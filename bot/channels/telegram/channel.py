"""Telegram as a channel: the real python-telegram-bot behind `base.Channel`."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from contextlib import suppress

import structlog
from telegram import (
    BotCommand,
    BotCommandScope,
    BotCommandScopeAllGroupChats,
    BotCommandScopeAllPrivateChats,
    BotCommandScopeChat,
    ReplyParameters,
)
from telegram.error import EndPointNotFound, InvalidToken

from bot.channels.addresses import AddressNews, WrongSettingsError
from bot.channels.base import Delivery, Incoming, Outcome, RawUpdate, Reply, Sent, StoreUpdates
from bot.channels.telegram import reading
from bot.channels.telegram.api import Timeouts, make_bot
from bot.channels.telegram.listening import Backoff, Hook, poll, watch_webhook
from bot.channels.telegram.outcomes import detail_of
from bot.channels.telegram.sending import Parcel, send
from server.conversation.telling.menu import IN_GROUPS, Command, menu_for
from server.sentences import fallback, languages

__all__ = ["Telegram"]

log = structlog.get_logger("telegram")

_TOKEN = re.compile(r"(\d{1,20}):[A-Za-z0-9_-]+")


class Telegram:
    """One bot. Given a `hook` it has Telegram call it, otherwise it asks."""

    name = reading.NAME

    def __init__(
        self,
        token: str,
        base_url: str = "",
        *,
        hook: Hook | None = None,
        timeouts: Timeouts | None = None,
        backoff: Callable[[], Backoff] = Backoff,
    ) -> None:
        """Nothing is sent yet. Raises WrongSettingsError for a token that can't be one."""
        found = _TOKEN.fullmatch(token)
        if found is None:
            raise WrongSettingsError("telegram_token is no bot token: it reads like 123456:AbC-dEf")
        self._timeouts = timeouts or Timeouts()
        self._bot = make_bot(token, base_url, self._timeouts)
        self._token = token
        self._hook = hook
        self._backoff = backoff
        self._me = reading.Me(int(found[1]))

    def __repr__(self) -> str:
        return f"Telegram({'webhook' if self._hook else 'polling'})"

    async def open(self) -> None:
        """Learn our own user name, without which a group can't address us, and show the menus of strangers
        and groups. WrongSettingsError for a refused token."""
        await self.ask_username()
        # The first is for phones in any language, the others for those in one of ours.
        for language, code in ((fallback(), ""), *((x, x) for x in languages() if x != fallback())):
            await self._show(menu_for((), language), BotCommandScopeAllPrivateChats(), code)
            await self._show(menu_for(IN_GROUPS, language), BotCommandScopeAllGroupChats(), code)

    async def ask_username(self) -> str:
        """Ask Telegram who we are; our user name. Raises as `open`."""
        try:
            me = await self._bot.get_me()
        except (InvalidToken, EndPointNotFound):
            raise WrongSettingsError("Telegram does not know this bot token: check telegram_token") from None
        except Exception as error:
            raise ConnectionError(detail_of(error, self._token)) from None
        self._me = reading.Me(self._me.id, me.username or "")
        return self._me.username

    async def close(self) -> None:
        """Give the connections back."""
        await self._bot.close_connections()

    @property
    def username(self) -> str:
        """Our own user name; empty before `open`."""
        return self._me.username

    async def listen(self, store: StoreUpdates) -> None:
        """See `base.Channel`."""
        if self._hook is not None:
            await watch_webhook(self._bot, store, self._hook, self._backoff())
        else:
            await poll(self._bot, store, self._timeouts.poll_s, self._backoff())

    def read(self, update: RawUpdate) -> tuple[Incoming, ...]:
        """See `base.Channel`."""
        return reading.read(update.body, self._me, update.received_at)

    def addresses(self, update: RawUpdate) -> tuple[AddressNews, ...]:
        """See `addresses.TellsOfAddresses`."""
        return reading.address_news(update.body)

    async def reply(self, to: Incoming, reply: Reply) -> Outcome:
        """See `base.Channel`. A press is acknowledged even when there is nothing to say, since the button
        shows that it waits. In a group the answer hangs under the question."""
        if to.button:
            await self._acknowledge(to)
        if reply.silent:
            return Outcome(Sent.ACCEPTED, "nothing to say")
        under = None
        if to.group and not to.button:
            under = ReplyParameters(int(to.message_key.split(".")[1]), allow_sending_without_reply=True)
        return await self._send(
            Parcel(to.reply_to or to.address, reply.text, reply.buttons, reply.picture, reply.alt, under)
        )

    async def deliver(self, delivery: Delivery) -> Outcome:
        """See `base.Channel`. Telegram has no way through a phone's silence, so urgent ones go as the others."""
        d = delivery
        return await self._send(Parcel(d.address, d.text, d.buttons, d.picture, d.alt))

    async def photo(self, ref: str) -> bytes | None:
        """See `addresses.HasPhotos`."""
        try:
            found = await self._bot.get_file(ref)
            return bytes(await found.download_as_bytearray())
        except Exception as error:
            log.warning("photo not fetched", detail=detail_of(error, self._token))
            return None

    async def _send(self, parcel: Parcel) -> Outcome:
        return await send(self._bot, parcel)

    async def show_menu(self, to: Incoming, parts: Iterable[str], language: str) -> None:
        """See `addresses.HasMenu`."""
        if not to.group:
            await self._show(menu_for(parts, language), BotCommandScopeChat(to.address))

    async def _acknowledge(self, to: Incoming) -> None:
        # 'Query is too old' and the like are harmless: what was pressed has been worked off all the same.
        with suppress(Exception):
            await self._bot.answer_callback_query(to.message_key.removeprefix("q"))

    async def _show(self, commands: Iterable[Command], scope: BotCommandScope, language: str = "") -> None:
        try:
            shown = [BotCommand(c.word, c.says) for c in commands]
            await self._bot.set_my_commands(shown, scope=scope, language_code=language or None)
        except Exception as error:
            log.info("menu not shown", detail=detail_of(error, self._token))
