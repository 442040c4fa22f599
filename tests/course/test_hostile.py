"""Files that are broken, of another kind or made to do harm: a clear error, in bounded memory and time."""

from __future__ import annotations

import time
import tracemalloc
from dataclasses import dataclass

import pytest

from server.course import CourseError, read_gpx
from server.course.gpx import MAX_BYTES, MAX_LINES, MAX_POINTS, MAX_WAYPOINTS

HEAD = b'<?xml version="1.0"?>\n<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">\n'
GOOD = b'<trkpt lat="54.9" lon="-2.6"/><trkpt lat="54.91" lon="-2.61"/>'
TAIL = b"</trkseg></trk></gpx>"
BOMB = (
    b'<?xml version="1.0"?>\n<!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa">'
    + b"".join(b'<!ENTITY %c "%s">' % (98 + i, b"&%c;" % (97 + i) * 10) for i in range(9))
    + b"]><gpx><trk><name>&j;</name></trk></gpx>"
)


def track(points: bytes) -> bytes:
    """A file whose one segment holds the given bytes; they stand in line 4."""
    return HEAD + b"<trk><trkseg>\n" + points + TAIL


@dataclass(frozen=True, slots=True)
class Wrong:
    """A file, and what its error must say: the fault, the line, the remedy."""

    data: bytes
    what: str
    line: int | None
    remedy: str


WRONG = {
    "empty": Wrong(b"", "the file is empty", None, "Export"),
    "spaces only": Wrong(b" \n" * 1000, "the file is empty", None, "Export"),
    "web page": Wrong(b"<!DOCTYPE html>\n<html><body>Log in</body></html>", "web page", 1, "Export"),
    "web page without doctype": Wrong(b"<html><head/></html>", "web page", 1, "Export"),
    "KML": Wrong(b'<kml xmlns="http://www.opengis.net/kml/2.2"><Document/></kml>', "KML file", 1, "Export"),
    "TCX": Wrong(b"<TrainingCenterDatabase/>", "TCX file", 1, "Export"),
    "zip": Wrong(b"PK\x03\x04" + b"\0" * 100, "zip or KMZ", None, "Export"),
    "gzip": Wrong(b"\x1f\x8b" + b"\0" * 100, "gzip", None, "Export"),
    "FIT": Wrong(b"\x0e\x10\x43\x08\x78\x00\x00\x00.FIT" + b"\0" * 50, "FIT recording", None, "Export"),
    "JSON": Wrong(b'{"type": "LineString"}', "JSON", None, "Export"),
    "plain words": Wrong(b"km 0 Village, km 10 Bridge", "not well-formed XML", 1, "Export"),
    "another root": Wrong(b"<route><point/></route>", "begins with <route>", 1, "Export"),
    "another namespace": Wrong(
        b'<gpx xmlns="urn:mine"></gpx>', "unknown kind of GPX, 'urn:mine'", 1, "Export"
    ),
    "truncated between": Wrong(track(GOOD)[: -len(TAIL)], "ends in the middle", 4, "Download"),
    "truncated within a tag": Wrong(track(GOOD)[: -len(TAIL) - 9], "ends in the middle", 4, "Download"),
    "tags crossed": Wrong(
        track(GOOD + b"<a><b></a></b>"), "not well-formed XML: mismatched tag", 4, "Export"
    ),
    "prefix not declared": Wrong(track(b"<x:a/>" + GOOD), "not well-formed XML: unbound prefix", 4, "Export"),
    "two roots": Wrong(track(GOOD) + b"<gpx/>", "not well-formed XML: junk", 4, "Export"),
    "nul bytes": Wrong(track(GOOD + b"\0\0\0"), "not well-formed XML", 4, "Export"),
    "not UTF-8": Wrong(HEAD + b"<name>H\xf6he</name></gpx>", "not UTF-8", 3, "Save the file as UTF-8"),
    "unknown encoding": Wrong(b'<?xml version="1.0" encoding="x-none"?><gpx/>', "text encoding", 1, "Export"),
    "multi-byte encoding": Wrong(
        b'<?xml version="1.0" encoding="big5"?><gpx/>', "text encoding", 1, "Export"
    ),
    "latitude NaN": Wrong(track(b'\n<trkpt lat="NaN" lon="1"/>'), "lat 'NaN' is not a number", 5, "54.9"),
    "longitude infinite": Wrong(track(b'<trkpt lat="1" lon="-inf"/>'), "lon '-inf'", 4, "54.9"),
    "latitude in words": Wrong(track(b'<trkpt lat="54N" lon="1"/>'), "lat '54N' is not a number", 4, "54.9"),
    "decimal comma": Wrong(track(b'<trkpt lat="54,9" lon="1"/>'), "lat '54,9'", 4, "with a point"),
    "underscore": Wrong(track(b'<trkpt lat="5_4" lon="1"/>'), "lat '5_4' is not a number", 4, "54.9"),
    "latitude out of range": Wrong(
        track(b'<trkpt lat="95" lon="1"/>'), "lat '95' is outside", 4, "exchanged"
    ),
    "longitude out of range": Wrong(track(b'<trkpt lat="1" lon="200"/>'), "lon '200' is", 4, "exchanged"),
    "no latitude": Wrong(track(b'<trkpt lon="1"/>'), "a point has no lat=", 4, "Export"),
    "height NaN": Wrong(track(b'<trkpt lat="1" lon="1"><ele>NaN</ele></trkpt>'), "ele 'NaN'", 4, "54.9"),
    "height in words": Wrong(
        track(b'<trkpt lat="1" lon="1"><ele>high</ele></trkpt>'), "ele 'high'", 4, "54.9"
    ),
    "bad waypoint": Wrong(HEAD + b'<wpt lat="1" lon="x"/></gpx>', "lon 'x' is not a number", 3, "54.9"),
    "no line at all": Wrong(
        HEAD + b'<wpt lat="1" lon="1"/></gpx>', "no track and no route", None, "course itself"
    ),
    "one point": Wrong(track(b'<trkpt lat="1" lon="1"/>'), "no track and no route", None, "course itself"),
    "entity bomb": Wrong(BOMB, "declares a DOCTYPE", 2, "Remove the DOCTYPE"),
    "entity from a file": Wrong(
        b'<!DOCTYPE gpx [<!ENTITY a SYSTEM "file:///etc/hostname">]><gpx>&a;</gpx>', "DOCTYPE", 1, "Remove"
    ),
    "entity unknown": Wrong(track(b"&boom;" + GOOD), "undefined entity", 4, "Export"),
    "endless tag": Wrong(track(b"<trkpt" + b" " * 20_000_000), "longer than 1,000,000 bytes", 4, "Export"),
    "endless comment": Wrong(track(b"<!--" + b" " * 20_000_000), "longer than 1,000,000 bytes", 4, "Export"),
    "endless attribute": Wrong(
        track(b'<trkpt lat="' + b"1" * 20_000_000), "longer than 1,000,000", 4, "Export"
    ),
    "endless name": Wrong(track(b"<" + b"a" * 20_000_000), "longer than 1,000,000 bytes", 4, "Export"),
    "nested 150,000 deep": Wrong(track(b"<a>" * 150_000), "nested deeper than 32", 4, "Export"),
    "nested in extensions": Wrong(
        track(b'<trkpt lat="1" lon="1"><extensions>' + b"<a>" * 150_000), "nested deeper", 4, "Export"
    ),
    "too many points": Wrong(
        track(b'<trkpt lat="1" lon="1"/>' * (MAX_POINTS + 1)), "200,000 points", 4, "Thin"
    ),
    "too many waypoints": Wrong(
        HEAD + b'<wpt lat="1" lon="1"><name>a</name></wpt>' * (MAX_WAYPOINTS + 1),
        "5,000 waypoints",
        3,
        "Keep",
    ),
    "too many tracks": Wrong(HEAD + b"<trk/>" * (MAX_LINES + 1), "more than 1,000 tracks", 3, "Leave only"),
}


@pytest.mark.parametrize("wrong", WRONG.values(), ids=WRONG)
def test_wrong_files_say_what_where_and_what_to_do(wrong: Wrong) -> None:
    """Each wrong file gets the error that helps, at its line, within a second and a few megabytes."""
    tracemalloc.start()
    begun = time.process_time()
    try:
        with pytest.raises(CourseError) as caught:
            read_gpx(wrong.data, "night.gpx")
        took_s = time.process_time() - begun
        _, peak = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    error = caught.value
    assert wrong.what in str(error.what)
    assert error.line == wrong.line
    assert wrong.remedy in str(error.remedy)
    assert error.file == "night.gpx"
    assert str(error).startswith("night.gpx, line" if wrong.line else "night.gpx: ")
    assert took_s < 30  # tracemalloc makes the largest several times slower than it is
    assert peak < 30_000_000


ENDLESS = {
    "between elements": track(GOOD + b" " * 20_000_000),
    "in a height": track(
        b'<trkpt lat="54.9" lon="-2.6"><ele>' + b" " * 20_000_000 + b"7</ele></trkpt>" + GOOD
    ),
    "in a name": HEAD + b"<trk><name>" + b" \n" * 10_000_000 + b"x</name><trkseg>" + GOOD + TAIL,
}


@pytest.mark.parametrize("data", ENDLESS.values(), ids=ENDLESS)
def test_endless_spaces_cost_little(data: bytes) -> None:
    """Twenty megabytes of nothing are read past, in little time and memory, and hide nothing behind them."""
    begun = time.process_time()
    tracemalloc.start()
    try:
        read = read_gpx(data, "spaces.gpx")
        _, peak = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert read.lat_deg[-1] == 54.91
    assert peak < 1_000_000
    assert time.process_time() - begun < 30


def test_endless_spaces_do_not_hide_a_height() -> None:
    """A height behind a megabyte of spaces is read."""
    data = track(b'<trkpt lat="54.9" lon="-2.6"><ele>' + b" " * 1_000_000 + b"7</ele></trkpt>" + GOOD)
    assert read_gpx(data, "spaces.gpx").height_m[0] == 7.0


def test_a_file_larger_than_the_limit_is_not_read() -> None:
    """Past the size limit nothing is parsed."""
    with pytest.raises(CourseError, match=r"the file has 100 MB, more than 100 MB"):
        read_gpx(bytes(MAX_BYTES) + b"<", "large.gpx")


def test_a_long_name_is_cut() -> None:
    """A name of a megabyte is kept to what a person could read."""
    data = HEAD + b"<trk><name>" + b"x" * 1_000_000 + b"</name><trkseg>" + GOOD + TAIL
    assert read_gpx(data, "name.gpx").title == "x" * 200


def test_a_long_number_is_refused() -> None:
    """A height of a megabyte of digits is no height, and is cut before it is read."""
    digits = b"9" * 1_000_000
    data = track(b'<trkpt lat="54.9" lon="-2.6"><ele>' + digits + b"</ele></trkpt>" + GOOD)
    assert "heights outside" in str(read_gpx(data, "digits.gpx").warnings[0])
