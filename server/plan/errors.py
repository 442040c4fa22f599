"""The one error of the plan room: what will not work, which field asks for it, and what to do instead."""

from __future__ import annotations


class PlanError(Exception):
    """A plan that cannot be made or must not be followed.

    what: the reason in words; field: the part of the event file (or the recording) at fault, as in
    `runners.maren.target`; remedy: what the person can do next. All three together make `str(error)`.
    """

    def __init__(self, what: str, *, field: str, remedy: str) -> None:
        self.what = what
        self.field = field
        self.remedy = remedy
        super().__init__(f"{field}: {what}. {remedy}.")
