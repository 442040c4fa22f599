"""Settings: one table of name, default and sentence; an unknown name or a wrong type stops the start.

A setting comes from the environment (`STILEPOST_` and its name in capitals) or from a TOML file given with
`--settings`; the environment wins. `Settings` is the table: each field's description is its sentence.
"""

from __future__ import annotations

import difflib
import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal, get_args

from pydantic import BaseModel, ConfigDict, Field, SecretStr, ValidationError, field_validator
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from server.sentences import fallback, languages

PREFIX = "STILEPOST_"
_TILES = re.compile(r"(?=.*\{z\})(?=.*\{x\})(?=.*\{y\})https?://[A-Za-z0-9.:-]+/[^\s;,'\"]+")


class SettingsError(ValueError):
    """A setting that is unknown or has a wrong value; the text names it, where it stands, and the remedy."""


def _row(default: Any, says: str, ge: float | None = None, le: float | None = None) -> Any:
    return Field(default, description=says, ge=ge, le=le)


class Settings(BaseModel):
    """Every setting there is, with its default."""

    model_config = ConfigDict(frozen=True, validate_default=True)

    database: str = _row(
        "sqlite+aiosqlite:///stilepost.db",
        "Where the journal is: an SQLAlchemy URL, sqlite+aiosqlite:///file or postgresql+asyncpg://host/name.",
    )
    host: str = _row("127.0.0.1", "The address the server listens on; behind a reverse proxy leave it.")
    port: int = _row(8437, "The port the server listens on; 0 takes any free one.", ge=0, le=65535)
    public_url: str = _row(
        "", "How people reach the pages, such as https://crew.example.org; used in invitation links."
    )
    map_tiles: str = _row(
        "",
        "Where map tiles come from, such as https://tiles.example.org/{z}/{x}/{y}.png; every reader's browser asks there. "
        "Empty = the course is drawn on plain ground and nobody else is asked.",
    )
    map_tiles_credit: str = _row("", "Whom the map names under those tiles, as their terms ask.")
    behind_proxy: bool = _row(
        False, "Take the caller's address from X-Forwarded-For; only where a reverse proxy sets it."
    )
    language: str = _row(
        fallback(),
        f"The language of pages for somebody who is not logged in: {', '.join(languages())}.",
    )
    log_level: Literal["debug", "info", "warning", "error"] = _row(
        "info", "What is logged: debug, info, warning or error."
    )
    log_json: bool = _row(False, "Log one JSON object a line instead of plain lines.")
    max_body_bytes: int = _row(
        1_048_576, "The longest request body that is read; longer ones get 413.", ge=1024, le=64 * 1024 * 1024
    )
    connections_max: int = _row(
        1000,
        "How many connections may be open at once; past that the one that has asked nothing longest is closed.",
        ge=10,
        le=100_000,
    )
    idle_seconds: float = _row(
        20.0,
        "How long a connection may take to ask something, or between two requests, before it is closed.",
        ge=0.1,
        le=600.0,
    )
    body_seconds: float = _row(30.0, "How long a request's body may take to come in.", ge=0.1, le=600.0)
    guesses_per_quarter_hour: int = _row(
        10, "Wrong codes or tokens one address may try in 15 minutes before it must wait.", ge=1, le=10_000
    )
    tick_seconds_max: float = _row(
        30.0, "The longest time between two looks at everything that is owed.", ge=0.1, le=300.0
    )
    catch_up_seconds_max: float = _row(
        120.0,
        "How long a start waits for the channels to hand over what waited before it judges anybody.",
        ge=0.0,
        le=3600.0,
    )
    stream_ping_seconds: float = _row(
        15.0, "How often an open page stream is pinged to keep it alive.", ge=0.1, le=120.0
    )
    shutdown_seconds: float = _row(
        5.0, "How long requests under way may take when the server ends.", ge=0.1, le=120.0
    )
    telegram_token: SecretStr = _row(SecretStr(""), "The bot token of Telegram; empty = no Telegram.")
    telegram_base_url: str = _row(
        "", "Another server that speaks Telegram's bot API; empty = Telegram's own."
    )
    telegram_webhook_secret: SecretStr = _row(
        SecretStr(""), "Set it to have Telegram call us instead of us asking; needs public_url."
    )
    telegram_username: str = _row(
        "",
        "The bot's user name at Telegram, for start links; empty = asked of Telegram when somebody is invited, "
        "which takes telegram_token.",
    )
    smtp_host: str = _row("", "The mail server for notices by e-mail; empty = no e-mail.")
    smtp_port: int = _row(587, "The port of the mail server.", ge=1, le=65535)
    smtp_user: str = _row("", "The user name at the mail server.")
    smtp_password: SecretStr = _row(SecretStr(""), "The password at the mail server.")
    smtp_tls: Literal["starttls", "tls", "none"] = _row(
        "starttls", "How the mail connection is secured: starttls, tls or none."
    )
    mail_from: str = _row("", "The sender address of our e-mails.")
    webhook_secret: SecretStr = _row(
        SecretStr(""), "What signs notices that are POSTed to people's own addresses; empty = no webhooks."
    )
    text_gateway: bool = _row(
        False,
        "Take short texts from a gateway (SMS, satellite) at /hooks/text, with a token for each device.",
    )
    text_gateway_url: str = _row("", "Where answers and notices by short text are POSTed; empty = nowhere.")
    text_gateway_secret: SecretStr = _row(SecretStr(""), "What signs them; at least 16 characters.")
    push_contact: str = _row(
        "",
        "An e-mail address of yours that the push services of browsers are told; empty = no web push. With one, people "
        "can let the page wake their phone, where the server is reached by https.",
    )
    channels_apart: str = _row(
        "",
        "Channels that run on their own with `stilepost bot`, such as 'telegram email': the server queues for them "
        "and leaves the sending to them.",
    )
    server_url: str = _row("", "For `stilepost bot`: where the server is, such as https://crew.example.org.")
    server_token: SecretStr = _row(
        SecretStr(""),
        "For `stilepost bot`: the channel's token, made with `stilepost token NAME --channel …`.",
    )

    @field_validator("language")
    @classmethod
    def _read_here(cls, value: str) -> str:
        if value not in languages():
            raise ValueError(f"is not one of {', '.join(languages())}. Set it to one of them.")
        return value

    @field_validator("map_tiles")
    @classmethod
    def _of_tiles(cls, value: str) -> str:
        if value and not _TILES.fullmatch(value):
            raise ValueError("is no address of tiles. Write it as https://tiles.example.org/{z}/{x}/{y}.png.")
        return value


@dataclass(frozen=True, slots=True)
class Described:
    """One row of the table, for help texts and documentation."""

    name: str
    env: str
    kind: str
    default: str
    says: str


def table() -> tuple[Described, ...]:
    """Every setting in order, with its environment variable, type, default and sentence."""
    return tuple(
        Described(n, PREFIX + n.upper(), _kind(f).__name__, str(f.default), f.description or "")
        for n, f in Settings.model_fields.items()
    )


def _kind(row: FieldInfo) -> type:
    """What is written for a setting: a text, unless it is a number or true or false."""
    kinds: Mapping[Any, type] = {bool: bool, int: int, float: float}
    return kinds.get(row.annotation, str)


def read_settings(env: Mapping[str, str], file: Path | None = None) -> Settings:
    """The settings from the environment and, under it, a TOML file.

    Raises SettingsError for the first unknown name, wrong type or value out of range.
    """
    written = {} if file is None else _read_file(file)
    said = {v.removeprefix(PREFIX).lower(): text for v, text in env.items() if v.startswith(PREFIX)}
    places = [(n, f"in {file}") for n in written]
    places += [(n, f"as {PREFIX}{n.upper()} in the environment") for n in said]
    for name, where in places:
        if name not in Settings.model_fields:
            near = difflib.get_close_matches(name, Settings.model_fields, n=1)
            remedy = f"Did you mean '{near[0]}'?" if near else "`stilepost settings` lists them all."
            raise SettingsError(f"there is no setting '{name}' ({where}). {remedy}")
    for name, value in written.items():
        kind = _kind(Settings.model_fields[name])
        if type(value) is not kind and (kind, type(value)) != (float, int):
            words, example = _KINDS[kind]
            raise SettingsError(
                f"setting {name} in {file}: {value!r} is not {words}. Write {name} = {example}."
            )
    try:
        return Settings(**{**written, **said})
    except ValidationError as error:
        raise SettingsError(_in_words(error.errors()[0])) from None


def _read_file(file: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(file.read_text(encoding="utf-8"))
    except OSError as error:
        raise SettingsError(
            f"the settings file {file} can't be read ({error.strerror}). Check the path given to --settings."
        ) from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise SettingsError(f"the settings file {file} is not TOML: {error}. Correct that line.") from error


def _in_words(wrong: ErrorDetails) -> str:
    """A value that is refused, and what to set instead; of the wrong kind it can only be in the environment."""
    name, value, row = str(wrong["loc"][0]), wrong["input"], Settings.model_fields[str(wrong["loc"][0])]
    if wrong["type"] == "value_error":
        return f"setting {name}: '{value}' {wrong['ctx']['error']}"
    if wrong["type"] == "literal_error":
        return f"setting {name}: '{value}' is not one of {', '.join(get_args(row.annotation))}. Set it to one of them."
    if wrong["type"] in ("greater_than_equal", "less_than_equal"):
        low, high = row.metadata[0].ge, row.metadata[1].le
        return f"setting {name}: {value} is not between {low} and {high}. Choose a value in between."
    words, example = _KINDS[_kind(row)]
    return (
        f"setting {name}: {PREFIX}{name.upper()} is '{value}', which is not {words}. "
        f"Set it to something like {example}."
    )


_KINDS: Mapping[type, tuple[str, str]] = {
    bool: ("true or false", "true"),
    int: ("a whole number", "8437"),
    float: ("a number", "30.0"),
    str: ("text", '"text"'),
}
