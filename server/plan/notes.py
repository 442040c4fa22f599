"""What the planner wants said, as values: the sentences themselves stand in `conversation.telling` (`plan-<kind>`).

A number's name ends in its unit: `_s` a length of time in seconds (h:mm), `_length_s` one told in words, `_pace_s`
seconds a km, `_km`, `_m`, `_h` hours, `_at` a moment in POSIX seconds, `_odds` a probability; without one it is a
count. `words` are names that somebody gave (a point, a file, a surface), 'none' where there is none.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Saying:
    """One thing to say, without others within it."""

    kind: str
    words: tuple[tuple[str, str], ...] = ()
    numbers: tuple[tuple[str, float], ...] = ()

    def word(self, name: str) -> str:
        """The word of that name; KeyError if there is none."""
        return dict(self.words)[name]

    def number(self, name: str) -> float:
        """The number of that name; KeyError if there is none."""
        return dict(self.numbers)[name]


@dataclass(frozen=True, slots=True)
class Note(Saying):
    """One thing to say; `about` are sayings within it, put in as a list in words."""

    about: tuple[Saying, ...] = ()


def saying(kind: str, **values: str | float) -> Saying:
    """A saying from its values by name."""
    return Saying(kind, _words(values), _numbers(values))


def note(kind: str, *about: Saying, **values: str | float) -> Note:
    """A note from its values by name."""
    return Note(kind, _words(values), _numbers(values), about)


def _words(values: dict[str, str | float]) -> tuple[tuple[str, str], ...]:
    return tuple((k, v) for k, v in values.items() if isinstance(v, str))


def _numbers(values: dict[str, str | float]) -> tuple[tuple[str, float], ...]:
    return tuple((k, float(v)) for k, v in values.items() if not isinstance(v, str))


@dataclass(frozen=True, slots=True)
class PlanDoubt:
    """What is wrong with a plan, and what to do about it."""

    what: Note
    remedy: Note
