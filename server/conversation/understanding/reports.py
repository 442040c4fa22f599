"""From an intent that reports to the report: kind, time, runner and point; what may be meant in two ways is asked back."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from server.conversation.telling.answer import RunnerHere
from server.conversation.understanding import gates, lists, names
from server.conversation.understanding.features import question_form
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.listing import in_order
from server.conversation.understanding.meaning import (
    AskBack,
    Choice,
    Context,
    Need,
    Report,
    Reported,
    Several,
    Small,
    Unclear,
    Understood,
    Undo,
    place_of,
)
from server.conversation.understanding.placing import expected, out_of_reach, placed
from server.conversation.understanding.sentence import (
    FINISH,
    PERSON,
    POINT,
    RUNNER,
    TIME,
    Sentence,
    finish_of,
    read_sentence,
)
from server.conversation.understanding.times import TimeSaid
from server.event.model import PartKind
from server.facts.entry import Kind, Retired, Why
from server.facts.state import Going

KIND_OF = {
    "in": Kind.IN, "out": Kind.OUT, "through": Kind.THROUGH, "position": Kind.POSITION, "resting": Kind.RESTING,
    "moving": Kind.MOVING_AGAIN, "retired": Kind.RETIRED, "sweep": Kind.SWEEP_THROUGH,
    "not_here_yet": Kind.NOT_HERE_YET, "condition": Kind.HOW_SHE_IS, "with_us": Kind.IN_HAND, "note": Kind.NOTE,
    "crew_there": Kind.CREW_THERE, "crew_left": Kind.CREW_LEFT, "cant_come": Kind.NOTE,
    "race_control_told": Kind.RACE_CONTROL_TOLD, "alarm_over": Kind.STAND_DOWN,
}  # fmt: skip
_GOES = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})
_BEGAN = _GOES | {Kind.RESTING}
"""What has been the case since it began, which 'seit 20 min' says."""
RACE_WIDE = frozenset(
    {Kind.START_DELAYED, Kind.HELD, Kind.RELEASED, Kind.CREW_LEFT, Kind.RACE_CONTROL_TOLD, Kind.CUT_OFF_MOVED}
)
_CREW_PARTS = frozenset({PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER})
_ON_FOOT = frozenset({PartKind.RUNNER, PartKind.PACER})


def base_of(said: Sentence, ctx: Context) -> Report:
    """What is known of a report before its kind."""
    time = said.time
    clock = [t for t in said.times if not t.ahead and not t.bare]
    if time is not None and len(clock) > 1 and time not in _meant(clock, said):
        time = _meant(clock, said)[0]
    unsure = time is not None and (time.unsure or _another_time(said))
    slip = said.named and said.runner_score < names.SURE
    length = next(iter(said.lengths), None)
    return Report(
        Kind.NOTE,
        time.at if time else ctx.now,
        said.runner.id if said.runner else None,
        words=said.written,
        guessed=unsure or slip or gates.told_by_others(said),
        amount=length.length if length else None,
    )


def _another_time(said: Sentence) -> bool:
    """Whether a second time stands in the clause: which of the two is meant is then a guess."""
    told = {t.at for t in _meant([t for t in said.times if not t.ahead and not t.bare], said)}
    return len(told) > 1


def _meant(times: Sequence[TimeSaid], said: Sentence) -> Sequence[TimeSaid]:
    """The times less those that the words take back, where any is left: 'not 5:40 but 5:30' is 5:30."""
    words = lexicon()

    def taken_back(t: TimeSaid) -> bool:
        before = said.plain[max(0, t.start - 2) : t.start]
        return any(words.classes["neg"].word(w) and words.answers.get(w) != "no" for w in before)

    return [t for t in times if not taken_back(t)] or times


def report(intent: str, said: Sentence, ctx: Context) -> Understood | None:
    """The report that an intent stands for; None where the words do not hold one."""
    unknown = _unknown_bib(intent, said, ctx)
    if unknown is not None:
        return unknown
    if intent == "retired" and gates.helper_ends(said):
        return report("cant_come", said, ctx) if said.masked[0] == PERSON else None
    base = base_of(said, ctx)
    if intent in ("in", "with_us") and _through_here(said):
        intent = "through"
    if intent in ("in", "out"):
        both = in_and_out(said, ctx)
        if both is not None:
            return both
    if intent == "drive_takes":
        return _drive(base, said, ctx)
    if intent == "race_news":
        return _race_news(base, said, ctx)
    if intent in ("crew_there", "crew_left", "cant_come", "can_come", "held_up"):
        return _of_crew(intent, base, said, ctx)
    if intent == "hearsay":
        return _hearsay(base, said, ctx)
    kind = KIND_OF.get(intent)
    if kind is None or (said.nowhere and said.point is None and kind in (Kind.NOT_HERE_YET, Kind.RESTING)):
        return None
    if kind in _GOES and said.nowhere and said.point is None:
        kind = Kind.POSITION  # where nobody knows: she was seen, between points that are asked for
    if kind in (Kind.IN, Kind.THROUGH) and _short_of_a_point(said):
        kind = Kind.POSITION
    if said.time is not None and said.time.since and kind not in _BEGAN:
        base = replace(base, seen_at=ctx.now)  # 'she has eaten nothing for two hours' is seen now
    if kind is Kind.RACE_CONTROL_TOLD:
        base = replace(base, guessed=False)  # that they were told is what it reports, and no hearsay
    found = _of_kind(replace(base, kind=kind), said, ctx)
    if isinstance(found, Report):
        return with_runner(found, said, ctx)
    return found


def _through_here(said: Sentence) -> bool:
    """'Through here at 1440': she did not stay."""
    through, here = lexicon().classes["through"], lexicon().read["here"]
    return any(through.word(a) and here.word(b) for a, b in pairwise(said.masked))


def _short_of_a_point(said: Sentence) -> bool:
    """Whether the point named is one that she has not come to: 'juste avant la chapelle'."""
    row, before = list(said.masked), lexicon().read["short_of"]
    for at in before.places(row):
        behind = [w for w in row[at + before.at(row, at) :] if w not in lexicon().names["the"]]
        if behind[:1] in ([POINT], [FINISH]):
            return True
    return False


def _of_kind(base: Report, said: Sentence, ctx: Context) -> Report | AskBack | Reported | None:
    how = said.says("feel") or said.says("eat")
    waits = said.runner is not None and said.runner.at is not None and said.runner.going != Going.RESTING
    if base.kind is Kind.MOVING_AGAIN and waits and said.says("leave") and not said.says("rest"):
        base = replace(base, kind=Kind.OUT)  # 'off again', 'repartie' of who is at a point and did not rest
    match base.kind:
        case Kind.OUT if is_bare_out(said):
            return ask_out(base, said)
        case Kind.RETIRED:
            return _ended(base, said, ctx)
        case Kind.IN:
            here = "here" if said.reads("here") and not said.finish else ""
            got = "got" if said.reads("got") else here if said.says("withus") else ""
            stray = said.time is None and _stray(said)
            return replace(
                base, condition=how and not said.finish, with_us=got, guessed=base.guessed or stray
            )
        case Kind.IN_HAND:
            if said.reads("got"):
                return replace(base, with_us="got")
            if _with_writer(said):
                return replace(base, kind=Kind.IN, with_us="here")
            return base
        case Kind.POSITION:
            return replace(base, guessed=True, placed_by_words=True, condition=how)
        case Kind.STAND_DOWN:
            # An alarm is not ended by two words: whoever may end it is asked once more.
            return replace(base, guessed=True)
        case Kind.RESTING | Kind.MOVING_AGAIN:
            until = next((t.at for t in said.times if t.ahead), None)
            place = said.runner.at if said.runner is not None and base.kind is Kind.RESTING else None
            return replace(base, until=until, point=place, condition=how)
        case Kind.OUT | Kind.THROUGH if said.time is None and _stray(said):
            return replace(base, guessed=True)
        case _:
            return base


def _with_writer(said: Sentence) -> bool:
    return said.reads("here") and not said.reads("got") and not said.control and not said.says("car")


def _stray(said: Sentence) -> bool:
    """Whether a number stands there that nobody understood: it may be the time, and must not count as 'now' unasked."""
    return any(w.isdigit() and 2 <= len(w) <= 4 for w in said.masked) or "<num>" in said.masked


def is_bare_out(said: Sentence) -> bool:
    """'Out' and nothing else: of a point, or of the race?"""
    row = " ".join(w for w in said.masked if w != RUNNER)
    return row in lexicon().read["bare_out"].whole


def ask_out(base: Report, said: Sentence) -> AskBack:
    """'Out' alone: out of a point and going on, or out of the race?"""
    left = replace(base, kind=Kind.OUT)
    runner = said.runner
    point = None
    if runner is not None:
        point = expected(runner, Kind.OUT, None)
        left = replace(left, point=point)
    # Her race ends where she is known to be: whoever fetches her must not be sent to look for the place.
    here = runner.at if runner is not None and not runner.gone_on else None
    over = replace(base, kind=Kind.RETIRED, point=base.point or here, how=Retired.NOT_SAID)
    return AskBack(
        Need.OUT, (Choice("left", Reported((left,))), Choice("over", Reported((over,)))), "out", point
    )


def _ended(base: Report, said: Sentence, ctx: Context) -> Report | AskBack | None:
    """Her race over, plainly or perhaps. What is plain counts at once, whether or not it says how; a word that may mean
    something quite harmless ('dropped') is asked about."""
    how = _how_ended(said)
    plain = said.says("ended") and not said.reads("not_ended")
    if plain or how is Retired.WITHDRAWN:
        return replace(base, how=how or Retired.NOT_SAID)
    if said.says("finish") and said.runner is not None:
        near = [p.id for p in place_of(said.runner).ahead[:2]]
        if finish_of(said.runner) in near:
            return replace(base, kind=Kind.IN, guessed=True)  # 'she's done', close to the end
    if said.reads("only_wished"):
        return None  # 'she wants to go home' is a wish
    dropped = lexicon().classes["dropped"]
    word = next((w for w in said.plain if dropped.word(w)), "") or said.written[:20]
    over = replace(base, how=how or Retired.NOT_SAID)
    if said.runner is not None:
        found = placed(over, said, said.runner, ctx)
        over = found if isinstance(found, Report) else over
    return AskBack(
        Need.DROPPED, (Choice("over", Reported((over,))), Choice("else", Unclear(said.written))), word
    )


def seems_over(said: Sentence, ctx: Context) -> AskBack | None:
    """Her race said to be over without the word for it ('handed her number in', 'not going on'): asked, with a button. None
    where it is hoped, denied, asked, or said plainly, which is a report."""
    if (
        said.says("ended")
        or question_form(said)
        or not said.reads("oblique_end")
        or said.reads("only_wished")
    ):
        return None
    own = bool(ctx.parts & _ON_FOOT)
    if (
        said.runner is None
        or gates.of_another(said)
        or gates.helper_ends(said)
        or said.says("maystop")
        or (gates.of_writer(said) and not own)
    ):
        return None
    if gates.told_by_others(said) or lexicon().classes["nofact"].has(said.masked):
        return None
    base = replace(base_of(said, ctx), kind=Kind.RETIRED, how=Retired.NOT_SAID)
    found = placed(base, said, said.runner, ctx)
    over = found if isinstance(found, Report) else base
    choices = (Choice("over", Reported((over,))), Choice("else", Unclear(said.written)))
    return AskBack(Need.DROPPED, choices, said.written)


def _how_ended(said: Sentence) -> Retired | None:
    if said.says("dns"):
        return Retired.DID_NOT_START
    if said.says("timedout"):
        return Retired.TIMED_OUT
    if said.says("byothers") or said.control:
        return Retired.WITHDRAWN
    return Retired.OWN_CHOICE if said.says("own") else None


def _hearsay(base: Report, said: Sentence, ctx: Context) -> Understood | None:
    """Where somebody else is said to have seen her: never counted until somebody stands for it."""
    if gates.of_another(said) or gates.of_the_last(said):
        return None
    # 'On the fence line above the quarry' is on the way there, whatever word of coming stands beside it.
    on_the_way = said.says("see") and said.says("between")
    for intent in ("retired",) if on_the_way else ("retired", "through", "out", "in"):
        if intent == "retired" and not said.says("ended"):
            continue
        says_so = any(said.says(c) for c in gates.MOVES[intent]) and not gates.only_an_idiom(intent, said)
        if says_so and not gates.denied(intent, said):
            if gates.supposed(intent, said):
                return None
            nowhere = said.nowhere and said.point is None and KIND_OF[intent] in _GOES
            kind = Kind.POSITION if nowhere else KIND_OF[intent]
            found = _of_kind(replace(base, kind=kind, guessed=True), said, ctx)
            return (
                with_runner(replace(found, guessed=True, hearsay=intent == "retired"), said, ctx)
                if isinstance(found, Report)
                else found
            )
    return None


def _race_news(base: Report, said: Sentence, ctx: Context) -> Reported | None:
    """What the organiser says of the race; None where it is not clear what. A cut-off moved may say until when, or by how
    much (`amount`)."""
    until = next((t.at for t in said.times if not t.bare), None)
    # The name of the start may be a place's.
    if lexicon().classes["start"].has(said.plain):
        return Reported((replace(base, kind=Kind.START_DELAYED),))
    one = next(iter(ctx.runners), None)
    at = names.which_pass(said.point, said.masked, one, ahead=True) if said.point and one else None
    at = at or (finish_of(one) if said.finish and one else None)
    if said.says("cutoff") and said.reads("moved") and (until is not None or said.lengths):
        return Reported((replace(base, kind=Kind.CUT_OFF_MOVED, until=until, point=at),))
    if said.reads("held"):
        return Reported((replace(base, kind=Kind.HELD, until=until, point=at),))
    if said.reads("released"):
        return Reported((replace(base, kind=Kind.RELEASED, point=at),))
    return None


# -- crew --------------------------------------------------------------------------------------------------------


def _of_crew(intent: str, base: Report, said: Sentence, ctx: Context) -> Understood | None:
    """What crew say of themselves: there, on the road, or that they can't come."""
    if intent in ("cant_come", "can_come", "held_up"):
        point = None
        if said.point is not None and said.runner is not None:
            point = names.which_pass(said.point, said.masked, said.runner, ahead=True)
        one = replace(base, kind=Kind.NOTE, seen_at=ctx.now, guessed=False, of_crew=True, point=point)
        if PartKind.RUNNER in ctx.parts or intent == "held_up":
            return Reported((one,))
        if intent == "can_come":
            return Reported((replace(one, kind=Kind.CAN_COME, person=said.person),))
        return Reported((replace(one, kind=Kind.CANNOT_COME, why=_why(said, ctx), person=said.person),))
    if PartKind.RUNNER in ctx.parts or not ctx.parts & _CREW_PARTS:
        return None
    if said.nowhere and said.point is None:
        return None  # 'at the first gate past the village' is no meeting place
    if intent == "crew_left":
        return Reported((replace(base, kind=Kind.CREW_LEFT, guessed=False),))
    runners = (said.runner,) if said.runner is not None else ctx.candidates()
    return _own_place(base, said, runners, ctx)


_SHORT = 8
"""So many words at most are the reason and nothing else: 'my car broke down' (own choice)."""


def surely_cannot(said: Sentence) -> bool:
    """Whether words say that somebody will not come, or only why not; and do not say 'perhaps', laugh, or come all the
    same: 'so nervous I feel sick lol'. Who only feels ill may come yet."""
    if said.reads("not_surely"):
        return False
    if said.reads("goes_on_alone") and said.reads("gives_up"):
        return True
    reason = any(said.reads(name) for name, why in _WHYS if why is not Why.OWN_SAFETY)
    return said.reads("wont_come") or (reason and len(said.masked) <= _SHORT)


def unless_unsure(meant: Understood, whole: Sentence) -> Understood:
    """The meaning of a message; one of which somebody is taken not to come, though its words do not surely say so, is noted
    in the writer's words and asked about."""
    parts = meant.parts if isinstance(meant, Several) else (meant,)
    found = [r for p in parts if isinstance(p, Reported) for r in p.reports if r.kind is Kind.CANNOT_COME]
    if not found or surely_cannot(whole):
        return meant
    one = found[0]
    other = "held_up" if one.why in (Why.CAR, Why.NOT_SAID) else "about_me"
    choices = (Choice("cant_come", Reported((one,))), Choice(other, Small(thanks=True)))
    rest = [r for p in parts if isinstance(p, Reported) for r in p.reports if r is not one]
    note = replace(one, kind=Kind.NOTE, why=None, person=None, words=whole.written)
    return AskBack(Need.MEANING, choices, whole.written, also=(*rest, note))


_WHYS = (
    ("why_driver", Why.DRIVER),
    ("why_car", Why.CAR),
    ("why_pacer", Why.PACER),
    ("why_own", Why.OWN_SAFETY),
)


def _why(said: Sentence, ctx: Context) -> Why:
    """What keeps somebody from coming, as far as the words say it."""
    for name, why in _WHYS:
        if said.reads(name) and (why is not Why.PACER or PartKind.PACER in ctx.parts):
            return why
    return Why.NOT_SAID


def why_not(text: str, ctx: Context) -> Why:
    """What keeps the writer from coming, of words that say that they can't."""
    return _why(read_sentence(text, ctx), ctx)


def _own_place(
    base: Report, said: Sentence, runners: tuple[RunnerHere, ...], ctx: Context
) -> Reported | AskBack | None:
    """Where crew say they are: of no runner, so that none needs to be named; asked where the points differ."""
    found = [placed(replace(base, kind=Kind.CREW_THERE), said, r, ctx) for r in runners]
    reports = {f.point: f for f in reversed(found) if isinstance(f, Report)}
    if said.point is not None or said.finish or len(reports) < 2:
        return as_meant(found[0]) if found else None
    ways = tuple(Choice(p or "", Reported((replace(r, guessed=False),))) for p, r in reports.items())
    return AskBack(Need.POINT, ways)


def bare_place(said: Sentence, ctx: Context) -> Understood | None:
    """'at Brindle now' from crew whose own place nobody knows: they, or she, or which of two? None for anything else."""
    words = [w for w in said.masked if not lexicon().read["trail"].word(w)]
    here = len(words) == 2 and lexicon().read["at"].word(words[0]) and words[1] in (POINT, FINISH)
    if not here or said.asks or (said.time is not None and not said.time.bare):
        return None
    if PartKind.RUNNER in ctx.parts or not ctx.parts & _CREW_PARTS or ctx.point is not None:
        return None
    base = base_of(said, ctx)
    runners = (said.runner,) if said.runner is not None else ctx.candidates()
    elsewhere = [r for r in runners if r.at is None or (r.own is not None and r.own != r.at)]
    if not elsewhere:
        return _own_place(base, said, runners, ctx)
    crew = placed(replace(base, kind=Kind.CREW_THERE), said, runners[0], ctx)
    hers = [placed(replace(base, kind=Kind.IN), said, r, ctx) for r in elsewhere]
    arrived = [one for one in hers if isinstance(one, Report)]
    if isinstance(crew, AskBack) or not arrived:
        return None
    choices = (("crew", crew), *(("her", one) for one in arrived))
    return AskBack(Need.WHO, tuple(Choice(label, Reported((one,))) for label, one in choices), "", crew.point)


def _drive(base: Report, said: Sentence, ctx: Context) -> Reported | None:
    """'drive from hotel to Brindle Gate takes 35 min': how long a drive is, which somebody now stands for. The
    report's words are the place it starts from, '' where none is said."""
    length = next(iter(said.lengths), None)
    if not ctx.parts & _CREW_PARTS or length is None or said.runner is None:
        return None
    words = list(said.plain)
    read = lexicon().read
    start = ""
    i = next((i for i, w in enumerate(words) if read["from"].word(w)), None)
    j = next((j for j, w in enumerate(words) if read["to"].word(w) and (i is None or j > i)), None)
    if i is not None:
        end = j if j is not None else len(words)
        start = " ".join(w for w in words[i + 1 : end] if w not in lexicon().names["the"])
    target = words[j + 1 :] if j is not None else words
    to = names.find_point(target, said.runner.points)
    point = names.which_pass(to, target, said.runner, ahead=True) if to else None
    if point is None:
        return None
    begins = names.find_point(start.split(), said.runner.points) if start else None
    known = names.which_pass(begins, start.split(), said.runner, ahead=False) if begins else None
    one = replace(
        base,
        kind=Kind.DRIVE_CONFIRMED,
        point=point,
        amount=length.length,
        words=known or start,
        guessed=False,
    )
    return Reported((one,))


# -- both ends of one stop ---------------------------------------------------------------------------------------


def in_and_out(said: Sentence, ctx: Context) -> Reported | None:
    """'came in at 3:05 and left at 3:10', 'Lathe 1458-1506': two reports of one stop, each with its own time; else None."""
    clock = sorted((t for t in said.times if not t.ahead and not t.bare), key=lambda t: t.start)
    if said.runner is None or said.asks or len(clock) != 2 or clock[1].at < clock[0].at:
        return None
    row = list(said.masked)
    span = [w for w in row if w not in lexicon().names["the"] and not lexicon().read["to"].word(w)]
    plain = span in ([POINT, TIME, TIME], [FINISH, TIME, TIME])
    came = lexicon().classes["arrive"].places(row)
    went = lexicon().classes["leave"].places(row)
    if not plain and not (came and went and came[0] < went[-1]):
        return None
    if not plain and (gates.supposed("in", said) or gates.denied("in", said) or gates.denied("out", said)):
        return None
    guessed = gates.told_by_others(said)
    arrived = Report(Kind.IN, clock[0].at, said.runner.id, words=said.written, guessed=guessed)
    place = placed(arrived, said, said.runner, ctx)
    if not isinstance(place, Report):
        return None
    return Reported(tuple(in_order([place, replace(place, kind=Kind.OUT, seen_at=clock[1].at)])))


# -- who and where -----------------------------------------------------------------------------------------------


def as_meant(found: Report | AskBack) -> Reported | AskBack:
    """A report as what was meant."""
    return found if isinstance(found, AskBack) else Reported((found,))


def with_runner(report: Report, said: Sentence, ctx: Context) -> Understood | None:
    """The report with its runner and point; asked where several may be meant."""
    if len(said.runners) > 1:
        known = [r for r in ctx.runners if r.id in said.runners]
        each = [placed(replace(report, runner=r.id), said, r, ctx) for r in known]
        return Reported(tuple(e for e in each if isinstance(e, Report))) or None
    runner = said.runner
    if runner is None:
        if report.kind in RACE_WIDE:
            return Reported((report,))
        if len(ctx.runners) < 2:
            return None
        of_each = [placed(replace(report, runner=r.id), said, r, ctx) for r in ctx.candidates()]
        if said.says("both") and len(of_each) == 2 and all(isinstance(x, Report) for x in of_each):
            return Reported(tuple(x for x in of_each if isinstance(x, Report)))
        choices = tuple(Choice(r.id, as_meant(x)) for r, x in zip(ctx.candidates(), of_each, strict=True))
        return AskBack(Need.RUNNER, choices)
    return as_meant(placed(report, said, runner, ctx))


_NUMBER = re.compile(r"#?\d{1,5}")


def _unknown_bib(intent: str, said: Sentence, ctx: Context) -> AskBack | None:
    """'99 dns' with nobody of that bib must never be taken for somebody else's report."""
    if said.named or intent not in gates.MOVES or not said.plain:
        return None
    lead = 1 if said.plain[0] in ("bib", "no", "number", "runner") and len(said.plain) > 1 else 0
    word = said.plain[lead]
    first_time = any(t.start <= lead < t.end for t in said.times) or any(
        x.start <= lead < x.end for x in said.lengths
    )
    if not _NUMBER.fullmatch(word) or first_time or any(a.start <= lead < a.end for a in said.amounts):
        return None
    bib = word.lstrip("#")
    if any(r.bib == bib for r in ctx.runners):
        return None
    choices = []
    for near in lists.near_bibs(bib, ctx.runners):
        masked = (RUNNER, *said.masked[lead + 1 :])
        meant = replace(said, runner=near, named=True, runners=(near.id,), masked=masked)
        found = report(intent, meant, ctx)
        if isinstance(found, Reported | AskBack):
            choices.append(Choice(near.id, found))
    return AskBack(Need.BIB, tuple(choices), bib)


# -- taking back and putting right ----------------------------------------------------------------------------------


def _points(said: Sentence) -> tuple[str, ...]:
    if said.point is not None:
        return said.point.ids
    finish = finish_of(said.runner) if said.finish and said.runner else None
    return (finish,) if finish else ()


def undo(said: Sentence) -> Undo:
    """'undo in at Mill': the writer's last report there; else whatever came last."""
    kind = None
    if said.says("through"):
        kind = Kind.THROUGH
    elif _points(said):
        words = said.plain
        short = [lexicon().short.get(w) for w in words]
        kind = Kind.IN if "in" in short else Kind.OUT if "out" in short else None
    named = said.runner.id if said.named and said.runner else None
    return Undo(_points(said), kind, named) if _points(said) else Undo()


def correction(said: Sentence, ctx: Context) -> Reported | None:
    """'Mill was 7:45 not 17:16', 'no wait 1615': the writer's last report with another time; None where none is said."""
    times = sorted((t for t in said.times if not t.ahead and not t.bare), key=lambda t: t.start)
    if not times or said.runner is None or said.asks:
        return None
    time = _meant(times, said)[0]
    known = None
    if said.point is not None:
        known = names.which_pass(said.point, said.masked, said.runner, ahead=False)
    elif said.finish:
        known = finish_of(said.runner)
    short = [lexicon().short.get(w) for w in said.plain]
    kind = (
        Kind.THROUGH
        if said.says("through")
        else Kind.OUT
        if "out" in short or (said.says("leave") and "in" not in short)
        else Kind.IN
    )
    told = any(k in ("in", "out", "through") for k in short) or said.says("leave") or said.says("through")
    at_finish = known is not None and known == finish_of(said.runner)
    if at_finish and out_of_reach(Report(kind, time.at, said.runner.id), said.runner, known):
        return None
    at = known or expected(said.runner, kind, ctx.point) or (place_of(said.runner).points[0].id)
    one = Report(
        kind, time.at, said.runner.id, at, words=said.written, guessed=not told or time.unsure, corrects=True,
        own_there=known is not None,
    )  # fmt: skip
    return Reported((one,))
