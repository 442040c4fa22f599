"""The tables of an event file about a runner: what she means to do, has run, eats and drinks. Frozen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import Any, Final

from server.event.context import ReadSoFar
from server.event.forms import WORDS_MAX, Id, Number, Text, Texts, Values, Whole, beside, course_named
from server.event.forms_of_time import Moment, pace, span
from server.event.kit import MOVED, DropBag, KitItem
from server.event.table import One, Table, Tables, UnusableError, key
from server.event.table_reader import Section, did_you_mean
from server.sentences import say

RUNS_MAX: Final = 50
SLOWEST_MS, FASTEST_MS = 0.4, 7.0
_LONGEST = timedelta(days=14)
_RACE = say("do-write-past-race-name-fell")
_TARGETS = say("do-give-target-finish-29-00")


class Goal(StrEnum):
    """A runner's three intended timetables; B is the target, A its 10% and C its 90% side."""

    A = "A"
    B = "B"
    C = "C"


@dataclass(frozen=True, slots=True)
class PastRace(Table):
    """A race of hers: Riegel's rule and the climb make a time for this one."""

    name: str = key(Text(), "what it was", '"Fell 50"', need=_RACE)
    km: float = key(Number(1.0, 1000.0), "its length", "52", need=_RACE)
    ascent_m: float = key(Number(0, 60_000), "its climb, 0 for a level one", "1900",
        need=say("do-give-ascent-metres-0-level"))  # fmt: skip
    time: timedelta = key(
        span(timedelta(minutes=3), _LONGEST), "her time, stops and all", '"7:40"', need=_RACE
    )

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """A speed on foot."""
        if not v["name"] or None in v.values():
            raise UnusableError
        speed = v["km"] * 1000.0 / v["time"].total_seconds()
        if not SLOWEST_MS <= speed <= FASTEST_MS:
            what = say(
                "wrong-km-km-h-no-speed",
                km=f"{v['km']:g}",
                time=s.values["time"],
                speed_km_h=f"{speed * 3.6:.1f}",
            )
            s.error("time", what, say("do-write-hours-minutes-7-40"))
            raise UnusableError


@dataclass(frozen=True, slots=True)
class Target(Table):
    """One form: a finish time, a pace with all stops, or easy pace plus a margin.

    Paces are per km. None of them: the plan takes it from her past race or her own runs.
    """

    finish: timedelta | None = key(
        span(timedelta(minutes=30), _LONGEST), "the whole time, stops and all", '"29:00"'
    )
    pace_all_in: timedelta | None = key(pace(), "minutes per km, stops and all", '"10:50"')
    easy_pace: timedelta | None = key(pace(), "minutes per km of an easy training run; with margin", '"6:30"')
    margin: timedelta | None = key(pace(timedelta(0), timedelta.max),
        "what the race is slower by, for a flat 50 km; scaled with distance and climb", '"1:30"')  # fmt: skip

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """One form, whole."""
        forms = sum(s.has(k) for k in ("finish", "pace_all_in", "easy_pace"))
        if forms != 1:
            what = say("wrong-several-forms-target-given") if forms else say("wrong-target-empty")
            s.report.error(s.path, what, _TARGETS)
        if s.has("margin") != s.has("easy_pace"):
            s.report.error(s.path, say("wrong-easy-pace-margin-go-together"), _TARGETS)


@dataclass(frozen=True, slots=True)
class Eaten(Table):
    """A thing she eats or drinks, so many an hour. What one holds gives the figures an hour that are not written.

    None where that is not said.
    """

    name: str = key(Text(), "what", '"gel"', need=say("do-name-name-gel-per-h"))
    per_h: float = key(Number(0.05, 20), "how many in an hour; 0.5 is one every two hours", "1",
        need=say("do-say-how-many-hour-name"))  # fmt: skip
    kcal: float | None = key(Number(0, 2000), "energy in one", "100")
    carbohydrate_g: float | None = key(Number(0, 400), "carbohydrate in one", "25")
    sodium_mg: float | None = key(Number(0, 5000), "sodium in one", "50")
    caffeine_mg: float | None = key(Number(0, 400), "caffeine in one", "0")


MOST_PER_H: Final[Mapping[str, float]] = {
    "kcal_per_h": 1500.0,
    "carbohydrate_g_per_h": 250.0,
    "fluid_ml_per_h": 3000.0,
    "sodium_mg_per_h": 5000.0,
    "caffeine_mg_per_h": 200.0,
}
"""More an hour is a slip of the pen, whether it is written or follows from what she eats (own choice)."""


@dataclass(frozen=True, slots=True)
class FuelPlan(Table):
    """What she eats and drinks from a point until the next one named. Figures are for planning: drink to thirst.

    Plain words plus the figures, or the things from which the figures follow.
    """

    from_point: str = key(
        Text(), "the id of the point", '"start"', name="from", need=say("do-say-from-point-from-start")
    )
    words: str = key(Text(WORDS_MAX), "in plain words", '"a bar each half hour"', must=True)
    kcal_per_h: float | None = key(Number(0, MOST_PER_H["kcal_per_h"]), "energy an hour", "240")
    carbohydrate_g_per_h: float | None = key(
        Number(0, MOST_PER_H["carbohydrate_g_per_h"]), "carbohydrate an hour", "45"
    )
    fluid_ml_per_h: float | None = key(
        Number(0, MOST_PER_H["fluid_ml_per_h"]), "fluid an hour, to plan bottles with", "500"
    )
    sodium_mg_per_h: float | None = key(Number(0, MOST_PER_H["sodium_mg_per_h"]), "sodium an hour", "400")
    caffeine_mg_per_h: float | None = key(
        Number(0, MOST_PER_H["caffeine_mg_per_h"]), "caffeine an hour", "20"
    )
    eats: tuple[Eaten, ...] = key(
        Tables(Eaten), "the things themselves: bags and the shopping list are counted from them"
    )

    def rate(self, name: str) -> float | None:
        """An amount an hour, by its key: as it is written, else what the things make of it; None where neither says."""
        given: float | None = getattr(self, name)
        return self.made(name) if given is None else given

    def made(self, name: str) -> float | None:
        """The same by the things alone."""
        held = [(e.per_h, getattr(e, name.removesuffix("_per_h"), None)) for e in self.eats]
        known = [per_h * amount for per_h, amount in held if amount is not None]
        return sum(known) if known else None


@dataclass(frozen=True, slots=True)
class Prompt(Table):
    """What she wants to be told in a bad moment, in her own words."""

    when: str = key(Text(WORDS_MAX), "when it is bad", '"the second night"',
        need=say("do-say-when-bad-when-second"))  # fmt: skip
    words: str = key(Text(WORDS_MAX), "what crew say then", '"eat, then count two hundred steps"',
        need=say("do-write-what-wants-told-words"))  # fmt: skip


class Bib(Text):
    """A number or a text."""

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        """The number as text."""
        value = s.raw(key)
        if isinstance(value, int) and not isinstance(value, bool):
            return str(value)
        return super().read(s, key, v, d)

    def schema(self) -> dict[str, Any]:
        """Either."""
        return {"type": ["string", "integer"]}


class OwnRuns(Texts):
    """Files of her own runs, each once."""

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        """Those that stand beside the event file."""
        names = super().read(s, key, v, d) or ()
        if len(names) > RUNS_MAX:
            s.error(
                key, say("wrong-recordings-too-many", count=len(names)), say("do-name-best", most=RUNS_MAX)
            )
            return ()
        twice = next((n for n in names if names.count(n) > 1), None)
        if twice is not None:
            s.error(key, say("wrong-named-twice", name=twice), say("do-name-each-recording-once-would"))
        return tuple(n for n in names if beside(s, key, n))


@dataclass(frozen=True, slots=True)
class Runner(Table):
    """A runner and what she means to do.

    `person` is the global person id; `start` already holds her wave. `own_runs` names files of her own runs (GPX, FIT, TCX)
    that stand beside the event file. `carries` is the kit that she has on her from the start, `drop_bags` what waits for
    her where no crew bring it. `bottles`: how many of half a litre she can carry; `trained_carbohydrate_g_per_h`: what her
    stomach has taken in training (None = not said). `fade`: how much she slows over the hours, 1 as most do.
    """

    id: str = key(Id("name"), "what other tables call her", '"maren"')
    person: str = key(Text(), "her id in [[people]], where it is not the same", '"maren"', must=True)
    name: str = key(Text(), "her name", '"Maren"', need=say("do-give-runner-name-name-maren"))
    bib: str = key(Bib(said="whole number or text"), "her number", '"214"', must=True)
    course: str = key(Text(), "which of several [[courses]]", '"long"', must=True)
    start: datetime = key(
        Moment(), "a start of her own; goes before that of her wave", "2027-09-11T05:40", must=True
    )
    target: Target = key(
        One(Target), "what she means to do; without it past_race or own_runs say what she can", must=True
    )
    wave: str = key(Text(), "the wave she starts in, of [waves]", '"B"')
    clothing: str = key(
        Text(WORDS_MAX), "what she wears, for whoever looks for her", '"orange jacket, white cap"'
    )
    torch: str = key(Text(WORDS_MAX), "what light she has", '"head torch, spare in the pack"')
    medical_note: str = key(Text(WORDS_MAX),
        "what helpers must know; only her ladder and race control see it", '"asthma, inhaler in the pack"')  # fmt: skip
    fuel: tuple[FuelPlan, ...] = key(Tables(FuelPlan), "what she means to take in, from a point on")
    climb_rate_m_per_h: float | None = key(
        Number(50, 3000), "metres of height she climbs in an hour", "700", name="climb_m_per_h"
    )
    walk_kmh: float | None = key(Number(1, 10), "her fastest walk on the level", "6.5")
    downhill_kmh: float | None = key(Number(2, 30), "how fast she runs down at most", "12")
    fade: float | None = key(
        Number(0, 3),
        "how she slows over the hours: 1 as most do, 0 not at all; `stilepost learn` finds it",
        "1.2",
    )
    own_runs: tuple[str, ...] = key(
        OwnRuns(said=f"list of at most {RUNS_MAX} names of files beside the event file"),
        "recordings of her runs (GPX, FIT, TCX): her own pace by slope", '["long.gpx"]')  # fmt: skip
    past_races: tuple[PastRace, ...] = key(Tables(PastRace, or_one=_RACE),
        "a race she has run: what it makes of this one", "%s", name="past_race")  # fmt: skip
    carries: tuple[KitItem, ...] = key(Tables(KitItem, texts=True, without=MOVED),
        "the kit she has on her from the start", '[ "rain jacket", %s ]')  # fmt: skip
    drop_bags: tuple[DropBag, ...] = key(
        Tables(DropBag), "what waits for her in bags that the race takes to points"
    )
    prompts: tuple[Prompt, ...] = key(
        Tables(Prompt), "her own words for bad moments, printed for her and for who meets her"
    )
    wants_to_hear: tuple[str, ...] = key(
        Texts(WORDS_MAX), "what does her good to be told", '["the next stop, and no further"]'
    )
    not_to_hear: tuple[str, ...] = key(
        Texts(WORDS_MAX), "what nobody should say to her", '["you are nearly there"]'
    )
    bottles: int | None = key(Whole(1, 20), "how many of half a litre she can carry; 4 without it", "3")
    trained_carbohydrate_g_per_h: float | None = key(
        Number(0, 200), "what her stomach has taken in training, an hour", "60"
    )

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Her person, course, start and target, where they are not given."""
        v["person"], v["name"] = v["person"] or v["id"], v["name"] or v["id"]
        v["course"] = course_named(s, d)
        v["start"] = v["start"] or _wave_start(s, v["wave"], d)
        if v["target"] is None and not any(s.has(k) for k in ("target", "own_runs", "past_race")):
            s.missing("target", _TARGETS)
        v["target"] = v["target"] or Target()


def _wave_start(s: Section, wave: str, d: ReadSoFar) -> datetime:
    """A start of her own goes before the wave's, the wave's before the event's."""
    if wave and wave not in d.waves:
        known = ", ".join(sorted(d.waves)) or "none"
        remedy = did_you_mean(wave, d.waves, say("do-add-start-under-waves-known", known=known))
        s.error("wave", say("wrong-no-wave", wave=wave), remedy)
    return d.waves.get(wave, d.starts)
