"""What concerns the whole crew, told to their group chats as well: never instead of a person, never what is private.

A group hears what its people were told: the race delayed, held, rerouted; an alarm over; finished. No alarm, no place
of hers, no words of anybody, no duty of one person: who reads along in a group nobody knows.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from server.facts.entry import Why
from server.watch.notice import Ear, Made, NoticeKind, SightingValues, UncoveredValues, Values
from server.watch.runner_context import Draft, Rule, Sight, Wake
from server.watch.situation import GROUP
from server.watch.table import row

__all__ = ["RULES"]


def groups(sight: Sight) -> Iterator[Draft | Wake]:
    """One notice to each group for each fact that its people were told since it was bound."""
    for group in sight.situation.groups:
        heard = {
            (m.notice.key.kind, m.notice.occasion)
            for m in sight.situation.made_to(group.id)
            if m.notice.key.runner != sight.runner.id
        }
        for m in sight.made:
            key = m.notice.key
            if not row(key.kind).group or key.person.startswith(GROUP) or m.made_at < group.since:
                continue
            if key.kind is NoticeKind.CORRECTION or (key.kind, m.notice.occasion) in heard:
                continue  # corrections of what a group was told come with those of people
            if key.kind is NoticeKind.FINISHED and m.notice.occasion not in m.notice.facts:
                continue  # that crew are asked again whether they have her
            if isinstance(m.notice.values, UncoveredValues) and m.notice.values.ear in _ONE_PERSONS:
                continue
            yield _draft(m, group.id)


def _draft(m: Made, group: str) -> Draft:
    notice = m.notice
    return Draft(
        notice.key.kind,
        group,
        notice.key.point,
        notice.occasion,
        notice.owed_at,
        _for_all(notice.values),
        notice.facts,
        use_by=notice.use_by,
        needs_answer=False,
        buttons=(),
    )


def _for_all(values: Values) -> Values:
    """The same without what is one person's: the kit and their next meeting, why somebody can't come."""
    if isinstance(values, SightingValues):
        return SightingValues(values.point, values.at, values.told_by, values.through)
    if isinstance(values, UncoveredValues):
        fallen = tuple(replace(o, why=Why.NOT_SAID.value, words="") for o in values.fallen)
        return replace(values, ear=Ear.OTHERS, fallen=fallen, window=None, meeting_now=None, also=())
    return values


_ONE_PERSONS = frozenset({Ear.HER, Ear.FALLEN, Ear.MEETS_HER})

RULES: tuple[Rule, ...] = (groups,)
