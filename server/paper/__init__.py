"""The plan for terminal, wall, car and telephone: tables, pictures, calendars, GPX, CSV, JSON, printed sheets.

In: an event, timetables, courses, the situation before the start, a reader. Out: text or bytes; no file is written
here. Pure but for its own templates: never imports aiohttp, SQLAlchemy, telegram; no clock, no network.
"""
