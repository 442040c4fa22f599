"""From a sentence to what it means: the order in which things are looked for.

Distress comes first, whatever else is said. Then short answers, lists of bibs, follow-ups; then it is a
question if it is put as one, else a report if it says one, else a question if it names what can be asked.
"""

from __future__ import annotations

import re
from datetime import timedelta

from bot.words import answering, asking
from bot.words.german import is_german, to_english
from bot.words.listing import listed
from bot.words.meaning import Context, Distress, Unclear, Understood
from bot.words.patterns import pattern
from bot.words.questioning import follow_up, question
from bot.words.sentence import Sentence, find_names
from bot.words.telling import report
from server.event.model import PartKind

UNDO_WITHIN = timedelta(minutes=10)
"""How long a report can be taken back with one word."""


def understand(text: str, ctx: Context) -> Understood:
    """What a person means by `text`. Never raises; what is not understood is `Unclear`."""
    english = to_english(text) if is_german(text, ctx.language) else text
    said = find_names(text, english, ctx)
    if not said.plain.strip("? ;"):
        return Unclear(text)
    return (
        _distress(said, ctx)
        or answering.short_answer(said.plain, text)
        or listed(said, ctx)
        or follow_up(said, ctx)
        or _question_or_report(said, ctx)
        or Unclear(text)
    )


_SELF = pattern(
    r"""
    \b(help|sos|mayday|hurt|injured|lost|bleeding|collapsed|ambulance|rescue me|emergency|stuck)\b
    \bcan not (move|walk|get up|go on)\b
    \bbroken (my |an? )?(leg|ankle|arm|wrist)\b
    \b(hilfe|notfall|verletzt|verlaufen|verirrt)\b
    """
)
_NOT_SELF = pattern(
    r"""
    \blost (time|\d+|some time|weight)\b
    \blost (my|a|the|her) (bottle|gloves?|hat|buff|poles?|cup|gels?|torch|appetite)\b
    """
)
_FOR_HER = pattern(
    r"""
    \b(asked|asking|asks|calling|called|shouting|needs?|wants|needing) (for )?(urgent )?\
      (help|rescue|a medic|a doctor|an? ambulance|medics?|ambulance)\b
    \bshe (is |has |was )?(badly |seriously )?(hurt|injured|collapsed|unconscious|bleeding|lost)\b
    \b(sos|mayday)\b
    \bcall (an ambulance|for help|rescue|mountain rescue)\b
    """
)


def _distress(said: Sentence, ctx: Context) -> Distress | None:
    """Help is never argued with: a runner's or pacer's word is enough; of others, that she needs it."""
    of_self = bool(ctx.parts & {PartKind.RUNNER, PartKind.PACER})
    runner = said.runner.id if said.runner else None
    if of_self and _SELF.search(said.plain) and not _NOT_SELF.search(said.plain):
        return Distress(said.words, ctx.now, runner, by_self=True)
    text = said.text
    if _FOR_HER.search(text) and not asking.is_question(text):
        return Distress(
            said.words, ctx.now, runner, by_self=not of_self and re.search("sos|mayday", text) is not None
        )
    return None


def _question_or_report(said: Sentence, ctx: Context) -> Understood | None:
    volunteer = ctx.parts <= {PartKind.VOLUNTEER}
    if asking.is_question(said.text) and not volunteer:
        asked = question(said, ctx)
        # 'in at the mill?' may still be a report; 'how is she in herself' never is one.
        return asked or (None if asking.is_put_as_question(said.text) else report(said, ctx, loose=True))
    return report(said, ctx, loose=volunteer) or question(said, ctx) or report(said, ctx, loose=True)
