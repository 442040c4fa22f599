"""What each part sees first, beside the sentence: those at home what they do when an alarm comes, the runner her next
section, a volunteer who is due and two buttons."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from server.api.field import IN_DANGER
from server.api.replies import BoardAnswer, FieldAnswer, FieldRunner
from server.api.snapshot import Picture
from server.api.who_may import May
from server.conversation.telling import measures, times
from server.conversation.telling.answer import PointAnswer
from server.event.model import Event, Part, PartKind
from server.facts.state import Going
from server.pages.alarm_card import PhoneButton, ladder_phones
from server.pages.first import next_point, still_due
from server.pages.view import Pen
from server.plan.fuel import fuel_of
from server.plan.light import HORIZON_DEG, sun_elevation_deg

DUE_MAX = 40


@dataclass(frozen=True, slots=True)
class Duty:
    """What the safety contact does when the alarm comes, step by step, and the ladder."""

    steps: tuple[str, ...]
    ladder: tuple[PhoneButton, ...]


@dataclass(frozen=True, slots=True)
class NextSection:
    """The runner's own next section: what is said of it, and what waits for her at its end in which car."""

    lines: tuple[str, ...]
    kit: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Station:
    """A volunteer's point: who is still to come (bib and name), the points to choose from where none is theirs, which of
    them an only runner is at or comes to next ('' for several), and the words that a press sends: '§' stands for the bib and
    '¶' for the point."""

    place: str
    due: tuple[str, ...]
    more: str
    places: tuple[str, ...]
    likely: str
    say_in: str
    say_out: str


@dataclass(frozen=True, slots=True)
class RunnerGroup:
    """Runners of whom the same is to be said, each with their id; `more`: those who do not stand here."""

    title: str
    runners: tuple[tuple[str, str], ...]
    more: str = ""


@dataclass(frozen=True, slots=True)
class FieldInBrief:
    """For organisers: how many are where in their race, a line each. Of a whole field also who is late where, whose cut-off
    is missed or in danger, who has not started and who has retired; and each point with how many came, left, are there
    and are yet to come."""

    lines: tuple[str, ...]
    groups: tuple[RunnerGroup, ...] = ()
    points: tuple[tuple[str, str, int, int, int, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Own:
    """The blocks of one reader, each None where it is not theirs."""

    duty: Duty | None = None
    section: NextSection | None = None
    station: Station | None = None
    field: FieldInBrief | None = None


def own(picture: Picture, shown: BoardAnswer, person: str, parts: tuple[Part, ...], pen: Pen) -> Own:
    """What that person's parts see first."""
    kinds = {p.kind for p in parts}
    runner = next((r.id for r in picture.event.runners if r.person == person), None)
    return Own(
        duty=_duty(picture.event, person, parts, pen) if PartKind.SAFETY_CONTACT in kinds else None,
        section=_section(picture, shown, runner, pen) if runner and PartKind.RUNNER in kinds else None,
        station=_station(picture, parts, pen) if PartKind.VOLUNTEER in kinds else None,
        field=_field(picture, shown.field, pen) if PartKind.ORGANISER in kinds else None,
    )


def _duty(event: Event, person: str, parts: tuple[Part, ...], pen: Pen) -> Duty:
    part = next(p for p in parts if p.kind is PartKind.SAFETY_CONTACT)
    runner = part.runner or event.runners[0].id
    control = event.race_control
    length = times.duration(event.alarm.answer_within, pen.reader.language)
    call = "duty-call-you" if part.calls_race_control else "duty-call-other"
    steps = (
        pen.word("duty-danger", number=event.emergency_number),
        pen.word("duty-answer", length=length),
        pen.word(call, name=control.name, phone=control.phone),
        pen.word("duty-look"),
        pen.word("duty-end"),
    )
    return Duty(steps, ladder_phones(event, runner, person, pen))


def _section(picture: Picture, shown: BoardAnswer, runner: str, pen: Pen) -> NextSection | None:
    ahead = next_point(picture, runner, May.YES)
    if ahead is None or ahead.window is None:
        return None
    of_her = next((r for r in shown.runners if r.id == runner), None)
    meeting = next((m for m in of_her.meetings if m.values.point == ahead.point), None) if of_her else None
    lines = [
        pen.word("section-due", place=ahead.name, when=times.window(ahead.window, pen.reader, pen.now)),
        *_way(picture, runner, ahead, pen),
    ]
    if meeting is None:
        lines.append(pen.word("section-nobody", place=ahead.name))
        meeting = next((m for m in of_her.meetings if not m.values.lost), None) if of_her else None
        if meeting is None:
            return NextSection(tuple(lines), ())
        when = times.window_short(meeting.values.window, pen.reader, pen.now)
        crew = pen.say.all(meeting.crew)
        lines.append(pen.word("section-next-crew", place=meeting.name, when=when, crew=crew))
    else:
        lines.append(pen.word("section-crew", crew=pen.say.all(meeting.crew), place=ahead.name))
    if meeting.values.food:
        lines.append(pen.word("section-food", food=meeting.values.food))
    return NextSection(tuple(lines), _in_which_car(picture.event, meeting.values.meeting, pen))


def _way(picture: Picture, runner: str, ahead: PointAnswer, pen: Pen) -> Iterator[str]:
    """What lies before her as far as the next point, what she has with her by her plan, and the dark."""
    table, course = picture.timetable(runner), picture.event.course_of(runner)
    row = table.row(ahead.point)
    up, down = f"{row.leg_ascent_m:.0f}", f"{row.leg_descent_m:.0f}"
    yield pen.word("section-ground", km=pen.km(row.leg_km), up=up, down=down)
    order = [r.point for r in table.rows]
    at = order.index(ahead.point)
    carried = fuel_of(picture.event.runner(runner), course.points, table).carry
    c = next((c for c in carried if order.index(c.from_point) < at <= order.index(c.to_point)), None)
    if c is not None and (c.bottles or c.things):
        bottles = (pen.say.s("paper-bottles-of", count=c.bottles),) if c.bottles else ()
        things = pen.say.all((*bottles, *(f"{count} {name}" for name, count in c.things)))
        yield pen.word("section-carry", things=things)
    dark = _dark_from(picture, runner, ahead, pen.now)
    if dark is not None:
        told = dark > pen.now
        key = "section-torch" if told else "section-torch-now"
        yield pen.word(key, place=ahead.name, when=pen.when(times.floor_to(dark)) if told else "")


LOOK = timedelta(minutes=5)
"""So closely the light is looked at on her way to the next point (own choice)."""


def _dark_from(picture: Picture, runner: str, ahead: PointAnswer, now: datetime) -> datetime | None:
    """From when it is dark before she is in even if she is slow; None if it is light until then."""
    assert ahead.window is not None
    spot = picture.course(runner).at(ahead.km)
    steps = range(int(max(ahead.window.late - now, timedelta(0)) / LOOK) + 1)
    return next(
        (
            t
            for t in (now + k * LOOK for k in steps)
            if sun_elevation_deg(spot.lat_deg, spot.lon_deg, t) < HORIZON_DEG
        ),
        None,
    )


def _in_which_car(event: Event, meeting: str, pen: Pen) -> tuple[str, ...]:
    plan = next((m for m in event.meetings if m.id == meeting), None)
    if plan is None:
        return ()
    names = {c.id: c.name for c in event.cars}
    found = []
    for item in (k for k in plan.kit if not k.take_back):
        car = names.get(item.car or plan.car or "", "")
        found.append(pen.word("section-kit", item=item.name, car=car or "none"))
    return tuple(found)


def _station(picture: Picture, parts: tuple[Part, ...], pen: Pen) -> Station:
    event = picture.event
    point = next((p.point for p in parts if p.kind is PartKind.VOLUNTEER and p.point), None)
    names = {p.id: p.name for c in event.courses for p in c.points}
    due = still_due(picture, point) if point else ()
    lines = tuple(f"{event.runner(r).bib} {event.runner(r).name}".strip() for r in due)
    place = names.get(point or "", "")
    return Station(
        place=place,
        due=lines[:DUE_MAX],
        more=pen.word("station-more", count=str(len(lines) - DUE_MAX)) if len(lines) > DUE_MAX else "",
        places=() if place else tuple(dict.fromkeys(names.values())),
        likely="" if place else _where_now(picture),
        say_in=pen.word("say-in", bib="§", place=place or "¶"),
        say_out=pen.word("say-out", bib="§", place=place or "¶"),
    )


def _where_now(picture: Picture) -> str:
    """The point an only runner stands at or comes to next; '' for several runners, and once none is ahead."""
    if len(picture.event.runners) != 1:
        return ""
    runner = picture.event.runners[0].id
    here = picture.state.runner(runner)
    if here.going is Going.AT_POINT and here.reached:
        return picture.event.course_of(runner).point(here.reached[-1]).name
    ahead = next_point(picture, runner, May.YES)
    return ahead.name if ahead is not None else ""


def _field(picture: Picture, whole: FieldAnswer | None, pen: Pen) -> FieldInBrief | None:
    if len(picture.event.runners) < 2:
        return None
    counts: dict[Going, int] = {}
    for r in picture.event.runners:
        going = picture.state.runner(r.id).going
        counts[going] = counts.get(going, 0) + 1
    lines = tuple(
        pen.word(
            "field-line", what=pen.word("going-" + g.value.replace(" ", "-").replace(",", "")), count=str(n)
        )
        for g, n in counts.items()
    )
    if whole is None:
        return FieldInBrief(lines)
    points = tuple((p.name, pen.km(p.km), p.came, p.left, p.here, p.to_come) for p in whole.points)
    return FieldInBrief(lines, tuple(g for g in _groups(whole, pen) if g.runners), points)


def _groups(whole: FieldAnswer, pen: Pen) -> Iterator[RunnerGroup]:
    def who(r: FieldRunner) -> str:
        return f"{r.bib} {r.name}".strip()

    def at(key: str, r: FieldRunner, place: str, when: datetime | None, **more: str) -> str:
        return pen.word(key, who=who(r), place=place, when=pen.when(when) if when else "none", **more)

    def group(title: str, found: Iterable[tuple[FieldRunner, str]]) -> RunnerGroup:
        every = tuple((r.id, said) for r, said in found)
        more = pen.word("station-more", count=str(len(every) - DUE_MAX)) if len(every) > DUE_MAX else ""
        return RunnerGroup(pen.word(title, count=str(len(every))), every[:DUE_MAX], more)

    runners = whole.runners
    yield group(
        "field-late", ((r, at("field-late-line", r, r.late_at, r.late_since)) for r in runners if r.late_at)
    )
    yield group("field-missed", ((r, at("field-place-line", r, r.missed, None)) for r in runners if r.missed))
    danger = (r for r in runners if r.cut_off and not r.missed and r.odds is not None and r.odds < IN_DANGER)
    yield group(
        "field-danger",
        (
            (
                r,
                at(
                    "field-danger-line",
                    r,
                    r.cut_off_at,
                    r.cut_off,
                    odds=measures.odds(r.odds or 0.0, pen.reader.language),
                ),
            )
            for r in danger
        ),
    )
    yield group("field-not-started", ((r, who(r)) for r in runners if not r.started))
    ended = (r for r in runners if r.retired_how and r.started)
    yield group("field-retired", ((r, at("field-place-line", r, r.last_name, r.last_at)) for r in ended))
