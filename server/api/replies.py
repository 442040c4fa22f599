"""What the server answers beside the answers to questions (`server.conversation.telling.answer`): the shapes of its other
calls, as frozen values that travel as JSON."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from server.conversation.telling.answer import CutOffAnswer, ForecastAnswer, MeetingAnswer
from server.conversation.values import Menu
from server.event.model import Contact, Part


@dataclass(frozen=True, slots=True)
class PositionsNoted:
    """What became of a batch of positions; `conflicts` are keys that came before with another place."""

    noted: int
    same_again: int
    unconfirmed: int
    conflicts: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Joined:
    """POST /v1/join: who you are and your parts. `token` only for a device that joins by itself."""

    person: str
    name: str
    event: str
    event_name: str
    parts: tuple[Part, ...]
    runner_names: tuple[str, ...]
    accepted: bool
    token: str = ""


@dataclass(frozen=True, slots=True)
class Stored:
    """POST /v1/inbox: how many updates were new."""

    new: int


@dataclass(frozen=True, slots=True)
class RawUpdateOut:
    """A stored update to work on; `id` names it here, `update_id` at its channel."""

    id: str
    update_id: str
    body: str
    received_at: datetime
    tries: int


@dataclass(frozen=True, slots=True)
class RawUpdates:
    """POST /v1/inbox/next."""

    updates: tuple[RawUpdateOut, ...]


@dataclass(frozen=True, slots=True)
class StartListStored:
    """The version that holds a start list now; bibs added, bibs changed, how many stood there already as they are in it, and
    the names of runners who are not in it and stay."""

    version: int
    added: tuple[str, ...]
    changed: tuple[str, ...]
    same: int
    not_listed: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PassagesStored:
    """How many passages were new, changed what was known, were known; of how many rows nothing was taken, and why of each of
    the first of them."""

    added: int
    changed: int
    same: int
    not_taken: int
    why: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PointCounts:
    """How many were reported in at a point, how many out or through, how many are there, how many are yet to come."""

    course: str
    point: str
    name: str
    km: float
    came: int
    left: int
    here: int
    to_come: int


@dataclass(frozen=True, slots=True)
class FieldRunner:
    """One runner of a field. `late_at`: the point where she should have been reported by `late_since`, as it stood when she
    was last heard of; `cut_off_at` the next cut-off, with the odds of making it as they stood then; `missed` one that she
    has missed by the rule; `alarm`: one about her is open."""

    id: str
    bib: str
    name: str
    course: str
    going: str
    alarm: bool
    started: bool
    last_name: str = ""
    last_at: datetime | None = None
    late_at: str = ""
    late_since: datetime | None = None
    cut_off_at: str = ""
    cut_off: datetime | None = None
    odds: float | None = None
    missed: str = ""
    retired_how: str = ""


@dataclass(frozen=True, slots=True)
class FieldAnswer:
    """The whole field, and each point with its counts. Runners in this order: alarms, late, cut-off missed or in danger,
    then by bib."""

    event: str
    name: str
    runners: tuple[FieldRunner, ...]
    points: tuple[PointCounts, ...]


@dataclass(frozen=True, slots=True)
class Done:
    """A call that has nothing to say but that it is done."""

    done: bool = True


@dataclass(frozen=True, slots=True)
class Held:
    """POST /v1/inbox/lease: whether you are the one that listens."""

    held: bool


@dataclass(frozen=True, slots=True)
class ButtonOut:
    """One button: what it says and what comes back when it is pressed."""

    label: str
    data: str


@dataclass(frozen=True, slots=True)
class DeliveryOut:
    """One delivery, worded for its person. Report it with its `tries` before `lease_until`. `picture`: JPEG, base64; on a
    page its path."""

    id: str
    address: str
    text: str
    buttons: tuple[tuple[ButtonOut, ...], ...]
    short: int
    urgent: bool
    may_repeat: bool
    tries: int
    lease_until: datetime | None
    subject: str = ""
    picture: str = ""


@dataclass(frozen=True, slots=True)
class Claimed:
    """POST /v1/outbox/claim: the deliveries that are now yours, and when the next is due."""

    deliveries: tuple[DeliveryOut, ...]
    next_due: datetime | None = None


@dataclass(frozen=True, slots=True)
class Reported:
    """POST /v1/outbox/{delivery}/report: False if it had meanwhile gone to another holder."""

    counted: bool


@dataclass(frozen=True, slots=True)
class Conversed:
    """The reply to one message; empty text and no picture: say nothing. `picture`: PNG, base64; `alt` the same in words.
    `if_away`: what to say while the server can't be reached, which names whom to call. `menu`: None for a stranger."""

    text: str
    buttons: tuple[tuple[ButtonOut, ...], ...] = ()
    picture: str = ""
    alt: str = ""
    if_away: str = ""
    menu: Menu | None = None


@dataclass(frozen=True, slots=True)
class NoticeOut:
    """A notice to the asker, worded; `answered` what they say now, empty while they owe an answer or none is asked;
    `changeable`: another answer would still change something; `picture`: the path of one that goes with it."""

    short: int
    event: str
    kind: str
    urgency: str
    text: str
    buttons: tuple[tuple[ButtonOut, ...], ...]
    made_at: datetime
    needs_answer: bool
    answered: str = ""
    changeable: bool = False
    answered_at: datetime | None = None
    picture: str = ""


@dataclass(frozen=True, slots=True)
class GroupBound:
    """Whether a group chat is told now what concerns the whole crew of an event."""

    tell: bool
    event_name: str


@dataclass(frozen=True, slots=True)
class Notices:
    """GET …/notices: the asker's own, newest last."""

    notices: tuple[NoticeOut, ...]


@dataclass(frozen=True, slots=True)
class OpenAlarm:
    """An alarm that nobody has stood down. `unreached`: everybody on the ladder was tried in vain; `words`: those of a
    call for help."""

    alarm: str
    kind: str
    runner: str
    raised_at: datetime
    point_name: str = ""
    holder: str = ""
    told: tuple[str, ...] = ()
    unreached: bool = False
    look_again: datetime | None = None
    words: str = ""


@dataclass(frozen=True, slots=True)
class Doubted:
    """A report that is kept but does not count yet."""

    entry: str
    kind: str
    point_name: str
    at: datetime
    by: str
    doubt: str


@dataclass(frozen=True, slots=True)
class RunnerBoard:
    """Everything about one runner that the asker's part may see; `forecast` None where it may not."""

    id: str
    name: str
    bib: str
    forecast: ForecastAnswer | None = None
    meetings: tuple[MeetingAnswer, ...] = ()
    cut_offs: tuple[CutOffAnswer, ...] = ()
    alarms: tuple[OpenAlarm, ...] = ()
    doubted: tuple[Doubted, ...] = ()


@dataclass(frozen=True, slots=True)
class RaceNote:
    """A race-level fact in force: what, where (name), since when, until or to when, said by whom (name)."""

    what: str
    point_name: str = ""
    at: datetime | None = None
    until: datetime | None = None
    words: str = ""
    by: str = ""


@dataclass(frozen=True, slots=True)
class BoardAnswer:
    """GET …/board. `field`: where an organiser has more runners than are shown each; then `runners` are those about whom an
    alarm is open and the one asked for."""

    event: str
    name: str
    time_zone: str
    runners: tuple[RunnerBoard, ...]
    emergency_number: str
    exercise: bool
    race_control: Contact | None
    rescue: Contact | None = None
    race_notes: tuple[RaceNote, ...] = ()
    blind_since: datetime | None = None
    blind: tuple[str, ...] = ()
    field: FieldAnswer | None = None


@dataclass(frozen=True, slots=True)
class Health:
    """GET /health. `well` is False when a tick is overdue, an event can't be judged, or the database fails: `database` says
    whether it can be read, `unwritable` why it can't be written ('' = it can; 'busy', 'full', 'read-only', 'away')."""

    well: bool
    database: bool
    unwritable: str
    tick_age_s: float | None
    inbox_waiting: int
    catching_up: bool
    failing: tuple[str, ...] = ()
    heard: tuple[tuple[str, datetime], ...] = ()


@dataclass(frozen=True, slots=True)
class ChatReply:
    """POST /v1/chat: what the desk says. A picture comes as a data address, `alt` is the same in words."""

    text: str
    buttons: tuple[tuple[ButtonOut, ...], ...] = ()
    picture: str = ""
    alt: str = ""
