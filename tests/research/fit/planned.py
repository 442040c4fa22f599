"""What a plan of the cost model is worth: races with the planner's timetables as references, and what is fitted on them.

The forecast knows no planner: the timetables come from a file, {table's name: seconds at its points}, that
`python -m tests.plan.plan_tables FOLDER FILE --profile COURSE` makes of each table's course.
"""

import csv
import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from server.forecast.constants import SOURCE
from server.forecast.fitted import Bend
from server.forecast.prior import Prior
from server.forecast.tempered import contrast, tempered
from server.forecast.values import FloatArray, Quality, Reference
from tests.research.fit.curves import train
from tests.research.fit.priors import WILD_LEVEL_SD, fit_prior
from tests.research.fit.tables import BASIS_S, Race, courses, load, read_table
from tests.research.fit.tails import fit_tail

LEAST_CONTRAST = 0.1
"""Plans whose legs differ by less (log) say nothing of how much of a contrast is kept."""
CONTRAST_SD = 0.25
"""How unsure the part of the contrast is on another course. Assumed: there is one course with hills. With references made
half as steep again as the planner's, 0.3 scores 0.6% better than 0.2, on the planner's own no different."""
LEG_ERROR, SLOW_ERROR = 0.07, 0.05
"""Of a plan, log, beside its contrast: what is left of the field's mean leg is 0.05 to 0.10 on the hills, on the flat 0.05
to 0.08."""
SINCE = {"hill100": 2006}
"""Years before it ran another way in part."""
EVERY = 2
"""Of the runners: what is fitted is few numbers, and the courses count, not who ran them."""


@dataclass(frozen=True, slots=True, eq=False)
class Profile:
    """A course: km (k,) rising, height_m (k,), and the km of the points it names."""

    km: FloatArray
    height_m: FloatArray
    places: dict[str, float]


def read_profile(path: Path) -> Profile:
    """km,height_m,point of a course; straight lines between the rows."""
    with path.open(newline="") as file:
        rows = list(csv.DictReader(file))
    return Profile(
        np.array([float(r["km"]) for r in rows]),
        np.array([float(r["height_m"]) for r in rows]),
        {r["point"]: float(r["km"]) for r in rows if r["point"]},
    )


def points_of(meta: dict[str, object], profile: Profile) -> FloatArray | None:
    """(n,) km of a table's points, by its own description or by the profile; None where neither has them all."""
    listed, names = meta.get("km"), meta.get("points")
    if isinstance(listed, list):
        return np.array([float(v) for v in listed])
    if not isinstance(names, list) or not all(n in profile.places for n in names):
        return None
    return np.array([profile.places[n] for n in names])


@dataclass(frozen=True, slots=True, eq=False)
class Plan:
    """What the planner gives for the points of a table: km and seconds, (n,) each."""

    km: FloatArray
    elapsed_s: FloatArray


def read_plans(folder: Path, profile: Profile, file: Path) -> dict[str, Plan]:
    """By table's name, for the points of the folder's tables."""
    out = {}
    for name, seconds in json.loads(file.read_text()).items():
        km = points_of(read_table(folder / f"{name}.csv")[0], profile)
        if km is None or km.size != len(seconds):
            raise ValueError(f"{file}: {name} has other points than its table; make the plans anew")
        out[name] = Plan(km, np.array(seconds, dtype=np.float64))
    return out


def with_plans(races: Sequence[Race], made: dict[str, Plan]) -> list[Race]:
    """The races that have a plan, with it as their reference."""
    out = []
    for race in races:
        plan = made.get(f"{race.course}_{race.year}")
        if plan is not None:
            share = plan.elapsed_s / plan.elapsed_s[-1]
            out.append(replace(race, ref_s=share * BASIS_S, free_level=False, km=plan.km))
    return out


def planned_races(
    folder: Path, plans: Path, references: Path | None = None, profile: Path | None = None
) -> list[Race]:
    """The races of a folder that `plans` has a timetable for, with it as their reference."""
    races = load(folder, references or folder.parent / "bench" / "references.json")
    course = read_profile(profile or folder.parent / "courses" / "hill100.csv")
    return with_plans(usable(races), read_plans(folder, course, plans))


def kept_back(races: Sequence[Race]) -> Iterator[tuple[str, list[Race]]]:
    """By ground, the races of those years that its constants were not fitted on."""
    fitted = {part.split()[0]: part.split()[1:] for part in SOURCE.split("; ")}
    for name, mine in courses(races).items():
        yield name, [r for r in mine if str(r.year) not in fitted[name]]


def tempered_race(race: Race, part: float) -> Race:
    """The race with its plan tempered by `part` of each leg's contrast."""
    assert race.km is not None
    plan = Reference(race.km, race.ref_s, np.zeros(race.km.size), Quality.COST_MODEL, 0.0)
    return replace(race, ref_s=np.array(tempered(plan, part).elapsed_s))


def warped(race: Race, seed: int) -> Race:
    """The race with other errors of its plan: each leg's own, and one that comes and goes slowly.

    Of a course the tables hold one plan with one set of errors, which nets would learn by heart and take to the next.
    """
    draws = np.random.default_rng(seed)
    share, legs = race.share, np.diff(race.ref_s, prepend=0.0)
    middle = share - np.diff(share, prepend=0.0) / 2.0
    waves, phase = draws.uniform(0.5, 2.0), draws.random()
    slow = SLOW_ERROR * draws.standard_normal() * np.sin(2.0 * np.pi * (middle * waves + phase))
    legs = legs * np.exp(LEG_ERROR * draws.standard_normal(legs.size) + slow)
    ref = np.cumsum(legs)
    return replace(race, ref_s=ref / ref[-1] * BASIS_S)


def fit_contrast(races: Sequence[Race]) -> float:
    """By what part of its planned contrast a leg takes longer, as the finishers of these (untempered) races have run it.

    The slope of the field's mean log ratio by contrast, beside a straight line along the course, weighted by the legs'
    lengths: mean over the races whose plan has contrasts; 0 where none has.
    """
    found = []
    for race in races:
        assert race.km is not None
        share = race.share
        planned, length = contrast(race.km, race.ref_s), np.diff(share, prepend=0.0)
        if float(length @ planned**2) < LEAST_CONTRAST**2:
            continue
        done = race.elapsed_s[~np.isnan(race.elapsed_s[:, -1])]
        legs = np.diff(done, prepend=0.0, axis=1) / np.diff(race.ref_s, prepend=0.0)
        ratio = np.nanmean(np.log(legs), axis=0)
        x = np.column_stack([np.ones(share.size), share - length / 2.0, planned])
        w = np.sqrt(length)[:, None]
        found.append(float(np.linalg.lstsq(x * w, ratio * w[:, 0], rcond=None)[0][2]))
    return float(np.mean(found)) if found else 0.0


def fit_planned(races: Sequence[Race], part: float) -> tuple[Prior, Bend]:
    """Prior and nets for plans of the cost model, from (untempered) races of any ground; part: of the contrast.

    Trusted by the number of grounds, not of years: a plan's errors are the same each year.
    """
    kept = [tempered_race(replace(r, elapsed_s=r.elapsed_s[::EVERY]), part) for r in races]
    prior = fit_prior(kept, contrast_sd=CONTRAST_SD, free_mean=True)
    nets = train([*kept, *(warped(r, 97 * i) for i, r in enumerate(kept))], prior, WILD_LEVEL_SD)
    grounds = len({r.course for r in races})
    tail = fit_tail(kept, prior, nets, WILD_LEVEL_SD, grounds)
    return replace(prior, contrast=part), Bend(nets, tail, grounds)


def usable(races: Sequence[Race]) -> list[Race]:
    """Those that ran over the course as it stands."""
    return [r for r in races if r.year >= SINCE.get(r.course, 0)]
