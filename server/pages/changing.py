"""The sheet on which the plan is changed during the race: what is to change, then what that is for whom, then it counts.

Plain forms that work without a script. Everything is done by the call of the API that chat and others use.
"""

from __future__ import annotations

import asyncio
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Any

from aiohttp import web
from pydantic import ValidationError

from server.api import auth, moved_cut_off
from server.api.acting import ACTING
from server.api.ask import Ask, check_may, not_yours
from server.api.envelope import ApiError, from_validation
from server.api.models import Change
from server.api.parts import PARTS
from server.api.replanning import change
from server.api.who_may import Call, May, may
from server.conversation.telling.answer import ChangeAnswer
from server.conversation.telling.say import Say
from server.drafting.typed import number, span_in_minutes
from server.event.model import Event, MeetingPlan, PartKind, PointKind
from server.event.replan import What
from server.pages.board import TEMPLATES, BoardReader, seen_in
from server.pages.labels import labels
from server.pages.setup.publishing import qr_of
from server.plan.movements.names import place_name
from server.sentences import sentence
from server.watch.crew_routes import parties_of

PATH = "/change/{event}"
_GO = frozenset({PartKind.CREW, PartKind.PACER, PartKind.SUPPORTER, PartKind.SAFETY_CONTACT})
"""Parts of those who may be sent to a meeting."""


@dataclass(frozen=True, slots=True)
class Option:
    """One of several: a person, a car, a point."""

    id: str
    name: str
    chosen: bool = False


@dataclass(frozen=True, slots=True)
class WayThere:
    """The drive of one car to the meeting: from where, who is in it, and its minutes; '' where nobody knows them."""

    start: str
    name: str
    who: str
    minutes: str
    confirmed: bool


@dataclass(frozen=True, slots=True)
class ChangeSheet:
    """What the sheet offers. Of a meeting `title` where and whom, `crew`, `cars` and `kit` as they are, `points` where she
    could be met instead, `ways` the drives there. Without a meeting: one to add; `runners`: for whom, where
    there are several. `past`: she has been there, and nothing can be changed. `cut_offs` ahead, for whoever may say that
    one has moved: 'point edge' and when it is."""

    meeting: str
    title: str
    runner: str
    runners: tuple[Option, ...]
    crew: tuple[Option, ...]
    cars: tuple[Option, ...]
    points: tuple[Option, ...]
    kit: tuple[str, ...]
    just_finish: bool
    past: bool
    cut_offs: tuple[Option, ...] = ()
    name: str = ""
    phone: str = ""
    ways: tuple[WayThere, ...] = ()


async def show(request: web.Request) -> web.StreamResponse:
    """GET /change/{event}?meeting=…: what can be changed."""
    seen = await _seen(request)
    query = request.query
    form = await asyncio.to_thread(_form, seen, query.get("meeting", ""), query.get("runner", ""))
    return await _page(request, seen, form)


async def press(request: web.Request) -> web.StreamResponse:
    """POST /change/{event}: looked at, and with `do` done; `undo` takes the last change back."""
    auth.refuse_foreign_form(request)
    seen = await _seen(request)
    sent = await request.post()
    given = {k: [str(v) for v in sent.getall(k)] for k in sent}
    wanted = _change(given, seen)
    form = await asyncio.to_thread(_form, seen, given.get("meeting", [""])[0], given.get("runner", [""])[0])
    try:
        answer = await change(await _ask(request, wanted))
    except ApiError as error:
        if error.code != "not_now":
            raise
        answer = ChangeAnswer(wanted.over or 0, done=False, refused=(error.what,))
    if answer.refused:
        form = _as_chosen(form, wanted)
    return await _page(request, seen, form, wanted, answer)


async def _seen(request: web.Request) -> BoardReader:
    seen = await seen_in(request)
    if may(seen.parts, Call.CHANGE) is not May.YES:
        raise not_yours(Call.CHANGE)
    return seen


async def _ask(request: web.Request, wanted: Change) -> Ask:
    """The call of the API as whoever presses."""
    seen = await seen_in(request)
    ask = replace(seen.ask, body=wanted)
    await check_may(ask, next(r for r in ACTING if r.handler is change))
    return ask


def _change(given: Mapping[str, list[str]], seen: BoardReader) -> Change:
    """What the form says, as the API takes it."""

    def one(name: str) -> str | None:
        return next((v.strip() for v in given.get(name, ()) if v.strip()), None)

    body: dict[str, Any] = {"dry_run": one("do") is None, "over": one("over")}
    if one("undo") or one("undo_entry"):
        body |= {
            "undo": one("undo"),
            "undo_entry": one("undo_entry"),
            "over": None,
            "dry_run": False,
        }
    else:
        kit = [line for text in given.get("kit", ()) for line in text.splitlines() if line.strip()]
        body |= {
            "what": one("what"),
            "kit": kit,
            "crew": given.get("crew", []),
            "name": one("name") or "",
            "phone": one("phone") or "",
            "drives": one("drives") is not None,
            **{key: one(key) for key in ("meeting", "runner", "point", "car", "edge", "until", "start")},
            "minutes": minutes
            if isinstance(minutes := number(span_in_minutes(one("minutes") or "")), int | float)
            else None,
        }
        body |= _of_cut_off(seen, one("runner"), one("limit"), one("clock") or "")
    try:
        return Change.model_validate(body)
    except ValidationError as error:
        raise from_validation(error) from error


def _of_cut_off(seen: BoardReader, runner: str | None, limit: str | None, clock: str) -> dict[str, Any]:
    """Point, edge and moment of a cut-off that was chosen, with the time of day as typed."""
    picture = seen.picture
    her = next((r.id for r in picture.built.event.runners if r.id == runner), None)
    ahead = () if her is None else moved_cut_off.limits(picture.built.event, picture.state, her)
    found = next((one for one in ahead if f"{one.point} {one.edge}" == limit), None)
    if found is None:
        return {}
    until = moved_cut_off.new_time(clock, found, picture.built.event.time_zone)
    return {"point": found.point, "edge": found.edge, "until": until}


def _form(seen: BoardReader, meeting: str, runner: str) -> ChangeSheet:
    event = seen.picture.built.event
    plan = next((m for m in event.meetings if m.id == meeting), None)
    mine = [r.id for r in event.runners if may(seen.parts, Call.CHANGE, r.id) is May.YES]
    her = plan.runner if plan is not None else runner if runner in mine else next(iter(mine), "")
    if her not in mine:
        raise not_yours(Call.CHANGE)
    return ChangeSheet(
        meeting="" if plan is None else plan.id,
        title="" if plan is None else _title(event, plan),
        runner=her,
        runners=tuple(Option(r, event.runner(r).name, r == her) for r in mine if len(event.runners) > 1),
        crew=_people(event, her, plan),
        cars=tuple(Option(c.id, c.name, plan is not None and plan.car == c.id) for c in event.cars),
        points=_elsewhere(seen, her),
        kit=() if plan is None else tuple(k.name for k in plan.kit if not k.take_back),
        just_finish=event.limit is not None and event.runner(her).target.finish != event.limit,
        cut_offs=_cut_offs(seen, her),
        ways=() if plan is None else tuple(_ways(seen, plan)),
        past=plan is not None
        and seen.picture.state.runner(her).past(plan.point, [p.id for p in event.course_of(her).points]),
    )


def _ways(seen: BoardReader, plan: MeetingPlan) -> Iterator[WayThere]:
    event, say = seen.picture.built.event, Say(seen.reader, seen.picture.now)
    for party in parties_of(seen.picture.situation).get(plan.id, ()):
        way = party.way
        if (
            way.from_place is not None
            and way.from_place != plan.point
            and not (way.confirmed and not way.drive)
        ):
            who = say.all(event.person(p).name for p in party.people)
            minutes = "" if way.drive is None else f"{way.drive / timedelta(minutes=1):.0f}"
            yield WayThere(way.from_place, place_name(event, way.from_place), who, minutes, way.confirmed)


def _as_chosen(form: ChangeSheet, wanted: Change) -> ChangeSheet:
    """What was chosen and typed stands there still once it is refused, and what the other forms offer as it was."""
    if wanted.what in (What.WHO_GOES, What.ADD):
        form = replace(form, cars=tuple(replace(c, chosen=c.id == wanted.car) for c in form.cars))
    if wanted.what in (What.MOVE, What.ADD):
        form = replace(form, points=tuple(replace(p, chosen=p.id == wanted.point) for p in form.points))
    return replace(
        form,
        crew=tuple(replace(p, chosen=p.id in wanted.crew) for p in form.crew) if wanted.crew else form.crew,
        kit=wanted.kit or form.kit,
        name=wanted.name,
        phone=wanted.phone,
        ways=tuple(
            replace(w, minutes=f"{wanted.minutes:g}") if wanted.minutes and w.start == wanted.start else w
            for w in form.ways
        ),
    )


def _cut_offs(seen: BoardReader, runner: str) -> tuple[Option, ...]:
    """Those ahead of her, for whoever may say what the race does."""
    if may(seen.parts, Call.RACE) is not May.YES:
        return ()
    event, say = seen.picture.built.event, Say(seen.reader, seen.picture.now)
    course = event.course_of(runner)
    return tuple(
        Option(
            f"{one.point} {one.edge}",
            f"{course.point(one.point).name}, {say.s(f'edge-{one.edge}')}: {say.when(one.at)}",
        )
        for one in moved_cut_off.limits(event, seen.picture.state, runner)
    )


def _title(event: Event, plan: MeetingPlan) -> str:
    return f"{event.course_of(plan.runner).point(plan.point).name}, {event.runner(plan.runner).name}"


def _people(event: Event, runner: str, plan: MeetingPlan | None) -> tuple[Option, ...]:
    """Those who could go, those who do ticked."""
    could = dict.fromkeys(p.person for p in event.people_for(runner, *_GO))
    goes = () if plan is None else plan.crew
    return tuple(Option(who, event.person(who).name, who in goes) for who in dict.fromkeys((*could, *goes)))


def _elsewhere(seen: BoardReader, runner: str) -> tuple[Option, ...]:
    """Points ahead of her where crew may be and nobody meets her."""
    event, state = seen.picture.built.event, seen.picture.state.runner(runner)
    points = event.course_of(runner).points
    order = [p.id for p in points]
    met = {m.point for m in event.meetings_of(runner)}
    ahead = (p for p in points if PointKind.START not in p.kinds and not state.past(p.id, order))
    free = (p for p in ahead if p.crew_access and p.id not in met)
    return tuple(Option(p.id, p.name) for p in free)


async def _page(
    request: web.Request,
    seen: BoardReader,
    form: ChangeSheet,
    wanted: Change | None = None,
    answer: ChangeAnswer | None = None,
) -> web.StreamResponse:
    language, event = seen.reader.language, seen.picture.built.event

    def s(key: str, **values: str | int) -> str:
        return sentence(language, key, **values)

    html = await asyncio.to_thread(
        request.app[TEMPLATES].get_template("change.html").render,
        t=labels(language),
        s=s,
        language=language,
        event=event,
        version=event.version,
        form=form,
        wanted=wanted,
        sent=() if wanted is None else tuple(_fields(wanted)),
        answer=answer,
        What=What,
        qr="" if answer is None or answer.invited is None else qr_of(answer.invited.link),
        here=not request.app[PARTS].settings.public_url,
    )
    return web.Response(text=html, content_type="text/html")


def _fields(wanted: Change) -> list[tuple[str, str]]:
    """The change as hidden fields, so that 'yes' says again what was looked at."""
    found = [("what", wanted.what.value)] if wanted.what is not None else []
    found += [("until", wanted.until.isoformat())] if wanted.until is not None else []
    found += [("minutes", f"{wanted.minutes:g}")] if wanted.minutes is not None else []
    for key in ("meeting", "runner", "point", "car", "name", "phone", "edge", "start"):
        found += [(key, value)] if (value := getattr(wanted, key)) else []
    found += [("crew", who) for who in wanted.crew]
    found += [("kit", "\n".join(wanted.kit))] if wanted.kit else []
    found += [("drives", "yes")] if wanted.drives else []
    return found
