"""What news of her and of the race holds: her race over, in hand, changes by the organiser, words, corrections, doubts.

Values only: a notice (notice.py) is worded from them, in server/conversation/telling.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from server.facts.state import LastKnown
from server.forecast.outlook import Window


class Waits(StrEnum):
    """What a notice about a retirement is about: the news itself, that somebody goes to fetch her, that nobody has her
    yet, that race control does not know yet, or that somebody has her."""

    NEWS = "news"
    GOES = "goes"
    HAND = "hand"
    RACE_CONTROL = "race control"
    IN_HAND = "in hand"


@dataclass(frozen=True, slots=True)
class Fetcher:
    """Somebody who could fetch her: their car, where they are (`said`: by their own word, else by the plan), the drive from
    there (None = not known; `confirmed`: a person stands by it), and `busy` where they are to meet another runner first."""

    person: str
    car: str
    stands: str | None
    said: bool
    drive: timedelta | None
    confirmed: bool = False
    busy: str = ""


@dataclass(frozen=True, slots=True)
class PickUp:
    """How she is fetched: the point to drive `to`; `last`, where she was last known, if where she is was not said; who
    fetches her, `goes` once they said so, and then `there_by`, by the drive; who else could; what to bring of her kit; how
    the race takes runners away ('' not written down)."""

    to: str | None
    last: LastKnown | None
    fetcher: Fetcher | None
    goes: bool
    others: tuple[Fetcher, ...] = ()
    bring: tuple[str, ...] = ()
    transport: str = ""
    there_by: datetime | None = None


@dataclass(frozen=True, slots=True)
class RetiredValues:
    """Her race has ended before the finish: how, where, who fetches her, who tells race control.

    `caller`: the one person who does (None = none is named: whoever reads it). `waits`: what it is
    about, that she retired or what came of it since. `pick_up_by`: who is asked to fetch her now, or does; `fetch` how.
    """

    how: str
    point: str | None
    at: datetime
    told_by: str
    words: str = ""
    in_hand: bool = False
    race_control_knows: bool = False
    pick_up_by: tuple[str, ...] = ()
    caller: str | None = None
    waits: Waits = Waits.NEWS
    in_hand_by: str = ""
    in_hand_at: datetime | None = None
    fetch: PickUp | None = None


@dataclass(frozen=True, slots=True)
class InHandValues:
    """Somebody has her who has not retired: when and by whose word, at which point or km if that was said, their
    words. `alarm_open`: an alarm about her goes on all the same. `asked_by`: whoever has her is asked whether they still do,
    and until when their word holds."""

    at: datetime
    told_by: str
    point: str | None = None
    km: float | None = None
    words: str = ""
    alarm_open: bool = False
    asked_by: datetime | None = None


@dataclass(frozen=True, slots=True)
class PastCutOffValues:
    """She has missed a cut-off by what was reported (`server.facts.cut_offs.PastCutOff`); race control decides.

    `edge` in or out of `point` by `cut_off`; `how` it is known, from a report of `told_by` of the moment `at`, at the
    point `seen_at` where that names one. `asked`: who find out what race control says; `here`: this person stands with
    her. `over`: why it no longer holds: she goes on (`told_by` says so, or she was seen at `seen_at` since), the cut-off
    was moved, or what was reported was wrong; '' while it holds. `next_point`, `leave_by`: their next meeting with her,
    and by when they would have to set out for it, should she be let go on.
    """

    point: str
    edge: str
    cut_off: datetime
    how: str
    at: datetime
    told_by: str
    seen_at: str | None = None
    asked: tuple[str, ...] = ()
    here: bool = False
    over: str = ""
    next_point: str | None = None
    leave_by: datetime | None = None


@dataclass(frozen=True, slots=True)
class RaceChangeValues:
    """A race-level fact by the organiser; `edge` of a cut-off: in or out, `was`: when it was before."""

    change: str
    point: str | None
    until: datetime | None
    amount: timedelta | None
    words: str
    told_by: str
    edge: str = ""
    was: datetime | None = None


@dataclass(frozen=True, slots=True)
class CorrectionValues:
    """Something this person was told has been corrected: what was said (with its words, of a word of her), what
    holds now."""

    was_kind: str
    point: str | None
    was_at: datetime | None
    now_at: datetime | None
    taken_back: bool
    by: str
    words: str = ""


@dataclass(frozen=True, slots=True)
class WordValues:
    """How she is, as somebody wrote it of the moment `at`.

    `going` is where in her race she is now. `since` is from when she rests, or is in at `point`; or from when
    she moves again after a rest. `until` is how long a rest was said to last. `next_window` is for the point
    where this person may meet her next.
    """

    entry: str
    words: str
    at: datetime
    told_by: str
    going: str
    point: str | None = None
    since: datetime | None = None
    until: datetime | None = None
    next_window: Window | None = None


@dataclass(frozen=True, slots=True)
class DoubtValues:
    """A report that was guessed or can't be right is kept, and asked about."""

    entry: str
    kind: str
    point: str | None
    at: datetime
    told_by: str
    doubt: str
    words: str = ""


@dataclass(frozen=True, slots=True)
class PassedOnValues:
    """Words for this person, as they were written: by whom and when; `meeting` where somebody wants it held elsewhere, which
    changes nothing in the plan, `point` its place; `taken_back`: they are to be forgotten again; `picture` the
    id of one that goes with them."""

    entry: str
    by: str
    words: str
    at: datetime
    meeting: str = ""
    point: str = ""
    taken_back: bool = False
    picture: str = ""


@dataclass(frozen=True, slots=True)
class SwapValues:
    """Somebody (`by`) asks another (`to`) to take a meeting of theirs over, in which words, and when it is; `refused`: said
    to who asked, the other can't."""

    entry: str
    by: str
    to: str
    meeting: str
    point: str
    words: str
    window: Window | None = None
    be_there: datetime | None = None
    refused: bool = False


@dataclass(frozen=True, slots=True)
class LookBackValues:
    """Three questions after the race, which was over `at`."""

    at: datetime


@dataclass(frozen=True, slots=True)
class ReminderValues:
    """What a person wanted to be reminded of, or woken for, in their own words of `at`. For when she is in or out (`edge`)
    at `point`: what has `came` of it (server/facts/awaiting.py), seen when and reported by whom; `then` is where she was
    reported after it; `window` where she is only due soon."""

    entry: str
    words: str
    at: datetime
    point: str = ""
    edge: str = ""
    came: str = ""
    seen_at: datetime | None = None
    told_by: str = ""
    then: str = ""
    window: Window | None = None


@dataclass(frozen=True, slots=True)
class PlanItem:
    """One thing of a person's that a new version changed: `what` of the meeting with `runner` at `point` ('meeting': the
    whole of it came or went, 'met': told to the runner; 'post': where a volunteer stands; 'target': her own; 'kit-left':
    things, `now`, that lie in a car, `was`, which does not come there any more), as it was and as it is, '' for none."""

    what: str
    runner: str
    point: str
    was: str
    now: str


@dataclass(frozen=True, slots=True)
class PlanTime:
    """When a person leaves for a meeting, where a new version changed that: before and after it, None where no confirmed
    drive gave or gives a time (`was` too where the meeting was not theirs), and since when they are to be there."""

    runner: str
    point: str
    was: datetime | None
    now: datetime | None
    be_there: datetime


@dataclass(frozen=True, slots=True)
class NewVersionValues:
    """What a new version of the event file changed for one person. `free`: nothing is left for them to go to."""

    version: int
    items: tuple[PlanItem, ...]
    times: tuple[PlanTime, ...] = ()
    free: bool = False
