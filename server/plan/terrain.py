"""What a course is like underfoot: from course and stretches to the steps and factors of the pace model."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt

from server.course import Course
from server.event.model import CourseDef, Stretch
from server.plan.errors import PlanError
from server.plan.notes import Note, note
from server.plan.pace import Factor, Terrain
from server.sentences import say

Floats = npt.NDArray[np.float64]

SOULE = "Soule and Goldman 1972, J Appl Physiol 32:706, energy cost of walking (from memory)"
PANDOLF = "Pandolf, Haisman, Goldman 1976, Ergonomics 19:683 (from memory)"
PRACTICE = "common practice, no source"
HERS = "the event file"


@dataclass(frozen=True, slots=True)
class Surface:
    """A kind of ground: the word it goes by, by what time is multiplied there, the fastest anybody runs
    down."""

    words: tuple[str, ...]
    times: float
    downhill_m_s: float
    source: str


SURFACES: Final = (
    Surface(("road", "tarmac", "asphalt", "paved", "street", "pavement", "promenade"), 1.00, 6.5, SOULE),
    Surface(("gravel", "track", "forest road", "cinder", "canal", "towpath"), 1.02, 6.0, PRACTICE),
    Surface(("path", "trail", "footpath", "bridleway", "dirt"), 1.05, 5.0, PRACTICE),
    Surface(("grass", "field", "meadow", "pasture"), 1.06, 5.0, PRACTICE),
    Surface(("rock", "rocky", "roots", "stony", "technical"), 1.15, 3.5, PRACTICE),
    Surface(("heather", "pathless", "tussock", "rough", "light brush"), 1.20, 3.2, SOULE),
    Surface(("scree", "boulder", "boulders", "scramble"), 1.40, 2.2, PRACTICE),
    Surface(("mud", "muddy", "wet ground", "bog", "boggy", "moss"), 1.30, 3.2, PRACTICE),
    Surface(("swamp", "marsh"), 1.80, 2.0, SOULE),
    Surface(("sand", "beach", "dune", "dunes"), 1.50, 3.0, PRACTICE),
    Surface(("loose sand",), 2.10, 2.5, SOULE),
    Surface(("brush", "scrub", "heavy brush"), 1.50, 2.0, SOULE),
    Surface(("snow", "ice"), 1.35, 2.5, PANDOLF),
)
"""The first word that fits counts, longest word first; time factors sourced 'walking cost' are on the safe
side."""

USUAL_DOWNHILL_M_S: Final = 5.0
ALTITUDE_FROM_M: Final = 300.0
ALTITUDE_PER_M: Final = 0.063 / 1000.0
ALTITUDE: Final = (
    "Wehrlin and Hallen 2006, Eur J Appl Physiol 96:404: 6.3 % of aerobic power per 1,000 m (from memory)"
)
STEPS_MOST: Final = 8_000
LEAST_STEP_KM: Final = 0.002


def surface_of(text: str) -> Surface | None:
    """The kind of ground a description names, or None where no known word is in it."""
    padded = f" {text.casefold().replace(',', ' ').replace('-', ' ')} "
    by_length = sorted(((w, s) for s in SURFACES for w in s.words), key=lambda pair: -len(pair[0]))
    for word, surface in by_length:
        if f" {word} " in padded:
            return surface
    return None


@dataclass(frozen=True, slots=True, eq=False)
class PreparedCourse:
    """A course made ready: terrain, and what the planner wants said about it."""

    terrain: Terrain
    notes: tuple[Note, ...]
    has_heights: bool


def ground_of(course: Course, definition: CourseDef, finish_km: float) -> PreparedCourse:
    """The steps of a course from its start to finish_km, with the factors of its stretches."""
    every = max(1, -(-(len(course.km) - 1) // STEPS_MOST))
    # A step of millimetres before the finish would have a gradient made of rounding.
    inner = course.km[::every]
    km = np.concatenate([inner[inner < finish_km - LEAST_STEP_KM], [finish_km]])
    metres = np.diff(km) * 1000.0
    notes: list[Note] = []
    if course.has_heights:
        height = np.interp(km, course.km, course.height_m)
        gradient = np.diff(np.interp(km, course.km, course.risen_m)) / metres
        high = Factor("altitude", _altitude((height[1:] + height[:-1]) / 2), ALTITUDE)
    else:
        gradient = np.zeros(len(metres))
        high = Factor("altitude", np.ones(len(metres)), ALTITUDE)
        notes.append(note("no-heights"))
    downhill, firm, factors = _stretches(km, definition.stretches, notes)
    shaded = np.zeros(len(metres), dtype=np.bool_)
    for s in definition.stretches:
        if s.forest_or_gorge:
            shaded |= _inside(km, s) > 0.5
    if float(high.times.max()) > 1.0005:
        factors.append(high)
    terrain = Terrain(km, metres, gradient, downhill, shaded, tuple(factors), firm)
    return PreparedCourse(terrain, tuple(notes), course.has_heights)


def _altitude(height_m: Floats) -> Floats:
    """By what thin air multiplies time at heights (n,), m; held at 5,000 m, where the figure ends being
    linear."""
    lost = ALTITUDE_PER_M * np.clip(height_m - ALTITUDE_FROM_M, 0.0, 4_700.0)
    return np.asarray(1.0 / (1.0 - lost))


def _inside(km: Floats, stretch: Stretch) -> Floats:
    """Share of each step (n,) that lies within a stretch."""
    covered = np.minimum(km[1:], stretch.to_km) - np.maximum(km[:-1], stretch.from_km)
    return np.asarray(np.clip(covered, 0.0, None) / np.diff(km))


def _refuse_senseless(index: int, stretch: Stretch) -> None:
    if not 0.5 <= stretch.factor <= 5.0:
        raise PlanError(
            say("wrong-factor-outside-0-5-5", factor=f"{stretch.factor:g}"),
            field=f"stretches[{index}].factor",
            remedy=say("do-write-1-10-tenth-slower"),
        )
    if not stretch.from_km < stretch.to_km:
        raise PlanError(
            say("wrong-stretch-from-km-km-no", from_km=f"{stretch.from_km:g}", to_km=f"{stretch.to_km:g}"),
            field=f"stretches[{index}].to_km",
            remedy=say("do-put-smaller-km-first"),
        )


def _stretches(
    km: Floats, stretches: tuple[Stretch, ...], notes: list[Note]
) -> tuple[Floats, Floats, list[Factor]]:
    """The downhill limit (n,), what surfaces cost (n,), the named factors; unknown surfaces are noted."""
    firm = np.ones(len(km) - 1)
    downhill = np.full(len(km) - 1, USUAL_DOWNHILL_M_S)
    named: dict[tuple[str, str], Floats] = {}

    def slow(name: str, source: str, times: float, share: Floats) -> None:
        kept = named.setdefault((name, source), np.ones(len(km) - 1))
        named[name, source] = kept * (1.0 + (times - 1.0) * share)

    for k, s in enumerate(stretches):
        _refuse_senseless(k, s)
        share = _inside(km, s)
        where = s.name or f"km {s.from_km:g} to {s.to_km:g}"
        if s.surface:
            kind = surface_of(s.surface)
            if kind is None:
                known = ", ".join(sorted(k.words[0] for k in SURFACES))
                notes.append(note("surface-unknown", surface=s.surface, where=where, known=known))
            else:
                slow(f"surface: {s.surface}", kind.source, kind.times, share)
                firm = firm * (1.0 + (kind.times - 1.0) * share)
                downhill = np.where(share > 0.5, kind.downhill_m_s, downhill)
        if s.factor != 1.0:
            slow(s.factor_for or where, HERS, s.factor, share)
    return downhill, firm, [Factor(name, times, source) for (name, source), times in named.items()]
