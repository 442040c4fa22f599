"""What every wording function needs at hand: who reads, when, and the names behind the ids of an event."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from server.conversation.telling import measures, times
from server.conversation.telling.reader import Reader
from server.event.model import Event, Point
from server.facts.state import LastKnown
from server.forecast.outlook import Window
from server.sentences import has, sentence

SURELY_COME = 0.95
"""A wait cut short by so little needs no odds (own choice; uncut ones rest on her 97% time)."""


def slug(words: str) -> str:
    """A word of the code as part of a sentence's name: 'race control told' -> 'race-control-told'."""
    return words.strip().lower().replace(" ", "-")


@dataclass(frozen=True, slots=True)
class Say:
    """The reader and the moment; short names for the formatters, as they stand in every sentence."""

    reader: Reader
    now: datetime

    def s(self, key: str, **values: str | int) -> str:
        """A sentence."""
        return sentence(self.reader.language, key, **values)

    def when(self, at: datetime, *, day: bool | None = None) -> str:
        """A time, on both clocks where they differ."""
        return times.moment(at, self.reader, self.now, day=day)

    def spoken(self, at: datetime) -> str:
        """A time to read out to the local services: the point's clock only, always with the weekday."""
        return times.full_clock(at, self.reader)

    def maybe(self, at: datetime | None) -> str:
        """A time, or the word 'none' that sentences with an optional part look for."""
        return "none" if at is None else self.when(at)

    def window(self, w: Window) -> str:
        """A window in full."""
        return times.window(w, self.reader, self.now)

    def window_stood(self, w: Window, *, day: bool | None = None) -> str:
        """A window as it once stood: what was expected, not what is."""
        return times.window(w, self.reader, self.now, day=day, as_stood=True)

    def window_short(self, w: Window) -> str:
        """A window for a list."""
        return times.window_short(w, self.reader, self.now)

    def length(self, t: timedelta) -> str:
        """A duration."""
        return times.duration(t, self.reader.language)

    def ago(self, at: datetime) -> str:
        """How long ago."""
        return times.ago(at, self.now, self.reader.language)

    def km(self, km: float) -> str:
        """A distance."""
        return measures.distance(km, self.reader)

    def odds(self, p: float) -> str:
        """A probability."""
        return measures.odds(p, self.reader.language)

    def until(self, whole: str, short: str, until: str, runner: str, p_comes: float | None) -> str:
        """Until when to wait, by one of two sentences: where the wait is cut short for the next meeting, `short` has the
        odds that she has come by then."""
        if p_comes is None or p_comes >= SURELY_COME:
            return self.s(whole, until=until)
        return self.s(short, until=until, runner=runner, odds=self.odds(p_comes))

    def all(self, items: Iterable[str]) -> str:
        """A list in words."""
        return measures.listing(items, self.reader.language)

    def things(self, items: Iterable[str]) -> str:
        """Things to bring; parted so that 'head torch, fresh battery' stays one of them."""
        listed = tuple(items)
        return "; ".join(listed) if any("," in i for i in listed) else self.all(listed)

    def fact(self, kind: str, place: str) -> str:
        """A check-in as a fact: 'out of Mill'."""
        key = f"fact-{slug(kind)}"
        if place in ("", self.s("place-nowhere")) and has(f"{key}-nowhere"):
            return self.s(f"{key}-nowhere")
        return self.s(key, place=place) if has(key) else self.s("fact-other", kind=kind, place=place)

    def ours(self, name: str) -> str:
        """A part of our own by its name: 'our Telegram bot'."""
        key = f"outage-what-{slug(name)}"
        return self.s(key) if has(key) else self.s("outage-what-other", name=name)

    def place_of(self, name: str, km: float | None) -> str:
        """A point's name, or how far into the course, or that no place was given."""
        if name:
            return name
        return self.s("place-km", km=self.km(km)) if km is not None else self.s("place-nowhere")


@dataclass(frozen=True, slots=True)
class SayInEvent(Say):
    """The same with an event and one of its runners, for values that hold ids."""

    event: Event
    runner_id: str

    @property
    def runner(self) -> str:
        """Her name."""
        return next((r.name for r in self.event.runners if r.id == self.runner_id), self.runner_id)

    def point_or_none(self, point_id: str | None) -> Point | None:
        """Her course's point of that id."""
        for runner in self.event.runners:
            if runner.id == self.runner_id:
                points = self.event.course_of(runner.id).points
                return next((p for p in points if p.id == point_id), None)
        everywhere = (p for c in self.event.courses for p in c.points)
        return next((p for p in everywhere if p.id == point_id), None)

    def point(self, point_id: str | None) -> str:
        """The name of a point; words for none."""
        found = self.point_or_none(point_id)
        return found.name if found else point_id or self.s("place-nowhere")

    def point_of_meeting(self, meeting: str) -> str:
        """The name of the point of a meeting given by its id, whichever runner's it is."""
        plan = next((m for m in self.event.meetings if m.id == meeting), None)
        if plan is None:
            return meeting
        return next((p.name for p in self.event.course_of(plan.runner).points if p.id == plan.point), meeting)

    def person(self, person_id: str | None) -> str:
        """The name of a person, or what was given for a sender that is none (a mat, a tracker)."""
        if not person_id:
            return self.s("somebody")
        return next((p.name for p in self.event.people if p.id == person_id), person_id)

    def people(self, ids: Iterable[str]) -> str:
        """Names in words."""
        return self.all(self.person(i) for i in ids)

    def last(self, known: LastKnown) -> str:
        """The last known point as a fact."""
        name = self.point(known.point) if known.point else ""
        return self.fact(known.kind, self.place_of(name, known.km))


def lines(*texts: str) -> str:
    """A message from its lines; empty ones fall away."""
    return "\n".join(t for t in texts if t)
