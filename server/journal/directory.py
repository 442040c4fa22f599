"""The part of the journal's door that is about people: who they are, where they are reached, what lets them in."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from datetime import datetime, timedelta

from sqlalchemy.ext.asyncio import AsyncConnection

from server.event.model import Person
from server.journal import deliveries, dialogues, groups, people, reports, tokens
from server.journal.errors import InvitationError
from server.journal.store import Store
from server.journal.values import Address, CrewGroup, Invitation, PersonPart, Spoken, TokenInfo

__all__ = ["PeopleDoor"]


class PeopleDoor:
    """Methods of `Journal`; its promises hold here too."""

    def __init__(self, store: Store) -> None:
        self._store = store

    async def person(self, person: str) -> Person | None:
        """A person as last loaded."""
        return await self._store.reading(lambda c: people.person(c, person))

    async def parts(self, person: str) -> tuple[PersonPart, ...]:
        """Every part of a person in every event."""
        return await self._store.reading(lambda c: people.parts(c, person))

    async def person_at(self, channel: str, address: str) -> str | None:
        """Whose address this is; None for a stranger."""
        return await self._store.reading(lambda c: people.person_at(c, channel, address))

    async def addresses(self, person: str) -> tuple[Address, ...]:
        """Where a person can be reached, in the order in which to try; blocked ones last."""
        return await self._store.reading(lambda c: people.addresses(c, person, self._store.channels))

    async def bind(self, person: str, channel: str, address: str, now: datetime) -> None:
        """Bind an address to a person and call it usable; also when a browser session begins (channel 'web').

        Notices the person could not be given and that are still of use are queued there. ClashError: it is bound
        to somebody else.
        """

        async def work(c: AsyncConnection) -> None:
            await people.bind(c, person, channel, address, now)
            await deliveries.owe_again(c, person, channel, address, now)

        await self._store.writing(work)

    async def unbind(self, channel: str, address: str) -> None:
        """Forget an address (the person left, a browser session ended)."""

        async def work(c: AsyncConnection) -> None:
            await people.unbind(c, channel, address)
            await dialogues.forget(c, channel, address)

        await self._store.writing(work)

    async def spoken(self, channel: str, address: str, place: str, now: datetime) -> Spoken:
        """What was spoken of with that address there in the last 24 hours."""
        return await self._store.reading(lambda c: dialogues.known(c, channel, address, place, now))

    async def turn(self, sender: str, key: str) -> str | None:
        """What a message that did something was answered with; None for one that is new, or did nothing."""
        return await self._store.reading(lambda c: dialogues.turn(c, sender, key))

    async def keep_turn(
        self, spoken: Spoken, now: datetime, sender: str = "", key: str = "", reply: str | None = None
    ) -> bool:
        """Keep what is spoken of now and, with a `reply`, what the message was answered with, both or neither. False
        where another server has kept something since `spoken` was read: that stays."""

        async def work(c: AsyncConnection) -> bool:
            if reply is not None:
                await dialogues.keep_turn(c, sender, key, reply, now)
            return await dialogues.keep(c, spoken, now)

        return await self._store.writing(work)

    async def address_gone(self, channel: str, address: str, now: datetime) -> None:
        """The channel says that this address takes nothing more, until heard from: what waits for it goes to
        the person's next channel at the next claim."""
        await self._store.writing(lambda c: people.block(c, channel, address, now))

    async def address_moved(self, channel: str, address: str, moved_to: str) -> None:
        """A chat has a new address: bind it in place of the old, and send what waits there."""
        await self._store.writing(lambda c: reports.move(c, channel, address, moved_to))

    async def heard_from(self, channel: str, address: str, now: datetime) -> None:
        """A message came from there: if it was blocked it no longer is, and what is owed is queued there."""
        if not await self._store.reading(lambda c: people.is_blocked(c, channel, address)):
            return

        async def work(c: AsyncConnection) -> None:
            person = await people.person_at(c, channel, address)
            await people.unblock(c, channel, address)
            if person is not None:
                await deliveries.owe_again(c, person, channel, address, now)

        await self._store.writing(work)

    async def here_again(self, channel: str, address: str, now: datetime) -> None:
        """The address takes messages again: what waits until it is tried next is due now, but for what is held until
        later."""
        await self._store.writing(lambda c: deliveries.here_again(c, channel, address, now))

    async def bind_group(self, event: str, channel: str, address: str, by: str, now: datetime) -> CrewGroup:
        """From now on this chat is told what concerns the whole crew of an event; again changes nothing."""
        return await self._store.writing(lambda c: groups.bind(c, event, channel, address, by, now))

    async def unbind_group(self, event: str, channel: str, address: str) -> bool:
        """This chat is told nothing more of the event; False if it was not."""
        return await self._store.writing(lambda c: groups.unbind(c, event, channel, address))

    async def groups(self, event: str) -> tuple[CrewGroup, ...]:
        """The chats of an event's whole crew, in the order in which they were bound."""
        return await self._store.reading(lambda c: groups.of_event(c, event))

    async def secret(self, name: str, make: Callable[[], str]) -> str:
        """A secret of this installation's own: the one kept under that name, else made now and kept. Of servers that make
        it at once one is first, and all get that one."""
        async with self._store.write() as c:
            return await tokens.kept_secret(c, name, make)

    async def issue_token(
        self,
        person: str | None,
        device: str,
        scopes: Iterable[str],
        now: datetime,
        expires_at: datetime | None = None,
    ) -> str:
        """Make a token; returns its secret, which is stored hashed only and cannot be shown again."""
        return await self._store.writing(
            lambda c: tokens.issue(c, person, device, frozenset(scopes), now, expires_at)
        )

    async def check_token(self, secret: str, now: datetime) -> TokenInfo | None:
        """Whose token this is; None if unknown, revoked, or expired (from `expires_at` on)."""
        return await self._store.reading(lambda c: tokens.check(c, secret, now))

    async def tokens(self, person: str | None = None) -> tuple[TokenInfo, ...]:
        """Tokens not revoked, of one person or all."""
        return await self._store.reading(lambda c: tokens.listing(c, person))

    async def revoke_token(self, token_id: str, now: datetime) -> bool:
        """Revoke a token by id; False if it was not valid before."""
        return await self._store.writing(lambda c: tokens.revoke(c, token_id, now))

    async def invite(self, person: str, event: str, by: str, now: datetime, ttl: timedelta) -> str:
        """Make a one-use code for a person in an event, good until (not including) now + ttl; any earlier
        unused one of theirs is revoked. 12 characters, also fit for a start link; stored hashed only."""
        return await self._store.writing(lambda c: tokens.invite(c, person, event, by, now, ttl))

    async def invitations(self, event: str) -> tuple[Invitation, ...]:
        """Every invitation to an event, newest first."""
        return await self._store.reading(lambda c: tokens.invitations(c, event))

    async def preview(self, code: str, guesser: str, now: datetime) -> Invitation:
        """What a code opens, without using it. `guesser` names whoever asks (channel and address, or IP) for
        the limit of 5 wrong codes in 15 minutes, which keeps no right one out. Raises InvitationError,
        TooManyGuessesError."""
        return tokens.opened(await self._store.writing(lambda c: tokens.look(c, code, guesser, now)))

    async def redeem(self, code: str, channel: str, address: str, guesser: str, now: datetime) -> Invitation:
        """Use a code up: bind the address to the person it is for. Raises as `preview`, or ClashError."""

        async def work(c: AsyncConnection) -> Invitation | InvitationError:
            found = await tokens.look(c, code, guesser, now)
            if isinstance(found, Invitation):
                await tokens.use(c, found.id, now)
                await people.bind(c, found.person, channel, address, now)
                await deliveries.owe_again(c, found.person, channel, address, now)
            return found

        return tokens.opened(await self._store.writing(work))

    async def revoke_invitation(self, invitation_id: str, now: datetime) -> bool:
        """Revoke an unused invitation; False if it was used, revoked or unknown."""
        return await self._store.writing(lambda c: tokens.revoke_invitation(c, invitation_id, now))
