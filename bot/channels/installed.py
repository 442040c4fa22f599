"""Which channels an installation has, by its settings, and which of them run in the server's own process."""

from __future__ import annotations

from collections.abc import Mapping

from bot.channels.base import CHANNELS
from server.settings import Settings, SettingsError

__all__ = ["TELEGRAM_HOOK", "apart", "channel_settings", "channels_of", "here"]

TELEGRAM_HOOK = "/hooks/telegram"


def channel_settings(settings: Settings) -> Mapping[str, Mapping[str, str]]:
    """The channels these settings can run, each with its own settings; none that lacks what it needs."""
    found: dict[str, Mapping[str, str]] = {}
    if settings.telegram_token:
        hook = settings.telegram_webhook_secret
        found["telegram"] = {
            "token": settings.telegram_token.get_secret_value(),
            "base_url": settings.telegram_base_url.rstrip("/"),
            "webhook_secret": hook.get_secret_value(),
            "webhook_url": settings.public_url.rstrip("/") + TELEGRAM_HOOK
            if hook and settings.public_url
            else "",
        }
    if settings.smtp_host:
        found["email"] = {
            "host": settings.smtp_host,
            "port": str(settings.smtp_port),
            "user": settings.smtp_user,
            "password": settings.smtp_password.get_secret_value(),
            "tls": settings.smtp_tls,
            "from": settings.mail_from,
        }
    if settings.webhook_secret:
        found["webhook"] = {"secret": settings.webhook_secret.get_secret_value()}
    if settings.text_gateway:
        found["text"] = {
            "url": settings.text_gateway_url,
            "secret": settings.text_gateway_secret.get_secret_value(),
        }
    if settings.push_contact:
        found["push"] = {"contact": settings.push_contact}
    return found


def apart(settings: Settings) -> frozenset[str]:
    """The channels that `stilepost bot` runs elsewhere. SettingsError for a name that is none."""
    named = frozenset(settings.channels_apart.replace(",", " ").split())
    for name in sorted(named - frozenset(CHANNELS)):
        there_are = ", ".join(sorted(CHANNELS))
        raise SettingsError(f"setting channels_apart: no channel is called '{name}'. There are: {there_are}.")
    if "push" in named:
        raise SettingsError(
            "setting channels_apart: push runs in the server, which keeps its key. Take it out."
        )
    return named


def here(settings: Settings, push_key: str = "") -> Mapping[str, Mapping[str, str]]:
    """The channels that run in the server's own process. `push_key`: the private key that the server keeps for push, which
    does not run without."""
    elsewhere = apart(settings)
    found = {name: its for name, its in channel_settings(settings).items() if name not in elsewhere}
    if "push" in found:
        found["push"] = {**found["push"], "key": push_key}
    return found if push_key else {name: its for name, its in found.items() if name != "push"}


def channels_of(settings: Settings) -> frozenset[str]:
    """Every channel over which this installation reaches people, wherever it runs; the page is not among them."""
    return frozenset(channel_settings(settings)) | apart(settings)
