"""What the server tells the bot of who is asking and of their events; what became of a report or an answer."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime

from server.event.model import Contact, Part, Person, Rules
from server.facts.awaiting import Awaited
from server.facts.entry import Kind
from server.forecast.outlook import Window


@dataclass(frozen=True, slots=True)
class NotedAnswer:
    """POST …/checkins: it is kept. `status` 'noted' | 'same again' | 'conflict'; `doubt` why it is
    unconfirmed; `no_alarm`: 'stand down' was said and no alarm is open, nothing else was changed; `joins`: a call
    for help joined an alarm that was open, and who has that ('' nobody); `own_place`: a shared place was kept as its
    sender's, not hers. Of who comes to meetings `person` is the name of whom it is about, `why` they can't come, `goes`
    who holds the meeting now. Of words for others `waits` are who reads them later, and when, `unheard` who can't be told.
    `yours`: what it changes for whoever reported it, as a notice would say it."""

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
    no_alarm: bool = False
    joins: str | None = None
    own_place: bool = False
    person: str = ""
    why: str = ""
    goes: str = ""
    yours: tuple[str, ...] = ()
    waits: tuple[tuple[str, datetime], ...] = ()
    unheard: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ChangedFor:
    """What a change of the plan is to one person, worded for the asker, a line each."""

    id: str
    name: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FollowersAnswer:
    """Whether a link for followers holds; `link` itself the once that it is given."""

    on: bool
    link: str = ""


@dataclass(frozen=True, slots=True)
class Invited:
    """The invitation of somebody who was added: the code is shown this once. `link` opens the page with it."""

    name: str
    code: str
    link: str


@dataclass(frozen=True, slots=True)
class ChangeAnswer:
    """POST …/changes: `people` whom it concerns and how, `minds` what will not work then, or not surely; `refused` why it
    can't be. Once it is `done`, `version` is the plan's and `told` are the names of those who hear it; before, the one it
    was looked at against. `entry`: what moved a cut-off; `invited`: of a person who was added, their invitation."""

    version: int
    done: bool
    people: tuple[ChangedFor, ...] = ()
    minds: tuple[str, ...] = ()
    refused: tuple[str, ...] = ()
    told: tuple[str, ...] = ()
    entry: str = ""
    invited: Invited | None = None


@dataclass(frozen=True, slots=True)
class PointHere:
    """A point as the bot needs it to understand names. `signal`: how it is there by the file, `parking` where crew park, ''
    where neither is said. `beside`: the names of the stretches of the course, of which a word may be a point's too."""

    id: str
    name: str
    km: float
    also: tuple[str, ...] = ()
    crew_access: bool = False
    finish: bool = False
    signal: str = ""
    parking: str = ""
    beside: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class RunnerHere:
    """A runner as the bot needs her. `reached` is the last point known reached, `at` the point where she is
    now, `due` the point where the asker would see her next, `own` that of the asker's own next meeting once they
    are to be there: who waits there speaks of it. `alarm`: the kind of the alarm open about her; `on_it`: the asker's
    words go on to those who answer the call for help about her. `gone_on`: nobody has reported her out of `at`, and she has
    most likely left it. `clothing`, `torch`: what she wears and carries, as the file has it. `known_at`: of
    when the last is that is known of her."""

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
    alarm: str = ""
    on_it: bool = False
    gone_on: bool = False
    clothing: str = ""
    torch: str = ""
    known_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class EventHere:
    """An event in which the asker has a part. `people`: id and name of those whom their part may see; `stands`: the
    point where the asker stands, as far as is known; `quiet_until` until when they want no news; `reminders`: entry
    and time of those they have asked for that are still to come, `awaited` what they want to be
    told of at once; `rules` as the file has them; `may_change`: whether the asker may change the plan; `asked_back`
    the runner of whose race they were asked three things afterwards, '' for none."""

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
    quiet_until: datetime | None = None
    reminders: tuple[tuple[str, datetime], ...] = ()
    awaited: tuple[Awaited, ...] = ()
    rules: Rules = field(default_factory=Rules)
    may_change: bool = False
    asked_back: str = ""


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
    """POST /v1/notices/{short}/answer: whether the answer holds (somebody may have been first). `covers`: what it did to who
    comes to a meeting (a `Kind` of entry), with `told` those who have heard of it."""

    short: int
    holder: str
    yours: bool
    look_again: datetime | None = None
    kind: str = ""
    covers: str = ""
    told: tuple[str, ...] = ()
