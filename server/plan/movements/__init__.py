"""Crew movements: which car goes when, with whom, from where to which meeting, and what will not work.

In: an event, timetables, forecasts' joint paths, perhaps the facts and `now`. Out: a `CrewPlan` with a row for each
movement of each person and car, the rules it breaks, its troubles with their odds, and offers of what would help.
Never imports aiohttp, SQLAlchemy, telegram; no clock, file or network.
"""

from server.plan.movements.joint import Tie, leave_by, tie
from server.plan.movements.offers import crew_plan
from server.plan.movements.roads import Roads, course_spots
from server.plan.movements.values import (
    APART,
    Addend,
    Broken,
    CarRow,
    CarWay,
    CrewPlan,
    Journey,
    MeetingMovement,
    MovementTrouble,
    Offer,
    OfferKind,
    PersonRow,
    Ride,
    Role,
    TroubleKind,
    part_of,
)

__all__ = [
    "APART",
    "Addend",
    "Broken",
    "CarRow",
    "CarWay",
    "CrewPlan",
    "Journey",
    "MeetingMovement",
    "MovementTrouble",
    "Offer",
    "OfferKind",
    "PersonRow",
    "Ride",
    "Roads",
    "Role",
    "Tie",
    "TroubleKind",
    "course_spots",
    "crew_plan",
    "leave_by",
    "part_of",
    "tie",
]
