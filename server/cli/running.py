"""Where the server of a database listens: written beside the database while it runs, so that other commands find it on
whatever port it was started.

Only a database that is a file has such a note; of a server's database the settings or `--url` say where.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

import structlog
from sqlalchemy.engine import make_url
from sqlalchemy.exc import ArgumentError

__all__ = ["listening", "written"]

log = structlog.get_logger("serve")
SUFFIX = ".listening"


def _note(database: str) -> Path | None:
    """The note's path; None where the database is no file."""
    with suppress(ArgumentError):
        url = make_url(database)
        if url.get_backend_name() == "sqlite" and url.database not in (None, "", ":memory:"):
            return Path(f"{url.database}{SUFFIX}")
    return None


@contextmanager
def listening(database: str, url: str) -> Iterator[None]:
    """While the block runs, the note says `url`. A note that can't be written costs nobody the server."""
    path = _note(database)
    text = json.dumps({"url": url})
    if path is not None:
        try:
            path.write_text(text, encoding="utf-8")
        except OSError as error:
            log.warning("where this server listens can't be written", path=str(path), why=error.strerror)
    try:
        yield
    finally:
        # Another server on this database may have written its own since.
        if path is not None and _text(path) == text:
            with suppress(OSError):
                path.unlink()


def written(database: str) -> str:
    """The address in the note, '' where there is none that can be read. A server that was killed leaves its note."""
    path = _note(database)
    try:
        url = json.loads(_text(path))["url"] if path is not None else ""
    except (ValueError, TypeError, KeyError):
        return ""
    return url if isinstance(url, str) and url.startswith("http://") else ""


def _text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError):
        return ""
