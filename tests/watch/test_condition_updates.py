"""How she is, as somebody wrote it: who reads it, who knows already, once, and what becomes of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from server.event.model import NoticeChoice, PartKind
from server.facts.entry import Kind, Retired, Source
from server.watch.evaluate import evaluate
from server.watch.notice import NoticeKind, Urgency, WordValues

K = NoticeKind
LENA = {"by": "lena", "source": Source.VOLUNTEER}
HERSELF = {"by": "maren", "source": Source.RUNNER}
ROUGH = "looks rough, feet bad, hasn't eaten since the mill"


def told(owed: list[Any], kind: NoticeKind = K.WORD_OF_HER) -> list[str]:
    """Who is owed that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind)


def values(owed: list[Any]) -> WordValues:
    """What the first of them is worded from."""
    found = next(n.values for n in owed if n.key.kind is K.WORD_OF_HER)
    assert isinstance(found, WordValues)
    return found


IN_MILL = ("in", "mill", "16:40")
IN_CHAPEL, OUT_CHAPEL = ("in", "chapel", "19:20"), ("out", "chapel", "19:25")
IN_MOSS, OUT_MOSS = ("in", "moss", "22:00"), ("out", "moss", "22:05")
ANA, JONAS, VERA, TOMAS = ({"by": p} for p in ("ana", "jonas", "vera", "tomas"))


@pytest.mark.parametrize(
    ("seen", "said_by", "at", "who"),
    [
        pytest.param((), HERSELF, "15:30", ["ana", "jonas"], id="herself"),
        pytest.param((), ANA, "15:30", [], id="one of the next crew, the other is in the car"),
        pytest.param((), VERA, "15:30", ["ana", "jonas"], id="another crew, by telephone"),
        pytest.param((IN_CHAPEL,), ANA, "19:22", ["tomas", "vera"], id="crew she is with"),
        pytest.param((IN_CHAPEL, OUT_CHAPEL), JONAS, "19:40", ["tomas", "vera"], id="crew she has left"),
        pytest.param((IN_MILL,), ANA, "16:42", [], id="crew she is with, the next too"),
        pytest.param((IN_MILL,), HERSELF, "16:42", [], id="herself, with crew who are the next too"),
        pytest.param(
            (IN_MILL, ("out", "mill", "16:45")), HERSELF, "16:50", ["ana", "jonas"], id="herself, just gone"
        ),
        pytest.param(
            (IN_MOSS, OUT_MOSS),
            LENA,
            "22:06",
            ["ana", "jonas", "tomas"],
            id="a volunteer; a pacer is with her",
        ),
        pytest.param((IN_MOSS, OUT_MOSS), TOMAS, "22:30", ["ana", "jonas"], id="her pacer"),
        pytest.param((IN_MOSS,), VERA, "22:02", ["ana", "jonas"], id="a pacer who stands with them"),
        pytest.param(
            (("in", "ridge", "24:50"),), LENA, "24:50", ["ana", "jonas", "tomas"], id="a point without crew"
        ),
    ],
)
def test_who_reads_how_she_is(
    night: Any, seen: tuple[tuple[str, str, str], ...], said_by: Any, at: str, who: list[str]
) -> None:
    """The crew she comes to next, her pacer; never who wrote it nor those who saw her beside them."""
    for kind, point, when in seen:
        night.report(Kind(kind), when, point=point, **LENA)
        night.tick(when)
    night.report(Kind.HOW_SHE_IS, at, words=ROUGH, **said_by)
    hours, minutes = map(int, at.split(":"))
    made = [n for _, n in night.run(at, f"{hours + 3}:{minutes}", lazily=True)]
    assert told([n for n in made if n.urgency is not Urgency.ALARM]) == who


def test_crew_who_are_told_all_soon_read_it_with_the_rest(night: Any) -> None:
    """Nothing they can use before they go: her words come in the minute of 'get ready', and not alone before it."""
    for kind, when in ((Kind.IN, "16:40"), (Kind.OUT, "16:45")):
        night.report(kind, when, point="mill", **LENA)
        night.tick(when)
    night.report(Kind.HOW_SHE_IS, "16:50", words=ROUGH, **HERSELF)
    made = night.run("16:50", "19:50", lazily=True)
    when = {kind: [t for t, n in made if n.key.kind is kind] for kind in (K.WORD_OF_HER, K.LEAVE_SOON)}
    assert len(when[K.LEAVE_SOON]) == 2
    assert when[K.WORD_OF_HER] == when[K.LEAVE_SOON]


def test_what_is_told(night: Any) -> None:
    """The words as written, of when, by whom, and her window where they meet her; as news that may be joined."""
    entry = night.report(Kind.HOW_SHE_IS, "15:30", words=ROUGH, **HERSELF)
    owed = night.tick("15:30")
    v = values(owed)
    assert (v.words, v.told_by, v.going, v.since) == (ROUGH, "maren", "moving", None)
    assert v.next_window is not None
    assert v.next_window.point == "mill"
    notice = next(n for n in owed if n.key.kind is K.WORD_OF_HER)
    assert notice.urgency is Urgency.NEWS
    assert notice.facts == (entry,)
    assert notice.hold_until is not None
    assert not notice.needs_answer
    assert told(night.tick("15:31")) == []


def test_a_rest_told_with_words_is_a_word_of_her(night: Any, at: Any) -> None:
    """'Sitting on a wall, feel sick' says that she rests, and until when; a bare rest says nothing more."""
    night.report(Kind.RESTING, "15:20", **HERSELF)
    assert told(night.tick("15:20")) == []
    night.report(
        Kind.RESTING, "15:30", words="sitting on a wall feel sick", amount=timedelta(minutes=20), **HERSELF
    )
    owed = night.tick("15:30")
    assert told(owed) == ["ana", "jonas"]
    v = values(owed)
    assert (v.going, v.since, v.until) == ("resting", at("15:20"), at("15:50"))


def test_what_came_late_says_how_she_goes_on_now(night: Any, at: Any) -> None:
    """A rest that is over when the word of it is told: since when she moves again."""
    night.report(Kind.RESTING, "15:30", words="feel sick", received=at("15:50"), **HERSELF)
    night.report(Kind.MOVING_AGAIN, "15:45", **HERSELF)
    v = values(night.tick("15:50"))
    assert (v.going, v.since) == ("moving", at("15:45"))


def test_what_came_late_is_no_time_of_arrival_of_the_rest_before(night: Any, at: Any) -> None:
    """A word of before her rest, told once she is in farther on: she is there since she came, not since she rested."""
    night.report(Kind.OUT, "16:45", point="mill", **LENA)
    night.report(Kind.HOW_SHE_IS, "17:30", words="feel sick", received=at("19:25"), **HERSELF)
    night.report(Kind.RESTING, "17:40", received=at("19:24"), **HERSELF)
    night.report(Kind.MOVING_AGAIN, "18:00", received=at("19:24"), **HERSELF)
    night.report(Kind.IN, "19:20", point="chapel", **LENA)
    v = values(night.tick("19:25"))
    assert (v.point, v.since) == ("chapel", at("19:20"))


def test_a_rest_at_a_point_nobody_reported_her_in_at(night: Any) -> None:
    """The crew bound for that point are next, unless it is they who say so."""
    night.report(Kind.OUT, "16:45", point="mill", **LENA)
    night.report(Kind.CREW_THERE, "19:00", "ana", runner=None, point="chapel")
    night.report(Kind.RESTING, "19:20", words="lying down at Chapel", point="chapel", **LENA)
    assert told(night.tick("19:20")) == ["ana", "jonas"]
    night.report(Kind.RESTING, "19:22", "ana", words="we sit with her at Chapel", point="chapel")
    assert told(night.tick("19:22")) == ["tomas", "vera"]


def test_an_arrival_that_comes_late_finds_the_next_crew(night: Any, at: Any) -> None:
    """Ana writes how she is before she is reported in: once that is known, the crew after are told."""
    night.report(Kind.OUT, "16:45", point="mill", **LENA)
    night.report(Kind.CREW_THERE, "19:00", "ana", runner=None, point="chapel")
    night.report(Kind.HOW_SHE_IS, "19:22", "ana", words=ROUGH)
    assert told(night.tick("19:22")) == []
    night.report(Kind.IN, "19:20", point="chapel", received=at("19:30"), **LENA)
    assert told(night.tick("19:30")) == ["tomas", "vera"]


def test_once_she_is_in_they_see_for_themselves(night: Any) -> None:
    """Asleep until she was there: nothing is told of before."""
    sleep(night, "ana", "jonas", until="17:30")
    night.report(Kind.HOW_SHE_IS, "15:30", words=ROUGH, **HERSELF)
    assert told(night.tick("15:30")) == []
    night.report(Kind.IN, "16:40", point="mill", **LENA)
    night.tick("16:40")
    assert told(night.tick("17:30")) == []


def sleep(night: Any, *people: str, until: str) -> None:
    """Quiet hours from the start on (UTC, an hour behind the clocks there)."""
    night.event = replace(
        night.event,
        people=tuple(
            replace(p, quiet_from="14:00", quiet_to=until, time_zone="UTC") if p.id in people else p
            for p in night.event.people
        ),
    )


@pytest.mark.parametrize(("wakes", "who"), [("25:29", ["vera"]), ("25:31", [])])
def test_quiet_hours_hold_it_and_do_not_lose_it(night: Any, wakes: str, who: list[str]) -> None:
    """Vera sleeps: it waits for her morning, and is told late for as long as it says something of how she is."""
    sleep(night, "vera", until=f"01:{wakes[-2:]}")
    night.report(Kind.OUT, "19:25", point="chapel", **LENA)
    night.report(Kind.HOW_SHE_IS, "19:30", words=ROUGH, **HERSELF)
    assert told(night.tick("19:30")) == ["tomas"]
    owed = [n for n in night.tick(wakes) if n.key.kind is K.WORD_OF_HER and n.key.person == "vera"]
    assert [n.key.person for n in owed] == who
    assert all(n.delayed for n in owed)


@pytest.mark.parametrize(
    ("choice", "who"),
    [(NoticeChoice.ALL, ["ana", "jonas"]), (NoticeChoice.MINE, ["ana", "jonas"]), (NoticeChoice.ALARMS, [])],
)
def test_it_obeys_choices_as_news_of_ones_own_meeting(
    night: Any, choice: NoticeChoice, who: list[str]
) -> None:
    """Who wants alarms only hears none of it; who wants their own meetings does."""
    night.event = replace(night.event, people=tuple(replace(p, notices=choice) for p in night.event.people))
    night.report(Kind.HOW_SHE_IS, "15:30", words=ROUGH, **HERSELF)
    assert told(night.tick("15:30")) == who


def test_a_guess_is_told_once_it_is_confirmed(night: Any) -> None:
    """Unconfirmed words reach nobody; confirmed, they do, once."""
    night.report(
        Kind.HOW_SHE_IS, "15:30", words=ROUGH, id="guess", unconfirmed=True, doubt="guessed", **HERSELF
    )
    assert told(night.tick("15:30")) == []
    night.report(Kind.CONFIRMED, "15:40", about="guess", **HERSELF)
    assert told(night.tick("15:40")) == ["ana", "jonas"]
    assert told(night.tick("15:41")) == []


def test_taken_back_is_told_to_those_who_read_it(night: Any) -> None:
    """They read that it counts no longer, once; nobody else does; put right again, they read it again."""
    entry = night.report(Kind.HOW_SHE_IS, "15:30", words=ROUGH, **HERSELF)
    night.tick("15:30")
    back = night.report(Kind.TAKEN_BACK, "15:35", about=entry, **HERSELF)
    owed = night.tick("15:35")
    assert told(owed, K.CORRECTION) == ["ana", "jonas"]
    assert {n.values.words for n in owed if n.key.kind is K.CORRECTION} == {ROUGH}
    assert night.tick("15:36") == []
    night.report(Kind.TAKEN_BACK, "15:40", about=back, **HERSELF)
    assert told(night.tick("15:40")) == ["ana", "jonas"]
    assert night.tick("15:41") == []


def test_other_words_in_its_place_are_told_alone(night: Any) -> None:
    """A message written over: the new words, and no word that the old ones count no longer."""
    entry = night.report(Kind.HOW_SHE_IS, "15:30", words="feet bad", **HERSELF)
    night.tick("15:30")
    night.report(Kind.HOW_SHE_IS, "15:30", words="feet good", replaces=entry, id="new", **HERSELF)
    owed = night.tick("15:32")
    assert (told(owed), told(owed, K.CORRECTION)) == (["ana", "jonas"], [])
    assert values(owed).words == "feet good"


def test_while_an_alarm_is_open_those_who_look_for_her_read_it_too(night: Any) -> None:
    """At once, asleep or not, as words on the call and not as news of her; after it as before, none of them twice."""
    sleep(night, "sasha", until="13:59")
    night.event = replace(
        night.event,
        people=tuple(
            replace(p, notices=NoticeChoice.ALARMS) if p.id == "sasha" else p for p in night.event.people
        ),
    )
    night.report(Kind.HOW_SHE_IS, "15:20", words="fine", **HERSELF)
    night.report(Kind.HOW_SHE_IS, "15:30", words=ROUGH, **HERSELF)
    assert told(night.tick("15:30")) == ["ana", "ana", "jonas", "jonas"]
    night.report(Kind.ASKED_FOR_HELP, "15:40", **HERSELF)
    known = [n for n in night.tick("15:40") if n.key.kind is K.ALARM_KNOWN]
    assert [(n.key.person, n.values.heard_since[-1].words) for n in known] == [("sasha", ROUGH)]
    night.answer(K.ASKED_FOR_HELP, "vera", "i have it", "15:42")
    assert told(night.tick("15:42")) == []
    night.report(Kind.HOW_SHE_IS, "15:50", words="lies by the wall, talks", **LENA)
    owed = night.tick("15:50")
    assert told(owed) == []
    on_it = [n for n in owed if n.key.kind is K.MEANWHILE]
    assert sorted(n.key.person for n in on_it) == ["ana", "jonas", "olga", "sasha", "vera"]
    assert {n.urgency for n in on_it} == {Urgency.ALARM}
    night.report(Kind.STAND_DOWN, "16:00", "olga")
    assert told(night.tick("16:00")) == []
    night.report(Kind.HOW_SHE_IS, "16:05", words="up again", **HERSELF)
    assert told(night.tick("16:05")) == ["ana", "jonas"]


def test_once_she_has_retired_those_who_fetch_her_read_it(night: Any) -> None:
    """Cold and sick at the mill: the drivers who may fetch her know before they are there; then it is over."""
    night.report(Kind.RETIRED, "16:00", how=Retired.OWN_CHOICE, **LENA)
    night.tick("16:00")
    night.report(Kind.HOW_SHE_IS, "16:10", words="shivering", **LENA)
    owed = night.tick("16:10")
    assert told(owed) == ["ana", "vera"]
    assert values(owed).going == "retired"
    night.report(Kind.IN_HAND, "16:30", "ana")
    night.tick("16:30")
    night.report(Kind.HOW_SHE_IS, "16:40", words="warm again", **LENA)
    assert told(night.tick("16:40")) == []


def test_a_meeting_that_cannot_be_made_sees_nothing_of_her(night: Any) -> None:
    """Chapel is closed to crew: those at the meeting after are next."""
    night.report(Kind.OUT, "16:45", point="mill", **LENA)
    night.report(Kind.ACCESS_CLOSED, "16:46", "olga", runner=None, point="chapel")
    night.tick("16:46")
    night.report(Kind.HOW_SHE_IS, "17:00", words=ROUGH, **HERSELF)
    assert told(night.tick("17:00")) == ["tomas", "vera"]


said = st.lists(
    st.tuples(
        st.sampled_from(["how", "rest", "in", "out", "back", "help", "answer", "retired", "in hand"]),
        st.sampled_from(["mill", "chapel", "moss", "ridge"]),
        st.sampled_from(["ana", "vera", "tomas", "maren", "lena"]),
        st.integers(1, 50),
    ),
    max_size=10,
)


@settings(
    max_examples=25,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(said)
def test_no_word_is_owed_twice_nor_to_who_wrote_it(
    new_night: Any, at: Any, plan: list[tuple[str, str, str, int]]
) -> None:
    """In any night: evaluated twice nothing is owed twice, each word goes once to a person, never to its writer."""
    night, now = new_night(), at("15:05")
    kinds = {
        "how": Kind.HOW_SHE_IS,
        "rest": Kind.RESTING,
        "in": Kind.IN,
        "out": Kind.OUT,
        "in hand": Kind.IN_HAND,
    }
    for number, (what, point, who, minutes) in enumerate(plan):
        now += timedelta(minutes=minutes)
        more: dict[str, Any] = {"source": Source.RUNNER if who == "maren" else Source.VOLUNTEER}
        if what in ("how", "rest"):
            more |= {"words": f"words {number}"}
        if what in ("in", "out", "rest"):
            more |= {"point": point}
        if what == "back" and night.entries:
            night.report(Kind.TAKEN_BACK, now, who, about=night.entries[-1].id)
        elif what == "help":
            night.report(Kind.ASKED_FOR_HELP, now, who, **more)
        elif what == "retired":
            night.report(Kind.RETIRED, now, who, how=Retired.OWN_CHOICE, **more)
        elif what == "answer":
            waiting = [m for m in night.made if m.notice.needs_answer and m.answered_at is None]
            if waiting:
                night.answer(waiting[-1].notice.key.kind, waiting[-1].notice.key.person, "i have it", now)
        elif what in kinds:
            night.report(kinds[what], now, who, **more)
        night.tick(now)
        assert evaluate(night.situation(now), now).owed == ()
    seen = [(m.notice.key.person, m.notice.occasion) for m in night.got(K.WORD_OF_HER)]
    assert len(seen) == len(set(seen))
    assert all(m.notice.key.person != m.notice.values.told_by for m in night.got(K.WORD_OF_HER))


def test_supporters_and_volunteers_are_told_none_of_it(night: Any) -> None:
    """How she is concerns those who care for her, and nobody else."""
    night.report(Kind.HOW_SHE_IS, "15:30", words=ROUGH, **HERSELF)
    night.report(Kind.ASKED_FOR_HELP, "15:40", **HERSELF)
    night.tick("15:40")
    strangers = {p.person for p in night.event.parts if p.kind in (PartKind.SUPPORTER, PartKind.VOLUNTEER)}
    assert not strangers & {m.notice.key.person for m in night.got(K.WORD_OF_HER)}
