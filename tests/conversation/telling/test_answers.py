"""Every answer in words, over typed values: sound for every reader, first line first, never surer than the forecast."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from server.conversation.telling import answers, plan_answers, replies, things
from server.conversation.telling.answer import (
    AnsweredAnswer,
    CardsAnswer,
    ChangeAt,
    CutOffAnswer,
    CutOffsAnswer,
    EarlierOut,
    FactsAnswer,
    ForecastAnswer,
    Freshness,
    JoinAnswer,
    KitAnswer,
    LastFact,
    LightAt,
    MeetingAnswer,
    MissedAnswer,
    NextAnswer,
    NotedAnswer,
    PeopleAnswer,
    PersonThere,
    PlanAnswer,
    PlanRow,
    PointAnswer,
    StageAnswer,
    StopFact,
    TorchPart,
    WrittenOfHer,
)
from server.conversation.telling.cards import built_in_cards, red_flag_line
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.event.model import Contact, FuelPlan, IfThenCard, KitItem, KitWeight, Part, PartKind
from server.facts.entry import Kind
from server.forecast.outlook import Whereabouts, Window
from server.plan.notes import note, saying
from server.watch.notice import MeetingValues

NOW = datetime.fromisoformat("2027-06-19T14:10+00:00")
UNDO = timedelta(minutes=10)


def in_minutes(minutes: int) -> datetime:
    """That many minutes from now."""
    return NOW + timedelta(minutes=minutes)


LAST = LastFact("out", in_minutes(-65), "Ana", "mill", "Skelter Mill", 21.0)
FRESH = Freshness(LAST, sharpened_by="Moor Cross")
WINDOW = Window("gate", in_minutes(62), in_minutes(93), in_minutes(158))
POINTS = (
    PointAnswer(
        "mill", "Skelter Mill", 21.0, planned_in=in_minutes(-80), arrived=in_minutes(-75), left=in_minutes(-65)
    ),
    PointAnswer("gate", "Brindle Gate", 45.0, WINDOW, 0.93, in_minutes(60), in_minutes(70), dark=False),
    PointAnswer(
        "finish", "Low Barn", 60.0, Window("finish", in_minutes(200), in_minutes(300), in_minutes(420)), 0.71,
        in_minutes(240), dark=True, finish=True,
    ),
)  # fmt: skip
FORECAST = ForecastAnswer(
    "maren",
    "Maren",
    POINTS,
    FRESH,
    Whereabouts(30.2, 33.9, 37.4),
    (54.9, -2.6),
    ("Moor Cross", "Brindle Gate"),
)
OVER = replace(
    FORECAST, fresh=replace(FRESH, going="finished"), points=(replace(POINTS[2], window=None, arrived=NOW),)
)
DOUBTFUL = replace(
    FORECAST,
    fresh=Freshness(None, "before the start", 2, "", in_minutes(20), True, in_minutes(-10), ("telegram",)),
    where=None,
    where_between=None,
)
VALUES = MeetingValues(
    "m", "gate", WINDOW, in_minutes(20), in_minutes(60), in_minutes(170), timedelta(minutes=32), ("poles",), "soup",
    "drive on", True, drive_confirmed=True, drive_from="mill",
)  # fmt: skip
MEETING = MeetingAnswer(
    VALUES, "Brindle Gate", "Maren", ("Ana", "Jonas"), "blue van", "the yard", timedelta(minutes=5), NOW,
    in_minutes(400), True, True, "Skelter Mill",
)  # fmt: skip
NEXT = NextAnswer("maren", "Maren", (MEETING, replace(MEETING, name="Low Barn")), FRESH)
UNSURE = replace(
    MEETING,
    values=replace(VALUES, leave_by=None, drive=None),
    drive_confirmed=False,
    opens=None,
    closes=None,
    car="",
)
ENDED = replace(FRESH, ended_at=in_minutes(-20))
KIT = KitAnswer(
    "maren", "Maren", "gate", "Brindle Gate",
    (KitItem("head torch", KitWeight.SAFETY, "van"), KitItem("poles"), KitItem("wet socks", take_back=True)),
    "soup", FuelPlan("gate", "a bar each half hour", 240, 45, 500, 400), WINDOW, True, (("head torch", "blue van"),),
)  # fmt: skip
MISSED = MissedAnswer(
    "maren", "Maren", "gate", "Brindle Gate", 0.2, "wait", FRESH, in_minutes(40), WINDOW, next_name="Low Barn",
    next_leave_by=in_minutes(90), if_missed="drive on",
)  # fmt: skip
CUT_OFFS = CutOffsAnswer(
    "maren", "Maren",
    (
        CutOffAnswer("gate", "Brindle Gate", "out", in_minutes(200), 0.8, "Moor Cross", in_minutes(40), WINDOW,
                     (EarlierOut("moor", "Moor Cross", in_minutes(41)), EarlierOut("lathe", "Wether Lathe", in_minutes(9)),
                      EarlierOut("mill", "Skelter Mill", None))),
        CutOffAnswer("finish", "Low Barn", "in", in_minutes(600), 0.5),
    ),
    FRESH,
)  # fmt: skip
STAGE = StageAnswer(
    "camp", "Camp", in_minutes(900), in_minutes(900), 0.93, False,
    Window("camp", in_minutes(200), in_minutes(300), in_minutes(420)),
)  # fmt: skip
LOW_STAGE = replace(STAGE, starts_at=in_minutes(430), by=in_minutes(400), odds=0.6, low=True)
FACTS = FactsAnswer(
    "maren", "Maren",
    (
        StopFact("start", "Start", None, in_minutes(-500), False),
        StopFact("mill", "Skelter Mill", in_minutes(-75), in_minutes(-65), False, timedelta(minutes=5)),
    ),
    FRESH, (WrittenOfHer(in_minutes(-60), "Ana", "eating well"),),
)  # fmt: skip
PLAN = PlanAnswer(
    "maren", "Maren",
    (PlanRow("gate", "Brindle Gate", 45.0, in_minutes(50), in_minutes(60), in_minutes(75), in_minutes(70),
             timedelta(minutes=10), in_minutes(62)),),
)  # fmt: skip
FULL_PLAN = replace(
    PLAN,
    rows=(replace(PLAN.rows[0], changes=(ChangeAt("A", in_minutes(55)), ChangeAt("B", in_minutes(80)))),),
    source=(saying("source-finish", target_s=104_400), saying("source-costs")),
    notes=(
        note("few-stops", planned_s=1_800),
        note("goal-c", saying("cut-off-in", place="Brindle Gate"), pulled_length_s=926),
    ),
    light=(LightAt("sunset", in_minutes(90), 51.2), LightAt("sunrise", in_minutes(-400), 3.0)),
    torch=(TorchPart(in_minutes(90), in_minutes(700), 51.2, 98.0),),
)
PEOPLE = PeopleAnswer(
    (
        PersonThere("Ana", "crew", "+44 1632 960002", "Skelter Mill", in_minutes(-30), "Brindle Gate", in_minutes(60)),
        PersonThere("Tomas", "pacer, supporter", bound_for="Brindle Gate", reachable=False),
    ),
    Contact("Race control", "+44 1632 960100"), "112", Contact("Mountain rescue", "112"),
)  # fmt: skip
CARD = IfThenCard(
    "feet", "hot spot on a foot", ("stop", "tape"), "medic at the gate", ("cannot bear weight",)
)
NOTED = NotedAnswer(
    "e-1", "noted", Kind.IN, NOW, "maren", "Maren", "gate", "Brindle Gate", told=("Ana",), next_name="Low Barn",
    next_window=WINDOW,
)  # fmt: skip

SAYINGS: dict[str, Callable[[Say], str]] = {
    "next": lambda s: answers.say_point(s, FORECAST, None),
    "a point to come, unlikely": lambda s: answers.say_point(s, FORECAST, "finish"),
    "a point reached": lambda s: answers.say_point(s, FORECAST, "mill"),
    "nothing ahead": lambda s: answers.say_point(s, OVER, None),
    "doubtful ground": lambda s: answers.say_point(s, DOUBTFUL, None),
    "finish": lambda s: answers.say_finish(s, FORECAST),
    "where": lambda s: answers.say_where(s, FORECAST),
    "where, over": lambda s: answers.say_where(s, OVER),
    "where, nothing heard": lambda s: answers.say_where(s, DOUBTFUL),
    "where, at a point": lambda s: answers.say_where(
        s, replace(FORECAST, fresh=replace(FRESH, going="at a point", last=replace(LAST, kind="in")))
    ),
    "against the plan": lambda s: answers.say_gap(s, FORECAST),
    "against no plan": lambda s: answers.say_gap(s, replace(FORECAST, points=(replace(POINTS[1], planned_in=None),))),
    "slower": lambda s: answers.say_supposed(s, replace(FORECAST, supposed_factor=1.1), "gate"),
    "faster": lambda s: answers.say_supposed(s, replace(FORECAST, supposed_factor=0.95), None),
    "leaves": lambda s: answers.say_supposed(s, replace(FORECAST, supposed_leaving=in_minutes(10)), "gate"),
    "dark": lambda s: answers.say_dark(s, FORECAST, "finish"),
    "light": lambda s: answers.say_dark(s, FORECAST, "gate"),
    "dark, not known": lambda s: answers.say_dark(s, FORECAST, "mill"),
    "heard": lambda s: answers.say_heard(s, FRESH, "Maren"),
    "heard nothing": lambda s: answers.say_heard(s, Freshness(None), "Maren"),
    "last stop": lambda s: answers.say_last_stop(s, FACTS, None),
    "a stop that lasts": lambda s: answers.say_last_stop(
        s, replace(FACTS, stops=(StopFact("mill", "Skelter Mill", in_minutes(-7), None, False),)), None
    ),
    "no stop": lambda s: answers.say_last_stop(s, replace(FACTS, stops=FACTS.stops[:1]), None),
    "half a stop": lambda s: answers.say_last_stop(s, FACTS, "start"),
    "how she is": lambda s: answers.say_how_she_is(s, FACTS),
    "how she is, nothing": lambda s: answers.say_how_she_is(s, replace(FACTS, how_she_is=())),
    "cut-offs": lambda s: plan_answers.say_cut_offs(s, CUT_OFFS, None),
    "one cut-off": lambda s: plan_answers.say_cut_offs(s, CUT_OFFS, "finish"),
    "no cut-off": lambda s: plan_answers.say_cut_offs(s, replace(CUT_OFFS, cut_offs=()), None),
    "cut-offs and a stage": lambda s: plan_answers.say_cut_offs(s, replace(CUT_OFFS, stages=(STAGE,)), None),
    "a stage alone": lambda s: plan_answers.say_cut_offs(s, replace(CUT_OFFS, cut_offs=(), stages=(STAGE,)), None),
    "end of a stage": lambda s: plan_answers.say_cut_offs(s, replace(CUT_OFFS, stages=(LOW_STAGE,)), "camp"),
    "missed": lambda s: answers.say_missed(s, MISSED),
    "missed, even": lambda s: answers.say_missed(s, replace(MISSED, p_past=0.5, advice="go")),
    "missed, likely": lambda s: answers.say_missed(s, replace(MISSED, p_past=0.97), advice_first=True),
    "seen out": lambda s: answers.say_missed(s, replace(MISSED, p_past=1.0, advice="go", seen_out=in_minutes(-3))),
    "seen in": lambda s: answers.say_missed(s, replace(MISSED, p_past=0.0, seen_in=in_minutes(-3))),
    "plan": lambda s: plan_answers.say_plan(s, PLAN),
    "plan in full": lambda s: plan_answers.say_plan(s, FULL_PLAN),
    "light of the plan": lambda s: plan_answers.say_light(s, FULL_PLAN),
    "picture": lambda s: answers.say_picture(s, FORECAST),
    "bring": lambda s: things.say_bring(s, KIT),
    "bring nothing": lambda s: things.say_bring(s, replace(KIT, kit=(), food="", window=None, dark=None)),
    "take back": lambda s: things.say_take_back(s, KIT),
    "take nothing back": lambda s: things.say_take_back(s, replace(KIT, kit=KIT.kit[:2])),
    "food": lambda s: things.say_food(s, KIT),
    "no food": lambda s: things.say_food(s, replace(KIT, food="", fuel=None)),
    "leave, race ended": lambda s: things.say_leave(s, replace(NEXT, fresh=ENDED), None),
    "meeting, race ended": lambda s: things.say_meeting(s, replace(NEXT, fresh=ENDED)),
    "wait, race ended": lambda s: answers.say_missed(s, replace(MISSED, fresh=ENDED), advice_first=True),
    "leave": lambda s: things.say_leave(s, NEXT, None),
    "leave, over": lambda s: things.say_leave(
        s, replace(NEXT, meetings=(replace(MEETING, values=replace(VALUES, leave_by=in_minutes(-5))),)), None
    ),
    "leave, no drive": lambda s: things.say_leave(s, replace(NEXT, meetings=(UNSURE,)), None),
    "leave, nothing": lambda s: things.say_leave(s, replace(NEXT, meetings=()), None),
    "drive": lambda s: things.say_drive(s, NEXT, None),
    "drive, unknown": lambda s: things.say_drive(s, replace(NEXT, meetings=(UNSURE,)), None),
    "meeting": lambda s: things.say_meeting(s, NEXT),
    "meeting, bare": lambda s: things.say_meeting(s, replace(NEXT, meetings=(UNSURE,))),
    "meeting, none": lambda s: things.say_meeting(s, replace(NEXT, meetings=())),
    "people": lambda s: things.say_people(s, PEOPLE),
    "people there": lambda s: things.say_people(s, PEOPLE, "Brindle Gate"),
    "people, none": lambda s: things.say_people(s, PEOPLE, "Low Barn"),
    "numbers": lambda s: things.say_numbers(s, PEOPLE.race_control, "112", PEOPLE.rescue),
    "card": lambda s: things.say_cards(s, CardsAnswer((CARD,)), ("feet",)),
    "many cards": lambda s: things.say_cards(s, CardsAnswer(built_in_cards("1", "112"), "fetch a medic")),
    "built-in card": lambda s: things.say_cards(
        s,
        CardsAnswer(
            built_in_cards("1", "112", s.reader.language), red_flag_line("1", "112", s.reader.language)
        ),
        ("stomach",),
    ),
    "no card": lambda s: things.say_cards(s, CardsAnswer(())),
    "usage": lambda s: things.say_usage(s, frozenset({"crew", "runner"}), "Brindle Gate", 10),
    "usage of volunteers": lambda s: things.say_usage(s, frozenset({"volunteer"}), "Brindle Gate", 10),
    **{
        f"noted {kind.value}": (
            lambda s, kind=kind: replies.say_noted(s, replace(NOTED, kind=kind), "my words", UNDO)
        )
        for kind in Kind
    },
    "noted again": lambda s: replies.say_noted(s, replace(NOTED, status="same again"), "", UNDO),
    "noted, doubted": lambda s: replies.say_noted(
        s, replace(NOTED, unconfirmed=True, doubt="too-fast; vehicle"), "", UNDO
    ),
    "noted, guessed": lambda s: replies.say_noted(
        s, replace(NOTED, unconfirmed=True, doubt="guessed"), "", UNDO, ask=True
    ),
    "noted, supporter": lambda s: replies.say_noted(
        s, replace(NOTED, unconfirmed=True, doubt="supporter"), "", UNDO, supporter=True
    ),
    "many": lambda s: replies.say_many(s, ((NOTED, ""), (replace(NOTED, unconfirmed=True, doubt="future"), "")), UNDO),
    "undone": lambda s: replies.say_undone(s, NOTED),
    "undone words": lambda s: replies.say_undone(s, replace(NOTED, kind=Kind.HOW_SHE_IS), "feet sore"),
    "answered": lambda s: replies.say_answered(s, AnsweredAnswer(7, "Ana", True), "on our way", alarm=False),
    "alarm is yours": lambda s: replies.say_answered(
        s, AnsweredAnswer(7, "Ana", True, in_minutes(20)), "i have it", alarm=True
    ),
    "alarm is theirs": lambda s: replies.say_answered(s, AnsweredAnswer(7, "Ana", False), "i have it", alarm=True),
    "distress": lambda s: replies.say_distress(s, ("Race control", "+44 1"), "112", ("Ana",), by_self=True),
    "distress, nobody told": lambda s: replies.say_distress(s, ("Race control", "+44 1"), "112", (), by_self=False),
    "distress, not sent": lambda s: replies.say_distress(s, ("Race control", "+44 1"), "112", None, by_self=True),
    "preview": lambda s: replies.say_preview(
        s, JoinAnswer("ana", "Ana", "e", "The Hill Sixty", (Part("ana", PartKind.CREW, "maren"),), False, ("Maren",))
    ),
    "error": lambda s: replies.say_error(s, "not_now", "the race is over"),
    "error, unknown": lambda s: replies.say_error(s, "no_such_error"),
}  # fmt: skip


@pytest.mark.parametrize("name", list(SAYINGS))
def test_every_answer_is_sound(name: str, reader: Reader, check_sound: Callable[[str], None]) -> None:
    """No gap, no misleading word, no bare number, for every kind of reader."""
    check_sound(SAYINGS[name](Say(reader, NOW)))


@pytest.mark.parametrize(
    ("name", "first"),
    [
        ("next", "Maren at Brindle Gate: about 16:45 (16:10 to 17:50)."),
        ("a point reached", "Maren was in at Skelter Mill 13:55 and out 14:05."),
        ("where", "Maren was last known out of Skelter Mill 14:05, reported by Ana (1 h 5 min ago)."),
        ("against the plan", "Maren is about 35 min behind plan. Brindle Gate: about 16:45 (16:10 to 17:50)."),
        ("last stop", "Maren was at Skelter Mill for 10 min (13:55 to 14:05), planned 5 min."),
        ("cut-offs", "Brindle Gate, out by 18:30: about 8 in 10 that Maren makes it."),
        ("missed", "Likely not: about 2 in 10 that Maren has left Brindle Gate already."),
        ("missed, likely", "Wait until 15:50."),
        ("seen out", "Yes, gone: Maren was out of Brindle Gate 15:07."),
        ("leave", "Leave by 15:30 for Brindle Gate; be there from 16:10."),
        ("bring", "Bring to Brindle Gate for Maren: head torch and poles."),
        ("take back", "Take back at Brindle Gate: wet socks."),
        ("dark", "Yes, it is dark at Low Barn when Maren comes: about Sat 20:10 (18:30 to 22:10)."),
        ("distress", "Are you hurt? Call 112. Race control: +44 1."),
    ],
)  # fmt: skip
def test_the_first_line_answers(name: str, first: str, here: Reader) -> None:
    """The answer stands in the first line, with its window."""
    assert SAYINGS[name](Say(here, NOW)).split("\n")[0] == first


def test_an_answer_says_how_fresh_it_is_and_what_would_change_it(here: Reader) -> None:
    """Under the answer: the last fact, who told it, how long ago; and whose report would sharpen it."""
    text = SAYINGS["next"](Say(here, NOW))
    assert "Last known: out of Skelter Mill 14:05, reported by Ana (1 h 5 min ago)." in text
    assert "With a report from Moor Cross I could say it more exactly." in text


def test_the_end_of_a_stage_has_odds_rest_and_a_warning(here: Reader) -> None:
    """10 h likely and 8 h in one night of ten, by the shown edges; low odds, hardly any rest and the cut-off are said."""
    said = SAYINGS["a stage alone"](Say(here, NOW)).splitlines()[0]
    assert "about 9 in 10 to be in before the next stage starts" in said
    assert "likely 10 h of rest there, 1 time in 10 under 8 h" in said
    low = SAYINGS["end of a stage"](Say(here, NOW))
    assert "to be in by" in low
    assert "1 time in 10 hardly any." in low
    assert "That is low: ask the race now" in low


def test_odds_of_getting_there_are_said_where_they_matter(here: Reader) -> None:
    """A window holds given that she gets there; where that is less than 9 in 10 it is said."""
    assert "if she gets there" not in SAYINGS["next"](Say(here, NOW))
    assert "That is if she gets there: about 7 in 10." in SAYINGS["finish"](Say(here, NOW))


def test_what_is_not_seen_is_marked_as_estimate(here: Reader) -> None:
    """Where she may be now is rounded outward and marked as an estimate."""
    text = SAYINGS["where"](Say(here, NOW))
    assert "Estimate, not seen: between 30 km and 38 km on the course, likely near 34 km." in text


def test_doubts_holds_and_our_own_outages_are_said(here: Reader) -> None:
    """What weakens an answer stands under it: reports that don't count yet, a hold, our line down."""
    text = SAYINGS["doubtful ground"](Say(here, NOW))
    assert "2 reports are not confirmed yet and do not count" in text
    assert "Runners are held by race control until 15:30." in text
    assert "DOWN since 15:00: our Telegram bot. Something may have been missed." in text


def test_an_estimated_drive_sets_no_leave_by(here: Reader) -> None:
    """Without a confirmed drive there is no leave-by, and it is said why."""
    text = SAYINGS["leave, no drive"](Say(here, NOW))
    assert text.startswith("No leave-by for Brindle Gate yet: nobody has confirmed the drive.")


def test_miles_for_those_who_read_miles() -> None:
    """Distances are in the reader's unit throughout."""
    miles = Reader("en", "Europe/London", "Europe/London", miles=True)
    text = SAYINGS["where"](Say(miles, NOW))
    assert " km" not in text
    assert "between 18 miles and 24 miles" in text


@pytest.mark.parametrize("asked", ["leave, race ended", "meeting, race ended", "wait, race ended"])
def test_no_meeting_is_driven_to_once_the_race_is_ended(asked: str, here: Reader) -> None:
    """Whoever asks when to leave or whether to wait reads that it is over, and who says where she is fetched."""
    text = SAYINGS[asked](Say(here, NOW))
    assert "The race was ended by race control 14:50." in text
    assert "Where she is to be fetched, race control says, or she herself: ask before you drive." in text
    assert "Leave by" not in text
    assert "be there from" not in text


IN_ONLY = replace(POINTS[0], left=None)


@pytest.mark.parametrize(
    ("gone_on", "points", "first"),
    [
        (0.0, (IN_ONLY, *POINTS[1:]), "Maren is in at Skelter Mill since 13:55."),
        (0.49, (IN_ONLY, *POINTS[1:]), "Maren is in at Skelter Mill since 13:55."),
        (
            0.8,
            (IN_ONLY, *POINTS[1:]),
            "Perhaps: Maren was in at Skelter Mill at 13:55, nobody has reported her out; "
            "about 8 in 10 that she has gone on.",
        ),
        # seen farther on: whatever the odds are about, they are not about the mill
        (0.0, (IN_ONLY, replace(POINTS[1], arrived=NOW)), "Maren was in at Skelter Mill 13:55."),
    ],
)
def test_nobody_is_said_to_be_where_she_has_most_likely_left(
    gone_on: float, points: tuple[PointAnswer, ...], first: str, here: Reader
) -> None:
    """Asked of a point where she was seen in and 'out' was forgotten, and of whether it is dark there."""
    answer = replace(FORECAST, points=points, p_gone_on=gone_on)
    for say_it in (answers.say_point, answers.say_dark):
        assert say_it(Say(here, NOW), answer, "mill").split("\n")[0] == first
