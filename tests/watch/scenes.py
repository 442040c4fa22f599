"""Small nights for test_whole_notices.py: each does one thing and yields the moments at which all that is owed is written
down; its docstring is the rule it stands for.

    python -m tests.watch.scenes        writes whole_notices.txt anew; read the difference before it is committed
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace
from datetime import datetime, timedelta
from enum import Enum
from pathlib import Path
from typing import Any

from server.event.model import CutOff, Edge
from server.facts.entry import Kind, Retired, Source, Why
from server.facts.state import LastKnown
from server.forecast.channel_outages import Down
from server.forecast.outlook import Window
from server.watch.evaluate import evaluate
from server.watch.notice import Made, NoticeKind
from server.watch.situation import Group
from tests.watch.conftest import Night, clock

K = NoticeKind
FILE = Path(__file__).with_name("whole_notices.txt")
LENA: dict[str, Any] = {"by": "lena", "source": Source.VOLUNTEER}
OLGA: dict[str, Any] = {"by": "olga", "runner": None, "source": Source.VOLUNTEER}
HERSELF: dict[str, Any] = {"by": "maren", "source": Source.RUNNER}

Scene = Callable[[Night], Iterator[str]]


def shown(value: Any) -> str:
    """A value as one line: what it does not say is at its default; hours of the race day, minutes for lengths."""
    match value:
        case datetime():
            hours, rest = divmod(round((value - clock("00:00")).total_seconds()), 3600)
            minutes, seconds = divmod(rest, 60)
            return f"{hours:02}:{minutes:02}" + (f":{seconds:02}" if seconds else "")
        case timedelta():
            return f"{value / timedelta(minutes=1):g} min"
        case Window():
            return f"{shown(value.early)}–{shown(value.likely)}–{shown(value.late)}"
        case Enum():
            return str(value.value)
        case float():
            return f"{value:.4g}"
        case tuple() | list():
            return f"[{', '.join(map(shown, value))}]"
        case LastKnown():
            where = (value.point, value.km, value.fix)
            return f"<{value.entry} {value.kind} {shown(where)} {shown(value.at)} {value.by} {shown(value.received_at)}>"
        case _ if is_dataclass(value) and not isinstance(value, type):
            given = {f.name: getattr(value, f.name) for f in fields(value)}
            return f"{type(value).__name__}({_said(value, given)})"
    return str(value)


def _said(value: Any, given: dict[str, Any]) -> str:
    """Fields that are not at their default."""
    default = {f.name: f.default for f in fields(value)}
    return ", ".join(f"{name}={shown(v)}" for name, v in given.items() if v != default[name])


def written(scene: Scene) -> str:
    """All that is owed at each moment of a scene, who is owed the same in one line, and when to look again."""
    night, out = Night(), []
    for moment in scene(night):
        now = clock(moment)
        verdict = evaluate(night.situation(now), now)
        out.append(f"at {moment}, again {shown(verdict.ask_again)}")
        alike: dict[str, list[str]] = {}
        for n in verdict.owed:
            night.made.append(Made(n, len(night.made) + 1, now, sent_at=now))
            rest = {f.name: getattr(n, f.name) for f in fields(n) if f.name not in ("key", "values")}
            key = f"{n.key.kind.value} | {n.key.point} | {n.key.episode}"
            alike.setdefault(f"{key} | {_said(n, rest)}\n    {shown(n.values)}", []).append(n.key.person)
        out += [f"  {', '.join(sorted(who))}: {what}" for what, who in alike.items()]
    return "\n".join(out)


def recorded() -> dict[str, str]:
    """What the file has of each scene."""
    parts = FILE.read_text(encoding="utf-8").split("\n== ")
    return {name: text.rstrip("\n") for name, _, text in (p.partition("\n") for p in parts[1:])}


def out_of_mill(night: Night) -> None:
    """She is out of the mill at 16:46, and all that was owed till then has been told."""
    night.report(Kind.OUT, "16:46", point="mill", **LENA)
    night.run("14:30", "16:46", lazily=True)


def quietly_out(night: Night, point: str = "mill", at: str = "16:46") -> None:
    """The same with nothing told of what went before but that she is out."""
    night.report(Kind.OUT, at, point=point, **LENA)
    night.tick(at)


# --- getting crew on the road ------------------------------------------------------------------------------


def half_an_hour_before_the_leave_by(night: Night) -> Iterator[str]:
    """Those who go get all they need, half an hour ahead and then five minutes ahead; no answer in five
    minutes: the other of the car, then one who can telephone, then the organiser."""
    yield "14:34"
    yield "14:35"
    yield "14:59"
    yield "15:00"
    yield "15:05"
    yield "15:09"
    yield "15:10"
    yield "15:15"
    yield "15:20"
    yield "15:25"


def a_sleeper_is_woken(night: Night) -> Iterator[str]:
    """Vera's quiet hours hold the time to leave for Moss: half an hour before it she is asked to say that she is awake; the
    crew who are up are asked to reach her."""
    people = tuple(
        replace(p, quiet_from="18:00", quiet_to="23:30", time_zone="UTC") if p.id == "vera" else p
        for p in night.event.people
    )
    drives = tuple(replace(d, confirmed_by="vera") if d.to_place == "moss" else d for d in night.event.drives)
    night.event = replace(night.event, people=people, drives=drives)
    quietly_out(night)
    night.run("16:47", "19:00", lazily=True)
    night.report(Kind.IN, "19:20", "ana", point="chapel")
    night.report(Kind.OUT, "19:25", "ana", point="chapel")
    night.tick("19:25")
    yield from ("19:30", "19:45", "20:00", "20:15", "20:30")


def before_signal_is_lost(night: Night) -> Iterator[str]:
    """To Barn, where nobody has a signal: the next two meetings, and where there is a signal again."""
    quietly_out(night, "chapel", "19:25")
    night.report(Kind.CREW_THERE, "18:40", "ana", runner=None, point="chapel")
    night.tick("19:26")
    yield "24:10"
    night.report(Kind.CREW_LEFT, "24:20", "ana", runner=None, point="chapel")
    yield "24:20"


def a_meeting_that_can_not_be_made(night: Night) -> Iterator[str]:
    """The road to Moss is closed: Vera and the pacer hear that it is lost; opened again, that it is not."""
    quietly_out(night)
    night.report(Kind.ACCESS_CLOSED, "17:00", point="moss", words="flooded", **OLGA)
    yield "17:00"
    night.report(Kind.ACCESS_OPENED, "17:30", point="moss", **OLGA)
    yield "17:30"


def a_fact_moves_the_next_meeting(night: Night) -> Iterator[str]:
    """Out of the mill three quarters of an hour late: Chapel and what follows move, with what they were told before."""
    night.tick("14:30")
    night.report(Kind.OUT, "17:30", point="mill", **LENA)
    yield "17:30"


# --- seen -----------------------------------------------------------------------------------------------


def in_and_out(night: Night) -> Iterator[str]:
    """In: those whose meeting it is; out: those who go to her next."""
    night.tick("14:30")
    night.report(Kind.CREW_THERE, "16:10", "ana", runner=None, point="mill")
    night.tick("16:10")
    night.report(Kind.IN, "16:40", point="mill", **LENA)
    yield "16:40"
    night.report(Kind.OUT, "16:46", point="mill", **LENA)
    yield "16:46"
    night.report(Kind.IN, "16:25", point="mill", replaces="e2", received=clock("16:50"), **LENA)
    yield "16:50"


def in_at_the_finish(night: Night) -> Iterator[str]:
    """Everybody hears; crew are asked whether they have her, until they do; half a day later three questions."""
    quietly_out(night, "barn", "27:40")
    night.report(Kind.IN, "30:10", point="finish", **LENA)
    yield "30:10"
    yield "30:30"
    night.report(Kind.IN_HAND, "30:40", "ana")
    yield "30:40"
    yield "42:10"


def how_she_is(night: Night) -> Iterator[str]:
    """To the crew of her next meeting and her pacer; taken back, to each who read it."""
    quietly_out(night)
    said = night.report(Kind.HOW_SHE_IS, "17:20", "lena", words="blister, cheerful", source=Source.VOLUNTEER)
    yield "17:20"
    night.report(Kind.TAKEN_BACK, "17:25", "lena", about=said, source=Source.VOLUNTEER)
    yield "17:25"


def she_rests(night: Night) -> Iterator[str]:
    """Where, since when and until when."""
    night.report(Kind.IN, "20:10", point="chapel", **LENA)
    night.tick("20:10")
    night.report(
        Kind.RESTING, "20:12", "lena", point="chapel", words="lies down", until=clock("20:40"), source=Source.VOLUNTEER
    )  # fmt: skip
    yield "20:12"


def a_doubtful_report(night: Night) -> Iterator[str]:
    """Whoever could know is asked two minutes after whoever sent it."""
    quietly_out(night)
    night.report(
        Kind.IN,
        "19:00",
        "vera",
        point="chapel",
        unconfirmed=True,
        doubt="guessed",
        words="think that was her",
    )
    yield "19:00"
    yield "19:02"


def said_to_have_retired(night: Night) -> Iterator[str]:
    """Hearsay is asked of everybody near her and of herself at once; seen since, they hear that."""
    quietly_out(night)
    night.report(
        Kind.RETIRED, "19:00", "vera", how=Retired.OWN_CHOICE, unconfirmed=True, doubt="hearsay", words="she stopped"
    )  # fmt: skip
    yield "19:00"
    yield "19:02"
    night.report(Kind.IN, "19:30", point="chapel", **LENA)
    yield "19:30"


def somebody_has_her(night: Night) -> Iterator[str]:
    """Home and the crew elsewhere hear it; before that word is too old, who gave it is asked; then taken back."""
    quietly_out(night)
    night.report(Kind.IN_HAND, "17:20", "ana", point="mill", words="in our tent")
    yield "17:20"
    yield "18:00"
    night.report(Kind.TAKEN_BACK, "18:05", "ana", about="e2")
    yield "18:05"


def a_report_confirmed_later(night: Night) -> Iterator[str]:
    """In at Chapel by a guess, confirmed twenty minutes on: told then, and not as delayed."""
    out_of_mill(night)
    night.report(Kind.CREW_THERE, "18:50", "ana", runner=None, point="chapel")
    night.tick("18:50")
    night.report(
        Kind.IN, "19:20", "lena", point="chapel", unconfirmed=True, doubt="guessed", source=Source.VOLUNTEER
    )
    night.tick("19:20")
    night.report(Kind.CONFIRMED, "19:40", "olga", about="e3", runner=None)
    yield "19:40"


def somebody_has_her_at_night(night: Night) -> Iterator[str]:
    """Home is woken for it; crew who sleep elsewhere hear it in their morning."""
    night.event = replace(
        night.event,
        people=tuple(
            replace(p, quiet_from="16:00", quiet_to="17:40", time_zone="UTC")
            if p.id in ("vera", "sasha")
            else p
            for p in night.event.people
        ),
    )
    quietly_out(night)
    night.report(Kind.IN_HAND, "17:20", "ana", point="mill")
    yield "17:20"
    yield "17:39"
    yield "17:40"


def the_chat_of_the_crew(night: Night) -> Iterator[str]:
    """What concerns all, once, without kit, reasons or a next meeting; nothing that is one person's."""
    night.groups = (Group("group:1", clock("14:00")),)
    night.tick("14:00")
    night.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.OWN_SAFETY, words="fever")
    yield "14:30"
    night.report(Kind.OUT, "16:46", point="mill", **LENA)
    yield "16:46"
    night.report(Kind.RETIRED, "17:30", how=Retired.TIMED_OUT, point="mill", **LENA)
    yield "17:30"


def odds_of_a_cut_off(night: Night) -> Iterator[str]:
    """Falling through a level is told to who meets her by then; rising again past it too."""
    night.tick("14:30")
    night.report(Kind.OUT, "18:20", point="mill", **LENA)
    yield "18:20"
    night.report(Kind.OUT, "17:20", point="mill", replaces="e1", received=clock("18:30"), **LENA)
    yield "18:30"


# --- missed --------------------------------------------------------------------------------------------


def late_then_overdue(night: Night) -> Iterator[str]:
    """Crew are asked, home hears, the alarm climbs step by step; a stand-down ends it for all who were told."""
    quietly_out(night, "moss", "23:10")
    yield "26:16"
    yield "26:17"
    yield "26:33"
    yield "26:47"
    yield "26:48"
    yield "26:53"
    yield "26:58"
    yield "27:03"
    yield "27:08"
    night.report(Kind.STAND_DOWN, "27:10", "sasha", words="at the hut")
    yield "27:10"


def her_race_has_rather_ended(night: Night) -> Iterator[str]:
    """By the odds of having stopped the alarm comes before the line says so, the grace over, and says why it comes now."""
    night.going = 0.1
    quietly_out(night, "moss", "23:10")
    for before in ("26:17", "26:34", "26:44"):
        night.tick(before)
    yield "26:45"
    yield "26:46"


def an_alarm_is_held(night: Night) -> Iterator[str]:
    """Who has it is told to the others; the caller is asked to ring, else the holder; looked at again; given back."""
    parts = tuple(
        replace(p, calls_race_control=p.person == "vera", ladder=p.ladder if p.person != "vera" else 2)
        for p in night.event.parts
    )
    night.event = replace(night.event, parts=parts)
    quietly_out(night, "moss", "23:10")
    night.run("26:16", "26:53", lazily=True)
    night.answer(K.OVERDUE, "sasha", "i have it", "26:54")
    yield "26:54"
    night.answer(K.HANDED_ON, "vera", "cannot", "26:55")
    yield "26:55"
    night.report(Kind.HOW_SHE_IS, "26:58", "ana", words="she was tired at Moss")
    yield "26:58"
    yield "27:14"
    night.answer(K.LOOK_AGAIN, "sasha", "cannot", "27:15")
    yield "27:15"
    night.report(Kind.IN, "27:20", point="ridge", by="piet")
    yield "27:20"


def given_back_halfway_up(night: Night) -> Iterator[str]:
    """Ana had it and can't any more: who was told hears it, the next step is asked, Ana is not."""
    quietly_out(night, "moss", "23:10")
    night.run("26:16", "27:03", lazily=True)
    night.answer(K.HANDED_ON, "ana", "i have it", "27:04")
    yield "27:04"
    night.answer(K.HANDED_ON, "ana", "cannot", "27:06")
    yield "27:06"
    night.answer(K.HANDED_ON, "olga", "cannot", "27:07")
    yield "27:07"
    yield "27:27"


def who_was_to_ring_does_not_answer(night: Night) -> Iterator[str]:
    """Sasha is to ring race control and was asked before Ana took it: five minutes, then Ana rings."""
    quietly_out(night, "moss", "23:10")
    night.run("26:16", "26:58", lazily=True)
    night.answer(K.HANDED_ON, "ana", "i have it", "26:59")
    yield "26:59"
    yield "27:03"
    yield "27:04"
    night.report(Kind.RACE_CONTROL_TOLD, "27:05", "ana")
    yield "27:05"
    yield "27:19"
    yield "27:24"


def two_alarms_of_which_one_waits(night: Night) -> Iterator[str]:
    """Overdue, then she calls for help: its ladder only; one stand-down ends what waited behind it as well."""
    quietly_out(night, "moss", "23:10")
    night.run("26:16", "26:53", lazily=True)
    night.report(Kind.ASKED_FOR_HELP, "26:55", words="lost, near 41 miles", **HERSELF)
    yield "26:55"
    night.report(Kind.IN_HAND, "27:00", "lena", source=Source.VOLUNTEER)
    yield "27:00"


def crew_wait_in_vain(night: Night) -> Iterator[str]:
    """'Not here yet' where she surely would have been; and who stays for her."""
    quietly_out(night)
    night.report(Kind.CREW_THERE, "19:00", "ana", runner=None, point="chapel")
    night.tick("19:00")
    yield "20:10"
    night.report(Kind.NOT_HERE_YET, "20:40", "ana", point="chapel")
    yield "20:40"
    yield "21:05"


def crew_do_not_answer(night: Night) -> Iterator[str]:
    """Half an hour without an answer from those at the point: home is asked to telephone them, then the organiser too."""
    night.event = replace(night.event, alarm=replace(night.event.alarm, grace=timedelta(hours=3)))
    quietly_out(night)
    night.run("16:47", "19:54", lazily=True)
    yield from ("20:08", "20:38", "21:08", "21:38", "22:08", "22:38", "23:04")


def the_sweep_is_through(night: Night) -> Iterator[str]:
    """Crew and home at once; that she was seen before it ends it."""
    quietly_out(night)
    night.report(Kind.SWEEP_THROUGH, "18:50", point="chapel", **LENA)
    yield "18:50"
    night.report(Kind.THROUGH, "18:49", "vera", point="chapel", received=clock("18:55"))
    yield "18:55"


# --- help ----------------------------------------------------------------------------------------------


def she_calls_for_help(night: Night) -> Iterator[str]:
    """Everybody at once; she hears how it stands, those near that an alarm is open; in hand ends it."""
    quietly_out(night)
    night.report(Kind.ASKED_FOR_HELP, "17:20", words="broken ankle at 30 km", **HERSELF)
    yield "17:20"
    yield "17:25"
    night.answer(K.ASKED_FOR_HELP, "ana", "i have it", "17:26")
    yield "17:26"
    night.report(Kind.HELP_WORD, "17:28", "ana", words="doctor on the way")
    yield "17:28"
    night.report(Kind.HELP_WORD, "17:29", words="getting cold", **HERSELF)
    yield "17:29"
    yield "17:46"
    night.report(Kind.IN_HAND, "17:50", "ana")
    yield "17:50"


def help_called_by_another_and_taken_back(night: Night) -> Iterator[str]:
    """She hears who called; given back it goes to all others; taken back, all hear for whom it was."""
    quietly_out(night)
    night.report(
        Kind.ASKED_FOR_HELP, "17:20", "lena", source=Source.VOLUNTEER, point="mill", words="she fell"
    )
    yield "17:20"
    night.answer(K.ASKED_FOR_HELP, "jonas", "i have it", "17:22")
    night.tick("17:22")
    night.answer(K.ASKED_FOR_HELP, "jonas", "cannot", "17:24")
    yield "17:24"
    night.report(Kind.TAKEN_BACK, "17:30", "lena", about="e2", source=Source.VOLUNTEER)
    yield "17:30"


def help_for_nobody_named(night: Night) -> Iterator[str]:
    """A call without a name, once it is said that it is for her."""
    quietly_out(night)
    night.report(Kind.ASKED_FOR_HELP, "17:20", "ana", doubt="not-named", words="help")
    yield "17:20"
    night.report(Kind.CONFIRMED, "17:22", "ana", about="e2")
    yield "17:22"


# --- her race is over ------------------------------------------------------------------------------------


def she_retires(night: Night) -> Iterator[str]:
    """All hear; who fetches her and who tells race control are asked until it is done; somebody goes, somebody has her."""
    quietly_out(night)
    night.report(Kind.RETIRED, "17:30", how=Retired.OWN_CHOICE, point="mill", words="knee", **LENA)
    yield "17:30"
    yield "17:50"
    night.answer(K.RETIRED, "ana", "i go", "17:51")
    yield "17:51"
    night.report(Kind.RACE_CONTROL_TOLD, "17:55", "sasha")
    yield "18:31"
    night.report(Kind.IN_HAND, "18:35", "ana")
    yield "18:35"
    night.report(Kind.TAKEN_BACK, "18:40", "ana", about="e4")
    yield "18:40"


def nobody_fetches_her(night: Night) -> Iterator[str]:
    """Who can't is asked no more; after an hour home is asked as by an alarm; then it was a mistake."""
    quietly_out(night)
    night.report(Kind.RETIRED, "17:30", how=Retired.WITHDRAWN, **HERSELF)  # fmt: skip
    night.tick("17:30")
    night.answer(K.RETIRED, "ana", "cannot", "17:35")
    yield "17:35"
    yield "17:50"
    yield "18:30"
    yield "18:50"
    night.report(Kind.TAKEN_BACK, "18:55", about="e2", **HERSELF)
    yield "18:55"


def past_a_cut_off(night: Night) -> Iterator[str]:
    """In at Chapel after 21:00: told to all, asked of those who can find out, and what follows if she is let go on."""
    quietly_out(night)
    night.report(Kind.CREW_THERE, "20:00", "ana", runner=None, point="chapel")
    night.run("16:47", "20:59", lazily=True)
    night.report(Kind.IN, "21:08", "ana", point="chapel")
    yield "21:08"
    yield "21:28"
    night.answer(K.PAST_CUT_OFF, "olga", "goes on", "21:30")
    yield "21:30"


def not_reported_out_by_a_cut_off(night: Night) -> Iterator[str]:
    """In at Mill before it closes and nobody has reported her out: asked ten minutes later."""
    course = night.event.courses[0]
    cut = CutOff(Edge.OUT, elapsed=timedelta(hours=2, minutes=36))
    points = tuple(replace(p, cut_offs=(cut,)) if p.id == "mill" else p for p in course.points)
    night.event = replace(night.event, courses=(replace(course, points=points),))
    night.report(Kind.IN, "16:34", "ana", point="mill")
    night.tick("16:34")
    yield "16:45"
    yield "16:46"
    night.report(Kind.OUT, "16:35", "ana", point="mill", received=clock("16:50"))
    yield "16:50"


# --- the race ---------------------------------------------------------------------------------------------


def the_organiser_changes_the_race(night: Night) -> Iterator[str]:
    """Each change to those it concerns, with what it was; taken back, to those who were told."""
    night.report(Kind.START_DELAYED, "13:00", amount=timedelta(minutes=30), words="fog", **OLGA)
    yield "13:00"
    night.report(Kind.CUT_OFF_MOVED, "15:00", point="chapel", edge="in", until=clock("22:00"), **OLGA)
    yield "15:00"
    night.report(Kind.REROUTED, "15:10", words="round the quarry", **OLGA)
    yield "15:10"
    night.report(Kind.HELD, "15:20", words="thunder", point="mill", until=clock("15:50"), **OLGA)
    yield "15:20"
    night.report(Kind.TAKEN_BACK, "15:25", about="e3", **OLGA)
    yield "15:25"
    yield "15:50"
    night.report(Kind.RACE_ENDED_EARLY, "18:00", words="storm", **OLGA)
    yield "18:00"


# --- who goes -----------------------------------------------------------------------------------------------


def the_van_breaks_down(night: Night) -> Iterator[str]:
    """Who could go is asked, the others hear; in ten minutes she and home; somebody takes it; taken back."""
    night.tick("13:00")
    night.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.CAR, words="the van broke down")
    yield "14:30"
    yield "14:40"
    night.report(Kind.TAKES_OVER, "14:45", "vera", about="mill-maren")
    yield "14:45"
    night.report(Kind.TAKEN_BACK, "15:00", "ana", about="e1")
    yield "15:00"


def a_pacer_who_is_with_her_can_not_go_on(night: Night) -> Iterator[str]:
    """Two people are out there: all hear at once."""
    quietly_out(night, "moss", "23:10")
    night.report(Kind.CANNOT_COME, "24:00", "tomas", why=Why.OWN_SAFETY, words="twisted knee")
    yield "24:00"


def the_pacer_does_not_come(night: Night) -> Iterator[str]:
    """Before Moss: those who meet her before it hear it in time, and she."""
    quietly_out(night)
    night.report(Kind.CANNOT_COME, "18:00", "tomas", why=Why.PACER)
    yield "18:00"
    yield "18:10"


def somebody_else_says_that_they_can_not_come(night: Night) -> Iterator[str]:
    """Vera writes that Ana is ill: Ana hears it, with a button to go all the same; the rest of the crew and home as well."""
    night.tick("13:00")
    night.report(Kind.CANNOT_COME, "13:30", "vera", person="ana", why=Why.OWN_SAFETY, words="fever")
    yield "13:30"
    yield "13:40"
    night.answer(K.UNCOVERED, "vera", "cannot", "13:45")
    yield "13:45"
    night.report(Kind.CAN_COME, "13:50", "ana")
    yield "13:50"


def the_race_is_ended_from_a_point_on(night: Night) -> Iterator[str]:
    """From Chapel on: the meeting there still holds, nobody is sent to one after it."""
    out_of_mill(night)
    night.report(Kind.RACE_ENDED_EARLY, "17:05", point="chapel", words="storm", **OLGA)
    yield "17:05"
    yield "17:15"
    yield "17:40"
    yield "18:50"


def words_for_others(night: Night) -> Iterator[str]:
    """Passed on as written; a swap asked and refused; a reminder; a wish to hear of her; each taken back or done."""
    night.tick("13:00")
    night.report(Kind.PASSED_ON, "14:30", "sasha", runner=None, to="ana", words="take the blue jacket")
    night.report(Kind.ASKED_TO_SWAP, "14:31", "ana", to="vera", about="mill-maren", words="can you?")
    night.report(Kind.REMIND, "14:32", "jonas", runner=None, until=clock("15:00"), words="charge the phone")
    night.report(Kind.REMIND, "14:33", "piet", about="maren", point="mill", edge="in", words="tell me")
    yield "14:33"
    night.answer(K.SWAP, "vera", "cannot", "14:40")
    yield "14:40"
    night.report(Kind.TAKEN_BACK, "14:50", "sasha", about="e1", runner=None)
    yield "15:00"
    night.report(Kind.IN, "16:40", point="mill", **LENA)
    yield "16:40"


# --- ourselves --------------------------------------------------------------------------------------------


def before_the_start(night: Night) -> Iterator[str]:
    """The test alarm to all on the ladder, again to the silent, then the organiser hears who they are."""
    yield "01:59"
    yield "02:00"
    night.answer(K.TEST_ALARM, "sasha", "ok", "08:00")
    yield "12:00"
    yield "13:00"


def we_were_down(night: Night) -> Iterator[str]:
    """A channel over which people report is down: the organiser after two minutes, home after half an hour, all told
    when it is over."""
    quietly_out(night)
    night.downs = (Down("channel:telegram", clock("17:00"), None),)
    yield "17:01"
    yield "17:02"
    yield "17:30"
    night.downs = (Down("channel:telegram", clock("17:00"), clock("17:40")),)
    yield "17:40"


def no_channel_reaches_somebody(night: Night) -> Iterator[str]:
    """The organiser hears it once."""
    night.tick("14:30")
    night.tick("14:45")
    night.made = [
        replace(m, failed=True, sent_at=None) if m.notice.key.person == "ana" else m for m in night.made
    ]
    yield "14:46"


SCENES: dict[str, Scene] = {
    s.__name__: s
    for s in (
        half_an_hour_before_the_leave_by, a_sleeper_is_woken, before_signal_is_lost, a_meeting_that_can_not_be_made,
        a_fact_moves_the_next_meeting, in_and_out, in_at_the_finish, how_she_is, she_rests, a_doubtful_report,
        said_to_have_retired, somebody_has_her, odds_of_a_cut_off,
        a_report_confirmed_later, somebody_has_her_at_night, the_chat_of_the_crew, given_back_halfway_up,
        who_was_to_ring_does_not_answer, two_alarms_of_which_one_waits, somebody_else_says_that_they_can_not_come,
        the_race_is_ended_from_a_point_on, late_then_overdue, her_race_has_rather_ended, an_alarm_is_held,
        crew_wait_in_vain, crew_do_not_answer, the_sweep_is_through, she_calls_for_help,
        help_called_by_another_and_taken_back, help_for_nobody_named, she_retires, nobody_fetches_her, past_a_cut_off,
        not_reported_out_by_a_cut_off, the_organiser_changes_the_race, the_van_breaks_down,
        a_pacer_who_is_with_her_can_not_go_on, the_pacer_does_not_come, words_for_others, before_the_start,
        we_were_down, no_channel_reaches_somebody,
    )
}  # fmt: skip


def main() -> None:
    """Writes the file anew."""
    texts = [f"== {name}\n{written(scene)}\n" for name, scene in SCENES.items()]
    FILE.write_text("\n" + "".join(texts), encoding="utf-8")


if __name__ == "__main__":
    main()
