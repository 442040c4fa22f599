"""What a message can mean, as values; and what has to be known to understand one."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from enum import StrEnum

from server.conversation.telling.answer import PointHere, RunnerHere
from server.event.model import PartKind
from server.facts.entry import EVERYBODY, Kind, Retired, Why
from server.facts.stop_log import Logged


class Question(StrEnum):
    """What can be asked."""

    NEXT = "next"
    AT = "at"
    FINISH = "finish"
    WHERE = "where"
    PLAN_GAP = "plan gap"
    LAST_STOP = "last stop"
    CUT_OFF = "cut-off"
    MISSED = "missed"
    WAIT = "wait or go"
    PEOPLE = "people"
    BRING = "bring"
    TAKE_BACK = "take back"
    FOOD = "food"
    LEAVE = "leave"
    DRIVE = "drive"
    DARK = "dark"
    HEARD = "last heard"
    SLOWER = "slower"
    LEAVES_NOW = "leaves now"
    PLAN = "plan"
    MEETING = "meeting"
    HOW = "how is she"
    CARDS = "cards"
    NUMBERS = "numbers"
    PICTURE = "picture"
    TOWARDS = "walk towards"
    TOLD = "who knows"
    MY_RACE = "my race"
    GOALS = "goals"
    USAGE = "usage"
    DUTY = "my duty"
    HELP_WORD = "help"
    COVER = "who can stand in"
    WEATHER = "weather"
    LEAVE_THERE = "may she leave it"
    CATCH_UP = "what was missed"
    RIDE = "who drives there"
    REPORT = "how it went"
    ALARM_NOW = "alarm now"
    ALARM_TELL = "alarm tell"
    ALARM_CALL = "alarm call"
    ALARM_KNOWN = "alarm known"
    RIVALS = "her rank"
    LOG = "stop log"
    RULES = "the rules"
    ELSEWHERE = "not in the file"
    SIGNAL = "signal"
    WHY = "why"
    PHOTO = "photo"
    START = "when it starts"
    CLOCK = "whose clock"
    COURSE = "what lies ahead"
    MINE = "what was mine"
    LOOKS = "what she wears"
    PACE = "her pace"
    WORDS = "what a word means"
    COMPLAINT = "what went wrong"
    NEEDED = "am I needed"
    FETCH = "who would fetch her"
    NEXT_BIT = "the next section"
    SILENT = "before no signal"
    ON_SPOT = "who is on the spot"
    PARKING = "where else to park"
    CREW_FOOD = "food for crew"
    TOOK = "how long she took"
    LATE = "is she late"
    GROUND = "the ground"


@dataclass(frozen=True, slots=True)
class Asked:
    """A question. `runner`, `point` are ids (None: the one it is about by default), `factor` of a what-if
    (1.1 = a tenth slower), `leaving` the supposed time out, `person` an id, `words` the sentence as written. `beside`: what
    it names that nothing here knows (UNSAID: it is asked in a way that no table knows), of which it must be said so. `more`:
    the time that she is supposed to lose (negative: to gain); `nth`: which of the writer's meetings to come, from 0 on, -1
    the last.
    """

    question: Question
    runner: str | None = None
    point: str | None = None
    factor: float | None = None
    leaving: datetime | None = None
    person: str | None = None
    words: str = ""
    beside: str = ""
    more: timedelta | None = None
    nth: int | None = None


UNSAID = "?"
"""Marks a question that is put in a way no table knows, and names nothing that could be repeated."""


@dataclass(frozen=True, slots=True)
class Report:
    """One report. `guessed` marks one that rests on more than what was written. `condition` says that the
    words also tell how she is; `placed_by_words` that they tell where, with no fix. `own_there`: it corrects the
    writer's own last report at that point, and is of its kind; `instead` the entry that it is in the place of, whoever gave
    that, and `was` what that had as its time; `of_crew`: it is about
    the crew themselves, and says nothing of her; `unnamed`: a call for help that does not say for which runner;
    `with_us`: the writer has her: 'got' says so, 'here' says that she is with them; `hearsay`: another told them. `why`
    somebody can't come, `person` who that is (None: the writer). `edge` which cut-off of a point was moved: in or out.
    `logged`: what of it goes into the stop log."""

    kind: Kind
    seen_at: datetime
    runner: str | None = None
    point: str | None = None
    how: Retired | None = None
    amount: timedelta | None = None
    until: datetime | None = None
    words: str = ""
    guessed: bool = False
    condition: bool = False
    placed_by_words: bool = False
    corrects: bool = False
    ago: bool = False
    own_there: bool = False
    instead: str = ""
    was: datetime | None = None
    of_crew: bool = False
    unnamed: bool = False
    with_us: str = ""
    hearsay: bool = False
    why: Why | None = None
    person: str | None = None
    edge: str = ""
    logged: tuple[Logged, ...] = ()


@dataclass(frozen=True, slots=True)
class Reported:
    """One or more reports."""

    reports: tuple[Report, ...]


@dataclass(frozen=True, slots=True)
class Distress:
    """Somebody asks for help: passed on at once, whatever else the sentence says. `also`: the other runners that the
    same words call for; `reports` what they say besides of where she was seen."""

    words: str
    seen_at: datetime
    runner: str | None = None
    by_self: bool = True
    also: tuple[str, ...] = ()
    reports: tuple[Report, ...] = ()


@dataclass(frozen=True, slots=True)
class MeantFor:
    """For whom a call for help was that did not say it; () for each of those for whom it went out. `call`: the entry of
    a call that went out for none of them by name."""

    runners: tuple[str, ...]
    call: str = ""


@dataclass(frozen=True, slots=True)
class Acknowledged:
    """An answer to what was asked: one of the answer words of notices, or 'yes', 'no', 'ok'. `at`: 'yes, at 5 to
    3' says when as well, and `kind` whether in, out or through."""

    answer: str
    words: str = ""
    at: datetime | None = None
    kind: Kind = Kind.IN


@dataclass(frozen=True, slots=True)
class Undo:
    """Take back the last report; with `points`, the last at one of these, of that `kind` where it is said; with `whole`, all
    that its message reported of that runner."""

    points: tuple[str, ...] = ()
    kind: Kind | None = None
    runner: str | None = None
    whole: bool = False


@dataclass(frozen=True, slots=True)
class Small:
    """A greeting or thanks: nothing to do."""

    thanks: bool


@dataclass(frozen=True, slots=True)
class Unclear:
    """Not understood."""

    words: str


class Need(StrEnum):
    """Why a sentence is asked back."""

    OUT = "out"
    DROPPED = "dropped"
    POINT = "point"
    RUNNER = "runner"
    WHO = "who"
    BIB = "bib"
    MEANING = "meaning"


@dataclass(frozen=True, slots=True)
class Choice:
    """One way it may be meant. `label` says what it is called: a point id, a runner id, an intent (of Need.MEANING), or a
    word of ours."""

    label: str
    then: Understood


@dataclass(frozen=True, slots=True)
class AskBack:
    """Two or more things may be meant: which. `word` is what was written and can't be settled. `point` is
    the point it may be about, `also` what in the same message was clear."""

    need: Need
    choices: tuple[Choice, ...]
    word: str = ""
    point: str | None = None
    also: tuple[Report, ...] = ()


@dataclass(frozen=True, slots=True)
class Kept:
    """Said, and no confident check-in, question or request: it is kept word for word and passed on to whoever needs it, and
    whoever wrote it is asked whether somebody is in danger. `of_her` whether it speaks of the runner at all."""

    words: str
    seen_at: datetime
    runner: str | None = None
    of_her: bool = True


class Request(StrEnum):
    """What somebody may want done."""

    PASS_ON = "pass on"  # noqa: S105 - no password
    CANNOT_COME = "cannot come"
    SWAP = "swap"
    MEET_ELSEWHERE = "meet elsewhere"
    MUTE = "mute"
    REMIND = "remind"
    UNREMIND = "no reminder"
    LIGHT_LEFT = "her light left behind"


@dataclass(frozen=True, slots=True)
class Requested:
    """Something wanted done. `person` an id, None for nobody by name; `until` of being quiet or woken, as far as said;
    `words` as written, which are what is passed on. `to`: whom they are for, a person or a runner by id, EVERYBODY, or ''
    for the race, which nothing here reaches. `edge`: told as soon as she is 'in' or 'out' at the point."""

    request: Request
    words: str
    person: str | None = None
    runner: str | None = None
    point: str | None = None
    until: datetime | None = None
    amount: timedelta | None = None
    to: str = EVERYBODY
    edge: str = ""


@dataclass(frozen=True, slots=True)
class OtherRunner:
    """The last report was about another runner: `runner` an id where it is said whom it was about; or about the `writer`."""

    words: str
    runner: str | None = None
    writer: bool = False


@dataclass(frozen=True, slots=True)
class Several:
    """A message that does more than one thing: each is dealt with, in this order; `Kept` and, of a question, `Unclear` are
    what nobody could make out."""

    parts: tuple[Asked | Reported | Requested | AskBack | Kept | Unclear, ...]


Understood = (
    Asked
    | Reported
    | Distress
    | MeantFor
    | Acknowledged
    | Undo
    | OtherRunner
    | Small
    | Unclear
    | AskBack
    | Requested
    | Kept
    | Several
)


class Danger(StrEnum):
    """Whether the words say that somebody is in danger."""

    NONE = "none"
    DOUBT = "doubt"
    ASK = "ask"
    ALARM = "alarm"

    @property
    def grave(self) -> bool:
        """Whether the number stands first, or everybody is called."""
        return self in (Danger.ASK, Danger.ALARM)


@dataclass(frozen=True, slots=True)
class Reading:
    """What a message means, and whether it sounds as if somebody were in danger: with ASK the number stands first in the
    reply and 'is somebody in danger?' below it, whatever `meant` is; with ALARM `meant` is a Distress unless it asks; with
    DOUBT the number is only the last line of the reply.
    `calm`: so far from danger that nobody needs to be asked about it. `sure`: so near it that a report of the writer's own
    ('can't come, the car is on its side, my neck hurts') is not all of it."""

    meant: Understood
    danger: Danger = Danger.NONE
    calm: bool = False
    sure: bool = False


@dataclass(frozen=True, slots=True)
class Context:
    """All that a sentence is understood against. `now` aware; `time_zone` the event's; `last` the question
    this person asked before; `people` (id, name) of the event; `point` where the writer stands, if known;
    `control` what race control is called; `waits`: a pacer who has yet to set out with her speaks of
    themselves, as crew do."""

    now: datetime
    time_zone: str
    runners: tuple[RunnerHere, ...]
    parts: frozenset[PartKind] = frozenset({PartKind.CREW})
    own_runners: tuple[str, ...] = ()
    people: tuple[tuple[str, str], ...] = ()
    last: Asked | None = None
    point: str | None = None
    language: str = ""
    control: str = ""
    waits: bool = False

    def runner(self, runner_id: str | None) -> RunnerHere | None:
        """The runner of that id; for None the one that is meant when none is named: the last asked about,
        one's own, the only one; None where that is open."""
        if runner_id is not None:
            return next((r for r in self.runners if r.id == runner_id), None)
        if self.last is not None and self.last.runner is not None:
            return self.runner(self.last.runner)
        own = self.candidates()
        return own[0] if len(own) == 1 else None

    def candidates(self) -> tuple[RunnerHere, ...]:
        """The runners that may be meant where none is named: one's own, else all."""
        return tuple(r for r in self.runners if r.id in self.own_runners) or self.runners


@dataclass(frozen=True, slots=True)
class RunnerPlace:
    """Where a runner is among her points: `ahead` those not reached, `at` where she is now."""

    points: tuple[PointHere, ...]
    reached: int
    at: PointHere | None = None
    ahead: tuple[PointHere, ...] = field(default=())


def place_of(runner: RunnerHere) -> RunnerPlace:
    """The points of a runner split at the last one known reached."""
    ids = [p.id for p in runner.points]
    reached = ids.index(runner.reached) if runner.reached in ids else -1
    at = next((p for p in runner.points if p.id == runner.at), None)
    return RunnerPlace(runner.points, reached, at, runner.points[reached + 1 :])
