"""Sunrise, sunset and twilight against another implementation: skyfield with the JPL ephemeris of skyfield-
data."""

from __future__ import annotations

import warnings
from datetime import UTC, datetime, timedelta, timezone

import numpy as np
import pytest
from skyfield.api import Loader, wgs84
from skyfield_data import get_skyfield_data_path

from server.plan.light import (
    CIVIL_DEG,
    HORIZON_DEG,
    SunEvent,
    dark_kit,
    light_moments,
    sky_over,
    sun_elevation_deg,
)

PLACES = [(54.9, -2.6), (50.0, 10.0), (-33.9, 18.4), (0.0, -78.5), (65.0, 25.0), (39.2, -120.2)]
DATES = [
    datetime(2027, 6, 19, tzinfo=UTC),
    datetime(2026, 12, 21, tzinfo=UTC),
    datetime(2027, 3, 27, tzinfo=UTC),
]


@pytest.fixture(scope="module")
def ephemeris():
    """The JPL ephemeris from its wheel, and skyfield's time scale from built-in files: no download."""
    with warnings.catch_warnings():
        # The wheel's table of the earth's rotation is past its date; the built-in time scale stands in for
        # it.
        warnings.filterwarnings(
            "ignore", message="The file finals2000A.all has expired", category=RuntimeWarning
        )
        path = get_skyfield_data_path()
    load = Loader(path, expire=False)
    return load("de421.bsp"), load.timescale(builtin=True)


@pytest.mark.parametrize(("lat", "lon"), PLACES)
@pytest.mark.parametrize("date", DATES)
def test_elevation_agrees_with_the_ephemeris(ephemeris, lat: float, lon: float, date: datetime) -> None:
    """Every three hours of a day the sun's elevation is within 0.03 degrees of the JPL ephemeris."""
    planets, scale = ephemeris
    place = planets["earth"] + wgs84.latlon(lat, lon)
    for hour in range(0, 24, 3):
        at = date + timedelta(hours=hour)
        altitude = place.at(scale.from_datetime(at)).observe(planets["sun"]).apparent().altaz()[0].degrees
        assert sun_elevation_deg(lat, lon, at) == pytest.approx(altitude, abs=0.03)


@pytest.mark.parametrize(("lat", "lon"), PLACES[:4])
def test_moments_agree_with_the_ephemeris(ephemeris, lat: float, lon: float) -> None:
    """Each dawn, sunrise, sunset and dusk of two days is within 40 s of when the ephemeris crosses that
    height."""
    planets, scale = ephemeris
    place = planets["earth"] + wgs84.latlon(lat, lon)
    start = datetime(2027, 9, 4, 5, 0, tzinfo=UTC)
    km = np.array([0.0, 100.0])
    sky = sky_over(km, np.array([lat, lat]), np.array([lon, lon]), start, 48 * 3600.0)
    found = light_moments(sky, np.array([0.0, 47 * 3600.0]), km)
    assert len(found) >= 6
    for moment in found:
        level = CIVIL_DEG if moment.event in (SunEvent.DAWN, SunEvent.DUSK) else HORIZON_DEG
        sides = [
            place.at(scale.from_datetime(moment.at + timedelta(seconds=d))).observe(planets["sun"]).apparent()
            .altaz()[0].degrees - level
            for d in (-40, 40)
        ]  # fmt: skip
        assert sides[0] * sides[1] < 0


def test_the_horizon_is_where_the_almanacs_have_it() -> None:
    """Sunrise and sunset: the sun's centre 50' under the horizon, 34' of refraction and 16' of half the disc (the
    almanacs' convention, from memory); civil twilight ends at 6 degrees."""
    assert pytest.approx(-50.0 / 60.0, abs=0.001) == HORIZON_DEG
    assert CIVIL_DEG == -6.0


def test_a_dusk_after_midnight_is_found_in_order() -> None:
    """Where summer dusk falls after midnight by the clock, the moments still come in the order lived."""
    start = datetime(2027, 6, 20, 12, 0, tzinfo=timezone(timedelta(hours=3)))
    km = np.array([0.0, 60.0])
    sky = sky_over(km, np.array([59.5, 59.5]), np.array([25.0, 25.0]), start, 30 * 3600.0)
    found = light_moments(sky, np.array([0.0, 28 * 3600.0]), km)
    assert [m.elapsed for m in found] == sorted(m.elapsed for m in found)
    dusk = next(m for m in found if m.event is SunEvent.DUSK)
    assert dusk.at.astimezone(timezone(timedelta(hours=3))).hour == 0
    assert dusk.at.astimezone(timezone(timedelta(hours=3))).day == 21


def test_a_night_that_never_comes() -> None:
    """North of the polar circle at midsummer nothing is dark and nothing fails."""
    km = np.array([0.0, 100.0])
    sky = sky_over(km, np.full(2, 70.0), np.full(2, 25.0), datetime(2027, 6, 20, tzinfo=UTC), 40 * 3600.0)
    line = np.array([0.0, 39 * 3600.0])
    assert light_moments(sky, line, km) == ()
    assert dark_kit(sky, line, km, np.array([True, True])) == ()


def test_a_day_that_never_comes() -> None:
    """At midwinter up there it is dark for kit from start to end."""
    km = np.array([0.0, 50.0])
    sky = sky_over(km, np.full(2, 72.0), np.full(2, 25.0), datetime(2026, 12, 21, tzinfo=UTC), 12 * 3600.0)
    parts = dark_kit(sky, np.array([0.0, 11 * 3600.0]), km, np.array([False, False]))
    assert len(parts) == 1
    assert (parts[0].from_km, parts[0].to_elapsed) == (0.0, timedelta(hours=11))


@pytest.mark.parametrize("minutes", [0, 0.3, 0.7])
def test_the_torch_is_told_of_from_the_sunset_on_and_not_past_the_finish(minutes: float) -> None:
    """Sunset at 21:34 and 'torch from 21:35' on one page would be two numbers for one thing; so would an end of the
    torch after her finish."""
    km = np.array([0.0, 60.0])
    start = datetime(2027, 6, 19, 18, 0, tzinfo=UTC) + timedelta(minutes=minutes)
    sky = sky_over(km, np.full(2, 54.9), np.full(2, -2.6), start, 8 * 3600.0)
    line = np.array([0.0, 5 * 3600.0 + 17.0])
    (sunset,) = [m for m in light_moments(sky, line, km) if m.event is SunEvent.SUNSET]
    (part,) = dark_kit(sky, line, km, np.zeros(2, dtype=np.bool_))
    assert abs(sunset.at - part.from_at) <= timedelta(seconds=2)
    assert part.from_km == pytest.approx(sunset.km, abs=0.01)
    assert part.to_elapsed == timedelta(seconds=float(line[-1]))
    assert part.to_km == pytest.approx(60.0)


def test_forest_is_dark_half_an_hour_earlier() -> None:
    """Under trees the torch is needed 30 min before sunset and until 30 min after sunrise."""
    km = np.array([0.0, 30.0, 60.0])
    start = datetime(2027, 6, 19, 18, 0, tzinfo=UTC)
    sky = sky_over(km, np.full(3, 54.9), np.full(3, -2.6), start, 14 * 3600.0)
    line = np.array([0.0, 6 * 3600.0, 12 * 3600.0])
    open_ground = dark_kit(sky, line, km, np.zeros(3, dtype=np.bool_))
    forest = dark_kit(sky, line, km, np.ones(3, dtype=np.bool_))
    assert open_ground[0].from_at - forest[0].from_at == pytest.approx(
        timedelta(minutes=30), abs=timedelta(minutes=1)
    )
    assert forest[0].to_at - open_ground[0].to_at == pytest.approx(
        timedelta(minutes=30), abs=timedelta(minutes=1)
    )


def test_dark_for_pace_is_civil_night() -> None:
    """For pace it is dark just when the sun is lower than 6 degrees, not from sunset."""
    km = np.array([0.0, 30.0])
    start = datetime(2027, 6, 19, 18, 0, tzinfo=UTC)
    sky = sky_over(km, np.full(2, 54.9), np.full(2, -2.6), start, 14 * 3600.0)
    times = np.arange(0.0, 12 * 3600.0, 60.0)
    where = np.zeros_like(times)
    exact = np.array([sun_elevation_deg(54.9, -2.6, start + timedelta(seconds=float(t))) for t in times])
    clear = np.abs(exact + 6.0) > 0.03
    np.testing.assert_array_equal(sky.dark_for_pace(times, where)[clear], (exact < -6.0)[clear])


def test_a_time_without_its_offset_is_refused() -> None:
    """A naive time is never quietly taken as some zone's."""
    with pytest.raises(ValueError, match="aware"):
        sun_elevation_deg(50.0, 10.0, datetime(2027, 6, 19, 12, 0))  # noqa: DTZ001
    with pytest.raises(ValueError, match="aware"):
        sky_over(np.array([0.0, 1.0]), np.zeros(2), np.zeros(2), datetime(2027, 6, 19), 60.0)  # noqa: DTZ001


def test_a_change_of_the_clocks_moves_no_sunrise() -> None:
    """In the night the clocks go forward, sunrise is where the sun is, not an hour off."""
    from zoneinfo import ZoneInfo

    km = np.array([0.0, 50.0])
    local = datetime(2027, 3, 27, 20, 0, tzinfo=ZoneInfo("Europe/Berlin"))
    skies = [
        sky_over(km, np.full(2, 50.0), np.full(2, 10.0), s, 16 * 3600.0)
        for s in (local, local.astimezone(UTC))
    ]
    both = [light_moments(s, np.array([0.0, 15 * 3600.0]), km) for s in skies]
    assert [m.at for m in both[0]] == [m.at for m in both[1]]
