"""What the organiser reports of the race itself: completed with what the event knows, and told back in the words in which
those affected are told."""

from __future__ import annotations

from dataclasses import replace

from server.conversation.submit import hand_in
from server.conversation.telling.say import lines
from server.conversation.understanding import UNDO_WITHIN, Report
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.facts.entry import Kind

_SAID = {
    Kind.START_DELAYED: "race-change-start-delayed",
    Kind.HELD: "race-change-runners-held",
    Kind.RELEASED: "race-change-runners-released",
    Kind.CUT_OFF_MOVED: "race-change-cut-off-moved",
}


async def report(visit: Visit, one: Report) -> Reply | None:
    """The reply to news of the race, once it is handed in; what is missing is asked for. None for any other report."""
    if one.kind not in _SAID:
        return None
    if one.kind is Kind.START_DELAYED and one.amount is None and one.until is None:
        return visit.reply(visit.s("race-news-how-long"))
    if one.kind is Kind.CUT_OFF_MOVED:
        moved = _with_its_edge(visit, one)
        if moved is None:
            return visit.reply(visit.s("race-news-which-cut-off", place=visit.some_place()))
        one = moved
    noted = await hand_in(visit, one, visit.key())
    minutes = round(UNDO_WITHIN.total_seconds() / 60)
    text = lines(
        visit.s(_SAID[one.kind], **_values(visit, one)),
        visit.s("race-news-noted"),
        visit.s("noted-undo", minutes=str(minutes)),
    )
    return visit.reply(text, visit.undo_button(noted.entry))


def _with_its_edge(visit: Visit, one: Report) -> Report | None:
    """The cut-off that is meant, in or out, with its new time; None where the event has none there, or several and no
    place was said."""
    runner = next((r.id for r in visit.event.runners), None)
    if runner is None:
        return None
    limits = visit.view.cut_offs(visit.event.id, runner).cut_offs
    meant = [c for c in limits if one.point in (None, c.point)]
    if len({c.point for c in meant}) != 1:
        return None
    limit = meant[-1]
    until = one.until or (limit.at + one.amount if one.amount is not None else None)
    if until is None:
        return None
    return replace(one, point=limit.point, edge=limit.edge, until=until, amount=None)


def _values(visit: Visit, one: Report) -> dict[str, str | int]:
    return {
        "amount": visit.say.length(one.amount) if one.amount is not None else "none",
        "until": visit.say.when(one.until) if one.until is not None else "none",
        "place": visit.point_name(None, one.point) or "none",
        "edge": visit.s(f"edge-{one.edge}") if one.edge else "none",
        "was": "none",
    }
