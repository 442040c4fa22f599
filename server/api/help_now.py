"""What somebody is answered about the alarm that is open about a runner: what they do, what they tell, whether they call."""

from __future__ import annotations

import asyncio
from dataclasses import replace
from datetime import timedelta

from server.api.ask import Ask
from server.api.snapshot import Picture
from server.api.who_may import May
from server.conversation.telling import alarm_known, what_now
from server.conversation.telling.answer import AlarmNowAnswer
from server.conversation.telling.reader import reader_in
from server.conversation.telling.say import SayInEvent
from server.facts.entry import Entry, Kind
from server.facts.state import RunnerState
from server.watch.alarms import Alarm, alarms, ended
from server.watch.beside import callers
from server.watch.call_back import standing
from server.watch.escalation import values
from server.watch.escalation_state import Stage, open_alarms, replay
from server.watch.notice import AlarmValues, Made, NoticeKind
from server.watch.runner_context import Sight

__all__ = ["alarm_answer", "alarm_now", "alarm_of", "joined", "on_it"]

_HELP = f"{NoticeKind.ASKED_FOR_HELP.value}:"


async def alarm_now(ask: Ask) -> AlarmNowAnswer:
    """GET …/alarm: there always is an answer, whether or not an alarm is open."""
    picture = await ask.picture()
    return await asyncio.to_thread(alarm_answer, picture, ask.runner, ask.person, ask.share)


def alarm_answer(picture: Picture, runner: str, person: str, share: May) -> AlarmNowAnswer:
    """What that person, who may see so much of it, is answered."""
    event = picture.event
    say = SayInEvent(reader_in(event, person), picture.now, event, runner)
    sight = picture.sight(runner)
    found = next((a for a in alarms(sight) if a.notices and ended(sight, a) is None), None)
    if found is None:
        none = what_now.no_alarm(say)
        call = what_now.call_words(say, person, is_open=False)
        return AlarmNowAnswer(runner, say.runner, "", "", none, none, call, none)
    stand = replay(found.notices)
    v, back = values(sight, found, stand, step=-1), standing(sight, found, stand)
    # Asked for, it is said how it stands now: that nobody has answered, from the first minute on.
    waited = max(1, round((picture.now - found.raised) / timedelta(minutes=1)))
    back = replace(back, minutes=waited)
    part = _part(sight, found, person, v)
    if part == what_now.NEAR and share is not May.YES:
        none = what_now.no_alarm(say)
        return AlarmNowAnswer(
            runner, say.runner, "", "", none, none, what_now.call_words(say, person, is_open=False), none
        )
    whole = share is May.YES or part in (what_now.CALLER, what_now.HOLDER)
    return AlarmNowAnswer(
        runner,
        say.runner,
        found.kind.value,
        part,
        what_now.now_words(say, v, back, person, part),
        what_now.tell_words(say, v, whole=whole),
        what_now.call_words(say, person, is_open=True),
        alarm_known.known(say, v, person) if whole else "",
    )


def _part(sight: Sight, alarm: Alarm, person: str, v: AlarmValues) -> str:
    if v.holder == person:
        return what_now.HOLDER
    if person == sight.runner.person:
        return what_now.RUNNER
    if alarm.kind is NoticeKind.ASKED_FOR_HELP and person in callers(sight, alarm):
        return what_now.CALLER
    return what_now.ASKED if any(m.notice.key.person == person for m in alarm.notices) else what_now.NEAR


def alarm_of(picture: Picture, runner: str) -> str:
    """The kind of the alarm that is open about her, a call for help before any other; '' for none."""
    ids = open_alarms(_about(picture, runner))
    first = next((a for a in ids if a.startswith(_HELP)), next(iter(ids), ""))
    return first.split(":", 1)[0]


def on_it(picture: Picture, runner: str, person: str) -> bool:
    """Whether words of theirs go, as they are, to those who answer the call for help about her: hers, those of whoever
    called, and of whoever has it."""
    made = _about(picture, runner)
    alarm = next((a for a in open_alarms(made) if a.startswith(_HELP)), None)
    if alarm is None:
        return False
    mine = [m for m in made if _of(m, alarm)]
    stand = replay(mine)
    holds = stand.stage in (Stage.HELD, Stage.LOOKING_AGAIN) and stand.holder == person
    raised = min((m.made_at for m in mine), default=picture.now)
    calls = _calls(picture.state.runner(runner))
    called = any(e.by == person for e in calls if e.received_at >= raised or _is_basis(e.id, alarm))
    return holds or called or picture.event.runner(runner).person == person


def _is_basis(entry: str, alarm: str) -> bool:
    return alarm.startswith(f"{_HELP}{entry}:")


def _calls(state: RunnerState) -> tuple[Entry, ...]:
    return (*state.calls, *(e for e in state.unconfirmed if e.kind is Kind.ASKED_FOR_HELP))


def joined(made: tuple[Made, ...], entry: str) -> str | None:
    """Whether a call for help has joined an alarm that was open by the notices about her: who has that ('' nobody); None
    where it raised its own."""
    alarm = next((a for a in open_alarms(made) if a.startswith(_HELP)), None)
    if alarm is None or _is_basis(entry, alarm):
        return None
    stand = replay(m for m in made if _of(m, alarm))
    held = stand.stage in (Stage.HELD, Stage.LOOKING_AGAIN)
    return stand.holder if held and stand.holder else ""


def _about(picture: Picture, runner: str) -> tuple[Made, ...]:
    return tuple(m for m in picture.situation.made if m.notice.key.runner == runner)


def _of(m: Made, alarm: str) -> bool:
    return isinstance(m.notice.values, AlarmValues) and m.notice.values.alarm == alarm
