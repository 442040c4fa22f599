"""Changing the plan from a chat: the meeting's own button, what a change would be for whom, 'yes', and its undoing.

Buttons carry all of it, so that nothing has to be understood or remembered: the step; runner, point and what it is about;
the version that was looked at.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from server.conversation import actions
from server.conversation.telling.answer import ChangeAnswer, MeetingAnswer
from server.conversation.telling.message import Button, Press, Rows, data, event_mark, tag, untag
from server.conversation.telling.say import lines
from server.conversation.understanding import wanted
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.event.replan import What

__all__ = ["button", "driver", "in_words", "pressed"]

_MENU, _WHERE, _UNDO, _LEFT = "m", "w", "u", "n"
_WHAT = {"d": What.DRIVES, "s": What.SKIP, "p": What.MOVE, "f": What.JUST_FINISH}


def button(visit: Visit, runner: str | None, point: str | None) -> Rows:
    """'Change this meeting', for whoever may."""
    if not visit.event.may_change or runner is None or point is None:
        return ()
    return ((_button(visit, visit.s("change-ask"), _MENU, runner, point),),)


async def pressed(visit: Visit, fields: tuple[str, ...]) -> Reply:
    """A step: what can be changed, where else, what it would be, done, undone, or left."""
    try:
        match fields:
            case (str(step), *_, version, _) if step == _UNDO:
                undone = await actions.change(visit.event.id, {"undo": int(version, 16)})
                return _done(visit, undone, "change-undone")
            case (str(step), *_) if step == _LEFT:
                return visit.reply(visit.s("change-left"))
            case (str(step), _, _, about, over, _) if step in (_KIT, _PERSON):
                kept = visit.memory.added
                if kept[:1] != (step,) or _mark(kept[1:]) != about:
                    return visit.reply(visit.s("button-old"))
                return await _offered(visit, step, kept[1:], over)
            case (step, runner, point, about, over, _):
                her = _one(runner, (r.id for r in visit.event.runners))
                return await _step(visit, step, her, point, about, over)
    except Refused as error:
        if error.code != "not_now":
            raise
        return visit.reply(visit.s("change-refused", what=error.what))
    return visit.reply(visit.s("button-old"))


async def driver(visit: Visit, person: str, point: str) -> Reply | None:
    """What it would be, were somebody to drive to a meeting at that point; None where that can't be asked here."""
    runner = visit.context().runner(None)
    if not visit.event.may_change or runner is None or _meeting(visit, runner.id, point) is None:
        return None
    return await _step(visit, "d", runner.id, tag(point), tag(person), "")


async def in_words(visit: Visit, text: str, *, undoes: bool) -> Reply | None:
    """What it would be where somebody who may asks for a change and says nothing else: 'skip the quarry', 'just finish'.
    None for any other words, where nobody meets her there, and where it takes a report back (`undoes`)."""
    added = wanted.added_in(text, visit.context()) if visit.event.may_change and not undoes else None
    if added is not None:
        return await _added(visit, added)
    said = wanted.change_in(text, visit.context()) if visit.event.may_change else None
    if said is None or (undoes and not said.finish):
        return None
    hers = [r for r in visit.event.runners if said.runner in (None, r.id)]
    if said.finish:
        steps = [(r.name, "f", r.id, "") for r in hers]
    else:
        met = [(r, p) for r in hers for p in said.points if _meeting(visit, r.id, p) is not None]
        one = len({r.id for r, _ in met}) == 1
        steps = [(visit.point_label(r.id, p) if one else r.name, "s", r.id, p) for r, p in met]
    if not steps:
        return None
    if len(steps) == 1:
        _, step, runner, point = steps[0]
        return await _step(visit, step, runner, tag(point), "", "")
    return visit.reply(visit.s("change-which"), tuple((_button(visit, *s),) for s in steps))


_KIT, _PERSON = "k", "c"


async def _added(visit: Visit, said: wanted.Added) -> Reply | None:
    """What it would be, were that thing or person added. The words are kept: a button has no room for them."""
    if said.person:
        return await _offered(visit, _PERSON, (said.person, said.phone))
    met = [
        (r.id, p) for r in visit.event.runners for p in said.points if _meeting(visit, r.id, p) is not None
    ]
    return await _offered(visit, _KIT, (said.thing, *met[0])) if len(met) == 1 else None


async def _offered(visit: Visit, step: str, words: tuple[str, ...], over: str = "") -> Reply:
    """Looked at, or done where it was looked at (`over`)."""
    reply = await _looked_at(visit, _adding(visit, step, words), (step, "", "", _mark(words)), over)
    if reply.buttons and not over:
        visit.memory.added = (step, *words)
    return reply


def _mark(words: Iterable[str]) -> str:
    """The mark of all that is added: the same thing at another place is another."""
    return tag(" ".join(words))


async def _looked_at(visit: Visit, body: dict[str, Any], yes: tuple[str, str, str, str], over: str) -> Reply:
    """What a change would be, with the button that does it (`yes`: its step, runner, point, what it is about); or the
    change done, where it was looked at in the version `over`."""
    if over:
        done = await actions.change(visit.event.id, {**body, "over": int(over, 16)})
        return _done(visit, done, "change-done")
    found = await actions.change(visit.event.id, {**body, "dry_run": True})
    if found.refused:
        return visit.reply(lines(*(visit.s("change-refused", what=w) for w in found.refused)))
    do = _button(visit, visit.s("change-yes"), *yes, over=f"{found.version:x}")
    return visit.reply(_would(visit, found), ((do,), (_button(visit, visit.s("change-no"), _LEFT),)))


def _adding(visit: Visit, step: str, words: tuple[str, ...]) -> dict[str, Any]:
    if step == _PERSON:
        name, phone = words
        her = visit.context().runner(None)
        of = {} if her is None else {"runner": her.id}
        return {"what": What.PERSON.value, "name": name, "phone": phone, **of}
    thing, runner, point = words
    meeting = _meeting(visit, runner, point)
    if meeting is None:
        raise ValueError(f"nobody meets {runner!r} at {point!r} any more")
    values = meeting.values
    kit = tuple(dict.fromkeys((*values.kit, *values.take_back, thing)))
    return {"what": What.KIT.value, "runner": runner, "meeting": values.meeting, "kit": list(kit)}


async def _step(visit: Visit, step: str, runner: str, tagged: str, about: str, over: str) -> Reply:
    here = visit.runner(runner)
    point = untag(tagged, (p.id for p in here.points)) if here is not None else None
    meeting = None if point is None else _meeting(visit, runner, point)
    if point is not None and meeting is not None and step in (_MENU, _WHERE):
        return (_menu if step == _MENU else _where)(visit, runner, point, meeting)
    if meeting is None and _WHAT.get(step) is not What.JUST_FINISH:
        return visit.reply(visit.s("change-refused", what=visit.s("change-not-no-meeting")))
    body = _body(visit, step, runner, meeting, about)
    return await _looked_at(visit, body, (step, runner, point or "", about), over)


def _meeting(visit: Visit, runner: str, point: str) -> MeetingAnswer | None:
    there = visit.view.next(visit.event.id, runner, point).meetings
    return next((m for m in there if m.values.point == point), None)


def _body(visit: Visit, step: str, runner: str, meeting: MeetingAnswer | None, about: str) -> dict[str, Any]:
    what = _WHAT.get(step)
    if what is None:
        raise ValueError(f"there is no step {step!r}")
    body: dict[str, Any] = {"what": what.value, "runner": runner}
    if meeting is not None:
        body["meeting"] = meeting.values.meeting
    if what is What.DRIVES:
        body["crew"] = [_one(about, (i for i, _ in visit.event.people))]
    if what is What.MOVE:
        here = visit.runner(runner)
        body["point"] = _one(about, (p.id for p in (here.points if here else ())))
    return body


def _one(tagged: str, ids: Iterable[str]) -> str:
    """The id of a tag; ValueError for one that is not there any more."""
    found = untag(tagged, ids)
    if found is None:
        raise ValueError(f"nothing here is {tagged!r}")
    return found


def _menu(visit: Visit, runner: str, point: str, meeting: MeetingAnswer) -> Reply:
    """Who could drive instead, then the rest."""
    told = visit.view.people(visit.event.id)
    crew = {p.name for p in told.people if PartKind.CREW.value in p.part.split(", ")}
    goes = tuple(dict.fromkeys((*meeting.crew, *(n for o in meeting.others for n in o.people))))
    others = [(i, n) for i, n in visit.event.people if n in crew and n not in goes]
    rows = [
        (_button(visit, visit.s("change-drives", name=n), "d", runner, point, tag(i)),) for i, n in others
    ]
    rows += [
        (_button(visit, visit.s("change-move"), _WHERE, runner, point),),
        (_button(visit, visit.s("change-skip"), "s", runner, point),),
        (_button(visit, visit.s("change-finish"), "f", runner, point),),
    ]
    who = visit.say.all(goes) or visit.s("somebody")
    text = visit.s("change-what", place=meeting.name, runner=meeting.runner_name, who=who)
    return visit.reply(text, tuple(rows))


def _where(visit: Visit, runner: str, point: str, meeting: MeetingAnswer) -> Reply:
    """Points ahead of her where crew may be and nobody meets her."""
    here = visit.runner(runner)
    points = here.points if here is not None else ()
    ids = [p.id for p in points]
    behind = ids.index(here.reached) if here is not None and here.reached in ids else -1
    free = [p for p in points[behind + 1 :] if p.crew_access and _meeting(visit, runner, p.id) is None]
    if not free:
        return visit.reply(visit.s("change-nowhere", runner=meeting.runner_name))
    rows = tuple(
        (_button(visit, visit.point_label(runner, p.id), "p", runner, point, tag(p.id)),) for p in free
    )
    return visit.reply(visit.s("change-where", runner=meeting.runner_name, place=meeting.name), rows)


def _would(visit: Visit, found: ChangeAnswer) -> str:
    """Person by person, what will not surely work before it."""
    people = [visit.s("change-for", name=p.name, what=line) for p in found.people for line in p.lines]
    return lines(
        visit.s("change-would"),
        *(visit.s("change-mind", what=m) for m in found.minds),
        *(people or [visit.s("change-for-nobody")]),
    )


def _done(visit: Visit, found: ChangeAnswer, key: str) -> Reply:
    text = visit.s(key, names=visit.say.all(found.told), count=len(found.told))
    if found.invited is not None:
        link, code = found.invited.link, found.invited.code
        text = lines(text, visit.s("change-invited", name=found.invited.name, link=link, code=code))
    if key == "change-undone":
        return visit.reply(text)
    undo = _button(visit, visit.s("change-undo"), _UNDO, over=f"{found.version:x}")
    return visit.reply(text, ((undo,),))


def _button(
    visit: Visit, label: str, step: str, runner: str = "", point: str = "", about: str = "", over: str = ""
) -> Button:
    mark = event_mark(visit.event.id)
    return Button(label, data(Press.CHANGE, step, tag(runner), tag(point), about, over, mark))
