"""The wording of how she is, as somebody wrote it: their words first, then whether she rests, then when she comes."""

from __future__ import annotations

from server.conversation.telling.say import SayInEvent, lines
from server.facts.state import Going
from server.watch.notice import CorrectionValues, WordValues


def word_of_her(say: SayInEvent, v: WordValues) -> str:
    """What was written, of when, by whom; resting or not; her window where this person may meet her next."""
    window = v.next_window
    return lines(
        say.s(
            "word-of-her",
            runner=say.runner,
            when=say.when(v.at),
            who=say.person(v.told_by),
            words=v.words,
        ),
        _rests(say, v),
        say.s("word-next", place=say.point(window.point), window=say.window(window)) if window else "",
    )


def _rests(say: SayInEvent, v: WordValues) -> str:
    going = Going(v.going)
    if going is Going.BEFORE_START:
        return ""
    if going is Going.RETIRED:
        return say.s("word-retired")
    if v.since is None:
        return say.s("word-no-rest")
    if going is Going.RESTING:
        return say.s("word-rests", since=say.when(v.since), until=say.maybe(v.until))
    if v.point is not None:
        return say.s("word-at", place=say.point(v.point), since=say.when(v.since))
    return say.s("word-moves", since=say.when(v.since))


def word_taken_back(say: SayInEvent, v: CorrectionValues) -> str:
    """Words this person was told count no longer."""
    return say.s("word-taken-back", runner=say.runner, when=say.maybe(v.was_at), words=v.words)
