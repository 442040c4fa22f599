"""How often one address may guess: a sliding window over wrong tokens, in this process's memory.

Wrong invitation codes are counted by the journal, among all servers; wrong tokens only cost a look-up, and
256 random bits cannot be guessed, so that a window per process is enough.
"""

from __future__ import annotations

from collections import OrderedDict, deque
from datetime import datetime, timedelta

WINDOW = timedelta(minutes=15)
ADDRESSES_MAX = 10_000


class Guesses:
    """Counts wrong guesses per address. Old addresses are forgotten, so that memory stays bounded."""

    def __init__(self, allowed: int) -> None:
        self._allowed = allowed
        self._wrong: OrderedDict[str, deque[datetime]] = OrderedDict()

    def wrong(self, address: str, now: datetime) -> None:
        """One more wrong guess from there."""
        times = self._wrong.setdefault(address, deque(maxlen=self._allowed))
        times.append(now)
        self._wrong.move_to_end(address)
        while len(self._wrong) > ADDRESSES_MAX:
            self._wrong.popitem(last=False)

    def wait(self, address: str, now: datetime) -> timedelta:
        """How long that address must wait before its next guess is looked at; zero if not at all."""
        times = self._wrong.get(address)
        if times is None or len(times) < self._allowed:
            return timedelta(0)
        return max(timedelta(0), times[0] + WINDOW - now)
