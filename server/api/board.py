"""What the board shows, put together from the other answers by what the asker's parts allow."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from datetime import datetime

from server.api import answers, meeting_answers, planned
from server.api.field import alarmed, field_of
from server.api.replies import BoardAnswer, Doubted, OpenAlarm, RaceNote, RunnerBoard
from server.api.snapshot import Picture
from server.api.who_may import Call, May, may
from server.conversation.telling.answer import MeetingAnswer, PeopleAnswer, PersonThere
from server.event.model import Event, Part, PartKind, Person
from server.facts.state import Interval
from server.forecast.channel_outages import deaf_now, nobody_since
from server.watch.escalation_state import open_alarms, replay
from server.watch.notice import AlarmValues, Made

_LADDER = (PartKind.SAFETY_CONTACT, PartKind.CREW, PartKind.PACER, PartKind.ORGANISER)


WHOLE = 25
"""Up to so many runners each is shown whole; an organiser with more sees the field (own choice)."""


def board(picture: Picture, parts: tuple[Part, ...], person: str, also: str = "") -> BoardAnswer:
    """GET …/board for a person with those parts; of a whole field `also` this runner."""
    event = picture.event
    shown = [r.id for r in event.runners if may(parts, Call.BOARD, r.id) is not May.NO]
    field = None
    if len(shown) > WHOLE and may(parts, Call.FIELD) is May.YES:
        field = field_of(picture)
        first = {also, *(p.runner for p in parts), *alarmed(picture)}
        shown = [r for r in shown if r in first][:WHOLE]
    runners = tuple(_runner(picture, r, parts, person) for r in shown)
    phones = may(parts, Call.PHONES) is May.YES
    return BoardAnswer(
        event=event.id,
        name=event.name,
        time_zone=event.time_zone,
        runners=runners,
        emergency_number=event.emergency_number,
        exercise=event.exercise,
        race_control=event.race_control,
        rescue=event.rescue if phones else None,
        race_notes=tuple(_race_notes(picture)),
        blind_since=nobody_since(picture.situation.downs),
        blind=deaf_now(picture.situation.downs),
        field=field,
    )


def _runner(picture: Picture, runner: str, parts: tuple[Part, ...], person: str) -> RunnerBoard:
    """One runner; parts of it are left out for those whose part does not need them."""
    event = picture.event
    whole = {c: may(parts, c, runner) is May.YES for c in Call}
    share = may(parts, Call.FORECAST, runner)
    return RunnerBoard(
        id=runner,
        name=event.runner(runner).name,
        bib=event.runner(runner).bib,
        forecast=answers.forecast(picture, runner, share) if share is not May.NO else None,
        meetings=meetings_of(picture, runner, person) if whole[Call.NEXT] else (),
        cut_offs=planned.cut_offs(picture, runner).cut_offs if whole[Call.CUT_OFFS] else (),
        alarms=tuple(alarms(picture, runner)) if whole[Call.FACTS] else (),
        doubted=tuple(_doubted(picture, runner)) if whole[Call.FACTS] else (),
    )


def meetings_of(picture: Picture, runner: str, person: str) -> tuple[MeetingAnswer, ...]:
    """Every meeting of hers to come; those of the asker say so."""
    return tuple(meeting_answers.meeting_answer(picture, runner, m, person) for m in picture.meetings(runner))


def alarms(picture: Picture, runner: str) -> Iterable[OpenAlarm]:
    """The alarms about her that nobody has stood down, with who holds each."""
    event = picture.event
    about_her = picture.made_about().get(runner, ())
    for alarm in open_alarms(about_her):
        notices = tuple(m for m in about_her if _is_of(m, alarm))
        if notices:
            yield _open_alarm(event, runner, alarm, notices, picture.now)


def _is_of(made: Made, alarm: str) -> bool:
    return isinstance(made.notice.values, AlarmValues) and made.notice.values.alarm == alarm


def _open_alarm(event: Event, runner: str, alarm: str, notices: tuple[Made, ...], now: datetime) -> OpenAlarm:
    values = notices[0].notice.values
    assert isinstance(values, AlarmValues)
    stand = replay(notices)
    told = sorted({m.notice.key.person for m in notices if not m.failed})
    return OpenAlarm(
        alarm=alarm,
        kind=notices[0].notice.key.kind.value,
        runner=runner,
        raised_at=values.raised_at or notices[0].notice.owed_at,
        point_name=answers.point_name(event, runner, values.point),
        holder=answers.person_name(event, stand.holder) if stand.holder else "",
        told=tuple(answers.person_name(event, p) for p in told),
        unreached=stand.holder is None and _nobody_reached(event, runner, notices, now),
        look_again=stand.since + event.alarm.look_again if stand.holder and stand.since else None,
        words=values.words,
    )


def _nobody_reached(event: Event, runner: str, notices: tuple[Made, ...], now: datetime) -> bool:
    """Whether everybody an alarm has been sent to has had their time and none has answered, or none of the
    channels works; a first message on its way is not yet 'nobody'."""
    asked = [m for m in notices if m.notice.needs_answer]
    waited = [m for m in asked if m.failed or now - m.made_at >= event.alarm.answer_within]
    steps = {p.person for p in event.people_for(runner, *_LADDER) if p.ladder is not None}
    tried = {m.notice.key.person for m in waited}
    every_step = steps <= tried if steps else bool(waited)
    return bool(asked) and (all(m.failed for m in asked) or (len(waited) == len(asked) and every_step))


def _doubted(picture: Picture, runner: str) -> Iterable[Doubted]:
    event = picture.event
    for entry in picture.state.runner(runner).unconfirmed:
        yield Doubted(
            entry.id,
            entry.kind.value,
            answers.point_name(event, runner, entry.point),
            entry.seen_at,
            answers.person_name(event, entry.by),
            entry.doubt,
        )


def _race_notes(picture: Picture) -> Iterable[RaceNote]:
    """Race-level facts in force: values, not words."""
    state, event = picture.state, picture.event
    names = {p.id: p.name for c in event.courses for p in c.points}

    def by(fact: str) -> str:
        said = state.said_of(fact)
        return "" if said is None else answers.person_name(event, said.by)

    for hold in (h for h in state.holds if h.point is None and h.runner is None):
        if answers.holds(Interval(hold.start, hold.end), picture.now):
            who = answers.person_name(event, hold.by)
            yield RaceNote("runners held", at=hold.start, until=hold.end, by=who)
    if state.ended_early is not None:
        said = state.said_of("ended")
        words = "" if said is None else said.words
        yield RaceNote("race ended early", at=state.ended_early.at, words=words, by=by("ended"))
    for point in state.access_closed:
        yield RaceNote("access closed", names.get(point, point), by=by(f"access:{point}"))
    for point, edge, moved_to in state.cut_offs_moved:
        who = by(f"cut-off:{point}:{edge}")
        yield RaceNote(f"cut-off {edge} moved", names.get(point, point), until=moved_to, by=who)
    for entry in state.rerouted:
        who = answers.person_name(event, entry.by)
        yield RaceNote("rerouted", at=entry.seen_at, words=entry.words, by=who)


def people(picture: Picture, share: May, of: Collection[str] | None = None) -> PeopleAnswer:
    """GET …/people: who does what now; for a smaller share only the numbers to call. `of`: only those with a part for all
    runners, or for one of these."""
    event = picture.event
    last: dict[str, Made] = {m.notice.key.person: m for m in picture.situation.made}
    wanted = [
        p
        for p in (event.people if share is May.YES else ())
        if of is None or any(part.runner is None or part.runner in of for part in event.parts_of(p.id))
    ]
    shown = tuple(_person(picture, p, last.get(p.id)) for p in wanted)
    return PeopleAnswer(shown, event.race_control, event.emergency_number, event.rescue)


def _person(picture: Picture, known: Person, last: Made | None) -> PersonThere:
    """One person; `last` is what they were sent last."""
    event, state = picture.event, picture.state
    parts = event.parts_of(known.id)
    names = picture.once("names", lambda: {p.id: p.name for c in event.courses for p in c.points})
    there = [(s.at, point) for point, who, s in state.crew_there if who == known.id]
    left = {point: s.at for point, who, s in state.crew_left if who == known.id}
    now_at = [(at, point) for at, point in there if point not in left or left[point] < at]
    latest = max(now_at, default=None)
    going = picture.bound_for(known.id)
    bound = [m for m in going if latest is None or m.point != latest[1]]
    cars = {c.id: c.name for c in event.cars}
    return PersonThere(
        name=known.name,
        part=", ".join(sorted({p.kind.value for p in parts})),
        phone=known.phone,
        at_name=names.get(latest[1], latest[1]) if latest else "",
        since=latest[0] if latest else None,
        bound_for=names.get(bound[0].point, bound[0].point) if bound else "",
        be_there=bound[0].be_there if bound else None,
        car=next((cars.get(p.car, p.car) for p in parts if p.car), ""),
        reachable=last is None or not last.failed,
    )
