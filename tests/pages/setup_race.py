"""A made race for the set-up's tests: a route of some 42 km over two invented hills, with waypoints."""

from __future__ import annotations

import math
from collections.abc import Iterator

WAYPOINTS = {"Tarn Head": 0.25, "Gill <i>Bridge</i>": 0.5, "Fold Inn": 0.75}
TABLE = """km\tPoint\tCut-off\tCrew
10,6 km\tTarn Head\t07:45\tyes
21.1\tGill <i>Bridge</i>\t10:30\tno
31.7\tFold Inn\tSat 13:00\tyes
35\tTop Gate\t\tno
the bar is open all night
"""


def made_gpx(steps: int = 420) -> bytes:
    """Along a parallel from west to east, up and down twice."""

    def at(share: float) -> str:
        return f'lat="{54.4 + 0.05 * math.sin(6.28 * share):.6f}" lon="{-2.6 + 0.6 * share:.6f}"'

    def lines() -> Iterator[str]:
        yield '<?xml version="1.0"?><gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1">'
        for name, share in WAYPOINTS.items():
            yield f"<wpt {at(share)}><name>{name.replace('<', '&lt;').replace('>', '&gt;')}</name></wpt>"
        yield "<trk><trkseg>"
        for n in range(steps + 1):
            share = n / steps
            yield f"<trkpt {at(share)}><ele>{300 + 250 * math.sin(12.56 * share) ** 2:.1f}</ele></trkpt>"
        yield "</trkseg></trk></gpx>"

    return "\n".join(lines()).encode()
