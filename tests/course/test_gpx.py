"""GPX that is in order, in all its forms, is read as it stands."""

from __future__ import annotations

from typing import Any
from xml.sax.saxutils import escape

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.course import CourseError, Track, read_gpx
from server.course.gpx import MAX_POINTS

V11 = 'xmlns="http://www.topografix.com/GPX/1/1"'
V10 = 'xmlns="http://www.topografix.com/GPX/1/0"'
TWO = (
    '<trkpt lat="54.9" lon="-2.6"><ele>100</ele></trkpt>'
    '<trkpt lat="54.91" lon="-2.61"><ele>150.5</ele></trkpt>'
)
SEGMENT = f"<trk><name>Round</name><trkseg>{TWO}</trkseg></trk>"


def gpx(inside: str, attributes: str = V11) -> bytes:
    """The bytes of a GPX file around its content."""
    return f'<?xml version="1.0"?><gpx version="1.1" {attributes}>{inside}</gpx>'.encode()


SAME_LINE = {
    "GPX 1.1": gpx(SEGMENT),
    "GPX 1.0": gpx(SEGMENT, V10),
    "no namespace": gpx(SEGMENT, ""),
    "prefixed": gpx(SEGMENT, V11)
    .replace(b"<", b"<g:")
    .replace(b"<g:/", b"</g:")
    .replace(b"<g:?", b"<?")
    .replace(b"xmlns=", b"xmlns:g="),
    "byte order mark": b"\xef\xbb\xbf" + gpx(SEGMENT),
    "UTF-16": gpx(SEGMENT).decode().encode("utf-16"),
    "no XML declaration": gpx(SEGMENT).split(b"?>", 1)[1],
    "spaces about numbers": gpx(SEGMENT.replace('"54.9"', '"  54.9 "').replace(">100<", "> \n 100 <")),
    "two segments": gpx(SEGMENT.replace("</trkpt><trkpt", "</trkpt></trkseg><trkseg><trkpt")),
    "empty segments about": gpx(SEGMENT.replace("<trkseg>", "<trkseg/><trkseg>")),
    "name in CDATA": gpx(SEGMENT.replace("Round", "<![CDATA[Round]]>")),
    "comments and times": gpx(SEGMENT.replace("</ele>", "</ele><!-- x --><time>not read</time>")),
    "extensions that hold points": gpx(
        SEGMENT.replace(
            "</ele>",
            '</ele><extensions><x:e xmlns:x="urn:x"><trkpt lat="nan"/><ele>9</ele></x:e></extensions>',
        )
    ),
    "a route beside the track": gpx('<rte><rtept lat="1" lon="1"/><rtept lat="2" lon="2"/></rte>' + SEGMENT),
    "a track of one point beside": gpx('<trk><trkseg><trkpt lat="1" lon="1"/></trkseg></trk>' + SEGMENT),
}


@pytest.mark.parametrize("data", SAME_LINE.values(), ids=SAME_LINE)
def test_every_form_of_one_line_reads_alike(data: bytes) -> None:
    """However GPX is written, the same line comes out."""
    track = read_gpx(data, "round.gpx")
    assert track.lat_deg.tolist() == [54.9, 54.91]
    assert track.lon_deg.tolist() == [-2.6, -2.61]
    assert track.height_m.tolist() == [100.0, 150.5]
    assert (track.title, track.kind, track.warnings) == ("Round", "track", ())


def test_route_is_a_line_where_there_is_no_track() -> None:
    """A route's points make the line, and those with names are waypoints too."""
    points = '<rtept lat="54.9" lon="-2.6"><name>Low Barn</name></rtept><rtept lat="54.91" lon="-2.61"/>'
    track = read_gpx(gpx(f"<rte>{points}</rte>"), "r.gpx")
    assert track.kind == "route"
    assert np.isnan(track.height_m).all()
    assert [waypoint.name for waypoint in track.waypoints] == ["Low Barn"]


def test_waypoints_keep_name_place_height_and_line() -> None:
    """A waypoint comes with all its file says, its name with single spaces; a nameless one is left out."""
    wpt = (
        '\n<wpt lat="54.95" lon="-2.5"><ele>12</ele><name> Old \n Kiln &amp; Ford</name><desc>x</desc></wpt>'
    )
    track = read_gpx(gpx(wpt + '<wpt lat="1" lon="1"/>' + SEGMENT), "w.gpx")
    (waypoint,) = track.waypoints
    assert (waypoint.name, waypoint.lat_deg, waypoint.lon_deg, waypoint.height_m, waypoint.line) == (
        "Old Kiln & Ford",
        54.95,
        -2.5,
        12.0,
        3,
    )


def test_tracks_that_follow_one_another_are_joined_and_said() -> None:
    """Days recorded as one track each make one line, with a warning that names them."""
    later = SEGMENT.replace("54.91", "54.93").replace('54.9"', '54.912"').replace('-2.6"', '-2.61"')
    track = read_gpx(gpx(SEGMENT + later.replace("Round", "Day two")), "days.gpx")
    assert len(track.lat_deg) == 4
    assert "2 tracks were joined: 'Round', 'Day two'" in str(track.warnings[0])


def test_tracks_that_lie_apart_are_refused_by_name() -> None:
    """Two courses in one file are never taken for one."""
    other = SEGMENT.replace("Round", "Short round").replace("54.9", "55.9")
    with pytest.raises(
        CourseError, match=r"2 tracks that do not follow .*'Round', 'Short round'.*110\.\d km"
    ):
        read_gpx(gpx(SEGMENT + other), "two.gpx")


def test_declared_latin_1_is_read() -> None:
    """A file that names its encoding is read in it."""
    data = gpx(SEGMENT.replace("Round", "Höhe")).replace(b'"1.0"?', b'"1.0" encoding="ISO-8859-1"?')
    assert read_gpx(data.decode().encode("latin-1"), "l.gpx").title == "Höhe"


def test_impossible_heights_are_missing_heights() -> None:
    """A device's mark for an unknown height is no height, and the person is told where."""
    track = read_gpx(gpx(SEGMENT.replace(">100<", ">-32768<")), "h.gpx")
    assert np.isnan(track.height_m).tolist() == [True, False]
    assert tuple(map(str, track.warnings)) == (
        "h.gpx, line 1: 1 heights outside -500 to 9000 m were taken as missing",
    )


def test_as_many_points_as_promised() -> None:
    """200,000 points are read."""
    points = b'<trkpt lat="54.9" lon="-2.6"/>' * MAX_POINTS
    assert (
        len(read_gpx(gpx("<trk><trkseg>@</trkseg></trk>").replace(b"@", points), "big.gpx").lat_deg)
        == MAX_POINTS
    )


places = st.tuples(
    st.floats(-90, 90, allow_nan=False),
    st.floats(-180, 180, allow_nan=False),
    st.floats(-500, 9000) | st.none(),
)


@given(points=st.lists(places, min_size=2, max_size=20), name=st.text(max_size=30))
def test_what_is_written_is_read(points: list[tuple[float, float, float | None]], name: str) -> None:
    """Any line of any places comes back as it was written, to the last digit."""
    name = "".join(letter for letter in name if letter.isprintable())
    text = "".join(
        f'<trkpt lat="{lat!r}" lon="{lon!r}">{"" if ele is None else f"<ele>{ele!r}</ele>"}</trkpt>'
        for lat, lon, ele in points
    )
    track = read_gpx(gpx(f"<trk><name>{escape(name)}</name><trkseg>{text}</trkseg></trk>"), "p.gpx")
    assert track.lat_deg.tolist() == [lat for lat, _, _ in points]
    assert track.lon_deg.tolist() == [lon for _, lon, _ in points]
    expected: Any = [np.nan if ele is None else ele for _, _, ele in points]
    np.testing.assert_array_equal(track.height_m, expected)
    assert track.title == " ".join(name.split())


@settings(max_examples=300)
@given(data=st.data())
def test_a_damaged_file_is_read_or_refused_never_worse(data: st.DataObject) -> None:
    """Whatever happens to a file, the outcome is a sound track or a CourseError that says what to do."""
    whole = gpx('<wpt lat="54.9" lon="-2.6"><name>Kiln</name></wpt>' + SEGMENT)
    start = data.draw(st.integers(0, len(whole)))
    end = data.draw(st.integers(start, len(whole)))
    junk = data.draw(
        st.binary(max_size=12) | st.sampled_from([b"<", b">", b'"', b"&", b"nan", b"<!DOCTYPE x>"])
    )
    outcome: Track | CourseError
    try:
        outcome = read_gpx(whole[:start] + junk + whole[end:], "damaged.gpx")
    except CourseError as refusal:
        outcome = refusal
    if isinstance(outcome, CourseError):
        assert outcome.what
        assert outcome.remedy
        assert str(outcome).startswith("damaged.gpx")
    else:
        assert (np.abs(outcome.lat_deg) <= 90).all()
        assert (np.abs(outcome.lon_deg) <= 180).all()
