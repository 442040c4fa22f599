"""Settings: one table of name, default and sentence; an unknown name or a wrong type stops the start.

A setting comes from the environment (`STILEPOST_` and its name in capitals) or from a TOML file given with
`--settings`; the environment wins. `Settings` is the table: each field's metadata holds its sentence.
"""

from __future__ import annotations

# ruff: noqa: RUF009 - `_row` only wraps dataclasses.field, so that each row of the table is one line
import difflib
import re
import tomllib
import typing
from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any

from server.sentences import fallback, languages

PREFIX = "STILEPOST_"


class SettingsError(ValueError):
    """A setting that is unknown or has a wrong value; the text names it, where it stands, and the remedy."""


class Secret(str):
    """A string that never shows itself in a repr, so that no log or traceback carries it."""

    __slots__ = ()

    def __repr__(self) -> str:
        return "Secret('…')" if self else "Secret('')"


def _row(default: Any, says: str) -> Any:
    return field(default=default, metadata={"says": says})


@dataclass(frozen=True, slots=True)
class Settings:
    """Every setting there is, with its default."""

    database: str = _row(
        "sqlite+aiosqlite:///stilepost.db",
        "Where the journal is: an SQLAlchemy URL, sqlite+aiosqlite:///file or postgresql+asyncpg://host/name.",
    )
    host: str = _row("127.0.0.1", "The address the server listens on; behind a reverse proxy leave it.")
    port: int = _row(8437, "The port the server listens on; 0 takes any free one.")
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
    log_level: str = _row("info", "What is logged: debug, info, warning or error.")
    log_json: bool = _row(False, "Log one JSON object a line instead of plain lines.")
    max_body_bytes: int = _row(1_048_576, "The longest request body that is read; longer ones get 413.")
    connections_max: int = _row(
        1000,
        "How many connections may be open at once; past that the one that has asked nothing longest is closed.",
    )
    idle_seconds: float = _row(
        20.0, "How long a connection may take to ask something, or between two requests, before it is closed."
    )
    body_seconds: float = _row(30.0, "How long a request's body may take to come in.")
    guesses_per_quarter_hour: int = _row(
        10, "Wrong codes or tokens one address may try in 15 minutes before it must wait."
    )
    tick_seconds_max: float = _row(30.0, "The longest time between two looks at everything that is owed.")
    catch_up_seconds_max: float = _row(
        120.0,
        "How long a start waits for the channels to hand over what waited before it judges anybody.",
    )
    stream_ping_seconds: float = _row(15.0, "How often an open page stream is pinged to keep it alive.")
    shutdown_seconds: float = _row(5.0, "How long requests under way may take when the server ends.")
    telegram_token: Secret = _row(Secret(""), "The bot token of Telegram; empty = no Telegram.")
    telegram_base_url: str = _row(
        "", "Another server that speaks Telegram's bot API; empty = Telegram's own."
    )
    telegram_webhook_secret: Secret = _row(
        Secret(""), "Set it to have Telegram call us instead of us asking; needs public_url."
    )
    telegram_username: str = _row(
        "",
        "The bot's user name at Telegram, for start links; empty = asked of Telegram when somebody is invited, "
        "which takes telegram_token.",
    )
    smtp_host: str = _row("", "The mail server for notices by e-mail; empty = no e-mail.")
    smtp_port: int = _row(587, "The port of the mail server.")
    smtp_user: str = _row("", "The user name at the mail server.")
    smtp_password: Secret = _row(Secret(""), "The password at the mail server.")
    smtp_tls: str = _row("starttls", "How the mail connection is secured: starttls, tls or none.")
    mail_from: str = _row("", "The sender address of our e-mails.")
    webhook_secret: Secret = _row(
        Secret(""), "What signs notices that are POSTed to people's own addresses; empty = no webhooks."
    )
    text_gateway: bool = _row(
        False,
        "Take short texts from a gateway (SMS, satellite) at /hooks/text, with a token for each device.",
    )
    text_gateway_url: str = _row("", "Where answers and notices by short text are POSTed; empty = nowhere.")
    text_gateway_secret: Secret = _row(Secret(""), "What signs them; at least 16 characters.")
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
    server_token: Secret = _row(
        Secret(""), "For `stilepost bot`: the channel's token, made with `stilepost token NAME --channel …`."
    )

    def __post_init__(self) -> None:
        for name, allowed in _ONE_OF.items():
            value = getattr(self, name)
            if value not in allowed:
                raise SettingsError(
                    f"setting {name}: '{value}' is not one of {', '.join(allowed)}. Set it to one of them."
                )
        for name, (low, high) in _RANGES.items():
            value = getattr(self, name)
            if not low <= value <= high:
                raise SettingsError(
                    f"setting {name}: {value} is not between {low} and {high}. Choose a value in between."
                )
        if self.map_tiles and not _TILES.fullmatch(self.map_tiles):
            raise SettingsError(
                f"setting map_tiles: '{self.map_tiles}' is no address of tiles. Write it as "
                "https://tiles.example.org/{z}/{x}/{y}.png."
            )


_TILES = re.compile(r"(?=.*\{z\})(?=.*\{x\})(?=.*\{y\})https?://[A-Za-z0-9.:-]+/[^\s;,'\"]+")
_ONE_OF: Mapping[str, tuple[str, ...]] = {
    "log_level": ("debug", "info", "warning", "error"),
    "language": languages(),
    "smtp_tls": ("starttls", "tls", "none"),
}
_RANGES: Mapping[str, tuple[float, float]] = {
    "port": (0, 65535),
    "smtp_port": (1, 65535),
    "max_body_bytes": (1024, 64 * 1024 * 1024),
    "connections_max": (10, 100_000),
    "idle_seconds": (0.1, 600.0),
    "body_seconds": (0.1, 600.0),
    "guesses_per_quarter_hour": (1, 10_000),
    "tick_seconds_max": (0.1, 300.0),
    "catch_up_seconds_max": (0.0, 3600.0),
    "stream_ping_seconds": (0.1, 120.0),
    "shutdown_seconds": (0.1, 120.0),
}
_YES = ("true", "yes", "on", "1")
_NO = ("false", "no", "off", "0")
_WORDS = {**dict.fromkeys(_YES, True), **dict.fromkeys(_NO, False)}


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
    types = typing.get_type_hints(Settings)
    return tuple(
        Described(f.name, PREFIX + f.name.upper(), types[f.name].__name__, str(f.default), f.metadata["says"])
        for f in fields(Settings)
    )


def read_settings(env: Mapping[str, str], file: Path | None = None) -> Settings:
    """The settings from the environment and, under it, a TOML file.

    Raises SettingsError for the first unknown name, wrong type or value out of range.
    """
    types = typing.get_type_hints(Settings)
    values: dict[str, Any] = {}
    if file is not None:
        for written, value in _read_file(file).items():
            name = _known(written, types, f"in {file}")
            values[name] = _from_toml(name, value, types[name], file)
    for variable, text in env.items():
        if variable.startswith(PREFIX):
            name = _known(variable[len(PREFIX) :].lower(), types, f"as {variable} in the environment")
            values[name] = _from_text(name, text, types[name], variable)
    return Settings(**values)


def _read_file(file: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(file.read_text(encoding="utf-8"))
    except OSError as error:
        raise SettingsError(
            f"the settings file {file} can't be read ({error.strerror}). Check the path given to --settings."
        ) from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise SettingsError(f"the settings file {file} is not TOML: {error}. Correct that line.") from error


def _known(name: str, types: Mapping[str, type], where: str) -> str:
    if name in types:
        return name
    near = difflib.get_close_matches(name, types, n=1)
    remedy = f"Did you mean '{near[0]}'?" if near else "`stilepost settings` lists them all."
    raise SettingsError(f"there is no setting '{name}' ({where}). {remedy}")


def _from_toml(name: str, value: object, kind: type, file: Path) -> Any:
    if kind is float and type(value) is int:
        return float(value)
    if issubclass(kind, str) and isinstance(value, str):
        return kind(value)
    if type(value) is kind:
        return value
    raise SettingsError(
        f"setting {name} in {file}: {value!r} is not {_KIND_WORDS[kind]}. Write {name} = {_EXAMPLES[kind]}."
    )


def _from_text(name: str, text: str, kind: type, variable: str) -> Any:
    try:
        if kind is bool:
            return _WORDS[text.strip().lower()]
        return kind(text.strip()) if kind in (int, float) else kind(text)
    except (KeyError, ValueError):
        raise SettingsError(
            f"setting {name}: {variable} is '{text}', which is not {_KIND_WORDS[kind]}. "
            f"Set it to something like {_EXAMPLES[kind]}."
        ) from None


_KIND_WORDS: Mapping[type, str] = {
    bool: "true or false",
    int: "a whole number",
    float: "a number",
    str: "text",
    Secret: "text",
}
_EXAMPLES: Mapping[type, str] = {bool: "true", int: "8437", float: "30.0", str: '"text"', Secret: '"text"'}
