"""One message being dealt with: who sent it, about which event, in which words to answer."""

from __future__ import annotations

import hashlib
import re
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.conversation.dialogue import Memory
from server.conversation.telling.answer import EventHere, MeAnswer, RunnerHere
from server.conversation.telling.message import Button, Press, Rows, data, event_mark, tag
from server.conversation.telling.reader import Reader, reader_for
from server.conversation.telling.say import Say
from server.conversation.understanding import Asked, Context, Question
from server.conversation.values import Incoming, Reply
from server.conversation.view import Snapshot
from server.event.model import Part, PartKind, Person
from server.facts.entry import Kind
from server.facts.state import Going

# A phone's clock may be this far ahead of ours; further ahead its times are not to be trusted.
CLOCKS_DIFFER = timedelta(minutes=2)
_BESIDE_HER = frozenset({Kind.IN, Kind.RESTING, Kind.HOW_SHE_IS, Kind.IN_HAND})
"""Reports made by somebody who is with her."""
SPOKEN_OF = timedelta(minutes=30)
"""So long after a question 'she' and 'and Tove?' still go on from it (own choice)."""


def sound_key(raw: str) -> str:
    """A key as the API takes it: visible signs only, not too long."""
    return raw if re.fullmatch(r"[\x21-\x7e]{1,100}", raw) else hashlib.sha256(raw.encode()).hexdigest()


@dataclass(slots=True)
class Visit:
    """Everything at hand while one message is answered. `now` is the server's clock; `part` tells the entries of one
    message apart that go to several events, `clause` those of each thing that it says; `calm`: nothing
    in it is like danger."""

    view: Snapshot
    incoming: Incoming
    memory: Memory
    me: MeAnswer
    event: EventHere
    now: datetime
    part: str = ""
    clause: int = 0
    calm: bool = False

    @property
    def address(self) -> str:
        """Whom we act for."""
        return self.incoming.address

    @property
    def person(self) -> Person:
        """Who writes."""
        return self.me.person

    @property
    def reader(self) -> Reader:
        """How they read."""
        return reader_for(self.person, self.event.time_zone)

    @property
    def say(self) -> Say:
        """Sentences for them, now."""
        return Say(self.reader, self.now)

    @property
    def sent_at(self) -> datetime:
        """When they sent it; '20 min ago' counts from here. Never later than our own clock."""
        sent = self.incoming.sent_at
        return self.now if sent > self.now + CLOCKS_DIFFER else sent

    @property
    def kinds(self) -> frozenset[PartKind]:
        """What they are in this event."""
        return frozenset(p.kind for p in self.event.parts)

    def key(self, number: int = 0) -> str:
        """The key of the entry made from this message: the same when the same message comes again."""
        raw = self.message() + (f".{self.part}" if self.part else "")
        raw += f".c{self.clause}" if self.clause else ""
        return raw if number == 0 else f"{raw}.{number}"

    def message(self) -> str:
        """What tells this message from every other."""
        return sound_key(self.incoming.message_key)

    def first_key(self) -> str:
        """The key of the message of which this one is a later form; '' for a new one."""
        return sound_key(self.incoming.edits) if self.incoming.edits else ""

    def context(self) -> Context:
        """What their words are understood against."""
        own = tuple(dict.fromkeys(p.runner for p in self.event.parts if p.runner))
        stands = next((p.point for p in self.event.parts if p.kind is PartKind.VOLUNTEER and p.point), None)
        return Context(
            now=self.sent_at,
            time_zone=self.event.time_zone,
            runners=self.event.runners,
            parts=self.kinds,
            own_runners=own,
            people=self.event.people,
            last=self._last(),
            point=self.event.stands or stands or self._said_to_be_at(),
            language=self.person.language,
            control=self.event.race_control.name,
            waits=self._waits(),
        )

    def _waits(self) -> bool:
        """Whether they pace, and she has not been where they set out with her."""
        legs = [p for p in self.event.parts if p.kind is PartKind.PACER and p.pace_from]
        return bool(legs) and PartKind.RUNNER not in self.kinds and not any(self._reached(p) for p in legs)

    def _reached(self, leg: Part) -> bool:
        mine = [r for r in self.event.runners if leg.runner in (None, r.id)]
        rows = (([p.id for p in r.points], r.reached) for r in mine)
        return any(
            at in ids and leg.pace_from in ids and ids.index(at) >= ids.index(leg.pace_from)
            for ids, at in rows
            if at is not None
        )

    def _said_to_be_at(self) -> str | None:
        """Where this person's last word of a while ago had the runner who is known to be there: 'she's still here' is said
        by somebody beside her, and 'she's gone' after it is of that place."""
        last = self.memory.handed[-1] if self.memory.handed else None
        if last is None or last.event != self.event.id or self.now - last.at > SPOKEN_OF:
            return None
        her = self.runner(last.report.runner)
        here = last.report.kind in _BESIDE_HER and her is not None and her.at == last.report.point
        return last.report.point if here else None

    def _last(self) -> Asked | None:
        """The question before; of one long ago it is open again which runner it was about."""
        last, at = self.memory.last, self.memory.last_at
        if last is None or at is None or self.now - at <= SPOKEN_OF:
            return last
        return replace(last, runner=None, point=None)

    def speaks_of(self, runner_id: str | None) -> None:
        """A report has named a runner: 'she' in the next message is that one, whoever was asked about before."""
        last = self._last()
        if runner_id is None or last is None:
            return
        # A question of long ago is not asked again of her: only that she is spoken of holds on.
        stale = self.memory.last is not last
        self.memory.last = Asked(Question.WHERE, runner_id) if stale else replace(last, runner=runner_id)
        self.memory.last_at = self.now

    def runner(self, runner_id: str | None) -> RunnerHere | None:
        """A runner of the event."""
        return next((r for r in self.event.runners if r.id == runner_id), None)

    def point_name(self, runner_id: str | None, point: str | None) -> str:
        """The name of a point, '' for none."""
        runner = self.runner(runner_id) or (self.event.runners[0] if self.event.runners else None)
        return next((p.name for p in runner.points if p.id == point), "") if runner else ""

    def point_label(self, runner_id: str | None, point: str) -> str:
        """A point on a button: with how far along it is where another of hers has the same name; its id for none."""
        runner = self.runner(runner_id) or (self.event.runners[0] if self.event.runners else None)
        points = runner.points if runner else ()
        found = next((p for p in points if p.id == point), None)
        if found is None:
            return point
        if sum(p.name == found.name for p in points) < 2:
            return found.name
        return self.s("choice-point-km", place=found.name, km=self.say.km(found.km))

    def some_place(self) -> str:
        """The name of a point to make an example with: the next to come."""
        runner = self.context().runner(None) or next(iter(self.event.runners), None)
        if runner is None or not runner.points:
            return ""
        ids = [p.id for p in runner.points]
        reached = ids.index(runner.reached) if runner.reached in ids else -1
        return runner.points[min(reached + 1, len(ids) - 1)].name

    def s(self, key: str, **values: str | int) -> str:
        """A sentence."""
        return self.say.s(key, **values)

    def reply(self, text: str, buttons: Rows = ()) -> Reply:
        """A reply in words."""
        return Reply(text, buttons)

    # -- buttons ---------------------------------------------------------------------------------------------

    def report_buttons(self, runner_id: str | None) -> Rows:
        """Buttons for what is expected next of a runner: in at the next point, or out of where she is."""
        runner = self.runner(runner_id)
        if runner is None or (PartKind.SUPPORTER in self.kinds and len(self.kinds) == 1):
            return ()
        if Going(runner.going).race_over:
            return ()
        if runner.at is not None:
            return (self._report("out", "button-out", runner, runner.at),)
        ids = [p.id for p in runner.points]
        reached = ids.index(runner.reached) if runner.reached in ids else -1
        if reached + 1 >= len(ids):
            return ()
        if runner.going == "before the start" and reached < 0:
            return (self._report("out", "button-out", runner, ids[0]),)
        point = ids[max(reached, 0) + 1]
        return (
            (*self._report("in", "button-in", runner, point),),
            (*self._report("through", "button-through", runner, point),),
            (*self._report("not here yet", "button-not-here-yet", runner, point),),
        )

    def _report(self, kind: str, label: str, runner: RunnerHere, point: str) -> tuple[Button, ...]:
        name = self.point_name(runner.id, point)
        text = self.s(label, place=name) if kind != "not here yet" else self.s(label)
        return (Button(text, self.report_data(kind, point, runner.id)),)

    def report_data(self, kind: str, point: str, runner_id: str, minutes: int = 0) -> str:
        """The data of a button that reports: with its event, for those who are in more than one."""
        mark = event_mark(self.event.id)
        return data(Press.REPORT, kind, tag(point), tag(runner_id), str(minutes), mark)

    def undo_button(self, entry: str) -> Rows:
        """Take it back."""
        return ((self.judging("button-undo", Press.UNDO, entry),),)

    def confirm_buttons(self, entry: str) -> Rows:
        """Right or wrong?"""
        wrong = self.judging("button-wrong", Press.UNDO, entry)
        return ((self.judging("button-right", Press.CONFIRM, entry), wrong),)

    def judging(self, label: str, press: Press, entry: str, **values: str) -> Button:
        """A button about an entry, which says its event, for those who are in more than one; no notice asked ('0')."""
        return Button(self.s(label, **values), data(press, entry, "0", event_mark(self.event.id)))
