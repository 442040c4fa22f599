"""Reads what a plan's pace rests on: own runs, past races, others' results, the weather to plan with."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import PurePosixPath
from zoneinfo import ZoneInfo

from server.event.draft import At, Draft
from server.event.model import GroundState, PastRace, WeatherSpell
from server.event.section import WORDS_MAX, Section

RUNS_MAX = 50
KM_LEAST, KM_MOST = 1.0, 1000.0
_RACE = 'Write past_race = { name = "Fell 50", km = 52, ascent_m = 1900, time = "7:40" }.'
_WEATHER = (
    'Write [[weather]] with from = "Sat 12:00", to = "Sat 18:00", temperature_c = 27, humidity = 55; '
    'or ground = "mud" with from_km and to_km.'
)


def read_file_name(section: Section, key: str) -> str:
    """The name of a file that stands beside the event file, '' for none."""
    section.expect(key, "name of a file beside the event file")
    name = section.text(key)
    return name if not name or _beside(section, key, name) else ""


def read_own_runs(section: Section) -> tuple[str, ...]:
    """own_runs = ["run1.gpx", "long.fit"]: each once."""
    section.expect("own_runs", f"list of at most {RUNS_MAX} names of files beside the event file")
    names = section.texts("own_runs")
    if len(names) > RUNS_MAX:
        section.error("own_runs", f"{len(names)} recordings are too many", f"Name the best {RUNS_MAX}.")
        return ()
    twice = next((n for n in names if names.count(n) > 1), None)
    if twice is not None:
        section.error(
            "own_runs", f"'{twice}' is named twice", "Name each recording once: it would count twice."
        )
    return tuple(n for n in names if _beside(section, "own_runs", n))


def _beside(section: Section, key: str, name: str) -> bool:
    path = PurePosixPath(name)
    if path.is_absolute() or ".." in path.parts or "\\" in name or ":" in name:
        what = f"'{name}' is not beside the event file"
        section.error(key, what, f"Copy the file next to the event file and write its name: '{_last(name)}'.")
        return False
    return True


def _last(name: str) -> str:
    return name.replace("\\", "/").rstrip("/").rsplit("/", 1)[-1] or "file.gpx"


def read_past_races(section: Section) -> tuple[PastRace, ...]:
    """past_race = { ... }, or a list of them."""
    section.expect("past_race", "table, or list of tables")
    value = section.raw("past_race")
    if value is not None and not isinstance(value, dict | list):
        section.error("past_race", f"{value!r} is no table", _RACE)
        return ()
    found = [_past_race(s) for s in section.tables("past_race")]
    return tuple(r for r in found if r is not None)


def _past_race(section: Section) -> PastRace | None:
    name = section.text("name", need=_RACE)
    km = section.number("km", KM_LEAST, KM_MOST, need=_RACE)
    ascent = section.number("ascent_m", 0, 60_000, need="Give the ascent in metres, 0 for a level race.")
    time = section.span("time", timedelta(minutes=3), timedelta(days=14))
    if not section.has("time"):
        section.missing("time", _RACE)
    section.done()
    if not name or km is None or ascent is None or time is None:
        return None
    speed = km * 1000.0 / time.total_seconds()
    if not 0.4 <= speed <= 7.0:
        what = f"{km:g} km in {section.values['time']} is {speed * 3.6:.1f} km/h, no speed on foot"
        section.error("time", what, 'Write hours and minutes, as in "7:40"; look whether they were mixed up.')
        return None
    return PastRace(name, km, ascent, time)


def read_weather(draft: Draft, top: Section) -> None:
    """Every [[weather]]."""
    for section in top.tables("weather"):
        course = section.text("course") or None
        ids = [c.value.id for c in draft.courses]
        if course is not None and course not in ids:
            section.error("course", f"there is no course '{course}'", f"Known: {', '.join(ids)}.")
        from_at, to_at = _hours(draft, section)
        from_km, to_km = section.number("from_km", 0, KM_MOST), section.number("to_km", 0, KM_MOST)
        if from_km is not None and to_km is not None and from_km >= to_km:
            what = f"the weather ends at km {to_km:g}, before it begins"
            section.error("to_km", what, "Check from_km and to_km.")
        if (from_km is not None or to_km is not None) and course is None and len(ids) > 1:
            section.missing("course", f"There are several courses: say which ({', '.join(ids)}).")
        temperature = section.number("temperature_c", -45, 55)
        humidity = section.number("humidity", 0, 100)
        ground = section.choice("ground", GroundState)
        if not (section.has("temperature_c") or section.has("ground")):
            section.report.error(section.path, "this weather says nothing", _WEATHER)
        if section.has("humidity") and not section.has("temperature_c"):
            section.error("humidity", "humidity without temperature_c says nothing", "Add temperature_c.")
        spell = WeatherSpell(
            from_at, to_at, temperature, humidity, ground, from_km, to_km, course,
            section.text("note", most=WORDS_MAX),
        )  # fmt: skip
        draft.weather.append(At(spell, section.path))
        section.done()


def _hours(draft: Draft, section: Section) -> tuple[datetime | None, datetime | None]:
    """`from` without a day is on the day of the start, `to` the first such time after it."""
    day = draft.local_start().replace(hour=0, minute=0, second=0, microsecond=0)
    begins = draft.moment(section, "from", day, '"Sat 12:00"')
    after = day if begins is None else begins.astimezone(ZoneInfo(draft.zone)).replace(tzinfo=None)
    ends = draft.moment(section, "to", after, '"Sat 18:00"')
    if begins is not None and ends is not None and ends <= begins:
        section.error("to", "the weather ends before it begins", "Check the two times, with weekday.")
    if draft.starts_known and ends is not None and ends <= draft.starts - timedelta(days=1):
        section.error("to", "this weather is over days before the start", "Check the date.")
    return begins, ends
