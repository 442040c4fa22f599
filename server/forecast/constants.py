"""Constants of the forecast, read once from constants.json, which `python -m tests.research.fit` writes; not by hand.

SOURCE: the years they were fitted on; PLANS: those of the plans of the cost model and of flags. SPREAD: (case, constant,
how far it differs between fits that leave years out, as a share of its size, or plain for those near zero).
"""

import json
from collections.abc import Mapping
from datetime import date
from importlib import resources
from typing import Any

import numpy as np

from server.forecast.fitted import Bend, Case, Flagging, Ground, Net, StopShape
from server.forecast.prior import Prior
from server.forecast.values import Quality


def _made(of: type, told: Mapping[str, Any], **made: Any) -> Any:
    lists = {k: tuple(v) if isinstance(v, list) else v for k, v in told.items()}
    return of(**{**lists, **made})


def _nets(told: Mapping[str, Any]) -> tuple[Net, ...]:
    return tuple(Net(**{k: np.array(v) for k, v in net.items()}) for net in told["nets"])


_HELD: Mapping[str, Any] = json.loads(
    resources.files("server.forecast").joinpath("constants.json").read_text("utf-8")
)
SOURCE: str = _HELD["source"]
PLANS: str = _HELD["plans"]
FITTED_ON = date.fromisoformat(_HELD["fitted_on"])
WILD_LEVEL_SD: float = _HELD["wild_level_sd"]
STOPS: StopShape = _made(StopShape, _HELD["stops"])
SPREAD: tuple[tuple[str, str, float], ...] = tuple((c, n, v) for c, n, v in _HELD["spread"])
CASES: tuple[Case, ...] = tuple(
    _made(Case, c, quality=Quality(c["quality"]), prior=_made(Prior, c["prior"])) for c in _HELD["cases"]
)
GROUNDS: tuple[Ground, ...] = tuple(_made(Ground, g, nets=_nets(g)) for g in _HELD["grounds"])
PLANNED: Bend = _made(Bend, _HELD["planned"], nets=_nets(_HELD["planned"]))
FLAGGING: Flagging = _made(Flagging, _HELD["flagging"])
