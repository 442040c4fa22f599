"""Addresses, tokens, invitations: whose is what, until when, and what a stranger learns."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta

import pytest

from server.journal import Address, ClashError, InvitationError, Journal, TooManyGuessesError, UnknownError
from server.journal.people import order
from server.watch.notice import Notice

SECOND = timedelta(seconds=1)
DAY = timedelta(days=1)


@pytest.mark.parametrize(
    ("wish", "channels", "expected"),
    [
        ((), None, ["telegram", "email", "web"]),
        (("web", "email"), None, ["web", "email", "telegram"]),
        (("email",), frozenset({"email", "web"}), ["email", "web"]),
        (("sms",), frozenset(), []),
    ],
)
def test_order(wish: tuple[str, ...], channels: frozenset[str] | None, expected: list[str]) -> None:
    """As wished first, then by age with the browser last, and only what this installation can send over."""
    found = [Address(c, "x", "ana", None) for c in ("web", "telegram", "email")]
    assert [a.channel for a in order(found, wish, channels)] == expected


async def test_an_address_belongs_to_one_person(loaded: Journal, start: datetime) -> None:
    """Binding again is harmless, somebody else's address is refused, and unbinding frees it."""
    await loaded.bind("ana", "telegram", "111", start)
    with pytest.raises(ClashError, match="already belongs"):
        await loaded.bind("jonas", "telegram", "111", start)
    with pytest.raises(UnknownError, match="nobody"):
        await loaded.bind("nobody", "telegram", "9", start)
    assert [(a.channel, a.address) for a in await loaded.addresses("ana")] == [
        ("telegram", "111"),
        ("email", "ana@example.org"),
    ]
    await loaded.unbind("telegram", "111")
    assert await loaded.person_at("telegram", "111") is None


async def test_tokens(loaded: Journal, start: datetime) -> None:
    """A token says whose it is until it expires or is revoked; its secret is nowhere in the database."""
    secret = await loaded.issue_token("ana", "phone", ["me", "report"], start, start + DAY)
    info = await loaded.check_token(secret, start)
    assert info is not None
    assert (info.person, info.device, info.scopes) == ("ana", "phone", frozenset({"me", "report"}))
    assert await loaded.check_token(secret + "x", start) is None
    assert await loaded.check_token(secret, start + DAY - SECOND) is not None
    assert await loaded.check_token(secret, start + DAY) is None
    assert [x.id for x in await loaded.tokens("ana")] == [info.id]
    assert await loaded.revoke_token(info.id, start)
    assert not await loaded.revoke_token(info.id, start)
    assert await loaded.check_token(secret, start) is None
    service = await loaded.issue_token(None, "telegram channel", ["channel:telegram"], start)
    found = await loaded.check_token(service, start + 999 * DAY)
    assert found is not None
    assert found.person is None


async def test_joining(loaded: Journal, start: datetime, notice: Callable[..., Notice]) -> None:
    """A code shows who you are before it is used, binds once, and what you were owed is then sent."""
    [made] = await loaded.add_notices([notice("jonas", use_by=start + DAY)], start)
    assert made.failed
    code = await loaded.invite("jonas", "long-stile", "ana", start, DAY)
    assert len(code) == 12
    seen = await loaded.preview(f" {code[:6].lower()}-{code[6:]}", "web:1", start)
    assert (seen.person_name, seen.event_name, seen.parts[0].kind.value) == (
        "Jonas",
        "The Long Stile Hundred",
        "crew",
    )
    assert (await loaded.redeem(code, "telegram", "222", "telegram:222", start)).person == "jonas"
    assert await loaded.person_at("telegram", "222") == "jonas"
    [delivery] = await loaded.claim(["telegram"], start)
    assert (delivery.address, delivery.made.failed) == ("222", False)
    with pytest.raises(InvitationError) as refused:
        await loaded.redeem(code, "telegram", "999", "telegram:999", start)
    assert refused.value.reason == "used"
    assert await loaded.person_at("telegram", "999") is None


@pytest.mark.parametrize(("after", "good"), [(DAY - SECOND, True), (DAY, False), (DAY + SECOND, False)])
async def test_a_code_ends(loaded: Journal, start: datetime, after: timedelta, good: bool) -> None:
    """An invitation opens until its end, not at it."""
    code = await loaded.invite("jonas", "long-stile", "ana", start, DAY)
    if good:
        await loaded.preview(code, "g", start + after)
    else:
        with pytest.raises(InvitationError, match="cannot be used"):
            await loaded.preview(code, "g", start + after)


async def test_codes_are_revoked(loaded: Journal, start: datetime) -> None:
    """A new code for the same person ends the old one; one may be revoked; a stranger hears the same words
    whatever the reason."""
    old = await loaded.invite("jonas", "long-stile", "ana", start, DAY)
    new = await loaded.invite("jonas", "long-stile", "ana", start, DAY)
    latest = next(i for i in await loaded.invitations("long-stile") if i.revoked_at is None)
    assert await loaded.revoke_invitation(latest.id, start)
    assert not await loaded.revoke_invitation(latest.id, start)
    words = set()
    for code in (old, new, "0123456789AB"):
        with pytest.raises(InvitationError) as refused:
            await loaded.preview(code, "g", start)
        words.add(str(refused.value))
    assert len(words) == 1
    with pytest.raises(UnknownError, match="has no part"):
        await loaded.invite("ana", "nowhere", "ana", start, DAY)


async def test_guessing_is_limited(loaded: Journal, start: datetime) -> None:
    """After five wrong codes a further one must wait until 15 minutes from the first; a right one never does, as a whole
    camp may share an address; who else asks is not held up."""
    code = await loaded.invite("jonas", "long-stile", "ana", start, DAY)
    for i in range(5):
        with pytest.raises(InvitationError):
            await loaded.preview("WRONG", "telegram:5", start + i * SECOND)
    with pytest.raises(TooManyGuessesError, match="try again in 15 min"):
        await loaded.preview("WRONG", "telegram:5", start + 5 * SECOND)
    assert (await loaded.preview(code, "telegram:5", start + 5 * SECOND)).person == "jonas"
    with pytest.raises(InvitationError):
        await loaded.preview("WRONG", "telegram:6", start)
    with pytest.raises(TooManyGuessesError):
        await loaded.preview("WRONG", "telegram:5", start + timedelta(minutes=15) - SECOND)
    with pytest.raises(InvitationError):
        await loaded.preview("WRONG", "telegram:5", start + timedelta(minutes=15))
