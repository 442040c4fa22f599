"""What has been reported, and what follows from it: entries, and the fold that turns them into state.

In: journal entries in any order, the event, `now`. Out: `RaceState` and, per runner, `RunnerState`.
Pure: never imports aiohttp, SQLAlchemy, telegram, and never reads the clock, a file or the network.
"""
