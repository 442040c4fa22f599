"""What channels have in common over which nothing comes in: they listen to nothing and answer nothing."""

from __future__ import annotations

from bot.channels.base import Incoming, Outcome, RawUpdate, Reply, Sent, StoreUpdates

__all__ = ["OnlyOut"]


class OnlyOut:
    """The incoming half of `base.Channel` for a channel that only sends."""

    async def listen(self, store: StoreUpdates) -> None:
        """Returns at once."""

    def read(self, update: RawUpdate) -> tuple[Incoming, ...]:  # noqa: ARG002 - the channel's signature
        """Nothing comes in."""
        return ()

    async def reply(self, to: Incoming, reply: Reply) -> Outcome:  # noqa: ARG002 - the channel's signature
        """Nothing comes in, so nothing can be answered."""
        return Outcome(Sent.NEVER, "this channel only goes out")
