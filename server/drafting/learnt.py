"""What a race that was held says, put into the next event file: in the keys there are, comments kept, each change told.

In: the JSON that `stilepost afterwards` writes, and the text of the next file. Out: the new text, and what was changed and
why; what one race can't say is told as a range and not written.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Any, Final

from server.drafting.document import Document
from server.drafting.race import ident
from server.event.times import write_span
from server.plan.held import Figure, drawn_fade, drawn_stops

__all__ = ["HeldRace", "LearnError", "Lesson", "read_held", "taken_in"]

NEAR: Final = 0.1
"""A figure that differs by less from what stands there is left as it is (own choice)."""
LONGEST_STOP_MIN: Final = 60
"""A longer stop is a sleep: how long it is is decided, not learnt (own choice)."""


class LearnError(ValueError):
    """A file that is not what `afterwards` writes, or a race and a plan that don't fit: code and values of its sentence."""

    def __init__(self, code: str, **values: str) -> None:
        super().__init__(code)
        self.code, self.values = code, values


@dataclass(frozen=True, slots=True)
class HeldRace:
    """A race that was held: `race` km, ascent (m) and time, None without a finish; `stops` (planned, taken) seconds."""

    name: str
    runner: str
    race: tuple[float, float, timedelta] | None
    stops: tuple[tuple[float, float], ...]
    fade: Figure | None
    carbohydrate: Figure | None
    fluid: Figure | None


@dataclass(frozen=True, slots=True)
class Lesson:
    """One thing learnt: its `kind` (a sentence's name), the key it is of, what stood there ('' nothing), what stands there
    now ('' = not written), its 10% and 90% side, from how many figures."""

    kind: str
    field: str
    was: str
    now: str
    low: str = ""
    high: str = ""
    count: int = 1


def read_held(text: str, file: str) -> HeldRace:
    """The race of a JSON file. LearnError for any other."""
    try:
        found = json.loads(text)
        past, intake = found["past_race"], found.get("intake") or {}
        race = None
        if past is not None:
            race = float(past["km"]), float(past["ascent_m"]), timedelta(seconds=float(past["time_s"]))
        stops = tuple(
            (float(s["planned_s"]), float(s["planned_s"]) + float(s["over_s"]))
            for s in found["sections"]
            if not s["from"]
        )
        return HeldRace(
            str(found.get("name") or found["event"]),
            str(found["runner"]),
            race,
            stops,
            _figure(found.get("fade")),
            _figure(intake.get("carbohydrate_g_per_h")),
            _figure(intake.get("fluid_ml_per_h")),
        )
    except (ValueError, KeyError, TypeError, AttributeError) as error:
        raise LearnError("learn-no-json", file=file) from error


def _figure(found: Any) -> Figure | None:
    if found is None:
        return None
    value, low, high = (float(found[k]) for k in ("value", "low", "high"))
    return Figure(value, low, high, int(found.get("count", 1)))


def taken_in(text: str, runner: str | None, races: Sequence[HeldRace]) -> tuple[str, tuple[Lesson, ...]]:
    """The next file's text with what those races say of that runner (None: the one they are of, else the only one), and each
    change. LearnError for a runner it has not got. `UnusualError` for a text that is not written table by table."""
    doc = Document(text)
    runners = doc.tables("runners")
    ids = [ident(r) for r in runners]
    wanted = runner or next((r.runner for r in races if r.runner in ids), ids[0] if len(ids) == 1 else "")
    if wanted not in ids:
        raise LearnError("learn-no-runner", runner=wanted or races[0].runner, known=", ".join(ids) or "–")
    number = ids.index(wanted)
    # Stops are made longer by what stands there: of a race that was taken in before they are in it already.
    there = {r.name for r in races if r.race is not None and _row(r) in _listed(doc, number)}
    changes = [
        *_races(doc, number, wanted, races),
        *_fade(doc, number, wanted, races),
        *_stops(doc, [r for r in races if r.name not in there], alone=len(ids) == 1),
        *_intake(doc, number, wanted, races),
    ]
    return doc.text(), tuple(changes)


def _races(doc: Document, number: int, runner: str, races: Sequence[HeldRace]) -> list[Lesson]:
    there = doc.tables("runners")[number].get("past_race", [])
    listed = _listed(doc, number)
    out: list[Lesson] = []
    for r in races:
        if r.race is None:
            out.append(Lesson("learn-not-finished", r.name, "", ""))
            continue
        row = _row(r)
        old = next((x for x in listed if x.get("name") == r.name), None)
        if old == row:
            continue
        if old is not None:
            listed[listed.index(old)] = row
        else:
            # What she ran last is what the plan is made of first.
            listed.insert(0, row)
        was = "" if old is None else _race_words(old)
        out.append(Lesson("learn-race", f"runners.{runner}.past_race", was, _race_words(row)))
    if any(c.now for c in out):
        # One inline table and a list of them are written differently: the key is made anew where it was one.
        if not isinstance(there, list):
            doc.change("runners", number, {"past_race": None})
        doc.change("runners", number, {"past_race": listed})
    if any(c.now for c in out) and "target" in doc.tables("runners")[number]:
        out.append(Lesson("learn-target-stays", f"runners.{runner}.target", "", ""))
    return out


def _listed(doc: Document, number: int) -> list[dict[str, Any]]:
    there = doc.tables("runners")[number].get("past_race", [])
    return [dict(r) for r in (there if isinstance(there, list) else [there])]


def _row(r: HeldRace) -> dict[str, Any]:
    """The race as the file has it: its time to the minute, as a race is spoken of."""
    assert r.race is not None, "asked of finished races"
    km, ascent, took = r.race
    took = timedelta(minutes=round(took / timedelta(minutes=1)))
    return {"name": r.name, "km": round(km, 1), "ascent_m": round(ascent), "time": write_span(took)}


def _race_words(row: dict[str, Any]) -> str:
    return f"{row['name']}: {row['km']} km, {row['ascent_m']} m, {row['time']}"


def _fade(doc: Document, number: int, runner: str, races: Sequence[HeldRace]) -> list[Lesson]:
    found = drawn_fade(r.fade for r in races if r.fade is not None)
    if found is None:
        return []
    return [_set(doc, number, runner, "fade", found, digits=2, kind="fade")]


def _set(doc: Document, number: int, runner: str, key: str, found: Figure, digits: int, kind: str) -> Lesson:
    """A figure of hers written where it differs from what stands there. What she ate was at least what was logged: there a
    higher figure stays."""
    had = doc.tables("runners")[number].get(key)
    value: float = round(found.value, digits) if digits else round(found.value)
    low, high = (f"{x:.{digits}f}" for x in (found.low, found.high))
    field, was = f"runners.{runner}.{key}", "" if had is None else f"{had:g}"
    least = kind == "carbohydrate"
    if had is not None and (abs(had - value) <= NEAR * value or (least and had > value)):
        return Lesson(f"learn-{kind}-same", field, was, "", low, high, found.count)
    doc.change("runners", number, {key: value})
    return Lesson(f"learn-{kind}", field, was, f"{value:g}", low, high, found.count)


def _stops(doc: Document, races: Sequence[HeldRace], *, alone: bool) -> list[Lesson]:
    """Her planned stops by what they took longer; told and not written where others run by the same points."""
    found = drawn_stops([s for r in races for s in r.stops])
    if found is None:
        return []
    low, high = f"{found.low:.2f}", f"{found.high:.2f}"
    if not alone or abs(found.value - 1.0) <= NEAR:
        kind = "learn-stops-shared" if not alone else "learn-stops-same"
        return [Lesson(kind, "points", "", f"{found.value:.2f}", low, high, found.count)]
    out: list[Lesson] = []
    for n, point in enumerate(doc.tables("points")):
        planned = point.get("stop_minutes")
        if not isinstance(planned, int | float) or not 1 <= planned <= LONGEST_STOP_MIN:
            continue
        minutes = round(planned * found.value)
        if minutes != planned:
            doc.change("points", n, {"stop_minutes": minutes})
            low, high = (f"{planned * x:.0f}" for x in (found.low, found.high))
            field = f"points.{ident(point)}.stop_minutes"
            out.append(Lesson("learn-stop", field, f"{planned:g}", str(minutes), low, high, found.count))
    return out


def _intake(doc: Document, number: int, runner: str, races: Sequence[HeldRace]) -> list[Lesson]:
    """Carbohydrate goes where the plan looks whether more is meant than her stomach has taken; fluid is told: one drinks to
    thirst."""
    out: list[Lesson] = []
    eaten = [r.carbohydrate for r in races if r.carbohydrate is not None]
    if eaten:
        found = max(eaten, key=lambda f: f.value)
        key, kind = "trained_carbohydrate_g_per_h", "carbohydrate"
        out.append(_set(doc, number, runner, key, found, digits=0, kind=kind))
    for f in (r.fluid for r in races if r.fluid is not None):
        value, low, high = (f"{x:.0f}" for x in (f.value, f.low, f.high))
        out.append(Lesson("learn-fluid", f"runners.{runner}.fuel", value, "", low, high, f.count))
    return out
