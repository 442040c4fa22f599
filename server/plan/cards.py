"""Which if-then cards a runner has: those of the event file, and the built-in ones it does not replace."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from server.event.model import Event, IfThenCard
from server.plan.errors import PlanError
from server.sentences import say

NEEDED: Final = (
    "feet",
    "stomach",
    "fall",
    "head-injury",
    "weather",
    "cannot-get-warm",
    "allergy",
    "diabetes",
    "collapse",
    "wrong-turn",
    "lost-kit",
    "drowsy-driver",
    "runner-late",
    "wants-to-stop",
)
"""Troubles for which every runner has a card; the texts stand in `conversation.telling`."""


def cards_of(event: Event, built_in: Sequence[IfThenCard]) -> tuple[IfThenCard, ...]:
    """The cards of an event: its own first, in its order, then each built-in one it does not have.

    A card of its own with a built-in's id takes the place of trouble, steps and call; red flags of the built-in one
    stay beside its own, as does whom to call where it names nobody. Errors: PlanError for a needed card that is missing
    or a card with nothing to try.
    """
    by_id = {c.id: c for c in built_in}
    missing = [c for c in NEEDED if c not in by_id]
    if missing:
        raise PlanError(
            say("wrong-no-built-in-card", cards=", ".join(missing)),
            field="if_then",
            remedy=say("do-give-texts-every-needed-card"),
        )
    own = tuple(_joined(card, by_id.get(card.id), k) for k, card in enumerate(event.cards))
    taken = {c.id for c in own}
    return (*own, *(c for c in built_in if c.id not in taken))


def _joined(card: IfThenCard, base: IfThenCard | None, index: int) -> IfThenCard:
    steps = card.try_first or (base.try_first if base else ())
    if not steps:
        raise PlanError(
            say("wrong-card-nothing-try-first", id=card.id),
            field=f"if_then[{index}].try_first",
            remedy=say("do-give-least-step-try-first"),
        )
    if base is None:
        return IfThenCard(card.id, card.trouble, steps, card.call, card.red_flags)
    flags = tuple(dict.fromkeys((*card.red_flags, *base.red_flags)))
    return IfThenCard(
        card.id, card.trouble or base.trouble, steps, card.call or base.call, flags, base.life_flags
    )
