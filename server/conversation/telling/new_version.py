"""What a new version of the event file changed for one person: old and new, a line each."""

from __future__ import annotations

from collections.abc import Iterator

from server.conversation.telling.say import SayInEvent, lines
from server.watch.notice import NewVersionValues, PlanItem
from server.watch.runner_context import ceil_to, floor_to


def new_version(say: SayInEvent, v: NewVersionValues) -> str:
    """First that something of theirs changed, then what, meeting by meeting."""
    return lines(say.s("new-version", version=str(v.version)), *change_lines(say, v))


def change_lines(say: SayInEvent, v: NewVersionValues) -> Iterator[str]:
    """Each thing that changed, old and new, then when they leave for what."""
    for i in v.items:
        yield _item(say, i)
    for t in v.times:
        yield say.s(
            "new-time",
            **_where(say, t.runner, t.point),
            was="none" if t.was is None else say.when(floor_to(t.was)),
            now="none" if t.now is None else say.when(floor_to(t.now)),
            be_there=say.when(ceil_to(t.be_there)),
        )
    if v.free:
        yield say.s("new-free")


def _where(say: SayInEvent, runner_id: str, point: str) -> dict[str, str]:
    runner = next((r.name for r in say.event.runners if r.id == runner_id), runner_id)
    return {"place": SayInEvent(say.reader, say.now, say.event, runner_id).point(point), "runner": runner}


def _item(say: SayInEvent, i: PlanItem) -> str:
    if i.what == "post":
        return say.s("new-post", was=say.point(i.was), now=say.point(i.now))
    where = _where(say, i.runner, i.point)
    if i.what in ("meeting", "met"):
        key = f"new-{i.what}" if i.now else f"new-{i.what}-gone"
        return say.s(key, **where, what=i.now or i.was)
    if i.what == "target":
        return say.s("new-target", runner=where["runner"], was=i.was or "none", now=i.now or "none")
    if i.what == "kit-left":
        return say.s("new-kit-left", **where, car=i.was, things=i.now)
    what = say.s(f"new-what-{i.what}")
    return say.s("new-item", **where, what=what, was=i.was or "none", now=i.now or "none")
