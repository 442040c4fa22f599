"""Whoever called for help hears back: who has it and what they do, or that nobody has answered; and that it is over.

Told at once to the caller, by the reply to the call, is who was asked; she whom somebody else called for is told it here.
Then whenever it changes hands, and 5, 10 and 20 minutes after the call. A caller out there must never have to guess whether
anybody is coming: where nobody is, the emergency number is theirs to call.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from server.watch.alarms import Alarm, alarms, ended
from server.watch.beside import callers, said_by_holder
from server.watch.escalation_state import Stage, Stand, replay
from server.watch.notice import (
    AlarmValues,
    Answer,
    Answered,
    CallBackValues,
    Made,
    NoticeKind,
    StandDownValues,
    UnreachedValues,
)
from server.watch.runner_context import Draft, Rule, Sight, Wake, tried

__all__ = ["MARKS", "RULES", "due_mark", "standing", "state_of"]

MARKS = (timedelta(minutes=5), timedelta(minutes=10), timedelta(minutes=20))
"""When the caller hears how it stands, whatever has happened."""
AGAIN = timedelta(minutes=20)
"""After that so often while nobody has it (own choice: as often as an alarm is looked at again)."""


def due_mark(raised: datetime, now: datetime) -> tuple[timedelta | None, datetime]:
    """The last of the marks that is past, None before the first; and when the next one comes."""
    gone = now - raised
    if gone < MARKS[-1]:
        past = [m for m in MARKS if m <= gone]
        ahead = next(m for m in MARKS if m > gone)
        return (past[-1] if past else None), raised + ahead
    number = (gone - MARKS[-1]) // AGAIN
    mark = MARKS[-1] + number * AGAIN
    return mark, raised + mark + AGAIN


def state_of(stand: Stand) -> tuple[Answered, str | None]:
    """How far an alarm has come, and who has it or had it last."""
    if stand.stage in (Stage.HELD, Stage.LOOKING_AGAIN):
        return Answered.HELD, stand.holder
    if stand.gave_back:
        return Answered.GIVEN_BACK, stand.gave_back
    if stand.holder is not None:
        return Answered.LOST, stand.holder
    return Answered.ASKED, None


def call_back(sight: Sight) -> Iterator[Draft | Wake]:
    """What is owed to those who called for help for her, and to her."""
    for alarm in alarms(sight):
        if alarm.kind is NoticeKind.ASKED_FOR_HELP and ended(sight, alarm) is None:
            yield from _open(sight, alarm)
    yield from _over(sight)


def _hearers(sight: Sight, alarm: Alarm) -> dict[str, datetime]:
    """Whoever called, and she herself, with the moment from which they wait to hear."""
    found = {who: e.received_at for who, e in callers(sight, alarm).items()}
    found.setdefault(sight.runner.person, alarm.raised)
    return {who: at for who, at in found.items() if any(p.id == who for p in sight.event.people)}


def _open(sight: Sight, alarm: Alarm) -> Iterator[Draft | Wake]:
    stand = replay(alarm.notices)
    state, who_has_it = state_of(stand)
    hold = standing(sight, alarm, stand)
    mark, following = due_mark(alarm.raised, sight.now)
    yield Wake(following)
    asked = {m.notice.key.person for m in alarm.notices}
    for who, since in _hearers(sight, alarm).items():
        if state is Answered.HELD and who == stand.holder:
            continue
        if state is Answered.ASKED:
            # Whoever called has read it in the reply.
            if who not in callers(sight, alarm):
                yield _draft(sight, alarm, who, f"{alarm.id}:asked", hold)
        elif who not in asked and (stand.since is None or stand.since >= since):
            yield _draft(sight, alarm, who, f"{alarm.id}:{state.value}:{who_has_it}:{stand.takes}", hold)
        late = mark is not None and mark > MARKS[-1] and state is Answered.HELD
        if mark is not None and not late and alarm.raised + mark > since:
            minutes, again = round(mark / timedelta(minutes=1)), _just_told(sight, alarm, who, hold)
            if again is None:
                yield _draft(sight, alarm, who, f"{alarm.id}:{minutes} min", replace(hold, minutes=minutes))
            else:
                yield Wake(again)
        yield from _unreached(sight, alarm, stand, who)


JUST_TOLD = timedelta(minutes=2)
"""How it stands is not said again so soon after it came to stand so (own choice)."""


def _just_told(sight: Sight, alarm: Alarm, who: str, hold: CallBackValues) -> datetime | None:
    """Where they were told how it stands within a moment before this mark, when that is over; else None."""
    back = [m for m in sight.told(NoticeKind.CALL_BACK, who) if _is_of(m, alarm.id)]
    if not back or not isinstance(last := back[-1].notice.values, CallBackValues):
        return None
    same = (last.state, last.holder) == (hold.state, hold.holder) and hold.state != Answered.ASKED.value
    over = back[-1].made_at + JUST_TOLD
    return over if same and last.minutes == 0 and sight.now < over else None


def _draft(sight: Sight, alarm: Alarm, who: str, occasion: str, hold: CallBackValues) -> Draft:
    return Draft(NoticeKind.CALL_BACK, who, "", occasion, sight.now, hold, alarm.facts, mine=True)


def standing(sight: Sight, alarm: Alarm, stand: Stand) -> CallBackValues:
    """How the call stands now, for whoever called and for her."""
    state, holder = state_of(stand)
    # By what each was asked last: who could not an hour ago is asked again.
    last = {m.notice.key.person: m for m in alarm.notices if m.notice.needs_answer}
    asked = [who for who, m in last.items() if not m.failed and m.answer != Answer.CANNOT.value]
    return CallBackValues(
        alarm=alarm.id,
        state=state.value,
        raised_at=alarm.raised,
        by=alarm.by,
        asked=tuple(asked),
        holder=holder,
        said=said_by_holder(sight, alarm, stand) if state is Answered.HELD else None,
        at=stand.since,
    )


def _unreached(sight: Sight, alarm: Alarm, stand: Stand, who: str) -> Iterator[Draft]:
    """Where nothing reaches the caller, whoever has it telephones them; while nobody has it, all who are asked may."""
    back = [m for m in sight.told(NoticeKind.CALL_BACK, who) if _is_of(m, alarm.id)]
    if not back or not all(m.failed for m in back):
        return
    held = state_of(stand)[0] is Answered.HELD
    to = [stand.holder] if held and stand.holder else [m.notice.key.person for m in alarm.notices]
    channels = tried(sight.person(who), back)
    values = UnreachedValues(who, NoticeKind.CALL_BACK.value, channels, min(m.made_at for m in back))
    for one in dict.fromkeys(to):
        if one != who:
            occasion = f"{alarm.id}:call back:{who}"
            yield Draft(NoticeKind.UNREACHED, one, "", occasion, sight.now, values, alarm.facts, mine=True)


def _is_of(m: Made, alarm: str) -> bool:
    return isinstance(m.notice.values, CallBackValues) and m.notice.values.alarm == alarm


def _over(sight: Sight) -> Iterator[Draft]:
    """Whoever called, and she, hear that it is over, unless they said so themselves or are told among those asked."""
    for ends in _stand_downs(sight):
        values = ends.notice.values
        assert isinstance(values, StandDownValues)
        told = {m.notice.key.person for m in sight.told(NoticeKind.STAND_DOWN, occasion=values.alarm)}
        notices = [m for m in sight.made if _of_alarm(m, values.alarm)]
        if not notices:
            continue
        first = notices[0].notice
        assert isinstance(first.values, AlarmValues)
        raised = first.values.raised_at or first.owed_at
        called = [e.by for e in sight.state.calls if raised <= e.received_at <= ends.made_at]
        heard = [m.notice.key.person for m in sight.told(NoticeKind.CALL_BACK) if _is_of(m, values.alarm)]
        over = CallBackValues(
            values.alarm,
            Answered.OVER.value,
            raised,
            first.values.by,
            (),
            reason=values.reason,
            ended_by=values.by,
            at=values.at,
        )
        people = {p.id for p in sight.event.people}
        for who in dict.fromkeys((*called, *heard, sight.runner.person)):
            if who in people and who not in told and who != values.by:
                occasion = f"{values.alarm}:over"
                yield Draft(
                    NoticeKind.CALL_BACK,
                    who,
                    "",
                    occasion,
                    ends.notice.owed_at,
                    over,
                    ends.notice.facts,
                    mine=True,
                )


def _stand_downs(sight: Sight) -> Iterator[Made]:
    """One of those told of the end of each call for help."""
    seen: set[str] = set()
    for m in sight.told(NoticeKind.STAND_DOWN):
        values = m.notice.values
        ours = isinstance(values, StandDownValues) and values.of_kind == NoticeKind.ASKED_FOR_HELP.value
        if ours and isinstance(values, StandDownValues) and values.alarm not in seen:
            seen.add(values.alarm)
            yield m


def _of_alarm(m: Made, alarm: str) -> bool:
    return isinstance(m.notice.values, AlarmValues) and m.notice.values.alarm == alarm


RULES: tuple[Rule, ...] = (call_back,)
