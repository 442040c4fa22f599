"""Times from the past: a race she ran, and others' split times on this course.

Each gives a time with its spread and says what it used.
"""

from __future__ import annotations

import csv
import io
import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

import numpy as np
import numpy.typing as npt
from rapidfuzz import fuzz, process

from server.event.model import PastRace, Point
from server.plan.costs import riegel_s
from server.plan.errors import PlanError
from server.plan.likely import Estimate
from server.plan.notes import Note, Saying, note, saying
from server.plan.own import SPREAD, OwnPace
from server.plan.pace import Limits
from server.plan.targets import KM_PER_100_M, hours
from server.sentences import Worded, both, say

Floats = npt.NDArray[np.float64]

SAME_COURSE_SPREAD: Final = 0.07
SPREAD_PER_DOUBLING: Final = 0.05
"""How a prediction from one race scatters: 7 % (log) over the same effort and 5 % more, in squares, for
each doubling.
Common practice, no source."""
FITTED_UP_TO_S: Final = 4 * 3600.0
"""Riegel's exponent was fitted on races of up to about this long (Riegel 1981, from memory)."""
EXPONENT_DOUBT: Final = 0.06
"""Past that the exponent itself is in doubt by so much: 1.06 to 1.15 are met in ultras (common practice, no source)."""
FAR_BEYOND: Final = 1.5
"""So many times the effort of her race, and past what the rule was fitted on, it is said to be hopeful (own choice)."""
MAX_CSV_BYTES: Final = 5_000_000
LEAST_FINISHERS: Final = 8
NEAR: Final = 0.08
"""Width (log) within which finishers count as near her target: half weight at about 9 %."""


def from_past_race(race: PastRace, km: float, ascent_m: float) -> Estimate:
    """The time over `km` with `ascent_m` from a past race: Riegel's rule, 100 m of ascent as a kilometre
    more.

    Errors: PlanError for a past race that nobody ran so.
    """
    seconds = race.time.total_seconds()
    if not (1.0 <= race.km <= 2000.0 and 0.0 <= race.ascent_m <= 60_000.0):
        raise PlanError(
            say("wrong-km-m-ascent-no-race", km=f"{race.km:g}", ascent_m=f"{race.ascent_m:g}"),
            field=f"past race '{race.name}'",
            remedy=say("do-give-distance-km-1-2000"),
        )
    if not 0.4 <= race.km * 1000.0 / max(seconds, 1.0) <= 7.0:
        raise PlanError(
            say("wrong-km-no-speed-foot", time=hours(race.time), km=f"{race.km:g}"),
            field=f"past race '{race.name}'",
            remedy=say("do-look-whether-hours-minutes-mixed"),
        )
    had, wanted = (d + a / 100.0 * KM_PER_100_M for d, a in ((race.km, race.ascent_m), (km, ascent_m)))
    doublings = abs(math.log2(wanted / had))
    total = timedelta(seconds=round(riegel_s(seconds, had, wanted)))
    beyond = max(0.0, math.log(wanted / had)) if total.total_seconds() > FITTED_UP_TO_S else 0.0
    spread = math.hypot(SAME_COURSE_SPREAD, SPREAD_PER_DOUBLING * doublings, EXPONENT_DOUBT * beyond)
    notes = []
    if doublings > 1.0:
        notes.append(note("far-race", name=race.name, times=round(2**doublings, 1)))
    if beyond > math.log(FAR_BEYOND):
        notes.append(note("short-race"))
    source = saying("source-past-race", name=race.name, time_s=seconds)
    return Estimate(total, spread, source, tuple(notes))


@dataclass(frozen=True, slots=True)
class FieldShape:
    """The shape of the field near a target: share of the whole time on arrival at each point (n,), from so
    many
    finishers; spread: what a plan of this shape scatters by."""

    points: tuple[str, ...]
    shares: tuple[float, ...]
    finishers: int
    fastest: timedelta
    slowest: timedelta
    notes: tuple[Note, ...] = ()

    def own_pace(self, limits: Limits | None = None) -> OwnPace:
        """The same as the planner takes it; limits: her own, where they are known beside it."""
        shape = tuple(zip(self.points, self.shares, strict=True))
        spread = SPREAD["past results"]
        return OwnPace(limits or Limits(), "past results", spread, self.source, shape, notes=self.notes)

    @property
    def source(self) -> Saying:
        """What it is, with how many finishers it comes from."""
        fastest_s, slowest_s = self.fastest.total_seconds(), self.slowest.total_seconds()
        return saying("source-results", count=self.finishers, fastest_s=fastest_s, slowest_s=slowest_s)


def read_results(
    text: str, points: Sequence[Point], file: str = "results.csv"
) -> tuple[tuple[str, ...], Floats]:
    """Point ids and elapsed seconds (runners, points), NaN where not recorded, from a CSV of others' split
    times.

    One runner a row; the header names points by id, name or other names, one column the finish. Times as
    h:mm, h:mm:ss or seconds, empty where not recorded. Other columns are passed over; nothing in them is
    kept. Errors: PlanError with file, line and column for what cannot be read.
    """
    if len(text) > MAX_CSV_BYTES:
        raise _wrong(file, None, say("wrong-too-large"), say("do-give-years-results-line-runner"))
    try:
        reader = csv.reader(io.StringIO(text), strict=True)
        found = [(r, reader.line_num) for r in reader if any(c.strip() for c in r)]
    except csv.Error as error:
        raise _wrong(file, None, say("wrong-no-csv-file", error=error), say("do-save-csv-commas")) from error
    rows, numbers = [r for r, _ in found], [n for _, n in found]
    if len(rows) < 2:
        raise _wrong(file, None, say("wrong-no-runners"), say("do-give-header-line-then-line"))
    columns = _columns(rows[0], points, file, numbers[0])
    times = np.full((len(rows) - 1, len(columns)), np.nan)
    for line, row in enumerate(rows[1:], start=2):
        for j, (_, column) in enumerate(columns):
            if column < len(row) and row[column].strip():
                times[line - 2, j] = _seconds(
                    row[column].strip(), file, numbers[line - 1], rows[0][column].strip()
                )
    _refuse_backwards(times, file, numbers[1:])
    return tuple(p for p, _ in columns), times


def _wrong(file: str, line: int | None, what: Worded, remedy: Worded, column: str = "") -> PlanError:
    where = ", ".join(x for x in (file, "" if line is None else f"line {line}", column) if x)
    return PlanError(what, field=where, remedy=remedy, file=file, line=line)


def _columns(header: list[str], points: Sequence[Point], file: str, line: int) -> list[tuple[str, int]]:
    """(point id, column) in running order; a start's column is left out."""
    names = {n.casefold(): p.id for p in points for n in (p.id, p.name, *p.also)}
    found = {names[h.strip().casefold()]: k for k, h in enumerate(header) if h.strip().casefold() in names}
    last = points[-1].id
    if last not in found:
        raise _wrong(
            file,
            line,
            say("wrong-no-column-named-after-finish", name=points[-1].name),
            both(
                say("do-name-columns-points", names=", ".join(p.name for p in points[1:])),
                _near(header, names),
            ),
        )
    order = {p.id: k for k, p in enumerate(points)}
    return sorted(((p, k) for p, k in found.items() if order[p] > 0), key=lambda c: order[c[0]])


def _near(header: list[str], names: dict[str, str]) -> Worded | None:
    for h in header:
        near = process.extractOne(h.strip().casefold(), list(names), scorer=fuzz.ratio, score_cutoff=70)
        if near and h.strip().casefold() not in names:
            return say("do-column-meant", column=h.strip(), name=near[0])
    return None


def _seconds(text: str, file: str, line: int, column: str) -> float:
    match = re.fullmatch(r"(\d{1,3}):([0-5]?\d)(?::([0-5]?\d(?:\.\d+)?))?", text)
    if match:
        h, m, s = match.groups()
        return int(h) * 3600.0 + int(m) * 60.0 + float(s or 0.0)
    if re.fullmatch(r"\d{1,7}(\.\d+)?", text):
        return float(text)
    remedy = say("do-write-h-mm-ss-since")
    raise _wrong(file, line, say("wrong-no-elapsed-time", text=text[:30]), remedy, column)


def _refuse_backwards(times: Floats, file: str, lines: Sequence[int]) -> None:
    for k, row in enumerate(times):
        seen = row[~np.isnan(row)]
        if np.any(np.diff(seen) <= 0) or np.any(seen <= 0):
            what = say("wrong-later-point-earlier-time-before")
            raise _wrong(file, lines[k], what, say("do-give-elapsed-times-since-start"))


def field_shape(ids: tuple[str, ...], times: Floats, target: timedelta) -> FieldShape:
    """The shape of the finishers near a target: median share at each point, those nearer in time weighing
    more.

    ids (n,) and times (m, n) as `read_results` gives them, the finish last. Errors: PlanError with too few
    finishers.
    """
    done = times[~np.isnan(times[:, -1])]
    wanted = target.total_seconds()
    away = np.abs(np.log(done[:, -1] / wanted)) if len(done) else np.array([])
    near = done[np.argsort(away)][: max(LEAST_FINISHERS, int((away <= 2 * NEAR).sum()))]
    if len(near) < LEAST_FINISHERS:
        raise PlanError(
            say("wrong-finishers-too-few-see-shape", count=len(near)),
            field="results",
            remedy=say("do-add-results-other-years"),
        )
    weight = np.exp(-0.5 * (np.log(near[:, -1] / wanted) / NEAR) ** 2) + 1e-6
    shares, kept = [], []
    for j, point in enumerate(ids):
        known = ~np.isnan(near[:, j])
        if int(known.sum()) >= LEAST_FINISHERS // 2:
            shares.append(_weighted_median(near[known, j] / near[known, -1], weight[known]))
            kept.append(point)
    notes = []
    if float(np.median(near[:, -1])) > 1.15 * wanted or float(np.median(near[:, -1])) < wanted / 1.15:
        middle = float(np.median(near[:, -1])) // 60 * 60
        notes.append(note("few-near", target_s=target.total_seconds(), middle_s=middle))
    fastest, slowest = (timedelta(seconds=float(f(near[:, -1]))) for f in (np.min, np.max))
    return FieldShape(tuple(kept), tuple(shares), len(near), fastest, slowest, tuple(notes))


def _weighted_median(values: Floats, weights: Floats) -> float:
    order = np.argsort(values)
    along = np.cumsum(weights[order])
    return float(values[order][np.searchsorted(along, along[-1] / 2.0)])
