"""Reads what a runner eats, carries and is told: fuel, lists of kit, bags, her words for bad moments."""

from __future__ import annotations

from server.event.model import DropBag, Eaten, FuelPlan, KitItem, KitWeight, Prepare, Prompt
from server.event.section import WORDS_MAX, Section


def read_fuel(section: Section) -> FuelPlan:
    """What she takes in from a point on."""
    found = FuelPlan(
        from_point=section.text("from", need='Say from which point on: from = "start".'),
        words=section.text("words", most=WORDS_MAX),
        kcal_per_h=section.number("kcal_per_h", 0, 1500),
        carbohydrate_g_per_h=section.number("carbohydrate_g_per_h", 0, 300),
        fluid_ml_per_h=section.number("fluid_ml_per_h", 0, 3000),
        sodium_mg_per_h=section.number("sodium_mg_per_h", 0, 5000),
        caffeine_mg_per_h=section.number("caffeine_mg_per_h", 0, 200),
        eats=tuple(x for s in section.tables("eats") if (x := _eaten(s)) is not None),
    )
    section.done()
    return found


def _eaten(section: Section) -> Eaten | None:
    name = section.text("name", need='Name it: { name = "gel", per_h = 1 }.')
    per_h = section.number("per_h", 0.05, 20, need='Say how many in an hour: { name = "gel", per_h = 1 }.')
    holds = (
        section.number("kcal", 0, 2000),
        section.number("carbohydrate_g", 0, 400),
        section.number("sodium_mg", 0, 5000),
        section.number("caffeine_mg", 0, 400),
    )
    section.done()
    return Eaten(name, per_h, *holds) if name and per_h is not None else None


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
        grams = table.number("grams", 1, 50_000)
        prepare = table.choices("prepare", Prepare)
        if moves:
            weight = table.choice("weight", KitWeight, KitWeight.NORMAL) or KitWeight.NORMAL
            car, back = table.text("car") or None, table.yes("take_back")
            items.append(KitItem(name, weight, car, back, hours, grams, prepare))
        else:
            items.append(KitItem(name, hours=hours, grams=grams, prepare=prepare))
        table.done()
    return tuple(items)
