"""The situation before anybody has started: the forecast from the plan alone, as the watch would see it.

So paper says the same leave-by and be-there-from as the notices will, until the first check-in comes in.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from server.conversation.telling.answer import StageAnswer
from server.conversation.telling.reader import Reader
from server.conversation.telling.times import dated
from server.course import Course
from server.event.model import Edge, Event, MeetingPlan
from server.facts.fold import fold
from server.forecast.bridge import outlook
from server.forecast.outlook import View
from server.plan.cutoffs import (
    EVEN_ODDS,
    ChangeOver,
    CutOffOdds,
    cut_off_odds,
    due_times,
    goal_changes,
)
from server.plan.light import DarkKit
from server.plan.paces import dark_by_pace
from server.plan.stage_odds import ends_of_stages, stage_odds
from server.plan.timetable import Timetable
from server.watch.meetings import meetings
from server.watch.notice import MeetingValues
from server.watch.silences import LegSilence, silences
from server.watch.situation import Situation

BEFORE: timedelta = timedelta(hours=1)
"""Paper is made for the time before the race: asked for later, it still says what was planned."""


DarkByPace = tuple[tuple[str, tuple[DarkKit, ...]], ...]


@dataclass(frozen=True, slots=True, eq=False)
class BeforeStart:
    """Everything paper is made from. `at`: the moment the plan is looked at, before the first start."""

    situation: Situation
    at: datetime
    views: Mapping[str, View]
    _dark: dict[str, DarkByPace] = field(default_factory=dict, repr=False)
    _silences: dict[str, tuple[LegSilence, ...]] = field(default_factory=dict, repr=False)
    _cut_offs: dict[str, tuple[CutOffOdds, ...]] = field(default_factory=dict, repr=False)

    @property
    def event(self) -> Event:
        """The event, every point with its km."""
        return self.situation.event

    def timetable(self, runner: str) -> Timetable:
        """The plan of a runner."""
        return self.situation.timetables[runner]

    def course(self, runner: str) -> Course:
        """The line a runner is on."""
        return self.situation.courses[self.event.runner(runner).course]

    def made(self, reader: Reader) -> str:
        """When the plan was looked at, as a date and time where the race is."""
        return dated(self.at, reader)

    def meetings(self, runner: str) -> tuple[MeetingValues, ...]:
        """Her meetings, timed by the watch's own function."""
        return meetings(self.situation, runner, self.at)

    def dark(self, runner: str) -> DarkByPace:
        """For which parts she needs a light at each of her paces; worked out once."""
        if runner not in self._dark:
            found = dark_by_pace(self.event, self.timetable(runner), self.course(runner))
            self._dark[runner] = found
        return self._dark[runner]

    def silences(self, runner: str) -> tuple[LegSilence, ...]:
        """When silence after each point would be asked about, told home and an alarm; worked out once."""
        if runner not in self._silences:
            self._silences[runner] = silences(self.event, runner, self.timetable(runner), self.course(runner))
        return self._silences[runner]

    def plan_of(self, meeting: str) -> MeetingPlan:
        """The planned meeting of that id; KeyError if there is none."""
        for m in self.event.meetings:
            if m.id == meeting:
                return m
        raise KeyError(meeting)

    def cut_offs(self, runner: str) -> tuple[CutOffOdds, ...]:
        """Every cut-off with its odds, stopping included, and the latest times out of the points before it; worked out
        once."""
        if runner not in self._cut_offs:
            start, due = self.timetable(runner).start, due_times(self.event, runner)
            ends = ends_of_stages(self.event, runner)
            self._cut_offs[runner] = cut_off_odds(self.views[runner], due, start, stage_ends=ends)
        return self._cut_offs[runner]

    def stages(self, runner: str) -> tuple[StageAnswer, ...]:
        """The ends of her stages: odds of being in before the next one starts, and when she comes in."""
        course, start = self.event.course_of(runner), self.timetable(runner).start
        return tuple(
            StageAnswer(s.point, course.point(s.point).name, s.starts_at, s.by, s.odds, s.low, s.window)
            for s in stage_odds(self.views[runner], course, self.situation.state, start)
        )

    def changes(self, runner: str) -> tuple[ChangeOver, ...]:
        """Until when out of each point each goal still holds."""
        return changes_of(
            self.event, self.views[runner], self.timetable(runner), self.timetable(runner).start
        )


def changes_of(
    event: Event,
    view: View,
    timetable: Timetable,
    start: datetime,
    moved: Sequence[tuple[str, str, datetime]] = (),
) -> tuple[ChangeOver, ...]:
    """The moments at which one goal changes over to the next, by the joint paths of a view that holds the finish: never
    later than a cut-off on the way to it is rather missed than made.

    start: her own start as it is now; the goals count from there. moved: as in `due_times`.
    """
    finish = timetable.rows[-1].point
    if finish not in view.points:
        return ()
    arrive, leave = (paths - start.timestamp() for paths in view.paths())
    finish_s = arrive[:, view.points.index(finish)]
    found = goal_changes(view.points, leave, finish_s, replace(timetable, start=start))
    due, ends = due_times(event, timetable.runner, moved), ends_of_stages(event, timetable.runner)
    makes: dict[str, datetime] = {}
    for c in cut_off_odds(view, due, start, EVEN_ODDS, stage_ends=ends):
        for out in c.latest_out:
            if out.at is not None:
                makes[out.point] = min(out.at, makes.get(out.point, out.at))
    own = {d.point: d for d in due}

    def held(c: ChangeOver) -> ChangeOver:
        row = timetable.row(c.point)
        at = None if c.at is None else min(c.at, max(makes.get(c.point, c.at), start + row.leave[c.goal]))
        if at is not None and c.point in own:
            d = own[c.point]
            at = min(at, d.at + (row.stop if d.edge is Edge.IN else timedelta(0)))
        return replace(c, at=at)

    return tuple(held(c) for c in found)


def before_start(
    event: Event, timetables: Mapping[str, Timetable], courses: Mapping[str, Course], now: datetime
) -> BeforeStart:
    """The situation at `now`, or an hour before the first start where that is over."""
    at = min([now, *(t.start - BEFORE for t in timetables.values())])
    state = fold((), event, at, None)
    outlooks = {
        r.runner: outlook(event, r, state, timetables[r.runner], courses[event.runner(r.runner).course])
        for r in state.runners
        if r.runner in timetables
    }
    situation = Situation(
        event=event,
        state=state,
        outlooks=outlooks,
        timetables=timetables,
        courses=courses,
        made=(),
        outages=(),
    )
    return BeforeStart(situation, at, {r: o.at(at) for r, o in outlooks.items()})
