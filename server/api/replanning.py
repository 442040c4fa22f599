"""POST …/changes: the plan changed while the race is on. What it would be for whom is worked out first; then the event
file with the change in it becomes a version as a loaded file does, so that the file that is taken out has it, and the
notices of a new version tell everybody concerned. Taking it back is the text before it, as the next version."""

from __future__ import annotations

import asyncio
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Final

from server.api import moved_cut_off
from server.api.ask import Ask, not_yours
from server.api.building import BuildError, Built, build
from server.api.envelope import ApiError
from server.api.models import Change
from server.api.snapshot import CHANGED, Picture, as_if
from server.api.who_may import Call, May, may
from server.conversation.telling.answer import ChangeAnswer, ChangedFor, Invited
from server.conversation.telling.new_version import change_lines
from server.conversation.telling.planned import say_planned
from server.conversation.telling.reader import Reader, reader_in
from server.conversation.telling.say import SayInEvent
from server.drafting.document import UnusualError
from server.drafting.replan import replanned
from server.event import Problem, Severity, parse_event
from server.event.model import Event
from server.event.replan import NotPossibleError, PlanChange, What
from server.facts.state import RaceState
from server.journal import StoredEvent
from server.sentences import sentence
from server.watch.new_version import ChangeEffect, outcome

__all__ = ["GOOD_FOR", "change"]

GOOD_FOR: Final = timedelta(days=14)
"""An invitation of somebody who was added, as long as any other."""


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A text to become the next version, the files it names, and the version that it was made from."""

    text: str
    files: Mapping[str, bytes]
    over: int


async def change(ask: Ask) -> ChangeAnswer:
    """POST /v1/events/{event}/changes."""
    sent = ask.sent(Change)
    picture = await ask.picture()
    stored = await ask.parts.journal.load_event(ask.event)
    reader = reader_in(picture.built.event, ask.person)
    if await _done_before(ask, sent, stored):
        return ChangeAnswer(stored.version, done=True)
    if sent.over is not None and sent.over != stored.version:
        raise ApiError("not_now", sentence(reader.language, "change-stale"), "over", "Look at it again.")
    try:
        if sent.undo_entry is not None:
            return await moved_cut_off.moved_back(ask, sent.undo_entry, stored.version)
        if sent.what is What.CUT_OFF:
            return await moved_cut_off.moved(ask, sent, picture, stored.version)
        wanted = await _wanted(ask, sent, stored)
        built, answer = await asyncio.to_thread(_looked_at, picture, stored, wanted, reader)
    except (NotPossibleError, UnusualError, BuildError) as error:
        refused = tuple(dict.fromkeys(_why(error, reader.language)))
        if sent.dry_run:
            return ChangeAnswer(stored.version, done=False, refused=refused)
        raise ApiError("not_now", " ".join(refused), "what", "Change something else.") from error
    if sent.dry_run:
        return answer
    done = await _stored(ask, wanted, built, answer)
    added = sent.undo is None and sent.what is What.PERSON
    return replace(done, invited=await _invited(ask, picture.built.event, built.event)) if added else done


def _why(error: Exception, language: str) -> Iterator[str]:
    """Why it can't be, in words."""
    if isinstance(error, BuildError):
        yield from (p.what.in_language(language) for p in error.problems if p.severity is Severity.ERROR)
    else:
        why = error.why if isinstance(error, NotPossibleError) else "unusual"
        yield sentence(language, f"change-not-{why}")


def _asked_by(person: str) -> str:
    return f"{CHANGED}{person}"


async def _done_before(ask: Ask, sent: Change, stored: StoredEvent) -> bool:
    """Whether this very request has been done already: it came again, as its answer was lost on the way."""
    base = sent.over if sent.undo is None else sent.undo
    if (
        sent.dry_run
        or base is None
        or sent.what is What.CUT_OFF
        or sent.undo_entry is not None
        or stored.version != base + 1
        or stored.by != _asked_by(ask.person)
    ):
        return False
    before = await ask.parts.journal.load_event(ask.event, base)
    try:
        return (await _wanted(ask, sent, before)).text == stored.text
    except (NotPossibleError, UnusualError):
        return False


async def _wanted(ask: Ask, sent: Change, stored: StoredEvent) -> _Wanted:
    if sent.undo is not None:
        return await _before(ask, sent.undo, stored)
    event = (await asyncio.to_thread(parse_event, stored.text)).event
    if event is None:
        raise NotPossibleError("unusual", "event")
    asked = _asked(sent, ask.person)
    _of_theirs(ask, event, asked)
    _still_to_come((await ask.picture()).state, event, asked)
    text = await asyncio.to_thread(replanned, stored.text, event, asked)
    return _Wanted(text, stored.files, stored.version)


async def _before(ask: Ask, version: int, stored: StoredEvent) -> _Wanted:
    """The text before the change that made the version in force, for who made it, and for organisers."""
    if version != stored.version or not stored.by.startswith(CHANGED):
        raise NotPossibleError("not-last", "undo")
    if stored.by != _asked_by(ask.person) and ask.may(Call.RACE) is not May.YES:
        raise not_yours(Call.CHANGE)
    earlier = await ask.parts.journal.load_event(ask.event, version - 1)
    return _Wanted(earlier.text, earlier.files, version)


def _of_theirs(ask: Ask, event: Event, asked: PlanChange) -> None:
    """Refuse a change for a runner in whose race the asker has no part that may."""
    met = next((m.runner for m in event.meetings if m.id == asked.meeting), None)
    runner = met or asked.runner or (event.runners[0].id if len(event.runners) == 1 else None)
    parts = ask.person_parts if runner is not None else tuple(p for p in ask.person_parts if p.runner is None)
    if may(parts, Call.CHANGE, runner) is not May.YES:
        raise not_yours(Call.CHANGE)


def _still_to_come(race: RaceState, event: Event, asked: PlanChange) -> None:
    """Refuse what comes too late: a meeting where she has been, or one at a point that is behind her."""
    plan = next((m for m in event.meetings if m.id == asked.meeting), None)
    her = plan.runner if plan is not None else asked.runner or event.runners[0].id
    if all(r.id != her for r in event.runners):
        return
    order, mine = [p.id for p in event.course_of(her).points], race.runner(her)
    if plan is not None and mine.past(plan.point, order):
        raise NotPossibleError("past", "meeting")
    said = (e for e in race.drives_confirmed if plan is not None and e.point == plan.point)
    if asked.what is What.DRIVE_TIME and any(e.about in (None, "", asked.start) for e in said):
        # What somebody told later than the file was written goes before it, and would before the new minutes.
        raise NotPossibleError("drive-told", "minutes")
    if asked.what in (What.MOVE, What.ADD) and asked.point in order and mine.past(asked.point, order):
        raise NotPossibleError("behind", "point")


def _asked(sent: Change, person: str) -> PlanChange:
    if sent.what is None:
        raise ApiError("invalid", "what is to change is missing", "what", "Send what, or undo.")
    return PlanChange(
        what=sent.what,
        meeting=sent.meeting,
        runner=sent.runner,
        point=sent.point,
        crew=sent.crew,
        car=sent.car,
        kit=sent.kit,
        name=sent.name,
        phone=sent.phone,
        part=sent.part,
        drives=sent.drives,
        start=sent.start,
        minutes=sent.minutes,
        by=person,
    )


def _looked_at(
    picture: Picture, stored: StoredEvent, wanted: _Wanted, reader: Reader
) -> tuple[Built, ChangeAnswer]:
    """What it would be for whom. BuildError for a plan that does not hold."""
    built = build(wanted.text, wanted.files, version=wanted.over + 1, language=reader.language)
    # The picture's own was stored before it was built, and says no doubts.
    before = build(stored.text, stored.files, language=reader.language)
    new = as_if(picture, built)
    found = outcome(picture.situation, new.situation, picture.now)
    people = tuple(
        ChangedFor(who, say.person(who), tuple(change_lines(say, values)))
        for who, values in found.people.items()
        if (say := SayInEvent(reader, picture.now, _names(picture, built, who), ""))
    )
    return built, ChangeAnswer(wanted.over, False, people, _minds(before, built, found, reader))


def _names(picture: Picture, built: Built, person: str) -> Event:
    """The event that knows a person: somebody whom the change takes out is in the one before."""
    return built.event if any(p.id == person for p in built.event.people) else picture.built.event


def _minds(before: Built, built: Built, found: ChangeEffect, reader: Reader) -> tuple[str, ...]:
    """What will not work, or not surely, that did before: cars and people, then torch and layers."""
    troubles = (say_planned(reader, t.said) for t in found.troubles)
    known = {w.what for w in _of_kit(before)}
    kit = (str(w.what) for w in _of_kit(built) if w.what not in known)
    return tuple(dict.fromkeys((*troubles, *kit)))


def _of_kit(built: Built) -> Iterator[Problem]:
    return (w for w in built.warnings if w.field.endswith(".carries"))


async def _stored(ask: Ask, wanted: _Wanted, built: Built, answer: ChangeAnswer) -> ChangeAnswer:
    """It counts from now on, and those whom it concerns are told by the next look, which is at once."""
    version = await ask.parts.journal.store_event(
        wanted.text, wanted.files, built.event, _asked_by(ask.person), ask.now, over=wanted.over
    )
    ask.parts.pictures.has_built(built)
    await ask.parts.ticker.after_entry(ask.event)
    return replace(answer, version=version, done=True, told=tuple(p.name for p in answer.people))


async def _invited(ask: Ask, before: Event, event: Event) -> Invited | None:
    """The invitation of the person whom the change brought in, so that they can be told of what they do now."""
    known = {p.id for p in before.people}
    new = next((p for p in event.people if p.id not in known), None)
    if new is None:
        return None
    code = await ask.parts.journal.invite(new.id, event.id, _asked_by(ask.person), ask.now, GOOD_FOR)
    # Behind the '#': what stands there is never sent to a server, so no log on the way keeps it.
    return Invited(new.name, code, f"{ask.site}/join#{code}")
