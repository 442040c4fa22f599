"""What the planner has to say beside the times: where walking costs nothing, few stops, what a night's rest does."""

from __future__ import annotations

from typing import Final

import numpy as np

from server.plan.notes import Note, note, saying
from server.plan.pace import RESTS_FROM_S, March, tired_hours
from server.plan.setting import Setting

WALK_NOTE_M: Final = 300.0


def remarks(setting: Setting, done: March) -> tuple[Note, ...]:
    """Where walking costs nothing, stops that are few, what each night's rest is taken to do."""
    return (*_walking(setting, done), *_stop_notes(setting), *_rest_notes(setting, done))


def _rest_notes(setting: Setting, done: March) -> tuple[Note, ...]:
    """What each night's rest is taken to do; and that the target counts the stages without the nights."""
    terrain, stops = setting.ground.terrain, setting.stops
    moved = np.concatenate([[0.0], np.cumsum(done.moving_s)])
    lengths = stops.lengths(terrain.km, moved)
    tired = tired_hours(done.starts_s, terrain.km[:-1], stops, lengths)
    found = []
    for point, at, length in zip(setting.points[1:-1], stops.km, lengths, strict=True):
        first = int(np.searchsorted(terrain.km[:-1], at - 1e-9))
        if length >= RESTS_FROM_S and first < len(tired):
            after_s = 3600.0 * float(tired[first])
            found.append(note("rested", place=point.name, rest_length_s=length, after_length_s=after_s))
    return (note("stages"), *found) if stops.until_s is not None else tuple(found)


def _walking(setting: Setting, done: March) -> tuple[Note, ...]:
    """Where walking costs no time: longer stretches on which the walk is the faster gait."""
    terrain = setting.ground.terrain
    if not setting.ground.has_heights:
        return ()
    edges = np.flatnonzero(np.diff(np.concatenate([[0], done.walks.astype(np.int8), [0]])))
    spans = [(float(terrain.km[a]), float(terrain.km[b])) for a, b in edges.reshape(-1, 2)]
    long = [(a, b) for a, b in spans if (b - a) * 1000.0 >= WALK_NOTE_M]
    walked = float((terrain.step_m * done.walks).sum()) / 1000.0
    share = walked / float(setting.km[-1])
    if not long:
        return ()
    if share > 0.6:
        return (note("walking-mostly", walked_whole_km=walked, course_whole_km=float(setting.km[-1])),)
    longest = sorted(sorted(long, key=lambda s: s[0] - s[1])[:6])
    where = [saying("span", from_km=a, to_km=b) for a, b in longest]
    return (note("walking", *where, walked_whole_km=walked, course_whole_km=float(setting.km[-1])),)


def _stop_notes(setting: Setting) -> tuple[Note, ...]:
    planned = setting.stops.total_s
    if setting.target.total_s > 12 * 3600 and planned < 0.02 * setting.target.total_s:
        return (note("few-stops", planned_s=planned),)
    return ()
