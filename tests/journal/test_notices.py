"""Notices: one a key, numbered, given to the first channel, answered; several servers at once."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from server.event.model import Event
from server.facts.entry import Entry, Fix
from server.facts.state import LastKnown
from server.forecast.outlook import Whereabouts, Window
from server.journal import DeliveryState, Journal, JournalHead, MadeKnown, Outcome, UnknownError, VerdictBasis
from server.journal.codec import dump_notice, load_notice
from server.watch.notice import (
    AlarmNewsValues,
    AlarmValues,
    BeforeDarkValues,
    BriefValues,
    CallBackValues,
    CorrectionValues,
    CutOffValues,
    DoubtValues,
    Ear,
    Heard,
    InHandValues,
    LateHomeValues,
    LateValues,
    LookBackValues,
    MeanwhileValues,
    MeetingValues,
    NewVersionValues,
    Notice,
    NoticeKind,
    Out,
    OutageValues,
    PassedOnValues,
    PastCutOffValues,
    RaceChangeValues,
    ReminderValues,
    RetiredValues,
    Said,
    SightingValues,
    StandDownValues,
    StandIn,
    StandsValues,
    StayValues,
    SwapValues,
    TrackerSays,
    UncoveredValues,
    UnnamedHelpValues,
    UnreachedValues,
    Urgency,
    Values,
    WordValues,
)
from server.watch.notice import TestAlarmValues as RehearsalValues

MINUTE = timedelta(minutes=1)
Make = Callable[..., Notice]


def every_kind_of_values(at: datetime) -> list[Values]:
    """One of each, with nested values where they have any."""
    window = Window("mill", at, at + MINUTE, at + 2 * MINUTE)
    known = LastKnown("e-1", "in", "mill", 21.3, Fix(54.1, -2.2), at, "ana", at)
    meeting = MeetingValues(
        "m", "mill", window, at, at, at, 35 * MINUTE, ("poles",), "soup", "drive on", True
    )
    alarm = AlarmValues(
        "a1", "overdue", "mill", known, window, Whereabouts(1.0, 2.0, 3.0), (54.1, -2.2), ("ana",), ("tomas",),
        "tomas", None, 1, "words", raised_at=at,
    )  # fmt: skip
    return [
        meeting,
        SightingValues("mill", at, "ana", next_window=window),
        CutOffValues("mill", "out", at, 0.4, 0.5, True),
        LateValues("mill", window, known),
        LateHomeValues("mill", window, known, tracker=TrackerSays(31.2, at, True, "mill", at, "ana")),
        StandsValues(at, at, 31.2, (54.1, -2.2), "mill"),
        StayValues("mill", ("ana",), ("jonas",), at, known, next_point="finish"),
        alarm,
        RetiredValues("own choice", None, at, "ana", pick_up_by=("jonas",)),
        RaceChangeValues("start delayed", None, None, 30 * MINUTE, "", "ana"),
        StandDownValues("a1", "overdue", "seen", "ana", at),
        CorrectionValues("in", "mill", at, None, True, "ana"),
        DoubtValues("e-1", "in", "mill", at, "ana", "can't be right"),
        InHandValues(at, "ana", "chapel", 45.0, "in our tent"),
        WordValues("e-1", "feet bad", at, "ana", "resting", since=at, next_window=window),
        BriefValues((meeting, meeting), "chapel"),
        BeforeDarkValues("mill", ("torch",), at, window, ("ana",), "chapel", window, ("jonas",)),
        UnreachedValues("jonas", "overdue", ("telegram",), at),
        OutageValues("telegram", at, None),
        UnnamedHelpValues("e-1", "ana", "help", at, ("ines",), "mill", "ines", "named", "maren", "ana"),
        RehearsalValues(at),
        CallBackValues("a1", "held", at, "ana", ("ines",), "ines", Heard(at, "ines", "on my way"), minutes=5),
        MeanwhileValues("a1", "e-1", "how she is", at, "ana", "cold", fix=Fix(54.1, -2.2), own_place=True),
        AlarmNewsValues("a1", "overdue", at, "ana", "ines", at_point="mill"),
        PastCutOffValues("mill", "out", at, "in after it", at, "ana", "mill", ("ines",), leave_by=at),
        NewVersionValues(3, ()),
        PassedOnValues("e-1", "ana", "bring socks", at, "m", "mill", taken_back=True),
        LookBackValues(at),
        SwapValues("e-1", "ana", "jonas", "m", "mill", "you go", window, at, refused=True),
        ReminderValues("e-1", "fill the bottles", at),
        UncoveredValues(
            "m", "mill", Ear.STAND_IN, (Out("jonas", "car broken", "jonas"),), window, meeting_now=meeting,
            stand_ins=(StandIn("ana", at, at, 35 * MINUTE, True, "inn", 0.8, ("m2",)),), also=(("chapel", window),),
        ),
    ]  # fmt: skip


def test_there_and_back(notice: Make, start: datetime) -> None:
    """A notice with each kind of values comes back equal, values of the same type; none is missing here."""
    values = every_kind_of_values(start)
    assert {type(v) for v in values} == set(Values.__args__)
    for v in values:
        full = notice(values=v, facts=("e-1",), buttons=("on it",), use_by=start, needs_answer=True)
        full = replace(full, occasion="x", delayed=True, hold_until=start + MINUTE)
        assert load_notice(dump_notice(full)) == full


async def test_one_a_key(loaded: Journal, notice: Make, start: datetime) -> None:
    """A key counts once, the first stays; numbers follow the order given."""
    first = await loaded.add_notices([notice(), notice("tomas"), notice()], start)
    assert [(m.notice.key.person, m.short) for m in first] == [("ana", 1), ("tomas", 2)]
    again = await loaded.add_notices([notice(urgency=Urgency.ALARM), notice(episode=2)], start + MINUTE)
    assert [(m.notice.key.episode, m.short) for m in again] == [(2, 3)]
    made = await loaded.made("long-stile")
    assert [m.short for m in made] == [1, 2, 3]
    assert made[0].notice == notice()
    assert await loaded.made("long-stile", "someone else") == ()
    assert len(await loaded.deliveries("long-stile")) == 3


async def test_who_has_no_channel_is_failed_at_once(loaded: Journal, notice: Make, start: datetime) -> None:
    """Somebody who cannot be reached is said to be so, and the others are not held up."""
    made = await loaded.add_notices([notice("jonas"), notice("ana"), notice("nobody")], start)
    assert [(m.notice.key.person, m.failed) for m in made] == [
        ("jonas", True),
        ("ana", False),
        ("nobody", True),
    ]


async def test_channels_of_the_installation(
    database_url: str, event: Event, notice: Make, start: datetime
) -> None:
    """A channel that this installation cannot send over is never chosen, nor silently waited for."""
    journal = await Journal.open(database_url, channels=["email"])
    await journal.store_event("t", {}, event, "ana", start)
    await journal.bind("ana", "telegram", "111", start)
    await journal.bind("tomas", "telegram", "333", start)
    made = await journal.add_notices([notice("ana"), notice("tomas")], start)
    assert [m.failed for m in made] == [False, True]
    assert [d.channel for d in await journal.deliveries("long-stile")] == ["email"]
    await journal.close()


async def test_answered(loaded: Journal, notice: Make, entry: Callable[..., Entry], start: datetime) -> None:
    """The first answer counts as reached, later ones are kept; what was still to be sent is not; the entry
    that goes with the answer is there too."""
    await loaded.add_notices([notice(needs_answer=True)], start)
    answered = await loaded.answer("long-stile", 1, "ana", "on it", start + MINUTE, entry())
    assert (answered.first, answered.made.answer, answered.made.answered_at) == (
        True,
        "on it",
        start + MINUTE,
    )
    later = await loaded.answer("long-stile", 1, "tomas", "me too", start + 2 * MINUTE)
    assert (later.first, later.made.answer) == (False, "on it")
    third = await loaded.answer("long-stile", 1, "ana", "cannot", start + 3 * MINUTE)
    assert (third.first, third.made.answer, third.made.answered_at) == (False, "cannot", start + MINUTE)
    said = (Said(start + MINUTE, "on it"), Said(start + 3 * MINUTE, "cannot"))
    (made,) = await loaded.made("long-stile")
    assert made.answers == said == third.made.answers, "what they say now counts, what they said is kept"
    assert await loaded.claim(["telegram"], start + 2 * MINUTE) == []
    assert len(await loaded.entries("long-stile")) == 1
    with pytest.raises(UnknownError, match="no notice 99"):
        await loaded.answer("long-stile", 99, "ana", "x", start, entry("k2"))
    assert len(await loaded.entries("long-stile")) == 1, "the refused answer must leave no entry"


async def test_overtaken(loaded: Journal, notice: Make, start: datetime) -> None:
    """An overtaken notice is not sent any more, also when its last outcome was unknown."""
    await loaded.add_notices([notice(), notice("tomas")], start)
    [a, _] = await loaded.claim(["telegram"], start)
    assert await loaded.overtake("long-stile", [1, 2], start) == 0, "both are just being sent"
    await loaded.report(a.id, Outcome.UNKNOWN, start, tries=1)
    assert await loaded.claim(["telegram"], start + timedelta(hours=1)) == []
    states = {d.state for d in await loaded.deliveries("long-stile")}
    assert states == {DeliveryState.OVERTAKEN}


async def test_two_servers_judge_at_once(
    make_database: Callable[[], str], event: Event, notice: Make, start: datetime
) -> None:
    """Two servers judge the same runner ten times each at once, none waiting for another: a verdict that another has
    overtaken is not kept, so that the episodes count up without a hole or a double."""
    url = make_database()
    servers = [await Journal.open(url), await Journal.open(url)]
    await servers[0].store_event("t", {}, event, "ana", start)
    overtaken = 0

    async def judge(journal: Journal) -> None:
        nonlocal overtaken
        while True:
            made = await journal.made("long-stile")
            seen = VerdictBasis("long-stile", "maren", 0, max((m.short for m in made), default=0))
            await asyncio.sleep(0.002)
            if (kept := await journal.add_judged([notice(episode=len(made) + 1)], start, seen)) is not None:
                assert len(kept) == 1
                return
            overtaken += 1

    await asyncio.gather(*(judge(servers[i % 2]) for i in range(20)))
    made = await servers[0].made("long-stile")
    assert [m.notice.key.episode for m in made] == list(range(1, 21))
    assert overtaken
    for journal in servers:
        await journal.close()


async def test_a_verdict_is_overtaken_by_what_is_about_its_runner(
    loaded: Journal, entry: Callable[..., Entry], notice: Make, start: datetime
) -> None:
    """A fact about her or about the race, or a notice about her, has come in since: nothing is kept but `anyhow`. What is
    about another runner overtakes nothing."""
    nothing = VerdictBasis("long-stile", "maren", 0, 0)
    await loaded.append(entry("other", runner="lena"))
    assert await loaded.add_judged([notice(episode=1)], start, nothing)
    assert await loaded.add_judged([notice(episode=2)], start, nothing) is None
    told = VerdictBasis("long-stile", "maren", 1, 1)
    for number, runner in enumerate(("maren", None), 2):
        await loaded.append(entry(f"k{number}", runner=runner))
        assert await loaded.add_judged([notice(episode=2)], start, told) is None
        assert await loaded.add_judged([], start, told) == ()
        told = VerdictBasis("long-stile", "maren", number, 1)
    assert [m.short for m in await loaded.made("long-stile")] == [1]
    assert await loaded.add_judged([notice(episode=2)], start, nothing, anyhow=True)
    assert await loaded.add_judged([notice(episode=2)], start, nothing, anyhow=True) == ()
    assert [m.short for m in await loaded.made("long-stile")] == [1, 2]


async def test_without_a_lock_still_once(loaded: Journal, notice: Make, start: datetime) -> None:
    """The same notice owed by many at once is made once, with one delivery."""
    results = await asyncio.gather(
        *(loaded.add_notices([notice(), notice("tomas")], start) for _ in range(8))
    )
    assert sum(len(r) for r in results) == 2
    assert len(await loaded.deliveries("long-stile")) == 2


async def test_open_alarm(loaded: Journal, notice: Make, start: datetime) -> None:
    """Somebody who joins during an open alarm is told of it, even late; after stand-down no more."""
    alarm = next(v for v in every_kind_of_values(start) if isinstance(v, AlarmValues))
    over = next(v for v in every_kind_of_values(start) if isinstance(v, StandDownValues))
    raised = notice("jonas", kind=NoticeKind.OVERDUE, urgency=Urgency.ALARM, values=alarm)
    await loaded.add_notices([raised], start)
    await loaded.bind("jonas", "telegram", "222", start + 99 * MINUTE)
    [told] = await loaded.claim(["telegram"], start + 99 * MINUTE)
    assert told.address == "222"
    await loaded.report(told.id, Outcome.BLOCKED, start + 99 * MINUTE)
    await loaded.add_notices([notice("ana", kind=NoticeKind.STAND_DOWN, values=over)], start + 100 * MINUTE)
    await loaded.heard_from("telegram", "222", start + 101 * MINUTE)
    assert [d.address for d in await loaded.claim(["telegram"], start + 101 * MINUTE)] == ["111"]


async def test_reading_on_is_as_reading_anew(loaded: Journal, notice: Make, start: datetime) -> None:
    """Whatever becomes of a notice: made, sent, failed, given a channel after all, answered, answered again, blanked. Those
    of which nothing has become stay the very same values."""
    event = "long-stile"

    async def look(known: MadeKnown | None) -> MadeKnown:
        return (await loaded.pulse(event, JournalHead(0, 0), known, start, start)).made

    known = await look(None)

    async def read_on() -> list[int]:
        """Read on, compare, and return the numbers of those that are new values."""
        nonlocal known
        before, known = known, await look(known)
        assert known.made == await loaded.made(event)
        return [m.short for m in known.made if not any(m is b for b in before.made)]

    assert await read_on() == []
    for_an_hour = notice("jonas", use_by=start + 60 * MINUTE)
    await loaded.add_notices([notice(), notice("tomas"), for_an_hour], start)
    assert await read_on() == [1, 2, 3]
    assert await read_on() == []
    [hers] = [d for d in await loaded.claim(["telegram"], start) if d.notice.key.person == "ana"]
    await loaded.report(hers.id, Outcome.SENT, start)
    assert await read_on() == [1]
    await loaded.bind("jonas", "telegram", "222", start)
    assert await read_on() == [3]
    await loaded.add_notices([notice("maren")], start)
    assert await read_on() == [4]
    for words in ("seen", "seen, and more"):
        await loaded.answer(event, 2, "tomas", words, start)
        assert await read_on() == [2]
    await loaded.blank_person("ana", start)
    await read_on()
