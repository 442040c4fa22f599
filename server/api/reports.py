"""Calls that report: check-ins, positions, race-level facts, corrections.

Every report is kept at once. One that can't be right, or comes from somebody whose word alone does not count,
is kept as unconfirmed and asked about; 'asked for help' never waits for anything.
"""

from __future__ import annotations

import asyncio
import difflib
import hashlib
import secrets
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import structlog

from server.api import answers, auth, covering, fast_lane, help_now, named_besides
from server.api.alarms import open_about
from server.api.ask import Ask, Inside, not_yours
from server.api.confirm_policy import doubted
from server.api.crew_location import place_of_a_phone
from server.api.envelope import ApiError
from server.api.fill_defaults import COVERING, complete, of_meeting
from server.api.models import (
    CheckIn,
    CheckInByBib,
    Correct,
    Feature,
    FixIn,
    Positions,
    RaceFact,
    TrackerReport,
)
from server.api.replies import PositionsNoted
from server.api.snapshot import Picture
from server.api.told_here import told_here
from server.api.who_may import KIND_NEEDS, Call, May, may
from server.conversation.telling.answer import NotedAnswer
from server.event.model import Event, Part, PartKind
from server.facts.entry import NOT_NAMED, RACE_LEVEL, REQUESTS, Entry, Fix, Kind, Source
from server.facts.requests import addressees, quiet_until
from server.facts.stop_log import Logged
from server.journal import Appended, Status, content_key, entry_id
from server.plan.movements.names import place_name
from server.watch.notice import Made, NoticeKind
from server.watch.quiet import asleep_until
from server.watch.situation import GROUP

log = structlog.get_logger("reports")

_SOURCES = {
    PartKind.ORGANISER: Source.VOLUNTEER,
    PartKind.VOLUNTEER: Source.VOLUNTEER,
    PartKind.CREW: Source.CREW,
    PartKind.PACER: Source.CREW,
    PartKind.RUNNER: Source.RUNNER,
    PartKind.SAFETY_CONTACT: Source.CREW,
    PartKind.SUPPORTER: Source.SUPPORTER,
}


async def check_in(ask: Ask) -> NotedAnswer:
    """POST …/checkins: one report about a runner, kept and answered 'noted'."""
    sent = ask.sent(CheckIn)
    share = _may_report(ask, sent.kind)
    if sent.kind is Kind.ASKED_FOR_HELP:
        return await _called(ask, sent, ask.runner)
    picture = await ask.picture()
    if sent.kind in COVERING | REQUESTS:
        sent = of_meeting(sent, picture, ask.person)
    if sent.picture and not await ask.parts.journal.owns_picture(sent.picture, ask.event, ask.person):
        raise ApiError(
            "not_found", "you have no picture of that id", "picture", "Send the picture in the chat."
        )
    sent = await _own_correction(ask, await asyncio.to_thread(complete, sent, picture, ask.runner))
    if sent.kind is Kind.POSITION and sent.fix is not None and _own_phone_elsewhere(ask):
        return await _own_place(ask, picture, sent, sent.fix)
    entry = await _entry(ask, sent, ask.event, None if sent.kind in REQUESTS else ask.runner)
    entry = await asyncio.to_thread(doubted, entry, picture, share, ask.person_parts)
    if entry.kind is Kind.STAND_DOWN and not await _ends_something(ask, picture, entry):
        note = replace(
            entry, kind=Kind.NOTE, unconfirmed=False, doubt="", words=entry.words or sent.kind.value
        )
        return replace(await _keep(ask, picture, note), kind=Kind.STAND_DOWN, no_alarm=True)
    return await _keep(ask, picture, entry, more_follows=sent.more_follows)


async def check_in_by_bib(ask: Ask) -> NotedAnswer:
    """POST /v1/events/{event}/checkins: the same for the runner with that bib."""
    sent = ask.sent(CheckInByBib)
    event = await ask.parts.pictures.event(ask.event)
    wanted = sent.bib.strip().casefold()
    found = [r.id for r in event.runners if r.bib.casefold() == wanted]
    if len(found) != 1:
        what = (
            f"the event has no runner with bib '{sent.bib}'"
            if not found
            else f"bib '{sent.bib}' is of several runners"
        )
        near = difflib.get_close_matches(wanted, [r.bib for r in event.runners if r.bib], n=3)
        remedy = f"Near it: {', '.join(near)}. " if near and not found else ""
        raise ApiError("not_found", what, "bib", f"{remedy}Read the bib again, or report by name.")
    inside = Inside({"event": ask.event, "runner": found[0]})
    body = CheckIn.model_validate(sent.model_dump(exclude={"bib"}, exclude_unset=True))
    return await check_in(replace(ask, request=inside, body=body))


_RUNS = frozenset({PartKind.RUNNER, PartKind.PACER})


def _own_phone_elsewhere(ask: Ask) -> bool:
    """Whether a person's phone is not where the runner is: neither hers, nor her pacer's, nor a tracker."""
    kinds = {p.kind for p in ask.person_parts if p.runner in (None, ask.runner)}
    return ask.caller.reports_for is None and not kinds & _RUNS


async def _own_place(ask: Ask, picture: Picture, sent: CheckIn, fix: FixIn) -> NotedAnswer:
    """A place shared by a driver is the driver's, never the runner's: by a point they are there, else it is kept as a
    note of theirs."""
    where = place_of_a_phone(picture, ask.runner, Fix(fix.lat, fix.lon, fix.accuracy_m))
    words = sent.words or f"{fix.lat:.5f}, {fix.lon:.5f}"
    kind = Kind.NOTE if where is None else Kind.CREW_THERE
    own = sent.model_copy(
        update={"kind": kind, "point": where, "fix": None, "unconfirmed": False, "doubt": ""}
    )
    own = own.model_copy(update={"words": words}) if where is None else own
    return replace(await _keep(ask, picture, await _entry(ask, own, ask.event, ask.runner)), own_place=True)


async def _ends_something(ask: Ask, picture: Picture, entry: Entry) -> bool:
    """Whether there is an alarm that 'stand down' may be about. Without one it is kept as words: it must neither read as if
    one were on, nor put off the next. The same message again is what it was the first time."""
    before = await ask.parts.journal.entry(entry_id(ask.caller.sender, entry.key))
    if before is not None:
        return before.kind is Kind.STAND_DOWN
    return bool(open_about(picture, entry.runner or "")) or bool(picture.state.calls)


async def positions(ask: Ask) -> PositionsNoted:
    """POST …/positions: GeoJSON points, each kept by its own key or its content."""
    features = ask.sent(Positions).all()
    if not features:
        raise ApiError("invalid", "there is no position in it", "geometry", "Send a Feature with a Point.")
    share = _may_report(ask, Kind.POSITION)
    picture = await ask.picture(together=True)
    ask.timed = all(f.properties.time is not None for f in features)
    # In a thread: judging what a tracker kept back for hours takes seconds, in which others may call for help.
    entries = await asyncio.to_thread(_positions, ask, features, picture, share)
    return await _keep_positions(ask, entries)


async def tracker_report(ask: Ask) -> PositionsNoted:
    """GET /v1/report: one position from a tracker that can only ask for an address."""
    sent = ask.asked(TrackerReport)
    token = await auth.check(sent.key, ask.http, ask.parts, ask.now)
    ask.who = auth.Caller(token, token.person)
    target = ask.who.reports_for
    if target is None:
        raise not_yours(Call.POSITION)
    event, runner = target
    picture = await ask.parts.pictures.take_together(event, ask.now)
    seen = _tracker_time(sent.t, ask.now)
    ask.timed = bool(sent.t)
    fix = Fix(sent.lat, sent.lon, sent.acc, sent.speed, sent.bearing)
    entry = _with_key(_position_entry(ask, event, runner, seen, fix), sent.id)
    return await _keep_positions(ask, [doubted(entry, picture, May.YES, ())])


async def race_fact(ask: Ask) -> NotedAnswer:
    """POST …/race: one entry by the organiser that concerns everybody."""
    sent = ask.sent(RaceFact)
    if sent.kind not in RACE_LEVEL:
        known = ", ".join(sorted(RACE_LEVEL))
        raise ApiError("invalid", f"'{sent.kind}' is not a race-level fact", "kind", f"Use one of: {known}.")
    picture = await ask.picture()
    as_check_in = CheckIn.model_validate(
        {**sent.model_dump(exclude={"edge", "wave"}), "kind": sent.kind.value}
    )
    as_check_in = complete(as_check_in, picture, None, edge=sent.edge, wave=sent.wave)
    as_check_in = await _own_correction(ask, as_check_in)
    entry = await _entry(ask, as_check_in, ask.event, None)
    return await _keep(ask, picture, replace(entry, edge=sent.edge, wave=sent.wave))


async def call_for_help(ask: Ask) -> NotedAnswer:
    """POST …/help: a call for help that names none of the many runners its sender may mean."""
    sent = ask.sent(CheckIn)
    if sent.kind is not Kind.ASKED_FOR_HELP:
        raise ApiError("invalid", f"'{sent.kind}' is no call for help", "kind", "Use POST …/checkins.")
    return await _called(ask, sent, None)


async def _called(ask: Ask, sent: CheckIn, runner: str | None) -> NotedAnswer:
    """A call for help, for her or for nobody named: kept, and its alarm made, before anything else is looked at."""
    entry = await _entry(ask, await _own_correction(ask, sent), ask.event, runner)
    noted = await _out(ask, replace(entry, doubt=NOT_NAMED) if runner is None else entry)
    event = await ask.parts.pictures.event(ask.event)
    for other in named_besides.besides(event, replace(entry, id=noted.entry), ask.person_parts):
        hers = await _out(ask, named_besides.call_for(replace(entry, id=noted.entry), other))
        noted = replace(noted, told=tuple(dict.fromkeys((*noted.told, *hers.told))))
    return noted


async def _out(ask: Ask, entry: Entry) -> NotedAnswer:
    """Put out a call for help, and say what came of it; the rest of what it changes is looked at after it is out."""
    out = await fast_lane.put_out(ask.parts, entry, ask.now, timed=ask.timed)
    _count(ask, out.appended)
    _refuse_conflict(out.appended)
    made = out.made
    if out.appended.status is Status.NOTED:
        rest = await ask.parts.ticker.after_entry(entry.event, entry.runner)
        made = (*made, *rest)
    noted = _noted(out.event, out.appended, made, ask.now)
    if entry.runner is None:
        return noted
    about = tuple(m for m in (*out.before, *made) if m.notice.key.runner == entry.runner)
    holder = help_now.joined(about, out.appended.entry.id)
    return replace(noted, joins=answers.person_name(out.event, holder) if holder else holder)


async def take_back(ask: Ask) -> NotedAnswer:
    """POST /v1/entries/{id}/take-back: what it said no longer counts; the entry itself stays."""
    return await _about(ask, Kind.TAKEN_BACK, Call.TAKE_BACK)


async def confirm(ask: Ask) -> NotedAnswer:
    """POST /v1/entries/{id}/confirm: an unconfirmed entry counts from now on."""
    return await _about(ask, Kind.CONFIRMED, Call.CONFIRM)


async def _about(ask: Ask, kind: Kind, call: Call) -> NotedAnswer:
    sent = ask.sent(Correct)
    entry = await ask.parts.journal.entry(ask.request.match_info["entry"])
    if entry is None:
        raise not_yours(call)
    ask.person_parts = await _parts(ask, entry.event)
    share = may(ask.person_parts, call, entry.runner)
    if share is May.NO or (share is May.SOME and entry.by != ask.person):
        raise not_yours(call)
    if kind is Kind.TAKEN_BACK and entry.kind is Kind.ASKED_FOR_HELP and not _may_call_off(ask, entry):
        raise not_yours(call)
    picture = await ask.parts.pictures.take(entry.event, ask.now)
    if kind is Kind.TAKEN_BACK and sent.within_s is not None and not await _done_before(ask, sent):
        _still_in_time(entry, picture, timedelta(seconds=sent.within_s), ask.now)
    if sent.meant is not None and all(r.id != sent.meant for r in picture.event.runners):
        raise ApiError("not_found", f"the event has no runner '{sent.meant}'", "meant", "Send a runner's id.")
    as_check_in = CheckIn(
        kind=kind, about=entry.id, key=sent.key, sent_at=sent.sent_at, words=sent.words, person=sent.meant
    )
    made = await _entry(ask, as_check_in, entry.event, entry.runner)
    hers = await _hers(ask, entry, sent.meant) if kind is Kind.TAKEN_BACK else None
    done = await _keep(ask, picture, replace(made, point=entry.point))
    if kind is Kind.TAKEN_BACK and entry.kind is Kind.ASKED_FOR_HELP:
        await _besides_too(ask, picture, made, entry)
    if hers is None:
        return done
    return replace(hers, told=tuple(dict.fromkeys((*hers.told, *done.told))))


async def _besides_too(ask: Ask, picture: Picture, made: Entry, call: Entry) -> None:
    """A call taken back is taken back for those whom it named besides."""
    for runner in picture.event.runners:
        other = entry_id(call.sender, named_besides.key_for(call.id, runner.id))
        if await ask.parts.journal.entry(other) is not None:
            key = named_besides.key_for(made.key, runner.id)
            await _keep(ask, picture, replace(made, about=other, runner=runner.id, key=key, point=None))


async def _hers(ask: Ask, call: Entry, runner: str | None) -> NotedAnswer | None:
    """The call for the runner it turns out to be for, in the words and of the time in which it came: out before the
    call that named nobody is over."""
    if call.kind is not Kind.ASKED_FOR_HELP or call.runner is not None or runner is None:
        return None
    key = "for-" + hashlib.sha256(f"{call.id} {runner}".encode()).hexdigest()[:40]
    return await _out(ask, replace(call, id="", runner=runner, key=key, received_at=ask.now, doubt=""))


async def _done_before(ask: Ask, sent: Correct) -> bool:
    """Whether this very call came before: then it is answered as it was."""
    return sent.key is not None and bool(await ask.parts.journal.entry(entry_id(ask.caller.sender, sent.key)))


def _still_in_time(entry: Entry, picture: Picture, within: timedelta, now: datetime) -> None:
    """An undo is for a slip just made: later people have acted on it. By when it was stored, which no restart forgets."""
    waits = (*picture.state.unconfirmed, *(e for r in picture.state.runners for e in r.unconfirmed))
    free = entry.kind in (Kind.ASKED_FOR_HELP, Kind.QUIET, Kind.REMIND) or any(
        e.id == entry.id for e in waits
    )
    if not free and now - entry.received_at > within:
        minutes = round(within / timedelta(minutes=1))
        raise ApiError(
            "too_late",
            f"entry {entry.id} was received more than {minutes} min ago",
            "within_s",
            "Send a correction that says what is right.",
        )


def _may_call_off(ask: Ask, entry: Entry) -> bool:
    """A call for help is taken back by whoever sent it, else by those who may stand an alarm down."""
    return entry.by == ask.person or may(ask.person_parts, Call.STAND_DOWN, entry.runner) is May.YES


async def _own_correction(ask: Ask, sent: CheckIn) -> CheckIn:
    """A report in the place of another ends what that one said: it takes what taking it back takes. A key names one of
    the sender's own. A call for help is let through whatever it would replace, and then replaces nothing."""
    if sent.replaces is None:
        return sent
    entry = await ask.parts.journal.entry(sent.replaces)
    if entry is None or entry.sender == ask.caller.sender or await _may_replace(ask, entry):
        return sent
    if sent.kind is Kind.ASKED_FOR_HELP:
        return sent.model_copy(update={"replaces": None})
    raise not_yours(Call.TAKE_BACK)


async def _may_replace(ask: Ask, entry: Entry) -> bool:
    if ask.caller.reports_for is not None or entry.event != ask.event:
        return False
    share = may(ask.person_parts, Call.TAKE_BACK, entry.runner)
    if share is May.NO or (share is May.SOME and entry.by != ask.person):
        return False
    return entry.kind is not Kind.ASKED_FOR_HELP or _may_call_off(ask, entry)


async def _parts(ask: Ask, event: str) -> tuple[Part, ...]:
    return tuple(p.part for p in await ask.parts.journal.parts(ask.person) if p.event == event)


def _may_report(ask: Ask, kind: Kind) -> May:
    """What the caller's part or device allows for that kind; ApiError otherwise."""
    call = KIND_NEEDS.get(kind)
    if call is None or call is Call.RACE:
        raise ApiError("invalid", f"'{kind}' can't be reported here", "kind", _elsewhere(call))
    if ask.caller.reports_for is not None:
        if call not in (Call.POSITION, Call.CHECK_IN, Call.HELP):
            raise not_yours(call)
        return May.YES
    share = ask.may(call, ask.runner)
    if share is May.NO:
        raise not_yours(call)
    return share


def _elsewhere(call: Call | None) -> str:
    if call is Call.RACE:
        return "Use POST /v1/events/{event}/race."
    return "Use the take-back, confirm or answer call."


LONGEST = {Kind.RESTING: timedelta(hours=12), Kind.QUIET: timedelta(hours=12)}
LONGEST_ELSE = timedelta(days=4)


def _until_in_reason(sent: CheckIn, now: datetime) -> None:
    """An end far off would keep the watch quiet for so long: 'resting until 2037' is a slip, or worse."""
    longest = LONGEST.get(sent.kind, LONGEST_ELSE)
    start = min(sent.seen_at or now, now)
    if sent.until is not None and sent.until - start > longest:
        raise ApiError(
            "invalid",
            f"'{sent.kind.value}' until {sent.until.isoformat()} is more than {round(longest / timedelta(hours=1))} hours",
            "until",
            "Give the day and time that is meant, or leave it out.",
        )
    if sent.amount_s is not None and timedelta(seconds=sent.amount_s) > longest:
        raise ApiError(
            "invalid",
            f"'{sent.kind.value}' for {round(sent.amount_s / 3600)} hours is too long",
            "amount_s",
            f"At most {round(longest / timedelta(hours=1))} hours; send it again if it goes on.",
        )


async def _entry(ask: Ask, sent: CheckIn, event: str, runner: str | None) -> Entry:
    """The entry of a report. A report sent again without times keeps those it had, so that it stays the same."""
    sender = ask.caller.sender
    timed = sent.sent_at is not None and sent.kind is not Kind.ASKED_FOR_HELP
    before = await ask.parts.journal.entry(entry_id(sender, sent.key)) if sent.key and not timed else None
    _until_in_reason(sent, ask.now)
    sent_at = sent.sent_at or (before.sent_at if before else ask.now)
    seen_at = sent.seen_at or (before.seen_at if before and sent.sent_at is None else sent_at)
    ask.timed = sent.seen_at is not None or sent.sent_at is not None
    if sent.kind is Kind.ASKED_FOR_HELP:
        ask.timed = ask.timed and seen_at <= ask.now
        # A telephone whose clock is ahead: she needs help now, not by then.
        seen_at = min(seen_at, before.received_at if before else ask.now)
    entry = Entry(
        id="",
        event=event,
        runner=runner,
        kind=sent.kind,
        seen_at=seen_at,
        sent_at=sent_at,
        received_at=ask.now,
        by=_by(ask),
        source=_source(ask, runner),
        sender=sender,
        key=sent.key or "k-" + secrets.token_hex(12),
        via=ask.caller.channel or "api",
        point=sent.point,
        unconfirmed=sent.unconfirmed and sent.kind is not Kind.ASKED_FOR_HELP,
        doubt=sent.doubt,
        replaces=sent.replaces,
        about=sent.about,
        how=sent.how,
        fix=_fix(sent.fix),
        until=sent.until,
        amount=timedelta(seconds=sent.amount_s) if sent.amount_s is not None else None,
        factor=sent.factor,
        person=sent.person,
        words=sent.words,
        seen_spread=timedelta(seconds=sent.seen_spread_s),
        why=sent.why,
        to=sent.to,
        logged=tuple(Logged(one.item, one.amount, one.level, one.words) for one in sent.logged),
        picture=sent.picture,
        edge=sent.edge,
    )
    device = ask.caller.reports_for is not None
    return _with_key(entry, sent.key) if device else entry


def _by(ask: Ask) -> str:
    if ask.caller.reports_for is not None:
        return ask.caller.token.person or ask.caller.token.device
    return ask.person


def _source(ask: Ask, runner: str | None) -> Source:
    """How the report came about, by the part nearest to the runner; a device is a tracker."""
    if ask.caller.reports_for is not None:
        return Source.TRACKER
    kinds = {p.kind for p in ask.person_parts if runner is None or p.runner in (None, runner)}
    return next((source for kind, source in _SOURCES.items() if kind in kinds), Source.SUPPORTER)


def _fix(sent: FixIn | None) -> Fix | None:
    if sent is None:
        return None
    return Fix(sent.lat, sent.lon, sent.accuracy_m, sent.speed_m_s, sent.heading_deg)


def _positions(ask: Ask, features: Sequence[Feature], picture: Picture, share: May) -> list[Entry]:
    return [doubted(_position(ask, f), picture, share, ask.person_parts) for f in features]


def _position(ask: Ask, feature: Feature) -> Entry:
    lon, lat = feature.geometry.coordinates[:2]
    p = feature.properties
    fix = Fix(lat, lon, p.accuracy, p.speed, p.heading)
    return _with_key(_position_entry(ask, ask.event, ask.runner, p.time or ask.now, fix), p.key)


def _position_entry(ask: Ask, event: str, runner: str, seen: datetime, fix: Fix) -> Entry:
    return Entry(
        id="",
        event=event,
        runner=runner,
        kind=Kind.POSITION,
        seen_at=seen,
        sent_at=seen,
        received_at=ask.now,
        by=_by(ask),
        source=_source(ask, runner),
        sender=ask.caller.sender,
        key="",
        via=ask.caller.channel or "api",
        fix=fix,
    )


def _with_key(entry: Entry, key: str | None) -> Entry:
    """A sender that makes no keys is given the hash of what it sent."""
    return replace(entry, key=key or content_key(entry))


def _tracker_time(text: str, now: datetime) -> datetime:
    """A tracker's time: empty = now, POSIX seconds (or milliseconds), or ISO 8601 with an offset."""
    if not text:
        return now
    try:
        number = float(text)
    except ValueError:
        number = None
    try:
        if number is not None:
            return datetime.fromtimestamp(number / 1000 if number > 1e11 else number, UTC)
        moment = datetime.fromisoformat(text.replace(" ", "+"))  # a '+' in a query arrives as a space
    except (ValueError, OverflowError, OSError):
        moment = None
    if moment is None or moment.tzinfo is None:
        raise ApiError(
            "invalid", "not a time", "t", "Send POSIX seconds, or ISO 8601 with an offset (…T03:10:00Z)."
        )
    return moment.astimezone(UTC)


async def _append(ask: Ask, entry: Entry) -> Appended:
    appended = await ask.parts.journal.append(entry, timed=ask.timed)
    _count(ask, appended)
    return appended


def _count(ask: Ask, appended: Appended) -> None:
    entry = appended.entry
    ask.parts.metrics.entries.labels(entry.kind.value, appended.status.value).inc()
    log.info(
        "entry handed in",
        event_id=entry.event,
        entry=entry.id,
        kind=entry.kind.value,
        point=entry.point,
        status=appended.status.value,
        unconfirmed=entry.unconfirmed,
    )


def _refuse_conflict(appended: Appended) -> None:
    if appended.status is Status.CONFLICT:
        raise ApiError(
            "conflict",
            f"the key came before with other content (entry {appended.entry.id}); both are kept, the first counts",
            "key",
            "Send a new report with a new key, or take the first back.",
        )


MORE_WITHIN = timedelta(seconds=5)
"""So long the rest of a message may be under way before what has come of it is looked at by itself (own choice)."""


async def _keep(ask: Ask, picture: Picture, entry: Entry, *, more_follows: bool = False) -> NotedAnswer:
    """Append, look at what follows, and say both. The look can fail without the entry being lost. `more_follows`: the same
    message says more, which is looked at with this: 'in' alone would wake people whom 'out' lets sleep."""
    appended = await _append(ask, entry)
    _refuse_conflict(appended)
    made: Sequence[Made] = ()
    if appended.status is Status.NOTED and more_follows:
        ask.parts.ticker.on_due(ask.now + MORE_WITHIN)
    elif appended.status is Status.NOTED:
        made = await ask.parts.ticker.after_entry(entry.event, entry.runner)
        picture = await ask.parts.pictures.with_entry(entry.event, appended.number, ask.now, made)
    noted = await asyncio.to_thread(_noted_in, picture, appended, made, ask.now)
    return replace(noted, yours=await told_here(ask, picture, appended, made))


async def _keep_positions(ask: Ask, entries: list[Entry]) -> PositionsNoted:
    kept = await ask.parts.journal.append_all(entries, timed=ask.timed)
    for status, number in Counter(k.status for k in kept).items():
        ask.parts.metrics.entries.labels(Kind.POSITION.value, status.value).inc(number)
    log.info("positions handed in", event_id=entries[0].event, number=len(kept))
    if any(k.status is Status.NOTED for k in kept):
        await ask.parts.ticker.after_entry(entries[0].event, entries[0].runner, together=True)
    return PositionsNoted(
        noted=sum(k.status is Status.NOTED for k in kept),
        same_again=sum(k.status is Status.SAME_AGAIN for k in kept),
        unconfirmed=sum(k.entry.unconfirmed for k in kept),
        conflicts=tuple(e.key for e, k in zip(entries, kept, strict=True) if k.status is Status.CONFLICT),
    )


def _place(event: Event, entry: Entry) -> str:
    """The name of an entry's point; of a hotel too, where crew set out from it."""
    if entry.kind is Kind.CREW_LEFT:
        return place_name(event, entry.point)
    return answers.point_name(event, entry.runner, entry.point) if entry.runner else ""


def _goes(picture: Picture, entry: Entry) -> str:
    """Who holds the meeting that an entry takes over: the first who took it, by name."""
    if entry.kind is not Kind.TAKES_OVER:
        return ""
    who = covering.holder(picture, entry.about or "")
    return answers.person_name(picture.event, who) if who else ""


_HEAR_OF_IT = frozenset({NoticeKind.ALARM_NEWS, NoticeKind.CALL_BACK})
"""Notices to people who are asked nothing: whoever calls for help is told who will see to it, not who knows of it."""


def _reaches(m: Made) -> bool:
    return not m.failed and m.notice.key.kind not in _HEAR_OF_IT


def _noted_in(picture: Picture, appended: Appended, made: Sequence[Made], now: datetime) -> NotedAnswer:
    """The same, with where she is due next and who comes to a meeting now."""
    entry = appended.entry
    ahead = answers.next_point(picture, entry.runner) if entry.runner else None
    return replace(
        _noted(picture.event, appended, made, now),
        next_name=ahead.name if ahead else "",
        next_window=ahead.window if ahead else None,
        goes=_goes(picture, entry),
        **_heard(picture, entry, now),
    )


def _heard(picture: Picture, entry: Entry, now: datetime) -> dict[str, Any]:
    """Of words for others who was told, who reads them later, and who can't be told; the same when it comes again."""
    if entry.kind not in REQUESTS - {Kind.QUIET, Kind.REMIND}:
        return {}
    event, state = picture.event, picture.state
    people = (entry.to,) if entry.kind is Kind.ASKED_TO_SWAP and entry.to else addressees(entry, event, state)
    mine = [m for m in picture.situation.made if entry.id in m.notice.facts]
    reached = {m.notice.key.person for m in mine if _reaches(m)}
    tried = {m.notice.key.person for m in mine}
    later = [
        (who, until)
        for who in people
        if who not in tried
        for until in [asleep_until(event.person(who), event, now) or quiet_until(state, who, now)]
        if until is not None
    ]
    waits = tuple((answers.person_name(event, who), until) for who, until in later)
    known = reached | {who for who, _ in later}
    return {
        "told": tuple(answers.person_name(event, p) for p in people if p in reached),
        "waits": waits,
        "unheard": tuple(answers.person_name(event, p) for p in people if p not in known),
    }


def _noted(event: Event, appended: Appended, made: Sequence[Made], now: datetime) -> NotedAnswer:
    entry = appended.entry
    about = {entry.id, entry.about} if entry.kind in (Kind.CONFIRMED, Kind.TAKEN_BACK) else {entry.id}
    # Somebody without a channel that works has been told nothing: who called for help must not count on them.
    reached = {m.notice.key.person for m in made if about & set(m.notice.facts) and _reaches(m)}
    told = sorted(p for p in reached - {entry.by} if not p.startswith(GROUP))
    runner = entry.runner or ""
    return NotedAnswer(
        entry=entry.id,
        status=appended.status.value,
        kind=entry.kind,
        at=entry.seen_at,
        runner=runner,
        runner_name=event.runner(runner).name if runner else "",
        point=entry.point,
        name=_place(event, entry),
        unconfirmed=entry.unconfirmed,
        doubt=entry.doubt,
        told=tuple(answers.person_name(event, p) for p in told),
        undo_until=now + answers.UNDO_WITHIN,
        person=answers.person_name(event, entry.person or entry.by),
        why=entry.why.value if entry.why is not None else "",
    )
