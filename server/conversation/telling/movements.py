"""Crew movements in words: rules broken, what will not work, what could help, and what a drive is made of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from server.conversation.telling.measures import listing
from server.conversation.telling.planned import say_planned
from server.conversation.telling.reader import Reader
from server.event.model import Event
from server.plan.movements import Broken, CrewPlan, Journey, MovementTrouble, TroubleKind, part_of
from server.plan.movements.trips import goes_to
from server.plan.notes import Saying, saying
from server.sentences import sentence


def plan_remarks(reader: Reader, event: Event, plan: CrewPlan) -> tuple[str, ...]:
    """Rules broken, troubles, offers, notes: one line each, the gravest first, none twice."""
    return tuple(dict.fromkeys(_remarks(reader, event, plan)))


def _remarks(reader: Reader, event: Event, plan: CrewPlan) -> Iterator[str]:
    told = {b.said for b in plan.broken}
    for b in plan.broken:
        what, remedy = broken_words(reader, b)
        yield sentence(reader.language, "move-not-allowed", what=what, remedy=remedy)
    left = (t for t in plan.troubles if t.kind is not TroubleKind.RULE or t.said not in told)
    yield from _troubles(reader, event, left)
    helps: dict[Saying, list[str]] = {}
    for o in plan.offers:
        helps.setdefault(o.said, []).append(o.meeting)
    for said, meetings in helps.items():
        yield from _at(reader, event, meetings, "move-offer", said)
    for n in plan.notes:
        yield say_planned(reader, n)


def _troubles(reader: Reader, event: Event, troubles: Iterable[MovementTrouble]) -> Iterator[str]:
    """Each at its meeting; the drives for which one driver is too long awake in one line."""
    found: dict[object, list[MovementTrouble]] = {}
    for t in troubles:
        found.setdefault((t.kind, t.person) if t.kind is TroubleKind.AWAKE else t, []).append(t)
    for alike in found.values():
        said, meetings = alike[0].said, [t.meeting for t in alike]
        if len(alike) > 1 and alike[0].kind is TroubleKind.AWAKE:
            hours = [t.said.number("awake_h") for t in alike]
            said = saying(
                "move-awake-drives", person=said.word("person"), least_h=min(hours), most_h=max(hours)
            )
        yield from _at(reader, event, meetings, "move-trouble", said)


_OWN = frozenset({TroubleKind.AWAKE, TroubleKind.ASLEEP})
"""For the driver alone."""
_ALL_THERE = frozenset(TroubleKind) - _OWN - {
    # Said beside the times of the meeting, or refused by the check.
    TroubleKind.NO_WAY, TroubleKind.ESTIMATED, TroubleKind.RULE, TroubleKind.PERMIT,
}  # fmt: skip


def trouble_lines(reader: Reader, event: Event, plan: CrewPlan, person: str) -> tuple[str, ...]:
    """What will not work, or not surely, of the meetings that this person goes to, and where they drive too tired: for
    themselves to read before they set off."""
    mine = {m.id for m in event.meetings if person in goes_to(event, m)}
    found = (
        t
        for t in plan.troubles
        if (t.kind in _OWN and t.person == person)
        or (t.kind in _ALL_THERE and (t.meeting in mine or t.person == person))
    )
    return tuple(f"{x.rstrip('.')}." for x in dict.fromkeys(_troubles(reader, event, found)))


def broken_words(reader: Reader, broken: Broken) -> tuple[str, str]:
    """What breaks a rule, with the rule; and the remedy."""
    what, rule = say_planned(reader, broken.said), say_planned(reader, broken.rule)
    return (
        sentence(reader.language, "move-broken", what=what, rule=rule),
        say_planned(reader, broken.remedy),
    )


def _at(reader: Reader, event: Event, meetings: Iterable[str], key: str, said: Saying) -> Iterator[str]:
    """What is said of some meetings, a line for each runner whom they are with."""
    what = say_planned(reader, said)
    places: dict[str, list[str]] = {}
    plans = {m.id: m for m in event.meetings}
    for plan in (plans[m] for m in meetings if m in plans):
        name = event.course_of(plan.runner).point(plan.point).name
        places.setdefault(event.runner(plan.runner).name, []).append(name)
    for runner, names in places.items():
        place = listing(dict.fromkeys(names), reader.language)
        yield sentence(reader.language, key, place=place, runner=runner, what=what)
    if not places:
        yield what


def made_of(reader: Reader, journey: Journey) -> str:
    """What a journey is made of: 'drive 30 min, walk-in 4 min and unloading 5 min'; '' for none."""
    return listing((say_planned(reader, part_of(a)) for a in journey.addends), reader.language)
