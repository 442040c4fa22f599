"""Who is calling: the token in the header, in a page's cookie or, for a tracker, in the query.

A person's token acts for that person. A channel's token (scope 'channel:NAME') acts for the person bound to
the Acting-Address it names, and for nobody without one. A device's token (scope 'report:EVENT/RUNNER') may
report one runner's positions and check-ins and nothing else.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from aiohttp import web

from server.api.envelope import ApiError
from server.api.parts import Parts
from server.journal import TokenInfo

COOKIE = "stilepost"
PERSON = "person"
METRICS = "metrics"
_CHANNEL = "channel:"
_REPORT = "report:"
_SERVER = "server:"
_SAFE_METHODS = frozenset({"GET", "HEAD"})


def channel_scope(channel: str) -> str:
    """The scope of a channel's own token."""
    return _CHANNEL + channel


def server_scope(server: str) -> str:
    """The scope of a token for what runs in a server's own process: what it claims dies with that."""
    return _SERVER + server


def report_scope(event: str, runner: str) -> str:
    """The scope of a device that reports one runner."""
    return f"{_REPORT}{event}/{runner}"


@dataclass(frozen=True, slots=True)
class Caller:
    """A caller whose token holds. `person` is who acts, None for a service or a device acting for nobody.
    `sender` is the name under which this caller's keys are unique."""

    token: TokenInfo
    person: str | None
    channel: str = ""
    address: str = ""

    @property
    def sender(self) -> str:
        """A person's device, or a person at a channel."""
        return f"{self.channel}:{self.address}" if self.address else f"token:{self.token.id}"

    @property
    def reports_for(self) -> tuple[str, str] | None:
        """The event and runner a device's token is for."""
        for scope in self.token.scopes:
            if scope.startswith(_REPORT):
                event, _, runner = scope.removeprefix(_REPORT).partition("/")
                return event, runner
        return None

    @property
    def server(self) -> str | None:
        """The server in whose process the caller runs, where it does in one's."""
        scopes = self.token.scopes
        return next((s.removeprefix(_SERVER) for s in scopes if s.startswith(_SERVER)), None)

    def is_channel(self, channel: str) -> bool:
        """Whether the token is that channel's own."""
        return channel_scope(channel) in self.token.scopes


def peer(request: web.Request, parts: Parts) -> str:
    """The network address of the caller, for limits; behind a proxy the one it vouches for: the last, as it adds its own
    behind what came, some in a line of its own."""
    if parts.settings.behind_proxy:
        forwarded = ",".join(request.headers.getall("X-Forwarded-For", ())).rsplit(",", 1)[-1].strip()
        if forwarded:
            return forwarded
    return request.remote or "?"


def secret_of(request: web.Request) -> str:
    """The token sent, from the Authorization header or a page's cookie; ApiError 'no_token' without."""
    kind, _, secret = request.headers.get("Authorization", "").partition(" ")
    if secret:
        if kind.lower() != "bearer":
            raise ApiError("no_token", "the header is not 'Bearer' and a token", "Authorization", _GET_ONE)
        return secret.strip()
    cookie = request.cookies.get(COOKIE, "")
    if cookie:
        refuse_foreign_form(request)
        return cookie
    raise ApiError("no_token", "no token was sent", "Authorization", _GET_ONE)


_GET_ONE = "Send 'Authorization: Bearer …'; an invitation or `stilepost token` gives a token."


def refuse_foreign_form(request: web.Request) -> None:
    """A cookie goes along from any page; what changes something must come from our own (its Origin is us).

    The cookie is SameSite=Strict as well; this also holds where a browser does not know that.
    """
    if request.method in _SAFE_METHODS:
        return
    origin = request.headers.get("Origin") or request.headers.get("Referer") or ""
    host = origin.split("://", 1)[-1].split("/", 1)[0]
    if not origin or host != request.host:
        raise ApiError(
            "not_from_here", "the request comes from another page", "Origin", "Open the page itself again."
        )


async def check(secret: str, request: web.Request, parts: Parts, now: datetime) -> TokenInfo:
    """The token behind a secret; wrong ones are counted per address, and after too many are told to wait.

    A right one is never turned away: many people share an address (a camp's Wi-Fi, a carrier), and one of them may be
    asking for help. Nobody guesses 256 bits.
    """
    token = await parts.journal.check_token(secret, now)
    if token is None:
        address = peer(request, parts)
        wait = parts.guesses.wait(address, now)
        if wait.total_seconds() > 0:
            error = ApiError("too_many", "too many wrong tokens came from this address", "Authorization")
            error.do = f"Try again in {max(1, round(wait.total_seconds() / 60))} min with the right one."
            error.headers["Retry-After"] = str(max(1, round(wait.total_seconds())))
            raise error
        parts.guesses.wrong(address, now)
        raise ApiError("bad_token", "the token is not known, or no longer holds", "Authorization", _GET_ONE)
    return token


async def caller(request: web.Request, parts: Parts, now: datetime) -> Caller:
    """Whoever sent this request."""
    token = await check(secret_of(request), request, parts, now)
    channel = next((s.removeprefix(_CHANNEL) for s in token.scopes if s.startswith(_CHANNEL)), "")
    if not channel:
        return Caller(token, token.person)
    address = request.headers.get("Acting-Address", "")
    person = await parts.journal.person_at(channel, address) if address else None
    if person is not None:
        # They act, so they can be reached there again, should the channel have called it gone.
        await parts.journal.heard_from(channel, address, now)
    return Caller(token, person, channel, address)


def acting(who: Caller) -> str:
    """The person who acts; ApiError 'no_address' for a channel without one, 'not_yours' for a device."""
    if who.person is not None and (PERSON in who.token.scopes or who.channel):
        return who.person
    if who.channel:
        raise ApiError(
            "no_address",
            "nobody is bound to that address" if who.address else "the header is missing",
            "Acting-Address",
            "Redeem an invitation at this address first (POST /v1/join).",
        )
    raise ApiError("not_yours", "this token may only report", "Authorization", "Use a person's token.")
