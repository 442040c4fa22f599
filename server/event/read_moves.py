"""Reads what crew movements need of an event file: places, how drives are estimated, sleeps, relay shares."""

from __future__ import annotations

from datetime import timedelta
from zoneinfo import ZoneInfo

from server.event.draft import At, Draft
from server.event.model import Driving, Place, Share, Sleep
from server.event.read_course import read_id
from server.event.section import Section


def read_places(draft: Draft, top: Section) -> None:
    """Every [[places]]: somewhere crew drive from or to that is no point."""
    for section in top.tables("places"):
        name = section.text("name")
        place_id = read_id(section, name)
        lat, lon = section.number("lat", -90, 90), section.number("lon", -180, 180)
        if section.has("lat") != section.has("lon"):
            section.error(
                "lat" if section.has("lat") else "lon", "lat and lon go together", "Give both or none."
            )
        draft.places.append(At(Place(place_id, name, lat, lon), section.path))
        section.done()


def read_driving(top: Section) -> Driving:
    """[driving]: what a drive without minutes is estimated from."""
    default = Driving()
    table = top.table("driving")
    if table is None:
        return default
    found = Driving(
        road_factor=table.number("road_factor", 1, 5, default.road_factor) or default.road_factor,
        speed_kmh=table.number("speed_kmh", 5, 130, default.speed_kmh) or default.speed_kmh,
        night_factor=table.number("night_factor", 1, 3, default.night_factor) or default.night_factor,
        full_car_park=table.minutes("full_car_park_minutes", default.full_car_park),
    )
    table.done()
    return found


def read_sleeps(draft: Draft, section: Section) -> tuple[Sleep, ...]:
    """`sleeps` of a part: from and to, the first such time after the one before where no day is given."""
    found: list[Sleep] = []
    for table in section.tables("sleeps"):
        after = draft.local_start() if draft.starts_known else None
        start = draft.moment(table, "from", after, '"Sun 01:00"')
        if start is not None:
            after = start.astimezone(ZoneInfo(draft.zone)).replace(tzinfo=None)
        end = draft.moment(table, "to", after, '"Sun 03:00"')
        for key, at in (("from", start), ("to", end)):
            if at is None and not table.has(key):
                table.missing(key, 'Write sleeps = [ { from = "Sun 01:00", to = "Sun 03:00" } ].')
        if start is not None and end is not None:
            if end <= start or end - start > timedelta(hours=16):
                table.error(
                    "to", "a sleep ends before it begins, or lasts over 16 hours", "Give both with weekday."
                )
            else:
                found.append(Sleep(start, end))
        table.done()
    return tuple(found)


def read_shares(draft: Draft, top: Section) -> None:
    """Every [[shares]]: which person of a relay team runs from where to where."""
    only = draft.runners[0].value.id if len(draft.runners) == 1 else ""
    for section in top.tables("shares"):
        runner = section.text("runner") or only
        if not runner and draft.runners:
            section.missing("runner", "There are several runners: say whose race it is a share of.")
        share = Share(
            runner=runner,
            person=section.text("person", need='Say who runs it: person = "ana".'),
            from_point=section.text("from", need='Say where the share begins: from = "start".'),
            to_point=section.text("to", need='Say where the share ends: to = "mill".'),
        )
        draft.shares.append(At(share, section.path))
        section.done()
