"""Reports: handed to the server at once, told back in words, with one tap to confirm or undo."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from server.conversation import button_payload, stand_in, stop_log
from server.conversation.submit import hand_in
from server.conversation.telling import replies
from server.conversation.telling.answer import NotedAnswer, RunnerHere
from server.conversation.telling.message import Button, Press, Rows
from server.conversation.telling.say import lines
from server.conversation.understanding import UNDO_WITHIN, Choice, Report, Reported
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import Kind, Retired
from server.facts.hearsay import HEARSAY

_MOVES = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})


async def report(visit: Visit, said: Reported, first: int = 0) -> Reply:
    """Hand in every report of a message, the first as its `first`th entry; what was noted is told back."""
    noted: list[NotedAnswer] = []
    last: tuple[Report, NotedAnswer] | None = None
    for number, one in enumerate(said.reports, start=first):
        if one.kind is Kind.DRIVE_CONFIRMED:
            return await _drive(visit, one, visit.key(number))
        if one.kind is Kind.CREW_LEFT and one.point is None:
            one = replace(one, point=await _left_from(visit))
            if one.point is None:
                return visit.reply(visit.s("noted-on-the-road-untold"))
        follows = said.reports[number - first + 1 :][:1]
        more = one.kind in _MOVES and any(r.kind in _MOVES for r in follows)
        answer = await hand_in(visit, one, visit.key(number), more_follows=more)
        noted.append(answer)
        last = (one, answer)
    assert last is not None, "a Reported holds a report"
    about = {r.runner for r in said.reports if r.kind is not Kind.CREW_THERE}
    if len(about) == 1:
        visit.speaks_of(about.pop())
    if len(noted) > 1:
        each = tuple((a, r.words) for a, r in zip(noted, said.reports, strict=True))
        text = replies.say_many(visit.say, each, UNDO_WITHIN)
        open_ones = [a for a in noted if a.unconfirmed]
        buttons = tuple(row for a in open_ones for row in _right_of(visit, a))
        return visit.reply(text, buttons or visit.undo_button(noted[-1].entry))
    if last[0].kind is Kind.CANNOT_COME:
        control = visit.event.race_control.phone
        text = replies.say_cannot_come(visit.say, last[1], visit.event.emergency_number, control, UNDO_WITHIN)
        return visit.reply(text, visit.undo_button(last[1].entry))
    if last[0].of_crew and last[0].kind is Kind.NOTE and not last[1].unconfirmed:
        return await stand_in.held_up(visit, last[1].entry, last[0].words)
    return _one(visit, *last)


def _right_of(visit: Visit, answer: NotedAnswer) -> Rows:
    """Right or wrong, of one of several reports: each by the name of its runner."""
    right = visit.judging("button-right-of", Press.CONFIRM, answer.entry, runner=answer.runner_name)
    wrong = visit.judging("button-wrong-of", Press.UNDO, answer.entry, runner=answer.runner_name)
    return ((right, wrong),)


def _one(visit: Visit, one: Report, answer: NotedAnswer) -> Reply:
    supporter = visit.kinds <= {PartKind.SUPPORTER}
    if answer.no_alarm:
        return visit.reply(visit.s("noted-no-alarm", runner=answer.runner_name))
    if one.kind is Kind.LOG and not answer.unconfirmed:
        return stop_log.said_back(visit, one, answer)
    if one.kind is Kind.STAND_DOWN and answer.unconfirmed:
        return visit.reply(
            visit.s("ask-stand-down", runner=answer.runner_name), visit.confirm_buttons(answer.entry)
        )
    if one.kind is Kind.IN_HAND and one.with_us and answer.unconfirmed:
        return visit.reply(
            visit.s("ask-with-us", runner=answer.runner_name), visit.confirm_buttons(answer.entry)
        )
    if one.kind is Kind.RETIRED and answer.unconfirmed and HEARSAY in answer.doubt and not supporter:
        return _hearsay(visit, answer)
    text = replies.say_noted(visit.say, answer, one.words, UNDO_WITHIN, ask=True, supporter=supporter)
    if one.was is not None:
        first, *rest = text.split("\n")
        text = lines(first, visit.s("noted-in-place-of", when=visit.say.when(one.was)), *rest)
    if supporter:
        return visit.reply(text, visit.undo_button(answer.entry))
    if one.placed_by_words:
        kept = visit.s("noted-seen-kept") if answer.unconfirmed else ""
        text = lines(visit.s("noted-seen", **_seen(visit, one, answer)), kept)
        return _ask_where_seen(visit, one, lines(text, _how_told(visit, answer)))
    if answer.unconfirmed:
        return visit.reply(lines(text, _how_told(visit, answer)), visit.confirm_buttons(answer.entry))
    if one.kind is Kind.RETIRED and one.how is Retired.NOT_SAID:
        return _ask_how(visit, one, answer, text)
    if one.kind is Kind.HOW_SHE_IS and PartKind.RUNNER in visit.kinds and not answer.told:
        text = lines(text, visit.s("word-told-nobody"))
    return visit.reply(text, (*visit.undo_button(answer.entry), *_after(visit, one)))


def _hearsay(visit: Visit, answer: NotedAnswer) -> Reply:
    """Her race said to be over by another: kept and asked about; whoever knows it from her says so with one tap."""
    asked = visit.s("noted-hearsay-asked", names=visit.say.all(answer.told)) if answer.told else ""
    kept = visit.s("noted-hearsay", runner=answer.runner_name, place=answer.name or "none")
    right = visit.judging("button-from-her", Press.CONFIRM, answer.entry)
    wrong = visit.judging("button-wrong", Press.UNDO, answer.entry)
    return visit.reply(lines(kept, asked, visit.s("ask-hearsay")), ((right, wrong),))


_WAYS = {
    Retired.OWN_CHOICE: "button-own-choice",
    Retired.TIMED_OUT: "button-timed-out",
    Retired.WITHDRAWN: "button-medics",
}


def _ask_how(visit: Visit, one: Report, answer: NotedAnswer, text: str) -> Reply:
    """That her race is over counts already: how it ended is asked after, and may stay open."""
    ways = tuple(Choice(w.value, Reported((replace(one, how=w, words=""),))) for w in _WAYS)
    visit.memory.choices, visit.memory.need = ways, None
    buttons = button_payload.offer(visit, tuple(visit.s(label) for label in _WAYS.values()), ways)
    where = visit.s("ask-retired-where", own=_own(visit)) if one.point is None else ""
    return visit.reply(
        lines(text, where, visit.s("ask-retired-how")), (*buttons, *visit.undo_button(answer.entry))
    )


def _own(visit: Visit) -> str:
    return "yes" if PartKind.RUNNER in visit.kinds else "no"


def _how_told(visit: Visit, answer: NotedAnswer) -> str:
    """Of a report that does not count yet only how she is has been told to anybody."""
    told = answer.told if answer.unconfirmed else ()
    return visit.s("noted-how-told", names=visit.say.all(told)) if told else ""


def _seen(visit: Visit, one: Report, answer: NotedAnswer) -> dict[str, str | int]:
    return {"runner": answer.runner_name, "when": visit.say.when(answer.at), "words": one.words}


def _after(visit: Visit, one: Report) -> Rows:
    """After 'in', the buttons for 'out' of the same point and for the log of the stop."""
    runner = visit.runner(one.runner)
    if runner is None or one.kind is not Kind.IN or one.point is None:
        return ()
    if next((p.finish for p in runner.points if p.id == one.point), False):
        return ()
    label = visit.s("button-out", place=visit.point_name(runner.id, one.point))
    out = Button(label, visit.report_data("out", one.point, runner.id))
    return ((out,), *stop_log.offer_button(visit, runner.id, one.point))


async def _left_from(visit: Visit) -> str | None:
    """From which point this person's car leaves: where the server last had them, else where the drive to
    their next meeting begins, which may be a hotel. None where nothing says so."""
    there = visit.view.people(visit.event.id)
    mine = next((p.at_name for p in there.people if p.name == visit.person.name), "")
    runner = visit.context().runner(None) or next(iter(visit.event.runners), None)
    if runner is None:
        return None
    if mine:
        return next((p.id for p in runner.points if p.name == mine), None)
    coming = visit.view.next(visit.event.id, runner.id)
    return next((m.values.drive_from for m in coming.meetings if m.mine), None)


async def on_the_road(visit: Visit, words: str) -> Reply:
    """'leaving' with no leave-now open: crew have left the point they were at."""
    runner = visit.context().runner(None) or next(iter(visit.event.runners), None)
    one = Report(Kind.CREW_LEFT, visit.sent_at, runner.id if runner else None, words=words)
    return await report(visit, Reported((one,)))


async def _drive(visit: Visit, one: Report, key: str) -> Reply:
    """'drive from the hotel to Brindle Gate 35 min': from now on somebody stands for that drive. Without a
    'from' it is the drive to that meeting as planned."""
    start = one.words
    if not start and one.runner is not None:
        coming = visit.view.next(visit.event.id, one.runner)
        found = (m.values.drive_from for m in coming.meetings if m.values.point == one.point)
        start = next((f for f in found if f), "")
    place = visit.point_name(one.runner, one.point)
    if not start or one.amount is None:
        return visit.reply(visit.s("noted-drive-from", place=place))
    told = await hand_in(visit, replace(one, words=f"{start} > {one.point}"), key)
    values = {"from": visit.point_name(one.runner, start) or start, "to": place}
    text = visit.s("noted-drive", length=visit.say.length(one.amount), **values)
    return visit.reply(text, visit.undo_button(told.entry))


def _legs(runner: RunnerHere) -> tuple[tuple[str, str], ...]:
    """The leg she should be on, the one before and the two after, as point ids."""
    ids = [p.id for p in runner.points]
    reached = ids.index(runner.reached) if runner.reached in ids else 0
    first = max(0, reached - 1)
    return tuple(zip(ids[first:-1], ids[first + 1 :], strict=True))[:4]


def _ask_where_seen(visit: Visit, one: Report, text: str) -> Reply:
    """Between which points: the answer goes into the journal as words beside the sighting."""
    runner = visit.runner(one.runner)
    if runner is None:
        return visit.reply(text)
    choices, labels = [], []
    for a, b in _legs(runner):
        label = visit.s(
            "choice-between",
            **{"from": visit.point_label(runner.id, a), "to": visit.point_label(runner.id, b)},
        )
        note = replace(
            one, kind=Kind.NOTE, words=f"{one.words} ({label})", guessed=False, condition=False,
            placed_by_words=False,
        )  # fmt: skip
        choices.append(Choice(label, Reported((note,))))
        labels.append(label)
    visit.memory.choices, visit.memory.need = tuple(choices), None
    return visit.reply(lines(text, visit.s("ask-where-seen")), button_payload.offer(visit, labels, choices))


def minutes_ago(visit: Visit, kind: str, point: str, runner: str) -> Rows:
    """Buttons 'just now', '10 min ago', '20 min ago' for one report."""
    labels = (("button-just-now", 0), ("button-ten-ago", 10), ("button-twenty-ago", 20))
    return tuple(
        (Button(visit.s(label), visit.report_data(kind, point, runner, minutes)),)
        for label, minutes in labels
    )


def pressed_report(visit: Visit, kind: str, point: str | None, runner: str, minutes: int) -> Report:
    """The report of a button."""
    return Report(Kind(kind), visit.sent_at - timedelta(minutes=minutes), runner, point)
