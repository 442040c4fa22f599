"""Pace by gradient, timetable, stops, fuel, kit, light and dark, crew movements.

In: a course, a runner's target and rules of the race. Out: `Timetable`s for goals A, B, C, and what will
not work, with the reason. Pure: never imports aiohttp, SQLAlchemy, telegram; no clock, file or network.
"""
