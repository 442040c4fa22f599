"""What the server tells the bot of who is asking and of their events; what became of a report or an answer."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from server.event.model import Contact, Part, Person
from server.facts.entry import Kind
from server.forecast.outlook import Window


@dataclass(frozen=True, slots=True)
class NotedAnswer:
    """POST …/checkins: it is kept. `status` 'noted' | 'same again' | 'conflict'; `doubt` why it is
    unconfirmed."""

    entry: str
    status: str
    kind: Kind
    at: datetime
    runner: str
    runner_name: str
    point: str | None = None
    name: str = ""
    unconfirmed: bool = False
    doubt: str = ""
    told: tuple[str, ...] = ()
    next_name: str = ""
    next_window: Window | None = None
    undo_until: datetime | None = None


@dataclass(frozen=True, slots=True)
class PointHere:
    """A point as the bot needs it to understand names."""

    id: str
    name: str
    km: float
    also: tuple[str, ...] = ()
    crew_access: bool = False
    finish: bool = False


@dataclass(frozen=True, slots=True)
class RunnerHere:
    """A runner as the bot needs her. `reached` is the last point known reached, `at` the point where she is
    now, `due` the point where the asker would see her next, `own` that of the asker's own next meeting once they
    are to be there: who waits there speaks of it."""

    id: str
    name: str
    bib: str
    start: datetime
    points: tuple[PointHere, ...]
    reached: str | None = None
    at: str | None = None
    going: str = "moving"
    due: str | None = None
    own: str | None = None


@dataclass(frozen=True, slots=True)
class EventHere:
    """An event in which the asker has a part. `people`: id and name of those whom their part may see; `stands`: the
    point where the asker stands, as far as is known."""

    id: str
    name: str
    time_zone: str
    starts: datetime
    parts: tuple[Part, ...]
    runners: tuple[RunnerHere, ...]
    race_control: Contact
    emergency_number: str
    open_notices: tuple[int, ...] = ()
    people: tuple[tuple[str, str], ...] = ()
    rescue: Contact | None = None
    stands: str | None = None


@dataclass(frozen=True, slots=True)
class MeAnswer:
    """GET /v1/me: who is asking, and the events they have a part in (those still running first)."""

    person: Person
    events: tuple[EventHere, ...]


@dataclass(frozen=True, slots=True)
class JoinAnswer:
    """POST /v1/join: who you are and your parts, before (`accepted` False) and after you accept."""

    person: str
    name: str
    event: str
    event_name: str
    parts: tuple[Part, ...]
    accepted: bool
    runner_names: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class AnsweredAnswer:
    """POST /v1/notices/{short}/answer: whether the answer holds (somebody may have been first)."""

    short: int
    holder: str
    yours: bool
    look_again: datetime | None = None
    kind: str = ""
