"""Where a report belongs: the point that is named, else the one the writer stands at or she is due at."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from server.conversation.telling.answer import RunnerHere
from server.conversation.understanding import gates, names
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import (
    AskBack,
    Choice,
    Context,
    Need,
    Report,
    Reported,
    place_of,
)
from server.conversation.understanding.sentence import Sentence, finish_of
from server.event.model import PartKind
from server.facts.entry import Kind, Retired

_AT_A_POINT = frozenset(
    {Kind.IN, Kind.OUT, Kind.THROUGH, Kind.NOT_HERE_YET, Kind.SWEEP_THROUGH, Kind.CREW_THERE}
)


_OFF_WITHIN = timedelta(minutes=20)
"""So long after the start 'off' of a runner of whom nothing is known yet is out of the start (own choice)."""


def expected(runner: RunnerHere, kind: Kind, stands_at: str | None) -> str | None:
    """The point a report without one is about: where she is, where the writer stands, where she is due.

    Nobody comes in at the start, and out of it only while nothing else is known of her. People forget 'out': who
    stands, or waits by their own meeting, farther on than she was last known in means the place before them.
    """
    place = place_of(runner)
    waiting = _waits_ahead(runner, stands_at)
    if kind is Kind.OUT and place.at is not None:
        return waiting or place.at.id
    if stands_at is not None:
        return stands_at
    if waiting is not None:
        return waiting
    if place.at is not None and kind is Kind.IN:
        return place.at.id
    ahead = [p.id for p in place.ahead]
    if kind is Kind.OUT and runner.reached is None and ahead and runner.going == "before the start":
        return ahead[0]
    if kind is Kind.OUT:
        # Nobody goes on from the finish.
        ahead = [p.id for p in place.ahead if not p.finish] or ahead
    if runner.due in ahead:
        return runner.due
    if kind is Kind.OUT and runner.reached is not None and ahead:
        return next((p.id for p in place.ahead if p.crew_access and p.id in ahead), ahead[0])
    ahead = ahead[1:] if runner.reached is None and len(ahead) > 1 else ahead
    return next(iter(ahead), place.points[-1].id if place.points else None)


def _of_before(report: Report, runner: RunnerHere) -> bool:
    """Whether a report is of no later time than what is known of her, at a point she has reached."""
    known = runner.known_at
    return known is not None and runner.reached is not None and report.seen_at <= known


_GOES = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})
_FASTEST_KMH = 14.0
"""Nobody in a race of this length goes faster from one point to another (own choice; twice what a winner averages)."""
_PLACES_MAX = 3


def out_of_reach(report: Report, runner: RunnerHere, point: str | None) -> bool:
    """Whether she can't have come so far by then, from where and when she was last known."""
    km, known, last = {p.id: p.km for p in runner.points}, runner.known_at, runner.reached
    if known is None or last is None or point is None or report.seen_at < known:
        return False
    hours = (report.seen_at - known) / timedelta(hours=1)
    return km[point] - km[last] > 1 + _FASTEST_KMH * hours


def _within_reach(report: Report, runner: RunnerHere) -> Report | AskBack:
    """A report without a place that can't be of the point it would be about: asked, of the last that she reached and those
    after it."""
    first = max(place_of(runner).reached, 0)
    near = [p.id for p in runner.points[first:] if not out_of_reach(report, runner, p.id)]
    ways = [replace(report, point=p) for p in near[:_PLACES_MAX]]
    if len(ways) == 1:
        return replace(ways[0], guessed=True)
    return AskBack(Need.POINT, tuple(Choice(r.point or "", Reported((r,))) for r in ways))


def _may_be_only_come(said: Sentence) -> bool:
    """Whether the one word that names the finish says of any place that she has come there: 'arrivée', not 'à l'arrivée'."""
    if not said.finish:
        return False
    words, finish, come = list(said.plain), lexicon().read["finish"], lexicon().classes["arrive"]
    named = [(w, finish.at(words, i)) for i, w in enumerate(words)]
    return all(n == 1 and come.word(w) for w, n in named if n)


def _finishes(said: Sentence) -> bool:
    """Whether it says that she is done, and not that a helper is."""
    return said.says("finish") and not gates.helper_ends(said)


def _came_or_finished(report: Report, runner: RunnerHere, finish: str | None) -> AskBack:
    """Asked, where the next point and the finish behind it can both be meant."""
    places = (place_of(runner).ahead[0].id, finish)
    ways = [replace(report, point=p) for p in places]
    return AskBack(Need.POINT, tuple(Choice(r.point or "", Reported((r,))) for r in ways))


def _waits_ahead(runner: RunnerHere, stands_at: str | None) -> str | None:
    """A point beyond the one where she was last known in, at which the writer stands or may by now wait for her."""
    if runner.at is None:
        return None
    mine = stands_at if stands_at is not None else runner.own
    return mine if mine in {p.id for p in place_of(runner).ahead} else None


def placed(report: Report, said: Sentence, runner: RunnerHere, ctx: Context) -> Report | AskBack:
    """The report with its point; asks back if several different places fit."""
    report = replace(report, runner=runner.id)
    to_come = report.kind is Kind.HOW_SHE_IS and (PartKind.RUNNER in ctx.parts or said.says("hearsay"))
    if report.placed_by_words or to_come:
        # 'Above the quarry' names a point and is not at it; nor is 'soup at the quarry please'.
        return report
    if said.point is not None:
        point = names.which_pass(said.point, said.masked, runner, ahead=False)
        if point is None:
            choices = tuple(Choice(i, Reported((replace(report, point=i),))) for i in said.point.ids)
            return AskBack(Need.POINT, choices, said.point.words)
        if report.kind is Kind.NOT_HERE_YET and said.reads("behind_her"):
            # 'Two who were behind her at the ford are in' says where they were, and she is not where it is written.
            return placed(report, replace(said, point=None), runner, ctx)
        if (
            report.kind is Kind.MOVING_AGAIN
            and runner.reached not in (None, point)
            and (point == runner.points[0].id)
        ):
            return report  # 'started' of somebody long on the course: under way, and not at the start
        if point == finish_of(runner) and report.kind in _GOES and out_of_reach(report, runner, point):
            return _within_reach(report, runner)
        # Which of two passes was meant is inferred, but from where she is: as good as written.
        return replace(report, point=point, guessed=report.guessed or said.point.score < names.SURE)
    finish = finish_of(runner)
    near = finish in [p.id for p in place_of(runner).ahead[:2]]
    far = out_of_reach(report, runner, finish) or (_of_before(report, runner) and runner.reached != finish)
    came = _may_be_only_come(said)
    if came and near and not far and place_of(runner).ahead[0].id != finish and ctx.point is None:
        return _came_or_finished(report, runner, finish)
    only_came = came and (far or not near or ctx.point not in (None, finish))
    to_finish = said.finish or (report.kind is Kind.IN and _finishes(said) and not far)
    if to_finish and not (report.kind in (*_GOES, Kind.RETIRED) and (far or only_came)):
        return replace(report, point=finish, guessed=report.guessed or not (near or said.finish))
    if said.finish and report.kind in _GOES and not only_came:
        return _within_reach(report, runner)
    if report.kind is Kind.RETIRED and ctx.point is not None and said.reads("here"):
        return replace(report, point=ctx.point)
    known = runner.at is not None and not runner.gone_on  # where she most likely is no more, nobody is sent
    if report.kind is Kind.RETIRED and known and report.how is not Retired.DID_NOT_START:
        return replace(report, point=runner.at)
    if report.kind is Kind.HOW_SHE_IS and said.reads("here"):
        return replace(report, point=ctx.point or runner.at)
    if report.kind not in _AT_A_POINT:
        return report
    at_start = runner.reached in (None, runner.points[0].id) if runner.points else False
    off = report.kind is Kind.OUT and at_start and ctx.point in (None, runner.points[0].id)
    if off and runner.start <= report.seen_at <= runner.start + _OFF_WITHIN:
        return replace(report, point=runner.points[0].id, guessed=True)  # 'and they are off'
    from_post = ctx.parts <= {PartKind.VOLUNTEER} and ctx.point is not None
    point = ctx.point if from_post else expected(runner, report.kind, ctx.point)
    ahead = {p.id for p in place_of(runner).ahead}
    if report.kind in (Kind.IN, Kind.OUT) and point in ahead and _of_before(report, runner):
        # A time before the last that is known of her: told once more, of where she has been.
        return replace(report, point=runner.reached, guessed=True)
    if (
        report.kind in _GOES
        and (not report.with_us or point == finish)
        and out_of_reach(report, runner, point)
    ):
        return _within_reach(report, runner)
    stands = ctx.point is not None and ctx.point == point
    surely = stands or (runner.at == point and report.kind is Kind.OUT)
    # 'We are here' of crew who are to be at their meeting by now is there.
    surely = surely or (report.kind is Kind.CREW_THERE and point is not None and point == runner.own)
    return replace(report, point=point, guessed=report.guessed or not surely)
