"""What a new version of the event file changed for one person: old and new, a line each."""

from __future__ import annotations

from server.conversation.telling.say import SayInEvent, lines
from server.watch.notice import NewVersionValues, PlanItem


def new_version(say: SayInEvent, v: NewVersionValues) -> str:
    """First that something of theirs changed, then what, meeting by meeting."""
    return lines(say.s("new-version", version=str(v.version)), *(_item(say, i) for i in v.items))


def _item(say: SayInEvent, i: PlanItem) -> str:
    if i.what == "post":
        return say.s("new-post", was=say.point(i.was), now=say.point(i.now))
    runner = next((r.name for r in say.event.runners if r.id == i.runner), i.runner)
    place = SayInEvent(say.reader, say.now, say.event, i.runner).point(i.point)
    if i.what == "meeting":
        key = "new-meeting" if i.now else "new-meeting-gone"
        return say.s(key, place=place, runner=runner, what=i.now or i.was)
    what = say.s(f"new-what-{i.what}")
    return say.s("new-item", place=place, runner=runner, what=what, was=i.was or "none", now=i.now or "none")
