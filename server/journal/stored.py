"""What each text field of stored values holds, by its name: whether deletion takes it out is decided here, once.

A field of text that is not declared fails tests/journal/test_stored.py, so that none survives a deletion unseen.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Final


class Holds(StrEnum):
    """What a stored text is."""

    WORDS = "what somebody wrote, said or showed"
    WHERE = "where somebody is, or may be"
    HEALTH = "what she ate, drank and took, and how she was"
    PERSON = "the id of a person; the person's own row is blanked with what it says of them"
    PLAN = "from the event file, whose text is rewritten"
    NAME = "the id of a point, meeting, entry, notice or event, or a word of ours"


_BY_KIND: Final = {
    Holds.WORDS: "words doubt picture",
    Holds.WHERE: "fix where where_fix",
    Holds.HEALTH: "logged log eaten changed",
    Holds.PERSON: (
        "by sender runner person to told_by seen_by holder holders caller not_named_by named_by pacer driver crew people"
        " asked told givers keep go beside in_hand_by had_by ended_by pick_up_by who out goes"
    ),
    Holds.PLAN: (
        "kit food if_missed take_back car kit_car things missing bring transport was now what point drive_from"
    ),
    Holds.NAME: (
        "id event key via replaces about edge wave facts buttons occasion meeting next_meeting unreported_out"
        " latest_out_point give_at entry kind seen_point next_point alarm of_kind gave_back silent how seen_at stands busy"
        " change reason also was_kind going signal_back_at notice_kind channels call over meant gives_up state at_point"
        " before lost why why_now came then"
    ),
}
HELD: Final = {name: holds for holds, names in _BY_KIND.items() for name in names.split()}
"""What each field of that name holds."""
