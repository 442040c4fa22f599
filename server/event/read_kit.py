"""Reads what a runner eats, carries and is told: fuel, lists of kit, bags, her words for bad moments."""

from __future__ import annotations

from server.event.model import DropBag, FuelPlan, KitItem, KitWeight, Prompt
from server.event.section import WORDS_MAX, Section


def read_fuel(section: Section) -> FuelPlan:
    found = FuelPlan(
        from_point=section.text("from", need='Say from which point on: from = "start".'),
        words=section.text("words", most=WORDS_MAX),
        kcal_per_h=section.number("kcal_per_h", 0, 1500),
        carbohydrate_g_per_h=section.number("carbohydrate_g_per_h", 0, 300),
        fluid_ml_per_h=section.number("fluid_ml_per_h", 0, 3000),
        sodium_mg_per_h=section.number("sodium_mg_per_h", 0, 5000),
    )
    section.done()
    return found


def read_drop_bags(section: Section) -> tuple[DropBag, ...]:
    """What waits for her in bags that the race takes to points."""
    bags = []
    for bag in section.tables("drop_bags"):
        point = bag.text("point", need='Say where the bag waits: point = "mill".')
        bags.append(DropBag(point, read_kit(bag, "kit", moves=False)))
        bag.done()
    return tuple(bags)


def read_prompts(section: Section) -> tuple[Prompt, ...]:
    """Her own words for bad moments."""
    found = []
    for s in section.tables("prompts"):
        when = s.text("when", need='Say when it is bad: when = "the second night".', most=WORDS_MAX)
        words = s.text(
            "words", need='Write what she wants to be told: words = "left, right, count".', most=WORDS_MAX
        )
        found.append(Prompt(when, words))
        s.done()
    return tuple(found)


def read_kit(section: Section, key: str, *, moves: bool = True) -> tuple[KitItem, ...]:
    """Items are texts or tables, mixed. `moves`: things that crew bring and take."""
    section.expect(key, "list of texts or tables, mixed")
    value = section.raw(key)
    if value is None:
        return ()
    if not isinstance(value, list):
        section.error(
            key, f"{key} is no list", f'Write {key} = ["poles", {{ name = "torch", weight = "safety" }}].'
        )
        return ()
    items = []
    for i, item in enumerate(value):
        table = Section(
            section.report, item if isinstance(item, dict) else {"name": item}, (*section.at(key), i)
        )
        name = table.text("name", need='Name the item: { name = "head torch" }.')
        hours = table.number("hours", 0.25, 500)
        if moves:
            weight = table.choice("weight", KitWeight, KitWeight.NORMAL) or KitWeight.NORMAL
            items.append(KitItem(name, weight, table.text("car") or None, table.yes("take_back"), hours))
        else:
            items.append(KitItem(name, hours=hours))
        table.done()
    return tuple(items)
