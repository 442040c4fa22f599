"""In, out, or neither: what says so plainly, what merely has 'in' or 'out' in it, what is only supposed."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.words import asking, reporting, supposing
from bot.words.ending import ask_out
from bot.words.everyday import AROUND_IN_AND_OUT
from bot.words.meaning import AskBack, Report
from bot.words.patterns import pattern
from bot.words.sentence import Sentence
from server.facts.entry import Kind

STRONG_IN = pattern(
    r"""
    \b(arrived|arrives|reached|turned up|rocked up|checked in|made it|rolled in|landed)\b
    \b(got|came|come|comes|coming|pulled|rolled|ran|walked|strolled|limped|staggered|jogged|stumbled|hobbled|\
      wandered|just|is|now|\
      she) (in|into)\b
    \b(just |she |has )got (in|here|to)\b
    \b(she|her) (is )?(just )?(here|at (PT|FINISH))\b
    \b(with (us|me)|here now|just here)\b
    ^PT (is |now |just )*(in|arrived)\b
    ^(in|here|at PT|finish\w*|she finish\w*|she (is|has) (finish\w*|home))\b
    """
)

_STRONG_OUT = pattern(
    r"""
    ^(she |just |ok |now |is |has |been )*(left|leaving|leaves|departed|gone|out|off|heading|headed|on her way|\
      setting off|set off|away|moving on)\b
    \bback (out|on (the )?(course|trail|her way))\b
    \b(departed|leaving|out of|heading out|headed out|head out|set off|setting off|on her way|off again)\b
    \b(she|has|just|have) left\b
    \bleft (PT|FINISH|here|us|at|with|again|LENGTH|now)\b
    ^(she )?went$
    """
)

_BODY = re.compile(
    r"\b(?:left|right) (?:heel|foot|knee|leg|ankle|toe|hip|shin|calf|arm|hand|side|shoulder|shoe|wrist|quad|eye)s?\b"
    r"|\bleft or right\b|\bright or left\b|\bleft (?:turn|fork|hand|at the|of the|side)\b"
)

# 'left the pub', 'left her poles', 'out of diesel', 'in the car': no point of the course is left or reached.
_THINGS = re.compile(
    r"\b(?:left|leaving|leaves|forgot|out of|out from|in|into|inside|got|off)\s+(?:the|my|our|a|an|her|his|some|"
    r"your|this|that)\s+"
    r"(?!PT|FINISH|aid|station|check|point|cp|stop|next|last|mat|feed|hall|tent\b)\w+"
    r"|\b(?:out of|short of)\s+(?!PT|FINISH|here|there|us|the|her|a|my|our)\w+"
    r"|\bin (?:bed|tears|trouble|position|place|sight|range|traffic|pain|charge|time|front|touch|view|two minds)\b"
    r"|\b(?:out|off|away) (?:getting|buying|looking|for a|to get|shopping|walking the)\b"
)

# 'left her poles at Brindle': the poles are there, and she was once.
_LEFT_BEHIND = re.compile(
    r"\b(?:left|leaving|leaves|forgot|forgotten|lost|dropped)\s+(?:her|my|the|our|a|an|some|their)\s+"
    r"(?!PT|FINISH|aid|station|check|point|cp|stop|next|last|mat|feed|hall|tent\b)(?:\w+ ){1,3}(?:behind |back )?(?:at|in)\b"
)

_OF_ANOTHER = re.compile(
    r"^(?!.*\b(?:she|her)\b).*\bPERSON (?:\w+ )?(?:is|has|was|in|at|out|left|just|got|going|on|will|now|arrived|"
    r"there|here|gone|went|went)\b"
)

_STILL_HERE = re.compile(r"\b(?:still|yet) (?:here|in|there|at PT|with us)\b")

# 'we are out of soup', 'call me when she is in': about somebody else, or a wish.
_NOT_OF_HER = re.compile(r"^(?!.*\b(?:she|her)\b).*\b(?:we|i|our|my|us)\b")

_WISH = re.compile(
    r"\b(?:call|text|tell|ping|message|ring|let|wake) (?:me|us)\b|\b(?:when|once|if|until) she\b"
)

_LEAVING_TIME = re.compile(r"^(?:leaving time|departure|leave)\b")

_CAME = re.compile(
    r"\b(?:arrived|reached|landed|(?:came|come|got|rolled|pulled|ran|walked|just|is|now|she) (?:in|into)\b|^in\b)"
)


def came_first(text: str, kind: Kind) -> bool:
    """'came in at 3 and is sat down': that she arrived is the news, and stands before what she does there."""
    came = _CAME.search(text)
    return came is not None and kind is Kind.RESTING and reporting.kind_in(text[: came.end()]) is None


CAME_IN_PERSON = re.compile(
    r"\bshe (?:is |has )?(?:just )?(?:here|arrived|come in|came in|walked in|in|got in|made it)\b|^in\b"
)

# 'not out', 'never left': the opposite of what it would be without.
_NEGATED = re.compile(
    r"\b(?:not|never) (?:yet |been |even |actually |come |gone |got |really )*"
    r"(?:in|out|left|leave|leaving|arrived?|here|there|gone|come|at PT|off|away|reached?|finished|finish)\b"
)


def in_or_out(
    base: Report, said: Sentence, text: str, timed: bool, *, loose: bool
) -> Report | AskBack | None:
    condition = reporting.says_condition(text)
    if (
        _NEGATED.search(text)
        or _WISH.search(text)
        or only_supposed(said.words)
        or _LEFT_BEHIND.search(text)
        or (_NOT_OF_HER.search(text) and not condition)
    ):
        return None
    if _STILL_HERE.search(text) and base.runner is not None:
        # She is where she was: no second arrival, but she has not gone on either.
        at = said.runner.at if said.runner is not None else None
        return replace(
            base, kind=Kind.RESTING if at is not None else Kind.HOW_SHE_IS, point=at, condition=condition
        )
    text = " ".join(_THINGS.sub(" ", _BODY.sub(" ", text)).split())
    if _OF_ANOTHER.search(text):
        return None
    if _STRONG_OUT.search(text) and not _LEAVING_TIME.search(text):
        if (
            re.search(r"\bout\b", text)
            and not (timed or said.point)
            and re.fullmatch(r"(?:she |is |now |just |has |her |gone |just )*out(?: now)?(?: \?)?", text)
        ):
            return ask_out(base, said)
        return replace(base, kind=Kind.OUT)
    if STRONG_IN.search(text):
        finish = re.search(r"\b(?:finish\w*|home)\b|FINISH", text)
        return replace(
            base, kind=Kind.IN, condition=condition and not finish, with_us=reporting.has_her(text)
        )
    if condition and timed and _IN_AT.search(text):
        # 'she fell, in at Mill 7:48': how she is stands first, and where she came in is told all the same.
        return replace(base, kind=Kind.IN, condition=True)
    if condition and (base.runner is not None or re.search(r"\b(?:she|her)\b", text)):
        return replace(base, kind=Kind.HOW_SHE_IS)
    if not loose and asking.question_in(said.text) is not None:
        return None
    if timed and _WAS_THERE.search(text):
        return replace(base, kind=Kind.IN)
    # Anything longer that merely has 'in', 'at' or 'out' in it ('parking at Kettle') is no report.
    if not all(word in AROUND_IN_AND_OUT for word in text.replace("?", " ").split()):
        return None
    if reporting.says_out(text):
        clear = timed or said.point is not None or not re.search(r"\bout\b", text)
        return replace(base, kind=Kind.OUT) if clear else ask_out(base, said)
    if reporting.says_in(text) or (timed and (said.point is not None or said.finish)):
        return replace(base, kind=Kind.IN)
    return None


_IN_AT = re.compile(r"\bin at (?:PT|FINISH)\b")
_WAS_THERE = re.compile(r"^(?:she )?was (?:in|at (?:PT|FINISH))\b|^PT was$")

_CLAUSES = re.compile(r"[,;.!\n]+\s|[,;!\n]+|\s(?:and|but|und|aber)\s")

_GERMAN_IN_OUT = re.compile(r"\b(?:rein|raus|los|durch|angekommen|drin|weg|da)\b")


def only_supposed(words: str) -> bool:
    """Whether a sentence states nothing; 'left Brindle 16:54, should be with you at 7' states its first part."""
    if not supposing.says_no_fact(words):
        return False
    clauses = _CLAUSES.split(words.lower())
    if len(clauses) == 1 or supposing.says_no_fact(clauses[0]):
        return True
    return not any(
        (reporting.says_out(c) or reporting.says_in(c) or _GERMAN_IN_OUT.search(c))
        and not supposing.says_no_fact(c)
        for c in clauses
    )
