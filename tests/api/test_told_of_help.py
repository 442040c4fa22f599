"""Whom a call for help names as told: those whom a channel reaches, and nobody else."""

from __future__ import annotations

from datetime import timedelta

from tests.api.conftest import Running
from tests.api.test_little_heard import FIRST, ask, running


async def _joins(server: Running, person: str) -> None:
    now = server.clock.now()
    code = await server.parts.journal.invite(person, "first", "test", now, timedelta(hours=1))
    await server.parts.journal.redeem(code, "web", f"s-{person}", person, now)


async def test_who_has_not_joined_is_not_named(sqlite_url: str) -> None:
    """Ana never opened her invitation: Maren must not lie there counting on her."""
    async with running(
        sqlite_url, FIRST.replace("@points@", "").replace("@drives@", "").replace("@meetings@", "")
    ) as first:
        first.clock.advance(timedelta(hours=1))
        said = await ask(first, "i have fallen, help", "maren")
        assert "has reached NOBODY: nobody is connected. Please telephone." in said
        assert "Ana" not in said
        await _joins(first, "dad")
        first.clock.advance(timedelta(minutes=20))
        said = await ask(first, "help, i can't walk", "maren")
        assert "Your words have gone to your crew and safety contact: Dad." in said
