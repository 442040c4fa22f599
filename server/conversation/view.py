"""What the room may look at: everything one person may know at this moment, a method a question. It is a value: made
before a message is read, and made anew after each action, from the same picture as every page and call.

Each method raises `Refused` for what the person's parts do not allow ('not_yours') and for what there is not
('not_found').
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Generic, Protocol, TypeVar

from server.conversation.telling.answer import (
    AlarmNowAnswer,
    CardsAnswer,
    CutOffsAnswer,
    FactsAnswer,
    ForecastAnswer,
    KitAnswer,
    LogAnswer,
    MeAnswer,
    MissedAnswer,
    NextAnswer,
    PeopleAnswer,
    PlanAnswer,
    Written,
)

__all__ = ["NoticeHere", "NoticesHere", "Refused", "Snapshot", "Told"]

T = TypeVar("T")


class Refused(Exception):  # noqa: N818 - an answer like any other
    """What was asked for can't be had: a code that decides how it is said, and what was wrong."""

    def __init__(self, code: str, what: str) -> None:
        super().__init__(f"{code}: {what}")
        self.code, self.what = code, what


@dataclass(frozen=True, slots=True)
class Told(Generic[T]):
    """Something known, and the server's clock at that moment."""

    now: datetime
    data: T


class NoticeHere(Protocol):
    """A notice to the person: enough to answer it."""

    @property
    def short(self) -> int:
        """Its number."""

    @property
    def kind(self) -> str:
        """The word of its NoticeKind."""

    @property
    def needs_answer(self) -> bool:
        """Whether it waits for one."""

    @property
    def answered(self) -> str:
        """What they say now, '' for nothing."""

    @property
    def text(self) -> str:
        """As it was worded for them."""

    @property
    def changeable(self) -> bool:
        """Whether another answer would still change something."""

    @property
    def made_at(self) -> datetime:
        """When it was made."""

    @property
    def answered_at(self) -> datetime | None:
        """When they answered it first."""


class NoticesHere(Protocol):
    """The person's notices, newest last."""

    @property
    def notices(self) -> tuple[NoticeHere, ...]:
        """All of one event."""


class Snapshot(Protocol):
    """One person's view."""

    @property
    def now(self) -> datetime:
        """The moment it is of."""

    def me(self) -> MeAnswer:
        """Who writes, and the events they have a part in. Refused 'no_address' for a stranger."""

    def forecast(
        self, event: str, runner: str, *, factor: float | None = None, leaving: datetime | None = None
    ) -> ForecastAnswer:
        """Every point; with `factor` or `leaving` a what-if."""

    def where(self, event: str, runner: str) -> ForecastAnswer:
        """The last fact and the estimate."""

    def next(self, event: str, runner: str, point: str | None = None) -> NextAnswer:
        """The person's next meetings, or anybody's where they have none; with a point, those to come there, whoever
        goes."""

    def missed(self, event: str, runner: str, point: str | None) -> MissedAnswer:
        """Has she been through, and wait or go."""

    def kit(self, event: str, runner: str, point: str | None) -> KitAnswer:
        """What to have ready at a point, or at the person's next meeting."""

    def plan(self, event: str, runner: str) -> PlanAnswer:
        """The timetable."""

    def facts(self, event: str, runner: str) -> FactsAnswer:
        """What was reported."""

    def log(self, event: str, runner: str) -> LogAnswer:
        """What was logged of what she ate, drank and how she was."""

    def alarm(self, event: str, runner: str) -> AlarmNowAnswer:
        """What to do about an open alarm; there always is an answer."""

    def cut_offs(self, event: str, runner: str) -> CutOffsAnswer:
        """Cut-offs to come."""

    def cards(self, event: str, runner: str) -> CardsAnswer:
        """The if-then cards."""

    def people(self, event: str) -> PeopleAnswer:
        """Who is where."""

    def written(self, event: str) -> tuple[Written, ...]:
        """The free text of the event file that the person may see, line by line."""

    def notices(self, event: str) -> NoticesHere:
        """The person's own notices."""
