"""The demo's event with as many runners as asked, each with her own crew, cars and people at home."""

from __future__ import annotations

from dataclasses import replace

from server.event import dump_event
from server.event.model import Event, Part, PartKind, Person, Runner

__all__ = ["many"]

_COMMON = frozenset({"office", "vera", "sam", "olga"})


def many(event: Event, runners: int, crews: int | None = None) -> str:
    """An event file: `event` (of one runner) with her and hers again, `-1`, `-2` … behind their ids; beyond `crews` of them
    with runners who have nobody with them."""
    found = _alone(event, runners, runners if crews is None else crews)
    own = [p for p in event.people if p.id not in _COMMON]
    for n in range(1, runners if crews is None else crews):
        new = {p.id: f"{p.id}-{n}" for p in own} | {c.id: f"{c.id}-{n}" for c in event.cars}
        runner = event.runners[0]
        new[runner.id] = f"{runner.id}-{n}"

        def named(of: str | None, new: dict[str, str] = new) -> str | None:
            return of if of is None else new.get(of, of)

        found = replace(
            found,
            runners=(
                *found.runners,
                replace(
                    runner,
                    id=new[runner.id],
                    person=new[runner.person],
                    name=f"{runner.name} {n}",
                    bib=f"{900 + n}",
                ),
            ),
            people=(*found.people, *(replace(p, id=new[p.id], name=f"{p.name} {n}") for p in own)),
            cars=(*found.cars, *(replace(c, id=new[c.id], name=f"{c.name} {n}") for c in event.cars)),
            parts=(
                *found.parts,
                *(
                    replace(p, person=new[p.person], runner=named(p.runner), car=named(p.car), calls_race_control=False)
                    for p in event.parts
                    if p.person in new
                ),
            ),
            meetings=(
                *found.meetings,
                *(
                    replace(
                        m,
                        id=f"{m.id}-{n}",
                        runner=new[m.runner],
                        crew=tuple(new[c] for c in m.crew),
                        car=named(m.car),
                        kit=tuple(replace(k, car=named(k.car)) for k in m.kit),
                        pacer_joins=named(m.pacer_joins),
                        pacer_leaves=named(m.pacer_leaves),
                    )
                    for m in event.meetings
                ),
            ),
        )  # fmt: skip
    return dump_event(found)


def _alone(event: Event, runners: int, crews: int) -> Event:
    """With as many more runners as there are to be beyond those with crews: a bib, a name, a target; a desk hears of
    alarms."""
    her = event.runners[0]
    numbers = range(crews, runners)
    people = tuple(Person(f"{her.person}-{n}", f"{her.name} {n}") for n in numbers)
    return replace(
        event,
        runners=(
            *event.runners,
            *(
                Runner(p.id, p.id, p.name, f"{900 + n}", her.course, her.start, her.target)
                for n, p in zip(numbers, people, strict=True)
            ),
        ),
        people=(
            *event.people,
            *people,
            *([Person("desk", "Desk", phone="+44 1632 960099")] if people else []),
        ),
        parts=(
            *event.parts,
            *(Part(p.id, PartKind.RUNNER, p.id) for p in people),
            *([Part("desk", PartKind.SAFETY_CONTACT, ladder=9)] if people else []),
        ),
    )
