"""The tables of an event file about people, cars, drives, meetings and cards. Frozen; ids are stable slugs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import ClassVar

from server.event.context import ReadSoFar
from server.event.forms import (
    WORDS_MAX,
    Channels,
    CheckedText,
    Id,
    Language,
    Minutes,
    Number,
    OfRunner,
    OneOf,
    Phone,
    Ref,
    Text,
    Texts,
    Values,
    Whole,
    Yes,
    Zone,
)
from server.event.forms_of_time import Moment, TimeOfDay
from server.event.kit import KitItem
from server.event.table import Key, One, Table, Tables, UnusableError, key, read_table, take
from server.event.table_reader import Section
from server.sentences import say

SLEEP_MAX = timedelta(hours=16)


class PartKind(StrEnum):
    """What a person is in an event."""

    RUNNER = "runner"
    CREW = "crew"
    PACER = "pacer"
    SAFETY_CONTACT = "safety contact"
    ORGANISER = "organiser"
    VOLUNTEER = "volunteer"
    SUPPORTER = "supporter"


class NoticeChoice(StrEnum):
    """How much a person wants to be told; never holds back an alarm nor a person's own leave-now."""

    ALL = "all"
    MINE = "only mine"
    ALARMS = "only alarms"


@dataclass(frozen=True, slots=True)
class Sleep(Table):
    """A sleep that a person means to have. Without a day: the first such time after the start, and after `from`; with a
    weekday it may be before the start, by a day at most."""

    start: datetime = key(Moment("the known start", example='"Sun 01:00"', eve=True), "when it begins", '"Sun 01:00"',
        name="from", need=say("do-write-sleeps-from-sun-01"))  # fmt: skip
    end: datetime = key(Moment("start", "the known start", example='"Sun 03:00"'), "when it ends",
        '"Sun 03:00"', name="to", need=say("do-write-sleeps-from-sun-01"))  # fmt: skip

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """It ends after it begins, and soon."""
        if v["start"] and v["end"] and not timedelta(0) < v["end"] - v["start"] <= SLEEP_MAX:
            what = say("wrong-sleep-ends-before-begins-lasts")
            s.error("to", what, say("do-give-both-weekday"))
            raise UnusableError


@dataclass(frozen=True, slots=True)
class Part(Table):
    """A part in this event. A crew of one may be everything.

    `runner`: for which one (None = for all). `ladder` is the step on which an alarm reaches them (1 = first). `point` is
    where a volunteer stands. `permits` are those they hold in person (a pass, an armband).
    """

    person: str
    kind: PartKind = key(OneOf(PartKind), "what they are; a safety contact is needed, with ladder = 1",
        '"safety contact"', need=say("do-say-what-person", kinds=', '.join(PartKind)),
        default=PartKind.SUPPORTER)  # fmt: skip
    runner: str | None = key(Ref("runner"), "for which runner; without it for all", '"maren"')
    ladder: int | None = key(Whole(1, 20), "the step on which an alarm reaches them, 1 first", "1")
    calls_race_control: bool = key(
        Yes(), "whether it is they who call race control: exactly one person", "true"
    )
    can_telephone: bool = key(Yes(), "whether they can be asked to call others", "true")
    point: str | None = key(Ref("point"), "where a volunteer stands", '"mill"')
    car: str | None = key(Ref("car"), "the car they are with", '"van"')
    drives: bool = key(Yes(), "whether they drive", "true")
    awake_since: datetime | None = key(
        Moment(), "since when they are awake: nobody is sent driving past 17 h", "2027-09-11T04:00"
    )
    pace_from: str | None = key(Ref("point"), "for a pacer: the point from which they run with her", '"mill"')
    pace_to: str | None = key(Ref("point"), "and to which", '"finish"')
    sleeps: tuple[Sleep, ...] = key(Tables(Sleep), "when they mean to sleep")
    permits: tuple[str, ...] = key(Texts(), "permits they hold in person", '["green"]')

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """A kind that nobody knows may be any."""
        if s.raw("kind") not in list(PartKind):
            d.astray.add(s.path)


@dataclass(frozen=True, slots=True)
class Quiet(Table):
    """Quiet hours, on their own clock."""

    start: str | None = key(TimeOfDay(), "when they begin", '"22:00"', name="from")
    end: str | None = key(TimeOfDay(), "when they end", '"06:00"', name="to")

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Both ends."""
        if not (s.has("from") and s.has("to")):
            remedy = say("do-write-quiet-from-22-00")
            s.report.error(s.path, say("wrong-quiet-hours-need-both-ends"), remedy)


@dataclass(frozen=True, slots=True)
class Person(Table):
    """Everybody with a part in it. Names, numbers and how to reach them.

    One person whatever the event. `channels` is the order in which to try to reach them.
    """

    id: str = key(Id("name"), "what other tables call them", '"ana"')
    name: str = key(Text(), "their name", '"Ana"', need=say("do-give-person-name-name-ana"))
    phone: str = key(Phone(), "their number", '"+44 7700 900102"')
    email: str = key(
        CheckedText(
            "e-mail address in quotes",
            r"[^@\s]+@[^@\s]+\.[^@\s.]+",
            ("wrong-no-e-mail-address", say("do-check-what-follows")),
            254,
        ),
        "their e-mail address",
        '"ana@example.org"',
    )
    webhook: str = key(
        CheckedText(
            "web address in quotes, beginning with https://",
            r"https?://[^\s/]+\S*",
            ("wrong-no-web-address", say("do-write-whole-beginning-https")),
            500,
        ),
        "a web address that notices are sent to",
        '"https://example.org/notices"',
    )
    language: str = key(Language(), "the language they read", '"en"')
    time_zone: str | None = key(
        Zone(), "their own clock, where it is not that of the race", '"Europe/Berlin"'
    )
    miles: bool = key(Yes(), "distances in miles", "false")
    clock_12h: bool = key(
        OneOf({"24h": False, "12h": True}), "how they read the clock", '"24h"', name="clock", default=False
    )
    channels: tuple[str, ...] = key(
        Channels(), "how to reach them, in the order to try", '["telegram", "email"]'
    )
    notices: NoticeChoice = key(OneOf(NoticeChoice), "how much they want to be told; alarms always come",
        '"all"', default=NoticeChoice.ALL)  # fmt: skip
    quiet_from: str | None = None
    quiet_to: str | None = None

    MORE: ClassVar = (
        Key("quiet", One(Quiet), "hours in which only alarms and their own leave-now come"),
        Key("parts", Tables(Part), "what they do: one or several", '[ %s, { kind = "crew" } ]'),
    )

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Quiet hours, parts, and an address for each channel."""
        v["name"] = v["name"] or v["id"]
        quiet = s.table("quiet")
        hours = None if quiet is None else read_table(quiet, Quiet, d)
        if hours is not None:
            v["quiet_from"], v["quiet_to"] = hours.start, hours.end
        for name in ("email", "webhook"):
            if name in v["channels"] and not s.has(name):
                remedy = say("do-add-take-out-channels", name=name)
                s.error("channels", say("wrong-channel-no-address", name=name), remedy)
        take(d, s.tables("parts"), Part, d.parts, person=v["id"])


@dataclass(frozen=True, slots=True)
class Car(Table):
    """A car of the crew.

    Where it stands before the first meeting, how many it seats, the permits it carries.
    """

    id: str = key(Id("name"), "what other tables call it", '"van"')
    name: str = key(Text(), "what people call it", '"blue van"', must=True)
    seats: int = key(Whole(1, 60), "how many it seats, the driver among them", "5", default=5)
    starts_at: str | None = key(
        Text(), "where it stands before its first meeting: a point or place", '"start"', default=None
    )
    permits: tuple[str, ...] = key(Texts(), "permits that lie in it", '["green"]')

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Without a name it goes by its id."""
        v["name"] = v["name"] or v["id"]


@dataclass(frozen=True, slots=True)
class Drive(Table):
    """The way by car from one place to another. Only a drive that a person stands by sets a leave-by.

    Places are point ids or free names ('home', 'hotel'). Never sets a leave-by before `confirmed_by` names the person who
    says it is right. Minutes given by hand are the whole drive; without them it can be estimated, and `traffic`,
    `fuel_stop` come on top of that.
    """

    from_place: str = key(Text(), "a point, a place, or any name", '"start"', name="from",
        need=say("do-say-where-drive-begins-from"))  # fmt: skip
    to_place: str = key(Text(), "the same", '"mill"', name="to", need=say("do-say-where-drive-ends-mill"))
    minutes: float | None = key(
        Number(0.5, 24 * 60), "door to door, everything counted; without it the drive is estimated", "32"
    )
    confirmed_by: str | None = key(Ref("person"), "who says that it is right", '"ana"')
    note: str = key(Text(WORDS_MAX), "which way", '"by the reservoir"')
    traffic: timedelta = key(Minutes(), "on top of an estimate", "0", name="traffic_minutes")
    fuel_stop: timedelta = key(Minutes(), "to fill up, on top of an estimate", "0", name="fuel_minutes")

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Called by its two ends."""
        s.name_me(f"{v['from_place']}>{v['to_place']}" if v["from_place"] and v["to_place"] else "")


@dataclass(frozen=True, slots=True)
class Place(Table):
    """Somewhere crew drive from or to that is no point: a hotel, home, a field that several points share."""

    id: str = key(Id("name"), "what other tables call it", '"field"')
    name: str = key(Text(), "what people call it", '"Mown field"')
    lat: float | None = key(Number(-90, 90), "degrees north", "54.2")
    lon: float | None = key(Number(-180, 180), "degrees east, west is negative", "-2.31")

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Both coordinates or none."""
        s.both("lat", "lon")


@dataclass(frozen=True, slots=True)
class Driving(Table):
    """What a drive is estimated from where nobody gave its minutes. An estimate sets no leave-by.

    The line between two places times `road_factor`, at `speed_kmh`; in the dark `night_factor` times as long;
    `full_car_park` to find a space. Common practice, no source: roads are 1.3 to 1.4 times the line in open country, more
    among hills.
    """

    road_factor: float = key(
        Number(1, 5), "how much longer the road is than the straight line", "1.4", default=1.4
    )
    speed_kmh: float = key(Number(5, 130), "how fast crew drive on average", "45", default=45.0)
    night_factor: float = key(Number(1, 3), "how much longer it takes in the dark", "1.15", default=1.15)
    full_car_park: timedelta = key(
        Minutes(), "to find a space", "5", name="full_car_park_minutes", default=timedelta(minutes=5)
    )


@dataclass(frozen=True, slots=True)
class Share(Table):
    """A relay: who of a team runs from where to where. Shares follow each other from start to finish.

    `person` runs for `runner`.
    """

    runner: str = key(
        OfRunner(say("do-several-runners-say-whose-share")),
        "the team, where there are several",
        '"maren"',
        must=True,
    )
    person: str = key(Ref("person"), "who runs", '"maren"', need=say("do-say-runs-person-ana"), default="")
    from_point: str = key(Text(), "the point where the share begins", '"start"', name="from",
        need=say("do-say-where-share-begins-from"))  # fmt: skip
    to_point: str = key(Text(), "the point where it ends", '"finish"', name="to",
        need=say("do-say-where-share-ends-mill"))  # fmt: skip


@dataclass(frozen=True, slots=True)
class MeetingPlan(Table):
    """Crew meet a runner at a point. Times are never written here: they follow from her pace and the drives."""

    id: str = key(
        Id("point", "runner"), "what it is called; made of point and runner without it", '"mill-maren"'
    )
    point: str = key(Ref("point"), "where", '"mill"', need=say("do-say-where-point-mill"), default="")
    runner: str = key(
        OfRunner(say("do-several-runners-say-whom-meet")),
        "whom, where there are several",
        '"maren"',
        must=True,
    )
    crew: tuple[str, ...] = key(Texts(of="person"), "who goes", '["ana"]', must=True)
    car: str | None = key(Ref("car"), "in which car", '"van"')
    from_place: str | None = key(
        Text(), "from where, if not from the meeting before", '"start"', name="from", default=None
    )
    kit: tuple[KitItem, ...] = key(Tables(KitItem, texts=True), "what to have ready", '[ "poles", %s ]')
    food: str = key(Text(WORDS_MAX), "what to eat and drink there", '"rice pudding, coffee"')
    if_missed: str = key(
        Text(WORDS_MAX), "what to do if she is gone when crew come", '"drive on to the finish"'
    )
    pacer_joins: str | None = key(Ref("person"), "who sets off with her there", '"tomas"')
    pacer_leaves: str | None = key(Ref("person"), "who comes off the course there", '"tomas"')


@dataclass(frozen=True, slots=True)
class IfThenCard(Table):
    """A prepared answer to trouble. Eight are there already (feet, stomach, fall, wrong-turn, weather, lost-kit,
    cannot-get-warm, wants-to-stop); a card with such an id takes the place of its steps and keeps its red flags.

    `red_flags`: a medic is fetched; `life_flags`: the emergency number is called first (of the built-in cards; one of the
    event's own with a built-in's id keeps them).
    """

    id: str = key(
        Id("trouble"), "one of the eight (`stilepost plan --out` prints them), or your own", '"feet"'
    )
    trouble: str = key(Text(), "what has gone wrong", '"hot spot or blister"',
        need=say("do-name-trouble-trouble-hot-spot"))  # fmt: skip
    try_first: tuple[str, ...] = key(Texts(WORDS_MAX), "what is tried, step by step",
        '["sit down at the next point, dry the foot, tape it"]', must=True)  # fmt: skip
    call: str = key(Text(WORDS_MAX), "whom to call", '"the medics at the point"')
    red_flags: tuple[str, ...] = key(Texts(WORDS_MAX), "when a medic is fetched and she does not leave",
        '["she cannot put weight on the foot"]')  # fmt: skip
    life_flags: tuple[str, ...] = ()
