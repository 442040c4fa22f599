"""Plan and facts -> posterior; posterior and now -> arrival windows, odds, whereabouts, joint paths.

In: a Reference, facts about one runner, Silence, `now`; seconds since her start and km, numbers only. Out: Posterior,
View. Pure: never imports aiohttp, SQLAlchemy, telegram, and never reads the clock, a file or the network.
(`fit` is a command, not part of the room: it alone reads tables.)
"""
