"""Reads runners, people, cars, drives, meetings and if-then cards of an event file."""

from __future__ import annotations

import re
from collections.abc import Collection
from datetime import datetime, timedelta
from functools import partial

from server.event.draft import At, Draft
from server.event.model import (
    Car,
    Drive,
    IfThenCard,
    MeetingPlan,
    NoticeChoice,
    Part,
    PartKind,
    Person,
    Runner,
    Target,
)
from server.event.read_course import read_id
from server.event.read_kit import read_drop_bags, read_fuel, read_kit, read_prompts
from server.event.read_moves import read_sleeps
from server.event.read_pace import read_own_runs, read_past_races
from server.event.section import FIELD_MAX, WORDS_MAX, Section, did_you_mean, one_of
from server.event.times import read_pace, zone_names

CHANNELS = ("telegram", "email", "web", "webhook", "text", "terminal")
"""What a person's `channels` may name: those of the bot, and the page."""
_PHONE = re.compile(r"\+?[0-9][0-9 ()./-]*")
_TARGETS = (
    'Give one: target = { finish = "29:00" }, { pace_all_in = "10:50" } or '
    '{ easy_pace = "6:30", margin = "1:30" }; or none, with past_race or own_runs instead.'
)


def read_waves(draft: Draft, top: Section) -> None:
    """[waves]: name = start."""
    waves = top.table("waves")
    for name in waves.values if waves is not None else ():
        assert waves is not None
        at = draft.moment(waves, name)
        if at is not None:
            draft.waves[name] = at


def read_runners(draft: Draft, top: Section) -> None:
    """Every [[runners]]."""
    for section in top.tables("runners", FIELD_MAX):
        name = section.text("name", need='Give the runner a name, as in name = "Maren".')
        runner_id = read_id(section, name)
        wave, start = _start(draft, section)
        courses = [c.value.id for c in draft.courses]
        course = section.text("course")
        if course and course not in courses:
            section.error(
                "course", f"there is no course '{course}'", did_you_mean(course, courses, "Check the id.")
            )
        elif not course and len(courses) > 1:
            section.missing("course", f"There are several courses: say which ({', '.join(courses)}).")
        own_runs, past_races = read_own_runs(section), read_past_races(section)
        runner = Runner(
            id=runner_id,
            person=section.text("person") or runner_id,
            name=name or runner_id,
            bib=_bib(section),
            course=course if course in courses else courses[0],
            start=start,
            target=_target(section, optional=bool(past_races or own_runs)),
            wave=wave,
            clothing=section.text("clothing", most=WORDS_MAX),
            torch=section.text("torch", most=WORDS_MAX),
            medical_note=section.text("medical_note", most=WORDS_MAX),
            fuel=tuple(read_fuel(s) for s in section.tables("fuel")),
            climb_rate_m_per_h=section.number("climb_m_per_h", 50, 3000),
            walk_kmh=section.number("walk_kmh", 1, 10),
            downhill_kmh=section.number("downhill_kmh", 2, 30),
            own_runs=own_runs,
            past_races=past_races,
            carries=read_kit(section, "carries", moves=False),
            drop_bags=read_drop_bags(section),
            prompts=read_prompts(section),
            wants_to_hear=section.texts("wants_to_hear", WORDS_MAX),
            not_to_hear=section.texts("not_to_hear", WORDS_MAX),
            bottles=section.whole("bottles", 1, 20),
            trained_carbohydrate_g_per_h=section.number("trained_carbohydrate_g_per_h", 0, 200),
        )
        draft.runners.append(At(runner, section.path))
        section.done()


def _bib(section: Section) -> str:
    section.expect("bib", "whole number or text")
    value = section.raw("bib")
    return str(value) if isinstance(value, int) and not isinstance(value, bool) else section.text("bib")


def _start(draft: Draft, section: Section) -> tuple[str, datetime]:
    """Her wave and start. A start of her own goes before the wave's, the wave's before the event's."""
    wave = section.text("wave")
    own = draft.moment(section, "start")
    if wave and own is None and wave not in draft.waves:
        known = ", ".join(sorted(draft.waves)) or "none"
        remedy = did_you_mean(wave, draft.waves, f"Add its start under [waves]; known: {known}.")
        section.error("wave", f"there is no wave '{wave}'", remedy)
    return wave, own or draft.waves.get(wave, draft.starts)


def _target(section: Section, *, optional: bool) -> Target:
    """What she means to do; `optional` where a past race or her own runs say what she can."""
    table = section.table("target")
    if table is None:
        if not section.has("target") and not (
            optional or section.has("own_runs") or section.has("past_race")
        ):
            section.missing("target", _TARGETS)
        return Target()
    finish = table.span("finish", timedelta(minutes=30), timedelta(days=14))
    paces = {}
    for key in ("pace_all_in", "easy_pace", "margin"):
        table.expect(key, 'minutes and seconds per km in quotes, as in "6:30"')
        text = table.text(key)
        pace = table.timed(key, partial(read_pace, text)) if text else None
        if pace is not None and key != "margin" and not timedelta(minutes=2) <= pace <= timedelta(hours=1):
            table.error(key, f"{text} is outside 2:00 to 60:00 per km", "Write minutes and seconds per km.")
            pace = None
        paces[key] = pace
    forms = [table.has("finish"), table.has("pace_all_in"), table.has("easy_pace")]
    if sum(forms) != 1:
        what = "several forms of target are given" if sum(forms) else "the target is empty"
        section.error("target", what, _TARGETS)
    if table.has("margin") != table.has("easy_pace"):
        section.error("target", "easy_pace and margin go together", _TARGETS)
    table.done()
    return Target(finish, paces["pace_all_in"], paces["easy_pace"], paces["margin"])


def read_phone(section: Section, key: str, *, need: str = "", short: bool = False) -> str:
    """A telephone number: digits and the usual signs, 7 to 15 digits (ITU-T E.164 allows 15); `short` ones
    of 3 to 6 digits (emergency numbers) where they make sense."""
    section.expect(key, "telephone number in quotes, with country code")
    text = section.text(key, need=need)
    digits = sum(c.isdigit() for c in text)
    if text and (_PHONE.fullmatch(text) is None or not (3 if short else 7) <= digits <= 15):
        section.error(
            key, f"'{text}' is no telephone number", 'Write it with country code: "+44 1632 960001".'
        )
    elif text and not text.startswith(("+", "00")) and digits > 6:
        remedy = 'Write it as from abroad: "+44 1632 960001".'
        section.report.warn(section.at(key), f"'{text}' has no country code", remedy)
    return text


def read_people(draft: Draft, top: Section, languages: Collection[str]) -> None:
    """Every [[people]] with their parts."""
    for section in top.tables("people", FIELD_MAX):
        name = section.text("name", need='Give the person a name, as in name = "Ana".')
        person_id = read_id(section, name)
        quiet = section.table("quiet")
        quiet_from = draft.clock(quiet, "from") if quiet is not None else None
        quiet_to = draft.clock(quiet, "to") if quiet is not None else None
        if quiet is not None:
            if not (quiet.has("from") and quiet.has("to")):
                section.error(
                    "quiet", "quiet hours need both ends", 'Write quiet = { from = "22:00", to = "06:00" }.'
                )
            quiet.done()
        person = Person(
            id=person_id,
            name=name or person_id,
            phone=read_phone(section, "phone"),
            email=_email(section),
            webhook=_webhook(section),
            language=_language(section, languages),
            time_zone=zone(section, "time_zone"),
            miles=section.yes("miles"),
            clock_12h=_one_of(section, "clock", ("24h", "12h"), "24h") == "12h",
            channels=_channels(section),
            notices=section.choice("notices", NoticeChoice, NoticeChoice.ALL) or NoticeChoice.ALL,
            quiet_from=quiet_from,
            quiet_to=quiet_to,
        )
        draft.people.append(At(person, section.path))
        for part in section.tables("parts"):
            draft.parts.append(At(_part(draft, part, person_id), part.path))
            part.done()
        section.done()


def zone(section: Section, key: str) -> str | None:
    """The name of a time zone, or None."""
    section.expect(key, 'area and city in quotes, as in "Europe/London"')
    name = section.text(key)
    if name and name not in zone_names():
        remedy = did_you_mean(name, zone_names(), 'Write area and city, as in "Europe/London".')
        section.error(key, f"'{name}' is no time zone", remedy)
        return None
    return name or None


def _email(section: Section) -> str:
    section.expect("email", "e-mail address in quotes")
    text = section.text("email", most=254)
    if text and re.fullmatch(r"[^@\s]+@[^@\s]+\.[^@\s.]+", text) is None:
        section.error("email", f"'{text}' is no e-mail address", "Check the @ and what follows it.")
    return text


def _webhook(section: Section) -> str:
    section.expect("webhook", "web address in quotes, beginning with https://")
    text = section.text("webhook", most=500)
    if text and re.fullmatch(r"https?://[^\s/]+\S*", text) is None:
        section.error("webhook", f"'{text}' is no web address", "Write it whole, beginning with https://.")
    return text


def _language(section: Section, languages: Collection[str]) -> str:
    """The language somebody reads; '' where nothing says, which is the one behind all others."""
    return _one_of(section, "language", languages, "") if languages else section.text("language")


def _one_of(section: Section, key: str, known: Collection[str], default: str) -> str:
    section.expect(key, one_of(known), default)
    word = section.text(key)
    if word and word not in known:
        remedy = did_you_mean(word, known, f"Write one of: {', '.join(known)}.")
        section.error(key, f"'{word}' is not known here", remedy)
        return default
    return word or default


def _channels(section: Section) -> tuple[str, ...]:
    section.expect("channels", f"list of words, in the order to try; {one_of(CHANNELS)}")
    names = section.texts("channels")
    for i, name in enumerate(names):
        if name not in CHANNELS:
            remedy = did_you_mean(name, CHANNELS, f"Known: {', '.join(CHANNELS)}.")
            section.report.error((*section.at("channels"), i), f"there is no channel '{name}'", remedy)
    if len(set(names)) < len(names):
        section.error("channels", "a channel is named twice", "Name each one once, in the order to try.")
    for name in ("email", "webhook"):
        if name in names and not section.has(name):
            remedy = f"Add {name} = ... or take it out of channels."
            section.error("channels", f"the channel '{name}' has no address", remedy)
    return names


def _part(draft: Draft, section: Section, person: str) -> Part:
    kinds = ", ".join(k.value for k in PartKind)
    kind = section.choice("kind", PartKind, need=f"Say what this person is: {kinds}.")
    if kind is None:
        draft.astray.add(section.path)
    return Part(
        person=person,
        kind=kind or PartKind.SUPPORTER,
        runner=section.text("runner") or None,
        ladder=section.whole("ladder", 1, 20),
        calls_race_control=section.yes("calls_race_control"),
        can_telephone=section.yes("can_telephone"),
        point=section.text("point") or None,
        car=section.text("car") or None,
        drives=section.yes("drives"),
        awake_since=draft.moment(section, "awake_since"),
        pace_from=section.text("pace_from") or None,
        pace_to=section.text("pace_to") or None,
        sleeps=read_sleeps(draft, section),
        permits=section.texts("permits"),
    )


def read_cars(draft: Draft, top: Section) -> None:
    """Every [[cars]] and [[drives]]."""
    for section in top.tables("cars"):
        name = section.text("name")
        car_id = read_id(section, name)
        seats = section.whole("seats", 1, 60, 5)
        car = Car(
            car_id,
            name or car_id,
            5 if seats is None else seats,
            section.text("starts_at") or None,
            section.texts("permits"),
        )
        draft.cars.append(At(car, section.path))
        section.done()
    for section in top.tables("drives"):
        drive = Drive(
            from_place=section.text("from", need='Say where the drive begins: from = "start".'),
            to_place=section.text("to", need='Say where the drive ends: to = "mill".'),
            minutes=section.number("minutes", 0.5, 24 * 60),
            confirmed_by=section.text("confirmed_by") or None,
            note=section.text("note", most=WORDS_MAX),
            traffic=section.minutes("traffic_minutes", timedelta(0)),
            fuel_stop=section.minutes("fuel_minutes", timedelta(0)),
        )
        section.name_me(f"{drive.from_place}>{drive.to_place}" if drive.from_place and drive.to_place else "")
        draft.drives.append(At(drive, section.path))
        section.done()


def read_meetings(draft: Draft, top: Section) -> None:
    """Every [[meetings]] and [[if_then]]."""
    only = draft.runners[0].value.id if len(draft.runners) == 1 else ""
    for section in top.tables("meetings"):
        point = section.text("point", need='Say where: point = "mill".')
        runner = section.text("runner") or only
        if not runner and draft.runners:
            section.missing("runner", "There are several runners: say whom they meet.")
        meeting = MeetingPlan(
            id=read_id(section, f"{point}-{runner}"),
            point=point,
            runner=runner,
            crew=section.texts("crew"),
            car=section.text("car") or None,
            from_place=section.text("from") or None,
            kit=read_kit(section, "kit"),
            food=section.text("food", most=WORDS_MAX),
            if_missed=section.text("if_missed", most=WORDS_MAX),
            pacer_joins=section.text("pacer_joins") or None,
            pacer_leaves=section.text("pacer_leaves") or None,
        )
        draft.meetings.append(At(meeting, section.path))
        section.done()
    for section in top.tables("if_then"):
        trouble = section.text("trouble", need='Name the trouble: trouble = "hot spot on a foot".')
        card = IfThenCard(
            id=read_id(section, trouble),
            trouble=trouble,
            try_first=section.texts("try_first", WORDS_MAX),
            call=section.text("call", most=WORDS_MAX),
            red_flags=section.texts("red_flags", WORDS_MAX),
        )
        draft.cards.append(At(card, section.path))
        section.done()
