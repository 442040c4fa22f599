"""The one error of the course room: what is wrong, where, and what to do next."""

from __future__ import annotations


class CourseError(Exception):
    """A route file or a place that cannot be used.

    what: the fault in words; file: the name the caller gave; line: 1-based line of the file, None where
    no single line is at fault; remedy: what the person can do next. `str(error)` says them all.
    """

    def __init__(self, what: str, *, file: str, remedy: str, line: int | None = None) -> None:
        self.what = what
        self.file = file
        self.line = line
        self.remedy = remedy
        super().__init__(self._sentence())

    def _sentence(self) -> str:
        where = self.file if self.line is None else f"{self.file}, line {self.line}"
        return f"{where}: {self.what}. {self.remedy}."
