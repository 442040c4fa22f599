"""An invitation in the forms in which people take it: a start link, the same as a QR picture, a short code. Pure.

A code is used once, whichever form it comes in; what it opens is said before it is accepted, by the desk.
"""

from __future__ import annotations

import io
import re
from dataclasses import dataclass

import segno

__all__ = ["JoinLink", "invitation", "qr_png", "start_link"]

# Telegram's documentation: a start payload is 1 to 64 of these; the library does not check it.
_PAYLOAD = re.compile(r"[A-Za-z0-9_-]{1,64}")
_USERNAME = re.compile(r"[A-Za-z][A-Za-z0-9_]{3,31}")


@dataclass(frozen=True, slots=True)
class JoinLink:
    """The link, its QR picture (PNG bytes), and the code to type where neither helps."""

    link: str
    qr: bytes
    code: str


def start_link(username: str, code: str) -> str:
    """The link that opens a chat with the bot and hands it the code. ValueError for what can't be one."""
    if not _USERNAME.fullmatch(username):
        raise ValueError(f"{username!r} is no bot's user name")
    if not _PAYLOAD.fullmatch(code):
        raise ValueError("a start code has 1 to 64 letters, digits, '_' or '-'")
    return f"https://t.me/{username}?start={code}"


def qr_png(text: str) -> bytes:
    """A QR picture with a quiet border, readable when printed 3 cm wide; error correction M (15%)."""
    picture = io.BytesIO()
    segno.make(text, error="m", micro=False).save(picture, kind="png", scale=8, border=4)
    return picture.getvalue()


def invitation(username: str, code: str) -> JoinLink:
    """All three forms of a code, for the bot of that user name."""
    link = start_link(username, code)
    return JoinLink(link, qr_png(link), code)
