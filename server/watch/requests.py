"""What people want told: words for others, a meeting to be taken over or held elsewhere, a reminder, a wish to hear of her.

Words go out as they were written. They wake nobody who has not to set out soon; taken back, whoever read them hears that.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from server.facts.awaiting import Came, came, is_wish
from server.facts.entry import Entry, Kind
from server.facts.requests import addressees, help_open
from server.facts.state import Stamp
from server.watch.circle import share_of
from server.watch.covering import covered
from server.watch.meetings import meetings, members
from server.watch.notice import (
    Answer,
    CorrectionValues,
    Made,
    NoticeKind,
    PassedOnValues,
    ReminderValues,
    SwapValues,
    Urgency,
)
from server.watch.quiet import asleep_until
from server.watch.runner_context import Draft, Rule, Sight, Wake, heard_at
from server.watch.situation import Situation

__all__ = ["EVENT_RULES", "RULES"]

ON_DUTY = timedelta(minutes=90)
"""Words wake a sleeper so long before they set out for a meeting of theirs, or are to be there (own choice)."""
_TOLD = frozenset({Kind.PASSED_ON, Kind.MEET_ELSEWHERE})


def passed_on(situation: Situation, made: tuple[Made, ...], now: datetime) -> Iterator[Draft | Wake]:
    """Words to each whom they are for, once; and that they were taken back, to each who was told."""
    standing = {e.id: e for e in situation.state.requests if e.kind in _TOLD and (e.words or e.picture)}
    for e in standing.values():
        point = next((m.point for m in situation.event.meetings if m.id == e.about), "")
        values = PassedOnValues(e.id, e.by, e.words, e.seen_at, e.about or "", point, picture=e.picture)
        sought = bool(e.picture) and help_open(e, situation.event, situation.state)
        for who in addressees(e, situation.event, situation.state):
            asleep = asleep_until(situation.event.person(who), situation.event, now) is not None
            due = _out_soon(situation, who, now) if asleep else None
            if due is not None and now < due:
                yield Wake(due)
            soon = due is not None and now >= due
            urgency = Urgency.ACTION if soon or sought else None
            yield Draft(
                NoticeKind.PASSED_ON,
                who,
                "",
                e.id,
                e.received_at,
                values,
                (e.id,),
                urgency=urgency,
                mine=True,
            )
    counts = {e.id for e in situation.state.requests}
    for m in made:
        v = m.notice.values
        if (
            isinstance(v, PassedOnValues)
            and not v.taken_back
            and (v.words or v.picture)
            and v.entry not in counts
        ):
            back = PassedOnValues(v.entry, v.by, v.words, v.at, v.meeting, v.point, taken_back=True)
            who, facts = m.notice.key.person, m.notice.facts
            yield Draft(NoticeKind.PASSED_ON, who, "", f"{v.entry}:back", now, back, facts, mine=True)


def _out_soon(situation: Situation, who: str, now: datetime) -> datetime | None:
    """From when somebody is close to setting out for their next meeting; None where none is to come."""
    situation = covered(situation)
    met = {p.runner: None for p in situation.event.meetings if who in members(situation.event, p)}
    mine = [m.own(who) for r in met for m in meetings(share_of(situation, r), r, now)]
    return min(((m.leave_by or m.be_there) - ON_DUTY for m in mine if who in m.crew), default=None)


def swaps(sight: Sight) -> Iterator[Draft | Wake]:
    """Somebody is asked to take a meeting over until they have, or she has been there; who asked hears that they can't."""
    taken = {t.meeting for t in sight.race.taken}
    for e in sight.race.requests:
        m = next((m for m in sight.meetings if m.meeting == e.about), None)
        if e.kind is not Kind.ASKED_TO_SWAP or m is None or e.to is None or m.meeting in taken:
            continue
        asked = SwapValues(e.id, e.by, e.to, m.meeting, m.point, e.words)
        whole = replace(asked, window=m.window, be_there=m.be_there)
        until = m.wait_until
        yield Draft(
            NoticeKind.SWAP, e.to, m.point, e.id, e.received_at, whole, (e.id,), use_by=until, mine=True
        )
        if any(_refuses(x, e) for x in sight.made):
            yield Draft(
                NoticeKind.SWAP, e.by, m.point, f"{e.id}:no", sight.now, replace(asked, refused=True), (e.id,),
                use_by=until, needs_answer=False, buttons=(), mine=True,
            )  # fmt: skip


def _refuses(m: Made, e: Entry) -> bool:
    v = m.notice.values
    return isinstance(v, SwapValues) and v.entry == e.id and m.answer == Answer.CANNOT.value


def reminders(situation: Situation, _: tuple[Made, ...], now: datetime) -> Iterator[Draft | Wake]:
    """Their own words, at the time they gave."""
    for e in situation.state.requests:
        if e.kind is not Kind.REMIND or e.until is None or not e.words:
            continue
        if now < e.until:
            yield Wake(e.until)
            continue
        values = ReminderValues(e.id, e.words, e.seen_at)
        yield Draft(NoticeKind.REMINDER, e.by, "", e.id, e.until, values, (e.id,), mine=True)


def wishes(sight: Sight) -> Iterator[Draft | Wake]:
    """That she is in or out where somebody wanted to hear of it, or soon will be, or can't be any more: once, unless it is
    taken back."""
    order = tuple(p.id for p in sight.event.course_of(sight.runner.id).points)
    for e in sight.race.requests:
        if not is_wish(e) or e.about != sight.runner.id:
            continue
        point, found = e.point or "", came(e, sight.state, order)
        told = [m for m in sight.told(NoticeKind.REMINDER, e.by, point) if _is_of(m, e)]
        back = [m for m in sight.told(NoticeKind.CORRECTION, e.by, point) if e.id in m.notice.facts]
        if len(told) > len(back):
            yield from _not_so(sight, e, told[-1]) if found is None else ()
        elif found is None and e.amount is not None:
            yield from _soon(sight, e, e.amount)
        elif found is not None and (found[1] is None or found[1].by != e.by):
            how, stamp = found
            then = _reported_at(sight, stamp) if how is Came.UNSEEN else ""
            seen, by = (stamp.at, stamp.by) if stamp is not None else (None, "")
            values = ReminderValues(e.id, e.words, e.seen_at, point, e.edge or "", how.value, seen, by, then)
            owed = heard_at(sight, stamp) if stamp is not None else sight.now
            facts = (e.id, stamp.entry) if stamp is not None else (e.id,)
            yield Draft(
                NoticeKind.REMINDER, e.by, point, f"{e.id}:{len(back)}", owed, values, facts, mine=True
            )


def _soon(sight: Sight, e: Entry, before: timedelta) -> Iterator[Draft | Wake]:
    """So long before she may be there at the earliest by her window of the last fact: silence lets nobody sleep on."""
    view, point = sight.fact_view, e.point or ""
    if view is None or point not in view.points:
        return
    window = view.window(point)
    if sight.now < window.early - before:
        yield Wake(window.early - before)
        return
    values = ReminderValues(e.id, e.words, e.seen_at, point, e.edge or "", Came.SOON.value, window=window)
    yield Draft(
        NoticeKind.REMINDER, e.by, point, f"{e.id}:0", window.early - before, values, (e.id,), mine=True
    )


def _not_so(sight: Sight, e: Entry, told: Made) -> Iterator[Draft]:
    """Whoever was told so hears that it is not."""
    v = told.notice.values
    if isinstance(v, ReminderValues) and v.came == Came.YES.value:
        kind = NoticeKind.LEFT if e.edge == "out" else NoticeKind.ARRIVED
        gone = CorrectionValues(kind.value, e.point, v.seen_at, None, taken_back=True, by="")
        yield Draft(
            NoticeKind.CORRECTION,
            e.by,
            e.point or "",
            f"{e.id}:{told.short}",
            sight.now,
            gone,
            (e.id,),
            mine=True,
        )


def _is_of(m: Made, e: Entry) -> bool:
    return isinstance(m.notice.values, ReminderValues) and m.notice.values.entry == e.id


def _reported_at(sight: Sight, stamp: Stamp | None) -> str:
    found = (t.point for t in sight.state.times if stamp is not None and stamp in (t.arrived, t.left))
    return next(found, "")


RULES: tuple[Rule, ...] = (swaps, wishes)
EVENT_RULES = (passed_on, reminders)
