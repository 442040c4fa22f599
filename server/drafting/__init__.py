"""A race being set up: an event file changed piece by piece, with every comment kept; what a person pastes, read.

In: the text of an event file, what somebody typed or pasted, the line of a route. Out: the new text, rows that were read,
suggestions. What is wrong with a file is said by `server.event` and the check alone: nothing is refused here, so that
nothing typed is lost. Pure: never imports aiohttp, SQLAlchemy, telegram, never reads the clock, a file or the network.
"""
