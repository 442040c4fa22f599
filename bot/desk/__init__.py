"""The desk: question or report in, the server's API asked, a reply in the reader's words out; for every
channel.

In: an `Incoming` of any channel. Out: a `Reply`. It keeps no database: what it remembers of an address may be
lost. It never imports the journal, the forecast or the watch's rules; what it knows it asks of the API.
"""

from bot.desk.desk import Desk

__all__ = ["Desk"]
