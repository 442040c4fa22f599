"""Answers about things, people and roads, in words: kit, food, drives, meetings, cards, numbers, usage."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import datetime, timedelta

from server.conversation.telling import past_cut_off
from server.conversation.telling.answer import (
    CardsAnswer,
    CarryOut,
    KitAnswer,
    MeetingAnswer,
    NextAnswer,
    OtherCar,
    PeopleAnswer,
    PersonThere,
)
from server.conversation.telling.answers import freshness, race_ended
from server.conversation.telling.news import lost_words
from server.conversation.telling.say import Say, lines, slug
from server.conversation.telling.times import floor_to, leave_said
from server.event.model import Contact, FuelPlan, IfThenCard, KitItem, Part, PartKind
from server.plan.kit import must

CARDS_IN_FULL = 2


def _items(say: Say, kit: list[KitItem]) -> str:
    return say.things(k.name for k in kit)


def say_bring(say: Say, a: KitAnswer) -> str:
    """What to bring to a point: safety items named apart, and which car each thing is in."""
    kit = [k for k in a.kit if not k.take_back]
    cars = dict(a.cars)
    safety = [k for k in kit if must(k)]
    values = {"place": a.name, "runner": a.runner_name}
    first = say.s("bring", kit=_items(say, kit), **values) if kit else say.s("bring-none", **values)
    return lines(
        first,
        say.s("bring-safety", kit=_items(say, safety)) if safety else "",
        *_by_car(say, kit, cars),
        say.s("bring-food", food=a.food) if a.food else "",
        say.s("bring-dark") if a.dark else "",
        _there(say, a),
    )


def _by_car(say: Say, kit: list[KitItem], cars: Mapping[str, str]) -> Iterable[str]:
    """In which car what is."""
    by_car: dict[str, list[str]] = {}
    for k in kit:
        if k.car:
            by_car.setdefault(cars.get(k.name, k.car), []).append(k.name)
    return (say.s("bring-car", car=car, items=say.things(items)) for car, items in by_car.items())


def _there(say: Say, a: KitAnswer) -> str:
    if a.window is None:
        return ""
    return say.s("point-next", runner=a.runner_name, place=a.name, window=say.window(a.window))


def say_take_back(say: Say, a: KitAnswer) -> str:
    """What crew take away from her there."""
    kit = [k for k in a.kit if k.take_back]
    if not kit:
        return lines(say.s("take-back-none", place=a.name), _there(say, a))
    return lines(say.s("take-back", place=a.name, kit=_items(say, kit)), _there(say, a))


def _fuel_figures(say: Say, fuel: FuelPlan) -> str:
    figures = (
        ("fuel-kcal", "kcal_per_h"),
        ("fuel-carbohydrate", "carbohydrate_g_per_h"),
        ("fuel-fluid", "fluid_ml_per_h"),
        ("fuel-sodium", "sodium_mg_per_h"),
        ("fuel-caffeine", "caffeine_mg_per_h"),
    )
    amounts = ((key, fuel.rate(name)) for key, name in figures)
    said = [say.s(key, amount=f"{amount:.0f}") for key, amount in amounts if amount]
    return say.s("fuel-figures", figures=say.all(said)) if said else ""


def say_food(say: Say, a: KitAnswer) -> str:
    """What she eats and drinks there and from there on, as planned."""
    values = {"runner": a.runner_name, "place": a.name}
    first = say.s("food", food=a.food, **values) if a.food else say.s("food-none", **values)
    fuel = a.fuel
    return lines(
        first,
        say.s("fuel", words=fuel.words) if fuel and fuel.words else "",
        _fuel_figures(say, fuel) if fuel else "",
        _carry(say, a.carry) if a.carry else "",
        _there(say, a),
    )


def _carry(say: Say, carry: CarryOut) -> str:
    """Amounts to the next refill; nothing where her plan names none."""
    amounts = (
        ("paper-bag-kcal", carry.kcal, 10),
        ("paper-bag-carbohydrate", carry.carbohydrate_g, 5),
        ("paper-bag-sodium", carry.sodium_mg, 50),
    )
    things = [say.s(key, amount=str(step * round(v / step))) for key, v, step in amounts if v is not None]
    if carry.bottles is not None:
        things.append(say.s("food-bottles", count=carry.bottles))
    if not things:
        return ""
    return say.s("food-carry", place=carry.name, length=say.length(carry.takes), things=say.all(things))


def _meeting_at(a: NextAnswer, point: str | None) -> MeetingAnswer | None:
    """The meeting at that point; without one the first that can be met, or else the first."""
    if point is None:
        return next((m for m in a.meetings if not m.values.lost), a.meetings[0] if a.meetings else None)
    return next((m for m in a.meetings if m.values.point == point), None)


def _no_meeting(say: Say, a: NextAnswer, none: str) -> str:
    """No meeting is left to go to; where a missed cut-off is why, that is the answer."""
    ruled = past_cut_off.standing(say, a.fresh, a.runner_name)
    return lines(ruled or none, freshness(say, a.fresh, a.runner_name, ruled=not ruled))


def _ended(a: NextAnswer) -> bool:
    """Whether no meeting holds any more because the race was ended, all of it."""
    return a.fresh.ended_at is not None and not a.fresh.ended_from


def _last_heard(say: Say, a: NextAnswer) -> str:
    return freshness(say, replace(a.fresh, ended_at=None), a.runner_name, sharper=False)


def _lost_line(say: Say, m: MeetingAnswer) -> str:
    why = lost_words(say, m.values)
    return say.s("leave-lost", runner=m.runner_name, place=m.name, why=why)


def say_leave(say: Say, a: NextAnswer, point: str | None) -> str:
    """When to leave, and from when to be there."""
    m = _meeting_at(a, point)
    if _ended(a):
        return lines(race_ended(say, a.fresh), say.s("leave-ended"), _last_heard(say, a))
    if m is None:
        return _no_meeting(say, a, say.s("leave-none"))
    v = m.values
    if v.lost:
        after = [n for n in a.meetings if not n.values.lost]
        return lines(
            _lost_line(say, m),
            say.s("meeting-after", place=after[0].name, window=say.window(after[0].values.window))
            if after
            else "",
            say.s("meeting-if-missed", text=v.if_missed) if v.if_missed else "",
            freshness(say, a.fresh, a.runner_name),
        )
    first = _when_to_leave(say, m)
    if m.there:
        return lines(first, _wait(say, m), _comes(say, m), freshness(say, a.fresh, a.runner_name))
    if m.on_way_since is not None:
        return lines(first, _comes(say, m), freshness(say, a.fresh, a.runner_name))
    if m.others and v.leave_by is not None:
        first = lines(first, say.s("leave-these", crew=say.all(m.crew), **{"from": m.drive_from or "none"}))
    return lines(
        first, _drive(say, m), _comes(say, m), *other_cars(say, m), freshness(say, a.fresh, a.runner_name)
    )


def _when_to_leave(say: Say, m: MeetingAnswer) -> str:
    """By when to leave, below whose leave-by it is where it is not the reader's; or that they are there, or on the way."""
    there, leave_by = say.when(floor_to(m.values.be_there)), m.values.leave_by
    if m.there:
        return say.s("leave-there", place=m.name)
    if m.on_way_since is not None:
        return say.s("leave-on-way", place=m.name, left=say.when(m.on_way_since), be_there=there)
    whose = not_theirs(say, m)
    if leave_by is None:
        return lines(whose, say.s("leave-unknown", place=m.name, be_there=there))
    said = say.when(leave_said(leave_by, say.now))
    if leave_by < say.now:
        return lines(whose, say.s("leave-over", place=m.name, leave_by=said))
    return lines(whose, say.s("leave", place=m.name, leave_by=said, be_there=there))


def not_theirs(say: Say, m: MeetingAnswer) -> str:
    """Whose meeting it is, of one that is not the reader's; '' for their own."""
    return say.s("leave-not-you", crew=say.all(m.crew)) if not m.mine and m.crew else ""


def say_time_left(say: Say, a: NextAnswer, point: str | None) -> str:
    """How much time there is until they must leave, in those words, then the leave-by and the rest: what it is enough for
    is for them to judge."""
    m = _meeting_at(a, point)
    rest = say_leave(say, a, point)
    if m is None or _ended(a) or m.values.lost or m.there or m.on_way_since is not None:
        return rest
    leave_by = m.values.leave_by
    if leave_by is None:
        return lines(say.s("time-left-unknown", place=m.name), rest)
    if leave_by <= say.now:
        return lines(say.s("time-left-none", place=m.name), rest)
    left = floor_to(leave_by) - say.now
    return lines(say.s("time-left", place=m.name, length=say.length(max(left, timedelta(0)))), rest)


def other_cars(say: Say, m: MeetingAnswer) -> tuple[str, ...]:
    """Those who come to a meeting in other cars, a line a car: who, from where, by when they leave."""
    return tuple(_other_car(say, m, o) for o in m.others)


def _other_car(say: Say, m: MeetingAnswer, o: OtherCar) -> str:
    values = {"crew": say.all(o.people), "car": o.car or "none", "from": o.drive_from or "none"}
    if o.lost:
        return say.s("other-car-lost", place=m.name, **values)
    if o.stays:
        return say.s("other-car-stays", place=m.name, **values)
    if o.leave_by is None:
        return say.s("other-car-unknown", **values)
    return say.s("other-car", leave_by=say.when(floor_to(o.leave_by)), **values)


def _comes(say: Say, m: MeetingAnswer) -> str:
    return say.s("point-next", runner=m.runner_name, place=m.name, window=say.window(m.values.window))


def _drive(say: Say, m: MeetingAnswer) -> str:
    if m.values.drive is None:
        return ""
    walk = say.length(m.walk_in) if m.walk_in else "none"
    return lines(
        say.s("drive", place=m.name, length=say.length(m.values.drive), walk=walk),
        "" if m.drive_confirmed else say.s("drive-estimated"),
    )


def say_drive(say: Say, a: NextAnswer, point: str | None) -> str:
    """How long the drive is, and whether anybody stands for it."""
    m = _meeting_at(a, point)
    if m is None:
        return say.s("leave-none")
    if m.values.drive is None:
        return lines(say.s("drive-unknown", place=m.name), _comes(say, m))
    from_where = say.s("drive-from", **{"from": m.drive_from}) if m.drive_from else ""
    return lines(_drive(say, m), from_where, say_leave(say, a, point).split("\n")[0])


def say_ride(say: Say, a: NextAnswer, place: str) -> str:
    """Who drives to the meetings at `place`, in which car, and by when they leave; '' = to the next meeting."""
    if _ended(a):
        return say_leave(say, a, None)
    if not a.meetings:
        return say.s("ride-none", runner=a.runner_name, place=place or "none")
    told = a.meetings if place else a.meetings[:1]
    return lines(*(line for m in told for line in _ride(say, m)), freshness(say, a.fresh, a.runner_name))


def _ride(say: Say, m: MeetingAnswer) -> tuple[str, ...]:
    v = m.values
    if v.lost:
        return (_lost_line(say, m), *other_cars(say, m))
    if not m.crew:
        return (say.s("ride-nobody", place=m.name, runner=m.runner_name), *other_cars(say, m))
    stays = v.drive is not None and not v.drive
    how = "stays" if stays else "open" if v.leave_by is None else "leave"
    first = say.s(
        "ride",
        place=m.name,
        runner=m.runner_name,
        crew=say.all(m.crew),
        car=m.car or "none",
        how=how,
        leave_by=say.when(floor_to(v.leave_by)) if v.leave_by else "",
        be_there=say.when(floor_to(v.be_there)),
        **{"from": m.drive_from or "none"},
    )
    return (first, *other_cars(say, m))


def hours_words(say: Say, opens: datetime | None, closes: datetime | None) -> str:
    """From when to when, or '' where neither is known."""
    if opens is None and closes is None:
        return ""
    if opens is None:
        return say.s("hours-to", closes=say.maybe(closes))
    if closes is None:
        return say.s("hours-from", opens=say.when(opens))
    return say.s("hours-both", opens=say.when(opens), closes=say.when(closes))


def _hours(say: Say, opens: datetime | None, closes: datetime | None) -> str:
    hours = hours_words(say, opens, closes)
    return say.s("meeting-hours", hours=hours) if hours else ""


def say_way(say: Say, a: NextAnswer, point: str | None) -> str:
    """How to get to a meeting: parking and walk first, opening hours, the drive, when to leave."""
    m = _meeting_at(a, point)
    if m is None:
        return say.s("leave-none")
    walk = say.length(m.walk_in) if m.walk_in else "none"
    first = (
        say.s("meeting-way", place=m.name, parking=m.parking, walk=walk)
        if m.parking
        else say.s("meeting-way-unknown", place=m.name)
    )
    return lines(
        first,
        _hours(say, m.opens, m.closes),
        say.s("meeting-no-signal", place=m.name) if m.values.no_signal else "",
        say_leave(say, a, point).split("\n")[0],
    )


def say_meeting(say: Say, a: NextAnswer) -> str:
    """The next meeting in full, and the one after in a line."""
    if _ended(a):
        return say_leave(say, a, None)
    if not a.meetings:
        return _no_meeting(say, a, say.s("meeting-none", runner=a.runner_name))
    lost = [m for m in a.meetings if m.values.lost]
    can = [m for m in a.meetings if not m.values.lost]
    if not can:
        return say_leave(say, a, None)
    m, *after = can
    crew = say.s("meeting-who", crew=say.all(m.crew), car=m.car or "none") if m.crew else ""
    walk = say.length(m.walk_in) if m.walk_in else "none"
    return lines(
        say.s("meeting", place=m.name, runner=m.runner_name, window=say.window(m.values.window)),
        _when_to_leave(say, m),
        _wait(say, m),
        say.s("meeting-kit", kit=say.things(m.values.kit)) if m.values.kit else "",
        say.s("meeting-take-back", kit=say.things(m.values.take_back)) if m.values.take_back else "",
        say.s("meeting-food", food=m.values.food) if m.values.food else "",
        crew,
        *other_cars(say, m),
        say.s("meeting-parking", parking=m.parking, walk=walk) if m.parking else "",
        _hours(say, m.opens, m.closes),
        say.s("meeting-no-signal", place=m.name) if m.values.no_signal else "",
        say.s("meeting-after", place=after[0].name, window=say.window(after[0].values.window))
        if after
        else "",
        *(_lost_line(say, n) for n in lost),
        freshness(say, a.fresh, a.runner_name, sharper=False),
    )


def _wait(say: Say, m: MeetingAnswer) -> str:
    if m.values.stay:
        return say.s("meeting-wait", until=say.s("until-heard"))
    return say.until(
        "meeting-wait", "meeting-wait-short", say.when(m.values.wait_until), m.runner_name, m.values.p_comes
    )


def _person(say: Say, p: PersonThere) -> str:
    where = []
    if p.at_name and p.since:
        where.append(say.s("people-at", place=p.at_name, when=say.when(p.since)))
    if p.bound_for and p.be_there:
        where.append(say.s("people-bound", place=p.bound_for, when=say.when(floor_to(p.be_there))))
    elif p.bound_for:
        where.append(say.s("people-bound-untimed", place=p.bound_for))
    if p.car:
        where.append(say.s("people-car", car=p.car))
    if p.phone:
        where.append(say.s("people-phone", phone=p.phone))
    if not p.reachable:
        where.append(say.s("people-unreached"))
    parts = say.all(part_word(say, k) for k in p.part.split(", "))
    return say.s("people-line", name=p.name, parts=parts, where="; ".join(where) or "none")


def say_people(say: Say, a: PeopleAnswer, name: str = "", person: str = "") -> str:
    """Who is where; with `name` of a point only those there or bound for it; with `person` only them."""
    chosen = [
        p
        for p in a.people
        if (not name or name in (p.at_name, p.bound_for)) and (not person or p.name == person)
    ]
    if not chosen:
        return say.s("people-none", place=name) if name else say.s("people-nobody")
    head = "" if person else say.s("people-head", count=len(chosen))
    return lines(head, *(_person(say, p) for p in chosen))


def say_numbers(say: Say, control: Contact, emergency: str, rescue: Contact | None = None) -> str:
    """The numbers that matter."""
    more = say.s("alarm-numbers-rescue", name=rescue.name, phone=rescue.phone) if rescue else ""
    return lines(say.s("numbers", name=control.name, phone=control.phone, emergency=emergency), more)


def card_lines(say: Say, card: IfThenCard) -> tuple[str, ...]:
    """A card after its box: when a medic is fetched, what is tried first, whom to call."""
    said = (
        say.s("card-red", trouble=card.trouble, flags="; ".join(card.red_flags)) if card.red_flags else "",
        say.s("card", trouble=card.trouble, tries="; ".join(card.try_first)),
        say.s("card-call", call=card.call) if card.call else "",
    )
    return tuple(x for x in said if x)


def boxed(say: Say, red_line: str, cards: Iterable[IfThenCard]) -> tuple[str, ...]:
    """The flags at which the emergency number comes first, each once, in a box; () where no card has any."""
    flags = tuple(dict.fromkeys(f for c in cards for f in c.life_flags))
    if not flags:
        return ()
    first = say.s("card-box", red_line=red_line)
    return (first, *(say.s("card-box-flag", flag=f) for f in flags), say.s("card-box-end"))


def say_cards(say: Say, a: CardsAnswer, card_ids: tuple[str, ...] = ()) -> str:
    """The cards asked about (by id); a few are told in full, of many their troubles."""
    chosen = [c for c in a.cards if c.id in card_ids] or list(a.cards)
    if not chosen:
        return lines(say.s("cards-none"), say.s("cards-medical"))
    if len(chosen) > CARDS_IN_FULL:
        which = (say.s("cards-line", trouble=c.trouble) for c in chosen)
        return lines(say.s("cards-which"), *which, say.s("cards-medical"))
    told = (line for c in chosen for line in card_lines(say, c))
    return lines(*boxed(say, a.red_line, chosen), *told, say.s("cards-medical"))


def part_word(say: Say, kind: str) -> str:
    """A part's kind in the reader's language."""
    return say.s(f"part-{slug(kind)}")


def part_words(say: Say, parts: tuple[Part, ...], runner_names: dict[str, str]) -> str:
    """A person's parts: 'crew for Maren and supporter'."""
    said = (
        say.s(
            "part-line",
            kind=part_word(say, p.kind.value),
            runner="none"
            if p.kind is PartKind.RUNNER
            else runner_names.get(p.runner or "", p.runner or "none"),
        )
        for p in parts
    )
    return say.all(said)


def say_duties(
    say: Say, parts: tuple[Part, ...], runner_names: dict[str, str], control: Contact, emergency: str
) -> str:
    """What a person with these parts does, one paragraph a kind of part."""
    told = []
    for kind in dict.fromkeys(p.kind.value for p in parts):
        mine = [p for p in parts if p.kind.value == kind]
        who = dict.fromkeys(runner_names.get(p.runner, p.runner) for p in mine if p.runner)
        calls = any(p.calls_race_control for p in mine)
        told.append(
            say.s(
                f"duty-{slug(kind)}",
                runner=say.all(who or runner_names.values()),
                control=control.name,
                phone=control.phone,
                emergency=emergency,
                calls="yes" if calls else "no",
            )
        )
    return lines(*told, say.s("duty-all"))


def say_usage(say: Say, kinds: frozenset[str], place: str, undo_minutes: int) -> str:
    """What can be asked, for the parts a person has; `place` is a point's name to make examples with."""
    if kinds and kinds <= {"volunteer"}:
        return say.s("usage-volunteer", minutes=str(undo_minutes))
    return lines(
        say.s("usage-runner") if kinds & {"runner", "pacer"} else "",
        say.s("usage-crew", place=place),
        say.s("usage-report", place=place, minutes=str(undo_minutes)),
        say.s("usage-answer"),
    )
