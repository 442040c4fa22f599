"""Facts in any order -> stretches run, where and when she was last seen, and what bounds the rest."""

import itertools
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from server.forecast.values import (
    Condition,
    Fact,
    FloatArray,
    Held,
    KnownStop,
    NotYet,
    Position,
    Reference,
    Rest,
    Retired,
    Sighting,
)

THIN_SHARE = 0.02
NEAR_POINT_KM = 0.15
VAGUE_PART = 0.1
"""A position whose error is more than this part of the way since the last edge tells less than it blurs: left out."""
FASTEST, ERRORS, REMEMBERED = 2.5, 3.0, 40
"""Between two fixes she is no faster than so many times her pace so far, by the reference (hills within a leg differ), give
or take so many standard errors; a fix is held against so many before it (own choice)."""
LAGS_S, LAG_DOUBT_S, LAGGING = 120.0, 60.0, 0.8
"""A tracker is taken to lag from so many seconds on, known to within so many; for this part of the time it lags after a
report from a point it says of places before it (own choice)."""
CONDITIONS_LOG = (float(np.log(0.5)), float(np.log(3.0)))
"""What all words of how she goes may come to together (own choice: the bounds that one has at the API)."""


@dataclass(frozen=True, slots=True)
class RunningTime:
    """Running time: seconds since the start with time held, or rested away from a point, taken out."""

    pauses: tuple[tuple[float, float], ...]

    def running(self, at_s: float) -> float:
        """Running time at a real time."""
        return at_s - sum(max(0.0, min(at_s, end) - start) for start, end in self.pauses)

    def real(self, running_s: FloatArray) -> FloatArray:
        """Real time of running times of any shape; a moment that falls on a pause is its start."""
        out = np.array(running_s, dtype=np.float64)
        for start, end in self.pauses:
            out = np.where(out > start, out + (end - start), out)
        return out


@dataclass(frozen=True, slots=True)
class TimedEdge:
    """A place on the reference's own time line, and when she was there in running time."""

    ref_s: float
    at_s: float
    var_s2: float
    arrives: int = -1
    leaves: int = -1


@dataclass(frozen=True, slots=True, eq=False)
class Progress:
    """What the facts come to. Times are running times (see `RunningTime`) unless they say real.

    seen_a, seen_b, seen_y, seen_va, seen_vb: (k,) stretches run: share edges, log ratio, variance of edges.
    seen_own: (k,) variance added by uncertain conditions. origin: the last edge. first: the next point to come, n once
    she has finished. at_point: the point she has arrived at and is not known to have left, else -1.
    ahead_ref_s: (n - first,) reference seconds of each stretch ahead, conditions included; ahead_cov: their own
    covariance from unsure conditions. not_yet: (point, latest time). stays: (later point, leaves no earlier than).
    arrived_s, left_s: (n,) real times seen, nan elsewhere.
    """

    clock: RunningTime
    seen_a: FloatArray
    seen_b: FloatArray
    seen_y: FloatArray
    seen_va: FloatArray
    seen_vb: FloatArray
    seen_own: FloatArray
    origin: TimedEdge
    first: int
    at_point: int
    ahead_ref_s: FloatArray
    ahead_cov: FloatArray
    not_yet: tuple[tuple[int, float], ...]
    stays: tuple[tuple[int, float], ...]
    arrived_s: FloatArray
    left_s: FloatArray
    retired: Retired | None
    held_since_s: float | None
    resting_since_s: float | None
    resting_heard_s: float
    last_fact_s: float


def departures(reference: Reference) -> FloatArray:
    """(n,) when the reference leaves each point."""
    return np.asarray(reference.elapsed_s + reference.stop_s)


def place_to_ref(reference: Reference, km: float) -> float:
    """Reference seconds at which the plan is km along, moving; never quite the arrival at the next point."""
    return float(places_to_ref(reference, np.array([km]))[0])


def places_to_ref(reference: Reference, km: FloatArray) -> FloatArray:
    """The same (k,) for many places (k,)."""
    after = np.minimum(np.searchsorted(reference.km, km, side="right"), reference.n - 1)
    km0 = np.where(after == 0, 0.0, reference.km[after - 1])
    t0 = np.where(after == 0, 0.0, departures(reference)[after - 1])
    share = np.clip((km - km0) / (reference.km[after] - km0), 0.0, 0.999)
    return np.asarray(t0 + share * (reference.elapsed_s[after] - t0))


def build(reference: Reference, facts: Sequence[Fact]) -> Progress:
    """Fold facts, whose order does not matter, into a track. Points outside the reference raise ValueError."""
    for f in facts:
        if isinstance(f, (Sighting, NotYet, KnownStop)) and not 0 <= f.point < reference.n:
            raise ValueError(
                f"{type(f).__name__}: point {f.point} is not one of the reference's {reference.n} points"
            )
    arrived, left, var_arrived, var_left = _sightings(reference, facts)
    rests, resting = _rests(facts, arrived, left)
    holds = [f for f in facts if isinstance(f, Held)]
    clock = RunningTime(_merge([(f.start_s, f.end_s) for f in holds if f.end_s is not None] + rests))
    open_holds = [f.start_s for f in holds if f.end_s is None]
    edges, lag_s = _edges(reference, facts, clock, (arrived, left, var_arrived, var_left))
    origin, at_point = _origin(reference, facts, clock, edges[-1], lag_s)
    first = int(np.searchsorted(reference.elapsed_s, edges[-1].ref_s, side="right"))
    conditions = [f for f in facts if isinstance(f, Condition)]
    seen = _seen(reference, edges, conditions)
    ends = np.concatenate([[origin.ref_s], reference.elapsed_s[first:]])
    ahead_ref, ahead_cov = _effective(reference, conditions, ends[:-1], ends[1:])
    late: dict[int, float] = {}
    for f in facts:
        if isinstance(f, NotYet) and f.point >= first:
            late[f.point] = max(late.get(f.point, 0.0), clock.running(f.at_s))
    stays: dict[int, float] = {}
    for f in facts:
        if isinstance(f, KnownStop) and f.point >= first:
            stays[f.point] = max(stays.get(f.point, 0.0), clock.running(f.until_s))
    retired = [f for f in facts if isinstance(f, Retired)]
    return Progress(
        clock,
        *seen,
        origin=origin,
        first=first,
        at_point=at_point,
        ahead_ref_s=ahead_ref,
        ahead_cov=ahead_cov,
        not_yet=tuple(sorted(late.items())),
        stays=tuple(sorted(stays.items())),
        arrived_s=arrived,
        left_s=left,
        retired=min(retired, key=lambda f: f.at_s) if retired else None,
        held_since_s=min(open_holds) if open_holds else None,
        resting_since_s=resting,
        resting_heard_s=max(
            (f.start_s for f in facts if isinstance(f, Rest) and f.end_s is None), default=0.0
        ),
        last_fact_s=_last_fact(facts),
    )


def _merge(spans: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    out: list[tuple[float, float]] = []
    for start, end in sorted(spans):
        if end <= start:
            continue
        if out and start <= out[-1][1]:
            out[-1] = (out[-1][0], max(out[-1][1], end))
        else:
            out.append((start, end))
    return tuple(out)


def _last_fact(facts: Sequence[Fact]) -> float:
    """Real time of the last thing heard that says where she is, 0 before anything."""
    times = [0.0]
    for f in facts:
        if isinstance(f, Sighting):
            times += [t for t in (f.arrived_s, f.left_s) if t is not None]
        elif isinstance(f, (Position, NotYet, Retired)):
            times.append(f.at_s)
        elif isinstance(f, Rest):
            times.append(f.start_s if f.end_s is None else f.end_s)
    return max(times)


def _combined(times: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """One time, and its variance, out of several reports (time, sd) of the same moment."""
    if len(times) == 1:
        time, sd = times[0]
        return time, (max(sd, 1.0) ** 2 if sd > 0 else 0.0)
    ordered = sorted(times)
    weights = np.array([1.0 / max(sd, 1.0) ** 2 for _, sd in ordered])
    time = float(np.dot(weights, [t for t, _ in ordered]) / weights.sum())
    return time, (float(1.0 / weights.sum()) if any(sd > 0 for _, sd in ordered) else 0.0)


def _sightings(
    reference: Reference, facts: Sequence[Fact]
) -> tuple[FloatArray, FloatArray, FloatArray, FloatArray]:
    """(n,) arrival and departure times, nan where unknown, and their variances."""
    out = [
        np.full(reference.n, np.nan),
        np.full(reference.n, np.nan),
        np.zeros(reference.n),
        np.zeros(reference.n),
    ]
    seen = [f for f in facts if isinstance(f, Sighting)]
    for point in sorted({f.point for f in seen}):
        here = [f for f in seen if f.point == point]
        arrivals = [(f.arrived_s, f.sd_s) for f in here if f.arrived_s is not None]
        leavings = [(f.left_s, f.sd_s) for f in here if f.left_s is not None]
        for slot, times in ((0, arrivals), (1, leavings)):
            if times:
                out[slot][point], out[slot + 2][point] = _combined(times)
        if out[1][point] < out[0][point]:
            out[1][point] = out[0][point]
    return out[0], out[1], out[2], out[3]


def _rests(
    facts: Sequence[Fact], arrived: FloatArray, left: FloatArray
) -> tuple[list[tuple[float, float]], float | None]:
    """Rests away from points, as pauses, and since when she has been resting if she still is.

    A rest begun at a point whose departure is not known is its stop: moving again is leaving it (left is set here).
    """
    pauses: list[tuple[float, float]] = []
    resting: float | None = None
    for f in sorted((f for f in facts if isinstance(f, Rest)), key=lambda f: (f.start_s, f.end_s or np.inf)):
        here = np.flatnonzero((arrived <= f.start_s) & ~(left < f.start_s))
        last = int(here[-1]) if here.size else -1
        away = (
            last < 0
            or bool(np.any(arrived[last + 1 :] <= f.start_s))
            or bool(np.any(left[last + 1 :] <= f.start_s))
        )
        if f.end_s is None:
            resting = f.start_s if resting is None else min(resting, f.start_s)
        elif away:
            pauses.append((f.start_s, f.end_s))
        elif np.isnan(left[last]):
            left[last] = f.end_s
    return pauses, resting


def _edges(
    reference: Reference,
    facts: Sequence[Fact],
    clock: RunningTime,
    sightings: tuple[FloatArray, FloatArray, FloatArray, FloatArray],
) -> tuple[list[TimedEdge], float]:
    """Edges in order along the course, of two that contradict each other the farther one; and `_lag_s`."""
    arrived, left, var_arrived, var_left = sightings
    leave = departures(reference)
    sure = [TimedEdge(0.0, 0.0, 0.0)]
    for p in range(reference.n):
        if np.isfinite(arrived[p]):
            sure.append(
                TimedEdge(
                    float(reference.elapsed_s[p]), clock.running(float(arrived[p])), float(var_arrived[p]), p
                )
            )
        if np.isfinite(left[p]):
            sure.append(TimedEdge(float(leave[p]), clock.running(float(left[p])), float(var_left[p]), -1, p))
    edges = _consistent(sure)
    slow = float(reference.elapsed_s[-1] / (reference.km[-1] * 1000.0))
    found = sorted(
        (f for f in facts if isinstance(f, Position) and 0.0 < f.km < reference.km[-1]),
        key=lambda f: (f.km, f.at_s, f.accuracy_m),
    )
    km, at_s = np.array([f.km for f in found]), np.array([f.at_s for f in found])
    accuracy_m = np.array([f.accuracy_m for f in found])
    stays = _at_points(reference, km, at_s, accuracy_m, arrived, left).tolist()
    refs = places_to_ref(reference, km).tolist()
    places = [
        TimedEdge(ref, clock.running(f.at_s), (f.accuracy_m * slow) ** 2)
        for f, ref, here in zip(found, refs, stays, strict=True)
        if not here
    ]
    lag = _lag_s(places, edges) if places else 0.0
    if lag:
        places = [replace(e, at_s=e.at_s - lag, var_s2=e.var_s2 + LAG_DOUBT_S**2) for e in places]
    apart = THIN_SHARE * float(reference.elapsed_s[-1])
    for place in reversed(_consistent(_believed(places, edges[-1]))):
        n = bisect_left(edges, place.ref_s, key=lambda e: e.ref_s)
        before, after = edges[n - 1], edges[n] if n < len(edges) else None
        fits = before.at_s < place.at_s and (after is None or after.at_s > place.at_s)
        clear = after is None or min(after.ref_s - place.ref_s, place.ref_s - before.ref_s) >= apart
        sharp = place.var_s2 <= (VAGUE_PART * (place.at_s - before.at_s)) ** 2
        if fits and clear and sharp:
            edges.insert(n, place)
    return edges, lag


def _lag_s(places: list[TimedEdge], sure: list[TimedEdge]) -> float:
    """By how much a tracker says of old places that she is there now: seconds, 0 where it does not.

    After she was seen at a point its fixes still lie before that point, all of them, and for about as long as they are old.
    It has to have been so at the last two points with fixes after them, whether she was seen in, out or both there:
    somebody may have written too early once.
    """
    refs, ats = [e.ref_s for e in sure], [e.at_s for e in sure]
    marks = list({max(e.arrives, e.leaves): e for e in sure[1:]}.values())
    found: list[float] = []
    for edge, until in zip(marks, [*(e.at_s for e in marks[1:]), np.inf], strict=False):
        since = [p for p in places if edge.at_s < p.at_s <= until]
        behind = [p for p in since if p.ref_s < edge.ref_s - ERRORS * np.sqrt(p.var_s2)]
        old = [float(p.at_s - np.interp(p.ref_s, refs, ats)) for p in behind]
        lag = float(np.median(old or [0.0]))
        if since:
            # A fix at the point itself says nothing either way: she may have stayed.
            first = [p for p in since if p.at_s <= edge.at_s + LAGGING * lag and _apart(p, edge)]
            found.append(lag if all(p in behind for p in first) else 0.0)
    lag = min(found[-2:], default=0.0)
    return lag if lag >= LAGS_S else 0.0


def _apart(place: TimedEdge, mark: TimedEdge) -> bool:
    return bool(abs(place.ref_s - mark.ref_s) > ERRORS * np.sqrt(place.var_s2))


def _believed(places: list[TimedEdge], last: TimedEdge) -> list[TimedEdge]:
    """Of the places since the last sure edge the most that one runner can have been at, in order; others as they are.

    A tracker that jumps says of one moment what neither those before nor those after bear out; of two as likely the
    nearer one is believed, until others follow.
    """
    since = sorted((e for e in places if e.at_s > last.at_s), key=lambda e: (e.at_s, e.ref_s))
    pace = last.at_s / last.ref_s if last.ref_s > 0 else 1.0
    chain: list[tuple[int, int]] = []
    for j, e in enumerate(since):
        before = range(max(0, j - REMEMBERED), j)
        longest = [(chain[i][0], i) for i in before if chain[i][0] and _reached(since[i], e, pace)]
        start = (1, -1) if _reached(last, e, pace) else (0, -1)
        best = max(longest, default=None)
        chain.append(start if best is None else (best[0] + 1, best[1]))
    kept = [e for e in places if e.at_s <= last.at_s]
    j = max(
        (j for j, c in enumerate(chain) if c[0]), key=lambda j: (chain[j][0], -since[j].ref_s), default=-1
    )
    while j >= 0:
        kept.append(since[j])
        j = chain[j][1]
    return kept


def _reached(one: TimedEdge, other: TimedEdge, pace: float) -> bool:
    """Whether she can have gone from one place to the other in the time between, not back, give or take their errors."""
    room = ERRORS * np.sqrt(one.var_s2 + other.var_s2)
    way = other.ref_s - one.ref_s
    return bool(-room <= way <= FASTEST * (other.at_s - one.at_s) / pace + room)


def _consistent(edges: list[TimedEdge]) -> list[TimedEdge]:
    kept: list[TimedEdge] = []
    for edge in sorted(edges, key=lambda e: (e.ref_s, e.leaves, e.at_s), reverse=True):
        stop = bool(kept) and kept[-1].leaves >= 0 and kept[-1].leaves == edge.arrives
        if (
            not kept
            or (edge.at_s < kept[-1].at_s and edge.ref_s < kept[-1].ref_s)
            or (stop and edge.at_s <= kept[-1].at_s)
        ):
            kept.append(edge)
    return kept[::-1]


def _at_points(
    reference: Reference,
    km: FloatArray,
    at_s: FloatArray,
    accuracy_m: FloatArray,
    arrived: FloatArray,
    left: FloatArray,
) -> NDArray[np.bool_]:
    """(k,) whether positions (k,) only say that she is still at a point she has arrived at."""
    near = np.maximum(NEAR_POINT_KM, 2.0 * accuracy_m / 1000.0)[:, None]
    at = at_s[:, None]
    here = (np.abs(reference.km - km[:, None]) <= near) & (arrived <= at) & ~(left < at)
    return np.asarray(here.any(axis=1))


def _origin(
    reference: Reference, facts: Sequence[Fact], clock: RunningTime, last: TimedEdge, lag_s: float
) -> tuple[TimedEdge, int]:
    """The edge to forecast from, and the point she is at. A stop known to last moves it to the stop's earliest end; a
    tracker beside the point says that of the time it lags by before."""
    p = last.arrives
    if p < 0:
        return last, -1
    until = [f.until_s for f in facts if isinstance(f, KnownStop) and f.point == p]
    near = [
        f.at_s - lag_s
        for f in facts
        if isinstance(f, Position)
        and abs(f.km - reference.km[p]) <= max(NEAR_POINT_KM, 2.0 * f.accuracy_m / 1000.0)
    ]
    leave = float(departures(reference)[p])
    stays = max((clock.running(t) for t in until + near), default=-np.inf)
    if stays > last.at_s + (0.0 if until else reference.stop_s[p]):
        return TimedEdge(leave, stays, last.var_s2, p), p
    return last, p


def _effective(
    reference: Reference, conditions: Sequence[Condition], a: FloatArray, b: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Reference seconds of stretches [a, b] with conditions, (k,), and the covariance of their logs, (k, k).

    Where several hold at once their factors multiply, within CONDITIONS_LOG.
    """
    total = b - a
    cov = np.zeros((a.size, a.size))
    ordered = sorted(conditions, key=lambda c: (c.from_km, c.to_km, c.log_factor, c.sd))
    spans = [(place_to_ref(reference, c.from_km), place_to_ref(reference, c.to_km)) for c in ordered]
    for lo, hi in itertools.pairwise(sorted({edge for span in spans for edge in span})):
        together = sum(c.log_factor for c, s in zip(ordered, spans, strict=True) if s[0] <= lo < s[1])
        overlap = np.maximum(np.minimum(b, hi) - np.maximum(a, lo), 0.0)
        total = total + overlap * np.expm1(min(max(together, CONDITIONS_LOG[0]), CONDITIONS_LOG[1]))
    for c, (lo, hi) in zip(ordered, spans, strict=True):
        part = np.maximum(np.minimum(b, hi) - np.maximum(a, lo), 0.0) / np.maximum(b - a, 1e-9)
        cov += c.sd**2 * np.outer(part, part)
    return total, cov


def _seen(
    reference: Reference, edges: list[TimedEdge], conditions: Sequence[Condition]
) -> tuple[FloatArray, FloatArray, FloatArray, FloatArray, FloatArray, FloatArray]:
    finish = float(reference.elapsed_s[-1])
    pairs = [
        (e0, e1)
        for e0, e1 in itertools.pairwise(edges)
        if not (e1.leaves >= 0 and e0.arrives == e1.leaves) and e1.ref_s > e0.ref_s and e1.at_s > e0.at_s
    ]
    a = np.array([e0.ref_s for e0, _ in pairs])
    b = np.array([e1.ref_s for _, e1 in pairs])
    ref, cov = _effective(reference, conditions, a, b)
    took = np.array([e1.at_s - e0.at_s for e0, e1 in pairs])
    va = np.array([e0.var_s2 for e0, _ in pairs]) / finish**2
    vb = np.array([e1.var_s2 for _, e1 in pairs]) / finish**2
    y = np.log(took / ref) if took.size else took
    return a / finish, b / finish, y, va, vb, np.diagonal(cov).copy()
