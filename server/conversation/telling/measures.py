"""Distances, odds, lists and places in words."""

from __future__ import annotations

import math
from collections.abc import Iterable

from babel.lists import format_list
from babel.numbers import format_decimal
from pyproj import Transformer

from server.conversation.telling.reader import Reader
from server.sentences import locale_of, sentence

# International mile, exact by definition (1959 agreement).
KM_PER_MILE = 1.609344
_BANDS = "CDEFGHJKLMNPQRSTUVWX"


def distance(km: float, reader: Reader, *, decimals: int = 1) -> str:
    """A distance in the reader's unit: '12.3 km', '7.6 miles'."""
    value = km / KM_PER_MILE if reader.miles else km
    number = format_decimal(
        round(value, decimals), format="#,##0." + "0" * decimals if decimals else "#,##0",
        locale=locale_of(reader.language),
    )  # fmt: skip
    return sentence(reader.language, "miles" if reader.miles else "km", number=number)


def weight(grams: float, language: str) -> str:
    """A weight: '490 g', and from a kilogram on '1.3 kg', rounded up."""
    if grams < 1000:
        return f"{grams:.0f} g"
    kilos = math.ceil(grams / 100) / 10
    return f"{format_decimal(kilos, format='0.0', locale=locale_of(language))} kg"


def stretch(low_km: float, high_km: float, reader: Reader) -> tuple[str, str]:
    """Both ends of an estimated stretch in whole units, rounded outward."""
    factor = 1 / KM_PER_MILE if reader.miles else 1.0
    low, high = math.floor(low_km * factor) / factor, math.ceil(high_km * factor) / factor
    return distance(low, reader, decimals=0), distance(high, reader, decimals=0)


def odds(p: float, language: str) -> str:
    """A probability (0..1) in words, never 'certain': 'about 7 in 10', 'under 1 in 20', 'over 19 in 20'."""
    if math.isnan(p) or not 0 <= p <= 1:
        raise ValueError(f"a probability lies between 0 and 1, not {p!r}")
    if p < 0.05:
        return sentence(language, "odds-under")
    if p > 0.95:
        return sentence(language, "odds-over")
    # 0.05..0.95 rounds to tenths that can be neither 0 nor 10: those would read as certainties.
    return sentence(language, "odds-about", tenths=str(min(9, max(1, round(p * 10)))))


def listing(items: Iterable[str], language: str, style: str = "standard") -> str:
    """'a, b and c' in the language; '' for nothing."""
    things = [i for i in items if i]
    return format_list(things, style=style, locale=locale_of(language)) if things else ""  # type: ignore[arg-type]


def _utm_zone(lat: float, lon: float) -> int:
    """The UTM zone 1..60, with the widened zones off south-west Norway and around Svalbard (from memory:
    32V reaches west to 3° E; 32X, 34X and 36X are not used), as rescue maps there are printed."""
    if 56 <= lat < 64 and 3 <= lon < 12:
        return 32
    if lat >= 72 and 0 <= lon < 42:
        return 31 if lon < 9 else 33 if lon < 21 else 35 if lon < 33 else 37
    return int((lon + 180) // 6) % 60 + 1


def utm(lat: float, lon: float) -> str:
    """UTM zone, band, easting and northing (m) on WGS 84: '30U 525650 6083736'. Valid for 80° S to 84° N.

    Metres are cut, not rounded, as a grid reference names the square one stands in.
    """
    if not (-80 <= lat <= 84 and -180 <= lon <= 180):
        raise ValueError(f"UTM covers 80° S to 84° N, not {lat}, {lon}")
    zone = _utm_zone(lat, lon)
    to_grid = Transformer.from_crs(4326, (32600 if lat >= 0 else 32700) + zone, always_xy=True)
    easting, northing = to_grid.transform(lon, lat)
    band = _BANDS[min(int((lat + 80) // 8), len(_BANDS) - 1)]
    return f"{zone:02d}{band} {int(easting):06d} {int(northing):07d}"


def degrees(lat: float, lon: float, language: str) -> str:
    """Decimal degrees to 5 places (about a metre): '54.90000 N, 2.60000 W'."""
    return sentence(
        language,
        "degrees",
        lat=f"{abs(lat):.5f}",
        north="north" if lat >= 0 else "south",
        lon=f"{abs(lon):.5f}",
        east="east" if lon >= 0 else "west",
    )


def place(lat: float, lon: float, language: str) -> str:
    """A place to read out: decimal degrees, and UTM where it is defined."""
    text = degrees(lat, lon, language)
    if -80 <= lat <= 84:
        text += " " + sentence(language, "utm-too", utm=utm(lat, lon))
    return text
