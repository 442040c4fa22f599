"""The wording of notices that are no alarms: meetings, sightings, cut-offs, race-level facts."""

from __future__ import annotations

from datetime import datetime

from server.conversation.telling.missed import unseen
from server.conversation.telling.say import Say, SayInEvent, lines, slug
from server.conversation.telling.stop_log import say_since
from server.conversation.telling.times import ceil_to, floor_to
from server.event.model import PartKind
from server.facts.entry import Kind
from server.facts.hearsay import HEARSAY
from server.facts.state import LastKnown
from server.plan.movements.names import place_name
from server.sentences import has
from server.watch.notice import (
    BriefValues,
    CorrectionValues,
    CutOffValues,
    DoubtValues,
    LateValues,
    MeetingValues,
    RaceChangeValues,
    SightingValues,
)


def leave_by_of(say: Say, m: MeetingValues) -> datetime:
    """A leave-by rounded to the earlier 5 minutes, unless that would already be over."""
    assert m.leave_by is not None
    early = floor_to(m.leave_by)
    return early if early > say.now else m.leave_by


def _leave_by(say: SayInEvent, m: MeetingValues) -> str:
    return say.when(leave_by_of(say, m))


def _be_there(say: SayInEvent, m: MeetingValues) -> str:
    return say.when(floor_to(m.be_there))


def _wait_until(say: SayInEvent, m: MeetingValues) -> str:
    return say.s("until-heard") if m.stay else say.when(ceil_to(m.wait_until))


def with_her(say: SayInEvent, m: MeetingValues) -> str:
    """What every meeting message ends with: window, drive, wait, kit, food, what if missed, signal."""
    place = say.point(m.point)
    return lines(
        unseen(say, m),
        say.s("meeting-she-comes", runner=say.runner, place=place, window=say.window(m.window)),
        _drive(say, m),
        say.until(
            "meeting-wait",
            "meeting-wait-short",
            _wait_until(say, m),
            say.runner,
            None if m.stay else m.p_comes,
        ),
        say.s("meeting-kit", kit=say.things(m.kit)) if m.kit else "",
        say.s("meeting-take-back", kit=say.things(m.take_back)) if m.take_back else "",
        say.s("meeting-food", food=m.food) if m.food else "",
        say_since(say, m.log),
        say.s("meeting-if-missed", text=m.if_missed) if m.if_missed else "",
        say.s("meeting-no-signal", place=place) if m.no_signal else "",
    )


def _drive(say: SayInEvent, m: MeetingValues) -> str:
    if not m.drive:
        return ""
    origin = "none" if m.drive_from is None else place_name(say.event, m.drive_from)
    return say.s("meeting-drive", length=say.length(m.drive), **{"from": origin})


def leave_soon(say: SayInEvent, m: MeetingValues) -> str:
    """Half an hour before the leave-by: what to pack, by when to go."""
    first = say.s(
        "leave-soon-here" if m.on_the_spot else "leave-soon",
        place=say.point(m.point),
        runner=say.runner,
        be_there=_be_there(say, m),
        leave_by=_leave_by(say, m),
    )
    return lines(first, _unreported_out(say, m), with_her(say, m))


def leave_now(say: SayInEvent, m: MeetingValues) -> str:
    """Time to drive. Past the leave-by it says so, and never 'hurry'."""
    place, there = say.point(m.point), _be_there(say, m)
    if m.leave_by is None:
        first = say.s("leave-now", place=place, runner=say.runner, be_there=there)
        first = lines(first, say.s("meeting-no-drive"))
    elif m.leave_by < say.now:
        first = _past_leave_by(say, m, place)
    else:
        first = say.s(
            "leave-now-by", place=place, runner=say.runner, be_there=there, leave_by=_leave_by(say, m)
        )
    return lines(first, _unreported_out(say, m), with_her(say, m))


def _past_leave_by(say: SayInEvent, m: MeetingValues, place: str) -> str:
    """Leaving only now they may come after her, or still before she is likely to be there."""
    assert m.leave_by is not None
    there = ceil_to(say.now + (m.be_there - m.leave_by))
    values = {"place": place, "runner": say.runner, "leave_by": say.when(m.leave_by)}
    if there <= m.window.early:
        return say.s("leave-now-still", there=say.when(there), **values)
    return say.s("leave-now-late", **values)


def _unreported_out(say: SayInEvent, m: MeetingValues) -> str:
    """She was seen in where the crew may still be with her: they know better than the forecast."""
    if m.unreported_out is None or m.unreported_out == m.point:
        return ""
    return say.s("unreported-out", runner=say.runner, place=say.point(m.unreported_out))


def be_there(say: SayInEvent, m: MeetingValues) -> str:
    """From when to be at a point."""
    return lines(
        say.s("be-there", place=say.point(m.point), be_there=_be_there(say, m), runner=say.runner),
        _unreported_out(say, m),
        with_her(say, m),
    )


def move_on(say: SayInEvent, m: MeetingValues) -> str:
    """Waiting here serves nothing any more."""
    point = say.point_or_none(m.point)
    closes = point.access.closes if point is not None and point.access is not None else None
    values = {"place": say.point(m.point), "runner": say.runner}
    closed = closes is not None and closes <= say.now
    return lines(
        say.s("move-on-closes", until=say.maybe(closes), **values) if closed else say.s("move-on", **values),
        unseen(say, m),
        say.s("meeting-if-missed", text=m.if_missed) if m.if_missed else "",
        _next_meeting(say, m),
    )


def _next_meeting(say: SayInEvent, m: MeetingValues) -> str:
    """Where they go next, and to whom where that is another runner."""
    if not m.next_meeting:
        return ""
    place = _meeting_place(say, m.next_meeting)
    plan = next((p for p in say.event.meetings if p.id == m.next_meeting), None)
    other = next((r.name for r in say.event.runners if plan and r.id == plan.runner != say.runner_id), "")
    return (
        say.s("move-on-next-other", place=place, runner=other)
        if other
        else say.s("move-on-next", place=place)
    )


def _meeting_place(say: SayInEvent, meeting: str) -> str:
    """The point of a meeting given by its id; an id that is no meeting is a point's."""
    found = next((m for m in say.event.meetings if m.id == meeting), None)
    return say.point(found.point if found else meeting)


def _was(say: SayInEvent, m: MeetingValues) -> str:
    """The leave-by this person was last told, where it differs from the one now."""
    if m.was_leave_by is None or m.leave_by is None or floor_to(m.was_leave_by) == floor_to(m.leave_by):
        return "none"
    return say.when(floor_to(m.was_leave_by))


def window_moved(say: SayInEvent, m: MeetingValues) -> str:
    """A window moved so far that it changes what they do: what to do, the new window, the old one."""
    place = say.point(m.point)
    there, wait = _be_there(say, m), _wait_until(say, m)
    if m.leave_by is not None and m.leave_by > say.now and not m.on_the_spot:
        times = say.s(
            "window-moved-leave", leave_by=_leave_by(say, m), be_there=there, until=wait, was=_was(say, m)
        )
    else:
        times = say.s("window-moved-there", be_there=there, until=wait)
    return lines(
        say.s("window-moved", place=place, what=times),
        unseen(say, m),
        say.s("meeting-she-comes", runner=say.runner, place=place, window=say.window(m.window)),
        say.s("window-moved-was", was=say.window_short(m.was)) if m.was else "",
    )


def lost_words(say: Say, m: MeetingValues) -> str:
    """Why a meeting can't be made; '' where that has no words of its own."""
    why = f"lost-{slug(m.lost)}"
    if not m.lost or not has(why):
        return ""
    return say.s(why, when=say.when(m.window.likely)) if why == "lost-she-has-left" else say.s(why)


def meeting_lost(say: SayInEvent, m: MeetingValues) -> str:
    """A meeting nobody can make: said plainly, with what comes instead."""
    place = say.point(m.point)
    gone = m.window.early == m.window.late
    expected = say.s("meeting-lost-why", runner=say.runner, place=place, window=say.window(m.window))
    return lines(
        say.s("meeting-lost", runner=say.runner, place=place),
        lost_words(say, m),
        unseen(say, m),
        "" if gone else expected,
        say.s("meeting-if-missed", text=m.if_missed) if m.if_missed else "",
        _next_meeting(say, m),
    )


def wake_up(say: SayInEvent, m: MeetingValues) -> str:
    """For a sleeper, with time to wake, pack and drive."""
    place = say.point(m.point)
    if m.leave_by is None or m.on_the_spot:
        first = say.s("wake-up-there", place=place, runner=say.runner, be_there=_be_there(say, m))
    else:
        first = say.s("wake-up", place=place, runner=say.runner, leave_by=_leave_by(say, m))
    return lines(first, with_her(say, m), say.s("wake-up-answer"))


def brief(say: SayInEvent, b: BriefValues) -> str:
    """Before signal is lost: the meetings to come, and what to do if nothing is heard."""
    parts = [say.s("brief", count=len(b.meetings)), unseen(say, b.meetings[0]) if b.meetings else ""]
    for m in b.meetings:
        parts.append(
            say.s("brief-meeting", place=say.point(m.point), runner=say.runner, window=say.window(m.window))
        )
        if m.leave_by is not None and not m.on_the_spot:
            parts.append(say.s("brief-leave", leave_by=_leave_by(say, m)))
        parts.append(say.s("brief-times", be_there=_be_there(say, m), until=_wait_until(say, m)))
        parts.append(say.s("meeting-kit", kit=say.things(m.kit)) if m.kit else "")
        parts.append(say.s("meeting-take-back", kit=say.things(m.take_back)) if m.take_back else "")
    if b.signal_back_at:
        parts.append(say.s("brief-signal", place=say.point(b.signal_back_at)))
        parts.append(say.s("brief-nothing-heard"))
    else:
        parts.append(say.s("brief-nothing-heard-plain"))
    return lines(*parts)


def arrived(say: SayInEvent, v: SightingValues) -> str:
    """She is in, or went through; what to have ready."""
    key = "arrived-through" if v.through else "arrived"
    place = say.point(v.point)
    stop = v.planned_stop if not v.through else None
    return lines(
        say.s(key, runner=say.runner, place=place, when=say.when(v.at), who=say.person(v.told_by)),
        say.s("arrived-stop", length=say.length(stop)) if stop else "",
        say.s("arrived-kit", kit=say.things(v.kit)) if v.kit and not v.through else "",
        say.s("meeting-take-back", kit=say.things(v.take_back)) if v.take_back and not v.through else "",
        say.s("meeting-food", food=v.food) if v.food and not v.through else "",
        _then(say, v, "arrived-next"),
    )


def _then(say: SayInEvent, v: SightingValues, key: str) -> str:
    if v.next_window is None:
        return ""
    values = {"place": say.point(v.next_window.point), "window": say.window(v.next_window)}
    return say.s(key, runner=say.runner, **values) if key == "left-next-her" else say.s(key, **values)


def _seen(say: SayInEvent, v: SightingValues, key: str, place: str, to: str) -> str:
    if to and to == v.told_by and v.next_window is not None:
        return ""
    return say.s(key, runner=say.runner, place=place, when=say.when(v.at), who=say.person(v.told_by))


def left(say: SayInEvent, v: SightingValues, to: str = "") -> str:
    """She is out of a point, or went through; for whoever said so (`to`) only what follows from it."""
    key = "arrived-through" if v.through else "left"
    place = say.point(v.point)
    first = _seen(say, v, key, place, to)
    return lines(
        first,
        _then(say, v, "left-next" if first else "left-next-her"),
        say.s("meeting-kit", kit=say.things(v.kit)) if v.kit else "",
        say.s("meeting-food", food=v.food) if v.food else "",
    )


def finished(say: SayInEvent, v: SightingValues, *, asked: bool) -> str:
    """The end of the course; those who are `asked` still have to take her in hand."""
    return lines(
        say.s("finished", runner=say.runner, when=say.when(v.at), who=say.person(v.told_by)),
        say.s("arrived-kit", kit=say.things(v.kit)) if v.kit else "",
        say.s("finished-crew") if asked else "",
    )


def cut_off_odds(say: SayInEvent, v: CutOffValues) -> str:
    """The odds of a cut-off have crossed a level, and what would still help."""
    text = say.s(
        "cut-off-falling" if v.falling else "cut-off-rising",
        runner=say.runner,
        place=say.point(v.point),
        edge=say.s(f"edge-{v.edge}"),
        cut_off=say.when(v.cut_off),
        odds=say.odds(v.odds),
    )
    if v.latest_out_point is None or v.latest_out is None:
        return text
    place = say.point(v.latest_out_point)
    if v.latest_out <= say.now:
        return lines(text, say.s("cut-off-not-possible", place=place))
    return lines(text, say.s("cut-off-latest", place=place, when=say.when(v.latest_out)))


def late(say: SayInEvent, v: LateValues) -> str:
    """Later than 9 in 10: a question to those who may know."""
    return lines(
        say.s("late", runner=say.runner, place=say.point(v.point)),
        say.s("late-answer"),
        say.s("late-window", window=say.window_stood(v.window)),
        last_heard(say, v.last_known),
    )


def last_heard(say: SayInEvent, last: LastKnown | None) -> str:
    """Where she was last seen, when, by whom and how long ago."""
    if last is None:
        return say.s("fresh-nothing", name=say.runner)
    values = {"fact": say.last(last), "when": say.when(last.at), "ago": say.ago(last.at)}
    return say.s("fresh", who=say.person(last.by), **values)


def race_change(say: SayInEvent, v: RaceChangeValues, to: str = "") -> str:
    """A race-level fact by the organiser, for the person `to`."""
    key = f"race-change-{slug(v.change)}"
    if has(key):
        first = say.s(
            key,
            runner=say.runner,
            place=say.point(v.point) if v.point else "none",
            until=say.maybe(v.until),
            amount=say.length(v.amount) if v.amount else "none",
            edge=say.s(f"edge-{v.edge}") if v.edge else "none",
            was=say.maybe(v.was),
        )
    else:
        first = say.s("race-change-other", change=v.change)
    return lines(
        first,
        say.s("race-change-words", words=v.words) if v.words else "",
        _race_ended(say, to) if v.change == Kind.RACE_ENDED_EARLY.value else say.s("race-change-all-anew"),
        say.s("race-change-who", who=say.person(v.told_by)),
    )


def _race_ended(say: SayInEvent, to: str) -> str:
    """What crew do then. Where she is fetched is for race control, or her, to say: never for a plan that has ended."""
    control = {"name": say.event.race_control.name, "phone": say.event.race_control.phone}
    if any(
        p.person == to and p.kind is PartKind.RUNNER and p.runner == say.runner_id for p in say.event.parts
    ):
        return say.s("race-ended-runner", **control)
    return say.s("race-ended-crew", runner=say.runner, **control)


def correction(say: SayInEvent, v: CorrectionValues) -> str:
    """What this person was told does not hold any more; what does."""
    what = say.fact(v.was_kind, say.point(v.point) if v.point else say.s("place-nowhere"))
    by = say.person(v.by)
    if v.taken_back:
        key = "correction-taken-back-at" if v.was_at else "correction-taken-back"
        first = say.s(key, runner=say.runner, what=what, by=by, was_at=say.maybe(v.was_at))
        again = v.was_kind in ("retired", "finished")
        return lines(first, say.s("correction-watch-on") if again else "")
    if v.now_at is None:
        return say.s("correction-taken-back", runner=say.runner, what=what, by=by)
    if v.was_at is None:
        return say.s("correction-now", runner=say.runner, what=what, by=by, now_at=say.when(v.now_at))
    return say.s(
        "correction-moved",
        runner=say.runner,
        what=what,
        by=by,
        was_at=say.when(v.was_at),
        now_at=say.when(v.now_at),
    )


def doubt_words(say: Say, doubt: str) -> str:
    """Doubts ('; ' between them) in words; one that has no sentence of its own is words already."""
    reasons = [d.strip() for d in doubt.split(";") if d.strip()] or ["none"]
    keys = ((d, f"doubt-{slug(d)}") for d in reasons)
    return "; ".join(say.s(key) if has(key) else d for d, key in keys)


def unconfirmed(say: SayInEvent, v: DoubtValues) -> str:
    """A report is kept but not counted: is it right?"""
    values = {"runner": say.runner, "when": say.when(v.at), "who": say.person(v.told_by)}
    fact = say.fact(v.kind, say.point(v.point) if v.point else say.s("place-nowhere"))
    # A sighting told in words comes as 'moving again' with no place.
    seen = v.kind == Kind.MOVING_AGAIN.value and v.point is None and v.words
    if v.kind == Kind.RETIRED.value and HEARSAY in v.doubt:
        place = say.point(v.point) if v.point else "none"
        return lines(
            say.s("unconfirmed-over", place=place, **values),
            say.s("unconfirmed-words", words=v.words) if v.words else "",
            say.s("unconfirmed-over-asks", runner=say.runner),
        )
    return lines(
        say.s("unconfirmed-seen", **values) if seen else say.s("unconfirmed", fact=fact, **values),
        say.s("unconfirmed-words", words=v.words) if v.words else "",
        say.s("unconfirmed-why", doubt=doubt_words(say, v.doubt)) if v.doubt else "",
    )
