"""Questions: which call answers which, and how its answer is worded. One function a kind, in a table."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from datetime import timedelta

from server.conversation import (
    about_us,
    actions,
    changing,
    of_the_file,
    own_part,
    quoted,
    stand_in,
    stop_log,
    unknown,
    while_open,
)
from server.conversation.telling import against_plan, answers, past_cut_off, plan_answers, standing, things
from server.conversation.telling.answer import ForecastAnswer, Freshness, NextAnswer
from server.conversation.telling.cards import cards_meant
from server.conversation.telling.message import Button, Press, Rows, data, event_mark, tag
from server.conversation.telling.say import lines
from server.conversation.understanding import (
    UNDO_WITHIN,
    Asked,
    Question,
    asks_the_way,
    asks_time_left,
    asks_when,
    says,
)
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.state import Going

Answering = Callable[[Visit, Asked], Awaitable[Reply]]


def _runner(asked: Asked) -> str:
    assert asked.runner is not None, "a question about a runner reaches the desk with one"
    return asked.runner


def _after_buttons(visit: Visit, asked: Asked, *more: Question) -> Rows:
    """Further questions that lie near, as buttons; then the reports expected next."""
    labels = {
        Question.NEXT: "button-next",
        Question.BRING: "button-bring",
        Question.WHERE: "button-where",
    }
    fields = ("", tag(asked.runner or ""), event_mark(visit.event.id))
    row = tuple(Button(visit.s(labels[q]), data(Press.ASK, q.value, *fields)) for q in more if q in labels)
    return (*((row,) if row else ()), *visit.report_buttons(asked.runner))


async def _point(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.forecast(visit.event.id, _runner(asked))
    text = answers.say_point(visit.say, told, asked.point)
    return visit.reply(text, _after_buttons(visit, asked, Question.BRING, Question.WHERE))


async def _finish(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.forecast(visit.event.id, _runner(asked))
    return visit.reply(answers.say_finish(visit.say, told), _after_buttons(visit, asked, Question.NEXT))


async def _where(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.where(visit.event.id, _runner(asked))
    return visit.reply(answers.say_where(visit.say, told), _after_buttons(visit, asked, Question.NEXT))


async def _heard(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.where(visit.event.id, _runner(asked))
    text = answers.say_heard(visit.say, told.fresh, told.runner_name)
    return visit.reply(text, _after_buttons(visit, asked, Question.NEXT, Question.WHERE))


async def _gap(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.forecast(visit.event.id, _runner(asked))
    return visit.reply(answers.say_gap(visit.say, told))


async def _supposed(visit: Visit, asked: Asked) -> Reply:
    here = visit.runner(asked.runner)
    if asked.leaving is not None and asked.factor is None and here is not None and here.at is None:
        # Nobody can leave where she is not: the forecast as it stands answers that.
        reply = await _point(visit, asked)
        note = visit.s("supposed-on-the-move", runner=here.name) if here.going == "moving" else ""
        return replace(reply, text=lines(reply.text, note))
    if asked.more is not None:
        return _so_much_later(visit, asked, asked.more)
    told = visit.view.forecast(visit.event.id, _runner(asked), factor=asked.factor, leaving=asked.leaving)
    return visit.reply(answers.say_supposed(visit.say, told, asked.point))


def _so_much_later(visit: Visit, asked: Asked, more: timedelta) -> Reply:
    """The times as they stand, so much later: that is all that a stop or a wrong turn of that length is known to do."""
    told = visit.view.forecast(visit.event.id, _runner(asked))
    p = answers.point_in(told, asked.point)
    if p is None or p.window is None:
        return visit.reply(answers.say_point(visit.say, told, asked.point))
    w = p.window
    later = replace(w, early=w.early + more, likely=w.likely + more, late=w.late + more)
    first = visit.s(
        "supposed-later" if more > timedelta(0) else "supposed-sooner",
        runner=told.runner_name,
        length=visit.say.length(abs(more)),
        place=p.name,
        window=visit.say.window(later),
    )
    return visit.reply(lines(first, visit.s("supposed-only")))


def _nth_meeting(visit: Visit, asked: Asked) -> Asked:
    """The question about the meeting that 'the second one' is; as it stands where there are not so many."""
    assert asked.nth is not None
    told = visit.view.next(visit.event.id, _runner(asked))
    coming = [m for m in told.meetings if not m.values.lost]
    if not -1 <= asked.nth < len(coming):
        return asked
    question = Question.LEAVE if asked.question is Question.MEETING else asked.question
    return replace(asked, question=question, point=coming[asked.nth].values.point)


async def _dark(visit: Visit, asked: Asked) -> Reply:
    if asked.point is None and says(asked.words, "takes_over"):
        # Whoever sets out with her asks of the place where they do.
        asked = replace(asked, point=own_part.own_meeting(visit, _runner(asked)))
    told = visit.view.forecast(visit.event.id, _runner(asked))
    text = answers.say_dark(visit.say, told, asked.point)
    try:
        plan = visit.view.plan(visit.event.id, _runner(asked))
    except Refused:
        return visit.reply(text)  # a part that may not see the plan still hears whether it is dark there
    light = plan_answers.say_light(visit.say, plan)
    # 'When does it get dark' asks for the time; 'is it dark there' for the place.
    first_light = asked.point is None and asks_when(asked.words) and light
    return visit.reply(lines(light, text) if first_light else lines(text, light))


async def _last_stop(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.facts(visit.event.id, _runner(asked))
    return visit.reply(answers.say_last_stop(visit.say, told, asked.point))


async def _how(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.facts(visit.event.id, _runner(asked))
    heard = answers.say_heard(visit.say, told.fresh, told.runner_name).split("\n")[0]
    text = answers.say_how_she_is(visit.say, told)
    return visit.reply(lines(text, heard if heard not in text else ""))


async def _cut_offs(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.cut_offs(visit.event.id, _runner(asked))
    place = visit.point_name(asked.runner, asked.point)
    return visit.reply(plan_answers.say_cut_offs(visit.say, told, asked.point, place))


async def _report(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.forecast(visit.event.id, _runner(asked))
    return visit.reply(against_plan.say_report(visit.say, told), visit.report_buttons(asked.runner))


async def _pace(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.forecast(visit.event.id, _runner(asked))
    return visit.reply(against_plan.say_pace(visit.say, told), visit.report_buttons(asked.runner))


async def _who_knows(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.facts(visit.event.id, _runner(asked))
    over = Going(told.fresh.going).race_over and not told.alarms
    if over and says(asked.words, "what_happened"):
        return await _report(visit, asked)
    event = visit.event
    text = standing.say_told(visit.say, told, event.race_control, event.emergency_number)
    return visit.reply(
        text
        if told.alarms
        else lines(text.split("\n")[0], _whether_late(visit, asked), *text.split("\n")[1:])
    )


def _whether_late(visit: Visit, asked: Asked) -> str:
    """Where she is expected next, and from when on she would be late: who asks of an alarm that is not open asks that."""
    try:
        told = visit.view.forecast(visit.event.id, _runner(asked))
    except Refused:
        return ""
    p = answers.next_point(told)
    if p is None or p.window is None or Going(told.fresh.going).race_over:
        return ""
    late = _is_late(visit, told.fresh)
    by = _late_line(visit, told, "late-already" if late else "late-not-yet")
    return lines(by, "" if late else answers.point_line(visit.say, told.runner_name, p))


def _is_late(visit: Visit, fresh: Freshness) -> bool:
    """By the time at which crew and home are asked; the window that holds now has moved on."""
    return fresh.late_by is not None and fresh.late_by < visit.now


def _late_line(visit: Visit, told: ForecastAnswer, key: str) -> str:
    fresh = told.fresh
    if fresh.late_by is None:
        return ""
    return visit.s(key, runner=told.runner_name, place=fresh.late_at, when=visit.say.when(fresh.late_by))


async def _late(visit: Visit, asked: Asked) -> Reply:
    """Whether she is late, and from when on; of an open alarm who has it first, of a race that is over how it went."""
    told = visit.view.facts(visit.event.id, _runner(asked))
    if Going(told.fresh.going).race_over and not told.alarms:
        return await _report(visit, asked)
    event = visit.event
    alarm = (
        standing.say_told(visit.say, told, event.race_control, event.emergency_number) if told.alarms else ""
    )
    first, *rest = (await _gap(visit, asked)).text.split("\n")
    return visit.reply(lines(alarm, first, _late_from(visit, asked), *rest))


def _late_from(visit: Visit, asked: Asked) -> str:
    """From when on she counts as late, or since when; '' where nothing is expected any more."""
    told = visit.view.forecast(visit.event.id, _runner(asked))
    p = answers.next_point(told)
    if p is None or p.window is None:
        return ""
    return _late_line(visit, told, "late-already" if _is_late(visit, told.fresh) else "late-from")


async def _took(visit: Visit, asked: Asked) -> Reply:
    """How long she was under way, or has been so far."""
    told = visit.view.where(visit.event.id, _runner(asked))
    started = told.fresh.started
    facts = visit.view.facts(visit.event.id, _runner(asked))
    here = visit.runner(asked.runner)
    finish = next((p.id for p in here.points if p.finish), "") if here is not None else ""
    end = next((s.arrived for s in facts.stops if s.point == finish), None)
    if started is None:
        return await _where(visit, asked)
    over = end or told.fresh.retired_at
    length = visit.say.length((over or visit.now) - started)
    key = "took" if end is not None else "took-so-far"
    first = visit.s(key, runner=told.runner_name, length=length, start=visit.say.when(started))
    return visit.reply(lines(first, answers.say_where(visit.say, told)))


async def _towards(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.missed(visit.event.id, _runner(asked), asked.point)
    coming = visit.view.next(visit.event.id, _runner(asked))
    control = visit.event.race_control
    text = standing.say_towards(visit.say, told, coming, control)
    return visit.reply(text, visit.report_buttons(asked.runner))


async def _my_race(visit: Visit, asked: Asked) -> Reply:
    """A runner asks of herself; anybody else who asks so means her against the plan."""
    if PartKind.RUNNER not in visit.kinds:
        return await _gap(visit, asked)
    told = visit.view.forecast(visit.event.id, _runner(asked))
    limits = visit.view.cut_offs(visit.event.id, _runner(asked))
    text = standing.say_my_race(visit.say, told, limits)
    return visit.reply(text, visit.report_buttons(asked.runner))


async def _goals(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.plan(visit.event.id, _runner(asked))
    return visit.reply(standing.say_goals(visit.say, told))


async def _missed(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.missed(visit.event.id, _runner(asked), asked.point)
    text = answers.say_missed(visit.say, told, advice_first=asked.question is Question.WAIT)
    agreed = quoted.of_place(visit, "missed", told.point) if says(asked.words, "plan_missed") else ""
    return visit.reply(lines(agreed, text), visit.report_buttons(asked.runner))


async def _people(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.people(visit.event.id)
    place = visit.point_name(asked.runner, asked.point)
    name = next((n for i, n in visit.event.people if i == asked.person), "")
    return visit.reply(things.say_people(visit.say, told, place, name))


async def _ride(visit: Visit, asked: Asked) -> Reply:
    """Who drives to a meeting, in which car and when; never who happens to be at the place now."""
    told = visit.view.next(visit.event.id, _runner(asked), asked.point)
    place = visit.point_name(asked.runner, asked.point)
    return visit.reply(things.say_ride(visit.say, told, place))


async def _kit(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.kit(visit.event.id, _runner(asked), asked.point)
    word = {
        Question.BRING: things.say_bring,
        Question.TAKE_BACK: things.say_take_back,
        Question.FOOD: things.say_food,
    }[asked.question]
    return visit.reply(lines(_not_theirs(visit, told.runner, told.point), word(visit.say, told)))


def _not_theirs(visit: Visit, runner: str, point: str) -> str:
    """Whose meeting it is, of crew who are not down for it; '' for their own, and for everybody else."""
    if PartKind.CREW not in visit.kinds:
        return ""
    try:
        found = visit.view.next(visit.event.id, runner, point).meetings
    except Refused:
        return ""
    there = [m for m in found if m.values.point == point]
    return things.not_theirs(visit.say, max(there, key=lambda m: m.mine)) if there else ""


async def _meetings(visit: Visit, asked: Asked) -> Reply:
    """Meetings, when to leave, how far; whoever asks to sleep reads first of an alarm that is open."""
    reply = await _about_meetings(visit, asked)
    if asked.question is not Question.LEAVE or not says(asked.words, "sleep"):
        return reply
    told = visit.view.facts(visit.event.id, _runner(asked))
    if not told.alarms:
        return reply
    alarm = standing.say_told(visit.say, told, visit.event.race_control, visit.event.emergency_number)
    coming = visit.view.next(visit.event.id, _runner(asked))
    return visit.reply(lines(alarm, reply.text if coming.meetings else ""))


async def _about_meetings(visit: Visit, asked: Asked) -> Reply:
    if asked.question is Question.LEAVE and asks_time_left(asked.words) and PartKind.RUNNER in visit.kinds:
        # She leaves for no meeting: what leaves her time, or none, is the next cut-off.
        limits = await _cut_offs(visit, asked)
        return replace(limits, text=lines(visit.s("time-own"), limits.text))
    if (
        asked.question is Question.DRIVE
        and PartKind.RUNNER in visit.kinds
        and not says(asked.words, "by_car")
    ):
        # She is on foot: how far it is for her, never for a car.
        there = visit.view.forecast(visit.event.id, _runner(asked))
        return visit.reply(standing.say_how_far(visit.say, there, asked.point))
    told = visit.view.next(visit.event.id, _runner(asked))
    found: NextAnswer = told
    if asked.point is not None and asked.point not in {m.values.point for m in found.meetings}:
        ruled = past_cut_off.standing(visit.say, found.fresh, found.runner_name)
        if ruled:
            return visit.reply(ruled)  # nobody leaves for it until race control has decided
        not_among = visit.s("meeting-not-among", place=visit.point_name(asked.runner, asked.point))
        return visit.reply(lines(not_among, things.say_meeting(visit.say, found)))
    if (
        asked.question is Question.LEAVE
        and asks_time_left(asked.words)
        and PartKind.RUNNER not in visit.kinds
    ):
        return visit.reply(things.say_time_left(visit.say, found, asked.point))
    if asks_the_way(asked.words):
        return visit.reply(things.say_way(visit.say, found, asked.point))
    change = changing.button(visit, asked.runner, _spoken_of(found, asked.point))
    if asked.question is Question.LEAVE:
        return visit.reply(things.say_leave(visit.say, found, asked.point), change)
    if asked.question is Question.DRIVE:
        way = quoted.of_place(visit, "way", _spoken_of(found, asked.point))
        if says(asked.words, "on_foot"):
            return visit.reply(things.say_way(visit.say, found, asked.point))
        first, *rest = things.say_drive(visit.say, found, asked.point).split("\n")
        return visit.reply(lines(first, way, *rest))
    after = _after_buttons(visit, asked, Question.BRING)
    return visit.reply(things.say_meeting(visit.say, found), (*after, *change))


def _spoken_of(found: NextAnswer, point: str | None) -> str | None:
    """Where the meeting is that an answer is about: the one asked about, else the first."""
    return point if point is not None else next((m.values.point for m in found.meetings), None)


async def _plan(visit: Visit, asked: Asked) -> Reply:
    told = visit.view.plan(visit.event.id, _runner(asked))
    return visit.reply(plan_answers.say_plan(visit.say, told))


async def _cards(visit: Visit, asked: Asked) -> Reply:
    runner = asked.runner or next((r.id for r in visit.event.runners), "")
    told = visit.view.cards(visit.event.id, runner)
    return visit.reply(things.say_cards(visit.say, told, cards_meant(told.cards, asked.words)))


async def _numbers(visit: Visit, asked: Asked) -> Reply:
    event = visit.event
    text = things.say_numbers(visit.say, event.race_control, event.emergency_number, event.rescue)
    if asked.question is Question.HELP_WORD:
        text = lines(text, _usage_text(visit))
    return visit.reply(text)


def _usage_text(visit: Visit) -> str:
    runner = visit.runner(visit.memory.last.runner if visit.memory.last else None) or (
        visit.event.runners[0] if visit.event.runners else None
    )
    crew = [p.name for p in runner.points if p.crew_access] if runner else []
    place = crew[0] if crew else (runner.points[-1].name if runner and runner.points else "")
    kinds = frozenset(k.value for k in visit.kinds)
    return things.say_usage(visit.say, kinds, place, round(UNDO_WITHIN.total_seconds() / 60))


async def _duty(visit: Visit, asked: Asked) -> Reply:
    """What somebody in their parts does: before, during, when it goes wrong."""
    names = {r.id: r.name for r in visit.event.runners}
    event = visit.event
    text = things.say_duties(visit.say, event.parts, names, event.race_control, event.emergency_number)
    return visit.reply(lines(unknown.own_next(visit), text), visit.report_buttons(asked.runner))


async def _usage(visit: Visit, asked: Asked) -> Reply:
    return visit.reply(_usage_text(visit), visit.report_buttons(asked.runner))


async def _picture(visit: Visit, asked: Asked) -> Reply:
    """The profile as a picture with its words as text; the words alone where there is no picture."""
    told = visit.view.forecast(visit.event.id, _runner(asked))
    words = answers.say_picture(visit.say, told)
    try:
        png = await actions.draw(visit.event.id, _runner(asked))
    except Refused:
        return visit.reply(lines(visit.s("picture-none"), words))
    return Reply(words, picture=png, alt=words)


async def _cover(visit: Visit, asked: Asked) -> Reply:
    if asked.person is not None and asked.point is not None:
        return await stand_in.swap(visit, asked.words, asked.person, asked.point)
    return await stand_in.asked(visit)


TABLE: Mapping[Question, Answering] = {
    Question.NEXT: _point,
    Question.AT: _point,
    Question.FINISH: _finish,
    Question.WHERE: _where,
    Question.PLAN_GAP: _gap,
    Question.LAST_STOP: _last_stop,
    Question.CUT_OFF: _cut_offs,
    Question.MISSED: _missed,
    Question.WAIT: _missed,
    Question.PEOPLE: _people,
    Question.BRING: _kit,
    Question.TAKE_BACK: _kit,
    Question.FOOD: _kit,
    Question.LEAVE: _meetings,
    Question.DRIVE: _meetings,
    Question.DARK: _dark,
    Question.HEARD: _heard,
    Question.SLOWER: _supposed,
    Question.LEAVES_NOW: _supposed,
    Question.PLAN: _plan,
    Question.MEETING: _meetings,
    Question.HOW: _how,
    Question.CARDS: _cards,
    Question.NUMBERS: _numbers,
    Question.PICTURE: _picture,
    Question.TOWARDS: _towards,
    Question.TOLD: _who_knows,
    Question.MY_RACE: _my_race,
    Question.GOALS: _goals,
    Question.USAGE: _usage,
    Question.DUTY: _duty,
    Question.HELP_WORD: _numbers,
    Question.COVER: _cover,
    Question.WEATHER: unknown.weather,
    Question.LEAVE_THERE: unknown.leave_there,
    Question.CATCH_UP: unknown.catch_up,
    Question.RIDE: _ride,
    Question.REPORT: _report,
    Question.RIVALS: unknown.rivals,
    Question.LOG: stop_log.answer,
    Question.RULES: of_the_file.rules,
    Question.ELSEWHERE: unknown.elsewhere,
    Question.SIGNAL: unknown.signal,
    Question.WHY: unknown.why,
    Question.PHOTO: unknown.photo,
    Question.START: of_the_file.start,
    Question.CLOCK: of_the_file.clock,
    Question.COURSE: of_the_file.course,
    Question.MINE: of_the_file.mine,
    Question.LOOKS: of_the_file.looks,
    Question.PACE: _pace,
    Question.WORDS: about_us.words,
    Question.COMPLAINT: about_us.complaint,
    Question.NEEDED: own_part.needed,
    Question.FETCH: own_part.fetch,
    Question.NEXT_BIT: of_the_file.next_bit,
    Question.SILENT: own_part.silent,
    Question.ON_SPOT: own_part.on_spot,
    Question.PARKING: own_part.parking,
    Question.CREW_FOOD: own_part.crew_food,
    Question.TOOK: _took,
    Question.LATE: _late,
    Question.GROUND: of_the_file.ground,
    Question.ALARM_NOW: while_open.answer,
    Question.ALARM_TELL: while_open.answer,
    Question.ALARM_CALL: while_open.answer,
    Question.ALARM_KNOWN: while_open.answer,
}


_ALSO_QUOTED = frozenset(
    {
        Question.RULES, Question.PEOPLE, Question.BRING, Question.CARDS, Question.DUTY, Question.USAGE, Question.WORDS,
        Question.SIGNAL, Question.WHERE, Question.LEAVE_THERE, Question.COVER, Question.TAKE_BACK,
    }
)  # fmt: skip
"""Before these answers stands what the file plainly says of the question."""


async def answer(visit: Visit, asked: Asked) -> Reply:
    """The reply to a question; it becomes the one that follow-ups go on from."""
    if asked.nth is not None and asked.point is None:
        asked = _nth_meeting(visit, asked)
    reply = unknown.beside(visit, asked, await TABLE[asked.question](visit, asked))
    if asked.question in _ALSO_QUOTED:
        reply = quoted.before(visit, asked.words, reply)
    before = visit.context().last
    # A question about nobody ('what helps with blisters') does not change whom 'she' means.
    runner = asked.runner or (before.runner if before else None)
    visit.memory.last, visit.memory.last_at = replace(asked, words="", beside="", runner=runner), visit.now
    return reply
