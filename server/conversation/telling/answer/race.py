"""What the server answers about her race: how fresh, where, when, the plan, cut-offs, what has been reported."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from server.facts.entry import Fix
from server.facts.stop_log import Logged, LogSince
from server.forecast.outlook import Whereabouts, Window
from server.plan.notes import Note, Saying


@dataclass(frozen=True, slots=True)
class LastFact:
    """The last thing that is fact: what (`kind` of check-in), where (name, km), when, told by whom (name)."""

    kind: str
    at: datetime
    by: str
    point: str | None = None
    name: str = ""
    km: float | None = None
    fix: Fix | None = None


@dataclass(frozen=True, slots=True)
class SaidOver:
    """Her race said to be over, not confirmed: when and by whom (name), where (name, '' not said), in which words;
    `hearsay`: they were told by another."""

    at: datetime
    by: str
    name: str = ""
    words: str = ""
    hearsay: bool = False


@dataclass(frozen=True, slots=True)
class LimitMissed:
    """A cut-off she has missed by what was reported: `edge` in or out of a point (name) by `cut_off`, how it is known and
    of when, and where she was then (name, '' the same or nobody said)."""

    name: str
    edge: str
    cut_off: datetime
    how: str
    at: datetime
    seen_name: str = ""


@dataclass(frozen=True, slots=True)
class TrackerWord:
    """Her tracker's newest fix: where (km) and when. `quiet`: it has sent nothing since; `seen_name`, `seen_by` (names) and
    `seen_at`: where a person saw her, where the two can't both be."""

    km: float | None
    at: datetime
    quiet: bool = False
    seen_name: str = ""
    seen_by: str = ""
    seen_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class DayWord:
    """What the times of so many others today change of the way to the next point (name): percent of the plan's time."""

    others: int
    percent: int
    place: str


@dataclass(frozen=True, slots=True)
class Freshness:
    """How good the ground under an answer is. `doubted`: reports kept but not counted; `sharpened_by`: the
    name of the next point somebody reports from; `blind_since`: since when our own channels have been
    down, `blind` which of them ('telegram');
    `ended_at`: when the organiser ended the race, `ended_from` from which point on ('' = all of it). `started`: her start;
    `retired_at`, `retired_place` (name, '' not known) and `retired_how` of a race that ended before the finish;
    `past_cut_off`: a cut-off missed, while nobody has said whether she goes on; `said_over`: her race said to be over and
    not confirmed, the newest; `tracker`: where her tracker is quiet, or says otherwise than people; `day`: what
    others' times of the day change; `late_by`: from when on she is late at `late_at` (name, the next place somebody reports
    from), as crew and home are asked by; a 'not yet' makes nobody less late."""

    last: LastFact | None
    going: str = "moving"
    doubted: int = 0
    sharpened_by: str = ""
    held_until: datetime | None = None
    held: bool = False
    blind_since: datetime | None = None
    blind: tuple[str, ...] = ()
    ended_at: datetime | None = None
    ended_from: str = ""
    started: datetime | None = None
    retired_at: datetime | None = None
    retired_place: str = ""
    retired_how: str = ""
    past_cut_off: LimitMissed | None = None
    said_over: SaidOver | None = None
    tracker: TrackerWord | None = None
    day: DayWord | None = None
    late_at: str = ""
    late_by: datetime | None = None


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
    what-if. `asker_at`: the point (id) where the asker stands by their own word and may see her next."""

    runner: str
    runner_name: str
    points: tuple[PointAnswer, ...]
    fresh: Freshness
    where: Whereabouts | None = None
    where_fix: tuple[float, float] | None = None
    where_between: tuple[str, str] | None = None
    p_gone_on: float = 0.0
    asker_at: str | None = None
    supposed_factor: float | None = None
    supposed_leaving: datetime | None = None


@dataclass(frozen=True, slots=True)
class MissedAnswer:
    """GET …/missed: has she been through already? `p_past` is the probability that she has left the point
    by now; `advice` 'wait' or 'go'; `seen_out` the fact that settles it. Besides, for whoever would go towards
    her: the race's rules on help away from crew points, signal at the point, and of an open alarm who holds it
    ('' nobody; None: no alarm is open)."""

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
    help_only_at_points: bool = True
    rules_note: str = ""
    no_signal: bool = False
    alarm_holder: str | None = None


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
class StageAnswer:
    """The end of a stage she has not reached: when the next one starts, by when she must be in for it, the odds of that,
    stopping included, whether they are `low` even if she gets there, and her window there; what is left until
    `starts_at` is her rest."""

    point: str
    name: str
    starts_at: datetime
    by: datetime
    odds: float
    low: bool
    window: Window


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
    stages: tuple[StageAnswer, ...] = ()


@dataclass(frozen=True, slots=True)
class Counts:
    """The report by which a time counts: the id of its entry, and of who gave it."""

    entry: str
    by: str


@dataclass(frozen=True, slots=True)
class StopFact:
    """One stop that has happened (or lasts: `left` None); `came`, `went` the reports that say so."""

    point: str
    name: str
    arrived: datetime | None
    left: datetime | None
    through: bool
    planned_stop: timedelta | None = None
    told_by: str = ""
    came: Counts | None = None
    went: Counts | None = None


@dataclass(frozen=True, slots=True)
class WrittenOfHer:
    """Something somebody wrote about how she is."""

    at: datetime
    by: str
    words: str


@dataclass(frozen=True, slots=True)
class AskedHere:
    """Somebody who has been asked or told about an alarm: when, and what they said (`answer` '' = nothing yet).
    `asked` False: told only, no answer is owed. `failed`: no channel reaches them."""

    name: str
    at: datetime
    asked: bool
    answer: str = ""
    answered_at: datetime | None = None
    failed: bool = False


@dataclass(frozen=True, slots=True)
class AlarmHere:
    """An open alarm about her: its kind, where, since when, who holds it ('' nobody), until when, and whom it has
    gone to, in that order; `words`: what was written when it was raised. `unnamed_call`: the entry of a call for help
    that did not say for whom, while nobody has said it, and `unnamed_by` who made it (id)."""

    kind: str
    name: str
    raised_at: datetime
    people: tuple[AskedHere, ...]
    holder: str = ""
    look_again: datetime | None = None
    words: str = ""
    unnamed_call: str = ""
    unnamed_by: str = ""


@dataclass(frozen=True, slots=True)
class FactsAnswer:
    """GET …/facts: what has been reported; and of open alarms, who knows. `race_control_knows`: since when."""

    runner: str
    runner_name: str
    stops: tuple[StopFact, ...]
    fresh: Freshness
    how_she_is: tuple[WrittenOfHer, ...] = ()
    alarms: tuple[AlarmHere, ...] = ()
    race_control_knows: datetime | None = None


@dataclass(frozen=True, slots=True)
class LogRow:
    """One entry of the stop log: when, at which point ('' = not said), by whom, what."""

    at: datetime
    name: str
    by: str
    logged: tuple[Logged, ...]


@dataclass(frozen=True, slots=True)
class LogAnswer:
    """GET …/log: the stop log in short (None: nothing logged) and row by row, and who was shown it as a medic.
    `shown_to_asker` is False for who has to say first that they are a medic: then nothing of it is here."""

    runner: str
    runner_name: str
    log: LogSince | None = None
    rows: tuple[LogRow, ...] = ()
    medics: tuple[tuple[datetime, str], ...] = ()
    shown_to_asker: bool = True


@dataclass(frozen=True, slots=True)
class EarlierOut:
    """Out of an earlier point by `at`, and the cut-off is made with 9 in 10, if she goes on; None = at no time."""

    point: str
    name: str
    at: datetime | None


@dataclass(frozen=True, slots=True)
class CutOffAnswer:
    """One cut-off to come: odds of making it, stopping included, and the latest time out of the point
    before. `going`: the odds that she goes on to there at all."""

    point: str
    name: str
    edge: str
    at: datetime
    odds: float
    latest_out_name: str = ""
    latest_out: datetime | None = None
    window: Window | None = None
    earlier: tuple[EarlierOut, ...] = ()
    going: float = 1.0


@dataclass(frozen=True, slots=True)
class DoorHours:
    """From when to when a point is open to crew; None where the event does not say."""

    point: str
    opens: datetime | None
    closes: datetime | None


@dataclass(frozen=True, slots=True)
class CutOffsAnswer:
    """GET …/cutoffs, in running order; and the hours of the points with crew access."""

    runner: str
    runner_name: str
    cut_offs: tuple[CutOffAnswer, ...]
    fresh: Freshness
    doors: tuple[DoorHours, ...] = ()
    stages: tuple[StageAnswer, ...] = ()
