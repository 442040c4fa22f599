"""Kit that the dark, the cold or the wet needs, against where she gets it: for goals A, B, C and the time limit.

What a thing is for is read from its name in the event file, by the words of kit_words.toml; a thing whose name says
nothing is no torch and no layer.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum
from functools import cache, lru_cache
from importlib import resources
from typing import Final

import numpy as np

from server.course import Course
from server.event.model import Event, GroundState, KitItem, KitWeight, PointKind, Runner, WeatherSpell
from server.plan.light import Sky, down_before
from server.plan.notes import Note, PlanDoubt, note, saying
from server.plan.paces import LIMIT, Bools, Floats, GoalPace, paces_of, shaded_at, sky_of
from server.plan.timetable import Timetable

MINUTES_LEFT: Final = 5
"""She may be that long without what she needs before it is said (own choice)."""
COLD_AFTER: Final = timedelta(hours=2)
"""So long after sunset a night is cold to somebody tired, where no temperature is given (common practice, no source)."""
HIGH_M: Final = 1500.0
"""Above this height it is cold from sunset on (own choice)."""
COLD_C: Final = 8.0
"""Below this a walk calls for a warm layer (own choice)."""
LASTS_H: Final = 6.0
"""How long a light lasts is asked about from so many hours of dark on: many last no longer at a light to run by (common
practice, no source)."""
LAPSE_C_PER_M: Final = 0.0065
"""The standard atmosphere's fall of temperature with height; a spell's temperature is taken for the course's mean height."""


class KitNeed(StrEnum):
    """What the dark, the cold and the wet ask for."""

    TORCH = "torch"
    WARM = "warm"
    WET = "wet"


@cache
def _words() -> dict[str, re.Pattern[str]]:
    """Patterns by class of word, all languages' together."""
    tables = tomllib.loads(resources.files("server.plan").joinpath("kit_words.toml").read_text("utf-8"))
    parts: dict[str, list[str]] = {}
    for table in tables.values():
        for name, words in table.items():
            parts.setdefault(name, []).extend(re.escape(w).replace(r"\|", r"\b") for w in words)
    return {name: re.compile("|".join(found), re.IGNORECASE) for name, found in parts.items()}


@lru_cache(maxsize=8192)
def _says(what: str, text: str) -> bool:
    return _words()[what].search(text) is not None


@dataclass(frozen=True, slots=True)
class KitHanded:
    """Things that she gets at a km: `point` '' where she has them from the start. `taken`: crew take them from her."""

    km: float
    point: str
    things: tuple[KitItem, ...]
    taken: tuple[KitItem, ...] = ()


@dataclass(frozen=True, slots=True)
class KitNeeded:
    """At one pace: from when and where she needs what she has not got, and when she gets it (None = never)."""

    pace: str
    at: datetime
    km: float
    until: datetime | None


@dataclass(frozen=True, slots=True)
class Gap:
    """A need that is not met: at which paces (`always`: at each), where it is handed over too late ('' in no list), and the
    last place before at which it could be ('' = only from the start)."""

    need: KitNeed
    moments: tuple[KitNeeded, ...]
    handed_at: str
    give_at: str
    always: bool


def is_for(need: KitNeed, name: str) -> bool:
    """Whether a thing of that name meets a need. A battery for a torch is no torch; 'torch with a spare battery' is."""
    if need is not KitNeed.TORCH:
        return _says(need.value, name)
    parts = (x for piece in _PARTS.split(name) for x in _words()["joins"].split(piece))
    return any(_says("torch", part) and not _says("battery", part) for part in parts)


_PARTS: Final = re.compile(r"[,;+&/()]")
"""Where one thing's name ends and what it comes with begins, beside the words that join them."""


def is_spare(name: str) -> bool:
    """Whether a thing's name says that it is there besides another."""
    return _says("spare", name)


def light_of(runner: Runner) -> str:
    """What light she has, for whoever looks for her: the file's words, else what she carries from the start; '' unknown."""
    return runner.torch or ", ".join(k.name for k in runner.carries if is_for(KitNeed.TORCH, k.name))


def is_pair(name: str) -> bool:
    """Whether a name asks for two of a thing."""
    return _says("pair", name)


def runs_on_batteries(name: str) -> bool:
    """Whether a thing of that name is a light or a battery."""
    return _says("torch", name) or _says("battery", name)


def must(item: KitItem) -> bool:
    """Whether she must not go on without what is handed over: what the event file calls so, light and what feeds it, a warm
    layer."""
    by_name = runs_on_batteries(item.name) or (is_for(KitNeed.WARM, item.name) and not is_spare(item.name))
    return item.weight is KitWeight.SAFETY or (by_name and not item.take_back)


def handed_over(event: Event, runner_id: str) -> tuple[KitHanded, ...]:
    """Where she gets and gives what, in running order: from the start, from bags, at meetings."""
    runner, course = event.runner(runner_id), event.course_of(runner_id)
    km = {p.id: p.km or 0.0 for p in course.points}
    found = [KitHanded(0.0, "", runner.carries)] if runner.carries else []
    found += [KitHanded(km[b.point], b.point, b.kit) for b in runner.drop_bags if b.point in km]
    for m in event.meetings_of(runner_id):
        if m.point in km:
            given = tuple(k for k in m.kit if not k.take_back)
            found.append(KitHanded(km[m.point], m.point, given, tuple(k for k in m.kit if k.take_back)))
    found += _said(event, runner_id, found)
    return tuple(sorted(found, key=lambda h: h.km))


def _said(event: Event, runner_id: str, lists: Sequence[KitHanded]) -> Iterator[KitHanded]:
    """What the file says of her without a list: the light she has, where nobody hands her one; and what she wears."""
    runner = event.runner(runner_id)
    handed = any(is_for(KitNeed.TORCH, k.name) for h in lists for k in h.things)
    if runner.torch and (not handed or _says("on_her", runner.torch)):
        yield KitHanded(0.0, "", (KitItem(runner.torch),))
    worn = [n for n in (KitNeed.WARM, KitNeed.WET) if is_for(n, runner.clothing)]
    if worn:
        yield KitHanded(0.0, "", (KitItem(runner.clothing),))


def gaps(event: Event, timetable: Timetable, course: Course) -> tuple[Gap, ...]:
    """Every need that is not met at one of the paces. Rain jacket and warm layer are asked for only where the file keeps
    lists of kit at all."""
    paces = paces_of(event, timetable)
    sky = sky_of(paces, course, timetable.start)
    lists = handed_over(event, timetable.runner)
    keeps = any(h.things for h in lists)
    found = []
    for need in KitNeed if keeps else (KitNeed.TORCH,):
        moments = [m for p in paces for m in _missing(event, timetable, course, p, sky, need, lists)]
        if moments:
            always = len(moments) == len(paces)
            found.append(_gap(event, timetable, need, moments, lists, always=always))
    return tuple(found)


def _missing(
    event: Event,
    timetable: Timetable,
    course: Course,
    pace: GoalPace,
    sky: Sky,
    need: KitNeed,
    lists: Sequence[KitHanded],
) -> Iterator[KitNeeded]:
    """The first stretch of a pace on which she is without what she needs."""
    gone, km, up = pace.ticks()
    wants = up & _needed(event, timetable, course, sky, need, gone, km)
    lacks = wants & ~_has(need, km, lists)
    edges = np.flatnonzero(np.diff(np.concatenate([[0], lacks.astype(np.int8), [0]])))
    for first, end in zip(edges[::2], edges[1::2], strict=True):
        if end - first <= MINUTES_LEFT:
            continue
        given = [h.km for h in lists if h.km > km[first] and any(is_for(need, k.name) for k in h.things)]
        until = timetable.start + timedelta(seconds=pace.at(given[0])) if given else None
        began = (
            _sunset(event, timetable, pace, sky, first, gone) if need is KitNeed.TORCH else float(gone[first])
        )
        where = float(np.interp(began, pace.elapsed_s, pace.km))
        yield KitNeeded(pace.name, timetable.start + timedelta(seconds=began), where, until)
        return


def _sunset(event: Event, timetable: Timetable, pace: GoalPace, sky: Sky, first: int, gone: Floats) -> float:
    """When it was dark on the way to that minute, to the second, as the plan's own light says it (`dark_kit`)."""
    seconds = np.linspace(float(gone[max(first - 1, 0)]), float(gone[first]), 61)
    km = np.interp(seconds, pace.elapsed_s, pace.km)
    dark = sky.dark_for_kit(seconds, km, shaded_at(event.course_of(timetable.runner), km))
    return float(gone[first] if dark[0] else seconds[max(int(np.argmax(dark)) - 1, 0)])


def _has(need: KitNeed, km: Floats, lists: Sequence[KitHanded]) -> Bools:
    """Where she has something for a need: crew take what they name, and nothing else that she has for it."""
    has = np.zeros(len(km), dtype=np.bool_)
    mine: list[KitItem] = []
    for h in lists:
        mine = left_with(mine, h.taken)
        has[km > h.km] = any(is_for(need, k.name) for k in mine)
        mine += h.things
        if any(is_for(need, k.name) for k in mine):
            has[km >= h.km - 1e-9] = True
    return has


def left_with(mine: Iterable[KitItem], taken: Sequence[KitItem]) -> list[KitItem]:
    """What she still has when crew have taken these: for each the thing of that name, or else the first for the same need
    that is no spare."""
    left = list(mine)
    for t in taken:
        needs = [n for n in KitNeed if is_for(n, t.name)]
        same = [k for k in left if k.name.casefold() == t.name.casefold()]
        same += [k for k in left if not is_spare(k.name) and any(is_for(n, k.name) for n in needs)]
        if same:
            left.remove(same[0])
    return left


def _needed(
    event: Event, timetable: Timetable, course: Course, sky: Sky, need: KitNeed, gone: Floats, km: Floats
) -> Bools:
    definition = event.course_of(timetable.runner)
    spells = [w for w in event.weather if w.course in (None, definition.id)]
    if need is KitNeed.WET:
        return _within(
            [w for w in spells if _says("rains", w.note) or w.ground is GroundState.SNOW], timetable, gone, km
        )
    dark = sky.dark_for_kit(gone, km, shaded_at(definition, km))
    if need is KitNeed.TORCH:
        return dark
    heights = np.interp(km, course.km, course.height_m)
    down = down_before(float(course.lat_deg[0]), float(course.lon_deg[0]), timetable.start, COLD_AFTER)
    cold = dark & (_lasting_s(dark, gone, down) >= COLD_AFTER.total_seconds())
    cold |= dark & (heights > HIGH_M)
    for w in spells:
        if w.temperature_c is not None:
            there = w.temperature_c - LAPSE_C_PER_M * (heights - float(np.nanmean(course.height_m)))
            here = _within([w], timetable, gone, km)
            cold = np.where(here, np.nan_to_num(there, nan=w.temperature_c) < COLD_C, cold)
    return np.asarray(cold, dtype=np.bool_)


def _lasting_s(dark: Bools, gone: Floats, down: timedelta) -> Floats:
    """Since when it has been dark, seconds (n,), `down` before her start already; 0 in the light."""
    began = np.where(dark, -np.inf, gone)
    if dark[0]:
        began[0] = -down.total_seconds()
    since = np.maximum.accumulate(began)
    return np.where(dark, gone - np.where(np.isfinite(since), since, 0.0), 0.0)


def _within(spells: Iterable[WeatherSpell], timetable: Timetable, gone: Floats, km: Floats) -> Bools:
    found = np.zeros(len(gone), dtype=np.bool_)
    for w in spells:
        here = np.ones(len(gone), dtype=np.bool_)
        a, b = (None if t is None else (t - timetable.start).total_seconds() for t in (w.from_at, w.to_at))
        for values, low, high in ((gone, a, b), (km, w.from_km, w.to_km)):
            if low is not None:
                here &= values >= low
            if high is not None:
                here &= values < high
        found |= here
    return found


def _gap(
    event: Event,
    timetable: Timetable,
    need: KitNeed,
    moments: Sequence[KitNeeded],
    lists: Sequence[KitHanded],
    *,
    always: bool,
) -> Gap:
    first = min(m.km for m in moments)
    late = [h.point for h in lists if h.km > first and any(is_for(need, k.name) for k in h.things)]
    points = event.course_of(timetable.runner).points
    places = [
        p.id
        for p in points[1:]
        if (p.km or 0.0) <= first and (p.crew_access or PointKind.DROP_BAG in p.kinds)
    ]
    return Gap(need, tuple(moments), late[0] if late else "", places[-1] if places else "", always)


def kit_told(event: Event, timetable: Timetable, course: Course) -> tuple[PlanDoubt, ...]:
    """Everything that does not reach her in time, and torches that do not last, to be said."""
    found = [_told(event, timetable, g) for g in gaps(event, timetable, course)]
    return (*found, *_batteries(event, timetable, course))


def _told(event: Event, timetable: Timetable, gap: Gap) -> PlanDoubt:
    definition = event.course_of(timetable.runner)
    about = {"thing": gap.need.value, "runner": event.runner(timetable.runner).name}
    when = _when(gap.moments, always=gap.always)
    got = [m.until.timestamp() for m in gap.moments if m.until is not None]
    if gap.handed_at and got:
        handed = definition.point(gap.handed_at)
        what = note(
            "kit-late",
            when,
            **about,
            place=handed.name,
            at_km=handed.km or 0.0,
            got=_many(got, 60.0),
            given_at=min(got),
            last_at=max(got),
        )
    else:
        what = note("kit-missing", when, **about)
    if not gap.give_at:
        return PlanDoubt(what, note("kit-do-carry", thing=gap.need.value))
    place = definition.point(gap.give_at)
    return PlanDoubt(what, note("kit-do-give", thing=gap.need.value, place=place.name, at_km=place.km or 0.0))


def _when(moments: Sequence[KitNeeded], *, always: bool) -> Note:
    """From when and where on, over her paces in one; which they are, where it is not each."""
    at, km = [m.at.timestamp() for m in moments], [m.km for m in moments]
    return note(
        "kit-when",
        *(saying("kit-pace", goal=m.pace) for m in moments if not always),
        paces="all" if always else "some",
        clock=_many(at, 60.0),
        road=_many(km, 0.1),
        from_at=min(at),
        to_at=max(at),
        least_km=min(km),
        most_km=max(km),
    )


def _many(values: Sequence[float], apart: float) -> str:
    return "many" if max(values) - min(values) >= apart else "one"


def _batteries(event: Event, timetable: Timetable, course: Course) -> Iterator[PlanDoubt]:
    """Where the file says how long her lights last: whether that is the night, and whether there is a second one."""
    lists = handed_over(event, timetable.runner)
    lights = [k for h in lists for k in h.things if runs_on_batteries(k.name)]
    torches = [k for k in lights if is_for(KitNeed.TORCH, k.name)]
    if not torches:
        return
    paces = paces_of(event, timetable)
    sky = sky_of(paces, course, timetable.start)
    name = event.runner(timetable.runner).name
    # What a file says in words alone has no hours: then nothing is known of how long her lights last.
    unknown = [k.name for k in torches if k.hours is None]
    if unknown == [event.runner(timetable.runner).torch]:
        return
    if unknown:
        dark_h = max(_dark_h(event, timetable, p, sky) for p in paces if p.name != LIMIT)
        if dark_h > LASTS_H:
            yield PlanDoubt(
                note("kit-hours", runner=name, torch=unknown[0], dark_h=dark_h), note("kit-do-hours")
            )
        return
    ends = [m for p in paces for m in _burnt_out(event, timetable, p, sky, lists)]
    if ends:
        whole = sum(k.hours or 0.0 for k in lights)
        what = note("kit-battery", _when(ends, always=len(ends) == len(paces)), runner=name, lasts_h=whole)
        yield PlanDoubt(what, note("kit-do-battery"))
    dark = any(np.any(_needed(event, timetable, course, sky, KitNeed.TORCH, *p.ticks()[:2])) for p in paces)
    if dark and len(lights) < 2 and not is_spare(torches[0].name):
        yield PlanDoubt(note("kit-no-spare", runner=name, torch=torches[0].name), note("kit-do-spare"))


def _dark_h(event: Event, timetable: Timetable, pace: GoalPace, sky: Sky) -> float:
    """For how many hours she is up in the dark at a pace."""
    gone, km, up = pace.ticks()
    dark = up & sky.dark_for_kit(gone, km, shaded_at(event.course_of(timetable.runner), km))
    return float((np.diff(gone) * dark[1:]).sum()) / 3600.0


def _burnt_out(
    event: Event, timetable: Timetable, pace: GoalPace, sky: Sky, lists: Sequence[KitHanded]
) -> Iterator[KitNeeded]:
    """When the lights she has by then are all burnt out in the dark: each burns after the other as she gets them, and what
    crew take takes its hours along."""
    gone, km, up = pace.ticks()
    dark = up & sky.dark_for_kit(gone, km, shaded_at(event.course_of(timetable.runner), km))
    hours = np.append(0.0, np.diff(gone)) / 3600.0
    coming, mine, without, first = list(lists), list[KitItem](), 0.0, 0
    for i in range(len(gone)):
        while coming and coming[0].km <= km[i] + 1e-9:
            h = coming.pop(0)
            mine = left_with(mine, h.taken) + [k for k in h.things if runs_on_batteries(k.name)]
        if not dark[i] or not mine:
            continue
        burns = next((n for n, k in enumerate(mine) if k.hours and k.hours > 0.0), None)
        if burns is not None:
            mine[burns] = replace(mine[burns], hours=(mine[burns].hours or 0.0) - hours[i])
            continue
        first = first or i
        without += hours[i]
        if without > MINUTES_LEFT / 60.0:
            out = timetable.start + timedelta(seconds=float(gone[first]))
            yield KitNeeded(pace.name, out, float(km[first]), None)
            return
