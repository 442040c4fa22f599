"""How stops scatter about their usual length, from the one table that holds stops."""

from pathlib import Path

import numpy as np

from server.forecast.fitted import StopShape
from tests.research.fit.tables import MINUTE, read_table

LONG_REST_FROM_S = 15.0 * MINUTE
KEPT_AT_LEAST = 30


def fit_stops(table: Path) -> StopShape:
    """Log spread of a stop about the usual one at its point, and of long ones; lengths as shares of the finish time.

    Only points where stops were kept count. One nobody planned takes as long as the shortest tenth of those kept.
    """
    _, cells = read_table(table)
    arrive, stop = cells[:, 0::2], cells[:, 1::2]
    finish = float(np.nanmedian(arrive[:, -1]))
    kept = stop[:, (stop > 0).sum(axis=0) >= KEPT_AT_LEAST]
    kept = np.where(kept > 0, kept, np.nan)
    spread = np.log(kept / np.nanmedian(kept, axis=0))
    rests = kept[kept >= LONG_REST_FROM_S]
    return StopShape(
        log_sd=float(np.nanstd(spread)),
        unplanned_share=float(np.nanquantile(kept, 0.1)) / finish,
        rest_share=float(np.median(rests)) / finish,
        rest_log_sd=float(np.log(rests).std()),
    )
