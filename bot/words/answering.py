"""Short answers: acknowledging, yes and no, undo, greetings."""

from __future__ import annotations

import re

from bot.words.german import to_english
from bot.words.meaning import Acknowledged, Small, Unclear, Understood, Undo
from bot.words.patterns import pattern
from bot.words.tidy import tidy

_UNDO = pattern(r"""
    ^(oops |sorry |no |please |wait |ah |oh |damn |my mistake )*\
      (undo|scrap|delete|cancel|ignore|forget|scratch|remove) ?\
      (that|it|this|last|the last one|the last|last one|my last|that last one|last report|last message)?( please)?$
    \btake (that|it|this|the last one) back\b
    ^(oops |sorry |no |wait )*(that|it|this|last one|last) (was|is) (wrong|a mistake|not right|an error|incorrect)$
    ^(oops |sorry |no |wait )*(wrong( one| button| person| runner)?|my mistake|mistake|pressed the wrong \w+)$
    ^(no )?(wait )?(that is|that was|it is) wrong( sorry)?$
    ^undo\b
    \bundo (that|it|this)$
    ^(no )?(that|it) was a mistake$
    ^(oops |sorry |no |wait )*(i )?did not mean (that|it|to send (that|it))$
    \bthat (was|is) the wrong\b
    \bsent (that|it) by (mistake|accident)\b
    ^(not|no it was not) (her|she|true|right)$
""")
_THANKS = pattern(
    r"""
    ^(ok |great |lovely |brilliant |many )*(thanks|thank you|thankyou)( (?!in\b|out\b|left\b)\w+){0,4}$
    ^(perfect|lovely|brilliant|good|great|super)( (stuff|news|work|job|one))?$
    """
)
_HELLO = pattern(
    r"^(oh )?never ?mind( me)?$|^(hi|hello|hey|morning|good (morning|evening|afternoon|night))( \w+)?$"
)

# Answer word (as notices know it) -> ways of saying it. The order is part of the table.
_ANSWERS = (
    ("not yet", r"^(no )?(not yet|nope not yet|still not|not seen)$"),
    (
        "nobody there",
        r"^(no |mate |pal |there is |still )*(nobody|no one|noone)( is| there| here)?( here| there)?( mate| yet)?$",
    ),
    (
        "i have it",
        r"""
        ^(ok |yes )?(i have|ive|got|i have got|i got|i will take) (it|this|that|this one|that one)$
        ^(ok |yes )?(i am|i will be) on (it|this|that|to it)\b(?!.*\bnot\b)
        ^(ok |yes )?(i am )?(dealing with|sorting|handling|looking after|seeing to) (it|this|that)( now)?$
        ^(ok |yes )?(i will|i am going to|i am) (ring|call|phone|ringing|calling|phoning)( them| race control|\
           hq| the race)?( now)?$
        ^(ok |yes )?(i have|i have got|i got|i will take|i will have|taking) \
          (it|this|this one|that one)\b(?! (wrong|not))
        ^on it\b
        ^(leave it|leave that) (with|to) me\b
        ^(i will|i am going to) (do it|sort it|handle it|deal with it|take it|take this one|take it on)$
        ^(mine|taking it|i hold it|have it)$
        ^(ok |yes )(i will|will do) (take it|do)$
        ^alarm (received|mine)$
        """,
    ),
    ("awake", r"^(ok |yes )?(i am |we are )?(awake|up|up now|awake now|wide awake)$"),
    (
        "on our way",
        r"^(ok |yes |we are |i am |now )*(on our way|on my way|leaving now|leaving|setting off|setting off now|"
        r"off now|heading off|driving now)$",
    ),
    (
        "cannot",
        r"""
        ^(sorry |no |nope )*(i|we) (can not|cannot) (take|do|go|come|make|get|drive|hold|have|answer)\b
        ^(sorry |no )*(i|we) (can not|cannot|will not be able to)( go| make it| do it| come| get there| drive)*$
        ^(can not|cannot)( go| make it| do it| drive| come| get there)?( sorry| today| now| right now)*$
        """,
    ),
    (
        "seen",
        r"^(yes )?(she is )?(seen|found|seen and fine|found her|she is found|seen she is fine|she is fine)$",
    ),
    ("still missing", r"^(still|she is still) (missing|nothing|no news)$|^no news$|^nothing new$"),
    (
        "i go",
        r"^(ok )?(i go|i will go|i am going|we will go|we will get her|i will get her|i will fetch her)$",
    ),
    (
        "ok",
        r"""
        ^(ok |yes |right )*(ok|got it|gotcha|understood|noted|roger|roger that|copy|copy that|will do|sure|fine|right|\
          received|ack|acknowledged|seen it|read|done|all good|\
          cool|k|kk|10 4|message received|understand|alright)( thanks| ta| you)?$
        """,
    ),
    ("yes", r"^(yes|yes please|correct|that is right|right|yes she has|yes she is|yes that is right|y)$"),
    ("no", r"^(no|no thanks|n|not right|no she has not|no she is not)$"),
)
_COMPILED = tuple((answer, pattern(lines)) for answer, lines in _ANSWERS)


_SOFT = frozenset({"ok", "yes", "no"})
_AGAINST_YES = frozenset({"not yet", "nobody there", "cannot", "still missing", "no"})
_BREAKS = re.compile(r"[,.;!\n]+")


def short_answer(plain: str, words: str) -> Understood | None:
    """An answer, undo or greeting, or several of them in one breath ('got it, I'm on it'); `Unclear` where
    they contradict each other, None for anything longer. `plain` is the tidied sentence."""
    if "?" in plain:
        return None
    whole = _one(plain, words)
    if whole is not None:
        return whole
    parts = [tidied for part in _BREAKS.split(words) if (tidied := tidy(part))]
    found = [_one(part, words) for part in parts]
    if len(parts) < 2 or any(f is None for f in found):
        return None
    if any(isinstance(f, Undo) for f in found):
        return Undo()
    answers = [f.answer for f in found if isinstance(f, Acknowledged)]
    firm = set(answers) - _SOFT
    if len(firm) > 1 or ("yes" in answers and set(answers) & _AGAINST_YES):
        return Unclear(words)
    return Acknowledged(firm.pop() if firm else answers[0], words) if answers else found[0]


def answers_a_notice(text: str) -> bool:
    """Whether the words, in either language, are nothing but an answer to something that was asked."""
    meant = short_answer(tidy(text), text) if text.strip() else None
    if meant is None and text.strip():
        meant = short_answer(tidy(to_english(text)), text)
    return isinstance(meant, Acknowledged)


def takes_back(text: str) -> bool:
    """Whether the words, in either language, are nothing but 'undo'."""
    return any(isinstance(short_answer(tidy(t), t), Undo) for t in (text, to_english(text)) if t.strip())


def _one(plain: str, words: str) -> Understood | None:
    if _UNDO.search(plain):
        return Undo()
    for answer, says in _COMPILED:
        if says.search(plain):
            return Acknowledged(answer, words)
    if _THANKS.search(plain):
        return Small(thanks=True)
    if _HELLO.search(plain):
        return Small(thanks=False)
    return None
