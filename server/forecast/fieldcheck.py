"""The forecast as the scoring script calls it: arrivals from bare arrays, by the engine the server runs."""

import numpy as np

from server.forecast import kinds
from server.forecast.posterior import flagged, with_constants
from server.forecast.values import Fact, FloatArray, NotYet, Quality, Reference, Sighting, WhoseTarget

FLAT_CLIMB_M_PER_KM = 2.0
HILL_CLIMB_M_PER_KM = 34.0


def arrivals(
    points_km: FloatArray,
    elapsed_s: FloatArray,
    reference_s: FloatArray | None,
    quantiles: FloatArray,
    now_s: float | None = None,
    limit_s: float | None = None,
    quality: str | None = None,
    climb_m_per_km: float | None = None,
    kind: kinds.ReferenceKind | None = None,
) -> FloatArray:
    """Quantiles (n - k, q), seconds after the start, of the arrivals after the first k points.

    points_km (n,), elapsed_s (k,) nan where not recorded, reference_s (n,) or None where only distances are known;
    quantiles (q,) rising in (0, 1); now_s: asked then, and she is not in yet at point k; limit_s: the race's limit.
    quality: what the reference was made from, a word of `Quality`; None: past results, or distance only without one.
    climb_m_per_km: of the course; None: that of the hills where there is a reference, of the flat where there is none.
    Raises ValueError for a word that is no quality.
    kind: other constants than the fitted ones, for years that those were fitted on.
    """
    km = np.asarray(points_km, dtype=np.float64)
    elapsed = np.asarray(elapsed_s, dtype=np.float64)
    reference = _reference(km, elapsed, reference_s, quality, climb_m_per_km)
    facts: list[Fact] = [Sighting(i, arrived_s=float(t)) for i, t in enumerate(elapsed) if np.isfinite(t)]
    if now_s is not None:
        facts.append(NotYet(elapsed.size, now_s))
    found = with_constants(kinds.of(reference) if kind is None else kind, reference, facts, limit_s)
    view = found.view(0.0 if now_s is None else now_s)
    return np.array([view.quantiles(p, quantiles) for p in range(elapsed.size, km.size)])


def flag(
    points_km: FloatArray,
    elapsed_s: FloatArray,
    reference_s: FloatArray | None,
    lines: FloatArray,
    limit_s: float | None = None,
    quality: str | None = None,
    climb_m_per_km: float | None = None,
    kind: kinds.ReferenceKind | None = None,
) -> FloatArray:
    """When somebody last seen at point k and not heard of at the next is called overdue, seconds after the start (lines,).

    lines: falling false-flag rates a leg to aim at; what is returned rises. The rest is as for `arrivals`.
    """
    km = np.asarray(points_km, dtype=np.float64)
    elapsed = np.asarray(elapsed_s, dtype=np.float64)
    reference = _reference(km, elapsed, reference_s, quality, climb_m_per_km)
    facts = [Sighting(i, arrived_s=float(t)) for i, t in enumerate(elapsed) if np.isfinite(t)]
    return flagged(
        kinds.of(reference) if kind is None else kind,
        reference,
        facts,
        np.asarray(lines, np.float64),
        limit_s,
    )


def _reference(
    km: FloatArray,
    elapsed: FloatArray,
    reference_s: FloatArray | None,
    quality: str | None,
    climb_m_per_km: float | None,
) -> Reference:
    none = np.zeros(km.size)
    if reference_s is not None:
        shape = np.asarray(reference_s, dtype=np.float64)
        made_from = Quality.PAST_RESULTS if quality is None else Quality(quality)
        climb = HILL_CLIMB_M_PER_KM if climb_m_per_km is None else climb_m_per_km
        return Reference(km, shape, none, made_from, climb, WhoseTarget.ANYBODY)
    seen = np.flatnonzero(np.isfinite(elapsed))
    # an even pace has no hours of its own: her first recorded time sets the scale, the level is then free
    pace = float(elapsed[seen[0]] / km[seen[0]]) if seen.size else 540.0
    climb = FLAT_CLIMB_M_PER_KM if climb_m_per_km is None else climb_m_per_km
    return Reference(km, km * pace, none, Quality.DISTANCE, climb, WhoseTarget.ANYBODY)
