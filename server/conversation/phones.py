"""Where a phone is: a place that was shared, whose phone it is, and the end of a live share."""

from __future__ import annotations

from server.conversation import actions
from server.conversation.dialogue import Handed
from server.conversation.telling import replies
from server.conversation.understanding import UNDO_WITHIN, Report
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import Fix, Kind

_OWN = frozenset({PartKind.RUNNER, PartKind.PACER})


async def position(visit: Visit, fix: Fix, runner: str) -> Reply:
    """A shared place. A runner's or pacer's phone is where she is; anybody else's is their own place."""
    body = {
        "kind": Kind.POSITION.value,
        "seen_at": visit.sent_at.isoformat(),
        "sent_at": visit.sent_at.isoformat(),
        "key": visit.key(),
        "fix": {
            "lat": fix.lat,
            "lon": fix.lon,
            **({"accuracy_m": fix.accuracy_m} if fix.accuracy_m is not None else {}),
            **({"speed_m_s": fix.speed_m_s} if fix.speed_m_s is not None else {}),
            **({"heading_deg": fix.heading_deg} if fix.heading_deg is not None else {}),
        },
    }
    told = await actions.check_in(visit.event.id, runner, body)
    answer = told
    place = Report(Kind.POSITION, visit.sent_at, runner)
    visit.memory.handed.append(Handed(answer.entry, visit.now, visit.event.id, place, answer.unconfirmed))
    if visit.incoming.live and not answer.unconfirmed:
        return visit.reply("")
    if answer.own_place:
        return visit.reply(visit.s("position-yours", place=answer.name or "none", runner=answer.runner_name))
    text = replies.say_noted(visit.say, answer, "", UNDO_WITHIN)
    if not answer.unconfirmed:
        return visit.reply(text, visit.undo_button(answer.entry))
    return visit.reply(text, visit.confirm_buttons(answer.entry))


async def share_ended(visit: Visit, runner: str | None) -> Reply:
    """A live position ended. That says nothing of her; of her own or her pacer's phone it is kept that contact was
    lost, so that nobody takes the silence after it for rest."""
    here = visit.runner(runner)
    if here is not None and visit.kinds & _OWN:
        body = {
            "kind": Kind.CONTACT_LOST.value,
            "seen_at": visit.sent_at.isoformat(),
            "sent_at": visit.sent_at.isoformat(),
            "key": visit.key(),
        }
        await actions.check_in(visit.event.id, here.id, body)
    return visit.reply(visit.s("live-ended", runner=here.name if here else ""))
