"""The pages' own paths, beside the API: board, joining, chat, the stream of news, the profile, files."""

from __future__ import annotations

from collections.abc import AsyncIterator

from aiohttp import web


def add_to(app: web.Application) -> None:
    """Add every page to the server."""


async def delivering(app: web.Application) -> AsyncIterator[None]:
    """Deliver what is owed over the web to open pages, for as long as the server runs."""
    yield
