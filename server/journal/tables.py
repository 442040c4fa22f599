"""The tables, as SQLAlchemy Core. Migrations are the record of how they came to be; a test holds both equal.

Ids are text and derived or random, never drawn from a database sequence: a copy keeps every id, on either
database. Values that rooms share are JSON text with a version (codec.py); columns exist for what is searched.
"""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any

from sqlalchemy import (
    BigInteger,
    Boolean,
    Column,
    DateTime,
    Dialect,
    Float,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    PrimaryKeyConstraint,
    String,
    Table,
    Text,
    TypeDecorator,
    UniqueConstraint,
)

__all__ = ["UtcDateTime", "metadata"]


class UtcDateTime(TypeDecorator[datetime]):
    """An aware moment: naive ones are refused, kept in UTC, handed out in UTC.

    SQLite's own type drops the offset silently (12:00+01:00 came back as naive 12:00), hence this.
    """

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """To UTC, without offset where the database keeps none."""
        if value is None:
            return None
        if value.tzinfo is None or value.utcoffset() is None:
            raise ValueError(f"{value.isoformat()} has no time zone")
        at = value.astimezone(UTC)
        return at.replace(tzinfo=None) if dialect.name == "sqlite" else at

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:  # noqa: ARG002
        """Back as an aware moment in UTC."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


metadata = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "pk": "pk_%(table_name)s",
    }
)


def _at(name: str, **kw: Any) -> Column[datetime]:
    return Column(name, UtcDateTime(), **kw)


def _text(name: str, *args: Any, **kw: Any) -> Column[str]:
    kw.setdefault("nullable", False)
    return Column(name, Text(), *args, **kw)


def _event() -> Column[str]:
    return _text("event", ForeignKey("event.id"))


person = Table(
    "person",
    metadata,
    _text("id", primary_key=True),
    _text("name"),
    _text("body"),
    _at("blanked_at"),
)

event = Table(
    "event",
    metadata,
    _text("id", primary_key=True),
    Column("version", Integer, nullable=False),
    Column("entries", Integer, nullable=False, default=0),
    Column("notices", Integer, nullable=False, default=0),
    Column("blanks", Integer, nullable=False, default=0),
    Column("passages", Integer, nullable=False, default=0),
    _at("keep_until"),
    _at("blanked_at"),
)

event_version = Table(
    "event_version",
    metadata,
    _event(),
    Column("version", Integer, nullable=False),
    _text("name"),
    _text("text"),
    _text("sha256"),
    _text("by"),
    _at("at", nullable=False),
    PrimaryKeyConstraint("event", "version"),
)

blob = Table(
    "blob",
    metadata,
    Column("sha256", String(64), primary_key=True),
    Column("content", LargeBinary, nullable=False),
)

event_file = Table(
    "event_file",
    metadata,
    _text("event"),
    Column("version", Integer, nullable=False),
    _text("name"),
    Column("sha256", String(64), ForeignKey("blob.sha256"), nullable=False),
    PrimaryKeyConstraint("event", "version", "name"),
    ForeignKeyConstraint(["event", "version"], ["event_version.event", "event_version.version"]),
)

point = Table(
    "point",
    metadata,
    _event(),
    _text("course"),
    _text("id"),
    _text("name"),
    Column("km", Float),
    PrimaryKeyConstraint("event", "id"),
)

runner = Table(
    "runner",
    metadata,
    _event(),
    _text("id"),
    _text("person"),
    _text("name"),
    _text("bib"),
    _text("course"),
    _at("start", nullable=False),
    PrimaryKeyConstraint("event", "id"),
)

part = Table(
    "part",
    metadata,
    _event(),
    _text("person", ForeignKey("person.id"), index=True),
    _text("kind"),
    _text("runner"),
    _text("body"),
    PrimaryKeyConstraint("event", "person", "kind", "runner"),
)

address = Table(
    "address",
    metadata,
    _text("channel"),
    _text("address"),
    _text("person", ForeignKey("person.id"), index=True),
    _at("bound_at", nullable=False),
    PrimaryKeyConstraint("channel", "address"),
)

crew_group = Table(
    "crew_group",
    metadata,
    _text("id", primary_key=True),
    _text("channel"),
    _text("address"),
    _event(),
    _text("bound_by"),
    _at("bound_at", nullable=False),
    UniqueConstraint("channel", "address", "event"),
)

destination = Table(
    "destination",
    metadata,
    _text("channel"),
    _text("address"),
    _at("next_at"),
    _at("blocked_at"),
    PrimaryKeyConstraint("channel", "address"),
)

token = Table(
    "token",
    metadata,
    _text("id", primary_key=True),
    Column("sha256", String(64), nullable=False, unique=True),
    _text("person", ForeignKey("person.id"), nullable=True, index=True),
    _text("device"),
    _text("scopes"),
    _at("created_at", nullable=False),
    _at("expires_at"),
    _at("revoked_at"),
)

invitation = Table(
    "invitation",
    metadata,
    _text("id", primary_key=True),
    Column("sha256", String(64), nullable=False, unique=True),
    _text("person", ForeignKey("person.id")),
    _event(),
    _text("by"),
    _at("made_at", nullable=False),
    _at("expires_at", nullable=False),
    _at("used_at"),
    _at("revoked_at"),
)

guess = Table(
    "guess",
    metadata,
    _text("guesser", primary_key=True),
    _at("since", nullable=False),
    Column("wrong", Integer, nullable=False),
)

entry = Table(
    "entry",
    metadata,
    _event(),
    Column("number", Integer, nullable=False),
    _text("id", unique=True),
    _text("runner", nullable=True),
    _text("kind"),
    _text("point", nullable=True),
    _text("by"),
    _text("sender"),
    _text("key"),
    _at("seen_at", nullable=False),
    _at("sent_at", nullable=False),
    _at("received_at", nullable=False),
    Column("content_hash", String(64), nullable=False),
    _text("body"),
    _at("blanked_at"),
    PrimaryKeyConstraint("event", "number"),
    UniqueConstraint("sender", "key"),
)

conflict = Table(
    "conflict",
    metadata,
    _event(),
    _text("entry", ForeignKey("entry.id")),
    Column("content_hash", String(64), nullable=False),
    _at("received_at", nullable=False),
    _text("body"),
    PrimaryKeyConstraint("entry", "content_hash"),
)

passage = Table(
    "passage",
    metadata,
    _event(),
    _text("bib"),
    _text("point"),
    _at("at"),
    Column("number", Integer, nullable=False),
    _text("by"),
    PrimaryKeyConstraint("event", "bib", "point"),
    Index("ix_passage_event_number", "event", "number"),
)

picture = Table(
    "picture",
    metadata,
    _text("id", primary_key=True),
    _event(),
    _text("entry", nullable=True),
    _text("by"),
    _text("media_type"),
    Column("content", LargeBinary, nullable=False),
    _at("at", nullable=False),
    _at("blanked_at"),
)

notice = Table(
    "notice",
    metadata,
    _text("key", primary_key=True),
    _event(),
    Column("short", Integer, nullable=False),
    _text("runner"),
    _text("person", index=True),
    _text("kind"),
    _text("point"),
    Column("episode", Integer, nullable=False),
    _text("urgency"),
    _at("owed_at", nullable=False),
    _at("use_by"),
    Column("needs_answer", Boolean, nullable=False),
    _text("body"),
    _at("made_at", nullable=False),
    _at("sent_at"),
    _at("answered_at"),
    _text("answer"),
    _at("failed_at"),
    _at("overtaken_at"),
    UniqueConstraint("event", "short"),
    Index("ix_notice_what_became", "event", "short", "sent_at", "failed_at", "answered_at"),
)

delivery = Table(
    "delivery",
    metadata,
    _text("id", primary_key=True),
    _text("notice", ForeignKey("notice.key"), index=True),
    _event(),
    _text("runner"),
    _text("person"),
    Column("rank", Integer, nullable=False),
    _at("use_by"),
    _text("channel"),
    _text("address"),
    _text("state"),
    Column("tries", Integer, nullable=False),
    _at("made_at", nullable=False),
    _at("due_at", nullable=False),
    _at("held_until"),
    _at("lease_until"),
    _text("server", nullable=True),
    _at("sent_at"),
    Column("possible_repeat", Boolean, nullable=False),
    _text("message_ref"),
    _text("detail"),
    _text("text"),
    UniqueConstraint("notice", "channel", "address"),
    Index("ix_delivery_waiting", "channel", "state", "due_at"),
)

attempt = Table(
    "attempt",
    metadata,
    _text("delivery", ForeignKey("delivery.id")),
    Column("number", Integer, nullable=False),
    _at("claimed_at", nullable=False),
    _text("claimed_by"),
    _at("reported_at"),
    _text("outcome", nullable=True),
    _text("detail"),
    _text("message_ref"),
    _text("text"),
    PrimaryKeyConstraint("delivery", "number"),
)

answer = Table(
    "answer",
    metadata,
    _text("id", primary_key=True),
    _text("notice", ForeignKey("notice.key"), index=True),
    _text("person"),
    _text("words"),
    _at("at", nullable=False),
)

update_ = Table(
    "raw_update",
    metadata,
    _text("channel"),
    Column("update_id", BigInteger, nullable=False),
    _text("id", unique=True),
    _text("body"),
    _at("received_at", nullable=False),
    Column("tries", Integer, nullable=False),
    _at("lease_until"),
    _text("server", nullable=True),
    _at("done_at"),
    _text("problem"),
    _text("chat", default=""),
    Column("urgent", Boolean, nullable=False, default=False),
    PrimaryKeyConstraint("channel", "update_id"),
    Index("ix_raw_update_waiting", "channel", "done_at"),
)

cursor = Table(
    "channel_cursor",
    metadata,
    _text("channel", primary_key=True),
    Column("next_id", BigInteger, nullable=False),
)

heartbeat = Table(
    "heartbeat",
    metadata,
    _text("component", primary_key=True),
    _at("at", nullable=False),
    Column("gap_s", Float, nullable=False),
    _at("caught_up_at"),
)

outage = Table(
    "outage",
    metadata,
    _text("component"),
    _at("start", nullable=False),
    _at("end", nullable=False),
    PrimaryKeyConstraint("component", "start"),
)

lease = Table(
    "lease",
    metadata,
    _text("name", primary_key=True),
    _text("holder"),
    _at("until", nullable=False),
    _at("since"),
    _text("server", nullable=True),
)

kept_secret = Table(
    "kept_secret",
    metadata,
    _text("name", primary_key=True),
    _text("value"),
)

server_life = Table(
    "server_life",
    metadata,
    _text("server", primary_key=True),
    _at("at", nullable=False),
)

dialogue = Table(
    "dialogue",
    metadata,
    _text("channel"),
    _text("address"),
    _text("place"),
    Column("version", Integer, nullable=False),
    _text("body"),
    _at("at", nullable=False),
    PrimaryKeyConstraint("channel", "address", "place"),
)

turn = Table(
    "turn",
    metadata,
    _text("sender"),
    _text("key"),
    _text("reply"),
    _at("at", nullable=False),
    PrimaryKeyConstraint("sender", "key"),
)
