"""What the room may have done, as values: it does none of it. Awaiting an action hands it out of the room and goes on with
its outcome, so that a conversation is a plain coroutine that whoever carries it out drives by hand (see server/api).

An action that is refused comes back as `Refused`. Keys are made from the message's own, so that one that comes again
counts once.
"""

from __future__ import annotations

from collections.abc import Generator, Mapping
from dataclasses import dataclass
from datetime import timedelta
from typing import Any, Generic, Protocol, TypeVar

from server.conversation.telling.answer import (
    AnsweredAnswer,
    ChangeAnswer,
    FollowersAnswer,
    JoinAnswer,
    NotedAnswer,
)

__all__ = [
    "Action",
    "Bound",
    "Call",
    "answer",
    "call_for_help",
    "change",
    "check_in",
    "confirm",
    "draw",
    "followers",
    "group",
    "join",
    "keep_photo",
]
__all__ += ["race_fact", "take_back"]

T = TypeVar("T")


class Bound(Protocol):
    """Whether a group chat is told now what concerns the whole crew."""

    @property
    def tell(self) -> bool:
        """Whether it is."""

    @property
    def event_name(self) -> str:
        """Of which event."""


@dataclass(frozen=True)  # no slots: Python sets the type argument on what it makes
class Action(Generic[T]):
    """One thing to be done: the call of the server that does it, what stands in its path, and its body."""

    call: str
    path: Mapping[str, str]
    body: Mapping[str, Any]

    def __await__(self) -> Generator[Action[Any], T, T]:
        outcome = yield self
        return outcome


Call = Action[Any]


async def check_in(event: str, runner: str, body: Mapping[str, Any]) -> NotedAnswer:
    """One report about a runner."""
    return await Action[NotedAnswer]("check_in", {"event": event, "runner": runner}, body)


async def race_fact(event: str, body: Mapping[str, Any]) -> NotedAnswer:
    """One race-level fact."""
    return await Action[NotedAnswer]("race_fact", {"event": event}, body)


async def change(event: str, body: Mapping[str, Any]) -> ChangeAnswer:
    """A change of the plan, or with `dry_run` what it would be. Refused 'not_now', in words, for what can't be."""
    return await Action[ChangeAnswer]("change", {"event": event}, body)


async def call_for_help(event: str, body: Mapping[str, Any]) -> NotedAnswer:
    """A call for help that names none of the many runners it may be for."""
    return await Action[NotedAnswer]("call_for_help", {"event": event}, body)


async def take_back(
    entry: str, key: str, within: timedelta | None = None, *, meant: str | None = None
) -> NotedAnswer:
    """What an entry said no longer counts; Refused 'too_late' for one that counts and came longer ago than `within`.
    `meant`: the runner whom a call for help was for instead."""
    body = {"key": key, "within_s": within.total_seconds() if within is not None else None, "meant": meant}
    return await Action[NotedAnswer]("take_back", {"entry": entry}, body)


async def confirm(entry: str, key: str) -> NotedAnswer:
    """An unconfirmed entry counts."""
    return await Action[NotedAnswer]("confirm", {"entry": entry}, {"key": key})


async def answer(event: str, short: int, word: str, words: str, key: str) -> AnsweredAnswer:
    """Answer a notice."""
    body = {"answer": word, "words": words, "key": key}
    return await Action[AnsweredAnswer]("answer", {"event": event, "short": str(short)}, body)


async def keep_photo(event: str, runner: str, of: str | None, body: Mapping[str, Any]) -> NotedAnswer:
    """Keep the photo of this message, and pass it on with its words; `of`: the runner who may be on it."""
    path = {"event": event, "runner": runner} | ({"of": of} if of else {})
    return await Action[NotedAnswer]("keep_photo", path, body)


async def group(event: str, chat: str, *, tell: bool) -> Bound:
    """Have a group chat told what concerns all, or no longer."""
    return await Action[Bound]("group", {"event": event}, {"address": chat, "tell": tell})


async def followers(event: str, runner: str, *, on: bool) -> FollowersAnswer:
    """Give the runner's link for followers, the one before ends; or take it back."""
    return await Action[FollowersAnswer]("followers", {"event": event, "runner": runner}, {"on": on})


async def join(code: str, *, preview: bool) -> JoinAnswer:
    """Look at an invitation (`preview`), or take it. Refused 'no_such_code' for one that does not hold."""
    return await Action[JoinAnswer]("join", {}, {"code": code, "preview": preview})


async def draw(event: str, runner: str) -> bytes:
    """The profile as PNG; it changes nothing, but takes as long as drawing does."""
    return await Action[bytes]("draw", {"event": event, "runner": runner}, {})
