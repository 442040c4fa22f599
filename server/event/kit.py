"""The tables of an event file about things: what crew bring, what she has on her, what waits in bags. Frozen."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from server.event.forms import Choices, Number, OneOf, Ref, Text, Yes
from server.event.table import Table, Tables, key
from server.sentences import say


class KitWeight(StrEnum):
    """How bad it is when an item is not there: safety items are planned for at 99%, others at 97%."""

    SAFETY = "safety"
    NORMAL = "normal"


class Prepare(StrEnum):
    """What is to be done with a thing before the race."""

    BUY = "buy"
    CHARGE = "charge"
    TEST = "test"


@dataclass(frozen=True, slots=True)
class KitItem(Table):
    """A thing to have ready, or on her. A plain text is enough: "poles".

    `car` says where it travels, `take_back` that crew take it away, `hours` how long a torch or battery lasts, `grams` what
    it weighs (None = not said), `prepare` what is to be done with it before.
    """

    name: str = key(Text(), "what", '"head torch"', need=say("do-name-item-name-head-torch"))
    weight: KitWeight = key(
        OneOf(KitWeight),
        "safety: the meeting is planned for at 99% instead of 97%, as for a light, a battery or a warm layer",
        '"safety"',
        default=KitWeight.NORMAL,
    )
    car: str | None = key(Ref("car"), "the car it is in", '"van"')
    take_back: bool = key(Yes(), "whether crew take it away from her", "false")
    hours: float | None = key(Number(0.25, 500), "how long a torch or a battery lasts", "9")
    grams: float | None = key(Number(1, 50_000), "what it weighs", "180")
    prepare: tuple[Prepare, ...] = key(
        Choices(Prepare), "what is to be done with it before the race: a list with dates", '["buy", "test"]'
    )


MOVED = ("weight", "car", "take_back")
"""What is said of a thing only where crew bring it."""


@dataclass(frozen=True, slots=True)
class DropBag(Table):
    """A bag that waits for her at a point."""

    point: str = key(Text(), "the id of the point", '"mill"', need=say("do-say-where-bag-waits-point"))
    kit: tuple[KitItem, ...] = key(
        Tables(KitItem, texts=True, without=MOVED), "what is in it", '[ "dry socks", %s ]', must=True
    )
