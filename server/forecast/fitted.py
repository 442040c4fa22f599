"""The shapes of the fitted constants; `constants` holds the numbers."""

from dataclasses import dataclass

from server.forecast.prior import Prior
from server.forecast.values import FloatArray, Quality


@dataclass(frozen=True, slots=True, eq=False)
class Net:
    """One hidden layer beside a straight line: inputs (f,) -> 8 numbers that bend a quantile curve.

    centre, scale: (f,) of the inputs. inner (f, h), inner_bias (h,), outer (h, 8), outer_bias (8,), straight (f, 8).
    """

    centre: FloatArray
    scale: FloatArray
    inner: FloatArray
    inner_bias: FloatArray
    outer: FloatArray
    outer_bias: FloatArray
    straight: FloatArray


@dataclass(frozen=True, slots=True)
class Ground:
    """What was learned from one course: how curves bend there and how runners give up.

    tail: factor and power of `correct.with_mishaps`, then the power of `margins.later`. push: see `stopping.made`.
    """

    climb_m_per_km: float
    nets: tuple[Net, ...]
    hazard: tuple[float, ...]
    push: tuple[float, float, float]
    tail: tuple[float, float, float]
    years: int


@dataclass(frozen=True, slots=True)
class Bend:
    """How curves bend about references of one kind on any ground. tail: as `Ground`; years: how many grounds it is from."""

    nets: tuple[Net, ...]
    tail: tuple[float, float, float]
    years: int


@dataclass(frozen=True, slots=True)
class Case:
    """A prior fitted for one quality of reference on one kind of ground."""

    quality: Quality
    climb_m_per_km: float
    prior: Prior


@dataclass(frozen=True, slots=True)
class StopShape:
    """Stops: log spread about the planned length; the usual length of one nobody planned, share of the finish time."""

    log_sd: float
    unplanned_share: float
    rest_share: float
    rest_log_sd: float


@dataclass(frozen=True, slots=True)
class Flagging:
    """Fitted: log rate of stopping by the inputs (limit told, not told), and log density lines by false flags a leg.

    rates: falling; log_lines: the same length, falling: what the density times her whole time is held against.
    """

    told: tuple[float, ...]
    untold: tuple[float, ...]
    rates: tuple[float, ...]
    log_lines: tuple[float, ...]
    log_lines_untold: tuple[float, ...]
