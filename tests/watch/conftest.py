"""An invented race, a small deterministic forecast, and a night that is played entry by entry.

The forecast here knows one thing, a common lognormal factor on the planned times from the last fact on; all
its moments are whole minutes. Facts go through the real fold, so that what the watch sees is what it will see.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta
from statistics import NormalDist
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest

from server.event.model import (
    AlarmRule,
    Car,
    Contact,
    CourseDef,
    CrewAccess,
    CutOff,
    Drive,
    Edge,
    Event,
    KitItem,
    KitWeight,
    MeetingPlan,
    Part,
    PartKind,
    Person,
    Point,
    PointKind,
    Rules,
    Runner,
    Signal,
    Target,
)
from server.facts.entry import Entry, Kind, Source
from server.facts.fold import fold
from server.facts.state import Interval, RunnerState
from server.forecast.channel_outages import Down, Hearing
from server.forecast.outlook import Whereabouts, Window
from server.watch.evaluate import evaluate
from server.watch.meetings import meetings
from server.watch.notice import Made, MeetingValues, Notice, NoticeKind, Said
from server.watch.situation import Group, Situation

START = datetime(2027, 6, 19, 14, 0, tzinfo=UTC)
MINUTE = timedelta(minutes=1)
PLAN = {"start": 0, "mill": 150, "chapel": 320, "moss": 480, "ridge": 640, "barn": 800, "finish": 960}
KM = {"start": 0.0, "mill": 20.0, "chapel": 40.0, "moss": 58.0, "ridge": 74.0, "barn": 90.0, "finish": 105.0}
REPORTED = ("mill", "chapel", "moss", "ridge", "finish")
STOP = 5
FACTORS = np.exp(0.12 * np.array([NormalDist().inv_cdf((i + 0.5) / 400) for i in range(400)]))


def clock(text: str) -> datetime:
    """'16:30' on the day of the race, '26:05' after midnight, UTC; with seconds if given."""
    parts = [int(p) for p in text.split(":")]
    hours, minutes, seconds = (*parts, 0)[:3]
    return datetime(2027, 6, 19, tzinfo=UTC) + timedelta(hours=hours, minutes=minutes, seconds=seconds)


def share_of(rising: npt.NDArray[np.float64], p: float) -> float:
    """A quantile of values that rise already, as those of one common factor do."""
    return float(rising[int(p * (rising.size - 1))])


def up_to_minute(seconds: float) -> datetime:
    return datetime.fromtimestamp(float(np.ceil(round(seconds, 3) / 60.0)) * 60.0, UTC)


@dataclass(frozen=True)
class FakeView:
    """A view of the fake forecast: the paths that silence has left, equally likely."""

    now: datetime
    points: tuple[str, ...]
    arrivals: npt.NDArray[np.float64]
    departures: npt.NDArray[np.float64]
    here: str | None
    here_out: npt.NDArray[np.float64]
    unheard: float
    going: float

    def _column(self, point: str) -> npt.NDArray[np.float64]:
        if point not in self.points:
            raise KeyError(point)
        return self.arrivals[:, self.points.index(point)]

    def arrival(self, point: str, p: float) -> datetime:
        seconds = float(share_of(self._column(point), p))
        return up_to_minute(seconds - 60.0 if p < 0.5 else seconds)

    def window(self, point: str) -> Window:
        return Window(point, *(self.arrival(point, p) for p in (0.1, 0.5, 0.9)))

    def leaving(self, point: str, p: float) -> datetime:
        if point == self.here:
            return up_to_minute(float(share_of(self.here_out, p)))
        self._column(point)
        return up_to_minute(float(share_of(self.departures[:, self.points.index(point)], p)))

    def p_gets_there(self, point: str) -> float:
        return self.going

    def p_in_by(self, point: str, when: datetime) -> float:
        if point not in self.points:
            return 1.0
        return self.going * float(np.mean(self._column(point) <= when.timestamp()))

    def p_out_by(self, point: str, when: datetime) -> float:
        if point not in self.points:
            return 1.0
        return self.going * float(np.mean(self.departures[:, self.points.index(point)] <= when.timestamp()))

    def p_makes(self, point: str, when: datetime, out: bool) -> float:
        return self.p_out_by(point, when) if out else self.p_in_by(point, when)

    def p_unheard(self) -> float:
        return self.unheard

    def where(self) -> Whereabouts:
        return Whereabouts(10.0, 12.0, 14.0)

    def paths(self) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
        return self.arrivals, self.departures


@dataclass(frozen=True)
class FakeOutlook:
    """The forecast after the facts: planned legs from the last fact on, times a factor, holds added."""

    state: RunnerState
    going: float = 0.98
    reported: tuple[str, ...] = REPORTED

    def _base(self) -> tuple[str, datetime, bool]:
        for times in reversed(self.state.times):
            if times.left is not None:
                return times.point, times.left.at, False
            if times.arrived is not None:
                return times.point, times.arrived.at, True
        return "start", self.state.start, False

    def _paths(
        self,
    ) -> tuple[tuple[str, ...], npt.NDArray[np.float64], npt.NDArray[np.float64], npt.NDArray[np.float64]]:
        last, at, here = self._base()
        points = tuple(p for p in PLAN if PLAN[p] > PLAN[last])
        out = at.timestamp() + (STOP * 60.0 * FACTORS if here else np.zeros_like(FACTORS))
        held = sum(
            ((h.end - max(h.start, at)).total_seconds() for h in self.state.held if h.end and h.end > at), 0.0
        )
        arrivals = (
            np.stack([out + held + (PLAN[p] - PLAN[last]) * 60.0 * FACTORS for p in points], axis=1)
            if points
            else np.zeros((400, 0))
        )
        for n in self.state.not_yet:
            if n.point in points:
                late = np.maximum(
                    n.stamp.at.timestamp() + 600.0 * FACTORS - arrivals[:, points.index(n.point)], 0.0
                )
                arrivals = arrivals + late[:, None]
        return points, arrivals, arrivals + STOP * 60.0, out

    def at(self, now: datetime) -> FakeView:
        points, arrivals, departures, out = self._paths()
        here = self._base()[0] if self._base()[2] else None
        following = [p for p in points if p in self.reported]
        unheard, keep = 1.0, np.ones(400, dtype=bool)
        if following:
            keep = arrivals[:, points.index(following[0])] > now.timestamp()
            unheard = float(np.mean(keep))
        if keep.sum() < 40:
            keep = np.arange(400) >= 360
        return FakeView(now, points, arrivals[keep], departures[keep], here, out, unheard, self.going)

    @property
    def day(self) -> None:
        return None

    def late_time(self) -> tuple[str, datetime] | None:
        points, arrivals, _, _ = self._paths()
        for p in points:
            if p in self.reported:
                return p, up_to_minute(float(share_of(arrivals[:, points.index(p)], 0.9)))
        return None

    def untold(self) -> FakeOutlook | None:
        return replace(self, state=replace(self.state, not_yet=())) if self.state.not_yet else None

    def ended_rather(self, going: float, after: datetime) -> datetime | None:
        """This forecast's odds of going on are one figure, which silence does not move; it says so sooner than its line,
        so that tests can tell the two apart."""
        return self.unheard_falls_under(0.005, after) if self.going < going else None

    def unheard_falls_under(self, line: float, after: datetime) -> datetime | None:
        points, arrivals, _, _ = self._paths()
        if any(h.end is None for h in self.state.held):
            return None
        for p in points:
            if p in self.reported:
                return max(after, up_to_minute(float(share_of(arrivals[:, points.index(p)], 1.0 - line))))
        return None


def _point(pid: str, kinds: Iterable[PointKind] = (), access: CrewAccess | None = None, **more: Any) -> Point:
    return Point(
        pid, pid.capitalize(), KM[pid], frozenset(kinds), access=access, planned_stop=STOP * MINUTE, **more
    )


def make_event() -> Event:
    """Seven points, four meetings, two cars; Barn has no signal, nobody has timed the drive to Moss."""
    walk = CrewAccess(walk_in=5 * MINUTE, unloading=5 * MINUTE)
    points = (
        _point("start", (PointKind.START,)),
        _point("mill", (PointKind.CREW_ACCESS,), walk),
        _point("chapel", (PointKind.CUT_OFF,), walk, cut_offs=(CutOff(Edge.IN, elapsed=timedelta(hours=7)),)),
        _point("moss", (PointKind.AID_STATION,), walk),
        _point("ridge", (PointKind.WATER,)),
        _point("barn", (PointKind.CREW_ACCESS,), walk, signal=Signal.NONE),
        _point("finish", (PointKind.FINISH,), walk),
    )
    people = [
        Person(p, p.capitalize(), phone="+44 1632 960000", channels=("telegram",))
        for p in ("maren", "ana", "jonas", "vera", "tomas", "sasha", "olga", "piet", "lena")
    ]
    parts = (
        Part("maren", PartKind.RUNNER, "maren"),
        Part("ana", PartKind.CREW, "maren", ladder=2, drives=True, car="van"),
        Part("jonas", PartKind.CREW, "maren", car="van"),
        Part("vera", PartKind.CREW, "maren", drives=True, car="red", can_telephone=True),
        Part("tomas", PartKind.PACER, "maren", pace_from="moss", pace_to="finish"),
        Part(
            "sasha", PartKind.SAFETY_CONTACT, "maren", ladder=1, can_telephone=True, calls_race_control=True
        ),
        Part("olga", PartKind.ORGANISER),
        Part("piet", PartKind.SUPPORTER, "maren"),
        Part("lena", PartKind.VOLUNTEER, point="moss"),
    )
    meetings = (
        MeetingPlan(
            "mill-maren",
            "mill",
            "maren",
            ("ana", "jonas"),
            "van",
            "start",
            (KitItem("poles"),),
            "soup",
            "drive on to Chapel",
        ),
        MeetingPlan(
            "chapel-maren",
            "chapel",
            "maren",
            ("ana", "jonas"),
            "van",
            None,
            (KitItem("head torch", KitWeight.SAFETY),),
        ),
        MeetingPlan(
            "moss-maren",
            "moss",
            "maren",
            ("vera",),
            "red",
            "hotel",
            (KitItem("dry socks"),),
            pacer_joins="tomas",
        ),
        MeetingPlan(
            "barn-maren",
            "barn",
            "maren",
            ("ana", "jonas"),
            "van",
            None,
            (KitItem("warm layer", KitWeight.SAFETY),),
        ),
        MeetingPlan("finish-maren", "finish", "maren", ("ana", "jonas"), "van", None),
    )
    drives = (
        Drive("start", "mill", 40, "ana"),
        Drive("mill", "chapel", 50, "ana"),
        Drive("hotel", "moss", 60, None),
        Drive("chapel", "barn", 70, "ana"),
        Drive("barn", "finish", 30, "ana"),
    )
    runner = Runner(
        "maren",
        "maren",
        "Maren",
        "214",
        "main",
        START,
        Target(finish=timedelta(hours=16)),
        clothing="orange jacket",
    )
    return Event(
        id="stile",
        name="The Long Stile",
        time_zone="Europe/London",
        starts=START,
        rules=Rules(),
        courses=(CourseDef("main", "route.gpx", points),),
        runners=(runner,),
        people=tuple(people),
        parts=parts,
        race_control=Contact("Race control", "+44 1632 960001"),
        emergency_number="112",
        cars=(Car("van", "blue van", starts_at="start"), Car("red", "red car", starts_at="hotel")),
        drives=drives,
        meetings=meetings,
        alarm=AlarmRule(),
    )


@dataclass
class Night:
    """One night: entries as they come, notices as they are made, answers as they are given."""

    event: Event = field(default_factory=make_event)
    entries: list[Entry] = field(default_factory=list)
    made: list[Made] = field(default_factory=list)
    outages: tuple[Interval, ...] = ()
    downs: tuple[Down, ...] = ()
    hearing: Hearing = field(default_factory=Hearing)
    groups: tuple[Group, ...] = ()
    watching_since: datetime | None = START - timedelta(days=1)
    reported: tuple[str, ...] = REPORTED
    going: float = 0.98
    plan: tuple[Event, dict[str, tuple[MeetingValues, ...]]] | None = None
    grave: frozenset[str] = frozenset()

    def report(self, kind: Kind, seen: str | datetime, by: str = "ana", **more: Any) -> str:
        """An entry about her, received when seen unless said otherwise; its id."""
        at = clock(seen) if isinstance(seen, str) else seen
        name = more.pop("id", f"e{len(self.entries) + 1}")
        received = more.pop("received", at)
        values: dict[str, Any] = {"runner": "maren", "source": Source.CREW, "sender": by, "key": name}
        values |= more
        self.entries.append(
            Entry(
                id=name,
                event="stile",
                kind=kind,
                seen_at=at,
                sent_at=received,
                received_at=received,
                by=by,
                **values,
            )
        )
        return name

    def situation(self, now: datetime) -> Situation:
        state = fold([e for e in self.entries if e.received_at <= now], self.event, now)
        outlooks = {r.runner: FakeOutlook(r, self.going, self.reported) for r in state.runners}
        whole = Situation(
            self.event,
            state,
            outlooks,
            {},
            {},
            tuple(self.made),
            self.outages,
            self.watching_since,
            self.downs,
            self.hearing,
            self.groups,
        )
        return replace(whole, sheet=self._sheet(whole), grave=self.grave)

    def _sheet(self, whole: Situation) -> dict[str, tuple[MeetingValues, ...]]:
        if self.plan is None or self.plan[0] is not self.event:
            blank = fold([], self.event, START - timedelta(days=1))
            before = {r.runner: FakeOutlook(r, self.going, self.reported) for r in blank.runners}
            plan = replace(whole, state=blank, outlooks=before, made=())
            self.plan = (self.event, {r: meetings(plan, r, START) for r in before})
        return self.plan[1]

    def verdict(self, now: str | datetime) -> Any:
        when = clock(now) if isinstance(now, str) else now
        return evaluate(self.situation(when), when)

    def tick(self, now: str | datetime) -> list[Notice]:
        """What is owed at `now`; it is made and sent."""
        when = clock(now) if isinstance(now, str) else now
        verdict = evaluate(self.situation(when), when)
        for n in verdict.owed:
            self.made.append(Made(n, len(self.made) + 1, when, sent_at=when))
        self.ask_again = verdict.ask_again
        return list(verdict.owed)

    def run(
        self,
        start: str,
        end: str,
        script: dict[str, Callable[[Night], object]] | None = None,
        lazily: bool = False,
    ) -> list[tuple[datetime, Notice]]:
        """Every minute, or only when asked to and when something happens: what was owed when."""
        acts = {clock(t): act for t, act in (script or {}).items()}
        log: list[tuple[datetime, Notice]] = []
        now, stop = clock(start), clock(end)
        while now <= stop:
            if now in acts:
                acts[now](self)
            log += [(now, n) for n in self.tick(now)]
            if not lazily:
                now += MINUTE
                continue
            # A wake within a minute is compared with the look at its end.
            asked = [] if self.ask_again is None else [self.ask_again + (now - self.ask_again) % MINUTE]
            ahead = [t for t in acts if t > now] + asked
            if not ahead:
                break
            now = min(ahead)
        return log

    def answer(self, kind: NoticeKind, person: str, words: str, at: str | datetime) -> None:
        """The person answers the last notice of that kind they got and have not answered; of those answered, the
        last where none is left."""
        when = clock(at) if isinstance(at, str) else at
        for i in range(len(self.made) - 1, -1, -1):
            m = self.made[i]
            if (m.notice.key.kind, m.notice.key.person) == (kind, person) and m.answered_at is None:
                self.made[i] = replace(m, answered_at=when, answer=words, said=(Said(when, words),))
                return
        for i in range(len(self.made) - 1, -1, -1):
            m = self.made[i]
            if (m.notice.key.kind, m.notice.key.person) == (kind, person):
                self.made[i] = replace(m, answer=words, said=(*m.said, Said(when, words)))
                return
        raise AssertionError(f"{person} has no {kind.value} to answer")

    def got(self, kind: NoticeKind, person: str | None = None) -> list[Made]:
        return [m for m in self.made if m.notice.key.kind is kind and person in (None, m.notice.key.person)]


@pytest.fixture
def night() -> Night:
    """The invented race before anything has happened."""
    return Night()


@pytest.fixture
def at() -> Callable[[str], datetime]:
    """Reads '26:05' as five past two in the night of the race."""
    return clock


@pytest.fixture(scope="session")
def new_night() -> type[Night]:
    """For tests that need several nights, or one with other settings."""
    return Night
