"""Whoever was told something that has been corrected or taken back is told so."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from server.facts.state import Stamp
from server.watch.notice import (
    CorrectionValues,
    Made,
    NoticeKind,
    RetiredValues,
    SightingValues,
)
from server.watch.runner_context import Draft, Rule, Sight, Wake

__all__ = ["RULES"]

MATTERS = timedelta(minutes=5)
"""A time corrected by less changes nothing for anybody (one step of the windows' rounding)."""

_KINDS = (NoticeKind.ARRIVED, NoticeKind.LEFT, NoticeKind.FINISHED, NoticeKind.RETIRED)


def corrections(sight: Sight) -> Iterator[Draft | Wake]:
    """One correction for each person and fact they were told that holds no longer."""
    for kind in _KINDS:
        last: dict[tuple[str, str], Made] = {}
        for m in sight.told(kind):
            last[(m.notice.key.person, m.notice.key.point)] = m
        for (who, point), told in last.items():
            yield from _correct(sight, kind, who, point, told)


def _correct(sight: Sight, kind: NoticeKind, who: str, point: str, told: Made) -> Iterator[Draft]:
    said = [
        m for m in sight.told(NoticeKind.CORRECTION, who, point) if _of(m, kind) and m.made_at >= told.made_at
    ]
    was = _last_said(told, said)
    stamp = _current(sight, kind, point)
    now_at = None if stamp is None else stamp.at
    if was == now_at or (kind is NoticeKind.RETIRED and now_at is not None):
        return
    if was is not None and now_at is not None and abs(now_at - was) < MATTERS:
        return
    values = CorrectionValues(
        was_kind=kind.value,
        point=point or None,
        was_at=was,
        now_at=now_at,
        taken_back=now_at is None,
        by="" if stamp is None else stamp.by,
    )
    if stamp is not None and stamp.by == who:
        return  # they said so themselves
    occasion = f"{kind.value}:{told.notice.occasion}:{len(said)}"
    facts = told.notice.facts if stamp is None else (stamp.entry,)
    yield Draft(NoticeKind.CORRECTION, who, point, occasion, sight.now, values, facts, mine=True)


def _of(correction: Made, kind: NoticeKind) -> bool:
    values = correction.notice.values
    return isinstance(values, CorrectionValues) and values.was_kind == kind.value


def _last_said(told: Made, said: list[Made]) -> datetime | None:
    values = said[-1].notice.values if said else told.notice.values
    match values:
        case CorrectionValues(now_at=at):
            return at
        case SightingValues(at=at) | RetiredValues(at=at):
            return at
        case _:
            return None


def _current(sight: Sight, kind: NoticeKind, point: str) -> Stamp | None:
    times = sight.state.at_point(point)
    match kind:
        case NoticeKind.ARRIVED:
            return None if times is None else times.arrived
        case NoticeKind.LEFT:
            return None if times is None else times.left
        case NoticeKind.FINISHED:
            return sight.state.finished
        case _:
            return None if sight.state.retirement is None else sight.state.retirement.stamp


RULES: tuple[Rule, ...] = (corrections,)
