"""Where a phone is: a place that was shared, whose phone it is, and the end of a live share."""

from __future__ import annotations

from bot.channels.base import Reply
from bot.desk.memory import Handed
from bot.desk.visit import Visit
from bot.words import UNDO_WITHIN, Report
from server.event.model import PartKind
from server.facts.entry import Fix, Kind
from server.wording import replies
from server.wording.message import Press
from server.wording.say import lines

_OWN = frozenset({PartKind.RUNNER, PartKind.PACER})


async def position(visit: Visit, fix: Fix, runner: str) -> Reply:
    """A shared place. A runner's or pacer's phone is where she is; anybody else's is asked about."""
    own = bool(visit.kinds & _OWN)
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
        **({} if own else {"unconfirmed": True, "doubt": "crew-position"}),
    }
    told = await visit.api.check_in(visit.address, visit.event.id, runner, body)
    answer = told.data
    place = Report(Kind.POSITION, visit.sent_at, runner)
    visit.memory.handed.append(Handed(answer.entry, visit.now, visit.event.id, place, answer.unconfirmed))
    if visit.incoming.live and not answer.unconfirmed:
        return visit.reply("")
    text = replies.say_noted(visit.say, answer, "", UNDO_WITHIN)
    if not answer.unconfirmed:
        return visit.reply(text, visit.undo_button(answer.entry))
    if not own:
        text = lines(text.split("\n")[0], visit.s("position-whose", runner=answer.runner_name))
    return visit.reply(
        text,
        (
            (
                visit.judging("button-on-foot", Press.CONFIRM, answer.entry),
                visit.judging("button-in-car", Press.UNDO, answer.entry),
            ),
        ),
    )


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
        await visit.api.check_in(visit.address, visit.event.id, here.id, body)
    return visit.reply(visit.s("live-ended", runner=here.name if here else ""))
