"""Who is owed which notice now, and when to ask again.

In: a `Situation` (event, facts, outlooks, notices already made, answers) and `now`. Out: a `Verdict`:
notices owed and the next moment at which something may change by time alone. It has no other memory.
Doors: `server.watch.evaluate.evaluate` and `server.watch.meetings.meetings`. Tables: table.py (kinds, parts,
states), escalation_state.py (the ladder); server/watch/draw.py draws them for the docs.
Pure: never imports aiohttp, SQLAlchemy, telegram, and never reads the clock, a file or the network.
"""
