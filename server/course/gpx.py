"""Reads a GPX file into one line and its named waypoints, in bounded memory and time.

Own reader on expat, not gpxpy: that takes 4 to 5 s and 170 MB for 100,000 points, lets NaN and latitude
95 through, reads a web page as an empty course, and 150,000 nested tags can bring the process down. This
one keeps three numbers a point, looks nowhere but where GPX has points, and ends at the first thing that
is wrong.
"""

from __future__ import annotations

import math
from typing import Final
from xml.parsers import expat

from server.course.errors import CourseError
from server.course.track import RawLine, Track, Waypoint, choose, joined
from server.sentences import Worded, say

MAX_BYTES: Final = 100_000_000
MAX_POINTS: Final = 200_000
MAX_WAYPOINTS: Final = 5_000
MAX_LINES: Final = 1_000
MAX_DEPTH: Final = 32
CHUNK: Final = 65_536
MAX_TOKEN: Final = 1_000_000
MAX_NAME: Final = 200
MAX_NUMBER: Final = 64
# Below the lowest shore to above the highest top: a height outside is a device's 'unknown', as -32768.
LOWEST_M, HIGHEST_M = -500.0, 9_000.0

NAMESPACES: Final = ("", "http://www.topografix.com/GPX/1/0", "http://www.topografix.com/GPX/1/1")
EXPORT_AGAIN: Final = say("do-export-route-again-gpx-use")

# Which element may hold which; anything else is passed over with all that is in it.
INSIDE: Final = {
    ("gpx", "wpt"), ("gpx", "trk"), ("gpx", "rte"), ("trk", "trkseg"), ("trkseg", "trkpt"), ("rte", "rtept"),
    ("trk", "name"), ("rte", "name"), ("wpt", "name"), ("rtept", "name"),
    ("wpt", "ele"), ("trkpt", "ele"), ("rtept", "ele"),
}  # fmt: skip
PLACES: Final = ("wpt", "trkpt", "rtept")

OTHER_ROOTS: Final = {
    "html": say("wrong-web-page-not-route-download"),
    "kml": say("wrong-kml-file-not-gpx"),
    "trainingcenterdatabase": say("wrong-tcx-file-not-gpx"),
    "rss": say("wrong-news-feed-not-gpx"),
}
OTHER_STARTS: Final = (
    (b"PK\x03\x04", say("wrong-zip-kmz-archive-not-gpx")),
    (b"\x1f\x8b", say("wrong-gzip-archive-not-gpx")),
    (b"%PDF", say("wrong-pdf-not-gpx")),
    (b"{", say("wrong-json-not-gpx")),
)


class _Reader:
    """expat's handlers. Holds the path of known elements; raises CourseError at the first fault."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.lines: list[RawLine] = []
        self.waypoints: list[Waypoint] = []
        self.strange_heights = 0
        self.strange_line = 0
        self._points = 0
        self._path: list[str] = []
        self._known: dict[str, str] = {}
        self._text: list[str] | None = None
        self._text_size = 0
        self._name = ""
        self._at = (0.0, 0.0)
        self._height = math.nan
        self._parser = expat.ParserCreate(namespace_separator=" ")
        self._parser.buffer_text = True
        self._parser.StartDoctypeDeclHandler = self._doctype
        self._parser.StartElementHandler = self._root
        self._parser.EndElementHandler = self._end

    def read(self, data: bytes) -> None:
        """Feeds the whole file to expat. Errors: CourseError, or expat's own and its codec's."""
        view = memoryview(data)
        for start in range(0, len(data), CHUNK):
            self._parser.Parse(view[start : start + CHUNK], False)
            # expat keeps an unfinished tag or comment whole, and begins it again with each chunk.
            if start + CHUNK - self._parser.CurrentByteIndex > MAX_TOKEN:
                raise self.error(say("wrong-tag-comment-longer-bytes", max_token=f"{MAX_TOKEN:,}"))
        self._parser.Parse(b"", True)

    def warnings(self) -> list[Worded]:
        """What the file's writer should know though it is no error."""
        if not self.strange_heights:
            return []
        return [
            say(
                "wrong-line-heights-outside-m-taken",
                file=self.file,
                strange_line=self.strange_line,
                strange_heights=self.strange_heights,
                lowest_m=f"{LOWEST_M:.0f}",
                highest_m=f"{HIGHEST_M:.0f}",
            )
        ]

    def error(self, what: Worded, remedy: Worded = EXPORT_AGAIN) -> CourseError:
        """An error at the line being read."""
        return CourseError(what, file=self.file, line=self._parser.CurrentLineNumber, remedy=remedy)

    def _doctype(self, name: str, *_: object) -> None:
        if name.casefold() == "html":
            raise self.error(OTHER_ROOTS["html"])
        raise self.error(
            say("wrong-file-declares-doctype-gpx-never"),
            say("do-remove-doctype-export-route-again"),
        )

    def _root(self, tag: str, _attributes: dict[str, str]) -> None:
        namespace, _, local = tag.rpartition(" ")
        if local != "gpx":
            raise self.error(
                OTHER_ROOTS.get(local.casefold(), say("wrong-file-begins-not-gpx", tag=local[:40]))
            )
        if namespace not in NAMESPACES:
            raise self.error(say("wrong-unknown-kind-gpx-known-gpx", namespace=f"{namespace[:80]!r}"))
        prefix = f"{namespace} " if namespace else ""
        self._known = {prefix + name: name for pair in INSIDE for name in pair}
        self._path.append("gpx")
        self._parser.StartElementHandler = self._start

    def _start(self, tag: str, attributes: dict[str, str]) -> None:
        path = self._path
        if len(path) >= MAX_DEPTH:
            raise self.error(say("wrong-elements-nested-deeper", max_depth=MAX_DEPTH))
        kind = self._known.get(tag, "")
        if not kind or (path[-1], kind) not in INSIDE:
            path.append("")
            return
        path.append(kind)
        if kind in PLACES:
            self._start_place(kind, attributes)
        elif kind in ("ele", "name"):
            self._text, self._text_size = [], 0
            self._parser.CharacterDataHandler = self._characters
        elif kind in ("trk", "rte"):
            self._start_line(kind)
        elif kind == "trkseg":
            self.lines[-1].segments.append(len(self.lines[-1].lat))

    def _start_line(self, kind: str) -> None:
        if len(self.lines) >= MAX_LINES:
            raise self.error(
                say("wrong-more-tracks-routes", max_lines=f"{MAX_LINES:,}"), say("do-leave-only-course-file")
            )
        self.lines.append(RawLine("track" if kind == "trk" else "route", self._parser.CurrentLineNumber))

    def _start_place(self, kind: str, attributes: dict[str, str]) -> None:
        lat = self._degrees(attributes, "lat", 90.0)
        lon = self._degrees(attributes, "lon", 180.0)
        self._at, self._height, self._name = (lat, lon), math.nan, ""
        if kind == "wpt":
            return
        self._points += 1
        if self._points > MAX_POINTS:
            raise self.error(
                say("wrong-more-points", max_points=f"{MAX_POINTS:,}"), say("do-thin-track-program-made")
            )

    def _degrees(self, attributes: dict[str, str], key: str, limit: float) -> float:
        text = attributes.get(key)
        if text is None:
            raise self.error(say("wrong-point-no-missing", key=key))
        value = self._number(text, key)
        if not -limit <= value <= limit:
            raise self.error(
                say("wrong-degrees-outside", key=key, text=text[:40], limit=f"{limit:.0f}"),
                say("do-correct-point-perhaps-latitude-longitude"),
            )
        return value

    def _number(self, text: str, key: str) -> float:
        try:
            # Python reads '5_4' as 54; GPX does not.
            value = math.nan if "_" in text else float(text)
        except ValueError:
            value = math.nan
        if not math.isfinite(value):
            raise self.error(
                say("wrong-not-number", key=key, text=text.strip()[:40]),
                say("do-write-like-54-9012-point"),
            )
        return value

    def _characters(self, text: str) -> None:
        assert self._text is not None
        limit = MAX_NAME if self._path[-1] == "name" else MAX_NUMBER
        if self._text_size < limit and self._path[-1] in ("name", "ele"):
            # Spaces without end in front of a number must neither be kept nor hide the number.
            kept = (text.lstrip() if not self._text_size else text)[: limit - self._text_size]
            if kept:
                self._text.append(kept)
                self._text_size += len(kept)

    def _end(self, _tag: str) -> None:
        kind = self._path.pop()
        if not kind:
            return
        if kind in ("ele", "name"):
            self._end_text(kind)
        elif kind == "wpt":
            self._end_waypoint()
        elif kind in PLACES:
            self._end_point(kind)

    def _end_text(self, kind: str) -> None:
        text = " ".join("".join(self._text or ()).split())
        self._text = None
        self._parser.CharacterDataHandler = None
        owner = self._path[-1]
        if kind == "name" and owner in ("trk", "rte"):
            self.lines[-1].title = text
        elif kind == "name":
            self._name = text
        elif text:
            height = self._number(text, kind)
            if LOWEST_M <= height <= HIGHEST_M:
                self._height = height
            else:
                self.strange_heights += 1
                self.strange_line = self.strange_line or self._parser.CurrentLineNumber

    def _end_waypoint(self) -> None:
        if not self._name:
            return
        if len(self.waypoints) >= MAX_WAYPOINTS:
            raise self.error(
                say("wrong-more-waypoints", max_waypoints=f"{MAX_WAYPOINTS:,}"),
                say("do-keep-waypoints-points-race"),
            )
        height = None if math.isnan(self._height) else self._height
        self.waypoints.append(Waypoint(self._name, *self._at, height, self._parser.CurrentLineNumber))

    def _end_point(self, kind: str) -> None:
        line = self.lines[-1]
        line.lat.append(self._at[0])
        line.lon.append(self._at[1])
        line.height.append(self._height)
        if kind == "rtept":
            self._end_waypoint()


def read_gpx(data: bytes, file: str, *, stages: bool = False) -> Track:
    """The course line and waypoints of a GPX 1.0 or 1.1 file.

    data: the file's bytes, at most MAX_BYTES; file: its name, for messages. Tracks are preferred to routes;
    segments, and tracks that follow one another, are joined. Named route points are waypoints too. `stages`: a stage may
    begin elsewhere than where the one before ended, in a track or segment of its own. Errors: CourseError for anything
    that is not a sound GPX file with a line of two points or more. Time: about three bare expat passes.
    """
    _refuse_other_files(data, file)
    reader = _Reader(file)
    try:
        reader.read(data)
    except expat.ExpatError as error:
        raise _broken_xml(error, data, file) from error
    except (LookupError, UnicodeError, ValueError) as error:
        raise CourseError(
            say("wrong-files-text-encoding-cannot-read", error=str(error)[:80]),
            file=file,
            line=1,
            remedy=EXPORT_AGAIN,
        ) from error
    chosen = choose(reader.lines, file)
    return joined(chosen, file, reader.waypoints, reader.warnings(), stages)


def _refuse_other_files(data: bytes, file: str) -> None:
    if not data.strip():
        raise CourseError(say("wrong-file-empty"), file=file, remedy=EXPORT_AGAIN)
    if len(data) > MAX_BYTES:
        raise CourseError(
            say(
                "wrong-file-mb-more-mb",
                mb=f"{len(data) / 1000000.0:.0f}",
                most_mb=f"{MAX_BYTES / 1000000.0:.0f}",
            ),
            file=file,
            remedy=say("do-thin-track-program-made"),
        )
    for start, what in OTHER_STARTS:
        if data.startswith(start):
            raise CourseError(what, file=file, remedy=EXPORT_AGAIN)
    if data[8:12] == b".FIT":
        raise CourseError(say("wrong-fit-recording-not-gpx"), file=file, remedy=EXPORT_AGAIN)


def _broken_xml(error: expat.ExpatError, data: bytes, file: str) -> CourseError:
    codes = expat.errors.codes
    name = expat.ErrorString(error.code)
    if (
        b"\x00" not in data[:4]
        and error.code == codes[expat.errors.XML_ERROR_INVALID_TOKEN]
        and _not_utf8(data)
    ):
        return CourseError(
            say("wrong-text-not-utf-8-though"),
            file=file,
            line=error.lineno,
            remedy=say("do-save-file-utf-8-export"),
        )
    if error.code in (
        codes[expat.errors.XML_ERROR_NO_ELEMENTS],
        codes[expat.errors.XML_ERROR_UNCLOSED_TOKEN],
        codes[expat.errors.XML_ERROR_PARTIAL_CHAR],
        codes[expat.errors.XML_ERROR_UNCLOSED_CDATA_SECTION],
    ):
        what = say("wrong-file-ends-middle-after-broken")
        return CourseError(what, file=file, line=error.lineno, remedy=say("do-download-export-again"))
    return CourseError(
        say("wrong-not-well-formed-xml", name=name), file=file, line=error.lineno, remedy=EXPORT_AGAIN
    )


def _not_utf8(data: bytes) -> bool:
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return True
    return False
