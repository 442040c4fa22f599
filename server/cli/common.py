"""What every subcommand needs: settings, an open journal for the time of a call, errors as people read them."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Coroutine
from contextlib import asynccontextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Any, TypeVar

import click

from bot.channels.addresses import WrongSettingsError
from bot.channels.installed import channels_of
from server.api.building import BuildError, Built, build
from server.cli.running import written
from server.conversation.telling.mistakes import file_language
from server.event import Problem, Severity
from server.event import parse_event as parse
from server.event.model import Event
from server.journal import Journal, JournalError
from server.sentences import sentence
from server.settings import Settings, SettingsError

T = TypeVar("T")


class Failed(click.ClickException):
    """A mistake told to a person: what was wrong, where, and what to do, in `language`. Exit code 1."""

    def __init__(self, message: str, language: str = "") -> None:
        super().__init__(message)
        self.language = language

    def show(self, file: IO[Any] | None = None) -> None:
        """Print it, the word before it in the same language."""
        said = sentence(self.language, "cli-error", what=self.format_message())
        click.echo(said, file=file, err=file is None)


@dataclass(frozen=True, slots=True)
class CliContext:
    """What the subcommands get from the command itself."""

    settings: Settings


def run(work: Coroutine[Any, Any, T]) -> T:
    """Run one call to its end; what the journal or a channel's settings refuse is told as it is."""
    try:
        return asyncio.run(work)
    except (JournalError, SettingsError, WrongSettingsError) as error:
        raise Failed(str(error)) from error


@asynccontextmanager
async def journal(settings: Settings) -> AsyncIterator[Journal]:
    """The journal of the settings, open for the block."""
    try:
        # Notices are queued only where somebody sends them on: the pages, and the channels of the settings.
        opened = await Journal.open(settings.database, channels=("web", *channels_of(settings)))
    except (JournalError, SettingsError):
        raise
    except Exception as error:
        raise Failed(
            f"the database can't be opened ({type(error).__name__}): {_without_secret(settings.database)}. "
            "Check STILEPOST_DATABASE and that its folder or server is there."
        ) from error
    try:
        yield opened
    finally:
        await opened.close()


def _without_secret(url: str) -> str:
    scheme, _, rest = url.partition("://")
    return f"{scheme}://…@{rest.rpartition('@')[2]}" if "@" in rest else url


async def the_event(opened: Journal, event: str | None) -> str:
    """The event named, or the only one there is."""
    stored = [v.event for v in await opened.list_events()]
    if event is None and len(stored) == 1:
        return stored[0]
    if event not in stored or event is None:
        listed = ", ".join(stored) or "none; `stilepost load event.toml` stores one"
        raise Failed(
            f"--event: {'name one' if event is None else f'there is no event {event!r}'}. Stored: {listed}."
        )
    return event


async def stored_event(opened: Journal, event_id: str) -> Event:
    """An event as last stored."""
    stored = await opened.load_event(event_id)
    return build(stored.text, stored.files, version=stored.version, accepted=True).event


async def read_by_all(opened: Journal, event_id: str) -> str:
    """The language that the people of a stored event read."""
    return file_language((await opened.load_event(event_id)).text)


def known(kind: str, value: str, there_are: list[str]) -> None:
    """Failed for an id the event does not have, with those it has."""
    if value not in there_are:
        raise Failed(f"the event has no {kind} '{value}'. Use one of: {', '.join(there_are)}.")


def base_url(settings: Settings) -> str:
    """Where people find the server: its public address, or else this machine's own, which only it can open: where the
    server of that database runs, else where the settings would have it."""
    own = f"http://{settings.host}:{settings.port}"
    return (settings.public_url or written(settings.database) or own).rstrip("/")


@dataclass(frozen=True, slots=True, eq=False)
class OnDisk:
    """An event file as found: its text, the files it names (routes, own runs, results), and what it builds to."""

    text: str
    files: dict[str, bytes]
    built: Built
    language: str = ""


def read_event(path: Path, language: str | None = None) -> OnDisk:
    """Read an event file and the files it names, and build it; Failed with every mistake, in the language of the file's
    people where none is given."""
    text = text_of(path)
    files = _named(path, text)
    language = language or file_language(text)
    try:
        return OnDisk(text, files, build(text, files, str(path), language=language), language)
    except BuildError as error:
        raise Failed(mistakes(error.problems, language), language) from error


def text_of(path: Path) -> str:
    """A file's text; Failed where it can't be read as UTF-8."""
    try:
        return path.read_text(encoding="utf-8")
    except OSError as error:
        raise Failed(f"{path}: can't be read ({error.strerror}). Check the path.") from error
    except UnicodeDecodeError as error:
        raise Failed(f"{path}: is not UTF-8 text (byte {error.start}). Save it as UTF-8.") from error


def _named(path: Path, text: str) -> dict[str, bytes]:
    """The files an event names, from beside it; one that is missing is left to the check to tell."""
    parsed = parse(text, str(path))
    files: dict[str, bytes] = {}
    for name in parsed.event.files() if parsed.event else ():
        found = path.parent / name
        if found.resolve().is_relative_to(path.parent.resolve()) and found.is_file():
            files[name] = found.read_bytes()
    return files


def mistakes(problems: tuple[Problem, ...], language: str = "") -> str:
    """Every problem on a line of its own, and how many stand in the way."""
    errors = sum(p.severity is Severity.ERROR for p in problems)
    last = sentence(language, "check-mistakes", count=errors)
    return "\n".join([*(p.in_language(language) for p in problems), last])
