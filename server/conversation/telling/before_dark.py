"""The dark may be there before her torch: what waits where, from when it is dark, and where to hand it over instead."""

from __future__ import annotations

from server.conversation.telling.say import SayInEvent, lines
from server.watch.notice import BeforeDarkValues


def before_dark(say: SayInEvent, v: BeforeDarkValues, to: str) -> str:
    """For one of the crew or, to herself, in the second person."""
    her = any(r.id == say.runner_id and r.person == to for r in say.event.runners)
    end = "her" if her else "crew"
    values = {"runner": say.runner, "things": say.things(v.things), "place": say.point(v.point)}
    return lines(
        say.s(f"before-dark-{end}", dark=say.when(v.dark), window=say.window(v.window), **values),
        _instead(say, v, end),
        say.s("before-dark-holders", who=say.people(v.holders), **values)
        if v.holders and to not in v.holders
        else "",
    )


def _instead(say: SayInEvent, v: BeforeDarkValues, end: str) -> str:
    values = {"runner": say.runner, "things": say.things(v.things), "place": say.point(v.point)}
    if v.give_at is None:
        return say.s(f"before-dark-none-{end}", **values)
    if v.give_window is None:
        return say.s(f"before-dark-here-{end}", here=say.point(v.give_at), **values)
    meets = ("none", "one", "many")[min(len(v.givers), 2)]
    there = {"give": say.point(v.give_at), "when": say.window_short(v.give_window)}
    return say.s(f"before-dark-give-{end}", who=say.people(v.givers), meets=meets, **there, **values)
