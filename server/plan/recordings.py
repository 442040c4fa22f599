"""Her own runs as watches write them (GPX, FIT, TCX): bytes in, seconds, metres along and heights out.

GPX is first walked by the course room's reader, which refuses what is hostile; FIT is read by fitdecode,
TCX by tcxreader. What comes out is as recorded: cleaning is `learn`'s business.
"""

from __future__ import annotations

import io
import math
import warnings
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any, Final
from xml.etree.ElementTree import ParseError

import fitdecode
import numpy as np
import numpy.typing as npt
from lxml import etree
from pyproj import Geod
from tcxreader.tcxreader import TCXReader

from server.course import CourseError, read_gpx
from server.plan.errors import PlanError
from server.sentences import Worded, say

Floats = npt.NDArray[np.float64]

MAX_BYTES: Final = 60_000_000
LEAST_SAMPLES: Final = 60
LEAST_M: Final = 1_000.0
LEAST_S: Final = 300.0
LONGEST_S: Final = 8 * 86_400.0
EXPORT: Final = say("do-export-activity-again-from-watchs")

RIDES: Final = (
    "biking", "cycl", "bike", "ride", "swim", "row", "paddl", "kayak", "sail", "surf", "ski", "snowboard", "skat",
    "driv", "flying", "horseback", "motor", "transport", "boat",
)  # fmt: skip
"""Parts of the words by which FIT, TCX and GPX name a sport that is not on foot."""

_WGS84 = Geod(ellps="WGS84")


@dataclass(frozen=True, slots=True, eq=False)
class Recording:
    """One run as recorded. elapsed_s (n,) rising from 0; along_m (n,) never falling; height_m (n,), NaN where
    unknown; lat_deg, lon_deg (n,), NaN where unknown; started aware; file for messages."""

    file: str
    started: datetime
    elapsed_s: Floats
    along_m: Floats
    height_m: Floats
    lat_deg: Floats
    lon_deg: Floats


@dataclass(frozen=True, slots=True)
class _Sample:
    at: datetime
    lat: float = math.nan
    lon: float = math.nan
    height_m: float = math.nan
    along_m: float = math.nan


def read_recording(data: bytes, file: str) -> Recording:
    """A recording from the bytes of a GPX, FIT or TCX file, told apart by their content.

    Errors: PlanError naming the file for what is no such file, has no times, or is no run that can be
    learnt from.
    """
    if len(data) > MAX_BYTES:
        raise _wrong(
            file,
            say(
                "wrong-mb-more",
                mb=f"{len(data) / 1000000.0:.0f}",
                most_mb=f"{MAX_BYTES / 1000000.0:.0f}",
            ),
            say("do-give-activity"),
        )
    if not data.strip():
        raise _wrong(file, say("wrong-empty"), EXPORT)
    head = data[:2048].lstrip(b"\xef\xbb\xbf \r\n\t")
    reader: Callable[[bytes, str], Iterable[_Sample]]
    if data[8:12] == b".FIT":
        reader = _fit
    elif b"<TrainingCenterDatabase" in head:
        reader = _tcx
    elif head.startswith(b"<"):
        reader = _gpx
    else:
        raise _wrong(file, say("wrong-neither-gpx-nor-fit-nor"), EXPORT)
    return _recording(list(reader(data, file)), file)


def _on_foot(sport: object, file: str) -> None:
    """Refuse what the watch itself calls another sport; a word that nobody knows is let pass."""
    word = str(sport or "").strip().casefold().replace("_", " ")
    ride = next((r for r in RIDES if r in word), None)
    if ride is not None:
        raise _wrong(
            file, say("wrong-watch-calls-not-run", word=word), say("do-give-recordings-runs-hikes-only")
        )


def _wrong(file: str, what: Worded, remedy: Worded) -> PlanError:
    return PlanError(what, field=file, remedy=remedy, file=file)


def _gpx(data: bytes, file: str) -> Iterable[_Sample]:
    try:
        read_gpx(data, file)
    except CourseError as error:
        place = file if error.line is None else f"{file}, line {error.line}"
        raise PlanError(error.what, field=place, remedy=error.remedy, file=file, line=error.line) from error
    samples: list[_Sample] = []
    parsing = etree.iterparse(
        io.BytesIO(data), tag=("{*}trkpt", "{*}type"), resolve_entities=False, no_network=True
    )
    for _, point in parsing:
        if str(point.tag).endswith("type"):
            parent = point.getparent()
            if parent is not None and str(parent.tag).endswith("trk"):
                _on_foot(point.text, file)
            continue
        at = _time(point.findtext("{*}time"))
        if at is not None:
            height = _number(point.findtext("{*}ele"))
            samples.append(_Sample(at, _number(point.get("lat")), _number(point.get("lon")), height))
        point.clear()
    if not samples:
        raise _wrong(file, say("wrong-no-track-point-time-so"), EXPORT)
    return samples


def _number(text: str | None) -> float:
    try:
        return float(text) if text is not None else math.nan
    except ValueError:
        return math.nan


def _time(text: str | None) -> datetime | None:
    """An instant; without an offset GPX means UTC. None for what is no time."""
    try:
        at = datetime.fromisoformat(text.strip()) if text else None
    except ValueError:
        return None
    return at.replace(tzinfo=UTC) if at is not None and at.tzinfo is None else at


def _fit(data: bytes, file: str) -> Iterable[_Sample]:
    samples: list[_Sample] = []
    try:
        with warnings.catch_warnings():
            # Watches write fields their own profile calls odd; only a damaged file matters here, and that
            # raises.
            warnings.simplefilter("ignore")
            with fitdecode.FitReader(io.BytesIO(data), check_crc=fitdecode.CrcCheck.RAISE) as frames:
                for frame in frames:
                    if frame.frame_type != fitdecode.FIT_FRAME_DATA:
                        continue
                    if frame.name == "record":
                        samples.append(_fit_sample(frame))
                    elif frame.name in ("sport", "session"):
                        _on_foot(frame.get_value("sport", fallback=None), file)
    except (fitdecode.FitError, ValueError, KeyError, TypeError, OverflowError) as error:
        raise _wrong(file, say("wrong-fit-file-damaged", error=error), EXPORT) from error
    return [s for s in samples if s.at.tzinfo is not None]


def _fit_sample(frame: Any) -> _Sample:
    def value(*names: str) -> float:
        for name in names:
            found = frame.get_value(name, fallback=None)
            if isinstance(found, int | float):
                return float(found)
        return math.nan

    at = frame.get_value("timestamp", fallback=None)
    semicircle = 180.0 / 2**31
    return _Sample(
        at if isinstance(at, datetime) else datetime.min,  # noqa: DTZ901
        value("position_lat") * semicircle,
        value("position_long") * semicircle,
        value("enhanced_altitude", "altitude"),
        value("distance"),
    )


def _tcx(data: bytes, file: str) -> Iterable[_Sample]:
    if b"<!DOCTYPE" in data or b"<!ENTITY" in data:
        raise _wrong(file, say("wrong-file-declares-doctype-tcx-never"), EXPORT)
    try:
        activity = TCXReader().read(io.BytesIO(data), only_gps=False)
        points = activity.trackpoints
    except (ParseError, ValueError, TypeError, AttributeError, KeyError) as error:
        raise _wrong(file, say("wrong-tcx-file-damaged", error=error), EXPORT) from error
    _on_foot(activity.activity_type, file)
    return [_tcx_sample(p) for p in points if isinstance(p.time, datetime)]


def _tcx_sample(point: Any) -> _Sample:
    def value(found: object) -> float:
        return float(found) if isinstance(found, int | float) else math.nan

    # tcxreader drops the offset of a time that TCX always writes in UTC.
    at = point.time.replace(tzinfo=UTC) if point.time.tzinfo is None else point.time
    places = (value(point.latitude), value(point.longitude))
    return _Sample(at, *places, value(point.elevation), value(point.distance))


def _recording(samples: list[_Sample], file: str) -> Recording:
    """Samples in order of time, a moment once, measured along; refused where too short or senseless."""
    by_time = {s.at: s for s in samples}
    ordered = [by_time[at] for at in sorted(by_time)]
    if len(ordered) < LEAST_SAMPLES:
        raise _wrong(
            file,
            say("wrong-samples-time-least-needed", count=len(ordered), least=LEAST_SAMPLES),
            EXPORT,
        )
    started = ordered[0].at.astimezone(UTC)
    elapsed = np.array([(s.at - started).total_seconds() for s in ordered])
    lat, lon, height = (np.array([getattr(s, n) for s in ordered]) for n in ("lat", "lon", "height_m"))
    # A position off the globe is a device's mark for 'none'.
    lost = ~((np.abs(lat) <= 90.0) & (np.abs(lon) <= 180.0))
    lat[lost], lon[lost] = np.nan, np.nan
    height[~((height >= -500.0) & (height <= 9_000.0))] = np.nan
    along = _along(np.array([s.along_m for s in ordered]), lat, lon, file)
    if float(elapsed[-1]) < LEAST_S or float(along[-1]) < LEAST_M:
        raise _wrong(
            file,
            say(
                "wrong-km-min-too-short-learn",
                km=f"{along[-1] / 1000:.1f}",
                minutes=f"{elapsed[-1] / 60:.0f}",
            ),
            say("do-give-runs-more-kilometre-five"),
        )
    if float(elapsed[-1]) > LONGEST_S:
        raise _wrong(
            file, say("wrong-lasts-days", days=f"{elapsed[-1] / 86400:.0f}"), say("do-give-activity-file")
        )
    return Recording(file, started, elapsed, along, height, lat, lon)


def _along(measured: Floats, lat: Floats, lon: Floats, file: str) -> Floats:
    """Metres along (n,): the watch's own distance where it has one, else between positions (WGS 84)."""
    n = len(measured)
    known = np.flatnonzero(np.isfinite(measured))
    if len(known) >= max(LEAST_SAMPLES, n // 2):
        whole = np.interp(np.arange(n), known, measured[known])
        return np.asarray(np.maximum.accumulate(whole - whole[0]))
    placed = np.flatnonzero(np.isfinite(lat) & np.isfinite(lon))
    if len(placed) < LEAST_SAMPLES:
        raise _wrong(file, say("wrong-neither-distances-nor-positions"), EXPORT)
    _, _, legs = _WGS84.inv(lon[placed[:-1]], lat[placed[:-1]], lon[placed[1:]], lat[placed[1:]])
    return np.asarray(np.interp(np.arange(n), placed, np.concatenate([[0.0], np.cumsum(legs)])))
