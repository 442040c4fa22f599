"""What an event is: the values every other room speaks of, and the hand-written file they come from.

In: the text of an event file and, for the course, the bytes of its route. Out: `Event` (frozen values)
or every mistake at once as `Problem`s with file, line, field and remedy; an `Event` back to text.
Pure: never imports aiohttp, SQLAlchemy, telegram, and never reads the clock, a file or the network.
"""

from server.event.changes import ChangeKind, Difference, changes, removal_refused
from server.event.parse_state import Parsed
from server.event.placing import PlacedEvent, place
from server.event.problem import Problem, Severity
from server.event.read import parse_event
from server.event.write import dump_event

__all__ = [
    "ChangeKind",
    "Difference",
    "Parsed",
    "PlacedEvent",
    "Problem",
    "Severity",
    "changes",
    "dump_event",
    "parse_event",
    "place",
    "removal_refused",
]
