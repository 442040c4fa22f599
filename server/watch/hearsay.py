"""Said to have retired, and then seen: whoever was asked about the one hears of the other.

Who is asked, and when, is with the other doubtful reports (doubts.py): about her race being over everybody near her is,
she herself and those at home too, and at once.
"""

from __future__ import annotations

from collections.abc import Iterator

from server.event.model import PartKind
from server.facts.entry import Entry, Kind
from server.facts.hearsay import said_over
from server.watch.notice import CorrectionValues, DoubtValues, NoticeKind
from server.watch.runner_context import Draft, Rule, Sight, Wake, seen_by_somebody

__all__ = ["RULES", "SEEN_SINCE", "asked_of", "overtaken"]

SEEN_SINCE = "said to have retired, seen since"
"""What such a correction corrects; `conversation.telling` has its sentence."""


def asked_of(sight: Sight) -> tuple[str, ...]:
    """Who is asked whether it is so: her crew and pacers, she herself, those at home, the organiser."""
    kinds = (PartKind.RUNNER, PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER)
    return sight.people(*kinds)


def overtaken(sight: Sight, e: Entry) -> bool:
    """Whether she was seen after somebody said that her race was over: then nobody need be asked about it."""
    last = sight.state.last_known
    if e.kind is not Kind.RETIRED or last is None or e in said_over(sight.state):
        return False
    return last.at > e.seen_at and seen_by_somebody(sight.state, last.entry)


def seen_since(sight: Sight) -> Iterator[Draft | Wake]:
    """Once to each who was asked, but for who saw her."""
    last = sight.state.last_known
    gone = {e.id for e in sight.state.unconfirmed if overtaken(sight, e)}
    for m in sight.told(NoticeKind.UNCONFIRMED):
        values, who = m.notice.values, m.notice.key.person
        if last is None or not isinstance(values, DoubtValues) or values.entry not in gone or who == last.by:
            continue
        said = CorrectionValues(
            SEEN_SINCE, last.point, values.at, last.at, taken_back=False, by=last.by, words=values.words
        )
        occasion = f"{SEEN_SINCE}:{values.entry}"
        yield Draft(NoticeKind.CORRECTION, who, "", occasion, sight.now, said, (last.entry,), mine=True)


RULES: tuple[Rule, ...] = (seen_since,)
