"""An open alarm as it stands above everything: what happened, who has it, what the reader does, whom they telephone."""

from __future__ import annotations

from dataclasses import dataclass

from server.api import help_now
from server.api.snapshot import Picture
from server.api.who_may import Call, May, may
from server.event.model import Event, Part, PartKind, Person
from server.pages.first import PageButton, buttons_of, owed
from server.pages.view import Pen


@dataclass(frozen=True, slots=True)
class PhoneButton:
    """A number to press: whose, what they are in this, and the number itself."""

    name: str
    part: str
    phone: str


@dataclass(frozen=True, slots=True)
class AlarmCard:
    """What the reader does about the alarm about one runner, their answers to it, and the telephones in their order."""

    todo: tuple[str, ...]
    buttons: tuple[PageButton, ...]
    phones: tuple[PhoneButton, ...]


def alarm_card(picture: Picture, runner: str, person: str, parts: tuple[Part, ...], pen: Pen) -> AlarmCard:
    """The card of that person; only call it while an alarm about her is open."""
    share = may(parts, Call.ALARM, runner)
    said = help_now.alarm_answer(picture, runner, person, share).now if share is not May.NO else ""
    waits = owed(picture, person, alarms=True, about=runner)
    answers = buttons_of(waits[0], pen) if waits else ()
    sees = may(parts, Call.PHONES, runner) is May.YES
    phones = ladder_phones(picture.event, runner, person, pen) if sees else ()
    return AlarmCard(tuple(line for line in said.split("\n") if line), answers, phones)


def ladder_phones(event: Event, runner: str, person: str, pen: Pen) -> tuple[PhoneButton, ...]:
    """Whom to telephone about her, in the order in which they are asked: the ladder, with race control behind the one who
    calls it (before all others, if that is the reader), then her pacers, and her own number last: she may not be able to
    answer it. Nobody's own number is offered to them."""
    control = event.race_control
    order = PhoneButton(control.name, pen.word("part-race-control"), control.phone)
    steps = sorted(
        (p for p in event.people_for(runner, *PartKind) if p.ladder is not None), key=lambda p: p.ladder or 0
    )
    caller = next((p.person for p in steps if p.calls_race_control), None)
    found: list[PhoneButton] = []
    for step in steps:
        if step.person != person:
            found += _of(event, step, pen)
        if step.person == caller:
            found.append(order)
    if order not in found:
        found.append(order)
    found += [
        b for p in event.people_for(runner, PartKind.PACER) if p.person != person for b in _of(event, p, pen)
    ]
    if event.rescue is not None and event.rescue.phone and event.rescue.phone != event.emergency_number:
        found.append(PhoneButton(event.rescue.name, pen.word("part-rescue"), event.rescue.phone))
    hers = event.runner(runner).person
    if hers != person:
        found += [PhoneButton(p.name, pen.word("part-runner"), p.phone) for p in event.people if p.id == hers]
    once: dict[str, PhoneButton] = {}
    for button in found:
        if button.phone:
            once.setdefault(button.phone, button)
    return tuple(once.values())


def _of(event: Event, part: Part, pen: Pen) -> list[PhoneButton]:
    known: Person | None = next((p for p in event.people if p.id == part.person), None)
    if known is None:
        return []
    return [PhoneButton(known.name, pen.word("part-" + part.kind.value.replace(" ", "-")), known.phone)]
