"""A made runner on made hills: recordings whose truth is known, and their FIT, TCX and GPX files."""

from __future__ import annotations

import struct
from datetime import UTC, datetime, timedelta

import numpy as np
import numpy.typing as npt

from server.plan.pace import Fade, Limits, Terrain, faster_gait
from server.plan.recordings import Recording

Floats = npt.NDArray[np.float64]

TRUE = Limits(walk_m_s=1.65, climb_m_per_h=700.0, downhill_m_s=3.1, fade=Fade(strength=1.3))
STARTED = datetime(2026, 5, 1, 8, 0, tzinfo=UTC)


def hills(rng: np.random.Generator, km: float, relief: float) -> tuple[Floats, Floats]:
    """Metres along every 10 m and heights, ending at the height of the start; relief: typical gradient."""
    n = int(km * 100)
    x = np.arange(n) * 10.0
    waves = rng.uniform(900.0, 6_000.0, 12)
    h = sum(np.sin(2 * np.pi * (x / w + rng.uniform())) * w for w in waves)
    h = h / np.std(np.diff(h) / 10.0) * relief
    return x, h - np.linspace(h[0], h[-1], n) + 300.0


def record(
    rng: np.random.Generator,
    km: float,
    relief: float,
    power: float,
    *,
    drift_m: float = 0.0,
    pauses: int = 2,
    name: str = "run",
    limits: Limits = TRUE,
    noise: float = 0.08,
) -> Recording:
    """What a watch writes every 3 s of a runner with known limits: noise of pace and height, drift,
    pauses."""
    x, h = hills(rng, km, relief)
    gradient = np.diff(h) / 10.0
    n = len(gradient)
    land = Terrain(x / 1000.0, np.full(n, 10.0), gradient, np.full(n, 50.0), np.zeros(n, dtype=np.bool_))
    scatter, keep = [0.0], np.exp(-10.0 / 300.0)
    for kick in rng.normal(0.0, 1.0, n - 1):
        scatter.append(keep * scatter[-1] + np.sqrt(1 - keep**2) * kick)
    starts = np.arange(n) * 4.0
    for _ in range(12):
        left = limits.fade.at(starts / 3600.0)
        speed = faster_gait(land, limits, power * left, left, np.zeros(n, dtype=np.bool_)).speed_m_s
        moving = 10.0 / speed * np.exp(noise * np.array(scatter))
        starts = np.concatenate([[0.0], np.cumsum(moving)[:-1]])
    still = np.zeros(n)
    still[rng.integers(5, n - 5, pauses)] = rng.uniform(120.0, 400.0, pauses)
    at = np.concatenate([[0.0], np.cumsum(np.column_stack([moving, still]).ravel())])
    where = np.concatenate([[0.0], np.repeat(x[1:], 2)])
    elapsed = np.arange(0.0, at[-1], 3.0)
    along = np.interp(elapsed, at, where)
    height = np.interp(along, x, h) + drift_m * elapsed / elapsed[-1] + rng.normal(0.0, 0.4, len(elapsed))
    # A circle as long as the run, so that positions and distance agree.
    turn = 2 * np.pi * along / float(along[-1])
    radius = float(along[-1]) / (2 * np.pi)
    lat = 50.0 + radius * np.sin(turn) / 111_229.0
    lon = 10.0 + radius * (1 - np.cos(turn)) / (111_320.0 * np.cos(np.radians(50.0)))
    return Recording(name, STARTED, elapsed, along, height, lat, lon)


def to_gpx(run: Recording, *, times: bool = True) -> bytes:
    """The recording as GPX 1.1."""
    rows = []
    for k in range(len(run.elapsed_s)):
        at = run.started + timedelta(seconds=float(run.elapsed_s[k]))
        time = f"<time>{at.strftime('%Y-%m-%dT%H:%M:%SZ')}</time>" if times else ""
        rows.append(
            f'<trkpt lat="{run.lat_deg[k]:.7f}" lon="{run.lon_deg[k]:.7f}">'
            f"<ele>{run.height_m[k]:.1f}</ele>{time}</trkpt>"
        )
    head = '<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>'
    return f"{head}{''.join(rows)}</trkseg></trk></gpx>".encode()


def to_tcx(run: Recording) -> bytes:
    """The recording as TCX."""
    rows = []
    for k in range(len(run.elapsed_s)):
        at = run.started + timedelta(seconds=float(run.elapsed_s[k]))
        rows.append(
            f"<Trackpoint><Time>{at.strftime('%Y-%m-%dT%H:%M:%SZ')}</Time><Position>"
            f"<LatitudeDegrees>{run.lat_deg[k]:.7f}</LatitudeDegrees>"
            f"<LongitudeDegrees>{run.lon_deg[k]:.7f}</LongitudeDegrees></Position>"
            f"<AltitudeMeters>{run.height_m[k]:.1f}</AltitudeMeters>"
            f"<DistanceMeters>{run.along_m[k]:.1f}</DistanceMeters></Trackpoint>"
        )
    return (
        '<?xml version="1.0"?><TrainingCenterDatabase '
        'xmlns="http://www.garmin.com/xmlschemas/TrainingCenterDatabase/v2"><Activities><Activity Sport="Running">'
        f'<Id>2026-05-01T08:00:00Z</Id><Lap StartTime="2026-05-01T08:00:00Z">'
        f"<TotalTimeSeconds>{run.elapsed_s[-1]:.0f}</TotalTimeSeconds><DistanceMeters>{run.along_m[-1]:.0f}"
        f"</DistanceMeters><Calories>100</Calories><Track>{''.join(rows)}</Track></Lap></Activity></Activities>"
        "</TrainingCenterDatabase>"
    ).encode()


def _crc(data: bytes) -> int:
    table = (0x0, 0xCC01, 0xD801, 0x1400, 0xF001, 0x3C00, 0x2800, 0xE401,
             0xA001, 0x6C00, 0x7800, 0xB401, 0x5000, 0x9C01, 0x8801, 0x4400)  # fmt: skip
    crc = 0
    for byte in data:
        for part in (byte & 0xF, byte >> 4):
            crc = ((crc >> 4) & 0x0FFF) ^ table[crc & 0xF] ^ table[part]
    return crc


def to_fit(run: Recording, sport: int | None = None) -> bytes:
    """The recording as a FIT activity: a file_id and record messages (global 20), by the published FIT
    protocol; with `sport` (1 running, 2 cycling) a session (global 18) after them."""
    body = struct.pack("<BBBHB", 0x40, 0, 0, 0, 1) + bytes([0, 1, 0]) + struct.pack("<BB", 0, 4)
    fields = ((253, 4, 0x86), (0, 4, 0x85), (1, 4, 0x85), (5, 4, 0x86), (2, 2, 0x84))
    body += struct.pack("<BBBHB", 0x41, 0, 0, 20, len(fields)) + b"".join(bytes(f) for f in fields)
    epoch = datetime(1989, 12, 31, tzinfo=UTC)
    start = int((run.started - epoch).total_seconds())
    circle = 2**31 / 180.0
    for t, lat, lon, x, h in zip(
        run.elapsed_s, run.lat_deg, run.lon_deg, run.along_m, run.height_m, strict=True
    ):
        body += struct.pack(
            "<BIiiIH",
            1,
            start + int(t),
            int(lat * circle),
            int(lon * circle),
            int(x * 100),
            int((h + 500) * 5),
        )
    if sport is not None:
        body += struct.pack("<BBBHB", 0x42, 0, 0, 18, 1) + bytes([5, 1, 0]) + struct.pack("<BB", 2, sport)
    head = struct.pack("<BBHI4s", 14, 0x20, 2100, len(body), b".FIT")
    head += struct.pack("<H", _crc(head))
    return head + body + struct.pack("<H", _crc(head + body))
