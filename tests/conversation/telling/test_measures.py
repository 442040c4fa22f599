"""Distances, odds, coordinates in words."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pyproj import Transformer

from server.conversation.telling import measures
from server.conversation.telling.reader import Reader

KM = Reader("en", "UTC", "UTC")
MILES = Reader("en", "UTC", "UTC", miles=True)


def test_distances() -> None:
    """km or miles as the reader wants; a marathon is 42.195 km = 26.2 miles (World Athletics rule, from
    memory)."""
    assert measures.distance(42.195, KM) == "42.2 km"
    assert measures.distance(42.195, MILES) == "26.2 miles"
    assert measures.distance(12.34, Reader("de", "UTC", "UTC")) == "12,3 km"


@given(st.floats(0, 300), st.floats(0, 50))
def test_an_estimated_stretch_is_never_shortened(low: float, more: float) -> None:
    """The ends of an estimate are whole units, rounded away from each other."""
    a, b = measures.stretch(low, low + more, KM)
    assert float(a.split()[0]) <= low
    assert float(b.split()[0]) >= low + more


@given(st.floats(0, 1))
def test_odds_are_never_certain(p: float) -> None:
    """No probability reads as 'never' or 'always'; between, the tenth named is within 0.05 of it."""
    said = measures.odds(p, "en")
    assert "0 in 10" not in said.replace("10 in 10", "10 of 10")
    assert "10 in 10" not in said
    if said.startswith("about"):
        assert abs(int(said.split()[1]) / 10 - p) <= 0.051
    else:
        assert said == ("under 1 in 20" if p < 0.05 else "over 19 in 20")


@pytest.mark.parametrize("p", [-0.1, 1.1, float("nan")])
def test_no_odds_outside_0_to_1(p: float) -> None:
    """What is no probability is refused."""
    with pytest.raises(ValueError, match="between 0 and 1"):
        measures.odds(p, "en")


@given(st.floats(-80, 84), st.floats(-180, 179.999))
def test_utm_leads_back_to_the_place(lat: float, lon: float) -> None:
    """Read on a map, the reference is within two metres of the place it was made from (cut to whole
    metres)."""
    zone_band, easting, northing = measures.utm(lat, lon).split()
    code = (32600 if lat >= 0 else 32700) + int(zone_band[:2])
    back_lon, back_lat = Transformer.from_crs(code, 4326, always_xy=True).transform(
        float(easting), float(northing)
    )
    assert abs(back_lat - lat) < 3e-5
    turn = abs(back_lon - lon) % 360
    assert min(turn, 360 - turn) < 3e-4 or abs(lat) > 80


@pytest.mark.parametrize(
    ("lat", "lon", "zone"),
    [
        (54.9, -2.6, "30U"),
        (60.39, 5.32, "32V"),  # Bergen: zone 32 is widened there
        (78.22, 15.65, "33X"),  # Longyearbyen: Svalbard's wide zones
        (-33.86, 151.2, "56H"),  # Sydney
        (0.0, 0.0, "31N"),
        (84.0, 20.0, "33X"),
    ],
)
def test_zones_as_printed_on_maps(lat: float, lon: float, zone: str) -> None:
    """Zone and band as on printed maps, with the exceptions off Norway and Svalbard (from memory)."""
    assert measures.utm(lat, lon).startswith(zone)


def test_no_utm_near_the_poles() -> None:
    """UTM ends at 84° N and 80° S: beyond it only degrees are read out."""
    with pytest.raises(ValueError, match="UTM covers"):
        measures.utm(85, 0)
    assert "UTM" not in measures.place(85, 0, "en")
    assert measures.place(54.9, -2.6, "en") == "54.90000 north, 2.60000 west (UTM 30U 525650 6083736)"


def test_lists_without_a_comma_before_and() -> None:
    """Lists read as written in Britain, and in German with 'und'."""
    assert measures.listing(["poles", "socks", "soup"], "en") == "poles, socks and soup"
    assert measures.listing(["Stöcke", "Socken"], "de") == "Stöcke und Socken"
    assert measures.listing([], "en") == ""
