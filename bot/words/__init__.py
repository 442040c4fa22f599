"""A person's sentence to a question, a report or an answer.

In: the text as typed and a `Context` (now, time zone, runners with their points, the writer's parts, the last
question). Out: one of the values of `meaning`. What can be meant in two ways comes back as `AskBack`.
Pure: never imports aiohttp, SQLAlchemy, telegram, and never reads the clock, a file or the network.
"""

from bot.words.answering import answers_a_notice, takes_back
from bot.words.asking import asks_the_way, asks_time_left, asks_when
from bot.words.meaning import (
    UNSAID,
    Acknowledged,
    AskBack,
    Asked,
    Choice,
    Context,
    Distress,
    MeantFor,
    Need,
    Question,
    Report,
    Reported,
    Several,
    Small,
    Unclear,
    Understood,
    Undo,
)
from bot.words.read import UNDO_WITHIN, understand

__all__ = [
    "UNDO_WITHIN",
    "UNSAID",
    "Acknowledged",
    "AskBack",
    "Asked",
    "Choice",
    "Context",
    "Distress",
    "MeantFor",
    "Need",
    "Question",
    "Report",
    "Reported",
    "Several",
    "Small",
    "Unclear",
    "Understood",
    "Undo",
    "answers_a_notice",
    "asks_the_way",
    "asks_time_left",
    "asks_when",
    "takes_back",
    "understand",
]
