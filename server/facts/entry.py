"""One line of the journal: a check-in, a race-level fact or a decision, with its three times.

`seen_at` is when it happened, `sent_at` when the sender sent it, `received_at` when we stored it.
`key` is made by the sender and unique per sender; the same key again counts once, with other content it is
a conflict. `replaces` names what an entry corrects: an entry's id, or a key of the same sender.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from server.facts.stop_log import Logged


class Kind(StrEnum):
    """What an entry says. The first group are check-ins about a runner, then race-level facts by the
    organiser, then decisions and answers by people."""

    IN = "in"
    OUT = "out"
    THROUGH = "through"
    POSITION = "position"
    RESTING = "resting"
    MOVING_AGAIN = "moving again"
    ASKED_FOR_HELP = "asked for help"
    RETIRED = "retired"
    SWEEP_THROUGH = "sweep through"
    NOT_HERE_YET = "not here yet"

    START_DELAYED = "start delayed"
    WAVE_MOVED = "wave moved"
    HELD = "runners held"
    RELEASED = "runners released"
    RACE_ENDED_EARLY = "race ended early"
    REROUTED = "rerouted"
    CUT_OFF_MOVED = "cut-off moved"
    ACCESS_CLOSED = "access closed"
    ACCESS_OPENED = "access opened"

    TAKEN_BACK = "taken back"
    CONFIRMED = "confirmed"
    ANSWERED = "answered"
    STAND_DOWN = "stand-down"
    RACE_CONTROL_TOLD = "race control told"
    IN_HAND = "in hand"
    CONTACT_LOST = "contact lost"
    CONDITION = "condition"
    HOW_SHE_IS = "how she is"
    LOG = "log"
    LOG_SHOWN = "log shown"
    LOOKED_BACK = "looked back"
    HELP_WORD = "word on a call for help"
    CREW_THERE = "crew there"
    CREW_LEFT = "crew left"
    DRIVE_CONFIRMED = "drive confirmed"
    AWAKE = "awake"
    CANNOT_COME = "cannot come"
    CAN_COME = "can come again"
    TAKES_OVER = "takes over"
    PASSED_ON = "passed on"
    ASKED_TO_SWAP = "asked to swap"
    MEET_ELSEWHERE = "meet elsewhere"
    QUIET = "quiet until"
    REMIND = "remind"
    SETTINGS_CHANGED = "settings changed"
    NOTE = "note"


CHECK_INS = frozenset(
    {
        Kind.IN,
        Kind.OUT,
        Kind.THROUGH,
        Kind.POSITION,
        Kind.RESTING,
        Kind.MOVING_AGAIN,
        Kind.ASKED_FOR_HELP,
        Kind.RETIRED,
        Kind.SWEEP_THROUGH,
        Kind.NOT_HERE_YET,
    }
)
REQUESTS = frozenset(
    {Kind.PASSED_ON, Kind.ASKED_TO_SWAP, Kind.MEET_ELSEWHERE, Kind.QUIET, Kind.REMIND},
)
"""What somebody wants told to others or to themselves: about people and meetings, never about a runner, so without one."""
LOOKED_BACK = ("well", "wrong", "next")
"""The questions after the race, in their order: `Entry.about` of an answer."""
EVERYBODY = "*"
"""`Entry.to` of words for all."""
RACE_LEVEL = frozenset(
    {
        Kind.START_DELAYED,
        Kind.WAVE_MOVED,
        Kind.HELD,
        Kind.RELEASED,
        Kind.RACE_ENDED_EARLY,
        Kind.REROUTED,
        Kind.CUT_OFF_MOVED,
        Kind.ACCESS_CLOSED,
        Kind.ACCESS_OPENED,
    }
)


class Retired(StrEnum):
    """How a runner's race ended before the finish. NOT_SAID: that it ended counts, how is still to be told."""

    OWN_CHOICE = "own choice"
    TIMED_OUT = "timed out"
    WITHDRAWN = "withdrawn by medics or officials"
    DID_NOT_START = "did not start"
    NOT_SAID = "not said"


class Why(StrEnum):
    """Why a person can't come to a meeting. CAR: that car takes nobody; DRIVER: they can't drive, but may ride; PACER: they
    can't run with her, but may come; OWN_SAFETY and NOT_SAID: they do not come."""

    CAR = "car"
    DRIVER = "driver"
    PACER = "pacer"
    OWN_SAFETY = "own safety"
    NOT_SAID = "not said"


class Source(StrEnum):
    """How a report came about; the order of members is the order of trust for the time of an arrival."""

    TIMING_MAT = "timing mat"
    VOLUNTEER = "volunteer"
    CREW = "crew"
    RUNNER = "runner"
    TRACKER = "tracker"
    SUPPORTER = "supporter"
    SERVER = "server"


@dataclass(frozen=True, slots=True)
class Fix:
    """A place on the globe, WGS 84 degrees, with accuracy (m, one standard deviation) if known."""

    lat: float
    lon: float
    accuracy_m: float | None = None
    speed_m_s: float | None = None
    heading_deg: float | None = None


NOT_NAMED = "not-named"
"""Mark of a call for help that went out for each of its sender's runners, as it did not say for which."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One append-only entry. Fields beyond the common ones are set only where `kind` calls for them.

    `point` a point id; `how` of a retirement; `fix` of a position; `until`/`amount` a new time or length
    (held until, start delayed by, cut-off moved to, resting for); `about` the id of the entry or notice that
    this one confirms, takes back, answers; `edge` for cut-off moved; `wave` for wave moved; `words` free
    text as written. `doubt` of a call for help that did not say which of its sender's runners it is for: NOT_NAMED;
    `person` of such a call taken back: the runner it was for. A call of somebody with many runners names no
    `runner`. Of 'cannot come', 'can come again' and 'takes over' `person` is who (None: the sender), `about` the id of the
    meeting (None: all to come), `why` the reason: facts about that person, never about her. Of `REQUESTS` `to` is the id of
    the person whom it is for, or EVERYBODY, `picture` the id of one that goes with the words, `person` then who may be on
    it; `about` the meeting to swap or to hold elsewhere; `until` how long the sender
    wants no news, or when to be reminded of `words`; of a reminder for when something happens `about` is the id
    of the runner, `point` where and `edge` whether she is in or out there. `logged` of the stop log, and of words of how she
    is; LOG_SHOWN: somebody who said that they are a medic was shown it.
    """

    id: str
    event: str
    runner: str | None
    kind: Kind
    seen_at: datetime
    sent_at: datetime
    received_at: datetime
    by: str
    source: Source
    sender: str
    key: str
    via: str = ""
    point: str | None = None
    unconfirmed: bool = False
    doubt: str = ""
    replaces: str | None = None
    about: str | None = None
    how: Retired | None = None
    fix: Fix | None = None
    until: datetime | None = None
    amount: timedelta | None = None
    factor: float | None = None
    edge: str | None = None
    person: str | None = None
    words: str = ""
    seen_spread: timedelta = timedelta(0)
    wave: str | None = None
    why: Why | None = None
    to: str | None = None
    logged: tuple[Logged, ...] = ()
    picture: str = ""
