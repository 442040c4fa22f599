"""`python -m tests.plan.plan_tables FOLDER OUT --profile COURSE`: what the planner makes of the courses of the tables.

For each table of the folder, {table's name: seconds at its points}: the timetable that a user has who gives the course
(with heights, no results) and a target. A flat course is a level line. Read by `tests.research.fit` (`--plans`) and by the
scoring script (`--references`).
"""

import argparse
import json
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

import numpy as np

from server.course import Course, build_course, read_gpx
from server.event.model import Contact, CourseDef, Event, Goal, Point, PointKind, Rules, Runner, Target
from server.forecast.values import FloatArray
from server.plan import make_timetable
from tests.research.fit.planned import Profile, points_of, read_profile
from tests.research.fit.tables import read_table

KM_A_DEGREE = 111.2
"""Of latitude, roughly: the course is brought to its stated length afterwards."""
STEP_KM = 0.25


@dataclass(frozen=True, slots=True)
class Setting:
    """When and how far north a race is run, which says how long its night is: from memory, to the week and the degree."""

    lat_deg: float
    month: int
    day: int
    hour: int


SETTINGS = {"flat100": Setting(52.0, 8, 15, 4), "hill100": Setting(39.0, 6, 26, 13)}
"""Hours are UTC at longitude 0 for the flat, 120 W for the hills."""
LONGITUDES = {"flat100": 13.0, "hill100": -120.0}


def level(length_km: float) -> Profile:
    """A course without hills."""
    return Profile(np.array([0.0, length_km]), np.full(2, 100.0), {})


def course_of(profile: Profile, course: str) -> Course:
    """The line on the ground as the server reads it from a GPX file: northwards, heights as the profile has them."""
    lat, lon = SETTINGS[course].lat_deg, LONGITUDES[course]
    km = np.arange(0.0, profile.km[-1], STEP_KM)
    km = np.unique(np.concatenate([km, profile.km]))
    height = np.interp(km, profile.km, profile.height_m)
    track = "".join(
        f'<trkpt lat="{lat + k / KM_A_DEGREE:.7f}" lon="{lon}"><ele>{h:.1f}</ele></trkpt>'
        for k, h in zip(km, height, strict=True)
    )
    text = (
        '<gpx version="1.1" creator="fit" xmlns="http://www.topografix.com/GPX/1/1">'
        f"<trk><trkseg>{track}</trkseg></trk></gpx>"
    )
    return build_course(read_gpx(text.encode(), "route.gpx"), stated_km=float(profile.km[-1]))


def event_of(name: str, km: FloatArray, target_s: float, limit_s: float | None = None) -> Event:
    """The event of one runner, r, and her target: points p0 (the start) to pn at (n,) km, the last the finish."""
    where = SETTINGS[name]
    start = datetime(2027, where.month, where.day, where.hour, tzinfo=UTC)
    kinds = {0: PointKind.START, km.size: PointKind.FINISH}
    points = tuple(
        Point(
            f"p{k}",
            f"Point {k}",
            float(at),
            frozenset({kinds.get(k, PointKind.AID_STATION)}),
        )
        for k, at in enumerate([0.0, *km])
    )
    runner = Runner("r", "r", "R", "1", "main", start, Target(finish=timedelta(seconds=int(target_s))))
    limit = None if limit_s is None else timedelta(seconds=limit_s)
    return Event(
        "e",
        "E",
        "UTC",
        start,
        Rules(),
        (CourseDef("main", "route.gpx", points, ()),),
        (runner,),
        (),
        (),
        Contact("R", "+44 1632 960001"),
        "112",
        limit=limit,
    )


def planned(course: Course, name: str, km: FloatArray, target_s: float) -> FloatArray:
    """(n,) seconds at points (n,) km, the last the finish, of the planner's timetable for a target."""
    table = make_timetable(event_of(name, km, target_s), "r", course)
    return np.array([row.arrive[Goal.B].total_seconds() for row in table.rows[1:]])


def plans(folder: Path, profile: Profile, target_s: float) -> dict[str, FloatArray]:
    """By table's name; the profile is that of every table whose own description has no km."""
    out: dict[str, FloatArray] = {}
    made: dict[str, Course] = {}
    for path in sorted(folder.glob("*.csv")):
        if "_stops" in path.name:
            continue
        meta, _ = read_table(path)
        name = path.stem.split("_")[0]
        km = points_of(meta, profile)
        if km is None:
            continue
        hilly = "km" not in meta
        key = name if hilly else f"{name} {km[-1]}"
        if key not in made:
            made[key] = course_of(profile if hilly else level(float(km[-1])), name)
        out[path.stem] = planned(made[key], name, km, target_s)
    return out


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.plan.plan_tables", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("--profile", type=Path, required=True)
    parser.add_argument("--hours", type=float, default=24.0, help="the target")
    chosen = parser.parse_args()
    found = plans(chosen.folder, read_profile(chosen.profile), 3600.0 * chosen.hours)
    chosen.out.write_text(json.dumps({k: [round(float(s)) for s in p] for k, p in found.items()}) + "\n")


if __name__ == "__main__":
    main()
