"""Who drives where, as rows: car, who is in it, from and to, what the way is made of, odds of being there first.

Times of meetings are not here: those are the watch's (`meeting_lines`), so that paper and notices never differ.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from rich.table import Table

from server.conversation.telling.movements import made_of
from server.conversation.telling.say import Say
from server.event.model import Event
from server.plan.movements import CrewPlan, MeetingMovement, Ride
from server.plan.movements.names import car_name, person_name, place_name

COLUMNS = ("paper-car", "paper-who", "paper-from", "paper-to", "paper-made-of", "paper-in-time")


@dataclass(frozen=True, slots=True)
class MoveRow:
    """One car to one meeting, in words; `origin` is '' where it is not known."""

    meeting: str
    people: tuple[str, ...]
    car: str
    who: str
    origin: str
    place: str
    made_of: str
    odds: str

    @property
    def cells(self) -> tuple[str, ...]:
        """In the order of `COLUMNS`."""
        return (self.car, self.who, self.origin, self.place, self.made_of, self.odds)


def move_rows(event: Event, plan: CrewPlan, say: Say) -> tuple[MoveRow, ...]:
    """The movements in order of time, one row for each car of each meeting; where they go by way of a place the drive
    there has a row before it, since the leave-by is the time to leave that place."""
    return tuple(row for v in plan.visits for r in v.rides for row in _rows(event, v, r, say))


def _rows(event: Event, v: MeetingMovement, r: Ride, say: Say) -> Iterator[MoveRow]:
    odds = say.odds(r.p_first)
    there = bool(r.last.known and not r.last.ways)
    row = MoveRow(
        meeting=v.meeting,
        people=r.riders,
        car=car_name(event, r.car) if r.car else say.s("paper-own-car"),
        who=say.all(_names(event, r, say)),
        origin="" if r.leave_from is None else place_name(event, r.leave_from),
        place=place_name(event, v.point),
        made_of=say.s("paper-there-already") if there else made_of(say.reader, r.last),
        odds=odds if v.promised else say.s("paper-not-promised", odds=odds),
    )
    if r.to_via is not None:
        origin, place = place_name(event, r.from_place), place_name(event, r.leave_from)
        yield replace(row, origin=origin, place=place, made_of=made_of(say.reader, r.to_via), odds="")
    yield row


def _names(event: Event, r: Ride, say: Say) -> Iterator[str]:
    for who in r.riders:
        name = person_name(event, who)
        yield say.s("paper-drives-her", name=name) if who == r.driver and r.journey.ways else name


def moves_table(event: Event, plan: CrewPlan, say: Say) -> Table:
    """The rows as a rich table."""
    table = Table(title=say.s("paper-head-drives"), title_justify="left")
    for key in COLUMNS:
        table.add_column(say.s(key))
    for row in move_rows(event, plan, say):
        table.add_row(*row.cells)
    return table
