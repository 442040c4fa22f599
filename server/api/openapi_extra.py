"""What the server answers beside the table of calls, for the description: the doors of other machines, pictures,
health; and what it POSTs to others itself. The paths are added where they are at home; a test compares."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, Field

from server.api.models import ChatIn, PushSubscription
from server.api.replies import ChatReply, Health, Stored

__all__ = [
    "BESIDES", "DELIVERY", "SIGNATURE", "TIMESTAMP", "Beside", "NoticePost", "TextIn", "TextPost", "posts",
]  # fmt: skip

TIMESTAMP = "Stilepost-Timestamp"
DELIVERY = "Stilepost-Delivery"
SIGNATURE = "Stilepost-Signature"
"""Headers of what is POSTed to others; `bot.channels.signing` says how they are made."""


class _Loose(BaseModel):
    """A body of somebody else's making, or for somebody else's eyes: more fields than these are let be."""

    model_config = ConfigDict(extra="ignore", frozen=True)


class TextIn(_Loose):
    """What a text gateway POSTs. `id` is its own id of the message, the same when it sends it again; `sent_at` has
    an offset. Where both are left out, each request counts as a new message."""

    text: str | int = Field(description="What was written; at most 2000 characters.")
    id: str | int = Field(default="", description="At most 100 characters.")
    sent_at: str = Field(default="", max_length=40, description="ISO 8601 with an offset.")


class UpdateIn(_Loose):
    """An update of Telegram's Bot API, kept as it came."""

    update_id: int


class ButtonPost(_Loose):
    """One button: what it says, and its data."""

    label: str
    data: str


class NoticePost(_Loose):
    """A notice for a person whose channel is a webhook. `delivery` is the same for every attempt; `may_repeat`: an
    earlier one may have arrived; `alt` is a picture in words."""

    delivery: str
    short: int
    subject: str
    text: str
    alt: str
    urgent: bool
    may_repeat: bool
    buttons: list[list[ButtonPost]]
    sent_at: str


class TextPost(_Loose):
    """An answer or a notice for a device behind a text gateway."""

    to: str
    text: str
    delivery: str


Security = Literal["", "token", "cookie", "deviceToken", "telegramSecret"]


@dataclass(frozen=True, slots=True)
class Beside:
    """One path: `replies` in the reply envelope, or `media` as they are; `statuses` beside 200, in words."""

    method: str
    path: str
    says: str
    security: Security = "token"
    body: type[BaseModel] | None = None
    replies: type | None = None
    media: str = "application/json"
    statuses: Mapping[int, str] | None = None


_TOKENS = {401: "No token, or none that holds.", 403: "Your part does not allow this."}
_PICTURE = "/v1/events/{event}/runners/{runner}/picture"

BESIDES: tuple[Beside, ...] = (
    Beside(
        "POST",
        "/hooks/text",
        "A short text of a device, stored before it is answered. Only where a text gateway is set up. Its token "
        "(`stilepost token NAME --text PERSON`) goes in the header or, where a gateway can't set one, as `key` in the "
        "query.",
        "deviceToken",
        TextIn,
        Stored,
        statuses={
            **_TOKENS,
            413: "The body is longer than the server reads.",
            422: "A field is missing or wrong; the error names it.",
            429: "Too many wrong tokens came from this address.",
        },
    ),
    Beside(
        "POST",
        "/hooks/telegram",
        "An update of Telegram, stored before it is answered. Only where a webhook is set up; the secret is the "
        "setting telegram_webhook_secret, compared in constant time.",
        "telegramSecret",
        UpdateIn,
        media="text/plain",
        statuses={
            400: "The body is no update.",
            403: "The secret is missing or wrong.",
            413: "The body is longer than the server reads.",
            503: "It could not be stored: bring it again.",
        },
    ),
    Beside("POST", "/v1/chat", "The page's chat: one text, button or place; the reply is what the desk says.", "cookie",
           ChatIn, ChatReply, statuses={**_TOKENS, 422: "A field is missing or wrong."}),
    Beside("POST", "/v1/push", "The page's browser may be sent notices: its person's from now on.", "cookie",
           PushSubscription, statuses={**_TOKENS, 204: "Bound.", 422: "This server sends no push, or a field is wrong."}),
    Beside("POST", "/v1/push/off", "The page's browser is sent no more notices.", "cookie", PushSubscription,
           statuses={**_TOKENS, 204: "Unbound, if it was bound.", 422: "A field is missing or wrong."}),
    Beside("GET", f"{_PICTURE}.svg", "The course with what is known of her, as drawing.", media="image/svg+xml",
           statuses=_TOKENS),
    Beside("GET", f"{_PICTURE}.png", "The course with what is known of her, as picture.", media="image/png",
           statuses=_TOKENS),
    Beside("GET", "/v1/events/{event}/photos/{picture}", "A photo that somebody sent, for those it went to.",
           media="image/jpeg", statuses=_TOKENS),
    Beside("GET", "/health", "Is the server well? It names no event and no person. 200 when well.", "", None, Health,
           statuses={503: "It is not well, or catching up for too long; the body says what."}),
    Beside("GET", "/metrics", "Figures for a monitor: from this machine, or with a token of scope 'metrics'.", "token",
           media="text/plain", statuses=_TOKENS),
    Beside("GET", "/v1/openapi.json", "This description.", ""),
)  # fmt: skip


def posts(schema: Mapping[str, Any]) -> dict[str, Any]:
    """What the server POSTs to others, as OpenAPI's 'webhooks'; `schema` holds the bodies' schemas by class name."""
    headers = {
        TIMESTAMP: "POSIX seconds; refuse one more than five minutes off.",
        DELIVERY: "The same for every attempt: remember those you have taken, and take none twice.",
        SIGNATURE: "'v1=' and the hex HMAC-SHA256, under the shared secret, of timestamp, full stop, body.",
    }
    parameters = [
        {"name": n, "in": "header", "required": True, "schema": {"type": "string"}, "description": says}
        for n, says in headers.items()
    ]
    answers = {
        "2XX": {"description": "Taken. That somebody has read it is another matter."},
        "401": {"description": "The signature does not hold: somebody must look at the secret. 403 alike."},
        "410": {"description": "This address takes nothing more: the person's next channel is used."},
        "429": {"description": "Later; Retry-After is kept. 425, and 503 with Retry-After, alike."},
        "4XX": {
            "description": "This message will never be taken. Redirects are not followed and count as this."
        },
        "5XX": {
            "description": "Unknown: it is sent again, with `may_repeat`. No answer in time counts as this."
        },
    }
    said = {
        "notice": (NoticePost, "A notice for a person whose channel is a webhook."),
        "text": (TextPost, "An answer or a notice for a device behind a text gateway."),
    }
    return {
        name: {
            "post": {
                "summary": says,
                "operationId": f"post_{name}",
                "parameters": parameters,
                "requestBody": {
                    "required": True,
                    "content": {"application/json": {"schema": schema[body.__name__]}},
                },
                "responses": answers,
            }
        }
        for name, (body, says) in said.items()
    }
