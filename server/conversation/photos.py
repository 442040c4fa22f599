"""Photos: passed on with the words under them to those they are for; what can't be kept is said so."""

from __future__ import annotations

from server.conversation import actions, stand_in
from server.conversation.telling import requests
from server.conversation.telling.say import lines
from server.conversation.understanding import Request, Requested, Understood, understand
from server.conversation.values import Photo, Reply, Trouble
from server.conversation.visit import Visit
from server.facts.entry import EVERYBODY, Kind

__all__ = ["goes_with", "taken"]

_TROUBLE = {
    Trouble.LOST: "photo-lost",
    Trouble.TOO_LARGE: "photo-too-large",
    Trouble.UNREADABLE: "photo-unreadable",
}


def goes_with(photo: Photo | None, meant: Understood) -> bool:
    """Whether words are passed on with the picture that is still to come, and so not before it."""
    return photo is not None and photo.to_come and _to(meant) is not None


def _to(meant: Understood) -> str | None:
    wanted = meant if isinstance(meant, Requested) and meant.request is Request.PASS_ON else None
    return wanted.to if wanted is not None and wanted.to else None


async def taken(visit: Visit, photo: Photo) -> Reply:
    """Keep it, and say to whom it was shown; of one without words also that nobody here sees what is on it."""
    if photo.trouble:
        return visit.reply(visit.s(_TROUBLE[Trouble(photo.trouble)]))
    words, ctx = visit.incoming.text.strip(), visit.context()
    her = ctx.runner(None) or next(iter(ctx.candidates()), None)
    if her is None:
        return visit.reply(visit.s("photo-lost"))
    body = {
        "kind": Kind.PASSED_ON.value,
        "seen_at": visit.sent_at.isoformat(),
        "sent_at": visit.sent_at.isoformat(),
        "key": f"{visit.key()}.photo",
        "words": words[:2000] or None,
        "to": (_to(understand(words, ctx)) if words else None) or EVERYBODY,
    }
    one = ctx.runner(None)
    noted = await actions.keep_photo(visit.event.id, her.id, one.id if one else None, body)
    unseen = "" if words else visit.s("photo-unseen", place=visit.some_place())
    text = lines(requests.say_shown(visit.say, noted), unseen, stand_in.undo_line(visit))
    return visit.reply(text, visit.undo_button(noted.entry))
