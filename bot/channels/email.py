"""E-mail as a channel: notices out by SMTP, one message a delivery; nothing comes in.

Settings: `host`, `port`, `user`, `password`, `tls` ('starttls', 'tls' or 'none'), `from` (our address),
`timeout_s` (for each step before DATA), `data_timeout_s` (for the answer to the text itself). Library:
aiosmtplib, driven step by step, since what a lost connection means depends on the step: before DATA nothing
was sent, from DATA on nobody can tell.

A Message-ID is made from the delivery's id, so that a repeat threads with (or hides behind) the first.
"""

from __future__ import annotations

import hashlib
import re
import socket
import ssl
import unicodedata
from dataclasses import dataclass
from datetime import timedelta
from email.errors import MessageError
from email.message import EmailMessage
from email.policy import SMTP as SMTP_POLICY
from email.utils import format_datetime, parseaddr
from enum import StrEnum

import aiosmtplib

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import Delivery, Outcome, Sent, Settings
from bot.channels.outgoing import OnlyOut
from server.clock import Clock, SystemClock

__all__ = ["TABLE", "Email", "ErrorRow", "MailStage", "make", "outcome_of"]


SUBJECT_MAX = 200


class MailStage(StrEnum):
    """How far a message had come."""

    CONNECT = "connect"
    LOGIN = "login"
    SENDER = "sender"
    RECIPIENT = "recipient"
    DATA = "data"


@dataclass(frozen=True, slots=True)
class ErrorRow:
    """An error (or a subclass), the stage and the start of the server's reply code if they decide, and what
    that means. An enhanced code (RFC 3463) must stand at the start of the reply's text."""

    error: type[BaseException]
    stage: MailStage | None
    code: str
    means: Sent
    enhanced: str = ""


TABLE: tuple[ErrorRow, ...] = (
    # 4xx: 'try again later' (RFC 5321, 4.2.1), at whatever step; certainly not sent.
    ErrorRow(aiosmtplib.SMTPResponseException, None, "4", Sent.LATER),
    # 552, 554 at DATA: this message. 550 at RCPT with 5.1.x: the mailbox does not exist (RFC 3463, 3.2).
    ErrorRow(aiosmtplib.SMTPResponseException, MailStage.RECIPIENT, "5", Sent.GONE, enhanced="5.1."),
    ErrorRow(aiosmtplib.SMTPResponseException, MailStage.RECIPIENT, "5", Sent.NEVER),
    ErrorRow(aiosmtplib.SMTPResponseException, MailStage.DATA, "5", Sent.NEVER),
    ErrorRow(aiosmtplib.SMTPResponseException, MailStage.SENDER, "552", Sent.NEVER),
    # 5xx before a recipient was named is about us: greeting, login, our own address.
    ErrorRow(aiosmtplib.SMTPResponseException, None, "5", Sent.WRONG_SETTINGS),
    # Another code than the protocol has is no answer at all.
    ErrorRow(aiosmtplib.SMTPResponseException, MailStage.DATA, "", Sent.UNKNOWN),
    ErrorRow(aiosmtplib.SMTPResponseException, None, "", Sent.NOT_SENT),
    # Refused, stalled, dropped.
    ErrorRow(aiosmtplib.SMTPServerDisconnected, MailStage.DATA, "", Sent.UNKNOWN),
    ErrorRow(aiosmtplib.SMTPTimeoutError, MailStage.DATA, "", Sent.UNKNOWN),
    ErrorRow(aiosmtplib.SMTPServerDisconnected, None, "", Sent.NOT_SENT),
    ErrorRow(aiosmtplib.SMTPConnectError, None, "", Sent.NOT_SENT),
    ErrorRow(aiosmtplib.SMTPTimeoutError, None, "", Sent.NOT_SENT),
    ErrorRow(aiosmtplib.SMTPNotSupported, MailStage.SENDER, "", Sent.NEVER),
    ErrorRow(aiosmtplib.SMTPNotSupported, MailStage.RECIPIENT, "", Sent.NEVER),
    # STARTTLS or a way to log in that the server does not have.
    ErrorRow(aiosmtplib.SMTPException, MailStage.CONNECT, "", Sent.WRONG_SETTINGS),
    ErrorRow(aiosmtplib.SMTPException, MailStage.LOGIN, "", Sent.WRONG_SETTINGS),
    ErrorRow(ssl.SSLError, None, "", Sent.WRONG_SETTINGS),
    # An address or a text that can't be written as a mail.
    ErrorRow(ValueError, None, "", Sent.NEVER),
    ErrorRow(MessageError, None, "", Sent.NEVER),
    ErrorRow(OSError, MailStage.DATA, "", Sent.UNKNOWN),
    ErrorRow(OSError, None, "", Sent.NOT_SENT),
    ErrorRow(aiosmtplib.SMTPException, None, "", Sent.UNKNOWN),
)
"""First fit wins."""


def outcome_of(error: BaseException, stage: MailStage) -> Outcome:
    """What an error at a stage means for the message. An error outside the table: unknown."""
    if isinstance(error.__cause__, ssl.SSLError):
        error = error.__cause__
    code, text = "", ""
    if isinstance(error, aiosmtplib.SMTPResponseException):
        code, text = str(error.code), error.message
    for row in TABLE:
        fits = isinstance(error, row.error) and row.stage in (None, stage)
        if fits and code.startswith(row.code) and text.startswith(row.enhanced):
            return Outcome(row.means, f"{stage.value}: {type(error).__name__} {code}".strip())
    return Outcome(Sent.UNKNOWN, f"{stage.value}: {type(error).__name__}")


class Email(OnlyOut):
    """One mail account to send from."""

    name = "email"
    check_every = timedelta(minutes=5)

    def __init__(self, settings: Settings, clock: Clock | None = None) -> None:
        """Nothing is sent yet. WrongSettingsError names the setting that is wrong."""
        self._host, self._from = settings.get("host", ""), settings.get("from", "")
        self._user, self._password = settings.get("user", ""), settings.get("password", "")
        self._tls = settings.get("tls", "starttls")
        self._clock = clock or SystemClock()
        sender = parseaddr(self._from)[1]
        if not self._host:
            raise WrongSettingsError("smtp_host is empty: name the mail server")
        if "@" not in sender:
            raise WrongSettingsError("mail_from is no address: write one such as crew@example.org")
        if self._tls not in ("starttls", "tls", "none"):
            raise WrongSettingsError("smtp_tls is one of starttls, tls, none")
        try:
            self._port = int(settings.get("port", "587"))
            self._timeout_s = float(settings.get("timeout_s", "15"))
            self._data_timeout_s = float(settings.get("data_timeout_s", "20"))
        except ValueError:
            raise WrongSettingsError("smtp_port, timeout_s and data_timeout_s are numbers") from None
        self._sender, self._domain = sender, sender.rpartition("@")[2]

    def __repr__(self) -> str:
        return "Email()"

    async def deliver(self, delivery: Delivery) -> Outcome:
        """See `base.Channel`."""
        stage = MailStage.CONNECT
        client = self._client()
        try:
            message = self._message(delivery).as_bytes(policy=SMTP_POLICY)
            recipient = _bare(delivery.address)
            await client.connect()
            if self._user:
                stage = MailStage.LOGIN
                await client.login(self._user, self._password)
            stage = MailStage.SENDER
            await client.mail(self._sender)
            stage = MailStage.RECIPIENT
            await client.rcpt(recipient)
            stage = MailStage.DATA
            reply = await client.data(message, timeout=self._data_timeout_s)
        except Exception as error:
            client.close()
            return outcome_of(error, stage)
        await _leave(client)
        return Outcome(Sent.ACCEPTED, reply.message[:100], ref=self._message_id(delivery))

    async def check(self) -> bool:
        """Whether the mail server greets us."""
        client = self._client()
        try:
            await client.connect()
        except Exception:
            client.close()
            return False
        await _leave(client)
        return True

    def _client(self) -> aiosmtplib.SMTP:
        return aiosmtplib.SMTP(
            hostname=self._host,
            port=self._port,
            timeout=self._timeout_s,
            use_tls=self._tls == "tls",
            start_tls=self._tls == "starttls",
            # The library would otherwise ask the name service for our name, and wait for it.
            local_hostname=socket.gethostname(),
        )

    def _message_id(self, delivery: Delivery) -> str:
        local = delivery.id
        if not re.fullmatch(r"[A-Za-z0-9_-]{1,120}", local):
            # Two ids that differ must not become one: mail programs hide what they take for a repeat.
            digest = hashlib.sha256(local.encode("utf-8", "replace")).hexdigest()
            local = re.sub(r"[^A-Za-z0-9_-]", "-", local)[:80] + "-" + digest[:16]
        return f"<{local}@{self._domain}>"

    def _message(self, delivery: Delivery) -> EmailMessage:
        mail = EmailMessage()
        mail["From"] = self._from
        mail["To"] = _bare(delivery.address)
        text = _writable(delivery.text)
        mail["Subject"] = _one_line(_writable(delivery.subject)) or _one_line(text.strip().partition("\n")[0])
        mail["Date"] = format_datetime(self._clock.now())
        mail["Message-ID"] = self._message_id(delivery)
        mail["Auto-Submitted"] = "auto-generated"  # RFC 3834: no out-of-office replies, please
        if delivery.urgent:
            mail["Importance"] = "high"
        if delivery.picture is not None:
            text = f"{text}\n\n{_writable(delivery.alt)}".strip()
        mail.set_content(text)
        if delivery.picture is not None:
            mail.add_attachment(delivery.picture, maintype="image", subtype="png", filename="picture.png")
        return mail


def _bare(address: str) -> str:
    """The address alone; ValueError for one that is none."""
    bare = parseaddr(address)[1]
    local, _, domain = bare.rpartition("@")
    if not local or not domain or any(c in bare for c in "<> ") or any(ord(c) < 32 for c in address):
        raise ValueError("the address is no mail address")
    if not local.isascii():
        # It takes SMTPUTF8 on every server on the way (RFC 6531): rare, and we can't know.
        raise ValueError("the part of the address before the @ has other letters than ASCII")
    return f"{local}@{domain.encode('idna').decode()}" if not domain.isascii() else bare


def _writable(text: str) -> str:
    """The text without what no mail can carry: halves of characters, control characters but line end and tab."""
    whole = text.replace("\r\n", "\n").encode("utf-8", "replace").decode()
    return "".join(c if c in "\n\t" or unicodedata.category(c) != "Cc" else " " for c in whole)


def _one_line(text: str) -> str:
    """A text as a header takes it: whatever stands on another line would be read as a header of its own."""
    return " ".join(text.split())[:SUBJECT_MAX]


async def _leave(client: aiosmtplib.SMTP) -> None:
    try:
        await client.quit()
    except Exception:
        # The message was taken already; how the server says goodbye changes nothing.
        client.close()


def make(settings: Settings) -> Email:
    """The channel from its settings; WrongSettingsError names the one that is wrong."""
    return Email(settings)
