"""From what she means to do (finish time, pace all in, easy pace plus a margin) to seconds for the whole
course."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from server.event.model import Target
from server.plan.costs import riegel_s
from server.plan.errors import PlanError
from server.plan.notes import Note, Saying, note, saying
from server.sentences import say

MARGIN_SUITS_KM: Final = 50.0
KM_PER_100_M: Final = 1.0
"""A hundred metres of ascent count as a kilometre more. Common practice, no source."""
SLOWEST_M_S: Final = 0.25
LONGEST: Final = timedelta(days=30)


@dataclass(frozen=True, slots=True)
class TargetTime:
    """The target in whole seconds, stops included, what it came from, and what she should be told about
    that."""

    total_s: int
    source: Saying
    notes: tuple[Note, ...] = ()


def wanted(target: Target, km: float, ascent_m: float, stops_s: float, field: str) -> TargetTime:
    """The whole time of a target on a course of `km` with `ascent_m` and stops of `stops_s`.

    Errors: PlanError where no form or several forms are given, or a value can be no time or pace.
    """
    given = [name for name in ("finish", "pace_all_in", "easy_pace") if getattr(target, name) is not None]
    if len(given) != 1:
        raise PlanError(
            say("wrong-several-forms-target-given" if given else "wrong-target-empty"),
            field=field,
            remedy=say("do-give-finish-pace-all-easy"),
        )
    for name in ("finish", "pace_all_in", "easy_pace"):
        _refuse_senseless(getattr(target, name), f"{field}.{name}")
    if target.finish is not None:
        seconds = round(target.finish.total_seconds())
        found = TargetTime(seconds, saying("source-finish", target_s=seconds))
    elif target.pace_all_in is not None:
        found = TargetTime(
            round(target.pace_all_in.total_seconds() * km),
            saying("source-pace", pace_s=target.pace_all_in.total_seconds()),
        )
    else:
        assert target.easy_pace is not None
        found = from_easy_pace(target.easy_pace, target.margin, km, ascent_m, stops_s, field)
    if found.total_s > LONGEST.total_seconds():
        raise PlanError(
            say(
                "wrong-over-days-longer-can-planned",
                time=hours(timedelta(seconds=found.total_s)),
                days=LONGEST.days,
            ),
            field=f"{field}.{given[0]}",
            remedy=say("do-look-whether-hours-minutes-mixed-up"),
        )
    if km * 1000 / max(found.total_s, 1) < SLOWEST_M_S:
        raise PlanError(
            say(
                "wrong-km-slower-anybody-walks",
                time=hours(timedelta(seconds=found.total_s)),
                km=f"{km:.1f}",
            ),
            field=f"{field}.{given[0]}",
            remedy=say("do-look-whether-hours-minutes-pace"),
        )
    return found


def from_easy_pace(
    easy: timedelta, margin: timedelta | None, km: float, ascent_m: float, stops_s: float, field: str
) -> TargetTime:
    """Easy training pace plus a margin: suits 50 km, so other courses are scaled from there (Riegel,
    climb)."""
    if margin is None or not timedelta(0) <= margin <= timedelta(minutes=10):
        raise PlanError(
            say("wrong-easy-pace-needs-margin-0"),
            field=f"{field}.margin",
            remedy=say("do-write-margin-1-30-two"),
        )
    at_50 = (easy + margin).total_seconds() * MARGIN_SUITS_KM
    effort_km = km + ascent_m / 100.0 * KM_PER_100_M
    moving = riegel_s(at_50, MARGIN_SUITS_KM, effort_km)
    scaled = note("easy-scaled", course_km=km, ascent_m=ascent_m, effort_km=effort_km)
    paces = {"easy_pace_s": easy.total_seconds(), "margin_pace_s": margin.total_seconds()}
    return TargetTime(round(moving + stops_s), saying("source-easy", **paces), (scaled,))


def _refuse_senseless(value: timedelta | None, field: str) -> None:
    if value is not None and value <= timedelta(0):
        raise PlanError(
            say("wrong-no-time-aim", time=hours(value)), field=field, remedy=say("do-give-time-above-zero")
        )


def hours(value: timedelta) -> str:
    """A duration as h:mm, or h:mm:ss where it has seconds."""
    seconds = round(value.total_seconds())
    sign, seconds = ("-", -seconds) if seconds < 0 else ("", seconds)
    h, m, s = seconds // 3600, seconds % 3600 // 60, seconds % 60
    return f"{sign}{h}:{m:02d}:{s:02d}" if s else f"{sign}{h}:{m:02d}"


def clock(seconds: float) -> str:
    """Seconds as h:mm, or h:mm:ss where they are no whole minutes."""
    return hours(timedelta(seconds=seconds))
