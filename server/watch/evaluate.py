"""The watch's one door: `evaluate(situation, now)` walks the rules and settles what they propose.

Rules run in the order of `RULES`; a later one sees what earlier ones found, as if it had been made. A draft
becomes a notice when the tables allow it for the person and the state, the person's choice and quiet hours
let it through, and it was not made before. So evaluating twice owes nothing twice. Whatever a rule thought,
nobody at the wheel is asked to answer.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.facts.requests import quiet_until
from server.watch import (
    alarm_news,
    apart,
    before_dark,
    call_back,
    condition_updates,
    corrections,
    crew,
    doubts,
    escalation,
    groups,
    hearsay,
    in_hand,
    leaving,
    looking_back,
    meanwhile,
    new_version,
    odds,
    organiser,
    race,
    requests,
    retired,
    sightings,
    silence,
    standing,
    staying,
    timed_out,
    told_home,
    uncovered,
    unnamed,
)
from server.watch.circle import share_of
from server.watch.covering import covered
from server.watch.crew_whereabouts import AWAKE_FOR, awake, may_be_asked
from server.watch.escalation_state import open_alarms
from server.watch.notice import Made, Notice, NoticeKey, NoticeKind, UnreachedValues, Urgency
from server.watch.once import once_only
from server.watch.quiet import asleep_until, chosen
from server.watch.runner_context import Draft, Rule, Sight, Wake, remembering
from server.watch.situation import GROUP, Situation, Verdict
from server.watch.table import TABLE, may_be_told, row
from server.watch.told_times import sight_of

__all__ = ["evaluate", "evaluate_event", "evaluate_help", "evaluate_runner"]

RULES: tuple[Rule, ...] = (
    *escalation.RULES,
    *apart.RULES,
    *call_back.RULES,
    *meanwhile.RULES,
    *alarm_news.RULES,
    *told_home.RULES,
    *silence.RULES,
    *staying.RULES,
    *standing.RULES,
    *timed_out.RULES,
    *retired.RULES,
    *in_hand.RULES,
    *race.RULES,
    *corrections.RULES,
    *uncovered.RULES,
    *sightings.RULES,
    *condition_updates.RULES,
    *leaving.RULES,
    *crew.RULES,
    *odds.RULES,
    *before_dark.RULES,
    *doubts.RULES,
    *hearsay.RULES,
    *organiser.RULES,
    *requests.RULES,
    *looking_back.RULES,
    *groups.RULES,
)

EVENT_RULES = (*unnamed.RULES, *organiser.EVENT_RULES, *new_version.EVENT_RULES, *requests.EVENT_RULES)
"""Rules about no one runner."""

HOLD = timedelta(minutes=1)
"""Facts within a minute become one message: how long news may wait for company."""
PASSES_MAX = 6
"""Passes over the rules in one evaluation; two or three are what any night has needed."""
DELAYED_AFTER = timedelta(minutes=10)
"""Owed so long before it could be made: the text says that it is delayed."""


def evaluate(situation: Situation, now: datetime) -> Verdict:
    """Everything owed now in one event, for each runner and for the event itself."""
    situation = covered(situation)
    verdicts = [evaluate_runner(situation, r.id, now) for r in situation.event.runners]
    verdicts.append(evaluate_event(situation, now))
    owed = tuple(n for v in verdicts for n in v.owed)
    return Verdict(owed, min((v.ask_again for v in verdicts if v.ask_again), default=None))


def evaluate_runner(situation: Situation, runner_id: str, now: datetime) -> Verdict:
    """What is owed about one runner: a share of `evaluate`."""
    situation = share_of(covered(situation), runner_id)
    sight = sight_of(situation, runner_id, now)

    def one_pass(made: tuple[Made, ...]) -> _Found:
        owed: list[Notice] = []
        wakes: list[datetime] = []
        seen = replace(sight, made=made)
        for rule in RULES:
            found = _walk(rule(seen), _Terms(situation, runner_id, now, seen), seen.made)
            if found.owed:
                owed += found.owed
                seen = replace(seen, made=(*seen.made, *(_as_made(n, now) for n in found.owed)))
            wakes += found.wakes
        return _Found(owed, wakes)

    return _until_nothing_new(one_pass, sight.made, now)


def evaluate_event(situation: Situation, now: datetime) -> Verdict:
    """What is owed about no one runner: test alarm, outages. Such notices carry an empty runner id."""

    def one_pass(made: tuple[Made, ...]) -> _Found:
        drafts = (item for rule in EVENT_RULES for item in rule(situation, made, now))
        return _walk(drafts, _Terms(situation, "", now, None), made)

    return _until_nothing_new(one_pass, situation.made_about(""), now)


def evaluate_help(situation: Situation, runner_id: str, now: datetime) -> tuple[Notice, ...]:
    """What a call for help owes at once, about a runner or ('') about nobody named: a share of what `evaluate_runner` or
    `evaluate_event` finds owed too, from a situation that may lack meetings and forecasts."""
    if not runner_id:
        mine = situation.made_about("")
        drafts = [item for rule in unnamed.RULES for item in rule(situation, mine, now)]
        return tuple(_walk(drafts, _Terms(situation, "", now, None), mine).owed)
    situation = replace(situation, outlooks=remembering(situation.outlooks, runner_id))
    made = situation.made_about(runner_id)
    runner, state = situation.event.runner(runner_id), situation.state.runner(runner_id)
    sight = Sight(situation, now, runner, state, meetings=(), made=made)
    return tuple(_walk(escalation.called_for(sight), _Terms(situation, runner_id, now, sight), made).owed)


@dataclass(frozen=True, slots=True)
class _Found:
    """What one pass over the rules found: notices owed, moments to ask again."""

    owed: list[Notice]
    wakes: list[datetime]


def _until_nothing_new(
    one_pass: Callable[[tuple[Made, ...]], _Found], made: tuple[Made, ...], now: datetime
) -> Verdict:
    """Pass again with what was found, as if made, until a pass finds nothing: only then do the wakes know of
    the deadlines that the new notices bring. Should rules ever answer each other for ever, people get what
    was found in `PASSES_MAX` passes, and we look again in a minute."""
    owed: list[Notice] = []
    for _ in range(PASSES_MAX):
        found = one_pass((*made, *(_as_made(n, now) for n in owed)))
        if not found.owed:
            return Verdict(tuple(owed), min((w for w in found.wakes if w > now), default=None))
        owed += found.owed
    return Verdict(tuple(owed), now + HOLD)


@dataclass(frozen=True, slots=True)
class _Terms:
    """On what terms drafts are settled. `runner` is '' and `sight` None for the event itself."""

    situation: Situation
    runner: str
    now: datetime
    sight: Sight | None


def _walk(items: Iterable[Draft | Wake], terms: _Terms, made: tuple[Made, ...]) -> _Found:
    owed: list[Notice] = []
    wakes: list[datetime] = []
    for item in items:
        if isinstance(item, Wake):
            wakes.append(item.at)
            continue
        settled = _settled(item, terms, made)
        if isinstance(settled, Notice):
            owed.append(settled)
            made = (*made, _as_made(settled, terms.now))
        elif settled is not None:
            wakes.append(settled.at)
    return _Found(owed, wakes)


def _settled(draft: Draft, terms: _Terms, made: tuple[Made, ...]) -> Notice | Wake | None:
    """The notice a draft becomes; a wake where quiet hours hold it back; None where it is not owed."""
    event, now = terms.situation.event, terms.now
    alike = [m.notice for m in made if _alike(m.notice, draft)]
    if not _allowed(draft, terms) or any(n.occasion == draft.occasion for n in alike):
        return None
    rule = row(draft.kind)
    urgency = draft.urgency or rule.urgency
    owed_at = _could_be_made(draft, terms)
    since = owed_at if draft.lasting else draft.owed_at
    use_by = draft.use_by or (None if rule.lasts is None else since + rule.lasts)
    if use_by is not None and now > use_by and not draft.lasting:
        return None
    if not _wakes(draft, urgency) and not draft.person.startswith(GROUP):
        until = asleep_until(event.person(draft.person), event, now)
        up = terms.sight is not None and awake(terms.sight, draft.person, now - AWAKE_FOR)
        if until is not None and not up:
            return Wake(until)
        until = quiet_until(terms.situation.state, draft.person, now)
        if until is not None:
            return Wake(until)
    needed = rule.needs_answer if draft.needs_answer is None else draft.needs_answer
    free = terms.sight is None or may_be_asked(terms.sight, draft.person)
    asks = needed and free
    offers = asks or (not needed and (free or draft.kind is NoticeKind.UNCONFIRMED))
    buttons = rule.buttons if draft.buttons is None else draft.buttons
    return Notice(
        key=NoticeKey(
            event.id, terms.runner, draft.person, draft.kind, draft.point, len({n.occasion for n in alike})
        ),
        urgency=urgency,
        owed_at=draft.owed_at,
        use_by=use_by,
        needs_answer=asks,
        values=once_only(event, terms.runner, draft.person, draft.kind, draft.values, made, now),
        facts=draft.facts,
        buttons=tuple(b.value for b in buttons) if offers else (),
        occasion=draft.occasion,
        delayed=now - owed_at > DELAYED_AFTER,
        hold_until=now + HOLD if rule.joins and urgency is not Urgency.ALARM else None,
    )


def _could_be_made(draft: Draft, terms: _Terms) -> datetime:
    """From when a notice could have gone out: not before the facts came that made it due. Where we were away at the time,
    from when it was owed, as they may have waited for us."""
    back = terms.situation.watching_since
    if back is not None and draft.owed_at < back and terms.now - back <= DELAYED_AFTER:
        return draft.owed_at
    came = terms.situation.state.received_at(draft.facts, terms.runner)
    return draft.owed_at if came is None else max(draft.owed_at, came)


def _alike(notice: Notice, draft: Draft) -> bool:
    key = notice.key
    return (key.kind, key.person, key.point) == (draft.kind, draft.person, draft.point)


def _allowed(draft: Draft, terms: _Terms) -> bool:
    """Whether part, state and the person's own choice let the notice through."""
    event, rule = terms.situation.event, row(draft.kind)
    if draft.person.startswith(GROUP):
        return rule.group and (terms.sight is None or terms.sight.state.going in rule.arises)
    if not may_be_told(event, terms.runner, draft.person, draft.kind):
        return False
    if terms.sight is not None and terms.sight.state.going not in rule.arises:
        return False
    if terms.sight is not None and (_ended_there(draft, terms.sight) or _goes_no_further(draft, terms.sight)):
        return False
    if terms.sight is not None and _unwanted(draft, terms.sight):
        return False
    urgency = draft.urgency or rule.urgency
    return chosen(event.person(draft.person), urgency, own=rule.own and draft.mine, mine=draft.mine)


def _ended_there(draft: Draft, sight: Sight) -> bool:
    """Whether the race was ended early where a notice would send crew, or who is to reach them on their way."""
    of_meeting = isinstance(draft.values, UnreachedValues) and draft.values.notice_kind in _OF_RACING
    ended = sight.race.ended_early
    if ended is None or not (row(draft.kind).racing or of_meeting):
        return False
    said, order = sight.race.said_of("ended"), [p.id for p in sight.event.course_of(sight.runner.id).points]
    if said is None or said.point not in order or draft.point not in order:
        return True
    return order.index(draft.point) > order.index(said.point)


def _goes_no_further(draft: Draft, sight: Sight) -> bool:
    """Whether a notice would send crew to a point that she is not to reach, having missed a cut-off before it."""
    return row(draft.kind).racing and timed_out.goes_no_further(sight, draft.point)


def _unwanted(draft: Draft, sight: Sight) -> bool:
    """Whether a notice of the usual round would come while a call for help about her is open: windows, leave-bys and
    questions then keep people from what has to be done. What is still owed when it is over goes out then."""
    of_routine = isinstance(draft.values, UnreachedValues) and draft.values.notice_kind in _ROUTINE
    if not (row(draft.kind).routine or of_routine):
        return False
    open_ones = sight.once(("open alarms", len(sight.made)), lambda: open_alarms(sight.made))
    return any(a.startswith(f"{NoticeKind.ASKED_FOR_HELP.value}:") for a in open_ones)


_ROUTINE = frozenset(k.value for k, r in TABLE.items() if r.routine)
_OF_RACING = frozenset(k.value for k, r in TABLE.items() if r.racing)


def _wakes(draft: Draft, urgency: Urgency) -> bool:
    """Whether a notice goes out in quiet hours: alarms, and what concerns a person's own doing."""
    if urgency is Urgency.ALARM:
        return True
    rule = row(draft.kind)
    return draft.mine and (urgency is Urgency.ACTION or rule.own) and not rule.waits


def _as_made(notice: Notice, now: datetime) -> Made:
    return Made(notice=notice, short=0, made_at=now)
