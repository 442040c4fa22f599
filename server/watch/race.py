"""The organiser's race-level facts, told to those affected: holds, moved starts and cut-offs, access, routes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from server.event.model import PartKind
from server.facts.entry import Kind
from server.watch.notice import CorrectionValues, NoticeKind, RaceChangeValues
from server.watch.runner_context import Draft, Rule, Sight, Wake

__all__ = ["RULES"]


@dataclass(frozen=True, slots=True)
class RaceChange:
    """One race-level fact as it concerns a runner. `at` is when it was made known, where that is known."""

    occasion: str
    values: RaceChangeValues
    at: datetime | None
    facts: tuple[str, ...] = ()


def race_change(sight: Sight) -> Iterator[Draft | Wake]:
    """Each change once to each person affected, and a word to those told if it is taken back."""
    changes = list(_changes(sight))
    for change in changes:
        for who in _affected(sight, change.values.point):
            if change.facts and who == change.values.told_by:
                continue  # they said so themselves
            yield Draft(
                NoticeKind.RACE_CHANGE,
                who,
                change.values.point or "",
                change.occasion,
                change.at or sight.now,
                change.values,
                change.facts,
                mine=True,
            )
    yield from _taken_back(sight, changes)


def _changes(sight: Sight) -> Iterator[RaceChange]:
    yield from _start(sight)
    yield from _holds(sight)
    yield from _cut_offs(sight)
    yield from _access(sight)
    race = sight.race
    for e in race.rerouted:
        values = RaceChangeValues(Kind.REROUTED.value, e.point, e.until, e.amount, e.words, e.by)
        yield RaceChange(f"rerouted:{e.id}", values, e.received_at, (e.id,))
    if race.ended_early is not None:
        stamp, said = race.ended_early, race.said_of("ended")
        point, words = (None, "") if said is None else (said.point, said.words)
        values = RaceChangeValues(Kind.RACE_ENDED_EARLY.value, point, None, None, words, stamp.by)
        yield RaceChange(f"ended:{stamp.entry}", values, stamp.at, (stamp.entry,))


def _start(sight: Sight) -> Iterator[RaceChange]:
    moved = sight.state.start - sight.runner.start
    if moved:
        kind = Kind.START_DELAYED if moved > timedelta(0) else Kind.WAVE_MOVED
        by, words = _said(sight, f"start:{sight.runner.id}")
        values = RaceChangeValues(kind.value, None, sight.state.start, moved, words, by)
        yield RaceChange(f"start:{sight.state.start.isoformat()}", values, None)


def _holds(sight: Sight) -> Iterator[RaceChange]:
    """A hold that covers her is told while it lasts; its end, to those who were told of it."""
    for hold in sight.race.holds:
        if hold.runner not in (None, sight.runner.id):
            continue
        over = hold.end is not None and hold.end <= sight.now
        by = hold.by or _organiser(sight)
        told = any(m.notice.occasion == f"held:{hold.entry}" for m in sight.told(NoticeKind.RACE_CHANGE))
        if not over:
            values = RaceChangeValues(Kind.HELD.value, hold.point, hold.end, None, hold.words, by)
            yield RaceChange(f"held:{hold.entry}", values, hold.start, (hold.entry,))
        elif told:
            values = RaceChangeValues(Kind.RELEASED.value, hold.point, hold.end, None, hold.words, by)
            yield RaceChange(f"released:{hold.entry}", values, hold.end, (hold.entry,))


def _cut_offs(sight: Sight) -> Iterator[RaceChange]:
    """Each that has moved, and each that people were told had moved and that has not, or not there: with what it was."""
    moved = {(point, edge): when for point, edge, when in sight.race.cut_offs_moved}
    told: dict[tuple[str, str], list[datetime]] = {}
    for m in sight.told(NoticeKind.RACE_CHANGE):
        values = m.notice.values
        if m.notice.occasion.startswith("cut-off:") and isinstance(values, RaceChangeValues) and values.until:
            steps = told.setdefault((values.point or "", values.edge), [])
            steps += [values.until] if steps[-1:] != [values.until] else []
    for point, edge in {**moved, **told}:
        planned = _planned(sight, point, edge)
        when, steps = moved.get((point, edge), planned), told.get((point, edge), [])
        if when is None or not _ahead(sight, point):
            continue
        by, words = _said(sight, f"cut-off:{point}:{edge}")
        before = next((s for s in reversed(steps) if s != when), planned)
        was = before if before != when else None
        values = RaceChangeValues(Kind.CUT_OFF_MOVED.value, point, when, None, words, by, edge, was)
        # Numbered, as one that is moved there again, or taken back, is told again.
        number = len(steps) - (steps[-1:] == [when])
        again = f":{number}" if number else ""
        yield RaceChange(f"cut-off:{point}:{edge}:{when.isoformat()}{again}", values, None)


def _planned(sight: Sight, point: str, edge: str) -> datetime | None:
    """A cut-off as the event file has it."""
    at = next((p for p in sight.event.course_of(sight.runner.id).points if p.id == point), None)
    limits = () if at is None else at.cut_offs
    return next((c.at(sight.state.start) for c in limits if c.edge.value == edge), None)


def _access(sight: Sight) -> Iterator[RaceChange]:
    """Access closed; and opened again, to those who were told that it was closed."""
    closed = set(sight.race.access_closed)
    told = [m.notice for m in sight.told(NoticeKind.RACE_CHANGE) if m.notice.occasion.startswith("access:")]
    points = dict.fromkeys((*sorted(closed), *(n.key.point for n in told)))
    for point in points:
        last = next((n.occasion for n in reversed(told) if n.key.point == point), "")
        shut = last.startswith(f"access:{Kind.ACCESS_CLOSED.value}")
        kind = Kind.ACCESS_CLOSED if point in closed else Kind.ACCESS_OPENED
        if not _ahead(sight, point):
            continue
        number = len({n.occasion for n in told if n.key.point == point}) - (shut == (point in closed))
        by, words = _said(sight, f"access:{point}")
        values = RaceChangeValues(kind.value, point, None, None, words, by)
        yield RaceChange(f"access:{kind.value}:{point}:{number}", values, None)


def _ahead(sight: Sight, point: str) -> bool:
    on_course = any(p.id == point for p in sight.event.course_of(sight.runner.id).points)
    times = sight.state.at_point(point)
    here = times is not None and times.left is None and not times.implied
    return on_course and (here or not sight.reached(point))


def _said(sight: Sight, fact: str) -> tuple[str, str]:
    """Who said a race-level fact, and their words; the organiser where its entry counts no longer."""
    e = sight.race.said_of(fact)
    return (_organiser(sight), "") if e is None else (e.by, e.words)


def _organiser(sight: Sight) -> str:
    return next(iter(sight.people(PartKind.ORGANISER)), "")


def _affected(sight: Sight, point: str | None) -> list[str]:
    """Runner, crew, pacers, safety contact; volunteers of that point, or all of them."""
    people = list(sight.people(PartKind.RUNNER, PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT))
    people += [p.person for p in sight.parts(PartKind.VOLUNTEER) if point is None or p.point == point]
    return list(dict.fromkeys(people))


def _taken_back(sight: Sight, changes: list[RaceChange]) -> Iterator[Draft]:
    """A change whose entry counts no longer; what follows in its place is told as a change of its own."""
    standing = {c.occasion for c in changes}
    holds = {f"held:{h.entry}" for h in sight.race.holds}
    for m in sight.told(NoticeKind.RACE_CHANGE):
        occasion = m.notice.occasion
        if not occasion.startswith(("held:", "rerouted:", "ended:", "start:")):
            continue
        if occasion in standing or occasion in holds or _followed(occasion, changes):
            continue
        values = m.notice.values
        assert isinstance(values, RaceChangeValues)
        yield Draft(
            NoticeKind.CORRECTION,
            m.notice.key.person,
            m.notice.key.point,
            f"race change:{occasion}",
            sight.now,
            CorrectionValues(values.change, values.point, values.until, None, taken_back=True, by=""),
            m.notice.facts,
            mine=True,
        )


def _followed(occasion: str, changes: list[RaceChange]) -> bool:
    """A start moved again is told as the new start, not as a correction of the old one."""
    return occasion.startswith("start:") and any(c.occasion.startswith("start:") for c in changes)


RULES: tuple[Rule, ...] = (race_change,)
