"""What the server answers to a question, as values: the `data` of a reply, before it is worded.

These are the shapes that go over HTTP: `pydantic.TypeAdapter(X).dump_python(value, mode="json")` on the
server, `TypeAdapter(X).validate_python(data)` in the bot. Ids and names both travel, so that nobody has to
look them up. Times are aware; probabilities 0..1; distances km on the course. A field that the asker's part
may not see is None or empty.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from server.event.model import Contact, FuelPlan, IfThenCard, KitItem, Part, Person
from server.facts.entry import Fix, Kind
from server.forecast.outlook import Whereabouts, Window
from server.plan.notes import Note, Saying
from server.watch.notice import MeetingValues


@dataclass(frozen=True, slots=True)
class Known:
    """The last thing that is fact: what (`kind` of check-in), where (name, km), when, told by whom (name)."""

    kind: str
    at: datetime
    by: str
    point: str | None = None
    name: str = ""
    km: float | None = None
    fix: Fix | None = None


@dataclass(frozen=True, slots=True)
class Freshness:
    """How good the ground under an answer is. `doubted`: reports kept but not counted; `sharpened_by`: the
    name of the next point somebody reports from; `blind_since`: since when our own channels have been
    down."""

    last: Known | None
    going: str = "moving"
    doubted: int = 0
    sharpened_by: str = ""
    held_until: datetime | None = None
    held: bool = False
    blind_since: datetime | None = None


@dataclass(frozen=True, slots=True)
class PointAnswer:
    """One point as it stands: reached (`arrived`, `left` facts) or to come (`window`, odds)."""

    point: str
    name: str
    km: float
    window: Window | None = None
    p_gets_there: float | None = None
    planned_in: datetime | None = None
    planned_out: datetime | None = None
    planned_stop: timedelta | None = None
    arrived: datetime | None = None
    left: datetime | None = None
    through: bool = False
    dark: bool | None = None
    crew_access: bool = False
    finish: bool = False


@dataclass(frozen=True, slots=True)
class ForecastAnswer:
    """GET …/forecast: every point in running order, where she may be, how fresh. `supposed_factor` (1.1 = a
    tenth slower from here) and `supposed_leaving` (she leaves the point where she is at that time) mark a
    what-if."""

    runner: str
    runner_name: str
    points: tuple[PointAnswer, ...]
    fresh: Freshness
    where: Whereabouts | None = None
    where_fix: tuple[float, float] | None = None
    where_between: tuple[str, str] | None = None
    supposed_factor: float | None = None
    supposed_leaving: datetime | None = None


@dataclass(frozen=True, slots=True)
class MeetingAnswer:
    """One meeting with the names of those who go."""

    values: MeetingValues
    name: str
    runner_name: str
    crew: tuple[str, ...] = ()
    car: str = ""
    parking: str = ""
    walk_in: timedelta | None = None
    opens: datetime | None = None
    closes: datetime | None = None
    mine: bool = True
    drive_confirmed: bool = False
    drive_from: str = ""


@dataclass(frozen=True, slots=True)
class NextAnswer:
    """GET …/next: the next meeting and the one after; () when none is left."""

    runner: str
    runner_name: str
    meetings: tuple[MeetingAnswer, ...]
    fresh: Freshness


@dataclass(frozen=True, slots=True)
class MissedAnswer:
    """GET …/missed: has she been through already? `p_past` is the probability that she has left the point
    by now; `advice` 'wait' or 'go'; `seen_out` the fact that settles it."""

    runner: str
    runner_name: str
    point: str
    name: str
    p_past: float
    advice: str
    fresh: Freshness
    wait_until: datetime | None = None
    window: Window | None = None
    seen_in: datetime | None = None
    seen_out: datetime | None = None
    next_name: str = ""
    next_leave_by: datetime | None = None
    if_missed: str = ""


@dataclass(frozen=True, slots=True)
class ChangeAt:
    """Out of a point later than `at`, goal `goal` ('A', 'B', 'C') no longer holds; the next one does."""

    goal: str
    at: datetime


@dataclass(frozen=True, slots=True)
class LightAt:
    """Dawn, sunrise, sunset or dusk ('civil dawn', …) by the plan: when, and how far on she is then."""

    event: str
    at: datetime
    km: float


@dataclass(frozen=True, slots=True)
class TorchPart:
    """A part of her race for which she needs a light, by the plan."""

    from_at: datetime
    to_at: datetime
    from_km: float
    to_km: float


@dataclass(frozen=True, slots=True)
class FactorMinutes:
    """What one thing costs on the leg to a point: 'hills', 'night', 'surface: bog'; seconds, negative where it saves."""

    name: str
    seconds: float


@dataclass(frozen=True, slots=True)
class PlanRow:
    """A line of the plan: B in and out, A and C in, and what became of it. `changes`: until when out of here each
    goal still holds, by what is known now."""

    point: str
    name: str
    km: float
    a_in: datetime
    b_in: datetime
    c_in: datetime
    b_out: datetime
    stop: timedelta
    arrived: datetime | None = None
    crew_access: bool = False
    changes: tuple[ChangeAt, ...] = ()
    factors: tuple[FactorMinutes, ...] = ()


@dataclass(frozen=True, slots=True)
class PlanAnswer:
    """GET …/plan: times, what they rest on, what the planner has to say, light on the way, the goals' change-over.

    `odds_spread` is the standard deviation of log(actual / goal B) that goals A and C are the sides of."""

    runner: str
    runner_name: str
    rows: tuple[PlanRow, ...]
    source: tuple[Saying, ...] = ()
    notes: tuple[Note, ...] = ()
    next_point: str | None = None
    light: tuple[LightAt, ...] = ()
    torch: tuple[TorchPart, ...] = ()
    odds_spread: float | None = None


@dataclass(frozen=True, slots=True)
class CarryOut:
    """What she carries out of a point to the next where she can refill (`name`), by goal B; bottles by goal C."""

    name: str
    takes: timedelta
    kcal: int | None = None
    carbohydrate_g: int | None = None
    sodium_mg: int | None = None
    bottles: int | None = None


@dataclass(frozen=True, slots=True)
class KitAnswer:
    """GET …/kit: what to have ready at a point, food there, and what she takes in from there on."""

    runner: str
    runner_name: str
    point: str
    name: str
    kit: tuple[KitItem, ...]
    food: str = ""
    fuel: FuelPlan | None = None
    window: Window | None = None
    dark: bool | None = None
    cars: tuple[tuple[str, str], ...] = ()
    carry: CarryOut | None = None


@dataclass(frozen=True, slots=True)
class StopFact:
    """One stop that has happened (or lasts: `left` None)."""

    point: str
    name: str
    arrived: datetime | None
    left: datetime | None
    through: bool
    planned_stop: timedelta | None = None
    told_by: str = ""


@dataclass(frozen=True, slots=True)
class Said:
    """Something somebody wrote about how she is."""

    at: datetime
    by: str
    words: str


@dataclass(frozen=True, slots=True)
class FactsAnswer:
    """GET …/facts: what has been reported, nothing else."""

    runner: str
    runner_name: str
    stops: tuple[StopFact, ...]
    fresh: Freshness
    how_she_is: tuple[Said, ...] = ()


@dataclass(frozen=True, slots=True)
class EarlierOut:
    """Out of an earlier point by `at`, and the cut-off is made with 9 in 10, if she goes on; None = at no time."""

    point: str
    name: str
    at: datetime | None


@dataclass(frozen=True, slots=True)
class CutOffAnswer:
    """One cut-off to come: odds of making it, stopping included, and the latest time out of the point
    before."""

    point: str
    name: str
    edge: str
    at: datetime
    odds: float
    latest_out_name: str = ""
    latest_out: datetime | None = None
    window: Window | None = None
    earlier: tuple[EarlierOut, ...] = ()


@dataclass(frozen=True, slots=True)
class CutOffsAnswer:
    """GET …/cutoffs, in running order."""

    runner: str
    runner_name: str
    cut_offs: tuple[CutOffAnswer, ...]
    fresh: Freshness


@dataclass(frozen=True, slots=True)
class PersonThere:
    """Who does what now: the meeting a person is bound for, where they were last known to be, since when."""

    name: str
    part: str
    phone: str = ""
    at_name: str = ""
    since: datetime | None = None
    bound_for: str = ""
    be_there: datetime | None = None
    car: str = ""
    reachable: bool = True


@dataclass(frozen=True, slots=True)
class PeopleAnswer:
    """GET …/people: who is where, and the numbers."""

    people: tuple[PersonThere, ...]
    race_control: Contact
    emergency_number: str
    rescue: Contact | None = None


@dataclass(frozen=True, slots=True)
class CardsAnswer:
    """GET …/cards: the event's own and the built-in ones, in the asker's language; `red_line` says what a red flag
    means, with the numbers to call."""

    cards: tuple[IfThenCard, ...]
    red_line: str = ""


@dataclass(frozen=True, slots=True)
class NotedAnswer:
    """POST …/checkins: it is kept. `status` 'noted' | 'same again' | 'conflict'; `doubt` why it is
    unconfirmed."""

    entry: str
    status: str
    kind: Kind
    at: datetime
    runner: str
    runner_name: str
    point: str | None = None
    name: str = ""
    unconfirmed: bool = False
    doubt: str = ""
    told: tuple[str, ...] = ()
    next_name: str = ""
    next_window: Window | None = None
    undo_until: datetime | None = None


@dataclass(frozen=True, slots=True)
class PointHere:
    """A point as the bot needs it to understand names."""

    id: str
    name: str
    km: float
    also: tuple[str, ...] = ()
    crew_access: bool = False
    finish: bool = False


@dataclass(frozen=True, slots=True)
class RunnerHere:
    """A runner as the bot needs her. `reached` is the last point known reached, `at` the point where she is
    now."""

    id: str
    name: str
    bib: str
    start: datetime
    points: tuple[PointHere, ...]
    reached: str | None = None
    at: str | None = None
    going: str = "moving"


@dataclass(frozen=True, slots=True)
class EventHere:
    """An event in which the asker has a part. `people`: id and name of those whom their part may see."""

    id: str
    name: str
    time_zone: str
    starts: datetime
    parts: tuple[Part, ...]
    runners: tuple[RunnerHere, ...]
    race_control: Contact
    emergency_number: str
    open_notices: tuple[int, ...] = ()
    people: tuple[tuple[str, str], ...] = ()
    rescue: Contact | None = None


@dataclass(frozen=True, slots=True)
class MeAnswer:
    """GET /v1/me: who is asking, and the events they have a part in (those still running first)."""

    person: Person
    events: tuple[EventHere, ...]


@dataclass(frozen=True, slots=True)
class JoinAnswer:
    """POST /v1/join: who you are and your parts, before (`accepted` False) and after you accept."""

    person: str
    name: str
    event: str
    event_name: str
    parts: tuple[Part, ...]
    accepted: bool
    runner_names: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class AnsweredAnswer:
    """POST /v1/notices/{short}/answer: whether the answer holds (somebody may have been first)."""

    short: int
    holder: str
    yours: bool
    look_again: datetime | None = None
    kind: str = ""
