"""Tokens and invitations: secrets are drawn here, shown once, and kept as SHA-256 only.

Plain SHA-256 is enough: a token has 256 random bits, a code 60, and wrong codes are counted. What the server itself must
show again, such as its key to push services, is kept as it is (`kept_secret`).
"""

from __future__ import annotations

import hashlib
import json
import secrets
import uuid
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import bindparam, delete, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import tables as t
from server.journal.codec import load_part
from server.journal.errors import InvitationError, TooManyGuessesError, UnknownError
from server.journal.store import insert
from server.journal.values import Invitation, TokenInfo

__all__ = [
    "check",
    "invitations",
    "invite",
    "issue",
    "kept_secret",
    "listing",
    "look",
    "opened",
    "revoke",
    "revoke_invitation",
    "use",
]

GUESSES = 5
GUESS_TIME = timedelta(minutes=15)

# Without I, L, O, U (Crockford's base 32): what is read out over a bad line is heard right.
_ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
_ALIKE = str.maketrans("OIL", "011", "- \t\r\n")


def _hash(secret: str) -> str:
    return hashlib.sha256(secret.encode()).hexdigest()


def _plain(code: str) -> str:
    return code.upper().translate(_ALIKE)


async def issue(
    c: AsyncConnection,
    person: str | None,
    device: str,
    scopes: frozenset[str],
    now: datetime,
    expires_at: datetime | None,
) -> str:
    """See `Journal.issue_token`."""
    secret = secrets.token_urlsafe(32)
    if person is not None and await c.scalar(select(t.person.c.id).where(t.person.c.id == person)) is None:
        raise UnknownError(f"there is no person {person!r}", "person", "load an event that names them first")
    await c.execute(
        insert(c, t.token).values(
            id=uuid.uuid4().hex[:12],
            sha256=_hash(secret),
            person=person,
            device=device,
            scopes=json.dumps(sorted(scopes)),
            created_at=now,
            expires_at=expires_at,
        )
    )
    return secret


def _info(row: Any) -> TokenInfo:
    return TokenInfo(
        row.id, row.person, row.device, frozenset(json.loads(row.scopes)), row.created_at, row.expires_at
    )


_CHECK = select(t.token).where(t.token.c.sha256 == bindparam("secret"), t.token.c.revoked_at.is_(None))


async def check(c: AsyncConnection, secret: str, now: datetime) -> TokenInfo | None:
    """See `Journal.check_token`."""
    row = (await c.execute(_CHECK, {"secret": _hash(secret)})).one_or_none()
    if row is None or (row.expires_at is not None and now >= row.expires_at):
        return None
    return _info(row)


async def listing(c: AsyncConnection, person: str | None) -> tuple[TokenInfo, ...]:
    """See `Journal.tokens`."""
    query = select(t.token).where(t.token.c.revoked_at.is_(None)).order_by(t.token.c.created_at, t.token.c.id)
    if person is not None:
        query = query.where(t.token.c.person == person)
    return tuple(_info(row) for row in await c.execute(query))


async def revoke(c: AsyncConnection, token_id: str, now: datetime) -> bool:
    """See `Journal.revoke_token`."""
    done = await c.execute(
        update(t.token).where(t.token.c.id == token_id, t.token.c.revoked_at.is_(None)).values(revoked_at=now)
    )
    return done.rowcount == 1


async def invite(c: AsyncConnection, person: str, event: str, by: str, now: datetime, ttl: timedelta) -> str:
    """See `Journal.invite`."""
    p, i = t.part.c, t.invitation.c
    if await c.scalar(select(p.person).where(p.person == person, p.event == event).limit(1)) is None:
        raise UnknownError(
            f"{person!r} has no part in {event!r}",
            "person",
            "give them a part in the event file, and load it",
        )
    await c.execute(
        update(t.invitation)
        .where(i.person == person, i.event == event, i.used_at.is_(None), i.revoked_at.is_(None))
        .values(revoked_at=now)
    )
    code = "".join(secrets.choice(_ALPHABET) for _ in range(12))
    await c.execute(
        insert(c, t.invitation).values(
            id=uuid.uuid4().hex[:12],
            sha256=_hash(code),
            person=person,
            event=event,
            by=by,
            made_at=now,
            expires_at=now + ttl,
        )
    )
    return code


async def look(c: AsyncConnection, code: str, guesser: str, now: datetime) -> Invitation | InvitationError:
    """What a code opens, or why nothing; a wrong code is counted against the guesser, so this must commit.

    The limit is on guessing: a right code opens whoever's address has guessed how often, as a whole camp may share one.
    60 random bits are not guessed, whatever is answered to those that are wrong.
    """
    row = (
        await c.execute(
            select(t.invitation).where(t.invitation.c.sha256 == _hash(_plain(code))).with_for_update()
        )
    ).one_or_none()
    reason = (
        "unknown"
        if row is None
        else "revoked"
        if row.revoked_at
        else "used"
        if row.used_at
        else "expired"
        if now >= row.expires_at
        else ""
    )
    if row is not None and not reason:
        return await _invitation(c, row)
    await _refuse_guesser(c, guesser, now)
    await _count_guess(c, guesser, now)
    return InvitationError(reason)


def opened(found: Invitation | InvitationError) -> Invitation:
    """The invitation, or the error raised: apart from `look`, so that the count is kept."""
    if isinstance(found, InvitationError):
        raise found
    return found


async def _refuse_guesser(c: AsyncConnection, guesser: str, now: datetime) -> None:
    row = (
        await c.execute(select(t.guess).where(t.guess.c.guesser == guesser).with_for_update())
    ).one_or_none()
    if row is not None and row.wrong >= GUESSES and now < row.since + GUESS_TIME:
        raise TooManyGuessesError((row.since + GUESS_TIME - now).total_seconds())


async def _count_guess(c: AsyncConnection, guesser: str, now: datetime) -> None:
    g = t.guess.c
    await c.execute(delete(t.guess).where(g.since <= now - GUESS_TIME))
    first = insert(c, t.guess).values(guesser=guesser, since=now, wrong=1)
    await c.execute(first.on_conflict_do_update(index_elements=["guesser"], set_={"wrong": g.wrong + 1}))


async def _invitation(c: AsyncConnection, row: Any) -> Invitation:
    p, v = t.part.c, t.event_version.c
    bodies = await c.scalars(
        select(p.body).where(p.person == row.person, p.event == row.event).order_by(p.kind, p.runner)
    )
    person = await c.scalar(select(t.person.c.name).where(t.person.c.id == row.person))
    event = await c.scalar(select(v.name).where(v.event == row.event).order_by(v.version.desc()).limit(1))
    return Invitation(
        id=row.id,
        person=row.person,
        person_name=person or "",
        event=row.event,
        event_name=event or "",
        parts=tuple(load_part(body) for body in bodies),
        made_at=row.made_at,
        expires_at=row.expires_at,
        used_at=row.used_at,
        revoked_at=row.revoked_at,
    )


async def invitations(c: AsyncConnection, event: str) -> tuple[Invitation, ...]:
    """See `Journal.invitations`."""
    i = t.invitation.c
    rows = (
        await c.execute(select(t.invitation).where(i.event == event).order_by(i.made_at.desc(), i.id))
    ).all()
    return tuple([await _invitation(c, row) for row in rows])


async def use(c: AsyncConnection, invitation: str, now: datetime) -> None:
    """Use an invitation up."""
    await c.execute(update(t.invitation).where(t.invitation.c.id == invitation).values(used_at=now))


async def revoke_invitation(c: AsyncConnection, invitation: str, now: datetime) -> bool:
    """See `Journal.revoke_invitation`."""
    i = t.invitation.c
    done = await c.execute(
        update(t.invitation)
        .where(i.id == invitation, i.used_at.is_(None), i.revoked_at.is_(None))
        .values(revoked_at=now)
    )
    return done.rowcount == 1


async def kept_secret(c: AsyncConnection, name: str, make: Callable[[], str]) -> str:
    """See `Journal.secret`."""
    k = t.kept_secret
    found: str | None = await c.scalar(select(k.c.value).where(k.c.name == name))
    if found is not None:
        return found
    await c.execute(insert(c, k).values(name=name, value=make()).on_conflict_do_nothing())
    kept: str = (await c.execute(select(k.c.value).where(k.c.name == name))).scalar_one()
    return kept
