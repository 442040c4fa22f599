"""What an alarm says of a runner whose race was over when she called for help: nobody looked out for her any more, and
no forecast says where she went; the first to be asked is whoever had her."""

from __future__ import annotations

from server.conversation.telling.say import SayInEvent, lines
from server.watch.notice import AlarmValues

__all__ = ["facts", "read_out"]


def facts(say: SayInEvent, v: AlarmValues, to: str) -> str:
    """When her race ended, who said last that somebody had her; '' while she is in it. `to`: who reads it."""
    if v.race_over is None:
        return ""
    had = ""
    if v.had_by and v.had_at is not None:
        values = {"when": say.when(v.had_at, day=True), "ago": say.ago(v.had_at)}
        mine = v.had_by == to
        had = (
            say.s("alarm-had-her-you", **values)
            if mine
            else say.s("alarm-had-her", who=say.person(v.had_by), **values)
        )
    return lines(say.s("alarm-race-over", when=say.when(v.race_over, day=True)), had)


def read_out(say: SayInEvent, v: AlarmValues) -> str:
    """The same in whole sentences, by the event's own clock."""
    if v.race_over is None:
        return ""
    had = ""
    if v.had_by and v.had_at is not None:
        had = say.s("read-out-had-her", when=say.spoken(v.had_at), who=say.person(v.had_by))
    return lines(say.s("read-out-over", when=say.spoken(v.race_over)), had)
