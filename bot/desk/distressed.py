"""Calls for help: whom to call first, then the words go on at once, and what else they say is kept after them."""

from __future__ import annotations

from bot.api_client import ApiError, UnreachableError
from bot.channels.base import Reply
from bot.desk.handing import hand_in
from bot.desk.visit import Visit
from bot.words import UNDO_WITHIN, Distress, Report
from server.facts.entry import Kind
from server.wording import replies
from server.wording.say import lines


async def distress(visit: Visit, cry: Distress) -> Reply:
    """Whom to call stands first, and the words go on at once; nothing here waits for a tap."""
    runner = cry.runner or next(iter(visit.context().own_runners), None)
    runner = runner or (visit.event.runners[0].id if visit.event.runners else None)
    told: tuple[str, ...] | None = None
    entry, again = "", False
    for number, whose in enumerate((runner, *cry.also) if runner is not None else ()):
        one = Report(Kind.ASKED_FOR_HELP, visit.sent_at, whose, words=cry.words)
        try:
            answer = (await hand_in(visit, one, visit.key(number))).data
            told = tuple(dict.fromkeys((*(told or ()), *answer.told)))
            entry = entry or answer.entry
        except UnreachableError:
            again = True
        except ApiError:
            continue
    control = (visit.event.race_control.name, visit.event.race_control.phone)
    text = replies.say_distress(visit.say, control, visit.event.emergency_number, told, by_self=cry.by_self)
    text = lines(text, await _besides(visit, cry))
    # What did not get through is handed over again by itself, until it does.
    return Reply(text, visit.undo_button(entry) if entry else (), again=again)


async def _besides(visit: Visit, cry: Distress) -> str:
    """Where the same words say she was seen: kept as a report of its own, after the call and never in its way."""
    noted = []
    for number, one in enumerate(cry.reports, start=len(cry.also) + 1):
        try:
            noted.append((await hand_in(visit, one, visit.key(number))).data)
        except (ApiError, UnreachableError):
            continue
    return lines(
        *(replies.say_noted(visit.say, a, cry.words, UNDO_WITHIN, ask=True).split("\n")[0] for a in noted)
    )
