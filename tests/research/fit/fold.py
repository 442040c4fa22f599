"""One fold: everything fitted without some years, as the engine takes it; shared by all that score years kept back."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from server.forecast.fitted import Ground
from server.forecast.kinds import ReferenceKind
from server.forecast.prior import Prior
from tests.research.fit.curves import train
from tests.research.fit.hazards import fit_hazard
from tests.research.fit.limits import fit_push
from tests.research.fit.priors import WILD_LEVEL_SD, fit_prior
from tests.research.fit.tables import Race
from tests.research.fit.tails import fit_tail

FOLDS = 5


@dataclass(frozen=True, slots=True, eq=False)
class Fold:
    """Years kept back, years fitted, and what was fitted."""

    kept: list[Race]
    fitted: list[Race]
    prior: Prior
    ground: Ground

    @property
    def kind(self) -> ReferenceKind:
        """The fit as `posterior.with_constants` takes it."""
        nets = tuple((1.0 / len(self.ground.nets), n) for n in self.ground.nets)
        return ReferenceKind(
            self.prior,
            WILD_LEVEL_SD,
            nets,
            self.ground.hazard,
            self.ground.push,
            self.ground.tail,
            self.ground.years,
            1.0,
        )

    def name(self) -> str:
        """Which years were fitted and which are scored."""
        return f"fitted {years(self.fitted)}; scored {years(self.kept)}"


def years(races: Sequence[Race]) -> str:
    """Years in order."""
    return " ".join(str(y) for y in sorted(r.year for r in races))


def split(races: Sequence[Race]) -> list[list[Race]]:
    """Years to keep back in turn, dense and sparse years spread over the folds."""
    ordered = sorted(races, key=lambda r: (-r.ref_s.size, r.year))
    count = min(FOLDS, len(ordered))
    return [ordered[i::count] for i in range(count)]


def folds(races: Sequence[Race], most: int = FOLDS) -> Iterator[Fold]:
    """Each fold fitted anew; only the first `most` of them."""
    for kept in split(races)[:most]:
        fitted = [r for r in races if r not in kept]
        prior = fit_prior(fitted)
        nets = train(fitted, prior, WILD_LEVEL_SD)
        hazard = fit_hazard(fitted, prior, WILD_LEVEL_SD)
        push = fit_push(fitted, prior, nets, hazard, WILD_LEVEL_SD)
        tail = fit_tail(fitted, prior, nets, WILD_LEVEL_SD)
        yield Fold(kept, fitted, prior, Ground(0.0, nets, hazard, push, tail, len(fitted)))
