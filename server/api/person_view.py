"""One person's view of everything at one moment: the only way by which a conversation knows anything, and the same
functions that answer the calls of the API. Asked for more than the person's parts allow, it refuses.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime

from server.api import answers, board, help_now, meeting_answers, planned
from server.api.ask import not_yours
from server.api.crew_location import due_at, own_by_now, stands_at, waits_at
from server.api.envelope import ApiError
from server.api.replies import ButtonOut, NoticeOut, Notices
from server.api.snapshot import Picture, suppose
from server.api.who_may import Call, May, may
from server.api.written import written as lines_written
from server.conversation.telling.answer import (
    AlarmNowAnswer,
    CardsAnswer,
    CutOffsAnswer,
    EventHere,
    FactsAnswer,
    ForecastAnswer,
    KitAnswer,
    LogAnswer,
    MeAnswer,
    MissedAnswer,
    NextAnswer,
    PeopleAnswer,
    PlanAnswer,
    PointHere,
    RunnerHere,
    Written,
)
from server.conversation.telling.answers import LIKELY_GONE_ON
from server.conversation.telling.message import Rows
from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import reader_in
from server.event.model import Event, Person
from server.facts.awaiting import awaited
from server.facts.requests import quiet_until, reminders
from server.facts.state import Going
from server.watch.notice import Made, NoticeKind, PassedOnValues, UnnamedHelpValues
from server.watch.waiting import changeable, waiting


class PersonView:
    """See `server.conversation.view.View`; `pictures` of every event the person has a part in."""

    def __init__(self, now: datetime, person: Person | None, pictures: Mapping[str, Picture]) -> None:
        self._now, self._person, self._pictures = now, person, pictures
        self._me: MeAnswer | None = None

    @property
    def now(self) -> datetime:
        """The moment it is of."""
        return self._now

    def renew(self, newer: PersonView) -> None:
        """Become the view of a later moment, for whoever holds this one."""
        self._now, self._person, self._pictures = newer._now, newer._person, newer._pictures
        self._me = None

    def me(self) -> MeAnswer:
        """Who writes, and the events they have a part in, those still running first."""
        if self._person is None:
            raise ApiError("no_address", "nobody is bound to that address", "Acting-Address")
        if self._me is None:
            events = [event_here(p, self._person.id) for p in self._pictures.values()]
            events.sort(
                key=lambda e: (
                    all(Going(r.going).no_longer_watched for r in e.runners),
                    -e.starts.timestamp(),
                    e.id,
                )
            )
            self._me = MeAnswer(self._person, tuple(events))
        return self._me

    def forecast(
        self,
        event: str,
        runner: str,
        *,
        point: str | None = None,
        factor: float | None = None,
        leaving: datetime | None = None,
    ) -> ForecastAnswer:
        """Every point or one, or a what-if; where the asker waits."""
        picture, share = self._of(event, Call.FORECAST, runner)
        supposes = (factor is not None or leaving is not None) and share is May.YES
        supposed = suppose(picture, runner, factor, leaving) if supposes else None
        found = answers.forecast(picture, runner, share, point, supposed)
        return replace(found, asker_at=waits_at(picture, runner, self._own))

    def where(self, event: str, runner: str) -> ForecastAnswer:
        """The last fact and the estimate."""
        picture, share = self._of(event, Call.WHERE, runner)
        return answers.whereabouts(picture, runner, share)

    def next(self, event: str, runner: str, point: str | None = None) -> NextAnswer:
        """The next meetings."""
        picture, _ = self._of(event, Call.NEXT, runner)
        return meeting_answers.next_meetings(picture, runner, self._own, point)

    def missed(self, event: str, runner: str, point: str | None) -> MissedAnswer:
        """Has she been through, and wait or go."""
        picture, _ = self._of(event, Call.MISSED, runner)
        return meeting_answers.missed(picture, runner, point, self._own)

    def kit(self, event: str, runner: str, point: str | None) -> KitAnswer:
        """What to have ready."""
        picture, _ = self._of(event, Call.KIT, runner)
        return meeting_answers.kit(picture, runner, point, self._own)

    def plan(self, event: str, runner: str) -> PlanAnswer:
        """The timetable and what became of it."""
        picture, share = self._of(event, Call.PLAN, runner)
        return planned.plan(picture, runner, share)

    def facts(self, event: str, runner: str) -> FactsAnswer:
        """What has been reported, nothing else."""
        picture, _ = self._of(event, Call.FACTS, runner)
        return answers.facts(picture, runner)

    def log(self, event: str, runner: str) -> LogAnswer:
        """The stop log; to who may see it only as a medic, once they have said that they are one."""
        picture, share = self._of(event, Call.SEE_LOG, runner)
        return answers.stop_log(picture, runner, self._own, share)

    def alarm(self, event: str, runner: str) -> AlarmNowAnswer:
        """What to do about an open alarm."""
        picture, share = self._of(event, Call.ALARM, runner)
        return help_now.alarm_answer(picture, runner, self._own, share)

    def cut_offs(self, event: str, runner: str) -> CutOffsAnswer:
        """Those to come and their odds; when crew access closes."""
        picture, _ = self._of(event, Call.CUT_OFFS, runner)
        found = planned.cut_offs(picture, runner)
        return replace(found, doors=meeting_answers.doors(picture, runner))

    def cards(self, event: str, runner: str) -> CardsAnswer:
        """The prepared answers to trouble."""
        picture, share = self._of(event, Call.CARDS, runner)
        return planned.cards(picture.event, share, reader_in(picture.event, self._own).language)

    def people(self, event: str) -> PeopleAnswer:
        """Who does what now, and the numbers."""
        picture, share = self._of(event, Call.BOARD)
        return board.people(picture, share)

    def written(self, event: str) -> tuple[Written, ...]:
        """The free text of the event file, line by line."""
        picture, _ = self._of(event, None)
        return lines_written(picture.event, picture.event.parts_of(self._own))

    def notices(self, event: str) -> Notices:
        """The person's own, worded for them."""
        picture, _ = self._of(event, None)
        return Notices(notices_of(picture, self._own))

    @property
    def _own(self) -> str:
        return self._person.id if self._person is not None else ""

    def _of(self, event: str, call: Call | None, runner: str | None = None) -> tuple[Picture, May]:
        """The picture of an event, and how far the person may go with that call; ApiError where they may not."""
        picture = self._pictures.get(event)
        parts = picture.event.parts_of(self._own) if picture is not None else ()
        if picture is None or not [p for p in parts if runner is None or p.runner in (None, runner)]:
            raise not_yours(call)
        share = may(parts, call, runner) if call is not None else May.YES
        if share is May.NO:
            raise not_yours(call)
        if runner is not None and runner not in {r.id for r in picture.event.runners}:
            raise ApiError("not_found", f"the event has no runner '{runner}'", "runner")
        return picture, share


def event_here(picture: Picture, person: str) -> EventHere:
    """An event as its members know it: what a person is in it, and what waits for their answer."""
    event = picture.event
    mine = event.parts_of(person)
    runners = tuple(
        _runner_here(picture, r.id, may(mine, Call.FACTS, r.id), person)
        for r in event.runners
        if any(p.runner in (None, r.id) for p in mine)
    )
    open_ones = waiting(picture.situation.made, picture.now)
    owed = (m for m in picture.situation.made if m.notice.key.person == person and m.short in open_ones)
    return EventHere(
        id=event.id,
        name=event.name,
        time_zone=event.time_zone,
        starts=event.starts,
        parts=mine,
        runners=runners,
        race_control=event.race_control,
        emergency_number=event.emergency_number,
        open_notices=tuple(m.short for m in owed),
        people=tuple((p.id, p.name) for p in event.people) if may(mine, Call.PHONES) is May.YES else (),
        rescue=event.rescue,
        stands=stands_at(picture, person),
        quiet_until=quiet_until(picture.state, person, picture.now),
        reminders=reminders(picture.state, person, picture.now),
        awaited=awaited(picture.state, picture.event, person, picture.now),
        rules=event.rules,
        may_change=may(mine, Call.CHANGE) is May.YES,
        asked_back=_asked_back(picture, person),
    )


def _asked_back(picture: Picture, person: str) -> str:
    """The runner of whose race somebody was asked what was well, wrong and to be changed; the last, if of several."""
    keys = (m.notice.key for m in picture.situation.made)
    return next(
        (k.runner for k in reversed(tuple(keys)) if (k.kind, k.person) == (NoticeKind.LOOK_BACK, person)), ""
    )


def _runner_here(picture: Picture, runner: str, share: May, person: str) -> RunnerHere:
    """A runner with her points; where she is only for those who may see what was reported."""
    event, state = picture.event, picture.state.runner(runner)
    r = event.runner(runner)
    beside = tuple(dict.fromkeys(s.name for s in event.course_of(runner).stretches if s.name))
    points = tuple(
        PointHere(
            p.id,
            p.name,
            p.km or 0.0,
            p.also,
            p.crew_access,
            p.finish,
            p.signal.value,
            p.access.parking if p.access is not None else "",
            beside,
        )
        for p in event.course_of(runner).points
    )
    mine = help_now.on_it(picture, runner, person)
    knows = mine or may(event.parts_of(person), Call.ALARM, runner) is May.YES
    alarm = help_now.alarm_of(picture, runner) if knows else ""
    if share is not May.YES:
        return RunnerHere(r.id, r.name, r.bib, state.start, points, alarm=alarm, on_it=mine)
    reached = state.reached[-1] if state.reached else None
    at = reached if state.going is Going.AT_POINT else None
    due = due_at(picture, runner, person)
    own = own_by_now(picture, runner, person)
    gone_on = at is not None and picture.p_gone_on(runner) >= LIKELY_GONE_ON
    going = state.going.value
    return RunnerHere(
        r.id,
        r.name,
        r.bib,
        state.start,
        points,
        reached,
        at,
        going,
        due,
        own,
        alarm,
        mine,
        gone_on,
        r.clothing,
        r.torch,
        state.last_known.at if state.last_known else None,
    )


def notices_of(picture: Picture, person: str) -> tuple[NoticeOut, ...]:
    """A person's notices in one event, oldest first, worded for them."""
    open_ones = waiting(picture.situation.made, picture.now)
    again = changeable(picture.situation.made, picture.now)
    mine = (m for m in picture.situation.made if m.notice.key.person == person)
    return tuple(
        notice_out(m, picture.event, waits=m.short in open_ones, changes=m.short in again) for m in mine
    )


def notice_out(made: Made, event: Event, *, waits: bool, changes: bool = False) -> NoticeOut:
    """One notice in its person's words, as of when it was made; `waits`: an answer would still be about it;
    `changes`: another one would."""
    notice = made.notice
    message = say_notice(notice, event, reader_in(event, notice.key.person), made.made_at, short=made.short)
    return NoticeOut(
        short=made.short,
        event=event.id,
        kind=notice.key.kind.value,
        urgency=notice.urgency.value,
        text=message.text,
        buttons=buttons_out(message.buttons) if waits or changes or _may_be_judged(made) else (),
        made_at=made.made_at,
        needs_answer=waits,
        answered=made.answer,
        changeable=changes,
        answered_at=made.answered_at,
        picture=photo_path(made),
    )


def photo_path(made: Made) -> str:
    """Where the photo that goes with a notice is seen; '' for none."""
    v = made.notice.values
    if not isinstance(v, PassedOnValues) or not v.picture or v.taken_back:
        return ""
    return f"/v1/events/{made.notice.key.event}/photos/{v.picture}"


def _may_be_judged(made: Made) -> bool:
    """A doubtful report asks 'right or wrong' without owing an answer, until it has one; whoever holds a call for help
    that named nobody may end it."""
    values = made.notice.values
    if isinstance(values, UnnamedHelpValues) and values.holder == made.notice.key.person:
        return not values.over
    return made.answered_at is None and made.notice.key.kind is NoticeKind.UNCONFIRMED


def buttons_out(rows: Rows) -> tuple[tuple[ButtonOut, ...], ...]:
    """Rows of buttons as they travel."""
    return tuple(tuple(ButtonOut(b.label, b.data) for b in row) for row in rows)
