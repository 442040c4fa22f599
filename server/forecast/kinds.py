"""Which constants serve a reference: chosen by its quality and by climb per km, never by a race's name."""

from dataclasses import dataclass

from server.forecast.prior import Prior
from server.forecast.values import Reference, Target


@dataclass(frozen=True, slots=True, eq=False)
class Kind:
    """Everything fitted for one kind of reference."""

    prior: Prior
    level_sd: float


def of(reference: Reference) -> Kind:
    """Constants for a reference."""
    prior = Prior((0.35, 0.2, 0.0, 0.0), 0.25, 0.4, 0.0, 0.02, 2.0, 0.05, 0.1, 1.0, 0.06, 0.0001, 0.5, 0.002, 5.0)
    return Kind(prior, 0.15 if reference.target is Target.HERS else 1.0)
