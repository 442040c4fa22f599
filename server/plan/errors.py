"""The one error of the plan room: what will not work, which field asks for it, and what to do instead."""

from __future__ import annotations

from server.sentences import Worded


class PlanError(Exception):
    """A plan that cannot be made or must not be followed.

    what: the reason in words; field: the part of the event file at fault, as in `runners.maren.target`, or of the
    recording; remedy: what the person can do next. All three together make `str(error)`. `file` and `line`
    where the fault is in a file beside the event file: a recording, a table of results.
    """

    def __init__(
        self, what: Worded, *, field: str, remedy: Worded, file: str = "", line: int | None = None
    ) -> None:
        self.what = what
        self.field = field
        self.remedy = remedy
        self.file = file
        self.line = line
        super().__init__(what)

    def __str__(self) -> str:
        return f"{self.field}: {self.what}. {self.remedy}."
