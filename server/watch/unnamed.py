"""A call for help that names none of the many runners its sender may mean: nobody's own alarm can be raised, so it goes
to whoever answers for the race and for runners at home, at once and again, until it is said for whom.

Once it is said, the call for her raises her own alarm (escalation.py), and all who were told of this one hear for whom
it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from server.event.model import Event, PartKind
from server.facts.entry import Entry
from server.watch.call_back import MARKS, due_mark
from server.watch.escalation import SOON
from server.watch.notice import Answer, Answered, CallBackValues, Made, NoticeKind, UnnamedHelpValues
from server.watch.organiser import on_ladder
from server.watch.runner_context import Draft, Wake
from server.watch.situation import Situation

__all__ = ["RULES", "told_of_call"]

AGAIN = "again"


def unnamed_help(situation: Situation, made: tuple[Made, ...], now: datetime) -> Iterator[Draft | Wake]:
    """Every such call that is open, and the end of those that are over."""
    for call in situation.state.calls:
        yield from _open(situation, call, _about(made, call.id), now)
    standing = {c.id for c in situation.state.calls}
    for call_id in dict.fromkeys(_values(m).call for m in made if _is_call(m)):
        if call_id not in standing:
            yield from _over(situation, call_id, _about(made, call_id), now)


def told_of_call(event: Event, caller: str) -> tuple[str, ...]:
    """Race control's people, those at home, and all whom an alarm may climb to; crew where there is none of them. Not
    the caller, who is asked for whom it is."""
    organisers = [p.person for p in event.parts if p.kind is PartKind.ORGANISER]
    crew = [p.person for p in event.parts if p.kind is PartKind.CREW]
    for people in ((*organisers, *on_ladder(event)), crew):
        found = tuple(p for p in dict.fromkeys(people) if p != caller)
        if found:
            return found
    return ()


def _open(situation: Situation, call: Entry, told: list[Made], now: datetime) -> Iterator[Draft | Wake]:
    holder, since = _holder(told)
    rule = situation.event.alarm
    people = told_of_call(situation.event, call.by)
    values = UnnamedHelpValues(
        call.id, call.by, call.words, call.received_at, people, call.point, holder=holder
    )
    yield from _call_back(situation, call, told, holder, since, now)
    if holder is not None and since is not None:
        for who in dict.fromkeys(m.notice.key.person for m in told):
            yield _draft(who, f"{call.id}:held:{holder}", now, values, asks=False)
        looks = int((now - since) / rule.look_again)
        yield Wake(since + (looks + 1) * rule.look_again)
        if looks:
            yield _draft(holder, f"{call.id}:{AGAIN}:{looks}", since + looks * rule.look_again, values)
        return
    number, due, following = _round(call.received_at, rule.answer_within, rule.look_again, now)
    for who in people:
        yield _draft(who, f"{call.id}:{number}", due, values)
    yield Wake(following)


def _call_back(
    situation: Situation,
    call: Entry,
    told: list[Made],
    holder: str | None,
    since: datetime | None,
    now: datetime,
) -> Iterator[Draft | Wake]:
    """Whoever called hears who finds out for whom it is, or that nobody has answered."""
    if all(p.id != call.by for p in situation.event.people) or holder == call.by:
        return
    mark, following = due_mark(call.received_at, now)
    yield Wake(following)
    asked = tuple(dict.fromkeys(m.notice.key.person for m in told if m.notice.needs_answer and not m.failed))
    state = Answered.ASKED if holder is None else Answered.HELD
    hold = CallBackValues(
        "", state.value, call.received_at, call.by, asked, holder=holder, at=since, call=call.id
    )
    due = [(f"{call.id}:held:{holder}", hold)] if holder is not None else []
    if mark is not None and (holder is None or mark <= MARKS[-1]):
        minutes = round(mark / timedelta(minutes=1))
        due.append((f"{call.id}:{minutes} min", replace(hold, minutes=minutes)))
    for occasion, values in due:
        yield Draft(NoticeKind.CALL_BACK, call.by, "", occasion, now, values, (call.id,), mine=True)


def _round(
    start: datetime, soon: timedelta, later: timedelta, now: datetime
) -> tuple[int, datetime, datetime]:
    """Which asking is due now, since when, and when the next is: soon after each other first, then further apart."""
    number, due, following = 0, start, start + soon
    while following <= now:
        number, due = number + 1, following
        following = due + (soon if number < SOON else later)
    return number, due, following


def _over(situation: Situation, call_id: str, told: list[Made], now: datetime) -> Iterator[Draft]:
    by = next((e for e in reversed(situation.state.taken_back) if e.about == call_id), None)
    last = _values(told[-1])
    values = replace(
        last,
        over="taken back" if by is None or by.person is None else "named",
        meant="" if by is None else by.person or "",
        ended_by="" if by is None else by.by,
        at=last.at if by is None else by.seen_at,
    )
    for who in dict.fromkeys(m.notice.key.person for m in told):
        yield _draft(who, f"{call_id}:over:{'' if by is None else by.id}", now, values, asks=False)


def _holder(told: list[Made]) -> tuple[str | None, datetime | None]:
    """Who took it first and has not given it back, and since when."""
    took: dict[str, datetime] = {}
    for m in told:
        for said in m.answers:
            if said.words == Answer.CANNOT.value:
                took.pop(m.notice.key.person, None)
            else:
                took.setdefault(m.notice.key.person, said.at)
    first = min(took, key=lambda who: took[who], default=None)
    return (None, None) if first is None else (first, took[first])


def _draft(
    who: str, occasion: str, owed_at: datetime, values: UnnamedHelpValues, *, asks: bool = True
) -> Draft:
    return Draft(
        NoticeKind.HELP_NOT_NAMED,
        who,
        "",
        occasion,
        owed_at,
        values,
        (values.call,),
        needs_answer=asks,
        buttons=None if asks else (),
        mine=True,
        lasting=True,
    )


def _is_call(m: Made) -> bool:
    return isinstance(m.notice.values, UnnamedHelpValues)


def _values(m: Made) -> UnnamedHelpValues:
    assert isinstance(m.notice.values, UnnamedHelpValues)
    return m.notice.values


def _about(made: tuple[Made, ...], call: str) -> list[Made]:
    return [m for m in made if _is_call(m) and _values(m).call == call]


RULES = (unnamed_help,)
