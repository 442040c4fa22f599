"""Recordings in every format, cleaned; and a runner who is known, learnt back from them."""

from __future__ import annotations

import importlib.util
import re
import sys
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from types import ModuleType

import numpy as np
import pytest

from server.event.model import Goal, Target
from server.plan import PlanError, make_timetable
from server.plan.learn import learn, steps_of
from server.plan.recordings import Recording, read_recording
from tests.plan.english import said, source

ROOT = Path(__file__).resolve().parents[2]


def _load(name: str) -> ModuleType:
    spec = importlib.util.spec_from_file_location(name, ROOT / f"tests/plan/{name}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[name] = module
    spec.loader.exec_module(module)
    return module


made = _load("synthetic")


@pytest.fixture(scope="module")
def short_run() -> Recording:
    """12 km with a pause."""
    return made.record(np.random.default_rng(3), 12.0, 0.06, 9.5, pauses=1)


class TestFormats:
    """GPX, FIT and TCX of one run are one run."""

    @pytest.mark.parametrize("kind", ["gpx", "fit", "tcx"])
    def test_same_run_from_each(self, short_run, kind: str) -> None:
        """Distance within 0.5 %, time to the second, heights within half a metre."""
        found = read_recording(getattr(made, f"to_{kind}")(short_run), f"run.{kind}")
        assert found.started == short_run.started
        assert found.elapsed_s[-1] == pytest.approx(short_run.elapsed_s[-1], abs=1.0)
        assert found.along_m[-1] == pytest.approx(short_run.along_m[-1], rel=0.005)
        n = min(len(found.height_m), len(short_run.height_m))
        assert np.abs(found.height_m[:n] - short_run.height_m[:n]).max() <= 0.5

    def test_a_track_out_of_order_is_put_in_order(self, short_run) -> None:
        """Samples in any order, some of them twice, give the same recording."""
        data = made.to_gpx(short_run).decode()
        head, rest = data.split("<trkseg>")
        points = rest.removesuffix("</trkseg></trk></gpx>").split("</trkpt>")[:-1]
        rng = np.random.default_rng(1)
        mixed = [points[k] for k in rng.permutation(len(points))] + points[:50]
        again = f"{head}<trkseg>{'</trkpt>'.join(mixed)}</trkpt></trkseg></trk></gpx>".encode()
        a, b = read_recording(data.encode(), "a.gpx"), read_recording(again, "b.gpx")
        np.testing.assert_array_equal(a.elapsed_s, b.elapsed_s)
        np.testing.assert_array_equal(a.along_m, b.along_m)


class TestCleaning:
    """Pauses, jumps, drift."""

    def test_pauses_are_left_out(self, short_run) -> None:
        """Standing still is no slow running: what is left is the moving time, to 2 %."""
        steps = steps_of(short_run)
        assert 90.0 <= steps.paused_s <= 450.0
        moving = float(short_run.elapsed_s[-1]) - steps.paused_s
        assert float(steps.seconds.sum()) == pytest.approx(moving, rel=0.02)

    @pytest.mark.parametrize("drift", [-30.0, 0.0, 25.0])
    def test_drift_is_taken_out(self, drift: float) -> None:
        """On a run back to its start the barometer's drift is found to within 3 m."""
        run = made.record(np.random.default_rng(5), 15.0, 0.05, 9.0, drift_m=drift)
        assert steps_of(run).drift_m == pytest.approx(drift, abs=3.0)

    def test_drift_is_no_ground(self) -> None:
        """A run back to its start goes up as much as down, however far the barometer drifted."""
        runs = [made.record(np.random.default_rng(5), 15.0, 0.05, 9.0, drift_m=d) for d in (0.0, 80.0)]
        for run in runs:
            steps = steps_of(run)
            assert abs(float((steps.gradient * steps.step_m).sum())) < 12.0

    def test_a_way_from_a_to_b_has_no_drift(self) -> None:
        """Where she did not come back, a difference in height is ground, not drift."""
        run = made.record(np.random.default_rng(5), 15.0, 0.05, 9.0, drift_m=40.0)
        away = Recording(
            run.file,
            run.started,
            run.elapsed_s,
            run.along_m,
            run.height_m,
            run.lat_deg + run.along_m * 1e-5,
            run.lon_deg,
        )
        assert steps_of(away).drift_m == 0.0

    def test_jumps_are_left_out(self, short_run) -> None:
        """Two jumps of the fix over a kilometre change the mean speed by less than 1 %."""
        along = short_run.along_m.copy()
        for k in (500, 900):
            along[k:] += 1_000.0
        torn = Recording(
            "torn",
            short_run.started,
            short_run.elapsed_s,
            along,
            short_run.height_m,
            short_run.lat_deg,
            short_run.lon_deg,
        )
        a, b = steps_of(short_run), steps_of(torn)
        assert b.jumps == 2
        assert float(b.step_m.sum() / b.seconds.sum()) == pytest.approx(
            float(a.step_m.sum() / a.seconds.sum()), rel=0.01
        )


class TestLearner:
    """The known runner comes back out."""

    @pytest.mark.parametrize("number", range(4))
    def test_a_known_runner_is_recovered(self, number: int) -> None:
        """Five runs with pauses, drift and noise: each limit is within 8 % (fade 20 %) of the truth and
        inside
        twice its own stated 10 to 90 % band; each run's power within 8 %."""
        rng = np.random.default_rng(number)
        plans = [
            (38, 0.11, 9.5, 25.0),
            (22, 0.13, 10.5, -15.0),
            (15, 0.02, 11.0, 0.0),
            (30, 0.10, 9.0, 0.0),
            (60, 0.10, 8.5, 10.0),
        ]
        runs = [
            made.record(rng, km, r, p, drift_m=d, name=f"run{k}") for k, (km, r, p, d) in enumerate(plans)
        ]
        found = learn([steps_of(r) for r in runs])
        truth = {
            "walk_m_s": (made.TRUE.walk_m_s, 0.08),
            "climb_m_per_h": (made.TRUE.climb_m_per_h, 0.08),
            "downhill_m_s": (made.TRUE.downhill_m_s, 0.08),
            "fade_strength": (made.TRUE.fade.strength, 0.20),
        }
        for name, (value, within) in truth.items():
            figure = found.figure(name)
            assert figure.value == pytest.approx(value, rel=within), name
            band = np.log(figure.high / figure.low)
            assert abs(np.log(figure.value / value)) <= band, name
        for run, (_, _, true, _) in zip(found.powers, plans, strict=True):
            assert run.w_kg == pytest.approx(true, rel=0.08)

    def test_where_there_is_no_data_the_published_curve_holds(self) -> None:
        """From level runs alone nothing is claimed of hills: corrections there are nil and bands stay
        wide."""
        rng = np.random.default_rng(2)
        found = learn([steps_of(made.record(rng, 12.0, 0.004, p)) for p in (10.0, 10.5)])
        by_gradient = dict(found.limits.by_gradient)
        assert by_gradient[-0.30] == 1.0
        assert by_gradient[0.30] == 1.0
        assert found.figure("climb_m_per_h").high / found.figure("climb_m_per_h").low > 2.0
        assert {g.gradient: g.own for g in found.gait}[0.20] == 0.0
        assert any("longest run" in n for n in said(found.notes))

    def test_more_runs_are_surer(self) -> None:
        """With five times the data the bands are narrower."""
        rng = np.random.default_rng(8)
        runs = [steps_of(made.record(rng, 20.0, 0.10, 9.5, name=f"r{k}")) for k in range(5)]
        one, five = learn(runs[:1]), learn(runs)
        for name in ("climb_m_per_h", "downhill_m_s"):
            a, b = one.figure(name), five.figure(name)
            assert b.high / b.low < a.high / a.low

    def test_it_feeds_the_planner(self, demo_course, make_event) -> None:
        """A timetable from her own runs says so and follows her climb rate."""
        rng = np.random.default_rng(4)
        found = learn([steps_of(made.record(rng, 30.0, 0.10, 9.0, name=f"r{k}")) for k in range(3)])
        event = make_event(Target(finish=timedelta(hours=30)))
        table = make_timetable(event, "maren", demo_course, own=found.own_pace())
        assert table.quality == "own data"
        assert "3 of her own runs" in source(table.source)
        assert table.rows[-1].arrive[Goal.B] == timedelta(hours=30)

    def test_too_little_is_refused(self) -> None:
        """No runs, or next to none, teach nothing."""
        with pytest.raises(PlanError, match="under 3 km"):
            learn([])


def _cut(data: bytes) -> bytes:
    return data[: len(data) // 2]


BAD = [
    ("empty", b"", "it is empty"),
    ("blank", b"  \n ", "it is empty"),
    ("text", b"I ran ten kilometres", "neither GPX nor FIT nor TCX"),
    ("json", b'{"run": 1}', "neither GPX nor FIT nor TCX"),
    ("picture", b"\x89PNG\r\n\x1a\n" + bytes(100), "neither GPX nor FIT nor TCX"),
    ("web page", b"<!DOCTYPE html><html><body>log in</body></html>", "web page"),
    ("kml", b"<kml><Document/></kml>", "KML"),
    ("entity bomb", b'<!DOCTYPE gpx [<!ENTITY a "aaaaaaaa">]><gpx>&a;</gpx>', "DOCTYPE"),
    ("nested tags", b"<gpx>" + b"<a>" * 150_000, ""),
    ("route without times", "route", "no track point has a time"),
    ("cut gpx", "cut gpx", ""),
    ("cut fit", "cut fit", "FIT file is damaged"),
    ("fit with a wrong byte", "bent fit", "FIT file is damaged"),
    ("fit header alone", b"\x0e\x20\x34\x08\x00\x00\x00\x00.FIT\x00\x00", ""),
    ("cut tcx", "cut tcx", "TCX file is damaged"),
    ("tcx with a DOCTYPE", b"<!DOCTYPE x><TrainingCenterDatabase/>", "DOCTYPE"),
    ("tcx without activities", b'<TrainingCenterDatabase xmlns="x"/>', "samples with a time"),
    ("latitude 95", "lat 95", "lat '95"),
    ("one kilometre short", "short", "too short to learn from"),
    ("two samples", "two", "samples with a time"),
    ("three minutes", "three minutes", "too short to learn from"),
    ("a ride by FIT", "fit ride", "the watch calls it 'cycling', not a run"),
    ("a ride by TCX", "tcx ride", "the watch calls it 'biking', not a run"),
    ("a ride by GPX", "gpx ride", "the watch calls it 'cycling', not a run"),
    ("tcx with neither places nor distances", "tcx of times", "neither distances nor positions"),
]


@pytest.mark.parametrize(("name", "data", "what"), BAD, ids=[b[0] for b in BAD])
def test_bad_recordings(short_run, name: str, data: bytes | str, what: str) -> None:
    """Each of these files is refused with a PlanError that names the file and what to do."""
    if isinstance(data, str):
        gpx = made.to_gpx(short_run)
        bent = bytearray(made.to_fit(short_run))
        bent[len(bent) // 2] ^= 0xFF
        made_up = {
            "route": made.to_gpx(short_run, times=False),
            "cut gpx": _cut(gpx),
            "cut fit": _cut(made.to_fit(short_run)),
            "bent fit": bytes(bent),
            "cut tcx": _cut(made.to_tcx(short_run)),
            "lat 95": gpx.replace(b'lat="50.', b'lat="95.', 1),
            "short": made.to_gpx(_first(short_run, 80)),
            "two": made.to_gpx(_first(short_run, 2)),
            "three minutes": made.to_gpx(_first(short_run, 61)),
            "fit ride": made.to_fit(short_run, sport=2),
            "tcx ride": made.to_tcx(short_run).replace(b'Sport="Running"', b'Sport="Biking"'),
            "gpx ride": gpx.replace(b"<trk>", b"<trk><type>cycling</type>"),
            "tcx of times": re.sub(
                rb"<Position>.*?</Position>|<DistanceMeters>.*?</DistanceMeters>", b"", made.to_tcx(short_run)
            ),
        }
        data = made_up[data]
    with pytest.raises(PlanError) as caught:
        read_recording(data, "run.dat")
    assert what in str(caught.value.what)
    assert caught.value.field.startswith("run.dat")
    assert caught.value.remedy


def _first(run: Recording, n: int) -> Recording:
    return Recording(
        run.file,
        run.started,
        *(a[:n] for a in (run.elapsed_s, run.along_m, run.height_m, run.lat_deg, run.lon_deg)),
    )


@pytest.mark.parametrize("sport", ["fit", "tcx", "gpx", "odd"])
def test_a_run_that_says_so_is_read(short_run, sport: str) -> None:
    """A watch that names the run a run is believed, and so is one that names something nobody knows."""
    gpx = made.to_gpx(short_run)
    data = {
        "fit": made.to_fit(short_run, sport=1),
        "tcx": made.to_tcx(short_run),
        "gpx": gpx.replace(b"<trk>", b"<trk><type>trail_running</type>"),
        "odd": gpx.replace(b"<trk>", b"<trk><type>9</type>"),
    }[sport]
    assert read_recording(data, "run").along_m[-1] == pytest.approx(float(short_run.along_m[-1]), rel=0.01)


def test_what_nobody_runs_is_a_ride(short_run) -> None:
    """12 km at 26 km/h, called a run: no pace is learnt from it; at 15 km/h a fast runner is believed."""
    whole = float(short_run.along_m[-1])

    def at(kmh: float) -> Recording:
        elapsed = short_run.along_m / (kmh / 3.6) + np.arange(len(short_run.along_m)) * 1e-3
        return replace(short_run, elapsed_s=elapsed)

    with pytest.raises(PlanError, match="faster than anybody has run"):
        steps_of(at(26.0))
    assert float(steps_of(at(15.0)).step_m.sum()) > 0.9 * whole


def test_without_heights_nothing_is_learnt_of_hills(short_run) -> None:
    """A recording without heights is refused, and says which watch would do."""
    flat = Recording(
        "x", short_run.started, short_run.elapsed_s, short_run.along_m, np.full(len(short_run.along_m), np.nan),
        short_run.lat_deg, short_run.lon_deg,
    )  # fmt: skip
    with pytest.raises(PlanError, match="no heights"):
        steps_of(flat)


def test_a_recording_that_stands_still_is_refused(short_run) -> None:
    """A watch forgotten on a table gives no pace."""
    still = Recording(
        "x", short_run.started, short_run.elapsed_s, np.linspace(0, 1_100.0, len(short_run.along_m)) ** 0.0,
        short_run.height_m, short_run.lat_deg, short_run.lon_deg,
    )  # fmt: skip
    with pytest.raises(PlanError, match="pauses and jumps"):
        steps_of(still)
