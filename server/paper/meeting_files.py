"""The meetings for other programs: one row a car in CSV, one object a meeting in JSON. Values in, text or plain data out.

Times are those of the notices before the start (`before.meetings`), who drives and the odds those of the crew movements.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from server.conversation.telling.times import edges, floor_to
from server.event.model import Event
from server.paper.after_her import AfterHer, after_her
from server.paper.before import BeforeStart
from server.plan.movements import CrewPlan, MeetingMovement, Ride
from server.plan.movements.names import ON_THEIR_OWN, car_name, person_name, place_name
from server.plan.movements.trips import car_of
from server.watch.notice import MeetingValues

CSV_COLUMNS = (
    "runner", "point", "id", "meeting", "who", "driver", "car", "from", "drive", "drive confirmed", "leave by",
    "be there from", "early", "likely", "late", "wait until", "odds there first", "promised", "bring", "take back",
    "food", "if missed", "lost", "leave once she has left", "at the latest after",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Ride:
    """One car to one meeting: the watch's times for it, and its visit in the movements (None: not among them)."""

    m: MeetingValues
    visit: MeetingMovement | None
    car: str
    ride: Ride | None


def meetings_csv(before: BeforeStart, runners: list[str], moves: CrewPlan) -> str:
    """One row a car of each meeting; times local to the event, YYYY-MM-DD HH:MM:SS, empty where nothing is known:
    no leave-by without a confirmed drive, nor where crew leave once she has left the meeting before (named in the last
    columns, with how long after at the latest, h:mm:ss). Lists are parted by '; ', odds 0..1, yes or no in English."""
    event, zone = before.event, ZoneInfo(before.event.time_zone)
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(CSV_COLUMNS)
    for runner in runners:
        for meeting in before.meetings(runner):
            for r in _rides(event, meeting, moves):
                after = after_her(before, runner, r.m)
                writer.writerow([_safe(cell) for cell in _cells(event, runner, r, zone, after)])
    return out.getvalue()


def _cells(event: Event, runner: str, r: _Ride, zone: ZoneInfo, after: AfterHer | None) -> Iterator[str]:
    m = r.m
    yield event.runner(runner).name
    yield place_name(event, m.point)
    yield m.point
    yield m.meeting
    yield "; ".join(person_name(event, p) for p in m.crew)
    yield person_name(event, r.ride.driver) if r.ride and r.ride.driver else ""
    yield _car(event, r.car) or ""
    yield place_name(event, m.drive_from) if m.drive_from else ""
    yield _length(m.drive)
    yield _yes(m.drive_confirmed)
    yield from (_local(t, zone) for t in (None if after else _told(m), m.be_there, *edges(m.window)))
    yield _local(m.wait_until, zone)
    yield "" if r.ride is None else f"{r.ride.p_first:.3f}"
    yield "" if r.visit is None else _yes(r.visit.promised)
    yield "; ".join(m.kit)
    yield "; ".join(m.take_back)
    yield m.food
    yield m.if_missed
    yield m.lost
    yield after.place if after else ""
    yield _length(after.latest) if after else ""


def meetings_json(before: BeforeStart, runner: str, moves: CrewPlan) -> list[dict[str, Any]]:
    """A runner's meetings in running order: instants in UTC (ISO 8601), lengths in whole seconds, odds 0..1; `rides`
    holds an object a car. `leave_by` is null without a confirmed drive, an unknown drive, place or driver null too;
    `leave_after` is set where they leave once she has left the meeting before, never by `leave_by` alone."""
    return [_meeting(before, runner, m, moves) for m in before.meetings(runner)]


def _meeting(before: BeforeStart, runner: str, m: MeetingValues, moves: CrewPlan) -> dict[str, Any]:
    event = before.event
    visit = _visit(moves, m.meeting)
    return {
        "id": m.meeting,
        "point": m.point,
        "name": place_name(event, m.point),
        "be_there": _utc(m.be_there),
        "early": _utc(m.window.early),
        "likely": _utc(m.window.likely),
        "late": _utc(m.window.late),
        "wait_until": _utc(m.wait_until),
        "sure": m.p_in_time,
        "p_first": None if visit is None else round(visit.p_first, 4),
        "promised": None if visit is None else visit.promised,
        "lost": m.lost,
        "bring": list(m.kit),
        "take_back": list(m.take_back),
        "food": m.food,
        "if_missed": m.if_missed,
        "no_signal": m.no_signal,
        "rides": [_ride(event, r, after_her(before, runner, r.m)) for r in _rides(event, m, moves)],
    }


def _ride(event: Event, r: _Ride, after: AfterHer | None) -> dict[str, Any]:
    m = r.m
    return {
        "who": list(m.crew),
        "names": [person_name(event, p) for p in m.crew],
        "driver": None if r.ride is None else r.ride.driver,
        "car": None if r.car.startswith(ON_THEIR_OWN) else r.car,
        "car_name": _car(event, r.car),
        "from": m.drive_from,
        "from_name": place_name(event, m.drive_from) if m.drive_from else None,
        "drive_s": None if m.drive is None else round(m.drive.total_seconds()),
        "confirmed": m.drive_confirmed,
        "leave_by": None if (leave_by := _told(m)) is None else _utc(leave_by),
        "leave_after": None if after is None else _after(after),
        "wait_until": _utc(m.wait_until),
        "lost": m.lost,
    }


def _after(after: AfterHer) -> dict[str, Any]:
    """The point she has left by then, how long after at the latest in seconds (null: at once), and when by each goal."""
    latest = None if after.latest is None else round(after.latest.total_seconds())
    planned = {goal.value: _utc(at) for goal, at in after.leaves}
    return {"point": after.point, "latest_s": latest, "planned": planned}


def _told(m: MeetingValues) -> datetime | None:
    """The leave-by as sheet, calendar and notice give it: no file may send anybody out later than they do."""
    return None if m.leave_by is None else floor_to(m.leave_by)


def _rides(event: Event, meeting: MeetingValues, moves: CrewPlan) -> Iterator[_Ride]:
    plan = next(p for p in event.meetings if p.id == meeting.meeting)
    visit = _visit(moves, meeting.meeting)
    for m in meeting.parties():
        rides = () if visit is None else visit.rides
        ride = next((r for r in rides if set(r.riders) & set(m.crew)), None)
        yield _Ride(m, visit, m.car or car_of(event, plan), ride)


def _visit(moves: CrewPlan, meeting: str) -> MeetingMovement | None:
    return next((v for v in moves.visits if v.meeting == meeting), None)


def _car(event: Event, key: str) -> str | None:
    """The name of a car of the event; None for one that nobody named."""
    return None if key.startswith(ON_THEIR_OWN) else car_name(event, key)


def _safe(cell: str) -> str:
    """A cell that begins like a formula would be run by a spreadsheet."""
    return f"'{cell}" if cell and cell[0] in "=+-@\t\r" else cell


def _local(at: datetime | None, zone: ZoneInfo) -> str:
    return "" if at is None else f"{at.astimezone(zone):%Y-%m-%d %H:%M:%S}"


def _utc(at: datetime) -> str:
    return at.astimezone(UTC).isoformat(timespec="seconds")


def _length(t: timedelta | None) -> str:
    if t is None:
        return ""
    seconds = round(t.total_seconds())
    return f"{seconds // 3600}:{seconds // 60 % 60:02d}:{seconds % 60:02d}"


def _yes(it: bool) -> str:
    return "yes" if it else "no"
