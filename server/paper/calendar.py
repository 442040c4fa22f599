"""A calendar per person (RFC 5545): when to leave, when to be there, until when to wait; start, pacing, standing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

import icalendar

from server.conversation.telling.say import Say, lines
from server.conversation.telling.times import edges, floor_to, planned, planned_length
from server.event.model import Event, Goal, Part, PartKind
from server.paper.after_her import after_her
from server.paper.before import BeforeStart
from server.paper.meeting import meeting_lines
from server.paper.table import to_minute
from server.plan.timetable import Timetable
from server.watch.notice import MeetingValues

PRODUCT = "-//Stilepost//crew plan//EN"
GET_READY = timedelta(minutes=30)
"""A calendar rings so long before crew must leave or be there, and when they must (own choice)."""


@dataclass(frozen=True, slots=True)
class Appointment:
    """One entry of a person's calendar. `id` stays the same when times move; start and end are aware. `rings`: how long
    before its start the calendar gives an alarm, each."""

    id: str
    start: datetime
    end: datetime
    title: str
    where: str = ""
    words: str = ""
    lat: float | None = None
    lon: float | None = None
    rings: tuple[timedelta, ...] = ()


def calendar(event: Event, appointments: Sequence[Appointment], stamp: datetime) -> bytes:
    """An RFC 5545 calendar. UID is made of event and appointment and never changes, SEQUENCE is the event's version:
    a calendar that has an older version moves its entries instead of doubling them. Times are in UTC, which needs
    no VTIMEZONE and is right in every zone. `stamp` is when this was made. Two appointments of one id: ValueError.
    """
    ids = [a.id for a in appointments]
    if len(set(ids)) != len(ids):
        raise ValueError(f"two appointments of one id among {sorted(ids)}")
    whole = icalendar.Calendar()
    whole.add("prodid", PRODUCT)
    whole.add("version", "2.0")
    whole.add("method", "PUBLISH")
    whole.add("x-wr-calname", event.name)
    for a in sorted(appointments, key=lambda a: (a.start, a.id)):
        entry = icalendar.Event()
        entry.add("uid", f"{event.id}.{a.id}@stilepost")
        entry.add("sequence", event.version)
        entry.add("dtstamp", stamp.astimezone(UTC))
        entry.add("dtstart", a.start.astimezone(UTC).replace(microsecond=0))
        entry.add("dtend", max(a.end, a.start + timedelta(minutes=1)).astimezone(UTC).replace(microsecond=0))
        entry.add("summary", a.title)
        if a.where:
            entry.add("location", a.where)
        if a.words:
            entry.add("description", a.words)
        if a.lat is not None and a.lon is not None:
            entry.add("geo", (a.lat, a.lon))
        for before in a.rings:
            entry.add_component(_alarm(a.title, before))
        whole.add_component(entry)
    return bytes(whole.to_ical())


def _alarm(title: str, before: timedelta) -> icalendar.Alarm:
    """VALARM (RFC 5545, 3.6.6): shown with sound that long before the entry begins, under the entry's own words."""
    ring = icalendar.Alarm()
    ring.add("action", "DISPLAY")
    ring.add("description", title)
    ring.add("trigger", -before)
    return ring


def appointments_of(before: BeforeStart, person: str, say: Say) -> tuple[Appointment, ...]:
    """What a person has to do: start, meetings, pacing, standing at a point, in their own words.

    A meeting is timed as the watch times it: from leave-by (be there from, without a confirmed drive; her planned leaving
    of the meeting before, where they come from that) until she is not worth waiting for any longer; by the car they are in.
    Errors: KeyError for a
    person who is not in the event.
    """
    event = before.event
    event.person(person)
    found: list[Appointment] = []
    for runner in event.runners:
        if runner.id not in before.situation.timetables:
            continue
        for values in before.meetings(runner.id):
            own = person == runner.person
            if own or person in values.crew:
                mine = values if own else values.own(person)
                found.append(_meeting(before, runner.id, mine, say, own=own))
        for part in event.parts_of(person):
            if part.runner in (None, runner.id):
                found += _by_part(event, before.timetable(runner.id), part, say)
    return tuple(found)


def _meeting(before: BeforeStart, runner: str, m: MeetingValues, say: Say, *, own: bool) -> Appointment:
    event = before.event
    point = event.course_of(runner).point(m.point)
    values = {"runner": event.runner(runner).name, "place": point.name}
    rings: tuple[timedelta, ...] = (GET_READY, timedelta(0))
    if own:
        title, rings = say.s("paper-own-title", place=point.name), ()
        start, _, end = edges(m.window)
    elif m.leave_by is not None and m.drive != timedelta(0):
        after = after_her(before, runner, m)
        if after is None:
            title = say.s("paper-leave-title", leave_by=say.when(floor_to(m.leave_by), day=True), **values)
            start = floor_to(m.leave_by)
        else:
            # By the clock a driver would leave before she comes: the entry begins when she leaves as planned.
            values["runner"] = after.other or values["runner"]
            title = say.s("paper-leave-once-title", left=after.place, **values)
            start = dict(after.leaves)[Goal.B]
            if after.other:
                start = min(start, after.until)
            rings = (timedelta(0),)
        end = max(m.wait_until, start)
    else:
        title = say.s("paper-meeting-title", be_there=say.when(floor_to(m.be_there), day=True), **values)
        start, end = floor_to(m.be_there), m.wait_until
    words = lines(*meeting_lines(before, runner, m, say, own=own), _as_of(before, say))
    spot = (point.access.lat, point.access.lon) if point.access else (None, None)
    where = f"{point.name}, {say.km(point.km or 0.0)}"
    return Appointment(f"meeting-{m.meeting}", start, end, title, where, words, *spot, rings)


def _as_of(before: BeforeStart, say: Say) -> str:
    return say.s("paper-as-of", when=before.made(say.reader))


def _by_part(event: Event, table: Timetable, part: Part, say: Say) -> Iterator[Appointment]:
    course, name = event.course_of(table.runner), event.runner(table.runner).name
    if part.kind is PartKind.RUNNER:
        goals = lines(
            *(
                f"{say.s('paper-goal', goal=g.value)}: {to_minute(planned_length(table.rows[-1].arrive[g], g))}"
                for g in Goal
            )
        )
        end = planned(table.start + table.rows[-1].arrive[Goal.C], Goal.C)
        title = say.s("paper-start-title", event=event.name)
        place = course.point(table.rows[0].point).name
        yield Appointment(f"race-{table.runner}", table.start, end, title, place, goals)
    elif part.kind is PartKind.PACER and part.pace_from and part.pace_to:
        first, last = table.row(part.pace_from), table.row(part.pace_to)
        ends = {"from": course.point(part.pace_from).name, "to": course.point(part.pace_to).name}
        yield Appointment(
            f"pace-{table.runner}-{part.pace_from}",
            planned(table.start + first.arrive[Goal.A], Goal.A),
            planned(table.start + last.arrive[Goal.C], Goal.C),
            say.s("paper-pace-title", runner=name, **ends),
            ends["from"],
            say.s("paper-pace-length", length=say.km(last.km - first.km)),
        )
    elif part.kind is PartKind.VOLUNTEER and part.point and any(r.point == part.point for r in table.rows):
        row, place = table.row(part.point), course.point(part.point).name
        begin, end = table.start + row.arrive[Goal.A], table.start + row.leave[Goal.C]
        times = (planned(begin, Goal.A), planned(end, Goal.C))
        title = say.s("paper-stand-title", runner=name, place=place)
        yield Appointment(f"stand-{part.point}-{table.runner}", *times, title)
