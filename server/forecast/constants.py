"""Constants of the forecast, written by `python -m server.forecast.fit`; do not edit.

Source: first
Fitted on 2026-11-25. Spread of each constant over fits that leave years out, as a share of its size, or plain for
those near zero: see SPREAD.
"""

import numpy as np

from server.forecast.fitted import Case, Ground, Net, StopShape
from server.forecast.prior import Prior
from server.forecast.values import Quality

WILD_LEVEL_SD = 1.0

STOPS = StopShape(log_sd=0.6, unplanned_share=0.00069444, rest_share=0.013889, rest_log_sd=1.0)

SPREAD = (("a", "b", 0.1),)

# fmt: off
CASES = (
    Case(quality=Quality.DISTANCE, climb_m_per_km=2.0, prior=Prior(
            mean=(-0.23443, 3.1605, -3.5154, 0.97277),
            slope_sd=0.060802,
            curve_sd=0.38743,
            slope_curve=-0.84645,
            wander=0.036467,
            wander_power=2.1461,
            patch_sd=0.0076877,
            patch_length=1.1608,
            patch_growth=1.3409,
            leg_sd=0.074852,
            leg_per_share=9.4542e-05,
            leg_growth=2.086,
            point_sd=0.0007435,
            robust_df=3.0,
        ),
    ),
    Case(quality=Quality.DISTANCE, climb_m_per_km=34.0, prior=Prior(
            mean=(-0.23443, 3.1605, -3.5154, 0.97277),
            slope_sd=0.060802,
            curve_sd=0.38743,
            slope_curve=-0.84645,
            wander=0.036467,
            wander_power=2.1461,
            patch_sd=0.0076877,
            patch_length=1.1608,
            patch_growth=1.3409,
            leg_sd=0.074852,
            leg_per_share=9.4542e-05,
            leg_growth=2.086,
            point_sd=0.0007435,
            robust_df=3.0,
        ),
    ),
    Case(quality=Quality.PAST_RESULTS, climb_m_per_km=2.0, prior=Prior(
            mean=(-0.14101, 0.80339, -1.0534, 0.40369),
            slope_sd=0.07038,
            curve_sd=0.33144,
            slope_curve=-0.99879,
            wander=0.0049568,
            wander_power=2.1673,
            patch_sd=0.1076,
            patch_length=0.12186,
            patch_growth=1.2111,
            leg_sd=0.0038604,
            leg_per_share=9.7449e-06,
            leg_growth=2.638,
            point_sd=0.0023844,
            robust_df=3.0,
        ),
    ),
    Case(quality=Quality.PAST_RESULTS, climb_m_per_km=34.0, prior=Prior(
            mean=(-0.14101, 0.80339, -1.0534, 0.40369),
            slope_sd=0.07038,
            curve_sd=0.33144,
            slope_curve=-0.99879,
            wander=0.0049568,
            wander_power=2.1673,
            patch_sd=0.1076,
            patch_length=0.12186,
            patch_growth=1.2111,
            leg_sd=0.0038604,
            leg_per_share=9.7449e-06,
            leg_growth=2.638,
            point_sd=0.0023844,
            robust_df=3.0,
        ),
    ),
)

GROUNDS = (
    Ground(climb_m_per_km=2.0, hazard=(-1.5, 0.0, 0.0, 0.0, 0.0, 0.0,), nets=(
    )),
    Ground(climb_m_per_km=34.0, hazard=(-1.5, 0.0, 0.0, 0.0, 0.0, 0.0,), nets=(
    )),
)
# fmt: on
