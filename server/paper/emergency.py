"""The emergency card, which everybody has: whom to call, what to say, where what lies; and the cards for trouble."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from server.conversation.telling.cards import built_in_cards, red_flag_line
from server.conversation.telling.things import part_words
from server.event.model import IfThenCard, Signal
from server.paper.document import Block, CardBlock, Grid, Head, Lines, Look, Page, page
from server.paper.writing import Writing, grid_ref
from server.plan.cards import cards_of

PLACES = ("point", "km", "grid-ref", "signal", "escape")
_SHARES = (2.2, 0.8, 2.0, 1.0, 3.0)


def emergency_page(w: Writing) -> Page:
    """In danger: numbers, what to read out with gaps to fill, the signs at which the emergency number comes first, and each
    point's place in the grid."""
    say, event = w.say, w.event
    control = event.race_control
    red = red_flag_line(control.phone, event.emergency_number, say.reader.language)
    return page(
        Head(say.s("paper-head-emergency")),
        Lines(w.aid(), Look.DANGER),
        Lines((red,)),
        Lines(_common(_cards(w)), Look.LIST),
        Head(say.s("paper-head-say")),
        Lines(tuple(_words(w)), Look.FRAME),
        *(b for r in _courses(w) for b in _places(w, r)),
        Lines((say.s("cards-medical"),), Look.SMALL),
    )


def _words(w: Writing) -> Iterator[str]:
    me = w.event.person(w.person)
    phone = me.phone if w.sees_numbers and me.phone else "none"
    parts = part_words(w.say, w.event.parts_of(w.person), {r.id: r.name for r in w.event.runners})
    yield w.s("paper-say-who", name=me.name, parts=parts, event=w.event.name, phone=phone)
    several = len(w.runners) > MANY
    for r in () if several else w.runners:
        yield w.s("paper-say-runner", runner=w.named(w.event.runner(r)))
        note = w.event.runner(r).medical_note
        if note and w.sees_medical(r):
            yield w.s("paper-say-medical", note=note)
    if several:
        yield w.s("paper-say-runner-blank")
    yield w.s("paper-say-what")
    yield w.s("paper-say-where")
    yield w.s("paper-say-seen")
    yield w.s("paper-say-then")


MANY = 4
"""With more runners than that the words leave a gap for her name (own choice)."""


def _courses(w: Writing) -> tuple[str, ...]:
    """One runner for each course that the person's runners are on."""
    return tuple({w.event.runner(r).course: r for r in reversed(w.runners)}.values())[::-1]


def _places(w: Writing, runner: str) -> Iterator[Block]:
    definition, line = w.event.course_of(runner), w.before.course(runner)
    rows = []
    for p in definition.points:
        spot = line.at(p.km or 0.0)
        ways = [
            s.escape_route
            for s in definition.stretches
            if s.escape_route and s.from_km <= (p.km or 0.0) <= s.to_km
        ]
        signal = "" if p.signal is Signal.GOOD else w.s(f"paper-signal-{p.signal.value}")
        rows.append(
            (p.name, w.say.km(p.km or 0.0), grid_ref(spot.lat_deg, spot.lon_deg), signal, "; ".join(ways))
        )
    yield Head(w.s("paper-head-places"))
    yield Grid(w.heads(PLACES), tuple(rows), shares=_SHARES)
    yield stretches(w, runner)


def stretches(w: Writing, runner: str) -> Lines:
    """Where there is no signal, and the ways off the hill."""
    told = []
    for s in w.event.course_of(runner).stretches:
        if s.no_signal or s.escape_route:
            about = [
                w.s("paper-stretch-silent") if s.no_signal else "",
                s.escape_route and w.s("paper-stretch-out", way=s.escape_route),
            ]
            span = {"from": w.say.km(s.from_km), "to": w.say.km(s.to_km)}
            told.append(
                w.s("paper-stretch", name=s.name or "none", about=" ".join(x for x in about if x), **span)
            )
    return Lines(tuple(told), Look.LIST)


def _cards(w: Writing) -> tuple[IfThenCard, ...]:
    control, event = w.event.race_control, w.event
    return cards_of(event, built_in_cards(control.phone, event.emergency_number, w.say.reader.language))


def _common(cards: tuple[IfThenCard, ...]) -> tuple[str, ...]:
    """The flags that stand in the one box over all cards: those of more than one of them."""
    counts = Counter(f for c in cards for f in c.life_flags)
    return tuple(f for f, n in counts.items() if n > 1)


def cards_page(w: Writing) -> Page:
    """If this, then that."""
    cards = _cards(w)
    common = _common(cards)
    return page(
        Head(w.s("paper-head-cards")),
        *(_card(w, c, common) for c in cards),
        Lines((w.s("cards-medical"),), Look.SMALL),
    )


def _card(w: Writing, card: IfThenCard, common: tuple[str, ...]) -> CardBlock:
    red = "; ".join(card.red_flags)
    return CardBlock(
        card.trouble,
        tuple(f for f in card.life_flags if f not in common),
        w.s("paper-card-red", flags=red) if red else "",
        card.try_first,
        w.s("card-call", call=card.call) if card.call else "",
    )
