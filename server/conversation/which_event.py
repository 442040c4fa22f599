"""Which of a person's events a message is about: a button says it, a name decides, an answer goes where something waits
for it; what stays open is asked. A call for help waits for none of that: it goes out wherever it may be about."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import timedelta

from server.conversation.dialogue import Memory
from server.conversation.telling.answer import EventHere, MeAnswer
from server.conversation.telling.message import Button, Press, Rows, data, event_mark, read_data
from server.conversation.telling.say import lines
from server.conversation.understanding import answers_a_notice, plain, says, takes_back
from server.conversation.values import Incoming, Reply
from server.conversation.view import Snapshot, Told
from server.conversation.visit import SPOKEN_OF, Visit
from server.event.model import PartKind

_OVER = frozenset({"closed"})
# An event is spoken of from so long before its start, and until all of its runners are closed.
BEFORE_START = timedelta(days=2)
JUST_BEEN = timedelta(days=7)
"""Of an event whose runners are all closed a call for help is thought of for so long after its start (own choice)."""
WHICH = "e"
"""Marks the button that answers 'which event?'."""
FIELDS = {
    Press.ANSWER: 5,
    Press.REPORT: 5,
    Press.ASK: 4,
    Press.LOG: 5,
    Press.CONFIRM: 3,
    Press.UNDO: 3,
    Press.CHANGE: 6,
}
"""How many fields a button has that says its event: the last of them is the mark. Older ones have fewer."""


def chosen(incoming: Incoming, memory: Memory, me: Told[MeAnswer]) -> tuple[EventHere, Incoming] | None:
    """The event that is meant, and what to read, which may have waited; None where that has to be asked."""
    events = me.data.events
    pressed = _pressed_in(incoming.button, events)
    if pressed is not None and is_event(incoming.button):
        memory.event, memory.events_offered = pressed.id, ()
        waited, memory.waiting = memory.waiting, None
        return pressed, waited or incoming
    if pressed is not None:
        return pressed, incoming
    answers = _answered_in(incoming, memory, events)
    if len(answers) > 1:
        return None
    if answers:
        return answers[0], incoming
    handed = _handed_in(incoming.text, memory, events)
    if handed is not None:
        return handed, incoming
    named = [e for e in _named_in(incoming.text, events) if _on(e, me) or _just_been(e, me)]
    if len(named) == 1:
        memory.speaks_in(named[0].id if _on(named[0], me) else None, me.now)
        return named[0], incoming
    spoken = _spoken_in(memory, me)
    if spoken is not None:
        return spoken, incoming
    on = [e for e in events if _on(e, me)]
    if len(on) == 1 or len(events) == 1:
        return (on or list(events))[0], incoming
    known = next((e for e in events if e.id == memory.event), None)
    if known is not None:
        return known, incoming
    if not on and events:
        # None is on: the one that starts soonest, else the one that was last.
        coming = sorted((e for e in events if e.starts > me.now), key=lambda e: e.starts)
        return (coming or sorted(events, key=lambda e: e.starts, reverse=True))[0], incoming
    return None


def _on(event: EventHere, me: Told[MeAnswer]) -> bool:
    return event.starts - BEFORE_START <= me.now and not _over(event)


def _just_been(event: EventHere, me: Told[MeAnswer]) -> bool:
    return event.starts <= me.now < event.starts + JUST_BEEN


def _spoken_in(memory: Memory, me: Told[MeAnswer]) -> EventHere | None:
    """The event whose runner was named, or in which help was called, a short while ago."""
    at = memory.event_at
    if at is None or me.now - at > SPOKEN_OF:
        return None
    return next((e for e in me.data.events if e.id == memory.event), None)


def _pressed_in(button: str, events: tuple[EventHere, ...]) -> EventHere | None:
    """The event under whose notice or reply a button was pressed; None for those that do not say."""
    press, fields = read_data(button) or (None, ())
    if press is Press.PICK and len(fields) > 1:
        return next((e for e in events if event_mark(e.id) == fields[-1]), None)
    if press not in FIELDS or len(fields) < FIELDS[press]:
        return None
    return next((e for e in events if event_mark(e.id) == fields[FIELDS[press] - 1]), None)


def is_event(button: str) -> bool:
    """Whether it is a button that answers 'which event?'."""
    press, fields = read_data(button) or (None, ())
    return press is Press.PICK and len(fields) == 3 and fields[1] == WHICH


def _answered_in(incoming: Incoming, memory: Memory, events: tuple[EventHere, ...]) -> tuple[EventHere, ...]:
    """The events in which something waits for the answer that was written: 'I have it' names none, and to take the
    alarm of the wrong race would leave the right one with nobody. () for other words, or while the desk itself has
    just asked something."""
    asked = memory.choices or memory.pending or any(h.unconfirmed for h in memory.handed[-1:])
    if len(events) < 2 or incoming.group or asked or not answers_a_notice(incoming.text):
        return ()
    return tuple(e for e in events if e.open_notices)


def _handed_in(text: str, memory: Memory, events: tuple[EventHere, ...]) -> EventHere | None:
    """The event of this person's last report, where the words take it back, or say whether it is right."""
    last = memory.handed[-1] if memory.handed else None
    if len(events) < 2 or last is None:
        return None
    about = takes_back(text) or (last.unconfirmed and not memory.choices and answers_a_notice(text))
    return next((e for e in events if about and e.id == last.event), None)


def _over(event: EventHere) -> bool:
    return bool(event.runners) and all(r.going in _OVER for r in event.runners)


def ask(view: Snapshot, incoming: Incoming, memory: Memory, me: Told[MeAnswer]) -> Reply:
    """Which event? The message waits for the answer."""
    events = _answered_in(incoming, memory, me.data.events) or me.data.events
    memory.events_offered = tuple(e.id for e in events)
    memory.waiting = incoming
    visit = Visit(view, incoming, memory, me.data, events[0], me.now)
    picks = (data(Press.PICK, str(i), WHICH, event_mark(e.id)) for i, e in enumerate(events))
    rows = ((Button(e.name, pick),) for e, pick in zip(events, picks, strict=True))
    return visit.reply(visit.s("ask-event"), tuple(rows))


# -- names --------------------------------------------------------------------------------------------------------

_TOO_SHORT = 3


def _plain(words: str) -> str:
    return f" {plain(words)} "


def _event_said(text: str, event: EventHere) -> bool:
    name = _plain(event.name).strip().removeprefix("the ")
    return len(name) > _TOO_SHORT and f" {name} " in text


def _names(event: EventHere) -> set[str]:
    """What its runners are called: whole names, first names, marked bibs."""
    names: set[str] = set()
    for r in event.runners:
        full = _plain(r.name).strip()
        names |= {n for n in (full, full.split(" ")[0]) if len(n) >= _TOO_SHORT}
        names |= {f"#{r.bib}", f"bib {r.bib}"} if r.bib else set()
    return names


def _people(event: EventHere) -> set[str]:
    full = [_plain(n).strip() for _, n in event.people]
    return {n for f in full for n in (f, f.split(" ")[0])}


def _named_in(text: str, events: tuple[EventHere, ...], *, places: bool = False) -> tuple[EventHere, ...]:
    """The events that the words name, by their own name or by a runner whom no other of them knows; with `places` also
    by a point that no other has. () where they name none."""
    if len(events) < 2 or not text.strip():
        return ()
    said = re.sub(r"(?<=[a-z])s(?= )", "", _plain(text)), _plain(text)
    by_name = tuple(e for e in events if _event_said(said[1], e))
    if by_name:
        return by_name
    found = []
    for e in events:
        known = set().union(*(_names(o) | _people(o) for o in events if o is not e))
        own = {n for n in _names(e) - known if any(f" {n} " in s for s in said)}
        if own or (places and _place_said(said[1], e, events)):
            found.append(e)
    return tuple(found)


def _place_said(text: str, event: EventHere, events: tuple[EventHere, ...]) -> bool:
    names = {o.id: {_plain(p.name) for r in o.runners for p in r.points} for o in events}
    elsewhere = set().union(*(n for i, n in names.items() if i != event.id))
    return any(n in text for n in names[event.id] - elsewhere if len(n.strip()) > _TOO_SHORT)


# -- calls for help ---------------------------------------------------------------------------------------------------


def called_in(text: str, memory: Memory, me: Told[MeAnswer], may_be: tuple[str, ...]) -> tuple[str, ...]:
    """The events, of those in which the words are a call for help, in which it goes out. A name decides, then what was
    just spoken of; whoever runs and speaks of no other means themselves; else every race that is on, and where none is the
    one that was last."""
    events = tuple(e for e in me.data.events if e.id in may_be)
    named = [e.id for e in _named_in(text, me.data.events, places=True) if e.id in may_be]
    if named:
        return tuple(named)
    spoken = _spoken_in(memory, me)
    if spoken is not None and spoken.id in may_be:
        return (spoken.id,)
    on = [e for e in events if _on(e, me)]
    if not on:
        been = sorted((e for e in events if e.starts <= me.now), key=lambda e: e.starts)
        return tuple(e.id for e in (been or events)[-1:])
    runs = [e for e in on if any(p.kind is PartKind.RUNNER for p in e.parts)]
    return tuple(e.id for e in (runs if runs and not says(text, "she") else on))


def called(visits: list[Visit], calls: list[Visit], replies: list[Reply]) -> Reply:
    """One reply to a call that went out in these events, with how to reach the others that are on or have just been."""
    names = [v.event.name for v in calls]
    others = [
        v
        for v in visits
        if v not in calls and v.event.starts - BEFORE_START <= v.now < v.event.starts + JUST_BEEN
    ]
    first = calls[0]
    told = dict.fromkeys(line for r in replies for line in r.text.split("\n"))
    where = first.s("help-in-events", events=first.say.all(names)) if len(names) > 1 or others else ""
    more = [first.s("help-other-event", event=v.event.name, name=_calls_it(v, visits)) for v in others]
    top, *rest = told
    buttons = tuple(
        row for v, r in zip(calls, replies, strict=True) for row in _of(v, r.buttons, len(calls) > 1)
    )
    return Reply(lines(top, *rest[:1], where, *more, *rest[1:]), buttons, again=any(r.again for r in replies))


def _of(visit: Visit, rows: Rows, several: bool) -> Rows:
    """The buttons of one event's reply; where others stand beside them, 'Undo' says of which it is."""
    if not several:
        return rows
    undo = visit.s("button-undo")
    label = visit.s("button-undo-of", event=visit.event.name)
    return tuple(tuple(replace(b, label=label) if b.label == undo else b for b in row) for row in rows)


def _calls_it(visit: Visit, visits: list[Visit]) -> str:
    """A word that names this event and no other: its only runner's name, else its own."""
    others = set().union(*(_names(v.event) | _people(v.event) for v in visits if v is not visit))
    own = [r.name for r in visit.event.runners if not {plain(r.name), plain(r.name).split(" ")[0]} & others]
    return own[0] if len(own) == 1 == len(visit.event.runners) else visit.event.name
