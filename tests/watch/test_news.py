"""In, out, finished, retired, corrections, doubts, race changes, odds, and what we say about ourselves."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from server.event.model import NoticeChoice, PartKind
from server.facts.entry import Kind, Retired, Source
from server.forecast.channel_outages import Down
from server.watch import organiser
from server.watch.notice import CutOffValues, NoticeKind, RaceChangeValues, SightingValues
from server.watch.odds import LEVELS, band

K = NoticeKind
LENA = {"by": "lena", "source": Source.VOLUNTEER}


def told(owed: list[Any], kind: NoticeKind) -> list[str]:
    """Who is owed that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind)


def test_in_is_told_to_those_whose_meeting_it_is_with_kit(night: Any) -> None:
    """A volunteer reports her in at Moss: Vera and the pacer hear, with what to have ready."""
    night.report(Kind.IN, "22:00", point="moss", **LENA)
    owed = night.tick("22:00")
    assert told(owed, K.ARRIVED) == ["tomas", "vera"]
    values = next(n.values for n in owed if n.key.kind is K.ARRIVED)
    assert isinstance(values, SightingValues)
    assert values.kit == ("dry socks",)
    assert values.planned_stop == timedelta(minutes=5)


def test_a_pacer_who_runs_on_with_her_is_not_told_to_bring_what_was_for_the_point(night: Any) -> None:
    """Out of Moss, where Tomas joined her and has no meeting after it: what lay ready there is no news for him."""
    night.report(Kind.CREW_THERE, "21:40", "tomas", runner=None, point="moss")
    night.report(Kind.IN, "22:00", point="moss", **LENA)
    night.report(Kind.OUT, "22:05", point="moss", **LENA)
    owed = {n.key.person: n.values for n in night.tick("22:05") if n.key.kind is K.LEFT}
    assert owed["tomas"].next_meeting is None
    assert (owed["tomas"].kit, owed["tomas"].food) == ((), "")


def test_who_reported_her_in_is_not_told_so(night: Any) -> None:
    """Ana reports her in at Mill: neither she nor Jonas beside her is told."""
    night.report(Kind.IN, "16:40", "ana", point="mill")
    assert told(night.tick("16:40"), K.ARRIVED) == []


@pytest.mark.parametrize("there", [False, True])
def test_out_tells_those_who_wait_where_she_comes_next(night: Any, there: bool) -> None:
    """Out of Chapel: who is at Moss hears that she is on her way; who has yet to leave for it nothing new; and they who
    reported it nothing at all."""
    if there:
        night.report(Kind.CREW_THERE, "19:00", "vera", runner=None, point="moss")
    night.report(Kind.OUT, "19:25", "ana", point="chapel")
    owed = night.tick("19:25")
    assert told(owed, K.LEFT) == (["tomas", "vera"] if there else [])
    assert {n.values.next_meeting.point for n in owed if n.key.kind is K.LEFT} == (
        {"moss"} if there else set()
    )


def test_after_an_hour_without_us_one_message_marked_delayed(night: Any) -> None:
    """Three reports came while nobody evaluated: the latest alone goes out, and says that it is delayed."""
    night.report(Kind.IN, "16:40", "lena", point="mill")
    night.report(Kind.OUT, "16:45", "lena", point="mill")
    night.report(Kind.IN, "19:20", "lena", point="chapel")
    owed = [n for n in night.tick("20:30") if n.key.kind in (K.ARRIVED, K.LEFT)]
    assert {(n.key.kind, n.key.point, n.delayed) for n in owed} == {(K.ARRIVED, "chapel", True)}


def test_an_old_report_that_comes_late_is_no_news(night: Any, at: Any) -> None:
    """In at Mill comes after out of Mill: nobody is told what is overtaken."""
    night.report(Kind.OUT, "16:46", "lena", point="mill")
    night.tick("16:46")
    night.report(Kind.IN, "16:40", "lena", point="mill", received=at("16:55"))
    assert told(night.tick("16:55"), K.ARRIVED) == []


@pytest.mark.parametrize(("moved", "told_so"), [(4, []), (5, ["tomas", "vera"])])
def test_a_corrected_time_is_told_if_it_changes_something(night: Any, moved: int, told_so: list[str]) -> None:
    """Four minutes off changes nothing; five are told to those who were told the first, once."""
    first = night.report(Kind.IN, "22:00", point="moss", **LENA)
    night.tick("22:00")
    night.report(
        Kind.IN,
        f"21:{60 - moved}",
        point="moss",
        replaces=first,
        received=night.made[-1].made_at + timedelta(minutes=3),
        **LENA,
    )
    assert told(night.tick("22:03"), K.CORRECTION) == told_so
    assert told(night.tick("22:04"), K.CORRECTION) == []


def test_a_report_taken_back_and_made_again(night: Any) -> None:
    """Told in, told it was wrong, told in again when she really comes."""
    first = night.report(Kind.IN, "22:00", point="moss", **LENA)
    night.tick("22:00")
    night.report(Kind.TAKEN_BACK, "22:02", "lena", about=first)
    owed = night.tick("22:02")
    assert told(owed, K.CORRECTION) == ["tomas", "vera"]
    assert all(n.values.taken_back for n in owed if n.key.kind is K.CORRECTION)
    night.report(Kind.IN, "22:30", point="moss", **LENA)
    assert told(night.tick("22:30"), K.ARRIVED) == ["tomas", "vera"]


def test_finished_until_crew_have_her(night: Any) -> None:
    """Everybody who follows her hears; the crew at the finish are asked until she is in hand, three times
    at most."""
    night.report(Kind.IN, "29:50", "mat", source=Source.TIMING_MAT, point="finish")
    owed = night.tick("29:50")
    assert told(owed, K.FINISHED) == ["ana", "jonas", "piet", "sasha", "tomas", "vera"]
    assert {n.key.person for n in owed if n.needs_answer} == {"ana", "jonas"}
    assert told(night.tick("30:10"), K.FINISHED) == ["ana", "jonas"]
    night.report(Kind.IN_HAND, "30:15", "ana")
    assert told(night.tick("30:35"), K.FINISHED) == []


def test_undoing_finished_starts_the_watch_again(night: Any) -> None:
    """The wrong bib crossed the line: those told are told so, and late and overdue run again."""
    night.report(Kind.OUT, "23:10", point="moss", **LENA)
    wrong = night.report(Kind.IN, "24:00", "mat", source=Source.TIMING_MAT, point="finish")
    night.tick("24:00")
    night.report(Kind.TAKEN_BACK, "24:10", "olga", about=wrong)
    assert "sasha" in told(night.tick("24:10"), K.CORRECTION)
    assert told(night.tick("27:00"), K.OVERDUE) == ["sasha"]


def test_an_hour_without_anybody_having_her_is_an_alarm_at_home(night: Any) -> None:
    """Retired, nobody answers: after an hour the safety contact is asked as an alarm."""
    night.report(Kind.RETIRED, "18:00", "lena", how=Retired.OWN_CHOICE, point="mill")
    night.tick("18:00")
    owed = night.tick("19:00")
    assert [n.urgency.value for n in owed if n.key.person == "sasha" and ":home:" in n.occasion] == ["alarm"]


def test_undoing_retired_is_told(night: Any) -> None:
    """Taken back: everybody who was told hears, the supporter too."""
    entry = night.report(Kind.RETIRED, "18:00", "lena", how=Retired.OWN_CHOICE, point="mill")
    night.tick("18:00")
    night.report(Kind.TAKEN_BACK, "18:05", "lena", about=entry)
    assert told(night.tick("18:05"), K.CORRECTION) == [
        "ana",
        "jonas",
        "maren",
        "olga",
        "piet",
        "sasha",
        "tomas",
        "vera",
    ]


def test_a_guess_is_asked_about_after_two_minutes(night: Any) -> None:
    """Crew off the road and the organiser, never the reporter; confirmed first, nobody is asked."""
    night.report(Kind.IN, "16:40", "jonas", point="mill", unconfirmed=True, doubt="guessed")
    assert told(night.tick("16:41"), K.UNCONFIRMED) == []
    assert told(night.tick("16:42"), K.UNCONFIRMED) == ["ana", "olga"]


def test_news_waits_for_the_morning_and_then_the_latest_goes_out(night: Any) -> None:
    """Asleep at home, Vera wants to hear of her meeting only: in at Moss is hers; doubts wait."""
    people = tuple(
        replace(p, quiet_from="21:00", quiet_to="23:30") if p.id == "vera" else p for p in night.event.people
    )
    night.event = replace(night.event, people=people)
    night.report(Kind.IN, "20:55", point="moss", **LENA)
    assert told(night.tick("20:55"), K.ARRIVED) == ["tomas"]
    owed = night.tick("22:30")
    assert [(n.key.person, n.delayed) for n in owed if n.key.kind is K.ARRIVED] == [("vera", True)]


def test_only_alarms_means_no_news(night: Any) -> None:
    """Somebody who chose 'only alarms' gets neither in nor out."""
    people = tuple(replace(p, notices=NoticeChoice.ALARMS) for p in night.event.people)
    night.event = replace(night.event, people=people)
    night.report(Kind.IN, "22:00", point="moss", **LENA)
    assert told(night.tick("22:00"), K.ARRIVED) == []


@pytest.mark.parametrize(
    ("kind", "more", "change"),
    [
        (Kind.HELD, {"until": None}, "runners held"),
        (Kind.CUT_OFF_MOVED, {"point": "chapel", "edge": "in"}, "cut-off moved"),
        (Kind.ACCESS_CLOSED, {"point": "barn"}, "access closed"),
        (Kind.REROUTED, {"words": "over the road bridge"}, "rerouted"),
        (Kind.RACE_ENDED_EARLY, {}, "race ended early"),
        (Kind.START_DELAYED, {"amount": timedelta(minutes=30)}, "start delayed"),
    ],
)
def test_race_changes_are_told_to_those_affected(
    night: Any, at: Any, kind: Kind, more: Any, change: str
) -> None:
    """Runner, crew, pacer, safety contact; volunteers where it is their point or everybody's; not the
    supporter. Once."""
    if kind is Kind.CUT_OFF_MOVED:
        more = more | {"until": at("21:30")}
    night.report(kind, "13:55", "olga", runner=None, **more)
    owed = night.tick("13:55")
    found = [n for n in owed if isinstance(n.values, RaceChangeValues)]
    assert {n.values.change for n in found} == {change}
    expected = {"maren", "ana", "jonas", "vera", "tomas", "sasha"} | (set() if "point" in more else {"lena"})
    assert {n.key.person for n in found} == expected
    assert told(night.tick("13:56"), K.RACE_CHANGE) == []


def test_released_is_told_and_an_undone_hold_is_corrected(night: Any) -> None:
    """The end of a hold goes to those who heard of it; a hold entered by mistake is taken back to them."""
    night.report(Kind.HELD, "16:00", "olga", runner=None)
    night.tick("16:00")
    night.report(Kind.RELEASED, "16:30", "olga", runner=None)
    owed = night.tick("16:30")
    assert {n.values.change for n in owed if n.key.kind is K.RACE_CHANGE} == {"runners released"}
    other = type(night)()
    hold = other.report(Kind.HELD, "16:00", "olga", runner=None)
    other.tick("16:00")
    other.report(Kind.TAKEN_BACK, "16:05", "olga", runner=None, about=hold)
    assert "ana" in told(other.tick("16:05"), K.CORRECTION)


@pytest.mark.parametrize(
    ("odds", "was", "now"),
    [
        (0.80, 0, 0), (0.799, 0, 1), (0.50, 0, 1), (0.499, 0, 2), (0.199, 0, 3), (0.10, 3, 3),
        (0.82, 1, 1), (0.849, 1, 1), (0.85, 1, 0), (0.54, 2, 2), (0.55, 2, 1), (0.95, 3, 0), (0.24, 3, 3),
    ],
)  # fmt: skip
def test_bands_of_odds(odds: float, was: int, now: int) -> None:
    """Down at the level, up only past it by the hysteresis."""
    assert band(odds, was) == now
    assert len(LEVELS) == 3


def test_cut_off_odds_cross_once_and_not_when_hopeless(night: Any, at: Any) -> None:
    """Late out of Mill: what it does to the cut-off at Chapel is told once, to those who meet her there and to nobody who
    meets her later; silence alone says nothing more."""
    night.report(Kind.OUT, "17:55", point="mill", **LENA)
    levels = []
    now = at("17:55")
    while now < at("21:30"):
        found = [n.values for n in night.tick(now) if n.key.person == "ana"]
        levels += [(v.level, v.falling, v.odds) for v in found if isinstance(v, CutOffValues)]
        now += timedelta(minutes=1)
    assert len(levels) == 1
    assert all(falling and odds < level for level, falling, odds in levels)
    assert len({level for level, _, _ in levels}) == len(levels)
    assert all(odds >= 0.02 for _, _, odds in levels)
    assert {m.notice.key.person for m in night.got(K.CUT_OFF_ODDS)} == {"ana", "jonas"}


@pytest.mark.parametrize(
    ("hours", "owed"), [(-19.1, False), (-19.0, True), (-12.0, True), (-1.1, True), (-1.0, False)]
)
def test_the_test_alarm_goes_out_from_the_evening_to_one_hour_before(
    night: Any, at: Any, hours: float, owed: bool
) -> None:
    """To everybody on the ladder, to be answered with the phone as at night: of a start at 15:00 not at three in the
    night, but at 20:00."""
    assert bool(told(night.tick(at("14:00") + timedelta(hours=hours)), K.TEST_ALARM)) is owed


@pytest.mark.parametrize(
    ("start", "first"),
    [
        ("05:00", "17:00"),
        ("10:00", "20:00"),
        ("12:00", "20:00"),
        ("20:00", "08:00"),
        ("23:30", "11:30"),
        ("00:00", "12:00"),
    ],
)
def test_the_first_test_wakes_nobody(night: Any, start: str, first: str) -> None:
    """Twelve hours before by day, else the evening before, on the event's own clock."""
    event = replace(night.event, time_zone="Europe/London")
    zone = ZoneInfo("Europe/London")
    begins = datetime.fromisoformat(f"2027-06-19T{start}").replace(tzinfo=zone)
    opens = organiser._first_test(event, begins).astimezone(zone)
    assert f"{opens:%H:%M}" == first
    assert timedelta(hours=12) <= begins - opens <= timedelta(hours=22)


def test_who_did_not_answer_the_test_is_asked_again_and_shown(night: Any, at: Any) -> None:
    """A second time two hours before; at the close the organiser hears, and the roll shows it."""
    night.tick("02:00")
    night.answer(K.TEST_ALARM, "sasha", "i have it", "07:00")
    assert told(night.tick("12:00"), K.TEST_ALARM) == ["ana"]
    owed = night.tick("13:00")
    assert [(n.key.person, n.values.person) for n in owed if n.key.kind is K.UNREACHED] == [("olga", "ana")]
    roll = dict(organiser.test_alarm_roll(night.situation(at("13:00"))))
    assert roll == {"ana": None, "sasha": at("07:00")}


@pytest.mark.parametrize(("end", "owed"), [("17:01", 0), ("17:02", 1), ("18:00", 1)])
def test_the_organiser_hears_of_an_outage(night: Any, at: Any, end: str, owed: int) -> None:
    """Two minutes or more, once, with from when to when."""
    night.downs = (Down("outgoing:email", at("17:00"), at(end)),)
    found = [n for n in night.tick("18:00") if n.key.kind is K.OUTAGE]
    assert len(found) == owed
    assert told(night.tick("18:01"), K.OUTAGE) == []


def test_without_an_organiser_the_safety_contact_hears(night: Any, at: Any) -> None:
    """A small crew has no organiser in the file: somebody hears all the same."""
    parts = tuple(p for p in night.event.parts if p.kind is not PartKind.ORGANISER)
    night.event = replace(night.event, parts=parts)
    night.downs = (Down("server", at("17:00"), at("17:30")),)
    assert told(night.tick("17:30"), K.OUTAGE) == ["sasha"]


def test_facts_of_one_minute_may_be_joined_and_alarms_never_wait(night: Any, at: Any) -> None:
    """News carries a moment until which the outbox may keep it; alarms and leave-now go at once."""
    night.report(Kind.IN, "22:00", point="moss", **LENA)
    for n in night.tick("22:00"):
        joins = n.key.kind in (K.ARRIVED, K.LEFT, K.WINDOW_MOVED, K.CUT_OFF_ODDS, K.MEETING_LOST)
        assert (n.hold_until == at("22:01")) is joins
    night.report(Kind.ASKED_FOR_HELP, "22:10", "maren", source=Source.RUNNER)
    assert all(n.hold_until is None for n in night.tick("22:10") if n.key.kind is K.ASKED_FOR_HELP)


def test_what_the_facts_made_due_too_late_to_send_is_not_marked_delayed(night: Any, at: Any) -> None:
    """Out of Mill is told at 17:40 of 16:45, and in at Chapel, told of 19:20, is confirmed at 19:50: nobody could have
    been told before, and no notice says that it was due earlier."""
    night.report(Kind.OUT, "16:45", "lena", point="mill", received=at("17:40"))
    owed = night.tick("17:40")
    assert owed
    assert not [n for n in owed if n.delayed]
    night.report(Kind.IN, "19:20", "lena", point="chapel", id="in", unconfirmed=True, doubt="guessed")
    night.tick("19:25")
    night.report(Kind.CONFIRMED, "19:50", "lena", about="in")
    owed = night.tick("19:50")
    assert K.ARRIVED in {n.key.kind for n in owed}
    assert not [n for n in owed if n.delayed]


def test_what_waited_for_us_is_marked_delayed(night: Any, at: Any) -> None:
    """Out of Chapel at 19:25 is read at 21:30, when we are back: had we been up, 'leave now' would have gone out in time."""
    night.report(Kind.OUT, "16:45", "lena", point="mill")
    night.tick("16:45")
    night.report(Kind.OUT, "19:25", "lena", point="chapel", received=at("21:30"))
    night.watching_since = at("21:30")
    owed = night.tick("21:30")
    assert [n for n in owed if n.delayed]


def test_whether_a_report_is_right_is_asked_while_it_is_of_use(night: Any) -> None:
    """Asleep until 17:03, Ana is not asked an hour on about 'in at Mill': nobody is waiting for her word any more."""
    people = tuple(
        replace(p, quiet_from="14:00", quiet_to="18:03", time_zone="Europe/London") if p.id == "ana" else p
        for p in night.event.people
    )
    night.event = replace(night.event, people=people)
    night.report(Kind.IN, "16:40", "jonas", point="mill", unconfirmed=True, doubt="guessed")
    assert told(night.tick("16:42"), K.UNCONFIRMED) == ["olga"]
    assert told(night.tick("17:05"), K.UNCONFIRMED) == []
