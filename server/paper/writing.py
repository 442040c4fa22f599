"""What every part of a sheet is written from: the situation before the start, who reads it, and the crew's movements."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from server.conversation.telling.measures import utm
from server.conversation.telling.reader import reader_in
from server.conversation.telling.say import Say
from server.event.model import CrewAccess, Event, PartKind, Runner
from server.paper.before import BeforeStart
from server.plan.kit import light_of
from server.plan.movements import CrewPlan

UNNAMED = "Race control"
"""What the reader of event files calls a race control that was given no name."""
WATCHING = frozenset({PartKind.SAFETY_CONTACT, PartKind.ORGANISER})
"""Who has every meeting on their sheet, since they are asked about all of them."""
NO_NUMBERS = frozenset({PartKind.VOLUNTEER, PartKind.SUPPORTER})
"""Who sees no private number."""


@dataclass(frozen=True)
class Writing:
    """One person's sheet in the making."""

    before: BeforeStart
    person: str
    moves: CrewPlan | None

    @property
    def event(self) -> Event:
        """The event."""
        return self.before.event

    @cached_property
    def say(self) -> Say:
        """The person's language, clock and units."""
        return Say(reader_in(self.event, self.person), self.before.at)

    @cached_property
    def kinds(self) -> frozenset[PartKind]:
        """What the person is here."""
        return frozenset(p.kind for p in self.event.parts_of(self.person))

    @cached_property
    def runners(self) -> tuple[str, ...]:
        """Ids of the runners that the person's parts are about and that have a plan."""
        parts = self.event.parts_of(self.person)
        return tuple(
            r.id
            for r in self.event.runners
            if r.id in self.before.situation.timetables and any(p.runner in (None, r.id) for p in parts)
        )

    @property
    def watches(self) -> bool:
        """Whether every meeting is this person's business."""
        return bool(self.kinds & WATCHING)

    @property
    def sees_numbers(self) -> bool:
        """Whether the person may have others' telephone numbers."""
        return bool(self.kinds - NO_NUMBERS)

    def sees_medical(self, runner: str) -> bool:
        """Whether a runner's medical note is for this person: her own, and those whom an alarm about her climbs."""
        ladder = any(
            p.ladder is not None and p.runner in (None, runner) for p in self.event.parts_of(self.person)
        )
        return ladder or self.event.runner(runner).person == self.person

    def s(self, key: str, **values: str | int) -> str:
        """A sentence."""
        return self.say.s(key, **values)

    def heads(self, keys: Iterable[str]) -> tuple[str, ...]:
        """The heads of a table."""
        return tuple(self.s(f"paper-{k}") for k in keys)

    def named(self, runner: Runner) -> str:
        """Her name, number and what she wears."""
        return self.s(
            "paper-runner",
            name=runner.name,
            bib=runner.bib or "none",
            clothing="; ".join(x for x in (runner.clothing, light_of(runner)) if x),
        )

    def control(self) -> dict[str, str]:
        """Race control's name and number, and the emergency number, as sentences want them."""
        control = self.event.race_control
        name = "none" if control.name == UNNAMED else control.name
        return {"name": name, "phone": control.phone or "?", "emergency": self.event.emergency_number}

    def aid(self) -> tuple[str, ...]:
        """Whom to call in danger."""
        rescue, who = self.event.rescue, self.s("paper-rescue-who")
        name = rescue.name if rescue and who.casefold() not in rescue.name.casefold() else "none"
        more = (
            (
                self.s(
                    "paper-rescue", who=rescue.name if name == "none" else who, name=name, phone=rescue.phone
                ),
            )
            if rescue
            else ()
        )
        return (self.s("paper-aid", **self.control()), *more)


def spot_of(event: Event, access: CrewAccess) -> tuple[float, float] | None:
    """(lat, lon) of a car park as the file gives it, at the point or at the place it names; None where it does not."""
    if access.lat is not None and access.lon is not None:
        return access.lat, access.lon
    found = next((p for p in event.places if p.id == access.place), None)
    if found is None or found.lat is None or found.lon is None:
        return None
    return found.lat, found.lon


def grid_ref(lat: float, lon: float) -> str:
    """Degrees that a telephone's map takes, and the grid that rescuers read where it is defined."""
    ref = utm(lat, lon) if -80 <= lat <= 84 else ""
    return "\n".join(x for x in (f"{lat:.5f}, {lon:.5f}", ref) if x)
