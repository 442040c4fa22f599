"""Questions: which call answers which, and how its answer is worded. One function a kind, in a table."""

from __future__ import annotations

import re
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace

from bot.api_client import ApiError
from bot.channels.base import Reply
from bot.desk import stand_in, unknown
from bot.desk.visit import Visit
from bot.words import UNDO_WITHIN, Asked, Question, asks_the_way, asks_time_left, asks_when
from server.event.model import PartKind
from server.wording import against_plan, answers, plan_answers, standing, things
from server.wording.answer import NextAnswer
from server.wording.cards import cards_meant
from server.wording.message import Button, Press, Rows, data, event_mark, tag
from server.wording.say import lines

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
    told = await visit.api.forecast(visit.address, visit.event.id, _runner(asked))
    text = answers.say_point(visit.say, told.data, asked.point)
    return visit.reply(text, _after_buttons(visit, asked, Question.BRING, Question.WHERE))


async def _finish(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.forecast(visit.address, visit.event.id, _runner(asked))
    return visit.reply(answers.say_finish(visit.say, told.data), _after_buttons(visit, asked, Question.NEXT))


async def _where(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.where(visit.address, visit.event.id, _runner(asked))
    return visit.reply(answers.say_where(visit.say, told.data), _after_buttons(visit, asked, Question.NEXT))


async def _heard(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.where(visit.address, visit.event.id, _runner(asked))
    text = answers.say_heard(visit.say, told.data.fresh, told.data.runner_name)
    return visit.reply(text, _after_buttons(visit, asked, Question.NEXT, Question.WHERE))


async def _gap(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.forecast(visit.address, visit.event.id, _runner(asked))
    return visit.reply(answers.say_gap(visit.say, told.data))


async def _supposed(visit: Visit, asked: Asked) -> Reply:
    here = visit.runner(asked.runner)
    if asked.leaving is not None and asked.factor is None and here is not None and here.at is None:
        # Nobody can leave where she is not: the forecast as it stands answers that.
        reply = await _point(visit, asked)
        note = visit.s("supposed-on-the-move", runner=here.name) if here.going == "moving" else ""
        return replace(reply, text=lines(reply.text, note))
    told = await visit.api.forecast(
        visit.address, visit.event.id, _runner(asked), factor=asked.factor, leaving=asked.leaving
    )
    return visit.reply(answers.say_supposed(visit.say, told.data, asked.point))


async def _dark(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.forecast(visit.address, visit.event.id, _runner(asked))
    text = answers.say_dark(visit.say, told.data, asked.point)
    try:
        plan = await visit.api.plan(visit.address, visit.event.id, _runner(asked))
    except ApiError:
        return visit.reply(text)  # a part that may not see the plan still hears whether it is dark there
    light = plan_answers.say_light(visit.say, plan.data)
    # 'When does it get dark' asks for the time; 'is it dark there' for the place.
    first_light = asked.point is None and asks_when(asked.words) and light
    return visit.reply(lines(light, text) if first_light else lines(text, light))


async def _last_stop(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.facts(visit.address, visit.event.id, _runner(asked))
    return visit.reply(answers.say_last_stop(visit.say, told.data, asked.point))


async def _how(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.facts(visit.address, visit.event.id, _runner(asked))
    return visit.reply(answers.say_how_she_is(visit.say, told.data))


async def _cut_offs(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.cut_offs(visit.address, visit.event.id, _runner(asked))
    place = visit.point_name(asked.runner, asked.point)
    return visit.reply(plan_answers.say_cut_offs(visit.say, told.data, asked.point, place))


async def _report(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.forecast(visit.address, visit.event.id, _runner(asked))
    return visit.reply(against_plan.say_report(visit.say, told.data), visit.report_buttons(asked.runner))


_WHAT_HAPPENED = re.compile(
    r"\b(?:what (?:has )?happened|was (?:ist |war )?(?:\w+ )?(?:passiert|los|geschehen))\b", re.IGNORECASE
)


async def _who_knows(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.facts(visit.address, visit.event.id, _runner(asked))
    over = told.data.fresh.going in answers.NOT_GOING and not told.data.alarms
    if over and _WHAT_HAPPENED.search(asked.words):
        return await _report(visit, asked)
    event = visit.event
    return visit.reply(standing.say_told(visit.say, told.data, event.race_control, event.emergency_number))


async def _towards(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.missed(visit.address, visit.event.id, _runner(asked), asked.point)
    coming = await visit.api.next(visit.address, visit.event.id, _runner(asked))
    control = visit.event.race_control
    text = standing.say_towards(visit.say, told.data, coming.data, control)
    return visit.reply(text, visit.report_buttons(asked.runner))


async def _my_race(visit: Visit, asked: Asked) -> Reply:
    """A runner asks of herself; anybody else who asks so means her against the plan."""
    if PartKind.RUNNER not in visit.kinds:
        return await _gap(visit, asked)
    told = await visit.api.forecast(visit.address, visit.event.id, _runner(asked))
    limits = await visit.api.cut_offs(visit.address, visit.event.id, _runner(asked))
    text = standing.say_my_race(visit.say, told.data, limits.data)
    return visit.reply(text, visit.report_buttons(asked.runner))


async def _goals(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.plan(visit.address, visit.event.id, _runner(asked))
    return visit.reply(standing.say_goals(visit.say, told.data))


async def _missed(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.missed(visit.address, visit.event.id, _runner(asked), asked.point)
    text = answers.say_missed(visit.say, told.data, advice_first=asked.question is Question.WAIT)
    return visit.reply(text, visit.report_buttons(asked.runner))


async def _people(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.people(visit.address, visit.event.id)
    place = visit.point_name(asked.runner, asked.point)
    name = next((n for i, n in visit.event.people if i == asked.person), "")
    return visit.reply(things.say_people(visit.say, told.data, place, name))


async def _ride(visit: Visit, asked: Asked) -> Reply:
    """Who drives to a meeting, in which car and when; never who happens to be at the place now."""
    told = await visit.api.next(visit.address, visit.event.id, _runner(asked), asked.point)
    place = visit.point_name(asked.runner, asked.point)
    return visit.reply(things.say_ride(visit.say, told.data, place))


async def _kit(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.kit(visit.address, visit.event.id, _runner(asked), asked.point)
    word = {
        Question.BRING: things.say_bring,
        Question.TAKE_BACK: things.say_take_back,
        Question.FOOD: things.say_food,
    }[asked.question]
    return visit.reply(word(visit.say, told.data))


_SLEEP = re.compile(r"\b(?:sleep|nap|kip|bed|lie down|rest|schlafen|bett|hinlegen|ausruhen)\b", re.IGNORECASE)


async def _meetings(visit: Visit, asked: Asked) -> Reply:
    """Meetings, when to leave, how far; whoever asks to sleep reads first of an alarm that is open."""
    reply = await _about_meetings(visit, asked)
    if asked.question is not Question.LEAVE or _SLEEP.search(asked.words) is None:
        return reply
    told = await visit.api.facts(visit.address, visit.event.id, _runner(asked))
    if not told.data.alarms:
        return reply
    alarm = standing.say_told(visit.say, told.data, visit.event.race_control, visit.event.emergency_number)
    coming = await visit.api.next(visit.address, visit.event.id, _runner(asked))
    return visit.reply(lines(alarm, reply.text if coming.data.meetings else ""))


_BY_CAR = re.compile(r"\b(?:drive|driving|car|road|fahrt|fahren|fahrzeit|auto)\b", re.IGNORECASE)


async def _about_meetings(visit: Visit, asked: Asked) -> Reply:
    if asked.question is Question.LEAVE and asks_time_left(asked.words) and PartKind.RUNNER in visit.kinds:
        # She leaves for no meeting: what leaves her time, or none, is the next cut-off.
        limits = await _cut_offs(visit, asked)
        return replace(limits, text=lines(visit.s("time-own"), limits.text))
    if (
        asked.question is Question.DRIVE
        and PartKind.RUNNER in visit.kinds
        and not _BY_CAR.search(asked.words)
    ):
        # She is on foot: how far it is for her, never for a car.
        there = await visit.api.forecast(visit.address, visit.event.id, _runner(asked))
        return visit.reply(standing.say_how_far(visit.say, there.data, asked.point))
    told = await visit.api.next(visit.address, visit.event.id, _runner(asked))
    found: NextAnswer = told.data
    if asked.point is not None and asked.point not in {m.values.point for m in found.meetings}:
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
    if asked.question is Question.LEAVE:
        return visit.reply(things.say_leave(visit.say, found, asked.point))
    if asked.question is Question.DRIVE:
        return visit.reply(things.say_drive(visit.say, found, asked.point))
    return visit.reply(things.say_meeting(visit.say, found), _after_buttons(visit, asked, Question.BRING))


async def _plan(visit: Visit, asked: Asked) -> Reply:
    told = await visit.api.plan(visit.address, visit.event.id, _runner(asked))
    return visit.reply(plan_answers.say_plan(visit.say, told.data))


async def _cards(visit: Visit, asked: Asked) -> Reply:
    runner = asked.runner or next((r.id for r in visit.event.runners), "")
    told = await visit.api.cards(visit.address, visit.event.id, runner)
    return visit.reply(things.say_cards(visit.say, told.data, cards_meant(told.data.cards, asked.words)))


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
    return visit.reply(text, visit.report_buttons(asked.runner))


async def _usage(visit: Visit, asked: Asked) -> Reply:
    return visit.reply(_usage_text(visit), visit.report_buttons(asked.runner))


async def _picture(visit: Visit, asked: Asked) -> Reply:
    """The profile as a picture with its words as text; the words alone where there is no picture."""
    told = await visit.api.forecast(visit.address, visit.event.id, _runner(asked))
    words = answers.say_picture(visit.say, told.data)
    try:
        png = await visit.api.picture(visit.address, visit.event.id, _runner(asked))
    except ApiError:
        return visit.reply(lines(visit.s("picture-none"), words))
    return Reply(words, picture=png, alt=words)


async def _cover(visit: Visit, _asked: Asked) -> Reply:
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
}


async def answer(visit: Visit, asked: Asked) -> Reply:
    """The reply to a question; it becomes the one that follow-ups go on from."""
    reply = unknown.beside(visit, asked, await TABLE[asked.question](visit, asked))
    before = visit.context().last
    # A question about nobody ('what helps with blisters') does not change whom 'she' means.
    runner = asked.runner or (before.runner if before else None)
    visit.memory.last, visit.memory.last_at = replace(asked, words="", beside="", runner=runner), visit.now
    return reply
