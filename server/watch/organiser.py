"""About ourselves and about people: the test alarm before the start, who can't be reached, when we were down."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from server.event.model import Event, PartKind
from server.facts.state import Going
from server.forecast.channel_outages import LISTENS, SERVER, Down
from server.watch.notice import Made, NoticeKind, OutageValues, TestAlarmValues, UnreachedValues, Urgency
from server.watch.runner_context import Draft, Rule, Sight, Wake, stewards, tried
from server.watch.situation import GROUP, Situation

__all__ = ["EVENT_RULES", "RULES", "on_ladder", "test_alarm_roll"]

FIRST_TEST = timedelta(hours=12)
SECOND_TEST = timedelta(hours=2)
TEST_OVER = timedelta(hours=1)
"""The test alarm goes out so long before the first start, again to the silent ones, and is closed."""
ASLEEP_FROM, AWAKE_FROM, EVENING = time(22), time(8), time(20)
"""A first test between the first two, on the event's clock, goes out on the evening before, at the third: it asks for the
phone as it will be at night, and wakes nobody in a night in which nothing can happen (own choice)."""
OUTAGE_MIN = timedelta(minutes=2)
"""Shorter gaps than this are restarts that nobody could have noticed."""

OUTAGE_HOME = timedelta(minutes=30)
"""A channel's outage that lasts so long is told to the safety contact too (own choice)."""
WITH_SERVER = timedelta(minutes=3)
WITH_SERVER_OUT = timedelta(minutes=13)
"""What gave its last sign of life so long before the server did stopped with it: those of channels come every minute
or so, those of channels that only send every few minutes."""

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


def _first_test(event: Event, start: datetime) -> datetime:
    """Twelve hours before the start, or the evening before those."""
    zone = ZoneInfo(event.time_zone)
    at = (start - FIRST_TEST).astimezone(zone)
    if AWAKE_FROM <= at.time() < ASLEEP_FROM:
        return start - FIRST_TEST
    day = at.date() if at.time() >= ASLEEP_FROM else at.date() - timedelta(days=1)
    return datetime.combine(day, EVENING, zone).astimezone(start.tzinfo)


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
    opens, again, closes = _first_test(situation.event, start), start - SECOND_TEST, start - TEST_OVER
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
            yield from _unreached(situation.event, mine, "test alarm", closes)


def _unreached(event: Event, notices: list[Made], occasion: str, at: datetime) -> Iterator[Draft]:
    """The organiser hears who did not answer these notices, all of one kind to one person."""
    key, since = notices[0].notice.key, min(m.made_at for m in notices)
    who = key.person
    for organiser in stewards(event):
        if organiser != who:
            values = UnreachedValues(who, key.kind.value, tried(event.person(who), notices), since)
            yield Draft(NoticeKind.UNREACHED, organiser, "", f"{occasion}:{who}", at, values, mine=True)


def outage(situation: Situation, made: tuple[Made, ...], now: datetime) -> Iterator[Draft | Wake]:
    """The organiser hears what of ours was down and for how long; while it lasts, once, if any channel still works.

    What went down with the server itself is told with it, unless it stays down when the server is back. A channel
    over which people report, down for half an hour while somebody is on the course: the safety contact hears as well,
    since her crew's silence raises no alarm meanwhile.
    """
    for down in situation.downs:
        known_at = max(down.start, _back_after(situation, down)) + OUTAGE_MIN
        if down.end is None and now < known_at:
            yield Wake(known_at)
            continue
        if (down.end or now) - down.start < OUTAGE_MIN or (down.end is not None and down.end < known_at):
            continue
        told = dict.fromkeys(stewards(situation.event))
        if down.end is None and down.component.startswith(LISTENS) and _on_course(situation):
            home = down.start + OUTAGE_HOME
            yield Wake(home)
            if now >= home:
                told |= dict.fromkeys(p.person for p in situation.event.parts if p.kind is _HOME)
        lasts, over = (f"{down.component}:{down.start.isoformat()}:{end}" for end in ("lasts", "over"))
        told |= dict.fromkeys(m.notice.key.person for m in made if m.notice.occasion == lasts)
        for who in told:
            occasion = lasts if down.end is None else over
            values = OutageValues(down.component, down.start, down.end)
            yield Draft(NoticeKind.OUTAGE, who, "", occasion, down.end or known_at, values, mine=True)


_HOME = PartKind.SAFETY_CONTACT


def _back_after(situation: Situation, down: Down) -> datetime:
    """When the server was back that took this component down with it; its own start where none did."""
    if down.component == SERVER:
        return down.start
    before = WITH_SERVER if down.component.startswith(LISTENS) else WITH_SERVER_OUT
    servers = (d for d in situation.downs if d.component == SERVER and d.end is not None)
    ends = [d.end for d in servers if d.end and d.start - before <= down.start <= d.start + WITH_SERVER]
    return max(ends, default=down.start)


def _on_course(situation: Situation) -> bool:
    return any(r.going.on_course for r in situation.state.runners)


def unreached(sight: Sight) -> Iterator[Draft | Wake]:
    """No channel reaches somebody who must be told: the organiser hears it once until they are reached."""
    must = [m for m in sight.made if m.notice.needs_answer or m.notice.urgency is not Urgency.NEWS]
    for who in dict.fromkeys(m.notice.key.person for m in must if not m.notice.key.person.startswith(GROUP)):
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
        yield from _unreached(sight.event, [failed], occasion, sight.now)


RULES: tuple[Rule, ...] = (unreached,)
EVENT_RULES: tuple[EventRule, ...] = (test_alarm, outage)
