"""The stop log on the page: in short, newest entries first, with the button that logs a stop where she is."""

from __future__ import annotations

from dataclasses import dataclass

from server.api import answers
from server.api.snapshot import Picture
from server.api.who_may import Call, May, may
from server.conversation.telling.message import Press, data, event_mark, tag
from server.conversation.telling.say import Say
from server.conversation.telling.stop_log import say_log, say_since
from server.event.model import Part
from server.facts.state import Going
from server.pages.first import PageButton
from server.pages.view import Pen
from server.sentences import sentence


@dataclass(frozen=True, slots=True)
class LogShown:
    """A runner's log for one reader: in short, entry by entry, and the button to log with (None: she is on her way, or they
    may not)."""

    lines: tuple[str, ...] = ()
    rows: tuple[str, ...] = ()
    button: PageButton | None = None


def log_shown(picture: Picture, runner: str, person: str, parts: tuple[Part, ...], pen: Pen) -> LogShown:
    """What the page shows of the log: nothing to who has to say first that they are a medic."""
    short: tuple[str, ...] = ()
    rows: tuple[str, ...] = ()
    if may(parts, Call.SEE_LOG, runner) is May.YES:
        found = answers.stop_log(picture, runner, person, May.YES)
        if found.log is not None:
            say = Say(pen.reader, pen.now)
            short = tuple(say_since(say, found.log).splitlines())
            rows = tuple(say_log(say, found).splitlines())[len(short) :]
    return LogShown(short, rows, _button(picture, runner, parts, pen))


def _button(picture: Picture, runner: str, parts: tuple[Part, ...], pen: Pen) -> PageButton | None:
    state = picture.state.runner(runner)
    if state.going is not Going.AT_POINT or may(parts, Call.LOG, runner) is not May.YES:
        return None
    mark = event_mark(picture.event.id)
    press = data(Press.LOG, tag(state.reached[-1]), tag(runner), "", "", mark)
    return PageButton(sentence(pen.reader.language, "button-log-stop"), press)
