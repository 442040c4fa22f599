"""Whether a sentence asks, and what: the table of questions walked line by line."""

from __future__ import annotations

import re

from bot.words.meaning import Question
from bot.words.patterns import pattern
from bot.words.questions import SHORT, TABLE, unknown
from bot.words.tidy import fold

_COMPILED = tuple((question, pattern(lines, SHORT)) for question, lines in TABLE)

_ASKS = pattern(
    r"""
    \?$
    ^LEAD(when|where|what|who|whose|how|which|why|whereabouts|any|anyone|anybody|eta)\b
    ^LEAD(is|are|do|does|did|can|could|will|would|should|shall|has|have|had|was|were|am|might|may) \
      (not )?(she|we|i|you|it|they|anyone|there|PERSON|PT|everyone|the|us|her|any|somebody|someone|race control|\
        my|our|that|this)\b
    ^LEAD(tell me|show|give me|send me|remind|if|suppos\w*|say she|let me know|do you|latest|number for|\
      time to)\b
    ^LEADanything (\w+ )?(happen\w*|new|important|changed)\b
    ^LEAD(wondering|need to know|want to know|think we|think you|reckon)\b
    \b(what|how) (do|does|did|now|should|can|is|are|about)\b
    \b(what if|did (i|we) miss|where is|when is|how long|what time|how far|do you know|any idea|can you tell|\
      remind me)\b
    """,
    {
        "LEAD": "(hi |hey |hello |so |and |but |oi |please |sorry |quick q |ok |right |um |er |hmm |also |then |well )*"
    },
)


_UNKNOWN = (
    (Question.CATCH_UP, pattern(unknown.CATCH_UP, SHORT)),
    (Question.LEAVE_THERE, pattern(unknown.LEAVE_THERE, SHORT)),
    (Question.WEATHER, pattern(unknown.WEATHER, SHORT)),
)


def not_known(text: str, words: str) -> Question | None:
    """What a sentence, tidied and as typed, asks of what nobody here knows, or of what the writer has slept through;
    None for anything else."""
    typed = " ".join(re.sub(r"[^\w\s]+", " ", fold(words.lower())).split())
    plain = text.removesuffix(" ?")
    return next((q for q, asks in _UNKNOWN if asks.search(plain) or asks.search(typed)), None)


_OPINION = pattern(r"\b(do|would|did) (we|you|they|u) (think|reckon|expect|guess|say|suppose)( that)?\b")
_WEATHER = pattern(r"\b(weather|rain|raining|temperature|windy|snow|snowing|degrees)\b")


def is_weather(text: str) -> bool:
    """Whether it asks for the weather, of which nothing is known here."""
    return _WEATHER.search(text) is not None


_TIME_LEFT = re.compile(
    r"\btime (?:for|to|left|until|till|before|enough)\b|\b(?:have|got|has|enough|any|much) (?:\w+ ){0,3}time\b|"
    r"\bhow long (?:have|do|has) (?:we|i) (?:got|have)\b|\bhow long have we\b|"
    r"\bzeit (?:\w+ ){0,4}(?:für|fuer|zum|zu|bis|vor|bevor|um)\b|"
    r"\b(?:noch|genug|wieviel|wie viel|reicht) (?:\w+ ){0,2}zeit\b|"
    r"\bwie lange? (?:haben|habe|hab) (?:wir|ich)\b",
    re.IGNORECASE,
)


def asks_time_left(words: str) -> bool:
    """Whether a question about leaving is how much time there still is, for whatever it may be."""
    return _TIME_LEFT.search(words) is not None


_THE_WAY = pattern(r"\b(park|parking|parked|directions|postcode|address|parken|parkplatz|anfahrt|adresse)\b")
_WHEN = pattern(
    r"\b(when|what time|how late|wann|sunset|sunrise|sundown|dusk|dawn|nightfall|sonnenuntergang|sonnenaufgang)\b"
)


def asks_the_way(words: str) -> bool:
    """Whether a question about a meeting is about how to get there."""
    return _THE_WAY.search(words.lower()) is not None


def asks_when(words: str) -> bool:
    """Whether a question about light wants its times."""
    return _WHEN.search(words.lower()) is not None


def is_put_as_question(text: str) -> bool:
    """Whether it begins as a question or a request does, whatever its mark at the end."""
    return _ASKS.search(text.removesuffix(" ?")) is not None


def is_question(text: str) -> bool:
    """Whether a tidied sentence is put as a question."""
    return _ASKS.search(text) is not None


def question_in(text: str) -> Question | None:
    """What a tidied sentence with names replaced asks for; None if no line of the table fits."""
    plain = _OPINION.sub(" ", text.removesuffix(" ?")).strip()
    if _WEATHER.search(plain):
        # Nothing is known of the weather, and an arrival time would be no answer.
        return None
    for question, asks in _COMPILED:
        if asks.search(plain):
            return question
    return None


ABOUT_A_POINT = frozenset(
    {
        Question.AT,
        Question.LAST_STOP,
        Question.CUT_OFF,
        Question.MISSED,
        Question.WAIT,
        Question.PEOPLE,
        Question.RIDE,
        Question.BRING,
        Question.TAKE_BACK,
        Question.FOOD,
        Question.LEAVE,
        Question.DRIVE,
        Question.MEETING,
        Question.DARK,
        Question.SLOWER,
        Question.LEAVES_NOW,
        Question.WEATHER,
        Question.LEAVE_THERE,
    }
)
"""Questions for which the point named matters; the others drop it."""

PAST = frozenset({Question.LAST_STOP, Question.MISSED})
"""Questions about what has been: of a place passed twice, the last pass is meant."""
