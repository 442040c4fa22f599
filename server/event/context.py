"""What has been read of an event file so far, as far as the tables read after it need it."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from typing import Any, Generic, TypeVar
from zoneinfo import ZoneInfo

from server.event.lines import Path
from server.event.table_reader import Problems, did_you_mean
from server.sentences import say

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class At(Generic[T]):
    """A value and where in the file it stands."""

    value: T
    path: Path


@dataclass(slots=True)
class ReadSoFar:
    """`starts_known` is false when the start could not be read: then no time is checked. `languages`: those there are; ()
    lets any word stand for one. `refs`: ids that the file uses: where, of what, which. `parts`: those of people read."""

    report: Problems
    languages: Collection[str] = ()
    zone: str = "UTC"
    starts: datetime = datetime(2000, 1, 1, tzinfo=UTC)
    starts_known: bool = False
    limit: timedelta | None = None
    course_ids: list[str] = field(default_factory=list)
    runner_ids: list[str] = field(default_factory=list)
    waves: dict[str, datetime] = field(default_factory=dict)
    course_of: dict[Path, str] = field(default_factory=dict)
    parts: list[At[Any]] = field(default_factory=list)
    refs: list[tuple[Path, str, str]] = field(default_factory=list)
    astray: set[Path] = field(default_factory=set)
    """Points and parts that name a kind there is none of: what would be missing by that is not told besides."""

    def known(self, path: Path, what: str, word: str | None, ids: Collection[str]) -> bool:
        """Note an id that there is none of; True when it is fine or not given."""
        if not word or word in ids:
            return True
        else_say = say("do-known", ids=", ".join(ids)) if ids else say("do-no-file-yet", what=what)
        self.report.error(path, say("wrong-no-such", what=what, word=word), did_you_mean(word, ids, else_say))
        return False

    def local_start(self) -> datetime:
        """The start as naive wall time."""
        return self.starts.astimezone(ZoneInfo(self.zone)).replace(tzinfo=None)
