"""The line on the ground: distance, height, gradient, and where on it a point or a position is.

In: the bytes of a GPX file, the organiser's distance, points as a person gives them (km or a waypoint's
name), positions with their accuracy and what is known of the runner. Out: frozen values, `Course` first
of all; what is wrong comes as `CourseError` (a file) or `PointMistake` (a point), with the remedy.
Numbers only: no times of day, no words for a crew. May never import aiohttp, SQLAlchemy, telegram or
another room, nor read a clock, a file or the network.
"""

from server.course.drawing import Corner, Paper, ProfilePoint, outline, profile
from server.course.errors import CourseError
from server.course.gpx import read_gpx
from server.course.line import Box, Climb, Course, Spot, build_course
from server.course.points import PlacedPoint, Placing, PointMistake, WantedPoint, place_points
from server.course.position import Candidate, PlacedPosition, PositionPrior, needed_kmh, place_position
from server.course.track import Track, Waypoint

__all__ = [
    "Box",
    "Candidate",
    "Climb",
    "Corner",
    "Course",
    "CourseError",
    "Paper",
    "PlacedPoint",
    "PlacedPosition",
    "Placing",
    "PointMistake",
    "PositionPrior",
    "ProfilePoint",
    "Spot",
    "Track",
    "WantedPoint",
    "Waypoint",
    "build_course",
    "needed_kmh",
    "outline",
    "place_points",
    "place_position",
    "profile",
    "read_gpx",
]
