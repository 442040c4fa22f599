"""From a message to what it means: the order in which things are looked for.

Danger first, whatever else is said. Then short answers, lists, follow-ups on the question before; then each clause is shown
to the model, what it makes of it is held to what the words allow, and done if it is sure enough. Of two likely meanings both
are offered; what nobody can make out is kept word for word.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import numpy as np

from server.conversation.understanding import answers, gates, left_behind, names, questions, reports, subject
from server.conversation.understanding.afterthought import at_the_time_said, put_right
from server.conversation.understanding.again import says_alone
from server.conversation.understanding.clauses import CLAUSES_MAX, Clauses, clauses_of, pieces_of
from server.conversation.understanding.danger import by_rule, hear
from server.conversation.understanding.features import begins_as_question, key, question_form, topics
from server.conversation.understanding.language import Matcher, lexicon
from server.conversation.understanding.listing import in_order, listed
from server.conversation.understanding.meaning import (
    Acknowledged,
    AskBack,
    Asked,
    Choice,
    Context,
    Danger,
    Distress,
    Kept,
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
from server.conversation.understanding.model import model
from server.conversation.understanding.policy import policy
from server.conversation.understanding.sentence import (
    NUMBER,
    PERSON,
    POINT,
    RUNNER,
    TIME,
    Sentence,
    finish_of,
    read_sentence,
)
from server.conversation.understanding.strangers import of_a_strange_bib
from server.conversation.understanding.subject import Whose
from server.conversation.understanding.times import TimeSaid, signs_of
from server.conversation.understanding.wishes import before_her, edge_of, of_finish
from server.event.model import PartKind
from server.facts.entry import EVERYBODY, Kind, Retired
from server.facts.state import Going

UNDO_WITHIN = timedelta(minutes=10)
"""How long a report can be taken back with one word."""
READ_MAX = 1_000
"""So many characters, to the end of a sentence, are read for what they mean (own choice: five times a long message); of what
comes after only a call for help, so that a long message costs no more than a few short ones."""
NONE = "none"
"""What the model says of words that no intent is for; it only takes from the shares of the others."""
_SURE_OF_A_SLIP = 0.5
"""Words of which none is known are nonsense, unless the model is so sure what was mistyped."""
_ON_FOOT = frozenset({PartKind.RUNNER, PartKind.PACER})
_SEEN = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})
_HAS_HOW = _SEEN | {Kind.POSITION, Kind.RESTING, Kind.MOVING_AGAIN}
"""Reports that may say besides how she is."""


@dataclass(frozen=True, slots=True)
class Guess:
    """What one clause may mean: the likeliest intents the words allow, with their shares."""

    said: Sentence
    likely: tuple[tuple[str, float], ...]

    @property
    def first(self) -> tuple[str, float]:
        """The likeliest."""
        return self.likely[0] if self.likely else ("", 0.0)


def read(text: str, ctx: Context) -> Reading:
    """What a person means by `text`, and whether it sounds like danger. Never raises. A message of any length is kept whole
    in the words of what it reports, with a time that it takes back itself."""
    head = _head(text)
    said = put_right(head) + text[len(head) :]
    found = _heard_and_read(said, ctx)
    return found if said == text else replace(found, meant=_whole(found.meant, said, text))


def _heard_and_read(text: str, ctx: Context) -> Reading:
    head = _head(text)
    clauses = Clauses(ctx)
    heard = hear(head, clauses, judged=CLAUSES_MAX)
    if heard.danger is not Danger.ALARM and len(head) < len(text):
        rest = hear(text[len(head) :], clauses, judged=0)
        heard = rest if rest.danger is Danger.ALARM else heard
    if heard.danger is Danger.ALARM and heard.clause is not None:
        cry = heard.clause
        first, *also = _whom(cry, clauses.of(head), ctx)
        distress = Distress(text, ctx.now, first, heard.by_self, tuple(a for a in also if a))
        return Reading(replace(distress, reports=_told_besides(head, clauses, distress)), Danger.ALARM)
    broke_off = _call_broke_off(clauses.of(head), ctx)
    if broke_off is not None:
        return Reading(broke_off, Danger.ASK)
    meant = at_the_time_said(_read(head, clauses), head, clauses)
    meant = reports.unless_unsure(meant, clauses.of(head))
    no_danger = _only_asks, _is_list, _is_number_put_right
    if heard.danger in _UNSURE and any(of(meant, head, clauses) for of in no_danger):
        return Reading(meant, Danger.NONE)
    if heard.danger is Danger.ASK:
        apart = _not_of_her(meant, text, clauses.of(head), heard.whose, ctx)
        if apart is not None:
            return Reading(apart, Danger.ASK)
        meant = _but_quieting(meant, head, clauses)
    if heard.danger is Danger.ASK and isinstance(meant, Requested) and _is_wanted(meant, head, clauses):
        said = clauses.of(head)
        red = _of_red_flags(said) and said.says("feel")
        grave = red or by_rule(said.plain, own=False) is not Danger.NONE
        return Reading(meant, Danger.ASK if grave else Danger.NONE)
    if heard.danger is Danger.ASK and isinstance(meant, AskBack | Unclear) and "?" in head:
        said = clauses.of(head)
        if said.runner is not None and (said.named or said.says("she")) and not _on_foot(ctx):
            return Reading(Asked(Question.TOLD, said.runner.id, words=text), Danger.ASK)
    if heard.danger is Danger.ASK and _says_little(meant, head):
        parts = [(clauses.of(c), strong) for c, strong in clauses_of(head)]
        asked = any(gates.asks(s) if strong else _asks_by_itself(s) for s, strong in parts)
        whole = clauses.of(head)
        if not asked and (not _of_writer(whole, ctx) or _of_red_flags(whole)):
            meant = _how_she_is(heard.clause, whole, ctx) or meant
        cannot = isinstance(meant, Acknowledged) and meant.answer == "cannot"
        if isinstance(meant, Unclear) and "?" not in head:
            asked = asked and by_rule(whole.plain, own=False) is Danger.NONE
        if isinstance(meant, Undo | Unclear | OtherRunner | Small | Acknowledged) and not (asked or cannot):
            meant = Kept(text, ctx.now, None, of_her=False)  # nothing is taken back, or lost, by such words
    meant = _whole(meant, head, text) if len(head) < len(text) else meant
    calm = heard.danger is Danger.NONE and heard.score < policy().wonder
    return Reading(meant, heard.danger, calm, sure=heard.score >= policy().sure)


_UNSURE = (Danger.DOUBT, Danger.ASK)


def _call_broke_off(said: Sentence, ctx: Context) -> Reported | None:
    """'She rang and said goodbye, then it cut off': how she is, whatever else the words sound like."""
    if PartKind.RUNNER in ctx.parts or said.asks or not (said.reads("rang") and said.reads("broke_off")):
        return None
    if not (said.says("she") or said.named) or said.runner is None or said.control or gates.of_another(said):
        return None
    return Reported((Report(Kind.HOW_SHE_IS, ctx.now, said.runner.id, words=said.written),))


def _is_wanted(meant: Requested, head: str, clauses: Clauses) -> bool:
    """Whether the words are surely to be passed on, or of a thing left behind, and of nobody's state by themselves."""
    said = clauses.of(head)
    told = _behind(lexicon().read["let_know"], said) or _told_whole(head, said) is not None
    return meant.request is Request.LIGHT_LEFT or bool(told)


def _is_number_put_right(_: Understood, head: str, clauses: Clauses) -> bool:
    """Whether a message is figures and words that put something right, and nothing else: '20 sorry'."""
    said, known = clauses.of(head), lexicon()
    aside = (known.classes["correct"], known.classes["no"], known.read["rather"], known.soft)
    figures = [w for w in said.masked if w in (TIME, NUMBER) or w.isdigit()]
    return bool(figures) and all(w in figures or any(m.word(w) for m in aside) for w in said.masked)


def _is_list(_: Understood, head: str, clauses: Clauses) -> bool:
    """Whether a message is bibs, words of a list and times, and nothing else: no number of it is of a body."""
    said = clauses.of(head)
    bibs = any(w[0].isdigit() or w[0] == "#" for w in said.plain)
    return bibs and listed(said, clauses.ctx) is not None


def understand(text: str, ctx: Context) -> Understood:
    """What a person means by `text`."""
    return read(text, ctx).meant


def likeliest(text: str, ctx: Context) -> tuple[str, float]:
    """The likeliest intent of a message as a whole, and how likely it is."""
    clauses = Clauses(ctx)
    return guess(clauses.of(_head(text)), clauses).first


_SAYS_OF_DANGER = frozenset({Question.CARDS, Question.HELP_WORD, Question.USAGE})


def _only_asks(meant: Understood, text: str, clauses: Clauses) -> bool:
    """Whether somebody who is not on foot puts a question about something else: 'I fell asleep, did I miss anything'."""
    if clauses.ctx.parts & _ON_FOOT or not isinstance(meant, Asked) or meant.question in _SAYS_OF_DANGER:
        return False
    if "?" not in text and by_rule(clauses.of(text).plain, own=False) is not Danger.NONE:
        return False  # 'is she ok she is shaking all over and her lips are blue'
    said = [clauses.of(p) for p in pieces_of(text)[:CLAUSES_MAX]]
    if any(subject.whose(s) is Whose.WRITERS and "sick" in topics(s.masked) for s in said):
        return False  # 'I feel ill, must lie down, can somebody take my post'
    return any(question_form(clauses.of(piece)) for piece in pieces_of(text)[:CLAUSES_MAX])


def denies_her(text: str, ctx: Context) -> bool:
    """Whether a message begins with that it is not she: 'not Maren!! a marshal'."""
    first = read_sentence(next(iter(pieces_of(_head(text))), text), ctx)
    row, read_ = list(first.masked), lexicon()
    while row and (n := read_.read["lead"].begins(row)) and not read_.subject["not_ours"].begins(row):
        row = row[n:]
    named = len(row) > 1 and read_.classes["neg"].word(row[0]) and row[1] == RUNNER
    return not first.asks and (named or read_.subject["not_ours"].begins(row) > 0)


def danger_of(words: str, ctx: Context) -> Danger:
    """Whether words sound like danger."""
    return hear(_head(words), Clauses(ctx), judged=CLAUSES_MAX).danger


def time_alone(text: str, now: datetime, zone: str) -> datetime | None:
    """The moment, where the message is a time and nothing else ('at 3:10', 'vor 10 min')."""
    said = read_sentence(text, Context(now, zone, ()))
    soft = lexicon().soft
    rest = [w for w in said.masked if w != TIME and not soft.word(w)]
    bare = said.time is not None and said.time.bare
    if said.time is None or (rest and not (bare and len(rest) == 1)):
        return None
    return said.time.at


_QUIETING = frozenset({Kind.OUT, Kind.RESTING, Kind.MOVING_AGAIN, Kind.STAND_DOWN})
"""Reports after which somebody would look for her less."""


def _but_quieting(meant: Understood, text: str, clauses: Clauses) -> Understood:
    """The meaning, of words that sound like danger, without what would have her looked for less and is told at no time
    and of no place: 'lying down, sky is spinning', 'took her gloves off'. A short sentence is taken as it is said."""
    said = clauses.of(text)
    if len(said.masked) <= _SHORT:
        return meant
    told = meant.reports if isinstance(meant, Reported) else ()
    if isinstance(meant, Several):
        told = tuple(r for p in meant.parts if isinstance(p, Reported) for r in p.reports)
    if told and all(r.kind is Kind.NOT_HERE_YET for r in told) and not _waits(said):
        # 'Talks oddly, wants to sleep, here on the moss' says little of where she is not.
        return Kept(text, clauses.ctx.now, told[0].runner, of_her=_of_her(said, clauses.ctx, grave=True))
    if not any(r.kind in _QUIETING for r in told):
        return meant
    # Who lies down, as words tell that sound like danger, is not resting, whatever time and place they give.
    rest = any(r.kind is Kind.RESTING for r in told)
    if (said.time is not None or said.point is not None) and not rest:
        return meant
    runner = next(r.runner for r in told if r.kind in _QUIETING)
    return Kept(text, clauses.ctx.now, runner, of_her=_of_her(said, clauses.ctx, grave=True))


def _waits(said: Sentence) -> bool:
    """Whether somebody says in so many words that they wait for her ('nobody has seen her, it's been an hour'), and no word
    of a danger besides."""
    says_so = any(said.says(c) for c in ("see", "yet", "wait"))
    return says_so and by_rule(said.plain, own=False) is Danger.NONE


def _not_of_her(
    meant: Understood, text: str, said: Sentence, whose: Whose, ctx: Context
) -> Kept | Several | None:
    """The words kept apart from her, where they sound like danger and are of somebody else who is down, of a drill, or of
    a writer who was taken to be somewhere, or to ask ('chest is tight. just how I was lying'); None for any others."""
    parts = meant.parts if isinstance(meant, Several) else (meant,)
    told = [r for p in parts if isinstance(p, Reported) for r in p.reports]
    apart: Kept | Several = Kept(text, ctx.now, None, of_her=False)
    there = [r for r in told if r.kind is Kind.CREW_THERE] or _at_a_point_first(text, ctx)
    if there and there[0].point is not None:
        apart = Several(
            (Reported((replace(there[0], guessed=False),)), Kept(text, ctx.now, None, of_her=False))
        )
    not_hers = whose.apart or _of_somebody_else(said) or said.reads("drill")
    named = said.named and not subject.denies_her(said)
    seen = any(r.kind in _SEEN for r in told) and (
        not whose.apart or named or said.time is not None or said.point is not None
    )
    if not_hers and not seen and not (_of_who_comes(meant, said) and whose in _HELPERS):
        return apart
    own = gates.of_writer(said) and not _on_foot(ctx)
    if not (own or _of_writer(said, ctx)):
        return None
    of_writer = (Kind.CREW_THERE, Kind.CREW_LEFT, *((Kind.HOW_SHE_IS,) if own else ()))
    if said.point is None and told and all(r.kind in of_writer for r in told):
        return apart
    asked = any(isinstance(p, Asked) and p.question not in _SAYS_OF_DANGER for p in parts)
    bodily = _of_red_flags(said) or by_rule(said.plain, own=False) is not Danger.NONE
    return apart if asked and bodily else None


def _at_a_point_first(text: str, ctx: Context) -> list[Report]:
    """Where the writer stands, of a message that begins with it: 'at the mill now. a marshal has collapsed'."""
    said = read_sentence(next(iter(pieces_of(text)), text), ctx)
    row = [w for w in said.masked if not lexicon().read["trail"].word(w) and w not in lexicon().names["the"]]
    if len(row) != 2 or row[1] != POINT or not lexicon().read["at"].word(row[0]) or _on_foot(ctx):
        return []
    point = (
        names.which_pass(said.point, said.masked, said.runner, ahead=True)
        if said.point and said.runner
        else None
    )
    return (
        [Report(Kind.CREW_THERE, ctx.now, said.runner.id, point, words=text)] if said.runner and point else []
    )


_HELPERS = (Whose.WRITERS, Whose.OTHERS)


def _of_who_comes(meant: Understood, said: Sentence) -> bool:
    """Whether words of a helper's trouble say who comes, ask, or want something told: that is done, the number before it."""
    parts = meant.parts if isinstance(meant, Several) else (meant,)
    told = [r for p in parts if isinstance(p, Reported) for r in p.reports]
    if any(isinstance(p, Asked) for p in parts) and not gates.asks(said):
        return False
    comes = all(r.kind is Kind.CANNOT_COME for r in told)
    return comes and all(isinstance(p, Asked | Reported | Requested) for p in parts)


def _of_somebody_else(said: Sentence) -> bool:
    """Whether it is somebody else who is down: 'I hit someone, not moving', and not her."""
    return not said.named and not said.reads("she_alone") and said.reads("somebody_else")


_SHORT = 6
"""So many words at most are one sentence (own choice)."""
_SAYS_LITTLE = frozenset({"ok", "yes", "no", "awake", "cannot", "seen"})


def _says_little(meant: Understood, text: str) -> bool:
    """Whether a meaning loses words that sound like danger: these are kept as how she is instead."""
    match meant:
        case AskBack(need=need):
            return need is Need.MEANING
        case Acknowledged(answer=answer):
            return answer in _SAYS_LITTLE and answers.short_answer(text) is None
        case Small():
            return answers.short_answer(text) is None
        case Requested(request=Request.PASS_ON, person=str()):
            return False  # the words go on, whole, to whom they are for
        case _:
            return isinstance(meant, Kept | Unclear | Requested | Undo | OtherRunner)


def _how_she_is(clause: Sentence | None, whole: Sentence, ctx: Context) -> Understood | None:
    """How she is, of a clause that sounds like danger; None where the clause, or the message around one that names nobody,
    speaks of somebody or something else."""
    if clause is None or question_form(clause) or _of_writer(clause, ctx):
        return None
    if gates.of_another(clause) or gates.of_a_bib(clause) or not _of_her(clause, ctx, grave=True):
        return None
    if not whole.named and (whole.reads("unknown_one") or (gates.of_him(clause) and gates.of_a_man(whole))):
        return None
    hers = clause.named or clause.says("she") or _on_foot(ctx)
    pacer = PartKind.RUNNER not in ctx.parts and whole.says("she")
    if pacer and clause.says("i") and not (clause.named or clause.says("she")):
        return None  # 'can't feel my fingers … she's fine, it's me' is the pacer's
    if not hers and (gates.asks(whole) or gates.of_another(whole) or gates.of_a_thing(whole)):
        return None
    if not hers and (_of_a_vehicle(whole) or gates.of_writer(whole)):
        return None  # 'fell asleep at the wheel, hit the wall' is whoever drives
    if (
        gates.not_her(whole)
        or _of_somebody_else(whole)
        or not (hers or _of_a_body(clause) or _of_red_flags(whole))
    ):
        return None
    one = Report(Kind.HOW_SHE_IS, ctx.now, clause.runner.id if clause.runner else None, words=whole.written)
    return reports.with_runner(one, clause, ctx)


def _on_foot(ctx: Context) -> bool:
    """Whether the writer is on the course, and speaks of her race: a pacer who still waits for her does not."""
    return bool(ctx.parts & _ON_FOOT) and not ctx.waits


def _of_a_body(said: Sentence) -> bool:
    """Whether words of nobody say how somebody is: 'shivering, lips blue', not 'and now'."""
    return _is_how(said) or _of_red_flags(said) or by_rule(said.plain, own=False) is not Danger.NONE


def _of_a_vehicle(said: Sentence) -> bool:
    return "vehicle" in topics(said.masked)


_SAID_OF_ALL = frozenset({"redwheel", "redair", "redurine"})
"""Red flags whose words are said of cars, of stoves and of the night too."""


def _of_red_flags(said: Sentence) -> bool:
    return any(t.startswith("red") and t not in _SAID_OF_ALL for t in topics(said.masked))


def _of_her(said: Sentence, ctx: Context, *, grave: bool = False) -> bool:
    """Whether words that no report was made of speak of the runner: she is named, or meant, or how somebody is is said while
    she is at a point, and nobody else is named. Of the first person they speak of the writer. `grave` words of nobody are
    taken for hers."""
    if gates.not_her(said):
        return False
    of_somebody = any(said.says(c) for c in ("she", "i", "we")) or said.named
    if said.says("you") and not of_somebody:
        return False  # 'go and have a lie down, you have earned it'
    if said.named or _on_foot(ctx):
        return True
    if PERSON in said.masked or said.says("someoneelse") or gates.of_a_thing(said):
        return False
    if gates.of_the_last(said) or _of_somebody_else(said):
        return False
    if said.reads("if_so") or said.reads("unknown_one") or (gates.of_a_man(said) and gates.of_him(said)):
        return False
    if gates.asks(said) and not grave:
        return False
    own = said.says("i") or said.says("we")
    with_her = said.runner is not None and said.runner.at is not None
    return said.says("she") or (not own and (grave or (with_her and _is_how(said))))


def _of_writer(said: Sentence, ctx: Context) -> bool:
    """Whether somebody who is not on the course speaks of themselves: the first person is the writer, never her."""
    hers = said.named or said.says("she") or _on_foot(ctx)
    return not hers and (said.says("i") or said.says("we"))


def _head(text: str) -> str:
    """The first part of a long text, to the end of a sentence, else of a word."""
    if len(text) <= READ_MAX:
        return text
    head = text[:READ_MAX]
    ends = [m.end() for m in re.finditer(r"[.!?;]\s|\n", head)] or [head.rfind(" ") + 1]
    return head[: ends[-1] or READ_MAX]


def _whole(meant: Understood, head: str, text: str) -> Understood:
    """The same with all that was written in place of the part that was read."""
    match meant:
        case Reported():
            whole = [
                replace(r, words=text) if r.words in (head, head.strip(), "") else r for r in meant.reports
            ]
            return Reported(tuple(whole))
        case Several():
            parts = tuple(_whole(p, head, text) for p in meant.parts)
            return Several(
                tuple(
                    p for p in parts if isinstance(p, Asked | Reported | Requested | AskBack | Kept | Unclear)
                )
            )
        case Kept() | Unclear() | Asked() | Requested() | Distress():
            return replace(meant, words=text)
        case _:
            return meant


# -- danger --------------------------------------------------------------------------------------------------------


def _whom(cry: Sentence, whole: Sentence, ctx: Context) -> tuple[str | None, ...]:
    """For whom a cry is: those named, the writer's two where the message says 'they', the one that is meant by default."""
    if cry.runners:
        return cry.runners
    own = ctx.candidates()
    if cry.runner is None and len(own) == 2 and (whole.says("both") or whole.says("they")):
        return tuple(r.id for r in own)
    return (cry.runner.id if cry.runner else None,)


def _told_besides(text: str, clauses: Clauses, cry: Distress) -> tuple[Report, ...]:
    """What a call for help says besides of where she was seen, where a clause of its own names the place: 'she fell and
    is bleeding, in at the mill 7:48'. Nothing that would end the call."""
    found: list[Report] = []
    for clause in pieces_of(text)[:CLAUSES_MAX] if not cry.by_self else ():
        said = clauses.of(clause)
        if said.point is None or question_form(said):
            continue
        told = _plainly(said, clauses)
        if isinstance(told, Reported) and all(r.kind in _SEEN and r.point for r in told.reports):
            found += [replace(r, runner=r.runner or cry.runner) for r in told.reports]
    return tuple(r for r in found if r.runner is not None)


# -- one message -----------------------------------------------------------------------------------------------------


def _read(text: str, clauses: Clauses) -> Understood:
    said, ctx = clauses.of(text), clauses.ctx
    if not said.plain:
        return Unclear(text)
    meant = (
        _goes(said, ctx)
        or answers.short_answer(text)
        or _yes_at(said)
        or listed(said, ctx)
        or _told_and_done(text, said, clauses)
        or _told_whole(text, said)
        or _to_bed(said, ctx)
        or questions.follow_up(said, ctx)
        or questions.of_a_place(said, ctx)
        or left_behind.light_left(said)
        or left_behind.still_here(said, ctx)
        or left_behind.left_with(said, ctx)
        or reports.bare_place(said, ctx)
        or _for_somebody(text, said)
        or _asked_to_take(said, ctx)
        or _of_the_writer(said, ctx)
        or _helper_stops(said, ctx)
        or _stops_and_told(said, ctx)
        or reports.seems_over(said, ctx)
        or _stop_with_both_ends(said, ctx)
        or _from_the_place(text, said, clauses)
        or (of_a_strange_bib(text, clauses, _by_clauses) if NUMBER in said.masked else None)
        or _by_clauses(text, said, clauses)
    )
    return _to_each(_gone_on(meant, said, ctx), text, clauses)


def _gone_on(meant: Understood, said: Sentence, ctx: Context) -> Understood:
    """'She's up again, leaving now with two gels' of who rests where the writer stands: she is out of it."""
    her = said.runner
    if not isinstance(meant, Reported) or her is None:
        return meant
    if said.point is not None:
        return Reported(tuple(_comes_again(r, said) for r in meant.reports))
    if not said.says("leave"):
        return meant
    rests_here = her.going == Going.RESTING and ctx.point is not None and ctx.point == her.reached
    if not rests_here or gates.supposed("out", said) or gates.denied("out", said):
        return meant
    there = Kind.MOVING_AGAIN, None
    out = (
        replace(r, kind=Kind.OUT, point=ctx.point) if (r.kind, r.point) == there else r for r in meant.reports
    )
    return Reported(tuple(out))


def _to_bed(said: Sentence, ctx: Context) -> Acknowledged | None:
    """'Nap for 20 min', 'gonna shut my eyes till 4' of who is not on the course: they sleep, and not she, unless the words
    say nobody and she is at a point."""
    bed = lexicon().subject["bed"]
    if _on_foot(ctx) or said.named or said.says("she") or said.point is not None or gates.asks(said):
        return None
    own = said.says("i") or said.says("we")
    with_her = said.runner is not None and said.runner.at is not None
    if (
        not bed.has(said.plain)
        or PERSON in said.masked
        or not (own or (_leads_to(bed, said) and not with_her))
    ):
        return None
    until, length = _until(Request.MUTE, said, ctx)
    return Acknowledged("to bed", said.written, until or (None if length is None else ctx.now + length))


def _leads_to(what: Matcher, said: Sentence) -> bool:
    """Whether a clause begins with one of these, behind words that say nothing."""
    return _behind(what, said) > 0


def _behind(what: Matcher, said: Sentence) -> int:
    """How many words a clause begins with up to the end of one of these, words that say nothing before it; 0 for none."""
    words, read = list(said.plain), 0
    while (
        words[read:] and not what.begins(words[read:]) and (n := lexicon().read["lead"].begins(words[read:]))
    ):
        read += n
    found = what.begins(words[read:])
    return read + found if found else 0


_HEADED = re.compile(r"^\s*(?P<head>[^.!?:;,\n]{2,40}?)\s*(?:[.!:,]+\s|\n)\s*(?P<rest>\S.*)$", re.DOTALL)


def _from_the_place(text: str, said: Sentence, clauses: Clauses) -> Understood | None:
    """Who runs and writes the name of a point, a full stop and more ('mill! soup was great') writes from there: she is in,
    unless the rest says something else of where she is, asks or wishes something. Without a time or a '!' it is
    asked whether that is so."""
    found = _HEADED.match(text)
    if found is None or not _on_foot(clauses.ctx) or _moves(said) or said.says("ask") or said.says("bring"):
        return None
    head = clauses.of(found["head"])
    read = lexicon().read
    skip = (read["lead"], read["at"])
    words = [w for w in head.masked if w not in lexicon().names["the"] and not any(m.word(w) for m in skip)]
    if words != [POINT] or question_form(said) or said.masked.count(POINT) != 1:
        return None
    rest = _by_clauses(found["rest"], clauses.of(found["rest"]), clauses)
    here = reports.report("in", head, clauses.ctx)
    parts = rest.parts if isinstance(rest, Several) else (rest,)
    if not isinstance(here, Reported) or any(isinstance(p, Asked) for p in parts):
        return None
    sure = said.time is not None or "!" in text[: found.start("rest")]
    when = said.time.at if said.time is not None else clauses.ctx.now
    how = _is_how(said) or isinstance(rest, Kept | Reported)
    arrived = Reported(
        tuple(
            replace(r, seen_at=when, words=text, condition=how, guessed=r.guessed or not sure)
            for r in here.reports
        )
    )
    wishes = tuple(p for p in parts if isinstance(p, Requested))
    return Several((arrived, *wishes)) if wishes else arrived


def _moves(said: Sentence) -> bool:
    """Whether words say that she goes on, or is past."""
    return any(said.says(c) for c in ("leave", "through", "ended", "dropped"))


_ADDRESSED = re.compile(r"^\s*(?P<lead>[^\W\d]+\s+)?(?P<name>[^\W\d]+)\s*[:：]")


def _told_of(said: Sentence) -> bool:
    """Whether a clause can stand by itself: 'look for her', out of 'shall I go and look for her', can't."""
    return said.named or any(lexicon().classes[c].word(said.masked[0]) for c in ("she", "i", "we", "they"))


def _for_somebody(text: str, said: Sentence) -> Requested | None:
    """'For Ana: sunglasses': words with a person's name and a colon before them are for that person."""
    found = _ADDRESSED.match(text)
    if found is None or said.person is None or PERSON not in said.masked[:2]:
        return None
    if found["lead"] and not lexicon().read["for_whom"].word(said.plain[0]):
        return None
    return Requested(Request.PASS_ON, said.written, said.person, to=said.person)


_SENTENCE_ENDS = re.compile(r"[.!?;\n]\s*[^\W\d]")


def _to_each(meant: Understood, text: str, clauses: Clauses) -> Understood:
    """'Tell Ana we need the big shoes, and Jonas a cold beer': words for each of two people; anything else as it is."""
    if not isinstance(meant, Requested) or meant.request is not Request.PASS_ON or meant.person is None:
        return meant
    for m in (x for x in _AND.finditer(text) if lexicon().read["joins"].word(x["join"].casefold())):
        rest = clauses.of(text[m.end() :].strip())
        words = list(rest.masked[1:] if rest.masked[0] in lexicon().names["the"] else rest.masked)
        if words[0] != PERSON or rest.person in (None, meant.person) or len(words) < _FEWEST_KEPT:
            continue
        if not lexicon().read["told_too"].word(words[1]):
            continue  # '… and Jonas is late' is told to Ana
        head = text[: m.start()].rstrip(" ,;")
        also = Requested(Request.PASS_ON, rest.written, rest.person, to=rest.person or "")
        return Several((replace(meant, words=head), also))
    return meant


_AND = re.compile(r"[,;]?\s+(?P<join>[^\W\d]{2,5})(?=\s+\S)")


def _told_whole(text: str, said: Sentence) -> Requested | None:
    """'Tell Ana to bring my jacket, the blue one', 'tell everyone I feel sick, want coke': one sentence that begins so goes
    on with every word of it, also that of the runner herself."""
    n = lexicon().classes["tell"].begins(said.masked)
    rest = [w for w in said.masked[n:] if w not in lexicon().names["the"]]
    if not n or len(rest) < 2 or said.control or _SENTENCE_ENDS.search(text) or said.reads("tell_not"):
        return None
    one = rest[0] == PERSON and said.person is not None
    hers = lexicon().classes["she"].word(rest[0]) or rest[0] == RUNNER  # whoever meets her tells her
    if (
        not one
        and not hers
        and not (lexicon().classes["they"].word(rest[0]) and _words_for(said) == EVERYBODY)
    ):
        return None
    return Requested(
        Request.PASS_ON,
        said.written,
        said.person if one else None,
        to=said.person if one and said.person else EVERYBODY,
    )


_TAKEN_WITHIN = 4
"""A place that somebody is to take stands so few words from 'take' ('take the poles to the mill' asks for poles)."""


def _goes(said: Sentence, ctx: Context) -> Acknowledged | None:
    """'Ok, I'm taking the mill': the answer to who goes there."""
    if not ctx.parts & {PartKind.CREW, PartKind.PACER} or question_form(said) or said.point is None:
        return None
    if (
        not (said.says("i") and said.reads("i_take"))
        or PERSON in said.masked
        or said.says("she")
        or said.named
    ):
        return None
    if said.time is not None or gates.supposed("crew_there", said) or len(said.masked) > _SHORT + 2:
        return None
    return Acknowledged("i go", said.written)


def _asked_to_take(said: Sentence, ctx: Context) -> Requested | None:
    """'Jonas, you take the mill, I must sleep': somebody is asked by name to be at a point in the writer's place."""
    crew = ctx.parts & {PartKind.CREW, PartKind.PACER}
    if not crew or _on_foot(ctx) or said.person is None or said.point is None or said.runner is None:
        return None
    row = list(said.masked)
    takes = lexicon().read["you_take"].places(row)
    near = takes and POINT in row[takes[0] : takes[0] + _TAKEN_WITHIN]
    while row and row[0] != PERSON and (n := lexicon().read["lead"].begins(row)):
        row = row[n:]
    if not near or row[0] != PERSON or said.reads("i_take"):
        return None
    point = names.which_pass(said.point, said.masked, said.runner, ahead=True)
    if point is None or said.says("she") or said.named:
        return None
    return Requested(Request.SWAP, said.written, said.person, said.runner.id, point, to=said.person)


def _of_the_writer(said: Sentence, ctx: Context) -> OtherRunner | None:
    """'No, me, not her': the report before was of whoever wrote it. A pacer's trouble is hers too, who has nobody else."""
    if ctx.parts & _ON_FOOT or not said.reads("me_not_her") or said.asks or len(said.masked) > _SHORT:
        return None
    return OtherRunner(said.written, writer=True)


def _helper_stops(said: Sentence, ctx: Context) -> Understood | None:
    """'I'm done, my knee, she goes on alone' of who is not the runner: a helper's end, and none of hers."""
    if PartKind.RUNNER in ctx.parts or said.asks or said.reads("if_so"):
        return None
    ends = said.reads("goes_on_alone") and said.reads("gives_up")
    if not ends or not (said.says("i") or said.person is not None):
        return None
    return reports.report("cant_come", said, ctx)


def _stops_and_told(said: Sentence, ctx: Context) -> Understood | None:
    """'Pulling out, told the marshal' of who runs: her race is over, which she need not say twice."""
    told = said.says("knows") and said.reads("officials")
    if PartKind.RUNNER not in ctx.parts or said.asks or not told or not said.reads("gives_up"):
        return None
    if gates.denied("retired", said) or gates.supposed("retired", said):
        return None
    base = replace(reports.base_of(said, ctx), kind=Kind.RETIRED, how=Retired.OWN_CHOICE, guessed=False)
    return reports.with_runner(base, said, ctx)


def _told_and_done(text: str, said: Sentence, clauses: Clauses) -> Several | Requested | None:
    """'Let everyone know she left at 2:15. She has no gloves': every word goes to everybody, and what it reports of her
    is kept as in any message."""
    told, runs = lexicon().read["let_know"], PartKind.RUNNER in clauses.ctx.parts
    if runs or said.asks or said.reads("tell_not"):
        return None
    behind = _behind(told, said)
    if not behind:
        return None
    every = Requested(Request.PASS_ON, text, to=EVERYBODY)
    rest = " ".join(text.split()[behind:])
    meant = _by_clauses(rest, clauses.of(rest), clauses) if rest else None
    parts = meant.parts if isinstance(meant, Several) else (meant,)
    done = [r for p in parts if isinstance(p, Reported) for r in p.reports if r.kind in _DONE_BESIDES]
    return Several((Reported(tuple(done)), every)) if done else every


_DONE_BESIDES = _SEEN | {Kind.CREW_THERE, Kind.CREW_LEFT}


def _stop_with_both_ends(said: Sentence, ctx: Context) -> Reported | None:
    """'She came in 1622, had soup, out again 1631': two reports; with how she is, in the words of both."""
    if len(said.runners) > 1:
        return None  # each of them has a clause
    both = reports.in_and_out(said, ctx) if len(said.masked) >= _FEWEST_KEPT else None
    if both is None or not _is_how(said):
        return both
    first, *rest = both.reports
    return Reported((replace(first, condition=True), *rest))


def _yes_at(said: Sentence) -> Acknowledged | None:
    """'Yes, at 5 to 3' to 'has she been there?': the answer and when."""
    time = said.time
    if time is None or said.asks or lexicon().answers.get(said.plain[0]) != "yes":
        return None
    if len(said.masked) > 4 or gates.supposed("in", said) or gates.denied("in", said):
        return None
    kind = Kind.THROUGH if said.says("through") else Kind.OUT if said.says("leave") else Kind.IN
    return Acknowledged("yes", said.written, time.at, kind)


def _by_clauses(text: str, said: Sentence, clauses: Clauses) -> Understood:
    """The message as a whole; or its clauses, where they say different things and each is sure."""
    whole = guess(said, clauses)
    if not any(_known(w) for w in said.masked) and whole.first[1] < _SURE_OF_A_SLIP:
        return Unclear(text)
    post = _from_a_post(text, clauses)
    if post is not None:
        rest, there = post
        return _whole(_by_clauses(rest, there.of(rest), there), rest, text)
    parts = clauses_of(text)
    so = _is_it_so(parts, clauses)
    if so is not None:
        return so
    sure = whole.first[1] >= policy().tiers.get(whole.first[0], 1.0)
    if len(parts) < 2 or (sure and whole.first[0] in _OF_THE_LAST):
        return _decide(whole, clauses.ctx)
    if not gates.asks_something(said):
        whole = replace(whole, likely=tuple(x for x in whole.likely if x[0] not in gates.TALKED_OF))
    each = Clauses(_about_her(said, clauses.ctx))
    guesses = [(strong, guess(_as_nowhere(each.of(c), said), each)) for c, strong in parts]
    return _of_clauses(text, whole, guesses, clauses.ctx)


def _as_nowhere(clause: Sentence, whole: Sentence) -> Sentence:
    """A clause of no place, in a message of one that has no name: '214 went by at 2:50, the spot has no name'."""
    return replace(clause, nowhere=True) if whole.nowhere and clause.point is None else clause


def _from_a_post(text: str, clauses: Clauses) -> tuple[str, Clauses] | None:
    """'Kettle Howe here. 214 left at 19:49': the rest of the message, and that its writer stands there. None for any other,
    and where whoever runs writes."""
    found = _HEADED.match(text)
    if found is None or _on_foot(clauses.ctx):
        return None
    head = clauses.of(found["head"])
    words = [w for w in head.masked if w not in lexicon().names["the"]]
    if len(words) != 2 or words[0] != POINT or not lexicon().read["here"].word(words[1]):
        return None
    if head.point is None or head.runner is None:
        return None
    point = names.which_pass(head.point, head.masked, head.runner, ahead=False)
    return (found["rest"], Clauses(replace(clauses.ctx, point=point))) if point else None


def _is_it_so(parts: Sequence[tuple[str, bool]], clauses: Clauses) -> Asked | None:
    """'Ravel out at 22:40, is that real?': no report but a question, of what is known there."""
    said = [clauses.of(p) for p, _ in parts]
    doubts = [s for s in said[1:] if question_form(s) and lexicon().read["is_it_so"].begins(s.masked)]
    about = next((s for s in said if s.point is not None), None)
    if not doubts or about is None or about.runner is None or about.point is None:
        return None
    point = names.which_pass(about.point, about.masked, about.runner, ahead=False)
    whole = " ".join(p for p, _ in parts)
    return Asked(Question.LAST_STOP, about.runner.id, point, words=whole) if point else None


_OF_THE_LAST = frozenset({"correction", "undo", "other_person"})
"""Of these the whole message says what was meant: 'the mill was 8:35, not 8:38'."""


def _about_her(said: Sentence, ctx: Context) -> Context:
    """The context of each clause: who is named in one of them is meant in the others."""
    if len(said.runners) != 1:
        return ctx
    last = replace(ctx.last, runner=said.runners[0]) if ctx.last is not None else None
    return replace(ctx, own_runners=said.runners, last=last)


_SAY_NOTHING = frozenset({"small_talk", "ok", "yes", "no", "supposed", "about_me", "awake"})


_SAID_BESIDE = frozenset({"condition", "note", "about_me", "supposed", "small_talk", "hearsay"})


_SAID_OF_HER = frozenset({"in", "out", "through", "retired", "sweep", "with_us"})
"""What one clause says of her counts, whatever the message as a whole sounds like."""


_NEEDS_MORE = frozenset(
    {
        "in",
        "out",
        "through",
        "resting",
        "moving",
        "retired",
        "not_here_yet",
        "alarm_over",
        "sweep",
        "position",
    }
)
"""What one clause of several says of nobody, at no time and no place, counts only if the whole message may say it."""


_HOW_SHE_FARES = frozenset({"condition", "resting"})
_BARE = frozenset({"in", "out", "through"})
"""Said first, in one word with a full stop, these are reports, whatever stands beside: 'out. how far to go still?'."""


_SAID_BY_HIM = frozenset({*_NEEDS_MORE, "condition", "with_us", "hearsay"})
"""What is said of a 'he' behind some man who was spoken of is said of him."""


def _of_another_bib(said: Sentence) -> bool:
    """Whether a number of nobody here is spoken of: 'have you got a 301 on your list'."""
    return not said.named and NUMBER in said.masked


def _says_whose(said: Sentence) -> bool:
    return said.named or said.says("she") or said.time is not None or said.point is not None


def _of_clauses(text: str, whole: Guess, guesses: Sequence[tuple[bool, Guess]], ctx: Context) -> Understood:
    p = policy()
    done: list[tuple[str, Understood]] = []
    shares: list[float] = []
    undone: list[Sentence] = []
    before: list[Sentence] = []
    passed_over: list[Sentence] = []
    of_him = False
    hers = whole.first[0] in _SAID_OF_HER and whole.first[1] >= p.tiers[whole.first[0]]
    of_writer = not _on_foot(ctx) and any(subject.whose(g.said) is Whose.WRITERS for _, g in guesses)
    for strong, g in guesses:
        intent, share = g.first
        if intent in questions.OF_INTENT and hers and not strong and not gates.asks_something(g.said):
            passed_over.append(g.said)
            continue  # 'she is in at the finish, sits on a bench and eats chips'
        if of_writer and intent in _HOW_SHE_FARES and subject.whose(g.said) is Whose.OPEN:
            undone.append(g.said)
            continue  # 'just been sick. mine. she is fine'
        his = gates.of_him(g.said) and any(gates.of_a_man(b) or _of_another_bib(b) for b in before)
        before.append(g.said)
        if his and intent in _SAID_BY_HIM:
            of_him = True
            undone.append(g.said)
            continue  # 'a man came by. he left the ford at one'
        if his and questions.OF_INTENT.get(intent) in questions.OF_SOMEBODY:
            return Asked(Question.RIVALS, words=text)  # 'my mate has bib 88. where is he?'
        if intent in gates.TALKED_OF and len(guesses) > 1 and not gates.asks_something(g.said):
            undone += [g.said] if len(g.said.masked) >= _FEWEST_KEPT else []
            continue  # 'pitch dark. one fox. no sign of her'
        if whole.said.reads("quoted") and intent in _SAID_BY_HIM:
            continue  # 'mood low, it says. do I ring her?' tells what the writer was told
        needs = p.tiers.get(intent, 1.0)
        # What is put as a question, and is one, is answered as it would be alone: a wrong answer can be asked again.
        asks = intent in questions.OF_INTENT and (
            question_form(g.said) if strong else _asks_by_itself(g.said)
        )
        sure = share >= (needs if asks else max(p.clause, needs))
        # One word, or one that leans on what was said before, is no clause of its own.
        own_words = [w for w in g.said.masked if not lexicon().read["joins"].word(w)]
        leans = not strong and (len(own_words) < 2 or lexicon().read["leans"].begins(g.said.masked) > 0)
        bare = strong and len(before) == 1 and len(g.said.masked) == 1 and intent in _BARE
        if (
            intent in _NEEDS_MORE
            and not bare
            and not _says_whose(g.said)
            and intent not in dict(whole.likely[:2])
        ):
            undone.append(g.said)
            continue  # 'off again', in a message that says nothing of the kind
        if not strong and intent in _SAID_BESIDE and question_form(whole.said):
            continue  # 'what is there for her, soup or was that here': of the question before it
        both = _stop_with_both_ends(g.said, ctx)
        if both is not None:
            done.append(("in", both))
            shares.append(share)
            continue
        meant = answers.short_answer(g.said.written) or (
            meaning(intent, g.said, ctx) if sure and not leans else None
        )
        if isinstance(meant, Acknowledged | Small):
            if (
                intent not in _SAY_NOTHING
                and isinstance(meant, Acknowledged)
                and meant.answer not in ("ok", "yes", "no")
            ):
                done.append((intent, meant))
                shares.append(share)
            continue
        if intent == "pass_message" and isinstance(meant, Requested):
            meant = _whole_word(meant, g.said, whole.said)
            if meant is None:
                undone.append(g.said)
                continue
        if isinstance(meant, Asked | Reported | Requested | AskBack) and intent not in _SAY_NOTHING:
            done.append((intent, meant))
            shares.append(share)
        elif (not sure and len(g.said.masked) >= _FEWEST_KEPT and (strong or _of_somebody(g.said))) or (
            not sure and _asks_by_itself(g.said)
        ):
            undone.append(g.said)
        elif not sure and len(g.said.masked) >= _FEWEST_KEPT:
            passed_over.append(g.said)
    if undone and passed_over:
        # Where anything is quoted apart, what would have gone with the rest of the message is too.
        undone = [g.said for _, g in guesses if g.said in undone or g.said in passed_over]
    first, share = whole.first
    if of_him and first in _SAID_BY_HIM:
        # What the message as a whole sounds like is told of him too.
        return Kept(text, ctx.now, _runner_of(whole.said), of_her=False)
    kinds = {i for i, _ in done}
    if len(done) < 2 or (len(kinds) < 2 and not _many(done)):
        alone = done[0] if done else None
        rather = (
            alone is None
            or alone[0] == first
            or (
                share >= shares[0]
                and (first in _SAID_OF_HER or alone[0] not in _SAID_OF_HER)
                and (first in questions.OF_INTENT or not isinstance(alone[1], Asked))
            )
        )
        if rather and share >= p.tiers.get(first, 1.0):
            return _kept_besides(_decide(whole, ctx), undone if alone is not None else [], ctx)
        if alone is not None:
            return _kept_besides(_in_words(alone[1], whole.said, undone), undone, ctx)
        all_of_it = _decide(whole, ctx)
        apart = [g.said for strong, g in guesses if _asks_by_itself(g.said) and not strong]
        if apart and isinstance(all_of_it, Kept):
            # 'Stood by the track, may I give her a drink': the question is said to be not understood, the rest is kept.
            left = text
            for s in apart:
                left = left.replace(s.written.rstrip("?"), "").strip(" ,;?")
            questions_ = tuple(Unclear(s.written) for s in apart)
            hers = any(_of_her(g.said, ctx) for _, g in guesses if g.said not in apart)
            words = replace(all_of_it, words=left, of_her=hers)
            return Several((words, *questions_)) if left else questions_[0]
        asks = any(strong and gates.asks(g.said) for strong, g in guesses)
        if asks and isinstance(all_of_it, Kept) and not all_of_it.of_her:
            return Unclear(text)  # a question of the writer's that nobody could make out is no note
        return all_of_it
    asked_back: tuple[AskBack, ...] = ()
    if any(isinstance(m, AskBack | Acknowledged) for _, m in done):
        sole = [m for _, m in done if isinstance(m, AskBack)]
        rest = [m for _, m in done if isinstance(m, Reported)]
        if len(sole) == 1 and all(isinstance(m, AskBack | Reported) for _, m in done):
            also = tuple(r for m in rest for r in m.reports)
            return replace(sole[0], also=(*sole[0].also, *also))
        asked_back = tuple(sole) if len(sole) == 1 and not rest else ()
        done = [(i, m) for i, m in done if isinstance(m, Asked | Reported | Requested)]
    told = _once([r for _, m in done if isinstance(m, Reported) for r in m.reports])
    told = _by_car(told, whole.said)
    if any(r.kind is Kind.CANNOT_COME for r in told) and not (whole.said.named or whole.said.says("she")):
        told = [r for r in told if r.kind is not Kind.POSITION]  # 'flat tyre! still 10 km from the mill'
    told = _straight_on(told, ctx)
    told = _where_the_sweep_is(told)
    told = _with_how([replace(r, point=r.point or _place_before(told, r)) for r in told], text)
    # Why her race is over stands beside it: 'Knee gone, I am retiring at the mill'.
    told = [replace(r, words=text) if r.kind is Kind.RETIRED else r for r in told]
    others = [m for _, m in done if isinstance(m, Asked | Requested)]
    kept = [_left(u, ctx.now, _runner_of(whole.said), ctx) for u in undone]
    # Reports first: what is asked is answered on what has just been told.
    parts: tuple[Asked | Reported | Requested | AskBack | Kept | Unclear, ...]
    parts = (*((Reported(tuple(told)),) if told else ()), *asked_back, *dict.fromkeys(others), *kept)
    if len(parts) == 1:
        return parts[0]
    return Several(parts) if parts else _decide(whole, ctx)


def _comes_again(one: Report, said: Sentence) -> Report:
    """'The van runs again, I drive straight to the mill': to the meeting there, and to none before it."""
    if one.kind is not Kind.CAN_COME or one.point is not None or said.point is None or said.runner is None:
        return one
    point = names.which_pass(said.point, said.masked, said.runner, ahead=True)
    return replace(one, point=point) if said.reads("straight_to") else one


def _by_car(told: list[Report], said: Sentence) -> list[Report]:
    """'Made it to the mill, parked in the field': who parked has come there, and nobody else of whom nothing is said."""
    came = [r for r in told if r.kind is Kind.IN]
    if (
        len(came) != 1
        or said.says("she")
        or said.named
        or said.time is not None
        or Kind.CREW_THERE not in {r.kind for r in told}
    ):
        return told
    there = replace(came[0], kind=Kind.CREW_THERE, condition=False, with_us="", guessed=False)
    return [there, *(r for r in told if r.kind not in (Kind.IN, Kind.CREW_THERE))]


def _whole_word(meant: Requested, said: Sentence, whole: Sentence) -> Requested | None:
    """A word to be passed on, where a clause of several asks for that: to all only what says so ('tell', 'everybody'), and
    with all that was written where it is as short as 'warn people'."""
    if meant.to != EVERYBODY:
        return meant
    short = len(said.masked) < _FEWEST_KEPT and not said.named
    says_so = any(said.says(c) for c in ("tell", "they", "people"))
    if not says_so or (short and gates.told_by_others(said)):
        return None
    return replace(meant, words=whole.written) if short else meant


_FEWEST_KEPT = 3
"""A clause of fewer words that nobody could make out says nothing by itself (own choice)."""


def _of_somebody(said: Sentence) -> bool:
    """Whether a clause behind a comma speaks of somebody by itself, and is not only how she is."""
    who = said.says("she") or any(w in (RUNNER, PERSON, NUMBER) for w in said.masked)
    return who and not _is_how(said)


def _is_how(said: Sentence) -> bool:
    """Whether a clause says how she is, which goes with where she is."""
    return said.says("feel") or said.says("eat")


def _many(done: Sequence[tuple[str, Understood]]) -> bool:
    """Whether clauses of one intent say different things: of two runners, places or times."""
    told = [r for _, m in done if isinstance(m, Reported) for r in m.reports]
    asked = {(m.runner, m.point) for _, m in done if isinstance(m, Asked)}
    moves = [r for r in told if r.kind in _SEEN]
    differ = len({r.runner for r in moves}) > 1 or len({r.point for r in moves if not r.guessed}) > 1
    return differ or len(asked) > 1


def _place_before(told: Sequence[Report], one: Report) -> str | None:
    if one.kind in _SEEN:
        return next((r.point for r in told if r.runner == one.runner and r.point), None)
    return None


def _where_the_sweep_is(told: list[Report]) -> list[Report]:
    """'The sweep is through at Ashen, she is not here': 'here' is where the sweep is, unless it says where."""
    swept = next((r.point for r in told if r.kind is Kind.SWEEP_THROUGH), None)
    here = (r.kind is Kind.NOT_HERE_YET and r.guessed and swept is not None for r in told)
    return [replace(r, point=swept, guessed=False) if h else r for r, h in zip(told, here, strict=True)]


def _once(told: Sequence[Report]) -> list[Report]:
    """Each report once: 'she's here! she walked in' is one arrival."""
    out: dict[tuple[Kind, str | None, datetime], Report] = {}
    for r in told:
        one = (r.kind, r.runner, r.seen_at)
        out[one] = replace(out[one], condition=out[one].condition or r.condition) if one in out else r
    return in_order(list(out.values()))


def _straight_on(told: list[Report], ctx: Context) -> list[Report]:
    """'At the bridge 6:30, straight on': one report with the time that is said, not a second with that of writing."""
    came = next((r for r in told if r.kind is Kind.IN and r.seen_at != ctx.now), None)
    on = next((r for r in told if r.kind is Kind.THROUGH and r.seen_at == ctx.now), None)
    if came is None or on is None or came.runner != on.runner:
        return told
    both = replace(came, kind=Kind.THROUGH, condition=came.condition or on.condition)
    return [both if r is came else r for r in told if r is not on]


def _with_how(told: list[Report], text: str) -> list[Report]:
    """How she is, said beside where she is, goes with that: one report in the words of both."""
    how = {r.runner for r in told if r.kind is Kind.HOW_SHE_IS}
    first = next((r for r in told if r.kind in _HAS_HOW and r.runner in how), None)
    if first is None:
        return told
    rest = [r for r in told if r.kind is not Kind.HOW_SHE_IS or r.runner != first.runner]
    return [replace(r, condition=True, words=text) if r is first else r for r in rest]


def _in_words(meant: Understood, whole: Sentence, undone: Sequence[Sentence]) -> Understood:
    """The meaning of one clause with the words of the whole message, where nothing else is quoted apart; and with how she
    is, where another clause says that."""
    if not isinstance(meant, Reported) or (undone and not _only_how(meant)):
        return meant
    how = _is_how(whole)
    told = [r if r.kind is Kind.DRIVE_CONFIRMED else replace(r, words=whole.written) for r in meant.reports]
    told = [replace(r, condition=r.condition or (how and r.kind in _HAS_HOW)) for r in told]
    return Reported(tuple(told))


def _only_how(meant: Understood) -> bool:
    """Whether it says how she is and nothing else: such words are kept whole, as one."""
    return isinstance(meant, Reported) and all(r.kind is Kind.HOW_SHE_IS for r in meant.reports)


def _kept_besides(meant: Understood, undone: Sequence[Sentence], ctx: Context) -> Understood:
    """With what nobody could make out of the same message, quoted back."""
    if _only_how(meant):
        undone = [u for u in undone if _asks_by_itself(u)]
    if not undone or not isinstance(meant, Asked | Reported | Requested):
        return meant
    now = meant.reports[0].seen_at if isinstance(meant, Reported) else None
    runner = meant.reports[0].runner if isinstance(meant, Reported) else meant.runner
    if isinstance(meant, Requested) and meant.request is Request.PASS_ON:
        undone = [u for u in undone if u.written not in meant.words]  # passed on with the rest
    if isinstance(meant, Asked):
        # Asked in other words; or a piece of the question, cut at 'and'.
        undone = [
            u
            for u in undone
            if _asks_by_itself(u) or (not gates.asks(u) and (u.written not in meant.words or _told_of(u)))
        ]
        if [u.written for u in undone] == [meant.words]:
            undone = []
    if not undone:
        return meant
    return Several((meant, *(_left(u, now or ctx.now, runner, ctx) for u in undone)))


def _left(said: Sentence, now: datetime, runner: str | None, ctx: Context) -> Kept | Unclear:
    """What nobody could make out of a clause: a question is said to be not understood, words are kept."""
    if _asks_by_itself(said):
        return Unclear(said.written)
    return Kept(said.written, now, runner, of_her=_of_her(said, ctx))


def _asks_by_itself(said: Sentence) -> bool:
    """Whether a clause that stands behind 'and' or a comma is a question of its own: 'and have they got my big shoes'."""
    joins = lexicon().read["joins"]
    words = [w for i, w in enumerate(said.masked) if i or not joins.word(w)]
    return len(words) >= _FEWEST_KEPT and begins_as_question(words)


# -- one clause --------------------------------------------------------------------------------------------------------


_WELL = frozenset({"i_have_it", "can_come", "crew_there", "awake", "ok", "small_talk", "condition"})
"""What nobody says in telling that they themselves are ill."""


def _is_ill(said: Sentence) -> bool:
    """Whether somebody says of themselves that they are ill or hurt: 'i feel ill'."""
    return not said.named and said.says("i") and said.reads("why_own")


def guess(said: Sentence, clauses: Clauses) -> Guess:
    """The likeliest intents of a clause that its words allow, likeliest first."""
    plainly = questions.plain_question(said, clauses.ctx.parts)
    if plainly is not None and (plainly.said or gates.asks_something(said) or said.asks):
        return Guess(said, ((plainly.intent, 1.0),))
    if PartKind.RUNNER in clauses.ctx.parts and questions.how_far_to(said) and gates.asks_something(said):
        return Guess(
            said, (("drive", 1.0),)
        )  # 'how far to the gate' is neither what lies there nor how she stands
    if said.reads("asks_of") and said.says("bring") and not (said.says("cover") or said.says("meet")):
        return Guess(said, (("pass_message", 1.0),))  # 'can Jonas bring the blue jacket' is for Jonas
    m = model()
    share = m.shares(clauses.scores(said))
    order = np.argsort(-share, kind="stable")[:8]
    foot = _on_foot(clauses.ctx)
    likely: dict[str, float] = {}
    for i in order:
        # 'in?', 'has she quit?': what would be a report is, put as a question, whether it is so.
        intent = gates.as_asked(m.intents[i], said)
        if (
            intent == "leave"
            and PartKind.RUNNER in clauses.ctx.parts
            and said.point is not None
            and not said.reads("time_left")
        ):
            intent = "cut_off"  # she has no car to leave in: until when she may stay
        own = not foot and lexicon().subject["mine"].has(said.masked) and not said.says("she")
        if intent in _OF_KIT and (said.reads("did_she") or (own and said.says("who"))):
            # What came of it is in no plan, nor what is the writer's: 'who has packed my torch'.
            intent = "how_is_she" if said.says("eat") else "unknown_other"
        if intent in _WELL and not foot and _is_ill(said):
            intent = "cant_come"
        if _out_of_place(intent, said, clauses.ctx):
            continue
        if intent in _HOW_SHE_FARES and not foot and subject.whose(said).apart:
            continue  # how somebody else is
        if intent != NONE and gates.may_be(intent, said, foot=foot):
            likely[intent] = likely.get(intent, 0.0) + float(share[i])
    return Guess(said, tuple(sorted(likely.items(), key=lambda x: -x[1])))


_OF_KIT = frozenset({"bring", "food", "take_back", "dark"})
_ON_COURSE = frozenset({"in", "through", "resting", "moving", "sweep", "with_us", "position"})


_AT_HOME = frozenset({PartKind.SAFETY_CONTACT, PartKind.SUPPORTER})


def _out_of_place(intent: str, said: Sentence, ctx: Context) -> bool:
    """Whether it can't be of her where neither she nor a place is named: before the start ('the briefing is at 20:40'),
    'here' of somebody at home ('one in the morning here'), how a pacer is who waits for her."""
    her = said.runner
    early = her is not None and her.reached is None and ctx.now < her.start and said.point is None
    if early and (intent in ("with_us", "moving") or (intent == "retired" and not said.says("ended"))):
        return True
    if said.named or said.says("she") or said.point is not None:
        return False
    if early and intent in _ON_COURSE:
        return True
    if intent in _ON_COURSE and ctx.parts <= _AT_HOME and said.reads("here"):
        return True
    return intent == "condition" and ctx.waits


def _plainly(said: Sentence, clauses: Clauses) -> Understood | None:
    """What a clause means if it is sure."""
    intent, share = guess(said, clauses).first
    return meaning(intent, said, clauses.ctx) if share >= policy().tiers.get(intent, 1.0) else None


_ONE_WORD = 0.35
"""What a word alone needs to be a question ('crew', 'cut-off'), as a menu would have it: there is little else it may be."""


_FAR = 4.5
"""So many times as likely as the next is far likelier (own choice)."""


_ALIKE = ({"my_race", "cut_off"}, {"bring", "food"})
"""Of these one answer holds what the other asks."""
_WITH_FOOD = {"bring", "food"}
"""What to bring says what she eats there too: 'what does she want at the mill'."""


def _decide(g: Guess, ctx: Context) -> Understood:
    """Done, asked which of two, or kept."""
    p = policy()
    if not g.likely:
        return _keep(g.said, ctx)
    (first, share), *rest = g.likely
    alone = len(g.said.masked) == 1 and first in questions.OF_INTENT
    # A question that is far likelier than any other meaning needs a little less: buttons would offer nothing else.
    far = first in questions.OF_INTENT and share >= p.two and all(share >= _FAR * x for _, x in rest)
    sure = far or share >= (min(p.tiers[first], _ONE_WORD) if alone else p.tiers[first])
    near = bool(rest) and share < p.near_below and rest[0][1] >= p.near and not alone
    near = near and {first, rest[0][0]} not in _ALIKE
    if sure and not near:
        return meaning(first, g.said, ctx) or _keep(g.said, ctx)
    if rest and {first, rest[0][0]} == _WITH_FOOD and share + rest[0][1] >= p.two:
        return meaning("bring", g.said, ctx) or _keep(g.said, ctx)
    if rest and share + rest[0][1] >= p.two:
        found = [(i, meaning(i, g.said, ctx)) for i in (first, rest[0][0])]
        choices = [(i, m) for i, m in found if m is not None and not isinstance(m, Kept | Unclear)]
        if len(choices) == 2 and _same(choices[0][1], choices[1][1]):
            return max((m for _, m in choices), key=_is_guessed)  # asked about, where either would ask
        if len(choices) == 2:
            return AskBack(Need.MEANING, tuple(Choice(i, m) for i, m in choices), g.said.written)
    if sure:
        return meaning(first, g.said, ctx) or _keep(g.said, ctx)
    return _perhaps_asked(g, ctx) or _keep(g.said, ctx)


_PERHAPS = 0.08
"""So likely a question must be for its button to be offered where nobody is sure what was asked (own choice: of 50 intents
four times what it would have by chance)."""


def _perhaps_asked(g: Guess, ctx: Context) -> AskBack | None:
    """The two likeliest questions, of words that are put as one and that nobody could make out."""
    if not gates.asks(g.said) or not any(_known(w) for w in g.said.masked):
        return None
    likely = [i for i, share in g.likely if i in questions.OF_INTENT and share >= _PERHAPS][:2]
    found = [(i, m) for i in likely if isinstance(m := meaning(i, g.said, ctx), Asked)]
    choices = tuple(Choice(i, m) for i, m in found)
    return AskBack(Need.MEANING, choices, g.said.written) if len(choices) == 2 else None


def _is_guessed(meant: Understood) -> bool:
    return isinstance(meant, Reported) and any(r.guessed for r in meant.reports)


def _same(one: Understood, other: Understood) -> bool:
    """Whether two meanings come to the same thing."""
    if isinstance(one, Reported) and isinstance(other, Reported):
        plain = [
            [replace(r, with_us="", condition=False, guessed=False) for r in m.reports] for m in (one, other)
        ]
        return plain[0] == plain[1]
    return one == other


def _runner_of(said: Sentence) -> str | None:
    return said.runner.id if said.runner else None


def _keep(said: Sentence, ctx: Context) -> Understood:
    """Kept word for word; nonsense, of which no word is known, is not."""
    if not any(_known(w) for w in said.masked):
        return Unclear(said.written)
    if gates.asks(said):
        return Unclear(said.written)
    return Kept(said.written, ctx.now, _runner_of(said), of_her=_of_her(said, ctx))


def _known(word: str) -> bool:
    """Whether any example holds a word."""
    return word[0] == "<" or model().knows(key(f"w{word}"))


ANSWER_MAX = 6
"""Longer words than that are more than an answer, and not to be lost as one (own choice)."""
_ANSWERS = {
    "i_have_it": "i have it", "i_go": "i go", "awake": "awake", "ok": "ok", "yes": "yes", "no": "no",
    "nobody_there": "nobody there",
}  # fmt: skip
_REQUESTS = {
    "pass_message": Request.PASS_ON, "swap": Request.SWAP, "meet_elsewhere": Request.MEET_ELSEWHERE,
    "mute": Request.MUTE, "remind_me": Request.REMIND, "unremind": Request.UNREMIND, "offer": Request.PASS_ON,
}  # fmt: skip


def meaning(intent: str, said: Sentence, ctx: Context) -> Understood | None:
    """What a clause means by one intent; None where its words do not hold what that needs."""
    runs = PartKind.RUNNER in ctx.parts
    asked = questions.ask(intent, said, ctx)
    if asked is not None:
        return _of_the_course(asked, said, ctx)
    if intent == "cant_come" and _begins_with(said, "cannot") and not said.reads("not_surely"):
        return Acknowledged("cannot", said.written)
    if intent in _ANSWERS and len(said.masked) > ANSWER_MAX:
        return None
    if intent in _ANSWERS:
        return Acknowledged(_ANSWERS[intent], said.written)
    if intent in _REQUESTS:
        return _requested(_REQUESTS[intent], said, ctx)
    pacer = PartKind.PACER in ctx.parts and not runs
    if intent in ("out", "retired") and pacer and _of_one_alone(said):
        return _pacer_out(intent, said, ctx)
    match intent:
        case "small_talk":
            return Small(thanks=said.says("thanks"))
        case "undo":
            return reports.undo(said)
        case "correction":
            return reports.correction(said, ctx)
        case "other_person":
            return OtherRunner(said.written, said.runner.id if said.named and said.runner else None)
        case "about_me" if runs:
            # Of the runner it is her own rest, or how she is.
            return reports.report("resting" if said.says("rest") else "condition", said, ctx)
        case "about_me" | "supposed":
            return Kept(said.written, ctx.now, _runner_of(said), of_her=False)
        case "alarm_over" if runs and not says_alone(said, "found"):
            # 'I'm fine, false alarm' is how she is; 'false alarm' alone takes her call back.
            return reports.report("condition", said, ctx)
        case "note" | "cant_come" | "can_come" | "held_up" if runs:
            # Whoever meets her next reads it.
            return reports.report("condition", said, ctx)
        case "not_here_yet" if runs:
            return None  # she can't report that she has not come
        case "crew_there" if runs:
            return reports.report("in", said, ctx)
        case "crew_left" if runs or (_on_foot(ctx) and not said.says("car")):
            return reports.report("out", said, ctx)
        case _:
            return reports.report(intent, said, ctx)


def _of_one_alone(said: Sentence) -> bool:
    """'I'm out': said of the writer, of no place and at no time."""
    return said.says("i") and not (
        said.says("we") or said.says("she") or said.named or said.point or said.times
    )


def _pacer_out(intent: str, said: Sentence, ctx: Context) -> AskBack | None:
    """'I'm out', 'I'm giving up' of a pacer: both of them, or she goes on alone."""
    ways = [(i, reports.report(i, said, ctx)) for i in (intent, "cant_come")]
    choices = tuple(Choice(i, m) for i, m in ways if isinstance(m, Reported))
    return AskBack(Need.MEANING, choices, said.written) if len(choices) == 2 else None


def _begins_with(said: Sentence, answer: str) -> bool:
    """Whether the words begin with an answer that notices know ("I can't take it, I'm driving")."""
    known = lexicon().answers
    rows = (" ".join(said.plain[:n]) for n in range(2, 6))
    return said.point is None and any(known.get(r) == answer for r in rows)


def _of_the_course(asked: Understood, said: Sentence, ctx: Context) -> Understood:
    """The question; or, of a place that is not on the course, which one is meant."""
    one = asked if isinstance(asked, Asked) else None
    if one is None:
        return asked
    who = questions.name_not_known(said, _known) if one.question in questions.OF_SOMEBODY else ""
    if who:
        return replace(one, question=Question.ELSEWHERE, runner=None, point=None, beside=who)
    word = questions.place_not_known(said, _known)
    return (questions.which_place(one, said, word, ctx) if word else None) or asked


def _requested(request: Request, said: Sentence, ctx: Context) -> Understood:
    runs = PartKind.RUNNER in ctx.parts
    if request is Request.PASS_ON and runs and said.runner is not None and said.person is None:
        # Her own wish is her word, which crew are told.
        return Reported((Report(Kind.HOW_SHE_IS, ctx.now, said.runner.id, words=said.written),))
    runner = said.runner
    point = None
    if said.point is not None and runner is not None:
        point = names.which_pass(said.point, said.masked, runner, ahead=True)
    edge = edge_of(said) if request is Request.REMIND else ""
    if edge == "in" and point is None and runner is not None and of_finish(said):
        point = finish_of(runner)
    until, length = _until(request, said, ctx)
    before = before_her(said, ctx.now) if request is Request.REMIND else None
    if before is not None:
        until, length, edge = None, before, "in"
    her = runner.id if runner else None
    if request is Request.SWAP and said.reads("i_take") and said.says("i"):
        return Requested(request, said.written, None, her, point)  # who is named is not asked
    to = _words_for(said)
    if to == EVERYBODY and said.person is not None and request is Request.PASS_ON:
        # 'Tell Ana to ring me, not always Tomas': the first of two names is for whom it is.
        to = _words_for(read_sentence(" ".join(said.plain[: WHOM_WITHIN + 1]), ctx))
    return Requested(request, said.written, said.person, her, point, until, length, to, edge)


HALF_DAY = timedelta(hours=12)
_HOUR_SAID = re.compile(r"(?<!\S)(?:AT|TO) (?P<h>\d{1,2})(?=$| [a-z]| A | TO [a-z])")
_HOUR_ONLY = re.compile(r"(?<!\S)(?<!FOR )(?P<h>\d{1,2})(?=$| [a-z])")


def _hour_alone(request: Request, said: Sentence, ctx: Context) -> datetime | None:
    """'Quiet until 6', 'remind me at 8 to eat': an hour of a clock without minutes, the next to come; in a report such a
    number would be no time yet. Where nothing else says a time, one that no word marks will do for being quiet."""
    text = signs_of(said.plain).text
    found = _HOUR_SAID.search(text)
    if found is None and request is Request.MUTE and not said.times and not said.lengths:
        found = _HOUR_ONLY.search(text)
    if found is None or int(found["h"]) > 24:
        return None
    hour, local = int(found["h"]), ctx.now.astimezone(ZoneInfo(ctx.time_zone))
    at = (local.replace(hour=hour % 24, minute=0, second=0, microsecond=0)).astimezone(ctx.now.tzinfo)
    while at <= ctx.now:
        at += HALF_DAY if hour <= 12 else 2 * HALF_DAY
    return at


def _until(request: Request, said: Sentence, ctx: Context) -> tuple[datetime | None, timedelta | None]:
    """Until when something is wanted, and for how long, as far as either is said."""
    to_come = (_to_come(t, ctx.now) for t in said.times if not t.bare)
    length = next((x.length for x in said.lengths), None)
    return _hour_alone(request, said, ctx) or next(to_come, None), length


def _to_come(said: TimeSaid, now: datetime) -> datetime:
    """A moment that is yet to come: what was read as of the past is the same clock time again."""
    at = said.at
    while at <= now:
        at += HALF_DAY if said.unsure else 2 * HALF_DAY
    return at


WHOM_WITHIN = 4
"""Whoever is told stands this near the beginning ('can you please tell NAME'); a name further on is spoken of."""


def _words_for(said: Sentence) -> str:
    """Whom words are for: who is named first, where nobody and nothing else stands before; else all."""
    if said.control:
        return ""
    for word, nxt in pairwise((*said.masked[: WHOM_WITHIN + 1], "")):
        if nxt in (PERSON, RUNNER) and word in lexicon().names["the"]:
            continue  # 'sag der Ana'
        if word == PERSON and said.person is not None:
            return said.person
        if word == RUNNER and said.runner is not None:
            return said.runner.id
        if lexicon().classes["they"].word(word) or word in lexicon().names["the"]:
            return EVERYBODY
    return EVERYBODY
