"""From a sentence to what it means: the order in which things are looked for.

Distress comes first, whatever else is said. Then short answers, lists of bibs, follow-ups; then it is a
question if it is put as one, else a report if it says one, else a question if it names what can be asked.
"""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import timedelta

from bot.words import answering, asked_for, asking, both, correcting, danger, on_the_road, supposing
from bot.words.german import is_german, to_english
from bot.words.listing import listed
from bot.words.meaning import (
    Acknowledged,
    AskBack,
    Asked,
    Choice,
    Context,
    Distress,
    Need,
    Question,
    Report,
    Reported,
    Several,
    Unclear,
    Understood,
)
from bot.words.questioning import follow_up, question
from bot.words.sentence import Sentence, find_names
from bot.words.telling import report
from bot.words.times import find_time
from server.event.model import PartKind
from server.facts.entry import Kind

UNDO_WITHIN = timedelta(minutes=10)
"""How long a report can be taken back with one word."""


READ_MAX = 1_000
"""So many characters, to the end of a sentence, are read for what they mean (own choice: five times a long message);
of what comes after only a call for help, so that a long message costs no more than a few short ones."""


def understand(text: str, ctx: Context) -> Understood:
    """What a person means by `text`. Never raises; what is not understood is `Unclear`. A message of any length is kept
    whole in the words of what it reports."""
    pieces = _pieces(text)
    first = pieces[0]
    meant = _read(first, ctx)
    if len(pieces) == 1:
        return meant
    if not isinstance(meant, Distress | Reported):
        # What is reported stands first; a diary after it asks nothing.
        first = _SENTENCE_END.split(first)[0]
        told = _read(first, ctx)
        meant = told if isinstance(told, Distress | Reported) else meant
    for piece in () if isinstance(meant, Distress) else pieces:
        cry = _cry(piece, ctx)
        if cry is not None:
            besides = meant.reports if isinstance(meant, Reported) else ()
            seen = tuple(r for r in besides if r.kind in _SEEN and r.runner is not None)
            return replace(cry, words=text, reports=seen)
    return _in_whole(meant, first, text)


def _pieces(text: str) -> list[str]:
    """The text in pieces of `READ_MAX` at most, each to the end of a sentence, else of a word; one for a short text."""
    out = []
    while len(text) > READ_MAX:
        head = text[:READ_MAX]
        ends = [m.end() for m in _SENTENCE_END.finditer(head)] or [head.rfind(" ") + 1]
        cut = ends[-1] or READ_MAX
        out.append(text[:cut].strip())
        text = text[cut:]
    return [*out, text] if out else [text]


_SENTENCE_END = re.compile(r"[.!?;]\s|\n")


def _cry(piece: str, ctx: Context) -> Distress | None:
    """A call for help in any sentence of a piece."""
    for s in _SENTENCE_END.split(piece):
        english = to_english(s) if is_german(s, ctx.language) else s
        cry = danger.call_for_help(find_names(s, english, ctx), ctx) if s.strip() else None
        if cry is not None:
            return cry
    return None


def _in_whole(meant: Understood, first: str, text: str) -> Understood:
    """The same with all that was written in place of the piece that was read."""
    match meant:
        case Reported():
            whole = (first, *([""] if all(r.kind in _SEEN for r in meant.reports) else []))
            return Reported(tuple(replace(r, words=text) if r.words in whole else r for r in meant.reports))
        case Distress() | Unclear() | Asked():
            return replace(meant, words=text)
        case _:
            return meant


def _read(text: str, ctx: Context) -> Understood:
    whole = _of_each(text, ctx) or _understand(text, ctx)
    if isinstance(whole, Distress) and whole.runner is None:
        first, *others = both.of_them(text, ctx) or (None,)
        whole = replace(whole, runner=first, also=tuple(o for o in others if o is not None))
    if isinstance(whole, Distress):
        return replace(whole, reports=_told_besides(text, ctx, whole))
    if isinstance(whole, Several):
        return whole
    return _several(text, ctx) or whole


def _of_each(text: str, ctx: Context) -> Understood | None:
    """'Both are off': a report for each, or the question asked of each; None where it can't be read so."""
    sentences = both.each(text, ctx)
    if sentences is None:
        return None
    meant = [_understand(s, ctx) for s in sentences]
    reports = [replace(r, words=text) for m in meant if isinstance(m, Reported) for r in m.reports]
    if all(isinstance(m, Reported) for m in meant):
        return Reported(tuple(reports))
    asked = [replace(m, words=text) for m in meant if isinstance(m, Asked)]
    if len(asked) == len(meant) and all(a.runner is not None for a in asked):
        return AskBack(Need.RUNNER, tuple(Choice(a.runner or "", a) for a in asked))
    cries = [m for m in meant if isinstance(m, Distress)]
    if not cries:
        return None
    ids = tuple(r.id for r in ctx.candidates())
    return replace(cries[0], words=text, runner=ids[0], also=ids[1:])


def _understand(text: str, ctx: Context) -> Understood:
    english = to_english(text) if is_german(text, ctx.language) else text
    said = find_names(text, english, ctx)
    if not said.plain.strip("? ;"):
        return Unclear(text)
    return (
        danger.call_for_help(said, ctx)
        or _yes_at(said, ctx)
        or correcting.undo_at(said)
        or answering.short_answer(said.plain, text)
        or correcting.was_another_time(said, ctx)
        or listed(said, ctx)
        or follow_up(said, ctx)
        or on_the_road.trouble(said, ctx)
        or asked_for.by_her(said, ctx)
        or _question_or_report(said, ctx)
        or danger.kept(said, ctx)
        or Unclear(text)
    )


_NEXT_CLAUSE = re.compile(
    r"[.?!;\n]+\s+|[?\n]+|,\s+(?=(?:when|where|what|who|how|wann|wo|was|wer|wie)\b)|\s*,?\s(?:and|und|also|"
    r"btw)\s(?=(?:when|where|what|who|how|do|does|should|shall|which|"
    r"wann|wo|was|wer|wie|muss|sollen|soll)\b)",
    re.IGNORECASE,
)
# What a later clause leans on an earlier one with: it can't be read alone.
_LEANS = re.compile(r"\b(?:it|that|there|one|then|da|dort|das|es|he|his)\b", re.IGNORECASE)


def _several(text: str, ctx: Context) -> Several | None:
    """Two questions in one message, or a report and a question: only where every clause is plain by itself."""
    clauses = [c.strip() for c in _NEXT_CLAUSE.split(text) if c.strip(" ?.!,")]
    if not 2 <= len(clauses) <= 3 or any(_LEANS.search(c) or " " not in c for c in clauses[1:]):
        return None
    parts = [_understand(_as_asked(c, text), ctx) for c in clauses]
    if not all(isinstance(p, Asked | Reported) for p in parts):
        return None
    reports = tuple(r for p in parts if isinstance(p, Reported) for r in p.reports)
    asked = tuple(p for p in parts if isinstance(p, Asked))
    same = len({(a.question, a.point, a.runner) for a in asked}) < len(asked)
    if not asked or same or any(a.person for a in asked) or any(a.question is Question.USAGE for a in asked):
        return None
    # Reports first: what is asked is answered on what has just been told.
    return Several((*((Reported(reports),) if reports else ()), *asked))


def _as_asked(clause: str, text: str) -> str:
    """The clause with the question mark that stood behind it."""
    return f"{clause}?" if f"{clause}?" in text else clause


_CLAUSE = re.compile(r"[.!;,\n]+\s*")
_SEEN = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})


def _told_besides(text: str, ctx: Context, cry: Distress) -> tuple[Report, ...]:
    """What a call for help says besides of where she was seen, where a clause of its own names the place: 'she fell and
    is bleeding, in at the mill 7:48'. Nothing that would end the call."""
    found: list[Report] = []
    for clause in _CLAUSE.split(text) if not cry.by_self else ():
        said = find_names(clause, to_english(clause) if is_german(clause, ctx.language) else clause, ctx)
        if said.point is None or asking.is_question(said.text):
            continue
        told = report(said, ctx, loose=False)
        if isinstance(told, Reported) and all(r.kind in _SEEN and r.point for r in told.reports):
            found += [replace(r, runner=r.runner or cry.runner) for r in told.reports]
    return tuple(r for r in found if r.runner is not None)


_YES_AT = re.compile(
    r"^yes (?:(?:she has|she is|she did|it was|has|was|about|just|been) ?)*"
    r"(in|here|there|at PT|through|past|out|left|gone|off)?"
    r"(?: at PT)?$"
)


def _yes_at(said: Sentence, ctx: Context) -> Acknowledged | None:
    """'Yes, at 5 to 3' to 'has she been there?': the answer and when."""
    time = find_time(said.text, ctx.now, ctx.time_zone)
    if time is None or not said.text.startswith("yes ") or said.text.endswith("?"):
        return None
    m = _YES_AT.search(f"{time.rest} ".replace("  ", " ").strip() + (" " if time.rest == "yes" else ""))
    if m is None or supposing.says_no_fact(said.words):
        return None
    kind = {"through": Kind.THROUGH, "past": Kind.THROUGH}.get(m[1] or "", Kind.IN)
    return Acknowledged(
        "yes", said.words, time.at, Kind.OUT if m[1] in ("out", "left", "gone", "off") else kind
    )


def _question_or_report(said: Sentence, ctx: Context) -> Understood | None:
    if said.text.endswith("?") or supposing.asks_in_german(said.words):
        return question(said, ctx) or _asked_after_all(report(said, ctx, loose=True), said)
    if asking.is_question(said.text):
        asked = question(said, ctx)
        # 'what a run, in at the mill 14:55' may still be a report; 'how is she in herself' never is one.
        return asked or (
            None if asking.is_put_as_question(said.text) else _as_guess(report(said, ctx, loose=True))
        )
    volunteer = ctx.parts <= {PartKind.VOLUNTEER}
    return report(said, ctx, loose=volunteer) or question(said, ctx) or report(said, ctx, loose=True)


_ASKS_FOR = {
    Kind.IN: Question.NEXT,
    Kind.NOT_HERE_YET: Question.NEXT,
    Kind.OUT: Question.MISSED,
    Kind.THROUGH: Question.MISSED,
    Kind.SWEEP_THROUGH: Question.CUT_OFF,
    Kind.RESTING: Question.WHERE,
    Kind.MOVING_AGAIN: Question.WHERE,
    Kind.HOW_SHE_IS: Question.HOW,
    Kind.CREW_THERE: Question.PEOPLE,
    Kind.CREW_LEFT: Question.PEOPLE,
}


def _asked_after_all(reported: Understood | None, said: Sentence) -> Understood | None:
    """'in?', 'out yet?': what would be a report without its mark is the question whether it is so."""
    if isinstance(reported, AskBack):
        if reported.need is Need.OUT:
            return _asks(Kind.OUT, None, said, reported.point)
        if reported.need is Need.DROPPED:
            return Asked(Question.HEARD, said.runner.id if said.runner else None, words=said.words)
        return reported if all(isinstance(c.then, Asked) for c in reported.choices) else None
    if not isinstance(reported, Reported):
        return None
    first = reported.reports[0]
    return _asks(first.kind, first.runner, said, first.point)


def _asks(kind: Kind, runner: str | None, said: Sentence, point: str | None) -> Asked:
    question = _ASKS_FOR.get(kind, Question.HEARD)
    if question is Question.NEXT and said.point is not None:
        question = Question.AT
    meant = runner or (said.runner.id if said.runner else None)
    return Asked(question, meant, point if question is not Question.NEXT else None, words=said.words)


def _as_guess(reported: Understood | None) -> Understood | None:
    if isinstance(reported, Reported):
        return Reported(tuple(replace(r, guessed=True) for r in reported.reports))
    return reported
