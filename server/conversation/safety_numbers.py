"""Words that say she may be in danger, kept as how she is: whom to call stands in front of what was noted."""

from __future__ import annotations

from dataclasses import replace

from server.conversation import passed_on
from server.conversation.telling.say import lines
from server.conversation.understanding import (
    AskBack,
    Asked,
    Danger,
    Kept,
    Question,
    Reported,
    Requested,
    Several,
    Unclear,
    Understood,
)
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import RACE_LEVEL, Kind, Why

_SAYS_IT = frozenset(
    {Question.ALARM_NOW, Question.ALARM_TELL, Question.ALARM_CALL, Question.ALARM_KNOWN, Question.NUMBERS}
)
"""Answers that hold the numbers themselves."""


def numbers_first(
    visit: Visit, meant: Understood, danger: Danger, reply: Reply, *, sure: bool = False
) -> Reply:
    """The reply with the numbers to call in its first line, and 'is she in danger?' to answer, where the words are grave and
    nobody was told yet; where that is only in doubt, with the emergency number in its last. A report of the writer's own
    changes who comes, and is no less grave where the words surely are (`sure`), or the
    answer to no reason said would hold no number."""
    parts = meant.parts if isinstance(meant, Several) else (meant,)
    of_crew = all(
        isinstance(p, Reported) and all(r.of_crew or r.kind in RACE_LEVEL for r in p.reports) for p in parts
    )
    told = any(_first_told(p) for p in parts)
    event = visit.event
    if danger is Danger.DOUBT and told and not reply.silent and event.emergency_number not in reply.text:
        return replace(reply, text=lines(reply.text, visit.s("in-doubt", emergency=event.emergency_number)))
    why = {r.why for p in parts if isinstance(p, Reported) for r in p.reports if r.kind is Kind.CANNOT_COME}
    silent = Why.NOT_SAID in why and event.emergency_number not in reply.text
    grave = danger.grave and (sure or not of_crew or silent)
    if not told or reply.silent or not grave:
        return reply
    control = {"name": event.race_control.name, "phone": event.race_control.phone}
    hers = any(isinstance(p, Kept) and p.of_her for p in parts)
    others = [p.words for p in parts if isinstance(p, Kept) and not hers]
    others = [visit.incoming.text] if of_crew else others
    if of_crew or (others and all(isinstance(p, Kept) or _where_writer_is(p) for p in parts)):
        # Of the writer, or somebody with them: nothing of it is hers, and nobody is called to her.
        said = "" if reply.text == visit.s("not-understood") else reply.text
        text = lines(
            visit.s("grave-any", emergency=event.emergency_number, **control),
            visit.s("grave-any-drive"),
            said,
            visit.s("grave-any-help"),
        )
        rows = passed_on.anybody_buttons(visit, " ".join(others))
        # 'Yes' sends the words already: no second button for it.
        others_ = visit.s("button-tell-all")
        rest = tuple(row for row in reply.buttons if row[0].label != others_)
        return replace(reply, text=text, buttons=(*rows, *rest))
    own = PartKind.RUNNER in visit.kinds
    first = visit.s("grave-own" if own else "grave", emergency=event.emergency_number, **control)
    text = lines(first, reply.text, visit.s("grave-help-own" if own else "grave-help"))
    her = next((p.reports[0].runner for p in parts if isinstance(p, Reported)), None)
    return passed_on.dangerous(visit, replace(reply, text=text), her)


def _where_writer_is(meant: Understood) -> bool:
    return isinstance(meant, Reported) and all(r.kind is Kind.CREW_THERE for r in meant.reports)


def _first_told(meant: Understood) -> bool:
    """Whether the numbers have yet to be said: neither a call for help nor an answer about the alarm says them itself."""
    if isinstance(meant, Asked):
        return meant.question not in _SAYS_IT
    return isinstance(meant, Reported | AskBack | Unclear | Kept | Requested)
