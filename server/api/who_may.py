"""Who may do what: one table of call by part. Handlers ask here before they look whether anything exists.

YES is the whole of it, SOME the smaller share that `SOME_MEANS` words, NO nothing. A person with several
parts has the widest of them. Somebody without a part in the event is a stranger and gets NO everywhere.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from enum import IntEnum, StrEnum

from server.event.model import Part, PartKind
from server.facts.entry import RACE_LEVEL, Kind


class May(IntEnum):
    """How far a part may go; the order is by width."""

    NO = 0
    SOME = 1
    YES = 2


class Call(StrEnum):
    """What can be asked for, grouped as people think of it rather than by path."""

    FORECAST = "see the forecast"
    NEXT = "see the next meeting"
    MISSED = "ask whether she was missed"
    PLAN = "see the plan"
    KIT = "see the kit"
    WHERE = "see where she is"
    FACTS = "see what was reported"
    CUT_OFFS = "see cut-offs and their odds"
    CARDS = "see the if-then cards"
    ALARM = "ask what to do about an open alarm"
    BOARD = "see the board"
    PHONES = "see telephone numbers"
    CHECK_IN = "report a check-in"
    POSITION = "report a position"
    HELP = "report that she asked for help"
    CREW_FACT = "report what crew do and see"
    LOG = "log what she ate, drank and how she was"
    SEE_LOG = "see the stop log"
    ASK_LOG = "be shown the stop log as a medic"
    IN_HAND = "report that somebody has her in hand"
    RACE_CONTROL_TOLD = "report that race control knows"
    STAND_DOWN = "stand an alarm down"
    RACE = "report a race-level fact"
    CHANGE = "change the plan during the race"
    START_LIST = "load a start list"
    PASSAGES = "say when others came to a point"
    FIELD = "see the whole field"
    TAKE_BACK = "take an entry back"
    CONFIRM = "confirm an entry"
    ANSWER = "answer a notice"
    PASS_ON = "have words passed on to others"  # noqa: S105 - no password
    PHOTO = "see a photo"
    OWN_NEWS = "say when to be told what"
    GROUP = "have a group chat told what concerns all"
    FOLLOWERS = "give followers a link and take it back"


_Y, _S, _N = May.YES, May.SOME, May.NO
_ORDER = (
    PartKind.RUNNER,
    PartKind.CREW,
    PartKind.PACER,
    PartKind.SAFETY_CONTACT,
    PartKind.ORGANISER,
    PartKind.VOLUNTEER,
    PartKind.SUPPORTER,
)

_ROWS: Mapping[Call, tuple[May, May, May, May, May, May, May]] = {
    #                        runner crew pacer safety organiser volunteer supporter
    Call.FORECAST: (_Y, _Y, _Y, _Y, _Y, _N, _S),
    Call.NEXT: (_Y, _Y, _Y, _Y, _Y, _N, _N),
    Call.MISSED: (_Y, _Y, _Y, _Y, _Y, _N, _N),
    Call.PLAN: (_Y, _Y, _Y, _Y, _Y, _N, _S),
    Call.KIT: (_Y, _Y, _Y, _Y, _Y, _N, _N),
    Call.WHERE: (_Y, _Y, _Y, _Y, _Y, _N, _S),
    Call.FACTS: (_Y, _Y, _Y, _Y, _Y, _N, _N),
    Call.CUT_OFFS: (_Y, _Y, _Y, _Y, _Y, _N, _N),
    Call.ALARM: (_Y, _Y, _Y, _Y, _Y, _Y, _S),
    Call.CARDS: (_Y, _Y, _Y, _Y, _Y, _S, _S),
    Call.BOARD: (_Y, _Y, _Y, _Y, _Y, _S, _S),
    Call.PHONES: (_Y, _Y, _Y, _Y, _Y, _N, _N),
    Call.CHECK_IN: (_Y, _Y, _Y, _Y, _Y, _Y, _S),
    Call.POSITION: (_Y, _Y, _Y, _Y, _Y, _N, _N),
    Call.HELP: (_Y, _Y, _Y, _Y, _Y, _Y, _Y),
    Call.CREW_FACT: (_Y, _Y, _Y, _Y, _Y, _N, _N),
    Call.LOG: (_Y, _Y, _Y, _Y, _N, _N, _N),
    Call.SEE_LOG: (_Y, _Y, _Y, _Y, _S, _S, _N),
    Call.ASK_LOG: (_N, _N, _N, _N, _Y, _Y, _N),
    Call.IN_HAND: (_Y, _Y, _Y, _Y, _Y, _Y, _N),
    Call.RACE_CONTROL_TOLD: (_Y, _Y, _Y, _Y, _Y, _N, _N),
    Call.STAND_DOWN: (_N, _N, _N, _Y, _Y, _N, _N),
    Call.RACE: (_N, _N, _N, _N, _Y, _N, _N),
    Call.CHANGE: (_Y, _Y, _N, _Y, _Y, _N, _N),
    Call.START_LIST: (_N, _N, _N, _N, _Y, _N, _N),
    Call.PASSAGES: (_N, _N, _N, _N, _Y, _Y, _N),
    Call.FIELD: (_N, _N, _N, _N, _Y, _N, _N),
    Call.TAKE_BACK: (_Y, _Y, _Y, _Y, _Y, _S, _S),
    Call.CONFIRM: (_Y, _Y, _Y, _Y, _Y, _S, _N),
    Call.ANSWER: (_Y, _Y, _Y, _Y, _Y, _Y, _Y),
    Call.PASS_ON: (_Y, _Y, _Y, _Y, _Y, _Y, _N),
    Call.PHOTO: (_Y, _Y, _Y, _Y, _Y, _S, _N),
    Call.OWN_NEWS: (_Y, _Y, _Y, _Y, _Y, _Y, _Y),
    Call.GROUP: (_Y, _Y, _N, _Y, _Y, _N, _N),
    Call.FOLLOWERS: (_Y, _N, _N, _N, _N, _N, _N),  # whoever has the link has no part: server/api/followers.py
}

TABLE: Mapping[Call, Mapping[PartKind, May]] = {
    call: dict(zip(_ORDER, row, strict=True)) for call, row in _ROWS.items()
}

SOME_MEANS: Mapping[Call, str] = {
    Call.FORECAST: "the last known point, the next point and the finish; no estimate of where she is",
    Call.PLAN: "points and target times; no food, no stops",
    Call.WHERE: "the last known point and when; no coordinates, no estimate",
    Call.ALARM: "what to do and whom to call; what is known of her only to who called, or has the alarm",
    Call.CARDS: "the emergency numbers only",
    Call.BOARD: "what the other calls allow",
    Call.SEE_LOG: "as a medic, on their word, which is kept; for twelve hours",
    Call.CHECK_IN: "kept as unconfirmed until somebody of the crew confirms it",
    Call.PHOTO: "only those of one's own, and those sent to oneself",
    Call.TAKE_BACK: "only entries of one's own",
    Call.CONFIRM: "only entries of one's own",
}

_OTHER_KINDS: Mapping[Kind, Call] = {
    Kind.POSITION: Call.POSITION,
    Kind.ASKED_FOR_HELP: Call.HELP,
    Kind.IN: Call.CHECK_IN,
    Kind.OUT: Call.CHECK_IN,
    Kind.THROUGH: Call.CHECK_IN,
    Kind.RESTING: Call.CHECK_IN,
    Kind.MOVING_AGAIN: Call.CHECK_IN,
    Kind.RETIRED: Call.CHECK_IN,
    Kind.SWEEP_THROUGH: Call.CHECK_IN,
    Kind.NOT_HERE_YET: Call.CHECK_IN,
    Kind.RACE_CONTROL_TOLD: Call.RACE_CONTROL_TOLD,
    Kind.IN_HAND: Call.IN_HAND,
    Kind.STAND_DOWN: Call.STAND_DOWN,
    Kind.CONTACT_LOST: Call.CREW_FACT,
    Kind.CONDITION: Call.CREW_FACT,
    Kind.HOW_SHE_IS: Call.CREW_FACT,
    Kind.LOG: Call.LOG,
    Kind.LOG_SHOWN: Call.ASK_LOG,
    Kind.LOOKED_BACK: Call.CREW_FACT,
    Kind.CREW_THERE: Call.CREW_FACT,
    Kind.CREW_LEFT: Call.CREW_FACT,
    Kind.DRIVE_CONFIRMED: Call.CREW_FACT,
    Kind.AWAKE: Call.CREW_FACT,
    Kind.CANNOT_COME: Call.CREW_FACT,
    Kind.CAN_COME: Call.CREW_FACT,
    Kind.TAKES_OVER: Call.CREW_FACT,
    Kind.ASKED_TO_SWAP: Call.CREW_FACT,
    Kind.MEET_ELSEWHERE: Call.CREW_FACT,
    Kind.PASSED_ON: Call.PASS_ON,
    Kind.QUIET: Call.OWN_NEWS,
    Kind.REMIND: Call.OWN_NEWS,
    Kind.SETTINGS_CHANGED: Call.ANSWER,
    Kind.NOTE: Call.CREW_FACT,
    Kind.HELP_WORD: Call.HELP,
}

KIND_NEEDS: Mapping[Kind, Call] = {**_OTHER_KINDS, **dict.fromkeys(RACE_LEVEL, Call.RACE)}
"""Which call an entry's kind belongs to. Kinds not here (taken back, confirmed, answered) have calls of
their own and can't be reported."""


def may(parts: Iterable[Part], call: Call, runner: str | None = None) -> May:
    """The widest that those parts allow for that call; for a runner, only parts for her or for all count."""
    row = TABLE[call]
    return max((row[p.kind] for p in parts if runner is None or p.runner in (None, runner)), default=May.NO)
