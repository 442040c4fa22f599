"""Everything the journal refuses: what was wrong, where, what to do. One tree, mapped once at the edge."""

from __future__ import annotations

__all__ = [
    "AwayError",
    "ClashError",
    "InvitationError",
    "JournalError",
    "RefusedError",
    "TooManyGuessesError",
    "TooNewError",
    "UnknownError",
]


class JournalError(Exception):
    """Base of all errors of this room. `what` is wrong, `where` (field or table), `do` is the remedy."""

    def __init__(self, what: str, where: str = "", do: str = "") -> None:
        self.what, self.where, self.do = what, where, do
        super().__init__("; ".join(part for part in (f"{where}: {what}" if where else what, do) if part))


class UnknownError(JournalError):
    """There is no such event, version, notice, delivery or invitation (404)."""


class RefusedError(JournalError):
    """The request makes sense but must not be done now: a point with check-ins, an open alarm (409)."""


class ClashError(JournalError):
    """An address, person or id already belongs to somebody else (409)."""


class InvitationError(JournalError):
    """The code opens nothing. `reason` ('unknown', 'used', 'expired', 'revoked') is for the log of who made
    it; a stranger is told the same words whatever the reason (404)."""

    def __init__(self, reason: str) -> None:
        self.reason = reason
        super().__init__(
            "this invitation cannot be used",
            "code",
            "check the code, or ask whoever invited you for a new one",
        )


class TooManyGuessesError(JournalError):
    """Too many wrong codes from one place; `retry_after_s` until the next is looked at (429)."""

    def __init__(self, retry_after_s: float) -> None:
        self.retry_after_s = retry_after_s
        super().__init__(
            "too many wrong codes", "code", f"try again in {max(1, round(retry_after_s / 60))} min"
        )


class TooNewError(JournalError):
    """The database or a stored value was written by a newer Stilepost than this one."""


class AwayError(Exception):
    """The database can't do it now: it is `why` 'busy' (a writer of another process holds it), 'full', 'read-only' or
    'away'. Nothing was kept; the call may be made again, not before `retry_after_s`."""

    def __init__(self, why: str) -> None:
        self.why = why
        self.retry_after_s = 2.0 if why in ("busy", "away") else 15.0
        super().__init__(f"the database is {why}")
