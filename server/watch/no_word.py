"""Who has been asked about her in vain, and who said that she is not there yet: since she was last known anywhere."""

from __future__ import annotations

from server.facts.entry import Kind
from server.facts.trackers import disagree, fixes_of, quiet_since
from server.watch.crew_whereabouts import company, plans_of
from server.watch.notice import NoticeKind, NoWord, TrackerSays, Unsure
from server.watch.runner_context import Sight

__all__ = ["no_word", "not_there", "tracker_says"]


def not_there(sight: Sight) -> Unsure | None:
    """The newest 'not here yet' later than the last known point, of a point that she has not reached since."""
    last = sight.state.last_known
    said = (n for n in sight.state.not_yet if last is None or n.stamp.at > last.at)
    newest = max((n for n in said if not sight.reached(n.point)), key=lambda n: n.stamp.at, default=None)
    if newest is None:
        return None
    return Unsure(Kind.NOT_HERE_YET.value, newest.point, newest.stamp.at, newest.stamp.by)


def no_word(sight: Sight) -> tuple[NoWord, ...]:
    """Whoever was asked since her last known point whether she has come in, and has sent no word of her since, nor anybody
    who came there in one car with them."""
    last = sight.state.last_known
    asked = {
        m.notice.key.person: m
        for m in sight.told(NoticeKind.LATE)
        if m.answered_at is None
        and (last is None or m.made_at > last.at)
        and not sight.reached(m.notice.key.point)
    }
    words = [(n.stamp.by, n.stamp.at) for n in sight.state.not_yet]
    words += [(e.by, e.seen_at) for e in (*sight.state.how_she_is, *sight.state.unconfirmed)]
    heard = {who for who, at in words if who in asked and at > asked[who].made_at}
    waits = {(n.point, n.stamp.by) for n in sight.state.not_yet if last is None or n.stamp.at > last.at}
    beside = {
        w for p in plans_of(sight) for point, by in waits if p.point == point for w in company(sight, p, by)
    }
    return tuple(NoWord(who, m.made_at) for who, m in asked.items() if who not in heard | beside)


def tracker_says(sight: Sight) -> TrackerSays | None:
    """What her tracker says where that is not what people say, or that it has gone quiet; None where neither is so."""
    fixes = fixes_of(sight.state)
    if not fixes:
        return None
    quiet = quiet_since(sight.state, sight.now) is not None
    other = disagree(sight.event.course_of(sight.runner.id), sight.state)
    if other is not None:
        return TrackerSays(other.km, other.at, quiet, other.point, other.seen.at, other.seen.by)
    return TrackerSays(fixes[-1].km, fixes[-1].stamp.at, quiet) if quiet else None
