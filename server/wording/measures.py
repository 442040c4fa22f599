"""Distances, odds, lists and places in words."""

from __future__ import annotations

import math
from collections.abc import Iterable

from babel.lists import format_list
from babel.numbers import format_decimal
from pyproj import Transformer
from pyproj.aoi import AreaOfInterest
from pyproj.database import query_utm_crs_info

from server.wording.reader import Reader
from server.wording.sentences import language_of, sentence

# International mile, exact by definition (1959 agreement).
KM_PER_MILE = 1.609344
_BANDS = "CDEFGHJKLMNPQRSTUVWX"


def distance(km: float, reader: Reader, *, decimals: int = 1) -> str:
    """A distance in the reader's unit: '12.3 km', '7.6 miles'."""
    value = km / KM_PER_MILE if reader.miles else km
    number = format_decimal(
        round(value, decimals), format="#,##0." + "0" * decimals if decimals else "#,##0",
        locale=language_of(reader.language),
    )  # fmt: skip
    return sentence(reader.language, "miles" if reader.miles else "km", number=number)


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
    return format_list(things, style=style, locale=language_of(language)) if things else ""  # type: ignore[arg-type]


def utm(lat: float, lon: float) -> str:
    """UTM zone, band, easting and northing (m) on WGS 84: '30U 551234 6012345'. Valid for 80° S to 84° N."""
    if not (-80 <= lat <= 84 and -180 <= lon <= 180):
        raise ValueError(f"UTM covers 80° S to 84° N, not {lat}, {lon}")
    info = query_utm_crs_info(
        datum_name="WGS 84", area_of_interest=AreaOfInterest(lon, lat, lon, lat), contains=True
    )
    code = info[0].code
    easting, northing = Transformer.from_crs(4326, int(code), always_xy=True).transform(lon, lat)
    band = _BANDS[min(int((lat + 80) // 8), len(_BANDS) - 1)]
    return f"{int(code) % 100:02d}{band} {int(easting):06d} {int(northing):07d}"


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
