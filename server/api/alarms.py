"""Who knows about an open alarm: whom it went to, who answered what, who holds it. Values only, no I/O."""

from __future__ import annotations

from collections.abc import Iterable

from server.api.snapshot import Picture
from server.conversation.telling.answer import AlarmHere, AskedHere
from server.facts.entry import NOT_NAMED
from server.watch.escalation_state import open_alarms, replay
from server.watch.notice import AlarmValues, Made

__all__ = ["holder_of", "open_about"]


def open_about(picture: Picture, runner: str) -> tuple[AlarmHere, ...]:
    """The alarms about her that nobody has stood down, in the order in which they were raised."""
    about_her = tuple(m for m in picture.situation.made if m.notice.key.runner == runner)
    found = []
    for alarm in open_alarms(about_her):
        notices = tuple(
            m
            for m in about_her
            if isinstance(m.notice.values, AlarmValues) and m.notice.values.alarm == alarm
        )
        if notices:
            found.append(_alarm(picture, runner, notices))
    return tuple(found)


def holder_of(picture: Picture, runner: str) -> str | None:
    """Who holds the alarm raised last ('' nobody yet); None where none is open."""
    alarms = open_about(picture, runner)
    return alarms[-1].holder if alarms else None


def _alarm(picture: Picture, runner: str, notices: tuple[Made, ...]) -> AlarmHere:
    event, first = picture.event, notices[0].notice
    assert isinstance(first.values, AlarmValues)
    stand = replay(notices)
    point = first.values.point
    names = {p.id: p.name for p in event.course_of(runner).points}
    state = picture.state.runner(runner)
    said = {e.about for e in state.confirmed}
    calls = (e for e in state.helps_open if e.doubt == NOT_NAMED and e.id not in said)
    call = next((e for e in calls if e.id in first.facts), None)
    return AlarmHere(
        kind=first.values.of_kind,
        name=names.get(point or "", ""),
        raised_at=first.values.raised_at or first.owed_at,
        people=tuple(_people(picture, notices)),
        holder=_name(picture, stand.holder) if stand.holder else "",
        look_again=stand.since + event.alarm.look_again if stand.holder and stand.since else None,
        words=first.values.words,
        unnamed_call=call.id if call else "",
        unnamed_by=call.by if call else "",
    )


def _people(picture: Picture, notices: tuple[Made, ...]) -> Iterable[AskedHere]:
    """Each person once: first asked or told, and the last they said."""
    by_person: dict[str, list[Made]] = {}
    for m in sorted(notices, key=lambda m: (m.made_at, m.short)):
        by_person.setdefault(m.notice.key.person, []).append(m)
    for person, made in by_person.items():
        asked = [m for m in made if m.notice.needs_answer]
        said = [a for m in made for a in m.answers]
        last = max(said, key=lambda a: a.at, default=None)
        yield AskedHere(
            name=_name(picture, person),
            at=(asked or made)[0].made_at,
            asked=bool(asked),
            answer=last.words if last else "",
            answered_at=last.at if last else None,
            failed=last is None and all(m.failed for m in made),
        )


def _name(picture: Picture, person: str) -> str:
    return next((p.name for p in picture.event.people if p.id == person), person)
