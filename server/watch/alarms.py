"""Which alarms there are about a runner: what raises one, what it rests on, what ends it.

An alarm's id is `kind:basis:number`: the basis is the entry it rests on, the number tells a re-opened alarm
from the one before. Ends. Overdue and sweep: a sighting by a person or a mat later than what was known when it
was raised (never a tracker's word, which tells where the tracker is), retired, finished, in hand, stand-down.
Help: only in hand said after it, stand-down, or the request taken back. That she was seen later does not end it:
somebody who asked for help may well walk into a point and still need it. Nor does it matter how far her race has come:
who called for help in the car park, her race over and closed, is helped as on the hill. Taking back what ended an alarm
opens it again.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.facts.entry import Entry
from server.facts.state import Stamp
from server.watch.escalation_state import open_alarms
from server.watch.notice import AlarmValues, Made, NoticeKind, StandDownValues, WhyNow
from server.watch.runner_context import Sight, seen_by_somebody, with_us
from server.watch.silence import blind, finish_of, late_at, no_alarm_before, overdue, overdue_at

__all__ = ["Alarm", "End", "alarms", "calls_of", "ended", "helps", "over_with", "overdue_again"]

STAND_DOWN_HOLDS = timedelta(hours=1)
"""After a stand-down without a fact about her, the same silence raises no alarm for so long (own choice)."""

SIGHTED, STOOD_DOWN, TAKEN_BACK = "seen", "stand-down", "taken back"
RETIRED, FINISHED, IN_HAND = "retired", "finished", "in hand"
"""Reasons for which an alarm ends; `conversation.telling` has a sentence for each."""


@dataclass(frozen=True, slots=True)
class Alarm:
    """One alarm. `since` is the moment up to which things were known when it was raised."""

    id: str
    kind: NoticeKind
    point: str | None
    raised: datetime
    since: datetime
    basis: str
    facts: tuple[str, ...]
    words: str = ""
    notices: tuple[Made, ...] = ()
    why: str = ""
    by: str = ""


@dataclass(frozen=True, slots=True)
class End:
    """Why an alarm is over, who said so, when, and the entry that says it ('' = a request taken back); `meant`: the
    runner for whom that request was."""

    reason: str
    by: str
    at: datetime
    entry: str
    point: str | None = None
    meant: str = ""


def alarms(sight: Sight) -> Iterator[Alarm]:
    """Alarms open by the notices made, then those that the facts raise now.

    One alarm a runner: a call for help takes the place of any other for as long as it is open, and later calls join it.
    """
    called = tuple(helps(sight))
    if called:
        yield from called
        return
    running = [_from_made(sight, a) for a in open_alarms(sight.made)]
    fresh = list(_conditions(sight))
    yield from running
    bases = {(a.kind, a.basis) for a in running}
    kinds = {a.kind for a in running}
    for new in fresh:
        # Once she is being looked for, her silence raises nothing more.
        busy = bool(kinds) and new.kind is NoticeKind.OVERDUE
        if (new.kind, new.basis) not in bases and not busy:
            kinds.add(new.kind)
            yield new


def helps(sight: Sight) -> Iterator[Alarm]:
    """The calls for help that are open by the notices made; without one the first that the facts raise. Asks nothing of
    a forecast."""
    running = [_from_made(sight, a) for a in open_alarms(sight.made)]
    found = [a for a in running if a.kind is NoticeKind.ASKED_FOR_HELP]
    yield from found or list(_helps(sight))[:1]


def over_with(sight: Sight, alarm: Alarm) -> tuple[Alarm, ...]:
    """Other alarms about her that waited while this call for help was open, and are over as well."""
    if alarm.kind is not NoticeKind.ASKED_FOR_HELP:
        return ()
    others = (_from_made(sight, a) for a in open_alarms(sight.made) if a != alarm.id)
    return tuple(a for a in others if a.kind is not alarm.kind and ended(sight, a) is not None)


def _from_made(sight: Sight, alarm_id: str) -> Alarm:
    notices = tuple(
        m for m in sight.made if isinstance(v := m.notice.values, AlarmValues) and v.alarm == alarm_id
    )
    first = notices[0]
    values = first.notice.values
    assert isinstance(values, AlarmValues)
    kind_word, basis = _split(alarm_id)
    raised = values.raised_at or first.notice.owed_at
    return Alarm(
        id=alarm_id,
        kind=NoticeKind(kind_word),
        point=values.point,
        raised=raised,
        since=raised if values.last_known is None else values.last_known.at,
        basis=basis,
        facts=first.notice.facts,
        words=values.words,
        notices=notices,
        why=values.why_now,
        by=values.by,
    )


def _split(alarm_id: str) -> tuple[str, str]:
    kind, rest = alarm_id.split(":", 1)
    return kind, rest.rsplit(":", 1)[0]


def _conditions(sight: Sight) -> Iterator[Alarm]:
    if sight.state.going.on_course and not with_us(sight):
        yield from _sweeps(sight)
        yield from _overdue(sight)


def _helps(sight: Sight) -> Iterator[Alarm]:
    state = sight.state
    first = () if state.help_open is None else (state.help_open,)
    waiting = tuple(e for e in state.unconfirmed if e.kind.value == NoticeKind.ASKED_FOR_HELP.value)
    asked: dict[str, Entry] = {e.id: e for e in (*state.helps_open, *first, *waiting)}
    for e in asked.values():
        for new in _new(sight, NoticeKind.ASKED_FOR_HELP, e.id, e.point, e.received_at, (e.id,), e.words):
            yield replace(new, by=e.by)


def _sweeps(sight: Sight) -> Iterator[Alarm]:
    for point, stamp in sight.state.sweep_through:
        if not sight.reached(point):
            yield from _new(sight, NoticeKind.SWEEP, stamp.entry, point, stamp.at, (stamp.entry,))


def _overdue(sight: Sight) -> Iterator[Alarm]:
    soonest = no_alarm_before(sight)
    due = None if soonest is not None and sight.now < soonest else overdue(sight)
    if due is None or blind(sight) or sight.now < due.at:
        return
    at = due.at
    late = late_at(sight)
    last = sight.state.last_known
    basis = "start" if last is None else last.entry
    facts = () if last is None else (last.entry,)
    for new in _new(
        sight, NoticeKind.OVERDUE, basis, finish_of(sight) if late is None else late[0], at, facts
    ):
        quiet = overdue_again(sight)
        if quiet is None or sight.now >= quiet:
            yield replace(new, why=due.why.value)


def overdue_again(sight: Sight) -> datetime | None:
    """Until when a stand-down without a later fact keeps the same silence from raising an alarm again; one that ended no
    alarm keeps nothing off."""
    ended_one = {e for m in sight.told(NoticeKind.STAND_DOWN) for e in m.notice.facts}
    standing = [e.seen_at for e in sight.race.stand_downs if e.id in ended_one]
    since = [at for at in standing if at >= sight.seen_at]
    return max(since) + STAND_DOWN_HOLDS if since else None


def _new(
    sight: Sight,
    kind: NoticeKind,
    basis: str,
    point: str | None,
    at: datetime,
    facts: tuple[str, ...],
    words: str = "",
) -> Iterator[Alarm]:
    """The alarm of that kind and basis, unless it has been stood down for a reason that still holds."""
    before: dict[str, Made] = {}
    for m in sight.made:
        values = m.notice.values
        if isinstance(values, StandDownValues):
            before |= {a: m for a in (values.alarm, *values.also) if _split(a) == (kind.value, basis)}
    if any(_still_ends(sight, kind, m) for m in before.values()):
        return
    known = sight.state.last_known
    since = at if known is None else known.at
    if before:
        at = sight.now  # raised anew: what ended it the last time must not end it again
    why = _WHY.get(kind, "")
    yield Alarm(f"{kind.value}:{basis}:{len(before)}", kind, point, at, since, basis, facts, words, why=why)


_WHY = {NoticeKind.ASKED_FOR_HELP: WhyNow.HELP.value, NoticeKind.SWEEP: WhyNow.SWEEP.value}


def _still_ends(sight: Sight, kind: NoticeKind, stood_down: Made) -> bool:
    """Whether what ended an alarm still counts: its entry has not been taken back since.

    A stand-down holds for help and sweep as long as it stands; for overdue `overdue_again` says how long.
    """
    values = stood_down.notice.values
    assert isinstance(values, StandDownValues)
    if values.reason == TAKEN_BACK:
        return False
    if kind is NoticeKind.OVERDUE and values.reason in (STOOD_DOWN, SIGHTED):
        return False
    return all(alive(sight, e) for e in stood_down.notice.facts)


def alive(sight: Sight, entry: str) -> bool:
    """Whether an entry still counts."""
    ids = {e.id for e in sight.race.stand_downs} | set(sight.state.folded)
    return entry in ids or not sight.state.folded


def ended(sight: Sight, alarm: Alarm) -> End | None:
    """What has ended an alarm, or None while it is open."""
    for found in (_stood_down(sight, alarm), _in_hand(sight, alarm)):
        if found is not None:
            return found
    if alarm.kind is NoticeKind.ASKED_FOR_HELP:
        return _taken_back(sight, alarm)
    return _race_over(sight) or _sighted(sight, alarm)


def _stood_down(sight: Sight, alarm: Alarm) -> End | None:
    keys = {m.notice.key.text() for m in alarm.notices} | {str(m.short) for m in alarm.notices if m.short}
    # Whichever of the calls that joined it is named, the alarm is meant.
    joined = {e.id for e in sight.state.calls} if alarm.kind is NoticeKind.ASKED_FOR_HELP else set()
    names = {None, "", alarm.id, alarm.basis} | keys | joined
    for e in sight.race.stand_downs:
        after = max(e.seen_at, e.received_at) >= alarm.raised
        if e.runner in (None, sight.runner.id) and after and e.about in names:
            return End(STOOD_DOWN, e.by, e.seen_at, e.id)
    return None


def _in_hand(sight: Sight, alarm: Alarm) -> End | None:
    if alarm.kind is NoticeKind.ASKED_FOR_HELP:
        # Somebody had her already when she called, perhaps for hours: only a word said after the call answers it.
        joined = {alarm.basis, *(c.id for c in sight.state.calls if c.received_at >= alarm.raised)}
        return next((_by(IN_HAND, by) for e, by in sight.state.helps_in_hand if e in joined), None)
    hand = sight.state.in_hand
    if alarm.kind is NoticeKind.OVERDUE and not with_us(sight):
        hand = None
    for stamp in (hand, sight.state.crew_has_her):
        if stamp is not None and (stamp.at > alarm.since or stamp.at >= alarm.raised):
            return _by(IN_HAND, stamp)
    return None


def _by(reason: str, stamp: Stamp) -> End:
    return End(reason, stamp.by, stamp.at, stamp.entry)


def calls_of(sight: Sight) -> tuple[Entry, ...]:
    """Every call for help about her, counting or waiting for somebody's word."""
    kind = NoticeKind.ASKED_FOR_HELP.value
    return (*sight.state.calls, *(e for e in sight.state.unconfirmed if e.kind.value == kind))


def _taken_back(sight: Sight, alarm: Alarm) -> End | None:
    waiting = {e.id for e in (*sight.state.helps_open, *sight.state.unconfirmed)}
    if sight.state.help_open is not None:
        waiting.add(sight.state.help_open.id)
    # A call that joined it keeps it open.
    if (
        waiting & {e.id for e in calls_of(sight)}
        or alarm.basis in waiting
        or alarm.basis in sight.state.folded
    ):
        return None
    by = next((e for e in reversed(sight.state.taken_back) if e.about == alarm.basis), None)
    if by is None:
        return End(TAKEN_BACK, "", sight.now, "")
    return End(TAKEN_BACK, by.by, by.seen_at, "", meant=by.person or "")


def _race_over(sight: Sight) -> End | None:
    if sight.state.finished is not None:
        return _by(FINISHED, sight.state.finished)
    if sight.state.retirement is not None:
        return _by(RETIRED, sight.state.retirement.stamp)
    return None


def _sighted(sight: Sight, alarm: Alarm) -> End | None:
    """A sighting ends 'overdue' only if she is not still overdue by what is now known: a late report of
    something earlier changes what is known last, not that she is missing."""
    known = sight.state.last_known
    if known is None or known.at <= alarm.since or known.entry in alarm.facts:
        return None
    if not seen_by_somebody(sight.state, known.entry):
        return None
    if alarm.kind is NoticeKind.OVERDUE:
        at = overdue_at(sight)
        if at is not None and sight.now >= at:
            return None
    elif not (alarm.point and sight.reached(alarm.point)) and known.at <= alarm.raised:
        return None
    return End(SIGHTED, known.by, known.at, known.entry, known.point)
