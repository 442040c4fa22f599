"""What has been reported, and what follows from it: entries, and the fold that turns them into state.

In: journal entries in any order, the event, `now`. Out: `RaceState` and, per runner, `RunnerState`.
`fold` (fold.py) makes the state, `doubt` (validation.py) says what can't be right about one more report;
conflict_resolution.py, points.py, status.py and race.py hold the rules, each written at its top.
Pure: never imports aiohttp, SQLAlchemy, telegram, and never reads the clock, a file or the network.
"""
