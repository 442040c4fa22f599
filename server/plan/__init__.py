"""Pace by gradient, timetable, stops, fuel, kit, light and dark, crew movements.

In: a course, a runner's target and rules of the race. Out: `Timetable`s for goals A, B, C, and what will
not work, with the reason. Pure: never imports aiohttp, SQLAlchemy, telegram; no clock, file or network.
"""

from server.plan.errors import PlanError
from server.plan.evidence import Evidence, evidence_of
from server.plan.own import OwnPace
from server.plan.planner import make_timetable
from server.plan.timetable import Row, Timetable

__all__ = ["Evidence", "OwnPace", "PlanError", "Row", "Timetable", "evidence_of", "make_timetable"]
