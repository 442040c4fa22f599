"""What a course for bad nights is: an event file's text, a line, a start; put otherwise where a story needs it.

Three stand beside this file: `beck` (one car by day, a cut-off), `ridge` (two cars over a night, a stretch without
signal, a pacer, somebody asleep) and `loops` (four times round a tarn, two runners in two waves, one camp). Everything
is made up; telephone numbers come from ranges that regulators keep for drama.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from math import cos, pi, radians, sin

__all__ = ["Ground"]

ROUTE = "line.gpx"
_STEPS = 60
"""Points of the line for each 10 km: coarse, but every hill of it has its points."""


@dataclass(frozen=True, slots=True)
class Ground:
    """An event that stories are played in: the event file's text with `{starts}` open, its start, its line.

    `laps`: how often the line goes round one circle; `lat`, `lon` (degrees) where it begins.
    """

    name: str
    text: str
    starts: datetime
    km: float
    climb_m: float
    laps: int
    lat: float
    lon: float

    @property
    def files(self) -> dict[str, bytes]:
        """The route file beside the event file."""
        return {ROUTE: _line(self)}

    def event_text(self) -> str:
        """The event file."""
        local = self.starts.replace(tzinfo=None).isoformat()
        return self.text.replace("{starts}", local).replace("{year}", str(self.starts.year + 1))

    def on(self, starts: datetime) -> Ground:
        """The same, starting at another moment."""
        return replace(self, starts=starts)

    def but(self, *changes: tuple[str, str]) -> Ground:
        """The same with parts of the event file put otherwise; what is not there is a mistake of the story."""
        text = self.text
        for old, new in changes:
            assert text.count(old) == 1, f"{self.name}: '{old}' stands there {text.count(old)} times"
            text = text.replace(old, new)
        return replace(self, text=text)

    def and_also(self, text: str) -> Ground:
        """The same with more tables at the end of the event file."""
        return replace(self, text=f"{self.text}\n{text}")


def _line(ground: Ground) -> bytes:
    """A circle gone round `laps` times, or three quarters of one, with hills in it; the same every time."""
    arc = 2 * pi * ground.laps if ground.laps > 1 else 1.5 * pi
    radius_km = ground.km / arc
    count = round(ground.km / 10 * _STEPS)
    rows = []
    for i in range(count + 1):
        share = i / count
        turn = arc * share
        lat = ground.lat + radius_km * sin(turn) / 111.3
        lon = ground.lon + radius_km * (1 - cos(turn)) / (111.3 * cos(radians(ground.lat)))
        hills = max(ground.laps, 4)
        height = 300 + ground.climb_m / hills / 2 * (1 - cos(2 * pi * hills * share))
        rows.append(f'<trkpt lat="{lat:.6f}" lon="{lon:.6f}"><ele>{height:.1f}</ele></trkpt>')
    head = '<gpx version="1.1" creator="tests" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>'
    return f"{head}{''.join(rows)}</trkseg></trk></gpx>".encode()
