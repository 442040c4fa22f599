"""What a person means: one message in, its meaning out.

    read(text: str, ctx: Context) -> Reading(meant: Understood, danger: Danger)
    understand(text, ctx) -> Understood            the same without the danger

In: the text as typed and a `Context` (now, time zone, runners with their points, the writer's parts, people, the last
question). Out: values of `meaning`, and nothing else:

    Asked(question, runner, point, …)              a question, its runner and point as ids
    Reported(reports)                              one or more check-ins; `guessed` ones wait to be confirmed
    Distress(words, …)                             a call for help
    Acknowledged(answer) Undo() OtherRunner()      short answers, taking back, the wrong runner
    Requested(request, words, person, …)           a message to pass on, can't come, a swap, quiet until …
    AskBack(need, choices)                         which of two or more; Need.MEANING: which of the two likeliest meanings
    Several(parts)                                 each clause, in order; a `Kept` is one nobody could make out
    Kept(words, …)                                 no confident check-in: kept word for word, passed on, 'is she in danger?'
    Small(thanks) Unclear(words)                   nothing to do; nothing that can be kept (a stranger's 'xyzzy')

Never raises; deterministic; a message of any length costs no more than a few short ones. Pure: its words are files of the
language folders beside it (`server/conversation/languages/<language>`), read once; no code here names a language.
"""

from server.conversation.understanding.afterthought import PutRight, puts_right
from server.conversation.understanding.again import chosen, is_back, of_another_bib, ordinal, put_right, whose
from server.conversation.understanding.answers import (
    answers_a_notice,
    asks_of_alarm,
    asks_the_way,
    asks_time_left,
    asks_when,
    plain,
    says,
    says_right,
    short_answer,
    takes_back,
)
from server.conversation.understanding.meaning import (
    UNSAID,
    Acknowledged,
    AskBack,
    Asked,
    Choice,
    Context,
    Danger,
    Distress,
    Kept,
    MeantFor,
    Need,
    OtherRunner,
    Question,
    Reading,
    Report,
    Reported,
    Request,
    Requested,
    Several,
    Small,
    Unclear,
    Understood,
    Undo,
)
from server.conversation.understanding.placing import expected
from server.conversation.understanding.plan_search import lines_about
from server.conversation.understanding.read import (
    UNDO_WITHIN,
    danger_of,
    denies_her,
    likeliest,
    read,
    time_alone,
    understand,
)
from server.conversation.understanding.reports import why_not

__all__ = [
    "UNDO_WITHIN",
    "UNSAID",
    "Acknowledged",
    "AskBack",
    "Asked",
    "Choice",
    "Context",
    "Danger",
    "Distress",
    "Kept",
    "MeantFor",
    "Need",
    "OtherRunner",
    "PutRight",
    "Question",
    "Reading",
    "Report",
    "Reported",
    "Request",
    "Requested",
    "Several",
    "Small",
    "Unclear",
    "Understood",
    "Undo",
    "answers_a_notice",
    "asks_of_alarm",
    "asks_the_way",
    "asks_time_left",
    "asks_when",
    "chosen",
    "danger_of",
    "denies_her",
    "expected",
    "is_back",
    "likeliest",
    "lines_about",
    "of_another_bib",
    "ordinal",
    "plain",
    "put_right",
    "puts_right",
    "read",
    "says",
    "says_right",
    "short_answer",
    "takes_back",
    "time_alone",
    "understand",
    "whose",
    "why_not",
]
