"""Why an alarm comes now, in one sentence: whoever is woken by it asks that first."""

from __future__ import annotations

from datetime import timedelta

from server.conversation.telling.say import SayInEvent, slug
from server.watch.notice import AlarmValues, WhyNow

FAR_AFTER = timedelta(minutes=45)
"""An alarm so long after the likely time makes its reader ask why it comes only now (own choice)."""
_SAID_ELSEWHERE = (WhyNow.HELP.value, WhyNow.SWEEP.value, "")
"""The first line of such an alarm says it."""


def why_now(say: SayInEvent, v: AlarmValues) -> str:
    """'' where the alarm's first line says it already."""
    if v.why_now in _SAID_ELSEWHERE:
        return ""
    after = None if v.raised_at is None or v.expected is None else v.raised_at - v.expected.likely
    if v.why_now == WhyNow.LINE.value and after is not None and after >= FAR_AFTER:
        return say.s("alarm-why-alarm-line-far", length=say.length(after))
    return say.s(f"alarm-why-{slug(v.why_now)}")
