"""What tests of a worker need at hand: what was sent, what is done, an update as Telegram gives it, a broken channel."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from datetime import timedelta
from typing import Any

from bot.channels.base import Delivery, Outcome, Sent
from bot.channels.outgoing import OnlyOut
from bot.worker import Worker
from tests.channels import standin as at
from tests.channels.conftest import EVENT, Server
from tests.channels.standin import StandIn

MakeWorker = Callable[..., Awaitable[Worker]]


def texts(standin: StandIn, chat: str = "41") -> list[str]:
    """What was sent to a chat."""
    return [call.text for call in standin.sent if call.chat == chat]


async def all_done(server: Server) -> bool:
    """Whether every stored update is worked off."""
    return await server.journal.waiting() == 0


def at_message(update_id: int, text: str, user: int = 41) -> str:
    """The body of a stored update."""
    import json

    chat = {"id": user, "type": "private", "first_name": "x"}
    message = {"message_id": 101, "date": at.BEGINS_AT, "chat": chat, "from": at.person(user), "text": text}
    return json.dumps({"update_id": update_id, "message": message})


async def states(server: Server, short: int) -> list[tuple[str, str]]:
    """Channel and state of each delivery of a notice."""
    return [(d.channel, d.state.value) for d in await server.journal.deliveries(EVENT, short)]


async def states_are(server: Server, short: int, wanted: list[tuple[str, str]]) -> bool:
    """Whether a notice's deliveries stand so."""
    return await states(server, short) == wanted


def membership(status: str, user: int = 41) -> dict[str, Any]:
    """Our membership in a private chat, as Telegram tells it."""
    us = {"id": at.BOT_ID, "is_bot": True, "first_name": "us"}
    return {
        "chat": {"id": user, "type": "private", "first_name": "x"},
        "from": at.person(user),
        "date": at.BEGINS_AT,
        "old_chat_member": {"status": "member", "user": us},
        "new_chat_member": {
            "status": status,
            "user": us,
            **({"until_date": 0} if status == "kicked" else {}),
        },
    }


class Broken(OnlyOut):
    """A channel with a fault."""

    name = "email"
    check_every = timedelta(seconds=0.05)

    def __init__(self) -> None:
        self.up = True
        self.found_down = 0
        self.raises: Exception | None = RuntimeError("a fault")
        self.delivered: list[Delivery] = []

    async def deliver(self, delivery: Delivery) -> Outcome:
        """Fails, or says what it was told to."""
        self.delivered.append(delivery)
        if self.raises:
            raise self.raises
        return Outcome(Sent.ACCEPTED)

    async def check(self) -> bool:
        """As told."""
        self.found_down += not self.up
        return self.up
