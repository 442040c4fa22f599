"""The watch's tables: each kind of notice, who may be told it, in which state of her race it may arise.

`evaluate` walks these tables: a notice that a rule proposes for a person or a state without a mark here is
not owed, whatever the rule thought. The docs draw their picture from them (server/watch/draw.py).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta

from server.event.model import Event, PartKind
from server.facts.state import Going
from server.watch.notice import Answer, NoticeKind, Urgency

__all__ = ["TABLE", "KindRow", "may_be_told", "row"]

_P, _G, _K, _U, _A = PartKind, Going, NoticeKind, Urgency, Answer

_ON_COURSE = frozenset(g for g in _G if g.on_course)
_BEFORE_OR_ON = _ON_COURSE | {_G.BEFORE_START}
_NOT_CLOSED = frozenset(Going) - {_G.CLOSED}
_ALWAYS = frozenset(Going)

_CREW = frozenset({_P.CREW, _P.PACER})
_CREW_HOME = _CREW | {_P.SAFETY_CONTACT}
_ALARMED = _CREW_HOME | {_P.ORGANISER}


@dataclass(frozen=True, slots=True)
class KindRow:
    """One kind of notice.

    `buttons` may be answered by; with `needs_answer` they must be, and somebody else hears where they are not.
    `told` are the parts that may get it; `arises` the states of her race in which it may be owed.
    `lasts` is how long after it was owed it is still of use, where the rule gives no moment. `own`: a
    person's own leave-now and what belongs to it, which neither choice nor quiet hours hold back.
    `waits`: serves only who is up, so that it waits for their morning also where it is of their own meeting: a sleeper is
    woken by the times as they then stand. `joins`: may wait a minute for others to the same person, to become one message
    with them. `group`: concerns all, and is told to the crew's group chats as well (groups.py). `racing`: serves only a
    race that goes on: no more once the organiser has ended it there. `routine`: of no use to anybody while a call for help
    about her is open.
    """

    kind: NoticeKind
    urgency: Urgency
    told: frozenset[PartKind]
    arises: frozenset[Going]
    owed_when: str
    over_when: str
    lasts: timedelta | None = None
    needs_answer: bool = False
    buttons: tuple[Answer, ...] = ()
    own: bool = False
    joins: bool = False
    waits: bool = False
    group: bool = False
    racing: bool = False
    routine: bool = False


def _hours(hours: float) -> timedelta:
    return timedelta(hours=hours)


_ROWS: tuple[KindRow, ...] = (
    KindRow(
        _K.LEAVE_SOON,
        _U.ACTION,
        _CREW,
        _BEFORE_OR_ON,
        "half an hour before the leave-by, to those who have not left and were not woken for it",
        "leave now, they have left or are there",
        buttons=(_A.LEAVING, _A.CANNOT),
        own=True,
        joins=True,
        racing=True,
        routine=True,
    ),
    KindRow(
        _K.LEAVE_NOW,
        _U.ACTION,
        _CREW,
        _BEFORE_OR_ON,
        "five minutes before the leave-by",
        "one of the crew answers, has left or is there",
        needs_answer=True,
        buttons=(_A.LEAVING, _A.CANNOT),
        own=True,
        racing=True,
        routine=True,
    ),
    KindRow(
        _K.BE_THERE,
        _U.ACTION,
        _CREW,
        _BEFORE_OR_ON,
        "no confirmed drive: an hour and the estimated drive before 'be there from'",
        "she has left the point",
        buttons=(),
        own=True,
        racing=True,
        routine=True,
    ),
    KindRow(
        _K.WAKE_UP,
        _U.ACTION,
        _CREW,
        _BEFORE_OR_ON,
        "asleep by quiet hours: half an hour before leave now",
        "one of the crew answers 'awake'",
        needs_answer=True,
        buttons=(_A.AWAKE, _A.CANNOT),
        own=True,
        racing=True,
        routine=True,
    ),
    KindRow(
        _K.BRIEF,
        _U.ACTION,
        _CREW,
        _BEFORE_OR_ON,
        "half an hour before the leave-by to a point without signal, or once they have left for it, whichever is sooner",
        "they are there",
        own=True,
        joins=True,
        racing=True,
        routine=True,
    ),
    KindRow(
        _K.MOVE_ON,
        _U.ACTION,
        _CREW,
        _ON_COURSE,
        "she has very likely gone by unseen, or the place closes, or another car stays for her",
        "an hour later",
        _hours(1),
        racing=True,
        routine=True,
    ),
    KindRow(
        _K.STAY,
        _U.ACTION,
        _CREW,
        _ON_COURSE,
        "she is late and unheard of, or looked for, and crew who should be at a point ahead of her would go on by now: who "
        "stays, and who may go; once a silence",
        "she is heard of",
        _hours(6),
        racing=True,
    ),
    KindRow(
        _K.WINDOW_MOVED,
        _U.ACTION,
        _CREW,
        _BEFORE_OR_ON,
        "a fact moved leave-by or be-there of their next meeting by a quarter of an hour, they are not "
        "on the way",
        "they have left",
        _hours(1),
        joins=True,
        waits=True,
        racing=True,
        routine=True,
    ),
    KindRow(
        _K.MEETING_LOST,
        _U.ACTION,
        _CREW,
        _BEFORE_OR_ON,
        "the meeting can't be made",
        "two hours later",
        _hours(2),
        joins=True,
        waits=True,
        racing=True,
        routine=True,
    ),
    KindRow(
        _K.UNCOVERED,
        _U.ACTION,
        _ALARMED | {_P.RUNNER},
        _BEFORE_OR_ON,
        "somebody fell out of a meeting and nobody goes, or kit or pacer will not be there: crew, pacers and home at once, "
        "those who could take it over with a button; home, organisers, she and those who meet her before once nobody can, "
        "or nobody has in ten minutes; only the others of the car where they go all the same",
        "somebody takes it over, or she has been there",
        own=True,
        group=True,
        racing=True,
    ),
    KindRow(
        _K.COVERED,
        _U.ACTION,
        _ALARMED | {_P.RUNNER},
        _BEFORE_OR_ON,
        "somebody takes an uncovered meeting over, or who fell out comes again: all who were told that it is open",
        "she has been there",
        own=True,
        group=True,
        racing=True,
    ),
    KindRow(
        _K.NEW_VERSION,
        _U.ACTION,
        frozenset(_P) - {_P.SUPPORTER},
        _ALWAYS,
        "a new version of the event file is loaded once something has been reported: to each person whose meetings, kit or "
        "place it changed, old and new",
        "six hours later",
        _hours(6),
        own=True,
    ),
    KindRow(
        _K.ARRIVED,
        _U.NEWS,
        _CREW,
        _ON_COURSE,
        "she is in at the point of their meeting",
        "a later fact",
        _hours(0.75),
        joins=True,
        routine=True,
    ),
    KindRow(
        _K.LEFT,
        _U.NEWS,
        _CREW,
        _ON_COURSE,
        "she is out of the point before their meeting",
        "a later fact",
        _hours(0.75),
        joins=True,
        routine=True,
    ),
    KindRow(
        _K.WORD_OF_HER,
        _U.NEWS,
        _ALARMED,
        _ALWAYS,
        "somebody wrote how she is, or that she rests: to the crew of her next meeting and her pacer until her race is "
        "over; while an alarm is open also, as an alarm, to its holder and the safety contact",
        "she is in at that meeting's point",
        _hours(6),
        joins=True,
        routine=True,
    ),
    KindRow(
        _K.CUT_OFF_ODDS,
        _U.NEWS,
        _CREW,
        _ON_COURSE,
        "the odds of a cut-off within six hours cross 80, 50 or 20%",
        "the cut-off, or she is through",
        _hours(1),
        joins=True,
        racing=True,
        routine=True,
    ),
    KindRow(
        _K.BEFORE_DARK,
        _U.ACTION,
        _CREW | {_P.RUNNER},
        _ON_COURSE,
        "by the last sighting she has one chance in ten or more of the dark before her torch: those who meet her until "
        "then, and she; four hours before the dark, or three before the last meeting in the light; once a place of it",
        "she is in where it waits",
        own=True,
        racing=True,
        routine=True,
    ),
    KindRow(
        _K.LATE,
        _U.ACTION,
        _CREW | {_P.VOLUNTEER},
        _ON_COURSE,
        "now is past the 90% time as it stood at the last fact; not while runners are held. Asked are those who could "
        "know: who is at the point by their own word, its volunteers, the crew of the meeting there unless they are "
        "elsewhere; else the crew of the next meeting; a pacer with her besides; else the rest of the crew",
        "anything is heard",
        _hours(3),
        needs_answer=True,
        buttons=(_A.YES, _A.NOT_YET, _A.NOBODY),
        routine=True,
    ),
    KindRow(
        _K.STANDS,
        _U.ACTION,
        _CREW_HOME,
        frozenset({_G.MOVING, _G.AT_POINT}),
        "her tracker's fixes have come from one spot for longer than 9 in 10 stops: a pacer with her and the crew of her "
        "next meeting; than 99 in 100: the safety contact; not where a rest was told or she is known to be at that point",
        "it moves, or she is heard of",
        _hours(2),
    ),
    KindRow(
        _K.LATE_HOME,
        _U.ACTION,
        frozenset({_P.SAFETY_CONTACT}),
        _ON_COURSE,
        "half an hour past the 90% time as it stood when she was last seen, and unheard of; a quarter of an hour before "
        "the alarm where that comes sooner; once, not while runners are held or an alarm is open",
        "anything is heard of her, or the alarm",
        _hours(6),
        routine=True,
    ),
    KindRow(
        _K.OVERDUE,
        _U.ALARM,
        _ALARMED,
        _ON_COURSE,
        "P(not heard by now | still going) under the alarm line, or by what nobody has reported her race has rather ended "
        "than not, or the race is over or she was said not to be where she surely would have been; and grace over since "
        "she was late",
        "confirmed sighting or stand-down",
        needs_answer=True,
        buttons=(_A.ON_IT, _A.CANNOT),
    ),
    KindRow(
        _K.ASKED_FOR_HELP,
        _U.ALARM,
        _ALARMED,
        _ALWAYS,
        "she, or somebody for her, asked for help; also once her race is closed",
        "in hand, stand-down, or taken back",
        needs_answer=True,
        buttons=(_A.ON_IT, _A.CANNOT),
    ),
    KindRow(
        _K.SWEEP,
        _U.ALARM,
        _ALARMED,
        _ON_COURSE,
        "the sweep is through a point where she was not seen",
        "confirmed sighting or stand-down",
        needs_answer=True,
        buttons=(_A.ON_IT, _A.CANNOT),
    ),
    KindRow(
        _K.LOOK_AGAIN,
        _U.ALARM,
        _ALARMED,
        _ALWAYS,
        "the look-again time after somebody took the alarm",
        "stand-down",
        needs_answer=True,
        buttons=(_A.SEEN, _A.STILL_MISSING, _A.CANNOT),
    ),
    KindRow(
        _K.HANDED_ON,
        _U.ALARM,
        _ALARMED,
        _ALWAYS,
        "nobody answered the step before; or somebody took the alarm",
        "somebody answers, stand-down",
        needs_answer=True,
        buttons=(_A.ON_IT, _A.CANNOT),
    ),
    KindRow(
        _K.HELP_NOT_NAMED,
        _U.ALARM,
        _ALARMED,
        _ALWAYS,
        "somebody with many runners calls for help and does not say for which: organisers, those at home, everybody "
        "an alarm may climb to; again every answer time, then every look-again time, until one has it",
        "it is said for whom, or the call is taken back",
        needs_answer=True,
        buttons=(_A.ON_IT, _A.CANNOT),
    ),
    KindRow(
        _K.CALL_BACK,
        _U.ALARM,
        frozenset(_P),
        _ALWAYS,
        "to whoever called for help, and to her: once it is taken, given back or not answered any more; 5, 10 and 20 "
        "minutes after the call and every 20 minutes while nobody has it; that it is over",
        "a later one",
        _hours(1),
    ),
    KindRow(
        _K.MEANWHILE,
        _U.ALARM,
        frozenset(_P),
        _ALWAYS,
        "words, a place or a sighting come in while a call for help is open: to its holder, those asked and the safety "
        "contact; what the holder writes also to the caller and to her",
        "the call is over",
        _hours(6),
    ),
    KindRow(
        _K.ALARM_KNOWN,
        _U.ALARM,
        _ALARMED,
        _ALWAYS,
        "after the alarm, apart: to who is to call race control, and to who has taken it",
        "the alarm is over",
    ),
    KindRow(
        _K.READ_OUT,
        _U.ALARM,
        _ALARMED,
        _ALWAYS,
        "after that, on its own: what to read out to rescuers",
        "the alarm is over",
    ),
    KindRow(
        _K.ALARM_NEWS,
        _U.NEWS,
        _CREW | {_P.VOLUNTEER},
        _ALWAYS,
        "an alarm about her is open, and they are not asked: crew elsewhere, pacers who wait, who is posted at her last "
        "point and the next two; once, those further up the ladder when somebody has it",
        "the alarm is over",
        _hours(6),
    ),
    KindRow(
        _K.STAND_DOWN,
        _U.ALARM,
        _ALARMED | {_P.VOLUNTEER},
        _ALWAYS,
        "an alarm is over: to all who were told of it",
        "at once",
        _hours(12),
        joins=True,
        group=True,
    ),
    KindRow(
        _K.RETIRED,
        _U.ACTION,
        _ALARMED | {_P.SUPPORTER, _P.RUNNER},
        frozenset(g for g in _G if g.race_over) - {_G.FINISHED},
        "she has retired: one person is asked to fetch her, the nearest car first, the others and she are told; that "
        "somebody goes; again every look-again time until she is with somebody and race control knows",
        "in hand and race control knows",
        own=True,
    ),
    KindRow(
        _K.PAST_CUT_OFF,
        _U.ACTION,
        _ALARMED | {_P.RUNNER},
        _ON_COURSE | {_G.FINISHED},
        "by what was reported she is in or out of a point after its cut-off, still there, or certainly not in by it; again "
        "every look-again time, three times in all, to those who find out what race control says",
        "she is seen farther on, is said to go on, or retires",
        own=True,
    ),
    KindRow(
        _K.IN_HAND,
        _U.ACTION,
        _CREW_HOME,
        _BEFORE_OR_ON,
        "somebody has her who has not retired, and no alarm ends by it: home and crew, whom nobody sends to her meetings "
        "meanwhile; twenty minutes before that word is too old to go by whoever gave it is asked whether she is still there",
        "six hours later",
        _hours(6),
        own=True,
    ),
    KindRow(
        _K.FINISHED,
        _U.NEWS,
        _CREW_HOME | {_P.SUPPORTER},
        frozenset({_G.FINISHED, _G.CLOSED}),
        "she is in at the finish; crew again every look-again time until they have her",
        "crew have her",
        group=True,
    ),
    KindRow(
        _K.RACE_CHANGE,
        _U.ACTION,
        frozenset(_P) - {_P.ORGANISER, _P.SUPPORTER},
        _NOT_CLOSED,
        "the organiser changed the race for them",
        "six hours later",
        _hours(6),
        joins=True,
        group=True,
    ),
    KindRow(
        _K.CORRECTION,
        _U.ACTION,
        _ALARMED | {_P.RUNNER, _P.VOLUNTEER, _P.SUPPORTER},
        _ALWAYS,
        "what this person was told has been corrected or taken back",
        "twelve hours later",
        _hours(12),
        own=True,
        group=True,
    ),
    KindRow(
        _K.UNCONFIRMED,
        _U.NEWS,
        _CREW | {_P.ORGANISER, _P.SAFETY_CONTACT, _P.RUNNER},
        _ALWAYS,
        "a report has waited two minutes for somebody's word; the safety contact only while an alarm is open; at once, "
        "and the safety contact too, where she is not looked for because she 'did not start', or where somebody was told "
        "by another that she has retired: that is asked of herself as well",
        "confirmed or taken back",
        _hours(2),
        buttons=(_A.RIGHT, _A.WRONG),
        own=True,
        joins=True,
    ),
    KindRow(
        _K.PASSED_ON,
        _U.NEWS,
        frozenset(_P) - {_P.SUPPORTER},
        _ALWAYS,
        "somebody wants something told to this person, or a meeting of theirs held elsewhere; in their sleep only where "
        "they have to set out soon",
        "told, or twelve hours later",
        _hours(12),
    ),
    KindRow(
        _K.SWAP,
        _U.ACTION,
        _CREW_HOME | {_P.ORGANISER},
        _ALWAYS,
        "somebody asks this person to take a meeting of theirs over; that they can't, to who asked",
        "taken over, refused, or she has been there",
        needs_answer=True,
        buttons=(_A.I_GO, _A.CANNOT),
        waits=True,
    ),
    KindRow(
        _K.REMINDER,
        _U.ACTION,
        frozenset(_P),
        _ALWAYS,
        "at the time at which a person wanted to be reminded or woken; once she is in or out where they wanted to hear of "
        "it, or can't be any more",
        "told, or two hours later",
        _hours(2),
        own=True,
    ),
    KindRow(
        _K.LOOK_BACK,
        _U.NEWS,
        _CREW_HOME | {_P.RUNNER},
        frozenset(g for g in _G if g.race_over),
        "twelve hours after her race was over",
        "told, or two days later",
        _hours(48),
    ),
    KindRow(
        _K.TEST_ALARM,
        _U.ALARM,
        _ALARMED,
        frozenset({_G.BEFORE_START}),
        "twelve hours before the start, again two hours before to those who did not answer",
        "answered, or an hour before the start",
        needs_answer=True,
        buttons=(_A.ON_IT,),
    ),
    KindRow(
        _K.UNREACHED,
        _U.ACTION,
        _ALARMED,
        _ALWAYS,
        "a leave-now or wake-up not answered in five minutes: the other crew, then who can telephone; a late "
        "question not answered by the crew at the point in half an hour: the safety contact; the "
        "organiser where no channel reaches a person or nobody answered",
        "they answer",
        own=True,
    ),
    KindRow(
        _K.OUTAGE,
        _U.ACTION,
        frozenset({_P.ORGANISER, _P.SAFETY_CONTACT}),
        _ALWAYS,
        "our own server or channels were down for two minutes or more",
        "told",
        _hours(24),
        own=True,
    ),
)

TABLE: Mapping[NoticeKind, KindRow] = {r.kind: r for r in _ROWS}
"""Every kind's row; a test holds that none is missing."""


def row(kind: NoticeKind) -> KindRow:
    """The row of a kind."""
    return TABLE[kind]


def may_be_told(event: Event, runner: str, person: str, kind: NoticeKind) -> bool:
    """Whether a person's parts (for that runner; '' = for anyone) let them be told this kind.

    Whoever is given a step of the ladder, or the call to race control, is told of alarms whatever their part.
    """
    rule = TABLE[kind]
    parts = [p for p in event.parts_of(person) if not runner or p.runner in (None, runner)]
    if any(p.kind in rule.told for p in parts):
        return True
    return rule.urgency is Urgency.ALARM and any(p.ladder is not None or p.calls_race_control for p in parts)
