"""E-mail against a real SMTP server (aiosmtpd) that refuses, stalls and drops at each stage."""

from __future__ import annotations

import asyncio
import re
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from datetime import UTC, datetime
from email import message_from_bytes
from email.message import EmailMessage
from email.policy import SMTP as SMTP_POLICY
from email.policy import default as parse_policy
from typing import Any

import aiosmtplib
import pytest
from aiosmtpd.smtp import SMTP, AuthResult, Envelope, LoginPassword, Session
from hypothesis import given
from hypothesis import strategies as st

from bot.channels.addresses import Checked, WrongSettingsError
from bot.channels.base import Delivery, Outcome, Sent
from bot.channels.email import TABLE, Email, MailStage, make, outcome_of
from server.clock import SteppedClock

NOW = datetime(2027, 6, 19, 2, 10, tzinfo=UTC)
PATIENT_S, IMPATIENT_S = "60", "0.2"
PASSWORD = "the-password"
PLAIN = Delivery(
    "long-stile-7-1", "ana@example.org", "Leave by 02:10 for Skelter Mill.", subject="Leave by 02:10"
)

Step = Callable[[SMTP], Awaitable[str]]


async def drop(server: SMTP) -> str:
    """Cut the connection."""
    assert server.transport is not None
    server.transport.abort()
    return "250 never read"


async def stall(_server: SMTP) -> str:
    """Say nothing until the other side has gone."""
    await asyncio.Event().wait()
    return "250 never said"


def say(reply: str) -> Step:
    """Give that reply."""

    async def step(_server: SMTP) -> str:
        return reply

    return step


class Handler:
    """Goes wrong at one stage; keeps what it takes."""

    def __init__(self, **steps: Step) -> None:
        self.steps = steps
        self.taken: list[Envelope] = []

    async def _at(self, stage: str, server: SMTP) -> str | None:
        return await self.steps[stage](server) if stage in self.steps else None

    async def handle_EHLO(
        self, server: SMTP, session: Session, _envelope: Envelope, hostname: str, responses: list[str]
    ) -> list[str]:
        reply = await self._at("ehlo", server)
        session.host_name = hostname
        return [reply] if reply else responses

    async def handle_HELO(self, server: SMTP, session: Session, _envelope: Envelope, hostname: str) -> str:
        session.host_name = hostname
        return await self._at("ehlo", server) or "250 OK"

    async def handle_MAIL(
        self, server: SMTP, _session: Session, envelope: Envelope, address: str, options: list[str]
    ) -> str:
        envelope.mail_from, envelope.mail_options = address, options
        return await self._at("sender", server) or "250 OK"

    async def handle_RCPT(
        self, server: SMTP, _session: Session, envelope: Envelope, address: str, _options: list[str]
    ) -> str:
        envelope.rcpt_tos.append(address)
        return await self._at("recipient", server) or "250 OK"

    async def handle_DATA(self, server: SMTP, _session: Session, envelope: Envelope) -> str:
        # By the time this runs the mail is here, whatever is said of it.
        self.taken.append(envelope)
        return await self._at("data", server) or "250 taken"


@asynccontextmanager
async def serving(handler: Handler, **options: Any) -> AsyncIterator[int]:
    """A real SMTP server on loopback; gives its port."""
    loop = asyncio.get_running_loop()
    server = await loop.create_server(lambda: SMTP(handler, loop=loop, **options), "127.0.0.1", 0)
    try:
        yield server.sockets[0].getsockname()[1]
    finally:
        server.close()


def channel(port: int, **settings: str) -> Email:
    """A channel that waits long, however slow the machine is."""
    base = {"host": "127.0.0.1", "port": str(port), "tls": "none", "from": "Crew desk <desk@example.org>"}
    patient = {"timeout_s": PATIENT_S, "data_timeout_s": PATIENT_S}
    return Email({**base, **patient, **settings}, SteppedClock(NOW))


async def sent(handler: Handler, delivery: Delivery = PLAIN, **settings: str) -> Outcome:
    """What becomes of a delivery at a server with that handler."""
    async with serving(handler) as port:
        return await channel(port, **settings).deliver(delivery)


def mail(handler: Handler) -> EmailMessage:
    """The one mail taken."""
    (envelope,) = handler.taken
    assert isinstance(envelope.content, bytes)
    parsed = message_from_bytes(envelope.content, policy=parse_policy)
    assert isinstance(parsed, EmailMessage)
    return parsed


def words(part: EmailMessage) -> str:
    """The text, with the line ends of a text instead of a mail's."""
    return str(part.get_content()).replace("\r\n", "\n").rstrip("\n")


async def test_a_mail_arrives_whole() -> None:
    """Plain text, its headers, and an id made from the delivery's, so that a repeat threads."""
    handler = Handler()
    outcome = await sent(handler)
    got = mail(handler)
    assert (outcome.sent, outcome.ref) == (Sent.ACCEPTED, "<long-stile-7-1@example.org>")
    assert got["Message-ID"] == outcome.ref
    assert (got["To"], got["From"]) == ("ana@example.org", "Crew desk <desk@example.org>")
    assert got["Subject"] == "Leave by 02:10"
    assert got["Auto-Submitted"] == "auto-generated"
    assert got["Date"].datetime == NOW
    assert got.get_content_type() == "text/plain"
    assert words(got) == PLAIN.text
    assert handler.taken[0].mail_from == "desk@example.org"


async def test_a_text_with_accents_dots_and_long_lines_arrives_as_it_was() -> None:
    """SMTP knows ASCII, short lines, and a dot alone as the end."""
    text = "Grüße – 🏔\n.\n..\n" + "x" * 3000 + "\nend"
    handler = Handler()
    await sent(handler, Delivery("d", "ana@example.org", text, subject="Überfällig"))
    got = mail(handler)
    assert words(got) == text
    assert got["Subject"] == "Überfällig"


async def test_a_picture_is_attached_with_its_words() -> None:
    """Somebody who does not see it reads it."""
    handler = Handler()
    await sent(handler, Delivery("d", "ana@example.org", "Here.", picture=b"\x89PNG...", alt="A profile."))
    got = mail(handler)
    body = got.get_body()
    assert body is not None
    assert words(body) == "Here.\n\nA profile."
    (picture,) = got.iter_attachments()
    assert (picture.get_content_type(), picture.get_content()) == ("image/png", b"\x89PNG...")


@pytest.mark.parametrize("subject", ["Late\r\nBcc: all@example.org", "Late\nX: y"])
async def test_a_subject_adds_no_header(subject: str) -> None:
    """A line end in it would begin a header of its own."""
    handler = Handler()
    assert (
        await sent(handler, Delivery("d", "ana@example.org", "text", subject=subject))
    ).sent is Sent.ACCEPTED
    got = mail(handler)
    assert (got["Bcc"], got["X"]) == (None, None)
    assert got["Subject"].startswith("Late ")


NASTY = {
    "a name that would add a header": "Leave for Mill.\r\nBcc: all@example.org\r\n\r\nI am the mail now",
    "line ends of other kinds": "Late\u2028X: y\x85Z: w\x0bV: u\x1cT: s\rR: q",
    "a line longer than SMTP knows": "she is at " + "very " * 400 + "long",
    "control characters": "in\x00 at\x07 mill\x1b[31m",
    "half a character": "at the \ud83d mill",
    "other scripts": "Grüße aus Łódź, 鳥, עברית, 🏔\ufe0f",
    "the end of a mail": "over\r\n.\r\nMAIL FROM:<x@example.org>\r\nRCPT TO:<y@example.org>\r\nDATA",
    "nothing but spaces": " \n \t",
}


@pytest.mark.parametrize("place", ["subject", "text", "both"])
@pytest.mark.parametrize("case", NASTY)
async def test_whatever_people_write_or_are_called_makes_one_mail(case: str, place: str) -> None:
    """To its one recipient, with our headers only, its words whole but for what no mail can carry."""
    nasty = NASTY[case]
    handler = Handler()
    owed = Delivery(
        "a/ü-1 <x>",
        "ana@example.org",
        nasty if place != "subject" else "Leave now.",
        subject=nasty if place != "text" else "",
    )
    outcome = await sent(handler, owed)
    assert outcome.sent is Sent.ACCEPTED, outcome
    (envelope,) = handler.taken
    assert (envelope.mail_from, envelope.rcpt_tos) == ("desk@example.org", ["ana@example.org"])
    got = mail(handler)
    assert set(got.keys()) == {
        "From", "To", "Subject", "Date", "Message-ID", "Auto-Submitted", "MIME-Version", "Content-Type",
        "Content-Transfer-Encoding",
    }  # fmt: skip
    assert isinstance(envelope.content, bytes)
    assert max(len(line) for line in envelope.content.split(b"\r\n")) <= 998
    assert re.fullmatch(r"<[A-Za-z0-9._-]+@example\.org>", got["Message-ID"])
    if place != "subject":
        letters = [c for c in nasty if c.isalnum()]
        assert [c for c in words(got) if c.isalnum()] == letters


async def test_an_address_of_another_script_is_written_as_mail_servers_know_it() -> None:
    """A domain has a form in ASCII (RFC 3490); a name before the @ has none, so the next channel is tried."""
    handler = Handler()
    assert (await sent(handler, Delivery("d", "ana@bücher.example", "text"))).sent is Sent.ACCEPTED
    assert handler.taken[0].rcpt_tos == ["ana@xn--bcher-kva.example"]
    assert (await sent(handler, Delivery("d", "änne@example.org", "text"))).sent is Sent.NEVER
    assert len(handler.taken) == 1


@given(st.text(max_size=80), st.text(max_size=40), st.text(max_size=30))
def test_no_text_is_too_strange_to_be_written(text: str, subject: str, delivery: str) -> None:
    """Bytes come out, and one subject line goes in."""
    made = channel(25)._message(Delivery(delivery, "ana@example.org", text, subject=subject))
    read = message_from_bytes(made.as_bytes(policy=SMTP_POLICY), policy=parse_policy)
    assert len(read.get_all("Subject", [])) == 1
    assert set(read.keys()) == set(made.keys())


STAGES = {
    "ehlo 421": (Handler(ehlo=say("421 busy")), Sent.LATER),
    "ehlo 550": (Handler(ehlo=say("550 go away")), Sent.WRONG_SETTINGS),
    "ehlo drop": (Handler(ehlo=drop), Sent.NOT_SENT),
    "ehlo stall": (Handler(ehlo=stall), Sent.NOT_SENT),
    "sender 451": (Handler(sender=say("451 try later")), Sent.LATER),
    "sender 550": (Handler(sender=say("550 not yours to send from")), Sent.WRONG_SETTINGS),
    "sender 552": (Handler(sender=say("552 too large")), Sent.NEVER),
    "sender drop": (Handler(sender=drop), Sent.NOT_SENT),
    "sender stall": (Handler(sender=stall), Sent.NOT_SENT),
    "recipient 450 greylisted": (Handler(recipient=say("450 4.2.0 greylisted")), Sent.LATER),
    "recipient no such mailbox": (Handler(recipient=say("550 5.1.1 no such user")), Sent.GONE),
    "recipient refused": (Handler(recipient=say("554 5.7.1 refused")), Sent.NEVER),
    "recipient drop": (Handler(recipient=drop), Sent.NOT_SENT),
    "recipient stall": (Handler(recipient=stall), Sent.NOT_SENT),
    "data 452": (Handler(data=say("452 disk full")), Sent.LATER),
    "data 554": (Handler(data=say("554 looks like spam")), Sent.NEVER),
    "data drop": (Handler(data=drop), Sent.UNKNOWN),
    "data stall": (Handler(data=stall), Sent.UNKNOWN),
    "data nonsense": (Handler(data=say("299 what")), Sent.UNKNOWN),
}


@pytest.mark.parametrize("case", STAGES)
async def test_each_way_of_going_wrong_has_its_outcome(case: str) -> None:
    """Before DATA nothing was sent; from DATA on a lost answer is unknown; 4xx is later, 5xx never."""
    handler, means = STAGES[case]
    stalls = {"data stall": "data_timeout_s"}.get(case, "timeout_s" if "stall" in case else "")
    outcome = await sent(handler, **({stalls: IMPATIENT_S} if stalls else {}))
    assert outcome.sent is means, outcome
    # Whatever was not taken is never called accepted, and what was taken never surely not sent.
    if handler.taken:
        assert outcome.sent is not Sent.NOT_SENT


async def test_nobody_listening_is_not_sent(unused_port: int) -> None:
    """A refused connection."""
    assert (await channel(unused_port).deliver(PLAIN)).sent is Sent.NOT_SENT


GREETINGS = {
    b"421 closing\r\n": Sent.LATER,
    b"554 no service here\r\n": Sent.WRONG_SETTINGS,
    b"": Sent.NOT_SENT,
    b"what is this\r\n": Sent.NOT_SENT,
}


@pytest.mark.parametrize("greeting", GREETINGS)
async def test_a_greeting_that_is_none(greeting: bytes) -> None:
    """Turned away, hung up on, or another kind of server."""

    async def greet(_reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        writer.write(greeting)
        writer.close()

    server = await asyncio.start_server(greet, "127.0.0.1", 0)
    async with server:
        outcome = await channel(server.sockets[0].getsockname()[1]).deliver(PLAIN)
    assert outcome.sent is GREETINGS[greeting], outcome


async def test_a_server_that_never_greets_is_not_sent() -> None:
    """The connection is taken, and then nothing."""

    async def read_on(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        await reader.read()
        writer.close()

    server = await asyncio.start_server(read_on, "127.0.0.1", 0)
    async with server:
        port = server.sockets[0].getsockname()[1]
        outcome = await channel(port, timeout_s=IMPATIENT_S).deliver(PLAIN)
    assert outcome.sent is Sent.NOT_SENT


async def test_a_rude_goodbye_changes_nothing() -> None:
    """The mail was taken; only then was the connection cut."""

    class Rude(Handler):
        async def handle_QUIT(self, server: SMTP, _session: Session, _envelope: Envelope) -> str:
            return await drop(server)

    handler = Rude()
    assert (await sent(handler)).sent is Sent.ACCEPTED
    assert len(handler.taken) == 1


def _authenticator(_s: SMTP, _se: Session, _e: Envelope, _mechanism: str, data: object) -> AuthResult:
    right = isinstance(data, LoginPassword) and data.password == PASSWORD.encode()
    return AuthResult(success=right, handled=False)


@pytest.mark.parametrize(
    ("password", "means"), [(PASSWORD, Sent.ACCEPTED), ("mistyped", Sent.WRONG_SETTINGS)]
)
@pytest.mark.filterwarnings("ignore:Requiring AUTH")
async def test_logging_in(password: str, means: Sent) -> None:
    """A wrong password is for somebody to mend, and stands in no record."""
    options = {"authenticator": _authenticator, "auth_require_tls": False, "auth_required": True}
    async with serving(Handler(), **options) as port:
        desk = channel(port, user="desk", password=password)
        outcome = await desk.deliver(PLAIN)
    assert outcome.sent is means, outcome
    assert password not in outcome.detail + repr(desk) + repr(outcome)


@pytest.mark.filterwarnings("ignore:Requiring AUTH")
async def test_a_server_that_wants_a_login_we_have_not_got() -> None:
    """530 at the sender: settings."""
    options = {"authenticator": _authenticator, "auth_require_tls": False, "auth_required": True}
    async with serving(Handler(), **options) as port:
        assert (await channel(port).deliver(PLAIN)).sent is Sent.WRONG_SETTINGS


@pytest.mark.parametrize("tls", ["starttls", "tls"])
async def test_a_server_without_tls_gets_no_mail_if_tls_is_set(tls: str) -> None:
    """What should be secured is not sent in the clear."""
    handler = Handler()
    async with serving(handler) as port:
        outcome = await channel(port, tls=tls).deliver(PLAIN)
    assert outcome.sent in (Sent.WRONG_SETTINGS, Sent.NOT_SENT), outcome
    assert handler.taken == []


@pytest.mark.parametrize(
    "address", ["", "ana", "@example.org", "ana@", "a b@example.org", "a@x\r\nRCPT TO:<b@x>"]
)
async def test_an_address_that_is_none_is_never_sent_to(address: str) -> None:
    """Nothing of it reaches the server as a command."""
    handler = Handler()
    assert (await sent(handler, Delivery("d", address, "text"))).sent is Sent.NEVER
    assert handler.taken == []


async def test_the_server_is_checked_without_sending(unused_port: int) -> None:
    """Up: it greets. Down: it does not."""
    handler = Handler()
    async with serving(handler) as port:
        desk = channel(port)
        assert isinstance(desk, Checked)
        assert await desk.check()
    assert not await channel(unused_port).check()
    assert handler.taken == []


def test_no_row_of_the_table_is_hidden() -> None:
    """Each row can be reached: none earlier is as wide or wider."""
    for i, row in enumerate(TABLE):
        for earlier in TABLE[:i]:
            wider = (
                issubclass(row.error, earlier.error)
                and earlier.stage in (None, row.stage)
                and row.code.startswith(earlier.code)
                and row.enhanced.startswith(earlier.enhanced)
            )
            assert not wider, f"{row} is hidden by {earlier}"


@pytest.mark.parametrize("stage", list(MailStage))
def test_every_error_of_the_library_has_an_outcome_at_every_stage(stage: MailStage) -> None:
    """And only before DATA can one be surely not sent."""
    for name in aiosmtplib.errors.__all__:
        kind = getattr(aiosmtplib, name)
        error = kind.__new__(kind)
        error.code, error.message = 421, "x"
        outcome = outcome_of(error, stage)
        assert "Error" in outcome.detail or "SMTP" in outcome.detail
        if stage is MailStage.DATA and not isinstance(error, aiosmtplib.SMTPConnectError):
            assert outcome.sent is not Sent.NOT_SENT, name


@pytest.mark.parametrize(
    ("settings", "names"),
    [
        ({}, "smtp_host"),
        ({"host": "x"}, "mail_from"),
        ({"host": "x", "from": "nobody"}, "mail_from"),
        ({"host": "x", "from": "a@b.c", "tls": "maybe"}, "smtp_tls"),
        ({"host": "x", "from": "a@b.c", "port": "mail"}, "smtp_port"),
    ],
)
def test_wrong_settings_are_named(settings: dict[str, str], names: str) -> None:
    """Before anything is sent."""
    with pytest.raises(WrongSettingsError, match=names):
        make(settings)
