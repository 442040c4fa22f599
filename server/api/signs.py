"""This server's signs of life: written again and again, and whenever somebody asks how it is, as reading alone proves
nothing of a disk that is full."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta

import structlog

from server.journal import AwayError, Journal
from server.log import broke

__all__ = ["LifeSigns"]

log = structlog.get_logger("signs")

FRESH = timedelta(seconds=1)
"""A sign so young stands for one that would be written now: whoever asks all the time writes no more for that."""
WITHIN_S = 5.0


class LifeSigns:
    """Writes signs of life, and says why the last could not be written."""

    def __init__(self, journal: Journal) -> None:
        self._journal = journal
        self._writing = asyncio.Lock()
        self._last: datetime | None = None
        self.trouble = ""

    async def write(self, now: datetime) -> str:
        """Write one, unless that has just been tried; '' if it is written, else why not: 'busy' (locked), 'full',
        'read-only', 'away'."""
        async with self._writing:
            if self._last is None or not timedelta(0) <= now - self._last < FRESH:
                before, self.trouble = self.trouble, await self._trouble(now)
                self._last = now
                if self.trouble and self.trouble != before:
                    log.error(
                        "!!! NOTHING CAN BE WRITTEN: REPORTS AND ALARMS ARE REFUSED !!!", why=self.trouble
                    )
                if before and not self.trouble:
                    log.warning("can be written again", was=before)
            return self.trouble

    async def _trouble(self, now: datetime) -> str:
        try:
            async with asyncio.timeout(WITHIN_S):
                await self._journal.sign_of_life(now)
        except AwayError as error:
            return error.why
        except TimeoutError:
            return "away"
        except Exception as error:
            broke(log, "no sign of life", error)
            return "away"
        return ""
