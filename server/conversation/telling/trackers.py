"""What a tracker says, in words: that it stands still, that it is quiet, that it and a person disagree."""

from __future__ import annotations

from server.conversation.telling import measures
from server.conversation.telling.answer import TrackerWord
from server.conversation.telling.say import Say, SayInEvent, lines
from server.watch.notice import StandsValues, TrackerSays


def stands(say: SayInEvent, v: StandsValues) -> str:
    """It has been at one spot for longer than stops last: a question, with the other thing it may mean."""
    return lines(
        say.s(
            "stands",
            runner=say.runner,
            length=say.length(v.until - v.since),
            place=say.point(v.point) if v.point else "none",
            km="none" if v.km is None else say.km(v.km),
        ),
        say.s("stands-do"),
        say.s(
            "stands-where",
            at=measures.place(v.fix[0], v.fix[1], say.reader.language),
            since=say.when(v.since),
            until=say.when(v.until),
        ),
    )


def tracker_says(say: SayInEvent, t: TrackerSays | None) -> str:
    """Both words where a person and the tracker disagree; that it is quiet, and what that means; '' for neither."""
    if t is None:
        return ""
    place, by = (say.point(t.seen_point), say.person(t.seen_by)) if t.seen_point else ("", "")
    return tracker_word(say, TrackerWord(t.km, t.at, t.quiet, place, by, t.seen_at))


def tracker_word(say: Say, t: TrackerWord | None) -> str:
    """The same in an answer."""
    if t is None:
        return ""
    both = ""
    if t.seen_at is not None:
        both = say.s(
            "tracker-disagrees",
            who=t.seen_by,
            place=t.seen_name,
            seen=say.when(t.seen_at),
            km="none" if t.km is None else say.km(t.km),
            when=say.when(t.at),
        )
    return lines(both, say.s("tracker-quiet", when=say.when(t.at), ago=say.ago(t.at)) if t.quiet else "")
