"""The first sentence of the page: what its reader does next and when, with the one button that belongs to it.

By part: crew and pacers their next meeting, a runner her next point, a volunteer who is still to come, everybody else how
it stands. What waits for an answer lends its own buttons, so that a press here is the same as one in the chat.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import timedelta

from server.api import answers, meeting_answers
from server.api.snapshot import Picture
from server.api.who_may import Call, May, may
from server.conversation.telling import times
from server.conversation.telling.answer import MeetingAnswer, PointAnswer
from server.conversation.telling.message import Press, Rows, data, event_mark, tag
from server.conversation.telling.news import lost_words
from server.conversation.telling.notices import answer_buttons
from server.event.model import Part, PartKind
from server.facts.state import Going
from server.forecast.outlook import Window
from server.pages.view import Pen
from server.sentences import sentence
from server.watch.notice import AlarmValues, Made, NoticeKind
from server.watch.waiting import waiting

SOON = timedelta(minutes=60)
"""So long before a leave-by the button says that they are off (own choice); before that it asks what to bring."""
BUTTONS_MAX = 2
_WITH_HER = frozenset({PartKind.CREW, PartKind.PACER})
_HOME = frozenset({PartKind.SAFETY_CONTACT, PartKind.ORGANISER})
_SENDS = frozenset({NoticeKind.LEAVE_NOW, NoticeKind.LEAVE_SOON, NoticeKind.WAKE_UP})
"""Notices that send somebody off to a meeting."""


@dataclass(frozen=True, slots=True)
class PageButton:
    """A button of the page: `press` is what a button of the chat sends, or `say` the words somebody would write."""

    label: str
    press: str = ""
    say: str = ""


@dataclass(frozen=True, slots=True)
class First:
    """What to do next and when, and its buttons; `more` may be left unread. Empty text: nothing to say."""

    text: str
    more: str = ""
    buttons: tuple[PageButton, ...] = ()


def first(picture: Picture, person: str, parts: tuple[Part, ...], pen: Pen) -> First:
    """The first sentence for a person with those parts."""
    kinds = {p.kind for p in parts}
    if kinds & _WITH_HER:
        return _crew(picture, person, parts, pen)
    own = next((r.id for r in picture.event.runners if r.person == person), None)
    if own is not None and PartKind.RUNNER in kinds:
        return _runner(picture, own, pen)
    if kinds & _HOME:
        return _home(picture, parts, pen)
    if PartKind.VOLUNTEER in kinds:
        return _volunteer(picture, parts, pen)
    return _follows(picture, parts, pen)


def owed(picture: Picture, person: str, *, alarms: bool, about: str = "") -> tuple[Made, ...]:
    """What waits for that person's answer, the newest first: alarms, or all else; about one runner where she is named."""
    open_ones = waiting(picture.situation.made, picture.now)
    mine = (m for m in picture.situation.made if m.notice.key.person == person and m.short in open_ones)
    return tuple(
        m
        for m in reversed(tuple(mine))
        if isinstance(m.notice.values, AlarmValues) is alarms and about in ("", m.notice.key.runner)
    )


def buttons_of(made: Made, pen: Pen) -> tuple[PageButton, ...]:
    """The answers under a notice, as buttons of the page."""
    return tuple(_flat(answer_buttons(made.notice, pen.reader, made.short)))


def _flat(rows: Rows) -> Iterable[PageButton]:
    return (PageButton(b.label, press=b.data) for row in rows for b in row)


def due(pen: Pen, runner: str, window: Window) -> str:
    """When she is due, in a short sentence; of a window that is over what was expected."""
    early, likely, late = times.edges(window)
    if window.early == window.late and window.likely <= pen.now:
        return pen.word("first-there-since", runner=runner, when=pen.when(window.likely))
    if late <= pen.now:
        return pen.word("first-was-due", runner=runner, when=pen.when(likely))
    if likely <= pen.now or early <= pen.now:
        return pen.word("first-due-any-time", runner=runner, when=pen.when(late))
    return pen.word("first-due", runner=runner, when=pen.when(likely))


# -- crew and pacers ----------------------------------------------------------------------------------------


def _crew(picture: Picture, person: str, parts: tuple[Part, ...], pen: Pen) -> First:
    paced = _paced(picture, person, pen)
    if paced is not None:
        return paced
    mine = [
        m
        for r in picture.event.runners
        if may(parts, Call.NEXT, r.id) is May.YES
        for m in meeting_answers.next_meetings(picture, r.id, person).meetings
        if m.mine
    ]
    mine.sort(key=lambda m: m.values.be_there)
    if not mine:
        follows = _follows(picture, parts, pen)
        return First(pen.word("first-no-meeting"), follows.text)
    m = mine[0]
    return First(
        _meeting(m, pen), _then(m, mine[1:], pen), _crew_buttons(picture, person, m, pen)[:BUTTONS_MAX]
    )


def _paced(picture: Picture, person: str, pen: Pen) -> First | None:
    """For a pacer who has set out with her by the plan: where they run to, and the next point with its button."""
    legs = [
        p for p in picture.event.parts_of(person) if p.kind is PartKind.PACER and p.pace_from and p.pace_to
    ]
    for leg in legs:
        for r in picture.event.runners if leg.runner is None else (picture.event.runner(leg.runner),):
            order = [p.id for p in picture.event.course_of(r.id).points]
            state, ahead = picture.state.runner(r.id), next_point(picture, r.id, May.YES)
            if leg.pace_from not in order or not state.reached or ahead is None or ahead.window is None:
                continue
            last, begins, ends = (
                order.index(x or "") for x in (state.reached[-1], leg.pace_from, leg.pace_to)
            )
            if last < begins or last >= ends or (last == begins and state.going is Going.AT_POINT):
                continue
            here = state.reached[-1] if state.going is Going.AT_POINT else ahead.point
            to = answers.point_name(picture.event, r.id, leg.pace_to or "")
            when = pen.when(times.edges(ahead.window)[1])
            said = pen.word("first-pacing", runner=r.name, to=to, place=ahead.name, when=when)
            return First(said, "", _report(picture, r.id, here, pen))
    return None


def _meeting(m: MeetingAnswer, pen: Pen) -> str:
    v, place = m.values, m.name
    if v.lost:
        return pen.word("first-lost", place=place, why=lost_words(pen.say, v))
    comes = due(pen, m.runner_name, v.window)
    if m.there:
        stay = (
            pen.word("first-stay-heard")
            if v.stay
            else pen.word("first-stay", when=pen.when(times.ceil_to(v.wait_until)))
        )
        return f"{pen.word('first-there', place=place)} {comes} {stay}"
    be_there = pen.when(times.floor_to(v.be_there))
    if m.on_way_since is not None:
        return f"{pen.word('first-on-way', place=place, when=be_there)} {comes}"
    if v.leave_by is None or v.on_the_spot:
        return f"{pen.word('first-be-there', place=place, when=be_there)} {comes}"
    leave = pen.when(times.leave_said(v.leave_by, pen.now))
    key = "first-leave" if v.leave_by > pen.now else "first-leave-now"
    return f"{pen.word(key, place=place, when=leave)} {comes}"


def _then(first: MeetingAnswer, rest: list[MeetingAnswer], pen: Pen) -> str:
    """What comes after it; not by the clock where they come to it from here, as she has to have left here first."""
    if not rest or rest[0].values.lost:
        return ""
    v = rest[0].values
    here = v.drive_from == first.values.point and rest[0].runner_name == first.runner_name
    if here and v.drive != timedelta(0) and not first.values.lost:
        return pen.word("first-then-after", place=rest[0].name, here=first.name, runner=first.runner_name)
    when = pen.when(times.leave_said(v.leave_by, pen.now) if v.leave_by else times.floor_to(v.be_there))
    return pen.word("first-then-leave" if v.leave_by else "first-then-be", place=rest[0].name, when=when)


def _crew_buttons(picture: Picture, person: str, m: MeetingAnswer, pen: Pen) -> tuple[PageButton, ...]:
    v, event = m.values, picture.event
    runner = next((p.runner for p in event.meetings if p.id == v.meeting), event.runners[0].id)
    # Whoever is there need not say any more that they set out.
    gone = _SENDS if m.there else frozenset()
    asked = next(
        (
            made
            for made in owed(picture, person, alarms=False)
            if made.notice.key.point == v.point and made.notice.key.kind not in gone
        ),
        None,
    )
    if asked is not None and (found := buttons_of(asked, pen)):
        return found
    if m.there:
        return _report(picture, runner, v.point, pen)
    if m.on_way_since is not None:
        return (PageButton(pen.word("first-i-am-there"), say=pen.word("say-there", place=m.name)),)
    if v.lost or v.leave_by is None or v.leave_by - pen.now > SOON:
        return (_ask(picture, "bring", pen.word("first-bring"), runner, v.point),)
    label = sentence(pen.reader.language, "button-on-our-way")
    return (PageButton(label, say=pen.word("say-on-way", place=m.name)),)


def _ask(picture: Picture, question: str, label: str, runner: str, point: str = "") -> PageButton:
    fields = (tag(point) if point else "", tag(runner), event_mark(picture.event.id))
    return PageButton(label, press=data(Press.ASK, question, *fields))


def _report(picture: Picture, runner: str, point: str, pen: Pen) -> tuple[PageButton, ...]:
    """Buttons that report her at a point: in, or out where she is known to be in; none once she has left."""
    known = picture.state.runner(runner).at_point(point)
    if known is not None and known.left is not None:
        return ()
    kind = "out" if known is not None and known.arrived is not None else "in"
    place = answers.point_name(picture.event, runner, point)
    label = sentence(pen.reader.language, f"button-{kind}", place=place)
    mark = event_mark(picture.event.id)
    return (PageButton(label, press=data(Press.REPORT, kind, tag(point), tag(runner), "0", mark)),)


# -- everybody else -----------------------------------------------------------------------------------------


def next_point(picture: Picture, runner: str, share: May, *, heard_from: bool = False) -> PointAnswer | None:
    """The next point ahead of her that has a window, or the next that somebody reports from; None once none is ahead."""
    if share is May.NO or picture.state.runner(runner).going in _OVER:
        return None
    found = answers.forecast(picture, runner, share)
    behind = found.fresh.last.km if found.fresh.last is not None else None
    coming = (p for p in found.points if p.window is not None and not p.arrived and not p.left)
    ahead = [p for p in coming if behind is None or p.km > behind]
    told = [p for p in ahead if p.name == found.fresh.sharpened_by] if heard_from else []
    return next(iter(told or ahead), None)


_OVER = frozenset({Going.RETIRED, Going.FINISHED, Going.CLOSED, Going.IN_HAND})


def _runner(picture: Picture, runner: str, pen: Pen) -> First:
    state = picture.state.runner(runner)
    here = state.reached[-1] if state.reached and state.going is Going.AT_POINT else None
    ahead = next_point(picture, runner, May.YES)
    if ahead is None or ahead.window is None:
        return First(pen.word("first-run-over"))
    last = state.last_known
    gone = next((p.km for p in picture.event.course_of(runner).points if last and p.id == last.point), None)
    far = pen.km(max(ahead.km - gone, 0.0)) if gone is not None else pen.km(ahead.km)
    when = pen.when(times.edges(ahead.window)[1])
    key = "first-you-next" if gone is not None else "first-you-next-at"
    text = pen.word(key, place=ahead.name, km=far, when=when)
    return First(text, "", _report(picture, runner, here or ahead.point, pen))


def _home(picture: Picture, parts: tuple[Part, ...], pen: Pen) -> First:
    """Nothing to do, as long as no alarm is open; the alarm itself stands above and says the rest."""
    open_now = [made for made in picture.situation.made if isinstance(made.notice.values, AlarmValues)]
    if waiting(open_now, picture.now):
        return First("")
    follows = _follows(picture, parts, pen)
    return First(f"{pen.word('first-nothing')} {follows.text}".strip(), "", follows.buttons)


def _volunteer(picture: Picture, parts: tuple[Part, ...], pen: Pen) -> First:
    point = next((p.point for p in parts if p.kind is PartKind.VOLUNTEER and p.point), None)
    if point is None:
        return First(pen.word("first-volunteer"))
    course = next(c for c in picture.event.courses if any(p.id == point for p in c.points))
    name = next(p.name for p in course.points if p.id == point)
    return First(pen.word("first-volunteer-at", place=name, count=str(len(still_due(picture, point)))))


def still_due(picture: Picture, point: str) -> tuple[str, ...]:
    """The runners who come to a point and have not been reported there, nor their race as over."""
    found = []
    for r in picture.event.runners:
        here = picture.state.runner(r.id)
        on_it = any(p.id == point for p in picture.event.course_of(r.id).points)
        known = here.at_point(point)
        reported = known is not None and (known.arrived is not None or known.left is not None)
        if on_it and not reported and here.going not in _OVER:
            found.append(r.id)
    return tuple(found)


def _follows(picture: Picture, parts: tuple[Part, ...], pen: Pen) -> First:
    """Of the first runner whom they follow: where she is due next."""
    runners = [r for r in picture.event.runners if may(parts, Call.FORECAST, r.id) is not May.NO]
    if len(runners) > 1:
        going = [r for r in runners if picture.state.runner(r.id).going not in _OVER]
        return First(pen.word("first-field", going=str(len(going)), of=str(len(runners))))
    for r in runners:
        ahead = next_point(picture, r.id, may(parts, Call.FORECAST, r.id), heard_from=True)
        if ahead is not None and ahead.window is not None:
            where = pen.word("first-next-is", place=ahead.name, runner=r.name)
            return First(f"{where} {due(pen, r.name, ahead.window)}")
    return First("")
