"""Reports on their way to the server: what of each is sent, which entry it is instead of, and what is remembered of it
for undo and correction."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

from server.conversation import actions
from server.conversation.dialogue import Handed
from server.conversation.telling.answer import NotedAnswer
from server.conversation.understanding import Report
from server.conversation.understanding.logged import logged_in, of_writer
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import NOT_NAMED, RACE_LEVEL, REQUESTS, Kind, Retired
from server.facts.hearsay import HEARSAY
from server.facts.stop_log import Logged

HANDED_KEPT = 20
TOLD_AGAIN = timedelta(minutes=20)
"""Who tells so soon once more that she was in or out, now with a time, tells a better one (own choice)."""
_MOVES = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})


async def hand_in(visit: Visit, one: Report, key: str, *, more_follows: bool = False) -> NotedAnswer:
    """One report to the server, and into memory for undo. Raises what the API raises. `more_follows`: the same message says
    more of where she was, and is looked at as a whole."""
    runner = one.runner or (visit.event.runners[0].id if visit.event.runners else "")
    if one.kind is Kind.POSITION and not one.placed_by_words:
        raise ValueError("a position has a fix: it is handed in by `position`")
    body = _body(visit, one, key)
    if more_follows:
        body["more_follows"] = True
    nobodys = one.kind is Kind.ASKED_FOR_HELP and one.unnamed and one.runner is None
    if nobodys:
        told = await actions.call_for_help(visit.event.id, body)
    elif one.kind in RACE_LEVEL:
        told = await actions.race_fact(visit.event.id, body)
    else:
        told = await actions.check_in(visit.event.id, runner, body)
    how = await _how_besides(visit, one, runner, key) if one.kind not in RACE_LEVEL and not nobodys else None
    if how is not None:
        both = tuple(dict.fromkeys((*told.told, *how.told)))
        told = replace(told, told=both)
    unsure, also = told.unconfirmed, "" if how is None else how.entry
    waiting = _open_notices(visit) if unsure else ()
    handed = Handed(told.entry, visit.now, visit.event.id, one, unsure, visit.message(), also, waiting)
    before = _says_how_of(visit, one, runner)
    if before is not None:
        # How it ended goes with that it ended: undone together.
        handed = replace(handed, also=before.entry)
        visit.memory.handed.remove(before)
    visit.memory.handed.append(handed)
    del visit.memory.handed[:-HANDED_KEPT]
    return told


def _says_how_of(visit: Visit, one: Report, runner: str) -> Handed | None:
    """This person's report that her race is over, where `one` now says how."""
    if one.kind is not Kind.RETIRED or one.how is Retired.NOT_SAID:
        return None
    hers = (
        h
        for h in reversed(visit.memory.handed)
        if h.event == visit.event.id and h.report.kind is Kind.RETIRED and h.report.runner in (None, runner)
    )
    return next((h for h in hers if h.report.how is Retired.NOT_SAID and not h.also), None)


async def _how_besides(visit: Visit, one: Report, runner: str, key: str) -> NotedAnswer | None:
    """'in at mill 14:55, feet bad': how she is, as an entry of its own; None where nothing is said of it."""
    if not one.condition or one.kind in (Kind.HOW_SHE_IS, Kind.RESTING):
        return None
    body = _body(visit, replace(one, kind=Kind.HOW_SHE_IS, guessed=False), f"{key}.how")
    before = next((h.also for h in visit.memory.handed if h.entry == body["replaces"]), "")
    body["replaces"] = before or None
    try:
        return await actions.check_in(visit.event.id, runner, body)
    except Refused as error:
        if error.code != "not_yours":
            raise
        return None  # a supporter's: the sighting is kept, with all of its words


def _open_notices(visit: Visit) -> tuple[int, ...]:
    """What waits for this person's answer once a report is in: it may itself have brought a notice."""
    events = visit.view.me().events
    return next((e.open_notices for e in events if e.id == visit.event.id), ())


def log_in(visit: Visit, text: str) -> tuple[tuple[Logged, ...], bool]:
    """What words say for her log, and whether they say no more; nothing where crew speak of what they themselves had."""
    if PartKind.RUNNER not in visit.kinds and of_writer(text):
        return (), False
    return logged_in(text, names_in(visit))


def names_in(visit: Visit) -> tuple[str, ...]:
    """What runners are called, which is no part of what they ate."""
    return tuple(w for r in visit.event.runners for w in (r.name, r.bib))


def _body(visit: Visit, one: Report, key: str) -> dict[str, Any]:
    # Seen by words, with no place on the globe: all it says is that she is up and moving, once somebody stands for it.
    kind = Kind.MOVING_AGAIN if one.placed_by_words and one.kind is Kind.POSITION else one.kind
    said = one.logged or (log_in(visit, one.words)[0] if kind is Kind.HOW_SHE_IS and not one.hearsay else ())
    logged = [_logged(x) for x in said]
    unsure = one.hearsay or (one.guessed and not visit.incoming.short_form)
    return {
        "kind": kind.value,
        "point": one.point,
        "seen_at": one.seen_at.isoformat(),
        "sent_at": visit.sent_at.isoformat(),
        "key": key,
        "how": one.how.value if one.how else None,
        "amount_s": one.amount.total_seconds() if one.amount else None,
        "until": one.until.isoformat() if one.until else None,
        "words": one.words[:2000] or None,
        # The watch finds a confirmed drive by where it goes (point) and where it starts (about).
        "about": one.words.partition(" > ")[0] if kind is Kind.DRIVE_CONFIRMED else None,
        **({"about": one.edge} if kind is Kind.LOOKED_BACK else {}),
        "replaces": _replaced(visit, one),
        **({"logged": logged} if logged else {}),
        **({"why": one.why.value} if one.why else {}),
        **({"edge": one.edge} if one.edge and kind is not Kind.LOOKED_BACK else {}),
        **({"about": one.runner} if one.edge and kind is Kind.REMIND else {}),
        **({"to" if kind in REQUESTS else "person": one.person} if one.person else {}),
        **({"doubt": NOT_NAMED} if one.unnamed else {}),
        **(
            {"unconfirmed": True, "doubt": HEARSAY if one.hearsay else "guessed"}
            if unsure and one.kind not in RACE_LEVEL
            else {}
        ),
    }


def _logged(one: Logged) -> dict[str, Any]:
    level = one.level.value if one.level else None
    return {"item": one.item.value, "amount": one.amount, "level": level, "words": one.words[:200]}


def _replaced(visit: Visit, one: Report) -> str | None:
    """The entry this one is instead of: the one made from the message of which this is the edited form; for
    a correction this person's last of the same kind and runner, else the last one; for a time told of what they told a
    while ago that; else none."""
    edited = visit.first_key()
    if edited:
        return next((h.entry for h in visit.memory.handed if h.message == edited), None)
    if one.kind is Kind.LOG:
        return _said_more_of(visit, one)
    if one.instead:
        return one.instead
    if not one.corrects:
        return _told_again(visit, one)
    mine = [h for h in visit.memory.handed if h.event == visit.event.id and h.report.runner == one.runner]
    same = [h for h in mine if h.report.kind is one.kind]
    there = [h for h in same if h.report.point == one.point]
    if there:
        return there[-1].entry
    return (same or mine)[-1].entry if mine else None


def _told_again(visit: Visit, one: Report) -> str | None:
    """This person's report of the same a while ago, where this one says another time: nobody comes to a point twice."""
    if one.kind not in _MOVES or one.point is None or one.seen_at == visit.sent_at:
        return None
    same = (
        h
        for h in reversed(visit.memory.handed)
        if h.event == visit.event.id
        and (h.report.kind, h.report.runner, h.report.point) == (one.kind, one.runner, one.point)
    )
    before = next(same, None)
    if before is None or visit.now - before.at > TOLD_AGAIN or before.report.seen_at == one.seen_at:
        return None
    return before.entry


def _said_more_of(visit: Visit, one: Report) -> str | None:
    """Of the log: this person's press just before that said of the same thing only that it was."""
    last = visit.memory.handed[-1] if visit.memory.handed else None
    if last is None or last.event != visit.event.id or last.report.kind is not Kind.LOG:
        return None
    had = last.report
    bare = [x for x in had.logged if x.amount is None and x.level is None and not x.words]
    same = (had.runner, had.point, [x.item for x in bare]) == (
        one.runner,
        one.point,
        [x.item for x in one.logged],
    )
    return last.entry if bare and same and len(bare) == len(had.logged) else None
