"""What calls read: the pydantic models of every request. Times carry an offset, degrees are WGS 84."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, AwareDatetime, BaseModel, ConfigDict, Field, field_validator

from server.event.model import PartKind
from server.event.replan import What
from server.facts.entry import Kind, Retired, Why
from server.facts.stop_log import Item, Level

EARLIEST_YEAR, LATEST_YEAR = 1970, 2200


class RequestBody(BaseModel):
    """The base of every request: unknown fields are refused, no number may be NaN or infinite."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False, str_strip_whitespace=True)


def _utc(moment: datetime) -> datetime:
    if not EARLIEST_YEAR < moment.year < LATEST_YEAR:
        raise ValueError(f"the year {moment.year} can't be meant: write one of this race")
    return moment.astimezone(UTC)


Moment = Annotated[AwareDatetime, AfterValidator(_utc)]
Key = Annotated[str, Field(min_length=1, max_length=128, pattern=r"^[\x21-\x7e]+$")]
Id = Annotated[str, Field(min_length=1, max_length=100)]
Words = Annotated[str, Field(max_length=2000)]


class FixIn(RequestBody):
    """A place on the globe, with its accuracy in metres if known."""

    lat: float = Field(ge=-90, le=90)
    lon: float = Field(ge=-180, le=180)
    accuracy_m: float | None = Field(default=None, ge=0, le=100_000)
    speed_m_s: float | None = Field(default=None, ge=0, le=100)
    heading_deg: float | None = Field(default=None, ge=0, le=360)


class LoggedIn(RequestBody):
    """One thing of the stop log; `amount` in g of carbohydrate (ate), ml (drank) or minutes (slept)."""

    item: Item
    amount: float | None = Field(default=None, ge=0, le=5000)
    level: Level | None = None
    words: Annotated[str, Field(max_length=200)] = ""


class CheckIn(RequestBody):
    """One report about a runner. `key` is made by the sender and is the same when it sends the report again;
    left out, the server makes one and returns it. `seen_at` is when it happened (default: when sent). `more_follows`:
    the next report is of the same message, and people are told only once both are in. `picture`: of words passed on, the id
    of one of the sender's own."""

    kind: Kind
    point: Id | None = None
    seen_at: Moment | None = None
    sent_at: Moment | None = None
    seen_spread_s: float = Field(default=0.0, ge=0, le=24 * 3600)
    key: Key | None = None
    fix: FixIn | None = None
    how: Retired | None = None
    why: Why | None = None
    more_follows: bool = False
    until: Moment | None = None
    amount_s: float | None = Field(default=None, ge=0, le=7 * 24 * 3600)
    factor: float | None = Field(default=None, ge=0.5, le=3.0)
    person: Id | None = None
    words: Words = ""
    logged: tuple[LoggedIn, ...] = Field(default=(), max_length=20)
    replaces: Id | None = None
    about: Id | None = None
    to: Id | None = None
    picture: str = Field(default="", max_length=100)
    edge: Literal["in", "out"] | None = None
    unconfirmed: bool = False
    doubt: Words = ""


class Change(RequestBody):
    """A change of the plan. `what` and the fields it calls for (server/event/replan.py), or `undo`: the version to be taken
    back; of a cut-off `point`, `edge` and `until`, or `undo_entry`: the entry that moved it. `over` is the version it was
    looked at against. With `dry_run` nothing is done: the answer says what would be."""

    what: What | None = None
    undo: int | None = Field(default=None, ge=2)
    undo_entry: Id | None = None
    until: Moment | None = None
    edge: Literal["in", "out"] | None = None
    over: int | None = Field(default=None, ge=1)
    dry_run: bool = False
    meeting: Id | None = None
    runner: Id | None = None
    point: Id | None = None
    crew: tuple[Id, ...] = Field(default=(), max_length=50)
    car: Id | None = None
    kit: tuple[Annotated[str, Field(max_length=200)], ...] = Field(default=(), max_length=100)
    name: str = Field(default="", max_length=80)
    phone: str = Field(default="", max_length=40)
    part: PartKind = PartKind.CREW
    drives: bool = False
    start: str | None = Field(default=None, min_length=1, max_length=120)
    minutes: float | None = Field(default=None, ge=0.5, le=1440)


class CheckInByBib(CheckIn):
    """The same where the runner is told by her bib."""

    bib: str = Field(min_length=1, max_length=20)


class StartList(RequestBody):
    """A start list: CSV whose first line names the columns (bib, name, wave, course, target)."""

    csv: str = Field(min_length=1, max_length=1_000_000)


class Passages(RequestBody):
    """Others' passages, one of the two: CSV whose first line names the columns (bib, point, time or elapsed), or a list of
    objects with these keys. `time` is as the clock at the race shows it, `elapsed` h:mm:ss since the start."""

    csv: str | None = Field(default=None, min_length=1, max_length=1_000_000)
    passages: list[dict[str, Any]] | None = Field(default=None, max_length=20_000)


class RaceFact(RequestBody):
    """One race-level fact by the organiser: a delay, a hold, a moved cut-off, closed access, a reroute."""

    kind: Kind
    point: Id | None = None
    seen_at: Moment | None = None
    sent_at: Moment | None = None
    key: Key | None = None
    until: Moment | None = None
    amount_s: float | None = Field(default=None, ge=0, le=7 * 24 * 3600)
    edge: Literal["in", "out"] | None = None
    wave: Id | None = None
    words: Words = ""
    replaces: Id | None = None


class Geometry(BaseModel):
    """A GeoJSON Point: [longitude, latitude] or with a height behind."""

    model_config = ConfigDict(extra="ignore", frozen=True, allow_inf_nan=False)
    type: Literal["Point"]
    coordinates: list[float] = Field(min_length=2, max_length=3)

    @field_validator("coordinates")
    @classmethod
    def _in_range(cls, value: list[float]) -> list[float]:
        if not (-180 <= value[0] <= 180 and -90 <= value[1] <= 90):
            raise ValueError("longitude first (-180 to 180), then latitude (-90 to 90)")
        return value


class Properties(BaseModel):
    """What a position says beside its place; `time` with an offset. Other properties are let be."""

    model_config = ConfigDict(extra="ignore", frozen=True, allow_inf_nan=False)
    time: Moment | None = None
    accuracy: float | None = Field(default=None, ge=0, le=100_000)
    speed: float | None = Field(default=None, ge=0, le=100)
    heading: float | None = Field(default=None, ge=0, le=360)
    key: Key | None = None


class Feature(BaseModel):
    """One GeoJSON Feature."""

    model_config = ConfigDict(extra="ignore", frozen=True)
    type: Literal["Feature"]
    geometry: Geometry
    properties: Properties = Properties()

    @field_validator("properties", mode="before")
    @classmethod
    def _none_is_empty(cls, value: Any) -> Any:
        return {} if value is None else value


class Positions(BaseModel):
    """One GeoJSON Feature, or a FeatureCollection of at most 1000."""

    model_config = ConfigDict(extra="ignore", frozen=True)
    type: Literal["Feature", "FeatureCollection"]
    geometry: Geometry | None = None
    properties: Properties | None = None
    features: list[Feature] = Field(default_factory=list, max_length=1000)

    def all(self) -> list[Feature]:
        """The features, whichever of the two forms came."""
        if self.type == "FeatureCollection":
            return self.features
        if self.geometry is None:
            return []
        return [Feature(type="Feature", geometry=self.geometry, properties=self.properties or Properties())]


class TrackerReport(RequestBody):
    """What a tracker that can only GET sends as query parameters. `t` is a POSIX second or an ISO time."""

    model_config = ConfigDict(extra="ignore", frozen=True, allow_inf_nan=False)
    key: str = Field(min_length=8, max_length=200)
    lat: float = Field(ge=-90, le=90)
    lon: float = Field(ge=-180, le=180)
    t: str = Field(default="", max_length=40)
    acc: float | None = Field(default=None, ge=0, le=100_000)
    speed: float | None = Field(default=None, ge=0, le=100)
    bearing: float | None = Field(default=None, ge=0, le=360)
    id: Key | None = None


class Correct(RequestBody):
    """Taking back or confirming an entry. `within_s`: take it back only if it was received no longer ago than this, or
    has not counted yet, or is a call for help: what an 'undo' button may do, however old the button is. `meant`: the
    runner's id whom a call for help that is taken back was for."""

    key: Key | None = None
    sent_at: Moment | None = None
    words: Words = ""
    within_s: float | None = Field(default=None, ge=0)
    meant: str | None = None


class Answer(RequestBody):
    """An answer to a notice: a word of its buttons, or free words."""

    answer: str = Field(min_length=1, max_length=60)
    words: Words = ""
    key: Key | None = None
    sent_at: Moment | None = None


class Join(RequestBody):
    """Redeeming an invitation. With `preview` it only says whose it is, and uses nothing up."""

    code: str = Field(min_length=4, max_length=100)
    channel: str = Field(min_length=1, max_length=30)
    address: str = Field(default="", max_length=200)
    preview: bool = False


class Update(RequestBody):
    """One raw update of a channel, as it came."""

    id: str = Field(min_length=1, max_length=200)
    body: str = Field(max_length=1_000_000)


class InboxStore(RequestBody):
    """Raw updates to keep before they are confirmed to the channel. `caught_up` says that the channel has
    handed over everything that waited while we were away."""

    channel: str = Field(min_length=1, max_length=30)
    updates: list[Update] = Field(default_factory=list, max_length=500)
    caught_up: bool = False


class InboxNext(RequestBody):
    """Ask for stored updates that nobody has worked on yet."""

    channel: str = Field(min_length=1, max_length=30)
    limit: int = Field(default=20, ge=1, le=100)


class InboxDone(RequestBody):
    """An update has been worked off; `problem` says why it could not be, if so. `later`: it has not been, will be tried
    again, and what came after it need not wait for that. `back`: it was claimed for the time of that number and is free
    for whoever asks next, unless somebody has claimed it since."""

    channel: str = Field(min_length=1, max_length=30)
    problem: str = Field(default="", max_length=500)
    later: bool = False
    back: int | None = Field(default=None, ge=1)


class ListenLease(RequestBody):
    """Ask to be the one process that listens at a channel, for `ttl_s`; or, with `give_back`, to be it no more.
    `holder` names the process, the same each time it asks."""

    channel: str = Field(min_length=1, max_length=30)
    holder: str = Field(min_length=8, max_length=100)
    ttl_s: float = Field(default=30.0, ge=1, le=600)
    give_back: bool = False


class AddressNews(RequestBody):
    """A channel says that an address takes nothing more, takes messages again, or has become another."""

    channel: str = Field(min_length=1, max_length=30)
    address: str = Field(min_length=1, max_length=200)
    became: Literal["gone", "back", "moved"]
    new_address: str = Field(default="", max_length=200)


class GroupChat(RequestBody):
    """The chat of a whole crew, at the channel that asks; `tell` false: it is told nothing more."""

    address: str = Field(min_length=1, max_length=200)
    tell: bool = True


class Followers(RequestBody):
    """`on`: a new link is given, the one before ends; `on` false: it is taken back; left out: it is only asked whether one
    holds."""

    on: bool | None = None


class Alive(RequestBody):
    """A channel that only sends found its other side up. Without another such sign for `well_for_s` it counts
    as down."""

    channel: str = Field(min_length=1, max_length=30)
    well_for_s: float = Field(default=120.0, ge=10, le=24 * 3600)


class OutboxClaim(RequestBody):
    """Take deliveries that are due (`urgent`: alarms only; `pictures`: the channel can show some); they are ours until the
    lease ends."""

    channel: str = Field(min_length=1, max_length=30)
    limit: int = Field(default=10, ge=1, le=100)
    lease_s: float = Field(default=60.0, ge=5, le=600)
    urgent: bool = False
    pictures: bool = False


class OutboxReport(RequestBody):
    """What became of a delivery: one of the words of the channel table."""

    outcome: str = Field(min_length=1, max_length=30)
    tries: int | None = Field(default=None, ge=1)
    detail: str = Field(default="", max_length=500)
    ref: str = Field(default="", max_length=200)
    retry_after_s: float | None = Field(default=None, ge=0, le=24 * 3600)
    new_address: str = Field(default="", max_length=200)


class ChatIn(RequestBody):
    """One thing a person does in the web chat: exactly one of text, button, fix, photo (base64; its text may
    be with it). `age_s`: how long ago they did it, for one that could not be sent at once; a browser's own clock is not
    asked, as it may be wrong."""

    key: Key
    age_s: float = Field(default=0.0, ge=0, le=24 * 3600)
    text: str = Field(default="", max_length=4000)
    button: str = Field(default="", max_length=64)
    fix: FixIn | None = None
    photo: str = Field(default="", max_length=1_000_000)


class PushSubscription(RequestBody):
    """What a browser hands out when somebody lets it show notices: where to send, and the keys to seal with."""

    endpoint: str = Field(max_length=1500, pattern=r"^https://[^/\s]+/\S*$")
    p256dh: str = Field(min_length=80, max_length=100, pattern=r"^[A-Za-z0-9_-]+$")
    auth: str = Field(min_length=20, max_length=40, pattern=r"^[A-Za-z0-9_-]+$")


class Converse(RequestBody):
    """One thing a person sent over a channel. As a rule one of text, press, fix, photo, other is set (a photo may have
    text). `key` is the same when the same message comes again; `place` a group chat, '' between the two of us, and
    `addressed` whether the message there is to us. `live`: a place of a live share, or its end. `photo`: one was
    sent with the text, is `to come` (the text is read), or is `here` in `picture` (base64) with its text once more, or never
    will be; `edits` the key of the message of which this is a later form; `other` names what can't be read.
    `short`: a channel where a report needs no confirming. `kept`: it is handed over again until it is answered."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)

    key: str = Field(min_length=1, max_length=2000)
    sent_at: Moment
    place: str = Field(default="", max_length=200)
    group: bool = False
    addressed: bool = True
    text: str = Field(default="", max_length=100_000)
    press: str = Field(default="", max_length=200)
    fix: FixIn | None = None
    live: Literal["", "on", "ended"] = ""
    photo: Literal["", "to come", "here", "lost", "too large"] = ""
    picture: str = Field(default="", max_length=1_000_000)
    edits: str = Field(default="", max_length=2000)
    other: str = Field(default="", max_length=100)
    language: str = Field(default="", max_length=50)
    short: bool = False
    kept: bool = True


class PointQuery(RequestBody):
    """The optional point a question is about, and for whom."""

    point: Id | None = None
    for_: Literal["me", "any"] = Field(default="me", alias="for")


class SupposeQuery(RequestBody):
    """The optional point; and a what-if: slower by `factor` from here, or leaving where she is at `leaving`."""

    point: Id | None = None
    factor: float | None = Field(default=None, ge=0.5, le=3.0)
    leaving: Moment | None = None

    @property
    def supposes(self) -> bool:
        """Whether a what-if is asked."""
        return self.factor is not None or self.leaving is not None
