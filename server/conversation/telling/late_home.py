"""Late, told home: news that is not yet an alarm, where to look, and when the alarm would come."""

from __future__ import annotations

from server.conversation.telling import not_there, trackers
from server.conversation.telling.news import last_heard
from server.conversation.telling.say import SayInEvent, lines
from server.watch.notice import LateHomeValues


def late_home(say: SayInEvent, v: LateHomeValues) -> str:
    """The answer first, then what to do, then what is known."""
    place, control = say.point(v.point), say.event.race_control
    return lines(
        say.s("late-home", runner=say.runner, place=place),
        last_heard(say, v.last_known),
        say.s("late-home-do", name=control.name, phone=control.phone, place=place),
        say.s("late-home-write", place=place),
        trackers.tracker_says(say, v.tracker),
        not_there.fact(say, v),
        not_there.no_word(say, v, ""),
        say.s("late-window", window=say.window_stood(v.window)),
        say.s("late-home-next", when=say.when(v.alarm_at)) if v.alarm_at and v.alarm_at > say.now else "",
    )
