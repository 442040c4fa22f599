"""Which channels an installation has, by its settings."""

from __future__ import annotations

from collections.abc import Mapping

from server.settings import Settings

__all__ = ["TELEGRAM_HOOK", "channel_settings"]

TELEGRAM_HOOK = "/hooks/telegram"


def channel_settings(settings: Settings) -> Mapping[str, Mapping[str, str]]:
    """The channels this installation runs, each with its own settings; none that lacks what it needs."""
    found: dict[str, Mapping[str, str]] = {}
    if settings.telegram_token:
        hook = settings.telegram_webhook_secret
        found["telegram"] = {
            "token": str(settings.telegram_token),
            "base_url": settings.telegram_base_url.rstrip("/"),
            "webhook_secret": str(hook),
            "webhook_url": settings.public_url.rstrip("/") + TELEGRAM_HOOK
            if hook and settings.public_url
            else "",
        }
    if settings.smtp_host:
        found["email"] = {
            "host": settings.smtp_host,
            "port": str(settings.smtp_port),
            "user": settings.smtp_user,
            "password": str(settings.smtp_password),
            "tls": settings.smtp_tls,
            "from": settings.mail_from,
        }
    if settings.webhook_secret:
        found["webhook"] = {"secret": str(settings.webhook_secret)}
    if settings.text_gateway:
        found["text"] = {"url": settings.text_gateway_url, "secret": str(settings.text_gateway_secret)}
    return found
