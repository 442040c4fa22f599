"""About ourselves and about people: the test alarm before the start, who can't be reached, when we were down."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from datetime import datetime, timedelta

from server.event.model import Event, PartKind
from server.facts.state import Going
from server.watch.notice import Made, NoticeKind, OutageValues, TestAlarmValues, UnreachedValues, Urgency
from server.watch.sight import Draft, Rule, Sight, Wake, stewards
from server.watch.situation import Situation

__all__ = ["EVENT_RULES", "RULES", "on_ladder", "test_alarm_roll"]

FIRST_TEST = timedelta(hours=12)
SECOND_TEST = timedelta(hours=2)
TEST_OVER = timedelta(hours=1)
"""The test alarm goes out so long before the first start, again to the silent ones, and is closed."""
OUTAGE_MIN = timedelta(minutes=2)
"""Shorter gaps than this are restarts that nobody could have noticed."""

EventRule = Callable[[Situation, tuple[Made, ...], datetime], Iterable[Draft | Wake]]
"""A rule about no one runner: sees the notices made about none."""


def on_ladder(event: Event) -> tuple[str, ...]:
    """Everybody an alarm may climb to: given a step, safety contact, or the one who calls race control."""
    return tuple(
        dict.fromkeys(
            p.person
            for p in event.parts
            if p.ladder is not None or p.kind is PartKind.SAFETY_CONTACT or p.calls_race_control
        )
    )


def _first_start(situation: Situation) -> datetime | None:
    waiting = [r.start for r in situation.state.runners if r.going is Going.BEFORE_START]
    return min((r.start for r in situation.state.runners), default=None) if waiting else None


def test_alarm_roll(situation: Situation) -> tuple[tuple[str, datetime | None], ...]:
    """Everybody on the ladder, with when they answered the test alarm (None = they did not)."""
    answered: dict[str, datetime] = {}
    for m in situation.made:
        if m.notice.key.kind is NoticeKind.TEST_ALARM and m.answered_at is not None:
            answered.setdefault(m.notice.key.person, m.answered_at)
    return tuple((who, answered.get(who)) for who in on_ladder(situation.event))


def test_alarm(situation: Situation, made: tuple[Made, ...], now: datetime) -> Iterator[Draft | Wake]:
    """Everybody on the ladder answers one before the start; the organiser hears who did not."""
    start = _first_start(situation)
    if start is None or now >= start:
        return
    opens, again, closes = start - FIRST_TEST, start - SECOND_TEST, start - TEST_OVER
    if now < opens:
        yield Wake(opens)
        return
    tests = [m for m in made if m.notice.key.kind is NoticeKind.TEST_ALARM]
    silent = [w for w, at in test_alarm_roll(situation) if at is None]
    values = TestAlarmValues(answer_by=closes)
    for who in silent:
        mine = [m for m in tests if m.notice.key.person == who]
        if now < closes:
            yield Draft(NoticeKind.TEST_ALARM, who, "", "first", opens, values, use_by=closes, mine=True)
            yield Wake(again)
            if now >= again and any(m.made_at < again for m in mine):
                yield Draft(NoticeKind.TEST_ALARM, who, "", "second", again, values, use_by=closes, mine=True)
            yield Wake(closes)
        elif mine:
            since = min(m.made_at for m in mine)
            yield from _unreached(
                situation.event, who, NoticeKind.TEST_ALARM.value, "test alarm", closes, since
            )


def _unreached(
    event: Event, who: str, kind: str, occasion: str, at: datetime, since: datetime
) -> Iterator[Draft]:
    for organiser in stewards(event):
        if organiser != who:
            values = UnreachedValues(who, kind, event.person(who).channels, since)
            yield Draft(NoticeKind.UNREACHED, organiser, "", f"{occasion}:{who}", at, values, mine=True)


def outage(situation: Situation, made: tuple[Made, ...], now: datetime) -> Iterator[Draft | Wake]:
    """The organiser hears for how long we were blind; while it lasts, once, if any channel still works."""
    del made
    for span in situation.outages:
        long_enough = span.start + OUTAGE_MIN
        if span.end is None and now < long_enough:
            yield Wake(long_enough)
            continue
        if (span.end or now) - span.start < OUTAGE_MIN:
            continue
        for who in stewards(situation.event):
            occasion = f"{span.start.isoformat()}:{'lasts' if span.end is None else 'over'}"
            values = OutageValues("our own channels", span.start, span.end)
            yield Draft(NoticeKind.OUTAGE, who, "", occasion, span.end or long_enough, values, mine=True)


def unreached(sight: Sight) -> Iterator[Draft | Wake]:
    """No channel reaches somebody who must be told: the organiser hears it once until they are reached."""
    must = [m for m in sight.made if m.notice.needs_answer or m.notice.urgency is not Urgency.NEWS]
    for who in dict.fromkeys(m.notice.key.person for m in must):
        failed: Made | None = None
        for m in must:
            if m.notice.key.person != who:
                continue
            if m.failed and m.answered_at is None:
                failed = failed or m
            elif m.sent_at is not None or m.answered_at is not None:
                failed = None
        if failed is None:
            continue
        key = failed.notice.key
        occasion = f"no channel:{key.text()}"
        yield from _unreached(sight.event, who, key.kind.value, occasion, sight.now, failed.made_at)


RULES: tuple[Rule, ...] = (unreached,)
EVENT_RULES: tuple[EventRule, ...] = (test_alarm, outage)
