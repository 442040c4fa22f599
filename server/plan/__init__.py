"""Pace by gradient, timetable, stops, fuel, kit, light and dark, crew movements.

In: a course, a runner's target and rules of the race. Out: `Timetable`s for goals A, B, C, and what will
not work, with the reason. Pure: never imports aiohttp, SQLAlchemy, telegram; no clock, file or network.
"""

from server.plan.errors import PlanError
from server.plan.planner import make_timetable
from server.plan.setting import OwnPace
from server.plan.timetable import Row, Timetable

__all__ = ["OwnPace", "PlanError", "Row", "Timetable", "make_timetable"]
